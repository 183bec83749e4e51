import { writeFileSync } from 'node:fs';
import {
  agreement,
  bootstrap,
  conformal,
  crossValidate,
  estimateWith,
  fitOcclusionEquation,
  recalibrateOcclusionEquation,
  reliability,
  type AgreementOptions,
  type WithConfidence,
} from '../../src/study/index.js';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';

// How often the 95 % intervals of `cuffwork/study` hold the truth, on simulated studies. Run with
//   npx tsx docs/working/coverage.ts
// It writes docs/working/coverage.json, from which the tables in docs/for-research.md are made.
// Agreement: mean 150, SD 20 mmHg; errors: bias 3, SD 10 mmHg.

const RUNS = Number(process.env['RUNS'] ?? 4000);
const SIZES = [10, 20, 50, 100];
const Z = 1.959963984540054;
const [BIAS, SD, BETWEEN, WITHIN] = [3, 10, 8, 6];
const LIMIT = BIAS + Z * SD;

type Draw = () => number;
const draws = (n: number, of: (row: number) => number): number[] => Array.from({ length: n }, (_, row) => of(row));
const holds = ({ lower, upper }: { lower: number; upper: number }, truth: number): number =>
  lower <= truth && truth <= upper ? 1 : 0;
const limits = ({ upper }: { upper: WithConfidence }, truth = LIMIT): number => holds(upper, truth);

/** Errors about 0 with an SD of 1 and a long tail upwards, and their 97.5th percentile on that scale. */
const SKEW = 0.8;
const logSpread = Math.sqrt(Math.exp(SKEW ** 2) * (Math.exp(SKEW ** 2) - 1));
const skewed = (z: number): number => (Math.exp(SKEW * z) - Math.exp(SKEW ** 2 / 2)) / logSpread;

/** A study whose differences are bias and error, as it is drawn. */
const biased = (n: number, z: Draw, error = (): number => BIAS + SD * z()) => {
  const x = draws(n, () => 150 + 20 * z());
  return agreement(
    x,
    x.map((value) => value + error()),
  );
};
/** A study of estimates that are calibrated: what is measured spreads about them. */
const calibrated = (n: number, z: Draw, options: AgreementOptions = {}) => {
  const estimated = draws(n, () => 150 + 20 * Math.sqrt(0.4) * z());
  const measured = estimated.map((value) => value + 20 * Math.sqrt(0.6) * z());
  return agreement(measured, estimated, options);
};

const agreements = {
  'bias, normal errors': (n: number, z: Draw) => holds(biased(n, z).bias, BIAS),
  'upper limit, normal errors': (n: number, z: Draw) => limits(biased(n, z).limits),
  'prediction limits, a new difference': (n: number, z: Draw) => holds(biased(n, z).predictionLimits, BIAS + SD * z()),
  'calibration slope of a calibrated equation, R² = .4': (n: number, z: Draw) =>
    holds(calibrated(n, z).calibration!.slope, 1),
  'the same by `size: mean`, slope 0 (wrong for estimates)': (n: number, z: Draw) =>
    holds(calibrated(n, z, { size: 'mean' }).proportionalBias!, 0),
  'two legs with `person`: bias': (n: number, z: Draw) => legs(n, z, true, 'bias'),
  'two legs with `person`: upper limit (approximate)': (n: number, z: Draw) => legs(n, z, true, 'limit'),
  'two legs without `person`: bias (wrong)': (n: number, z: Draw) => legs(n, z, false, 'bias'),
  'two legs with `person`: calibration slope': (n: number, z: Draw) => {
    const person = draws(2 * n, (row) => row >> 1);
    const of = draws(n, z);
    const estimated = person.map((who) => 150 + 15 * of[who]! + 8 * z());
    const own = draws(n, z);
    const measured = estimated.map((value, row) => value + BETWEEN * own[person[row]!]! + WITHIN * z());
    return holds(agreement(measured, estimated, { person }).calibration!.slope, 1);
  },
  'upper limit, errors of the logarithm, `scale: log`': (n: number, z: Draw) => {
    const x = draws(n, () => 150 * Math.exp(0.13 * z()));
    const y = x.map((value) => value * Math.exp(0.02 + 0.2 * z()));
    return limits(agreement(x, y, { scale: 'log' }).limits, Math.exp(0.02 + Z * 0.2));
  },
  'upper limit, skewed errors (assumption fails)': (n: number, z: Draw) =>
    limits(biased(n, z, () => SD * skewed(z())).limits, SD * skewed(Z)),
  'ICC(2,1), three tests (approximate)': (n: number, z: Draw) => icc(n, z).two,
  'ICC(3,1), three tests': (n: number, z: Draw) => icc(n, z).three,
  'typical error, three tests': (n: number, z: Draw) => icc(n, z).error,
  'ICC(2,1), ten tests': (n: number, z: Draw) => icc(n, z, 10).two,
};

function legs(n: number, z: Draw, named: boolean, what: 'bias' | 'limit'): number {
  const person = draws(2 * n, (row) => row >> 1);
  const own = draws(n, z);
  const x = person.map(() => 150 + 20 * z());
  const y = x.map((value, row) => value + BIAS + BETWEEN * own[person[row]!]! + WITHIN * z());
  const got = agreement(x, y, named ? { person } : {});
  return what === 'bias' ? holds(got.bias, BIAS) : limits(got.limits);
}

/** People 9, tests 2 (drawn anew in each study), error 4: ICC(2,1) 81 / 101, ICC(3,1) 81 / 97. */
function icc(n: number, z: Draw, k = 3): { two: number; three: number; error: number } {
  const people = draws(n, z);
  const tests = draws(k, z).map((shift) => people.map((person) => 100 + 9 * person + 2 * shift + 4 * z()));
  const { intraclass, typicalError } = reliability(tests);
  return {
    two: holds(intraclass!.icc21, 81 / 101),
    three: holds(intraclass!.icc31, 81 / 97),
    error: holds(typicalError, 4),
  };
}

const place = { limb: 'leg', posture: 'seated', cuffWidthCm: 11 } as const;
const pressures = { systolicMmHg: 120, diastolicMmHg: 70 } as const;

/** Thighs of 55 ± 5 cm; LOP = 20 + 2.4 C, residuals of 15 mmHg. */
const line = (circumferenceCm: number): number => 20 + 2.4 * circumferenceCm;
const fitted = (
  n: number,
  z: Draw,
  residual: (circumferenceCm: number) => number,
  at: (circumferenceCm: number) => number = (circumferenceCm) => circumferenceCm,
) => {
  const rows = draws(n, () => at(55 + 5 * z())).map((circumferenceCm) => ({
    circumferenceCm,
    valueMmHg: line(circumferenceCm) + residual(circumferenceCm),
  }));
  const input = { id: 'lab', ...place, terms: ['circumferenceCm'] as const, rows };
  return { rows, fit: fitOcclusionEquation({ ...input, diagnostics: true }) };
};
const predicts = (
  n: number,
  z: Draw,
  residual: (circumferenceCm: number) => number,
  circumferenceCm: number,
): number => {
  const { lower, upper } = estimateWith(fitted(n, z, residual).fit, { ...place, ...pressures, circumferenceCm });
  return holds({ lower: lower!, upper: upper! }, line(circumferenceCm) + residual(circumferenceCm));
};

/** The published thigh equation of 2019 in a laboratory that measures a + b × its estimate, residuals of 15 mmHg. */
function recalibrated(n: number, z: Draw, a: number, b: number): number {
  const someone = () => ({
    circumferenceCm: 55 + 5 * z(),
    systolicMmHg: 120 + 8 * z(),
    diastolicMmHg: 70,
    ageYears: 30 + 3 * z(),
    sex: 'male' as const,
  });
  const truth = (p: ReturnType<typeof someone>): number =>
    a + b * (65.29 + 1.11 * p.circumferenceCm + 0.178 * p.systolicMmHg + 1.153 * p.ageYears - 7.984) + 15 * z();
  const rows = Array.from({ length: n }, someone).map((p) => ({ ...p, valueMmHg: truth(p) }));
  const cuff = { ...place, cuffWidthCm: 18 };
  const own = recalibrateOcclusionEquation({ id: 'lab', equation: 'thigh-2019', ...cuff, rows });
  const person = someone();
  const { lower, upper } = estimateWith(own, { ...cuff, ...person });
  return holds({ lower: lower!, upper: upper! }, truth(person));
}

const uneven = (z: Draw) => (circumferenceCm: number) => Math.max(0.2, (circumferenceCm - 40) / 15) * 15 * z();

const equations = {
  'a new person like the sample': (n: number, z: Draw) => predicts(n, z, () => 15 * z(), 55 + 5 * z()),
  'a new person two SDs of circumference away': (n: number, z: Draw) => predicts(n, z, () => 15 * z(), 65),
  'slope of the fit': (n: number, z: Draw) => holds(fitted(n, z, () => 15 * z()).fit.terms[0]!, 2.4),
  'recalibrated, the published slope is wrong': (n: number, z: Draw) => recalibrated(n, z, 90, 0.5),
  'recalibrated, the published equation is right': (n: number, z: Draw) => recalibrated(n, z, 0, 1),
  'recalibrated, it is a little wrong': (n: number, z: Draw) => recalibrated(n, z, 28, 0.85),
  'a new person, skewed residuals (assumption fails)': (n: number, z: Draw) =>
    predicts(n, z, () => 15 * skewed(z()), 55 + 5 * z()),
  'a new person of 65 cm, residuals grow with size (assumption fails)': (n: number, z: Draw) =>
    predicts(n, z, uneven(z), 65),
  'slope, residuals grow with size (assumption fails)': (n: number, z: Draw) =>
    holds(fitted(n, z, uneven(z)).fit.terms[0]!, 2.4),
  'the same with HC3': (n: number, z: Draw) => holds(fitted(n, z, uneven(z)).fit.diagnostics!.robust[1]!, 2.4),
  'a new person, one far larger than the sample, the line bends (assumption fails)': (n: number, z: Draw) => {
    const bend = (circumferenceCm: number): number => 0.12 * Math.max(0, circumferenceCm - 55) ** 2 + 15 * z();
    return predicts(n, z, bend, 70);
  },
  'conformal, cross-validated, skewed residuals': (n: number, z: Draw) => {
    if (n < 20) return NaN;
    const { rows } = fitted(n, z, () => 15 * skewed(z()));
    const fit = (some: readonly (typeof rows)[number][]) => {
      const { intercept, terms } = fitOcclusionEquation({
        id: 'lab',
        ...place,
        terms: ['circumferenceCm'],
        rows: some,
      });
      return (row: (typeof rows)[number]) => intercept.coefficient + terms[0]!.coefficient * row.circumferenceCm;
    };
    const { predicted, measured } = crossValidate({ rows, fit, measured: (row) => row.valueMmHg, folds: 10 });
    const { halfWidth } = conformal(measured, predicted);
    const circumferenceCm = 55 + 5 * z();
    const value = fit(rows)({ circumferenceCm, valueMmHg: 0 });
    return holds({ lower: value - halfWidth, upper: value + halfWidth }, line(circumferenceCm) + 15 * skewed(z()));
  },
  'bootstrap of a mean, skewed values (too narrow for few people)': (n: number, z: Draw) => {
    const rows = draws(n, () => 15 * skewed(z()));
    const statistic = (some: readonly number[]) => some.reduce((sum, value) => sum + value, 0) / some.length;
    return holds(bootstrap({ rows, statistic, draws: 500, seed: Math.floor(1e6 * Math.abs(z())) }), 0);
  },
};

/** Share of studies whose interval holds the truth [%], by what was asked and how many people took part; null: too few people. */
function coverage(studies: Record<string, (n: number, z: Draw) => number>, first: number) {
  return Object.entries(studies).map(([what, study], row) => ({
    what,
    percent: SIZES.map((n) => {
      const z = normalDeviates(mersenneTwister(1000 * (row + first) + n));
      let held = 0;
      for (let run = 0; run < RUNS; run += 1) held += study(n, z);
      return Number.isNaN(held) ? null : Number(((100 * held) / RUNS).toFixed(1));
    }),
  }));
}

const results = { runs: RUNS, people: SIZES, agreement: coverage(agreements, 0), equation: coverage(equations, 100) };
writeFileSync('docs/working/coverage.json', `${JSON.stringify(results, undefined, 2)}\n`);
