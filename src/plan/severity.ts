import type { Caution, Sentence, Severity } from '../answer/answer.js';

const SEVERITY_ORDER: Record<Severity, number> = { stop: 0, caution: 1, note: 2 };

/** Most severe first; as they came where they are alike. */
export const mostSevereFirst = <C extends Pick<Caution, 'severity'>>(cautions: readonly C[]): C[] =>
  [...cautions].sort((a, b) => SEVERITY_ORDER[a.severity] - SEVERITY_ORDER[b.severity]);

/** What a sentence says, by its code and values: two with the same key say the same. */
export const messageKey = ({ code, values = {} }: Pick<Sentence, 'code' | 'values'>): string =>
  JSON.stringify([code, Object.entries(values).sort(([a], [b]) => (a < b ? -1 : 1))]);

/** Every caution once, most severe first. */
export const uniqueCautions = (cautions: readonly Caution[]): Caution[] =>
  mostSevereFirst([...new Map(cautions.map((caution) => [messageKey(caution), caution])).values()]);
