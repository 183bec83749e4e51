import type { Caution, Severity } from '../answer/answer.js';

const GRAVITY: Record<Severity, number> = { stop: 0, caution: 1, note: 2 };

/** Gravest first; as they came where they are alike. */
export const gravestFirst = <C extends Caution>(cautions: readonly C[]): C[] =>
  [...cautions].sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]);

/** Every caution once, gravest first. */
export const onceEach = (cautions: readonly Caution[]): Caution[] =>
  gravestFirst([...new Map(cautions.map((caution) => [caution.text, caution])).values()]);
