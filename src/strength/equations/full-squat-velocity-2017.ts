import type { RelativeLoadEquation } from '../equation.js';

/**
 * Load of a full back squat as a percentage of 1RM, from the mean propulsive velocity of the bar (2017).
 *
 * Formula: %1RM = −5.961 × v² − 50.71 × v + 117.0
 *
 * - Fitted range: not checked; 80 men. At 1RM the mean velocity was 0.32 ± 0.03 m/s.
 * - Error: 12 percentage points (`derived`). In 52 other people the form for mean velocity read 6 to 24 points too
 *   high: docs/working/full-squat-velocity.ts. Prefer your own load–velocity line.
 * - Evidence: `secondary`; the coefficients were read in public source code that cites the paper.
 * - Source: Sports Med Int Open 2017;1(2):E80–E88.
 *
 * @param v - mean propulsive velocity at maximal intent [m/s]
 * @returns load as a percentage of 1RM [%]
 *
 * @example
 * ```ts
 * import { fullSquatVelocity2017 } from 'cuffwork/equations';
 * fullSquatVelocity2017(0.84).toFixed(2); // => '70.20'
 * ```
 */
export const fullSquatVelocity2017 = (v: number): number => -5.961 * v * v - 50.71 * v + 117.0;

/**
 * Load of a full back squat as a percentage of 1RM, from the mean velocity of the bar (2017).
 *
 * Formula: %1RM = −12.87 × v² − 46.31 × v + 116.3
 *
 * - Fitted range: not checked; 80 men. At 1RM the mean velocity was 0.32 ± 0.03 m/s.
 * - Error: 12 percentage points (`derived`). In 52 other people it read 24, 17, 10 and 6 points too high at 40, 60,
 *   80 and 90 % of 1RM: docs/working/full-squat-velocity.ts. Prefer your own load–velocity line.
 * - Evidence: `secondary`; the coefficients were read in public source code that cites the paper.
 * - Source: Sports Med Int Open 2017;1(2):E80–E88.
 *
 * @param v - mean velocity of the lifting phase at maximal intent [m/s]
 * @returns load as a percentage of 1RM [%]
 *
 * @example
 * ```ts
 * import { fullSquatMeanVelocity2017 } from 'cuffwork/equations';
 * fullSquatMeanVelocity2017(0.5).toFixed(2); // => '89.93'
 * ```
 */
export const fullSquatMeanVelocity2017 = (v: number): number => -12.87 * v * v - 46.31 * v + 116.3;

/**
 * Load of a full back squat as a percentage of 1RM, from the peak velocity of the bar (2017).
 *
 * Formula: %1RM = −10.85 × v² − 25.1 × v + 130.3
 *
 * - Fitted range: not checked; 80 men.
 * - Error: 12 percentage points (`derived`). In 52 other people the form for mean velocity read 6 to 24 points too
 *   high: docs/working/full-squat-velocity.ts. Prefer your own load–velocity line.
 * - Evidence: `secondary`; the coefficients were read in public source code that cites the paper.
 * - Source: Sports Med Int Open 2017;1(2):E80–E88.
 *
 * @param v - peak velocity of the lifting phase at maximal intent [m/s]
 * @returns load as a percentage of 1RM [%]
 *
 * @example
 * ```ts
 * import { fullSquatPeakVelocity2017 } from 'cuffwork/equations';
 * fullSquatPeakVelocity2017(1).toFixed(2); // => '94.35'
 * ```
 */
export const fullSquatPeakVelocity2017 = (v: number): number => -10.85 * v * v - 25.1 * v + 130.3;

/** What the three equations have in common. */
const SHARED = {
  symbols: { v: 'velocityMPerS' },
  reading: 'velocityMPerS',
  lift: 'full back squat',
  sample: '80 men',
  error: { standardDeviation: 12, evidence: 'derived' },
  evidence: 'secondary',
  sources: ['squat-velocity-2017', 'squat-velocity-open-data', 'velocity-variation-2022'],
  cautions: [{ code: 'full-squat-velocity-over-reads', source: 'squat-velocity-open-data' }],
} as const;

export const fullSquatVelocity2017Equation = {
  ...SHARED,
  id: 'full-squat-velocity-2017',
  name: 'full back squat, by mean propulsive velocity (2017)',
  formula: '-5.961 * v ^ 2 - 50.71 * v + 117.0',
  apply: fullSquatVelocity2017,
  assumptions: ['mean-propulsive-velocity'],
} as const satisfies RelativeLoadEquation;

export const fullSquatMeanVelocity2017Equation = {
  ...SHARED,
  id: 'full-squat-mean-velocity-2017',
  name: 'full back squat, by mean velocity (2017)',
  formula: '-12.87 * v ^ 2 - 46.31 * v + 116.3',
  apply: fullSquatMeanVelocity2017,
  assumptions: ['mean-velocity'],
} as const satisfies RelativeLoadEquation;

export const fullSquatPeakVelocity2017Equation = {
  ...SHARED,
  id: 'full-squat-peak-velocity-2017',
  name: 'full back squat, by peak velocity (2017)',
  formula: '-10.85 * v ^ 2 - 25.1 * v + 130.3',
  apply: fullSquatPeakVelocity2017,
  assumptions: ['peak-velocity'],
} as const satisfies RelativeLoadEquation;
