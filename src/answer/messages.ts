/**
 * Every sentence the library says stands in a catalogue beside its code, one catalogue a floor, so that an app can
 * translate it. The code and the values are the interface; the English text is only its default wording.
 */
export type Catalogue = Readonly<Record<string, string>>;

/** The numbers and words that go into a sentence. */
export type MessageValues = Readonly<Record<string, string | number>>;

/** What is wrong with an input, and what every floor takes for granted. */
export const answerMessages = {
  missing: '{field} is missing: expected {expected}.',
  'wrong-type': '{field} must be {expected}; received {received}.',
  'not-finite': '{field} must be {expected}; received {received}, which is not a finite number.',
  'out-of-range': '{field} must be {expected}; received {received}.',
  'unit-slip': '{field} must be {expected}; received {received}. If that was {slip}, it is {converted} here.',
  'not-whole': '{field} must be {expected}; received {received}, which is not a whole number.',
  'not-one-of': '{field} must be {expected}; received {received}.',
  'unknown-field': '{field} is not a field here: expected {expected}.',
  unreadable: '{field} could not be read: expected {expected}; reading it threw an error.',
  'swapped-pressures':
    '{field} must be {expected}; received {received}. Are the systolic and diastolic pressures swapped?',
  'newer-document':
    '{field} must be {expected}; received {received}. The document was made by a newer version of the library.',
  'wrong-relation': '{field} must be {expected}; received {received}.',
  'changed-document':
    '{field} must be {expected}, as the rest of the document has it; received {received}. The document was changed by hand or cut short. Make it again from its request.',
  'normal-interval': 'The 95 % interval takes errors as normal: value ± 1.96 standard deviations.',
  'log-normal-interval':
    'The 95 % interval assumes errors that are shares of the value (log-normal): from value ÷ f to value × f, with f = exp(1.96 × standard deviation).',
} as const satisfies Catalogue;

/** The code of what is wrong with an input. */
export type IssueCode = keyof typeof answerMessages;

/**
 * Puts values into the `{slots}` of a sentence; for translated sentences too.
 *
 * @param text - a sentence with `{slots}`
 * @param values - what goes into them, by the name of the slot
 * @returns the sentence; a slot without a value stays as it is.
 *
 * @example
 * ```ts
 * import { fill } from 'cuffwork';
 * fill('{percent} % of {name}', { percent: 50, name: 'LOP' }); // => '50 % of LOP'
 * ```
 */
export function fill(text: string, values: MessageValues = {}): string {
  let filled = '';
  let from = 0;
  for (let open = text.indexOf('{'); open !== -1; open = text.indexOf('{', open + 1)) {
    const close = text.indexOf('}', open);
    if (close === -1) break;
    const slot = text.slice(open + 1, close);
    if (!Object.hasOwn(values, slot)) continue;
    filled += text.slice(from, open) + values[slot];
    from = close + 1;
    open = close;
  }
  return filled + text.slice(from);
}
