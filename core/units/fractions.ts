/** Figures as a rule has them and as hands count them. No library here: words are made of them. */

/** `total` parts of an inch, as many as a rule has to the inch, in lowest terms: 24 of 128 → `3/16`, 40 of 32 → `1 1/4`. */
export function inFractions(total: number, parts: number): string {
  const whole = Math.floor(total / parts);
  let top = total - whole * parts;
  let bottom = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

const QUARTERS = ['', '¼', '½', '¾'];

/** The nearest quarter, as hands count: 2.5 → `2½`, 0.7 → `¾`, 3 → `3`. Without sign. */
export function inQuarters(count: number): string {
  const near = Math.round(Math.abs(count) * 4);
  const whole = Math.floor(near / 4);
  return near % 4 === 0 ? String(whole) : `${whole === 0 ? '' : whole}${QUARTERS[near % 4]}`;
}
