import { type Answer, type Assumption, type Caution, interval, normalInterval } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { formatUnit } from '../quantity/format.js';
import { limbGirth, LIMBS, POSTURES, quantities, SEXES, type QuantityName } from '../quantity/quantities.js';
import { bloodPressureCautions, readBloodPressure } from './blood-pressure.js';
import type { OcclusionEquation, OcclusionReadings } from './equation.js';
import { occlusionEquations, type OcclusionEquationId } from './equations.js';
import { assumption, caution } from './messages.js';

/** A limb occlusion pressure [mmHg], estimated, measured or carried to another cuff. */
export type OcclusionPressure = Answer<'occlusion-pressure'>;

/** What {@link estimateOcclusionPressure} takes. */
export interface OcclusionInput extends OcclusionReadings {
  /** An equation by its id; `auto` (the default) takes the one fitted for the limb and cuff, else the width-ratio formula. */
  readonly equation?: OcclusionEquationId | 'auto';
}

/** A cuff counts as the width an equation was fitted with when it is within half a centimetre of it. */
const WIDTH_TOLERANCE_CM = 0.5;
/** On the thigh a cuff below this is called narrow (`practice`; the published warning is for 5 cm). */
const NARROW_CM = 8;

const EQUATION_CHOICES = /* @__PURE__ */ (() => ['auto' as const, ...occlusionEquations.map(({ id }) => id)])();

/** The field that keeps an equation from these readings, and what it would have to be. */
export function mismatch(
  equation: OcclusionEquation,
  readings: OcclusionReadings,
): { readonly field: keyof OcclusionReadings; readonly expected: string } | undefined {
  const { limb, cuffWidthCm, needs, id } = equation;
  if (limb !== 'any' && limb !== readings.limb) return { field: 'limb', expected: `'${limb}' for equation ${id}` };
  if (cuffWidthCm !== 'any' && Math.abs(cuffWidthCm - readings.cuffWidthCm) > WIDTH_TOLERANCE_CM) {
    return {
      field: 'cuffWidthCm',
      expected: `${formatUnit(cuffWidthCm, 'cm')} (± ${WIDTH_TOLERANCE_CM}) for equation ${id}; carry its answer to another cuff with correctForCuffWidth`,
    };
  }
  const lacking = needs.find((field) => readings[field] === undefined);
  return lacking && { field: lacking, expected: `given, for equation ${id}` };
}

function postureCautions({ posture: fitted, id }: OcclusionEquation, asked: OcclusionReadings['posture']): Caution[] {
  const more = { path: ['posture'], source: 'posture-widths-2018' } as const;
  if (fitted === 'none') {
    return asked === 'supine' ? [] : [caution('caution', 'posture-ignored', { equation: id }, more)];
  }
  if (fitted === 'not-stated') return [caution('note', 'posture-not-stated', { equation: id }, { path: ['posture'] })];
  return fitted === asked ? [] : [caution('caution', 'posture-differs', { equation: id, fitted, asked }, more)];
}

/** What an equation says in a posture whoever it is for: made once, and shared by its answers. */
interface Grounds {
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}

function groundsOf(equation: OcclusionEquation, posture: OcclusionReadings['posture']): Grounds {
  const { error, evidence, id, fittedNotKnown } = equation;
  const names = fittedNotKnown.map((field) => quantities[field].name).join(', ');
  return {
    assumptions: Object.freeze([
      assumption('readings-exact'),
      normalInterval,
      assumption(error.assumption, error.assumption === 'error-from-means' ? { count: 8 } : undefined),
      ...equation.assumptions.map((code) => assumption(code)),
      ...(names ? [assumption('fitted-range-not-known', { names })] : []),
    ]),
    cautions: Object.freeze([
      caution('note', 'estimate-is-a-start'),
      ...(evidence === 'unconfirmed' ? [caution('caution', 'equation-unconfirmed', { equation: id })] : []),
      ...postureCautions(equation, posture),
    ]),
  };
}

const knownGrounds = /* @__PURE__ */ new WeakMap<OcclusionEquation, Map<string, Grounds>>();

function sharedGrounds(equation: OcclusionEquation, posture: OcclusionReadings['posture']): Grounds {
  let byPosture = knownGrounds.get(equation);
  if (!byPosture) knownGrounds.set(equation, (byPosture = new Map()));
  let grounds = byPosture.get(posture);
  if (!grounds) byPosture.set(posture, (grounds = groundsOf(equation, posture)));
  return grounds;
}

/** What is to be watched for with these very readings. */
function ownCautions(equation: OcclusionEquation, readings: OcclusionReadings): Caution[] {
  const cautions = bloodPressureCautions(readings.systolicMmHg, readings.diastolicMmHg);
  for (const field in equation.fitted) {
    const { low, high } = equation.fitted[field as QuantityName]!;
    const value = readings[field as keyof OcclusionReadings] as number;
    if (value >= low && value <= high) continue;
    const { name, unit } = quantities[field as QuantityName];
    const words = { name, value, low, high: formatUnit(high, unit), equation: equation.id };
    const [source] = equation.sources;
    cautions.push(caution('caution', 'outside-fitted-range', words, { path: [field], ...(source && { source }) }));
  }
  if (readings.limb === 'leg' && readings.cuffWidthCm < NARROW_CM) {
    const more = { path: ['cuffWidthCm'], source: 'narrow-cuffs-2024' } as const;
    cautions.push(caution('caution', 'narrow-cuff-on-thigh', undefined, more));
  }
  return cautions;
}

/** Standard deviation of the error of an equation’s answer [mmHg]. */
export const standardDeviationOf = (error: OcclusionEquation['error'], value: number): number =>
  error.standardDeviationMmHg ?? (error.share ?? 0) * value;

/** The answer of one equation to readings that were checked and that it applies to. */
export function estimateBy(equation: OcclusionEquation, readings: OcclusionReadings): OcclusionPressure {
  const value = equation.apply(readings as Required<OcclusionReadings>);
  const { error, evidence, sources, id } = equation;
  const { assumptions, cautions } = sharedGrounds(equation, readings.posture);
  const own = ownCautions(equation, readings);
  const standardDeviation = standardDeviationOf(error, value);
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...interval(value, [{ part: 'equation', standardDeviation, evidence: error.evidence }]),
    equation: id,
    evidence,
    formula: equation.formula,
    symbols: equation.symbols,
    inputs: readings,
    assumptions,
    cautions: own.length > 0 ? [...cautions, ...own] : cautions,
    sources,
  };
}

/** The readings of an occlusion pressure, refused where they are impossible. */
export function readReadings(reader: Reader): OcclusionReadings {
  const limb = reader.choice('limb', LIMBS);
  const circumferenceCm = reader.number('circumferenceCm', limbGirth[limb]);
  const { systolicMmHg, diastolicMmHg } = readBloodPressure(reader);
  const cuffWidthCm = reader.number('cuffWidthCm');
  const posture = reader.choice('posture', POSTURES);
  const ageYears = reader.optionalNumber('ageYears');
  const sex = reader.optionalChoice('sex', SEXES);
  const readings: { -readonly [Field in keyof OcclusionReadings]: OcclusionReadings[Field] } = {
    limb,
    circumferenceCm,
    systolicMmHg,
    diastolicMmHg,
    cuffWidthCm,
    posture,
  };
  if (ageYears !== undefined) readings.ageYears = ageYears;
  if (sex !== undefined) readings.sex = sex;
  return readings;
}

/**
 * Limb occlusion pressure (LOP) from a tape measure and a blood-pressure reading.
 *
 * An estimate is a starting point: its 95 % interval is wide, and says how wide. A measurement on the
 * limb, with the cuff and in the posture of the exercise, is preferred; see {@link measuredOcclusionPressure}.
 *
 * With `equation: 'auto'` the regression fitted for the limb and cuff width is taken where there is one
 * (thigh 18 cm with age and sex, thigh 5 cm, arm 5 cm), else the width-ratio formula. Postures are never
 * mixed silently: nothing is shifted, and a caution says so.
 *
 * @param input - limb; `circumferenceCm` [cm]; `systolicMmHg`, `diastolicMmHg` [mmHg]; `cuffWidthCm` [cm];
 * posture; `ageYears` [years] and sex, for the equations that use them.
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
  const reader = new Reader(input);
  const readings = readReadings(reader);
  const asked = reader.optionalChoice('equation', EQUATION_CHOICES);
  const equation: OcclusionEquation | undefined = occlusionEquations.find((candidate) =>
    asked === undefined || asked === 'auto' ? !mismatch(candidate, readings) : candidate.id === asked,
  );
  const wrong = equation && reader.fine ? mismatch(equation, readings) : undefined;
  if (wrong) reader.report('wrong-relation', wrong.field, wrong.expected, String(readings[wrong.field]));
  reader.done();
  return estimateBy(equation!, readings);
}
