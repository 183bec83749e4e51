import { type Answer, type Caution, type ErrorPart, interval, normalInterval } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { WIDTH_SHARE } from './carrying.js';
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

/** LOP₂ = DBP + (LOP₁ − DBP) × W₁ / W₂ */
export const carryWidth = (occlusionMmHg: number, diastolicMmHg: number, ratio: number): number =>
  diastolicMmHg + (occlusionMmHg - diastolicMmHg) * ratio;

/** Below this the one published pair shows a bias the other way [cm]. */
const VERY_NARROW_CM = 5;

/** Which way the correction is off: it changes the pressure too much, but with a 3 cm cuff too little. */
export function widthBiasCaution(fromWidthCm: number, toWidthCm: number): Caution {
  const narrower = toWidthCm < fromWidthCm;
  const tooMuch = Math.min(fromWidthCm, toWidthCm) >= VERY_NARROW_CM;
  return caution(
    'caution',
    'width-correction-biased',
    { direction: narrower ? 'narrower' : 'wider', bias: narrower === tooMuch ? 'overshoots' : 'undershoots' },
    { path: ['toWidthCm'], source: tooMuch ? 'cuff-width-2012' : 'cuff-materials-2017' },
  );
}

/**
 * Carries an occlusion pressure from one cuff width to another.
 *
 * Formula: LOP₂ = DBP + (LOP₁ − DBP) × W₁ / W₂, the width-ratio formula rearranged, so that the limb drops out.
 *
 * - Error: 48 % of the answer for each unit of |ln(W₁ / W₂)| (`derived` from four published width pairs, carried
 *   both ways); none when the widths are equal.
 * - Bias: against three of those pairs (5 to 18 cm) it changes the pressure too much: too high when carried to a
 *   narrower cuff, too low when carried to a wider one. Between a 3 cm and a 5 cm cuff it changes it too little.
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
  const value = carryWidth(occlusionMmHg, diastolicMmHg, ratio);
  const same = fromWidthCm === toWidthCm;
  const errors: ErrorPart[] = [
    {
      part: 'width-correction',
      standardDeviation: WIDTH_SHARE * value * Math.abs(Math.log(ratio)),
      evidence: 'derived',
    },
  ];
  if (standardDeviationMmHg !== undefined) {
    errors.push({ part: 'occlusion', standardDeviation: standardDeviationMmHg * ratio, evidence: 'practice' });
  }
  const ends = interval(value, errors);
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...ends,
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
          widthBiasCaution(fromWidthCm, toWidthCm),
          ...(ends.lower <= diastolicMmHg
            ? [caution('caution', 'width-correction-too-far', { diastolic: diastolicMmHg }, { path: ['toWidthCm'] })]
            : []),
        ],
    sources: ['wide-cuffs-1993', 'cuff-width-2012', 'athletes-2018', 'cuff-materials-2017'],
  };
}
