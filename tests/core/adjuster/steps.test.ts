import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { isCoarse, leastStep, MOST_POSITIONS, multiples, onwards, within } from '../../../core/adjuster/steps.ts';
import { InputError } from '../../../core/input-error.ts';

describe('multiples of a step', () => {
  it('are all that lie within, and no others', () => {
    const end = fc.integer({ min: -60, max: 60 });
    fc.assert(
      fc.property(end, end, fc.constantFrom(1, 3, 7, 20), (a, b, step) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const wanted = Array.from({ length: 121 }, (_, i) => (i - 60) * step).filter((x) => x >= low && x <= high);
        expect(multiples(step, low, high)).toEqual(wanted);
        // The same in tenths, which binary fractions only come near.
        const tenths = multiples(step / 10, low / 10, high / 10);
        expect(tenths).toEqual(wanted.map((x) => x / 10));
      }),
    );
  });

  it('are none where no multiple lies between, and hold no negative zero', () => {
    expect(multiples(5, 1, 4)).toEqual([]);
    expect(multiples(5, 4, 1)).toEqual([]);
    expect(Object.is(multiples(1, -1, 1)[1], 0)).toBe(true);
  });

  it('are no more than can be gone through: more are refused before they are made', () => {
    expect(multiples(1, 1, MOST_POSITIONS)).toHaveLength(MOST_POSITIONS);
    expect(() => multiples(1, 0, MOST_POSITIONS)).toThrow('step: 1 is not allowed; allowed: 1.1 or more');
    expect(() => multiples(5e-324, 0, 5e-324)).toThrow(InputError);
  });

  it('are coarse enough from the step on that is said, whatever the range', () => {
    const ends = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(ends, fc.double({ min: 0.1, max: 1000, noNaN: true }), (low, width) => {
        const least = leastStep(low, low + width);
        expect(isCoarse(least, [low, low + width])).toBe(true);
        expect(isCoarse(least * 0.8, [low, low + width])).toBe(false);
      }),
    );
  });
});

describe('beyond an end', () => {
  it('positions follow one another by a step, as far as is worth thinking of', () => {
    expect(onwards([-1, 0, 2], 1, 0.5, 1.5)).toEqual([
      { position: 2.5, by: 0.5 },
      { position: 3, by: 1 },
      { position: 3.5, by: 1.5 },
    ]);
    expect(onwards([-1, 0, 2], -1, 0.1, 0.3).map(({ position }) => position)).toEqual([-1.1, -1.2, -1.3]);
    expect(onwards([0, 1], 1, 2, 1)).toEqual([]);
  });

  it('positions of a very fine step are some of its multiples, as far as ever', () => {
    const few = onwards([0], 1, 0.0001, 12);
    expect(few.length).toBeLessThanOrEqual(2000);
    expect(few.at(-1)?.by).toBeCloseTo(12, 9);
    for (const { by } of few) expect(Math.abs(by / 0.0001 - Math.round(by / 0.0001))).toBeLessThan(1e-6);
  });
});

test.each([
  [0, true],
  [2, true],
  [-1e-7, true],
  [2 + 1e-7, true],
  [-0.01, false],
  [2.01, false],
  ['1', false],
  [undefined, false],
])('%s is within 0 and 2: %s', (x, is) => {
  expect(within(x, 0, 2)).toBe(is);
});
