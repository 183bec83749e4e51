import { CENTIMETRES_PER_INCH, KILOGRAMS_PER_POUND, PASCALS_PER_MMHG } from '../quantity/conversion-factors.js';
import { scaled } from '../quantity/decimal.js';
import { roundToStep as rounded, type Rounding } from '../quantity/exact.js';
import { optionIssue } from './field-reader.js';
import { describe, InputError, issue, refuse, type InputIssue } from './issues.js';
import { ABOVE_ZERO, BOUNDED_RESULT, FINITE, type Asked } from './needs.js';

// What is within the library trusts its numbers, and calls the layer below; these are for callers, and check.

const numberIssue = (field: string, value: unknown, expected: Asked): InputIssue[] =>
  Number.isFinite(value)
    ? []
    : [issue(typeof value === 'number' ? 'not-finite' : 'wrong-type', [field], expected, describe(value))];

/** The result, where a double can hold it. */
function held(field: string, value: number, result: number): number {
  if (Number.isFinite(result)) return result;
  refuse('out-of-range', [field], BOUNDED_RESULT, describe(value));
}

function converted(field: string, value: number, times: number, over: number): number {
  const issues = numberIssue(field, value, FINITE);
  if (issues.length > 0) throw new InputError(issues);
  return held(field, value, scaled(value, times, over));
}

/**
 * Pounds to kilograms, exact in decimals.
 *
 * @param pounds - mass [lb]
 * @returns the same mass [kg]
 * @throws InputError for what is not a finite number
 *
 * @example
 * ```ts
 * import { poundsToKilograms } from 'cuffwork';
 * poundsToKilograms(45); // => 20.41165665
 * ```
 */
export const poundsToKilograms = (pounds: number): number => converted('pounds', pounds, KILOGRAMS_PER_POUND, 1);

/**
 * Kilograms to pounds, in decimals.
 *
 * @param kilograms - mass [kg]
 * @returns the same mass [lb]
 * @throws InputError for what is not a finite number
 *
 * @example
 * ```ts
 * import { kilogramsToPounds } from 'cuffwork';
 * kilogramsToPounds(20.41165665); // => 45
 * ```
 */
export const kilogramsToPounds = (kilograms: number): number =>
  converted('kilograms', kilograms, 1, KILOGRAMS_PER_POUND);

/**
 * Inches to centimetres, exact in decimals.
 *
 * @param inches - length [in]
 * @returns the same length [cm]
 * @throws InputError for what is not a finite number
 *
 * @example
 * ```ts
 * import { inchesToCentimetres } from 'cuffwork';
 * inchesToCentimetres(22); // => 55.88
 * ```
 */
export const inchesToCentimetres = (inches: number): number => converted('inches', inches, CENTIMETRES_PER_INCH, 1);

/**
 * Centimetres to inches, in decimals.
 *
 * @param centimetres - length [cm]
 * @returns the same length [in]
 * @throws InputError for what is not a finite number
 *
 * @example
 * ```ts
 * import { centimetresToInches } from 'cuffwork';
 * centimetresToInches(55.88); // => 22
 * ```
 */
export const centimetresToInches = (centimetres: number): number =>
  converted('centimetres', centimetres, 1, CENTIMETRES_PER_INCH);

/**
 * Kilopascals to conventional millimetres of mercury.
 *
 * @param kilopascals - pressure [kPa]
 * @returns the same pressure [mmHg]
 * @throws InputError for what is not a finite number
 *
 * @example
 * ```ts
 * import { kilopascalsToMmHg } from 'cuffwork';
 * kilopascalsToMmHg(13.3322387415); // => 100
 * ```
 */
export const kilopascalsToMmHg = (kilopascals: number): number =>
  converted('kilopascals', kilopascals, 1000, PASCALS_PER_MMHG);

/**
 * Conventional millimetres of mercury to kilopascals.
 *
 * @param mmHg - pressure [mmHg]
 * @returns the same pressure [kPa]
 * @throws InputError for what is not a finite number
 *
 * @example
 * ```ts
 * import { mmHgToKilopascals } from 'cuffwork';
 * mmHgToKilopascals(120); // => 15.9986864898
 * ```
 */
export const mmHgToKilopascals = (mmHg: number): number => converted('mmHg', mmHg, PASCALS_PER_MMHG, 1000);

/**
 * A positive value brought to a multiple of a step, in decimals. `nearest` takes half a step up.
 *
 * @param value - what is to be rounded [any unit]
 * @param step - the step [unit of `value`]
 * @param rounding - `down` or `nearest`
 * @returns the multiple [unit of `value`]
 * @throws InputError for what is not a finite number, a step of zero or below, and another rounding
 *
 * @example
 * ```ts
 * import { roundToStep } from 'cuffwork';
 * roundToStep(80.9, 2, 'down'); // => 80
 * roundToStep(0.57 * 300, 1, 'down'); // => 171
 * ```
 */
export function roundToStep(value: number, step: number, rounding: Rounding): number {
  const issues = numberIssue('value', value, FINITE);
  issues.push(...numberIssue('step', step, ABOVE_ZERO));
  if (Number.isFinite(step) && step <= 0) issues.push(issue('out-of-range', ['step'], ABOVE_ZERO, describe(step)));
  if (rounding !== 'down' && rounding !== 'nearest')
    issues.push(optionIssue(['rounding'], ['down', 'nearest'], rounding));
  if (issues.length > 0) throw new InputError(issues);
  return held('value', value, rounded(value, step, rounding));
}
