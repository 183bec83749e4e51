import { Decimal as Shared } from 'decimal.js';

/** A private clone: a host that sets the shared precision cannot change an answer. */
const Private = Shared.clone({ defaults: true, precision: 40 });

export type Decimal = Shared;

/** As it was when the library was loaded; not from maths.ts, so that the built file of decimals imports no other. */
const { ceil } = globalThis.Math;

/**
 * decimal.js reads the host’s `Math.ceil` anew at each call: where that was changed, sums go wrong and some never end.
 * So what enters decimals asks first.
 */
function enter(value: number | string): Decimal {
  if (globalThis.Math.ceil !== ceil)
    throw new Error('Math.ceil was changed after the library was loaded: decimal.js cannot compute without it.');
  return new Private(value);
}

/** Whole numbers that decimals and doubles hold alike, sums of thousands of them included. */
const isPlain = (value: number): boolean => Number.isInteger(value) && value < 1e12 && value > -1e12;

/**
 * A double enters decimal arithmetic at 12 significant digits, so that an equation that gives
 * 159.99999999999997 for 160 does not lose a whole gauge step.
 */
export const decimal = (value: number): Decimal => enter(isPlain(value) ? value : value.toPrecision(12));

/**
 * A value times one factor over another, with every digit of the double going in. Where the result is a decimal of 13
 * digits as nearly as doubles can tell, it is that decimal: so that what is converted to another unit and back is as
 * it was.
 */
export function scaled(value: number, times: number, over: number): number {
  const result = enter(value).times(times).div(over);
  const short = result.toSignificantDigits(13);
  return (short.minus(result).abs().lte(result.abs().times(4e-16)) ? short : result).toNumber();
}
