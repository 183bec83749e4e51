import { Math } from '../../quantity/maths.js';
import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Berger equation.
 *
 * Formula: 1RM = w / (1.0261 × e^(−0.0262 × r))
 *
 * - Shape: 1.0004 w at r = 1; it grows without an upper end. Often copied with the exponent −0.00262, which
 *   puts the maximum below the load lifted.
 * - Fitted range: not checked.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `unconfirmed`; the coefficients are written from memory.
 * - Source: 1961 or 1970 (from memory).
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { berger } from 'cuffwork/equations';
 * berger(90, 10).toFixed(2); // => '113.98'
 * ```
 */
export const berger = (load: number, repetitionsToFailure: number): number =>
  load / (1.0261 * Math.exp(-0.0262 * repetitionsToFailure));

export const bergerEquation = {
  id: 'berger-1961',
  name: 'Berger',
  formula: 'w / (1.0261 * exp(-0.0262 * r))',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: berger,
  inverse: { formula: '-log(p / 1.0261) / 0.0262', apply: (p) => -Math.log(p / 1.0261) / 0.0262 },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'unconfirmed',
  sources: ['berger-1961'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
