import { describe, expect, it } from 'vitest';
import { chanceAtOrBelow, deviationAsShare, deviationInUnit, valueAtChance } from '../../src/pressure/answer-spread.js';

// Quantiles of the standard normal distribution: NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.1.
const table = [
  [-1.645, 0.05],
  [0, 0.5],
  [1, 0.8413],
  [1.96, 0.975],
] as const;

describe('the spread of an answer', () => {
  const log = { value: 160, standardDeviation: 0.1, scale: 'log' } as const;
  const plain = { value: 160, standardDeviation: 20 } as const;

  it.each(table)('%f standard deviations from the value has the chance %f, as a share and in mmHg', (z, chance) => {
    expect(chanceAtOrBelow(160 * Math.exp(0.1 * z), log)).toBeCloseTo(chance, 4);
    expect(chanceAtOrBelow(160 + 20 * z, plain)).toBeCloseTo(chance, 4);
    expect(valueAtChance(chance, log) / 160).toBeCloseTo(Math.exp(0.1 * z), 3);
    expect((valueAtChance(chance, plain) - 160) / 20).toBeCloseTo(z, 3);
  });

  it('is a step where there is no error, and not known where the error is not', () => {
    const exact = { value: 160, standardDeviation: 0 };
    expect([159.9, 160, 160.1].map((x) => chanceAtOrBelow(x, exact))).toEqual([0, 1, 1]);
    expect(chanceAtOrBelow(160, { value: 160 })).toBeUndefined();
    expect([valueAtChance(0.9, exact), valueAtChance(0.9, { value: 160 })]).toEqual([160, 160]);
  });

  it('is the same in mmHg and as a share', () => {
    expect([deviationInUnit(plain), deviationAsShare(plain)]).toEqual([20, 0.125]);
    expect([deviationInUnit(log), deviationAsShare(log)]).toEqual([16, 0.1]);
    expect([deviationInUnit({ value: 160 }), deviationAsShare({ value: 160 })]).toEqual([0, 0]);
  });
});
