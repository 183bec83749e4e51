import { Math, square } from '../quantity/maths.js';
import { columnOf, mean, sumOf } from './sums.js';

/** A straight line through points, with standard errors. */
export interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number;
  readonly slopeError: number;
  readonly degreesOfFreedom: number;
  readonly residuals: Float64Array;
}

/**
 * The least-squares line of y on x, in one pass over a million rows.
 *
 * With `people` (the person of each row, from 0 to `count` − 1), the errors are those of the jackknife by person:
 * √((G − 1) / G × Σ (b₍ᵢ₎ − b)²), b₍ᵢ₎ without person i, G people, G − 1 degrees of freedom. Undefined where x does not
 * vary, or varies through one person only.
 */
export function lineOf(
  x: Float64Array,
  y: Float64Array,
  people?: { readonly of: Int32Array; readonly count: number },
): Line | undefined {
  const n = x.length;
  const [middleX, middleY] = [mean(x), mean(y)];
  const xx = sumOf(n, (row) => square(x[row]! - middleX));
  const least = 1e-12 * Math.abs(middleX) * Math.sqrt(n);
  if (!(xx > square(least)) || n < 3) return undefined;
  const xy = sumOf(n, (row) => (x[row]! - middleX) * (y[row]! - middleY));
  const slope = xy / xx;
  const intercept = middleY - slope * middleX;
  const residuals = columnOf(n, (row) => y[row]! - middleY - slope * (x[row]! - middleX));
  if (!people) {
    const variance = sumOf(n, (row) => square(residuals[row]!)) / (n - 2);
    return {
      intercept,
      slope,
      residuals,
      degreesOfFreedom: n - 2,
      slopeError: Math.sqrt(variance / xx),
      interceptError: Math.sqrt(variance * (1 / n + square(middleX) / xx)),
    };
  }
  const sums = Array.from({ length: 5 }, () => new Float64Array(people.count));
  const [rows, ofX, ofY, ofXX, ofXY] = sums as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];
  for (let row = 0; row < n; row += 1) {
    const who = people.of[row]!;
    const [a, b] = [x[row]! - middleX, y[row]! - middleY];
    rows[who]! += 1;
    ofX[who]! += a;
    ofY[who]! += b;
    ofXX[who]! += a * a;
    ofXY[who]! += a * b;
  }
  let [slopes, intercepts] = [0, 0];
  for (let who = 0; who < people.count; who += 1) {
    const left = n - rows[who]!;
    const [a, b] = [-ofX[who]! / left, -ofY[who]! / left];
    const leftXX = xx - ofXX[who]! - left * a * a;
    if (!(leftXX > Math.max(square(least), 1e-12 * xx))) return undefined;
    const without = (xy - ofXY[who]! - left * a * b) / leftXX;
    slopes += square(without - slope);
    intercepts += square(middleY + b - without * (middleX + a) - intercept);
  }
  const share = (people.count - 1) / people.count;
  return {
    intercept,
    slope,
    residuals,
    degreesOfFreedom: people.count - 1,
    slopeError: Math.sqrt(share * slopes),
    interceptError: Math.sqrt(share * intercepts),
  };
}
