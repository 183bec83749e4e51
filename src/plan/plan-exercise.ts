import type { Answer } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { describe, InputError, issue, refuse, type InputIssue } from '../answer/issues.js';
import { GIVEN_WITH, LEFT_OUT_WITH, need, type Asked } from '../answer/needs.js';
import { SIDES, type Side } from '../quantity/quantities.js';
import { LEFT_OUT_UNLESS, LEFT_OUT_UNRESTRICTED, LEFT_OUT_WITHOUT } from '../session/needs.js';
import { isCuffed, sidesOf, type FullPrescription, type PerSide } from '../session/prescription.js';
import { ofSide } from '../session/schedule.js';
import { loadsOf, maximumOf, setLoadsOf, withSetCautions } from './exercise-load.js';
import { fullSetsOf, planSets } from './exercise-sets.js';
import type { Findings } from './findings.js';
import { usesLimb } from './limb-and-side.js';
import type { CuffSetting, LimbCuff } from './limb-cuff.js';
import {
  LEFT_OUT_FOR_LOAD,
  LEFT_OUT_IN_MODE,
  LEFT_OUT_UNLIFTED,
  LEFT_OUT_WITHOUT_LOAD,
  LISTED_LIMB,
  LOWER_IN_RESTS,
  ONE_WAY_TO_LIFT,
} from './needs.js';
import { OF_LOAD, OF_MAXIMUM, type ExpandedPlanItem, type PlanExercise, type PlanRequest } from './types.js';

type Field = keyof PlanExercise;
/** What can be lifted. */
const LIFTED = ['oneRepMax', 'load', 'bodyMassPercent', 'unloaded'] as const satisfies Field[];
/** What resistance exercise alone has. */
const OF_RESISTANCE = [
  ...LIFTED,
  ...OF_LOAD,
  ...OF_MAXIMUM,
  'unit',
  'tempo',
  'lastSetToFailure',
  'raisedFrom',
] as const;
/** What the load of an exercise comes from. */
const LOADED = ['load', 'unit', ...OF_LOAD, ...OF_MAXIMUM, 'oneRepMax'] as const satisfies Field[];
/** What its sets come from. */
const SETS = ['scheme', 'sets', 'warmUp', 'tempo', 'restS', 'restriction', 'mode', 'limb', 'side', 'changeS'] as const;
/** What its cuffs come from. */
const CUFFED = ['percentLop', 'restPercentLop', 'restriction', 'mode', 'posture'] as const satisfies Field[];

/** Fields of an exercise that do not go together, or that others ask for. */
function checkRelations(exercise: PlanExercise, bodyMassKg: number | undefined): void {
  const { mode = 'resistance', restriction } = exercise;
  const issues: InputIssue[] = [];
  const given = (name: Field): boolean => exercise[name] !== undefined;
  const leaveOut = (names: readonly Field[], asked: Asked): void => {
    for (const name of names.filter(given)) {
      issues.push(issue('wrong-relation', [name], asked, describe(exercise[name])));
    }
  };
  const ask = (name: Field, asked: Asked): void => {
    if (!given(name)) issues.push(issue('missing', [name], asked, undefined));
  };
  if (mode !== 'resistance') leaveOut(OF_RESISTANCE, need(LEFT_OUT_IN_MODE, { mode }));
  else if (given('oneRepMax')) {
    ask('percentOneRepMax', need(GIVEN_WITH, { field: 'oneRepMax' }));
    leaveOut(['load', 'unloaded'], need(LEFT_OUT_WITH, { field: 'oneRepMax' }));
  } else {
    if (!LIFTED.some(given)) ask('oneRepMax', ONE_WAY_TO_LIFT);
    leaveOut(OF_MAXIMUM, need(LEFT_OUT_WITHOUT, { field: 'oneRepMax' }));
    if (typeof exercise.load === 'object') leaveOut(['unit'], LEFT_OUT_FOR_LOAD);
    if (!given('load')) leaveOut(OF_LOAD, LEFT_OUT_WITHOUT_LOAD);
    else if (given('available')) leaveOut(['step'], need(LEFT_OUT_WITH, { field: 'available' }));
    if (given('unloaded')) leaveOut(['load', 'bodyMassPercent'], LEFT_OUT_UNLIFTED);
  }
  if (mode !== 'aerobic') leaveOut(['intensityPercent'], need(LEFT_OUT_UNLESS, { field: 'mode', value: 'aerobic' }));
  if (restriction === 'partial') ask('restPercentLop', LOWER_IN_RESTS);
  else leaveOut(['restPercentLop'], need(LEFT_OUT_UNLESS, { field: 'restriction', value: 'partial' }));
  if (restriction === 'none') leaveOut(['percentLop'], LEFT_OUT_UNRESTRICTED);
  if (bodyMassKg === undefined) leaveOut(['bodyMassPercent'], need(LEFT_OUT_WITHOUT, { field: 'bodyMassKg' }));
  if (issues.length > 0) throw new InputError(issues);
}

/** A listed limb that does an exercise. */
interface TrainedLimb {
  readonly side: Side;
  /** Where it is in the list. */
  readonly at: number;
}

/** The limbs that do an exercise, every one of its kind where it names no side. */
function trainedLimbs(exercise: PlanExercise, { limbs }: PlanRequest): TrainedLimb[] | undefined {
  const { limb, side } = exercise;
  // A list without limbs is itself what is wrong.
  if (limbs.length === 0) return undefined;
  const own = limbs.flatMap((one, at) => (one && usesLimb(exercise, one) ? [{ side: one.side, at }] : []));
  if (own.length === 0 || (side && own.length < sidesOf(side).length)) {
    const asked = (side ? [side, limb] : [limb]).map(describe).join(' ');
    refuse('wrong-relation', ['limb'], LISTED_LIMB, asked);
  }
  return own;
}

/** An exercise on a limb with its cuff, which is none without restriction. */
type Cuffed = TrainedLimb & Partial<CuffSetting>;

/** An exercise with the pressure of each cuff, and the occlusion pressure that it is a share of. */
function withCuffs(full: FullPrescription, limbs: readonly Cuffed[], name: string): FullPrescription {
  if (!isCuffed(full)) return { ...full, name };
  const perSide = (part: keyof CuffSetting): PerSide => {
    const values = limbs.map((limb): [Side, number] => [limb.side, (limb[part] as Answer).value]);
    return values.length === 1 ? values[0]![1] : (Object.fromEntries(values) as Record<Side, number>);
  };
  const pressureMmHg = perSide('target');
  return {
    ...full,
    name,
    sets: full.sets.map((set) => ({ ...set, pressureMmHg })),
    occlusionMmHg: perSide('occlusion'),
    ...(full.restriction === 'partial' && { restPressureMmHg: perSide('restTarget') }),
  };
}

/** An exercise with every default in its place, and what it is on each limb before it is added up. */
export interface PlannedExercise {
  readonly full: FullPrescription;
  readonly items: readonly Omit<ExpandedPlanItem, 'totals'>[];
}

/** Every part is tried, so that all that is wrong is reported at once; what needs a part that is missing is skipped. */
export function plannedExercise(
  request: PlanRequest,
  limbCuffs: readonly (LimbCuff | undefined)[],
  index: number,
  findings: Findings,
): PlannedExercise | undefined {
  const exercise = request.exercises[index]!;
  const place = ['exercises', index];
  const { bodyMassKg } = request;
  const from = <T>(fields: readonly string[], part: () => T): T | undefined => findings.try(place, part, { fields });

  from(['mode', 'restriction'], () => checkRelations(exercise, bodyMassKg));
  const oneRepMax = findings.try([...place, 'oneRepMax'], () => maximumOf(exercise, request), {
    uses: ['ageYears', 'sex'],
  });
  const { load, upperLoad } = from(LOADED, () => loadsOf(exercise, oneRepMax)) ?? {};
  const limbs = from(['limb', 'side'], () => trainedLimbs(exercise, request));
  const setLoads = from(['sets', ...LOADED], () => setLoadsOf(exercise, 'sets', oneRepMax, load));
  const warmUpLoads = from(['warmUp', ...LOADED], () => setLoadsOf(exercise, 'warmUp', oneRepMax, load));
  // A side that is none is reported with its limb; any will do to look at the sets.
  const listed = limbs?.map(({ side }) => (SIDES.includes(side) ? side : 'left')) ?? (['left'] as const);
  const side = exercise?.side ?? (listed.length === 2 ? 'both' : listed[0]);
  const sets = from(SETS, () => fullSetsOf(exercise, side, { oneRepMax, load, setLoads, bodyMassKg }));
  const cuffed = from(CUFFED, () =>
    limbs?.flatMap((limb): Cuffed[] => {
      if (!isCuffed(exercise)) return [limb];
      const cuff = limbCuffs[limb.at];
      return cuff ? [{ ...limb, ...cuff(exercise) }] : [];
    }),
  );
  if (!sets || !limbs || cuffed?.length !== limbs.length) return undefined;

  const full = withCuffs(sets, cuffed, exercise.name);
  const { name, posture, limb, intensityPercent, bodyMassPercent, lastSetToFailure } = exercise;
  const items = cuffed.map(({ side, occlusion, target, restTarget }) => {
    const { mode, warmUp, sets, tempo, restriction } = ofSide(full, side);
    return defined({
      mode,
      exercise: name,
      posture,
      limb,
      side,
      occlusion,
      target,
      restTarget,
      oneRepMax,
      load: load && withSetCautions(exercise, load, setLoads),
      upperLoad,
      intensityPercent,
      bodyMassKg: bodyMassPercent === undefined ? undefined : bodyMassKg,
      bodyMassPercent,
      warmUp: warmUp.length > 0 ? planSets(warmUp, exercise.warmUp, warmUpLoads) : undefined,
      sets: planSets(sets, exercise.sets, setLoads),
      lastSetToFailure,
      tempo,
      restriction,
    }) as Omit<ExpandedPlanItem, 'totals'>;
  });
  return { full, items };
}
