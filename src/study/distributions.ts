import { Math } from '../quantity/maths.js';
import { normalChance } from '../pressure/normal.js';

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
const offZero = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);

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

/** The chance that a chi-square of `degrees` is at most x: the incomplete gamma function, by its series (6.5.29). */
export function chiSquareChance(x: number, degrees: number): number {
  if (x <= 0) return 0;
  const a = degrees / 2;
  const half = x / 2;
  let term = 1 / a;
  let sum = term;
  for (let k = 1, before = NaN; sum !== before; k += 1) {
    before = sum;
    term *= half / (a + k);
    sum += term;
  }
  return Math.min(1, sum * Math.exp(a * Math.log(half) - half - logGamma(a)));
}

/** Where a rising function reaches `wanted`, by halving to the last bit. */
function rootOf(rising: (x: number) => number, wanted: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    if (rising(middle) < wanted) low = middle;
    else high = middle;
  }
}

/** The chi-square with `degrees` that is exceeded with the chance 1 − `chance`. */
export function chiSquareQuantile(chance: number, degrees: number): number {
  let most = degrees + 10;
  while (chiSquareChance(most, degrees) < chance) most *= 2;
  return rootOf((x) => chiSquareChance(x, degrees), chance, 0, most);
}

/** The quantile of F; degrees of freedom need not be whole. */
export function fQuantile(chance: number, upper: number, lower: number): number {
  // From the side that is the smaller, so that no digits are lost near 1.
  const share = rootOf((x) => betaChance(x, upper / 2, lower / 2), chance, 0, 1);
  if (share < 0.5) return (lower * share) / (upper * (1 - share));
  const rest = rootOf((x) => betaChance(x, lower / 2, upper / 2), 1 - chance, 0, 1);
  return (lower * (1 - rest)) / (upper * rest);
}

/** The chance that Student’s t is above t. */
export function studentTail(t: number, degrees: number): number {
  const half = betaChance(degrees / (degrees + t * t), degrees / 2, 0.5) / 2;
  return t >= 0 ? half : 1 - half;
}

/** The quantile of Student’s t, for `chance` of at least ½; degrees of freedom need not be whole. */
export const studentQuantile = (chance: number, degrees: number): number =>
  Math.sqrt(fQuantile(2 * chance - 1, 1, degrees));

/** Steps of the trapezoidal rule; its error falls exponentially here, because both ends of the integrand vanish. */
const STEPS = 240;

/**
 * The quantile of the noncentral t: of (Z + δ) / √(χ² / ν).
 *
 * P(T ≤ t) = ∫ Φ(t u − δ) f(u) du, u = √(χ² / ν), by the trapezoidal rule in w = ln u, in which
 * f(u) du ∝ exp(ν w − ν e^(2w) / 2) dw. The weights are divided by their sum.
 */
export function noncentralTQuantile(chance: number, degrees: number, delta: number): number {
  const logDensity = (w: number): number => degrees * (w - (Math.exp(2 * w) - 1) / 2);
  const low = rootOf(logDensity, -40, -100, 0);
  const high = -rootOf((w) => logDensity(-w), -40, -100, 0);
  const points = Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS);
  const weights = points.map((w) => Math.exp(logDensity(w)));
  const spreads = points.map((w) => Math.exp(w));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const below = (t: number): number =>
    weights.reduce((sum, weight, step) => sum + weight * normalChance(t * spreads[step]! - delta), 0) / total;
  let reach = Math.abs(delta) + 10;
  while (below(reach) < chance || below(-reach) > chance) reach *= 2;
  // False position, the end that stays halved (Illinois): a tenth of the steps of halving.
  let [from, to] = [-reach, reach];
  let [under, over] = [below(from) - chance, below(to) - chance];
  for (let step = 0, side = 0; step < 200; step += 1) {
    const at = (from * over - to * under) / (over - under);
    const off = below(at) - chance;
    if (Math.abs(off) < 1e-15 || !(at > from && at < to)) return at;
    if (off < 0) {
      [from, under] = [at, off];
      if (side < 0) over /= 2;
      side = -1;
    } else {
      [to, over] = [at, off];
      if (side > 0) under /= 2;
      side = 1;
    }
  }
  return (from + to) / 2;
}

/** The chance that at most `count` of n happen, each with chance p: a binomial. */
export const binomialChance = (count: number, n: number, p: number): number =>
  count < 0 ? 0 : count >= n ? 1 : betaChance(1 - p, n - count, count + 1);
