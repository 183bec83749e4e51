import { Math, square } from '../quantity/maths.js';
import { AT_LEAST, need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { studentT95 } from '../statistics/student-t.js';

const LEAST_PAIRS = 3;
const MOST_PAIRS = 1_000_000;

/**
 * How many pairs of different people make the limits of agreement as sure as you want.
 *
 * Formula: the smallest n with t s √(1 / n + 1.96² / (2 (n − 1))) ≤ the half-width; t at 97.5 % with n − 1 degrees.
 *
 * - Evidence: `unconfirmed`: a published method, formula from memory.
 * - Source: Lancet 1986;327(8476):307–310.
 *
 * @function
 * @param input - `standardDeviation` you expect of the differences, and the `halfWidth` wanted of the 95 % interval of
 * a limit, in the same unit
 * @returns the number of pairs.
 * @throws InputError for a half-width that takes more than 1,000,000 pairs
 *
 * @example
 * ```ts
 * import { pairsForLimits } from 'cuffwork/study';
 * pairsForLimits({ standardDeviation: 10, halfWidth: 3.5 }); // => 95
 * ```
 */
export const pairsForLimits = withInput(function pairsForLimits(input: {
  /** Standard deviation that you expect of the differences, from 0.000001 to 1,000,000. */
  readonly standardDeviation: number;
  /** Half-width that you want of the 95 % interval of a limit, in the same unit. */
  readonly halfWidth: number;
}): number {
  const reader = new Reader(input);
  const unit = { unit: '1', min: 1e-6, max: 1e6 } as const;
  const s = reader.number('standardDeviation', { name: 'standard deviation of the differences', ...unit });
  const wanted = reader.number('halfWidth', { name: 'half-width of the interval of a limit', ...unit });
  const half = (n: number): number => studentT95(n - 1) * s * Math.sqrt(1 / n + square(NORMAL_95) / (2 * (n - 1)));
  if (reader.fine && half(MOST_PAIRS) > wanted) {
    const least = Number(half(MOST_PAIRS).toPrecision(2));
    reader.report('out-of-range', 'halfWidth', need(AT_LEAST, { least }), `${wanted}`);
  }
  reader.done();
  let [low, high] = [LEAST_PAIRS, MOST_PAIRS];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (half(middle) <= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
});
