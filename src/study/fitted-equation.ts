import { Math } from '../quantity/maths.js';
import type { Caution, Symbols } from '../answer/answer.js';
import type { Reader } from '../answer/reader.js';
import type { Grade } from '../evidence/grades.js';
import type { OcclusionEquation, Range } from '../pressure/equation.js';
import { occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import { frozen } from '../quantity/frozen.js';
import { LIMBS, POSTURES, type Limb, type Posture, type Quantity, type QuantityName } from '../quantity/quantities.js';
import { OWN_ID } from './needs.js';

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
export const SEX_CODES = frozen({ male: 1, female: 2 });

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
export interface Core extends Pick<
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

const isFittedId = (id: string): boolean =>
  /^[a-z][a-z0-9-]{0,59}$/.test(id) &&
  !id.startsWith('measured-') &&
  !RESERVED.includes(id) &&
  !occlusionEquations.some((equation) => equation.id === id);

/** Digits of a coefficient, so that the formula as printed is the equation. */
const DIGITS = 8;

export const printed = (value: number): number => Number(value.toPrecision(DIGITS));

export const errorsOf = (value: number, standardError: number, t: number): Omit<Coefficient, 'coefficient'> => ({
  standardError,
  lower: value - t * standardError,
  upper: value + t * standardError,
});

export const coefficientOf = (value: number, standardError: number, t: number): Coefficient => ({
  coefficient: printed(value),
  ...errorsOf(value, standardError, t),
});

/** Your name for an equation, and what all rows have in common. */
export function readIdentity(reader: Reader): { readonly id: string; readonly limb: Limb; readonly posture: Posture } {
  const id = reader.optionalText('id', OWN_ID, isFittedId);
  if (id === undefined && reader.fine) reader.report('missing', 'id', OWN_ID);
  return { id: id!, limb: reader.choice('limb', LIMBS), posture: reader.choice('posture', POSTURES) };
}

/** A coefficient beyond this is neither made nor taken. */
export const COEFFICIENT: Quantity = { name: 'coefficient', unit: '1', min: -1e6, max: 1e6 };
