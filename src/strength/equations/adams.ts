import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Adams equation.
 *
 * Formula: 1RM = w / (1 − 0.02 × r)
 *
 * - Shape: 1.020 w at r = 1, where {@link estimateOneRepMax} returns the load itself; a pole at r = 50.
 * - Fitted range: not checked.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `unconfirmed`; the coefficients are written from memory.
 * - Source: 1994 (the year was read; a laboratory manual is from memory).
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure, below 50
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { adams } from 'cuffwork/equations';
 * adams(90, 10).toFixed(2); // => '112.50'
 * ```
 */
export const adams = (load: number, repetitionsToFailure: number): number => load / (1 - 0.02 * repetitionsToFailure);

export const adamsEquation = {
  id: 'adams-1994',
  name: 'Adams',
  formula: 'w / (1 - 0.02 * r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: adams,
  inverse: { formula: '50 * (1 - p)', apply: (p) => 50 * (1 - p) },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'unconfirmed',
  sources: ['adams-1994'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
