import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { issue } from '../../src/answer/issues.js';
import { A_FORM } from '../../src/answer/needs.js';
import { InputError } from '../../src/index.js';
import { propagate, type Uncertain } from '../../src/study/index.js';
import { refusalPage } from '../support/invariants.js';

const identity = ({ x }: { readonly x: number }) => x;
const of = (x: Uncertain, more: object = {}) =>
  propagate({ inputs: { x }, pipeline: identity, draws: 200, keepDraws: true, ...more });
const correlation = (a: readonly number[], b: readonly number[]): number => {
  const [middle, other] = [mean([...a]), mean([...b])];
  const products = a.reduce((sum, value, at) => sum + (value - middle) * (b[at]! - other), 0);
  return products / ((a.length - 1) * sampleStandardDeviation([...a]) * sampleStandardDeviation([...b]));
};

describe('what is drawn', () => {
  // Standard errors of a mean and of a standard deviation, the latter by the fourth central moment: definitions.
  it.each([
    ['as it is', (x: number) => x, undefined],
    ['skewed', (x: number) => x * x, undefined],
    ['on a log scale', (x: number) => ({ value: x, scale: 'log', standardDeviation: 0 }), 'log'],
  ])('has the figures of its draws: %s', (_what, pipeline, scale) => {
    const got = propagate({
      inputs: { x: { value: 50, standardDeviation: 4 } },
      pipeline: ({ x }) => pipeline(x) as never,
      draws: 200,
      keepDraws: true,
    });
    const results = got.kept!.results.map((result) => (scale ? Math.log(result) : result));
    const n = results.length;
    const [middle, sd] = [mean(results), sampleStandardDeviation(results)];
    const fourth = mean(results.map((result) => (result - middle) ** 4));
    const { monteCarlo } = got;
    const near = (received: number, expected: number) =>
      expect(Math.abs(received - expected)).toBeLessThan(1e-9 * Math.abs(expected));
    near(monteCarlo.value, scale ? Math.exp(middle) : middle);
    near(monteCarlo.standardDeviation, sd);
    near(monteCarlo.error.value, sd / Math.sqrt(n));
    near(monteCarlo.error.standardDeviation, Math.sqrt((fourth - sd ** 4) / n / (4 * sd ** 2)));
    expect(monteCarlo.scale).toBe(scale);
    expect([n, got.draws, got.refused, got.seed]).toEqual([200, 200, 0, 1]);
  });

  it('has no error where nothing is uncertain', () => {
    const { monteCarlo, kept } = of({ value: 5, standardDeviation: 0 });
    expect([monteCarlo.value, monteCarlo.standardDeviation, monteCarlo.error.standardDeviation]).toEqual([5, 0, 0]);
    expect(kept!.inputs.x).toEqual(Array(200).fill(5));
    expect(of({ value: 5, standardDeviation: 1 }, { keepDraws: false })).not.toHaveProperty('kept');
  });
});

describe('a reading', () => {
  // Means and standard deviations of the distributions: definitions.
  it.each<[string, Uncertain, number, number]>([
    ['uniform', { distribution: 'uniform', low: 2, high: 8 }, 5, 6 / Math.sqrt(12)],
    ['of one value', { distribution: 'uniform', low: 2, high: 2 }, 2, 0],
    ['triangular', { distribution: 'triangular', low: 2, mode: 3, high: 8 }, 13 / 3, Math.sqrt(31 / 18)],
    ['that falls', { distribution: 'triangular', low: 2, mode: 2, high: 8 }, 4, Math.sqrt(2)],
    ['that rises', { distribution: 'triangular', low: 2, mode: 8, high: 8 }, 6, Math.sqrt(2)],
    ['of Student', { distribution: 't', value: 7, standardError: 2, degreesOfFreedom: 4 }, 7, 2 * Math.sqrt(2)],
    ['of a sample', { distribution: 'sample', values: [9, 3] }, 6, Math.sqrt(18)],
    ['of a longer sample', { distribution: 'sample', values: [9, 3, 6] }, 6, 3],
  ])('has its mean and deviation: %s', (_what, x, value, deviation) => {
    const { closedForm } = of(x);
    expect(closedForm!.value).toBeCloseTo(value, 9);
    expect(closedForm!.standardDeviation).toBeCloseTo(deviation, 6);
    expect(closedForm).not.toHaveProperty('scale');
  });

  it('of a sample is drawn within it, in whatever order it is given', () => {
    const draws = (values: readonly number[]) => of({ distribution: 'sample', values }).kept!.results;
    const drawn = draws([9, 3, 6, 1]);
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(1);
    expect(Math.max(...drawn)).toBeLessThanOrEqual(9);
    expect(draws([1, 3, 6, 9])).toEqual(drawn);
  });

  it.each<[string, Uncertain]>([
    ['Student’s', { distribution: 't', value: 0, standardError: 1, degreesOfFreedom: 30 }],
    ['a uniform one', { distribution: 'uniform', low: -1, high: 1 }],
    ['a triangular one', { distribution: 'triangular', low: -1, mode: 0, high: 1 }],
    ['a sample', { distribution: 'sample', values: [3, 1, 2, 5, 4] }],
  ])('is high where one it goes with is high: %s', (_what, x) => {
    const { kept } = propagate({
      inputs: { x, y: { value: 0, standardDeviation: 1 } },
      correlations: [{ between: ['x', 'y'], value: 0.99 }],
      pipeline: ({ x, y }) => x + y,
      draws: 200,
      keepDraws: true,
    });
    expect(correlation(kept!.inputs.x!, kept!.inputs.y!)).toBeGreaterThan(0.8);
  });
});

it('refuses what it cannot work with, as the golden page says', async () => {
  const x = { value: 10, standardDeviation: 1 };
  const pressures = { systolic: { value: 120, standardDeviation: 8 }, diastolic: { value: 75, standardDeviation: 5 } };
  const correlations = [{ between: ['systolic', 'diastolic'], value: 0.6 }];
  const refuse = (): never => {
    throw new InputError([issue('out-of-range', ['x'], A_FORM, 'y')]);
  };
  const of = (more: object) => ({ inputs: { x }, pipeline: () => 1, draws: 100, ...more });
  const returning = (value: unknown) => of({ pipeline: () => value });
  const reading = (input: unknown) => of({ inputs: { x: input } });
  const together = (list: unknown) =>
    of({ inputs: { ...pressures, pulse: { value: 60, standardDeviation: 5 } }, correlations: list });
  const pair = (a: string, b: string, value = 0.5) => ({ between: [a, b], value });
  const cases = {
    'no readings': of({ inputs: {} }),
    'a name that is taken': of({ inputs: { own: x } }),
    'a reading in words': reading({ value: '5' }),
    'no function': of({ pipeline: 5 }),
    '99 draws': of({ draws: 99 }),
    'half a draw': of({ draws: 100.5 }),
    'a seed below 0': of({ seed: -1 }),
    'readings that are always refused': of({ pipeline: () => refuse() }),
    'an answer of NaN': returning(NaN),
    'an answer in words': returning('5'),
    'an answer of null': returning(null),
    'an empty answer': returning({}),
    'an error below 0': returning({ value: 5, standardDeviation: -1 }),
    'an error in words': returning({ value: 5, standardDeviation: 'x' }),
    'a bare number': reading(5),
    'an unknown field': reading({ ...x, sd: 2 }),
    'another scale': reading({ ...x, scale: 'linear' }),
    'a share of nothing': reading({ ...x, value: 0, scale: 'log' }),
    'another distribution': reading({ distribution: 'cauchy', value: 1 }),
    'ends that are swapped': reading({ distribution: 'uniform', low: 2, high: 1 }),
    'a mode above': reading({ distribution: 'triangular', low: 0, mode: 3, high: 1 }),
    'a mode below': reading({ distribution: 'triangular', low: 0, mode: -1, high: 1 }),
    'two degrees of freedom': reading({ distribution: 't', value: 1, standardError: 1, degreesOfFreedom: 2 }),
    'a sample of one': reading({ distribution: 'sample', values: [1] }),
    'a field of another distribution': reading({ distribution: 'uniform', low: 0, high: 1, value: 1 }),
    'a correlation of no input': together([pair('systolic', 'height')]),
    'a correlation with itself': together([pair('systolic', 'systolic')]),
    'three names': together([{ between: ['systolic', 'diastolic', 'pulse'], value: 0.5 }]),
    'a second name that is none': together([pair('height', 'systolic')]),
    'a correlation of one': together([{ between: ['systolic'], value: 0.5 }]),
    'a pair twice': together([...correlations, pair('diastolic', 'systolic')]),
    'a correlation of 1': together([pair('systolic', 'diastolic', 1)]),
    'correlations that cannot be': together([
      pair('systolic', 'diastolic', 0.9),
      pair('systolic', 'pulse', 0.9),
      pair('diastolic', 'pulse', -0.9),
    ]),
    'draws kept in words': of({ keepDraws: 'yes' }),
  };
  await expect(refusalPage(propagate as never, cases)).toMatchFileSnapshot('refused/propagation.txt');
});
