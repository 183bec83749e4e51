import { Math, square } from '../quantity/maths.js';
import type { Caution } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { OcclusionEquation, OcclusionReadings } from '../pressure/equation.js';
import { EQUATION_IDS, occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import { checkApplicable } from '../pressure/uncertainty.js';
import type { Limb, Posture } from '../quantity/quantities.js';
import { studentT95 } from '../statistics/student-t.js';
import { accurateSum, mean } from '../statistics/sums.js';
import {
  COEFFICIENT,
  coefficientOf,
  ESTIMATE,
  formulaOf,
  printed,
  readIdentity,
  type RecalibratedOcclusionEquation,
  type TermField,
} from './fitted-equation.js';
import { caution, twoDigits } from './cautions.js';
import { rangeOf, rangesOf, readRow, refuse, rowReaders, type FitRow } from './own-rows.js';
import { need, AT_LEAST } from '../answer/needs.js';
import { VARYING_PRESSURES, NO_ROW_ALONE, NO_PADDING, ONE_WIDTH, DIFFERING, VARYING_MORE } from './needs.js';

/** One person’s measured occlusion pressure with the readings of the published equation. */
export interface RecalibrateRow extends FitRow {
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm. */
  readonly circumferenceCm: number;
  /** Systolic blood pressure [mmHg], 60–300. */
  readonly systolicMmHg: number;
  /** Diastolic blood pressure [mmHg], 30–200. */
  readonly diastolicMmHg: number;
}

/** What {@link recalibrateOcclusionEquation} takes. */
export interface RecalibrateInput {
  /** Your name for it: lower-case letters, digits, hyphens. */
  readonly id: string;
  /** The published equation, by its id. */
  readonly equation: OcclusionEquationId;
  /** The limb of every row; the equation is then for this limb. */
  readonly limb: Limb;
  /** Posture of every measurement; the equation is then for this posture. */
  readonly posture: Posture;
  /** Width of the one cuff [cm], 3–40; left out where the rows name their own. */
  readonly cuffWidthCm?: number | undefined;
  /** One row a person, from 10 to 10,000. */
  readonly rows: readonly RecalibrateRow[];
}

/** Rows asked for an intercept and a slope (`practice`). */
const LEAST_ROWS = 10;

/** What a straight line of the measurement on the estimate needs. */
interface Moments {
  readonly rows: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** The same without one row. */
function without({ rows, meanX, meanY, xx, xy, yy }: Moments, x: number, y: number): Moments {
  const share = rows / (rows - 1);
  const [dx, dy] = [x - meanX, y - meanY];
  return {
    rows: rows - 1,
    meanX: meanX - dx / (rows - 1),
    meanY: meanY - dy / (rows - 1),
    xx: xx - share * dx * dx,
    xy: xy - share * dx * dy,
    yy: yy - share * dy * dy,
  };
}

/** The moments of estimates x and measurements y, which must vary, and not through one row alone. */
function momentsOf(reader: Reader, equation: string, x: readonly number[], y: readonly number[]): Moments {
  const rows = x.length;
  const [meanX, meanY] = [mean(x), mean(y)];
  const [dx, dy] = [x.map((value) => value - meanX), y.map((value) => value - meanY)];
  const products = (a: readonly number[], b: readonly number[]): number =>
    accurateSum(a.map((value, row) => value * b[row]!));
  const moments = { rows, meanX, meanY, xx: products(dx, dx), xy: products(dx, dy), yy: products(dy, dy) };
  const varies = (squares: number, middle: number): boolean =>
    Math.sqrt(squares) > 1e-9 * Math.abs(middle) * Math.sqrt(rows);
  if (!varies(moments.yy, meanY)) refuse(reader, 'rows', VARYING_PRESSURES, 'one value in every row');
  if (!varies(moments.xx, meanX)) refuse(reader, 'rows', need(DIFFERING, { equation }), 'one value in every row');
  const alone = x.findIndex((estimate, row) => !(without(moments, estimate, y[row]!).xx > 1e-9 * moments.xx));
  if (alone >= 0) refuse(reader, 'rows', NO_ROW_ALONE, `row ${alone}`);
  return moments;
}

/** The share of a correction that is kept: 1 − 1 / F, and nothing where F is below 1. */
const kept = (squared: number, variance: number): number => (variance > 0 ? Math.max(0, 1 - variance / squared) : 1);

function shrunk({ rows, meanX, meanY, xx, xy, yy }: Moments) {
  const slope = xy / xx;
  const degreesOfFreedom = rows - 2;
  const variance = Math.max(0, yy - slope * xy) / degreesOfFreedom;
  const bias = meanY - meanX;
  const shrinkage = {
    offset: bias === 0 ? 0 : kept(square(bias), variance / rows),
    slope: slope === 1 ? 0 : kept(square(slope - 1), variance / xx),
  };
  const keptSlope = 1 + shrinkage.slope * (slope - 1);
  return {
    leastSquares: { intercept: meanY - slope * meanX, slope },
    errors: {
      intercept: Math.sqrt(variance * (1 / rows + square(meanX) / xx)),
      slope: Math.sqrt(variance / xx),
    },
    shrinkage,
    slope: keptSlope,
    intercept: meanX + shrinkage.offset * bias - keptSlope * meanX,
    degreesOfFreedom,
    residual: Math.sqrt(variance),
  };
}

/** The published equation, and the rows that it applies to. */
function readRows(reader: Reader) {
  const { id, limb, posture } = readIdentity(reader);
  const baseId = reader.choice('equation', EQUATION_IDS);
  const base: OcclusionEquation =
    occlusionEquations.find((equation) => equation.id === baseId) ?? occlusionEquations[0]!;
  const width = reader.optionalNumber('cuffWidthCm');
  const needed: readonly TermField[] = [
    'circumferenceCm',
    'systolicMmHg',
    'diastolicMmHg',
    ...base.needs.filter((field) => field !== 'paddingCoefficient'),
    ...(width === undefined ? (['cuffWidthCm'] as const) : []),
  ];
  const readers = rowReaders(reader);
  const rows = readers.map((row) => readRow(row, limb, needed));
  if (reader.fine && base.needs.includes('paddingCoefficient')) {
    reader.refuse('equation', NO_PADDING, `'${baseId}'`);
  }
  if (reader.fine && rows.length < LEAST_ROWS) {
    reader.refuse('rows', need(AT_LEAST, { least: LEAST_ROWS }), `${rows.length}`);
  }
  const people = rows.map(
    ({ readings }) => ({ cuffWidthCm: width!, ...readings, limb, posture }) as Required<OcclusionReadings>,
  );
  people.forEach((readings, index) => {
    if (width !== undefined) readers[index]!.leaveOut('cuffWidthCm', ONE_WIDTH);
    if (reader.fine) checkApplicable(readers[index]!, base, readings);
  });
  reader.done();
  return { id, limb, posture, base, width, rows, people };
}

/**
 * Adapts a published equation to your own people, cuff and hands: intercept and slope on 10 to 30 measurements, where a
 * new fit would need ten for each term.
 *
 * Formula: LOP = a + b × (estimate of the published equation). Least squares of the measurement y on the estimate x,
 * each of n rows, then shrunk towards the published equation (a = 0, b = 1):
 * - b = 1 + (1 − 1 / F₁) (b̂ − 1), F₁ = ((b̂ − 1) / its standard error)²;
 * - at the mean estimate x̄ the answer is x̄ + (1 − 1 / F₀) (ȳ − x̄), F₀ = n (ȳ − x̄)² / s²;
 * - a factor below 0 counts as 0: what the rows do not show beyond their noise is not corrected.
 *
 * The result is plain JSON, taken wherever an equation of {@link fitOcclusionEquation} is. `published` and
 * `leaveOneOutMmHg` show whether it predicts better than the equation as published, a caution says where not.
 *
 * - Error of its answers: ± t s √(1 + 1 / n + (x − x̄)² / Σ (xᵢ − x̄)²), n − 2 degrees of freedom, before shrinkage.
 * - Evidence: `derived`, from your own rows; `unconfirmed` where the coefficients of the equation are.
 * - Source: heuristic shrinkage, Stat Med 1990;9(11):1303–1325; updating with it, Stat Med 2004;23(16):2567–2586 (both
 *   from memory, unconfirmed).
 *
 * @function
 * @param input - `id`; `equation`, the published one; `limb`, `posture`, `cuffWidthCm` [cm] of the rows; `rows`, each with
 * `valueMmHg` (measured LOP) [mmHg] and the readings of the equation
 * @returns the equation with both fits, the shrinkage, the error as published and leave-one-out [mmHg].
 * @throws InputError naming every wrong field of every row; fewer than 10 rows; estimates or measurements that do not vary.
 *
 * @example
 * ```ts
 * import { estimateWith, recalibrateOcclusionEquation } from 'cuffwork/study';
 * const rows = Array.from({ length: 12 }, (_, i) => ({
 *   circumferenceCm: 46 + 2 * i, systolicMmHg: 112 + ((7 * i) % 20), diastolicMmHg: 70, valueMmHg: 150 + 9 * i + ((5 * i) % 13),
 * }));
 * const own = recalibrateOcclusionEquation({
 *   id: 'lab-curve', equation: 'pooled-curve-thigh-2026', limb: 'leg', posture: 'supine', cuffWidthCm: 11, rows,
 * });
 * own.shrinkage.slope > 0 && own.shrinkage.slope < 1; // => true
 * own.leaveOneOutMmHg < own.published.rootMeanSquareMmHg; // => true
 * ```
 */
export const recalibrateOcclusionEquation = withInput(function recalibrateOcclusionEquation(
  input: RecalibrateInput,
): RecalibratedOcclusionEquation {
  const reader = new Reader(input);
  const { id, limb, posture, base, width, rows, people } = readRows(reader);
  const x = people.map((readings) => base.apply(readings));
  const y = rows.map(({ valueMmHg }) => valueMmHg);
  const moments = momentsOf(reader, base.id, x, y);
  const fit = shrunk(moments);
  if (!(Math.abs(fit.slope) <= COEFFICIENT.max && Math.abs(fit.intercept) <= COEFFICIENT.max)) {
    refuse(reader, 'rows', VARYING_MORE, fit.slope.toPrecision(3));
  }

  const t = studentT95(fit.degreesOfFreedom);
  const leftOut = x.map((estimate, row) => {
    const { intercept, slope } = shrunk(without(moments, estimate, y[row]!));
    return square(y[row]! - intercept - slope * estimate);
  });
  const off = x.map((estimate, row) => estimate - y[row]!);
  const published = { biasMmHg: mean(off), rootMeanSquareMmHg: Math.sqrt(mean(off.map(square))) };
  const leaveOneOutMmHg = Math.sqrt(mean(leftOut));
  const intercept = { coefficient: printed(fit.intercept) };
  const term = { field: ESTIMATE, coefficient: printed(fit.slope), ...rangeOf(x) } as const;
  return {
    document: 'recalibrated-occlusion-equation',
    schemaVersion: 1,
    id,
    base: base.id as OcclusionEquationId,
    ...formulaOf({ intercept, terms: [term], base }),
    limb,
    cuffWidthCm: width ?? 'any',
    posture,
    evidence: base.evidence === 'unconfirmed' ? 'unconfirmed' : 'derived',
    people: rows.length,
    intercept,
    terms: [term],
    leastSquares: {
      intercept: coefficientOf(fit.leastSquares.intercept, fit.errors.intercept, t),
      slope: coefficientOf(fit.leastSquares.slope, fit.errors.slope, t),
    },
    shrinkage: fit.shrinkage,
    published,
    degreesOfFreedom: fit.degreesOfFreedom,
    residualMmHg: fit.residual,
    leaveOneOutMmHg,
    leverage: { means: [moments.meanX], factor: [[1 / Math.sqrt(moments.xx)]] },
    ranges: rangesOf(rows),
    cautions: cautionsOf(base.id, fit.slope, leaveOneOutMmHg, published.rootMeanSquareMmHg),
  };
});

/** What speaks against using the result. */
function cautionsOf(equation: string, slope: number, recalibrated: number, published: number): Caution[] {
  const cautions: Caution[] = [];
  if (!(slope > 0)) {
    cautions.push(caution('caution', 'recalibration-reversed', { equation, slope: twoDigits(slope) }));
  }
  if (!(recalibrated < published)) {
    const errors = { recalibrated: twoDigits(recalibrated), published: twoDigits(published) };
    cautions.push(caution('caution', 'recalibration-no-better', errors));
  }
  return cautions;
}
