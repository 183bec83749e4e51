import { format } from '../quantity/format.js';
import type { PlanSet } from './types.js';

/** Sets in the trade’s notation: `30-15-15-15`, and by time `120s-120s`. */
export const setCounts = (sets: readonly Pick<PlanSet, 'repetitions' | 'durationS'>[]): string =>
  sets.map(({ repetitions, durationS }) => repetitions ?? (durationS ? `${format(durationS)}s` : '–')).join('-');
