/**
 * For research: columns, agreement, your own equation, Monte Carlo.
 *
 * @module cuffwork/study
 */
export { agreement, type Agreement, type AgreementOptions, type Estimates, type Percentile } from './agreement.js';
export type { BySize } from './agreement-by-size.js';
export { pairsForLimits } from './pairs-for-limits.js';
export { conformal, type Conformal, type ConformalOptions } from './conformal.js';
export type { AnswerColumns, ColumnAnswer, ColumnsAbout } from './column-answer.js';
export type { NumberColumn, WordColumn } from './column-input.js';
export { columns, type ColumnsInput } from './columns.js';
export { compareColumns, type CompareColumnsInput, type ComparedColumns } from './compare-columns.js';
export { eachRow, type RowFields } from './each-row.js';
export { estimateWith, type OwnEstimateInput } from './estimate-with.js';
export { fitOcclusionEquation, type FitInput } from './fit.js';
export type {
  Coefficient,
  FitDiagnostics,
  FittedOcclusionEquation,
  FittedTerm,
  Leverage,
  OwnOcclusionEquation,
  OwnReading,
  RecalibratedOcclusionEquation,
  TermField,
} from './fitted-equation.js';
export { equationFromFit } from './own-equation.js';
export { flagCodes, REFUSED, rowFlags, type RowFlag } from './flags.js';
export type { MaximumColumnsInput } from './maximum-columns.js';
export type { FitRow } from './own-rows.js';
export type { OcclusionColumnsInput } from './occlusion-columns.js';
export { propagate, type Correlation, type Propagated, type PropagateInput, type Spread } from './propagate.js';
export type {
  NormalUncertain,
  SampleUncertain,
  StudentUncertain,
  TriangularUncertain,
  Uncertain,
  UniformUncertain,
} from './uncertain.js';
export { recalibrateOcclusionEquation, type RecalibrateInput, type RecalibrateRow } from './recalibrate.js';
export {
  bootstrap,
  crossValidate,
  type Bootstrap,
  type BootstrapInput,
  type CrossValidated,
  type CrossValidateInput,
} from './resample.js';
export { reliability, type IntraclassCorrelations, type Reliability, type ReliabilityOptions } from './reliability.js';
export { reachedColumns, type ReachedColumns, type ReachedColumnsInput } from './reached-columns.js';
export type { LoadColumnsInput, TargetColumnsInput } from './share-columns.js';
export type { WithConfidence, WithError } from '../statistics/interval.js';
export type { Normality } from '../statistics/normality.js';
export type { Share } from '../statistics/shares.js';
