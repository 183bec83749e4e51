import type { Answer } from './answer/answer.js';
import { explainAnswer, kindWords } from './answer/explain.js';
import { InputError, issue } from './answer/issues.js';
import { plainInput } from './answer/plain-input.js';
import { proposalPage, recordPage, reviewPage, screeningPage } from './plan/document-pages.js';
import type { Proposal } from './plan/next-session.js';
import { planPage } from './plan/page.js';
import type { SessionRecord } from './plan/record-session.js';
import type { Review } from './plan/review-plan.js';
import type { Screening } from './plan/screen.js';
import type { Plan } from './plan/types.js';
import { comparisonPage, type SessionComparison } from './session/compare.js';

/** A document of `cuffwork/plan`. */
export type PlanDocument = Plan | Screening | Review | SessionRecord | Proposal;

const pages: {
  readonly [K in PlanDocument['document']]: (document: Extract<PlanDocument, { document: K }>) => string[];
} = { plan: planPage, screening: screeningPage, review: reviewPage, record: recordPage, proposal: proposalPage };

const EXPECTED = 'an answer, a comparison or a document of this library';

/**
 * An answer with its working: the formula, the same with the caller’s numbers in it, the error and where it comes
 * from, what is taken for granted, what to watch for, the sources. A plan, a screening, a review, a record or a
 * proposal as a page to take to the gym floor; a comparison of sessions as a table.
 *
 * It works on answers and documents that were stored as JSON and read back.
 *
 * @param answer - an {@link Answer}, a {@link SessionComparison}, or a document of `cuffwork/plan`
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
export function explain(answer: Answer | SessionComparison | PlanDocument): string {
  const copy = plainInput(answer, EXPECTED) as Partial<Answer> & { document?: string };
  try {
    if (copy.document === 'session-comparison') return comparisonPage(copy as unknown as SessionComparison).join('\n');
    if (copy.document !== undefined && Object.hasOwn(pages, copy.document)) {
      return (pages[copy.document as PlanDocument['document']] as (document: object) => string[])(copy).join('\n');
    }
    if (copy.kind !== undefined && Object.hasOwn(kindWords, copy.kind)) return explainAnswer(copy as Answer).join('\n');
  } catch (error) {
    // A document that was cut short or changed by hand breaks somewhere inside; that is an input error too.
    if (!(error instanceof TypeError)) throw error;
  }
  throw new InputError([issue('wrong-type', [], EXPECTED, 'something else')]);
}
