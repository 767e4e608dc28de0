/** Numbers as a person writes them, and without the noise of binary fractions. */

/** Decimals beyond a millionth are the noise of binary fractions, not a position. */
const NOISE = 1e6;
export const tidy = (x: number): number => {
  const rounded = Math.round(x * NOISE) / NOISE;
  return rounded === 0 ? 0 : rounded;
};

/** A number for a sentence: as many decimals as it needs, a true minus sign. */
export function plain(x: number, decimals = 3): string {
  // Not by way of the number's own text, which has an exponent where it is small.
  const text = x.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short.replace('-', '−');
}
