import { answersAtEnds, type AnswerRange, type PercentRange } from '../answer/range.js';
import { withInput } from '../answer/with-input.js';
import { trainingLoad, type TrainingLoad, type TrainingLoadInput } from './training-load.js';

/** What {@link trainingLoadRange} takes: the fields of `trainingLoad`, with a range of percentages. */
export interface TrainingLoadRangeInput extends Omit<TrainingLoadInput, 'percentOneRepMax'> {
  /** Range of percentages of the 1RM [%], each 1–100. */
  readonly percentOneRepMax: PercentRange;
}

/**
 * The loads at both ends of a range of percentages of a one-repetition maximum (1RM), such as 20–30 %: each an answer
 * of `trainingLoad`, rounded to a load you can set, with its own interval and cautions.
 *
 * Formula: w = p / 100 × 1RM, at both ends of p
 *
 * - Usual range with restriction: 20–40 % of 1RM (guideline review 2019, `secondary`).
 * - Error and evidence: those of each load.
 *
 * @function
 * @param input - fields of `trainingLoad`; `percentOneRepMax` p, a range `{ from, to }` [%]
 * @returns w at `from` and at `to` [`unit`].
 * @throws InputError that lists every wrong field of both ends, and a range whose upper end is below the lower one.
 *
 * @example
 * ```ts
 * import { trainingLoadRange } from 'cuffwork';
 * const { from, to } = trainingLoadRange({ oneRepMax: 45, percentOneRepMax: { from: 20, to: 30 } });
 * `${from.value} to ${to.value} kg`; // => '9 to 13.5 kg'
 * ```
 */
export const trainingLoadRange = /* @__PURE__ */ withInput(function trainingLoadRange(
  input: TrainingLoadRangeInput,
): AnswerRange<TrainingLoad> {
  return answersAtEnds(trainingLoad, input, 'percentOneRepMax');
});
