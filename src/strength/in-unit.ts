import { convertLoad } from '../quantity/convert.js';
import type { LoadUnit } from '../quantity/quantities.js';
import type { OneRepMaxEquation } from './equation.js';

/** An equation for a load in `unit`: the load is converted exactly to the unit of a regression, and the answer back. */
export function inUnit({ unit: own, apply }: OneRepMaxEquation, unit: LoadUnit): OneRepMaxEquation['apply'] {
  if (own === undefined || own === unit) return apply;
  return (load, r) => convertLoad(apply(convertLoad(load, unit, own), r), own, unit);
}
