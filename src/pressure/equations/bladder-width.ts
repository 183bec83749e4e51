import { Math } from '../../quantity/maths.js';
import type { Symbols } from '../../answer/answer.js';

/**
 * How far a systolic reading lies above the true pressure when it is taken with a bladder of the wrong width.
 *
 * Formula: bias = −115.27 + 4.558 × AC + 10.266 × B − 0.2763 × B² − 0.4190 × AC × B + 0.01053 × AC × B²
 *
 * - Fitted range: bladder width 12 to 18 cm, arm circumference 26 to 50 cm.
 * - Error: not checked.
 * - Evidence: `published`.
 * - Source: WHO MONICA quality assessment document.
 *
 * @param circumferenceCm - AC, arm circumference [cm]
 * @param bladderWidthCm - B, width of the bladder [cm]
 * @returns the bias of the systolic reading [mmHg]
 *
 * @example
 * ```ts
 * import { systolicBias } from 'cuffwork/equations';
 * systolicBias(42, 12).toFixed(2); // => '12.08'
 * ```
 */
export const systolicBias = (circumferenceCm: number, bladderWidthCm: number): number =>
  -115.27 +
  4.558 * circumferenceCm +
  10.266 * bladderWidthCm -
  0.2763 * bladderWidthCm * bladderWidthCm -
  0.419 * circumferenceCm * bladderWidthCm +
  0.01053 * circumferenceCm * bladderWidthCm * bladderWidthCm;

/**
 * How far a diastolic reading lies above the true pressure when it is taken with a bladder of the wrong width.
 *
 * Formula: bias = −87.39 + 3.893 × AC + 8.060 × B − 0.2164 × B² − 0.3906 × AC × B + 0.01053 × AC × B²
 *
 * - Fitted range: bladder width 12 to 18 cm, arm circumference 26 to 50 cm.
 * - Error: not checked.
 * - Evidence: `published`.
 * - Source: WHO MONICA quality assessment document.
 *
 * @param circumferenceCm - AC, arm circumference [cm]
 * @param bladderWidthCm - B, width of the bladder [cm]
 * @returns the bias of the diastolic reading [mmHg]
 *
 * @example
 * ```ts
 * import { diastolicBias } from 'cuffwork/equations';
 * diastolicBias(42, 12).toFixed(2); // => '8.50'
 * ```
 */
export const diastolicBias = (circumferenceCm: number, bladderWidthCm: number): number =>
  -87.39 +
  3.893 * circumferenceCm +
  8.06 * bladderWidthCm -
  0.2164 * bladderWidthCm * bladderWidthCm -
  0.3906 * circumferenceCm * bladderWidthCm +
  0.01053 * circumferenceCm * bladderWidthCm * bladderWidthCm;

/**
 * The bladder width at which a blood-pressure reading has no bias.
 *
 * Formula: B = 9.34 × log₁₀(AC)
 *
 * - Fitted range: not checked.
 * - Error: not checked.
 * - Evidence: `published`.
 * - Source: Blood Press Monit 2000;5(3):153–158.
 *
 * @param circumferenceCm - AC, arm circumference [cm]
 * @returns B, width of the bladder [cm]
 *
 * @example
 * ```ts
 * import { zeroErrorBladderWidth } from 'cuffwork/equations';
 * zeroErrorBladderWidth(32).toFixed(2); // => '14.06'
 * ```
 */
export const zeroErrorBladderWidth = (circumferenceCm: number): number => 9.34 * Math.log10(circumferenceCm);

const symbols = { AC: 'circumferenceCm', B: 'bladderWidthCm' } as const satisfies Symbols;

export const bladderBias = {
  systolic: {
    formula: 'SBP1 - (-115.27 + 4.558 * AC + 10.266 * B - 0.2763 * B ^ 2 - 0.4190 * AC * B + 0.01053 * AC * B ^ 2)',
    symbols: { SBP1: 'systolicMmHg', ...symbols },
  },
  diastolic: {
    formula: 'DBP1 - (-87.39 + 3.893 * AC + 8.060 * B - 0.2164 * B ^ 2 - 0.3906 * AC * B + 0.01053 * AC * B ^ 2)',
    symbols: { DBP1: 'diastolicMmHg', ...symbols },
  },
} as const;
