import { lightenExercise, type LighterOptions, type Plan, type PlanExerciseFields } from '../../src/plan/index.js';

/** Name of the exercise in plans of one. */
export const name = 'leg extension';
export const lighter = (plan: Plan, lighterPercent: number, exercise = name) =>
  lightenExercise({ plan, exercise, lighterPercent });
export const kept = ({ options }: LighterOptions) => options.map(({ keeps }) => keeps);
export const notOffered = (found: LighterOptions) => found.notOffered.map(({ keeps, code }) => [keeps, code]);
export const countsOf = ({ options }: LighterOptions, keeps: string) =>
  options.find((one) => one.keeps === keeps)?.sets.map(({ repetitions }) => repetitions);
export const sets = (...counts: number[]) => counts.map((repetitions) => ({ repetitions }));

/** An exercise without a cuff, of a load that is stated: no maximum is known. */
export const stated = (load: number, more: Partial<PlanExerciseFields> = {}): Partial<PlanExerciseFields> => ({
  load,
  oneRepMax: undefined,
  percentOneRepMax: undefined,
  sets: sets(2),
  restriction: 'none',
  ...more,
});
/** One of a share of 100 kg. */
export const share = (percentOneRepMax: number, count: number, more: Partial<PlanExerciseFields> = {}) => ({
  percentOneRepMax,
  sets: sets(count),
  restriction: 'none' as const,
  ...more,
});
