import { describe, expect, it } from 'vitest';
import { attempt, InputError, testedOneRepMax, type Answer } from '../../src/index.js';
import { issue } from '../../src/answer/issues.js';
import type { IssueCode } from '../../src/answer/messages.js';
import { A_FORM } from '../../src/answer/needs.js';
import { eachRow, flagCodes } from '../../src/study/index.js';

/** A tested maximum [kg], with what a row asks for put in its place. */
const made = (row: object): Answer => ({ ...testedOneRepMax({ load: 100 }), ...row }) as Answer;
const bare = ({ value = 100, ...row }: { value?: number }): Answer => {
  const { lower: _l, upper: _u, standardDeviation: _s, level: _v, scale: _c, errors: _e, ...rest } = made({ value });
  return { ...rest, ...row } as Answer;
};
const issuesOf = (fields: unknown, calculate: unknown = made): readonly string[] => {
  const result = attempt(() => eachRow(calculate as never, fields as never), {});
  return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
};

describe('a calculation of each row', () => {
  it('is given the fields of the row, without what is missing', () => {
    const rows: unknown[] = [];
    const keep = (row: object): Answer => (rows.push(row), made({}));
    eachRow(keep as never, { a: [1, null, 3, NaN], b: 'same', c: ['x', undefined, '', null], d: { e: [1] } });
    expect(rows).toEqual([
      { a: 1, b: 'same', c: 'x', d: { e: [1] } },
      { b: 'same', d: { e: [1] } },
      { a: 3, b: 'same', c: '', d: { e: [1] } },
      { b: 'same', d: { e: [1] } },
    ]);
  });

  it('has the numbers of its answer, and flags of what is missing there or cautioned', () => {
    const numbers = { value: [50, 60], lower: [40, 41], upper: [70, 71], standardDeviation: [5, 6] };
    const got = eachRow(made as never, numbers);
    for (const name of ['value', 'lower', 'upper', 'standardDeviation'] as const)
      expect(Array.from(got[name])).toEqual(numbers[name]);
    expect(Array.from(got.flag)).toEqual([0, 0]);
    const coded = (code: string) => ({ severity: 'caution', code, text: code });
    const cautions = [
      [],
      [coded('outside-fitted-range')],
      [coded('blood-pressure-refer'), coded('ceiling-reached')],
      [coded('estimate-is-a-start')],
    ];
    const flagged = eachRow(((row: { c: unknown }) => made({ cautions: row.c })) as never, { c: cautions });
    expect(Array.from(flagged.flag, (flag) => [...flagCodes(flag)].sort())).toEqual([
      [],
      ['outside-fitted-range'],
      ['blood-pressure-refer', 'ceiling-reached'],
      [],
    ]);
    const open = eachRow(bare as never, { value: [80, 90] });
    expect(Array.from(open.flag, flagCodes)).toEqual([['no-interval'], ['no-interval']]);
    expect([open.lower, open.upper, open.standardDeviation].map((column) => column[1])).toEqual([NaN, NaN, NaN]);
  });

  it('is about what its answers have in common', () => {
    const [a, b, c] = ['readings-exact', 'occlusion-exact', 'normal-interval'].map((code) => ({ code }));
    const about = (...lists: unknown[]) =>
      eachRow(((row: { of: unknown }) => made({ assumptions: row.of })) as never, { of: lists }).about.assumptions;
    expect(about([a, b], [a, b])).toEqual([a, b]);
    expect(about([a, b, c], [c, a])).toEqual([a, c]);
    expect(about([a], [a, b], [b, a])).toEqual([a]);
    expect(about([a, b], [b])).toEqual([b]);
    expect(about([a], [])).toEqual([]);
    const log = eachRow(((row: object) => made({ ...row, scale: 'log' })) as never, { value: [1, 2] });
    expect([log.about.scale, log.about.level]).toEqual(['log', 0.95]);
    const linear = eachRow(bare as never, { value: [1, 2] });
    expect(Object.keys(linear.about).sort()).toEqual(['assumptions', 'equation', 'evidence', 'kind', 'level', 'unit']);
    const ownEquation = { formula: 'x', symbols: {} };
    expect(eachRow(((row: object) => made({ ...row, ownEquation })) as never, { value: [1] }).about).toMatchObject({
      ownEquation,
    });
  });

  it('has no number where it is refused, and the flag says why', () => {
    const refusing = ({ code }: { code?: string }): Answer => {
      if (code === undefined) return made({});
      const issues = code === 'none' ? [] : code.split('+').map((one) => issue(one as IssueCode, ['x'], A_FORM, 'y'));
      throw new InputError(issues);
    };
    const codes = [undefined, 'missing', 'wrong-relation', 'out-of-range', 'none', 'missing+wrong-relation'];
    const got = eachRow(refusing as never, { code: codes });
    expect(Array.from(got.flag, (flag) => [...flagCodes(flag)].sort())).toEqual([
      [],
      ['missing'],
      ['relation'],
      ['impossible'],
      ['impossible'],
      ['missing', 'relation'],
    ]);
    for (const column of [got.value, got.lower, got.upper, got.standardDeviation])
      expect(Array.from(column, Number.isNaN)).toEqual([false, true, true, true, true, true]);
    // Where every row is, the first says which slip it was.
    expect(issuesOf({ code: ['missing', 'out-of-range'] }, refusing)).toEqual([
      'calculate wrong-relation',
      'calculate.0.x missing',
    ]);
  });

  it('is of one kind in all rows', () => {
    for (const [name, values] of [
      ['kind', ['training-load', 'one-repetition-maximum']],
      ['unit', ['kg', '[lb_av]']],
      ['equation', ['tested', 'epley-1985']],
      ['scale', ['log', undefined]],
    ] as const) {
      expect(issuesOf({ [name]: values }, made)).toEqual([
        `calculate.1.${name} ${values[1] === undefined ? 'missing' : 'wrong-relation'}`,
      ]);
    }
  });

  it.each([
    [5, undefined, [' wrong-type']],
    [null, undefined, [' wrong-type']],
    [undefined, undefined, [' missing']],
    [[[1, 2]], undefined, [' wrong-type']],
    [{ value: 5 }, undefined, [' wrong-relation']],
    [{}, undefined, [' wrong-relation']],
    [{ value: [1, 2], load: [1] }, undefined, ['load wrong-relation']],
    [{ value: [] }, undefined, ['calculate wrong-relation']],
    [{ value: [1] }, 5, ['calculate wrong-type']],
    [{ value: [1] }, () => undefined, ['calculate.0 missing']],
    [{ value: [1] }, () => ({ value: NaN }), ['calculate.0 wrong-type']],
    [{ value: [1] }, () => ({ value: '5' }), ['calculate.0 wrong-type']],
  ])('refuses %j by %s', (fields, calculate, expected) => {
    expect(issuesOf(fields, calculate)).toEqual(expected);
  });

  it('takes a hundred fields, and no more', () => {
    const fields = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, at) => [`f${at}`, [1]]));
    expect(issuesOf(fields(100), () => made({}))).toEqual([]);
    expect(issuesOf(fields(101), () => made({}))).toEqual([' wrong-relation']);
    const breaks = {
      get value(): never {
        throw new RangeError('own');
      },
    };
    expect(issuesOf(breaks)).toEqual([' unreadable']);
    const own = () => {
      throw new RangeError('own');
    };
    expect(() => eachRow(own as never, { value: [1] })).toThrow(RangeError);
  });
});
