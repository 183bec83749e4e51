import { describe, expect, it } from 'vitest';
import { attempt, InputError } from '../../src/index.js';
import { issue } from '../../src/answer/issues.js';
import { A_FORM } from '../../src/answer/needs.js';
import { bootstrap, conformal, crossValidate } from '../../src/study/index.js';

const rows = Array.from({ length: 20 }, (_, row) => row + 1);
const first = (list: readonly number[]): number => list[0]!;
const issuesOf = (call: () => unknown): readonly string[] => {
  const result = attempt(() => call(), {});
  return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
};
const hostile = new Proxy([1, 2, 3], {
  get: () => {
    throw new RangeError('own');
  },
});

describe('the bootstrap', () => {
  const of = (more: object) => issuesOf(() => bootstrap({ rows, statistic: first, draws: 200, ...more } as never));
  it.each([
    [{}, []],
    [{ rows: [1, 2, 3] }, []],
    [{ rows: [1, 2] }, ['rows wrong-type']],
    [{ rows: Array(10_001).fill(1) }, ['rows wrong-type']],
    [{ rows: 'abc' }, ['rows wrong-type']],
    [{ rows: 'abc', person: [1, 2, 3] }, ['rows wrong-type']],
    [{ rows: undefined }, ['rows missing']],
    [{ statistic: 5 }, ['statistic wrong-type']],
    [{ statistic: () => NaN }, ['statistic wrong-type']],
    [{ statistic: () => '5' }, ['statistic wrong-type']],
    [{ draws: 199 }, ['draws out-of-range']],
    [{ draws: 20_001 }, ['draws out-of-range']],
    [{ seed: 0.5 }, ['seed not-whole']],
    [{ person: [1] }, ['person wrong-type']],
    [{ person: rows.map((_, row) => (row === 2 ? null : row)) }, ['person.2 missing']],
    [{ person: rows.map((_, row) => row % 2) }, ['person wrong-relation']],
    [{ person: rows.map((_, row) => row % 3) }, []],
    [{ people: 1 }, ['people unknown-field']],
  ])('%j', (more, expected) => {
    expect(of(more)).toEqual(expected);
  });

  it('takes no list that cannot be read', () => {
    expect(of({ rows: hostile })).toEqual(['rows wrong-type']);
  });

  it('leaves out draws that are refused, and not those that break', () => {
    const refusing = (when: (list: readonly number[]) => boolean) => (list: readonly number[]) => {
      if (when(list)) throw new InputError([issue('wrong-type', ['x'], A_FORM, 'y')]);
      return first(list);
    };
    const some = bootstrap({ rows, statistic: refusing((list) => first(list) > 10), draws: 400 });
    expect(some.refused).toBeGreaterThan(120);
    expect(some.refused).toBeLessThan(280);
    // The rows as they are must have a figure.
    expect(of({ statistic: refusing(() => true) })).toEqual(['x wrong-type']);
    const own = () => {
      throw new RangeError('own');
    };
    expect(() => bootstrap({ rows, statistic: own, draws: 200 })).toThrow(RangeError);
  });
});

describe('cross-validation', () => {
  const of = (more: object) =>
    issuesOf(() => crossValidate({ rows, fit: () => () => 1, measured: (row: number) => row, ...more } as never));
  it.each([
    [{}, []],
    [{ folds: 20 }, []],
    [{ folds: 21 }, ['folds out-of-range']],
    [{ folds: 1 }, ['folds out-of-range']],
    [{ fit: 5 }, ['fit wrong-type']],
    [{ fit: () => 5 }, ['fit wrong-type']],
    [{ fit: () => () => Infinity }, ['fit wrong-type']],
    [{ measured: 'x' }, ['measured wrong-type']],
    [{ measured: () => null }, ['measured wrong-type']],
    [{ rows: [1, 2] }, ['rows wrong-type']],
    [{ rows: [1, 2], person: [1, 2], folds: 5 }, ['rows wrong-type']],
    [{ person: 5, folds: 20 }, ['person wrong-type']],
    [{ person: rows.map((_, row) => row % 2) }, ['person wrong-relation']],
  ])('%j', (more, expected) => {
    expect(of(more)).toEqual(expected);
  });

  it('parts rows by chance, each fold as large as the others but one', () => {
    const folds = (seed: number, count: number) =>
      crossValidate({ rows, fit: () => () => 1, measured: (row) => row, folds: count, seed }).fold;
    expect(Array.from(folds(1, 5))).not.toEqual(Array.from(folds(2, 5)));
    for (const count of [2, 3, 7, 20]) {
      const sizes = Array.from({ length: count }, (_, fold) => folds(1, count).filter((of) => of === fold).length);
      expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(20);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
    }
  });
});

describe('conformal intervals', () => {
  const of = (measured: unknown, predicted: unknown, options: object = {}) =>
    issuesOf(() => conformal(measured as never, predicted as never, options));
  const changed = (at: number, value: unknown) => rows.map((row, index) => (index === at ? value : row));
  it('are refused for lists, logarithms and people that do not do', () => {
    expect(of(rows, rows)).toEqual([]);
    expect(of(rows.slice(0, 19), rows.slice(0, 19))).toEqual([]);
    expect(of(rows.slice(0, 18), rows.slice(0, 18))).toEqual(['measured wrong-relation']);
    expect(of(5, rows)).toEqual(['measured wrong-type']);
    expect(of(rows, 5)).toEqual(['predicted wrong-type']);
    expect(of(rows, rows, { scale: 'log' })).toEqual([]);
    expect(of(changed(3, 0), rows, { scale: 'log' })).toEqual(['measured.3 out-of-range']);
    expect(of(rows, changed(4, -1), { scale: 'log' })).toEqual(['predicted.4 out-of-range']);
    expect(of(changed(3, 0), changed(5, 0), { scale: 'log' })).toEqual([
      'measured.3 out-of-range',
      'predicted.5 out-of-range',
    ]);
    expect(of(changed(3, 0), rows)).toEqual([]);
    expect(of(rows, rows, { scale: 'root' })).toEqual(['options.scale not-one-of']);
    expect(of(rows, rows, { person: rows.map((row) => row % 18) })).toEqual(['measured wrong-relation']);
    expect(of(rows, rows, { person: rows.map((row) => row % 19) })).toEqual([]);
  });

  it('are of the errors in order, on the scale that is asked for', () => {
    const apart = [5, -3, 8, 1, -9, 2, 4, 7, -6, 10, 11, -12, 13, 14, 15, 16, 17, -18, 19];
    const measured = apart.map(() => 100);
    // Of 19 people the 19th: ⌈0.95 × 20⌉, and 19 / 20 is the level.
    const got = conformal(
      measured,
      apart.map((by) => 100 + by),
    );
    expect([got.halfWidth, got.level, got.people]).toEqual([19, 0.95, 19]);
    const log = conformal(
      measured,
      apart.map((by) => 100 * Math.exp(by / 100)),
      { scale: 'log' },
    );
    expect(log.halfWidth).toBeCloseTo(Math.exp(0.19), 12);
  });
});
