import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { product, ratio, roundToStep, sum, type Rounding } from '../../src/quantity/exact.js';

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
  // Half of the twelfth digit, and what lies a few doubles from a power of ten.
  fc
    .tuple(fc.integer({ min: 1e11, max: 1e12 }), fc.integer({ min: 8, max: 14 }))
    .map(([digits, places]) => Number(`${digits}.5e-${places}`)),
  fc
    .tuple(fc.integer({ min: -12, max: 12 }), fc.integer({ min: -20, max: 20 }))
    .map(([power, beside]) => Number(`1e${power}`) * (1 + (beside * Number.EPSILON) / 2)),
  fc.double({ min: 1e-20, max: 1e20, noNaN: true }),
);
const steps = fc.oneof(
  fc.constantFrom(0.1, 0.25, 0.5, 1, 1.25, 2, 2.5, 5, 20),
  fc.double({ min: 1e-3, max: 100, noNaN: true }),
);
const rounded = fc.oneof(
  fc.tuple(numbers, steps),
  fc.tuple(fc.integer({ min: 1, max: 100 }), steps).map(([count, step]) => [count * step, step] as const),
);
const runs = { numRuns: 2000 };

describe('exact results are those of decimal.js', () => {
  it.each([2, 3])('for products of %d', (length) => {
    fc.assert(
      fc.property(fc.array(numbers, { minLength: length, maxLength: length }), (values) => {
        const [first, ...others] = values as [number, ...number[]];
        expect(product(first, ...others) + 0).toBe(referenceProduct(values) + 0);
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
  it('for one product over another', () => {
    const divisors = entries.map(Math.abs).filter((value) => value > 0);
    fc.assert(
      fc.property(numbers, entries, divisors, divisors, (a, b, c, d) => {
        const [over, under] = [entered(a).times(entered(b)), entered(c).times(entered(d))];
        if (Math.abs(a) > 1e-6) expect(ratio([a, b], [c, d]) + 0).toBe(over.div(under).toNumber() + 0);
        expect(ratio([b], [c]) + 0).toBe(entered(b).div(entered(c)).toNumber() + 0);
      }),
      { numRuns: 300 },
    );
  });
  it.each(['down', 'nearest'] as const)('for multiples of a step, %s', (rounding) => {
    fc.assert(
      fc.property(rounded, ([value, step]) => {
        expect(roundToStep(value, step, rounding) + 0).toBe(referenceRounding(value, step, rounding) + 0);
      }),
      runs,
    );
  });
});

describe('what is not finite', () => {
  it('stays so', () => {
    expect(product(Infinity, 2)).toBe(Infinity);
    expect(product(2, Infinity)).toBe(Infinity);
    expect(product(2, NaN)).toBe(NaN);
    expect(sum([1, -Infinity])).toBe(-Infinity);
    expect(roundToStep(1e308, 1e-300, 'down')).toBe(Infinity);
  });
});

// Ten times as slow as doubles: only numbers that nobody enters need them.
describe('numbers that people enter, and what equations give', () => {
  it('take neither whole numbers of any length nor text', () => {
    const slow = [
      vi.spyOn(globalThis, 'BigInt'),
      vi.spyOn(Number.prototype, 'toExponential'),
      vi.spyOn(Number.prototype, 'toPrecision'),
    ];
    // A whole number of steps and 1283 / 7, as doubles give them, with percentages, loads and steps. By hand, from 12 digits.
    const [whole, long] = [159.99999999999997, 183.28571428571428];
    const results = [
      [product(whole, 0.8), 128],
      [product(long, 30), 5498.57142858],
      [sum([whole, 0.1]), 160.1],
      [sum([long, 0.25]), 183.535714286],
      [ratio([20, 100], [62.5]), 32],
      [ratio([whole], [200]), 0.8],
      [roundToStep(long, 2, 'down'), 182],
      [roundToStep(31.7, 2.5, 'nearest'), 32.5],
    ];
    const calls = slow.map((each) => each.mock.calls.length);
    vi.restoreAllMocks();
    expect(calls).toEqual([0, 0, 0]);
    for (const [result, expected] of results) expect(result).toBe(expected);
  });
});
