import { Math } from '../quantity/maths.js';
import { describe, describeLength, issue, type InputIssue, type Path } from '../answer/issues.js';
import { BETWEEN, need, type Asked } from '../answer/needs.js';
import { ABOVE_ZERO_LOG, NUMBER_OR_NULL, NAME_OR_NULL, NUMBER_LIST, NUMBERS_AS_LONG, NAMES_AS_LONG } from './needs.js';

/** Rows that a column may have. */
export const MOST_ROWS = 50_000_000;
const LARGEST = 1e9;

/** A column of numbers: null, undefined, NaN and what is not finite are missing. */
export type Numbers = ArrayLike<number | null | undefined>;

/** Who each row belongs to: a name or a number. */
export type Names = ArrayLike<string | number | null | undefined>;

/** A list of any kind; asked so that a proxy cannot pass for a typed array. */
export const isList = (value: unknown): value is ArrayLike<unknown> => {
  try {
    return Array.isArray(value) || (ArrayBuffer.isView(value) && !(value instanceof DataView));
  } catch {
    return false;
  }
};

/** What was given for a list: how long it is, or what it is instead. */
export const describeList = (value: unknown): string | undefined =>
  isList(value) ? describeLength(value.length) : describe(value);

/** What `read` makes of a list of `rows` items, of any number where that is 0; an issue for what is no such list. */
function readList<T>(
  value: unknown,
  path: Path,
  issues: InputIssue[],
  rows: number,
  expected: Asked,
  read: (list: ArrayLike<unknown>) => T,
): T | undefined {
  try {
    if (isList(value) && value.length <= MOST_ROWS && (rows === 0 || value.length === rows)) return read(value);
    issues.push(issue('wrong-type', path, expected, describeList(value)));
  } catch {
    issues.push(issue('unreadable', path, expected, 'an error'));
  }
  return undefined;
}

/**
 * A list as numbers, NaN for what is missing or not finite; an issue for what is no list. Where `rows` is 0 the list that
 * it is to be as long as is wrong: any number of rows will do.
 */
export function numbersOf(value: unknown, path: Path, issues: InputIssue[], rows = 0): Float64Array {
  const expected = rows === 0 ? NUMBER_LIST : need(NUMBERS_AS_LONG, { rows });
  const found = readList(value, path, issues, rows, expected, (list) => {
    const numbers = new Float64Array(list.length);
    // By position: your own iterator may never end.
    for (let row = 0; row < numbers.length; row += 1) {
      const item = list[row];
      const number = typeof item === 'number' && Number.isFinite(item) ? item : NaN;
      numbers[row] = number;
      if (typeof item !== 'number' && item !== null && item !== undefined) {
        issues.push(issue('wrong-type', [...path, row], NUMBER_OR_NULL, describe(item)));
        break;
      }
      if (Math.abs(number) > LARGEST) {
        const bounds = need(BETWEEN, { low: -LARGEST, high: LARGEST });
        issues.push(issue('out-of-range', [...path, row], bounds, String(number)));
        break;
      }
    }
    return numbers;
  });
  return found ?? new Float64Array(0);
}

/**
 * Who each row belongs to, as whole numbers from 0 in the order met, −1 for nobody; an issue for what is no such list.
 * Undefined for that, where no list was given, and where there are no rows: their list is then what is wrong.
 */
export function peopleOf(value: unknown, path: Path, issues: InputIssue[], rows: number): Int32Array | undefined {
  if (value === undefined || rows === 0) return undefined;
  return readList(value, path, issues, rows, need(NAMES_AS_LONG, { rows }), (list) => {
    const people = new Int32Array(rows).fill(-1);
    const known = new Map<unknown, number>();
    // Small whole numbers, as most are, are looked up by their place: a map of a million takes half a second.
    const small = new Int32Array(rows).fill(-1);
    let count = 0;
    for (let row = 0; row < rows; row += 1) {
      const who = list[row];
      if (who === null || who === undefined || who === '' || Number.isNaN(who)) continue;
      if (typeof who !== 'string' && typeof who !== 'number') {
        issues.push(issue('wrong-type', [...path, row], NAME_OR_NULL, describe(who)));
        return undefined;
      }
      if (typeof who === 'number' && who >= 0 && who < rows && Math.floor(who) === who) {
        if (small[who]! < 0) small[who] = count++;
        people[row] = small[who]!;
        continue;
      }
      let code = known.get(who);
      if (code === undefined) known.set(who, (code = count++));
      people[row] = code;
    }
    return people;
  });
}

/** The rows that have both values, and a person where people are given; the others counted by what they lack. */
export function pairRows(measured: Float64Array, estimated: Float64Array, who: Int32Array | undefined) {
  const missing = { measured: 0, estimated: 0, both: 0, ...(who && { person: 0 }) };
  const kept = new Int32Array(measured.length);
  let n = 0;
  for (let row = 0; row < kept.length; row += 1) {
    const [lacksMeasured, lacksEstimated] = [Number.isNaN(measured[row]), Number.isNaN(estimated[row])];
    if (lacksMeasured && lacksEstimated) missing.both += 1;
    else if (lacksMeasured) missing.measured += 1;
    else if (lacksEstimated) missing.estimated += 1;
    else if (who && who[row]! < 0) missing.person! += 1;
    else kept[n++] = row;
  }
  return { kept: kept.subarray(0, n), missing };
}

/** An issue for the first of the rows that has no logarithm. */
export function reportNoLogarithm(
  column: Float64Array,
  rows: Int32Array | readonly number[],
  path: Path,
  issues: InputIssue[],
): void {
  for (const row of rows) {
    if (column[row]! > 0) continue;
    issues.push(issue('out-of-range', [...path, row], ABOVE_ZERO_LOG, `${column[row]}`));
    return;
  }
}
