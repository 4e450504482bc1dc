/**
 * The Cholesky factor of a symmetric, positive definite matrix, as a way to solve with it.
 * @param matrix  row by row, only the lower left half is read; not changed
 * @returns a function that answers x for A·x = b; undefined where the matrix is not positive definite
 */
export function solveSymmetric(matrix: readonly (readonly number[])[]): ((right: readonly number[]) => number[]) | undefined {
  const size = matrix.length;
  const factor: number[][] = [];
  for (let i = 0; i < size; i += 1) {
    const row: number[] = [];
    for (let k = 0; k <= i; k += 1) {
      let sum = matrix[i]?.[k] ?? 0;
      const other = k === i ? row : (factor[k] ?? []);
      for (let m = 0; m < k; m += 1) sum -= (row[m] ?? 0) * (other[m] ?? 0);
      if (k === i) {
        if (!(sum > 0)) return undefined;
        row.push(Math.sqrt(sum));
      } else row.push(sum / (other[k] ?? 1));
    }
    factor.push(row);
  }
  return (right) => {
    const x = [...right];
    for (let i = 0; i < size; i += 1) {
      const row = factor[i] ?? [];
      for (let k = 0; k < i; k += 1) x[i] = (x[i] ?? 0) - (row[k] ?? 0) * (x[k] ?? 0);
      x[i] = (x[i] ?? 0) / (row[i] ?? 1);
    }
    for (let i = size - 1; i >= 0; i -= 1) {
      for (let k = i + 1; k < size; k += 1) x[i] = (x[i] ?? 0) - (factor[k]?.[i] ?? 0) * (x[k] ?? 0);
      x[i] = (x[i] ?? 0) / (factor[i]?.[i] ?? 1);
    }
    return x;
  };
}
