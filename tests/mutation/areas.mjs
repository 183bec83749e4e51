/**
 * What is mutated together, and the tests that answer for it: tests left out can only lower a score. Not mutated are
 * the sentences of a `messages.ts` and the lists of sources, which are prose; an `index.ts`, which only gathers; and
 * `maths.ts`, a list of names, in which the header of the mutants cannot stand.
 * `numbers`: each number within a function is put one per cent off too, which Stryker does not do.
 *
 * @type {Readonly<Record<string, { folder: string, tests: readonly string[], numbers?: boolean }>>}
 */
export const areas = {
  'pressure/equations': { folder: 'src/pressure/equations', tests: ['checks/*', 'pressure/*'], numbers: true },
  'strength/equations': { folder: 'src/strength/equations', tests: ['checks/*', 'strength/*'], numbers: true },
  quantity: { folder: 'src/quantity', tests: ['quantity/*', 'answer/convert*', 'strength/*', 'session/*'] },
  pressure: { folder: 'src/pressure', tests: ['pressure/*', 'checks/*', 'answer/input-errors*', 'answer/explain*'] },
  strength: { folder: 'src/strength', tests: ['strength/*', 'checks/*', 'answer/input-errors*', 'answer/explain*'] },
  session: { folder: 'src/session', tests: ['session/*', 'checks/*', 'answer/input-errors*', 'answer/explain*'] },
  answer: { folder: 'src/answer', tests: ['answer/*', 'strength/*', 'pressure/*', 'docs/typeset*'] },
  study: { folder: 'src/study', tests: ['study/*', 'checks/*'] },
  plan: { folder: 'src/plan', tests: ['plan/*', 'checks/*', 'answer/input-errors*'] },
};

export const notMutated = ['messages.ts', 'index.ts', 'maths.ts'];
