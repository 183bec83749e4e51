import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the O’Conner equation.
 *
 * Formula: 1RM = w × (1 + 0.025 × r)
 *
 * - Shape: a straight line in r, 1.025 w at r = 1, where {@link estimateOneRepMax} returns the load itself.
 * - Fitted range: not checked.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (read in a later text that writes out the classic equations).
 * - Source: Weight training today, 1989.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { oconner } from 'cuffwork/equations';
 * oconner(90, 10).toFixed(2); // => '112.50'
 * ```
 */
export const oconner = (load: number, repetitionsToFailure: number): number =>
  load * (1 + 0.025 * repetitionsToFailure);

export const oconnerEquation = {
  id: 'oconner-1989',
  name: 'O’Conner',
  formula: 'w * (1 + 0.025 * r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: oconner,
  inverse: { formula: '40 * (1 / p - 1)', apply: (p) => 40 * (1 / p - 1) },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'secondary',
  sources: ['oconner-1989'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
