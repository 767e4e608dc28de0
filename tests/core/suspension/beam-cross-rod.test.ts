/** Two knuckles, a cross rod and a drag link, against two solvers that are none of the core (tests/tools/knuckles.ts). */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Axle, Car, Settings, Suspension, Vec3 } from '../../../core/contract.ts';
import {
  heightEffect,
  planMoves,
  predictReading,
  sideEffects,
  solveAxle,
  solveCorner,
  validateCar,
} from '../../../core/index.ts';
import { flip, knuckle, mirroredRods, rodsOf, steeredBy, turnFor, turnsInPlane } from '../../tools/knuckles.ts';
import { apart } from '../../tools/pose.ts';
import { randomSuspension, rod, stream } from '../../tools/random-cars.ts';
import { refusalOf } from '../../tools/spoil.ts';

const KIND = 'beam-cross-rod';
const LEAD = 2;
const rods: readonly Adjuster[] = [
  { ...rod('drag', 'dragBody', 6, 1 / 12), lead: LEAD },
  { ...rod('cross', 'crossNear', 6, 1 / 12), lead: LEAD },
];
const axleOf = (suspension: Suspension, more: object = {}): Axle => ({
  suspension,
  adjusters: rods,
  steered: true,
  ...more,
});
const deg = (radians: number): number => (radians * 180) / Math.PI;

function posed(axle: Axle, left: Settings = {}) {
  const pose = solveAxle(axle, { left });
  if (!pose.reachable) throw new Error(pose.message);
  return pose;
}

/** All in one plane: upright axes 1400 mm apart, arms behind them. `side` is that of the drag link, + left. */
function flat(side: 1 | -1, ahead = -1): Suspension {
  return {
    kind: KIND,
    points: {
      upperBall: [0, 700, 460],
      lowerBall: [0, 700, 230],
      dragBody: [ahead * 210, side * -300, 300],
      dragKnuckle: [ahead * 150, side * 690, 300],
      crossNear: [ahead * 180, side * 660, 300],
      crossFar: [ahead * 180, side * -660, 300],
      wheelCentre: [0, 800, 340],
    },
    camber: 0,
    toe: 0.1,
  };
}

describe('in one plane, by the crossings of circles', () => {
  for (const [name, suspension] of [
    ['drag link to the left knuckle', flat(1)],
    ['drag link to the right knuckle', flat(-1)],
    ['rods ahead of the axle', flat(-1, 1)],
  ] as const) {
    it.each([
      { drag: 1, cross: 0 },
      { drag: 0, cross: 1.5 },
      { drag: -3, cross: 2 },
      { drag: 5, cross: -4 },
    ])(`${name}, %o turns`, (at) => {
      const { left, right } = posed(axleOf(suspension), at);
      const [l, r] = turnsInPlane(suspension, at.drag * LEAD, at.cross * LEAD);
      // Anticlockwise from above turns the left wheel out and the right one in.
      expect(left.toe).toBeCloseTo(0.1 - deg(l), 8);
      expect(right.toe).toBeCloseTo(0.1 + deg(r), 8);
      expect(left.camber).toBeCloseTo(0, 9);
    });
  }

  it('a cross rod behind the axle that is longer toes in, one ahead of it toes out; the drag link steers both alike', () => {
    const toes = (suspension: Suspension, at: Settings) => {
      const { left, right } = posed(axleOf(suspension), at);
      return { total: left.toe + right.toe, steer: (left.toe - right.toe) / 2 };
    };
    expect(toes(flat(-1), { cross: 1 }).total).toBeGreaterThan(0.2 + 0.3);
    expect(toes(flat(-1, 1), { cross: 1 }).total).toBeLessThan(0.2 - 0.3);
    const { total, steer } = toes(flat(-1), { drag: 1 });
    expect(Math.abs(steer)).toBeGreaterThan(0.5);
    expect(Math.abs(total - 0.2)).toBeLessThan(0.02);
  });

  it('the wheel that the drag link holds stays where it is while the cross rod is turned', () => {
    expect(posed(axleOf(flat(-1)), { cross: 3 }).right.toe).toBeCloseTo(0.1, 10);
    expect(posed(axleOf(flat(1)), { cross: 3 }).left.toe).toBeCloseTo(0.1, 10);
  });
});

describe('axes that lean, and sides that differ', () => {
  it.each([1, 2, 3, 4, 5, 6])('seed %i: every length kept, every angle as a rotation has it', (seed) => {
    const random = stream(seed * 71);
    const even = randomSuspension(random, KIND);
    const given = seed % 2 ? even : { ...even, points: { ...even.points, ...mirroredRods(even) } };
    const other = randomSuspension(random, KIND);
    const { dragBody, dragKnuckle, crossNear, crossFar, ...own } = other.points;
    const axle = axleOf(given, { rightSuspension: { ...other, points: own } });
    const at = { drag: 2.25, cross: -1.5 };
    const { left, right } = posed(axle, at);
    const was = (name: string) => given.points[name] as Vec3;
    const onLeft = was('dragKnuckle')[1] > 0;
    const both = [knuckle(given, true), knuckle({ ...other, points: { ...own, ...rodsOf(given) } }, false)] as const;
    const [first, second] = onLeft ? both : [both[1], both[0]];
    const dragLength = apart(was('dragBody'), was('dragKnuckle')) + at.drag * LEAD;
    const crossLength = apart(was('crossNear'), was('crossFar')) + at.cross * LEAD;
    const a = turnFor((by) => first.place('dragKnuckle', by), was('dragBody'), dragLength);
    const end = first.place('crossNear', a);
    const b = turnFor((by) => second.place('crossFar', by), end, crossLength);
    const [l, r] = onLeft ? [a, b] : [b, a];
    expect(left).toMatchObject({
      camber: expect.closeTo(both[0].angles(l).camber, 7),
      toe: expect.closeTo(both[0].angles(l).toe, 7),
    });
    expect(right).toMatchObject({
      camber: expect.closeTo(both[1].angles(r).camber, 7),
      toe: expect.closeTo(both[1].angles(r).toe, 7),
    });
    const { points } = left;
    expect(apart(points.crossNear, end)).toBeLessThan(1e-6);
    expect(apart(points.dragBody, points.dragKnuckle ?? [0, 0, 0])).toBeCloseTo(dragLength, 7);
    expect(apart(points.crossNear, points.crossFar ?? [0, 0, 0])).toBeCloseTo(crossLength, 7);
    expect(right.points).not.toHaveProperty('crossFar');
  });
});

const layout = randomSuspension(stream(4), KIND);
const carOf = (front: Axle): Car => ({
  id: 'c',
  label: 'C',
  wheel: { rimDiameter: 420 },
  front,
  rear: {
    suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 780, 330] }, camber: 0, toe: 0 },
    adjusters: [],
    steered: false,
  },
});

describe('a car on it', () => {
  const car = carOf(axleOf(layout));
  const reading = { LF: { camber: 0.2, caster: 3, toe: 0.5 }, RF: { camber: 0.3, caster: 3, toe: -0.1 } };
  const spec = { front: { totalToe: { low: 0.05, high: 0.15 }, thrustAngle: { low: -0.05, high: 0.05 } } };

  it('both rods are there once, with the left side, and turn both wheels of the prediction', () => {
    const { LF, RF } = predictReading(car, reading, {}, { LF: { drag: 1 } });
    expect(((LF?.toe ?? NaN) - 0.5) * ((RF?.toe ?? NaN) + 0.1)).toBeLessThan(0);
    expect(
      refusalOf(() => predictReading(car, reading, {}, { RF: { drag: 1 } }))
        .map(String)
        .join(),
    ).toContain('to.RF.drag');
  });

  it('total toe is brought in by the cross rod and the steering wheel by the drag link', () => {
    for (const style of ['closest', 'practical'] as const) {
      const plan = planMoves({ car, spec, reading, settings: {}, style });
      expect(plan.inWindow).toBe(true);
      // Total toe first: the steering wheel is set straight by what it leaves.
      expect(plan.moves.map(({ adjuster }) => adjuster)).toEqual(['cross', 'drag']);
      const stages = [reading, ...plan.moves.map(({ expectAfter }) => expectAfter)].map(({ LF, RF }) => ({
        total: (LF?.toe ?? NaN) + (RF?.toe ?? NaN),
        steer: ((LF?.toe ?? NaN) - (RF?.toe ?? NaN)) / 2,
      }));
      const [before, crossed, dragged] = stages as [(typeof stages)[0], (typeof stages)[0], (typeof stages)[0]];
      expect(plan.moves[0]?.instruction).toContain(`total toe goes ${crossed.total > before.total ? 'in' : 'out'};`);
      const way = dragged.steer > crossed.steer ? 'right' : 'left';
      expect(plan.moves[1]?.instruction).toContain(`both wheels turn to the ${way};`);
      const { LF, RF } = plan.predicted;
      const [left, right] = [LF?.toe ?? NaN, RF?.toe ?? NaN];
      expect(Math.abs(left + right - 0.1)).toBeLessThanOrEqual(0.05);
      expect(Math.abs(left - right) / 2).toBeLessThanOrEqual(0.05);
    }
  });

  it('toe-out on turns is not told by one wheel; bump steer is, as the axle leaves the steering box behind', () => {
    const { sai, toeOutOnTurns, bumpSteer, camberGain } = sideEffects(layout, rods, {});
    expect(sai).toBeDefined();
    expect(toeOutOnTurns).toBeUndefined();
    expect(camberGain).toEqual([expect.closeTo(0, 1), expect.closeTo(0, 1)]);
    [25, -25].forEach((travel, i) => {
      expect(bumpSteer?.[i]).toBeCloseTo(steeredBy(layout, -travel).left, 6);
    });
  });

  it('raised, it is steered by its drag link, and pitches with the body', () => {
    const { corners } = heightEffect(car, {}, { front: 30, rear: 30 });
    const { left, right } = steeredBy(layout, 30);
    expect(Math.abs(left)).toBeGreaterThan(0.05);
    expect(corners.LF?.toe).toBeCloseTo(left, 6);
    expect(corners.RF?.toe).toBeCloseTo(right, 6);
    expect(heightEffect(car, {}, { front: 26 }).corners.RF?.caster).toBeCloseTo(deg(Math.atan(0.01)), 9);
  });

  it('goes up and down with both wheels: every point of the axle is lifted, none of the car', () => {
    const [here, there] = [0, 40].map((travel) => solveCorner(layout, rods, {}, { travel }));
    if (!here?.reachable || !there?.reachable) throw new Error('no pose');
    expect(there.caster).toBe(here.caster);
    expect(there.points.lowerBall?.[2]).toBeCloseTo((here.points.lowerBall?.[2] ?? NaN) + 40, 9);
    expect(there.points.dragBody?.[2]).toBeCloseTo(here.points.dragBody?.[2] ?? NaN, 9);
  });
});

describe('what is refused', () => {
  const refused = (points: Readonly<Record<string, Vec3>>) =>
    refusalOf(() => validateCar(carOf(axleOf({ ...layout, points: { ...layout.points, ...points } }))))
      .map(String)
      .join();

  it('a rod whose far end is typed on the near side, or whose near end is not where the drag link is', () => {
    expect(refused({ crossFar: flip(layout.points.crossFar!) })).toContain(
      'car.front.suspension.points.crossFar[1]: -',
    );
    expect(refused({ crossFar: flip(layout.points.crossFar!) })).toContain('a number from 0 to 10000 mm');
    expect(refused({ dragKnuckle: flip(layout.points.dragKnuckle!) })).toContain('points.crossNear[1]: -');
    expect(refused(mirroredRods(layout))).toBe('');
  });

  it('the rods again with the right side, and none with the left', () => {
    const { crossFar: _, ...lacking } = layout.points;
    const without = () => validateCar(carOf(axleOf({ ...layout, points: lacking })));
    expect(without).toThrow('car.front.suspension.points.crossFar: nothing is not allowed');
    const twice = () => validateCar(carOf(axleOf(layout, { rightSuspension: layout })));
    expect(twice).toThrow('car.front.rightSuspension.points.dragBody');
  });

  it('a drag link that points at the axis of its knuckle turns nothing', () => {
    const { upperBall, lowerBall } = layout.points as Record<string, Vec3>;
    const onAxis = flip([0, 1, 2].map((i) => (upperBall![i]! + lowerBall![i]!) / 2) as unknown as Vec3);
    const points = { ...layout.points, dragKnuckle: onAxis };
    expect(() => solveAxle(axleOf({ ...layout, points }))).toThrow('leave it free to move');
  });
});
