/**
 * Tapes, strings, plates and plumb lines against points that are placed in space by three.js, a general-purpose library: the
 * wheels are turned, their rims' points are where they are, and the tool is told no more than the distances between them.
 */
import { Line3, Quaternion, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import type { Corner } from '../../core/contract.ts';
import { CORNERS, camberFromPlumb, type Strings, toeFromStrings, totalToeAcross } from '../../core/index.ts';
import { between, stream } from '../tools/random-cars.ts';

const rad = (d: number) => (d * Math.PI) / 180;
const deg = (r: number) => (r * 180) / Math.PI;
const CLOSE = 1e-9;
const CASES = 300;

/** x forward, y to the left, z up; hubs at their heights. */
interface Placed {
  readonly hub: Vector3;
  readonly toe: number;
  readonly camber: number;
  readonly isLeft: boolean;
}
const Z = new Vector3(0, 0, 1);

/** A place on the rim, `angle` degrees up from straight ahead, radius mm. */
function onRim({ hub, toe, camber, isLeft }: Placed, angle: number, radius: number): Vector3 {
  const side = isLeft ? 1 : -1;
  const point = new Vector3(Math.cos(rad(angle)) * radius, 0, Math.sin(rad(angle)) * radius);
  // + leans the top out, + points the front in.
  const lean = new Quaternion().setFromAxisAngle(new Vector3(1, 0, 0), -rad(camber) * side);
  const turn = new Quaternion().setFromAxisAngle(Z, -rad(toe) * side);
  return point.applyQuaternion(lean).applyQuaternion(turn).add(hub);
}

const random = stream(2_718);
const wheel = (x: number, y: number, camber = between(random, -3, 3)): Placed => ({
  ...{ hub: new Vector3(x, y, 310), toe: between(random, -2, 2), camber, isLeft: y > 0 },
});

describe('a tape across the car', () => {
  it('gives the sum of both wheels’ toe, whatever their camber and track', () => {
    for (let i = 0; i < CASES; i++) {
      const [left, right] = [wheel(0, between(random, 650, 800)), wheel(0, -between(random, 650, 800))];
      const diameter = between(random, 350, 750);
      const across = (angle: number) =>
        Math.abs(onRim(left, angle, diameter / 2).y - onRim(right, angle, diameter / 2).y);
      const found = totalToeAcross({ front: across(0), rear: across(180), diameter }, 0.7);
      // Shared evenly is taken for granted: up to 4° in all that is worth less than 0.003°.
      expect(Math.abs(found.value - (left.toe + right.toe))).toBeLessThan(0.003);
    }
  });

  it('is exact where both wheels have the same, and as sure as a tape that reads twice', () => {
    const [left, right] = [wheel(0, 750), wheel(0, -700)].map((one) => ({ ...one, toe: 0.35 })) as [Placed, Placed];
    const across = (angle: number) => onRim(left, angle, 200).distanceTo(onRim(right, angle, 200));
    const y = (angle: number) => onRim(left, angle, 200).y - onRim(right, angle, 200).y;
    expect(across(0)).toBeCloseTo(y(0), 9);
    const found = totalToeAcross({ front: across(0), rear: across(180), diameter: 400 }, 0.5);
    expect(found.value).toBeCloseTo(0.7, 10);
    // Two readings of 0.5 mm on 400 mm.
    expect(found.sd).toBeCloseTo(deg((0.5 * Math.SQRT2) / 400), 5);
  });
});

/** A car and two strings that stand anyhow; what a rule, square to each string, shows. */
function strung() {
  const track = { front: between(random, 1350, 1650), rear: between(random, 1350, 1650) };
  // A setback beside it: hubs of a side further apart along the car.
  const bases = { left: between(random, 2300, 2900), back: between(random, -20, 20) };
  const wheels: Record<Corner, Placed> = {
    LF: wheel(0, track.front / 2),
    RF: wheel(-bases.back, -track.front / 2),
    LR: wheel(-bases.left, track.rear / 2),
    RR: wheel(-bases.left, -track.rear / 2),
  };
  const line = (isLeft: boolean): Line3 => {
    const side = isLeft ? 1 : -1;
    const at = new Vector3(-1300, side * between(random, 950, 1050), 310);
    const way = new Vector3(1, side * Math.tan(rad(between(random, -1.5, 1.5))), 0);
    return new Line3(at, at.clone().add(way));
  };
  const lines = { left: line(true), right: line(false) };
  const diameter = between(random, 350, 480);
  const off = (corner: Corner, point: Vector3) => {
    const near = lines[corner.startsWith('L') ? 'left' : 'right'].closestPointToPoint(point, false, new Vector3());
    // The rule lies level: the camber of the wheel has the two edges at hub height all the same.
    return Math.hypot(near.x - point.x, near.y - point.y);
  };
  const strings: Strings = {
    diameter,
    track,
    wheelbase: {
      left: wheels.LF.hub.distanceTo(wheels.LR.hub),
      right: wheels.RF.hub.distanceTo(wheels.RR.hub),
    },
    wheels: Object.fromEntries(
      CORNERS.map((corner) => [
        corner,
        {
          ahead: off(corner, onRim(wheels[corner], 0, diameter / 2)),
          behind: off(corner, onRim(wheels[corner], 180, diameter / 2)),
          hub: off(corner, wheels[corner].hub),
        },
      ]),
    ),
  };
  return { wheels, strings, bases, track };
}

describe('strings beside the car', () => {
  it('give each wheel’s toe exactly, though they are not parallel and the tracks differ', () => {
    for (let i = 0; i < CASES; i++) {
      const { wheels, strings } = strung();
      const found = toeFromStrings(strings, { rule: 0.3, tape: 1 });
      for (const corner of CORNERS) expect(Math.abs(found.toe[corner]!.value - wheels[corner].toe)).toBeLessThan(CLOSE);
      const { LF, RF, LR, RR } = wheels;
      expect(Math.abs(found.totalToe.front!.value - (LF.toe + RF.toe))).toBeLessThan(CLOSE);
      expect(Math.abs(found.thrustAngle!.value - (LR.toe - RR.toe) / 2)).toBeLessThan(CLOSE);
      expect(Math.abs(found.steerAhead!.value - (LF.toe - RF.toe) / 2)).toBeLessThan(CLOSE);
    }
  });

  it('need no distance to the hub: it is half way between the edges', () => {
    const { strings } = strung();
    const bare = Object.fromEntries(
      Object.entries(strings.wheels).map(([corner, { hub: _, ...edges }]) => [corner, edges]),
    );
    const [all, some] = [strings, { ...strings, wheels: bare }].map((one) => toeFromStrings(one, { rule: 0, tape: 0 }));
    for (const corner of CORNERS) expect(some!.toe[corner]!.value).toBeCloseTo(all!.toe[corner]!.value, 9);
  });

  it('tell how far the right front wheel is back', () => {
    const { strings, bases, track } = strung();
    const { setback } = toeFromStrings(strings, { rule: 0.3, tape: 1 });
    // Along the car; the hubs of unequal tracks lie a little askew.
    expect(setback!.length.value).toBeCloseTo(bases.back, 0);
    expect(setback!.angle!.value).toBeCloseTo(deg(Math.atan2(bases.back, track.front)), 1);
    expect(setback!.length.sd).toBeCloseTo(Math.SQRT2, 6);
  });

  it('that were set parallel need no tracks, and one wheel is enough', () => {
    const one = { wheels: { LR: { ahead: 152, behind: 150 } }, diameter: 400 };
    const found = toeFromStrings(one, { rule: 0.3, tape: 1 });
    expect(found.toe.LR!.value).toBeCloseTo(deg(Math.asin(2 / 400)), 12);
    expect(found.toe.LR!.sd).toBeCloseTo(deg((0.3 * Math.SQRT2) / 400), 5);
    expect(found).toMatchObject({ totalToe: {}, strings: {} });
    expect(found.setback).toBeUndefined();
  });

  it.each([
    [
      'a negative distance',
      { wheels: { LF: { ahead: -3, behind: 4 } }, diameter: 400 },
      'wheels.LF.ahead: -3 is not allowed',
    ],
    ['a diameter in inches', { wheels: { LF: { ahead: 3, behind: 4 } }, diameter: 17 }, 'diameter: 17 is not allowed'],
    ['no wheel', { wheels: {}, diameter: 400 }, 'wheels: {} is not allowed'],
    [
      'edges further apart than the rim is wide',
      { wheels: { LF: { ahead: 900, behind: 4 } }, diameter: 400 },
      'wheels.LF.ahead: 900 is not allowed',
    ],
    [
      'tracks without a wheelbase',
      { wheels: { LF: { ahead: 3, behind: 4 } }, diameter: 400, track: { front: 1500, rear: 1500 } },
      'wheelbase: nothing is not allowed',
    ],
  ] as const)('refuse %s', (_, strings, message) => {
    expect(() => toeFromStrings(strings as Strings, { rule: 0.3, tape: 1 })).toThrow(message);
  });
});

describe('a plumb line beside the wheel', () => {
  it('gives camber from the rim above and below', () => {
    for (let i = 0; i < CASES; i++) {
      const one = { ...wheel(0, 750), toe: 0 };
      const diameter = between(random, 350, 480);
      // It hangs outboard of the wheel; a level rule to the rim.
      const off = (angle: number) => 850 - onRim(one, angle, diameter / 2).y;
      const found = camberFromPlumb({ above: off(90), below: off(-90), diameter }, 0.3);
      expect(Math.abs(found.value - one.camber)).toBeLessThan(CLOSE);
      expect(found.sd).toBeCloseTo(deg((0.3 * Math.SQRT2) / diameter), 3);
    }
  });
});
