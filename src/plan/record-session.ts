import type { Caution } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { InputError, issue, isInputError, moved, type InputIssue } from '../answer/issues.js';
import { ownDocument } from '../answer/own.js';
import { plainInput } from '../answer/plain-input.js';
import { withInput } from '../answer/with-input.js';
import { passedStep } from '../evidence/guards.js';
import { bloodPressureCautions, checkBloodPressure } from '../pressure/blood-pressure.js';
import { formatUnit } from '../quantity/format.js';
import { sum } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { totalsOfExercise, sessionLoadOf } from '../session/totals.js';
import { isOfLimb } from '../session/exposure.js';
import { reperfusionCautions } from '../session/limbs.js';
import type { FullPrescription } from '../session/prescription.js';
import { fullPrescription, orDuration } from '../session/read-session.js';
import { version } from '../study/version.js';
import { answersAgain, answersCautions } from './checks.js';
import { textByCode } from './catalogue.js';
import { codedCaution } from './coded.js';
import { compact } from './expanded.js';
import type { DayCheck } from './questions.js';
import { uniqueCautions } from './severity.js';
import { comparedHeld } from './held.js';
import { limbsOf } from './limb-totals.js';
import { assumption } from './assumptions.js';
import { documentCaution } from './document-messages.js';
import { CAUTIOUS_PAIN_RULE, assessPain, painSentence } from './pain.js';
import { parseDocument } from './parse.js';
import { isSameLimb, limbsIn, placesOf, placeText } from './limb-and-side.js';
import { measuredDay } from './measured-limb.js';
import { planInto } from './read-plan.js';
import {
  KEPT,
  type DoneItem,
  type Feelings,
  type ExpandedRecord,
  type ExpandedRecordItem,
  type RecordRequest,
  type SessionRecord,
} from './record.js';
import { doneRequest } from './schema-requests.js';
import { heaviestLoad } from './set-counts.js';
import { documentDisclaimer } from './disclaimers.js';
import { asOfDay, mergeStops, stopsOf } from './stops.js';
import { symptomOf } from './symptoms.js';
import type { DoneSet, ExpandedPlan, ExpandedPlanItem, PlanSet } from './types.js';
import { GIVEN_WITH, need, type Asked } from '../answer/needs.js';
import {
  RECORD_REQUEST,
  BELOW_SETS,
  NOT_BEFORE_PLAN,
  NOT_BEFORE_MEASURED,
  LEFT_OUT_NO_LOAD,
  LEFT_OUT_NO_CUFF,
  LEFT_OUT_NO_REST,
  NO_TEMPO,
  NO_REST,
  OTHER_EXERCISE,
  UNLESS_PLANNED,
  ITEM_OF_PLAN,
} from './needs.js';

/** The sets that were done, with their rests filled in from the plan. */
function setsDone(
  { sets: planned, tempo, load: plannedLoad }: ExpandedPlanItem,
  { sets, load, instead }: DoneItem,
): PlanSet[] {
  const done: readonly DoneSet[] = (
    sets ?? planned.map(({ repetitionsInReserve: _, reserveRpe: __, ...set }) => set)
  ).map((set) => (typeof set === 'number' ? { repetitions: set } : set));
  const issues: InputIssue[] = [];
  const ask = (index: number, name: string, expected: Asked): void => {
    issues.push(issue('missing', ['sets', index, name], expected, 'undefined'));
  };
  // A set keeps the load that was planned for it, unless one load is recorded for them all.
  const own = done.map(
    (set, index) => set.load ?? (load === undefined && instead === undefined ? planned[index]?.load : undefined),
  );
  const loaded = own.some((one) => one !== undefined);
  const kept = done.map(({ repetitions, durationS, restS, repetitionsInReserve, reserveRpe, ...set }, index) => {
    if (set.load !== undefined && !plannedLoad) {
      issues.push(issue('wrong-relation', ['sets', index, 'load'], LEFT_OUT_NO_LOAD, 'a value'));
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
  if (issues.length > 0) throw new InputError(issues);
  return kept;
}

/** The cuff as it was held, and as planned where that is not known. */
function cuffed(full: FullPrescription, { target, restTarget, done }: RecordFacts): FullPrescription {
  if (full.restriction === 'none') return full;
  const pressureMmHg = done.heldMmHg ?? target!.value;
  const rest = restTarget && (done.restHeldMmHg ?? restTarget.value);
  if (rest !== undefined && rest >= pressureMmHg) {
    const expected = need(BELOW_SETS, { value: pressureMmHg, unit: 'mm[Hg]' });
    throw new InputError([issue('wrong-relation', ['restHeldMmHg'], expected, formatUnit(rest, 'mm[Hg]'))]);
  }
  const { occlusion } = target!.inputs;
  return {
    ...full,
    sets: full.sets.map((set) => ({ ...set, pressureMmHg })),
    occlusionMmHg: done.occlusionMmHg ?? occlusion.value,
    ...(rest !== undefined && { restPressureMmHg: rest }),
  };
}

/** One exercise on one limb as it was done, before it is added up. */
type RecordFacts = Omit<ExpandedRecordItem, 'totals'>;

/** What was done of an item as a prescription: from what the record holds, and nothing else. */
export function prescriptionDone(item: RecordFacts): FullPrescription {
  const { limb, side, mode, restriction, tempo, bodyMassKg, bodyMassPercent, done } = item;
  const { load, unit, inflatedBeforeS, deflatedAfterS, instead } = done;
  const sets = done.sets.map(({ repetitions, durationS, restS, load: own }) => ({
    repetitions,
    durationS,
    restS,
    load: own,
  }));
  // The maximum is that of the exercise that was planned.
  const oneRepMax = instead === undefined ? item.load?.inputs.oneRepMax : undefined;
  const moved = { bodyMassKg, bodyMassPercent, oneRepMax, inflatedBeforeS, deflatedAfterS };
  const full = fullPrescription({ mode, limb, side, sets, tempo, restS: 0, restriction, load, unit, ...moved });
  return { ...cuffed(full, item), name: done.instead ?? item.exercise };
}

/** What was done of an item adds up to. */
export const totalsDone = (item: RecordFacts): ExpandedRecordItem['totals'] => totalsOfExercise(prescriptionDone(item));

/** What was done of an item. */
function doneOf(item: ExpandedPlanItem, done: DoneItem, plan: ExpandedPlan): ExpandedRecordItem {
  const { restriction } = item;
  const refuse = (
    name: 'load' | 'heldMmHg' | 'restHeldMmHg' | 'reperfusedBeforeS' | 'occlusionMmHg',
    asked: Asked,
  ): void => {
    if (done[name] !== undefined) {
      throw new InputError([issue('wrong-relation', [name], asked, 'a value')]);
    }
  };
  if (!item.load) refuse('load', LEFT_OUT_NO_LOAD);
  if (restriction === 'none') {
    refuse('reperfusedBeforeS', LEFT_OUT_NO_CUFF);
    refuse('heldMmHg', LEFT_OUT_NO_CUFF);
    refuse('occlusionMmHg', LEFT_OUT_NO_CUFF);
  }
  if (!item.restTarget) refuse('restHeldMmHg', LEFT_OUT_NO_REST);
  const lifted = item.load && { load: done.load ?? item.load.value, unit: loadUnitOf(item.load.unit) };
  const { instead } = done;
  if (instead !== undefined && item.load && done.load === undefined) {
    throw new InputError([issue('missing', ['load'], OTHER_EXERCISE, 'undefined')]);
  }
  const { heldMmHg, restHeldMmHg, occlusionMmHg, reperfusedBeforeS, inflatedBeforeS, deflatedAfterS } = done;
  const { lastSetToFailure } = done;
  const sets = setsDone(item, done);
  const limbCuff = plan.request.limbs.find((other) => isSameLimb(other, item))!;
  const kept = Object.fromEntries(KEPT.map((name) => [name, item[name]])) as Pick<
    ExpandedPlanItem,
    (typeof KEPT)[number]
  >;
  const facts = {
    ...defined(kept),
    ...(limbCuff.cuffWidthCm !== undefined && { cuffWidthCm: limbCuff.cuffWidthCm }),
    ...(limbCuff.circumferenceCm !== undefined && { circumferenceCm: limbCuff.circumferenceCm }),
    done: {
      sets,
      ...lifted,
      stoppedEarly: done.stoppedEarly ?? false,
      ...defined({
        instead,
        heldMmHg,
        restHeldMmHg,
        occlusionMmHg,
        reperfusedBeforeS,
        inflatedBeforeS,
        deflatedAfterS,
      }),
      ...defined({ lastSetToFailure }),
    },
  } as RecordFacts;
  return { ...facts, totals: totalsDone(facts) };
}

/** What was done, with the plan read. */
type Done = Omit<RecordRequest, 'plan'> & { readonly plan: ExpandedPlan };

/** A request with its items; those that were done as planned are added in the order of the plan. */
type Listed = Done & { readonly items: readonly DoneItem[] };

/** What is not listed is asked for, or taken as planned where the request says so. */
function listed(request: Done): Listed {
  const { plan, asPlanned, items = [] } = request;
  if (!asPlanned) {
    const missing = items.flatMap(({ sets }, index) => (sets ? [] : [['items', index, 'sets']]));
    const places = request.items?.length ? missing : [['items']];
    if (places.length === 0) return { ...request, items };
    throw new InputError(places.map((place) => issue('missing', place, UNLESS_PLANNED, 'undefined')));
  }
  const keys = placesOf(items);
  const planned = placesOf(plan.items);
  const others = plan.items.filter((_, index) => !keys.includes(planned[index]!));
  return { ...request, items: [...items, ...others.map(({ exercise, limb, side }) => ({ exercise, limb, side }))] };
}

function itemsOf(request: Listed): ExpandedRecordItem[] {
  const { plan } = request;
  const planned = new Map(placesOf(plan.items).map((key, index) => [key, plan.items[index]!]));
  const there = [...new Set(plan.items.map(placeText))];
  const issues: InputIssue[] = [];
  const items = placesOf(request.items).flatMap((key, index) => {
    const item = planned.get(key);
    const place = ['items', index];
    if (!item || !plan.request.limbs.some((one) => isSameLimb(one, item))) {
      const { exercise, side, limb } = request.items[index]!;
      const expected = need(ITEM_OF_PLAN, { items: there });
      issues.push(issue('wrong-relation', [...place, 'exercise'], expected, placeText({ exercise, side, limb })));
      return [];
    }
    try {
      return [doneOf(item, request.items[index]!, plan)];
    } catch (error) {
      if (!isInputError(error)) throw error;
      issues.push(...error.issues.map((found) => moved(found, (path) => [...place, ...path])));
      return [];
    }
  });
  if (issues.length > 0) throw new InputError(issues);
  return items;
}

function itemCautions(item: ExpandedRecordItem, index: number): Caution[] {
  const { exercise, limb, side, load, upperLoad = load, done, totals } = item;
  const who = { exercise, limb, side };
  const path = ['items', index, 'done'];
  const found: Caution[] = [];
  const compared = comparedHeld(item);
  if (compared) {
    const { as, held, target, occlusion, heldPercent, percentLop } = compared;
    const at = { path: [...path, 'heldMmHg'] };
    if (as === 'above-tried') {
      const { above: most, source } = passedStep('cuff-pressure', held)!;
      found.push(codedCaution('stop', 'held-above-tried', { ...who, held, most: most! }, { ...at, source: source! }));
    } else if (as === 'occludes') {
      found.push(codedCaution('caution', 'held-occludes', { ...who, held, occlusion }, at));
    } else if (as === 'above') {
      found.push(codedCaution('caution', 'held-above-target', { ...who, held, target }, at));
    } else if (as === 'below') {
      found.push(codedCaution('note', 'held-below-target', { ...who, held, target }, at));
    } else if (as === 'share-above' || as === 'share-below') {
      const values = { ...who, held, heldPercent, occlusion, percentLop };
      found.push(codedCaution(as === 'share-above' ? 'caution' : 'note', `held-${as}`, values, at));
    }
  }
  if (done.reperfusedBeforeS !== undefined) {
    const at = [...path, 'reperfusedBeforeS'];
    found.push(...reperfusionCautions(done.reperfusedBeforeS).map((message) => ({ ...message, path: at })));
  }
  if (load && upperLoad && done.load !== undefined && done.instead === undefined) {
    const [lifted, planned] = [heaviestLoad(done.sets, done.load), heaviestLoad(item.sets, upperLoad.value)];
    const values = { ...who, lifted, planned, unit: loadUnitOf(load.unit) };
    if (lifted > planned) found.push(codedCaution('caution', 'lifted-above-plan', values, { path: [...path, 'load'] }));
  }
  if (done.stoppedEarly) found.push(documentCaution('note', 'stopped-early', who, { path: [...path, 'stoppedEarly'] }));
  // The caution for a cuff above the occlusion pressure comes above, with its limb; restriction belongs to the limb.
  const message = ['pressure-above-occlusion', ...(compared?.as === 'above-tried' ? ['cuff-pressure-stop'] : [])];
  const own = totals.cautions.filter((caution) => !message.includes(caution.code) && !isOfLimb(caution));
  return [...found, ...own];
}

const SEVERITY = { stop: 'stop', 'back-off': 'caution', hold: 'note' } as const;

/** What was reported of symptoms and pain; pain by the default rule. */
export function reportedCautions({ symptoms = [], pain = [] }: Pick<RecordRequest, 'symptoms' | 'pain'>): Caution[] {
  const ofSymptoms = [...new Set(symptoms)].map((symptom, index) => {
    const { grade, lower, source } = symptomOf(symptom);
    const more = { path: ['symptoms', index], ...(source && { source }) };
    return grade === 'lower'
      ? codedCaution('caution', 'symptom-lower', { symptom, lower: `lower-${lower!}` }, more)
      : codedCaution('stop', `symptom-${grade}`, { symptom }, more);
  });
  const ofPain = assessPain(pain, CAUTIOUS_PAIN_RULE).flatMap((assessed) => {
    const sentence = painSentence(assessed);
    if (assessed.verdict === 'go-on' || !sentence) return [];
    const { report, moment, rule } = assessed;
    const more = { path: ['pain', pain.indexOf(report), moment!], ...(rule.source && { source: rule.source }) };
    return [codedCaution(SEVERITY[assessed.verdict], ...sentence, more)];
  });
  return [...ofSymptoms, ...ofPain];
}

/** A session that took less time than its sets do: one of the two is wrong. */
function lengthCautions(
  { sessionS }: Pick<RecordRequest, 'sessionS'>,
  items: readonly ExpandedRecordItem[],
): Caution[] {
  // Both sides of an exercise may be done at once: the longest limb is the least time it took.
  const ofLimbs = limbsIn(items).map((place) =>
    sum(items.filter((item) => isSameLimb(item, place)).map(({ totals }) => totals.timeUnderTension.value)),
  );
  const sets = Math.max(...ofLimbs);
  if (sessionS === undefined || sessionS >= sets) return [];
  return [codedCaution('caution', 'session-shorter-than-sets', { session: sessionS, sets }, { path: ['sessionS'] })];
}

/** A session is of no day before its plan, nor before what the plan was made from was measured. */
function checkDay({ plan: { request }, date }: Done): void {
  const measured = request.limbs.flatMap((limb) => measuredDay(limb) ?? []);
  const [first, what] = [
    [request.date, NOT_BEFORE_PLAN] as const,
    ...measured.map((day) => [day, NOT_BEFORE_MEASURED] as const),
  ].find(([day]) => day !== undefined && day > date) ?? [undefined];
  if (first === undefined) return;
  throw new InputError([issue('wrong-relation', ['date'], need(what!, { date: first }), date)]);
}

/** The cautions of a record that only its plan tells; the others come of what the record holds. */
const OF_PLAN = ['item-not-recorded', 'document-unverified'];

/** What was done in a session and is not worked out. */
type SessionFacts = Pick<
  ExpandedRecord,
  'date' | 'posture' | 'items' | 'symptoms' | 'stops' | 'cautions' | keyof Feelings
> & {
  readonly label?: string | undefined;
  readonly sessionOfDay?: number | undefined;
  readonly systolicMmHg?: number | undefined;
  readonly diastolicMmHg?: number | undefined;
  readonly dayCheck?: DayCheck | undefined;
};

/** What the blood pressure of the day leads to; both readings go together. */
function readingCautions({ systolicMmHg, diastolicMmHg }: SessionFacts): Caution[] {
  if (systolicMmHg === undefined && diastolicMmHg === undefined) return [];
  for (const [name, reading] of Object.entries({ systolicMmHg, diastolicMmHg })) {
    if (reading === undefined)
      throw new InputError([
        issue(
          'missing',
          [name],
          need(GIVEN_WITH, { field: name === 'systolicMmHg' ? 'diastolicMmHg' : 'systolicMmHg' }),
          'undefined',
        ),
      ]);
  }
  checkBloodPressure({ systolicMmHg: systolicMmHg!, diastolicMmHg: diastolicMmHg! });
  return bloodPressureCautions(systolicMmHg!, diastolicMmHg!);
}

/** A record from what it holds: what was done and reported, with the stops and the cautions that come from its plan. */
export function recordFrom(facts: SessionFacts): ExpandedRecord {
  const { date, sessionOfDay, label, posture, items, symptoms, pain, sessionRpe, sessionS, notes } = facts;
  const { systolicMmHg, diastolicMmHg } = facts;
  const dayCheck = facts.dayCheck && answersAgain(facts.dayCheck, ['dayCheck']);
  const ofDay = dayCheck ? answersCautions(dayCheck, date) : [];
  const limbs = limbsOf(items);
  const asPlanned = items.some(
    ({ restriction, done: { heldMmHg } }) => restriction !== 'none' && heldMmHg === undefined,
  );
  const lowerLoad = items.some(({ load, upperLoad, done }) => upperLoad && done.load === load?.value && !done.instead);
  const cautions = uniqueCautions([
    ...readingCautions(facts),
    ...reportedCautions(facts),
    ...items.flatMap(itemCautions),
    ...limbs.flatMap(({ cautions }) => cautions),
    ...lengthCautions(facts, items),
    ...facts.cautions.filter(({ code }) => OF_PLAN.includes(code)),
  ]);
  return {
    document: 'record',
    schemaVersion: 2,
    libraryVersion: version,
    date,
    ...defined({ sessionOfDay, label }),
    ...defined({ systolicMmHg, diastolicMmHg }),
    posture,
    items,
    limbs,
    ...(sessionRpe !== undefined && sessionS !== undefined && { sessionLoad: sessionLoadOf(sessionRpe, sessionS) }),
    symptoms: [...new Set(symptoms)],
    ...defined({ dayCheck, pain, sessionRpe, sessionS, notes }),
    assumptions: [
      assumption('tempo-not-recorded'),
      ...(asPlanned ? [assumption('pressure-as-planned')] : []),
      ...(lowerLoad ? [assumption('lower-load-lifted')] : []),
    ],
    stops: mergeStops(asOfDay(facts.stops, date), stopsOf(ofDay, dayCheck?.request.date), stopsOf(cautions, date)),
    cautions: uniqueCautions([...ofDay, ...cautions]),
    disclaimers: [
      documentDisclaimer('record-clears-no-one'),
      documentDisclaimer('local-codes-decide'),
      documentDisclaimer('watch-afterwards'),
    ],
  } as ExpandedRecord;
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
export const recordSession = /* @__PURE__ */ withInput(function recordSession(request: RecordRequest): SessionRecord {
  const { plan: given, ...rest } = plainInput(request, RECORD_REQUEST) as Partial<RecordRequest>;
  const { value, issues } = parseDocument<unknown>(doneRequest, rest);
  const found: InputIssue[] = [];
  const plan = planInto(found, given, ['plan']);
  if (!plan || value === undefined) throw new InputError([...found, ...issues]);
  const done: Done = { ...(value as Omit<RecordRequest, 'plan'>), plan };
  checkDay(done);
  const items = itemsOf(listed(done));
  const recorded = placesOf(items);
  const keys = placesOf(plan.items);
  const left = plan.items
    .filter((_, index) => !recorded.includes(keys[index]!))
    .map(({ exercise, limb, side }) => documentCaution('note', 'item-not-recorded', { exercise, limb, side }));
  const { label, posture } = plan.request;
  const expanded = recordFrom({
    ...done,
    label,
    posture,
    items,
    symptoms: done.symptoms ?? [],
    stops: plan.stops,
    cautions: [...plan.cautions, ...left],
  });
  return ownDocument(compact<SessionRecord>(expanded, textByCode));
});
