import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Lombardi equation.
 *
 * Formula: 1RM = w × r^0.10
 *
 * - Shape: exact at r = 1; it flattens, so its inverse explodes below about 60 % of the maximum.
 * - Fitted range: not checked. Among the best in men’s bench press and squat at 80 % of the maximum (2024).
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (read in a later text that writes out the classic equations).
 * - Source: Beginning weight training: the safe and effective way, 1989; compared in Int J Strength Cond 2024.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { lombardi } from 'cuffwork/equations';
 * lombardi(90, 10).toFixed(2); // => '113.30'
 * ```
 */
export const lombardi = (load: number, repetitionsToFailure: number): number => load * repetitionsToFailure ** 0.1;

export const lombardiEquation = {
  id: 'lombardi-1989',
  name: 'Lombardi',
  formula: 'w * r ^ 0.1',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: lombardi,
  inverse: { formula: 'p ^ (-10)', apply: (p) => p ** -10 },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'secondary',
  sources: ['lombardi-1989'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
