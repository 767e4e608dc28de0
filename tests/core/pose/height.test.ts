/**
 * The car at another height, against poses of a library that knows nothing of suspensions and a rotation by mathjs. The
 * wheels stand on level ground: what the body's frame shows is turned by the body's pitch.
 */
import { matrix, multiply, rotationMatrix } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Car, Suspension, Vec3 } from '../../../core/contract.ts';
import { heightEffect, solveCorner } from '../../../core/index.ts';
import { generalAxle } from '../../tools/general-axle.ts';
import { type GeneralPose, generalPose } from '../../tools/general-pose.ts';
import { randomSuspension, rod, stream } from '../../tools/random-cars.ts';
import { refusalOf } from '../../tools/spoil.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;
const tan = (degrees: number): number => Math.tan(rad(degrees));

const axle = (suspension: Suspension, steered: boolean, more: object = {}) => ({
  suspension,
  adjusters: [],
  steered,
  ...more,
});
const carOf = (front: Suspension, rear: Suspension, more: object = {}): Car => ({
  id: 'car',
  label: 'Car',
  wheel: { rimDiameter: 420 },
  front: axle(front, true),
  rear: axle(rear, false),
  ...more,
});
const FRONT = randomSuspension(stream(5), 'double-wishbone');
const REAR = randomSuspension(stream(6), 'five-link');

/** A direction of a body whose nose goes up: about the car's left, which turns z towards x where it is positive. */
const noseUp = (pitch: number, v: Vec3): Vec3 =>
  multiply(rotationMatrix(-pitch, matrix([0, 1, 0])), matrix([...v])).valueOf() as unknown as Vec3;

/** The angles of a wheel by its spin and steering axes as level ground sees them. */
function onGround({ camber, toe, caster, sai }: Omit<GeneralPose, 'residual' | 'place'>, pitch: number) {
  const c = Math.cos(rad(camber));
  const [x, y, z] = noseUp(pitch, [c * Math.sin(rad(toe)), c * Math.cos(rad(toe)), -Math.sin(rad(camber))]);
  const wheel = { camber: deg(-Math.asin(z)), toe: deg(Math.atan2(x, y)) };
  if (caster === undefined || sai === undefined) return wheel;
  const [back, inboard, up] = noseUp(pitch, [-tan(caster), -tan(sai), 1]);
  return { ...wheel, caster: deg(Math.atan2(-back, up)), sai: deg(Math.atan2(-inboard, up)) };
}

describe('a car at another height', () => {
  it.each([{ front: 25 }, { rear: 40 }, { front: -30, rear: 20 }, { front: 15, rear: 15 }])(
    '%o: every angle of every wheel, by a rotation',
    (raise) => {
      const { front = 0, rear = 0 } = { front: 0, rear: 0, ...raise };
      const { corners, pitch, wheelbase } = heightEffect(carOf(FRONT, REAR, { wheelbase: 2710 }), {}, raise);
      expect(wheelbase).toBe(2710);
      const turn = Math.atan((front - rear) / 2710);
      expect(pitch).toBeCloseTo(deg(turn), 12);
      for (const [names, suspension, up] of [
        [['LF', 'RF'], FRONT, front],
        [['LR', 'RR'], REAR, rear],
      ] as const) {
        const before = onGround(generalPose(suspension, {}), 0);
        const after = onGround(generalPose(suspension, { travel: -up }), turn);
        for (const name of names) {
          expect(Object.keys(corners[name] ?? {}).sort()).toEqual(Object.keys(after).sort());
          for (const [angle, value] of Object.entries(after)) {
            const wanted = value - (before[angle as 'camber'] ?? Number.NaN);
            expect(
              Math.abs((corners[name]?.[angle as 'camber'] ?? Number.NaN) - wanted),
              `${name} ${angle}`,
            ).toBeLessThan(2e-4);
          }
        }
      }
    },
  );

  it('a front that is raised, or a rear that is let down, leans the steering axes to the rear', () => {
    const car = carOf(FRONT, REAR);
    const gained = (raise: object) => heightEffect(car, {}, raise).corners.LF?.caster ?? Number.NaN;
    const against = heightEffect(FRONT, [], {}, 25)?.caster ?? Number.NaN;
    // The body's own frame knows nothing of it: the rack shows that and the pitch.
    expect(gained({ front: 25 })).toBeCloseTo(against + deg(Math.atan(25 / 2600)), 3);
    expect(gained({ rear: 25 })).toBeCloseTo(-deg(Math.atan(25 / 2600)), 9);
    expect(gained({ rear: -25 })).toBeCloseTo(deg(Math.atan(25 / 2600)), 9);
    expect(gained({ front: 25, rear: 25 })).toBeCloseTo(against, 9);
  });

  it('a rear that steers with its pitch is told too: its caster where it has a steering axis', () => {
    const behind = randomSuspension(stream(8), 'double-wishbone');
    const { LR, RR } = heightEffect(carOf(FRONT, behind), {}, { front: 26 }).corners;
    expect(LR?.caster).toBeCloseTo(deg(Math.atan(26 / 2600)), 9);
    expect(RR).toEqual(LR);
  });

  it('the usual wheelbase is said to be the usual one, and a typed one is taken', () => {
    const said = heightEffect(carOf(FRONT, REAR), {}, { front: 10 });
    expect(said).toMatchObject({ wheelbase: 2600, usualWheelbase: true });
    const typed = heightEffect(carOf(FRONT, REAR, { wheelbase: 2600 }), {}, { front: 10 });
    expect(typed).toEqual({ ...said, usualWheelbase: false });
  });

  it('a rigid front axle pitches with the body, whatever its own height', () => {
    const beam = randomSuspension(stream(3), 'beam-front');
    const { LF, RF } = heightEffect(carOf(beam, REAR), {}, { front: 30, rear: -10 }).corners;
    expect(LF?.caster).toBeCloseTo(deg(Math.atan(40 / 2600)), 9);
    expect(RF).toEqual(LF);
  });

  it('an axle on links goes down with both its wheels, and an inclinometer shows its links and the body', () => {
    const linked = randomSuspension(stream(9), 'beam-linked');
    const { corners, pinionAngle } = heightEffect(carOf(FRONT, linked), {}, { rear: 20 });
    // The wheels held, the body goes up: with it all that the links have there.
    const onBody = ['lowerBody', 'upperBody', ...('rodBody' in linked.points ? ['rodBody'] : [])];
    const up = { moved: Object.fromEntries(onBody.map((name) => [name, [0, 0, 20] as Vec3])) };
    const [before, after] = [generalAxle(linked, linked, {}, {}), generalAxle(linked, linked, up, up)];
    const turn = -Math.atan(20 / 2600);
    expect(pinionAngle).toBeCloseTo(after.pinionAngle - before.pinionAngle + deg(turn), 3);
    for (const [name, side] of [
      ['LR', 'left'],
      ['RR', 'right'],
    ] as const) {
      const wanted = onGround(after[side], turn);
      for (const angle of ['camber', 'toe'] as const) {
        expect(corners[name]?.[angle]).toBeCloseTo(wanted[angle] - before[side][angle], 3);
      }
    }
  });

  it('each wheel from where its adjusters stand, and each side by its own points', () => {
    const right = randomSuspension(stream(7), 'double-wishbone');
    const front = axle(FRONT, true, { rightSuspension: right, adjusters: [rod('rod', 'tieInner', 4)] });
    const { corners } = heightEffect({ ...carOf(FRONT, REAR), front }, { LF: { rod: 2 } }, { front: 20, rear: 20 });
    for (const [name, suspension, at] of [
      ['LF', FRONT, { rod: 2 }],
      ['RF', right, {}],
    ] as const) {
      const poses = [0, -20].map((travel) => solveCorner(suspension, front.adjusters, at, { travel }));
      const [toe, low] = poses.map((pose) => (pose.reachable ? pose.toe : Number.NaN)) as [number, number];
      expect(corners[name]?.toe).toBeCloseTo(low - toe, 9);
    }
  });

  it('without geometry, or where the links cannot go so far, a wheel is absent', () => {
    const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
    const { corners } = heightEffect(carOf(FRONT, bare), {}, { front: 25 });
    expect(Object.keys(corners)).toEqual(['LF', 'RF']);
    expect(heightEffect(carOf(FRONT, bare), {}, { front: 500 }).corners).toEqual({});
  });

  it('what cannot be is refused by name', () => {
    const car = carOf(FRONT, REAR);
    const refused = (ask: () => unknown) => refusalOf(ask).map(String).join();
    expect(refused(() => heightEffect(car, {}, { front: 501 }))).toContain('raise.front: 501');
    expect(refused(() => heightEffect(car, {}, { middle: 1 } as object))).toContain('raise.middle: 1');
    expect(refused(() => heightEffect({ ...car, wheelbase: 26 }, {}, {}))).toContain(
      'car.wheelbase: 26 is not allowed; allowed: a number from 500 to 10000 mm',
    );
    expect(refused(() => heightEffect(car, { LF: { none: 1 } }, {}))).toContain('settings.LF.none');
  });
});
