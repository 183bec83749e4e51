import type { Answer } from '../answer/answer.js';
import { Math } from '../quantity/maths.js';

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

/** The x at which {@link normalChance} is `chance`, by halving. */
export function normalQuantile(chance: number): number {
  let [low, high] = [-8, 8];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (normalChance(middle) <= chance) low = middle;
    else high = middle;
  }
  return low;
}

type Spread = Pick<Answer, 'value' | 'standardDeviation' | 'scale'>;

/** The chance that the true value of an answer is at or below x; `undefined` where its error is not known. */
export function chanceAtOrBelow(x: number, { value, standardDeviation, scale }: Spread): number | undefined {
  if (standardDeviation === undefined) return undefined;
  if (standardDeviation === 0) return x >= value ? 1 : 0;
  return normalChance((scale === 'log' ? Math.log(x / value) : x - value) / standardDeviation);
}

/** The x at which {@link chanceAtOrBelow} is `chance`. */
export function valueAtChance(chance: number, { value, standardDeviation = 0, scale }: Spread): number {
  const shift = normalQuantile(chance) * standardDeviation;
  return scale === 'log' ? value * Math.exp(shift) : value + shift;
}

/** A standard deviation in the unit of the answer, whichever scale it stands on. */
export const deviationInUnit = ({ value, standardDeviation = 0, scale }: Spread): number =>
  scale === 'log' ? value * standardDeviation : standardDeviation;

/** The same as a share of the value. */
export const deviationAsShare = ({ value, standardDeviation = 0, scale }: Spread): number =>
  scale === 'log' ? standardDeviation : standardDeviation / value;

/**
 * The chance that a chi-square of so many degrees of freedom is above x, by the finite sums 26.4.4 and 26.4.5 of the
 * Handbook of Mathematical Functions, 1964.
 */
export function chiSquareTail(x: number, degrees: number): number {
  if (x <= 0) return 1;
  const odd = degrees % 2 === 1;
  let chance = odd ? 2 * normalChance(-Math.sqrt(x)) : Math.exp(-x / 2);
  let term = odd ? Math.sqrt((2 * x) / Math.PI) * Math.exp(-x / 2) : (Math.exp(-x / 2) * x) / 2;
  for (let nu = odd ? 3 : 4; nu <= degrees; nu += 2) {
    chance += term;
    term *= x / nu;
  }
  return Math.min(1, chance);
}
