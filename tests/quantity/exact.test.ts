import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compare,
  exact,
  exactSum,
  minus,
  over,
  percentage,
  product,
  quotient,
  roundToStep,
  scaled,
  sum,
  toNumber,
  wholeTimes,
  type Rounding,
} from '../../src/quantity/exact.js';

// The reference is decimal.js with every digit that a double can have, each number entering it at twelve.
const Reference = Decimal.clone({ defaults: true, precision: 700 });
const entered = (value: number): Decimal =>
  new Reference(Number.isInteger(value) && Math.abs(value) < 1e12 ? value : value.toPrecision(12));
const referenceProduct = (values: readonly number[]) =>
  values.reduce((total, value) => total.times(entered(value)), new Reference(1)).toNumber();
const referenceSum = (values: readonly number[]) =>
  values.reduce((total, value) => total.plus(entered(value)), new Reference(0)).toNumber();
function referenceRounding(value: number, step: number, rounding: Rounding): number {
  const steps = entered(entered(value).div(entered(step)).toNumber());
  return (rounding === 'down' ? steps : steps.plus(0.5)).floor().times(entered(step)).toNumber();
}

/** Numbers that people enter, a hair beside them, and numbers that nobody enters. */
const entries = fc
  .tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.constantFrom(1, 10, 100, 1000))
  .map(([whole, parts]) => whole / parts);
const numbers = fc.oneof(
  entries,
  entries.map((value) => value * (1 + Number.EPSILON)),
  fc.double({ min: -500, max: 500, noNaN: true }),
  fc.double({ min: 1e-20, max: 1e20, noNaN: true }),
);
const steps = fc.oneof(
  fc.constantFrom(0.1, 0.25, 0.5, 1, 1.25, 2, 2.5, 5, 20),
  fc.double({ min: 1e-3, max: 100, noNaN: true }),
);
const runs = { numRuns: 2000 };

describe('exact results are those of decimal.js', () => {
  it('for products of two and three', () => {
    fc.assert(
      fc.property(numbers, numbers, numbers, (a, b, c) => {
        expect(product(a, b) + 0).toBe(referenceProduct([a, b]) + 0);
        expect(product(a, b, c) + 0).toBe(referenceProduct([a, b, c]) + 0);
      }),
      runs,
    );
  });
  it('for sums', () => {
    fc.assert(
      fc.property(fc.array(numbers, { maxLength: 6 }), (values) => {
        expect(sum(values) + 0).toBe(referenceSum(values) + 0);
      }),
      runs,
    );
  });
  it.each(['down', 'nearest'] as const)('for multiples of a step, %s', (rounding) => {
    fc.assert(
      fc.property(numbers, steps, (value, step) => {
        expect(roundToStep(value, step, rounding) + 0).toBe(referenceRounding(value, step, rounding) + 0);
      }),
      runs,
    );
  });
});

describe('longer calculations are those of decimal.js', () => {
  // A quotient of 700 digits takes time.
  const fewer = { numRuns: 300 };
  const above = numbers.map(Math.abs).filter((value) => value > 0);
  it('for sums of quotients, of parts that more than a double is needed for', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(numbers, above), { minLength: 1, maxLength: 4 }), (parts) => {
        const reference = parts.reduce((sum, [a, b]) => sum.plus(entered(a).div(entered(b))), new Reference(0));
        const found = toNumber(exactSum(parts.map(([a, b]) => over(exact(a), exact(b)))));
        // Of numbers far below 1e-40, and where terms cancel, fewer digits are left.
        const largest = Math.max(...parts.map(([a, b]) => Math.abs(a / b)));
        if (largest < 1e-15 || reference.abs().lt(largest * 1e-3)) return;
        expect(found + 0).toBe(reference.toNumber() + 0);
      }),
      fewer,
    );
  });
  it('for quotients, percentages and how often one goes into the other', () => {
    fc.assert(
      fc.property(
        entries,
        above.filter((value) => value > 1e-6 && value < 1e6),
        (a, b) => {
          expect(quotient(exact(a), exact(b)) + 0).toBe(entered(a).div(entered(b)).toNumber() + 0);
          expect(percentage(a, b) + 0).toBe(entered(a).times(100).div(entered(b)).toNumber() + 0);
          const size = Math.abs(a);
          expect(wholeTimes(exact(size), exact(b))).toBe(entered(size).div(entered(b)).floor().toNumber());
        },
      ),
      fewer,
    );
  });
  it('for differences and what is more', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        const reference = entered(a).minus(entered(b));
        expect(toNumber(minus(exact(a), exact(b))) + 0).toBe(reference.toNumber() + 0);
        expect(Math.sign(compare(exact(a), exact(b))) + 0).toBe(reference.cmp(0) + 0);
      }),
      fewer,
    );
  });
  it('for conversions: every digit of the double, or 13 digits where those are as near', () => {
    const factors = fc.constantFrom([0.45359237, 1], [1, 0.45359237], [2.54, 1], [1, 2.54], [1, 133.322387415]);
    fc.assert(
      fc.property(above, factors, (value, [factor, divisor]) => {
        const result = new Reference(value).times(factor!).div(divisor!);
        const short = result.toSignificantDigits(13);
        const isShort = short.minus(result).abs().lte(result.abs().times(4e-16));
        expect(scaled(value, factor!, divisor!)).toBe((isShort ? short : result).toNumber());
      }),
      fewer,
    );
  });
});

describe('what is not finite', () => {
  it('stays so', () => {
    expect(product(Infinity, 2)).toBe(Infinity);
    expect(product(2, NaN)).toBe(NaN);
    expect(sum([1, -Infinity])).toBe(-Infinity);
    expect(roundToStep(1e308, 1e-300, 'down')).toBe(Infinity);
  });
});
