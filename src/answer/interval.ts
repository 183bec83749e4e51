import { frozen } from '../quantity/frozen.js';
import { Math, square } from '../quantity/maths.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { Assumption, ErrorPart } from './answer.js';
import type { AnswerAssumption } from './codes.js';

/** Errors are assumed to be normal in the unit of the answer. */
export const normalInterval: Assumption = frozen({
  code: 'normal-interval' satisfies AnswerAssumption,
});
/** Errors are assumed to be shares of the value. */
export const logNormalInterval: Assumption = frozen({
  code: 'log-normal-interval' satisfies AnswerAssumption,
});

function inQuadrature(errors: readonly ErrorPart[]): number {
  let variance = 0;
  for (const error of errors) variance += square(error.standardDeviation);
  return Math.sqrt(variance);
}

/** A 95 % interval around a value from errors in its unit that add in quadrature. */
export function interval(value: number, errors: readonly ErrorPart[]) {
  const standardDeviation = inQuadrature(errors);
  return {
    lower: value - NORMAL_95 * standardDeviation,
    upper: value + NORMAL_95 * standardDeviation,
    level: 0.95 as const,
    standardDeviation,
    errors,
  };
}

/**
 * A 95 % interval around a value whose errors are shares of it: value × exp(∓ 1.96 s), s the deviation of ln(value),
 * where it is known from elsewhere too.
 */
export function logInterval(value: number, errors: readonly ErrorPart[], standardDeviation = inQuadrature(errors)) {
  const factor = Math.exp(NORMAL_95 * standardDeviation);
  return {
    lower: value / factor,
    upper: value * factor,
    level: 0.95 as const,
    standardDeviation,
    scale: 'log' as const,
    errors,
  };
}
