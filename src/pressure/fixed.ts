import type { Answer } from '../answer/answer.js';
import { pressureCautions } from '../answer/guards.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { limbCircumference } from '../quantity/quantities.js';
import { circumferenceBands, circumferenceBandsRule } from './equations/circumference-bands.js';
import { systolic130, systolic130Rule } from './equations/systolic-130.js';
import type { PressureAssumption } from '../answer/codes.js';
import { assumption } from './assumptions.js';
import { caution as estimateCaution } from './estimate-messages.js';
import { caution } from './messages.js';

/** A pressure that older schemes give everyone with the same reading [mmHg]. It is not an occlusion pressure. */
export type FixedTrainingPressure = Answer<'fixed-training-pressure'>;

function fixed(
  rule: typeof circumferenceBandsRule | typeof systolic130Rule,
  value: number,
  inputs: Answer['inputs'],
  assumptions: readonly PressureAssumption[],
): FixedTrainingPressure {
  const { id, evidence } = rule;
  return {
    kind: 'fixed-training-pressure',
    value,
    unit: 'mm[Hg]',
    equation: id,
    evidence,
    inputs,
    assumptions: assumptions.map((code) => assumption(code)),
    cautions: [
      ...pressureCautions('cuff-pressure', value),
      caution('caution', 'not-an-occlusion-pressure'),
      estimateCaution('caution', 'equation-unconfirmed', { equation: id }),
    ],
  };
}

/**
 * The fixed training pressure of the circumference bands, for a 5 cm cuff on the thigh. It is not an occlusion
 * pressure: `targetCuffPressure` refuses it.
 *
 * Formula: P = 120 below 51 cm, 150 below 56 cm, 180 below 60 cm, 210 mmHg from there
 *
 * - Error: not known, so there is no interval.
 * - Evidence: `unconfirmed`, written from memory.
 * - Source: a rule of the trade; no publication was read.
 *
 * @function
 * @param input - `circumferenceCm` TC, thigh circumference [cm]
 * @returns P [mmHg]
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { circumferenceBandPressure } from 'cuffwork';
 * circumferenceBandPressure({ circumferenceCm: 58 }).value; // => 180
 * ```
 */
export const circumferenceBandPressure = withInput(function circumferenceBandPressure(input: {
  /** Thigh circumference [cm], 25–120. */
  readonly circumferenceCm: number;
}): FixedTrainingPressure {
  const reader = new Reader(input);
  const circumferenceCm = reader.number('circumferenceCm', limbCircumference.leg);
  reader.done();
  const value = circumferenceBands(circumferenceCm);
  return fixed(circumferenceBandsRule, value, { circumferenceCm }, ['rule-of-the-trade', 'bands-without-gaps']);
});

/**
 * The fixed training pressure of 130 % of the systolic pressure. It is not an occlusion pressure:
 * `targetCuffPressure` refuses it.
 *
 * Formula: P = 1.3 × SBP
 *
 * - Error: not known, so there is no interval.
 * - Evidence: `unconfirmed`, written from memory.
 * - Source: a rule of the trade; no publication was read.
 *
 * @function
 * @param input - `systolicMmHg` SBP, brachial systolic pressure [mmHg]
 * @returns P [mmHg]
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { systolicSharePressure } from 'cuffwork';
 * systolicSharePressure({ systolicMmHg: 120 }).value; // => 156
 * ```
 */
export const systolicSharePressure = withInput(function systolicSharePressure(input: {
  /** Systolic blood pressure at the upper arm [mmHg], 60–300. */
  readonly systolicMmHg: number;
}): FixedTrainingPressure {
  const reader = new Reader(input);
  const systolicMmHg = reader.number('systolicMmHg');
  reader.done();
  return fixed(systolic130Rule, systolic130(systolicMmHg), { systolicMmHg }, ['rule-of-the-trade']);
});
