import type { ExerciseMode } from '../quantity/quantities.js';
import type { Grade } from './grades.js';

/** A range of some guidance, with how well it is backed. An end that is left out is open. */
export interface GuidedRange {
  readonly low?: number;
  readonly high?: number;
  readonly evidence: Grade;
}

const moving = { low: 40, high: 80, evidence: 'secondary' } as const;

/**
 * Ranges of the 2019 guideline review (Front Physiol 2019;10:533) that more than one layer uses. Those of grade
 * `secondary` were read in a teaching article of 2021 that reprints them; its author has a commercial interest.
 */
export const guidance2019 = {
  /** Cuff pressure [% of occlusion pressure]. */
  percentLop: {
    resistance: moving,
    aerobic: moving,
    passive: { low: 70, high: 100, evidence: 'unconfirmed' },
  },
  /** Load with restriction [% of the maximum]. */
  percentOneRepMax: { low: 20, high: 40, evidence: 'secondary' },
  /** Restriction in one exercise; at rest at a time [min]. */
  restrictionMin: {
    resistance: { low: 5, high: 10, evidence: 'secondary' },
    aerobic: { low: 5, high: 20, evidence: 'unconfirmed' },
    passive: { low: 5, high: 5, evidence: 'unconfirmed' },
  },
} as const satisfies {
  readonly percentLop: Record<ExerciseMode, GuidedRange>;
  readonly percentOneRepMax: GuidedRange;
  readonly restrictionMin: Record<ExerciseMode, GuidedRange>;
};

/** What practitioners keep to without a source. */
export const commonPractice = {
  /** Restriction on one limb in a session [min]. */
  limbRestrictionMin: { high: 20, evidence: 'practice' },
  /** Cuff down on a limb between two exercises [min]. */
  reperfusionMin: { low: 3, evidence: 'practice' },
} as const satisfies Record<string, GuidedRange>;
