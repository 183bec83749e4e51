import { describe, expect, it } from 'vitest';
import { answerFault, isSoundAnswer } from '../../src/answer/read-answer.js';
import { InputError, isInputError } from '../../src/answer/issues.js';
import { Reader } from '../../src/answer/reader.js';
import { targetCuffPressure, testedOneRepMax, type Answer } from '../../src/index.js';
import { cite, explain } from '../../src/text/index.js';
import { reference } from '../../src/evidence/sources.js';
import { plainCopy } from '../../src/answer/plain-copy.js';
import type { Quantity } from '../../src/quantity/quantities.js';
import { refusal } from '../support/invariants.js';

// What is expected is written by hand, from what the quantity says of itself and the catalogue says of each code.

const LENGTH: Quantity = {
  name: 'length of a thing',
  unit: 'cm',
  min: 10,
  max: 50,
  slips: [
    { unit: 'inches', factor: 2.54 },
    { unit: 'millimetres', factor: 0.1 },
  ],
};
const COUNT: Quantity = { name: 'things', unit: '1', min: 2, max: 9, whole: true };
const throws = () => {
  throw new RangeError('from the caller’s own getter');
};
const unreadable = (name: string) => Object.defineProperty({}, name, { get: throws, enumerable: true });
const isShort = (text: string) => text.startsWith('s');

/** One field, read as each kind of field; what is wrong is thrown, as every function does. */
const field =
  <T>(read: (reader: Reader) => T) =>
  (input: unknown): T => {
    const reader = new Reader(input, ['it']);
    const value = read(reader);
    reader.done();
    return value;
  };
const inner = (reader: Reader | undefined) => reader?.number('b', COUNT);
const kinds = {
  number: field((reader) => reader.number('a', LENGTH)),
  count: field((reader) => reader.number('a', COUNT)),
  optionalNumber: field((reader) => reader.optionalNumber('a', LENGTH)),
  choice: field((reader) => reader.choice('a', ['up', 'down'])),
  optionalChoice: field((reader) => reader.optionalChoice('a', ['up', 'down'])),
  text: field((reader) => reader.optionalText('a', ['code', 'a short text'], isShort)),
  child: field((reader) => inner(reader.child('a'))),
  optionalChild: field((reader) => inner(reader.optionalChild('a'))),
  parts: field((reader) => reader.optionalNumberOrParts('restS', ['left', 'right'])),
  textOrChild: field((reader) => {
    const read = reader.textOrChild('a', ['code', 'a short text'], isShort);
    return typeof read === 'string' ? read : inner(read);
  }),
  list: field((reader) => reader.optionalList('a', ['code', 'a list of things'])?.map(inner)),
  few: field((reader) => reader.optionalList('a', ['code', 'a list of things'], 2)?.map(inner)),
  named: field((reader) => reader.named('a', ['code', 'things by name'], 2).map(([key, one]) => [key, inner(one)])),
  values: field((reader) => reader.values('a', ['code', 'a list of things'])),
  numbers: field((reader) => reader.optionalNumbers('a', COUNT)),
  anything: field((reader) => reader.anything('a', ['code', 'a document'])),
  optionalAnything: field((reader) => reader.anything('a', ['code', 'a document'], true)),
} as const;
type Kind = keyof typeof kinds;
const given = (kind: Kind, value: unknown) => ({ [kind === 'parts' ? 'restS' : 'a']: value });

describe('a field that is right', () => {
  it.each<[Kind, unknown, unknown?]>([
    ['number', 10],
    ['number', 50],
    ['count', 2],
    ['count', 9],
    ['optionalNumber', 10.5],
    ['optionalNumber', undefined],
    ['choice', 'down'],
    ['optionalChoice', 'up'],
    ['optionalChoice', undefined],
    ['text', `s${'x'.repeat(999)}`],
    ['text', undefined],
    ['child', { b: 3 }, 3],
    ['optionalChild', { b: 3 }, 3],
    ['optionalChild', undefined],
    ['parts', 30],
    ['parts', undefined],
    ['parts', { left: 0, right: 3600 }],
    ['textOrChild', 'short'],
    ['textOrChild', undefined],
    ['textOrChild', { b: 3 }, 3],
    ['list', [{ b: 3 }, { b: 4 }], [3, 4]],
    ['list', Array<object>(1000).fill({ b: 3 }), Array(1000).fill(3)],
    ['list', undefined],
    ['few', [{ b: 3 }, { b: 4 }], [3, 4]],
    ['named', { one: { b: 3 } }, [['one', 3]]],
    [
      'named',
      { one: { b: 3 }, two: { b: 4 } },
      [
        ['one', 3],
        ['two', 4],
      ],
    ],
    ['values', [1, 'x', { b: [null] }]],
    ['values', [1, () => 1, unreadable('b')], [1, undefined, undefined]],
    ['numbers', [2, 9]],
    ['numbers', undefined],
    ['anything', { b: [1, 'x', null, true] }],
    ['anything', 0],
    ['optionalAnything', undefined],
  ])('is read as %s, case %#', (kind, value, expected = value) => {
    expect(kinds[kind](given(kind, value))).toEqual(expected);
  });

  it('is told from one that was left out', () => {
    const reader = new Reader({ a: 1, b: undefined });
    expect([reader.raw('a'), reader.raw('b'), reader.raw('c')]).toEqual([1, undefined, undefined]);
    expect([reader.has('a'), reader.has('b'), reader.has('c')]).toEqual([true, false, false]);
    expect(() => reader.done()).not.toThrow();
  });

  it('may be minus zero, which JSON does not have', () => {
    expect(new Reader({ a: -0 }).number('a', { ...LENGTH, min: 0 })).toBe(0);
    expect(plainCopy({ a: [-0] })).toEqual({ a: [0] });
  });

  it('is one of a plain object, be it without a prototype or of another realm', () => {
    const bare = Object.assign(Object.create(null) as object, { a: 12 });
    // A prototype with none above it is what Object.prototype of another realm looks like.
    const foreign = Object.assign(Object.create(Object.create(null) as object) as object, { a: 12 });
    expect([kinds.number(bare), kinds.number(foreign)]).toEqual([12, 12]);
    expect(plainCopy(foreign)).toEqual({ a: 12 });
  });
});

const LENGTHS = 'a number from 10 to 50 cm';
const COUNTS = 'a whole number from 2 to 9';
const WORDS = "one of 'up', 'down'";
const OBJECT = 'a plain object';
const LIST = 'a list of things';
const RESTS = 'a number from 0 to 3600 s';

describe('a field that is wrong', () => {
  it.each<[Kind, unknown, ...[string, string, string, string][]]>([
    ['number', undefined, ['it.a', 'missing', LENGTHS, 'undefined']],
    ['number', null, ['it.a', 'wrong-type', LENGTHS, 'null']],
    ['number', '12', ['it.a', 'wrong-type', LENGTHS, '"12"']],
    ['number', true, ['it.a', 'wrong-type', LENGTHS, 'true']],
    ['number', [12], ['it.a', 'wrong-type', LENGTHS, 'a list of 1']],
    ['number', 12n, ['it.a', 'wrong-type', LENGTHS, 'a bigint']],
    ['number', throws, ['it.a', 'wrong-type', LENGTHS, 'a function']],
    ['number', Symbol('s'), ['it.a', 'wrong-type', LENGTHS, 'a symbol']],
    ['number', Infinity, ['it.a', 'not-finite', LENGTHS, 'Infinity']],
    ['number', NaN, ['it.a', 'not-finite', LENGTHS, 'NaN']],
    ['number', -1, ['it.a', 'out-of-range', LENGTHS, '-1']],
    ['number', 9.99, ['it.a', 'unit-slip', LENGTHS, '9.99']],
    ['number', 3.93, ['it.a', 'out-of-range', LENGTHS, '3.93']],
    ['number', 50.01, ['it.a', 'out-of-range', LENGTHS, '50.01']],
    ['number', 500, ['it.a', 'unit-slip', LENGTHS, '500']],
    ['number', 500.1, ['it.a', 'out-of-range', LENGTHS, '500.1']],
    ['count', 2.5, ['it.a', 'not-whole', COUNTS, '2.5']],
    ['count', 9.5, ['it.a', 'out-of-range', COUNTS, '9.5']],
    ['optionalNumber', null, ['it.a', 'wrong-type', LENGTHS, 'null']],
    ['choice', undefined, ['it.a', 'missing', WORDS, 'undefined']],
    ['choice', 'left', ['it.a', 'not-one-of', WORDS, '"left"']],
    ['choice', 'x'.repeat(40), ['it.a', 'not-one-of', WORDS, `"${'x'.repeat(40)}"`]],
    ['choice', 'x'.repeat(41), ['it.a', 'not-one-of', WORDS, `"${'x'.repeat(40)}…"`]],
    ['optionalChoice', null, ['it.a', 'not-one-of', WORDS, 'null']],
    ['text', 'long', ['it.a', 'wrong-type', 'a short text', '"long"']],
    ['text', 5, ['it.a', 'wrong-type', 'a short text', '5']],
    ['text', `s${'x'.repeat(1000)}`, ['it.a', 'wrong-type', 'a short text', `"s${'x'.repeat(39)}…"`]],
    ['child', undefined, ['it.a', 'missing', OBJECT, 'undefined']],
    ['child', null, ['it.a', 'wrong-type', OBJECT, 'null']],
    ['child', [{ b: 3 }], ['it.a', 'wrong-type', OBJECT, 'a list of 1']],
    ['child', new Date(0), ['it.a', 'wrong-type', OBJECT, 'an object']],
    ['child', 'b', ['it.a', 'wrong-type', OBJECT, '"b"']],
    ['child', {}, ['it.a.b', 'missing', COUNTS, 'undefined']],
    ['child', { b: 3, c: 1 }, ['it.a.c', 'unknown-field', 'b', '"c"']],
    ['child', new Proxy({}, { ownKeys: throws }), ['it.a', 'unreadable', OBJECT, 'an object']],
    ['optionalChild', null, ['it.a', 'wrong-type', OBJECT, 'null']],
    ['optionalChild', { b: 1 }, ['it.a.b', 'out-of-range', COUNTS, '1']],
    ['parts', null, ['it.restS', 'wrong-type', RESTS, 'null']],
    ['parts', '30', ['it.restS', 'wrong-type', RESTS, '"30"']],
    ['parts', -1, ['it.restS', 'out-of-range', RESTS, '-1']],
    ['parts', [30], ['it.restS', 'wrong-type', OBJECT, 'a list of 1']],
    [
      'parts',
      { left: 3601 },
      ['it.restS.left', 'unit-slip', RESTS, '3601'],
      ['it.restS.right', 'missing', RESTS, 'undefined'],
    ],
    ['textOrChild', null, ['it.a', 'wrong-type', 'a short text', 'null']],
    ['textOrChild', 5, ['it.a', 'wrong-type', 'a short text', '5']],
    ['textOrChild', 'long', ['it.a', 'wrong-type', 'a short text', '"long"']],
    ['textOrChild', { b: 1 }, ['it.a.b', 'out-of-range', COUNTS, '1']],
    ['list', [], ['it.a', 'wrong-type', 'a list of 1 to 1000 items', 'an empty list']],
    ['list', Array(1001).fill({ b: 3 }), ['it.a', 'wrong-type', 'a list of 1 to 1000 items', 'a list of 1001']],
    ['list', { length: 1, 0: { b: 3 } }, ['it.a', 'wrong-type', LIST, 'an object']],
    ['list', null, ['it.a', 'wrong-type', LIST, 'null']],
    ['list', new Proxy([1], { get: throws }), ['it.a', 'unreadable', 'a list of things', 'an error']],
    ['list', [{ b: 3 }, { b: 1 }, 4], ['it.a.2', 'wrong-type', OBJECT, '4'], ['it.a.1.b', 'out-of-range', COUNTS, '1']],
    ['list', [{ b: 3, c: 1 }], ['it.a.0.c', 'unknown-field', 'b', '"c"']],
    ['few', [{ b: 3 }, { b: 3 }, { b: 3 }], ['it.a', 'wrong-type', 'a list of 1 to 2 items', 'a list of 3']],
    ['named', undefined, ['it.a', 'missing', 'things by name', 'undefined']],
    ['named', {}, ['it.a', 'wrong-type', 'things by name', '0']],
    ['named', { 1: {}, 2: {}, 3: {} }, ['it.a', 'wrong-type', 'things by name', '3']],
    ['named', [{ b: 3 }], ['it.a', 'wrong-type', 'things by name', 'a list of 1']],
    ['named', null, ['it.a', 'wrong-type', 'things by name', 'null']],
    ['named', 'b', ['it.a', 'wrong-type', 'things by name', '"b"']],
    ['named', { one: { b: 1 } }, ['it.a.one.b', 'out-of-range', COUNTS, '1']],
    ['named', { one: { b: 3, c: 1 } }, ['it.a.one.c', 'unknown-field', 'b', '"c"']],
    ['values', undefined, ['it.a', 'missing', 'a list of things', 'undefined']],
    ['values', [], ['it.a', 'wrong-type', 'a list of 1 to 1000 items', 'an empty list']],
    ['values', 'x', ['it.a', 'wrong-type', LIST, '"x"']],
    ['numbers', [], ['it.a', 'wrong-type', 'a list of 1 to 1000 items', 'an empty list']],
    ['numbers', [2, 1, '3'], ['it.a.1', 'out-of-range', COUNTS, '1'], ['it.a.2', 'wrong-type', COUNTS, '"3"']],
    ['anything', undefined, ['it.a', 'missing', 'a document', 'undefined']],
    ['anything', throws, ['it.a', 'wrong-type', 'a document', 'a function']],
    ['anything', { b: NaN }, ['it.a', 'wrong-type', 'a document', 'an object']],
    ['anything', unreadable('b'), ['it.a', 'unreadable', 'a document', 'an error']],
  ])('is refused as %s, case %#', (kind, value, ...expected) => {
    const call = kinds[kind] as (input: unknown) => unknown;
    expect(refusal(call, given(kind, value))).toEqual(expected);
  });

  it.each(['number', 'choice', 'child', 'list', 'named', 'values', 'anything'] as const)(
    'is refused as %s where its getter throws, and alone',
    (kind) => {
      const issue = ['it.a', 'unreadable', 'a value that can be read', 'an error'];
      const input = Object.assign(unreadable('a'), { other: 1 });
      expect(refusal(kinds[kind] as never, input)).toEqual([issue]);
    },
  );

  it.each([
    [undefined, 'missing', 'undefined'],
    [null, 'wrong-type', 'null'],
    ['a', 'wrong-type', '"a"'],
    [[12], 'wrong-type', 'a list of 1'],
    [Object.create({ a: 12 }), 'wrong-type', 'an object'],
  ])('is not looked for in %j, which is refused as a whole', (input, code, received) => {
    for (const kind of ['number', 'choice', 'child', 'values', 'anything'] as const)
      expect(refusal(kinds[kind] as never, input)).toEqual([['it', code, OBJECT, received]]);
  });

  it('names the slip and what the value would be here', () => {
    const slip = (value: number) => {
      const reader = new Reader({ a: value });
      reader.number('a', LENGTH);
      try {
        reader.done();
      } catch (error) {
        return (error as InputError).issues.map(({ message, values }) => [message, values]);
      }
      return [];
    };
    // 9 in × 2.54 is 22.86 cm; 120 mm are 12 cm; 4 in × 2.54 is 10.16 cm, and 19.7 in would be 50.04.
    expect(slip(9)).toEqual([
      [
        'a must be a number from 10 to 50 cm; received 9. If that was inches, it is 22.86 cm here.',
        { slip: 'inches', converted: 22.86, unit: 'cm' },
      ],
    ]);
    expect(slip(120)).toEqual([
      [
        'a must be a number from 10 to 50 cm; received 120. If that was millimetres, it is 12 cm here.',
        { slip: 'millimetres', converted: 12, unit: 'cm' },
      ],
    ]);
  });

  it('is named from the top, as people write it', () => {
    const reader = new Reader({ sets: [{}, { b: 1 }] });
    const [, second] = reader.optionalList('sets', ['sets', 'sets'])!;
    second!.number('b', COUNT);
    expect(reader.fine).toBe(false);
    expect(() => reader.done()).toThrow('sets[1].b must be a whole number from 2 to 9; received 1.');
    expect(() => new Reader(5).done()).toThrow('the input must be a plain object; received 5.');
    expect(() => new Reader({ a: 1 }, [0, 'x']).done()).toThrow('[0].x.a is not a field here.');
  });
});

describe('a field nobody knows', () => {
  const unknown = (name: string): string => {
    try {
      field((reader) => [reader.optionalNumber('circumferenceCm'), reader.optionalNumber('day')])({ [name]: 5 });
    } catch (error) {
      return (error as InputError).message;
    }
    return '';
  };
  const all = 'Expected one of circumferenceCm, day.';
  const girth = 'Did you mean circumferenceCm?';
  // Case, a name of the trade, letters, and the beginning decide, in this order; a unit may be left out.
  it.each([
    ['circumference', girth],
    ['circumfrence', girth],
    ['CIRCUmferenz', girth],
    ['CircumferenceCM', girth],
    ['circ', girth],
    ['circle', all],
    ['days', 'Did you mean day?'],
    ['da', all],
    ['girth', girth],
    ['sets', all],
  ])('is named, with the one that was probably meant: %s', (name, hint) => {
    expect(unknown(name)).toBe(`it.${name} is not a field here. ${hint}`);
  });
  it('is cut where its name is long', () => {
    expect(unknown('x'.repeat(61))).toMatch(/^it\.x{60}… is not/);
  });
  it('is no reason to read on where the object can be read once only', () => {
    let asked = 0;
    const once = new Proxy({ a: 12, b: 1 }, { ownKeys: (of) => ((asked += 1) > 1 ? throws() : Reflect.ownKeys(of)) });
    expect(refusal(kinds.number as never, once)).toEqual([['it', 'unreadable', OBJECT, 'an object']]);
  });
});

describe('an answer given back', () => {
  const tested = testedOneRepMax({ load: 100 });
  const fault = (change: object) =>
    answerFault({ ...tested, ...change }, 'one-repetition-maximum', ['kg', '[lb_av]'], 1, 500);
  it.each([
    [{}, undefined],
    [{ value: 1 }, undefined],
    [{ value: 500 }, undefined],
    [{ unit: '[lb_av]' }, undefined],
    [{ standardDeviation: 0, lower: -1e299, upper: undefined }, undefined],
    [{ kind: 'training-load' }, 'an object of another kind'],
    [{ unit: 'cm' }, 'an answer in another unit'],
    [{ evidence: 'good' }, 'an answer without a grade of evidence'],
    [{ value: 0.9 }, 'an answer whose value is out of range'],
    [{ value: 501 }, 'an answer whose value is out of range'],
    [{ value: '100' }, 'an answer whose value is out of range'],
    [{ value: NaN }, 'an answer whose value is out of range'],
    [{ lower: '90' }, 'a broken interval'],
    [{ upper: null }, 'a broken interval'],
    [{ standardDeviation: 1e-301 }, 'a broken interval'],
    [{ lower: -1e301 }, 'a broken interval'],
    [{ standardDeviation: -1 }, 'a negative standard deviation'],
  ])('with %j', (change, expected) => expect(fault(change)).toBe(expected));
  it.each([
    [5, '5'],
    ['5', '"5"'],
    [null, 'null'],
    [[], 'an empty list'],
    [undefined, 'undefined'],
  ])('is none: %j', (given, expected) => {
    const makers = ['code', 'an answer'] as const;
    const asked = { kind: 'one-repetition-maximum', makers, units: ['kg'], min: 1, max: 500 } as const;
    const code = given === undefined ? 'missing' : 'wrong-type';
    expect(refusal(field((reader) => isSoundAnswer(reader, ['a'], given, asked)) as never, {})).toEqual([
      ['it.a', code, 'an answer', expected],
    ]);
  });
});

it('is asked for where it is missing', () => {
  expect(refusal(targetCuffPressure as never, { percentLop: 50 })).toEqual([
    ['occlusion', 'missing', expect.stringMatching(/^an answer of /), 'undefined'],
  ]);
});

describe('a whole document', () => {
  const expected = 'an answer, a comparison or a document of this library, as plain JSON';
  it.each([
    [undefined, 'missing', expected, 'undefined'],
    [null, 'wrong-type', expected, 'null'],
    [5, 'wrong-type', expected, '5'],
    ['x', 'wrong-type', expected, '"x"'],
    [new Date(0), 'wrong-type', expected, 'an object'],
    [unreadable('a'), 'unreadable', expected, 'an error'],
  ])('is refused where it is none, case %#', (input, code, wanted, received) => {
    expect(refusal(explain as never, input)).toEqual([['', code, wanted, received]]);
  });

  it.each([
    // What a form or a row of a database brings: an empty cell made a number, a day as a Date.
    [{ limbs: [{ cuffWidthCm: NaN }] }, ['limbs.0.cuffWidthCm', 'not-finite', 'a number from 3 to 40 cm', 'NaN']],
    [{ date: new Date(0) }, ['date', 'wrong-type', 'a date such as 2026-03-02', 'an object']],
    [{ limbs: new Map() }, ['limbs', 'wrong-type', 'plain JSON', 'an object']],
    [{ a: [0, { b: () => 1 }] }, ['a.1.b', 'wrong-type', 'plain JSON', 'a function']],
    [{ a: [Infinity] }, ['a.0', 'wrong-type', 'plain JSON', 'Infinity']],
  ])('names the field that is not plain JSON, case %#', (input, refused) => {
    expect(refusal(explain as never, input)).toEqual([refused]);
  });

  it('is cited by every source of the library anywhere in it, once, in the order met', () => {
    // An id that stands anywhere else, or in a list within the list, is no citation.
    const [first, second, third] = ['thigh-equation-2019', 'one-rep-max-reliability-2020', 'brzycki-1993'] as const;
    const document = {
      sources: [second, 'of-another-library', 5, [first]],
      parts: [{ cautions: [{ source: third, text: first }] }, { sources: [second, third] }],
      nothing: null,
    };
    expect(cite(document)).toEqual([second, third].map((id) => ({ id, text: reference(id) })));
    expect(refusal(cite as never, 5)[0]![2]).toBe('an answer, a plan, or anything that holds answers, as plain JSON');
  });

  it('that is wrong throws one error, known by its fields', () => {
    const call = () => explain({ document: 'none' } as unknown as Answer);
    expect(call).toThrow(InputError);
    expect(call).toThrow(`the input must be ${expected}; received "none".`);
    expect(isInputError(Object.assign(new TypeError('x'), { issues: [] }))).toBe(false);
    expect(isInputError(Object.assign(new Error('x'), { name: 'InputError' }))).toBe(false);
  });
});
