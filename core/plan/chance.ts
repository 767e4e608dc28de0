/** How sure a plan is: the share of what its unknowns may bring in which everything is in its window. */
import { CORNERS } from '../contract.ts';
import { ANGLES } from '../pose/unit.ts';
import type { Unit } from './car-model.ts';
import { normals } from './random.ts';
import { isIn, type Term } from './terms.ts';
import type { Covariance } from './unknowns.ts';

const DRAWS = 2048;
const SEED = 20261125;

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

/** Draws of every angle of a car, one after another: the same for every question, so that plans can be compared. */
let drawn: Float64Array | undefined;
function draws(): Float64Array {
  const next = normals(SEED);
  drawn ??= Float64Array.from({ length: DRAWS * MOST }, next);
  return drawn;
}
const MOST = ANGLES * CORNERS.length;

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
  const windows = terms.map((term) => ({
    term,
    parts: term.parts.map(({ corner, angle, factor }) => ({ at: ANGLES * corners.indexOf(corner) + angle, factor })),
  }));
  const roots = covariances.map(rootOf);
  const sizes = units.map((unit) => ANGLES * unit.corners.length);
  const middle = Float64Array.from(predicted.flatMap((angles) => [...angles]));
  const values = new Float64Array(middle.length);
  const all = draws();
  let hits = 0;
  next: for (let z = 0; z < all.length; z += MOST) {
    let first = 0;
    for (let u = 0; u < roots.length; u++) {
      const root = roots[u] as Float64Array;
      const size = sizes[u] as number;
      for (let i = 0; i < size; i++) {
        let value = middle[first + i] as number;
        for (let k = 0; k <= i; k++) value += (root[size * i + k] as number) * (all[z + first + k] as number);
        values[first + i] = value;
      }
      first += size;
    }
    for (const { term, parts } of windows) {
      let value = term.constant;
      for (const { at, factor } of parts) value += factor * (values[at] as number);
      if (!isIn(term, value)) continue next;
    }
    hits++;
  }
  return hits / DRAWS;
}
