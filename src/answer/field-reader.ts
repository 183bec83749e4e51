import { format, unitWords } from '../quantity/format.js';
import type { Quantity } from '../quantity/quantities.js';
import { addIssue, describe, InputError, issue, type InputIssue, type Path } from './issues.js';
import type { IssueCode, MessageValues } from './messages.js';
import { PLAIN_OBJECT, READABLE, VISIBLE_FIELD, type Asked } from './needs.js';
import { isPart, isPlain } from './part.js';
import { MOST_SHOWN, suggest } from './suggest.js';

/** What a number must be, in words. */
const expectedNumber = ({ min, max, unit, whole }: Quantity): string =>
  `${whole ? 'a whole number' : 'a number'} from ${min} to ${max}${unitWords[unit]}`;

const within = ({ min, max }: Quantity, value: number): boolean => value >= min && value <= max;

const fits = (quantity: Quantity, value: unknown): boolean =>
  typeof value === 'number' && within(quantity, value) && (!quantity.whole || Number.isInteger(value));

/** What is wrong with a value given for a quantity, with the likely slip where there is one. */
export function numberIssue(quantity: Quantity, value: unknown, path: Path): InputIssue | undefined {
  if (fits(quantity, value)) return undefined;
  const { min, max, unit, whole } = quantity;
  const report = (code: IssueCode, values?: MessageValues) =>
    issue(code, path, { expected: expectedNumber(quantity) }, describe(value), values, {
      min,
      max,
      unit,
      ...(whole && { whole }),
    });
  if (typeof value !== 'number') return report('wrong-type');
  if (!Number.isFinite(value)) return report('not-finite');
  if (within(quantity, value)) return report('not-whole');
  const slip = quantity.slips?.find(({ factor }) => within(quantity, value * factor));
  return slip
    ? report('unit-slip', { slip: slip.unit, converted: Number(format(value * slip.factor)), unit })
    : report('out-of-range');
}

const isShown = (object: object, name: string): boolean => Object.prototype.propertyIsEnumerable.call(object, name);

/** Some of many options, in words; one alone as it is. */
const among = (options: readonly string[], noun: string): string =>
  options.length > MOST_SHOWN
    ? `one of ${options.length} ${noun}, such as ${options.slice(0, MOST_SHOWN).join(', ')}`
    : (options.length === 1 ? '' : 'one of ') + options.join(', ');

/** A field that is not known here, with those it was likely meant for. */
export function fieldIssue(path: Path, known: readonly string[], name: string): InputIssue {
  const suggestions = suggest(name, known);
  return issue('unknown-field', [...path, name], { expected: among(known, 'fields') }, describe(name), undefined, {
    options: [...known],
    suggestions,
  });
}

/** A value that is none of the options, with those it was likely meant for. */
export function optionIssue(path: Path, options: readonly string[], value: unknown): InputIssue {
  const suggestions = suggest(value, options);
  const many = options.length > MOST_SHOWN && suggestions.length > 0;
  const quoted = options.map((option) => `'${option}'`);
  const expected = many ? `one of ${options.length} options` : among(quoted, 'options');
  return issue('not-one-of', path, { expected }, describe(value), undefined, { options: [...options], suggestions });
}

const NOTHING: readonly string[] = [];

/**
 * Reads an input field by field, once, and gathers everything that is wrong with it. A right input costs no more
 * than its fields: words are made only for what is wrong.
 *
 * What it returns for a wrong field is a placeholder: {@link FieldReader.done} throws before it is used.
 */
export class FieldReader {
  protected readonly issues: InputIssue[];
  protected readonly path: Path;
  private readonly known: string[] = [];
  protected source: Readonly<Record<string, unknown>> | undefined;
  /** The fields present, and how many of them were read, including as undefined. */
  private names: readonly string[] = NOTHING;
  private found = 0;

  constructor(input: unknown, path: Path = NOTHING, issues: InputIssue[] = []) {
    this.issues = issues;
    this.path = path;
    try {
      if (isPart(input) && isPlain(input)) {
        this.names = Object.getOwnPropertyNames(input);
        const symbols = Object.getOwnPropertySymbols(input);
        // A field that no loop shows is a slip: it would be taken here, and lost wherever the input is copied.
        if (symbols.length === 0 && Object.keys(input).length === this.names.length) this.source = input;
        else {
          const hidden = this.names.filter((name) => !isShown(input, name));
          for (const name of [...hidden, ...symbols]) this.refuseHidden(String(name));
        }
      } else {
        this.report('wrong-type', [], PLAIN_OBJECT, describe(input));
      }
    } catch (error) {
      if (error instanceof InputError) throw error;
      this.source = undefined;
      this.report('unreadable', [], PLAIN_OBJECT, 'an object');
    }
  }

  private refuseHidden(name: string): void {
    this.report('wrong-type', name, VISIBLE_FIELD, 'a hidden field');
  }

  protected read(name: string): unknown {
    this.known.push(name);
    // Once every field there is was found, the others need no looking for.
    if (this.source === undefined || this.found === this.names.length) return undefined;
    try {
      if (!Object.hasOwn(this.source, name)) return undefined;
      this.found += 1;
      const value = this.source[name];
      // A setter alone takes a value and shows none.
      if (value === undefined && Object.getOwnPropertyDescriptor(this.source, name)?.set) this.refuseHidden(name);
      return value;
    } catch (error) {
      if (error instanceof InputError) throw error;
      this.report('unreadable', name, READABLE, 'an error');
      this.source = undefined;
      return undefined;
    }
  }

  /** Adds an issue that no single field shows. */
  report(code: IssueCode, name: string | Path, expected: Asked, received?: string, values?: MessageValues): void {
    addIssue(this.issues, issue(code, this.path.concat(name), expected, received, values));
  }

  /** Adds that a field does not go with the others. */
  refuse(name: string | Path, expected: Asked, received?: string): void {
    this.report('wrong-relation', name, expected, received);
  }

  /** Whether every field read so far was right, so that relations between them may be looked at. */
  get fine(): boolean {
    return this.issues.length === 0;
  }

  /** A number that was read before; `undefined` where it is wrong. */
  acceptNumber(name: string | Path, quantity: Quantity, value: unknown): number | undefined {
    // Plus nothing: −0 becomes 0, as JSON has it.
    if (fits(quantity, value)) return (value as number) + 0;
    if (this.source) addIssue(this.issues, numberIssue(quantity, value, this.path.concat(name))!);
    return undefined;
  }

  number(name: string, quantity: Quantity): number {
    return this.acceptNumber(name, quantity, this.read(name)) ?? NaN;
  }

  optionalNumber(name: string, quantity: Quantity): number | undefined {
    const value = this.read(name);
    return value === undefined ? undefined : this.acceptNumber(name, quantity, value);
  }

  /** A word that was read before; `undefined` where it is wrong. */
  acceptChoice<T extends string>(name: string | Path, options: readonly T[], value: unknown): T | undefined {
    if (options.includes(value as T)) return value as T;
    if (value !== undefined || this.source) addIssue(this.issues, optionIssue(this.path.concat(name), options, value));
    return undefined;
  }

  optionalChoice<T extends string>(name: string, options: readonly T[]): T | undefined {
    const value = this.read(name);
    return value === undefined ? undefined : this.acceptChoice(name, options, value);
  }

  choice<T extends string>(name: string, options: readonly T[]): T {
    return this.acceptChoice(name, options, this.read(name)) ?? (options[0] as T);
  }

  protected refuseUnknown(): void {
    if (this.found === this.names.length || !this.source) return;
    const unknown = this.names.filter((name) => !this.known.includes(name));
    for (const name of unknown) addIssue(this.issues, fieldIssue(this.path, this.known, name));
    // A field that was there at first, and not when it was read.
    if (unknown.length === 0) this.report('unreadable', [], PLAIN_OBJECT, 'an error');
  }

  /** Refuses fields that nobody read, then throws if anything was wrong. */
  done(): void {
    this.refuseUnknown();
    if (this.issues.length > 0) throw new InputError(this.issues);
  }
}
