import type { Answer, AnswerKind } from '../answer/answer.js';
import { InputError } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { optionIssue } from '../answer/field-reader.js';
import type { SessionComparison } from './compare-sessions.js';
import type { WeekComparison } from './compare-weeks.js';
import { checkConsistency, checkStops, finder } from './consistency.js';
import { parseDocument } from './parse.js';
import { asItIs, kinds, type Documents } from './read-document.js';
import type { Review } from './review-plan.js';
import { anyAnswer } from './schema-answers.js';
import { reviewDocument, sessionComparisonDocument, weekComparisonDocument } from './schema-documents.js';
import { storedDocument } from './stored.js';
import { OUR_ANSWER } from '../answer/needs.js';

interface ReadBack extends Documents {
  /** A review of a plan or a record. */
  readonly review: Review;
  /** Two sessions side by side. */
  readonly 'session-comparison': SessionComparison;
  /** Weeks side by side. */
  readonly 'week-comparison': WeekComparison;
}

/** What holds nothing to make it again from is checked against its schema and itself. */
const againstItself = {
  current: 1,
  upgrades: {},
  remade: asItIs,
  asUnverified: asItIs,
  check: checkStops,
};

const allKinds = {
  ...kinds,
  review: { ...againstItself, schema: reviewDocument },
  'session-comparison': { ...againstItself, schema: sessionComparisonDocument },
  'week-comparison': { ...againstItself, schema: weekComparisonDocument },
};
const NAMES = Object.keys(allKinds) as (keyof ReadBack)[];

/**
 * A document that was stored, read back and verified: a plan, a record, a proposal, a screening, a check of the day, a
 * review or a comparison.
 *
 * - Shape: as its schema says. Older versions are brought up to this one, a newer one is refused. Fields the library
 *   does not know are kept and never looked at, unless they read like one that is not there.
 * - Fit: intervals hold their value, times are in order, a pressure or a load is the percentage that the document says.
 * - Numbers: a plan is made again from its request, a record added up again from what was done, a screening and a check
 *   of the day worked out again from their answers. Where they differ, the document was changed by hand and is refused,
 *   by the name of the field. A practitioner may change the numbers of a proposal: its rules are looked up again, load
 *   and pressure may not go up together, and a cuff pressure goes the way of its percentage.
 *   A proposal, a review and a comparison hold nothing to find their stops again from: what stops in their cautions and
 *   findings must be in their list of stops.
 * - Words: the text of every caution, assumption, stop and disclaimer is taken from the catalogue, by its code.
 *
 * Of another version of the library: a document whose numbers this version does not give again gets the caution
 * `document-unverified`. Its stops are derived again from its request, and cautions that it lacks are put back. One
 * that cannot be made again is refused.
 *
 * @param document - a document of `cuffwork/plan`, as JSON
 * @param kind - which document you expect, such as `plan`; any when left out
 * @returns the document, verified, in the current version; of the type of its kind.
 * @throws InputError naming every wrong field, or the version where it is newer than this library.
 *
 * @example
 * ```ts
 * import { attempt } from 'cuffwork';
 * import { readDocument } from 'cuffwork/plan';
 * const result = attempt(readDocument, { document: 'plan', schemaVersion: 9 });
 * result.ok ? [] : result.issues.map(({ code }) => code); // => ['newer-document']
 * ```
 */
export function readDocument<K extends keyof ReadBack = keyof ReadBack>(document: unknown, kind?: K): ReadBack[K] {
  if (kind !== undefined && !NAMES.includes(kind)) throw new InputError([optionIssue(['kind'], NAMES, kind)]);
  const allowed = kind === undefined ? allKinds : { [kind]: allKinds[kind] };
  return storedDocument(allowed, document).document as ReadBack[K];
}

/**
 * An answer that was stored on its own, read back and verified: its shape and that of the answers in its `inputs`; its
 * interval holds its value, a pressure or a load is the percentage that it says, a rounded value is a multiple of its
 * step, a pressure above those of trials has its stop. Texts of cautions are taken from the catalogue, by code.
 *
 * - Error: the answer keeps its own; nothing is added by reading it.
 * - Evidence: as in the answer; reading back is no evidence of its own.
 * - Source: those of the answer’s `equation`; see `cite` of `cuffwork/explain`.
 *
 * @param answer - an answer of this library, as JSON
 * @param kind - which answer you expect, such as `occlusion-pressure`; any when left out
 * @returns the answer, of the type of its kind.
 * @throws InputError naming every wrong field
 *
 * @example
 * ```ts
 * import { measuredOcclusionPressure } from 'cuffwork';
 * import { readAnswer } from 'cuffwork/plan';
 * const stored = JSON.stringify(measuredOcclusionPressure({ valueMmHg: 168, method: 'doppler', limb: 'leg' }));
 * readAnswer(JSON.parse(stored), 'occlusion-pressure').value; // => 168
 * ```
 */
export function readAnswer<K extends AnswerKind = AnswerKind>(answer: unknown, kind?: K): Answer<K> {
  const json = plainInput(answer, OUR_ANSWER);
  const { value, issues } = parseDocument<Answer>(anyAnswer, json);
  if (value && kind !== undefined && value.kind !== kind) issues.push(optionIssue(['kind'], [kind], value.kind));
  // An answer of your own equation may have remarks of its own.
  if (value) checkConsistency(value, finder(issues), undefined, true);
  if (!value || issues.length > 0) throw new InputError(issues);
  return value as Answer<K>;
}
