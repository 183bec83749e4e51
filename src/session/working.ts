import type { Answer, AnswerKind, Inputs, Symbols } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal, sum, type Decimal } from '../quantity/decimal.js';
import { format } from '../quantity/format.js';
import type { Unit } from '../quantity/quantities.js';
import type { Bout } from './layout.js';
import type { FullPrescription } from './prescription.js';
import { frozen } from '../quantity/frozen.js';

/** How a total was worked out, as text that can be checked. */
export interface Working {
  readonly formula: string;
  readonly symbols: Symbols;
  readonly inputs: Inputs;
}

export const list = (values: readonly number[]): string => values.map(format).join(' + ') || '0';
export const seconds = (times: readonly Decimal[]): string => list(times.map((time) => time.toNumber()));
export const plus = (times: readonly Decimal[]): Decimal => times.reduce((total, time) => total.plus(time), decimal(0));

/** A total that is the sum of a list. */
export const listed = (symbol: string, field: string, values: string): Working => ({
  formula: symbol,
  symbols: { [symbol]: field },
  inputs: { [field]: values },
});
export const nothing: Working = /* @__PURE__ */ frozen({ formula: '0', symbols: {}, inputs: {} });

/** Workings added to one another; those that are not there are passed over. */
export const added = (...parts: readonly (Working | false)[]): Working => {
  const there = parts.filter((part) => part !== false);
  if (there.length === 0) return nothing;
  return {
    formula: there.map(({ formula }) => formula).join(' + '),
    symbols: Object.assign({}, ...there.map(({ symbols }) => symbols)) as Symbols,
    inputs: Object.assign({}, ...there.map(({ inputs }) => inputs)) as Inputs,
  };
};

/** A sum of what was given: exact, so it has no interval. */
export const total = <K extends AnswerKind>(
  kind: K,
  value: number,
  unit: Unit,
  { formula, symbols, inputs }: Working,
  evidence: Grade,
  ...sources: readonly SourceId[]
): Answer<K> => ({
  kind,
  value,
  unit,
  equation: kind,
  evidence,
  formula,
  symbols,
  inputs,
  assumptions: [],
  cautions: [],
  sources,
});

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
  const inUnit = ({ value, unit }: Answer): number =>
    mixed && unit === '[lb_av]' ? convertLoad(value, 'lb', 'kg') : value;
  const values = there.map(inUnit);
  const unit = mixed ? 'kg' : first.unit;
  const sources = [...new Set(there.flatMap((part) => part.sources))];
  return total(first.kind, sum(values), unit, listed('E', field, list(values)), first.evidence, ...sources);
}

/** The highest of the same total of several parts; nothing unless every part has it. */
export function highest<K extends AnswerKind>(parts: readonly (Answer<K> | undefined)[]): Answer<K> | undefined {
  const there = parts.filter((part) => part !== undefined);
  if (there.length < parts.length) return undefined;
  const kilograms = ({ value, unit }: Answer): number => (unit === '[lb_av]' ? convertLoad(value, 'lb', 'kg') : value);
  return there.reduce<Answer<K> | undefined>(
    (most, part) => (most && kilograms(most) >= kilograms(part) ? most : part),
    undefined,
  );
}

export const TEMPO = { e: 'eccentricS', b: 'bottomS', c: 'concentricS', t: 'topS' } as const;
export const isCounted = ({ set }: Bout): boolean => set.durationS === undefined;
export const repetitionsOf = (bouts: readonly Bout[]): number[] =>
  bouts.flatMap(({ set }) => (set.repetitions === undefined ? [] : [set.repetitions]));

/** The time of sets: repetitions at the tempo, and sets by the watch. */
export function workWorking({ tempo }: FullPrescription, bouts: readonly Bout[]): Working {
  const counted = bouts.filter(isCounted);
  const timed = bouts.filter((bout) => !isCounted(bout));
  return added(
    counted.length > 0 && {
      formula: 'R * (e + b + c + t)',
      symbols: { R: 'repetitionsPerSet', ...TEMPO },
      inputs: { repetitionsPerSet: list(repetitionsOf(counted)), ...tempo },
    },
    timed.length > 0 && listed('S', 'timedSets', seconds(timed.map(({ durationS }) => durationS))),
  );
}

/** Whether the time of the sets is time under tension. */
export const isTense = ({ mode }: FullPrescription): boolean => mode === 'resistance';

export const repetitionTotal = (counts: readonly number[]): Answer<'repetitions'> =>
  total('repetitions', sum(counts), '{reps}', listed('R', 'repetitionsPerSet', list(counts)), 'practice');
