import type { Caution, Sentence, Severity } from '../answer/answer.js';
import type { CautionCode } from '../answer/codes.js';
import { fill, OWN_TEXT, type MessageValues } from '../answer/messages.js';
import { quantityName } from '../quantity/field-quantity.js';
import { format } from '../quantity/format.js';
import { quantities } from '../quantity/quantities.js';
import { leftOutNames } from '../session/messages.js';
import { documentMessages, type PlanCode } from './document-messages.js';
import { planMessages, planValueWords } from './messages.js';

const words: Readonly<Record<string, string>> = { ...planValueWords, ...leftOutNames };
const symptoms: Readonly<Record<string, string>> = planMessages;

type Value = MessageValues[string];

/** A value as an English sentence shows it: a number rounded for people, a code by its words. */
const inWords = (value: Value): string | number =>
  typeof value === 'number'
    ? Number(format(value))
    : isList(value)
      ? value.map(inWords).join(', ')
      : (words[`value.${value}`] ?? words[value] ?? symptoms[value] ?? value);
const isList = (value: Value): value is readonly string[] => Array.isArray(value);

/** A number in the values of a sentence, as people read it. */
const shown = (value: Value): Value => (typeof value === 'number' ? Number(format(value)) : value);

const mapped = (values: MessageValues, by: (value: Value) => Value): Record<string, Value> =>
  Object.fromEntries(
    Object.entries(values).map(([slot, value]) => [slot, OWN_TEXT.includes(slot) ? value : by(value)]),
  );

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
