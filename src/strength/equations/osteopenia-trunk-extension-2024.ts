import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of trained older adults with osteopenia: trunk extension (2024 cubic).
 *
 * Formula: 1RM = w × (1.01565994 − 0.0130808261 × r + 0.00601883266 × r² − 0.000228623800 × r³)
 *
 * - Shape: it turns over at r = 16.39 and has a low at 1.16.
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
 * import { osteopeniaTrunkExtension2024 } from 'cuffwork/equations';
 * osteopeniaTrunkExtension2024(90, 10).toFixed(2); // => '113.23'
 * ```
 */
export const osteopeniaTrunkExtension2024 = (load: number, r: number): number =>
  load * (1.01565994 - 0.0130808261 * r + 0.00601883266 * r * r - 0.0002286238 * r * r * r);

export const osteopeniaTrunkExtension2024Equation = {
  id: 'osteopenia-trunk-extension-2024',
  name: 'trunk extension, older adults with osteopenia (2024)',
  formula: 'w * (1.01565994 - 0.0130808261 * r + 0.00601883266 * r ^ 2 - 0.000228623800 * r ^ 3)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: osteopeniaTrunkExtension2024,
  lifts: ['trunk-extension'],
  sample: '40 trained adults with osteopenia, 73 ± 8 years',
  // 73 ± 2 × 8 years; the range itself is not at hand.
  population: { training: 'trained', ageYears: { low: 57, high: 89 } },
  fittedRepetitions: { low: 5, high: 16 },
  domain: { from: 5, to: 16, reason: 'the range of its tests; it turns over at 16.39' },
  basis: 'data',
  evidence: 'derived',
  sources: ['osteopenia-2024'],
  assumptions: ['cubic-form-inferred'],
} as const satisfies OneRepMaxEquation;
