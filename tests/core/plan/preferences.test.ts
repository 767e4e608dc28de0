/** What a careful hand prefers: costs from 0 to 1 for every kind, and the ones that the contract names. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Position } from '../../../core/contract.ts';
import { adjusterKinds, adjusterPositions } from '../../../core/index.ts';
import { type Made, MOVE_PREFERENCES, PAIR_PREFERENCES } from '../../../core/plan/preferences.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../../tools/samples.ts';

const made = (adjuster: Adjuster, from: Position, to: Position): Made => ({
  ...{ adjuster, from, to },
  kind: adjusterKinds[adjuster.kind]!,
});
const costOf = (id: string, move: Made): number => MOVE_PREFERENCES.find((one) => one.id === id)!.cost(move);

describe('what a careful hand prefers', () => {
  it.each(Object.keys(adjusterKinds))(
    'costs from 0 to 1 for every move of a %s, and more or as much for more of it',
    (name) => {
      const random = stream(5);
      const { suspension } = FITTING.find(({ adjuster }) => adjuster === name)!;
      const one = sampleAdjuster(random, name, randomSuspension(random, suspension));
      for (const to of adjusterPositions(one)) {
        const move = made(one, one.reference, to);
        for (const { cost } of MOVE_PREFERENCES) {
          expect(cost(move)).toBeGreaterThanOrEqual(0);
          expect(cost(move)).toBeLessThanOrEqual(1);
        }
        for (const { cost } of PAIR_PREFERENCES) {
          expect(cost(move, move)).toBe(0);
          expect(cost(move, made(one, one.reference, one.reference))).toBeGreaterThanOrEqual(0);
        }
      }
    },
  );

  const cam = (zero: 'middle' | 'end', range: readonly number[]): Adjuster => ({
    ...{ id: 'cam', kind: 'eccentric-cam', at: 'inner1', direction: [0, 1, 0], eccentricity: 4 },
    ...{ marks: 72, range, zero, reference: 45 },
  });
  it.each([
    ['middle', [-90, 90], (turn: number) => Math.abs(turn) > 70],
    ['end', [0, 180], (turn: number) => Math.abs(turn - 90) > 70],
  ] as const)(
    'a cam with its scale from the %s is at dead centre beyond 70° from where it moves most',
    (zero, range, dead) => {
      const one = cam(zero, range);
      for (const to of adjusterPositions(one) as number[]) {
        expect(costOf('dead-centre', made(one, 45, to)), String(to)).toBe(dead(to) ? 1 : 0);
        expect(costOf('end-of-travel', made(one, 45, to))).toBe(range.includes(to as never) ? 1 : 0);
      }
    },
  );

  it('a thin wedge costs less than a thick one, whichever way it lies', () => {
    const shim: Adjuster = { id: 'hub', kind: 'wedge-shim', degrees: [0.25, 0.5, 1], marks: 8, reference: 'none' };
    const size = (to: string) => costOf('small-parts', made(shim, 'none', to));
    expect([size('none'), size('0.25@90'), size('0.5@180'), size('1@0')]).toEqual([0, 0.25, 0.5, 1]);
    const axle: Adjuster = { id: 'wedge', kind: 'axle-wedge', degrees: [-1, 1.5, 3], reference: 0 };
    const under = (to: number) => costOf('small-parts', made(axle, 0, to));
    expect([under(0), under(-1), under(1.5), under(3)]).toEqual([0, 1 / 3, 0.5, 1]);
  });

  it('a small move costs less than a large one; rods that are changed as much, one longer and one shorter, are alike', () => {
    const rod: Adjuster = {
      ...{
        id: 'rod',
        kind: 'threaded-rod',
        links: ['lowerBody'],
        lead: 1.5,
        stepTurns: 0.25,
        range: [-5, 5],
        reference: 0,
      },
    };
    expect(costOf('small-moves', made(rod, 0, 1))).toBeCloseTo(0.1, 12);
    expect(costOf('small-moves', made(rod, 0, -4))).toBeCloseTo(0.4, 12);
    const [{ cost }] = PAIR_PREFERENCES as [(typeof PAIR_PREFERENCES)[number]];
    expect(cost(made(rod, 0, 1.5), made(rod, 0, -1.5))).toBe(0);
    expect(cost(made(rod, 0, -4), made(rod, 0, -6))).toBeGreaterThan(cost(made(rod, 0, -4), made(rod, 0, -5)));
  });
});
