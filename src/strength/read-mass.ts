import type { Answer, Assumption, Inputs } from '../answer/answer.js';
import { readAnswer, type AnswerRequirement } from '../answer/read-answer.js';
import type { Asked } from '../answer/needs.js';
import type { Reader } from '../answer/reader.js';
import { inLoadUnit, loadUnitCode, quantities, type LoadUnit, type Quantity } from '../quantity/quantities.js';
import { assumption } from './assumptions.js';
import { BODY_MASS_OR_NUMBER, MAXIMUM_OR_NUMBER } from './needs.js';

/** The masses that can be numbers or answers: their ranges, and what we assume of a plain number. */
const MASSES = {
  'one-repetition-maximum': {
    quantity: quantities.load,
    least: quantities.load.min,
    most: quantities.load.max * 40,
    code: 'one-rep-max-exact',
    makers: MAXIMUM_OR_NUMBER,
  },
  'body-mass-load': {
    quantity: { ...quantities.bodyMass, min: 0 } as Quantity,
    least: 0,
    most: quantities.bodyMass.max,
    code: 'body-mass-load-exact',
    makers: BODY_MASS_OR_NUMBER,
  },
} as const;

type Mass = keyof typeof MASSES;

/** What a mass that is given back must be. */
export function massRequirement<K extends Mass>(kind: K, makers: Asked = MASSES[kind].makers): AnswerRequirement<K> {
  const { least, most } = MASSES[kind];
  return { kind, makers, units: ['kg', '[lb_av]'], min: least, max: most };
}

const ENTERED = 'entered';

/** What we assume of a mass that was entered as a plain number. */
export const exactness = ({ kind, equation }: Pick<Answer<Mass>, 'kind' | 'equation'>): readonly Assumption[] =>
  equation === ENTERED ? [assumption(MASSES[kind].code)] : [];

/** A plain number [`unit`] as a mass, which we take as exact. */
export const enteredMass = <K extends Mass>(kind: K, value: number, unit: LoadUnit): Answer<K> => ({
  kind,
  value,
  unit: loadUnitCode(unit),
  equation: ENTERED,
  evidence: 'definition',
  inputs: { load: value, unit } as Inputs<K>,
  assumptions: [assumption(MASSES[kind].code)],
  cautions: [],
});

/** A mass: an answer, or a plain number [`unit`], which we take as exact. The value is NaN where it is left out. */
export function readMass<K extends Mass>(
  reader: Reader,
  name: string,
  kind: K,
  unit: LoadUnit,
  optional = false,
): Answer<K> {
  const quantity = inLoadUnit(MASSES[kind].quantity, loadUnitCode(unit));
  return readAnswer(reader, name, massRequirement(kind), optional, (value) =>
    enteredMass(kind, reader.acceptNumber(name, quantity, value) ?? NaN, unit),
  );
}
