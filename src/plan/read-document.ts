import { attempt, type InputIssue, type Path } from '../answer/issues.js';
import type { Found } from './consistency.js';
import { isSameLimb } from './places.js';
import { ruledBy } from './progression-rules.js';
import type { Proposal, ProposalItem } from './proposal.js';
import { planKind } from './read-plan.js';
import { recordFrom, totalsDone } from './record-session.js';
import type { SessionRecord } from './record.js';
import { proposalDocument, recordDocument } from './schema.js';
import { inForce } from './stops.js';
import { storedDocument, type StoredKind } from './stored.js';
import type { Plan } from './types.js';

interface Documents {
  readonly plan: Plan;
  readonly record: SessionRecord;
  readonly proposal: Proposal;
}

/** What was done adds up anew; what was planned is taken as the record has it. */
const recordKind: StoredKind<SessionRecord> = {
  current: 1,
  schema: recordDocument,
  upgrades: {},
  remade: (record) =>
    recordFrom({ ...record, items: record.items.map((item) => ({ ...item, totals: totalsDone(item) })) }),
};

const isUp = (way: { readonly from: number; readonly to?: number } | undefined): boolean =>
  way?.to !== undefined && way.to > way.from;

/** What holds of a proposal, whatever the practitioner wrote into it. */
function checkProposal(proposal: Proposal, found: Found): void {
  const stopped = inForce(proposal.stops).length > 0;
  const { items } = proposal;
  items.forEach((item, index) => {
    const { action, load, cuffMmHg, percentOfOcclusion } = item;
    const place = ['items', index];
    if (stopped && action !== 'stop') found([...place, 'action'], 'stop while a stop is in force', action);
    for (const [name, way] of Object.entries({ load, cuffMmHg, percentOfOcclusion })) {
      if (action === 'stop' && way?.to !== undefined)
        found([...place, name, 'to'], 'left out where the action is stop', way.to);
    }
    const pressed = (other: ProposalItem): boolean =>
      isSameLimb(item, other) && (isUp(other.cuffMmHg) || isUp(other.percentOfOcclusion));
    if (isUp(load) && items.some(pressed)) {
      found(
        [...place, 'load', 'to'],
        `at most ${load!.from}, since the cuff pressure of this limb is raised`,
        load!.to,
      );
    }
  });
}

/** A practitioner may change the numbers of a proposal: what its rules say is written anew, and what must hold is checked. */
const proposalKind: StoredKind<Proposal> = {
  current: 1,
  schema: proposalDocument,
  upgrades: {},
  remade: (proposal) => ({ ...proposal, ...ruledBy(proposal.rule.id, proposal.painRule.id) }),
  inPart: true,
  check: checkProposal,
};

/** Every document that is read back. */
const kinds = { plan: planKind, record: recordKind, proposal: proposalKind };

/** One of the library’s documents, given back as plain JSON of its own; issues are told from `place`. */
export const documentOf = <K extends keyof Documents>(
  allowed: readonly K[],
  document: unknown,
  place: Path = [],
): Documents[K] =>
  storedDocument(Object.fromEntries(allowed.map((name) => [name, kinds[name]])), document, place) as Documents[K];

/** One of the library’s documents; what is wrong with it goes to `issues`. */
export function documentInto<K extends keyof Documents>(
  issues: InputIssue[],
  kind: K,
  document: unknown,
  place: Path,
): Documents[K] | undefined {
  const result = attempt((given: unknown) => documentOf([kind], given, place), document);
  if (result.ok) return result.value;
  issues.push(...result.issues);
  return undefined;
}

/**
 * A plan, a record or a proposal that was stored, read back and verified.
 *
 * - Shape: as its schema says. Older versions are brought up to this one, a newer one is refused. Fields the library does
 *   not know are kept and never looked at.
 * - Fit: intervals hold their value, times are in order, a pressure or a load is the percentage that the document says.
 * - Numbers: a plan is made again from its request and a record added up again from what was done; where they differ,
 *   the document was changed by hand and is refused, by the name of the field. A practitioner may change the numbers of a
 *   proposal: its rules are looked up again, and load and pressure may not go up together.
 * - Words: the text of every caution, assumption, stop and standing sentence is taken from the catalogue, by its code.
 *
 * A document of another version of the library whose numbers this one does not give again gets the caution
 * `document-unverified`.
 *
 * @param document - a plan, a record or a proposal, as JSON.
 * @returns the document, verified, in the current version.
 * @throws InputError naming every wrong field, or the version where it is newer than this library.
 *
 * @example
 * ```ts
 * import { attempt } from 'cuffwork';
 * import { readDocument } from 'cuffwork/plan';
 * const result = attempt(readDocument, { document: 'plan', schemaVersion: 2 });
 * result.ok ? [] : result.issues.map(({ code }) => code); // => ['newer-document']
 * ```
 */
export const readDocument = (document: object): Plan | SessionRecord | Proposal =>
  documentOf(['plan', 'record', 'proposal'], document);
