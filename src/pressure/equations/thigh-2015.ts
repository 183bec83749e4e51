import type { OcclusionEquation } from '../equation.js';

/**
 * Thigh occlusion pressure with a 5 cm cuff, lying supine (2015 regression).
 *
 * Formula: LOP = 5.893 × TC + 0.734 × DBP + 0.912 × SBP − 220.046
 *
 * - Sample: 171 adults visited; how many reached occlusion is not checked.
 * - Fitted range: not checked.
 * - Error: R² 0.49 with a standard deviation of 94 mmHg, that of a sample without a pressure limit, leaves 67 mmHg
 *   (`derived`). The 42 mmHg of another sample are too small: it was capped at 300 mmHg.
 *   A later study found that you cannot estimate the pressure of a 5 cm thigh cuff with precision.
 * - Too low above 60 cm: on a national survey it puts 16 % of people above the 300 mmHg that its inflator reached.
 * - Evidence: `unconfirmed`; written from memory. The slopes fit the published standardised
 *   ones; the intercept could not be checked.
 * - Source: Eur J Appl Physiol 2015;115(2):397–405.
 *
 * @param circumferenceCm - TC, thigh circumference, recalled as at 33 % of thigh length [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure, supine [mmHg]
 * @param diastolicMmHg - DBP, brachial diastolic pressure, supine [mmHg]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { thigh2015 } from 'cuffwork/equations';
 * Math.round(thigh2015(55, 120, 70)); // => 265
 * ```
 */
export const thigh2015 = (circumferenceCm: number, systolicMmHg: number, diastolicMmHg: number): number =>
  5.893 * circumferenceCm + 0.734 * diastolicMmHg + 0.912 * systolicMmHg - 220.046;

export const thigh2015Equation = {
  id: 'thigh-2015',
  name: 'thigh regression, 5 cm cuff (2015)',
  formula: '5.893 * TC + 0.734 * DBP + 0.912 * SBP - 220.046',
  symbols: { TC: 'circumferenceCm', DBP: 'diastolicMmHg', SBP: 'systolicMmHg' },
  apply: (r) => thigh2015(r.circumferenceCm, r.systolicMmHg, r.diastolicMmHg),
  needs: [],
  limb: 'leg',
  cuffWidthCm: 5,
  posture: 'supine',
  sample: '171 adults visited; how many reached occlusion is not checked',
  fitted: {},
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg'],
  tooLowAbove: { circumferenceCm: 60 },
  // 94 × √(1 − 0.49).
  error: { standardDeviationMmHg: 67.1, evidence: 'derived', assumption: 'error-from-fit' },
  evidence: 'unconfirmed',
  sources: ['limb-circumference-2015', 'posture-widths-2018', 'narrow-cuffs-2024'],
  assumptions: ['circumference-site-third'],
} as const satisfies OcclusionEquation;
