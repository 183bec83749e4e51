import type { Answer, AnswerKind, Inputs } from '../answer/answer.js';
import { weakest, type Grade } from '../evidence/grades.js';
import { convertLoad } from '../quantity/convert.js';
import { sum } from '../quantity/exact.js';
import { inFull } from '../quantity/format.js';
import { loadUnitOf, type Unit } from '../quantity/quantities.js';
import { inSeconds, type SetInterval } from './schedule.js';
import type { FullPrescription } from './prescription.js';

export const list = (values: readonly number[]): string => values.map(inFull).join(' + ') || '0';
/** Times of a schedule [ns] as a list of seconds, and in all [s]. */
export const seconds = (times: readonly number[]): string => list(times.map(inSeconds));
export const secondsOf = (times: readonly number[]): number => inSeconds(times.reduce((all, time) => all + time, 0));

/** Inputs of a total, added to one another; those that are not there are passed over. */
export const added = (...parts: readonly (Inputs | false)[]): Inputs =>
  Object.assign({}, ...parts.filter((part) => part !== false)) as Inputs;

/** A total of what was given: exact, so it has no interval. */
export const total = <K extends AnswerKind>(
  kind: K,
  value: number,
  unit: Unit,
  inputs: Inputs,
  evidence: Grade = 'definition',
): Answer<K> => ({
  kind,
  value,
  unit,
  equation: kind,
  evidence,
  inputs: inputs as Inputs<K>,
  assumptions: [],
  cautions: [],
});

/** A load or a volume load [kg]; what is no mass as it is. */
export const inKilograms = ({ value, unit }: Answer): number => convertLoad(value, loadUnitOf(unit), 'kg');

/** The same total of several parts, added up; nothing unless every part has it. One part is its own total. */
export function summed<K extends AnswerKind>(
  parts: readonly (Answer<K> | undefined)[],
  field: string,
): Answer<K> | undefined {
  const [first] = parts;
  if (!first || parts.length === 1) return first;
  const there = parts.filter((part) => part !== undefined);
  if (there.length < parts.length) return undefined;
  const mixed = there.some(({ unit }) => unit !== first.unit);
  const values = there.map((part) => (mixed ? inKilograms(part) : part.value));
  const evidence = weakest(there.map((part) => part.evidence));
  return total(first.kind, sum(values), mixed ? 'kg' : first.unit, { [field]: list(values) }, evidence);
}

/** The highest of the same total of several parts; nothing unless every part has it. */
export function highest<K extends AnswerKind>(parts: readonly (Answer<K> | undefined)[]): Answer<K> | undefined {
  const there = parts.filter((part) => part !== undefined);
  if (there.length < parts.length) return undefined;
  return there.reduce<Answer<K> | undefined>(
    (most, part) => (most && inKilograms(most) >= inKilograms(part) ? most : part),
    undefined,
  );
}

export const isCounted = ({ set }: SetInterval): boolean => set.durationS === undefined;
export const repetitionsOf = (setIntervals: readonly SetInterval[]): number[] =>
  setIntervals.flatMap(({ set }) => (set.repetitions === undefined ? [] : [set.repetitions]));

/** What the time of sets is made of: repetitions at the tempo, and sets by the watch. */
export function workInputs({ tempo }: FullPrescription, setIntervals: readonly SetInterval[]): Inputs {
  const counted = setIntervals.filter(isCounted);
  const timed = setIntervals.filter((interval) => !isCounted(interval));
  return added(
    counted.length > 0 && { repetitionsPerSet: list(repetitionsOf(counted)), ...tempo },
    timed.length > 0 && { timedSets: seconds(timed.map(({ durationNs }) => durationNs)) },
  );
}

/** Whether the time of the sets is time under tension. */
export const isTense = ({ mode }: FullPrescription): boolean => mode === 'resistance';

export const repetitionTotal = (counts: readonly number[]): Answer<'repetitions'> =>
  total('repetitions', sum(counts), '{reps}', { repetitionsPerSet: list(counts) });
