import type { Answer } from './answer/answer.js';
import { explainAnswer, kindWords } from './answer/explain.js';
import { InputError, issue } from './answer/issues.js';
import { plainInput } from './answer/plain-input.js';
import { planPage } from './plan/page.js';
import type { Plan } from './plan/types.js';
import { comparisonPage, type SessionComparison } from './session/compare.js';

const EXPECTED = 'an answer, a plan or a comparison of this library';

/**
 * An answer with its working, a comparison as a table, or a plan as a page to take to the gym floor: the formula, the same with the
 * caller’s numbers in it, the error and where it comes from, what is taken for granted, what to watch for, the sources.
 *
 * It works on answers and plans that were stored as JSON and read back.
 *
 * @param answer - an {@link Answer}, a {@link SessionComparison} or a {@link Plan}
 * @returns plain text, one line for each fact.
 * @throws InputError when it is given none of them.
 *
 * @example
 * ```ts
 * import { explain, testedOneRepMax, trainingLoad } from 'cuffwork';
 * const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 100 }), percent: 20 });
 * explain(load).split('\n').slice(0, 4); // => ['Training load: 20 kg (95 % interval 18.35 to 21.65 kg)', '  w = p / 100 × M', '    = 20 / 100 × 100', '    = 20 kg']
 * ```
 */
export function explain(answer: Answer | SessionComparison | Plan): string {
  const copy = plainInput(answer, EXPECTED) as Partial<Answer> & { readonly document?: string };
  try {
    if (copy.document === 'plan') return planPage(copy as unknown as Plan).join('\n');
    if (copy.document === 'session-comparison') return comparisonPage(copy as unknown as SessionComparison).join('\n');
    if (copy.kind !== undefined && Object.hasOwn(kindWords, copy.kind)) return explainAnswer(copy as Answer).join('\n');
  } catch (error) {
    // A document that was cut short or changed by hand breaks somewhere inside; that is an input error too.
    if (!(error instanceof TypeError)) throw error;
  }
  throw new InputError([issue('wrong-type', [], EXPECTED, 'something else')]);
}
