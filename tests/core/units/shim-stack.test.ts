import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../core/input-error.ts';
import { shimStack, shimTotals } from '../../../core/units/shim-stack.ts';

/** All stacks of at most `most` shims, in millionths of a millimetre: total → fewest shims. */
function bruteForce(sizes: readonly number[], most: number): Map<number, number> {
  const fewest = new Map([[0, 0]]);
  let layer = [0];
  for (let count = 1; count <= most; count++) {
    const next = new Set(layer.flatMap((total) => sizes.map((size) => total + Math.round(size * 1e6))));
    layer = [...next].filter((total) => !fewest.has(total));
    for (const total of layer) fewest.set(total, count);
  }
  return fewest;
}

const SERIES = [0.6, 1, 1.6, 2, 3.2, 4];
const INCHES = [0.79375, 1.5875, 3.175];

describe('shimStack', () => {
  it('takes the fewest shims, thickest first', () => {
    expect(shimStack(6, [1, 3, 4])).toEqual({ exact: true, total: 6, shims: [{ size: 3, count: 2 }], count: 2 });
    expect(shimStack(4.6, SERIES)).toEqual({
      exact: true,
      total: 4.6,
      shims: [
        { size: 4, count: 1 },
        { size: 0.6, count: 1 },
      ],
      count: 2,
    });
  });

  it('gives the same, whichever way round the sizes are listed', () => {
    const backwards = [...SERIES].reverse();
    for (const thickness of [4.6, 7.2, 9.8]) {
      const { shims } = shimStack(thickness, backwards);
      expect(shims.map(({ size }) => size)).toEqual(shims.map(({ size }) => size).sort((a, b) => b - a));
      expect(shimStack(thickness, SERIES).count).toBe(shimStack(thickness, backwards).count);
    }
  });

  it('takes every size and thickness within its limits, the limits too', () => {
    expect(shimStack(100, [100])).toMatchObject({ exact: true, count: 1 });
    expect(shimStack(0.03, [0.01])).toMatchObject({ exact: true, count: 3 });
    expect(shimStack(1, Array(64).fill(1)).exact).toBe(true);
    expect(shimStack(100, [60], { max: 150 })).toMatchObject({ exact: false, total: 120 });
    for (const none of [{ max: 0 }, { maxCount: 0 }]) expect(shimStack(3, [1], none)).toMatchObject({ total: 0 });
    // Four million steps of 0.00005 mm.
    expect(shimStack(100, [100, 99.99995])).toMatchObject({ exact: true, count: 1 });
  });

  it('passes over a total that no shims make', () => {
    expect(shimStack(1.2, [2, 3])).toMatchObject({ exact: false, total: 2 });
  });

  it('adds inch shims up exactly', () => {
    const { exact, total, count } = shimStack(7.14375, INCHES);
    expect({ exact, total, count }).toEqual({ exact: true, total: 7.14375, count: 3 });
  });

  it('forgives the binary noise of a computed thickness', () => {
    expect(shimStack(0.1 + 0.2, [0.1]).exact).toBe(true);
  });

  it('comes nearest where nothing is exact, and never above max', () => {
    expect(shimStack(2.3, [1])).toMatchObject({ exact: false, total: 2 });
    expect(shimStack(2.6, [1])).toMatchObject({ exact: false, total: 3 });
    expect(shimStack(2.6, [1], { max: 2.7 })).toMatchObject({ exact: false, total: 2 });
    expect(shimStack(9, [1], { max: 4 })).toMatchObject({ exact: false, total: 4, count: 4 });
    expect(shimStack(5, [2, 3], { maxCount: 1 })).toMatchObject({ exact: false, total: 3, count: 1 });
    expect(shimStack(0, SERIES)).toEqual({ exact: true, total: 0, shims: [], count: 0 });
  });

  it('of two thicknesses as near takes the one of fewer shims, be it the thicker or the thinner', () => {
    expect(shimStack(3.5, [1, 4])).toMatchObject({ exact: false, total: 4, count: 1 });
    expect(shimStack(5.5, [3, 5])).toMatchObject({ exact: false, total: 5, count: 1 });
  });

  it('half way between two neighbours, whatever the sizes, takes none that needs more shims', () => {
    let [thinner, thicker] = [0, 0];
    const sizes = fc.uniqueArray(fc.constantFrom(...SERIES, 0.5, 2.5), { minLength: 2, maxLength: 3 });
    fc.assert(
      fc.property(sizes, fc.nat(), (set, pick) => {
        const fewest = bruteForce(set, 12);
        const totals = [...fewest.keys()].sort((a, b) => a - b).filter((total) => total <= 6e6);
        const [low, high] = totals.slice(pick % (totals.length - 1)) as [number, number];
        const [few, many] = [fewest.get(low) ?? Number.NaN, fewest.get(high) ?? Number.NaN];
        if (few < many) thinner++;
        if (few > many) thicker++;
        expect(shimStack((low + high) / 2e6, set).count).toBe(Math.min(few, many));
      }),
    );
    expect(Math.min(thinner, thicker)).toBeGreaterThan(5);
  });

  it('agrees with every stack tried by hand', () => {
    const sizes = fc.uniqueArray(fc.constantFrom(...SERIES, ...INCHES, 0.5, 0.25), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 800 }), sizes, fc.integer({ min: 1, max: 6 }), (hundredths, set, most) => {
        const thickness = hundredths / 100;
        const max = 8;
        const stack = shimStack(thickness, set, { max, maxCount: most });
        const all = bruteForce(set, most);
        const target = Math.round(thickness * 1e6);
        const possible = [...all].filter(([total]) => total <= max * 1e6);
        const nearest = Math.min(...possible.map(([total]) => Math.abs(total - target)));
        const best = Math.min(...possible.filter(([t]) => Math.abs(t - target) === nearest).map(([, count]) => count));
        expect(Math.abs(Math.round(stack.total * 1e6) - target)).toBe(nearest);
        expect(stack.count).toBe(best);
        expect(stack.exact).toBe(nearest === 0);
        const sum = stack.shims.reduce((mm, { size, count }) => mm + Math.round(size * 1e6) * count, 0);
        expect(sum).toBe(Math.round(stack.total * 1e6));
        expect(stack.shims.reduce((n, { count }) => n + count, 0)).toBe(stack.count);
      }),
    );
  });
});

describe('shimTotals', () => {
  it('is every thickness that a few shims make, and no other, in millimetres and in inches', () => {
    const sizes = fc.uniqueArray(fc.constantFrom(...SERIES, ...INCHES, 0.5), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 5 }), fc.constantFrom(3, 4.7625, 8), (set, most, max) => {
        const made = [...bruteForce(set, most).keys()].filter((total) => total <= max * 1e6);
        const sorted = made.sort((a, b) => a - b).map((total) => Number(`${total}e-6`));
        expect(shimTotals(set, max, most)).toEqual(sorted);
      }),
    );
  });

  it('takes any number of shims where none is said, and forgives binary noise', () => {
    expect(shimTotals([2, 3], 7)).toEqual([0, 2, 3, 4, 5, 6, 7]);
    expect(shimTotals([0.1 + 0.2], 0.3 + 0.6)).toEqual([0, 0.3, 0.6, 0.9]);
  });

  it('refuses sizes that share too fine a step, by name', () => {
    expect(shimTotals([0.01, 0.01005], 0.02)).toEqual([0, 0.01, 0.01005, 0.02]);
    // Four million steps of a millionth are 4 mm.
    expect(shimTotals([3, 3.000001], 4).length).toBe(3);
    expect(() => shimTotals([3, 3.000001], 4.000001)).toThrow(InputError);
    expect(() => shimTotals([3, 3.000001], 4.000001)).toThrow(
      'sizes: [3,3.000001] is not allowed; allowed: sizes that share a step of 0.00005 mm or more',
    );
  });
});
