/** Of a nut. */
export const FLATS = 6;

/** Turns as hands count them on a six-sided nut: whole turns, and flats to a hundredth, both without sign. */
export function inFlats(turns: number): { readonly whole: number; readonly flats: number } {
  const all = Math.round(Math.abs(turns) * FLATS * 100) / 100;
  const whole = Math.floor(all / FLATS);
  return { whole, flats: Math.round((all - whole * FLATS) * 100) / 100 };
}
