import { limbRestriction } from '../session/account.js';
import type { LimbTotals, PlanItem } from './types.js';

/** What each limb goes through in a session, over the exercises that its cuff is up in. */
export function limbsOf(items: readonly Pick<PlanItem, 'limb' | 'side' | 'restriction' | 'totals'>[]): LimbTotals[] {
  const places = new Map(items.map(({ limb, side }) => [`${side} ${limb}`, { limb, side }]));
  return [...places.values()].map(({ limb, side }) => {
    const own = items.filter((item) => item.limb === limb && item.side === side && item.restriction !== 'none');
    return { limb, side, exercises: own.length, ...limbRestriction(own.map(({ totals }) => totals)) };
  });
}
