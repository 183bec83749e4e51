import type { FieldReader } from '../answer/field-reader.js';
import { describe } from '../answer/issues.js';
import { need, type Needed } from '../answer/needs.js';
import { Math, square } from '../quantity/maths.js';
import type { ErrorPart } from '../answer/answer.js';
import type { Writable } from '../answer/defined.js';
import type { ReadingName } from '../quantity/readings.js';
import type { Limb, Posture } from '../quantity/quantities.js';
import { curveErrors } from './curve.js';
import type { CuffClass, OcclusionEquation, OcclusionReadings, Range } from './equation.js';
import { thighCurve } from './equations/thigh-curve-2026.js';
import { GIVEN_FOR_EQUATION, LIMB_OF_EQUATION, WIDTH_OF_EQUATION, WIDTHS_OF_EQUATION } from './needs.js';

/** On the thigh a cuff below this is called narrow (`practice`; the published narrow cuffs are 5 cm). */
export const NARROW_CM = 8;
/** A cuff counts as the width an equation was fitted with when it is within this of it [cm]. */
const WIDTH_TOLERANCE_CM = 0.5;

const cuffClass = (limb: Limb, cuffWidthCm: number): CuffClass =>
  limb === 'arm' ? 'arm' : cuffWidthCm < NARROW_CM ? 'thigh-narrow' : 'thigh-wide';

/**
 * The posture an equation holds for; one that was not reported counts as supine, as most of the published means were.
 */
export const homePosture = ({ posture }: OcclusionEquation, asked: Posture): Posture =>
  posture === 'any' ? asked : posture === 'none' || posture === 'not-stated' ? 'supine' : posture;

/** The widths an equation was fitted with; none where it holds for any. */
export function fittedWidths({ cuffWidthCm: fitted }: OcclusionEquation): Range | undefined {
  if (fitted === 'any') return undefined;
  return typeof fitted === 'number' ? { low: fitted, high: fitted } : fitted;
}

/** The width an equation holds for. */
export function homeWidth(equation: OcclusionEquation, asked: number): number {
  const fitted = fittedWidths(equation);
  return fitted ? Math.min(Math.max(asked, fitted.low), fitted.high) : asked;
}

/** Whether a cuff counts as the width an equation was fitted with. */
export const fitsWidth = (equation: OcclusionEquation, cuffWidthCm: number): boolean =>
  Math.abs(homeWidth(equation, cuffWidthCm) - cuffWidthCm) <= WIDTH_TOLERANCE_CM;

/** Standard deviations of the readings themselves, where you know them. */
export interface ReadingErrors {
  /** Standard deviation of the tape measure [cm], 0–10. */
  readonly circumferenceErrorCm?: number | undefined;
  /** Standard deviation of the systolic reading [mmHg], 0–50. */
  readonly systolicErrorMmHg?: number | undefined;
  /** Standard deviation of the diastolic reading [mmHg], 0–50. */
  readonly diastolicErrorMmHg?: number | undefined;
}

/** Which reading each error belongs to. */
export const READING_ERRORS = {
  circumferenceErrorCm: { field: 'circumferenceCm', part: 'circumference' },
  systolicErrorMmHg: { field: 'systolicMmHg', part: 'systolic' },
  diastolicErrorMmHg: { field: 'diastolicMmHg', part: 'diastolic' },
} as const;
export const READING_ERROR_FIELDS = Object.keys(READING_ERRORS) as (keyof typeof READING_ERRORS)[];

/** The field that makes an equation inapplicable to these readings. */
export function inapplicableField(
  equation: OcclusionEquation,
  readings: OcclusionReadings,
): keyof OcclusionReadings | undefined {
  const { limb, needs } = equation;
  if (limb !== 'any' && limb !== readings.limb) return 'limb';
  if (!fitsWidth(equation, readings.cuffWidthCm)) return 'cuffWidthCm';
  return needs.find((field) => readings[field] === undefined);
}

/** What that field would have to be. */
export function requirement(
  { limb, cuffWidthCm: fitted, id }: OcclusionEquation,
  field: keyof OcclusionReadings,
): Needed {
  if (field === 'limb') return need(LIMB_OF_EQUATION, { limb, equation: id });
  if (field !== 'cuffWidthCm' || fitted === 'any') return need(GIVEN_FOR_EQUATION, { equation: id });
  const values = { tolerance: WIDTH_TOLERANCE_CM, equation: id };
  return typeof fitted === 'number'
    ? need(WIDTH_OF_EQUATION, { width: fitted, ...values })
    : need(WIDTHS_OF_EQUATION, { ...fitted, ...values });
}

/** Refuses the field that makes an equation inapplicable to readings; whether there is none. */
export function checkApplicable(
  reader: FieldReader,
  equation: OcclusionEquation,
  readings: OcclusionReadings,
): boolean {
  const field = inapplicableField(equation, readings);
  if (!field) return true;
  reader.refuse(field, requirement(equation, field), describe(readings[field]));
  return false;
}

/** Whether a value lies in the range of the sample. */
export const inRange = (equation: OcclusionEquation, field: ReadingName, value: number): boolean =>
  value >= equation.fitted[field]!.low && value <= equation.fitted[field]!.high;

export function outsideFields(equation: OcclusionEquation, readings: OcclusionReadings): ReadingName[] {
  const fields: ReadingName[] = [];
  for (const name in equation.fitted) {
    const field = name as ReadingName;
    const value = readings[field as keyof OcclusionReadings] as number | undefined;
    if (value !== undefined && !inRange(equation, field, value)) fields.push(field);
  }
  return fields;
}

/**
 * Half of what the answer changes by, from one standard deviation below a reading to one above: its local slope.
 * The reading is moved in `readings` itself, and put back.
 */
export function readingDeviation(
  { apply }: OcclusionEquation,
  readings: Writable<OcclusionReadings>,
  field: 'circumferenceCm' | 'systolicMmHg' | 'diastolicMmHg',
  standardDeviation: number,
): number {
  const reading = readings[field];
  readings[field] = reading + standardDeviation;
  const above = apply(readings as Required<OcclusionReadings>);
  readings[field] = reading - standardDeviation;
  const below = apply(readings as Required<OcclusionReadings>);
  readings[field] = reading;
  return Math.abs(above - below) / 2;
}

/** Whether the spread of laboratories is no part of an equation’s own error. */
export const leavesLaboratory = ({ error }: OcclusionEquation): boolean =>
  error.means === undefined && error.own === undefined;

/**
 * The parts of an answer’s error as shares of it, that of the readings aside. How laboratories, postures and widths
 * differ is a share of the pressure above diastolic, by the pooled curve.
 */
export interface ErrorShares {
  /** The equation’s own; NaN where none is known. */
  equation: number;
  /** How people differ, where the equation’s own error does not hold it. */
  people: number;
  /** How laboratories differ, where the equation’s own error does not hold it. */
  laboratory: number;
  /** Use in another posture, and with a cuff that is up to 0.5 cm off. */
  posture: number;
  width: number;
  /** Variance of ln(value): all of them together; NaN where the equation’s own is not known. */
  variance: number;
}

export const emptyShares = (): ErrorShares => ({
  equation: NaN,
  people: 0,
  laboratory: 0,
  posture: 0,
  width: 0,
  variance: NaN,
});

/** What holds for everyone with one limb, cuff and posture, where the equation is no curve. */
export interface ErrorTerms {
  /** The equation’s own: in mmHg, else 0 and a share of the answer; NaN where none is known. */
  readonly mmHg: number;
  readonly share: number;
  /** Shares of the pressure above diastolic. */
  readonly laboratory: number;
  readonly posture: number;
  readonly width: number;
}

export function errorTerms(equation: OcclusionEquation, readings: OcclusionReadings): ErrorTerms {
  const { error } = equation;
  const { limb, cuffWidthCm, posture } = readings;
  const share = typeof error.share === 'object' ? error.share[cuffClass(limb, cuffWidthCm)] : error.share;
  const home = homePosture(equation, posture);
  const width = homeWidth(equation, cuffWidthCm);
  return {
    mmHg: error.standardDeviationMmHg ?? 0,
    share: error.standardDeviationMmHg === undefined && !error.own ? (share ?? NaN) : 0,
    laboratory: leavesLaboratory(equation) ? thighCurve.error.laboratory : 0,
    posture: limb === 'leg' && home !== posture ? Math.abs(Math.log(thighCurve.h[posture] / thighCurve.h[home])) : 0,
    width: width === cuffWidthCm ? 0 : Math.abs(Math.log(width / cuffWidthCm)),
  };
}

/** The part of a value that is above diastolic. */
export const shareAbove = (value: number, diastolicMmHg: number): number =>
  Math.max(0, (value - diastolicMmHg) / value);

/** Fills `shares`, so that one object may serve for many readings. */
export function errorShares(
  equation: OcclusionEquation,
  readings: OcclusionReadings,
  value: number,
  shares: ErrorShares,
): void {
  const { curve, own } = equation.error;
  const above = shareAbove(value, readings.diastolicMmHg);
  if (curve) {
    const { own, variance } = curveErrors(curve, readings, value);
    shares.equation = own;
    shares.variance = variance;
    shares.people = curve.error.people * above;
    shares.laboratory = curve.error.laboratory * above;
    shares.posture = shares.width = 0;
    return;
  }
  const { mmHg, share, laboratory, posture, width } = errorTerms(equation, readings);
  // Used as it was fitted, the error of your own equation does not depend on the diastolic pressure.
  const of = (part: number): number => (own && part === 0 ? 0 : part * above);
  shares.equation = (own ? own.deviation(readings as Required<OcclusionReadings>) : mmHg) / value + share;
  shares.people = 0;
  shares.laboratory = of(laboratory);
  shares.posture = of(posture);
  shares.width = of(width);
  shares.variance = square(shares.equation) + square(shares.laboratory) + square(shares.posture) + square(shares.width);
}

/** The errors of the readings that you gave, as the equation passes them into its answer: shares of it. */
function readingErrors(
  equation: OcclusionEquation,
  readings: OcclusionReadings,
  value: number,
  given: ReadingErrors,
): ErrorPart[] {
  return READING_ERROR_FIELDS.flatMap((name) => {
    const deviation = given[name];
    if (deviation === undefined) return [];
    const { field, part } = READING_ERRORS[name];
    const standardDeviation = readingDeviation(equation, { ...readings }, field, deviation) / value;
    return [{ part, standardDeviation, evidence: 'practice' as const }];
  });
}

/**
 * Every part of the error of an answer, as shares of it, and the standard deviation of them all; none where the error
 * of the equation is not known.
 */
export function errorsOf(
  equation: OcclusionEquation,
  readings: OcclusionReadings,
  value: number,
  given?: ReadingErrors,
): { readonly errors: ErrorPart[]; readonly standardDeviation: number } | undefined {
  const shares = emptyShares();
  errorShares(equation, readings, value, shares);
  if (Number.isNaN(shares.equation)) return undefined;
  const { people, laboratory, posture, width } = shares;
  const errors: ErrorPart[] = [
    { part: 'equation', standardDeviation: shares.equation, evidence: equation.error.evidence },
  ];
  if (people > 0) errors.push({ part: 'people', standardDeviation: people, evidence: 'derived' });
  if (laboratory > 0) errors.push({ part: 'laboratory', standardDeviation: laboratory, evidence: 'derived' });
  if (posture > 0) errors.push({ part: 'posture', standardDeviation: posture, evidence: 'derived' });
  if (width > 0) errors.push({ part: 'width-correction', standardDeviation: width, evidence: 'derived' });
  const read = given ? readingErrors(equation, readings, value, given) : [];
  let { variance } = shares;
  for (const { standardDeviation } of read) variance += square(standardDeviation);
  return { errors: [...errors, ...read], standardDeviation: Math.sqrt(variance) };
}
