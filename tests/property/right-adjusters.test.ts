/** A car that is not its own mirror: the right side's own list of adjusters, against outside poses and every combination. */
import { describe, expect, it } from 'vitest';
import {
  type Adjuster,
  type Axle,
  type Car,
  type CarFile,
  type CarSettings,
  CORNERS,
  type PlanRequest,
  type Reading,
  type Vec3,
} from '../../core/contract.ts';
import {
  adjusterPositions,
  axleCharts,
  axleEffects,
  chartOf,
  mergeCarFiles,
  planChoices,
  planMoves,
  predictReading,
  reachOf,
  solveAxle,
  validateCarFile,
  whatWouldFree,
} from '../../core/index.ts';
import {
  adjustersAt,
  better,
  bruteForce,
  everyCombination,
  randomReading,
  randomSpec,
  type Score,
  score,
  sidesHold,
  WORST,
} from '../tools/brute-force.ts';
import { generalPose } from '../tools/general-pose.ts';
import { oneOf, randomCar, randomSuspension, rod, shims, stream } from '../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../tools/samples.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
const withOwnRight = (axle: Axle, right: readonly Adjuster[] = axle.adjusters): Axle => ({
  ...axle,
  rightAdjusters: copy(right),
});
const outOf = (car: Car, random: () => number): CarSettings =>
  Object.fromEntries(
    CORNERS.map((corner) => [
      corner,
      Object.fromEntries(adjustersAt(car, corner).map((one) => [one.id, oneOf(random, adjusterPositions(one))])),
    ]),
  );

describe('a right list that is the left one again', () => {
  it.each(shortOrLong(upTo(3), upTo(8)))(
    'seed %i: changes no digit of a plan, its choices, its reach or what would free it',
    (seed) => {
      const random = stream(seed + 100);
      const mirror = randomCar(random, 1 / 3);
      const car: Car = { ...mirror, front: withOwnRight(mirror.front), rear: withOwnRight(mirror.rear) };
      const reading = randomReading(random, seed % 2 ? 0.5 : 1.5);
      const spec = { front: randomSpec(random, true), rear: randomSpec(random, false) };
      const asked = (one: Car): PlanRequest => ({ car: one, reading, spec, settings: {} });
      const to = outOf(mirror, random);
      expect(predictReading(car, reading, {}, to)).toEqual(predictReading(mirror, reading, {}, to));
      for (const style of ['closest', 'least-work', 'surest'] as const) {
        expect(planMoves({ ...asked(car), style })).toEqual(planMoves({ ...asked(mirror), style }));
      }
      expect(planChoices(asked(car))).toEqual(planChoices(asked(mirror)));
      expect(reachOf(asked(car), 'RF')).toEqual(reachOf(asked(mirror), 'RF'));
      expect(whatWouldFree(asked(car))).toEqual(whatWouldFree(asked(mirror)));
      expect(axleEffects(car.front)).toEqual(axleEffects(mirror.front));
    },
  );

  it.each(FITTING)('$adjuster on $suspension: neither side is predicted otherwise', ({ suspension, adjuster }) => {
    const random = stream(7);
    const points = randomSuspension(random, suspension);
    const front: Axle = { suspension: points, adjusters: [sampleAdjuster(random, adjuster, points)], steered: true };
    const mirror: Car = { id: 'm', label: 'm', wheel: { rimDiameter: 400 }, front, rear: front };
    const car: Car = { ...mirror, front: withOwnRight(front), rear: withOwnRight(front) };
    const reading = randomReading(random, 0.3);
    const to = outOf(mirror, random);
    expect(predictReading(car, reading, {}, to)).toEqual(predictReading(mirror, reading, {}, to));
  });
});

/** The turned cam's point, mm, by the contract's formula: eccentricity · sin θ along the direction. */
const shifted = (cam: Adjuster, theta: number, at: Vec3): Vec3 =>
  at.map((x, i) => x + cam.eccentricity * Math.sin((theta * Math.PI) / 180) * cam.direction[i]) as unknown as Vec3;

describe('a cam that is fitted the other way round on the right', () => {
  it.each(upTo(6))('seed %i: leans the right wheel as an outside pose has it, and against the left', (seed) => {
    const random = stream(seed + 300);
    const suspension = randomSuspension(random, 'double-wishbone');
    const cam: Adjuster = {
      ...{ id: 'cam', name: 'Cam', kind: 'eccentric-cam', at: 'upperFront', direction: [0, 1, 0] },
      ...{ eccentricity: 4, marks: 24, zero: 'middle', range: [-90, 90], reference: 0 },
    };
    const turned = { ...cam, direction: [0, -1, 0] };
    const front: Axle = { suspension, adjusters: [cam], rightAdjusters: [turned], steered: true };
    const car: Car = { id: 'c', label: 'c', wheel: { rimDiameter: 400 }, front, rear: { ...front, adjusters: [] } };
    const stands = generalPose(suspension, {});
    // The rack reads what the points give: nothing leans otherwise.
    const wheel = { camber: stands.camber, caster: stands.caster as number, toe: stands.toe };
    for (const theta of [-75, -30, 45, 90]) {
      const after = predictReading(car, { LF: wheel, RF: wheel }, {}, { LF: { cam: theta }, RF: { cam: theta } });
      for (const [corner, own] of [
        ['LF', cam],
        ['RF', turned],
      ] as const) {
        const moved = { upperFront: shifted(own, theta, suspension.points.upperFront as Vec3) };
        const pose = generalPose(suspension, { moved });
        expect(after[corner]?.camber).toBeCloseTo(pose.camber, 4);
        expect(after[corner]?.caster).toBeCloseTo(pose.caster as number, 4);
        expect(after[corner]?.toe).toBeCloseTo(pose.toe, 4);
      }
      const gain = (corner: 'LF' | 'RF') => (after[corner]?.camber ?? Number.NaN) - wheel.camber;
      expect(Math.sign(gain('RF'))).toBe(-Math.sign(gain('LF')));
    }
    const { left, right } = axleEffects(front);
    expect(Math.sign(right[0]?.camber ?? 0)).toBe(-Math.sign(left[0]?.camber ?? 0));
    const pair = {
      ...front,
      adjusters: [cam, rod('rod', 'tieInner')],
      rightAdjusters: [turned, rod('rod', 'tieInner')],
    };
    const charts = axleCharts(pair);
    expect(charts.map(({ side }) => side)).toEqual(['left', 'right']);
    expect(charts[0]?.chart).toEqual(chartOf(suspension, pair.adjusters, {}, 'cam', 'rod'));
    expect(charts[1]?.chart).toEqual(chartOf(suspension, pair.rightAdjusters, {}, 'cam', 'rod'));
    expect(axleCharts({ ...front, rightAdjusters: [] })[1]).toEqual({ side: 'right' });
  });
});

/** An axle whose sides differ in all that they can: cam turned round, other shims, another lead, one side alone. */
function lopsided(seed: number, more: Partial<Adjuster> = {}): PlanRequest {
  const random = stream(seed + 700);
  const suspension = randomSuspension(random, 'double-wishbone');
  const tie = { ...rod('tie', 'tieInner', 2 / 3, 1 / 3), ...more };
  const pack = shims(random, 'front', 'upperFront', 3);
  const rear = shims(random, 'rear', 'upperRear', 3);
  const reversed = { ...pack, direction: (pack.direction as Vec3).map((x) => -x) };
  const adjusters = [pack, ...(seed % 3 === 0 ? [] : [rear]), tie];
  const onRight = {
    ...tie,
    lead: 1,
    range: [-1, 1],
    reference: 1 / 3,
    ...(tie.length && { length: tie.length + 0.6 }),
  };
  const rightAdjusters = [...(seed % 2 ? [reversed] : []), rear, ...(seed % 5 === 0 ? [] : [onRight])];
  const front: Axle = { suspension, adjusters, rightAdjusters, steered: true };
  const car: Car = { id: 'l', label: 'l', wheel: { rimDiameter: 420 }, front, rear: { ...front, steered: false } };
  const reading = randomReading(random, seed % 4 === 0 ? 1.5 : 0.5);
  return { car, reading, spec: { front: randomSpec(random, true) }, settings: {} };
}

describe('the plan of a car whose sides differ', () => {
  it.each(shortOrLong(upTo(5), upTo(60)))('seed %i: no combination of both sides is better', (seed) => {
    for (const style of ['closest', 'least-work'] as const) {
      const asked = { ...lopsided(seed), style };
      const plan = planMoves(asked);
      const best = bruteForce(asked, 'front');
      const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: plan.effort };
      expect(plan.inWindow).toBe(best.inWindow);
      expect(better(best, own, best.inWindow ? style : 'closest'), JSON.stringify({ best, own })).toBe(false);
      expect(plan.predicted).toEqual(predictReading(asked.car, asked.reading, {}, plan.positions));
    }
  });

  it.each(shortOrLong(upTo(4), upTo(12)))('seed %i: never moves what a side does not have', (seed) => {
    const asked = lopsided(seed);
    const { moves, positions } = planMoves(asked);
    for (const corner of ['LF', 'RF'] as const) {
      const ids = adjustersAt(asked.car, corner).map(({ id }) => id);
      expect(Object.keys(positions[corner]).sort()).toEqual([...ids].sort());
      for (const move of moves.filter((one) => one.corner === corner)) expect(ids).toContain(move.adjuster);
    }
  });

  it.each(shortOrLong(upTo(4), upTo(40)))(
    'seed %i: keeps rods within the limit by their lengths where those are on file',
    (seed) => {
      const limit = { maxSideDifference: 1, ...(seed % 2 ? { length: 330 } : {}) };
      const asked = lopsided(seed, limit);
      const plan = planMoves(asked);
      const { adjusters, rightAdjusters = [] } = asked.car.front;
      const stands = Object.fromEntries(adjusters.map((one) => [one.id, one.reference]));
      const standsRight = Object.fromEntries(rightAdjusters.map((one) => [one.id, one.reference]));
      // What is beyond the limit as it stands may stay: here nothing is.
      expect(sidesHold(adjusters, stands, standsRight, rightAdjusters)).toBe(true);
      expect(sidesHold(adjusters, plan.positions.LF, plan.positions.RF, rightAdjusters)).toBe(true);
      let best = WORST;
      everyCombination(asked, 'front', (found) => {
        if (better(found, best, 'closest')) best = found;
      });
      expect(plan.distance).toBeLessThan(best.distance + 1e-6);
      const known = plan.noted.filter(({ note }) => note === 'lengths-unknown');
      const tied = rightAdjusters.some(({ id }) => id === 'tie') && plan.moves.some((one) => one.adjuster === 'tie');
      expect(known.length).toBe(tied && limit.length === undefined ? 1 : 0);
      const said = plan.notes.filter((one) => one.startsWith('Front tie: left and right may differ by 1 mm'));
      expect(said).toHaveLength(known.length);
    },
  );
});

describe('an adjuster on one side only', () => {
  const random = stream(41);
  const suspension = randomSuspension(random, 'strut');
  const front: Axle = { suspension, adjusters: [rod('tie', 'tieInner', 4)], rightAdjusters: [], steered: true };
  const car: Car = { id: 'o', label: 'o', wheel: { rimDiameter: 400 }, front, rear: { ...front, adjusters: [] } };
  const toe = { low: -0.05, high: 0.05 };
  const reading: Reading = { LF: { camber: 0, toe: 0.4 }, RF: { camber: 0, toe: 0.4 } };

  it('brings its own wheel in; the other stays, is told of, and has nothing that would free it by travel', () => {
    const plan = planMoves({ car, reading, spec: { front: { toe } }, settings: {} });
    expect(plan.moves.map(({ corner }) => corner)).toEqual(['LF']);
    expect(plan.predicted.RF?.toe).toBeCloseTo(0.4, 12);
    expect(Math.abs(plan.predicted.LF?.toe ?? 1)).toBeLessThan(0.05);
    expect(plan.shortfall.map(({ where }) => where)).toEqual(['RF']);
    expect(reachOf({ car, reading, spec: {}, settings: {} }, 'RF').adjusters).toBe(0);
    const stuck = whatWouldFree({ car, reading, spec: { front: { toe } }, settings: {} });
    expect(stuck.flatMap(({ ways }) => ways.flat()).filter(({ corner }) => corner === 'RF')).toEqual([]);
  });

  it('is refused as a position of the other side', () => {
    expect(() => predictReading(car, reading, {}, { RF: { tie: 1 } })).toThrow('to.RF.tie');
    expect(() => planMoves({ car, reading, spec: { front: { toe } }, settings: { RF: { tie: 1 } } })).toThrow(
      'settings.RF.tie',
    );
  });

  it('of a rigid axle turns it as the same one on the other side turns it the other way', () => {
    const linked = randomSuspension(stream(3), 'beam-linked');
    const own = { ...linked, camber: 0, toe: 0 };
    const bare = { suspension: own, adjusters: [rod('link', 'lowerBody', 2)], steered: false };
    const onLeft = solveAxle({ ...bare, rightAdjusters: [] }, { left: { link: 1 } });
    const onRight = solveAxle({ ...bare, adjusters: [], rightAdjusters: bare.adjusters }, { right: { link: 1 } });
    const mirror = solveAxle(bare, { left: { link: 1 } });
    expect(onLeft).toEqual(mirror);
    if (!onLeft.reachable || !onRight.reachable) throw new Error('no pose');
    expect(Math.abs(onLeft.thrustAngle)).toBeGreaterThan(0.01);
    // With a rod across the axle its two sides are not quite alike: as near as that.
    expect(onRight.thrustAngle).toBeCloseTo(-onLeft.thrustAngle, 1);
    expect(() => solveAxle({ ...bare, rightAdjusters: [] }, { right: { link: 1 } })).toThrow('settings.right.link');
  });
});

it('the score of a predicted plan is the contract’s own', () => {
  const asked = lopsided(1);
  const plan = planMoves(asked);
  expect(plan.distance).toBeCloseTo(score(asked.spec, plan.predicted).distance, 6);
});

it('goes with the car file, and a merge keeps the list at hand and says what the other was', () => {
  const { car } = lopsided(1);
  const file = (one: Car): CarFile =>
    validateCarFile(copy({ format: 'cornerwright', version: 1, car: one, visits: [] }));
  const [a, b] = [file(car), file({ ...car, front: { ...car.front, rightAdjusters: [] } })];
  expect(a.car.front.rightAdjusters).toEqual(car.front.rightAdjusters);
  const { file: merged, notes } = mergeCarFiles(a, b);
  expect(merged.car.front.rightAdjusters).toEqual(car.front.rightAdjusters);
  expect(notes.map(({ field }) => field)).toEqual(['car']);
  expect(mergeCarFiles(b, a).file.car.front.rightAdjusters).toEqual([]);
});

it.each(shortOrLong(upTo(3), upTo(8)))('seed %i: what would free a side is an adjuster that it has', (seed) => {
  const asked = lopsided(seed);
  const far = { low: 3, high: 3.2 };
  const stuck = whatWouldFree({ ...asked, spec: { front: { camber: far, toe: { low: -0.1, high: 0.1 } } } });
  expect(stuck.length).toBeGreaterThan(0);
  for (const { corner, adjuster } of stuck.flatMap(({ ways }) => ways.flat())) {
    expect(adjustersAt(asked.car, corner).map(({ id }) => id)).toContain(adjuster);
  }
});
