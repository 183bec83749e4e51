import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Brzycki equation, in its original decimal form.
 *
 * Formula: 1RM = w / (1.0278 − 0.0278 × r)
 *
 * - Shape: exact at r = 1, a pole at r = 36.97. At 10 repetitions it is 0.03 % above the rational form.
 * - Fitted range: none; the article gives no data.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (read in a later text).
 * - Source: J Phys Educ Recreat Dance 1993;64(1):88–90; provenance reviewed in Biol Sport 2014;31(2):157–161.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure, below 36.97
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { brzyckiDecimal } from 'cuffwork/equations';
 * brzyckiDecimal(90, 10).toFixed(2); // => '120.03'
 * ```
 */
export const brzyckiDecimal = (load: number, repetitionsToFailure: number): number =>
  load / (1.0278 - 0.0278 * repetitionsToFailure);

export const brzyckiDecimalEquation = {
  id: 'brzycki-1993-decimal',
  name: 'Brzycki, decimal form',
  formula: 'w / (1.0278 - 0.0278 * r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: brzyckiDecimal,
  inverse: { formula: '(1.0278 - p) / 0.0278', apply: (p) => (1.0278 - p) / 0.0278 },
  lifts: 'any',
  sample: 'nobody: the article gives no data',
  basis: 'practitioner',
  evidence: 'secondary',
  sources: ['brzycki-1993', 'equation-provenance-2014', 'bench-press-men-1995'],
  assumptions: ['decimal-form'],
} as const satisfies OneRepMaxEquation;
