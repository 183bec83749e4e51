import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the knee extension in college-aged women from the load of a 5 to 10RM (2000 regression).
 *
 * Formula: 1RM = 4.67 + 1.14 × w [lb]
 *
 * - Shape: a straight line with an intercept in lb, for the load of the test alone: it has no term for repetitions.
 * - Fitted range: 5 to 10 repetitions to failure; 30 women, 19 to 26 years.
 * - Error: not at hand; see {@link estimateOneRepMax}.
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

export const kneeExtensionWomen2000Equation = {
  id: 'knee-extension-women-2000',
  name: 'knee extension, college-aged women, from a 5–10RM (2000)',
  formula: '4.67 + 1.14 * w',
  symbols: { w: 'load' },
  apply: kneeExtensionWomen2000,
  unit: 'lb',
  lifts: ['knee-extension'],
  sample: '30 women, 19 to 26 years',
  population: { sex: 'female', ageYears: { low: 19, high: 26 } },
  fittedRepetitions: { low: 5, high: 10 },
  domain: { from: 5, to: 10, reason: 'the tests it was fitted on; it has no term for repetitions' },
  basis: 'data',
  evidence: 'unconfirmed',
  sources: ['college-women-2000'],
  assumptions: ['regression-of-its-device'],
} as const satisfies OneRepMaxEquation;
