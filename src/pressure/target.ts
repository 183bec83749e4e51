import type { Answer, Caution, ReachedPressure } from '../answer/answer.js';
import type { Writable } from '../answer/defined.js';
import { once, sharedFacts } from '../answer/own.js';
import { pressureCautions } from '../answer/guards.js';
import { AT_MOST, need } from '../answer/needs.js';
import { PlainReader } from '../answer/plain-reader.js';
import { answersAtEnds, type AnswerRange, type PercentRange } from '../answer/range.js';
import { withInput } from '../answer/with-input.js';
import { guidance2019 } from '../evidence/guidance.js';
import { format, formatUnit } from '../quantity/format.js';
import { EXERCISE_MODES, settingQuantities as quantities, type ExerciseMode } from '../quantity/quantities.js';
import { product, roundToStep } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { exactness, readPressure } from './held-pressure.js';
import { targetCaution as caution } from './messages.js';
import { chanceAtOrBelow, valueAtChance } from './answer-spread.js';
import { CERTAIN_ENOUGH, WITH_INTERVAL } from './needs.js';

/** A pressure to set on the gauge [mmHg]. */
export type CuffPressure = Answer<'cuff-pressure'> & Required<Pick<Answer<'cuff-pressure'>, 'reached' | 'rounding'>>;

/** What {@link targetCuffPressure} takes. */
export interface TargetInput {
  /**
   * An answer of `estimateOcclusionPressure`, `measuredOcclusionPressure`, `calibrateOcclusionPressure` or a
   * correction; or a number [mmHg], which is taken as exact.
   */
  readonly occlusion: Answer<'occlusion-pressure'> | number;
  /** Share of limb occlusion pressure to set [%], 1–100. */
  readonly percentLop: number;
  /** Smallest step of the gauge [mmHg], 0.1–50; 1 when left out. The setting is rounded down to it. */
  readonly gaugeStepMmHg?: number | undefined;
  /** Highest cuff pressure that may be set [mmHg], 20–1000; no limit when left out. */
  readonly ceilingMmHg?: number | undefined;
  /**
   * Kind of exercise under the cuff; `resistance` when left out. For `passive` restriction, guidance gives higher
   * pressures.
   */
  readonly mode?: ExerciseMode | undefined;
  /** Highest chance that the setting may have of closing the artery fully [%], 0.1–50; none when left out. */
  readonly occlusionChanceLimitPercent?: number | undefined;
}

function percentCautions(percentLop: number, mode: ExerciseMode): Caution[] {
  const { low, high } = guidance2019.percentLop[mode];
  const path = ['percentLop'];
  const closes = mode === 'passive' ? [] : pressureCautions('percent-of-occlusion', percentLop, { path });
  if (closes.length > 0) return closes;
  const values = { percentLop, low, high };
  const more = { path, source: 'guideline-review-2019' } as const;
  if (percentLop > high) return [caution('caution', 'percent-above-usual', values, more)];
  return percentLop < low ? [caution('note', 'percent-below-usual', values, more)] : [];
}

/** The chance that a setting closes the artery fully [%]: that the true occlusion pressure is at or below it. */
function closureChance(setting: number, occlusion: Answer): number | undefined {
  const chance = chanceAtOrBelow(setting, occlusion);
  return chance === undefined ? undefined : 100 * chance;
}

/** The cautions about a chance of closing the artery. At rest guidance reaches 100 %, so there it is never a stop. */
function closureCautions(chance: number | undefined, mode: ExerciseMode): Caution[] {
  if (chance === undefined) return [];
  const most = mode === 'passive' ? 'caution' : 'stop';
  return pressureCautions('closure-chance', chance, {
    values: { value: Math.round(chance) },
    path: ['percentLop'],
    most,
  });
}

/** What holds for every setting. */
const notes = once(() =>
  sharedFacts([
    caution('note', 'percent-not-flow', undefined, { source: 'flow-steps-2018' }),
    caution('note', 'pressure-drifts', undefined, { source: 'exercise-shift-2018' }),
  ]),
);

/** The highest gauge setting that keeps the chance of closing the artery within a limit; 0 where none does. */
function highestSetting(occlusion: Answer, limitPercent: number, step: number): number {
  const edge = valueAtChance(limitPercent / 100, occlusion);
  let setting = edge < step ? 0 : roundToStep(edge, step, 'down');
  // Rounding takes 12 digits of the edge: it may lie a hair above it.
  if (setting > 0 && closureChance(setting, occlusion)! > limitPercent)
    setting = roundToStep(setting - step, step, 'nearest');
  return setting;
}

/**
 * The cuff pressure that is a percentage of limb occlusion pressure, rounded down to the gauge.
 *
 * Formula: P = p / 100 × LOP, rounded down to the gauge step.
 *
 * The interval is that of the pressure which would be exactly p % of the true LOP. `reached` turns it
 * round: the percentage that this setting really is of the LOP given, and the range it may be of the
 * true one, and the chance that it closes the artery fully, where the interval is known: Φ(ln(P / LOP) / s), with
 * s = `standardDeviation` of LOP. From a chance of 5 % on a caution says so, and from 50 % on a stop (`guards`).
 * A `ceilingMmHg` holds the setting down, and so does an `occlusionChanceLimitPercent`: `reached.highestMmHg` is then
 * the highest gauge setting that keeps the chance within that limit. A caution says what was held.
 *
 * - Usual range: 40 to 80 % (guideline review 2019, `secondary`), at rest 70 to 100 % (`unconfirmed`). Above it a
 *   caution is given.
 * - Error and evidence: those of the occlusion pressure.
 * - Source of the usual range: Front Physiol 2019;10:533.
 *
 * @function
 * @param input - `occlusion` LOP, an answer or a number [mmHg]; `percentLop` p [%]; `gaugeStepMmHg` [mmHg]; `ceilingMmHg` [mmHg];
 * mode; `occlusionChanceLimitPercent` [%]
 * @returns P [mmHg], with the percentage that is really reached.
 * @throws InputError naming every wrong field; also where the gauge step is larger than the pressure, and where no
 * gauge setting keeps the limit.
 *
 * @example
 * ```ts
 * import { measuredOcclusionPressure, targetCuffPressure } from 'cuffwork';
 * const occlusion = measuredOcclusionPressure({ valueMmHg: 165, method: 'doppler', limb: 'leg' });
 * const target = targetCuffPressure({ occlusion, percentLop: 50, gaugeStepMmHg: 5 });
 * target.value; // => 80
 * target.reached.percentLop.toFixed(1); // => '48.5'
 * const held = targetCuffPressure({ occlusion, percentLop: 90, gaugeStepMmHg: 5, occlusionChanceLimitPercent: 1 });
 * held.value; // => 145
 * held.reached.occlusionChancePercent?.toFixed(1); // => '0.7'
 * ```
 */
export const targetCuffPressure = withInput(function targetCuffPressure(input: TargetInput): CuffPressure {
  const reader = new PlainReader(input);
  const occlusion = readPressure(reader, 'occlusion');
  const percentLop = reader.number('percentLop', quantities.percentLop);
  const gaugeStepMmHg = reader.optionalNumber('gaugeStepMmHg', quantities.gaugeStepMmHg) ?? 1;
  const ceilingMmHg = reader.optionalNumber('ceilingMmHg', quantities.ceilingMmHg);
  const asked = reader.optionalChoice('mode', EXERCISE_MODES);
  const limit = reader.optionalNumber('occlusionChanceLimitPercent', quantities.occlusionChanceLimitPercent);
  const { fine } = reader;
  const share = percentLop / 100;
  const wanted = fine ? product(share, occlusion.value) : NaN;
  if (fine && limit !== undefined && occlusion.standardDeviation === undefined) {
    reader.refuse('occlusion', WITH_INTERVAL, 'one without');
  }
  const highest = fine && limit !== undefined ? highestSetting(occlusion, limit, gaugeStepMmHg) : undefined;
  const held = ceilingMmHg !== undefined && wanted > ceilingMmHg;
  const unlimited = fine ? roundToStep(held ? ceilingMmHg : wanted, gaugeStepMmHg, 'down') : NaN;
  const limited = highest !== undefined && highest < unlimited;
  const value = limited ? highest : unlimited;
  if (unlimited === 0) {
    reader.refuse('gaugeStepMmHg', need(AT_MOST, { value: wanted, unit: 'mm[Hg]' }), String(gaugeStepMmHg));
  } else if (limited && highest === 0) {
    reader.refuse('occlusionChanceLimitPercent', CERTAIN_ENOUGH, formatUnit(limit!, '%'));
  }
  reader.done();

  const mode = asked ?? 'resistance';
  const { lower, upper, standardDeviation, scale, level } = occlusion;
  const spread = standardDeviation !== undefined && scale === undefined ? share * standardDeviation : standardDeviation;
  const chance = closureChance(value, occlusion);
  const usual = percentCautions(percentLop, mode);
  const cautions: Caution[] = [
    ...pressureCautions('cuff-pressure', value),
    ...usual,
    // If you ask for a closed artery, a caution reports it already.
    ...(usual.some(({ severity }) => severity === 'stop') ? [] : closureCautions(chance, mode)),
    ...notes(),
  ];
  if (held) {
    const values = { ceiling: ceilingMmHg, wanted: Number(format(wanted)), percentLop };
    cautions.push(caution('caution', 'ceiling-reached', values, { path: ['ceilingMmHg'] }));
  }
  if (limited) {
    const values = { limit: limit!, wanted: Number(format(wanted)), percentLop };
    cautions.push(caution('caution', 'chance-limit-holds', values, { path: ['occlusionChanceLimitPercent'] }));
  }
  if (standardDeviation === undefined) cautions.push(caution('caution', 'true-percent-not-known'));
  const inputs: Writable<CuffPressure['inputs']> = { occlusion, percentLop, gaugeStepMmHg };
  if (ceilingMmHg !== undefined) inputs['ceilingMmHg'] = ceilingMmHg;
  if (asked) inputs['mode'] = asked;
  if (limit !== undefined) inputs['occlusionChanceLimitPercent'] = limit;
  const reached: Writable<ReachedPressure> = { percentLop: (100 * value) / occlusion.value };
  if (upper !== undefined) reached.lower = (100 * value) / upper;
  if (lower !== undefined) reached.upper = (100 * value) / lower;
  if (chance !== undefined) reached.occlusionChancePercent = chance;
  if (highest !== undefined) reached.highestMmHg = highest;
  const answer = { kind: 'cuff-pressure', value, unit: 'mm[Hg]' } as Writable<CuffPressure>;
  if (lower !== undefined) answer.lower = share * lower;
  if (upper !== undefined) answer.upper = share * upper;
  if (level !== undefined) answer.level = level;
  // An error that is a share of the pressure is the same share of its percentage; one in mmHg is that percentage of it.
  if (spread !== undefined) {
    answer.standardDeviation = spread;
    if (scale) answer.scale = scale;
    answer.errors = [{ part: 'occlusion', standardDeviation: spread, evidence: occlusion.evidence }];
  }
  answer.equation = 'percent-of-occlusion';
  answer.evidence = occlusion.evidence;
  answer.inputs = inputs;
  answer.rounding = { from: wanted, to: 'down', step: gaugeStepMmHg };
  answer.reached = reached;
  answer.assumptions = exactness(occlusion);
  answer.cautions = cautions;
  return answer;
});

/** What {@link targetCuffPressureRange} takes: the fields of `targetCuffPressure`, with a range of percentages. */
export interface TargetRangeInput extends Omit<TargetInput, 'percentLop'> {
  /** Range of percentages of limb occlusion pressure [%], each 1–100. */
  readonly percentLop: PercentRange;
}

/**
 * The cuff pressures at both ends of a range of percentages of limb occlusion pressure (LOP), such as 40–80 %: each an
 * answer of `targetCuffPressure`, rounded down to the gauge, with its own interval and cautions.
 *
 * Formula: P = p / 100 × LOP, at both ends of p
 *
 * - Usual range: 40 to 80 % (guideline review 2019, `secondary`), at rest 70 to 100 % (`unconfirmed`).
 * - Error and evidence: those of the occlusion pressure.
 * - Source of the usual range: Front Physiol 2019;10:533.
 *
 * @function
 * @param input - fields of `targetCuffPressure`; `percentLop` p, a range `{ from, to }` [%]
 * @returns P at `from` and at `to` [mmHg].
 * @throws InputError that lists every wrong field of both ends, and a range whose upper end is below the lower one.
 *
 * @example
 * ```ts
 * import { targetCuffPressureRange } from 'cuffwork';
 * const { from, to } = targetCuffPressureRange({ occlusion: 165, percentLop: { from: 40, to: 80 } });
 * `${from.value} to ${to.value} mmHg`; // => '66 to 132 mmHg'
 * ```
 */
export const targetCuffPressureRange = withInput(function targetCuffPressureRange(
  input: TargetRangeInput,
): AnswerRange<CuffPressure> {
  return answersAtEnds(targetCuffPressure, input, 'percentLop');
});
