import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { attempt } from '../../src/index.js';
import type { InputIssue } from '../../src/answer/issues.js';
import { ownDocument } from '../../src/answer/own.js';
import { AT_MOST, need } from '../../src/answer/needs.js';
import { keptUnverified, storedDocument, upgraded, type Read, type StoredKind } from '../../src/plan/stored.js';
import { version } from '../../src/study/version.js';

type Json = Readonly<Record<string, unknown>>;

const shown = ({ path, code, expected, received }: InputIssue): string =>
  `${path.join('.')} ${code}: ${expected}, not ${received}`;
const wrong = (call: () => unknown): string[] => {
  const result = attempt(call, undefined);
  return result.ok ? [] : result.issues.map(shown);
};

describe('a document of an older version', () => {
  const older = { document: 'thing', schemaVersion: 1 };
  const upgrades = { 1: (one: Json) => ({ ...one, two: true }), 2: (one: Json) => ({ ...one, three: one['two'] }) };

  it('is brought up one version at a time', () => {
    expect(upgraded(older, 3, upgrades)).toEqual({ document: 'thing', schemaVersion: 3, two: true, three: true });
    expect(upgraded({ ...older, schemaVersion: 2 }, 3, upgrades)).toEqual({
      ...older,
      schemaVersion: 3,
      three: undefined,
    });
    const current = { ...older, schemaVersion: 3 };
    expect(upgraded(current, 3, upgrades)).toBe(current);
  });

  it.each([
    [undefined, 'missing', 'undefined'],
    ['1', 'not-one-of', '"1"'],
    [null, 'not-one-of', 'null'],
    [1.5, 'not-one-of', '1.5'],
    [0, 'not-one-of', '0'],
    [3.5, 'not-one-of', '3.5'],
    [4, 'newer-document', '4'],
  ])('is refused in a version of %j', (schemaVersion, code, received) => {
    expect(wrong(() => upgraded({ ...older, schemaVersion }, 3, upgrades))).toEqual([
      `schemaVersion ${code}: a version of 3 or less that is known, not ${received}`,
    ]);
  });

  it('is refused where no way leads on, whatever an object inherits', () => {
    expect(wrong(() => upgraded(older, 2, {}))).toHaveLength(1);
    const inherited = Object.create({ 1: (one: Json) => one }) as Record<
      number,
      (one: Json) => Record<string, unknown>
    >;
    expect(wrong(() => upgraded(older, 2, inherited))).toHaveLength(1);
  });
});

describe('a document that keeps its numbers', () => {
  const unverified = { severity: 'caution', code: 'document-unverified', text: 'unverified' } as const;
  const caution = (code: string, severity = 'caution') => ({ severity, code, text: code });
  const kept = (own: Json, made: Json) => {
    const base = { libraryVersion: '0.0.1', cautions: [], stops: [] };
    return keptUnverified({ ...base, ...own }, { ...base, ...made }, unverified as never) as Json;
  };

  it('says that it was not verified, and lacks no caution', () => {
    const own = { cautions: [caution('fast-tempo'), caution('kept')], label: 'P-1' };
    const again = { cautions: [caution('kept'), caution('taken-out')], label: 'P-2' };
    expect(kept(own, again)).toEqual({
      libraryVersion: '0.0.1',
      label: 'P-1',
      cautions: [unverified, caution('fast-tempo'), caution('kept'), caution('taken-out')],
      stops: [],
    });
  });

  it('keeps a caution with its own values', () => {
    const own = { ...caution('fast-tempo'), values: { value: 1 } };
    const again = { ...caution('fast-tempo'), values: { value: 2 } };
    expect(kept({ cautions: [own] }, { cautions: [again] })['cautions']).toEqual([unverified, own]);
  });

  it('lacks no stop: those made again, its own, those of its cautions', () => {
    const stop = (code: string) => ({ code, text: code });
    const own = {
      stops: [stop('symptom-fainting')],
      cautions: [caution('cuff-pressure-stop', 'stop'), caution('symptom-vision', 'stop')],
    };
    const again = { stops: [stop('symptom-vision')] };
    const { stops } = kept(own, again) as { readonly stops: readonly Json[] };
    expect(stops.map(({ code }) => code)).toEqual(['symptom-vision', 'symptom-fainting', 'cuff-pressure-stop']);
  });
});

/** What a kind of document asks for, as small as it may be. */
const schema = () =>
  z.looseObject({
    document: z.literal('thing'),
    schemaVersion: z.literal(1),
    libraryVersion: z.string(),
    width: z.optional(z.unknown()),
    length: z.optional(z.unknown()),
    parts: z.optional(z.array(z.looseObject({ name: z.string(), weight: z.optional(z.number()) }))),
    inputs: z.optional(z.looseObject({ a: z.optional(z.number()), width: z.optional(z.number()) })),
  });
const unverified: Json = { document: 'unverified' };
const thing = (more: Json = {}): Json => ({ document: 'thing', schemaVersion: 1, libraryVersion: version, ...more });

interface Kept {
  readonly made?: Json;
  readonly expanded?: Json;
  readonly more?: object;
}
/** A document read back, where this version makes another one of it, or the same. */
const read = (given: unknown, { made, expanded, more }: Kept = {}, place?: readonly string[]): Read => {
  const kind = {
    current: 1,
    schema: schema as never,
    upgrades: {},
    remade: (document: Json) => {
      const again = made ? thing(made) : document;
      return { document: again, expanded: expanded ?? again };
    },
    asUnverified: (document: Json, again: Read, caution: Json) => ({
      document: { document, again, caution },
      expanded: unverified,
    }),
    ...more,
  } as unknown as StoredKind;
  return storedDocument({ thing: kind, other: kind }, given, place) as Read;
};
/** What differs of a document from the one that is made again. */
const differences = (made: Json, given: Json): string[] =>
  wrong(() => read(thing(given), { made })).map((one) => one.replace(' changed-document', ''));

describe('a document that is read back', () => {
  it('is plain JSON of its own, and one of the kinds', () => {
    const given = thing({ width: 10 });
    const { document, expanded } = read(given);
    expect(document).toEqual(given);
    expect(document).not.toBe(given);
    expect(expanded).toBe(document);
  });

  it('is taken as it is where nobody can change it', () => {
    const own = ownDocument(thing({ width: 10 }));
    const { document, expanded } = read(own, { made: { width: 11 } });
    expect([document, expanded]).toEqual([own, own]);
    expect(document).toBe(own);
    expect(expanded).toBe(own);
  });

  it.each([
    [{ document: 'plan' }, `document not-one-of: one of 'thing', 'other', not "plan"`],
    [{ document: 7 }, `document not-one-of: one of 'thing', 'other', not 7`],
    [{ document: {} }, `document not-one-of: one of 'thing', 'other', not an object`],
    [{}, `document missing: one of 'thing', 'other', not undefined`],
    [null, ' wrong-type: a document of this library, as plain JSON, not null'],
    ['thing', ' wrong-type: a document of this library, as plain JSON, not "thing"'],
    [thing({ parts: [{ name: 7 }] }), 'parts.0.name wrong-type: of type string, not 7'],
    [thing({ schemaVersion: 2 }), 'schemaVersion newer-document: a version of 1 or less that is known, not 2'],
  ])('is refused where it is none: %j', (given, expected) => {
    expect(wrong(() => read(given))).toEqual([expected]);
    const placed = expected.startsWith(' ') ? `plan${expected}` : `plan.${expected}`;
    expect(wrong(() => read(given, {}, ['plan']))).toEqual([placed]);
  });

  it('is not walked where it says at once that it is another', () => {
    const unreadable = (document?: string) =>
      Object.defineProperty({ document }, 'part', {
        enumerable: true,
        get: () => {
          throw new Error('not readable');
        },
      });
    const other = `document not-one-of: one of 'thing', 'other', not "plan"`;
    expect(wrong(() => read(unreadable('plan')))).toEqual([other]);
    expect(wrong(() => read(unreadable('thing')))).not.toEqual([]);
    expect(wrong(() => read(unreadable('other')))).not.toEqual([]);
    const { proxy, revoke } = Proxy.revocable({}, {});
    revoke();
    expect(wrong(() => read(proxy))).toHaveLength(1);
  });

  it.each([
    ['nothing', { width: 10 }, { width: 10 }, []],
    ['digits that engines differ in', { width: 10 }, { width: 10 + 1e-9 }, []],
    ['a number', { width: 10 }, { width: 11 }, ['width: 10, not 11']],
    ['a text', { width: 'wide' }, { width: 'narrow' }, ['width: "wide", not "narrow"']],
    ['a number for text', { width: '10' }, { width: 10 }, ['width: "10", not 10']],
    ['text for a number', { width: 10 }, { width: '10' }, ['width: 10, not "10"']],
    ['a number for nothing', { width: null }, { width: 0 }, ['width: null, not 0']],
    ['a field more', {}, { width: 10 }, ['width: left out, not 10']],
    ['a field less', { width: 10 }, {}, ['width: 10, not undefined']],
    ['a list less', { parts: [{ name: 'a' }] }, {}, ['parts: a list of 1, not undefined']],
    ['a list for an object', { width: { a: 1 } }, { width: [1] }, ['width: an object, not 1']],
    ['an object for a list', { width: [1] }, { width: { 0: 1 } }, ['width: a list of 1, not an object']],
    ['nothing for an object', { width: { a: 1 } }, { width: null }, ['width: an object, not null']],
    ['an object for nothing', { width: null }, { width: { a: 1 } }, ['width: null, not an object']],
    [
      'the length of a list',
      { parts: [{ name: 'a' }] },
      { parts: [{ name: 'a' }, { name: 'b' }] },
      ['parts: a list of 1, not 2'],
    ],
    ['a part of a list', { parts: [{ name: 'a' }] }, { parts: [{ name: 'b' }] }, ['parts.0.name: "a", not "b"']],
    ['several', { width: 10, length: 20 }, { width: 11, length: 21 }, ['width: 10, not 11', 'length: 20, not 21']],
    ['a field of your own', {}, { colour: 'blue' }, []],
    ['a field of your own in a part', { parts: [{ name: 'a' }] }, { parts: [{ name: 'a', colour: 'blue' }] }, []],
    [
      'a field that is made again and no schema has',
      { colour: 'red' },
      { colour: 'blue' },
      ['colour: "red", not "blue"'],
    ],
    ['a field where any may stand', { width: {} }, { width: { a: 1 } }, ['width.a: left out, not 1']],
    ['an input', { inputs: { a: 1 } }, { inputs: { a: 1, b: 2 } }, ['inputs.b: left out, not 2']],
  ] as const)('is refused where it was changed in %s', (_, made, given, expected) => {
    expect(differences(made, given)).toEqual(expected);
  });

  it('names places in lists by number', () => {
    const result = attempt(
      () => read(thing({ parts: [{ name: 'b' }] }), { made: { parts: [{ name: 'a' }] } }),
      undefined,
    );
    expect(result.ok ? undefined : result.issues[0]!.path).toEqual(['parts', 0, 'name']);
  });

  it.each([
    [{ widht: 10 }, ['widht']],
    [{ parts: [{ name: 'a' }, { name: 'b', wieght: 1 }] }, ['parts.1.wieght']],
    // What is there needs no other, and what reads like none of them is your own.
    [{ width: 10, widths: 10 }, []],
    [{ colour: 'blue' }, []],
    [{ inputs: { widht: 10 } }, []],
    [{ width: { widht: 10 } }, []],
  ] as const)('has no slips: %j', (given, expected) => {
    expect(wrong(() => read(thing(given))).map((one) => one.split(':')[0])).toEqual(
      expected.map((place) => `${place} unknown-field`),
    );
    // Another version may know the field.
    expect(wrong(() => read(thing({ ...given, libraryVersion: '0.0.1' })))).toEqual([]);
  });

  it('holds in itself, by its kind too', () => {
    const more = {
      check: ({ width }: Json, found: (...of: unknown[]) => void) => {
        if ((width as number) > 10) found(['width'], need(AT_MOST, { value: 10 }), width);
      },
    };
    expect(wrong(() => read(thing({ width: 10 }), { more }))).toEqual([]);
    for (const libraryVersion of [version, '0.0.1'])
      expect(wrong(() => read(thing({ width: 11, libraryVersion }), { more }))).toEqual([
        'width changed-document: at most 10, not 11',
      ]);
  });

  it('has codes that this version knows, where this version made it', () => {
    const cautions = [{ severity: 'note', code: 'of-later', text: 'later' }];
    expect(wrong(() => read(thing({ cautions })))).toEqual([
      'cautions.0.code changed-document: a code of this version with all its values, not "of-later"',
    ]);
    expect(wrong(() => read(thing({ cautions, libraryVersion: '0.0.1' })))).toEqual([]);
  });

  it('has what it was made of beside it', () => {
    const { document, expanded } = read(thing({ width: 10 }), { expanded: { whole: true } });
    expect(document).toEqual(thing({ width: 10 }));
    expect(expanded).toEqual({ whole: true, libraryVersion: version });
  });
});

describe('a document of another version of the library', () => {
  const old = { libraryVersion: '0.0.1' };

  it('is verified where this version makes the same of it', () => {
    const { document, expanded } = read(thing({ ...old, width: 10 }), {
      made: { width: 10 },
      expanded: { whole: true },
    });
    expect(document).toEqual(thing({ ...old, width: 10 }));
    expect(expanded).toEqual({ whole: true, ...old });
  });

  it('keeps what this version makes otherwise, with a caution', () => {
    const given = thing({ ...old, width: 11 });
    const { document, expanded } = read(given, { made: { width: 10 } });
    expect(expanded).toBe(unverified);
    expect(document).toMatchObject({
      document: given,
      again: { document: thing({ width: 10 }) },
      caution: { severity: 'caution', code: 'document-unverified', values: { version: '0.0.1' } },
    });
  });

  it('is not verified where only a part of it is made again', () => {
    const more = { inPart: true };
    expect(read(thing({ ...old, width: 10 }), { more }).expanded).toBe(unverified);
    expect(read(thing({ width: 10 }), { more }).document).toEqual(thing({ width: 10 }));
  });

  it('has the sentences of this version besides its own, where both have such', () => {
    const sentence = (code: string) => ({ code, text: code });
    const made = {
      disclaimers: [sentence('not-cleared'), sentence('screen-first')],
      stopCriteria: [sentence('symptom-fainting')],
    };
    const given = thing({ ...old, disclaimers: [sentence('screen-first'), sentence('burn-usual')] });
    const { document } = read(given, { made }).document as unknown as { document: Json };
    expect((document['disclaimers'] as Json[]).map(({ code }) => code)).toEqual([
      'not-cleared',
      'screen-first',
      'burn-usual',
    ]);
    expect(document).not.toHaveProperty('stopCriteria');
    // Where this version has none of them, its own stay.
    expect(read(given, { made: {} }).document).toMatchObject({
      libraryVersion: '0.0.1',
      disclaimers: [{ code: 'screen-first' }, { code: 'burn-usual' }],
    });
  });
});
