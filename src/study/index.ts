/**
 * For research: columns, agreement, an equation of one’s own, Monte Carlo.
 *
 * @module cuffwork/study
 */
export {
  agreement,
  pairsForLimits,
  type Agreement,
  type AgreementOptions,
  type BySize,
  type Estimates,
  type Percentile,
  type Share,
  type WithConfidence,
  type WithError,
} from './agreement.js';
export type { AnswerColumns, ColumnAnswer, ColumnsAbout } from './column-answer.js';
export type { NumberColumn, WordColumn } from './column-input.js';
export { columns, type ColumnsInput } from './columns.js';
export { estimateWith } from './estimate-with.js';
export { fitOcclusionEquation, type FitInput, type FitRow } from './fit.js';
export {
  equationFromFit,
  type Coefficient,
  type FittedOcclusionEquation,
  type FittedTerm,
  type TermField,
} from './fitted-equation.js';
export { flagCodes, REFUSED, rowFlags, type RowFlag } from './flags.js';
export type { MaximumColumnsInput } from './maximum-columns.js';
export type { OcclusionColumnsInput } from './occlusion-columns.js';
export { propagate, type Propagated, type PropagateInput, type Spread, type Uncertain } from './propagate.js';
export { reliability, type IntraclassCorrelations, type Reliability, type ReliabilityOptions } from './reliability.js';
export type { LoadColumnsInput, TargetColumnsInput } from './share-columns.js';
export type { Normality } from '../statistics/normality.js';
