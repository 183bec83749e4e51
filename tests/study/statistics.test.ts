import fc from 'fast-check';
import { mean, rootMeanSquare, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import peakFlow from '../../src/checks/agreement.json' with { type: 'json' };
import { agreement, columns } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';
import { expectDigits } from '../support/digits.js';
import { eachRow, expectWithin } from '../support/rows.js';
import judgeOfAgreement from './agreement.json' with { type: 'json' };
import judge from './judge.json' with { type: 'json' };

// Source: simple-statistics, on random data.
describe('general statistics libraries agree', () => {
  const numbers = (least: number) =>
    fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), { minLength: least, maxLength: 60 });
  const close = (a: number, b: number, scale = 1) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (scale + 1));

  it('on means, deviations and errors', () => {
    fc.assert(
      fc.property(numbers(3), (differences) => {
        const measured = differences.map((_, row) => 100 + row);
        const estimated = differences.map((difference, row) => 100 + row + difference);
        const real = estimated.map((value, row) => value - measured[row]!);
        const result = agreement(measured, estimated);
        close(result.bias.value, mean(real), 1000);
        close(result.standardDeviation, sampleStandardDeviation(real), 1000);
        close(result.rootMeanSquareError, rootMeanSquare(real), 1000);
        close(result.meanAbsoluteError, mean(real.map(Math.abs)), 1000);
      }),
    );
  });
});

describe('agreement', () => {
  eachRow(peakFlow, ({ mini, large, tolerance, ...printed }) => {
    const { bias, standardDeviation, pairs, limits } = agreement(mini, large);
    expect(pairs).toBe(17);
    expectWithin(bias.value, printed.bias, tolerance);
    expectWithin(standardDeviation, printed.standardDeviation, tolerance);
    [bias.lower, bias.upper].forEach((end, index) => expectWithin(end, printed.biasInterval[index]!, tolerance));
    // The paper’s limits are 2 standard deviations wide, 1.96 here: made from the same two numbers, rounded as there.
    const roundedLimits = [-1, 1].map(
      (side) => Number(bias.value.toFixed(1)) + side * 2 * Number(standardDeviation.toFixed(1)),
    );
    roundedLimits.forEach((limit, index) => expectWithin(limit, printed.limits[index]!, tolerance));
    const t = Number(((bias.upper - bias.value) / bias.standardError).toFixed(2));
    const error = Number(Math.sqrt((3 * standardDeviation ** 2) / pairs).toFixed(1));
    const ends = [printed.limitLowerInterval, printed.limitUpperInterval];
    ends.forEach(([low, high], index) => {
      // Their standard error was rounded before it was used: one more digit of slack.
      expectWithin(roundedLimits[index]! - t * error, low!, 2 * tolerance);
      expectWithin(roundedLimits[index]! + t * error, high!, 2 * tolerance);
    });
    // Source: R, qt with a noncentrality; tests/study/agreement.R, on the data of the paper.
    expectDigits(
      [
        limits.lower.value,
        limits.lower.lower,
        limits.lower.upper,
        limits.upper.value,
        limits.upper.lower,
        limits.upper.upper,
      ],
      judgeOfAgreement.peakFlow,
      8,
    );
    // The paper’s intervals are those of large samples. The exact ones of 17 pairs lie further out at both ends.
    expect(limits.lower.lower).toBeLessThan(printed.limitLowerInterval[0]!);
    expect(limits.lower.upper).toBeLessThan(printed.limitLowerInterval[1]!);
    expect(limits.upper.lower).toBeGreaterThan(printed.limitUpperInterval[0]!);
    expect(limits.upper.upper).toBeGreaterThan(printed.limitUpperInterval[1]!);
  });

  it('gives what R gives', () => {
    const { people, agreement: expected } = judge;
    const got = agreement(people.valueMmHg, people.estimate, { size: 'mean' });
    const ends = ({ value, lower, upper }: { value: number; lower?: number; upper?: number }) => [
      value,
      lower!,
      upper!,
    ];
    expectDigits(ends(got.bias), expected.bias, 11);
    expectDigits([got.standardDeviation], [expected.standardDeviation], 11);
    expectDigits(
      [got.limits.lower.value, got.limits.upper.value],
      [expected.limitLower[0]!, expected.limitUpper[0]!],
      11,
    );
    expectDigits([got.proportionalBias!.value, got.proportionalBias!.standardError], expected.slope, 11);
    expectDigits([got.proportionalBias!.lower, got.proportionalBias!.upper], expected.slopeInterval, 11);
    expectDigits([got.rootMeanSquareError], [expected.rootMeanSquare], 11);
    expectDigits([got.meanAbsoluteError], [expected.meanAbsolute], 11);
    expectDigits(ends(got.concordance!), expected.concordance, 11);
    expect(got.within.count).toBe(expected.within);
    expectDigits([got.within.lower, got.within.upper], expected.withinInterval, 11);
    expectPlainJson(got);
  });

  it('counts what is missing and what an interval covered', () => {
    const value = [150, 160, NaN, 170, 180, NaN];
    const lower = [140, 150, NaN, NaN, 170, NaN];
    const upper = [160, 170, NaN, NaN, 190, NaN];
    const got = agreement([155, 140, 150, 171, null, undefined], { value, lower, upper });
    expect(got.pairs).toBe(3);
    expect(got.missing).toEqual({ measured: 1, estimated: 1, both: 1 });
    expect(got.coverage).toMatchObject({ count: 1, of: 2, value: 0.5 });
  });

  it('takes a column answer as it is', () => {
    const estimated = columns({
      answer: 'occlusion-pressure',
      equation: 'width-ratio-1993',
      limb: 'leg',
      posture: 'supine',
      cuffWidthCm: 10,
      circumferenceCm: [50, 55, 60, 20],
      systolicMmHg: 120,
      diastolicMmHg: 70,
    });
    const got = agreement([150, 160, 170, 180], estimated);
    expect(got.missing.estimated).toBe(1);
    expect(got.coverage?.of).toBe(3);
  });

  it('leaves out what the pairs cannot carry', () => {
    const same = agreement([100, 100, 100], [100, 100, 100]);
    expect(same).not.toHaveProperty('proportionalBias');
    expect(same).not.toHaveProperty('concordance');
    expect(same.standardDeviation).toBe(0);
    expectPlainJson(agreement([1, 2, 3], [1, 2, 3]));
    expect(agreement([1, 2, 3], [1, 2, 3]).concordance?.value).toBeCloseTo(1, 14);
  });

  it('gives finite numbers or an InputError for anything', () => {
    const list = fc.array(fc.oneof(fc.double(), fc.constant(null), fc.integer()), { maxLength: 8 });
    fc.assert(
      fc.property(list, list, (measured, estimated) => {
        try {
          expectPlainJson(agreement(measured, estimated));
        } catch (error) {
          expect((error as Error).name).toBe('InputError');
        }
      }),
      { numRuns: 2000 },
    );
    for (const wrong of [undefined, null, 5, 'x', {}, new Map(), new Proxy([], { get: () => BigInt(1) })]) {
      expect(() => agreement(wrong as never, [1, 2, 3])).toThrow(expect.objectContaining({ name: 'InputError' }));
      expect(() => agreement([1, 2, 3], wrong as never)).toThrow(expect.objectContaining({ name: 'InputError' }));
    }
    expect(() => agreement([1, 2, 3], [1, 2, 3], { acceptible: 5 } as never)).toThrow(/acceptible/);
    expect(() => agreement([1, 2], [1, 2])).toThrow(/at least 3 pairs/);
    // A number kept as text is a slip, and not a missing value.
    expect(() => agreement([1, 2, 3, '4' as never], [1, 2, 3, 4])).toThrow(/measured\[3\] must be a number, or null/);
  });
});
