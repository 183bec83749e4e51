import { describe, expect, it } from 'vitest';
import { PLAIN_JSON } from '../../src/answer/needs.js';
import { plainCopy } from '../../src/answer/plain-copy.js';
import { plainInput } from '../../src/answer/plain-input.js';
import { issuesOf } from '../support/refused.js';

/** A value inside so many lists. */
const nested = (levels: number): unknown => (levels === 0 ? 1 : [nested(levels - 1)]);
/** A value inside so many objects. */
const wrapped = (levels: number): unknown => (levels === 0 ? 1 : { inside: wrapped(levels - 1) });

describe('a copy in plain JSON', () => {
  it.each([null, true, false, '', 'text', 0, -1.5, [], {}, [null, { a: [1, 'b', false] }]])(
    'is the same for %j',
    (value) => {
      expect(plainCopy(value)).toEqual(value);
    },
  );

  it('is a copy, all the way down', () => {
    const value = { list: [{ a: 1 }] };
    const copy = plainCopy(value) as typeof value;
    expect(copy).not.toBe(value);
    expect(copy.list).not.toBe(value.list);
    expect(copy.list[0]).not.toBe(value.list[0]);
  });

  it('leaves out what is undefined in an object, and takes an object without a prototype', () => {
    expect(Object.keys(plainCopy({ a: undefined, b: 1 }) as object)).toEqual(['b']);
    expect(plainCopy(Object.assign(Object.create(null) as object, { a: 1 }))).toEqual({ a: 1 });
  });

  it.each([
    ['undefined', undefined],
    ['NaN', NaN],
    ['an infinity', -Infinity],
    ['a big integer', 1n],
    ['a symbol', Symbol('s')],
    ['a function', () => 1],
    ['a date', new Date(0)],
    ['a map', new Map()],
    ['an object with a prototype of its own', Object.create({ a: 1 })],
    ['a field named __proto__', JSON.parse('{"__proto__":{"a":1}}')],
  ])('there is none of %s, wherever it stands', (_name, value) => {
    expect(plainCopy(value)).toBeUndefined();
    expect(plainCopy([1, value, 2])).toBeUndefined();
    expect(value === undefined ? undefined : plainCopy({ a: 1, b: value })).toBeUndefined();
  });

  it('goes forty levels deep, and no deeper', () => {
    expect(plainCopy(nested(40))).toEqual(nested(40));
    expect(plainCopy(wrapped(40))).toEqual(wrapped(40));
    expect(plainCopy(nested(41))).toBeUndefined();
    expect(plainCopy(wrapped(41))).toBeUndefined();
  });

  // Each value counts, a part as one more than what it holds.
  it.each([
    ['text', 1],
    [0, 1],
    [[], 1],
    [{}, 1],
    [[1, 'b', null], 4],
    [{ a: 1, b: 'b', c: 0, d: null }, 5],
    [{ a: { b: [1, { c: 'c' }] }, d: true }, 7],
  ])('counts %j as %i', (value, count) => {
    expect(plainCopy(value, { left: count })).toEqual(value);
    expect(plainCopy(value, { left: count - 1 })).toBeUndefined();
    const budget = { left: count + 3 };
    plainCopy(value, budget);
    expect(budget.left).toBe(3);
  });

  it('puts in the place of a part what it is given for it', () => {
    const as = (part: object): unknown => ('ref' in part ? { took: 'its place' } : part);
    expect(plainCopy({ a: [{ ref: 1 }, 0], b: -0 }, undefined, as)).toEqual({ a: [{ took: 'its place' }, 0], b: 0 });
    expect(plainCopy([{ ref: 1 }], undefined, () => 5)).toBeUndefined();
    expect(plainCopy([{ ref: 1 }], undefined, () => null)).toBeUndefined();
  });

  it('is none of what has hidden fields or symbols, and keeps no zero with a sign', () => {
    expect(plainCopy(Object.defineProperty({ a: 1 }, 'b', { value: 2, enumerable: false }))).toBeUndefined();
    expect(plainCopy({ a: 1, [Symbol('s')]: 2 })).toBeUndefined();
    expect(Object.is((plainCopy({ a: -0 }) as { a: number }).a, 0)).toBe(true);
    expect(plainCopy({ a: JSON.parse('{"__proto__":"text"}') as unknown })).toBeUndefined();
  });

  // The list itself is one of them.
  const list = new Array<number>(199_999).fill(0);
  it('holds two hundred thousand values, and no more', () => {
    expect(plainCopy(list)).toHaveLength(199_999);
    expect(plainCopy([...list, 0])).toBeUndefined();
  });

  it('counts them all the way down', () => {
    // 1 object, 1 list, 200 lists and 199 600 numbers in them, and then as many more.
    const lists = Array.from({ length: 200 }, () => new Array<number>(998).fill(0));
    const copied = (more: number) => plainCopy({ lists: [...lists.slice(1), [...lists[0]!, ...list.slice(0, more)]] });
    expect(copied(198) !== undefined).toBe(true);
    expect(copied(199) === undefined).toBe(true);
    expect(plainCopy([list])).toBeUndefined();
  });

  const fields = Object.fromEntries(list.map((value, index) => [`f${index}`, value]));
  it('counts the fields of an object', () => {
    expect(Object.keys(plainCopy(fields) as object)).toHaveLength(199_999);
  });
  const more = { ...fields, more: 0 };
  it('copies no object that has one field more', () => {
    expect(plainCopy(more) === undefined).toBe(true);
  });

  it('does not walk a list that is longer than that', () => {
    let walked = 0;
    const list = new Proxy([], {
      get: (target, key) => (key === 'length' ? 200_001 : (walked++, Reflect.get(target, key) as unknown)),
    });
    expect(plainCopy(list)).toBeUndefined();
    expect(walked).toBe(0);
  });
});

describe('a document that is not plain JSON', () => {
  it.each([
    ['an item that is undefined', { list: [1, undefined] }, 'list.1 missing'],
    ['the item, and no other field of a list', { list: Object.assign([undefined], { '0s': NaN }) }, 'list.0 missing'],
    ['the field in an item', { list: [{ a: undefined, b: [NaN] }] }, 'list.0.b.0 wrong-type'],
  ])('is refused by the place of %s', (_what, document, expected) => {
    expect(issuesOf(() => plainInput(document, PLAIN_JSON))).toEqual([expected]);
  });
});
