import type { Assumption } from '../answer/answer.js';
import { product, sum } from '../quantity/decimal.js';
import { fullPrescription, type FullPrescription, type Prescription } from './prescription.js';
import { assumption } from './messages.js';

/** Something that happens at a moment of the session. */
export interface SessionEvent {
  /** Seconds from the start. */
  readonly atS: number;
  readonly event: 'inflate' | 'set' | 'rest' | 'deflate';
  /** Number of the set, from 1, for a set and the rest after it. */
  readonly set?: number;
  readonly repetitions?: number;
  /** How long it lasts [s]; moments have none. */
  readonly durationS?: number;
}

/** A session laid out in time. */
export interface SessionTimeline {
  readonly events: readonly SessionEvent[];
  readonly durationS: number;
  readonly assumptions: readonly Assumption[];
}

/** Seconds one repetition takes. */
export const repetitionTime = ({ eccentricS, bottomS, concentricS, topS }: FullPrescription['tempo']): number =>
  sum([eccentricS, bottomS, concentricS, topS]);

export function layOut(prescription: FullPrescription): SessionTimeline {
  const { sets, restriction, tempo } = prescription;
  const events: SessionEvent[] = [];
  const perRepetition = repetitionTime(tempo);
  let now = 0;
  if (restriction === 'continuous') events.push({ atS: now, event: 'inflate' });
  for (const [index, { repetitions, restS }] of sets.entries()) {
    const set = index + 1;
    const durationS = product(repetitions, perRepetition);
    if (restriction === 'intermittent') events.push({ atS: now, event: 'inflate' });
    events.push({ atS: now, event: 'set', set, repetitions, durationS });
    now = sum([now, durationS]);
    if (restriction === 'intermittent') events.push({ atS: now, event: 'deflate' });
    if (restS > 0) events.push({ atS: now, event: 'rest', set, durationS: restS });
    now = sum([now, restS]);
  }
  if (restriction === 'continuous') events.push({ atS: now, event: 'deflate' });
  return {
    events,
    durationS: now,
    assumptions: [
      assumption('tempo-kept'),
      ...(restriction === 'none' ? [] : [assumption('clock-starts-with-inflation')]),
    ],
  };
}

/**
 * The session laid out second by second: when the cuff goes up, each set, each rest, when it comes down.
 *
 * With continuous restriction the cuff is up from the first set to the end of the last; with intermittent
 * restriction in the sets only. There is one rest fewer than sets.
 *
 * - Evidence: `derived`; the clock agrees with the totals of a published protocol (J Exp Orthop 2022).
 *
 * @param prescription - `scheme` or `sets`; `tempo` [s]; `restS` [s]; restriction
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
 * ```
 */
export function sessionTimeline(prescription: Prescription): SessionTimeline {
  return layOut(fullPrescription(prescription));
}
