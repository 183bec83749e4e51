import { mean } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';

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
