import type { Caution, Severity } from '../answer/answer.js';

const GRAVITY: Record<Severity, number> = { stop: 0, caution: 1, note: 2 };

/** Gravest first; as they came where they are alike. */
export const gravestFirst = <C extends Pick<Caution, 'severity'>>(cautions: readonly C[]): C[] =>
  [...cautions].sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]);

/** What a sentence says, by its code and values: two with the same key say the same. */
export const saidKey = ({ code, values = {} }: Pick<Caution, 'code' | 'values'>): string =>
  JSON.stringify([code, Object.entries(values).sort(([a], [b]) => (a < b ? -1 : 1))]);

/** Every caution once, gravest first. */
export const onceEach = (cautions: readonly Caution[]): Caution[] =>
  gravestFirst([...new Map(cautions.map((caution) => [saidKey(caution), caution])).values()]);
