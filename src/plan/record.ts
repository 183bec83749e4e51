import type { Answer, Assumption, Caution } from '../answer/answer.js';
import type { Exact } from '../answer/defined.js';
import type { LoadUnit, Posture } from '../quantity/quantities.js';
import type { DocumentHead, ExerciseOnLimb } from './document-parts.js';
import type { DayCheck } from './questions.js';
import type { PainReport } from './pain.js';
import type { Stop } from './stops.js';
import type { Symptom } from './symptoms.js';
import type { Disclaimer, DisclaimerCode } from './disclaimers.js';
import type { Answered, Stated } from './stated.js';
import type { DoneSet, ExpandedLimbTotals, ExpandedPlanItem, LimbTotals, Plan, PlanItem } from './types.js';

/** How a session felt. */
export interface Feelings {
  /** Pain by site, 0 to 10; an empty list where you asked and nothing hurt. */
  readonly pain?: readonly PainReport[] | undefined;
  /** Effort of the whole session, 0–10, asked for about 30 min after it. */
  readonly sessionRpe?: number | undefined;
  /** How long the whole session took [s], 1–86,400; with `sessionRpe` it gives the session load. */
  readonly sessionS?: number | undefined;
  /** Notes about the session. */
  readonly notes?: string | undefined;
}

/** What was done of one item of the plan. */
export interface DoneItem extends ExerciseOnLimb {
  /**
   * The sets that were done, by repetitions or time [s], or a number of repetitions for each, such as
   * `[30, 15, 15, 17]`; a rest [s] left out is taken as planned. With `asPlanned` those of the plan when left out.
   */
  readonly sets?: readonly (DoneSet | number)[] | undefined;
  /**
   * Name of the exercise that was done in its place that day. Give its load, or `unloaded`; it has no 1RM here, and no
   * share of body mass.
   */
  readonly instead?: string | undefined;
  /** Nothing was lifted in the exercise that was done `instead`. */
  readonly unloaded?: true | undefined;
  /** Load really lifted [`unit` of the plan], 0.1–2000; that of the plan when left out, of a range its lower end. */
  readonly load?: number | undefined;
  /** Cuff pressure really held [mmHg], 1–1000. */
  readonly heldMmHg?: number | undefined;
  /** Cuff pressure really held in the rests, with partial restriction [mmHg], 1–1000. */
  readonly restHeldMmHg?: number | undefined;
  /** Limb occlusion pressure measured that day [mmHg], 50–1000; that of the plan when left out. */
  readonly occlusionMmHg?: number | undefined;
  /** How long this limb’s cuff was deflated since its exercise before [s], 0–7200. */
  readonly reperfusedBeforeS?: number | undefined;
  /** How long the cuff was inflated before the first set [s], 0–3600; 0 when left out. */
  readonly inflatedBeforeS?: number | undefined;
  /** How long the cuff stayed inflated after the last set [s], 0–3600; 0 when left out. */
  readonly deflatedAfterS?: number | undefined;
  /** Whether the exercise was stopped early; `false` when left out. */
  readonly stoppedEarly?: boolean | undefined;
  /** Whether the last set was taken to failure. */
  readonly lastSetToFailure?: boolean | undefined;
}

/** What `recordSession` takes. */
export interface RecordRequest extends Feelings {
  /** The plan that was trained by. */
  readonly plan: Plan;
  /** Day of the session, `YYYY-MM-DD`; the library has no clock. */
  readonly date: string;
  /** Which session of the day it was, 1–10; needed to tell two sessions of one day apart that were alike. */
  readonly sessionOfDay?: number | undefined;
  /**
   * Everything was done as planned, except what `items` says: an item that is not listed had the planned sets and load.
   * You must have seen it done.
   */
  readonly asPlanned?: true | undefined;
  /** What was done of each item; needed unless `asPlanned` is given. */
  readonly items?: readonly DoneItem[] | undefined;
  /** Systolic blood pressure before the session [mmHg], 60–300; with the diastolic one. */
  readonly systolicMmHg?: number | undefined;
  /** Diastolic blood pressure before the session [mmHg], 30–200. */
  readonly diastolicMmHg?: number | undefined;
  /** Symptoms to report, by code. */
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
  'upperLoad',
  'intensityPercent',
  'bodyMassKg',
  'bodyMassPercent',
  'sets',
  'lastSetToFailure',
  'tempo',
  'restriction',
] as const satisfies (keyof PlanItem)[];

/** What a record says of an item besides the numbers worked out for it. */
interface DoneFacts {
  /** Width of the cuff [cm]; left out where it is not known. */
  readonly cuffWidthCm?: number;
  /** Limb circumference [cm]; left out where it is not known. */
  readonly circumferenceCm?: number;
  /** What was done; what was not recorded is left out. */
  readonly done: Exact<Omit<DoneItem, keyof ExerciseOnLimb | 'sets' | 'load' | 'stoppedEarly'>> & {
    /** Sets that were done. */
    readonly sets: PlanItem['sets'];
    /** Load lifted [`unit`]; absent where there is none. */
    readonly load?: number;
    /** Unit of the load; absent where there is no load. */
    readonly unit?: LoadUnit;
    /** Whether the exercise was stopped early. */
    readonly stoppedEarly: boolean;
  };
}

/** One exercise on one limb: what the plan had, and what was done. */
export interface RecordItem extends Pick<PlanItem, (typeof KEPT)[number] | 'totals'>, DoneFacts {}

/** One exercise on one limb, with whole answers: what the plan had, and what was done. */
export interface ExpandedRecordItem extends Pick<ExpandedPlanItem, (typeof KEPT)[number] | 'totals'>, DoneFacts {}

/** One exercise on one limb of a plan or of a record, with whole answers. */
export type ExpandedItem = ExpandedPlanItem | ExpandedRecordItem;

/** A record; its answers are numbers that the document states, or whole. */
export interface RecordFacts<Item, Totals, Load, Sentence>
  extends
    DocumentHead<'record', 2>,
    Feelings,
    Exact<Pick<RecordRequest, 'date' | 'sessionOfDay' | 'systolicMmHg' | 'diastolicMmHg' | 'dayCheck'>> {
  /** What to call the person on the page; no real name is needed. */
  readonly label?: string;
  /** Posture of the session, as planned. */
  readonly posture: Posture;
  /** Symptoms that were reported, by code. */
  readonly symptoms: readonly Symptom[];
  /** Assumptions in the record. */
  readonly assumptions: readonly Assumption[];
  /** Reasons not to train: those of the plan and of this session, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** Cautions about the session. */
  readonly cautions: readonly Caution[];
  /** Each exercise on each limb: what the plan had, and what was done. */
  readonly items: readonly Item[];
  /** Totals of each limb. */
  readonly limbs: readonly Totals[];
  /** Session-RPE load [AU]; present where effort and the time the session took were recorded. */
  readonly sessionLoad?: Load;
  /** Sentences that always apply. */
  readonly disclaimers: readonly Sentence[];
}

/**
 * A session as it was done: plain JSON, to store, review and progress from. Numbers are stated where you need them; each
 * answer with its evidence is in `answers`, once. `expandDocument` puts them together.
 */
export interface SessionRecord extends RecordFacts<RecordItem, LimbTotals, Stated, DisclaimerCode>, Answered {}

/** A record with whole answers at their places, as `expandDocument` gives it; it is not for storing. */
export interface ExpandedRecord extends RecordFacts<
  ExpandedRecordItem,
  ExpandedLimbTotals,
  Answer<'session-load'>,
  Disclaimer
> {}
