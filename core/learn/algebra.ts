/** The little of dense linear algebra that a fit needs; matrices row by row. */
import { rootOf } from '../plan/chance/cholesky.ts';

/** Aᵀ·A of `rows` rows. */
export function normalOf(a: Float64Array, columns: number): Float64Array {
  const out = new Float64Array(columns * columns);
  for (let at = 0; at < a.length; at += columns) {
    for (let i = 0; i < columns; i++) {
      const x = a[at + i]!;
      if (x === 0) continue;
      for (let j = 0; j <= i; j++) out[i * columns + j]! += x * a[at + j]!;
    }
  }
  for (let i = 0; i < columns; i++) for (let j = 0; j < i; j++) out[j * columns + i] = out[i * columns + j]!;
  return out;
}

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
  return Float64Array.from({ length: columns === 0 ? 0 : a.length / columns }, (_, r) => {
    let sum = 0;
    for (let j = 0; j < columns; j++) sum += a[r * columns + j]! * v[j]!;
    return sum;
  });
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

  /** A⁻¹, its first `of` rows and columns. */
  inverse(of = this.size): Float64Array {
    const out = new Float64Array(of * of);
    for (let j = 0; j < of; j++) {
      const unit = new Float64Array(this.size);
      unit[j] = 1;
      const column = this.solve(unit);
      for (let i = 0; i < of; i++) out[i * of + j] = column[i]!;
    }
    return out;
  }
}

const NOTHING = 1e-9;
const over = (a: number, b: number): number => (b > NOTHING ? a / b : 0);
