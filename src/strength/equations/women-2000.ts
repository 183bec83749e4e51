import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the chest press in college-aged women from the load of a 5 to 10RM (2000 regression).
 *
 * Formula: 1RM = 7.24 + 1.05 × w [lb]
 *
 * - Shape: a straight line with an intercept in lb, for the load of the test alone: it has no term for repetitions.
 * - Fitted range: 5 to 10 repetitions to failure; 30 women, 19 to 26 years.
 * - Error: standard error of estimate 2.5 kg, 7.8 % of the measured maximum.
 * - Evidence: `published`.
 * - Source: JEPonline 2000;3(3).
 *
 * @param load - w, load lifted [lb]
 * @returns 1RM [lb]
 *
 * @example
 * ```ts
 * import { chestPressWomen2000 } from 'cuffwork/equations';
 * chestPressWomen2000(60).toFixed(4); // => '70.2400'
 * ```
 */
export const chestPressWomen2000 = (load: number): number => 7.24 + 1.05 * load;

/**
 * One-repetition maximum of the shoulder press in college-aged women from the load of a 5 to 10RM (2000 regression).
 *
 * Formula: 1RM = 1.43 + 1.2 × w [lb]
 *
 * - Shape: a straight line with an intercept in lb, for the load of the test alone: it has no term for repetitions.
 * - Fitted range: 5 to 10 repetitions to failure; 30 women, 19 to 26 years.
 * - Error: standard error of estimate 1.6 kg, 7.6 % of the measured maximum.
 * - Evidence: `published`.
 * - Source: JEPonline 2000;3(3).
 *
 * @param load - w, load lifted [lb]
 * @returns 1RM [lb]
 *
 * @example
 * ```ts
 * import { shoulderPressWomen2000 } from 'cuffwork/equations';
 * shoulderPressWomen2000(40).toFixed(4); // => '49.4300'
 * ```
 */
export const shoulderPressWomen2000 = (load: number): number => 1.43 + 1.2 * load;

/**
 * One-repetition maximum of the knee extension in college-aged women from the load of a 5 to 10RM (2000 regression).
 *
 * Formula: 1RM = 4.67 + 1.14 × w [lb]
 *
 * - Shape: a straight line with an intercept in lb, for the load of the test alone: it has no term for repetitions.
 * - Fitted range: 5 to 10 repetitions to failure; 30 women, 19 to 26 years.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `unconfirmed`; the coefficients are written from memory.
 * - Source: JEPonline 2000;3(3).
 *
 * @param load - w, load lifted [lb]
 * @returns 1RM [lb]
 *
 * @example
 * ```ts
 * import { kneeExtensionWomen2000 } from 'cuffwork/equations';
 * kneeExtensionWomen2000(40).toFixed(4); // => '50.2700'
 * ```
 */
export const kneeExtensionWomen2000 = (load: number): number => 4.67 + 1.14 * load;

/** What the three equations have in common. */
const SHARED = {
  symbols: { w: 'load' },
  unit: 'lb',
  sample: '30 women, 19 to 26 years',
  population: { sex: 'female', ageYears: { low: 19, high: 26 } },
  fittedRepetitions: { low: 5, high: 10 },
  domain: { from: 5, to: 10, reason: 'no-repetition-term' },
  basis: 'data',
  sources: ['college-women-2000'],
  assumptions: ['regression-of-its-device'],
} as const;

export const chestPressWomen2000Equation = {
  ...SHARED,
  id: 'chest-press-women-2000',
  name: 'chest press, college-aged women, from a 5–10RM (2000)',
  formula: '7.24 + 1.05 * w',
  apply: chestPressWomen2000,
  lifts: ['chest-press'],
  error: { standardDeviation: 2.5, unit: 'kg' },
  evidence: 'published',
} as const satisfies OneRepMaxEquation;

export const shoulderPressWomen2000Equation = {
  ...SHARED,
  id: 'shoulder-press-women-2000',
  name: 'shoulder press, college-aged women, from a 5–10RM (2000)',
  formula: '1.43 + 1.2 * w',
  apply: shoulderPressWomen2000,
  lifts: ['shoulder-press'],
  error: { standardDeviation: 1.6, unit: 'kg' },
  evidence: 'published',
} as const satisfies OneRepMaxEquation;

export const kneeExtensionWomen2000Equation = {
  ...SHARED,
  id: 'knee-extension-women-2000',
  name: 'knee extension, college-aged women, from a 5–10RM (2000)',
  formula: '4.67 + 1.14 * w',
  apply: kneeExtensionWomen2000,
  lifts: ['knee-extension'],
  evidence: 'unconfirmed',
} as const satisfies OneRepMaxEquation;
