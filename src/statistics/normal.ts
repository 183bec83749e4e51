import { Math } from '../quantity/maths.js';
import { rootOf } from './root.js';

/** Standard normal quantile of a two-sided 95 % interval. */
export const NORMAL_95 = 1.959963984540054;

/**
 * The chance that a standard normal deviate is at most x. Series of J Stat Softw 2004;11(4):
 * Φ(x) = ½ + φ(x) × (x + x³/3 + x⁵/(3 × 5) + x⁷/(3 × 5 × 7) + …). Its error is below 1e-14; beyond ± 8 it is 0 or 1.
 *
 * exp(x²/2) is summed as its own series, 1 + x²/2 + x⁴/(2 × 4) + …, because engines round `Math.exp` differently, and
 * in the tails the difference from ½ would enlarge that. All terms are positive, so no digits are lost.
 */
export function normalChance(x: number): number {
  if (x <= -8) return 0;
  if (x >= 8) return 1;
  const square = x * x;
  let [sum, term] = [x, x];
  let [exponential, part] = [1, 1];
  for (let odd = 3, before = [NaN, NaN]; sum !== before[0] || exponential !== before[1]; odd += 2) {
    before = [sum, exponential];
    term *= square / odd;
    sum += term;
    part *= square / (odd - 1);
    exponential += part;
  }
  return Math.min(1, Math.max(0, 0.5 + sum / (exponential * Math.sqrt(2 * Math.PI))));
}

/** The x at which {@link normalChance} is `chance`. */
export const normalQuantile = (chance: number): number => rootOf(normalChance, chance, -8, 8);
