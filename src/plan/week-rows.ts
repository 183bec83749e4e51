import type { Answer } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { highest, summed } from '../session/working.js';
import type { LimbAndSide } from './document-parts.js';
import type { PainSite } from './pain.js';

/** An exercise on a limb in a week; where it is done with a cuff and without, it is there twice: a heavy load is no load under the cuff. */
export interface WeekExercise {
  /** Name of the exercise. */
  readonly exercise: string;
  /** Heaviest load of the week [kg or lb]; absent where there is no load. */
  readonly peakLoad?: Answer<'peak-load'>;
  /** Heaviest share of 1RM of the week [%]; absent where a load has no known maximum. */
  readonly peakPercentOneRepMax?: Answer<'peak-percent-of-maximum'>;
  /** Highest share of LOP that is set or held; absent without a cuff. */
  readonly percentLop?: Answer<'percent-of-occlusion'>;
  /** Restriction time over the week [s]; 0 without a cuff. */
  readonly restrictionTime: Answer<'restriction-time'>;
  /** Time at the lower pressure over the week [s]; present with partial restriction. */
  readonly partialRestrictionTime?: Answer<'partial-restriction-time'>;
}

/** Each exercise once: with the cuff and without together. */
export const wholeExercises = (rows: readonly WeekExercise[]): WeekExercise[] =>
  [...new Set(rows.map(({ exercise }) => exercise))].map((exercise) => {
    const own = rows.filter((row) => row.exercise === exercise);
    const loaded = own.filter(({ peakLoad }) => peakLoad);
    return defined({
      exercise,
      peakLoad: highest(loaded.map(({ peakLoad }) => peakLoad)),
      peakPercentOneRepMax: highest(loaded.map(({ peakPercentOneRepMax }) => peakPercentOneRepMax)),
      percentLop: highest(own.flatMap(({ percentLop }) => percentLop ?? [])),
      restrictionTime: summed(
        own.map(({ restrictionTime }) => restrictionTime),
        'weekSessions',
      ),
    }) as WeekExercise;
  });

/** The limb occlusion pressure that a week goes by. */
export interface WeekOcclusion {
  /** Limb occlusion pressure that the cuff pressure was set from [mmHg]. */
  readonly valueMmHg: number;
  /** Whether it was measured; `false` for an estimate. */
  readonly measured: boolean;
  /** Day of the measurement, or of the readings of an estimate; absent where it is not known. */
  readonly date?: string;
}

/** What a limb that is trained goes through in a week. */
export interface WeekLimb extends LimbAndSide, Omit<WeekExercise, 'exercise' | 'percentLop'> {
  /** Volume load over the week [kg or lb]; absent where there is no load. */
  readonly volumeLoad?: Answer<'volume-load'>;
  /** Cuff pressure as a share of LOP × time, over the week [%·min]; absent without a cuff. */
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  /** Each exercise of this limb in the week. */
  readonly exercises: readonly WeekExercise[];
  /** Limb occlusion pressure of the last session of the week with the cuff. */
  readonly occlusion?: WeekOcclusion;
  /** Last circumference of the week [cm]; absent where no session has one. */
  readonly circumferenceCm?: number;
  /** Worst pain of the week; absent where none was recorded, 0 where you asked and nothing hurt. */
  readonly worstPain?: {
    /** Worst rating at any moment, 0–10. */
    readonly value: number;
    /** Where it hurt; absent where nothing hurt. */
    readonly site?: PainSite;
  };
}

/** What one week is, as planned or as done. */
export interface WeekSums {
  /** Number of sessions; a planned session counts as often as it is done. */
  readonly sessions: Answer<'sessions'>;
  /** Number of sessions with a cuff inflated in any exercise. */
  readonly restrictedSessions: Answer<'sessions'>;
  /** Number of those with a cuff inflated at rest alone; absent where there are none. */
  readonly restrictedAtRest?: Answer<'sessions'>;
  /** Session RPE × minutes; absent unless every session has both. */
  readonly sessionLoad?: Answer<'session-load'>;
  /** Each limb that is trained in the week. */
  readonly limbs: readonly WeekLimb[];
}

/** One week. */
export interface WeekRow {
  /** Number of the week, counted from `firstWeek`. */
  readonly week: number;
  /** Present where the week is marked as lighter on purpose. */
  readonly deload?: true;
  /** Sums over the planned sessions; absent where there are none. */
  readonly planned?: WeekSums;
  /** Sums over the records; absent where there are none. */
  readonly done?: WeekSums;
}
