import type { Answer } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { describe, InputError, issue, refuse, type InputIssue, type Path } from '../answer/issues.js';
import { LEFT_OUT_WITH, need } from '../answer/needs.js';
import { estimateOcclusionPressure, type OcclusionInput } from '../pressure/estimate.js';
import { assumedOfMeasurement, occlusionForExercise } from '../pressure/for-exercise.js';
import { enteredPressure, placeOf } from '../pressure/held-pressure.js';
import { ABOVE_DIASTOLIC } from '../pressure/needs.js';
import { measuredOcclusionPressure, type MeasuredInput } from '../pressure/measured.js';
import { targetCuffPressure, type CuffPressure, type TargetInput } from '../pressure/target.js';
import { formatUnit } from '../quantity/format.js';
import type { ExerciseMode, Posture } from '../quantity/quantities.js';
import { isCuffed } from '../session/prescription.js';
import { usesLimb } from './limb-and-side.js';
import { BELOW_SETS, OF_LIMB, OR_OF_LIMB, WIDTH_FOR_CUFF } from './needs.js';
import type { PlanExercise, PlanLimb, PlanRequest } from './types.js';

type Occlusion = Answer<'occlusion-pressure'>;

/** What a limb’s cuff is set to in an exercise, and the occlusion pressure that it is a share of. */
export interface CuffSetting {
  readonly occlusion: Occlusion;
  readonly target: CuffPressure;
  /** Pressure in the rests, with partial restriction. */
  readonly restTarget?: CuffPressure;
}

/** The cuff of a limb: its setting in an exercise. */
export type LimbCuff = (exercise: PlanExercise) => CuffSetting;

/** A limb with the width of its cuff: that of the pressure it holds, where none is given. */
export function withWidth(limb: PlanLimb): PlanLimb {
  if (!limb?.occlusion || limb.cuffWidthCm !== undefined || typeof limb.occlusion === 'number') return limb;
  const { cuffWidthCm } = placeOf(limb.occlusion);
  return cuffWidthCm === undefined ? limb : { ...limb, cuffWidthCm };
}

/** Whether a limb has all that the pressure of its cuff is worked out from. */
export const hasReadings = ({ cuffWidthCm, circumferenceCm, measured, occlusion }: PlanLimb): boolean =>
  cuffWidthCm !== undefined && [circumferenceCm, measured, occlusion].some((reading) => reading !== undefined);

/** Whether any exercise has the cuff of a limb inflated; and where its readings are all there, they are looked at too. */
export const usesCuff = ({ exercises }: PlanRequest, limb: PlanLimb): boolean =>
  hasReadings(limb) || exercises.some((one) => one && isCuffed(one) && usesLimb(one, limb));

function checkAboveDiastolic({ value }: Answer, diastolicMmHg: number, path: Path): void {
  if (value > diastolicMmHg) return;
  const asked = need(ABOVE_DIASTOLIC, { value: diastolicMmHg, unit: 'mm[Hg]' });
  refuse('wrong-relation', path, asked, formatUnit(value, 'mm[Hg]'));
}

/** An occlusion pressure that the request holds, with what we assume of it. */
function heldOcclusion(
  occlusion: Occlusion | number,
  { limb, measured, equation }: PlanLimb,
  diastolicMmHg: number,
): Occlusion {
  const held = typeof occlusion === 'number' ? enteredPressure(occlusion) : occlusion;
  const own = placeOf(held);
  const issues: InputIssue[] = [];
  if (own.limb !== undefined && own.limb !== limb) {
    issues.push(issue('wrong-relation', ['occlusion'], need(OF_LIMB, { limb }), describe(own.limb)));
  }
  for (const [name, value] of Object.entries({ measured, equation })) {
    if (value !== undefined)
      issues.push(issue('wrong-relation', [name], need(LEFT_OUT_WITH, { field: 'occlusion' }), describe(value)));
  }
  if (issues.length > 0) throw new InputError(issues);
  checkAboveDiastolic(held, diastolicMmHg, ['occlusion']);
  return { ...held, assumptions: [...held.assumptions, ...assumedOfMeasurement(own)] };
}

/** An occlusion pressure that the request has field by field, with what we assume of it. */
function measuredOcclusion(
  measured: NonNullable<PlanLimb['measured']>,
  { limb, side, cuffWidthCm }: PlanLimb,
  { posture, diastolicMmHg }: PlanRequest,
): Occlusion {
  const input = defined({ side, posture, cuffWidthCm, ...defined(measured), limb });
  const answer = measuredOcclusionPressure(input as MeasuredInput);
  checkAboveDiastolic(answer, diastolicMmHg, ['measured', 'valueMmHg']);
  return { ...answer, assumptions: [...answer.assumptions, ...assumedOfMeasurement(measured)] };
}

/** The occlusion pressure of a limb in a posture: as held, as measured, or estimated. */
function occlusionOf(request: PlanRequest, cuff: PlanLimb, cuffWidthCm: number, posture: Posture): Occlusion {
  const { ageYears, sex, systolicMmHg, diastolicMmHg } = request;
  const { limb, side, circumferenceCm, circumferenceSite, measured, occlusion, equation } = cuff;
  const place = { limb, side, posture, cuffWidthCm, circumferenceCm, systolicMmHg, diastolicMmHg };
  if (occlusion !== undefined)
    return occlusionForExercise(heldOcclusion(occlusion, cuff, diastolicMmHg), { ...place, held: true });
  if (measured) return occlusionForExercise(measuredOcclusion(measured, cuff, request), place);
  return estimateOcclusionPressure(defined({ ...place, circumferenceSite, ageYears, sex, equation }) as OcclusionInput);
}

/** The setting of a limb’s cuff by exercise. A pressure that several exercises have is worked out once. */
export function limbCuffOf(request: PlanRequest, limb: PlanLimb): LimbCuff {
  const { cuffWidthCm, gaugeStepMmHg, ceilingMmHg } = limb;
  if (cuffWidthCm === undefined) {
    refuse('missing', ['cuffWidthCm'], WIDTH_FOR_CUFF, undefined);
  }
  const occlusions = new Map<Posture, Occlusion>();
  const occlusionIn = (posture: Posture): Occlusion => {
    const occlusion = occlusions.get(posture) ?? occlusionOf(request, limb, cuffWidthCm, posture);
    occlusions.set(posture, occlusion);
    return occlusion;
  };
  const pressures = new Map<string, CuffPressure>();
  const pressureAt = (percentLop: number, mode: ExerciseMode, posture: Posture): CuffPressure => {
    const key = `${percentLop} ${mode} ${posture}`;
    const own = { gaugeStepMmHg, ceilingMmHg, mode: mode === 'resistance' ? undefined : mode };
    const pressure =
      pressures.get(key) ??
      targetCuffPressure(defined({ occlusion: occlusionIn(posture), percentLop, ...own }) as TargetInput);
    pressures.set(key, pressure);
    return pressure;
  };
  // What is wrong with the limb itself is named here, before any exercise.
  occlusionIn(request.posture);
  if (limb.percentLop !== undefined) pressureAt(limb.percentLop, 'resistance', request.posture);

  return ({ mode = 'resistance', posture = request.posture, percentLop = limb.percentLop, restPercentLop }) => {
    const occlusion = occlusionIn(posture);
    if (percentLop === undefined) {
      refuse('missing', ['percentLop'], OR_OF_LIMB, undefined);
    }
    const target = pressureAt(percentLop, mode, posture);
    if (restPercentLop === undefined) return { occlusion, target };
    const rest = pressureAt(restPercentLop, mode, posture);
    if (rest.value >= target.value) {
      const asked = need(BELOW_SETS, { value: target.value, unit: 'mm[Hg]' });
      refuse('wrong-relation', ['restPercentLop'], asked, formatUnit(rest.value, 'mm[Hg]'));
    }
    // The usual range is that of the sets.
    const cautions = rest.cautions.filter(({ code }) => code !== 'percent-below-usual');
    return { occlusion, target, restTarget: { ...rest, cautions } };
  };
}
