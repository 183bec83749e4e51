import { Math } from '../../quantity/maths.js';
import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Wathan equation.
 *
 * Formula: 1RM = 100 × w / (48.8 + 53.8 × e^(−0.075 × r))
 *
 * - Shape: 1.013 w at r = 1. It levels off at 2.049 w: below 48.8 % of the maximum the inverse does not exist.
 *   Some texts print its coefficients as those of Mayhew for one lift; no publication supports that.
 * - Fitted range: not checked.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (read in a later text that writes out the classic equations).
 * - Source: Load assignment, in Essentials of strength training and conditioning, 1994.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { wathan } from 'cuffwork/equations';
 * wathan(90, 10).toFixed(2); // => '121.27'
 * ```
 */
export const wathan = (load: number, repetitionsToFailure: number): number =>
  (100 * load) / (48.8 + 53.8 * Math.exp(-0.075 * repetitionsToFailure));

export const wathanEquation = {
  id: 'wathan-1994',
  name: 'Wathan',
  formula: '100 * w / (48.8 + 53.8 * exp(-0.075 * r))',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: wathan,
  inverse: {
    formula: '-log((100 * p - 48.8) / 53.8) / 0.075',
    apply: (p) => -Math.log((100 * p - 48.8) / 53.8) / 0.075,
    floor: 0.488,
  },
  lifts: 'any',
  sample: 'not checked',
  basis: 'not-known',
  evidence: 'secondary',
  sources: ['wathan-1994'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
