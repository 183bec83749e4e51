import { Math, square } from '../quantity/maths.js';
import type { Caution } from '../answer/answer.js';
import { issue, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { fQuantile } from '../statistics/beta.js';
import { chiSquareQuantile } from '../statistics/chi-square.js';
import { around, excludes, mapped, type WithConfidence, type WithError } from '../statistics/interval.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { studentT95 } from '../statistics/student-t.js';
import { accurateSum, mean, squaresAbout } from '../statistics/sums.js';
import { need } from '../answer/needs.js';
import { caution, fewPeople } from './cautions.js';
import { describeList, isList, numbersOf, reportNoLogarithm, type Numbers } from './lists.js';
import { LEAST_EVERY_TEST, TESTS } from './needs.js';
import { readScale } from './options.js';

/** The coefficients, by their names of 1979; k tests. */
export interface IntraclassCorrelations {
  /** One test; the tests of people are not the same ones (one-way). */
  readonly icc11: WithConfidence;
  /** One test, absolute agreement: a change of the mean between tests counts as error. */
  readonly icc21: WithConfidence;
  /** One test, consistency: a change of the mean between tests does not count. */
  readonly icc31: WithConfidence;
  /** Mean of the k tests; the tests of people are not the same ones (one-way). */
  readonly icc1k: WithConfidence;
  /** Mean of the k tests, absolute agreement. */
  readonly icc2k: WithConfidence;
  /** Mean of the k tests, consistency. */
  readonly icc3k: WithConfidence;
}

/** How well a test repeats itself. Plain JSON. */
export interface Reliability {
  /**
   * `log`: the logarithms were analysed. Typical error and standard error of measurement are then of logarithms, the
   * changes are ratios, and the minimal detectable change is a factor.
   */
  readonly scale: 'difference' | 'log';
  /** People with every test. */
  readonly people: number;
  /** Number of tests, k. */
  readonly tests: number;
  /** People left out because a test is missing. */
  readonly missing: number;
  /** Intraclass correlations. Left out where people do not differ; their intervals take scores as normal. */
  readonly intraclass?: IntraclassCorrelations;
  /** Standard deviation of one person’s repeated tests, a change of the mean apart; with a chi-square interval. */
  readonly typicalError: WithConfidence;
  /** The same with the change of the mean between tests counted in: the standard error of measurement, absolute. */
  readonly standardErrorOfMeasurement: number;
  /** The smallest change between two tests of one person that is more than error, with 95 %: 1.96 √2 typical error. */
  readonly minimalDetectableChange: WithConfidence;
  /** On the log scale: typical error as a coefficient of variation [%]. */
  readonly coefficientOfVariation?: WithConfidence;
  /** Change of the mean from each test to the next (learning, fatigue), with a paired interval. */
  readonly changes: readonly (WithError & {
    /** Number of the earlier test, from 1. */
    readonly from: number;
    /** Number of the later test. */
    readonly to: number;
  })[];
  /** Mean squares of the analysis of variance, in the unit of the test squared; on the log scale of logarithms. */
  readonly meanSquares: {
    /** Between people, BMS; n − 1 degrees of freedom. */
    readonly people: number;
    /** Between tests, JMS; k − 1 degrees of freedom. */
    readonly tests: number;
    /** Residual, EMS; (n − 1)(k − 1) degrees of freedom. */
    readonly error: number;
  };
  /** Which assumptions these tests do not meet. */
  readonly cautions: readonly Caution[];
}

/** Options of {@link reliability}. */
export interface ReliabilityOptions {
  /** `log` for errors that grow with the value. `difference` when left out. */
  readonly scale?: 'difference' | 'log' | undefined;
}

const LEAST_PEOPLE = 3;
const MOST_TESTS = 100;

/** Of one test from the ratio F of mean squares: (F − 1) / (F + k − 1). */
const single = (f: number, k: number): number => (f - 1) / (f + k - 1);

function intraclassOf(
  { people: bms, tests: jms, error: ems, within: wms }: Reliability['meanSquares'] & { readonly within: number },
  n: number,
  k: number,
): IntraclassCorrelations {
  // Without any error within people every ratio is boundless, and each coefficient its limit.
  const ratio = (below: number, degrees: number): WithConfidence => {
    const f = below > 0 ? bms / below : Infinity;
    return { value: f, lower: f / fQuantile(0.975, n - 1, degrees), upper: f * fQuantile(0.975, degrees, n - 1) };
  };
  const one = ratio(wms, n * (k - 1));
  const three = ratio(ems, (n - 1) * (k - 1));
  const bounded = (f: number): number => (f === Infinity ? 1 : single(f, k));
  const averaged = (f: number): number => (f === Infinity ? 1 : 1 - 1 / f);
  const value = (bms - ems) / (bms + (k - 1) * ems + (k * (jms - ems)) / n);
  // Degrees of freedom of the error with the tests in it (Satterthwaite), at the estimate.
  const [a, b] = [(k * value) / (n * (1 - value)), 1 + (k * value * (n - 1)) / (n * (1 - value))];
  const tests = square(a * jms) / (k - 1);
  const degrees = square(a * jms + b * ems) / (tests + square(b * ems) / ((n - 1) * (k - 1)));
  const exact = !(value < 1) || !(degrees > 0 && Number.isFinite(degrees));
  const low = exact ? 1 : fQuantile(0.975, n - 1, degrees);
  const high = exact ? 1 : fQuantile(0.975, degrees, n - 1);
  const errors = k * jms + (k * n - k - n) * ems;
  const two: WithConfidence = exact
    ? { value, lower: value, upper: value }
    : {
        value,
        lower: (n * (bms - low * ems)) / (low * errors + n * bms),
        upper: (n * (high * bms - ems)) / (errors + n * high * bms),
      };
  // ICC(2,k). Below 0 a variance of the tests below 0 would bring a pole: there it counts as 0.
  const ofMeans = (error: number, between: number): number => {
    const top = bms - error;
    return top / (bms + (top > 0 ? between : Math.max(0, between)));
  };
  const apart = (jms - ems) / n;
  return {
    icc11: mapped(one, bounded),
    icc21: two,
    icc31: mapped(three, bounded),
    icc1k: mapped(one, averaged),
    icc2k: {
      value: ofMeans(ems, apart),
      lower: ofMeans(low * ems, low * apart),
      upper: ofMeans(ems / high, apart / high),
    },
    icc3k: mapped(three, averaged),
  };
}

/** The scores of the people who have every test, one list a test, on the scale asked for. */
function readTests(tests: unknown, options: ReliabilityOptions) {
  const issues: InputIssue[] = [];
  const reader = new Reader(options, ['options'], issues);
  const scale = readScale(reader);
  const columns: Float64Array[] = [];
  try {
    const count = isList(tests) && tests.length >= 2 && tests.length <= MOST_TESTS ? tests.length : 0;
    if (count === 0) {
      issues.push(issue('wrong-type', ['tests'], need(TESTS, { most: MOST_TESTS }), describeList(tests)));
    }
    for (let test = 0; test < count; test += 1) {
      const list = (tests as ArrayLike<unknown>)[test];
      columns.push(numbersOf(list, ['tests', test], issues, columns[0]?.length));
    }
  } catch {
    issues.push(issue('unreadable', ['tests'], need(TESTS, { most: MOST_TESTS }), 'an error'));
  }
  if (!reader.fine) reader.done();

  const kept = [...columns[0]!.keys()].filter((row) => columns.every((column) => !Number.isNaN(column[row])));
  if (kept.length < LEAST_PEOPLE) {
    issues.push(issue('wrong-relation', ['tests'], need(LEAST_EVERY_TEST, { least: LEAST_PEOPLE }), `${kept.length}`));
  }
  const log = scale === 'log';
  if (log) columns.forEach((column, test) => reportNoLogarithm(column, kept, ['tests', test], issues));
  reader.done();
  const scores = columns.map((column) =>
    Float64Array.from(kept, (row) => (log ? Math.log(column[row]!) : column[row]!)),
  );
  return { scale, scores, missing: columns[0]!.length - kept.length };
}

/**
 * How well a test repeats itself: the same people, tested two times or more.
 *
 * Analysis of variance of n people × k tests, mean squares BMS (people), JMS (tests), EMS (error):
 * - ICC(2,1) = (BMS − EMS) / (BMS + (k − 1) EMS + k (JMS − EMS) / n), absolute agreement;
 *   ICC(3,1) = (BMS − EMS) / (BMS + (k − 1) EMS), consistency; both also for the mean of the k tests;
 * - typical error √EMS, with its chi-square interval; standard error of measurement √(EMS + (JMS − EMS) / n);
 * - minimal detectable change 1.96 √2 × typical error;
 * - change of the mean from each test to the next, with a paired t interval.
 *
 * A person who lacks a test is left out and counted. On `scale: 'log'` the logarithms are analysed: `changes` are
 * ratios, `minimalDetectableChange` is a factor, and `coefficientOfVariation` is 100 (e^typical error − 1) [%].
 * An intraclass correlation is high where people differ much: report it with the typical error. Intervals take scores
 * as normal; the coefficients are left out where people do not differ.
 *
 * - Evidence: `unconfirmed`: published methods, formulas from memory.
 * - Source: Psychol Bull 1979;86(2):420–428; J Strength Cond Res 2005;19(1):231–240; Sports Med 2000;30:1–15.
 *
 * @param tests - one list of results for each test, a person at the same place in each [any unit]
 * @param options - `scale`
 * @returns the reliability, in the unit of the test, plain JSON.
 * @throws InputError for fewer than 2 tests or 3 people, lists that differ in length, and values of 0 or below on a log scale
 *
 * @example
 * ```ts
 * import { reliability } from 'cuffwork/study';
 * const { intraclass, typicalError, changes } = reliability([[150, 162, 171, 148], [153, 160, 175, 150]]);
 * intraclass?.icc21.value.toFixed(3); // => '0.966'
 * typicalError.value.toFixed(2); // => '1.86'
 * changes[0]?.value; // => 1.75
 * ```
 */
export function reliability(tests: readonly Numbers[], options: ReliabilityOptions = {}): Reliability {
  const { scale, scores, missing } = readTests(tests, options);
  const log = scale === 'log';
  const k = scores.length;
  const n = scores[0]!.length;
  const testMeans = scores.map(mean);
  const middle = mean(testMeans);
  const peopleMeans = scores[0]!.map((_, row) => mean(scores.map((column) => column[row]!)));
  const errorSquares = accurateSum(
    scores.map((column, test) =>
      accurateSum(column.map((score, row) => square(score - peopleMeans[row]! - testMeans[test]! + middle))),
    ),
  );
  const testSquares = n * squaresAbout(testMeans, middle);
  const degrees = (n - 1) * (k - 1);
  const meanSquares = {
    people: (k * squaresAbout(peopleMeans, middle)) / (n - 1),
    tests: testSquares / (k - 1),
    error: errorSquares / degrees,
  };
  const within = (errorSquares + testSquares) / (n * (k - 1));
  // Below the last digits of the scores people do not differ.
  const varies = meanSquares.people > square(1e-12 * middle);
  const typical = Math.sqrt(meanSquares.error);
  const end = (chance: number): number => typical * Math.sqrt(degrees / chiSquareQuantile(chance, degrees));
  const typicalError = { value: typical, lower: end(0.975), upper: end(0.025) };
  const back = (number: number): number => (log ? Math.exp(number) : number);
  const changes = testMeans.slice(1).map((_, test) => {
    const differences = scores[test + 1]!.map((score, row) => score - scores[test]![row]!);
    const value = mean(differences);
    const standardError = Math.sqrt(squaresAbout(differences, value) / (n - 1) / n);
    return { from: test + 1, to: test + 2, ...mapped(around(value, standardError, studentT95(n - 1)), back) };
  });
  const cautions = [
    ...fewPeople(n),
    ...changes
      .filter((change) => excludes(change, back(0)))
      .map(({ from, to, value }) =>
        caution('caution', 'tests-differ', { from, to, change: Number(value.toPrecision(3)) }),
      ),
  ];
  return {
    scale,
    people: n,
    tests: k,
    missing,
    ...(varies && { intraclass: intraclassOf({ ...meanSquares, within }, n, k) }),
    typicalError,
    standardErrorOfMeasurement: Math.sqrt(meanSquares.error + Math.max(0, meanSquares.tests - meanSquares.error) / n),
    minimalDetectableChange: mapped(typicalError, (error) => back(NORMAL_95 * Math.SQRT2 * error)),
    ...(log && { coefficientOfVariation: mapped(typicalError, (error) => 100 * (Math.exp(error) - 1)) }),
    changes,
    meanSquares,
    cautions,
  };
}
