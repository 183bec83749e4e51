import { mersenne } from 'pure-rand/generator/mersenne';
import { describe, expect, it } from 'vitest';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';
import { expectClose } from '../support/invariants.js';

describe('the generator', () => {
  // Source: pure-rand.
  it.each([0, 1, 42, 4294967295])('gives the numbers of another implementation, seed %i', (seed) => {
    const ours = mersenneTwister(seed);
    const theirs = mersenne(seed | 0);
    for (let count = 0; count < 2000; count += 1) expect(ours()).toBe(theirs.next() >>> 0);
  });

  // Source: ISO C++, [rand.predef]: the 10 000th number of mt19937 is 4123659995 (from memory).
  it('gives the published number', () => {
    const random = mersenneTwister(5489);
    for (let count = 1; count < 10_000; count += 1) random();
    expect(random()).toBe(4123659995);
  });

  // Source: pure-rand for the numbers, SIAM Rev 1964;6(3):260–264 for the deviates: pairs in the unit disc, drawn out.
  it('makes deviates of 53 random bits by the polar method', () => {
    const ours = normalDeviates(mersenneTwister(5489));
    const theirs = mersenne(5489);
    const uniform = () => {
      const [high, low] = [theirs.next() >>> 0, theirs.next() >>> 0];
      return ((high >>> 5) * 2 ** 26 + (low >>> 6) + 0.5) / 2 ** 53;
    };
    for (let pair = 0; pair < 700;) {
      const [u, v] = [2 * uniform() - 1, 2 * uniform() - 1];
      const s = u * u + v * v;
      if (s >= 1) continue;
      const interval = Math.sqrt((-2 * Math.log(s)) / s);
      expectClose(ours(), u * interval);
      expectClose(ours(), v * interval);
      pair += 1;
    }
  });
});
