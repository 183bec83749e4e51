import { describe, expect, it } from 'vitest';
import table from '../../src/checks/intraclass.json' with { type: 'json' };
import { reliability, type WithConfidence } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';
import { expectDigits } from '../support/digits.js';
import { codesOf } from '../support/invariants.js';
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
});
