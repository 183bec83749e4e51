import { CENTIMETRES_PER_INCH, PASCALS_PER_MMHG } from './conversion-factors.js';
import { frozen } from './frozen.js';
import type { Quantity } from './quantity.js';

export const KPA = [{ unit: 'kPa', factor: 1000 / PASCALS_PER_MMHG }] as const;
export const METRIC_LENGTH = [
  { unit: 'millimetres', factor: 0.1 },
  { unit: 'metres', factor: 100 },
] as const;
export const LENGTH = [{ unit: 'inches', factor: CENTIMETRES_PER_INCH }, ...METRIC_LENGTH] as const;

/** The name of a numeric reading. */
export type ReadingName =
  | 'circumferenceCm'
  | 'cuffWidthCm'
  | 'systolicMmHg'
  | 'diastolicMmHg'
  | 'ageYears'
  | 'paddingCoefficient'
  | 'circumferenceErrorCm'
  | 'systolicErrorMmHg'
  | 'diastolicErrorMmHg';

/**
 * The part of the vocabulary that an occlusion pressure is estimated from: an app that only estimates ships no more.
 */
export const readingQuantities = frozen({
  circumferenceCm: { name: 'limb circumference', unit: 'cm', min: 15, max: 120, slips: LENGTH },
  cuffWidthCm: { name: 'cuff width', unit: 'cm', min: 3, max: 40, slips: LENGTH },
  systolicMmHg: { name: 'systolic pressure', unit: 'mm[Hg]', min: 60, max: 300, slips: KPA },
  diastolicMmHg: { name: 'diastolic pressure', unit: 'mm[Hg]', min: 30, max: 200, slips: KPA },
  ageYears: { name: 'age', unit: 'a', min: 1, max: 120, slips: [{ unit: 'months', factor: 1 / 12 }] },
  paddingCoefficient: { name: 'tissue padding coefficient', unit: '1', min: 0.1, max: 0.999 },
  circumferenceErrorCm: { name: 'standard deviation of the tape measure', unit: 'cm', min: 0, max: 10 },
  systolicErrorMmHg: { name: 'standard deviation of the systolic pressure', unit: 'mm[Hg]', min: 0, max: 50 },
  diastolicErrorMmHg: { name: 'standard deviation of the diastolic pressure', unit: 'mm[Hg]', min: 0, max: 50 },
} as const satisfies Record<ReadingName, Quantity>);

/** The narrower range in which a limb’s circumference is possible; it catches inches given for centimetres. */
export const limbCircumference = frozen({
  arm: { ...readingQuantities.circumferenceCm, name: 'arm circumference', max: 70 },
  leg: { ...readingQuantities.circumferenceCm, name: 'thigh circumference', min: 25 },
} as const satisfies Record<string, Quantity>);

export const LIMBS = ['arm', 'leg'] as const;
/** Limb the cuff is on. */
export type Limb = (typeof LIMBS)[number];

export const SIDES = ['left', 'right'] as const;
/** Side of the body. */
export type Side = (typeof SIDES)[number];

export const POSTURES = ['supine', 'seated', 'standing'] as const;
/** Posture in which a pressure holds. */
export type Posture = (typeof POSTURES)[number];

export const SEXES = ['male', 'female'] as const;
/** Sex, as the fitted equations code it. */
export type Sex = (typeof SEXES)[number];

export const CIRCUMFERENCE_SITES = ['mid-limb', 'under-cuff'] as const;
/** Where along the limb a circumference was taken: halfway (or at a third of the thigh’s length), or under the cuff. */
export type CircumferenceSite = (typeof CIRCUMFERENCE_SITES)[number];
