import { numberIssue } from '../answer/field-reader.js';
import { InputError } from '../answer/issues.js';
import { frozen } from '../quantity/frozen.js';
import type { Quantity } from '../quantity/quantities.js';

export const MISSING = 1;
export const IMPOSSIBLE = 2;
export const RELATION = 4;
export const DOES_NOT_APPLY = 8;
export const OUTSIDE_FITTED_RANGE = 16;
export const NO_INTERVAL = 32;
export const CEILING_REACHED = 64;
export const BLOOD_PRESSURE_REFER = 128;

/**
 * All bits that refuse a row: `flag & REFUSED` is 0 for a row that has an answer.
 *
 * @example
 * ```ts
 * import { REFUSED } from 'cuffwork/study';
 * 16 & REFUSED; // => 0
 * ```
 */
export const REFUSED = MISSING | IMPOSSIBLE | RELATION | DOES_NOT_APPLY;

/**
 * What a row of a column answer may be flagged with. A flag is a sum of `bit`s, 0 for a row without
 * flags. Rows with a bit of {@link REFUSED} have no answer: their numbers are NaN.
 *
 * @example
 * ```ts
 * import { rowFlags } from 'cuffwork/study';
 * rowFlags.missing.bit; // => 1
 * rowFlags['outside-fitted-range'].refused; // => false
 * ```
 */
export const rowFlags = frozen({
  missing: { bit: MISSING, refused: true, text: 'A value that is needed is missing.' },
  impossible: { bit: IMPOSSIBLE, refused: true, text: 'A value is not a number or word that the field takes.' },
  relation: {
    bit: RELATION,
    refused: true,
    text: 'The values do not fit together: pressures swapped, repetitions at a pole, a maximum below the load, a step above the answer.',
  },
  'does-not-apply': {
    bit: DOES_NOT_APPLY,
    refused: true,
    text: 'The equation is for another limb, cuff width or lift.',
  },
  'outside-fitted-range': {
    bit: OUTSIDE_FITTED_RANGE,
    refused: false,
    text: 'A value is outside the range, or a person outside the sample, that the equation was fitted on.',
  },
  'no-interval': {
    bit: NO_INTERVAL,
    refused: false,
    text: 'The error is not known, or needs a reading that was left out.',
  },
  'ceiling-reached': { bit: CEILING_REACHED, refused: false, text: 'The ceiling holds the setting down.' },
  'blood-pressure-refer': {
    bit: BLOOD_PRESSURE_REFER,
    refused: false,
    text: 'Blood pressure at or above 180/110 mmHg: do not train; refer to a physician.',
  },
} as const satisfies Record<string, { readonly bit: number; readonly refused: boolean; readonly text: string }>);

/** The code of a row flag. */
export type RowFlag = keyof typeof rowFlags;

const FLAG: Quantity = { name: 'flag of a row', unit: '1', min: 0, max: 255, whole: true };

/**
 * The codes of a row’s flag.
 *
 * @param flag - one value of a `flag` column [sum of bits]
 * @returns codes of {@link rowFlags}, empty for 0.
 * @throws InputError for what is not a whole number from 0 to 255
 *
 * @example
 * ```ts
 * import { flagCodes } from 'cuffwork/study';
 * flagCodes(17); // => ['missing', 'outside-fitted-range']
 * ```
 */
export function flagCodes(flag: number): RowFlag[] {
  const wrong = numberIssue(FLAG, flag, ['flag']);
  if (wrong) throw new InputError([wrong]);
  return (Object.keys(rowFlags) as RowFlag[]).filter((code) => (flag & rowFlags[code].bit) !== 0);
}
