import { Math } from '../quantity/maths.js';
import type { Caution } from '../answer/answer.js';
import { issue, type InputIssue } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { concordanceOf } from '../statistics/concordance.js';
import { excludes, mapped, type WithConfidence, type WithError } from '../statistics/interval.js';
import { spreadOfPeople, spreadOfRows, type DifferenceSpread } from '../statistics/limits-of-agreement.js';
import { lineOf } from '../statistics/line.js';
import { normalityOf, type Normality } from '../statistics/normality.js';
import { quantileBounds } from '../statistics/order.js';
import { peopleOfRows, type People } from '../statistics/people.js';
import { shareOf, type Share } from '../statistics/shares.js';
import { studentQuantile, studentTail } from '../statistics/student-t.js';
import { columnOf, quantile, squaresAbout, sumOf } from '../statistics/sums.js';
import { bySizeOf, type BySize } from './agreement-by-size.js';
import { caution, fewPeople, notNormal, twoDigits } from './cautions.js';
import { isList, numbersOf, pairRows, peopleOf, reportNoLogarithm, type Names, type Numbers } from './lists.js';
import { LEAST_PAIRS_OF, LEAST_PEOPLE_OF } from './needs.js';
import { readScale } from './options.js';

/** A percentile with its order-statistic interval; an end is left out where there are too few pairs for it. */
export interface Percentile {
  /** The percentile, in the unit of the statistic. */
  readonly value: number;
  /** Lower end of its order-statistic interval; absent with too few pairs. */
  readonly lower?: number;
  /** Upper end of its order-statistic interval; absent with too few pairs. */
  readonly upper?: number;
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
  /** Concordance correlation: 1 where all pairs lie on the line of identity. No interval with `person`. */
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
  readonly person?: Names | undefined;
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
const SIZES = ['estimated', 'mean'] as const;

/** The share of measurements inside their interval, among the rows that have one. */
function coverageOf(
  x: Float64Array,
  lower: Float64Array,
  upper: Float64Array,
  people: People | undefined,
): Share | undefined {
  const rows = new Int32Array(x.length).map((_, row) => row).filter((row) => lower[row]! <= upper[row]!);
  if (rows.length === 0) return undefined;
  const covered = (index: number): boolean => {
    const row = rows[index]!;
    return x[row]! >= lower[row]! && x[row]! <= upper[row]!;
  };
  return shareOf(rows.length, covered, people && peopleOfRows(rows, people.of));
}

function equivalenceOf(
  { bias: { value, standardError }, degreesOfFreedom }: DifferenceSpread,
  margin: number,
  log: boolean,
): NonNullable<Agreement['equivalence']> {
  const half = studentQuantile(0.95, degreesOfFreedom) * standardError;
  const room = (log ? Math.log(margin) : margin) - Math.abs(value);
  const chance = standardError > 0 ? studentTail(room / standardError, degreesOfFreedom) : room > 0 ? 0 : 1;
  const [lower, upper] = [value - half, value + half].map((end) => (log ? Math.exp(end) : end)) as [number, number];
  return { margin, lower, upper, chance, equivalent: chance < 0.05 };
}

/** The lists of estimates: their values, and the ends of their intervals. */
function listsOf(estimated: unknown): { readonly value?: unknown; readonly lower?: unknown; readonly upper?: unknown } {
  if (isList(estimated) || typeof estimated !== 'object' || estimated === null) return { value: estimated };
  try {
    const { value, lower, upper } = estimated as Exclude<Estimates, Numbers>;
    return { value, lower, upper };
  } catch {
    return {};
  }
}

/** The pairs with both values, and the options. */
function readPairs(measured: Numbers, estimated: Estimates, options: AgreementOptions) {
  const issues: InputIssue[] = [];
  const reader = new Reader(options, ['options'], issues);
  const bounds = { name: 'largest acceptable difference', unit: '1', min: 0, max: 1e6 } as const;
  const acceptable = reader.optionalNumber('acceptable', bounds) ?? ACCEPTABLE_MMHG;
  const scale = readScale(reader);
  const size = reader.optionalChoice('size', SIZES) ?? 'estimated';
  const log = scale === 'log';
  const least = log ? 1 : 0;
  const margin = reader.optionalNumber('margin', { name: 'margin of equivalence', unit: '1', min: least, max: 1e6 });
  const person = reader.raw('person');
  const actual = numbersOf(measured, ['measured'], issues);
  const { value, lower, upper } = listsOf(estimated);
  const list = (of: unknown, ...path: string[]) => numbersOf(of, path, issues, actual.length);
  const guess = list(value, 'estimated');
  const ends =
    lower !== undefined && upper !== undefined
      ? ([list(lower, 'estimated', 'lower'), list(upper, 'estimated', 'upper')] as const)
      : undefined;
  const who = peopleOf(person, ['person'], issues, actual.length);
  if (!reader.fine) reader.done();

  const { kept, missing } = pairRows(actual, guess, who);
  const people = who && peopleOfRows(kept, who);
  if (kept.length < LEAST_PAIRS) {
    issues.push(issue('wrong-relation', ['measured'], need(LEAST_PAIRS_OF, { least: LEAST_PAIRS }), `${kept.length}`));
  } else if (people && people.count < LEAST_PAIRS) {
    issues.push(issue('wrong-relation', ['person'], need(LEAST_PEOPLE_OF, { least: LEAST_PAIRS }), `${people.count}`));
  }
  if (log) {
    reportNoLogarithm(actual, kept, ['measured'], issues);
    reportNoLogarithm(guess, kept, ['estimated'], issues);
  }
  reader.done();
  const take = (column: Float64Array): Float64Array => columnOf(kept.length, (row) => column[kept[row]!]!);
  return {
    scale,
    log,
    size,
    acceptable,
    margin,
    people,
    missing,
    x: take(actual),
    y: take(guess),
    ends: ends && ([take(ends[0]), take(ends[1])] as const),
  };
}

/** Which assumptions the pairs do not meet. */
function cautionsOf(
  { normality, bySize, proportionalBias }: Pick<Agreement, 'normality' | 'bySize' | 'proportionalBias'>,
  people: number,
): Caution[] {
  const changes = (code: 'spread-changes-with-size' | 'bias-changes-with-size', slope: WithConfidence | undefined) =>
    slope && excludes(slope, 0) ? [caution('caution', code, { slope: twoDigits(slope.value) })] : [];
  return [
    ...fewPeople(people),
    ...notNormal('differences-not-normal', normality),
    ...changes('spread-changes-with-size', bySize?.spread.slope),
    ...changes('bias-changes-with-size', proportionalBias),
  ];
}

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
 * - root mean square error, mean absolute error, concordance correlation;
 * - the share of pairs within `acceptable` (±15 mmHg when left out: the difference a method-comparison trial
 *   took as clinically acceptable), and, where the estimates have intervals, the share of measurements inside them;
 *   both with the score interval of 1927.
 *
 * A row where either value is missing (NaN, null, undefined, not finite) is left out and counted in `missing`.
 * The intervals take differences as normal; `normality` and `cautions` say where they are not. Without `person`, rows
 * are taken as different people. With `person`, several rows of one person count as such: the bias is the mean of the
 * people’s means, the variance is that between people and within one person (one-way, unweighted means), the limits
 * have the intervals of the method of variance estimates recovery (MOVER), and slopes the errors of a jackknife by
 * person. On `scale: 'log'` d is ln estimated − ln measured; bias, limits and percentiles are given as ratios.
 * A part that these pairs cannot support (a slope where all estimates are equal) is left out.
 *
 * - Evidence: `unconfirmed`: published methods, formulas from memory.
 * - Source: Lancet 1986;327(8476):307–310; Stat Methods Med Res 1999;8(2):135–160; Biometrics 1989;45(1):255–268;
 *   Stat Methods Med Res 2013;22(6):630–642 (`person`).
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
  const pairs = readPairs(measured, estimated, options);
  const { x, y, scale, log, acceptable, margin, people, missing } = pairs;
  const n = x.length;
  // One row of each person is rows of different people.
  const repeated = people && people.count < n ? people : undefined;
  const differences = columnOf(n, (row) => y[row]! - x[row]!);
  const [onX, onY] = log ? [x.map(Math.log), y.map(Math.log)] : [x, y];
  const onScale = log ? columnOf(n, (row) => onY[row]! - onX[row]!) : differences;
  const back = (number: number): number => (log ? Math.exp(number) : number);

  const spread = repeated ? spreadOfPeople(onScale, repeated) : spreadOfRows(onScale);
  const { bias, standardDeviation, components, limits, predictionLimits } = spread;
  const sorted = repeated ? undefined : onScale.slice().sort();
  const percentile = (p: number): Percentile => {
    const { lower, upper } = quantileBounds(sorted!, p);
    return {
      value: back(quantile(sorted!, p)),
      ...(lower !== undefined && { lower: back(lower) }),
      ...(upper !== undefined && { upper: back(upper) }),
    };
  };
  const calibration = lineOf(onY, onX, repeated);
  const size = pairs.size === 'estimated' ? onY : columnOf(n, (row) => (onY[row]! + onX[row]!) / 2);
  const line = lineOf(size, onScale, repeated);
  const proportionalBias = line?.slope;
  const bySize = line && bySizeOf(pairs.size, size, line, repeated);
  const normality = normalityOf(spread.independent);
  const concordance = concordanceOf(x, y, !repeated);
  const coverage = pairs.ends && coverageOf(x, ...pairs.ends, repeated);
  const tests = {
    ...(proportionalBias && { proportionalBias }),
    ...(bySize && { bySize }),
    ...(normality && { normality }),
  };
  return {
    scale,
    pairs: n,
    ...(people && { people: people.count }),
    missing,
    bias: mapped(bias, back),
    standardDeviation,
    ...(components && { components }),
    limits: { lower: mapped(limits.lower, back), upper: mapped(limits.upper, back) },
    predictionLimits: { lower: back(predictionLimits.lower), upper: back(predictionLimits.upper) },
    ...(sorted && { percentiles: { lower: percentile(0.025), upper: percentile(0.975) } }),
    ...(calibration && { calibration: { intercept: calibration.intercept, slope: calibration.slope } }),
    ...tests,
    rootMeanSquareError: Math.sqrt(squaresAbout(differences, 0) / n),
    meanAbsoluteError: sumOf(n, (row) => Math.abs(differences[row]!)) / n,
    ...(concordance && { concordance }),
    within: { ...shareOf(n, (row) => Math.abs(differences[row]!) <= acceptable, repeated), acceptable },
    ...(coverage && { coverage }),
    ...(margin !== undefined && { equivalence: equivalenceOf(spread, margin, log) }),
    cautions: cautionsOf(tests, spread.degreesOfFreedom + 1),
  };
}
