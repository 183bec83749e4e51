import { Math } from './maths.js';

/*
 * Decimals, on plain numbers as long as those hold every digit and on big integers beyond. Each number enters at 12
 * significant digits, so that an equation that gives 159.99999999999997 for 160 does not lose a whole gauge step; sums,
 * differences and products keep every digit, quotients 40 places; what leaves is the double nearest to the decimal.
 */

/** Which multiple is taken: the one not above, or the one nearest. */
export type Rounding = 'down' | 'nearest';

/** A decimal: a whole number times 10 to the power of `exponent`. */
export interface Exact {
  readonly whole: number | bigint;
  readonly exponent: number;
}

/** Decimal places of most numbers that people enter, and that many tens. */
const PLACES = 6;
const TENS = 1e6;
/** The first number of more than 12 digits. */
const LONG = 1e12;
/** Powers of ten that a double holds exactly. */
const POWERS = /* @__PURE__ */ (() => Array.from({ length: 23 }, (_, tens) => Number(`1e${tens}`)))();

const isWhole = (value: number): boolean => Number.isInteger(value) && Math.abs(value) < LONG;

/** A finite number at 12 significant digits. */
export function exact(value: number): Exact {
  if (isWhole(value)) return { whole: value, exponent: 0 };
  const whole = Math.round(value * TENS);
  // The quotient is the double nearest to that decimal: where it is the value, these are its digits.
  if (whole / TENS === value && Math.abs(whole) < LONG) return { whole, exponent: -PLACES };
  const [mantissa, exponent] = value.toExponential(11).split('e') as [string, string];
  return { whole: Number(mantissa.replace('.', '')), exponent: Number(exponent) - 11 };
}

export const ZERO: Exact = /* @__PURE__ */ exact(0);

/** Whether a result that was computed in doubles has every digit. */
const isExact = (whole: number): boolean => Math.abs(whole) <= Number.MAX_SAFE_INTEGER;

/** The double nearest to a decimal. */
export function toNumber({ whole, exponent }: Exact): number {
  const tens = POWERS[-exponent];
  // Both are doubles, so the quotient is rounded once.
  return typeof whole === 'number' && tens ? whole / tens : Number(`${whole}e${exponent}`);
}

export function times({ whole: a, exponent }: Exact, { whole: b, exponent: other }: Exact): Exact {
  const whole = typeof a === 'number' && typeof b === 'number' ? a * b : NaN;
  return { whole: isExact(whole) ? whole : BigInt(a) * BigInt(b), exponent: exponent + other };
}

const withZeros = (whole: number | bigint, count: number): bigint => BigInt(`${whole}${'0'.repeat(count)}`);

/** A whole number with more tens. */
function raised(whole: number | bigint, tens: number): number | bigint {
  const more = typeof whole === 'number' ? whole * POWERS[tens]! : NaN;
  return isExact(more) ? more : withZeros(whole, tens);
}

/** Two decimals as whole numbers of the same tens. */
function aligned(a: Exact, b: Exact) {
  const exponent = Math.min(a.exponent, b.exponent);
  return [raised(a.whole, a.exponent - exponent), raised(b.whole, b.exponent - exponent), exponent] as const;
}

export function plus(a: Exact, b: Exact): Exact {
  const [first, second, exponent] = aligned(a, b);
  const whole = typeof first === 'number' && typeof second === 'number' ? first + second : NaN;
  return { whole: isExact(whole) ? whole : BigInt(first) + BigInt(second), exponent };
}

export const minus = (a: Exact, b: Exact): Exact => plus(a, { whole: -b.whole, exponent: b.exponent });

/** Below 0 where the first is less, above 0 where it is more, 0 where they are equal. */
export const compare = (a: Exact, b: Exact): number => Number(minus(a, b).whole);

/** A decimal without its sign. */
export const size = (a: Exact): Exact => (a.whole < 0 ? minus(ZERO, a) : a);

/** The sum of decimals. */
export const exactSum = (parts: readonly Exact[]): Exact => parts.reduce(plus, ZERO);

/** A quotient, with every digit that a double of 12 digits over another can tell. */
const divided = (a: Exact, b: Exact): Exact => ({
  whole: withZeros(a.whole, 40) / BigInt(b.whole),
  exponent: a.exponent - b.exponent - 40,
});

/** A quotient that is calculated with further; the divisor is not 0. */
export function over(a: Exact, b: Exact): Exact {
  const [first, second] = aligned(a, b);
  const whole = typeof first === 'number' && typeof second === 'number' ? first * TENS : NaN;
  // Most quotients end within these places.
  const isShort = isExact(whole) && whole % Number(second) === 0;
  return isShort ? { whole: whole / Number(second), exponent: -PLACES } : divided(a, b);
}

/** The double nearest to a quotient; the divisor is not 0. */
export function quotient(a: Exact, b: Exact): number {
  const [first, second] = aligned(a, b);
  return typeof first === 'number' && typeof second === 'number' ? first / second : toNumber(divided(a, b));
}

/** How many times one decimal is contained whole in another, neither below 0. */
export function wholeTimes(a: Exact, b: Exact): number {
  const [first, second] = aligned(a, b);
  if (typeof first === 'number' && typeof second === 'number') return (first - (first % second)) / second;
  return Number(BigInt(first) / BigInt(second));
}

/** A part as a percentage of a whole: 2.5 of 50 is 5. */
export const percentage = (part: number, whole: number): number =>
  quotient(times(exact(part), { whole: 1, exponent: 2 }), exact(whole));

/** A finite number with every digit that tells it from its neighbours. */
function inFull(value: number): Exact {
  const [mantissa, tens = '0'] = String(value).split('e') as [string, string?];
  const [whole, places = ''] = mantissa.split('.') as [string, string?];
  return { whole: BigInt(whole + places), exponent: Number(tens) - places.length };
}

/**
 * A value times one factor over another, with every digit of the double going in. Where the result is a decimal of 13
 * digits as nearly as doubles can tell, it is that decimal: so that what is converted to another unit and back is as
 * it was.
 */
export function scaled(value: number, factor: number, divisor: number): number {
  const [part, whole] = [times(inFull(value), exact(factor)), exact(divisor)];
  const result = quotient(part, whole);
  if (!Number.isFinite(result)) return result;
  const short = Number(result.toPrecision(13));
  const apart = size(minus(times(inFull(short), whole), part));
  return compare(apart, times(size(part), { whole: 4, exponent: -16 })) <= 0 ? short : result;
}

/** Exact product in decimals: 0.57 × 300 is 171. */
export function product(first: number, ...others: readonly number[]): number {
  const values = [first, ...others];
  if (!values.every(Number.isFinite)) return values.reduce((product, value) => product * value);
  return toNumber(others.reduce((product, value) => times(product, exact(value)), exact(first)));
}

/** Exact sum in decimals: 0.1 + 0.1 + 0.1 is 0.3. */
export function sum(values: readonly number[]): number {
  // Whole numbers are exact as they are.
  if (values.every(isWhole) || !values.every(Number.isFinite)) return values.reduce((sum, value) => sum + value, 0);
  return toNumber(values.map(exact).reduce(plus));
}

/** A value brought to a multiple of a step above zero, in decimals. `nearest` takes half a step up. */
export function roundToStep(value: number, step: number, rounding: Rounding): number {
  const by = exact(step);
  // The quotient is brought to 12 digits too: 0.3 / 0.1 must be 3 steps.
  const steps = Number(quotient(exact(value), by).toPrecision(12));
  const whole = Math.floor(rounding === 'down' ? steps : steps + 0.5);
  return Number.isFinite(whole) ? toNumber(times(exact(whole), by)) : whole;
}
