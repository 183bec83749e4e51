import type { Caution, Sentence, Severity } from '../answer/answer.js';
import type { CautionCode } from '../answer/codes.js';
import { fill, type MessageValues } from '../answer/messages.js';
import { quantityName } from '../quantity/field-quantity.js';
import { format } from '../quantity/format.js';
import { quantities } from '../quantity/quantities.js';
import { leftOutNames } from '../session/messages.js';
import { documentMessages, type PlanCode } from './document-messages.js';
import { planMessages, planValueWords } from './messages.js';

/** Words of the codes in values, symptoms among them. */
const words: Readonly<Record<string, string>> = { ...planMessages, ...planValueWords, ...leftOutNames };

type Value = MessageValues[string];

/** A value as an English sentence shows it: a code by its words; a number is rounded as the sentence is filled. */
const inWords = (value: Value): string | number => {
  if (Array.isArray(value)) return value.map(inWords).join(', ');
  return typeof value === 'string' ? (words[`value.${value}`] ?? words[value] ?? value) : (value as number);
};

/** A number in the values of a sentence, as people read it. */
const shown = (value: Value): Value => (typeof value === 'number' ? Number(format(value)) : value);

/** The values of a sentence, each by a function; the name of an exercise is yours, and no code. */
const mapped = (values: MessageValues, by: (value: Value) => Value): Record<string, Value> =>
  Object.fromEntries(Object.entries(values).map(([slot, value]) => [slot, slot === 'exercise' ? value : by(value)]));

/** A sentence with the words of its values, of a field its name. */
export function filled(sentence: string, values: MessageValues): string {
  const quantity = quantityName(values['field']);
  return fill(sentence, { ...mapped(values, inWords), ...(quantity && { field: quantities[quantity].name }) });
}

/** A sentence whose values are codes and numbers; its text has their words. */
export const coded = (code: PlanCode, values?: MessageValues): Sentence =>
  values
    ? { code, text: filled(documentMessages[code], values), values: mapped(values, shown) }
    : { code, text: documentMessages[code] };

/** A caution whose values are codes and numbers; its text has their words. */
export const codedCaution = (
  severity: Severity,
  code: PlanCode & CautionCode,
  values?: MessageValues,
  more?: Pick<Caution, 'path' | 'source'>,
): Caution => ({ severity, ...coded(code, values), code, ...more });
