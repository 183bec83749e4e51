import { describe, expect, it } from 'vitest';
import { attempt, InputError, testedOneRepMax } from '../../src/index.js';
import { issue } from '../../src/answer/issues.js';
import { A_FORM } from '../../src/answer/needs.js';
import { propagate } from '../../src/study/index.js';

const x = { value: 10, standardDeviation: 1 };
const pulse = { value: 60, standardDeviation: 5 };
const of = (more: object): readonly string[] => {
  const result = attempt(propagate as (input: unknown) => unknown, {
    inputs: { x, pulse },
    pipeline: (draw: { x: number }) => draw.x,
    draws: 100,
    ...more,
  });
  return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
};
const giving = (value: unknown) => of({ pipeline: () => value });
const answer = testedOneRepMax({ load: 100 });

describe('a pipeline', () => {
  it.each([
    ['a number', 5, []],
    ['an answer', answer, []],
    ['an answer without an error', { value: 5 }, []],
    ['an answer on a log scale', { value: 5, scale: 'log', standardDeviation: 0.1 }, []],
    ['NaN', NaN, ['pipeline wrong-type']],
    ['an infinity', Infinity, ['pipeline wrong-type']],
    ['a text', '5', ['pipeline wrong-type']],
    ['null', null, ['pipeline wrong-type']],
    ['nothing', undefined, ['pipeline wrong-type']],
    ['an answer without a value', {}, ['pipeline wrong-type']],
    ['a value in words', { value: '5' }, ['pipeline wrong-type']],
    ['an error below 0', { value: 5, standardDeviation: -1 }, ['pipeline wrong-type']],
    ['an error in words', { value: 5, standardDeviation: '1' }, ['pipeline wrong-type']],
    ['0 on a log scale', { value: 0, scale: 'log' }, ['pipeline wrong-type']],
    ['less on a log scale', { value: -1, scale: 'log' }, ['pipeline wrong-type']],
    ['0 on its own scale', { value: 0 }, []],
  ])('may give %s, or not', (_what, value, expected) => {
    expect(giving(value)).toEqual(expected);
  });

  it('may refuse draws, but not all, and what it throws besides is thrown on', () => {
    const refuse = (): never => {
      throw new InputError([issue('out-of-range', ['x'], A_FORM, 'y')]);
    };
    expect(of({ pipeline: refuse })).toEqual(['inputs wrong-relation']);
    // Of two draws there is a spread, of one there is none.
    const only = (count: number) => {
      let left = count;
      return of({ pipeline: () => (left-- > 0 ? left : refuse()) });
    };
    expect([only(1), only(0)]).toEqual([['inputs wrong-relation'], ['inputs wrong-relation']]);
    expect(only(2)).toEqual([]);
    const own = () => {
      throw new RangeError('own');
    };
    expect(() => of({ pipeline: own })).toThrow(RangeError);
  });
});

describe('correlations', () => {
  const together = (...list: unknown[]) => of({ correlations: list });
  const pair = (a: unknown, b: unknown, value: unknown = 0.5) => ({ between: [a, b], value });
  it.each([
    [[], ['correlations wrong-type']],
    [[pair('x', 'pulse')], []],
    [[pair('pulse', 'x', -0.999)], []],
    [[pair('x', 'x')], ['correlations.0.between wrong-relation']],
    [[pair('x', 'other')], ['correlations.0.between wrong-relation']],
    [[pair('other', 'x')], ['correlations.0.between wrong-relation']],
    [[{ between: ['x'], value: 0.5 }], ['correlations.0.between wrong-relation']],
    [[{ between: ['x', 'pulse', 'x'], value: 0.5 }], ['correlations.0.between wrong-relation']],
    [[pair('x', 'pulse', 1)], ['correlations.0.value out-of-range']],
    [[pair('x', 'pulse', -1)], ['correlations.0.value out-of-range']],
    [[pair('x', 'pulse'), pair('pulse', 'x')], ['correlations.1.between wrong-relation']],
  ])('%j', (list, expected) => {
    expect(together(...list)).toEqual(expected);
  });

  it('are refused where they cannot hold together', () => {
    const inputs = { a: x, b: x, c: x };
    const list = [pair('a', 'b', 0.9), pair('b', 'c', 0.9), pair('a', 'c', -0.9)];
    expect(of({ inputs, correlations: list })).toEqual(['correlations wrong-relation']);
    const pipeline = ({ a }: { a: number }): number => a;
    expect(of({ inputs, pipeline, correlations: [pair('a', 'b', 0.7), pair('b', 'c', 0.7)] })).toEqual([]);
  });
});

describe('the closed form', () => {
  const closed = (more: object) =>
    propagate({ inputs: { x, y: x }, pipeline: ({ x: a, y: b }) => a - b, draws: 100, ...more }).closedForm!;
  // Var(a − b) = 1 + 1 − 2 r.
  it('has a part of the variance that inputs share, where they are correlated', () => {
    const own = closed({});
    expect([own.standardDeviation, 'correlated' in own, 'scale' in own]).toEqual([Math.SQRT2, false, false]);
    const less = closed({ correlations: [pair2(0.5)] });
    expect([less.standardDeviation, less.correlated]).toEqual([expect.closeTo(1, 9), expect.closeTo(-1, 9)]);
    const more = closed({ correlations: [pair2(-0.5)] });
    expect([more.standardDeviation, more.correlated]).toEqual([expect.closeTo(Math.sqrt(3), 9), expect.closeTo(1, 9)]);
  });
});

function pair2(value: number) {
  return { between: ['x', 'y'] as const, value };
}
