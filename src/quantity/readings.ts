import { frozen } from './frozen.js';

/** UCUM code of a unit, or an annotation in braces for a plain count. */
export type Unit =
  | 'mm[Hg]'
  | 'cm'
  | 'kg'
  | '[lb_av]'
  | 's'
  | 'min'
  | 'a'
  | '%'
  | '{reps}'
  | 'm/s'
  | '1'
  | 'mm[Hg].min'
  | '%.min'
  | '{AU}'
  | '{sessions}';

/** What a field of the vocabulary is: its name, symbol, unit and the widest range that is possible. */
export interface Quantity {
  readonly name: string;
  readonly unit: Unit;
  /** Values outside `min` to `max` are refused as impossible; the bounds are this project's own guard (`practice`). */
  readonly min: number;
  readonly max: number;
  readonly whole?: true;
  /** Units a value is likely to have been given in by mistake, with the factor to `unit`. */
  readonly slips?: readonly { readonly unit: string; readonly factor: number }[];
}

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

/** The part of the vocabulary that an occlusion pressure is estimated from: an app that only estimates ships no more. */
export const readingQuantities = /* @__PURE__ */ frozen({
  circumferenceCm: { name: 'limb circumference', unit: 'cm', min: 15, max: 120, slips: LENGTH },
  cuffWidthCm: { name: 'cuff width', unit: 'cm', min: 2, max: 40, slips: METRIC_LENGTH },
  systolicMmHg: { name: 'systolic pressure', unit: 'mm[Hg]', min: 60, max: 300, slips: KPA },
  diastolicMmHg: { name: 'diastolic pressure', unit: 'mm[Hg]', min: 30, max: 200, slips: KPA },
  ageYears: { name: 'age', unit: 'a', min: 1, max: 120, slips: [{ unit: 'months', factor: 1 / 12 }] },
  paddingCoefficient: { name: 'tissue padding coefficient', unit: '1', min: 0.1, max: 0.999 },
  circumferenceErrorCm: { name: 'standard deviation of the tape measure', unit: 'cm', min: 0, max: 10 },
  systolicErrorMmHg: { name: 'standard deviation of the systolic pressure', unit: 'mm[Hg]', min: 0, max: 50 },
  diastolicErrorMmHg: { name: 'standard deviation of the diastolic pressure', unit: 'mm[Hg]', min: 0, max: 50 },
} as const satisfies Record<ReadingName, Quantity>);

/** The narrower range in which a limb's girth is possible; it is what catches inches given for centimetres. */
export const limbGirth = /* @__PURE__ */ (() =>
  frozen({
    arm: { ...readingQuantities.circumferenceCm, name: 'arm circumference', min: 15, max: 70 },
    leg: { ...readingQuantities.circumferenceCm, name: 'thigh circumference', min: 25, max: 120 },
  } as const satisfies Record<string, Quantity>))();

export const LIMBS = ['arm', 'leg'] as const;
export const SIDES = ['left', 'right'] as const;
export const POSTURES = ['supine', 'seated', 'standing'] as const;
export const SEXES = ['male', 'female'] as const;
/** Where along the limb a circumference was taken: at its middle, or where the cuff sits. */
export const CIRCUMFERENCE_SITES = ['mid-limb', 'under-cuff'] as const;
