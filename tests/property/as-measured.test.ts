/** The car as it was found: the model shows what was read, with the points as entered; and it then predicts better. */
import { describe, expect, it } from 'vitest';
import type { Axle, Car, CornerPose, Reading, Suspension } from '../../core/contract.ts';
import { expectReading, predictReading, solveAxle, solveCorner, suspensionKinds } from '../../core/index.ts';
import { asMeasured } from '../../core/plan/as-measured.ts';
import { between, type Random, randomAxle, randomSuspension, rod, stream } from '../tools/random-cars.ts';

const KINDS = Object.values(suspensionKinds).filter(({ points }) => points.length > 0);
const chart: Axle = {
  suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 },
  adjusters: [],
  steered: false,
};
const carOf = (rear: Axle): Car => ({
  id: 'found',
  label: 'Found',
  wheel: { rimDiameter: 420 },
  front: { ...chart, steered: true },
  rear,
});
const found = (random: Random): Reading => ({
  LR: { camber: between(random, -3, 3), toe: between(random, -1, 1) },
  RR: { camber: between(random, -3, 3), toe: between(random, -1, 1) },
});

describe.each(KINDS.map((kind) => [kind.kind, kind] as const))('%s', (name, kind) => {
  const random = stream(71);
  const suspension = randomSuspension(random, name);
  const axle: Axle = { suspension, adjusters: [], steered: false };
  const reading = found(random);
  const car = carOf(axle);
  const measured = asMeasured(car, reading, {}).rear;

  it('shows what was read, wheel by wheel, to a billionth of a degree', () => {
    const side = (own: Suspension): CornerPose => {
      const pose = solveCorner(own, [], {});
      if (!pose.reachable) throw new Error(pose.message);
      return pose;
    };
    const joined = kind.rigidAxle ? solveAxle(measured) : undefined;
    if (joined && !joined.reachable) throw new Error(joined.message);
    const left = joined ? joined.left : side(measured.suspension);
    const right = joined ? joined.right : side(measured.rightSuspension as Suspension);
    for (const angle of ['camber', 'toe'] as const) {
      expect(left[angle]).toBeCloseTo(reading.LR?.[angle] as number, 8);
      expect(right[angle]).toBeCloseTo(reading.RR?.[angle] as number, 8);
    }
  });

  it('leaves the points and every unmeasured wheel as they were entered', () => {
    expect(measured.suspension.points).toEqual(suspension.points);
    const one = asMeasured(car, { LR: reading.LR as object }, {}).rear;
    expect(one.rightSuspension).toMatchObject({ camber: suspension.camber, toe: suspension.toe });
    expect(asMeasured(car, {}, {})).toEqual(car);
  });
});

describe('what the rack should read', () => {
  const CASES = Array.from({ length: 40 }, (_, i) => i + 1);

  /** Toe after moves, degrees: as of a car that was entered as it leans, as expected, and by the model as entered. */
  function predictions(seed: number) {
    const random = stream(seed + 900);
    const suspension = randomSuspension(random, 'five-link');
    const adjusters = [rod('a', 'inner1', 4), rod('b', 'inner4', 4)];
    const entered = carOf({ suspension, adjusters, steered: false });
    const reading = found(random);
    const leaning = { ...suspension, ...(reading.LR as { camber: number; toe: number }) };
    const truly = carOf({ suspension: leaning, adjusters, steered: false });
    const to = { LR: { a: between(random, -3, 3), b: between(random, -3, 3) } };
    const left: Reading = { LR: reading.LR as object };
    const toe = (after: Reading): number => after.LR?.toe ?? Number.NaN;
    return {
      truth: toe(predictReading(truly, left, {}, to)),
      expected: toe(expectReading(entered, left, {}, to)),
      plain: toe(predictReading(entered, left, {}, to)),
    };
  }

  it.each(CASES)(
    'seed %i: a wheel that leans otherwise than entered is predicted as if it had been entered so',
    (seed) => {
      const { truth, expected } = predictions(seed);
      expect(expected).toBeCloseTo(truth, 7);
    },
  );

  it('which the model as entered does not do', () => {
    const squares = CASES.map(predictions).map(({ truth, plain }) => (plain - truth) ** 2);
    expect(Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / CASES.length)).toBeGreaterThan(0.005);
  });

  it('is plain prediction where the wheels were read as they were entered', () => {
    const random = stream(5);
    const axle = randomAxle(random, 'five-link', false);
    const car = carOf(axle);
    const { camber, toe } = axle.suspension;
    const [one] = axle.adjusters;
    const reading: Reading = { LR: { camber, toe } };
    const to = { LR: { [one?.id ?? '']: one?.reference ?? 0 } };
    const [a, b] = [expectReading(car, reading, {}, to), predictReading(car, reading, {}, to)];
    expect(a.LR?.camber).toBeCloseTo(b.LR?.camber as number, 9);
    expect(a.LR?.toe).toBeCloseTo(b.LR?.toe as number, 9);
  });
});
