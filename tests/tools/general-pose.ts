/**
 * The pose of a linked wheel by libraries that know nothing of suspensions: residuals written here from the points
 * alone, with none of the core's code, and given to ml-levenberg-marquardt (registry, curve fitting).
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Suspension, Vec3 } from '../../core/contract.ts';

const LINKS: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  'double-wishbone': [
    ['upperFront', 'upperBall'],
    ['upperRear', 'upperBall'],
    ['lowerFront', 'lowerBall'],
    ['lowerRear', 'lowerBall'],
    ['tieInner', 'tieOuter'],
  ],
  'five-link': [1, 2, 3, 4, 5].map((n) => [`inner${n}`, `outer${n}`] as const),
};

/** mm: makes a rotation as large a number as a translation. */
const LEVER = 100;

export interface Disturbance {
  /** Where points on the body are now, mm; the others stay. */
  readonly moved?: Readonly<Record<string, Vec3>>;
  /** Links, named by their body point, that are longer, mm. */
  readonly longer?: Readonly<Record<string, number>>;
  readonly travel?: number;
}

export interface GeneralPose {
  readonly camber: number;
  readonly toe: number;
  readonly caster?: number;
  /** Largest residual, mm. */
  readonly residual: number;
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const degrees = (radians: number): number => (radians * 180) / Math.PI;

export function generalPose(suspension: Suspension, { moved = {}, longer = {}, travel = 0 }: Disturbance): GeneralPose {
  const point = (name: string): Vec3 => suspension.points[name] as Vec3;
  const centre = point('wheelCentre');
  const rows = (LINKS[suspension.kind] ?? []).map(([inner, outer]) => ({
    inner: moved[inner] ?? point(inner),
    arm: minus(point(outer), centre),
    length: Math.hypot(...minus(point(outer), point(inner))) + (longer[inner] ?? 0),
  }));
  const place = (p: readonly number[]) => {
    const turn = rotation((p[3] ?? 0) / LEVER, (p[4] ?? 0) / LEVER, (p[5] ?? 0) / LEVER);
    return (arm: Vec3): Vec3 => {
      const [x, y, z] = turn(arm);
      return [centre[0] + (p[0] ?? 0) + x, centre[1] + (p[1] ?? 0) + y, centre[2] + (p[2] ?? 0) + z];
    };
  };
  const residual = (p: readonly number[]) => {
    const put = place(p);
    return (i: number): number => {
      const row = rows[i];
      return row ? Math.hypot(...minus(put(row.arm), row.inner)) - row.length : (p[2] ?? 0) - travel;
    };
  };
  const x = [0, 1, 2, 3, 4, 5];
  const { parameterValues } = levenbergMarquardt({ x, y: x.map(() => 0) }, residual, {
    initialValues: [0, 0, 0, 0, 0, 0],
    damping: 1e-6,
    gradientDifference: 1e-4,
    centralDifference: true,
    maxIterations: 50,
    errorTolerance: 1e-18,
  });
  const at = residual(parameterValues);
  const turn = rotation(...([3, 4, 5].map((i) => (parameterValues[i] ?? 0) / LEVER) as [number, number, number]));
  const put = place(parameterValues);
  return {
    ...anglesOf(suspension, turn, (name) => put(minus(point(name), centre))),
    residual: Math.max(...x.map((i) => Math.abs(at(i)))),
  };
}

/** Camber, toe and caster of a wheel that has been turned so, by the contract's definitions. */
export function anglesOf(
  { kind, camber, toe }: Suspension,
  turn: (v: Vec3) => Vec3,
  place: (name: string) => Vec3,
): Omit<GeneralPose, 'residual'> {
  const c = (camber * Math.PI) / 180;
  const t = (toe * Math.PI) / 180;
  const [x, y, z] = turn([Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)]);
  const angles = { camber: -degrees(Math.asin(z)), toe: degrees(Math.atan2(x, y)) };
  if (kind !== 'double-wishbone') return angles;
  const axis = minus(place('upperBall'), place('lowerBall'));
  return { ...angles, caster: degrees(Math.atan2(-axis[0], axis[2])) };
}

/** Rotation by a vector (Rodrigues). */
function rotation(a: number, b: number, c: number): (v: Vec3) => Vec3 {
  const angle = Math.hypot(a, b, c);
  if (angle === 0) return (v) => v;
  const [x, y, z] = [a / angle, b / angle, c / angle];
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return ([u, v, w]) => {
    const along = (x * u + y * v + z * w) * (1 - cos);
    return [
      u * cos + (y * w - z * v) * sin + x * along,
      v * cos + (z * u - x * w) * sin + y * along,
      w * cos + (x * v - y * u) * sin + z * along,
    ];
  };
}
