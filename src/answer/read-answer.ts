import { isGrade } from '../evidence/grades.js';
import { Math } from '../quantity/maths.js';
import type { Unit } from '../quantity/quantities.js';
import type { Answer, AnswerKind } from './answer.js';
import { describe, type Path } from './issues.js';
import { AT_MOST_UPPER, IN_INTERVAL, need, WITH_OTHER_END, type Asked } from './needs.js';
import { isPart } from './part.js';
import type { PlainReader } from './plain-reader.js';

/** Far from what a double can hold, so that no product or quotient of it leaves the finite numbers. */
const isSound = (part: number): boolean => part === 0 || (Math.abs(part) > 1e-300 && Math.abs(part) < 1e300);

/** The answers whose errors are shares of the value. */
const LOG_KINDS: readonly AnswerKind[] = ['occlusion-pressure', 'cuff-pressure'];

/** A standard deviation of ln(value) above this is no share: the interval would span more than 30 million to 1. */
const MOST_LOG_DEVIATION = 5;

/** What is wrong with something that should be an answer of a kind, in words; nothing where it will do. */
export function answerFault(
  answer: Partial<Answer>,
  kind: AnswerKind,
  units: readonly Unit[],
  min: number,
  max: number,
): string | undefined {
  const { kind: own, unit, evidence, value, standardDeviation: sd, scale, lower, upper } = answer;
  if (own !== kind) return 'an object of another kind';
  if (!units.includes(unit as Unit)) return 'an answer in another unit';
  if (!isGrade(evidence)) return 'an answer without a grade of evidence';
  if (typeof value !== 'number' || !(value >= min && value <= max)) return 'an answer whose value is out of range';
  for (const part of [sd, lower, upper]) {
    if (part !== undefined && (typeof part !== 'number' || !isSound(part))) return 'a broken interval';
  }
  if ((sd ?? 0) < 0) return 'a negative standard deviation';
  // Your own equation has its error in the unit of its answers, and so has a cuff pressure that follows from one.
  const either = answer.ownEquation !== undefined || kind === 'cuff-pressure';
  const log = LOG_KINDS.includes(kind) && (!either || scale === 'log');
  const known = sd !== undefined || lower !== undefined || upper !== undefined;
  if (scale !== (log && known ? 'log' : undefined)) return 'a scale that answers of this kind do not have';
  return log && ((sd ?? 0) > MOST_LOG_DEVIATION || (lower ?? 1) <= 0) ? 'a broken interval' : undefined;
}

/** The field of an interval that contradicts the others, where one does. */
function intervalFault({
  value,
  lower,
  upper,
  rounding,
}: Answer): readonly [field: 'lower' | 'upper' | 'value', expected: Asked] | undefined {
  if (lower === undefined || upper === undefined) {
    if (lower === upper) return undefined;
    return [lower === undefined ? 'lower' : 'upper', WITH_OTHER_END];
  }
  if (lower > upper) return ['lower', need(AT_MOST_UPPER, { upper })];
  const middle = rounding?.from ?? value;
  return middle >= lower && middle <= upper ? undefined : ['value', need(IN_INTERVAL, { lower, upper })];
}

/** What an answer that is given back must be. */
export interface AnswerRequirement<K extends AnswerKind = AnswerKind> {
  readonly kind: K;
  /** The functions that make it. */
  readonly makers: Asked;
  readonly units: readonly Unit[];
  readonly min: number;
  readonly max: number;
}

/** Reports what is wrong with an answer that is given back; whether nothing is. */
export function isSoundAnswer(
  reader: PlainReader,
  path: Path,
  given: unknown,
  { kind, makers, units, min, max }: AnswerRequirement,
): given is Answer {
  const answer = isPart(given) ? (given as Partial<Answer>) : undefined;
  const fault = answer ? answerFault(answer, kind, units, min, max) : describe(given);
  if (!answer || fault !== undefined) {
    reader.report('wrong-type', path, makers, fault);
    return false;
  }
  const wrong = intervalFault(answer as Answer);
  if (!wrong) return true;
  const [field, expected] = wrong;
  reader.refuse([...path, field], expected, describe(answer[field]));
  return false;
}

/**
 * An answer given back to the library as an input, perhaps after a stay in a database; or a plain number, where
 * `entered` makes an answer of it. Only what is used is checked; the rest is passed along. Where it is wrong or left
 * out, the value is NaN.
 */
export function readAnswer<K extends AnswerKind>(
  reader: PlainReader,
  name: string,
  requirement: AnswerRequirement<K>,
  optional = false,
  entered?: (value: number) => Answer<K>,
): Answer<K> {
  const { kind, makers } = requirement;
  const given = reader.anything(name, makers, optional);
  if (entered && typeof given === 'number') return entered(given);
  return given !== undefined && isSoundAnswer(reader, [name], given, requirement)
    ? (given as Answer<K>)
    : ({ kind, value: NaN } as unknown as Answer<K>);
}
