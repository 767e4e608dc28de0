/** Sums of squares of what independent unknowns add to some numbers. */

/** Rows that go with numbers of a given covariance as rows that go with independent ones: Lᵀ times them. */
export function mixed(rows: Float64Array, root: Float64Array, size: number): Float64Array {
  const count = rows.length / size;
  const out = new Float64Array(rows.length);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      const share = root[count * i + j]!;
      for (let k = 0; k < size; k++) out[j * size + k]! += share * rows[i * size + k]!;
    }
  }
  return out;
}

/** Adds a vector's products with itself. @param at where it begins */
export function addSquare(covariance: Float64Array, vector: Float64Array, at: number, size: number): void {
  for (let i = 0; i < size; i++) {
    const x = vector[at + i]!;
    for (let j = 0; j < size; j++) covariance[size * i + j]! += x * vector[at + j]!;
  }
}
