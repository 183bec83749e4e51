import { fill, type MessageValues } from './messages.js';

/** What a relation asks for: its code and the English words; each a constant of its own, so that an app ships those it uses. */
type Need<C extends string = string> = readonly [code: C, english: string];

/** What is asked for, in words and as a code with values. */
export interface Needed {
  /** What is expected, in English. */
  readonly expected: string;
  /** The same as data. */
  readonly requirement: {
    /** Code of the requirement, such as `above-diastolic`. */
    readonly code: string;
    /** The codes and numbers in its words. */
    readonly values?: MessageValues;
  };
}

/** Above the diastolic pressure of the same reading. */
export const ABOVE_DIASTOLIC = ['above-diastolic', 'above the diastolic pressure of {value:unit}'] as const;
/** Below another number. */
export const BELOW_MEASURED = ['below-measured', 'below the measured pressure of {value:unit}'] as const;
export const AT_MOST = ['at-most', 'at most {value:unit}'] as const;
export const LEFT_OUT_WITH = ['left-out-with', 'left out when {field} is given'] as const;
export const GIVEN_WITH = ['given-with', 'given together with {field}'] as const;
export const LIMB_OF_EQUATION = ['limb-of-equation', "'{limb}' for equation {equation}"] as const;
export const WIDTH_OF_EQUATION = ['width-of-equation', '{width:cm} (± {tolerance}) for equation {equation}'] as const;
export const WIDTHS_OF_EQUATION = [
  'widths-of-equation',
  '{low} to {high:cm} (± {tolerance}) for equation {equation}',
] as const;
export const GIVEN_FOR_EQUATION = ['given-for-equation', 'given, for equation {equation}'] as const;
export const WITH_INTERVAL = [
  'with-an-interval',
  'an answer with an interval, for a limit on the chance of closing the artery',
] as const;
export const CERTAIN_ENOUGH = [
  'certain-enough',
  'a limit that some gauge setting keeps: this occlusion pressure is too uncertain',
] as const;
export const LIGHTEST_LOAD = ['lightest-load', 'at least {lightest:unit}, the lightest load you can set'] as const;
export const LIGHT_ENOUGH = [
  'light-enough',
  'able to make {wanted:unit}; the lightest load you can set is {lightest:unit}, {percent} % of the maximum',
] as const;
export const LESS_THAN_BODY = [
  'less-than-body',
  'less than {asked} % of the maximum; body mass alone is {alone} % of the maximum, so {off:unit} would have to be taken off',
] as const;

/** A requirement with its values. */
export const need = ([code, english]: Need, values?: MessageValues): Needed => ({
  expected: fill(english, values),
  requirement: { code, ...(values && { values }) },
});
