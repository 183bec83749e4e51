import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum by the Epley equation.
 *
 * Formula: 1RM = w × (1 + r / 30)
 *
 * - Shape: a straight line in r, without an upper end. At r = 1 it gives 1.033 w; {@link estimateOneRepMax}
 *   returns the load itself there, so the answer jumps slightly between 1 and 2 repetitions.
 * - Fitted range: none; a poundage chart without published data. Used up to about 10 repetitions.
 * - Error: see {@link estimateOneRepMax}.
 * - Evidence: `secondary` (the constant 1/30; other texts print 0.033 or 0.0333).
 * - Source: Poundage chart, 1985; provenance reviewed in Biol Sport 2014;31(2):157–161.
 *
 * @param load - w, load lifted [kg or lb]
 * @param repetitionsToFailure - r, repetitions to failure
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { epley } from 'cuffwork/equations';
 * epley(90, 10); // => 120
 * ```
 */
export const epley = (load: number, repetitionsToFailure: number): number => load * (1 + repetitionsToFailure / 30);

export const epleyEquation = {
  id: 'epley-1985',
  name: 'Epley',
  formula: 'w * (1 + r / 30)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: epley,
  inverse: { formula: '30 * (1 / p - 1)', apply: (p) => 30 * (1 / p - 1) },
  lifts: 'any',
  sample: 'nobody: a poundage chart',
  basis: 'practitioner',
  evidence: 'secondary',
  sources: ['epley-1985', 'equation-provenance-2014'],
  assumptions: ['constant-one-thirtieth'],
} as const satisfies OneRepMaxEquation;
