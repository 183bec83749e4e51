import { frozen } from '../quantity/frozen.js';

const made = new WeakSet<object>();

/** A document that the library made and nobody can change: it needs no copy and no verification. */
export function ownDocument<T extends object>(document: T): T {
  frozen(document);
  made.add(document);
  return document;
}

/** Facts that many answers share, made once: the list and each of them is known again inside an answer. */
export function sharedFacts<T extends object>(facts: readonly T[]): readonly T[] {
  facts.forEach(ownDocument);
  return ownDocument(facts);
}

/** Made when it is first asked for, so that loading the library stays quick. */
export function once<T extends object>(make: () => T): () => T {
  let known: T | undefined;
  return () => (known ??= make());
}

/** Whether it is such a document, of this copy of the library. */
export const isOwn = (part: object): boolean => made.has(part);
