import { NORMAL_95 } from '../answer/answer.js';
import { REFER_DIASTOLIC, REFER_SYSTOLIC } from '../pressure/blood-pressure.js';
import type { OcclusionReadings } from '../pressure/equation.js';
import { arm2015 } from '../pressure/equations/arm-2015.js';
import { thigh2015 } from '../pressure/equations/thigh-2015.js';
import { thigh2019, thigh2019Equation } from '../pressure/equations/thigh-2019.js';
import { widthRatio } from '../pressure/equations/width-ratio.js';
import { varianceOf, type ErrorShares } from '../pressure/judge.js';
import { quantities, type Limb, type Posture, type Sex, type Side } from '../quantity/quantities.js';
import type { AnswerColumns } from './column-answer.js';
import { at, type Numbers, type Words } from './column-input.js';

/** The readings of an occlusion pressure, each a column. */
export interface OcclusionReadingColumns {
  readonly limb: Words<Limb>;
  readonly circumferenceCm: Numbers;
  readonly systolicMmHg: Numbers;
  readonly diastolicMmHg: Numbers;
  readonly cuffWidthCm: Numbers;
  readonly posture: Words<Posture>;
  readonly ageYears: Numbers;
  readonly sex: Words<Sex>;
  readonly paddingCoefficient: Numbers;
  readonly side: Words<Side>;
}

export type Readings = { -readonly [Field in keyof OcclusionReadings]-?: OcclusionReadings[Field] };

/** The readings of one row, put into an object that serves for all of them. */
export function fillReadings(readings: Readings, columns: OcclusionReadingColumns, row: number): void {
  readings.limb = columns.limb.at(row)!;
  readings.circumferenceCm = at(columns.circumferenceCm, row);
  readings.systolicMmHg = at(columns.systolicMmHg, row);
  readings.diastolicMmHg = at(columns.diastolicMmHg, row);
  readings.cuffWidthCm = at(columns.cuffWidthCm, row);
  readings.posture = columns.posture.at(row)!;
  readings.ageYears = at(columns.ageYears, row);
  readings.sex = columns.sex.at(row)!;
  readings.paddingCoefficient = at(columns.paddingCoefficient, row);
}

export const emptyReadings = (): Readings => ({
  limb: 'arm',
  circumferenceCm: NaN,
  systolicMmHg: NaN,
  diastolicMmHg: NaN,
  cuffWidthCm: NaN,
  posture: 'supine',
  ageYears: NaN,
  sex: 'male',
  paddingCoefficient: NaN,
  side: 'left',
});

/**
 * Looks at the girths, pressures and fitted ranges of a block and works it out, for one limb, cuff and posture; false
 * where something is to be said of a row or it has no answer: then the block holds anything.
 */
export type QuickRows = (
  columns: OcclusionReadingColumns,
  shares: ErrorShares,
  out: AnswerColumns,
  from: number,
  to: number,
) => boolean;

const { min: SYSTOLIC_MIN } = quantities.systolicMmHg;
const { min: DIASTOLIC_MIN } = quantities.diastolicMmHg;

/** Whether nothing is to be said of a girth and two pressures. */
const inOrder = (girth: number, systolic: number, diastolic: number, min: number, max: number): boolean =>
  girth >= min &&
  girth <= max &&
  systolic > diastolic &&
  systolic >= SYSTOLIC_MIN &&
  systolic < REFER_SYSTOLIC &&
  diastolic >= DIASTOLIC_MIN &&
  diastolic < REFER_DIASTOLIC;

/**
 * A loop of its own around the bare function, which the engine then puts inline: several times as fast as calling
 * `apply` row by row. An equation that is not here goes through `apply` and gives the same.
 */
export const QUICK: Readonly<Partial<Record<string, QuickRows>>> = {
  'thigh-2019': ({ circumferenceCm, systolicMmHg, diastolicMmHg, ageYears, sex }, shares, out, from, to) => {
    const { values: girth, mask: byGirth, quantity } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    const { values: age, mask: byAge } = ageYears;
    const { codes, mask: bySex } = sex;
    const { min, max } = quantity;
    const { low, high } = thigh2019Equation.fitted.ageYears;
    const { value, lower, upper } = out;
    for (let row = from; row < to; row += 1) {
      const c = girth[row & byGirth]!;
      const s = systolic[row & bySystolic]!;
      const a = age[row & byAge]!;
      const answer = thigh2019(c, s, a, codes[row & bySex] === 0 ? 1 : 2);
      const half = NORMAL_95 * Math.sqrt(varianceOf(shares, answer));
      if (!inOrder(c, s, diastolic[row & byDiastolic]!, min, max) || !(a >= low && a <= high) || !(answer > 0)) {
        return false;
      }
      value[row] = answer;
      lower[row] = answer - half;
      upper[row] = answer + half;
    }
    return true;
  },
  'thigh-2015': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, shares, out, from, to) => {
    const { values: girth, mask: byGirth, quantity } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    const { min, max } = quantity;
    const { value, lower, upper } = out;
    for (let row = from; row < to; row += 1) {
      const c = girth[row & byGirth]!;
      const s = systolic[row & bySystolic]!;
      const d = diastolic[row & byDiastolic]!;
      const answer = thigh2015(c, s, d);
      const half = NORMAL_95 * Math.sqrt(varianceOf(shares, answer));
      if (!inOrder(c, s, d, min, max) || !(answer > 0)) return false;
      value[row] = answer;
      lower[row] = answer - half;
      upper[row] = answer + half;
    }
    return true;
  },
  'arm-2015': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, shares, out, from, to) => {
    const { values: girth, mask: byGirth, quantity } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    const { min, max } = quantity;
    const { value, lower, upper } = out;
    for (let row = from; row < to; row += 1) {
      const c = girth[row & byGirth]!;
      const s = systolic[row & bySystolic]!;
      const d = diastolic[row & byDiastolic]!;
      const answer = arm2015(c, s, d);
      const half = NORMAL_95 * Math.sqrt(varianceOf(shares, answer));
      if (!inOrder(c, s, d, min, max) || !(answer > 0)) return false;
      value[row] = answer;
      lower[row] = answer - half;
      upper[row] = answer + half;
    }
    return true;
  },
  'width-ratio-1993': ({ circumferenceCm, systolicMmHg, diastolicMmHg, cuffWidthCm }, shares, out, from, to) => {
    const { values: girth, mask: byGirth, quantity } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    const width = at(cuffWidthCm, 0);
    const { min, max } = quantity;
    const { value, lower, upper } = out;
    for (let row = from; row < to; row += 1) {
      const c = girth[row & byGirth]!;
      const s = systolic[row & bySystolic]!;
      const d = diastolic[row & byDiastolic]!;
      const answer = widthRatio(c, s, d, width);
      const half = NORMAL_95 * Math.sqrt(varianceOf(shares, answer));
      if (!inOrder(c, s, d, min, max) || !(answer > 0)) return false;
      value[row] = answer;
      lower[row] = answer - half;
      upper[row] = answer + half;
    }
    return true;
  },
};
