import type { Full } from '../answer/defined.js';
import type { Answer, Caution, ErrorPart, ReachedLoad } from '../answer/answer.js';
import { interval, normalInterval } from '../answer/interval.js';
import { LEFT_OUT_WITH, need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { answersAtEnds, type AnswerRange, type PercentRange } from '../answer/range.js';
import { withInput } from '../answer/with-input.js';
import { guidance2019 } from '../evidence/guidance.js';
import { weakest } from '../evidence/grades.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal } from '../quantity/decimal.js';
import { format, formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { inLoadUnit, LOAD_UNITS, type LoadUnit, loadUnitCode, loadUnitOf, quantities } from '../quantity/quantities.js';
import { product, sum, roundToStep, type Rounding } from '../quantity/exact.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { LESS_THAN_BODY, LIGHT_ENOUGH } from './needs.js';
import {
  loadBar,
  type Inventory,
  type Loading,
  type Plate,
  readInventory,
  reportTooFine,
  ROUNDINGS,
} from './plates.js';
import { exactness, readMass } from './read-mass.js';

/** A load to lift, in kg or lb; with a bar, also the plates on each side of it, heaviest first. */
export type TrainingLoad = Answer<'training-load'> & {
  /** The percentage of the 1RM that the rounded load really is, and its 95 % interval. */
  readonly reached: ReachedLoad;
  /** Plates on each side of the bar, heaviest first. */
  readonly perSide?: readonly Full<Plate>[];
};

/** What {@link trainingLoad} takes. */
export interface TrainingLoadInput {
  /** An answer of `testedOneRepMax` or `estimateOneRepMax`; or a number [`unit`], which is taken as exact. */
  readonly oneRepMax: Answer<'one-repetition-maximum'> | number;
  /** Percentage of the 1RM [%], 1–100. */
  readonly percentOneRepMax: number;
  /** Unit of the load; that of the maximum when left out. */
  readonly unit?: LoadUnit | undefined;
  /** Smallest step between loads [`unit`], 0.01–100: a stack, a pair of small plates. */
  readonly step?: number | undefined;
  /** The loads you can set [`unit`], such as a rack of dumbbells. Instead of `step`. */
  readonly available?: readonly number[] | undefined;
  /** Mass of the bar [`unit`], 0–200; with `plates`, instead of `step` and `available`. */
  readonly bar?: number | undefined;
  /** Mass of both collars together [`unit`], 0–50; 0 when left out. */
  readonly collars?: number | undefined;
  /** The plates that you have; with `bar`. */
  readonly plates?: readonly Plate[] | undefined;
  /** How the load is rounded to those you can set; `nearest` when left out. `down` never goes above the percentage. */
  readonly rounding?: Rounding | undefined;
  /**
   * Whose 1RM it is; `this-limb` when left out. That of the other limb gives a load, but no interval of true
   * percentages.
   */
  readonly maximumOf?: 'this-limb' | 'other-limb' | undefined;
  /**
   * Share of body mass that the 1RM includes: an answer of `bodyMassLoad`, or a number [`unit`]. The load is then what
   * to add.
   */
  readonly bodyMassLoad?: Answer<'body-mass-load'> | number | undefined;
}

export const MAXIMUM_OF = ['this-limb', 'other-limb'] as const;

/** The load of a list nearest to the target, or nearest without exceeding it; of two as near, the lighter. */
export function nearestOf(wanted: number, available: readonly number[], rounding: Rounding): number | undefined {
  const target = decimal(wanted);
  return [...available]
    .sort((a, b) => a - b)
    .filter((weight) => rounding === 'nearest' || decimal(weight).lte(target))
    .reduce<number | undefined>(
      (best, weight) =>
        best === undefined || decimal(weight).minus(target).abs().lt(decimal(best).minus(target).abs()) ? weight : best,
      undefined,
    );
}

/** The fields that say which loads you can set; at most one may be given. */
const WAYS = ['step', 'available', 'bar'] as const;

/** Which loads you can set, after reading; any where there is no step, no list and no inventory. */
interface LoadsToSet extends Pick<TrainingLoadInput, 'step' | 'available'> {
  readonly inventory: Inventory | undefined;
  readonly rounding: Rounding;
}

/** The load that you can set for a wanted one, or the lightest where none is light enough. */
function settable(
  wanted: number,
  { step, available, inventory, rounding }: LoadsToSet,
): Loading | { readonly total: number; readonly perSide?: undefined } {
  if (inventory) return loadBar(wanted, inventory, rounding);
  const total = available
    ? nearestOf(wanted, available, rounding)
    : step
      ? roundToStep(wanted, step, rounding)
      : wanted;
  return total ? { total } : { lightest: available ? Math.min(...available) : step! };
}

/** Cautions about the percentage of the load that is lifted, which counts, and not that which was asked for. */
function percentCautions(
  asked: number,
  reached: number,
  load: { readonly load: number; readonly unit: LoadUnit },
  way: (typeof WAYS)[number] | undefined,
): Caution[] {
  const moved = Math.abs(reached - asked) > 0.05 * asked;
  const lifted = moved ? reached : asked;
  const { low, high } = guidance2019.percentOneRepMax;
  const values = { percentOneRepMax: Number(format(lifted)), low, high };
  const more = { path: ['percentOneRepMax'], source: 'guideline-review-2019' } as const;
  const cautions: Caution[] = [];
  if (lifted > high) cautions.push(caution('note', 'above-restricted-loads', values, more));
  if (lifted < low) cautions.push(caution('note', 'below-restricted-loads', values, more));
  if (moved) {
    const values = { ...load, reached: Number(format(reached)), percentOneRepMax: asked };
    cautions.push(caution('caution', 'percent-moved', values, { path: [way!] }));
  }
  return cautions;
}

/**
 * The load that is a percentage of a one-repetition maximum (1RM), rounded to a load you can set.
 *
 * Formula: w = p / 100 × 1RM, less the share of body mass where the 1RM includes it. The answer is the nearest load
 * you can set: a multiple of `step`, one of `available`, or a sum of `bar` and `plates`.
 *
 * Rounding matters most at light loads. `reached` gives the percentage that the rounded load is, and its 95 % range
 * from the interval of the 1RM. `lower` and `upper` are those of a load of exactly p %. The 1RM of the other limb
 * gives no interval and no range, because its error on this limb is unknown.
 *
 * Enter `oneRepMax` as a number to treat it as exact; an assumption says so.
 *
 * - Usual range with restriction: 20–40 % of 1RM (guideline review 2019, `secondary`).
 * - Error: that of the 1RM (4.2 % where it was tested) and of the share of body mass, in quadrature.
 * - Evidence: that of the 1RM, or of the share of body mass where that is weaker; `definition` where you enter a number.
 *
 * @function
 * @param input - `oneRepMax`, an answer or a number [`unit`]; `percentOneRepMax` p [%]; `unit`; `step`, `available`, or `bar`, `collars` and `plates`
 * [`unit`]; `rounding`; `maximumOf`; `bodyMassLoad` [kg or lb]
 * @returns w [`unit`], with the percentage reached, and the plates where you give a bar.
 * @throws InputError that lists every wrong field; also where no load you can set is light enough, with the lightest
 * and its percentage, and where body mass alone exceeds the percentage.
 *
 * @example
 * ```ts
 * import { testedOneRepMax, trainingLoad } from 'cuffwork';
 * trainingLoad({ oneRepMax: 60, percentOneRepMax: 30 }).value; // => 18
 * const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 37 }), percentOneRepMax: 20, step: 2.5 });
 * load.value; // => 7.5
 * Math.round(load.reached.percentOneRepMax); // => 20
 * const plates = [{ mass: 5, count: 2 }, { mass: 1.25, count: 2 }];
 * const squat = trainingLoad({ oneRepMax: testedOneRepMax({ load: 110 }), percentOneRepMax: 30, bar: 20, plates });
 * squat.value; // => 32.5
 * squat.perSide; // => [{ mass: 5, count: 1 }, { mass: 1.25, count: 1 }]
 * ```
 */
export const trainingLoad = withInput(function trainingLoad(input: TrainingLoadInput): TrainingLoad {
  const reader = new Reader(input);
  const asked = reader.optionalChoice('unit', LOAD_UNITS);
  const oneRepMax = readMass(reader, 'oneRepMax', 'one-repetition-maximum', asked ?? 'kg');
  const percentOneRepMax = reader.number('percentOneRepMax');
  const fromUnit = loadUnitOf(oneRepMax.unit);
  const unit = asked ?? fromUnit;
  const code = loadUnitCode(unit);
  const step = reader.optionalNumber('step', inLoadUnit(quantities.step, code));
  const available = reader.optionalNumbers('available', inLoadUnit(quantities.load, code));
  const inventory = readInventory(reader, unit, false);
  const rounding = reader.optionalChoice('rounding', ROUNDINGS) ?? 'nearest';
  const otherLimb = reader.optionalChoice('maximumOf', MAXIMUM_OF) === 'other-limb';
  const share = readMass(reader, 'bodyMassLoad', 'body-mass-load', unit, true);
  const [way, ...others] = WAYS.filter((name) => reader.has(name));
  for (const name of others) reader.leaveOut(name, need(LEFT_OUT_WITH, { field: way! }));

  const inUnit = (mass: number): number => convertLoad(mass, fromUnit, unit);
  const maximum = inUnit(oneRepMax.value);
  const shareUnit = loadUnitOf(share.unit);
  const counted = reader.has('bodyMassLoad');
  const bodyMass = counted ? convertLoad(share.value, shareUnit, unit) : 0;
  const percentOf = (load: number, of = maximum): number => (100 * (load + bodyMass)) / of;
  let wanted = NaN;
  let load = NaN;
  let perSide: TrainingLoad['perSide'];
  if (reader.fine) {
    wanted = product(percentOneRepMax / 100, maximum);
    if (counted) wanted = sum([wanted, -bodyMass]);
    const loading = wanted > 0 ? settable(wanted, { step, available, inventory, rounding }) : undefined;
    if (!loading) {
      const expected = need(LESS_THAN_BODY, { asked: percentOneRepMax, alone: percentOf(0), off: -wanted, unit: code });
      reader.refuse('bodyMassLoad', expected, formatUnit(bodyMass, code));
    } else if ('lightest' in loading) {
      const { lightest } = loading;
      const values = { wanted, lightest, percent: percentOf(lightest), unit: code };
      reader.refuse(way!, need(LIGHT_ENOUGH, values), 'nothing that light');
    } else if ('tooFine' in loading) reportTooFine(reader);
    else ({ total: load, perSide } = loading);
  }
  reader.done();

  const { lower, upper, standardDeviation } = otherLimb ? ({} as Partial<typeof oneRepMax>) : oneRepMax;
  const errors: ErrorPart[] = [];
  if (standardDeviation !== undefined) {
    const spread = (percentOneRepMax / 100) * inUnit(standardDeviation);
    errors.push({ part: 'maximum', standardDeviation: spread, evidence: oneRepMax.evidence });
    if (counted && share.standardDeviation !== undefined) {
      const sample = convertLoad(share.standardDeviation, shareUnit, unit);
      errors.push({ part: 'sample', standardDeviation: sample, evidence: share.evidence });
    }
  }
  // The ends of a share are the shares of the ends.
  const ends = !counted &&
    lower !== undefined &&
    upper !== undefined && {
      lower: (percentOneRepMax / 100) * inUnit(lower),
      upper: (percentOneRepMax / 100) * inUnit(upper),
    };
  const reached = percentOf(load);
  const cautions = percentCautions(percentOneRepMax, reached, { load, unit }, way);
  const exact = exactness(oneRepMax);
  if (!otherLimb && exact.length === 0 && !((lower ?? 0) > 0)) {
    cautions.push(caution('caution', 'maximum-without-error', undefined, { path: ['oneRepMax'] }));
  }
  if (otherLimb) cautions.push(caution('caution', 'maximum-of-other-limb', undefined, { path: ['maximumOf'] }));
  return {
    kind: 'training-load',
    value: load,
    unit: code,
    ...(errors.length > 0 && { ...interval(wanted, errors), ...ends }),
    equation: 'percent-of-maximum',
    evidence: weakest([oneRepMax.evidence, ...(counted ? [share.evidence] : [])]),
    inputs: {
      oneRepMax,
      percentOneRepMax,
      unit,
      ...(way && { rounding }),
      ...(step !== undefined && { step }),
      ...(inventory && { bar: inventory.bar, collars: inventory.collars }),
      ...(counted && { bodyMassLoad: share }),
      ...(otherLimb && { maximumOf: 'other-limb' }),
    },
    ...(way && {
      rounding: { from: wanted, to: rounding, ...(step !== undefined && { step }), ...(available && { available }) },
    }),
    reached: {
      percentOneRepMax: reached,
      ...(upper !== undefined && upper > 0 && { lower: percentOf(load, inUnit(upper)) }),
      ...(lower !== undefined && lower > 0 && { upper: percentOf(load, inUnit(lower)) }),
    },
    assumptions: [
      ...exact,
      ...(counted ? [...exactness(share), assumption('body-mass-counted')] : []),
      ...(errors.length > 0 ? [normalInterval] : []),
    ],
    cautions,
    ...(perSide && { perSide }),
  };
});

/** What {@link trainingLoadRange} takes: the fields of `trainingLoad`, with a range of percentages. */
export interface TrainingLoadRangeInput extends Omit<TrainingLoadInput, 'percentOneRepMax'> {
  /** Range of percentages of the 1RM [%], each 1–100. */
  readonly percentOneRepMax: PercentRange;
}

/**
 * The loads at both ends of a range of percentages of a one-repetition maximum (1RM), such as 20–30 %: each an answer
 * of `trainingLoad`, rounded to a load you can set, with its own interval and cautions.
 *
 * Formula: w = p / 100 × 1RM, at both ends of p
 *
 * - Usual range with restriction: 20–40 % of 1RM (guideline review 2019, `secondary`).
 * - Error and evidence: those of each load.
 *
 * @function
 * @param input - fields of `trainingLoad`; `percentOneRepMax` p, a range `{ from, to }` [%]
 * @returns w at `from` and at `to` [`unit`].
 * @throws InputError that lists every wrong field of both ends, and a range whose upper end is below the lower one.
 *
 * @example
 * ```ts
 * import { trainingLoadRange } from 'cuffwork';
 * const { from, to } = trainingLoadRange({ oneRepMax: 45, percentOneRepMax: { from: 20, to: 30 } });
 * `${from.value} to ${to.value} kg`; // => '9 to 13.5 kg'
 * ```
 */
export const trainingLoadRange = withInput(function trainingLoadRange(
  input: TrainingLoadRangeInput,
): AnswerRange<TrainingLoad> {
  return answersAtEnds(trainingLoad, input, 'percentOneRepMax');
});
