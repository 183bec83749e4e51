import { answerMessages, fill, type IssueCode, type MessageValues } from './messages.js';

/** Where a field stands: names and list positions, from the outside in. */
export type Path = readonly (string | number)[];

/** One thing that is wrong with an input. */
export interface InputIssue {
  readonly path: Path;
  readonly code: IssueCode;
  readonly expected: string;
  readonly received: string;
  readonly text: string;
  /** Further words of the sentence, such as the likely slip. */
  readonly values?: MessageValues;
}

/** A path as people write it: `sets[1].repetitions`. */
export const pathText = (path: Path): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text ? `${text}.${part}` : part),
    '',
  ) || 'the input';

/** A value as an error may show it: short, plain, and never by running code of the value’s own. */
export function describe(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value);
    case 'number':
    case 'boolean':
    case 'undefined':
      return String(value);
    case 'object':
      return value === null ? 'null' : 'an object';
    default:
      return `a ${typeof value}`;
  }
}

export function issue(
  code: IssueCode,
  path: Path,
  expected: string,
  received: string,
  values?: MessageValues,
): InputIssue {
  const text = fill(answerMessages[code], { field: pathText(path), expected, received, ...values });
  return { path, code, expected, received, text, ...(values && { values }) };
}

/** The same issue, seen from further out. */
export const moved = ({ code, path, expected, received, values }: InputIssue, to: (path: Path) => Path): InputIssue =>
  issue(code, to(path), expected, received, values);

/**
 * Thrown for an input that cannot be worked with. `issues` holds everything that is wrong, not the first thing.
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
  override readonly name = 'InputError';
  readonly issues: readonly InputIssue[];

  constructor(issues: readonly InputIssue[]) {
    super(issues.map(({ text }) => text).join('\n'));
    this.issues = issues;
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
export const isInputError = (error: unknown): error is InputError =>
  error instanceof Error && error.name === 'InputError' && Array.isArray((error as Partial<InputError>).issues);

/** What {@link attempt} returns: the value, or everything that is wrong with the input. */
export type Attempt<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: readonly InputIssue[] };

/**
 * Calls a function of this library without throwing for a bad input.
 *
 * @param fn - a function of this library that takes one input
 * @param input - its input
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
export function attempt<I, T>(fn: (input: I) => T, input: I): Attempt<T> {
  try {
    return { ok: true, value: fn(input) };
  } catch (error) {
    if (isInputError(error)) return { ok: false, issues: error.issues };
    throw error;
  }
}
