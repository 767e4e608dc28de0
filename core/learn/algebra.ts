/** The little of dense linear algebra that a fit needs; matrices row by row. */
import { rootOf } from '../plan/chance/cholesky.ts';

/** Aᵀ·v. */
export function transposedTimes(a: Float64Array, columns: number, v: Float64Array): Float64Array {
  const out = new Float64Array(columns);
  for (let r = 0; r < v.length; r++) {
    const x = v[r]!;
    if (x !== 0) for (let j = 0; j < columns; j++) out[j]! += x * a[r * columns + j]!;
  }
  return out;
}

/** A·v. */
export function times(a: Float64Array, v: Float64Array): Float64Array {
  const columns = v.length;
  const out = new Float64Array(columns === 0 ? 0 : a.length / columns);
  for (let r = 0; r < out.length; r++) {
    let sum = 0;
    for (let j = 0; j < columns; j++) sum += a[r * columns + j]! * v[j]!;
    out[r] = sum;
  }
  return out;
}

/** A·B, square. */
export function product(a: Float64Array, b: Float64Array, columns: number): Float64Array {
  const out = new Float64Array(a.length);
  for (let at = 0; at < a.length; at += columns) {
    for (let k = 0; k < columns; k++) {
      const x = a[at + k]!;
      if (x !== 0) for (let j = 0; j < columns; j++) out[at + j]! += x * b[k * columns + j]!;
    }
  }
  return out;
}

/** A matrix that is symmetric and has a root, as that root: solved by it again and again. */
export class Definite {
  readonly #root: Float64Array;
  constructor(
    matrix: Float64Array,
    readonly size: number,
  ) {
    this.#root = rootOf(matrix);
  }

  /** x of A·x = b; 0 in directions that A does not know. */
  solve(b: Float64Array): Float64Array {
    const { size } = this;
    const root = this.#root;
    const x = b.slice();
    for (let i = 0; i < size; i++) {
      for (let k = 0; k < i; k++) x[i]! -= root[size * i + k]! * x[k]!;
      x[i] = over(x[i]!, root[(size + 1) * i]!);
    }
    for (let i = size - 1; i >= 0; i--) {
      for (let k = i + 1; k < size; k++) x[i]! -= root[size * k + i]! * x[k]!;
      x[i] = over(x[i]!, root[(size + 1) * i]!);
    }
    return x;
  }

  /** ln of the determinant. */
  logDeterminant(): number {
    let sum = 0;
    for (let i = 0; i < this.size; i++) sum += 2 * Math.log(this.#root[(this.size + 1) * i]!);
    return sum;
  }
}

/**
 * (JᵀJ + c·1)⁻¹ by (J·Jᵀ + c·1)⁻¹, as there are mostly fewer rows than columns: the first is (1 − Jᵀ·(J·Jᵀ + c·1)⁻¹·J)/c
 * (M. A. Woodbury, Inverting Modified Matrices, 1950; from memory).
 */
export class Held {
  readonly #rows: Definite;

  /** @param c > 0 */
  constructor(
    private readonly slopes: Float64Array,
    private readonly columns: number,
    private readonly c: number,
  ) {
    const count = slopes.length / columns || 0;
    const square = new Float64Array(count * count);
    for (let i = 0; i < count; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = i === j ? c : 0;
        for (let k = 0; k < columns; k++) sum += slopes[i * columns + k]! * slopes[j * columns + k]!;
        square[i * count + j] = sum;
        square[j * count + i] = sum;
      }
    }
    this.#rows = new Definite(square, count);
  }

  /** x of (JᵀJ + c·1)·x = b. */
  solve(b: Float64Array): Float64Array {
    const { slopes, columns, c } = this;
    const back = transposedTimes(slopes, columns, this.rest(times(slopes, b)));
    return b.map((x, k) => (x - back[k]!) / c);
  }

  /** Of as many numbers as there are rows (J·Jᵀ + c·1)⁻¹ times them: for c = 1 what J explains of them taken out. */
  rest(v: Float64Array): Float64Array {
    return this.#rows.solve(v);
  }

  /** (JᵀJ + c·1)⁻¹, its first `of` rows and columns. */
  inverse(of: number): Float64Array {
    const out = new Float64Array(of * of);
    for (let j = 0; j < of; j++) {
      const unit = new Float64Array(this.columns);
      unit[j] = 1;
      const column = this.solve(unit);
      for (let i = 0; i < of; i++) out[i * of + j] = column[i]!;
    }
    return out;
  }
}

const NOTHING = 1e-9;
const over = (a: number, b: number): number => (b > NOTHING ? a / b : 0);
