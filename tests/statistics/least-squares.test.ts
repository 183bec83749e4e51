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
