import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the squat in elite high-school powerlifters (2003 regression).
 *
 * Formula: 1RM = 159.9 + 0.103 × r × w − 11.552 × r [kg], with w at 70 % of the maximum
 *
 * - Shape: the constant is the mean of the group in disguise, so it holds for such lifters and for no one else.
 *   It is never taken unless it is named.
 * - Fitted range: loads of 70 % of the maximum; 18 young men. The range of repetitions is not at hand.
 * - Error: standard error of estimate 5.06 kg.
 * - Evidence: `published`.
 * - Source: J Strength Cond Res 2003;17(1):167–172.
 *
 * @param load - w, load lifted [kg]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { squatHighSchool2003 } from 'cuffwork/equations';
 * squatHighSchool2003(140, 12).toFixed(4); // => '194.3160'
 * ```
 */
export const squatHighSchool2003 = (load: number, repetitionsToFailure: number): number =>
  159.9 + 0.103 * repetitionsToFailure * load - 11.552 * repetitionsToFailure;

export const squatHighSchool2003Equation = {
  id: 'squat-high-school-2003',
  name: 'squat, high-school powerlifters (2003)',
  formula: '159.9 + 0.103 * r * w - 11.552 * r',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: squatHighSchool2003,
  unit: 'kg',
  lifts: ['squat'],
  sample: '18 elite male high-school powerlifters',
  population: { sex: 'male', training: 'trained' },
  byNameOnly: true,
  loadPercent: 70,
  error: { standardDeviation: 5.06, unit: 'kg' },
  basis: 'data',
  evidence: 'published',
  sources: ['high-school-lifters-2003'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
