/**
 * Whole documents: a plan from a person’s readings, limbs and exercises.
 *
 * @module cuffwork/plan
 */
export { planSession } from './plan-session.js';
export type { LimbTotals, Plan, PlanExercise, PlanItem, PlanLimb, PlanRequest, StandingSentence } from './types.js';
