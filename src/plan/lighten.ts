import { ownDocument } from '../answer/own.js';
import type { Answer, Assumption, Caution, Sentence } from '../answer/answer.js';
import { attempt, describe, refuse } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { guidance2019 } from '../evidence/guidance.js';
import { decimal } from '../quantity/decimal.js';
import { percentage, product, sum } from '../quantity/exact.js';
import { format } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import type { Quantity } from '../quantity/quantities.js';
import { isCuffed, MOST_NAME, type Restriction } from '../session/prescription.js';
import { repetitionsAtPercent } from '../strength/repetitions.js';
import { heaviestUpTo } from './available-loads.js';
import { assumption } from './assumptions.js';
import { coded, codedCaution } from './coded.js';
import { comparisonOf, sideOfItems, type SessionComparison } from './compare-sessions.js';
import { uniqueCautions } from './severity.js';
import { expansionOf } from './expanded.js';
import { itemCautions } from './item-cautions.js';
import { goalsOf, loadOf } from './item-draft.js';
import { setsOf, withLoad, withSets } from './next-exercise.js';
import { isSameLimb } from './limb-and-side.js';
import { hasReadings, withWidth } from './limb-cuff.js';
import { planSession } from './plan-session.js';
import { expandedOf } from './read-document.js';
import { restrictedMin } from './readings.js';
import { reviewPlan, type ReviewFinding } from './review-plan.js';
import type { SetGoal } from './proposal.js';
import { loadsOfSets } from './set-counts.js';
import { documentDisclaimers, type Disclaimer } from './disclaimers.js';
import { inForce, type Stop } from './stops.js';
import type { ExpandedPlan, ExpandedPlanItem, Plan, PlanExerciseFields, PlanRequest } from './types.js';
import { need } from '../answer/needs.js';
import { OUR_PLAN, EXERCISE_NAME, EXERCISE_ONCE, WITH_LOAD, LESS_LIGHT } from './needs.js';

/** What {@link lightenExercise} takes. */
export interface LightenInput {
  /** The plan that has the exercise. */
  readonly plan: Plan;
  /** Name of the exercise in the plan. */
  readonly exercise: string;
  /** How much less load is wanted [% of the load]. */
  readonly lighterPercent: number;
}

/** What an option keeps as it was. */
export const KEEPS = ['sets', 'work', 'repetitions-in-reserve', 'restriction-time', 'sets-with-cuff'] as const;
/** What an option keeps as it was. */
export type Keeps = (typeof KEEPS)[number];

/** One way to do an exercise with less load. */
export interface LighterOption {
  /** What this option keeps as it was. */
  readonly keeps: Keeps;
  /** Load of the exercise now. */
  readonly load: Answer<'training-load'>;
  /** Repetitions or time [s] of each set. */
  readonly sets: readonly SetGoal[];
  /** When the cuff is inflated in this option. */
  readonly restriction: Restriction;
  /** Give it to `planSession`; the other exercises stay as they were. */
  readonly request: PlanRequest;
  /** The exercise as planned, and as it would be. */
  readonly comparison: Pick<SessionComparison, 'rows' | 'notKnown'>;
  /** Assumptions behind this option. */
  readonly assumptions: readonly Assumption[];
  /** What is outside the ranges of the guideline review of 2019, as `reviewPlan` finds it. */
  readonly findings: readonly ReviewFinding[];
  /** Cautions about this option. */
  readonly cautions: readonly Caution[];
}

/** Ways to do an exercise with less load. Plain JSON; print it with `explain`. */
export interface LighterOptions {
  /** Kind of document. */
  readonly document: 'lighter-options';
  /** Name of the exercise in the plan. */
  readonly exercise: string;
  /** How much less load you asked for, 1 to 90 [% of the load]. */
  readonly lighterPercent: number;
  /** None while a stop is in force. */
  readonly options: readonly LighterOption[];
  /** What no option keeps, and why. */
  readonly notOffered: readonly (Sentence & {
    /** What cannot be kept. */
    readonly keeps: Keeps;
  })[];
  /** Reasons not to train, of the plan, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** Says where the load goes down by another percentage than you asked for. */
  readonly cautions: readonly Caution[];
  /** Sentences that always apply. */
  readonly disclaimers: readonly Disclaimer[];
}

const LIGHTER: Quantity = { name: 'less load', unit: '%', min: 1, max: 90, slips: [] };
/** More repetitions than any published scheme of light loads has: no option goes further. */
const MOST_REPETITIONS = 200;

type Counts = readonly number[];

/** So many repetitions shared out among sets as before: largest remainder first, earlier sets first. */
export function sharedOut(counts: Counts, repetitions: number): number[] {
  const before = sum(counts);
  const shares = counts.map((count) => (count * repetitions) / before);
  const whole = shares.map((share) => Math.floor(share));
  const order = shares.map((share, index) => ({ index, rest: share - whole[index]! })).sort((a, b) => b.rest - a.rest);
  for (const { index } of order.slice(0, repetitions - sum(whole))) whole[index]! += 1;
  return whole;
}

/** The exercise that is to be lighter, and what its plan has of it. */
interface Case {
  readonly plan: ExpandedPlan;
  readonly index: number;
  readonly exercise: PlanExerciseFields;
  readonly items: readonly ExpandedPlanItem[];
  /** Repetitions of each set; nothing where a set is by time. */
  readonly counts: Counts | undefined;
  readonly load: number;
  readonly lighter: number;
  /** Load of each set, now and with less load. */
  readonly loads: readonly number[];
  readonly lighterLoads: readonly number[];
}

function caseOf(plan: ExpandedPlan, name: string, lighterPercent: number): Case {
  const { exercises } = plan.request;
  const [index, another] = exercises.flatMap((one, at) => (one.name === name ? [at] : []));
  if (index === undefined || another !== undefined) {
    const expected = need(EXERCISE_ONCE, { exercises: [...new Set(exercises.map((one) => describe(one.name)))] });
    refuse('wrong-relation', ['exercise'], expected, describe(name));
  }
  const exercise = exercises[index]!;
  const items = plan.items.filter((item) => item.exercise === name);
  const load = items[0]!.load?.value;
  if (load === undefined) refuse('wrong-relation', ['exercise'], WITH_LOAD, describe(name));
  const lighter = heaviestUpTo(product(load, 1 - lighterPercent / 100), exercise);
  if (lighter === undefined) {
    refuse('out-of-range', ['lighterPercent'], LESS_LIGHT, String(lighterPercent));
  }
  const loads = loadsOfSets(items[0]!.sets, load);
  const counts = setsOf(exercise).map(({ repetitions, durationS }) =>
    durationS === undefined ? repetitions : undefined,
  );
  return {
    plan,
    index,
    exercise,
    items,
    counts: counts.every((count) => count !== undefined) ? counts : undefined,
    load,
    lighter,
    loads,
    lighterLoads: loads.map((own) => heaviestUpTo(product(own, lighter / load), exercise) ?? own),
  };
}

/** Minutes under the cuff: every limb of an exercise has as many. */
const minutesOf = ([item]: readonly ExpandedPlanItem[]): number => restrictedMin(item!.totals);

/** How an exercise is done with less load. */
interface Way {
  readonly counts: Counts | undefined;
  readonly restriction?: Restriction;
  readonly assumptions?: readonly Assumption[];
  readonly cautions?: readonly Caution[];
}

/** The whole plan with the exercise done another way, and the exercise in it. */
function madeWith({ plan, index, exercise, items, load, lighter }: Case, { counts, restriction }: Way) {
  const lifted = withLoad(exercise, items[0]!, lighter, (own) => product(own, lighter / load));
  const sets = setsOf(lifted).map((set, at) => ({ ...set, ...(counts && { repetitions: counts[at]! }) }));
  const next = { ...withSets(lifted, sets), ...(restriction && { restriction }) };
  const { decisions: _, ...asked } = plan.request;
  const request = {
    ...asked,
    ...(plan.stops.length > 0 && { stops: plan.stops }),
    exercises: asked.exercises.map((one, at) => (at === index ? next : one)),
  } as PlanRequest;
  const made = planSession(request);
  return { request, made, own: expansionOf(made)!.items.filter((item) => item.exercise === exercise.name) };
}

/** An option with every caution that its plan and its review have about it. */
function optionOf(given: Case, keeps: Keeps, way: Way): LighterOption {
  const { request, made, own } = madeWith(given, way);
  const { rows, notKnown, cautions } = comparisonOf(sideOfItems(given.items), sideOfItems(own));
  const findings = reviewPlan(made).findings.flatMap((finding) =>
    finding.measure !== undefined && finding.exercise === given.exercise.name ? [finding] : [],
  );
  const [{ load, sets, restriction }] = own as [ExpandedPlanItem];
  return {
    keeps,
    load: load!,
    sets: goalsOf(sets),
    restriction,
    request,
    comparison: { rows, notKnown },
    assumptions: way.assumptions ?? [],
    findings,
    cautions: uniqueCautions([
      ...(way.cautions ?? []),
      ...own.flatMap(itemCautions),
      ...cautions.filter(({ code }) => code !== 'no-equivalence'),
    ]),
  };
}

/** Repetitions so that the volume load is not below that of the plan. */
function workCounts({ counts, loads, lighterLoads }: Case): Counts | undefined {
  if (!counts) return undefined;
  const volume = (of: Counts, at: readonly number[]): number =>
    sum(of.map((count, index) => product(count, at[index]!)));
  const before = volume(counts, loads);
  for (let repetitions = sum(counts); repetitions <= MOST_REPETITIONS; repetitions += 1) {
    const shared = sharedOut(counts, repetitions);
    if (volume(shared, lighterLoads) >= before) return shared;
  }
  return undefined;
}

/** Repetitions to failure at a load of the plan; nothing where no equation is valid. */
function toFailure({ items }: Case, load: number): number | undefined {
  const { maximum } = loadOf(items[0]!);
  if (maximum === undefined) return undefined;
  const found = attempt(repetitionsAtPercent, { percentOneRepMax: percentage(load, maximum) });
  return found.ok ? found.value.value : undefined;
}

/** The way to keep one thing as it was, or why it is not offered; nothing where the question does not arise. */
const ways: Readonly<Record<Keeps, (given: Case) => Way | Sentence | undefined>> = {
  sets: ({ counts }) => ({ counts }),

  work: (given) => {
    const counts = workCounts(given);
    return counts ? { counts } : coded(given.counts ? 'lighter-too-many' : 'lighter-not-counted');
  },

  'repetitions-in-reserve': (given) => {
    const { counts, load, lighter } = given;
    const [before, after] = [toFailure(given, load), toFailure(given, lighter)];
    if (!counts) return coded('lighter-not-counted');
    if (before === undefined || after === undefined) return coded('lighter-reserve-not-known');
    if (counts.some((count) => count > before)) return coded('lighter-reserve-passed', { repetitions: before });
    const more = Math.floor(after - before + 1e-9);
    const [from, to] = [Number(format(before)), Number(format(after))];
    return {
      counts: counts.map((count) => count + more),
      assumptions: [assumption('lighter-reserve-of-fresh-set', { from, to })],
      cautions: isCuffed(given.exercise) ? [codedCaution('caution', 'lighter-reserve-without-cuff')] : [],
    };
  },

  // Where keeping the work passes the minutes that guidance gives.
  'restriction-time': (given) => {
    const { high } = guidance2019.restrictionMin.resistance;
    const fits = (counts: Counts): boolean => minutesOf(madeWith(given, { counts }).own) <= high;
    const work = workCounts(given);
    if (!isCuffed(given.exercise) || !work || fits(work)) return undefined;
    const counts = mostWithin(work, fits);
    return counts ? { counts } : coded('lighter-minutes-passed', { minutes: minutesOf(given.items), high });
  },

  'sets-with-cuff': (given) => {
    const { plan, exercise, items, counts } = given;
    if (isCuffed(exercise)) return undefined;
    return items.every((item) => hasCuff(plan, item))
      ? { counts, restriction: 'intermittent' }
      : coded('lighter-no-cuff');
  },
};

/** Whether the plan knows a cuff and a percentage for the limb of an item. */
const hasCuff = ({ request }: ExpandedPlan, item: ExpandedPlanItem): boolean =>
  request.limbs.some((limb) => isSameLimb(limb, item) && limb.percentLop !== undefined && hasReadings(withWidth(limb)));

/** The most repetitions, shared out as those given and no more than they, that fit; nothing where none do. */
function mostWithin(counts: Counts, fits: (counts: Counts) => boolean): Counts | undefined {
  let [few, many] = [counts.length, sum(counts)];
  while (sharedOut(counts, few).includes(0)) few += 1;
  if (!fits(sharedOut(counts, few))) return undefined;
  while (many - few > 1) {
    const middle = Math.floor((few + many) / 2);
    if (fits(sharedOut(counts, middle))) few = middle;
    else many = middle;
  }
  return sharedOut(counts, few);
}

/**
 * An exercise of a plan with less load: a few prescriptions, each of which keeps one thing as it was, with what that
 * costs.
 *
 * | `keeps`                  | keeps                                                                                      |
 * | ------------------------ | ------------------------------------------------------------------------------------------ |
 * | `sets`                   | sets, repetitions and rests: less work                                                     |
 * | `work`                   | volume load: more repetitions, shared out among the sets as before                         |
 * | `repetitions-in-reserve` | repetitions in reserve of a fresh set, by the inverse of Brzycki                           |
 * | `restriction-time`       | minutes under the cuff within guidance, where keeping the work would pass them             |
 * | `sets-with-cuff`         | sets and rests, with the cuff inflated in the sets; where the plan knows a cuff for the limb |
 *
 * Formulas: w′ = the heaviest load you can set up to w × (1 − p / 100). Work: N′ = ⌈N × w / w′⌉. Reserve:
 * n′ = n + ⌊r(w′) − r(w)⌋, where r is repetitions to failure.
 *
 * The load goes down in every option, and no cuff pressure goes up. An option may pass the range of the guideline
 * review of 2019: the `findings` of that option say so.
 *
 * This is arithmetic. It does not promise an equal effect. While a stop is in force you get the stop and no option.
 *
 * - Evidence: which of them to keep is `practice`; repetitions to failure by Brzycki are `secondary`.
 *
 * @function
 * @param input - the `plan`; the name of its `exercise`; `lighterPercent` p, 1–90 [% of the load]
 * @returns options, each with its request for `planSession`, a comparison in four lines and cautions; and what is not
 * offered, with the reason.
 * @throws InputError naming every wrong field; also for an exercise without a load, and where no load you can set is
 * light enough.
 *
 * @example
 * ```ts
 * import { lightenExercise, planSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'arm', side: 'left', cuffWidthCm: 7, percentLop: 50, measured: { valueMmHg: 140, method: 'doppler' } }],
 *   exercises: [{
 *     name: 'row', limb: 'arm', oneRepMax: { load: 100 }, percentOneRepMax: 80, step: 2.5,
 *     sets: [3, 3, 2, 2, 2].map((repetitions) => ({ repetitions })), tempo: '2-0-2-0', restS: 120, restriction: 'none',
 *   }],
 * });
 * const { options } = lightenExercise({ plan, exercise: 'row', lighterPercent: 10 });
 * options.map(({ keeps, load }) => `${keeps}: ${load.value}`); // => ['sets: 70', 'work: 70', 'repetitions-in-reserve: 70', 'sets-with-cuff: 70']
 * options[1]?.sets.map(({ repetitions }) => repetitions); // => [4, 4, 2, 2, 2]
 * ```
 */
export const lightenExercise = withInput(function lightenExercise(input: LightenInput): LighterOptions {
  const reader = new Reader(input);
  const given = reader.anything('plan', OUR_PLAN);
  const name = reader.text('exercise', EXERCISE_NAME, ({ length }) => length <= MOST_NAME);
  const lighterPercent = reader.number('lighterPercent', LIGHTER);
  reader.done();
  const plan = expandedOf(['plan'], given, ['plan']);
  const asked = caseOf(plan, name, lighterPercent);
  const isStopped = inForce(plan.stops).length > 0;
  const found = isStopped ? [] : KEEPS.map((keeps) => ({ keeps, way: ways[keeps](asked) }));
  const { load, lighter } = asked;
  const reached = decimal(load).minus(decimal(lighter)).times(100).div(decimal(load)).toNumber();
  const isOther = !isStopped && Math.abs(reached - lighterPercent) >= 0.05;
  return ownDocument({
    document: 'lighter-options',
    exercise: name,
    lighterPercent,
    options: found.flatMap(({ keeps, way }) => (way && !('text' in way) ? [optionOf(asked, keeps, way)] : [])),
    notOffered: found.flatMap(({ keeps, way }) => (way && 'text' in way ? [{ keeps, ...way }] : [])),
    stops: plan.stops,
    cautions: isOther ? [codedCaution('note', 'lighter-than-asked', { asked: lighterPercent, reached })] : [],
    disclaimers: documentDisclaimers('lighter-no-promise', 'local-codes-decide'),
  });
});
