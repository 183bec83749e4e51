import { Math } from '../quantity/maths.js';
import { betaChance, fQuantile } from './beta.js';
import { NORMAL_95, normalQuantile } from './normal.js';

const TWO_OVER_PI = 2 / Math.PI;

/**
 * The angle of a sine and its cosine, from 0 to π/2: four times a quarter of it, by Euler’s series for the arctangent,
 * whose terms are products. Every engine rounds those alike; an arctangent of its own it does not.
 */
function angleOf(sine: number, cosine: number): number {
  const half = sine / (1 + cosine);
  const quarter = half / (1 + Math.sqrt(1 + half * half));
  const sine2 = (quarter * quarter) / (1 + quarter * quarter);
  let term = quarter / (1 + quarter * quarter);
  let sum = term;
  for (let even = 2, before = 0; sum > before; even += 2) {
    before = sum;
    term *= (even * sine2) / (even + 1);
    sum += term;
  }
  return 4 * sum;
}

/** A(t | ν), the chance that |T| is below t, for whole degrees of freedom: the finite sums 26.7.3 and 26.7.4. */
function chanceWithin(t: number, degrees: number): number {
  const cosine2 = degrees / (degrees + t * t);
  const odd = degrees % 2 === 1;
  let term = odd ? Math.sqrt(cosine2) : 1;
  let sum = degrees === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= (cosine2 * (k - 1)) / k;
    sum += term;
  }
  const sine = t / Math.sqrt(degrees + t * t);
  return odd ? TWO_OVER_PI * (angleOf(sine, Math.sqrt(cosine2)) + sine * sum) : sine * sum;
}

/** From here on the expansion in 1 / ν is exact to the digits of a double. */
const MANY_DEGREES = 1000;

/**
 * The quantile t of Student’s t, for a chance of at least ½ and ν > 0 degrees of freedom.
 *
 * Whole degrees up to 1000: Newton’s method on the finite sums for the chance within ± t (26.7.3 and 26.7.4 of the
 * Handbook of Mathematical Functions, 1964), which are exact. Above 1000: the expansion in 1 / ν (26.7.5), whose
 * first term left out is below 1e-13 there. Others: by the quantile of F.
 */
export function studentQuantile(chance: number, degrees: number): number {
  const within = 2 * chance - 1;
  if (degrees <= MANY_DEGREES && !Number.isInteger(degrees)) return Math.sqrt(fQuantile(within, 1, degrees));
  const z = chance === 0.975 ? NORMAL_95 : normalQuantile(chance);
  if (degrees > MANY_DEGREES) {
    const z2 = z * z;
    return (
      z +
      (z * (z2 + 1)) / (4 * degrees) +
      (z * ((5 * z2 + 16) * z2 + 3)) / (96 * degrees * degrees) +
      (z * (((3 * z2 + 19) * z2 + 17) * z2 - 15)) / (384 * degrees * degrees * degrees) +
      (z * ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945)) / (92160 * degrees * degrees * degrees * degrees)
    );
  }
  // Density at 0 relative to its limit, by the recurrence of the gamma function: 2 f(0) is the slope of A at 0.
  let slope = degrees % 2 === 1 ? TWO_OVER_PI : 1 / Math.SQRT2;
  for (let k = degrees % 2 === 1 ? 1 : 2; k < degrees; k += 2) slope *= ((k + 1) / k) * Math.sqrt(k / (k + 2));
  // A bends downwards, so from z, which is below t, every step of Newton’s stays below: it ends where none rises.
  let t = z;
  for (let step = 0, before = -1; t > before && step < 1000; step += 1) {
    before = t;
    // (1 + t² / ν) to the power of −(ν + 1) / 2, multiplied out.
    const cosine2 = degrees / (degrees + t * t);
    let density = degrees % 2 === 1 ? slope : slope * Math.sqrt(cosine2);
    for (let k = 2; k <= degrees + 1; k += 2) density *= cosine2;
    t -= (chanceWithin(t, degrees) - within) / density;
  }
  return t;
}

/** The quantile that bounds the middle 95 %. */
export const studentT95 = (degrees: number): number => studentQuantile(0.975, degrees);

/** The chance that Student’s t is above t. */
export function studentTail(t: number, degrees: number): number {
  const half = betaChance(degrees / (degrees + t * t), degrees / 2, 0.5) / 2;
  return t >= 0 ? half : 1 - half;
}
