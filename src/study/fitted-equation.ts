import { Math } from '../quantity/maths.js';
import type { Symbols } from '../answer/answer.js';
import { describe, InputError, isInputError, type InputIssue } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { Reader } from '../answer/reader.js';
import type { ExtraReading, OcclusionEquation } from '../pressure/equation.js';
import { occlusionEquations } from '../pressure/equations.js';
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

/** Readings that a fitted equation can draw on, in the order its formula has them. */
export const TERM_FIELDS = [
  'circumferenceCm',
  'systolicMmHg',
  'diastolicMmHg',
  'cuffWidthCm',
  'ageYears',
  'sex',
] as const;
/** A reading that an equation of one’s own can be fitted on. */
export type TermField = (typeof TERM_FIELDS)[number];

/** How sex enters a formula. */
export const SEX_CODES = /* @__PURE__ */ frozen({ male: 1, female: 2 });

const SYMBOLS: Record<TermField, string> = {
  circumferenceCm: 'C',
  systolicMmHg: 'SBP',
  diastolicMmHg: 'DBP',
  cuffWidthCm: 'W',
  ageYears: 'age',
  sex: 'sex',
};

/** A coefficient with its standard error and 95 % confidence interval (Student’s t). */
export interface Coefficient {
  readonly coefficient: number;
  readonly standardError: number;
  readonly lower: number;
  readonly upper: number;
}

/** One term of a fitted equation. */
export interface FittedTerm extends Coefficient {
  readonly field: TermField;
  /** Variance inflation factor: how many times its variance is what it would be beside unrelated terms. */
  readonly inflation: number;
  /** Range of the reading in the rows; sex as coded. */
  readonly low: number;
  readonly high: number;
}

/** A laboratory’s own occlusion-pressure equation: plain JSON, to be stored, sent and used like a published one. */
export interface FittedOcclusionEquation {
  readonly document: 'fitted-occlusion-equation';
  readonly schemaVersion: 1;
  readonly id: string;
  readonly formula: string;
  readonly symbols: Symbols;
  readonly limb: Limb;
  readonly cuffWidthCm: number | 'any';
  readonly posture: Posture;
  readonly evidence: 'derived';
  readonly people: number;
  readonly intercept: Coefficient;
  readonly terms: readonly FittedTerm[];
  readonly degreesOfFreedom: number;
  readonly rSquared: number;
  /** Residual standard deviation, with the degrees of freedom taken off. */
  readonly residualMmHg: number;
  /** Root mean square of the errors when each row is foretold from all the others. */
  readonly leaveOneOutMmHg: number;
}

/** The part of a fitted equation that decides its answers. */
type Core = Pick<FittedOcclusionEquation, 'id' | 'limb' | 'cuffWidthCm' | 'posture' | 'people' | 'leaveOneOutMmHg'> & {
  readonly intercept: Pick<Coefficient, 'coefficient'>;
  readonly terms: readonly Pick<FittedTerm, 'field' | 'coefficient' | 'low' | 'high'>[];
};

/** `60 + 1.1 * C - 8 * sex`, and what the symbols stand for. */
export function formulaOf({ intercept, terms }: Pick<Core, 'intercept' | 'terms'>): {
  formula: string;
  symbols: Symbols;
} {
  const parts = terms.map(({ field, coefficient }) => {
    return `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} * ${SYMBOLS[field]}`;
  });
  return {
    formula: [String(intercept.coefficient), ...parts].join(' '),
    symbols: Object.fromEntries(
      terms.map(({ field }) => [SYMBOLS[field], field === 'sex' ? { field, codes: SEX_CODES } : field]),
    ),
  };
}

export const isFittedId = (id: string): boolean =>
  /^[a-z][a-z0-9-]{0,59}$/.test(id) && !occlusionEquations.some((equation) => equation.id === id);
export const FITTED_ID = 'lower-case letters, digits and hyphens, and not the id of a published equation';

const COEFFICIENT: Quantity = { name: 'coefficient', unit: '1', min: -1e6, max: 1e6 };
const ERROR: Quantity = { name: 'leave-one-out error', unit: 'mm[Hg]', min: 0, max: 1000 };
const PEOPLE: Quantity = { name: 'people', unit: '1', min: 3, max: 1e6, whole: true };

/** Reads what decides the answers; the rest of the document is carried along unread. */
function readCore(fit: unknown): Core {
  const issues: InputIssue[] = [];
  const reader = new Reader(plainInput(fit, 'an equation of fitOcclusionEquation'), [], issues);
  const number = (from: Reader, name: string, quantity: Quantity): number =>
    from.judge(name, quantity, from.raw(name)) ?? NaN;
  if (reader.raw('document') !== 'fitted-occlusion-equation') {
    reader.report('wrong-type', 'document', "'fitted-occlusion-equation'", 'something else');
  }
  const id = reader.optionalText('id', FITTED_ID, isFittedId);
  if (id === undefined && reader.fine) reader.report('missing', 'id', FITTED_ID, 'undefined');
  const limb = reader.choice('limb', LIMBS);
  const width = reader.raw('cuffWidthCm');
  const cuffWidthCm = width === 'any' ? width : (reader.judge('cuffWidthCm', quantities.cuffWidthCm, width) ?? NaN);
  const posture = reader.choice('posture', POSTURES);
  const people = number(reader, 'people', PEOPLE);
  const leaveOneOutMmHg = number(reader, 'leaveOneOutMmHg', ERROR);
  const intercept = { coefficient: number(reader.child('intercept'), 'coefficient', COEFFICIENT) };
  const terms = (reader.optionalList('terms', 'a list of terms') ?? []).map((term) => ({
    field: term.choice('field', TERM_FIELDS),
    coefficient: number(term, 'coefficient', COEFFICIENT),
    low: number(term, 'low', COEFFICIENT),
    high: number(term, 'high', COEFFICIENT),
  }));
  if (reader.fine && (terms.length === 0 || new Set(terms.map(({ field }) => field)).size < terms.length)) {
    reader.report('wrong-relation', 'terms', 'one term for each of its fields', 'none, or a field twice');
  }
  if (issues.length > 0) throw new InputError(issues);
  return { id: id!, limb, cuffWidthCm, posture, people, leaveOneOutMmHg, intercept, terms };
}

/**
 * A fitted equation, perhaps read back from JSON, as a record like those of the published equations.
 *
 * Its error is the leave-one-out error: what it was wrong by for people it had not seen. Formula and answers are made
 * from the coefficients alone.
 *
 * @param fit - what {@link fitOcclusionEquation} returned
 * @returns the record, grade `derived`: formula, symbols, `apply`, ranges, error.
 * @throws InputError where the document is not a whole fitted equation.
 *
 * @example
 * ```ts
 * import { equationFromFit } from 'cuffwork/study';
 * const equation = equationFromFit({
 *   document: 'fitted-occlusion-equation', id: 'lab-thigh', limb: 'leg', cuffWidthCm: 11, posture: 'seated',
 *   people: 40, leaveOneOutMmHg: 12, intercept: { coefficient: 20 },
 *   terms: [{ field: 'circumferenceCm', coefficient: 2.5, low: 45, high: 65 }],
 * });
 * equation.formula; // => '20 + 2.5 * C'
 * ```
 */
export function equationFromFit(fit: object): OcclusionEquation {
  return recordOf(readCore(fit));
}

const EXTRA: readonly ExtraReading[] = ['ageYears', 'sex'];

/** The sum of the terms. A reading that is no term may be missing. */
function applyOf({ intercept: { coefficient: first }, terms }: Core): OcclusionEquation['apply'] {
  const slope = (field: TermField): number => terms.find((term) => term.field === field)?.coefficient ?? 0;
  const [byCircumference, bySystolic, byDiastolic] = [
    slope('circumferenceCm'),
    slope('systolicMmHg'),
    slope('diastolicMmHg'),
  ];
  const [byWidth, byAge, bySex] = [slope('cuffWidthCm'), slope('ageYears'), slope('sex')];
  return ({ circumferenceCm, systolicMmHg, diastolicMmHg, cuffWidthCm, ageYears, sex }) =>
    first +
    (byCircumference === 0 ? 0 : byCircumference * circumferenceCm) +
    (bySystolic === 0 ? 0 : bySystolic * systolicMmHg) +
    (byDiastolic === 0 ? 0 : byDiastolic * diastolicMmHg) +
    (byWidth === 0 ? 0 : byWidth * cuffWidthCm) +
    (byAge === 0 ? 0 : byAge * ageYears) +
    (bySex === 0 ? 0 : bySex * SEX_CODES[sex]);
}

function recordOf(core: Core): OcclusionEquation {
  const { id, limb, cuffWidthCm, posture, people, leaveOneOutMmHg, terms } = core;
  const fitted: Partial<Record<QuantityName, { readonly low: number; readonly high: number }>> = {};
  for (const { field, low, high } of terms) if (field !== 'sex') fitted[field] = { low, high };
  return {
    id,
    name: `${id}, fitted to ${people} people`,
    ...formulaOf(core),
    apply: applyOf(core),
    needs: EXTRA.filter((field) => terms.some((term) => term.field === field)),
    limb,
    cuffWidthCm,
    posture,
    sample: `${people} people, fitted by the caller`,
    fitted,
    fittedNotKnown: [],
    error: {
      standardDeviationMmHg: leaveOneOutMmHg,
      evidence: 'derived',
      assumption: 'error-of-left-out',
      ownLaboratory: true,
    },
    evidence: 'derived',
    sources: [],
    assumptions: ['own-laboratory'],
  };
}

/** The field `equation`: a published equation by its id, or one’s own as JSON. */
export function readEquation(reader: Reader, published: readonly OcclusionEquation[]): OcclusionEquation | undefined {
  const given = reader.raw('equation');
  if (typeof given !== 'object' || given === null) {
    const ids = published.map(({ id }) => id);
    const id = reader.among('equation', ids, given);
    return published.find((equation) => equation.id === id);
  }
  try {
    return equationFromFit(given);
  } catch (error) {
    if (!isInputError(error)) throw error;
    const expected = 'the id of a published equation, or a whole equation of fitOcclusionEquation';
    reader.report('wrong-type', 'equation', expected, error.issues[0]?.message ?? describe(given));
    return undefined;
  }
}
