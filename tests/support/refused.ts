import { attempt } from '../../src/index.js';

/** What is wrong with an input: the place and the code of each issue, as in `sets.0.load wrong-relation`. */
export function issuesOf(call: (input: never) => unknown, input?: unknown): string[] {
  const result = attempt(call as (input: unknown) => unknown, input);
  return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
}

/** The places alone. */
export const refusedAt = (call: (input: never) => unknown, input?: unknown): string[] =>
  issuesOf(call, input).map((issue) => issue.replace(/ .*/, ''));
