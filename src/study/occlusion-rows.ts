import type { OcclusionEquation, OcclusionReadings } from '../pressure/equation.js';
import { arm2015 } from '../pressure/equations/arm-2015.js';
import { thigh2015 } from '../pressure/equations/thigh-2015.js';
import { thigh2019 } from '../pressure/equations/thigh-2019.js';
import { widthRatio } from '../pressure/equations/width-ratio.js';
import type { Limb, Posture, Sex } from '../quantity/quantities.js';
import type { Numbers, Words } from './column-input.js';

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
}

/** Applies an equation to every row of a block; rows that are refused hold anything. */
type ApplyRows = (columns: OcclusionReadingColumns, value: Float64Array, from: number, to: number) => void;

export type Readings = { -readonly [Field in keyof OcclusionReadings]-?: OcclusionReadings[Field] };

const at = ({ values, mask }: Numbers, row: number): number => values[row & mask]!;

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
});

/**
 * A loop of its own around the bare function, which the engine then puts inline: several times as fast as calling
 * `apply` row by row. An equation that is not here goes through `apply` and gives the same.
 */
const QUICK: Readonly<Partial<Record<string, ApplyRows>>> = {
  'thigh-2019': ({ circumferenceCm, systolicMmHg, ageYears, sex }, value, from, to) => {
    const { values: girth, mask: byGirth } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: age, mask: byAge } = ageYears;
    const { codes, mask: bySex } = sex;
    for (let row = from; row < to; row += 1) {
      const sexCode = codes[row & bySex] === 0 ? 1 : 2;
      value[row] = thigh2019(girth[row & byGirth]!, systolic[row & bySystolic]!, age[row & byAge]!, sexCode);
    }
  },
  'thigh-2015': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, value, from, to) => {
    const { values: girth, mask: byGirth } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = thigh2015(girth[row & byGirth]!, systolic[row & bySystolic]!, diastolic[row & byDiastolic]!);
    }
  },
  'arm-2015': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, value, from, to) => {
    const { values: girth, mask: byGirth } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = arm2015(girth[row & byGirth]!, systolic[row & bySystolic]!, diastolic[row & byDiastolic]!);
    }
  },
  'width-ratio-1993': ({ circumferenceCm, systolicMmHg, diastolicMmHg, cuffWidthCm }, value, from, to) => {
    const { values: girth, mask: byGirth } = circumferenceCm;
    const { values: systolic, mask: bySystolic } = systolicMmHg;
    const { values: diastolic, mask: byDiastolic } = diastolicMmHg;
    const { values: width, mask: byWidth } = cuffWidthCm;
    for (let row = from; row < to; row += 1) {
      const low = diastolic[row & byDiastolic]!;
      value[row] = widthRatio(girth[row & byGirth]!, systolic[row & bySystolic]!, low, width[row & byWidth]!);
    }
  },
};

/** An equation over blocks of rows. */
export function applyRows({ id, apply }: OcclusionEquation): ApplyRows {
  const readings = emptyReadings();
  return (
    QUICK[id] ??
    ((columns, value, from, to) => {
      for (let row = from; row < to; row += 1) {
        fillReadings(readings, columns, row);
        value[row] = apply(readings);
      }
    })
  );
}
