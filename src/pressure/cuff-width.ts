import type { Answer, Caution, WithInterval } from '../answer/answer.js';
import { logNormalInterval } from '../answer/interval.js';
import { defined } from '../answer/defined.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { Math, square } from '../quantity/maths.js';
import { limbCircumference, LIMBS, type Limb } from '../quantity/quantities.js';
import { readBloodPressure } from './blood-pressure.js';
import { type Conversion, conversionInterval, refuseBelowDiastolic, refuseUseless } from './conversion.js';
import { aboveDiastolic, CUFF_DEVIATION, type PooledCurve } from './curve.js';
import { defaultEquations } from './equations.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';

/** The person and limb that a pressure is converted for. */
export interface ConversionReadings {
  /** Limb that wears the cuff. */
  readonly limb: Limb;
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm. */
  readonly circumferenceCm: number;
  /** Systolic blood pressure at the upper arm [mmHg], 60–300. */
  readonly systolicMmHg: number;
  /** Diastolic blood pressure at the upper arm [mmHg], 30–200. */
  readonly diastolicMmHg: number;
}

/** What {@link correctForCuffWidth} takes. */
export interface CuffWidthInput extends ConversionReadings {
  /** LOP with the cuff of `fromWidthCm` [mmHg], 50–1000. */
  readonly occlusionMmHg: number;
  /** Width of the cuff that `occlusionMmHg` applies to [cm], 2–40. */
  readonly fromWidthCm: number;
  /** Width of the cuff for which you want the LOP [cm], 2–40. */
  readonly toWidthCm: number;
  /** Standard deviation of the error of `occlusionMmHg` [mmHg], 0–300; taken as 0 when left out. */
  readonly standardDeviationMmHg?: number | undefined;
}

const curveOf = (limb: Limb): PooledCurve => defaultEquations[limb].error.curve;

/** Pressure above diastolic by the curve of the limb, with a cuff. */
const aboveWith = ({ limb, circumferenceCm, systolicMmHg, diastolicMmHg }: ConversionReadings, widthCm: number) =>
  aboveDiastolic(curveOf(limb).b, circumferenceCm / widthCm, systolicMmHg - diastolicMmHg);

/** LOP₂ = DBP + (LOP₁ − DBP) × A₂ / A₁ */
export const convertWidth = (
  occlusionMmHg: number,
  readings: ConversionReadings,
  fromWidthCm: number,
  toWidthCm: number,
): number =>
  readings.diastolicMmHg +
  ((occlusionMmHg - readings.diastolicMmHg) * aboveWith(readings, toWidthCm)) / aboveWith(readings, fromWidthCm);

/** Widths that differ by less than this share fewer of their errors; cuffs further apart share none (`practice`). */
const FAR_APART = Math.log(1.3);

/**
 * Standard deviation of the conversion as a share of the pressure above diastolic: how two cuffs of one laboratory
 * differ from the curve, and what the errors of its coefficients make of their ratio.
 */
export function conversionDeviation(readings: ConversionReadings, fromWidthCm: number, toWidthCm: number): number {
  if (fromWidthCm === toWidthCm) return 0;
  const { variance } = curveOf(readings.limb).error;
  const pulse = readings.systolicMmHg - readings.diastolicMmHg;
  const [from, to] = [aboveWith(readings, fromWidthCm), aboveWith(readings, toWidthCm)];
  const b = readings.circumferenceCm * (1 / (toWidthCm * to) - 1 / (fromWidthCm * from));
  const a = pulse * (1 / to - 1 / from);
  const distance = Math.min(1, Math.abs(Math.log(toWidthCm / fromWidthCm)) / FAR_APART);
  return Math.sqrt(
    2 * square(CUFF_DEVIATION * distance) + b * b * variance.b + 2 * b * a * variance.both + a * a * variance.a,
  );
}

/** A converted pressure is no measurement. */
export const convertedCaution = (fromWidthCm: number, toWidthCm: number): Caution =>
  caution('caution', 'width-converted', { from: fromWidthCm, to: toWidthCm }, { path: ['toWidthCm'] });

/**
 * Converts an occlusion pressure from one cuff width to another, by the pooled curve of the limb.
 *
 * Formula: LOP₂ = DBP + (LOP₁ − DBP) × A₂ / A₁, with A = (SBP − DBP) / 2 + b × C / W; b = 17.9 thigh, 11.5 arm
 *
 * So a pressure keeps its ratio to the curve above diastolic: an estimate of the curve, converted, is the estimate for
 * the other width, in every posture.
 *
 * - Limit: upper / lower at most 2.5. The published conversion from 12 to 5 cm, which spans 2.5, is not valid by its own
 *   publication (Physiol Meas 2024).
 * - Error: 33 % of the pressure above diastolic between cuffs whose widths differ by 30 % or more, in proportion less
 *   below; and the errors of the coefficients (`derived`). None when the widths are equal.
 * - Evidence: `derived`, as the curve.
 * - Source: the group means behind the curve; see its equation.
 *
 * @function
 * @param input - `occlusionMmHg` LOP₁ [mmHg]; limb; `circumferenceCm` C [cm]; `systolicMmHg` SBP, `diastolicMmHg` DBP
 * [mmHg]; `fromWidthCm` W₁, `toWidthCm` W₂ [cm]; `standardDeviationMmHg` [mmHg]
 * @returns LOP₂ [mmHg] with its interval.
 * @throws InputError naming every wrong field; also for a conversion that is useless: one whose interval spans more than
 * a factor of 2.5, or reaches the diastolic pressure. On the thigh that is every conversion to a cuff of 5 cm.
 *
 * @example
 * ```ts
 * import { correctForCuffWidth } from 'cuffwork';
 * const thigh = { limb: 'leg', circumferenceCm: 60, systolicMmHg: 120, diastolicMmHg: 70 } as const;
 * correctForCuffWidth({ ...thigh, occlusionMmHg: 180, fromWidthCm: 12, toWidthCm: 10 }).value.toFixed(0); // => '197'
 * ```
 */
export const correctForCuffWidth = withInput(function correctForCuffWidth(
  input: CuffWidthInput,
): WithInterval<Answer<'occlusion-pressure'>> {
  const reader = new Reader(input);
  const occlusionMmHg = reader.number('occlusionMmHg');
  const limb = reader.choice('limb', LIMBS);
  const inputs = defined({
    occlusionMmHg,
    limb,
    circumferenceCm: reader.number('circumferenceCm', limbCircumference[limb]),
    ...readBloodPressure(reader),
    fromWidthCm: reader.number('fromWidthCm'),
    toWidthCm: reader.number('toWidthCm'),
    standardDeviationMmHg: reader.optionalNumber('standardDeviationMmHg'),
  });
  const { diastolicMmHg, fromWidthCm, toWidthCm, standardDeviationMmHg } = inputs;
  refuseBelowDiastolic(reader, occlusionMmHg, diastolicMmHg);
  reader.done();

  const same = fromWidthCm === toWidthCm;
  const value = same ? occlusionMmHg : convertWidth(occlusionMmHg, inputs, fromWidthCm, toWidthCm);
  const conversion: Conversion = {
    valueMmHg: value,
    occlusionMmHg,
    diastolicMmHg,
    part: 'width-correction',
    deviation: conversionDeviation(inputs, fromWidthCm, toWidthCm),
    standardDeviationMmHg,
  };
  if (!same) refuseUseless(reader, conversion, 'toWidthCm');
  reader.done();
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...conversionInterval(conversion),
    equation: 'width-correction',
    evidence: 'derived',
    inputs,
    assumptions: [assumption('ratio-to-curve-kept'), logNormalInterval],
    cautions: same ? [] : [convertedCaution(fromWidthCm, toWidthCm)],
  };
});
