import { Math } from '../quantity/maths.js';
import { logGamma, offZero } from './gamma.js';
import { rootOf } from './root.js';

/** Below and above x: the incomplete gamma functions P(a, x) and Q(a, x), of which the smaller is worked out. */
function gammaChances(a: number, x: number): readonly [below: number, above: number] {
  if (x <= 0) return [0, 1];
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    // The series 6.5.29 of the Handbook of Mathematical Functions, 1964.
    let term = 1 / a;
    let sum = term;
    for (let k = 1, before = NaN; sum !== before && k < 100_000; k += 1) {
      before = sum;
      term *= x / (a + k);
      sum += term;
    }
    return [sum * front, 1 - sum * front];
  }
  // Its continued fraction 6.5.31, in steps of two, evaluated forwards.
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let fraction = d;
  for (let k = 1, before = NaN; fraction !== before && k < 100_000; k += 1) {
    before = fraction;
    b += 2;
    d = 1 / offZero(b - k * (k - a) * d);
    c = offZero(b - (k * (k - a)) / c);
    fraction *= c * d;
  }
  return [1 - fraction * front, fraction * front];
}

/** The chance that a chi-square of `degrees` is at most x. */
export const chiSquareChance = (x: number, degrees: number): number => gammaChances(degrees / 2, x / 2)[0];

/** The chance that it is above x. */
export const chiSquareTail = (x: number, degrees: number): number => gammaChances(degrees / 2, x / 2)[1];

/** The chi-square with `degrees` that is exceeded with the chance 1 − `chance`. */
export function chiSquareQuantile(chance: number, degrees: number): number {
  let most = degrees + 10;
  while (chiSquareChance(most, degrees) < chance) most *= 2;
  return rootOf((x) => chiSquareChance(x, degrees), chance, 0, most);
}
