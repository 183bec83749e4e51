import { Math, square } from '../quantity/maths.js';
import { mean, sumOf } from './sums.js';

/** A test for a normal distribution, by skewness and kurtosis together. */
export interface Normality {
  /** 0 where values lie evenly about their mean; above 0 for a long tail upwards. */
  readonly skewness: number;
  /** 0 for a normal distribution; above 0 for heavy tails. */
  readonly excessKurtosis: number;
  /** p value of the K² test. */
  readonly chance: number;
}

const LEAST = 20;

const cubeRoot = (value: number): number => (value < 0 ? -1 : 1) * Math.exp(Math.log(Math.abs(value)) / 3);

/**
 * The K² test of skewness and kurtosis, from 20 values on; undefined where they do not vary.
 * Source: Am Stat 1990;44(4):316–321 (from memory).
 */
export function normalityOf(values: Float64Array): Normality | undefined {
  const n = values.length;
  if (n < LEAST) return undefined;
  const middle = mean(values);
  const m2 = sumOf(n, (row) => square(values[row]! - middle)) / n;
  if (!(m2 > square(1e-12 * middle))) return undefined;
  const m3 = sumOf(n, (row) => square(values[row]! - middle) * (values[row]! - middle)) / n;
  const m4 = sumOf(n, (row) => square(square(values[row]! - middle))) / n;
  const skewness = m3 / (m2 * Math.sqrt(m2));
  const kurtosis = m4 / square(m2);
  // Skewness: transformed to normal by an inverse hyperbolic sine.
  const y = skewness * Math.sqrt(((n + 1) * (n + 3)) / (6 * (n - 2)));
  const beta = (3 * (n * n + 27 * n - 70) * (n + 1) * (n + 3)) / ((n - 2) * (n + 5) * (n + 7) * (n + 9));
  const w2 = Math.sqrt(2 * (beta - 1)) - 1;
  const alpha = Math.sqrt(2 / (w2 - 1));
  const z1 = Math.log(Math.abs(y / alpha) + Math.sqrt(square(y / alpha) + 1)) / Math.sqrt(Math.log(w2) / 2);
  // Kurtosis: transformed to normal by a cube root.
  const expected = (3 * (n - 1)) / (n + 1);
  const variance = (24 * n * (n - 2) * (n - 3)) / (square(n + 1) * (n + 3) * (n + 5));
  const x = (kurtosis - expected) / Math.sqrt(variance);
  const root =
    ((6 * (n * n - 5 * n + 2)) / ((n + 7) * (n + 9))) * Math.sqrt((6 * (n + 3) * (n + 5)) / (n * (n - 2) * (n - 3)));
  const a = 6 + (8 / root) * (2 / root + Math.sqrt(1 + 4 / square(root)));
  const denominator = 1 + x * Math.sqrt(2 / (a - 4));
  const z2 = denominator === 0 ? 0 : (1 - 2 / (9 * a) - cubeRoot((1 - 2 / a) / denominator)) / Math.sqrt(2 / (9 * a));
  return { skewness, excessKurtosis: kurtosis - 3, chance: Math.exp(-(square(z1) + square(z2)) / 2) };
}
