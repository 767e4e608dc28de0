/** The share of draws in the windows, against chances that have a closed form; and the draws themselves. */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Car, Corner } from '../../../../core/contract.ts';
import { chanceOf } from '../../../../core/plan/chance/chance.ts';
import { normals } from '../../../../core/plan/chance/random.ts';
import type { Term } from '../../../../core/plan/terms.ts';
import { compileCar } from '../../../../core/pose/car-model.ts';
import { LAYOUTS } from '../../../tools/random-cars.ts';

const below = (z: number): number => (1 + erf(z / Math.SQRT2)) / 2;
/** 2048 draws know a share to 0.011 (one standard deviation) at the worst. */
const OFF = 0.035;

const unknown = { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: false };
const beam = { kind: 'beam-linked', points: LAYOUTS['beam-linked'] ?? {}, camber: 0, toe: 0 };
const car: Car = {
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: { ...unknown, steered: true },
  rear: { ...unknown, suspension: beam },
};
/** Left front, right front, the rear axle. */
const assemblies = compileCar(car);

type Part = readonly [corner: Corner, angle: number, factor: number];
function term(low: number, high: number, parts: readonly Part[], constant = 0): Term {
  const window = { low, high, aim: (low + high) / 2, half: (high - low) / 2 };
  const own = parts.map(([corner, angle, factor]) => ({ corner, angle, factor }));
  return { where: 'front', angle: 'toe', parts: own, constant, window };
}
const FAR = 100;

/** Covariance of some angles, the first ones of a wheel or an axle. */
function covarianceOf(size: number, entries: readonly (readonly [i: number, j: number, value: number])[]) {
  const all = new Float64Array(size * size);
  for (const [i, j, value] of entries) {
    all[size * i + j] = value;
    all[size * j + i] = value;
  }
  return all;
}
/** Three angles a wheel; the axle's body has two numbers more. */
const SIZES = [3, 3, 8] as const;
const still = () => SIZES.map((size) => new Float64Array(size ** 2));
const middle = (values: Readonly<Record<number, readonly number[]>> = {}) =>
  SIZES.map((length, a) => Float64Array.from({ length }, (_, k) => values[a]?.[k] ?? 0));

describe('the chance that all is in its window', () => {
  it('is 1 or 0 where nothing is in doubt', () => {
    const toe = (value: number) =>
      chanceOf([term(-1, 1, [['LF', 2, 1]])], assemblies, middle({ 0: [0, 0, value] }), still());
    expect([toe(0), toe(1), toe(-1), toe(1.01), toe(-1.01)]).toEqual([1, 1, 1, 0, 0]);
    expect(chanceOf([], assemblies, middle(), still())).toBe(1);
  });

  it.each([
    [-1, 1, 0, 1],
    [-0.5, 2, 0.4, 0.7],
    [0.1, 0.3, 0.25, 0.2],
  ])('of one window %d…%d about a mean of %d with a standard deviation of %d', (low, high, mean, sigma) => {
    for (const [a, angle, corner, size] of [
      [0, 2, 'LF', 3],
      [1, 0, 'RF', 3],
      [2, 4, 'RR', 8],
    ] as const) {
      const covariances = still();
      covariances[a] = covarianceOf(size, [[angle, angle, sigma ** 2]]);
      const means = middle({ [a]: Array.from({ length: size }, (_, k) => (k === angle ? mean : 9)) });
      const own = corner === 'RR' ? angle - 3 : angle;
      const chance = chanceOf([term(low, high, [[corner, own, 1]])], assemblies, means, covariances);
      expect(Math.abs(chance - (below((high - mean) / sigma) - below((low - mean) / sigma)))).toBeLessThan(OFF);
    }
  });

  // That both of two angles are above their means: 1/4 + asin(ρ)/2π.
  it.each([-0.9, -0.4, 0, 0.6, 0.95])('of two angles that go together by %d', (rho) => {
    for (const [i, j] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      const covariances = still();
      covariances[0] = covarianceOf(3, [
        [i, i, 4],
        [j, j, 0.25],
        [i, j, rho],
      ]);
      const both = [i, j].map((angle) => term(0, FAR, [['LF', angle, 1]]));
      const chance = chanceOf(both, assemblies, middle(), covariances);
      expect(Math.abs(chance - (0.25 + Math.asin(rho) / (2 * Math.PI)))).toBeLessThan(OFF);
    }
  });

  it('of an angle of either end of an axle that go together wholly is that of one', () => {
    const covariances = still();
    covariances[2] = covarianceOf(8, [
      [2, 2, 1],
      [5, 5, 1],
      [2, 5, 1],
    ]);
    const difference = term(-1e-6, 1e-6, [
      ['LR', 2, 1],
      ['RR', 2, -1],
    ]);
    expect(chanceOf([difference], assemblies, middle(), covariances)).toBe(1);
    const half = chanceOf([difference, term(0, FAR, [['RR', 2, 1]])], assemblies, middle(), covariances);
    expect(Math.abs(half - 0.5)).toBeLessThan(OFF);
  });

  it('of wheels that know nothing of one another is the product; of their sum, by the sum of variances', () => {
    const covariances = still();
    for (const [a, size] of [
      [0, 3],
      [1, 3],
      [2, 8],
    ] as const)
      covariances[a] = covarianceOf(size, [[2, 2, 1]]);
    const own = (['LF', 'RF', 'LR'] as const).map((corner) => term(-1, 1, [[corner, 2, 1]]));
    const each = below(1) - below(-1);
    for (const n of [1, 2, 3]) {
      expect(Math.abs(chanceOf(own.slice(0, n), assemblies, middle(), covariances) - each ** n)).toBeLessThan(OFF);
    }
    const sum = term(
      -1,
      2,
      [
        ['LF', 2, 1],
        ['RF', 2, -2],
      ],
      0.5,
    );
    const sigma = Math.sqrt(5);
    const wanted = below(1.5 / sigma) - below(-1.5 / sigma);
    expect(Math.abs(chanceOf([sum], assemblies, middle(), covariances) - wanted)).toBeLessThan(OFF);
  });
});

describe('the draws', () => {
  const count = 20_000;
  const drawn = (seed: number) => Array.from({ length: count }, normals(seed));
  const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

  it.each([1, 20261125, 4294967295])('of seed %d are normal and know nothing of one another', (seed) => {
    const all = drawn(seed);
    // Four standard deviations of what so many tell.
    const near = 4 / Math.sqrt(count);
    expect(Math.abs(mean(all))).toBeLessThan(near);
    expect(Math.abs(mean(all.map((x) => x * x)) - 1)).toBeLessThan(near * Math.SQRT2);
    for (const z of [-2, -1, -0.3, 0.3, 1, 2]) {
      expect(Math.abs(all.filter((x) => x < z).length / count - below(z))).toBeLessThan(near / 2);
    }
    for (const lag of [1, 2, 3])
      expect(Math.abs(mean(all.slice(lag).map((x, i) => x * (all[i] ?? 0))))).toBeLessThan(near);
    expect(new Set(all).size).toBeGreaterThan(count - 10);
  });

  it('are the same for the same seed, and others for another', () => {
    expect(drawn(5)).toEqual(drawn(5));
    expect(drawn(5)[0]).not.toBe(drawn(6)[0]);
  });
});
