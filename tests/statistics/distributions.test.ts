import { describe, expect, it } from 'vitest';
import { binomialChance, fQuantile } from '../../src/statistics/beta.js';
import { chiSquareChance, chiSquareQuantile, chiSquareTail } from '../../src/statistics/chi-square.js';
import { normalChance, normalQuantile } from '../../src/statistics/normal.js';
import judge from './distributions.json' with { type: 'json' };

const close = (received: number, expected: number, digits: number): void =>
  expect(Math.abs(received - expected), `${received} against ${expected}`).toBeLessThanOrEqual(
    10 ** -digits * Math.max(1e-3, Math.abs(expected)),
  );

// Source: R, tests/statistics/distributions.R.
describe('distributions are those of R', () => {
  it('normal', () => {
    // The lower tail has its digits however small it is.
    for (const [x, p] of judge.normal) expect(Math.abs(normalChance(x!) / p! - 1), `${x}`).toBeLessThan(2e-14);
    for (const [p, x] of judge.normalQuantile) close(normalQuantile(p!), x!, 11);
  });
  it('chi-square, both tails', () => {
    for (const [p, degrees, x] of judge.chiSquare) close(chiSquareQuantile(p!, degrees!), x!, 11);
    for (const [x, degrees, tail] of judge.chiSquareTail) {
      const received = chiSquareTail(x!, degrees!);
      expect(Math.abs(received / tail! - 1), `${x}, ${degrees}`).toBeLessThan(1e-11);
      close(chiSquareChance(x!, degrees!), 1 - tail!, 11);
    }
    // Far out the chance is 0, not NaN.
    expect([chiSquareTail(0, 3), chiSquareTail(1e6, 2), chiSquareChance(1e6, 2)]).toEqual([1, 0, 1]);
  });
  it('F and the binomial', () => {
    for (const [p, a, b, x] of judge.f) close(fQuantile(p!, a!, b!), x!, 10);
    for (const [count, n, p, chance] of judge.binomial) close(binomialChance(count!, n!, p!), chance!, 10);
  });
});
