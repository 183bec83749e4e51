import type { PooledCurve } from '../curve.js';
import type { OcclusionEquation } from '../equation.js';

/** Fitted by docs/working/pooled-curve.ts; a test compares. */
export const thighCurve = {
  b: 17.9,
  h: { supine: 1, seated: 1.25, standing: 1.53 },
  error: {
    people: 0.2,
    laboratory: 0.25,
    variance: { b: 10.6, a: 0.083, both: -0.779 },
    level: 0.52,
    posture: {
      supine: { h: 0, b: 0, a: 0 },
      seated: { h: 0.00327, b: -0.0152, a: 0.000028 },
      standing: { h: 0.00746, b: -0.022, a: -0.000624 },
    },
  },
} as const satisfies PooledCurve;

/**
 * Thigh occlusion pressure by the pooled curve: one model of all published group means, continuous in cuff width,
 * circumference, blood pressures and posture. The default of `estimateOcclusionPressure` for legs.
 *
 * Formula: LOP = DBP + h × ((SBP − DBP) / 2 + 17.9 × TC / W); h = 1 supine, 1.25 seated, 1.53 standing
 *
 * Lying down this is the middle of the blood pressures plus 17.9 mmHg for each time the cuff width goes into the
 * circumference. It is this project’s own working, not a published equation.
 *
 * - Sample: 14 group means of 7 laboratories and, for the shared errors, 4 of the arm. Seven means of two laboratories
 *   have an assumed width (5, 12 or 13.5 cm).
 * - Fitted range: cuff widths 5 to 18 cm. No publication reports the circumference and blood pressure of its sample.
 * - Left-out error: 16 % over the seven means of known width, each laboratory predicted from the others.
 * - Error: people 20 %, laboratories and cuffs 25 % of the pressure above diastolic, and its coefficients. The
 *   interval is for one new person in a new laboratory, log-normal: 193 mmHg × / ÷ 1.51 for 55 cm, 120/70 mmHg, 10 cm,
 *   supine.
 * - Evidence: `derived`. The slope of ½ with systolic pressure is a choice; published slopes run from 0.18 to about 1,
 *   and the interval includes that.
 * - Source: docs/working/pooled-curve.ts, from the publications in `sources`; Eur J Appl Physiol 2012;112(8):2903–2912
 *   first.
 *
 * @param circumferenceCm - TC, thigh circumference at mid-thigh [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @param diastolicMmHg - DBP, brachial diastolic pressure [mmHg]
 * @param cuffWidthCm - W, cuff width [cm]
 * @param postureFactor - h, 1 supine, 1.25 seated, 1.53 standing [1]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { thighCurve2026 } from 'cuffwork/equations';
 * thighCurve2026(60, 120, 80, 10, 1).toFixed(1); // => '207.4'
 * ```
 */
export const thighCurve2026 = (
  circumferenceCm: number,
  systolicMmHg: number,
  diastolicMmHg: number,
  cuffWidthCm: number,
  postureFactor: number,
): number =>
  diastolicMmHg + postureFactor * ((systolicMmHg - diastolicMmHg) / 2 + (17.9 * circumferenceCm) / cuffWidthCm);

export const thighCurve2026Equation = {
  id: 'pooled-curve-thigh-2026',
  name: 'pooled curve, thigh (2026, own working)',
  formula: 'DBP + h * ((SBP - DBP) / 2 + 17.9 * TC / W)',
  symbols: {
    DBP: 'diastolicMmHg',
    h: { field: 'posture', codes: thighCurve.h },
    SBP: 'systolicMmHg',
    TC: 'circumferenceCm',
    W: 'cuffWidthCm',
  },
  apply: (r) =>
    thighCurve2026(r.circumferenceCm, r.systolicMmHg, r.diastolicMmHg, r.cuffWidthCm, thighCurve.h[r.posture]),
  needs: [],
  limb: 'leg',
  cuffWidthCm: 'any',
  posture: 'any',
  sample: '14 group means of 7 publications, about 350 people; no person’s own readings',
  fitted: { cuffWidthCm: { low: 5, high: 18 } },
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg'],
  error: { curve: thighCurve, evidence: 'derived', assumption: 'error-of-curve', means: 18 },
  evidence: 'derived',
  sources: [
    'cuff-width-2012',
    'narrow-cuffs-2024',
    'posture-widths-2018',
    'cuff-width-2019',
    'athletes-2018',
    'posture-2018',
    'thigh-equation-2019',
  ],
  assumptions: ['own-working', 'nominal-person', 'widths-assumed'],
} as const satisfies OcclusionEquation;
