import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Lander equation.
 *
 * Formula: 1RM = 100 × w / (101.3 − 2.67123 × r)
 *
 * - Shape: 1.014 w at r = 1, where {@link estimateOneRepMax} returns the load itself; a pole at r = 37.92.
 * - Fitted range: none; a published review calls its start a guessed chart.
 * - Error: none published; see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (read in a later text that writes out the classic equations).
 * - Source: NSCA Journal 1985;6(6):60–61; provenance reviewed in Biol Sport 2014;31(2):157–161.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure, below 37.92
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { lander } from 'cuffwork/equations';
 * lander(90, 10).toFixed(2); // => '120.66'
 * ```
 */
export const lander = (load: number, repetitionsToFailure: number): number =>
  (100 * load) / (101.3 - 2.67123 * repetitionsToFailure);

export const landerEquation = {
  id: 'lander-1985',
  name: 'Lander',
  formula: '100 * w / (101.3 - 2.67123 * r)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: lander,
  inverse: { formula: '(101.3 - 100 * p) / 2.67123', apply: (p) => (101.3 - 100 * p) / 2.67123 },
  lifts: 'any',
  sample: 'nobody: it started as a guessed chart',
  basis: 'practitioner',
  evidence: 'secondary',
  sources: ['lander-1985', 'equation-provenance-2014'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
