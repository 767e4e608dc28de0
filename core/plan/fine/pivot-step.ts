/** The pivots of one choice of the others: where they come nearest to what is wanted, and the positions about that. */
import { LeastSquares } from './least-squares.ts';

/** Is shown the ranks of all axes, the same array every time, and what they cost by the tables; false where it has enough. */
export type Show = (ranks: Uint16Array, cost: number) => boolean;

/** What two axes add together: at rank of the one · `step` + rank of the other · `stride`, a number for each term. */
export interface Together {
  readonly values: Float64Array;
  readonly step: number;
  readonly stride: number;
}

/** What is completed: terms of tables, and the ranks that its axes have. */
interface Incomplete {
  /** How many terms there are. */
  readonly size: number;
  readonly ranks: Uint16Array;
  length(axis: number): number;
  together(axis: number, other: number): Together;
}

const STEPS = 6;
/** Ranks, and share of the limit, by which the tables' bend may put an ellipse off. */
const BEND = 0.05;

export class PivotStep {
  readonly #fit: LeastSquares;
  readonly #lengths: readonly number[];
  /** Of each two pivots. */
  readonly #pairs: readonly (readonly (Together | undefined)[])[];
  /** Of each pivot with the axis beside. */
  #beside: readonly Together[] | undefined;
  #axis = -1;
  readonly #low: Int32Array;
  readonly #high: Int32Array;
  readonly #best: Int32Array;

  constructor(
    private readonly completion: Incomplete,
    readonly pivots: readonly number[],
    private readonly show: Show,
    private readonly limit: number | undefined,
  ) {
    const many = pivots.length;
    this.#fit = new LeastSquares(many, completion.size);
    this.#lengths = pivots.map((p) => completion.length(p));
    this.#pairs = pivots.map((p) => pivots.map((q) => (p === q ? undefined : completion.together(q, p))));
    this.#low = new Int32Array(many);
    this.#high = new Int32Array(many);
    this.#best = new Int32Array(many);
  }

  /** The axis whose share the sums do not have. */
  beside(axis: number): void {
    this.#axis = axis;
    this.#beside = this.pivots.map((p) => this.completion.together(axis, p));
  }

  /** Shows what there is for one choice; false where that is enough. Plain loops: it is asked hundreds of thousands of times. */
  settle(base: Float64Array, sums: ReadonlyMap<number, Float64Array>): boolean {
    const own = this.pivots.map((p) => sums.get(p)!);
    if (!this.#solve(base, own)) return true;
    return this.limit === undefined ? this.#nearest(base, own) : this.#allWithin(base, own, this.limit);
  }

  /** Goes to the ranks nearest to what is wanted; false where there is no pose or nothing that is near enough. */
  #solve(base: Float64Array, own: readonly Float64Array[]): boolean {
    const { ranks } = this.completion;
    const { pivots, limit } = this;
    const fit = this.#fit;
    for (let step = 0; step < STEPS; step++) {
      this.#offAt(base, own);
      if (Number.isNaN(fit.off[0]!)) return false;
      this.#slopesAt(own);
      for (let p = 0; p < pivots.length; p++) {
        fit.low[p] = -ranks[pivots[p]!]!;
        fit.high[p] = this.#lengths[p]! - 1 - ranks[pivots[p]!]!;
      }
      fit.solve();
      if (limit === undefined && !fit.isWithin) fit.solveWithin();
      let moved = false;
      for (let p = 0; p < pivots.length; p++) {
        const by = fit.by[p]!;
        if (Number.isNaN(by)) return false;
        const gone = Math.round(Math.min(fit.high[p]!, Math.max(fit.low[p]!, by)));
        if (gone === 0) continue;
        moved = true;
        ranks[pivots[p]!]! += gone;
        fit.by[p]! -= gone;
      }
      if (!moved) break;
      if (step === STEPS - 1) this.#offAt(base, own);
    }
    return true;
  }

  /** The best of the positions about where the pivots come nearest. */
  #nearest(base: Float64Array, own: readonly Float64Array[]): boolean {
    const { ranks } = this.completion;
    const { pivots } = this;
    for (let p = 0; p < pivots.length; p++) {
      const at = ranks[pivots[p]!]! + this.#fit.by[p]!;
      const last = this.#lengths[p]! - 1;
      this.#low[p] = Math.min(last, Math.max(0, Math.floor(at)));
      this.#high[p] = Math.min(last, Math.max(0, Math.ceil(at)));
    }
    let least = Number.POSITIVE_INFINITY;
    this.#eachBetween(base, own, (cost) => {
      if (cost < least) {
        least = cost;
        for (let p = 0; p < pivots.length; p++) this.#best[p] = ranks[pivots[p]!]!;
      }
      return true;
    });
    if (least === Number.POSITIVE_INFINITY) return true;
    for (let p = 0; p < pivots.length; p++) ranks[pivots[p]!] = this.#best[p]!;
    return this.show(ranks, least);
  }

  /** Every position in the ellipse of what costs no more than the limit. */
  #allWithin(base: Float64Array, own: readonly Float64Array[], limit: number): boolean {
    const { ranks } = this.completion;
    const fit = this.#fit;
    const reach = limit * (1 + BEND) - fit.left();
    if (reach < 0) return true;
    const far = Math.sqrt(reach);
    for (let p = 0; p < this.pivots.length; p++) {
      const at = ranks[this.pivots[p]!]! + fit.by[p]!;
      const room = far * fit.room(p) + BEND;
      this.#low[p] = Math.max(0, Math.ceil(at - room));
      this.#high[p] = Math.min(this.#lengths[p]! - 1, Math.floor(at + room));
      if (this.#low[p]! > this.#high[p]!) return true;
    }
    return this.#eachBetween(base, own, (cost) => !(cost <= limit) || this.show(ranks, cost));
  }

  /** Goes through all positions between the bounds, and leaves the pivots where they were. */
  #eachBetween(base: Float64Array, own: readonly Float64Array[], show: (cost: number) => boolean): boolean {
    const { ranks, size } = this.completion;
    const { pivots } = this;
    const { off } = this.#fit;
    const before = pivots.map((p) => ranks[p]!);
    for (let p = 0; p < pivots.length; p++) ranks[pivots[p]!] = this.#low[p]!;
    let goesOn = true;
    while (goesOn) {
      this.#offAt(base, own);
      let cost = 0;
      for (let t = 0; t < size; t++) cost += off[t]! * off[t]!;
      goesOn = show(cost);
      let p = pivots.length - 1;
      for (; p >= 0 && ranks[pivots[p]!]! >= this.#high[p]!; p--) ranks[pivots[p]!] = this.#low[p]!;
      if (p < 0) break;
      ranks[pivots[p]!]! += 1;
    }
    pivots.forEach((p, i) => {
      ranks[p] = before[i]!;
    });
    return goesOn;
  }

  /** Half windows off with the pivots at their ranks. */
  #offAt(base: Float64Array, own: readonly Float64Array[]): void {
    const { ranks, size } = this.completion;
    const { pivots } = this;
    const { off } = this.#fit;
    for (let t = 0; t < size; t++) off[t] = base[t]!;
    for (let p = 0; p < pivots.length; p++) {
      const rank = ranks[pivots[p]!]!;
      const sums = own[p]!;
      for (let t = 0; t < size; t++) off[t]! += sums[rank * size + t]!;
      const beside = this.#beside?.[p];
      if (beside) addRow(off, beside, ranks[this.#axis]!, rank, size);
      for (let q = 0; q < p; q++) addRow(off, this.#pairs[p]![q]!, ranks[pivots[q]!]!, rank, size);
    }
  }

  /** What each pivot moves as it goes up by a rank, or down where there is none above. */
  #slopesAt(own: readonly Float64Array[]): void {
    const { ranks, size } = this.completion;
    const { pivots } = this;
    const { slopes } = this.#fit;
    for (let p = 0; p < pivots.length; p++) {
      const rank = ranks[pivots[p]!]!;
      const up = rank < this.#lengths[p]! - 1 ? 1 : -1;
      const sums = own[p]!;
      for (let t = 0; t < size; t++) {
        slopes[p * size + t] = up * (sums[(rank + up) * size + t]! - sums[rank * size + t]!);
      }
      const beside = this.#beside?.[p];
      if (beside) this.#addSlope(p, beside, ranks[this.#axis]!, rank, up);
      for (let q = 0; q < pivots.length; q++) {
        if (q !== p) this.#addSlope(p, this.#pairs[p]![q]!, ranks[pivots[q]!]!, rank, up);
      }
    }
  }

  #addSlope(p: number, { values, step, stride }: Together, other: number, rank: number, up: number): void {
    const { size } = this.completion;
    const { slopes } = this.#fit;
    const from = other * step + rank * stride;
    for (let t = 0; t < size; t++) slopes[p * size + t]! += up * (values[from + up * stride + t]! - values[from + t]!);
  }
}

function addRow(
  off: Float64Array,
  { values, step, stride }: Together,
  other: number,
  rank: number,
  size: number,
): void {
  const from = other * step + rank * stride;
  for (let t = 0; t < size; t++) off[t]! += values[from + t]!;
}
