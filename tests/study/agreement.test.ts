import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import peakFlow from '../../src/checks/agreement.json' with { type: 'json' };
import { NORMAL_95 } from '../../src/statistics/normal.js';
import { share } from '../../src/statistics/shares.js';
import { studentT95 } from '../../src/statistics/student-t.js';
import { agreement, columns, pairsForLimits, type WithConfidence } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';
import { right } from '../support/columns.js';
import { expectDigits } from '../support/digits.js';
import { codesOf, expectClose, refusalPage } from '../support/invariants.js';
import { eachRow, expectWithin } from '../support/rows.js';
import judge from './agreement.json' with { type: 'json' };
import judged from './judge.json' with { type: 'json' };

const ends = ({ value, lower, upper }: WithConfidence): number[] => [value, lower, upper];
const bothLimits = ({ limits }: ReturnType<typeof agreement>): number[] => [
  ...ends(limits.lower),
  ...ends(limits.upper),
];
const same = (value: number, count: number): number[] => new Array<number>(count).fill(value);
const { measured, estimated } = judge;
const { agreement: methods, people: pairs } = judged;

// Source: R, tests/study/agreement.R and judge.R.
describe('agreement of different people', () => {
  it('is that of R', () => {
    const got = agreement(measured, estimated, { margin: 8 });
    expectDigits(bothLimits(got), judge.limits, 8);
    expectDigits([got.predictionLimits.lower, got.predictionLimits.upper], judge.predictionLimits, 10);
    expectDigits([...ends(got.calibration!.intercept), ...ends(got.calibration!.slope)], judge.calibration, 10);
    expectDigits(ends(got.proportionalBias!), judge.slope, 10);
    expectDigits([got.bySize!.spread.intercept, ...ends(got.bySize!.spread.slope)], judge.spread, 10);
    expectDigits([got.equivalence!.lower, got.equivalence!.upper, got.equivalence!.chance], judge.equivalence, 10);
    expect(got.equivalence!.equivalent).toBe(true);
    expectDigits([got.percentiles!.lower.value, got.percentiles!.upper.value], judge.quantile, 10);
    expectPlainJson(got);
  });

  it('is that of R for two methods of measurement', () => {
    const got = agreement(pairs.valueMmHg, pairs.estimate, { size: 'mean' });
    expectDigits(ends(got.bias), methods.bias, 11);
    expectDigits(
      [got.standardDeviation, got.rootMeanSquareError, got.meanAbsoluteError],
      [methods.standardDeviation, methods.rootMeanSquare, methods.meanAbsolute],
      11,
    );
    const { value, standardError, lower, upper } = got.proportionalBias!;
    expectDigits([value, standardError, lower, upper], [...methods.slope, ...methods.slopeInterval], 11);
    expectDigits(ends(got.concordance as WithConfidence), methods.concordance, 11);
    expect(got.within).toMatchObject({ count: methods.within, acceptable: 15 });
    expectDigits([got.within.lower, got.within.upper], methods.withinInterval, 11);
    expect(got).not.toHaveProperty('coverage');
    expectPlainJson(got);
  });

  it('gives ratios on the log scale', () => {
    const got = agreement(measured, estimated, { scale: 'log', margin: 1.1 });
    expectDigits(ends(got.bias), judge.logBias, 10);
    expectDigits(bothLimits(got), judge.logLimits, 8);
    expect(() => agreement([1, 2, 3, 0], [1, 2, 3, 4], { scale: 'log' })).toThrow(/measured\[3\].*above 0/);
  });

  eachRow(peakFlow, ({ mini, large, tolerance, ...printed }) => {
    const got = agreement(mini, large);
    const { bias, standardDeviation, limits } = got;
    expect(got.pairs).toBe(17);
    expectWithin(bias.value, printed.bias, tolerance);
    expectWithin(standardDeviation, printed.standardDeviation, tolerance);
    [bias.lower, bias.upper].forEach((end, index) => expectWithin(end, printed.biasInterval[index]!, tolerance));
    // The paper’s limits are 2 standard deviations wide, 1.96 here: made from the same two numbers, rounded as there.
    const roundedLimits = [-1, 1].map(
      (side) => Number(bias.value.toFixed(1)) + side * 2 * Number(standardDeviation.toFixed(1)),
    );
    roundedLimits.forEach((limit, index) => expectWithin(limit, printed.limits[index]!, tolerance));
    const t = Number(((bias.upper - bias.value) / bias.standardError).toFixed(2));
    const error = Number(Math.sqrt((3 * standardDeviation ** 2) / got.pairs).toFixed(1));
    const [lower, upper] = [printed.limitLowerInterval, printed.limitUpperInterval];
    [lower, upper].forEach(([low, high], index) => {
      // Their standard error was rounded before it was used: one more digit of slack.
      expectWithin(roundedLimits[index]! - t * error, low!, 2 * tolerance);
      expectWithin(roundedLimits[index]! + t * error, high!, 2 * tolerance);
    });
    // Source: R, qt with a noncentrality; tests/study/agreement.R, on the data of the paper.
    expectDigits(bothLimits(got), judge.peakFlow, 8);
    // The paper’s intervals are those of large samples. The exact ones of 17 pairs lie further out at both ends.
    expect([limits.lower.lower < lower[0]!, limits.lower.upper < lower[1]!]).toEqual([true, true]);
    expect([limits.upper.lower > upper[0]!, limits.upper.upper > upper[1]!]).toEqual([true, true]);
  });

  // Own algebra: for a straight calibration the difference has slope 1 − (calibration slope) on the estimate.
  it('does not reject a calibrated equation, which the mean of the pair does', () => {
    const estimate = Array.from({ length: 200 }, (_, i) => 150 + 20 * Math.sin(i));
    const value = estimate.map((e, i) => e + 25 * Math.cos(i * 1.7));
    const got = agreement(value, estimate);
    expectClose(got.proportionalBias!.value, 1 - got.calibration!.slope.value);
    expect(got.calibration!.slope.lower).toBeLessThan(1);
    expect(got.calibration!.slope.upper).toBeGreaterThan(1);
    expect(codesOf(got.cautions)).not.toContain('bias-changes-with-size');
    expect(agreement(value, estimate, { size: 'mean' }).proportionalBias!.upper).toBeLessThan(0);
  });

  // Source: binomial tables. 0.975^n ≤ 0.025 from n = 146 on: below, no order statistic bounds the 2.5th percentile.
  it('bounds percentiles by order statistics where there are enough pairs', () => {
    const of = (n: number) =>
      agreement(
        same(0, n),
        Array.from({ length: n }, (_, i) => i + 1),
      ).percentiles!.lower;
    expect(of(145)).not.toHaveProperty('lower');
    expect(of(146).lower).toBe(1);
    expect(of(146).upper).toBeGreaterThan(of(146).value);
  });

  // The definition of Wilson’s interval: its ends are the shares p with (p̂ − p)² = z² p (1 − p) / n.
  it.each([
    [0, 5],
    [3, 4],
    [1, 100],
    [50, 100],
    [7, 7],
  ])('has the interval of Wilson for %i of %i', (count, of) => {
    const { value, lower, upper, ...rest } = share(count, of);
    expect(rest).toEqual({ count, of });
    expectClose(value, count / of);
    for (const end of [lower, upper]) expectClose((value - end) ** 2, (NORMAL_95 ** 2 * end * (1 - end)) / of);
    expect([lower <= value, upper >= value, lower >= 0, upper <= 1, upper > lower]).toEqual(same(1, 5).map(Boolean));
  });

  it('says where its assumptions fail', () => {
    const rows = Array.from({ length: 100 }, (_, i) => i);
    const codes = (a: number[], b: number[]) => codesOf(agreement(a, b).cautions);
    const skewed = rows.map((i) => 100 + Math.exp((i % 10) / 2));
    expect(codes(same(100, 100), skewed)).toContain('differences-not-normal');
    const size = rows.map((i) => 100 + i);
    const fanned = size.map((e, i) => e + (i % 2 ? 0.2 : -0.2) * i);
    expect(codes(fanned, size)).toContain('spread-changes-with-size');
    expect(codes([1, 2, 3], [1, 2, 4])).toContain('few-people');
  });
});

describe('agreement with several observations of a person', () => {
  const { person, personMeasured, personEstimated } = judge;
  it('is that of R', () => {
    const got = agreement(personMeasured, personEstimated, { person });
    expect([got.people, got.pairs]).toEqual([12, 29]);
    expectDigits(ends(got.bias), judge.personBias, 10);
    const { betweenPeople, withinPerson } = got.components!;
    expectDigits([got.standardDeviation, withinPerson, betweenPeople], judge.personDeviations, 10);
    expectDigits(bothLimits(got), judge.personLimits, 10);
    const { intercept, slope } = got.calibration!;
    const calibration = [intercept.value, slope.value, intercept.standardError, slope.standardError];
    expectDigits(calibration, judge.personCalibration, 10);
    expect(got).not.toHaveProperty('percentiles');
    expectPlainJson(got);
  });

  // Source: nlme, REML; it prints seven digits of the deviations.
  it('has the components of a mixed model where it is balanced', () => {
    const { balanced, balancedMixed } = judge;
    const got = agreement(same(0, 24), balanced, { person: balanced.map((_, i) => i >> 1) });
    const { betweenPeople, withinPerson } = got.components!;
    expectDigits([got.bias.value, got.bias.standardError, betweenPeople, withinPerson], balancedMixed, 6);
  });

  it('is that of rows where each person has one', () => {
    const { people, missing, ...rest } = agreement(measured, estimated, { person: measured.map((_, i) => `p${i}`) });
    const { missing: none, ...plain } = agreement(measured, estimated);
    expect([people, missing]).toEqual([24, { ...none, person: 0 }]);
    expect(rest).toEqual(plain);
  });

  it('is wider than that of rows taken as different people, and counts who has no person', () => {
    const twice = [0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5];
    const value = same(100, 12);
    const estimate = twice.map((who, row) => 100 + 5 * who + (row % 2));
    const wide = agreement(value, estimate, { person: twice });
    const narrow = agreement(value, estimate);
    expect(wide.bias.upper - wide.bias.lower).toBeGreaterThan(1.3 * (narrow.bias.upper - narrow.bias.lower));
    expect(wide.within.upper - wide.within.lower).toBeGreaterThan(narrow.within.upper - narrow.within.lower);
    const lacking = agreement(value, estimate, { person: twice.map((who) => (who === 5 ? null : who)) });
    expect([lacking.people, lacking.missing.person]).toEqual([5, 2]);
    expect(() => agreement(value, estimate, { person: [1, 2] })).toThrow(/person/);
    expect(() => agreement(value, estimate, { person: twice.map((who) => who % 2) })).toThrow(/at least 3 people/);
  });
});

describe('what agreement takes', () => {
  it('counts rows by what they lack, and measurements by where they lie', () => {
    const value = [150, 150, 150, 150, NaN, NaN, 150];
    const lower = [150, 140, 151, 140, 100, 100, NaN];
    const upper = [160, 150, 160, 149, 200, 200, 160];
    const got = agreement([150, 150, 150, 150, 150, null, 150], { value, lower, upper });
    expect([got.pairs, got.missing]).toEqual([5, { measured: 0, estimated: 1, both: 1 }]);
    // At either end is inside; below, above and without an interval are not.
    expect(got.coverage).toMatchObject({ count: 2, of: 4 });
    expect(agreement([1, 2, 3, undefined, NaN, Infinity], [1, 2, 3, 4, 5, 6]).missing.measured).toBe(3);
    const half = agreement(new Float32Array([1, 2, 3]), { value: [1, 2, 4], lower: [1, 2, 3] });
    expect(half).not.toHaveProperty('coverage');
    expect(agreement([1e9, -1e9, 0], [0, 0, 0]).pairs).toBe(3);
    // A column answer as it is.
    const column = agreement([150, 160, 170, 180], columns({ ...right, circumferenceCm: [50, 55, 60, 20] }));
    expect([column.missing.estimated, column.coverage?.of]).toEqual([1, 3]);
  });

  it('leaves out what these pairs cannot carry, and gives no NaN where nothing varies', () => {
    const [fives, rising] = [same(5, 4), [1, 2, 3, 4]];
    for (const [a, b] of [
      [fives, fives],
      [fives, same(7, 4)],
      [fives, rising],
      [rising, fives],
      [rising, rising],
    ]) {
      expectPlainJson(agreement(a!, b!, { margin: 3 }));
      expectPlainJson(agreement(a!, b!, { person: [1, 1, 2, 3], scale: 'log' }));
    }
    const none = agreement(fives, fives);
    expect(none.standardDeviation).toBe(0);
    for (const name of ['proportionalBias', 'concordance']) expect(none).not.toHaveProperty(name);
    expect(agreement(fives, rising).concordance).toEqual({ value: 0 });
    expect(agreement(rising, rising).concordance?.value).toBeCloseTo(1, 14);
  });

  it('gives finite numbers or an InputError for anything', () => {
    const list = fc.array(fc.oneof(fc.double(), fc.constant(null), fc.integer()), { maxLength: 8 });
    fc.assert(
      fc.property(list, list, (a, b) => {
        try {
          expectPlainJson(agreement(a, b));
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
  });

  it('refuses pairs it cannot take, as the golden page says', async () => {
    const [four, near] = [
      [150, 160, 170, 180],
      [152, 158, 174, 180],
    ];
    const throws = () => {
      throw new RangeError('from your own getter');
    };
    const cases = {
      'case 1': [5, [1, 2, 3]],
      'case 2': [new DataView(new ArrayBuffer(8)), []],
      'case 3': [four, [1, 2, 3]],
      'case 4': [four, null],
      'case 5': [four, Object.defineProperty({}, 'value', { get: throws, enumerable: true })],
      'case 6': [four, { value: near, lower: [1], upper: four }],
      'case 7': [four, { value: near, lower: four, upper: 5 }],
      'case 8': [
        [1, '2', 3],
        [1, 2, 3],
      ],
      'case 9': [
        [1, 2, 1.1e9],
        [1, 2, 3],
      ],
      'case 10': [
        [1, -1.1e9, 3],
        [1, 2, 3],
      ],
      'case 11': [new Proxy([1, 2, 3], { get: throws }), [1, 2, 3]],
      'case 12': [
        [1, 2, NaN],
        [1, 2, 3],
      ],
      'case 13': [four, near, { acceptable: -1 }],
      'case 14': [four, near, { acceptable: null }],
      'case 15': [four, near, { acceptible: 1 }],
    };
    await expect(
      refusalPage((parts: unknown[]) => agreement(...(parts as Parameters<typeof agreement>)), cases),
    ).toMatchFileSnapshot('refused/agreement.txt');
  });
});

// The formula itself: 100 pairs make the limits ± 0.34 standard deviations at 1.96 standard errors, √(3 / n) s each; with
// the t of 99 degrees and the exact variance a little more.
it('gives the pairs for a width of the interval of a limit', () => {
  const at = (n: number) => studentT95(n - 1) * Math.sqrt(1 / n + NORMAL_95 ** 2 / (2 * (n - 1)));
  for (const n of [5, 20, 100, 999]) {
    expect(pairsForLimits({ standardDeviation: 1, halfWidth: at(n) * 1.0000001 })).toBe(n);
  }
  expect(() => pairsForLimits({ standardDeviation: 10, halfWidth: 0.001 })).toThrow(/halfWidth/);
});
