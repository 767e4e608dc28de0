/**
 * How sure a plan is. The re-measure parts from what was predicted for two reasons: the hard points are known to a
 * tape's tolerance only, and the gauge does not repeat, neither at the first reading nor at the second.
 */
import type { Adjuster, Corner, Gauge, Settings, Suspension, Vec3 } from '../contract.ts';
import { CAMBER, CASTER, CornerModel, TOE } from '../pose/corner.ts';
import { normals } from './random.ts';
import { termValue } from './search.ts';
import { isIn, type Term } from './terms.ts';

/** Trade practice on a rack in good order, no source: one standard deviation, degrees. */
export const DEFAULT_GAUGE: Gauge = { camber: 0.03, caster: 0.08, toe: 0.015 };
/** The most that a taped coordinate is off, mm. */
export const DEFAULT_TOLERANCE = 5;

/** Where the difference for a derivative is taken, mm: far above rounding, far below curvature. */
const STEP = 0.5;
const DRAWS = 2048;
const SEED = 20261125;

/** Covariance of (re-measured − predicted) of one wheel, degrees², 3 × 3 by CAMBER, CASTER, TOE. */
export type Covariance = Float64Array;

/**
 * Covariance of one corner's error: the change from `from` to `to` differentiated by every coordinate, times the
 * coordinate's variance, and twice the gauge's.
 * A coordinate that is off by at most t, anywhere within equally likely, has the variance t²/3.
 */
export function covarianceOf(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  from: Settings,
  to: Settings,
  gauge: Gauge,
): Covariance {
  const covariance = new Float64Array(9);
  [gauge.camber, gauge.caster, gauge.toe].forEach((sigma, i) => {
    covariance[([CAMBER, CASTER, TOE][i] as number) * 4] = 2 * sigma * sigma;
  });
  const moved = Object.keys(to).some((id) => from[id] !== to[id]);
  const tolerance = suspension.tolerance ?? DEFAULT_TOLERANCE;
  if (!moved || tolerance === 0) return covariance;
  const change = (points: Suspension['points']): Float64Array | undefined =>
    changeBetween(new CornerModel({ ...suspension, points }, adjusters), from, to);
  const asGiven = change(suspension.points);
  if (!asGiven) return covariance;
  const variance = (tolerance * tolerance) / 3;
  for (const [name, point] of Object.entries(suspension.points)) {
    for (let axis = 0; axis < 3; axis++) {
      const off = change({ ...suspension.points, [name]: nudged(point, axis) });
      if (!off) continue;
      const slope = off.map((value, k) => (value - (asGiven[k] as number)) / STEP);
      for (let i = 0; i < 3; i++) {
        for (let j = 0; j < 3; j++) {
          covariance[3 * i + j] =
            (covariance[3 * i + j] as number) + variance * (slope[i] as number) * (slope[j] as number);
        }
      }
    }
  }
  return covariance;
}

const nudged = (point: Vec3, axis: number): Vec3 => point.map((x, i) => (i === axis ? x + STEP : x)) as unknown as Vec3;

function changeBetween(model: CornerModel, from: Settings, to: Settings): Float64Array | undefined {
  const a = new Float64Array(3);
  const b = new Float64Array(3);
  if (!model.angles(model.parameters(from), a) || !model.angles(model.parameters(to), b)) return undefined;
  return b.map((value, k) => value - (a[k] as number));
}

/** Lower triangle L with L·Lᵀ = c (Cholesky); a direction without any spread stays zero. */
function rootOf(c: Covariance): Float64Array {
  const root = new Float64Array(9);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = c[3 * i + j] as number;
      for (let k = 0; k < j; k++) sum -= (root[3 * i + k] as number) * (root[3 * j + k] as number);
      if (i === j) root[4 * i] = Math.sqrt(Math.max(0, sum));
      else root[3 * i + j] = (root[4 * j] as number) > 0 ? sum / (root[4 * j] as number) : 0;
    }
  }
  return root;
}

/** Share of draws in which every term is in its window. */
export function chanceOf(
  terms: readonly Term[],
  corners: readonly Corner[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
): number {
  const roots = covariances.map(rootOf);
  const next = normals(SEED);
  const drawn = predicted.map(() => new Float64Array(3));
  const z = new Float64Array(3);
  let hits = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    for (let c = 0; c < corners.length; c++) {
      const root = roots[c] as Float64Array;
      for (let k = 0; k < 3; k++) z[k] = next();
      for (let i = 0; i < 3; i++) {
        let value = (predicted[c] as Float64Array)[i] as number;
        for (let k = 0; k <= i; k++) value += (root[3 * i + k] as number) * (z[k] as number);
        (drawn[c] as Float64Array)[i] = value;
      }
    }
    if (terms.every((term) => isIn(term, termValue(term, corners, drawn)))) hits++;
  }
  return hits / DRAWS;
}
