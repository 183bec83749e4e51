import { Math } from '../quantity/maths.js';
import { accurateSum, mean } from './sums.js';

/** A straight-line model fitted by least squares. */
export interface LeastSquares {
  readonly intercept: number;
  readonly slopes: readonly number[];
  readonly interceptError: number;
  /** Standard errors of the slopes. */
  readonly slopeErrors: readonly number[];
  /** Variance inflation factor of each column: 1 for one that the others say nothing about. */
  readonly inflation: readonly number[];
  readonly degreesOfFreedom: number;
  readonly residualDeviation: number;
  readonly rSquared: number;
  readonly adjustedRSquared: number;
  /**
   * What the leverage of new readings x is worked out from: 1 / n + |L (x − means)|², L the lower triangle `factor`, each
   * row up to its diagonal. s² (1 / n + …) is the variance of the fitted line at x.
   */
  readonly means: readonly number[];
  readonly factor: readonly (readonly number[])[];
  /** Residuals, and how far each row pulls the fit towards itself (0 to 1). */
  readonly residuals: readonly number[];
  readonly leverages: readonly number[];
}

/** Why a fit cannot be made: a column that does not vary (−1: the outcome), or one that follows from those before it. */
export interface NoFit {
  readonly column: number;
  readonly why: 'constant' | 'collinear';
}

/** Below this share of a column’s length left over by the columns before it, it is taken as following from them. */
const LEFT_OVER = 1e-7;

const dot = (a: readonly number[], b: readonly number[], from = 0): number =>
  accurateSum(a.slice(from).map((value, index) => value * b[from + index]!));

/**
 * Fits y = b₀ + b₁ x₁ + … by least squares.
 *
 * The columns are centred and brought to length one, then made triangular by Householder reflections (QR), and the
 * solution is refined once on its own residuals: no normal equations, so nearly collinear columns keep their digits.
 */
export function leastSquares(columns: readonly (readonly number[])[], y: readonly number[]): LeastSquares | NoFit {
  const rows = y.length;
  const terms = columns.length;
  const middles = columns.map(mean);
  const middleY = mean(y);
  const centred = columns.map((column, j) => column.map((value) => value - middles[j]!));
  const lengths = centred.map((column) => Math.sqrt(dot(column, column)));
  const constant = lengths.findIndex((length, j) => !(length > 1e-12 * Math.abs(middles[j]!) * Math.sqrt(rows)));
  if (constant >= 0) return { column: constant, why: 'constant' };
  const target = y.map((value) => value - middleY);
  const total = dot(target, target);
  if (!(Math.sqrt(total) > 1e-12 * Math.abs(middleY) * Math.sqrt(rows))) return { column: -1, why: 'constant' };
  const unit = centred.map((column, j) => column.map((value) => value / lengths[j]!));

  // Householder reflections: reflectors[j] is the normal of the j-th mirror, r the triangle they leave.
  const work = unit.map((column) => [...column]);
  const reflectors: number[][] = [];
  const reflect = (normal: readonly number[], column: number[], from: number): void => {
    const twice = 2 * dot(normal, column, from);
    for (let row = from; row < rows; row += 1) column[row]! -= twice * normal[row]!;
  };
  for (let j = 0; j < terms; j += 1) {
    const column = work[j]!;
    const length = Math.sqrt(dot(column, column, j));
    if (!(length > LEFT_OVER)) return { column: j, why: 'collinear' };
    const normal = column.map((value, row) => (row < j ? 0 : value));
    normal[j]! += column[j]! >= 0 ? length : -length;
    const size = Math.sqrt(dot(normal, normal, j));
    for (let row = j; row < rows; row += 1) normal[row]! /= size;
    reflectors.push(normal);
    for (let k = j; k < terms; k += 1) reflect(normal, work[k]!, j);
  }
  const r = (row: number, column: number): number => work[column]![row]!;
  const solve = (target: readonly number[]): number[] => {
    const turned = [...target];
    reflectors.forEach((normal, j) => reflect(normal, turned, j));
    const solution = new Array<number>(terms).fill(0);
    for (let j = terms - 1; j >= 0; j -= 1) {
      let rest = turned[j]!;
      for (let k = j + 1; k < terms; k += 1) rest -= r(j, k) * solution[k]!;
      solution[j] = rest / r(j, j);
    }
    return solution;
  };
  const left = (target: readonly number[], solution: readonly number[]): number[] =>
    target.map((value, row) => accurateSum([value, ...unit.map((column, j) => -column[row]! * solution[j]!)]));

  const first = solve(target);
  const correction = solve(left(target, first));
  const solution = first.map((value, j) => value + correction[j]!);
  const residuals = left(target, solution);

  // Rᵀ z = v, forwards: z of a row gives its leverage, z of the middles the error of the intercept.
  const forward = (vector: readonly number[]): number[] => {
    const z: number[] = [];
    for (let j = 0; j < terms; j += 1) {
      let rest = vector[j]!;
      for (let k = 0; k < j; k += 1) rest -= r(k, j) * z[k]!;
      z.push(rest / r(j, j));
    }
    return z;
  };
  const squared = (vector: readonly number[]): number => dot(vector, vector);
  const degreesOfFreedom = rows - terms - 1;
  const residualSquares = squared(residuals);
  const residualDeviation = Math.sqrt(residualSquares / degreesOfFreedom);
  // The columns of R⁻ᵀ.
  const inverse = columns.map((_, j) => forward(columns.map((__, k) => (j === k ? 1 : 0))));
  const inflation = inverse.map(squared);
  const middleSquares = squared(forward(middles.map((middle, j) => middle / lengths[j]!)));
  const slopes = solution.map((value, j) => value / lengths[j]!);
  return {
    intercept: accurateSum([middleY, ...slopes.map((slope, j) => -slope * middles[j]!)]),
    slopes,
    interceptError: residualDeviation * Math.sqrt(1 / rows + middleSquares),
    slopeErrors: inflation.map((factor, j) => (residualDeviation * Math.sqrt(factor)) / lengths[j]!),
    inflation,
    degreesOfFreedom,
    residualDeviation,
    rSquared: 1 - residualSquares / total,
    adjustedRSquared: 1 - ((residualSquares / total) * (rows - 1)) / degreesOfFreedom,
    means: middles,
    factor: columns.map((_, j) => inverse.slice(0, j + 1).map((column, i) => column[j]! / lengths[i]!)),
    residuals,
    leverages: y.map((_, row) => 1 / rows + squared(forward(unit.map((column) => column[row]!)))),
  };
}
