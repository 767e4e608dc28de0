/** How sure a plan is: the share of what its uncertainty may bring in which everything is in its window. */
import { CORNERS } from '../../contract.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { ANGLES_A_WHEEL } from '../../pose/numbers.ts';
import { EDGE_NOISE } from '../../reading/spec-terms.ts';
import type { IndexedTerm } from '../states/indexed-term.ts';
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
  const indexed = indexedFor(terms, assemblies);
  const limits = indexed.map(limitsOf);
  let hits = 0;
  forEachDraw(indexed, assemblies, predicted, covariances, (values) => {
    for (let t = 0; t < limits.length; t++) if (!isWithin(limits[t]!, values)) return;
    hits++;
  });
  return hits / DRAWS;
}

/** A term as flat lists. */
interface Limits {
  readonly constant: number;
  readonly low: number;
  readonly high: number;
  readonly assemblies: readonly number[];
  readonly at: readonly number[];
  readonly factors: readonly number[];
}

const limitsOf = ({ term: { constant, window }, parts }: IndexedTerm): Limits => ({
  constant,
  low: window.low - EDGE_NOISE,
  high: window.high + EDGE_NOISE,
  assemblies: parts.map(({ assembly }) => assembly),
  at: parts.map(({ at }) => at),
  factors: parts.map(({ factor }) => factor),
});

/** As `isIn` of `termAt`, for millions of draws. */
function isWithin({ constant, low, high, assemblies, at, factors }: Limits, values: readonly Float64Array[]): boolean {
  let value = constant;
  for (let p = 0; p < at.length; p++) value += factors[p]! * values[assemblies[p]!]![at[p]!]!;
  return value >= low && value <= high;
}

/** The same, and of each term the share of draws in which it alone is in its window. */
export function oddsOf(
  terms: readonly Term[],
  assemblies: readonly Assembly[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
): { readonly chance: number; readonly alone: ReadonlyMap<Term, number> } {
  const indexed = indexedFor(terms, assemblies);
  const limits = indexed.map(limitsOf);
  const within = new Uint32Array(terms.length);
  let hits = 0;
  forEachDraw(indexed, assemblies, predicted, covariances, (values) => {
    let all = 1;
    for (let t = 0; t < limits.length; t++) {
      if (isWithin(limits[t]!, values)) within[t]!++;
      else all = 0;
    }
    hits += all;
  });
  return { chance: hits / DRAWS, alone: new Map(terms.map((term, t) => [term, within[t]! / DRAWS])) };
}

function indexedFor(terms: readonly Term[], assemblies: readonly Assembly[]): IndexedTerm[] {
  return terms.map((term) => {
    const parts = term.parts.map(({ corner, angle, factor }) => {
      const assembly = assemblies.findIndex(({ corners }) => corners.includes(corner));
      return { assembly, at: placeAmong(assemblies[assembly]!.corners, corner, angle), factor };
    });
    return { term, parts };
  });
}

/** @param show what the assemblies' angles are in a draw, of those that the terms ask for; the same arrays every time */
function forEachDraw(
  terms: readonly IndexedTerm[],
  assemblies: readonly Assembly[],
  predicted: readonly Float64Array[],
  covariances: readonly Covariance[],
  show: (values: readonly Float64Array[]) => void,
): void {
  // What is predicted may have more behind the angles.
  const values = covariances.map(({ length }) => new Float64Array(Math.sqrt(length)));
  drawn ??= Float64Array.from({ length: DRAWS * MOST }, normals(SEED));
  drawnBodies ??= Float64Array.from({ length: DRAWS * MOST_BODIES }, normals(SEED + 1));
  const asked = new Set(terms.flatMap(({ parts }) => parts.map(({ assembly }) => assembly)));
  const spreads: Spread[] = [];
  let [first, firstBody] = [0, 0];
  assemblies.forEach(({ corners }, a) => {
    const wheels = ANGLES_A_WHEEL * corners.length;
    const own = values[a]!;
    if (asked.has(a)) {
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
