import { Math } from '../quantity/maths.js';
import type { AnswerKind, Assumption, Symbols } from '../answer/answer.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { Reader } from '../answer/reader.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { Unit } from '../quantity/quantities.js';

/** The four columns of an answer, one row a person. */
export interface AnswerColumns {
  /** The answers; NaN where the row was refused. */
  readonly value: Float64Array;
  /** Ends of the 95 % intervals; NaN where there is none. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** What is to be said about a row; see `rowFlags`. */
  readonly flag: Uint8Array;
}

/** What holds for every row of a column answer: plain JSON, which `cite`, `bibliography` and `methods` take. */
export interface ColumnsAbout<K extends AnswerKind = AnswerKind> {
  readonly kind: K;
  /** UCUM code. */
  readonly unit: Unit;
  readonly level: 0.95;
  /** `log` where the errors of the rows are shares of their values. */
  readonly scale?: 'log';
  readonly equation: string;
  readonly evidence: Grade;
  readonly formula: string;
  readonly symbols: Symbols;
  readonly assumptions: readonly Assumption[];
  readonly sources: readonly SourceId[];
}

/** Answers over columns. */
export interface ColumnAnswer<K extends AnswerKind = AnswerKind> extends AnswerColumns {
  readonly about: ColumnsAbout<K>;
}

/** Rows are worked through in blocks that stay in the cache. */
export const BLOCK = 8192;

export function inBlocks(rows: number, work: (from: number, to: number) => void): void {
  for (let from = 0; from < rows; from += BLOCK) work(from, Math.min(rows, from + BLOCK));
}

export const isNumberColumn = (value: unknown, rows: number): value is Float64Array =>
  ArrayBuffer.isView(value) && value instanceof Float64Array && value.length === rows;

export const isFlagColumn = (value: unknown, rows: number): value is Uint8Array =>
  ArrayBuffer.isView(value) && value instanceof Uint8Array && value.length === rows;

export const emptyColumns = (rows: number): AnswerColumns => ({
  value: new Float64Array(rows),
  lower: new Float64Array(rows),
  upper: new Float64Array(rows),
  flag: new Uint8Array(rows),
});

/** Whether answers lie in the memory that a column is read from. */
export const sharesMemory = (column: Float64Array, { value, lower, upper, flag }: AnswerColumns): boolean =>
  [value, lower, upper, flag].some(({ buffer }) => buffer === column.buffer);

/** The columns to write into: those of an earlier answer that the caller gives back, else new ones. */
export function outputColumns(reader: Reader, rows: number): AnswerColumns {
  const given = reader.raw('into');
  if (given === undefined) return reader.fine ? emptyColumns(rows) : (given as unknown as AnswerColumns);
  try {
    const { value, lower, upper, flag } = given as AnswerColumns;
    const numbers = [value, lower, upper];
    const apart = new Set(numbers).size === 3;
    if (apart && numbers.every((column) => isNumberColumn(column, rows)) && isFlagColumn(flag, rows)) {
      return { value, lower, upper, flag };
    }
  } catch {
    // Whatever cannot be read is no column.
  }
  const expected = `three Float64Array (value, lower, upper) and a Uint8Array (flag), each of ${rows} rows`;
  reader.report('wrong-type', 'into', expected, 'something else');
  return given as AnswerColumns;
}

/** As `interval` for the rows of a block: around their values, from standard deviations left in `upper`. */
export function writeIntervals({ value, lower, upper }: AnswerColumns, from: number, to: number): void {
  for (let row = from; row < to; row += 1) {
    const half = NORMAL_95 * upper[row]!;
    lower[row] = value[row]! - half;
    upper[row] = value[row]! + half;
  }
}

/** What holds for every row of a column answer, in its place; anything else as it is. */
export function columnsAsAbout(part: object): object {
  const { value, about } = part as Partial<ColumnAnswer>;
  return about !== undefined && isNumberColumn(value, value?.length ?? 0) ? about : part;
}
