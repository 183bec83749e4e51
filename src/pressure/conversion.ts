import type { ErrorPart } from '../answer/answer.js';
import { logInterval } from '../answer/interval.js';
import type { Path } from '../answer/issues.js';
import type { Reader } from '../answer/reader.js';
import { formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { need } from '../answer/needs.js';
import { ABOVE_DIASTOLIC, CONVERSION_ABOVE_DIASTOLIC, CONVERSION_SPAN } from './needs.js';

/**
 * A converted pressure whose 95 % interval spans more than this, upper / lower, is refused as useless. The published
 * conversion from 12 to 5 cm on the thigh, which its own publication finds not valid, spans 189 to 470 mmHg about a
 * mean of 336.8: 2.5.
 */
const MOST_SPAN = 2.5;

/** A pressure converted to another cuff or posture, and what its error is made of. */
export interface Conversion {
  readonly valueMmHg: number;
  readonly occlusionMmHg: number;
  readonly diastolicMmHg: number;
  /** Error of the conversion itself, as a share of the pressure above diastolic. */
  readonly part: 'width-correction' | 'posture';
  readonly deviation: number;
  /** Error of the pressure that is converted; it stays the same share of the pressure above diastolic. */
  readonly standardDeviationMmHg: number | undefined;
}

/** The log-normal interval of a converted pressure. */
export function conversionInterval(conversion: Conversion) {
  const { valueMmHg, occlusionMmHg, diastolicMmHg, part, deviation, standardDeviationMmHg } = conversion;
  const above = (valueMmHg - diastolicMmHg) / valueMmHg;
  const errors: ErrorPart[] = [{ part, standardDeviation: deviation * above, evidence: 'derived' }];
  if (standardDeviationMmHg !== undefined) {
    const share = standardDeviationMmHg / (occlusionMmHg - diastolicMmHg);
    errors.push({ part: 'occlusion', standardDeviation: share * above, evidence: 'practice' });
  }
  return logInterval(valueMmHg, errors);
}

/** Refuses a pressure at or below the diastolic one, at which no artery closes; one already refused is NaN, and passes. */
export function refuseBelowDiastolic(reader: Reader, occlusionMmHg: number, diastolicMmHg: number): void {
  if (occlusionMmHg <= diastolicMmHg) {
    const expected = need(ABOVE_DIASTOLIC, { value: diastolicMmHg, unit: 'mm[Hg]' });
    reader.refuse('occlusionMmHg', expected, String(occlusionMmHg));
  }
}

/** What keeps an interval from being useless, where it is. */
function uselessBound({ lower, upper }: { readonly lower: number; readonly upper: number }, diastolicMmHg: number) {
  if (lower <= diastolicMmHg) return need(CONVERSION_ABOVE_DIASTOLIC, { value: diastolicMmHg, unit: 'mm[Hg]' });
  return upper > MOST_SPAN * lower ? need(CONVERSION_SPAN, { most: MOST_SPAN }) : undefined;
}

/**
 * Refuses a conversion that is useless by its interval: the error that was given with the pressure where that alone
 * makes it so, else the field that says what it is converted to.
 */
export function refuseUseless(reader: Reader, conversion: Conversion, field: string | Path): void {
  const { diastolicMmHg, standardDeviationMmHg } = conversion;
  const ends = conversionInterval(conversion);
  const bound = uselessBound(ends, diastolicMmHg);
  if (!reader.fine || bound === undefined) return;
  const exact = conversionInterval({ ...conversion, standardDeviationMmHg: undefined });
  const byError = standardDeviationMmHg !== undefined && uselessBound(exact, diastolicMmHg) === undefined;
  const received = `${Math.round(ends.lower)}–${formatUnit(Math.round(ends.upper), 'mm[Hg]')}`;
  reader.refuse(byError ? 'standardDeviationMmHg' : field, bound, received);
}
