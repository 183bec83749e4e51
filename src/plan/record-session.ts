import type { Answer, Assumption, Caution } from '../answer/answer.js';
import { idsIn } from '../answer/cite.js';
import { defined } from '../answer/defined.js';
import { InputError, issue, isInputError, moved, type InputIssue } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import type { SourceId } from '../evidence/sources.js';
import { format, formatUnit } from '../quantity/format.js';
import { loadUnitOf, type Limb, type LoadUnit, type Posture, type Side } from '../quantity/quantities.js';
import { addUp, sessionLoadOf } from '../session/account.js';
import { isOfLimb } from '../session/exposure.js';
import { reperfusionCautions } from '../session/limbs.js';
import { fullPrescription, type FullPrescription, type Prescription } from '../session/prescription.js';
import { onceEach } from './gravest-first.js';
import { limbsOf } from './limb-totals.js';
import { assumption, caution, planMessages } from './messages.js';
import { parseDocument } from './parse.js';
import { isSameLimb, placesOf } from './places.js';
import { documentInto } from './read-document.js';
import { doneRequest } from './schema.js';
import { say, type symptoms } from './standing.js';
import { mergeStops, stopsOf, type Stop } from './stops.js';
import type { LimbTotals, Plan, PlanItem, PlanSet, PlanSetRequest, StandingSentence } from './types.js';

/** A sign to stop at, or one of the days after. */
export type Symptom = (typeof symptoms)[number];

/** How a session felt. */
export interface Feelings {
  /** Pain on the 0 to 10 numeric rating scale. */
  readonly painBefore?: number | undefined;
  readonly painDuring?: number | undefined;
  readonly painAfter?: number | undefined;
  /** Effort of the whole session, 0 to 10, asked for about 30 min after it. */
  readonly sessionRpe?: number | undefined;
  /** How long the whole session took [s]; with `sessionRpe` it gives the session load. */
  readonly sessionS?: number | undefined;
  readonly notes?: string | undefined;
}

/** What was done of one item of the plan. */
export interface DoneItem {
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
  /** The sets that were done, by repetitions or time [s]; a rest [s] left out is taken as planned. */
  readonly sets: readonly PlanSetRequest[];
  /** Load really lifted, in the plan’s unit; that of the plan when left out. */
  readonly load?: number | undefined;
  /** Cuff pressure really held [mmHg]. */
  readonly heldMmHg?: number | undefined;
  /** Cuff pressure really held in the rests, with partial restriction [mmHg]. */
  readonly restHeldMmHg?: number | undefined;
  /** How long this limb’s cuff was down since its exercise before [s]. */
  readonly reperfusedBeforeS?: number | undefined;
  /** How long the cuff was up before the first set, and after the last [s]; 0 when left out. */
  readonly inflatedBeforeS?: number | undefined;
  readonly deflatedAfterS?: number | undefined;
  readonly stoppedEarly?: boolean | undefined;
  /** Whether the last set was taken to failure. */
  readonly lastSetToFailure?: boolean | undefined;
}

/** What {@link recordSession} takes. */
export interface RecordRequest extends Feelings {
  readonly plan: Plan;
  /** Day of the session, `YYYY-MM-DD`; the library has no clock. */
  readonly date: string;
  readonly items: readonly DoneItem[];
  readonly symptoms?: readonly Symptom[] | undefined;
}

/** What a record keeps of the plan’s item. */
const KEPT = [
  'exercise',
  'limb',
  'side',
  'mode',
  'posture',
  'target',
  'restTarget',
  'load',
  'intensityPercent',
  'bodyMassKg',
  'bodyMassPercent',
  'sets',
  'lastSetToFailure',
  'tempo',
  'restriction',
] as const satisfies (keyof PlanItem)[];

/** One exercise on one limb: what the plan had, and what was done. */
export interface RecordItem extends Pick<PlanItem, (typeof KEPT)[number]> {
  /** Left out where the cuff is not known. */
  readonly cuffWidthCm?: number;
  readonly circumferenceCm?: number;
  readonly done: {
    readonly sets: PlanItem['sets'];
    /** Absent where the plan has no load. */
    readonly load?: number;
    readonly unit?: LoadUnit;
    readonly heldMmHg?: number;
    readonly restHeldMmHg?: number;
    readonly reperfusedBeforeS?: number;
    readonly inflatedBeforeS?: number;
    readonly deflatedAfterS?: number;
    readonly stoppedEarly: boolean;
    /** Left out where it was not recorded. */
    readonly lastSetToFailure?: boolean;
  };
  /** What was done adds up to. */
  readonly totals: PlanItem['totals'];
}

/** A session as it was done: plain JSON, to store, review and progress from. */
export interface SessionRecord extends Feelings {
  readonly document: 'record';
  readonly schemaVersion: 1;
  readonly date: string;
  readonly label?: string;
  readonly posture: Posture;
  readonly items: readonly RecordItem[];
  readonly limbs: readonly LimbTotals[];
  /** Present where both effort and the time the session took were recorded. */
  readonly sessionLoad?: Answer<'session-load'>;
  readonly symptoms: readonly Symptom[];
  readonly assumptions: readonly Assumption[];
  /** Reasons not to train: those of the plan and of this session, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}

/** The sets that were done, with their rests filled in from the plan. */
function setsDone({ sets: planned, tempo }: PlanItem, done: readonly PlanSetRequest[]): PlanSet[] {
  const issues: InputIssue[] = [];
  const ask = (index: number, name: string, expected: string): void => {
    issues.push(issue('missing', ['sets', index, name], expected, 'undefined'));
  };
  const sets = done.map(({ repetitions, durationS, restS }, index) => {
    if (durationS === undefined && repetitions === undefined) ask(index, 'repetitions', 'given, or durationS');
    else if (durationS === undefined && !tempo) ask(index, 'durationS', 'given, because the plan has no tempo');
    const asPlanned = index < planned.length - 1 ? planned[index]?.restS : undefined;
    const rest = index === done.length - 1 ? 0 : (restS ?? asPlanned);
    if (rest === undefined) ask(index, 'restS', 'given, because the plan has no rest after this set');
    return defined({ repetitions, durationS, restS: rest ?? 0 }) as PlanSet;
  });
  if (issues.length > 0) throw new InputError(issues);
  return sets;
}

/** The cuff as it was held, and as planned where that is not known. */
function cuffed(full: FullPrescription, { target, restTarget }: PlanItem, done: DoneItem): FullPrescription {
  if (full.restriction === 'none') return full;
  const pressureMmHg = done.heldMmHg ?? target!.value;
  const rest = restTarget && (done.restHeldMmHg ?? restTarget.value);
  if (rest !== undefined && rest >= pressureMmHg) {
    const expected = `below the ${formatUnit(pressureMmHg, 'mm[Hg]')} of the sets`;
    throw new InputError([issue('wrong-relation', ['restHeldMmHg'], expected, formatUnit(rest, 'mm[Hg]'))]);
  }
  const { occlusion } = target!.inputs as { occlusion: Answer<'occlusion-pressure'> };
  return {
    ...full,
    sets: full.sets.map((set) => ({ ...set, pressureMmHg })),
    occlusionMmHg: occlusion.value,
    ...(rest !== undefined && { restPressureMmHg: rest }),
  };
}

/** What was done of an item. */
function doneOf(item: PlanItem, done: DoneItem, plan: Plan): RecordItem {
  const { limb, side, mode, restriction, tempo, oneRepMax, bodyMassKg, bodyMassPercent } = item;
  const refuse = (name: 'load' | 'restHeldMmHg' | 'reperfusedBeforeS', why: string): void => {
    if (done[name] !== undefined) {
      throw new InputError([issue('wrong-relation', [name], `left out, because the plan has no ${why}`, 'a value')]);
    }
  };
  if (!item.load) refuse('load', 'load here');
  if (restriction === 'none') refuse('reperfusedBeforeS', 'cuff here');
  if (!item.restTarget) refuse('restHeldMmHg', 'lower pressure here');
  const lifted = item.load && { load: done.load ?? item.load.value, unit: loadUnitOf(item.load.unit) };
  const { heldMmHg, restHeldMmHg, reperfusedBeforeS, inflatedBeforeS, deflatedAfterS, lastSetToFailure } = done;
  const sets = setsDone(item, done.sets);
  const moved = { bodyMassKg, bodyMassPercent, oneRepMax, inflatedBeforeS, deflatedAfterS };
  const full = fullPrescription(
    defined({ mode, limb, side, sets, tempo, restS: 0, restriction, ...lifted, ...moved }) as Prescription,
  );
  const worn = plan.request.limbs.find((other) => isSameLimb(other, item))!;
  const kept = Object.fromEntries(KEPT.map((name) => [name, item[name]])) as Pick<PlanItem, (typeof KEPT)[number]>;
  return {
    ...defined(kept),
    ...(worn.cuffWidthCm !== undefined && { cuffWidthCm: worn.cuffWidthCm }),
    ...(worn.circumferenceCm !== undefined && { circumferenceCm: worn.circumferenceCm }),
    done: {
      sets,
      ...lifted,
      stoppedEarly: done.stoppedEarly ?? false,
      ...defined({ heldMmHg, restHeldMmHg, reperfusedBeforeS, inflatedBeforeS, deflatedAfterS, lastSetToFailure }),
    },
    totals: addUp(cuffed(full, item, done)),
  } as RecordItem;
}

function itemsOf(request: RecordRequest): RecordItem[] {
  const { plan } = request;
  const planned = new Map(placesOf(plan.items).map((key, index) => [key, plan.items[index]!]));
  const whole = (item: Pick<PlanItem, 'exercise' | 'side' | 'limb'>): string =>
    `${item.exercise}, ${item.side} ${item.limb}`;
  const there = [...new Set(plan.items.map(whole))].join('; ');
  const issues: InputIssue[] = [];
  const items = placesOf(request.items).flatMap((key, index) => {
    const item = planned.get(key);
    const place = ['items', index];
    if (!item || !plan.request.limbs.some((one) => isSameLimb(one, item))) {
      const { exercise, side, limb } = request.items[index]!;
      const expected = `an item of the plan, recorded no more often than it is planned: ${there}`;
      issues.push(issue('wrong-relation', [...place, 'exercise'], expected, whole({ exercise, side, limb })));
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

function itemCautions({ exercise, limb, side, target, load, done, totals }: RecordItem, index: number): Caution[] {
  const who = { exercise, limb, side };
  const path = ['items', index, 'done'];
  const found: Caution[] = [];
  const { heldMmHg: held } = done;
  if (target && held !== undefined) {
    const occlusion = target.inputs['occlusion'] as Answer<'occlusion-pressure'>;
    const at = { path: [...path, 'heldMmHg'] };
    if (held >= occlusion.value) {
      found.push(caution('caution', 'held-occludes', { ...who, held, occlusion: format(occlusion.value) }, at));
    } else if (held > target.value) {
      found.push(caution('caution', 'held-above-target', { ...who, held, target: format(target.value) }, at));
    }
  }
  if (done.reperfusedBeforeS !== undefined) {
    const at = [...path, 'reperfusedBeforeS'];
    found.push(...reperfusionCautions(done.reperfusedBeforeS).map((said) => ({ ...said, path: at })));
  }
  if (load && done.load !== undefined && done.load > load.value) {
    const values = { ...who, lifted: formatUnit(done.load, load.unit), planned: formatUnit(load.value, load.unit) };
    found.push(caution('caution', 'lifted-above-plan', values, { path: [...path, 'load'] }));
  }
  if (done.stoppedEarly) found.push(caution('note', 'stopped-early', who, { path: [...path, 'stoppedEarly'] }));
  // That the cuff was held above the occlusion pressure is said above, with whose it was; a limb’s restriction, of it.
  const own = totals.cautions.filter((said) => said.code !== 'pressure-above-occlusion' && !isOfLimb(said));
  return [...found, ...own];
}

/** Whether pain is known to be higher than before the session. */
export const hasRisen = (before: number | undefined, pain: number | undefined): boolean =>
  before !== undefined && pain !== undefined && pain > before;

function cautionsOf(request: RecordRequest, items: readonly RecordItem[], limbs: readonly LimbTotals[]): Caution[] {
  const { painBefore, painDuring, painAfter } = request;
  const found = [...new Set(request.symptoms)].map((code, index) =>
    caution('stop', 'symptom-reported', { symptom: planMessages[code] }, { path: ['symptoms', index] }),
  );
  if (hasRisen(painBefore, painAfter)) {
    const values = { before: painBefore!, after: painAfter! };
    found.push(caution('caution', 'pain-stayed-up', values, { path: ['painAfter'] }));
  }
  if (hasRisen(painBefore, painDuring)) {
    const values = { before: painBefore!, during: painDuring! };
    found.push(caution('caution', 'pain-rose-during', values, { path: ['painDuring'] }));
  }
  const recorded = placesOf(items);
  const keys = placesOf(request.plan.items);
  const left = request.plan.items
    .filter((_, index) => !recorded.includes(keys[index]!))
    .map(({ exercise, limb, side }) => caution('note', 'item-not-recorded', { exercise, limb, side }));
  return onceEach([...found, ...items.flatMap(itemCautions), ...limbs.flatMap(({ cautions }) => cautions), ...left]);
}

/**
 * What was done of a plan, as one JSON document: for each item the sets, load and cuff pressure really done beside
 * those of the plan, and what they add up to; then symptoms, pain, effort and notes.
 *
 * Pain and effort are 0 to 10. A reported sign to stop at brings a caution of severity `stop`. What is left out of
 * the request stays unknown, save for load and rests, and pressure for pressure × time, which are taken as planned.
 *
 * - Evidence: totals carry their own grades, see `accountSession`. That pain and symptoms are recorded so is `practice`.
 *
 * @param request - the `plan`; the `date` (`YYYY-MM-DD`); `items` done, with `sets` (repetitions, or `durationS`
 *   [s]), `restS` [s], `load` [the plan’s unit], `heldMmHg` and `restHeldMmHg` [mmHg],
 *   `reperfusedBeforeS`, `inflatedBeforeS` and `deflatedAfterS` [s]; `symptoms`; `painBefore`, `painDuring`, `painAfter`, `sessionRpe` [0 to 10]; `sessionS` [s];
 *   `notes`.
 * @returns the record; print it with `explain(record)`, progress from it with `nextSession`.
 * @throws InputError naming every wrong field; also where something was done that the plan does not have.
 *
 * @example
 * ```ts
 * import { planSession, recordSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percent: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percent: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * const sets = [30, 15, 15, 9].map((repetitions) => ({ repetitions }));
 * const record = recordSession({
 *   plan, date: '2026-03-02', items: [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets }], sessionRpe: 6,
 * });
 * record.items[0]?.totals.volumeLoad?.value; // => 1035
 * ```
 */
export function recordSession(request: RecordRequest): SessionRecord {
  const { plan: given, ...rest } = plainInput(request, 'what was done of a plan') as Partial<RecordRequest>;
  const { value, issues } = parseDocument<unknown>(doneRequest, rest);
  const found: InputIssue[] = [];
  const plan = documentInto(found, 'plan', given, ['plan']);
  if (!plan || value === undefined) throw new InputError([...found, ...issues]);
  const done: RecordRequest = { ...(value as Omit<RecordRequest, 'plan'>), plan };
  const items = itemsOf(done);
  const limbs = limbsOf(items);
  const { label } = done.plan.request;
  const { painBefore, painDuring, painAfter, sessionRpe, sessionS, notes } = done;
  const asPlanned = items.some(
    ({ restriction, done: { heldMmHg } }) => restriction !== 'none' && heldMmHg === undefined,
  );
  const cautions = cautionsOf(done, items, limbs);
  const record = {
    document: 'record',
    schemaVersion: 1,
    date: done.date,
    ...(label !== undefined && { label }),
    posture: done.plan.request.posture,
    items,
    limbs,
    ...(sessionRpe !== undefined && sessionS !== undefined && { sessionLoad: sessionLoadOf(sessionRpe, sessionS) }),
    symptoms: [...new Set(done.symptoms)],
    ...defined({ painBefore, painDuring, painAfter, sessionRpe, sessionS, notes }),
    assumptions: [assumption('tempo-not-recorded'), ...(asPlanned ? [assumption('pressure-as-planned')] : [])],
    stops: mergeStops(plan.stops, stopsOf(cautions, done.date)),
    cautions,
    standing: [say('record-clears-no-one'), say('local-codes-decide'), say('watch-afterwards')],
  } as const;
  return { ...record, sources: idsIn(record) };
}
