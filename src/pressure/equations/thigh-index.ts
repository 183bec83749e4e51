import type { OcclusionEquation } from '../equation.js';

/**
 * Thigh occlusion pressure by the thigh pressure index, lying supine: the classic segmental-pressure method of the
 * vascular laboratory. In healthy legs the systolic pressure of the thigh, by cuff and Doppler, is a published
 * multiple of the brachial one.
 *
 * Formula: LOP = index × SBP
 *
 * | cuff | index in healthy legs | taken here |
 * | --- | --- | --- |
 * | 12 cm, high on the thigh | 1.2 to 1.4 | 1.3 |
 * | 18 to 20 cm | 1.0 to 1.2 | 1.1 |
 *
 * - Fitted range: not checked. It has no term for circumference.
 * - Error: the source gives a band, and the answer names it. Measured group means lay as far as 29 % off the middle
 *   of the band; with how people differ and the width of the band that is 23 % of the answer (`derived`).
 * - Evidence: `secondary`; the bands were read on a radiology criteria page, which was not peer reviewed.
 * - Source: criteria page on segmental pressures.
 *
 * @param systolicMmHg - SBP, the higher of the two brachial systolic pressures, supine [mmHg]
 * @param index - middle of the band for the cuff [1]
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { thighIndex } from 'cuffwork/equations';
 * thighIndex(120, 1.3); // => 156
 * ```
 */
export const thighIndex = (systolicMmHg: number, index: number): number => index * systolicMmHg;

const shared = {
  symbols: { SBP: 'systolicMmHg' },
  needs: [],
  limb: 'leg',
  posture: 'supine',
  sample: 'healthy legs; number not checked',
  fitted: {},
  fittedNotKnown: ['systolicMmHg'],
  error: { share: 0.23, evidence: 'derived', assumption: 'error-from-means', means: 3 },
  evidence: 'secondary',
  sources: ['segmental-pressures'],
} as const satisfies Partial<OcclusionEquation>;

export const thighIndex12Equation = {
  ...shared,
  id: 'thigh-index-12',
  name: 'thigh pressure index, 12 cm cuff',
  formula: '1.3 * SBP',
  apply: (r) => thighIndex(r.systolicMmHg, 1.3),
  cuffWidthCm: 12,
  assumptions: ['index-band-12'],
} as const satisfies OcclusionEquation;

export const thighIndex18Equation = {
  ...shared,
  id: 'thigh-index-18',
  name: 'thigh pressure index, 18 to 20 cm cuff',
  formula: '1.1 * SBP',
  apply: (r) => thighIndex(r.systolicMmHg, 1.1),
  cuffWidthCm: { low: 18, high: 20 },
  assumptions: ['index-band-18'],
} as const satisfies OcclusionEquation;
