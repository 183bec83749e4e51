import { Reader } from '../answer/reader.js';
import type { OcclusionReadings } from '../pressure/equation.js';
import { estimateBy, readReadings, type OcclusionPressure } from '../pressure/estimate.js';
import { inapplicableField, requirement, type ReadingErrors } from '../pressure/uncertainty.js';
import { equationFromFit, type FittedOcclusionEquation } from './fitted-equation.js';

/**
 * Limb occlusion pressure by a laboratory’s own equation: the same answer as
 * `estimateOcclusionPressure` gives by a published one, for `targetCuffPressure` and the rest.
 *
 * Its error is the leave-one-out error of the fit, and what another posture, a cuff up to 0.5 cm off and the errors of
 * the readings put on top. How far laboratories differ is left out: the equation is taken to be used where it was
 * fitted, by the same hands, cuffs and device, on people like its sample, and that is what the leave-one-out error
 * was found on. Used in another laboratory it holds less well: by the shares that `estimateOcclusionPressure` adds to
 * a published equation.
 *
 * - Error: the leave-one-out error of the fit.
 * - Evidence: `derived`.
 * - Source: the caller’s own measurements.
 *
 * @param fit - an equation of {@link fitOcclusionEquation}, perhaps read back from JSON
 * @param readings - limb; `circumferenceCm` [cm]; `systolicMmHg`, `diastolicMmHg` [mmHg]; `cuffWidthCm` [cm];
 * posture; `ageYears` [years] and sex where the equation uses them; the errors of the readings where they are known,
 * as for `estimateOcclusionPressure`
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
 * [lop.value, Math.round(lop.standardDeviation! * lop.value), lop.evidence]; // => [157.5, 12, 'derived']
 * ```
 */
export function estimateWith(
  fit: FittedOcclusionEquation | object,
  readings: OcclusionReadings & ReadingErrors,
): OcclusionPressure {
  const equation = equationFromFit(fit);
  const reader = new Reader(readings);
  const { readings: taken, given } = readReadings(reader);
  const field = reader.fine ? inapplicableField(equation, taken) : undefined;
  if (field) reader.report('wrong-relation', field, requirement(equation, field), String(taken[field]));
  else if (reader.fine && !(equation.apply(taken as Required<OcclusionReadings>) > 0)) {
    reader.report('wrong-relation', 'circumferenceCm', `readings for which ${equation.id} gives a pressure`, 'others');
  }
  reader.done();
  return estimateBy(equation, taken, given);
}
