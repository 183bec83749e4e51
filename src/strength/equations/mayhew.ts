import { Math } from '../../quantity/maths.js';
import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Mayhew equation.
 *
 * Formula: 1RM = 100 × w / (52.2 + 41.9 × e^(−0.055 × r))
 *
 * - Shape: 1.089 w at r = 1, the furthest from exact of all equations, so it is high for short sets. It levels off at
 *   1.916 w: below 52.2 % of the maximum the inverse does not exist.
 * - Fitted range: not checked; 435 students (184 men, 251 women), bench press (from memory).
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (read in a later text that writes out the classic equations).
 * - Source: J Appl Sport Sci Res 1992;6(4):200–206.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { mayhew } from 'cuffwork/equations';
 * mayhew(90, 10).toFixed(2); // => '117.84'
 * ```
 */
export const mayhew = (load: number, repetitionsToFailure: number): number =>
  (100 * load) / (52.2 + 41.9 * Math.exp(-0.055 * repetitionsToFailure));

export const mayhewEquation = {
  id: 'mayhew-1992',
  name: 'Mayhew',
  formula: '100 * w / (52.2 + 41.9 * exp(-0.055 * r))',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: mayhew,
  inverse: {
    formula: '-log((100 * p - 52.2) / 41.9) / 0.055',
    apply: (p) => -Math.log((100 * p - 52.2) / 41.9) / 0.055,
    floor: 0.522,
  },
  lifts: 'any',
  sample: '435 students (184 men, 251 women), bench press (from memory)',
  basis: 'data',
  evidence: 'secondary',
  sources: ['mayhew-1992', 'equation-provenance-2014'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
