import { rangeNotKnown } from '../pressure/estimate.js';
import { assumption } from '../pressure/assumptions.js';
import { logNormalInterval } from '../answer/answer.js';
import type { Reader } from '../answer/reader.js';
import { REFER_DIASTOLIC, REFER_SYSTOLIC } from '../pressure/blood-pressure.js';
import type { ExtraReading, OcclusionEquation, OcclusionReadings, Range } from '../pressure/equation.js';
import { occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import { inapplicableField, READING_ERROR_FIELDS, READING_ERRORS, requirement } from '../pressure/uncertainty.js';
import {
  limbCircumference,
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
  copyColumns,
  emptyColumns,
  inBlocks,
  outputColumns,
  refuseRows,
  sharesMemory,
  type AnswerColumns,
  type ColumnAnswer,
} from './column-answer.js';
import {
  at,
  ColumnReader,
  type MayMiss,
  type NumberColumn,
  type Numbers,
  type WordColumn,
  type Words,
} from './column-input.js';
import { curveBlock } from './curve-rows.js';
import { OWN_READINGS, readEquation, type OwnOcclusionEquation } from './fitted-equation.js';
import { BLOOD_PRESSURE_REFER, IMPOSSIBLE, OUTSIDE_FITTED_RANGE, RELATION } from './flags.js';
import { firstReadings, rowsBy, type OcclusionReadingColumns, type WriteRows } from './occlusion-rows.js';

/** Occlusion pressures over columns: the fields of `estimateOcclusionPressure`, each a value or a column. */
export interface OcclusionColumnsInput {
  /** Names the calculation: limb occlusion pressure (LOP). */
  readonly answer: 'occlusion-pressure';
  /** An equation by its id, or your own of `fitOcclusionEquation` or `recalibrateOcclusionEquation`. */
  readonly equation: OcclusionEquationId | OwnOcclusionEquation;
  /** The limb that carries the cuff. */
  readonly limb: WordColumn<Limb>;
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm; left out where the equation does not use it. */
  readonly circumferenceCm?: NumberColumn | undefined;
  /** Systolic blood pressure [mmHg], 60–300. */
  readonly systolicMmHg?: NumberColumn | undefined;
  /** Diastolic blood pressure [mmHg], 30–200; without it most equations give no interval. */
  readonly diastolicMmHg?: NumberColumn | undefined;
  /** Cuff width [cm], 3–40. */
  readonly cuffWidthCm?: NumberColumn | undefined;
  /** Posture of each reading; without it most equations for the thigh give no interval. */
  readonly posture?: WordColumn<Posture> | undefined;
  /** Where the circumference was taken; for the record. */
  readonly circumferenceSite?: WordColumn<CircumferenceSite> | undefined;
  /** Age [years], 1–120. */
  readonly ageYears?: NumberColumn | undefined;
  /** Sex of the person in each row. */
  readonly sex?: WordColumn<Sex> | undefined;
  /** Tissue padding coefficient, 0.1–0.999; for `padding-2006`. */
  readonly paddingCoefficient?: NumberColumn | undefined;
  /** Side of the body. */
  readonly side?: WordColumn<Side> | undefined;
  /** Body height [cm], 60–260; only your own equation draws on it. */
  readonly heightCm?: NumberColumn | undefined;
  /** Body mass index [kg/m²], 8–100; only your own equation draws on it. */
  readonly bodyMassIndex?: NumberColumn | undefined;
  /** Skinfold thickness [mm], 1–120; only your own equation draws on it. */
  readonly skinfoldMm?: NumberColumn | undefined;
  /** Standard deviation of the circumference [cm], 0–10. */
  readonly circumferenceErrorCm?: NumberColumn | undefined;
  /** Standard deviation of the systolic reading [mmHg], 0–50. */
  readonly systolicErrorMmHg?: NumberColumn | undefined;
  /** Standard deviation of the diastolic reading [mmHg], 0–50. */
  readonly diastolicErrorMmHg?: NumberColumn | undefined;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns | undefined;
}

export function occlusionColumns(reader: Reader): ColumnAnswer<'occlusion-pressure'> {
  const read = readEquation(reader, occlusionEquations);
  const equation = read?.equation;
  const isTerm = (field: string): boolean => equation?.own?.terms.some((term) => term.field === field) ?? false;
  const spare = (field: ExtraReading): MayMiss => (equation?.needs.includes(field) ? 'nothing' : 'values');
  const uses = equation && new Set([...usesOf(equation), ...(equation.own?.base ? usesOf(equation.own.base) : [])]);
  // A reading that the equation does not use may be left out; one that is given has to be right.
  const unused = (field: keyof OcclusionReadings): MayMiss => (!uses || uses.has(field) ? 'nothing' : 'column');
  const input = new ColumnReader(reader);
  const limb = input.words('limb', LIMBS);
  const oneLimb = limb.varies ? undefined : limb.at(0);
  const columns: OcclusionReadingColumns = {
    limb,
    // A limb for all rows bounds the circumference for all rows.
    circumferenceCm: input.numbers(
      'circumferenceCm',
      oneLimb ? limbCircumference[oneLimb] : quantities.circumferenceCm,
      unused('circumferenceCm'),
    ),
    systolicMmHg: input.numbers('systolicMmHg', quantities.systolicMmHg, unused('systolicMmHg')),
    diastolicMmHg: input.numbers('diastolicMmHg', quantities.diastolicMmHg, unused('diastolicMmHg')),
    cuffWidthCm: input.numbers('cuffWidthCm', quantities.cuffWidthCm, unused('cuffWidthCm')),
    posture: input.words('posture', POSTURES, unused('posture')),
    ageYears: input.numbers('ageYears', quantities.ageYears, spare('ageYears')),
    sex: input.words('sex', SEXES, spare('sex')),
    paddingCoefficient: input.numbers('paddingCoefficient', quantities.paddingCoefficient, spare('paddingCoefficient')),
    side: input.words('side', SIDES, 'values'),
    circumferenceSite: input.words('circumferenceSite', CIRCUMFERENCE_SITES, 'values'),
    ...(Object.fromEntries(
      OWN_READINGS.map((field) => [
        field,
        input.numbers(field, quantities[field], isTerm(field) ? 'nothing' : 'values'),
      ]),
    ) as Pick<OcclusionReadingColumns, (typeof OWN_READINGS)[number]>),
  };
  const errors = READING_ERROR_FIELDS.map((name) => ({
    column: input.numbers(name, quantities[name], 'values'),
    field: READING_ERRORS[name].field,
  })).filter(({ column }) => column.varies || !Number.isNaN(column.values[0]));
  const rows = input.someRows('circumferenceCm');
  const out = outputColumns(reader, rows);
  reader.done();

  // One limb, cuff and posture for all rows are looked at once.
  const { cuffWidthCm, posture, circumferenceCm, systolicMmHg, diastolicMmHg } = columns;
  const first = firstReadings(columns);
  if (!limb.varies && !cuffWidthCm.varies) {
    // What a person’s row lacks refuses that row.
    const field = inapplicableField({ ...equation!, needs: [] }, first);
    if (field) reader.report('wrong-relation', field, requirement(equation!, field), String(first[field]));
    reader.done();
  }
  const { error } = equation!;
  const ranges = Object.entries(read!.ranges)
    .map(([field, range]) => [columns[field as 'ageYears'], range] as const)
    .filter(([column]) => column.varies || !Number.isNaN(at(column, 0)));
  const marked = ranges.map(([column]) => column);
  const pressures = [circumferenceCm, systolicMmHg, diastolicMmHg];
  const all = [...Object.values(columns), ...errors.map(({ column }) => column)] as readonly (
    Numbers | Words<string>
  )[];
  const others = all.filter((column) => ![...marked, ...pressures].includes(column as Numbers));
  const onePlace = !limb.varies && !cuffWidthCm.varies && !posture.varies;
  const curve = onePlace && errors.length === 0 ? error.curve : undefined;
  const write: WriteRows = curve
    ? (into, from, to) => curveBlock(curve, columns, first, into, from, to)
    : rowsBy(equation!, columns, errors);
  // The columns to write into may be columns of the input too: then the answers are put there in the end.
  const shared = all.some((column) => 'values' in column && sharesMemory(column.values, out));
  const work = shared ? emptyColumns(rows) : out;
  const { flag } = work;
  inBlocks(rows, (from, to) => {
    flag.fill(0, from, to);
    for (const column of others) column.check(flag, from, to);
    checkPressures(columns, flag, from, to);
    if (limb.varies) checkCircumferences(columns, flag, from, to);
    for (const [column, range] of ranges) markOutside(column, range, flag, from, to);
    write(work, from, to);
    refuseRows(work, from, to);
  });
  if (shared) copyColumns(work, out);
  const { id, evidence, formula, symbols, fittedNotKnown } = equation!;
  const known = error.assumption !== 'error-not-known';
  return {
    about: {
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      level: 0.95,
      ...(known && !error.own && { scale: 'log' }),
      equation: id,
      evidence,
      ...(error.own && { ownEquation: { formula, symbols, ...(error.own.base && { base: error.own.base }) } }),
      assumptions: [
        ...(known ? [error.own?.assumption ?? logNormalInterval] : []),
        ...(known && !error.own ? [assumption('new-person-and-laboratory')] : []),
        ...(fittedNotKnown.length > 0 ? [rangeNotKnown(equation!)] : []),
      ],
    },
    ...out,
  };
}

/** The readings that an equation cannot do without: those of its formula, and of what it applies to. */
function usesOf({ symbols, error, cuffWidthCm }: OcclusionEquation): ReadonlySet<string> {
  const curve = ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'cuffWidthCm', 'posture'];
  return new Set([
    ...Object.values(symbols).map((symbol) => (typeof symbol === 'string' ? symbol : symbol.field)),
    ...(error.curve ? curve : []),
    ...(cuffWidthCm === 'any' ? [] : ['cuffWidthCm']),
  ]);
}

/** Flags circumferences and pressures that are missing or impossible, pressures swapped, and pressures to refer. */
function checkPressures(columns: OcclusionReadingColumns, flag: Uint8Array, from: number, to: number): void {
  const { circumferenceCm, systolicMmHg, diastolicMmHg } = columns;
  const { values: circumferences, mask } = circumferenceCm;
  const { values: systolics, mask: systolicMask } = systolicMmHg;
  const { values: diastolics, mask: diastolicMask } = diastolicMmHg;
  const { min: least, max: most } = circumferenceCm.quantity;
  const { min: systolicLeast } = systolicMmHg.quantity;
  const { min: diastolicLeast } = diastolicMmHg.quantity;
  for (let row = from; row < to; row += 1) {
    const circumference = circumferences[row & mask]!;
    const systolic = systolics[row & systolicMask]!;
    const diastolic = diastolics[row & diastolicMask]!;
    const ordinary =
      circumference >= least &&
      circumference <= most &&
      systolic >= systolicLeast &&
      systolic < REFER_SYSTOLIC &&
      diastolic >= diastolicLeast &&
      diastolic < REFER_DIASTOLIC &&
      diastolic < systolic;
    if (ordinary) continue;
    const pressures = systolicMmHg.judge(systolic) | diastolicMmHg.judge(diastolic);
    flag[row]! |= circumferenceCm.judge(circumference) | pressures;
    if (pressures !== 0) continue;
    if (systolic <= diastolic) flag[row]! |= RELATION;
    if (systolic >= REFER_SYSTOLIC || diastolic >= REFER_DIASTOLIC) flag[row]! |= BLOOD_PRESSURE_REFER;
  }
}

/** Where every row has a limb of its own, its circumference must be possible for that limb. */
function checkCircumferences(columns: OcclusionReadingColumns, flag: Uint8Array, from: number, to: number): void {
  const { limb, circumferenceCm } = columns;
  for (let row = from; row < to; row += 1) {
    const word = limb.at(row);
    const centimetres = circumferenceCm.values[row & circumferenceCm.mask]!;
    if (word && (centimetres < limbCircumference[word].min || centimetres > limbCircumference[word].max))
      flag[row]! |= IMPOSSIBLE;
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
