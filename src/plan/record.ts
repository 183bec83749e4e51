import type { Answer, Assumption, Caution } from '../answer/answer.js';
import type { Limb, LoadUnit, Posture, Side } from '../quantity/quantities.js';
import type { DayCheck } from './questions.js';
import type { PainReport } from './pain.js';
import type { Stop } from './stops.js';
import type { Symptom } from './symptoms.js';
import type { StandingSentence } from './standing.js';
import type { DoneSet, LimbTotals, Plan, PlanItem } from './types.js';

/** How a session felt. */
export interface Feelings {
  /** Pain by site, 0 to 10; an empty list where you asked and nothing hurt. */
  readonly pain?: readonly PainReport[] | undefined;
  /** Effort of the whole session, 0 to 10, asked for about 30 min after it. */
  readonly sessionRpe?: number | undefined;
  /** How long the whole session took [s]; with `sessionRpe` it gives the session load. */
  readonly sessionS?: number | undefined;
  readonly notes?: string | undefined;
}

/** What was done of one item of the plan. */
export interface DoneItem {
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
  /**
   * The sets that were done, by repetitions or time [s], or a number of repetitions for each, such as
   * `[30, 15, 15, 17]`; a rest [s] left out is taken as planned. With `asPlanned` those of the plan when left out.
   */
  readonly sets?: readonly (DoneSet | number)[] | undefined;
  /** Name of the exercise that was done in its place that day. Its load is given, and it has no 1RM here. */
  readonly instead?: string | undefined;
  /** Load really lifted, in the plan’s unit; that of the plan when left out. */
  readonly load?: number | undefined;
  /** Cuff pressure really held [mmHg]. */
  readonly heldMmHg?: number | undefined;
  /** Cuff pressure really held in the rests, with partial restriction [mmHg]. */
  readonly restHeldMmHg?: number | undefined;
  /** Limb occlusion pressure measured that day [mmHg]; that of the plan when left out. */
  readonly occlusionMmHg?: number | undefined;
  /** How long this limb’s cuff was deflated since its exercise before [s]. */
  readonly reperfusedBeforeS?: number | undefined;
  /** How long the cuff was inflated before the first set, and after the last [s]; 0 when left out. */
  readonly inflatedBeforeS?: number | undefined;
  readonly deflatedAfterS?: number | undefined;
  readonly stoppedEarly?: boolean | undefined;
  /** Whether the last set was taken to failure. */
  readonly lastSetToFailure?: boolean | undefined;
}

/** What `recordSession` takes. */
export interface RecordRequest extends Feelings {
  readonly plan: Plan;
  /** Day of the session, `YYYY-MM-DD`; the library has no clock. */
  readonly date: string;
  /** Which session of the day it was, from 1; needed to tell two sessions of one day apart that were alike. */
  readonly sessionOfDay?: number | undefined;
  /**
   * Everything was done as planned, except what `items` says: an item that is not listed had the planned sets and load.
   * You must have seen it done.
   */
  readonly asPlanned?: true | undefined;
  /** What was done of each item; needed unless `asPlanned` is given. */
  readonly items?: readonly DoneItem[] | undefined;
  /** Blood pressure before the session, both together [mmHg]. */
  readonly systolicMmHg?: number | undefined;
  readonly diastolicMmHg?: number | undefined;
  readonly symptoms?: readonly Symptom[] | undefined;
  /** A document of `checkDay`, of the day of the session. */
  readonly dayCheck?: DayCheck | undefined;
}

/** What a record keeps of the plan’s item. */
export const KEPT = [
  'exercise',
  'limb',
  'side',
  'mode',
  'posture',
  'target',
  'restTarget',
  'load',
  'intensityPercent',
  'bodyMassKg',
  'bodyMassPercent',
  'sets',
  'lastSetToFailure',
  'tempo',
  'restriction',
] as const satisfies (keyof PlanItem)[];

/** One exercise on one limb: what the plan had, and what was done. */
export interface RecordItem extends Pick<PlanItem, (typeof KEPT)[number]> {
  /** Left out where the cuff is not known. */
  readonly cuffWidthCm?: number;
  readonly circumferenceCm?: number;
  readonly done: {
    readonly sets: PlanItem['sets'];
    /** Absent where the plan has no load. */
    readonly load?: number;
    readonly unit?: LoadUnit;
    readonly instead?: string;
    readonly heldMmHg?: number;
    readonly occlusionMmHg?: number;
    readonly restHeldMmHg?: number;
    readonly reperfusedBeforeS?: number;
    readonly inflatedBeforeS?: number;
    readonly deflatedAfterS?: number;
    readonly stoppedEarly: boolean;
    /** Left out where it was not recorded. */
    readonly lastSetToFailure?: boolean;
  };
  /** What was done adds up to. */
  readonly totals: PlanItem['totals'];
}

/** A session as it was done: plain JSON, to store, review and progress from. */
export interface SessionRecord extends Feelings {
  readonly document: 'record';
  readonly schemaVersion: 1;
  /** Version of the library that made it. */
  readonly libraryVersion: string;
  readonly date: string;
  readonly sessionOfDay?: number;
  readonly label?: string;
  readonly posture: Posture;
  readonly items: readonly RecordItem[];
  /** Blood pressure before the session [mmHg]. */
  readonly systolicMmHg?: number;
  readonly diastolicMmHg?: number;
  readonly limbs: readonly LimbTotals[];
  /** Present where both effort and the time the session took were recorded. */
  readonly sessionLoad?: Answer<'session-load'>;
  readonly symptoms: readonly Symptom[];
  /** The check before the session, where one was given. */
  readonly dayCheck?: DayCheck;
  readonly assumptions: readonly Assumption[];
  /** Reasons not to train: those of the plan and of this session, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
}
