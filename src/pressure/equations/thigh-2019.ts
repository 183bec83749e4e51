import type { OcclusionEquation } from '../equation.js';

/**
 * Thigh occlusion pressure with an 18 cm cuff (2019 regression). We read every coefficient in its
 * publication.
 *
 * Formula: LOP = 65.290 + 1.110 × TC + 0.178 × SBP + 1.153 × age − 7.984 × sex, sex: 1 male, 2 female
 *
 * - Sample: 51 adults (32 men, 19 women), 23.23 ± 5.24 years; Doppler.
 * - Fitted range: age about 18 to 35 years, from the mean and spread of the sample; no range is in the abstract, of
 *   circumference and pressure either. The slope of 1.153 mmHg a year was fitted on a spread of 5 years; at 60 it adds
 *   42 mmHg.
 * - Error: standard error of estimate 15.289 mmHg, about ± 31; R² 0.397. The terms for systolic
 *   pressure and sex were not significant.
 * - Evidence: `published`. The abstract calls 18 cm the cuff’s “circumference”; it is taken as its width.
 *   The abstract does not report posture and the site of the circumference.
 * - Source: Rev Bras Med Esporte 2019;25(6).
 *
 * @param circumferenceCm - TC, thigh circumference [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @param ageYears - age [years]
 * @param sexCode - sex, 1 male, 2 female
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { thigh2019 } from 'cuffwork/equations';
 * thigh2019(62, 135, 30, 1).toFixed(3); // => '184.746'
 * ```
 */
export const thigh2019 = (circumferenceCm: number, systolicMmHg: number, ageYears: number, sexCode: 1 | 2): number =>
  65.29 + 1.11 * circumferenceCm + 0.178 * systolicMmHg + 1.153 * ageYears - 7.984 * sexCode;

export const thigh2019Equation = {
  id: 'thigh-2019',
  name: 'thigh regression, 18 cm cuff (2019)',
  formula: '65.290 + 1.110 * TC + 0.178 * SBP + 1.153 * age - 7.984 * sex',
  symbols: {
    TC: 'circumferenceCm',
    SBP: 'systolicMmHg',
    age: 'ageYears',
    sex: { field: 'sex', codes: { male: 1, female: 2 } },
  },
  apply: (r) => thigh2019(r.circumferenceCm, r.systolicMmHg, r.ageYears, r.sex === 'male' ? 1 : 2),
  needs: ['ageYears', 'sex'],
  limb: 'leg',
  cuffWidthCm: 18,
  posture: 'not-stated',
  sample: '51 adults (32 men, 19 women), 23.23 ± 5.24 years',
  fitted: { ageYears: { low: 18, high: 35 } },
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg'],
  // For a new person: standard error of estimate × √(1 + 1/51), 15.289 × 1.009756.
  error: { standardDeviationMmHg: 15.438159484000002, evidence: 'published', assumption: 'error-from-fit' },
  evidence: 'published',
  sources: ['thigh-equation-2019'],
  assumptions: ['width-taken-from-publication', 'circumference-site-not-checked'],
} as const satisfies OcclusionEquation;
