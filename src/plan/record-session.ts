import type { Assumption, Caution } from '../answer/answer.js';
import { cite } from '../answer/cite.js';
import { attempt, InputError, issue, isInputError, moved, type InputIssue } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import type { SourceId } from '../evidence/sources.js';
import { format } from '../quantity/format.js';
import { loadUnitOf, type Limb, type LoadUnit, type Posture, type Side } from '../quantity/quantities.js';
import { addUp } from '../session/account.js';
import { fullPrescription } from '../session/prescription.js';
import { onceEach } from './gravest-first.js';
import { limbsOf } from './limb-totals.js';
import { assumption, caution, planMessages } from './messages.js';
import { parseDocument } from './parse.js';
import { documentOf } from './read-document.js';
import { doneRequest } from './schema.js';
import { say, type symptoms } from './standing.js';
import type { LimbTotals, Plan, PlanItem, StandingSentence } from './types.js';

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
  readonly notes?: string | undefined;
}

/** What was done of one item of the plan. */
export interface DoneItem {
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
  /** The sets that were done, each with its repetitions; a rest [s] left out is taken as planned. */
  readonly sets: readonly { readonly repetitions: number; readonly restS?: number | undefined }[];
  /** Load really lifted, in the plan’s unit; that of the plan when left out. */
  readonly load?: number | undefined;
  /** Cuff pressure really held [mmHg]. */
  readonly heldMmHg?: number | undefined;
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

/** One exercise on one limb: what the plan had, and what was done. */
export interface RecordItem extends Pick<
  PlanItem,
  'exercise' | 'limb' | 'side' | 'mode' | 'target' | 'load' | 'sets' | 'tempo' | 'restriction'
> {
  readonly cuffWidthCm: number;
  readonly circumferenceCm?: number;
  readonly done: {
    readonly sets: PlanItem['sets'];
    readonly load: number;
    readonly unit: LoadUnit;
    readonly heldMmHg?: number;
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
  readonly symptoms: readonly Symptom[];
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}

/** One exercise on one limb, told apart from others; the same one listed again has the next number. */
export function placesOf(items: readonly { exercise: string; limb: Limb; side: Side }[]): string[] {
  const seen = new Map<string, number>();
  return items.map(({ exercise, limb, side }) => {
    const key = JSON.stringify([exercise, limb, side]);
    const times = (seen.get(key) ?? 0) + 1;
    seen.set(key, times);
    return `${key} ${times}`;
  });
}

/** What was done of an item, its rests filled in from the plan. */
function doneOf(item: PlanItem, done: DoneItem, plan: Plan): RecordItem {
  const unit = loadUnitOf(item.load.unit);
  const load = done.load ?? item.load.value;
  const last = done.sets.length - 1;
  const issues: InputIssue[] = [];
  const sets = done.sets.map(({ repetitions, restS }, index) => {
    if (index === last) return { repetitions, restS: 0 };
    const planned = index < item.sets.length - 1 ? item.sets[index]?.restS : undefined;
    const rest = restS ?? planned;
    if (rest === undefined) {
      const expected = 'given, because the plan has no rest after this set';
      issues.push(issue('missing', ['sets', index, 'restS'], expected, 'undefined'));
    }
    return { repetitions, restS: rest ?? 0 };
  });
  if (issues.length > 0) throw new InputError(issues);
  const { exercise, limb, side, mode, target, tempo, restriction } = item;
  const worn = plan.request.limbs.find((other) => other.limb === limb && other.side === side);
  return {
    exercise,
    limb,
    side,
    ...(mode && { mode }),
    target,
    load: item.load,
    sets: item.sets,
    tempo,
    restriction,
    cuffWidthCm: worn!.cuffWidthCm,
    ...(worn!.circumferenceCm !== undefined && { circumferenceCm: worn!.circumferenceCm }),
    done: {
      sets,
      load,
      unit,
      ...(done.heldMmHg !== undefined && { heldMmHg: done.heldMmHg }),
      stoppedEarly: done.stoppedEarly ?? false,
      ...(done.lastSetToFailure !== undefined && { lastSetToFailure: done.lastSetToFailure }),
    },
    totals: addUp(fullPrescription({ sets, tempo, restS: 0, restriction, load, unit })),
  };
}

function itemsOf(request: RecordRequest): RecordItem[] {
  const { plan } = request;
  const planned = new Map(placesOf(plan.items).map((key, index) => [key, plan.items[index]!]));
  const issues: InputIssue[] = [];
  const items = placesOf(request.items).flatMap((key, index) => {
    const item = planned.get(key);
    const place = ['items', index];
    if (!item || !plan.request.limbs.some(({ limb, side }) => limb === item.limb && side === item.side)) {
      const { exercise, side, limb } = request.items[index]!;
      const expected = 'an item of the plan, recorded no more often than it is planned';
      issues.push(issue('wrong-relation', [...place, 'exercise'], expected, `${exercise}, ${side} ${limb}`));
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

function itemCautions(
  { exercise, limb, side, target, restriction, done, totals }: RecordItem,
  index: number,
): Caution[] {
  const who = { exercise, limb, side };
  const path = ['items', index, 'done'];
  const found: Caution[] = [];
  const { heldMmHg: held } = done;
  const occlusion = target.inputs['occlusion'] as PlanItem['occlusion'];
  if (restriction !== 'none' && held !== undefined) {
    const at = { path: [...path, 'heldMmHg'] };
    if (held >= occlusion.value) {
      found.push(caution('caution', 'held-occludes', { ...who, held, occlusion: format(occlusion.value) }, at));
    } else if (held > target.value) {
      found.push(caution('caution', 'held-above-target', { ...who, held, target: format(target.value) }, at));
    }
  }
  if (done.stoppedEarly) found.push(caution('note', 'stopped-early', who, { path: [...path, 'stoppedEarly'] }));
  return [...found, ...totals.cautions];
}

function cautionsOf(request: RecordRequest, items: readonly RecordItem[], limbs: readonly LimbTotals[]): Caution[] {
  const { painBefore, painDuring, painAfter } = request;
  const found = [...new Set(request.symptoms)].map((code, index) =>
    caution('stop', 'symptom-reported', { symptom: planMessages[code] }, { path: ['symptoms', index] }),
  );
  if (painBefore !== undefined && painAfter !== undefined && painAfter > painBefore) {
    const values = { before: painBefore, after: painAfter };
    found.push(caution('caution', 'pain-stayed-up', values, { path: ['painAfter'] }));
  }
  if (painBefore !== undefined && painDuring !== undefined && painDuring > painBefore) {
    const values = { before: painBefore, during: painDuring };
    found.push(caution('caution', 'pain-rose-during', values, { path: ['painDuring'] }));
  }
  return onceEach([...found, ...items.flatMap(itemCautions), ...limbs.flatMap(({ cautions }) => cautions)]);
}

/**
 * What was done of a plan, as one JSON document: for each item the sets, load and cuff pressure really done beside
 * those of the plan, and what they add up to; then symptoms, pain, effort and notes.
 *
 * Pain and effort are 0 to 10. A reported sign to stop at brings a caution of severity `stop`. What is left out of
 * the request stays unknown, save for load and rests, which are taken as planned.
 *
 * - Evidence: totals carry their own grades, see `accountSession`. That pain and symptoms are recorded so is `practice`.
 *
 * @param request - the `plan`; the `date` (`YYYY-MM-DD`); `items` done, with `sets`, `restS` [s], `load` [the plan’s
 *   unit], `heldMmHg` [mmHg]; `symptoms`; `painBefore`, `painDuring`, `painAfter`, `sessionRpe` [0 to 10]; `notes`.
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
  const plan = attempt((document: unknown) => documentOf(['plan'], document, ['plan']), given);
  if (!plan.ok || value === undefined) throw new InputError([...(plan.ok ? [] : plan.issues), ...issues]);
  const done: RecordRequest = { ...(value as Omit<RecordRequest, 'plan'>), plan: plan.value };
  const items = itemsOf(done);
  const limbs = limbsOf(items);
  const { label } = done.plan.request;
  const { painBefore, painDuring, painAfter, sessionRpe, notes } = done;
  const record = {
    document: 'record',
    schemaVersion: 1,
    date: done.date,
    ...(label !== undefined && { label }),
    posture: done.plan.request.posture,
    items,
    limbs,
    symptoms: [...new Set(done.symptoms)],
    ...(painBefore !== undefined && { painBefore }),
    ...(painDuring !== undefined && { painDuring }),
    ...(painAfter !== undefined && { painAfter }),
    ...(sessionRpe !== undefined && { sessionRpe }),
    ...(notes !== undefined && { notes }),
    assumptions: [assumption('tempo-not-recorded')],
    cautions: cautionsOf(done, items, limbs),
    standing: [say('record-clears-no-one'), say('local-codes-decide'), say('watch-afterwards')],
  } as const;
  return { ...record, sources: cite(record).map(({ id }) => id) };
}
