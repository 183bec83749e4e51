import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Welday equation: the form of Epley with the constant 0.0333.
 *
 * Formula: 1RM = w × (1 + 0.0333 × r)
 *
 * - Shape: a straight line in r, 1.033 w at r = 1, where {@link estimateOneRepMax} returns the load itself.
 * - Fitted range: not checked.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `unconfirmed`; the coefficients are written from memory.
 * - Source: 1988 (from memory); the name is in use in Int J Strength Cond 2024.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { welday } from 'cuffwork/equations';
 * welday(90, 10).toFixed(2); // => '119.97'
 * ```
 */
export const welday = (load: number, repetitionsToFailure: number): number =>
  load * (1 + 0.0333 * repetitionsToFailure);

export const weldayEquation = {
  id: 'welday-1988',
  name: 'Welday',
  formula: 'w * (1 + 0.0333 * r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: welday,
  inverse: { formula: '(1 / p - 1) / 0.0333', apply: (p) => (1 / p - 1) / 0.0333 },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'unconfirmed',
  sources: ['welday-1988'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
