/** The few unknowns of a completion, against mathjs and against what holds of a least sum by definition. */
import { index, lusolve, type Matrix, matrix, multiply, norm, subset, transpose } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { LeastSquares } from '../../../../core/plan/fine/least-squares.ts';
import { between, stream } from '../../../tools/random-cars.ts';
import { upTo } from '../../../tools/seeds.ts';

function problem(seed: number) {
  const random = stream(seed * 13 + 5);
  const many = 1 + (seed % 3);
  const size = many + Math.floor(between(random, 0, 3));
  const fit = new LeastSquares(many, size);
  fit.slopes.forEach((_, i) => {
    fit.slopes[i] = between(random, -1, 1);
  });
  fit.off.forEach((_, i) => {
    fit.off[i] = between(random, -2, 2);
  });
  /** Things by unknowns. */
  const a = matrix(
    Array.from({ length: size }, (_, t) => Array.from({ length: many }, (_, i) => fit.slopes[i * size + t] as number)),
  );
  const normal = multiply(transpose(a), a) as Matrix;
  const off = [...fit.off];
  const leftAt = (by: readonly number[]): number =>
    off.reduce((sum, x, t) => {
      const own = by.reduce((all, step, i) => all + step * (fit.slopes[i * size + t] as number), x);
      return sum + own * own;
    }, 0);
  return { random, many, fit, a, normal, off, leftAt };
}

describe('a few unknowns by least squares', () => {
  it.each(upTo(24))('seed %i: are those of the normal equations, and leave what they leave', (seed) => {
    const { fit, a, normal, off, leftAt } = problem(seed);
    fit.solve();
    const right = multiply(
      transpose(a),
      off.map((x) => -x),
    ) as Matrix;
    const outside = (lusolve(normal, right) as Matrix).toArray().flat() as number[];
    outside.forEach((x, i) => {
      expect(fit.by[i]).toBeCloseTo(x, 6);
    });
    expect(fit.left()).toBeCloseTo(leftAt([...fit.by]), 9);
  });

  it.each(upTo(24))('seed %i: one may go so far, the others following, until the sum is 1 greater', (seed) => {
    const { many, fit, normal, leftAt } = problem(seed);
    fit.solve();
    const least = fit.left();
    for (let i = 0; i < many; i++) {
      const there = [...fit.by];
      there[i] = (there[i] as number) + fit.room(i);
      // The others where they are best with this one held, by mathjs.
      const others = there.map((_, k) => k).filter((k) => k !== i);
      if (others.length > 0) {
        const square = others.map((r) => others.map((c) => subset(normal, index(r, c)) as unknown as number));
        const pull = others.map((r) => -(subset(normal, index(r, i)) as unknown as number) * fit.room(i));
        const follow = (lusolve(square, pull) as number[][]).flat();
        others.forEach((k, at) => {
          there[k] = (there[k] as number) + (follow[at] as number);
        });
      }
      expect(leftAt(there) - least).toBeCloseTo(1, 6);
    }
  });

  it.each(upTo(24))('seed %i: within limits none that may move would gain by it', (seed) => {
    const { random, many, fit, leftAt } = problem(seed);
    for (let i = 0; i < many; i++) {
      fit.low[i] = between(random, -1, 0);
      fit.high[i] = between(random, 0, 1);
    }
    fit.solveWithin();
    const least = leftAt([...fit.by]);
    expect(fit.isWithin).toBe(true);
    for (let tried = 0; tried < 200; tried++) {
      const there = fit.by.map((_, i) => between(random, fit.low[i] as number, fit.high[i] as number));
      // It stops where a sweep moves less than a thousandth.
      expect(leftAt([...there])).toBeGreaterThan(least - 0.02);
    }
  });

  it('say whether they are within their limits, the limits too', () => {
    const fit = new LeastSquares(2, 2);
    fit.high.fill(1);
    for (const [by, within] of [
      [[0, 1], true],
      [[0.5, 0.5], true],
      [[-0.01, 1], false],
      [[0, 1.01], false],
      [[Number.NaN, 0], false],
    ] as const) {
      fit.by.set(by);
      expect(fit.isWithin, String(by)).toBe(within);
    }
  });

  it('are no numbers where they cannot be told apart', () => {
    const fit = new LeastSquares(2, 2);
    fit.slopes.set([1, 0, 1, 0]);
    fit.off.set([1, 1]);
    fit.solve();
    expect(norm([...fit.by].map((x) => (Number.isFinite(x) ? 0 : 1)))).toBeGreaterThan(0);
  });
});
