import { Math, square } from '../quantity/maths.js';

/** The sum of a list, compensated (Neumaier), so that means of long lists keep their digits. */
export function accurateSum(values: ArrayLike<number>): number {
  let sum = 0;
  let lost = 0;
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index]!;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** The same of as many terms as there are rows, none of which is kept: for millions of them. */
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

/** A column worked out row by row. */
export function columnOf(rows: number, at: (row: number) => number): Float64Array {
  const column = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) column[row] = at(row);
  return column;
}

export const mean = (values: ArrayLike<number>): number => accurateSum(values) / values.length;

/** Σ (x − middle)². */
export const squaresAbout = (values: Float64Array, middle: number): number =>
  sumOf(values.length, (row) => square(values[row]! - middle));

/** A quantile of a sorted list, between the two nearest values (as R’s default, type 7). */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}
