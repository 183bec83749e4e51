import { Math } from '../quantity/maths.js';
import { product, roundToStep, type Rounding } from '../quantity/exact.js';

/*
 * Percentages brought to a step, to the very digit that decimals give. Doubles decide wherever they can: away from the
 * edge between two steps by their value, on an edge by whole numbers where percentage, value and step are short
 * decimals. Decimals, a hundred times as slow, are left with the rest.
 */

/** Nearer than this to an edge between two steps, as a share, doubles are not to be trusted. */
export const DOUBT = 1e-9;
/** Decimals look at 12 digits of a number: at this distance, as a share, two numbers differ for them. */
const APART = 2e-11;
/** Units of a short decimal: of a value and, for a percentage, of the hundredth part of it. */
const UNIT = 1e6;

/** A short decimal in whole units of 1 / scale; NaN where its first 12 digits are not those of one. */
function inUnits(value: number, scale: number): number {
  const units = Math.round(value * scale);
  return units < 1e12 && Math.abs(value * scale - units) <= 1e-13 * units ? units : NaN;
}

/** p / 100 × x in whole units of 1e-12, of 12 digits at most; NaN where it has no such form. */
function shareInUnits(percent: number, value: number): number {
  const units = inUnits(value, UNIT) * inUnits(percent, UNIT / 100);
  if (!(units <= Number.MAX_SAFE_INTEGER)) return NaN;
  let last = 1;
  while (units / last >= 1e12) last *= 10;
  return units % last === 0 ? units : NaN;
}

/** p / 100 × x, the same to the last digit as `product`. */
export function exactShare(percent: number, value: number): number {
  const units = shareInUnits(percent, value);
  return units === units ? units / (UNIT * UNIT) : product(percent / 100, value);
}

/** A step as a fraction of whole numbers; its multiples are then exact to the last digit. */
export interface Step {
  readonly step: number;
  readonly count: number;
  readonly scale: number;
}

export function stepOf(step: number): Step {
  for (let scale = 1; scale <= UNIT; scale *= 10) {
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

/** Whole steps in whole units; NaN where 12 digits of the quotient might tell otherwise. */
function stepsByUnits(units: number, { count, scale }: Step, rounding: Rounding): number {
  const step = (count * UNIT * UNIT) / scale;
  const rest = units % step;
  const whole = (units - rest) / step;
  const above = rounding === 'down' ? rest : 2 * rest - step;
  if (above === 0) return rounding === 'down' ? whole : whole + 1;
  const near = APART * units;
  if (rounding === 'down') return rest > near && step - rest > near ? whole : NaN;
  return Math.abs(above) > near ? (above > 0 ? whole + 1 : whole) : NaN;
}

/** p / 100 × x brought to a step. */
export function roundShare(percent: number, value: number, by: Step, rounding: Rounding): number {
  const { step, count, scale } = by;
  if (count === count) {
    const quick = stepsByDoubles((percent / 100) * value, step, rounding);
    const steps = quick === quick ? quick : stepsByUnits(shareInUnits(percent, value), by, rounding);
    if (steps === steps) return (steps * count) / scale;
  }
  return roundToStep(exactShare(percent, value), step, rounding);
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
