import fc from 'fast-check';
import { mean as meanOf, quantileSorted } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { accurateSum, mean, quantile } from '../../src/statistics/sums.js';
import { expectDigits } from '../support/digits.js';
import judge from '../study/judge.json' with { type: 'json' };

describe('sums, means and quantiles', () => {
  it('loses nothing where large terms cancel', () => {
    expect(accurateSum([1e16, 1, -1e16])).toBe(1);
    expect(accurateSum([1, 1e16, 1, -1e16])).toBe(2);
    expect(accurateSum([])).toBe(0);
  });
  // Source: R, quantile(); tests/study/judge.R.
  it('finds the quantiles of R', () => {
    const sorted = [...judge.quantile.values].sort((a, b) => a - b);
    expectDigits(
      judge.quantile.at.map((share) => quantile(sorted, share)),
      judge.quantile.expected,
      14,
    );
  });
  // Source: simple-statistics, on random data.
  it('agree with simple-statistics', () => {
    fc.assert(
      fc.property(
        // No −0: it sorts as 0 does, so either may come last.
        fc.array(
          fc.double({ min: -1000, max: 1000, noNaN: true }).map((value) => value + 0),
          { minLength: 3, maxLength: 60 },
        ),
        (values) => {
          expect(Math.abs(mean(values) - meanOf(values))).toBeLessThanOrEqual(1e-9);
          const sorted = [...values].sort((a, b) => a - b);
          expect(quantile(sorted, 0)).toBe(quantileSorted(sorted, 0));
          expect(quantile(sorted, 1)).toBe(quantileSorted(sorted, 1));
        },
      ),
    );
  });
});
