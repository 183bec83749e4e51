/**
 * Whole documents: screening, planning, review, record, progression.
 *
 * @module cuffwork/plan
 */
export { guidelines, type Guideline, type GuidelineId, type GuidelineRow } from './guidelines.js';
export { measures, type Measure } from './measures.js';
export {
  compareWeeks,
  type WeekComparison,
  type WeekComparisonInput,
  type WeekLimb,
  type WeekRow,
  type WeekSession,
} from './compare-weeks.js';
export { nextRequest, type NextRequest, type NextRequestInput } from './next-request.js';
export { ladder, nextRung, type LadderPlace, type Rung } from './next-rung.js';
export {
  nextSession,
  type MeasureAgain,
  type ProgressionAction,
  type ProgressionRequest,
  type Proposal,
  type ProposalItem,
} from './next-session.js';
export { planSession } from './plan-session.js';
export { progressionRules, type ProgressionRule, type ProgressionRuleId } from './progression-rules.js';
export { readDocument } from './read-document.js';
export {
  recordSession,
  type DoneItem,
  type Feelings,
  type RecordItem,
  type RecordRequest,
  type SessionRecord,
  type Symptom,
} from './record-session.js';
export { reviewPlan, type Judgement, type Review, type ReviewFinding, type ReviewOptions } from './review-plan.js';
export {
  screen,
  screeningQuestions,
  type Screening,
  type ScreeningFinding,
  type ScreeningQuestion,
  type ScreeningReply,
  type ScreeningRequest,
} from './screen.js';
export type { ScreeningOutcome } from './screening-items.js';
export { symptoms } from './standing.js';
export { standingStops, type DeciderRole, type Stop, type StopCode, type StopDecision } from './stops.js';
export { trainingDays, type TrainingDaysInput } from './training-days.js';
export type {
  LimbTotals,
  Plan,
  PlanExercise,
  PlanItem,
  PlanLimb,
  PlanClock,
  PlanMaximum,
  PlanRequest,
  PlanSet,
  PlanSetRequest,
  StandingSentence,
} from './types.js';
