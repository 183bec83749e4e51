import { answersAtEnds, type AnswerRange, type PercentRange } from '../answer/range.js';
import { withInput } from '../answer/with-input.js';
import { targetCuffPressure, type CuffPressure, type TargetInput } from './target.js';

/** What {@link targetCuffPressureRange} takes: the fields of `targetCuffPressure`, with a range of percentages. */
export interface TargetRangeInput extends Omit<TargetInput, 'percentLop'> {
  /** Range of percentages of limb occlusion pressure [%], each 1–100. */
  readonly percentLop: PercentRange;
}

/**
 * The cuff pressures at both ends of a range of percentages of limb occlusion pressure (LOP), such as 40–80 %: each an
 * answer of `targetCuffPressure`, rounded down to the gauge, with its own interval and cautions.
 *
 * Formula: P = p / 100 × LOP, at both ends of p
 *
 * - Usual range: 40 to 80 % (guideline review 2019, `secondary`), at rest 70 to 100 % (`unconfirmed`).
 * - Error and evidence: those of the occlusion pressure.
 * - Source of the usual range: Front Physiol 2019;10:533.
 *
 * @function
 * @param input - fields of `targetCuffPressure`; `percentLop` p, a range `{ from, to }` [%]
 * @returns P at `from` and at `to` [mmHg].
 * @throws InputError that lists every wrong field of both ends, and a range whose upper end is below the lower one.
 *
 * @example
 * ```ts
 * import { targetCuffPressureRange } from 'cuffwork';
 * const { from, to } = targetCuffPressureRange({ occlusion: 165, percentLop: { from: 40, to: 80 } });
 * `${from.value} to ${to.value} mmHg`; // => '66 to 132 mmHg'
 * ```
 */
export const targetCuffPressureRange = /* @__PURE__ */ withInput(function targetCuffPressureRange(
  input: TargetRangeInput,
): AnswerRange<CuffPressure> {
  return answersAtEnds(targetCuffPressure, input, 'percentLop');
});
