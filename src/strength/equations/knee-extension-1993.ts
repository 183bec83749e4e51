import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the knee extension in untrained people from the load of a 7 to 10RM (1993 regression).
 *
 * Formula: 1RM = 1.554 × w − 5.181 [kg]
 *
 * - Shape: a straight line with an intercept in kg, for the load of the test alone: it has no term for repetitions.
 *   Training shifts the curve within a person: the untrained equation over-predicted the same people by 21.2 kg
 *   after 18 weeks of training.
 * - Fitted range: 7 to 10 repetitions to failure; 33 men and 25 women, 25 ± 5 years.
 * - Error: standard error of estimate 9.3 kg; R² 0.89.
 * - Evidence: `published`; the unit is inferred from that of the error.
 * - Source: Med Sci Sports Exerc 1993;25(1):132–138.
 *
 * @param load - w, load lifted [kg]
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { kneeExtensionUntrained1993 } from 'cuffwork/equations';
 * kneeExtensionUntrained1993(40).toFixed(4); // => '56.9790'
 * ```
 */
export const kneeExtensionUntrained1993 = (load: number): number => 1.554 * load - 5.181;

/**
 * One-repetition maximum of the knee extension in trained people from the load of a 7 to 10RM (1993 regression).
 *
 * Formula: 1RM = 1.172 × w + 7.704 [kg]
 *
 * - Shape: a straight line with an intercept in kg, for the load of the test alone: it has no term for repetitions.
 *   Training shifts the curve within a person: the untrained equation over-predicted the same people by 21.2 kg
 *   after 18 weeks of training.
 * - Fitted range: 7 to 10 repetitions to failure; 33 men and 25 women, 25 ± 5 years.
 * - Error: standard error of estimate 9.9 kg; R² 0.91.
 * - Evidence: `published`; the unit is inferred from that of the error.
 * - Source: Med Sci Sports Exerc 1993;25(1):132–138.
 *
 * @param load - w, load lifted [kg]
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { kneeExtensionTrained1993 } from 'cuffwork/equations';
 * kneeExtensionTrained1993(40).toFixed(4); // => '54.5840'
 * ```
 */
export const kneeExtensionTrained1993 = (load: number): number => 1.172 * load + 7.704;

/** What the two equations have in common. */
const SHARED = {
  symbols: { w: 'load' },
  unit: 'kg',
  lifts: ['knee-extension'],
  fittedRepetitions: { low: 7, high: 10 },
  domain: { from: 7, to: 10, reason: 'no-repetition-term' },
  basis: 'data',
  evidence: 'published',
  sources: ['knee-extension-1993'],
  assumptions: ['regression-of-its-device', 'regression-unit-inferred'],
} as const;

/** 25 ± 2 × 5 years would start at 15; the sample was men and women. */
const AGES = { low: 18, high: 35 } as const;

export const kneeExtensionUntrained1993Equation = {
  ...SHARED,
  id: 'knee-extension-untrained-1993',
  name: 'knee extension, untrained, from a 7–10RM (1993)',
  formula: '1.554 * w - 5.181',
  apply: kneeExtensionUntrained1993,
  sample: '33 men and 25 women, 25 ± 5 years, before 18 weeks of training, variable-resistance machine',
  population: { training: 'untrained', ageYears: AGES },
  error: { standardDeviation: 9.3, unit: 'kg' },
} as const satisfies OneRepMaxEquation;

export const kneeExtensionTrained1993Equation = {
  ...SHARED,
  id: 'knee-extension-trained-1993',
  name: 'knee extension, trained, from a 7–10RM (1993)',
  formula: '1.172 * w + 7.704',
  apply: kneeExtensionTrained1993,
  sample: '33 men and 25 women, 25 ± 5 years, after 18 weeks of training, variable-resistance machine',
  population: { training: 'trained', ageYears: AGES },
  error: { standardDeviation: 9.9, unit: 'kg' },
} as const satisfies OneRepMaxEquation;
