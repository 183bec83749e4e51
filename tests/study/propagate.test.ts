import jstat from 'jstat';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { logInterval } from '../../src/answer/interval.js';
import { issue } from '../../src/answer/issues.js';
import { InputError, measuredOcclusionPressure, testedOneRepMax, type Answer } from '../../src/index.js';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';
import { NORMAL_95 } from '../../src/statistics/normal.js';
import { propagate, type PropagateInput, type Propagated, type Uncertain } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';
import { expectClose } from '../support/invariants.js';
import judge from './propagate.json' with { type: 'json' };

const x = { value: 10, standardDeviation: 1 };
const run = <N extends string>(
  inputs: PropagateInput<N>['inputs'],
  pipeline: PropagateInput<N>['pipeline'],
  more = {},
) => propagate({ inputs, pipeline, draws: 200, ...more });
const one = (input: Uncertain, more: object = {}) => run({ x: input }, (draw) => draw.x, { draws: 20_000, ...more });
const refuse = (): never => {
  throw new InputError([issue('out-of-range', ['x'], ['less', 'less'], 'more')]);
};

describe('propagate', () => {
  // Source of the statistics: simple-statistics; of the draws: the generator, held to its publication elsewhere.
  it('draws every reading in turn, and the error of an answer after them', () => {
    const answer = { ...testedOneRepMax({ load: 100 }), standardDeviation: 3 };
    const inputs = { a: x, b: { value: 5, standardDeviation: 2 } };
    const got = run(inputs, ({ a, b }) => ({ ...answer, value: a * b }), { seed: 42 });
    const normal = normalDeviates(mersenneTwister(42));
    const drawn = Array.from({ length: 200 }, () => (10 + normal()) * (5 + 2 * normal()) + 3 * normal());
    const sorted = [...drawn].sort((a, b) => a - b);
    expect([got.seed, got.draws, got.refused]).toEqual([42, 200, 0]);
    expectClose(got.monteCarlo.value, mean(drawn));
    expectClose(got.monteCarlo.standardDeviation, sampleStandardDeviation(drawn));
    expect(got.monteCarlo.lower).toBeGreaterThanOrEqual(sorted[4]!);
    expect(got.monteCarlo.lower).toBeLessThanOrEqual(sorted[5]!);
    expect(got.monteCarlo.upper).toBeGreaterThanOrEqual(sorted[194]!);
    expect(got.monteCarlo.upper).toBeLessThanOrEqual(sorted[195]!);
    // Slopes 5 and 10: 5 × 1, 10 × 2 and 3 in quadrature.
    const closed = got.closedForm!;
    expect([closed.value, closed.parts]).toEqual([50, { a: 5, b: 20, own: 3 }]);
    expectClose(closed.standardDeviation, Math.sqrt(25 + 400 + 9));
    expectClose(closed.lower, 50 - NORMAL_95 * Math.sqrt(434));
    expectClose(closed.upper, 50 + NORMAL_95 * Math.sqrt(434));
    expect(got).not.toHaveProperty('kept');
    expect(closed).not.toHaveProperty('correlated');
    expectPlainJson(got);
  });

  it('takes a slope from one side where the other is refused, and none where both are', () => {
    const upTo = (most: number, least = -Infinity) =>
      run({ x }, ({ x: value }) => (value > most || value < least ? refuse() : value ** 2));
    // 10² − 9² and 11² − 10², over one standard deviation; both over two.
    expect(upTo(10.5).closedForm).toMatchObject({ value: 100, parts: { x: 19 } });
    expect(upTo(20, 9.5).closedForm).toMatchObject({ value: 100, parts: { x: 21 } });
    expect(upTo(20).closedForm).toMatchObject({ value: 100, parts: { x: 20 } });
    expect(upTo(10.5, 9.5)).not.toHaveProperty('closedForm');
    expect(upTo(9.9)).not.toHaveProperty('closedForm');
    const { refused, draws, monteCarlo } = upTo(10);
    expect([refused > 50, refused < 150, draws, monteCarlo.upper <= 100]).toEqual([true, true, 200, true]);
    expect(upTo(20).closedForm!.parts).not.toHaveProperty('own');
  });

  describe('a product on a log scale', () => {
    const ratio = (draw: { readonly a: number; readonly b: number }): Answer<'occlusion-pressure'> => ({
      ...measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' }),
      value: (160 * draw.a) / draw.b,
      ...logInterval((160 * draw.a) / draw.b, [{ part: 'equation', standardDeviation: 0.12, evidence: 'derived' }]),
    });
    const inputs = {
      a: { value: 55, standardDeviation: 0.03, scale: 'log' },
      b: { value: 10, standardDeviation: 0.04, scale: 'log' },
    } as const;

    // Own algebra: a product of powers of log-normal readings is log-normal, its shares in quadrature; quantiles of jstat.
    it('is exact in closed form', () => {
      const { monteCarlo, closedForm } = run(inputs, ratio);
      expect([monteCarlo.scale, closedForm!.scale]).toEqual(['log', 'log']);
      expect(closedForm!.standardDeviation).toBeCloseTo(0.13, 12);
      expect(closedForm!.parts).toEqual({
        a: expect.closeTo(0.03, 12) as number,
        b: expect.closeTo(0.04, 12) as number,
        own: 0.12,
      });
      expect(Math.abs(closedForm!.lower / jstat.lognormal.inv(0.025, Math.log(880), 0.13) - 1)).toBeLessThan(1e-9);
      expect(Math.abs(closedForm!.upper / jstat.lognormal.inv(0.975, Math.log(880), 0.13) - 1)).toBeLessThan(1e-9);
      expectPlainJson(closedForm);
    });

    it('is drawn from the log-normal', () => {
      const { monteCarlo, closedForm } = run(inputs, ratio, { draws: 100_000 });
      // Four standard errors of the mean of the logarithms and of their spread, and of a 2.5 % quantile.
      expect(Math.abs(Math.log(monteCarlo.value / 880))).toBeLessThan((4 * 0.13) / Math.sqrt(100_000));
      expect(Math.abs(monteCarlo.standardDeviation - 0.13)).toBeLessThan((4 * 0.13) / Math.sqrt(200_000));
      expect(Math.abs(monteCarlo.lower / closedForm!.lower - 1)).toBeLessThan(0.005);
      expect(Math.abs(monteCarlo.upper / closedForm!.upper - 1)).toBeLessThan(0.005);
    });
  });

  it('gives the same for the same seed, and other draws for another', () => {
    expect(one(x, { seed: 1 })).toEqual(one(x));
    expect(one(x, { seed: 2 }).monteCarlo).not.toEqual(one(x).monteCarlo);
  });

  it('takes a bare number, an answer without an error, and the fewest draws', () => {
    const bare = { ...testedOneRepMax({ load: 100 }), standardDeviation: undefined } as unknown as Answer;
    const got = run({ x }, () => bare, { draws: 100, seed: 0 });
    expect(got.monteCarlo).toMatchObject({ value: 100, standardDeviation: 0, lower: 100, upper: 100 });
    expect(got.monteCarlo.error).toMatchObject({ value: 0, standardDeviation: 0 });
    expect(got.closedForm).toMatchObject({ standardDeviation: 0, parts: { x: 0 } });
    const throws = () => {
      throw new RangeError('from your pipeline');
    };
    expect(() => run({ x }, throws)).toThrow(RangeError);
  });
});

const pressures = {
  systolic: { value: 120, standardDeviation: 8 },
  diastolic: { value: 70, standardDeviation: 6 },
};
const correlations = [{ between: ['systolic', 'diastolic'], value: 0.7 }] as const;

// Own algebra: var(a S − b D) = a² s² + b² d² − 2 a b r s d.
it('correlated inputs have the variance of correlated errors, both ways', () => {
  const more = { correlations, draws: 4000, keepDraws: true };
  const got = run(pressures, ({ systolic, diastolic }) => systolic - 0.5 * diastolic, more);
  const variance = 64 + 9 - 2 * 0.5 * 0.7 * 48;
  expect(got.closedForm!.standardDeviation).toBeCloseTo(Math.sqrt(variance), 9);
  expect(got.closedForm!.correlated).toBeCloseTo(-2 * 0.5 * 0.7 * 48, 9);
  const { error, standardDeviation, value } = got.monteCarlo;
  expect(Math.abs(standardDeviation - Math.sqrt(variance))).toBeLessThan(4 * error.standardDeviation);
  expect(Math.abs(value - 85)).toBeLessThan(4 * error.value);
  // The draws themselves are so correlated.
  const { systolic, diastolic } = got.kept!.inputs as { systolic: number[]; diastolic: number[] };
  const r = mean(systolic.map((s, i) => ((s - 120) / 8) * ((diastolic[i]! - 70) / 6)));
  expect(Math.abs(r - 0.7)).toBeLessThan(4 * Math.sqrt((1 + 0.49) / 4000));
  expect(got.kept!.results[5]).toBeCloseTo(systolic[5]! - 0.5 * diastolic[5]!, 12);
  expect(got.kept!.results).toHaveLength(4000);
  expectPlainJson(got);
});

describe('other distributions', () => {
  // Source: R, tests/study/propagate.R: mean, standard deviation and the two quantiles of each distribution.
  const inputs: Record<string, Uncertain> = {
    uniform: { distribution: 'uniform', low: 49.5, high: 50.5 },
    triangular: { distribution: 'triangular', low: 40, mode: 55, high: 60 },
    t: { distribution: 't', value: 160, standardError: 4, degreesOfFreedom: 5 },
    logNormal: { value: 160, standardDeviation: 0.2, scale: 'log' },
  };
  it.each(Object.entries(judge.distributions))('%s', (name, expected) => {
    const [middle, deviation, lower, upper] = expected as [number, number, number, number];
    const { monteCarlo, closedForm } = one(inputs[name]!);
    const { error } = monteCarlo;
    expect(Math.abs(monteCarlo.value - middle)).toBeLessThan(4 * error.value);
    expect(Math.abs(monteCarlo.standardDeviation - deviation)).toBeLessThan(5 * error.standardDeviation);
    const near = (end: number, bounds: { lower?: number; upper?: number }, want: number) =>
      expect(Math.abs(end - want)).toBeLessThan(2 * (bounds.upper! - bounds.lower!));
    near(monteCarlo.lower, error.lower, lower);
    near(monteCarlo.upper, error.upper, upper);
    // A number has no scale of its own.
    expect(monteCarlo).not.toHaveProperty('scale');
    if (name === 'logNormal') return;
    expect(closedForm!.value).toBeCloseTo(middle, 9);
    expect(closedForm!.standardDeviation).toBeCloseTo(deviation, 6);
  });

  it('a sample of your own', () => {
    const { monteCarlo } = one({ distribution: 'sample', values: [1, 2, 3, 4, 10] });
    expect([monteCarlo.lower, monteCarlo.upper].every((end) => end >= 1 && end <= 10)).toBe(true);
    // Own algebra: the mean of the quantile function between five values is (½ 1 + 2 + 3 + 4 + ½ 10) / 4.
    expect(Math.abs(monteCarlo.value - 14.5 / 4)).toBeLessThan(4 * monteCarlo.error.value);
  });
});

// Own algebra: over 400 seeds the figures scatter as one run says they do.
it('says how far another seed moves the figures', () => {
  const runs = Array.from(
    { length: 400 },
    (_, seed) => one({ value: 10, standardDeviation: 2 }, { draws: 1000, seed }).monteCarlo,
  );
  type Run = Propagated['monteCarlo'];
  const ratio = (of: (run: Run) => number, error: (run: Run) => number): number =>
    sampleStandardDeviation(runs.map(of)) / mean(runs.map(error));
  expect(
    Math.abs(
      ratio(
        (run) => run.value,
        ({ error }) => error.value,
      ) - 1,
    ),
  ).toBeLessThan(0.15);
  const spread = ratio(
    (run) => run.standardDeviation,
    ({ error }) => error.standardDeviation,
  );
  expect(Math.abs(spread - 1)).toBeLessThan(0.15);
  const truth = 10 + 2 * NORMAL_95;
  const held = runs.filter(({ error: { upper } }) => upper.lower! <= truth && upper.upper! >= truth).length;
  expect(held / runs.length).toBeGreaterThan(0.92);
});
