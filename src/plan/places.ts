import type { Limb, Side } from '../quantity/quantities.js';

interface Placed {
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
}

const keyOf = ({ exercise, limb, side }: Placed): string => JSON.stringify([exercise, limb, side]);

/** Which time each exercise on a limb is listed, from 1: the same one listed again is another one. */
export function timesOf(items: readonly Placed[]): number[] {
  const seen = new Map<string, number>();
  return items.map((item) => {
    const times = (seen.get(keyOf(item)) ?? 0) + 1;
    seen.set(keyOf(item), times);
    return times;
  });
}

/** One exercise on one limb, told apart from every other. */
export const placesOf = (items: readonly Placed[]): string[] => {
  const times = timesOf(items);
  return items.map((item, index) => `${keyOf(item)} ${times[index]!}`);
};
