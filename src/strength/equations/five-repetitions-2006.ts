import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the leg press from the load lifted five times to failure (2006 regression).
 *
 * Formula: 1RM = 1.097 × w + 14.2546 [kg]
 *
 * - Shape: a straight line with an intercept in kg, for the load of the test alone: it has no term for repetitions.
 * - Fitted range: 5 repetitions to failure, no more and no fewer; 70 adults, 18 to 69 years.
 * - Error: standard error 16.16 kg.
 * - Evidence: `published`.
 * - Source: J Strength Cond Res 2006;20(3):584–592.
 *
 * @param load - w, load lifted [kg]
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { legPress5rm2006 } from 'cuffwork/equations';
 * legPress5rm2006(100).toFixed(4); // => '123.9546'
 * ```
 */
export const legPress5rm2006 = (load: number): number => 1.097 * load + 14.2546;

/**
 * One-repetition maximum of the bench press from the load lifted five times to failure (2006 regression).
 *
 * Formula: 1RM = 1.1307 × w + 0.6999 [kg]
 *
 * - Shape: a straight line with an intercept in kg, for the load of the test alone: it has no term for repetitions.
 * - Fitted range: 5 repetitions to failure, no more and no fewer; 70 adults, 18 to 69 years.
 * - Error: standard error 2.98 kg.
 * - Evidence: `published`.
 * - Source: J Strength Cond Res 2006;20(3):584–592.
 *
 * @param load - w, load lifted [kg]
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { benchPress5rm2006 } from 'cuffwork/equations';
 * benchPress5rm2006(80).toFixed(4); // => '91.1559'
 * ```
 */
export const benchPress5rm2006 = (load: number): number => 1.1307 * load + 0.6999;

/** What the two equations have in common. */
const SHARED = {
  symbols: { w: 'load' },
  unit: 'kg',
  population: { ageYears: { low: 18, high: 69 } },
  fittedRepetitions: { low: 5, high: 5 },
  domain: { from: 5, to: 5, reason: 'no-repetition-term' },
  basis: 'data',
  evidence: 'published',
  sources: ['multiple-rm-2006'],
  assumptions: ['regression-of-its-device'],
} as const;

export const legPress5rm2006Equation = {
  ...SHARED,
  id: 'leg-press-5rm-2006',
  name: 'leg press, from a 5RM (2006)',
  formula: '1.097 * w + 14.2546',
  apply: legPress5rm2006,
  lifts: ['leg-press'],
  sample: '70 adults (34 men, 36 women), 18 to 69 years, plate-loaded leg press',
  error: { standardDeviation: 16.16, unit: 'kg' },
} as const satisfies OneRepMaxEquation;

export const benchPress5rm2006Equation = {
  ...SHARED,
  id: 'bench-press-5rm-2006',
  name: 'bench press, from a 5RM (2006)',
  formula: '1.1307 * w + 0.6999',
  apply: benchPress5rm2006,
  lifts: ['bench-press'],
  sample: '70 adults (34 men, 36 women), 18 to 69 years, flat barbell bench press',
  error: { standardDeviation: 2.98, unit: 'kg' },
} as const satisfies OneRepMaxEquation;
