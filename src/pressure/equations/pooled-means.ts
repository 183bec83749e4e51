import type { OcclusionEquation } from '../equation.js';

/**
 * Limb occlusion pressure from published group means, pooled over laboratories. It is this project’s own working, not
 * a published equation.
 *
 * Formula: LOP = M + k / W × (C − C₀) + 0.53 × (SBP − 120)
 *
 * M is a random-effects mean of the published group means for the limb, the kind of cuff and the posture:
 *
 * | limb, cuff | M supine | M seated | M standing | k | C₀ |
 * | --- | --- | --- | --- | --- | --- |
 * | thigh, 11 to 20 cm | 160 | 190 | 240 | 20 | 55 |
 * | thigh, 4.5 to 6.5 cm | 301 | – | – | 29 | 55 |
 * | arm, 4.5 to 6.5 cm | 150 | – | – | 7.3 | 32 |
 *
 * k is the girth slope of the regression for that limb times its cuff width (the slope is published to fall with
 * width); 0.53 is the mean systolic slope of the three regressions (published to be alike across widths).
 *
 * - Fitted range: not at hand; the girth and pressure of the samples were not published with their means, so each
 *   stands for a nominal person of 120/70 mmHg, thigh 55 cm, arm 32 cm. Posture was not stated for some samples, and
 *   counts as supine.
 * - Error: with each laboratory left out in turn, and people about their mean, in quadrature: 19 % of the answer on
 *   the thigh with a wide cuff, 34 % with a narrow one, 18 % on the arm.
 * - Evidence: `derived`; docs/working/carrying-error.ts is the working, docs/how-wrong-is-it.md its error beside
 *   every other equation’s on the same means.
 * - Source: the group means, each with its publication, in checks/group-means.json.
 *
 * @param pooledMean - M, pooled mean for the limb, cuff and posture [mmHg]
 * @param girthSlope - k, slope for girth times cuff width [mmHg]
 * @param girthOffsetCm - C − C₀, limb circumference less the nominal one [cm]
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @param cuffWidthCm - W, cuff width [cm]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { pooledMeans } from 'cuffwork/equations';
 * pooledMeans(160, 20, 58 - 55, 120, 12); // => 165
 * ```
 */
export const pooledMeans = (
  pooledMean: number,
  girthSlope: number,
  girthOffsetCm: number,
  systolicMmHg: number,
  cuffWidthCm: number,
): number => pooledMean + (girthSlope / cuffWidthCm) * girthOffsetCm + 0.53 * (systolicMmHg - 120);

/** Pooled means for a wide cuff on the thigh, by posture [mmHg]. */
const WIDE_THIGH = { supine: 160, seated: 190, standing: 240 } as const;

export const pooledThighWideEquation = {
  id: 'pooled-means-thigh-wide',
  name: 'pooled group means, wide cuff on the thigh (own working)',
  formula: 'M + 20 / W * (TC - 55) + 0.53 * (SBP - 120)',
  symbols: {
    M: { field: 'posture', codes: WIDE_THIGH },
    W: 'cuffWidthCm',
    TC: 'circumferenceCm',
    SBP: 'systolicMmHg',
  },
  apply: (r) => pooledMeans(WIDE_THIGH[r.posture], 20, r.circumferenceCm - 55, r.systolicMmHg, r.cuffWidthCm),
  needs: [],
  limb: 'leg',
  cuffWidthCm: { low: 11, high: 20 },
  posture: 'any',
  sample: '5 publications, 239 people; supine, seated and standing',
  fitted: {},
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg'],
  error: { share: 0.19, evidence: 'derived', assumption: 'error-left-out', means: 9 },
  evidence: 'derived',
  sources: ['cuff-width-2012', 'athletes-2018', 'posture-2018', 'posture-widths-2018', 'cuff-width-2019'],
  assumptions: ['own-working', 'nominal-person'],
} as const satisfies OcclusionEquation;

export const pooledThighNarrowEquation = {
  id: 'pooled-means-thigh-narrow',
  name: 'pooled group means, narrow cuff on the thigh (own working)',
  formula: '301 + 29 / W * (TC - 55) + 0.53 * (SBP - 120)',
  symbols: { W: 'cuffWidthCm', TC: 'circumferenceCm', SBP: 'systolicMmHg' },
  apply: (r) => pooledMeans(301, 29, r.circumferenceCm - 55, r.systolicMmHg, r.cuffWidthCm),
  needs: [],
  limb: 'leg',
  cuffWidthCm: { low: 5, high: 6 },
  posture: 'supine',
  sample: '3 publications, about 196 people; supine, or not stated',
  fitted: {},
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg'],
  error: { share: 0.34, evidence: 'derived', assumption: 'error-left-out', means: 3 },
  evidence: 'derived',
  sources: ['cuff-width-2012', 'narrow-cuffs-2024', 'posture-widths-2018'],
  assumptions: ['own-working', 'nominal-person'],
} as const satisfies OcclusionEquation;

export const pooledArmNarrowEquation = {
  id: 'pooled-means-arm-narrow',
  name: 'pooled group means, narrow cuff on the arm (own working)',
  formula: '150 + 7.3 / W * (AC - 32) + 0.53 * (SBP - 120)',
  symbols: { W: 'cuffWidthCm', AC: 'circumferenceCm', SBP: 'systolicMmHg' },
  apply: (r) => pooledMeans(150, 7.3, r.circumferenceCm - 32, r.systolicMmHg, r.cuffWidthCm),
  needs: [],
  limb: 'arm',
  cuffWidthCm: { low: 5, high: 6 },
  posture: 'not-stated',
  sample: '2 publications, 35 people',
  fitted: {},
  fittedNotKnown: ['circumferenceCm', 'systolicMmHg'],
  error: { share: 0.18, evidence: 'derived', assumption: 'error-left-out', means: 2 },
  evidence: 'derived',
  sources: ['cuff-materials-2017', 'athletes-2018'],
  assumptions: ['own-working', 'nominal-person'],
} as const satisfies OcclusionEquation;
