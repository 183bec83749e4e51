import { Math, square } from '../quantity/maths.js';
import { NORMAL_95 } from '../answer/answer.js';
import { describe, issue, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { accurateSum, leastSquares, mean } from './least-squares.js';
import { studentT95 } from './student-t.js';

/** A number with its 95 % confidence interval. */
export interface WithConfidence {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
}

/** A share of pairs with its 95 % confidence interval (Wilson). */
export interface Share extends WithConfidence {
  readonly count: number;
  readonly of: number;
}

/** How estimates agree with measurements; differences are estimated − measured. Plain JSON. */
export interface Agreement {
  /** Pairs with both values. */
  readonly pairs: number;
  /** Rows left out, by what they lack. */
  readonly missing: { readonly measured: number; readonly estimated: number; readonly both: number };
  /** Mean difference. */
  readonly bias: WithConfidence & { readonly standardError: number };
  /** Standard deviation of the differences. */
  readonly standardDeviation: number;
  /** Bias ± 1.96 standard deviations: where 95 % of differences are expected. */
  readonly limits: { readonly lower: WithConfidence; readonly upper: WithConfidence };
  /** Slope of the difference on the mean of the pair: 0 where the bias is the same at every size. */
  readonly proportionalBias?: WithConfidence & { readonly standardError: number };
  readonly rootMeanSquareError: number;
  readonly meanAbsoluteError: number;
  /** Lin’s concordance correlation: 1 where all pairs lie on the line of identity. */
  readonly concordance?: { readonly value: number; readonly lower?: number; readonly upper?: number };
  /** Share of pairs whose difference is at most `acceptable` either way. */
  readonly within: Share & { readonly acceptable: number };
  /** Share of measurements inside the interval of their estimate, where estimates have one. */
  readonly coverage?: Share;
}

/** Estimates for {@link agreement}: values, or a column answer with its intervals. */
export type Estimates =
  | ArrayLike<number | null | undefined>
  | {
      readonly value: ArrayLike<number | null | undefined>;
      readonly lower?: ArrayLike<number | null | undefined>;
      readonly upper?: ArrayLike<number | null | undefined>;
    };

/** What {@link agreement} may be told. */
export interface AgreementOptions {
  /** Largest difference that is acceptable; 15 mmHg when left out. */
  readonly acceptable?: number;
}

/** Clinically acceptable difference of a method-comparison trial [mmHg]. */
const ACCEPTABLE_MMHG = 15;
const LEAST_PAIRS = 3;
const MOST_ROWS = 50_000_000;
const LARGEST = 1e9;

const isList = (value: unknown): value is ArrayLike<unknown> =>
  Array.isArray(value) || (ArrayBuffer.isView(value) && !(value instanceof DataView));

/** A list as numbers, NaN for what is missing or not finite; an issue for what is no list. */
function numbersOf(value: unknown, name: string, issues: InputIssue[], rows?: number): number[] {
  const expected = `a list of numbers${rows === undefined ? '' : `, as long as measured (${rows})`}`;
  try {
    if (isList(value) && value.length <= MOST_ROWS && (rows === undefined || value.length === rows)) {
      // By position: an iterator of the caller’s own may never end.
      const numbers = Array.from({ length: value.length }, (_, at) => {
        const item = value[at];
        return typeof item === 'number' && Number.isFinite(item) ? item : NaN;
      });
      const none = (item: unknown): boolean => typeof item === 'number' || item === null || item === undefined;
      const row = numbers.findIndex((number, at) => Math.abs(number) > LARGEST || !none(value[at]));
      if (row >= 0 && !none(value[row])) {
        issues.push(issue('wrong-type', [name, row], 'a number, or null where it is missing', describe(value[row])));
      } else if (row >= 0) {
        const most = `from ${-LARGEST} to ${LARGEST}`;
        issues.push(issue('out-of-range', [name, row], most, String(numbers[row])));
      }
      return numbers;
    }
    issues.push(issue('wrong-type', [name], expected, isList(value) ? `a list of ${value.length}` : 'something else'));
  } catch {
    issues.push(issue('unreadable', [name], expected, 'an error'));
  }
  return [];
}

const around = (value: number, standardError: number, t: number) => ({
  value,
  lower: value - t * standardError,
  upper: value + t * standardError,
});

/** A share with the interval of Wilson, which stays within 0 and 1. */
export function share(count: number, of: number): Share {
  const z2 = square(NORMAL_95);
  const value = count / of;
  const middle = (value + z2 / (2 * of)) / (1 + z2 / of);
  const half = (NORMAL_95 / (1 + z2 / of)) * Math.sqrt((value * (1 - value)) / of + z2 / (4 * of * of));
  return { value, lower: Math.max(0, middle - half), upper: Math.min(1, middle + half), count, of };
}

const squares = (values: readonly number[], middle: number): number =>
  accurateSum(values.map((value) => square(value - middle)));

function concordanceOf(x: readonly number[], y: readonly number[]): Agreement['concordance'] {
  const n = x.length;
  const middleX = mean(x);
  const middleY = mean(y);
  const varianceX = squares(x, middleX) / n;
  const varianceY = squares(y, middleY) / n;
  const covariance = accurateSum(x.map((value, row) => (value - middleX) * (y[row]! - middleY))) / n;
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
  if (!(variance >= 0 && Number.isFinite(variance))) return { value };
  const z = Math.atanh(value);
  const half = NORMAL_95 * Math.sqrt(variance);
  return { value, lower: Math.tanh(z - half), upper: Math.tanh(z + half) };
}

/**
 * How well estimates agree with measurements of the same people.
 *
 * Differences d are estimated − measured, n pairs:
 * - bias d̄ with its interval, d̄ ± t s / √n; s the standard deviation of d;
 * - limits of agreement d̄ ± 1.96 s, each ± t s √(1 / n + 1.96² / (2 (n − 1)));
 * - proportional bias: the least-squares slope of d on the mean of each pair;
 * - root mean square error, mean absolute error, Lin’s concordance correlation;
 * - the share of pairs within `acceptable` (±15 mmHg when left out: the difference a method-comparison trial
 *   took as clinically acceptable), and, where the estimates have intervals, the share of measurements inside them;
 *   both with Wilson’s interval.
 *
 * A row where either value is missing (NaN, null, undefined, not finite) is left out and counted in `missing`.
 * The intervals take differences as normal and rows as different people. A part that these pairs cannot
 * carry (a slope where all means are equal) is left out.
 *
 * - Evidence: `published` methods.
 * - Source: Lancet 1986;327(8476):307–310; Stat Methods Med Res 1999;8(2):135–160; Biometrics 1989;45(1):255–268.
 *
 * @param measured - the measurements
 * @param estimated - the estimates, as a list of the same length or as an answer of `columns`
 * @param options - `acceptable`, in the unit of the values
 * @returns the agreement, plain JSON.
 * @throws InputError for lists that differ in length, and for fewer than 3 pairs.
 *
 * @example
 * ```ts
 * import { agreement } from 'cuffwork/study';
 * const { bias, missing, within } = agreement([150, 160, 170, NaN], [155, 158, 190, 140]);
 * bias.value.toFixed(2); // => '7.67'
 * within.count; // => 2
 * missing.measured; // => 1
 * ```
 */
export function agreement(
  measured: ArrayLike<number | null | undefined>,
  estimated: Estimates,
  options: AgreementOptions = {},
): Agreement {
  const issues: InputIssue[] = [];
  const reader = new Reader(options, ['options'], issues);
  const given = reader.raw('acceptable');
  const bounds = { name: 'largest acceptable difference', unit: '1', min: 0, max: 1e6 } as const;
  const acceptable = given === undefined ? ACCEPTABLE_MMHG : (reader.judge('acceptable', bounds, given) ?? NaN);
  const actual = numbersOf(measured, 'measured', issues);
  let value: unknown = estimated;
  let lower: unknown;
  let upper: unknown;
  try {
    if (!isList(estimated) && typeof estimated === 'object' && estimated !== null)
      ({ value, lower, upper } = estimated);
  } catch {
    value = undefined;
  }
  const guess = numbersOf(value, 'estimated', issues, actual.length);
  const ends = lower === undefined || upper === undefined ? undefined : ([lower, upper] as const);
  const lowers = ends && numbersOf(ends[0], 'estimated.lower', issues, actual.length);
  const uppers = ends && numbersOf(ends[1], 'estimated.upper', issues, actual.length);

  const x: number[] = [];
  const y: number[] = [];
  const missing = { measured: 0, estimated: 0, both: 0 };
  let inside = 0;
  let withInterval = 0;
  if (issues.length === 0) {
    actual.forEach((a, row) => {
      const e = guess[row]!;
      if (Number.isNaN(a) || Number.isNaN(e)) {
        missing[Number.isNaN(a) ? (Number.isNaN(e) ? 'both' : 'measured') : 'estimated'] += 1;
        return;
      }
      x.push(a);
      y.push(e);
      const low = lowers?.[row] ?? NaN;
      const high = uppers?.[row] ?? NaN;
      if (low <= high) {
        withInterval += 1;
        if (a >= low && a <= high) inside += 1;
      }
    });
    if (x.length < LEAST_PAIRS) {
      issues.push(
        issue('wrong-relation', ['measured'], `at least ${LEAST_PAIRS} pairs with both values`, `${x.length}`),
      );
    }
  }
  reader.done();

  const n = x.length;
  const differences = y.map((e, row) => e - x[row]!);
  const bias = mean(differences);
  const standardDeviation = Math.sqrt(squares(differences, bias) / (n - 1));
  const standardError = standardDeviation / Math.sqrt(n);
  const t = studentT95(n - 1);
  const limitError = standardDeviation * Math.sqrt(1 / n + square(NORMAL_95) / (2 * (n - 1)));
  const line = leastSquares([y.map((e, row) => (e + x[row]!) / 2)], differences);
  const concordance = concordanceOf(x, y);
  return {
    pairs: n,
    missing,
    bias: { ...around(bias, standardError, t), standardError },
    standardDeviation,
    limits: {
      lower: around(bias - NORMAL_95 * standardDeviation, limitError, t),
      upper: around(bias + NORMAL_95 * standardDeviation, limitError, t),
    },
    ...(!('why' in line) && {
      proportionalBias: {
        ...around(line.slopes[0]!, line.slopeErrors[0]!, studentT95(n - 2)),
        standardError: line.slopeErrors[0]!,
      },
    }),
    rootMeanSquareError: Math.sqrt(accurateSum(differences.map((d) => d * d)) / n),
    meanAbsoluteError: accurateSum(differences.map(Math.abs)) / n,
    ...(concordance && { concordance }),
    within: { ...share(differences.filter((d) => Math.abs(d) <= acceptable).length, n), acceptable },
    ...(withInterval > 0 && { coverage: share(inside, withInterval) }),
  };
}
