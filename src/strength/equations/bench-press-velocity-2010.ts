import type { RelativeLoadEquation } from '../equation.js';

/**
 * Load of a bench press as a percentage of the maximum, from the velocity of the bar (2010).
 *
 * Formula: %1RM = 8.4326 × v² − 73.501 × v + 112.33
 *
 * - Fitted range: not checked; 120 men. At 1RM the mean velocity was 0.16 ± 0.04 m/s.
 * - Error: standard error of estimate 3.56 percentage points (from memory); R² 0.98.
 * - Evidence: `unconfirmed`; the coefficients and the error are written from memory.
 * - Source: Int J Sports Med 2010;31(5):347–352.
 *
 * @param v - mean propulsive velocity at maximal intent [m/s]
 * @returns load as a percentage of the maximum [%]
 *
 * @example
 * ```ts
 * import { benchPressVelocity2010 } from 'cuffwork/equations';
 * benchPressVelocity2010(0.62).toFixed(2); // => '70.00'
 * ```
 */
export const benchPressVelocity2010 = (v: number): number => 8.4326 * v * v - 73.501 * v + 112.33;

export const benchPressVelocity2010Equation = {
  id: 'bench-press-velocity-2010',
  name: 'bench press, by bar velocity (2010)',
  formula: '8.4326 * v ^ 2 - 73.501 * v + 112.33',
  symbols: { v: 'velocityMPerS' },
  reading: 'velocityMPerS',
  apply: benchPressVelocity2010,
  lift: 'bench press',
  sample: '120 men',
  error: { standardDeviation: 3.56, evidence: 'unconfirmed' },
  evidence: 'unconfirmed',
  sources: ['bench-velocity-2010', 'velocity-variation-2022'],
  assumptions: ['mean-propulsive-velocity'],
} as const satisfies RelativeLoadEquation;
