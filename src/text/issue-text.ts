import { pathText, type InputIssue } from '../answer/issues.js';
import { answerMessages, type IssueCode } from '../answer/messages.js';
import { amount, bareAmount, translating, type Translate } from '../answer/translate.js';
import { format } from '../quantity/format.js';
import type { Unit } from '../quantity/quantities.js';
import { words } from './texts.js';
import { explainWords } from './words.js';

/** As many options stand in a sentence. */
const MOST_SHOWN = 5;

/** What a field is called on a form; nothing where it has no name but that in the code. */
export function labelText(translate: Translate, name: string): string | undefined {
  const code = [`label.${name}`, `field.${name}`].find((one) => Object.hasOwn(words, one));
  return code === undefined ? undefined : translate(code, words[code as keyof typeof words]);
}

/** The name of the field that a path ends in, with the place where it is inside a list or an object. */
function fieldText(translate: Translate, path: InputIssue['path']): string {
  const name = [...path].reverse().find((step) => typeof step === 'string');
  const field = labelText(translate, name ?? '');
  if (field === undefined) return pathText(path);
  return path.length === 1
    ? field
    : translate('show.at-place', explainWords['show.at-place'], { field, place: pathText(path) });
}

/** Options as they are typed, with a word for each where there is one. */
function optionText(translate: Translate, option: string): string {
  const code = `value.${option}`;
  const own = Object.hasOwn(words, code) ? translate(code, words[code as keyof typeof words]) : option;
  return own === option ? `'${option}'` : `'${option}' (${own})`;
}

/** What was expected, from the data of the issue; its English words where it has no more. */
function expectedText(translate: Translate, found: InputIssue): string {
  const { code, min, max, unit, whole, options, suggestions = [], expected } = found;
  const word = translating(translate, explainWords);
  if (min !== undefined && max !== undefined && unit !== undefined) {
    return word(whole ? 'expected.whole' : 'expected.number', {
      min: bareAmount(translate, min, unit),
      max: amount(translate, max, unit),
    });
  }
  if (options === undefined) return expected;
  const isField = code === 'unknown-field';
  const list = (some: readonly string[]): string =>
    some.map((one) => (isField ? one : optionText(translate, one))).join(', ');
  const likely = suggestions.length > 0 ? list(suggestions) : undefined;
  if (isField && likely !== undefined) return word('expected.likely', { options: likely });
  const shown =
    options.length > MOST_SHOWN
      ? word('expected.some-of', { count: options.length, options: list(options.slice(0, MOST_SHOWN)) })
      : word('expected.one-of', { options: list(options) });
  return likely === undefined ? shown : word('expected.with-likely', { expected: shown, options: likely });
}

/** A number that was received, in your language and units; anything else as it is. */
function receivedText(translate: Translate, { received, unit }: InputIssue): string {
  const value = Number(received);
  if (unit === undefined || received.trim() === '' || !Number.isFinite(value)) return received;
  return amount(translate, value, unit satisfies Unit);
}

/** What is wrong with an input, as a sentence that names the field as people do. */
export function issueText(translate: Translate, found: InputIssue): string {
  const { code, path, values, message } = found;
  const english = answerMessages[code as IssueCode] as string | undefined;
  if (english === undefined) return message;
  return translate(code, english, {
    ...values,
    field: fieldText(translate, path),
    expected: expectedText(translate, found),
    received: receivedText(translate, found),
  });
}

/** How many more issues there are than are listed. */
export const moreText = (translate: Translate, count: number): string =>
  translate('more-issues', answerMessages['more-issues'], { count: format(count) });
