import { aboveDiastolic, curveVariance, ownVariance, type PooledCurve } from '../pressure/curve.js';
import type { OcclusionEquation } from '../pressure/equation.js';
import {
  emptyShares,
  errorShares,
  errorTerms,
  inapplicableField,
  readingDeviation,
  shareAbove,
  type ErrorTerms,
} from '../pressure/uncertainty.js';
import { Math, square } from '../quantity/maths.js';
import type { CircumferenceSite, Limb, Posture, Sex, Side } from '../quantity/quantities.js';
import { writeLogIntervals, writeOwnIntervals, type AnswerColumns } from './column-answer.js';
import { at, type Numbers, type Words } from './column-input.js';
import type { OwnReading } from './fitted-equation.js';
import type { OwnReadings } from './own-equation.js';
import { DOES_NOT_APPLY, REFUSED, RELATION } from './flags.js';

/** The readings that are numbers. */
export type NumberReading =
  'circumferenceCm' | 'systolicMmHg' | 'diastolicMmHg' | 'cuffWidthCm' | 'ageYears' | 'paddingCoefficient' | OwnReading;

/** The readings of an occlusion pressure, each a column. */
export interface OcclusionReadingColumns extends Readonly<Record<NumberReading, Numbers>> {
  readonly limb: Words<Limb>;
  readonly posture: Words<Posture>;
  readonly sex: Words<Sex>;
  readonly side: Words<Side>;
  readonly circumferenceSite: Words<CircumferenceSite>;
}

/** A column of the errors of a reading, and the reading they belong to. */
export interface ReadingErrorColumn {
  readonly column: Numbers;
  readonly field: 'circumferenceCm' | 'systolicMmHg' | 'diastolicMmHg';
}

type Readings = { -readonly [Field in keyof OwnReadings]-?: OwnReadings[Field] };

/** Readings of a row, into an object that serves for all rows. */
function fillPlace(readings: Readings, { limb, cuffWidthCm, posture }: OcclusionReadingColumns, row: number): void {
  readings.limb = limb.at(row)!;
  readings.cuffWidthCm = at(cuffWidthCm, row);
  readings.posture = posture.at(row)!;
}

function fillPerson(readings: Readings, columns: OcclusionReadingColumns, row: number): void {
  readings.ageYears = at(columns.ageYears, row);
  readings.sex = columns.sex.at(row)!;
  readings.paddingCoefficient = at(columns.paddingCoefficient, row);
  readings.heightCm = at(columns.heightCm, row);
  readings.bodyMassIndex = at(columns.bodyMassIndex, row);
  readings.skinfoldMm = at(columns.skinfoldMm, row);
}

/** The readings of the first row: those that are the same in every row hold for all. */
export function firstReadings(columns: OcclusionReadingColumns): Readings {
  const readings = {
    side: 'left',
    circumferenceSite: 'mid-limb',
    circumferenceCm: at(columns.circumferenceCm, 0),
    systolicMmHg: at(columns.systolicMmHg, 0),
    diastolicMmHg: at(columns.diastolicMmHg, 0),
  } as Readings;
  fillPlace(readings, columns, 0);
  fillPerson(readings, columns, 0);
  return readings;
}

/** Writes the answers of the rows of a block that are not refused. */
export type WriteRows = (out: AnswerColumns, from: number, to: number) => void;

/**
 * One loop for every equation, over its bare function: values, standard deviations on a log scale and intervals, the
 * same to the last digit as those of `estimateOcclusionPressure`.
 */
export function rowsBy(
  equation: OcclusionEquation,
  columns: OcclusionReadingColumns,
  errors: readonly ReadingErrorColumn[],
): WriteRows {
  const { apply, error } = equation;
  const readings = firstReadings(columns);
  const shares = emptyShares();
  const onePlace = !columns.limb.varies && !columns.cuffWidthCm.varies && !columns.posture.varies;
  const { ageYears, sex, paddingCoefficient, heightCm, bodyMassIndex, skinfoldMm } = columns;
  const ofPerson = [ageYears, sex, paddingCoefficient, heightCm, bodyMassIndex, skinfoldMm];
  const onePerson = ofPerson.every((column) => !column.varies);
  const anyPlace = equation.limb === 'any' && equation.cuffWidthCm === 'any';
  // A row that lacks what the equation needs is refused before.
  const forPlace = { ...equation, needs: [] };
  const { own, curve } = error;
  const terms = errorTerms(equation, readings);
  // Used as it was fitted, your own equation has no error but its own.
  const asFitted = terms.laboratory === 0 && terms.posture === 0 && terms.width === 0;
  /** Whether all rows have the same error terms. */
  const together = onePlace && errors.length === 0 && (!own || asFitted);
  /** Variance of ln(value) of the row whose readings stand in `readings`. */
  const variance = (answer: number, row: number): number => {
    errorShares(equation, readings, answer, shares);
    let { variance: sum } = shares;
    for (const { column, field } of errors) {
      const deviation = at(column, row);
      if (deviation === deviation) sum += square(readingDeviation(equation, readings, field, deviation) / answer);
    }
    return sum;
  };
  return (out, from, to) => {
    const { value, standardDeviation, flag } = out;
    const { values: circumferences, mask } = columns.circumferenceCm;
    const { values: systolics, mask: systolicMask } = columns.systolicMmHg;
    const { values: diastolics, mask: diastolicMask } = columns.diastolicMmHg;
    for (let row = from; row < to; row += 1) {
      if ((flag[row]! & REFUSED) !== 0) continue;
      readings.circumferenceCm = circumferences[row & mask]!;
      readings.systolicMmHg = systolics[row & systolicMask]!;
      readings.diastolicMmHg = diastolics[row & diastolicMask]!;
      if (!onePerson) fillPerson(readings, columns, row);
      if (!onePlace) {
        fillPlace(readings, columns, row);
        if (!anyPlace && inapplicableField(forPlace, readings)) {
          flag[row]! |= DOES_NOT_APPLY;
          continue;
        }
      }
      const answer = apply(readings);
      value[row] = answer;
      if (!(answer > 0)) flag[row] = RELATION;
      else if (!together) standardDeviation[row] = Math.sqrt(variance(answer, row));
      else if (own) standardDeviation[row] = own.deviation(readings) / answer;
    }
    if (together && curve) writeCurveDeviations(curve, columns, readings, out, from, to);
    else if (together && !own) writeDeviations(terms, columns.diastolicMmHg, out, from, to);
    if (own) writeOwnIntervals(out, from, to);
    else writeLogIntervals(out, from, to);
  };
}

/** As `errorShares`, where the terms of the error are those of every row. */
function writeDeviations(
  { mmHg, share, laboratory, posture, width }: ErrorTerms,
  { values, mask }: Numbers,
  { value, standardDeviation }: AnswerColumns,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    const answer = value[row]!;
    const above = shareAbove(answer, values[row & mask]!);
    standardDeviation[row] = Math.sqrt(
      square(mmHg / answer + share) + square(laboratory * above) + square(posture * above) + square(width * above),
    );
  }
}

/** As `curveErrors`, for rows of one cuff and posture. */
function writeCurveDeviations(
  { b, h, error }: PooledCurve,
  { circumferenceCm, systolicMmHg, diastolicMmHg }: OcclusionReadingColumns,
  { cuffWidthCm, posture }: Readings,
  { value, standardDeviation }: AnswerColumns,
  from: number,
  to: number,
): void {
  const { people, laboratory, level, variance } = error;
  const { h: varianceH, b: withB, a: withA } = error.posture[posture];
  const { values: circumferences, mask } = circumferenceCm;
  const { values: systolics, mask: systolicMask } = systolicMmHg;
  const { values: diastolics, mask: diastolicMask } = diastolicMmHg;
  const { b: varianceB, a: varianceA, both } = variance;
  const factor = h[posture];
  const spread = square(people) + square(laboratory);
  for (let row = from; row < to; row += 1) {
    const systolic = systolics[row & systolicMask]!;
    const diastolic = diastolics[row & diastolicMask]!;
    const ratio = circumferences[row & mask]! / cuffWidthCm;
    const pulse = systolic - diastolic;
    const above = aboveDiastolic(b, ratio, pulse);
    const own = ownVariance(
      above,
      ratio,
      pulse,
      (systolic + diastolic) / 2,
      varianceB,
      varianceA,
      both,
      level,
      varianceH,
      withB,
      withA,
    );
    standardDeviation[row] = Math.sqrt(curveVariance(value[row]!, factor, above, own, spread));
  }
}
