import { inFull } from '../quantity/format.js';
import { Math, square } from '../quantity/maths.js';
import type { Caution } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Limb, Posture } from '../quantity/quantities.js';
import { excludes } from '../statistics/interval.js';
import { leastSquares, type LeastSquares } from '../statistics/least-squares.js';
import { lineOf } from '../statistics/line.js';
import { normalityOf } from '../statistics/normality.js';
import { diagnosticsOf } from '../statistics/regression.js';
import { studentT95 } from '../statistics/student-t.js';
import {
  COEFFICIENT,
  coefficientOf,
  errorsOf,
  formulaOf,
  readIdentity,
  SEX_CODES,
  TERM_FIELDS,
  type FittedOcclusionEquation,
  type TermField,
} from './fitted-equation.js';
import { caution, notNormal, twoDigits } from './cautions.js';
import { rangeOf, readRow, refuse, rowReaders, type FitRow } from './own-rows.js';
import { need } from '../answer/needs.js';
import {
  ROWS_FOR_TERMS,
  EACH_ONCE,
  LEFT_OUT_AS_TERM,
  VARYING_PRESSURES,
  VARYING_FIELD,
  INDEPENDENT,
  NO_ROW_ALONE,
  BOUNDED_COEFFICIENTS,
  TERM_PER_FIELD,
} from './needs.js';
import { describe } from '../answer/issues.js';

/** What {@link fitOcclusionEquation} takes. */
export interface FitInput {
  /** Your own name: lower-case letters, digits, hyphens. */
  readonly id: string;
  /** The limb of every row; the equation is then for this limb. */
  readonly limb: Limb;
  /** Posture of every measurement; the equation is then for this posture. */
  readonly posture: Posture;
  /** Width of the one cuff [cm], 3–40; left out where `cuffWidthCm` is a term. */
  readonly cuffWidthCm?: number | undefined;
  /** The readings to fit on. */
  readonly terms: readonly TermField[];
  /** One row a person: at least 10 for each term, at most 10,000. */
  readonly rows: readonly FitRow[];
  /** Whether to return `diagnostics`: residuals, leverages, distances, covariance, robust standard errors. */
  readonly diagnostics?: boolean | undefined;
}

/** Rows asked for each term (`practice`). */
const ROWS_PER_TERM = 10;

/** The fields to fit on: each once, in the order of the formula. */
function readTerms(reader: Reader): TermField[] {
  const expected = need(EACH_ONCE, { options: TERM_FIELDS.map((field) => `'${field}'`) });
  const given = reader.anything('terms', expected);
  if (given === undefined) return [];
  const list = Array.isArray(given) ? (given as unknown[]) : [];
  if (list.length === 0) reader.report('wrong-type', 'terms', expected, describe(given));
  list.forEach((field, index) => {
    if (reader.acceptChoice(['terms', index], TERM_FIELDS, field) && list.indexOf(field) < index)
      reader.refuse(['terms', index], TERM_PER_FIELD, describe(field));
  });
  return TERM_FIELDS.filter((field) => list.includes(field));
}

/** What to fit, and the rows to fit it on. */
function readFit(reader: Reader) {
  const { id, limb, posture } = readIdentity(reader);
  const terms = readTerms(reader);
  const anyWidth = terms.includes('cuffWidthCm');
  const width = anyWidth ? reader.optionalNumber('cuffWidthCm') : reader.number('cuffWidthCm');
  if (anyWidth) reader.leaveOut('cuffWidthCm', LEFT_OUT_AS_TERM);
  const wanted = reader.flag('diagnostics');
  const rows = rowReaders(reader).map((row) => readRow(row, limb, terms));
  const least = ROWS_PER_TERM * terms.length;
  if (reader.fine && rows.length < least) {
    reader.refuse('rows', need(ROWS_FOR_TERMS, { least, each: ROWS_PER_TERM }), `${rows.length}`);
  }
  reader.done();
  return { id, limb, posture, width, terms, rows, wanted };
}

/** The fit, where the rows can support one. */
function supportedFit(
  reader: Reader,
  terms: readonly TermField[],
  columns: readonly (readonly number[])[],
  measured: readonly number[],
): LeastSquares {
  const fit = leastSquares(columns, measured);
  if ('why' in fit) {
    if (fit.column < 0) return refuse(reader, 'rows', VARYING_PRESSURES, 'one value in every row');
    const field = terms[fit.column]!;
    return fit.why === 'constant'
      ? refuse(reader, 'terms', need(VARYING_FIELD, { field }), 'one value in every row')
      : refuse(reader, 'terms', need(INDEPENDENT, { field }), describe(field));
  }
  const alone = fit.leverages.findIndex((leverage) => leverage > 1 - 1e-9);
  if (alone >= 0) refuse(reader, 'rows', NO_ROW_ALONE, `row ${alone}`);
  const { min, max } = COEFFICIENT;
  const beyond = [fit.intercept, ...fit.slopes].find((value) => Math.abs(value) > max);
  if (beyond !== undefined)
    refuse(reader, 'rows', need(BOUNDED_COEFFICIENTS, { min, max }), inFull(Number(beyond.toPrecision(3))));
  return fit;
}

/**
 * Your own occlusion-pressure equation, by least squares on your measurements.
 *
 * Formula: LOP = b₀ + b₁ x₁ + … , the xᵢ being the `terms`; solved by QR (Householder) on centred and scaled columns.
 *
 * The result is plain JSON. It is taken wherever an equation is: {@link estimateWith} for one person,
 * {@link columns} for many, {@link equationFromFit} for the record itself. Coefficients are rounded to 8
 * significant digits, so that the formula as printed is the equation.
 *
 * - Error of its answers: a prediction interval for each person, ± t s √(1 + h); s is the residual standard deviation
 *   [mmHg], h the leverage of the person’s readings (1 / n at the means, more with the distance from them), t Student’s
 *   with n − k − 1 degrees of freedom. It holds for people, cuffs, postures and hands like those of the rows, for
 *   residuals that are normal and spread evenly: `cautions` name what these rows do not meet.
 * - On `diagnostics: true`: residuals, leverages, Cook’s distances, the covariance of the coefficients, and HC3
 *   standard errors, which hold where residuals spread unevenly.
 * - Refused: fewer than 10 rows for each term (`practice`); a term or a measured pressure that does not vary; a term
 *   that follows from the others; a row that decides a coefficient alone; a coefficient beyond ± 1e6.
 * - Evidence: `derived`, from your own rows. Rows are taken as different people.
 * - Source: J Econom 1985;29(3):305–325 (HC3), Technometrics 1977;19(1):15–18 (Cook’s distance): from memory,
 *   unconfirmed.
 *
 * @function
 * @param input - `id`; `limb`, `posture`, `cuffWidthCm` [cm] of the rows; `terms`; `rows`, each with `valueMmHg`
 * (measured LOP) [mmHg] and its readings; `diagnostics`
 * @returns the equation with standard errors, variance inflation, R², residual and leave-one-out error [mmHg], and cautions.
 * @throws InputError naming every wrong field of every row, or why the rows cannot support the fit.
 *
 * @example
 * ```ts
 * import { estimateWith, fitOcclusionEquation } from 'cuffwork/study';
 * const rows = Array.from({ length: 20 }, (_, i) => ({ circumferenceCm: 45 + i, valueMmHg: 60 + 2 * (45 + i) + (i % 2) }));
 * const fit = fitOcclusionEquation({
 *   id: 'lab-thigh', limb: 'leg', posture: 'seated', cuffWidthCm: 11, terms: ['circumferenceCm'], rows,
 * });
 * fit.terms[0]?.coefficient.toFixed(2); // => '2.01'
 * const person = { limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 11, posture: 'seated' } as const;
 * estimateWith(fit, person).value.toFixed(1); // => '170.5'
 * ```
 */
export const fitOcclusionEquation = withInput(function fitOcclusionEquation(input: FitInput): FittedOcclusionEquation {
  const reader = new Reader(input);
  const { id, limb, posture, width, terms, rows, wanted } = readFit(reader);
  const columns = terms.map((field) =>
    rows.map(({ readings }) => (field === 'sex' ? SEX_CODES[readings.sex!] : readings[field]!)),
  );
  const measured = rows.map(({ valueMmHg }) => valueMmHg);
  const fit = supportedFit(reader, terms, columns, measured);
  const t = studentT95(fit.degreesOfFreedom);
  const intercept = coefficientOf(fit.intercept, fit.interceptError, t);
  const fitted = terms.map((field, term) => ({
    field,
    ...coefficientOf(fit.slopes[term]!, fit.slopeErrors[term]!, t),
    inflation: fit.inflation[term]!,
    ...rangeOf(columns[term]!),
  }));
  const leftOut = fit.residuals.reduce((sum, value, row) => sum + square(value / (1 - fit.leverages[row]!)), 0);
  const { robustCovariance, ...diagnostics } = diagnosticsOf(fit, columns);
  return {
    document: 'fitted-occlusion-equation',
    schemaVersion: 1,
    id,
    ...formulaOf({ intercept, terms: fitted }),
    limb,
    cuffWidthCm: width ?? 'any',
    posture,
    evidence: 'derived',
    people: rows.length,
    intercept,
    terms: fitted,
    degreesOfFreedom: fit.degreesOfFreedom,
    rSquared: fit.rSquared,
    adjustedRSquared: fit.adjustedRSquared,
    residualMmHg: fit.residualDeviation,
    leaveOneOutMmHg: Math.sqrt(leftOut / rows.length),
    leverage: { means: fit.means, factor: fit.factor },
    ...(wanted && {
      diagnostics: {
        residualsMmHg: fit.residuals,
        studentized: diagnostics.studentized,
        leverages: fit.leverages,
        cooksDistances: diagnostics.cooksDistances,
        covariance: diagnostics.covariance,
        robust: [fit.intercept, ...fit.slopes].map((value, index) =>
          errorsOf(value, Math.sqrt(robustCovariance[index]![index]!), t),
        ),
      },
    }),
    cautions: cautionsOf(fit, diagnostics.cooksDistances, terms, measured),
  };
});

/** A variance inflation from here on makes a coefficient uncertain (`practice`). */
const COLLINEAR = 10;
/** A row with such a distance moves the whole fit (`practice`). */
const INFLUENTIAL = 1;

function cautionsOf(
  { inflation, residuals, residualDeviation }: LeastSquares,
  distances: readonly number[],
  terms: readonly TermField[],
  measured: readonly number[],
): Caution[] {
  const cautions: Caution[] = [];
  terms.forEach((field, term) => {
    if (inflation[term]! < COLLINEAR) return;
    cautions.push(caution('caution', 'collinear-term', { field, inflation: twoDigits(inflation[term]!) }));
  });
  distances.forEach((distance, row) => {
    if (distance > INFLUENTIAL)
      cautions.push(caution('caution', 'influential-row', { row, distance: twoDigits(distance) }));
  });
  if (!(residualDeviation > 0)) return cautions;
  const left = Float64Array.from(residuals);
  cautions.push(...notNormal('residuals-not-normal', normalityOf(left)));
  const spread = lineOf(
    Float64Array.from(measured, (value, row) => value - left[row]!),
    left.map(Math.abs),
  );
  if (spread && excludes(spread.slope, 0)) {
    cautions.push(caution('caution', 'residual-spread-changes', { slope: twoDigits(spread.slope.value) }));
  }
  return cautions;
}
