import { Math, square } from '../quantity/maths.js';
import type { Caution } from '../answer/answer.js';
import { issue, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { chiSquareQuantile } from '../statistics/chi-square.js';
import { lineOf, type Line } from '../statistics/line.js';
import { noncentralTQuantile } from '../statistics/noncentral-t.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { normalityOf, type Normality } from '../statistics/normality.js';
import { quantileBounds } from '../statistics/order.js';
import { studentQuantile, studentT95, studentTail } from '../statistics/student-t.js';
import { accurateSum, columnOf, mean, quantile, squaresAbout, sumOf } from '../statistics/sums.js';
import { isList, numbersOf, peopleOf, type Numbers } from './lists.js';
import { caution, short } from './messages.js';
import { AT_LEAST, need } from '../answer/needs.js';
import { LEAST_PEOPLE_OF, LEAST_PAIRS_OF, ABOVE_ZERO_LOG } from './needs.js';

/** A number with its 95 % confidence interval. */
export interface WithConfidence {
  /** The point value, in the unit of the statistic. */
  readonly value: number;
  /** Lower end of the 95 % confidence interval. */
  readonly lower: number;
  /** Upper end of the 95 % confidence interval. */
  readonly upper: number;
}

/** A number with its 95 % confidence interval and standard error. */
export interface WithError extends WithConfidence {
  /** Standard error of `value`, in its unit. */
  readonly standardError: number;
}

/** A share of pairs with its 95 % confidence interval (Wilson). */
export interface Share extends WithConfidence {
  /** Number of pairs that count towards the share. */
  readonly count: number;
  /** Number of pairs the share is taken of. */
  readonly of: number;
}

/** A percentile with its order-statistic interval; an end is left out where there are too few pairs for it. */
export interface Percentile {
  /** The percentile, in the unit of the statistic. */
  readonly value: number;
  /** Lower end of its order-statistic interval; absent with too few pairs. */
  readonly lower?: number;
  /** Upper end of its order-statistic interval; absent with too few pairs. */
  readonly upper?: number;
}

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

/** How estimates agree with measurements; differences are estimated − measured. Plain JSON. */
export interface Agreement {
  /** `log`: bias and limits are ratios, estimated / measured; deviations and slopes are of logarithms. */
  readonly scale: 'difference' | 'log';
  /** Pairs with both values. */
  readonly pairs: number;
  /** People, where `person` was given. */
  readonly people?: number;
  /** Rows left out, by what they lack. */
  readonly missing: {
    /** Rows that lack only the measured value. */
    readonly measured: number;
    /** Rows that lack only the estimate. */
    readonly estimated: number;
    /** Rows that lack both values. */
    readonly both: number;
    /** Pairs without a person, where `person` was given. */
    readonly person?: number;
  };
  /** Mean difference; with `person`, the mean of the people’s means. */
  readonly bias: WithError;
  /** Standard deviation of the differences, each of one observation of one person; on the log scale of logarithms. */
  readonly standardDeviation: number;
  /** Its parts, where people were observed several times: between people, and within one person. */
  readonly components?: {
    /** Standard deviation of the people’s true mean differences. */
    readonly betweenPeople: number;
    /** Standard deviation of the differences of one person. */
    readonly withinPerson: number;
  };
  /** Limits of agreement, bias ± 1.96 standard deviations: where 95 % of differences are expected. */
  readonly limits: {
    /** Lower limit, with its 95 % confidence interval. */
    readonly lower: WithConfidence;
    /** Upper limit, with its 95 % confidence interval. */
    readonly upper: WithConfidence;
  };
  /**
   * The limits that one more difference, of a new person, keeps with 95 %: wider, because bias and spread are
   * estimates.
   */
  readonly predictionLimits: {
    /** Lower prediction limit, in the unit of the values; on the log scale a ratio. */
    readonly lower: number;
    /** Upper prediction limit, in the unit of the values; on the log scale a ratio. */
    readonly upper: number;
  };
  /**
   * The 2.5th and 97.5th percentile of the differences, whatever their distribution. Only for rows of different people.
   */
  readonly percentiles?: {
    /** The 2.5th percentile. */
    readonly lower: Percentile;
    /** The 97.5th percentile. */
    readonly upper: Percentile;
  };
  /** The line measured = intercept + slope × estimated: 0 and 1 where the estimates are calibrated. */
  readonly calibration?: {
    /** Intercept, in the unit of the values; on the log scale of logarithms. */
    readonly intercept: WithError;
    /** Slope: below 1 where high estimates are too high and low ones too low. */
    readonly slope: WithError;
  };
  /** Slope of the difference on size: 0 where the bias is the same at every size. */
  readonly proportionalBias?: WithError;
  /** How bias and spread change with size. */
  readonly bySize?: BySize;
  /** Test of the differences (with `person`: of the people’s means) for a normal distribution, from 20 on. */
  readonly normality?: Normality;
  /** Root mean square of the differences, in the unit of the values on either scale. */
  readonly rootMeanSquareError: number;
  /** Mean size of the differences, sign ignored, in the unit of the values on either scale. */
  readonly meanAbsoluteError: number;
  /** Lin’s concordance correlation: 1 where all pairs lie on the line of identity. No interval with `person`. */
  readonly concordance?: {
    /** The correlation, from −1 to 1. */
    readonly value: number;
    /** Lower end of its 95 % confidence interval; absent with several rows of a person, and where all pairs agree. */
    readonly lower?: number;
    /** Upper end of its 95 % confidence interval; absent where `lower` is. */
    readonly upper?: number;
  };
  /** Share of pairs whose difference is at most `acceptable` either way, on either scale. */
  readonly within: Share & {
    /** The largest difference that counts, in the unit of the values. */
    readonly acceptable: number;
  };
  /** Share of measurements inside the interval of their estimate, where estimates have one. */
  readonly coverage?: Share;
  /** Two one-sided tests of the bias against ± `margin`, where `margin` was given. */
  readonly equivalence?: {
    /** Your margin for the bias, either way. */
    readonly margin: number;
    /** Lower end of the 90 % interval of the bias. */
    readonly lower: number;
    /** Upper end of the 90 % interval of the bias. */
    readonly upper: number;
    /** The larger p value of the two tests. */
    readonly chance: number;
    /** Whether the 90 % interval lies inside the margin. */
    readonly equivalent: boolean;
  };
  /** Which assumptions these pairs do not meet. */
  readonly cautions: readonly Caution[];
}

/** Estimates for {@link agreement}: values, or a column answer with its intervals. */
export type Estimates =
  | Numbers
  | {
      /** The estimates, in the unit of the measurements. */
      readonly value: Numbers;
      /** Lower ends of their intervals, for `coverage`; not used without `upper`. */
      readonly lower?: Numbers;
      /** Upper ends of their intervals, for `coverage`; not used without `lower`. */
      readonly upper?: Numbers;
    };

/** Options of {@link agreement}. */
export interface AgreementOptions {
  /** Largest difference that is acceptable, in the unit of the values, from 0 to 1,000,000; 15 when left out. */
  readonly acceptable?: number | undefined;
  /** The person of each row, where people have several rows (two legs, repeated visits): a name or a number. */
  readonly person?: ArrayLike<string | number | null | undefined> | undefined;
  /** `log` for errors that grow with the value: limits are then ratios. `difference` when left out. */
  readonly scale?: 'difference' | 'log' | undefined;
  /**
   * What the difference is set against. `estimated` when left out, for estimates against measurements. `mean` for two
   * methods of measurement with errors of the same size: with unequal errors it shows a slope where no bias is.
   */
  readonly size?: 'estimated' | 'mean' | undefined;
  /**
   * The bias that makes no difference, for a test of equivalence: in the unit of the values, from 0 to 1,000,000; on the
   * log scale a ratio, from 1.
   */
  readonly margin?: number | undefined;
}

/** Clinically acceptable difference of a method-comparison trial [mmHg]. */
const ACCEPTABLE_MMHG = 15;
const LEAST_PAIRS = 3;
const FEW_PEOPLE = 10;
const SCALES = ['difference', 'log'] as const;
const SIZES = ['estimated', 'mean'] as const;

const around = (value: number, standardError: number, t: number): WithError => ({
  value,
  lower: value - t * standardError,
  upper: value + t * standardError,
  standardError,
});

/**
 * A share with the interval of Wilson, which stays within 0 and 1; `effective` is the count it is worth where rows
 * depend.
 */
export function share(count: number, of: number, effective = of): Share {
  const z2 = square(NORMAL_95);
  const value = count / of;
  const middle = (value + z2 / (2 * effective)) / (1 + z2 / effective);
  const half =
    (NORMAL_95 / (1 + z2 / effective)) *
    Math.sqrt((value * (1 - value)) / effective + z2 / (4 * effective * effective));
  return { value, lower: Math.max(0, middle - half), upper: Math.min(1, middle + half), count, of };
}

function concordanceOf(x: Float64Array, y: Float64Array, ofDifferentPeople: boolean): Agreement['concordance'] {
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

/** The people of the rows that are kept, numbered anew from 0. */
interface People {
  readonly of: Int32Array;
  readonly count: number;
  readonly rows: Float64Array;
}

/** Bias and spread with the limits and their intervals, before they are brought to the scale of the answer. */
interface Spread {
  readonly bias: WithError;
  readonly degreesOfFreedom: number;
  readonly standardDeviation: number;
  readonly components?: { readonly betweenPeople: number; readonly withinPerson: number };
  readonly limits: { readonly lower: WithConfidence; readonly upper: WithConfidence };
  readonly predictionLimits: { readonly lower: number; readonly upper: number };
  /** What a test for normality looks at: independent values. */
  readonly independent: Float64Array;
}

const limitsFrom = (bias: number, s: number, far: number, near: number): Spread['limits'] => ({
  lower: { value: bias - NORMAL_95 * s, lower: bias - far, upper: bias - near },
  upper: { value: bias + NORMAL_95 * s, lower: bias + near, upper: bias + far },
});

/** The factors of the last number of pairs: resampling and simulation ask for the same ones over and over. */
let exact: { readonly n: number; readonly far: number; readonly near: number } = { n: 0, far: NaN, near: NaN };

/** The ends of the exact interval of a limit, from the bias, in standard deviations. */
function exactFactors(n: number): typeof exact {
  if (exact.n !== n) {
    const of = (chance: number): number => noncentralTQuantile(chance, n - 1, NORMAL_95 * Math.sqrt(n)) / Math.sqrt(n);
    exact = { n, far: of(0.975), near: of(0.025) };
  }
  return exact;
}

/** Rows of different people: exact, because √n (limit − bias) / s is noncentral t. */
function spreadOfRows(differences: Float64Array): Spread {
  const n = differences.length;
  const bias = mean(differences);
  const s = Math.sqrt(squaresAbout(differences, bias) / (n - 1));
  const t = studentT95(n - 1);
  const { far, near } = exactFactors(n);
  const reach = t * s * Math.sqrt(1 + 1 / n);
  return {
    bias: around(bias, s / Math.sqrt(n), t),
    degreesOfFreedom: n - 1,
    standardDeviation: s,
    limits: limitsFrom(bias, s, far * s, near * s),
    predictionLimits: { lower: bias - reach, upper: bias + reach },
    independent: differences,
  };
}

/** Several rows of a person: components by unweighted means, limits by the method of variance estimates recovery. */
function spreadOfPeople(differences: Float64Array, { of, count, rows }: People): Spread {
  const n = differences.length;
  const sums = new Float64Array(count);
  for (let row = 0; row < n; row += 1) sums[of[row]!]! += differences[row]!;
  const means = sums.map((sum, who) => sum / rows[who]!);
  const bias = mean(means);
  const ofMeans = squaresAbout(means, bias) / (count - 1);
  const within = sumOf(n, (row) => square(differences[row]! - means[of[row]!]!)) / (n - count);
  const inverse = mean(rows.map((number) => 1 / number));
  const parts = [
    [ofMeans, count - 1],
    [(1 - inverse) * within, n - count],
  ] as const;
  const total = ofMeans + (1 - inverse) * within;
  const s = Math.sqrt(total);
  const recovered = (chance: number): number =>
    Math.sqrt(
      accurateSum(parts.map(([part, degrees]) => square(part * (degrees / chiSquareQuantile(chance, degrees) - 1)))),
    );
  const standardError = Math.sqrt(ofMeans / count);
  const t = studentT95(count - 1);
  const above = Math.sqrt(total + recovered(0.025)) - s;
  const below = s - Math.sqrt(Math.max(0, total - recovered(0.975)));
  const far = NORMAL_95 * s + Math.sqrt(square(t * standardError) + square(NORMAL_95 * above));
  const near = NORMAL_95 * s - Math.sqrt(square(t * standardError) + square(NORMAL_95 * below));
  // Degrees of freedom of a sum of variances (Satterthwaite), the mean of the people counted in.
  const withMean = [[ofMeans * (1 + 1 / count), count - 1], parts[1]] as const;
  const next = withMean[0][0] + withMean[1][0];
  const degrees = square(next) / accurateSum(withMean.map(([part, own]) => square(part) / own));
  const reach = next > 0 ? studentQuantile(0.975, degrees) * Math.sqrt(next) : 0;
  return {
    bias: around(bias, standardError, t),
    degreesOfFreedom: count - 1,
    standardDeviation: s,
    components: {
      betweenPeople: Math.sqrt(Math.max(0, ofMeans - inverse * within)),
      withinPerson: Math.sqrt(within),
    },
    limits: limitsFrom(bias, s, far, near),
    predictionLimits: { lower: bias - reach, upper: bias + reach },
    independent: means,
  };
}

/** A percentile (type 7) and the order statistics that bound it with at least 95 %. */
const percentileOf = (sorted: Float64Array, p: number): Percentile => ({
  value: quantile(sorted, p),
  ...quantileBounds(sorted, p),
});

/** What a count is worth where the rows of a person go together: p (1 − p) over the variance between people. */
function effectiveRows(hits: Uint8Array, count: number, { of, count: people, rows }: People): number {
  const p = count / hits.length;
  if (count === 0 || count === hits.length) return people;
  const off = rows.map((number) => -p * number);
  for (let row = 0; row < hits.length; row += 1) off[of[row]!]! += hits[row]!;
  const variance = ((people / (people - 1)) * accurateSum(off.map(square))) / square(hits.length);
  return Math.min(hits.length, (p * (1 - p)) / variance);
}

function bySizeOf(
  size: Float64Array,
  name: BySize['size'],
  line: Line,
  people: People | undefined,
): BySize | undefined {
  // The mean of |z| of a standard normal z is √(2 / π).
  const spread = lineOf(
    size,
    columnOf(size.length, (row) => Math.abs(line.residuals[row]!) * Math.sqrt(Math.PI / 2)),
    people,
  );
  if (!spread) return undefined;
  let [least, most] = [Infinity, -Infinity];
  for (let row = 0; row < size.length; row += 1) {
    least = Math.min(least, size[row]!);
    most = Math.max(most, size[row]!);
  }
  return {
    size: name,
    bias: { intercept: line.intercept, slope: line.slope },
    spread: {
      intercept: spread.intercept,
      slope: around(spread.slope, spread.slopeError, studentT95(spread.degreesOfFreedom)),
    },
    limits: [least, mean(size), most].map((at) => {
      const middle = line.intercept + line.slope * at;
      const half = NORMAL_95 * Math.max(0, spread.intercept + spread.slope * at);
      return { size: at, lower: middle - half, upper: middle + half };
    }),
  };
}

const excludesZero = ({ lower, upper }: WithConfidence): boolean => lower > 0 || upper < 0;

/**
 * How well estimates agree with measurements of the same people.
 *
 * Differences d are estimated − measured, n pairs:
 * - bias d̄ with its interval, d̄ ± t s / √n; s the standard deviation of d;
 * - limits of agreement d̄ ± 1.96 s with exact intervals: √n (limit − d̄) / s is noncentral t;
 * - prediction limits d̄ ± t s √(1 + 1 / n); percentiles of d with order-statistic intervals;
 * - calibration: the line of the measurement on the estimate, 0 + 1 × estimate where calibrated;
 * - proportional bias: the slope of d on the estimate (`size: 'mean'`: on the mean of each pair), and limits by size:
 *   the spread at a size is √(π / 2) × the line of |residual| on size;
 * - root mean square error, mean absolute error, Lin’s concordance correlation;
 * - the share of pairs within `acceptable` (±15 mmHg when left out: the difference a method-comparison trial
 *   took as clinically acceptable), and, where the estimates have intervals, the share of measurements inside them;
 *   both with Wilson’s interval.
 *
 * A row where either value is missing (NaN, null, undefined, not finite) is left out and counted in `missing`.
 * The intervals take differences as normal; `normality` and `cautions` say where they are not. Without `person`, rows
 * are taken as different people. With `person`, several rows of one person count as such: the bias is the mean of the
 * people’s means, the variance is that between people and within one person (one-way, unweighted means), the limits
 * have the intervals of the method of variance estimates recovery (MOVER), and slopes the errors of a jackknife by
 * person. On `scale: 'log'` d is ln estimated − ln measured; bias, limits and percentiles are given as ratios.
 * A part that these pairs cannot support (a slope where all estimates are equal) is left out.
 *
 * - Evidence: `published` methods.
 * - Source: Lancet 1986;327(8476):307–310; Stat Methods Med Res 1999;8(2):135–160; Biometrics 1989;45(1):255–268;
 *   Stat Methods Med Res 2013;22(6):630–642 (`person`; from memory).
 *
 * @param measured - the measurements
 * @param estimated - the estimates, as a list of the same length or as an answer of `columns`
 * @param options - `acceptable`, in the unit of the values; `person`, `scale`, `size`, `margin`
 * @returns the agreement, plain JSON.
 * @throws InputError for lists that differ in length, for fewer than 3 pairs or people, and for values of 0 or below on a log scale.
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
export function agreement(measured: Numbers, estimated: Estimates, options: AgreementOptions = {}): Agreement {
  const issues: InputIssue[] = [];
  const reader = new Reader(options, ['options'], issues);
  const given = reader.raw('acceptable');
  const bounds = { name: 'largest acceptable difference', unit: '1', min: 0, max: 1e6 } as const;
  const acceptable = given === undefined ? ACCEPTABLE_MMHG : (reader.judge('acceptable', bounds, given) ?? NaN);
  const scale = reader.optionalChoice('scale', SCALES) ?? 'difference';
  const sizeName = reader.optionalChoice('size', SIZES) ?? 'estimated';
  const log = scale === 'log';
  const margin = reader.optionalNumber('margin', {
    name: 'margin of equivalence',
    unit: '1',
    min: log ? 1 : 0,
    max: 1e6,
  });
  const givenPeople = reader.raw('person');
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
  const who = givenPeople === undefined ? undefined : peopleOf(givenPeople, 'person', issues, actual.length);

  const missing = { measured: 0, estimated: 0, both: 0, ...(who && { person: 0 }) };
  const keep = new Int32Array(issues.length === 0 ? actual.length : 0);
  let n = 0;
  for (let row = 0; row < keep.length; row += 1) {
    const [a, e] = [actual[row]!, guess[row]!];
    if (a !== a || e !== e) missing[a !== a ? (e !== e ? 'both' : 'measured') : 'estimated'] += 1;
    else if (who && who[row]! < 0) missing.person! += 1;
    else keep[n++] = row;
  }
  const kept = keep.subarray(0, n);
  const take = (column: Float64Array): Float64Array => columnOf(n, (row) => column[kept[row]!]!);
  const x = take(actual);
  const y = take(guess);
  const people = who && peopleKept(kept, who);
  if (issues.length === 0) {
    if (n < LEAST_PAIRS) {
      issues.push(issue('wrong-relation', ['measured'], need(LEAST_PAIRS_OF, { least: LEAST_PAIRS }), `${n}`));
    } else if (people && people.count < LEAST_PAIRS) {
      issues.push(
        issue('wrong-relation', ['person'], need(LEAST_PEOPLE_OF, { least: LEAST_PAIRS }), `${people.count}`),
      );
    }
    if (log) {
      for (const [name, list] of [['measured', x] as const, ['estimated', y] as const]) {
        const wrong = list.findIndex((number) => !(number > 0));
        if (wrong >= 0) {
          issues.push(issue('out-of-range', [name, kept[wrong]!], ABOVE_ZERO_LOG, `${list[wrong]}`));
        }
      }
    }
  }
  reader.done();

  const differences = columnOf(n, (row) => y[row]! - x[row]!);
  const [onX, onY] = log ? [columnOf(n, (row) => Math.log(x[row]!)), columnOf(n, (row) => Math.log(y[row]!))] : [x, y];
  const onScale = log ? columnOf(n, (row) => onY[row]! - onX[row]!) : differences;
  // One row of each person is rows of different people.
  const repeated = people && people.count < n ? people : undefined;
  const spread = repeated ? spreadOfPeople(onScale, repeated) : spreadOfRows(onScale);
  const back = (number: number): number => (log ? Math.exp(number) : number);
  const backWith = <T extends WithConfidence>(of: T): T => ({
    ...of,
    value: back(of.value),
    lower: back(of.lower),
    upper: back(of.upper),
  });
  const fitted = ({ intercept, slope, interceptError, slopeError, degreesOfFreedom }: Line) => {
    const t = studentT95(degreesOfFreedom);
    return { intercept: around(intercept, interceptError, t), slope: around(slope, slopeError, t) };
  };
  const size = sizeName === 'estimated' ? onY : columnOf(n, (row) => (onY[row]! + onX[row]!) / 2);
  const calibrated = lineOf(onY, onX, repeated);
  const calibration = calibrated && fitted(calibrated);
  const line = lineOf(size, onScale, repeated);
  const proportionalBias = line && fitted(line).slope;
  const bySize = line && bySizeOf(size, sizeName, line, repeated);
  const normality = normalityOf(spread.independent);
  const concordance = concordanceOf(x, y, !repeated);
  const sorted = repeated ? undefined : onScale.slice().sort();
  const covered = lowers && uppers && coverageOf(x, take(lowers), take(uppers), repeated);

  const cautions: Caution[] = [];
  if (spread.degreesOfFreedom + 1 < FEW_PEOPLE) {
    cautions.push(caution('caution', 'few-people', { people: spread.degreesOfFreedom + 1 }));
  }
  if (normality && normality.chance < 0.05) {
    const { skewness, excessKurtosis } = normality;
    const values = { skewness: short(skewness), excessKurtosis: short(excessKurtosis) };
    cautions.push(caution('caution', 'differences-not-normal', values));
  }
  if (bySize && excludesZero(bySize.spread.slope)) {
    cautions.push(caution('caution', 'spread-changes-with-size', { slope: short(bySize.spread.slope.value) }));
  }
  if (proportionalBias && excludesZero(proportionalBias)) {
    cautions.push(caution('caution', 'bias-changes-with-size', { slope: short(proportionalBias.value) }));
  }
  const percentile = (p: number): Percentile => {
    const { value: middle, ...bounds } = percentileOf(sorted!, p);
    const of = Object.entries(bounds).map(([name, end]) => [name, back(end)]);
    return { value: back(middle), ...(Object.fromEntries(of) as Omit<Percentile, 'value'>) };
  };
  return {
    scale,
    pairs: n,
    ...(people && { people: people.count }),
    missing,
    bias: backWith(spread.bias),
    standardDeviation: spread.standardDeviation,
    ...(spread.components && { components: spread.components }),
    limits: { lower: backWith(spread.limits.lower), upper: backWith(spread.limits.upper) },
    predictionLimits: { lower: back(spread.predictionLimits.lower), upper: back(spread.predictionLimits.upper) },
    ...(sorted && { percentiles: { lower: percentile(0.025), upper: percentile(0.975) } }),
    ...(calibration && { calibration }),
    ...(proportionalBias && { proportionalBias }),
    ...(bySize && { bySize }),
    ...(normality && { normality }),
    rootMeanSquareError: Math.sqrt(squaresAbout(differences, 0) / n),
    meanAbsoluteError: sumOf(n, (row) => Math.abs(differences[row]!)) / n,
    ...(concordance && { concordance }),
    within: { ...shareOf(n, (row) => Math.abs(differences[row]!) <= acceptable, repeated), acceptable },
    ...(covered && { coverage: covered }),
    ...(margin !== undefined && { equivalence: equivalenceOf(spread, margin, log) }),
    cautions,
  };
}

/** The people of the rows that are kept, numbered anew from 0. */
function peopleKept(kept: Int32Array, who: Int32Array): People {
  // Who there is has a number below that of the rows.
  const numbers = new Int32Array(who.length).fill(-1);
  const of = new Int32Array(kept.length);
  let count = 0;
  for (let row = 0; row < kept.length; row += 1) {
    const known = who[kept[row]!]!;
    if (numbers[known]! < 0) numbers[known] = count++;
    of[row] = numbers[known]!;
  }
  const rows = new Float64Array(count);
  for (let row = 0; row < of.length; row += 1) rows[of[row]!]! += 1;
  return { of, count, rows };
}

/** The share of rows that hit, and its interval. */
function shareOf(rows: number, hit: (row: number) => boolean, people: People | undefined): Share {
  const hits = new Uint8Array(rows);
  let count = 0;
  for (let row = 0; row < rows; row += 1) {
    if (!hit(row)) continue;
    hits[row] = 1;
    count += 1;
  }
  return share(count, rows, people && people.count > 1 ? effectiveRows(hits, count, people) : undefined);
}

/** The share of measurements inside their interval, among the rows that have one. */
function coverageOf(
  x: Float64Array,
  lower: Float64Array,
  upper: Float64Array,
  people: People | undefined,
): Share | undefined {
  const rows = new Int32Array(x.length);
  let count = 0;
  for (let row = 0; row < x.length; row += 1) if (lower[row]! <= upper[row]!) rows[count++] = row;
  if (count === 0) return undefined;
  const covered = (index: number): boolean => {
    const row = rows[index]!;
    return x[row]! >= lower[row]! && x[row]! <= upper[row]!;
  };
  return shareOf(count, covered, people && peopleKept(rows.subarray(0, count), people.of));
}

function equivalenceOf(
  { bias: { value, standardError }, degreesOfFreedom }: Spread,
  margin: number,
  log: boolean,
): NonNullable<Agreement['equivalence']> {
  const bound = log ? Math.log(margin) : margin;
  const back = (number: number): number => (log ? Math.exp(number) : number);
  const half = studentQuantile(0.95, degreesOfFreedom) * standardError;
  const room = bound - Math.abs(value);
  const chance = standardError > 0 ? studentTail(room / standardError, degreesOfFreedom) : room > 0 ? 0 : 1;
  return { margin, lower: back(value - half), upper: back(value + half), chance, equivalent: chance < 0.05 };
}

/**
 * How many pairs of different people make the limits of agreement as sure as you want.
 *
 * Formula: the smallest n with t s √(1 / n + 1.96² / (2 (n − 1))) ≤ the half-width; t at 97.5 % with n − 1 degrees.
 *
 * - Evidence: `published` method.
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
export const pairsForLimits = /* @__PURE__ */ withInput(function pairsForLimits(input: {
  /** Standard deviation that you expect of the differences, from 0.000001 to 1,000,000. */
  readonly standardDeviation: number;
  /** Half-width that you want of the 95 % interval of a limit, in the same unit. */
  readonly halfWidth: number;
}): number {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  const unit = { unit: '1', min: 1e-6, max: 1e6 } as const;
  const s = reader.number('standardDeviation', { name: 'standard deviation of the differences', ...unit });
  const wanted = reader.number('halfWidth', { name: 'half-width of the interval of a limit', ...unit });
  const half = (n: number): number => studentT95(n - 1) * s * Math.sqrt(1 / n + square(NORMAL_95) / (2 * (n - 1)));
  const most = 1_000_000;
  if (issues.length === 0 && half(most) > wanted) {
    issues.push(
      issue('out-of-range', ['halfWidth'], need(AT_LEAST, { least: Number(half(most).toPrecision(2)) }), `${wanted}`),
    );
  }
  reader.done();
  let [low, high] = [LEAST_PAIRS, most];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (half(middle) <= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
});
