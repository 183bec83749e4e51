import { assume, type Assume } from '../answer/answer.js';

/** The codes of what this layer assumes; their sentences are in `text/assumptions.ts`. */
export type PlanAssumption =
  | 'load-as-stated'
  | 'reperfusion-taken'
  | 'tempo-not-recorded'
  | 'pressure-as-planned'
  | 'readings-carried'
  | 'lighter-reserve-of-fresh-set'
  | 'lower-of-two-sides'
  | 'screening-age-unknown'
  | 'screening-dated'
  | 'score-for-inpatients'
  | 'score-cut-offs'
  | 'score-points-differ';

export const assumption: Assume<PlanAssumption> = assume;
