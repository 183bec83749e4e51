import { attempt, describe, InputError, issue, moved, type InputIssue, type Path } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { parseDocument } from './parse.js';
import type { SessionRecord } from './record.js';
import type { Proposal } from './proposal.js';
import { planDocument, proposalDocument, recordDocument } from './schema.js';
import type { Plan } from './types.js';

type Json = Readonly<Record<string, unknown>>;

/** How a document of one version becomes one of the next, by the version it comes from. */
export type Upgrades = Readonly<Record<number, (older: Json) => Json>>;

interface Documents {
  readonly plan: Plan;
  readonly record: SessionRecord;
  readonly proposal: Proposal;
}

/** Every document that is read back: its version, its schema, and the way up from older versions. */
const kinds = {
  plan: { current: 1, schema: planDocument, upgrades: {} },
  record: { current: 1, schema: recordDocument, upgrades: {} },
  proposal: { current: 1, schema: proposalDocument, upgrades: {} },
} as const satisfies Record<keyof Documents, { current: number; schema: unknown; upgrades: Upgrades }>;

/** A document stepped up to the current version, one version at a time. A newer one is refused. */
export function upgraded(document: Json, current: number, upgrades: Upgrades): Json {
  const version = document['schemaVersion'];
  const expected = `a version of ${current} or less that is known`;
  const refuse = (code: 'missing' | 'not-one-of' | 'newer-document'): never => {
    throw new InputError([issue(code, ['schemaVersion'], expected, describe(version))]);
  };
  if (version === undefined) return refuse('missing');
  if (version === current) return document;
  if (typeof version !== 'number' || !Number.isInteger(version)) return refuse('not-one-of');
  if (version > current) return refuse('newer-document');
  const step = Object.hasOwn(upgrades, version) ? upgrades[version] : undefined;
  return step ? upgraded({ ...step(document), schemaVersion: version + 1 }, current, upgrades) : refuse('not-one-of');
}

/** One of the library’s documents, given back as plain JSON of its own; issues are told from `place`. */
export function documentOf<K extends keyof Documents>(
  allowed: readonly K[],
  document: unknown,
  place: Path = [],
): Documents[K] {
  try {
    const json = plainInput(document, `a ${allowed.join(' or a ')} of this library`) as Json;
    const name = allowed.find((kind) => json['document'] === kind);
    if (!name) {
      const expected = allowed.map((kind) => `'${kind}'`).join(' or ');
      throw new InputError([issue('not-one-of', ['document'], expected, describe(json['document']))]);
    }
    const { current, schema, upgrades } = kinds[name];
    const { value, issues } = parseDocument<unknown>(schema, upgraded(json, current, upgrades));
    if (value === undefined) throw new InputError(issues);
    return value as Documents[K];
  } catch (error) {
    if (!(error instanceof InputError) || place.length === 0) throw error;
    throw new InputError(error.issues.map((found) => moved(found, (path) => [...place, ...path])));
  }
}

/** One of the library’s documents; what is wrong with it goes to `issues`. */
export function documentInto<K extends keyof Documents>(
  issues: InputIssue[],
  kind: K,
  document: unknown,
  place: Path,
): Documents[K] | undefined {
  const result = attempt((given: unknown) => documentOf([kind], given, place), document);
  if (result.ok) return result.value;
  issues.push(...result.issues);
  return undefined;
}

/**
 * A plan, a record or a proposal that was stored, read back: older versions of it are brought up to this one, a newer version is
 * refused, fields the library does not know are kept.
 *
 * @param document - a plan, a record or a proposal, as JSON.
 * @returns the document, checked, in the current version.
 * @throws InputError naming every wrong field, or the version where it is newer than this library.
 *
 * @example
 * ```ts
 * import { attempt } from 'cuffwork';
 * import { readDocument } from 'cuffwork/plan';
 * const result = attempt(readDocument, { document: 'plan', schemaVersion: 2 });
 * result.ok ? [] : result.issues.map(({ code }) => code); // => ['newer-document']
 * ```
 */
export const readDocument = (document: object): Plan | SessionRecord | Proposal =>
  documentOf(['plan', 'record', 'proposal'], document);
