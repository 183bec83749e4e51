import type { Answer } from '../answer/answer.js';
import { describe, type Path } from '../answer/issues.js';
import { need, oneOf, type Asked } from '../answer/needs.js';
import { isPart } from '../answer/part.js';
import { isSoundAnswer, readAnswer } from '../answer/read-answer.js';
import type { Reader } from '../answer/reader.js';
import { formatUnit } from '../quantity/format.js';
import { LIMBS, POSTURES, quantities, SIDES, type Quantity } from '../quantity/quantities.js';
import { deviationInUnit } from './answer-spread.js';
import { EQUATION_IDS } from './equations.js';
import { pressureRequirement } from './held-pressure.js';
import {
  ABOVE_DIASTOLIC,
  ABOVE_ESTIMATE_DIASTOLIC,
  AS_IN_ESTIMATE,
  ESTIMATE_MAKERS,
  ESTIMATE_WITH,
  LEAST_ERROR,
  MEASUREMENT,
  MEASUREMENTS,
  OF_MEASUREMENT,
} from './needs.js';

type Pressure = Answer<'occlusion-pressure'>;

const MOST_MEASUREMENTS = 100;

const fits = ({ min, max }: Quantity, value: unknown): value is number =>
  typeof value === 'number' && value >= min && value <= max;

/** An error that can be weighed against another: nothing is measured without one. */
const isError = (value: unknown): boolean => fits({ ...quantities.standardDeviationMmHg, min: 0.1, max: 1e6 }, value);

/** The inputs of an answer that may have been changed by hand. */
const inputsOf = ({ inputs }: Partial<Pressure>): Answer['inputs'] => (isPart(inputs) ? inputs : {});

/** By a published equation, or by your own. */
const isEstimate = ({ equation, assumptions }: Partial<Pressure>): boolean =>
  EQUATION_IDS.some((id) => id === equation) ||
  (Array.isArray(assumptions) && assumptions.some((one: { code?: unknown } | null) => one?.code === 'own-laboratory'));

/** What the inputs of an estimate must have. */
const WORDS = [
  ['limb', LIMBS],
  ['side', SIDES],
  ['posture', POSTURES],
] as const;
const NUMBERS = ['circumferenceCm', 'cuffWidthCm', 'systolicMmHg', 'diastolicMmHg'] as const;

/** The estimate, with all that measurements are compared with. */
export function readEstimate(reader: Reader): Pressure {
  const estimate = readAnswer(reader, 'estimate', pressureRequirement(ESTIMATE_MAKERS));
  if (!reader.fine) return estimate;
  const inputs = inputsOf(estimate);
  const faults = [
    ...WORDS.filter(([field, options]) => !options.some((option) => option === inputs[field])).map(([field]) => field),
    ...NUMBERS.filter((field) => !fits(quantities[field], inputs[field])),
    ...(isError(deviationInUnit(estimate)) ? [] : ['standardDeviation']),
  ];
  const [systolic, diastolic] = [Number(inputs['systolicMmHg']), Number(inputs['diastolicMmHg'])];
  if (!isEstimate(estimate)) reader.refuse('estimate', ESTIMATE_MAKERS, describe(estimate.equation));
  else if (faults.length > 0) reader.refuse('estimate', need(ESTIMATE_WITH, { fields: faults }), 'one without');
  else if (systolic <= diastolic) {
    const expected = need(ABOVE_DIASTOLIC, { value: diastolic, unit: 'mm[Hg]' });
    reader.refuse(['estimate', 'inputs', 'systolicMmHg'], expected, formatUnit(systolic, 'mm[Hg]'));
  }
  return estimate;
}

/** Refuses a measurement that cannot inform the estimate, by the first field that keeps it from that. */
function checkMeasurement(reader: Reader, path: Path, measured: Pressure, estimate: Pressure): void {
  const { value, equation, standardDeviation } = measured;
  const inputs = inputsOf(measured);
  const wanted = inputsOf(estimate);
  const diastolic = Number(wanted['diastolicMmHg']);
  const refuse = (field: Path, expected: Asked, received?: string): void =>
    reader.refuse([...path, ...field], expected, received);
  const refuseInput = (field: string, expected: Asked): void =>
    refuse(['inputs', field], expected, describe(inputs[field]));
  const readInput = (field: 'cuffWidthCm' | 'day'): unknown =>
    reader.acceptNumber([...path, 'inputs', field], quantities[field], inputs[field]);
  if (typeof equation !== 'string' || !equation.startsWith('measured-'))
    return refuse(['equation'], OF_MEASUREMENT, describe(equation));
  if (!isError(deviationInUnit(measured)))
    return refuse(
      ['standardDeviation'],
      need(LEAST_ERROR, { least: 0.1, unit: 'mm[Hg]' }),
      describe(standardDeviation),
    );
  if (value <= diastolic) {
    const expected = need(ABOVE_ESTIMATE_DIASTOLIC, { value: diastolic, unit: 'mm[Hg]' });
    return refuse(['value'], expected, formatUnit(value, 'mm[Hg]'));
  }
  const other = (['limb', 'posture'] as const).find((field) => inputs[field] !== wanted[field]);
  if (other) return refuseInput(other, need(AS_IN_ESTIMATE, { asked: String(wanted[other]) }));
  if (!SIDES.some((side) => side === inputs['side'])) return refuseInput('side', oneOf(SIDES));
  readInput('cuffWidthCm');
  if (inputs['day'] !== undefined) readInput('day');
}

/** The measurements, each fit to inform the estimate. */
export function readMeasurements(reader: Reader, estimate: Pressure): Pressure[] {
  const expected = need(MEASUREMENTS, { most: MOST_MEASUREMENTS });
  const list = reader.anything('measurements', expected);
  if (list === undefined) return [];
  if (!Array.isArray(list) || list.length === 0 || list.length > MOST_MEASUREMENTS) {
    reader.report('wrong-type', 'measurements', expected, describe(list));
    return [];
  }
  const { fine } = reader;
  const { min, max } = quantities.valueMmHg;
  const requirement = { kind: 'occlusion-pressure', makers: MEASUREMENT, units: ['mm[Hg]'], min, max } as const;
  list.forEach((item: unknown, index) => {
    const path = ['measurements', index];
    if (isSoundAnswer(reader, path, item, requirement) && fine)
      checkMeasurement(reader, path, item as Pressure, estimate);
  });
  return list as Pressure[];
}
