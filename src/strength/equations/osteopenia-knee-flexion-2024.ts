import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of trained older adults with osteopenia: leg flexion (2024 cubic).
 *
 * Formula: 1RM = w × (0.994637813 + 0.00715193846 × r + 0.00333621122 × r² − 0.000109143358 × r³)
 *
 * - Shape: it turns over at r = 21.40.
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
 * import { osteopeniaKneeFlexion2024 } from 'cuffwork/equations';
 * osteopeniaKneeFlexion2024(90, 10).toFixed(2); // => '116.16'
 * ```
 */
export const osteopeniaKneeFlexion2024 = (load: number, r: number): number =>
  load * (0.994637813 + 0.00715193846 * r + 0.00333621122 * r * r - 0.000109143358 * r * r * r);

export const osteopeniaKneeFlexion2024Equation = {
  id: 'osteopenia-knee-flexion-2024',
  name: 'leg flexion, older adults with osteopenia (2024)',
  formula: 'w * (0.994637813 + 0.00715193846 * r + 0.00333621122 * r ^ 2 - 0.000109143358 * r ^ 3)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: osteopeniaKneeFlexion2024,
  lifts: ['knee-flexion'],
  sample: '40 trained adults with osteopenia, 73 ± 8 years',
  // 73 ± 2 × 8 years; the range itself is not at hand.
  population: { training: 'trained', ageYears: { low: 57, high: 89 } },
  fittedRepetitions: { low: 5, high: 16 },
  domain: { from: 5, to: 16, reason: 'the range of its tests; it turns over at 21.40' },
  basis: 'data',
  evidence: 'derived',
  sources: ['osteopenia-2024'],
  assumptions: ['cubic-form-inferred'],
} as const satisfies OneRepMaxEquation;
