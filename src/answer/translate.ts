import { format, unitWords } from '../quantity/format.js';
import type { Unit } from '../quantity/quantities.js';
import { fill, type Catalogue, type MessageValues } from './messages.js';

/**
 * The sentence of a code: the English text, or your own for that code, with values in its slots.
 */
export type Translate = (code: string, english: string, values?: MessageValues) => string;

/** Says everything in English. */
export const english: Translate = (_code, text, values) => fill(text, values);

/** The words of one table, by their codes alone. */
export const translating =
  <T extends Catalogue>(translate: Translate, table: T) =>
  (code: keyof T & string, values?: MessageValues): string =>
    translate(code, table[code]!, values);

/** A sentence of a document: as it is there, unless you give your own. */
export const sentence = (
  translate: Translate,
  { code, text, values }: { readonly code: string; readonly text: string; readonly values?: MessageValues },
): string => translate(code, '', values) || text;

/** A word that is its own English code, such as a posture or a grade. */
export const named = (translate: Translate, family: 'severity' | 'grade' | 'part' | 'value', id: string): string =>
  translate(`${family}.${id}`, id);

/** A number with its unit, in your language. */
export const amount = (translate: Translate, value: number, unit: Unit): string =>
  format(value) + translate(`unit.${unit}`, unitWords[unit]);
