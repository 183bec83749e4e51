import { grades } from '../evidence/grades.js';
import { Math } from '../quantity/maths.js';
import type { Unit } from '../quantity/quantities.js';
import type { Answer, AnswerKind } from './answer.js';
import { describe } from './issues.js';
import type { Reader } from './reader.js';

/** Far from what a double can hold, so that no product or quotient of it leaves the finite numbers. */
const isSound = (part: number): boolean => part === 0 || (Math.abs(part) > 1e-300 && Math.abs(part) < 1e300);

/**
 * An answer given back to the library as an input, perhaps after a stay in a database.
 * Only what is worked with is looked at; the rest is carried along.
 */
export function readAnswer<K extends AnswerKind>(
  reader: Reader,
  name: string,
  kind: K,
  makers: string,
  units: readonly Unit[],
  min: number,
  max: number,
): Answer<K> {
  const expected = `an answer of ${makers}`;
  const given = reader.anything(name, expected) as Partial<Answer<K>> | null | undefined;
  const wrong = (part: string): Answer<K> => {
    reader.report('wrong-type', name, expected, part);
    return { kind, value: NaN } as unknown as Answer<K>;
  };
  if (given === undefined) return { kind, value: NaN } as unknown as Answer<K>;
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    return wrong(typeof given === 'number' ? 'a bare number' : describe(given));
  }
  const { value, standardDeviation: sd, lower, upper } = given;
  if (given.kind !== kind) return wrong(`an object whose kind is not '${kind}'`);
  if (!units.includes(given.unit as Unit)) return wrong(`a unit other than ${units.join(' or ')}`);
  if (!Object.hasOwn(grades, String(given.evidence))) return wrong('an answer without a grade of evidence');
  if (typeof value !== 'number' || !(value >= min && value <= max)) return wrong(`a value outside ${min} to ${max}`);
  for (const part of [sd, lower, upper]) {
    if (part !== undefined && (typeof part !== 'number' || !isSound(part))) return wrong('a broken interval');
  }
  if (typeof sd === 'number' && sd < 0) return wrong('a negative standard deviation');
  return given as Answer<K>;
}
