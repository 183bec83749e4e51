import { Math, square } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { InputError, isInputError, issue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import type { Quantity } from '../quantity/quantities.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { mersenneTwister, normalDeviates } from '../statistics/random.js';
import { accurateSum, mean, quantile } from '../statistics/sums.js';

/** A reading that is not exact: normal around `value`, or with `scale: 'log'` log-normal around it. */
export interface Uncertain {
  readonly value: number;
  /** In the unit of the reading; with `scale: 'log'` that of ln(value). */
  readonly standardDeviation: number;
  readonly scale?: 'log';
}

/** What {@link propagate} takes. */
export interface PropagateInput<Name extends string = string> {
  /** The readings that are not exact, by names of one’s own. */
  readonly inputs: Readonly<Record<Name, Uncertain>>;
  /** From the readings to a number, or to an answer, whose own error is then drawn too. */
  readonly pipeline: (draw: Readonly<Record<Name, number>>) => number | Answer;
  /** How many times to draw; 10 000 when left out. */
  readonly draws?: number | undefined;
  /** Seed of the generator; 1 when left out. The same seed gives the same draws. */
  readonly seed?: number | undefined;
}

/** A value with its 95 % interval and standard deviation. */
export interface Spread {
  /** With `scale: 'log'` the geometric mean. */
  readonly value: number;
  /** With `scale: 'log'` that of ln(value). */
  readonly standardDeviation: number;
  /** `log` where the pipeline ends in answers on a log scale. */
  readonly scale?: 'log';
  readonly lower: number;
  readonly upper: number;
}

/** What {@link propagate} returns: plain JSON. */
export interface Propagated {
  readonly seed: number;
  readonly draws: number;
  /** Draws that the pipeline refused with an InputError; they are left out. */
  readonly refused: number;
  /** Mean, standard deviation and the 2.5 and 97.5 % quantiles of what was drawn. */
  readonly monteCarlo: Spread;
  /** The same to first order: slopes at the readings, errors in quadrature. Left out where the pipeline refuses them. */
  readonly closedForm?: Spread & {
    /** The parts of the standard deviation, by input; `own` is the error of the answer itself. */
    readonly parts: Readonly<Record<string, number>>;
  };
}

const DRAWS: Quantity = { name: 'draws', unit: '1', min: 100, max: 1_000_000, whole: true };
const SEED: Quantity = { name: 'seed', unit: '1', min: 0, max: 0xffffffff, whole: true };
const VALUE: Quantity = { name: 'value', unit: '1', min: -1e9, max: 1e9 };
const DEVIATION: Quantity = { name: 'standard deviation', unit: '1', min: 0, max: 1e9 };
/** Of a reading on a log scale. */
const POSITIVE: Quantity = { name: 'value', unit: '1', min: 1e-9, max: 1e9 };
const SHARE: Quantity = { name: 'standard deviation of the logarithm', unit: '1', min: 0, max: 5 };
const SCALES = ['log'] as const;
const MOST_INPUTS = 100;
const OWN = 'own';

/** What a pipeline gave for one draw; `undefined` where it refused. */
interface Outcome {
  readonly value: number;
  readonly deviation: number;
  readonly log: boolean;
}

/** A value one deviate away, on its scale. */
const away = (value: number, deviation: number, log: boolean, deviate: number): number =>
  log ? value * Math.exp(deviation * deviate) : value + deviation * deviate;

function outcomeOf(result: unknown): Outcome {
  const answer = typeof result === 'object' && result !== null ? (result as Partial<Answer>) : undefined;
  const value: unknown = answer ? answer.value : result;
  const deviation: unknown = answer?.standardDeviation ?? 0;
  const log = answer?.scale === 'log';
  const sound = typeof value === 'number' && Number.isFinite(value) && !(log && value <= 0);
  if (sound && typeof deviation === 'number' && deviation >= 0) return { value, deviation, log };
  const expected = 'a function that returns a finite number or an answer';
  throw new InputError([issue('wrong-type', ['pipeline'], expected, 'one that returned something else')]);
}

/**
 * The uncertainty of any chain of calculations: by Monte Carlo, and beside it to first order in closed form.
 *
 * Monte Carlo draws every input from its normal or log-normal distribution, independently, and runs the pipeline on each
 * draw. Where the pipeline ends in an answer, the answer’s own error is drawn on top: log-normal where its `scale` is
 * `log`. Closed form: s² = Σ (∂f/∂xᵢ sᵢ)² + s²(answer), slopes taken between xᵢ ± sᵢ, and all of it on the logarithms
 * where the answer is on a log scale. Where the two differ, the chain bends within the errors, or rounds: doubt the
 * closed form.
 *
 * Draws come from the Mersenne Twister MT19937 and are the same for the same seed (to the last digits of the engine’s
 * logarithm). Draws that the pipeline refuses, such as pressures that cross, are counted in `refused` and left out:
 * with many of them the result is conditional on being possible.
 *
 * - Evidence: `published` methods.
 * - Source: JCGM 101:2008; JCGM 100:2008, 5.1.2.
 *
 * @param input - `inputs`, each with `value`, `standardDeviation` and, where its error is a share, `scale: 'log'`; `pipeline`; `draws`; `seed`
 * @returns both results, plain JSON.
 * @throws InputError naming every wrong field; also where the pipeline refuses every draw. An error of the pipeline
 * that is no InputError is thrown on.
 *
 * @example
 * ```ts
 * import { estimateOcclusionPressure, targetCuffPressure } from 'cuffwork';
 * import { propagate } from 'cuffwork/study';
 * const result = propagate({
 *   inputs: { girth: { value: 54, standardDeviation: 1 }, systolic: { value: 120, standardDeviation: 5 } },
 *   pipeline: ({ girth, systolic }) =>
 *     targetCuffPressure({
 *       percent: 50,
 *       occlusion: estimateOcclusionPressure({
 *         limb: 'leg', circumferenceCm: girth, systolicMmHg: systolic, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine',
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
  const values: number[] = [];
  const deviations: number[] = [];
  const logs: boolean[] = [];
  const expected = `an object of 1 to ${MOST_INPUTS} readings, each with value and standardDeviation`;
  for (const [name, part] of reader.named('inputs', expected, MOST_INPUTS)) {
    if (name === OWN) part.report('wrong-relation', OWN, 'another name: this one is for the answer’s own error', OWN);
    const log = part.optionalChoice('scale', SCALES) === 'log';
    names.push(name);
    logs.push(log);
    values.push(part.judge('value', log ? POSITIVE : VALUE, part.raw('value')) ?? NaN);
    deviations.push(part.judge('standardDeviation', log ? SHARE : DEVIATION, part.raw('standardDeviation')) ?? NaN);
  }
  const pipeline = reader.raw('pipeline') as PropagateInput['pipeline'];
  if (typeof pipeline !== 'function') reader.report('wrong-type', 'pipeline', 'a function', typeof pipeline);
  const whole = (name: 'draws' | 'seed', quantity: Quantity, otherwise: number): number => {
    const number = reader.raw(name);
    return number === undefined ? otherwise : (reader.judge(name, quantity, number) ?? NaN);
  };
  const draws = whole('draws', DRAWS, 10_000);
  const seed = whole('seed', SEED, 1);
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
  const normal = normalDeviates(mersenneTwister(seed));
  const results: number[] = [];
  let log = true;
  for (let count = 0; count < draws; count += 1) {
    const outcome = run(values.map((value, index) => away(value, deviations[index]!, logs[index]!, normal())));
    // The deviate is drawn in any case, so that a refused draw does not shift those after it.
    const own = normal();
    if (!outcome) continue;
    log &&= outcome.log;
    results.push(away(outcome.value, outcome.deviation, outcome.log, own));
  }
  if (results.length < 2) {
    throw new InputError([issue('wrong-relation', ['inputs'], 'readings that the pipeline takes', 'none it took')]);
  }
  const sorted = Float64Array.from(results).sort();
  const scaled = log ? results.map((result) => Math.log(result)) : results;
  const middle = mean(scaled);
  const squares = accurateSum(scaled.map((result) => square(result - middle)));
  const closedForm = closedFormOf({ names, values, deviations, logs }, log, run);
  return {
    seed,
    draws,
    refused: draws - results.length,
    monteCarlo: {
      value: log ? Math.exp(middle) : middle,
      standardDeviation: Math.sqrt(squares / (results.length - 1)),
      ...(log && { scale: 'log' }),
      lower: quantile(sorted, 0.025),
      upper: quantile(sorted, 0.975),
    },
    ...(closedForm && { closedForm }),
  };
}

interface Readings {
  readonly names: readonly string[];
  readonly values: readonly number[];
  readonly deviations: readonly number[];
  readonly logs: readonly boolean[];
}

/** Slopes by differences over ± one standard deviation; one-sided where the pipeline refuses an end. */
function closedFormOf(
  { names, values, deviations, logs }: Readings,
  log: boolean,
  run: (numbers: readonly number[]) => Outcome | undefined,
): Propagated['closedForm'] {
  const centre = run(values);
  if (!centre) return undefined;
  const scaled = ({ value }: Outcome): number => (log ? Math.log(value) : value);
  const parts: Record<string, number> = {};
  let variance = square(centre.deviation);
  for (const [index, name] of names.entries()) {
    const moved = (deviate: number) =>
      run(
        values.map((value, other) =>
          other === index ? away(value, deviations[index]!, logs[index]!, deviate) : value,
        ),
      );
    const above = moved(1);
    const below = moved(-1);
    if (!above && !below) return undefined;
    const span = above && below ? 2 : 1;
    const part = Math.abs(scaled(above ?? centre) - scaled(below ?? centre)) / span;
    parts[name] = part;
    variance += square(part);
  }
  if (centre.deviation > 0) parts[OWN] = centre.deviation;
  const standardDeviation = Math.sqrt(variance);
  const { value } = centre;
  return {
    value,
    standardDeviation,
    ...(log && { scale: 'log' }),
    lower: away(value, standardDeviation, log, -NORMAL_95),
    upper: away(value, standardDeviation, log, NORMAL_95),
    parts,
  };
}
