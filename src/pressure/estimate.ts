import { type Answer, type Assumption, type Caution, interval, normalInterval } from '../answer/answer.js';
import { FieldReader } from '../answer/field-reader.js';
import { formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { limbGirth, LIMBS, POSTURES, readingQuantities as quantities, SEXES, SIDES } from '../quantity/readings.js';
import { bloodPressureCautions, readBloodPressure } from './blood-pressure.js';
import { homePosture, NARROW_CM } from './carrying.js';
import type { OcclusionEquation, OcclusionReadings } from './equation.js';
import { EQUATION_IDS, occlusionEquations, type OcclusionEquationId } from './equations.js';
import {
  errorsOf,
  type Judged,
  judge,
  keptBy,
  leavesLaboratory,
  rank,
  READING_ERRORS,
  READING_ERROR_FIELDS,
  type ReadingErrors,
  wanted,
} from './judge.js';
import { assumption, caution } from './estimate-messages.js';
import { frozen } from '../quantity/frozen.js';

/** A limb occlusion pressure [mmHg], estimated, measured or carried to another cuff. */
export type OcclusionPressure = Answer<'occlusion-pressure'>;

/** What {@link estimateOcclusionPressure} takes. */
export interface OcclusionInput extends OcclusionReadings, ReadingErrors {
  /** An equation by its id; `auto` (the default) takes the one with the smallest honest error, and says why. */
  readonly equation?: OcclusionEquationId | 'auto';
}

/** What {@link compareOcclusionEquations} takes. */
export type OcclusionComparisonInput = Omit<OcclusionInput, 'equation'>;

/** Every equation side by side, for the same readings. */
export interface OcclusionComparison {
  /** The answers of every equation that applies, in the order in which `auto` would take them. */
  readonly answers: readonly OcclusionPressure[];
  /** How far the answers lie apart [mmHg]. */
  readonly spread: { readonly lowest: number; readonly highest: number; readonly difference: number };
  /** The equations that do not apply: which field keeps them from it, and what it would have to be. */
  readonly notApplicable: readonly {
    readonly equation: OcclusionEquationId;
    readonly field: string;
    readonly expected: string;
  }[];
}

const EQUATION_CHOICES = /* @__PURE__ */ (() => ['auto' as const, ...EQUATION_IDS])();

function postureCautions(
  { posture: fitted, id: equation }: OcclusionEquation,
  { limb, posture: asked }: OcclusionReadings,
): Caution[] {
  const path = ['posture'];
  if (fitted === 'any' || fitted === asked || (fitted === 'none' && asked === 'supine')) return [];
  if (fitted === 'not-stated' && asked === 'supine') {
    return [caution('note', 'posture-not-stated', { equation }, { path })];
  }
  return [
    fitted === 'none'
      ? caution('caution', 'posture-ignored', { equation }, { path })
      : fitted === 'not-stated'
        ? caution('caution', 'posture-may-differ', { equation, asked }, { path })
        : caution('caution', 'posture-differs', { equation, fitted, asked }, { path }),
    limb === 'leg'
      ? caution('note', 'posture-shifts-thigh', undefined, { path, source: 'posture-widths-2018' })
      : caution('note', 'posture-shifts-arm', undefined, { path }),
  ];
}

/** What an equation says on a limb and in a posture whoever it is for: made once, and shared by its answers. */
interface Grounds {
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}

function groundsOf(equation: OcclusionEquation, readings: OcclusionReadings): Grounds {
  const { limb, posture } = readings;
  const { error, evidence, id, fittedNotKnown } = equation;
  const names = fittedNotKnown.map((field) => quantities[field].name).join(', ');
  const known = error.assumption !== 'error-not-known';
  const armPosture = known && limb === 'arm' && homePosture(equation, posture) !== posture;
  return {
    assumptions: [
      ...(known ? [normalInterval] : []),
      assumption(error.assumption, error.means === undefined ? undefined : { count: error.means }),
      ...(known && leavesLaboratory(equation) ? [assumption('laboratories-differ')] : []),
      ...(armPosture ? [assumption('arm-posture-not-known')] : []),
      ...equation.assumptions.map((code) => assumption(code)),
      ...(names ? [assumption('fitted-range-not-known', { names })] : []),
    ],
    cautions: [
      caution('note', 'estimate-is-a-start'),
      ...(evidence === 'unconfirmed' ? [caution('caution', 'equation-unconfirmed', { equation: id })] : []),
      ...postureCautions(equation, readings),
    ],
  };
}

/** By limb and posture. */
const knownGrounds = /* @__PURE__ */ new WeakMap<OcclusionEquation, Grounds[]>();

function sharedGrounds(equation: OcclusionEquation, readings: OcclusionReadings): Grounds {
  let byPlace = knownGrounds.get(equation);
  if (!byPlace) knownGrounds.set(equation, (byPlace = []));
  const place = LIMBS.indexOf(readings.limb) * POSTURES.length + POSTURES.indexOf(readings.posture);
  return (byPlace[place] ??= frozen(groundsOf(equation, readings)));
}

const readingsExact = /* @__PURE__ */ (() => frozen(assumption('readings-exact')))();

/** What is taken for granted of the readings: that they are exact, save those whose error was given. */
function readingsAssumption(given?: ReadingErrors): Assumption {
  if (!given) return readingsExact;
  const exact = READING_ERROR_FIELDS.filter((field) => given[field] === undefined);
  const names = exact.map((field) => quantities[READING_ERRORS[field].field].name).join(', ');
  return names ? assumption('readings-partly-exact', { names }) : assumption('reading-errors-given');
}

/** What is to be watched for with these very readings. */
function ownCautions({ equation, value, outside }: Judged, readings: OcclusionReadings): Caution[] {
  const { limb, cuffWidthCm, posture, systolicMmHg, diastolicMmHg } = readings;
  const cautions = bloodPressureCautions(systolicMmHg, diastolicMmHg);
  for (const field of outside) {
    const { low, high } = equation.fitted[field]!;
    const { name, unit } = quantities[field];
    const words = {
      name,
      value: readings[field as keyof OcclusionReadings]!,
      low,
      high: formatUnit(high, unit),
      equation: equation.id,
    };
    const [source] = equation.sources;
    cautions.push(caution('caution', 'outside-fitted-range', words, { path: [field], ...(source && { source }) }));
  }
  if (limb === 'leg' && cuffWidthCm < NARROW_CM) {
    const more = { path: ['cuffWidthCm'], source: 'narrow-cuffs-2024' } as const;
    cautions.push(caution('caution', 'narrow-cuff-on-thigh', undefined, more));
  }
  if (value < diastolicMmHg) cautions.push(caution('caution', 'below-diastolic', { diastolic: diastolicMmHg }));
  if (limb === 'leg' && posture === 'supine' && cuffWidthCm >= 12 && cuffWidthCm <= 20) {
    const ratio = value / systolicMmHg;
    if (ratio < 0.9 || ratio > 1.6) {
      cautions.push(
        caution('caution', 'outside-thigh-index', { ratio: ratio.toFixed(2) }, { source: 'segmental-pressures' }),
      );
    }
  }
  return cautions;
}

const percentOf = ({ share }: Judged): number => Math.round(100 * share);

function reason(
  code: 'chosen-inside-range' | 'chosen-smallest-error' | 'chosen-better-grade',
  best: Judged,
  other: Judged,
): Assumption {
  const [{ equation }, { equation: next }] = [best, other];
  const grades = code === 'chosen-better-grade' && { evidence: equation.evidence, nextEvidence: next.evidence };
  return assumption(code, {
    equation: equation.id,
    percent: percentOf(best),
    next: next.id,
    nextPercent: percentOf(other),
    ...grades,
  });
}

/** Why `auto` took an equation. */
function choiceAssumption([best, ...others]: readonly Judged[]): Assumption {
  const { equation, share, outside: out } = best!;
  const passedOver = others.find((other) => other.outside.length > out.length && other.share < share);
  if (passedOver) return reason('chosen-inside-range', best!, passedOver);
  const [next] = others;
  if (next === undefined || next.share === Infinity) {
    return assumption('chosen-only', { equation: equation.id, percent: percentOf(best!) });
  }
  return reason(share <= next.share ? 'chosen-smallest-error' : 'chosen-better-grade', best!, next);
}

function answerOf(
  judged: Judged,
  readings: OcclusionReadings,
  given?: ReadingErrors,
  chosen?: Assumption,
): OcclusionPressure {
  const { equation, value } = judged;
  const errors = errorsOf(judged, readings, given);
  const { evidence, sources, id } = equation;
  const { assumptions, cautions } = sharedGrounds(equation, readings);
  const own = ownCautions(judged, readings);
  const taken = readingsAssumption(given);
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...(errors.length > 0 && interval(value, errors)),
    equation: id,
    evidence,
    formula: equation.formula,
    symbols: equation.symbols,
    inputs: given ? { ...readings, ...given } : readings,
    assumptions: chosen ? [chosen, taken, ...assumptions] : [taken, ...assumptions],
    cautions: own.length > 0 ? [...cautions, ...own] : cautions,
    sources,
  };
}

type Writable<T> = { -readonly [Field in keyof T]: T[Field] };

/** The readings, and their errors where any was given. */
export function readReadings(reader: FieldReader): { readings: OcclusionReadings; given: ReadingErrors | undefined } {
  const limb = reader.choice('limb', LIMBS);
  const readings: Writable<OcclusionReadings> = {
    limb,
    circumferenceCm: reader.number('circumferenceCm', limbGirth[limb]),
    ...readBloodPressure(reader),
    cuffWidthCm: reader.number('cuffWidthCm', quantities.cuffWidthCm),
    posture: reader.choice('posture', POSTURES),
  };
  const ageYears = reader.optionalNumber('ageYears', quantities.ageYears);
  const sex = reader.optionalChoice('sex', SEXES);
  const paddingCoefficient = reader.optionalNumber('paddingCoefficient', quantities.paddingCoefficient);
  const side = reader.optionalChoice('side', SIDES);
  if (ageYears !== undefined) readings.ageYears = ageYears;
  if (sex !== undefined) readings.sex = sex;
  if (paddingCoefficient !== undefined) readings.paddingCoefficient = paddingCoefficient;
  if (side !== undefined) readings.side = side;
  let given: Writable<ReadingErrors> | undefined;
  for (const field of READING_ERROR_FIELDS) {
    const deviation = reader.optionalNumber(field, quantities[field]);
    if (deviation !== undefined) (given ??= {})[field] = deviation;
  }
  return { readings, given };
}

/** The answer of one equation to readings that were checked and that it applies to. */
export const estimateBy = (
  equation: OcclusionEquation,
  readings: OcclusionReadings,
  given?: ReadingErrors,
): OcclusionPressure => answerOf(judge(equation, readings, given), readings, given);

/** Every equation that applies, best first. */
function ranked(readings: OcclusionReadings, given?: ReadingErrors): Judged[] {
  const judged: Judged[] = [];
  for (const equation of occlusionEquations) {
    if (!keptBy(equation, readings)) judged.push(judge(equation, readings, given));
  }
  return rank(judged);
}

/**
 * Limb occlusion pressure (LOP) from a tape measure and a blood-pressure reading.
 *
 * An estimate is a starting point: its 95 % interval is wide, and says how wide. A measurement on the
 * limb, with the cuff and in the posture of the exercise, is preferred; see {@link measuredOcclusionPressure}.
 *
 * With `equation: 'auto'` every equation that applies to the limb, the cuff width and the readings at hand is judged,
 * and the one with the smallest honest error (as a share of its answer) is taken; one whose sample does not hold these
 * readings comes after those whose does; within a tenth, the better grade wins. The first assumption says why.
 *
 * The error has these parts, each listed in `errors`, in quadrature: the equation’s own; `laboratory`, how far
 * laboratories differ (25 % of the answer with a narrow cuff on the thigh, 13 % with a wide one, 11 % on the arm);
 * `posture`, where the posture is not the one it was fitted in (on the thigh 15 % supine or seated, 26 % supine or
 * standing, 17 % seated or standing); `width-correction`, where the cuff is up to 0.5 cm off; and the errors of the
 * readings, where they are given, by the equation’s local slope. The shares are `derived` from published group means.
 *
 * Postures are never mixed silently: nothing is shifted, and a caution says so; see {@link correctForPosture}.
 *
 * - Error, evidence and source: those of the equation that made the answer, as `equations` lists them.
 *
 * @param input - limb; `circumferenceCm` [cm]; `systolicMmHg`, `diastolicMmHg` [mmHg]; `cuffWidthCm` [cm];
 * posture; `ageYears` [years], sex and `paddingCoefficient`, for the equations that use them; side, for the record;
 * `circumferenceErrorCm` [cm], `systolicErrorMmHg` and `diastolicErrorMmHg` [mmHg], standard deviations of the
 * readings where they are known (no figures for them are at hand).
 * @returns LOP [mmHg] with its interval, equation, evidence grade, assumptions and cautions.
 * @throws InputError naming every wrong field: a value that is impossible, pressures swapped, a likely slip of unit,
 * an equation that does not apply.
 *
 * @example
 * ```ts
 * import { estimateOcclusionPressure } from 'cuffwork';
 * const lop = estimateOcclusionPressure({
 *   limb: 'leg', circumferenceCm: 54, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine',
 * });
 * lop.value; // => 160
 * lop.evidence; // => 'unconfirmed'
 * ```
 */
export function estimateOcclusionPressure(input: OcclusionInput): OcclusionPressure {
  const reader = new FieldReader(input);
  const { readings, given } = readReadings(reader);
  const asked = reader.optionalChoice('equation', EQUATION_CHOICES) ?? 'auto';
  const equation: OcclusionEquation | undefined = occlusionEquations.find(({ id }) => id === asked);
  const field = equation && reader.fine ? keptBy(equation, readings) : undefined;
  if (field) reader.report('wrong-relation', field, wanted(equation!, field), String(readings[field]));
  reader.done();
  if (equation) return estimateBy(equation, readings, given);
  const candidates = ranked(readings, given);
  return answerOf(candidates[0]!, readings, given, choiceAssumption(candidates));
}

/**
 * Every occlusion-pressure equation that applies to the same readings, best first, how far they lie apart, and why
 * the others do not apply.
 *
 * @param input - as for {@link estimateOcclusionPressure}, without `equation`.
 * @returns the answers, their spread [mmHg], and the equations that do not apply.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { compareOcclusionEquations } from 'cuffwork';
 * const { answers, spread } = compareOcclusionEquations({
 *   limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 18, posture: 'supine',
 * });
 * answers.map(({ equation }) => equation); // => ['pooled-means-thigh-wide', 'thigh-index-18', 'width-ratio-1993']
 * spread.difference.toFixed(1); // => '39.1'
 * ```
 */
export function compareOcclusionEquations(input: OcclusionComparisonInput): OcclusionComparison {
  const reader = new FieldReader(input);
  const { readings, given } = readReadings(reader);
  reader.done();
  const answers = ranked(readings, given).map((judged) => answerOf(judged, readings, given));
  const values = answers.map(({ value }) => value);
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  return {
    answers,
    spread: { lowest, highest, difference: highest - lowest },
    notApplicable: occlusionEquations.flatMap((equation) => {
      const field = keptBy(equation, readings);
      return field ? [{ equation: equation.id, field, expected: wanted(equation, field) }] : [];
    }),
  };
}
