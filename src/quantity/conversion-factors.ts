/** One pound (avoirdupois) in kilograms: exact by definition (UCUM `[lb_av]`). */
export const KILOGRAMS_PER_POUND = 0.45359237;
/** One inch in centimetres: exact by definition (UCUM `[in_i]`). */
export const CENTIMETRES_PER_INCH = 2.54;
/**
 * One conventional millimetre of mercury in pascals: 13 595.1 kg/m³ × 9.80665 m/s² × 1 mm. UCUM rounds it to 133.322.
 */
export const PASCALS_PER_MMHG = 133.322387415;
