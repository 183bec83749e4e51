import { defined, picked } from '../answer/defined.js';
import { describe, gather, InputError, issue, refuse, type InputIssue, type Path } from '../answer/issues.js';
import { need, type Asked } from '../answer/needs.js';
import { ownDocument } from '../answer/own.js';
import { plainInput } from '../answer/plain-input.js';
import { withInput } from '../answer/with-input.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { LEFT_OUT_WITHOUT } from '../session/needs.js';
import { isCuffed } from '../session/prescription.js';
import { orDuration } from '../session/read-session.js';
import { textByCode } from './catalogue.js';
import { codedCaution } from './coded.js';
import type { ExerciseOnLimb } from './document-parts.js';
import { compact } from './expanded.js';
import { isSameLimb, placesOf, placeText } from './limb-and-side.js';
import { measuredDay } from './measured-limb.js';
import {
  RECORD_REQUEST,
  NOT_BEFORE_PLAN,
  NOT_BEFORE_MEASURED,
  LEFT_OUT_NO_LOAD,
  LEFT_OUT_NO_CUFF,
  LEFT_OUT_NO_REST,
  LEFT_OUT_UNLIFTED,
  NO_TEMPO,
  NO_REST,
  OTHER_EXERCISE,
  UNLESS_PLANNED,
  ITEM_OF_PLAN,
} from './needs.js';
import { parseDocument } from './parse.js';
import { planInto } from './read-plan.js';
import { recordFrom, totalsDone, type ItemFacts } from './record-from.js';
import { KEPT, type DoneItem, type ExpandedRecordItem, type RecordRequest, type SessionRecord } from './record.js';
import { doneRequest } from './schema-requests.js';
import type { DoneSet, ExpandedPlan, ExpandedPlanItem, PlanSet } from './types.js';

/** What of an item cannot be: the plan has nothing of it, or it is missing where another exercise was done. */
function wrongIn(item: ExpandedPlanItem, done: DoneItem): InputIssue[] {
  const { instead, unloaded, load } = done;
  const noCuff = !isCuffed(item) && LEFT_OUT_NO_CUFF;
  const leftOut: Readonly<Partial<Record<keyof DoneItem, Asked | false | undefined>>> = {
    load: item.load ? unloaded && LEFT_OUT_UNLIFTED : LEFT_OUT_NO_LOAD,
    unloaded: instead === undefined && need(LEFT_OUT_WITHOUT, { field: 'instead' }),
    heldMmHg: noCuff,
    restHeldMmHg: !item.restTarget && LEFT_OUT_NO_REST,
    occlusionMmHg: noCuff,
    reperfusedBeforeS: noCuff,
  };
  const found = Object.entries(leftOut).flatMap(([name, asked]) =>
    asked && done[name as keyof DoneItem] !== undefined
      ? [issue('wrong-relation', [name], asked, describe(done[name as keyof DoneItem]))]
      : [],
  );
  if (instead === undefined || !item.load || load !== undefined || unloaded) return found;
  return [...found, issue('missing', ['load'], OTHER_EXERCISE, undefined)];
}

/** The sets that were done, with their rests filled in from the plan. */
function setsDone(
  { sets: planned, tempo, load: plannedLoad }: ExpandedPlanItem,
  { sets, load, instead, unloaded }: DoneItem,
  issues: InputIssue[],
): PlanSet[] {
  const done: readonly DoneSet[] = (
    sets ?? planned.map(({ repetitionsInReserve: _, reserveRpe: __, ...set }) => set)
  ).map((set) => (typeof set === 'number' ? { repetitions: set } : set));
  const ask = (index: number, name: string, expected: Asked): void => {
    issues.push(issue('missing', ['sets', index, name], expected, undefined));
  };
  const noLoad = plannedLoad ? unloaded && LEFT_OUT_UNLIFTED : LEFT_OUT_NO_LOAD;
  // A set keeps the load that was planned for it, unless one load is recorded for them all.
  const own = done.map(
    (set, index) => set.load ?? (load === undefined && instead === undefined ? planned[index]?.load : undefined),
  );
  const loaded = own.some((one) => one !== undefined);
  return done.map(({ repetitions, durationS, restS, repetitionsInReserve, reserveRpe, ...set }, index) => {
    if (set.load !== undefined && noLoad) {
      issues.push(issue('wrong-relation', ['sets', index, 'load'], noLoad, describe(set.load)));
    }
    if (durationS === undefined && repetitions === undefined) ask(index, 'repetitions', orDuration());
    else if (durationS === undefined && !tempo) ask(index, 'durationS', NO_TEMPO);
    const asPlanned = index < planned.length - 1 ? planned[index]?.restS : undefined;
    const rest = index === done.length - 1 ? 0 : (restS ?? asPlanned);
    if (rest === undefined) ask(index, 'restS', NO_REST);
    return defined({
      repetitions,
      durationS,
      restS: rest ?? 0,
      load: loaded ? (own[index] ?? load ?? plannedLoad?.value) : undefined,
      repetitionsInReserve,
      reserveRpe,
    }) as PlanSet;
  });
}

/** What was done of an item. */
function doneOf(item: ExpandedPlanItem, given: DoneItem, plan: ExpandedPlan): ExpandedRecordItem {
  const issues = wrongIn(item, given);
  const sets = setsDone(item, given, issues);
  if (issues.length > 0) throw new InputError(issues);
  const { exercise: _, limb: __, side: ___, ...rest } = given;
  const { value, unit } = item.load ?? {};
  const lifted = value !== undefined && !given.unloaded && { load: given.load ?? value, unit: loadUnitOf(unit!) };
  const { cuffWidthCm, circumferenceCm } = plan.request.limbs.find((other) => isSameLimb(other, item))!;
  const facts = defined({
    ...picked(item, KEPT),
    cuffWidthCm,
    circumferenceCm,
    done: defined({ ...rest, ...lifted, sets, stoppedEarly: given.stoppedEarly ?? false }),
  }) as object as ItemFacts;
  return { ...facts, totals: totalsDone(facts) };
}

/** What was done, with the plan read. */
type Done = Omit<RecordRequest, 'plan'> & { readonly plan: ExpandedPlan };

/** The exercises on limbs of a plan that a list of items does not have. */
function leftOut({ items }: ExpandedPlan, given: readonly ExerciseOnLimb[]) {
  const there = placesOf(given);
  const planned = placesOf(items);
  return items
    .filter((_, index) => !there.includes(planned[index]!))
    .map(({ exercise, limb, side }) => ({ exercise, limb, side }));
}

/** What was done of each item; what is not listed is asked for, or taken as planned where the request says so. */
function listed({ plan, asPlanned, items = [] }: Done): readonly DoneItem[] {
  if (asPlanned) return [...items, ...leftOut(plan, items)];
  const open = items.flatMap(({ sets }, index) => (sets ? [] : [['items', index, 'sets']]));
  const missing = items.length > 0 ? open : [['items']];
  if (missing.length === 0) return items;
  throw new InputError(missing.map((place) => issue('missing', place, UNLESS_PLANNED, undefined)));
}

function itemsOf(given: readonly DoneItem[], plan: ExpandedPlan): ExpandedRecordItem[] {
  const planned = new Map(placesOf(plan.items).map((key, index) => [key, plan.items[index]!]));
  const there = [...new Set(plan.items.map(placeText))];
  const issues: InputIssue[] = [];
  const items = placesOf(given).flatMap((key, index) => {
    const item = planned.get(key);
    const place = ['items', index];
    if (!item || !plan.request.limbs.some((one) => isSameLimb(one, item))) {
      const expected = need(ITEM_OF_PLAN, { items: there });
      issues.push(issue('wrong-relation', [...place, 'exercise'], expected, placeText(given[index]!)));
      return [];
    }
    const inside = (path: Path): Path => [...place, ...path];
    return gather(issues, () => doneOf(item, given[index]!, plan), inside) ?? [];
  });
  if (issues.length > 0) throw new InputError(issues);
  return items;
}

/** A session is of no day before its plan, nor before what the plan was made from was measured. */
function checkDay({ plan: { request }, date }: Done): void {
  const measured = request.limbs.flatMap((limb) => measuredDay(limb) ?? []);
  const first = [request.date, ...measured].find((day) => day !== undefined && day > date);
  if (first === undefined) return;
  const expected = need(first === request.date ? NOT_BEFORE_PLAN : NOT_BEFORE_MEASURED, { date: first });
  refuse('wrong-relation', ['date'], expected, date);
}

/**
 * What was done of a plan, as one JSON document: for each item the sets, load and cuff pressure really done with
 * those of the plan, and what they add up to; then symptoms, pain, effort and notes.
 *
 * Pain and effort are 0 to 10. Record pain by site (joint, tendon, under the cuff, muscle) before, during and after the
 * session and the next morning; give an empty list where nothing hurt. Symptoms of the grades `emergency` and
 * `clinician-first`, pain of 8 and more, and a cuff held above the pressures of trials become stops of the record. What
 * is left out of the request stays unknown, save for load and rests, and pressure for pressure × time, which are
 * taken as planned.
 *
 * `asPlanned: true` says that everything was done as planned, except what `items` lists: what you did not see done,
 * list.
 *
 * - Evidence: totals have their own grades, see `sessionTotals`. That pain and symptoms are recorded so is `practice`;
 *   see `symptoms`, `painRules` and `progressionLimits` for each figure.
 *
 * @function
 * @param request - the `plan`; the `date` (`YYYY-MM-DD`); `items` done, with `sets` (repetitions, or `durationS`
 *   [s], or `[30, 15, 15, 17]`), `restS` [s], `load` [the plan’s unit], `heldMmHg` and `restHeldMmHg` [mmHg],
 *   `reperfusedBeforeS`, `inflatedBeforeS` and `deflatedAfterS` [s]; `symptoms`; `pain` by `site`, with `before`,
 *   `during`, `after`, `nextMorning` [0 to 10], `limb` and `side`; `sessionRpe` [0 to 10]; `sessionS` [s];
 *   `sessionOfDay`; `notes`.
 * @returns the record; print it with `explain(record)`, progress from it with `nextSession`.
 * @throws InputError naming every wrong field; also where something was done that the plan does not have.
 *
 * @example
 * ```ts
 * import { planSession, recordSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * const place = { exercise: 'leg extension', limb: 'leg', side: 'left' } as const;
 * const record = recordSession({ plan, date: '2026-03-02', items: [{ ...place, sets: [30, 15, 15, 9] }], sessionRpe: 6 });
 * record.items[0]?.totals.volumeLoad?.value; // => 1035
 * recordSession({ plan, date: '2026-03-04', asPlanned: true }).items[0]?.totals.volumeLoad?.value; // => 1125
 * ```
 */
export const recordSession = withInput(function recordSession(request: RecordRequest): SessionRecord {
  const { plan: given, ...rest } = plainInput(request, RECORD_REQUEST) as Partial<RecordRequest>;
  const { value, issues } = parseDocument<unknown>(doneRequest, rest);
  const found: InputIssue[] = [];
  const plan = planInto(found, given, ['plan']);
  if (!plan || value === undefined) throw new InputError([...found, ...issues]);
  const done: Done = { ...(value as Omit<RecordRequest, 'plan'>), plan };
  checkDay(done);
  const items = itemsOf(listed(done), plan);
  const left = leftOut(plan, items).map((place) => codedCaution('note', 'item-not-recorded', place));
  const { label, posture } = plan.request;
  const cautions = [...plan.cautions, ...left];
  const expanded = recordFrom({ ...done, label, posture, items, stops: plan.stops, cautions });
  return ownDocument(compact<SessionRecord>(expanded, textByCode));
});
