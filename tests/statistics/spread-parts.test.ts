import jstat from 'jstat';
import { linearRegression, mean, sampleStandardDeviation, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { chiSquareChance, chiSquareTail } from '../../src/statistics/chi-square.js';
import { concordanceOf } from '../../src/statistics/concordance.js';
import { spreadOfPeople, spreadOfRows } from '../../src/statistics/limits-of-agreement.js';
import { lineOf } from '../../src/statistics/line.js';
import { noncentralTQuantile } from '../../src/statistics/noncentral-t.js';
import { normalChance } from '../../src/statistics/normal.js';
import { quantileBounds } from '../../src/statistics/order.js';
import { peopleOfRows } from '../../src/statistics/people.js';
import { chiSquareDeviate, mersenneTwister, normalDeviates, shuffled } from '../../src/statistics/random.js';
import { shareOf } from '../../src/statistics/shares.js';
import judge from './distributions.json' with { type: 'json' };

const Z = 1.959963984540054;
const list = (values: readonly number[]) => Float64Array.from(values);
const near = (received: number, expected: number, digits: number) =>
  expect(Math.abs(received - expected), `${received} against ${expected}`).toBeLessThanOrEqual(
    10 ** -digits * Math.max(1e-3, Math.abs(expected)),
  );
/** Nine differences of three people with four, three and two rows, in no order. */
const who = [0, 1, 0, 2, 0, 1, 2, 0, 1];
const differences = [5, -2, 7, 1, 4.5, -3.5, 2, 6, 0.5];
const persons = peopleOfRows(
  Int32Array.from(who, (_, row) => row),
  Int32Array.from(who),
);
const ofPerson = (person: number) => differences.filter((_, row) => who[row] === person);

describe('the noncentral t', () => {
  // Source: R, tests/statistics/distributions.R. R itself warns that its last digits may be wrong.
  it.each(judge.noncentralT.map(([p, degrees, delta, t]) => ({ p: p!, degrees: degrees!, delta: delta!, t: t! })))(
    'has the quantile of R: %j',
    ({ p, degrees, delta, t }) => {
      near(noncentralTQuantile(p, degrees, delta), t, 8);
    },
  );
});

it('has no chance for what is no number, and ends', () => {
  expect([normalChance(NaN), chiSquareChance(NaN, 3), chiSquareTail(3, NaN)]).toEqual([NaN, NaN, NaN]);
});

describe('limits of agreement', () => {
  // The exact interval: √n (limit − bias) / s is noncentral t, of jstat.
  it.each([[[3, -1, 2, 5]], [[3, -1, 2, 5, 9, -4, 1]], [[3, -1, 2, 5]]])('of different people: %j', (values) => {
    const n = values.length;
    const { bias, limits, predictionLimits, standardDeviation: s, degreesOfFreedom } = spreadOfRows(list(values));
    const [middle, sd] = [mean(values), sampleStandardDeviation(values)];
    near(s, sd, 12);
    expect(degreesOfFreedom).toBe(n - 1);
    near(limits.upper.value, middle + Z * sd, 12);
    near(limits.lower.value, middle - Z * sd, 12);
    const chance = (end: number) => jstat.noncentralt.cdf((Math.sqrt(n) * end) / sd, n - 1, Z * Math.sqrt(n));
    near(chance(limits.upper.lower - middle), 0.025, 6);
    near(chance(limits.upper.upper - middle), 0.975, 6);
    near(chance(middle - limits.lower.upper), 0.025, 6);
    near(chance(middle - limits.lower.lower), 0.975, 6);
    const t = jstat.studentt.inv(0.975, n - 1);
    near(bias.upper, middle + (t * sd) / Math.sqrt(n), 8);
    near(predictionLimits.upper, middle + t * sd * Math.sqrt(1 + 1 / n), 8);
    near(predictionLimits.lower, middle - t * sd * Math.sqrt(1 + 1 / n), 8);
  });

  // Formulas: components by unweighted means; interval of a sum of variances by recovery of their estimates, with the
  // chi-square of jstat; degrees of freedom of Satterthwaite.
  it('of several rows a person', () => {
    const got = spreadOfPeople(list(differences), persons);
    const means = [0, 1, 2].map((person) => mean(ofPerson(person)));
    const [bias, ofMeans] = [mean(means), sampleVariance(means)];
    const squares = [0, 1, 2].flatMap((person) => ofPerson(person).map((one) => (one - means[person]!) ** 2));
    const within = squares.reduce((sum, one) => sum + one, 0) / 6;
    const inverse = (1 / 4 + 1 / 3 + 1 / 2) / 3;
    const rest = (1 - inverse) * within;
    const s = Math.sqrt(ofMeans + rest);
    near(got.bias.value, bias, 12);
    near(got.bias.standardError, Math.sqrt(ofMeans / 3), 12);
    near(got.standardDeviation, s, 12);
    near(got.components!.withinPerson, Math.sqrt(within), 12);
    near(got.components!.betweenPeople, Math.sqrt(ofMeans - inverse * within), 12);
    expect([...got.independent]).toEqual(means);
    const recovered = (chance: number) =>
      Math.sqrt(
        (ofMeans * (2 / jstat.chisquare.inv(chance, 2) - 1)) ** 2 +
          (rest * (6 / jstat.chisquare.inv(chance, 6) - 1)) ** 2,
      );
    const above = Math.sqrt(s ** 2 + recovered(0.025)) - s;
    const below = s - Math.sqrt(Math.max(0, s ** 2 - recovered(0.975)));
    const t = jstat.studentt.inv(0.975, 2);
    const half = (off: number) => Math.sqrt((t ** 2 * ofMeans) / 3 + (Z * off) ** 2);
    near(got.limits.upper.upper, bias + Z * s + half(above), 7);
    near(got.limits.upper.lower, bias + Z * s - half(below), 7);
    near(got.limits.lower.lower, bias - Z * s - half(above), 7);
    near(got.limits.lower.upper, bias - Z * s + half(below), 7);
    const withMean = ofMeans * (1 + 1 / 3);
    const next = withMean + rest;
    const degrees = next ** 2 / (withMean ** 2 / 2 + rest ** 2 / 6);
    const reach = jstat.studentt.inv(0.975, degrees) * Math.sqrt(next);
    near(got.predictionLimits.upper, bias + reach, 7);
    near(got.predictionLimits.lower, bias - reach, 7);
    const equal = spreadOfPeople(list(who.map(() => 2)), persons);
    expect(equal.predictionLimits).toEqual({ lower: 2, upper: 2 });
  });
});

describe('a share', () => {
  /** Score interval, J Am Stat Assoc 1927;22(158):209–212, of a share of so many. */
  const score = (p: number, of: number) => {
    const scale = 1 + Z ** 2 / of;
    const half = (Z / scale) * Math.sqrt((p * (1 - p)) / of + Z ** 2 / (4 * of ** 2));
    const middle = (p + Z ** 2 / (2 * of)) / scale;
    return [Math.max(0, middle - half), Math.min(1, middle + half)] as const;
  };
  const ends = ({ lower, upper }: { readonly lower: number; readonly upper: number }) => [lower, upper];
  const close = (received: readonly number[], expected: readonly number[]) =>
    received.forEach((end, at) => near(end, expected[at]!, 12));

  it('of rows is that of the score interval', () => {
    const got = shareOf(9, (row) => row < 4, undefined);
    expect([got.value, got.count, got.of]).toEqual([4 / 9, 4, 9]);
    close(ends(got), score(4 / 9, 9));
  });

  // Definition: p (1 − p) over the variance of the share between people, three of them here.
  it('of rows of people counts for less where they go together', () => {
    const hits = [1, 0, 1, 0, 1, 0, 1, 1, 0];
    const p = 5 / 9;
    const off = [0, 1, 2].map((person) => {
      const own = hits.filter((_, row) => who[row] === person);
      return own.reduce((sum, hit) => sum + hit, 0) - p * own.length;
    });
    const variance = ((3 / 2) * off.reduce((sum, one) => sum + one ** 2, 0)) / 81;
    const effective = (p * (1 - p)) / variance;
    expect(effective).toBeLessThan(9);
    close(ends(shareOf(9, (row) => hits[row] === 1, persons)), score(p, effective));
    // All or none: as many as there are people. One person: as if of different people.
    close(ends(shareOf(9, () => true, persons)), score(1, 3));
    close(ends(shareOf(9, () => false, persons)), score(0, 3));
    const alone = peopleOfRows(Int32Array.from([0, 1, 2]), Int32Array.from([0, 0, 0]));
    close(ends(shareOf(3, (row) => row === 0, alone)), score(1 / 3, 3));
  });
});

describe('a line', () => {
  const [x, y] = [
    [1, 2, 4, 7, 11, 3, 5, 9, 8],
    [2, 3, 3.5, 8, 12, 3, 6, 8, 10],
  ];
  it('needs three points, not all at one place', () => {
    expect(lineOf(list([1, 2]), list([1, 2]))).toBeUndefined();
    expect(lineOf(list([1, 2, 3]), list([1, 2, 4]))).toBeDefined();
    expect(lineOf(list([5, 5, 5]), list([1, 2, 4]))).toBeUndefined();
    const apart = (by: number) => lineOf(list([1e6, 1e6 + by, 1e6, 1e6]), list([1, 2, 3, 4]));
    expect([apart(1e-7), apart(1e-2) !== undefined]).toEqual([undefined, true]);
  });

  // Definition of the jackknife by person, with the lines of simple-statistics.
  it('has the errors of the jackknife by person', () => {
    const points = x.map((value, row) => [value, y[row]!]);
    const got = lineOf(list(x), list(y), persons)!;
    const whole = linearRegression(points);
    const without = [0, 1, 2].map((person) => linearRegression(points.filter((_, row) => who[row] !== person)));
    const error = (of: (line: { m: number; b: number }) => number) =>
      Math.sqrt((2 / 3) * without.reduce((sum, line) => sum + (of(line) - of(whole)) ** 2, 0));
    near(got.slope.value, whole.m, 11);
    near(got.intercept.value, whole.b, 10);
    near(
      got.slope.standardError,
      error(({ m }) => m),
      10,
    );
    near(
      got.intercept.standardError,
      error(({ b }) => b),
      10,
    );
    const reach = jstat.studentt.inv(0.975, 2) * got.slope.standardError;
    near(got.slope.lower, got.slope.value - reach, 8);
    near(got.slope.upper, got.slope.value + reach, 8);
    got.residuals.forEach((residual, row) => near(residual, y[row]! - whole.b - whole.m * x[row]!, 9));
    // x varies through the first person alone.
    const flat = x.map((value, row) => (who[row] === 0 ? value : 5));
    expect(lineOf(list(flat), list(y), persons)).toBeUndefined();
  });
});

describe('bounds of a quantile', () => {
  // Definition, with the binomial of jstat: the largest r that at most r − 1 values lie below with 2.5 % at most.
  it.each([1, 5, 36, 37, 100, 200])('are order statistics: %d values', (n) => {
    const sorted = Float64Array.from({ length: n }, (_, index) => index + 1);
    for (const share of [0.025, 0.5, 0.975]) {
      let below = 0;
      while (below < n && jstat.binomial.cdf(below, n, share) <= 0.025) below += 1;
      let above = 0;
      while (above < n && jstat.binomial.cdf(above, n, 1 - share) <= 0.025) above += 1;
      expect(quantileBounds(sorted, share)).toEqual({
        ...(below > 0 && { lower: below }),
        ...(above > 0 && { upper: n + 1 - above }),
      });
    }
  });
});

describe('random numbers', () => {
  // Mean and variance of a chi-square, and its distribution by jstat: 1.95 / √n is beyond the 0.1 % of chance.
  it.each([3, 4.5, 20])('are those of a chi-square: %d degrees of freedom', (degrees) => {
    const random = mersenneTwister(5);
    const normal = normalDeviates(random);
    const n = 2000;
    const drawn = Array.from({ length: n }, () => chiSquareDeviate(random, normal, degrees)).sort((a, b) => a - b);
    const apart = drawn.map((value, at) => Math.abs(jstat.chisquare.cdf(value, degrees) - (at + 0.5) / n));
    expect(Math.max(...apart)).toBeLessThan(1.95 / Math.sqrt(n));
    expect(Math.abs(mean(drawn) / degrees - 1)).toBeLessThan((4 * Math.sqrt(2 / degrees)) / Math.sqrt(n));
  });

  it('put a list in any order, each as often', () => {
    const random = mersenneTwister(3);
    const seen = new Map<string, number>();
    for (let run = 0; run < 1200; run += 1) {
      const order = shuffled(random, 3).join('');
      seen.set(order, (seen.get(order) ?? 0) + 1);
    }
    expect([...seen.keys()].sort()).toEqual(['012', '021', '102', '120', '201', '210']);
    for (const count of seen.values()) expect(Math.abs(count - 200)).toBeLessThan(5 * Math.sqrt(200));
    expect([...shuffled(random, 1)]).toEqual([0]);
  });
});

it('a normal chance ends at 8 deviations', () => {
  expect([normalChance(-8), normalChance(8), normalChance(-7.99) > 0, normalChance(0)]).toEqual([0, 1, true, 0.5]);
});

describe('concordance', () => {
  const x = list([10, 12, 14, 17, 19]);
  it('is 1 where all agree, without an interval, and undefined where nothing varies', () => {
    expect(concordanceOf(x, x, true)).toEqual({ value: 1 });
    expect(concordanceOf(list([1, 1, 1]), list([1, 1, 1]), true)).toBeUndefined();
    const y = list([11, 11.5, 15, 16, 20]);
    expect(concordanceOf(x, y, false)).toEqual({ value: concordanceOf(x, y, true)!.value });
    expect(concordanceOf(x, y, true)!.lower).toBeLessThan(1);
    const far = concordanceOf(list([1e6, 1e6 + 1, 1e6 + 2]), list([1e6, 1e6 + 2, 1e6 + 1]), true)!;
    near(far.value, 0.5, 9);
  });
});
