import { describe, expect, it } from 'vitest';
import { propagate, type PropagateInput, type Uncertain } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';
import judge from './propagate.json' with { type: 'json' };

const one = (input: Uncertain, more: Partial<PropagateInput> = {}) =>
  propagate({ inputs: { x: input }, pipeline: ({ x }) => x!, draws: 20_000, ...more });

describe('correlated inputs', () => {
  const inputs = {
    systolic: { value: 120, standardDeviation: 8 },
    diastolic: { value: 70, standardDeviation: 6 },
  };
  const correlations = [{ between: ['systolic', 'diastolic'], value: 0.7 }] as const;
  // Own algebra: var(a S − b D) = a² s² + b² d² − 2 a b r s d.
  it('have the variance of correlated errors, both ways', () => {
    const got = propagate({
      inputs,
      correlations,
      pipeline: ({ systolic, diastolic }) => systolic - 0.5 * diastolic,
      draws: 40_000,
      keepDraws: true,
    });
    const variance = 64 + 9 - 2 * 0.5 * 0.7 * 48;
    expect(got.closedForm!.standardDeviation).toBeCloseTo(Math.sqrt(variance), 9);
    expect(got.closedForm!.correlated).toBeCloseTo(-2 * 0.5 * 0.7 * 48, 9);
    const { error, standardDeviation, value } = got.monteCarlo;
    expect(Math.abs(standardDeviation - Math.sqrt(variance))).toBeLessThan(4 * error.standardDeviation);
    expect(Math.abs(value - 85)).toBeLessThan(4 * error.value);
    // The draws themselves are so correlated.
    const { systolic, diastolic } = got.kept!.inputs as { systolic: number[]; diastolic: number[] };
    const r = systolic.reduce((sum, s, i) => sum + ((s - 120) / 8) * ((diastolic[i]! - 70) / 6), 0) / systolic.length;
    expect(Math.abs(r - 0.7)).toBeLessThan(4 * Math.sqrt((1 + 0.49) / 40_000));
    expect(got.kept!.results[5]).toBeCloseTo(systolic[5]! - 0.5 * diastolic[5]!, 12);
    expect(got.kept!.results).toHaveLength(40_000);
    expectPlainJson(got);
  });
  it('draw what they always drew where none go together', () => {
    const pipeline = ({ systolic }: { systolic: number }) => systolic;
    expect(propagate({ inputs, pipeline, draws: 500 })).not.toHaveProperty('kept');
    expect(propagate({ inputs, pipeline, draws: 500 }).closedForm).not.toHaveProperty('correlated');
  });
  it('are refused where they cannot be', () => {
    const of =
      (list: unknown, more: object = {}) =>
      () =>
        propagate({
          inputs: { ...inputs, pulse: { value: 60, standardDeviation: 5 } },
          pipeline: () => 1,
          correlations: list,
          ...more,
        } as never);
    expect(of([{ between: ['systolic', 'height'], value: 0.5 }])).toThrow(
      /between must be the names of two different inputs/,
    );
    expect(of([{ between: ['systolic', 'systolic'], value: 0.5 }])).toThrow(/between/);
    expect(of([{ between: ['systolic'], value: 0.5 }])).toThrow(/between/);
    expect(of([...correlations, { between: ['diastolic', 'systolic'], value: 0.5 }])).toThrow(/each pair once/);
    expect(of([{ between: ['systolic', 'diastolic'], value: 1 }])).toThrow(/value/);
    expect(
      of([
        { between: ['systolic', 'diastolic'], value: 0.9 },
        { between: ['systolic', 'pulse'], value: 0.9 },
        { between: ['diastolic', 'pulse'], value: -0.9 },
      ]),
    ).toThrow(/positive definite/);
    expect(of(undefined, { keepDraws: 'yes' })).toThrow(/keepDraws/);
  });
});

// Source: R, tests/study/propagate.R: mean, standard deviation and the two quantiles of each distribution.
describe('other distributions', () => {
  const inputs: Record<string, Uncertain> = {
    uniform: { distribution: 'uniform', low: 49.5, high: 50.5 },
    triangular: { distribution: 'triangular', low: 40, mode: 55, high: 60 },
    t: { distribution: 't', value: 160, standardError: 4, degreesOfFreedom: 5 },
    logNormal: { value: 160, standardDeviation: 0.2, scale: 'log' },
  };
  it.each(Object.entries(judge.distributions))('%s', (name, expected) => {
    const [mean, deviation, lower, upper] = expected as [number, number, number, number];
    const { monteCarlo, closedForm } = one(inputs[name]!);
    const { error } = monteCarlo;
    expect(Math.abs(monteCarlo.value - mean)).toBeLessThan(4 * error.value);
    expect(Math.abs(monteCarlo.standardDeviation - deviation)).toBeLessThan(5 * error.standardDeviation);
    const near = (end: number, bounds: { lower?: number; upper?: number }, want: number) =>
      expect(Math.abs(end - want)).toBeLessThan(2 * (bounds.upper! - bounds.lower!));
    near(monteCarlo.lower, error.lower, lower);
    near(monteCarlo.upper, error.upper, upper);
    if (name !== 'logNormal') {
      expect(closedForm!.value).toBeCloseTo(mean, 9);
      expect(closedForm!.standardDeviation).toBeCloseTo(deviation, 6);
    }
  });
  it('a sample of your own', () => {
    const { monteCarlo } = one({ distribution: 'sample', values: [1, 2, 3, 4, 10] });
    expect([monteCarlo.lower, monteCarlo.upper].every((end) => end >= 1 && end <= 10)).toBe(true);
    // Own algebra: the mean of the quantile function between five values is (½ 1 + 2 + 3 + 4 + ½ 10) / 4.
    expect(Math.abs(monteCarlo.value - 14.5 / 4)).toBeLessThan(4 * monteCarlo.error.value);
  });
  it('are refused in plain words', () => {
    const of = (input: object) => () => one(input as Uncertain);
    expect(of({ distribution: 'cauchy', value: 1 })).toThrow(/distribution/);
    expect(of({ distribution: 'uniform', low: 2, high: 1 })).toThrow(/high must be at least 2; received/);
    expect(of({ distribution: 'triangular', low: 0, mode: 3, high: 1 })).toThrow(/mode must be from 0 to 1/);
    expect(of({ distribution: 't', value: 1, standardError: 1, degreesOfFreedom: 2 })).toThrow(/degreesOfFreedom/);
    expect(of({ distribution: 'sample', values: [1] })).toThrow(/at least 2/);
    expect(of({ distribution: 'uniform', low: 0, high: 1, value: 1 })).toThrow(/value/);
  });
});

describe('the error of Monte Carlo itself', () => {
  // Own algebra: over 400 seeds the figures scatter as one run says they do.
  it('is how far another seed moves the figures', () => {
    const runs = Array.from(
      { length: 400 },
      (_, seed) => one({ value: 10, standardDeviation: 2 }, { draws: 1000, seed }).monteCarlo,
    );
    const scatter = (of: (run: (typeof runs)[number]) => number): number => {
      const mean = runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
      return Math.sqrt(runs.reduce((sum, run) => sum + (of(run) - mean) ** 2, 0) / runs.length);
    };
    const typical = (of: (run: (typeof runs)[number]) => number): number =>
      runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
    expect(scatter((run) => run.value) / typical((run) => run.error.value)).toBeCloseTo(1, 0);
    expect(Math.abs(scatter((run) => run.value) / typical((run) => run.error.value) - 1)).toBeLessThan(0.15);
    expect(
      Math.abs(scatter((run) => run.standardDeviation) / typical((run) => run.error.standardDeviation) - 1),
    ).toBeLessThan(0.15);
    const truth = 10 + 2 * 1.959963984540054;
    const held = runs.filter(({ error: { upper } }) => upper.lower! <= truth && upper.upper! >= truth).length;
    expect(held / runs.length).toBeGreaterThan(0.92);
  });
});
