import type { Answer, ErrorPart, Symbols } from '../../answer/answer.js';
import type { SourceId } from '../../evidence/sources.js';

/** How an answer was calculated, and what it rests on. */
export interface Working {
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  /** The field of the answer’s `inputs` for each symbol. */
  readonly symbols: Symbols;
  /** Ids of the publications that it rests on. */
  readonly sources: readonly SourceId[];
}

/**
 * How one part of the error of an answer was calculated. `V` is the value of the answer, `W` that of the answer it is
 * a share of, `S` the standard deviation of that.
 */
export interface ErrorWorking {
  readonly part: ErrorPart['part'];
  readonly formula: string;
  /** Numbers of its other symbols. */
  readonly values?: Readonly<Record<string, number>>;
}

/** A working with what only the page of an answer prints. */
export interface FullWorking extends Working {
  /** Arithmetic that defines the answer: its evidence is that of the numbers in it. */
  readonly arithmetic?: true;
  readonly errors?: readonly ErrorWorking[];
}

/** What a working is found by. */
export type Worked = Pick<Answer, 'kind' | 'equation' | 'unit' | 'assumptions' | 'ownEquation'> & {
  /** What the answer was calculated from, by field; absent from what holds for whole columns. */
  readonly inputs?: Readonly<Record<string, unknown>>;
};

/** A working, or how it follows from the answer; nothing for a kind that the equation does not give. */
export type Lookup = FullWorking | ((answer: Worked) => FullWorking | undefined);

/** Workings by the `equation` of an answer. */
export type Workings = Readonly<Record<string, Lookup>>;

export const assumes = ({ assumptions }: Worked, code: string): boolean => assumptions.some((one) => one.code === code);
