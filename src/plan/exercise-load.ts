import type { Answer } from '../answer/answer.js';
import { defined, picked } from '../answer/defined.js';
import { describe, within, refuse } from '../answer/issues.js';
import { need, type Asked } from '../answer/needs.js';
import { isPart } from '../answer/part.js';
import { loadUnitCode, type LoadUnit } from '../quantity/quantities.js';
import { LEFT_OUT_WITHOUT } from '../session/needs.js';
import { isCuffed } from '../session/prescription.js';
import { estimateOneRepMax, testedOneRepMax, type OneRepMaxInput, type TestedInput } from '../strength/one-rep-max.js';
import { enteredMass } from '../strength/read-mass.js';
import {
  trainingLoad,
  trainingLoadRange,
  type TrainingLoadInput,
  type TrainingLoadRangeInput,
} from '../strength/training-load.js';
import { assumption } from './assumptions.js';
import { LEFT_OUT_SET_LOAD, LEFT_OUT_WITHOUT_LOAD } from './needs.js';
import { uniqueCautions } from './severity.js';
import type { PlanExercise, PlanExerciseFields, PlanRequest } from './types.js';

type Maximum = Answer<'one-repetition-maximum'>;
type Load = Answer<'training-load'>;
/** The load of one set. */
export type SetLoad = Pick<Load, 'value' | 'cautions'>;

/** The maximum of an exercise: tested, estimated for the lift and the person, or the one behind a load. */
export function maximumOf(
  { oneRepMax, load, unit = 'kg' }: PlanExercise,
  { ageYears, sex }: PlanRequest,
): Maximum | undefined {
  if (oneRepMax === undefined) {
    const behind = typeof load === 'object' ? load.inputs.oneRepMax : undefined;
    return typeof behind === 'object' ? behind : undefined;
  }
  if (typeof oneRepMax === 'number') return enteredMass('one-repetition-maximum', oneRepMax, unit);
  if ('kind' in oneRepMax) return oneRepMax;
  if (oneRepMax.repetitions === undefined) return testedOneRepMax(defined(oneRepMax) as TestedInput);
  return estimateOneRepMax(defined({ ...oneRepMax, ageYears, sex }) as OneRepMaxInput);
}

const statedLoad = (load: number, unit: LoadUnit = 'kg'): Load => ({
  kind: 'training-load',
  value: load,
  unit: loadUnitCode(unit),
  equation: 'stated-load',
  evidence: 'practice',
  inputs: { load, unit },
  assumptions: [assumption('load-as-stated')],
  cautions: [],
});

const LOAD_CHOICES = ['unit', 'step', 'available', 'bar', 'collars', 'plates', 'rounding', 'maximumOf'] as const;
/** The loads you can set, and whose maximum it is. */
export const loadChoicesOf = (exercise: PlanExerciseFields) => picked(exercise, LOAD_CHOICES);

const ABOUT_RESTRICTION = ['above-restricted-loads', 'below-restricted-loads'];
/** A load without the cautions about restriction, where the exercise has none. */
const ofExercise = <L extends SetLoad>(exercise: PlanExercise, load: L): L =>
  isCuffed(exercise)
    ? load
    : { ...load, cautions: load.cautions.filter(({ code }) => !ABOUT_RESTRICTION.includes(code)) };

/** The load of an exercise; of a range of shares that at its lower end, and that at its upper end. */
export function loadsOf(
  exercise: PlanExercise,
  oneRepMax: Maximum | undefined,
): { readonly load?: Load; readonly upperLoad?: Load } {
  const { load, unit, percentOneRepMax } = exercise;
  if (typeof load === 'number') return { load: statedLoad(load, unit) };
  if (!load && !oneRepMax) return {};
  const asked = { oneRepMax, percentOneRepMax, ...loadChoicesOf(exercise) };
  const { from, to } =
    load || !isPart(percentOneRepMax)
      ? { from: load ?? trainingLoad(defined(asked) as TrainingLoadInput) }
      : trainingLoadRange(defined(asked) as TrainingLoadRangeInput);
  return { load: ofExercise(exercise, from), ...(to && { upperLoad: ofExercise(exercise, to) }) };
}

/** The loads of an exercise’s sets, where any has its own: as stated, or brought to the loads you can set. */
export function setLoadsOf(
  exercise: PlanExercise,
  name: 'sets' | 'warmUp',
  oneRepMax: Maximum | undefined,
  load: Load | undefined,
): readonly SetLoad[] | undefined {
  const sets = exercise[name];
  if (!sets?.some((set) => set.load !== undefined || set.percentOneRepMax !== undefined)) return undefined;
  return sets.flatMap(({ load: own, percentOneRepMax }, index): SetLoad[] => {
    const refuseField = (field: 'load' | 'percentOneRepMax', asked: Asked): never =>
      refuse('wrong-relation', [name, index, field], asked, describe(sets[index]![field]));
    if (percentOneRepMax === undefined) {
      // Of an exercise without a load, the set that has its own is refused.
      if (!load) return own === undefined ? [] : refuseField('load', LEFT_OUT_WITHOUT_LOAD);
      return [{ value: own ?? load.value, cautions: [] }];
    }
    if (own !== undefined) refuseField('percentOneRepMax', LEFT_OUT_SET_LOAD);
    if (!oneRepMax) refuseField('percentOneRepMax', need(LEFT_OUT_WITHOUT, { field: 'oneRepMax' }));
    const asked = defined({ oneRepMax, ...loadChoicesOf(exercise), percentOneRepMax }) as TrainingLoadInput;
    return [within([name, index], () => trainingLoad(asked))];
  });
}

/** The load of an exercise with the cautions of its sets: each sentence once. */
export function withSetCautions(exercise: PlanExercise, load: Load, sets: readonly SetLoad[] | undefined): Load {
  const ofSets = (sets ?? []).flatMap((set) => ofExercise(exercise, set).cautions);
  return ofSets.length > 0 ? { ...load, cautions: uniqueCautions([...load.cautions, ...ofSets]) } : load;
}
