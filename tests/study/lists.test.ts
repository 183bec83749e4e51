import { describe, expect, it } from 'vitest';
import type { InputIssue } from '../../src/index.js';
import { isList, numbersOf, pairRows, peopleOf, reportNoLogarithm } from '../../src/study/lists.js';

/** What a reader gives, and its issues as `path code`. */
function read<T>(reader: (issues: InputIssue[]) => T): [found: T, issues: string[]] {
  const issues: InputIssue[] = [];
  const found = reader(issues);
  return [found, issues.map(({ path, code }) => `${path.join('.')} ${code}`)];
}
const numbers = (value: unknown, rows?: number) => {
  const [found, issues] = read((to) => numbersOf(value, ['x'], to, rows));
  return [Array.from(found), issues];
};
const people = (value: unknown, rows: number) => {
  const [found, issues] = read((to) => peopleOf(value, ['person'], to, rows));
  return [Array.from(found ?? []), issues];
};

describe('a list', () => {
  it('is an array or a typed array, and nothing else', () => {
    const lists = [[], [1], new Float64Array(2), new Uint8Array(1)];
    expect(lists.map(isList)).toEqual(lists.map(() => true));
    const { proxy, revoke } = Proxy.revocable([], {});
    revoke();
    const others = [null, undefined, 'text', { length: 1 }, new DataView(new ArrayBuffer(8)), new Set([1]), proxy];
    expect(others.map(isList)).toEqual(others.map(() => false));
  });

  it('of numbers has NaN for what is missing or not finite', () => {
    expect(numbers([1, null, undefined, NaN, Infinity, -Infinity, -0.5])).toEqual([
      [1, NaN, NaN, NaN, NaN, NaN, -0.5],
      [],
    ]);
    expect(numbers(new Float32Array([0.5, 2]), 2)).toEqual([[0.5, 2], []]);
    expect(numbers([])).toEqual([[], []]);
  });

  it.each([
    ['a text in it', [1, '2', 3], undefined, ['x.1 wrong-type']],
    ['a logical value in it', [true], undefined, ['x.0 wrong-type']],
    ['a number that is too large', [1, 1e200], undefined, ['x.1 out-of-range']],
    ['one that is too small', [-1e200], undefined, ['x.0 out-of-range']],
    ['too few rows', [1, 2], 3, ['x wrong-type']],
    ['too many', [1, 2], 1, ['x wrong-type']],
    ['no list', '12', undefined, ['x wrong-type']],
    ['more than ten million', { length: 1e7 + 1 }, undefined, ['x wrong-type']],
    [
      'one that breaks',
      new Proxy([1], {
        get: (list, name) => {
          if (name === '0') throw new RangeError('own');
          return Reflect.get(list, name) as unknown;
        },
      }),
      undefined,
      ['x unreadable'],
    ],
  ])('of numbers is refused for %s', (_what, value, rows, issues) => {
    expect(numbers(value, rows)[1]).toEqual(issues);
  });
});

describe('people of rows', () => {
  it('are numbered as they are met, whatever they are called', () => {
    expect(people(['b', 'a', 'b', 'c', 'a'], 5)).toEqual([[0, 1, 0, 2, 1], []]);
    expect(people([7, 3, 7, -1, 3, -1, 2.5, 2.5], 8)).toEqual([[0, 1, 0, 2, 1, 2, 3, 3], []]);
    // A number and its text are two names; places are looked up below the number of rows.
    expect(people([1, '1', 0, 5, 4, 5, 4], 7)).toEqual([[0, 1, 2, 3, 4, 3, 4], []]);
    expect(people([2, 2], 2)).toEqual([[0, 0], []]);
    expect(people([0, 'x', 0], 3)).toEqual([[0, 1, 0], []]);
    expect(people(new Int32Array([9, 9, 8]), 3)).toEqual([[0, 0, 1], []]);
  });

  it('are nobody where there is no name', () => {
    expect(people([null, undefined, '', NaN, 'a'], 5)).toEqual([[-1, -1, -1, -1, 0], []]);
  });

  it('are not asked of rows that could not be read, nor where they are left out', () => {
    expect([people(['a'], 0), people(undefined, 2)]).toEqual([
      [[], []],
      [[], []],
    ]);
  });

  it.each([
    ['a name that is none', ['a', true], 2, ['person.1 wrong-type']],
    ['another length', ['a'], 2, ['person wrong-type']],
    ['no list', 'ab', 2, ['person wrong-type']],
  ])('are refused for %s', (_what, value, rows, issues) => {
    expect(people(value, rows)[1]).toEqual(issues);
  });
});

describe('rows of pairs', () => {
  const measured = Float64Array.of(1, NaN, 3, NaN, 5, 6);
  const estimated = Float64Array.of(1, 2, NaN, NaN, 5, 6);
  it('have both values and a person, and the others are counted by what they lack', () => {
    const { kept, missing } = pairRows(measured, estimated, undefined);
    expect([Array.from(kept), missing]).toEqual([[0, 4, 5], { measured: 1, estimated: 1, both: 1 }]);
    const whose = pairRows(measured, estimated, Int32Array.of(0, 0, 0, 0, -1, 1));
    expect([Array.from(whose.kept), whose.missing]).toEqual([
      [0, 5],
      { measured: 1, estimated: 1, both: 1, person: 1 },
    ]);
  });

  it('have no logarithm at zero and below: the first is named', () => {
    const column = Float64Array.of(1, 0, -1, 2);
    const named = (rows: readonly number[]) =>
      read((issues) => reportNoLogarithm(column, rows, ['tests', 1], issues))[1];
    expect([named([0, 3]), named([0, 1, 2]), named([3, 2])]).toEqual([
      [],
      ['tests.1.1 out-of-range'],
      ['tests.1.2 out-of-range'],
    ]);
  });
});
