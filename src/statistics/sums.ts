import { Math, square } from '../quantity/maths.js';

/**
 * The sum of as many terms as there are rows, compensated (Neumaier), so that means of long lists keep their digits;
 * no term is kept: for millions of them.
 */
export function sumOf(rows: number, at: (row: number) => number): number {
  let sum = 0;
  let lost = 0;
  for (let row = 0; row < rows; row += 1) {
    const value = at(row);
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** The same of a list. */
export const accurateSum = (values: ArrayLike<number>): number => sumOf(values.length, (row) => values[row]!);

/** A column worked out row by row. */
export function columnOf(rows: number, at: (row: number) => number): Float64Array {
  const column = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) column[row] = at(row);
  return column;
}

export const mean = (values: ArrayLike<number>): number => accurateSum(values) / values.length;

/** Σ (x − middle)². */
export const squaresAbout = (values: ArrayLike<number>, middle: number): number =>
  sumOf(values.length, (row) => square(values[row]! - middle));

/** A quantile of a sorted list, between the two nearest values (as R’s default, type 7). */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}
