import type * as z from 'zod/mini';
import { fieldIssue, numberIssue, optionIssue } from '../answer/field-reader.js';
import { describe, InputError, issue, MOST_ISSUES, type InputIssue, type Path } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { quantityName } from '../quantity/field-quantity.js';
import { quantities } from '../quantity/quantities.js';
import {
  AT_LEAST,
  DAY_EXPECTED,
  AT_MOST,
  FINITE,
  need,
  PLAIN_OBJECT,
  TRUE_OR_FALSE,
  type Asked,
  type Need,
} from '../answer/needs.js';
import {
  A_LIST,
  A_TEXT,
  A_WHOLE_NUMBER,
  THE_SAME,
  OF_TYPE,
  OF_ONE_FORM,
  LEAST_LENGTH,
  MOST_LENGTH,
  TEXT_OF,
  WORDING_OF,
  LINE_OF,
  POINTER,
  VERSION,
  TRUE_OR_NOT,
} from './needs.js';
import { TEMPO_PHASES } from '../session/needs.js';

const PATTERNS: readonly Need[] = [TEXT_OF, WORDING_OF, LINE_OF, DAY_EXPECTED, TEMPO_PHASES, POINTER, VERSION];

const at = (root: unknown, path: Path): unknown =>
  path.reduce((value, part) => (value as Readonly<Record<string | number, unknown>>)[part], root);

/** What of a schema’s definition leads further in. */
export interface Shaped {
  readonly _zod: {
    readonly def: {
      readonly shape?: Readonly<Record<string, Shaped>>;
      readonly element?: Shaped;
      readonly innerType?: Shaped;
      readonly options?: readonly Shaped[];
    };
  };
}

/**
 * The fields that a schema knows, by name; of a list what its items are, as `*`. Nothing where any name may stand, as
 * in the inputs of an answer. What may be one of several has the fields of them all.
 */
export function fieldsOf(schema: Shaped | undefined): Readonly<Record<string, Shaped>> | undefined {
  const { innerType, element, shape, options } = schema?._zod.def ?? {};
  if (innerType) return fieldsOf(innerType);
  if (element) return { '*': element };
  if (options) {
    const all = options.flatMap((one) => Object.entries(fieldsOf(one) ?? {}));
    // A field of several forms is one of several itself.
    const ofName = new Map<string, readonly Shaped[]>();
    for (const [name, one] of all) ofName.set(name, [...(ofName.get(name) ?? []), one]);
    const joined = (some: readonly Shaped[]): Shaped => (some[1] ? { _zod: { def: { options: some } } } : some[0]!);
    return Object.fromEntries(Array.from(ofName, ([name, some]) => [name, joined(some)]));
  }
  // What declares no field may have any.
  return shape && Object.keys(shape).length > 0 ? shape : undefined;
}

/** The names of the fields that a schema has at a place. */
const fieldsAt = (schema: Shaped, path: Path): string[] =>
  Object.keys(
    fieldsOf(
      path.reduce<Shaped | undefined>((one, part) => fieldsOf(one)?.[typeof part === 'number' ? '*' : part], schema),
    ) ?? {},
  );

/** What is asked for where the type is wrong, as everywhere else. */
const TYPES: Readonly<Record<string, Asked>> = {
  object: PLAIN_OBJECT,
  array: A_LIST,
  string: A_TEXT,
  number: FINITE,
  int: A_WHOLE_NUMBER,
  boolean: TRUE_OR_FALSE,
};
const ofType = (type: string): Asked => TYPES[type] ?? need(OF_TYPE, { types: type });

/** The types that one of several forms may have. */
const formsOf = ({ errors }: z.core.$ZodIssueInvalidUnion): Asked => {
  const types = [...new Set(errors.flatMap(([first]) => (first?.code === 'invalid_type' ? [first.expected] : [])))];
  if (types.length === 1) return ofType(types[0]!);
  return types.length > 0 ? need(OF_TYPE, { types: types.join(' | ') }) : OF_ONE_FORM;
};

/** What a pattern asks for: the message of a schema is its code, and the most characters. */
function patternOf(message: string): Asked {
  const [code, most] = message.split(' ');
  const asked = PATTERNS.find(([own]) => own === code) ?? OF_ONE_FORM;
  return most === undefined ? asked : need(asked, { most: Number(most) });
}

function expectedOf(found: z.core.$ZodIssue): Asked {
  switch (found.code) {
    case 'invalid_type':
      return ofType(found.expected);
    case 'too_small':
      return need(found.origin === 'array' ? LEAST_LENGTH : AT_LEAST, { least: Number(found.minimum) });
    case 'too_big':
      return found.origin === 'array'
        ? need(MOST_LENGTH, { most: Number(found.maximum) })
        : need(AT_MOST, { value: Number(found.maximum) });
    case 'invalid_union':
      return formsOf(found);
    default:
      return patternOf(found.message);
  }
}

/** What is wrong with a number of the vocabulary, which is checked as everywhere else. */
function wrongNumber(found: z.core.$ZodIssue, path: Path, value: unknown): InputIssue | undefined {
  // Totals and answers share names with fields; only where the schema wants a number is the field one.
  const wantsNumber =
    found.code === 'invalid_type'
      ? found.expected === 'number' || found.expected === 'int'
      : found.code === 'too_small' || found.code === 'too_big';
  const name = path.at(-1);
  // The ends of a range are of the field that it is the range of.
  const quantity = quantityName(name === 'from' || name === 'to' ? path.at(-2) : name);
  return wantsNumber && quantity ? numberIssue(quantities[quantity], value, path) : undefined;
}

/** Of several forms, what is wrong with the one that was meant: text of text, an object of an object. */
const wrongForm = ({ errors, path }: z.core.$ZodIssueInvalidUnion): readonly z.core.$ZodIssue[] | undefined =>
  errors
    .filter((all) => !all.some((one) => one.path.length === 0 && one.code === 'invalid_type'))
    .sort((a, b) => a.length - b.length)[0]
    ?.map((one) => ({ ...one, path: [...path, ...one.path] }));

/** What a schema finds wrong, in the words of the library. */
function translate(found: z.core.$ZodIssue, root: unknown, schema: Shaped): InputIssue[] {
  const path = found.path as Path;
  const value = at(root, path);
  const number = wrongNumber(found, path, value);
  if (number) return [number];
  if (found.code === 'unrecognized_keys') {
    const known = fieldsAt(schema, path);
    // What another form of the same field has is none of this one.
    return found.keys.map((key, index) =>
      fieldIssue(path, index < MOST_ISSUES ? known.filter((name) => name !== key) : [], key),
    );
  }
  if ('options' in found && found.options) return [optionIssue(path, found.options.map(String), value)];
  const ofForm = found.code === 'invalid_union' ? wrongForm(found) : undefined;
  if (ofForm) return ofForm.flatMap((one) => translate(one, root, schema));
  // A word has a length too, where a list is asked for: the issue that it is no list is enough.
  if ((found.code === 'too_big' || found.code === 'too_small') && found.origin === 'string') return [];
  if (found.code !== 'invalid_value') return [issue('wrong-type', path, expectedOf(found), describe(value))];
  const [only] = found.values;
  if (typeof only === 'string') return [optionIssue(path, found.values.map(String), value)];
  const asked = only === true ? TRUE_OR_NOT : need(THE_SAME, { value: String(only) });
  return [issue('not-one-of', path, asked, describe(value))];
}

/** The document as it was given, its fields in the order given, or what is wrong with it. */
export function parseDocument<T>(
  declared: () => z.ZodMiniType<T>,
  document: object,
): { value?: T; issues: InputIssue[] } {
  const schema = declared();
  const parsed = schema.safeParse(document);
  return parsed.success
    ? { value: document as T, issues: [] }
    : { issues: parsed.error.issues.flatMap((found) => translate(found, document, schema as unknown as Shaped)) };
}

/** A reader of a request by its schema: as plain JSON of the library’s own, or an {@link InputError}. */
export const requestReader =
  <T>(schema: () => z.ZodMiniType<T>, expected: Asked) =>
  (given: unknown): T => {
    const { value, issues } = parseDocument(schema, plainInput(given, expected));
    if (value === undefined) throw new InputError(issues);
    return value;
  };
