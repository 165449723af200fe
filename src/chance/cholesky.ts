/** A symmetric positive definite matrix as a lower triangle times its transpose. */

/** Lower triangle, row by row without gaps: row i begins at i(i + 1)/2. */
export interface Cholesky {
  size: number;
  rows: Float64Array;
}

/**
 * Factors a symmetric matrix given by its entries; `jitter` is added to the diagonal, and a pivot
 * that rounding leaves below it is held there. Throws on an entry that is no number.
 */
export function cholesky(
  size: number,
  entry: (i: number, j: number) => number,
  jitter: number,
): Cholesky {
  const rows = new Float64Array((size * (size + 1)) / 2);
  for (let i = 0; i < size; i++) {
    const start = (i * (i + 1)) / 2;
    for (let j = 0; j <= i; j++) {
      const other = (j * (j + 1)) / 2;
      let rest = entry(i, j) + (i === j ? jitter : 0);
      for (let k = 0; k < j; k++) rest -= rows[start + k]! * rows[other + k]!;
      if (Number.isNaN(rest)) throw new Error(`covariance ${i}, ${j}: got NaN, expected a number`);
      rows[start + j] = i === j ? Math.sqrt(Math.max(rest, jitter)) : rest / rows[other + j]!;
    }
  }
  return { size, rows };
}

/** Solves L·x = b in place. */
export function solveLower({ size, rows }: Cholesky, b: Float64Array): Float64Array {
  for (let i = 0; i < size; i++) {
    const start = (i * (i + 1)) / 2;
    let rest = b[i]!;
    for (let k = 0; k < i; k++) rest -= rows[start + k]! * b[k]!;
    b[i] = rest / rows[start + i]!;
  }
  return b;
}

/** Solves Lᵀ·x = b in place. */
export function solveUpper({ size, rows }: Cholesky, b: Float64Array): Float64Array {
  for (let i = size - 1; i >= 0; i--) {
    let rest = b[i]!;
    for (let k = i + 1; k < size; k++) rest -= rows[(k * (k + 1)) / 2 + i]! * b[k]!;
    b[i] = rest / rows[(i * (i + 1)) / 2 + i]!;
  }
  return b;
}
