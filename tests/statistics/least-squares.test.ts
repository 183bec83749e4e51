import fc from 'fast-check';
import jstat from 'jstat';
import { all, create, type BigNumber } from 'mathjs';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import certified from '../../src/checks/least-squares.json' with { type: 'json' };
import { leastSquares, type LeastSquares } from '../../src/statistics/least-squares.js';
import { expectDigits } from '../support/digits.js';
import { eachRow } from '../support/rows.js';
import judge from '../study/judge.json' with { type: 'json' };

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

  // Sums of squares around the means: 17.5 each, products 14.5. Inflation is 1 / (1 − r²), and leverages add to the terms.
  it('has the inflation and the leverages of two terms that say part of the same', () => {
    const a = [1, 2, 3, 4, 5, 6];
    const b = [2, 1, 4, 3, 6, 5];
    const fit = fitOf(
      [a, b],
      a.map((value, row) => 7 + 2 * value - 3 * b[row]!),
    );
    expectDigits([fit.intercept, ...fit.slopes], [7, 2, -3], 12);
    const inflation = 1 / (1 - (14.5 / 17.5) ** 2);
    expectDigits(fit.inflation, [inflation, inflation], 12);
    expectDigits([fit.leverages.reduce((sum, leverage) => sum + leverage)], [3], 12);
    expect(fit.degreesOfFreedom).toBe(3);
  });

  it('says which column does not vary, or follows from those before it', () => {
    const a = [1, 2, 3, 4, 5];
    const b = [2, 1, 4, 3, 6];
    const sevens = [7, 7, 7, 7, 7];
    const sum = a.map((value, row) => 0.3 * value - 2 * b[row]! + 1);
    expect(leastSquares([sevens, a], b)).toEqual({ column: 0, why: 'constant' });
    expect(leastSquares([a, [0, 0, 0, 0, 0]], b)).toEqual({ column: 1, why: 'constant' });
    expect(leastSquares([a], sevens)).toEqual({ column: -1, why: 'constant' });
    expect(leastSquares([a, a.map((value) => 3 - value)], b)).toEqual({ column: 1, why: 'collinear' });
    expect(leastSquares([a, b, sum], [1, 2, 1, 2, 1])).toEqual({ column: 2, why: 'collinear' });
  });
});

// Source: simple-statistics and jstat, on random data.
describe('general statistics libraries agree', () => {
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
});
