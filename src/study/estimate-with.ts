import { Reader } from '../answer/reader.js';
import type { OcclusionReadings } from '../pressure/equation.js';
import { estimateBy, mismatch, readReadings, type OcclusionPressure } from '../pressure/estimate.js';
import { equationFromFit, type FittedOcclusionEquation } from './fitted-equation.js';

/**
 * Limb occlusion pressure by a laboratory’s own equation: the same answer as
 * `estimateOcclusionPressure` gives by a published one, for `targetCuffPressure` and the rest.
 *
 * @param fit - an equation of {@link fitOcclusionEquation}, perhaps read back from JSON
 * @param readings - limb; `circumferenceCm` [cm]; `systolicMmHg`, `diastolicMmHg` [mmHg]; `cuffWidthCm` [cm];
 * posture; `ageYears` [years] and sex where the equation uses them
 * @returns LOP [mmHg], grade `derived`, with its interval, assumptions and cautions.
 * @throws InputError naming every wrong field, or the one that the equation does not apply to.
 *
 * @example
 * ```ts
 * import { estimateWith } from 'cuffwork/study';
 * const fit = {
 *   document: 'fitted-occlusion-equation', id: 'lab-thigh', limb: 'leg', cuffWidthCm: 11, posture: 'seated',
 *   people: 40, leaveOneOutMmHg: 12, intercept: { coefficient: 20 },
 *   terms: [{ field: 'circumferenceCm', coefficient: 2.5, low: 45, high: 65 }],
 * };
 * const lop = estimateWith(fit, {
 *   limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 11, posture: 'seated',
 * });
 * [lop.value, lop.standardDeviation, lop.evidence]; // => [157.5, 12, 'derived']
 * ```
 */
export function estimateWith(fit: FittedOcclusionEquation | object, readings: OcclusionReadings): OcclusionPressure {
  const equation = equationFromFit(fit);
  const reader = new Reader(readings);
  const taken = readReadings(reader);
  const wrong = reader.fine ? mismatch(equation, taken) : undefined;
  if (wrong) reader.report('wrong-relation', wrong.field, wrong.expected, String(taken[wrong.field]));
  else if (reader.fine && !(equation.apply(taken as Required<OcclusionReadings>) > 0)) {
    reader.report('wrong-relation', 'circumferenceCm', `readings for which ${equation.id} gives a pressure`, 'others');
  }
  reader.done();
  return estimateBy(equation, taken);
}
