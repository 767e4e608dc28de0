/** Plans with shims that are counted, against every combination that the drawer can serve, tried one by one. */
import { describe, expect, it } from 'vitest';
import type {
  AxleSpec,
  Car,
  CarSettings,
  Move,
  PlanRequest,
  PlanStyle,
  Reading,
  Settings,
  WheelReading,
} from '../../core/contract.ts';
import { planChoices, planMoves, predictReading, shimStack } from '../../core/index.ts';
import {
  better,
  combinations,
  everyCombination,
  randomReading,
  randomSpec,
  type Score,
  WORST,
} from '../tools/brute-force.ts';
import { judgeOf, mixedPack, randomDrawer } from '../tools/drawer.ts';
import { oneOf, type Random, randomSuspension, rod, stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

/** Two packs and a rod of a few positions a side in front, one pack a side in the rear. */
function carOf(random: Random): Car {
  return {
    id: 'random',
    label: 'Random car',
    wheel: { rimDiameter: 420 },
    front: {
      suspension: randomSuspension(random, 'double-wishbone'),
      adjusters: [
        mixedPack(random, 'first', 'upperFront'),
        mixedPack(random, 'second', 'upperRear'),
        rod('rod', 'tieInner', 1 / 6),
      ],
      steered: true,
    },
    rear: {
      suspension: randomSuspension(random, 'five-link'),
      adjusters: [mixedPack(random, 'pack', 'inner1')],
      steered: false,
    },
  };
}

/** Narrow windows about where some combination of the front goes: with shims enough they can be met. */
function within(random: Random, car: Car, reading: Reading): AxleSpec {
  const to = { LF: oneOf(random, combinations(car, 'LF')), RF: oneOf(random, combinations(car, 'RF')) };
  const there = predictReading(car, reading, {}, to);
  const about = (value: number, half: number) => ({ low: value - half, high: value + half });
  const side = ({ camber = 0, caster = 0 }: WheelReading = {}) => ({
    camber: about(camber, 0.2),
    caster: about(caster, 0.4),
  });
  return { left: side(there.LF), right: side(there.RF) };
}

const styles: readonly PlanStyle[] = ['closest', 'least-work'];
function request(seed: number): PlanRequest {
  const random = stream(seed + 7000);
  const car = carOf(random);
  const reading = randomReading(random, seed % 3 === 0 ? 1.2 : 0.4);
  const spec = { front: seed % 4 < 2 ? randomSpec(random, true) : within(random, car, reading) };
  const drawer = randomDrawer(random, seed % 4 ? 4 : 1);
  return { car, spec, reading, settings: {}, drawer, style: styles[seed % 2] as PlanStyle };
}

const scoreOf = ({ inWindow, distance, effort }: Score): Score => ({ inWindow, distance, effort });

/** Shims of the moves come out of the drawer and out of the packs that are moved, and make what the move says. */
function accounted({ car, drawer = [] }: PlanRequest, moves: readonly Move[]): void {
  const left = new Map(drawer.map(({ size, count }) => [size, count]));
  for (const { corner, adjuster, from, to, shims } of moves) {
    const pack = car[corner.endsWith('F') ? 'front' : 'rear'].adjusters.find(({ id }) => id === adjuster);
    if (pack?.kind !== 'shim-pack' || !pack.sizes.some((size: number) => drawer.some((one) => one.size === size))) {
      expect(shims).toBeUndefined();
      continue;
    }
    expect(shims?.reduce((sum, { size, count }) => sum + size * count, 0)).toBeCloseTo(to as number, 9);
    expect(shims?.reduce((sum, { count }) => sum + count, 0)).toBeLessThanOrEqual(pack.maxCount ?? 99);
    const held = shimStack(from as number, pack.sizes);
    const add = (size: number, count: number) => left.set(size, (left.get(size) ?? Number.POSITIVE_INFINITY) + count);
    for (const { size, count } of held.exact ? held.shims : []) add(size, count);
    for (const { size, count } of shims ?? []) add(size, -count);
  }
  expect(Math.min(0, ...left.values())).toBe(0);
}

const ALL = upTo(64);
const SEEDS = shortOrLong([1, 3, 7, 25, 32, 36, 56, 63], ALL);
const KEPT = 'keep the windows out of reach';

describe('a plan of what the drawer can serve', () => {
  it.each(SEEDS)('seed %i: can be served, and no other combination that can be is better', (seed) => {
    const asked = request(seed);
    const style = asked.style ?? 'closest';
    const served = judgeOf(asked);
    const plan = planMoves(asked);
    let best: Score = WORST;
    let any: Score = WORST;
    everyCombination(asked, 'front', (found, LF, RF) => {
      if (better(found, any, style)) any = found;
      if (better(found, best, style) && served({ LF, RF })) best = found;
    });
    expect(served({ LF: plan.positions.LF, RF: plan.positions.RF })).toBe(true);
    accounted(asked, plan.moves);
    const own = scoreOf(plan);
    expect(own.inWindow).toBe(best.inWindow);
    expect(better(best, own, style), JSON.stringify({ best, own })).toBe(false);
    expect(better(own, best, style), JSON.stringify({ best, own })).toBe(false);
    const told = plan.notes.some((note) => note.includes(KEPT));
    expect(told).toBe(any.inWindow && !best.inWindow);
    const surest = planMoves({ ...asked, style: 'surest' });
    expect(served({ LF: surest.positions.LF, RF: surest.positions.RF })).toBe(true);
    accounted(asked, surest.moves);
    expect(surest.inWindow).toBe(best.inWindow);
    expect(surest.chance).toBeGreaterThanOrEqual(plan.chance);
  });

  it('the cases above hold drawers that matter and those that do not', () => {
    const plans = SEEDS.map((seed) => {
      const { drawer: _, ...plenty } = request(seed);
      const [plan, any] = [planMoves(request(seed)), planMoves(plenty)];
      const tight = better(scoreOf(any), scoreOf(plan), plenty.style ?? 'closest');
      return { tight, reached: plan.inWindow, kept: plan.notes.some((note) => note.includes(KEPT)) };
    });
    const count = (what: 'tight' | 'reached' | 'kept') => plans.filter((one) => one[what]).length;
    expect(count('tight')).toBeGreaterThan((SEEDS.length * 5) / 16);
    expect(count('tight')).toBeLessThan((SEEDS.length * 15) / 16);
    expect(count('reached')).toBeGreaterThan((SEEDS.length * 5) / 32);
    expect(count('kept')).toBeGreaterThan(SEEDS.length / 21);
  });

  it.each(shortOrLong([1, 8, 10, 12, 19, 21, 22, 30], upTo(30)))(
    'seed %i: front and rear share it, though no window ties them',
    (seed) => {
      const random = stream(seed + 8000);
      const given = request(seed);
      const spec = { front: given.spec.front ?? {}, rear: randomSpec(random, false) };
      const locked = (['LF', 'RF'] as const).flatMap((corner) =>
        ['second', 'rod'].map((adjuster) => ({ corner, adjuster })),
      );
      const asked: PlanRequest = { ...given, spec, locked, style: 'closest' };
      const served = judgeOf(asked);
      const lists = (['front', 'rear'] as const).map((axle) => {
        const list: { score: Score; at: CarSettings }[] = [];
        everyCombination(asked, axle, (score, l: Settings, r: Settings) => {
          list.push({ score, at: axle === 'front' ? { LF: l, RF: r } : { LR: l, RR: r } });
        });
        return list;
      });
      let best = WORST;
      for (const front of lists[0] ?? []) {
        for (const rear of lists[1] ?? []) {
          const both: Score = {
            inWindow: front.score.inWindow && rear.score.inWindow,
            distance: front.score.distance + rear.score.distance,
            effort: front.score.effort + rear.score.effort,
          };
          if (better(both, best, 'closest') && served({ ...front.at, ...rear.at })) best = both;
        }
      }
      const plan = planMoves(asked);
      expect(served(plan.positions)).toBe(true);
      accounted(asked, plan.moves);
      expect(plan.inWindow).toBe(best.inWindow);
      expect(plan.distance).toBeCloseTo(best.distance, 6);
    },
  );

  it.each(shortOrLong([1, 6, 7, 8, 9, 12], upTo(15)))(
    'seed %i: so can each of the plans worth choosing among',
    (seed) => {
      const asked = request(seed);
      const served = judgeOf(asked);
      for (const { ask } of planChoices(asked)) expect(served(planMoves({ ...asked, ...ask }).positions)).toBe(true);
    },
  );

  it('what it says is missing is enough', () => {
    let tried = 0;
    for (const asked of ALL.map(request)) {
      const note = planMoves(asked).notes.find((one) => one.includes(KEPT));
      if (!note) continue;
      tried++;
      const more = [...note.matchAll(/(\d+)\s×\s([\d.]+)\smm/g)].map(([, count, size]) => [
        Number(size),
        Number(count),
      ]);
      const drawer = asked.drawer?.map(({ size, count }) => ({
        size,
        count: count + (more.find(([one]) => one === size)?.[1] ?? 0),
      }));
      expect(planMoves({ ...asked, drawer: drawer ?? [] }).inWindow).toBe(true);
    }
    expect(tried).toBeGreaterThan(3);
  });

  it('a pack stays as it is, whatever it is made of and however empty the drawer', () => {
    const asked = request(2);
    const drawer = [0.5, 1, 1.5, 2, 3].map((size) => ({ size, count: 0 }));
    // 0.7 mm are of no size: nothing is known to come out of them, and nothing may be put in their place.
    const settings = { LF: { first: 0.7, second: 0.7 }, RF: { first: 0.7, second: 0.7 } };
    const plan = planMoves({ ...asked, settings, drawer });
    for (const corner of ['LF', 'RF'] as const) {
      for (const id of ['first', 'second']) expect([0, 0.7]).toContain(plan.positions[corner][id]);
    }
  });

  it('tells which pack to open first, where its shims are needed before its turn', () => {
    const notes = ALL.map(request).flatMap((asked) => {
      const { moves, notes } = planMoves(asked);
      return notes.filter((note) => note.endsWith('open that first.')).map((note) => ({ asked, moves, note }));
    });
    expect(notes.length).toBeGreaterThan(0);
    for (const { asked, moves, note } of notes) {
      const [, taker, count, size, giver] =
        /^(\w\w \w+) takes (\d+)\s×\s([\d.]+)\smm.* out of (\w\w \w+)/.exec(note) ?? [];
      const order = moves.map(({ corner, adjuster }) => `${corner} ${adjuster}`);
      expect(order.indexOf(taker ?? '')).toBeLessThan(order.indexOf(giver ?? ''));
      const there = asked.drawer?.find((one) => one.size === Number(size));
      expect(there).toBeDefined();
      expect(Number(count)).toBeGreaterThan(0);
    }
  });
});
