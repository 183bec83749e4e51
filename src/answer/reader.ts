import { formatUnit } from '../quantity/format.js';
import { quantities, type Quantity, type QuantityName } from '../quantity/quantities.js';
import { describe, InputError, issue, type InputIssue, type Path } from './issues.js';
import type { IssueCode, MessageValues } from './messages.js';
import { plainCopy } from './plain-copy.js';

const MOST_ITEMS = 1000;

/** What a number must be, in words. */
export const expectedNumber = ({ min, max, unit, whole }: Quantity): string =>
  `${whole ? 'a whole number' : 'a number'} from ${min} to ${formatUnit(max, unit)}`;

/** What is wrong with a value given for a quantity, with the likely slip where there is one. */
export function numberIssue(quantity: Quantity, value: unknown, path: Path): InputIssue | undefined {
  const { min, max, unit, whole } = quantity;
  const report = (code: IssueCode, values?: MessageValues) =>
    issue(code, path, expectedNumber(quantity), describe(value), values);
  if (value === undefined) return report('missing');
  if (typeof value !== 'number') return report('wrong-type');
  if (!Number.isFinite(value)) return report('not-finite');
  if (value < min || value > max) {
    const slip = quantity.slips?.find(({ factor }) => value * factor >= min && value * factor <= max);
    return slip
      ? report('unit-slip', { slip: slip.unit, converted: formatUnit(value * slip.factor, unit) })
      : report('out-of-range');
  }
  return whole && !Number.isInteger(value) ? report('not-whole') : undefined;
}

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  // The prototype’s prototype is looked at so that plain objects of another realm pass too.
  return prototype === null || Object.getPrototypeOf(prototype) === null;
};

const commonStart = (a: string, b: string): number => {
  let length = 0;
  while (length < a.length && a[length]?.toLowerCase() === b[length]?.toLowerCase()) length += 1;
  return length;
};

/**
 * Reads an input field by field, once, and gathers everything that is wrong with it.
 * What it returns for a wrong field is a placeholder: {@link Reader.done} throws before it is used.
 */
export class Reader {
  readonly #issues: InputIssue[];
  readonly #path: Path;
  readonly #known: string[] = [];
  readonly #children: Reader[] = [];
  #source: Readonly<Record<string, unknown>> | undefined;

  constructor(input: unknown, path: Path = [], issues: InputIssue[] = []) {
    this.#issues = issues;
    this.#path = path;
    try {
      if (isPlain(input)) this.#source = input;
      else issues.push(issue(input === undefined ? 'missing' : 'wrong-type', path, 'a plain object', describe(input)));
    } catch {
      issues.push(issue('unreadable', path, 'a plain object', 'an object'));
    }
  }

  #read(name: string, expected: string): unknown {
    this.#known.push(name);
    try {
      return this.#source && Object.hasOwn(this.#source, name) ? this.#source[name] : undefined;
    } catch {
      this.report('unreadable', name, expected, 'an error');
      this.#source = undefined;
      return undefined;
    }
  }

  /** Adds an issue of the caller’s own, such as a relation between two fields. */
  report(code: IssueCode, name: string, expected: string, received: string, values?: MessageValues): void {
    this.#issues.push(issue(code, [...this.#path, name], expected, received, values));
  }

  /** Whether every field read so far was right, so that relations between them may be looked at. */
  get fine(): boolean {
    return this.#issues.length === 0;
  }

  #number(name: string, quantity: Quantity, optional: boolean): number | undefined {
    const value = this.#read(name, expectedNumber(quantity));
    if (this.#source === undefined || (optional && value === undefined)) return undefined;
    const wrong = numberIssue(quantity, value, [...this.#path, name]);
    if (wrong === undefined) return value as number;
    this.#issues.push(wrong);
    return undefined;
  }

  number(name: QuantityName, quantity: Quantity = quantities[name]): number {
    return this.#number(name, quantity, false) ?? NaN;
  }

  optionalNumber(name: QuantityName, quantity: Quantity = quantities[name]): number | undefined {
    return this.#number(name, quantity, true);
  }

  optionalChoice<T extends string>(name: string, options: readonly T[]): T | undefined {
    const expected = `one of ${options.map((option) => `'${option}'`).join(', ')}`;
    const value = this.#read(name, expected);
    if (value === undefined || options.includes(value as T)) return value as T | undefined;
    this.report('not-one-of', name, expected, describe(value));
    return undefined;
  }

  choice<T extends string>(name: string, options: readonly T[]): T {
    const value = this.optionalChoice(name, options);
    if (value === undefined) this.#missing(name, `one of ${options.map((option) => `'${option}'`).join(', ')}`);
    return value ?? (options[0] as T);
  }

  optionalText(name: string, expected: string, accept: (text: string) => boolean): string | undefined {
    const value = this.#read(name, expected);
    if (value === undefined) return undefined;
    if (typeof value === 'string' && value.length <= MOST_ITEMS && accept(value)) return value;
    this.report('wrong-type', name, expected, describe(value));
    return undefined;
  }

  /** A nested object, read by a reader of its own that shares the list of issues. */
  child(name: string, expected = 'a plain object'): Reader {
    const reader = new Reader(this.#read(name, expected), [...this.#path, name], this.#issues);
    this.#children.push(reader);
    return reader;
  }

  has(name: string): boolean {
    return this.#read(name, 'a value') !== undefined;
  }

  /** A value of any kind as plain JSON of its own: nothing of the caller’s is kept or run later. */
  anything(name: string, expected: string): unknown {
    const value = this.#read(name, expected);
    if (value === undefined) {
      this.#missing(name, expected);
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
  optionalList(name: string, expected: string): Reader[] | undefined {
    const value = this.#read(name, expected);
    if (value === undefined) return undefined;
    const items = this.#items(name, value, expected);
    const readers = items.map((item, index) => new Reader(item, [...this.#path, name, index], this.#issues));
    this.#children.push(...readers);
    return readers;
  }

  /** A list of numbers of one quantity. */
  optionalNumbers(name: string, quantity: Quantity): number[] | undefined {
    const expected = `a list of numbers, each ${expectedNumber(quantity)}`;
    const value = this.#read(name, expected);
    if (value === undefined) return undefined;
    const items = this.#items(name, value, expected);
    for (const [index, item] of items.entries()) {
      const wrong = numberIssue(quantity, item, [...this.#path, name, index]);
      if (wrong) this.#issues.push(wrong);
    }
    return items as number[];
  }

  #items(name: string, value: unknown, expected: string): unknown[] {
    try {
      if (Array.isArray(value) && value.length > 0 && value.length <= MOST_ITEMS) return Array.from(value);
      const received = Array.isArray(value) ? `a list of ${value.length}` : describe(value);
      this.report('wrong-type', name, `${expected} (1 to ${MOST_ITEMS} of them)`, received);
    } catch {
      this.report('unreadable', name, expected, 'an error');
    }
    return [];
  }

  #missing(name: string, expected: string): void {
    const path = [...this.#path, name];
    const said = this.#issues.some((other) => other.path.length === path.length && other.path.at(-1) === name);
    if (this.#source && !said) this.report('missing', name, expected, 'undefined');
  }

  #unknown(): void {
    for (const child of this.#children) child.#unknown();
    let names: string[] = [];
    try {
      names = this.#source ? Object.keys(this.#source) : [];
    } catch {
      this.#issues.push(issue('unreadable', this.#path, 'a plain object', 'an error'));
    }
    for (const name of names) {
      if (this.#known.includes(name)) continue;
      const near = this.#known.find((known) => commonStart(known, name) >= Math.min(5, known.length));
      const expected = near ? `perhaps ${near}` : `one of ${this.#known.join(', ')}`;
      this.#issues.push(issue('unknown-field', [...this.#path, name.slice(0, 60)], expected, describe(name)));
    }
  }

  /** Refuses fields that nobody read, then throws if anything was wrong. */
  done(): void {
    this.#unknown();
    if (this.#issues.length > 0) throw new InputError(this.#issues);
  }
}
