import { Math, square } from '../quantity/maths.js';
import type { LeastSquares } from './least-squares.js';
import { accurateSum } from './sums.js';

/** A row of L times x − means; the squares of all rows add to the leverage of x. */
function turned(row: readonly number[], means: readonly number[], x: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < row.length; i += 1) sum += row[i]! * (x[i]! - means[i]!);
  return sum;
}

/** The leverage h of readings x: the variance of the fitted value there is s² h, that of a new person s² (1 + h). */
export function leverageAt(
  { means, factor }: Pick<LeastSquares, 'means' | 'factor'>,
  rows: number,
  x: readonly number[],
): number {
  let leverage = 1 / rows;
  for (let j = 0; j < factor.length; j += 1) leverage += square(turned(factor[j]!, means, x));
  return leverage;
}

/** A symmetric matrix, its rows and columns in the order intercept, slopes. */
export type Covariance = readonly (readonly number[])[];

/** What each row adds to the coefficients for each unit of its residual: intercept, then slopes. */
function influenceOf({ means, factor }: LeastSquares, x: readonly number[], rows: number): number[] {
  const z = factor.map((row) => turned(row, means, x));
  const slopes = means.map((_, i) => accurateSum(factor.map((row, j) => (row[i] ?? 0) * z[j]!)));
  return [1 / rows - accurateSum(slopes.map((slope, i) => slope * means[i]!)), ...slopes];
}

/** What a reviewer asks of a fit, row by row and for its coefficients. */
export interface RegressionDiagnostics {
  /** s² (XᵀX)⁻¹. */
  readonly covariance: Covariance;
  /** Σ wᵢ wᵢᵀ eᵢ² / (1 − hᵢ)², wᵢ what row i adds to the coefficients: HC3, for residuals that spread unevenly. */
  readonly robustCovariance: Covariance;
  /** Residuals over their standard deviation, that of the others (externally studentized). */
  readonly studentized: readonly number[];
  readonly cooksDistances: readonly number[];
}

export function diagnosticsOf(fit: LeastSquares, columns: readonly (readonly number[])[]): RegressionDiagnostics {
  const { residuals, leverages, residualDeviation, degreesOfFreedom } = fit;
  const rows = residuals.length;
  const size = columns.length + 1;
  const influences = residuals.map((_, row) =>
    influenceOf(
      fit,
      columns.map((column) => column[row]!),
      rows,
    ),
  );
  const matrix = (weight: (row: number) => number): Covariance =>
    Array.from({ length: size }, (_, a) =>
      Array.from({ length: size }, (__, b) =>
        accurateSum(influences.map((influence, row) => influence[a]! * influence[b]! * weight(row))),
      ),
    );
  const variance = square(residualDeviation);
  return {
    covariance: matrix(() => variance),
    robustCovariance: matrix((row) => square(residuals[row]! / (1 - leverages[row]!))),
    studentized: residuals.map((e, row) => {
      const left = 1 - leverages[row]!;
      const others = (degreesOfFreedom * variance - (e * e) / left) / (degreesOfFreedom - 1);
      return others > 0 ? e / Math.sqrt(others * left) : 0;
    }),
    cooksDistances: residuals.map((e, row) => {
      const h = leverages[row]!;
      return variance > 0 ? ((e * e) / (size * variance)) * (h / square(1 - h)) : 0;
    }),
  };
}
