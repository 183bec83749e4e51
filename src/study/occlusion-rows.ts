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
  const terms = onePlace && !error.curve && !error.own ? errorTerms(equation, readings) : undefined;
  const oneError = terms !== undefined && errors.length === 0;
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
      else if (!oneError) standardDeviation[row] = Math.sqrt(variance(answer, row));
    }
    if (oneError) writeDeviations(terms, columns.diastolicMmHg, out, from, to);
    if (error.own) writeOwnIntervals(out, from, to);
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
