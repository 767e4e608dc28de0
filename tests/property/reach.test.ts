/** The reach picture's data against every combination of positions, tried one by one with nothing but `predictReading`. */
import { describe, expect, it } from 'vitest';
import {
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type PlanRequest,
  type Window,
} from '../../core/contract.ts';
import { type Place, planMoves, predictReading, type Reach, type Reached, reachOf } from '../../core/index.ts';
import { combinations, randomReading, randomSpec } from '../tools/brute-force.ts';
import { oneOf, randomAxle, randomCar, randomSuspension, rod, shims, stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';
import { seenOf } from '../tools/seen.ts';

const SEEDS = shortOrLong([1, 3, 7, 11, 14, 20], upTo(24));
/** Degrees that a full solve may part from what was interpolated on the way, and as much again for the edge of a view. */
const EXACT = 1e-6;

interface Case {
  readonly request: PlanRequest;
  readonly corner: Corner;
  readonly to?: CarSettings;
}

/** Two leaning adjusters and a rod of many turns, of which one may be locked; packs that may not part; a rigid axle. */
function carOf(seed: number): Car {
  const random = stream(seed * 31);
  const car = randomCar(random, seed % 4 === 0 ? 2 : 1 / 3);
  if (seed % 6 === 1) {
    const pair = { with: 'second', most: 1.5 };
    const packs = [{ ...shims(random, 'first', 'upperFront'), pair }, shims(random, 'second', 'upperRear')];
    return { ...car, front: { ...car.front, adjusters: [...packs, rod('rod', 'tieInner', 1)] } };
  }
  if (seed % 6 === 2) {
    const adjusters = [rod('lower', 'lowerBody', 1, 0.25), { ...rod('upper', 'upperBody', 1, 0.25), lead: 2 }];
    return { ...car, rear: { suspension: randomSuspension(random, 'beam-linked'), adjusters, steered: false } };
  }
  return car;
}

function caseOf(seed: number): Case {
  const random = stream(seed * 977);
  const car = carOf(seed);
  const front = seed % 6 === 1 || (seed % 6 !== 2 && random() < 0.6);
  const corner = oneOf(random, front ? (['LF', 'RF'] as const) : (['LR', 'RR'] as const));
  const spec = { front: randomSpec(random, true), rear: randomSpec(random, false) };
  const toeReference = seed % 2 ? ('thrust-line' as const) : ('centreline' as const);
  const adjuster = car[front ? 'front' : 'rear'].adjusters[1]?.id as string;
  const locked = seed % 5 === 0 ? [{ corner, adjuster }] : [];
  const request = { car, spec, reading: { ...randomReading(random, 0.8), toeReference }, settings: {}, locked };
  return seed % 3 === 0 ? { request, corner } : { request, corner, to: planMoves(request).positions };
}

/** What the rack reads at every combination, the other corners where the plan puts them. */
function everywhere({ request: { car, reading, locked = [] }, corner, to = {} }: Case, { across }: Reach) {
  const fixed = locked.map(({ adjuster }) => adjuster);
  return combinations(car, corner, fixed).map((settings) => {
    const wheel = predictReading(car, reading, {}, { ...to, [corner]: settings })[corner];
    return { place: [wheel?.[across], wheel?.camber] as unknown as Place, toe: wheel?.toe as number };
  });
}

const holds = (window: Window | undefined, x: number): boolean =>
  !window || (x >= window.low - 1e-9 && x <= window.high + 1e-9);

/** The wheel's own window, or half of the axle's total toe. */
function toeWindow({ request: { spec }, corner }: Case): Window | undefined {
  const axle = corner.endsWith('F') ? spec.front : spec.rear;
  const total = axle?.totalToe;
  return axle?.toe ?? (total && { low: total.low / 2, high: total.high / 2 });
}

/** Every place drawn is some combination's, and every combination in the view is as near to a place as is said. */
function expectTrue(reached: Reached, { view, windows }: Reach, all: readonly Place[]): void {
  expect(reached.places.length).toBeLessThanOrEqual(600);
  for (const place of reached.places) {
    expect(all.some((one) => Math.hypot(one[0] - place[0], one[1] - place[1]) < EXACT)).toBe(true);
  }
  const inView = (place: Place) =>
    place.every((x, i) => x > (view[i]?.[0] ?? x) + EXACT && x < (view[i]?.[1] ?? x) - EXACT);
  const apart = (a: Place, b: Place) =>
    Math.hypot((a[0] - b[0]) / reached.within[0], (a[1] - b[1]) / reached.within[1]);
  for (const place of all.filter(inView)) {
    expect(
      reached.places.some((one) => apart(one, place) < 1 + EXACT),
      `${place}`,
    ).toBe(true);
  }
  expect(reached.inWindow).toBe(all.some((place) => place.every((x, i) => holds(windows[i], x))));
}

describe('what the adjusters of a corner can reach', () => {
  it.each(SEEDS)('seed %i: all of it and nothing else', (seed) => {
    const given = caseOf(seed);
    const reach = reachOf(given.request, given.corner, given.to);
    const all = everywhere(given, reach);
    const places = all.map(({ place }) => place);
    expect(reach.across).toBe(given.corner.endsWith('F') ? 'caster' : 'toe');
    const own = given.request.spec[given.corner.endsWith('F') ? 'front' : 'rear'];
    expect(reach.windows[0]).toEqual(reach.across === 'caster' ? own?.caster : toeWindow(given));
    expect(reach.windows[1]).toEqual((given.corner.startsWith('L') ? own?.left?.camber : undefined) ?? own?.camber);
    expectTrue(reach.all, reach, places);
    for (const axis of [0, 1] as const) {
      const values = places.map((place) => place[axis]);
      expect(reach.extent[axis][0]).toBeCloseTo(Math.min(...values), 5);
      expect(reach.extent[axis][1]).toBeCloseTo(Math.max(...values), 5);
    }
    const toe = toeWindow(given);
    expect(reach.withToe !== undefined).toBe(reach.across === 'caster' && toe !== undefined);
    const held = all.filter((one) => holds(toe, one.toe)).map(({ place }) => place);
    if (reach.withToe) expectTrue(reach.withToe, reach, held);
  });

  it('some of these reach their window and some do not, some are thinned, some are about caster', () => {
    const sorts = ['inWindow', 'withToe', 'thinned', 'caster'].flatMap((what) => [what, `not ${what}`]);
    const seen = seenOf(sorts, 1, SEEDS, (seed) => {
      const { request, corner, to } = caseOf(seed);
      const { all, withToe, across } = reachOf(request, corner, to);
      const fixed = (request.locked ?? []).map(({ adjuster }) => adjuster);
      const thinned = all.places.length < combinations(request.car, corner, fixed).length;
      const is = { inWindow: all.inWindow, withToe: withToe?.inWindow, thinned, caster: across === 'caster' };
      return Object.entries(is).map(([what, yes]) => (yes ? what : `not ${what}`));
    });
    for (const [sort, count] of Object.entries(seen)) {
      expect(count, sort).toBeGreaterThan(sort.startsWith('not') ? 0 : 1);
    }
  });

  it.each(upTo(24))('seed %i: the plan ends in it, in the view, where it says', (seed) => {
    const given = caseOf(seed);
    const plan = planMoves(given.request);
    for (const corner of CORNERS) {
      const { planned, found, across, ...reach } = reachOf(given.request, corner, plan.positions);
      const [end, start] = [plan.predicted[corner], given.request.reading[corner]];
      expect(planned).toEqual([end?.[across], end?.camber]);
      expect(found).toEqual([start?.[across], start?.camber]);
      const { places, within } = reach.all;
      const away = ([x, y]: Place) =>
        Math.hypot((x - (planned?.[0] ?? NaN)) / within[0], (y - (planned?.[1] ?? NaN)) / within[1]);
      expect(Math.min(...places.map(away))).toBeLessThan(1 + EXACT);
      reach.view.forEach(([low, high], axis) => {
        for (const mark of [planned, found]) expect(mark?.[axis]).toBeGreaterThanOrEqual(low);
        for (const mark of [planned, found]) expect(mark?.[axis]).toBeLessThanOrEqual(high);
        expect(reach.windows[axis]?.low ?? low).toBeGreaterThanOrEqual(low);
        expect(reach.windows[axis]?.high ?? high).toBeLessThanOrEqual(high);
      });
      expect(JSON.stringify(reach)).not.toMatch(/NaN|Infinity/);
    }
  });

  it('is the same left and right', () => {
    for (const seed of SEEDS.slice(0, 8)) {
      const random = stream(seed);
      const car = { ...randomCar(random), rear: randomAxle(random, 'five-link', false) };
      const wheel = { caster: 3.1, camber: -0.7, toe: 0.2 };
      const spec = { front: { ...randomSpec(random, true), left: {} } };
      const of = (corner: Corner) => reachOf({ car, spec, reading: { LF: wheel, RF: wheel }, settings: {} }, corner);
      expect({ ...of('RF'), corner: 'LF' }).toEqual(of('LF'));
    }
  });

  it('with nothing to move is where the wheel was found', () => {
    const { request, corner } = caseOf(3);
    const locked = ['first', 'second', 'rod'].map((adjuster) => ({ corner, adjuster }));
    const { adjusters, all, found } = reachOf({ ...request, locked }, corner);
    expect(adjusters).toBe(0);
    expect(all.places).toHaveLength(1);
    all.places[0]?.forEach((x, axis) => {
      expect(x).toBeCloseTo(found[axis as 0 | 1], 9);
    });
  });
});
