import type { InputField } from '../answer/form.js';
import { pathText, type InputIssue } from '../answer/issues.js';
import { answerMessages, type IssueCode } from '../answer/messages.js';
import { marked } from '../answer/translate.js';
import { format, inFull } from '../quantity/format.js';
import { inSystem, inwards, type WrittenUnit } from '../quantity/unit-system.js';
import { textIfKnown, type Translator } from './translator.js';
import { likeliest, MOST_SHOWN } from '../answer/suggest.js';

/** What a field is called on a form; nothing where it has no name but that in the code. */
export function labelText(translate: Translator, name: string): string | undefined {
  return textIfKnown(translate, `label.${name}`) ?? textIfKnown(translate, `field.${name}`);
}

const ENDS: readonly string[] = ['from', 'to'];

/** The name of the field that a path ends in, with the place where it is inside a list or an object. */
function fieldText(translate: Translator, path: InputIssue['path']): string {
  if (path.length === 0) return translate('show.whole-input');
  // The ends of a range are of the field that it is the range of.
  const name = [...path].reverse().find((step) => typeof step === 'string' && !ENDS.includes(step)) as string;
  const field = labelText(translate, name ?? '');
  if (field === undefined) return pathText(path);
  return path.length === 1 ? field : translate('show.at-place', { field, place: pathText(path) });
}

/** What an option of a field is called; the option itself where it has no other name. */
export const choiceText = (translate: Translator, option: string): string =>
  textIfKnown(translate, `choice.${option}`) ?? textIfKnown(translate, `value.${option}`) ?? option;

/** An option as it is typed, with a word for it where there is one; a field by its name alone. */
function optionText(translate: Translator, issue: string | undefined, option: string): string {
  if (issue === 'unknown-field') return option;
  const own = choiceText(translate, option);
  return own === option ? `'${option}'` : `'${option}' (${own})`;
}

/** Bounds as they are written: in full; where they are converted, what they allow is allowed. */
function writtenBounds({ units }: Translator, min: number, max: number, unit: WrittenUnit) {
  const [lowest, highest] = [inSystem(min, unit, units), inSystem(max, unit, units)];
  const [low, high] = highest.unit === unit ? [min, max] : inwards(lowest.value, highest.value);
  return { low, high, unit: highest.unit };
}

/** A number in full, with its unit: rounded, it may read as one that is allowed, or as a bound that allows more. */
const fullAmount = (translate: Translator, value: number, unit: WrittenUnit): string =>
  marked(translate, inFull(value)) + translate(`unit.${unit}`);

function boundsText(translate: Translator, min: number, max: number, own: WrittenUnit, whole = false): string {
  const { low, high, unit } = writtenBounds(translate, min, max, own);
  return translate(whole ? 'expected.whole' : 'expected.number', {
    min: marked(translate, inFull(low)),
    max: fullAmount(translate, high, unit),
  });
}

/** What was expected of an issue or a field of a form, from its data; its English words where it has no more. */
export function expectedText(
  translate: Translator,
  found: Omit<InputField, 'name' | 'required'> & Partial<Pick<InputIssue, 'code' | 'requirement'>>,
): string {
  const { code, min, max, unit, whole, options, expected, requirement } = found;
  if (requirement) {
    const { field, fields } = requirement.values ?? {};
    const labelled = (name: string): string => labelText(translate, name) ?? name;
    const values = {
      ...requirement.values,
      ...(typeof field === 'string' && { field: labelled(field) }),
      ...(Array.isArray(fields) && { fields: fields.map(labelled) }),
    };
    return textIfKnown(translate, `requirement.${requirement.code}`, values) ?? expected;
  }
  if (typeof min === 'number' && typeof max === 'number' && unit !== undefined) {
    return boundsText(translate, min, max, unit, whole);
  }
  if (options === undefined) return expected;
  if (options.length === 1) return optionText(translate, code, options[0]!);
  const list = (some: readonly string[]): string => some.map((one) => optionText(translate, code, one)).join(', ');
  return options.length > MOST_SHOWN
    ? translate('expected.some-of', { count: options.length, options: list(options.slice(0, MOST_SHOWN)) })
    : translate('expected.one-of', { options: list(options) });
}

/** What was received: a number in your language and units, or a word for what is no value. */
function receivedText(translate: Translator, { received, unit, min, max }: InputIssue): string {
  const [count = ''] = /\d+$/.exec(received) ?? [];
  const word = received.slice(0, received.length - count.length) + (count && '{count}');
  const known = textIfKnown(translate, `received.${word}`, { count });
  if (known !== undefined) return known;
  const value = Number(received);
  if (unit === undefined || received.trim() === '' || !Number.isFinite(value))
    return received.startsWith('"') ? received : marked(translate, received);
  const written = inSystem(value, unit, translate.units);
  if (written.unit === unit) return fullAmount(translate, value, unit);
  // A conversion is rounded, except where it would then read as one that is allowed.
  const bounds = min !== undefined && max !== undefined && writtenBounds(translate, min, max, unit);
  const rounded = Number(format(written.value));
  const isAllowed = bounds && rounded >= bounds.low && rounded <= bounds.high;
  return fullAmount(translate, isAllowed ? written.value : rounded, written.unit);
}

/** What is wrong with an input, as a sentence that names the field as people do. */
export function issueText(translate: Translator, found: InputIssue): string {
  const { code, path, values, message } = found;
  const english = answerMessages[code as IssueCode] as string | undefined;
  if (english === undefined) return message;
  const slots = {
    ...values,
    field: fieldText(translate, path),
    expected: expectedText(translate, found),
    received: receivedText(translate, found),
    options: likeliest(found.received, found.suggestions)
      .map((one) => optionText(translate, code, one))
      .join(', '),
  };
  const hint =
    slots.options !== '' ? 'did-you-mean' : code === 'unknown-field' && found.options?.[0] ? 'fields-here' : undefined;
  const sentence = translate(code, english, slots);
  return hint ? `${sentence} ${translate(hint, answerMessages[hint], slots)}` : sentence;
}

/** How many more issues there are than are listed. */
export const moreText = (translate: Translator, count: number): string =>
  translate('more-issues', { count: format(count) });
