import { describe } from '../answer/issues.js';
import { Math } from '../quantity/maths.js';
import type { Answer, AnswerKind, Assumption } from '../answer/answer.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { Reader } from '../answer/reader.js';
import type { Grade } from '../evidence/grades.js';
import type { Unit } from '../quantity/quantities.js';
import { NO_INTERVAL, REFUSED } from './flags.js';
import { need } from '../answer/needs.js';
import { INTO } from './needs.js';

/** The columns of an answer, one row a person. */
export interface AnswerColumns {
  /** The answers; NaN where the row was refused. */
  readonly value: Float64Array;
  /** Lower ends of the 95 % intervals; NaN where there is none. */
  readonly lower: Float64Array;
  /** Upper ends of the 95 % intervals; NaN where there is none. */
  readonly upper: Float64Array;
  /** Standard deviations, on the scale of `about.scale`; NaN where there is none. */
  readonly standardDeviation: Float64Array;
  /** The flags of a row; see `rowFlags`. */
  readonly flag: Uint8Array;
}

/** What holds for every row of a column answer: plain JSON, which `cite`, `bibliography` and `methods` take. */
export interface ColumnsAbout<K extends AnswerKind = AnswerKind> {
  /** What the rows answer, a code. */
  readonly kind: K;
  /** UCUM code of the unit of the values. */
  readonly unit: Unit;
  /** Level of the intervals. */
  readonly level: 0.95;
  /** `log` where the errors of the rows are shares of their values. */
  readonly scale?: 'log';
  /** Id of the equation or method of every row. */
  readonly equation: string;
  /** Evidence grade of that equation. */
  readonly evidence: Grade;
  /** Formula and symbols of your own equation, where it made the rows. */
  readonly ownEquation?: NonNullable<Answer['ownEquation']>;
  /** What the column answers were calculated from. */
  readonly inputs?: Readonly<Record<string, ColumnsAbout>>;
  /** What every row assumes, by code. */
  readonly assumptions: readonly Assumption[];
}

/** Answers over columns. */
export interface ColumnAnswer<K extends AnswerKind = AnswerKind> extends AnswerColumns {
  /** What holds for every row. */
  readonly about: ColumnsAbout<K>;
}

const isFloats = (value: unknown, rows: number): value is Float64Array =>
  ArrayBuffer.isView(value) && value instanceof Float64Array && value.length === rows;

const isFlags = (value: unknown, rows: number): value is Uint8Array =>
  ArrayBuffer.isView(value) && value instanceof Uint8Array && value.length === rows;

export const emptyColumns = (rows: number): AnswerColumns => ({
  value: new Float64Array(rows),
  lower: new Float64Array(rows),
  upper: new Float64Array(rows),
  standardDeviation: new Float64Array(rows),
  flag: new Uint8Array(rows),
});

/** The columns of numbers of an answer. */
const numbersOf = ({ value, lower, upper, standardDeviation }: AnswerColumns) =>
  [value, lower, upper, standardDeviation] as const;

/** Whether answers lie in the memory that a column is read from. */
export const sharesMemory = (column: Float64Array | Uint8Array, out: AnswerColumns): boolean =>
  [...numbersOf(out), out.flag].some(({ buffer }) => buffer === column.buffer);

/** The columns of something that has all those of an answer, of one length; a proxy may throw. */
export function wholeColumns(given: AnswerColumns, rows = given.value.length): AnswerColumns | undefined {
  const { value, lower, upper, standardDeviation, flag } = given;
  const columns = { value, lower, upper, standardDeviation, flag };
  return numbersOf(columns).every((column) => isFloats(column, rows)) && isFlags(flag, rows) ? columns : undefined;
}

/** The columns to write into: those of an earlier answer that you give back, else new ones. */
export function outputColumns(reader: Reader, rows: number): AnswerColumns {
  const given = reader.raw('into') as AnswerColumns | undefined;
  if (given === undefined) return emptyColumns(reader.fine ? rows : 0);
  try {
    const columns = wholeColumns(given, rows);
    if (columns && new Set(numbersOf(columns)).size === 4) return columns;
  } catch {
    // Whatever cannot be read is no column.
  }
  reader.report('wrong-type', 'into', need(INTO, { rows }), describe(given));
  return emptyColumns(0);
}

/** Puts answers where they go. */
export function copyColumns(from: AnswerColumns, to: AnswerColumns, at = 0): void {
  for (const name of ['value', 'lower', 'upper', 'standardDeviation', 'flag'] as const) to[name].set(from[name], at);
}

/** Rows are worked through in blocks that stay in the cache. */
export const BLOCK = 8192;

/** Answers rows block by block. Those that `work` refuses are left without numbers, and without a flag but the reason. */
export function inBlocks(out: AnswerColumns, work: (from: number, to: number) => void): void {
  const rows = out.flag.length;
  for (let from = 0; from < rows; from += BLOCK) {
    const to = Math.min(rows, from + BLOCK);
    work(from, to);
    refuseRows(out, from, to);
  }
}

/** Rows that are refused have no numbers, and no flag but the reason. */
export function refuseRows(out: AnswerColumns, from: number, to: number): void {
  const { value, lower, upper, standardDeviation, flag } = out;
  for (let row = from; row < to; row += 1) {
    if ((flag[row]! & REFUSED) === 0) continue;
    flag[row]! &= REFUSED;
    value[row] = lower[row] = upper[row] = standardDeviation[row] = NaN;
  }
}

/** As `interval` for the rows of a block: around their values, from their standard deviations. */
export function writeIntervals(
  { value, lower, upper, standardDeviation }: AnswerColumns,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    const half = NORMAL_95 * standardDeviation[row]!;
    lower[row] = value[row]! - half;
    upper[row] = value[row]! + half;
  }
}

/** Of your own equation, from standard deviations as shares of the values: in their unit, as least squares has it. */
export function writeOwnIntervals(out: AnswerColumns, from: number, to: number): void {
  const { value, standardDeviation } = out;
  for (let row = from; row < to; row += 1) standardDeviation[row]! *= value[row]!;
  writeIntervals(out, from, to);
}

/** As `logInterval`; a row without a standard deviation has no interval. */
export function writeLogIntervals(
  { value, lower, upper, standardDeviation, flag }: AnswerColumns,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    const answer = value[row]!;
    const deviation = standardDeviation[row]!;
    const factor = Math.exp(NORMAL_95 * deviation);
    lower[row] = answer / factor;
    upper[row] = answer * factor;
    if (deviation !== deviation) flag[row]! |= NO_INTERVAL;
  }
}

/** What holds for every row of a column answer, in its place; anything else as it is. */
export function columnsAsAbout(part: object): object {
  const { value, about } = part as Partial<ColumnAnswer>;
  return about !== undefined && isFloats(value, value?.length ?? 0) ? about : part;
}
