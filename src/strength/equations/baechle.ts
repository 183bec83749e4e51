import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Baechle equation: the form of Epley with the constant 0.033.
 *
 * Formula: 1RM = w × (1 + 0.033 × r)
 *
 * - Shape: a straight line in r, 1.033 w at r = 1, where {@link estimateOneRepMax} returns the load itself.
 * - Fitted range: not checked.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `unconfirmed`; the coefficients are written from memory.
 * - Source: 2000 (the year was read; the book is from memory).
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { baechle } from 'cuffwork/equations';
 * baechle(90, 10).toFixed(2); // => '119.70'
 * ```
 */
export const baechle = (load: number, repetitionsToFailure: number): number =>
  load * (1 + 0.033 * repetitionsToFailure);

export const baechleEquation = {
  id: 'baechle-2000',
  name: 'Baechle',
  formula: 'w * (1 + 0.033 * r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: baechle,
  inverse: { formula: '(1 / p - 1) / 0.033', apply: (p) => (1 / p - 1) / 0.033 },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'unconfirmed',
  sources: ['baechle-2000'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
