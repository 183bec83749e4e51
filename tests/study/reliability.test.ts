import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import table from '../../src/checks/intraclass.json' with { type: 'json' };
import { reliability, type WithConfidence } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';
import { expectDigits } from '../support/digits.js';
import { codesOf, refusalPage } from '../support/invariants.js';
import { eachRow, expectWithin } from '../support/rows.js';
import judge from './agreement.json' with { type: 'json' };

const ends = ({ value, lower, upper }: WithConfidence): number[] => [value, lower, upper];

describe('reliability', () => {
  // Source: Psychol Bull 1979;86(2):420–428, table and coefficients.
  eachRow(table, ({ tests, tolerance, ...printed }) => {
    const { intraclass } = reliability(tests);
    for (const name of ['icc11', 'icc21', 'icc31', 'icc1k', 'icc2k', 'icc3k'] as const) {
      expectWithin(intraclass![name].value, printed[name], tolerance);
    }
  });

  // Source: R, tests/study/agreement.R.
  it('is that of R', () => {
    const got = reliability(table.rows[0]!.tests);
    const { icc21, icc31, icc2k, icc3k } = got.intraclass!;
    const coefficients = [icc21, icc31, icc2k, icc3k];
    // Source: lme4, REML, which stops at about six digits.
    expectDigits(
      coefficients.map(({ value }) => value),
      judge.shroutMixed,
      4,
    );
    expectDigits(
      coefficients.flatMap(({ lower, upper }) => [lower, upper]),
      judge.iccIntervals,
      8,
    );
    expectDigits(ends(got.typicalError), judge.typicalError, 10);
    expectDigits(ends(got.changes[0]!), judge.change, 10);
    expect(codesOf(got.cautions)).toContain('tests-differ');
    expectPlainJson(got);
  });

  // Formulas: Psychol Bull 1979;86(2):420–428, case 1 of one way, with the F distribution of jstat.
  it('has the interval of one way', () => {
    const { tests } = table.rows[0]!;
    const [k, n] = [tests.length, tests[0]!.length];
    const { intraclass, meanSquares } = reliability(tests);
    const { people, tests: between, error } = meanSquares;
    const within = (error * (n - 1) * (k - 1) + between * (k - 1)) / (n * (k - 1));
    const f = people / within;
    const low = f / jstat.centralF.inv(0.975, n - 1, n * (k - 1));
    const high = f * jstat.centralF.inv(0.975, n * (k - 1), n - 1);
    const single = [f, low, high].map((ratio) => (ratio - 1) / (ratio + k - 1));
    expectDigits(ends(intraclass!.icc11), single, 6);
    expectDigits(
      ends(intraclass!.icc1k),
      [f, low, high].map((ratio) => 1 - 1 / ratio),
      6,
    );
  });

  // Definition: Psychol Bull 1979;86(2):420–428: (BMS − EMS) / (BMS + (JMS − EMS) / n), and ICC(2,1) by Spearman–Brown for
  // its interval. The tests differ less than chance, as those without learning do half of the time.
  it('averages tests that differ less than chance as published', () => {
    const { intraclass, meanSquares } = reliability([
      [10, 12, 11, 13, 18],
      [11, 12, 10, 14, 17],
    ]);
    const { people, tests, error } = meanSquares;
    expect(tests).toBeLessThan(error);
    const { icc21, icc2k } = intraclass!;
    expect(icc2k.value).toBeCloseTo((people - error) / (people + (tests - error) / 5), 12);
    ends(icc21).forEach((one, end) => expect(ends(icc2k)[end]).toBeCloseTo((2 * one) / (1 + one), 12));
  });

  it('is complete where tests agree but for a shift, or not at all', () => {
    const shifted = reliability([
      [5, 6, 7],
      [6, 7, 8],
    ]);
    expect(shifted.intraclass!.icc31).toMatchObject({ value: 1 });
    // Mean squares by hand: people 2, tests 1.5, no error; (2 − 0) / (2 + 0 + 2 × 1.5 / 3) = 2 / 3.
    expect(shifted.intraclass!.icc21.value).toBeCloseTo(2 / 3, 12);
    const opposed = reliability([
      [5, 6, 7],
      [7, 6, 5],
    ]);
    // Nothing but error: mean squares 0 for people and tests, 2 for the error.
    expect(opposed.meanSquares).toMatchObject({ people: 0, tests: 0, error: 2 });
    const wide = reliability([
      [1e6, 1e6 + 1e-7, 1e6],
      [1e6, 1e6, 1e6 + 1e-7],
    ]);
    expect(wide).not.toHaveProperty('intraclass');
    const narrow = reliability([
      [1e6, 1e6 + 1e-3, 1e6],
      [1e6, 1e6 + 2e-3, 1e6 + 1e-3],
    ]);
    expect(narrow).toHaveProperty('intraclass');
  });

  it('gives no NaN where nothing varies, and counts who lacks a test', () => {
    const [fives, sixes, rising, next, falling] = [
      [5, 5, 5],
      [6, 6, 6],
      [5, 6, 7],
      [6, 7, 8],
      [7, 6, 5],
    ] as const;
    for (const tests of [
      [fives, fives],
      [rising, rising],
      [rising, next],
      [fives, sixes],
      [rising, falling],
    ]) {
      expectPlainJson(reliability(tests));
      expectPlainJson(reliability(tests, { scale: 'log' }));
    }
    expect(reliability([fives, fives])).not.toHaveProperty('intraclass');
    expect(reliability([rising, rising]).intraclass!.icc21.value).toBe(1);
    expect(
      reliability([
        [...rising, null],
        [...next, 9],
      ]).missing,
    ).toBe(1);
    expect(() => reliability([rising])).toThrow(/tests/);
    expect(() => reliability([rising, [1, 2]])).toThrow(/tests\[1\]/);
  });

  // Definitions: on a log scale all is that of the logarithms, and a difference is a ratio.
  it('is that of the logarithms on a log scale, read as ratios', () => {
    const { tests } = table.rows[0]!;
    const got = reliability(tests, { scale: 'log' });
    const logs = reliability(tests.map((scores) => scores.map(Math.log)));
    expect([got.scale, logs.scale]).toEqual(['log', 'difference']);
    for (const name of ['intraclass', 'typicalError', 'standardErrorOfMeasurement', 'meanSquares'] as const)
      expect(got[name]).toEqual(logs[name]);
    const typical = ends(got.typicalError);
    const twice = typical.map((error) => 1.959963984540054 * Math.SQRT2 * error);
    expectDigits(ends(logs.minimalDetectableChange), twice, 12);
    expectDigits(ends(got.minimalDetectableChange), twice.map(Math.exp), 12);
    expectDigits(
      ends(got.coefficientOfVariation!),
      typical.map((error) => 100 * Math.expm1(error)),
      10,
    );
    expect(logs).not.toHaveProperty('coefficientOfVariation');
    expectDigits(got.changes.flatMap(ends), logs.changes.flatMap(ends).map(Math.exp), 12);
    const { tests: between, error } = got.meanSquares;
    expectDigits([got.standardErrorOfMeasurement], [Math.sqrt(error + (between - error) / 6)], 12);
  });

  it('warns where one test gives more or less than the one before, and where there are few people', () => {
    const first = [10, 12, 11, 13, 15];
    const differs = (second: readonly number[], scale?: 'log') =>
      reliability([first, second], scale && { scale }).cautions.filter(({ code }) => code === 'tests-differ');
    expect(differs([20, 22, 21.1, 23, 25])[0]?.values).toEqual({ from: 1, to: 2, change: 10 });
    expect(differs([5, 7, 6.1, 8, 10])[0]?.values).toEqual({ from: 1, to: 2, change: -4.98 });
    expect(differs([20, 24, 22.1, 26, 30], 'log')[0]?.values).toEqual({ from: 1, to: 2, change: 2 });
    expect(differs([5, 6, 5.6, 6.5, 7.5], 'log')[0]?.values).toEqual({ from: 1, to: 2, change: 0.502 });
    expect([differs([11, 12, 10, 14, 14]), differs([11, 12, 10, 14, 14], 'log')]).toEqual([[], []]);
    // Where tests differ less than chance, they add nothing to the error of a measurement.
    const { standardErrorOfMeasurement: error, typicalError } = reliability([first, [11, 12, 10, 14, 14]]);
    expect(error).toBe(typicalError.value);
    const of = (people: number) =>
      codesOf(
        reliability([0, 1].map((test) => Array.from({ length: people }, (_, at) => at + test * (at % 2)))).cautions,
      );
    expect([of(9).includes('few-people'), of(1000).includes('few-people')]).toEqual([true, false]);
  });

  it('refuses what it cannot take, as the golden page says', async () => {
    const three = [1, 2, 3];
    const cases = {
      'no list': [5],
      'one test': [[three]],
      'many tests': [Array(1001).fill(three)],
      'a test that is shorter': [[three, [1, 2]]],
      'a test in words': [[three, ['a', 'b', 'c']]],
      'two people': [[[1, 2, null], three]],
      'no logarithm': [[three, [1, 0, 3]], { scale: 'log' }],
      'another scale': [[three, [1, 2, 4]], { scale: 'root' }],
      'another option': [[three, [1, 2, 4]], { person: three }],
    };
    await expect(
      refusalPage((parts: unknown[]) => reliability(...(parts as Parameters<typeof reliability>)), cases),
    ).toMatchFileSnapshot('refused/reliability.txt');
  });
});
