import { convertLoad } from '../quantity/convert.js';
import type { LoadUnit } from '../quantity/quantities.js';
import type { OneRepMaxEquation } from './equation.js';

const POUND = '0.45359237';

/**
 * An equation and its formula as they stand for a load in `unit`. A regression is never fed another unit than its own:
 * the load is converted to it, exactly, and the answer back, and the formula says so.
 */
export function inUnit(equation: OneRepMaxEquation, unit: LoadUnit) {
  const { unit: own = unit, apply, formula } = equation;
  if (own === unit) return { apply, formula };
  const [there, back] = own === 'kg' ? ['*', '/'] : ['/', '*'];
  return {
    apply: (load: number, r: number): number => convertLoad(apply(convertLoad(load, unit, own), r), own, unit),
    formula: `(${formula.replace(/\bw\b/g, `(w ${there} ${POUND})`)}) ${back} ${POUND}`,
  };
}
