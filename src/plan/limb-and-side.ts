import { describe } from '../answer/issues.js';
import { sidesOf } from '../session/prescription.js';
import type { LimbAndSide, ExerciseOnLimb } from './document-parts.js';
import type { ExpandedPlan, PlanExercise, ExpandedPlanItem } from './types.js';

export const isSameLimb = (a: LimbAndSide, b: LimbAndSide): boolean => a.limb === b.limb && a.side === b.side;

/** Each limb once, in the order they come. */
export const limbsIn = (parts: readonly LimbAndSide[]): LimbAndSide[] => [
  ...new Map(parts.map(({ limb, side }) => [`${side} ${limb}`, { limb, side }])).values(),
];

/** Whether an exercise is done with a limb: with every limb of its kind where it names no side. */
export const usesLimb = ({ limb, side }: Pick<PlanExercise, 'limb' | 'side'>, place: LimbAndSide): boolean =>
  limb === place.limb && (!side || sidesOf(side).includes(place.side));

/** An exercise on a limb, however often it is listed. */
export const keyOf = ({ exercise, limb, side }: ExerciseOnLimb): string => JSON.stringify([exercise, limb, side]);

/** An exercise on a limb as an error shows it. */
export const placeText = ({ exercise, limb, side }: ExerciseOnLimb): string =>
  [exercise, limb, side].map(describe).join(' ');

/** Which time each exercise on a limb is listed, from 1: the same one listed again is another one. */
export function timesOf(items: readonly ExerciseOnLimb[]): number[] {
  const seen = new Map<string, number>();
  return items.map((item) => {
    const times = (seen.get(keyOf(item)) ?? 0) + 1;
    seen.set(keyOf(item), times);
    return times;
  });
}

/** One exercise on one limb, distinct from every other. */
export const placesOf = (items: readonly ExerciseOnLimb[]): string[] => {
  const times = timesOf(items);
  return items.map((item, index) => `${keyOf(item)} ${times[index]!}`);
};

/** Finds the request’s exercise behind an item; the same exercise listed again is taken in turn. */
export function exerciseFinder(plan: ExpandedPlan): (item: ExpandedPlanItem) => PlanExercise | undefined {
  const times = timesOf(plan.items);
  const turns = new Map(plan.items.map((item, index) => [item, times[index]!]));
  return (item) =>
    plan.request.exercises.filter((exercise) => exercise.name === item.exercise && usesLimb(exercise, item))[
      turns.get(item)! - 1
    ];
}
