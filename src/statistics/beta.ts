import { Math } from '../quantity/maths.js';
import { logGamma, offZero } from './gamma.js';
import { rootOf } from './root.js';

/** The incomplete beta function Iₓ(a, b), by its continued fraction (26.5.8), evaluated forwards. */
export function betaChance(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - betaChance(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x)) / a;
  let c = 1;
  let d = 1 / offZero(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1, before = NaN; fraction !== before && m < 100_000; m += 1) {
    before = fraction;
    for (const step of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      d = 1 / offZero(1 + step * d);
      c = offZero(1 + step / c);
      fraction *= c * d;
    }
  }
  return front * fraction;
}

/** The quantile of F; degrees of freedom need not be whole. */
export function fQuantile(chance: number, upper: number, lower: number): number {
  // From the side that is the smaller, so that no digits are lost near 1.
  const share = rootOf((x) => betaChance(x, upper / 2, lower / 2), chance, 0, 1);
  if (share < 0.5) return (lower * share) / (upper * (1 - share));
  const rest = rootOf((x) => betaChance(x, lower / 2, upper / 2), 1 - chance, 0, 1);
  return (lower * (1 - rest)) / (upper * rest);
}

/** The chance that at most `count` of n happen, each with chance p: a binomial. */
export const binomialChance = (count: number, n: number, p: number): number =>
  count < 0 ? 0 : count >= n ? 1 : betaChance(1 - p, n - count, count + 1);
