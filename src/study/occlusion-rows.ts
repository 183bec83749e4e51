import type { OcclusionEquation, OcclusionReadings } from '../pressure/equation.js';
import { arm2015 } from '../pressure/equations/arm-2015.js';
import { thigh2015 } from '../pressure/equations/thigh-2015.js';
import { thigh2019 } from '../pressure/equations/thigh-2019.js';
import { widthRatio } from '../pressure/equations/width-ratio.js';
import type { Limb, Posture, Sex, Side } from '../quantity/quantities.js';
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

/** The readings of one row, put into an object that serves for all of them: what varies, the rest stays. */
export function fillReadings(readings: Readings, columns: OcclusionReadingColumns, row: number): void {
  const { limb, cuffWidthCm, posture, ageYears, sex, paddingCoefficient } = columns;
  readings.circumferenceCm = at(columns.circumferenceCm, row);
  readings.systolicMmHg = at(columns.systolicMmHg, row);
  readings.diastolicMmHg = at(columns.diastolicMmHg, row);
  if (limb.varies) readings.limb = limb.at(row)!;
  if (cuffWidthCm.varies) readings.cuffWidthCm = at(cuffWidthCm, row);
  if (posture.varies) readings.posture = posture.at(row)!;
  if (ageYears.varies) readings.ageYears = at(ageYears, row);
  if (sex.varies) readings.sex = sex.at(row)!;
  if (paddingCoefficient.varies) readings.paddingCoefficient = at(paddingCoefficient, row);
}

/** Readings that hold what is the same in every row. */
export const sameReadings = ({
  limb,
  cuffWidthCm,
  posture,
  ageYears,
  sex,
  ...more
}: OcclusionReadingColumns): Readings => ({
  limb: limb.varies ? 'arm' : limb.at(0)!,
  circumferenceCm: NaN,
  systolicMmHg: NaN,
  diastolicMmHg: NaN,
  cuffWidthCm: cuffWidthCm.varies ? NaN : at(cuffWidthCm, 0),
  posture: posture.varies ? 'supine' : posture.at(0)!,
  ageYears: ageYears.varies ? NaN : at(ageYears, 0),
  sex: sex.varies ? 'male' : (sex.at(0) ?? 'male'),
  paddingCoefficient: more.paddingCoefficient.varies ? NaN : at(more.paddingCoefficient, 0),
  side: 'left',
});

/** Applies an equation to every row of a block; rows that are refused hold anything. */
export type ApplyRows = (columns: OcclusionReadingColumns, value: Float64Array, from: number, to: number) => void;

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
export const applyRows = ({ id, apply }: OcclusionEquation, readings: Readings): ApplyRows =>
  QUICK[id] ??
  ((columns, value, from, to) => {
    for (let row = from; row < to; row += 1) {
      fillReadings(readings, columns, row);
      value[row] = apply(readings);
    }
  });
