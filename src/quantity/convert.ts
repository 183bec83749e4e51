import { scaled } from './decimal.js';
import type { LoadUnit } from './quantities.js';

/** One pound (avoirdupois) in kilograms: exact by definition (UCUM `[lb_av]`). */
export const KILOGRAMS_PER_POUND = 0.45359237;
/** One inch in centimetres: exact by definition (UCUM `[in_i]`). */
export const CENTIMETRES_PER_INCH = 2.54;
/** One conventional millimetre of mercury in pascals: 13 595.1 kg/m³ × 9.80665 m/s² × 1 mm. UCUM rounds it to 133.322. */
export const PASCALS_PER_MMHG = 133.322387415;

/**
 * Pounds to kilograms, exact in decimals.
 *
 * @example
 * ```ts
 * import { poundsToKilograms } from 'cuffwork';
 * poundsToKilograms(45); // => 20.41165665
 * ```
 */
export const poundsToKilograms = (pounds: number): number => scaled(pounds, KILOGRAMS_PER_POUND, 1);

/**
 * Kilograms to pounds, in decimals.
 *
 * @example
 * ```ts
 * import { kilogramsToPounds } from 'cuffwork';
 * kilogramsToPounds(20.41165665); // => 45
 * ```
 */
export const kilogramsToPounds = (kilograms: number): number => scaled(kilograms, 1, KILOGRAMS_PER_POUND);

/**
 * Inches to centimetres, exact in decimals.
 *
 * @example
 * ```ts
 * import { inchesToCentimetres } from 'cuffwork';
 * inchesToCentimetres(22); // => 55.88
 * ```
 */
export const inchesToCentimetres = (inches: number): number => scaled(inches, CENTIMETRES_PER_INCH, 1);

/**
 * Centimetres to inches, in decimals.
 *
 * @example
 * ```ts
 * import { centimetresToInches } from 'cuffwork';
 * centimetresToInches(55.88); // => 22
 * ```
 */
export const centimetresToInches = (centimetres: number): number => scaled(centimetres, 1, CENTIMETRES_PER_INCH);

/**
 * Kilopascals to conventional millimetres of mercury.
 *
 * @example
 * ```ts
 * import { kilopascalsToMmHg } from 'cuffwork';
 * kilopascalsToMmHg(13.3322387415); // => 100
 * ```
 */
export const kilopascalsToMmHg = (kilopascals: number): number => scaled(kilopascals, 1000, PASCALS_PER_MMHG);

/**
 * Conventional millimetres of mercury to kilopascals.
 *
 * @example
 * ```ts
 * import { mmHgToKilopascals } from 'cuffwork';
 * mmHgToKilopascals(120); // => 15.9986864898
 * ```
 */
export const mmHgToKilopascals = (mmHg: number): number => scaled(mmHg, PASCALS_PER_MMHG, 1000);

/** A load carried from one unit to another. */
export const convertLoad = (load: number, from: LoadUnit, to: LoadUnit): number =>
  from === to ? load : to === 'kg' ? poundsToKilograms(load) : kilogramsToPounds(load);
