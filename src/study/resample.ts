import { Math, square } from '../quantity/maths.js';
import { describe, isInputError, issue, refuse, type InputIssue } from '../answer/issues.js';
import { LIST_OF, need, type Asked } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { normalChance, normalQuantile, NORMAL_95 } from '../statistics/normal.js';
import { indexBelow, mersenneTwister, shuffled } from '../statistics/random.js';
import { accurateSum, mean, quantile, squaresAbout } from '../statistics/sums.js';
import { peopleOf, type Names } from './lists.js';
import { LEAST_PEOPLE_OF, NAME_OR_NUMBER, PREDICTOR, STATISTIC, TAKES_SAMPLES, TO_FINITE } from './needs.js';
import { describeResult, readDraws, readFunction, readSeed } from './options.js';
import { MOST_ROWS } from './own-rows.js';

const LEAST = 3;

/** Rows in groups that stay together: one a person, or each row alone. */
function groupsOf(rows: number, person: unknown, issues: InputIssue[]): readonly (readonly number[])[] {
  const of = peopleOf(person, ['person'], issues, rows);
  if (!of) return Array.from({ length: rows }, (_, row) => [row]);
  const groups: number[][] = [];
  of.forEach((who, row) => {
    if (who < 0) issues.push(issue('missing', ['person', row], NAME_OR_NUMBER, undefined));
    else (groups[who] ??= []).push(row);
  });
  return groups;
}

/** Refuses groups that are too few to be drawn or parted. */
function refuseFew(reader: Reader, { length }: readonly unknown[]): void {
  if (reader.fine && length < LEAST) reader.refuse('person', need(LEAST_PEOPLE_OF, { least: LEAST }), `${length}`);
}

/** Your rows as they are, whatever is in them. */
function readRows<T>(reader: Reader): readonly T[] {
  const rows = reader.raw('rows');
  try {
    if (Array.isArray(rows) && rows.length >= LEAST && rows.length <= MOST_ROWS) return rows as T[];
  } catch {
    // Whatever cannot be read is no list.
  }
  reader.report('wrong-type', 'rows', need(LIST_OF, { least: LEAST, most: MOST_ROWS }), describe(rows));
  return [];
}

/** What your function gave, which must be a finite number. */
const finite = (name: string, expected: Asked, value: unknown): number =>
  typeof value === 'number' && Number.isFinite(value)
    ? value
    : refuse('wrong-type', [name], expected, describeResult(value));

/** What {@link bootstrap} takes. */
export interface BootstrapInput<Row> {
  /** Your rows, from 3 to 10,000: numbers, objects, anything. */
  readonly rows: readonly Row[];
  /** Your calculation, from rows to the figure that you want an interval of. */
  readonly statistic: (rows: readonly Row[]) => number;
  /** The person of each row: people are then drawn whole. */
  readonly person?: Names | undefined;
  /** How many times to draw, from 200 to 20,000; 2000 when left out. */
  readonly draws?: number | undefined;
  /** Seed of the generator, a whole number from 0 to 4294967295; 1 when left out. The same seed gives the same draws. */
  readonly seed?: number | undefined;
}

/** What {@link bootstrap} returns: plain JSON. */
export interface Bootstrap {
  /** The figure of your rows. */
  readonly value: number;
  /** Standard deviation of the figure over the draws. */
  readonly standardError: number;
  /** Mean of the draws − value. */
  readonly bias: number;
  /** Lower end of the 95 % interval, bias-corrected and accelerated. */
  readonly lower: number;
  /** Upper end of the 95 % interval, bias-corrected and accelerated. */
  readonly upper: number;
  /** 95 % interval by the quantiles of the draws alone. */
  readonly percentile: {
    /** The 2.5 % quantile of the draws. */
    readonly lower: number;
    /** The 97.5 % quantile of the draws. */
    readonly upper: number;
  };
  /** Number of your rows. */
  readonly rows: number;
  /** People, where `person` was given. */
  readonly people?: number;
  /** Number of draws, those refused included. */
  readonly draws: number;
  /** Seed of the random numbers: the same seed gives the same figures. */
  readonly seed: number;
  /** Draws for which the statistic was refused with an InputError; they are left out. */
  readonly refused: number;
}

/**
 * The interval of any figure by the bootstrap: draws rows, or whole people, with replacement, and works the figure out
 * anew.
 *
 * The interval is bias-corrected and accelerated (BCa): quantiles of the draws at Φ(z₀ + (z₀ ± 1.96) / (1 − a (z₀ ±
 * 1.96))); z₀ from the share of draws below the value, a from leaving out each row (each person). Use it from about 20
 * rows (people) on: below, it is too narrow. Draws come from the Mersenne Twister MT19937 and are the same for the
 * same seed.
 *
 * - Evidence: `unconfirmed`: a published method, formulas from memory.
 * - Source: J Am Stat Assoc 1987;82(397):171–185.
 *
 * @param input - `rows`; `statistic`, from rows to a number; `person`, one for each row; `draws`; `seed`
 * @returns the figure with its intervals, standard error and bias, plain JSON.
 * @throws InputError for wrong fields, for fewer than 3 rows or people, and where the statistic is no finite number. An
 * error of the statistic that is no InputError is thrown on.
 *
 * @example
 * ```ts
 * import { bootstrap } from 'cuffwork/study';
 * const median = (rows: readonly number[]) => [...rows].sort((a, b) => a - b)[Math.floor(rows.length / 2)]!;
 * const rows = [151, 148, 170, 166, 158, 149, 181, 163, 172, 155, 160];
 * const { value, lower, upper } = bootstrap({ rows, statistic: median });
 * value; // => 160
 * lower < 160 && upper > 160; // => true
 * ```
 */
export function bootstrap<Row>(input: BootstrapInput<Row>): Bootstrap {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  const rows = readRows<Row>(reader);
  const statistic = readFunction<BootstrapInput<Row>['statistic']>(reader, 'statistic');
  const groups = groupsOf(rows.length, reader.raw('person'), issues);
  const draws = readDraws(reader, 200, 20_000, 2000);
  const seed = readSeed(reader);
  refuseFew(reader, groups);
  reader.done();
  const figure = (of: readonly Row[]): number => finite('statistic', STATISTIC, statistic(of));
  /** The figure of some groups; none where your statistic refuses them. */
  const attempt = (of: readonly (readonly number[])[]): readonly number[] => {
    const some: Row[] = [];
    for (const group of of) for (const row of group) some.push(rows[row]!);
    try {
      return [figure(some)];
    } catch (error) {
      if (isInputError(error) && error.issues[0]?.path[0] !== 'statistic') return [];
      throw error;
    }
  };
  const value = figure(rows);
  const random = mersenneTwister(seed);
  const drawn: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    drawn.push(...attempt(groups.map(() => groups[indexBelow(random, groups.length)]!)));
  }
  const n = drawn.length;
  if (n < 2) refuse('wrong-relation', ['statistic'], TAKES_SAMPLES, 'none it took');
  const sorted = Float64Array.from(drawn).sort();
  const middle = mean(drawn);
  // Acceleration: the skewness of the figure over the rows (people) left out one by one.
  const leftOut = groups.flatMap((_, out) => attempt(groups.filter((__, index) => index !== out)));
  const centre = mean(leftOut);
  const second = squaresAbout(leftOut, centre);
  const third = accurateSum(leftOut.map((one) => square(centre - one) * (centre - one)));
  const acceleration = second > 0 ? third / (6 * second * Math.sqrt(second)) : 0;
  // Ties count half, so that a figure that never moves has its value for an interval.
  const below = accurateSum(drawn.map((one) => (one < value ? 1 : one === value ? 0.5 : 0))) / n;
  const shift = normalQuantile(Math.min(Math.max(below, 0.5 / n), 1 - 0.5 / n));
  const end = (z: number): number => {
    const moved = shift + (shift + z) / (1 - acceleration * (shift + z));
    return quantile(sorted, normalChance(moved));
  };
  return {
    value,
    standardError: Math.sqrt(squaresAbout(drawn, middle) / (n - 1)),
    bias: middle - value,
    lower: end(-NORMAL_95),
    upper: end(NORMAL_95),
    percentile: { lower: quantile(sorted, 0.025), upper: quantile(sorted, 0.975) },
    rows: rows.length,
    ...(input.person !== undefined && { people: groups.length }),
    draws,
    seed,
    refused: draws - n,
  };
}

/** What {@link crossValidate} takes. */
export interface CrossValidateInput<Row> {
  /** Your rows, from 3 to 10,000: objects, anything. */
  readonly rows: readonly Row[];
  /** Your fit, from rows to a function that predicts one row it has not seen. */
  readonly fit: (rows: readonly Row[]) => (row: Row) => number;
  /** The measurement of a row, which its prediction is compared with. */
  readonly measured: (row: Row) => number;
  /** The person of each row: people then stay together. */
  readonly person?: Names | undefined;
  /** Number of parts; 10 when left out, at most one for each row (person). */
  readonly folds?: number | undefined;
  /** Seed of the parts, a whole number from 0 to 4294967295; 1 when left out. */
  readonly seed?: number | undefined;
}

/** What {@link crossValidate} returns: plain JSON. */
export interface CrossValidated {
  /** The prediction of each row, made without its fold: for `agreement` and `conformal`. */
  readonly predicted: readonly number[];
  /** The measurement of each row. */
  readonly measured: readonly number[];
  /** The fold of each row, from 0. */
  readonly fold: readonly number[];
  /** Number of folds. */
  readonly folds: number;
  /** Seed of the random numbers: the same seed gives the same figures. */
  readonly seed: number;
  /** Mean of predicted − measured. */
  readonly bias: number;
  /** Root mean square of predicted − measured. */
  readonly rootMeanSquareError: number;
  /** Mean size of predicted − measured, sign ignored. */
  readonly meanAbsoluteError: number;
}

/**
 * How wrong a fit is for people it has not seen: k-fold cross-validation, rows or whole people in random parts.
 *
 * Each part is predicted by a fit to all others. With as many folds as rows it is leave-one-out.
 *
 * - Evidence: `definition`.
 *
 * @param input - `rows`; `fit`, from rows to a predictor; `measured`, from a row to its measurement; `person`; `folds`
 * (10 when left out); `seed`
 * @returns each prediction and the errors, plain JSON.
 * @throws InputError for wrong fields, and where a prediction is no finite number; an InputError of `fit` is thrown on.
 *
 * @example
 * ```ts
 * import { crossValidate, equationFromFit, fitOcclusionEquation } from 'cuffwork/study';
 * const place = { limb: 'leg', posture: 'seated', cuffWidthCm: 11 } as const;
 * const rows = Array.from({ length: 30 }, (_, i) => ({ circumferenceCm: 45 + i / 2, valueMmHg: 60 + 2 * i + ((7 * i) % 11) }));
 * const { rootMeanSquareError, predicted } = crossValidate({
 *   rows,
 *   fit: (some) => {
 *     const own = fitOcclusionEquation({ id: 'fold', ...place, terms: ['circumferenceCm'], rows: some });
 *     return (row) => own.intercept.coefficient + own.terms[0]!.coefficient * row.circumferenceCm;
 *   },
 *   measured: (row) => row.valueMmHg,
 *   folds: 5,
 * });
 * predicted.length; // => 30
 * rootMeanSquareError < 5; // => true
 * ```
 */
export function crossValidate<Row>(input: CrossValidateInput<Row>): CrossValidated {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  const rows = readRows<Row>(reader);
  const fit = readFunction<(rows: readonly Row[]) => unknown>(reader, 'fit');
  const measuredOf = readFunction<CrossValidateInput<Row>['measured']>(reader, 'measured');
  const groups = groupsOf(rows.length, reader.raw('person'), issues);
  // Without rows they are what is wrong.
  const most = Math.max(2, groups.length || MOST_ROWS);
  const bounds = { name: 'folds', unit: '1', min: 2, max: most, whole: true } as const;
  const folds = reader.optionalNumber('folds', bounds) ?? Math.min(10, most);
  const seed = readSeed(reader);
  refuseFew(reader, groups);
  reader.done();
  const measured = rows.map((row) => finite('measured', TO_FINITE, measuredOf(row)));
  const fold = new Array<number>(rows.length).fill(0);
  shuffled(mersenneTwister(seed), groups.length).forEach((group, place) => {
    for (const row of groups[group]!) fold[row] = place % folds;
  });
  const predicted = new Array<number>(rows.length).fill(0);
  for (let part = 0; part < folds; part += 1) {
    const predict = fit(rows.filter((_, row) => fold[row] !== part));
    if (typeof predict !== 'function') refuse('wrong-type', ['fit'], PREDICTOR, describeResult(predict));
    rows.forEach((row, index) => {
      if (fold[index] === part) predicted[index] = finite('fit', TO_FINITE, (predict as (row: Row) => unknown)(row));
    });
  }
  const errors = predicted.map((value, row) => value - measured[row]!);
  return {
    predicted,
    measured,
    fold,
    folds,
    seed,
    bias: mean(errors),
    rootMeanSquareError: Math.sqrt(mean(errors.map(square))),
    meanAbsoluteError: mean(errors.map((error) => Math.abs(error))),
  };
}
