import { Math } from '../quantity/maths.js';
import { describe } from '../answer/issues.js';
import type { Reader } from '../answer/reader.js';
import type { Quantity } from '../quantity/quantities.js';
import { IMPOSSIBLE, MISSING } from './flags.js';
import { isList, MOST_ROWS } from './lists.js';
import { need, type Asked } from '../answer/needs.js';
import { NUMBER_OR_NULL, WORD_OR_NULL, MOST_COLUMN, AS_LONG, READABLE_COLUMN, SOME_COLUMN } from './needs.js';

/** One value for every row, or a value a row: `NaN`, `null` and `undefined` are missing. */
export type NumberColumn = number | ArrayLike<number | null | undefined>;

/** One word for every row, or a word a row. */
export type WordColumn<T extends string> = T | ArrayLike<T | null | undefined>;

/** Codes of a word column besides the positions of its words. */
const NO_WORD = 254;
const WRONG_WORD = 255;

/** What is neither missing nor of the type of its column: text among numbers, 64-bit integers, numbers among words. */
class WrongElement {
  constructor(
    readonly row: number,
    readonly value: unknown,
  ) {}
}

/** What the length of a column must be, where it is wrong; `rows` is that of the columns before it. */
export const wrongLength = (length: number, rows: number | undefined): Asked | undefined =>
  length > MOST_ROWS
    ? need(MOST_COLUMN, { most: MOST_ROWS })
    : rows !== undefined && length !== rows
      ? need(AS_LONG, { rows })
      : undefined;

/**
 * The numbers of a list, missing ones as NaN. Anything else makes the call wrong, not the row: the column was misread.
 */
function toNumbers(list: ArrayLike<unknown>, rows: number): Float64Array | WrongElement {
  if (list instanceof Float64Array) return list;
  const numbers = new Float64Array(rows);
  // By position: your own iterator may never end.
  for (let row = 0; row < rows; row += 1) {
    const value = list[row];
    if (typeof value === 'number') numbers[row] = value;
    else if (value === undefined || value === null) numbers[row] = NaN;
    else return new WrongElement(row, value);
  }
  return numbers;
}

/** The words of a list as positions among those there are; one that is none of them makes its row wrong. */
function toCodes(list: ArrayLike<unknown>, rows: number, words: readonly string[]): Uint8Array | WrongElement {
  const codes = new Uint8Array(rows);
  for (let row = 0; row < rows; row += 1) {
    const word = list[row];
    const position = words.indexOf(word as string);
    if (position >= 0) codes[row] = position;
    else if (word === undefined || word === null) codes[row] = NO_WORD;
    else if (typeof word === 'string') codes[row] = WRONG_WORD;
    else return new WrongElement(row, word);
  }
  return codes;
}

/** What a field holds: one value for all rows, or a value a row. */
interface Held<V extends Float64Array | Uint8Array> {
  readonly values: V;
  readonly varies: boolean;
  /** Whether values may be missing. */
  readonly optional: boolean;
}

/** A column: row `i` is `values[i & mask]`, so that one value can stand for all rows. */
abstract class Column<V extends Float64Array | Uint8Array> {
  readonly values: V;
  /** Whether there is a value a row. */
  readonly varies: boolean;
  readonly mask: 0 | -1;
  protected readonly optional: boolean;

  constructor({ values, varies, optional }: Held<V>) {
    this.values = values;
    this.varies = varies;
    this.mask = varies ? -1 : 0;
    this.optional = optional;
  }

  /** The flag of a value that is missing or impossible, or 0. */
  abstract judge(value: number): number;

  /** Flags the rows of a block whose value is missing or impossible. One value for all rows was looked at already. */
  check(flag: Uint8Array, from: number, to: number): void {
    if (!this.varies) return;
    const { values } = this;
    for (let row = from; row < to; row += 1) flag[row]! |= this.judge(values[row]!);
  }
}

export class Numbers extends Column<Float64Array> {
  constructor(
    readonly quantity: Quantity,
    held: Held<Float64Array>,
  ) {
    super(held);
  }

  judge(value: number): number {
    const { min, max, whole } = this.quantity;
    if (value >= min && value <= max && (!whole || value === Math.floor(value))) return 0;
    if (value === value) return IMPOSSIBLE;
    return this.optional ? 0 : MISSING;
  }
}

export const at = ({ values, mask }: Numbers, row: number): number => values[row & mask]!;

/** A column of words, as positions in their list. */
export class Words<T extends string> extends Column<Uint8Array> {
  constructor(
    readonly words: readonly T[],
    held: Held<Uint8Array>,
  ) {
    super(held);
  }

  /** The word of a row; `undefined` where it is missing or wrong. */
  at(row: number): T | undefined {
    return this.words[this.values[row & this.mask]!];
  }

  judge(code: number): number {
    if (code < NO_WORD || (code === NO_WORD && this.optional)) return 0;
    return code === WRONG_WORD ? IMPOSSIBLE : MISSING;
  }
}

/** What of a column may be missing: nothing, values of it, or only the column as a whole. */
export type MayMiss = 'nothing' | 'values' | 'column';

/** Reads fields that may hold a value or a column, and holds all columns to one length. */
export class ColumnReader {
  /** How many rows the columns have; `undefined` while there is no column. */
  rows: number | undefined;

  constructor(private readonly reader: Reader) {}

  /** How many rows the columns have; one of the fields must be a column. */
  someRows(name: string): number {
    if (this.rows === undefined && this.reader.fine) {
      this.reader.report('wrong-relation', name, SOME_COLUMN, 'one value for every field');
    }
    return this.rows ?? 0;
  }

  numbers(name: string, quantity: Quantity, missing: MayMiss = 'nothing'): Numbers {
    return new Numbers(
      quantity,
      this.read(name, missing, NUMBER_OR_NULL, toNumbers, Float64Array.of(NaN), (value) =>
        Float64Array.of(this.reader.judge(name, quantity, value) ?? NaN),
      ),
    );
  }

  words<T extends string>(name: string, words: readonly T[], missing: MayMiss = 'nothing'): Words<T> {
    const codes = (list: ArrayLike<unknown>, rows: number) => toCodes(list, rows, words);
    return new Words(
      words,
      this.read(name, missing, WORD_OR_NULL, codes, Uint8Array.of(NO_WORD), (value) => {
        const word = this.reader.among(name, words, value);
        return Uint8Array.of(word === undefined ? NO_WORD : words.indexOf(word));
      }),
    );
  }

  private read<V extends Float64Array | Uint8Array>(
    name: string,
    missing: MayMiss,
    expected: Asked,
    many: (list: ArrayLike<unknown>, rows: number) => V | WrongElement,
    nothing: V,
    one: (value: unknown) => V,
  ): Held<V> {
    const value = this.reader.raw(name);
    const optional = missing === 'values' || (missing === 'column' && value === undefined);
    if (isList(value)) {
      const values = this.list(name, value, expected, many);
      return { values: values ?? nothing, varies: values !== undefined, optional };
    }
    return { values: optional && value === undefined ? nothing : one(value), varies: false, optional };
  }

  private list<V>(
    name: string,
    value: ArrayLike<unknown>,
    expected: Asked,
    many: (list: ArrayLike<unknown>, rows: number) => V | WrongElement,
  ): V | undefined {
    try {
      const { length } = value;
      const wrong = wrongLength(length, this.rows);
      if (wrong) return this.refuse(name, wrong, String(length));
      this.rows = length;
      const column = many(value, length);
      if (!(column instanceof WrongElement)) return column;
      this.reader.report('wrong-type', [name, column.row], expected, describe(column.value));
      return undefined;
    } catch {
      return this.refuse(name, READABLE_COLUMN, 'an error');
    }
  }

  private refuse(name: string, expected: Asked, received: string): undefined {
    this.reader.report('wrong-relation', name, expected, received);
  }
}
