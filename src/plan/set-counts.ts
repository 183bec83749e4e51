import { Math } from '../quantity/maths.js';
import { format } from '../quantity/format.js';
import type { PlanSet } from './types.js';

/** Sets in the trade’s notation: `30-15-15-15`, and by time `120s-120s`. */
export const setCounts = (sets: readonly Pick<PlanSet, 'repetitions' | 'durationS'>[]): string =>
  sets.map(({ repetitions, durationS }) => repetitions ?? (durationS ? `${format(durationS)}s` : '–')).join('-');

/** Something of each set as a list, such as `80-80-75`; nothing where no set has it. */
export const perSet = (
  sets: readonly PlanSet[],
  of: (set: PlanSet) => number | undefined,
  write = format,
): string | undefined =>
  sets.some((set) => of(set) !== undefined)
    ? sets
        .map((set) => {
          const value = of(set);
          return value === undefined ? '–' : write(value);
        })
        .join('-')
    : undefined;

/** The load of each set: its own, or that of the exercise. */
export const loadsOfSets = (sets: readonly Pick<PlanSet, 'load'>[], load: number): number[] =>
  sets.map((set) => set.load ?? load);

/** The heaviest load of an exercise. */
export const heaviestLoad = (sets: readonly Pick<PlanSet, 'load'>[], load: number): number =>
  Math.max(...loadsOfSets(sets, load));
