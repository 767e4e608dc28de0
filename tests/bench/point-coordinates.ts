/**
 * The same pose as someone would put it to a general-purpose library who thinks in points: twelve unknown
 * coordinates of the four points on the upright, five link lengths, six distances that make it rigid, one height.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Suspension, Vec3 } from '../../core/contract.ts';

const MOVING = ['upperBall', 'lowerBall', 'tieOuter', 'wheelCentre'] as const;
const LINKS = [
  ['upperFront', 'upperBall'],
  ['upperRear', 'upperBall'],
  ['lowerFront', 'lowerBall'],
  ['lowerRear', 'lowerBall'],
  ['tieInner', 'tieOuter'],
] as const;
const RIGID = MOVING.flatMap((a, i) => MOVING.slice(i + 1).map((b) => [a, b] as const));

/**
 * @param moved points on the body that have moved, mm
 * @returns the largest residual, mm
 */
export function posePoints({ points }: Suspension, moved: Readonly<Record<string, Vec3>>): number {
  const start = MOVING.flatMap((name) => points[name] ?? []);
  const index = new Map<string, number>(MOVING.map((name, i) => [name, 3 * i]));
  const rows = [...LINKS, ...RIGID].map(([a, b]) => ({
    fixed: index.has(a) ? undefined : (moved[a] ?? points[a]),
    a: index.get(a) ?? 0,
    b: index.get(b) ?? 0,
    length: apart(points[a] as Vec3, 0, points[b] as Vec3, 0),
  }));
  const height = start[11] ?? 0;
  const residual = (p: readonly number[]) => (i: number) => {
    const row = rows[i];
    return row ? apart(row.fixed ?? p, row.fixed ? 0 : row.a, p, row.b) - row.length : (p[11] ?? 0) - height;
  };
  const x = Array.from({ length: rows.length + 1 }, (_, i) => i);
  const { parameterValues } = levenbergMarquardt({ x, y: x.map(() => 0) }, residual, {
    initialValues: start,
    damping: 1e-6,
    gradientDifference: 1e-4,
    centralDifference: true,
    maxIterations: 50,
    errorTolerance: 1e-18,
  });
  return Math.max(...x.map((i) => Math.abs(residual(parameterValues)(i))));
}

function apart(a: ArrayLike<number>, i: number, b: ArrayLike<number>, j: number): number {
  const at = (list: ArrayLike<number>, k: number): number => list[k] ?? 0;
  return Math.hypot(at(a, i) - at(b, j), at(a, i + 1) - at(b, j + 1), at(a, i + 2) - at(b, j + 2));
}
