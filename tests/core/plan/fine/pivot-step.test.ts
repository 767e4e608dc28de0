/** Two pivots whose steps hang on one another, against a look at every pair of positions. */
import { describe, expect, it } from 'vitest';
import { PivotStep } from '../../../../core/plan/fine/pivot-step.ts';
import { between, stream } from '../../../tools/random-cars.ts';
import { upTo } from '../../../tools/seeds.ts';

const LENGTH = 801;
const SIZE = 2;

/**
 * Two terms of the form ax + by + exy + base, both 0 at a place between positions. How steep they are there is chosen, and
 * what xy adds makes them steeper or flatter elsewhere.
 */
function termsOf(seed: number, [low, high]: readonly [number, number] = [550, 650]) {
  const random = stream(seed * 29 + 11);
  const [x0, y0] = [between(random, low, high), between(random, 450, 600)];
  const turn = between(random, 0, 2 * Math.PI);
  const steep = [
    [0.2 * Math.cos(turn), 0.16 * Math.sin(turn + 0.3)],
    [-0.2 * Math.sin(turn), 0.16 * Math.cos(turn + 0.3)],
  ] as const;
  return {
    random,
    at: [x0, y0] as const,
    terms: steep.map(([dx, dy]) => {
      const e = between(random, -4e-4, 4e-4);
      const [a, b] = [dx - e * y0, dy - e * x0];
      return { a, b, e, base: -(a * x0 + b * y0 + e * x0 * y0) };
    }),
  };
}
type Terms = ReturnType<typeof termsOf>['terms'];

const costAt = (terms: Terms, x: number, y: number): number =>
  terms.reduce((sum, { a, b, e, base }) => sum + (a * x + b * y + e * x * y + base) ** 2, 0);

/** Every pair of ranks that is shown, with its cost, from a start some way off. */
function shown({ random, at, terms }: ReturnType<typeof termsOf>, limit?: number): Map<string, number> {
  const ranks = Uint16Array.from(at, (place) => Math.max(0, Math.min(LENGTH - 1, place + between(random, -60, 60))));
  const numbers = (count: number, of: (i: number, term: Terms[number]) => number) =>
    Float64Array.from({ length: count * SIZE }, (_, i) => of(Math.floor(i / SIZE), terms[i % SIZE] as Terms[number]));
  const values = numbers(LENGTH ** 2, (i, { e }) => e * Math.floor(i / LENGTH) * (i % LENGTH));
  const row = LENGTH * SIZE;
  const found = new Map<string, number>();
  const step = new PivotStep(
    {
      ranks,
      size: SIZE,
      length: () => LENGTH,
      together: (axis) => (axis === 0 ? { values, step: row, stride: SIZE } : { values, step: SIZE, stride: row }),
    },
    [0, 1],
    (own, cost) => {
      expect(found.has(own.join())).toBe(false);
      found.set(own.join(), cost);
      return true;
    },
    limit,
  );
  const sums = new Map([
    [0, numbers(LENGTH, (x, { a }) => a * x)],
    [1, numbers(LENGTH, (y, { b }) => b * y)],
  ]);
  step.settle(
    numbers(1, (_, { base }) => base),
    sums,
  );
  return found;
}

describe('two pivots whose steps hang on one another', () => {
  it.each(upTo(8))('seed %i: all pairs that cost little enough are shown, each at its cost', (seed) => {
    const problem = termsOf(seed);
    const limit = 0.8;
    const found = shown(problem, limit);
    for (const [key, cost] of found) {
      const [x = Number.NaN, y = Number.NaN] = key.split(',').map(Number);
      expect(cost).toBeCloseTo(costAt(problem.terms, x, y), 9);
      expect(cost).toBeLessThanOrEqual(limit);
    }
    // About the middle: further off the terms may come back to 0, and bend by more than is allowed for.
    const [x0, y0] = problem.at.map(Math.round) as [number, number];
    let due = 0;
    for (let x = x0 - 12; x <= x0 + 12; x++) {
      for (let y = y0 - 12; y <= y0 + 12; y++) {
        if (!(costAt(problem.terms, x, y) <= 0.95 * limit)) continue;
        due++;
        expect(found.has(`${x},${y}`)).toBe(true);
      }
    }
    expect(due).toBeGreaterThan(30);
  });

  it.each(upTo(8))('seed %i: without a limit the best of those about the place is shown', (seed) => {
    const problem = termsOf(seed);
    const [[key, cost] = ['', Number.NaN], ...more] = [...shown(problem)];
    expect(more).toEqual([]);
    const [x = Number.NaN, y = Number.NaN] = key.split(',').map(Number);
    const [x0, y0] = problem.at;
    const about = [Math.floor(x0), Math.ceil(x0)].flatMap((a) =>
      [Math.floor(y0), Math.ceil(y0)].map((b) => costAt(problem.terms, a, b)),
    );
    expect(cost).toBeCloseTo(costAt(problem.terms, x, y), 9);
    expect(cost).toBeLessThanOrEqual(Math.min(...about) + 1e-9);
  });

  it.each(upTo(8))('seed %i: where the place is beyond an end, it is the best at that end', (seed) => {
    for (const beyond of [
      [-30, -2],
      [LENGTH + 1, LENGTH + 30],
    ] as const) {
      const problem = termsOf(seed, beyond);
      const [[key, cost] = ['', Number.NaN]] = [...shown(problem)];
      const end = beyond[0] < 0 ? 0 : LENGTH - 1;
      const there = Array.from({ length: LENGTH }, (_, y) => costAt(problem.terms, end, y));
      expect(key.split(',')[0]).toBe(`${end}`);
      expect(cost).toBeCloseTo(Math.min(...there), 9);
    }
  });
});
