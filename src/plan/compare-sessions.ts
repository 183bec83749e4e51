import { ownDocument } from '../answer/own.js';
import type { Caution } from '../answer/answer.js';
import { attempt, isInputError, issue, moved, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import {
  comparedSession,
  compareTotals,
  isCuffed,
  type ComparedSession,
  type ComparisonRow,
  type NotKnown,
} from '../session/compare.js';
import { comparisonCaution } from '../session/messages.js';
import type { SessionInput } from '../session/prescription.js';
import { readSession } from '../session/read-session.js';
import { peaks } from '../session/volume.js';
import { total } from '../session/working.js';
import { format } from '../quantity/format.js';
import { findItem, type ItemPlace } from './find-item.js';
import { version } from '../study/version.js';
import { prescribedItem } from './item-prescription.js';
import { expandedOf } from './read-document.js';
import { prescriptionDone } from './record-session.js';
import type { ExpandedRecord, ExpandedRecordItem, SessionRecord } from './record.js';
import { mergeStops, type Stop } from './stops.js';
import type { ExpandedPlan, ExpandedPlanItem, Plan, PlanItem } from './types.js';
import { ITEM_WITH_PLACE, SIDE_OF_COMPARISON } from './needs.js';

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
export interface SessionComparison {
  /** Kind of document. */
  readonly document: 'session-comparison';
  /** Version of the format of the document. */
  readonly schemaVersion: 1;
  /** Version of the library that made it. */
  readonly libraryVersion: string;
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

const named = (items: readonly { readonly exercise: string }[]): number =>
  new Set(items.map(({ exercise }) => exercise)).size;

/** A plan or a record as a session to compare. */
export function sideOf(document: ExpandedPlan | ExpandedRecord): Side {
  if (document.document === 'plan') {
    const { items, session, stops } = document;
    const { sessionTime } = session.totals;
    return { parts: items.map(prescribedItem), sessionTime, exercises: named(items), stops };
  }
  const { items, sessionS, sessionLoad, stops } = document;
  const sessionTime =
    sessionS === undefined
      ? undefined
      : total('session-time', sessionS, 's', { sessionS: format(sessionS) }, 'definition');
  return { parts: items.map(prescriptionDone), sessionTime, sessionLoad, exercises: named(items), stops };
}

/** Items of one exercise as a session to compare. */
export function sideOfItems(
  items: readonly (ExpandedPlanItem | ExpandedRecordItem)[],
  stops: readonly Stop[] = [],
): Side {
  const parts = items.map((item) => ('done' in item ? prescriptionDone(item) : prescribedItem(item)));
  return { parts, sessionTime: items[0]?.totals.sessionTime, exercises: 1, stops };
}

/** One exercise of a plan or a record: an item alone would lose the stops of its document. */
function readItem({ of, ...which }: ItemOfDocument, name: string, issues: InputIssue[]): Side | undefined {
  const result = attempt((document: unknown) => expandedOf(['plan', 'record'], document, [name, 'of']), of);
  if (!result.ok) issues.push(...result.issues);
  if (!result.ok) return undefined;
  const { items, stops } = result.value;
  const item = attempt((place: ItemPlace) => findItem<ExpandedPlanItem | ExpandedRecordItem>({ items }, place), which);
  if (item.ok) return sideOfItems([item.value], stops);
  issues.push(...item.issues.map((found) => moved(found, ([, ...path]) => [name, ...path])));
  return undefined;
}

function readSide(reader: Reader, name: 'from' | 'to', issues: InputIssue[]): Side | undefined {
  const given = reader.anything(name, SIDE_OF_COMPARISON);
  const fields = (typeof given === 'object' ? given : null) as Partial<Plan & PlanItem & ItemOfDocument> | null;
  if (fields?.document !== undefined) {
    const result = attempt((document: unknown) => expandedOf(['plan', 'record'], document, [name]), given);
    if (result.ok) return sideOf(result.value);
    issues.push(...result.issues);
    return undefined;
  }
  if (fields?.of !== undefined) return readItem(fields as ItemOfDocument, name, issues);
  if (fields?.totals !== undefined) {
    issues.push(issue('wrong-type', [name], ITEM_WITH_PLACE, 'an item without its stops'));
    return undefined;
  }
  if (given === undefined) return undefined;
  const own = new Reader(given, [name]);
  try {
    const full = readSession(own);
    own.done();
    return { ...comparedSession(full), exercises: full.exercises.length, stops: [] };
  } catch (error) {
    if (!isInputError(error)) throw error;
    issues.push(...error.issues);
    return undefined;
  }
}

/** Share of the maximum from which more pressure added little muscle in the trial [%]. */
const LITTLE_FROM = 40;

const isHeavyUnderCuff = ({ parts }: ComparedSession): boolean =>
  parts.some((part) => isCuffed(part) && (peaks(part).peakPercentOneRepMax?.value ?? 0) >= LITTLE_FROM);

/** The cautions about any two sessions. */
function cautionsOf(from: Side, to: Side): Caution[] {
  const isRestricted = ({ parts }: Side): boolean => parts.some(isCuffed);
  return [
    comparisonCaution('caution', 'no-equivalence'),
    ...(isRestricted(from) !== isRestricted(to)
      ? [
          comparisonCaution('note', 'restriction-gives-less-strength', undefined, {
            source: 'heavy-or-restricted-2018',
          }),
        ]
      : []),
    ...(isHeavyUnderCuff(from) || isHeavyUnderCuff(to)
      ? [comparisonCaution('note', 'pressure-adds-little-heavy', undefined, { source: 'load-and-pressure-2015' })]
      : []),
    ...(from.exercises > 1 || to.exercises > 1 ? [comparisonCaution('note', 'different-maximum')] : []),
  ];
}

/** Two sessions that were read, side by side. */
export const comparisonOf = (from: Side, to: Side): SessionComparison => ({
  document: 'session-comparison',
  schemaVersion: 1,
  libraryVersion: version,
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
export const compareSessions = /* @__PURE__ */ withInput(function compareSessions(
  input: ComparisonInput,
): SessionComparison {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  const from = readSide(reader, 'from', issues);
  const to = readSide(reader, 'to', issues);
  reader.done();
  return ownDocument(comparisonOf(from!, to!));
});
