import { Math, square } from '../quantity/maths.js';
import { chiSquareQuantile } from './chi-square.js';
import { around, type WithConfidence, type WithError } from './interval.js';
import { noncentralTQuantile } from './noncentral-t.js';
import { NORMAL_95 } from './normal.js';
import type { People } from './people.js';
import { studentQuantile, studentT95 } from './student-t.js';
import { accurateSum, mean, squaresAbout, sumOf } from './sums.js';

/** Bias and spread of differences, with the limits that 95 % of them keep. */
export interface DifferenceSpread {
  readonly bias: WithError;
  readonly degreesOfFreedom: number;
  readonly standardDeviation: number;
  readonly components?: { readonly betweenPeople: number; readonly withinPerson: number };
  readonly limits: { readonly lower: WithConfidence; readonly upper: WithConfidence };
  readonly predictionLimits: { readonly lower: number; readonly upper: number };
  /** What a test for normality looks at: independent values. */
  readonly independent: Float64Array;
}

/** Limits at ± 1.96 s from the bias, their intervals from `near` to `far` from it. */
const limitsFrom = (bias: number, s: number, near: number, far: number): DifferenceSpread['limits'] => ({
  lower: { value: bias - NORMAL_95 * s, lower: bias - far, upper: bias - near },
  upper: { value: bias + NORMAL_95 * s, lower: bias + near, upper: bias + far },
});

/** The factors of the last number of pairs: resampling and simulation ask for the same ones over and over. */
let exact: { readonly n: number; readonly near: number; readonly far: number } = { n: 0, near: NaN, far: NaN };

/** The ends of the exact interval of a limit, from the bias, in standard deviations. */
function exactFactors(n: number): typeof exact {
  if (exact.n !== n) {
    const of = (chance: number): number => noncentralTQuantile(chance, n - 1, NORMAL_95 * Math.sqrt(n)) / Math.sqrt(n);
    exact = { n, near: of(0.025), far: of(0.975) };
  }
  return exact;
}

/** Rows of different people: exact, because √n (limit − bias) / s is noncentral t. */
export function spreadOfRows(differences: Float64Array): DifferenceSpread {
  const n = differences.length;
  const bias = mean(differences);
  const s = Math.sqrt(squaresAbout(differences, bias) / (n - 1));
  const t = studentT95(n - 1);
  const { near, far } = exactFactors(n);
  const reach = t * s * Math.sqrt(1 + 1 / n);
  return {
    bias: around(bias, s / Math.sqrt(n), t),
    degreesOfFreedom: n - 1,
    standardDeviation: s,
    limits: limitsFrom(bias, s, near * s, far * s),
    predictionLimits: { lower: bias - reach, upper: bias + reach },
    independent: differences,
  };
}

/** Several rows of a person: components by unweighted means, limits by the method of variance estimates recovery. */
export function spreadOfPeople(differences: Float64Array, { of, count, rows }: People): DifferenceSpread {
  const n = differences.length;
  const sums = new Float64Array(count);
  for (let row = 0; row < n; row += 1) sums[of[row]!]! += differences[row]!;
  const means = sums.map((sum, who) => sum / rows[who]!);
  const bias = mean(means);
  const ofMeans = squaresAbout(means, bias) / (count - 1);
  const within = sumOf(n, (row) => square(differences[row]! - means[of[row]!]!)) / (n - count);
  const inverse = mean(rows.map((number) => 1 / number));
  // The parts of the variance of one observation, each with its degrees of freedom.
  const between = [ofMeans, count - 1] as const;
  const single = [(1 - inverse) * within, n - count] as const;
  const total = between[0] + single[0];
  const s = Math.sqrt(total);
  const recovered = (chance: number): number =>
    Math.sqrt(
      accurateSum(
        [between, single].map(([part, degrees]) => square(part * (degrees / chiSquareQuantile(chance, degrees) - 1))),
      ),
    );
  const standardError = Math.sqrt(ofMeans / count);
  const t = studentT95(count - 1);
  const above = Math.sqrt(total + recovered(0.025)) - s;
  const below = s - Math.sqrt(Math.max(0, total - recovered(0.975)));
  const half = (off: number): number => Math.sqrt(square(t * standardError) + square(NORMAL_95 * off));
  // Degrees of freedom of a sum of variances (Satterthwaite), the mean of the people counted in.
  const withMean = ofMeans * (1 + 1 / count);
  const next = withMean + single[0];
  const degrees = square(next) / accurateSum([square(withMean) / (count - 1), square(single[0]) / (n - count)]);
  const reach = next > 0 ? studentQuantile(0.975, degrees) * Math.sqrt(next) : 0;
  return {
    bias: around(bias, standardError, t),
    degreesOfFreedom: count - 1,
    standardDeviation: s,
    components: {
      betweenPeople: Math.sqrt(Math.max(0, ofMeans - inverse * within)),
      withinPerson: Math.sqrt(within),
    },
    limits: limitsFrom(bias, s, NORMAL_95 * s - half(below), NORMAL_95 * s + half(above)),
    predictionLimits: { lower: bias - reach, upper: bias + reach },
    independent: means,
  };
}
