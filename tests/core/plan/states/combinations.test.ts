/** Combinations of positions, counted out one by one with nested loops. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Position } from '../../../../core/contract.ts';
import { axesOf, samePosition } from '../../../../core/plan/states/axis.ts';
import { Combinations } from '../../../../core/plan/states/combinations.ts';
import type { CornerStand } from '../../../../core/plan/states/corner-stand.ts';

/** Steps from 0 on, by a chart. */
const steps = (id: string, count: number, more: Readonly<Record<string, unknown>> = {}): Adjuster => ({
  id,
  kind: 'effect-table',
  perStep: { toe: 0.1 },
  range: [0, count - 1],
  reference: 0,
  effort: count,
  ...more,
});
const labels = (id: string, all: readonly Position[], reference: Position): Adjuster => ({
  id,
  kind: 'effect-table',
  positions: all.map((label) => ({ label })),
  reference,
  effort: 3,
});
const standOf = (movable: readonly Adjuster[], more: Partial<CornerStand> = {}): CornerStand => ({
  measured: {},
  current: {},
  ties: [],
  movable,
  ...more,
});

describe('the positions of an adjuster', () => {
  const only = (adjuster: Adjuster, more: Partial<CornerStand> = {}) => {
    const [axis, ...others] = axesOf([standOf([adjuster], more)]).axes;
    expect(others).toEqual([]);
    return axis;
  };

  it('are all of its own, among them where it stands', () => {
    expect(only(steps('a', 4), { current: { a: 2 } })).toMatchObject({ positions: [0, 1, 2, 3], current: 2, side: 0 });
    expect(only(steps('a', 4))).toMatchObject({ positions: [0, 1, 2, 3], current: 0, minutes: 4 });
    expect(only(labels('a', ['1', '2', 'x'], '2'))).toMatchObject({ positions: ['1', '2', 'x'], current: 1 });
  });

  it('have a stand between marks at their end', () => {
    expect(only(steps('a', 3), { current: { a: 0.5 } })).toMatchObject({ positions: [0, 1, 2, 0.5], current: 3 });
  });

  it('are those there are parts for, and where it stands', () => {
    const allows = (_: Adjuster, position: Position) => (position as number) > 1;
    expect(only(steps('a', 4), { allows })).toMatchObject({ positions: [2, 3, 0], current: 2 });
    expect(only(steps('a', 4), { allows, current: { a: 3 } })).toMatchObject({ positions: [2, 3], current: 1 });
  });

  it('are others where others are to be tried', () => {
    const instead = new Map([['a', [7, 8]]]);
    expect(only(steps('a', 4), { instead, current: { a: 8 } })).toMatchObject({ positions: [7, 8], current: 1 });
    expect(only(steps('b', 3), { instead })).toMatchObject({ positions: [0, 1, 2] });
  });

  it('take the minutes of the kind where none are given', () => {
    const { effort: _, ...bare } = steps('a', 3);
    const minutes = only(bare as Adjuster)?.minutes ?? 0;
    expect(minutes).toBeGreaterThan(0);
    expect(only(steps('a', 3))?.minutes).toBe(3);
  });

  it('of an unknown kind are none', () => {
    expect(() => only({ id: 'a', kind: 'no such kind', reference: 0 })).toThrow('no such kind');
  });

  it.each([
    [1, 1 + 1e-9, true],
    [1, 1.001, false],
    [3, '3', true],
    ['3', 3, true],
    ['3', '4', false],
    ['x', 'x', true],
    [1, -1, false],
  ])('%j and %j are the same: %s', (a, b, same) => {
    expect(samePosition(a, b)).toBe(same);
  });
});

describe('the last adjuster', () => {
  const order = (...stands: readonly (readonly Adjuster[])[]) => {
    const { axes, isLastFine } = axesOf(stands.map((movable) => standOf(movable)));
    return { ids: axes.map(({ side, adjuster }) => `${side} ${adjuster.id}`), isLastFine };
  };
  const many = Array.from({ length: 20 }, (_, i) => i);

  it.each([
    ['none has many positions', [[steps('a', 11), steps('b', 3)]], ['0 a', '0 b'], false],
    ['one has just enough', [[steps('a', 12), steps('b', 3)]], ['0 b', '0 a'], true],
    [
      'the one with the most comes last',
      [[steps('a', 13), steps('b', 40), steps('c', 20)]],
      ['0 a', '0 c', '0 b'],
      true,
    ],
    ['of two alike the first', [[steps('a', 13), steps('b', 13)]], ['0 b', '0 a'], true],
    ['labels are not numbers', [[labels('a', many.map(String), '3'), steps('b', 2)]], ['0 a', '0 b'], false],
    ['nor is what stands on one', [[labels('a', many, '3'), steps('b', 2)]], ['0 a', '0 b'], false],
    ['on either side', [[steps('a', 15)], [steps('a', 2), steps('b', 14)]], ['1 a', '1 b', '0 a'], true],
  ] as const)('%s', (_, stands, ids, isLastFine) => {
    expect(order(...stands)).toEqual({ ids, isLastFine });
  });
});

describe('combinations of 3, 1, 4 and 2 positions', () => {
  const adjusters = [3, 1, 4, 2].map((count, i) => steps(`a${i}`, count, { effort: [5, 7, 2.5, 11][i] }));
  const current = { a0: 1, a2: 3 };
  const all = new Combinations(axesOf([standOf(adjusters, { current })]).axes);
  /** Each with the last digit first to change. */
  const digits: number[][] = [];
  for (let a = 0; a < 3; a++) for (let c = 0; c < 4; c++) for (let d = 0; d < 2; d++) digits.push([a, 0, c, d]);

  it('are as many, each with its digits', () => {
    expect(all.count).toBe(24);
    expect(digits.map((_, state) => [0, 1, 2, 3].map((axis) => all.digit(state, axis)))).toEqual(digits);
  });

  it('take the minutes of what is moved', () => {
    const wanted = digits.map(([a, , c, d]) => (a === 1 ? 0 : 5) + (c === 3 ? 0 : 2.5) + (d === 0 ? 0 : 11));
    expect([...all.minutes()]).toEqual(wanted);
  });

  it('are numbered by some of the adjusters alone', () => {
    expect([...all.partOf([0, 2])]).toEqual(digits.map(([a, , c]) => 4 * (a ?? 0) + (c ?? 0)));
    expect([...all.partOf([3])]).toEqual(digits.map(([, , , d]) => d));
    expect([...all.partOf([])]).toEqual(digits.map(() => 0));
  });
});
