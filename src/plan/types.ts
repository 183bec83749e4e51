import type { Answer, Caution } from '../answer/answer.js';
import type { PlanCode } from './messages.js';
import type { SourceId } from '../evidence/sources.js';
import type { OcclusionEquationId } from '../pressure/equations.js';
import type { MeasurementMethod } from '../pressure/measured.js';
import type { Limb, LoadUnit, Posture, Sex, Side } from '../quantity/quantities.js';
import type { Rounding } from '../quantity/round.js';
import type { ExerciseTotals } from '../session/account.js';
import type { ExerciseMode, ExerciseSet, Restriction, Tempo } from '../session/prescription.js';
import type { SessionTimeline } from '../session/timeline.js';
import type { OneRepMaxEquationId } from '../strength/equations.js';

/** A limb that trains, its cuff, and the percentage of occlusion pressure to set. */
export interface PlanLimb {
  readonly limb: Limb;
  readonly side: Side;
  /** Limb circumference [cm]; needed unless an occlusion pressure was measured. */
  readonly circumferenceCm?: number | undefined;
  /** Width of the cuff that will be worn [cm]. */
  readonly cuffWidthCm: number;
  /** Share of limb occlusion pressure to set [%]. */
  readonly percent: number;
  /** A measured occlusion pressure, used instead of an estimate. */
  readonly measured?:
    | {
        readonly valueMmHg: number;
        readonly method: MeasurementMethod;
        /** Width of the cuff it was measured with [cm]; carried to the cuff that will be worn when they differ. */
        readonly cuffWidthCm?: number | undefined;
        readonly standardDeviationMmHg?: number | undefined;
      }
    | undefined;
  readonly equation?: OcclusionEquationId | 'auto' | undefined;
  readonly gaugeStepMmHg?: number | undefined;
  readonly ceilingMmHg?: number | undefined;
}

/** A plan sets one pressure for each limb, so restriction is full or none; see `accountSession` for partial release. */
export type PlanRestriction = Exclude<Restriction, 'partial'>;

/** One set of a plan: repetitions, and the rest after it [s]. */
export type PlanSet = Required<Pick<ExerciseSet, 'repetitions' | 'restS'>>;

/** An exercise: its maximum, load, sets, tempo, rests and restriction. */
export interface PlanExercise {
  readonly name: string;
  readonly limb: Limb;
  /** The one side that does it; every side listed in `limbs` when left out. */
  readonly side?: Side | undefined;
  /** A tested maximum, or a load with the repetitions done, to estimate it from. */
  readonly oneRepMax: {
    readonly load: number;
    readonly unit?: LoadUnit | undefined;
    readonly repetitions?: number | undefined;
    readonly repetitionsInReserve?: number | undefined;
    readonly equation?: OneRepMaxEquationId | 'auto' | undefined;
  };
  /** Share of the maximum to lift [%]. */
  readonly percent: number;
  readonly unit?: LoadUnit | undefined;
  readonly step?: number | undefined;
  readonly available?: readonly number[] | undefined;
  readonly rounding?: Rounding | undefined;
  readonly scheme?: string | undefined;
  readonly sets?: readonly { readonly repetitions: number; readonly restS?: number | undefined }[] | undefined;
  readonly tempo: {
    readonly eccentricS: number;
    readonly bottomS?: number | undefined;
    readonly concentricS: number;
    readonly topS?: number | undefined;
  };
  readonly restS: number;
  readonly restriction: PlanRestriction;
}

/** What {@link planSession} takes: a person’s readings, limbs and exercises. */
export interface PlanRequest {
  /** What to call the person on the page; no real name is needed. */
  readonly label?: string | undefined;
  readonly ageYears?: number | undefined;
  readonly sex?: Sex | undefined;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  /** Posture of the exercise. */
  readonly posture: Posture;
  /** How often, and for how many weeks: for the review of the plan. */
  readonly sessionsPerWeek?: number | undefined;
  readonly weeks?: number | undefined;
  readonly limbs: readonly PlanLimb[];
  readonly exercises: readonly PlanExercise[];
}

/** One exercise on one limb. */
export interface PlanItem {
  /** Which rows of a guideline it is held against; `resistance` when left out. */
  readonly mode?: ExerciseMode;
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
  readonly occlusion: Answer<'occlusion-pressure'>;
  readonly target: Answer<'cuff-pressure'>;
  readonly oneRepMax: Answer<'one-repetition-maximum'>;
  readonly load: Answer<'training-load'>;
  readonly sets: readonly PlanSet[];
  readonly tempo: Required<Tempo>;
  readonly restriction: PlanRestriction;
  readonly timeline: SessionTimeline;
  readonly totals: ExerciseTotals;
}

/** What one limb goes through in the session. */
export interface LimbTotals {
  readonly limb: Limb;
  readonly side: Side;
  readonly exercises: number;
  readonly restrictionTime: Answer<'restriction-time'>;
  readonly cautions: readonly Caution[];
}

/** A sentence every plan carries. */
export interface StandingSentence {
  readonly code: PlanCode;
  readonly text: string;
  readonly source?: SourceId;
}

/** A session plan: plain JSON, to store, send, review and print. */
export interface Plan {
  readonly document: 'plan';
  readonly schemaVersion: 1;
  readonly request: PlanRequest;
  readonly items: readonly PlanItem[];
  readonly limbs: readonly LimbTotals[];
  /** Every caution of the plan once, gravest first. */
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
  readonly stopSigns: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}
