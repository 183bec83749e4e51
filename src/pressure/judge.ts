import { Math, square } from '../quantity/maths.js';
import type { ErrorPart } from '../answer/answer.js';
import { grades } from '../evidence/grades.js';
import { formatUnit } from '../quantity/format.js';
import type { ReadingName } from '../quantity/readings.js';
import {
  cuffClass,
  homePosture,
  homeWidth,
  LABORATORY_SHARE,
  postureShare,
  WIDTH_SHARE,
  WIDTH_TOLERANCE_CM,
} from './carrying.js';
import type { OcclusionEquation, OcclusionReadings } from './equation.js';

/** Standard deviations of the readings themselves, where the caller knows them. */
export interface ReadingErrors {
  /** Of the tape [cm]. */
  readonly circumferenceErrorCm?: number;
  /** Of the blood-pressure reading [mmHg]. */
  readonly systolicErrorMmHg?: number;
  readonly diastolicErrorMmHg?: number;
}

/** Which reading each error belongs to. */
export const READING_ERRORS = {
  circumferenceErrorCm: { field: 'circumferenceCm', part: 'circumference' },
  systolicErrorMmHg: { field: 'systolicMmHg', part: 'systolic' },
  diastolicErrorMmHg: { field: 'diastolicMmHg', part: 'diastolic' },
} as const;
export const READING_ERROR_FIELDS = ['circumferenceErrorCm', 'systolicErrorMmHg', 'diastolicErrorMmHg'] as const;

/** The field that keeps an equation from these readings. */
export function keptBy(equation: OcclusionEquation, readings: OcclusionReadings): keyof OcclusionReadings | undefined {
  const { limb, cuffWidthCm: fitted, needs } = equation;
  if (limb !== 'any' && limb !== readings.limb) return 'limb';
  const { cuffWidthCm } = readings;
  if (fitted !== 'any' && Math.abs(homeWidth(equation, cuffWidthCm) - cuffWidthCm) > WIDTH_TOLERANCE_CM) {
    return 'cuffWidthCm';
  }
  return needs.find((field) => readings[field] === undefined);
}

/** What the field that keeps an equation from some readings would have to be, in words. */
export function wanted({ limb, cuffWidthCm: fitted, id }: OcclusionEquation, field: keyof OcclusionReadings): string {
  if (field === 'limb') return `'${limb}' for equation ${id}`;
  if (field !== 'cuffWidthCm' || fitted === 'any') return `given, for equation ${id}`;
  const width = typeof fitted === 'number' ? formatUnit(fitted, 'cm') : `${fitted.low} to ${fitted.high} cm`;
  return `${width} (± ${WIDTH_TOLERANCE_CM}) for equation ${id}; carry its answer to another cuff with correctForCuffWidth`;
}

/** Whether a value lies in the range of the sample. */
export const inRange = (equation: OcclusionEquation, field: ReadingName, value: number): boolean =>
  value >= equation.fitted[field]!.low && value <= equation.fitted[field]!.high;

function outside(equation: OcclusionEquation, readings: OcclusionReadings): ReadingName[] {
  const fields: ReadingName[] = [];
  for (const name in equation.fitted) {
    const field = name as ReadingName;
    if (!inRange(equation, field, readings[field as keyof OcclusionReadings] as number)) fields.push(field);
  }
  return fields;
}

type Writable<T> = { -readonly [Field in keyof T]: T[Field] };

/**
 * Half of what the answer changes by, from one standard deviation below a reading to one above: its local slope.
 * The reading is moved in `readings` itself, and put back.
 */
export function carriedError(
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

/** Whether an equation is carried to another laboratory: an error from group means holds their spread already. */
export const leavesLaboratory = ({ error }: OcclusionEquation): boolean =>
  error.means === undefined && error.ownLaboratory === undefined;

/** The parts of an equation’s error that hold for everyone with this limb, cuff and posture: mmHg or shares of the answer. */
export interface ErrorShares {
  /** The equation’s own; `mmHg` is 0 where it is a share, and `own` is NaN where none is known. */
  mmHg: number;
  own: number;
  /** How far laboratories differ; 0 where the equation’s own error holds it already. */
  laboratory: number;
  /** What it costs to carry it to another posture and cuff width; 0 where it stays where it was fitted. */
  posture: number;
  width: number;
}

export const emptyShares = (): ErrorShares => ({ mmHg: 0, own: 0, laboratory: 0, posture: 0, width: 0 });

/** Fills `shares`, so that one object may serve for many readings. */
export function errorShares(equation: OcclusionEquation, readings: OcclusionReadings, shares: ErrorShares): void {
  const { error } = equation;
  const { limb, cuffWidthCm, posture } = readings;
  const kind = cuffClass(limb, cuffWidthCm);
  const share = typeof error.share === 'object' ? error.share[kind] : error.share;
  shares.mmHg = error.standardDeviationMmHg ?? 0;
  shares.own = error.standardDeviationMmHg === undefined ? (share ?? NaN) : 0;
  shares.laboratory = leavesLaboratory(equation) ? LABORATORY_SHARE[kind] : 0;
  shares.posture = limb === 'leg' ? postureShare(homePosture(equation, posture), posture) : 0;
  const home = homeWidth(equation, cuffWidthCm);
  shares.width = home === cuffWidthCm ? 0 : WIDTH_SHARE * Math.abs(Math.log(home / cuffWidthCm));
}

/** Variance of the error of a value, the errors of the readings aside; NaN where none is known. */
export function varianceOf({ mmHg, own, laboratory, posture, width }: ErrorShares, value: number): number {
  return square(mmHg + own * value) + square(laboratory * value) + square(posture * value) + square(width * value);
}

/** What an equation gives for readings it applies to, and how far to trust it. */
export interface Judged {
  readonly equation: OcclusionEquation;
  readonly value: number;
  readonly shares: ErrorShares;
  /** Standard deviation as a share of the value; infinite where it is not known. */
  readonly share: number;
  /** The readings that lie outside the sample. */
  readonly outside: readonly ReadingName[];
}

export function judge(equation: OcclusionEquation, readings: OcclusionReadings, given?: ReadingErrors): Judged {
  const value = equation.apply(readings as Required<OcclusionReadings>);
  const shares = emptyShares();
  errorShares(equation, readings, shares);
  let variance = varianceOf(shares, value);
  if (given) {
    for (const { standardDeviation } of carriedErrors(equation, readings, given)) variance += square(standardDeviation);
  }
  const share = Number.isNaN(variance) ? Infinity : Math.sqrt(variance) / value;
  return { equation, value, shares, share, outside: outside(equation, readings) };
}

/** The errors of the readings that were given, as the equation carries them into its answer. */
function carriedErrors(equation: OcclusionEquation, readings: OcclusionReadings, given: ReadingErrors): ErrorPart[] {
  const errors: ErrorPart[] = [];
  for (const name of READING_ERROR_FIELDS) {
    const deviation = given[name];
    if (deviation === undefined) continue;
    const { field, part } = READING_ERRORS[name];
    const standardDeviation = carriedError(equation, { ...readings }, field, deviation);
    errors.push({ part, standardDeviation, evidence: 'practice' });
  }
  return errors;
}

/** Every part of the error of an answer; none where the error of the equation is not known. */
export function errorsOf(judged: Judged, readings: OcclusionReadings, given?: ReadingErrors): ErrorPart[] {
  const { equation, value, share } = judged;
  if (share === Infinity) return [];
  const { mmHg, own, laboratory, posture, width } = judged.shares;
  const errors: ErrorPart[] = [
    { part: 'equation', standardDeviation: mmHg + own * value, evidence: equation.error.evidence },
  ];
  if (laboratory > 0) errors.push({ part: 'laboratory', standardDeviation: laboratory * value, evidence: 'derived' });
  if (posture > 0) errors.push({ part: 'posture', standardDeviation: posture * value, evidence: 'derived' });
  if (width > 0) errors.push({ part: 'width-correction', standardDeviation: width * value, evidence: 'derived' });
  if (given) errors.push(...carriedErrors(equation, readings, given));
  return errors;
}

/** Errors within this of each other count as a tie, which goes to the better grade (`practice`). */
const TIE = 1.1;
const GRADES = /* @__PURE__ */ Object.keys(grades);
const gradeOf = ({ equation }: Judged): number => GRADES.indexOf(equation.evidence);

/**
 * The best first: an equation whose sample holds these readings before one whose does not; then the smaller error,
 * which holds what it costs to carry the equation to this cuff, posture and laboratory. At the top, a tie goes to
 * the better grade.
 */
export function rank(judged: Judged[]): Judged[] {
  judged.sort((a, b) => a.outside.length - b.outside.length || (a.share === b.share ? 0 : a.share - b.share));
  const [first] = judged;
  if (first === undefined || first.share === Infinity) return judged;
  let best = 0;
  for (const [index, one] of judged.entries()) {
    if (one.outside.length > first.outside.length || one.share > first.share * TIE) break;
    if (gradeOf(one) < gradeOf(judged[best]!)) best = index;
  }
  if (best > 0) judged.unshift(...judged.splice(best, 1));
  return judged;
}
