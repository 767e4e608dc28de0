/**
 * A tape dimension as the points of a layout have it, how it changes with them, and the layout nearest to a given one
 * that has the lengths that were measured.
 *
 * Nearest: the sum of squares of what the coordinates move by is the least, as for coordinates that are all equally
 * uncertain it is the likeliest: x ← x₀ + Gᵀ(G·Gᵀ)⁻¹(d − g(x) + G·(x − x₀)), repeated until the lengths are there. Source:
 * any text on least squares with equality constraints, such as J. Nocedal, S. J. Wright, Numerical Optimization, ch. 18; from
 * memory.
 */
import type { Vec3 } from '../../contract.ts';
import { scale, sub } from '../../geometry/vector.ts';
import { InputError } from '../../input-error.ts';
import { tapeLayouts } from './catalogue.ts';
import { USUAL_OFFSET } from './offset.ts';
import { type Measured, TAPE_TOLERANCE, type TapeDimension } from './tape.ts';

type Points = Readonly<Record<string, Vec3>>;
/** What one more mm of each coordinate of each point adds to a length. */
export type Gradient = Readonly<Record<string, Vec3>>;
/** Lengths that were measured, mm, by the names of the kind's tape dimensions; how well, where that is said. */
export type Measurements = Readonly<Record<string, Measured>>;

/** The dimensions of a kind that are lengths between its points, in the order of its table. */
export const lengthsOf = (kind: string): readonly TapeDimension[] =>
  tapeLayouts[kind]?.dimensions.filter(({ measure }) => measure !== undefined) ?? [];

export const measuredValue = (entry: Measured): number => (typeof entry === 'number' ? entry : entry.value);
export const toleranceOf = (entry: Measured): number =>
  (typeof entry === 'number' ? undefined : entry.tolerance) ?? TAPE_TOLERANCE;

/**
 * The length, mm, that a dimension has in a layout.
 * @param offset mm that the hub's face stands outboard of the wheel's middle
 */
export function lengthIn({ measure, between }: TapeDimension, points: Points, offset = USUAL_OFFSET): number {
  const [a, b] = between.map((name) => points[name]!) as [Vec3, Vec3];
  switch (measure) {
    case 'apart':
      return Math.hypot(...sub(a, b));
    case 'inboard':
      return b[1] - a[1];
    case 'inboard-of-face':
      return b[1] + offset - a[1];
    case 'ahead':
      return a[0] - b[0];
    case 'track':
      return 2 * a[1];
    case 'behind':
      return 0 - a[0];
    default:
      return a[2];
  }
}

/** The same's gradient: pure numbers, mm a mm. */
export function gradientIn({ measure, between }: TapeDimension, points: Points): Gradient {
  const [first, second] = between as readonly [string, string];
  const of = (a: Vec3, b: Vec3): Gradient => ({ [first]: a, [second]: b });
  switch (measure) {
    case 'apart': {
      const apart = sub(points[first]!, points[second]!);
      const along = scale(apart, 1 / Math.hypot(...apart));
      return of(along, scale(along, -1));
    }
    case 'inboard':
    case 'inboard-of-face':
      return of([0, -1, 0], [0, 1, 0]);
    case 'ahead':
      return of([1, 0, 0], [-1, 0, 0]);
    case 'track':
      return { [first]: [0, 2, 0] };
    case 'behind':
      return { [first]: [-1, 0, 0] };
    default:
      return { [first]: [0, 0, 1] };
  }
}

/** mm within which a length is there. */
const THERE = 1e-10;
const MOST_ROUNDS = 50;

/**
 * The layout nearest to a given one in which the measured lengths are as they were measured.
 * @param points of the layout, mm
 * @param offset mm that the hub's face stands outboard of the wheel's middle
 * @throws InputError naming the length that no layout near it can have beside the others
 */
export function pointsWith(
  points: Points,
  kind: string,
  measured: Measurements,
  { field = 'measured', offset }: { readonly field?: string; readonly offset?: number } = {},
): Points {
  const asked = lengthsOf(kind).filter(({ name }) => measured[name] !== undefined);
  let now = points;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const off = asked.map((one) => measuredValue(measured[one.name]!) - lengthIn(one, now, offset));
    if (off.every((x) => Math.abs(x) < THERE)) return now;
    now = moved(points, nearestStep(asked, points, now, off));
    if (!Object.values(now).flat().every(Number.isFinite)) break;
  }
  const worst = asked.find(
    (one) => !(Math.abs(measuredValue(measured[one.name]!) - lengthIn(one, now, offset)) < 1e-6),
  );
  if (!worst) return now;
  throw new InputError(`${field}.${worst.name}`, measuredValue(measured[worst.name]!), { is: 'near-layout' });
}

/** The least that all coordinates together have to move by from where they began, to first order about where they are. */
function nearestStep(asked: readonly TapeDimension[], from: Points, now: Points, off: readonly number[]): Gradient {
  const rows = asked.map((one) => gradientIn(one, now));
  const gone = Object.fromEntries(Object.entries(now).map(([name, point]) => [name, sub(point, from[name]!)]));
  const weights = solved(
    rows.map((a) => rows.map((b) => inner(a, b))),
    rows.map((row, i) => off[i]! + inner(row, gone)),
  );
  const step: Record<string, Vec3> = {};
  rows.forEach((row, i) => {
    for (const [name, by] of Object.entries(row)) {
      const before = step[name] ?? [0, 0, 0];
      step[name] = [0, 1, 2].map((k) => before[k]! + weights[i]! * by[k]!) as unknown as Vec3;
    }
  });
  return step;
}

const inner = (a: Gradient, b: Gradient): number =>
  Object.entries(a).reduce((sum, [name, x]) => sum + (b[name]?.reduce((own, y, k) => own + y * x[k]!, 0) ?? 0), 0);

const moved = (points: Points, step: Gradient): Points =>
  Object.fromEntries(
    Object.entries(points).map(([name, point]) => [
      name,
      step[name] ? (point.map((x, k) => x + step[name]![k]!) as unknown as Vec3) : point,
    ]),
  );

/** x of A·x = b for a few rows: Gauss with pivots; not finite where lengths contradict one another. */
function solved(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const rows = a.map((row, i) => [...row, b[i]!]);
  const size = rows.length;
  for (let i = 0; i < size; i++) {
    const best = rows
      .slice(i)
      .reduce((most, row, k) => (Math.abs(row[i]!) > Math.abs(rows[most]![i]!) ? i + k : most), i);
    [rows[i], rows[best]] = [rows[best]!, rows[i]!];
    for (let k = i + 1; k < size; k++) {
      const share = rows[k]![i]! / rows[i]![i]!;
      for (let j = i; j <= size; j++) rows[k]![j]! -= share * rows[i]![j]!;
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    const rest = rows[i]!.slice(i + 1, size).reduce((sum, value, k) => sum + value * x[i + 1 + k]!, 0);
    x[i] = (rows[i]![size]! - rest) / rows[i]![i]!;
  }
  return x;
}
