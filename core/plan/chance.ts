/**
 * How sure a plan is. The re-measure parts from what was predicted for two reasons: the hard points are known to a
 * tape's tolerance only, and the gauge does not repeat, neither at the first reading nor at the second.
 */
import { CORNERS, type Gauge, type Settings, type Vec3 } from '../contract.ts';
import { ANGLES, CAMBER, CASTER, type Side, TOE, UnitModel } from '../pose/unit.ts';
import type { Unit } from './car-model.ts';
import { normals } from './random.ts';
import { isIn, type Term, termValue } from './terms.ts';

/** Trade practice on a rack in good order, no source: one standard deviation, degrees. */
export const DEFAULT_GAUGE: Gauge = { camber: 0.03, caster: 0.08, toe: 0.015 };
/** The most that a taped coordinate is off, mm. */
export const DEFAULT_TOLERANCE = 5;

/** Where the difference for a derivative is taken, mm: far above rounding, far below curvature. */
const STEP = 0.5;
const DRAWS = 2048;
const SEED = 20261125;

/** Covariance of (re-measured − predicted) of one unit's angles, degrees², square, row by row. */
export type Covariance = Float64Array;

/**
 * Covariance of one unit's error: the change from `from` to `to` differentiated by every coordinate, times the
 * coordinate's variance, and twice the gauge's.
 * A coordinate that is off by at most t, anywhere within equally likely, has the variance t²/3.
 */
export function covarianceOf(
  { sides }: Unit,
  from: readonly Settings[],
  to: readonly Settings[],
  gauge: Gauge,
): Covariance {
  const size = ANGLES * sides.length;
  const covariance = new Float64Array(size * size);
  for (let i = 0; i < size; i += ANGLES) {
    for (const [place, sigma] of [
      [CAMBER, gauge.camber],
      [CASTER, gauge.caster],
      [TOE, gauge.toe],
    ] as const) {
      covariance[(i + place) * (size + 1)] = 2 * sigma * sigma;
    }
  }
  const moved = to.some((settings, side) => Object.keys(settings).some((id) => from[side]?.[id] !== settings[id]));
  if (!moved) return covariance;
  const asGiven = changeBetween(sides, from, to);
  if (!asGiven) return covariance;
  for (const [s, { suspension }] of sides.entries()) {
    const tolerance = suspension.tolerance ?? DEFAULT_TOLERANCE;
    if (tolerance === 0) continue;
    const variance = (tolerance * tolerance) / 3;
    for (const [name, point] of Object.entries(suspension.points)) {
      for (let axis = 0; axis < 3; axis++) {
        const points = { ...suspension.points, [name]: nudged(point, axis) };
        const elsewhere = sides.map((side, i) => (i === s ? { ...side, suspension: { ...suspension, points } } : side));
        const off = changeBetween(elsewhere, from, to);
        if (!off) continue;
        const slope = off.map((value, k) => (value - (asGiven[k] as number)) / STEP);
        for (let i = 0; i < size; i++) {
          for (let j = 0; j < size; j++) {
            covariance[size * i + j] =
              (covariance[size * i + j] as number) + variance * (slope[i] as number) * (slope[j] as number);
          }
        }
      }
    }
  }
  return covariance;
}

const nudged = (point: Vec3, axis: number): Vec3 => point.map((x, i) => (i === axis ? x + STEP : x)) as unknown as Vec3;

function changeBetween(
  sides: readonly Side[],
  from: readonly Settings[],
  to: readonly Settings[],
): Float64Array | undefined {
  const model = new UnitModel(sides);
  const a = new Float64Array(ANGLES * sides.length);
  const b = new Float64Array(ANGLES * sides.length);
  if (!model.angles(model.parameters(from), a) || !model.angles(model.parameters(to), b)) return undefined;
  return b.map((value, k) => value - (a[k] as number));
}

/** Lower triangle L with L·Lᵀ = c (Cholesky); a direction without any spread stays zero. */
function rootOf(c: Covariance): Float64Array {
  const size = Math.sqrt(c.length);
  const root = new Float64Array(c.length);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = c[size * i + j] as number;
      for (let k = 0; k < j; k++) sum -= (root[size * i + k] as number) * (root[size * j + k] as number);
      if (i === j) root[(size + 1) * i] = Math.sqrt(Math.max(0, sum));
      else {
        const pivot = root[(size + 1) * j] as number;
        root[size * i + j] = pivot > 0 ? sum / pivot : 0;
      }
    }
  }
  return root;
}

/**
 * Share of draws in which every term is in its window.
 * @param predicted angles of each corner, in the order of the units' corners
 * @param covariances one for each unit
 */
export function chanceOf(
  terms: readonly Term[],
  units: readonly Unit[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
): number {
  const corners = units.flatMap((unit) => unit.corners);
  const roots = covariances.map(rootOf);
  const next = normals(SEED);
  const drawn = predicted.map(() => new Float64Array(ANGLES));
  const z = new Float64Array(ANGLES * CORNERS.length);
  let hits = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    let corner = 0;
    for (let u = 0; u < units.length; u++) {
      const root = roots[u] as Float64Array;
      const size = ANGLES * (units[u] as Unit).corners.length;
      for (let k = 0; k < size; k++) z[k] = next();
      for (let i = 0; i < size; i++) {
        const c = corner + Math.floor(i / ANGLES);
        let value = (predicted[c] as Float64Array)[i % ANGLES] as number;
        for (let k = 0; k <= i; k++) value += (root[size * i + k] as number) * (z[k] as number);
        (drawn[c] as Float64Array)[i % ANGLES] = value;
      }
      corner += size / ANGLES;
    }
    if (terms.every((term) => isIn(term, termValue(term, corners, drawn)))) hits++;
  }
  return hits / DRAWS;
}
