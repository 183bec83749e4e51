import { Math } from '../quantity/maths.js';
import { product, roundToStep, type Rounding } from '../quantity/exact.js';

/*
 * Percentages brought to a step, to the very digit that decimals give. Doubles decide away from the edge between two
 * steps; decimals, ten times as slow, on it.
 */

/** Nearer than this to an edge between two steps, as a share, doubles are not to be trusted. */
export const DOUBT = 1e-9;

/** p / 100 × x. */
export const exactShare = (percent: number, value: number): number => product(percent / 100, value);

/** The most tens that a step is a fraction of. */
const FINEST = 1e6;

/** A step as a fraction of whole numbers; its multiples are then exact to the last digit. */
export interface Step {
  readonly step: number;
  readonly count: number;
  readonly scale: number;
}

export function stepOf(step: number): Step {
  for (let scale = 1; scale <= FINEST; scale *= 10) {
    if (Number.isInteger(step * scale)) return { step, count: step * scale, scale };
  }
  return { step, count: NaN, scale: NaN };
}

/** Whole steps, as doubles tell them; NaN near an edge. */
function stepsByDoubles(value: number, step: number, rounding: Rounding): number {
  const steps = value / step + (rounding === 'nearest' ? 0.5 : 0);
  const whole = Math.floor(steps);
  const doubt = DOUBT * (1 + steps);
  return steps - whole > doubt && whole + 1 - steps > doubt ? whole : NaN;
}

/** p / 100 × x brought to a step. */
export function roundShare(percent: number, value: number, by: Step, rounding: Rounding): number {
  const { step, count, scale } = by;
  const quick = (stepsByDoubles((percent / 100) * value, step, rounding) * count) / scale;
  return quick === quick ? quick : roundToStep(exactShare(percent, value), step, rounding);
}

/**
 * The place of the last of `sorted` that is not above a value, by halving; −1 where there is none.
 */
export function placeBelow(sorted: readonly number[], value: number): number {
  let low = -1;
  let high = sorted.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= value) low = middle;
    else high = middle;
  }
  return low;
}
