import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the bench press in elite high-school powerlifters (2003 regression).
 *
 * Formula: 1RM = 90.66 + 0.085 × r × w − 5.306 × r [kg], with w at 70 % of the maximum
 *
 * - Shape: the constant is the mean of the group in disguise, so it holds for such lifters and for no one else.
 *   It is never taken unless it is named.
 * - Fitted range: loads of 70 % of the maximum; 18 young men. The range of repetitions is not at hand.
 * - Error: standard error of estimate 2.69 kg.
 * - Evidence: `published`.
 * - Source: J Strength Cond Res 2003;17(1):167–172.
 *
 * @param load - w, load lifted [kg]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM [kg]
 *
 * @example
 * ```ts
 * import { benchPressHighSchool2003 } from 'cuffwork/equations';
 * benchPressHighSchool2003(90, 12).toFixed(4); // => '118.7880'
 * ```
 */
export const benchPressHighSchool2003 = (load: number, repetitionsToFailure: number): number =>
  90.66 + 0.085 * repetitionsToFailure * load - 5.306 * repetitionsToFailure;

export const benchPressHighSchool2003Equation = {
  id: 'bench-press-high-school-2003',
  name: 'bench press, high-school powerlifters (2003)',
  formula: '90.66 + 0.085 * r * w - 5.306 * r',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: benchPressHighSchool2003,
  unit: 'kg',
  lifts: ['bench-press'],
  sample: '18 elite male high-school powerlifters',
  population: { sex: 'male', training: 'trained' },
  byNameOnly: true,
  loadPercent: 70,
  error: { standardDeviation: 2.69, unit: 'kg' },
  basis: 'data',
  evidence: 'published',
  sources: ['high-school-lifters-2003'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
