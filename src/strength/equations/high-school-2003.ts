import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of the squat in elite high-school powerlifters (2003 regression).
 *
 * Formula: 1RM = 159.9 + 0.103 × r × w − 11.552 × r [kg], with w at 70 % of the maximum
 *
 * - Shape: the constant is close to the mean of the group, so it holds for such lifters only. It is used only
 *   when you name it.
 * - Fitted range: loads of 70 % of the maximum; 18 young men. The abstract does not report the range of repetitions.
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

/**
 * One-repetition maximum of the bench press in elite high-school powerlifters (2003 regression).
 *
 * Formula: 1RM = 90.66 + 0.085 × r × w − 5.306 × r [kg], with w at 70 % of the maximum
 *
 * - Shape: the constant is close to the mean of the group, so it holds for such lifters only. It is used only
 *   when you name it.
 * - Fitted range: loads of 70 % of the maximum; 18 young men. The abstract does not report the range of repetitions.
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

/**
 * One-repetition maximum of the deadlift in elite high-school powerlifters (2003 regression).
 *
 * Formula: 1RM = 156.08 + 0.098 × r × w − 12.106 × r [kg], with w at 80 % of the maximum
 *
 * - Shape: the constant is close to the mean of the group, so it holds for such lifters only. It is used only
 *   when you name it.
 * - Fitted range: loads of 80 % of the maximum; 18 young men. The abstract does not report the range of repetitions.
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

/** What the three equations have in common. */
const SHARED = {
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  unit: 'kg',
  sample: '18 elite male high-school powerlifters',
  population: { sex: 'male', training: 'trained' },
  byNameOnly: true,
  basis: 'data',
  evidence: 'published',
  sources: ['high-school-lifters-2003'],
  assumptions: [],
} as const;

export const squatHighSchool2003Equation = {
  ...SHARED,
  id: 'squat-high-school-2003',
  name: 'squat, high-school powerlifters (2003)',
  formula: '159.9 + 0.103 * r * w - 11.552 * r',
  apply: squatHighSchool2003,
  lifts: ['squat'],
  loadPercent: 70,
  error: { standardDeviation: 5.06, unit: 'kg' },
} as const satisfies OneRepMaxEquation;

export const benchPressHighSchool2003Equation = {
  ...SHARED,
  id: 'bench-press-high-school-2003',
  name: 'bench press, high-school powerlifters (2003)',
  formula: '90.66 + 0.085 * r * w - 5.306 * r',
  apply: benchPressHighSchool2003,
  lifts: ['bench-press'],
  loadPercent: 70,
  error: { standardDeviation: 2.69, unit: 'kg' },
} as const satisfies OneRepMaxEquation;

export const deadliftHighSchool2003Equation = {
  ...SHARED,
  id: 'deadlift-high-school-2003',
  name: 'deadlift, high-school powerlifters (2003)',
  formula: '156.08 + 0.098 * r * w - 12.106 * r',
  apply: deadliftHighSchool2003,
  lifts: ['deadlift'],
  loadPercent: 80,
  error: { standardDeviation: 4.97, unit: 'kg' },
} as const satisfies OneRepMaxEquation;
