/**
 * How well the coordinates of a layout are known once lengths between its points were measured: each length is linear in
 * them for as small an error, so that Gaussian numbers stay Gaussian. Of the covariance P (each unknown in its own standard
 * deviations), a length whose gradient is g in the same and whose own variance is r leaves
 *
 *   P − P·g·(P·g)ᵀ / (gᵀ·P·g + r),
 *
 * one length after another. Source: any text on estimation, the Kalman filter's measurement update; from memory.
 */
import type { Suspension } from '../contract.ts';
import { gradientIn, lengthsOf, toleranceOf } from '../suspension/tape/measure.ts';
import { USUAL_OFFSET_TOLERANCE } from '../suspension/tape/offset.ts';
import type { Measured, TapeDimension } from '../suspension/tape/tape.ts';
import type { Side } from './of-corner.ts';
import type { Unknown } from './unknowns.ts';

/** A length as what is not known bears on it. */
export interface Sighted {
  /** What one standard deviation of each unknown adds to it, mm. */
  readonly gradient: Float64Array;
  /** mm², of the tape. */
  readonly variance: number;
}

/** A tape is off by at most its tolerance, anywhere within equally likely. */
const varianceOf = (tolerance: number): number => tolerance ** 2 / 3;

/** One length of one side. */
export function sighted(
  dimension: TapeDimension,
  entry: Measured,
  { suspension }: Side,
  side: number,
  unknowns: readonly Unknown[],
): Sighted {
  const by = gradientIn(dimension, suspension.points);
  const gradient = Float64Array.from(unknowns, (one) =>
    one.side === side && 'point' in one ? (by[one.point]?.[one.axis] ?? 0) * one.sigma : 0,
  );
  return { gradient, variance: varianceOf(toleranceOf(entry)) + ofFace(dimension, suspension) };
}

/** What is measured from the hub's face is known no better than where that is. */
const ofFace = ({ measure }: TapeDimension, { measured }: Suspension): number =>
  measure !== 'inboard-of-face' || measured?.wheelOffset !== undefined ? 0 : varianceOf(USUAL_OFFSET_TOLERANCE);

/** Every length that was measured of an assembly's sides. */
export const sightedOf = (sides: readonly Side[], unknowns: readonly Unknown[]): readonly Sighted[] =>
  sides.flatMap((one, side) =>
    lengthsOf(one.suspension.kind).flatMap((dimension) => {
      const entry = one.suspension.measured?.[dimension.name];
      return entry === undefined ? [] : [sighted(dimension, entry, one, side, unknowns)];
    }),
  );

/**
 * The covariance of some unknowns, each in its standard deviations, after lengths were measured: square, row by row.
 * @param before the same before it; absent: they are independent
 */
export function covarianceAfter(size: number, lengths: readonly Sighted[], before?: Float64Array): Float64Array {
  const covariance = before?.slice() ?? identity(size);
  for (const { gradient, variance } of lengths) {
    const seen = Float64Array.from({ length: size }, (_, i) =>
      gradient.reduce((sum, x, j) => sum + covariance[i * size + j]! * x, 0),
    );
    const spread = seen.reduce((sum, x, i) => sum + x * gradient[i]!, variance);
    if (!(spread > 0)) continue;
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) covariance[i * size + j]! -= (seen[i]! * seen[j]!) / spread;
    }
  }
  return covariance;
}

function identity(size: number): Float64Array {
  const one = new Float64Array(size * size);
  for (let i = 0; i < size; i++) one[i * (size + 1)] = 1;
  return one;
}
