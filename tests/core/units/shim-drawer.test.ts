import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestShims, lightest, millionths, stacksFrom } from '../../../core/units/shim-drawer.ts';

const MM = 1e6;
const wanted = (mm: number, sizes: readonly number[], most = Number.POSITIVE_INFINITY) => ({
  thickness: millionths(mm),
  sizes: sizes.map(millionths),
  most,
});
const supply = (counts: Readonly<Record<string, number>>) =>
  new Map(Object.entries(counts).map(([size, count]) => [millionths(Number(size)), count]));

describe('stacks out of one supply', () => {
  it('shares the shims out so that every pack can be made, if there is any way', () => {
    // Large first would give the only 3 to the first pack, which can be made without it.
    const stacks = stacksFrom(supply({ 3: 1, 1.5: 2 }), [wanted(3, [3, 1.5]), wanted(3, [3])]);
    expect(stacks).toEqual([new Map([[1.5 * MM, 2]]), new Map([[3 * MM, 1]])]);
    expect(stacksFrom(supply({ 3: 1, 1.5: 1 }), [wanted(3, [3, 1.5]), wanted(3, [3])])).toBeUndefined();
  });

  it('takes a size that is not counted as plenty', () => {
    expect(stacksFrom(supply({ 3: 0 }), [wanted(6, [3, 1.5])])).toEqual([new Map([[1.5 * MM, 4]])]);
    expect(stacksFrom(supply({ 3: 0 }), [wanted(6, [3])])).toBeUndefined();
  });

  it('keeps to the most shims that a bolt holds', () => {
    expect(stacksFrom(supply({ 3: 0 }), [wanted(6, [3, 1.5], 3)])).toBeUndefined();
    expect(stacksFrom(supply({ 3: 1 }), [wanted(6, [3, 1.5], 3)])).toBeDefined();
  });

  it('counts shims of all sizes together against what a bolt holds', () => {
    expect(stacksFrom(supply({}), [wanted(5, [3, 1], 2)])).toBeUndefined();
    expect(stacksFrom(supply({}), [wanted(5, [3, 1], 3)])).toBeDefined();
  });

  it('takes large shims first, however they are listed', () => {
    expect(stacksFrom(supply({}), [wanted(6, [1.5, 3])])).toEqual([new Map([[3 * MM, 2]])]);
  });

  it('adds inch shims up exactly', () => {
    const [sixteenth, thirtySecond] = [25.4 / 16, 25.4 / 32];
    const counts = supply({ [sixteenth]: 1, [thirtySecond]: 2 });
    expect(stacksFrom(counts, [wanted(25.4 / 8, [sixteenth, thirtySecond])])).toBeDefined();
    expect(stacksFrom(counts, [wanted(25.4 / 8 + thirtySecond * 1.0001, [sixteenth, thirtySecond])])).toBeUndefined();
  });

  it('of nothing wanted is nothing', () => {
    expect(stacksFrom(supply({}), [])).toEqual([]);
    expect(stacksFrom(supply({ 1: 0 }), [wanted(0, [1])])).toEqual([new Map()]);
  });
});

describe('what one pack can be', () => {
  const bolt = { sizes: [1, 1.5].map(millionths), most: 3 };
  const made = fewestShims(bolt, millionths(4), supply({ 1: 1 }));

  it('is every sum within the supply, the bolt and the pack, with the fewest shims', () => {
    const entries = [...made].map(([thickness, count]) => [thickness / MM, count]).sort(([a = 0], [b = 0]) => a - b);
    expect(entries).toEqual([
      [0, 0],
      [1, 1],
      [1.5, 1],
      [2.5, 2],
      [3, 2],
      [4, 3],
    ]);
  });

  it('needs at least so much of a size', () => {
    const ones = lightest(bolt, made, supply({ 1: 1 }), (size) => (size === MM ? 1 : 0));
    expect([1, 1.5, 2.5, 3, 4].map((mm) => ones.get(mm * MM))).toEqual([1, 0, 1, 0, 1]);
  });
});

const SIZES = [1, 1.5, 2, 3];
const oneBolt = fc.record({
  sizes: fc.uniqueArray(fc.constantFrom(...SIZES), { minLength: 1, maxLength: 3 }),
  most: fc.integer({ min: 0, max: 4 }),
});
/** Fewer than any bolt above may take of each size. */
const counts = fc.tuple(...SIZES.map(() => fc.integer({ min: 0, max: 3 })));
const supplyOf = (own: readonly number[]) => supply(Object.fromEntries(SIZES.map((size, i) => [size, own[i] ?? 0])));

/** Every pack that a bolt can have out of these counts: how many of each of SIZES. */
function everyPack(own: readonly number[], sizes: readonly number[], most: number): number[][] {
  let packs: number[][] = [[]];
  for (const [i, size] of SIZES.entries()) {
    const there = sizes.includes(size) ? (own[i] ?? 0) : 0;
    packs = packs.flatMap((pack) => Array.from({ length: there + 1 }, (_, n) => [...pack, n]));
  }
  return packs.filter((pack) => pack.reduce((sum, n) => sum + n, 0) <= most);
}
const thicknessOf = (pack: readonly number[]) => pack.reduce((sum, n, i) => sum + n * (SIZES[i] ?? 0), 0);
const countIn = (pack: readonly number[]) => pack.reduce((sum, n) => sum + n, 0);

describe('against every pack tried by hand', () => {
  it('serves two packs wherever there is a way, out of what is there', () => {
    const thickness = fc.integer({ min: 0, max: 14 }).map((halves) => halves / 2);
    fc.assert(
      fc.property(fc.tuple(oneBolt, oneBolt), fc.tuple(thickness, thickness), counts, ([a, b], [ta, tb], own) => {
        const first = everyPack(own, a.sizes, a.most).filter((pack) => thicknessOf(pack) === ta);
        const possible = first.some((pack) => {
          const left = own.map((n, i) => n - (pack[i] ?? 0));
          return everyPack(left, b.sizes, b.most).some((other) => thicknessOf(other) === tb);
        });
        const stacks = stacksFrom(supplyOf(own), [wanted(ta, a.sizes, a.most), wanted(tb, b.sizes, b.most)]);
        expect(stacks !== undefined).toBe(possible);
        for (const [i, { sizes, most }] of [a, b].entries()) {
          const stack = [...(stacks?.[i] ?? [])];
          if (stacks) expect(stack.reduce((sum, [size, n]) => sum + size * n, 0)).toBe(millionths([ta, tb][i] ?? 0));
          expect(stack.reduce((sum, [, n]) => sum + n, 0)).toBeLessThanOrEqual(most);
          for (const [size] of stack) expect(sizes).toContain(size / MM);
        }
        for (const [i, size] of SIZES.entries()) {
          const used = (stacks ?? []).reduce((sum, stack) => sum + (stack.get(size * MM) ?? 0), 0);
          expect(used).toBeLessThanOrEqual(own[i] ?? 0);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('knows every thickness of one pack, its fewest shims, and the fewest of one size in it', () => {
    fc.assert(
      fc.property(oneBolt, counts, fc.constantFrom(2, 4.5, 7), fc.constantFrom(...SIZES), (bolt, own, max, size) => {
        const packs = everyPack(own, bolt.sizes, bolt.most).filter((pack) => thicknessOf(pack) <= max);
        const least = (weight: (pack: readonly number[]) => number) =>
          packs.reduce((all, pack) => {
            const thickness = millionths(thicknessOf(pack));
            return all.set(thickness, Math.min(weight(pack), all.get(thickness) ?? Number.POSITIVE_INFINITY));
          }, new Map<number, number>());
        const sizes = bolt.sizes.map(millionths);
        const made = fewestShims({ sizes, most: bolt.most }, millionths(max), supplyOf(own));
        expect(made).toEqual(least(countIn));
        const ofSize = lightest({ sizes, most: bolt.most }, made, supplyOf(own), (one) => (one === size * MM ? 1 : 0));
        const wanted = least((pack) => pack[SIZES.indexOf(size)] ?? 0);
        // It knows nothing of what the bolt holds: where that binds it may say too little, never too much.
        for (const [thickness, n] of wanted) expect(ofSize.get(thickness)).toBeLessThanOrEqual(n);
        if (bolt.most >= countIn(own)) expect(ofSize).toEqual(wanted);
      }),
      { numRuns: 300 },
    );
  });
});
