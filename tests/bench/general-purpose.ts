/**
 * The same pose by a library that knows nothing of suspensions: six unknowns fitted so that six residuals vanish.
 * The residuals are written here from the points alone, with none of the core's code.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Suspension, Vec3 } from '../../core/contract.ts';

const LINKS = [
  ['upperFront', 'upperBall'],
  ['upperRear', 'upperBall'],
  ['lowerFront', 'lowerBall'],
  ['lowerRear', 'lowerBall'],
  ['tieInner', 'tieOuter'],
] as const;

/** mm: makes a rotation as large a number as a translation. */
const LEVER = 100;

/**
 * @param moved points on the body that have moved, mm
 * @returns wheel-centre shift (mm) and rotation vector (hundredths of a radian), and the largest residual, mm
 */
export function generalPose(suspension: Suspension, moved: Readonly<Record<string, Vec3>>) {
  const point = (name: string): Vec3 => suspension.points[name] as Vec3;
  const centre = point('wheelCentre');
  const rows = LINKS.map(([inner, outer]) => ({
    inner: moved[inner] ?? point(inner),
    arm: minus(point(outer), centre),
    length: Math.hypot(...minus(point(outer), point(inner))),
  }));
  const residual = (p: readonly number[]) => {
    const turn = rotation((p[3] ?? 0) / LEVER, (p[4] ?? 0) / LEVER, (p[5] ?? 0) / LEVER);
    return (i: number): number => {
      const row = rows[i];
      if (!row) return p[2] ?? 0;
      const [x, y, z] = turn(row.arm);
      const [cx, cy, cz] = centre;
      const outer: Vec3 = [cx + (p[0] ?? 0) + x, cy + (p[1] ?? 0) + y, cz + (p[2] ?? 0) + z];
      return Math.hypot(...minus(outer, row.inner)) - row.length;
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
  return { parameters: parameterValues, residual: Math.max(...x.map((i) => Math.abs(at(i)))) };
}

function minus(a: Vec3, b: Vec3): [number, number, number] {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
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
