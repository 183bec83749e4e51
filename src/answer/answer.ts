import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type {
  CircumferenceSite,
  ExerciseMode,
  Limb,
  LoadUnit,
  Posture,
  Sex,
  Side,
  Unit,
} from '../quantity/quantities.js';
import type { Path } from './issues.js';
import type { AssumptionCode, CautionCode } from './codes.js';
import type { MessageValues } from './messages.js';

/** What an answer is about. */
export type AnswerKind =
  | 'occlusion-pressure'
  | 'cuff-pressure'
  | 'one-repetition-maximum'
  | 'training-load'
  | 'repetitions'
  | 'volume-load'
  | 'relative-volume-load'
  | 'time-under-tension'
  | 'restriction-time'
  | 'longest-restriction'
  | 'session-time'
  | 'repetitions-in-reserve'
  | 'repetitions-to-failure'
  | 'percent-of-maximum'
  | 'body-mass-load'
  | 'loaded-weight'
  | 'thrombosis-score'
  | 'fixed-training-pressure'
  | 'systolic-pressure'
  | 'diastolic-pressure'
  | 'body-mass-volume-load'
  | 'peak-load'
  | 'peak-percent-of-maximum'
  | 'partial-restriction-time'
  | 'reperfusion-time'
  | 'pressure-time'
  | 'relative-pressure-time'
  | 'session-load'
  | 'week-load'
  | 'monotony'
  | 'strain'
  | 'acute-chronic-ratio'
  | 'sessions'
  | 'percent-of-occlusion'
  | 'limb-symmetry';

/** Something assumed: a code and its values. `explain` has the sentence. */
export interface Assumption {
  /** Code of the assumption, which `explain` looks up. */
  readonly code: AssumptionCode;
  /** Values that fill the gaps of its sentence. */
  readonly values?: MessageValues;
}

/** A code with its English sentence. */
export interface Sentence {
  /** Code of the sentence. */
  readonly code: string;
  /** The English sentence, with its values filled in. */
  readonly text: string;
  /** Values that fill the gaps of the sentence. */
  readonly values?: MessageValues;
}

/** `stop`: do not go on without a clinician. `caution`: look before going on. `note`: know this. */
export type Severity = 'note' | 'caution' | 'stop';

/** Something to watch for with these inputs. */
export interface Caution extends Sentence {
  /** Code of the caution. */
  readonly code: CautionCode;
  /** How serious it is: `note`, `caution` or `stop`. */
  readonly severity: Severity;
  /** The input field that it is about, where it is about one. */
  readonly path?: Path;
  /** Id of the publication that it rests on, where it rests on one. */
  readonly source?: SourceId;
}

/** One part of an answer’s error; parts add in quadrature. */
export interface ErrorPart {
  /** Where this part of the error comes from. */
  readonly part:
    | 'equation'
    | 'measurement'
    | 'width-correction'
    | 'occlusion'
    | 'retest'
    | 'reserve'
    | 'maximum'
    | 'sample'
    | 'people'
    | 'laboratory'
    | 'posture'
    | 'circumference'
    | 'systolic'
    | 'diastolic'
    | 'calibration'
    | 'between-days'
    | 'other-side';
  /** Standard deviation of this part, in the unit of the answer; on the scale `log` that of ln(value). */
  readonly standardDeviation: number;
  /** Evidence grade of this part of the error. */
  readonly evidence: Grade;
}

/** Which field each symbol of a formula is; words that the formula codes as numbers are listed. */
export type Symbols = Readonly<
  Record<
    string,
    | string
    | {
        /** The input field. */
        readonly field: string;
        /** Number that the formula uses for each word. */
        readonly codes: Readonly<Record<string, number>>;
      }
  >
>;

/** What an answer of any kind was worked out from: plain values, and other answers. */
export type AnyInputs = { readonly [field: string]: string | number | Answer | readonly Answer[] };

/** What an occlusion pressure was estimated, measured or converted from. */
export interface OcclusionInputs {
  /** The limb: arm or leg. */
  readonly limb?: Limb;
  /** Side of the body. */
  readonly side?: Side;
  /** Posture of the reading or of the estimate. */
  readonly posture?: Posture;
  /** Width of the cuff [cm], 3–40. */
  readonly cuffWidthCm?: number;
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm. */
  readonly circumferenceCm?: number;
  /** Where along the limb the circumference was taken. */
  readonly circumferenceSite?: CircumferenceSite;
  /** Systolic blood pressure [mmHg], 60–300. */
  readonly systolicMmHg?: number;
  /** Diastolic blood pressure [mmHg], 30–200. */
  readonly diastolicMmHg?: number;
  /** Age [years], 1–120. */
  readonly ageYears?: number;
  /** Sex of the person. */
  readonly sex?: Sex;
  /** Standard deviation of the circumference [cm], 0–10. */
  readonly circumferenceErrorCm?: number;
  /** Standard deviation of the systolic pressure [mmHg], 0–50. */
  readonly systolicErrorMmHg?: number;
  /** Standard deviation of the diastolic pressure [mmHg], 0–50. */
  readonly diastolicErrorMmHg?: number;
  /** The pressure that was measured or entered [mmHg], 50–1000. */
  readonly valueMmHg?: number;
  /** How it was measured. */
  readonly method?: string;
  /** Day of the measurement, `YYYY-MM-DD`. */
  readonly date?: string;
  /** Day of the measurement, counted from any day of yours, 0–1,000,000. */
  readonly day?: number;
  /** Standard deviation of the measurement that was given [mmHg], 0–300. */
  readonly standardDeviationMmHg?: number;
  /** The pressure that was converted [mmHg], 50–1000. */
  readonly occlusionMmHg?: number;
  /** Width of the cuff that it was converted from [cm], 2–40. */
  readonly fromWidthCm?: number;
  /** Width of the cuff that it was converted to [cm], 2–40. */
  readonly toWidthCm?: number;
  /** Posture that it was converted from. */
  readonly fromPosture?: Posture;
  /** Posture that it was converted to. */
  readonly toPosture?: Posture;
  /** The measurement that was converted, with its evidence. */
  readonly measured?: Answer<'occlusion-pressure'>;
  /** The estimate that was calibrated. */
  readonly estimate?: Answer<'occlusion-pressure'>;
  /** The measurements that it was calibrated with. */
  readonly measurements?: readonly Answer<'occlusion-pressure'>[];
  /** Weight of the estimate in the calibration, 0–1. */
  readonly estimateWeight?: number;
  /** Mean of the measurements, brought to the cuff of the estimate [mmHg]. */
  readonly measuredMmHg?: number;
}

/** What a cuff pressure was worked out from. */
export interface CuffInputs {
  /** The limb occlusion pressure that it is a share of. */
  readonly occlusion: Answer<'occlusion-pressure'>;
  /** Share of limb occlusion pressure that was asked for [%], 1–100. */
  readonly percentLop: number;
  /** Smallest step of the gauge [mmHg], 0.1–50. */
  readonly gaugeStepMmHg: number;
  /** Highest cuff pressure that could be set [mmHg], 20–1000. */
  readonly ceilingMmHg?: number;
  /** Kind of exercise, where it was given. */
  readonly mode?: ExerciseMode;
  /** The chance of closing the artery that the setting stays under [%], 0.1–50. */
  readonly occlusionChanceLimitPercent?: number;
}

/** What a one-repetition maximum was tested or estimated from. */
export interface MaximumInputs {
  /** The load that was lifted [`unit`], 0.1–2000. */
  readonly load?: number;
  /** Unit of the load. */
  readonly unit?: LoadUnit;
  /** Repetitions that were done, 1–500. */
  readonly repetitions?: number;
  /** Repetitions that were left in reserve, 0–10. */
  readonly repetitionsInReserve?: number;
  /** Repetitions to failure: those done and those in reserve. */
  readonly repetitionsToFailure?: number;
  /** Rating on the scale of repetitions in reserve, 1–10. */
  readonly reserveRpe?: number;
  /** The lift. */
  readonly lift?: string;
  /** Training status of the person. */
  readonly training?: string;
  /** Age [years], 1–120. */
  readonly ageYears?: number;
  /** Sex of the person. */
  readonly sex?: Sex;
}

/** What a load was worked out from; your own load has neither a maximum nor a percentage. */
export interface LoadInputs {
  /** The one-repetition maximum that it is a share of. */
  readonly oneRepMax?: Answer<'one-repetition-maximum'>;
  /** Percentage of the 1RM that was asked for [%], 1–100. */
  readonly percentOneRepMax?: number;
  /** Your own load [`unit`], 0.1–2000. */
  readonly load?: number;
  /** Unit of the load. */
  readonly unit?: LoadUnit;
  /** How it was rounded. */
  readonly rounding?: string;
  /** Smallest step between loads [`unit`], 0.01–100. */
  readonly step?: number;
  /** Mass of the bar [`unit`], 0–200. */
  readonly bar?: number;
  /** Mass of both collars together [`unit`], 0–50. */
  readonly collars?: number;
  /** Share of body mass that the 1RM includes. */
  readonly bodyMassLoad?: Answer<'body-mass-load'>;
  /** Whose 1RM it is, where it is that of the other limb. */
  readonly maximumOf?: 'other-limb';
}

/** What a percentage of the maximum was worked out from: repetitions and a chart, or the speed of the bar. */
export interface PercentInputs {
  /** Repetitions to failure, 1–500. */
  readonly repetitions?: number;
  /** Id of the chart that was read. */
  readonly chart?: string;
  /** Repetitions that the chart prints for the percentage. */
  readonly printed?: number;
  /** Id of the equation, where its formula does not tell. */
  readonly equation?: string;
  /** Mean velocity of the bar [m/s], 0.05–3. */
  readonly velocityMPerS?: number;
}

/** What a share of body mass was worked out from. */
export interface BodyMassInputs {
  /** The movement. */
  readonly movement?: string;
  /** Sex of the person. */
  readonly sex?: Sex;
  /** Body mass [`unit`], 20–800. */
  readonly bodyMass?: number;
  /** Share of body mass that is moved, 0–1. */
  readonly fraction?: number;
  /** The load that was entered [`unit`], 0.1–2000. */
  readonly load?: number;
  /** Unit of the masses. */
  readonly unit?: LoadUnit;
}

/** The kinds whose inputs have the same names wherever they come from. */
interface InputsByKind {
  /** Inputs of an occlusion pressure. */
  readonly 'occlusion-pressure': OcclusionInputs;
  /** Inputs of a cuff pressure. */
  readonly 'cuff-pressure': CuffInputs;
  /** Inputs of a 1RM. */
  readonly 'one-repetition-maximum': MaximumInputs;
  /** Inputs of a load. */
  readonly 'training-load': LoadInputs;
  /** Inputs of a percentage of the maximum. */
  readonly 'percent-of-maximum': PercentInputs;
  /** Inputs of a share of body mass. */
  readonly 'body-mass-load': BodyMassInputs;
}

/**
 * What an answer of a kind was worked out from. Totals have the terms of their formula, and your own equation may have
 * further fields.
 */
export type Inputs<K extends AnswerKind = AnswerKind> = K extends keyof InputsByKind
  ? AnyInputs & InputsByKind[K]
  : AnyInputs;

/** The percentage of occlusion pressure that a setting really is, and its 95 % interval. */
export interface ReachedPressure {
  /** The rounded setting as a percentage of the occlusion pressure given [%]. */
  readonly percentLop: number;
  /** Lower end of its 95 % interval [%]. */
  readonly lower?: number;
  /** Upper end of its 95 % interval [%]. */
  readonly upper?: number;
  /** The chance that the setting closes the artery fully [%]. */
  readonly occlusionChancePercent?: number;
  /** The highest gauge setting that keeps that chance under the limit that was given [mmHg]. */
  readonly highestMmHg?: number;
}

/** The percentage of the 1RM that a load really is, and its 95 % interval. */
export interface ReachedLoad {
  /** The rounded load as a percentage of the 1RM given [%]. */
  readonly percentOneRepMax: number;
  /** Lower end of its 95 % interval [%]. */
  readonly lower?: number;
  /** Upper end of its 95 % interval [%]. */
  readonly upper?: number;
}

/** What a kind of answer tells of the percentage that its rounded value really is. */
export type Reached<K extends AnswerKind = AnswerKind> = K extends 'cuff-pressure'
  ? ReachedPressure
  : K extends 'training-load'
    ? ReachedLoad
    : never;

/** The kinds whose errors are shares of the value, where they are known. */
type ShareKind = 'occlusion-pressure' | 'cuff-pressure' | 'limb-symmetry';
/** The kinds that have an error, where it is known; the others follow exactly from what was given. */
type UncertainKind =
  | ShareKind
  | 'one-repetition-maximum'
  | 'training-load'
  | 'percent-of-maximum'
  | 'body-mass-load'
  | 'relative-volume-load'
  | 'peak-percent-of-maximum';

/** Where a kind is one of some, a type; else never: a field of it is then always left out. */
type Of<K, Some, T> = K extends Some ? T : never;

/** The percentage that a rounded value really is, of occlusion pressure or of the 1RM [%]. */
export const percentReached = (reached: Reached): number =>
  'percentLop' in reached ? reached.percentLop : reached.percentOneRepMax;

/**
 * A number with its evidence. Plain JSON: store it, send it and read it back. It holds facts alone: `explain`, `cite`
 * and `working` of `cuffwork/explain` find words, formula and sources by its codes and its `equation`.
 */
export interface Answer<K extends AnswerKind = AnswerKind> {
  /** What the number is, a code. */
  readonly kind: K;
  /** The number, in `unit`. */
  readonly value: number;
  /** UCUM code of the unit of `value`, such as `mm[Hg]`, `kg` or `s`. */
  readonly unit: Unit;
  /** Lower end of the 95 % interval [`unit`]; absent where the error is not known. */
  readonly lower?: Of<K, UncertainKind, number>;
  /** Upper end of the 95 % interval [`unit`]; absent where the error is not known. */
  readonly upper?: Of<K, UncertainKind, number>;
  /** Level of the interval: 0.95, where an interval is given. */
  readonly level?: Of<K, UncertainKind, 0.95>;
  /**
   * Standard deviation of the value [`unit`]; on the scale `log` that of ln(value). Any widening by Student’s t is in
   * it.
   */
  readonly standardDeviation?: Of<K, UncertainKind, number>;
  /** The scale on which errors are normal: `log` where they are shares of the value, else the unit itself. */
  readonly scale?: Of<K, ShareKind, 'log'>;
  /** The parts that `standardDeviation` is made of. */
  readonly errors?: Of<K, UncertainKind, readonly ErrorPart[]>;
  /** Id of the equation or method that made the number. */
  readonly equation: string;
  /** Evidence grade of the number. */
  readonly evidence: Grade;
  /**
   * Your own equation, where it made the number: its formula, whose symbols stand for fields of `inputs`, and the
   * published equation that it recalibrates.
   */
  readonly ownEquation?: {
    /** Right-hand side, as an expression in `symbols`. */
    readonly formula: string;
    /** Which field of `inputs` each symbol of `formula` is. */
    readonly symbols: Symbols;
    /** Id of the published equation that it recalibrates. */
    readonly base?: string;
  };
  /** The values and answers that the number was worked out from. */
  readonly inputs: Inputs<K>;
  /** The one rounding that was done, and what it was done to. */
  readonly rounding?: {
    /** The value before rounding, in `unit`. */
    readonly from: number;
    /** Direction of the rounding. */
    readonly to: 'down' | 'nearest';
    /** The value was rounded to a multiple of this step. */
    readonly step?: number;
    /** The values to choose from, where a list replaces the step. */
    readonly available?: readonly number[];
  };
  /** The true percentage of the rounded value, and its 95 % interval. */
  readonly reached?: Reached<K>;
  /** What we assume in this answer. */
  readonly assumptions: readonly Assumption[];
  /** What to watch for with this answer. */
  readonly cautions: readonly Caution[];
}

/** An answer whose error is always known: its interval is there without a question. */
export type WithInterval<A extends Answer> = Omit<A, OfInterval> & Required<Pick<A, OfInterval>>;
type OfInterval = 'lower' | 'upper' | 'level' | 'standardDeviation' | 'errors';
