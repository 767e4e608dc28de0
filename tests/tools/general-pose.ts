/**
 * The pose of a wheel by libraries that know nothing of suspensions: residuals written here from the points and the
 * contract's table of what holds each kind together, with none of the core's code, and given to
 * ml-levenberg-marquardt (registry, curve fitting).
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Suspension, Vec3 } from '../../core/contract.ts';

/** mm: makes a rotation as large a number as a translation. */
const LEVER = 100;

export interface Disturbance {
  /** Where points on the body are now, mm; the others stay. */
  readonly moved?: Readonly<Record<string, Vec3>>;
  /** Links, named by their body point, that are longer, mm. */
  readonly longer?: Readonly<Record<string, number>>;
  /** Degrees that the wheel's top leans out against the strut. */
  readonly tilt?: number;
  readonly travel?: number;
}

export interface GeneralPose {
  readonly camber: number;
  readonly toe: number;
  readonly caster?: number;
  readonly sai?: number;
  /** Largest residual, mm. */
  readonly residual: number;
  /** Where a point of the upright, or the top of a strut, is. */
  readonly place: (name: string) => Vec3;
}

/** How far the upright is from where it has to be, mm, all zero when it is there. */
type Residuals = (at: UprightPlace) => number[];
interface UprightPlace {
  /** Where a point of the upright is. */
  readonly put: (name: string) => Vec3;
  /** A direction of the upright, turned with it. */
  readonly turn: (v: Vec3) => Vec3;
  readonly lift: number;
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const long = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const degrees = (radians: number): number => (radians * 180) / Math.PI;

const WISHBONE = 'upperFront:upperBall upperRear:upperBall lowerFront:lowerBall lowerRear:lowerBall tieInner:tieOuter';
const FIVE = 'inner1:outer1 inner2:outer2 inner3:outer3 inner4:outer4 inner5:outer5';
const AXES: Readonly<Record<string, readonly [string, string]>> = {
  'double-wishbone': ['lowerBall', 'upperBall'],
  strut: ['lowerBall', 'strutTop'],
  'beam-front': ['lowerBall', 'upperBall'],
};

/** The contract's table, kind by kind. */
function residualsOf(
  suspension: Suspension,
  { moved = {}, longer = {}, tilt = 0, travel = 0 }: Disturbance,
): Residuals {
  const point = (name: string): Vec3 => suspension.points[name] as Vec3;
  const body = (name: string): Vec3 => moved[name] ?? point(name);
  const lengths = (pairs: string) => {
    const rows = pairs.split(' ').map((pair) => pair.split(':') as [string, string]);
    return ({ put }: UprightPlace): number[] =>
      rows.map(([inner, outer]) => {
        const length = long(minus(point(outer), point(inner))) + (longer[inner] ?? 0);
        return long(minus(put(outer), body(inner))) - length;
      });
  };
  /** `to`, a body point, on the line that the upright carries through `from`: three components of which two count. */
  const onLine = (to: string, from: string, lean = 0) => {
    const [x, y, z] = minus(point(to), point(from));
    // The wheel's top leans out by so much against the strut: the strut's top leans in by it against the wheel.
    const [c, s] = [Math.cos((lean * Math.PI) / 180), Math.sin((lean * Math.PI) / 180)];
    const line: Vec3 = [x / long([x, y, z]), (y * c - z * s) / long([x, y, z]), (z * c + y * s) / long([x, y, z])];
    return ({ put, turn }: UprightPlace): number[] => [...cross(minus(body(to), put(from)), turn(line))];
  };
  const coincide =
    (name: string) =>
    ({ put }: UprightPlace): number[] => [...minus(put(name), body(name))];
  const height = ({ lift }: UprightPlace): number[] => [lift - travel];
  const all: Readonly<Record<string, () => readonly Residuals[]>> = {
    'double-wishbone': () => [lengths(WISHBONE), height],
    'five-link': () => [lengths(FIVE), height],
    strut: () => [
      lengths('lowerFront:lowerBall lowerRear:lowerBall tieInner:tieOuter'),
      onLine('strutTop', 'strutLower', tilt),
      height,
    ],
    'trailing-arm': () => [coincide('pivotInner'), onLine('pivotOuter', 'pivotInner'), height],
    'beam-front': () => [coincide('lowerBall'), onLine('upperBall', 'lowerBall'), lengths('tieInner:tieOuter')],
  };
  const own = all[suspension.kind]?.();
  if (!own) throw new Error(`tests/tools/general-pose.ts: say what holds ${suspension.kind} together`);
  return (at) => own.flatMap((rows) => rows(at));
}

export function generalPose(suspension: Suspension, disturbance: Disturbance): GeneralPose {
  const point = (name: string): Vec3 => suspension.points[name] as Vec3;
  const centre = point('wheelCentre');
  const rows = residualsOf(suspension, disturbance);
  const place = (p: readonly number[]): UprightPlace => {
    const turn = rotation((p[3] ?? 0) / LEVER, (p[4] ?? 0) / LEVER, (p[5] ?? 0) / LEVER);
    const put = (name: string): Vec3 => {
      const [x, y, z] = turn(minus(point(name), centre));
      return [centre[0] + (p[0] ?? 0) + x, centre[1] + (p[1] ?? 0) + y, centre[2] + (p[2] ?? 0) + z];
    };
    return { put, turn, lift: p[2] ?? 0 };
  };
  const residuals = (p: readonly number[]) => {
    const all = rows(place(p));
    return (i: number): number => all[i] as number;
  };
  const x = rows(place([])).map((_, i) => i);
  const { parameterValues } = levenbergMarquardt({ x, y: x.map(() => 0) }, residuals, {
    initialValues: [0, 0, 0, 0, 0, 0],
    damping: 1e-6,
    gradientDifference: 1e-4,
    centralDifference: true,
    maxIterations: 50,
    errorTolerance: 1e-18,
  });
  const at = place(parameterValues);
  // The upper end of a strut's steering axis stands on the body.
  const top = suspension.kind === 'strut' ? (disturbance.moved?.strutTop ?? point('strutTop')) : undefined;
  const placed = (name: string): Vec3 => (name === 'strutTop' && top) || at.put(name);
  const residual = Math.max(...rows(at).map(Math.abs));
  return { ...anglesOf(suspension, at.turn, placed), residual, place: placed };
}

/** Angles of a wheel that has been turned so, by the contract's definitions. */
export function anglesOf(
  { kind, camber, toe }: Suspension,
  turn: (v: Vec3) => Vec3,
  place: (name: string) => Vec3,
): Omit<GeneralPose, 'residual' | 'place'> {
  const c = (camber * Math.PI) / 180;
  const t = (toe * Math.PI) / 180;
  const [x, y, z] = turn([Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)]);
  const angles = { camber: -degrees(Math.asin(z)), toe: degrees(Math.atan2(x, y)) };
  const ends = AXES[kind];
  if (!ends) return angles;
  const axis = minus(place(ends[1]), place(ends[0]));
  return { ...angles, caster: degrees(Math.atan2(-axis[0], axis[2])), sai: degrees(Math.atan2(-axis[1], axis[2])) };
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
