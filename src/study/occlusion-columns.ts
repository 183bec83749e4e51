import { NORMAL_95, normalInterval } from '../answer/answer.js';
import type { Reader } from '../answer/reader.js';
import { REFER_DIASTOLIC, REFER_SYSTOLIC, toRefer } from '../pressure/blood-pressure.js';
import type { OcclusionEquation } from '../pressure/equation.js';
import { occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import { mismatch, standardDeviationOf } from '../pressure/estimate.js';
import {
  limbGirth,
  LIMBS,
  POSTURES,
  quantities,
  SEXES,
  type Limb,
  type Posture,
  type QuantityName,
  type Sex,
} from '../quantity/quantities.js';
import { inBlocks, outputColumns, type AnswerColumns, type ColumnAnswer } from './column-answer.js';
import { ColumnReader, type NumberColumn, type Numbers, type WordColumn } from './column-input.js';
import { readEquation, type FittedOcclusionEquation } from './fitted-equation.js';
import { BLOOD_PRESSURE_REFER, DOES_NOT_APPLY, IMPOSSIBLE, OUTSIDE_FITTED_RANGE, REFUSED, RELATION } from './flags.js';
import { applyRows, emptyReadings, fillReadings, type OcclusionReadingColumns } from './occlusion-rows.js';

/** Occlusion pressures over columns: the fields of `estimateOcclusionPressure`, each a value or a column. */
export interface OcclusionColumnsInput {
  readonly answer: 'occlusion-pressure';
  /** A published equation by its id, or one’s own of `fitOcclusionEquation`. */
  readonly equation: OcclusionEquationId | FittedOcclusionEquation;
  readonly limb: WordColumn<Limb>;
  readonly circumferenceCm: NumberColumn;
  readonly systolicMmHg: NumberColumn;
  readonly diastolicMmHg: NumberColumn;
  readonly cuffWidthCm: NumberColumn;
  readonly posture: WordColumn<Posture>;
  readonly ageYears?: NumberColumn;
  readonly sex?: WordColumn<Sex>;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns;
}

export function occlusionColumns(reader: Reader): ColumnAnswer<'occlusion-pressure'> {
  const equation = readEquation(reader, occlusionEquations);
  const needed = (field: 'ageYears' | 'sex'): boolean => equation?.needs.includes(field) ?? false;
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
    ageYears: input.numbers('ageYears', quantities.ageYears, !needed('ageYears')),
    sex: input.words('sex', SEXES, !needed('sex')),
  };
  const rows = input.someRows('circumferenceCm');
  const out = outputColumns(reader, rows);
  reader.done();

  // One limb and one cuff for all rows are looked at once.
  const readings = emptyReadings();
  const sameCuff = !limb.varies && !columns.cuffWidthCm.varies;
  if (sameCuff) {
    readings.limb = limb.at(0)!;
    readings.cuffWidthCm = columns.cuffWidthCm.values[0]!;
    const wrong = mismatch(equation!, readings);
    if (wrong) reader.report('wrong-relation', wrong.field, wrong.expected, String(readings[wrong.field]));
    reader.done();
  }
  const apply = applyRows(equation!);
  const { fitted } = equation!;
  // A copy of one shape, whatever shape the record has: its fields then leave the loop.
  const { standardDeviationMmHg, share, evidence: grade, assumption } = equation!.error;
  const error = { standardDeviationMmHg, share, evidence: grade, assumption } as OcclusionEquation['error'];
  const { value, flag } = out;

  // Ages that have a fitted range are looked at with it.
  const others = [limb, columns.posture, columns.sex, columns.cuffWidthCm].filter((column) => column.varies);
  if (!fitted.ageYears && columns.ageYears.varies) others.push(columns.ageYears);
  inBlocks(rows, (from, to) => {
    flag.fill(0, from, to);
    for (const column of others) column.check(flag, from, to);
    let fine = others.length === 0 && pressuresFine(columns, from, to);
    if (!fine) checkPressures(columns, flag, from, to);
    if (limb.varies) checkGirths(columns, flag, from, to);
    // The outputs may be columns of the input too: ranges are looked at before the answers are written.
    for (const field in fitted) {
      fine = markOutside(columns[field as 'ageYears'], fitted[field as QuantityName]!, flag, from, to) && fine;
    }
    if (!sameCuff) {
      for (let row = from; row < to; row += 1) {
        if ((flag[row]! & REFUSED) !== 0) continue;
        fillReadings(readings, columns, row);
        if (mismatch(equation!, readings)) flag[row]! |= DOES_NOT_APPLY;
      }
    }
    apply(columns, value, from, to);
    const pressures = writeIntervals(error, out, from, to);
    if (!fine || !pressures) refuseRows(out, from, to);
  });
  const { id, evidence, formula, symbols, sources } = equation!;
  return {
    about: {
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      level: 0.95,
      equation: id,
      evidence,
      formula,
      symbols,
      assumptions: [normalInterval],
      sources,
    },
    ...out,
  };
}

const { min: SYSTOLIC_MIN, max: SYSTOLIC_MAX } = quantities.systolicMmHg;
const { min: DIASTOLIC_MIN, max: DIASTOLIC_MAX } = quantities.diastolicMmHg;

/** The middle of a range and how far it reaches either way: what is nearer than that is inside, exactly. */
function halves(min: number, max: number): readonly [middle: number, reach: number] {
  const middle = (min + max) / 2;
  return [middle, Math.min(middle - min, max - middle)];
}

/** Whether nothing is to be said of any girth or pressure of a block: the usual case, in one quick pass. */
function pressuresFine(columns: OcclusionReadingColumns, from: number, to: number): boolean {
  const { values: girths, mask: byGirth, quantity } = columns.circumferenceCm;
  const { values: systolics, mask: bySystolic } = columns.systolicMmHg;
  const { values: diastolics, mask: byDiastolic } = columns.diastolicMmHg;
  const [girthMiddle, girthReach] = halves(quantity.min, quantity.max);
  const [systolicMiddle, systolicReach] = halves(SYSTOLIC_MIN, REFER_SYSTOLIC);
  const [diastolicMiddle, diastolicReach] = halves(DIASTOLIC_MIN, REFER_DIASTOLIC);
  for (let row = from; row < to; row += 1) {
    const systolic = systolics[row & bySystolic]!;
    const diastolic = diastolics[row & byDiastolic]!;
    const fine =
      Math.abs(girths[row & byGirth]! - girthMiddle) < girthReach &&
      Math.abs(systolic - systolicMiddle) < systolicReach &&
      Math.abs(diastolic - diastolicMiddle) < diastolicReach &&
      systolic > diastolic;
    if (!fine) return false;
  }
  return true;
}

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
    if (toRefer(systolic, diastolic)) flag[row]! |= BLOOD_PRESSURE_REFER;
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
function markOutside(
  column: Numbers,
  { low, high }: { readonly low: number; readonly high: number },
  flag: Uint8Array,
  from: number,
  to: number,
): boolean {
  const { values, mask } = column;
  let inside = true;
  for (let row = from; row < to; row += 1) {
    const reading = values[row & mask]!;
    if (reading >= low && reading <= high) continue;
    inside = false;
    flag[row]! |= OUTSIDE_FITTED_RANGE;
  }
  if (!inside) column.check(flag, from, to);
  return inside;
}

/** Puts intervals around the answers of a block; false where an answer is no pressure. */
function writeIntervals(
  error: OcclusionEquation['error'],
  { value, lower, upper }: AnswerColumns,
  from: number,
  to: number,
): boolean {
  let pressures = true;
  for (let row = from; row < to; row += 1) {
    const answer = value[row]!;
    const half = NORMAL_95 * standardDeviationOf(error, answer);
    lower[row] = answer - half;
    upper[row] = answer + half;
    if (!(answer > 0)) pressures = false;
  }
  return pressures;
}

/** Takes the answers from the rows that were refused, and refuses those whose answer is no pressure. */
function refuseRows({ value, lower, upper, flag }: AnswerColumns, from: number, to: number): void {
  for (let row = from; row < to; row += 1) {
    if ((flag[row]! & REFUSED) === 0) {
      if (value[row]! > 0) continue;
      flag[row] = RELATION;
    }
    flag[row]! &= REFUSED;
    value[row] = lower[row] = upper[row] = NaN;
  }
}
