import type { Answer, AnswerKind, Caution } from '../answer/answer.js';
import type { Unit } from '../quantity/quantities.js';

/** Where in its document an answer is: a JSON Pointer (RFC 6901), such as `/answers/0`. */
export interface AnswerPointer {
  /** JSON Pointer of the answer. */
  readonly ref: string;
}

/** A number as a document states it. `expandDocument` gives the whole answer, with its evidence. */
export interface Stated {
  /** The number, in `unit`. */
  readonly value: number;
  /** UCUM code. */
  readonly unit: Unit;
  /** Ends of the 95 % interval, where one can be given. */
  readonly lower?: number;
  /** Upper end of that 95 % interval, in `unit`. */
  readonly upper?: number;
}

/** A stated number whose answer is one of the `answers` of its document. */
export interface StatedAnswer extends Stated, AnswerPointer {}

/**
 * An answer as a document holds it: other answers that it was worked out from are pointers to them, and its cautions
 * are codes. Their sentences are in `cautions` of the document, and in the expanded document.
 */
export interface DocumentAnswer extends Omit<Answer, 'inputs' | 'cautions'> {
  /** What to watch for with this answer, by code. */
  readonly cautions: readonly (Omit<Caution, 'text'> & {
    /** A remark of your own equation, which no catalogue has. */
    readonly text?: string;
  })[];
  /** The values and answers that the number was worked out from. */
  readonly inputs: {
    readonly [field: string]: string | number | AnswerPointer | readonly AnswerPointer[];
  };
}

/** Totals as numbers that a document states; their cautions are those of the document. */
export type StatedTotals<T> = { readonly [N in keyof T as Exclude<N, 'cautions'>]: Stated };

/** What a document has of answers. */
export interface Answered {
  /** Ids of the equations and methods that its answers come from. */
  readonly equations: readonly string[];
  /** Every answer once; `ref` of a stated number leads to its answer. */
  readonly answers: readonly DocumentAnswer[];
}

/** The kind of a total, which a document does not repeat: `sessionTime` is a `session-time`. */
export const kindOfTotal = (name: string): AnswerKind =>
  name === 'peakPercentOneRepMax'
    ? 'peak-percent-of-maximum'
    : (name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`) as AnswerKind);
