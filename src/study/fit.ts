import { Math, square } from '../quantity/maths.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import {
  limbGirth,
  LIMBS,
  POSTURES,
  quantities,
  SEXES,
  type Limb,
  type Posture,
  type Sex,
} from '../quantity/quantities.js';
import {
  FITTED_ID,
  formulaOf,
  isFittedId,
  SEX_CODES,
  TERM_FIELDS,
  type Coefficient,
  type FittedOcclusionEquation,
  type TermField,
} from './fitted-equation.js';
import { leastSquares } from '../statistics/least-squares.js';
import { studentT95 } from '../statistics/student-t.js';

/** One person’s measured occlusion pressure with the readings to foretell it from. */
export interface FitRow {
  /** Measured limb occlusion pressure. */
  readonly valueMmHg: number;
  readonly circumferenceCm?: number;
  readonly systolicMmHg?: number;
  readonly diastolicMmHg?: number;
  readonly cuffWidthCm?: number;
  readonly ageYears?: number;
  readonly sex?: Sex;
}

/** What {@link fitOcclusionEquation} takes. */
export interface FitInput {
  /** A name of one’s own: lower-case letters, digits, hyphens. */
  readonly id: string;
  /** What every row has in common, and what the equation will then be for. */
  readonly limb: Limb;
  readonly posture: Posture;
  /** Width of the one cuff; left out where `cuffWidthCm` is a term. */
  readonly cuffWidthCm?: number | undefined;
  /** The readings to fit on. */
  readonly terms: readonly TermField[];
  /** One row a person. */
  readonly rows: readonly FitRow[];
}

/** Rows asked for each term (`practice`). */
const ROWS_PER_TERM = 10;
const MOST_ROWS = 10_000;
/** Digits of a coefficient, so that the formula as printed is the equation. */
const DIGITS = 8;

const printed = (value: number): number => Number(value.toPrecision(DIGITS));

/** The fields to fit on: each once, in the order of the formula. */
function readTerms(reader: Reader): TermField[] {
  const expected = `a list of ${TERM_FIELDS.map((field) => `'${field}'`).join(', ')}, each once`;
  const given = reader.anything('terms', expected);
  if (given === undefined) return [];
  const list = Array.isArray(given) ? (given as unknown[]) : [];
  const terms = TERM_FIELDS.filter((field) => list.includes(field));
  if (list.length === 0 || terms.length !== list.length)
    reader.report('wrong-type', 'terms', expected, 'something else');
  return terms;
}

/** One row: its readings as numbers, refused where a term is missing or a reading impossible. */
function readRow(row: Reader, limb: Limb, terms: readonly TermField[]): { y: number; x: number[] } {
  const y = row.number('valueMmHg');
  const readings: Partial<Record<TermField, number>> = {};
  for (const field of TERM_FIELDS) {
    const need = terms.includes(field);
    if (field === 'sex') {
      const sex = need ? row.choice(field, SEXES) : row.optionalChoice(field, SEXES);
      if (sex) readings.sex = SEX_CODES[sex];
    } else {
      const bounds = field === 'circumferenceCm' ? limbGirth[limb] : quantities[field];
      const value = need ? row.number(field, bounds) : row.optionalNumber(field, bounds);
      if (value !== undefined) readings[field] = value;
    }
  }
  const { systolicMmHg, diastolicMmHg } = readings;
  // What is not told compares with nothing.
  if ((systolicMmHg ?? NaN) <= (diastolicMmHg ?? NaN)) {
    row.report('swapped-pressures', 'systolicMmHg', 'above the diastolic pressure', String(systolicMmHg));
  }
  return { y, x: terms.map((field) => readings[field] ?? NaN) };
}

/**
 * An occlusion-pressure equation for a laboratory’s own cuff, by least squares on its own measurements.
 *
 * Formula: LOP = b₀ + b₁ x₁ + … , the xᵢ being the `terms`; solved by QR (Householder) on centred and scaled columns.
 *
 * The result is plain JSON. It is taken wherever an equation is: {@link estimateWith} for one person,
 * {@link columns} for many, {@link equationFromFit} for the record itself. Coefficients are rounded to 8
 * significant digits, so that the formula as printed is the equation.
 *
 * - Error of its answers: the leave-one-out error, each person foretold from all the others. It holds for people,
 *   cuffs, postures and hands like those of the rows; elsewhere it is larger.
 * - Refused: fewer than 10 rows for each term (`practice`); a term that does not vary, or that follows from the
 *   others; a row that decides a coefficient alone.
 * - Evidence: `derived`, from the caller’s own rows. Rows are taken as different people.
 *
 * @function
 * @param input - `id`; `limb`, `posture`, `cuffWidthCm` [cm] of the rows; `terms`; `rows`, each with `valueMmHg`
 * (measured LOP) [mmHg] and its readings
 * @returns the equation with standard errors, variance inflation, R², residual and leave-one-out error [mmHg].
 * @throws InputError naming every wrong field of every row, or why the rows cannot carry the fit.
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
export const fitOcclusionEquation = /* @__PURE__ */ withInput(function fitOcclusionEquation(
  input: FitInput,
): FittedOcclusionEquation {
  const reader = new Reader(input);
  const id = reader.optionalText('id', FITTED_ID, isFittedId);
  if (id === undefined && reader.fine) reader.report('missing', 'id', FITTED_ID, 'undefined');
  const limb = reader.choice('limb', LIMBS);
  const posture = reader.choice('posture', POSTURES);
  const terms = readTerms(reader);
  const anyWidth = terms.includes('cuffWidthCm');
  const width = anyWidth ? reader.optionalNumber('cuffWidthCm') : reader.number('cuffWidthCm');
  if (anyWidth && width !== undefined) {
    reader.report('wrong-relation', 'cuffWidthCm', 'left out where it is a term', String(width));
  }
  const readers = reader.optionalList('rows', 'a list of rows, one a person', MOST_ROWS);
  if (!readers && !reader.has('rows')) reader.report('missing', 'rows', 'a list of rows, one a person', 'undefined');
  const rows = (readers ?? []).map((row) => readRow(row, limb, terms));
  const least = ROWS_PER_TERM * terms.length;
  if (reader.fine && rows.length < least) {
    reader.report('wrong-relation', 'rows', `at least ${least}, ${ROWS_PER_TERM} for each term`, `${rows.length}`);
  }
  reader.done();

  const columns = terms.map((_, term) => rows.map(({ x }) => x[term]!));
  const fit = leastSquares(
    columns,
    rows.map(({ y }) => y),
  );
  const refuse = (name: string, expected: string, received: string): never => {
    reader.report('wrong-relation', name, expected, received);
    return reader.done() as never;
  };
  if ('why' in fit) {
    const field = terms[fit.column]!;
    return fit.why === 'constant'
      ? refuse('terms', `readings that vary; leave ${field} out`, `one value of ${field} in every row`)
      : refuse('terms', `independent of one another; leave ${field} out`, `${field}, which follows from the others`);
  }
  const alone = fit.leverages.findIndex((leverage) => leverage > 1 - 1e-9);
  if (alone >= 0) {
    return refuse('rows', 'such that no one row decides a coefficient alone', `row ${alone}, which does`);
  }
  const t = studentT95(fit.degreesOfFreedom);
  const coefficient = (value: number, standardError: number): Coefficient => ({
    coefficient: printed(value),
    standardError,
    lower: value - t * standardError,
    upper: value + t * standardError,
  });
  const intercept = coefficient(fit.intercept, fit.interceptError);
  const fitted = terms.map((field, term) => ({
    field,
    ...coefficient(fit.slopes[term]!, fit.slopeErrors[term]!),
    inflation: fit.inflation[term]!,
    low: columns[term]!.reduce((low, value) => Math.min(low, value)),
    high: columns[term]!.reduce((high, value) => Math.max(high, value)),
  }));
  const leftOut = fit.residuals.reduce((sum, value, row) => sum + square(value / (1 - fit.leverages[row]!)), 0);
  return {
    document: 'fitted-occlusion-equation',
    schemaVersion: 1,
    id: id!,
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
    residualMmHg: fit.residualDeviation,
    leaveOneOutMmHg: Math.sqrt(leftOut / rows.length),
  };
});
