import { describe, it } from 'vitest';
import { normalityOf } from '../../src/statistics/normality.js';
import { expectDigits } from '../support/digits.js';

describe('the signal for a normal distribution', () => {
  // Source: SciPy 1.17, scipy.stats.skew, kurtosis and normaltest of (i × 0.618…) mod 1, squared, for i = 1 to 40.
  it('tests for a normal distribution as SciPy does', () => {
    const values = Float64Array.from({ length: 40 }, (_, i) => (((i + 1) * 0.6180339887) % 1) ** 2);
    const got = normalityOf(values)!;
    expectDigits(
      [got.skewness, got.excessKurtosis, got.chance],
      [0.6088612626691902, -0.871253373834171, 0.07886156332522731],
      10,
    );
  });
});
