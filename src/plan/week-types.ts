import type { Answer } from '../answer/answer.js';
import type { Limb, Side } from '../quantity/quantities.js';
import type { PainSite } from './pain.js';

/** An exercise on a limb in a week. */
export interface WeekExercise {
  readonly exercise: string;
  /** Heaviest load, and heaviest share of 1RM; absent where there is no load, or a maximum is not known. */
  readonly peakLoad?: Answer<'peak-load'>;
  readonly peakPercent?: Answer<'peak-percent'>;
  /** Highest share of LOP that is set or held; absent without a cuff. */
  readonly percentLop?: Answer<'percent-of-occlusion'>;
  readonly restrictionTime: Answer<'restriction-time'>;
}

/** The limb occlusion pressure that a week goes by. */
export interface WeekOcclusion {
  readonly valueMmHg: number;
  readonly measured: boolean;
  /** Day of the measurement, or of the readings of an estimate; absent where it is not known. */
  readonly date?: string;
}

/** What a limb that is trained goes through in a week. */
export interface WeekLimb {
  readonly limb: Limb;
  readonly side: Side;
  readonly peakLoad?: Answer<'peak-load'>;
  readonly peakPercent?: Answer<'peak-percent'>;
  readonly volumeLoad?: Answer<'volume-load'>;
  readonly restrictionTime: Answer<'restriction-time'>;
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  readonly exercises: readonly WeekExercise[];
  /** Of the last session of the week with the cuff. */
  readonly occlusion?: WeekOcclusion;
  readonly circumferenceCm?: number;
  /** Worst pain of the week; absent where none was recorded, 0 where you asked and nothing hurt. */
  readonly worstPain?: { readonly value: number; readonly site?: PainSite };
}

/** What one week is, as planned or as done. */
export interface WeekSums {
  readonly sessions: Answer<'sessions'>;
  /** Those with a cuff inflated in any exercise. */
  readonly restrictedSessions: Answer<'sessions'>;
  /** Session RPE × minutes; absent unless every session has both. */
  readonly sessionLoad?: Answer<'session-load'>;
  readonly limbs: readonly WeekLimb[];
}
