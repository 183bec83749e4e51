import { defined } from '../answer/defined.js';
import { attempt } from '../answer/issues.js';
import { decimal } from '../quantity/decimal.js';
import { sum } from '../quantity/exact.js';
import { parseScheme } from '../session/notation.js';
import { trainingLoad, type TrainingLoadInput } from '../strength/training-load.js';
import { heaviestUpTo } from './available-loads.js';
import { loadChoicesOf } from './exercise-load.js';
import { loadOf } from './item-draft.js';
import { OF_MAXIMUM, type ExpandedPlanItem, type PlanExerciseFields, type PlanSetFields } from './types.js';

/** Decimals of a percentage, the fewest first, and how it is brought to them: the nearest, then the next one up. */
const DIGITS = [1, 2, 4, 8];
const HALF_UP = 4;
const UP = 0;

/** The sets of an exercise, one by one. */
export const setsOf = ({ scheme, sets }: PlanExerciseFields): readonly PlanSetFields[] =>
  sets ?? parseScheme(scheme ?? '') ?? [];

/** An exercise with other sets, one by one in place of a scheme. */
export function withSets(
  { scheme: _, ...exercise }: PlanExerciseFields,
  sets: readonly PlanSetFields[],
): PlanExerciseFields {
  return { ...exercise, sets };
}

/**
 * An exercise at another load: by a percentage of the same maximum where one gives it, else with the load stated. Sets
 * with loads of their own go up or down by as much, or as `ofSet` says; one that no load you can set is below stays.
 */
export function withLoad(
  exercise: PlanExerciseFields,
  item: ExpandedPlanItem,
  to: number,
  ofSet: (load: number) => number = (load) => sum([load, to, -item.load!.value]),
): PlanExerciseFields {
  const next = atLoad(exercise, item, to);
  if (!next.sets || !item.sets.some(({ load }) => load !== undefined)) return next;
  const sets = next.sets.map(({ percentOneRepMax: _, ...set }, index) => {
    const { load } = item.sets[index]!;
    return { ...set, ...(load !== undefined && { load: heaviestUpTo(ofSet(load), exercise) ?? load }) };
  });
  return { ...next, sets };
}

function atLoad(exercise: PlanExerciseFields, item: ExpandedPlanItem, to: number): PlanExerciseFields {
  const { oneRepMax, upperLoad } = item;
  const { load: from, unit, maximum } = loadOf(item);
  if (typeof exercise.load === 'object') return { ...exercise, load: to, unit };
  if (from === undefined || maximum === undefined) return { ...exercise, load: to };
  const share = decimal(to).times(100).div(decimal(maximum));
  const choices = defined(loadChoicesOf(exercise));
  const { percentOneRepMax: range } = exercise;
  for (const digits of DIGITS) {
    for (const rounding of [HALF_UP, UP] as const) {
      const percentOneRepMax = share.toDecimalPlaces(digits, rounding).toNumber();
      const asked = attempt(trainingLoad, { oneRepMax, percentOneRepMax, ...choices } as TrainingLoadInput);
      if (!asked.ok || asked.value.value !== to) continue;
      // A step inside the range leaves its upper end where it is.
      const inside = upperLoad && typeof range === 'object' && to > from && to < upperLoad.value;
      return { ...exercise, percentOneRepMax: inside ? { from: percentOneRepMax, to: range.to } : percentOneRepMax };
    }
  }
  const ofMaximum: readonly string[] = ['oneRepMax', ...OF_MAXIMUM];
  const rest = Object.entries(exercise).filter(([name]) => !ofMaximum.includes(name));
  return { ...(Object.fromEntries(rest) as object as PlanExerciseFields), load: to, unit };
}
