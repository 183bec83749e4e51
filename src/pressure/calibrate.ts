import { Math, square } from '../quantity/maths.js';
import {
  type Answer,
  type Caution,
  type ErrorPart,
  logInterval,
  logNormalInterval,
  type WithInterval,
} from '../answer/answer.js';
import { describe, describeLength, type Path } from '../answer/issues.js';
import { isPart } from '../answer/part.js';
import { isSoundAnswer, readAnswer } from '../answer/read-answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { formatUnit } from '../quantity/format.js';
import { quantities, SIDES, type Quantity } from '../quantity/quantities.js';
import { conversionDeviation, convertedCaution, convertWidth, type ConversionReadings } from './cuff-width.js';
import { type Conversion, refuseUseless } from './conversion.js';
import { EQUATION_IDS } from './equations.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { DAY_DEVIATION, MEASURING_DEVIATION, SIDE_DEVIATION } from './person-variation.js';
import { deviationAsShare, deviationInUnit } from './answer-spread.js';
import { chiSquareTail } from '../statistics/chi-square.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { need, oneOf, type Asked, BETWEEN, type Needed } from '../answer/needs.js';
import {
  ABOVE_ESTIMATE_DIASTOLIC,
  AGREEING,
  AS_IN_ESTIMATE,
  ESTIMATE_MAKERS,
  LEAST_ERROR,
  MEASUREMENT,
  MEASUREMENTS,
  OF_MEASUREMENT,
  RESULT_ABOVE_DIASTOLIC,
  ESTIMATE_WITH,
} from './needs.js';

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
export const CONTRADICTION = { caution: 0.01, refuse: 0.0001 } as const;

const MOST_MEASUREMENTS = 100;

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

/**
 * Jointly normal unknowns that add up to what is measured: the person’s pressure, each side’s and each day’s departure
 * from it, and the error of converting from each other cuff width. Measurements are taken in one by one; the covariance
 * only shrinks.
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

  /** Takes in a measurement of a sum of unknowns; how far it was off, squared, in units of its variance. */
  measure(names: readonly string[], value: number, variance: number): number {
    const before = this.sum(names);
    const at = names.map((name) => this.names.indexOf(name));
    const shared = this.covariance.map((row) => at.reduce((sum, i) => sum + row[i]!, 0));
    const all = before.variance + variance;
    shared.forEach((own, i) => {
      this.means[i]! += (own / all) * (value - before.mean);
      this.weights[i]! -= (own / all) * before.weight;
      shared.forEach((other, j) => (this.covariance[i]![j]! -= (own * other) / all));
    });
    return square(value - before.mean) / all;
  }
}

const dayName = (day: number | undefined): string => `day ${day ?? ''}`;

type Pressure = Answer<'occlusion-pressure'>;

const fits = ({ min, max }: Quantity, value: unknown): value is number =>
  typeof value === 'number' && value >= min && value <= max;

/** An error that can be weighed against another: nothing is measured without one. */
const isError = (value: unknown): boolean => fits({ ...quantities.standardDeviationMmHg, min: 0.1, max: 1e6 }, value);

/** The inputs of an answer that may have been changed by hand. */
const placeOf = ({ inputs }: Partial<Pressure>): Answer['inputs'] => (isPart(inputs) ? inputs : {});

/** By a published equation, or by your own. */
const isEstimate = ({ equation, assumptions }: Partial<Pressure>): boolean =>
  EQUATION_IDS.some((id) => id === equation) ||
  (Array.isArray(assumptions) && assumptions.some((one: { code?: unknown } | null) => one?.code === 'own-laboratory'));

/** The estimate, with all that measurements are held against. */
function readEstimate(reader: Reader): Pressure {
  const { min, max } = quantities.occlusionMmHg;
  const estimate = readAnswer(reader, 'estimate', 'occlusion-pressure', ESTIMATE_MAKERS, ['mm[Hg]'], min / 2, max * 4);
  if (!reader.fine) return estimate;
  const place = placeOf(estimate);
  const faults = [
    ...(['limb', 'side', 'posture'] as const).filter((field) => typeof place[field] !== 'string'),
    ...(['circumferenceCm', 'cuffWidthCm', 'systolicMmHg', 'diastolicMmHg'] as const).filter(
      (field) => !fits(quantities[field], place[field]),
    ),
    ...(isError(deviationInUnit(estimate)) ? [] : ['standardDeviation']),
  ];
  if (!isEstimate(estimate)) reader.refuse('estimate', ESTIMATE_MAKERS, describe(estimate.equation));
  else if (faults.length > 0) reader.refuse('estimate', need(ESTIMATE_WITH, { fields: faults }), 'one without');
  return estimate;
}

/** What keeps a measurement from informing an estimate. */
interface Fault {
  /** The field of the measurement; none where it is no measurement. */
  readonly path: Path;
  readonly expected: Asked;
  readonly received: string;
}

const bounds = ({ min, max, unit }: Quantity): Needed => need(BETWEEN, { low: min, high: max, unit });

const inputFault = (field: string, expected: Asked, value: unknown): Fault => ({
  path: ['inputs', field],
  expected,
  received: describe(value),
});

function measurementFault(measured: Pressure, estimate: Pressure): Fault | undefined {
  const { value, equation, standardDeviation } = measured;
  const place = placeOf(measured);
  const requirement = placeOf(estimate);
  const diastolic = Number(requirement['diastolicMmHg']);
  if (typeof equation !== 'string' || !equation.startsWith('measured-')) {
    return { path: ['equation'], expected: OF_MEASUREMENT, received: describe(equation) };
  }
  if (!isError(deviationInUnit(measured))) {
    const expected = need(LEAST_ERROR, { least: 0.1, unit: 'mm[Hg]' });
    return { path: ['standardDeviation'], expected, received: describe(standardDeviation) };
  }
  if (value <= diastolic) {
    const expected = need(ABOVE_ESTIMATE_DIASTOLIC, { value: diastolic, unit: 'mm[Hg]' });
    return { path: ['value'], expected, received: formatUnit(value, 'mm[Hg]') };
  }
  for (const field of ['limb', 'posture'] as const) {
    if (place[field] !== requirement[field])
      return inputFault(field, need(AS_IN_ESTIMATE, { asked: String(requirement[field]) }), place[field]);
  }
  if (!SIDES.some((side) => side === place['side'])) return inputFault('side', oneOf(SIDES), place['side']);
  const { cuffWidthCm: width, day } = place;
  if (!fits(quantities.cuffWidthCm, width)) return inputFault('cuffWidthCm', bounds(quantities.cuffWidthCm), width);
  if (day !== undefined && !Number.isInteger(day)) return inputFault('day', bounds(quantities.day), day);
  return undefined;
}

function readMeasurements(reader: Reader, estimate: Pressure): Pressure[] {
  const expected = need(MEASUREMENTS, { most: MOST_MEASUREMENTS });
  const list = reader.anything('measurements', expected);
  if (list === undefined) return [];
  if (!Array.isArray(list) || list.length === 0 || list.length > MOST_MEASUREMENTS) {
    const received = Array.isArray(list) ? describeLength(list.length) : describe(list);
    reader.report('wrong-type', 'measurements', expected, received);
    return [];
  }
  const { fine } = reader;
  const { min, max } = quantities.valueMmHg;
  const requirement = {
    kind: 'occlusion-pressure',
    makers: MEASUREMENT,
    units: ['mm[Hg]'],
    min,
    max,
  } as const;
  list.forEach((item: unknown, index) => {
    const path = ['measurements', index];
    if (!isSoundAnswer(reader, path, item, requirement) || !fine) return;
    const fault = measurementFault(item as Pressure, estimate);
    if (fault) reader.refuse([...path, ...fault.path], fault.expected, fault.received);
  });
  return list as Pressure[];
}

/** The variances that an update works with, on a log scale. */
interface Variances {
  readonly person: number;
  readonly side: number;
  readonly day: number;
  /** Of converting from another cuff width. */
  readonly width: (widthCm: number) => number;
}

const sideName = (side: string): string => `side ${side}`;

/** Takes a measurement into the unknowns; how far it was off, squared, in units of its variance. */
function takeIn(unknowns: Unknowns, { side, day, widthCm, value, variance }: Evidence, of: Variances): number {
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
  const unknowns = new Unknowns();
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
 * - Source: a study of 42 people on the shares of variance between days and legs.
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
export const calibrateOcclusionPressure = /* @__PURE__ */ withInput(function calibrateOcclusionPressure(
  input: CalibrationInput,
): CalibratedOcclusionPressure {
  const reader = new Reader(input);
  const estimate = readEstimate(reader);
  const day = reader.optionalNumber('day');
  const measurements = readMeasurements(reader, estimate);
  reader.done();

  const place = placeOf(estimate);
  const [home, diastolicMmHg] = [place['cuffWidthCm'] as number, place['diastolicMmHg'] as number];
  const ownSide = place['side'] as string;
  const person = place as unknown as ConversionReadings;
  const share = (mmHg: number): number => square(mmHg / estimate.value);
  // What the parts leave of the variance of the estimate is between people; a small one goes to the day first.
  let left = square(deviationAsShare(estimate));
  const take = (part: number): number => {
    const taken = Math.min(part, left);
    left -= taken;
    return taken;
  };
  const dayVariance = take(share(DAY_DEVIATION));
  take(share(MEASURING_DEVIATION));
  const sideVariance = take(share(SIDE_DEVIATION));
  const above = (estimate.value - diastolicMmHg) / estimate.value;
  const variances: Variances = {
    person: left,
    side: sideVariance,
    day: dayVariance,
    width: (widthCm) => square(conversionDeviation(person, widthCm, home) * above),
  };
  const evidence = measurements.map((measured, index): Evidence => {
    const { value, inputs } = measured;
    const width = inputs.cuffWidthCm!;
    const converted = width === home ? value : convertWidth(value, person, width, home);
    if (width !== home) {
      const conversion: Conversion = {
        valueMmHg: converted,
        occlusionMmHg: value,
        diastolicMmHg,
        part: 'width-correction',
        deviation: conversionDeviation(person, width, home),
        standardDeviationMmHg: undefined,
      };
      const path = ['measurements', index, 'inputs', 'cuffWidthCm'];
      refuseUseless(reader, conversion, path);
    }
    const ratio = (converted - diastolicMmHg) / (value - diastolicMmHg);
    return {
      index,
      value: Math.log(converted),
      variance: square((deviationInUnit(measured) * ratio) / converted),
      day: inputs.day,
      side: inputs.side!,
      widthCm: width,
    };
  });
  reader.done();
  // Sorted, so that the last digit does not hang on the order in which the measurements were given.
  evidence.sort(
    (a, b) =>
      (a.day ?? -1) - (b.day ?? -1) ||
      Number(a.side > b.side) - Number(a.side < b.side) ||
      a.widthCm - b.widthCm ||
      a.value - b.value ||
      a.variance - b.variance,
  );

  const unknowns = new Unknowns();
  unknowns.add('person', Math.log(estimate.value), variances.person, 1);
  unknowns.add(sideName(ownSide), 0, sideVariance);
  for (const one of evidence) takeIn(unknowns, one, variances);
  const measuredThatDay = evidence.some(({ day: on }) => on === day);
  unknowns.add(dayName(day), 0, dayVariance);
  const usual = unknowns.sum(['person', sideName(ownSide)]);
  const answer = unknowns.sum(['person', sideName(ownSide), dayName(day)]);
  const value = Math.exp(answer.mean);

  const contradicting = contradiction(evidence, variances);
  if (contradicting && contradicting.chance < CONTRADICTION.refuse) {
    const [first, second] = contradicting.pair.map(({ index }) => formatUnit(measurements[index]!.value, 'mm[Hg]'));
    for (const { index } of contradicting.pair) {
      const expected = AGREEING;
      reader.refuse(['measurements', index], expected, `${first!}, ${second!}`);
    }
  } else if (value <= diastolicMmHg) {
    const expected = need(RESULT_ABOVE_DIASTOLIC, { value: diastolicMmHg, unit: 'mm[Hg]' });
    reader.refuse('measurements', expected, formatUnit(value, 'mm[Hg]'));
  }
  reader.done();

  const rest = 1 - answer.weight;
  const logOfMeasured =
    rest > 1e-12 ? (answer.mean - answer.weight * Math.log(estimate.value)) / rest : evidence[0]!.value;
  const deviation = ({ variance }: { readonly variance: number }): number => Math.sqrt(Math.max(0, variance));
  const errors: ErrorPart[] = measuredThatDay
    ? [{ part: 'calibration', standardDeviation: deviation(answer), evidence: 'derived' }]
    : [
        { part: 'calibration', standardDeviation: deviation(usual), evidence: 'derived' },
        { part: 'between-days', standardDeviation: Math.sqrt(dayVariance), evidence: 'derived' },
      ];
  // Two readings of one pressure that are as far apart are rarer than 1 in 20 by their own errors.
  const truly = variances.person + sideVariance + dayVariance;
  const far = evidence
    .filter(({ value: log, variance, widthCm }) => {
      const off = Math.abs(log - Math.log(estimate.value));
      return off > NORMAL_95 * Math.sqrt(truly + variance + variances.width(widthCm));
    })
    .map(({ index }) => formatUnit(measurements[index]!.value, 'mm[Hg]'));
  const others = [...new Set(evidence.map(({ widthCm: width }) => width))].filter((width) => width !== home);
  const otherSide = evidence.find(({ side }) => side !== ownSide)?.side;
  const ownMeasured = evidence.some(({ side }) => side === ownSide);
  const limb = String(place['limb']);
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...logInterval(value, errors),
    equation: 'calibrated',
    evidence: estimate.evidence,
    inputs: {
      ...place,
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
      ...(others.length > 0 ? [assumption('ratio-to-curve-kept'), assumption('width-error-shared')] : []),
    ],
    cautions: [
      ...(Array.isArray(estimate.cautions) ? (estimate.cautions as Caution[]) : []).filter(
        (message) => message?.code !== 'estimate-is-a-start',
      ),
      ...others.map((width) => convertedCaution(width, home)),
      ...(otherSide && !ownMeasured
        ? [caution('caution', 'measured-on-other-side', { limb, from: otherSide, to: ownSide })]
        : []),
      ...(far.length > 0 ? [caution('caution', 'measured-far-from-estimate', { measured: far.join(', ') })] : []),
      ...(contradicting ? [contradictionCaution(contradicting, measurements)] : []),
      ...(measuredThatDay ? [] : [caution('note', 'not-measured-that-day')]),
    ],
    personalFactor: {
      value: Math.exp(usual.mean) / estimate.value,
      standardDeviation: deviation(usual),
    },
  };
});

function contradictionCaution(
  { pair }: { readonly pair: readonly [Evidence, Evidence] },
  measurements: readonly Pressure[],
): Caution {
  const [first, second] = pair.map(({ index }) => measurements[index]!.value) as [number, number];
  const values = { first, second, rarer: Math.round(1 / CONTRADICTION.caution) };
  return caution('caution', 'measurements-contradict', values, { path: ['measurements', pair[1].index] });
}
