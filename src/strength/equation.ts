import type { Symbols } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { StrengthCode } from './messages.js';

/** One equation from a load and the repetitions to failure to a one-repetition maximum. */
export interface OneRepMaxEquation {
  readonly id: string;
  readonly name: string;
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  readonly symbols: Symbols;
  /** The bare function: load, repetitions to failure. The load’s unit is the answer’s. */
  readonly apply: (load: number, repetitionsToFailure: number) => number;
  /** The equation has no meaning from here on: a pole. */
  readonly repetitionsBelow?: number;
  /** `data`: fitted to people; `practitioner`: from practice, without published data. */
  readonly basis: 'data' | 'practitioner';
  readonly evidence: Grade;
  readonly sources: readonly SourceId[];
  readonly assumptions: readonly StrengthCode[];
}
