import { Math, square } from '../quantity/maths.js';
import { NORMAL_95 } from './normal.js';
import { mean, squaresAbout, sumOf } from './sums.js';

/**
 * The concordance correlation of 1989; undefined where nothing varies. The interval takes rows as those of different people,
 * and is left out where all pairs agree.
 */
export function concordanceOf(
  x: Float64Array,
  y: Float64Array,
  ofDifferentPeople: boolean,
): { readonly value: number; readonly lower?: number; readonly upper?: number } | undefined {
  const n = x.length;
  const middleX = mean(x);
  const middleY = mean(y);
  const varianceX = squaresAbout(x, middleX) / n;
  const varianceY = squaresAbout(y, middleY) / n;
  const covariance = sumOf(n, (row) => (x[row]! - middleX) * (y[row]! - middleY)) / n;
  const apart = middleX - middleY;
  const spread = varianceX + varianceY + square(apart);
  if (!(spread > 0)) return undefined;
  const value = (2 * covariance) / spread;
  const r = covariance / Math.sqrt(varianceX * varianceY);
  const u2 = square(apart) / Math.sqrt(varianceX * varianceY);
  const c2 = square(value);
  const r2 = square(r);
  const left = 1 - c2;
  // Variance of artanh(value), as corrected in 2000.
  const variance =
    (((1 - r2) * c2) / (left * r2) +
      (2 * value * c2 * (1 - value) * u2) / (r * square(left)) -
      square(c2 * u2) / (2 * r2 * square(left))) /
    (n - 2);
  if (!(ofDifferentPeople && variance >= 0 && Number.isFinite(variance))) return { value };
  const z = Math.atanh(value);
  const half = NORMAL_95 * Math.sqrt(variance);
  return { value, lower: Math.tanh(z - half), upper: Math.tanh(z + half) };
}
