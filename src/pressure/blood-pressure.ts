import type { Caution } from '../answer/answer.js';
import { FieldReader } from '../answer/field-reader.js';
import { need } from '../answer/needs.js';
import { formatUnit } from '../quantity/format.js';
import { readingQuantities as quantities } from '../quantity/readings.js';
import { caution } from './estimate-messages.js';
import { ABOVE_DIASTOLIC } from './needs.js';

/** The resting brachial pressures, refused where the systolic is not above the diastolic. */
export function readBloodPressure(reader: FieldReader): { systolicMmHg: number; diastolicMmHg: number } {
  const systolicMmHg = reader.number('systolicMmHg', quantities.systolicMmHg);
  const diastolicMmHg = reader.number('diastolicMmHg', quantities.diastolicMmHg);
  if (systolicMmHg <= diastolicMmHg) {
    reader.report(
      'swapped-pressures',
      'systolicMmHg',
      need(ABOVE_DIASTOLIC, { value: diastolicMmHg, unit: 'mm[Hg]' }),
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
 * The lines of a resting blood pressure [mmHg], most severe first. From 180/110 guidance says to refer (published). At
 * 160/100 grade 2 of the European classes begins; that no cuff is used from there until the treating clinician agrees
 * is practice. From 140/90 the classes speak of hypertension.
 */
const LINES = [
  {
    systolic: REFER_SYSTOLIC,
    diastolic: REFER_DIASTOLIC,
    severity: 'stop',
    code: 'blood-pressure-refer',
    source: 'risk-stratification-2022',
  },
  {
    systolic: 160,
    diastolic: 100,
    severity: 'stop',
    code: 'blood-pressure-very-high',
    source: 'hypertension-classes-2018',
  },
  {
    systolic: 140,
    diastolic: 90,
    severity: 'caution',
    code: 'blood-pressure-high',
    source: 'hypertension-classes-2018',
  },
] as const;

/**
 * What a resting blood pressure asks for: a stop from 160/100, which a decision can lift, a caution from 140/90. One of
 * the two readings may be unknown; `high` says which of them is at the line or above it.
 */
export function bloodPressureCautions(systolicMmHg?: number, diastolicMmHg?: number): Caution[] {
  const isUpper = (line: number): boolean => (systolicMmHg ?? 0) >= line;
  const isLower = (line: number): boolean => (diastolicMmHg ?? 0) >= line;
  const line = LINES.find(({ systolic, diastolic }) => isUpper(systolic) || isLower(diastolic));
  if (!line) return [];
  const { severity, code, source } = line;
  const high = !isLower(line.diastolic) ? 'systolic' : isUpper(line.systolic) ? 'both' : 'diastolic';
  const values = {
    systolic: systolicMmHg ?? 'unknown',
    diastolic: diastolicMmHg ?? 'unknown',
    high,
    systolicLine: line.systolic,
    diastolicLine: line.diastolic,
  };
  return [caution(severity, code, values, { path: [high === 'diastolic' ? 'diastolicMmHg' : 'systolicMmHg'], source })];
}
