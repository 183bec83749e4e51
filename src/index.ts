/**
 * Occlusion pressures, targets, maxima, loads, timelines and totals: each an answer with its error, evidence and
 * source, and `explain` and `cite` for every one of them.
 *
 * @module cuffwork
 */
export type { Answer, AnswerKind, Assumption, Caution, ErrorPart, Inputs, Severity, Symbols } from './answer/answer.js';
export { cite, type Citation } from './answer/cite.js';
export { attempt, InputError, isInputError, type Attempt, type InputIssue, type Path } from './answer/issues.js';
export { fill, type IssueCode, type MessageValues } from './answer/messages.js';
export { messages, type MessageCode } from './messages.js';
export { equations } from './equation-list.js';
export { grades, type Grade } from './evidence/grades.js';
export type { Source } from './evidence/source.js';
export { sources, type SourceId } from './evidence/sources.js';
export { explain } from './explain.js';
export { correctForCuffWidth, type CuffWidthInput } from './pressure/cuff-width.js';
export type { ExtraReading, OcclusionEquation, OcclusionReadings } from './pressure/equation.js';
export type { OcclusionEquationId } from './pressure/equations.js';
export { estimateOcclusionPressure, type OcclusionInput, type OcclusionPressure } from './pressure/estimate.js';
export { measuredOcclusionPressure, type MeasuredInput, type MeasurementMethod } from './pressure/measured.js';
export { targetCuffPressure, type CuffPressure, type TargetInput } from './pressure/target.js';
export {
  centimetresToInches,
  inchesToCentimetres,
  kilogramsToPounds,
  kilopascalsToMmHg,
  mmHgToKilopascals,
  poundsToKilograms,
} from './quantity/convert.js';
export {
  quantities,
  type Limb,
  type LoadUnit,
  type Posture,
  type Quantity,
  type QuantityName,
  type Sex,
  type Side,
  type Unit,
} from './quantity/quantities.js';
export { roundToStep, type Rounding } from './quantity/round.js';
export { accountSession, type SessionTotals } from './session/account.js';
export type { ExerciseSet, Prescription, Restriction, Tempo } from './session/prescription.js';
export { sessionTimeline, type SessionEvent, type SessionTimeline } from './session/timeline.js';
export type { OneRepMaxEquation } from './strength/equation.js';
export type { OneRepMaxEquationId } from './strength/equations.js';
export {
  estimateOneRepMax,
  testedOneRepMax,
  type OneRepMax,
  type OneRepMaxInput,
  type TestedInput,
} from './strength/one-rep-max.js';
export { trainingLoad, type TrainingLoad, type TrainingLoadInput } from './strength/training-load.js';
