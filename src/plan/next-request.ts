import type { Assumption } from '../answer/answer.js';
import { describe, InputError, issue, refuse, type InputIssue, type Path } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { Math } from '../quantity/maths.js';
import { assumption } from './assumptions.js';
import { exerciseFinder, placesOf, placeText } from './limb-and-side.js';
import {
  OUR_PLAN,
  OUR_PROPOSAL,
  ITEMS_OF_PLAN,
  NOT_STOPPED,
  NOT_BACK_OFF,
  LOAD_TO_GO_TO,
  LIFTED_STOPS,
} from './needs.js';
import { setsOf, withLoad, withSets } from './next-exercise.js';
import type { Proposal, ProposalItem, ProposedChange, SetGoal } from './proposal.js';
import { expandedOf } from './read-document.js';
import { mergeStops, inForce } from './stops.js';
import type { ExpandedPlan, ExpandedPlanItem, Plan, PlanExerciseFields, PlanRequest } from './types.js';

/** What {@link nextRequest} takes. */
export interface NextRequestInput {
  /** The plan that was trained by. */
  readonly plan: Plan;
  /** What `nextSession` proposed for it, with the practitioner’s own numbers in it where they differ. */
  readonly proposal: Proposal;
}

/** A request for the next plan. */
export interface NextRequest {
  /** Give it to `planSession`. */
  readonly request: PlanRequest;
  /** Assumptions in the request, such as readings carried over from the last plan. */
  readonly assumptions: readonly Assumption[];
}

/** What is proposed for one exercise on one limb, and its place in the proposal. */
interface Proposed {
  readonly item: ExpandedPlanItem;
  readonly next: ProposalItem;
  readonly place: Path;
}

/** Whether a proposal starts from the load of an item, or from one in its range. */
function startsAt({ load: proposed }: ProposalItem, { load, upperLoad = load }: ExpandedPlanItem): boolean {
  if (!proposed || !load || !upperLoad) return proposed?.from === load?.value;
  return proposed.from >= load.value && proposed.from <= upperLoad.value;
}

/** Each item of the plan with what is proposed for it. */
function paired(plan: ExpandedPlan, proposal: Proposal): Proposed[] {
  const places = placesOf(proposal.items);
  return placesOf(plan.items).map((place, index) => {
    const item = plan.items[index]!;
    const at = places.indexOf(place);
    const next = proposal.items[at];
    if (!next || !startsAt(next, item)) {
      refuse('wrong-relation', ['proposal', 'items'], ITEMS_OF_PLAN, placeText(item));
    }
    return { item, next, place: ['proposal', 'items', at] };
  });
}

// What is left open is neither.
const isLower = ({ from, to = from }: ProposedChange): boolean => to < from;
const isHigher = ({ from, to = from }: ProposedChange): boolean => to > from;

/** What of a proposal cannot be done as it is. */
function undecided({ next, place }: Proposed): InputIssue[] {
  const { action, load, sets, percentLop } = next;
  const refused =
    action === 'stop'
      ? NOT_STOPPED
      : action === 'back-off' && !load && !sets && !(percentLop && isLower(percentLop)) && NOT_BACK_OFF;
  if (refused) return [issue('wrong-relation', [...place, 'action'], refused, describe(action))];
  if (!load || load.to !== undefined) return [];
  return [issue('missing', [...place, 'load', 'to'], LOAD_TO_GO_TO, undefined)];
}

/** An exercise with the sets that are proposed, of both sides the lesser; its rests stay. */
function withProposedSets(exercise: PlanExerciseFields, own: readonly Proposed[]): PlanExerciseFields {
  if (!own.some(({ next }) => next.sets)) return exercise;
  const goals = own.map(({ item, next }) => next.sets?.to ?? item.sets);
  const least = (index: number, name: keyof SetGoal): number =>
    Math.min(...goals.map((sets) => sets[index]![name] ?? Infinity));
  const sets = setsOf(exercise)
    .slice(0, Math.min(...goals.map(({ length }) => length)))
    .map((set, index) => {
      const name = set.durationS === undefined ? 'repetitions' : 'durationS';
      return { ...set, [name]: least(index, name) };
    });
  const { raisedFrom: before, ...rest } = withSets(exercise, sets);
  // The repetitions of each set before they were raised stay known, so that a heavier load can go back to them.
  const raisedFrom = before ?? own[0]!.item.sets.flatMap(({ repetitions }) => repetitions ?? []);
  return { ...rest, ...(own.some(({ next }) => next.action === 'raise-repetitions') && { raisedFrom }) };
}

/** An exercise as it is proposed; both of its sides share one load, one pressure and the sets. */
function accepted(exercise: PlanExerciseFields, own: readonly Proposed[]): { next: PlanExerciseFields; held: boolean } {
  const { item } = own[0]!;
  const loads = own.flatMap(({ next }) => next.load?.to ?? []);
  const load = Math.min(...loads);
  const lifted = loads.length === 0 || load === item.load!.value ? exercise : withLoad(exercise, item, load);
  const next = withProposedSets(lifted, own);
  const shares = own.flatMap(({ next: { percentLop } }) => (percentLop?.to === undefined ? [] : percentLop));
  const changes = shares.some(({ from, to }) => to !== from);
  const oneShare = shares.every(({ to }) => to === shares[0]!.to);
  // A pressure goes up where both sides ask for it, and down as soon as one does.
  const isChanged = changes && (oneShare || shares.every(isHigher) || shares.some(isLower));
  return {
    next: isChanged ? { ...next, percentLop: Math.min(...shares.map(({ to }) => to!)) } : next,
    held: loads.some((one) => one !== load) || (changes && !oneShare),
  };
}

/**
 * The request of the next plan: that of the last one, with the loads and cuff pressures of a proposal in it. Give it to
 * `planSession` once the practitioner has agreed; what they decide otherwise is put into the proposal, or into the
 * request, first.
 *
 * A load that came from a maximum becomes a percentage of the same maximum. We use as few decimals as give the new
 * load. Where both sides share an exercise they share its load and pressure, so the lower proposal is taken, and an
 * assumption says so. Blood pressure, limb sizes and maxima stay those of the last plan until new ones are put in.
 *
 * A proposal with a stop in force, one to stop and one that leaves a number open are refused, by name. Stops that were
 * lifted go into the request with their decisions; the check of the day does not.
 *
 * - Evidence: that of the rule of the proposal; this puts it into a request.
 *
 * @function
 * @param input - the `plan`; its `proposal`, of `nextSession`
 * @returns the `request`, and the assumptions in it.
 * @throws InputError naming every wrong field, such as a load that the practitioner has yet to decide.
 *
 * @example
 * ```ts
 * import { nextRequest, nextSession, planSession, recordSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, measured: { valueMmHg: 172, method: 'doppler' } }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * const done = [{
 *   exercise: 'leg extension', limb: 'leg', side: 'left',
 *   sets: [{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }, { repetitions: 15 }],
 * }] as const;
 * const records = [recordSession({ plan, date: '2026-03-02', items: done })];
 * const proposal = nextSession({ plan, records, rule: 'all-repetitions' });
 * const { request } = nextRequest({ plan, proposal });
 * request.exercises[0]?.percentOneRepMax; // => 29.2
 * planSession(request).items[0]?.load?.value; // => 17.5
 * ```
 */
export const nextRequest = withInput(function nextRequest(input: NextRequestInput): NextRequest {
  const reader = new Reader(input);
  const given = { plan: reader.anything('plan', OUR_PLAN), proposal: reader.anything('proposal', OUR_PROPOSAL) };
  reader.done();
  const plan = expandedOf(['plan'], given.plan, ['plan']);
  const proposal = expandedOf(['proposal'], given.proposal, ['proposal']);
  const pairs = paired(plan, proposal);
  const stops = mergeStops(plan.stops, proposal.stops);
  const active = inForce(stops).map(({ code }) =>
    issue('wrong-relation', ['proposal', 'stops'], LIFTED_STOPS, describe(code)),
  );
  const issues = active.length > 0 ? active : pairs.flatMap(undecided);
  if (issues.length > 0) throw new InputError(issues);
  const exerciseOf = exerciseFinder(plan);
  const assumptions = [assumption('readings-carried')];
  const exercises = plan.request.exercises.map((exercise) => {
    const own = pairs.filter(({ item }) => exerciseOf(item) === exercise);
    const { next, held } = accepted(exercise, own);
    if (held) assumptions.push(assumption('lower-of-two-sides', { exercise: exercise.name }));
    return next;
  });
  const { decisions: _, stops: __, dayCheck: ___, ...last } = plan.request;
  // What a proposal changes, `planSession` checks.
  const request = { ...last, ...(stops.length > 0 && { stops }), exercises } as PlanRequest;
  return { request, assumptions };
});
