import type { OcclusionEquation } from '../equation.js';

/**
 * Limb occlusion pressure by the width-ratio formula (1993): the pressure above diastolic
 * grows with limb circumference and falls with cuff width. Any limb, any cuff width.
 *
 * Formula: LOP = (SBP − DBP) × C / (3 × W) + DBP
 *
 * It equals the systolic pressure at W = C / 3 and tends to the diastolic pressure as the cuff
 * widens. That limit is `published`: with a cuff as wide as the circumference or wider, occlusion was near the diastolic
 * pressure (abstract of a university thesis, 1988). With a cuff narrower than C / 3 a higher diastolic pressure lowers the answer: an
 * artefact of the form. It has no term for posture, cuff material or limb.
 *
 * - Fitted range: not checked (from memory, cuffs of about 4.5 to 80 cm).
 * - Error: on nine published group means, and how people differ about them (`derived`): 30 % of the answer with a
 *   narrow cuff on the thigh, 28 % with a wide one, 23 % on the arm. Too low for large thighs and wide cuffs, too
 *   high for narrow cuffs on the arm.
 * - Evidence: `unconfirmed`; the coefficients were not read in the publication.
 * - Source: Clin Orthop Relat Res 1993;(286):257–261.
 *
 * @param circumferenceCm - C, limb circumference under the cuff [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @param diastolicMmHg - DBP, brachial diastolic pressure [mmHg]
 * @param cuffWidthCm - W, cuff width [cm]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { widthRatio } from 'cuffwork/equations';
 * widthRatio(54, 120, 70, 18); // => 120
 * ```
 */
export const widthRatio = (
  circumferenceCm: number,
  systolicMmHg: number,
  diastolicMmHg: number,
  cuffWidthCm: number,
): number => ((systolicMmHg - diastolicMmHg) * circumferenceCm) / (3 * cuffWidthCm) + diastolicMmHg;

export const widthRatioEquation = {
  id: 'width-ratio-1993',
  name: 'width-ratio formula (1993)',
  formula: '(SBP - DBP) * C / (3 * W) + DBP',
  symbols: { SBP: 'systolicMmHg', DBP: 'diastolicMmHg', C: 'circumferenceCm', W: 'cuffWidthCm' },
  apply: (r) => widthRatio(r.circumferenceCm, r.systolicMmHg, r.diastolicMmHg, r.cuffWidthCm),
  needs: [],
  limb: 'any',
  cuffWidthCm: 'any',
  posture: 'none',
  sample: 'not checked',
  fitted: {},
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'cuffWidthCm'],
  error: {
    share: { 'thigh-narrow': 0.3, 'thigh-wide': 0.28, arm: 0.23 },
    evidence: 'derived',
    assumption: 'error-from-means',
    means: 9,
  },
  evidence: 'unconfirmed',
  sources: ['wide-cuffs-1993'],
  assumptions: ['width-ratio-bias'],
} as const satisfies OcclusionEquation;
