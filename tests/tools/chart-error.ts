/**
 * How far a printed chart may be off, one standard deviation of each angle, degrees: its share of what that angle changes
 * and, beside it, of the largest change of the three, of 0.3° at the least. What is said of it holds at 95 %.
 */
export function chartSigmas(change: Partial<Record<'camber' | 'caster' | 'toe', number>>, percent = 20) {
  const { camber = 0, caster = 0, toe = 0 } = change;
  const largest = Math.max(0.3, Math.abs(camber), Math.abs(caster), Math.abs(toe));
  const of = (own: number): number => (percent / 200) * Math.sqrt(own ** 2 + largest ** 2);
  return { camber: of(camber), caster: of(caster), toe: of(toe) };
}
