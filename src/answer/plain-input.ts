import { quantityName } from '../quantity/field-quantity.js';
import { quantities } from '../quantity/quantities.js';
import { numberIssue } from './field-reader.js';
import { describe, InputError, issue, type InputIssue, type Path } from './issues.js';
import { DAY_EXPECTED, PLAIN_JSON, type Asked } from './needs.js';
import { DEEPEST, plainCopy } from './plain-copy.js';

/** What is wrong with the innermost part that is not plain JSON, such as the `NaN` of an empty cell or a `Date`. */
function oddIssue(part: unknown, path: Path, expected: Asked): InputIssue {
  if (typeof part === 'object' && part !== null && path.length < DEEPEST) {
    const isList = Array.isArray(part);
    for (const [name, inner] of Object.entries(part)) {
      // A field may be undefined, an item may not. Of a list nothing but its items is read.
      const isFine = inner === undefined ? !isList : plainCopy(inner) !== undefined;
      if (isFine || (isList && !/^\d+$/.test(name))) continue;
      const place = [...path, isList ? Number(name) : name];
      return oddIssue(inner, place, inner instanceof Date ? DAY_EXPECTED : PLAIN_JSON);
    }
  }
  const quantity = quantityName(path.at(-1));
  return (
    (typeof part === 'number' && quantity && numberIssue(quantities[quantity], part, path)) ||
    issue('wrong-type', path, expected, describe(part))
  );
}

/** A whole document as plain JSON of its own, or an {@link InputError}. `as` may put something else in the place of a part. */
export function plainInput(input: unknown, expected: Asked, as?: (part: object) => unknown): object {
  let wrong = issue('unreadable', [], expected, 'an error');
  try {
    const copy = plainCopy(input, undefined, as);
    if (typeof copy === 'object' && copy !== null) return copy;
    wrong = oddIssue(input, [], expected);
  } catch {
    // Stays unreadable.
  }
  throw new InputError([wrong]);
}
