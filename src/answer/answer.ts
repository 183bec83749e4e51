import { frozen } from '../quantity/frozen.js';
import type { Writable } from './defined.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { Math, square } from '../quantity/maths.js';
import type { Unit } from '../quantity/quantities.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { Path } from './issues.js';
import type { AnswerAssumption, AssumptionCode, CautionCode } from './codes.js';
import { fill, type Catalogue, type MessageValues } from './messages.js';

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

/** What an answer was worked out from: plain values, and other answers. */
export type Inputs = { readonly [field: string]: string | number | Answer | readonly Answer[] };

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
  readonly lower?: number;
  /** Upper end of the 95 % interval [`unit`]; absent where the error is not known. */
  readonly upper?: number;
  /** Level of the interval: 0.95, where an interval is given. */
  readonly level?: 0.95;
  /**
   * Standard deviation of the value [`unit`]; on the scale `log` that of ln(value). Any widening by Student’s t is in
   * it.
   */
  readonly standardDeviation?: number;
  /** The scale on which errors are normal: `log` where they are shares of the value, else the unit itself. */
  readonly scale?: 'log';
  /** The parts that `standardDeviation` is made of. */
  readonly errors?: readonly ErrorPart[];
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
  readonly inputs: Inputs;
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

/** An assumption by its code; a layer narrows it to its own codes. */
export const assume = (code: AssumptionCode, values?: MessageValues): Assumption =>
  values ? { code, values } : { code };

/** Makes the assumptions of one layer, typed by their codes. */
export type Assume<C extends AssumptionCode> = (code: C, values?: MessageValues) => Assumption;

/** Makes the sentences of one layer’s catalogue. */
export const sentencesOf =
  <C extends Catalogue>(catalogue: C) =>
  (code: keyof C & string, values?: MessageValues): Sentence => {
    const text = catalogue[code]!;
    return values ? { code, text: fill(text, values), values } : { code, text };
  };

/** Makes the cautions of one layer’s catalogue. */
export function cautionsOf<C extends Catalogue>(catalogue: C) {
  return (
    severity: Severity,
    code: keyof C & CautionCode,
    values?: MessageValues,
    more?: { readonly path?: Path; readonly source?: SourceId },
  ): Caution => {
    const text = catalogue[code]!;
    const caution: Writable<Caution> = { severity, code, text };
    if (values) {
      caution.text = fill(text, values);
      caution.values = values;
    }
    if (more?.path) caution.path = more.path;
    if (more?.source) caution.source = more.source;
    return caution;
  };
}

/** Errors are assumed to be normal in the unit of the answer. */
export const normalInterval: Assumption = /* @__PURE__ */ frozen({
  code: 'normal-interval' satisfies AnswerAssumption,
});
/** Errors are assumed to be shares of the value. */
export const logNormalInterval: Assumption = /* @__PURE__ */ frozen({
  code: 'log-normal-interval' satisfies AnswerAssumption,
});

function inQuadrature(errors: readonly ErrorPart[]): number {
  let variance = 0;
  for (const error of errors) variance += square(error.standardDeviation);
  return Math.sqrt(variance);
}

/** A 95 % interval around a value from errors in its unit that add in quadrature. */
export function interval(value: number, errors: readonly ErrorPart[]) {
  const standardDeviation = inQuadrature(errors);
  return {
    lower: value - NORMAL_95 * standardDeviation,
    upper: value + NORMAL_95 * standardDeviation,
    level: 0.95 as const,
    standardDeviation,
    errors,
  };
}

/**
 * A 95 % interval around a value whose errors are shares of it: value × exp(∓ 1.96 s), s the deviation of ln(value),
 * where it is known from elsewhere too.
 */
export function logInterval(value: number, errors: readonly ErrorPart[], standardDeviation = inQuadrature(errors)) {
  const factor = Math.exp(NORMAL_95 * standardDeviation);
  return {
    lower: value / factor,
    upper: value * factor,
    level: 0.95 as const,
    standardDeviation,
    scale: 'log' as const,
    errors,
  };
}
