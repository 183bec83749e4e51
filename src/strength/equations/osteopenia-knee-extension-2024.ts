import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of trained older adults with osteopenia: leg extension (2024 cubic).
 *
 * Formula: 1RM = w × (0.999714613 + 0.00184050532 × r + 0.00390281962 × r² − 0.000128405344 × r³)
 *
 * - Shape: it turns over at r = 20.50.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: not at hand; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaKneeExtension2024 } from 'cuffwork/equations';
 * osteopeniaKneeExtension2024(90, 10).toFixed(2); // => '115.20'
 * ```
 */
export const osteopeniaKneeExtension2024 = (load: number, r: number): number =>
  load * (0.999714613 + 0.00184050532 * r + 0.00390281962 * r * r - 0.000128405344 * r * r * r);

export const osteopeniaKneeExtension2024Equation = {
  id: 'osteopenia-knee-extension-2024',
  name: 'leg extension, older adults with osteopenia (2024)',
  formula: 'w * (0.999714613 + 0.00184050532 * r + 0.00390281962 * r ^ 2 - 0.000128405344 * r ^ 3)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: osteopeniaKneeExtension2024,
  lifts: ['knee-extension'],
  sample: '40 trained adults with osteopenia, 73 ± 8 years',
  // 73 ± 2 × 8 years; the range itself is not at hand.
  population: { training: 'trained', ageYears: { low: 57, high: 89 } },
  fittedRepetitions: { low: 5, high: 16 },
  domain: { from: 5, to: 16, reason: 'the range of its tests; it turns over at 20.50' },
  basis: 'data',
  evidence: 'derived',
  sources: ['osteopenia-2024'],
  assumptions: ['cubic-form-inferred'],
} as const satisfies OneRepMaxEquation;
