/** The root of a covariance. */

/** Lower triangle L with L·Lᵀ = c (Cholesky), square and row by row; a direction without any spread stays zero. */
export function rootOf(c: Float64Array): Float64Array {
  const size = Math.sqrt(c.length);
  const root = new Float64Array(c.length);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = c[size * i + j]!;
      for (let k = 0; k < j; k++) sum -= root[size * i + k]! * root[size * j + k]!;
      if (i === j) root[(size + 1) * i] = Math.sqrt(Math.max(0, sum));
      else {
        const pivot = root[(size + 1) * j]!;
        root[size * i + j] = pivot > 0 ? sum / pivot : 0;
      }
    }
  }
  return root;
}
