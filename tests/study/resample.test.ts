import fc from 'fast-check';
import { linearRegression, sampleCorrelation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  agreement,
  bootstrap,
  conformal,
  crossValidate,
  equationFromFit,
  fitOcclusionEquation,
  type Bootstrap,
  type FitRow,
} from '../../src/study/index.js';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';
import { expectPlainJson } from '../support/answers.js';
import { expectDigits } from '../support/digits.js';
import { fitInput, fittedExample } from '../support/fitted.js';
import judge from './resample.json' with { type: 'json' };

const x = [151, 148, 170, 166, 158, 149, 181, 163, 172, 155, 160, 190, 147, 168, 159];
const y = [140, 150, 165, 170, 150, 152, 170, 160, 180, 150, 166, 180, 140, 161, 166];
const pairs = x.map((value, row) => ({ x: value, y: y[row]! }));
const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const figures = ({ value, standardError, bias, lower, upper, percentile }: Bootstrap) => [
  value,
  standardError,
  bias,
  lower,
  upper,
  percentile.lower,
  percentile.upper,
];

describe('the bootstrap', () => {
  // Source: R, tests/study/resample.R, with the same draws.
  it('is that of R, draw for draw', () => {
    expect(judge.word10000).toEqual([4123659995]);
    const one = bootstrap({ rows: pairs, statistic: (rows) => meanOf(rows.map((row) => row.x)), draws: 1000, seed: 7 });
    expectDigits(figures(one), judge.mean, 10);
    const two = bootstrap({
      rows: pairs,
      statistic: (rows) =>
        sampleCorrelation(
          rows.map((row) => row.x),
          rows.map((row) => row.y),
        ),
      draws: 500,
    });
    expectDigits(figures(two), judge.correlation, 8);
    // The package boot, with other draws.
    [one.lower, one.upper].forEach((end, index) => expect(Math.abs(end - judge.bootPackage[index]!)).toBeLessThan(1.5));
  });
  it('draws people whole', () => {
    const person = pairs.map((_, row) => `p${Math.floor(row / 3)}`);
    const got = bootstrap({
      rows: pairs,
      person,
      statistic: (rows) => meanOf(rows.map((row) => row.x - row.y)),
      draws: 400,
      seed: 3,
    });
    expectDigits(figures(got), judge.person, 10);
    expect([got.people, got.rows, got.refused]).toEqual([5, 15, 0]);
    expectPlainJson(got);
  });
  it('counts draws that the statistic refuses, and gives no NaN where nothing varies', () => {
    const flat = bootstrap({ rows: [5, 5, 5, 5], statistic: meanOf, draws: 200 });
    expect([flat.value, flat.lower, flat.upper, flat.standardError]).toEqual([5, 5, 5, 0]);
    expectPlainJson(flat);
    const some = bootstrap({
      rows: pairs.slice(0, 4),
      statistic: (rows) =>
        agreement(
          rows.map((row) => row.x),
          rows.map((row) => row.y),
          { scale: rows.every((row) => row === rows[0]) ? ('x' as never) : 'log' },
        ).bias.value,
      draws: 2000,
    });
    expect(some.refused).toBeGreaterThan(0);
  });
  it('refuses what it cannot draw from', () => {
    const of = (more: object) => () => bootstrap({ rows: x, statistic: meanOf, ...more } as never);
    expect(of({ rows: [1, 2] })).toThrow(/rows must be a list of 3 to 10000 items/);
    expect(of({ statistic: 5 })).toThrow(/statistic must be a function/);
    expect(of({ statistic: () => NaN })).toThrow(/statistic must be a function that returns a finite number/);
    expect(of({ person: [1, 2] })).toThrow(/person/);
    expect(of({ person: x.map((_, row) => row % 2) })).toThrow(/at least 3 people/);
    expect(of({ person: x.map((_, row) => (row === 2 ? null : row)) })).toThrow(/person\[2\]/);
    expect(of({ draws: 10 })).toThrow(/draws/);
    expect(
      of({
        statistic: () => {
          throw new TypeError('mine');
        },
      }),
    ).toThrow(TypeError);
  });
});

describe('cross-validation', () => {
  const fit = (rows: readonly FitRow[]) => {
    const { apply } = equationFromFit(fitOcclusionEquation({ ...fitInput, rows }));
    return (row: FitRow) => apply({ limb: 'leg', posture: 'seated', cuffWidthCm: 11, ...row } as never);
  };
  // Source: R, the leave-one-out error of tests/study/judge.R, by way of the fit.
  it('is leave-one-out with as many folds as rows', () => {
    const { rows } = fitInput;
    const got = crossValidate({ rows, fit, measured: (row) => row.valueMmHg, folds: rows.length });
    expect(got.rootMeanSquareError).toBeCloseTo(fittedExample.leaveOneOutMmHg, 4);
  });
  // Source: simple-statistics, fitted to the rows outside each fold.
  it('predicts each fold from the others', () => {
    const got = crossValidate({
      rows: pairs,
      fit: (rows) => {
        const { m, b } = linearRegression(rows.map((row) => [row.x, row.y]));
        return (row) => b + m * row.x;
      },
      measured: (row) => row.y,
      folds: 4,
      seed: 2,
    });
    for (const [row, value] of got.predicted.entries()) {
      const others = pairs.filter((_, other) => got.fold[other] !== got.fold[row]);
      const { m, b } = linearRegression(others.map((pair) => [pair.x, pair.y]));
      expect(value).toBeCloseTo(b + m * pairs[row]!.x, 10);
    }
    expect([0, 1, 2, 3].map((part) => got.fold.filter((of) => of === part).length).sort()).toEqual([3, 4, 4, 4]);
    expectPlainJson(got);
  });
  it('keeps the rows of a person together', () => {
    const person = pairs.map((_, row) => row % 5);
    const got = crossValidate({
      rows: pairs,
      person,
      fit: (rows) => () => meanOf(rows.map((row) => row.y)),
      measured: (row) => row.y,
      folds: 3,
    });
    got.fold.forEach((of, row) => expect(of).toBe(got.fold[row % 5]));
    expect(() => crossValidate({ rows: pairs, fit: () => 5 as never, measured: (row) => row.y })).toThrow(/fit/);
    expect(() => crossValidate({ rows: pairs, fit: () => () => NaN, measured: (row) => row.y })).toThrow(/fit/);
    expect(() => crossValidate({ rows: pairs, fit: () => () => 1, measured: () => 'x' as never })).toThrow(/measured/);
    expect(() => crossValidate({ rows: pairs, fit: () => () => 1, measured: (row) => row.y, folds: 16 })).toThrow(
      /folds/,
    );
  });
});

describe('conformal intervals', () => {
  // Own algebra: of 39 people the 38th smallest error, ⌈0.95 × 40⌉.
  it('take the error that enough people stay within', () => {
    const errors = Array.from({ length: 39 }, (_, i) => (i % 2 ? 1 : -1) * (i + 1));
    const measured = errors.map(() => 100);
    const got = conformal(
      measured,
      errors.map((error) => 100 + error),
    );
    expect(got).toEqual({ scale: 'difference', halfWidth: 38, people: 39, level: 0.95, missing: 0 });
    expect(
      conformal(
        measured,
        errors.map((error) => 100 * Math.exp(error / 100)),
        { scale: 'log' },
      ).halfWidth,
    ).toBeCloseTo(Math.exp(0.38), 12);
    expect(conformal([...measured, NaN, 5], [...errors.map((error) => 100 + error), 5, null]).missing).toBe(2);
    expect(() => conformal(measured.slice(0, 18), measured.slice(0, 18))).toThrow(/at least 19 people/);
    expect(() => conformal(measured, errors, { scale: 'log' })).toThrow(/above 0/);
    expect(() => conformal(measured, [1])).toThrow(/predicted/);
  });
  it('take one row of each person', () => {
    const person = Array.from({ length: 60 }, (_, row) => row % 20);
    const measured = person.map(() => 0);
    const got = conformal(
      measured,
      person.map((who, row) => who + Math.floor(row / 20) / 10),
      { person },
    );
    expect(got.people).toBe(20);
    expect(got.halfWidth).toBeGreaterThanOrEqual(18.9);
  });
  // Own algebra: coverage of new people is the level, whatever the errors; 3000 studies, 4 standard errors.
  it('hold new people as often as they say, with skewed errors too', () => {
    const normal = normalDeviates(mersenneTwister(11));
    let held = 0;
    const studies = 3000;
    for (let study = 0; study < studies; study += 1) {
      const error = () => Math.exp(normal());
      const { halfWidth } = conformal(
        Array.from({ length: 39 }, () => 0),
        Array.from({ length: 39 }, error),
      );
      if (error() <= halfWidth) held += 1;
    }
    expect(Math.abs(held / studies - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / studies));
  });
  it('give finite numbers or an InputError for anything', () => {
    const list = fc.array(fc.oneof(fc.double(), fc.constant(null)), { minLength: 15, maxLength: 25 });
    fc.assert(
      fc.property(list, list, (a, b) => {
        try {
          expectPlainJson(conformal(a, b));
        } catch (error) {
          expect((error as Error).name).toBe('InputError');
        }
      }),
    );
  });
});
