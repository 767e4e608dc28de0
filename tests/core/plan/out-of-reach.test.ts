/** What cannot be reached, of wheels whose angles can be anything within ends that are given. */
import { describe, expect, it } from 'vitest';
import type { Corner } from '../../../core/contract.ts';
import { Reachable } from '../../../core/plan/out-of-reach.ts';
import type { StateSpace } from '../../../core/plan/states/state-space.ts';
import type { Term } from '../../../core/plan/terms.ts';
import type { Assembly } from '../../../core/pose/car-model.ts';

type Ends = readonly [low: number, high: number];
/** One angle a wheel: its ends, and of how many states. */
const WHEELS: Partial<Record<Corner, { readonly ends: Ends; readonly count: number }>> = {
  LF: { ends: [-1, 2], count: 9 },
  RF: { ends: [0.5, 0.5], count: 9 },
  LR: { ends: [0.25, 0.25], count: 1 },
  RR: { ends: [0.1, 0.1004], count: 4 },
};
const assemblies = Object.keys(WHEELS).map((corner) => ({ corners: [corner] }) as unknown as Assembly);
const reachable = new Reachable(assemblies, ({ corners: [corner] }) => {
  const { ends, count } = WHEELS[corner!]!;
  // Of all that a state space is, this is what is asked of it.
  return { count, ranges: [ends], placeOf: () => 0 } as unknown as StateSpace;
});
const of = (factors: Partial<Record<Corner, number>>, low: number, high: number, more: Partial<Term> = {}): Term => ({
  where: 'front',
  angle: 'toe',
  window: { low, aim: (low + high) / 2, high, half: (high - low) / 2 },
  parts: Object.entries(factors).map(([corner, factor]) => ({ corner: corner as Corner, angle: 0, factor })),
  constant: 0,
  ...more,
});

describe('what a term can be', () => {
  it('is from the least to the most of its parts, whatever their signs', () => {
    expect(reachable.range(of({ LF: 1 }, 0, 1))).toEqual([-1, 2]);
    expect(reachable.range(of({ LF: -2, RF: 1 }, 0, 1))).toEqual([-3.5, 2.5]);
    expect(reachable.range(of({ LF: 0.5, LR: -1 }, 0, 1, { constant: 10 }))).toEqual([9.25, 10.75]);
  });

  it('is missed by how far it comes, on either side; met, or no window, it is not', () => {
    expect(reachable.missed(of({ LF: 1 }, 3, 4))).toBe(2);
    expect(reachable.missed(of({ LF: 1 }, -4, -3))).toBe(-1);
    for (const [low, high] of [
      [2, 3],
      [-3, -1],
      [0, 1],
    ] as const) {
      expect(reachable.missed(of({ LF: 1 }, low, high))).toBeUndefined();
    }
    for (const more of [{ wish: true }, { hard: true }] as const) {
      expect(reachable.missed(of({ LF: 1 }, 3, 4, more))).toBeUndefined();
    }
  });

  it('is fixed where no rack would show a change', () => {
    const fixed = (factors: Partial<Record<Corner, number>>) => reachable.isFixed(of(factors, 0, 1));
    expect([fixed({ RF: 1 }), fixed({ RR: 1 }), fixed({ RF: 1, LR: 1 })]).toEqual([true, true, true]);
    expect([fixed({ LF: 1 }), fixed({ LF: 1, RF: 1 }), fixed({ RR: -5 })]).toEqual([false, false, false]);
  });
});

describe('a plan goes by', () => {
  it('windows that something can be done about, or that are met as it is', () => {
    const [met, missed, moved] = [of({ RF: 1 }, 0, 1), of({ RF: 1 }, 0.6, 1), of({ LF: 1 }, 8, 9)];
    const others = [of({ RF: 1 }, 0.6, 1, { wish: true }), of({ RF: 1 }, 0.6, 1, { hard: true })];
    expect(reachable.worthIt([met, missed, moved, ...others])).toEqual([met, moved, ...others]);
  });

  it('ties without the wheels that are moved and change nothing in them: their share is a constant', () => {
    const tied = of({ LF: 1, RF: -2 }, 0, 1, { constant: 3 });
    expect(reachable.untied(tied)).toEqual({ ...tied, parts: [tied.parts[0]], constant: 3 - 2 * 0.5 });
    // The same number wherever the wheel that moves stands.
    for (const toe of [-1, 0, 2]) {
      const value = ({ parts, constant }: Term) =>
        parts.reduce((sum, { corner, factor }) => sum + factor * (corner === 'LF' ? toe : 0.5), constant);
      expect(value(reachable.untied(tied))).toBe(value(tied));
    }
  });

  it('ties as they are where nothing or everything stays, where a wheel is not moved at all, and limits of parts', () => {
    for (const term of [
      of({ LF: 1 }, 0, 1),
      of({ RF: 1 }, 0, 1),
      of({ LF: 1, LR: 1 }, 0, 1),
      of({ LF: 1, RR: 1 }, 0, 1),
      of({ LF: 1, RF: -1 }, 0, 1, { hard: true }),
    ]) {
      expect(reachable.untied(term)).toBe(term);
    }
  });
});
