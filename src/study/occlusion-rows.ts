import type { OcclusionReadings } from '../pressure/equation.js';
import type { OcclusionEquationId } from '../pressure/equations.js';
import { arm2015 } from '../pressure/equations/arm-2015.js';
import { padding2006 } from '../pressure/equations/padding-2006.js';
import {
  pooledArmNarrowEquation,
  pooledThighNarrowEquation,
  pooledThighWideEquation,
} from '../pressure/equations/pooled-means.js';
import { thigh2015 } from '../pressure/equations/thigh-2015.js';
import { thigh2019 } from '../pressure/equations/thigh-2019.js';
import { thighIndex12Equation, thighIndex18Equation } from '../pressure/equations/thigh-index.js';
import { widthRatio } from '../pressure/equations/width-ratio.js';
import type { Limb, Posture, Sex, Side } from '../quantity/quantities.js';
import { at, type Numbers, type Words } from './column-input.js';
import { applyLinear, type ColumnEquation } from './fitted-equation.js';

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

/** Applies an equation to every row of a block whose limb, cuff and posture are those of `same`. */
export type ApplyRows = (
  columns: OcclusionReadingColumns,
  same: Readings,
  value: Float64Array,
  from: number,
  to: number,
) => void;

/** The readings of a row that an equation draws on. */
type Row = Required<OcclusionReadings>;

/**
 * One loop an equation, over what it draws on. A loop that names its equation has it put inline by the engine, and its
 * readings are never made; one that is handed its equation calls it anew at every row, several times as slowly.
 */
const LOOPS: Readonly<Record<OcclusionEquationId, ApplyRows>> = {
  'thigh-2019': ({ circumferenceCm, systolicMmHg, ageYears, sex }, _same, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    const { values: ages, mask: byAge } = ageYears;
    const { codes: sexes, mask: bySex } = sex;
    for (let row = from; row < to; row += 1) {
      value[row] = thigh2019(
        girths[row & byGirth]!,
        systolics[row & bySystolic]!,
        ages[row & byAge]!,
        sexes[row & bySex] === 0 ? 1 : 2,
      );
    }
  },
  'thigh-2015': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, _same, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    const { values: diastolics, mask: byDiastolic } = diastolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = thigh2015(girths[row & byGirth]!, systolics[row & bySystolic]!, diastolics[row & byDiastolic]!);
    }
  },
  'arm-2015': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, _same, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    const { values: diastolics, mask: byDiastolic } = diastolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = arm2015(girths[row & byGirth]!, systolics[row & bySystolic]!, diastolics[row & byDiastolic]!);
    }
  },
  'width-ratio-1993': ({ circumferenceCm, systolicMmHg, diastolicMmHg }, { cuffWidthCm }, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    const { values: diastolics, mask: byDiastolic } = diastolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = widthRatio(
        girths[row & byGirth]!,
        systolics[row & bySystolic]!,
        diastolics[row & byDiastolic]!,
        cuffWidthCm,
      );
    }
  },
  'pooled-means-thigh-wide': ({ circumferenceCm, systolicMmHg }, { cuffWidthCm, posture }, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = pooledThighWideEquation.apply({
        circumferenceCm: girths[row & byGirth]!,
        systolicMmHg: systolics[row & bySystolic]!,
        cuffWidthCm,
        posture,
      } as Row);
    }
  },
  'pooled-means-thigh-narrow': ({ circumferenceCm, systolicMmHg }, { cuffWidthCm }, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = pooledThighNarrowEquation.apply({
        circumferenceCm: girths[row & byGirth]!,
        systolicMmHg: systolics[row & bySystolic]!,
        cuffWidthCm,
      } as Row);
    }
  },
  'pooled-means-arm-narrow': ({ circumferenceCm, systolicMmHg }, { cuffWidthCm }, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = pooledArmNarrowEquation.apply({
        circumferenceCm: girths[row & byGirth]!,
        systolicMmHg: systolics[row & bySystolic]!,
        cuffWidthCm,
      } as Row);
    }
  },
  'thigh-index-12': ({ systolicMmHg }, _same, value, from, to) => {
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = thighIndex12Equation.apply({ systolicMmHg: systolics[row & bySystolic]! } as Row);
    }
  },
  'thigh-index-18': ({ systolicMmHg }, _same, value, from, to) => {
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    for (let row = from; row < to; row += 1) {
      value[row] = thighIndex18Equation.apply({ systolicMmHg: systolics[row & bySystolic]! } as Row);
    }
  },
  'padding-2006': ({ systolicMmHg, paddingCoefficient }, _same, value, from, to) => {
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    const { values: paddings, mask: byPadding } = paddingCoefficient;
    for (let row = from; row < to; row += 1) {
      value[row] = padding2006(systolics[row & bySystolic]!, paddings[row & byPadding]!);
    }
  },
};

/** An equation over blocks of rows: a published one by its loop above, one’s own by its coefficients. */
export function applyRows({ id, linear }: ColumnEquation): ApplyRows {
  if (!linear) return LOOPS[id as OcclusionEquationId];
  return ({ circumferenceCm, systolicMmHg, diastolicMmHg, ageYears, sex }, { cuffWidthCm }, value, from, to) => {
    const { values: girths, mask: byGirth } = circumferenceCm;
    const { values: systolics, mask: bySystolic } = systolicMmHg;
    const { values: diastolics, mask: byDiastolic } = diastolicMmHg;
    const { values: ages, mask: byAge } = ageYears;
    const { codes: sexes, mask: bySex } = sex;
    for (let row = from; row < to; row += 1) {
      value[row] = applyLinear(
        linear,
        girths[row & byGirth]!,
        systolics[row & bySystolic]!,
        diastolics[row & byDiastolic]!,
        cuffWidthCm,
        ages[row & byAge]!,
        sexes[row & bySex] === 0 ? 1 : 2,
      );
    }
  };
}
