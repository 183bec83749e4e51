import type { RelativeLoadEquation } from '../equation.js';

/**
 * Load of a full back squat as a percentage of the maximum, from the velocity of the bar (2017).
 *
 * Formula: %1RM = −5.961 × v² − 50.71 × v + 117.0
 *
 * - Fitted range: not at hand; 80 men. At the maximum itself the mean velocity was 0.32 ± 0.03 m/s.
 * - Error: standard error of estimate 4.02 percentage points (recalled); R² 0.96.
 * - Evidence: `unconfirmed`; the coefficients and the error are written from memory.
 * - Source: Sports Med Int Open 2017;1(2):E80–E88.
 *
 * @param v - mean propulsive velocity at maximal intent [m/s]
 * @returns load as a percentage of the maximum [%]
 *
 * @example
 * ```ts
 * import { fullSquatVelocity2017 } from 'cuffwork/equations';
 * fullSquatVelocity2017(0.84).toFixed(2); // => '70.20'
 * ```
 */
export const fullSquatVelocity2017 = (v: number): number => -5.961 * v * v - 50.71 * v + 117.0;

export const fullSquatVelocity2017Equation = {
  id: 'full-squat-velocity-2017',
  name: 'full back squat, by bar velocity (2017)',
  formula: '-5.961 * v ^ 2 - 50.71 * v + 117.0',
  symbols: { v: 'velocityMPerS' },
  reading: 'velocityMPerS',
  apply: fullSquatVelocity2017,
  lift: 'full back squat',
  sample: '80 men',
  error: { standardDeviation: 4.02, evidence: 'unconfirmed' },
  evidence: 'unconfirmed',
  sources: ['squat-velocity-2017', 'velocity-variation-2022'],
  assumptions: ['mean-propulsive-velocity'],
} as const satisfies RelativeLoadEquation;
