import type { Answer, Caution } from '../answer/answer.js';
import { readAnswer } from '../answer/read-answer.js';
import { Reader } from '../answer/reader.js';
import { format, formatUnit } from '../quantity/format.js';
import { quantities } from '../quantity/quantities.js';
import { roundToStep } from '../quantity/round.js';
import { product } from '../quantity/decimal.js';
import { Math } from '../quantity/maths.js';
import { caution } from './messages.js';

/** A pressure to set on the gauge [mmHg]. */
export type CuffPressure = Answer<'cuff-pressure'>;

/** What {@link targetCuffPressure} takes. */
export interface TargetInput {
  /** An answer of `estimateOcclusionPressure`, `measuredOcclusionPressure` or `correctForCuffWidth`. */
  readonly occlusion: Answer<'occlusion-pressure'>;
  readonly percent: number;
  /** Smallest step of the gauge; 1 mmHg when left out. */
  readonly gaugeStepMmHg?: number;
  /** Highest pressure that may be set. */
  readonly ceilingMmHg?: number;
}

function percentCautions(percent: number): Caution[] {
  const more = { path: ['percent'], source: 'guideline-review-2019' } as const;
  if (percent > 80) return [caution('caution', 'percent-above-usual', { percent }, more)];
  return percent < 40 ? [caution('note', 'percent-below-usual', { percent }, more)] : [];
}

/**
 * The cuff pressure that is a percentage of limb occlusion pressure, rounded down to the gauge.
 *
 * Formula: P = p / 100 × LOP, rounded down to the gauge step.
 *
 * The interval is that of the pressure which would be exactly p % of the true LOP. `reached` turns it
 * round: the percentage that this setting really is of the LOP given, and the range it may be of the
 * true one. A `ceilingMmHg` holds the setting down, and a caution says by how much.
 *
 * - Usual range: 40 to 80 % (guideline review 2019, `secondary`). Above 80 % a caution is given.
 * - Evidence: that of the occlusion pressure.
 *
 * @param input - `occlusion` LOP [mmHg]; `percent` p [%]; `gaugeStepMmHg` [mmHg]; `ceilingMmHg` [mmHg]
 * @returns P [mmHg], with the percentage that is really reached.
 * @throws InputError naming every wrong field; also where the gauge step is larger than the pressure.
 *
 * @example
 * ```ts
 * import { measuredOcclusionPressure, targetCuffPressure } from 'cuffwork';
 * const occlusion = measuredOcclusionPressure({ valueMmHg: 165, method: 'doppler', limb: 'leg' });
 * const target = targetCuffPressure({ occlusion, percent: 50, gaugeStepMmHg: 5 });
 * target.value; // => 80
 * target.reached?.percent.toFixed(1); // => '48.5'
 * ```
 */
export function targetCuffPressure(input: TargetInput): CuffPressure {
  const reader = new Reader(input);
  const occlusion = readAnswer(
    reader,
    'occlusion',
    'occlusion-pressure',
    'estimateOcclusionPressure, measuredOcclusionPressure or correctForCuffWidth',
    ['mm[Hg]'],
    quantities.occlusionMmHg.min / 2,
    quantities.occlusionMmHg.max * 4,
  );
  const percent = reader.number('percent');
  const gaugeStepMmHg = reader.optionalNumber('gaugeStepMmHg') ?? 1;
  const ceilingMmHg = reader.optionalNumber('ceilingMmHg');
  const wanted = reader.fine ? product(percent / 100, occlusion.value) : NaN;
  const held = ceilingMmHg !== undefined && wanted > ceilingMmHg;
  const value = reader.fine ? roundToStep(held ? ceilingMmHg : wanted, gaugeStepMmHg, 'down') : NaN;
  if (value === 0) {
    reader.report('wrong-relation', 'gaugeStepMmHg', `at most ${formatUnit(wanted, 'mm[Hg]')}`, String(gaugeStepMmHg));
  }
  reader.done();

  const share = percent / 100;
  const { lower, upper, standardDeviation, level } = occlusion;
  const cautions: Caution[] = [
    ...percentCautions(percent),
    caution('note', 'percent-not-flow'),
    caution('note', 'pressure-drifts', undefined, { source: 'exercise-shift-2018' }),
  ];
  if (held) {
    const values = { ceiling: ceilingMmHg, wanted: format(wanted), percent };
    cautions.push(caution('caution', 'ceiling-reached', values, { path: ['ceilingMmHg'] }));
  }
  const highest = lower !== undefined && lower > 0 ? (100 * value) / lower : undefined;
  if (lower !== undefined && lower <= 0) cautions.push(caution('caution', 'true-percent-unbounded'));
  if (highest !== undefined && highest >= 100) {
    cautions.push(caution('caution', 'may-occlude', { upper: Math.round(highest) }, { path: ['percent'] }));
  }
  return {
    kind: 'cuff-pressure',
    value,
    unit: 'mm[Hg]',
    ...(lower !== undefined && { lower: share * lower }),
    ...(upper !== undefined && { upper: share * upper }),
    ...(level !== undefined && { level }),
    ...(standardDeviation !== undefined && {
      standardDeviation: share * standardDeviation,
      errors: [{ part: 'occlusion', standardDeviation: share * standardDeviation, evidence: occlusion.evidence }],
    }),
    equation: 'percent-of-occlusion',
    evidence: occlusion.evidence,
    formula: 'p / 100 * LOP',
    symbols: { p: 'percent', LOP: 'occlusion' },
    inputs: {
      occlusion,
      percent,
      gaugeStepMmHg,
      ...(ceilingMmHg !== undefined && { ceilingMmHg }),
    },
    rounding: { from: wanted, to: 'down', step: gaugeStepMmHg },
    reached: {
      percent: (100 * value) / occlusion.value,
      ...(upper !== undefined && upper > 0 && { lower: (100 * value) / upper }),
      ...(highest !== undefined && { upper: highest }),
    },
    assumptions: [],
    cautions,
    sources: ['guideline-review-2019'],
  };
}
