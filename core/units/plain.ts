/** Numbers as a person writes them, and without the noise of binary fractions. */

/** Decimals beyond a millionth are the noise of binary fractions, not a position. */
const NOISE = 1e6;
export const tidy = (x: number): number => {
  const rounded = Math.round(x * NOISE) / NOISE;
  return rounded === 0 ? 0 : rounded;
};

/** A number for a sentence: as many decimals as it needs, a true minus sign. */
export const plain = (x: number, decimals = 3): string => String(Number(x.toFixed(decimals))).replace('-', '−');
