import { describe, InputError, refuse } from './issues.js';
import type { Asked } from './needs.js';
import { plainCopy } from './plain-copy.js';

/** A whole document as plain JSON of its own, or an {@link InputError}. `as` may put something else in the place of a part. */
export function plainInput(input: unknown, expected: Asked, as?: (part: object) => unknown): object {
  let copy: unknown;
  try {
    copy = plainCopy(input, undefined, as);
  } catch {
    refuse('unreadable', [], expected, 'an error');
  }
  if (typeof copy === 'object' && copy !== null) return copy;
  const received = typeof input === 'object' && input !== null ? 'an object that is not plain JSON' : describe(input);
  refuse(input === undefined ? 'missing' : 'wrong-type', [], expected, received);
}
