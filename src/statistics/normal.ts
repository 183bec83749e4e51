import { Math } from '../quantity/maths.js';
import { rootOf } from './root.js';

/** Standard normal quantile of a two-sided 95 % interval. */
export const NORMAL_95 = 1.959963984540054;

/** Below it, ½ less the series leaves too few digits of the tail. */
const TAIL = -1;

/**
 * The chance that a standard normal deviate is at most x. Series of J Stat Softw 2004;11(4):
 * Φ(x) = ½ + φ(x) × (x + x³/3 + x⁵/(3 × 5) + x⁷/(3 × 5 × 7) + …). Its error is below 1e-14; beyond ± 8 it is 0 or 1. The
 * lower tail is the continued fraction φ(x) / (z + 1/(z + 2/(z + 3/(z + …)))) with z = −x, of the NIST Digital Library of
 * Mathematical Functions, 7.9.1, which keeps its digits however small it is.
 *
 * exp(x²/2) is summed as its own series, 1 + x²/2 + x⁴/(2 × 4) + …, because engines round `Math.exp` differently, and
 * the tails would enlarge that. All terms are positive, so no digits are lost.
 */
export function normalChance(x: number): number {
  if (x <= -8) return 0;
  if (x >= 8) return 1;
  // The series would never settle.
  if (x !== x) return NaN;
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
  const overDensity = exponential * Math.sqrt(2 * Math.PI);
  if (x >= TAIL) return Math.min(1, 0.5 + sum / overDensity);
  let fraction = -x;
  // Enough steps for every digit: the more the smaller x is.
  for (let step = 20 + Math.ceil(400 / square); step > 0; step -= 1) fraction = step / fraction - x;
  return 1 / (overDensity * fraction);
}

/** The x at which {@link normalChance} is `chance`. */
export const normalQuantile = (chance: number): number => rootOf(normalChance, chance, -8, 8);
