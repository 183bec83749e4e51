import { NORMAL_95 } from '../statistics/normal.js';
import { aboveDiastolic, curveVariance, ownVariance, type PooledCurve } from '../pressure/curve.js';
import { armCurve2026 } from '../pressure/equations/arm-curve-2026.js';
import { thighCurve, thighCurve2026 } from '../pressure/equations/thigh-curve-2026.js';
import { Math, square } from '../quantity/maths.js';
import type { Limb, Posture } from '../quantity/quantities.js';
import { BLOCK, type AnswerColumns } from './column-answer.js';
import type { Numbers } from './column-input.js';

/** The readings that a curve draws on, each a column. */
export interface CurveColumns {
  readonly circumferenceCm: Numbers;
  readonly systolicMmHg: Numbers;
  readonly diastolicMmHg: Numbers;
}

/** What is the same for all rows. */
export interface CurvePlace {
  readonly limb: Limb;
  readonly cuffWidthCm: number;
  readonly posture: Posture;
}

/**
 * Readings and answers of the block in work. They are here and not in your columns because the engine knows
 * where a constant of the file lies in memory, and looks a column it is handed up anew at every row.
 */
const CIRCUMFERENCES = new Float64Array(BLOCK);
const SYSTOLICS = new Float64Array(BLOCK);
const DIASTOLICS = new Float64Array(BLOCK);
const VALUES = new Float64Array(BLOCK);
const LOWERS = new Float64Array(BLOCK);
const UPPERS = new Float64Array(BLOCK);
const DEVIATIONS = new Float64Array(BLOCK);

/**
 * Values and log-normal intervals of a block of rows by the pooled curve of a limb, the same to the last digit as the
 * loop over any equation. It is the default and has a loop of its own; rows that are refused are overwritten after it.
 */
export function curveBlock(
  curve: PooledCurve,
  columns: CurveColumns,
  place: CurvePlace,
  { value, lower, upper, standardDeviation }: AnswerColumns,
  from: number,
  to: number,
): void {
  const rows = to - from;
  load(columns.circumferenceCm, CIRCUMFERENCES, from, to);
  load(columns.systolicMmHg, SYSTOLICS, from, to);
  load(columns.diastolicMmHg, DIASTOLICS, from, to);
  putValues(place, rows);
  putIntervals(curve, place, rows);
  const part = (block: Float64Array): Float64Array => (rows === BLOCK ? block : block.subarray(0, rows));
  value.set(part(VALUES), from);
  lower.set(part(LOWERS), from);
  upper.set(part(UPPERS), from);
  standardDeviation.set(part(DEVIATIONS), from);
}

function load({ values, varies }: Numbers, block: Float64Array, from: number, to: number): void {
  if (varies) block.set(values.subarray(from, to));
  else block.fill(values[0]!, 0, to - from);
}

function putValues({ limb, cuffWidthCm, posture }: CurvePlace, rows: number): void {
  if (limb === 'arm') {
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = armCurve2026(CIRCUMFERENCES[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!, cuffWidthCm);
    return;
  }
  const h = thighCurve.h[posture];
  for (let row = 0; row < rows; row += 1)
    VALUES[row] = thighCurve2026(CIRCUMFERENCES[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!, cuffWidthCm, h);
}

/** The error of a curve depends on the readings. */
function putIntervals({ b, h, error }: PooledCurve, { cuffWidthCm, posture }: CurvePlace, rows: number): void {
  const { people, laboratory, level, variance } = error;
  const { b: varianceB, a: varianceA, both } = variance;
  const { h: varianceH, b: withB, a: withA } = error.posture[posture];
  const factor = h[posture];
  const spread = square(people) + square(laboratory);
  for (let row = 0; row < rows; row += 1) {
    const answer = VALUES[row]!;
    const systolic = SYSTOLICS[row]!;
    const diastolic = DIASTOLICS[row]!;
    const ratio = CIRCUMFERENCES[row]! / cuffWidthCm;
    const pulse = systolic - diastolic;
    const above = aboveDiastolic(b, ratio, pulse);
    const own = ownVariance(
      above,
      ratio,
      pulse,
      (systolic + diastolic) / 2,
      varianceB,
      varianceA,
      both,
      level,
      varianceH,
      withB,
      withA,
    );
    const deviation = Math.sqrt(curveVariance(answer, factor, above, own, spread));
    const wide = Math.exp(NORMAL_95 * deviation);
    DEVIATIONS[row] = deviation;
    LOWERS[row] = answer / wide;
    UPPERS[row] = answer * wide;
  }
}
