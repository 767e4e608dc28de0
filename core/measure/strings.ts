/**
 * Toe of each wheel from a straight line beside the car: a string, a bar or a straight edge. A rim whose front edge is
 * further from the line than its rear edge stands at sin θ = (ahead − behind)/D to it, toe-in where the line is outside the
 * car. The line itself stands at an angle to the car's centre line, as its own distances at the two hubs tell: hubs lie
 * half the track from the centre line, so the line through them goes out by sin ψ = (front − rear track)/2W, W the wheelbase
 * of that side, and the string by sin(φ − ψ) = (front − rear hub distance)/W. Toe is θ − φ. Exact for distances that are
 * taken square to the line.
 */
import type { AxleName, Corner } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { asin, atan2, degrees, type Radians } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { axleAngles } from '../reading/axle-angles.ts';
import { checkDiameter } from '../units/toe.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

/** Distances of one wheel from the line beside it, mm, square to the line, at hub height. */
export interface StringedWheel {
  /** To the front edge of the rim. */
  readonly ahead: number;
  /** To its rear edge. */
  readonly behind: number;
  /** To the middle of the wheel. Absent: half way between the two edges. */
  readonly hub?: number;
}

/** Which line the tracks and hub distances are known for: with `parallel` the strings were set along the centre line. */
export interface Strings {
  readonly wheels: Readonly<Partial<Record<Corner, StringedWheel>>>;
  /** Between the two edges of a rim, mm. */
  readonly diameter: number;
  /** mm, where `hub` is measured to; with it both wheels beside a string. Absent: the strings were set parallel to the centre line. */
  readonly track?: Readonly<Record<AxleName, number>>;
  /** mm from hub to hub of a side; with both there is a setback. */
  readonly wheelbase?: { readonly left: number; readonly right?: number };
}

/** What strings tell, degrees, signs as in the contract. */
export interface Stringed {
  readonly toe: Readonly<Partial<Record<Corner, Measured>>>;
  readonly totalToe: Readonly<Partial<Record<AxleName, Measured>>>;
  readonly thrustAngle?: Measured;
  readonly steerAhead?: Measured;
  /** How the strings stand to the centre line, + their front end further out. */
  readonly strings: { readonly left?: Measured; readonly right?: Measured };
  /** mm and degrees that the right front wheel is further back than the left, the rear ones taken as square. */
  readonly setback?: { readonly length: Measured; readonly angle?: Measured };
}

/**
 * Toe of each wheel, totals, thrust angle, steer-ahead and setback from strings or straight edges.
 * @param scatter one standard deviation of the rule from string to rim and of the tape along and across the car, mm
 * @throws InputError naming the field, such as `wheels.LF.ahead`
 */
export function toeFromStrings(
  strings: Strings,
  scatter: { readonly rule: number; readonly tape: number } = USUAL_SCATTER,
): Stringed {
  const { wheels, track, wheelbase } = checked(given('strings', strings));
  const corners = Object.keys(wheels) as Corner[];
  const inputs: Record<string, Measured> = {};
  for (const corner of corners) {
    const { ahead, behind, hub } = wheels[corner]!;
    const off = { ahead, behind, ...(hub !== undefined && { hub }) };
    for (const [name, value] of Object.entries(off)) inputs[`${corner}.${name}`] = { value, sd: scatter.rule };
  }
  const along = { ...track, ...wheelbase };
  for (const [name, value] of Object.entries(along)) inputs[name] = { value, sd: scatter.tape };
  const all = spreadOf(inputs, (read) => figures(strings, corners, read));
  const some = (name: string) => all[name];
  const of = <K extends string>(names: readonly K[], prefix: string): Partial<Record<K, Measured>> =>
    Object.fromEntries(
      names.filter((name) => some(prefix + name)).map((name) => [name, some(prefix + name)]),
    ) as Partial<Record<K, Measured>>;
  const [length, angle] = [some('setback'), some('setbackAngle')];
  return {
    toe: of(corners, 'toe.'),
    totalToe: of(['front', 'rear'], 'total.'),
    strings: of(['left', 'right'], 'string.'),
    ...(some('ahead.front') && { steerAhead: some('ahead.front')! }),
    ...(some('ahead.rear') && { thrustAngle: some('ahead.rear')! }),
    ...(length && { setback: { length, ...(angle && { angle }) } }),
  };
}

type Read = Readonly<Record<string, number>>;

/** Degrees and mm by name, of the distances by name. */
function figures({ diameter }: Strings, corners: readonly Corner[], read: Read): Record<string, number> {
  const [left, right] = (['left', 'right'] as const).map((side) => skewOf(side, read));
  const toe = (corner: Corner): number => {
    const own = degrees(asin((read[`${corner}.ahead`]! - read[`${corner}.behind`]!) / diameter));
    return own - ((corner.startsWith('L') ? left : right) ?? 0);
  };
  const toes = Object.fromEntries(corners.map((corner) => [corner, toe(corner)]));
  const axles = (['front', 'rear'] as const).flatMap((axle) => {
    const [l, r] = AXLES[axle].map((corner) => toes[corner]);
    if (l === undefined || r === undefined) return [];
    const { totalToe, thrustAngle } = axleAngles({ toe: l }, { toe: r });
    return [
      [`total.${axle}`, totalToe!],
      [`ahead.${axle}`, thrustAngle!],
    ] as const;
  });
  const back = read.left === undefined || read.right === undefined ? undefined : read.left - read.right;
  return {
    ...Object.fromEntries(corners.map((corner) => [`toe.${corner}`, toes[corner]!])),
    ...Object.fromEntries(axles),
    ...(left !== undefined && { 'string.left': left }),
    ...(right !== undefined && { 'string.right': right }),
    ...(back !== undefined && { setback: back }),
    ...(back !== undefined && read.front !== undefined && { setbackAngle: degrees(atan2(back, read.front)) }),
  };
}

/** Degrees that the front end of a side's string is out; nothing where that is not measured. */
function skewOf(side: 'left' | 'right', read: Read): number | undefined {
  const [front, rear] = AXLES_OF[side].map((corner) => hubOf(corner, read));
  const wheelbase = read[side] ?? read.left;
  if (front === undefined || rear === undefined || read.front === undefined || wheelbase === undefined)
    return undefined;
  const hubs = asin((read.front - read.rear!) / 2 / wheelbase);
  return degrees((hubs + asin((front - rear) / wheelbase)) as Radians);
}
const AXLES_OF = { left: ['LF', 'LR'], right: ['RF', 'RR'] } as const;

function hubOf(corner: Corner, read: Read): number | undefined {
  const [ahead, behind] = [read[`${corner}.ahead`], read[`${corner}.behind`]];
  if (ahead === undefined || behind === undefined) return undefined;
  return read[`${corner}.hub`] ?? (ahead + behind) / 2;
}

const PAIRS: readonly (readonly [Corner, Corner])[] = [
  ['LF', 'LR'],
  ['LR', 'LF'],
  ['RF', 'RR'],
  ['RR', 'RF'],
];

function checked(strings: Strings): Strings {
  const { wheels, track, wheelbase } = strings;
  const diameter = checkDiameter(strings.diameter);
  const all = Object.entries(given('wheels', wheels));
  if (all.length === 0) throw new InputError('wheels', wheels, { is: 'at-least-one' });
  for (const [corner, wheel] of all) {
    const { ahead, behind, hub } = given(`wheels.${corner}`, wheel);
    for (const [name, value] of Object.entries({ ahead, behind, ...(hub !== undefined && { hub }) })) {
      within(`wheels.${corner}.${name}`, value, 0, 1000, 'mm');
    }
    if (Math.abs(ahead - behind) > diameter)
      throw new InputError(`wheels.${corner}.ahead`, ahead, { is: 'within-diameter', diameter });
  }
  if (track) checkedTrack(track, strings);
  for (const [side, value] of Object.entries(wheelbase ?? {})) within(`wheelbase.${side}`, value, 500, 10000, 'mm');
  return strings;
}

function checkedTrack(track: NonNullable<Strings['track']>, { wheels, wheelbase }: Strings): void {
  for (const axle of ['front', 'rear'] as const) within(`track.${axle}`, given('track', track)[axle], 500, 3500, 'mm');
  within('wheelbase.left', given('wheelbase', wheelbase!).left, 500, 10000, 'mm');
  // A string that stands anyhow is found from both hubs beside it: from one it would pass for parallel.
  for (const [one, other] of PAIRS) {
    if (wheels[one] && !wheels[other]) throw new InputError(`wheels.${other}`, undefined, { is: 'given' });
  }
}
