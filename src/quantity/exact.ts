import { Math } from './maths.js';

/*
 * One sum, product or rounding in decimals, on plain numbers. Each number enters at 12 significant digits, so that an
 * equation that gives 159.99999999999997 for 160 does not lose a whole gauge step, and the result is the double nearest
 * to the exact one. Longer calculations stay in decimals from end to end, see decimal.ts.
 */

/** Which multiple is taken: the one not above, or the one nearest. */
export type Rounding = 'down' | 'nearest';

/** A decimal: a whole number times 10 to the power of `exponent`. */
interface Digits {
  readonly whole: number | bigint;
  readonly exponent: number;
}

/** Powers of ten, as far as doubles hold them exactly. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
/** Decimal places of most numbers that people enter, fewest first: few digits keep products short. */
const PLACES = [0, 3, 6];
/** The first number of more than 12 digits. */
const LONG = 1e12;

/** Many times what a quotient changes by, as a share of it, where it, value and step are brought to 12 digits. */
const CLEAR = 1e-9;

const isWhole = (value: number): boolean => Number.isInteger(value) && Math.abs(value) < LONG;

/** A finite number at 12 significant digits. */
function digitsOf(value: number): Digits {
  for (const places of PLACES) {
    const whole = Math.round(value * TENS[places]!);
    // The quotient is the double nearest to that decimal: where it is the value, these are its digits.
    if (whole / TENS[places]! === value && Math.abs(whole) < LONG) return { whole, exponent: -places };
  }
  const places = 11 - Math.floor(Math.log10(Math.abs(value)));
  const long = value * (TENS[places] ?? NaN);
  const whole = Math.round(long);
  // Far enough from half a digit, the product’s own rounding decides nothing. Where the logarithm is one digit out, the
  // value is a power of ten to 12 digits, which one digit more or less does not change.
  if (Math.abs(long - whole) < 0.49) return { whole, exponent: -places };
  const [mantissa, exponent] = value.toExponential(11).split('e') as [string, string];
  return { whole: Number(mantissa.replace('.', '')), exponent: Number(exponent) - 11 };
}

/** Whether a result that was computed in doubles has every digit. */
const isExact = (whole: number): boolean => Math.abs(whole) <= Number.MAX_SAFE_INTEGER;

/** The double nearest to a decimal. */
function nearest({ whole, exponent }: Digits): number {
  const under = TENS[-exponent];
  // Both are exact, so the quotient is rounded once.
  if (typeof whole === 'number' && under !== undefined) return whole / under;
  return Number(`${whole}e${exponent}`);
}

function times({ whole: a, exponent }: Digits, { whole: b, exponent: other }: Digits): Digits {
  const whole = typeof a === 'number' && typeof b === 'number' ? a * b : NaN;
  return { whole: isExact(whole) ? whole : BigInt(a) * BigInt(b), exponent: exponent + other };
}

const withZeros = (whole: number | bigint, count: number): bigint => BigInt(`${whole}${'0'.repeat(count)}`);

/** A whole number with more tens. */
function raised(whole: number | bigint, tens: number): number | bigint {
  const more = typeof whole === 'number' ? whole * (TENS[tens] ?? NaN) : NaN;
  return isExact(more) ? more : withZeros(whole, tens);
}

function plus(a: Digits, b: Digits): Digits {
  const exponent = Math.min(a.exponent, b.exponent);
  const [first, second] = [raised(a.whole, a.exponent - exponent), raised(b.whole, b.exponent - exponent)];
  const whole = typeof first === 'number' && typeof second === 'number' ? first + second : NaN;
  return { whole: isExact(whole) ? whole : BigInt(first) + BigInt(second), exponent };
}

/** The double nearest to a quotient. */
function quotient(a: Digits, b: Digits): number {
  const exponent = Math.min(a.exponent, b.exponent);
  const [over, under] = [raised(a.whole, a.exponent - exponent), raised(b.whole, b.exponent - exponent)];
  if (typeof over === 'number' && typeof under === 'number') return over / under;
  // With 12 digits each, so many places hold every digit that a double can tell.
  return nearest({ whole: withZeros(a.whole, 40) / BigInt(b.whole), exponent: a.exponent - b.exponent - 40 });
}

/** Exact product in decimals: 0.57 × 300 is 171. */
export function product(first: number, ...others: readonly number[]): number {
  const values = [first, ...others];
  if (!values.every(Number.isFinite)) return values.reduce((total, value) => total * value);
  return nearest(others.reduce((total, value) => times(total, digitsOf(value)), digitsOf(first)));
}

/** Exact sum in decimals: 0.1 + 0.1 + 0.1 is 0.3. */
export function sum(values: readonly number[]): number {
  const total = values.reduce((sum, value) => sum + value, 0);
  // Whole numbers are exact as they are.
  if (values.every(isWhole) || !values.every(Number.isFinite)) return total;
  return nearest(values.map(digitsOf).reduce(plus));
}

/** Exact quotient in decimals of one product over another, as the double nearest to it: 1 × 100 over 3 × 60 is 0.555…. */
export const ratio = (over: readonly number[], under: readonly number[]): number =>
  quotient(over.map(digitsOf).reduce(times), under.map(digitsOf).reduce(times));

/** A part as a percentage of a whole, in decimals of 12 digits: 2.5 of 50 is 5. */
export const percentage = (part: number, whole: number): number => ratio([part, 100], [whole]);

/** A value brought to a multiple of a step above zero, in decimals. `nearest` takes half a step up. */
export function roundToStep(value: number, step: number, rounding: Rounding): number {
  if (isWhole(value) && value % step === 0 && isWhole(step)) return value;
  const by = digitsOf(step);
  const rough = value / step + (rounding === 'down' ? 0 : 0.5);
  const below = Math.floor(rough);
  const [over, under] = [rough - below, below + 1 - rough];
  // Far enough from the next multiple, the 13th digit decides nothing.
  if (Math.min(over, under) > CLEAR * (Math.abs(rough) + 1)) return nearest(times(digitsOf(below), by));
  // The quotient is brought to 12 digits too: 0.3 / 0.1 must be 3 steps.
  const steps = Number(quotient(digitsOf(value), by).toPrecision(12));
  const whole = Math.floor(rounding === 'down' ? steps : steps + 0.5);
  return Number.isFinite(whole) ? nearest(times(digitsOf(whole), by)) : whole;
}
