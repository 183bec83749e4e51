import { type Answer, type Caution, normalInterval } from '../answer/answer.js';
import { readAnswer } from '../answer/read-answer.js';
import { Reader } from '../answer/reader.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal, product } from '../quantity/decimal.js';
import { format, formatUnit } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { LOAD_UNITS, loadUnitCode, quantities, type LoadUnit } from '../quantity/quantities.js';
import { roundToStep, type Rounding } from '../quantity/round.js';
import { caution } from './messages.js';

/** A load to lift, in kg or lb. */
export type TrainingLoad = Answer<'training-load'>;

/** What {@link trainingLoad} takes. */
export interface TrainingLoadInput {
  /** An answer of `testedOneRepMax` or `estimateOneRepMax`. */
  readonly oneRepMax: Answer<'one-repetition-maximum'>;
  readonly percent: number;
  /** Unit of the load; that of the maximum when left out. */
  readonly unit?: LoadUnit;
  /** Smallest step between loads [`unit`]: a stack, a pair of small plates. */
  readonly step?: number;
  /** The weights there are [`unit`]: a rack of dumbbells. Instead of `step`. */
  readonly available?: readonly number[];
  /** `nearest` when left out; `down` never goes above the percentage. */
  readonly rounding?: Rounding;
}

const ROUNDINGS = ['nearest', 'down'] as const;

/** The weight of a list nearest to the one wanted, or nearest not above it; the lighter of two as near. */
function fromList(wanted: number, available: readonly number[], rounding: Rounding): number | undefined {
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

/**
 * The load that is a percentage of a one-repetition maximum, rounded to what the gym has.
 *
 * Formula: w = p / 100 × 1RM, brought to the nearest weight there is.
 *
 * Rounding matters most at light loads, so `reached` gives the percentage that the weight really is, and the
 * range it may be of the true maximum: w over the ends of the maximum’s interval. The interval of the answer is
 * that of the load which would be exactly p %.
 *
 * - Usual range with restriction: 20 to 40 % (guideline review 2019, `unconfirmed`).
 * - Evidence: that of the maximum.
 *
 * @param input - `oneRepMax` [kg or lb]; `percent` p [%]; `unit`; `step` or `available` [`unit`]; `rounding`
 * @returns w [`unit`], with the percentage that is really reached.
 * @throws InputError naming every wrong field; also where nothing there is can be lifted.
 *
 * @example
 * ```ts
 * import { testedOneRepMax, trainingLoad } from 'cuffwork';
 * const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 37 }), percent: 20, step: 2.5 });
 * load.value; // => 7.5
 * load.reached?.percent.toFixed(2); // => '20.27'
 * ```
 */
export function trainingLoad(input: TrainingLoadInput): TrainingLoad {
  const reader = new Reader(input);
  const oneRepMax = readAnswer(
    reader,
    'oneRepMax',
    'one-repetition-maximum',
    'testedOneRepMax or estimateOneRepMax',
    ['kg', '[lb_av]'],
    quantities.load.min,
    quantities.load.max * 40,
  );
  const percent = reader.number('percent');
  const fromUnit: LoadUnit = oneRepMax.unit === '[lb_av]' ? 'lb' : 'kg';
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? fromUnit;
  const code = loadUnitCode(unit);
  const step = reader.optionalNumber('step', { ...quantities.step, unit: code });
  const available = reader.optionalNumbers('available', { ...quantities.load, unit: code });
  const rounding = reader.optionalChoice('rounding', ROUNDINGS) ?? 'nearest';
  if (step !== undefined && available !== undefined) {
    reader.report('wrong-relation', 'available', 'left out when step is given', 'both');
  }
  let wanted = NaN;
  let value: number | undefined = NaN;
  if (reader.fine) {
    wanted = product(percent / 100, convertLoad(oneRepMax.value, fromUnit, unit));
    value = available ? fromList(wanted, available, rounding) : step ? roundToStep(wanted, step, rounding) : wanted;
    if (!value) {
      const least = formatUnit(available ? Math.min(...available) : step!, code);
      const expected = `able to make ${formatUnit(wanted, code)}; the lightest there is is ${least}`;
      reader.report('wrong-relation', available ? 'available' : 'step', expected, 'nothing that light');
    }
  }
  reader.done();

  const load = value!;
  const share = percent / 100;
  const { lower, upper, level, standardDeviation } = oneRepMax;
  const inUnit = (mass: number): number => convertLoad(mass, fromUnit, unit);
  const reached = (100 * load) / inUnit(oneRepMax.value);
  const cautions: Caution[] = [];
  const more = { path: ['percent'], source: 'guideline-review-2019' } as const;
  if (percent > 40) cautions.push(caution('note', 'above-restricted-loads', { percent }, more));
  if (percent < 20) cautions.push(caution('note', 'below-restricted-loads', { percent }, more));
  if (Math.abs(reached - percent) > 0.05 * percent) {
    const values = { load: formatUnit(load, code), reached: format(reached), percent };
    cautions.push(caution('caution', 'percent-moved', values, { path: [available ? 'available' : 'step'] }));
  }
  return {
    kind: 'training-load',
    value: load,
    unit: code,
    ...(lower !== undefined && { lower: share * inUnit(lower) }),
    ...(upper !== undefined && { upper: share * inUnit(upper) }),
    ...(level !== undefined && { level }),
    ...(standardDeviation !== undefined && {
      standardDeviation: share * inUnit(standardDeviation),
      errors: [{ part: 'maximum', standardDeviation: share * inUnit(standardDeviation), evidence: oneRepMax.evidence }],
    }),
    equation: 'percent-of-maximum',
    evidence: oneRepMax.evidence,
    formula:
      fromUnit === unit ? 'p / 100 * M' : unit === 'kg' ? 'p / 100 * M * 0.45359237' : 'p / 100 * M / 0.45359237',
    symbols: { p: 'percent', M: 'oneRepMax' },
    inputs: { oneRepMax, percent, unit, rounding, ...(step !== undefined && { step }) },
    ...((step ?? available) && {
      rounding: { from: wanted, to: rounding, ...(step !== undefined && { step }), ...(available && { available }) },
    }),
    reached: {
      percent: reached,
      ...(upper !== undefined && upper > 0 && { lower: (100 * load) / inUnit(upper) }),
      ...(lower !== undefined && lower > 0 && { upper: (100 * load) / inUnit(lower) }),
    },
    assumptions: [normalInterval],
    cautions,
    sources: ['guideline-review-2019'],
  };
}
