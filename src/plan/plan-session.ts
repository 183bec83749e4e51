import { Math } from '../quantity/maths.js';
import type { Answer, Assumption, Caution } from '../answer/answer.js';
import { daysBetween } from '../answer/day.js';
import { defined } from '../answer/defined.js';
import { describe, InputError, isInputError, issue, moved, type InputIssue, type Path } from '../answer/issues.js';
import { guardCautions } from '../answer/guards.js';
import { ownDocument } from '../answer/own.js';
import { isPart } from '../answer/part.js';
import { plainInput } from '../answer/plain-input.js';
import { withInput } from '../answer/with-input.js';
import { commonPractice } from '../evidence/guidance.js';
import { bloodPressureCautions, checkBloodPressure } from '../pressure/blood-pressure.js';
import { estimateOcclusionPressure, type OcclusionInput } from '../pressure/estimate.js';
import { assumedOfMeasurement, occlusionForExercise } from '../pressure/for-exercise.js';
import { enteredPressure, placeOf } from '../pressure/held-pressure.js';
import { measuredOcclusionPressure, type MeasuredInput } from '../pressure/measured.js';
import { targetCuffPressure, type CuffPressure, type TargetInput } from '../pressure/target.js';
import { formatUnit } from '../quantity/format.js';
import {
  loadUnitCode,
  loadUnitOf,
  SIDES,
  type ExerciseMode,
  type LoadUnit,
  type Posture,
} from '../quantity/quantities.js';
import { exercisePart, totalsOfSide, wholeTotals } from '../session/totals.js';
import { scheduleSession, ofSide } from '../session/schedule.js';
import {
  sidesOf,
  type FullPrescription,
  type FullSet,
  type PerSide,
  type Prescription,
} from '../session/prescription.js';
import { fullPrescription } from '../session/read-session.js';
import { timelineOf } from '../session/timeline.js';
import { estimateOneRepMax, testedOneRepMax, type OneRepMaxInput, type TestedInput } from '../strength/one-rep-max.js';
import { enteredMass } from '../strength/read-mass.js';
import {
  trainingLoad,
  trainingLoadRange,
  type TrainingLoadInput,
  type TrainingLoadRangeInput,
} from '../strength/training-load.js';
import { version } from '../study/version.js';
import { ageCautions } from './age-cautions.js';
import { dayCheckAgain, dayCheckCautions, screeningAgain, screeningCautions } from './checks.js';
import { planTextByCode } from './catalogue.js';
import { compact } from './expanded.js';
import { Findings } from './findings.js';
import { messageKey, uniqueCautions } from './severity.js';
import { itemCautions } from './item-cautions.js';
import { limbsOf } from './limb-totals.js';
import { assumption } from './assumptions.js';
import { caution, planMessages } from './messages.js';
import { measuredDay } from './measured-limb.js';
import { parseDocument } from './parse.js';
import { usesLimb, isSameLimb } from './limb-and-side.js';
import { planRequest } from './schema.js';
import { screeningCaution } from './screening-messages.js';
import { disclaimers, stopCriteria } from './disclaimers.js';
import { applyDecisions, mergeStops, softened, stopsOf, type Stop } from './stops.js';
import type {
  ExpandedLimbTotals,
  ExpandedPlan,
  ExpandedPlanClock,
  ExpandedPlanItem,
  Plan,
  PlanExercise,
  PlanExerciseFields,
  PlanLimb,
  PlanRequest,
  PlanSet,
} from './types.js';
import { ABOVE_DIASTOLIC, LEFT_OUT_WITH, GIVEN_WITH, need, type Asked } from '../answer/needs.js';
import {
  PLAN_REQUEST,
  OF_LIMB,
  WIDTH_FOR_CUFF,
  LEFT_OUT_IN_MODE,
  LEFT_OUT_FOR_LOAD,
  LEFT_OUT_WITHOUT_LOAD,
  LEFT_OUT_UNLIFTED,
  LEFT_OUT_SET_LOAD,
  ONE_WAY_TO_LIFT,
  LOWER_IN_RESTS,
  BY_TIME,
  LISTED_LIMB,
  LISTED_ONCE,
  OR_OF_LIMB,
  BELOW_SETS,
  NOT_AFTER_PLAN,
} from './needs.js';
import { LEFT_OUT_WITHOUT, LEFT_OUT_UNLESS, LEFT_OUT_UNRESTRICTED } from '../session/needs.js';

/** Fields of the person, which stand at the top of a request and not in the part that uses them. */
const PERSONAL = ['ageYears', 'sex', 'systolicMmHg', 'diastolicMmHg', 'posture'];

function occlusionOf(
  request: PlanRequest,
  limb: PlanLimb & { readonly cuffWidthCm: number },
  posture: Posture,
): Answer<'occlusion-pressure'> {
  const { ageYears, sex, systolicMmHg, diastolicMmHg } = request;
  const { circumferenceCm, circumferenceSite, cuffWidthCm, measured, occlusion, equation, side } = limb;
  const place = { limb: limb.limb, side, posture, cuffWidthCm, circumferenceCm, systolicMmHg, diastolicMmHg };
  if (occlusion !== undefined)
    return occlusionForExercise(heldOcclusion(occlusion, limb, diastolicMmHg), { ...place, held: true });
  if (!measured) {
    const readings = {
      limb: limb.limb,
      side,
      circumferenceCm,
      circumferenceSite,
      systolicMmHg,
      diastolicMmHg,
      cuffWidthCm,
      posture,
      ageYears,
      sex,
      equation,
    };
    return estimateOcclusionPressure(defined(readings) as OcclusionInput);
  }
  const measurement = measuredOcclusionPressure(
    defined({ side, posture: request.posture, cuffWidthCm, ...defined(measured), limb: limb.limb }) as MeasuredInput,
  );
  checkAboveDiastolic(measurement, diastolicMmHg, ['measured', 'valueMmHg']);
  const own = { ...measurement, assumptions: [...measurement.assumptions, ...assumedOfMeasurement(measured)] };
  return occlusionForExercise(own, place);
}

function checkAboveDiastolic({ value }: Answer, diastolicMmHg: number, path: Path): void {
  if (value > diastolicMmHg) return;
  const asked = need(ABOVE_DIASTOLIC, { value: diastolicMmHg, unit: 'mm[Hg]' });
  throw new InputError([issue('wrong-relation', path, asked, formatUnit(value, 'mm[Hg]'))]);
}

/** An occlusion pressure that the request holds, with what we assume of it. */
function heldOcclusion(
  occlusion: Answer<'occlusion-pressure'> | number,
  { limb, measured, equation }: PlanLimb,
  diastolicMmHg: number,
): Answer<'occlusion-pressure'> {
  const held = typeof occlusion === 'number' ? enteredPressure(occlusion) : occlusion;
  const own = placeOf(held);
  const issues: InputIssue[] = [];
  if (own.limb !== undefined && own.limb !== limb) {
    issues.push(issue('wrong-relation', ['occlusion'], need(OF_LIMB, { limb }), describe(own.limb)));
  }
  for (const [name, value] of Object.entries({ measured, equation })) {
    if (value !== undefined)
      issues.push(issue('wrong-relation', [name], need(LEFT_OUT_WITH, { field: 'occlusion' }), 'a value'));
  }
  if (issues.length > 0) throw new InputError(issues);
  checkAboveDiastolic(held, diastolicMmHg, ['occlusion']);
  return { ...held, assumptions: [...held.assumptions, ...assumedOfMeasurement(own)] };
}

/** A limb with the width of its cuff: that of the pressure it holds, where none is given. */
function withWidth(limb: PlanLimb): PlanLimb {
  if (limb.cuffWidthCm !== undefined || !limb.occlusion || typeof limb.occlusion === 'number') return limb;
  const { cuffWidthCm } = placeOf(limb.occlusion);
  return cuffWidthCm === undefined ? limb : { ...limb, cuffWidthCm };
}

/** A limb’s occlusion pressure in a posture, and the cuff pressures that are shares of it. */
interface CuffInPosture {
  readonly limb: PlanLimb;
  readonly occlusion: Answer<'occlusion-pressure'>;
  readonly at: (percent: number, mode: ExerciseMode) => CuffPressure;
}

/** A limb with its cuff, in the posture of each exercise. */
interface LimbCuff {
  readonly limb: PlanLimb;
  readonly inPosture: (posture: Posture) => CuffInPosture;
}

/** Whether any exercise has the cuff of a limb up; and where its readings are all there, they are looked at too. */
const usesCuff = ({ exercises }: PlanRequest, limb: PlanLimb): boolean =>
  (limb.cuffWidthCm !== undefined &&
    (limb.circumferenceCm !== undefined || limb.measured !== undefined || limb.occlusion !== undefined)) ||
  exercises.some((one) => one && one.restriction !== 'none' && usesLimb(one, limb));

function limbCuffOf(request: PlanRequest, limb: PlanLimb): LimbCuff {
  const { gaugeStepMmHg, ceilingMmHg } = limb;
  const { cuffWidthCm } = withWidth(limb);
  if (cuffWidthCm === undefined) {
    throw new InputError([issue('missing', ['cuffWidthCm'], WIDTH_FOR_CUFF, 'undefined')]);
  }
  const inPosture = (posture: Posture): CuffInPosture => {
    const occlusion = occlusionOf(request, { ...limb, cuffWidthCm }, posture);
    const known = new Map<string, CuffPressure>();
    const at = (percentLop: number, mode: ExerciseMode): CuffPressure => {
      const ofMode = mode === 'resistance' ? undefined : mode;
      const key = `${percentLop} ${mode}`;
      const target =
        known.get(key) ??
        targetCuffPressure(defined({ occlusion, percentLop, gaugeStepMmHg, ceilingMmHg, mode: ofMode }) as TargetInput);
      known.set(key, target);
      return target;
    };
    return { limb, occlusion, at };
  };
  const usual = inPosture(request.posture);
  if (limb.percentLop !== undefined) usual.at(limb.percentLop, 'resistance');
  return { limb, inPosture: (posture) => (posture === request.posture ? usual : inPosture(posture)) };
}

/** The pressure of the rests: the usual range is that of the sets. */
function restTargetOf({ at }: CuffInPosture, percent: number, mode: ExerciseMode): CuffPressure {
  const answer = at(percent, mode);
  return { ...answer, cautions: answer.cautions.filter(({ code }) => code !== 'percent-below-usual') };
}

/** A tested maximum, or one estimated for the lift and the person. */
function maximumOf(
  given: NonNullable<PlanExercise['oneRepMax']>,
  unit: LoadUnit | undefined,
  { ageYears, sex }: PlanRequest,
): Answer<'one-repetition-maximum'> {
  if (typeof given === 'number') return enteredMass('one-repetition-maximum', given, unit ?? 'kg');
  if ('kind' in given) return given;
  const { lift, training, ...set } = given;
  if (set.repetitions === undefined) return testedOneRepMax(defined({ ...set, lift, training }) as TestedInput);
  return estimateOneRepMax(defined({ ...set, lift, training, ageYears, sex }) as OneRepMaxInput);
}

/** The maximum that a load in the form of an answer was worked out from. */
function maximumBehind({ load }: PlanExercise): Answer<'one-repetition-maximum'> | undefined {
  const behind = typeof load === 'object' ? load.inputs.oneRepMax : undefined;
  return typeof behind === 'object' ? behind : undefined;
}

const statedLoad = (load: number, unit: LoadUnit = 'kg'): Answer<'training-load'> => ({
  kind: 'training-load',
  value: load,
  unit: loadUnitCode(unit),
  equation: 'stated-load',
  evidence: 'practice',
  inputs: { load, unit },
  assumptions: [assumption('load-as-stated')],
  cautions: [],
});

/** What you may give with your own load: loads you can set, for the next one up or down. */
const OF_LOAD = ['step', 'available'] as const satisfies (keyof PlanExercise)[];
const OF_MAXIMUM = [
  'percentOneRepMax',
  'bar',
  'collars',
  'plates',
  'rounding',
  'maximumOf',
] as const satisfies (keyof PlanExercise)[];
/** What the load of an exercise comes from. */
const LOADED = ['load', 'unit', ...OF_LOAD, ...OF_MAXIMUM, 'oneRepMax'] as const satisfies (keyof PlanExercise)[];
const LIFTED = ['oneRepMax', 'load', 'bodyMassPercent', 'unloaded'] as const satisfies (keyof PlanExercise)[];

/** Fields of an exercise that do not go together, or that others ask for. */
function checkRelations(exercise: PlanExercise, bodyMassKg: number | undefined): void {
  const { mode = 'resistance', restriction } = exercise;
  const issues: InputIssue[] = [];
  const given = (name: keyof PlanExercise): boolean => exercise[name] !== undefined;
  const refuse = (names: readonly (keyof PlanExercise)[], asked: Asked): void => {
    for (const name of names.filter(given)) {
      issues.push(issue('wrong-relation', [name], asked, 'a value'));
    }
  };
  const ask = (name: keyof PlanExercise, asked: Asked): void => {
    if (!given(name)) issues.push(issue('missing', [name], asked, 'undefined'));
  };
  if (mode !== 'resistance')
    refuse(
      [...LIFTED, ...OF_LOAD, ...OF_MAXIMUM, 'unit', 'tempo', 'lastSetToFailure', 'raisedFrom'],
      need(LEFT_OUT_IN_MODE, { mode }),
    );
  else if (given('oneRepMax')) {
    ask('percentOneRepMax', need(GIVEN_WITH, { field: 'oneRepMax' }));
    refuse(['load', 'unloaded'], need(LEFT_OUT_WITH, { field: 'oneRepMax' }));
  } else {
    if (!LIFTED.some(given)) ask('oneRepMax', ONE_WAY_TO_LIFT);
    refuse(OF_MAXIMUM, need(LEFT_OUT_WITHOUT, { field: 'oneRepMax' }));
    if (typeof exercise.load === 'object') refuse(['unit'], LEFT_OUT_FOR_LOAD);
    if (!given('load')) refuse(OF_LOAD, LEFT_OUT_WITHOUT_LOAD);
    else if (given('available')) refuse(['step'], need(LEFT_OUT_WITH, { field: 'available' }));
    if (given('unloaded')) refuse(['load', 'bodyMassPercent'], LEFT_OUT_UNLIFTED);
  }
  if (mode !== 'aerobic') refuse(['intensityPercent'], need(LEFT_OUT_UNLESS, { field: 'mode', value: 'aerobic' }));
  if (restriction === 'partial') ask('restPercentLop', LOWER_IN_RESTS);
  else refuse(['restPercentLop'], need(LEFT_OUT_UNLESS, { field: 'restriction', value: 'partial' }));
  if (restriction === 'none') refuse(['percentLop'], LEFT_OUT_UNRESTRICTED);
  if (given('bodyMassPercent') && bodyMassKg === undefined) {
    refuse(['bodyMassPercent'], need(LEFT_OUT_WITHOUT, { field: 'bodyMassKg' }));
  }
  if (issues.length > 0) throw new InputError(issues);
}

/** An exercise with every default in its place, and what it is on each limb before it is added up. */
interface PlannedExercise {
  readonly full: FullPrescription;
  readonly items: readonly Omit<ExpandedPlanItem, 'totals'>[];
}

/** The load of an exercise, and of a range of shares that at its upper end. */
interface Loads {
  readonly load?: Answer<'training-load'>;
  readonly upperLoad?: Answer<'training-load'>;
}

/** What of a load’s cautions is about restriction, for an exercise without. */
const ABOUT_RESTRICTION = ['above-restricted-loads', 'below-restricted-loads'];

function loadOf(exercise: PlanExercise, oneRepMax: Answer<'one-repetition-maximum'> | undefined): Loads {
  const { load, unit, percentOneRepMax, step, available, bar, collars, plates, rounding, maximumOf: whose } = exercise;
  if (typeof load === 'number') return { load: statedLoad(load, unit) };
  if (!load && !oneRepMax) return {};
  const ways = { unit, step, available, bar, collars, plates, rounding, maximumOf: whose };
  const asked = { oneRepMax, percentOneRepMax, ...ways };
  const { from, to } =
    load || !isPart(percentOneRepMax)
      ? { from: load ?? trainingLoad(defined(asked) as TrainingLoadInput) }
      : trainingLoadRange(defined(asked) as TrainingLoadRangeInput);
  const own = (answer: Answer<'training-load'>): Answer<'training-load'> =>
    exercise.restriction === 'none'
      ? { ...answer, cautions: answer.cautions.filter(({ code }) => !ABOUT_RESTRICTION.includes(code)) }
      : answer;
  return { load: own(from), ...(to && { upperLoad: own(to) }) };
}

/** The loads of an exercise’s sets, where any has its own: as stated, or brought to the loads you can set. */
function loadsOf(
  exercise: PlanExercise,
  oneRepMax: Answer<'one-repetition-maximum'> | undefined,
  load: Answer<'training-load'> | undefined,
  name: 'sets' | 'warmUp',
): readonly { readonly value: number; readonly cautions: readonly Caution[] }[] | undefined {
  const sets = exercise[name];
  if (!sets?.some((set) => set.load !== undefined || set.percentOneRepMax !== undefined)) return undefined;
  const { unit, step, available, bar, collars, plates, rounding, maximumOf: whose } = exercise;
  const ways = { oneRepMax, unit, step, available, bar, collars, plates, rounding, maximumOf: whose };
  return sets.map((set, index) => {
    const refuse = (field: 'load' | 'percentOneRepMax', asked: Asked): never => {
      throw new InputError([issue('wrong-relation', [name, index, field], asked, 'a value')]);
    };
    if (set.percentOneRepMax !== undefined) {
      if (set.load !== undefined) refuse('percentOneRepMax', LEFT_OUT_SET_LOAD);
      if (!oneRepMax) refuse('percentOneRepMax', need(LEFT_OUT_WITHOUT, { field: 'oneRepMax' }));
      try {
        return trainingLoad(defined({ ...ways, percentOneRepMax: set.percentOneRepMax }) as TrainingLoadInput);
      } catch (error) {
        if (!isInputError(error)) throw error;
        throw new InputError(error.issues.map((found) => moved(found, (path) => [name, index, ...path])));
      }
    }
    if (set.load !== undefined && !load) refuse('load', LEFT_OUT_WITHOUT_LOAD);
    return { value: set.load ?? load!.value, cautions: [] };
  });
}

/** What a set is in time, with its load. */
const bareSets = (
  sets: PlanExerciseFields['sets'],
  loads?: readonly { readonly value: number }[],
): Prescription['sets'] =>
  sets?.map(({ repetitions, durationS, restS }, index) =>
    defined({ repetitions, durationS, restS, load: loads?.[index]?.value }),
  ) as Prescription['sets'];

/** The sets of an exercise, before its cuffs. */
function setsOf(
  exercise: PlanExercise,
  side: Prescription['side'],
  bodyMassKg: number | undefined,
  oneRepMax: Answer<'one-repetition-maximum'> | undefined,
  load: Answer<'training-load'> | undefined,
  loads: readonly { readonly value: number }[] | undefined,
): FullPrescription {
  const { scheme, sets, warmUp, tempo, restS, restriction, mode, limb, changeS, bodyMassPercent } = exercise;
  const lifted = load && { load: load.value, unit: loadUnitOf(load.unit), oneRepMax };
  const moved = bodyMassPercent !== undefined && bodyMassKg !== undefined && { bodyMassKg, bodyMassPercent };
  const prescription = {
    scheme,
    sets: bareSets(sets, loads),
    warmUp: bareSets(warmUp),
    tempo,
    restS,
    restriction,
    mode,
    limb,
    side,
    changeS,
    ...lifted,
    ...moved,
  };
  try {
    return fullPrescription(prescription);
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

/** Every part is tried, so that all that is wrong is reported at once; missing parts are skipped. */
function exerciseOf(
  request: PlanRequest,
  findings: Findings,
  limbCuff: readonly (LimbCuff | undefined)[],
  exercise: PlanExercise,
  index: number,
): PlannedExercise | undefined {
  const place = ['exercises', index];
  const { bodyMassKg } = request;
  findings.try(place, () => checkRelations(exercise, bodyMassKg), { fields: ['mode', 'restriction'] });
  const oneRepMax = findings.try(
    [...place, 'oneRepMax'],
    () =>
      exercise.oneRepMax === undefined
        ? maximumBehind(exercise)
        : maximumOf(exercise.oneRepMax, exercise.unit, request),
    { uses: ['ageYears', 'sex'] },
  );
  const { load, upperLoad } =
    findings.try(place, () => loadOf(exercise, oneRepMax), {
      fields: ['load', 'unit', ...OF_LOAD, ...OF_MAXIMUM, 'restriction'],
    }) ?? {};
  const wearing = findings.try(
    place,
    () => {
      const { limb, side } = exercise;
      const own = request.limbs.flatMap((one, at) => (one && usesLimb(exercise, one) ? [{ at, side: one.side }] : []));
      if (own.length === 0 || (side && own.length < sidesOf(side).length)) {
        const asked = (side ? [side, limb] : [limb]).map(describe).join(' ');
        throw new InputError([issue('wrong-relation', ['limb'], LISTED_LIMB, asked)]);
      }
      return own;
    },
    { fields: ['limb', 'side'] },
  );
  // A side that is none is reported with its limb; any will do to look at the sets.
  const [own] = wearing ?? [];
  const side =
    exercise?.side ?? (wearing?.length === 2 ? 'both' : own && (SIDES.includes(own.side) ? own.side : 'left'));
  const loads = findings.try(place, () => loadsOf(exercise, oneRepMax, load, 'sets'), { fields: ['sets', ...LOADED] });
  const warmUpLoads = findings.try(place, () => loadsOf(exercise, oneRepMax, load, 'warmUp'), {
    fields: ['warmUp', ...LOADED],
  });
  const sets = findings.try(place, () => setsOf(exercise, side, bodyMassKg, oneRepMax, load, loads), {
    fields: ['scheme', 'sets', 'warmUp', 'tempo', 'restS', 'restriction', 'mode', 'limb', 'side', 'changeS'],
  });
  const bare = exercise?.restriction === 'none';
  const cuffs = findings.try(
    place,
    () =>
      wearing?.flatMap(({ at }) => {
        const one = limbCuff[at];
        if (bare || !one) return [];
        const own = one.inPosture(exercise.posture ?? request.posture);
        return [{ ...own, ...cuffOf(own, exercise) }];
      }),
    { fields: ['percentLop', 'restPercentLop', 'restriction', 'mode', 'posture'] },
  );
  if (!sets || !wearing || !cuffs || (!bare && cuffs.length < wearing.length)) return undefined;
  // A side that is none was reported with the limb.
  if (wearing.some(({ side }) => !SIDES.includes(side))) return undefined;

  const full = withCuffs(sets, cuffs, exercise.name);
  const { intensityPercent, bodyMassPercent } = exercise;
  return {
    full,
    items: wearing.map(({ at }, index) => {
      const limb = request.limbs[at]!;
      const { occlusion, target, restTarget } = cuffs[index] ?? {};
      const own = ofSide(full, limb.side);
      return {
        mode: own.mode,
        exercise: exercise.name,
        ...(exercise.posture && { posture: exercise.posture }),
        limb: limb.limb,
        side: limb.side,
        ...(occlusion && { occlusion }),
        ...(target && { target }),
        ...(restTarget && { restTarget }),
        ...(oneRepMax && { oneRepMax }),
        ...(load && { load: withCautions(load, loads, bare) }),
        ...(upperLoad && { upperLoad }),
        ...(intensityPercent !== undefined && { intensityPercent }),
        ...(bodyMassPercent !== undefined && bodyMassKg !== undefined && { bodyMassKg, bodyMassPercent }),
        ...(own.warmUp.length > 0 && { warmUp: planSets(own.warmUp, exercise.warmUp, warmUpLoads) }),
        sets: planSets(own.sets, exercise.sets, loads),
        ...(exercise.lastSetToFailure && { lastSetToFailure: true }),
        ...(own.tempo && { tempo: own.tempo }),
        restriction: own.restriction,
      };
    }),
  };
}

/** Sets as a plan has them, with what was asked for of each. */
const planSets = (
  sets: readonly FullSet[],
  asked: PlanExerciseFields['sets'],
  loads: readonly { readonly value: number }[] | undefined,
): PlanSet[] =>
  sets.map(({ repetitions, durationS, restS }, index) => {
    const { repetitionsInReserve, reserveRpe } = asked?.[index] ?? {};
    const load = loads?.[index]?.value;
    return defined({ repetitions, durationS, restS, load, repetitionsInReserve, reserveRpe }) as PlanSet;
  });

/** The load of an exercise with what its sets are warned of: each sentence once. */
function withCautions(
  load: Answer<'training-load'>,
  loads: readonly { readonly cautions: readonly Caution[] }[] | undefined,
  bare: boolean,
): Answer<'training-load'> {
  const ofSets = (loads ?? []).flatMap(({ cautions }) => cautions);
  const told = ofSets.filter(({ code }) => !bare || !ABOUT_RESTRICTION.includes(code));
  return told.length > 0 ? { ...load, cautions: uniqueCautions([...load.cautions, ...told]) } : load;
}

interface Cuff {
  readonly target: CuffPressure;
  readonly restTarget?: CuffPressure;
}

/** The pressures of one limb in an exercise. */
function cuffOf(limbCuff: CuffInPosture, { mode = 'resistance', percentLop, restPercentLop }: PlanExercise): Cuff {
  const percent = percentLop ?? limbCuff.limb.percentLop;
  if (percent === undefined) {
    throw new InputError([issue('missing', ['percentLop'], OR_OF_LIMB, 'undefined')]);
  }
  const target = limbCuff.at(percent, mode);
  if (restPercentLop === undefined) return { target };
  const restTarget = restTargetOf(limbCuff, restPercentLop, mode);
  if (restTarget.value >= target.value) {
    const expected = need(BELOW_SETS, { value: target.value, unit: 'mm[Hg]' });
    throw new InputError([
      issue('wrong-relation', ['restPercentLop'], expected, formatUnit(restTarget.value, 'mm[Hg]')),
    ]);
  }
  return { target, restTarget };
}

/** An exercise with the pressure of each cuff, and the occlusion pressure it is a share of. */
function withCuffs(full: FullPrescription, cuffs: readonly (CuffInPosture & Cuff)[], name: string): FullPrescription {
  if (full.restriction === 'none') return { ...full, name };
  const perSide = (of: (cuff: Cuff & { occlusion: Answer }) => Answer): PerSide => {
    const [first, second] = cuffs;
    if (!second) return of(first!).value;
    const [left, right] = first!.limb.side === 'left' ? [first!, second] : [second, first!];
    return { left: of(left).value, right: of(right).value };
  };
  const pressureMmHg = perSide(({ target }) => target);
  return {
    ...full,
    name,
    sets: full.sets.map((set) => ({ ...set, pressureMmHg })),
    occlusionMmHg: perSide(({ occlusion }) => occlusion),
    ...(full.restriction === 'partial' && { restPressureMmHg: perSide(({ restTarget }) => restTarget!) }),
  };
}

function exercisesOf(request: PlanRequest, findings: Findings): PlannedExercise[] {
  const { systolicMmHg, diastolicMmHg } = request;
  findings.try([], () => checkBloodPressure({ systolicMmHg, diastolicMmHg }), {
    fields: ['systolicMmHg', 'diastolicMmHg'],
  });
  request.limbs.forEach((limb, index) => {
    const same = (other: PlanLimb): boolean => other?.limb === limb?.limb && other?.side === limb?.side;
    if (request.limbs.findIndex(same) < index) {
      findings.issues.push(issue('wrong-relation', ['limbs', index, 'side'], LISTED_ONCE, describe(limb?.side)));
    }
  });
  const limbCuff = request.limbs.map((limb, index) =>
    findings.try(['limbs', index], () => (usesCuff(request, limb) ? limbCuffOf(request, limb) : undefined), {
      uses: PERSONAL,
    }),
  );
  return request.exercises.flatMap((exercise, index) => exerciseOf(request, findings, limbCuff, exercise, index) ?? []);
}

/** The session as a whole, its exercises with the pauses between them, and its items with what each adds up to. */
function sessionOf(request: PlanRequest, planned: readonly PlannedExercise[]) {
  const minutes = commonPractice.reperfusionMin.low;
  const given = request.exercises.slice(0, -1).map(({ reperfusionS }) => reperfusionS ?? request.reperfusionS);
  const session = {
    exercises: planned.map(({ full }) => full),
    pauses: given.map((pause) => pause ?? minutes * 60),
  };
  const schedule = scheduleSession(session);
  const parts = schedule.map(exercisePart);
  return {
    items: planned.flatMap(({ items }, index) =>
      items.map((item) => ({ ...item, totals: totalsOfSide(parts[index]!, item.side) })),
    ),
    session: {
      timeline: timelineOf(session, schedule),
      totals: wholeTotals(session, parts),
    } satisfies ExpandedPlanClock,
    assumptions: given.includes(undefined) ? [assumption('reperfusion-taken', { minutes })] : [],
  };
}

/** The cautions about a measurement some weeks ago. */
const measuredAgo = ({ date, limbs }: PlanRequest): Caution[] =>
  limbs.flatMap((cuff, index) => {
    const { limb, side, measured } = cuff;
    const measuredOn = measuredDay(cuff);
    if (date === undefined || measuredOn === undefined) return [];
    return guardCautions('days-since-measured', daysBetween(measuredOn, date), {
      values: { limb, side },
      path: ['limbs', index, ...(measured ? ['measured', 'date'] : ['occlusion'])],
    });
  });

/** What the guards say of a week of this session, where the request says how often it is done. */
function weekCautions({ sessionsPerWeek }: PlanRequest, limbs: readonly ExpandedLimbTotals[]): Caution[] {
  const cuffed = limbs.filter(({ exercises }) => exercises > 0);
  if (sessionsPerWeek === undefined || cuffed.length === 0) return [];
  return [
    ...guardCautions('restricted-sessions-week', sessionsPerWeek, { path: ['sessionsPerWeek'] }),
    ...cuffed.flatMap(({ limb, side, restrictionTime }) =>
      guardCautions('limb-restriction-week', (sessionsPerWeek * restrictionTime.value) / 60, {
        values: { limb, side },
        path: ['sessionsPerWeek'],
      }),
    ),
  ];
}

function cautionsOf(
  request: PlanRequest,
  items: readonly ExpandedPlanItem[],
  limbs: readonly ExpandedLimbTotals[],
  session: ExpandedPlanClock,
): Caution[] {
  const spare = request.limbs.flatMap(({ limb, side }, index) =>
    limbs.some((trained) => isSameLimb(trained, { limb, side }))
      ? []
      : [caution('note', 'limb-not-trained', { side, limb }, { path: ['limbs', index] })],
  );
  return [
    ...bloodPressureCautions(request.systolicMmHg, request.diastolicMmHg),
    ...ageCautions(request.ageYears),
    ...measuredAgo(request),
    ...weekCautions(request, limbs),
    ...items.flatMap(itemCautions),
    ...limbs.flatMap(({ cautions }) => cautions),
    ...session.totals.cautions,
    ...firstSessionCautions(request, items),
    ...spare,
  ];
}

/** The usual scheme has so many sets. */
const USUAL_SETS = 4;

/** A first session with more than one exercise under the cuff, as many sets as usual, or a set to failure. */
function firstSessionCautions({ screening, exercises }: PlanRequest, items: readonly ExpandedPlanItem[]): Caution[] {
  if (screening?.request.answers['first-session'] !== 'yes') return [];
  const cuffed = exercises.filter(({ restriction }) => restriction !== 'none');
  const under = items.filter(({ restriction }) => restriction !== 'none');
  const sets = Math.max(0, ...under.map((item) => item.sets.length));
  if (cuffed.length <= 1 && sets < USUAL_SETS && !under.some(({ lastSetToFailure }) => lastSetToFailure)) return [];
  const values = { exercises: cuffed.length, sets, usual: USUAL_SETS };
  const more = { path: ['exercises'], source: 'case-report-2016' } as const;
  return [screeningCaution('caution', 'first-session-volume', values, more)];
}

/** The ranges of loads, of which the totals count the lower end. */
const rangesOf = (items: readonly ExpandedPlanItem[]): Assumption[] => {
  const ranges = items.flatMap(({ exercise, load, upperLoad }) =>
    load && upperLoad
      ? [
          assumption('load-range-lower', {
            exercise,
            load: load.value,
            upper: upperLoad.value,
            unit: loadUnitOf(load.unit),
          }),
        ]
      : [],
  );
  // Both sides of an exercise share its loads.
  return [...new Map(ranges.map((one) => [messageKey(one), one])).values()];
};

/** A stop of an earlier document, in the words of the catalogue: its own are not trusted. */
const worded = (stop: Stop): Stop => ({
  ...stop,
  text: planTextByCode(stop.code, stop.values, stop.text) ?? planMessages['code-unknown'],
});

/** How old the screening is. No published text says how old is too old. */
function screeningAge({ screening, date }: PlanRequest): Assumption[] {
  if (!screening) return [];
  const { date: screened } = screening.request;
  if (screened === undefined || date === undefined) return [assumption('screening-age-unknown')];
  return [
    assumption('screening-dated', {
      date: screened,
      days: daysBetween(screened, date),
    }),
  ];
}

/** The documents of answers in a request, worked out again; what is of a later day than the plan is refused. */
function answersOf(request: PlanRequest): PlanRequest {
  const { screening, dayCheck, date, limbs } = request;
  const issues: InputIssue[] = [];
  const check = (day: string | undefined, path: Path): void => {
    if (date === undefined || day === undefined || day <= date) return;
    issues.push(issue('wrong-relation', path, need(NOT_AFTER_PLAN, { date }), day));
  };
  check(screening?.request.date, ['screening', 'request', 'date']);
  limbs.forEach((limb, index) => {
    check(measuredDay(limb), ['limbs', index, ...(limb.measured ? ['measured', 'date'] : ['occlusion'])]);
  });
  if (issues.length > 0) throw new InputError(issues);
  return {
    ...request,
    ...(screening && { screening: screeningAgain(screening, ['screening']) }),
    ...(dayCheck && { dayCheck: dayCheckAgain(dayCheck, ['dayCheck']) }),
  };
}

/** Whether the request holds answers of yours: they are taken as they are, and verified when the plan is read. */
const holdsAnswers = ({ limbs, exercises }: PlanRequest): boolean =>
  limbs.some(({ occlusion }) => typeof occlusion === 'object') ||
  exercises.some(
    ({ oneRepMax, load }) => typeof load === 'object' || (typeof oneRepMax === 'object' && 'kind' in oneRepMax),
  );

/**
 * A whole session as one JSON document: for each exercise on each limb the occlusion pressure, the cuff pressure in the
 * sets and in the rests, the maximum, the load, the sets and rests, the clock and what it adds up to; the session as a
 * whole; then every caution, the disclaimers, the stop criteria and the sources.
 *
 * Resistance exercise is lifted at a share of a maximum, with your own load, as a share of body mass or without a
 * load; walking, cycling and restriction at rest have sets by time. The cuff stays inflated, is deflated or goes to a
 * second pressure in the rests, or there is none; sides train alone, at once or in turn.
 *
 * An occlusion pressure that you hold (`occlusion`: estimated, measured, calibrated or converted) is used instead of an
 * estimate, and is converted to the cuff and posture of the exercise where they differ. A maximum is an answer, a load
 * with repetitions, a tested load without, or a number, which we take as exact. A load is a number or an answer. The
 * error of what you hold goes into the plan.
 *
 * The share of a maximum may be a range, `percentOneRepMax: { from: 20, to: 30 }`: an item then has the `load` of its lower
 * end, which the totals count, and the `upperLoad`. What is lifted between them is as planned.
 *
 * Give it the documents of `screen` and `checkDay`, and its `date`. Every caution of severity `stop` becomes one of its
 * `stops`, as do those that the request passes on. A stop stays in force until one of the `decisions` lifts it.
 *
 * The plan is arithmetic. It does not clear anyone to train: local codes and a licensed practitioner decide.
 *
 * @function
 * @param request - the person’s readings, limbs and exercises; see {@link PlanRequest} for units.
 * @returns the plan; print it with `explain(plan)`.
 * @throws InputError naming every wrong field, from the top of the request.
 *
 * @example
 * ```ts
 * import { planSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * plan.items[0]?.load?.value; // => 15
 * plan.items[0]?.totals.sessionTime.value; // => 390
 * ```
 */
export const planSession = /* @__PURE__ */ withInput(function planSession(request: PlanRequest): Plan {
  const document = plainInput(request, PLAN_REQUEST) as PlanRequest;
  const { value: read, issues } = parseDocument(planRequest, document);
  const value = read && {
    ...read,
    limbs: read.limbs.map(withWidth),
    ...(read.stops && { stops: read.stops.map(worded) }),
  };
  const findings = new Findings(issues);
  const readable = Array.isArray(document.limbs) && Array.isArray(document.exercises);
  const planned = readable ? exercisesOf(value ?? document, findings) : [];
  const asked =
    value && findings.try([], () => answersOf(value), { fields: ['screening', 'dayCheck', 'date', 'limbs'] });
  if (!asked || findings.issues.length > 0) throw new InputError(findings.issues);
  const { items, session, assumptions } = sessionOf(asked, planned);
  const limbs = limbsOf(items);
  const { date, screening, dayCheck } = asked;
  const cuffed = items.some(({ restriction }) => restriction !== 'none');
  const message = [
    { cautions: screening ? screeningCautions(screening) : [], since: screening?.request.date },
    { cautions: dayCheck ? dayCheckCautions(dayCheck, date) : [], since: dayCheck?.request.date },
    { cautions: cautionsOf(asked, items, limbs, session), since: date },
  ];
  const found = message.map(({ cautions, since }) => stopsOf(cautions, since));
  const stops = applyDecisions(mergeStops(asked.stops ?? [], ...found), asked.decisions, date);
  const expanded: ExpandedPlan = {
    document: 'plan',
    schemaVersion: 2,
    libraryVersion: version,
    request: asked,
    items,
    limbs,
    session,
    assumptions: [...screeningAge(asked), ...assumptions, ...rangesOf(items)],
    stops,
    cautions: uniqueCautions(
      softened(
        message.flatMap(({ cautions }) => cautions),
        stops,
      ),
    ),
    disclaimers: disclaimers(cuffed),
    stopCriteria: stopCriteria(cuffed),
  };
  const plan = compact<Plan>(expanded, planTextByCode);
  return holdsAnswers(asked) ? plan : ownDocument(plan);
});
