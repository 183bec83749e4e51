import { isCuffed } from '../session/prescription.js';
import { limbRestriction } from '../session/totals.js';
import { summed } from '../session/working.js';
import { isSameLimb, limbsIn } from './limb-and-side.js';
import type { ExpandedLimbTotals, ExpandedPlanItem } from './types.js';

/** What each limb goes through in a session: over the exercises with its cuff inflated, and what it lifts in all. */
export function totalsOfLimbs(
  items: readonly Pick<ExpandedPlanItem, 'limb' | 'side' | 'restriction' | 'totals'>[],
): ExpandedLimbTotals[] {
  return limbsIn(items).map((place) => {
    const own = items.filter((item) => isSameLimb(item, place));
    const cuffed = own.filter(isCuffed);
    const volumeLoad = summed(
      own.flatMap(({ totals }) => totals.volumeLoad ?? []),
      'exercises',
    );
    return {
      ...place,
      exercises: cuffed.length,
      ...limbRestriction(cuffed.map(({ totals }) => totals)),
      ...(volumeLoad && { volumeLoad }),
    };
  });
}
