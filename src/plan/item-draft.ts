import type { Answer, Sentence } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { guidance2019 } from '../evidence/guidance.js';
import { attempt } from '../answer/issues.js';
import { targetCuffPressure, type CuffPressure, type TargetInput } from '../pressure/target.js';
import { convertLoad } from '../quantity/convert.js';
import { percentage, product, sum } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { isCuffed } from '../session/prescription.js';
import { neighbours } from './available-loads.js';
import { coded } from './coded.js';
import { daysBetween } from '../answer/day.js';
import { comparedHeld, type Held } from './held.js';
import { assessPain, painIsOf, painSentence, type PainAssessment, type PainReport, type PainRuleId } from './pain.js';
import { progressionLimits as limits } from './progression-limits.js';
import type { ProgressionRule } from './progression-rules.js';
import type { ProgressionAction, SetGoal } from './proposal.js';
import { askedOf } from './readings.js';
import type { ExpandedRecord, ExpandedRecordItem } from './record.js';
import { heaviestLoad, loadsOfSets, setCounts } from './set-counts.js';
import { symptomOf, type Symptom } from './symptoms.js';
import type { PlanExercise, ExpandedPlanItem } from './types.js';

/** What is to be done next with one item of the plan. */
export interface Draft {
  readonly action: ProgressionAction;
  /** Load to go to; nothing where it is not known, that of the plan where it stays. */
  readonly load?: number | undefined;
  /** Cuff pressure to go to; left out where it stays. */
  readonly target?: CuffPressure;
  /** Sets to go to; left out where they stay. */
  readonly sets?: readonly SetGoal[];
  readonly reasons: readonly Sentence[];
}

/** One item in one session. */
export interface DoneOnce {
  readonly record: ExpandedRecord;
  readonly item: ExpandedRecordItem;
}

/** What a draft is made from. */
interface ItemCase {
  readonly item: ExpandedPlanItem;
  readonly exercise: PlanExercise | undefined;
  /** The last sessions of this item, oldest first. */
  readonly own: readonly DoneOnce[];
  /** Every session of the last day on record. */
  readonly latest: readonly ExpandedRecord[];
  readonly rule: ProgressionRule;
  readonly painRule: PainRuleId;
  readonly nextPercentLop: number | undefined;
  readonly deload: boolean;
  /** Day of the next session, where it is known. */
  readonly date: string | undefined;
  readonly longBreakDays: number;
}

/** The share of occlusion pressure that was asked for. */
export const percentOf = ({ inputs }: Answer<'cuff-pressure'>): number => inputs.percentLop;

/**
 * An item at the load that was lifted last, where the plan has a range of loads and it is in that range. Where sets have
 * loads of their own, the heaviest of them is not that of the others: the load is that of the plan.
 */
export function atLifted<I extends ExpandedPlanItem>(item: I, last: ExpandedRecordItem | undefined): I {
  const { load, upperLoad, sets } = item;
  const { load: lifted, unit, instead } = last?.done ?? {};
  if (!load || !upperLoad || lifted === undefined || unit === undefined || instead !== undefined) return item;
  if (sets.some((set) => set.load !== undefined)) return item;
  const value = convertLoad(heaviestLoad(last!.done.sets, lifted), unit, loadUnitOf(load.unit));
  return value > load.value && value <= upperLoad.value ? { ...item, load: { ...load, value } } : item;
}

/** The load of an item, its unit and its maximum in that unit; what it has none of is left out. */
export function loadOf({ load, oneRepMax }: ExpandedPlanItem) {
  const unit = load ? loadUnitOf(load.unit) : 'kg';
  return {
    load: load?.value,
    unit,
    maximum: oneRepMax && convertLoad(oneRepMax.value, loadUnitOf(oneRepMax.unit), unit),
  };
}

/** The cuff pressure of an item at another percentage, for the same gauge, ceiling and mode. */
function targetAt({ target }: ExpandedPlanItem, percentLop: number): CuffPressure {
  const { occlusion, gaugeStepMmHg, ceilingMmHg, mode } = target!.inputs;
  return targetCuffPressure(defined({ occlusion, percentLop, gaugeStepMmHg, ceilingMmHg, mode }) as TargetInput);
}

/** What the last session was done with that this plan does not have; nothing where it was done as planned. */
function differenceFromPlan(planned: ExpandedPlanItem, done: ExpandedRecordItem): Sentence | undefined {
  const { load, unit } = loadOf(planned);
  const { instead } = done.done;
  if (instead !== undefined) return coded('other-exercise-recorded', { exercise: instead });
  if (planned.restriction !== done.restriction) {
    return coded('other-restriction-recorded', { done: done.restriction, planned: planned.restriction });
  }
  for (const name of ['target', 'restTarget'] as const) {
    const [before, now] = [done[name], planned[name]];
    if (before && now && percentOf(before) !== percentOf(now)) {
      return coded('other-pressure-recorded', { done: percentOf(before), planned: percentOf(now) });
    }
  }
  if (done.done.load === undefined || load === undefined) return undefined;
  const asked = loadsOfSets(planned.sets, load);
  const lifted = loadsOfSets(done.done.sets, done.done.load).map((one) =>
    convertLoad(one, done.done.unit ?? unit, unit),
  );
  // A load is converted between units: what differs in the last digits only is the same.
  const other = lifted.findIndex((one, index) => sum([one, -(asked[index] ?? one)]) !== 0);
  if (other < 0) return undefined;
  return coded('other-load-recorded', { done: lifted[other]!, planned: asked[other]!, unit });
}

/** The repetitions of sets that are counted. */
const countsOf = ({ sets }: ExpandedPlanItem): number[] => sets.map(({ repetitions }) => repetitions!);

/**
 * The cuff pressure that goes down by the largest step, but not to that of the rests; nothing where none is lower.
 * Where a ceiling holds it below what was asked for, it goes down from the ceiling.
 */
function lowerTarget({ target, restTarget, ...item }: ExpandedPlanItem): CuffPressure | undefined {
  if (!target) return undefined;
  const asked = percentOf(target);
  const set = askedOf(target) ?? asked;
  const down = sum([set < asked ? Math.floor(set) : asked, -limits.largestPressureStep.value]);
  const percent = restTarget ? Math.max(down, sum([percentOf(restTarget), 1])) : down;
  const lower = attempt((share: number) => targetAt({ ...item, target }, share), percent);
  return lower.ok && lower.value.value < target.value ? lower.value : undefined;
}

/** What sets ask for, without their loads and rests. */
export const goalsOf = (sets: readonly SetGoal[]): SetGoal[] =>
  sets.map(({ repetitions, durationS }) => defined({ repetitions, durationS }));

/** A way down: a lower pressure, a lighter load, or a set fewer where neither can go down. */
function backOff({ item, exercise }: ItemCase, because: readonly Sentence[], lower: ReadonlySet<string>): Draft {
  const { load, unit } = loadOf(item);
  const target = lower.has('pressure') ? lowerTarget(item) : undefined;
  const reasons = [...because, ...(target ? [coded('pressure-lower', { percentLop: percentOf(target) })] : [])];
  const down = { action: 'back-off', ...(target && { target }) } as const;
  if (target && !lower.has('load')) return { ...down, load, reasons };
  const step = load === undefined ? undefined : neighbours(load, load, exercise, exercise?.step);
  if (step?.lighter !== undefined) return { ...down, load: step.lighter, reasons };
  if (load !== undefined) {
    if (!step) return { ...down, reasons: [...reasons, coded('step-not-known')] };
    reasons.push(coded('no-lighter-load', { load, unit }));
  }
  const goals = goalsOf(item.sets);
  if (goals.length === 1) return { ...down, reasons: [...reasons, coded('back-off-by-hand')] };
  const sets = goals.slice(0, -1);
  reasons.push(coded('fewer-sets', { from: setCounts(goals), to: setCounts(sets) }));
  return { ...down, load, sets, reasons };
}

/** Whether a set fell short of what was planned for it. */
const fellShort = (goal: SetGoal, done: SetGoal): boolean =>
  (done.repetitions ?? 0) < (goal.repetitions ?? 0) || (done.durationS ?? 0) < (goal.durationS ?? 0);

/** Whether planned sets were missed; the last one is not, where it goes to failure anyway. */
function isMissed({ sets, lastSetToFailure }: ExpandedPlanItem, { done }: ExpandedRecordItem): boolean {
  const counted = lastSetToFailure ? sets.slice(0, -1) : sets;
  return done.sets.length < sets.length || counted.some((goal, index) => fellShort(goal, done.sets[index]!));
}

/** The pain of the last day on record that concerns the limb of an item. */
const reportsOf = ({ item, latest }: ItemCase): PainReport[] =>
  latest.flatMap(({ pain = [] }) => pain.filter((report) => painIsOf(report, item)));

/** What pain leads to; where the exercise has no cuff, pain under one holds and lowers nothing. */
const painOf = (given: ItemCase): PainAssessment[] =>
  assessPain(reportsOf(given), given.painRule).map((assessed) =>
    !isCuffed(given.item) && assessed.verdict === 'back-off' && assessed.rule.lower === 'pressure'
      ? { ...assessed, verdict: 'hold' }
      : assessed,
  );

/** The symptoms of the last day that ask for less, by whether they hold: those of a cuff, in an exercise without one. */
const symptomsOf = (given: ItemCase, hold: boolean): Symptom[] =>
  [...new Set(given.latest.flatMap(({ symptoms }) => symptoms))].filter((code) => {
    const { grade, cuff = false } = symptomOf(code);
    return grade === 'lower' && (cuff && !isCuffed(given.item)) === hold;
  });

/** What asks for less than the last time, and what of it goes down. */
function reasonsDown(given: ItemCase): { reasons: Sentence[]; lower: Set<string> } {
  const { item, own, deload } = given;
  const reasons: Sentence[] = [];
  const lower = new Set<string>();
  const add = (part: string, reason: Sentence): void => {
    lower.add(part);
    reasons.push(reason);
  };
  for (const assessed of painOf(given).filter(({ verdict }) => verdict === 'back-off')) {
    add(assessed.rule.lower, coded(...painSentence(assessed)!));
  }
  for (const code of symptomsOf(given, false)) {
    add(symptomOf(code).lower!, coded('back-off-symptom', { symptom: code }));
  }
  const last = own.at(-1);
  const effort = last?.record.sessionRpe ?? 0;
  if (effort >= limits.topEffort.value) add('load', coded('back-off-effort', { effort }));
  const running = own.slice(-2).filter((one) => !differenceFromPlan(item, one.item));
  if (running.length === 2 && running.every((one) => isMissed(item, one.item))) {
    const done = running.map((one) => setCounts(one.item.done.sets)).join('; ');
    add('load', coded('back-off-failed-twice', { done, goal: setCounts(item.sets) }));
  }
  if (deload) add('load', coded('back-off-deload'));
  return { reasons, lower };
}

const shares = ({ held, heldPercent, occlusion, percentLop }: Held) => ({ held, heldPercent, occlusion, percentLop });

/** What holds everything as it is. */
function reasonsToHold(given: ItemCase): Sentence[] {
  const { own, latest, date, longBreakDays } = given;
  const last = own.at(-1);
  const next = date ?? latest.at(-1)!.date;
  const days = daysBetween(last?.record.date ?? next, next);
  const held = last && comparedHeld(last.item);
  const sentence = painOf(given).find(({ verdict }) => verdict === 'hold');
  return [
    ...(days >= longBreakDays ? [coded('hold-long-break', { days, limit: longBreakDays })] : []),
    ...(sentence ? [coded(...painSentence(sentence)!)] : []),
    ...symptomsOf(given, true).map((symptom) => coded('hold-symptom', { symptom })),
    ...(last?.item.done.stoppedEarly ? [coded('hold-stopped-early')] : []),
    ...(held && ['above-tried', 'occludes', 'above'].includes(held.as)
      ? [coded('hold-held-above', { held: held.held, target: held.target })]
      : []),
    ...(held?.as === 'share-above' ? [coded('hold-share-above', shares(held))] : []),
  ];
}

/** What was not recorded, and so was not checked. */
function notAssessed(given: ItemCase): Sentence[] {
  const { own, latest, date } = given;
  const last = own.at(-1);
  const open = reportsOf(given).some(
    ({ site, during = 0, after = 0, nextMorning }) =>
      site !== 'muscle' && nextMorning === undefined && Math.max(during, after) > 0,
  );
  return [
    ...(last?.item.target && last.item.done.heldMmHg === undefined ? [coded('held-not-recorded')] : []),
    ...(latest.every(({ pain }) => pain) ? [] : [coded('pain-not-recorded')]),
    ...(open ? [coded('pain-next-morning-not-recorded')] : []),
    ...(date === undefined ? [coded('break-not-known')] : []),
  ];
}

/** More repetitions where the load cannot go up: in the last of the sets that have the fewest. */
function raiseRepetitions({ item }: ItemCase, because: readonly Sentence[]): Draft {
  const { load } = loadOf(item);
  const goals = goalsOf(item.sets);
  const most = limits.mostRepetitions.value;
  const counted = countsOf(item).slice(0, item.lastSetToFailure ? -1 : undefined);
  const before = Math.min(...counted);
  if (before >= most) return { action: 'repeat', load, reasons: [...because, coded('repetitions-at-most', { most })] };
  const at = counted.lastIndexOf(before);
  // One more of few, two more of ten and over.
  const repetitions = Math.min(most, before + (before < 10 ? 1 : 2));
  const sets = goals.map((goal, index) => (index === at ? { repetitions } : goal));
  const first = coded('repetitions-first', { from: setCounts(goals), to: setCounts(sets) });
  return { action: 'raise-repetitions', load, sets, reasons: [...because, first] };
}

/** The repetitions that an exercise goes back to with a heavier load; nothing where none were raised. */
function repetitionsBefore({ item, exercise }: ItemCase): readonly number[] | undefined {
  const { raisedFrom } = exercise ?? {};
  return raisedFrom?.length === item.sets.length ? raisedFrom : undefined;
}

/**
 * Whether the repetitions that were added make up for a step of the load that is too large: repetitions × load is then
 * as much before the step as after it.
 */
const isEarned = ({ item }: ItemCase, load: number, next: number, before: readonly number[]): boolean =>
  product(sum(countsOf(item)), load) >= product(sum(before), next);

/** Raises the load by the rule, with the loads you can set; where the step is too large, repetitions come first. */
function raiseLoad(given: ItemCase, because: readonly Sentence[]): Draft {
  const { item, exercise, rule } = given;
  const { load, unit, maximum } = loadOf(item);
  if (load === undefined) return { action: 'repeat', load, reasons: [...because, coded('no-load-to-raise')] };
  const { lowPercent, highPercent } = rule;
  const atLeast = lowPercent === undefined ? load : product(load, 1 + lowPercent / 100);
  const step = exercise?.step ?? (unit === 'kg' ? rule.stepKg : undefined);
  const found = neighbours(load, atLeast, exercise, step);
  if (!found) {
    const known = lowPercent === undefined ? undefined : atLeast;
    return { action: 'raise-load', load: known, reasons: [...because, coded('step-not-known')] };
  }
  const { heavier: next } = found;
  if (next === undefined) return raiseRepetitions(given, [...because, coded('no-heavier-load', { load, unit })]);
  const percent = percentage(sum([next, -load]), load);
  const points = maximum === undefined ? undefined : percentage(sum([next, -load]), maximum);
  const [largest, most] = [limits.largestLoadStep.value, limits.largestLoadStepPercent.value];
  const before = repetitionsBefore(given);
  const up = (...reasons: Sentence[]): Draft => ({
    action: 'raise-load',
    load: next,
    ...(before && { sets: before.map((repetitions) => ({ repetitions })) }),
    reasons: [...because, ...reasons, ...aboveGuidance(item, next, maximum)],
  });
  if (points === undefined ? percent > most : points > largest) {
    if (before && isEarned(given, load, next, before)) {
      const counts = { repetitions: sum(countsOf(item)), before: sum([...before]), sets: before.join('-') };
      return up(coded('load-step-earned', { ...counts, load, next, unit, percent }));
    }
    const tooLarge =
      points === undefined
        ? coded('load-step-too-large-percent', { next, unit, percent, load, largest: most })
        : coded('load-step-too-large', { next, unit, points, load, largest });
    return raiseRepetitions(given, [...because, tooLarge]);
  }
  if (points === undefined || highPercent === undefined || percent <= highPercent) return up();
  return up(coded('step-in-points', { next, unit, percent, largest: highPercent, points }));
}

/** A load above the range that is recommended with restriction, which the proposal says. */
function aboveGuidance(item: ExpandedPlanItem, next: number, maximum: number | undefined): Sentence[] {
  if (!isCuffed(item) || maximum === undefined) return [];
  const { low, high } = guidance2019.percentOneRepMax;
  const percentOneRepMax = percentage(next, maximum);
  return percentOneRepMax > high ? [coded('raised-above-guidance', { percentOneRepMax, low, high })] : [];
}

/** Raises what was asked for once the rule is met: the pressure, else the load, never both. */
function raise(given: ItemCase, met: readonly Sentence[]): Draft {
  const { item, nextPercentLop } = given;
  if (nextPercentLop === undefined) return raiseLoad(given, met);
  if (!isCuffed(item)) return raiseLoad(given, [...met, coded('pressure-no-cuff')]);
  const { load } = loadOf(item);
  const from = percentOf(item.target!);
  const largest = limits.largestPressureStep.value;
  if (sum([nextPercentLop, -from]) > largest) {
    const values = { from, to: nextPercentLop, largest };
    return { action: 'repeat', load, reasons: [...met, coded('pressure-step-too-large', values)] };
  }
  const target = targetAt(item, nextPercentLop);
  if (target.value <= item.target!.value) {
    const values = { percentLop: nextPercentLop, held: item.target!.value };
    return raiseLoad(given, [...met, coded('pressure-not-higher', values)]);
  }
  const instead = coded('pressure-instead', { percentLop: nextPercentLop });
  return { action: 'raise-pressure', load, target, reasons: [...met, instead] };
}

/** The last sessions in a row, without a long break between them. */
function inARow(own: readonly DoneOnce[], longBreakDays: number): readonly DoneOnce[] {
  const days = own.map(({ record }) => record.date);
  const gaps = days.slice(1).map((day, index) => daysBetween(days[index]!, day) >= longBreakDays);
  return own.slice(gaps.lastIndexOf(true) + 1);
}

/** What is to be done next with one item, by the rule, after what was felt and done. */
export function draftItem(given: ItemCase): Draft {
  const { item, own, rule, longBreakDays } = given;
  const { load, maximum } = loadOf(item);
  const repeat = (...reasons: Sentence[]): Draft => ({ action: 'repeat', load, reasons });
  const down = reasonsDown(given);
  if (down.reasons.length > 0) return backOff(given, down.reasons, down.lower);
  const holds = reasonsToHold(given);
  if (holds.length > 0) return repeat(...holds);
  const last = own.at(-1);
  if (!last) return repeat(coded('no-record'));
  const other = differenceFromPlan(item, last.item);
  if (other) return repeat(other);
  if (item.sets.some(({ repetitions }) => repetitions === undefined)) return repeat(coded('rule-counts'));
  const percentOneRepMax = load === undefined || maximum === undefined ? undefined : percentage(load, maximum);
  const light = limits.overGoalFrom.value;
  if (rule.overGoal && isCuffed(item) && percentOneRepMax !== undefined && percentOneRepMax <= light) {
    return repeat(coded('over-goal-not-applied', { percentOneRepMax, most: light }));
  }
  const sessions = inARow(own, longBreakDays)
    .slice(-rule.sessions)
    .filter((one) => !differenceFromPlan(item, one.item));
  if (sessions.length < rule.sessions) {
    return repeat(coded('too-few-records', { needed: rule.sessions, found: sessions.length }));
  }
  const lower = sessions.map((one) => comparedHeld(one.item));
  const share = lower.find((held) => held?.as === 'share-below');
  if (share) return repeat(coded('hold-share-below', shares(share)));
  const below = lower.find((held) => held?.as === 'below');
  if (below) return repeat(coded('hold-held-below', { held: below.held, target: below.target }));
  const verdicts = sessions.map((one) => rule.met(one.item.done, item.sets));
  const values = {
    done: sessions.map((one) => setCounts(one.item.done.sets)).join('; '),
    goal: setCounts(item.sets),
  };
  if (verdicts.includes(false)) return repeat(coded('rule-not-met', values));
  if (verdicts.includes(undefined)) return repeat(coded('failure-not-recorded'));
  return raise(given, [coded('rule-met', values), ...notAssessed(given)]);
}
