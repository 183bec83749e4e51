import type { Posture } from '../quantity/quantities.js';
import { Math, square } from '../quantity/maths.js';

/*
 * The pooled curve: limb occlusion pressure from the blood pressures, circumference over cuff width, and posture.
 * docs/working/pooled-curve.ts fits it and its errors. Errors are shares of the pressure above diastolic, so that
 * no interval reaches the diastolic pressure.
 */

/** The error of a pooled curve, as shares of the pressure above diastolic; widened by Student’s t for few cuffs. */
export interface CurveError {
  /** Standard deviation of people of the same circumference and blood pressure, about the curve of their laboratory. */
  readonly people: number;
  /** Standard deviation of a new laboratory with its own cuff. */
  readonly laboratory: number;
  /** Variances and covariance of b and of the share a of the pulse pressure. */
  readonly variance: {
    /** Variance of b. */
    readonly b: number;
    /** Variance of a. */
    readonly a: number;
    /** Covariance of b and a. */
    readonly both: number;
  };
  /** Standard deviation of the slope with the middle of the blood pressures, which is taken as 1 from 95 mmHg on. */
  readonly level: number;
  /** Variance of ln h of each posture, and its covariance with b and a. */
  readonly posture: Readonly<
    Record<
      Posture,
      {
        /** Variance of ln h. */
        readonly h: number;
        /** Covariance of ln h and b. */
        readonly b: number;
        /** Covariance of ln h and a. */
        readonly a: number;
      }
    >
  >;
}

/** Middle of the blood pressures of the nominal person [mmHg]. */
const NOMINAL_MIDDLE = 95;

/** How cuffs of one laboratory differ from the curve, as a share of the pressure above diastolic; widened by t. */
export const CUFF_DEVIATION = 0.23;

/** Pressure above diastolic lying down: half the pulse pressure, and b for each C / W. */
export const aboveDiastolic = (b: number, ratio: number, pulseMmHg: number): number => pulseMmHg / 2 + b * ratio;

/**
 * Variance of a curve’s own error [mmHg²], lying down: it grows with the distance of width, circumference and blood
 * pressures from the data. The constants come one by one, so that a loop keeps them.
 */
export function ownVariance(
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
  return (
    ratio * (ratio * varianceB + 2 * (pulseMmHg * covariance + above * withB)) +
    pulseMmHg * (pulseMmHg * varianceA + 2 * above * withA) +
    square(level * (middleMmHg - NOMINAL_MIDDLE)) +
    above * above * varianceH
  );
}

/**
 * Variance of ln(LOP) with everything in it: the curve’s own error, and `spread`, the squared shares of people and
 * laboratories. Errors are shares of the pressure above diastolic, which is h times that lying down.
 */
export const curveVariance = (value: number, h: number, above: number, own: number, spread: number): number =>
  (own + above * above * spread) * square(h / value);

/** A whole curve of one limb. */
export interface PooledCurve {
  /** Slope b: pressure above diastolic for each unit of circumference over cuff width, C / W [mmHg]. */
  readonly b: number;
  /** Factor h of each posture: it multiplies the pressure above diastolic. */
  readonly h: Readonly<Record<Posture, number>>;
  /** Error of the curve. */
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

/** Both for readings, with the value that they are of: the curve’s own error as a share of it, and the whole variance. */
export function curveErrors(curve: PooledCurve, r: CurveReadings, value: number): { own: number; variance: number } {
  const { b, h, error } = curve;
  const { variance, level, posture, people, laboratory } = error;
  const { h: varianceH, b: withB, a: withA } = posture[r.posture];
  const factor = h[r.posture];
  const pulse = r.systolicMmHg - r.diastolicMmHg;
  const ratio = r.circumferenceCm / r.cuffWidthCm;
  const above = aboveDiastolic(b, ratio, pulse);
  const middle = (r.systolicMmHg + r.diastolicMmHg) / 2;
  const own = ownVariance(
    above,
    ratio,
    pulse,
    middle,
    variance.b,
    variance.a,
    variance.both,
    level,
    varianceH,
    withB,
    withA,
  );
  return {
    own: (Math.sqrt(own) * factor) / value,
    variance: curveVariance(value, factor, above, own, square(people) + square(laboratory)),
  };
}
