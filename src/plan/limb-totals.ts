import { limbRestriction } from '../session/account.js';
import { summed } from '../session/working.js';
import type { LimbTotals, PlanItem } from './types.js';

/** What each limb goes through in a session: over the exercises that its cuff is up in, and what it lifts in all. */
export function limbsOf(items: readonly Pick<PlanItem, 'limb' | 'side' | 'restriction' | 'totals'>[]): LimbTotals[] {
  const places = new Map(items.map(({ limb, side }) => [`${side} ${limb}`, { limb, side }]));
  return [...places.values()].map(({ limb, side }) => {
    const own = items.filter((item) => item.limb === limb && item.side === side);
    const cuffed = own.filter(({ restriction }) => restriction !== 'none');
    const volumeLoad = summed(
      own.flatMap(({ totals }) => totals.volumeLoad ?? []),
      'exercises',
    );
    return {
      limb,
      side,
      exercises: cuffed.length,
      ...limbRestriction(cuffed.map(({ totals }) => totals)),
      ...(volumeLoad && { volumeLoad }),
    };
  });
}
