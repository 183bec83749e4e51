import type { Answer } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { describe, InputError, isInputError, issue } from '../answer/issues.js';
import { loadUnitOf } from '../quantity/quantities.js';
import type { FullPrescription, FullSet, Prescription } from '../session/prescription.js';
import { fullPrescription } from '../session/read-session.js';
import type { SetLoad } from './exercise-load.js';
import { BY_TIME } from './needs.js';
import type { PlanExercise, PlanExerciseFields, PlanSet } from './types.js';

/** What a set is in time, with its load. */
const timedSets = (sets: PlanExerciseFields['sets'], loads?: readonly SetLoad[]): Prescription['sets'] =>
  sets?.map(({ repetitions, durationS, restS }, index) =>
    defined({ repetitions, durationS, restS, load: loads?.[index]?.value }),
  ) as Prescription['sets'];

/** What is lifted in the sets of an exercise. */
interface Lifted {
  readonly oneRepMax: Answer<'one-repetition-maximum'> | undefined;
  readonly load: Answer<'training-load'> | undefined;
  readonly setLoads: readonly SetLoad[] | undefined;
  readonly bodyMassKg: number | undefined;
}

/** The sets of an exercise with every default in its place, before its cuffs. */
export function fullSetsOf(
  exercise: PlanExercise,
  side: Prescription['side'],
  { oneRepMax, load, setLoads, bodyMassKg }: Lifted,
): FullPrescription {
  const { scheme, sets, warmUp, tempo, restS, restriction, mode, limb, changeS, bodyMassPercent } = exercise;
  const asked = { scheme, sets: timedSets(sets, setLoads), warmUp: timedSets(warmUp), tempo, restS };
  const place = { restriction, mode, limb, side, changeS };
  const lifted = load && { load: load.value, unit: loadUnitOf(load.unit), oneRepMax };
  const moved = bodyMassPercent !== undefined && bodyMassKg !== undefined && { bodyMassKg, bodyMassPercent };
  try {
    return fullPrescription({ ...asked, ...place, ...lifted, ...moved });
  } catch (error) {
    if (!isInputError(error) || mode === undefined || mode === 'resistance') throw error;
    const counted = warmUp?.some(({ durationS }) => durationS === undefined);
    const name = counted ? 'warmUp' : scheme === undefined ? 'sets' : 'scheme';
    const received = name === 'scheme' ? describe(scheme) : 'repetitions';
    const byTime = issue('wrong-relation', [name], BY_TIME, received);
    // There is no tempo to ask for where nothing is lifted.
    throw new InputError(error.issues.map((found) => (found.path[0] === 'tempo' ? byTime : found)));
  }
}

/** Sets as a plan has them, with what was asked for of each. */
export const planSets = (
  sets: readonly FullSet[],
  asked: PlanExerciseFields['sets'],
  loads: readonly SetLoad[] | undefined,
): PlanSet[] =>
  sets.map(({ repetitions, durationS, restS }, index) => {
    const { repetitionsInReserve, reserveRpe } = asked?.[index] ?? {};
    const load = loads?.[index]?.value;
    return defined({ repetitions, durationS, restS, load, repetitionsInReserve, reserveRpe }) as PlanSet;
  });
