/**
 * Occlusion pressures, targets, maxima, loads, timelines and totals: each an answer with its error, evidence and
 * cautions. `cuffwork/explain` has the words, the working and the references.
 *
 * @module cuffwork
 */
export type {
  Answer,
  AnswerKind,
  Assumption,
  Caution,
  ErrorPart,
  AnyInputs,
  BodyMassInputs,
  CuffInputs,
  Inputs,
  LoadInputs,
  MaximumInputs,
  OcclusionInputs,
  PercentInputs,
  Reached,
  ReachedLoad,
  ReachedPressure,
  Sentence,
  Severity,
  Symbols,
  WithInterval,
} from './answer/answer.js';
export type { AssumptionCode, CautionCode } from './answer/codes.js';
export type { AnswerRange, PercentRange } from './answer/range.js';
export {
  centimetresToInches,
  inchesToCentimetres,
  kilogramsToPounds,
  kilopascalsToMmHg,
  mmHgToKilopascals,
  poundsToKilograms,
  roundToStep,
} from './answer/convert.js';
export {
  attemptForm,
  inputFields,
  type FormAttempt,
  type FormOptions,
  type FormUnit,
  type InputField,
} from './answer/form.js';
export {
  attempt,
  InputError,
  isInputError,
  type Attempt,
  type Expectation,
  type InputIssue,
  type Path,
} from './answer/issues.js';
export type { Exact, Full, Loose } from './answer/defined.js';
export type { TakesInput } from './answer/with-input.js';
export type { IssueCode, MessageValues } from './answer/messages.js';
export { equations } from './equation-list.js';
export { grades, type Grade } from './evidence/grades.js';
export { guards, type Guard, type GuardId, type GuardStep } from './evidence/guards.js';
export type { Source } from './evidence/source.js';
export type { SourceId } from './evidence/sources.js';
export {
  correctForBladderWidth,
  type BladderWidthInput,
  type CorrectedBloodPressure,
} from './pressure/bladder-width.js';
export {
  calibrateOcclusionPressure,
  type CalibratedOcclusionPressure,
  type CalibrationInput,
} from './pressure/calibrate.js';
export { correctForCuffWidth, type CuffWidthInput } from './pressure/cuff-width.js';
export type { CurveError, PooledCurve } from './pressure/curve.js';
export type { CuffClass, ExtraReading, OcclusionEquation, OcclusionReadings, Range } from './pressure/equation.js';
export type { OcclusionEquationId } from './pressure/equations.js';
export {
  compareOcclusionEquations,
  estimateOcclusionPressure,
  type OcclusionComparison,
  type OcclusionComparisonInput,
  type OcclusionInput,
  type OcclusionPressure,
} from './pressure/estimate.js';
export { withinFittedRange, type FittedRange, type FittedRangeInput, type Zone } from './pressure/fitted-range.js';
export { circumferenceBandPressure, systolicSharePressure, type FixedTrainingPressure } from './pressure/fixed.js';
export type { ReadingErrors } from './pressure/uncertainty.js';
export { measuredOcclusionPressure, type MeasuredInput, type MeasurementMethod } from './pressure/measured.js';
export { correctForPosture, type PostureInput } from './pressure/posture.js';
export {
  targetCuffPressure,
  targetCuffPressureRange,
  type CuffPressure,
  type TargetInput,
  type TargetRangeInput,
} from './pressure/target.js';
export {
  quantities,
  type CircumferenceSite,
  type ExerciseMode,
  type Limb,
  type LoadUnit,
  type Posture,
  type Quantity,
  type QuantityName,
  type Sex,
  type Side,
  type Unit,
} from './quantity/quantities.js';
export type { ReadingName } from './quantity/readings.js';
export type { Rounding } from './quantity/exact.js';
export { sessionTotals, type ExerciseTotals, type SessionTotals } from './session/totals.js';
export { protocolExamples, type ProtocolExample, type TrainingAim } from './evidence/protocol-examples.js';
export { limbSymmetry, type LimbSymmetry, type SymmetryInput } from './session/symmetry.js';
export type { LimbExposure } from './session/limbs.js';
export type {
  ExerciseSet,
  CountedScheme,
  CountedSets,
  CuffInflated,
  CuffLowered,
  ExerciseSets,
  ExerciseSide,
  FullSet,
  InSession,
  LoadOfMaximum,
  NoCuff,
  PerSide,
  Place,
  Prescription,
  PrescriptionFields,
  SetsFields,
  ShareOfMaximum,
  Timed,
  TimedScheme,
  TimedSets,
  Restriction,
  Session,
  SessionExercise,
  SessionInput,
  SessionNotes,
  WarmUpSet,
} from './session/prescription.js';
export type { Tempo } from './session/notation.js';
export {
  weekTotals,
  type Deviation,
  type LimbKilograms,
  type LimbSeconds,
  type RatioForm,
  type TrainingDay,
  type WeekInput,
  type WeekTotals,
} from './session/week.js';
export { sessionRpeScale } from './session/session-rpe.js';
export { sessionTimeline, type SessionEvent, type SessionTimeline } from './session/timeline.js';
export {
  bodyMassLoad,
  bodyMassShares,
  type BodyMassInput,
  type BodyMassMovement,
  type BodyMassShare,
} from './strength/body-mass.js';
export { compareOneRepMaxEquations, type OneRepMaxComparison, type PublishedBias } from './strength/compare.js';
export type { OneRepMaxEquation, RelativeLoadEquation } from './strength/equation.js';
export type { OneRepMaxEquationId, RelativeLoadEquationId } from './strength/equations.js';
export type { Lift, Training } from './strength/lifts.js';
export {
  estimateOneRepMax,
  testedOneRepMax,
  type OneRepMax,
  type OneRepMaxInput,
  type TestedInput,
} from './strength/one-rep-max.js';
export { plateSets, type PlateSet } from './strength/plate-sets.js';
export { loadPlates, type BarAndPlates, type LoadedWeight, type Plate, type PlatesInput } from './strength/plates.js';
export { estimateRelativeLoad, type RelativeLoadInput } from './strength/relative-load.js';
export {
  percentAtRepetitions,
  repetitionsAtPercent,
  type PercentInput,
  type RepetitionChart,
  type RepetitionsInput,
} from './strength/repetitions.js';
export type { LiftedSet, LiftFacts } from './strength/read-set.js';
export { repetitionsInReserveFromRpe, type ReserveRatingInput } from './strength/reserve.js';
export {
  trainingLoad,
  trainingLoadRange,
  type TrainingLoad,
  type TrainingLoadInput,
  type TrainingLoadRangeInput,
} from './strength/training-load.js';
