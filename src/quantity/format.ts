import { Math } from './maths.js';
import type { Unit } from './quantities.js';
import type { WrittenUnit } from './unit-system.js';

/** What is written after a number for its unit. */
export const unitWords: Record<WrittenUnit, string> = {
  'mm[Hg]': ' mmHg',
  cm: ' cm',
  kg: ' kg',
  '[lb_av]': ' lb',
  '[in_i]': ' in',
  s: ' s',
  min: ' min',
  a: ' years',
  '%': ' %',
  '{reps}': ' repetitions',
  'm/s': ' m/s',
  mm: ' mm',
  'kg/m2': ' kg/m²',
  '1': '',
  'mm[Hg].min': ' mmHg·min',
  '%.min': ' % of LOP·min',
  '{AU}': ' AU',
  '{sessions}': ' sessions',
};

/** A number for people to read: at most two decimals (or four significant digits below one), no trailing zeros. */
export const format = (value: number): string =>
  String(Math.abs(value) < 1 ? Number(value.toPrecision(4)) : Number(value.toFixed(2)));

/** Decimals that people read with a unit; two where it is not here. */
const DECIMALS: Partial<Record<WrittenUnit, number>> = {
  'mm[Hg]': 0,
  min: 1,
  '%': 1,
  'mm[Hg].min': 0,
  '%.min': 0,
  '{AU}': 0,
};

/** A number that was worked out, with as many decimals as people use: more where it would look like one of `others`. */
export function inPractice(value: number, unit: string, others: readonly number[] = [], most = 2): string {
  const fewest = Math.min(most, DECIMALS[unit as WrittenUnit] ?? 2);
  for (let decimals = fewest; decimals < 2; decimals++) {
    const rounded = Number(value.toFixed(decimals));
    if ([0, ...others].every((other) => value === other || (value - other) * (rounded - other) > 0))
      return String(rounded);
  }
  return format(value);
}

/** A number in full: doubles hold no more digits that mean something. */
export const inFull = (value: number): string =>
  // Whole numbers up to 12 digits are written as they are, without a detour that takes time.
  String(Number.isInteger(value) && Math.abs(value) < 1e12 ? value : Number(value.toPrecision(12)));

/** A number with its unit as people write it. */
export const formatUnit = (value: number, unit: Unit): string => format(value) + unitWords[unit];

/** Seconds as minutes and seconds: 390 is 6:30. */
export function clock(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
