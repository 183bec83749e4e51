import { formatUnit } from '../quantity/format.js';
import { Reader } from '../answer/reader.js';
import type { OcclusionReadings } from '../pressure/equation.js';
import { estimateBy, readReadings, type OcclusionPressure } from '../pressure/estimate.js';
import { checkApplicable, type ReadingErrors } from '../pressure/uncertainty.js';
import { outsideRange } from '../pressure/estimate-messages.js';
import { quantities } from '../quantity/quantities.js';
import { OWN_READINGS, type OwnOcclusionEquation, type OwnReading } from './fitted-equation.js';
import { readOwnEquation } from './own-equation.js';
import { need } from '../answer/needs.js';
import { GIVES_PRESSURE } from './needs.js';

/** What {@link estimateWith} takes: the readings of an estimate, and those that only your own equation draws on. */
export interface OwnEstimateInput extends OcclusionReadings, ReadingErrors {
  /** Body height [cm], 60–260. */
  readonly heightCm?: number | undefined;
  /** Body mass index [kg/m²], 8–100. */
  readonly bodyMassIndex?: number | undefined;
  /** Skinfold thickness [mm], 1–120. */
  readonly skinfoldMm?: number | undefined;
}

/**
 * Limb occlusion pressure by a laboratory’s own equation: the same answer as
 * `estimateOcclusionPressure` gives by a published one, for `targetCuffPressure` and the rest.
 *
 * Its error is that of a prediction, t s √(1 + h) for the leverage h of the person, and what another posture, a cuff up
 * to 0.5 cm off and the errors of the readings put on top. How far laboratories differ is left out: the equation is
 * taken to be used where it was fitted, by the same hands, cuffs and device, on people like its sample, and that is
 * what the error was found on. Used in another laboratory it holds less well: by the shares that
 * `estimateOcclusionPressure` adds to a published equation.
 *
 * - Error: the prediction error of the fit, a symmetric interval in mmHg.
 * - Evidence: `derived`.
 * - Source: your own measurements.
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
 * import { estimateWith, fitOcclusionEquation } from 'cuffwork/study';
 * const place = { limb: 'leg', cuffWidthCm: 11, posture: 'seated' } as const;
 * const rows = Array.from({ length: 20 }, (_, i) => ({ circumferenceCm: 45 + i, valueMmHg: 150 + 2 * i + 9 * (i % 2) }));
 * const fit = fitOcclusionEquation({ id: 'lab-thigh', ...place, terms: ['circumferenceCm'], rows });
 * const readings = { ...place, systolicMmHg: 120, diastolicMmHg: 70 };
 * const [near, far] = [55, 75].map((circumferenceCm) => estimateWith(fit, { ...readings, circumferenceCm }));
 * near!.evidence; // => 'derived'
 * far!.standardDeviation! > near!.standardDeviation!; // => true
 * ```
 */
export function estimateWith(fit: OwnOcclusionEquation | object, readings: OwnEstimateInput): OcclusionPressure {
  const { equation, ranges } = readOwnEquation(fit);
  const reader = new Reader(readings);
  const { readings: common, given } = readReadings(reader);
  const own: Partial<Record<OwnReading, number>> = {};
  for (const field of OWN_READINGS) {
    const needed = equation.own.terms.some((term) => term.field === field);
    const value = needed ? reader.number(field) : reader.optionalNumber(field);
    if (value !== undefined) own[field] = value;
  }
  const taken: OcclusionReadings = { ...common, ...own };
  const pressure =
    reader.fine && checkApplicable(reader, equation, taken) ? equation.apply(taken as Required<OcclusionReadings>) : 1;
  if (!(pressure > 0)) {
    const expected = need(GIVES_PRESSURE, { equation: equation.id });
    reader.refuse('circumferenceCm', expected, formatUnit(pressure, 'mm[Hg]'));
  }
  reader.done();
  const answer = estimateBy(equation, taken, given);
  const outside = OWN_READINGS.flatMap((field) => {
    const [range, value] = [ranges[field], own[field]];
    if (!range || value === undefined || (value >= range.low && value <= range.high)) return [];
    return [outsideRange(field, quantities[field], value, range, equation.id)];
  });
  return outside.length > 0 ? { ...answer, cautions: [...answer.cautions, ...outside] } : answer;
}
