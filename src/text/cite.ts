import { reference, sources, type SourceId } from '../evidence/sources.js';
import { isWorked, workingBy } from './working.js';
import type { AnswerKind } from '../answer/answer.js';
import { kindOfTotal } from '../plan/stated.js';
import type { Worked } from './workings/working.js';
import { plainInput } from '../answer/plain-input.js';
import { HOLDS_ANSWERS } from './needs.js';

/** A publication behind an answer. */
export interface Citation {
  /** Id of the source. */
  readonly id: SourceId;
  /** The reference as text. */
  readonly text: string;
}

const add = (answer: Worked, found: Set<SourceId>): void => {
  for (const id of workingBy(answer)?.sources ?? []) found.add(id);
};

/** A total that a document states as a number: its name says what it is. */
const isTotal = (value: unknown): boolean => {
  if (typeof value !== 'object' || value === null) return false;
  const names = Object.keys(value);
  return 'value' in value && 'unit' in value && !names.includes('kind') && !names.includes('ref');
};
const worked = (kind: AnswerKind): Worked => ({ kind, equation: kind, inputs: {} }) as unknown as Worked;

/** What is in several places of a document is searched once. */
function collect(value: unknown, found: Set<SourceId>, seen: Set<object>): void {
  if (typeof value !== 'object' || value === null || seen.has(value)) return;
  seen.add(value);
  for (const [name, item] of Object.entries(value) as [string, unknown][]) {
    const ids = name === 'sources' || name === 'source' ? [item].flat() : [];
    for (const id of ids) if (typeof id === 'string' && Object.hasOwn(sources, id)) found.add(id as SourceId);
    collect(item, found, seen);
    if (isTotal(item)) add(worked(kindOfTotal(name)), found);
  }
  if (isWorked(value)) add(value, found);
}

/** Every source id anywhere in plain JSON of the library’s own, in the order met. */
export function idsIn(document: object): SourceId[] {
  const found = new Set<SourceId>();
  collect(document, found, new Set());
  return [...found];
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
 * import { testedOneRepMax } from 'cuffwork';
 * import { cite } from 'cuffwork/explain';
 * cite(testedOneRepMax({ load: 100 })).map(({ id }) => id); // => ['one-rep-max-reliability-2020']
 * ```
 */
export function cite(answer: object): Citation[] {
  const document = plainInput(answer, HOLDS_ANSWERS);
  return idsIn(document).map((id) => ({ id, text: reference(id) }));
}
