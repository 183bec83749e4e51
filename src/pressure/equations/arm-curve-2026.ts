import type { PooledCurve } from '../curve.js';
import type { OcclusionEquation } from '../equation.js';

const NONE = { h: 0, b: 0, a: 0 } as const;

/** Fitted by docs/working/pooled-curve.ts together with the thigh; a test compares. */
export const armCurve = {
  b: 11.5,
  h: { supine: 1, seated: 1, standing: 1 },
  error: {
    people: 0.2,
    laboratory: 0.25,
    level: 0.52,
    variance: { b: 10.4, a: 0.083, both: -0.721 },
    posture: { supine: NONE, seated: NONE, standing: NONE },
  },
} as const satisfies PooledCurve;

/**
 * Arm occlusion pressure by the pooled curve: one model of all published group means, continuous in cuff width,
 * circumference and blood pressures. The default of `estimateOcclusionPressure` for arms.
 *
 * Formula: LOP = (SBP + DBP) / 2 + 11.5 × AC / W
 *
 * The middle of the blood pressures, plus 11.5 mmHg for each time the cuff width goes into the circumference. It is
 * this project’s own working, not a published equation.
 *
 * - Sample: 4 group means of 2 laboratories; what they share with the thigh is fitted with its 14 means.
 * - Fitted range: cuff widths 3 to 13 cm. No publication reports the circumference and blood pressure of its sample.
 * - Left-out error: 12 % over the seven means of known width, three of which are from memory and not in the fit. With
 *   a 5 cm cuff it is too high: 169 mmHg for means of 139 and 145.
 * - Posture: not in the curve, because no means are published (highest seated, lowest standing).
 * - Error: people 20 %, laboratories and cuffs 25 % of the pressure above diastolic, and its coefficients. The
 *   interval is for one new person in a new laboratory, log-normal.
 * - Evidence: `derived`. The slope of ½ with systolic pressure is a choice, and the interval includes its error.
 * - Source: docs/working/pooled-curve.ts, from J Physiol Sci 2017;67(2):207–215 and Eur J Sport Sci 2018 (athletes).
 *
 * @param circumferenceCm - AC, arm circumference at mid-arm [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @param diastolicMmHg - DBP, brachial diastolic pressure [mmHg]
 * @param cuffWidthCm - W, cuff width [cm]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { armCurve2026 } from 'cuffwork/equations';
 * armCurve2026(32, 120, 80, 8); // => 146
 * ```
 */
export const armCurve2026 = (
  circumferenceCm: number,
  systolicMmHg: number,
  diastolicMmHg: number,
  cuffWidthCm: number,
): number => (systolicMmHg + diastolicMmHg) / 2 + (11.5 * circumferenceCm) / cuffWidthCm;

export const armCurve2026Equation = {
  id: 'pooled-curve-arm-2026',
  name: 'pooled curve, arm (2026, own working)',
  formula: '(SBP + DBP) / 2 + 11.5 * AC / W',
  symbols: { SBP: 'systolicMmHg', DBP: 'diastolicMmHg', AC: 'circumferenceCm', W: 'cuffWidthCm' },
  apply: (r) => armCurve2026(r.circumferenceCm, r.systolicMmHg, r.diastolicMmHg, r.cuffWidthCm),
  needs: [],
  limb: 'arm',
  cuffWidthCm: 'any',
  posture: 'none',
  sample: '4 group means of 2 publications, 35 people; no person’s own readings',
  fitted: { cuffWidthCm: { low: 3, high: 13 } },
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg'],
  error: { curve: armCurve, evidence: 'derived', assumption: 'error-of-curve', means: 18 },
  evidence: 'derived',
  sources: ['cuff-materials-2017', 'athletes-2018'],
  assumptions: ['own-working', 'nominal-person'],
} as const satisfies OcclusionEquation;
