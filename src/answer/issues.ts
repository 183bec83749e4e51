import type { Unit } from '../quantity/quantity.js';
import { need, OUR_FUNCTION, type Asked, type Needed } from './needs.js';
import { answerMessages, fill, type IssueCode, type MessageValues } from './messages.js';
import { likeliest } from './suggest.js';

/** The path of a field: names and list positions, from the outside in. */
export type Path = readonly (string | number)[];

/** What was expected, as data: bounds of a number, or the options of a word. */
export interface Expectation {
  /** Lowest value that a number may have [`unit`]. */
  readonly min?: number;
  /** Highest value that a number may have [`unit`]. */
  readonly max?: number;
  /** UCUM code of the unit of the number. */
  readonly unit?: Unit;
  /** Present where the number must be whole. */
  readonly whole?: true;
  /** Every word, or every name of a field, that would do. */
  readonly options?: readonly string[];
  /** Those of the options that were likely meant, the likeliest first; at most five. */
  readonly suggestions?: readonly string[];
}

/** One thing that is wrong with an input. */
export interface InputIssue extends Expectation {
  /** Where it is wrong: names and list positions, from the outside in. */
  readonly path: Path;
  /** What is wrong, a code to translate by. */
  readonly code: IssueCode;
  /** The whole sentence: what was expected, what was received, and the likely slip. */
  readonly message: string;
  /** What was expected, in words. */
  readonly expected: string;
  /** What was expected as a code with values, where it is a relation: `show` has the words in your language. */
  readonly requirement?: Needed['requirement'];
  /** What was received, in short. */
  readonly received: string;
  /** Further words of the sentence, such as the likely slip. */
  readonly values?: MessageValues;
}

/** How many issues an error lists: you see the rest once you correct these. */
export const MOST_ISSUES = 100;
/** How many are looked for: an input with so much wrong is read no further. */
const GIVE_UP = 1000;
const MOST_NAME = 60;
const MOST_RECEIVED = 200;

const cut = (text: string, most: number): string => (text.length > most ? `${text.slice(0, most)}…` : text);

/** A path as people write it: `sets[1].repetitions`. */
export const pathText = (path: Path): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text ? `${text}.${part}` : part),
    '',
  ) || 'the input';

/** A list as an error shows it, by its length: never as a bare number, which reads like one that you gave. */
export const describeLength = (length: number): string => (length === 0 ? 'an empty list' : `a list of ${length}`);

/** A value as an error may show it: short, plain, and never by running code of the value’s own. None for no value. */
export function describe(value: string | number | boolean | null | object): string;
export function describe(value: unknown): string | undefined;
export function describe(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (typeof value === 'string') return JSON.stringify(cut(value, 40));
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return String(value);
  if (typeof value !== 'object') return `a ${typeof value}`;
  try {
    if (Array.isArray(value)) return describeLength(value.length);
  } catch {
    // A revoked proxy cannot be looked at.
  }
  return 'an object';
}

export function issue(
  wrong: IssueCode,
  path: Path,
  asked: Asked,
  received: string | undefined,
  values?: MessageValues,
  expectation?: Expectation & Pick<InputIssue, 'requirement'>,
): InputIssue {
  // What is not there is missing, whichever way it was found out.
  const code = received === undefined && wrong !== 'changed-document' ? 'missing' : wrong;
  const needed: Needed = 'expected' in asked ? asked : need(asked);
  // Names and values are yours: a long one is cut, so that an error is never longer than what it is about.
  const place = path.map((part) => (typeof part === 'string' ? cut(part, MOST_NAME) : part));
  const shown = received === undefined ? 'undefined' : cut(received, MOST_RECEIVED);
  const slots = { field: pathText(place), expected: needed.expected, received: shown, ...values };
  const isField = code === 'unknown-field';
  const likely = likeliest(shown, expectation?.suggestions).map((option) => (isField ? option : `'${option}'`));
  const hint = likely.length > 0 ? 'did-you-mean' : isField && expectation?.options?.[0] && 'fields-here';
  const more = hint && ` ${fill(answerMessages[hint], { ...slots, options: likely.join(' or ') })}`;
  const message = fill(answerMessages[code], slots) + (more || '');
  return { path: place, code, message, ...needed, received: shown, ...expectation, ...(values && { values }) };
}

/** Refuses an input for one thing that is wrong with it. */
export function refuse(...wrong: Parameters<typeof issue>): never {
  throw new InputError([issue(...wrong)]);
}

/** Adds what is wrong to what was found before; throws where that is more than anyone reads. */
export function addIssue(issues: InputIssue[], found: InputIssue): void {
  issues.push(found);
  if (issues.length >= GIVE_UP) throw new InputError(issues);
}

/** The same issue at another place. */
export const moved = (
  { code, path: _from, message: _, expected, received, values, ...expectation }: InputIssue,
  path: Path,
): InputIssue => issue(code, path, { expected }, received, values, expectation);

/** Where the engine can note a stack without writing it out. */
const { captureStackTrace } = Error as { captureStackTrace?: (into: object, above?: unknown) => void };

/** The stack from your call on: without the frames of this package’s own files. Written out when it is asked for. */
function stackOf(message: string, above: unknown): () => string | undefined {
  const noted: { readonly name: string; readonly message: string; readonly stack?: string } = {
    name: 'InputError',
    message,
  };
  captureStackTrace?.(noted, above);
  return () => {
    const lines = noted.stack?.split('\n');
    const from = message.split('\n').length;
    return lines?.filter((line, at) => at < from || !/[\\/]cuffwork[\\/]dist[\\/]/.test(line)).join('\n');
  };
}

/**
 * Thrown for an input that cannot be worked with. `issues` holds everything that is wrong, not the first thing: the
 * first hundred, with `more` for how many are left out. The stack starts at your call.
 *
 * @example
 * ```ts
 * import { isInputError, testedOneRepMax } from 'cuffwork';
 * const caught: string[] = [];
 * try {
 *   testedOneRepMax({ load: Number.NaN });
 * } catch (error) {
 *   if (isInputError(error)) caught.push(...error.issues.map(({ code }) => code));
 * }
 * caught; // => ['not-finite']
 * ```
 */
export class InputError extends Error {
  /** Always `InputError`, whichever copy of the library threw it. */
  override readonly name = 'InputError';
  /** Everything that is wrong, at most 100. */
  readonly issues: readonly InputIssue[];
  /** How many more there are than `issues` lists; at least so many where reading was given up. */
  readonly more: number;

  constructor(issues: readonly InputIssue[], more = 0) {
    const listed = issues.slice(0, MOST_ISSUES);
    const left = more + issues.length - listed.length;
    const rest = left > 0 ? [fill(answerMessages['more-issues'], { count: left })] : [];
    const message = [...listed.map((one) => one.message), ...rest].join('\n');
    super(message);
    this.issues = listed;
    this.more = left;
    if (captureStackTrace)
      Object.defineProperty(this, 'stack', { get: stackOf(message, new.target), configurable: true });
  }
}

/**
 * Whether something caught is this library’s input error. It looks at the fields, so that it holds
 * across copies of the package.
 *
 * @param error - anything that was caught
 * @returns whether it has the `issues` of an {@link InputError}.
 *
 * @example
 * ```ts
 * import { isInputError, roundToStep } from 'cuffwork';
 * isInputError(new Error('other')); // => false
 * ```
 */
export function isInputError(error: unknown): error is InputError {
  try {
    return (
      error instanceof Error && error.name === 'InputError' && Array.isArray((error as Partial<InputError>).issues)
    );
  } catch {
    // What cannot be looked at is none of ours.
    return false;
  }
}

/** What a part gives; what is wrong with it goes to `issues`, as seen from further out. */
export function gather<T>(issues: InputIssue[], part: () => T, to = (path: Path): Path => path): T | undefined {
  try {
    return part();
  } catch (error) {
    if (!isInputError(error)) throw error;
    issues.push(...error.issues.map((found) => moved(found, to(found.path))));
    return undefined;
  }
}

/** What a part gives; what is wrong with it is refused at another place. */
export function refusedAt<T>(part: () => T, placeOf: (found: InputIssue) => Path): T {
  try {
    return part();
  } catch (error) {
    if (!isInputError(error)) throw error;
    const issues = error.issues.map((found) => moved(found, placeOf(found)));
    throw new InputError(issues, error.more);
  }
}

/** What a part gives; what is wrong with it is refused as seen from further out. */
export const within = <T>(place: Path, part: () => T): T => refusedAt(part, ({ path }) => [...place, ...path]);

/** What {@link attempt} returns: the value, or everything that is wrong with the input. */
export type Attempt<T> =
  | {
      /** Whether the input is right: `true` gives `value`, `false` gives `issues`. */
      readonly ok: true;
      /** What the function returned. */
      readonly value: T;
    }
  | {
      /** Whether the input is right: `true` gives `value`, `false` gives `issues`. */
      readonly ok: false;
      /** Everything that is wrong with the input, at most 100. */
      readonly issues: readonly InputIssue[];
      /** How many more there are than `issues` lists. */
      readonly more: number;
    };

/**
 * Calls a function of this library without throwing for a bad input.
 *
 * @param fn - a function of this library
 * @param input - its input, from anywhere
 * @param more - its further arguments, such as options
 * @returns the answer, or the issues of the {@link InputError} as data.
 *
 * @example
 * ```ts
 * import { attempt, estimateOneRepMax } from 'cuffwork';
 * const result = attempt(estimateOneRepMax, { load: -5, repetitions: 8 });
 * result.ok; // => false
 * result.ok ? [] : result.issues.map((issue) => issue.path.join('.')); // => ['load']
 * ```
 */
export function attempt<T, More extends readonly unknown[]>(
  fn: (input: never, ...more: More) => T,
  input: unknown,
  ...more: More
): Attempt<T> {
  try {
    if (typeof fn !== 'function') {
      refuse('wrong-type', ['fn'], OUR_FUNCTION, describe(fn));
    }
    return { ok: true, value: fn(input as never, ...more) };
  } catch (error) {
    if (isInputError(error)) return { ok: false, issues: error.issues, more: error.more ?? 0 };
    throw error;
  }
}
