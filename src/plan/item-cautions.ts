import type { Caution } from '../answer/answer.js';
import { isOfLimb } from '../session/exposure.js';
import type { ExpandedPlanItem } from './types.js';

/**
 * Every caution of an item’s answers; those of a cuff only where there is one. A limb’s restriction belongs to the
 * limb.
 */
export const itemCautions = (item: ExpandedPlanItem): Caution[] => {
  const { restriction, occlusion, target, restTarget, oneRepMax, load, upperLoad, totals } = item;
  const cuff = restriction === 'none' ? [] : [occlusion!, target!, restTarget];
  return [...cuff, oneRepMax, load, upperLoad, totals]
    .flatMap((answer) => answer?.cautions ?? [])
    .filter((caution) => !isOfLimb(caution));
};
