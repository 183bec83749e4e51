import { formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { quantities, type Quantity, type QuantityName } from '../quantity/quantities.js';
import { describe, InputError, issue, type InputIssue, type Path } from './issues.js';
import type { IssueCode, MessageValues } from './messages.js';
import { plainCopy } from './plain-copy.js';

const MOST_ITEMS = 1000;

/** What a number must be, in words. */
export const expectedNumber = ({ min, max, unit, whole }: Quantity): string =>
  `${whole ? 'a whole number' : 'a number'} from ${min} to ${formatUnit(max, unit)}`;

const fits = ({ min, max, whole }: Quantity, value: unknown): boolean =>
  typeof value === 'number' && value >= min && value <= max && (!whole || Number.isInteger(value));

/** What is wrong with a value given for a quantity, with the likely slip where there is one. */
export function numberIssue(quantity: Quantity, value: unknown, path: Path): InputIssue | undefined {
  if (fits(quantity, value)) return undefined;
  const { min, max, unit } = quantity;
  const report = (code: IssueCode, values?: MessageValues) =>
    issue(code, path, expectedNumber(quantity), describe(value), values);
  if (value === undefined) return report('missing');
  if (typeof value !== 'number') return report('wrong-type');
  if (!Number.isFinite(value)) return report('not-finite');
  if (value >= min && value <= max) return report('not-whole');
  const slip = quantity.slips?.find(({ factor }) => value * factor >= min && value * factor <= max);
  return slip
    ? report('unit-slip', { slip: slip.unit, converted: formatUnit(value * slip.factor, unit) })
    : report('out-of-range');
}

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  // The prototype’s prototype is looked at so that plain objects of another realm pass too.
  return prototype === null || Object.getPrototypeOf(prototype) === null;
};

const attemptCopy = (value: unknown): unknown => {
  try {
    return plainCopy(value);
  } catch {
    return undefined;
  }
};

const commonStart = (a: string, b: string): number => {
  let length = 0;
  while (length < a.length && a[length]?.toLowerCase() === b[length]?.toLowerCase()) length += 1;
  return length;
};

const oneOf = (options: readonly string[]): string => `one of ${options.map((option) => `'${option}'`).join(', ')}`;

/**
 * Reads an input field by field, once, and gathers everything that is wrong with it. A right input costs no more
 * than its fields: words are made only for what is wrong.
 *
 * What it returns for a wrong field is a placeholder: {@link Reader.done} throws before it is used.
 */
export class Reader {
  private readonly issues: InputIssue[];
  private readonly path: Path;
  private readonly known: string[] = [];
  private readonly children: Reader[] = [];
  private source: Readonly<Record<string, unknown>> | undefined;
  /** How many of the fields read are there, be it as undefined. */
  private found = 0;
  private readonly given: string[] = [];

  constructor(input: unknown, path: Path = [], issues: InputIssue[] = []) {
    this.issues = issues;
    this.path = path;
    try {
      if (isPlain(input)) this.source = input;
      else issues.push(issue(input === undefined ? 'missing' : 'wrong-type', path, 'a plain object', describe(input)));
    } catch {
      issues.push(issue('unreadable', path, 'a plain object', 'an object'));
    }
  }

  private read(name: string): unknown {
    this.known.push(name);
    if (this.source === undefined) return undefined;
    try {
      if (!Object.hasOwn(this.source, name)) return undefined;
      this.found += 1;
      const value = this.source[name];
      if (value !== undefined) this.given.push(name);
      return value;
    } catch {
      this.report('unreadable', name, 'a value that can be read', 'an error');
      this.source = undefined;
      return undefined;
    }
  }

  /** Says that a field that was read is missing. */
  missing(name: string, expected: string): void {
    if (this.source) this.report('missing', name, expected, 'undefined');
  }

  /** Adds an issue of the caller’s own, such as a relation between two fields. */
  report(code: IssueCode, name: string | Path, expected: string, received: string, values?: MessageValues): void {
    this.issues.push(issue(code, this.path.concat(name), expected, received, values));
  }

  /** Whether every field read so far was right, so that relations between them may be looked at. */
  get fine(): boolean {
    return this.issues.length === 0;
  }

  /** Whether a field that was read has a value, right or wrong. */
  has(name: string): boolean {
    return this.given.includes(name);
  }

  /** A field as it was given, for a caller that reads more than one kind of value there and trusts none. */
  raw(name: string): unknown {
    return this.read(name);
  }

  /** A number that was read with {@link Reader.raw}; `undefined` where it is wrong. */
  judge(name: string, quantity: Quantity, value: unknown): number | undefined {
    // Plus nothing: −0 becomes 0, as JSON has it.
    if (fits(quantity, value)) return (value as number) + 0;
    if (this.source) this.issues.push(numberIssue(quantity, value, [...this.path, name])!);
    return undefined;
  }

  number(name: QuantityName, quantity: Quantity = quantities[name]): number {
    return this.judge(name, quantity, this.read(name)) ?? NaN;
  }

  optionalNumber(name: QuantityName): number | undefined;
  /** A number of a quantity that has another name here. */
  optionalNumber(name: string, quantity: Quantity): number | undefined;
  optionalNumber(name: string, quantity: Quantity = quantities[name as QuantityName]): number | undefined {
    const value = this.read(name);
    return value === undefined ? undefined : this.judge(name, quantity, value);
  }

  /** A word that was read with {@link Reader.raw}; `undefined` where it is wrong. */
  among<T extends string>(name: string, options: readonly T[], value: unknown): T | undefined {
    if (options.includes(value as T)) return value as T;
    if (value === undefined) this.missing(name, oneOf(options));
    else this.report('not-one-of', name, oneOf(options), describe(value));
    return undefined;
  }

  optionalChoice<T extends string>(name: string, options: readonly T[]): T | undefined {
    const value = this.read(name);
    return value === undefined ? undefined : this.among(name, options, value);
  }

  choice<T extends string>(name: string, options: readonly T[]): T {
    return this.among(name, options, this.read(name)) ?? (options[0] as T);
  }

  optionalText(name: string, expected: string, accept: (text: string) => boolean): string | undefined {
    return this.acceptText(name, expected, accept, this.read(name));
  }

  private acceptText(
    name: string,
    expected: string,
    accept: (text: string) => boolean,
    value: unknown,
  ): string | undefined {
    if (value === undefined) return undefined;
    if (typeof value === 'string' && value.length <= MOST_ITEMS && accept(value)) return value;
    this.report('wrong-type', name, expected, describe(value));
    return undefined;
  }

  /** A nested object, read by a reader of its own that shares the list of issues. */
  child(name: string): Reader {
    return this.nested(name, this.read(name));
  }

  optionalChild(name: string): Reader | undefined {
    const value = this.read(name);
    return value === undefined ? undefined : this.nested(name, value);
  }

  private nested(name: string, value: unknown): Reader {
    const reader = new Reader(value, [...this.path, name], this.issues);
    this.children.push(reader);
    return reader;
  }

  /** A field that is a number, or an object with a number for each of `parts`. */
  optionalNumberOrParts<P extends string>(
    name: QuantityName,
    parts: readonly P[],
  ): number | Readonly<Record<P, number>> | undefined {
    const value = this.read(name);
    if (value === undefined) return undefined;
    if (typeof value !== 'object' || value === null) return this.judge(name, quantities[name], value);
    const reader = this.nested(name, value);
    const read = parts.map((part) => [part, reader.judge(part, quantities[name], reader.read(part)) ?? NaN]);
    return Object.fromEntries(read) as Record<P, number>;
  }

  /** A field that is a text, or an object with a reader of its own. */
  textOrChild(name: string, expected: string, accept: (text: string) => boolean): string | Reader | undefined {
    const value = this.read(name);
    if (typeof value !== 'object' || value === null) return this.acceptText(name, expected, accept, value);
    return this.nested(name, value);
  }

  /** A value of any kind as plain JSON of its own: nothing of the caller’s is kept or run later. */
  anything(name: string, expected: string, optional = false): unknown {
    const value = this.read(name);
    if (value === undefined) {
      if (!optional) this.missing(name, expected);
      return undefined;
    }
    try {
      const copy = plainCopy(value);
      if (copy !== undefined) return copy;
      this.report('wrong-type', name, expected, describe(value));
    } catch {
      this.report('unreadable', name, expected, 'an error');
    }
    return undefined;
  }

  /** A list of nested objects. */
  optionalList(name: string, expected: string, most = MOST_ITEMS): Reader[] | undefined {
    const value = this.read(name);
    if (value === undefined) return undefined;
    const items = this.items(name, value, expected, most);
    const readers = items.map((item, index) => new Reader(item, [...this.path, name, index], this.issues));
    this.children.push(...readers);
    return readers;
  }

  /** A nested object whose fields have names of the caller’s own, each a nested object. */
  named(name: string, expected: string, most: number): (readonly [string, Reader])[] {
    const given = this.anything(name, expected);
    if (given === undefined) return [];
    const entries = typeof given === 'object' && given !== null && !Array.isArray(given) ? Object.entries(given) : [];
    if (entries.length === 0 || entries.length > most) {
      this.report('wrong-type', name, expected, `${entries.length} of them`);
      return [];
    }
    return entries.map(([key, value]) => {
      const reader = new Reader(value, [...this.path, name, key], this.issues);
      this.children.push(reader);
      return [key, reader];
    });
  }

  /** A list of values of any kind, each as plain JSON of its own; a value that is not plain JSON is undefined. */
  values(name: string, expected: string): unknown[] {
    const value = this.read(name);
    if (value === undefined) this.missing(name, expected);
    return value === undefined ? [] : this.items(name, value, expected).map((item) => attemptCopy(item));
  }

  /** A list of numbers of one quantity. */
  optionalNumbers(name: string, quantity: Quantity): number[] | undefined {
    const value = this.read(name);
    if (value === undefined) return undefined;
    const items = this.items(name, value, `a list of numbers, each ${expectedNumber(quantity)}`);
    for (const [index, item] of items.entries()) {
      const wrong = numberIssue(quantity, item, [...this.path, name, index]);
      if (wrong) this.issues.push(wrong);
    }
    return items as number[];
  }

  private items(name: string, value: unknown, expected: string, most = MOST_ITEMS): unknown[] {
    try {
      // The copy is what is counted: a proxy may say another length each time.
      const items: unknown[] = Array.isArray(value) && value.length <= most ? Array.from(value) : [];
      if (items.length > 0 && items.length <= most) return items;
      const received = Array.isArray(value) ? `a list of ${value.length}` : describe(value);
      this.report('wrong-type', name, `${expected} (1 to ${most} of them)`, received);
    } catch {
      this.report('unreadable', name, expected, 'an error');
    }
    return [];
  }

  private refuseUnknown(): void {
    for (const child of this.children) child.refuseUnknown();
    let names: string[] = [];
    try {
      let count = 0;
      for (const _ in this.source) count += 1;
      if (count === this.found) return;
      names = this.source ? Object.keys(this.source) : [];
    } catch {
      this.issues.push(issue('unreadable', this.path, 'a plain object', 'an error'));
    }
    for (const name of names) {
      if (this.known.includes(name)) continue;
      const near = this.known.find((known) => commonStart(known, name) >= Math.min(5, known.length));
      const expected = near ? `perhaps ${near}` : `one of ${this.known.join(', ')}`;
      this.issues.push(issue('unknown-field', [...this.path, name.slice(0, 60)], expected, describe(name)));
    }
  }

  /** Refuses fields that nobody read, then throws if anything was wrong. */
  done(): void {
    this.refuseUnknown();
    if (this.issues.length > 0) throw new InputError(this.issues);
  }
}
