import { Math } from '../quantity/maths.js';

/** The lower triangle L with L Lᵀ = matrix; `undefined` where the matrix is not positive definite. */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const lower: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const own: number[] = [];
    lower.push(own);
    for (let j = 0; j <= i; j += 1) {
      let rest = row[j]!;
      for (let k = 0; k < j; k += 1) rest -= own[k]! * lower[j]![k]!;
      if (j < i) own.push(rest / lower[j]![j]!);
      else if (rest > 1e-12) own.push(Math.sqrt(rest));
      else return undefined;
    }
  }
  return lower;
}
