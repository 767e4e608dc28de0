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
