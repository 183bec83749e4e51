import { Math, square } from '../quantity/maths.js';
import { around, type WithError } from './interval.js';
import type { People } from './people.js';
import { studentT95 } from './student-t.js';
import { columnOf, mean, sumOf } from './sums.js';

/** A straight line through points; its coefficients have Student’s t intervals. */
export interface Line {
  readonly intercept: WithError;
  readonly slope: WithError;
  readonly residuals: Float64Array;
}

/**
 * The least-squares line of y on x, in one pass over a million rows.
 *
 * With `people`, the errors are those of the jackknife by person: √((G − 1) / G × Σ (b₍ᵢ₎ − b)²), b₍ᵢ₎ without person i,
 * G people, G − 1 degrees of freedom. Undefined where x does not vary, or varies through one person only.
 */
export function lineOf(x: Float64Array, y: Float64Array, people?: People): Line | undefined {
  const n = x.length;
  const [middleX, middleY] = [mean(x), mean(y)];
  const xx = sumOf(n, (row) => square(x[row]! - middleX));
  const least = 1e-12 * Math.abs(middleX) * Math.sqrt(n);
  if (!(xx > square(least)) || n < 3) return undefined;
  const xy = sumOf(n, (row) => (x[row]! - middleX) * (y[row]! - middleY));
  const slope = xy / xx;
  const intercept = middleY - slope * middleX;
  const residuals = columnOf(n, (row) => y[row]! - middleY - slope * (x[row]! - middleX));
  const line = (interceptError: number, slopeError: number, degreesOfFreedom: number): Line => {
    const t = studentT95(degreesOfFreedom);
    return { intercept: around(intercept, interceptError, t), slope: around(slope, slopeError, t), residuals };
  };
  if (!people) {
    const variance = sumOf(n, (row) => square(residuals[row]!)) / (n - 2);
    return line(Math.sqrt(variance * (1 / n + square(middleX) / xx)), Math.sqrt(variance / xx), n - 2);
  }
  const { of, count, rows } = people;
  const sums = Array.from({ length: 4 }, () => new Float64Array(count));
  const [ofX, ofY, ofXX, ofXY] = sums as [Float64Array, Float64Array, Float64Array, Float64Array];
  for (let row = 0; row < n; row += 1) {
    const who = of[row]!;
    const [a, b] = [x[row]! - middleX, y[row]! - middleY];
    ofX[who]! += a;
    ofY[who]! += b;
    ofXX[who]! += a * a;
    ofXY[who]! += a * b;
  }
  let [slopes, intercepts] = [0, 0];
  for (let who = 0; who < count; who += 1) {
    const left = n - rows[who]!;
    const [a, b] = [-ofX[who]! / left, -ofY[who]! / left];
    const leftXX = xx - ofXX[who]! - left * a * a;
    if (!(leftXX > Math.max(square(least), 1e-12 * xx))) return undefined;
    const without = (xy - ofXY[who]! - left * a * b) / leftXX;
    slopes += square(without - slope);
    intercepts += square(middleY + b - without * (middleX + a) - intercept);
  }
  const share = (count - 1) / count;
  return line(Math.sqrt(share * intercepts), Math.sqrt(share * slopes), count - 1);
}
