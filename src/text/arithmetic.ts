import { format } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { evaluated } from './formula.js';

/** What the symbols of a formula are: numbers, or sums and products of numbers as text. */
export type Values = Readonly<Record<string, number | string>>;

/** A formula with its numbers, as far as they are printed. */
export interface Calculation {
  /** The formula with numbers for its symbols. */
  readonly numbers: string;
  /** Whether every number in it is printed in full. */
  readonly exact: boolean;
  /** Whether the result printed is what those numbers give, and not rounded. */
  readonly equals: boolean;
  /** Whether the formula gives the value at all. */
  readonly matches: boolean;
}

const significant =
  (digits: number) =>
  (value: number): string =>
    String(Number(value.toPrecision(digits)));
/** How numbers are printed, the fewest digits first. */
const PRECISIONS = [format, ...[5, 6, 7, 8, 10, 12].map(significant), String];

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-11 * Math.max(1, Math.abs(a), Math.abs(b));

const NUMBER = /\d+(?:\.\d+)?(?:e[+-]?\d+)?/g;

/** A sum or product of numbers, each printed. */
export const printedSum = (sum: string, print: (value: number) => string): string =>
  sum.replace(NUMBER, (digits) => print(Number(digits)));

/** Puts numbers in the place of symbols. A sum gets brackets, unless it is the whole. */
function substituted(formula: string, values: Values, print: (value: number) => string): string {
  const number = (value: number | string): string => {
    if (typeof value === 'number') return value < 0 ? `(${print(value)})` : print(value);
    const sum = printedSum(value, print);
    return sum.includes(' + ') ? `(${sum})` : sum;
  };
  const whole = formula.replace(/\bsum\((\w+)\)|[A-Za-z_]\w*/g, (found, list?: string) => {
    const name = list ?? found;
    return Object.hasOwn(values, name) ? number(values[name]!) : found;
  });
  return /^\([^()]*\)$/.test(whole) ? whole.slice(1, -1) : whole;
}

/**
 * A formula with as many digits of each number as its printed result needs: you can check the line as it is printed.
 *
 * @param formula - with symbols
 * @param value - what it gives, exactly
 * @param printed - the number that is printed of a value, without its unit
 */
export function calculation(
  formula: string,
  values: Values,
  value: number,
  printed: (value: number) => string = format,
): Calculation {
  const result = printed(value);
  const known = Object.values(values).flatMap((one) =>
    typeof one === 'number' ? [one] : (one.match(NUMBER) ?? []).map(Number),
  );
  for (const print of PRECISIONS) {
    const numbers = substituted(formula, values, print);
    const found = evaluated(numbers);
    if (Number.isNaN(found)) break;
    if (printed(found) !== result && !isSame(found, value)) continue;
    const exact = known.every((one) => isSame(Number(print(one)), one));
    return { numbers, exact, equals: isSame(found, Number(result)), matches: true };
  }
  // A formula that cannot be read, or that belongs to other numbers.
  return { numbers: substituted(formula, values, format), exact: true, equals: true, matches: false };
}
