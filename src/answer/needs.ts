import { fill, type MessageValues } from './messages.js';

/** What is asked for: its code and the English words; each a constant of its own, so that an app ships those it uses. */
export type Need<C extends string = string> = readonly [code: C, english: string];

/** What is asked for, in words and as a code with values. */
export interface Needed {
  /** What is expected, in English. */
  readonly expected: string;
  /** The same as data; left out where bounds or options say it. */
  readonly requirement?: {
    /** Code of the requirement, such as `above-diastolic`. */
    readonly code: string;
    /** The codes and numbers in its words. */
    readonly values?: MessageValues;
  };
}

/** How an issue is given what is asked for. */
export type Asked = Need | Needed;

export const PLAIN_OBJECT = ['plain-object', 'a plain object'] as const;
export const PLAIN_JSON = ['plain-json', 'plain JSON'] as const;
export const VISIBLE_FIELD = ['visible-field', 'an enumerable field with a value'] as const;
export const READABLE = ['readable', 'a value that can be read'] as const;
export const LIST_OF = ['list-of', 'a list of {least} to {most} items'] as const;
export const EACH_NUMBER = ['each-number', 'a list of numbers, each from {min} to {max:unit}'] as const;
export const FINITE = ['finite', 'a finite number'] as const;
export const A_FUNCTION = ['function', 'a function'] as const;
export const OUR_FUNCTION = ['our-function', 'a function of this library'] as const;
export const OUR_ANSWER = ['our-answer', 'an answer of this library'] as const;
export const WITH_OTHER_END = ['with-other-end', 'given together with the other end of the interval'] as const;
export const AT_MOST_UPPER = ['at-most-upper', 'at most the upper end of the interval, {upper}'] as const;
export const IN_INTERVAL = ['in-interval', 'in its own interval, {lower} to {upper}'] as const;
export const BOUNDED_RESULT = ['bounded-result', 'a number whose result is no greater than 1.8e308'] as const;
export const ABOVE_ZERO = ['above-zero', 'a finite number above zero'] as const;
export const NAMED_FIELDS = ['named-fields', 'an object of named fields, as plain JSON'] as const;
export const REST_OF_INPUT = ['rest-of-input', 'the rest of the input, as plain JSON'] as const;
export const A_RANGE = ['range', 'a range, such as { from: 20, to: 30 }'] as const;
export const AT_LEAST = ['at-least', 'at least {least:unit}'] as const;
export const BETWEEN = ['between', 'from {low:unit} to {high:unit}'] as const;
export const DAY_EXPECTED = ['day', 'a date such as 2026-03-02'] as const;
export const TRUE_OR_FALSE = ['true-or-false', 'true or false'] as const;
export const LEFT_OUT = ['left-out', 'left out'] as const;
export const A_FORM = ['form', 'a FormData, a Map or an object of fields'] as const;
export const UNITS_BY_FIELD = ['form-units', 'units by the names of fields'] as const;
export const MESSAGE_MAKER = ['message-maker', 'a function that makes the sentence of an issue'] as const;
export const ONE_UNIT = ['one-unit', 'left out: it has one unit'] as const;
export const A_PATH = ['path', 'names and positions'] as const;

export const AT_MOST = ['at-most', 'at most {value:unit}'] as const;
export const LEFT_OUT_WITH = ['left-out-with', 'left out when {field} is given'] as const;
export const GIVEN_WITH = ['given-with', 'given together with {field}'] as const;

export const ONE_OF = ['one-of', 'one of {options}'] as const;
/** One of a few words. */
export const oneOf = (options: readonly string[]): Needed =>
  need(ONE_OF, { options: options.map((option) => `'${option}'`) });

/** A requirement with its values. */
export const need = (
  [code, english]: Need,
  values?: MessageValues,
): Needed & Required<Pick<Needed, 'requirement'>> => ({
  expected: fill(english, values),
  requirement: { code, ...(values && { values }) },
});
