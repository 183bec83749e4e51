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

/**
 * The numbers of a list, missing ones as NaN. Anything else makes the call wrong, not the row: the column was misread.
 */
function toNumbers(list: ArrayLike<unknown>, rows: number): Float64Array | WrongElement {
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

/** A column of numbers: row `i` is `values[i & mask]`, so that one value can stand for all rows. */
export class Numbers {
  readonly mask: 0 | -1;

  constructor(
    readonly quantity: Quantity,
    readonly values: Float64Array,
    /** Whether there is a value a row. */
    readonly varies: boolean,
    private readonly optional: boolean,
  ) {
    this.mask = varies ? -1 : 0;
  }

  /** The flag of a value that is missing or impossible, or 0. */
  judge(value: number): number {
    const { min, max, whole } = this.quantity;
    if (value >= min && value <= max && (!whole || value === Math.floor(value))) return 0;
    if (value === value) return IMPOSSIBLE;
    return this.optional ? 0 : MISSING;
  }

  /** Flags the rows of a block whose value is missing or impossible. One value for all rows was looked at already. */
  check(flag: Uint8Array, from: number, to: number): void {
    if (!this.varies) return;
    const { values } = this;
    for (let row = from; row < to; row += 1) flag[row]! |= this.judge(values[row]!);
  }
}

export const at = ({ values, mask }: Numbers, row: number): number => values[row & mask]!;

/** A column of words, as positions in their list: row `i` is `codes[i & mask]`. */
export class Words<T extends string> {
  readonly mask: 0 | -1;

  constructor(
    readonly words: readonly T[],
    readonly codes: Uint8Array,
    readonly varies: boolean,
    private readonly optional: boolean,
  ) {
    this.mask = varies ? -1 : 0;
  }

  /** The word of a row; `undefined` where it is missing or wrong. */
  at(row: number): T | undefined {
    return this.words[this.codes[row & this.mask]!];
  }

  check(flag: Uint8Array, from: number, to: number): void {
    const { codes, optional, varies } = this;
    if (!varies) return;
    for (let row = from; row < to; row += 1) {
      const code = codes[row]!;
      if (code < NO_WORD || (code === NO_WORD && optional)) continue;
      flag[row]! |= code === WRONG_WORD ? IMPOSSIBLE : MISSING;
    }
  }
}

/** What of a column may be missing: nothing, values of it, or only the column as a whole. */
export type MayMiss = 'nothing' | 'values' | 'column';

/** Reads fields that may hold a value or a column, and holds all columns to one length. */
export class ColumnReader {
  /** How many rows the columns have; `undefined` while there is no column. */
  rows: number | undefined;
  private readonly reader: Reader;

  constructor(reader: Reader) {
    this.reader = reader;
  }

  private list<A extends ArrayLike<unknown>>(
    name: string,
    value: ArrayLike<unknown>,
    expected: Asked,
    convert: (list: ArrayLike<unknown>, rows: number) => A | WrongElement,
  ): A | undefined {
    const { rows } = this;
    const report = (expected: Asked, received: string): undefined => {
      this.reader.report('wrong-relation', name, expected, received);
      return undefined;
    };
    try {
      const { length } = value;
      if (length > MOST_ROWS) return report(need(MOST_COLUMN, { most: MOST_ROWS }), String(length));
      if (rows !== undefined && length !== rows) return report(need(AS_LONG, { rows }), String(length));
      this.rows = length;
      const column = convert(value, length);
      if (!(column instanceof WrongElement)) return column;
      this.reader.report('wrong-type', [name, column.row], expected, describe(column.value));
      return undefined;
    } catch {
      return report(READABLE_COLUMN, 'an error');
    }
  }

  /** How many rows the columns have; one of the fields must be a column. */
  someRows(name: string): number {
    if (this.rows === undefined && this.reader.fine) {
      this.reader.report('wrong-relation', name, SOME_COLUMN, 'one value for every field');
    }
    return this.rows ?? 0;
  }

  numbers(name: string, quantity: Quantity, missing: MayMiss = 'nothing'): Numbers {
    const value = this.reader.raw(name);
    const optional = missing === 'values' || (missing === 'column' && value === undefined);
    if (!isList(value)) {
      const scalar = optional && value === undefined ? NaN : (this.reader.judge(name, quantity, value) ?? NaN);
      return new Numbers(quantity, Float64Array.of(scalar), false, optional);
    }
    const values = this.list(name, value, NUMBER_OR_NULL, (list, rows) =>
      list instanceof Float64Array ? list : toNumbers(list, rows),
    );
    return new Numbers(quantity, values ?? Float64Array.of(NaN), values !== undefined, optional);
  }

  words<T extends string>(name: string, words: readonly T[], missing: MayMiss = 'nothing'): Words<T> {
    const value = this.reader.raw(name);
    const optional = missing === 'values' || (missing === 'column' && value === undefined);
    if (!isList(value)) {
      const word = optional && value === undefined ? undefined : this.reader.among(name, words, value);
      return new Words(words, Uint8Array.of(word === undefined ? NO_WORD : words.indexOf(word)), false, optional);
    }
    const codes = this.list(name, value, WORD_OR_NULL, (list, rows) => {
      const codes = new Uint8Array(rows);
      for (let row = 0; row < rows; row += 1) {
        const word = list[row];
        const position = words.indexOf(word as T);
        if (position >= 0) codes[row] = position;
        else if (word === undefined || word === null) codes[row] = NO_WORD;
        else if (typeof word === 'string') codes[row] = WRONG_WORD;
        else return new WrongElement(row, word);
      }
      return codes;
    });
    return new Words(words, codes ?? Uint8Array.of(NO_WORD), codes !== undefined, optional);
  }
}
