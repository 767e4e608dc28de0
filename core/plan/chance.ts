/** How sure a plan is: the share of what its unknowns may bring in which everything is in its window. */
import { CORNERS } from '../contract.ts';
import { ANGLES } from '../pose/unit.ts';
import type { Unit } from './car-model.ts';
import { normals } from './random.ts';
import { isIn, type Term, termValue } from './terms.ts';
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
