import jstat from 'jstat';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { bootstrap, conformal, crossValidate } from '../../src/study/index.js';
import { refusalPage } from '../support/invariants.js';

const close = (received: readonly number[], expected: readonly number[]) =>
  received.forEach((value, at) => expect(value).toBeCloseTo(expected[at]!, 9));

/** The quantile of a sample that R calls type 7. */
const type7 = (sorted: readonly number[], share: number): number => {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
};

describe('the bootstrap', () => {
  // Formulas: bias-corrected and accelerated interval, J Am Stat Assoc 1987;82(397):171–185; normal distribution of jstat.
  it.each([
    ['the mean', [3, 1, 4, 1, 5, 9, 2, 6], mean],
    ['one that few samples move', [7, 7, 7, 7, 7, 7, 9], (list: number[]) => Math.max(...list)],
    ['one below most', [1, 2, 3, 10], (list: number[]) => Math.min(...list)],
  ])('works out its figures from what it drew: %s', (_what, rows, statistic) => {
    const figures: number[] = [];
    const got = bootstrap({
      rows,
      draws: 200,
      statistic: (list) => {
        const figure = statistic([...list]);
        figures.push(figure);
        return figure;
      },
    });
    const [value, drawn, leftOut] = [figures[0]!, figures.slice(1, 201), figures.slice(201)];
    expect(leftOut).toHaveLength(rows.length);
    const sorted = [...drawn].sort((a, b) => a - b);
    close(
      [got.value, got.bias, got.standardError, got.percentile.lower, got.percentile.upper],
      [value, mean(drawn) - value, sampleStandardDeviation(drawn), type7(sorted, 0.025), type7(sorted, 0.975)],
    );
    const apart = leftOut.map((one) => mean(leftOut) - one);
    const second = apart.reduce((sum, one) => sum + one ** 2, 0);
    const a = second > 0 ? apart.reduce((sum, one) => sum + one ** 3, 0) / (6 * second ** 1.5) : 0;
    const below = drawn.reduce((sum, one) => sum + (one < value ? 1 : one === value ? 0.5 : 0), 0) / 200;
    const shift = jstat.normal.inv(Math.min(Math.max(below, 0.5 / 200), 1 - 0.5 / 200), 0, 1);
    const end = (z: number) => type7(sorted, jstat.normal.cdf(shift + (shift + z) / (1 - a * (shift + z)), 0, 1));
    const [lower, upper] = [end(-1.959963984540054), end(1.959963984540054)];
    expect(Math.abs(got.lower - lower)).toBeLessThan(1e-6);
    expect(Math.abs(got.upper - upper)).toBeLessThan(1e-6);
    expect([got.rows, got.draws, got.seed, got.refused]).toEqual([rows.length, 200, 1, 0]);
    expect(got).not.toHaveProperty('people');
  });

  it('is of people where they are given', () => {
    const sizes = new Set<number>();
    const statistic = (list: readonly number[]) => {
      sizes.add(list.length);
      return list[0]!;
    };
    const got = bootstrap({ rows: [1, 2, 3, 4], person: ['a', 'a', 'b', 'c'], statistic, draws: 200 });
    expect([got.rows, got.people]).toEqual([4, 3]);
    // Three people of one or two rows each, and two where one is left out.
    expect([...sizes].sort()).toEqual([2, 3, 4, 5, 6]);
  });
});

describe('cross-validation', () => {
  const rows = [10, 12, 17, 11, 30, 21, 8];
  const fit = (list: readonly number[]) => {
    const middle = mean([...list]);
    return () => middle;
  };
  it.each([2, 3, 7])('predicts each row without its fold: %d folds', (folds) => {
    const got = crossValidate({ rows, folds, fit, measured: (row) => row + 1 });
    const predicted = rows.map((_, row) => mean(rows.filter((__, other) => got.fold[other] !== got.fold[row])));
    close(got.predicted, predicted);
    expect(got.measured).toEqual(rows.map((row) => row + 1));
    expect(new Set(got.fold)).toEqual(new Set(Array.from({ length: folds }, (_, fold) => fold)));
    const errors = predicted.map((value, row) => value - rows[row]! - 1);
    close(
      [got.bias, got.rootMeanSquareError, got.meanAbsoluteError],
      [mean(errors), Math.sqrt(mean(errors.map((error) => error ** 2))), mean(errors.map(Math.abs))],
    );
    expect([got.folds, got.seed]).toEqual([folds, 1]);
  });

  it('keeps the rows of a person in one fold, ten folds or as many as there are people', () => {
    const person = ['a', 'b', 'a', 'c', 'b', 'a', 'c'];
    const { fold, folds } = crossValidate({ rows, person, fit, measured: (row) => row });
    expect(folds).toBe(3);
    const of = new Map(person.map((name, row) => [name, fold[row]]));
    expect(fold).toEqual(person.map((name) => of.get(name)));
    const many = Array.from({ length: 12 }, (_, row) => row);
    expect(crossValidate({ rows: many, fit, measured: (row) => row }).folds).toBe(10);
  });
});

describe('conformal intervals', () => {
  const measured = Array.from({ length: 20 }, (_, row) => 100 + row);
  const predicted = measured.map((value, row) => value + ((row * 7) % 20) - 5);
  it('are as wide as the error of that rank, of one row a person', () => {
    const errors = measured.map((value, row) => Math.abs(value - predicted[row]!)).sort((a, b) => a - b);
    // ⌈0.95 × 21⌉ = 20.
    expect(conformal([...measured, NaN], [...predicted, 5])).toEqual({
      scale: 'difference',
      halfWidth: errors[19],
      people: 20,
      level: 20 / 21,
      missing: 1,
    });
  });
});

it('refuses what cannot be resampled, as the golden page says', async () => {
  const rows = [1, 2, 3, 4];
  const boot = { rows, statistic: mean, draws: 200 };
  const cross = { rows, fit: () => () => 1, measured: (row: number) => row };
  const hostile = new Proxy(rows, {
    get: () => {
      throw new RangeError('own');
    },
  });
  const long = Array.from({ length: 20 }, (_, row) => row + 1);
  const changed = (at: number, to: unknown) => long.map((row, index) => (index === at ? to : row));
  const cases = {
    'two rows': ['bootstrap', { ...boot, rows: [1, 2] }],
    'too many rows': ['bootstrap', { ...boot, rows: Array(10_001).fill(1) }],
    'rows in words': ['bootstrap', { ...boot, rows: 'abc' }],
    'rows that throw': ['bootstrap', { ...boot, rows: hostile }],
    'two people': ['bootstrap', { ...boot, person: [1, 1, 2, 2] }],
    'no calculation': ['bootstrap', { ...boot, statistic: 5 }],
    'no figure': ['bootstrap', { ...boot, statistic: () => NaN }],
    'few draws': ['bootstrap', { ...boot, draws: 199 }],
    'half a seed': ['bootstrap', { ...boot, seed: 0.5 }],
    'many folds': ['crossValidate', { ...cross, folds: 5 }],
    'no predictor': ['crossValidate', { ...cross, fit: () => 5 }],
    'no prediction': ['crossValidate', { ...cross, fit: () => () => '5' }],
    'nothing measured': ['crossValidate', { ...cross, measured: () => null }],
    'few pairs': ['conformal', [long.slice(2), long.slice(2)]],
    'no list': ['conformal', [long, 5]],
    'no logarithm of a measurement': ['conformal', [changed(3, 0), changed(3, -2), { scale: 'log' }]],
    'no logarithm of an estimate': ['conformal', [long, changed(4, -1), { scale: 'log' }]],
    'few people': ['conformal', [long, long, { person: long.map((row) => row % 18) }]],
  } as const;
  const call = ([name, input]: readonly [string, unknown]) => {
    if (name === 'conformal') return conformal(...(input as Parameters<typeof conformal>));
    return name === 'bootstrap' ? bootstrap(input as never) : crossValidate(input as never);
  };
  await expect(refusalPage(call as never, cases)).toMatchFileSnapshot('refused/resampling.txt');
});
