import { Math } from '../quantity/maths.js';
import type { ErrorPart } from '../answer/answer.js';
import { grades } from '../evidence/grades.js';
import { formatUnit } from '../quantity/format.js';
import type { QuantityName } from '../quantity/quantities.js';
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
export const inRange = (equation: OcclusionEquation, field: QuantityName, value: number): boolean =>
  value >= equation.fitted[field]!.low && value <= equation.fitted[field]!.high;

function outside(equation: OcclusionEquation, readings: OcclusionReadings): QuantityName[] {
  const fields: QuantityName[] = [];
  for (const name in equation.fitted) {
    const field = name as QuantityName;
    if (!inRange(equation, field, readings[field as keyof OcclusionReadings] as number)) fields.push(field);
  }
  return fields;
}

/** Half of what the answer changes by, from one standard deviation below a reading to one above: its local slope. */
function carriedError(
  { apply }: OcclusionEquation,
  readings: OcclusionReadings,
  field: 'circumferenceCm' | 'systolicMmHg' | 'diastolicMmHg',
  standardDeviation: number,
): number {
  const at = (value: number): number => apply({ ...readings, [field]: value } as Required<OcclusionReadings>);
  return Math.abs(at(readings[field] + standardDeviation) - at(readings[field] - standardDeviation)) / 2;
}

/** What an equation gives for readings it applies to, with every part of its error. */
export interface Judged {
  readonly equation: OcclusionEquation;
  readonly value: number;
  /** Empty where the error of the equation is not known. */
  readonly errors: readonly ErrorPart[];
  /** Standard deviation as a share of the value; infinite where it is not known. */
  readonly share: number;
  /** The readings that lie outside the sample. */
  readonly outside: readonly QuantityName[];
}

export function judge(equation: OcclusionEquation, readings: OcclusionReadings, given: ReadingErrors): Judged {
  const value = equation.apply(readings as Required<OcclusionReadings>);
  const { error } = equation;
  const { limb, cuffWidthCm, posture } = readings;
  const errors: ErrorPart[] = [];
  let variance = 0;
  const add = (part: ErrorPart['part'], standardDeviation: number, evidence: ErrorPart['evidence']): void => {
    errors.push({ part, standardDeviation, evidence });
    variance += standardDeviation ** 2;
  };
  const kind = cuffClass(limb, cuffWidthCm);
  const own =
    error.standardDeviationMmHg ?? (typeof error.share === 'object' ? error.share[kind] : (error.share ?? NaN)) * value;
  const known = !Number.isNaN(own);
  if (known) {
    add('equation', own, error.evidence);
    if (error.means === undefined) add('laboratory', LABORATORY_SHARE[kind] * value, 'derived');
    const carried = limb === 'leg' ? postureShare(homePosture(equation, posture), posture) : 0;
    if (carried > 0) add('posture', carried * value, 'derived');
    const home = homeWidth(equation, cuffWidthCm);
    if (home !== cuffWidthCm) {
      add('width-correction', WIDTH_SHARE * Math.abs(Math.log(home / cuffWidthCm)) * value, 'derived');
    }
    for (const name of READING_ERROR_FIELDS) {
      const deviation = given[name];
      if (deviation === undefined) continue;
      const { field, part } = READING_ERRORS[name];
      add(part, carriedError(equation, readings, field, deviation), 'practice');
    }
  }
  const share = known ? Math.sqrt(variance) / value : Infinity;
  return { equation, value, errors, share, outside: outside(equation, readings) };
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
  const tied = judged.filter(
    ({ share, outside: out }) => out.length === first.outside.length && share <= first.share * TIE,
  );
  const best = tied.reduce((better, one) => (gradeOf(one) < gradeOf(better) ? one : better));
  return [best, ...judged.filter((one) => one !== best)];
}
