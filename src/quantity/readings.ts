import { frozen } from './frozen.js';
import type { Quantity } from './quantity.js';

export const KPA = [{ unit: 'kPa', factor: 1000 / 133.322387415 }] as const;
export const METRIC_LENGTH = [
  { unit: 'millimetres', factor: 0.1 },
  { unit: 'metres', factor: 100 },
] as const;
export const LENGTH = [{ unit: 'inches', factor: 2.54 }, ...METRIC_LENGTH] as const;

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
  arm: { ...readingQuantities.circumferenceCm, name: 'arm circumference', min: 15, max: 70 },
  leg: { ...readingQuantities.circumferenceCm, name: 'thigh circumference', min: 25, max: 120 },
} as const satisfies Record<string, Quantity>);

export const LIMBS = ['arm', 'leg'] as const;
export const SIDES = ['left', 'right'] as const;
export const POSTURES = ['supine', 'seated', 'standing'] as const;
export const SEXES = ['male', 'female'] as const;
/** Where along the limb a circumference was taken: at its middle, or where the cuff sits. */
export const CIRCUMFERENCE_SITES = ['mid-limb', 'under-cuff'] as const;
