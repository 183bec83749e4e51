import { describe, InputError, issue, type InputIssue } from '../answer/issues.js';
import { fill as filled, type MessageValues } from '../answer/messages.js';
import { plainInput } from '../answer/plain-input.js';
import { need } from '../answer/needs.js';
import { SLOT_VALUES, SHORT_TEXT, NUMBER_OR_TEXT } from './needs.js';

const LONGEST = 10_000;
const isShort = (value: unknown): value is string => typeof value === 'string' && value.length <= LONGEST;

/**
 * Puts values into the `{slots}` of a sentence; for translated sentences too.
 *
 * @param text - a sentence with `{slots}`
 * @param values - what goes into them, by the name of the slot
 * @returns the sentence; a slot without a value stays as it is.
 * @throws InputError for what is no text, or holds a value that is neither text nor a number
 *
 * @example
 * ```ts
 * import { fill } from 'cuffwork/explain';
 * fill('{percent} % of {name}', { percent: 50, name: 'LOP' }); // => '50 % of LOP'
 * ```
 */
export function fill(text: string, values: MessageValues = {}): string {
  const given = plainInput(values, SLOT_VALUES) as MessageValues;
  const issues: InputIssue[] = isShort(text)
    ? []
    : [issue('wrong-type', ['text'], need(SHORT_TEXT, { most: LONGEST }), describe(text))];
  for (const [name, value] of Object.entries(given)) {
    if (typeof value === 'number' || isShort(value)) continue;
    issues.push(issue('wrong-type', ['values', name], need(NUMBER_OR_TEXT, { most: LONGEST }), describe(value)));
  }
  if (issues.length > 0) throw new InputError(issues);
  return filled(text, given);
}
