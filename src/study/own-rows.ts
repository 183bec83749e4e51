import { Math } from '../quantity/maths.js';
import type { Reader } from '../answer/reader.js';
import type { Range } from '../pressure/equation.js';
import { ABOVE_DIASTOLIC } from '../pressure/needs.js';
import { limbCircumference, quantities, SEXES, type Limb, type Sex } from '../quantity/quantities.js';
import { OWN_READINGS, TERM_FIELDS, type TermField } from './fitted-equation.js';
import { need, type Asked } from '../answer/needs.js';
import { ROWS } from './needs.js';

/** One person’s measured occlusion pressure with the readings to predict it from. */
export interface FitRow {
  /** Measured limb occlusion pressure [mmHg], 50–1000. */
  readonly valueMmHg: number;
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm. */
  readonly circumferenceCm?: number;
  /** Systolic blood pressure [mmHg], 60–300. */
  readonly systolicMmHg?: number;
  /** Diastolic blood pressure [mmHg], 30–200. */
  readonly diastolicMmHg?: number;
  /** Cuff width [cm], 3–40. */
  readonly cuffWidthCm?: number;
  /** Age [years], 1–120. */
  readonly ageYears?: number;
  /** Sex of the person measured. */
  readonly sex?: Sex;
  /** Body height [cm], 60–260. */
  readonly heightCm?: number;
  /** Body mass index [kg/m²], 8–100. */
  readonly bodyMassIndex?: number;
  /** Skinfold thickness [mm], 1–120. */
  readonly skinfoldMm?: number;
}

/** Rows that a fit or a resampling takes. */
export const MOST_ROWS = 10_000;

/** A row as it was read. */
export interface OwnRow {
  readonly valueMmHg: number;
  readonly readings: Readonly<Partial<Record<Exclude<TermField, 'sex'>, number>>> & { readonly sex?: Sex };
}

/** One row: refused where a needed reading is missing or a reading impossible. */
export function readRow(row: Reader, limb: Limb, needed: readonly TermField[]): OwnRow {
  const valueMmHg = row.number('valueMmHg');
  const readings: Partial<Record<Exclude<TermField, 'sex'>, number>> & { sex?: Sex } = {};
  for (const field of TERM_FIELDS) {
    const asked = needed.includes(field);
    if (field === 'sex') {
      const sex = asked ? row.choice(field, SEXES) : row.optionalChoice(field, SEXES);
      if (sex) readings.sex = sex;
    } else {
      const bounds = field === 'circumferenceCm' ? limbCircumference[limb] : quantities[field];
      const value = asked ? row.number(field, bounds) : row.optionalNumber(field, bounds);
      if (value !== undefined) readings[field] = value;
    }
  }
  const { systolicMmHg, diastolicMmHg } = readings;
  // A missing pressure compares with nothing.
  if ((systolicMmHg ?? NaN) <= (diastolicMmHg ?? NaN)) {
    row.report(
      'swapped-pressures',
      'systolicMmHg',
      need(ABOVE_DIASTOLIC, { value: diastolicMmHg!, unit: 'mm[Hg]' }),
      String(systolicMmHg),
    );
  }
  return { valueMmHg, readings };
}

/** The field `rows`, unread; an issue where there are none. */
export function rowReaders(reader: Reader): readonly Reader[] {
  const readers = reader.optionalList('rows', ROWS, MOST_ROWS);
  if (!readers && !reader.has('rows')) reader.report('missing', 'rows', ROWS);
  return readers ?? [];
}

/** Refuses the input for what its rows show together. */
export function refuse(reader: Reader, name: string, expected: Asked, received: string): never {
  reader.refuse(name, expected, received);
  return reader.done() as never;
}

export const rangeOf = (values: readonly number[]): Range => ({
  low: values.reduce((low, value) => Math.min(low, value)),
  high: values.reduce((high, value) => Math.max(high, value)),
});

/** Ranges of the readings that every row has. */
export function rangesOf(rows: readonly OwnRow[]): Partial<Record<TermField, Range>> {
  const ranges: Partial<Record<TermField, Range>> = {};
  for (const field of TERM_FIELDS) {
    if (field === 'sex' || OWN_READINGS.some((own) => own === field)) continue;
    const values = rows.map(({ readings }) => readings[field]);
    if (values.every((value) => value !== undefined)) ranges[field] = rangeOf(values);
  }
  return ranges;
}
