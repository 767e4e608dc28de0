/**
 * The parts that several suspensions share on a tape: the stance of the wheel and its lower ball joint, a triangular
 * arm, the steering arm and tie rod. Their dimensions: tape-dimensions.ts.
 *
 * Arm, in plan: heights turn its two lengths and its pivot spacing into the sides of a flat triangle. Its foot, from
 * the ball square to the pivot line, lies inboard; the pivot line is turned by `…PivotSkew`. Heights and lengths then
 * come out exactly.
 * Tie rod: tieOuter at its height and `steeringArmLength` from lowerBall (ball centre to ball centre), straight ahead
 * or behind but for `steeringArmAngle`; tieInner at its height and `tieRodLength` inboard of it, but for `tieRodSweep`.
 */
import type { Vec3 } from '../../contract.ts';
import { cos, radians, sin } from '../../geometry/angle.ts';
import { steeringAxis } from '../../geometry/wheel-angles.ts';
import { InputError } from '../../input-error.ts';
import type { Dimensions } from './tape.ts';

/** The wheel centre, the lower ball joint below it, and the unit steering axis that the measured angles give. */
export function stance({ take, follows }: Dimensions): { wheelCentre: Vec3; lowerBall: Vec3; axis: Vec3 } {
  // 0 − 0, as −0 would not come back from a file.
  const wheelCentre: Vec3 = [0 - take('axleBehindFront'), take('track') / 2, take('wheelCentreHeight')];
  const axis = steeringAxis(take('caster'), take('sai'));
  const height = take('lowerBallHeight');
  follows('axisAhead', ((wheelCentre[2] - height) * -axis[0]) / axis[2]);
  const [x, y] = [wheelCentre[0] + take('lowerBallAhead'), wheelCentre[1] - take('lowerBallInset')];
  return { wheelCentre, lowerBall: [x, y, height], axis };
}

/** Outer and inner end of the tie rod. */
export function tieRod(from: Dimensions, lowerBall: Vec3): { tieInner: Vec3; tieOuter: Vec3 } {
  const { take, tieAhead } = from;
  const tieOuter = at(lowerBall, 'steeringArmLength', 'tieOuterHeight', from, (flat) => {
    const turn = radians(take('steeringArmAngle'));
    return [(tieAhead ? 1 : -1) * flat * cos(turn), -flat * sin(turn)];
  });
  const tieInner = at(tieOuter, 'tieRodLength', 'tieInnerHeight', from, (flat) => {
    const turn = radians(take('tieRodSweep'));
    return [flat * sin(turn), -flat * cos(turn)];
  });
  return { tieInner, tieOuter };
}

/** A point at a height and a distance from another; `plan` turns the flat part of the distance into x and y. */
function at(
  from: Vec3,
  length: string,
  height: string,
  { take, field }: Dimensions,
  plan: (flat: number) => readonly [number, number],
): Vec3 {
  const z = take(height);
  const [x, y] = plan(flatPart(take(length), z - from[2], `${field}.${length}`));
  return [from[0] + x, from[1] + y, z];
}

/** Front and rear pivot of an arm. */
export function arm(which: 'upper' | 'lower', ball: Vec3, { take, field }: Dimensions): [Vec3, Vec3] {
  const [frontZ, rearZ] = [take(`${which}FrontHeight`), take(`${which}RearHeight`)];
  const front = flatPart(take(`${which}FrontLength`), frontZ - ball[2], `${field}.${which}FrontLength`);
  const rear = flatPart(take(`${which}RearLength`), rearZ - ball[2], `${field}.${which}RearLength`);
  const name = `${which}PivotSpacing`;
  const spacing = take(name);
  const slope = frontZ - rearZ;
  const flat = flatPart(spacing, slope, `${field}.${name}`);
  if (!(flat > Math.abs(front - rear) && flat < front + rear)) {
    const [least, most] = [Math.hypot(front - rear, slope), Math.hypot(front + rear, slope)];
    throw new InputError(`${field}.${name}`, spacing, { is: 'closes', arm: which, least, most });
  }
  // How far ahead of the foot the front pivot is, and how far the ball stands from the pivot line.
  const lead = (front * front - rear * rear + flat * flat) / (2 * flat);
  const reach = Math.sqrt(front * front - lead * lead);
  const turn = radians(take(`${which}PivotSkew`));
  const [ex, ey] = [cos(turn), sin(turn)];
  const [footX, footY] = [ball[0] + reach * ey, ball[1] - reach * ex];
  const place = (along: number, z: number): Vec3 => [footX + along * ex, footY + along * ey, z];
  return [place(lead, frontZ), place(lead - flat, rearZ)];
}

/** The flat part of a length between two heights. */
function flatPart(length: number, rise: number, field: string): number {
  const square = length * length - rise * rise;
  if (!(square > 0)) {
    throw new InputError(field, length, { is: 'longer-than-rise', rise: Math.abs(rise) });
  }
  return Math.sqrt(square);
}
