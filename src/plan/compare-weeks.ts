import type { Answer, AnswerKind, Caution } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { describe, InputError, type InputIssue, type Path } from '../answer/issues.js';
import { ownDocument } from '../answer/own.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { sum } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { quantities, type Quantity } from '../quantity/quantities.js';
import { limbTotals, type ComparedQuantity, type ComparedTotals } from '../session/compare.js';
import { isAtRest } from '../session/exposure.js';
import { isCuffed, type FullPrescription } from '../session/prescription.js';
import { highest, isTense, list, summed, total } from '../session/working.js';
import { sideOf } from './compare-sessions.js';
import { documentDisclaimers, type Disclaimer } from './disclaimers.js';
import { head, type DocumentHead, type LimbAndSide } from './document-parts.js';
import { measurementOf } from './item-prescription.js';
import { isSameLimb, limbsIn } from './limb-and-side.js';
import { OUR_PLAN, OUR_RECORDS, PLANNED_OR_DONE, SESSIONS, WEEKS } from './needs.js';
import { painIsOf, PAIN_MOMENTS } from './pain.js';
import { expandedInto } from './read-document.js';
import type { ExpandedItem, ExpandedRecord, SessionRecord } from './record.js';
import { goalResults, readGoals, type StageGoal, type StageGoalResult } from './stage-goals.js';
import { mergeStops, stopsOf, type Stop } from './stops.js';
import type { ExpandedPlan, Plan } from './types.js';
import { weekCautions } from './week-cautions.js';
import type { WeekLimb, WeekOcclusion, WeekRow, WeekSums } from './week-rows.js';

/** A planned session of a week, and how often it is done in it. */
export interface WeekSession {
  /** Plan of the session, from `planSession`. */
  readonly plan: Plan;
  /** How often the session is done in the week; 1 when left out. */
  readonly times?: number | undefined;
}

/** A week: what was planned, what was done, or both. */
export interface WeekInput {
  /** Planned sessions; needed where there are no `records`. */
  readonly sessions?: readonly WeekSession[] | undefined;
  /** Records of the sessions done; needed where there are no `sessions`. */
  readonly records?: readonly SessionRecord[] | undefined;
  /** A lighter week on purpose: the week after it is compared with the one before it. */
  readonly deload?: boolean | undefined;
}

/** What {@link compareWeeks} takes. */
export interface WeekComparisonInput {
  /** Weeks in their order. */
  readonly weeks: readonly WeekInput[];
  /** Number of the first week, such as weeks since surgery; 1 when left out. */
  readonly firstWeek?: number | undefined;
  /** Your own criteria of a stage, compared with the last week. */
  readonly goals?: readonly StageGoal[] | undefined;
}

/** Weeks side by side. Plain JSON; print it with `explain`. */
export interface WeekComparison extends DocumentHead<'week-comparison', 1> {
  /** One row for each week, in the order of the input. */
  readonly weeks: readonly WeekRow[];
  /** Your goals, compared with the last week; what was not measured is neither met nor not met. */
  readonly goals: readonly StageGoalResult[];
  /**
   * Reasons not to train, of every plan and record and of the weeks themselves, with the decisions that lifted them.
   */
  readonly stops: readonly Stop[];
  /** Each caution about the weeks once: jumps of load or pressure, restriction, deloads that are not lighter. */
  readonly cautions: readonly Caution[];
  /** Sentences that every comparison of weeks has. */
  readonly disclaimers: readonly Disclaimer[];
}

const TIMES: Quantity = { ...quantities.sessionsPerWeek, name: 'times in the week', whole: true };

const FIRST: Quantity = { ...quantities.weeks, name: 'number of the first week', whole: true };

/** A session of a week, limb by limb, and how often it is done. */
interface CountedSession {
  readonly document: ExpandedPlan | ExpandedRecord;
  readonly parts: readonly FullPrescription[];
  readonly times: number;
}

interface Week {
  readonly deload: boolean;
  readonly planned: readonly CountedSession[];
  readonly done: readonly CountedSession[];
}

function readWeeks(reader: Reader, issues: InputIssue[]): Week[] {
  const weeks = reader.optionalList('weeks', WEEKS, quantities.weeks.max);
  if (!reader.has('weeks')) reader.missing('weeks', WEEKS);
  return (weeks ?? []).map((week, index): Week => {
    const doneAt = (kind: 'plan' | 'record', given: unknown, place: Path, times = 1): CountedSession[] => {
      if (given === undefined) return [];
      const document = expandedInto(issues, kind, given, ['weeks', index, ...place]);
      return document ? [{ document, times, parts: sideOf(document).parts }] : [];
    };
    const planned = (week.optionalList('sessions', SESSIONS) ?? []).flatMap((session, at) => {
      const given = session.anything('plan', OUR_PLAN);
      return doneAt('plan', given, ['sessions', at, 'plan'], session.optionalNumber('times', TIMES));
    });
    const records = week.anything('records', OUR_RECORDS, true);
    const given = records === undefined ? [] : Array.isArray(records) ? (records as unknown[]) : undefined;
    if (!given) week.report('wrong-type', 'records', OUR_RECORDS, describe(records));
    if (!week.has('sessions') && given?.length === 0) week.missing('sessions', PLANNED_OR_DONE);
    const done = (given ?? []).flatMap((record, at) => doneAt('record', record, ['records', at]));
    return { deload: week.flag('deload'), planned, done };
  });
}

const count = (sessions: readonly CountedSession[]): Answer<'sessions'> => {
  const times = sessions.map((session) => session.times);
  return total('sessions', sum(times), '{sessions}', { weekSessions: list(times) });
};

const isLoaded = (part: FullPrescription): boolean => isTense(part) && part.sets.some(({ load }) => load !== undefined);

/** Totals of a limb, or of one exercise on it; sessions without it are passed over. */
function totalsOf(sessions: readonly CountedSession[], among: (part: FullPrescription) => boolean) {
  const totals = ({ parts, times }: CountedSession, fits: typeof among): ComparedTotals[] => {
    const own = parts.filter(fits);
    return own.length > 0 ? Array<ComparedTotals>(times).fill(limbTotals(own)) : [];
  };
  const each = sessions.flatMap((session) => totals(session, among));
  // A heaviest load is that of the sessions with a load; a share is known where every such load has its maximum.
  const lifted = sessions.flatMap((session) => totals(session, (part) => among(part) && isLoaded(part)));
  const answersFor = <K extends AnswerKind>(quantity: ComparedQuantity) =>
    each.flatMap((one) => (one[quantity] as Answer<K> | undefined) ?? []);
  const sumOf = <K extends AnswerKind>(quantity: ComparedQuantity) => summed(answersFor<K>(quantity), 'weekSessions');
  const peakOf = <K extends AnswerKind>(quantity: ComparedQuantity) =>
    highest(lifted.map((one) => one[quantity] as Answer<K> | undefined));
  const none = total('restriction-time', 0, 's', { weekSessions: '0' });
  return {
    ...defined({
      peakLoad: peakOf<'peak-load'>('peakLoad'),
      peakPercentOneRepMax: peakOf<'peak-percent-of-maximum'>('peakPercentOneRepMax'),
      percentLop: highest(answersFor<'percent-of-occlusion'>('percentLop')),
      volumeLoad: sumOf<'volume-load'>('volumeLoad'),
      relativePressureTime: sumOf<'relative-pressure-time'>('relativePressureTime'),
      partialRestrictionTime: sumOf<'partial-restriction-time'>('partialRestrictionTime'),
    }),
    restrictionTime: sumOf<'restriction-time'>('restrictionTime') ?? none,
  };
}

const itemsOf = ({ document }: CountedSession): readonly ExpandedItem[] => document.items;

/** The occlusion pressure of the last session with the cuff on a limb, with its day. */
function occlusionOf(sessions: readonly CountedSession[], place: LimbAndSide): WeekOcclusion | undefined {
  const cuffed = sessions.flatMap((session) =>
    itemsOf(session).flatMap(({ target, ...item }) =>
      target && isSameLimb(item, place) ? [{ document: session.document, occlusion: target.inputs.occlusion }] : [],
    ),
  );
  const last = cuffed.at(-1);
  if (!last) return undefined;
  const { document, occlusion } = last;
  const measurement = measurementOf(occlusion);
  const day = document.document === 'plan' ? document.request.date : undefined;
  return defined({
    valueMmHg: occlusion.value,
    measured: measurement !== undefined,
    date: measurement ? measurement.inputs['date'] : day,
  }) as WeekOcclusion;
}

function circumferenceOf(sessions: readonly CountedSession[], place: LimbAndSide): number | undefined {
  const found = sessions.flatMap(({ document }) =>
    (document.document === 'plan' ? document.request.limbs : document.items).flatMap(
      (one: LimbAndSide & { readonly circumferenceCm?: number | undefined }) =>
        isSameLimb(one, place) && one.circumferenceCm !== undefined ? [one.circumferenceCm] : [],
    ),
  );
  return found.at(-1);
}

function worstPainOf(sessions: readonly CountedSession[], place: LimbAndSide): WeekLimb['worstPain'] {
  const asked = sessions.flatMap(({ document }) =>
    document.document === 'record' && document.pain ? [document.pain] : [],
  );
  if (asked.length === 0) return undefined;
  return asked
    .flat()
    .filter((report) => painIsOf(report, place))
    .map((report) => ({
      value: Math.max(0, ...PAIN_MOMENTS.flatMap((moment) => report[moment] ?? [])),
      site: report.site,
    }))
    .reduce<NonNullable<WeekLimb['worstPain']>>((most, one) => (one.value > most.value ? one : most), { value: 0 });
}

function limbOf(sessions: readonly CountedSession[], place: LimbAndSide): WeekLimb {
  const isOf = (part: FullPrescription): boolean => isSameLimb(part as LimbAndSide, place);
  const names = sessions
    .flatMap(itemsOf)
    .map((item) => ('done' in item ? item.done.instead : undefined) ?? item.exercise);
  const { percentLop: _, ...totals } = totalsOf(sessions, isOf);
  return {
    ...place,
    ...totals,
    exercises: [...new Set(names)].flatMap((exercise) =>
      [true, false].flatMap((cuffed) => {
        const isOwn = (part: FullPrescription): boolean =>
          isOf(part) && part.name === exercise && isCuffed(part) === cuffed;
        if (!sessions.some(({ parts }) => parts.some(isOwn))) return [];
        const { volumeLoad: __, relativePressureTime: ___, ...kept } = totalsOf(sessions, isOwn);
        return [{ exercise, ...kept }];
      }),
    ),
    ...defined({
      occlusion: occlusionOf(sessions, place),
      circumferenceCm: circumferenceOf(sessions, place),
      worstPain: worstPainOf(sessions, place),
    }),
  } as WeekLimb;
}

function sumsOf(sessions: readonly CountedSession[]): WeekSums {
  const loads = sessions.map(({ document }) => (document.document === 'record' ? document.sessionLoad : undefined));
  const sessionLoad = summed(loads, 'weekSessions');
  const atRest = sessions.filter(({ parts }) => isAtRest(parts));
  return {
    sessions: count(sessions),
    restrictedSessions: count(sessions.filter(({ parts }) => parts.some(isCuffed))),
    ...(atRest.length > 0 && { restrictedAtRest: count(atRest) }),
    ...(sessionLoad && { sessionLoad }),
    limbs: limbsIn(sessions.flatMap(itemsOf)).map((place) => limbOf(sessions, place)),
  };
}

const rowOf = ({ deload, planned, done }: Week, week: number): WeekRow => ({
  week,
  ...(deload && { deload }),
  ...(planned.length > 0 && { planned: sumsOf(planned) }),
  ...(done.length > 0 && { done: sumsOf(done) }),
});

/**
 * Weeks side by side, planned and done, limb by limb: top load, percentage of 1RM, minutes under the cuff and percent
 * of LOP of the same exercise, LOP with its day, circumference, pain and session load. So you see how load rises and
 * the cuff falls, week after week.
 *
 * Formula, row by row: sums over the sessions of the week, each as often as it is done; loads, percentages and pain are
 * the highest of any session. `planned` and `done` are side by side; they are never added up.
 *
 * Jumps are named: a load that goes up by more than `largestLoadStep`, a pressure by more than `largestPressureStep`
 * (see `progressionLimits`), and an exercise whose load and pressure both go up (`practice`: one thing at a time). A
 * week marked `deload` is passed over: the next one is compared with the week before it.
 *
 * `goals` are your own criteria. Each is met, not met or not measured in the last week. That is no clearance to train.
 * We found no single published way from light to heavy. `reviewPlan` compares the sessions a week with guidelines.
 *
 * - Evidence: that of each total; limits of a jump `practice`, 10 % of a load `published`.
 *
 * @function
 * @param input - `weeks`, in order, each with planned `sessions` (a `plan`, and how many `times` a week), `records`, or
 *   both, and `deload`; `firstWeek`; `goals`
 * @returns the weeks, the goals, stops and cautions; print them as tables with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { compareWeeks, planSession } from 'cuffwork/plan';
 * const plan = (percentOneRepMax: number, scheme: string, restriction: 'continuous' | 'none') => planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, measured: { valueMmHg: 180, method: 'doppler' } }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax, step: 2.5,
 *     scheme, tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction,
 *   }],
 * });
 * const light = plan(25, '30-15-15-15', 'continuous');
 * const heavy = plan(75, '3x8', 'none');
 * const { weeks, goals } = compareWeeks({
 *   weeks: [{ sessions: [{ plan: light, times: 3 }] }, { sessions: [{ plan: light, times: 2 }, { plan: heavy }] }],
 *   goals: [{ name: '70 % of 1RM', measure: 'peakPercentOneRepMax', limb: 'leg', side: 'left', atLeast: 70 }],
 * });
 * weeks.map(({ planned }) => planned?.restrictedSessions.value); // => [3, 2]
 * weeks.map(({ planned }) => planned?.limbs[0]?.volumeLoad?.value); // => [3375, 3330]
 * weeks.map(({ planned }) => planned?.limbs[0]?.restrictionTime.value); // => [1170, 780]
 * goals.map(({ outcome }) => outcome); // => ['met']
 * ```
 */
export const compareWeeks = withInput(function compareWeeks(input: WeekComparisonInput): WeekComparison {
  const reader = new Reader(input);
  const issues: InputIssue[] = [];
  const weeks = readWeeks(reader, issues);
  const firstWeek = reader.optionalNumber('firstWeek', FIRST) ?? 1;
  const goals = readGoals(reader);
  reader.done();
  if (issues.length > 0) throw new InputError(issues);
  const rows = weeks.map((week, index) => rowOf(week, firstWeek + index));
  const cautions = weekCautions(rows);
  const documents = weeks.flatMap((week) => [...week.planned, ...week.done]).map(({ document }) => document);
  const stops = mergeStops(...documents.map((document) => document.stops), stopsOf(cautions));
  const last = rows.at(-1)!;
  return ownDocument({
    ...head('week-comparison', 1),
    weeks: rows,
    goals: goalResults(goals, last.done ?? last.planned),
    stops,
    cautions,
    disclaimers: documentDisclaimers('weeks-clear-no-one', 'weeks-no-one-road', 'one-thing-at-a-time'),
  });
});
