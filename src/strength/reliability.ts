/**
 * Standard error of measurement of a test, from how much people differ and how reliable the test is.
 *
 * Formula: SEM = SD × √(1 − ICC)
 *
 * - Evidence: `unconfirmed`; the formula is written from memory.
 * - Source: J Strength Cond Res 2005;19(1):231–240.
 *
 * @param standardDeviation - SD between people, in the unit of the test
 * @param reliability - ICC, intraclass correlation coefficient, 0 to 1
 * @returns SEM, in the unit of the test
 *
 * @example
 * ```ts
 * import { standardErrorOfMeasurement } from 'cuffwork/equations';
 * standardErrorOfMeasurement(20, 0.91).toFixed(6); // => '6.000000'
 * ```
 */
export const standardErrorOfMeasurement = (standardDeviation: number, reliability: number): number =>
  standardDeviation * Math.sqrt(1 - reliability);

/**
 * The smallest change between two tests that is more than their error, with 95 % confidence.
 *
 * Formula: MDC95 = 1.96 × √2 × SEM
 *
 * - Evidence: `unconfirmed`; the formula is written from memory.
 * - Source: J Strength Cond Res 2005;19(1):231–240.
 *
 * @param standardError - SEM, or a coefficient of variation [%], for an answer in the same unit
 * @returns MDC95, in the unit of `standardError`
 *
 * @example
 * ```ts
 * import { minimalDetectableChange } from 'cuffwork/equations';
 * minimalDetectableChange(4.2).toFixed(4); // => '11.6418'
 * ```
 */
export const minimalDetectableChange = (standardError: number): number => 1.96 * Math.SQRT2 * standardError;

/**
 * Typical error of a test, from the differences between two tests of the same people.
 *
 * Formula: TE = SD of the differences / √2
 *
 * - Evidence: `unconfirmed`; the formula is written from memory.
 * - Source: Sports Med 2000;30:1–15.
 *
 * @param differencesStandardDeviation - standard deviation of the differences, in the unit of the test
 * @returns TE, in the unit of the test
 *
 * @example
 * ```ts
 * import { typicalError } from 'cuffwork/equations';
 * typicalError(4).toFixed(4); // => '2.8284'
 * ```
 */
export const typicalError = (differencesStandardDeviation: number): number => differencesStandardDeviation / Math.SQRT2;
