import { describe, expect, it } from 'vitest';
import table from '../../src/checks/intraclass.json' with { type: 'json' };
import { agreement, pairsForLimits, reliability, type WithConfidence } from '../../src/study/index.js';
import { studentT95 } from '../../src/statistics/student-t.js';
import { expectPlainJson } from '../support/answers.js';
import { eachRow, expectWithin } from '../support/rows.js';
import judge from './agreement.json' with { type: 'json' };

const close = (received: number, expected: number, digits = 10): void =>
  expect(Math.abs(received - expected), `${received} against ${expected}`).toBeLessThanOrEqual(
    10 ** -digits * Math.max(1e-3, Math.abs(expected)),
  );
const all = (received: readonly number[], expected: readonly number[], digits = 10): void => {
  expect(received).toHaveLength(expected.length);
  received.forEach((value, index) => close(value, expected[index]!, digits));
};
const ends = ({ value, lower, upper }: WithConfidence): number[] => [value, lower, upper];

// Source: R, tests/study/agreement.R.
describe('agreement of different people', () => {
  const { measured, estimated } = judge;
  it('is that of R', () => {
    const got = agreement(measured, estimated, { margin: 8 });
    all([...ends(got.limits.lower), ...ends(got.limits.upper)], judge.limits, 8);
    all([got.predictionLimits.lower, got.predictionLimits.upper], judge.predictionLimits);
    all([...ends(got.calibration!.intercept), ...ends(got.calibration!.slope)], judge.calibration);
    all(ends(got.proportionalBias!), judge.slope);
    all([got.bySize!.spread.intercept, ...ends(got.bySize!.spread.slope)], judge.spread);
    all([got.equivalence!.lower, got.equivalence!.upper, got.equivalence!.chance], judge.equivalence);
    expect(got.equivalence!.equivalent).toBe(true);
    all([got.percentiles!.lower.value, got.percentiles!.upper.value], judge.quantile);
    expectPlainJson(got);
  });
  it('gives ratios on the log scale', () => {
    const got = agreement(measured, estimated, { scale: 'log', margin: 1.1 });
    all(ends(got.bias), judge.logBias);
    all([...ends(got.limits.lower), ...ends(got.limits.upper)], judge.logLimits, 8);
    expect(() => agreement([1, 2, 3, 0], [1, 2, 3, 4], { scale: 'log' })).toThrow(/measured\[3\].*above 0/);
  });
  // Own algebra: for a straight calibration the difference has slope 1 − (calibration slope) on the estimate.
  it('does not reject a calibrated equation, which the mean of the pair does', () => {
    const estimate = Array.from({ length: 200 }, (_, i) => 150 + 20 * Math.sin(i));
    const value = estimate.map((e, i) => e + 25 * Math.cos(i * 1.7));
    const got = agreement(value, estimate);
    close(got.proportionalBias!.value, 1 - got.calibration!.slope.value);
    expect(got.calibration!.slope.lower).toBeLessThan(1);
    expect(got.calibration!.slope.upper).toBeGreaterThan(1);
    expect(got.cautions.map(({ code }) => code)).not.toContain('bias-changes-with-size');
    const old = agreement(value, estimate, { size: 'mean' });
    expect(old.proportionalBias!.upper).toBeLessThan(0);
  });
  // Source: binomial tables. 0.975^n ≤ 0.025 from n = 146 on: below, no order statistic bounds the 2.5th percentile.
  it('bounds percentiles by order statistics where there are enough pairs', () => {
    const of = (n: number) => {
      const d = Array.from({ length: n }, (_, i) => i + 1);
      return agreement(new Array<number>(n).fill(0), d).percentiles!.lower;
    };
    expect(of(145)).not.toHaveProperty('lower');
    expect(of(146).lower).toBe(1);
    expect(of(146).upper).toBeGreaterThan(of(146).value);
  });
  it('says where its assumptions fail', () => {
    const rows = Array.from({ length: 100 }, (_, i) => i);
    const measuredRows = rows.map(() => 100);
    const skewed = agreement(
      measuredRows,
      rows.map((i) => 100 + Math.exp((i % 10) / 2)),
    );
    expect(skewed.cautions.map(({ code }) => code)).toContain('differences-not-normal');
    const size = rows.map((i) => 100 + i);
    const fanned = agreement(
      size.map((e, i) => e + (i % 2 ? 0.2 : -0.2) * i),
      size,
    );
    expect(fanned.cautions.map(({ code }) => code)).toContain('spread-changes-with-size');
    expect(agreement([1, 2, 3], [1, 2, 4]).cautions.map(({ code }) => code)).toContain('few-people');
  });
  it('gives no NaN where nothing varies', () => {
    for (const [a, b] of [
      [
        [5, 5, 5, 5],
        [5, 5, 5, 5],
      ],
      [
        [5, 5, 5, 5],
        [7, 7, 7, 7],
      ],
      [
        [5, 5, 5, 5],
        [1, 2, 3, 4],
      ],
      [
        [1, 2, 3, 4],
        [5, 5, 5, 5],
      ],
    ] as const) {
      expectPlainJson(agreement(a, b, { margin: 3 }));
      expectPlainJson(agreement(a, b, { person: [1, 1, 2, 3], scale: 'log' }));
    }
  });
});

describe('agreement with several observations of a person', () => {
  const { person, personMeasured, personEstimated } = judge;
  it('is that of R', () => {
    const got = agreement(personMeasured, personEstimated, { person });
    expect([got.people, got.pairs]).toEqual([12, 29]);
    all(ends(got.bias), judge.personBias);
    const { betweenPeople, withinPerson } = got.components!;
    all([got.standardDeviation, withinPerson, betweenPeople], judge.personDeviations);
    all([...ends(got.limits.lower), ...ends(got.limits.upper)], judge.personLimits);
    const { intercept, slope } = got.calibration!;
    all([intercept.value, slope.value, intercept.standardError, slope.standardError], judge.personCalibration);
    expect(got).not.toHaveProperty('percentiles');
    expectPlainJson(got);
  });
  // Source: nlme, REML; it prints seven digits of the deviations.
  it('has the components of a mixed model where it is balanced', () => {
    const { balanced, balancedMixed } = judge;
    const got = agreement(new Array<number>(24).fill(0), balanced, { person: balanced.map((_, i) => i >> 1) });
    const { betweenPeople, withinPerson } = got.components!;
    all([got.bias.value, got.bias.standardError, betweenPeople, withinPerson], balancedMixed, 6);
  });
  it('is that of rows where each person has one', () => {
    const { measured, estimated } = judge;
    const { people, missing, ...rest } = agreement(measured, estimated, { person: measured.map((_, i) => `p${i}`) });
    const { missing: none, ...plain } = agreement(measured, estimated);
    expect([people, missing]).toEqual([24, { ...none, person: 0 }]);
    expect(rest).toEqual(plain);
  });
  it('is wider than that of rows taken as different people, and counts who has no person', () => {
    const twice = [0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5];
    const value = twice.map(() => 100);
    const estimate = twice.map((who, row) => 100 + 5 * who + (row % 2));
    const wide = agreement(value, estimate, { person: twice });
    const narrow = agreement(value, estimate);
    expect(wide.bias.upper - wide.bias.lower).toBeGreaterThan(1.3 * (narrow.bias.upper - narrow.bias.lower));
    expect(wide.within.upper - wide.within.lower).toBeGreaterThan(narrow.within.upper - narrow.within.lower);
    const lacking = agreement(value, estimate, { person: twice.map((who) => (who === 5 ? null : who)) });
    expect([lacking.people, lacking.missing.person]).toEqual([5, 2]);
    expect(() => agreement(value, estimate, { person: [1, 2] })).toThrow(/person/);
    expect(() => agreement(value, estimate, { person: twice.map((who) => who % 2) })).toThrow(/at least 3 people/);
  });
});

describe('signals and sizes', () => {
  // Own algebra: 100 pairs make the limits ± 0.34 standard deviations at 1.96 standard errors, √(3 / n) s each; with the
  // t of 99 degrees and the exact variance a little more.
  it('gives the pairs for a width', () => {
    const at = (n: number) => studentT95(n - 1) * Math.sqrt(1 / n + 1.959963984540054 ** 2 / (2 * (n - 1)));
    for (const n of [5, 20, 100, 999]) {
      expect(pairsForLimits({ standardDeviation: 1, halfWidth: at(n) * 1.0000001 })).toBe(n);
    }
    expect(() => pairsForLimits({ standardDeviation: 10, halfWidth: 0.001 })).toThrow(/halfWidth/);
  });
});

describe('reliability', () => {
  // Source: Psychol Bull 1979;86(2):420–428, table and coefficients.
  eachRow(table, ({ tests, tolerance, ...printed }) => {
    const { intraclass } = reliability(tests);
    for (const name of ['icc11', 'icc21', 'icc31', 'icc1k', 'icc2k', 'icc3k'] as const) {
      expectWithin(intraclass![name].value, printed[name], tolerance);
    }
  });
  it('is that of R', () => {
    const [row] = table.rows;
    const got = reliability(row!.tests);
    const { icc21, icc31, icc2k, icc3k } = got.intraclass!;
    // Source: lme4, REML, which stops at about six digits.
    all(
      [icc21, icc31, icc2k, icc3k].map(({ value }) => value),
      judge.shroutMixed,
      4,
    );
    all(
      [icc21, icc31, icc2k, icc3k].flatMap(({ lower, upper }) => [lower, upper]),
      judge.iccIntervals,
      8,
    );
    all(ends(got.typicalError), judge.typicalError);
    all(ends(got.changes[0]!), judge.change);
    expect(got.cautions.map(({ code }) => code)).toContain('tests-differ');
    expectPlainJson(got);
  });
  it('gives no NaN where nothing varies, and counts who lacks a test', () => {
    for (const tests of [
      [
        [5, 5, 5],
        [5, 5, 5],
      ],
      [
        [5, 6, 7],
        [5, 6, 7],
      ],
      [
        [5, 6, 7],
        [6, 7, 8],
      ],
      [
        [5, 5, 5],
        [6, 6, 6],
      ],
      [
        [1, 2, 3],
        [3, 2, 1],
      ],
    ]) {
      expectPlainJson(reliability(tests));
      expectPlainJson(reliability(tests, { scale: 'log' }));
    }
    expect(
      reliability([
        [5, 5, 5],
        [5, 5, 5],
      ]),
    ).not.toHaveProperty('intraclass');
    expect(
      reliability([
        [5, 6, 7],
        [5, 6, 7],
      ]).intraclass!.icc21.value,
    ).toBe(1);
    expect(
      reliability([
        [5, 6, 7, null],
        [5, 6, 8, 9],
      ]).missing,
    ).toBe(1);
    expect(() => reliability([[1, 2, 3]])).toThrow(/tests/);
    expect(() =>
      reliability([
        [1, 2, 3],
        [1, 2],
      ]),
    ).toThrow(/tests\[1\]/);
  });
});
