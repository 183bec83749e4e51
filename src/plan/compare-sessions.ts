import type { Caution } from '../answer/answer.js';
import { describe, gather, issue, type InputIssue, type Path } from '../answer/issues.js';
import { ownDocument } from '../answer/own.js';
import { isPart } from '../answer/part.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { SourceId } from '../evidence/sources.js';
import { format } from '../quantity/format.js';
import {
  comparedSession,
  compareTotals,
  type ComparedSession,
  type ComparisonRow,
  type NotKnown,
} from '../session/compare.js';
import { comparisonCaution } from '../session/messages.js';
import { isCuffed, type FullPrescription, type SessionInput } from '../session/prescription.js';
import { readSession } from '../session/read-session.js';
import { peaks } from '../session/volume.js';
import { total } from '../session/working.js';
import { head, type DocumentHead } from './document-parts.js';
import { findItem, type ItemPlace } from './find-item.js';
import { prescribedItem } from './item-prescription.js';
import { ITEM_WITH_PLACE, SIDE_OF_COMPARISON } from './needs.js';
import { expandedOf } from './read-document.js';
import { prescriptionDone } from './record-from.js';
import type { ExpandedItem, ExpandedRecord, SessionRecord } from './record.js';
import { mergeStops, type Stop } from './stops.js';
import type { ExpandedPlan, Plan, PlanItem } from './types.js';

/** One exercise on one limb of a plan or a record: what is left out may be any. */
export interface ItemOfDocument extends ItemPlace {
  /** The plan or the record. Its stops hold for the item too. */
  readonly of: Plan | SessionRecord;
}

/** What {@link compareSessions} compares: what you have, as it is. */
export type ComparableSession = Plan | SessionRecord | ItemOfDocument | SessionInput;

/** What {@link compareSessions} takes. */
export interface ComparisonInput {
  /** The session to compare with. */
  readonly from: ComparableSession;
  /** The session that may take its place, or that was done. */
  readonly to: ComparableSession;
}

/** Two sessions side by side. Plain JSON; print it with `explain`. */
export interface SessionComparison extends DocumentHead<'session-comparison', 1> {
  /** Rows of three lines, on the joint, work and under the cuff; what is about the whole session comes last. */
  readonly rows: readonly ComparisonRow[];
  /** The fourth line: `equal-effect`, always, and each quantity that only one of the two sessions tells. */
  readonly notKnown: readonly NotKnown[];
  /** Reasons not to train, of the plans and records, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** Cautions about comparing the two sessions, such as `no-equivalence`. */
  readonly cautions: readonly Caution[];
}

/** A session with what a comparison needs to know of its document. */
interface Side extends ComparedSession {
  readonly exercises: number;
  readonly stops: readonly Stop[];
}

/** What was planned or done of items. */
const partsOf = (items: readonly ExpandedItem[]): FullPrescription[] =>
  items.map((item) => ('done' in item ? prescriptionDone(item) : prescribedItem(item)));

/** A plan or a record as a session to compare. */
export function sideOf(document: ExpandedPlan | ExpandedRecord): Side {
  const { items, stops } = document;
  const side = { parts: partsOf(items), exercises: new Set(items.map(({ exercise }) => exercise)).size, stops };
  if (document.document === 'plan') return { ...side, sessionTime: document.session.totals.sessionTime };
  const { sessionS, sessionLoad } = document;
  const inputs = sessionS !== undefined && { sessionS: format(sessionS) };
  return { ...side, sessionLoad, sessionTime: inputs ? total('session-time', sessionS, 's', inputs) : undefined };
}

/** Items of one exercise as a session to compare. */
export const sideOfItems = (items: readonly ExpandedItem[], stops: readonly Stop[] = []): Side => ({
  parts: partsOf(items),
  sessionTime: items[0]!.totals.sessionTime,
  exercises: 1,
  stops,
});

function readSide(reader: Reader, name: 'from' | 'to', issues: InputIssue[]): Side | undefined {
  const given = reader.anything(name, SIDE_OF_COMPARISON);
  if (given === undefined) return undefined;
  if (!isPart(given)) {
    issues.push(issue('wrong-type', [name], SIDE_OF_COMPARISON, describe(given)));
    return undefined;
  }
  const fields = given as Partial<Plan & PlanItem & ItemOfDocument>;
  const documentAt = (document: unknown, ...place: string[]) =>
    gather(issues, () => expandedOf(['plan', 'record'], document, [name, ...place]));
  if (fields.document !== undefined) {
    const document = documentAt(given);
    return document && sideOf(document);
  }
  if (fields.of !== undefined) {
    // One exercise of a plan or a record: an item alone would lose the stops of its document.
    const { of, ...which } = fields;
    const document = documentAt(of, 'of');
    const inside = ([, ...path]: Path): Path => [name, ...path];
    const item = document && gather(issues, () => findItem<ExpandedItem>(document, which), inside);
    return item && sideOfItems([item], document!.stops);
  }
  if (fields.totals !== undefined) {
    issues.push(issue('wrong-type', [name], ITEM_WITH_PLACE, 'an item without its stops'));
    return undefined;
  }
  return gather(issues, () => {
    const own = new Reader(given, [name]);
    const full = readSession(own);
    own.done();
    return { ...comparedSession(full), exercises: full.exercises.length, stops: [] };
  });
}

/** Share of the maximum from which more pressure added little muscle in the trial [%]. */
const LITTLE_FROM = 40;

const isHeavyUnderCuff = ({ parts }: ComparedSession): boolean =>
  parts.some((part) => isCuffed(part) && (peaks(part).peakPercentOneRepMax?.value ?? 0) >= LITTLE_FROM);

/** The cautions about any two sessions. */
function cautionsOf(from: Side, to: Side): Caution[] {
  const isRestricted = ({ parts }: Side): boolean => parts.some(isCuffed);
  const note = (code: Parameters<typeof comparisonCaution>[1], source?: SourceId): Caution =>
    comparisonCaution('note', code, undefined, source && { source });
  return [
    comparisonCaution('caution', 'no-equivalence'),
    ...(isRestricted(from) === isRestricted(to)
      ? []
      : [note('restriction-gives-less-strength', 'heavy-or-restricted-2018')]),
    ...([from, to].some(isHeavyUnderCuff) ? [note('pressure-adds-little-heavy', 'load-and-pressure-2015')] : []),
    ...(from.exercises > 1 || to.exercises > 1 ? [note('different-maximum')] : []),
  ];
}

/** Two sessions that were read, side by side. */
export const comparisonOf = (from: Side, to: Side): SessionComparison => ({
  ...head('session-comparison', 1),
  ...compareTotals(from, to),
  stops: mergeStops(from.stops, to.stops),
  cautions: cautionsOf(from, to),
});

/**
 * Two sessions side by side, as you have them: plans, records, one exercise of them, or prescriptions.
 *
 * Read it in four lines.
 *
 * 1. On the joint: peak load, and peak load as a percentage of 1RM.
 * 2. Work: repetitions, volume load, time under tension.
 * 3. Under the cuff: restriction time, percent of LOP, longest unbroken restriction, pressure × time.
 * 4. Not known: whether the two have an equal effect; and what only one of them tells.
 *
 * Give one exercise as `{ of: plan, exercise, limb, side }`, so that the stops of its plan stay with it.
 *
 * Formula, row by row: change = to − from; percent = 100 × change / from. Each row but those of the whole session is of
 * the limb that has most of it: 75 repetitions with both legs are 75, not 150. A total that one session does not have
 * is left open, except where its cuff is never inflated: then it is 0.
 *
 * This is arithmetic. It never claims that two sessions have the same effect.
 *
 * - Evidence: that of each total; percent of LOP is a `definition`.
 *
 * @function
 * @param input - `from` and `to`: a plan, a record, one exercise `of` them, one prescription, or a session of several
 *   exercises
 * @returns the rows, what is not known, stops of the documents and cautions; print it with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { compareSessions } from 'cuffwork/plan';
 * const tempo = '2-0-2-0';
 * const { rows, notKnown } = compareSessions({
 *   from: { scheme: '3x10', tempo, restS: 90, restriction: 'none', load: 75, percentOneRepMax: 75 },
 *   to: { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous', load: 30, percentOneRepMax: 30, pressureMmHg: 80 },
 * });
 * const row = (name: string) => rows.find(({ quantity }) => quantity === name);
 * row('peakLoad')?.change; // => -45
 * row('volumeLoad')?.change; // => 0
 * row('restrictionTime')?.change; // => 390
 * notKnown; // => ['equal-effect']
 * ```
 */
export const compareSessions = withInput(function compareSessions(input: ComparisonInput): SessionComparison {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  const from = readSide(reader, 'from', issues);
  const to = readSide(reader, 'to', issues);
  reader.done();
  return ownDocument(comparisonOf(from!, to!));
});
