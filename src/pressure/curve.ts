import type { Posture } from '../quantity/quantities.js';
import { Math, square } from '../quantity/maths.js';

/*
 * The pooled curve: limb occlusion pressure from the blood pressures, circumference over cuff width, and posture.
 * docs/working/pooled-curve.ts fits it and its errors. Errors are shares of the pressure above diastolic, so that
 * no interval reaches the diastolic pressure.
 */

/** The error of a pooled curve, as shares of the pressure above diastolic; widened by Student’s t for few cuffs. */
export interface CurveError {
  /** People of the same circumference and blood pressure about the curve of their laboratory. */
  readonly people: number;
  /** A new laboratory with its own cuff. */
  readonly laboratory: number;
  /** Variances and covariance of b and of the share a of the pulse pressure. */
  readonly variance: { readonly b: number; readonly a: number; readonly both: number };
  /** Standard deviation of the slope with the middle of the blood pressures, which is taken as 1 from 95 mmHg on. */
  readonly level: number;
  /** Variance of ln h of each posture, and its covariance with b and a. */
  readonly posture: Readonly<Record<Posture, { readonly h: number; readonly b: number; readonly a: number }>>;
}

/** Middle of the blood pressures of the nominal person [mmHg]. */
const NOMINAL_MIDDLE = 95;

/** How cuffs of one laboratory differ from the curve, as a share of the pressure above diastolic; widened by t. */
export const CUFF_DEVIATION = 0.23;

/** Pressure above diastolic lying down: half the pulse pressure, and b for each C / W. */
export const aboveDiastolic = (b: number, ratio: number, pulseMmHg: number): number => pulseMmHg / 2 + b * ratio;

/**
 * Standard deviation of a curve’s own error as a share of the pressure above diastolic: it grows with the distance of
 * width, circumference and blood pressures from the data. The constants come one by one, so a loop keeps them at hand.
 */
export function curveDeviation(
  above: number,
  ratio: number,
  pulseMmHg: number,
  middleMmHg: number,
  varianceB: number,
  varianceA: number,
  covariance: number,
  level: number,
  varianceH: number,
  withB: number,
  withA: number,
): number {
  const b = ratio / above;
  const a = pulseMmHg / above;
  const variance =
    b * (b * varianceB + 2 * (a * covariance + withB)) +
    a * (a * varianceA + 2 * withA) +
    square((level * (middleMmHg - NOMINAL_MIDDLE)) / above) +
    varianceH;
  return Math.sqrt(variance);
}

/** A whole curve of one limb. */
export interface PooledCurve {
  /** Pressure above diastolic for each C / W [mmHg]. */
  readonly b: number;
  /** What a posture multiplies the pressure above diastolic by. */
  readonly h: Readonly<Record<Posture, number>>;
  readonly error: CurveError;
}

/** What a curve draws on. */
export interface CurveReadings {
  readonly circumferenceCm: number;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  readonly cuffWidthCm: number;
  readonly posture: Posture;
}

/** The curve’s own error for readings, as a share of the pressure above diastolic. */
export function ownDeviation({ b, error }: PooledCurve, r: CurveReadings): number {
  const { variance, level, posture } = error;
  const own = posture[r.posture];
  const pulse = r.systolicMmHg - r.diastolicMmHg;
  const ratio = r.circumferenceCm / r.cuffWidthCm;
  return curveDeviation(
    aboveDiastolic(b, ratio, pulse),
    ratio,
    pulse,
    (r.systolicMmHg + r.diastolicMmHg) / 2,
    variance.b,
    variance.a,
    variance.both,
    level,
    own.h,
    own.b,
    own.a,
  );
}
