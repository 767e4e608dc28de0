/**
 * What every state of a unit costs for not being surely known: Σ over the terms of variance/(half window)². With it the
 * sum of squares is no longer that of the prediction but that which the re-measure is expected to have.
 *
 * What an unknown adds is taken adjuster by adjuster and added up, which holds to first order; the variance is then a
 * sum over pairs of adjusters, tabulated once, so that a state takes a few look-ups.
 */
import type { Position, Settings } from '../contract.ts';
import type { Axis } from './axis.ts';
import type { Placed } from './placed.ts';
import type { UnitStates } from './states.ts';
import type { Unknowns } from './unknowns.ts';

/** More positions than this are interpolated between as many. */
const SAMPLES = 5;

/**
 * @param placed every term, of which those that hang on this unit count
 * @param unit its place among the units that `placed` knows
 * @returns a cost for each state
 */
export function doubtsOf(
  states: UnitStates,
  placed: readonly Placed[],
  unit: number,
  unknowns: Unknowns,
  from: readonly Settings[],
): Float64Array {
  const { axes, count } = states;
  const rows = rowsOf(placed, unit, unknowns.size);
  const tables = axes.map((axis) => tableOf(axis, unknowns, from, rows));
  const sizes = axes.map(({ positions }) => positions.length);
  const own = tables.map((table, a) =>
    Float64Array.from({ length: sizes[a] as number }, (_, i) => dot(table, i, table, i) + (table.alone[i] as number)),
  );
  const pairs = tables.flatMap((first, a) =>
    tables.slice(a + 1).map((second, k) => {
      const b = a + 1 + k;
      const width = sizes[b] as number;
      const product = new Float64Array((sizes[a] as number) * width);
      for (let i = 0; i < product.length; i++) product[i] = 2 * dot(first, Math.floor(i / width), second, i % width);
      return { a, b, width, product };
    }),
  );
  const doubts = new Float64Array(count);
  const digits = sizes.map(() => 0);
  for (let state = 0; state < count; state++) {
    let sum = 0;
    for (let a = 0; a < own.length; a++) sum += own[a]?.[digits[a] as number] as number;
    for (const { a, b, width, product } of pairs) {
      sum += product[(digits[a] as number) * width + (digits[b] as number)] as number;
    }
    doubts[state] = sum;
    for (let a = sizes.length - 1; a >= 0; a--) {
      digits[a] = (digits[a] as number) + 1;
      if ((digits[a] as number) < (sizes[a] as number)) break;
      digits[a] = 0;
    }
  }
  return doubts;
}

/** Each term's factors of the unit's angles, in half windows; terms of one and the same angle together. */
function rowsOf(placed: readonly Placed[], unit: number, size: number): Float64Array[] {
  const single = new Float64Array(size);
  const joint: Float64Array[] = [];
  for (const { term, parts } of placed) {
    const mine = parts.filter((part) => part.unit === unit && part.at < size);
    if (term.hard || mine.length === 0) continue;
    const row = new Float64Array(size);
    for (const { at, factor } of mine) row[at] = (row[at] as number) + factor / term.window.half;
    const [only, ...more] = [...row.keys()].filter((at) => row[at] !== 0);
    if (only === undefined) continue;
    if (more.length > 0) joint.push(row);
    else single[only] = (single[only] as number) + (row[only] as number) ** 2;
  }
  const alone = [...single.keys()].filter((at) => single[at] !== 0);
  return [...joint, ...alone.map((at) => single.map((square, k) => (k === at ? Math.sqrt(square) : 0)))];
}

interface Table {
  /** A vector for each position: what each unknown adds to each term, half windows. */
  readonly vectors: Float64Array;
  readonly width: number;
  /** Variance that is this move's alone. */
  readonly alone: Float64Array;
}

function tableOf(axis: Axis, unknowns: Unknowns, from: readonly Settings[], rows: readonly Float64Array[]): Table {
  const { positions, side, adjuster, current } = axis;
  const width = unknowns.coordinates * rows.length;
  const vectors = new Float64Array(positions.length * width);
  const alone = new Float64Array(positions.length);
  const at = (position: Position): Settings[] =>
    from.map((settings, i) => (i === side ? { ...settings, [adjuster.id]: position } : settings));
  const fill = (i: number): void => {
    if (i === current) return;
    const slopes = unknowns.slopes(at(positions[i] as Position));
    if (slopes) project(slopes, unknowns.size, rows, vectors, i * width);
  };
  const samples = samplesOf(axis);
  for (const i of samples) fill(i);
  for (let s = 1; s < samples.length; s++)
    between(samples[s - 1] as number, samples[s] as number, axis, vectors, width);
  positions.forEach((position, i) => {
    for (const error of unknowns.errors(side, adjuster.id, position)) {
      for (const row of rows) {
        const value = row.reduce((sum, factor, k) => sum + factor * (error[k] as number), 0);
        alone[i] = (alone[i] as number) + value * value;
      }
    }
  });
  return { vectors, width, alone };
}

/** All positions where they are few or labels; else some, in order of their numbers, the present one among them. */
function samplesOf({ positions, current }: Axis): number[] {
  const all = positions.map((_, i) => i);
  if (positions.length <= SAMPLES || positions.some((position) => typeof position !== 'number')) return all;
  // A stand between marks comes last: it is no place on the way.
  const last = all.length - 1;
  const some = Array.from({ length: SAMPLES }, (_, n) => Math.round((n * last) / (SAMPLES - 1)));
  return [...new Set([...some, current])].sort((a, b) => (positions[a] as number) - (positions[b] as number));
}

function between(a: number, b: number, { positions, current }: Axis, vectors: Float64Array, width: number): void {
  const [x, y] = [positions[a] as number, positions[b] as number];
  positions.forEach((position, i) => {
    const p = position as number;
    if (i === a || i === b || i === current || !(p > x && p < y)) return;
    const share = (p - x) / (y - x);
    for (let k = 0; k < width; k++) {
      const [low, high] = [vectors[a * width + k] as number, vectors[b * width + k] as number];
      vectors[i * width + k] = low + share * (high - low);
    }
  });
}

/** Each term's share of each unknown. */
function project(
  slopes: Float64Array,
  size: number,
  rows: readonly Float64Array[],
  out: Float64Array,
  place: number,
): void {
  let at = place;
  for (let p = 0; p < slopes.length; p += size) {
    for (const row of rows) {
      let sum = 0;
      for (let k = 0; k < size; k++) sum += (row[k] as number) * (slopes[p + k] as number);
      out[at++] = sum;
    }
  }
}

function dot(a: Table, i: number, b: Table, j: number): number {
  let sum = 0;
  for (let k = 0; k < a.width; k++) {
    sum += (a.vectors[i * a.width + k] as number) * (b.vectors[j * a.width + k] as number);
  }
  return sum;
}
