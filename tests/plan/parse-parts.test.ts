// What a schema finds wrong, in the words of the library, on small schemas.
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { MOST_ISSUES } from '../../src/answer/issues.js';
import { fieldsOf, parseDocument, requestReader, type Shaped } from '../../src/plan/parse.js';

/** What is wrong: code, place, what is asked for, what was received. */
const wrong = (schema: unknown, document: object) =>
  parseDocument(() => schema as z.ZodMiniType<unknown>, document).issues.map((one) => [
    one.code,
    one.path.join('.'),
    one.requirement,
    one.received,
  ]);
const ofA = (a: unknown, value: unknown) => wrong(z.object({ a: a as z.ZodMiniType }), { a: value });

describe('a document', () => {
  it('is given back as it is where nothing is wrong', () => {
    const document = { a: 1 };
    const { value, issues } = parseDocument(() => z.object({ a: z.number() }), document);
    expect(value).toBe(document);
    expect(issues).toEqual([]);
  });

  it('as a request is read into one of its own', () => {
    const read = requestReader(() => z.object({ a: z.string() }), ['plain-object', 'a plain object']);
    expect(read({ a: 'x' })).toEqual({ a: 'x' });
    expect(() => read({ a: true })).toThrow(/text/);
  });
});

describe('what is wrong', () => {
  const type = (types: string) => {
    const own = { string: 'a-text', array: 'a-list' }[types];
    return own ? { code: own } : { code: 'of-type', values: { types } };
  };

  it.each<[schema: unknown, value: unknown, line: unknown[]]>([
    [z.string(), 1, ['wrong-type', 'a', type('string'), '1']],
    [z.string(), ['x'], ['wrong-type', 'a', type('string'), 'a list of 1']],
    [z.string(), undefined, ['missing', 'a', type('string'), 'undefined']],
    [z.array(z.string()), 'x', ['wrong-type', 'a', type('array'), '"x"']],
    [z.array(z.string()), [1], ['wrong-type', 'a.0', type('string'), '1']],
    [
      z.array(z.string()).check(z.minLength(2)),
      ['x'],
      ['wrong-type', 'a', { code: 'least-length', values: { least: 2 } }, 'a list of 1'],
    ],
    [
      z.array(z.string()).check(z.minLength(1)),
      [],
      ['wrong-type', 'a', { code: 'least-length', values: { least: 1 } }, 'an empty list'],
    ],
    [
      z.array(z.string()).check(z.maxLength(1)),
      ['x', 'y'],
      ['wrong-type', 'a', { code: 'most-length', values: { most: 1 } }, 'a list of 2'],
    ],
    [z.number().check(z.gte(2)), 1, ['wrong-type', 'a', { code: 'at-least', values: { least: 2 } }, '1']],
    [z.number().check(z.lte(2)), 3, ['wrong-type', 'a', { code: 'at-most', values: { value: 2 } }, '3']],
    [z.string().check(z.regex(/^x$/, 'version')), 'y', ['wrong-type', 'a', { code: 'version' }, '"y"']],
    [
      z.string().check(z.regex(/^x$/, 'line-of 40')),
      'y',
      ['wrong-type', 'a', { code: 'line-of', values: { most: 40 } }, '"y"'],
    ],
    [z.string().check(z.regex(/^x$/, 'unheard-of')), 'y', ['wrong-type', 'a', { code: 'of-one-form' }, '"y"']],
    // Of several forms, the one that was meant.
    [z.union([z.string(), z.number()]), true, ['wrong-type', 'a', type('string | number'), 'true']],
    [z.union([z.string(), z.object({ b: z.string() })]), { b: 1 }, ['wrong-type', 'a.b', type('string'), '1']],
    [
      z.union([z.object({ b: z.string(), c: z.string() }), z.object({ b: z.string() })]),
      { b: 1, c: 2 },
      ['wrong-type', 'a.b', type('string'), '1'],
    ],
    [
      z.union([z.string().check(z.regex(/^x$/, 'version')), z.number()]),
      'y',
      ['wrong-type', 'a', { code: 'version' }, '"y"'],
    ],
  ])('%# %j', (schema, value, line) => {
    expect(ofA(schema, value)).toEqual([line]);
  });

  it('a word that is none of the options names them', () => {
    for (const [schema, options] of [
      [z.enum(['left', 'right']), ['left', 'right']],
      [z.literal('left'), ['left']],
      [z.union([z.literal('left'), z.literal('right')]), undefined],
    ] as const) {
      const [one] = parseDocument(() => z.object({ a: schema }) as z.ZodMiniType, { a: 'lefft' }).issues;
      if (options) expect(one?.options).toEqual(options);
      expect(one?.path).toEqual(['a']);
      expect(one?.received).toBe('"lefft"');
    }
    const kinds = z.discriminatedUnion('k', [z.object({ k: z.literal('one') }), z.object({ k: z.literal('two') })]);
    const [one] = parseDocument(() => kinds as z.ZodMiniType, { k: 'three' }).issues;
    expect(one).toMatchObject({ path: ['k'], received: '"three"', options: ['one', 'two'] });
  });

  it('a number of the vocabulary is checked as everywhere else, the ends of a range as what they are of', () => {
    const bounds = (document: object, schema: unknown) => {
      const [one] = parseDocument(() => schema as z.ZodMiniType<unknown>, document).issues;
      return [one?.code, one?.path.join('.'), one?.min, one?.max];
    };
    const number = z.number();
    expect(bounds({ ageYears: 'x' }, z.object({ ageYears: number }))).toEqual(['wrong-type', 'ageYears', 1, 120]);
    expect(bounds({ ageYears: 0 }, z.object({ ageYears: number.check(z.gte(1)) }))).toMatchObject([
      'out-of-range',
      'ageYears',
      1,
      120,
    ]);
    expect(bounds({ ageYears: 200 }, z.object({ ageYears: number.check(z.lte(120)) }))[2]).toBe(1);
    const range = z.object({ ageYears: z.object({ from: number, to: number, other: number }) });
    expect(bounds({ ageYears: { from: 'x', to: 1, other: 1 } }, range)).toEqual([
      'wrong-type',
      'ageYears.from',
      1,
      120,
    ]);
    expect(bounds({ ageYears: { from: 1, to: 'x', other: 1 } }, range)).toEqual(['wrong-type', 'ageYears.to', 1, 120]);
    expect(bounds({ ageYears: { from: 1, to: 1, other: 'x' } }, range)[3]).toBeUndefined();
    expect(bounds({ repetitions: 1.5 }, z.object({ repetitions: z.int() }))[2]).toBe(1);
    // Of the same name, but text.
    expect(bounds({ ageYears: 1 }, z.object({ ageYears: z.string() }))[3]).toBeUndefined();
    expect(
      bounds({ ageYears: 'y' }, z.object({ ageYears: z.string().check(z.regex(/x/, 'version')) }))[3],
    ).toBeUndefined();
  });

  it('a field that is not known names those that are', () => {
    const schema = z.object({
      list: z.optional(z.array(z.strictObject({ weight: z.optional(z.number()), rest: z.optional(z.number()) }))),
    });
    const { issues } = parseDocument(() => schema, { list: [{ wieght: 1 }] });
    expect(issues).toMatchObject([{ code: 'unknown-field', path: ['list', 0, 'wieght'] }]);
    expect(issues[0]!.options).toEqual(['weight', 'rest']);
    expect(issues[0]!.message).toContain('weight');
  });

  it('what another form of the field has is none of this one; only so many are looked at for what was meant', () => {
    const forms = z.object({
      a: z.union([
        z.strictObject({ load: z.number() }),
        z.strictObject({ time: z.number(), load: z.optional(z.number()), rest: z.number() }),
      ]),
    });
    const [one] = parseDocument(() => forms, { a: { load: 1, time: 'x', rest: 1, what: 1 } }).issues;
    expect(one?.options ?? []).not.toContain(one?.path.at(-1));
    const many = Object.fromEntries(Array.from({ length: MOST_ISSUES + 1 }, (_, index) => [`x${index}`, 1]));
    const { issues } = parseDocument(() => z.strictObject({ known: z.optional(z.number()) }), many);
    expect(issues).toHaveLength(MOST_ISSUES + 1);
    expect(issues[MOST_ISSUES - 1]!.options).toEqual(['known']);
    expect(issues[MOST_ISSUES]!.options ?? []).toEqual([]);
  });
});

describe('the fields of a schema', () => {
  const names = (schema: unknown) => Object.keys(fieldsOf(schema as Shaped) ?? { none: 1 });

  it('of an object, an optional one, a list, several forms', () => {
    const object = z.object({ a: z.string(), b: z.object({ c: z.string() }) });
    expect(names(object)).toEqual(['a', 'b']);
    expect(names(z.optional(object))).toEqual(['a', 'b']);
    expect(names(z.array(object))).toEqual(['*']);
    expect(names(z.string())).toEqual(['none']);
    expect(names(z.object({}))).toEqual(['none']);
    expect(fieldsOf(undefined)).toBeUndefined();
    const several = z.union([object, z.string(), z.object({ b: z.object({ d: z.string() }), e: z.string() })]);
    expect(names(several)).toEqual(['a', 'b', 'e']);
    const { a, b } = fieldsOf(several as unknown as Shaped)!;
    expect(names(b)).toEqual(['c', 'd']);
    expect(names(a)).toEqual(['none']);
    expect(fieldsOf(object as unknown as Shaped)?.['a']).toBe(a);
  });
});
