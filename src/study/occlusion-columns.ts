import { Math, square } from '../quantity/maths.js';
import { rangeNotKnown } from '../pressure/estimate.js';
import { assumption } from '../pressure/estimate-messages.js';
import { logNormalInterval } from '../answer/answer.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { Reader } from '../answer/reader.js';
import { REFER_DIASTOLIC, REFER_SYSTOLIC } from '../pressure/blood-pressure.js';
import type { ExtraReading, Range } from '../pressure/equation.js';
import { occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import {
  emptyShares,
  errorShares,
  errorTerms,
  inapplicableField,
  READING_ERROR_FIELDS,
  READING_ERRORS,
  readingDeviation,
  requirement,
  varianceOf,
} from '../pressure/uncertainty.js';
import {
  limbGirth,
  LIMBS,
  POSTURES,
  quantities,
  SEXES,
  SIDES,
  CIRCUMFERENCE_SITES,
  type CircumferenceSite,
  type Limb,
  type Posture,
  type Sex,
  type Side,
} from '../quantity/quantities.js';
import {
  emptyColumns,
  inBlocks,
  outputColumns,
  sharesMemory,
  type AnswerColumns,
  type ColumnAnswer,
} from './column-answer.js';
import { at, ColumnReader, type NumberColumn, type Numbers, type WordColumn, type Words } from './column-input.js';
import { OWN_READINGS, readEquation, type OwnOcclusionEquation } from './fitted-equation.js';
import {
  BLOOD_PRESSURE_REFER,
  DOES_NOT_APPLY,
  IMPOSSIBLE,
  NO_INTERVAL,
  OUTSIDE_FITTED_RANGE,
  REFUSED,
  RELATION,
} from './flags.js';
import {
  answerBlock,
  applyRows,
  blockFine,
  boundsOf,
  fillReadings,
  loadBlock,
  loadSame,
  sameReadings,
  type OcclusionReadingColumns,
} from './occlusion-rows.js';

/** Occlusion pressures over columns: the fields of `estimateOcclusionPressure`, each a value or a column. */
export interface OcclusionColumnsInput {
  readonly answer: 'occlusion-pressure';
  /** An equation by its id, or your own of `fitOcclusionEquation` or `recalibrateOcclusionEquation`. */
  readonly equation: OcclusionEquationId | OwnOcclusionEquation;
  readonly limb: WordColumn<Limb>;
  readonly circumferenceCm: NumberColumn;
  readonly systolicMmHg: NumberColumn;
  readonly diastolicMmHg: NumberColumn;
  readonly cuffWidthCm: NumberColumn;
  readonly posture: WordColumn<Posture>;
  /** For the record. */
  readonly circumferenceSite?: WordColumn<CircumferenceSite>;
  readonly ageYears?: NumberColumn;
  readonly sex?: WordColumn<Sex>;
  readonly paddingCoefficient?: NumberColumn;
  readonly side?: WordColumn<Side>;
  /** Readings that only your own equation draws on. */
  readonly heightCm?: NumberColumn;
  readonly bodyMassIndex?: NumberColumn;
  readonly skinfoldMm?: NumberColumn;
  /** Standard deviations of the readings, where they are known. */
  readonly circumferenceErrorCm?: NumberColumn;
  readonly systolicErrorMmHg?: NumberColumn;
  readonly diastolicErrorMmHg?: NumberColumn;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns;
}

export function occlusionColumns(reader: Reader): ColumnAnswer<'occlusion-pressure'> {
  const read = readEquation(reader, occlusionEquations);
  const equation = read?.equation;
  const isTerm = (field: string): boolean => equation?.own?.terms.some((term) => term.field === field) ?? false;
  const spare = (field: ExtraReading): boolean => !(equation?.needs.includes(field) ?? false);
  const input = new ColumnReader(reader);
  const limb = input.words('limb', LIMBS);
  const oneLimb = limb.varies ? undefined : limb.at(0);
  const columns: OcclusionReadingColumns = {
    limb,
    // A limb for all rows bounds the girth for all rows.
    circumferenceCm: input.numbers('circumferenceCm', oneLimb ? limbGirth[oneLimb] : quantities.circumferenceCm),
    systolicMmHg: input.numbers('systolicMmHg', quantities.systolicMmHg),
    diastolicMmHg: input.numbers('diastolicMmHg', quantities.diastolicMmHg),
    cuffWidthCm: input.numbers('cuffWidthCm', quantities.cuffWidthCm),
    posture: input.words('posture', POSTURES),
    ageYears: input.numbers('ageYears', quantities.ageYears, spare('ageYears')),
    sex: input.words('sex', SEXES, spare('sex')),
    paddingCoefficient: input.numbers('paddingCoefficient', quantities.paddingCoefficient, spare('paddingCoefficient')),
    side: input.words('side', SIDES, true),
    circumferenceSite: input.words('circumferenceSite', CIRCUMFERENCE_SITES, true),
    ...(Object.fromEntries(
      OWN_READINGS.map((field) => [field, input.numbers(field, quantities[field], !isTerm(field))]),
    ) as Pick<OcclusionReadingColumns, (typeof OWN_READINGS)[number]>),
  };
  const errors = READING_ERROR_FIELDS.map((name) => ({
    column: input.numbers(name, quantities[name], true),
    field: READING_ERRORS[name].field,
  })).filter(({ column }) => column.varies || !Number.isNaN(column.values[0]));
  const rows = input.someRows('circumferenceCm');
  const out = outputColumns(reader, rows);
  reader.done();

  // One limb, cuff and posture for all rows are looked at once.
  const readings = sameReadings(columns);
  const shares = emptyShares();
  const { apply } = equation!;
  const { own } = equation!.error;
  const { cuffWidthCm, posture } = columns;
  if (!limb.varies && !cuffWidthCm.varies) {
    const field = inapplicableField(equation!, readings);
    if (field) reader.report('wrong-relation', field, requirement(equation!, field), String(readings[field]));
    reader.done();
  }
  const onePlace = !limb.varies && !cuffWidthCm.varies && !posture.varies;
  const quick = onePlace && errors.length === 0 ? applyRows(equation!) : undefined;
  const error = equation!.error.curve ?? errorTerms(equation!, readings);
  const noInterval = 'share' in error && Number.isNaN(error.share);
  const ranges = Object.entries(read!.ranges).map(([field, range]) => [columns[field as 'ageYears'], range] as const);
  const all = [...Object.values(columns), ...errors.map(({ column }) => column)] as readonly (
    Numbers | Words<string>
  )[];
  // Girths and pressures are looked at together, ages that have a fitted range with that.
  const { circumferenceCm, systolicMmHg, diastolicMmHg } = columns;
  const together = [circumferenceCm, systolicMmHg, diastolicMmHg, ...ranges.map(([column]) => column)];
  const others = all.filter((column) => column.varies && !together.includes(column as Numbers));
  // The columns to write into may be columns of the input too: then the answers are put there in the end.
  const shared = all.some((column) => 'values' in column && sharesMemory(column.values, out));
  const work = shared ? emptyColumns(rows) : out;
  const { value, lower, upper, flag } = work;

  /** Looks at an answer that stands there: whether it is a pressure. */
  const judgeRow = (row: number): boolean => {
    if (!(value[row]! > 0)) {
      flag[row] = RELATION;
      return false;
    }
    if (Number.isNaN(upper[row])) flag[row]! |= NO_INTERVAL;
    return true;
  };
  const answerRow = (row: number): boolean => {
    fillReadings(readings, columns, row);
    if (!onePlace) {
      if (inapplicableField(equation!, readings)) {
        flag[row]! |= DOES_NOT_APPLY;
        return false;
      }
    }
    const answer = apply(readings);
    errorShares(equation!, readings, answer, shares);
    let variance = varianceOf(shares);
    for (const { column, field } of errors) {
      const deviation = at(column, row);
      if (deviation === deviation) {
        variance += square(readingDeviation(equation!, readings, field, deviation) / answer);
      }
    }
    const wide = NORMAL_95 * Math.sqrt(variance);
    value[row] = answer;
    if (own) {
      lower[row] = answer - wide * answer;
      upper[row] = answer + wide * answer;
    } else {
      const factor = Math.exp(wide);
      lower[row] = answer / factor;
      upper[row] = answer * factor;
    }
    return judgeRow(row);
  };
  // What only your own equation draws on is looked at row by row.
  const bounds = quick && !OWN_READINGS.some(isTerm) ? boundsOf(columns, equation!) : undefined;
  if (quick) loadSame(columns, rows);
  inBlocks(rows, (from, to) => {
    flag.fill(0, from, to);
    if (quick) loadBlock(columns, from, to);
    let fine = bounds !== undefined && blockFine(bounds, to - from);
    for (const column of others) fine = column.check(flag, from, to) && fine;
    if (!fine) {
      checkPressures(columns, flag, from, to);
      if (limb.varies) checkGirths(columns, flag, from, to);
      for (const [column, range] of ranges) markOutside(column, range, flag, from, to);
    }
    if (quick) {
      fine = answerBlock(quick, readings, error, work, from, to - from) && fine;
      if (fine && noInterval) flag.fill(NO_INTERVAL, from, to);
      if (fine) return;
    }
    for (let row = from; row < to; row += 1) {
      if ((flag[row]! & REFUSED) === 0 && (quick ? judgeRow(row) : answerRow(row))) continue;
      flag[row]! &= REFUSED;
      value[row] = lower[row] = upper[row] = NaN;
    }
  });
  if (shared) for (const name of ['value', 'lower', 'upper', 'flag'] as const) out[name].set(work[name]);
  const { id, evidence, formula, symbols, sources, fittedNotKnown } = equation!;
  const known = equation!.error.assumption !== 'error-not-known';
  return {
    about: {
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      level: 0.95,
      ...(known && !own && { scale: 'log' }),
      equation: id,
      evidence,
      formula,
      symbols,
      assumptions: [
        ...(known ? [own?.assumption ?? logNormalInterval] : []),
        ...(known && !own ? [assumption('new-person-and-laboratory')] : []),
        ...(fittedNotKnown.length > 0 ? [rangeNotKnown(equation!)] : []),
      ],
      sources,
    },
    ...out,
  };
}

const { min: SYSTOLIC_MIN, max: SYSTOLIC_MAX } = quantities.systolicMmHg;
const { min: DIASTOLIC_MIN, max: DIASTOLIC_MAX } = quantities.diastolicMmHg;

/** Flags girths and pressures that are missing or impossible, pressures swapped, and pressures to refer. */
function checkPressures(columns: OcclusionReadingColumns, flag: Uint8Array, from: number, to: number): void {
  const { circumferenceCm, systolicMmHg, diastolicMmHg } = columns;
  for (const column of [circumferenceCm, systolicMmHg, diastolicMmHg]) column.check(flag, from, to);
  for (let row = from; row < to; row += 1) {
    const systolic = systolicMmHg.values[row & systolicMmHg.mask]!;
    const diastolic = diastolicMmHg.values[row & diastolicMmHg.mask]!;
    const possible =
      systolic >= SYSTOLIC_MIN && systolic <= SYSTOLIC_MAX && diastolic >= DIASTOLIC_MIN && diastolic <= DIASTOLIC_MAX;
    if (!possible) continue;
    if (systolic <= diastolic) flag[row]! |= RELATION;
    if (systolic >= REFER_SYSTOLIC || diastolic >= REFER_DIASTOLIC) flag[row]! |= BLOOD_PRESSURE_REFER;
  }
}

/** Where every row has a limb of its own, its girth is held to that limb. */
function checkGirths(columns: OcclusionReadingColumns, flag: Uint8Array, from: number, to: number): void {
  const { limb, circumferenceCm } = columns;
  for (let row = from; row < to; row += 1) {
    const word = limb.at(row);
    const girth = circumferenceCm.values[row & circumferenceCm.mask]!;
    if (word && (girth < limbGirth[word].min || girth > limbGirth[word].max)) flag[row]! |= IMPOSSIBLE;
  }
}

/** Flags readings outside the range of the equation’s sample; what is impossible is outside too. */
function markOutside(column: Numbers, { low, high }: Range, flag: Uint8Array, from: number, to: number): void {
  const { values, mask } = column;
  for (let row = from; row < to; row += 1) {
    const reading = values[row & mask]!;
    if (!(reading >= low && reading <= high)) flag[row]! |= OUTSIDE_FITTED_RANGE;
  }
  column.check(flag, from, to);
}
