import { describeLength } from '../answer/issues.js';
import { Math, square } from '../quantity/maths.js';
import { sum } from '../quantity/exact.js';
import type { Answer, AnswerKind, Assumption, Caution, Inputs } from '../answer/answer.js';
import { guardCautions } from '../answer/guards.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import { inFull } from '../quantity/format.js';
import { quantities, type Limb, type Side, type Unit } from '../quantity/quantities.js';
import { assumption } from './assumptions.js';
import { comparisonCaution } from './messages.js';
import { frozen } from '../quantity/frozen.js';
import { need } from '../answer/needs.js';
import { defined } from '../answer/defined.js';
import { sessionCountCautions } from './exposure.js';
import { total } from './working.js';
import {
  AT_MOST_RESTRICTED,
  AT_MOST_SESSIONS,
  EARLIER_WEEKS_LOADS,
  LEFT_OUT_WITHOUT,
  ONE_RESTRICTED,
  RESTRICTED_OF,
  SEVEN_DAYS,
} from './needs.js';

/** Restriction time of each limb [s]; limbs left out had none. */
export interface LimbSeconds {
  /** Restriction time of the left arm [s]. */
  readonly leftArm?: number;
  /** Restriction time of the right arm [s]. */
  readonly rightArm?: number;
  /** Restriction time of the left leg [s]. */
  readonly leftLeg?: number;
  /** Restriction time of the right leg [s]. */
  readonly rightLeg?: number;
}

/** Volume load of each limb [kg]; limbs left out had none. */
export interface LimbKilograms {
  /** Volume load of the left arm [kg]. */
  readonly leftArm?: number;
  /** Volume load of the right arm [kg]. */
  readonly rightArm?: number;
  /** Volume load of the left leg [kg]. */
  readonly leftLeg?: number;
  /** Volume load of the right leg [kg]. */
  readonly rightLeg?: number;
}

/** What was done on one day. */
export interface TrainingDay {
  /** Session-RPE loads of the day added up [AU], 0–14,400; 0 on a day of rest. */
  readonly loadAu: number;
  /** Number of sessions, 0–10; 1 on a day with a load and 0 on one without, when left out. */
  readonly sessions?: number | undefined;
  /** Number of them with restriction, 0–10; left out, 1 on a day with one session and any restriction time. */
  readonly restrictedSessions?: number | undefined;
  /** Number of those with restriction at rest alone, 0–10; none when left out. Guidance allows more of them a week. */
  readonly restrictedAtRest?: number | undefined;
  /** Time with the cuff of each limb inflated that day, at either pressure [s], 0–86,400. */
  readonly restrictedS?: LimbSeconds | undefined;
  /** Volume load of each limb that day [kg], 0–1,000,000. */
  readonly volumeKg?: LimbKilograms | undefined;
}

/** Which standard deviation: that of a sample (divided by n − 1) or of a population (divided by n). */
export type Deviation = 'sample' | 'population';
/** Whether the acute week is one of the chronic weeks (coupled) or not (uncoupled). */
export type RatioForm = 'coupled' | 'uncoupled';

/** What {@link weekTotals} takes. */
export interface WeekInput {
  /** Seven days in a row, days of rest included. */
  readonly days: readonly TrainingDay[];
  /** Standard deviation that monotony divides by; `sample` when left out. */
  readonly deviation?: Deviation | undefined;
  /** Form of the acute to chronic load ratio; no ratio when left out. */
  readonly ratio?: RatioForm | undefined;
  /** Loads of the three weeks before [AU], needed for the ratio. */
  readonly earlierWeeksAu?: readonly number[] | undefined;
}

/** What a week added up to. */
export interface WeekTotals {
  /** Session-RPE loads of the week added up [AU]. */
  readonly load: Answer<'week-load'>;
  /** Monotony: mean daily load over its standard deviation. Absent where it is undefined; a caution says why. */
  readonly monotony?: Answer<'monotony'>;
  /** Strain: week load × monotony [AU]; absent where monotony is. */
  readonly strain?: Answer<'strain'>;
  /** Number of sessions in the week. */
  readonly sessions: Answer<'sessions'>;
  /** Limbs with any restriction time or volume load. */
  readonly limbs: readonly {
    /** The limb: arm or leg. */
    readonly limb: Limb;
    /** Side of the limb. */
    readonly side: Side;
    /** Restriction time of this limb in the week [s]. */
    readonly restrictionTime: Answer<'restriction-time'>;
    /** Volume load of this limb in the week [kg]. */
    readonly volumeLoad?: Answer<'volume-load'>;
  }[];
  /** Acute to chronic load ratio; present when you asked for it and it is defined. */
  readonly acuteChronicRatio?: Answer<'acute-chronic-ratio'>;
  /** What to watch for in this week. */
  readonly cautions: readonly Caution[];
}

const DAYS = 7;
const EARLIER_WEEKS = 3;
const DEVIATIONS = ['sample', 'population'] as const;
const RATIO_FORMS = ['coupled', 'uncoupled'] as const;
const PLACES = [
  { field: 'leftArm', limb: 'arm', side: 'left' },
  { field: 'rightArm', limb: 'arm', side: 'right' },
  { field: 'leftLeg', limb: 'leg', side: 'left' },
  { field: 'rightLeg', limb: 'leg', side: 'right' },
] as const;

/** What we assume about a standard deviation: the same for every week, so made once. */
const deviationAssumptions: Record<Deviation, readonly Assumption[]> = frozen({
  sample: [assumption('standard-deviation-sample'), assumption('standard-deviation-not-reported')],
  population: [assumption('standard-deviation-population'), assumption('standard-deviation-not-reported')],
});

const answer = <K extends AnswerKind>(
  kind: K,
  value: number,
  unit: Unit,
  equation: string,
  evidence: Grade,
  inputs: Inputs,
  assumptions: readonly Assumption[] = [],
): Answer<K> => ({ ...total(kind, value, unit, inputs, evidence), equation, assumptions });

/** A sum over the days, shown day by day; days left out are 0. */
const overDays = <K extends AnswerKind>(kind: K, days: readonly number[], unit: Unit): Answer<K> => {
  const [day1 = 0, day2 = 0, day3 = 0, day4 = 0, day5 = 0, day6 = 0, day7 = 0] = days;
  const inputs = { day1, day2, day3, day4, day5, day6, day7 };
  return answer(kind, sum(days), unit, `${kind}-of-days`, 'definition', inputs);
};

/** A day after reading; of each limb in the order of the places, 0 where it is left out. */
interface ReadDay {
  readonly load: number;
  readonly sessions: number;
  readonly restrictedSessions: number;
  readonly restrictedAtRest: number;
  readonly restrictedS: readonly number[];
  readonly volumeKg: readonly number[];
}

function readLimbs(day: Reader, field: 'restrictedS' | 'volumeKg'): number[] {
  const limbs = day.optionalChild(field);
  return PLACES.map((place) => limbs?.optionalNumber(place.field, quantities[field]) ?? 0);
}

function readDay(day: Reader): ReadDay {
  const load = day.number('loadAu');
  const restrictedS = readLimbs(day, 'restrictedS');
  const volumeKg = readLimbs(day, 'volumeKg');
  const sessions = day.optionalNumber('sessions');
  const restrictedSessions = day.optionalNumber('restrictedSessions');
  if ((restrictedSessions ?? 0) > (sessions ?? Infinity)) {
    day.refuse('restrictedSessions', AT_MOST_SESSIONS, String(restrictedSessions));
  }
  const isRestricted = restrictedS.some((time) => time > 0);
  const count = sessions ?? (load > 0 ? 1 : 0);
  if (isRestricted && restrictedSessions === undefined && count > 1) {
    // Taken as one, several would pass the limits on sessions of a day and a week.
    day.missing('restrictedSessions', need(RESTRICTED_OF, { count }));
  } else if (isRestricted && restrictedSessions === 0) {
    day.refuse('restrictedSessions', ONE_RESTRICTED, '0');
  }
  const restricted = restrictedSessions ?? (isRestricted ? 1 : 0);
  const restrictedAtRest = day.optionalNumber('restrictedAtRest') ?? 0;
  if (restrictedAtRest > restricted) day.refuse('restrictedAtRest', AT_MOST_RESTRICTED, String(restrictedAtRest));
  return {
    load,
    sessions: count,
    restrictedSessions: restricted,
    restrictedAtRest,
    restrictedS,
    volumeKg,
  };
}

/** Standard deviation of the daily loads; exactly 0 where every day is the same. */
function standardDeviation(values: readonly number[], mean: number, divisor: number): number {
  if (values.every((value) => value === values[0])) return 0;
  let squares = 0;
  for (const value of values) squares += square(value - mean);
  return Math.sqrt(squares / divisor);
}

/**
 * A week of training: its load, how monotonous it was, its strain, its sessions, and the restriction time and the
 * volume load of each limb.
 *
 * - Week load [AU]: Σ of the seven daily loads; a daily load is Σ session RPE (0 to 10) × minutes, which is what
 *   `sessionTotals` gives as `sessionLoad`, with the `restrictionTime` of each limb.
 * - Monotony: mean daily load / standard deviation of the daily loads. Which standard deviation is meant could not be
 *   read in the publication: that of a sample (divided by 6) unless `deviation` says `population` (divided by 7).
 * - Strain [AU]: week load × monotony.
 * - Acute to chronic ratio, only when asked for, by name: `coupled` A / ((A + W₁ + W₂ + W₃) / 4), `uncoupled`
 *   A / ((W₁ + W₂ + W₃) / 3). It describes what was done; it cannot tell whether the risk of injury rises or falls, and
 *   no range of it is given here.
 * - Restriction time [s] and volume load [kg] of each limb. A load lifted with both legs counts for each.
 *
 * Long restriction of a limb in a day or in the week, and many sessions with restriction, bring a note, a caution or a
 * stop, by the figures of `guards`. Sessions with restriction at rest alone count for the stop only.
 *
 * A day with restriction time and several `sessions` must say how many of them had restriction.
 *
 * What is undefined (monotony where every day is alike, a ratio to weeks without load) is absent, and a caution says
 * why.
 *
 * - Evidence: `published` for monotony, strain and ratio; the sums are `definition`s.
 * - Source: Med Sci Sports Exerc 1998;30(7):1164–1168; Sci Data 2024, doi 10.1038/s41597-024-03386-x, table 2;
 *   Br J Sports Med 2019;53(15):921–922; J Athl Train 2020;55(9):893–901.
 *
 * @function
 * @param input - `days`, seven of them: `loadAu` [AU], `sessions`, `restrictedSessions`, `restrictedAtRest`, `restrictedS` [s] and `volumeKg` [kg] of each limb; `deviation`;
 *   `ratio` with `earlierWeeksAu` [AU]
 * @returns each total as an answer with its working.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { weekTotals } from 'cuffwork';
 * const days = [300, 0, 450, 0, 500, 600, 0].map((loadAu) => ({ loadAu, restrictedS: { leftLeg: loadAu && 390 } }));
 * const week = weekTotals({ days });
 * week.load.value; // => 1850
 * week.monotony?.value.toFixed(3); // => '1.007'
 * week.strain?.value.toFixed(1); // => '1862.3'
 * week.limbs[0]?.restrictionTime.value; // => 1560
 * weekTotals({ days: days.map(() => ({ loadAu: 400 })) }).cautions[0]?.code; // => 'monotony-undefined-equal'
 * ```
 */
export const weekTotals = withInput(function weekTotals(input: WeekInput): WeekTotals {
  const reader = new Reader(input);
  const dayReaders = reader.optionalList('days', SEVEN_DAYS);
  const deviation = reader.optionalChoice('deviation', DEVIATIONS) ?? 'sample';
  const ratio = reader.optionalChoice('ratio', RATIO_FORMS);
  const earlier = reader.optionalNumbers('earlierWeeksAu', quantities.weekLoadAu);
  if (!reader.has('days')) reader.missing('days', SEVEN_DAYS);
  const days = dayReaders?.map(readDay) ?? [];
  if (reader.fine && days.length !== DAYS) reader.refuse('days', SEVEN_DAYS, describeLength(days.length));
  if (ratio !== undefined && !reader.has('earlierWeeksAu')) {
    reader.missing('earlierWeeksAu', EARLIER_WEEKS_LOADS);
  } else if (earlier && ratio === undefined) {
    reader.leaveOut('earlierWeeksAu', need(LEFT_OUT_WITHOUT, { field: 'ratio' }));
  } else if (earlier && reader.fine && earlier.length !== EARLIER_WEEKS) {
    reader.refuse('earlierWeeksAu', EARLIER_WEEKS_LOADS, describeLength(earlier.length));
  }
  reader.done();

  const loads = days.map((day) => day.load);
  const load = overDays('week-load', loads, '{AU}');
  const mean = load.value / DAYS;
  const sd = standardDeviation(loads, mean, deviation === 'sample' ? DAYS - 1 : DAYS);
  const cautions: Caution[] = [];
  const varied = sd > 0;
  if (!varied)
    cautions.push(comparisonCaution('note', load.value === 0 ? 'monotony-undefined-rest' : 'monotony-undefined-equal'));
  cautions.push(...doseCautions(days));
  const assumptions = deviationAssumptions[deviation];
  const weekly = { weekLoad: load, standardDeviationAu: sd, deviation };
  const monotony = varied
    ? answer('monotony', mean / sd, '1', `monotony-${deviation}`, 'published', weekly, assumptions)
    : undefined;
  const strain =
    monotony &&
    answer('strain', load.value * monotony.value, '{AU}', `strain-${deviation}`, 'published', weekly, assumptions);
  const acuteChronicRatio = ratio && earlier && ratioOf(ratio, load, earlier, cautions);
  const limbs = PLACES.flatMap(({ limb, side }, place) => {
    const times = ofPlace(days, 'restrictedS', place);
    const kilograms = ofPlace(days, 'volumeKg', place);
    if (!times && !kilograms) return [];
    const restrictionTime = overDays('restriction-time', times ?? [], 's');
    return [
      defined({ limb, side, restrictionTime, volumeLoad: kilograms && overDays('volume-load', kilograms, 'kg') }),
    ];
  });
  return defined({
    load,
    monotony,
    strain,
    sessions: overDays(
      'sessions',
      days.map(({ sessions }) => sessions),
      '{sessions}',
    ),
    limbs,
    acuteChronicRatio,
    cautions,
  });
});

/** What the days hold of one limb; nothing where it has none of it. */
function ofPlace(days: readonly ReadDay[], field: 'restrictedS' | 'volumeKg', place: number): number[] | undefined {
  const values = days.map((day) => day[field][place]!);
  return values.some((value) => value > 0) ? values : undefined;
}

/** What the guards say of the restriction of a week: on each day and in all, by limb and by number of sessions. */
function doseCautions(days: readonly ReadDay[]): Caution[] {
  const ofLimbs = PLACES.flatMap(({ field, limb, side }, place) => {
    const times = ofPlace(days, 'restrictedS', place);
    if (!times) return [];
    const values = { limb, side };
    // The longest day represents the others: seven sentences add nothing to one.
    const longest = Math.max(...times);
    const path = ['days', times.indexOf(longest), 'restrictedS', field];
    return [
      ...guardCautions('limb-restriction-day', longest / 60, { values, path }),
      ...guardCautions('limb-restriction-week', sum(times) / 60, { values }),
    ];
  });
  const counts = days.map(({ restrictedSessions }) => restrictedSessions);
  const most = Math.max(...counts);
  return [
    ...ofLimbs,
    ...guardCautions('restricted-sessions-day', most, { path: ['days', counts.indexOf(most)] }),
    ...sessionCountCautions(sum(counts), sum(days.map(({ restrictedAtRest }) => restrictedAtRest))),
  ];
}

function ratioOf(
  form: RatioForm,
  load: Answer<'week-load'>,
  earlier: readonly number[],
  cautions: Caution[],
): Answer<'acute-chronic-ratio'> | undefined {
  const before = sum(earlier);
  const chronic = form === 'coupled' ? (load.value + before) / (EARLIER_WEEKS + 1) : before / EARLIER_WEEKS;
  cautions.push(comparisonCaution('note', 'ratio-descriptive', undefined, { source: 'ratio-pitfalls-2020' }));
  if (form === 'coupled')
    cautions.push(comparisonCaution('note', 'ratio-coupled', undefined, { source: 'ratio-coupling-2019' }));
  if (chronic === 0) {
    cautions.push(comparisonCaution('note', 'ratio-undefined'));
    return undefined;
  }
  const inputs = { weekLoad: load, earlierWeeks: earlier.map(inFull).join(' + ') };
  const value = load.value / chronic;
  return answer('acute-chronic-ratio', value, '1', form, 'published', inputs);
}
