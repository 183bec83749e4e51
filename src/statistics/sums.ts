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

export const mean = (values: ArrayLike<number>): number => accurateSum(values) / values.length;

/** Σ (x − middle)². */
export const squaresAbout = (values: Float64Array, middle: number): number =>
  accurateSum(values.map((value) => square(value - middle)));

/** A quantile of a sorted list, between the two nearest values (as R’s default, type 7). */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}
