import { mersenne } from 'pure-rand/generator/mersenne';
import { mean, quantileSorted, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  estimateOcclusionPressure,
  InputError,
  targetCuffPressure,
  testedOneRepMax,
  type Answer,
} from '../../src/index.js';
import { issue } from '../../src/answer/issues.js';
import { grades } from '../../src/evidence/grades.js';
import {
  agreement,
  columns,
  equationFromFit,
  estimateWith,
  fitOcclusionEquation,
  propagate,
  type PropagateInput,
} from '../../src/study/index.js';
import { version } from '../../src/study/version.js';
import { bibliography, methods, working } from '../../src/text/index.js';
import { share } from '../../src/statistics/shares.js';
import { leastSquares } from '../../src/statistics/least-squares.js';
import { accurateSum, quantile } from '../../src/statistics/sums.js';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';
import { fitInput, fittedExample } from '../support/fitted.js';
import { LEG } from '../support/inputs.js';
import { codesOf, expectClose, expectHoldsTogether, refusal, refusalPage, message, Z } from '../support/invariants.js';

const throws = () => {
  throw new RangeError('from the caller’s own getter');
};
const unreadable = (name: string) => Object.defineProperty({}, name, { get: throws, enumerable: true });
type Refused = readonly [path: string, code: string, expected: string, received: string];

describe('the generator', () => {
  // Source: pure-rand.
  it.each([0, 1, 42, 4294967295])('gives the numbers of another implementation, seed %i', (seed) => {
    const ours = mersenneTwister(seed);
    const theirs = mersenne(seed | 0);
    for (let count = 0; count < 2000; count += 1) expect(ours()).toBe(theirs.next() >>> 0);
  });
});

describe('agreement', () => {
  const measured = [150, 160, 170, 180];
  const estimated = [152, 158, 174, 180];
  // Differences 2, −2, 4, 0: mean 1, sum of squares around it 20. Student’s t at 97.5 % with 3 and 2 degrees of freedom.
  const s = Math.sqrt(20 / 3);
  const [T3, T2] = [3.182446305283708, 4.302652729749462];
  it('by hand', () => {
    const got = agreement(measured, estimated, { acceptable: 2, size: 'mean' });
    expect([got.pairs, got.missing]).toEqual([4, { measured: 0, estimated: 0, both: 0 }]);
    expectClose(got.bias.value, 1);
    expectClose(got.bias.standardError, s / 2);
    expectClose(got.bias.lower, 1 - (T3 * s) / 2);
    expectClose(got.bias.upper, 1 + (T3 * s) / 2);
    expectClose(got.standardDeviation, s);
    // Source: R, qt(c(0.025, 0.975), 3, 2 * qnorm(0.975)): the noncentral t of exact limits.
    const [near, far] = [1.6698336198121237, 15.419079086095461];
    const { lower, upper } = got.limits;
    expectClose(lower.value, 1 - Z * s);
    expectClose(upper.value, 1 + Z * s);
    expectClose(upper.lower, 1 + (near * s) / 2);
    expectClose(upper.upper, 1 + (far * s) / 2);
    expectClose(lower.lower, 1 - (far * s) / 2);
    expectClose(lower.upper, 1 - (near * s) / 2);
    expectClose(got.rootMeanSquareError, Math.sqrt(6));
    expectClose(got.meanAbsoluteError, 2);
    // Means of the pairs 151, 159, 172, 180: squares around 165.5 are 505, products with the differences 10.
    const slopeError = Math.sqrt((20 - 100 / 505) / 2 / 505);
    expectClose(got.proportionalBias!.value, 10 / 505);
    expectClose(got.proportionalBias!.standardError, slopeError);
    expectClose(got.proportionalBias!.lower, 10 / 505 - T2 * slopeError);
    expectClose(got.proportionalBias!.upper, 10 / 505 + T2 * slopeError);
    // Squares around the means 500 and 520, products 500, means 1 apart: 2 × 125 of 125 + 130 + 1.
    expectClose(got.concordance!.value, 250 / 256);
    expect(got.concordance!.lower!).toBeLessThan(250 / 256);
    expect(got.concordance!.upper!).toBeGreaterThan(250 / 256);
    expect(got.within).toMatchObject({ count: 3, of: 4, value: 0.75, acceptable: 2 });
    expect(got).not.toHaveProperty('coverage');
    expect(agreement(measured, estimated).within).toMatchObject({ count: 4, acceptable: 15 });
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
    for (const end of [lower, upper]) expectClose((value - end) ** 2, (Z ** 2 * end * (1 - end)) / of);
    expect([lower <= value, upper >= value, lower >= 0, upper <= 1]).toEqual([true, true, true, true]);
    expect(upper).toBeGreaterThan(lower);
  });

  it('counts rows by what they lack, and measurements by where they lie', () => {
    const value = [150, 150, 150, 150, NaN, NaN, 150];
    const lower = [150, 140, 151, 140, 100, 100, NaN];
    const upper = [160, 150, 160, 149, 200, 200, 160];
    const got = agreement([150, 150, 150, 150, 150, null, 150], { value, lower, upper });
    expect([got.pairs, got.missing]).toEqual([5, { measured: 0, estimated: 1, both: 1 }]);
    // At either end is inside; below, above and without an interval are not.
    expect(got.coverage).toMatchObject({ count: 2, of: 4 });
    expect(agreement([1, 2, 3, undefined, NaN, Infinity], [1, 2, 3, 4, 5, 6]).missing.measured).toBe(3);
    expect(agreement(new Float32Array([1, 2, 3]), { value: [1, 2, 4], lower: [1, 2, 3] })).not.toHaveProperty(
      'coverage',
    );
    expect(agreement([1e9, -1e9, 0], [0, 0, 0]).pairs).toBe(3);
  });

  it('leaves out what these pairs cannot carry', () => {
    const same = agreement([100, 100, 100], [100, 100, 100]);
    expect(same.standardDeviation).toBe(0);
    for (const name of ['proportionalBias', 'concordance']) expect(same).not.toHaveProperty(name);
    expect(agreement([100, 100, 100], [1, 2, 3]).concordance).toEqual({ value: 0 });
  });

  it('refuses pairs it cannot, as the golden page says', async () => {
    const cases = {
      'case 1': [5, [1, 2, 3]],
      'case 2': [new DataView(new ArrayBuffer(8)), []],
      'case 3': [measured, [1, 2, 3]],
      'case 4': [measured, null],
      'case 5': [measured, unreadable('value')],
      'case 6': [measured, { value: estimated, lower: [1], upper: measured }],
      'case 7': [measured, { value: estimated, lower: measured, upper: 5 }],
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
      'case 13': [measured, estimated, { acceptable: -1 }],
      'case 14': [measured, estimated, { acceptable: null }],
      'case 15': [measured, estimated, { acceptible: 1 }],
    };
    await expect(
      refusalPage((parts: unknown[]) => agreement(...(parts as Parameters<typeof agreement>)), cases),
    ).toMatchFileSnapshot('refused/agreement.txt');
  });
});

describe('least squares', () => {
  // y = 1, 3, 2, 5, 4 on 1 to 5: slope 0.8, intercept 0.6; residual squares 3.6 with 3 degrees of freedom.
  it('on one term, by hand', () => {
    const fit = leastSquares([[1, 2, 3, 4, 5]], [1, 3, 2, 5, 4]);
    if ('why' in fit) throw new Error(fit.why);
    expectClose(fit.slopes[0]!, 0.8);
    expectClose(fit.intercept, 0.6);
    expectClose(fit.residualDeviation, Math.sqrt(1.2));
    expectClose(fit.slopeErrors[0]!, Math.sqrt(1.2 / 10));
    expectClose(fit.interceptError, Math.sqrt(1.2 * (1 / 5 + 9 / 10)));
    expectClose(fit.rSquared, 0.64);
    expect(fit.degreesOfFreedom).toBe(3);
    expectClose(fit.inflation[0]!, 1);
    [0.6, 0.3, 0.2, 0.3, 0.6].forEach((leverage, row) => expectClose(fit.leverages[row]!, leverage));
    [-0.4, 0.8, -1, 1.2, -0.6].forEach((residual, row) => expectClose(fit.residuals[row]!, residual));
  });

  // Two terms that are at right angles beside one that is not: inflation 1 / (1 − r²).
  it('on two terms that say part of the same', () => {
    const a = [1, 2, 3, 4, 5, 6];
    const b = [2, 1, 4, 3, 6, 5];
    // Sums around the means: 17.5 each, products 14.5.
    const fit = leastSquares(
      [a, b],
      a.map((value, row) => 7 + 2 * value - 3 * b[row]!),
    );
    if ('why' in fit) throw new Error(fit.why);
    [2, -3].forEach((slope, term) => expectClose(fit.slopes[term]!, slope));
    expectClose(fit.intercept, 7);
    for (const inflation of fit.inflation) expectClose(inflation, 1 / (1 - (14.5 / 17.5) ** 2));
    expectClose(
      fit.leverages.reduce((sum, leverage) => sum + leverage),
      3,
    );
  });

  it('says which column does not vary, or follows from those before it', () => {
    const a = [1, 2, 3, 4, 5];
    const b = [2, 1, 4, 3, 6];
    expect(leastSquares([[7, 7, 7, 7, 7], a], b)).toEqual({ column: 0, why: 'constant' });
    expect(leastSquares([a, [0, 0, 0, 0, 0]], b)).toEqual({ column: 1, why: 'constant' });
    expect(leastSquares([a, a.map((value) => 3 - value)], b)).toEqual({ column: 1, why: 'collinear' });
    expect(leastSquares([a, b, a.map((value, row) => value + b[row]!)], b)).toEqual({ column: 2, why: 'collinear' });
  });

  it('keeps what doubles would lose of a long sum', () => {
    expect(accurateSum([1e16, 1, -1e16])).toBe(1);
    expect(accurateSum([1, 1e16, 1, -1e16])).toBe(2);
    expect(accurateSum([])).toBe(0);
  });
});

describe('an equation of one’s own', () => {
  const person = { ...LEG, cuffWidthCm: 11, posture: 'seated', ageYears: 30, sex: 'female' } as const;
  const { rows } = fitInput;

  it('is refused where it cannot be fitted, as the golden page says', async () => {
    const fitted = (more: object) => ({ ...fitInput, ...more });
    const first = (more: object) => fitted({ rows: [{ ...rows[0]!, ...more }, ...rows.slice(1)] });
    // A reading that is no term may be left out, but not be wrong; a girth is held to the limb.
    const one = (more: object) => ({ ...first(more), terms: ['systolicMmHg'] });
    const all = (more: (row: (typeof rows)[number], at: number) => object) =>
      fitted({ rows: rows.map((row, at) => ({ ...row, ...more(row, at) })) });
    const ids = ['Lab', '1lab', 'lab thigh', '', 'thigh-2019', 'x'.repeat(61), 'x'.repeat(60), undefined];
    const terms = [[], ['height'], ['sex', 'sex'], 'sex', undefined];
    const cases = {
      ...Object.fromEntries(ids.map((id) => [`id ${id}`, fitted({ id })])),
      ...Object.fromEntries(terms.map((of) => [`terms ${JSON.stringify(of)}`, fitted({ terms: of })])),
      'no width': fitted({ cuffWidthCm: undefined }),
      'a width that is a term': { ...all((_, at) => ({ cuffWidthCm: 5 + at / 10 })), terms: ['cuffWidthCm'] },
      'rows left out': fitted({ rows: undefined }),
      'no rows': fitted({ rows: [] }),
      '49 rows': fitted({ rows: rows.slice(0, 49) }),
      '50 rows': fitted({ rows: rows.slice(0, 50) }),
      'pressures that are one': first({ systolicMmHg: 80, diastolicMmHg: 80 }),
      'pressures a mmHg apart': first({ systolicMmHg: 81, diastolicMmHg: 80 }),
      'what is no term left out': one({ ageYears: undefined, sex: undefined, cuffWidthCm: 11 }),
      'what is no term wrong': one({ ageYears: 0, sex: 'x', circumferenceCm: 130 }),
      'a term left out': one({ systolicMmHg: undefined }),
      'girth in inches': first({ circumferenceCm: 21.5 }),
      'one age': all(() => ({ ageYears: 30 })),
      'an age that follows from the girth': all((row) => ({ ageYears: row.circumferenceCm! - 20 })),
      'one man': all((_, at) => ({ sex: at === 0 ? 'male' : 'female' })),
    };
    await expect(refusalPage(fitOcclusionEquation as never, cases)).toMatchFileSnapshot('refused/fits.txt');
  });

  it('is fitted to its rows, and says so', () => {
    const fit = fitOcclusionEquation(fitInput);
    const { formula, symbols, terms, intercept, evidence, people, cuffWidthCm, limb, posture } = fit;
    expect([evidence, people, cuffWidthCm, limb, posture]).toEqual(['derived', 60, 11, 'leg', 'seated']);
    expect(terms.map(({ field }) => field)).toEqual(fitInput.terms);
    const sign = (value: number) => (value < 0 ? '-' : '+');
    const parts = ['C', 'SBP', 'DBP', 'age', 'sex'].map(
      (symbol, at) => `${sign(terms[at]!.coefficient)} ${Math.abs(terms[at]!.coefficient)} * ${symbol}`,
    );
    expect(formula).toBe(`${intercept.coefficient} ${parts.join(' ')}`);
    expect(symbols).toEqual({
      C: 'circumferenceCm',
      SBP: 'systolicMmHg',
      DBP: 'diastolicMmHg',
      age: 'ageYears',
      sex: { field: 'sex', codes: { male: 1, female: 2 } },
    });
    for (const [at, field] of (['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'ageYears'] as const).entries()) {
      const values = rows.map((row) => row[field]!);
      expect([terms[at]!.low, terms[at]!.high]).toEqual([Math.min(...values), Math.max(...values)]);
    }
    expect([fit.document, fit.schemaVersion, fit.id]).toEqual(['fitted-occlusion-equation', 1, 'lab-thigh']);
    const answer = estimateWith(fittedExample, person);
    expectHoldsTogether(answer);
    expect(answer.errors!.map(({ part, evidence: grade }) => [part, grade])).toEqual([['equation', 'derived']]);
    expect(codesOf(answer.assumptions)).toEqual(expect.arrayContaining(['error-of-prediction', 'own-laboratory']));
    const [first, second] = ['male', 'female'].map(
      (sex) => estimateWith(fittedExample, { ...person, sex } as never).value,
    );
    expectClose(second! - first!, terms[4]!.coefficient);
  });

  // 100 + 2 × 50 − 3 × 10 and so on, one term after another.
  it.each([
    ['circumferenceCm', 2, 100 + 2 * 55],
    ['systolicMmHg', 0.5, 160],
    ['diastolicMmHg', 0.1, 107],
    ['cuffWidthCm', -3, 67],
    ['ageYears', 1, 130],
    ['sex', 10, 120],
    ['heightCm', 0.5, 185],
    ['bodyMassIndex', 2, 150],
    ['skinfoldMm', -1, 88],
  ] as const)('draws on %s alone where it is the only term', (field, coefficient, expected) => {
    const fit = {
      ...fittedExample,
      cuffWidthCm: field === 'cuffWidthCm' ? 'any' : 11,
      intercept: { coefficient: 100 },
      terms: [{ field, coefficient, low: 1, high: 200 }],
      leverage: { means: [0], factor: [[0]] },
    };
    const { ageYears, sex, ...bare } = person;
    const own = { heightCm: 170, bodyMassIndex: 25, skinfoldMm: 12 };
    const needed = {
      ...(field === 'ageYears' && { ageYears }),
      ...(field === 'sex' && { sex }),
      ...(field in own && { [field]: own[field as 'heightCm'] }),
    };
    expectClose(estimateWith(fit, { ...bare, ...needed }).value, expected);
    const { limb, cuffWidthCm, posture, ...others } = { ...bare, ...needed };
    const many = columns({
      answer: 'occlusion-pressure',
      equation: fit as never,
      limb,
      cuffWidthCm,
      posture,
      ...others,
      circumferenceCm: [person.circumferenceCm],
    } as never);
    expectClose(many.value[0]!, expected);
    expect(equationFromFit(fit).needs).toEqual(Object.keys(needed).filter((name) => !(name in own)));
    expect(Object.keys(equationFromFit(fit).fitted)).toEqual(field === 'sex' || field in own ? [] : [field]);
    if (!(field in own)) return;
    // Without it, and outside its range.
    expect(refusal(() => estimateWith(fit, bare) as never, {})).toEqual([
      [field, 'missing', expect.any(String), 'undefined'],
    ]);
    expect(
      estimateWith({ ...fit, terms: [{ ...fit.terms[0]!, high: 5 }] }, { ...bare, ...needed }).cautions.map(
        ({ code, path }) => [code, path],
      ),
    ).toContainEqual(['outside-fitted-range', [field]]);
    const outside = columns({
      answer: 'occlusion-pressure',
      equation: { ...fit, terms: [{ ...fit.terms[0]!, high: 20 }] } as never,
      ...bare,
      [field]: [own[field as 'heightCm'], 15, NaN, -5],
    } as never);
    expect([...outside.flag].map((bits) => bits & 19)).toEqual(
      field === 'heightCm' ? [16, 2, 1, 2] : field === 'skinfoldMm' ? [0, 0, 1, 2] : [16, 0, 1, 2],
    );
  });

  it('is read back whole, or not at all, as the golden page says', async () => {
    const of = (more: object) => ({ ...fittedExample, ...more });
    const [term] = fittedExample.terms;
    const { means, factor } = fittedExample.leverage;
    const cases = {
      whole: of({}),
      'a number': 5,
      'another document': of({ document: 'plan' }),
      'the id of a published one': of({ id: 'thigh-2019' }),
      'no id': of({ id: undefined }),
      'any cuff': of({ cuffWidthCm: 'any' }),
      'all cuffs': of({ cuffWidthCm: 'all' }),
      'two people': of({ people: 2 }),
      'no error': of({ residualMmHg: undefined }),
      'a large coefficient': of({ intercept: { coefficient: 1.1e6 } }),
      'another term': of({ terms: [{ ...term, field: 'height' }] }),
      'an end in words': of({ terms: [{ ...term, low: 'x' }] }),
      'no leverage': of({ leverage: undefined }),
      'an empty leverage': of({ leverage: {} }),
      'one mean': of({ leverage: { means: [1], factor } }),
      'a factor of ones': of({ leverage: { means, factor: [[1], [1], [1], [1], [1]] } }),
      'a large factor': of({ leverage: { means, factor: [[1], [1, 2], [1, 2, 3], [1, 2, 3, 4], [1, 2, 3, 4, 1e13]] } }),
      'no terms': of({ terms: undefined }),
      'a term twice': of({ terms: [term, term] }),
    };
    await expect(refusalPage(equationFromFit as never, cases)).toMatchFileSnapshot('refused/fitted-equations.txt');
    expect(equationFromFit(fittedExample)).toMatchObject({
      name: 'lab-thigh, fitted to 60 people',
      sample: '60 people of yours',
      evidence: 'derived',
      error: { evidence: 'derived', assumption: 'error-of-prediction' },
      sources: [],
    });
  });

  it('is for its own limb and cuff, and for readings that it gives a pressure for', () => {
    const of = (fit: object, more: object): readonly Refused[] =>
      refusal((given: object) => estimateWith(fit, given as never), { ...person, ...more });
    expect(of(fittedExample, { limb: 'arm', circumferenceCm: 30 })[0]!.slice(0, 2)).toEqual(['limb', 'wrong-relation']);
    expect(of(fittedExample, { cuffWidthCm: 11.6 })).toEqual([
      ['cuffWidthCm', 'wrong-relation', expect.stringMatching(/^11 cm/), '11.6'],
    ]);
    expect(of(fittedExample, { cuffWidthCm: 11.4 })).toEqual([]);
    expect(of({ ...fittedExample, intercept: { coefficient: -5000 } }, {})).toEqual([
      ['circumferenceCm', 'wrong-relation', 'readings for which lab-thigh gives a pressure', 'others'],
    ]);
    expect(of(fittedExample, { sex: undefined })[0]!.slice(0, 2)).toEqual(['sex', 'wrong-relation']);
  });
});

describe('propagation', () => {
  const run = <N extends string>(
    inputs: PropagateInput<N>['inputs'],
    pipeline: PropagateInput<N>['pipeline'],
    more = {},
  ) => propagate({ inputs, pipeline, draws: 200, ...more });
  const x = { value: 10, standardDeviation: 1 };
  const refuse = (): never => {
    throw new InputError([issue('out-of-range', ['x'], ['less', 'less'], 'more')]);
  };

  // Source of the statistics: simple-statistics; of the draws: the generator, held to its publication elsewhere.
  it('draws every reading in turn, and the error of an answer after them', () => {
    const answer = { ...testedOneRepMax({ load: 100 }), standardDeviation: 3 };
    const got = run({ a: x, b: { value: 5, standardDeviation: 2 } }, ({ a, b }) => ({ ...answer, value: a * b }), {
      seed: 42,
    });
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
    expect(got.closedForm!.parts).toEqual({ a: 5, b: 20, own: 3 });
    expectClose(got.closedForm!.standardDeviation, Math.sqrt(25 + 400 + 9));
    expectClose(got.closedForm!.lower, 50 - Z * Math.sqrt(434));
    expectClose(got.closedForm!.upper, 50 + Z * Math.sqrt(434));
    expect(got.closedForm!.value).toBe(50);
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

  it('refuses what it cannot work with, as the golden page says', async () => {
    const of = (more: object) => ({ inputs: { x }, pipeline: () => 1, ...more });
    const returning = (value: unknown) => of({ pipeline: () => value });
    const cases = {
      'no readings': of({ inputs: {} }),
      'a name that is taken': of({ inputs: { own: x } }),
      'a reading in words': of({ inputs: { x: { value: '5' } } }),
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
    };
    await expect(refusalPage(propagate as never, cases)).toMatchFileSnapshot('refused/propagation.txt');
  });

  it('takes a bare number, an answer without an error, and the fewest draws', () => {
    const bare = { ...testedOneRepMax({ load: 100 }), standardDeviation: undefined } as unknown as Answer;
    const got = run({ x }, () => bare, { draws: 100, seed: 0 });
    expect(got.monteCarlo).toMatchObject({ value: 100, standardDeviation: 0, lower: 100, upper: 100 });
    expect(got.monteCarlo.error).toMatchObject({ value: 0, standardDeviation: 0 });
    expect(got.closedForm).toMatchObject({ standardDeviation: 0, parts: { x: 0 } });
    expect(() => run({ x }, throws)).toThrow(RangeError);
  });

  it('has the quantiles between the two nearest values', () => {
    const sorted = [1, 2, 4, 8];
    // Place 0.5 × 3 is half-way from the second to the third.
    expect([0, 0.5, 1, 1 / 3, 0.9].map((at) => quantile(sorted, at))).toEqual(
      [1, 3, 8, 2, 4 + 4 * (2.7 - 2)].map((v) => expect.closeTo(v, 12)),
    );
    expect(quantile([5], 0.3)).toBe(5);
    expect(quantileSorted(sorted, 1)).toBe(8);
  });

  // Source: pure-rand for the numbers, SIAM Rev 1964;6(3):260–264 for the deviates: pairs in the unit disc, drawn out.
  it('makes deviates of 53 random bits by the polar method', () => {
    const ours = normalDeviates(mersenneTwister(5489));
    const theirs = mersenne(5489);
    const uniform = () => {
      const [high, low] = [theirs.next() >>> 0, theirs.next() >>> 0];
      return ((high >>> 5) * 2 ** 26 + (low >>> 6) + 0.5) / 2 ** 53;
    };
    for (let pair = 0; pair < 700;) {
      const [u, v] = [2 * uniform() - 1, 2 * uniform() - 1];
      const s = u * u + v * v;
      if (s >= 1) continue;
      const interval = Math.sqrt((-2 * Math.log(s)) / s);
      expectClose(ours(), u * interval);
      expectClose(ours(), v * interval);
      pair += 1;
    }
  });
});

describe('a bibliography', () => {
  // The package itself comes last.
  const software = `@misc{cuffwork,
  title = {{cuffwork: restriction training in numbers}},
  note = {Computer software, version ${version}},
}
`;
  const bibtex = (...ids: string[]) => {
    const text = bibliography({ sources: ids }, { format: 'bibtex' });
    expect(text.endsWith(`\n${software}`)).toBe(true);
    return text.slice(0, -software.length - 1);
  };
  // Records as `sources` has them, in BibTeX by hand.
  it('in BibTeX', () => {
    expect(bibtex('limb-circumference-2015')).toBe(`@article{limb-circumference-2015,
  title = {{Blood flow restriction in the upper and lower limbs is predicted by limb circumference and systolic blood pressure}},
  journal = {Eur J Appl Physiol},
  year = {2015},
  volume = {115},
  number = {2},
  pages = {397--405},
  doi = {10.1007/s00421-014-3030-7},
  note = {DOI from memory},
}
`);
    expect(bibtex('femoral-repeat')).toBe(`@misc{femoral-repeat,
  title = {{[title not checked: repeat measurement of femoral occlusion pressure under two inflation protocols, 40 people]}},
  note = {figures read in the abstract; journal and year not checked},
}
`);
    expect(bibtex('flow-steps-2018').split('\n').slice(2)).toEqual([
      '  journal = {Clin Physiol Funct Imaging},',
      '  year = {2018},',
      '  volume = {38},',
      '  number = {3},',
      '  pages = {425--430},',
      '  pmid = {28402045},',
      '}',
      '',
    ]);
    expect(bibtex('ucum')).toContain('\n  howpublished = {UCUM},\n  year = {2024},\n  url = {https://ucum.org},\n');
    expect(bibtex('femoral-repeat', 'brzycki-1993').split('\n\n')).toHaveLength(2);
    // A journal without a volume is no article of one.
    expect(bibtex('exercise-shift-2018')).toMatch(
      /^@misc\{exercise-shift-2018,\n.*\n {2}howpublished = \{Eur J Appl Physiol\},\n/,
    );
  });

  it('in CSL-JSON', () => {
    const [record] = bibliography({ sources: ['limb-circumference-2015'] }, { format: 'csl-json' });
    expect(record).toEqual({
      id: 'limb-circumference-2015',
      type: 'article-journal',
      title:
        'Blood flow restriction in the upper and lower limbs is predicted by limb circumference and systolic blood pressure',
      'container-title': 'Eur J Appl Physiol',
      issued: { 'date-parts': [[2015]] },
      volume: '115',
      issue: '2',
      page: '397-405',
      DOI: '10.1007/s00421-014-3030-7',
      note: 'DOI from memory',
    });
    const [pubmed, standard] = bibliography({ sources: ['flow-steps-2018', 'ucum'] }, { format: 'csl-json' });
    expect([pubmed!.PMID, pubmed!.DOI, pubmed!.URL]).toEqual(['28402045', undefined, undefined]);
    expect([standard!.PMID, standard!.URL]).toEqual([undefined, 'https://ucum.org']);
    for (const [name, value] of Object.entries({ ...pubmed, ...standard })) expect(value, name).toBeDefined();
    const plain = bibliography({ sources: ['femoral-repeat', 'exercise-shift-2018'] }, { format: 'csl-json' });
    expect(plain.map(({ type, volume }) => [type, volume])).toEqual([
      ['document', undefined],
      ['document', undefined],
      ['software', undefined],
    ]);
  });

  it.each([
    [{ format: 'ris' }, '"ris"'],
    [undefined, 'undefined'],
    [{}, 'undefined'],
    [unreadable('format'), 'undefined'],
  ])('refuses another format, case %#', (options, received) => {
    const call = (given: unknown) => bibliography({ sources: [] }, given as never);
    expect(refusal(call, options)).toEqual([['format', 'not-one-of', "one of 'bibtex', 'csl-json'", received]]);
  });
});

describe('a methods paragraph', () => {
  const start = /^Calculations were done with cuffwork \d+\.\d+\.\d+ \[cuffwork\]\. /;
  const end =
    ' Intervals are 95 % intervals; errors are assumed normal, on a log scale where they are shares of the value.';
  const middle = (used: object) => {
    const text = methods(used);
    expect(text).toMatch(start);
    expect(text.endsWith(end)).toBe(true);
    return text
      .replace(start, '')
      .slice(0, -end.length + 1)
      .trim();
  };
  it('says how each kind of number was made', () => {
    const occlusion = estimateOcclusionPressure({ ...LEG, equation: 'width-ratio-1993' });
    expect(middle(targetCuffPressure({ occlusion, percentLop: 50 }))).toBe(
      `Cuff pressure to set was taken from percent-of-occlusion (P = p / 100 * LOP; p, percent of LOP [%]; LOP, occlusion; evidence unconfirmed: ${grades.unconfirmed}) [${working(targetCuffPressure({ occlusion, percentLop: 50 }))!.sources.join(', ')}]. ` +
        `Limb occlusion pressure was taken from width-ratio-1993 (LOP = ${working(occlusion)!.formula}; SBP, systolic pressure [mmHg]; DBP, diastolic pressure [mmHg]; C, limb circumference [cm]; W, cuff width [cm]; evidence unconfirmed: ${grades.unconfirmed}) [${working(occlusion)!.sources.join(', ')}].`,
    );
    const own = estimateWith(fittedExample, { ...LEG, cuffWidthCm: 11, posture: 'seated', ageYears: 30, sex: 'male' });
    expect(middle(own)).toContain('evidence derived: fitted to your own measurements).');
    const column = columns({ answer: 'one-repetition-maximum', equation: 'epley-1985', load: [100], repetitions: 5 });
    expect(middle(column)).toMatch(/^One-repetition maximum was taken from epley-1985 \(1RM = /);
    expect(methods([column, column.about])).toBe(methods(column));
    // Only an occlusion pressure that no publication stands behind is of one’s own equation.
    const derived = `evidence derived: ${grades.derived})`;
    const { ownEquation: _, ...published } = own;
    expect(middle(published)).toContain(`taken from ${own.equation} (${derived}`);
    expect(middle([])).toBe('');
  });

  it('passes over what is no answer, and sources there are not', () => {
    const answer = testedOneRepMax({ load: 100 });
    for (const change of [{ kind: 'other' }, { kind: 5 }, { equation: 5 }, { assumptions: null }, { evidence: 'good' }])
      expect(middle({ ...answer, ...change })).toBe('');
    expect(methods({ ...answer, sources: ['of-a-newer-version'] })).toBe(methods(answer));
    expect(middle({ parts: [answer, { deep: answer }], none: null })).toBe(middle(answer));
    expect(refusal(methods, 5 as never)[0]![2]).toBe(
      'an answer, a plan, or anything that holds answers, as plain JSON',
    );
  });
});

it('says of an estimate by one’s own equation what it takes for granted', () => {
  const answer = estimateWith(fittedExample, { ...LEG, cuffWidthCm: 11, posture: 'supine', ageYears: 30, sex: 'male' });
  expect(answer.errors!.map(({ part }) => part)).toEqual(['equation', 'posture']);
  expect(message(answer.cautions).map(([code]) => code)).not.toContain('laboratory');
});
