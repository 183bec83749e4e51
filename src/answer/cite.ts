import { reference, sources, type SourceId } from '../evidence/sources.js';
import { plainInput } from './plain-input.js';

/** A publication that stands behind an answer. */
export interface Citation {
  readonly id: SourceId;
  readonly text: string;
}

/** Every source id anywhere in a piece of JSON, in the order met. */
function idsIn(value: unknown, found: Set<SourceId>): void {
  if (Array.isArray(value)) for (const item of value) idsIn(item, found);
  else if (typeof value === 'object' && value !== null) {
    for (const [name, item] of Object.entries(value)) {
      const ids: unknown[] = name === 'sources' && Array.isArray(item) ? item : name === 'source' ? [item] : [];
      for (const id of ids) if (typeof id === 'string' && Object.hasOwn(sources, id)) found.add(id as SourceId);
      idsIn(item, found);
    }
  }
}

/**
 * The publications behind an answer, a plan or anything that holds answers, each once.
 *
 * @param answer - an answer, a plan, or anything that holds answers
 * @returns the publications in the order met.
 * @throws InputError when it is not an object of plain data.
 *
 * @example
 * ```ts
 * import { cite, testedOneRepMax } from 'cuffwork';
 * cite(testedOneRepMax({ load: 100 })).map(({ id }) => id); // => ['one-rep-max-reliability-2020']
 * ```
 */
export function cite(answer: object): Citation[] {
  const found = new Set<SourceId>();
  idsIn(plainInput(answer, 'an answer, a plan, or anything that holds answers'), found);
  return [...found].map((id) => ({ id, text: reference(id) }));
}
