/**
 * One assembly's states as boxes in the space of its angles, halved again and again, only where the search goes.
 */
import { EDGE_NOISE } from '../../reading/spec-terms.ts';
import type { ShimBound, Use } from '../shims/shim-bound.ts';
import type { IndexedTerm } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';

/** States `first`…`last`−1 of an assembly's order: a box of angles. */
export interface Box {
  readonly first: number;
  readonly last: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Least cost of its states by themselves, and with the tangents of the shared terms. */
  readonly cost: number;
  readonly tilted: number;
  readonly effort: number;
  readonly mostEffort: number;
  /** Where shims are counted: which classes of packs its states have. */
  readonly use?: Use;
  halves?: readonly [Box, Box];
}

/** One assembly's states in the order of their boxes, with what each costs by itself. */
export class StateTree {
  #root: Box | undefined;
  readonly #order: Uint32Array;
  #kept: number;
  readonly #cost: Float64Array;
  #tilted: Float64Array;

  constructor(
    readonly states: StateSpace,
    own: readonly IndexedTerm[],
    inWindow: boolean,
    private readonly weights: readonly number[],
    private readonly effortFirst: boolean,
    /** What a state that is not ruled out costs beside its terms, if anything. */
    extra?: (state: number) => number,
    /** Where shims are counted: the classes of its states. */
    private readonly stock?: ShimBound['assemblies'][number] & Pick<ShimBound, 'kinds'>,
  ) {
    const { values, count, slack, stride } = states;
    this.#cost = new Float64Array(count);
    this.#tilted = this.#cost;
    const order = new Uint32Array(count);
    let kept = 0;
    // Flat copies of the terms: this loop runs over every state that there is.
    const first = own.map((_, t) => own.slice(0, t).reduce((sum, { parts }) => sum + parts.length, 0));
    const parts = own.flatMap((one) => one.parts);
    const at = parts.map((part) => part.at);
    const factor = parts.map((part) => part.factor);
    first.push(parts.length);
    const aim = own.map(({ term }) => term.window.aim - term.constant);
    const scale = own.map(({ term }) => 1 / term.window.half);
    const loose = own.map((one) => slack * one.parts.reduce((sum, part) => sum + Math.abs(part.factor), 0));
    const bound = (t: number, limit: 'low' | 'high', sign: 1 | -1): number => {
      const { hard, window, constant } = own[t]!.term;
      if (!inWindow && !hard) return sign * Infinity;
      return window[limit] - constant + sign * (loose[t]! + EDGE_NOISE);
    };
    const low = own.map((_, t) => bound(t, 'low', -1));
    const high = own.map((_, t) => bound(t, 'high', 1));
    next: for (let state = 0; state < count; state++) {
      if (Number.isNaN(values[state * stride]!)) continue;
      let cost = 0;
      for (let t = 0; t < own.length; t++) {
        let value = 0;
        for (let p = first[t]!; p < first[t + 1]!; p++) {
          value += values[state * stride + at[p]!]! * factor[p]!;
        }
        if (value < low[t]! || value > high[t]!) continue next;
        const off = Math.max(0, Math.abs(value - aim[t]!) - loose[t]!) * scale[t]!;
        cost += off * off;
      }
      this.#cost[state] = extra ? cost + extra(state) : cost;
      order[kept++] = state;
    }
    this.#order = order;
    this.#kept = kept;
  }

  /** The box of all states; absent where none can meet the windows. */
  get root(): Box | undefined {
    if (!this.#root && this.#kept > 0) this.#root = this.#box(0, this.#kept);
    return this.#root;
  }

  /** What a state costs by itself. */
  cost(state: number): number {
    return this.#cost[state]!;
  }

  /** The state that costs least by itself; −1 where there is none. */
  get cheapest(): number {
    return this.least(new Float64Array(this.states.stride));
  }

  /** Forgets the states that cost more by themselves. */
  keep(most: number): void {
    const order = this.#order;
    let kept = 0;
    for (let i = 0; i < this.#kept; i++) {
      const state = order[i]!;
      if (this.#cost[state]! <= most) order[kept++] = state;
    }
    this.#kept = kept;
  }

  /**
   * The state that costs least with `slope`·v + v·`square`·v of its numbers v added; −1 where there is none.
   * @param square row by row
   */
  least(slope: Float64Array, square?: Float64Array, among: Uint32Array = this.#states()): number {
    const { values, stride } = this.states;
    const own = this.#cost;
    let best = -1;
    let lowest = Number.POSITIVE_INFINITY;
    for (let i = 0; i < among.length; i++) {
      const state = among[i]!;
      const at = state * stride;
      let cost = own[state]!;
      for (let k = 0; k < stride; k++) {
        let steep = slope[k]!;
        if (square) for (let l = 0; l < stride; l++) steep += square[k * stride + l]! * values[at + l]!;
        cost += steep * values[at + k]!;
      }
      if (cost < lowest) {
        lowest = cost;
        best = state;
      }
    }
    return best;
  }

  /** States whose numbers are all within `reach` half windows of a state's. */
  near(state: number, reach: number): Uint32Array {
    const { values, stride } = this.states;
    return this.#states().filter((other) => {
      for (let k = 0; k < stride; k++) {
        const away = Math.abs(values[other * stride + k]! - values[state * stride + k]!);
        if (away * this.weights[k]! > reach) return false;
      }
      return true;
    });
  }

  #states(): Uint32Array {
    return this.#order.subarray(0, this.#kept);
  }

  /** Takes the tangents of the shared terms, `slope` for each of its numbers; boxes are made anew. */
  tilt(slope: Float64Array): void {
    const { values, slack, stride } = this.states;
    this.#tilted = new Float64Array(this.#cost.length);
    this.#root = undefined;
    const allowance = slope.reduce((sum, x) => sum + Math.abs(x), 0) * slack;
    for (let i = 0; i < this.#kept; i++) {
      const state = this.#order[i]!;
      let cost = this.#cost[state]! - allowance;
      for (let k = 0; k < stride; k++) cost += slope[k]! * values[state * stride + k]!;
      this.#tilted[state] = cost;
    }
  }

  state(box: Box): number {
    return this.#order[box.first]!;
  }

  #box(first: number, last: number): Box {
    const { values, effort, slack, stride } = this.states;
    const low = new Float64Array(stride).fill(Number.POSITIVE_INFINITY);
    const high = new Float64Array(stride).fill(Number.NEGATIVE_INFINITY);
    let cost = Number.POSITIVE_INFINITY;
    let tilted = Number.POSITIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    for (let i = first; i < last; i++) {
      const state = this.#order[i]!;
      for (let k = 0; k < stride; k++) {
        const value = values[state * stride + k]!;
        if (value < low[k]!) low[k] = value;
        if (value > high[k]!) high[k] = value;
      }
      const own = this.#cost[state]!;
      if (own < cost) cost = own;
      const leaning = this.#tilted[state]!;
      if (leaning < tilted) tilted = leaning;
      const minutes = effort[state]!;
      if (minutes < least) least = minutes;
      if (minutes > most) most = minutes;
    }
    for (let k = 0; k < stride; k++) {
      low[k]! -= slack;
      high[k]! += slack;
    }
    const box = { first, last, low, high, cost, tilted, effort: least, mostEffort: most };
    return this.stock ? { ...box, use: this.#use(first, last, this.stock) } : box;
  }

  #use(from: number, to: number, { classes, least, kinds }: NonNullable<StateTree['stock']>): Use {
    const lowest = new Float64Array(kinds).fill(Number.POSITIVE_INFINITY);
    let first = Number.POSITIVE_INFINITY;
    let last = 0;
    let before = -1;
    for (let i = from; i < to; i++) {
      const one = classes[this.#order[i]!]!;
      if (one === before) continue;
      before = one;
      if (one < first) first = one;
      if (one > last) last = one;
      for (let k = 0; k < kinds; k++) lowest[k] = Math.min(lowest[k]!, least[one * kinds + k]!);
    }
    return { first, last, least: lowest };
  }

  /** How much there is to gain by splitting: the widest angle in half windows, or undecided effort or packs. */
  size(box: Box): number {
    if (box.last - box.first < 2) return -1;
    if (this.effortFirst && box.mostEffort > box.effort) return Number.POSITIVE_INFINITY;
    if (box.use && box.use.last > box.use.first) return Number.POSITIVE_INFINITY;
    return this.#widest(box)[1];
  }

  #widest(box: Box): [angle: number, width: number] {
    let angle = 0;
    let widest = -1;
    for (let k = 0; k < this.states.stride; k++) {
      const width = (box.high[k]! - box.low[k]!) * this.weights[k]!;
      if (width > widest) {
        widest = width;
        angle = k;
      }
    }
    return [angle, widest];
  }

  split(box: Box): readonly [Box, Box] {
    box.halves ??= this.#split(box);
    return box.halves;
  }

  #split(box: Box): readonly [Box, Box] {
    const { values, effort, stride } = this.states;
    if (this.effortFirst && box.mostEffort > box.effort) {
      const middle = this.#partition(box, (state) => effort[state]! <= box.effort);
      return [this.#box(box.first, middle), this.#box(middle, box.last)];
    }
    if (box.use && box.use.last > box.use.first) {
      // Packs before angles: what the drawer cannot serve then falls out as a whole, whatever the other adjusters do.
      const classes = this.stock!.classes;
      const half = (box.use.first + box.use.last) / 2;
      const middle = this.#partition(box, (state) => classes[state]! <= half);
      return [this.#box(box.first, middle), this.#box(middle, box.last)];
    }
    const [k] = this.#widest(box);
    const centre = (box.low[k]! + box.high[k]!) / 2;
    let middle = this.#partition(box, (state) => values[state * stride + k]! <= centre);
    // States with one and the same angles cannot be told apart by them: halve the list.
    if (middle === box.first || middle === box.last) middle = (box.first + box.last) >> 1;
    return [this.#box(box.first, middle), this.#box(middle, box.last)];
  }

  #partition(box: Box, goesFirst: (state: number) => boolean): number {
    const order = this.#order;
    let middle = box.first;
    for (let i = box.first; i < box.last; i++) {
      const state = order[i]!;
      if (!goesFirst(state)) continue;
      order[i] = order[middle]!;
      order[middle] = state;
      middle++;
    }
    return middle;
  }
}
