import type { Caution, Sentence, Severity } from '../answer/answer.js';

/** Most severe first. */
export const SEVERITIES = ['stop', 'caution', 'note'] as const satisfies readonly Severity[];

/** Most severe first; as they came where they are alike. */
export const mostSevereFirst = <C extends Pick<Caution, 'severity'>>(cautions: readonly C[]): C[] =>
  [...cautions].sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));

/** What a sentence says, by its code and values: two with the same key say the same. */
export const messageKey = ({ code, values = {} }: Pick<Sentence, 'code' | 'values'>): string =>
  JSON.stringify([code, Object.entries(values).sort(([a], [b]) => (a < b ? -1 : 1))]);

/** Every sentence once. */
export const uniqueMessages = <M extends Pick<Sentence, 'code' | 'values'>>(messages: readonly M[]): M[] => [
  ...new Map(messages.map((one) => [messageKey(one), one])).values(),
];

/** Every caution once, most severe first. */
export const uniqueCautions = (cautions: readonly Caution[]): Caution[] => mostSevereFirst(uniqueMessages(cautions));
