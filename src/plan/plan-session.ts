import { defined } from '../answer/defined.js';
import type { Answer, Caution } from '../answer/answer.js';
import { describe, InputError, issue, isInputError, moved, type InputIssue, type Path } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { cite } from '../answer/cite.js';
import { bloodPressureCautions, checkBloodPressure } from '../pressure/blood-pressure.js';
import { correctForCuffWidth } from '../pressure/cuff-width.js';
import { estimateOcclusionPressure, type OcclusionInput } from '../pressure/estimate.js';
import { measuredOcclusionPressure, type MeasuredInput } from '../pressure/measured.js';
import { targetCuffPressure, type TargetInput } from '../pressure/target.js';
import { addUp } from '../session/account.js';
import { fullPrescription, type Prescription } from '../session/prescription.js';
import { layOut } from '../session/timeline.js';
import { formatUnit } from '../quantity/format.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { estimateOneRepMax, testedOneRepMax, type OneRepMaxInput, type TestedInput } from '../strength/one-rep-max.js';
import { trainingLoad, type TrainingLoadInput } from '../strength/training-load.js';
import { onceEach } from './gravest-first.js';
import { limbsOf } from './limb-totals.js';
import { parseDocument } from './parse.js';
import { planRequest } from './schema.js';
import { standingSentences, stopSigns } from './standing.js';
import type { LimbTotals, Plan, PlanExercise, PlanItem, PlanLimb, PlanRequest } from './types.js';

/** Fields of the person, which stand at the top of a request and not in the part that uses them. */
const PERSONAL = ['ageYears', 'sex', 'systolicMmHg', 'diastolicMmHg', 'posture'];

const startsWith = (path: Path, place: Path): boolean => place.every((step, index) => path[index] === step);

/** Gathers what the parts of a plan find wrong, told from the top of the request. */
class Findings {
  readonly issues: InputIssue[];
  constructor(issues: InputIssue[]) {
    this.issues = issues;
  }

  /**
   * Runs one part, unless something it draws on is known to be wrong: its place in the request (only the `fields`
   * there, where they are named), or fields of the person that it uses.
   */
  try<T>(
    place: Path,
    part: () => T,
    { fields, uses = [] }: { fields?: readonly string[]; uses?: readonly string[] } = {},
  ): T | undefined {
    const known = this.issues.some(({ path }) => {
      const next = path[place.length];
      const inside =
        startsWith(path, place) && (!fields || next === undefined || fields.some((field) => field === next));
      return (
        inside || (startsWith(place, path) && path.length < place.length) || uses.some((field) => path[0] === field)
      );
    });
    if (known) return undefined;
    try {
      return part();
    } catch (error) {
      if (!isInputError(error)) throw error;
      const outward = (path: Path): Path => (uses.some((field) => path[0] === field) ? path : [...place, ...path]);
      this.issues.push(...error.issues.map((found) => moved(found, outward)));
      return undefined;
    }
  }
}

function occlusionOf(request: PlanRequest, limb: PlanLimb): Answer<'occlusion-pressure'> {
  const { ageYears, sex, systolicMmHg, diastolicMmHg, posture } = request;
  const { circumferenceCm, cuffWidthCm, measured, equation, side } = limb;
  if (!measured) {
    const readings = {
      limb: limb.limb,
      side,
      circumferenceCm,
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
    defined({
      ...measured,
      cuffWidthCm: measured.cuffWidthCm ?? cuffWidthCm,
      limb: limb.limb,
      side,
      posture,
    }) as MeasuredInput,
  );
  if (measurement.value <= diastolicMmHg) {
    const expected = 'above the diastolic pressure';
    throw new InputError([
      issue('wrong-relation', ['measured', 'valueMmHg'], expected, formatUnit(measurement.value, 'mm[Hg]')),
    ]);
  }
  if (measured.cuffWidthCm === undefined || measured.cuffWidthCm === cuffWidthCm) return measurement;
  return correctForCuffWidth({
    occlusionMmHg: measurement.value,
    diastolicMmHg,
    fromWidthCm: measured.cuffWidthCm,
    toWidthCm: cuffWidthCm,
    standardDeviationMmHg: measurement.standardDeviation ?? 0,
  });
}

const maximumOf = ({ oneRepMax }: PlanExercise): Answer<'one-repetition-maximum'> =>
  oneRepMax.repetitions === undefined
    ? testedOneRepMax(oneRepMax as TestedInput)
    : estimateOneRepMax(oneRepMax as OneRepMaxInput);

/** Every part is tried, so that all that is wrong is told at once; parts that are not there are passed over. */
function itemsOf(request: PlanRequest, findings: Findings): PlanItem[] {
  const { systolicMmHg, diastolicMmHg } = request;
  findings.try([], () => checkBloodPressure({ systolicMmHg, diastolicMmHg }), {
    fields: ['systolicMmHg', 'diastolicMmHg'],
  });
  request.limbs.forEach((limb, index) => {
    const same = (other: PlanLimb): boolean => other?.limb === limb?.limb && other?.side === limb?.side;
    if (request.limbs.findIndex(same) < index) {
      findings.issues.push(
        issue('wrong-relation', ['limbs', index, 'side'], 'a limb and side listed once', describe(limb?.side)),
      );
    }
  });
  const targets = request.limbs.map((limb, index) =>
    findings.try(
      ['limbs', index],
      () => {
        const occlusion = occlusionOf(request, limb);
        const { percent, gaugeStepMmHg, ceilingMmHg } = limb;
        const target = targetCuffPressure(defined({ occlusion, percent, gaugeStepMmHg, ceilingMmHg }) as TargetInput);
        return { occlusion, target };
      },
      { uses: PERSONAL },
    ),
  );
  return request.exercises.flatMap((exercise, index) => {
    const place = ['exercises', index];
    const oneRepMax = findings.try([...place, 'oneRepMax'], () => maximumOf(exercise));
    const load =
      oneRepMax &&
      findings.try(
        place,
        () => {
          const { percent, unit, step, available, rounding } = exercise;
          return trainingLoad(defined({ oneRepMax, percent, unit, step, available, rounding }) as TrainingLoadInput);
        },
        { fields: ['percent', 'unit', 'step', 'available', 'rounding'] },
      );
    const full = findings.try(
      place,
      () => {
        const { scheme, sets, tempo, restS, restriction } = exercise;
        const prescription = {
          scheme,
          sets,
          tempo,
          restS,
          restriction,
          load: load?.value,
          unit: load && loadUnitOf(load.unit),
        };
        const read = fullPrescription(defined(prescription) as Prescription);
        if (read.sets.some(({ repetitions }) => repetitions === undefined)) {
          const expected = 'repetitions set by set; sets by the watch are for sessionTimeline and accountSession';
          throw new InputError([issue('wrong-relation', ['scheme'], expected, describe(scheme))]);
        }
        return read;
      },
      { fields: ['scheme', 'sets', 'tempo', 'restS', 'restriction'] },
    );
    const wears = (limb: PlanLimb): boolean =>
      limb?.limb === exercise?.limb && (exercise?.side ?? limb?.side) === limb?.side;
    findings.try(
      place,
      () => {
        if (!request.limbs.some(wears)) {
          const asked = [exercise.side, exercise.limb].filter(Boolean).join(' ');
          throw new InputError([issue('wrong-relation', ['limb'], 'a limb and side listed in limbs', asked)]);
        }
      },
      { fields: ['limb', 'side'] },
    );
    if (!oneRepMax || !load || !full) return [];
    const { restriction } = exercise;
    const sets = full.sets.map(({ repetitions, restS }) => ({ repetitions: repetitions!, restS }));
    const shared = {
      oneRepMax,
      load,
      sets,
      tempo: full.tempo!,
      restriction,
      timeline: layOut(full),
      totals: addUp(full),
    };
    return request.limbs.flatMap((limb, at): PlanItem[] => {
      const pressure = targets[at];
      if (!pressure || !wears(limb)) return [];
      return [{ exercise: exercise.name, limb: limb.limb, side: limb.side, ...pressure, ...shared }];
    });
  });
}

function cautionsOf(request: PlanRequest, items: readonly PlanItem[], limbs: readonly LimbTotals[]): Caution[] {
  const all = [
    ...bloodPressureCautions(request.systolicMmHg, request.diastolicMmHg),
    ...items.flatMap(({ occlusion, target, oneRepMax, load, totals }) =>
      [occlusion, target, oneRepMax, load, totals].flatMap(({ cautions }) => cautions),
    ),
    ...limbs.flatMap(({ cautions }) => cautions),
  ];
  return onceEach(all);
}

/**
 * A whole session as one JSON document: for each exercise on each limb the occlusion pressure, the cuff pressure,
 * the maximum, the load, the sets and rests, the clock and what it adds up to; then every caution, the standing
 * sentences, the signs to stop at and the sources.
 *
 * A measured occlusion pressure is used instead of an estimate where one is given, and is carried to the cuff
 * that will be worn when it was measured with another. A maximum without repetitions is a tested one.
 *
 * The plan is arithmetic. It clears no one to train; local codes and a licensed practitioner decide.
 *
 * @param request - the person’s readings, limbs and exercises; see {@link PlanRequest} for units.
 * @returns the plan; print it with `explain(plan)`.
 * @throws InputError naming every wrong field, from the top of the request.
 *
 * @example
 * ```ts
 * import { planSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percent: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percent: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
 *   }],
 * });
 * plan.items[0]?.load.value; // => 15
 * plan.items[0]?.totals.sessionTime.value; // => 390
 * ```
 */
export function planSession(request: PlanRequest): Plan {
  const document = plainInput(request, 'a request for a plan') as PlanRequest;
  const { value, issues } = parseDocument(planRequest, document);
  const findings = new Findings(issues);
  const readable = Array.isArray(document.limbs) && Array.isArray(document.exercises);
  const items = readable ? itemsOf(value ?? document, findings) : [];
  if (!value || findings.issues.length > 0) throw new InputError(findings.issues);
  const limbs = limbsOf(items);
  const plan = {
    document: 'plan',
    schemaVersion: 1,
    request: value,
    items,
    limbs,
    cautions: cautionsOf(value, items, limbs),
    standing: standingSentences(),
    stopSigns: stopSigns(),
  } as const;
  return { ...plan, sources: cite(plan).map(({ id }) => id) };
}
