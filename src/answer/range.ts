import { attempt, describe, gather, InputError, issue, type InputIssue } from './issues.js';
import { A_RANGE, AT_LEAST, NAMED_FIELDS, need } from './needs.js';
import { isPart } from './part.js';
import { plainInput } from './plain-input.js';
import { fieldIssue } from './field-reader.js';

/** A range of percentages [%], both ends counted. */
export interface PercentRange {
  /** Lower end [%]. */
  readonly from: number;
  /** Upper end [%], at least `from`. */
  readonly to: number;
}

/** The answers at both ends of a range. */
export interface AnswerRange<A> {
  /** The answer at the lower end. */
  readonly from: A;
  /** The answer at the upper end. */
  readonly to: A;
}

const ENDS = ['from', 'to'] as const;

/** An issue without its English. */
const factsOf = ({ message: _, expected: __, ...facts }: InputIssue): string => JSON.stringify(facts);

/** The answers of a function at both ends of a range of one field, or an {@link InputError} with the issues of both. */
export function answersAtEnds<A>(fn: (input: never) => A, input: unknown, field: string): AnswerRange<A> {
  const given = plainInput(input, NAMED_FIELDS) as Readonly<Record<string, unknown>>;
  const range = given[field];
  if (!isPart(range)) {
    const own = issue('wrong-type', [field], A_RANGE, describe(range));
    const rest = attempt(fn as (input: unknown) => A, { ...given, [field]: undefined });
    throw new InputError([own, ...(rest.ok ? [] : rest.issues.filter(({ path }) => path[0] !== field))]);
  }
  const issues: InputIssue[] = Object.keys(range)
    .filter((name) => !(ENDS as readonly string[]).includes(name))
    .map((name) => fieldIssue([field], ENDS, name));
  const [from, to] = ENDS.map((end) =>
    gather(
      issues,
      () => (fn as (input: unknown) => A)({ ...given, [field]: range[end] }),
      (path) => (path[0] === field ? [field, end] : path),
    ),
  );
  const [low, high] = [range['from'], range['to']];
  if (typeof low === 'number' && typeof high === 'number' && high < low) {
    issues.push(issue('wrong-relation', [field, 'to'], need(AT_LEAST, { least: low }), describe(high)));
  }
  // A wrong field other than the range is wrong at both ends: it is reported once.
  const once = [...new Map(issues.map((one) => [factsOf(one), one])).values()];
  if (!from || !to || once.length > 0) throw new InputError(once);
  return { from, to };
}
