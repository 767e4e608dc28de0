/** The normal distribution. */

/**
 * The chance that something normally distributed lies within limits.
 * @param sigma its standard deviation, above 0
 * @returns 0…1, to 2e-7
 */
export function chanceWithin(low: number, high: number, mean: number, sigma: number): number {
  return cumulative((high - mean) / sigma) - cumulative((low - mean) / sigma);
}

/** Below this share of a half window the bend is 0 to all digits. */
const SHARP = 0.02;

/**
 * How −2 ln of the chance to be within ±1 bends where the mean is 0: half its second derivative by the mean.
 * @param sigma the standard deviation; 0 or more
 */
export function bendOf(sigma: number): number {
  const z = 1 / Math.max(sigma, SHARP);
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return (2 * z ** 3 * density) / chanceWithin(-1, 1, 0, sigma);
}

/** Φ: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26, with erf(x) = 2Φ(√2·x) − 1. */
function cumulative(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (series * Math.exp(-x * x)) / 2;
  return z < 0 ? tail : 1 - tail;
}
