import { gather, InputError, within, type InputIssue, type Path } from '../answer/issues.js';
import { guards, passedStep } from '../evidence/guards.js';
import { frozen } from '../quantity/frozen.js';
import { quantities } from '../quantity/quantities.js';
import { answersAgain } from './checks.js';
import { textByCode } from './catalogue.js';
import { checkConsistency, checkStops, finder, type Found } from './consistency.js';
import { isSameLimb } from './limb-and-side.js';
import { ruledBy } from './progression-rules.js';
import type { Proposal, ProposalItem } from './proposal.js';
import type { DayCheck, Screening } from './questions.js';
import { planKind } from './read-plan.js';
import { compact, compactedOlder, expandedRecord, plannedOf } from './expanded.js';
import { recordFrom, totalsDone } from './record-from.js';
import type { ExpandedRecord, SessionRecord } from './record.js';
import { dayCheckDocument, proposalDocument, recordDocument, screeningDocument } from './schema-documents.js';
import { inForce } from './stops.js';
import { isObject, keptUnverified, storedDocument, type Read, type StoredKind } from './stored.js';
import type { ExpandedPlan, Plan } from './types.js';
import { AT_MOST, need } from '../answer/needs.js';
import { STOP_IN_FORCE, LEFT_OUT_AT_STOP, NOT_RAISED, RAISED, BY_PERCENTAGE, CUFF_RAISED } from './needs.js';

export interface Documents {
  /** A plan of a session. */
  readonly plan: Plan;
  /** The record of a session. */
  readonly record: SessionRecord;
  /** A proposal for the next session. */
  readonly proposal: Proposal;
  /** A screening. */
  readonly screening: Screening;
  /** A check before a session. */
  readonly 'day-check': DayCheck;
}

interface ExpandedDocuments extends Omit<Documents, 'plan' | 'record'> {
  readonly plan: ExpandedPlan;
  readonly record: ExpandedRecord;
}

/** What was done adds up anew; what was planned is taken as the record has it. */
const recordKind: StoredKind<SessionRecord, ExpandedRecord> = {
  current: 2,
  schema: recordDocument,
  upgrades: { 1: compactedOlder },
  remade: (record) => {
    const items = plannedOf(record).map((item, index) =>
      within(['items', index, 'done'], () => ({ ...item, totals: totalsDone(item) })),
    );
    const expanded = recordFrom({ ...record, items });
    return { document: compact<SessionRecord>(expanded, textByCode), expanded };
  },
  asUnverified: (record, made, unverified) => {
    const document = keptUnverified(record, made.document, unverified);
    return { document, expanded: expandedRecord(document, made.expanded) };
  },
};

/** A document whose numbers need no other answers. */
export const asItIs = <T>(document: T): Read<T> => ({ document, expanded: document });

const isUp = (way: { readonly from: number; readonly to?: number } | undefined): boolean =>
  way?.to !== undefined && way.to > way.from;

/** A new cuff pressure: none above those of trials, none that goes another way than its percentage. */
function checkPressure({ cuffMmHg, percentLop }: ProposalItem, place: Path, found: Found): void {
  const to = cuffMmHg?.to;
  if (to === undefined) return;
  const { from } = cuffMmHg!;
  const at = [...place, 'cuffMmHg', 'to'];
  if (to > from && passedStep('cuff-pressure', to)?.severity === 'stop') {
    return found(at, need(AT_MOST, { value: guards['cuff-pressure'].steps.at(-1)!.above!, unit: 'mm[Hg]' }), to);
  }
  if (!percentLop) return;
  const { from: percent, to: next = percent } = percentLop;
  if (to > from && next <= percent) found(at, need(NOT_RAISED, { value: from }), to);
  if (to < from && next > percent) found(at, need(RAISED, { value: from }), to);
  // The gauge rounds the old pressure down, by less than its widest step.
  const most = ((from + quantities.gaugeStepMmHg.max) * next) / percent;
  if (next > percent && to > most) found(at, need(BY_PERCENTAGE, { value: most }), to);
}

/** What holds of a proposal, whatever the practitioner wrote into it. */
function checkProposal(proposal: Proposal, found: Found): void {
  checkStops(proposal, found);
  const stopped = inForce(proposal.stops).length > 0;
  const { items } = proposal;
  items.forEach((item, index) => {
    const { action, load, cuffMmHg, percentLop } = item;
    const place = ['items', index];
    if (stopped && action !== 'stop') found([...place, 'action'], STOP_IN_FORCE, action);
    for (const [name, way] of Object.entries({ load, cuffMmHg, percentLop })) {
      if (action === 'stop' && way?.to !== undefined) found([...place, name, 'to'], LEFT_OUT_AT_STOP, way.to);
    }
    checkPressure(item, place, found);
    const pressed = (other: ProposalItem): boolean =>
      isSameLimb(item, other) && (isUp(other.cuffMmHg) || isUp(other.percentLop));
    if (isUp(load) && items.some(pressed)) {
      found([...place, 'load', 'to'], need(CUFF_RAISED, { value: load!.from }), load!.to);
    }
  });
}

/**
 * A practitioner may change the numbers of a proposal: what its rules say is written anew, and what must hold is
 * checked.
 */
const proposalKind: StoredKind<Proposal> = {
  current: 1,
  schema: proposalDocument,
  upgrades: {},
  remade: (proposal) => asItIs({ ...proposal, ...ruledBy(proposal.rule.id, proposal.painRule.id) }),
  inPart: true,
  asUnverified: (proposal, made, unverified) => asItIs(keptUnverified(proposal, made.document, unverified)),
  check: checkProposal,
};

/** A document of answers is worked out again from them, whatever version made it. */
const answersKind = <D extends Screening | DayCheck>(schema: StoredKind<D>['schema']): StoredKind<D> => ({
  current: 1,
  schema,
  upgrades: {},
  remade: (given) => asItIs(answersAgain(given, [])),
  asUnverified: (given, made) => asItIs({ ...given, ...made.document, libraryVersion: given.libraryVersion }),
});

/** Every document that is read back. */
export const kinds = {
  plan: planKind,
  record: recordKind,
  proposal: proposalKind,
  screening: answersKind<Screening>(screeningDocument),
  'day-check': answersKind<DayCheck>(dayCheckDocument),
};
const NAMES = Object.keys(kinds) as (keyof typeof kinds)[];

const read = <K extends keyof Documents>(allowed: readonly K[], document: unknown, place: Path) =>
  storedDocument(Object.fromEntries(allowed.map((name) => [name, kinds[name]])), document, place);

/** One of the library’s documents, given back as plain JSON of its own; paths of issues start at `place`. */
export const documentOf = <K extends keyof Documents>(allowed: readonly K[], document: unknown): Documents[K] =>
  read(allowed, document, []).document as Documents[K];

/** One of the library’s documents with whole answers; paths of issues start at `place`. */
export const expandedOf = <K extends keyof Documents>(
  allowed: readonly K[],
  document: unknown,
  place: Path = [],
): ExpandedDocuments[K] => read(allowed, document, place).expanded as ExpandedDocuments[K];

/**
 * What is to be printed, verified: a document as `readDocument` reads it; an answer, a comparison or a review, which
 * hold nothing to make them again from, against themselves, with the texts of the catalogue.
 */
export function printable(given: { readonly document?: string }): object {
  if (NAMES.some((name) => name === given.document)) return expandedOf(NAMES, given);
  const issues: InputIssue[] = [];
  // An answer of your own equation may have remarks of its own.
  checkConsistency(given, finder(issues), undefined, given.document === undefined);
  checkStops(given, finder(issues));
  if (issues.length > 0) throw new InputError(issues);
  return given;
}

/** Plain JSON with the plans and records in it read and expanded; the rest as it is. */
export function withAnswers(given: object): object {
  if (Array.isArray(given)) return given.map((part: unknown) => (isObject(part) ? withAnswers(part) : part));
  const { document } = given as { readonly document?: unknown };
  return document === 'plan' || document === 'record' ? expandedOf([document], given) : given;
}

/** One of the library’s documents with whole answers; what is wrong with it goes to `issues`. */
export function expandedInto<K extends keyof Documents>(
  issues: InputIssue[],
  kind: K,
  document: unknown,
  place: Path,
): ExpandedDocuments[K] | undefined {
  return gather(issues, () => expandedOf([kind], document, place));
}

/**
 * A plan or a record with whole answers at their places: occlusion pressure, cuff pressure, 1RM, load and totals, each
 * with interval, evidence, assumptions, cautions and what it was worked out from; disclaimers and stop criteria with
 * their sentences. Use it to hand an answer on to a calculation, or to `explain`. Store the document, not this.
 *
 * The document is verified as `readDocument` does.
 *
 * @param document - a plan or a record
 * @returns the same with whole answers; nothing else changes.
 * @throws InputError naming every wrong field
 *
 * @example
 * ```ts
 * import { expandDocument, planSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, measured: { valueMmHg: 172, method: 'doppler' } }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30, restriction: 'continuous',
 *   }],
 * });
 * plan.items[0]?.target?.value; // => 86
 * const [item] = expandDocument(plan).items;
 * item?.target?.reached?.percentLop; // => 50
 * item?.occlusion?.equation; // => 'measured-doppler'
 * ```
 */
export function expandDocument(document: Plan): ExpandedPlan;
export function expandDocument(document: SessionRecord): ExpandedRecord;
export function expandDocument(document: Plan | SessionRecord): ExpandedPlan | ExpandedRecord {
  return frozen(expandedOf(['plan', 'record'], document));
}
