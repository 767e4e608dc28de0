/** One assembly's states as boxes in the space of its angles, halved again and again, only where the search goes. */
import type { ShimClasses, Use } from '../shims/shim-classes.ts';
import type { Candidates } from './candidates.ts';

/** States `first`…`last`−1 of the order: a box of angles. */
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

/** What a box is halved by where it is not its widest angle. */
interface TreeOptions {
  readonly effortFirst: boolean;
  /** Where shims are counted: the classes of the states. */
  readonly shims?: ShimClasses | undefined;
}

export class StateTree {
  /** The box of all candidates; absent where none can meet the windows. */
  readonly root: Box | undefined;

  /** @param tilted what each state costs with the tangents of the shared terms */
  constructor(
    private readonly candidates: Candidates,
    private readonly tilted: Float64Array,
    private readonly options: TreeOptions,
  ) {
    const { length } = candidates.order;
    this.root = length > 0 ? this.#box(0, length) : undefined;
  }

  /** The first state of a box. */
  state(box: Box): number {
    return this.candidates.order[box.first]!;
  }

  /** How much there is to gain by splitting: the widest angle in half windows, or undecided effort or packs. */
  size(box: Box): number {
    if (box.last - box.first < 2) return -1;
    return this.#isEffortOpen(box) || arePacksOpen(box) ? Number.POSITIVE_INFINITY : this.#widest(box)[1];
  }

  split(box: Box): readonly [Box, Box] {
    box.halves ??= this.#halves(box, this.#middle(box));
    return box.halves;
  }

  #halves({ first, last }: Box, middle: number): readonly [Box, Box] {
    return [this.#box(first, middle), this.#box(middle, last)];
  }

  /** Puts a box's states in the order of its halves and says where the second one begins. */
  #middle(box: Box): number {
    const { values, effort, stride } = this.candidates.states;
    if (this.#isEffortOpen(box)) return this.#partition(box, (state) => effort[state]! <= box.effort);
    if (arePacksOpen(box)) {
      // Packs before angles: what the drawer cannot serve then falls out as a whole, whatever the other adjusters do.
      const { classes } = this.options.shims!;
      const half = (box.use.first + box.use.last) / 2;
      return this.#partition(box, (state) => classes[state]! <= half);
    }
    const [k] = this.#widest(box);
    const centre = (box.low[k]! + box.high[k]!) / 2;
    const middle = this.#partition(box, (state) => values[state * stride + k]! <= centre);
    // States with one and the same angles cannot be told apart by them: halve the list.
    return middle === box.first || middle === box.last ? (box.first + box.last) >> 1 : middle;
  }

  #isEffortOpen({ effort, mostEffort }: Box): boolean {
    return this.options.effortFirst && mostEffort > effort;
  }

  #widest(box: Box): [angle: number, width: number] {
    const { weights } = this.candidates;
    let angle = 0;
    let widest = -1;
    for (let k = 0; k < weights.length; k++) {
      const width = (box.high[k]! - box.low[k]!) * weights[k]!;
      if (width > widest) {
        widest = width;
        angle = k;
      }
    }
    return [angle, widest];
  }

  #partition(box: Box, goesFirst: (state: number) => boolean): number {
    const { order } = this.candidates;
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

  /** Long, as one pass over the states finds everything: the search spends most of its time here. */
  #box(first: number, last: number): Box {
    const { order, costs, states } = this.candidates;
    const { values, effort, slack, stride } = states;
    const low = new Float64Array(stride).fill(Number.POSITIVE_INFINITY);
    const high = new Float64Array(stride).fill(Number.NEGATIVE_INFINITY);
    let cost = Number.POSITIVE_INFINITY;
    let tilted = Number.POSITIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    for (let i = first; i < last; i++) {
      const state = order[i]!;
      for (let k = 0; k < stride; k++) {
        const value = values[state * stride + k]!;
        if (value < low[k]!) low[k] = value;
        if (value > high[k]!) high[k] = value;
      }
      const own = costs[state]!;
      if (own < cost) cost = own;
      const leaning = this.tilted[state]!;
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
    const { shims } = this.options;
    return shims ? { ...box, use: shims.use(order.subarray(first, last)) } : box;
  }
}

const arePacksOpen = (box: Box): box is Box & { readonly use: Use } =>
  box.use !== undefined && box.use.last > box.use.first;
