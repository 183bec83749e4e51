import type { Reader } from '../answer/reader.js';
import { inLoadUnit, LOAD_UNITS, type LoadUnit, loadUnitCode, quantities } from '../quantity/quantities.js';

/** A load in its `unit`; kg when left out. */
export function readLoad(reader: Reader): { load: number; unit: LoadUnit } {
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  return { load: reader.number('load', inLoadUnit(quantities.load, loadUnitCode(unit))), unit };
}
