import { frozen } from '../quantity/frozen.js';
import { product } from '../quantity/exact.js';
import type { Answer } from '../answer/answer.js';
import { interval, normalInterval } from '../answer/interval.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import {
  inLoadUnit,
  LOAD_UNITS,
  loadUnitCode,
  quantities,
  SEXES,
  type LoadUnit,
  type Sex,
} from '../quantity/quantities.js';
import { assumption } from './assumptions.js';
import { comparisonCaution } from './messages.js';
import { need } from '../answer/needs.js';
import { SEX_WITH_SHARE } from './needs.js';

/** The share of body mass that a movement lifts, its standard deviation between people, and its source. */
export interface BodyMassShare {
  /** The movement. */
  readonly movement: BodyMassMovement;
  /** Sex of the sample. */
  readonly sex: Sex;
  /** Share of body mass lifted, between 0 and 1. */
  readonly fraction: number;
  /** Standard deviation of `fraction` between people, where the paper reports it. */
  readonly standardDeviation?: number;
  /** Evidence grade of the share. */
  readonly evidence: Grade;
  /** Id of the publication. */
  readonly source: SourceId;
}

export const MOVEMENTS = [
  'push-up-top',
  'push-up-bottom',
  'knee-push-up-top',
  'knee-push-up-bottom',
  'squat',
  'pull-up',
] as const;

/**
 * A movement that lifts a share of body mass; push-ups held still with the arms straight (`top`) or bent (`bottom`).
 */
export type BodyMassMovement = (typeof MOVEMENTS)[number];

const PUSH_UP = { evidence: 'published', source: 'push-up-2014' } as const;
const SEGMENTS = { evidence: 'unconfirmed', source: 'segment-masses-1996' } as const;

/**
 * Shares of body mass. Push-ups were measured while held still. Squat and pull-up are body mass less the segments that
 * do not move: 1 − 2 × (shank + foot) and 1 − 2 × (forearm + hand), with segment masses written from memory. We found
 * no figures for other movements.
 *
 * @example
 * ```ts
 * import { bodyMassShares } from 'cuffwork';
 * bodyMassShares.find(({ movement, sex }) => movement === 'push-up-top' && sex === 'male')?.fraction; // => 0.67
 * ```
 */
export const bodyMassShares: readonly BodyMassShare[] = frozen([
  { movement: 'push-up-top', sex: 'male', fraction: 0.67, standardDeviation: 0.038, ...PUSH_UP },
  { movement: 'push-up-top', sex: 'female', fraction: 0.651, standardDeviation: 0.031, ...PUSH_UP },
  { movement: 'push-up-bottom', sex: 'male', fraction: 0.746, standardDeviation: 0.036, ...PUSH_UP },
  { movement: 'push-up-bottom', sex: 'female', fraction: 0.703, standardDeviation: 0.031, ...PUSH_UP },
  { movement: 'knee-push-up-top', sex: 'male', fraction: 0.525, standardDeviation: 0.037, ...PUSH_UP },
  { movement: 'knee-push-up-top', sex: 'female', fraction: 0.515, standardDeviation: 0.031, ...PUSH_UP },
  { movement: 'knee-push-up-bottom', sex: 'male', fraction: 0.601, standardDeviation: 0.045, ...PUSH_UP },
  { movement: 'knee-push-up-bottom', sex: 'female', fraction: 0.566, standardDeviation: 0.027, ...PUSH_UP },
  { movement: 'squat', sex: 'male', fraction: 0.886, ...SEGMENTS },
  { movement: 'squat', sex: 'female', fraction: 0.878, ...SEGMENTS },
  { movement: 'pull-up', sex: 'male', fraction: 0.955, ...SEGMENTS },
]);

/** What {@link bodyMassLoad} takes. */
export interface BodyMassInput {
  /** The movement. */
  readonly movement: BodyMassMovement;
  /** Sex of the person. */
  readonly sex: Sex;
  /** Body mass [`unit`], 20–800. */
  readonly bodyMass: number;
  /** Unit of `bodyMass` and of the answer; kg when left out. */
  readonly unit?: LoadUnit | undefined;
}

/**
 * The load that body mass makes in a movement.
 *
 * Formula: w = f × m
 *
 * Estimate 1RM from the whole load: add the mass on the belt to this answer, and give the sum to `estimateOneRepMax`.
 * Then give this answer to `trainingLoad` as `bodyMassLoad`, which subtracts it again.
 *
 * - Error: push-ups the published standard deviation between people; squat and pull-up not checked.
 * - Evidence: push-ups `published`, held still; squat and pull-up `unconfirmed`.
 * - Source: Int J Exerc Sci 2014;7(2):161–168; J Biomech 1996;29:1223–1230.
 *
 * @function
 * @param input - movement; sex; `bodyMass` m [`unit`]; unit
 * @returns w [`unit`]
 * @throws InputError that lists every wrong field; also where we found no share: the pull-up of women.
 *
 * @example
 * ```ts
 * import { bodyMassLoad } from 'cuffwork';
 * bodyMassLoad({ movement: 'push-up-top', sex: 'female', bodyMass: 60 }).value; // => 39.06
 * ```
 */
export const bodyMassLoad = withInput(function bodyMassLoad(input: BodyMassInput): Answer<'body-mass-load'> {
  const reader = new Reader(input);
  const movement = reader.choice('movement', MOVEMENTS);
  const sex = reader.choice('sex', SEXES);
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  const code = loadUnitCode(unit);
  const bodyMass = reader.number('bodyMass', inLoadUnit(quantities.bodyMass, code));
  const share = bodyMassShares.find((each) => each.movement === movement && each.sex === sex);
  if (!share && reader.fine) {
    const known = bodyMassShares.filter((each) => each.movement === movement).map((each) => each.sex);
    reader.refuse('sex', need(SEX_WITH_SHARE, { movement, sexes: known }), sex);
  }
  reader.done();
  const { fraction, standardDeviation, evidence, source } = share!;
  const value = product(fraction, bodyMass);
  const spread =
    standardDeviation !== undefined &&
    interval(value, [{ part: 'sample', standardDeviation: standardDeviation * bodyMass, evidence }]);
  return {
    kind: 'body-mass-load',
    value,
    unit: code,
    ...spread,
    equation: `${movement}-share`,
    evidence,
    inputs: { movement, sex, bodyMass, fraction, unit },
    assumptions: [spread ? normalInterval : assumption('share-from-segments')],
    cautions: spread ? [comparisonCaution('note', 'static-share', undefined, { source })] : [],
  };
});
