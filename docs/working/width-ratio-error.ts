/*
 * How wrong is the width-ratio formula? The working behind the error of `width-ratio-1993` and of
 * `correctForCuffWidth` (grade `derived`).
 *
 * The publications give group means of measured occlusion pressure, but not the girth and blood pressure of
 * their samples. A nominal person stands in for every sample: 120/70 mmHg, thigh 55 cm, arm 32 cm. So part of
 * what is called error here is the distance of the samples from that person; the figure is wide on purpose.
 */
import groupMeans from '../../src/checks/group-means.json' with { type: 'json' };
import { widthRatio } from '../../src/pressure/equations/width-ratio.js';

const NOMINAL = { systolicMmHg: 120, diastolicMmHg: 70, girthCm: { leg: 55, arm: 32 } } as const;

const rms = (values: readonly number[]): number => Math.hypot(...values) / Math.sqrt(values.length);

/** Each group mean beside the formula’s answer for the nominal person. */
export const deviations = groupMeans.rows.map(({ limb, cuffWidthCm, mean, standardDeviation, source }) => {
  const girth = NOMINAL.girthCm[limb as 'leg' | 'arm'];
  const formula = widthRatio(girth, NOMINAL.systolicMmHg, NOMINAL.diastolicMmHg, cuffWidthCm);
  return {
    source,
    limb,
    cuffWidthCm,
    mean,
    formula,
    offByShare: (mean - formula) / formula,
    spreadShare: standardDeviation === undefined ? undefined : standardDeviation / mean,
  };
});

/** Error as a share of the answer: how far means lie off, and people from their mean, in quadrature. */
export const widthRatioShare = Math.hypot(
  rms(deviations.map(({ offByShare }) => offByShare)),
  rms(deviations.flatMap(({ spreadShare }) => (spreadShare === undefined ? [] : [spreadShare]))),
);

/** Pairs of widths measured in the same people. */
const pairs = [
  { source: 'cuff-width-2012', narrowCm: 5, narrow: 235, wideCm: 13.5, wide: 144 },
  { source: 'athletes-2018, arm', narrowCm: 6, narrow: 161, wideCm: 13, wide: 133 },
  { source: 'athletes-2018, leg', narrowCm: 13, narrow: 161, wideCm: 18, wide: 170 },
];

const carried = (pressure: number, from: number, to: number): number =>
  NOMINAL.diastolicMmHg + ((pressure - NOMINAL.diastolicMmHg) * from) / to;

/** Each pair carried both ways: what the correction gives beside what was measured. */
export const corrections = pairs.flatMap(({ source, narrowCm, narrow, wideCm, wide }) => [
  { source, fromCm: narrowCm, toCm: wideCm, measured: wide, corrected: carried(narrow, narrowCm, wideCm) },
  { source, fromCm: wideCm, toCm: narrowCm, measured: narrow, corrected: carried(wide, wideCm, narrowCm) },
]);

/** Error of the correction as a share of its answer, for each unit of |ln(from / to)|. */
export const widthCorrectionShare = rms(
  corrections.map(
    ({ fromCm, toCm, measured, corrected }) => (measured - corrected) / corrected / Math.abs(Math.log(fromCm / toCm)),
  ),
);
