import type { Answer, Assumption, Caution } from '../answer/answer.js';
import { logInterval, logNormalInterval } from '../answer/interval.js';
import type { Loose, Writable } from '../answer/defined.js';
import { FieldReader } from '../answer/field-reader.js';
import { sharedFacts } from '../answer/own.js';
import { withInput } from '../answer/with-input.js';
import { Math } from '../quantity/maths.js';
import {
  CIRCUMFERENCE_SITES,
  limbCircumference,
  LIMBS,
  POSTURES,
  readingQuantities as quantities,
  SEXES,
  SIDES,
} from '../quantity/readings.js';
import { readBloodPressure } from './blood-pressure.js';
import type { OcclusionEquation, OcclusionReadings } from './equation.js';
import { defaultEquations, EQUATION_IDS, occlusionEquations, type OcclusionEquationId } from './equations.js';
import {
  errorsOf,
  homePosture,
  checkApplicable,
  inapplicableField,
  leavesLaboratory,
  READING_ERRORS,
  READING_ERROR_FIELDS,
  requirement,
  type ReadingErrors,
} from './uncertainty.js';
import { assumption } from './assumptions.js';
import { answerCautions, postureCautions, readingCautions, siteCautions } from './estimate-cautions.js';
import { caution } from './estimate-messages.js';

/** A limb occlusion pressure [mmHg], estimated, measured or converted to another cuff. */
export type OcclusionPressure = Answer<'occlusion-pressure'>;

/** What {@link estimateOcclusionPressure} takes. */
export interface OcclusionInput extends Loose<OcclusionReadings>, ReadingErrors {
  /** An equation by its id; left out, it is the pooled curve of the limb. */
  readonly equation?: OcclusionEquationId | undefined;
}

/** What {@link compareOcclusionEquations} takes. */
export type OcclusionComparisonInput = Omit<OcclusionInput, 'equation'>;

/** Every equation side by side, for the same readings. */
export interface OcclusionComparison {
  /** The answers of every equation that applies, the default first. */
  readonly answers: readonly OcclusionPressure[];
  /** How far the answers lie apart [mmHg]. */
  readonly spread: {
    /** Lowest answer [mmHg]. */
    readonly lowest: number;
    /** Highest answer [mmHg]. */
    readonly highest: number;
    /** Highest minus lowest answer [mmHg]. */
    readonly difference: number;
  };
  /** The equations that do not apply: because of which field, and what it would have to be. */
  readonly notApplicable: readonly {
    /** Id of the equation. */
    readonly equation: OcclusionEquationId;
    /** Input field that rules it out. */
    readonly field: string;
    /** What the field would have to be, in words. */
    readonly expected: string;
  }[];
}

/** What holds for everyone with a limb in a posture: made once, and shared by the answers of an equation. */
interface Notes {
  readonly assumptions: readonly Assumption[];
  /** The same where no error of a reading was given. */
  readonly exact: readonly Assumption[];
  readonly cautions: readonly Caution[];
  /** Where along the limb the circumference belongs, and what differs. */
  readonly site: readonly Caution[];
  /** Both, where the readings have no cautions of their own. */
  readonly usual: readonly Caution[];
}

/** An unknown range is never taken as inside. */
export const rangeNotKnown = ({ fittedNotKnown }: OcclusionEquation): Assumption =>
  assumption('fitted-range-not-known', { fields: fittedNotKnown });

function notesOf(equation: OcclusionEquation, readings: OcclusionReadings): Notes {
  const { limb, posture } = readings;
  const { error, evidence, id, fittedNotKnown } = equation;
  const known = error.assumption !== 'error-not-known';
  const armPosture = known && limb === 'arm' && homePosture(equation, posture) !== posture;
  const assumptions = sharedFacts([
    ...(known ? [error.own?.assumption ?? logNormalInterval] : []),
    ...(known && !error.own ? [assumption('new-person-and-laboratory')] : []),
    assumption(error.assumption, error.means === undefined ? undefined : { count: error.means }),
    ...(known && leavesLaboratory(equation) ? [assumption('laboratories-differ')] : []),
    ...(armPosture ? [assumption('arm-posture-not-known')] : []),
    ...equation.assumptions.map((code) => assumption(code)),
    ...(fittedNotKnown.length > 0 ? [rangeNotKnown(equation)] : []),
  ]);
  const cautions = sharedFacts([
    caution('note', 'estimate-is-a-start'),
    ...(evidence === 'unconfirmed' ? [caution('caution', 'equation-unconfirmed', { equation: id })] : []),
    ...postureCautions(equation, readings),
  ]);
  const site = sharedFacts(siteCautions(readings));
  return {
    assumptions,
    exact: sharedFacts([assumption('readings-exact'), ...assumptions]),
    cautions,
    site,
    usual: sharedFacts([...cautions, ...site]),
  };
}

/** By limb, posture and site. */
const knownNotes = new WeakMap<OcclusionEquation, Notes[]>();

function sharedNotes(equation: OcclusionEquation, readings: OcclusionReadings): Notes {
  let byPlace = knownNotes.get(equation);
  if (!byPlace) knownNotes.set(equation, (byPlace = []));
  const { limb, posture, circumferenceSite } = readings;
  const site = circumferenceSite ? CIRCUMFERENCE_SITES.indexOf(circumferenceSite) : CIRCUMFERENCE_SITES.length;
  const place = (site * LIMBS.length + LIMBS.indexOf(limb)) * POSTURES.length + POSTURES.indexOf(posture);
  return (byPlace[place] ??= notesOf(equation, readings));
}

/** Readings are assumed to be exact, save those whose error was given. */
function readingsAssumption(given: ReadingErrors): Assumption {
  const exact = READING_ERROR_FIELDS.filter((field) => given[field] === undefined);
  const fields = exact.map((field) => READING_ERRORS[field].field);
  return fields.length > 0 ? assumption('readings-partly-exact', { fields }) : assumption('reading-errors-given');
}

/** The answer of one equation to readings that were checked and that it applies to. */
export function estimateBy(
  equation: OcclusionEquation,
  readings: OcclusionReadings,
  given?: ReadingErrors,
): OcclusionPressure {
  const value = equation.apply(readings as Required<OcclusionReadings>);
  const uncertainty = errorsOf(equation, readings, value, given);
  const { evidence, id, formula, symbols, error } = equation;
  const notes = sharedNotes(equation, readings);
  const [before, after] = [readingCautions(equation, readings), answerCautions(equation, value, readings)];
  const around: Partial<OcclusionPressure> | undefined =
    uncertainty && (error.own?.around ?? logInterval)(value, uncertainty.errors, uncertainty.standardDeviation);
  const answer = { kind: 'occlusion-pressure', value, unit: 'mm[Hg]' } as Writable<OcclusionPressure>;
  if (around) {
    answer.lower = around.lower!;
    answer.upper = around.upper!;
    answer.level = around.level!;
    answer.standardDeviation = around.standardDeviation!;
    if (around.scale) answer.scale = around.scale;
    answer.errors = around.errors!;
  }
  answer.equation = id;
  answer.evidence = evidence;
  if (error.own) answer.ownEquation = { formula, symbols, ...(error.own.base && { base: error.own.base }) };
  answer.inputs = given ? { ...readings, ...given } : readings;
  answer.assumptions = given ? [readingsAssumption(given), ...notes.assumptions] : notes.exact;
  answer.cautions =
    before.length + after.length > 0 ? [...notes.cautions, ...before, ...notes.site, ...after] : notes.usual;
  return answer;
}

/** The readings, and their errors where any was given. */
export function readReadings(reader: FieldReader): { readings: OcclusionReadings; given: ReadingErrors | undefined } {
  const limb = reader.choice('limb', LIMBS);
  const circumferenceCm = reader.number('circumferenceCm', limbCircumference[limb]);
  const { systolicMmHg, diastolicMmHg } = readBloodPressure(reader);
  const readings: Writable<OcclusionReadings> = {
    limb,
    circumferenceCm,
    systolicMmHg,
    diastolicMmHg,
    cuffWidthCm: reader.number('cuffWidthCm', quantities.cuffWidthCm),
    posture: reader.choice('posture', POSTURES),
  };
  const circumferenceSite = reader.optionalChoice('circumferenceSite', CIRCUMFERENCE_SITES);
  const ageYears = reader.optionalNumber('ageYears', quantities.ageYears);
  const sex = reader.optionalChoice('sex', SEXES);
  const paddingCoefficient = reader.optionalNumber('paddingCoefficient', quantities.paddingCoefficient);
  const side = reader.optionalChoice('side', SIDES);
  if (circumferenceSite !== undefined) readings.circumferenceSite = circumferenceSite;
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

/** The default first, then in the order of the list. */
function applicable(readings: OcclusionReadings): OcclusionEquation[] {
  const first: OcclusionEquation = defaultEquations[readings.limb];
  return [first, ...occlusionEquations.filter((equation) => equation.id !== first.id)].filter(
    (equation) => inapplicableField(equation, readings) === undefined,
  );
}

/**
 * Limb occlusion pressure from a tape measure and a blood-pressure reading: a starting point where you cannot measure.
 *
 * The default is one pooled curve for each limb: a model of the published group means, continuous in cuff width,
 * circumference, blood pressures and, on the thigh, posture. It is above the diastolic pressure, falls with cuff
 * width, rises with circumference and both blood pressures, and from supine to seated to standing on the thigh. Other
 * equations are used by their id; {@link compareOcclusionEquations} shows all of them.
 *
 * The 95 % interval is a prediction interval for one new person, measured in a new laboratory, on a log scale:
 * LOP ÷ f to LOP × f. Its parts are in `errors`, as shares of the answer, in quadrature: `equation`, the coefficients;
 * `people`, how people of one circumference and blood pressure differ; `laboratory`, how laboratories and cuffs differ;
 * for an equation used by name `posture` and `width-correction`, where posture or cuff are not its own; and the errors
 * of the readings, where you give them. Few laboratories widen it by Student’s t.
 *
 * A named equation is never shifted to another posture: a caution says so; see {@link correctForPosture}.
 *
 * - Error, evidence and source: those of the equation that made the answer, as `equations` lists them.
 *
 * @function
 * @param input - limb; `circumferenceCm` [cm] and where it was taken, `circumferenceSite`; `systolicMmHg`,
 * `diastolicMmHg` [mmHg]; `cuffWidthCm` [cm]; posture; `ageYears` [years], sex and `paddingCoefficient`, for the
 * equations that use them; side, for the record; `circumferenceErrorCm` [cm], `systolicErrorMmHg` and
 * `diastolicErrorMmHg` [mmHg], standard deviations of the readings where you know them; `equation`, an id.
 * @returns LOP [mmHg] with its interval, equation, evidence grade, assumptions and cautions.
 * @throws InputError naming every wrong field: a value that is impossible, pressures swapped, a likely slip of unit,
 * an equation that does not apply.
 *
 * @example
 * ```ts
 * import { estimateOcclusionPressure } from 'cuffwork';
 * const lop = estimateOcclusionPressure({
 *   limb: 'leg', circumferenceCm: 55, circumferenceSite: 'mid-limb',
 *   systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine',
 * });
 * [lop.lower!, lop.value, lop.upper!].map(Math.round); // => [128, 193, 292]
 * lop.evidence; // => 'derived'
 * ```
 */
export const estimateOcclusionPressure = withInput(function estimateOcclusionPressure(
  input: OcclusionInput,
): OcclusionPressure {
  const reader = new FieldReader(input);
  const { readings, given } = readReadings(reader);
  const asked = reader.optionalChoice('equation', EQUATION_IDS);
  const equation: OcclusionEquation | undefined =
    asked === undefined ? defaultEquations[readings.limb] : occlusionEquations.find(({ id }) => id === asked);
  if (equation && reader.fine) checkApplicable(reader, equation, readings);
  reader.done();
  return estimateBy(equation!, readings, given);
});

/**
 * Every occlusion-pressure equation that applies to the same readings, the default first, how far they lie apart, and
 * why the others do not apply.
 *
 * @function
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
 * answers.map(({ equation }) => equation); // => ['pooled-curve-thigh-2026', 'width-ratio-1993', 'thigh-index-18']
 * spread.difference.toFixed(1); // => '28.8'
 * ```
 */
export const compareOcclusionEquations = withInput(function compareOcclusionEquations(
  input: OcclusionComparisonInput,
): OcclusionComparison {
  const reader = new FieldReader(input);
  const { readings, given } = readReadings(reader);
  reader.done();
  const answers = applicable(readings).map((equation) => estimateBy(equation, readings, given));
  const values = answers.map(({ value }) => value);
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  return {
    answers,
    spread: { lowest, highest, difference: highest - lowest },
    notApplicable: occlusionEquations.flatMap((equation) => {
      const field = inapplicableField(equation, readings);
      return field ? [{ equation: equation.id, field, expected: requirement(equation, field).expected }] : [];
    }),
  };
});
