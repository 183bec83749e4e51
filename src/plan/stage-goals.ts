import { type Exact, defined } from '../answer/defined.js';
import type { Reader } from '../answer/reader.js';
import { LIMBS, SIDES, type Limb, type Quantity, type Side } from '../quantity/quantities.js';
import { wholeExercises, type WeekExercise, type WeekLimb, type WeekSums } from './week-rows.js';
import { AT_LEAST, need } from '../answer/needs.js';
import {
  EXERCISE_NAME,
  GOALS,
  LEFT_OUT_MEASURED,
  LEFT_OUT_NOT_LIMB,
  LEFT_OUT_NOT_EXERCISE,
  GIVEN_WITH_MEASURE,
  A_GOAL,
} from './needs.js';
import { NAME } from '../session/needs.js';
import { isName, MOST_NAME } from '../session/prescription.js';
import { highest, inKilograms } from '../session/working.js';

const OF_EXERCISE = ['peakLoadKg', 'peakPercentOneRepMax', 'percentLop', 'restrictionMin'] as const;
const OF_LIMB = [...OF_EXERCISE, 'volumeLoadKg', 'circumferenceCm', 'worstPain'] as const;
const OF_WEEK = ['sessions', 'restrictedSessions', 'sessionLoad'] as const;
/** What of a week a goal can be about. */
export const GOAL_MEASURES = [...OF_LIMB, ...OF_WEEK] as const;

/** What of a week a goal is about. */
export type GoalMeasure = (typeof GOAL_MEASURES)[number];

/** A criterion of your own for a stage. */
export interface StageGoal {
  /** Name of the goal, in your own words. */
  readonly name: string;
  /** Measure of the last week that it is about; left out, give what you `found` yourself. */
  readonly measure?: GoalMeasure | undefined;
  /** Limb of the goal; needed where `measure` is of a limb, and left out otherwise. */
  readonly limb?: Limb | undefined;
  /** Side of that limb; needed where `measure` is of a limb, and left out otherwise. */
  readonly side?: Side | undefined;
  /** Exercise that the goal is about; the whole limb when left out. */
  readonly exercise?: string | undefined;
  /** What you found, such as a hop test [your own unit]; not measured when left out. */
  readonly found?: number | undefined;
  /** Smallest value that meets the goal [unit of the measure]; give this, `atMost` or both. */
  readonly atLeast?: number | undefined;
  /** Largest value that meets the goal [unit of the measure]; give this, `atLeast` or both. */
  readonly atMost?: number | undefined;
}

/** Whether a goal is met. */
export const GOAL_OUTCOMES = ['met', 'not-met', 'not-measured'] as const;

/** A criterion with what was found. It does not mean that you may move on. */
export interface StageGoalResult extends Exact<StageGoal> {
  /** Whether `found` lies within `atLeast` and `atMost`; `not-measured` where nothing was found. */
  readonly outcome: (typeof GOAL_OUTCOMES)[number];
}

const GOAL: Quantity = { name: 'goal', unit: '1', min: 0, max: 1_000_000, slips: [] };
const isOneOf = <M extends GoalMeasure>(measure: GoalMeasure | undefined, all: readonly M[]): measure is M =>
  all.some((one) => one === measure);

/** The goals of a request; what does not go together is reported. */
export function readGoals(reader: Reader): StageGoal[] {
  return (reader.optionalList('goals', GOALS, 50) ?? []).map((goal) => {
    const given = defined({
      name: goal.text('name', need(NAME, { most: MOST_NAME }), isName),
      measure: goal.optionalChoice('measure', GOAL_MEASURES),
      limb: goal.optionalChoice('limb', LIMBS),
      side: goal.optionalChoice('side', SIDES),
      exercise: goal.optionalText('exercise', EXERCISE_NAME, isName),
      found: goal.optionalNumber('found', GOAL),
      atLeast: goal.optionalNumber('atLeast', GOAL),
      atMost: goal.optionalNumber('atMost', GOAL),
    }) as StageGoal;
    const { measure, atLeast = -Infinity, atMost = Infinity } = given;
    if (goal.has('measure')) goal.leaveOut('found', LEFT_OUT_MEASURED);
    for (const field of ['limb', 'side']) {
      if (!isOneOf(measure, OF_LIMB)) goal.leaveOut(field, LEFT_OUT_NOT_LIMB);
      else if (!goal.has(field)) goal.report('missing', field, need(GIVEN_WITH_MEASURE, { measure }));
    }
    if (!isOneOf(measure, OF_EXERCISE)) {
      goal.leaveOut('exercise', need(LEFT_OUT_NOT_EXERCISE, { measures: OF_EXERCISE }));
    }
    if (!goal.has('atLeast') && !goal.has('atMost')) goal.report('missing', 'atLeast', A_GOAL);
    if (atMost < atLeast) goal.refuse('atMost', need(AT_LEAST, { least: atLeast }), String(atMost));
    return given;
  });
}

/** What a limb or one exercise on it goes through in a week. */
type Sums = Pick<WeekExercise, 'peakLoad' | 'peakPercentOneRepMax' | 'percentLop' | 'restrictionTime'> &
  Partial<Pick<WeekLimb, 'volumeLoad' | 'circumferenceCm' | 'worstPain'>>;

const FOUND: Readonly<Record<(typeof OF_LIMB)[number], (of: Sums) => number | undefined>> = {
  peakLoadKg: ({ peakLoad }) => peakLoad && inKilograms(peakLoad),
  peakPercentOneRepMax: ({ peakPercentOneRepMax }) => peakPercentOneRepMax?.value,
  percentLop: ({ percentLop }) => percentLop?.value,
  restrictionMin: ({ restrictionTime }) => restrictionTime.value / 60,
  volumeLoadKg: ({ volumeLoad }) => volumeLoad && inKilograms(volumeLoad),
  circumferenceCm: ({ circumferenceCm }) => circumferenceCm,
  worstPain: ({ worstPain }) => worstPain?.value,
};

/** What was found of a goal in a week; nothing where it was not measured. */
function foundIn({ measure, limb, side, exercise, found }: StageGoal, week: WeekSums | undefined): number | undefined {
  if (measure === undefined) return found;
  if (isOneOf(measure, OF_WEEK)) return week?.[measure]?.value;
  const own = week?.limbs.find((one) => one.limb === limb && one.side === side);
  if (!own) return undefined;
  if (exercise !== undefined) {
    const one = wholeExercises(own.exercises).find((other) => other.exercise === exercise);
    return one && FOUND[measure](one);
  }
  const percentLop = highest(own.exercises.flatMap((one) => one.percentLop ?? []));
  return FOUND[measure]({ ...own, ...(percentLop && { percentLop }) });
}

/** Each goal compared with a week. */
export const goalResults = (goals: readonly StageGoal[], week: WeekSums | undefined): StageGoalResult[] =>
  goals.map((goal) => {
    const found = foundIn(goal, week);
    const { atLeast = -Infinity, atMost = Infinity } = goal;
    const outcome = found === undefined ? 'not-measured' : found >= atLeast && found <= atMost ? 'met' : 'not-met';
    return { ...defined({ ...goal, found }), outcome };
  });
