import type { OneRepMaxEquation } from '../equation.js';

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

export const shoulderPressWomen2000Equation = {
  id: 'shoulder-press-women-2000',
  name: 'shoulder press, college-aged women, from a 5–10RM (2000)',
  formula: '1.43 + 1.2 * w',
  symbols: { w: 'load' },
  apply: shoulderPressWomen2000,
  unit: 'lb',
  lifts: ['shoulder-press'],
  sample: '30 women, 19 to 26 years',
  population: { sex: 'female', ageYears: { low: 19, high: 26 } },
  fittedRepetitions: { low: 5, high: 10 },
  domain: { from: 5, to: 10, reason: 'the tests it was fitted on; it has no term for repetitions' },
  error: { standardDeviation: 1.6, unit: 'kg' },
  basis: 'data',
  evidence: 'published',
  sources: ['college-women-2000'],
  assumptions: ['regression-of-its-device'],
} as const satisfies OneRepMaxEquation;
