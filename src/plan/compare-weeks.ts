import { Math } from '../quantity/maths.js';
import type { Answer, AnswerKind, Caution } from '../answer/answer.js';
import { idsIn } from '../answer/cite.js';
import { guardCautions } from '../answer/guards.js';
import { InputError, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { SourceId } from '../evidence/sources.js';
import { convertLoad } from '../quantity/convert.js';
import { sum } from '../quantity/decimal.js';
import { loadUnitOf, quantities, type Limb, type Quantity, type Side } from '../quantity/quantities.js';
import { highest, list, listed, summed, total } from '../session/working.js';
import { onceEach } from './gravest-first.js';
import { caution } from './messages.js';
import { percentOf } from './item-draft.js';
import { isSameLimb, keyOf, limbsIn } from './places.js';
import { documentInto } from './read-document.js';
import { say, type StandingSentence } from './standing.js';
import { mergeStops, stopsOf, type Stop } from './stops.js';
import type { LimbTotals, Plan, PlanItem } from './types.js';

/** A session of a week, and how often it is done in it. */
export interface WeekSession {
  readonly plan: Plan;
  /** 1 when left out. */
  readonly times?: number;
}

/** What {@link compareWeeks} takes. */
export interface WeekComparisonInput {
  /** Weeks in their order, each with its sessions. */
  readonly weeks: readonly { readonly sessions: readonly WeekSession[] }[];
}

/** What a limb that is trained goes through in a week. */
export interface WeekLimb {
  readonly limb: Limb;
  readonly side: Side;
  readonly restrictionTime: Answer<'restriction-time'>;
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  readonly volumeLoad?: Answer<'volume-load'>;
}

/** What one week comes to. */
export interface WeekRow {
  /** From 1. */
  readonly week: number;
  readonly sessions: Answer<'sessions'>;
  /** Those with a cuff up in any exercise. */
  readonly restrictedSessions: Answer<'sessions'>;
  /** Heaviest load, and heaviest share of a maximum; absent where no load or not every maximum is known. */
  readonly peakLoad?: Answer<'peak-load'>;
  readonly peakPercent?: Answer<'peak-percent'>;
  readonly volumeLoad?: Answer<'volume-load'>;
  /** Highest share of occlusion pressure that is set [%]; absent in a week without a cuff. */
  readonly percentOfOcclusion?: number;
  readonly limbs: readonly WeekLimb[];
}

/** Weeks side by side. Plain JSON; print it with `explain`. */
export interface WeekComparison {
  readonly document: 'week-comparison';
  readonly weeks: readonly WeekRow[];
  /** Reasons not to train, of every plan and of the weeks themselves, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}

const TIMES: Quantity = { ...quantities.sessionsPerWeek, name: 'times in the week', whole: true };

/** The sessions of a week, each as often as it is done. */
type Week = readonly { readonly plan: Plan; readonly times: number }[];

function read(input: WeekComparisonInput): Week[] {
  const reader = new Reader(input);
  const expected = 'a list of weeks, each with its sessions';
  const weeks = reader.optionalList('weeks', expected, quantities.weeks.max);
  if (!reader.has('weeks')) reader.missing('weeks', expected);
  const given = (weeks ?? []).map((week) => {
    const sessions = week.optionalList('sessions', 'a list of sessions, each a plan');
    if (!week.has('sessions')) week.missing('sessions', 'a list of sessions, each a plan');
    return (sessions ?? []).map((session) => ({
      plan: session.anything('plan', 'a plan of this library'),
      times: session.optionalNumber('times', TIMES) ?? 1,
    }));
  });
  reader.done();
  const issues: InputIssue[] = [];
  const read = given.map((sessions, week) =>
    sessions.flatMap(({ plan, times }, index): Week => {
      const place = ['weeks', week, 'sessions', index, 'plan'];
      const document = documentInto(issues, 'plan', plan, place);
      return document ? [{ plan: document, times }] : [];
    }),
  );
  if (issues.length > 0) throw new InputError(issues);
  return read;
}

const isRestricted = ({ restriction }: PlanItem): boolean => restriction !== 'none';

const count = (sessions: Week): Answer<'sessions'> => {
  const times = sessions.map((session) => session.times);
  return total('sessions', sum(times), '{sessions}', listed('S', 'weekSessions', list(times)), 'practice');
};

/** The parts of a week, each as often as its session is done. */
const often = <T>(week: Week, of: (plan: Plan) => T): T[] =>
  week.flatMap(({ plan, times }) => Array.from({ length: times }, () => of(plan)));

function limbsOf(week: Week): WeekLimb[] {
  const all = often(week, ({ limbs }) => limbs).flat();
  return limbsIn(all).map((place) => {
    const own = all.filter((one) => isSameLimb(one, place));
    // What a session does not have, such as pressure × time without a cuff, is passed over.
    const sumOf = <K extends AnswerKind>(of: (one: LimbTotals) => Answer<K> | undefined): Answer<K> | undefined =>
      summed(
        own.flatMap((one) => of(one) ?? []),
        'weekSessions',
      );
    const relativePressureTime = sumOf((one) => one.relativePressureTime);
    const volumeLoad = sumOf((one) => one.volumeLoad);
    return {
      ...place,
      restrictionTime: sumOf((one) => one.restrictionTime)!,
      ...(relativePressureTime && { relativePressureTime }),
      ...(volumeLoad && { volumeLoad }),
    };
  });
}

function rowOf(week: Week, index: number): WeekRow {
  // Walking and restriction at rest have no load to be looked at.
  const lifted = week.filter(({ plan }) => plan.session.totals.peakLoad);
  const peakLoad = highest(lifted.map(({ plan }) => plan.session.totals.peakLoad));
  const peakPercent = highest(lifted.map(({ plan }) => plan.session.totals.peakPercent));
  const volumeLoad = summed(
    often(lifted, ({ session }) => session.totals.volumeLoad),
    'weekSessions',
  );
  const cuffed = week.flatMap(({ plan }) => plan.items.filter(isRestricted));
  return {
    week: index + 1,
    sessions: count(week),
    restrictedSessions: count(week.filter(({ plan }) => plan.items.some(isRestricted))),
    ...(peakLoad && { peakLoad }),
    ...(peakPercent && { peakPercent }),
    ...(volumeLoad && { volumeLoad }),
    ...(cuffed.length > 0 && { percentOfOcclusion: Math.max(...cuffed.map(({ target }) => percentOf(target!))) }),
    limbs: limbsOf(week),
  };
}

/** The heaviest load and the highest pressure of each exercise of a week that is done with a cuff. */
function heights(week: Week): Map<string, { item: PlanItem; kg: number; percent: number }> {
  const found = new Map<string, { item: PlanItem; kg: number; percent: number }>();
  for (const item of week.flatMap(({ plan }) => plan.items.filter(isRestricted))) {
    if (!item.load) continue;
    const key = keyOf(item);
    const kg = convertLoad(item.load.value, loadUnitOf(item.load.unit), 'kg');
    const { kg: most = 0, percent = 0 } = found.get(key) ?? {};
    found.set(key, { item, kg: Math.max(most, kg), percent: Math.max(percent, percentOf(item.target!)) });
  }
  return found;
}

/** Exercises whose load and pressure both go up from one week to the next. */
function bothRaised(weeks: readonly Week[]): Caution[] {
  const all = weeks.map(heights);
  return all.flatMap((later, index) =>
    [...later].flatMap(([key, { item, kg, percent }]) => {
      const before = all[index - 1]?.get(key);
      if (!before || kg <= before.kg || percent <= before.percent) return [];
      const { exercise, side, limb } = item;
      return [caution('caution', 'both-raised', { exercise, side, limb, from: index, to: index + 1 })];
    }),
  );
}

/** What the guards say of the restriction that a week plans. */
const doseCautions = ({ restrictedSessions, limbs }: WeekRow, index: number): Caution[] => [
  ...limbs.flatMap(({ limb, side, restrictionTime }) =>
    guardCautions('limb-restriction-week', restrictionTime.value / 60, {
      values: { limb, side },
      path: ['weeks', index],
    }),
  ),
  ...guardCautions('restricted-sessions-week', restrictedSessions.value, { path: ['weeks', index] }),
];

/**
 * Weeks side by side, from their planned sessions: how much is lifted and how much is restricted in each, so that the
 * shift from light with much restriction to heavy with little can be seen, week by week.
 *
 * Formula, row by row: sums over the sessions of the week, each as often as it is done; the heaviest load, the heaviest
 * share of a maximum and the highest share of occlusion pressure are the highest of any session.
 *
 * A week may have sessions with a cuff beside heavy ones without. Where an exercise with a cuff goes up in load and in
 * pressure from one week to the next, a caution says so: one thing at a time (`practice`).
 *
 * This is arithmetic. No one road is published; it never claims that one week equals another, and it clears no one.
 * How often a week is held against guidelines by `reviewPlan`; what was done is added up by `weekTotals`.
 *
 * - Evidence: that of each total.
 *
 * @function
 * @param input - `weeks`, in order, each with its `sessions`: a `plan` of `planSession`, and how many `times` a week
 * @returns the weeks; print them as a table with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { compareWeeks, planSession } from 'cuffwork/plan';
 * const plan = (percent: number, scheme: string, restriction: 'continuous' | 'none') => planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percent: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percent, step: 2.5,
 *     scheme, tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction,
 *   }],
 * });
 * const light = plan(25, '30-15-15-15', 'continuous');
 * const heavy = plan(75, '3x8', 'none');
 * const { weeks } = compareWeeks({
 *   weeks: [{ sessions: [{ plan: light, times: 3 }] }, { sessions: [{ plan: light, times: 2 }, { plan: heavy }] }],
 * });
 * weeks.map(({ restrictedSessions }) => restrictedSessions.value); // => [3, 2]
 * weeks.map(({ volumeLoad }) => volumeLoad?.value); // => [3375, 3330]
 * weeks.map(({ limbs }) => limbs[0]?.restrictionTime.value); // => [1170, 780]
 * ```
 */
export const compareWeeks = /* @__PURE__ */ withInput(function compareWeeks(
  input: WeekComparisonInput,
): WeekComparison {
  const weeks = read(input);
  const rows = weeks.map(rowOf);
  const cautions = onceEach([...rows.flatMap(doseCautions), ...bothRaised(weeks)]);
  const standing = [say('weeks-clear-no-one'), say('weeks-no-one-road'), say('one-thing-at-a-time')];
  const stops = mergeStops(...weeks.flat().map(({ plan }) => plan.stops), stopsOf(cautions));
  const comparison = { document: 'week-comparison', weeks: rows, stops, cautions, standing } as const;
  return { ...comparison, sources: idsIn(comparison) };
});
