import type { Caution } from '../answer/answer.js';
import { describe, InputError, within, refuse, type InputIssue, type Path } from '../answer/issues.js';
import { isOwn } from '../answer/own.js';
import type { Part } from '../answer/part.js';
import { plainInput } from '../answer/plain-input.js';
import { version } from '../study/version.js';
import { BY_CODE, checkConsistency, finder, isNear, type Found } from './consistency.js';
import { uniqueCautions, uniqueMessages } from './severity.js';
import { expansionOf } from './expanded.js';
import { codedCaution } from './coded.js';
import { fieldsOf, parseDocument, type Shaped } from './parse.js';
import { derivedStops, stopsMissing, type Stop } from './stops.js';
import { need, LEFT_OUT, PLAIN_OBJECT, type Asked } from '../answer/needs.js';
import { OUR_DOCUMENT, KNOWN_VERSION, KNOWN_CODE, THE_SAME, LIST_LENGTH } from './needs.js';
import { optionIssue, fieldIssue } from '../answer/field-reader.js';

/** How a document of one version becomes one of the next, by the version it comes from. */
type Upgrades = Readonly<Record<number, (older: Part) => Part>>;

/** A document with whole answers, where it has any: what the library works with. */
export interface Read<T = Verified, E = T> {
  readonly document: T;
  readonly expanded: E;
}

/** A kind of document that is read back. */
export interface StoredKind<T = Verified, E = T> {
  /** Its schema version. */
  readonly current: number;
  readonly schema: Parameters<typeof parseDocument<unknown>>[0];
  readonly upgrades: Upgrades;
  /** The document as this version of the library makes it from what it holds. */
  readonly remade: (document: T) => Read<T, E>;
  /** Only a part of it is made again: the same part does not verify its numbers. */
  readonly inPart?: true;
  /** What a document of another version becomes, where this version makes another one of it. */
  readonly asUnverified: (document: T, made: Read<T, E>, unverified: Caution) => Read<T, E>;
  /** What else must hold. */
  readonly check?: (document: T, found: Found) => void;
}

/** A document stepped up to the current version, one version at a time. A newer one is refused. */
export function upgraded(document: Part, current: number, upgrades: Upgrades): Part {
  const given = document['schemaVersion'] as number | undefined;
  const expected = need(KNOWN_VERSION, { current });
  const refuseVersion = (code: 'missing' | 'not-one-of' | 'newer-document'): never =>
    refuse(code, ['schemaVersion'], expected, describe(given));
  if (given === undefined) return refuseVersion('missing');
  if (given === current) return document;
  if (!Number.isInteger(given)) return refuseVersion('not-one-of');
  if (given > current) return refuseVersion('newer-document');
  const step = Object.hasOwn(upgrades, given) ? upgrades[given] : undefined;
  return step
    ? upgraded({ ...step(document), schemaVersion: given + 1 }, current, upgrades)
    : refuseVersion('not-one-of');
}

export const isObject = (part: unknown): part is Part => typeof part === 'object' && part !== null;
function shown(part: unknown): Asked {
  if (Array.isArray(part)) return need(LIST_LENGTH, { length: part.length });
  return isObject(part) ? PLAIN_OBJECT : need(THE_SAME, { value: describe(part) ?? 'undefined' });
}

/** Fields that a schema does not know and that read like one that is not there: slips. Others are your own. */
function slipsIn(part: unknown, schema: Shaped | undefined, path: Path): InputIssue[] {
  const known = fieldsOf(schema);
  if (!known || !isObject(part)) return [];
  if (Array.isArray(part)) return part.flatMap((item, index) => slipsIn(item, known['*'], [...path, index]));
  return Object.entries(part).flatMap(([name, inner]) => {
    // What an answer was worked out from has the names of its kind: they are compared with those made again.
    if (name === 'inputs') return [];
    if (Object.hasOwn(known, name)) return slipsIn(inner, known[name], [...path, name]);
    const absent = Object.keys(known).filter((one) => !Object.hasOwn(part, one));
    const unknown = fieldIssue(path, absent, name);
    return unknown.suggestions!.length > 0 ? [unknown] : [];
  });
}

/** Where a document differs from the one that was made again. Fields that its schema does not know are passed over. */
function differences(made: unknown, given: unknown, schema: Shaped | undefined, path: Path, found: Found): void {
  if (typeof made === 'number' && typeof given === 'number' && isNear(made, given)) return;
  if (made === given) return;
  if (!isObject(made) || !isObject(given) || Array.isArray(made) !== Array.isArray(given)) {
    return found(path, made === undefined ? LEFT_OUT : shown(made), given);
  }
  if (Array.isArray(made) && made.length !== given['length']) return found(path, shown(made), given);
  const known = fieldsOf(schema);
  for (const name of new Set([...Object.keys(made), ...Object.keys(given)])) {
    if (known && !Object.hasOwn(known, name) && !Object.hasOwn(made, name)) continue;
    const key = Array.isArray(made) ? Number(name) : name;
    // Every input of an answer counts.
    const inside = name === 'inputs' ? undefined : (known?.[name] ?? known?.['*']);
    differences(made[name], given[name], inside, [...path, key], found);
  }
}

interface Verified {
  readonly libraryVersion: string;
}

interface WithStops extends Verified {
  readonly cautions: readonly Caution[];
  readonly stops: readonly Stop[];
}

/**
 * A document of another version keeps its numbers, and says that they were not verified. Its stops are derived again,
 * and a caution that it lacks is put back: what was taken out of it is not lost.
 */
export function keptUnverified<T extends WithStops>(document: T, made: T, unverified: Caution): T {
  const codes = new Set(document.cautions.map(({ code }) => code));
  const back = made.cautions.filter(({ code }) => !codes.has(code));
  const cautions = uniqueCautions([unverified, ...document.cautions, ...back]);
  const stops = derivedStops(document.stops, made.stops);
  return { ...document, stops: [...stops, ...stopsMissing(stops, cautions)], cautions };
}

/** The disclaimers and stop criteria of this version, and what the document has besides: an old page lacks none. */
const withCriteria = <T extends object>(document: T, made: object): T => ({
  ...document,
  ...Object.fromEntries(
    BY_CODE.flatMap((name) => {
      const [ours, theirs] = [made, document].map((one) => (one as Readonly<Record<string, Caution[]>>)[name]);
      return ours && theirs ? [[name, uniqueMessages([...ours, ...theirs])]] : [];
    }),
  ),
});

/**
 * A document against itself. Its intervals, times and percentages must fit, whatever version made it. What this version
 * made must be what this version makes again from it; what another one made and this one makes otherwise gets a
 * caution, and what this one cannot make again is refused.
 */
function verify<T extends Verified, E extends Verified>(given: T, kind: StoredKind<T, E>): Read<T, E> {
  const own = given.libraryVersion === version;
  const issues: InputIssue[] = [];
  const found = finder(issues);
  checkConsistency(given, found, (path, code) => {
    if (own) found(path, KNOWN_CODE, code);
  });
  kind.check?.(given, found);
  const schema = kind.schema() as unknown as Shaped;
  if (own) issues.push(...slipsIn(given, schema, []));
  if (issues.length > 0) throw new InputError(issues);
  const made = kind.remade(given);
  const document = own ? given : withCriteria(given, made.document as object);
  const { libraryVersion } = document;
  differences({ ...made.document, libraryVersion }, document, schema, [], found);
  if (own && issues.length > 0) throw new InputError(issues);
  if (own || (!kind.inPart && issues.length === 0)) {
    const isWhole = (made.expanded as object) === made.document;
    return { document, expanded: isWhole ? (document as unknown as E) : { ...made.expanded, libraryVersion } };
  }
  return kind.asUnverified(document, made, codedCaution('caution', 'document-unverified', { version: libraryVersion }));
}

/** Whether it says at once that it is none of the kinds: then nothing else in it is walked, however much there is. */
function isOther(document: unknown, names: readonly unknown[]): boolean {
  try {
    return isObject(document) && !names.includes(document['document']);
  } catch {
    return false;
  }
}

/** A document of one of the kinds, given back as plain JSON of its own, verified; paths of issues start at `place`. */
export const storedDocument = <K extends string>(
  kinds: Readonly<Record<K, object>>,
  document: unknown,
  place: Path = [],
): Read<unknown> =>
  within(place, () => {
    const names = Object.keys(kinds) as K[];
    const json = isOther(document, names) ? (document as Part) : (plainInput(document, OUR_DOCUMENT) as Part);
    const name = names.find((kind) => json['document'] === kind);
    if (!name) throw new InputError([optionIssue(['document'], names, json['document'])]);
    if (isOwn(json)) return { document: json, expanded: expansionOf(json) ?? json };
    const kind = kinds[name] as unknown as StoredKind<Verified>;
    const { value, issues } = parseDocument<unknown>(kind.schema, upgraded(json, kind.current, kind.upgrades));
    if (value === undefined) throw new InputError(issues);
    return verify(value as Verified, kind);
  });
