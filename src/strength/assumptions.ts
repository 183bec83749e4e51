import { assume, type Assume } from '../answer/answer.js';

/** The codes of what this layer assumes; their sentences are in `text/assumptions.ts`. */
export type StrengthAssumption =
  | 'one-repetition-is-the-maximum'
  | 'reserve-added'
  | 'rational-form'
  | 'decimal-form'
  | 'constant-one-thirtieth'
  | 'retest-error'
  | 'first-test-error'
  | 'error-of-publication'
  | 'error-share'
  | 'no-error-above-ten'
  | 'regression-of-its-device'
  | 'regression-unit-inferred'
  | 'cubic-form-inferred'
  | 'fitted-on'
  | 'equation-default'
  | 'equation-fitted'
  | 'equation-compared'
  | 'reserve-of-rating'
  | 'one-rep-max-exact'
  | 'body-mass-load-exact'
  | 'body-mass-counted'
  | 'share-from-segments'
  | 'chart-as-printed'
  | 'mean-propulsive-velocity'
  | 'mean-velocity'
  | 'peak-velocity'
  | 'relative-load-no-error'
  | 'loaded-nearest'
  | 'loaded-not-above'
  | 'plates-in-pairs';

export const assumption: Assume<StrengthAssumption> = assume;
