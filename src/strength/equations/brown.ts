import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Brown equation.
 *
 * Formula: 1RM = w × (0.0328 × r + 0.9849)
 *
 * - Shape: a straight line in r, 1.018 w at r = 1, where {@link estimateOneRepMax} returns the load itself.
 * - Fitted range: not checked. Among the best in women’s bench press and squat at 80 % of the maximum (2024).
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `unconfirmed`; the coefficients are written from memory.
 * - Source: 1992, textbook (from memory); compared in Int J Strength Cond 2024.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { brown } from 'cuffwork/equations';
 * brown(90, 10).toFixed(2); // => '118.16'
 * ```
 */
export const brown = (load: number, repetitionsToFailure: number): number =>
  load * (0.0328 * repetitionsToFailure + 0.9849);

export const brownEquation = {
  id: 'brown-1992',
  name: 'Brown',
  formula: 'w * (0.0328 * r + 0.9849)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: brown,
  inverse: { formula: '(1 / p - 0.9849) / 0.0328', apply: (p) => (1 / p - 0.9849) / 0.0328 },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'unconfirmed',
  sources: ['brown-1992'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
