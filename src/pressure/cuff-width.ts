import { type Answer, interval, normalInterval } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { Math } from '../quantity/maths.js';
import { assumption, caution } from './messages.js';

/** What {@link correctForCuffWidth} takes. */
export interface CuffWidthInput {
  readonly occlusionMmHg: number;
  readonly diastolicMmHg: number;
  readonly fromWidthCm: number;
  readonly toWidthCm: number;
  /** Standard deviation of the error of `occlusionMmHg`; taken as 0 when left out. */
  readonly standardDeviationMmHg?: number;
}

/**
 * Share of the answer that is its error, for each unit of |ln(from / to)|: root mean square over six
 * published width pairs.
 */
export const WIDTH_CORRECTION_SHARE = 0.46;

/**
 * Carries an occlusion pressure from one cuff width to another.
 *
 * Formula: LOP₂ = DBP + (LOP₁ − DBP) × W₁ / W₂, the width-ratio formula rearranged, so that the limb drops out.
 *
 * - Error: 46 % of the answer for each unit of |ln(W₁ / W₂)| (`derived` from six published width pairs);
 *   none when the widths are equal.
 * - Bias: against those pairs it changes the pressure too much: too high when carried to a narrower cuff,
 *   too low when carried to a wider one.
 * - Evidence: `unconfirmed`, as the formula it comes from.
 * - Source: Clin Orthop Relat Res 1993;(286):257–261.
 *
 * @param input - `occlusionMmHg` LOP₁ [mmHg], `diastolicMmHg` DBP [mmHg], `fromWidthCm` W₁ [cm], `toWidthCm` W₂ [cm]
 * @returns LOP₂ [mmHg] with its interval.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { correctForCuffWidth } from 'cuffwork';
 * correctForCuffWidth({ occlusionMmHg: 160, diastolicMmHg: 70, fromWidthCm: 10, toWidthCm: 15 }).value; // => 130
 * ```
 */
export function correctForCuffWidth(input: CuffWidthInput): Answer<'occlusion-pressure'> {
  const reader = new Reader(input);
  const occlusionMmHg = reader.number('occlusionMmHg');
  const diastolicMmHg = reader.number('diastolicMmHg');
  const fromWidthCm = reader.number('fromWidthCm');
  const toWidthCm = reader.number('toWidthCm');
  const standardDeviationMmHg = reader.optionalNumber('standardDeviationMmHg');
  if (occlusionMmHg <= diastolicMmHg) {
    reader.report('wrong-relation', 'occlusionMmHg', 'above the diastolic pressure', String(occlusionMmHg));
  }
  reader.done();

  const ratio = fromWidthCm / toWidthCm;
  const value = diastolicMmHg + (occlusionMmHg - diastolicMmHg) * ratio;
  const same = fromWidthCm === toWidthCm;
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...interval(value, [
      {
        part: 'width-correction',
        standardDeviation: WIDTH_CORRECTION_SHARE * value * Math.abs(Math.log(ratio)),
        evidence: 'derived',
      },
      ...(standardDeviationMmHg === undefined
        ? []
        : [
            {
              part: 'occlusion' as const,
              standardDeviation: standardDeviationMmHg * ratio,
              evidence: 'practice' as const,
            },
          ]),
    ]),
    equation: 'width-correction',
    evidence: 'unconfirmed',
    formula: 'DBP + (LOP - DBP) * W1 / W2',
    symbols: { DBP: 'diastolicMmHg', LOP: 'occlusionMmHg', W1: 'fromWidthCm', W2: 'toWidthCm' },
    inputs: {
      occlusionMmHg,
      diastolicMmHg,
      fromWidthCm,
      toWidthCm,
      ...(standardDeviationMmHg !== undefined && { standardDeviationMmHg }),
    },
    assumptions: [assumption('width-ratio-carries'), normalInterval],
    cautions: same
      ? []
      : [
          caution('caution', 'equation-unconfirmed', { equation: 'width-correction' }),
          caution(
            'caution',
            'width-correction-biased',
            toWidthCm < fromWidthCm
              ? { direction: 'narrower', bias: 'overshoots' }
              : { direction: 'wider', bias: 'undershoots' },
            { path: ['toWidthCm'], source: 'cuff-width-2012' },
          ),
        ],
    sources: ['wide-cuffs-1993', 'cuff-width-2012', 'athletes-2018'],
  };
}
