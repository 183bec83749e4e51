import { NORMAL_95 } from '../statistics/normal.js';
import { REFER_DIASTOLIC, REFER_SYSTOLIC } from '../pressure/blood-pressure.js';
import type { OcclusionEquation, OcclusionReadings, Range } from '../pressure/equation.js';
import type { OcclusionEquationId } from '../pressure/equations.js';
import { curveDeviation, aboveDiastolic, type PooledCurve } from '../pressure/curve.js';
import { armCurve2026 } from '../pressure/equations/arm-curve-2026.js';
import { arm2015 } from '../pressure/equations/arm-2015.js';
import { padding2006 } from '../pressure/equations/padding-2006.js';
import { thighCurve, thighCurve2026 } from '../pressure/equations/thigh-curve-2026.js';
import { thigh2015 } from '../pressure/equations/thigh-2015.js';
import { thigh2019 } from '../pressure/equations/thigh-2019.js';
import { thighIndex12Equation, thighIndex18Equation } from '../pressure/equations/thigh-index.js';
import { widthRatio } from '../pressure/equations/width-ratio.js';
import { shareAbove, type ErrorTerms } from '../pressure/uncertainty.js';
import { Math, square } from '../quantity/maths.js';
import type { CircumferenceSite, Limb, Posture, Quantity, Sex, Side } from '../quantity/quantities.js';
import { BLOCK, type AnswerColumns } from './column-answer.js';
import { at, type Numbers, type Words } from './column-input.js';
import { type ColumnEquation, type OwnReading, type OwnReadings, type OwnTerms } from './fitted-equation.js';

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
  readonly circumferenceSite: Words<CircumferenceSite>;
  readonly heightCm: Numbers;
  readonly bodyMassIndex: Numbers;
  readonly skinfoldMm: Numbers;
}

export type Readings = { -readonly [Field in keyof OwnReadings]-?: OwnReadings[Field] };

const OWN: readonly OwnReading[] = ['heightCm', 'bodyMassIndex', 'skinfoldMm'];

/** The readings of one row, put into an object that serves for all of them. */
export function fillReadings(readings: Readings, columns: OcclusionReadingColumns, row: number): void {
  const { limb, cuffWidthCm, posture, ageYears, sex, paddingCoefficient } = columns;
  readings.circumferenceCm = at(columns.circumferenceCm, row);
  readings.systolicMmHg = at(columns.systolicMmHg, row);
  readings.diastolicMmHg = at(columns.diastolicMmHg, row);
  readings.limb = limb.at(row)!;
  readings.cuffWidthCm = at(cuffWidthCm, row);
  readings.posture = posture.at(row)!;
  readings.ageYears = at(ageYears, row);
  readings.sex = sex.at(row)!;
  readings.paddingCoefficient = at(paddingCoefficient, row);
  for (const field of OWN) readings[field] = at(columns[field], row);
}

/** Readings that hold what is the same in every row; of what varies they hold the first, which nothing reads. */
export function sameReadings(columns: OcclusionReadingColumns): Readings {
  const readings = { side: 'left', circumferenceSite: 'mid-limb' } as Readings;
  fillReadings(readings, columns, 0);
  // Where it is needed it is there, if not in the first row.
  readings.sex ??= 'male';
  return readings;
}

/**
 * Readings and answers of the block in work. They stand here and not in the caller’s columns because the engine knows
 * where a constant of the file lies in memory, and looks a column it is handed up anew at every row.
 */
const GIRTHS = /* @__PURE__ */ new Float64Array(BLOCK);
const SYSTOLICS = /* @__PURE__ */ new Float64Array(BLOCK);
const DIASTOLICS = /* @__PURE__ */ new Float64Array(BLOCK);
const AGES = /* @__PURE__ */ new Float64Array(BLOCK);
const SEXES = /* @__PURE__ */ new Uint8Array(BLOCK);
const PADDINGS = /* @__PURE__ */ new Float64Array(BLOCK);
const HEIGHTS = /* @__PURE__ */ new Float64Array(BLOCK);
const MASS_INDICES = /* @__PURE__ */ new Float64Array(BLOCK);
const SKINFOLDS = /* @__PURE__ */ new Float64Array(BLOCK);
const VALUES = /* @__PURE__ */ new Float64Array(BLOCK);
const LOWERS = /* @__PURE__ */ new Float64Array(BLOCK);
const UPPERS = /* @__PURE__ */ new Float64Array(BLOCK);

/** Puts readings where the loops below read them: the first of each, which stays where it is the same in every row. */
export function loadSame(columns: OcclusionReadingColumns, rows: number): void {
  for (const [column, block] of numbersOf(columns)) block.fill(column.values[0]!, 0, rows);
  SEXES.fill(columns.sex.codes[0]!, 0, rows);
}

/** What varies, for a block. */
export function loadBlock(columns: OcclusionReadingColumns, from: number, to: number): void {
  for (const [column, block] of numbersOf(columns)) if (column.varies) block.set(column.values.subarray(from, to));
  if (columns.sex.varies) SEXES.set(columns.sex.codes.subarray(from, to));
}

const numbersOf = (columns: OcclusionReadingColumns) =>
  [
    [columns.circumferenceCm, GIRTHS],
    [columns.systolicMmHg, SYSTOLICS],
    [columns.diastolicMmHg, DIASTOLICS],
    [columns.ageYears, AGES],
    [columns.paddingCoefficient, PADDINGS],
    [columns.heightCm, HEIGHTS],
    [columns.bodyMassIndex, MASS_INDICES],
    [columns.skinfoldMm, SKINFOLDS],
  ] as const;

/** What nothing is to be said of: possible, in the range of the equation’s sample, below the pressures to refer. */
export interface Bounds {
  readonly girth: Range;
  readonly systolic: Range;
  readonly diastolic: Range;
  /** Where the sample has a range of ages. */
  readonly age?: Range;
}

/** The last number below a limit. */
const justBelow = (limit: number): number => limit * (1 - Number.EPSILON / 2);

const overlap = ({ min, max }: Quantity, fitted: Range | undefined): Range =>
  fitted ? { low: Math.max(min, fitted.low), high: Math.min(max, fitted.high) } : { low: min, high: max };

/** `undefined` where something is to be said of every row: a cuff that the sample did not have. */
export function boundsOf(
  { circumferenceCm, systolicMmHg, diastolicMmHg, cuffWidthCm, ageYears }: OcclusionReadingColumns,
  { fitted }: OcclusionEquation,
): Bounds | undefined {
  const width = overlap(cuffWidthCm.quantity, fitted.cuffWidthCm);
  if (!(at(cuffWidthCm, 0) >= width.low && at(cuffWidthCm, 0) <= width.high)) return undefined;
  return {
    girth: overlap(circumferenceCm.quantity, fitted.circumferenceCm),
    systolic: overlap({ ...systolicMmHg.quantity, max: justBelow(REFER_SYSTOLIC) }, fitted.systolicMmHg),
    diastolic: overlap({ ...diastolicMmHg.quantity, max: justBelow(REFER_DIASTOLIC) }, fitted.diastolicMmHg),
    ...(fitted.ageYears && { age: overlap(ageYears.quantity, fitted.ageYears) }),
  };
}

/** Whether nothing is to be said of any reading of the block; words aside. */
export function blockFine({ girth, systolic, diastolic, age }: Bounds, rows: number): boolean {
  return pressuresFine(girth, systolic, diastolic, rows) && (age === undefined || agesFine(age, rows));
}

function pressuresFine(girths: Range, systolics: Range, diastolics: Range, rows: number): boolean {
  const { low: girthLow, high: girthHigh } = girths;
  const { low: systolicLow, high: systolicHigh } = systolics;
  const { low: diastolicLow, high: diastolicHigh } = diastolics;
  for (let row = 0; row < rows; row += 1) {
    const girth = GIRTHS[row]!;
    const systolic = SYSTOLICS[row]!;
    const diastolic = DIASTOLICS[row]!;
    const fine =
      girth >= girthLow &&
      girth <= girthHigh &&
      systolic >= systolicLow &&
      systolic <= systolicHigh &&
      diastolic >= diastolicLow &&
      diastolic <= diastolicHigh &&
      diastolic < systolic;
    if (!fine) return false;
  }
  return true;
}

function agesFine({ low, high }: Range, rows: number): boolean {
  for (let row = 0; row < rows; row += 1) if (!(AGES[row]! >= low && AGES[row]! <= high)) return false;
  return true;
}

/** Whether all answers of the block are pressures. */
function arePressures(rows: number): boolean {
  for (let row = 0; row < rows; row += 1) if (!(VALUES[row]! > 0)) return false;
  return true;
}

/** Puts log-normal intervals around the answers of the block, in the order of `varianceOf`. */
function putIntervals({ mmHg, share, laboratory, posture, width }: ErrorTerms, rows: number): void {
  for (let row = 0; row < rows; row += 1) {
    const answer = VALUES[row]!;
    const above = shareAbove(answer, DIASTOLICS[row]!);
    const variance =
      square(mmHg / answer + share) + square(laboratory * above) + square(posture * above) + square(width * above);
    const factor = Math.exp(NORMAL_95 * Math.sqrt(variance));
    LOWERS[row] = answer / factor;
    UPPERS[row] = answer * factor;
  }
}

/** The same for your own equation, whose deviations [mmHg] stand in `deviations`, and whose intervals are symmetric. */
function putOwnIntervals({ laboratory, posture, width }: ErrorTerms, deviations: Float64Array, rows: number): void {
  for (let row = 0; row < rows; row += 1) {
    const answer = VALUES[row]!;
    const above = shareAbove(answer, DIASTOLICS[row]!);
    const variance =
      square(deviations[row]! / answer) + square(laboratory * above) + square(posture * above) + square(width * above);
    const half = NORMAL_95 * Math.sqrt(variance) * answer;
    LOWERS[row] = answer - half;
    UPPERS[row] = answer + half;
  }
}

/** The same around the answers of a curve, whose error depends on the readings. */
function putCurveIntervals({ b, error }: PooledCurve, { cuffWidthCm, posture }: Readings, rows: number): void {
  const { people, laboratory, level, variance } = error;
  const { b: varianceB, a: varianceA, both } = variance;
  const { h: varianceH, b: withB, a: withA } = error.posture[posture];
  for (let row = 0; row < rows; row += 1) {
    const answer = VALUES[row]!;
    const systolic = SYSTOLICS[row]!;
    const diastolic = DIASTOLICS[row]!;
    const ratio = GIRTHS[row]! / cuffWidthCm;
    const pulse = systolic - diastolic;
    const own = curveDeviation(
      aboveDiastolic(b, ratio, pulse),
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
    const above = shareAbove(answer, diastolic);
    const factor = Math.exp(
      NORMAL_95 * Math.sqrt(square(own * above) + square(people * above) + square(laboratory * above)),
    );
    LOWERS[row] = answer / factor;
    UPPERS[row] = answer * factor;
  }
}

/** Answers the block of rows from `from`, and writes the answers where they go; whether all of them are pressures. */
export function answerBlock(
  apply: ApplyRows,
  same: Readings,
  error: PooledCurve | ErrorTerms,
  { value, lower, upper }: AnswerColumns,
  from: number,
  rows: number,
): boolean {
  apply(rows, same);
  const known = 'error' in error || !Number.isNaN(error.share);
  if ('error' in error) putCurveIntervals(error, same, rows);
  else if (apply.deviations) putOwnIntervals(error, apply.deviations, rows);
  else if (known) putIntervals(error, rows);
  const part = (block: Float64Array): Float64Array => (rows === BLOCK ? block : block.subarray(0, rows));
  value.set(part(VALUES), from);
  if (known) {
    lower.set(part(LOWERS), from);
    upper.set(part(UPPERS), from);
  } else for (const column of [lower, upper]) column.fill(NaN, from, from + rows);
  return arePressures(rows);
}

/** Applies an equation to the readings of the block in work, whose limb, cuff and posture are those of `same`. */
export type ApplyRows = ((rows: number, same: Readings) => void) & {
  /** Of your own equation: the standard deviations of the answers, written with them. */
  readonly deviations?: Float64Array;
};

/** The readings of a row that an equation draws on. */
type Row = Required<OcclusionReadings>;

/**
 * One loop an equation, over what it draws on. A loop that names its equation has it put inline by the engine, and its
 * readings are never made; one that is handed its equation calls it anew at every row, several times as slowly.
 */
const LOOPS: Readonly<Record<OcclusionEquationId, ApplyRows>> = {
  'pooled-curve-thigh-2026': (rows, { cuffWidthCm, posture }) => {
    const h = thighCurve.h[posture];
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = thighCurve2026(GIRTHS[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!, cuffWidthCm, h);
  },
  'pooled-curve-arm-2026': (rows, { cuffWidthCm }) => {
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = armCurve2026(GIRTHS[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!, cuffWidthCm);
  },
  'thigh-2019': (rows) => {
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = thigh2019(GIRTHS[row]!, SYSTOLICS[row]!, AGES[row]!, SEXES[row] === 0 ? 1 : 2);
  },
  'thigh-2015': (rows) => {
    for (let row = 0; row < rows; row += 1) VALUES[row] = thigh2015(GIRTHS[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!);
  },
  'arm-2015': (rows) => {
    for (let row = 0; row < rows; row += 1) VALUES[row] = arm2015(GIRTHS[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!);
  },
  'width-ratio-1993': (rows, { cuffWidthCm }) => {
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = widthRatio(GIRTHS[row]!, SYSTOLICS[row]!, DIASTOLICS[row]!, cuffWidthCm);
  },
  'thigh-index-12': (rows) => {
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = thighIndex12Equation.apply({ systolicMmHg: SYSTOLICS[row]! } as Row);
  },
  'thigh-index-18': (rows) => {
    for (let row = 0; row < rows; row += 1)
      VALUES[row] = thighIndex18Equation.apply({ systolicMmHg: SYSTOLICS[row]! } as Row);
  },
  'padding-2006': (rows) => {
    for (let row = 0; row < rows; row += 1) VALUES[row] = padding2006(SYSTOLICS[row]!, PADDINGS[row]!);
  },
};

/** The readings of a term in the block in work. */
function termBlock(field: string, { cuffWidthCm }: Readings, rows: number, spare: Float64Array): Float64Array {
  const blocks: Readonly<Record<string, Float64Array>> = {
    circumferenceCm: GIRTHS,
    systolicMmHg: SYSTOLICS,
    diastolicMmHg: DIASTOLICS,
    ageYears: AGES,
    heightCm: HEIGHTS,
    bodyMassIndex: MASS_INDICES,
    skinfoldMm: SKINFOLDS,
  };
  const block = blocks[field];
  if (block) return block;
  if (field === 'cuffWidthCm') spare.fill(cuffWidthCm);
  else for (let row = 0; row < rows; row += 1) spare[row] = SEXES[row] === 0 ? 1 : 2;
  return spare;
}

/** Answers and leverages term by term, each sum in the order in which one person’s is made. */
function ownRows({ first, base, terms, people, means, factor, deviation }: OwnTerms): ApplyRows {
  const loop = base && LOOPS[base.id as OcclusionEquationId];
  const spares = terms.map(() => new Float64Array(BLOCK));
  const deviations = new Float64Array(BLOCK);
  const turned = new Float64Array(BLOCK);
  const apply = (rows: number, same: Readings): void => {
    if (loop) {
      loop(rows, same);
      spares[0]!.set(VALUES);
    }
    const blocks = terms.map(({ field }, term) => (loop ? spares[0]! : termBlock(field, same, rows, spares[term]!)));
    VALUES.fill(first, 0, rows);
    deviations.fill(1 / people, 0, rows);
    for (const [term, { coefficient }] of terms.entries()) {
      const block = blocks[term]!;
      for (let row = 0; row < rows; row += 1) VALUES[row]! += coefficient * block[row]!;
      turned.fill(0, 0, rows);
      for (const [other, entry] of factor[term]!.entries()) {
        const [values, mean] = [blocks[other]!, means[other]!];
        for (let row = 0; row < rows; row += 1) turned[row]! += entry * (values[row]! - mean);
      }
      for (let row = 0; row < rows; row += 1) deviations[row]! += turned[row]! * turned[row]!;
    }
    for (let row = 0; row < rows; row += 1) deviations[row] = deviation * Math.sqrt(1 + deviations[row]!);
  };
  return Object.assign(apply, { deviations });
}

/** An equation over blocks of rows: a published one by its loop above, your own by its terms. */
export const applyRows = ({ id, own }: ColumnEquation): ApplyRows =>
  own ? ownRows(own) : LOOPS[id as OcclusionEquationId];
