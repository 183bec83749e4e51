import type { Symbols } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { Limb, Posture, QuantityName, Sex } from '../quantity/quantities.js';
import type { PressureCode } from './messages.js';

/** What an occlusion-pressure equation may draw on. */
export type OcclusionReadings = {
  readonly limb: Limb;
  readonly circumferenceCm: number;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  readonly cuffWidthCm: number;
  readonly posture: Posture;
  readonly ageYears?: number;
  readonly sex?: Sex;
};

/** The optional readings that some equations cannot do without. */
export type ExtraReading = 'ageYears' | 'sex';

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
  readonly cuffWidthCm: number | 'any';
  /** Posture of the sample; `none`: the equation knows no posture; `not-stated`: not in the text that was read. */
  readonly posture: Posture | 'none' | 'not-stated';
  readonly sample: string;
  /** Ranges of the sample, where they are known. */
  readonly fitted: Partial<Record<QuantityName, { readonly low: number; readonly high: number }>>;
  /** Readings whose range in the sample is not at hand. */
  readonly fittedNotKnown: readonly QuantityName[];
  /** Standard deviation of its error: in mmHg, or as a share of the answer. */
  readonly error: {
    readonly standardDeviationMmHg?: number;
    readonly share?: number;
    readonly evidence: Grade;
    readonly assumption: PressureCode;
  };
  readonly evidence: Grade;
  readonly sources: readonly SourceId[];
  readonly assumptions: readonly PressureCode[];
}
