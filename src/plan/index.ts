/**
 * Whole documents: screening, planning, review, record, progression.
 *
 * @module cuffwork/plan
 */
export { audiences } from './audience.js';
export type { Audience } from '../answer/audiences.js';
export { guidelines, type Guideline, type GuidelineId, type GuidelineRow } from './guidelines.js';
export { measures, type Measure } from './measures.js';
export {
  compareSessions,
  type ComparableSession,
  type ItemOfDocument,
  type ComparisonInput,
  type SessionComparison,
} from './compare-sessions.js';
export type { ComparedLine, ComparedQuantity, ComparisonRow, NotKnown } from '../session/compare.js';
export {
  compareWeeks,
  type WeekComparison,
  type WeekComparisonInput,
  type WeekInput,
  type WeekSession,
} from './compare-weeks.js';
export type { GoalMeasure, StageGoal, StageGoalResult } from './stage-goals.js';
export type { WeekExercise, WeekLimb, WeekOcclusion, WeekRow, WeekSums } from './week-rows.js';
export { checkDay, dayQuestions } from './day-check.js';
export { findItem, type ItemPlace } from './find-item.js';
export { lightenExercise, type Keeps, type LightenInput, type LighterOption, type LighterOptions } from './lighten.js';
export { nextRequest, type NextRequest, type NextRequestInput } from './next-request.js';
export { progression, nextStage, type StagePlace, type Stage } from './next-stage.js';
export { nextSession } from './next-session.js';
export { painRules, type PainMoment, type PainReport, type PainRule, type PainRuleId, type PainSite } from './pain.js';
export { planSession } from './plan-session.js';
export { progressionRules, type ProgressionRule, type ProgressionRuleId } from './progression-rules.js';
export { progressionLimits, type ProgressionLimit } from './progression-limits.js';
export type {
  MeasureAgain,
  ProgressionAction,
  ProgressionRequest,
  Proposal,
  ProposalItem,
  ProposedChange,
  SetGoal,
} from './proposal.js';
export { readAnswer, readDocument } from './read-back.js';
export { expandDocument } from './read-document.js';
export type { AnswerPointer, Answered, DocumentAnswer, Stated, StatedAnswer, StatedTotals } from './stated.js';
export { recordSession } from './record-session.js';
export type {
  DoneItem,
  ExpandedRecord,
  ExpandedRecordItem,
  Feelings,
  RecordFacts,
  RecordItem,
  RecordRequest,
  SessionRecord,
} from './record.js';
export {
  reviewPlan,
  type Assessment,
  type Review,
  type ReviewFinding,
  type ReviewOptions,
  type StopFinding,
} from './review-plan.js';
export type { Disclaimer, DisclaimerCode } from './disclaimers.js';
export type { DocumentHead, ExerciseOnLimb, LimbAndSide } from './document-parts.js';
export type {
  AnswersDocument,
  DayCheck,
  DayCheckRequest,
  OpenQuestion,
  Screening,
  ScreeningFinding,
  ScreeningQuestion,
  ScreeningRequest,
} from './questions.js';
export { screen, screeningQuestions } from './screen.js';
export type { ScreeningOutcome, ScreeningReply } from './screening-items.js';
export { symptoms, type Symptom, type SymptomGrade, type SymptomRow } from './symptoms.js';
export { stopsInForce, type DeciderRole, type Stop, type StopCode, type StopDecision } from './stops.js';
export { trainingDays, type TrainingDaysInput } from './training-days.js';
export type {
  DoneSet,
  ExpandedLimbTotals,
  ExpandedPlan,
  ExpandedPlanClock,
  ExpandedPlanItem,
  ItemFacts,
  LimbTotals,
  Plan,
  PlanFacts,
  ExerciseCuff,
  ExerciseLift,
  LiftsBodyMass,
  LiftsNothing,
  LiftsOwnLoad,
  LiftsShareOfMaximum,
  Aerobic,
  Passive,
  CuffLowerInRests,
  CuffOff,
  CuffOn,
  PlanExercise,
  PlanExerciseFields,
  PlanItem,
  PlanLimb,
  PlanClock,
  PlanMaximum,
  PlanRequest,
  PlanSet,
  PlanSetFields,
  PlanSetRequest,
} from './types.js';
export type { DayCode, ScreeningCode } from '../answer/codes.js';
