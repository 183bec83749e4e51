import { Math } from '../quantity/maths.js';
import type { Assumption, Caution } from '../answer/answer.js';
import { guardCautions } from '../answer/guards.js';
import { idsIn } from '../answer/cite.js';
import { daysBetween } from '../answer/day.js';
import { defined } from '../answer/defined.js';
import { InputError, issue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { targetCuffPressure, type CuffPressure, type TargetInput } from '../pressure/target.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal, product, sum } from '../quantity/decimal.js';
import { formatUnit } from '../quantity/format.js';
import {
  loadUnitCode,
  loadUnitOf,
  quantities,
  type Limb,
  type LoadUnit,
  type Quantity,
  type Side,
} from '../quantity/quantities.js';
import { loadBar, type Inventory } from '../strength/plates.js';
import { DAY_MS, DAY_WORDS, isDay } from './days.js';
import { onceEach } from './gravest-first.js';
import { assumption, planMessages } from './messages.js';
import { parseDocument } from './parse.js';
import { progressionRules, type ProgressionRule, type ProgressionRuleId } from './progression-rules.js';
import { exerciseFinder, isSameLimb, placesOf } from './places.js';
import { documentInto } from './read-document.js';
import { hasRisen, type RecordItem, type SessionRecord } from './record-session.js';
import { decisionsRequest } from './schema.js';
import { setCounts } from './set-counts.js';
import { say } from './standing.js';
import { applyDecisions, mergeStops, standingStops, stopsOf, type Stop, type StopDecision } from './stops.js';
import type { Plan, PlanExercise, PlanItem, StandingSentence } from './types.js';

/** What {@link nextSession} takes. */
export interface ProgressionRequest {
  /** The plan that was trained by. */
  readonly plan: Plan;
  /** What was done, in any order; the last sessions are looked at. */
  readonly records: readonly SessionRecord[];
  readonly rule: ProgressionRuleId;
  /** Percent of occlusion pressure to go to when the rule is met, instead of a heavier load. */
  readonly nextPercent?: number | undefined;
  /** Day of the next session, `YYYY-MM-DD`; that of the last record when left out. */
  readonly date?: string | undefined;
  /** From so many days between the last record and `date` on, nothing is raised; no number for it is published. */
  readonly longBreakDays?: number | undefined;
  /** Decisions of practitioners about stops of the plan and the records. Each lifts the stop it names. */
  readonly decisions?: readonly StopDecision[] | undefined;
  /** Day the maximum was tested, `YYYY-MM-DD`. */
  readonly oneRepMaxTestedOn?: string | undefined;
}

/** What is proposed for an exercise. */
export type ProgressionAction = 'raise-load' | 'raise-pressure' | 'repeat' | 'back-off' | 'stop';

/** What is proposed for one exercise on one limb. `to` is left out where no number can be given. */
export interface ProposalItem {
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
  readonly action: ProgressionAction;
  /** Left out where the plan has no load. */
  readonly load?: { readonly from: number; readonly to?: number; readonly unit: LoadUnit };
  /** Left out where the plan knows no maximum. */
  readonly percentOfMaximum?: { readonly from: number; readonly to?: number };
  /** Left out where there is no cuff. */
  readonly percentOfOcclusion?: { readonly from: number; readonly to?: number };
  /** What the gauge is set to [mmHg]. */
  readonly cuffMmHg?: { readonly from: number; readonly to?: number };
  readonly reasons: readonly Assumption[];
}

/** Something to measure or test again. */
export interface MeasureAgain extends Assumption {
  readonly what: 'occlusion-pressure' | 'one-repetition-maximum';
  /** Whether the documents show that it is due; otherwise it is a reminder. */
  readonly due: boolean;
  readonly evidence: Grade;
  readonly source?: SourceId;
}

/** A proposal for the next session: plain JSON. */
export interface Proposal {
  readonly document: 'proposal';
  readonly schemaVersion: 1;
  readonly rule: {
    readonly id: ProgressionRuleId;
    readonly text: string;
    readonly evidence: Grade;
    readonly source?: SourceId;
  };
  readonly items: readonly ProposalItem[];
  readonly measureAgain: readonly MeasureAgain[];
  /** Reasons not to train: those of the plan and of every record, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** The cautions of the last session and of a new cuff pressure, gravest first. */
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}

const RULES = progressionRules.map(({ id }) => id);

function read(request: ProgressionRequest) {
  const reader = new Reader(request);
  const plan = reader.anything('plan', 'a plan of this library');
  const records = reader.values('records', 'a list of records of this library');
  const rule = reader.choice('rule', RULES);
  const nextPercent = reader.optionalNumber('nextPercent');
  const date = reader.optionalText('date', DAY_WORDS, isDay);
  const longBreakDays = reader.optionalNumber('longBreakDays', LONG_BREAK);
  const testedOn = reader.optionalText('oneRepMaxTestedOn', DAY_WORDS, isDay);
  const decided = reader.anything('decisions', 'a list of decisions about stops', true);
  if (longBreakDays !== undefined && !reader.has('date')) reader.missing('date', DAY_WORDS);
  if (date !== undefined && testedOn !== undefined && testedOn > date) {
    reader.report('wrong-relation', 'oneRepMaxTestedOn', `not after ${date}`, testedOn);
  }
  reader.done();
  const { value, issues } = parseDocument<{ decisions?: readonly StopDecision[] | undefined }>(decisionsRequest, {
    decisions: decided,
  });
  const taken = {
    plan: documentInto(issues, 'plan', plan, ['plan']),
    records: records.map((record, index) => documentInto(issues, 'record', record, ['records', index])),
  };
  if (issues.length > 0) throw new InputError(issues);
  return {
    plan: taken.plan!,
    // Stable, so two sessions of one day stay in the order given.
    records: (taken.records as SessionRecord[]).sort((a, b) => (a.date < b.date ? -1 : Number(a.date > b.date))),
    rule: progressionRules.find(({ id }) => id === rule)! as ProgressionRule & { id: ProgressionRuleId },
    nextPercent,
    date,
    longBreakDays,
    testedOn,
    decisions: value?.decisions,
  };
}

/** A weight just under another: as near as decimals of 12 digits tell apart from it. */
const justUnder = (weight: number): number => weight * (1 - 1e-9);

/** The weights that a bar makes beside `load`. */
function onBar(load: number, atLeast: number, inventory: Inventory) {
  const under = (weight: number): number => {
    const loading = loadBar(weight, inventory, 'down');
    return 'total' in loading ? loading.total : NaN;
  };
  const lighter = under(justUnder(load));
  const enough = (weight: number): boolean => weight > load && weight >= atLeast;
  const pair = 2 * Math.min(...inventory.plates.map(({ mass }) => mass));
  const most = quantities.load.max;
  let heavier = NaN;
  if (enough(under(most))) {
    // Reach for more until a weight is heavy enough, the heaviest at the latest, then take the lightest that still is.
    for (let more = pair; !enough(heavier); more *= 2) heavier = under(Math.min(sum([atLeast, more]), most));
    for (let next = under(justUnder(heavier)); enough(next); next = under(justUnder(next))) heavier = next;
  }
  return { ...(heavier > 0 && { heavier }), ...(lighter > 0 && { lighter }) };
}

/** The weights there are beside `load`: the lightest that is at least `atLeast`, the heaviest that is lighter. */
function neighbours(load: number, atLeast: number, exercise: PlanExercise | undefined, step: number | undefined) {
  const { bar, collars = 0, plates } = exercise ?? {};
  if (bar !== undefined && plates) return onBar(load, atLeast, { bar, collars, plates } as Inventory);
  if (exercise?.available) {
    const up = exercise.available.filter((weight) => weight > load && weight >= atLeast);
    const down = exercise.available.filter((weight) => weight < load);
    return {
      ...(up.length > 0 && { heavier: Math.min(...up) }),
      ...(down.length > 0 && { lighter: Math.max(...down) }),
    };
  }
  if (step === undefined) return undefined;
  const steps = Math.max(1, decimal(atLeast).minus(decimal(load)).div(decimal(step)).ceil().toNumber());
  const lighter = sum([load, -step]);
  return { heavier: sum([load, product(steps, step)]), ...(lighter > 0 && { lighter }) };
}

interface Draft {
  readonly action: ProgressionAction;
  /** Load to go to; nothing where it is not known, that of the plan where it stays. */
  readonly load?: number | undefined;
  /** Cuff pressure to go to; that of the plan where it stays. */
  readonly target?: CuffPressure;
  readonly reasons: readonly Assumption[];
}

/** The cuff pressure of an item at another percentage, for the same gauge, ceiling and mode. */
function targetAt({ target }: PlanItem, percent: number): CuffPressure {
  const { occlusion, gaugeStepMmHg, ceilingMmHg, mode } = target!.inputs as unknown as TargetInput;
  return targetCuffPressure(defined({ occlusion, percent, gaugeStepMmHg, ceilingMmHg, mode }) as TargetInput);
}

/** The share of occlusion pressure that was asked for. */
export const percentOf = ({ inputs }: CuffPressure): number => inputs['percent'] as number;

/** How an exercise is done with the cuff, in words; another pressure or restriction is another session. */
const cuffWords = ({ restriction, target, restTarget }: PlanItem | RecordItem): string =>
  restriction === 'none'
    ? 'no cuff'
    : `${percentOf(target!)} % of occlusion pressure, ${restriction}` +
      (restTarget ? ` (${percentOf(restTarget)} % in the rests)` : '');

/** A load in words, with its unit; nothing where there is none. */
const loadWords = (load: number | undefined, unit: LoadUnit): string[] =>
  load === undefined ? [] : [formatUnit(load, loadUnitCode(unit))];

/** What a session was done with, in words. */
const doneWords = (session: RecordItem, unit: LoadUnit): string => {
  const { load, unit: own = unit } = session.done;
  return [...loadWords(load === undefined ? undefined : convertLoad(load, own, unit), unit), cuffWords(session)].join(
    ', ',
  );
};

/** What raising the load comes to by the rule, with what there is to lift. */
function raiseLoad(
  load: number,
  unit: LoadUnit,
  exercise: PlanExercise | undefined,
  rule: ProgressionRule,
  because: readonly Assumption[],
): Draft {
  const { lowPercent, highPercent } = rule;
  const atLeast = lowPercent === undefined ? load : product(load, 1 + lowPercent / 100);
  const step = exercise?.step ?? (unit === 'kg' ? rule.stepKg : undefined);
  const there = neighbours(load, atLeast, exercise, step);
  const words = (weight: number): string => formatUnit(weight, loadUnitCode(unit));
  if (!there) {
    const known = lowPercent === undefined ? undefined : atLeast;
    return { action: 'raise-load', load: known, reasons: [...because, assumption('step-not-known')] };
  }
  const { heavier } = there;
  if (heavier === undefined) {
    return { action: 'repeat', load, reasons: [...because, assumption('no-heavier-load', { load: words(load) })] };
  }
  if (highPercent !== undefined && heavier > product(load, 1 + highPercent / 100)) {
    const values = { low: lowPercent!, high: highPercent, load: words(load), next: words(heavier) };
    return { action: 'repeat', load, reasons: [...because, assumption('no-load-in-range', values)] };
  }
  return { action: 'raise-load', load: heavier, reasons: because };
}

const LONG_BREAK: Quantity = { name: 'days of a long break', unit: '1', min: 1, max: 365, whole: true };

/** Days since the last session on record, and from how many on nothing is raised. */
interface Break {
  readonly days: number;
  readonly longBreakDays?: number | undefined;
}

/** What the last sessions on record, and the days since, say against raising anything. */
function against(
  latest: readonly SessionRecord[],
  own: RecordItem | undefined,
  { days, longBreakDays = Infinity }: Break,
): [ProgressionAction, Assumption] | undefined {
  const rose = (to: 'painDuring' | 'painAfter'): boolean =>
    latest.some(({ painBefore, [to]: pain }) => hasRisen(painBefore, pain));
  if (rose('painAfter')) return ['back-off', assumption('back-off-pain')];
  if (days >= longBreakDays) return ['repeat', assumption('hold-long-break', { days })];
  if (rose('painDuring')) return ['repeat', assumption('hold-pain')];
  if (own?.done.stoppedEarly) return ['repeat', assumption('hold-stopped-early')];
  return undefined;
}

/** Nothing is proposed while a stop is in force, whatever limb it concerns: each is a reason. */
const stopped = (standing: readonly Stop[]): Draft => ({
  action: 'stop',
  reasons: standing.map(({ code, text, values }) => ({ code, text, ...(values && { values }) })),
});

function draft(
  item: PlanItem,
  exercise: PlanExercise | undefined,
  own: readonly RecordItem[],
  latest: readonly SessionRecord[],
  since: Break,
  rule: ProgressionRule,
  nextPercent: number | undefined,
): Draft {
  const load = item.load?.value;
  const unit = item.load ? loadUnitOf(item.load.unit) : 'kg';
  const repeat = (...reasons: Assumption[]): Draft => ({ action: 'repeat', load, reasons });
  const held = against(latest, own.at(-1), since);
  if (held) {
    const [action, reason] = held;
    if (action !== 'back-off') return { action, load: action === 'stop' ? undefined : load, reasons: [reason] };
    if (load === undefined) return { action, reasons: [reason, assumption('back-off-without-load')] };
    const there = neighbours(load, load, exercise, exercise?.step);
    if (there?.lighter !== undefined) return { action, load: there.lighter, reasons: [reason] };
    const [words] = loadWords(load, unit);
    const why = there ? assumption('no-lighter-load', { load: words! }) : assumption('step-not-known');
    return { action, reasons: [reason, why] };
  }
  const last = own.at(-1);
  if (!last) return repeat(assumption('no-record'));
  const planned = [...loadWords(load, unit), cuffWords(item)].join(', ');
  const asPlanned = (session: RecordItem): boolean => doneWords(session, unit) === planned;
  if (!asPlanned(last)) {
    return repeat(assumption('other-session-recorded', { done: doneWords(last, unit), planned }));
  }
  if (item.sets.some(({ repetitions }) => repetitions === undefined)) return repeat(assumption('rule-counts'));
  const sessions = own.slice(-rule.sessions).filter(asPlanned);
  if (sessions.length < rule.sessions) {
    return repeat(assumption('too-few-records', { needed: rule.sessions, found: sessions.length }));
  }
  const verdicts = sessions.map(({ done }) => rule.met(done, item.sets));
  const values = { done: sessions.map(({ done }) => setCounts(done.sets)).join(' and '), goal: setCounts(item.sets) };
  if (verdicts.includes(false)) return repeat(assumption('rule-not-met', values));
  if (verdicts.includes(undefined)) return repeat(assumption('failure-not-recorded'));
  const painKnown = latest.every(({ painBefore, painAfter }) => painBefore !== undefined && painAfter !== undefined);
  const met = [assumption('rule-met', values), ...(painKnown ? [] : [assumption('pain-not-recorded')])];
  if (since.days > 0 && since.longBreakDays === undefined) {
    met.push(assumption('break-not-judged', { days: since.days }));
  }
  const raise = (...because: Assumption[]): Draft =>
    load === undefined
      ? repeat(...met, ...because, assumption('no-load-to-raise'))
      : raiseLoad(load, unit, exercise, rule, [...met, ...because]);
  if (nextPercent === undefined) return raise();
  if (item.restriction === 'none') return raise(assumption('pressure-no-cuff'));
  const target = targetAt(item, nextPercent);
  if (target.value <= item.target!.value) {
    const values = { percent: nextPercent, held: formatUnit(item.target!.value, 'mm[Hg]') };
    return raise(assumption('pressure-not-higher', values));
  }
  const instead = assumption('pressure-instead', { percent: nextPercent });
  return { action: 'raise-pressure', load, target, reasons: [...met, instead] };
}

function itemOf(item: PlanItem, { action, load, target: next, reasons }: Draft): ProposalItem {
  const { exercise, limb, side, oneRepMax, target } = item;
  const from = item.load?.value;
  const unit = item.load ? loadUnitOf(item.load.unit) : 'kg';
  const maximum = oneRepMax && convertLoad(oneRepMax.value, loadUnitOf(oneRepMax.unit), unit);
  const pressed = action === 'stop' ? undefined : (next ?? target);
  return {
    exercise,
    limb,
    side,
    action,
    ...(from !== undefined && { load: { from, ...(load !== undefined && { to: load }), unit } }),
    ...(from !== undefined &&
      maximum !== undefined && {
        percentOfMaximum: {
          from: (100 * from) / maximum,
          ...(load !== undefined && { to: (100 * load) / maximum }),
        },
      }),
    ...(target && {
      percentOfOcclusion: { from: percentOf(target), ...(pressed && { to: percentOf(pressed) }) },
      cuffMmHg: { from: target.value, ...(pressed && { to: pressed.value }) },
    }),
    reasons,
  };
}

/** What changed between the last session on record and the plan, in words. */
function changes(plan: Plan, item: PlanItem, posture: string, last: RecordItem): string[] {
  const worn = plan.request.limbs.find((one) => isSameLimb(one, item));
  const girth = worn?.circumferenceCm;
  return [
    ...(posture === plan.request.posture ? [] : ['the posture']),
    ...(worn && worn.cuffWidthCm !== last.cuffWidthCm ? ['the cuff'] : []),
    ...(girth !== undefined && last.circumferenceCm !== undefined && girth !== last.circumferenceCm
      ? ['the size of the limb']
      : []),
  ];
}

function measureAgain(
  plan: Plan,
  records: readonly SessionRecord[],
  date: string | undefined,
  testedOn: string | undefined,
): MeasureAgain[] {
  const found: MeasureAgain[] = [];
  const add = (
    what: MeasureAgain['what'],
    due: boolean,
    said: Assumption,
    evidence: Grade,
    source?: SourceId,
  ): void => {
    found.push({ what, due, ...said, evidence, ...(source && { source }) });
  };
  for (const item of plan.items.filter(({ restriction }) => restriction !== 'none')) {
    const { limb, side, occlusion } = item;
    const session = [...records].reverse().find(({ items }) => items.some((other) => isSameLimb(other, item)));
    const last = session?.items.find((other) => isSameLimb(other, item));
    for (const what of last ? changes(plan, item, session!.posture, last) : []) {
      add('occlusion-pressure', true, assumption('measure-occlusion-changed', { side, limb, what }), 'practice');
    }
    if (plan.request.limbs.some((worn) => isSameLimb(worn, item) && !worn.measured)) {
      const said = assumption('measure-occlusion-estimated', { side, limb });
      add('occlusion-pressure', true, said, occlusion!.evidence);
    }
  }
  const day = date ?? records.at(-1)!.date;
  for (const { limb, side, measured } of plan.request.limbs) {
    const since = measured?.date === undefined ? 0 : daysBetween(measured.date, day);
    for (const { severity: _, path: __, source: ___, ...said } of guardCautions('days-since-measured', since, {
      values: { limb, side },
    })) {
      add('occlusion-pressure', true, said, 'practice');
    }
  }
  if (plan.items.some(({ restriction }) => restriction !== 'none')) {
    add('occlusion-pressure', false, assumption('measure-occlusion-weeks'), 'practice', 'time-of-day-2017');
  }
  const next = date ?? records.at(-1)!.date;
  const days = testedOn === undefined ? 0 : (Date.parse(next) - Date.parse(testedOn)) / DAY_MS;
  const due = days >= 28;
  const said = due ? assumption('test-maximum-due', { days }) : assumption('test-maximum-weeks');
  if (plan.items.some(({ oneRepMax }) => oneRepMax)) {
    add('one-repetition-maximum', due, said, 'published', 'retest-schedule');
  }
  return [...new Map(found.map((again) => [again.text, again])).values()];
}

/**
 * A proposal for the next session by a named rule: what to raise, repeat, back off from or stop, and why.
 *
 * - `two-for-two` (`secondary`): every set done, and two repetitions or more above the goal in the last, two sessions
 *   running; load up by 2.5 to 10 %.
 * - `all-repetitions` (`practice`): every planned repetition done; load up by the smallest step there is.
 * - `set-four-over-15` (`published`, an eight-week trial): more than 15 repetitions in set 4, taken to failure; load
 *   up by the smallest step there is, 5 kg in the trial.
 * - `two-to-ten-percent` (`published`, Med Sci Sports Exerc 2009;41(3):687–708): a repetition or two above the goal;
 *   load up by 2 to 10 %.
 *
 * Pressure and load are never both raised: with `nextPercent` a met rule raises the pressure to it and the load
 * stays. A sign to stop at in the last session stops everything; pain that was higher after than before backs off by
 * one step of load; pain that rose in the session, an early stop, or a break of `longBreakDays` and more from the last
 * record to `date`, holds (`practice`). Where the plan’s step is too coarse for the rule, the load stays and more
 * repetitions come first.
 *
 * It is a proposal. It clears no one; the practitioner decides.
 *
 * @param request - the `plan`; its `records`; the `rule`; `nextPercent` [%]; `date` of the next session
 *   (`YYYY-MM-DD`) with `longBreakDays` [d]; `oneRepMaxTestedOn` (`YYYY-MM-DD`), which tells when to test again.
 * @returns the proposal; print it with `explain(proposal)`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { nextSession, planSession, recordSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percent: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percent: 25, step: 5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * const done = [{
 *   exercise: 'leg extension', limb: 'leg', side: 'left', lastSetToFailure: true,
 *   sets: [{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }, { repetitions: 17 }],
 * }] as const;
 * const records = [recordSession({ plan, date: '2026-03-02', items: done })];
 * const proposal = nextSession({ plan, records, rule: 'set-four-over-15' });
 * proposal.items[0]?.action; // => 'raise-load'
 * proposal.items[0]?.load; // => { from: 15, to: 20, unit: 'kg' }
 * ```
 */
export function nextSession(request: ProgressionRequest): Proposal {
  const { plan, records, rule, nextPercent, date, longBreakDays, testedOn, decisions } = read(request);
  const lastDay = records.at(-1)!.date;
  const latest = records.filter((record) => record.date === lastDay);
  const days = date === undefined ? 0 : (Date.parse(date) - Date.parse(lastDay)) / DAY_MS;
  if (days < 0)
    throw new InputError([issue('wrong-relation', ['date'], `not before the last record, ${lastDay}`, date!)]);
  const keys = placesOf(plan.items);
  const done = records.map(({ items }) => new Map(placesOf(items).map((key, index) => [key, items[index]!])));
  const exerciseOf = exerciseFinder(plan);
  const drafts = plan.items.map((item, index) => {
    const own = done.flatMap((session) => session.get(keys[index]!) ?? []);
    return draft(item, exerciseOf(item), own, latest, { days, longBreakDays }, rule, nextPercent);
  });
  const raised = drafts.flatMap(({ target }) => target?.cautions ?? []);
  const known = mergeStops(plan.stops, ...records.map((record) => record.stops), stopsOf(raised, date));
  const stops = applyDecisions(known, decisions);
  const standing = standingStops({ stops });
  const items = plan.items.map((item, index) => itemOf(item, standing.length > 0 ? stopped(standing) : drafts[index]!));
  const cautions = [...latest.flatMap((record) => record.cautions), ...raised];
  const proposal = {
    document: 'proposal',
    schemaVersion: 1,
    rule: {
      id: rule.id,
      text: planMessages[rule.says],
      evidence: rule.evidence,
      ...(rule.source && { source: rule.source }),
    },
    items,
    measureAgain: measureAgain(plan, records, date, testedOn),
    stops,
    cautions: onceEach(cautions),
    standing: [
      say('proposal-clears-no-one'),
      say('local-codes-decide'),
      say('one-thing-at-a-time'),
      say('pressure-last'),
    ],
  } as const;
  return { ...proposal, sources: idsIn(proposal) };
}
