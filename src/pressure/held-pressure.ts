import type { Answer, Assumption } from '../answer/answer.js';
import { pressureCautions } from '../answer/guards.js';
import { readAnswer, type AnswerRequirement } from '../answer/read-answer.js';
import type { Asked } from '../answer/needs.js';
import type { PlainReader } from '../answer/plain-reader.js';
import {
  LIMBS,
  POSTURES,
  settingQuantities,
  SIDES,
  type Limb,
  type Posture,
  type Side,
} from '../quantity/quantities.js';
import { assumption } from './assumptions.js';
import { PRESSURE_OR_NUMBER } from './needs.js';

type Pressure = Answer<'occlusion-pressure'>;

const ENTERED = 'entered';

/** What an occlusion pressure that is given back must be. */
export function pressureRequirement(makers: Asked): AnswerRequirement<'occlusion-pressure'> {
  const { min, max } = settingQuantities.occlusionMmHg;
  return { kind: 'occlusion-pressure', makers, units: ['mm[Hg]'], min: min / 2, max: max * 4 };
}

/** What we assume of an occlusion pressure that was entered as a plain number. */
export const exactness = ({ equation }: Pressure): readonly Assumption[] =>
  equation === ENTERED ? [assumption('occlusion-exact')] : [];

/** A plain number [mmHg] as an occlusion pressure, which we take as exact. */
export const enteredPressure = (valueMmHg: number): Pressure => ({
  kind: 'occlusion-pressure',
  value: valueMmHg,
  unit: 'mm[Hg]',
  equation: ENTERED,
  evidence: 'definition',
  inputs: { valueMmHg },
  assumptions: [assumption('occlusion-exact')],
  cautions: pressureCautions('occlusion-pressure', valueMmHg, { path: ['occlusion'] }),
});

/** An occlusion pressure that you hold: an answer, or a plain number [mmHg]. The value is NaN where it is wrong. */
export const readPressure = (reader: PlainReader, name: string): Pressure =>
  readAnswer(reader, name, pressureRequirement(PRESSURE_OR_NUMBER), false, (value) =>
    enteredPressure(reader.acceptNumber(name, settingQuantities.occlusionMmHg, value) ?? NaN),
  );

/** Where an occlusion pressure holds; what the answer does not say is left out. */
export interface PressurePlace {
  readonly limb: Limb | undefined;
  readonly side: Side | undefined;
  readonly posture: Posture | undefined;
  readonly cuffWidthCm: number | undefined;
  /** Day it was measured. */
  readonly date: string | undefined;
}

const amongst = <T extends string>(options: readonly T[], given: unknown): T | undefined =>
  options.find((option) => option === given);

/** Where an occlusion pressure holds: the limb, side, posture and cuff of its inputs, or those it was converted to. */
export function placeOf({ inputs }: Pressure): PressurePlace {
  const given: Readonly<Record<string, unknown>> = inputs ?? {};
  const width = given['toWidthCm'] ?? given['cuffWidthCm'];
  const { date } = given;
  return {
    limb: amongst(LIMBS, given['limb']),
    side: amongst(SIDES, given['side']),
    posture: amongst(POSTURES, given['toPosture'] ?? given['posture']),
    cuffWidthCm: typeof width === 'number' ? width : undefined,
    date: typeof date === 'string' ? date : undefined,
  };
}
