import { describe, issue, MOST_ISSUES, type InputIssue } from '../answer/issues.js';
import { isOwn } from '../answer/own.js';
import { plainCopy } from '../answer/plain-copy.js';
import { isCalendarDay } from '../answer/day.js';
import type { ExerciseOnLimb } from './document-parts.js';
import { SEVERE_PAIN_FROM } from './pain.js';
import { placesOf } from './limb-and-side.js';
import { expandedInto } from './read-document.js';
import type { ExpandedRecord } from './record.js';
import type { ExpandedPlan, ExpandedPlanItem } from './types.js';
import { need } from '../answer/needs.js';
import { OTHER_SESSION, OTHER_NUMBER, OF_PLAN } from './needs.js';

/** What is looked at in every record, however old; the whole document is read of those only that are needed. */
interface Glance {
  /** Its place in the list given. */
  readonly index: number;
  readonly date: string;
  readonly sessionOfDay: number | undefined;
  readonly label: unknown;
  /** The exercises on limbs that it has. */
  readonly items: readonly ExerciseOnLimb[];
  /** It reports a symptom, severe pain or a stop, which stay in force however old they are. */
  readonly reports: boolean;
}

type Json = Readonly<Record<string, unknown>>;

const limbKey = ({ limb, side }: { readonly limb: unknown; readonly side: unknown }): string =>
  `${String(side)} ${String(limb)}`;

/** Whether a list is there and has nothing in it. */
const isEmpty = (value: unknown): boolean => Array.isArray(value) && value.length === 0;

const isSevere = (report: unknown): boolean =>
  typeof report !== 'object' ||
  report === null ||
  Object.values(report).some((pain) => typeof pain === 'number' && pain >= SEVERE_PAIN_FROM);

/** What is read of a document that nobody has checked; nothing where reading it fails. */
function unlessItFails<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}

/** What was seen of records that nobody can change. */
const seenBefore = new WeakMap<object, Glance>();

/** A look at a record; nothing where it has to be read wholly, for what is wrong with it. */
function glance(record: unknown, index: number): Glance | undefined {
  const known = seenBefore.get(record as object);
  if (known) return { ...known, index };
  const look = unlessItFails(() => firstLook(record as Json, index));
  if (look && isOwn(record as object)) seenBefore.set(record as object, look);
  return look;
}

/** A look that trusts nothing. */
function firstLook(record: Json, index: number): Glance | undefined {
  const { document, schemaVersion, date, sessionOfDay, label, items, stops, symptoms, pain = [] } = record;
  if (document !== 'record' || schemaVersion !== 2) return undefined;
  if (typeof date !== 'string' || !isCalendarDay(date) || !Array.isArray(items)) return undefined;
  if (sessionOfDay !== undefined && typeof sessionOfDay !== 'number') return undefined;
  const reports = !isEmpty(stops) || !isEmpty(symptoms) || (pain as readonly unknown[]).some(isSevere);
  return { index, date, sessionOfDay, label, items: items as readonly ExerciseOnLimb[], reports };
}

/** What was done, whatever was noted of it: the same twice on a day is one session that was given twice. */
const doneIn = (record: unknown): string | undefined =>
  unlessItFails(() => {
    const { items } = plainCopy(record) as { readonly items: readonly Json[] };
    return JSON.stringify(items.map(({ exercise, limb, side, done }) => [exercise, limb, side, done]));
  });

/** Records that are given twice, or that cannot both be right: one session given twice counts as two. */
function repeated(given: readonly unknown[], glances: readonly Glance[]): InputIssue[] {
  const issues: InputIssue[] = [];
  const days = new Map<string, Glance[]>();
  for (const one of glances) days.set(one.date, [...(days.get(one.date) ?? []), one]);
  for (const ofDay of days.values()) {
    if (ofDay.length === 1) continue;
    const seen = new Map<unknown, Glance>();
    const numbered = new Map<unknown, number>();
    for (const one of ofDay.sort((a, b) => a.index - b.index)) {
      const { index, sessionOfDay, date } = one;
      const done = doneIn(given[index]);
      const same = seen.get(done);
      const numbers = numbered.get(sessionOfDay);
      if (same && (sessionOfDay === undefined || same.sessionOfDay === undefined || numbers === same.index)) {
        const expected = need(OTHER_SESSION, { index: same.index });
        issues.push(issue('wrong-relation', ['records', index], expected, date));
      } else if (numbers !== undefined) {
        const expected = need(OTHER_NUMBER, { index: numbers });
        issues.push(issue('wrong-relation', ['records', index, 'sessionOfDay'], expected, String(sessionOfDay)));
      }
      if (done !== undefined) seen.set(done, one);
      if (sessionOfDay !== undefined) numbered.set(sessionOfDay, index);
    }
  }
  return issues;
}

/** By day, then by number; as they came where they are alike. */
const inOrder = (a: Glance, b: Glance): number =>
  a.date === b.date ? (a.sessionOfDay ?? 0) - (b.sessionOfDay ?? 0) : a.date < b.date ? -1 : 1;

/** The exercises of a record; nothing where they cannot be read. */
const placesIn = ({ items }: Glance): ExerciseOnLimb[] | undefined =>
  unlessItFails(() => items.map(({ exercise, limb, side }) => ({ exercise, limb, side })));

/**
 * The records that are needed whole, oldest first: the last day, the last sessions of each item and limb, every report.
 */
function needed(glances: readonly Glance[], items: readonly ExpandedPlanItem[], sessions: number): Glance[] {
  const last = glances.at(-1);
  const wanted = new Set(glances.filter(({ date, reports }) => reports || date === last!.date));
  const open = new Map(placesOf(items).map((place) => [place, sessions]));
  const limbs = new Set(items.map(limbKey));
  // From the newest on, until every item has its sessions.
  for (let index = glances.length - 1; index >= 0 && open.size + limbs.size > 0; index -= 1) {
    const one = glances[index]!;
    const placed = placesIn(one);
    // What cannot be read here is read wholly, for what is wrong with it.
    if (!placed) {
      wanted.add(one);
      continue;
    }
    for (const place of placesOf(placed)) {
      const left = open.get(place);
      if (left === undefined) continue;
      wanted.add(one);
      if (left > 1) open.set(place, left - 1);
      else open.delete(place);
    }
    for (const item of placed) if (limbs.delete(limbKey(item))) wanted.add(one);
  }
  return [...wanted].sort((a, b) => inOrder(a, b) || a.index - b.index);
}

/**
 * The records that a proposal is made from, oldest first. Every record is looked at for its day, what it trained and
 * what it reports; only those needed are read and checked wholly, so a year of records takes hardly longer than a week.
 */
export function recentRecords(
  issues: InputIssue[],
  given: readonly unknown[],
  plan: ExpandedPlan | undefined,
  sessions: number,
): ExpandedRecord[] {
  // What cannot be looked at is read wholly: an older version is brought up to this one, what is no record is refused.
  const readWholly = new Map<number, ExpandedRecord>();
  const glances: Glance[] = [];
  for (const [index, record] of given.entries()) {
    let look = glance(record, index);
    // Where more is wrong than an error lists, what else is wrong is not looked for.
    if (!look && issues.length < MOST_ISSUES) {
      const read = expandedInto(issues, 'record', record, ['records', index]);
      if (read) readWholly.set(index, read);
      look = glance(read, index);
    }
    if (look) glances.push(look);
  }
  glances.sort(inOrder);
  const readable = given.map((record, index) => readWholly.get(index) ?? record);
  issues.push(...repeated(readable, glances));
  const label = plan?.request.label;
  for (const one of glances) {
    if (label === undefined || one.label === undefined || one.label === label) continue;
    const expected = need(OF_PLAN, { value: label });
    const received = typeof one.label === 'string' ? one.label : describe(one.label);
    issues.push(issue('wrong-relation', ['records', one.index, 'label'], expected, received));
  }
  const records: ExpandedRecord[] = [];
  for (const { index } of needed(glances, plan?.items ?? [], sessions)) {
    const record = readWholly.get(index) ?? expandedInto(issues, 'record', given[index], ['records', index]);
    if (record) records.push(record);
  }
  return records;
}

/** Records that are given twice; the whole documents were read. */
export const repeatedRecords = (records: readonly (ExpandedRecord | undefined)[]): InputIssue[] =>
  repeated(records, records.flatMap((record, index) => glance(record, index) ?? []).sort(inOrder));
