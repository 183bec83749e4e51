import type { Answer, AnswerKind, Caution } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { withInput } from '../answer/with-input.js';
import { inFull } from '../quantity/format.js';
import type { Side } from '../quantity/quantities.js';
import { ratio, sum } from '../quantity/exact.js';
import {
  exerciseCautions,
  exerciseRestriction,
  limbCautions,
  MINUTE,
  pressureCell,
  pressureTotals,
  restrictionTotals,
  tally,
  type Cell,
} from './exposure.js';
import { byLimb, inSeconds, ofSide, scheduleExercise, scheduleSession, type ExerciseSchedule } from './schedule.js';
import { cautionsOfLimb, limbsOf, type LimbExposure } from './limbs.js';
import { takesTurns, type FullPrescription, type FullSession, type SessionInput } from './prescription.js';
import { fullSession } from './read-session.js';
import { leftOutCaution, type leftOutNames } from './messages.js';
import { peaks, volumeTotals } from './volume.js';
import {
  added,
  highest,
  isTense,
  list,
  repetitionTotal,
  repetitionsOf,
  seconds,
  secondsOf,
  summed,
  total,
  workInputs,
} from './working.js';

/** What one exercise added up to. */
export interface ExerciseTotals {
  /** Repetitions done. */
  readonly repetitions: Answer<'repetitions'>;
  /**
   * Volume load: Σ repetitions × load [kg or lb], body mass not counted. Present when a load or a body mass was given.
   */
  readonly volumeLoad?: Answer<'volume-load'>;
  /** Volume load of body mass: Σ repetitions × the share of it that is moved [kg]; present when that was given. */
  readonly bodyMassVolumeLoad?: Answer<'body-mass-volume-load'>;
  /**
   * Relative volume load: Σ repetitions × load as a share of the 1RM; present when a 1RM or a percentage of it was
   * given.
   */
  readonly relativeVolumeLoad?: Answer<'relative-volume-load'>;
  /** Time under tension [s]. */
  readonly timeUnderTension: Answer<'time-under-tension'>;
  /** Time with any cuff inflated to its full pressure [s]. */
  readonly restrictionTime: Answer<'restriction-time'>;
  /** Time with any cuff at its lower pressure and none at its full one [s]; present with partial restriction. */
  readonly partialRestrictionTime?: Answer<'partial-restriction-time'>;
  /** Longest unbroken time with a cuff inflated, at either pressure [s]. */
  readonly longestRestriction: Answer<'longest-restriction'>;
  /** Time with every cuff deflated between two restrictions [s]; present where there is such a time. */
  readonly reperfusionTime?: Answer<'reperfusion-time'>;
  /** Cuff pressure × time, summed over limbs [mmHg·min]; present when pressures were given. */
  readonly pressureTime?: Answer<'pressure-time'>;
  /** Cuff pressure in percent of LOP × time, summed over limbs [%·min]; present when pressures and LOP were given. */
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  /** Time from start to end, rests included [s]. */
  readonly sessionTime: Answer<'session-time'>;
  /** What to watch for with this dose. */
  readonly cautions: readonly Caution[];
}

/** What a session added up to: as a whole, for each limb and for each exercise. */
export interface SessionTotals extends ExerciseTotals {
  /** Heaviest load lifted [kg or lb]. */
  readonly peakLoad?: Answer<'peak-load'>;
  /** Heaviest load as a percentage of its 1RM [%]. */
  readonly peakPercentOneRepMax?: Answer<'peak-percent-of-maximum'>;
  /** Session-RPE load: rating × minutes [AU]; present when a session RPE was given. */
  readonly sessionLoad?: Answer<'session-load'>;
  /** Totals of each limb. */
  readonly limbs: readonly LimbExposure[];
  /** Totals of each exercise, in order. */
  readonly exercises: readonly {
    /** Name of the exercise, where given. */
    readonly name?: string;
    /** Totals of the exercise. */
    readonly totals: ExerciseTotals;
  }[];
}

/**
 * The restriction of a limb’s exercises, one after the other: times and pressure × time added up, the longest one
 * stretch. Time at the lower pressure counts towards the limit too.
 */
export function limbRestriction(exercises: readonly ExerciseTotals[]) {
  const time = exercises.map((part) => part.restrictionTime.value);
  const lower = exercises.flatMap((part) => part.partialRestrictionTime?.value ?? []);
  const longestRestriction = highest(exercises.map((part) => part.longestRestriction));
  return defined({
    restrictionTime: sumOf('restriction-time', time),
    partialRestrictionTime: lower.length > 0 ? sumOf('partial-restriction-time', lower) : undefined,
    longestRestriction,
    pressureTime: overExercises(exercises, 'pressureTime'),
    relativePressureTime: overExercises(exercises, 'relativePressureTime'),
    cautions: limbCautions(sum([...time, ...lower]), longestRestriction?.value ?? 0),
  });
}

/** A total of several exercises, added up. */
const overExercises = <N extends TotalName>(parts: readonly ExerciseTotals[], name: N): ExerciseTotals[N] =>
  summed(
    parts.map((part) => part[name] as Answer | undefined),
    'exercises',
  ) as ExerciseTotals[N];
type TotalName = Exclude<keyof ExerciseTotals, 'cautions'>;

/** An exercise with what it adds up to. */
interface DoneExercise {
  readonly full: FullPrescription;
  readonly totals: ExerciseTotals;
}

const isLifted = ({ full, totals }: DoneExercise): boolean => isTense(full) && totals.repetitions.value > 0;

/** The heaviest loads of exercises; undefined where one that should have a load has none. */
export function peakTotals(all: readonly DoneExercise[]) {
  const loaded = all.filter(
    (part) => isLifted(part) || (isTense(part.full) && part.full.sets.some(({ load }) => load !== undefined)),
  );
  const peak = loaded.map(({ full }) => peaks(full));
  return {
    peakLoad: highest(peak.map((part) => part.peakLoad)),
    peakPercentOneRepMax: highest(peak.map((part) => part.peakPercentOneRepMax)),
  };
}

/** What exercises add up to in work; undefined where one that should have a total has none. */
export function workTotals(all: readonly DoneExercise[]) {
  const parts = all.map(({ totals }) => totals);
  const lifted = all.filter(isLifted).map(({ totals }) => totals);
  const bodyMass = lifted.filter((part) => part.bodyMassVolumeLoad);
  return {
    repetitions: overExercises(parts, 'repetitions'),
    volumeLoad: overExercises(lifted, 'volumeLoad'),
    bodyMassVolumeLoad: overExercises(bodyMass, 'bodyMassVolumeLoad'),
    relativeVolumeLoad: overExercises(lifted, 'relativeVolumeLoad'),
    timeUnderTension: overExercises(parts, 'timeUnderTension'),
  };
}

const sumOf = <K extends AnswerKind>(kind: K, values: readonly number[]): Answer<K> =>
  total(kind, sum(values), 's', { exercises: list(values) });

/** One exercise of a session in time, what it adds up to, and the pressure × time of each limb with its cuff inflated. */
export interface ExercisePart {
  readonly schedule: ExerciseSchedule;
  readonly totals: ExerciseTotals;
  readonly cells: readonly (Cell | undefined)[];
}

/** One exercise with what it adds up to, cautions on the whole limb apart. */
export function exercisePart(schedule: ExerciseSchedule): ExercisePart {
  const { full, setIntervals, rests, startNs, endNs, limbs, any } = schedule;
  const cells = any.length > 0 ? limbs.map(({ place, cuffIntervals }) => pressureCell(full, place, cuffIntervals)) : [];
  const working = setIntervals.filter(({ warmUp }) => !warmUp);
  const tense = isTense(full) ? working : [];
  const inSets = workInputs(full, working);
  const lead = [...setIntervals, ...rests].filter(({ warmUp }) => warmUp).map(({ durationNs }) => durationNs);
  const between = rests.filter(({ warmUp }) => !warmUp).map(({ durationNs }) => durationNs);
  const clock = added(
    lead.length > 0 && { warmUp: seconds(lead) },
    full.inflatedBeforeS > 0 && { inflatedBeforeS: inFull(full.inflatedBeforeS) },
    inSets,
    between.length > 0 && { rests: seconds(between) },
    full.deflatedAfterS > 0 && { deflatedAfterS: inFull(full.deflatedAfterS) },
  );
  const totals = {
    repetitions: repetitionTotal(repetitionsOf(working)),
    ...volumeTotals(full, working),
    timeUnderTension: total(
      'time-under-tension',
      secondsOf(tense.map(({ durationNs }) => durationNs)),
      's',
      tense.length > 0 ? inSets : {},
    ),
    ...exerciseRestriction(schedule, working, inSets),
    ...pressureTotals(cells, 'limbs'),
    sessionTime: total('session-time', inSeconds(endNs - startNs), 's', clock),
    cautions: exerciseCautions(schedule),
  };
  return { schedule, totals, cells };
}

/** What an exercise adds up to on some of its limbs at once, as a session of its own on each. */
function onLimbs(totals: ExerciseTotals, { full, limbs }: Pick<ExerciseSchedule, 'full' | 'limbs'>): ExerciseTotals {
  const long = limbs.flatMap(({ cuffIntervals }) => {
    const { full: whole, partial, longest } = tally(cuffIntervals);
    return limbCautions(secondsOf(whole) + secondsOf(partial), inSeconds(longest));
  });
  return { ...totals, cautions: once([...long, ...exerciseCautions({ full, limbs })]) };
}

/** What one exercise adds up to, as a session of its own on the limb. */
export function totalsOfExercise(full: FullPrescription): ExerciseTotals {
  const schedule = scheduleExercise(full);
  return onLimbs(exercisePart(schedule).totals, schedule);
}

/**
 * What one exercise adds up to on one of its sides: where both do it at once, all but the pressure is that of the
 * exercise.
 */
export function totalsOfSide({ schedule, totals, cells }: ExercisePart, side: Side): ExerciseTotals {
  const { full, limbs } = schedule;
  if (takesTurns(full.side)) return totalsOfExercise(ofSide(full, side));
  const isOwn = (_: unknown, index: number): boolean => limbs[index]!.place.side === side;
  return onLimbs({ ...totals, ...pressureTotals(cells.filter(isOwn), 'limbs') }, { full, limbs: limbs.filter(isOwn) });
}

const once = (cautions: readonly Caution[]): Caution[] => [
  ...new Map(cautions.map((one) => [`${one.text} ${String(one.path)}`, one])).values(),
];

/** Notes on totals that some exercises have and others lack. */
function leftOut(
  parts: readonly ExerciseTotals[],
  name: keyof ExerciseTotals,
  kind: keyof typeof leftOutNames,
  missing: string,
): Caution[] {
  const isThere = (part: ExerciseTotals): boolean => part[name] !== undefined;
  return parts.some(isThere) && !parts.every(isThere) ? [leftOutCaution(kind, missing)] : [];
}

/** Session RPE × minutes. */
export const sessionLoadOf = (sessionRpe: number, sessionS: number): Answer<'session-load'> =>
  total('session-load', ratio([sessionRpe, sessionS], [MINUTE]), '{AU}', { sessionRpe, sessionS }, 'published');

/** What a session with every default in its place adds up to as a whole, from its exercises. */
export function wholeTotals(
  session: FullSession,
  exercises: readonly ExercisePart[],
): Omit<SessionTotals, 'limbs' | 'exercises'> {
  const schedule = exercises.map((part) => part.schedule);
  const parts = exercises.map(({ totals }) => totals);
  const limbs = byLimb(schedule).flatMap(({ cuffIntervals }) => cautionsOfLimb(cuffIntervals));
  const done = exercises.map(({ schedule: { full }, totals }) => ({ full, totals }));
  const lifted = done.filter(isLifted).map(({ totals }) => totals);
  const cuffed = parts.filter((_, index) => schedule[index]!.any.length > 0);
  const clockS = inSeconds(schedule.at(-1)!.endNs);
  const { sessionRpe, sessionS = clockS } = session;
  const ends = defined({
    ...peakTotals(done),
    sessionLoad: sessionRpe === undefined ? undefined : sessionLoadOf(sessionRpe, sessionS),
  });
  if (parts.length === 1) {
    const { cautions, ...totals } = parts[0]!;
    return { ...totals, ...ends, cautions: once([...limbs, ...cautions]) };
  }
  const { restrictionTime: _, ...restricted } = restrictionTotals(schedule.flatMap(({ any }) => any));
  const clock = added(
    { exercises: list(parts.map(({ sessionTime }) => sessionTime.value)) },
    { pauses: list(session.pauses) },
  );
  return defined({
    ...workTotals(done),
    restrictionTime: overExercises(parts, 'restrictionTime'),
    ...restricted,
    ...pressureTotals(
      exercises.flatMap(({ cells }) => cells),
      'limbs',
    ),
    sessionTime: total('session-time', clockS, 's', clock),
    ...ends,
    cautions: once([
      ...limbs,
      ...parts.flatMap(({ cautions }, index) => cautions.map((one) => ({ ...one, path: ['exercises', index] }))),
      ...leftOut(lifted, 'volumeLoad', 'volume-load', 'load'),
      ...leftOut(lifted, 'relativeVolumeLoad', 'relative-volume-load', 'percentOneRepMax or oneRepMax'),
      ...leftOut(cuffed, 'pressureTime', 'pressure-time', 'pressureMmHg'),
      ...leftOut(cuffed, 'relativePressureTime', 'relative-pressure-time', 'occlusionMmHg'),
    ]),
  });
}

/**
 * What a session adds up to, planned or as it was done (give the sets as they were done): as a whole, for each limb and
 * for each exercise.
 *
 * - Repetitions: Σ repetitions of the sets; where sides take turns, of both. Warm-up sets count in the session time and
 *   in nothing else.
 * - Volume load [kg or lb]: Σ repetitions × load (J Strength Cond Res 2009;23(1):106–110). A body-weight exercise has a
 *   volume load of 0; `bodyMassKg` and `bodyMassPercent` also give the volume load of body mass:
 *   Σ repetitions × mass × share (`unconfirmed`).
 * - Relative volume load: Σ repetitions × load / maximum (definition `unconfirmed`), with the maximum’s error.
 * - Time under tension [s]: Σ repetitions × (eccentric + bottom + concentric + top), and timed sets as they are;
 *   resistance exercise only.
 * - Restriction time [s]: any cuff inflated to its full pressure. With continuous restriction from a
 *   limb’s first set to the end of its last, rests included; otherwise its sets only. Time at the lower pressure of
 *   partial restriction is counted separately. Longest unbroken restriction [s]: with a cuff inflated, at either
 *   pressure.
 * - Reperfusion time [s]: every cuff deflated between two restrictions; for a limb, its own cuff.
 * - Pressure × time [mmHg·min], and in percent of occlusion pressure [% of LOP·min], summed over limbs.
 *   A percentage of occlusion pressure is not a percentage of blood flow.
 * - Session time [s]: sets, rests, pauses; one rest fewer than sets.
 * - Session load [AU]: session RPE × minutes (J Strength Cond Res 2001;15(1):109–115).
 *
 * Sums are exact, in decimals, so they have no interval: exercises (and pauses) add up to the session. Only a relative
 * volume load over one maximum has an interval, that of the maximum. A total that only some exercises have is left out,
 * and a caution says so. More than 10 minutes of restriction in a resistance exercise,
 * 20 in an aerobic one, 5 at a time in a passive one, 20 on a limb, or under 3 minutes between two exercises on it,
 * bring a caution.
 *
 * @function
 * @param session - one prescription (`scheme` or `sets`; `tempo` [s]; `restS` [s]; restriction; `load` [`unit`]), or
 *   `exercises` with `reperfusionS` [s] between them; `sessionRpe` [0 to 10]
 * @returns each total as an answer with its working.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { sessionTotals } from 'cuffwork';
 * const press = {
 *   scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous', load: 30,
 * } as const;
 * const totals = sessionTotals(press);
 * totals.volumeLoad?.value; // => 2250
 * totals.restrictionTime.value; // => 390
 * const hold = { scheme: '3x45s', restS: 30, restriction: 'intermittent', limb: 'leg', side: 'left' } as const;
 * const session = sessionTotals({ exercises: [{ ...press, limb: 'leg', side: 'both' }, hold], reperfusionS: 180 });
 * session.limbs.map(({ side, restrictionTime }) => `${side} ${restrictionTime.value}`); // => ['left 525', 'right 390']
 * ```
 */
export const sessionTotals = withInput(function sessionTotals(session: SessionInput): SessionTotals {
  const full = fullSession(session);
  const parts = scheduleSession(full).map(exercisePart);
  const { cautions, ...totals } = wholeTotals(full, parts);
  return {
    ...totals,
    limbs: limbsOf(parts.map(({ schedule }) => schedule)),
    exercises: parts.map(({ schedule, totals }) => ({ ...defined({ name: schedule.full.name }), totals })),
    cautions,
  };
});
