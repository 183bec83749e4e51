import type { OcclusionEquation } from '../equation.js';

/**
 * Arm occlusion pressure with a 5 cm cuff, lying supine (2015 regression, field model).
 *
 * Formula: LOP = 0.514 × SBP + 0.339 × DBP + 1.461 × AC + 17.236
 *
 * - Sample: 171 adults.
 * - Fitted range: not checked.
 * - Error: R² 0.60 with a standard deviation of up to 16 mmHg leaves 10 mmHg (`derived`), about ± 20.
 * - Evidence: `unconfirmed`; written from memory. The slopes fit the published standardised
 *   ones; the intercept could not be checked.
 * - Source: Eur J Appl Physiol 2015;115(2):397–405.
 *
 * @param circumferenceCm - AC, arm circumference [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure, supine [mmHg]
 * @param diastolicMmHg - DBP, brachial diastolic pressure, supine [mmHg]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { arm2015 } from 'cuffwork/equations';
 * Math.round(arm2015(32, 120, 70)); // => 149
 * ```
 */
export const arm2015 = (circumferenceCm: number, systolicMmHg: number, diastolicMmHg: number): number =>
  0.514 * systolicMmHg + 0.339 * diastolicMmHg + 1.461 * circumferenceCm + 17.236;

export const arm2015Equation = {
  id: 'arm-2015',
  name: 'arm regression, 5 cm cuff (2015)',
  formula: '0.514 * SBP + 0.339 * DBP + 1.461 * AC + 17.236',
  symbols: { SBP: 'systolicMmHg', DBP: 'diastolicMmHg', AC: 'circumferenceCm' },
  apply: (r) => arm2015(r.circumferenceCm, r.systolicMmHg, r.diastolicMmHg),
  needs: [],
  limb: 'arm',
  cuffWidthCm: 5,
  posture: 'supine',
  sample: '171 adults',
  fitted: {},
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg'],
  error: { standardDeviationMmHg: 10.2, evidence: 'derived', assumption: 'error-from-fit' },
  evidence: 'unconfirmed',
  sources: ['limb-circumference-2015', 'cuff-materials-2017'],
  assumptions: ['circumference-site-not-checked'],
} as const satisfies OcclusionEquation;
