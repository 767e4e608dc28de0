/** How sure a plan is: the share of what its uncertainty may bring in which everything is in its window. */
import { CORNERS } from '../../contract.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { ANGLES_A_WHEEL } from '../../pose/numbers.ts';
import { EDGE_NOISE } from '../../reading/spec-terms.ts';
import { placeAmong } from '../states/state-space.ts';
import type { Term } from '../terms.ts';
import { rootOf } from './cholesky.ts';
import type { Covariance } from './covariance.ts';
import { normals } from './random.ts';

const DRAWS = 2048;
const SEED = 20261125;

const MOST = ANGLES_A_WHEEL * CORNERS.length;
/** Of the bodies of two axles. */
const MOST_BODIES = 4;
/** Draws of every angle of a car, one after another: the same for every question, so that plans can be compared. */
let drawn: Float64Array | undefined;
/** The same of bodies, apart: a car without them is drawn as ever. */
let drawnBodies: Float64Array | undefined;

/**
 * Share of draws in which every term is in its window.
 * @param predicted angles of each assembly, corner by corner
 * @param covariances one for each assembly
 */
export function chanceOf(
  terms: readonly Term[],
  assemblies: readonly Assembly[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
): number {
  const limits = limitsFor(terms, assemblies, covariances);
  let hits = 0;
  forEachDraw(limits, assemblies, predicted, covariances, (values) => {
    for (let t = 0; t < terms.length; t++) if (!isWithin(limits, t, values)) return;
    hits++;
  });
  return hits / DRAWS;
}

/** The same, and of each term the share of draws in which it alone is in its window. */
export function oddsOf(
  terms: readonly Term[],
  assemblies: readonly Assembly[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
): { readonly chance: number; readonly alone: ReadonlyMap<Term, number> } {
  const limits = limitsFor(terms, assemblies, covariances);
  const within = new Uint32Array(terms.length);
  let hits = 0;
  forEachDraw(limits, assemblies, predicted, covariances, (values) => {
    let all = 1;
    for (let t = 0; t < terms.length; t++) {
      if (isWithin(limits, t, values)) within[t]!++;
      else all = 0;
    }
    hits += all;
  });
  return { chance: hits / DRAWS, alone: new Map(terms.map((term, t) => [term, within[t]! / DRAWS])) };
}

/** Terms as flat lists, for millions of draws. */
interface Limits {
  readonly constant: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Where each term's parts begin; at last where all end. */
  readonly first: Uint32Array;
  /** Of each part its place among all numbers of all assemblies, and its factor. */
  readonly at: Uint32Array;
  readonly factors: Float64Array;
  /** Where each assembly's numbers begin among all; at last where all end. */
  readonly begin: readonly number[];
}

function limitsFor(
  terms: readonly Term[],
  assemblies: readonly Assembly[],
  covariances: readonly Covariance[],
): Limits {
  const begin = [0];
  // What is predicted may have more behind the angles.
  for (const { length } of covariances) begin.push(begin.at(-1)! + Math.sqrt(length));
  const parts = terms.flatMap((term) => term.parts);
  const first = [0];
  for (const term of terms) first.push(first.at(-1)! + term.parts.length);
  return {
    constant: Float64Array.from(terms, ({ constant }) => constant),
    low: Float64Array.from(terms, ({ window }) => window.low - EDGE_NOISE),
    high: Float64Array.from(terms, ({ window }) => window.high + EDGE_NOISE),
    first: Uint32Array.from(first),
    at: Uint32Array.from(parts, ({ corner, angle }) => {
      const assembly = assemblies.findIndex(({ corners }) => corners.includes(corner));
      return begin[assembly]! + placeAmong(assemblies[assembly]!.corners, corner, angle);
    }),
    factors: Float64Array.from(parts, ({ factor }) => factor),
    begin,
  };
}

/** As `isIn` of `termAt`. */
function isWithin({ constant, low, high, first, at, factors }: Limits, t: number, values: Float64Array): boolean {
  let value = constant[t]!;
  for (let p = first[t]!; p < first[t + 1]!; p++) value += factors[p]! * values[at[p]!]!;
  return value >= low[t]! && value <= high[t]!;
}

/** @param show what all numbers are in a draw, of the assemblies that the terms ask for; the same array every time */
function forEachDraw(
  { at, begin }: Limits,
  assemblies: readonly Assembly[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
  show: (values: Float64Array) => void,
): void {
  const values = new Float64Array(begin.at(-1)!);
  drawn ??= Float64Array.from({ length: DRAWS * MOST }, normals(SEED));
  drawnBodies ??= Float64Array.from({ length: DRAWS * MOST_BODIES }, normals(SEED + 1));
  const spreads: Spread[] = [];
  let [first, firstBody] = [0, 0];
  assemblies.forEach(({ corners }, a) => {
    const wheels = ANGLES_A_WHEEL * corners.length;
    const own = values.subarray(begin[a], begin[a + 1]);
    if (at.some((one) => one >= begin[a]! && one < begin[a + 1]!)) {
      spreads.push({ own, middle: predicted[a]!, root: rootOf(covariances[a]!), wheels, first, firstBody });
    }
    first += wheels;
    firstBody += own.length - wheels;
  });
  for (let n = 0; n < DRAWS; n++) {
    for (let s = 0; s < spreads.length; s++) drawInto(spreads[s]!, n);
    show(values);
  }
}

/** An assembly's angles, what they are spread by, and where its draws begin. */
interface Spread {
  readonly own: Float64Array;
  readonly middle: Float64Array;
  readonly root: Float64Array;
  readonly wheels: number;
  readonly first: number;
  readonly firstBody: number;
}

function drawInto({ own, middle, root, wheels, first, firstBody }: Spread, n: number): void {
  const size = own.length;
  const ofWheels = n * MOST + first;
  const ofBody = n * MOST_BODIES + firstBody - wheels;
  for (let i = 0; i < size; i++) {
    let value = middle[i]!;
    for (let k = 0; k <= i; k++) {
      value += root[size * i + k]! * (k < wheels ? drawn![ofWheels + k]! : drawnBodies![ofBody + k]!);
    }
    own[i] = value;
  }
}
