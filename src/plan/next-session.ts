import { defined } from '../answer/defined.js';
import { DAY_EXPECTED, need } from '../answer/needs.js';
import type { Sentence } from '../answer/answer.js';
import { ownDocument } from '../answer/own.js';
import { InputError, issue, describe } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { Math } from '../quantity/maths.js';
import type { Quantity } from '../quantity/quantities.js';
import { coded } from './coded.js';
import { isCalendarDay } from '../answer/day.js';
import { withInput } from '../answer/with-input.js';
import { uniqueCautions } from './severity.js';
import { atLifted, draftItem, goalsOf, loadOf, percentOf, type DoneOnce, type Draft } from './item-draft.js';
import { head } from './document-parts.js';
import { measureAgain } from './measure-again.js';
import { CAUTIOUS_PAIN_RULE, PAIN_RULE_IDS } from './pain.js';
import { parseDocument } from './parse.js';
import { exerciseFinder, isSameLimb, placesOf } from './limb-and-side.js';
import { progressionLimits } from './progression-limits.js';
import { progressionRules, ruledBy } from './progression-rules.js';
import type { ProgressionRequest, Proposal, ProposalItem } from './proposal.js';
import { expandedInto } from './read-document.js';
import { recentRecords } from './recent-records.js';
import { reportedCautions } from './record-cautions.js';
import { decisionsRequest } from './schema-requests.js';
import {
  applyDecisions,
  asOfDay,
  mergeStops,
  softened,
  inForce,
  stopsOf,
  type Stop,
  type StopDecision,
} from './stops.js';
import type { ExpandedPlan, ExpandedPlanItem } from './types.js';
import {
  OUR_PLAN,
  OUR_RECORDS,
  DECISIONS,
  NOT_AFTER,
  NOT_BEFORE_PLAN,
  NOT_BEFORE_RECORD,
  TRUE_OR_NOT,
} from './needs.js';

const RULES = progressionRules.map(({ id }) => id);
const LONG_BREAK: Quantity = { name: 'days of a long break', unit: '1', min: 1, max: 365, whole: true };

function read(request: ProgressionRequest) {
  const reader = new Reader(request);
  const given = reader.anything('plan', OUR_PLAN);
  const documents = reader.rawValues('records', OUR_RECORDS);
  const ruleId = reader.choice('rule', RULES);
  const painRule = reader.optionalChoice('painRule', PAIN_RULE_IDS) ?? CAUTIOUS_PAIN_RULE;
  const nextPercentLop = reader.optionalNumber('nextPercentLop');
  const deload = reader.raw('deload');
  if (deload !== undefined && deload !== true) {
    reader.report('wrong-type', 'deload', TRUE_OR_NOT, describe(deload));
  }
  const date = reader.optionalText('date', DAY_EXPECTED, isCalendarDay);
  const longBreakDays = reader.optionalNumber('longBreakDays', LONG_BREAK);
  const testedOn = reader.optionalText('oneRepMaxTestedOn', DAY_EXPECTED, isCalendarDay);
  const decided = reader.anything('decisions', DECISIONS, true);
  if (longBreakDays !== undefined && !reader.has('date')) reader.missing('date', DAY_EXPECTED);
  if (date !== undefined && testedOn !== undefined && testedOn > date) {
    reader.refuse('oneRepMaxTestedOn', need(NOT_AFTER, { date }), testedOn);
  }
  reader.done();
  const { value, issues } = parseDocument<{ decisions?: readonly StopDecision[] | undefined }>(decisionsRequest, {
    decisions: decided,
  });
  const rule = progressionRules.find(({ id }) => id === ruleId)!;
  const plan = expandedInto(issues, 'plan', given, ['plan']);
  // Two sessions at least: planned sets that were missed in both ask for less.
  const records = recentRecords(issues, documents, plan, Math.max(rule.sessions, 2));
  const earliest = [
    [records.at(-1)?.date, NOT_BEFORE_RECORD],
    [plan?.request.date, NOT_BEFORE_PLAN],
  ] as const;
  for (const [day, expected] of earliest) {
    if (date === undefined || day === undefined || date >= day) continue;
    issues.push(issue('wrong-relation', ['date'], need(expected, { date: day }), date));
  }
  if (issues.length > 0) throw new InputError(issues);
  return {
    plan: plan!,
    records,
    rule,
    painRule,
    nextPercentLop,
    deload: deload === true,
    date,
    longBreakDays: longBreakDays ?? progressionLimits.longBreakDays.value,
    testedOn,
    decisions: value!.decisions,
  };
}

/** A draft that raises nothing, and why. */
const repeatBecause = (item: ExpandedPlanItem, { reasons }: Draft, why: Sentence): Draft => ({
  action: 'repeat',
  load: loadOf(item).load,
  reasons: [...reasons, why],
});

/** Whether a draft asks for more work: a heavier load or more repetitions. */
const raisesWork = ({ action }: Draft): boolean => action === 'raise-load' || action === 'raise-repetitions';

/**
 * Drafts that go together: on a limb whose pressure goes up no work does, and an exercise that both sides share goes up
 * on both or on neither.
 */
function reconciled(plan: ExpandedPlan, drafts: readonly Draft[]): Draft[] {
  const { items } = plan;
  const pressed = items.filter((_, index) => drafts[index]!.action === 'raise-pressure');
  const apart = drafts.map((draft, index) => {
    const item = items[index]!;
    const { limb, side } = item;
    if (!raisesWork(draft) || !pressed.some((other) => isSameLimb(other, item))) return draft;
    return repeatBecause(item, draft, coded('pressure-raised-on-limb', { side, limb }));
  });
  const exerciseOf = exerciseFinder(plan);
  const exercises = items.map(exerciseOf);
  return apart.map((draft, index) => {
    if (!raisesWork(draft)) return draft;
    const other = items.findIndex((_, at) => exercises[at] === exercises[index] && apart[at]!.action !== draft.action);
    if (other < 0) return draft;
    const { limb, side } = items[other]!;
    return repeatBecause(items[index]!, draft, coded('other-side-holds', { side, limb }));
  });
}

/** Nothing is proposed while a stop is in force, whatever limb it concerns: each is a reason. */
const stopped = (active: readonly Stop[]): Draft => ({
  action: 'stop',
  reasons: active.map(({ code, text, values }) => ({ code, text, ...(values && { values }) })),
});

function itemOf(item: ExpandedPlanItem, { action, load: to, target: next, sets, reasons }: Draft): ProposalItem {
  const { exercise, limb, side, target } = item;
  const { load: from, unit, maximum } = loadOf(item);
  const pressed = action === 'stop' ? undefined : (next ?? target);
  const shareOf = (load: number | undefined): number | undefined =>
    load !== undefined && maximum !== undefined ? (100 * load) / maximum : undefined;
  const change = (before: number | undefined, after: number | undefined) =>
    before === undefined ? undefined : defined({ from: before, to: after });
  return defined({
    exercise,
    limb,
    side,
    action,
    load: from === undefined ? undefined : defined({ from, to, unit }),
    percentOneRepMax: change(shareOf(from), shareOf(to)),
    percentLop: change(target && percentOf(target), pressed && percentOf(pressed)),
    cuffMmHg: change(target?.value, pressed?.value),
    sets: sets && { from: goalsOf(item.sets), to: goalsOf(sets) },
    reasons,
  }) as ProposalItem;
}

/**
 * A proposal for the next session by a named rule: what to raise, repeat, back off from or stop, and why.
 *
 * - `two-for-two` (`secondary`): every set done, and two repetitions or more above the goal in the last, two sessions
 *   running; load up by 2.5–10 %.
 * - `all-repetitions` (`practice`): every planned repetition done; load up by the smallest step you can set.
 * - `set-four-over-15` (`published`, an eight-week trial): more than 15 repetitions in set 4, taken to failure; load
 *   up by the smallest step there is, 5 kg in the trial.
 * - `two-to-ten-percent` (`published`, Med Sci Sports Exerc 2009;41(3):687–708): a repetition or two above the goal;
 *   load up by 2–10 %.
 *
 * Whatever the rule says:
 *
 * - A stop that is in force in the plan or in any record, however old, proposes `stop`.
 * - Pain is rated by site and by its height, not only by its change: see `painRules`; joint and tendon pain by
 *   `painRule`, `cautious` when left out. Muscle burn in the sets never holds.
 * - Go back: pain, a symptom of the grade `lower`, planned sets missed in two sessions running, an effort of 10, or
 *   `deload`.
 * - Hold: pain, an early stop, a break of `longBreakDays` and more, a cuff held above the plan. A session with the cuff
 *   held below the plan does not count.
 * - On one limb, pressure and load are never both raised, in whichever exercises; both sides of one exercise share its
 *   load. With `nextPercentLop` a met rule raises the pressure to it, and the load stays.
 * - Steps are at most 10 points of percent of LOP and 5 points of percent of 1RM; see `progressionLimits`. Where the
 *   next load is further away, repetitions come first. Once they make up for the step in volume load, the load goes up
 *   and the sets go back to those before.
 * - Repetitions beyond the goal of restricted sets at 30 % of 1RM and less are no reason to raise.
 *
 * It is a proposal, and no clearance to train. The practitioner decides.
 *
 * - Evidence: that of the rule, of the pain rule and of each limit, see `progressionRules`, `painRules` and
 *   `progressionLimits`.
 *
 * @function
 * @param request - the `plan`; its `records`; the `rule`; `painRule`; `nextPercentLop` [%]; `deload`; `date` of the next
 *   session (`YYYY-MM-DD`); `longBreakDays` [d]; `decisions` about stops; `oneRepMaxTestedOn` (`YYYY-MM-DD`), which
 *   tells when to test again.
 * @returns the proposal; print it with `explain(proposal)`.
 * @throws InputError naming every wrong field, a record that is given twice, and one of another person.
 *
 * @example
 * ```ts
 * import { nextSession, planSession, recordSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{
 *     limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5,
 *     measured: { valueMmHg: 172, method: 'doppler' },
 *   }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * const done = [{
 *   exercise: 'leg extension', limb: 'leg', side: 'left', lastSetToFailure: true,
 *   sets: [{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }, { repetitions: 17 }],
 * }] as const;
 * const pain = [{ site: 'joint', before: 0, during: 1, after: 0, nextMorning: 0 }] as const;
 * const records = [recordSession({ plan, date: '2026-03-02', items: done, pain })];
 * const proposal = nextSession({ plan, records, rule: 'set-four-over-15', date: '2026-03-05' });
 * proposal.items[0]?.action; // => 'raise-load'
 * proposal.items[0]?.load; // => { from: 15, to: 17.5, unit: 'kg' }
 * ```
 */
export const nextSession = withInput(function nextSession(request: ProgressionRequest): Proposal {
  const { plan: given, records, testedOn, decisions, ...asked } = read(request);
  const { rule, painRule, date } = asked;
  const lastDay = records.at(-1)!.date;
  const latest = records.filter((record) => record.date === lastDay);
  const keys = placesOf(given.items);
  const done = records.map(
    (record) => new Map(placesOf(record.items).map((key, index) => [key, { record, item: record.items[index]! }])),
  );
  const ownOf = (index: number): DoneOnce[] => done.flatMap((session) => session.get(keys[index]!) ?? []);
  const plan = { ...given, items: given.items.map((item, index) => atLifted(item, ownOf(index).at(-1)?.item)) };
  const exerciseOf = exerciseFinder(plan);
  const drafts = reconciled(
    plan,
    plan.items.map((item, index) =>
      draftItem({ item, exercise: exerciseOf(item), own: ownOf(index), latest, ...asked }),
    ),
  );
  const raised = drafts.flatMap(({ target }) => target?.cautions ?? []);
  const known = mergeStops(
    plan.stops,
    // What a record reports stops even where its own list of stops was emptied.
    ...records.flatMap((record) => [record.stops, stopsOf(reportedCautions(record), record.date)]),
    stopsOf(raised, date),
  );
  const stops = applyDecisions(asOfDay(known, date), decisions, date);
  const active = inForce(stops);
  const items = plan.items.map((item, index) => itemOf(item, active.length > 0 ? stopped(active) : drafts[index]!));
  // While a stop is in force no new pressure is proposed: of its cautions only those that stop are shown.
  const message = active.length > 0 ? raised.filter(({ severity }) => severity === 'stop') : raised;
  // A record judges pain by the default rule, a proposal by the rule that was asked for.
  const felt = latest.flatMap((record) => [
    ...record.cautions.filter(({ path }) => path?.[0] !== 'pain'),
    ...reportedCautions({ pain: record.pain }, painRule),
  ]);
  const cautions = [...felt, ...message];
  const { disclaimers: sentences, ...rules } = ruledBy(rule.id, painRule);
  return ownDocument({
    ...head('proposal', 1),
    ...rules,
    items,
    measureAgain: measureAgain(plan, records, date, testedOn),
    stops,
    cautions: uniqueCautions(softened(cautions, stops)),
    disclaimers: sentences,
  });
});
