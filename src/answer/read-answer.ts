import { grades } from '../evidence/grades.js';
import { Math } from '../quantity/maths.js';
import type { Unit } from '../quantity/quantities.js';
import type { Answer, AnswerKind } from './answer.js';
import { describe } from './issues.js';
import type { Reader } from './reader.js';

/** Far from what a double can hold, so that no product or quotient of it leaves the finite numbers. */
const isSound = (part: number): boolean => part === 0 || (Math.abs(part) > 1e-300 && Math.abs(part) < 1e300);

/** The answers whose errors may be shares of the value. */
const LOG_KINDS: readonly AnswerKind[] = ['occlusion-pressure', 'cuff-pressure'];

/** A standard deviation of ln(value) above this is no share: the interval would span more than 30 million to 1. */
const MOST_LOG_DEVIATION = 5;

/** What is wrong with something that should be an answer of a kind, in words; nothing where it will do. */
export function answerFault(
  given: unknown,
  kind: AnswerKind,
  units: readonly Unit[],
  min: number,
  max: number,
): string | undefined {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    return typeof given === 'number' ? 'a bare number' : describe(given);
  }
  const { kind: own, unit, evidence, value, standardDeviation: sd, scale, lower, upper } = given as Partial<Answer>;
  if (own !== kind) return `an object whose kind is not '${kind}'`;
  if (!units.includes(unit as Unit)) return `a unit other than ${units.join(' or ')}`;
  if (typeof evidence !== 'string' || !Object.hasOwn(grades, evidence)) return 'an answer without a grade of evidence';
  if (typeof value !== 'number' || !(value >= min && value <= max)) return `a value outside ${min} to ${max}`;
  for (const part of [sd, lower, upper]) {
    if (part !== undefined && (typeof part !== 'number' || !isSound(part))) return 'a broken interval';
  }
  if ((sd ?? 0) < 0) return 'a negative standard deviation';
  if (scale === undefined) return undefined;
  if (scale !== 'log' || !LOG_KINDS.includes(kind)) return `a scale that answers of this kind do not have`;
  return (sd ?? 0) > MOST_LOG_DEVIATION || (lower ?? 1) <= 0 ? 'a broken interval' : undefined;
}

/**
 * An answer given back to the library as an input, perhaps after a stay in a database.
 * Only what is worked with is looked at; the rest is carried along. Of an `optional` answer that is left out
 * the value is NaN; {@link Reader.has} tells.
 */
export function readAnswer<K extends AnswerKind>(
  reader: Reader,
  name: string,
  kind: K,
  makers: string,
  units: readonly Unit[],
  min: number,
  max: number,
  optional = false,
): Answer<K> {
  const expected = `an answer of ${makers}`;
  const given = reader.anything(name, expected, optional);
  const fault = given === undefined ? undefined : answerFault(given, kind, units, min, max);
  if (fault !== undefined) reader.report('wrong-type', name, expected, fault);
  return given === undefined || fault !== undefined
    ? ({ kind, value: NaN } as unknown as Answer<K>)
    : (given as Answer<K>);
}
