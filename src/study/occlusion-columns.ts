import { rangeNotKnown } from '../pressure/estimate.js';
import { assumption } from '../pressure/assumptions.js';
import { logNormalInterval } from '../answer/interval.js';
import type { Reader } from '../answer/reader.js';
import { REFER_DIASTOLIC, REFER_SYSTOLIC } from '../pressure/blood-pressure.js';
import type { OcclusionEquation, Range } from '../pressure/equation.js';
import { occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import { checkApplicable, READING_ERROR_FIELDS, READING_ERRORS } from '../pressure/uncertainty.js';
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
  type Quantity,
  type Sex,
  type Side,
} from '../quantity/quantities.js';
import {
  copyColumns,
  emptyColumns,
  inBlocks,
  outputColumns,
  sharesMemory,
  type AnswerColumns,
  type ColumnAnswer,
  type ColumnsAbout,
} from './column-answer.js';
import {
  ColumnReader,
  type MayMiss,
  type NumberColumn,
  type Numbers,
  type WordColumn,
  type Words,
} from './column-input.js';
import type { OwnOcclusionEquation } from './fitted-equation.js';
import { BLOOD_PRESSURE_REFER, IMPOSSIBLE, OUTSIDE_FITTED_RANGE, RELATION } from './flags.js';
import {
  firstReadings,
  rowsBy,
  type NumberReading,
  type OcclusionReadingColumns,
  type ReadingErrorColumn,
} from './occlusion-rows.js';
import { readEquation, type ColumnEquation } from './own-equation.js';

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

/** The readings that a curve draws on; those that an equation does not use may be left out as a whole. */
const CURVE_READINGS = ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'cuffWidthCm', 'posture'];

/** The readings that an equation cannot do without: those of its formula, and of what it applies to. */
const usesOf = ({ symbols, error, cuffWidthCm }: OcclusionEquation): readonly string[] => [
  ...Object.values(symbols).map((symbol) => (typeof symbol === 'string' ? symbol : symbol.field)),
  ...(error.curve ? CURVE_READINGS : []),
  ...(cuffWidthCm === 'any' ? [] : ['cuffWidthCm']),
];

/** The columns of readings, each asked for as the equation needs it. */
function readReadings(input: ColumnReader, equation: ColumnEquation | undefined): OcclusionReadingColumns {
  const base = equation?.own?.base;
  const uses = equation ? [...usesOf(equation), ...(base ? usesOf(base) : [])] : CURVE_READINGS;
  // A reading that the equation does not use may be left out; one that is given has to be right.
  const missing = (field: string): MayMiss =>
    uses.includes(field) ? 'nothing' : CURVE_READINGS.includes(field) ? 'column' : 'values';
  const numbers = (field: NumberReading, quantity: Quantity = quantities[field]): Numbers =>
    input.numbers(field, quantity, missing(field));
  const words = <T extends string>(field: string, options: readonly T[]): Words<T> =>
    input.words(field, options, missing(field));
  const limb = input.words('limb', LIMBS);
  const oneLimb = limb.varies ? undefined : limb.at(0);
  return {
    limb,
    // A limb for all rows bounds the circumference for all rows.
    circumferenceCm: numbers('circumferenceCm', oneLimb && limbCircumference[oneLimb]),
    systolicMmHg: numbers('systolicMmHg'),
    diastolicMmHg: numbers('diastolicMmHg'),
    cuffWidthCm: numbers('cuffWidthCm'),
    posture: words('posture', POSTURES),
    ageYears: numbers('ageYears'),
    sex: words('sex', SEXES),
    paddingCoefficient: numbers('paddingCoefficient'),
    side: words('side', SIDES),
    circumferenceSite: words('circumferenceSite', CIRCUMFERENCE_SITES),
    heightCm: numbers('heightCm'),
    bodyMassIndex: numbers('bodyMassIndex'),
    skinfoldMm: numbers('skinfoldMm'),
  };
}

/** The columns of the errors of readings that were given. */
const readErrors = (input: ColumnReader): readonly ReadingErrorColumn[] =>
  READING_ERROR_FIELDS.map((name) => ({
    column: input.numbers(name, quantities[name], 'values'),
    field: READING_ERRORS[name].field,
  })).filter(({ column }) => isGiven(column));

const isGiven = (column: Numbers): boolean => column.varies || !Number.isNaN(column.values[0]);

/** What holds for every row by an equation. */
function aboutOf(equation: ColumnEquation): ColumnsAbout<'occlusion-pressure'> {
  const { id, evidence, formula, symbols, fittedNotKnown, error } = equation;
  const { own } = error;
  const published = error.assumption !== 'error-not-known' && !own;
  return {
    kind: 'occlusion-pressure',
    unit: 'mm[Hg]',
    level: 0.95,
    ...(published && { scale: 'log' }),
    equation: id,
    evidence,
    ...(own && { ownEquation: { formula, symbols, ...(own.base && { base: own.base }) } }),
    assumptions: [
      ...(own ? [own.assumption] : []),
      ...(published ? [logNormalInterval, assumption('new-person-and-laboratory')] : []),
      ...(fittedNotKnown.length > 0 ? [rangeNotKnown(equation)] : []),
    ],
  };
}

export function occlusionColumns(reader: Reader): ColumnAnswer<'occlusion-pressure'> {
  const read = readEquation(reader, occlusionEquations);
  const input = new ColumnReader(reader);
  const columns = readReadings(input, read?.equation);
  const errors = readErrors(input);
  const rows = input.someRows('circumferenceCm');
  const out = outputColumns(reader, rows);
  reader.done();

  const { equation, ranges: allRanges } = read!;
  const { limb, cuffWidthCm } = columns;
  // One limb and cuff for all rows are looked at once.
  if (!limb.varies && !cuffWidthCm.varies) {
    // What a person’s row lacks refuses that row.
    checkApplicable(reader, { ...equation, needs: [] }, firstReadings(columns));
    reader.done();
  }
  const ranges = Object.entries(allRanges)
    .map(([field, range]) => [columns[field as NumberReading], range] as const)
    .filter(([column]) => isGiven(column));
  const all: readonly (Numbers | Words<string>)[] = [...Object.values(columns), ...errors.map(({ column }) => column)];
  const { circumferenceCm, systolicMmHg, diastolicMmHg } = columns;
  const looked: readonly unknown[] = [
    circumferenceCm,
    systolicMmHg,
    diastolicMmHg,
    ...ranges.map(([column]) => column),
  ];
  const others = all.filter((column) => !looked.includes(column));
  const write = rowsBy(equation, columns, errors);
  // The columns to write into may be columns of the input too: then the answers are put there in the end.
  const shared = all.some(({ values }) => sharesMemory(values, out));
  const work = shared ? emptyColumns(rows) : out;
  const { flag } = work;
  inBlocks(work, (from, to) => {
    flag.fill(0, from, to);
    for (const column of others) column.check(flag, from, to);
    checkPressures(columns, flag, from, to);
    if (limb.varies) checkCircumferences(columns, flag, from, to);
    for (const [column, range] of ranges) markOutside(column, range, flag, from, to);
    write(work, from, to);
  });
  if (shared) copyColumns(work, out);
  return { about: aboutOf(equation), ...out };
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
    const pressures = systolicMmHg.flagOf(systolic) | diastolicMmHg.flagOf(diastolic);
    flag[row]! |= circumferenceCm.flagOf(circumference) | pressures;
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
