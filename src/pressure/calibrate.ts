import type { Answer, Caution, WithInterval } from '../answer/answer.js';
import { logInterval, logNormalInterval } from '../answer/interval.js';
import { need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { formatUnit } from '../quantity/format.js';
import { Math, square } from '../quantity/maths.js';
import { chiSquareTail } from '../statistics/chi-square.js';
import { JointNormal } from '../statistics/joint-normal.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { deviationAsShare, deviationInUnit } from './answer-spread.js';
import { assumption } from './assumptions.js';
import { refuseUseless } from './conversion.js';
import { conversionDeviation, convertedCaution, convertWidth, type ConversionReadings } from './cuff-width.js';
import { caution } from './messages.js';
import { AGREEING, RESULT_ABOVE_DIASTOLIC } from './needs.js';
import { DAY_DEVIATION, MEASURING_DEVIATION, SIDE_DEVIATION } from './person-variation.js';
import { readEstimate, readMeasurements } from './read-calibration.js';

/** What {@link calibrateOcclusionPressure} takes. */
export interface CalibrationInput {
  /** An answer of `estimateOcclusionPressure` that names its `side`. */
  readonly estimate: Answer<'occlusion-pressure'>;
  /**
   * Answers of `measuredOcclusionPressure` that name side, cuff width and posture, and the `day` where days differ.
   * Those of the other side inform it too, with the difference of the sides as an error of their own.
   */
  readonly measurements: readonly Answer<'occlusion-pressure'>[];
  /**
   * The day the answer is for, a whole number 0–1,000,000. Left out, it is the day of the measurements that name none.
   */
  readonly day?: number | undefined;
}

/** An occlusion pressure updated with measurements. */
export interface CalibratedOcclusionPressure extends WithInterval<Answer<'occlusion-pressure'>> {
  /**
   * This person’s usual pressure divided by the estimate: 1.1 is a tenth above it. `standardDeviation` is that of the
   * logarithm of the factor.
   */
  readonly personalFactor: {
    /** The factor. */
    readonly value: number;
    /** Standard deviation of ln(`value`). */
    readonly standardDeviation: number;
  };
}

/** Readings that contradict each other: rarer than this they bring a caution, and an issue (`practice`). */
const CONTRADICTION = { caution: 0.01, refuse: 0.0001 } as const;

type Pressure = Answer<'occlusion-pressure'>;

/** Where an estimate holds. */
interface Place extends ConversionReadings {
  readonly side: string;
  readonly cuffWidthCm: number;
}

/** A measurement, converted to the cuff of the estimate; on a log scale. */
interface Evidence {
  /** Place in the list that was given. */
  readonly index: number;
  readonly value: number;
  readonly variance: number;
  readonly day: number | undefined;
  readonly side: string;
  readonly widthCm: number;
}

/** The variances that an update works with, on a log scale. */
interface Variances {
  readonly person: number;
  readonly side: number;
  readonly day: number;
  /** Of converting from another cuff width. */
  readonly width: (widthCm: number) => number;
}

function variancesOf(estimate: Pressure, place: Place): Variances {
  const share = (mmHg: number): number => square(mmHg / estimate.value);
  // What the parts leave of the variance of the estimate is between people; a small one goes to the day first.
  let left = square(deviationAsShare(estimate));
  const take = (part: number): number => {
    const taken = Math.min(part, left);
    left -= taken;
    return taken;
  };
  const day = take(share(DAY_DEVIATION));
  take(share(MEASURING_DEVIATION));
  const side = take(share(SIDE_DEVIATION));
  const above = (estimate.value - place.diastolicMmHg) / estimate.value;
  const width = (widthCm: number): number => square(conversionDeviation(place, widthCm, place.cuffWidthCm) * above);
  return { person: left, side, day, width };
}

/** A measurement as evidence; a conversion to the cuff of the estimate that is useless is refused. */
function evidenceOf(reader: Reader, measured: Pressure, index: number, place: Place): Evidence {
  const { value, inputs } = measured;
  const { cuffWidthCm: home, diastolicMmHg } = place;
  const widthCm = inputs.cuffWidthCm!;
  const converted = widthCm === home ? value : convertWidth(value, place, widthCm, home);
  if (widthCm !== home) {
    const conversion = {
      valueMmHg: converted,
      occlusionMmHg: value,
      diastolicMmHg,
      part: 'width-correction',
      deviation: conversionDeviation(place, widthCm, home),
      standardDeviationMmHg: undefined,
    } as const;
    refuseUseless(reader, conversion, ['measurements', index, 'inputs', 'cuffWidthCm']);
  }
  const ratio = (converted - diastolicMmHg) / (value - diastolicMmHg);
  const variance = square((deviationInUnit(measured) * ratio) / converted);
  return { index, value: Math.log(converted), variance, day: inputs.day, side: inputs.side!, widthCm };
}

/** So that the last digit does not hang on the order in which the measurements were given. */
const inOrder = (a: Evidence, b: Evidence): number =>
  (a.day ?? -1) - (b.day ?? -1) ||
  Number(a.side > b.side) - Number(a.side < b.side) ||
  a.widthCm - b.widthCm ||
  a.value - b.value ||
  a.variance - b.variance;

const dayName = (day: number | undefined): string => `day ${day ?? ''}`;
const sideName = (side: string): string => `side ${side}`;

/**
 * Takes a measurement into the unknowns: the person’s pressure, each side’s and each day’s departure from it, and the
 * error of converting from each other cuff width. How far it was off, squared, in units of its variance. */
function takeIn(unknowns: JointNormal, { side, day, widthCm, value, variance }: Evidence, of: Variances): number {
  const names = ['person', sideName(side), dayName(day)];
  unknowns.add(sideName(side), 0, of.side);
  unknowns.add(dayName(day), 0, of.day);
  const width = of.width(widthCm);
  if (width > 0) {
    const name = `width ${widthCm}`;
    unknowns.add(name, 0, width);
    names.push(name);
  }
  return unknowns.measure(names, value, variance);
}

/** So wide that the person’s pressure is left to the measurements alone. */
const FLAT = 100;

/**
 * How far measurements disagree among themselves, by their own errors: chi-square with one degree fewer than there are.
 */
function disagreement(evidence: readonly Evidence[], of: Variances): number {
  const unknowns = new JointNormal();
  unknowns.add('person', evidence[0]!.value, FLAT);
  return evidence.reduce((sum, one) => sum + takeIn(unknowns, one, of), 0);
}

/** The two measurements that disagree most, and how rare such a disagreement of all of them is. */
function contradiction(
  evidence: readonly Evidence[],
  of: Variances,
): { readonly chance: number; readonly pair: readonly [Evidence, Evidence] } | undefined {
  if (evidence.length < 2) return undefined;
  const chance = chiSquareTail(disagreement(evidence, of), evidence.length - 1);
  if (chance >= CONTRADICTION.caution) return undefined;
  const pairs = evidence.flatMap((one, index) =>
    evidence.slice(index + 1).map((other) => ({ pair: [one, other] as const, by: disagreement([one, other], of) })),
  );
  const { pair } = pairs.reduce((worst, next) => (next.by > worst.by ? next : worst));
  return { chance, pair: pair[0].index < pair[1].index ? pair : [pair[1], pair[0]] };
}

/**
 * Updates an estimate with measurements of the same person, and projects it to other days and to another cuff.
 *
 * Formula: LOP₂ = LOP₁^w × m^(1 − w); m is the weighted geometric mean of the measurements, and w the weight of the
 * estimate. The weights are those of jointly normal unknowns on a log scale, so no pressure comes out negative:
 *
 * - the variance S² of the estimate is that of the person, of the side (4.9 mmHg), of the day (8.5 mmHg) and of one
 *   measurement (10.6 mmHg), because equations were fitted to measured pressures (`derived`). That last part is not
 *   counted again in addition to the error of your own measurements;
 * - measurements on one day share that day’s departure. So an answer for the day of the measurements is surer than one
 *   for a later day;
 * - a measurement of the other side informs this one through the person, with the difference of the sides as its error;
 * - a measurement with another cuff is converted by the pooled curve, and its error is scaled with it; all from one
 *   other width share one error of the conversion, as for {@link correctForCuffWidth}; one that it refuses is refused.
 *
 * A measurement never widens the interval, and the order of measurements does not matter. Postures stay apart: a
 * measurement in another posture is refused. The measurements are tested for agreement among themselves by chi-square:
 * a disagreement rarer than 1 in 100 brings a caution that names two of them, one rarer than 1 in 10,000 is refused
 * (`practice`).
 *
 * - Evidence: that of the estimate.
 * - Source: Phys Ther Sport 2021;47:78–84 (42 people, shares of variance between days and legs).
 *
 * @function
 * @param input - `estimate` LOP₁ [mmHg] with its side; `measurements` [mmHg] with side, cuff width and posture, 1 to 100;
 * `day`, the day the answer is for
 * @returns LOP₂ [mmHg] with its interval, and the personal factor.
 * @throws InputError naming every wrong field and measurement; also where measurements contradict each other, and where
 * the result would not lie above the diastolic pressure.
 *
 * @example
 * ```ts
 * import { calibrateOcclusionPressure, estimateOcclusionPressure, measuredOcclusionPressure } from 'cuffwork';
 * const leg = { limb: 'leg', side: 'left', cuffWidthCm: 12, posture: 'supine' } as const;
 * const estimate = estimateOcclusionPressure({ ...leg, circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70 });
 * const measured = measuredOcclusionPressure({ ...leg, valueMmHg: 184, method: 'doppler' });
 * const today = calibrateOcclusionPressure({ estimate, measurements: [measured] });
 * today.value > estimate.value && today.value < 184; // => true
 * today.standardDeviation! < estimate.standardDeviation!; // => true
 * ```
 */
export const calibrateOcclusionPressure = withInput(function calibrateOcclusionPressure(
  input: CalibrationInput,
): CalibratedOcclusionPressure {
  const reader = new Reader(input);
  const estimate = readEstimate(reader);
  const day = reader.optionalNumber('day');
  const measurements = readMeasurements(reader, estimate);
  reader.done();

  const place = estimate.inputs as unknown as Place;
  const variances = variancesOf(estimate, place);
  const evidence = measurements.map((measured, index) => evidenceOf(reader, measured, index, place));
  reader.done();
  evidence.sort(inOrder);

  const unknowns = new JointNormal();
  unknowns.add('person', Math.log(estimate.value), variances.person, 1);
  unknowns.add(sideName(place.side), 0, variances.side);
  for (const one of evidence) takeIn(unknowns, one, variances);
  unknowns.add(dayName(day), 0, variances.day);
  const usual = unknowns.sum(['person', sideName(place.side)]);
  const answer = unknowns.sum(['person', sideName(place.side), dayName(day)]);
  const value = Math.exp(answer.mean);
  const shown = ({ index }: Evidence): string => formatUnit(measurements[index]!.value, 'mm[Hg]');
  const contradicting = contradiction(evidence, variances);
  if (contradicting && contradicting.chance < CONTRADICTION.refuse) {
    const both = contradicting.pair.map(shown).join(', ');
    for (const { index } of contradicting.pair) reader.refuse(['measurements', index], AGREEING, both);
  } else if (value <= place.diastolicMmHg) {
    const expected = need(RESULT_ABOVE_DIASTOLIC, { value: place.diastolicMmHg, unit: 'mm[Hg]' });
    reader.refuse('measurements', expected, formatUnit(value, 'mm[Hg]'));
  }
  reader.done();

  const rest = 1 - answer.weight;
  const logOfMeasured =
    rest > 1e-12 ? (answer.mean - answer.weight * Math.log(estimate.value)) / rest : evidence[0]!.value;
  const deviation = ({ variance }: { readonly variance: number }): number => Math.sqrt(Math.max(0, variance));
  const measuredThatDay = evidence.some(({ day: on }) => on === day);
  const calibration = {
    part: 'calibration',
    standardDeviation: deviation(measuredThatDay ? answer : usual),
    evidence: 'derived',
  } as const;
  const betweenDays = {
    part: 'between-days',
    standardDeviation: Math.sqrt(variances.day),
    evidence: 'derived',
  } as const;
  const widths = [...new Set(evidence.map(({ widthCm }) => widthCm))].filter((width) => width !== place.cuffWidthCm);
  const otherSide = evidence.find(({ side }) => side !== place.side)?.side;
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...logInterval(value, measuredThatDay ? [calibration] : [calibration, betweenDays]),
    equation: 'calibrated',
    evidence: estimate.evidence,
    inputs: {
      ...estimate.inputs,
      estimate,
      measurements,
      ...(day !== undefined && { day }),
      estimateWeight: answer.weight,
      measuredMmHg: Math.exp(logOfMeasured),
    },
    assumptions: [
      assumption('normal-update'),
      logNormalInterval,
      assumption('estimate-holds-measuring'),
      assumption('day-error-from-thigh'),
      ...(otherSide ? [assumption('side-error-from-thigh')] : []),
      ...(widths.length > 0 ? [assumption('ratio-to-curve-kept'), assumption('width-error-shared')] : []),
    ],
    cautions: [
      ...(Array.isArray(estimate.cautions) ? (estimate.cautions as Caution[]) : []).filter(
        (message) => message?.code !== 'estimate-is-a-start',
      ),
      ...widths.map((width) => convertedCaution(width, place.cuffWidthCm)),
      ...(otherSide && evidence.every(({ side }) => side === otherSide)
        ? [caution('caution', 'measured-on-other-side', { limb: place.limb, from: otherSide, to: place.side })]
        : []),
      ...farCautions(evidence.filter((one) => isFar(one, estimate, variances)).map(shown)),
      ...(contradicting ? [contradictionCaution(contradicting, measurements)] : []),
      ...(measuredThatDay ? [] : [caution('note', 'not-measured-that-day')]),
    ],
    personalFactor: { value: Math.exp(usual.mean) / estimate.value, standardDeviation: deviation(usual) },
  };
});

/** Whether a measurement is further from the estimate than the errors of both explain: rarer than 1 in 20. */
function isFar({ value, variance, widthCm }: Evidence, estimate: Pressure, of: Variances): boolean {
  const explained = of.person + of.side + of.day + variance + of.width(widthCm);
  return Math.abs(value - Math.log(estimate.value)) > NORMAL_95 * Math.sqrt(explained);
}

const farCautions = (measured: readonly string[]): Caution[] =>
  measured.length > 0 ? [caution('caution', 'measured-far-from-estimate', { measured: measured.join(', ') })] : [];

function contradictionCaution(
  { pair }: { readonly pair: readonly [Evidence, Evidence] },
  measurements: readonly Pressure[],
): Caution {
  const [first, second] = pair.map(({ index }) => measurements[index]!.value) as [number, number];
  const values = { first, second, rarer: Math.round(1 / CONTRADICTION.caution) };
  return caution('caution', 'measurements-contradict', values, { path: ['measurements', pair[1].index] });
}
