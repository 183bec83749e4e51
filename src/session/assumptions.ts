import { assume, type Assume } from '../answer/answer.js';

/** The codes of what this layer assumes; their sentences are in `text/assumptions.ts`. */
export type SessionAssumption =
  | 'clock-starts-with-inflation'
  | 'tempo-kept'
  | 'one-limb-taken'
  | 'standard-deviation-sample'
  | 'standard-deviation-population'
  | 'standard-deviation-not-told';

export const assumption: Assume<SessionAssumption> = assume;
