import type { RelativeLoadEquation } from '../equation.js';

/**
 * Load of a parallel squat as a percentage of the maximum, from a rating on the OMNI-RES 0–10 scale (2017).
 *
 * Formula: %1RM = 5.07 + 9.63 × n
 *
 * - Fitted range: not checked; 209 men and 81 women.
 * - Error: none published as a figure; the model explains 86 % of the variation.
 * - Evidence: `published`.
 * - Source: Relative load prediction by velocity and the OMNI-RES 0–10 scale in parallel squat, J Strength Cond Res 2017.
 *
 * @param n - rating on the OMNI-RES 0–10 scale
 * @returns load as a percentage of the maximum [%]
 *
 * @example
 * ```ts
 * import { parallelSquatOmni2017 } from 'cuffwork/equations';
 * parallelSquatOmni2017(5).toFixed(2); // => '53.22'
 * ```
 */
export const parallelSquatOmni2017 = (n: number): number => 5.07 + 9.63 * n;

export const parallelSquatOmni2017Equation = {
  id: 'parallel-squat-omni-2017',
  name: 'parallel squat, by the OMNI-RES scale (2017)',
  formula: '5.07 + 9.63 * n',
  symbols: { n: 'omniRating' },
  reading: 'omniRating',
  apply: parallelSquatOmni2017,
  lift: 'parallel squat',
  sample: '209 men and 81 women',
  evidence: 'published',
  sources: ['parallel-squat-2017'],
  assumptions: [],
} as const satisfies RelativeLoadEquation;
