/*
 * The working behind the errors of the equations used by name, of conversions between postures and widths, and of another
 * day (grade `derived`): equations against published group means, for the nominal person of pooled-curve.ts.
 *
 * Means from memory (`unconfirmed`) are left out of every derivation. A posture that was not reported counts as supine.
 * Errors are rounded up to two digits.
 */
import { arm2015 } from '../../src/pressure/equations/arm-2015.js';
import { thigh2015 } from '../../src/pressure/equations/thigh-2015.js';
import { thigh2019 } from '../../src/pressure/equations/thigh-2019.js';
import { widthRatio } from '../../src/pressure/equations/width-ratio.js';
import { leftOut, means, NOMINAL, rms, type LeftOut, type Mean } from './pooled-curve.js';

const { systolicMmHg, diastolicMmHg, ageYears, circumferenceCm } = NOMINAL;
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** People about the mean of their sample, as a share of it. */
const spreadOf = (rows: readonly Mean[]): number =>
  rms(rows.flatMap((row) => (row.standardDeviation === undefined ? [] : [row.standardDeviation / row.mean])));

export const classOf = ({ limb, widthCm }: Mean): 'thigh-narrow' | 'thigh-wide' | 'arm' =>
  limb === 'arm' ? 'arm' : widthCm < 8 ? 'thigh-narrow' : 'thigh-wide';

// 1. The width-ratio formula on each published mean of known width; it has no posture, so others than supine are left out.

const known = means.filter(({ assumed, grade }) => !assumed && grade === 'published');
export const widthRatioMeans = known.flatMap((row) => {
  if (row.at !== 'supine') return [];
  const formula = widthRatio(circumferenceCm[row.limb], systolicMmHg, diastolicMmHg, row.widthCm);
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

// 2. The thigh index on the supine means within 2 cm of its cuffs. Its band counts as rectangular: half-width / √3.

const indexMeans = known.flatMap((row) => {
  if (classOf(row) !== 'thigh-wide' || row.at !== 'supine') return [];
  const answer = (row.widthCm < 15 ? 1.3 : 1.1) * systolicMmHg;
  return [{ row, answer, offByShare: (row.mean - answer) / answer }];
});
export const indexCount = indexMeans.length;
export const indexShare = Math.hypot(
  rms(indexMeans.map(({ offByShare }) => offByShare)),
  spreadOf(indexMeans.map(({ row }) => row)),
  0.1 / Math.sqrt(3) / 1.1,
);

// 3. The thigh regression of 2015: R² 0.49 of the standard deviation of a sample without a pressure limit.

export const thigh2015Deviation = Number((94 * Math.sqrt(1 - 0.49)).toFixed(1));

// 4. Every equation compared with the curve, which has not seen the laboratory.

const sexes = [1, 2] as const;
const near = (row: Mean, width: number): boolean => Math.abs(row.widthCm - width) <= 0.5;
/** Each equation for the nominal person, with the cuff of a sample, where it applies. */
const byEquation: Readonly<Record<string, (row: Mean) => number | undefined>> = {
  'width-ratio-1993': (row) => widthRatio(circumferenceCm[row.limb], systolicMmHg, diastolicMmHg, row.widthCm),
  'thigh-2019': (row) =>
    row.limb === 'leg' && near(row, 18) && row.source !== 'thigh-equation-2019'
      ? mean(sexes.map((sex) => thigh2019(circumferenceCm.leg, systolicMmHg, ageYears, sex)))
      : undefined,
  'thigh-2015': (row) =>
    row.limb === 'leg' && near(row, 5) ? thigh2015(circumferenceCm.leg, systolicMmHg, diastolicMmHg) : undefined,
  'arm-2015': (row) =>
    row.limb === 'arm' && near(row, 5) ? arm2015(circumferenceCm.arm, systolicMmHg, diastolicMmHg) : undefined,
  'thigh-index-12': (row) => (row.limb === 'leg' && near(row, 12) ? 1.3 * systolicMmHg : undefined),
  'thigh-index-18': (row) =>
    row.limb === 'leg' && row.widthCm >= 17.5 && row.widthCm <= 20.5 ? 1.1 * systolicMmHg : undefined,
};

/** On each mean of known or assumed width: the curve without its laboratory, and every other equation. */
export const sameMeans = leftOut().map((one: LeftOut) => ({
  ...one,
  others: Object.entries(byEquation).flatMap(([equation, answer]) => {
    const given = answer(one.mean);
    return given === undefined ? [] : [{ equation, answer: given, error: Math.log(one.mean.mean / given) }];
  }),
}));

/** Root-mean-square errors of ln(published / predicted) on the same means of known width. */
export const errorsOnSameMeans = (['thigh-narrow', 'thigh-wide', 'arm'] as const).flatMap((kind) =>
  Object.keys(byEquation).flatMap((equation) => {
    const there = sameMeans.flatMap(({ mean: row, error, others }) => {
      const other = others.find((one) => one.equation === equation);
      return classOf(row) === kind && !row.assumed && other ? [{ curve: error, other: other.error }] : [];
    });
    if (there.length === 0) return [];
    return [
      {
        kind,
        equation,
        means: there.length,
        own: rms(there.map(({ other }) => other)),
        curve: rms(there.map((one) => one.curve)),
      },
    ];
  }),
);

// 5. Pairs of widths and of postures measured in the same people, each once.

const pairsBy = (same: (p: Mean, q: Mean) => boolean): readonly (readonly [Mean, Mean])[] =>
  means.flatMap((p, i) =>
    means
      .slice(i + 1)
      .flatMap((q) => (p.source === q.source && p.limb === q.limb && same(p, q) ? [[p, q] as const] : [])),
  );
export const widthPairs = pairsBy((p, q) => p.at === q.at && p.widthCm !== q.widthCm);
export const posturePairs = pairsBy((p, q) => p.widthCm === q.widthCm && p.at !== q.at);

// 6. One person, leg: of the variance of repeated measurements 18 % is the day, 6 % the leg and 28 % error; together
// they are 14.4 mmHg as a standard deviation. (Read so, 42 people on two days and two legs give their grand mean to
// ± 4.9 mmHg; published ± 5.4. Read as the error alone, it would be ± 6.7.)
const part = (share: number): number => 14.4 * Math.sqrt(share / (0.18 + 0.06 + 0.28));
export const withinPerson = {
  day: part(0.18),
  /** A leg from the mean of both, and from the other leg. */
  side: part(0.06),
  otherSide: Math.SQRT2 * part(0.06),
  measuring: part(0.28),
};
