/**
 * A rigid axle on links by a library that knows nothing of suspensions: how much each link is stretched, written here
 * from the definition with none of the core's code, and its sum of squares made least by ml-levenberg-marquardt.
 *
 * The heights of both wheel centres are kept exactly by the choice of the unknowns: the axle turns about the line
 * through its wheel centres, about the vertical, and shifts forward and sideways; none of it lifts a wheel.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Suspension, Vec3 } from '../../core/contract.ts';

/** mm: makes a rotation as large a number as a translation. */
const LEVER = 400;

/** One link, in the left corner's frame: where its ends are now (the axle's end as it was before the axle moved). */
interface Link {
  readonly body: Vec3;
  readonly axle: Vec3;
  readonly length: number;
}

/** What adjusters have done to one side, in its own corner frame. */
export interface SideDisturbance {
  /** mm that points have been moved by. */
  readonly moved?: Readonly<Record<string, Vec3>>;
  /** mm that links, named by their body point, have grown. */
  readonly longer?: Readonly<Record<string, number>>;
}

export interface GeneralAxle {
  readonly left: { readonly camber: number; readonly toe: number };
  readonly right: { readonly camber: number; readonly toe: number };
  readonly pinionAngle: number;
  readonly lateral: number;
  /** mm. */
  readonly strain: number;
}

const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const long = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
const degrees = (radians: number): number => (radians * 180) / Math.PI;
const flip = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
const same = (v: Vec3): Vec3 => v;

/** `v` turned about the unit axis `k` (Rodrigues). */
function turn(v: Vec3, k: Vec3, angle: number): Vec3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const along = (k[0] * v[0] + k[1] * v[1] + k[2] * v[2]) * (1 - c);
  return [
    v[0] * c + (k[1] * v[2] - k[2] * v[1]) * s + k[0] * along,
    v[1] * c + (k[2] * v[0] - k[0] * v[2]) * s + k[1] * along,
    v[2] * c + (k[0] * v[1] - k[1] * v[0]) * s + k[2] * along,
  ];
}

const NAMES = [
  ['lowerBody', 'lowerAxle'],
  ['upperBody', 'upperAxle'],
  ['rodBody', 'rodAxle'],
] as const;

function linksOf(
  { points }: Suspension,
  { moved = {}, longer = {} }: SideDisturbance,
  view: (v: Vec3) => Vec3,
): Link[] {
  return NAMES.filter(([body, axle]) => points[body] && points[axle]).map(([body, axle]) => {
    const at = (name: string): Vec3 => view(plus(points[name] as Vec3, moved[name] ?? [0, 0, 0]));
    const length = long(minus(points[body] as Vec3, points[axle] as Vec3)) + (longer[body] ?? 0);
    return { body: at(body), axle: at(axle), length };
  });
}

export function generalAxle(
  left: Suspension,
  right: Suspension,
  onLeft: SideDisturbance,
  onRight: SideDisturbance,
): GeneralAxle {
  const { rodBody: _, rodAxle: __, ...rightPoints } = right.points;
  const links = [...linksOf(left, onLeft, same), ...linksOf({ ...right, points: rightPoints }, onRight, flip)];
  const centres = [left.points.wheelCentre as Vec3, flip(right.points.wheelCentre as Vec3)] as const;
  const home: Vec3 = [0, 1, 2].map((i) => ((centres[0][i] ?? 0) + (centres[1][i] ?? 0)) / 2) as unknown as Vec3;
  const across = minus(centres[0], centres[1]);
  const line = across.map((x) => x / long(across)) as unknown as Vec3;
  const turned = (p: readonly number[], v: Vec3): Vec3 =>
    turn(turn(v, line, (p[3] ?? 0) / LEVER), [0, 0, 1], (p[2] ?? 0) / LEVER);
  const put = (p: readonly number[], v: Vec3): Vec3 =>
    plus(plus(home, [p[0] ?? 0, p[1] ?? 0, 0]), turned(p, minus(v, home)));
  const stretch = (p: readonly number[]): number[] =>
    links.map(({ body, axle, length }) => long(minus(put(p, axle), body)) - length);
  const x = links.map((_link, i) => i);
  const { parameterValues: found } = levenbergMarquardt(
    { x, y: x.map(() => 0) },
    (p: readonly number[]) => {
      const all = stretch(p);
      return (i: number) => all[i] as number;
    },
    {
      initialValues: [0, 0, 0, 0],
      damping: 1e-6,
      gradientDifference: 1e-4,
      centralDifference: true,
      maxIterations: 60,
      errorTolerance: 1e-24,
    },
  );
  const wheel = ({ camber, toe }: Suspension, view: (v: Vec3) => Vec3) => {
    const [c, t] = [(camber * Math.PI) / 180, (toe * Math.PI) / 180];
    const spin: Vec3 = [Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)];
    const now = view(turned(found, view(spin)));
    return { camber: -degrees(Math.asin(now[2])), toe: degrees(Math.atan2(now[0], now[1])) };
  };
  return {
    left: wheel(left, same),
    right: wheel(right, flip),
    pinionAngle: degrees(Math.asin(turned(found, [1, 0, 0])[2])),
    lateral: found[1] ?? Number.NaN,
    strain: Math.max(...stretch(found).map(Math.abs)),
  };
}
