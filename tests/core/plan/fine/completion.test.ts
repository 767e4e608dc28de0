/** What stands in for solves of very many settings, against the solves; what is found near to what is wanted, against all. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Axle, Car } from '../../../../core/contract.ts';
import { Completion, type Wanted } from '../../../../core/plan/fine/completion.ts';
import { PairTables } from '../../../../core/plan/fine/pair-tables.ts';
import { axesOf } from '../../../../core/plan/states/axis.ts';
import { compileCar } from '../../../../core/pose/car-model.ts';
import { between, eccentric, randomSuspension, rod, stream } from '../../../tools/random-cars.ts';
import { upTo } from '../../../tools/seeds.ts';

/** Tables of a corner with four rods and a cam, or of an axle with rods at all its links, about somewhere. */
function tablesOf(seed: number, turns: number, within?: number) {
  const random = stream(seed * 17);
  const isCorner = seed % 2 === 1;
  const suspension = randomSuspension(random, isCorner ? 'five-link' : 'beam-linked');
  const links = isCorner ? ['inner1', 'inner2', 'inner4', 'inner5'] : ['lowerBody', 'upperBody'];
  const rods: Adjuster[] = links.map((link) => rod(link, link, turns));
  const adjusters = isCorner ? [...rods, eccentric(random, 'cam', 'inner3')] : rods;
  const rear: Axle = { suspension, adjusters, steered: false };
  const front: Axle = { suspension: randomSuspension(random, 'double-wishbone'), adjusters: [], steered: true };
  const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 400 }, front, rear };
  const assembly = compileCar(car)[2];
  if (!assembly) throw new Error('no rear');
  const stands = assembly.sides.map(({ adjusters: movable }) => ({
    measured: { camber: -1, toe: 0.2 },
    current: Object.fromEntries(movable.map(({ id, reference }) => [id, reference])),
    movable,
    ties: [],
  }));
  const { axes } = axesOf(stands);
  const digits = axes.map(({ positions }) => Math.floor(between(random, 0.3, 0.7) * positions.length));
  return { random, tables: new PairTables(assembly, stands, axes, within ? { digits, within } : undefined) };
}

const solved = (tables: PairTables, ranks: readonly number[]): Float64Array => {
  const out = new Float64Array(tables.numbers);
  tables.solve(ranks, out);
  return out;
};
const summed = (tables: PairTables, ranks: readonly number[]): Float64Array => {
  const out = new Float64Array(tables.numbers);
  tables.sum(ranks, out);
  return out;
};
const off = (a: Float64Array, b: Float64Array): number[] => Array.from(a, (x, k) => Math.abs(x - (b[k] ?? Number.NaN)));

describe('tables of what adjusters change, alone and two together', () => {
  it.each(upTo(6))('seed %i: with one or two elsewhere they are as exact as they say', (seed) => {
    const { random, tables } = tablesOf(seed, 6);
    let told = 0;
    for (let tried = 0; tried < 200; tried++) {
      const ranks = tables.ranks();
      for (let moved = 0; moved < 2; moved++) {
        const axis = Math.floor(random() * ranks.length);
        ranks[axis] = Math.floor(random() * (tables.axes[axis]?.digits.length ?? 0));
      }
      const sum = summed(tables, ranks);
      // Where links end on the way the tables may have a gap; they never tell of a pose that is none.
      if (Number.isNaN(sum[0])) continue;
      told++;
      for (const x of off(sum, solved(tables, ranks))) expect(x).toBeLessThanOrEqual(tables.slack);
    }
    expect(told).toBeGreaterThan(100);
    expect(tables.slack).toBeLessThan(1e-3);
  });

  it.each(upTo(6))('seed %i: with all elsewhere they are no further off than they say', (seed) => {
    const { random, tables } = tablesOf(seed, 6, 12);
    for (let tried = 0; tried < 300; tried++) {
      const ranks = tables.axes.map(({ digits: { length } }) =>
        Math.min(length - 1, Math.floor(between(random, -0.2, 1.2) * length)),
      );
      const within = ranks.map((rank) => Math.max(0, rank));
      const [sum, exact] = [summed(tables, within), solved(tables, within)];
      if (Number.isNaN(sum[0]) || Number.isNaN(exact[0])) continue;
      off(sum, exact).forEach((x, k) => {
        expect(x).toBeLessThanOrEqual(tables.looseness[k] as number);
      });
    }
  });
});

describe('settings near to what is wanted', () => {
  it.each(upTo(12))('seed %i: are all that there are, each found once, at what they cost', (seed) => {
    const { random, tables } = tablesOf(seed, 1 / 2);
    const parts = seed % 2 === 1 ? [0, 2] : [2, 6, 7];
    const wanted = parts.map((at): Wanted => {
      const factors = new Float64Array(tables.numbers);
      factors[at] = 1 / between(random, 0.1, 0.4);
      return { factors, offset: -(factors[at] as number) * ((tables.base[at] ?? 0) + between(random, -0.2, 0.2)) };
    });
    const completion = new Completion(tables, wanted);
    const costAt = (ranks: readonly number[]): number => {
      const numbers = summed(tables, ranks);
      const offs = wanted.map(({ factors, offset }) =>
        factors.reduce((sum, x, k) => sum + x * (numbers[k] ?? 0), offset),
      );
      return offs.reduce((sum, x) => sum + x * x, 0);
    };
    let every: number[][] = [[]];
    for (const { digits } of tables.axes)
      every = every.flatMap((one) => [...digits.keys()].map((rank) => [...one, rank]));
    const costs = new Map(every.map((ranks) => [ranks.join(), costAt(ranks)]));
    const sorted = [...costs.values()].filter((cost) => !Number.isNaN(cost)).sort((a, b) => a - b);
    const limit = sorted[Math.floor(sorted.length / 20)] ?? Number.NaN;
    const all = [...tables.axes.keys()];
    const pivots = completion.pivots(all);
    expect(pivots.length).toBeGreaterThan(0);
    const free = all
      .filter((axis) => !pivots.includes(axis))
      .map((axis) => ({ axis, ranks: [...(tables.axes[axis]?.digits.keys() ?? [])] }));
    const found = new Map<string, number>();
    completion.visit(
      free,
      pivots,
      (ranks, cost) => {
        expect(found.has(ranks.join())).toBe(false);
        found.set(ranks.join(), cost);
        return true;
      },
      limit * (1 + 1e-9),
    );
    for (const [key, cost] of found) expect(cost).toBeCloseTo(costs.get(key) as number, 8);
    const due = [...costs].filter(([, cost]) => cost <= limit).map(([key]) => key);
    expect([...found.keys()].sort()).toEqual(due.sort());
  });
});
