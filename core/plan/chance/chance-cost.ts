/**
 * What every state of an assembly costs for not being surely known: for a window that it decides alone, −2 ln of the chance
 * that the re-measure is in it; for one that ties it to other assemblies its share of variance/(half window)², which adds up.
 *
 * What an unknown adds is taken adjuster by adjuster and added up, which holds to first order. It is worked out for the
 * states that are asked about only: mostly few are in their windows.
 */
import type { Position, Settings } from '../../contract.ts';
import type { Axis } from '../states/axis.ts';
import { type IndexedTerm, isOwn } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import { variance, withPosition } from './by-rack.ts';
import type { Covariance, Uncertainty } from './covariance.ts';
import { LiveVariances } from './live-variances.ts';
import { chanceWithin } from './normal.ts';

/** More positions than this are interpolated between as many. */
const SAMPLES = 5;

/** Degrees, where all is said to be known exactly. */
const LEAST_SIGMA = 1e-6;
/** What is less likely is no likelier than this. */
const LEAST_CHANCE = 1e-6;

/** A window that the assembly decides alone. */
interface Own {
  readonly indexed: IndexedTerm;
  /** What the gauge adds, degrees². */
  readonly gauge: number;
}

/** What the states of an assembly cost beside their squares. */
export class ChanceCost {
  readonly #states: StateSpace;
  readonly #own: readonly Own[];
  readonly #tables: readonly Table[];
  readonly #live: LiveVariances | undefined;
  /** Each own window's factors of the assembly's angles, degrees; then those of the others, in half windows. */
  readonly #rows: readonly Float64Array[];
  readonly #sum: Float64Array;
  readonly #variances: Float64Array;

  /**
   * @param terms every term, of which those that hang on this assembly count
   * @param assembly its place among the assemblies that `terms` know
   * @param nearest the state that is nearest to the aims
   */
  constructor(
    states: StateSpace,
    terms: readonly IndexedTerm[],
    assembly: number,
    uncertainty: Uncertainty,
    from: readonly Settings[],
    nearest = states.unmoved,
  ) {
    const soft = terms.filter(
      ({ term, parts }) => !term.hard && !term.wish && parts.some((part) => part.assembly === assembly),
    );
    const { size } = uncertainty;
    const gauge = uncertainty.covariance(from);
    const own = soft.filter(isOwn).map((one) => ({ indexed: one, row: rowOf(one, assembly, size) }));
    this.#states = states;
    this.#own = own.map(({ indexed, row }) => ({
      indexed,
      gauge: row.reduce((sum, factor, k) => sum + factor * factor * gauge[k * (size + 1)]!, 0),
    }));
    const tying = soft.filter((one) => !isOwn(one)).map((one) => rowOf(one, assembly, size, one.term.window.half));
    this.#rows = [...own.map(({ row }) => row), ...merged(tying)];
    const { byRack } = uncertainty;
    this.#live = byRack && new LiveVariances(states, byRack, nearest);
    this.#tables = byRack ? [] : states.axes.map((axis) => tableOf(axis, uncertainty, from, this.#rows));
    this.#sum = new Float64Array(this.#rows.length * uncertainty.coordinates);
    this.#variances = new Float64Array(this.#rows.length);
  }

  /** What a state costs. */
  cost(state: number): number {
    const variances = this.#variancesAt(state);
    const { values, stride } = this.#states;
    let cost = 0;
    this.#own.forEach(({ indexed: { term, parts }, gauge }, r) => {
      let value = term.constant;
      for (const { at, factor } of parts) value += factor * values[state * stride + at]!;
      const { low, high } = term.window;
      const sigma = Math.max(LEAST_SIGMA, Math.sqrt(variances[r]! + gauge));
      cost -= 2 * Math.log(Math.max(LEAST_CHANCE, chanceWithin(low, high, value, sigma)));
    });
    for (let r = this.#own.length; r < variances.length; r++) cost += variances[r]!;
    return cost;
  }

  /** Of each row at a state, without the gauge. */
  #variancesAt(state: number): Float64Array {
    if (this.#live) return this.#liveAt(this.#live.covariance(state));
    const rows = this.#rows.length;
    const sum = this.#sum.fill(0);
    const variances = this.#variances.fill(0);
    this.#tables.forEach(({ vectors, alone }, a) => {
      const at = this.#states.digit(state, a);
      for (let k = 0; k < sum.length; k++) sum[k]! += vectors[at * sum.length + k]!;
      for (let r = 0; r < rows; r++) variances[r]! += alone[at * rows + r]!;
    });
    for (let k = 0; k < sum.length; k++) {
      const r = k % rows;
      variances[r]! += sum[k]! ** 2;
    }
    return variances;
  }

  /** With moves by the rack the gauge that read first is in it, as far as it is left: of own windows it is counted beside. */
  #liveAt(covariance: Covariance): Float64Array {
    this.#rows.forEach((row, r) => {
      this.#variances[r] = variance(row, covariance, row.length) - (this.#own[r]?.gauge ?? 0) / 2;
    });
    return this.#variances;
  }
}

/** A term's factors of the assembly's angles. */
function rowOf({ parts }: IndexedTerm, assembly: number, size: number, half = 1): Float64Array {
  const row = new Float64Array(size);
  for (const part of parts) {
    if (part.assembly === assembly && part.at < size) row[part.at]! += part.factor / half;
  }
  return row;
}

/** Rows of one and the same angle as one: squares add up. */
function merged(rows: readonly Float64Array[]): Float64Array[] {
  const single = new Map<number, Float64Array>();
  const others: Float64Array[] = [];
  for (const row of rows) {
    const [only, ...more] = [...row.keys()].filter((at) => row[at] !== 0);
    if (only === undefined) continue;
    if (more.length > 0) others.push(row);
    else
      single.set(
        only,
        row.map((factor, k) => Math.hypot(factor, single.get(only)?.[k] ?? 0)),
      );
  }
  return [...others, ...single.values()];
}

interface Table {
  /** For each position what each coordinate adds to each row: coordinate by coordinate. */
  readonly vectors: Float64Array;
  /** Variance that is this move's alone, for each position and row. */
  readonly alone: Float64Array;
}

function tableOf(
  axis: Axis,
  uncertainty: Uncertainty,
  from: readonly Settings[],
  rows: readonly Float64Array[],
): Table {
  const { positions, side, adjuster, current } = axis;
  const width = uncertainty.coordinates * rows.length;
  const vectors = new Float64Array(positions.length * width);
  const alone = new Float64Array(positions.length * rows.length);
  const at = (position: Position): Settings[] => withPosition(from, { side, id: adjuster.id }, position);
  const fill = (i: number): void => {
    if (i === current) return;
    const position = positions[i]!;
    const slopes = uncertainty.slopes(at(position));
    if (slopes) project(slopes, uncertainty.size, rows, vectors, i * width);
    for (const error of uncertainty.errors(side, adjuster.id, position)) {
      rows.forEach((row, r) => {
        const value = row.reduce((sum, factor, k) => sum + factor * error[k]!, 0);
        alone[i * rows.length + r]! += value * value;
      });
    }
  };
  const samples = samplesOf(axis);
  for (const i of samples) fill(i);
  for (let s = 1; s < samples.length; s++) {
    const [a, b] = [samples[s - 1]!, samples[s]!];
    between(a, b, axis, vectors, width);
    // Next to where it stands a move has no smaller error than further away: none only where it stays.
    const [x, y] = a === current ? [b, b] : b === current ? [a, a] : [a, b];
    between(a, b, axis, alone, rows.length, x, y);
  }
  return { vectors, alone };
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

/** Fills in what lies between two samples, of which `low` and `high` are taken at the ends. */
function between(
  a: number,
  b: number,
  { positions, current }: Axis,
  out: Float64Array,
  width: number,
  low = a,
  high = b,
): void {
  const [x, y] = [positions[a] as number, positions[b] as number];
  positions.forEach((position, i) => {
    const p = position as number;
    if (i === a || i === b || i === current || !(p > x && p < y)) return;
    const share = (p - x) / (y - x);
    for (let k = 0; k < width; k++) {
      const [from, to] = [out[low * width + k]!, out[high * width + k]!];
      out[i * width + k] = from + share * (to - from);
    }
  });
}

/** Each row's share of each unknown. */
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
      for (let k = 0; k < size; k++) sum += row[k]! * slopes[p + k]!;
      out[at++] = sum;
    }
  }
}
