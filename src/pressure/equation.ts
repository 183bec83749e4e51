import type { Assumption, ErrorPart, interval, Symbols } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { CircumferenceSite, Limb, Posture, Sex, Side } from '../quantity/quantities.js';
import type { ReadingName } from '../quantity/readings.js';
import type { PooledCurve } from './curve.js';
import type { PressureAssumption } from './assumptions.js';

/** What an occlusion-pressure equation may draw on. */
export type OcclusionReadings = {
  readonly limb: Limb;
  readonly circumferenceCm: number;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  readonly cuffWidthCm: number;
  readonly posture: Posture;
  /** Where the tape was: under the cuff a thigh is 7 to 8 cm bigger than at its middle. */
  readonly circumferenceSite?: CircumferenceSite;
  readonly ageYears?: number;
  readonly sex?: Sex;
  /** Tissue padding coefficient, between 0 and 1, from a table of yours: we have none. */
  readonly paddingCoefficient?: number;
  /** For the record, and so that the two sides are kept apart in `calibrateOcclusionPressure`. */
  readonly side?: Side;
};

/** The optional readings that some equations cannot do without. */
export type ExtraReading = 'ageYears' | 'sex' | 'paddingCoefficient';

/** A range, both ends in it. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Cuffs with errors of their own: narrow and wide ones on the thigh, and any on the arm. */
export type CuffClass = 'thigh-narrow' | 'thigh-wide' | 'arm';

/** One published occlusion-pressure equation and all that is known of it. */
export interface OcclusionEquation {
  readonly id: string;
  readonly name: string;
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  readonly symbols: Symbols;
  /** The bare function, fed from the readings. */
  readonly apply: (readings: Required<OcclusionReadings>) => number;
  readonly needs: readonly ExtraReading[];
  readonly limb: Limb | 'any';
  readonly cuffWidthCm: number | Range | 'any';
  /**
   * Posture of the sample; `any`: it has a term for each; `none`: it has no posture term; `not-stated`: we did not
   * find it in the text we read.
   */
  readonly posture: Posture | 'any' | 'none' | 'not-stated';
  readonly sample: string;
  /** Ranges of the sample, where they are known. */
  readonly fitted: Partial<Record<ReadingName, Range>>;
  /** Readings whose range in the sample we have not checked. */
  readonly fittedNotKnown: readonly ReadingName[];
  /** Readings above which a publication shows it to be too low. */
  readonly tooLowAbove?: { readonly circumferenceCm: number };
  /**
   * Standard deviation of its error: in mmHg, as a share of the answer, or that of a curve; none where it is not known.
   */
  readonly error: {
    readonly standardDeviationMmHg?: number;
    readonly share?: number | Readonly<Record<CuffClass, number>>;
    readonly curve?: PooledCurve;
    readonly evidence: Grade;
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
      readonly assumption: Assumption;
      /** The published equation that it recalibrates. */
      readonly base?: string;
    };
  };
  readonly evidence: Grade;
  readonly sources: readonly SourceId[];
  readonly assumptions: readonly PressureAssumption[];
}
