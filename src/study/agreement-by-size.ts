import { Math } from '../quantity/maths.js';
import type { WithError } from '../statistics/interval.js';
import { lineOf, type Line } from '../statistics/line.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { People } from '../statistics/people.js';
import { columnOf, mean } from '../statistics/sums.js';

/** How bias and spread of the differences change with size. */
export interface BySize {
  /** What size is: the estimate, or the mean of the pair. */
  readonly size: 'estimated' | 'mean';
  /** Bias at a size: intercept + slope × size. The slope is `proportionalBias`. */
  readonly bias: {
    /** Bias at size 0, in the unit of the values; on the log scale of logarithms. */
    readonly intercept: number;
    /** Change of the bias for each unit of size. */
    readonly slope: number;
  };
  /** Standard deviation at a size: intercept + slope × size. */
  readonly spread: {
    /** Standard deviation at size 0, in the unit of the values; on the log scale of logarithms. */
    readonly intercept: number;
    /** Change of the standard deviation for each unit of size; 0 where the spread is the same at every size. */
    readonly slope: WithError;
  };
  /** Limits at the smallest, the mean and the largest size. */
  readonly limits: readonly {
    /** The size, in the unit of the values; on the log scale its logarithm. */
    readonly size: number;
    /** Bias − 1.96 standard deviations at this size; on the log scale of logarithms. */
    readonly lower: number;
    /** Bias + 1.96 standard deviations at this size; on the log scale of logarithms. */
    readonly upper: number;
  }[];
}

/** How bias and spread change with size; `line` is that of the differences on it. */
export function bySizeOf(
  name: BySize['size'],
  size: Float64Array,
  line: Line,
  people: People | undefined,
): BySize | undefined {
  // The mean of |z| of a standard normal z is √(2 / π).
  const sizes = columnOf(size.length, (row) => Math.abs(line.residuals[row]!) * Math.sqrt(Math.PI / 2));
  const spread = lineOf(size, sizes, people);
  if (!spread) return undefined;
  const bias = { intercept: line.intercept.value, slope: line.slope.value };
  const least = size.reduce((a, b) => Math.min(a, b));
  const most = size.reduce((a, b) => Math.max(a, b));
  return {
    size: name,
    bias,
    spread: { intercept: spread.intercept.value, slope: spread.slope },
    limits: [least, mean(size), most].map((at) => {
      const middle = bias.intercept + bias.slope * at;
      const half = NORMAL_95 * Math.max(0, spread.intercept.value + spread.slope.value * at);
      return { size: at, lower: middle - half, upper: middle + half };
    }),
  };
}
