import type { Caution } from '../answer/answer.js';
import { FieldReader } from '../answer/field-reader.js';
import { formatUnit } from '../quantity/format.js';
import { readingQuantities as quantities } from '../quantity/readings.js';
import { caution } from './estimate-messages.js';

/** The resting brachial pressures, refused where the systolic is not above the diastolic. */
export function readBloodPressure(reader: FieldReader): { systolicMmHg: number; diastolicMmHg: number } {
  const systolicMmHg = reader.number('systolicMmHg', quantities.systolicMmHg);
  const diastolicMmHg = reader.number('diastolicMmHg', quantities.diastolicMmHg);
  if (systolicMmHg <= diastolicMmHg) {
    reader.report(
      'swapped-pressures',
      'systolicMmHg',
      `above the diastolic pressure of ${formatUnit(diastolicMmHg, 'mm[Hg]')}`,
      formatUnit(systolicMmHg, 'mm[Hg]'),
    );
  }
  return { systolicMmHg, diastolicMmHg };
}

/** A blood-pressure reading that is right, or an InputError. */
export function checkBloodPressure(reading: { readonly systolicMmHg: number; readonly diastolicMmHg: number }): void {
  const reader = new FieldReader(reading);
  readBloodPressure(reader);
  reader.done();
}

/** From here on guidance says to refer [mmHg]. */
export const REFER_SYSTOLIC = 180;
export const REFER_DIASTOLIC = 110;

/**
 * What a resting blood pressure asks for: refer from 180/110 (published), wait for the treating clinician from 160/100
 * (practice: grade 2 begins there), ask from 140/90. One of the two may be unknown.
 */
export function bloodPressureCautions(systolicMmHg?: number, diastolicMmHg?: number): Caution[] {
  const values = { systolic: systolicMmHg ?? 'unknown', diastolic: diastolicMmHg ?? 'unknown' };
  const path = [systolicMmHg === undefined ? 'diastolicMmHg' : 'systolicMmHg'];
  const from = (systolic: number, diastolic: number): boolean =>
    (systolicMmHg ?? 0) >= systolic || (diastolicMmHg ?? 0) >= diastolic;
  if (from(REFER_SYSTOLIC, REFER_DIASTOLIC)) {
    return [caution('stop', 'blood-pressure-refer', values, { path, source: 'risk-stratification-2022' })];
  }
  if (from(160, 100)) {
    return [caution('caution', 'blood-pressure-very-high', values, { path, source: 'hypertension-classes-2018' })];
  }
  if (from(140, 90)) {
    return [caution('caution', 'blood-pressure-high', values, { path, source: 'hypertension-classes-2018' })];
  }
  return [];
}
