import type { Answer } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { formatUnit } from '../quantity/format.js';
import { limbCircumference } from '../quantity/quantities.js';
import { readBloodPressure } from './blood-pressure.js';
import { diastolicBias, systolicBias } from './equations/bladder-width.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { need } from '../answer/needs.js';
import { STAYS_ABOVE_DIASTOLIC } from './needs.js';

/** What {@link correctForBladderWidth} takes. */
export interface BladderWidthInput {
  /** Systolic blood pressure as read [mmHg], 60–300. */
  readonly systolicMmHg: number;
  /** Diastolic blood pressure as read [mmHg], 30–200. */
  readonly diastolicMmHg: number;
  /** Circumference of the arm that the reading was taken on [cm], 15–70. */
  readonly circumferenceCm: number;
  /** Width of the bladder in the cuff that the reading was taken with [cm], 12–18. */
  readonly bladderWidthCm: number;
}

/** A blood pressure as it would have read with a bladder of the right width. */
export interface CorrectedBloodPressure {
  /** Corrected systolic blood pressure [mmHg]. */
  readonly systolic: Answer<'systolic-pressure'>;
  /** Corrected diastolic blood pressure [mmHg]. */
  readonly diastolic: Answer<'diastolic-pressure'>;
}

/**
 * A blood-pressure reading taken with a cuff of the wrong size, less its published bias. Nothing else in the library
 * calls it: call it yourself, and pass its answers on.
 *
 * Formula: SBP = reading − bias(AC, B), and the same for the diastolic pressure; for the fitted biases see
 * `systolicBias` and `diastolicBias` in `cuffwork/equations`.
 *
 * - Range: bladder width 12 to 18 cm, refused outside it; arm 26 to 50 cm, a caution outside it.
 * - Error: not checked, so there is no interval.
 * - Evidence: `published`.
 * - Source: WHO MONICA quality assessment document.
 *
 * @function
 * @param input - `systolicMmHg` and `diastolicMmHg`, the reading [mmHg]; `circumferenceCm` AC, of the arm [cm];
 * `bladderWidthCm` B [cm]
 * @returns both pressures [mmHg].
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { correctForBladderWidth } from 'cuffwork';
 * const { systolic } = correctForBladderWidth({
 *   systolicMmHg: 140, diastolicMmHg: 85, circumferenceCm: 42, bladderWidthCm: 12,
 * });
 * systolic.value.toFixed(1); // => '127.9'
 * ```
 */
export const correctForBladderWidth = withInput(function correctForBladderWidth(
  input: BladderWidthInput,
): CorrectedBloodPressure {
  const reader = new Reader(input);
  const { systolicMmHg, diastolicMmHg } = readBloodPressure(reader);
  const circumferenceCm = reader.number('circumferenceCm', limbCircumference.arm);
  const bladderWidthCm = reader.number('bladderWidthCm');
  const systolic = systolicMmHg - systolicBias(circumferenceCm, bladderWidthCm);
  const diastolic = diastolicMmHg - diastolicBias(circumferenceCm, bladderWidthCm);
  if (reader.fine && systolic <= diastolic) {
    const expected = need(STAYS_ABOVE_DIASTOLIC, { value: diastolic, unit: 'mm[Hg]' });
    reader.refuse('systolicMmHg', expected, formatUnit(systolicMmHg, 'mm[Hg]'));
  }
  reader.done();
  const more = { path: ['circumferenceCm'], source: 'monica-quality' } as const;
  const common = {
    unit: 'mm[Hg]',
    equation: 'bladder-bias',
    evidence: 'published',
    assumptions: [assumption('bias-published')],
    cautions:
      circumferenceCm < 26 || circumferenceCm > 50
        ? [caution('caution', 'arm-outside-bias-range', { value: circumferenceCm }, more)]
        : [],
  } as const;
  const arm = { circumferenceCm, bladderWidthCm };
  return {
    systolic: {
      kind: 'systolic-pressure',
      value: systolic,
      inputs: { systolicMmHg, ...arm },
      ...common,
    },
    diastolic: {
      kind: 'diastolic-pressure',
      value: diastolic,
      inputs: { diastolicMmHg, ...arm },
      ...common,
    },
  };
});
