/*
 * The working behind every figure of grade `derived` on the pressure floor: how wrong the equations are on the
 * published group means, and what it costs to carry one to another cuff width, posture or laboratory.
 *
 * The publications give group means of measured occlusion pressure, but not the girth and blood pressure of their
 * samples. A nominal person stands in for every sample: 120/70 mmHg, thigh 55 cm, arm 32 cm. So part of what is called
 * error here is the distance of the samples from that person; the figures are wide on purpose.
 *
 * Means from memory (`unconfirmed`) stand in the data but are left out of every derivation. A posture that was not
 * stated counts as supine. Constants are rounded up to two digits.
 */
import groupMeans from '../../src/checks/group-means.json' with { type: 'json' };
import { arm2015 } from '../../src/pressure/equations/arm-2015.js';
import { thigh2015 } from '../../src/pressure/equations/thigh-2015.js';
import { thigh2019 } from '../../src/pressure/equations/thigh-2019.js';
import { widthRatio } from '../../src/pressure/equations/width-ratio.js';

export interface GroupMean {
  readonly limb: string;
  readonly cuff: string;
  readonly cuffWidthCm?: number;
  readonly posture: string;
  readonly mean: number;
  readonly standardDeviation?: number;
  readonly n?: number;
  readonly source: string;
  readonly grade: string;
  readonly note?: string;
}

export const NOMINAL = {
  systolicMmHg: 120,
  diastolicMmHg: 70,
  ageYears: 23.23,
  girthCm: { leg: 55, arm: 32 },
} as const;

export const allMeans: readonly GroupMean[] = groupMeans.rows;
const means = allMeans.filter(({ grade }) => grade === 'published');
const girth = ({ limb }: GroupMean): number => NOMINAL.girthCm[limb as 'leg' | 'arm'];
const { systolicMmHg, diastolicMmHg, ageYears } = NOMINAL;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const rms = (values: readonly number[]): number => Math.hypot(...values) / Math.sqrt(values.length);
/** Two digits, upwards, so that rounding never makes an error look smaller. */
export const up = (value: number): number => Math.ceil(value * 100 - 1e-9) / 100;

/** People about the mean of their sample, as a share of it. */
const spreadOf = (rows: readonly GroupMean[]): number =>
  rms(rows.flatMap((row) => (row.standardDeviation === undefined ? [] : [row.standardDeviation / row.mean])));

const postureOf = ({ posture }: GroupMean): string => (posture === 'not-stated' ? 'supine' : posture);
export const classOf = ({ limb, cuff }: GroupMean): 'thigh-narrow' | 'thigh-wide' | 'arm' =>
  limb === 'arm' ? 'arm' : cuff === 'narrow' ? 'thigh-narrow' : 'thigh-wide';

// 1. Pooled means: a random-effects mean of ln(pressure) over laboratories, for each limb, kind of cuff and posture.

/** Random effects by moments: the mean over studies and the standard deviation between them, both of ln(pressure). */
function randomEffects(studies: readonly (readonly GroupMean[])[]): { mean: number; between: number } {
  const y = studies.map((rows) => mean(rows.map((row) => Math.log(row.mean))));
  // A standard deviation or size that is not at hand is taken as that of a middling sample: 15 % of the mean, 30 people.
  const within = studies.map((rows) =>
    mean(rows.map((row) => ((row.standardDeviation ?? 0.15 * row.mean) / row.mean) ** 2 / (row.n ?? 30))),
  );
  const weighted = (weights: readonly number[]): number =>
    weights.reduce((sum, w, i) => sum + w * y[i]!, 0) / weights.reduce((sum, w) => sum + w, 0);
  const fixed = within.map((v) => 1 / v);
  const total = fixed.reduce((sum, w) => sum + w, 0);
  const q = fixed.reduce((sum, w, i) => sum + w * (y[i]! - weighted(fixed)) ** 2, 0);
  const scale = total - fixed.reduce((sum, w) => sum + w * w, 0) / total;
  const variance = studies.length > 1 ? Math.max(0, (q - (studies.length - 1)) / scale) : 0;
  return { mean: Math.exp(weighted(within.map((v) => 1 / (v + variance)))), between: Math.sqrt(variance) };
}

/** Cuffs of 3 cm stand alone, and samples that say nothing of the cuff belong to no cell. */
const poolable = means.filter(({ cuff, cuffWidthCm }) => cuff !== 'not-stated' && cuffWidthCm !== 3);
const cellOf = (row: GroupMean): string => `${row.limb} ${row.cuff} ${postureOf(row)}`;

/** The cells with two laboratories or more: with one, nothing is left when it is left out. */
export const cells = [...new Set(poolable.map(cellOf))].flatMap((cell) => {
  const rows = poolable.filter((row) => cellOf(row) === cell);
  const studies = [...new Set(rows.map(({ source }) => source))];
  if (studies.length < 2) return [];
  const pool = (left: readonly string[]) =>
    randomEffects(left.map((study) => rows.filter(({ source }) => source === study)));
  const leftOut = rows.map((row) => {
    const pooled = pool(studies.filter((study) => study !== row.source)).mean;
    return { row, pooled, offByShare: (row.mean - pooled) / pooled };
  });
  return [{ cell, rows, studies, ...pool(studies), leftOut }];
});

/** Pooled means as they are shipped [mmHg]. */
export const pooledMeans = Object.fromEntries(cells.map(({ cell, mean }) => [cell, Math.round(mean)]));

const cellsOf = (start: string) => cells.filter(({ cell }) => cell.startsWith(start));
/** How far a pooled mean lies off a laboratory that it has not seen, in quadrature with how people differ. */
const pooledShareOf = (start: string): number => {
  const own = cellsOf(start);
  const off = rms(own.flatMap(({ leftOut }) => leftOut.map(({ offByShare }) => offByShare)));
  return Math.hypot(off, spreadOf(own.flatMap(({ rows }) => rows)));
};
export const pooledShare = {
  'thigh-wide': pooledShareOf('leg wide'),
  'thigh-narrow': pooledShareOf('leg narrow'),
  'arm-narrow': pooledShareOf('arm narrow'),
};
export const countOf = (start: string): number => cellsOf(start).reduce((sum, { rows }) => sum + rows.length, 0);

/** Standard deviation between laboratories: the largest of the cells of each class. */
export const laboratoryShare = {
  'thigh-wide': Math.max(...cellsOf('leg wide').map(({ between }) => between)),
  'thigh-narrow': Math.max(...cellsOf('leg narrow').map(({ between }) => between)),
  arm: Math.max(...cellsOf('arm').map(({ between }) => between)),
};

/** Slopes of the pooled means: per mmHg of systolic pressure, and cm² over cuff width per cm of girth. */
export const pooledSlopes = {
  // Mean of the slopes of the three regressions: the publications find it alike across cuff widths.
  systolic: mean([0.178, 0.514, 0.912]),
  // Slope of the regression for the limb and cuff times its cuff width: the publications find it falls with width.
  'thigh-wide': 1.11 * 18,
  'thigh-narrow': 5.893 * 5,
  'arm-narrow': 1.461 * 5,
};

// 2. Every equation on the same means.

const sexes = [1, 2] as const;
type ByMean = (row: GroupMean & { cuffWidthCm: number }) => number | undefined;
const near = (row: { cuffWidthCm: number }, width: number): boolean => Math.abs(row.cuffWidthCm - width) <= 0.5;
/** Each equation for the nominal person, with the cuff and in the posture of a sample, where it applies. */
const byEquation: Readonly<Record<string, ByMean>> = {
  'width-ratio-1993': (row) => widthRatio(girth(row), systolicMmHg, diastolicMmHg, row.cuffWidthCm),
  'thigh-2019': (row) =>
    row.limb === 'leg' && near(row, 18)
      ? mean(sexes.map((sex) => thigh2019(girth(row), systolicMmHg, ageYears, sex)))
      : undefined,
  'thigh-2015': (row) =>
    row.limb === 'leg' && near(row, 5) ? thigh2015(girth(row), systolicMmHg, diastolicMmHg) : undefined,
  'arm-2015': (row) =>
    row.limb === 'arm' && near(row, 5) ? arm2015(girth(row), systolicMmHg, diastolicMmHg) : undefined,
  'thigh-index-12': (row) => (row.limb === 'leg' && near(row, 12) ? 1.3 * systolicMmHg : undefined),
  'thigh-index-18': (row) =>
    row.limb === 'leg' && row.cuffWidthCm >= 17.5 && row.cuffWidthCm <= 20.5 ? 1.1 * systolicMmHg : undefined,
};

/** Pooled means with the sample’s own laboratory left out, beside every other equation, on each mean of known width. */
export const sameMeans = cells.flatMap(({ leftOut }) =>
  leftOut.flatMap(({ row, pooled, offByShare }) => {
    const { cuffWidthCm } = row;
    if (cuffWidthCm === undefined) return [];
    const others = Object.entries(byEquation).flatMap(([equation, answer]) => {
      const given = answer({ ...row, cuffWidthCm });
      return given === undefined ? [] : [{ equation, answer: given, offByShare: (row.mean - given) / given }];
    });
    return [{ row, pooled, offByShare, others }];
  }),
);

/** Root-mean-square errors on the same means: of an equation, and of the pooled means where that equation applies. */
export const errorsOnSameMeans = (['thigh-narrow', 'thigh-wide', 'arm'] as const).flatMap((kind) =>
  Object.keys(byEquation).flatMap((equation) => {
    const there = sameMeans.flatMap(({ row, offByShare, others }) => {
      const other = others.find((one) => one.equation === equation);
      return classOf(row) === kind && other ? [{ pooled: offByShare, other: other.offByShare }] : [];
    });
    if (there.length === 0) return [];
    const [own, pooled] = [rms(there.map(({ other }) => other)), rms(there.map((one) => one.pooled))];
    return [{ kind, equation, means: there.length, own, pooled }];
  }),
);

/** The width-ratio formula on each mean of known width; it has no posture, so standing samples are left out. */
export const widthRatioMeans = means.flatMap((row) => {
  const { cuffWidthCm } = row;
  if (cuffWidthCm === undefined || postureOf(row) !== 'supine') return [];
  const formula = widthRatio(girth(row), systolicMmHg, diastolicMmHg, cuffWidthCm);
  return [{ row, formula, offByShare: (row.mean - formula) / formula }];
});
const widthRatioShareOf = (kind: string): number => {
  const own = widthRatioMeans.filter(({ row }) => classOf(row) === kind);
  return Math.hypot(rms(own.map(({ offByShare }) => offByShare)), spreadOf(own.map(({ row }) => row)));
};
export const widthRatioShare = {
  'thigh-narrow': widthRatioShareOf('thigh-narrow'),
  'thigh-wide': widthRatioShareOf('thigh-wide'),
  arm: widthRatioShareOf('arm'),
};

/** The thigh index on the supine means within 2 cm of its cuffs. The band itself counts as rectangular: half-width / √3. */
const indexMeans = means.flatMap((row) => {
  const { cuffWidthCm = 0 } = row;
  if (row.limb !== 'leg' || row.cuff !== 'wide' || postureOf(row) !== 'supine' || cuffWidthCm === 0) return [];
  const answer = (cuffWidthCm < 15 ? 1.3 : 1.1) * systolicMmHg;
  return [{ row, answer, offByShare: (row.mean - answer) / answer }];
});
export const indexCount = indexMeans.length;
export const indexShare = Math.hypot(
  rms(indexMeans.map(({ offByShare }) => offByShare)),
  spreadOf(indexMeans.map(({ row }) => row)),
  0.1 / Math.sqrt(3) / 1.1,
);

// 3. Another cuff width: pairs of widths measured in the same people, carried both ways.

const pairs = [
  { source: 'cuff-width-2012', limb: 'thigh', narrowCm: 5, narrow: 235, wideCm: 13.5, wide: 144 },
  { source: 'athletes-2018', limb: 'arm', narrowCm: 6, narrow: 161, wideCm: 13, wide: 133 },
  { source: 'athletes-2018', limb: 'thigh', narrowCm: 13, narrow: 161, wideCm: 18, wide: 170 },
  { source: 'cuff-materials-2017', limb: 'arm', narrowCm: 3, narrow: 246, wideCm: 5, wide: 139 },
];
const carried = (pressure: number, from: number, to: number): number =>
  diastolicMmHg + ((pressure - diastolicMmHg) * from) / to;
export const corrections = pairs.flatMap(({ source, limb, narrowCm, narrow, wideCm, wide }) => [
  {
    source,
    limb,
    fromCm: narrowCm,
    from: narrow,
    toCm: wideCm,
    measured: wide,
    corrected: carried(narrow, narrowCm, wideCm),
  },
  {
    source,
    limb,
    fromCm: wideCm,
    from: wide,
    toCm: narrowCm,
    measured: narrow,
    corrected: carried(wide, wideCm, narrowCm),
  },
]);
/** Error of the correction as a share of its answer, for each unit of |ln(from / to)|. */
export const widthShare = rms(
  corrections.map(
    ({ fromCm, toCm, measured, corrected }) => (measured - corrected) / corrected / Math.abs(Math.log(fromCm / toCm)),
  ),
);

// 4. Another posture: the same people in two postures.

const posturePairs = (from: string, to: string) =>
  means.flatMap((low) =>
    means
      .filter(
        (high) => low.source === high.source && low.cuff === high.cuff && low.posture === from && high.posture === to,
      )
      .map((high) => ({ low, high, shift: high.mean - low.mean, logRatio: Math.log(high.mean / low.mean) })),
  );
export const postures = {
  'seated supine': posturePairs('supine', 'seated'),
  'standing supine': posturePairs('supine', 'standing'),
  'seated standing': posturePairs('seated', 'standing'),
};
export const postureShares = Object.fromEntries(
  Object.entries(postures).map(([pair, found]) => [pair, rms(found.map(({ logRatio }) => logRatio))]),
);

/** Shifts for a wide cuff, to the nearest 5 mmHg, as the means differ by 6 mmHg between laboratories. */
const wideShifts = (pair: keyof typeof postures): number[] =>
  postures[pair].flatMap(({ low, shift }) => (low.cuff === 'narrow' ? [] : [shift]));
export const seatedShift = Math.round(mean(wideShifts('seated supine')) / 5) * 5;
export const standingShift = Math.round(mean(wideShifts('standing supine')) / 5) * 5;

/** How people differ in a shift: published correlation of the two postures, R² 0.81 with a wide cuff. */
const correlation = Math.sqrt(0.81);
const personal = (low: number, high: number): number => Math.sqrt(low ** 2 + high ** 2 - 2 * correlation * low * high);
const between = rms(wideShifts('seated supine').map((shift) => shift - seatedShift));
export const seatedShiftDeviation = Math.hypot(personal(19, 20), between);
/** One laboratory only: its spread between laboratories is taken as the same share of the shift as seated. */
export const standingShiftDeviation = Math.hypot(personal(32.5, 49.3), (between / seatedShift) * standingShift);

// 5. Another day: of the variance of repeated measurements 18 % is the day, 6 % the leg and 28 % error; together
// they are 14.4 mmHg as a standard deviation. (Read so, 42 people on two days and two legs give their grand mean to
// ± 4.9 mmHg; published ± 5.4. Read as the error alone, it would be ± 6.7.)
export const betweenDayDeviation = 14.4 * Math.sqrt(0.18 / (0.18 + 0.06 + 0.28));
