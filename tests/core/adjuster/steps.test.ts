import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { multiples, onwards, within } from '../../../core/adjuster/steps.ts';

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
