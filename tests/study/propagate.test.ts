import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { logInterval } from '../../src/answer/answer.js';
import {
  estimateOcclusionPressure,
  estimateOneRepMax,
  InputError,
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
} from '../../src/index.js';
import { propagate, type PropagateInput } from '../../src/study/index.js';
import { expectPlainJson } from '../support/answers.js';

const leg = { limb: 'leg', diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine' } as const;
const readings = {
  girth: { value: 54, standardDeviation: 1 },
  systolic: { value: 120, standardDeviation: 5 },
};

describe('propagate', () => {
  // Own algebra: a sum of normal readings is normal, with errors in quadrature (JCGM 100, 5.1.2).
  it('is exact for a straight line', () => {
    const { monteCarlo, closedForm, refused } = propagate({
      inputs: { a: { value: 10, standardDeviation: 3 }, b: { value: 4, standardDeviation: 2 } },
      pipeline: ({ a, b }) => a - 2 * b,
      draws: 100_000,
    });
    expect(refused).toBe(0);
    expect(closedForm).toMatchObject({ value: 2, standardDeviation: 5, parts: { a: 3, b: 4 } });
    // Four standard errors of the mean, of the standard deviation, and of a 2.5 % quantile (5 × 0.0084).
    expect(Math.abs(monteCarlo.value - 2)).toBeLessThan((4 * 5) / Math.sqrt(100_000));
    expect(Math.abs(monteCarlo.standardDeviation - 5)).toBeLessThan((4 * 5) / Math.sqrt(200_000));
    expect(Math.abs(monteCarlo.lower - closedForm!.lower)).toBeLessThan(0.17);
    expect(Math.abs(monteCarlo.upper - closedForm!.upper)).toBeLessThan(0.17);
  });

  // Own algebra: E(x²) = μ² + σ², Var(x²) = 4 μ² σ² + 2 σ⁴; the first order leaves the second term out.
  it('shows where the closed form falls short', () => {
    const { monteCarlo, closedForm } = propagate({
      inputs: { x: { value: 1, standardDeviation: 1 } },
      pipeline: ({ x }) => x * x,
      draws: 100_000,
    });
    expect(closedForm).toMatchObject({ value: 1, standardDeviation: 2 });
    expect(Math.abs(monteCarlo.value - 2)).toBeLessThan((4 * Math.sqrt(6)) / Math.sqrt(100_000));
    expect(Math.abs(monteCarlo.standardDeviation - Math.sqrt(6))).toBeLessThan(0.1);
  });

  it('draws the error of an answer too: readings to pressure to target', () => {
    const run = (inputs: PropagateInput<'girth' | 'systolic'>['inputs']) =>
      propagate({
        inputs,
        draws: 20_000,
        pipeline: ({ girth, systolic }) =>
          targetCuffPressure({
            percentLop: 50,
            occlusion: estimateOcclusionPressure({
              ...leg,
              circumferenceCm: girth,
              systolicMmHg: systolic,
              equation: 'width-ratio-1993',
            }),
          }),
      });
    const { closedForm, monteCarlo } = run(readings);
    const own = targetCuffPressure({
      percentLop: 50,
      occlusion: estimateOcclusionPressure({
        ...leg,
        circumferenceCm: 54,
        systolicMmHg: 120,
        equation: 'width-ratio-1993',
      }),
    });
    expect(closedForm!.parts['own']).toBe(own.standardDeviation);
    expect(Math.abs(monteCarlo.standardDeviation / closedForm!.standardDeviation - 1)).toBeLessThan(0.03);
    const exact = { girth: { value: 54, standardDeviation: 0 }, systolic: { value: 120, standardDeviation: 0 } };
    expect(run(exact).closedForm!.standardDeviation).toBe(own.standardDeviation);
  });

  // Own algebra: a product of powers of log-normal readings is log-normal, its shares in quadrature; quantiles of jstat.
  it('is exact for a product on a log scale, and draws from the log-normal', () => {
    const ratio = (draw: { readonly a: number; readonly b: number }): Answer<'occlusion-pressure'> => ({
      ...measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' }),
      value: (160 * draw.a) / draw.b,
      ...logInterval((160 * draw.a) / draw.b, [{ part: 'equation', standardDeviation: 0.12, evidence: 'derived' }]),
    });
    const { monteCarlo, closedForm } = propagate({
      inputs: {
        a: { value: 55, standardDeviation: 0.03, scale: 'log' },
        b: { value: 10, standardDeviation: 0.04, scale: 'log' },
      },
      pipeline: ratio,
      draws: 100_000,
    });
    expect(closedForm!.scale).toBe('log');
    expect(closedForm!.standardDeviation).toBeCloseTo(0.13, 12);
    expect(Math.abs(closedForm!.lower / jstat.lognormal.inv(0.025, Math.log(880), 0.13) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(closedForm!.upper / jstat.lognormal.inv(0.975, Math.log(880), 0.13) - 1)).toBeLessThan(1e-9);
    // Four standard errors of the mean of the logarithms and of their spread, and of a 2.5 % quantile.
    expect(monteCarlo.scale).toBe('log');
    expect(Math.abs(Math.log(monteCarlo.value / 880))).toBeLessThan((4 * 0.13) / Math.sqrt(100_000));
    expect(Math.abs(monteCarlo.standardDeviation - 0.13)).toBeLessThan((4 * 0.13) / Math.sqrt(200_000));
    expect(Math.abs(monteCarlo.lower / closedForm!.lower - 1)).toBeLessThan(0.005);
    expect(Math.abs(monteCarlo.upper / closedForm!.upper - 1)).toBeLessThan(0.005);
    expectPlainJson(closedForm);
  });

  it('stays above zero where a share is large', () => {
    const { monteCarlo } = propagate({
      inputs: { x: { value: 160, standardDeviation: 1, scale: 'log' } },
      pipeline: ({ x }) => x,
    });
    expect(monteCarlo.lower).toBeGreaterThan(0);
    // A number has no scale of its own.
    expect(monteCarlo).not.toHaveProperty('scale');
  });

  it('goes from a set to a load', () => {
    const { closedForm, monteCarlo } = propagate({
      inputs: { load: { value: 60, standardDeviation: 0.5 } },
      pipeline: ({ load }) =>
        trainingLoad({ oneRepMax: estimateOneRepMax({ load, repetitions: 8 }), percentOneRepMax: 30 }),
    });
    expect(Math.abs(monteCarlo.value / closedForm!.value - 1)).toBeLessThan(0.01);
    const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 100 }), percentOneRepMax: 20 });
    expect(
      propagate({ inputs: { x: { value: 0, standardDeviation: 0 } }, pipeline: () => load }).closedForm!
        .standardDeviation,
    ).toBeCloseTo(0.84, 10);
  });

  it('gives the same for the same seed, and other draws for another', () => {
    const run = (seed?: number) =>
      propagate({
        inputs: readings,
        pipeline: ({ girth, systolic }) => girth * systolic,
        ...(seed !== undefined && { seed }),
      });
    expect(run(1)).toEqual(run());
    expect(run(2).monteCarlo).not.toEqual(run(1).monteCarlo);
    expectPlainJson(run(3));
  });

  it('counts draws that the pipeline refuses', () => {
    const result = propagate({
      inputs: { systolic: { value: 75, standardDeviation: 10 } },
      pipeline: ({ systolic }) => estimateOcclusionPressure({ ...leg, circumferenceCm: 54, systolicMmHg: systolic }),
    });
    // Below 70 (the diastolic) in 31 % of draws: Φ(−0.5).
    expect(Math.abs(result.refused / result.draws - 0.3085)).toBeLessThan(0.02);
  });

  it.each([
    ['a bare number', { inputs: { x: 5 } }, /inputs\.x must be a plain object/],
    ['an unknown field', { inputs: { x: { value: 5, standardDeviation: 1, sd: 2 } } }, /inputs\.x\.sd is not a field/],
    ['another scale', { inputs: { x: { value: 5, standardDeviation: 1, scale: 'linear' } } }, /inputs\.x\.scale/],
    ['a share of nothing', { inputs: { x: { value: 0, standardDeviation: 1, scale: 'log' } } }, /inputs\.x\.value/],
  ])('refuses %s', (_name, wrong, message) => {
    const call = () =>
      propagate({
        pipeline: ({ x }: { x: number }) => x,
        ...wrong,
      } as never);
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
