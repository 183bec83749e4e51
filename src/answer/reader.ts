import { quantities, type Quantity, type QuantityName } from '../quantity/quantities.js';
import { numberIssue } from './field-reader.js';
import { addIssue, describe, describeLength, InputError } from './issues.js';
import { EACH_NUMBER, LIST_OF, need, TRUE_OR_FALSE, type Asked } from './needs.js';
import { isPart } from './part.js';
import { plainCopy, type Budget } from './plain-copy.js';
import { PlainReader } from './plain-reader.js';

const MOST_ITEMS = 1000;
/** Values in all items of a list together: some thousand records. */
const MOST_VALUES = 10_000_000;

const attemptCopy = (value: unknown, budget: Budget): unknown => {
  try {
    return plainCopy(value, budget);
  } catch {
    return undefined;
  }
};

/** A {@link PlainReader} that knows the vocabulary by its names, and reads objects and lists inside the input. */
export class Reader extends PlainReader {
  private readonly given = new Map<string, unknown>();
  private readonly children: Reader[] = [];

  protected override read(name: string): unknown {
    const value = super.read(name);
    if (value !== undefined) this.given.set(name, value);
    return value;
  }

  protected override refuseUnknown(): void {
    for (const child of this.children) child.refuseUnknown();
    super.refuseUnknown();
  }

  /** Whether a field that was read has a value, right or wrong. */
  has(name: string): boolean {
    return this.given.has(name);
  }

  /** Refuses a field that does not go with the others. */
  leaveOut(name: string, asked: Asked): void {
    if (this.has(name)) this.refuse(name, asked, describe(this.given.get(name)));
  }

  /** A field as it was given, for a caller that reads more than one kind of value there and trusts none. */
  raw(name: string): unknown {
    return this.read(name);
  }

  override number(name: QuantityName): number;
  /** A number of a quantity that has another name here. */
  override number(name: string, quantity: Quantity): number;
  override number(name: string, quantity: Quantity = quantities[name as QuantityName]): number {
    return super.number(name, quantity);
  }

  override optionalNumber(name: QuantityName): number | undefined;
  override optionalNumber(name: string, quantity: Quantity): number | undefined;
  override optionalNumber(name: string, quantity: Quantity = quantities[name as QuantityName]): number | undefined {
    return super.optionalNumber(name, quantity);
  }

  /** A field that is true or false; false where it is left out. */
  flag(name: string): boolean {
    const value = this.read(name);
    if (value !== undefined && typeof value !== 'boolean')
      this.report('wrong-type', name, TRUE_OR_FALSE, describe(value));
    return value === true;
  }

  text(name: string, expected: Asked, accept: (text: string) => boolean): string {
    const value = this.read(name);
    if (value === undefined) this.missing(name, expected);
    return this.acceptText(name, expected, accept, value) ?? '';
  }

  optionalText(name: string, expected: Asked, accept: (text: string) => boolean): string | undefined {
    return this.acceptText(name, expected, accept, this.read(name));
  }

  private acceptText(
    name: string,
    expected: Asked,
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
    // What could not be read is reported once: nothing inside it is missing too.
    const reader = new Reader(value, [...this.path, name], this.source ? this.issues : []);
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
    if (typeof value !== 'object' || value === null) return this.acceptNumber(name, quantities[name], value);
    const reader = this.nested(name, value);
    const read = parts.map((part) => [part, reader.acceptNumber(part, quantities[name], reader.read(part)) ?? NaN]);
    return Object.fromEntries(read) as Record<P, number>;
  }

  /** A field that is a text, or an object with a reader of its own. */
  textOrChild(name: string, expected: Asked, accept: (text: string) => boolean): string | Reader | undefined {
    const value = this.read(name);
    if (typeof value !== 'object' || value === null) return this.acceptText(name, expected, accept, value);
    return this.nested(name, value);
  }

  /** A list of nested objects. */
  optionalList(name: string, expected: Asked, most = MOST_ITEMS): Reader[] | undefined {
    const value = this.read(name);
    if (value === undefined) return undefined;
    const items = this.items(name, value, expected, most);
    const readers = items.map((item, index) => new Reader(item, [...this.path, name, index], this.issues));
    this.children.push(...readers);
    return readers;
  }

  /** A nested object whose fields have names of your own, each a nested object. */
  named(name: string, expected: Asked, most: number): (readonly [string, Reader])[] {
    const given = this.anything(name, expected);
    if (given === undefined) return [];
    const entries = isPart(given) ? Object.entries(given) : [];
    if (entries.length === 0 || entries.length > most) {
      this.report('wrong-type', name, expected, isPart(given) ? String(entries.length) : describe(given));
      return [];
    }
    return entries.map(([key, value]) => {
      const reader = new Reader(value, [...this.path, name, key], this.issues);
      this.children.push(reader);
      return [key, reader];
    });
  }

  /** A list of values of any kind as they are given, for a caller that trusts none and copies what it needs. */
  rawValues(name: string, expected: Asked): unknown[] {
    const value = this.read(name);
    if (value === undefined) this.missing(name, expected);
    return value === undefined ? [] : this.items(name, value, expected);
  }

  /** A list of values of any kind, each as plain JSON of its own; a value that is not plain JSON is undefined. */
  values(name: string, expected: Asked): unknown[] {
    const budget = { left: MOST_VALUES };
    return this.rawValues(name, expected).map((item) => attemptCopy(item, budget));
  }

  /** A list of numbers of one quantity. */
  optionalNumbers(name: string, quantity: Quantity): number[] | undefined {
    const value = this.read(name);
    if (value === undefined) return undefined;
    const { min, max, unit } = quantity;
    const items = this.items(name, value, need(EACH_NUMBER, { min, max, unit }));
    for (const [index, item] of items.entries()) {
      const wrong = numberIssue(quantity, item, [...this.path, name, index]);
      if (wrong) addIssue(this.issues, wrong);
    }
    return items as number[];
  }

  private items(name: string, value: unknown, expected: Asked, most = MOST_ITEMS): unknown[] {
    try {
      if (!Array.isArray(value)) {
        this.report('wrong-type', name, expected, describe(value));
        return [];
      }
      // Read once: a proxy may give another length each time, and your own iterator may never end.
      const { length } = value;
      if (length > 0 && length <= most) return Array.from({ length }, (_, index): unknown => value[index]);
      this.report('wrong-type', name, need(LIST_OF, { least: 1, most }), describeLength(length));
    } catch (error) {
      if (error instanceof InputError) throw error;
      this.report('unreadable', name, expected, 'an error');
    }
    return [];
  }
}
