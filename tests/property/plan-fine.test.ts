/**
 * Corners and axles with more settings than can be gone through. Against the same car with so few that they can; against
 * a search from outside, which knows only what the rack would read; and against settings about the plan, one by one.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import type { Adjuster, Axle, Car, PlanRequest, PlanStyle, Reading, Settings } from '../../core/contract.ts';
import { chartOf, planChoices, planMoves, predictReading, reachOf, whatWouldFree } from '../../core/index.ts';
import { planOf } from '../../core/plan/plan.ts';
import { score } from '../tools/brute-force.ts';
import { between, type Random, randomSuspension, rod, stream } from '../tools/random-cars.ts';
import { remembered } from '../tools/remembered.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';
import { seenOf } from '../tools/seen.ts';

/** A rod in flats at every link. */
function railed(random: Random, kind: 'five-link' | 'beam-linked', turns: number): Axle {
  const suspension = randomSuspension(random, kind);
  const links = kind === 'five-link' ? [1, 2, 3, 4, 5].map((i) => `inner${i}`) : ['lowerBody', 'upperBody'];
  const adjusters = links.map((link) => rod(link, link, turns));
  if (kind === 'five-link') return { suspension, adjusters, steered: false };
  const lateral = suspension.points.rodBody ? [rod('lateral', 'rodBody', turns)] : [];
  return { suspension, adjusters: [...adjusters, ...lateral], rightAdjusters: adjusters, steered: false };
}

const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });

/** Rods of so many turns either way, found off by what about half of them could take away. */
function request(seed: number, turns: number): PlanRequest {
  const random = stream(seed * 31 + 7);
  const kind = seed % 3 === 2 ? 'beam-linked' : 'five-link';
  const rear = railed(random, kind, turns);
  const off = (share: number): number => between(random, -share, share) * turns;
  const front: Axle = { suspension: randomSuspension(random, 'double-wishbone'), adjusters: [], steered: true };
  const car: Car = { id: 'car', label: 'car', wheel: { rimDiameter: 420 }, front, rear };
  const { camber, toe } = rear.suspension;
  const yaw = off(0.12);
  const wheel = (sign: number) =>
    kind === 'five-link' ? { camber: camber + off(0.3), toe: toe + off(0.5) } : { camber, toe: toe + sign * yaw };
  const both = kind === 'beam-linked' || seed % 2 === 0;
  const reading: Reading = { LR: wheel(1), ...(both && { RR: wheel(-1) }) };
  const wide = between(random, 0.3, 1.5);
  const wheels = { camber: window(camber, 0.3 * wide), toe: window(toe, 0.1 * wide) };
  const axle = both ? { thrustAngle: window(0, 0.04 * wide), totalToe: window(2 * toe, 0.12 * wide) } : {};
  const body = { pinionChange: window(0, 0.4 * wide), lateralChange: window(0, 2 * wide) };
  const spec = { rear: { ...wheels, ...axle, ...(kind === 'beam-linked' && body) } };
  return { car, spec, reading, settings: {} };
}

describe('a car with few enough settings, planned as if it had too many', () => {
  const SEEDS = shortOrLong(upTo(4), upTo(40));
  const TURNS = 1 / 2;
  /** States of a corner from which on they are not all listed. */
  const MOST = 200;
  const planned = (seed: number, style: PlanStyle) => {
    const asked: PlanRequest = { ...request(seed, TURNS), style };
    return { all: planOf(asked), some: planOf(asked, MOST) };
  };
  const closest = remembered((seed: number) => planned(seed, 'closest'));

  it.each(SEEDS)('seed %i: comes as close', (seed) => {
    const { all, some } = closest(seed);
    expect(some.inWindow).toBe(all.inWindow);
    expect(some.distance).toBeCloseTo(all.distance, 9);
    expect(some.optimum.combinations).toBe(all.optimum.combinations);
  });

  it.each(SEEDS)('seed %i: takes as little work, and as near to the aims with it', (seed) => {
    const { all, some } = planned(seed, 'least-work');
    expect(some.inWindow).toBe(all.inWindow);
    expect(some.effort).toBeCloseTo(all.effort, 6);
    if (some.optimum.proven) expect(some.distance).toBeCloseTo(all.distance, 9);
  });

  it.each(SEEDS)('seed %i: is about as sure in the styles that go for that', (seed) => {
    for (const style of ['surest', 'practical'] as const) {
      const { all, some } = planned(seed, style);
      expect(some.inWindow, style).toBe(all.inWindow);
      expect(some.chance, style).toBeGreaterThan(all.chance - 0.03);
    }
  });

  it('most say that they are proven, and some cannot meet their windows', () => {
    const seen = seenOf(['proven', 'in', 'out'], 1, SEEDS, (seed) => {
      const { optimum, inWindow } = closest(seed).some;
      return [...(optimum.proven ? ['proven'] : []), inWindow ? 'in' : 'out'];
    });
    expect(seen.proven).toBeGreaterThan(SEEDS.length / 2);
  });
});

/** Where a search that knows only what the rack would read comes to with rods that turn freely, set to whole flats. */
function fromOutside({ car, spec, reading }: PlanRequest, seed: number) {
  const random = stream(seed + 500);
  const corners = (['LR', 'RR'] as const).filter((corner) => reading[corner]);
  const rods = corners.flatMap((corner) =>
    ((corner === 'RR' && car.rear.rightAdjusters) || car.rear.adjusters).map(({ id }) => ({ corner, id })),
  );
  const put = (turns: readonly number[]) => {
    const at: Record<string, Record<string, number>> = { LR: {}, RR: {} };
    rods.forEach(({ corner, id }, i) => {
      (at[corner] as Record<string, number>)[id] = turns[i] as number;
    });
    return at;
  };
  const rated = (turns: readonly number[]) => score(spec, predictReading(car, reading, {}, put(turns)));
  const windows = (after: Reading): number[] => {
    const { toe, camber, pinionChange, lateralChange } = spec.rear ?? {};
    return [
      ...corners.flatMap((corner) => [
        ((after[corner]?.camber ?? 0) - (camber?.aim ?? 0)) / 0.3,
        ((after[corner]?.toe ?? 0) - (toe?.aim ?? 0)) / 0.1,
      ]),
      ...(pinionChange ? [(after.rear?.pinionChange ?? 0) / 0.4] : []),
      ...(lateralChange ? [(after.rear?.lateralChange ?? 0) / 2] : []),
    ];
  };
  const flats = (turns: number): number => Math.max(-6, Math.min(6, Math.round(turns * 6) / 6));
  let best = { inWindow: false, distance: Number.POSITIVE_INFINITY };
  for (let start = 0; start < shortOrLong(2, 12); start++) {
    const initialValues = rods.map(() => between(random, -2, 2));
    const x = windows(reading).map((_, i) => i);
    const { parameterValues } = levenbergMarquardt(
      { x, y: x.map(() => 0) },
      (turns) => {
        const off = windows(predictReading(car, reading, {}, put(turns)));
        return (i) => off[i] ?? 1e3;
      },
      {
        initialValues,
        damping: 0.1,
        gradientDifference: 1e-3,
        maxIterations: 25,
        minValues: rods.map(() => -6),
        maxValues: rods.map(() => 6),
      },
    );
    for (let near = 0; near < shortOrLong(30, 300); near++) {
      const turns = parameterValues.map((value) => flats(value + (near === 0 ? 0 : between(random, -0.2, 0.2))));
      const one = rated(turns);
      if (one.inWindow === best.inWindow ? one.distance < best.distance : one.inWindow) best = one;
    }
  }
  return best;
}

describe('rods in flats, six turns either way', () => {
  const SEEDS = shortOrLong(upTo(3), upTo(30));
  const planned = remembered((seed: number) => planMoves(request(seed, 6)));

  it.each(SEEDS)(
    'seed %i: the plan is in the windows where a search from outside is, and no further from the aims',
    (seed) => {
      const outside = fromOutside(request(seed, 6), seed);
      const plan = planned(seed);
      if (outside.inWindow) expect(plan.inWindow).toBe(true);
      if (plan.inWindow === outside.inWindow) expect(plan.distance).toBeLessThanOrEqual(outside.distance + 1e-9);
    },
  );

  it('most of them are in their windows', () => {
    const inWindow = SEEDS.filter((seed) => planned(seed).inWindow);
    expect(inWindow.length).toBeGreaterThan(SEEDS.length / 2);
  });

  it.each(SEEDS)('seed %i: where it goes reads what it says, and of settings about it none is better', (seed) => {
    const { car, spec, reading } = request(seed, 6);
    const { positions, predicted, distance, inWindow, optimum } = planned(seed);
    const there = predictReading(car, reading, {}, positions);
    expect(there.LR?.toe).toBeCloseTo(predicted.LR?.toe as number, 9);
    expect(score(spec, there).distance).toBeCloseTo(distance, 9);
    const random = stream(seed + 900);
    const reach = optimum.proven ? 72 : (optimum.around ?? 0);
    const shifted = (settings: Settings): Settings =>
      Object.fromEntries(
        Object.entries(settings).map(([id, at]) => {
          const by = Math.round(between(random, -1, 1) ** 3 * reach);
          return [id, Math.max(-6, Math.min(6, (at as number) + by / 6))];
        }),
      );
    for (let tried = 0; tried < shortOrLong(150, 3000); tried++) {
      const to = { ...positions, LR: shifted(positions.LR), ...(reading.RR && { RR: shifted(positions.RR) }) };
      const after = predictReading(car, reading, {}, to);
      if (after.unreachable) continue;
      const other = score(spec, after);
      expect(other.distance).toBeGreaterThanOrEqual((optimum.bound ?? 0) - 1e-9);
      if (inWindow && !other.inWindow) continue;
      expect(other.distance).toBeGreaterThanOrEqual(distance - 1e-9);
    }
  });

  it('some are proven against all others and some about them only, and that is said', () => {
    const seen = seenOf(['proven', 'around'], 1, SEEDS, (seed) => {
      const { optimum, notes } = planned(seed);
      const said = notes.filter((note) => note.includes('too many to try each'));
      expect(said).toHaveLength(optimum.proven ? 0 : 1);
      if (optimum.around)
        expect(said[0]).toMatch(
          /There are 2073 million settings.* No setting with every adjuster within \d+ \w+ of it/,
        );
      return [optimum.proven ? 'proven' : 'around'];
    });
    expect(Object.keys(seen)).toHaveLength(2);
  });

  it('what is locked stays, in every style', () => {
    const locked = [{ corner: 'LR', adjuster: 'inner5' }] as const;
    for (const style of ['closest', 'least-work', 'surest', 'practical'] as const) {
      const plan = planMoves({ ...request(4, 6), locked, style });
      expect(plan.inWindow, style).toBe(true);
      expect(plan.moves.length, style).toBeGreaterThan(0);
      expect(plan.moves.some(({ corner, adjuster }) => corner === 'LR' && adjuster === 'inner5')).toBe(false);
    }
  });

  it('the choices, the chart and the picture of what can be reached are there', () => {
    const asked = request(4, 6);
    const choices = planChoices(asked);
    expect(choices.flatMap(({ styles }) => styles)).toEqual(
      expect.arrayContaining(['practical', 'surest', 'closest', 'least-work']),
    );
    const { suspension, adjusters } = asked.car.rear;
    expect(chartOf(suspension, adjusters, {}, 'inner1', 'inner5').cells.length).toBeGreaterThan(20);
    const random = stream(77);
    const reach = reachOf(asked, 'LR');
    expect(reach.all.inWindow).toBe(true);
    const [wide, high] = reach.all.within;
    for (let tried = 0; tried < 200; tried++) {
      const turned = Object.fromEntries(adjusters.map(({ id }) => [id, Math.round(between(random, -36, 36)) / 6]));
      const { toe = 0, camber = 0 } = predictReading(asked.car, asked.reading, {}, { LR: turned }).LR ?? {};
      const [[left, right], [low, top]] = reach.view;
      if (!(toe > left && toe < right && camber > low && camber < top)) continue;
      const isNear = reach.all.places.some(([x, y]) => Math.hypot((x - toe) / wide, (y - camber) / high) < 1);
      expect(isNear, `${toe} ${camber}`).toBe(true);
    }
  });

  it('what would free one that is out of reach is found, and does', () => {
    const asked = request(1, 6);
    // As far as the rods go and a little further.
    const { camber = 0, toe = 0 } = asked.reading.LR ?? {};
    const [least] = reachOf(asked, 'LR').extent[1];
    const high = asked.spec.rear?.camber?.high ?? 0;
    const stuck: PlanRequest = { ...asked, reading: { LR: { camber: high + (camber - least) + 0.2, toe } } };
    expect(planMoves(stuck).inWindow).toBe(false);
    const [one] = whatWouldFree(stuck);
    const [way] = one?.ways ?? [];
    expect(way?.length).toBeGreaterThan(0);
    const longer = (own: Adjuster): Adjuster => {
      const { further } = way?.find(({ adjuster }) => adjuster === own.id) ?? {};
      if (!further) return own;
      const [low, high] = own.range as [number, number];
      // To the next whole flat.
      const by = further.by + 1 / 6;
      return { ...own, range: further.way === 'longer' ? [low, high + by] : [low - by, high] };
    };
    const { rear } = stuck.car;
    const freed = { ...stuck.car, rear: { ...rear, adjusters: rear.adjusters.map(longer) } };
    expect(planMoves({ ...stuck, car: freed }).inWindow).toBe(true);
  });

  it('rods that go further than the links allow are planned as far as those go', () => {
    const plan = planMoves(request(1, 18));
    expect(plan.inWindow).toBe(true);
    expect(plan.distance).toBeLessThan(1e-3);
  });

  it('what is beyond all reach is refused by the name of what is too fine', () => {
    const asked = request(1, 6);
    const rear = {
      ...asked.car.rear,
      adjusters: asked.car.rear.adjusters.map((own) => ({ ...own, range: [-34, 34] })),
    };
    expect(() => planMoves({ ...asked, car: { ...asked.car, rear } })).toThrow(
      /rear\.adjusters.*up to 500000 combinations of two adjusters a corner.*“inner5” 409/,
    );
  });
});
