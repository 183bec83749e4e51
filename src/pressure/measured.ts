import type { Answer, ErrorPart, WithInterval } from '../answer/answer.js';
import { logInterval, logNormalInterval } from '../answer/interval.js';
import { defined } from '../answer/defined.js';
import { isCalendarDay } from '../answer/day.js';
import { pressureCautions } from '../answer/guards.js';
import { DAY_EXPECTED, need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { formatUnit } from '../quantity/format.js';
import { LIMBS, POSTURES, SIDES, type Limb, type Posture, type Side } from '../quantity/quantities.js';
import type { PressureAssumption } from '../answer/codes.js';
import { assumption } from './assumptions.js';
import { BELOW_MEASURED } from './needs.js';

/** How an occlusion pressure can be measured: the end-point is the loss of the pulse beyond the cuff. */
export const measurementMethods = ['doppler', 'oximeter', 'automated'] as const;
/** A way to measure an occlusion pressure. */
export type MeasurementMethod = (typeof measurementMethods)[number];

/** What {@link measuredOcclusionPressure} takes. */
export interface MeasuredInput {
  /** Measured LOP [mmHg], 50–1000. */
  readonly valueMmHg: number;
  /** How you measured it; the error depends on it. */
  readonly method: MeasurementMethod;
  /** The limb under the cuff. */
  readonly limb: Limb;
  /** Side of the limb. */
  readonly side?: Side | undefined;
  /** Width of the cuff that you measured with [cm], 3–40. */
  readonly cuffWidthCm?: number | undefined;
  /** Posture during the measurement. */
  readonly posture?: Posture | undefined;
  /** Day it was measured, `YYYY-MM-DD`. */
  readonly date?: string | undefined;
  /**
   * Number of the day, a whole number 0–1,000,000 counted from any day: measurements on one day share that day’s
   * departure.
   */
  readonly day?: number | undefined;
  /**
   * Standard deviation of the measurement’s own error [mmHg], 0–300 and below the pressure itself; left out, it is a
   * published one.
   */
  readonly standardDeviationMmHg?: number | undefined;
}

interface MethodError {
  readonly standardDeviationMmHg: number;
  readonly evidence: Grade;
  readonly assumption: PressureAssumption;
  readonly source: SourceId;
}

/** Published errors of each method; where several were published, the largest. */
export function publishedError(method: MeasurementMethod, limb: Limb): MethodError {
  switch (method) {
    case 'doppler':
      // Largest of four groups (men and women, two inflation protocols): differences of repeats, 12.2 mmHg, over √2.
      // The abstract does not report whether 12.2 is a standard deviation.
      return {
        standardDeviationMmHg: 8.6,
        evidence: 'derived',
        assumption: 'error-largest-published',
        source: 'femoral-repeat',
      };
    case 'oximeter':
      // Limits of agreement with Doppler −16.2 to 28.8 mmHg: their spread, 45 / (2 × 1.96), and their middle, 6.3, whose
      // direction we have not checked, in quadrature.
      return {
        standardDeviationMmHg: 13.1,
        evidence: 'derived',
        assumption: 'error-between-methods',
        source: 'retest-2020',
      };
    case 'automated':
      return {
        standardDeviationMmHg: limb === 'arm' ? 8 : 15,
        evidence: 'published',
        assumption: 'error-between-methods',
        source: 'automated-2016',
      };
  }
}

/**
 * A measured limb occlusion pressure as the same kind of answer as an estimate, with its own error.
 *
 * Measure at rest, before the session, at least twice, in the posture and with the cuff of the exercise. A very high
 * pressure brings a caution or a stop (`guards`).
 *
 * The 95 % interval is log-normal, as for an estimate: LOP ÷ f to LOP × f, f = exp(1.96 × s / LOP), with s the error
 * below [mmHg].
 *
 * - Error (standard deviation, mmHg): Doppler 8.6, largest of four groups of repeats (12.2 / √2; the abstract does not
 *   report whether 12.2 is a standard deviation); pulse oximeter 13.1, from limits of agreement with Doppler, their bias
 *   counted in; automated 8 on the arm and 15 on the leg.
 * - Evidence: `derived`, `derived` and `published`; with your own error `practice`.
 * - Source: Appl Sci 2023;13(3):1438 (n = 40); Int J Sports Phys Ther 2020;15(5):783–791; J Med Biol Eng 2016;36:644–650.
 *
 * @function
 * @param input - `valueMmHg` [mmHg], method and limb; side, `cuffWidthCm` [cm], posture, date and day, for the
 * record and for {@link calibrateOcclusionPressure};
 * `standardDeviationMmHg` s [mmHg] where the error is known.
 * @returns LOP [mmHg] with its interval.
 * @throws InputError naming every wrong field; also for an error that is no smaller than the pressure.
 *
 * @example
 * ```ts
 * import { measuredOcclusionPressure } from 'cuffwork';
 * const lop = measuredOcclusionPressure({ valueMmHg: 168, method: 'doppler', limb: 'leg', cuffWidthCm: 10 });
 * [lop.lower!, lop.upper!].map(Math.round); // => [152, 186]
 * lop.standardDeviation!.toFixed(4); // => '0.0512'
 * ```
 */
export const measuredOcclusionPressure = withInput(function measuredOcclusionPressure(
  input: MeasuredInput,
): WithInterval<Answer<'occlusion-pressure'>> {
  const reader = new Reader(input);
  const inputs = defined({
    valueMmHg: reader.number('valueMmHg'),
    method: reader.choice('method', measurementMethods),
    limb: reader.choice('limb', LIMBS),
    side: reader.optionalChoice('side', SIDES),
    cuffWidthCm: reader.optionalNumber('cuffWidthCm'),
    posture: reader.optionalChoice('posture', POSTURES),
    date: reader.optionalText('date', DAY_EXPECTED, isCalendarDay),
    day: reader.optionalNumber('day'),
    standardDeviationMmHg: reader.optionalNumber('standardDeviationMmHg'),
  });
  const { valueMmHg, method, limb, standardDeviationMmHg } = inputs;
  const given = standardDeviationMmHg !== undefined;
  if (given && standardDeviationMmHg >= valueMmHg) {
    const expected = need(BELOW_MEASURED, { value: valueMmHg, unit: 'mm[Hg]' });
    reader.refuse('standardDeviationMmHg', expected, formatUnit(standardDeviationMmHg, 'mm[Hg]'));
  }
  reader.done();

  const published = publishedError(method, limb);
  const error: ErrorPart = {
    part: 'measurement',
    standardDeviation: (standardDeviationMmHg ?? published.standardDeviationMmHg) / valueMmHg,
    evidence: given ? 'practice' : published.evidence,
  };
  return {
    kind: 'occlusion-pressure',
    value: valueMmHg,
    unit: 'mm[Hg]',
    ...logInterval(valueMmHg, [error]),
    equation: `measured-${method}`,
    evidence: error.evidence,
    inputs,
    assumptions: [logNormalInterval, assumption(given ? 'error-given' : published.assumption)],
    cautions: pressureCautions('occlusion-pressure', valueMmHg, { path: ['valueMmHg'] }),
  };
});
