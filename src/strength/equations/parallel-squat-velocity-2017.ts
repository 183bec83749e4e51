import type { RelativeLoadEquation } from '../equation.js';

/**
 * Load of a parallel squat as a percentage of the maximum, from the velocity of the bar (2017).
 *
 * Formula: %1RM = 120.15 − 83.54 × v
 *
 * - Fitted range: not checked; 209 men and 81 women.
 * - Error: none published as a figure; the model explains 79 % of the variation.
 * - Evidence: `published`.
 * - Source: Relative load prediction by velocity and the OMNI-RES 0–10 scale in parallel squat, J Strength Cond Res 2017.
 *
 * @param v - average velocity at maximal intent [m/s]
 * @returns load as a percentage of the maximum [%]
 *
 * @example
 * ```ts
 * import { parallelSquatVelocity2017 } from 'cuffwork/equations';
 * parallelSquatVelocity2017(0.5).toFixed(2); // => '78.38'
 * ```
 */
export const parallelSquatVelocity2017 = (v: number): number => 120.15 - 83.54 * v;

export const parallelSquatVelocity2017Equation = {
  id: 'parallel-squat-velocity-2017',
  name: 'parallel squat, by bar velocity (2017)',
  formula: '120.15 - 83.54 * v',
  symbols: { v: 'velocityMPerS' },
  reading: 'velocityMPerS',
  apply: parallelSquatVelocity2017,
  lift: 'parallel squat',
  sample: '209 men and 81 women',
  evidence: 'published',
  sources: ['parallel-squat-2017', 'velocity-variation-2022'],
  assumptions: ['mean-velocity'],
} as const satisfies RelativeLoadEquation;
