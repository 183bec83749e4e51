import type { InputField } from '../answer/form.js';
import { isPart } from '../answer/part.js';
import { plainInput } from '../answer/plain-input.js';
import { describe, refuse } from '../answer/issues.js';
import { choiceText, expectedText, labelText } from './issue-text.js';
import { FIELDS } from './needs.js';
import { textIfKnown, textOptions, type TextOptions } from './translator.js';

/** A field of a form with its words. */
export interface LabelledField extends InputField {
  /** What the field is called; its name in the code where it has no other. */
  readonly label: string;
  /** What each option is called, in the order of `options`. */
  readonly choices?: readonly {
    /** The option, as the function takes it. */
    readonly value: string;
    /** What to show for it. */
    readonly text: string;
  }[];
}

/**
 * Fields of a form with labels, units, places on the body, what each takes, and a text for each option, in your language.
 *
 * @param fields - what `inputFields` of cuffwork gives
 * @param options - `locale`, such as `de` of cuffwork/explain/de; English when left out
 * @returns the fields in the same order; an option without a text of its own is shown as it is.
 * @throws InputError for what is no list of fields, and for options that are not known
 *
 * @example
 * ```ts
 * import { estimateOcclusionPressure, inputFields } from 'cuffwork';
 * import { labelFields } from 'cuffwork/explain';
 * import { de } from 'cuffwork/explain/de';
 * const fields = labelFields(inputFields(estimateOcclusionPressure), { locale: de });
 * const posture = fields.find(({ name }) => name === 'posture');
 * posture?.label; // => 'Körperposition'
 * posture?.choices?.[1]; // => { value: 'seated', text: 'sitzend' }
 * ```
 */
export function labelFields(fields: readonly InputField[], options: Pick<TextOptions, 'locale'> = {}): LabelledField[] {
  const translate = textOptions(options, 'labelFields');
  const given: unknown = plainInput(fields, FIELDS);
  const isField = (field: unknown): field is InputField => isPart(field) && typeof field['name'] === 'string';
  if (!Array.isArray(given) || !given.every(isField)) refuse('wrong-type', ['fields'], FIELDS, describe(given));
  return given.map((field) => ({
    ...field,
    label: labelText(translate, field.name) ?? field.name,
    expected: expectedText(translate, field),
    ...(field.unitText !== undefined && {
      unitText: textIfKnown(translate, `unit.${String(field.unit)}`)?.trim() ?? field.unitText,
    }),
    ...(field.where !== undefined && { where: textIfKnown(translate, `where.${field.name}`) ?? field.where }),
    ...(Array.isArray(field.options) && {
      choices: field.options.map((value) => ({ value, text: choiceText(translate, String(value)) })),
    }),
  }));
}
