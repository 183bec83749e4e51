/*
 * The working behind the pooled curves (grade `derived`): one model of the published group means of limb occlusion
 * pressure, both limbs, every cuff width and posture together.
 *
 *   LOP = DBP + h × (a × (SBP − DBP) + b × C / W),   a = 1/2
 *
 * b is one number for each limb, h one for each posture of the thigh (supine 1). Lying down this is the middle of the two
 * blood pressures plus b × C / W, so it lies above the diastolic pressure for everyone. Errors are shares of the
 * pressure above diastolic: ln(mean − DBP) has a random effect of the laboratory, one of the cuff in the laboratory
 * and a residual, each with one variance for all widths, postures and limbs (restricted maximum likelihood).
 *
 * The publications give means, but not the circumference and blood pressure of their samples. A nominal person is used
 * for every sample: 120/70 mmHg, thigh 55 cm, arm 32 cm. Means from memory (`unconfirmed`) are left out of the fit.
 * A posture that was not reported counts as supine.
 *
 * What it finds is in pooled-curve.json; a test holds the constants of the equation files to it, and an independent
 * fit in R agrees. To write it anew: npx tsx docs/working/pooled-curve.ts > docs/working/pooled-curve.json
 */
import groupMeans from '../../src/checks/group-means.json' with { type: 'json' };
import survey from './survey-figures.json' with { type: 'json' };
import { NORMAL_95, normalChance } from '../../src/statistics/normal.js';
import { rootOf } from '../../src/statistics/root.js';
import { studentT95 } from '../../src/statistics/student-t.js';

export type Limb = 'leg' | 'arm';
export type Posture = 'supine' | 'seated' | 'standing';

export interface GroupMean {
  readonly limb: string;
  readonly cuff: string;
  readonly cuffWidthCm?: number;
  readonly posture: string;
  readonly mean: number;
  readonly standardDeviation?: number;
  readonly n?: number;
  readonly source: string;
  readonly grade: string;
  readonly note?: string;
}

export const NOMINAL = {
  systolicMmHg: 120,
  diastolicMmHg: 70,
  ageYears: 23.23,
  circumferenceCm: { leg: 55, arm: 32 },
} as const;
const PULSE = NOMINAL.systolicMmHg - NOMINAL.diastolicMmHg;

/** Share of the pulse pressure in the curve: the middle of the two blood pressures. Chosen, see `forms`. */
export const A = 0.5;

/**
 * Widths assumed where the abstract calls the cuff only narrow, wide or surgical [cm]: those of the published narrow and
 * wide cuffs, and 12 cm for a surgical-type cuff. `leftOut` and `sensitivity` show what they change.
 */
const ASSUMED_CM: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'posture-widths-2018': { narrow: 5, wide: 13.5 },
  'posture-2018': { wide: 12 },
};

/** A mean as the model takes it. */
export interface Mean extends GroupMean {
  readonly limb: Limb;
  readonly widthCm: number;
  readonly assumed: boolean;
  readonly at: Posture;
}

/** Every mean whose width is known or assumed, from memory too. */
export const allMeans: readonly Mean[] = (groupMeans.rows as readonly GroupMean[]).flatMap((row) => {
  const widthCm = row.cuffWidthCm ?? ASSUMED_CM[row.source]?.[row.cuff];
  if (widthCm === undefined) return [];
  const at = (row.posture === 'not-stated' ? 'supine' : row.posture) as Posture;
  return [{ ...row, limb: row.limb as Limb, widthCm, assumed: row.cuffWidthCm === undefined, at }];
});
/** Those of the fit. */
export const means = allMeans.filter(({ grade }) => grade !== 'unconfirmed');
export const capped = ({ source, widthCm }: Mean): boolean => source === 'cuff-width-2012' && widthCm === 5;

// Linear algebra of small matrices.

type Matrix = readonly (readonly number[])[];

/** Lower Cholesky factor. */
function cholesky(matrix: Matrix): number[][] {
  const factor: number[][] = [];
  matrix.forEach((row, i) => {
    const own: number[] = [];
    factor.push(own);
    for (let j = 0; j <= i; j += 1) {
      let sum = row[j]!;
      for (let k = 0; k < j; k += 1) sum -= own[k]! * factor[j]![k]!;
      own.push(i === j ? Math.sqrt(sum) : sum / factor[j]![j]!);
    }
  });
  return factor;
}
/** The factor’s inverse times a vector. */
const forward = (factor: Matrix, vector: readonly number[]): number[] => {
  const out: number[] = [];
  factor.forEach((row, i) => {
    let sum = vector[i]!;
    for (let k = 0; k < i; k += 1) sum -= row[k]! * out[k]!;
    out.push(sum / row[i]!);
  });
  return out;
};
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const logDeterminant = (factor: Matrix): number => factor.reduce((sum, row, i) => sum + 2 * Math.log(row[i]!), 0);
function inverse(matrix: Matrix): number[][] {
  const factor = cholesky(matrix);
  const columns = matrix.map((_, i) =>
    forward(
      factor,
      matrix.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
  return matrix.map((_, i) => matrix.map((__, j) => dot(columns[i]!, columns[j]!)));
}

/** The lowest point of a function, by the simplex method. */
function lowest(f: (x: readonly number[]) => number, start: readonly number[], size = 1): number[] {
  let simplex = [start, ...start.map((_, i) => start.map((x, j) => (i === j ? x + size : x)))].map((x) => ({
    x: [...x],
    y: f(x),
  }));
  for (let step = 0; step < 400; step += 1) {
    simplex.sort((p, q) => p.y - q.y);
    const [best, worst] = [simplex[0]!, simplex.at(-1)!];
    if (worst.y - best.y < 1e-11) break;
    const others = simplex.slice(0, -1);
    const centre = start.map((_, i) => others.reduce((sum, { x }) => sum + x[i]!, 0) / others.length);
    const point = (by: number) => {
      const x = centre.map((c, i) => c + by * (worst.x[i]! - c));
      return { x, y: f(x) };
    };
    const reflected = point(-1);
    let next = reflected;
    if (reflected.y < best.y) {
      const expanded = point(-2);
      if (expanded.y < reflected.y) next = expanded;
    } else if (reflected.y >= others.at(-1)!.y) {
      next = point(reflected.y < worst.y ? -0.5 : 0.5);
      if (next.y >= Math.min(worst.y, reflected.y)) {
        simplex = simplex.map(({ x }, i) => {
          if (i === 0) return best;
          const half = x.map((value, j) => (value + best.x[j]!) / 2);
          return { x: half, y: f(half) };
        });
        continue;
      }
    }
    simplex[simplex.length - 1] = next;
  }
  simplex.sort((p, q) => p.y - q.y);
  return simplex[0]!.x;
}

// The model.

/** Standard deviations of ln(mean − DBP): between laboratories, between cuffs of one laboratory, what is left. */
export type Components = readonly [laboratory: number, cuff: number, rest: number];

/** Coefficients. `a` and `p` are fixed unless a form frees them. */
export interface Coefficients {
  readonly leg: number;
  readonly arm: number;
  readonly seated: number;
  readonly standing: number;
  readonly a: number;
  readonly p: number;
}
type Name = keyof Coefficients;

export interface Fit {
  readonly coefficients: Coefficients;
  readonly names: readonly Name[];
  /** Of the coefficients named, those of `leg` and `arm` (b) as they are, those of postures as ln h. */
  readonly covariance: Matrix;
  readonly components: Components;
  /** Minus twice the restricted log-likelihood, save a constant. */
  readonly deviance: number;
}

/** The means of a fit with their y = ln(mean − DBP); a simulation has its own. */
type Data = readonly { readonly mean: Pick<Mean, 'limb' | 'widthCm' | 'at' | 'source'>; readonly y: number }[];
export const dataOf = (rows: readonly Mean[]): Data =>
  rows.map((mean) => ({ mean, y: Math.log(mean.mean - NOMINAL.diastolicMmHg) }));

const START: Coefficients = { leg: 18, arm: 11, seated: 0.22, standing: 0.43, a: A, p: 1 };

/** ln of the pressure above diastolic of the nominal person, and its slopes. */
function curve(c: Coefficients, { limb, widthCm, at }: Pick<Mean, 'limb' | 'widthCm' | 'at'>) {
  const ratio = NOMINAL.circumferenceCm[limb] / widthCm;
  const power = ratio ** c.p;
  const above = c.a * PULSE + c[limb] * power;
  const slope: Readonly<Record<Name, number>> = {
    leg: limb === 'leg' ? power / above : 0,
    arm: limb === 'arm' ? power / above : 0,
    seated: at === 'seated' ? 1 : 0,
    standing: at === 'standing' ? 1 : 0,
    a: PULSE / above,
    p: (c[limb] * power * Math.log(ratio)) / above,
  };
  return { value: Math.log(above) + (at === 'supine' ? 0 : c[at]), slope };
}

const FLOOR = 1e-4;

/** Factor of the covariance of means, by its components: means of one laboratory, and of one cuff there, go together. */
function factors(data: Data): (components: Components) => Matrix {
  const sameLaboratory = data.map(({ mean: p }) => data.map(({ mean: q }) => (p.source === q.source ? 1 : 0)));
  const sameCuff = data.map(({ mean: p }) =>
    data.map(({ mean: q }) => (p.source === q.source && p.limb === q.limb && p.widthCm === q.widthCm ? 1 : 0)),
  );
  return ([between, cuff, rest]) =>
    cholesky(
      data.map((_, i) =>
        data.map(
          (__, j) => between ** 2 * sameLaboratory[i]![j]! + cuff ** 2 * sameCuff[i]![j]! + (i === j ? rest ** 2 : 0),
        ),
      ),
    );
}

/** Restricted maximum likelihood: the curve is linearised, its components fitted, and so on until nothing moves. */
export function fit(
  data: Data,
  freed: readonly ('a' | 'p')[] = [],
  start: Coefficients = START,
  /** Standard deviation between laboratories, where it is not fitted. */
  laboratory?: number,
): Fit {
  const has = (test: (mean: Data[number]['mean']) => boolean): boolean => data.some(({ mean }) => test(mean));
  const names: Name[] = [
    ...(['leg', 'arm'] as const).filter((limb) => has((mean) => mean.limb === limb)),
    ...(['seated', 'standing'] as const).filter((posture) => has(({ at }) => at === posture)),
    ...freed,
  ];
  const factorOf = factors(data);
  const solve = (factor: Matrix, columns: readonly (readonly number[])[], r: readonly number[]) => {
    const white = columns.map((column) => forward(factor, column));
    const whiteR = forward(factor, r);
    const information = white.map((p) => white.map((q) => dot(p, q)));
    const root = cholesky(information);
    const u = forward(
      root,
      white.map((p) => dot(p, whiteR)),
    );
    return { information, root, u, rest: dot(whiteR, whiteR) - dot(u, u) };
  };
  let coefficients = { ...start };
  let logs: number[] = [-2.5, -2, -2.5];
  const componentsOf = (x: readonly number[]): Components => {
    const [between, cuff, rest] = x.map((log) => Math.max(FLOOR, Math.exp(log)));
    return [laboratory ?? between!, cuff!, rest!];
  };
  let [covariance, deviance]: [Matrix, number] = [[], NaN];
  for (let round = 0; round < 40; round += 1) {
    const at = data.map(({ mean }) => curve(coefficients, mean));
    const residuals = data.map(({ y }, i) => y - at[i]!.value);
    const columns = names.map((name) => at.map(({ slope }) => slope[name]));
    const objective = (x: readonly number[]): number => {
      const factor = factorOf(componentsOf(x));
      const { root, rest } = solve(factor, columns, residuals);
      return logDeterminant(factor) + logDeterminant(root) + rest;
    };
    logs = lowest(
      objective,
      logs.map((log) => Math.max(log, -6)),
      round === 0 ? 1 : 0.2,
    );
    const { information, u, root } = solve(factorOf(componentsOf(logs)), columns, residuals);
    covariance = inverse(information);
    deviance = objective(logs);
    const step = covariance.map((row) =>
      dot(
        row,
        root.map((line, i) => line.reduce((sum, value, k) => (k <= i ? sum + value * u[k]! : sum), 0)),
      ),
    );
    const next: Record<Name, number> = { ...coefficients };
    names.forEach((name, i) => (next[name] += step[i]!));
    // A step that would leave no curve is halved.
    for (const limb of ['leg', 'arm'] as const) next[limb] = Math.max(next[limb], coefficients[limb] / 2);
    coefficients = next;
    if (Math.max(...step.map((s, i) => Math.abs(s) / (i < 2 ? 10 : 1))) < 1e-9) break;
  }
  return { coefficients, names, covariance, components: componentsOf(logs), deviance };
}

/** What a curve gives the nominal person [mmHg]. */
export const answerOf = (c: Coefficients, mean: Pick<Mean, 'limb' | 'widthCm' | 'at'>): number =>
  NOMINAL.diastolicMmHg + Math.exp(curve(c, mean).value);

// How people differ.

export const rms = (values: readonly number[]): number => Math.hypot(...values) / Math.sqrt(values.length);

/** The smallest published R² of a regression on circumference and blood pressure (18 cm, 2019). */
const EXPLAINED = 0.397;
/**
 * People about the curve, as a share of the pressure above diastolic: published standard deviations of whole samples,
 * less what circumference and blood pressure explain of them at the least.
 */
export const wholeSpread = rms(
  means.flatMap(({ mean, standardDeviation }) =>
    standardDeviation === undefined ? [] : [standardDeviation / (mean - NOMINAL.diastolicMmHg)],
  ),
);
export const people = wholeSpread * Math.sqrt(1 - EXPLAINED);

// Prediction of one new person in a new laboratory.

/** A fit with the error of its coefficients as it is when the share `a` is not known either. */
export interface Curve extends Fit {
  /** Cuffs, each in its laboratory, less the coefficients of level. */
  readonly degrees: number;
  /** Student’s t over the normal quantile, for what comes from few laboratories and cuffs. */
  readonly widening: number;
}
export function curveOf(data: Data, start: Coefficients = START): Curve {
  const own = fit(data, [], start);
  const cuffs = new Set(data.map(({ mean: { source, limb, widthCm } }) => `${source} ${limb} ${widthCm}`)).size;
  const { names, covariance } = withShare(data, own);
  const levels = names.filter((name) => name === 'leg' || name === 'arm' || name === 'a').length;
  const degrees = cuffs - levels;
  return { ...own, names, covariance, degrees, widening: studentT95(degrees) / NORMAL_95 };
}

/** Names and covariance of the coefficients with `a` freed, at the coefficients and components of a fit. */
function withShare(data: Data, { coefficients, names, components }: Fit): Pick<Fit, 'names' | 'covariance'> {
  const all: readonly Name[] = [...names, 'a'];
  const factor = factors(data)(components);
  const white = all.map((name) =>
    forward(
      factor,
      data.map(({ mean }) => curve(coefficients, mean).slope[name]),
    ),
  );
  return { names: all, covariance: inverse(white.map((p) => white.map((q) => dot(p, q)))) };
}

/** Parts of the error of ln(LOP − DBP) for one new person with the nominal readings. */
export function partsOf(
  { coefficients, names, covariance, components, widening }: Curve,
  place: Pick<Mean, 'limb' | 'widthCm' | 'at'>,
) {
  const { slope } = curve(coefficients, place);
  const g = names.map((name) => slope[name]);
  const equation =
    widening *
    Math.sqrt(
      dot(
        g,
        covariance.map((row) => dot(row, g)),
      ),
    );
  return { people, laboratory: widening * Math.hypot(...components), equation };
}

/** Standard deviation of ln(LOP), t folded in: errors are shares of the pressure above diastolic. */
export function deviationOf(own: Curve, place: Pick<Mean, 'limb' | 'widthCm' | 'at'>): number {
  const { people: p, laboratory, equation } = partsOf(own, place);
  return Math.hypot(p, laboratory, equation) * (1 - NOMINAL.diastolicMmHg / answerOf(own.coefficients, place));
}

// The fit.

/** The fit behind the constants. */
export const pooled = curveOf(dataOf(means));

const round3 = (value: number): number => Number(value.toPrecision(3));
/** Two digits, upwards, so that rounding never makes an error look smaller. */
export const up = (value: number): number => Math.ceil(value * 100 - 1e-9) / 100;

/** Every constant of the two equation files, as it is shipped: t folded into what few laboratories say. */
export function constants() {
  const { coefficients, names, covariance, widening, components } = pooled;
  const of = (p: Name, q: Name): number => widening ** 2 * covariance[names.indexOf(p)]![names.indexOf(q)]!;
  const posture = (at: 'seated' | 'standing') => ({
    h: round3(of(at, at)),
    b: round3(of('leg', at)),
    a: round3(of('a', at)),
  });
  const variance = (limb: Limb) => ({
    b: round3(of(limb, limb)),
    a: round3(of('a', 'a')),
    both: round3(of(limb, 'a')),
  });
  return {
    b: { leg: round3(coefficients.leg), arm: round3(coefficients.arm) },
    h: { supine: 1, seated: round3(Math.exp(coefficients.seated)), standing: round3(Math.exp(coefficients.standing)) },
    people: up(people),
    laboratory: up(widening * Math.hypot(...components)),
    cuff: up(widening * components[1]),
    variance: { leg: variance('leg'), arm: variance('arm') },
    posture: { seated: posture('seated'), standing: posture('standing') },
    level: up(levelDeviation),
  };
}

/**
 * Slopes with systolic plus diastolic pressure, where published ones can be had; the curve takes 1 for their sum. The
 * standardised slopes of 2015 are published; they are turned into mmHg by published standard deviations of occlusion
 * pressure and those of blood pressure in the survey, ages 18–39.
 */
const SURVEY_DEVIATION = {
  systolic: survey.young.systolic.standardDeviation,
  diastolic: survey.young.diastolic.standardDeviation,
};
export const slopes = [
  { source: 'thigh-equation-2019', systolic: 0.178, diastolic: 0 },
  {
    source: 'limb-circumference-2015 (arm)',
    systolic: (0.394 * 14) / SURVEY_DEVIATION.systolic,
    diastolic: (0.147 * 14) / SURVEY_DEVIATION.diastolic,
  },
  { source: 'limb-circumference-2015 (thigh)', systolic: (0.281 * 42) / SURVEY_DEVIATION.systolic, diastolic: 0 },
];
export const levelDeviation = rms(slopes.map(({ systolic, diastolic }) => systolic + diastolic - 1));

// How wrong it is for a laboratory it has not seen.

export interface LeftOut {
  readonly mean: Mean;
  readonly predicted: number;
  /** ln(published / predicted) */
  readonly error: number;
}

/** Every laboratory predicted from the others; those whose means are from memory are never in the fit. */
export function leftOut(rows: readonly Mean[] = means, freed: readonly ('a' | 'p')[] = [], start = START): LeftOut[] {
  return [...new Set(allMeans.map(({ source }) => source))].flatMap((left) => {
    const { coefficients, names } = fit(dataOf(rows.filter(({ source }) => source !== left)), freed, start);
    // Where no other laboratory has a posture, its factor is not fitted and its mean not predicted.
    return allMeans
      .filter(({ source, at }) => source === left && (at === 'supine' || names.includes(at)))
      .map((mean) => {
        const predicted = answerOf(coefficients, mean);
        return { mean, predicted, error: Math.log(mean.mean / predicted) };
      });
  });
}
/** Root mean square of the errors of a limb, over means of known width or all. */
export const leftOutError = (rows: readonly LeftOut[], limb: Limb, assumed = false): number =>
  rms(rows.filter(({ mean }) => mean.limb === limb && (assumed || !mean.assumed)).map(({ error }) => error));
/** The same on the thigh, with the mean that is an underestimate not counted. */
const uncapped = (rows: readonly LeftOut[]): number =>
  leftOutError(
    rows.filter(({ mean }) => !capped(mean)),
    'leg',
  );

/** Forms that were tried. The one with the smallest left-out error on the thigh, and the fewest coefficients, is taken. */
export const forms = () =>
  (
    [
      ['a = 1/2, p = 1 (taken)', [], {}],
      ['a = 1/3, p = 1', [], { a: 1 / 3 }],
      ['a fitted, p = 1', ['a'], {}],
      ['a = 1/2, p fitted', ['p'], {}],
      ['a fitted, p = 1.5', ['a'], { p: 1.5 }],
    ] as const
  ).map(([form, freed, fixed]) => {
    const start = { ...START, ...fixed };
    const { coefficients, names, covariance } = fit(dataOf(means), freed, start);
    const errors = leftOut(means, freed, start);
    const error = (name: 'a' | 'p') =>
      names.includes(name) ? Math.sqrt(covariance[names.indexOf(name)]![names.indexOf(name)]!) : 0;
    return {
      form,
      coefficients,
      standardErrors: { a: error('a'), p: error('p') },
      thigh: ([5, 10, 12, 13.5, 18] as const).map((widthCm) =>
        answerOf(coefficients, { limb: 'leg', widthCm, at: 'supine' }),
      ),
      arm: ([5, 10, 12] as const).map((widthCm) => answerOf(coefficients, { limb: 'arm', widthCm, at: 'supine' })),
      leftOut: { leg: leftOutError(errors, 'leg'), arm: leftOutError(errors, 'arm') },
    };
  });

/** What the fit rests on: other choices, and what they make of 10 cm on a thigh and of 5 cm on an arm, supine. */
export const sensitivity = () => {
  const at = (own: Fit, limb: Limb, widthCm: number) => answerOf(own.coefficients, { limb, widthCm, at: 'supine' });
  const row = (choice: string, rows: readonly Mean[], data = dataOf(rows)) => {
    const own = fit(data);
    const errors = leftOut(rows);
    return {
      choice,
      means: data.length,
      b: { leg: own.coefficients.leg, arm: own.coefficients.arm },
      thigh10: at(own, 'leg', 10),
      arm5: at(own, 'arm', 5),
      leftOut: { leg: leftOutError(errors, 'leg'), legUncapped: uncapped(errors), arm: leftOutError(errors, 'arm') },
    };
  };
  return [
    row('as shipped', means),
    row(
      'without the means of assumed width',
      means.filter(({ assumed }) => !assumed),
    ),
    row(
      'without the sample capped at 300 mmHg',
      means.filter((mean) => !capped(mean)),
    ),
    row(
      'without either',
      means.filter((mean) => !mean.assumed && !capped(mean)),
    ),
    row(
      'without the 3 cm cuff',
      means.filter(({ widthCm }) => widthCm > 3),
    ),
    row('with the arm means from memory', allMeans),
  ];
};

/** The nominal person could be another: what b would be, and what the curve then gives 55 cm, 120/70, 10 cm. */
export const otherNominal = () =>
  [
    [50, 120],
    [60, 120],
    [55, 110],
    [55, 130],
  ].map(([circumferenceCm, systolicMmHg]) => {
    const leg = means.filter(({ limb }) => limb === 'leg');
    // One dimension: the b for which the weighted mean residual of the fit is that of the shipped one.
    const pulse = systolicMmHg! - NOMINAL.diastolicMmHg;
    const mid = (b: number) =>
      leg.reduce((sum, { widthCm }) => sum + Math.log(pulse / 2 + (b * circumferenceCm!) / widthCm), 0);
    const wanted = leg.reduce(
      (sum, { widthCm }) =>
        sum + Math.log(PULSE / 2 + (pooled.coefficients.leg * NOMINAL.circumferenceCm.leg) / widthCm),
      0,
    );
    const b = rootOf(mid, wanted, 1, 60);
    return { circumferenceCm: circumferenceCm!, systolicMmHg: systolicMmHg!, b, thigh10: 95 + (b * 55) / 10 };
  });

// How laboratories differ.

/** 95 % interval of the standard deviation between laboratories, by the profile of the restricted likelihood. */
export function laboratoryInterval(data: Data = dataOf(means)): { lower: number; upper: number } {
  const least = fit(data).deviance;
  const profile = (laboratory: number): number => fit(data, [], START, laboratory).deviance - least;
  const CHI_SQUARED_95 = 3.841458820694124;
  const upper = rootOf(profile, CHI_SQUARED_95, pooled.components[0], 1);
  return { lower: profile(FLOOR) < CHI_SQUARED_95 ? 0 : NaN, upper };
}

/** Share of the variance of published means that is no sampling error of theirs (I²). */
export const iSquared = (): number => {
  const sampling = means.map(({ n = 30 }) => wholeSpread ** 2 / n);
  const typical = rms(sampling.map(Math.sqrt)) ** 2;
  const total = pooled.components.reduce((sum, part) => sum + part ** 2, 0);
  return Math.max(0, 1 - typical / total);
};

// Whether the interval holds what it says it does: new laboratories, means and people are drawn from the model.

const laboratoriesOf = (): readonly string[] => [...new Set(means.map(({ source }) => source))];

/** Seeded normal deviates (a 32-bit generator, Box and Muller). */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/**
 * Simulated coverage of the 95 % interval of a new person in a new laboratory, 10 cm thigh cuff, supine. Each draw
 * takes so many laboratories of the real ones, with their cuffs and postures, and draws their means anew.
 */
export function coverage(count: number, laboratoryShare: number | undefined, draws: number, seed = 1): number {
  const place = { limb: 'leg', widthCm: 10, at: 'supine' } as const;
  const answer = answerOf(pooled.coefficients, place);
  const aboveTrue = answer - NOMINAL.diastolicMmHg;
  const [ownLaboratory, cuff, rest] = pooled.components;
  const laboratory = laboratoryShare === undefined ? ownLaboratory : (laboratoryShare * answer) / aboveTrue;
  const spread = Math.hypot(laboratory, cuff, rest, people);
  const normal = normals(seed);
  const chance = (above: number): number => (above <= 0 ? 0 : normalChance(Math.log(above / aboveTrue) / spread));
  let sum = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const shuffled = laboratoriesOf()
      .map((source) => ({ source, at: normal() }))
      .sort((p, q) => p.at - q.at);
    const data = Array.from({ length: count }, (_, k) => shuffled[k % shuffled.length]!.source).flatMap((source, k) => {
      const ofLaboratory = laboratory * normal();
      const ofCuff = new Map<string, number>();
      return means
        .filter((mean) => mean.source === source)
        .map((mean) => {
          const key = `${mean.limb} ${mean.widthCm}`;
          if (!ofCuff.has(key)) ofCuff.set(key, cuff * normal());
          const y = curve(pooled.coefficients, mean).value + ofLaboratory + ofCuff.get(key)! + rest * normal();
          return { mean: { ...mean, source: `${source} ${k}` }, y };
        });
    });
    const own = curveOf(data);
    const value = answerOf(own.coefficients, place);
    const factor = Math.exp(NORMAL_95 * deviationOf(own, place));
    sum += chance(value * factor - NOMINAL.diastolicMmHg) - chance(value / factor - NOMINAL.diastolicMmHg);
  }
  return sum / draws;
}

/** Laboratories simulated, and their true standard deviation as a share of the answer (nothing: as fitted). */
const COVERAGE_LABORATORIES = [6, 8, 12] as const;
const COVERAGE_SHARES = [undefined, 0.05, 0.2] as const;
export const COVERAGE_DRAWS = 400;

/** Everything, as data. */
export function report() {
  const round = <T>(value: T): T =>
    JSON.parse(
      JSON.stringify(value, (_, one: unknown) => (typeof one === 'number' ? Number(one.toPrecision(6)) : one)),
    ) as T;
  const errors = leftOut();
  const place = ({ limb, widthCm, at, assumed, source, mean, grade }: Mean) => ({
    limb,
    widthCm,
    posture: at,
    assumed,
    source,
    mean,
    grade,
  });
  return round({
    constants: constants(),
    fit: {
      coefficients: pooled.coefficients,
      names: pooled.names,
      covariance: pooled.covariance,
      components: {
        laboratory: pooled.components[0],
        cuff: pooled.components[1],
        rest: pooled.components[2],
        laboratoryInterval: laboratoryInterval(),
      },
      iSquared: iSquared(),
      degrees: pooled.degrees,
      widening: pooled.widening,
      wholeSpread,
      people,
    },
    slopes,
    leftOut: errors.map(({ mean, predicted, error }) => ({ ...place(mean), predicted, error })),
    leftOutError: {
      leg: leftOutError(errors, 'leg'),
      arm: leftOutError(errors, 'arm'),
      legWithAssumed: leftOutError(errors, 'leg', true),
    },
    forms: forms(),
    sensitivity: sensitivity(),
    otherNominal: otherNominal(),
    coverage: COVERAGE_LABORATORIES.flatMap((laboratories) =>
      COVERAGE_SHARES.map((share) => ({
        laboratories,
        laboratoryShare: share ?? 'as fitted',
        coverage: coverage(laboratories, share, COVERAGE_DRAWS),
      })),
    ),
  });
}

if (globalThis.process?.argv[1]?.endsWith('pooled-curve.ts')) console.log(JSON.stringify(report(), null, 2));
