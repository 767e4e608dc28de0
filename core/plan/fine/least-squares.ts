/** A few unknowns by least squares, again and again without a new array. */

/** Rounds in which unknowns within limits settle. */
const SWEEPS = 24;
/** Of an unknown, by which it is settled. */
const SETTLED = 1e-3;

export class LeastSquares {
  /** How each unknown moves what is to vanish: unknown by unknown. */
  readonly slopes: Float64Array;
  /** What is to vanish where all unknowns are 0. */
  readonly off: Float64Array;
  /** The unknowns that were found. */
  readonly by: Float64Array;
  /** Limits of each unknown. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly #square: Float64Array;
  readonly #right: Float64Array;
  readonly #line: Float64Array;

  /** @param many how many unknowns, @param size how many things that are to vanish */
  constructor(
    readonly many: number,
    readonly size: number,
  ) {
    this.slopes = new Float64Array(many * size);
    this.off = new Float64Array(size);
    this.by = new Float64Array(many);
    this.low = new Float64Array(many);
    this.high = new Float64Array(many);
    this.#square = new Float64Array(many * many);
    this.#right = new Float64Array(many);
    this.#line = new Float64Array(many);
  }

  /** Without regard to limits; NaN where the unknowns cannot be told apart. By Cholesky. */
  solve(): void {
    const { many, by } = this;
    const a = this.#square;
    this.#normal();
    for (let i = 0; i < many; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = a[i * many + j]!;
        for (let k = 0; k < j; k++) sum -= a[i * many + k]! * a[j * many + k]!;
        a[i * many + j] = i === j ? Math.sqrt(sum) : sum / a[j * many + j]!;
      }
      by[i] = this.#forward(this.#right[i]!, i, 0, by);
    }
    for (let i = many - 1; i >= 0; i--) {
      let sum = by[i]!;
      for (let k = i + 1; k < many; k++) sum -= a[k * many + i]! * by[k]!;
      by[i] = sum / a[i * many + i]!;
    }
  }

  /** Whether what was found is within limits. */
  get isWithin(): boolean {
    for (let i = 0; i < this.many; i++)
      if (!(this.by[i]! >= this.low[i]! && this.by[i]! <= this.high[i]!)) return false;
    return true;
  }

  /** Within limits, one unknown after the other. */
  solveWithin(): void {
    const { many, by, low, high } = this;
    const a = this.#square;
    this.#normal();
    by.fill(0);
    let moves = 1;
    for (let sweep = 0; sweep < SWEEPS && moves > SETTLED; sweep++) {
      moves = 0;
      for (let i = 0; i < many; i++) {
        let sum = this.#right[i]!;
        for (let j = 0; j < many; j++) if (j !== i) sum -= a[i * many + j]! * by[j]!;
        const to = Math.min(high[i]!, Math.max(low[i]!, sum / a[i * many + i]!));
        moves = Math.max(moves, Math.abs(to - by[i]!));
        by[i] = to;
      }
    }
  }

  /** The sum of squares that is left. */
  left(): number {
    const { many, size, slopes, by, off } = this;
    let left = 0;
    for (let t = 0; t < size; t++) {
      let x = off[t]!;
      for (let i = 0; i < many; i++) x += slopes[i * size + t]! * by[i]!;
      left += x * x;
    }
    return left;
  }

  /** How far an unknown may go, the others following, before the sum of squares is 1 greater; after `solve`. */
  room(i: number): number {
    const line = this.#line;
    let square = 0;
    for (let k = i; k < this.many; k++) {
      line[k] = this.#forward(k === i ? 1 : 0, k, i, line);
      square += line[k]! ** 2;
    }
    return Math.sqrt(square);
  }

  /** One step of solving with the lower triangle. */
  #forward(right: number, i: number, first: number, known: Float64Array): number {
    const a = this.#square;
    let sum = right;
    for (let k = first; k < i; k++) sum -= a[i * this.many + k]! * known[k]!;
    return sum / a[i * this.many + i]!;
  }

  #normal(): void {
    const { many, size, slopes, off } = this;
    for (let i = 0; i < many; i++) {
      let right = 0;
      for (let t = 0; t < size; t++) right -= slopes[i * size + t]! * off[t]!;
      this.#right[i] = right;
      for (let j = 0; j < many; j++) {
        let sum = 0;
        for (let t = 0; t < size; t++) sum += slopes[i * size + t]! * slopes[j * size + t]!;
        this.#square[i * many + j] = sum;
      }
    }
  }
}
