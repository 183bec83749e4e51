import { Math } from '../quantity/maths.js';
import { normalInterval, type ErrorPart, type Symbols } from '../answer/answer.js';
import { describe, InputError, isInputError, type InputIssue } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { Reader } from '../answer/reader.js';
import type { Grade } from '../evidence/grades.js';
import type { ExtraReading, OcclusionEquation, OcclusionReadings, Range } from '../pressure/equation.js';
import { EQUATION_IDS, occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import {
  LIMBS,
  POSTURES,
  quantities,
  type Limb,
  type Posture,
  type Quantity,
  type QuantityName,
} from '../quantity/quantities.js';
import { frozen } from '../quantity/frozen.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { leverageAt } from '../statistics/regression.js';
import { studentT95 } from '../statistics/student-t.js';
import type { Caution } from '../answer/answer.js';
import { need } from '../answer/needs.js';
import {
  OWN_ID,
  NUMBER_PER_TERM,
  LISTS_OF_NUMBERS,
  TRIANGLE,
  FITTED_EQUATION,
  TERMS,
  TERM_PER_FIELD,
  PEOPLE_FOR_TERMS,
  EQUATION_OR_OWN,
} from './needs.js';

/** Readings that only your own equation draws on. */
export const OWN_READINGS = ['heightCm', 'bodyMassIndex', 'skinfoldMm'] as const;
/** A reading that only your own equation draws on. */
export type OwnReading = (typeof OWN_READINGS)[number];

/** Readings that a fitted equation can draw on, in the order its formula has them. */
export const TERM_FIELDS = [
  'circumferenceCm',
  'systolicMmHg',
  'diastolicMmHg',
  'cuffWidthCm',
  'ageYears',
  'sex',
  ...OWN_READINGS,
] as const;
/** A reading that your own equation can be fitted on. */
export type TermField = (typeof TERM_FIELDS)[number];
/** The term of a recalibrated equation: the estimate of the published one. */
export const ESTIMATE = 'estimateMmHg';

/** How sex enters a formula. */
export const SEX_CODES = /* @__PURE__ */ frozen({ male: 1, female: 2 });

const SYMBOLS: Record<TermField, string> = {
  circumferenceCm: 'C',
  systolicMmHg: 'SBP',
  diastolicMmHg: 'DBP',
  cuffWidthCm: 'W',
  ageYears: 'age',
  sex: 'sex',
  heightCm: 'height',
  bodyMassIndex: 'BMI',
  skinfoldMm: 'skinfold',
};

/** A coefficient with its standard error and 95 % confidence interval (Student’s t). */
export interface Coefficient {
  /** The fitted coefficient. */
  readonly coefficient: number;
  /** Standard error of the coefficient. */
  readonly standardError: number;
  /** Lower end of the 95 % confidence interval. */
  readonly lower: number;
  /** Upper end of the 95 % confidence interval. */
  readonly upper: number;
}

/** One term of a fitted equation. */
export interface FittedTerm extends Coefficient {
  /** The reading that the coefficient multiplies. */
  readonly field: TermField;
  /** Variance inflation factor: its variance as a multiple of the variance with unrelated terms. */
  readonly inflation: number;
  /** Lowest value of the reading in the rows; sex as coded, 1 male and 2 female. */
  readonly low: number;
  /** Highest value of the reading in the rows; sex as coded. */
  readonly high: number;
}

/** What the leverage h of a new person is worked out from: 1 / n + |L (x − means)|². */
export interface Leverage {
  /** Means of the terms in the rows; sex as coded. */
  readonly means: readonly number[];
  /** The lower triangle L, each row up to its diagonal. */
  readonly factor: readonly (readonly number[])[];
}

/**
 * Row by row and coefficient by coefficient, for a fit with `diagnostics: true`. Coefficients: intercept, then terms.
 */
export interface FitDiagnostics {
  /** Residual of each row: measured − fitted [mmHg]. */
  readonly residualsMmHg: readonly number[];
  /** Residuals over their own standard deviation, worked out from the other rows. */
  readonly studentized: readonly number[];
  /** Leverage of each row: how far it pulls the fit towards itself, 0 to 1. */
  readonly leverages: readonly number[];
  /** Cook’s distance of each row: how far all fitted values move without it. */
  readonly cooksDistances: readonly number[];
  /** Covariance of the coefficients. */
  readonly covariance: readonly (readonly number[])[];
  /** Standard errors that hold where residuals spread unevenly (HC3), with Student’s t intervals. */
  readonly robust: readonly Omit<Coefficient, 'coefficient'>[];
}

/** What decides the answers of your own equation, fitted or recalibrated. */
interface OwnDocument {
  /** Version of the shape of this document. */
  readonly schemaVersion: 1;
  /** Your name for it. */
  readonly id: string;
  /** Right-hand side, as an expression in `symbols`. */
  readonly formula: string;
  /** The reading that each symbol of `formula` is for. */
  readonly symbols: Symbols;
  /** The limb it is for. */
  readonly limb: Limb;
  /** Width of the cuff it is for [cm]; `any` where the rows had several. */
  readonly cuffWidthCm: number | 'any';
  /** Posture of its measurements. */
  readonly posture: Posture;
  /** Evidence grade: `derived`; `unconfirmed` where the published equation under it is. */
  readonly evidence: Grade;
  /** Rows it was fitted to. */
  readonly people: number;
  /** Rows less the coefficients that were fitted. */
  readonly degreesOfFreedom: number;
  /** Residual standard deviation, with the degrees of freedom taken off [mmHg]. */
  readonly residualMmHg: number;
  /** Root mean square of the errors when each row is predicted from all the others [mmHg]. */
  readonly leaveOneOutMmHg: number;
  /** What the leverage of a new person is worked out from, for the error of an answer. */
  readonly leverage: Leverage;
  /** Which assumptions these rows do not meet. */
  readonly cautions: readonly Caution[];
}

/** Your own occlusion-pressure equation: plain JSON, to be stored, sent and used like a published one. */
export interface FittedOcclusionEquation extends OwnDocument {
  /** Names the kind of document. */
  readonly document: 'fitted-occlusion-equation';
  /** Intercept of the equation [mmHg]. */
  readonly intercept: Coefficient;
  /** The terms that are added to the intercept. */
  readonly terms: readonly FittedTerm[];
  /** R²: share of the variance that the equation explains, from 0 to 1. */
  readonly rSquared: number;
  /** R² with the number of terms taken off. */
  readonly adjustedRSquared: number;
  /** Row by row and coefficient by coefficient, where you asked for it. */
  readonly diagnostics?: FitDiagnostics;
}

/** A published equation, recalibrated to your own people: plain JSON, used like a fitted one. */
export interface RecalibratedOcclusionEquation extends OwnDocument {
  /** Names the kind of document. */
  readonly document: 'recalibrated-occlusion-equation';
  /** Id of the published equation. */
  readonly base: OcclusionEquationId;
  /** Intercept after shrinkage. */
  readonly intercept: {
    /** The intercept [mmHg]. */
    readonly coefficient: number;
  };
  /** The one term, the estimate of the published equation; its coefficient is the slope after shrinkage. */
  readonly terms: readonly [
    {
      /** Names the term: the estimate of the published equation. */
      readonly field: 'estimateMmHg';
      /** Slope after shrinkage: 1 leaves the published equation as it is. */
      readonly coefficient: number;
      /** Lowest estimate in the rows [mmHg]. */
      readonly low: number;
      /** Highest estimate in the rows [mmHg]. */
      readonly high: number;
    },
  ];
  /** The straight line before shrinkage. */
  readonly leastSquares: {
    /** Intercept [mmHg]. */
    readonly intercept: Coefficient;
    /** Slope of the measurement on the published estimate. */
    readonly slope: Coefficient;
  };
  /**
   * How much of the least-squares correction is kept, 0 to 1: of the mean difference, and of the slope’s distance from
   * 1.
   */
  readonly shrinkage: {
    /** Share of the mean difference that is kept, 0 to 1. */
    readonly offset: number;
    /** Share of the slope’s distance from 1 that is kept, 0 to 1. */
    readonly slope: number;
  };
  /** How wrong the published equation was in these rows. */
  readonly published: {
    /** Mean of estimate − measurement [mmHg]. */
    readonly biasMmHg: number;
    /** Root mean square of estimate − measurement [mmHg]. */
    readonly rootMeanSquareMmHg: number;
  };
  /** Ranges of the readings in the rows. */
  readonly ranges: Partial<Record<TermField, Range>>;
}

/** Your own equation, as `fitOcclusionEquation` or `recalibrateOcclusionEquation` returned it. */
export type OwnOcclusionEquation = FittedOcclusionEquation | RecalibratedOcclusionEquation;

/** The part of the document that decides its answers. */
interface Core extends Pick<
  OwnDocument,
  'id' | 'limb' | 'cuffWidthCm' | 'posture' | 'people' | 'residualMmHg' | 'leverage'
> {
  readonly base?: OcclusionEquation | undefined;
  readonly intercept: { readonly coefficient: number };
  readonly terms: readonly { readonly field: string; readonly coefficient: number }[];
  readonly ranges: Partial<Record<TermField, Range>>;
}

/** `60 + 1.1 * C - 8 * sex`, and what the symbols stand for; a recalibrated one has the formula of its base inside. */
export function formulaOf({ intercept, terms, base }: Pick<Core, 'intercept' | 'terms' | 'base'>): {
  formula: string;
  symbols: Symbols;
} {
  const parts = terms.map(({ field, coefficient }) => {
    const of = base ? `(${base.formula})` : SYMBOLS[field as TermField];
    return `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} * ${of}`;
  });
  return {
    formula: [String(intercept.coefficient), ...parts].join(' '),
    symbols:
      base?.symbols ??
      Object.fromEntries(
        terms.map(({ field }) => [
          SYMBOLS[field as TermField],
          field === 'sex' ? { field, codes: SEX_CODES } : (field as QuantityName),
        ]),
      ),
  };
}

/** How other answers name what made them. */
const RESERVED = ['calibrated', 'posture-shift', 'bladder-bias', 'width-correction', 'fixed'];

export const isFittedId = (id: string): boolean =>
  /^[a-z][a-z0-9-]{0,59}$/.test(id) &&
  !id.startsWith('measured-') &&
  !RESERVED.includes(id) &&
  !occlusionEquations.some((equation) => equation.id === id);

/** Digits of a coefficient, so that the formula as printed is the equation. */
const DIGITS = 8;

export const printed = (value: number): number => Number(value.toPrecision(DIGITS));

export const coefficientOf = (value: number, standardError: number, t: number): Coefficient => ({
  coefficient: printed(value),
  standardError,
  lower: value - t * standardError,
  upper: value + t * standardError,
});

/** Your name for an equation, and what all rows have in common. */
export function readIdentity(reader: Reader): { readonly id: string; readonly limb: Limb; readonly posture: Posture } {
  const id = reader.optionalText('id', OWN_ID, isFittedId);
  if (id === undefined && reader.fine) reader.report('missing', 'id', OWN_ID, 'undefined');
  return { id: id!, limb: reader.choice('limb', LIMBS), posture: reader.choice('posture', POSTURES) };
}

/** A coefficient beyond this is neither made nor taken. */
export const COEFFICIENT: Quantity = { name: 'coefficient', unit: '1', min: -1e6, max: 1e6 };
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
  if (from.fine && means.length !== terms) from.report('wrong-relation', 'means', expected, `${means.length}`);
  const rows = from.values('factor', need(LISTS_OF_NUMBERS, { terms }));
  const triangle = rows.length === terms && rows.every((row, j) => Array.isArray(row) && row.length === j + 1);
  const numbers = triangle ? (rows as unknown[][]).flat() : [];
  const sound = numbers.every((one) => typeof one === 'number' && one >= FACTOR.min && one <= FACTOR.max);
  if (from.fine && !(triangle && sound)) {
    from.report('wrong-relation', 'factor', TRIANGLE, 'something else');
  }
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
  const cuffWidthCm = width === 'any' ? width : (reader.judge('cuffWidthCm', quantities.cuffWidthCm, width) ?? NaN);
  const people = reader.number('people', PEOPLE);
  const residualMmHg = reader.number('residualMmHg', ERROR);
  const intercept = { coefficient: reader.child('intercept').number('coefficient', COEFFICIENT) };
  const fields: readonly string[] = recalibrated ? [ESTIMATE] : TERM_FIELDS;
  const terms = (reader.optionalList('terms', TERMS) ?? []).map((term) => ({
    field: term.choice('field', fields),
    coefficient: term.number('coefficient', COEFFICIENT),
    ...readRange(term),
  }));
  if (reader.fine && (terms.length === 0 || new Set(terms.map(({ field }) => field)).size < terms.length)) {
    reader.report('wrong-relation', 'terms', TERM_PER_FIELD, 'none, or a field twice');
  }
  if (reader.fine && people < terms.length + 2) {
    reader.report('wrong-relation', 'people', need(PEOPLE_FOR_TERMS, { least: terms.length + 2 }), `${people}`);
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
    const id = reader.among('equation', ids, given);
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
