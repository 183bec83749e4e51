import fc from 'fast-check';
import jstat from 'jstat';
import { all, create, type BigNumber } from 'mathjs';
import { linearRegression, mean, quantileSorted, rootMeanSquare, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import peakFlow from '../../src/checks/agreement.json' with { type: 'json' };
import certified from '../../src/checks/least-squares.json' with { type: 'json' };
import { agreement, columns } from '../../src/study/index.js';
import { leastSquares, type LeastSquares } from '../../src/study/least-squares.js';
import { quantile } from '../../src/study/propagate.js';
import { mersenneTwister, normalDeviates } from '../../src/study/random.js';
import { studentT95 } from '../../src/study/student-t.js';
import { expectPlainJson } from '../support/answers.js';
import { eachRow, expectWithin } from '../support/rows.js';
import judge from './judge.json' with { type: 'json' };

/** How many digits two numbers have in common. */
const digits = (received: number, expected: number): number =>
  received === expected ? 16 : -Math.log10(Math.abs(received - expected) / Math.abs(expected));

const expectDigits = (received: readonly number[], expected: readonly number[], least: number): void => {
  expect(received.length).toBe(expected.length);
  received.forEach((value, index) =>
    expect(digits(value, expected[index]!), `${value} against ${expected[index]}`).toBeGreaterThanOrEqual(least),
  );
};

const fitOf = (x: readonly (readonly number[])[], y: readonly number[]): LeastSquares => {
  const fit = leastSquares(x, y);
  if ('why' in fit) throw new Error(fit.why);
  return fit;
};

const everything = (fit: LeastSquares): number[] => [
  fit.intercept,
  ...fit.slopes,
  fit.interceptError,
  ...fit.slopeErrors,
  fit.residualDeviation,
  fit.rSquared,
];

describe('least squares: NIST reference data sets', () => {
  eachRow(certified, ({ columns: x, y, digits: least, ...values }) => {
    const { intercept, slopes, interceptError, slopeErrors, residualDeviation, rSquared } = values;
    const expected = [intercept, ...slopes, interceptError, ...slopeErrors, residualDeviation, rSquared];
    expectDigits(everything(fitOf(x, y)), expected, least);
  });

  // Source: mathjs, normal equations at 100 digits. Data and certified values from memory belong together to all
  // 15 digits that are certified, so neither holds a slip.
  eachRow(certified, ({ columns: x, y, intercept, slopes }) => {
    const math = create(all!, { number: 'BigNumber', precision: 100 });
    const big = (value: number): BigNumber => math.bignumber(String(value));
    const design = y.map((_, row) => [big(1), ...x.map((column) => big(column[row]!))]);
    const turned = math.transpose(design);
    const solution = math.lusolve(math.multiply(turned, design) as never, math.multiply(turned, y.map(big)) as never);
    const exact = (solution as unknown as BigNumber[][]).map(([value]) => value!.toNumber());
    expectDigits(exact, [intercept, ...slopes], 14);
  });
});

describe('least squares: R', () => {
  it('gives the coefficients of the data of Longley that R ships', () => {
    const { x, y, coefficients, standardErrors } = judge.longley;
    const fit = fitOf(x, y);
    expectDigits([fit.intercept, ...fit.slopes], coefficients, 8);
    expectDigits([fit.interceptError, ...fit.slopeErrors], standardErrors, 8);
  });
  it('says which column does not vary, or follows from the others', () => {
    const a = [1, 2, 3, 4, 5];
    const b = [2, 1, 4, 3, 6];
    expect(leastSquares([a, [7, 7, 7, 7, 7]], b)).toEqual({ column: 1, why: 'constant' });
    expect(leastSquares([a, b, a.map((value, row) => 0.3 * value - 2 * b[row]! + 1)], [1, 2, 1, 2, 1])).toEqual({
      column: 2,
      why: 'collinear',
    });
  });
});

// Source: simple-statistics and jstat, on random data.
describe('general statistics libraries agree', () => {
  const numbers = (least: number) =>
    fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), { minLength: least, maxLength: 60 });
  const close = (a: number, b: number, scale = 1) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (scale + 1));

  it('on a straight line (simple-statistics) and on two terms (jstat)', () => {
    const row = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -500, max: 500 })));
    fc.assert(
      fc.property(fc.array(row, { minLength: 6, maxLength: 40 }), (rows) => {
        const [x, w, y] = [0, 1, 2].map((field) => rows.map((values) => values[field]!)) as [
          number[],
          number[],
          number[],
        ];
        const one = leastSquares([x], y);
        fc.pre(!('why' in one) && !('why' in leastSquares([x, w], y)));
        const line = linearRegression(rows.map((values) => [values[0]!, values[2]!]));
        const fit = fitOf([x], y);
        close(fit.slopes[0]!, line.m, Math.abs(line.m));
        close(fit.intercept, line.b, 500 * Math.abs(line.m) + 500);
        const both = fitOf([x, w], y);
        fc.pre(Math.max(...both.inflation) < 1000);
        const { coef } = jstat.models.ols(
          y,
          rows.map((values) => [1, values[0]!, values[1]!]),
        );
        [both.intercept, ...both.slopes].forEach((value, index) => {
          expect(Math.abs(value - coef[index]!)).toBeLessThanOrEqual(1e-6 * (1 + Math.abs(value)));
        });
      }),
      { numRuns: 100 },
    );
  });

  it('on means, deviations, errors and quantiles', () => {
    fc.assert(
      fc.property(numbers(3), (differences) => {
        const measured = differences.map((_, row) => 100 + row);
        const estimated = differences.map((difference, row) => 100 + row + difference);
        const real = estimated.map((value, row) => value - measured[row]!);
        const result = agreement(measured, estimated);
        close(result.bias.value, mean(real), 1000);
        close(result.standardDeviation, sampleStandardDeviation(real), 1000);
        close(result.rootMeanSquareError, rootMeanSquare(real), 1000);
        close(result.meanAbsoluteError, mean(real.map(Math.abs)), 1000);
        const sorted = [...differences].sort((a, b) => a - b);
        close(quantile(sorted, 0), quantileSorted(sorted, 0), 1000);
        close(quantile(sorted, 1), quantileSorted(sorted, 1), 1000);
      }),
    );
  });
});

describe('Student’s t', () => {
  // Source: R, qt(0.975, df); tests/study/judge.R.
  it.each(judge.studentT95)('%i degrees of freedom', (degrees, expected) => {
    expect(digits(studentT95(degrees!), expected!)).toBeGreaterThanOrEqual(13);
  });
  // Source: jstat, good to eight digits here.
  it('agrees with jstat at any degrees of freedom', () => {
    for (let degrees = 1; degrees < 1200; degrees += 7) {
      expect(digits(studentT95(degrees), jstat.studentt.inv(0.975, degrees))).toBeGreaterThan(7);
    }
  });
  it('finds the quantiles R finds', () => {
    const sorted = [...judge.quantile.values].sort((a, b) => a - b);
    expectDigits(
      judge.quantile.at.map((share) => quantile(sorted, share)),
      judge.quantile.expected,
      14,
    );
  });
});

describe('the generator', () => {
  // Source: ISO C++, [rand.predef]: the 10 000th number of mt19937 is 4123659995 (from memory).
  it('gives the published number', () => {
    const random = mersenneTwister(5489);
    let last = 0;
    for (let count = 0; count < 10_000; count += 1) last = random();
    expect(last).toBe(4123659995);
  });
  // Own algebra: moments of the normal distribution, 4 standard errors wide.
  it('makes normal deviates', () => {
    const normal = normalDeviates(mersenneTwister(7));
    const drawn = Array.from({ length: 100_000 }, normal);
    expect(Math.abs(mean(drawn))).toBeLessThan(4 / Math.sqrt(100_000));
    expect(Math.abs(mean(drawn.map((z) => z ** 2)) - 1)).toBeLessThan(4 * Math.sqrt(2 / 100_000));
    expect(Math.abs(mean(drawn.map((z) => z ** 4)) - 3)).toBeLessThan(4 * Math.sqrt(96 / 100_000));
    expect(drawn.filter((z) => Math.abs(z) < 1.959963984540054).length / 100_000).toBeCloseTo(0.95, 2);
  });
});

describe('agreement', () => {
  eachRow(peakFlow, ({ mini, large, tolerance, ...printed }) => {
    const { bias, standardDeviation, pairs, limits } = agreement(mini, large);
    expect(pairs).toBe(17);
    expectWithin(bias.value, printed.bias, tolerance);
    expectWithin(standardDeviation, printed.standardDeviation, tolerance);
    [bias.lower, bias.upper].forEach((end, index) => expectWithin(end, printed.biasInterval[index]!, tolerance));
    // The paper’s limits are 2 standard deviations wide, 1.96 here: made from the same two numbers, rounded as there.
    const roundedLimits = [-1, 1].map(
      (side) => Number(bias.value.toFixed(1)) + side * 2 * Number(standardDeviation.toFixed(1)),
    );
    roundedLimits.forEach((limit, index) => expectWithin(limit, printed.limits[index]!, tolerance));
    const t = Number(((bias.upper - bias.value) / bias.standardError).toFixed(2));
    const error = Number(Math.sqrt((3 * standardDeviation ** 2) / pairs).toFixed(1));
    const ends = [printed.limitLowerInterval, printed.limitUpperInterval];
    ends.forEach(([low, high], index) => {
      // Their standard error was rounded before it was used: one more digit of slack.
      expectWithin(roundedLimits[index]! - t * error, low!, 2 * tolerance);
      expectWithin(roundedLimits[index]! + t * error, high!, 2 * tolerance);
    });
    // The paper’s intervals are those of large samples. The exact ones of 17 pairs lie further out at both ends.
    expect(limits.lower.lower).toBeLessThan(printed.limitLowerInterval[0]!);
    expect(limits.lower.upper).toBeLessThan(printed.limitLowerInterval[1]!);
    expect(limits.upper.lower).toBeGreaterThan(printed.limitUpperInterval[0]!);
    expect(limits.upper.upper).toBeGreaterThan(printed.limitUpperInterval[1]!);
  });

  it('gives what R gives', () => {
    const { people, agreement: expected } = judge;
    const got = agreement(people.valueMmHg, people.estimate, { size: 'mean' });
    const ends = ({ value, lower, upper }: { value: number; lower?: number; upper?: number }) => [
      value,
      lower!,
      upper!,
    ];
    expectDigits(ends(got.bias), expected.bias, 11);
    expectDigits([got.standardDeviation], [expected.standardDeviation], 11);
    expectDigits(
      [got.limits.lower.value, got.limits.upper.value],
      [expected.limitLower[0]!, expected.limitUpper[0]!],
      11,
    );
    expectDigits([got.proportionalBias!.value, got.proportionalBias!.standardError], expected.slope, 11);
    expectDigits([got.proportionalBias!.lower, got.proportionalBias!.upper], expected.slopeInterval, 11);
    expectDigits([got.rootMeanSquareError], [expected.rootMeanSquare], 11);
    expectDigits([got.meanAbsoluteError], [expected.meanAbsolute], 11);
    expectDigits(ends(got.concordance!), expected.concordance, 11);
    expect(got.within.count).toBe(expected.within);
    expectDigits([got.within.lower, got.within.upper], expected.withinInterval, 11);
    expectPlainJson(got);
  });

  it('counts what is missing and what an interval covered', () => {
    const value = [150, 160, NaN, 170, 180, NaN];
    const lower = [140, 150, NaN, NaN, 170, NaN];
    const upper = [160, 170, NaN, NaN, 190, NaN];
    const got = agreement([155, 140, 150, 171, null, undefined], { value, lower, upper });
    expect(got.pairs).toBe(3);
    expect(got.missing).toEqual({ measured: 1, estimated: 1, both: 1 });
    expect(got.coverage).toMatchObject({ count: 1, of: 2, value: 0.5 });
  });

  it('takes a column answer as it is', () => {
    const estimated = columns({
      answer: 'occlusion-pressure',
      equation: 'width-ratio-1993',
      limb: 'leg',
      posture: 'supine',
      cuffWidthCm: 10,
      circumferenceCm: [50, 55, 60, 20],
      systolicMmHg: 120,
      diastolicMmHg: 70,
    });
    const got = agreement([150, 160, 170, 180], estimated);
    expect(got.missing.estimated).toBe(1);
    expect(got.coverage?.of).toBe(3);
  });

  it('leaves out what the pairs cannot carry', () => {
    const same = agreement([100, 100, 100], [100, 100, 100]);
    expect(same).not.toHaveProperty('proportionalBias');
    expect(same).not.toHaveProperty('concordance');
    expect(same.standardDeviation).toBe(0);
    expectPlainJson(agreement([1, 2, 3], [1, 2, 3]));
    expect(agreement([1, 2, 3], [1, 2, 3]).concordance?.value).toBeCloseTo(1, 14);
  });

  it('gives finite numbers or an InputError for anything', () => {
    const list = fc.array(fc.oneof(fc.double(), fc.constant(null), fc.integer()), { maxLength: 8 });
    fc.assert(
      fc.property(list, list, (measured, estimated) => {
        try {
          expectPlainJson(agreement(measured, estimated));
        } catch (error) {
          expect((error as Error).name).toBe('InputError');
        }
      }),
      { numRuns: 2000 },
    );
    for (const wrong of [undefined, null, 5, 'x', {}, new Map(), new Proxy([], { get: () => BigInt(1) })]) {
      expect(() => agreement(wrong as never, [1, 2, 3])).toThrow(expect.objectContaining({ name: 'InputError' }));
      expect(() => agreement([1, 2, 3], wrong as never)).toThrow(expect.objectContaining({ name: 'InputError' }));
    }
    expect(() => agreement([1, 2, 3], [1, 2, 3], { acceptible: 5 } as never)).toThrow(/acceptible/);
    expect(() => agreement([1, 2], [1, 2])).toThrow(/at least 3 pairs/);
    // A number kept as text is a slip, and not a missing value.
    expect(() => agreement([1, 2, 3, '4' as never], [1, 2, 3, 4])).toThrow(/measured\[3\] must be a number, or null/);
  });
});
