import type { Answer, Symbols } from '../../answer/answer.js';
import type { SourceId } from '../../evidence/sources.js';

/** How an answer was calculated, and what it rests on. */
export interface Working {
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  /** The field of the answer’s `inputs` for each symbol. */
  readonly symbols: Symbols;
  /** Ids of the publications that it rests on. */
  readonly sources: readonly SourceId[];
  /** Arithmetic that defines the answer: its evidence is that of the numbers in it. */
  readonly arithmetic?: true;
}

/** What a working is found by. */
export type Worked = Pick<Answer, 'kind' | 'equation' | 'unit' | 'assumptions' | 'ownEquation'> & {
  /** What the answer was calculated from, by field; absent from what holds for whole columns. */
  readonly inputs?: Readonly<Record<string, unknown>>;
};

/** A working, or how it follows from the answer; nothing for a kind that the equation does not give. */
export type Lookup = Working | ((answer: Worked) => Working | undefined);

/** Workings by the `equation` of an answer. */
export type Workings = Readonly<Record<string, Lookup>>;

export const assumes = ({ assumptions }: Worked, code: string): boolean => assumptions.some((one) => one.code === code);
