import type { Grade } from './grades.js';
import type { SourceId } from './sources.js';

/** A figure with the range printed behind it. */
export interface RangedFigure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A set done to failure under the cuff: the load [% of 1RM] and how many repetitions it took. */
export interface RestrictedSet {
  readonly percentOneRepMax: number;
  /** Median repetitions, and the range printed behind it; the paper does not say which range. */
  readonly repetitions: RangedFigure;
  /** Error of the predicted repetitions in reserve: median and range. Left out where it was not reported. */
  readonly reserveError?: RangedFigure;
}

/**
 * The last set of 30-15-15-15 to failure: bench press, 20 people, rests of 30 s, a continuous 60 % of limb occlusion
 * pressure. At 40 % of 1RM, 14 of 20 did 15 repetitions or fewer. No figures were found for leg exercises.
 */
export const lastSetToFailure = {
  source: 'restricted-reserve-2025',
  evidence: 'published',
  limb: 'arm',
  sets: [
    {
      percentOneRepMax: 20,
      repetitions: { value: 90, low: 53, high: 114 },
      reserveError: { value: 52, low: 23, high: 76 },
    },
    {
      percentOneRepMax: 30,
      repetitions: { value: 30, low: 19, high: 37 },
      reserveError: { value: 9, low: 2, high: 15 },
    },
    { percentOneRepMax: 40, repetitions: { value: 8, low: 5, high: 16 } },
  ],
} as const satisfies {
  readonly source: SourceId;
  readonly evidence: Grade;
  readonly limb: 'arm';
  readonly sets: readonly RestrictedSet[];
};

/**
 * Four sets to failure with restriction at 50 % of 1RM or less: mean repetitions and 95 % confidence interval of each
 * set, and of all four; 25 studies, 678 people. The sets and the total were pooled separately.
 */
export const fourSetsToFailure = {
  source: 'restricted-failure-2025',
  evidence: 'published',
  sets: [
    { value: 36, low: 30.5, high: 41.4 },
    { value: 14.7, low: 12.2, high: 17.1 },
    { value: 11.5, low: 9.2, high: 13.8 },
    { value: 10.4, low: 8.1, high: 12.7 },
  ],
  total: { value: 73.1, low: 61.1, high: 85.2 },
} as const satisfies {
  readonly source: SourceId;
  readonly evidence: Grade;
  readonly sets: readonly RangedFigure[];
  readonly total: RangedFigure;
};
