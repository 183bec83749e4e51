import { convertLoad } from '../quantity/convert.js';
import type { LoadUnit } from '../quantity/quantities.js';
import type { OneRepMaxEquation } from './equation.js';

const POUND = '0.45359237';

/**
 * An equation and its formula for a load in `unit`. The load is converted exactly to the unit of a regression, and the
 * answer back; the formula shows both.
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
