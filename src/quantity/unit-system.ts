import { CENTIMETRES_PER_INCH } from './conversion-factors.js';
import { convertLoad } from './convert.js';
import { scaled } from './decimal.js';
import { Math } from './maths.js';
import type { Unit } from './quantities.js';

export const UNIT_SYSTEMS = ['metric', 'imperial'] as const;
/** The units that numbers are written in: kilograms and centimetres, or pounds and inches. Pressures stay in mmHg. */
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

/** UCUM code of a unit that a number is written in: that of the library, or inches. */
export type WrittenUnit = Unit | '[in_i]';

/** A number with the unit it is written in. */
export interface Written {
  readonly value: number;
  readonly unit: WrittenUnit;
}

/**
 * A value in the unit of a system, converted in decimals: kg and lb, cm and in. What the system has no other unit for
 * stays as it is, and so does everything where no system is asked for.
 */
export function inSystem(value: number, unit: WrittenUnit, system: UnitSystem | undefined): Written {
  if (system === 'imperial' && unit === 'kg') return { value: convertLoad(value, 'kg', 'lb'), unit: '[lb_av]' };
  if (system === 'imperial' && unit === 'cm') return { value: scaled(value, 1, CENTIMETRES_PER_INCH), unit: '[in_i]' };
  if (system === 'metric' && unit === '[lb_av]') return { value: convertLoad(value, 'lb', 'kg'), unit: 'kg' };
  return { value, unit };
}

/** Converted bounds at two decimals, rounded inwards: what they allow is allowed. Taken at 12 digits, so that whole is whole. */
export const inwards = (min: number, max: number): readonly [min: number, max: number] => [
  Math.ceil(Number((min * 100).toPrecision(12))) / 100,
  Math.floor(Number((max * 100).toPrecision(12))) / 100,
];
