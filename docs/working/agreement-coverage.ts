import { pathToFileURL } from 'node:url';
import { agreement, reliability, type WithConfidence } from '../../src/study/index.js';
import { mersenneTwister, normalDeviates } from '../../src/statistics/random.js';

// How often the 95 % intervals of `cuffwork/study` hold the truth, on simulated studies. Run with
//   npx tsx docs/working/agreement-coverage.ts
// and compare with the table in docs/for-research.md. True values: mean 150, SD 20 mmHg; errors: bias 3, SD 10 mmHg.

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

const studies = {
  'bias, normal errors': (n: number, z: Draw) => {
    const x = draws(n, () => 150 + 20 * z());
    const { bias } = agreement(
      x,
      x.map((value) => value + BIAS + SD * z()),
    );
    return holds(bias, BIAS);
  },
  'upper limit, normal errors': (n: number, z: Draw) => {
    const x = draws(n, () => 150 + 20 * z());
    return limits(
      agreement(
        x,
        x.map((value) => value + BIAS + SD * z()),
      ).limits,
    );
  },
  'prediction limits, a new difference': (n: number, z: Draw) => {
    const x = draws(n, () => 150 + 20 * z());
    const { predictionLimits } = agreement(
      x,
      x.map((value) => value + BIAS + SD * z()),
    );
    return holds(predictionLimits, BIAS + SD * z());
  },
  'calibration slope of a calibrated equation, R² = .4': (n: number, z: Draw) => {
    const estimated = draws(n, () => 150 + 20 * Math.sqrt(0.4) * z());
    const { calibration } = agreement(
      estimated.map((value) => value + 20 * Math.sqrt(0.6) * z()),
      estimated,
    );
    return holds(calibration!.slope, 1);
  },
  'the same by `size: mean`, slope 0 (wrong for estimates)': (n: number, z: Draw) => {
    const estimated = draws(n, () => 150 + 20 * Math.sqrt(0.4) * z());
    const { proportionalBias } = agreement(
      estimated.map((value) => value + 20 * Math.sqrt(0.6) * z()),
      estimated,
      { size: 'mean' },
    );
    return holds(proportionalBias!, 0);
  },
  'two legs with `person`: bias': (n: number, z: Draw) => legs(n, z, true, 'bias'),
  'two legs with `person`: upper limit': (n: number, z: Draw) => legs(n, z, true, 'limit'),
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
  'upper limit, skewed errors (assumption fails)': (n: number, z: Draw) => {
    const x = draws(n, () => 150 + 20 * z());
    const { limits: got } = agreement(
      x,
      x.map((value) => value + SD * skewed(z())),
    );
    return limits(got, SD * skewed(Z));
  },
  'ICC(2,1), three tests': (n: number, z: Draw) => icc(n, z).two,
  'ICC(3,1), three tests': (n: number, z: Draw) => icc(n, z).three,
  'typical error, three tests': (n: number, z: Draw) => icc(n, z).error,
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
function icc(n: number, z: Draw): { two: number; three: number; error: number } {
  const people = draws(n, z);
  const tests = draws(3, z).map((shift) => people.map((person) => 100 + 9 * person + 2 * shift + 4 * z()));
  const { intraclass, typicalError } = reliability(tests);
  return {
    two: holds(intraclass!.icc21, 81 / 101),
    three: holds(intraclass!.icc31, 81 / 97),
    error: holds(typicalError, 4),
  };
}

/** Share of studies whose interval holds the truth [%], by what was asked and how many people took part. */
export function coverage(runs = RUNS): { readonly what: string; readonly percent: readonly number[] }[] {
  return Object.entries(studies).map(([what, study], row) => ({
    what,
    percent: SIZES.map((n) => {
      const z = normalDeviates(mersenneTwister(1000 * row + n));
      let held = 0;
      for (let run = 0; run < runs; run += 1) held += study(n, z);
      return (100 * held) / runs;
    }),
  }));
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(`| 95 % interval of | ${SIZES.map((n) => `n = ${n}`).join(' | ')} |`);
  console.log(`| --- | ${SIZES.map(() => '---').join(' | ')} |`);
  for (const { what, percent } of coverage()) {
    console.log(`| ${what} | ${percent.map((share) => share.toFixed(1)).join(' | ')} |`);
  }
}
