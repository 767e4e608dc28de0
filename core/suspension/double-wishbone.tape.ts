/**
 * A double wishbone from a tape measure: points that reproduce every given dimension and the measured caster, SAI,
 * camber and toe exactly. The table of dimensions is over half of the file and belongs beside what reads it.
 *
 * Construction, in the corner frame (x forward, y outboard, z up):
 * 1. wheelCentre = (−axleBehindFront, track/2, wheelCentreHeight).
 * 2. lowerBall at its height, `lowerBallInset` inboard and `lowerBallAhead` ahead of the wheel centre.
 * 3. upperBall = lowerBall + ballSpacing·k, k ∝ (−tan caster, −tan SAI, 1): both projected angles come out exactly.
 * 4. Each arm in plan: heights turn its two lengths and its pivot spacing into the sides of a flat triangle. Its foot,
 *    from the ball square to the pivot line, lies inboard; the pivot line is turned by `…PivotSkew`. Heights and
 *    lengths then come out exactly.
 * 5. tieOuter at its height and `steeringArmLength` from lowerBall (ball centre to ball centre), straight ahead or
 *    behind but for `steeringArmAngle`; tieInner at its height and `tieRodLength` inboard of it, but for `tieRodSweep`.
 */
import type { Vec3 } from '../contract.ts';
import { cos, radians, sin } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';

export interface TapeDimension {
  readonly name: string;
  readonly unit: 'mm' | 'degrees';
  readonly low: number;
  readonly high: number;
  /**
   * What is taken when it is left out: a number, or the name of the dimension (or of a height that follows from the
   * others) that it is taken to equal. Absent: it has to be given.
   */
  readonly otherwise?: number | string;
  /** ± mm at 95 % of that. */
  readonly tolerance?: number;
  /** Why that, in a person's words. */
  readonly why: string;
}

const mm = (name: string, low: number, high: number, otherwise: number | string, tolerance: number, why: string) =>
  ({ name, unit: 'mm', low, high, otherwise, tolerance, why }) as const;
const deg = (name: string, limit: number, otherwise: number | undefined, why: string) =>
  ({
    name,
    unit: 'degrees',
    low: -limit,
    high: limit,
    ...(otherwise === undefined ? {} : { otherwise }),
    why,
  }) as const;

/** Every dimension, in the order in which they are best taken. Defaults are those of a middling passenger car. */
export const TAPE_DIMENSIONS: readonly TapeDimension[] = [
  deg('caster', 30, undefined, 'as measured, with the adjusters where they stand'),
  deg('camber', 20, undefined, 'as measured, with the adjusters where they stand'),
  deg('toe', 20, undefined, 'as measured, one wheel, + for toe-in'),
  deg('sai', 30, 10, 'most double wishbones have 8 to 12°'),
  mm('upperFrontLength', 60, 1500, 280, 60, 'a middling upper arm'),
  mm('upperRearLength', 60, 1500, 'upperFrontLength', 40, 'an even triangle'),
  mm('upperPivotSpacing', 30, 1200, 250, 60, 'a middling upper arm'),
  mm('lowerFrontLength', 60, 1500, 380, 60, 'a middling lower arm'),
  mm('lowerRearLength', 60, 1500, 'lowerFrontLength', 40, 'an even triangle'),
  mm('lowerPivotSpacing', 30, 1200, 320, 60, 'a middling lower arm'),
  mm('ballSpacing', 60, 900, 270, 50, 'a middling knuckle'),
  mm('wheelCentreHeight', 150, 700, 310, 20, 'a middling tyre'),
  mm('lowerBallHeight', 50, 700, 210, 30, 'about 100 mm below the wheel centre'),
  mm('upperFrontHeight', 50, 1500, 'upperBallHeight', 30, 'a level upper arm'),
  mm('upperRearHeight', 50, 1500, 'upperFrontHeight', 20, 'a level pivot line'),
  mm('lowerFrontHeight', 50, 1500, 'lowerBallHeight', 30, 'a level lower arm'),
  mm('lowerRearHeight', 50, 1500, 'lowerFrontHeight', 20, 'a level pivot line'),
  mm('track', 600, 3000, 1500, 50, 'a middling car, between the wheel centres'),
  mm('axleBehindFront', -100, 8000, 0, 0, 'a front axle; for a rear one it is the wheelbase'),
  mm('lowerBallInset', 0, 400, 70, 20, 'a ball joint inside the rim'),
  mm('lowerBallAhead', -400, 400, 'axisAhead', 20, 'the steering axis passes the wheel centre in side view'),
  mm('steeringArmLength', 40, 500, 130, 25, 'a middling arm, from the lower ball joint to the rod end'),
  mm('tieOuterHeight', 50, 900, 'lowerBallHeight', 20, 'level with the lower ball joint'),
  mm('tieRodLength', 60, 1200, 350, 40, 'a middling rod, joint to joint'),
  mm('tieInnerHeight', 50, 1200, 'tieOuterHeight', 20, 'a level rod'),
  deg('upperPivotSkew', 60, 0, 'a pivot line along the car; + turns its front end outboard, in plan'),
  deg('lowerPivotSkew', 60, 0, 'a pivot line along the car; + turns its front end outboard, in plan'),
  deg('steeringArmAngle', 60, 0, 'a steering arm along the car; + turns the rod end inboard, in plan'),
  deg('tieRodSweep', 60, 0, 'a rod square to the car; + puts its inner end further forward, in plan'),
];

/** ± mm at 95 % of what was measured and says nothing else. */
export const TAPE_TOLERANCE = 5;

/** A dimension, or how well it is known with it. */
export type Measured = number | { readonly value: number; readonly tolerance?: number };
/** Dimensions by name, mm and degrees; `tie` says on which side of the axle the steering arm stands, default behind. */
export type Tape = Readonly<Record<string, Measured | 'ahead' | 'behind'>>;

export interface TapedSuspension {
  readonly points: Readonly<Record<string, Vec3>>;
  readonly camber: number;
  readonly toe: number;
  /** ± mm at 95 %: root mean square over the lengths, defaults included. */
  readonly tolerance: number;
  /** Every dimension as it was used. */
  readonly used: Readonly<Record<string, number>>;
  /** Names of those that were left out and taken from the table. */
  readonly assumed: readonly string[];
}

/**
 * Points from dimensions; see the head of this file.
 * @throws InputError naming the dimension that is missing, unknown, out of its limits, or with which a triangle cannot
 * close, and what it may be
 */
export function pointsFromTape(tape: Readonly<Record<string, unknown>>, field = 'tape'): TapedSuspension {
  const { given, tolerances, ahead } = read(tape, field);
  const used: Record<string, number> = {};
  const take = (name: string): number => {
    const { otherwise } = dimension(name) ?? {};
    const value = given.get(name) ?? (typeof otherwise === 'string' ? (used[otherwise] ?? take(otherwise)) : otherwise);
    if (value === undefined) throw missing(name, field);
    used[name] = value;
    return value;
  };
  const points = build(take, used, ahead, field);
  const camber = take('camber');
  const toe = take('toe');
  const { axisAhead: _, upperBallHeight: __, ...dimensions } = used;
  const lengths = TAPE_DIMENSIONS.filter(({ unit, name }) => unit === 'mm' && name !== 'axleBehindFront');
  const squares = lengths.map(({ name, tolerance = 0 }) => {
    return (given.has(name) ? (tolerances.get(name) ?? TAPE_TOLERANCE) : tolerance) ** 2;
  });
  return {
    points,
    camber,
    toe,
    tolerance: Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / squares.length),
    used: dimensions,
    assumed: TAPE_DIMENSIONS.map(({ name }) => name).filter((name) => !given.has(name)),
  };
}

const dimension = (name: string): TapeDimension | undefined => TAPE_DIMENSIONS.find((one) => one.name === name);

const allowedOf = ({ low, high, unit }: TapeDimension): string => `a number from ${low} to ${high} ${unit}`;

function missing(name: string, field: string): InputError {
  const one = dimension(name);
  return new InputError(`${field}.${name}`, undefined, one ? allowedOf(one) : 'a dimension');
}

function read(tape: Readonly<Record<string, unknown>>, field: string) {
  const { kind = 'double-wishbone', tie = 'behind', ...rest } = tape;
  if (kind !== 'double-wishbone') throw new InputError(`${field}.kind`, kind, 'double-wishbone');
  if (tie !== 'ahead' && tie !== 'behind') throw new InputError(`${field}.tie`, tie, 'ahead or behind');
  const given = new Map<string, number>();
  const tolerances = new Map<string, number>();
  for (const [name, entry] of Object.entries(rest)) {
    if (entry === undefined) continue;
    const one = dimension(name);
    if (!one) throw new InputError(`${field}.${name}`, entry, `nothing: the dimensions are ${names()}`);
    const { value, tolerance } = typeof entry === 'object' && entry !== null ? (entry as Loose) : { value: entry };
    if (!isWithin(value, one.low, one.high)) throw new InputError(`${field}.${name}`, value, allowedOf(one));
    given.set(name, value);
    if (tolerance === undefined) continue;
    if (!isWithin(tolerance, 0, 200))
      throw new InputError(`${field}.${name}.tolerance`, tolerance, 'a number from 0 to 200 mm');
    tolerances.set(name, tolerance);
  }
  return { given, tolerances, ahead: tie === 'ahead' };
}

interface Loose {
  readonly value?: unknown;
  readonly tolerance?: unknown;
}
const names = (): string => ['tie', ...TAPE_DIMENSIONS.map(({ name }) => name)].join(', ');
const isWithin = (x: unknown, low: number, high: number): x is number => typeof x === 'number' && x >= low && x <= high;

type Take = (name: string) => number;

function build(take: Take, used: Record<string, number>, ahead: boolean, field: string): Record<string, Vec3> {
  // 0 − 0, as −0 would not come back from a file.
  const wheelCentre: Vec3 = [0 - take('axleBehindFront'), take('track') / 2, take('wheelCentreHeight')];
  const [back, lean] = [tan(take('caster')), tan(take('sai'))];
  const lowZ = take('lowerBallHeight');
  used.axisAhead = (wheelCentre[2] - lowZ) * back;
  const lowerBall: Vec3 = [wheelCentre[0] + take('lowerBallAhead'), wheelCentre[1] - take('lowerBallInset'), lowZ];
  const up = take('ballSpacing') / Math.hypot(back, lean, 1);
  const upperBall: Vec3 = [lowerBall[0] - up * back, lowerBall[1] - up * lean, lowerBall[2] + up];
  used.upperBallHeight = upperBall[2];
  const [upperFront, upperRear] = arm('upper', upperBall, take, field);
  const [lowerFront, lowerRear] = arm('lower', lowerBall, take, field);
  const tieOuter = at(lowerBall, 'steeringArmLength', 'tieOuterHeight', take, field, (flat) => {
    const turn = radians(take('steeringArmAngle'));
    return [(ahead ? 1 : -1) * flat * cos(turn), -flat * sin(turn)];
  });
  const tieInner = at(tieOuter, 'tieRodLength', 'tieInnerHeight', take, field, (flat) => {
    const turn = radians(take('tieRodSweep'));
    return [flat * sin(turn), -flat * cos(turn)];
  });
  return { upperFront, upperRear, upperBall, lowerFront, lowerRear, lowerBall, tieInner, tieOuter, wheelCentre };
}

const tan = (angle: number): number => sin(radians(angle)) / cos(radians(angle));

/** A point at a height and a distance from another; `plan` turns the flat part of the distance into x and y. */
function at(
  from: Vec3,
  length: string,
  height: string,
  take: Take,
  field: string,
  plan: (flat: number) => readonly [number, number],
): Vec3 {
  const z = take(height);
  const [x, y] = plan(flatPart(take(length), z - from[2], `${field}.${length}`));
  return [from[0] + x, from[1] + y, z];
}

/** Front and rear pivot of an arm. */
function arm(which: 'upper' | 'lower', ball: Vec3, take: Take, field: string): [Vec3, Vec3] {
  const [frontZ, rearZ] = [take(`${which}FrontHeight`), take(`${which}RearHeight`)];
  const front = flatPart(take(`${which}FrontLength`), frontZ - ball[2], `${field}.${which}FrontLength`);
  const rear = flatPart(take(`${which}RearLength`), rearZ - ball[2], `${field}.${which}RearLength`);
  const name = `${which}PivotSpacing`;
  const spacing = take(name);
  const slope = frontZ - rearZ;
  const flat = flatPart(spacing, slope, `${field}.${name}`);
  if (!(flat > Math.abs(front - rear) && flat < front + rear)) {
    const [least, most] = [Math.hypot(front - rear, slope), Math.hypot(front + rear, slope)];
    const range = `mm between ${least.toFixed(1)} and ${most.toFixed(1)}, so that the ${which} arm's triangle closes`;
    throw new InputError(`${field}.${name}`, spacing, range);
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
    throw new InputError(field, length, `mm above ${Math.abs(rise).toFixed(1)}, the difference of its ends' heights`);
  }
  return Math.sqrt(square);
}
