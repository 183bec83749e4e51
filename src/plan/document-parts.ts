import type { Limb, Side } from '../quantity/quantities.js';
import { version } from '../study/version.js';

/** What every document says of itself. */
export interface DocumentHead<D extends string, V extends number> {
  /** Kind of document. */
  readonly document: D;
  /** Version of the format of the document. */
  readonly schemaVersion: V;
  /** Version of the library that made it. */
  readonly libraryVersion: string;
}

/** What a document that this version makes says of itself. */
export const head = <D extends string, V extends number>(document: D, schemaVersion: V): DocumentHead<D, V> => ({
  document,
  schemaVersion,
  libraryVersion: version,
});

/** A limb of one side. */
export interface LimbAndSide {
  /** The limb that trains. */
  readonly limb: Limb;
  /** Side of the body that the limb is on. */
  readonly side: Side;
}

/** An exercise on a limb. */
export interface ExerciseOnLimb extends LimbAndSide {
  /** Name of the exercise, as in the request for the plan. */
  readonly exercise: string;
}
