/** States that may still be chosen, against the same worked out state by state. */
import { describe, expect, it } from 'vitest';
import {
  madeSearch,
  ownCost,
  randomSearch,
  realOf,
  SEEDS,
  sorted,
  termsOf,
  WHEELS,
} from '../../../tools/made-search.ts';
import { madeTerm, madeTie, randomStates } from '../../../tools/made-states.ts';
import { between, stream } from '../../../tools/random-cars.ts';

describe('what may be chosen', () => {
  it.each(SEEDS)('seed %i: what a state costs alone, by hand', (seed) => {
    const search = randomSearch(seed);
    search.candidates.forEach((own, a) => {
      expect(sorted(own.order)).toEqual(realOf(own.states));
      for (const state of own.order) expect(own.costs[state]).toBeCloseTo(ownCost(search, a, state), 9);
      const costs = realOf(own.states).map((state) => ownCost(search, a, state));
      expect(ownCost(search, a, own.cheapest)).toBeCloseTo(Math.min(...costs), 9);
    });
  });

  it.each(SEEDS)(
    'seed %i: with slack no more than what any angle within it would cost, and as much for some',
    (seed) => {
      const slack = 0.05;
      const search = randomSearch(seed, { slack });
      search.candidates.forEach((own, a) => {
        for (const state of own.order) {
          const own2 = termsOf(search, own.states.corners[0]).reduce((sum, { parts, constant, window }) => {
            const [part] = parts;
            const value = constant + (part?.factor ?? NaN) * (own.states.near(state)[part?.angle ?? -1] ?? NaN);
            const nearest = Math.min(value + slack, Math.max(value - slack, window.aim));
            return sum + ((nearest - window.aim) / window.half) ** 2;
          }, 0);
          expect(own.costs[state], `${a} ${state}`).toBeCloseTo(own2, 9);
        }
      });
    },
  );

  it.each(SEEDS)('seed %i: where the windows have to be met, whatever may be in them within the slack', (seed) => {
    const slack = 0.05;
    const search = randomSearch(seed, { slack, half: 0.5, goal: { inWindow: true, effortFirst: false } });
    search.candidates.forEach((own, a) => {
      const mayBeIn = (state: number): boolean =>
        termsOf(search, own.states.corners[0]).every(({ parts: [part], constant, window }) => {
          const value = constant + (part?.factor ?? NaN) * (own.states.near(state)[part?.angle ?? -1] ?? NaN);
          return value > window.low - slack && value < window.high + slack;
        });
      expect(sorted(own.order), `${a}`).toEqual(realOf(own.states).filter(mayBeIn));
    });
  });

  it('counts an angle by the sharpest window that it takes part in, a tie as a half window', () => {
    const random = stream(3);
    const states = WHEELS.slice(0, 2).map((corner) => randomStates(random, corner, 5));
    const one = (angle: number, half: number, factor = 1) => madeTerm([{ corner: 'LF', angle, factor }], 0, half);
    const both = [
      { corner: 'LF' as const, angle: 1, factor: -0.5 },
      { corner: 'RF' as const, angle: 2, factor: 1 },
    ];
    const terms = [one(0, 0.5), one(0, 0.25), one(0, 2), madeTerm(both, 0, 0.1), madeTie('LF', 'RF', 1)];
    const { candidates } = madeSearch(states, terms);
    expect(candidates.map(({ weights }) => weights)).toEqual([
      [4, 5, 0, 1],
      [0, 0, 10, 1],
    ]);
  });

  it.each(SEEDS)('seed %i: the least of a parabola added, and of some states only', (seed) => {
    const { random, candidates } = randomSearch(seed);
    for (const own of candidates) {
      const vector = (length: number) => Float64Array.from({ length }, () => between(random, -2, 2));
      const [slope, square] = [vector(4), vector(16)];
      const at = (state: number, bent: boolean): number => {
        const v = own.states.near(state);
        let cost = own.costs[state] ?? NaN;
        v.forEach((x, k) => {
          cost += (slope[k] ?? NaN) * x;
          if (bent) for (const [l, y] of v.entries()) cost += x * (square[4 * k + l] ?? NaN) * y;
        });
        return cost;
      };
      const all = realOf(own.states);
      const some = all.filter((_, i) => i % 2 === 1);
      const least = (of: readonly number[], bent: boolean) => Math.min(...of.map((state) => at(state, bent)));
      expect(at(own.least(slope), false)).toBeCloseTo(least(all, false), 9);
      expect(at(own.least(slope, square), true)).toBeCloseTo(least(all, true), 9);
      expect(at(own.least(slope, undefined, Uint32Array.from(some)), false)).toBeCloseTo(least(some, false), 9);
      expect(own.least(slope, square, new Uint32Array())).toBe(-1);
    }
  });

  it.each(SEEDS)('seed %i: those near by are within so many half windows in every angle', (seed) => {
    const { candidates } = randomSearch(seed, { count: 40 });
    for (const own of candidates) {
      const middle = own.cheapest;
      const away = (state: number): number =>
        Math.max(
          ...own.weights.map((weight, k) =>
            Math.abs(weight * ((own.states.near(state)[k] ?? NaN) - (own.states.near(middle)[k] ?? NaN))),
          ),
        );
      const near = own.near(middle, 0.9);
      expect(sorted(near)).toEqual(realOf(own.states).filter((state) => away(state) <= 0.9));
      expect(near.length).toBeLessThan(own.order.length);
    }
  });
});
