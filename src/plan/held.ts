import type { Answer } from '../answer/answer.js';
import { passedStep } from '../evidence/guards.js';
import { decimal } from '../quantity/decimal.js';
import { progressionLimits } from './progression-limits.js';
import type { ExpandedRecordItem } from './record.js';

/** How the held pressure compares with the plan, most severe first; the tolerance is in points of percent of LOP. */
export type HeldAs = 'above-tried' | 'occludes' | 'above' | 'below' | 'as-planned';

/** A pressure that was held, with what the plan had. */
export interface Held {
  readonly as: HeldAs;
  /** Held, of the target, and taken as occlusion pressure [mmHg]. */
  readonly held: number;
  readonly target: number;
  readonly occlusion: number;
}

/** What was held compared with what was planned; nothing where no held pressure is recorded. */
export function comparedHeld({ target, done }: Pick<ExpandedRecordItem, 'target' | 'done'>): Held | undefined {
  if (!target || done.heldMmHg === undefined) return undefined;
  const occlusion = done.occlusionMmHg ?? (target.inputs['occlusion'] as Answer<'occlusion-pressure'>).value;
  const held = done.heldMmHg;
  const pointsAbove = decimal(held).minus(decimal(target.value)).times(100).div(decimal(occlusion)).toNumber();
  const tolerance = progressionLimits.pressureTolerance.value;
  const as =
    passedStep('cuff-pressure', held)?.severity === 'stop'
      ? 'above-tried'
      : held >= occlusion
        ? 'occludes'
        : pointsAbove > tolerance
          ? 'above'
          : pointsAbove < -tolerance
            ? 'below'
            : 'as-planned';
  return { as, held, target: target.value, occlusion };
}
