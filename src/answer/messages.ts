import { format, inPractice, unitWords } from '../quantity/format.js';
import type { Unit } from '../quantity/quantity.js';

/**
 * Every sentence of the library is in a catalogue with its code, one catalogue a layer, so that an app can
 * translate it. The code and the values are the interface; the English text is only its default wording.
 */
export type Catalogue = Readonly<Record<string, string>>;

/** The codes and numbers that go into a sentence. */
export type MessageValues = Readonly<Record<string, string | number | readonly string[]>>;

/** What is wrong with an input. */
export const answerMessages = {
  missing: '{field} is missing: it must be {expected}.',
  'wrong-type': '{field} must be {expected}; received {received}.',
  'not-finite': '{field} must be {expected}; received {received}, which is not a finite number.',
  'out-of-range': '{field} must be {expected}; received {received}.',
  'unit-slip': '{field} must be {expected}; received {received}. If that was {slip}, it is {converted:unit} here.',
  'not-whole': '{field} must be {expected}; received {received}, which is not a whole number.',
  'not-one-of': '{field} must be {expected}; received {received}.',
  'unknown-field': '{field} is not a field here.',
  unreadable: '{field} could not be read: expected {expected}; reading it threw an error.',
  'swapped-pressures':
    '{field} must be {expected}; received {received}. Are the systolic and diastolic pressures swapped?',
  'newer-document':
    '{field} must be {expected}; received {received}. The document was made by a newer version of the library.',
  'wrong-relation': '{field} must be {expected}; received {received}.',
  'changed-document':
    '{field} must be {expected}, as the rest of the document has it; received {received}. This field, or one it follows from, was changed or cut short. Use the original, or make a new one.',
  'did-you-mean': 'Did you mean {options}?',
  'fields-here': 'Expected {expected}.',
  'more-issues': '… and {count} more.',
} as const satisfies Catalogue;

/** The code of what is wrong with an input. */
export type IssueCode = Exclude<keyof typeof answerMessages, 'more-issues' | 'did-you-mean' | 'fields-here'>;

/** How a number of a sentence is written, with the unit of its code where it has one; `digits` are its English ones. */
export type WriteNumber = (value: number, unit: string, digits: string) => string;

const inEnglish: WriteNumber = (_, unit, digits) => digits + (unit && (unitWords[unit as Unit] ?? ` ${unit}`));
const isNumber = (value: unknown): value is number => typeof value === 'number';

/**
 * Puts values into the `{slots}` of a sentence; a slot without a value stays as it is. A slot `{reached:%}` is a number
 * that was worked out, with its unit, a UCUM code, and the digits that people use. `{load:unit}` was given: the value
 * `unit` holds its code; without one it is written in full, since rounded it may read as another that you gave.
 */
export const fill = (text: string, values: MessageValues = {}, write = inEnglish): string =>
  text.replace(/\{([^{}:]+):?([^{}]*)\}/g, (slot, name: string, unit: string) => {
    const value = Object.hasOwn(values, name) ? (values[name] ?? slot) : slot;
    if (isNumber(value)) {
      const isGiven = unit === 'unit';
      const code = isGiven ? String(values[unit] ?? '') : unit;
      const given = code ? format : String;
      const digits = isGiven ? given(value) : inPractice(value, code, Object.values(values).filter(isNumber));
      return write(value, code, digits);
    }
    // A document that was edited may hold anything.
    return Array.isArray(value) ? value.join(', ') : String(value);
  });
