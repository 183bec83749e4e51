import type { Exact, Full, Given, LeftOut } from '../answer/defined.js';
import type { Answer, Assumption, Caution } from '../answer/answer.js';
import type { PercentRange } from '../answer/range.js';
import type { OcclusionEquationId } from '../pressure/equations.js';
import type { MeasurementMethod } from '../pressure/measured.js';
import type { CircumferenceSite, ExerciseMode, Limb, LoadUnit, Posture, Sex, Side } from '../quantity/quantities.js';
import type { Rounding } from '../quantity/exact.js';
import type { ExerciseTotals, SessionTotals } from '../session/totals.js';
import type { Tempo } from '../session/notation.js';
import type {
  ExerciseSet,
  ExerciseSets,
  ExerciseSide,
  Restriction,
  SetsFields,
  TimedScheme,
  TimedSets,
} from '../session/prescription.js';
import type { SessionTimeline } from '../session/timeline.js';
import type { OneRepMaxEquationId } from '../strength/equations.js';
import type { Lift, Training } from '../strength/lifts.js';
import type { DocumentHead, LimbAndSide, ExerciseOnLimb } from './document-parts.js';
import type { DayCheck, Screening } from './questions.js';
import type { Disclaimer, DisclaimerCode } from './disclaimers.js';
import type { Answered, StatedAnswer, StatedTotals } from './stated.js';
import type { Stop, StopDecision } from './stops.js';

/**
 * A limb that trains; where its cuff is inflated in any exercise, the cuff and the percentage of occlusion pressure to
 * set.
 */
export interface PlanLimb extends LimbAndSide {
  /**
   * Limb circumference [cm], 25–120 on a leg and 15–70 on an arm; needed where its cuff is inflated, unless an
   * occlusion pressure was measured with that cuff.
   */
  readonly circumferenceCm?: number | undefined;
  /** Where along the limb the circumference was taken. */
  readonly circumferenceSite?: CircumferenceSite | undefined;
  /**
   * Width of the cuff you will use [cm], 3–40; needed where any exercise of the limb has its cuff inflated. That of
   * `occlusion` when left out.
   */
  readonly cuffWidthCm?: number | undefined;
  /**
   * Share of limb occlusion pressure to set [%], 1–100; needed where an exercise with the cuff inflated has no
   * `percentLop`.
   */
  readonly percentLop?: number | undefined;
  /** A measured occlusion pressure, used instead of an estimate. */
  readonly measured?:
    | {
        /** Measured limb occlusion pressure [mmHg], 50–1000. */
        readonly valueMmHg: number;
        /** How it was measured. The error of the measurement depends on it. */
        readonly method: MeasurementMethod;
        /** Side it was measured on; that of the limb when left out. */
        readonly side?: Side | undefined;
        /** Posture it was measured in; that of the request when left out. */
        readonly posture?: Posture | undefined;
        /** Day it was measured, `YYYY-MM-DD`: tells when to measure again. */
        readonly date?: string | undefined;
        /** Width of the cuff it was measured with [cm], 3–40; converted to the cuff you will use when they differ. */
        readonly cuffWidthCm?: number | undefined;
        /**
         * Standard deviation of the measurement error [mmHg], 0–300, below the value; a published one when left out.
         */
        readonly standardDeviationMmHg?: number | undefined;
      }
    | undefined;
  /**
   * An occlusion pressure that you hold, used instead of an estimate: an estimated, measured, calibrated or converted
   * answer, brought to the cuff, posture and side of the exercise with its error; or a number [mmHg], taken as exact.
   */
  readonly occlusion?: Answer<'occlusion-pressure'> | number | undefined;
  /** An occlusion-pressure equation by its id; left out, the pooled curve of the limb. */
  readonly equation?: OcclusionEquationId | undefined;
  /** Smallest step of your gauge [mmHg], 0.1–50; 1 when left out. The setting is rounded down to it. */
  readonly gaugeStepMmHg?: number | undefined;
  /** Highest cuff pressure that may be set on this limb [mmHg], 20–1000; no limit when left out. */
  readonly ceilingMmHg?: number | undefined;
}

/** A maximum: tested, or a load with the repetitions done, to estimate it from. */
export interface PlanMaximum {
  /** Tested 1RM, or the load of the set it is estimated from [`unit`], 0.1–2000. */
  readonly load: number;
  /** Unit of `load`; kg when left out. */
  readonly unit?: LoadUnit | undefined;
  /** Repetitions done with `load`, 1–500; left out, `load` is a tested 1RM. */
  readonly repetitions?: number | undefined;
  /** Repetitions you could still have done after the set, 0–10; 0 when left out. */
  readonly repetitionsInReserve?: number | undefined;
  /** Rating on the scale of repetitions in reserve, 1–10, instead of `repetitionsInReserve`. */
  readonly reserveRpe?: number | undefined;
  /** Equation of the estimate by its id; `auto` when left out. */
  readonly equation?: OneRepMaxEquationId | 'auto' | undefined;
  /** The lift; for the equations fitted on it. */
  readonly lift?: Lift | undefined;
  /** Training status of the person; for the equations fitted on it. */
  readonly training?: Training | undefined;
}

/** Every field of a set as it is asked for; {@link PlanSetRequest} has which of them go together. */
export interface PlanSetFields {
  /** Repetitions of the set, 1–500. */
  readonly repetitions?: number | undefined;
  /** How long the set lasts [s], 0.1–7200. */
  readonly durationS?: number | undefined;
  /** Rest after this set [s], 0–3600; that of the exercise when left out. The last set has none. */
  readonly restS?: number | undefined;
  /** Load of this set [`unit`], 0.1–2000; that of the exercise when left out. */
  readonly load?: number | undefined;
  /** Share of 1RM of this set [%], 1–100, instead of `load`; brought to the loads you can set. */
  readonly percentOneRepMax?: number | undefined;
  /** Repetitions to be left in reserve, or rated after the set, 0–10. */
  readonly repetitionsInReserve?: number | undefined;
  /** Effort of this set on the 1–10 scale of repetitions in reserve. */
  readonly reserveRpe?: number | undefined;
}

/** A set as it is asked for: repetitions at the tempo, or a time [s]; with a load of its own, or a share of 1RM. */
export type PlanSetRequest = PlanSetFields & (LeftOut<'load'> | LeftOut<'percentOneRepMax'>);

/** A set as it was done; its load is a number [unit of the plan]. */
export type DoneSet = Omit<PlanSetFields, 'percentOneRepMax'>;

/** One set of a plan or a record: repetitions or a time [s], and the rest after it [s]. */
export interface PlanSet extends Exact<Pick<ExerciseSet, 'repetitions' | 'durationS'>> {
  /** Rest after this set [s]; 0 after the last set. */
  readonly restS: number;
  /** Load of this set [unit of the exercise]; left out where every set has that of the exercise. */
  readonly load?: number;
  /** Repetitions to be left in reserve, or rated after the set, 0–10. */
  readonly repetitionsInReserve?: number;
  /** Effort of this set on the 1–10 scale of repetitions in reserve. */
  readonly reserveRpe?: number;
}

/** Every field of an exercise; {@link PlanExercise} has which of them go together. */
export interface PlanExerciseFields extends SetsFields<PlanSetFields> {
  /** Name of the exercise, in your own words. */
  readonly name: string;
  /** Kind of exercise: `resistance`, `aerobic` or `passive`; `resistance` when left out. */
  readonly mode?: ExerciseMode | undefined;
  /** Posture of this exercise; that of the request when left out. */
  readonly posture?: Posture | undefined;
  /** The limb that does it; it must be listed in `limbs`. */
  readonly limb: Limb;
  /**
   * Which sides do it: one, `both` at once, or every set with one and then with the other. When left out, every side
   * listed in `limbs`, at once.
   */
  readonly side?: ExerciseSide | undefined;
  /** Time to change sides, where they take turns [s], 0–600; 0 when left out. */
  readonly changeS?: number | undefined;
  /**
   * A maximum: a tested or estimated answer, a load with the repetitions done, or a number [`unit`], taken as exact.
   */
  readonly oneRepMax?: PlanMaximum | Answer<'one-repetition-maximum'> | number | undefined;
  /**
   * Share of the maximum to lift [%], 1–100, or a range of it, such as `{ from: 20, to: 30 }`. Of a range the plan counts
   * the lower end, and has the load of the upper end too.
   */
  readonly percentOneRepMax?: number | PercentRange | undefined;
  /**
   * Your own load [`unit`], 0.1–2000, such as that of a 30-repetition maximum, or an answer of `trainingLoad`; instead of
   * `oneRepMax` and `percentOneRepMax`.
   */
  readonly load?: Answer<'training-load'> | number | undefined;
  /** Nothing is lifted, as in early rehabilitation. */
  readonly unloaded?: true | undefined;
  /** Share of body mass that is moved [%], 1–100, of the request’s `bodyMassKg`. */
  readonly bodyMassPercent?: number | undefined;
  /** Unit of every load and mass of this exercise; kg when left out. */
  readonly unit?: LoadUnit | undefined;
  /**
   * Smallest step between the loads you can set [`unit`], 0.01–100: a share of the 1RM is rounded to it, and so is the
   * next load.
   */
  readonly step?: number | undefined;
  /** Loads you can set, one by one [`unit`]; instead of `step`. */
  readonly available?: readonly number[] | undefined;
  /** Mass of the bar [`unit`], 0–200; with `plates`, instead of `step` and `available`. */
  readonly bar?: number | undefined;
  /** Mass of both collars together [`unit`], 0–50; 0 when left out. */
  readonly collars?: number | undefined;
  /** Your plates; given together with `bar`. */
  readonly plates?:
    | readonly {
        /** Mass of one plate [`unit`], 0.01–200. */
        readonly mass: number;
        /** How many plates of this mass you have, 1–10,000; as many as needed when left out. */
        readonly count?: number | undefined;
      }[]
    | undefined;
  /** How a share of a maximum is rounded to the loads you can set; `nearest` when left out. */
  readonly rounding?: Rounding | undefined;
  /** Whose maximum it is; `this-limb` when left out. */
  readonly maximumOf?: 'this-limb' | 'other-limb' | undefined;
  /** Intensity of an aerobic exercise [%], 1–100 of VO2max or heart-rate reserve; for the review. */
  readonly intensityPercent?: number | undefined;
  /** The last set goes to failure; its repetitions are then what is expected. */
  readonly lastSetToFailure?: true | undefined;
  /**
   * Repetitions of each set before a proposal raised them; `nextRequest` gives them. When the load goes up, the sets go
   * back to them.
   */
  readonly raisedFrom?: readonly number[] | undefined;
  /**
   * When the cuff is inflated: `continuous`, from the first set to the last; `intermittent`, in the sets alone;
   * `partial`, in the sets and at a lower pressure in the rests; `none`.
   */
  readonly restriction: Restriction;
  /** Share of occlusion pressure in this exercise [%], 1–100; that of the limb when left out. */
  readonly percentLop?: number | undefined;
  /** Share of occlusion pressure in the rests [%], 1–99, with `partial` restriction. */
  readonly restPercentLop?: number | undefined;
  /** Pause after this exercise, cuffs deflated [s], 0–7200; that of the request when left out. */
  readonly reperfusionS?: number | undefined;
}

type GivenAs<N extends keyof PlanExerciseFields> = Given<PlanExerciseFields, N>;
/** What is given with a maximum. */
export const OF_MAXIMUM = ['percentOneRepMax', 'bar', 'collars', 'plates', 'rounding', 'maximumOf'] as const;
/** What may be given with your own load: loads you can set, for the next one up or down. */
export const OF_LOAD = ['step', 'available'] as const;
type OfMaximum = 'oneRepMax' | (typeof OF_MAXIMUM)[number];
type OfLoad = 'load' | (typeof OF_LOAD)[number];

/** Resistance exercise. */
interface Resistance extends LeftOut<'intensityPercent'> {
  /** Kind of exercise; `resistance` when left out. */
  readonly mode?: 'resistance' | undefined;
}
/** A share of a maximum is lifted. */
export interface LiftsShareOfMaximum
  extends Resistance, GivenAs<'oneRepMax' | 'percentOneRepMax'>, LeftOut<'load' | 'unloaded'> {}
/** Your own load is lifted, with a share of body mass or without. */
export interface LiftsOwnLoad extends Resistance, GivenAs<'load'>, LeftOut<OfMaximum | 'unloaded'> {}
/** A share of body mass is lifted. */
export interface LiftsBodyMass
  extends Resistance, GivenAs<'bodyMassPercent'>, LeftOut<OfMaximum | OfLoad | 'unloaded'> {}
/** Nothing is lifted. */
export interface LiftsNothing
  extends Resistance, GivenAs<'unloaded'>, LeftOut<OfMaximum | OfLoad | 'bodyMassPercent'> {}

/**
 * What is lifted in resistance exercise, one of four: a share of a maximum (`oneRepMax` with `percentOneRepMax`), your
 * own `load`, a share of body mass (`bodyMassPercent`), or nothing (`unloaded`).
 */
export type ExerciseLift = LiftsShareOfMaximum | LiftsOwnLoad | LiftsBodyMass | LiftsNothing;

/** Exercise by time, with nothing to lift. */
interface ByTime extends LeftOut<
  OfMaximum | OfLoad | 'unit' | 'unloaded' | 'bodyMassPercent' | 'tempo' | 'lastSetToFailure' | 'raisedFrom'
> {}
/** Walking or cycling. */
export interface Aerobic extends ByTime {
  /** Kind of exercise: walking or cycling. */
  readonly mode: 'aerobic';
}
/** Restriction at rest. */
export interface Passive extends ByTime, LeftOut<'intensityPercent'> {
  /** Kind of exercise: restriction at rest. */
  readonly mode: 'passive';
}

/** The cuff is inflated through the sets and rests, or in the sets alone. */
export interface CuffOn extends LeftOut<'restPercentLop'> {
  /** When the cuff is inflated: all the time, or in the sets alone. */
  readonly restriction: 'continuous' | 'intermittent';
}
/** The cuff is at a lower pressure in the rests. */
export interface CuffLowerInRests extends GivenAs<'restPercentLop'> {
  /** When the cuff is inflated: in the sets, and at a lower pressure in the rests. */
  readonly restriction: 'partial';
}
/** There is no cuff. */
export interface CuffOff extends LeftOut<'percentLop' | 'restPercentLop'> {
  /** When the cuff is inflated: never. */
  readonly restriction: 'none';
}

/** The cuff: on through the sets and rests, in the sets alone, at a lower pressure in the rests, or none. */
export type ExerciseCuff = CuffOn | CuffLowerInRests | CuffOff;

/**
 * An exercise: what is lifted, its sets, tempo and rests, and when the cuff is inflated. What excludes each other does
 * not compile together: see {@link ExerciseLift}, {@link ExerciseSets} and {@link ExerciseCuff}. Aerobic exercise and
 * restriction at rest lift nothing and are done by time. What you hold in looser types, such as a form, goes in by
 * `attempt(planSession, unknown)`.
 */
export type PlanExercise = PlanExerciseFields &
  ExerciseCuff &
  ((ExerciseLift & ExerciseSets<PlanSetRequest>) | ((Aerobic | Passive) & (TimedScheme | TimedSets<PlanSetRequest>)));

/** What {@link planSession} takes: a person’s readings, limbs and exercises. */
export interface PlanRequest {
  /** What to call the person on the page; no real name is needed. */
  readonly label?: string | undefined;
  /** Day of the plan and of its readings, `YYYY-MM-DD`. Its stops are in force since then. */
  readonly date?: string | undefined;
  /** Notes in your own words. */
  readonly notes?: string | undefined;
  /** Stops of earlier plans and records, such as those `nextRequest` passes on. */
  readonly stops?: readonly Stop[] | undefined;
  /** Decisions of practitioners about stops. Each lifts the stop it names. */
  readonly decisions?: readonly StopDecision[] | undefined;
  /** A document of `screen`: its findings, its date and what is not answered go into the plan. */
  readonly screening?: Screening | undefined;
  /** A document of `checkDay`, of the day of the session. */
  readonly dayCheck?: DayCheck | undefined;
  /** Age [years], 1–120: for the estimates of LOP and 1RM that use it, and for cautions about age. */
  readonly ageYears?: number | undefined;
  /** Sex of the person; for the estimates of LOP and 1RM that use it. */
  readonly sex?: Sex | undefined;
  /** Body mass [kg], 20–400; needed where an exercise has `bodyMassPercent`. */
  readonly bodyMassKg?: number | undefined;
  /** Resting systolic blood pressure [mmHg], 60–300, above the diastolic one. */
  readonly systolicMmHg: number;
  /** Resting diastolic blood pressure [mmHg], 30–200. */
  readonly diastolicMmHg: number;
  /** Posture of the exercises, unless one names its own. */
  readonly posture: Posture;
  /** Sessions a week, 1–21; for the review of the plan. */
  readonly sessionsPerWeek?: number | undefined;
  /** Length of the training block [weeks], 1–104. */
  readonly weeks?: number | undefined;
  /**
   * Pause between exercises, cuffs deflated [s], 0–7200; 3 minutes are taken when left out, and an assumption says so.
   */
  readonly reperfusionS?: number | undefined;
  /** Limbs that train, each with its cuff. */
  readonly limbs: readonly PlanLimb[];
  /** Exercises in the order of the session. */
  readonly exercises: readonly PlanExercise[];
}

/** An exercise on a limb; its answers are numbers that the document states, or whole. */
export interface ItemFacts<Pressure, Load, Totals> extends ExerciseOnLimb {
  /** Kind of exercise; it decides which ranges of a guideline apply. `resistance` when left out. */
  readonly mode?: ExerciseMode;
  /** Posture of this exercise, where it is another than that of the request. */
  readonly posture?: Posture;
  /** Intensity of an aerobic exercise [% of VO2max or heart-rate reserve]; absent where you gave none. */
  readonly intensityPercent?: number;
  /** Body mass [kg]; present where a share of it is moved. */
  readonly bodyMassKg?: number;
  /** Share of body mass that is moved [%]. */
  readonly bodyMassPercent?: number;
  /** Sets before the first, without the cuff; they count in the session time alone. */
  readonly warmUp?: readonly PlanSet[];
  /** The sets of this limb; where sides take turns, the rests hold the set of the other side. */
  readonly sets: readonly PlanSet[];
  /** Present where the last set goes to failure; its repetitions are then what is expected. */
  readonly lastSetToFailure?: true;
  /** Tempo [s]; absent where every set is by time. */
  readonly tempo?: Full<Tempo>;
  /**
   * When the cuff is inflated: `continuous`, from the first set to the last; `intermittent`, in the sets alone;
   * `partial`, in the sets and at a lower pressure in the rests; `none`.
   */
  readonly restriction: Restriction;
  /** Cuff pressure to set [mmHg]; present unless the restriction is `none`. */
  readonly target?: Pressure;
  /** Cuff pressure in the rests [mmHg], with partial restriction. */
  readonly restTarget?: Pressure;
  /** Load to set [kg or lb], of a range its lower end; absent where nothing but the body is moved. */
  readonly load?: Load;
  /** Load at the upper end of the range [kg or lb]; present where the share of the maximum is a range. */
  readonly upperLoad?: Load;
  /** Volume load, restriction time and the other totals of this exercise. */
  readonly totals: Totals;
}

/** One exercise on one limb: what to set, to lift and to do. */
export interface PlanItem extends ItemFacts<StatedAnswer, StatedAnswer, StatedTotals<ExerciseTotals>> {}

/** One exercise on one limb, with whole answers. */
export interface ExpandedPlanItem extends ItemFacts<Answer<'cuff-pressure'>, Answer<'training-load'>, ExerciseTotals> {
  /** Limb occlusion pressure [mmHg]; present unless the restriction is `none`. */
  readonly occlusion?: Answer<'occlusion-pressure'>;
  /** One-repetition maximum; present where the load was worked out from it. */
  readonly oneRepMax?: Answer<'one-repetition-maximum'>;
}

/** What one limb goes through in the session: its exercises, added up, as whole answers. */
export interface ExpandedLimbTotals extends LimbAndSide {
  /** Number of exercises with its cuff inflated. */
  readonly exercises: number;
  /** Time with the cuff inflated to its full pressure [s]; 0 without a cuff. */
  readonly restrictionTime: Answer<'restriction-time'>;
  /** Time at the lower pressure of the rests [s]; present with partial restriction. */
  readonly partialRestrictionTime?: Answer<'partial-restriction-time'>;
  /** Longest unbroken time with the cuff inflated, at either pressure [s]; absent without a cuff. */
  readonly longestRestriction?: Answer<'longest-restriction'>;
  /** Cuff pressure × time [mmHg·min]; absent without a cuff. */
  readonly pressureTime?: Answer<'pressure-time'>;
  /** Cuff pressure as a share of LOP × time [%·min]; absent without a cuff. */
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  /** Volume load of this limb [kg or lb], with a cuff or without; a load lifted with both sides counts for each. */
  readonly volumeLoad?: Answer<'volume-load'>;
  /** Cautions about the restriction time of this limb. */
  readonly cautions: readonly Caution[];
}

/** What one limb goes through in the session: its exercises, added up. */
export interface LimbTotals
  extends
    Pick<ExpandedLimbTotals, 'limb' | 'side' | 'exercises'>,
    StatedTotals<Omit<ExpandedLimbTotals, 'limb' | 'side' | 'exercises'>> {}

/** Totals of a whole session, as answers; those of a limb or an exercise are in `limbs` and `items`. */
type WholeTotals = Omit<SessionTotals, 'limbs' | 'exercises'>;

/** The whole session: its clock with the pauses between exercises, and what it adds up to over limbs and exercises. */
export interface PlanClock {
  /** Sets, rests and pauses in order, with their times [s]. */
  readonly timeline: SessionTimeline;
  /** Totals of the whole session; those of a limb or an exercise are in `limbs` and `items`. */
  readonly totals: StatedTotals<WholeTotals>;
}

/** The whole session, with whole answers. */
export interface ExpandedPlanClock extends Pick<PlanClock, 'timeline'> {
  /** Totals of the whole session; those of a limb or an exercise are in `limbs` and `items`. */
  readonly totals: WholeTotals;
}

/** A plan; its answers are numbers that the document states, or whole. */
export interface PlanFacts<Item, Totals, Clock, Sentence> extends DocumentHead<'plan', 2> {
  /** What the plan was made from. */
  readonly request: PlanRequest;
  /** Each exercise on each limb, with its loads, pressures and sets. */
  readonly items: readonly Item[];
  /** Totals of each limb over its exercises. */
  readonly limbs: readonly Totals[];
  /** Timeline and totals of the whole session. */
  readonly session: Clock;
  /** Every assumption that the plan was made with. */
  readonly assumptions: readonly Assumption[];
  /** Reasons not to train: those of earlier documents and of this plan, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** Every caution of the plan once, most severe first. */
  readonly cautions: readonly Caution[];
  /** Disclaimers that every plan has; those about the cuff only where a cuff is inflated. */
  readonly disclaimers: readonly Sentence[];
  /** Stop criteria: symptoms at which to stop the session, most severe first. */
  readonly stopCriteria: readonly Sentence[];
}

/**
 * A session plan: plain JSON, to store, send, review and print. Numbers are stated where you need them; each answer with
 * its evidence is in `answers`, once. `expandDocument` puts them together.
 */
export interface Plan extends PlanFacts<PlanItem, LimbTotals, PlanClock, DisclaimerCode>, Answered {}

/** A plan with whole answers at their places, as {@link expandDocument} gives it; it is not for storing. */
export interface ExpandedPlan extends PlanFacts<ExpandedPlanItem, ExpandedLimbTotals, ExpandedPlanClock, Disclaimer> {}
