import type { Symbols } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { LoadUnit, Sex } from '../quantity/quantities.js';
import type { Lift, Training } from './lifts.js';
import type { CautionCode, StrengthAssumption } from '../answer/codes.js';
import type { ComparisonCode } from './messages.js';

/**
 * One equation from a load and the repetitions to failure to a one-repetition maximum, with its sample and evidence.
 *
 * There are two families. A *repetition equation* has the form w × k(r): it works in any unit and for any lift, and
 * most have an `inverse`. A *regression* has an intercept, so it has a `unit` of its own and holds for its `lifts`.
 */
export interface OneRepMaxEquation {
  /** Id of the equation. */
  readonly id: string;
  /** Name of the equation, for display. */
  readonly name: string;
  /** Right-hand side, as an expression in `symbols`; of a regression, in its own unit. */
  readonly formula: string;
  /** Which input field each symbol of `formula` is. */
  readonly symbols: Symbols;
  /** The bare function: load, repetitions to failure. The load’s unit is the answer’s. */
  readonly apply: (load: number, repetitionsToFailure: number) => number;
  /** The inverse, where a closed form exists: repetitions to failure from the load as a fraction p of the maximum. */
  readonly inverse?: {
    /** Right-hand side of the inverse, as an expression. */
    readonly formula: string;
    /** The bare inverse: fraction of the maximum. */
    readonly apply: (fraction: number) => number;
    /** The fraction at which the equation levels off. At and below it no inverse exists. */
    readonly floor?: number;
  };
  /** Unit of the intercept; without one the equation works in any unit. */
  readonly unit?: LoadUnit;
  /** Lifts it may be used for. */
  readonly lifts: readonly Lift[] | 'any';
  /** The people it was fitted on, in words. */
  readonly sample: string;
  /** The people for whom `auto` may use it: every field must be given and fit. */
  readonly population?: {
    /** Sex of the sample. */
    readonly sex?: Sex;
    /** Training status of the sample. */
    readonly training?: Training;
    /** Ages of the sample [years]; where the paper reports no range, the mean ± 2 standard deviations. */
    readonly ageYears?: {
      /** Lower end [years]. */
      readonly low: number;
      /** Upper end [years]. */
      readonly high: number;
    };
  };
  /** It holds only for its own sample: used only when you name it. */
  readonly byNameOnly?: true;
  /** The load must be about this percentage of the maximum. */
  readonly loadPercent?: number;
  /** Repetitions of the tests it was fitted on, where reported. */
  readonly fittedRepetitions?: {
    /** Fewest repetitions. */
    readonly low: number;
    /** Most repetitions. */
    readonly high: number;
  };
  /** Repetitions it accepts, and why, where that is narrower than 1–20. */
  readonly domain?: {
    /** Fewest repetitions it accepts; 1 when left out. */
    readonly from?: number;
    /** Most repetitions it accepts. */
    readonly to: number;
    /** Why it accepts no others, a code: its tests end there, it has no term for repetitions, or it turns over. */
    readonly reason: 'longest-set' | 'no-repetition-term' | 'turns-over';
  };
  /** Standard deviation of its error, where its publication reports one: in a unit, or as a share of the maximum. */
  readonly error?:
    | {
        /** Standard deviation, in `unit`. */
        readonly standardDeviation: number;
        /** Unit of `standardDeviation`. */
        readonly unit: LoadUnit;
      }
    | {
        /** Standard deviation as a share of the maximum. */
        readonly share: number;
      };
  /** `data`: fitted to people; `practitioner`: from practice, without published data. */
  readonly basis: 'data' | 'practitioner' | 'not-known';
  /** Evidence grade of the equation. */
  readonly evidence: Grade;
  /** Ids of the publications it comes from. */
  readonly sources: readonly SourceId[];
  /** Codes of the assumptions that every answer of this equation makes. */
  readonly assumptions: readonly StrengthAssumption[];
}

/** One equation from a reading taken while lifting to the load as a percentage of the maximum. */
export interface RelativeLoadEquation {
  /** Id of the equation. */
  readonly id: string;
  /** Name of the equation, for display. */
  readonly name: string;
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  /** Which input field each symbol of `formula` is. */
  readonly symbols: Symbols;
  /** The reading it takes: bar velocity [m/s] or OMNI rating. */
  readonly reading: 'velocityMPerS' | 'omniRating';
  /** The bare function: the reading in, %1RM out. */
  readonly apply: (reading: number) => number;
  /** The lift it was fitted on, in words. */
  readonly lift: string;
  /** The people it was fitted on, in words. */
  readonly sample: string;
  /** Standard deviation of its error [percentage points], where we have one. */
  readonly error?: {
    /** Standard deviation [percentage points]. */
    readonly standardDeviation: number;
    /** Evidence grade of the error. */
    readonly evidence: Grade;
  };
  /** Evidence grade of the equation. */
  readonly evidence: Grade;
  /** Ids of the publications it comes from. */
  readonly sources: readonly SourceId[];
  /** Codes of the assumptions that every answer of this equation makes. */
  readonly assumptions: readonly StrengthAssumption[];
  /** What was found against it later: the code of the caution, and where it was found. */
  readonly cautions?: readonly {
    /** Code of the caution. */
    readonly code: ComparisonCode & CautionCode;
    /** Id of the publication. */
    readonly source: SourceId;
  }[];
}
