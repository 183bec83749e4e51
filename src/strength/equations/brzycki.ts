import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Brzycki equation, in its rational form.
 *
 * Formula: 1RM = w × 36 / (37 − r)
 *
 * - Shape: exact at r = 1, a pole at r = 37. It meets Epley at r = 10, where both give 4/3 w.
 * - Fitted range: none; the article gives no data. Best of six at r ≤ 10 in 220 men (bench press, 1995).
 * - Error: see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (the original has 1.0278 − 0.0278 r; the two differ by 0.03 % at 10 repetitions).
 * - Source: J Phys Educ Recreat Dance 1993;64(1):88–90; provenance reviewed in Biol Sport 2014;31(2):157–161.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure, below 37
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { brzycki } from 'cuffwork/equations';
 * brzycki(90, 10); // => 120
 * ```
 */
export const brzycki = (load: number, repetitionsToFailure: number): number =>
  (load * 36) / (37 - repetitionsToFailure);

export const brzyckiEquation = {
  id: 'brzycki-1993',
  name: 'Brzycki',
  formula: 'w * 36 / (37 - r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: brzycki,
  inverse: { formula: '37 - 36 * p', apply: (p) => 37 - 36 * p },
  lifts: 'any',
  sample: 'nobody: the article gives no data',
  basis: 'practitioner',
  evidence: 'secondary',
  sources: ['brzycki-1993', 'equation-provenance-2014', 'bench-press-men-1995'],
  assumptions: ['rational-form'],
} as const satisfies OneRepMaxEquation;
