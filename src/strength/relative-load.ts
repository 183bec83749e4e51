import type { Answer } from '../answer/answer.js';
import { interval, normalInterval } from '../answer/interval.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { formatUnit } from '../quantity/format.js';
import type { RelativeLoadEquation } from './equation.js';
import { relativeLoadEquations, type RelativeLoadEquationId } from './equations.js';
import { assumption } from './assumptions.js';
import { caution, comparisonCaution } from './messages.js';
import { need } from '../answer/needs.js';
import { LEFT_OUT_FOR_EQUATION, READING_FOR_PERCENT } from './needs.js';

/** What {@link estimateRelativeLoad} takes. */
export interface RelativeLoadInput {
  /** Id of the equation. */
  readonly equation: RelativeLoadEquationId;
  /**
   * Mean velocity of the bar [m/s], 0.05–3, in a repetition lifted as fast as possible; for the equations by velocity.
   * Two of them take the mean of the propulsive part alone.
   */
  readonly velocityMPerS?: number | undefined;
  /** Rating on the OMNI-RES 0–10 scale; for the equation by rating. */
  readonly omniRating?: number | undefined;
}

const IDS = relativeLoadEquations.map(({ id }) => id);
/**
 * Answers above this percentage are refused as impossible (`practice`). At the mean velocity of the samples at 1RM, less
 * two standard deviations, the equations give 103–107 %.
 */
const MOST_PERCENT = 110;

/**
 * The percentage of 1RM that a load is, from the velocity of the bar or from a rating.
 *
 * Lift the repetition as fast as possible. The equations do not hold for paced repetitions, such as light sets to a
 * metronome. At the same percentage, velocity differs between people by 9–25 % (coefficient of variation).
 *
 * Prefer your own load–velocity line. The full-squat equations read too high in other people; a caution says so.
 *
 * - Error: bench press 3.56 percentage points (`unconfirmed`); full squat 12 (`derived`); parallel squat none
 *   published, so no interval.
 * - Evidence: bench press `unconfirmed`; full squat `secondary`; parallel squat `published`.
 * - Source: Int J Sports Med 2010;31(5):347–352; Sports Med Int Open 2017;1(2):E80–E88; J Strength Cond Res 2017.
 *
 * @function
 * @param input - equation; `velocityMPerS` [m/s] or `omniRating` [0–10]
 * @returns percentage of 1RM [%]; above 100 % with a caution, where the bar was slower than that of the sample at 1RM.
 * @throws InputError that lists every wrong field; also where the equation or its interval reaches 0 %, or above 110 %.
 *
 * @example
 * ```ts
 * import { estimateRelativeLoad } from 'cuffwork';
 * const load = estimateRelativeLoad({ equation: 'parallel-squat-velocity-2017', velocityMPerS: 0.6 });
 * load.value.toFixed(1); // => '70.0'
 * ```
 */
export const estimateRelativeLoad = withInput(function estimateRelativeLoad(
  input: RelativeLoadInput,
): Answer<'percent-of-maximum'> {
  const reader = new Reader(input);
  const id = reader.choice('equation', IDS);
  const equation: RelativeLoadEquation = relativeLoadEquations.find((each) => each.id === id)!;
  const { reading, error, evidence, cautions = [] } = equation;
  const other = reading === 'omniRating' ? 'velocityMPerS' : 'omniRating';
  const given = reader.number(reading);
  reader.optionalNumber(other);
  reader.leaveOut(other, need(LEFT_OUT_FOR_EQUATION, { equation: id }));
  const value = equation.apply(given);
  const part = error && { part: 'equation' as const, ...error };
  const ends = part && interval(value, [part]);
  if (reader.fine && !((ends?.lower ?? value) > 0 && value <= MOST_PERCENT)) {
    const expected = need(READING_FOR_PERCENT, { equation: id, most: MOST_PERCENT });
    reader.refuse(reading, expected, formatUnit(value, '%'));
  }
  reader.done();
  return {
    kind: 'percent-of-maximum',
    value,
    unit: '%',
    ...ends,
    equation: id,
    evidence,
    inputs: { [reading]: given },
    assumptions: [
      assumption('fitted-on', { equation: id }),
      ...equation.assumptions.map((code) => assumption(code)),
      ends ? normalInterval : assumption('relative-load-no-error', { equation: id }),
    ],
    cautions: [
      comparisonCaution('caution', 'maximal-intent', undefined, { path: [reading] }),
      ...(value > 100 ? [comparisonCaution('caution', 'above-the-maximum', undefined, { path: [reading] })] : []),
      ...(reading === 'velocityMPerS'
        ? [comparisonCaution('note', 'velocity-between-people', undefined, { source: 'velocity-variation-2022' })]
        : []),
      ...cautions.map(({ code, source }) => comparisonCaution('caution', code, undefined, { source })),
      ...(evidence === 'unconfirmed' ? [caution('caution', 'coefficients-unconfirmed', { equation: id })] : []),
    ],
  };
});
