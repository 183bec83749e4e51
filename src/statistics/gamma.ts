import { Math } from '../quantity/maths.js';

/** ln Γ(x), x > 0: Stirling’s series (6.1.40 of the Handbook of Mathematical Functions, 1964), moved up to x ≥ 15. */
export function logGamma(x: number): number {
  let product = 1;
  let at = x;
  for (; at < 15; at += 1) product *= at;
  const over2 = 1 / (at * at);
  const series = (1 / 12 - over2 * (1 / 360 - over2 * (1 / 1260 - over2 * (1 / 1680 - over2 / 1188)))) / at;
  return (at - 0.5) * Math.log(at) - at + Math.log(2 * Math.PI) / 2 + series - Math.log(product);
}

/** Keeps a divisor of a continued fraction away from 0. */
export const offZero = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);
