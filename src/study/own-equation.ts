import { Math } from '../quantity/maths.js';
import type { ErrorPart } from '../answer/answer.js';
import { normalInterval } from '../answer/interval.js';
import { describe, describeLength, InputError, isInputError, type InputIssue } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { plainInput } from '../answer/plain-input.js';
import { Reader } from '../answer/reader.js';
import type { ExtraReading, OcclusionEquation, OcclusionReadings, Range } from '../pressure/equation.js';
import { EQUATION_IDS, occlusionEquations } from '../pressure/equations.js';
import { quantities, type Quantity } from '../quantity/quantities.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { leverageAt } from '../statistics/regression.js';
import { studentT95 } from '../statistics/student-t.js';
import {
  COEFFICIENT,
  ESTIMATE,
  formulaOf,
  OWN_READINGS,
  readIdentity,
  SEX_CODES,
  TERM_FIELDS,
  type Core,
  type Leverage,
  type OwnReading,
  type TermField,
} from './fitted-equation.js';
import {
  EQUATION_OR_OWN,
  FITTED_EQUATION,
  LISTS_OF_NUMBERS,
  NUMBER_PER_TERM,
  PEOPLE_FOR_TERMS,
  NUMBERS_AS_LONG,
  TERM_PER_FIELD,
  TERMS,
  TRIANGLE,
} from './needs.js';

const FACTOR: Quantity = { name: 'factor of the leverage', unit: '1', min: -1e12, max: 1e12 };
const ERROR: Quantity = { name: 'residual standard deviation', unit: 'mm[Hg]', min: 0, max: 1000 };
const PEOPLE: Quantity = { name: 'people', unit: '1', min: 3, max: 1e6, whole: true };

const DOCUMENTS = ['fitted-occlusion-equation', 'recalibrated-occlusion-equation'] as const;

function readRange(of: Reader): Range {
  return { low: of.number('low', COEFFICIENT), high: of.number('high', COEFFICIENT) };
}

/** Means and triangle, as many as there are terms. */
function readLeverage(from: Reader, terms: number): Leverage {
  const expected = need(NUMBER_PER_TERM, { terms });
  const means = from.optionalNumbers('means', COEFFICIENT) ?? [];
  if (from.fine && means.length !== terms) from.refuse('means', expected, describeLength(means.length));
  const rows = from.values('factor', need(LISTS_OF_NUMBERS, { terms }));
  if (!from.fine) return { means, factor: [] };
  if (rows.length !== terms) from.refuse('factor', TRIANGLE, describeLength(rows.length));
  rows.forEach((row, j) => {
    if (!Array.isArray(row) || row.length !== j + 1)
      from.refuse(['factor', j], need(NUMBERS_AS_LONG, { rows: j + 1 }), describe(row));
    else row.forEach((one, k) => from.acceptNumber(['factor', j, k], FACTOR, one));
  });
  return { means, factor: rows as number[][] };
}

/** Reads what decides the answers; the rest of the document is passed along unread. */
function readCore(given: unknown): Core {
  const issues: InputIssue[] = [];
  const reader = new Reader(plainInput(given, FITTED_EQUATION), [], issues);
  const document = reader.choice('document', DOCUMENTS);
  const { id, limb, posture } = readIdentity(reader);
  const recalibrated = document === 'recalibrated-occlusion-equation';
  const baseId = recalibrated ? reader.choice('base', EQUATION_IDS) : undefined;
  const width = reader.raw('cuffWidthCm');
  const cuffWidthCm =
    width === 'any' ? width : (reader.acceptNumber('cuffWidthCm', quantities.cuffWidthCm, width) ?? NaN);
  const people = reader.number('people', PEOPLE);
  const residualMmHg = reader.number('residualMmHg', ERROR);
  const intercept = { coefficient: reader.child('intercept').number('coefficient', COEFFICIENT) };
  const fields: readonly string[] = recalibrated ? [ESTIMATE] : TERM_FIELDS;
  const terms = (reader.optionalList('terms', TERMS) ?? []).map((term) => ({
    field: term.choice('field', fields),
    coefficient: term.number('coefficient', COEFFICIENT),
    ...readRange(term),
  }));
  if (!reader.has('terms')) reader.missing('terms', TERMS);
  if (reader.fine) {
    const names = terms.map(({ field }) => field);
    const again = names.findIndex((field, index) => names.indexOf(field) < index);
    if (again >= 0) reader.refuse(['terms', again, 'field'], TERM_PER_FIELD, describe(names[again]));
  }
  if (reader.fine && people < terms.length + 2) {
    reader.refuse('people', need(PEOPLE_FOR_TERMS, { least: terms.length + 2 }), `${people}`);
  }
  const leverage = readLeverage(reader.child('leverage'), terms.length);
  const ranges: Partial<Record<TermField, Range>> = {};
  if (recalibrated) {
    const given = reader.child('ranges');
    for (const field of TERM_FIELDS) {
      const range = given.optionalChild(field);
      if (range) ranges[field] = readRange(range);
    }
  } else for (const { field, low, high } of terms) if (field !== 'sex') ranges[field as TermField] = { low, high };
  if (issues.length > 0) throw new InputError(issues);
  const base = occlusionEquations.find((equation) => equation.id === baseId);
  return { id, limb, cuffWidthCm, posture, people, residualMmHg, leverage, base, intercept, terms, ranges };
}

/**
 * A fitted or recalibrated equation, perhaps read back from JSON, as a record like those of the published equations.
 *
 * Its error is that of a prediction, t s √(1 + h), for each person: h is the leverage of their readings. Formula and
 * answers are made from the coefficients alone.
 *
 * @param fit - what {@link fitOcclusionEquation} or {@link recalibrateOcclusionEquation} returned
 * @returns the record: formula, symbols, `apply`, ranges, error.
 * @throws InputError where the document is not whole.
 *
 * @example
 * ```ts
 * import { equationFromFit, fitOcclusionEquation } from 'cuffwork/study';
 * const rows = Array.from({ length: 20 }, (_, i) => ({ circumferenceCm: 45 + i, valueMmHg: 150 + 2 * i + (i % 2) }));
 * const fit = fitOcclusionEquation({
 *   id: 'lab-thigh', limb: 'leg', posture: 'seated', cuffWidthCm: 11, terms: ['circumferenceCm'], rows,
 * });
 * equationFromFit(fit).formula; // => '60.090226 + 2.0075188 * C'
 * ```
 */
export function equationFromFit(fit: object): OcclusionEquation {
  return ownEquation(readCore(fit));
}

/**
 * An equation that columns are worked out by; your own with its terms, or with the published equation that was
 * recalibrated, whose estimate is the one term.
 */
export type ColumnEquation = OcclusionEquation & { readonly own?: Pick<Core, 'base' | 'terms'> };
type OwnEquation = ColumnEquation & Required<Pick<ColumnEquation, 'own'>>;

/** The readings of your own equation. */
export type OwnReadings = OcclusionReadings & Partial<Record<OwnReading, number>>;

function termValue(readings: OwnReadings, field: string, base: OcclusionEquation | undefined): number {
  if (base) return base.apply(readings as Required<OcclusionReadings>);
  return field === 'sex' ? SEX_CODES[readings.sex!] : (readings[field as 'circumferenceCm'] ?? NaN);
}

const EXTRA: readonly ExtraReading[] = ['ageYears', 'sex'];

const around = (value: number, errors: readonly ErrorPart[], share: number) => {
  const standardDeviation = share * value;
  const half = NORMAL_95 * standardDeviation;
  return {
    lower: value - half,
    upper: value + half,
    level: 0.95 as const,
    standardDeviation,
    errors: errors.map((part) => ({ ...part, standardDeviation: part.standardDeviation * value })),
  };
};

function ownEquation(core: Core): OwnEquation {
  const { id, limb, cuffWidthCm, posture, people, residualMmHg, leverage, intercept, terms, base, ranges } = core;
  // s t / 1.96: times √(1 + h), the standard deviation of a new person, so widened that 1.96 of it make the interval.
  const deviation = (residualMmHg * studentT95(people - terms.length - 1)) / NORMAL_95;
  // One list that serves for every person.
  const values = terms.map(() => NaN);
  const valuesOf = (readings: OwnReadings): readonly number[] => {
    for (let term = 0; term < values.length; term += 1) values[term] = termValue(readings, terms[term]!.field, base);
    return values;
  };
  return {
    id,
    name: `${id}, fitted to ${people} people`,
    ...formulaOf(core),
    apply: (readings) => {
      let sum = intercept.coefficient;
      for (const { field, coefficient } of terms) sum += coefficient * termValue(readings, field, base);
      return sum;
    },
    needs: base?.needs ?? EXTRA.filter((field) => terms.some((term) => term.field === field)),
    limb,
    cuffWidthCm,
    posture,
    sample: `${people} people of yours`,
    fitted: Object.fromEntries(Object.entries(ranges).filter(([field]) => !OWN_READINGS.some((one) => one === field))),
    fittedNotKnown: [],
    error: {
      own: {
        deviation: (readings) => deviation * Math.sqrt(1 + leverageAt(leverage, people, valuesOf(readings))),
        around,
        assumption: normalInterval,
        ...(base && { base: base.id }),
      },
      evidence: 'derived',
      assumption: 'error-of-prediction',
    },
    evidence: base?.evidence === 'unconfirmed' ? 'unconfirmed' : 'derived',
    sources: base?.sources ?? [],
    assumptions: ['own-laboratory'],
    own: { base, terms },
  };
}

/** Your own equation with the ranges of the readings that only it draws on. */
export function readOwnEquation(fit: object): {
  readonly equation: OwnEquation;
  readonly ranges: Partial<Record<TermField, Range>>;
} {
  const core = readCore(fit);
  return { equation: ownEquation(core), ranges: core.ranges };
}

/** The field `equation`: a published equation by its id, or your own as JSON. */
export function readEquation(
  reader: Reader,
  published: readonly OcclusionEquation[],
): { readonly equation: ColumnEquation; readonly ranges: Partial<Record<TermField, Range>> } | undefined {
  const given = reader.raw('equation');
  if (typeof given !== 'object' || given === null) {
    const ids = published.map(({ id }) => id);
    const id = reader.acceptChoice('equation', ids, given);
    const equation = published.find((one) => one.id === id);
    return equation && { equation, ranges: equation.fitted };
  }
  try {
    return readOwnEquation(given);
  } catch (error) {
    if (!isInputError(error)) throw error;
    reader.report('wrong-type', 'equation', EQUATION_OR_OWN, describe(given));
    return undefined;
  }
}
