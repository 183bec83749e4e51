import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the deadlift in elite high-school powerlifters (2003 regression).
 *
 * Formula: 1RM = 156.08 + 0.098 × r × w − 12.106 × r [kg], with w at 80 % of the maximum
 *
 * - Shape: the constant is the mean of the group in disguise, so it holds for such lifters and for no one else.
 *   It is never taken unless it is named.
 * - Fitted range: loads of 80 % of the maximum; 18 young men. The range of repetitions is not at hand.
 * - Error: standard error of estimate 4.97 kg.
 * - Evidence: `published`.
 * - Source: J Strength Cond Res 2003;17(1):167–172.
 *
 * @param load - w, load lifted [kg]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { deadliftHighSchool2003 } from 'cuffwork/equations';
 * deadliftHighSchool2003(180, 8).toFixed(4); // => '200.3520'
 * ```
 */
export const deadliftHighSchool2003 = (load: number, repetitionsToFailure: number): number =>
  156.08 + 0.098 * repetitionsToFailure * load - 12.106 * repetitionsToFailure;

export const deadliftHighSchool2003Equation = {
  id: 'deadlift-high-school-2003',
  name: 'deadlift, high-school powerlifters (2003)',
  formula: '156.08 + 0.098 * r * w - 12.106 * r',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: deadliftHighSchool2003,
  unit: 'kg',
  lifts: ['deadlift'],
  sample: '18 elite male high-school powerlifters',
  population: { sex: 'male', training: 'trained' },
  byNameOnly: true,
  loadPercent: 80,
  error: { standardDeviation: 4.97, unit: 'kg' },
  basis: 'data',
  evidence: 'published',
  sources: ['high-school-lifters-2003'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
