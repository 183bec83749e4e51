import { quantityName } from '../quantity/field-quantity.js';
import { quantities } from '../quantity/quantities.js';
import { numberIssue } from './field-reader.js';
import { describe, InputError, issue, type InputIssue } from './issues.js';
import { DAY_EXPECTED, PLAIN_JSON, type Asked } from './needs.js';
import { MOST_VALUES, plainCopy, type Budget } from './plain-copy.js';

const received = (part: unknown): string =>
  typeof part === 'object' && part !== null ? 'an object that is not plain JSON' : describe(part);

/** The field that is not plain JSON, such as a `NaN` of an empty cell or a `Date`. */
function oddIssue({ part, place }: NonNullable<Budget['odd']>): InputIssue {
  const path = [...place].reverse();
  const quantity = quantityName(path.at(-1));
  return (
    (typeof part === 'number' && quantity && numberIssue(quantities[quantity], part, path)) ||
    issue('wrong-type', path, part instanceof Date ? DAY_EXPECTED : PLAIN_JSON, received(part))
  );
}

/** A whole document as plain JSON of its own, or an {@link InputError}. `as` may put something else in the place of a part. */
export function plainInput(input: unknown, expected: Asked, as?: (part: object) => unknown): object {
  const budget: Budget = { left: MOST_VALUES };
  let wrong: InputIssue;
  try {
    const copy = plainCopy(input, budget, as);
    if (typeof copy === 'object' && copy !== null) return copy;
    const { odd } = budget;
    wrong =
      odd && odd.place.length > 0
        ? oddIssue(odd)
        : issue(input === undefined ? 'missing' : 'wrong-type', [], expected, received(input));
  } catch {
    wrong = issue('unreadable', [], expected, 'an error');
  }
  throw new InputError([wrong]);
}
