import type { Answer, WithInterval } from '../answer/answer.js';
import { logNormalInterval } from '../answer/interval.js';
import { defined } from '../answer/defined.js';
import { need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { LIMBS, POSTURES, quantities, type Limb, type Posture } from '../quantity/quantities.js';
import { type Conversion, conversionInterval, refuseBelowDiastolic, refuseUseless } from './conversion.js';
import { thighCurve } from './equations/thigh-curve-2026.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { LEG_FOR_POSTURE, STAYS_AT_LEAST } from './needs.js';

/** What {@link correctForPosture} takes. */
export interface PostureInput {
  /** LOP in `fromPosture` [mmHg], 50–1000. */
  readonly occlusionMmHg: number;
  /** Diastolic blood pressure [mmHg], 30–200. */
  readonly diastolicMmHg: number;
  /** The limb under the cuff. */
  readonly limb: Limb;
  /** Cuff width [cm], 3–40. */
  readonly cuffWidthCm: number;
  /** Posture that `occlusionMmHg` applies to. */
  readonly fromPosture: Posture;
  /** Posture for which you want the LOP. */
  readonly toPosture: Posture;
  /** Standard deviation of the error of `occlusionMmHg` [mmHg], 0–300; taken as 0 when left out. */
  readonly standardDeviationMmHg?: number | undefined;
}

/**
 * How people differ in the ratio of two postures, as a share of the pressure above diastolic: with wide cuffs (11 cm
 * or more), to or from standing, and with narrow ones (5 cm or less); between them in proportion to the width.
 */
export const POSTURE_DEVIATION = { wide: 0.1, standing: 0.18, narrow: 0.25 } as const;
const [NARROW_CM, WIDE_CM] = [5, 11];

/** Standard deviation of ln of the ratio of the pressures above diastolic in two postures. */
function postureDeviation(from: Posture, to: Posture, cuffWidthCm: number): number {
  if (from === to) return 0;
  const { wide, standing, narrow } = POSTURE_DEVIATION;
  const least = from === 'standing' || to === 'standing' ? standing : wide;
  const place = Math.min(1, Math.max(0, (cuffWidthCm - NARROW_CM) / (WIDE_CM - NARROW_CM)));
  return narrow + place * (least - narrow);
}

/**
 * Converts a thigh occlusion pressure from one posture to another, by the posture factors of the pooled curve.
 *
 * Formula: LOP₂ = DBP + (LOP₁ − DBP) × h₂ / h₁, with h = 1 supine, 1.25 seated, 1.53 standing
 *
 * So an estimate of the curve, converted, is the estimate for the other posture, with every cuff width.
 *
 * - Only for the thigh: no means of another posture are published for the arm.
 * - Error: people differ by 10 % of the pressure above diastolic between supine and seated and 18 % to or from standing
 *   with wide cuffs, and by 25 % with narrow ones (`derived`: published standard deviations, R² 0.81 and 0.50).
 * - Evidence: `derived` from the means of the same people in two postures.
 * - Source: PeerJ 2018;6:e4697; Eur J Appl Physiol 2018;118(2):303–312.
 *
 * @function
 * @param input - `occlusionMmHg` LOP₁, `diastolicMmHg` DBP [mmHg]; limb; `cuffWidthCm` [cm]; `fromPosture`; `toPosture`;
 * `standardDeviationMmHg` [mmHg]
 * @returns LOP₂ [mmHg] with its interval.
 * @throws InputError naming every wrong field; also for an arm, for a pressure at or below diastolic, and for a
 * conversion that is useless: one whose interval spans more than a factor of 2.5, or reaches the diastolic pressure.
 *
 * @example
 * ```ts
 * import { correctForPosture } from 'cuffwork';
 * const leg = { limb: 'leg', cuffWidthCm: 13.5, fromPosture: 'supine', toPosture: 'seated' } as const;
 * correctForPosture({ ...leg, occlusionMmHg: 150, diastolicMmHg: 70 }).value; // => 170
 * ```
 */
export const correctForPosture = withInput(function correctForPosture(
  input: PostureInput,
): WithInterval<Answer<'occlusion-pressure'>> {
  const reader = new Reader(input);
  const inputs = defined({
    occlusionMmHg: reader.number('occlusionMmHg'),
    diastolicMmHg: reader.number('diastolicMmHg'),
    limb: reader.choice('limb', LIMBS),
    cuffWidthCm: reader.number('cuffWidthCm'),
    fromPosture: reader.choice('fromPosture', POSTURES),
    toPosture: reader.choice('toPosture', POSTURES),
    standardDeviationMmHg: reader.optionalNumber('standardDeviationMmHg'),
  });
  const { occlusionMmHg, diastolicMmHg, limb, cuffWidthCm, fromPosture, toPosture, standardDeviationMmHg } = inputs;
  const same = fromPosture === toPosture;
  if (reader.fine && limb !== 'leg' && !same) {
    reader.refuse('limb', LEG_FOR_POSTURE, limb);
  }
  refuseBelowDiastolic(reader, occlusionMmHg, diastolicMmHg);
  const [from, to] = [thighCurve.h[fromPosture], thighCurve.h[toPosture]];
  const value = same ? occlusionMmHg : diastolicMmHg + ((occlusionMmHg - diastolicMmHg) * to) / from;
  if (value < quantities.occlusionMmHg.min) {
    const expected = need(STAYS_AT_LEAST, { least: quantities.occlusionMmHg.min, unit: 'mm[Hg]' });
    reader.refuse('occlusionMmHg', expected, formatUnit(occlusionMmHg, 'mm[Hg]'));
  }
  reader.done();

  const conversion: Conversion = {
    valueMmHg: value,
    occlusionMmHg,
    diastolicMmHg,
    part: 'posture',
    deviation: postureDeviation(fromPosture, toPosture, cuffWidthCm),
    standardDeviationMmHg,
  };
  if (!same) refuseUseless(reader, conversion, 'toPosture');
  reader.done();
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...conversionInterval(conversion),
    equation: 'posture-shift',
    evidence: 'derived',
    inputs,
    assumptions: [assumption('posture-ratio'), logNormalInterval],
    cautions: same
      ? []
      : [caution('caution', 'posture-shifted', { from: fromPosture, to: toPosture }, { path: ['toPosture'] })],
  };
});
