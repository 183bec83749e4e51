import type { Caution } from '../answer/answer.js';
import { isOfLimb } from '../session/exposure.js';
import type { ExpandedPlanItem } from './types.js';

/** Every caution of an item’s answers; a limb’s restriction belongs to the limb. */
export function itemCautions(item: ExpandedPlanItem): Caution[] {
  const { occlusion, target, restTarget, oneRepMax, load, upperLoad, totals } = item;
  return [occlusion, target, restTarget, oneRepMax, load, upperLoad, totals]
    .flatMap((answer) => answer?.cautions ?? [])
    .filter((caution) => !isOfLimb(caution));
}
