/** The normal distribution against mathjs. */
import fc from 'fast-check';
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { bendOf, chanceWithin } from '../../core/plan/chance/normal.ts';

const below = (z: number): number => (1 + erf(z / Math.SQRT2)) / 2;

describe('the chance to be within limits', () => {
  it('is that of the error function of mathjs', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(-3, 3), number(0, 3), number(-4, 4), number(0.01, 3), (low, width, mean, sigma) => {
        const exact = below((low + width - mean) / sigma) - below((low - mean) / sigma);
        expect(Math.abs(chanceWithin(low, low + width, mean, sigma) - exact)).toBeLessThan(2e-7);
      }),
      { numRuns: 2000 },
    );
  });

  // The table of the normal distribution in any handbook of statistics, to its four digits; from memory.
  it.each([
    [1, 0.6827],
    [2, 0.9545],
    [3, 0.9973],
  ])('within %i standard deviations: %f', (n, share) => {
    expect(chanceWithin(5 - 2 * n, 5 + 2 * n, 5, 2)).toBeCloseTo(share, 4);
  });
});

describe('how −2 ln of a chance bends in the middle', () => {
  it('is half its second derivative by the mean, by differences with mathjs', () => {
    const step = 1e-3;
    for (let sigma = 0.05; sigma < 3; sigma *= 1.3) {
      const miss = (mean: number) => -2 * Math.log(below((1 - mean) / sigma) - below((-1 - mean) / sigma));
      const bend = (miss(step) - 2 * miss(0) + miss(-step)) / step ** 2 / 2;
      expect(Math.abs(bendOf(sigma) - bend)).toBeLessThan(1e-4);
    }
    expect(bendOf(0)).toBe(0);
  });
});
