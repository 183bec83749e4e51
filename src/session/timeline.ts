import type { Assumption } from '../answer/answer.js';
import { withInput } from '../answer/with-input.js';
import type { Limb } from '../quantity/quantities.js';
import { byLimb, inSeconds, scheduleSession, type ExerciseSchedule } from './schedule.js';
import { isCuffed, type ExerciseSide, type FullSession, type SessionInput } from './prescription.js';
import { fullSession } from './read-session.js';
import { assumption } from './assumptions.js';

export const SESSION_EVENTS = ['inflate', 'lower', 'deflate', 'set', 'rest', 'reperfuse'] as const;

/** Something that happens at a moment of the session. */
export interface SessionEvent {
  /** Time from the start [s]. */
  readonly atS: number;
  /**
   * The cuff inflates (`inflate`), goes to the lower pressure (`lower`) or deflates (`deflate`); a `set` or a `rest`
   * begins; a pause with the cuffs deflated begins (`reperfuse`).
   */
  readonly event: (typeof SESSION_EVENTS)[number];
  /** Number of the exercise, from 1, in a session of several. */
  readonly exercise?: number;
  /** Limb of a cuff or a set, where it is named. */
  readonly limb?: Limb;
  /** Side of a cuff, or side or sides of a set, where named. */
  readonly side?: ExerciseSide;
  /** Number of the set, from 1, for a set and the rest after it. */
  readonly set?: number;
  /** Whether the set is a warm-up set; those are numbered on their own. */
  readonly warmUp?: true;
  /** Repetitions of a set; absent where it goes by time. */
  readonly repetitions?: number;
  /** How long it lasts [s]; moments have none. */
  readonly durationS?: number;
  /** Pressure the cuff goes to, where it is given [mmHg]. */
  readonly pressureMmHg?: number;
}

/** A schedule of a session. */
export interface SessionTimeline {
  /** The events, in order of time. */
  readonly events: readonly SessionEvent[];
  /** How long the session lasts [s]. */
  readonly durationS: number;
  /** What we assume in this timeline. */
  readonly assumptions: readonly Assumption[];
}

/** What comes first of things that happen at the same moment: cuffs come down, work ends, cuffs go up, work begins. */
const ORDER: Record<SessionEvent['event'], number> = {
  deflate: 0,
  lower: 1,
  rest: 2,
  reperfuse: 2,
  inflate: 3,
  set: 4,
};

function cuffEvents(schedule: readonly ExerciseSchedule[], several: boolean): SessionEvent[] {
  const events: SessionEvent[] = [];
  for (const { place, cuffIntervals } of byLimb(schedule)) {
    cuffIntervals.forEach(({ exercise, fromNs, toNs, state, pressureMmHg }, index) => {
      const own = { ...(several && { exercise }), ...place };
      const before = cuffIntervals[index - 1];
      const held = before?.toNs === fromNs ? before : undefined;
      const falls = state === 'partial' || (held !== undefined && (held.pressureMmHg ?? 0) > (pressureMmHg ?? 0));
      // A cuff that stays up from one exercise to the next at the same pressure does nothing.
      if (held?.state !== state || held.pressureMmHg !== pressureMmHg) {
        const event = falls ? 'lower' : 'inflate';
        events.push({ atS: inSeconds(fromNs), event, ...own, ...(pressureMmHg !== undefined && { pressureMmHg }) });
      }
      if (cuffIntervals[index + 1]?.fromNs !== toNs) events.push({ atS: inSeconds(toNs), event: 'deflate', ...own });
    });
  }
  return events;
}

/** A session with every default in its place, as a timeline; `schedule` where it is scheduled already. */
export function timelineOf(session: FullSession, schedule = scheduleSession(session)): SessionTimeline {
  const several = session.exercises.length > 1;
  const events = cuffEvents(schedule, several);
  schedule.forEach(({ full, setIntervals, rests, endNs, any }, index) => {
    const number = several && { exercise: index + 1 };
    for (const { set, number: count, warmUp, side, atNs, durationNs } of setIntervals) {
      const { repetitions } = set;
      events.push({
        atS: inSeconds(atNs),
        event: 'set',
        ...number,
        ...(full.limb && { limb: full.limb }),
        ...(side && { side }),
        set: count,
        ...(warmUp && { warmUp }),
        ...(repetitions !== undefined && { repetitions }),
        durationS: inSeconds(durationNs),
      });
    }
    for (const { number: count, warmUp, atNs, durationNs } of rests) {
      const which = { ...number, set: count, ...(warmUp && { warmUp }) };
      events.push({ atS: inSeconds(atNs), event: 'rest', ...which, durationS: inSeconds(durationNs) });
    }
    const pause = session.pauses[index] ?? 0;
    if (pause > 0) {
      const event = any.length > 0 ? 'reperfuse' : 'rest';
      events.push({ atS: inSeconds(endNs), event, ...number, durationS: pause });
    }
  });
  events.sort((a, b) => a.atS - b.atS || ORDER[a.event] - ORDER[b.event]);
  const cuffed = session.exercises.filter(isCuffed);
  return {
    events,
    durationS: inSeconds(schedule.at(-1)!.endNs),
    assumptions: [
      ...(session.exercises.some(({ tempo }) => tempo) ? [assumption('tempo-kept')] : []),
      ...(cuffed.length > 0 ? [assumption('clock-starts-with-inflation')] : []),
      ...(cuffed.length > 1 && !cuffed[0]!.limb ? [assumption('one-limb-taken')] : []),
    ],
  };
}

/**
 * The session scheduled second by second: for every limb when the cuff inflates, lowers and deflates; each
 * set, each rest, each pause between exercises.
 *
 * With continuous restriction the cuff is inflated from the limb’s first set to the end of its last; with intermittent
 * restriction in the sets only; with partial restriction it goes to a lower pressure between the limb’s sets. There is
 * one rest fewer than sets. Where sides take turns, every set is done with one side and then with the other, and each
 * cuff follows its own side. Between exercises the cuffs are deflated.
 *
 * A session that was done is scheduled the same way: give the sets that were done, with the repetitions done or the time
 * they took, and how long the cuff was inflated before the first and after the last.
 *
 * - Evidence: `derived`; the clock agrees with the totals of a published protocol (J Exp Orthop 2022).
 *
 * @function
 * @param session - one prescription (`scheme` or `sets`; `tempo` [s]; `restS` [s]; restriction), or `exercises` with
 *   `reperfusionS` [s] between them
 * @returns events [s from the start] and the duration [s].
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { sessionTimeline } from 'cuffwork';
 * const session = sessionTimeline({
 *   scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 * });
 * session.durationS; // => 390
 * session.events.length; // => 9
 * const walk = sessionTimeline({
 *   scheme: '2x2min', restS: 60, restriction: 'partial', pressureMmHg: 100, restPressureMmHg: 40, mode: 'aerobic',
 * });
 * walk.events.map(({ event }) => event).join(' '); // => 'inflate set lower rest inflate set deflate'
 * ```
 */
export const sessionTimeline = withInput(function sessionTimeline(session: SessionInput): SessionTimeline {
  return timelineOf(fullSession(session));
});
