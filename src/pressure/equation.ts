import type { Assumption, ErrorPart, Symbols } from '../answer/answer.js';
import type { interval } from '../answer/interval.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { CircumferenceSite, Limb, Posture, Sex, Side } from '../quantity/quantities.js';
import type { ReadingName } from '../quantity/readings.js';
import type { PooledCurve } from './curve.js';
import type { PressureAssumption } from '../answer/codes.js';

/** What an occlusion-pressure equation may draw on. */
export type OcclusionReadings = {
  /** The limb under the cuff. */
  readonly limb: Limb;
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm. */
  readonly circumferenceCm: number;
  /** Systolic blood pressure at the upper arm [mmHg], 60–300, above the diastolic one. */
  readonly systolicMmHg: number;
  /** Diastolic blood pressure at the upper arm [mmHg], 30–200. */
  readonly diastolicMmHg: number;
  /** Width of the cuff on this limb [cm], 3–40. */
  readonly cuffWidthCm: number;
  /** Posture for which you want the LOP. */
  readonly posture: Posture;
  /** Where the tape was: under the cuff a thigh is 7 to 8 cm bigger than at its middle. */
  readonly circumferenceSite?: CircumferenceSite;
  /** Age [years], 1–120; for the equations that use it. */
  readonly ageYears?: number;
  /** Sex of the person; for the equations that use it. */
  readonly sex?: Sex;
  /** Tissue padding coefficient, 0.1–0.999, from a table of yours: we have none. For `padding-2006`. */
  readonly paddingCoefficient?: number;
  /** Side of the body; it changes no number, and `calibrateOcclusionPressure` needs it. */
  readonly side?: Side;
};

/** The optional readings that some equations cannot do without. */
export type ExtraReading = 'ageYears' | 'sex' | 'paddingCoefficient';

/** A range, both ends in it. */
export interface Range {
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
}

/** Cuffs with errors of their own: narrow and wide ones on the thigh, and any on the arm. */
export type CuffClass = 'thigh-narrow' | 'thigh-wide' | 'arm';

/** One published occlusion-pressure equation and all that is known of it. */
export interface OcclusionEquation {
  /** Id of the equation. */
  readonly id: string;
  /** Name of the equation, for display. */
  readonly name: string;
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  /** Which reading each symbol of `formula` is. */
  readonly symbols: Symbols;
  /** The bare function, fed from the readings. */
  readonly apply: (readings: Required<OcclusionReadings>) => number;
  /** Optional readings that this equation needs. */
  readonly needs: readonly ExtraReading[];
  /** Limb that it applies to. */
  readonly limb: Limb | 'any';
  /** Cuff width, or range of widths, that it applies to [cm]. */
  readonly cuffWidthCm: number | Range | 'any';
  /**
   * Posture of the sample; `any`: it has a term for each; `none`: it has no posture term; `not-stated`: we did not
   * find it in the text we read.
   */
  readonly posture: Posture | 'any' | 'none' | 'not-stated';
  /** The people it was fitted on, in words. */
  readonly sample: string;
  /** Ranges of the sample, where they are known. */
  readonly fitted: Partial<Record<ReadingName, Range>>;
  /** Readings whose range in the sample we have not checked. */
  readonly fittedNotKnown: readonly ReadingName[];
  /** Readings above which a publication shows it to be too low. */
  readonly tooLowAbove?: {
    /** Limb circumference [cm]. */
    readonly circumferenceCm: number;
  };
  /**
   * Standard deviation of its error: in mmHg, as a share of the answer, or that of a curve; none where it is not known.
   */
  readonly error: {
    /** Standard deviation [mmHg]. */
    readonly standardDeviationMmHg?: number;
    /** Standard deviation as a share of the answer: one number, or one for each class of cuff. */
    readonly share?: number | Readonly<Record<CuffClass, number>>;
    /** Pooled curve whose error applies. */
    readonly curve?: PooledCurve;
    /** Evidence grade of the error. */
    readonly evidence: Grade;
    /** Code of the assumption made about the error. */
    readonly assumption: PressureAssumption;
    /** How many published group means the error was taken from, where it was; they hold the spread of laboratories. */
    readonly means?: number;
    /**
     * Fitted in the laboratory that uses it: how far laboratories differ is no part of its error, which depends on the
     * person and is in mmHg, as least squares has it.
     */
    readonly own?: {
      /** Standard deviation for a person with these readings [mmHg]. */
      readonly deviation: (readings: Required<OcclusionReadings>) => number;
      /** The interval around an answer, from the parts of its error and their standard deviation as shares of it. */
      readonly around: (
        value: number,
        errors: readonly ErrorPart[],
        standardDeviation: number,
      ) => ReturnType<typeof interval>;
      /** The assumption made about the shape of the error. */
      readonly assumption: Assumption;
      /** The published equation that it recalibrates. */
      readonly base?: string;
    };
  };
  /** Evidence grade of the equation. */
  readonly evidence: Grade;
  /** Ids of the publications it comes from. */
  readonly sources: readonly SourceId[];
  /** Codes of the assumptions that every answer of this equation makes. */
  readonly assumptions: readonly PressureAssumption[];
}
