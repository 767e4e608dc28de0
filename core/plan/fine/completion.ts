/**
 * Settings whose angles come near to what is wanted, among very many. What is wanted are a few numbers, and adjusters are
 * more: for each choice of the others those few that move most, the *pivots*, follow from what is wanted by a few steps of
 * Gauss and Newton on the tables. All settings that cost no more than so much have their pivots in an ellipse about that,
 * mostly with room for no position or one: so they are all found without a look at each setting.
 */
import type { PairTables } from './pair-tables.ts';
import { PivotStep, type Show, type Together } from './pivot-step.ts';

/** A term as one assembly sees it: half windows off its aim, linear in the assembly's numbers. */
export interface Wanted {
  readonly factors: Float64Array;
  readonly offset: number;
}

/** An axis whose ranks are gone through. */
export interface Free {
  readonly axis: number;
  readonly ranks: ArrayLike<number>;
}

/** Of an assembly's numbers no more are free of one another: a wheel's angles, or an axle's yaw, pitch and place. */
const MOST_PIVOTS = 3;
/** Half windows over all its travel, and share of what the first one does, that a further pivot has to move. */
const LEAST_EFFECT = 0.25;
const LEAST_SHARE = 0.02;

export class Completion {
  /** How many terms are wanted. */
  readonly size: number;
  /** Of each axis, rank by rank, what it adds by itself: a number for each term. */
  readonly alone: readonly Float64Array[];
  readonly ranks: Uint16Array;
  readonly #base: Float64Array;
  readonly #together = new Map<number, Float64Array>();

  constructor(
    readonly tables: PairTables,
    private readonly wanted: readonly Wanted[],
  ) {
    this.size = wanted.length;
    this.#base = this.#projected(tables.base).map((x, t) => x + wanted[t]!.offset);
    this.alone = tables.alone.map((own) => this.#projected(own));
    this.ranks = Uint16Array.from(tables.ranks());
  }

  /** Half windows that the tables may be off, all terms together. */
  get looseness(): number {
    const { looseness } = this.tables;
    const each = this.wanted.map(({ factors }) => factors.reduce((sum, x, k) => sum + Math.abs(x) * looseness[k]!, 0));
    return Math.hypot(...each);
  }

  /** How many ranks an axis has. */
  length(axis: number): number {
    return this.tables.axes[axis]!.digits.length;
  }

  /** Those of some axes that move most of what is wanted, each beside those before it. */
  pivots(among: readonly number[]): number[] {
    const effects = new Map(
      among.filter((i) => this.tables.axes[i]!.isNumeric).map((i) => [i, this.#effectOf(i)] as const),
    );
    const chosen: number[] = [];
    let first = 0;
    while (chosen.length < MOST_PIVOTS && effects.size > 0) {
      const [best, effect] = [...effects].reduce((a, b) => (Math.hypot(...b[1]) > Math.hypot(...a[1]) ? b : a));
      const most = Math.hypot(...effect);
      first ||= most;
      if (!(most > LEAST_EFFECT && most > LEAST_SHARE * first)) break;
      chosen.push(best);
      effects.delete(best);
      for (const own of effects.values()) {
        const share = own.reduce((sum, x, t) => sum + x * effect[t]!, 0) / most ** 2;
        for (let t = 0; t < own.length; t++) own[t]! -= share * effect[t]!;
      }
    }
    return chosen.sort((a, b) => a - b);
  }

  /**
   * Every setting that costs at most `limit` by the tables, with the free axes at ranks that they list and the pivots
   * anywhere, all others at the middle; without a limit the one nearest to what is wanted for each choice of the free ones.
   * @returns false where `show` had enough
   */
  visit(free: readonly Free[], pivots: readonly number[], show: Show, limit?: number): boolean {
    this.ranks.set(this.tables.ranks());
    const step = new PivotStep(this, pivots, show, limit);
    return this.#descend(free, 0, this.#base, new Map(this.alone.entries()), step);
  }

  /** @param sums what each axis adds by itself and with those that have their rank already */
  #descend(
    free: readonly Free[],
    depth: number,
    base: Float64Array,
    sums: ReadonlyMap<number, Float64Array>,
    step: PivotStep,
  ): boolean {
    const { size, ranks } = this;
    const own = free[depth];
    if (!own) return step.settle(base, sums);
    const added = sums.get(own.axis)!;
    const here = new Float64Array(size);
    const isLast = depth === free.length - 1;
    const later = isLast ? [] : [...free.slice(depth + 1).map(({ axis }) => axis), ...step.pivots];
    const next = new Map(later.map((axis) => [axis, new Float64Array(this.alone[axis]!.length)] as const));
    if (isLast) step.beside(own.axis);
    for (let i = 0; i < own.ranks.length; i++) {
      const rank = own.ranks[i]!;
      ranks[own.axis] = rank;
      for (let t = 0; t < size; t++) here[t] = base[t]! + added[rank * size + t]!;
      // The innermost has too many turns for sums over every rank of the pivots.
      for (const [axis, sum] of next) this.#addTogether(sum, sums.get(axis)!, own.axis, rank, axis);
      if (!(isLast ? step.settle(here, sums) : this.#descend(free, depth + 1, here, next, step))) return false;
    }
    return true;
  }

  #addTogether(out: Float64Array, sums: Float64Array, axis: number, rank: number, other: number): void {
    const { values, step, stride } = this.together(axis, other);
    const { size } = this;
    for (let at = 0, from = rank * step; at < out.length; at += size, from += stride) {
      for (let t = 0; t < size; t++) out[at + t] = sums[at + t]! + values[from + t]!;
    }
  }

  /** What an axis adds together with another, beyond what each does alone. */
  together(axis: number, other: number): Together {
    const [first, second] = [Math.min(axis, other), Math.max(axis, other)];
    const key = first * this.alone.length + second;
    const values = this.#together.get(key) ?? this.#projected(this.tables.together(first, second));
    this.#together.set(key, values);
    const row = this.length(second) * this.size;
    return axis === first ? { values, step: row, stride: this.size } : { values, step: this.size, stride: row };
  }

  /** What an axis moves over all its travel. */
  #effectOf(i: number): Float64Array {
    const { size } = this;
    const own = this.alone[i]!;
    const posed = Array.from({ length: this.length(i) }, (_, rank) => rank).filter(
      (rank) => !Number.isNaN(own[rank * size]!),
    );
    const [first, last] = [posed[0] ?? 0, posed.at(-1) ?? 0];
    return Float64Array.from({ length: size }, (_, t) => own[last * size + t]! - own[first * size + t]!);
  }

  /** Numbers of the assembly as half windows, a number for each term. */
  #projected(numbers: Float64Array): Float64Array {
    const { size } = this;
    const many = this.tables.numbers;
    const out = new Float64Array((numbers.length / many) * size);
    this.wanted.forEach(({ factors }, t) => {
      const used = [...factors.keys()].filter((k) => factors[k] !== 0);
      for (let at = 0, to = t; at < numbers.length; at += many, to += size) {
        let sum = 0;
        for (const k of used) sum += factors[k]! * numbers[at + k]!;
        out[to] = sum;
      }
    });
    return out;
  }
}
