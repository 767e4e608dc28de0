/** Inches as a rule has them. No library here: words are made of them. */

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
