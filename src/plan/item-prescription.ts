import type { Answer } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { loadUnitOf } from '../quantity/quantities.js';
import type { FullPrescription, FullSet } from '../session/prescription.js';
import type { ExpandedPlanItem } from './types.js';

/** The maximum that the load of an item is a share of; nothing where the load was given as it is. */
export const maximumOf = ({ load }: Pick<ExpandedPlanItem, 'load'>): Answer<'one-repetition-maximum'> | undefined =>
  load?.inputs.oneRepMax;

/** The limb occlusion pressure that the cuff pressure of an item is a share of. */
export const occlusionOfTarget = ({
  target,
}: Pick<ExpandedPlanItem, 'target'>): Answer<'occlusion-pressure'> | undefined => target?.inputs.occlusion;

/** The measurement that an occlusion pressure is, or was converted from; nothing for an estimate. */
export function measurementOf(answer: Answer<'occlusion-pressure'>): Answer<'occlusion-pressure'> | undefined {
  const { method, measured } = answer.inputs;
  if (method !== undefined) return answer;
  return measured && measurementOf(measured);
}

/** An item of a plan as a prescription: what one limb is asked to do. */
export function prescribedItem(item: ExpandedPlanItem): FullPrescription {
  const { exercise, mode = 'resistance', limb, side, sets, warmUp, tempo, load, restriction } = item;
  const { target, restTarget, bodyMassKg, bodyMassPercent } = item;
  const unit = load ? loadUnitOf(load.unit) : 'kg';
  const pressureMmHg = restriction === 'none' ? undefined : target!.value;
  const asSet = (set: ExpandedPlanItem['sets'][number], cuffed: boolean): FullSet =>
    defined({ load: load?.value, ...set, pressureMmHg: cuffed ? pressureMmHg : undefined }) as FullSet;
  return defined({
    name: exercise,
    sets: sets.map((set) => asSet(set, true)),
    warmUp: (warmUp ?? []).map((set) => asSet(set, false)),
    tempo,
    restriction,
    mode,
    limb,
    side,
    changeS: 0,
    unit,
    load: load?.value,
    oneRepMax: maximumOf(item),
    bodyMassKg,
    bodyMassPercent,
    restPressureMmHg: restTarget?.value,
    occlusionMmHg: occlusionOfTarget(item)?.value,
    inflatedBeforeS: 0,
    deflatedAfterS: 0,
  }) as FullPrescription;
}
