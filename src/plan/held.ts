import { passedStep } from '../evidence/guards.js';
import { decimal } from '../quantity/decimal.js';
import { progressionLimits } from './progression-limits.js';
import type { ExpandedRecordItem } from './record.js';

/** How the held pressure compares with the plan, most severe first; the tolerance is in points of percent of LOP. */
type HeldAs = 'above-tried' | 'occludes' | 'above' | 'share-above' | 'below' | 'share-below' | 'as-planned';

/** A pressure that was held, with what the plan had. */
export interface Held {
  readonly as: HeldAs;
  /** Held, of the target, and taken as occlusion pressure [mmHg]. */
  readonly held: number;
  readonly target: number;
  readonly occlusion: number;
  /** Held, as a share of the occlusion pressure of that day, and of the plan [%]. */
  readonly heldPercent: number;
  readonly percentLop: number;
}

/**
 * What was held compared with what was planned; nothing where no held pressure is recorded. Where the occlusion pressure
 * was measured that day, their shares of it are compared: the same mmHg may then be another pressure for the limb.
 */
export function comparedHeld({ target, done }: Pick<ExpandedRecordItem, 'target' | 'done'>): Held | undefined {
  if (!target || done.heldMmHg === undefined) return undefined;
  const planned = target.inputs.occlusion.value;
  const occlusion = done.occlusionMmHg ?? planned;
  const held = done.heldMmHg;
  const shareOf = (pressure: number, whole: number) => decimal(pressure).times(100).div(decimal(whole));
  const [share, asked] = [shareOf(held, occlusion), shareOf(target.value, planned)];
  const pointsAbove = share.minus(asked).toNumber();
  const byShare = done.occlusionMmHg !== undefined;
  const tolerance = progressionLimits.pressureTolerance.value;
  const heldAs = (): HeldAs => {
    if (passedStep('cuff-pressure', held)?.severity === 'stop') return 'above-tried';
    if (held >= occlusion) return 'occludes';
    if (pointsAbove > tolerance) return byShare ? 'share-above' : 'above';
    if (pointsAbove < -tolerance) return byShare ? 'share-below' : 'below';
    return 'as-planned';
  };
  const [heldPercent, percentLop] = [share.toNumber(), asked.toNumber()];
  return { as: heldAs(), held, target: target.value, occlusion, heldPercent, percentLop };
}
