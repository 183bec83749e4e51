import { Math } from '../quantity/maths.js';
import { describe, type Path } from '../answer/issues.js';
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

type Held<V> = readonly [values: V, varies: boolean, optional: boolean];

/** A column: row `i` is `values[i & mask]`, so that one value can stand for all rows. */
abstract class Column<V extends Float64Array | Uint8Array> {
  readonly values: V;
  /** Whether there is a value a row. */
  readonly varies: boolean;
  readonly mask: 0 | -1;
  /** Whether values may be missing. */
  protected readonly optional: boolean;

  constructor(...[values, varies, optional]: Held<V>) {
    this.values = values;
    this.varies = varies;
    this.mask = varies ? -1 : 0;
    this.optional = optional;
  }

  /** The flag of a value that is missing or impossible, or 0. */
  abstract flagOf(value: number): number;

  /** Flags the rows of a block whose value is missing or impossible. One value for all rows was looked at already. */
  check(flag: Uint8Array, from: number, to: number): void {
    if (!this.varies) return;
    const { values } = this;
    for (let row = from; row < to; row += 1) flag[row]! |= this.flagOf(values[row]!);
  }
}

export class Numbers extends Column<Float64Array> {
  constructor(
    readonly quantity: Quantity,
    ...held: Held<Float64Array>
  ) {
    super(...held);
  }

  flagOf(value: number): number {
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
    ...held: Held<Uint8Array>
  ) {
    super(...held);
  }

  /** The word of a row; `undefined` where it is missing or wrong. */
  at(row: number): T | undefined {
    return this.words[this.values[row & this.mask]!];
  }

  flagOf(code: number): number {
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
      this.reader.refuse(name, SOME_COLUMN, 'one value for every field');
    }
    return this.rows ?? 0;
  }

  numbers(name: string, quantity: Quantity, missing: MayMiss = 'nothing'): Numbers {
    const [value, optional] = this.read(name, missing);
    if (isList(value)) {
      const values = this.list(name, value, NUMBER_OR_NULL, toNumbers);
      return new Numbers(quantity, values ?? Float64Array.of(NaN), values !== undefined, optional);
    }
    const one = optional && value === undefined ? undefined : this.reader.acceptNumber(name, quantity, value);
    return new Numbers(quantity, Float64Array.of(one ?? NaN), false, optional);
  }

  words<T extends string>(name: string, words: readonly T[], missing: MayMiss = 'nothing'): Words<T> {
    const [value, optional] = this.read(name, missing);
    if (isList(value)) {
      const codes = this.list(name, value, WORD_OR_NULL, (list, rows) => toCodes(list, rows, words));
      return new Words(words, codes ?? Uint8Array.of(NO_WORD), codes !== undefined, optional);
    }
    const one = optional && value === undefined ? undefined : this.reader.acceptChoice(name, words, value);
    return new Words(words, Uint8Array.of(one === undefined ? NO_WORD : words.indexOf(one)), false, optional);
  }

  /** A field as it was given, and whether values of it may be missing. */
  private read(name: string, missing: MayMiss): readonly [value: unknown, optional: boolean] {
    const value = this.reader.raw(name);
    return [value, missing === 'values' || (missing === 'column' && value === undefined)];
  }

  private list<V>(
    name: string,
    value: ArrayLike<unknown>,
    expected: Asked,
    many: (list: ArrayLike<unknown>, rows: number) => V | WrongElement,
  ): V | undefined {
    const report = (code: 'wrong-relation' | 'wrong-type', at: string | Path, wrong: Asked, received?: string) =>
      void this.reader.report(code, at, wrong, received);
    try {
      const { length } = value;
      const wrong = wrongLength(length, this.rows);
      if (wrong) return report('wrong-relation', name, wrong, String(length));
      this.rows = length;
      const column = many(value, length);
      if (!(column instanceof WrongElement)) return column;
      return report('wrong-type', [name, column.row], expected, describe(column.value));
    } catch {
      return report('wrong-relation', name, READABLE_COLUMN, 'an error');
    }
  }
}
