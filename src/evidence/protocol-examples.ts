import { frozen } from '../quantity/frozen.js';
import type { ExerciseMode } from '../quantity/quantities.js';
import type { Grade } from './grades.js';
import type { SourceId } from './sources.js';

/** What an example is for. */
export type TrainingAim = 'rehabilitation' | 'transition' | 'performance';

/**
 * A protocol that was tried, or that practitioners use, set by set. What its text does not report is left out. It is an
 * example, not advice.
 */
export interface ProtocolExample {
  /** Id of the example. */
  readonly id: string;
  /** Aim of the training. */
  readonly aim: TrainingAim;
  /** Kind of exercise. */
  readonly mode: ExerciseMode;
  /** Sets in notation, such as `30-15-15-15`; absent where we did not read them. */
  readonly scheme?: string;
  /** Sets of each exercise, where only their number is reported. */
  readonly setsPerExercise?: number;
  /** Rest between sets [s]. */
  readonly restS?: number;
  /** Eccentric, bottom, concentric, top [s]. */
  readonly tempo?: string;
  /** How the cuff is used through sets and rests; `none`: no restriction. */
  readonly restriction?: 'continuous' | 'intermittent' | 'none';
  /** Load [% of 1RM], or its range. */
  readonly percentOneRepMax?: {
    /** Lower end [% of 1RM]. */
    readonly low: number;
    /** Upper end [% of 1RM]. */
    readonly high: number;
  };
  /** Cuff pressure [% of LOP]. */
  readonly percentLop?: number;
  /** A fixed pressure of the trial: not a percentage of anyone’s LOP, so not to be copied. */
  readonly fixedMmHg?: number;
  /** Set where the last set goes to failure. */
  readonly lastSetToFailure?: true;
  /** Sessions per week. */
  readonly sessionsPerWeek?: number;
  /** How many of them are heavy and without the cuff, where a week has both kinds. */
  readonly heavySessionsPerWeek?: number;
  /** Length of the program [weeks]. */
  readonly weeks?: number;
  /** Evidence grade of the example. */
  readonly evidence: Grade;
  /** Id of the publication that it comes from. */
  readonly source?: SourceId;
}

const exactly = (percent: number) => ({ low: percent, high: percent });

/**
 * Named examples for each aim, with grade and source: rehabilitation first, then transition, then performance.
 *
 * Most trials inflate the cuff from the first set to the last with light loads. The trial of knee osteoarthritis and the
 * heavy trial deflate it in the rests. We found no trial that compares partial restriction with both. Pooled trials
 * found no difference in effort between continuous and intermittent (Int J Sports Med 2022;43(1):3–10).
 *
 * `mixed-week`: two restricted sessions and a heavy one raised 1RM by 15.3 %, heavy sessions alone by 19.9 %,
 * restricted ones alone by 8.7 %. `weekly-maintenance` is ordinary heavy training: strength was kept while the load
 * relative to the maximum was kept. We read no sets of either.
 *
 * @example
 * ```ts
 * import { sessionTotals, protocolExamples } from 'cuffwork';
 * const example = protocolExamples.find(({ id }) => id === 'clinical-75')!;
 * [example.evidence, example.percentLop]; // => ['published', 60]
 * const { scheme = '30-15-15-15', tempo = '2-0-2-0', restS } = example;
 * sessionTotals({ scheme, tempo, restS, restriction: 'continuous' }).sessionTime.value; // => 390
 * ```
 */
export const protocolExamples: readonly ProtocolExample[] = frozen([
  {
    id: 'cast-passive',
    aim: 'rehabilitation',
    mode: 'passive',
    scheme: '5x5min',
    restS: 180,
    restriction: 'intermittent',
    fixedMmHg: 200,
    sessionsPerWeek: 14,
    weeks: 2,
    evidence: 'published',
    source: 'passive-2008',
  },
  {
    id: 'knee-osteoarthritis-passive',
    aim: 'rehabilitation',
    mode: 'passive',
    scheme: '2x5min',
    restS: 60,
    restriction: 'intermittent',
    evidence: 'published',
    source: 'knee-osteoarthritis-2022',
  },
  {
    id: 'walking',
    aim: 'rehabilitation',
    mode: 'aerobic',
    scheme: '5x2min',
    restS: 60,
    sessionsPerWeek: 12,
    weeks: 3,
    evidence: 'published',
    source: 'bout-walking-2011',
  },
  {
    id: 'cycling',
    aim: 'rehabilitation',
    mode: 'aerobic',
    scheme: '1x15min',
    restriction: 'continuous',
    sessionsPerWeek: 3,
    weeks: 8,
    evidence: 'published',
    source: 'cycling-2010',
  },
  {
    id: 'body-weight-3x10',
    aim: 'rehabilitation',
    mode: 'resistance',
    scheme: '3x10',
    evidence: 'practice',
  },
  {
    id: 'clinical-75',
    aim: 'rehabilitation',
    mode: 'resistance',
    scheme: '30-15-15-15',
    restS: 30,
    tempo: '2-0-2-0',
    percentOneRepMax: exactly(30),
    percentLop: 60,
    lastSetToFailure: true,
    weeks: 8,
    evidence: 'published',
    source: 'rehabilitation-trial-protocol',
  },
  {
    id: 'knee-repair-75',
    aim: 'rehabilitation',
    mode: 'resistance',
    scheme: '30-15-15-15',
    restS: 45,
    tempo: '2-0-2-1',
    percentOneRepMax: { low: 20, high: 40 },
    percentLop: 80,
    sessionsPerWeek: 5,
    evidence: 'published',
    source: 'knee-repair-2022',
  },
  {
    id: 'collegiate-light-supplement',
    aim: 'transition',
    mode: 'resistance',
    scheme: '30-20-20-20',
    restS: 45,
    percentOneRepMax: exactly(20),
    weeks: 7,
    evidence: 'published',
    source: 'collegiate-2014',
  },
  {
    id: 'mixed-week',
    aim: 'transition',
    mode: 'resistance',
    sessionsPerWeek: 3,
    heavySessionsPerWeek: 1,
    evidence: 'published',
    source: 'mixed-week-2011',
  },
  {
    id: 'rugby-heavy',
    aim: 'performance',
    mode: 'resistance',
    scheme: '5x5',
    restriction: 'intermittent',
    percentOneRepMax: exactly(70),
    fixedMmHg: 180,
    sessionsPerWeek: 3,
    weeks: 3,
    evidence: 'published',
    source: 'rugby-2014',
  },
  {
    id: 'in-season-2s-and-3s',
    aim: 'performance',
    mode: 'resistance',
    scheme: '3-3-2-2-2',
    restriction: 'intermittent',
    percentOneRepMax: { low: 70, high: 80 },
    sessionsPerWeek: 1,
    evidence: 'practice',
  },
  {
    id: 'weekly-maintenance',
    aim: 'performance',
    mode: 'resistance',
    setsPerExercise: 1,
    restriction: 'none',
    sessionsPerWeek: 1,
    weeks: 32,
    evidence: 'published',
    source: 'maintenance-2021',
  },
] as const);
