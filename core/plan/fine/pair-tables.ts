/**
 * An assembly's numbers wherever its adjusters stand, without a solve for each of what may be thousands of millions of
 * settings: what it reads at one setting, what each adjuster changes from there by itself, and what each two change
 * together beyond that. The first two are solved, the last follows from solves at Chebyshev nodes of both. With one or two
 * adjusters elsewhere that is all there is; what three change together beyond every two of them is left out, and measured.
 */
import type { Assembly } from '../../pose/car-model.ts';
import { type Change, changeBetween } from '../../pose/change.ts';
import type { Axis } from '../states/axis.ts';
import type { CornerStand } from '../states/corner-stand.ts';
import { FullSolve } from '../states/full-solve.ts';
import { type Nodes, nodesOf, type Ranked, ranked, type Stretch } from './nodes.ts';

/** Interpolation is probed where it is worst. */
const SAFETY = 8;
export const LEAST_SLACK = 1e-9;
/** How many settings far off in all adjusters are solved to see what is left out. */
const PROBES = 96;
const MORE_SAFETY = 3;
/** Degrees, or mm: what is off by more is taken in quarters, with more nodes. The search allows for all of it. */
const CLOSE = 2e-4;
const NODES = 6;
const MORE_NODES = 9;
/** Shares of the travel that are tried one after another where links end on the way. */
const SHARES = [1, 0.75, 0.5, 0.3, 0.15];

/** A setting about which others are tabled, and how many positions to either side. */
export interface About {
  /** Which of its positions each axis has. */
  readonly digits: ArrayLike<number>;
  readonly within: number;
}

export class PairTables {
  readonly axes: readonly Ranked[];
  /** How many numbers the assembly has. */
  readonly numbers: number;
  /** At the middle. */
  readonly base: Float64Array;
  /** Of each axis, rank by rank, what it changes by itself; NaN where there is no pose. */
  readonly alone: readonly Float64Array[];
  /** Most that a number may be off with two adjusters elsewhere. */
  slack = LEAST_SLACK;
  /** Whether what was asked for has no gaps; they are where links end or nearly do. */
  isWhole = true;
  readonly #full: FullSolve;
  readonly #middle: readonly number[];
  readonly #together = new Map<number, Float64Array>();
  #looseness: Float64Array | undefined;

  /** @param about default: every position about where the adjusters stand */
  constructor(
    private readonly assembly: Assembly,
    stands: readonly CornerStand[],
    axes: readonly Axis[],
    about?: About,
  ) {
    this.axes = axes.map((axis, i) => ranked(axis, about?.digits[i], about?.within));
    this.#full = new FullSolve(assembly, stands, axes);
    this.#middle = axes.map((axis, i) => about?.digits[i] ?? axis.current);
    this.numbers = this.#full.angles;
    this.base = new Float64Array(this.numbers);
    this.#full.write(this.base, 0, this.#middle);
    this.alone = this.axes.map((_, i) => this.#aloneOf(i));
  }

  /** What two axes change together beyond what each does alone, the ranks of the second side by side. `i` < `j`. */
  together(i: number, j: number): Float64Array {
    const key = i * this.axes.length + j;
    const known = this.#together.get(key) ?? this.#togetherOf(i, j);
    this.#together.set(key, known);
    return known;
  }

  /** Most that each number may be off with any adjusters elsewhere. */
  get looseness(): Float64Array {
    this.#looseness ??= this.#measured();
    return this.#looseness;
  }

  /** The numbers with every axis at a rank, by a full solve. */
  solve(ranks: ArrayLike<number>, out: Float64Array, at = 0): void {
    this.solveAt(this.digits(ranks), out, at);
  }

  /** The same by which of its positions each axis has. */
  solveAt(digits: readonly number[], out: Float64Array, at = 0): void {
    this.#full.write(out, at, digits);
  }

  /** Which of its positions each axis has at these ranks. */
  digits(ranks: ArrayLike<number>): number[] {
    return this.axes.map(({ digits }, i) => digits[ranks[i]!]!);
  }

  /** The ranks at the middle. */
  ranks(): number[] {
    return this.axes.map(({ middle }) => middle);
  }

  #aloneOf(i: number): Float64Array {
    const { base, numbers } = this;
    const { length } = this.axes[i]!.digits;
    const out = new Float64Array(length * numbers);
    const ranks = this.ranks();
    for (let rank = 0; rank < length; rank++) {
      ranks[i] = rank;
      this.solve(ranks, out, rank * numbers);
      for (let k = 0; k < numbers; k++) out[rank * numbers + k]! -= base[k]!;
    }
    return out;
  }

  #togetherOf(i: number, j: number): Float64Array {
    const size = this.axes[i]!.digits.length * this.axes[j]!.digits.length * this.numbers;
    const out = new Float64Array(size).fill(Number.NaN);
    const [a, b] = [this.#usable(i), this.#usable(j)];
    const off = this.#fill(out, i, j, [a, b], NODES);
    if (off <= CLOSE) this.slack = Math.max(this.slack, off);
    if (off <= CLOSE) return out;
    // Each quarter as far as it goes, where links end on the way.
    out.fill(Number.NaN);
    for (const x of quarters(a, this.axes[i]!.middle)) {
      for (const y of quarters(b, this.axes[j]!.middle)) {
        const share = SHARES.find((part) => this.#quarter(out, i, j, [shortened(x, part), shortened(y, part)]));
        if (share !== 1) this.isWhole = false;
      }
    }
    // Where one stays both change no more than the other alone.
    const columns = this.axes[j]!.digits.length;
    const put = (rank: number): unknown => out.fill(0, rank * this.numbers, (rank + 1) * this.numbers);
    for (let x = 0; x < this.axes[i]!.digits.length; x++) put(x * columns + this.axes[j]!.middle);
    for (let y = 0; y < columns; y++) put(this.axes[i]!.middle * columns + y);
    return out;
  }

  /** Fills in a quarter where it is as exact as it has to be; else it stays empty. */
  #quarter(out: Float64Array, i: number, j: number, on: readonly [Stretch, Stretch]): boolean {
    const off = this.#fill(out, i, j, on, MORE_NODES);
    if (off <= CLOSE) this.slack = Math.max(this.slack, off);
    else if (off < Number.POSITIVE_INFINITY) this.#empty(out, j, on);
    return off <= CLOSE;
  }

  #empty(out: Float64Array, j: number, [onA, onB]: readonly [Stretch, Stretch]): void {
    const columns = this.axes[j]!.digits.length;
    for (let x = onA[0]; x <= onA[1]; x++) {
      out.fill(Number.NaN, (x * columns + onB[0]) * this.numbers, (x * columns + onB[1] + 1) * this.numbers);
    }
  }

  /** The ranks about the middle at which there is a pose. */
  #usable(i: number): Stretch {
    const { middle, digits } = this.axes[i]!;
    const has = (rank: number): boolean => !Number.isNaN(this.alone[i]![rank * this.numbers]!);
    let [first, last] = [middle, middle];
    while (first > 0 && has(first - 1)) first--;
    while (last < digits.length - 1 && has(last + 1)) last++;
    return [first, last];
  }

  /** Fills in two stretches. Returns how far off that may be; infinite where there is no pose on the way. */
  #fill(out: Float64Array, i: number, j: number, [onA, onB]: readonly [Stretch, Stretch], most: number): number {
    const [a, b] = [this.axes[i]!, this.axes[j]!];
    const [ofA, ofB] = [nodesOf(a, onA, most), nodesOf(b, onB, most)];
    const atNodes = this.#atNodes(this.#changes(i, ofA), this.#changes(j, ofB));
    if (!atNodes) return Number.POSITIVE_INFINITY;
    const place = (x: number, y: number): number => ((onA[0] + x) * b.digits.length + onB[0] + y) * this.numbers;
    product(atNodes, ofA, ofB, this.numbers, place, out);
    return this.#probe(out, i, j, onA, onB);
  }

  /** What is gained together at each pair of nodes; nothing where one has no pose. */
  #atNodes(first: readonly Change[], second: readonly Change[]): Float64Array | undefined {
    const { numbers, base } = this;
    const out = new Float64Array(first.length * second.length * numbers);
    const solved = new Float64Array(numbers);
    const at = (change: Change): Float64Array => {
      this.#full.write(solved, 0, this.#middle, change);
      return solved.slice();
    };
    const others = second.map(at);
    const fits = first.every((one, x) => {
      const alone = at(one);
      return second.every((two, y) => {
        const both = at({ at: [...one.at, ...two.at], by: [...one.by, ...two.by] });
        const place = (x * second.length + y) * numbers;
        for (let k = 0; k < numbers; k++) out[place + k] = both[k]! - alone[k]! - others[y]![k]! + base[k]!;
        return !Number.isNaN(out[place]!);
      });
    });
    return fits ? out : undefined;
  }

  #changes(i: number, { places }: Nodes): Change[] {
    const { side, adjuster, positions } = this.axes[i]!.axis;
    const { model } = this.assembly;
    const here = model.change(side, adjuster.id, positions[this.#middle[i]!]!);
    return places.map((place) => changeBetween(model.change(side, adjuster.id, place), here));
  }

  /** Measures how far off both together are near their ends. */
  #probe(together: Float64Array, i: number, j: number, onA: Stretch, onB: Stretch): number {
    const { numbers, base } = this;
    const columns = this.axes[j]!.digits.length;
    const solved = new Float64Array(numbers);
    let most = 0;
    const ranks = this.ranks();
    const at = ([first, last]: Stretch, share: number): number => first + Math.round(share * (last - first));
    for (const [p, q] of [
      [0.02, 0.98],
      [0.97, 0.03],
      [0.97, 0.97],
    ] as const) {
      const [x, y] = [at(onA, p), at(onB, q)];
      ranks[i] = x;
      ranks[j] = y;
      this.solve(ranks, solved);
      for (let k = 0; k < numbers; k++) {
        const alone = this.alone[i]![x * numbers + k]! + this.alone[j]![y * numbers + k]!;
        const off = SAFETY * Math.abs(solved[k]! - base[k]! - alone - together[(x * columns + y) * numbers + k]!);
        if (off > most) most = off;
      }
    }
    return most;
  }

  /** The numbers with every axis at a rank, by the tables; NaN where they have a gap. */
  sum(ranks: ArrayLike<number>, out: Float64Array): void {
    const { axes, numbers } = this;
    out.set(this.base);
    for (let i = 0; i < axes.length; i++) {
      for (let k = 0; k < numbers; k++) out[k]! += this.alone[i]![ranks[i]! * numbers + k]!;
      for (let j = i + 1; j < axes.length; j++) {
        const at = (ranks[i]! * axes[j]!.digits.length + ranks[j]!) * numbers;
        const both = this.together(i, j);
        for (let k = 0; k < numbers; k++) out[k]! += both[at + k]!;
      }
    }
  }

  #measured(): Float64Array {
    const { axes, numbers, slack } = this;
    const most = new Float64Array(numbers).fill(slack);
    const [solved, summed] = [new Float64Array(numbers), new Float64Array(numbers)];
    for (let probe = 0; probe < PROBES; probe++) {
      // Ends of the travel, where it is most: each axis at one of its two, as its own digit of a number says.
      const ranks = axes.map(({ digits: { length } }, i) => (((probe * 37 + 11) >> (i % 7)) & 1 ? length - 1 : 0));
      this.solve(ranks, solved);
      this.sum(ranks, summed);
      for (let k = 0; k < numbers; k++) {
        const off = MORE_SAFETY * Math.abs(solved[k]! - summed[k]!);
        if (off > most[k]!) most[k] = off;
      }
    }
    return most;
  }
}

const quarters = ([first, last]: Stretch, middle: number): Stretch[] =>
  [
    [middle, first],
    [middle, last],
  ].filter(([from, to]) => from !== to) as unknown as Stretch[];

/** A share of a stretch that goes out from its first rank, in order. */
function shortened([from, to]: Stretch, share: number): Stretch {
  const end = from + Math.trunc(share * (to - from));
  return end < from ? [end, from] : [from, end];
}

/** Values at nodes taken to all ranks of two stretches, each written where `place` says. */
function product(
  atNodes: Float64Array,
  first: Nodes,
  second: Nodes,
  numbers: number,
  place: (x: number, y: number) => number,
  out: Float64Array,
): void {
  const [m, n] = [first.places.length, second.places.length];
  const [rows, columns] = [first.weights.length / m, second.weights.length / n];
  const line = new Float64Array(n * numbers);
  for (let x = 0; x < rows; x++) {
    line.fill(0);
    for (let a = 0; a < m; a++) {
      const weight = first.weights[x * m + a]!;
      if (weight !== 0) for (let b = 0; b < line.length; b++) line[b]! += weight * atNodes[a * line.length + b]!;
    }
    for (let y = 0; y < columns; y++) {
      const at = place(x, y);
      for (let k = 0; k < numbers; k++) {
        let sum = 0;
        for (let b = 0; b < n; b++) sum += second.weights[y * n + b]! * line[b * numbers + k]!;
        out[at + k] = sum;
      }
    }
  }
}
