import { Math, square } from '../quantity/maths.js';
import { type Answer, type Caution, type ErrorPart, interval, NORMAL_95, normalInterval } from '../answer/answer.js';
import { describe } from '../answer/issues.js';
import { answerFault, readAnswer } from '../answer/read-answer.js';
import { Reader } from '../answer/reader.js';
import type { SourceId } from '../evidence/sources.js';
import { formatUnit } from '../quantity/format.js';
import { quantities, type Quantity } from '../quantity/quantities.js';
import { conversionDeviation, convertedCaution, convertWidth, type ConversionReadings } from './cuff-width.js';
import { EQUATION_IDS } from './equations.js';
import { assumption, caution } from './messages.js';

/** What {@link calibrateOcclusionPressure} takes. */
export interface CalibrationInput {
  /** An answer of `estimateOcclusionPressure` that names its `side`. */
  readonly estimate: Answer<'occlusion-pressure'>;
  /** Answers of `measuredOcclusionPressure` that name side, cuff width and posture, and the `day` where days differ. */
  readonly measurements: readonly Answer<'occlusion-pressure'>[];
  /** The day the answer is for. Left out, it is the day of the measurements that name none. */
  readonly day?: number;
}

/** An occlusion pressure with measurements folded in. */
export interface CalibratedOcclusionPressure extends Answer<'occlusion-pressure'> {
  /** How this person’s usual pressure stands to the estimate: 1.1 is a tenth above it. */
  readonly personalFactor: { readonly value: number; readonly standardDeviation: number };
}

/**
 * Standard deviation between days [mmHg]: day is 18 of the 52 % of variance that, as a standard deviation of 14.4 mmHg,
 * is not between people.
 */
export const DAY_DEVIATION = 8.5;

const MOST_MEASUREMENTS = 100;

/** A measurement, carried to the cuff of the estimate. */
interface Evidence {
  readonly value: number;
  readonly variance: number;
  readonly day: number | undefined;
  readonly widthCm: number;
}

/**
 * Jointly normal unknowns that add up to what is measured: the usual pressure, each day’s departure from it, and the
 * error of carrying from each other cuff width. Measurements are taken in one by one; the covariance only shrinks.
 */
class Unknowns {
  private readonly names: string[] = [];
  /** Means, and how each mean changes with the estimate: that is the weight the estimate keeps. */
  private readonly means: number[] = [];
  private readonly weights: number[] = [];
  private readonly covariance: number[][] = [];

  add(name: string, mean: number, variance: number, weight = 0): void {
    if (this.names.includes(name)) return;
    this.names.push(name);
    this.means.push(mean);
    this.weights.push(weight);
    for (const row of this.covariance) row.push(0);
    this.covariance.push([...this.means.map(() => 0).slice(1), variance]);
  }

  /** Mean, weight and variance of a sum of unknowns. */
  sum(names: readonly string[]): { mean: number; weight: number; variance: number } {
    const at = names.map((name) => this.names.indexOf(name));
    const total = (values: readonly number[]): number => at.reduce((sum, i) => sum + values[i]!, 0);
    return {
      mean: total(this.means),
      weight: total(this.weights),
      variance: at.reduce((sum, i) => sum + total(this.covariance[i]!), 0),
    };
  }

  /** Takes in a measurement of a sum of unknowns. */
  measure(names: readonly string[], value: number, variance: number): void {
    const before = this.sum(names);
    const at = names.map((name) => this.names.indexOf(name));
    const shared = this.covariance.map((row) => at.reduce((sum, i) => sum + row[i]!, 0));
    const all = before.variance + variance;
    shared.forEach((own, i) => {
      this.means[i]! += (own / all) * (value - before.mean);
      this.weights[i]! -= (own / all) * before.weight;
      shared.forEach((other, j) => (this.covariance[i]![j]! -= (own * other) / all));
    });
  }
}

const dayName = (day: number | undefined): string => `day ${day ?? ''}`;

type Pressure = Answer<'occlusion-pressure'>;

const fits = ({ min, max }: Quantity, value: unknown): value is number =>
  typeof value === 'number' && value >= min && value <= max;

/** An error that can be weighed against another: nothing is measured without one. */
const isError = (value: unknown): boolean => fits({ ...quantities.standardDeviationMmHg, min: 0.1, max: 1e6 }, value);

/** The inputs of an answer that may have been changed by hand. */
const placeOf = ({ inputs }: Partial<Pressure>): Answer['inputs'] =>
  typeof inputs === 'object' && inputs !== null && !Array.isArray(inputs) ? inputs : {};

/** The estimate, with all that measurements are held against. */
function readEstimate(reader: Reader): Pressure {
  const makers = 'estimateOcclusionPressure that names its side';
  const { min, max } = quantities.occlusionMmHg;
  const estimate = readAnswer(reader, 'estimate', 'occlusion-pressure', makers, ['mm[Hg]'], min / 2, max * 4);
  if (!reader.fine) return estimate;
  const place = placeOf(estimate);
  const faults = [
    ...(['limb', 'side', 'posture'] as const).filter((field) => typeof place[field] !== 'string'),
    ...(['circumferenceCm', 'cuffWidthCm', 'systolicMmHg', 'diastolicMmHg'] as const).filter(
      (field) => !fits(quantities[field], place[field]),
    ),
    ...(isError(estimate.standardDeviation) ? [] : ['standardDeviation']),
  ];
  const received = EQUATION_IDS.some((id) => id === estimate.equation)
    ? faults.length > 0 && `one without ${faults.join(', ')}`
    : `one of ${describe(estimate.equation)}`;
  if (received) reader.report('wrong-relation', 'estimate', `an answer of ${makers}`, received);
  return estimate;
}

/** What keeps a measurement from being folded into an estimate, in words. */
function measurementFault(measured: Pressure, estimate: Pressure): string | undefined {
  const place = placeOf(measured);
  if (typeof measured.equation !== 'string' || !measured.equation.startsWith('measured-')) return 'one not measured';
  if (!isError(measured.standardDeviation)) return 'one with a standard deviation below 0.1 mmHg';
  if (measured.value <= Number(placeOf(estimate)['diastolicMmHg'])) return 'one at or below the diastolic pressure';
  for (const field of ['limb', 'side', 'posture'] as const) {
    if (place[field] !== placeOf(estimate)[field]) return `one of ${field} ${describe(place[field])}`;
  }
  const { cuffWidthCm: width, day } = place;
  if (!fits(quantities.cuffWidthCm, width)) return `one of cuffWidthCm ${describe(width)}`;
  return day === undefined || Number.isInteger(day) ? undefined : `one of day ${describe(day)}`;
}

function readMeasurements(reader: Reader, estimate: Pressure): Pressure[] {
  const expected = `a list of 1 to ${MOST_MEASUREMENTS} answers of measuredOcclusionPressure`;
  const list = reader.anything('measurements', expected);
  if (list === undefined) return [];
  if (!Array.isArray(list) || list.length === 0 || list.length > MOST_MEASUREMENTS) {
    const received = Array.isArray(list) ? `a list of ${list.length}` : describe(list);
    reader.report('wrong-type', 'measurements', expected, received);
    return [];
  }
  const { fine } = reader;
  const { min, max } = quantities.valueMmHg;
  list.forEach((item: unknown, index) => {
    const fault = answerFault(item, 'occlusion-pressure', ['mm[Hg]'], min, max);
    if (fault !== undefined) {
      reader.report('wrong-type', ['measurements', index], 'an answer of measuredOcclusionPressure', fault);
      return;
    }
    const differs = fine ? measurementFault(item as Pressure, estimate) : undefined;
    if (differs === undefined) return;
    const { limb, side, posture } = placeOf(estimate);
    const wanted = `a measurement on the ${String(side)} ${String(limb)}, ${String(posture)}, with its cuffWidthCm`;
    reader.report('wrong-relation', ['measurements', index], wanted, differs);
  });
  return list as Pressure[];
}

/**
 * Folds measurements of this limb into its estimate (normal–normal update), and carries the person’s own factor to
 * other days and to another cuff.
 *
 * Formula: LOP₂ = w × LOP₁ + (1 − w) × m; m is the weighted mean of the measurements, and w what is left to the
 * estimate. The weights are those of jointly normal unknowns:
 *
 * - the estimate’s own variance S² is that of the person’s usual pressure and of the day together: D² of it is the
 *   day (D = 8.5 mmHg, `derived`; at most S²), and S² − D² the person;
 * - measurements on one day share that day’s departure; so an answer for the day of the measurements is surer than
 *   one for a later day, which has D² on top of what is left of the person’s variance;
 * - a measurement with another cuff is converted by the pooled curve, and its error is scaled with it; all from one
 *   other width share one error of the conversion, as for {@link correctForCuffWidth}.
 *
 * A measurement never widens the interval, and their order does not matter. Left and right limbs stay apart, and so
 * do postures: a measurement of the other side or in another posture is refused.
 *
 * - Evidence: that of the estimate.
 * - Source: a study of 42 people on the shares of variance between days.
 *
 * @param input - `estimate` LOP₁ [mmHg] with its side; `measurements` [mmHg] with side, cuff width and posture, 1 to 100;
 * `day`, the day the answer is for
 * @returns LOP₂ [mmHg] with its interval, and the personal factor.
 * @throws InputError naming every wrong field and measurement.
 *
 * @example
 * ```ts
 * import { calibrateOcclusionPressure, estimateOcclusionPressure, measuredOcclusionPressure } from 'cuffwork';
 * const leg = { limb: 'leg', side: 'left', cuffWidthCm: 12, posture: 'supine' } as const;
 * const estimate = estimateOcclusionPressure({ ...leg, circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70 });
 * const measured = measuredOcclusionPressure({ ...leg, valueMmHg: 184, method: 'doppler' });
 * const today = calibrateOcclusionPressure({ estimate, measurements: [measured] });
 * today.value.toFixed(1); // => '182.2'
 * today.standardDeviation!.toFixed(1); // => '8.3'
 * today.personalFactor.value.toFixed(2); // => '1.13'
 * ```
 */
export function calibrateOcclusionPressure(input: CalibrationInput): CalibratedOcclusionPressure {
  const reader = new Reader(input);
  const estimate = readEstimate(reader);
  const day = reader.optionalNumber('day');
  const measurements = readMeasurements(reader, estimate);
  reader.done();

  const place = placeOf(estimate);
  const [home, diastolicMmHg] = [place['cuffWidthCm'] as number, place['diastolicMmHg'] as number];
  const spread = estimate.standardDeviation! * (estimate.scale === 'log' ? estimate.value : 1);
  const person = place as unknown as ConversionReadings;
  const evidence = measurements.map(({ value, standardDeviation, inputs }): Evidence => {
    const width = inputs['cuffWidthCm'] as number;
    const converted = width === home ? value : convertWidth(value, person, width, home);
    const ratio = (converted - diastolicMmHg) / (value - diastolicMmHg);
    return {
      value: converted,
      variance: square(standardDeviation! * ratio),
      day: inputs['day'] as number | undefined,
      widthCm: width,
    };
  });
  // Sorted, so that the last digit does not hang on the order in which the measurements were given.
  evidence.sort(
    (a, b) => (a.day ?? -1) - (b.day ?? -1) || a.widthCm - b.widthCm || a.value - b.value || a.variance - b.variance,
  );

  const dayVariance = square(Math.min(DAY_DEVIATION, spread));
  const unknowns = new Unknowns();
  unknowns.add('usual', estimate.value, square(spread) - dayVariance, 1);
  for (const { day: on, widthCm: width, value, variance } of evidence) {
    const names = ['usual', dayName(on)];
    unknowns.add(dayName(on), 0, dayVariance);
    if (width !== home) {
      const name = `width ${width}`;
      unknowns.add(name, 0, square(conversionDeviation(person, width, home) * (estimate.value - diastolicMmHg)));
      names.push(name);
    }
    unknowns.measure(names, value, variance);
  }
  const measuredThatDay = evidence.some(({ day: on }) => on === day);
  unknowns.add(dayName(day), 0, dayVariance);
  const usual = unknowns.sum(['usual']);
  const answer = unknowns.sum(['usual', dayName(day)]);
  const rest = 1 - answer.weight;
  const measuredMmHg = rest > 1e-12 ? (answer.mean - answer.weight * estimate.value) / rest : evidence[0]!.value;
  const errors: ErrorPart[] = measuredThatDay
    ? [{ part: 'calibration', standardDeviation: Math.sqrt(Math.max(0, answer.variance)), evidence: 'derived' }]
    : [
        { part: 'calibration', standardDeviation: Math.sqrt(Math.max(0, usual.variance)), evidence: 'derived' },
        { part: 'between-days', standardDeviation: Math.sqrt(dayVariance), evidence: 'derived' },
      ];
  // Two readings of one pressure that are as far apart are rarer than 1 in 20 by their own errors.
  const far = evidence
    .filter(
      ({ value, variance }) => Math.abs(value - estimate.value) > NORMAL_95 * Math.sqrt(square(spread) + variance),
    )
    .map(({ value }) => formatUnit(value, 'mm[Hg]'));
  const others = [...new Set(evidence.map(({ widthCm: width }) => width))].filter((width) => width !== home);
  return {
    kind: 'occlusion-pressure',
    value: answer.mean,
    unit: 'mm[Hg]',
    ...interval(answer.mean, errors),
    equation: 'calibrated',
    evidence: estimate.evidence,
    formula: 'w * LOP1 + (1 - w) * m',
    symbols: { w: 'estimateWeight', LOP1: 'estimate', m: 'measuredMmHg' },
    inputs: {
      ...place,
      estimate,
      measurements,
      ...(day !== undefined && { day }),
      estimateWeight: answer.weight,
      measuredMmHg,
    },
    assumptions: [
      assumption('normal-update'),
      normalInterval,
      assumption('day-error-from-thigh'),
      ...(others.length > 0 ? [assumption('ratio-to-curve-kept'), assumption('width-error-shared')] : []),
    ],
    cautions: [
      ...(Array.isArray(estimate.cautions) ? (estimate.cautions as Caution[]) : []).filter(
        (said) => said?.code !== 'estimate-is-a-start',
      ),
      ...others.map((width) => convertedCaution(width, home)),
      ...(far.length > 0 ? [caution('caution', 'measured-far-from-estimate', { measured: far.join(', ') })] : []),
      ...(measuredThatDay ? [] : [caution('note', 'not-measured-that-day')]),
    ],
    sources: [
      'variance-days-legs',
      ...(others.length > 0 ? (['cuff-width-2012', 'posture-widths-2018'] satisfies SourceId[]) : []),
    ],
    personalFactor: {
      value: usual.mean / estimate.value,
      standardDeviation: Math.sqrt(Math.max(0, usual.variance)) / estimate.value,
    },
  };
}
