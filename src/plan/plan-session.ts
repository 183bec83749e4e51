import type { Assumption, Caution } from '../answer/answer.js';
import { daysBetween } from '../answer/day.js';
import { describe, InputError, issue, type InputIssue, type Path } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { ownDocument } from '../answer/own.js';
import { plainInput } from '../answer/plain-input.js';
import { withInput } from '../answer/with-input.js';
import { commonPractice } from '../evidence/guidance.js';
import { checkBloodPressure } from '../pressure/blood-pressure.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { isCuffed } from '../session/prescription.js';
import { scheduleSession } from '../session/schedule.js';
import { timelineOf } from '../session/timeline.js';
import { exercisePart, totalsOfSide, wholeTotals } from '../session/totals.js';
import { assumption } from './assumptions.js';
import { planTextByCode } from './catalogue.js';
import { answersAgain, answersCautions } from './checks.js';
import { disclaimers, stopCriteria } from './disclaimers.js';
import { head } from './document-parts.js';
import { compact } from './expanded.js';
import { Findings } from './findings.js';
import { isSameLimb } from './limb-and-side.js';
import { limbCuffOf, usesCuff, withWidth } from './limb-cuff.js';
import { totalsOfLimbs } from './limb-totals.js';
import { measuredAt, measuredDay } from './measured-limb.js';
import { planMessages } from './messages.js';
import { LISTED_ONCE, NOT_AFTER_PLAN, PLAN_REQUEST } from './needs.js';
import { parseDocument } from './parse.js';
import { plannedExercise, type PlannedExercise } from './plan-exercise.js';
import { MOST_LIMBS, planRequest } from './schema-requests.js';
import { sessionCautions } from './session-cautions.js';
import { uniqueCautions, uniqueMessages } from './severity.js';
import { applyDecisions, mergeStops, softened, stopsOf, type Stop } from './stops.js';
import type { ExpandedPlanClock, ExpandedPlanItem, Plan, PlanRequest } from './types.js';

/** Fields of the person, which stand at the top of a request and not in the part that uses them. */
const PERSONAL = ['ageYears', 'sex', 'systolicMmHg', 'diastolicMmHg', 'posture'];

/** The exercises of a request, and whatever is wrong with what they need. */
function exercisesOf(request: PlanRequest, findings: Findings): PlannedExercise[] {
  const { systolicMmHg, diastolicMmHg, limbs, exercises } = request;
  findings.try([], () => checkBloodPressure({ systolicMmHg, diastolicMmHg }), {
    fields: ['systolicMmHg', 'diastolicMmHg'],
  });
  limbs.forEach((limb, index) => {
    // Of more limbs than anyone has, the length of the list is what is wrong.
    if (!limb || limbs.length > MOST_LIMBS || !limbs.slice(0, index).some((other) => other && isSameLimb(other, limb)))
      return;
    findings.issues.push(issue('wrong-relation', ['limbs', index, 'side'], LISTED_ONCE, describe(limb.side)));
  });
  const cuffs = limbs.map((limb, index) =>
    findings.try(['limbs', index], () => (usesCuff(request, limb) ? limbCuffOf(request, limb) : undefined), {
      uses: PERSONAL,
    }),
  );
  return exercises.flatMap((_, index) => plannedExercise(request, cuffs, index, findings) ?? []);
}

/** The session as a whole, its exercises with the pauses between them, and its items with what each adds up to. */
function sessionOf(request: PlanRequest, planned: readonly PlannedExercise[]) {
  const minutes = commonPractice.reperfusionMin.low;
  const given = request.exercises.slice(0, -1).map(({ reperfusionS }) => reperfusionS ?? request.reperfusionS);
  const session = {
    exercises: planned.map(({ full }) => full),
    pauses: given.map((pause) => pause ?? minutes * 60),
  };
  const schedule = scheduleSession(session);
  const parts = schedule.map(exercisePart);
  return {
    items: planned.flatMap(({ items }, index) =>
      items.map((item) => ({ ...item, totals: totalsOfSide(parts[index]!, item.side) })),
    ),
    session: {
      timeline: timelineOf(session, schedule),
      totals: wholeTotals(session, parts),
    } satisfies ExpandedPlanClock,
    assumptions: given.includes(undefined) ? [assumption('reperfusion-taken', { minutes })] : [],
  };
}

/** The ranges of loads, of which the totals count the lower end. */
const rangesOf = (items: readonly ExpandedPlanItem[]): Assumption[] =>
  // Both sides of an exercise share its loads.
  uniqueMessages(
    items.flatMap(({ exercise, load, upperLoad }) => {
      if (!load || !upperLoad) return [];
      const values = { exercise, load: load.value, upper: upperLoad.value, unit: loadUnitOf(load.unit) };
      return [assumption('load-range-lower', values)];
    }),
  );

/** A stop of an earlier document, in the words of the catalogue: its own are not trusted. */
const worded = (stop: Stop): Stop => ({
  ...stop,
  text: planTextByCode(stop.code, stop.values, stop.text) ?? planMessages['code-unknown'],
});

/** How old the screening is. No published text says how old is too old. */
function screeningAge({ screening, date }: PlanRequest): Assumption[] {
  if (!screening) return [];
  const { date: screened } = screening.request;
  if (screened === undefined || date === undefined) return [assumption('screening-age-unknown')];
  return [assumption('screening-dated', { date: screened, days: daysBetween(screened, date) })];
}

/** The documents of answers in a request, worked out again; what is of a later day than the plan is refused. */
function answersOf(request: PlanRequest): PlanRequest {
  const { screening, dayCheck, date, limbs } = request;
  const issues: InputIssue[] = [];
  const check = (day: string | undefined, path: Path): void => {
    if (date === undefined || day === undefined || day <= date) return;
    issues.push(issue('wrong-relation', path, need(NOT_AFTER_PLAN, { date }), day));
  };
  check(screening?.request.date, ['screening', 'request', 'date']);
  limbs.forEach((limb, index) => {
    check(measuredDay(limb), measuredAt(limb, index));
  });
  if (issues.length > 0) throw new InputError(issues);
  return {
    ...request,
    ...(request.stops && { stops: request.stops.map(worded) }),
    ...(screening && { screening: answersAgain(screening, ['screening']) }),
    ...(dayCheck && { dayCheck: answersAgain(dayCheck, ['dayCheck']) }),
  };
}

/** Whether the request holds answers of yours: they are taken as they are, and verified when the plan is read. */
const holdsAnswers = ({ limbs, exercises }: PlanRequest): boolean =>
  limbs.some(({ occlusion }) => typeof occlusion === 'object') ||
  exercises.some(
    ({ oneRepMax, load }) => typeof load === 'object' || (typeof oneRepMax === 'object' && 'kind' in oneRepMax),
  );

/**
 * A whole session as one JSON document: for each exercise on each limb the occlusion pressure, the cuff pressure in the
 * sets and in the rests, the maximum, the load, the sets and rests, the clock and what it adds up to; the session as a
 * whole; then every caution, the disclaimers, the stop criteria and the sources.
 *
 * Resistance exercise is lifted at a share of a maximum, with your own load, as a share of body mass or without a
 * load; walking, cycling and restriction at rest have sets by time. The cuff stays inflated, is deflated or goes to a
 * second pressure in the rests, or there is none; sides train alone, at once or in turn.
 *
 * An occlusion pressure that you hold (`occlusion`: estimated, measured, calibrated or converted) is used instead of an
 * estimate, and is converted to the cuff and posture of the exercise where they differ. A maximum is an answer, a load
 * with repetitions, a tested load without, or a number, which we take as exact. A load is a number or an answer. The
 * error of what you hold goes into the plan.
 *
 * The share of a maximum may be a range, `percentOneRepMax: { from: 20, to: 30 }`: an item then has the `load` of its lower
 * end, which the totals count, and the `upperLoad`. What is lifted between them is as planned.
 *
 * Give it the documents of `screen` and `checkDay`, and its `date`. Every caution of severity `stop` becomes one of its
 * `stops`, as do those that the request passes on. A stop stays in force until one of the `decisions` lifts it.
 *
 * The plan is arithmetic. It does not clear anyone to train: local codes and a licensed practitioner decide.
 *
 * @function
 * @param request - the person’s readings, limbs and exercises; see {@link PlanRequest} for units.
 * @returns the plan; print it with `explain(plan)`.
 * @throws InputError naming every wrong field, from the top of the request.
 *
 * @example
 * ```ts
 * import { planSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * plan.items[0]?.load?.value; // => 15
 * plan.items[0]?.totals.sessionTime.value; // => 390
 * ```
 */
export const planSession = withInput(function planSession(request: PlanRequest): Plan {
  const document = plainInput(request, PLAN_REQUEST) as PlanRequest;
  const { value, issues } = parseDocument(planRequest, document);
  const findings = new Findings(issues);
  // What has a wrong field is looked at further, so that all that is wrong is reported at once.
  const isListed = Array.isArray(document.limbs) && Array.isArray(document.exercises);
  const given = isListed ? { ...document, limbs: document.limbs.map(withWidth) } : document;
  const planned = isListed ? exercisesOf(given, findings) : [];
  const asked =
    value && findings.try([], () => answersOf(given), { fields: ['screening', 'dayCheck', 'date', 'limbs'] });
  if (!asked || findings.issues.length > 0) throw new InputError(findings.issues);

  const { items, session, assumptions } = sessionOf(asked, planned);
  const limbs = totalsOfLimbs(items);
  const { date, screening, dayCheck } = asked;
  const ofAnswers = (one: typeof screening | typeof dayCheck) => (one ? answersCautions(one, date) : []);
  const [screened, ofDay] = [ofAnswers(screening), ofAnswers(dayCheck)];
  const ofSession = sessionCautions(asked, { items, limbs, session });
  const derived = [
    stopsOf(screened, screening?.request.date),
    stopsOf(ofDay, dayCheck?.request.date),
    stopsOf(ofSession, date),
  ];
  const stops = applyDecisions(mergeStops(asked.stops ?? [], ...derived), asked.decisions, date);
  // What the day and the session bring comes before what the screening found: a short page shows the first of it.
  const isOpen = ({ code }: Caution): boolean => code === 'screening-incomplete';
  const found = [...ofDay, ...screened.filter(isOpen), ...ofSession, ...screened.filter((one) => !isOpen(one))];
  const cautions = softened(found, stops);
  const cuffed = items.some(isCuffed);
  const plan = compact<Plan>(
    {
      ...head('plan', 2),
      request: asked,
      items,
      limbs,
      session,
      assumptions: [...screeningAge(asked), ...assumptions, ...rangesOf(items)],
      stops,
      cautions: uniqueCautions(cautions),
      disclaimers: disclaimers(cuffed),
      stopCriteria: stopCriteria(cuffed),
    },
    planTextByCode,
  );
  return holdsAnswers(asked) ? plan : ownDocument(plan);
});
