import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of trained older adults with osteopenia: trunk flexion (2024 cubic).
 *
 * Formula: 1RM = w × (0.994961852 + 0.00731240752 × r + 0.00293967456 × r² − 0.000105109010 × r³)
 *
 * - Shape: it turns over at r = 19.82.
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
 * import { osteopeniaTrunkFlexion2024 } from 'cuffwork/equations';
 * osteopeniaTrunkFlexion2024(90, 10).toFixed(2); // => '113.12'
 * ```
 */
export const osteopeniaTrunkFlexion2024 = (load: number, r: number): number =>
  load * (0.994961852 + 0.00731240752 * r + 0.00293967456 * r * r - 0.00010510901 * r * r * r);

export const osteopeniaTrunkFlexion2024Equation = {
  id: 'osteopenia-trunk-flexion-2024',
  name: 'trunk flexion, older adults with osteopenia (2024)',
  formula: 'w * (0.994961852 + 0.00731240752 * r + 0.00293967456 * r ^ 2 - 0.000105109010 * r ^ 3)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: osteopeniaTrunkFlexion2024,
  lifts: ['trunk-flexion'],
  sample: '40 trained adults with osteopenia, 73 ± 8 years',
  // 73 ± 2 × 8 years; the range itself is not at hand.
  population: { training: 'trained', ageYears: { low: 57, high: 89 } },
  fittedRepetitions: { low: 5, high: 16 },
  domain: { from: 5, to: 16, reason: 'the range of its tests; it turns over at 19.82' },
  basis: 'data',
  evidence: 'derived',
  sources: ['osteopenia-2024'],
  assumptions: ['cubic-form-inferred'],
} as const satisfies OneRepMaxEquation;
