import { Math, square } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { isInputError, describe, describeLength, refuse } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import type { Quantity } from '../quantity/quantities.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { quantileBounds } from '../statistics/order.js';
import { correlatedDeviates, mersenneTwister, normalDeviates } from '../statistics/random.js';
import { accurateSum, mean, quantile, squaresAbout } from '../statistics/sums.js';
import {
  CORRELATIONS,
  EACH_PAIR_ONCE,
  OTHER_NAME,
  PIPELINE,
  POSSIBLE_TOGETHER,
  TAKEN_READINGS,
  TWO_NAMES,
  UNCERTAIN_READINGS,
} from './needs.js';
import { describeResult, readDraws, readFunction, readSeed } from './options.js';
import { away, readUncertain, type Drawn, type Uncertain } from './uncertain.js';

/** How two inputs go together. */
export interface Correlation {
  /** Names of the two inputs. */
  readonly between: readonly [string, string];
  /** Correlation of the normal deviates that both are drawn from, above −1 and below 1; of normal inputs, their own. */
  readonly value: number;
}

/** What {@link propagate} takes. */
export interface PropagateInput<Name extends string = string> {
  /** The readings that are not exact, by names of your own. */
  readonly inputs: Readonly<Record<Name, Uncertain>>;
  /** Your calculation, from the readings to a number or to an answer; the error of an answer is drawn too. */
  readonly pipeline: (draw: Readonly<Record<Name, number>>) => number | Answer;
  /** How many times to draw, from 100 to 1,000,000; 10,000 when left out. */
  readonly draws?: number | undefined;
  /** Seed of the generator, a whole number from 0 to 4294967295; 1 when left out. The same seed gives the same draws. */
  readonly seed?: number | undefined;
  /** Inputs that go together, as systolic and diastolic pressure do. All others are independent. */
  readonly correlations?: readonly Correlation[] | undefined;
  /** Whether to return the draws. */
  readonly keepDraws?: boolean | undefined;
}

/** A value with its 95 % interval and standard deviation. */
export interface Spread {
  /** Monte Carlo: mean of the draws, with `scale: 'log'` the geometric mean. Closed form: the value at the readings. */
  readonly value: number;
  /** Standard deviation of the value; with `scale: 'log'` that of ln(value). */
  readonly standardDeviation: number;
  /** `log` where the pipeline ends in answers on a log scale. */
  readonly scale?: 'log';
  /** Lower end of the 95 % interval: the 2.5 % quantile of the draws; closed form, 1.96 standard deviations below. */
  readonly lower: number;
  /** Upper end of the 95 % interval: the 97.5 % quantile of the draws; closed form, 1.96 standard deviations above. */
  readonly upper: number;
}

/** The 95 % interval of a quantile; an end is left out where there are too few draws for it. */
interface QuantileBounds {
  /** Lower end, in the unit of the value. */
  readonly lower?: number;
  /** Upper end, in the unit of the value. */
  readonly upper?: number;
}

/** What {@link propagate} returns: plain JSON. */
export interface Propagated {
  /** Seed of the random numbers: the same seed gives the same figures. */
  readonly seed: number;
  /** Number of draws. */
  readonly draws: number;
  /** Draws that the pipeline refused with an InputError; they are left out. */
  readonly refused: number;
  /** Mean, standard deviation and the 2.5 and 97.5 % quantiles of what was drawn. */
  readonly monteCarlo: Spread & {
    /** How far chance moves these figures with so many draws: another seed gives others. */
    readonly error: {
      /** Standard error of the mean; with `scale: 'log'` that of the mean logarithm. */
      readonly value: number;
      /** Standard error of the standard deviation. */
      readonly standardDeviation: number;
      /** 95 % interval of the 2.5 % quantile, by order statistics. */
      readonly lower: QuantileBounds;
      /** 95 % interval of the 97.5 % quantile, by order statistics. */
      readonly upper: QuantileBounds;
    };
  };
  /** What was drawn, and what came of it, draw by draw, with `keepDraws`; refused draws are left out. */
  readonly kept?: {
    /** The drawn value of each uncertain input, by its name. */
    readonly inputs: Readonly<Record<string, readonly number[]>>;
    /** The answer of each draw. */
    readonly results: readonly number[];
  };
  /**
   * The same to first order: slopes at the readings, errors in quadrature. Left out where the pipeline refuses them.
   */
  readonly closedForm?: Spread & {
    /** The parts of the standard deviation, by input; `own` is the error of the answer itself. */
    readonly parts: Readonly<Record<string, number>>;
    /** What correlations add to the variance, where there are any: below 0 where errors cancel. */
    readonly correlated?: number;
  };
}

const CORRELATION: Quantity = { name: 'correlation', unit: '1', min: -0.999999, max: 0.999999 };
const MOST_INPUTS = 100;
const OWN = 'own';

/** What a pipeline gave for one draw; `undefined` where it refused. */
interface Outcome {
  readonly value: number;
  readonly deviation: number;
  readonly log: boolean;
}

function outcomeOf(result: unknown): Outcome {
  const answer = typeof result === 'object' && result !== null ? (result as Partial<Answer>) : undefined;
  const value: unknown = answer ? answer.value : result;
  const deviation: unknown = answer?.standardDeviation ?? 0;
  const log = answer?.scale === 'log';
  const sound = typeof value === 'number' && Number.isFinite(value) && !(log && value <= 0);
  if (sound && typeof deviation === 'number' && deviation >= 0) return { value, deviation, log };
  refuse('wrong-type', ['pipeline'], PIPELINE, describeResult(result));
}

/**
 * The uncertainty of any chain of calculations: by Monte Carlo, and also to first order in closed form.
 *
 * Monte Carlo draws every input from its distribution (normal, log-normal, uniform, triangular, Student’s t, or a
 * sample), with the `correlations` you give, and runs the pipeline on each
 * draw. Where the pipeline ends in an answer, the answer’s own error is drawn on top: log-normal where its `scale` is
 * `log`. Closed form: s² = Σ (∂f/∂xᵢ sᵢ)² + 2 Σ r (∂f/∂xᵢ sᵢ) (∂f/∂xⱼ sⱼ) + s²(answer), slopes taken between xᵢ ± sᵢ,
 * and all of it on the logarithms where the answer is on a log scale. Where the two differ, the chain bends within the
 * errors, or rounds: doubt the closed form.
 *
 * Draws come from the Mersenne Twister MT19937 and are the same for the same seed (to the last digits of the engine’s
 * logarithm). Draws that the pipeline refuses, such as pressures that cross, are counted in `refused` and left out:
 * with many of them the result is conditional on being possible.
 *
 * Correlated inputs are drawn from correlated normal deviates. `monteCarlo.error` says how far another seed would move
 * the figures.
 *
 * - Evidence: `unconfirmed`: published methods, formulas from memory.
 * - Source: JCGM 101:2008; JCGM 100:2008, 5.1.2 and 5.2.2.
 *
 * @param input - `inputs`, each with `value`, `standardDeviation` and, where its error is a share, `scale: 'log'`, or with
 * another `distribution`; `pipeline`; `draws`; `seed`; `correlations`; `keepDraws`
 * @returns both results, plain JSON.
 * @throws InputError naming every wrong field; also where the pipeline refuses every draw. An error of the pipeline
 * that is no InputError is thrown on.
 *
 * @example
 * ```ts
 * import { estimateOcclusionPressure, targetCuffPressure } from 'cuffwork';
 * import { propagate } from 'cuffwork/study';
 * const result = propagate({
 *   inputs: { circumference: { value: 54, standardDeviation: 1 }, systolic: { value: 120, standardDeviation: 5 } },
 *   pipeline: ({ circumference, systolic }) =>
 *     targetCuffPressure({
 *       percentLop: 50,
 *       occlusion: estimateOcclusionPressure({
 *         limb: 'leg', circumferenceCm: circumference, systolicMmHg: systolic, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine',
 *       }),
 *     }),
 * });
 * result.closedForm?.value; // => 95
 * result.closedForm?.standardDeviation.toFixed(0) === result.monteCarlo.standardDeviation.toFixed(0); // => true
 * ```
 */
export function propagate<Name extends string>(input: PropagateInput<Name>): Propagated {
  const reader = new Reader(input);
  const names: string[] = [];
  const readings: Drawn[] = [];
  const expected = need(UNCERTAIN_READINGS, { most: MOST_INPUTS });
  for (const [name, part] of reader.named('inputs', expected, MOST_INPUTS)) {
    if (name === OWN) part.refuse([], OTHER_NAME, describe(OWN));
    names.push(name);
    readings.push(readUncertain(part));
  }
  const pipeline = readFunction<(draw: Readonly<Record<string, number>>) => unknown>(reader, 'pipeline');
  const draws = readDraws(reader, 100, 1_000_000, 10_000);
  const seed = readSeed(reader);
  const keepDraws = reader.flag('keepDraws');
  const correlations = readCorrelations(reader, names);
  const together = correlations && correlatedDeviates(correlations);
  if (reader.fine && correlations && !together) {
    const pairs = correlations.flatMap((row, i) => row.slice(0, i)).filter((value) => value !== 0);
    reader.refuse('correlations', POSSIBLE_TOGETHER, describeLength(pairs.length));
  }
  reader.done();

  const run = (numbers: readonly number[]): Outcome | undefined => {
    const draw: Record<string, number> = {};
    names.forEach((name, index) => (draw[name] = numbers[index]!));
    try {
      return outcomeOf(pipeline(draw));
    } catch (error) {
      // A draw that is refused is counted; a pipeline that is wrong is not.
      if (isInputError(error) && error.issues[0]?.path[0] !== 'pipeline') return undefined;
      throw error;
    }
  };
  const random = mersenneTwister(seed);
  const normal = normalDeviates(random);
  const results: number[] = [];
  const kept: number[][] = names.map(() => []);
  let log = true;
  for (let count = 0; count < draws; count += 1) {
    // Without correlations a reading is drawn at once, so that its draws are those of the same seed as ever.
    const deviates = together?.(normal);
    const drawn = readings.map(({ at }, index) => at(deviates ? deviates[index]! : normal(), random, normal));
    const outcome = run(drawn);
    // The deviate is drawn in any case, so that a refused draw does not shift those after it.
    const own = normal();
    if (!outcome) continue;
    log &&= outcome.log;
    results.push(away(outcome.value, outcome.deviation, outcome.log, own));
    if (keepDraws) drawn.forEach((value, index) => kept[index]!.push(value));
  }
  if (results.length < 2) refuse('wrong-relation', ['inputs'], TAKEN_READINGS, 'none it took');
  const closedForm = closedFormOf(names, readings, correlations, log, run);
  return {
    seed,
    draws,
    refused: draws - results.length,
    monteCarlo: spreadOf(results, log),
    ...(keepDraws && {
      kept: { inputs: Object.fromEntries(names.map((name, index) => [name, kept[index]!])), results },
    }),
    ...(closedForm && { closedForm }),
  };
}

/** Mean, standard deviation and quantiles of what was drawn, with how far chance moves them. */
function spreadOf(results: readonly number[], log: boolean): Propagated['monteCarlo'] {
  const n = results.length;
  const sorted = Float64Array.from(results).sort();
  const scaled = log ? results.map((result) => Math.log(result)) : results;
  const middle = mean(scaled);
  const variance = squaresAbout(scaled, middle) / (n - 1);
  const fourth = accurateSum(scaled.map((result) => square(square(result - middle)))) / n;
  return {
    value: log ? Math.exp(middle) : middle,
    standardDeviation: Math.sqrt(variance),
    ...(log && { scale: 'log' }),
    lower: quantile(sorted, 0.025),
    upper: quantile(sorted, 0.975),
    error: {
      value: Math.sqrt(variance / n),
      // From the fourth moment, so that heavy tails count.
      standardDeviation: variance > 0 ? Math.sqrt(Math.max(0, fourth - square(variance)) / n / (4 * variance)) : 0,
      lower: quantileBounds(sorted, 0.025),
      upper: quantileBounds(sorted, 0.975),
    },
  };
}

function readCorrelations(reader: Reader, names: readonly string[]): number[][] | undefined {
  const list = reader.optionalList('correlations', CORRELATIONS, MOST_INPUTS * MOST_INPUTS);
  if (!list) return undefined;
  const matrix = names.map((_, i) => names.map((__, j): number => (i === j ? 1 : 0)));
  for (const one of list) {
    const value = one.acceptNumber('value', CORRELATION, one.raw('value')) ?? NaN;
    const between = one.values('between', TWO_NAMES);
    const pair = between.map((name) => names.indexOf(name as string));
    const [i, j] = pair;
    // Without a single input, that is what is wrong.
    if (names.length === 0) continue;
    if (pair.length !== 2 || i === undefined || j === undefined || i < 0 || j < 0 || i === j) {
      one.refuse('between', TWO_NAMES, between.slice(0, 3).map(describe).join(', '));
    } else if (matrix[i]![j] !== 0) one.refuse('between', EACH_PAIR_ONCE, between.map(describe).join(', '));
    else matrix[i]![j] = matrix[j]![i] = value;
  }
  return matrix;
}

/** Slopes by differences over ± one standard deviation; one-sided where the pipeline refuses an end. */
function closedFormOf(
  names: readonly string[],
  readings: readonly Drawn[],
  correlations: readonly (readonly number[])[] | undefined,
  log: boolean,
  run: (numbers: readonly number[]) => Outcome | undefined,
): Propagated['closedForm'] {
  const values = readings.map(({ value }) => value);
  const centre = run(values);
  if (!centre) return undefined;
  const scaled = ({ value }: Outcome): number => (log ? Math.log(value) : value);
  const parts: Record<string, number> = {};
  const signed: number[] = [];
  let variance = square(centre.deviation);
  for (const [index, name] of names.entries()) {
    const { value, deviation, log: ofLog } = readings[index]!;
    const moved = (deviate: number) =>
      run(values.map((other, at) => (at === index ? away(value, deviation, ofLog, deviate) : other)));
    const above = moved(1);
    const below = moved(-1);
    if (!above && !below) return undefined;
    const span = above && below ? 2 : 1;
    const part = (scaled(above ?? centre) - scaled(below ?? centre)) / span;
    signed.push(part);
    parts[name] = Math.abs(part);
    variance += square(part);
  }
  if (centre.deviation > 0) parts[OWN] = centre.deviation;
  let shared = 0;
  correlations?.forEach((row, i) => {
    for (let j = 0; j < i; j += 1) shared += 2 * row[j]! * signed[i]! * signed[j]!;
  });
  const standardDeviation = Math.sqrt(Math.max(0, variance + shared));
  const { value } = centre;
  return {
    value,
    standardDeviation,
    ...(log && { scale: 'log' }),
    lower: away(value, standardDeviation, log, -NORMAL_95),
    upper: away(value, standardDeviation, log, NORMAL_95),
    parts,
    ...(correlations && { correlated: shared }),
  };
}
