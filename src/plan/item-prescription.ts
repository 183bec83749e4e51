import type { Answer } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { loadUnitOf } from '../quantity/quantities.js';
import type { FullPrescription, FullSet } from '../session/prescription.js';
import type { ExpandedPlanItem, PlanSet } from './types.js';

/** The measurement that an occlusion pressure is, or was converted from; nothing for an estimate. */
export function measurementOf(answer: Answer<'occlusion-pressure'>): Answer<'occlusion-pressure'> | undefined {
  const { method, measured } = answer.inputs;
  if (method !== undefined) return answer;
  return measured && measurementOf(measured);
}

/** An item of a plan as a prescription: what one limb is asked to do. */
export function prescribedItem(item: ExpandedPlanItem): FullPrescription {
  const { exercise, mode = 'resistance', limb, side, sets, warmUp = [], tempo, load, restriction } = item;
  const { target, restTarget, bodyMassKg, bodyMassPercent } = item;
  const asSet = (set: PlanSet, pressureMmHg?: number): FullSet =>
    defined({ load: load?.value, ...set, pressureMmHg }) as FullSet;
  return defined({
    name: exercise,
    sets: sets.map((set) => asSet(set, target?.value)),
    warmUp: warmUp.map((set) => asSet(set)),
    tempo,
    restriction,
    mode,
    limb,
    side,
    changeS: 0,
    unit: load ? loadUnitOf(load.unit) : 'kg',
    load: load?.value,
    oneRepMax: load?.inputs.oneRepMax,
    bodyMassKg,
    bodyMassPercent,
    restPressureMmHg: restTarget?.value,
    occlusionMmHg: target?.inputs.occlusion.value,
    inflatedBeforeS: 0,
    deflatedAfterS: 0,
  }) as FullPrescription;
}
