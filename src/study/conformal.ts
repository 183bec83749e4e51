import { Math } from '../quantity/maths.js';
import { issue, type InputIssue } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { indexBelow, mersenneTwister } from '../statistics/random.js';
import { numbersOf, pairRows, peopleOf, reportNoLogarithm, type Names, type Numbers } from './lists.js';
import { LEAST_BOTH } from './needs.js';
import { readScale, readSeed } from './options.js';

/** Options of {@link conformal}. */
export interface ConformalOptions {
  /** The person of each row, where people have several rows: one of them is drawn for each. */
  readonly person?: Names | undefined;
  /** Seed of the draw of one row for each person, a whole number from 0 to 4294967295; 1 when left out. */
  readonly seed?: number | undefined;
  /**
   * `log` for errors that grow with the value: the interval is then value ÷ and × a factor. `difference` when left out.
   */
  readonly scale?: 'difference' | 'log' | undefined;
}

/** What {@link conformal} returns: plain JSON. */
export interface Conformal {
  /** `log`: the interval is the prediction ÷ and × `halfWidth`; `difference`: − and +. */
  readonly scale: 'difference' | 'log';
  /**
   * Half-width of the interval: add it to a prediction, and take it off; on the log scale multiply and divide by it.
   */
  readonly halfWidth: number;
  /** People it was taken from. */
  readonly people: number;
  /** The chance that the interval holds a new person, whatever the distribution: at least 0.95. */
  readonly level: number;
  /** Rows left out, because a value is missing. */
  readonly missing: number;
}

/** Below, no interval of this kind holds 95 %. */
const LEAST_PEOPLE = 19;

/**
 * The half-width of a prediction interval that holds for any distribution of the errors (split conformal).
 *
 * Formula: the ⌈0.95 (n + 1)⌉-th smallest of |measured − predicted| of n people whom the equation has not seen.
 *
 * A new person from the same population lies inside with a chance of at least 95 %, on average over studies. Use
 * people who took no part in the fit. With predictions of {@link crossValidate} it holds about as well, without proof.
 * It is one width for everyone: it does not hold for each group of people.
 *
 * - Evidence: `unconfirmed`: a published method, formulas from memory.
 * - Source: J Am Stat Assoc 2018;113(523):1094–1111.
 *
 * @param measured - the measurements
 * @param predicted - their predictions, a list of the same length
 * @param options - `person`, `seed`, `scale`
 * @returns the half-width in the unit of the values, plain JSON.
 * @throws InputError for fewer than 19 people, lists that differ in length, values of 0 or below on a log scale
 *
 * @example
 * ```ts
 * import { conformal } from 'cuffwork/study';
 * const measured = Array.from({ length: 39 }, (_, i) => 150 + i);
 * const { halfWidth, level } = conformal(measured, measured.map((value, i) => value + (i % 13) - 6));
 * [halfWidth, level]; // => [6, 0.95]
 * ```
 */
export function conformal(measured: Numbers, predicted: Numbers, options: ConformalOptions = {}): Conformal {
  const issues: InputIssue[] = [];
  const reader = new Reader(options, ['options'], issues);
  const scale = readScale(reader);
  const seed = readSeed(reader);
  const person = reader.raw('person');
  const x = numbersOf(measured, ['measured'], issues);
  const y = numbersOf(predicted, ['predicted'], issues, x.length);
  const who = peopleOf(person, ['person'], issues, x.length);
  if (!reader.fine) reader.done();

  const { kept } = pairRows(x, y, who);
  const log = scale === 'log';
  if (log) {
    reportNoLogarithm(x, kept, ['measured'], issues);
    reportNoLogarithm(y, kept, ['predicted'], issues);
  }
  const errors: number[][] = [];
  for (const row of kept) {
    const error = log ? Math.log(x[row]! / y[row]!) : x[row]! - y[row]!;
    (errors[who ? who[row]! : row] ??= []).push(Math.abs(error));
  }
  const groups = errors.filter((group) => group !== undefined);
  const people = groups.length;
  if (reader.fine && people < LEAST_PEOPLE) {
    issues.push(issue('wrong-relation', ['measured'], need(LEAST_BOTH, { least: LEAST_PEOPLE }), `${people}`));
  }
  reader.done();
  const random = mersenneTwister(seed);
  const one = groups.map((group) => (group.length === 1 ? group[0]! : group[indexBelow(random, group.length)]!));
  const rank = Math.ceil(0.95 * (people + 1) - 1e-9);
  const width = Float64Array.from(one).sort()[rank - 1]!;
  return {
    scale,
    halfWidth: log ? Math.exp(width) : width,
    people,
    level: rank / (people + 1),
    missing: x.length - kept.length,
  };
}
