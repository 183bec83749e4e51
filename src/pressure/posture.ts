import { type Answer, type ErrorPart, interval, normalInterval } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { formatUnit } from '../quantity/format.js';
import { LIMBS, POSTURES, quantities, type Limb, type Posture } from '../quantity/quantities.js';
import { WIDE_THIGH_CM } from './carrying.js';
import { assumption, caution } from './messages.js';

/** What {@link correctForPosture} takes. */
export interface PostureInput {
  readonly occlusionMmHg: number;
  readonly limb: Limb;
  readonly cuffWidthCm: number;
  readonly fromPosture: Posture;
  readonly toPosture: Posture;
  /** Standard deviation of the error of `occlusionMmHg`; taken as 0 when left out. */
  readonly standardDeviationMmHg?: number;
}

/** What a wide cuff on the thigh needs more than lying supine [mmHg]: group means, to the nearest 5. */
export const WIDE_THIGH_SHIFT: Readonly<Record<Posture, number>> = { supine: 0, seated: 25, standing: 55 };
/** How laboratories and people differ in a shift [mmHg]. */
export const SHIFT_DEVIATION = { seated: 11, standing: 28 } as const;

/**
 * Carries a thigh occlusion pressure with a wide cuff from one posture to another, by a published group shift.
 *
 * Formula: LOP₂ = LOP₁ + shift; seated 25 mmHg and standing 55 mmHg above supine.
 *
 * - Only for the thigh and cuffs of 11 to 20 cm. With narrow cuffs the postures hang together too loosely (R² 0.50),
 *   and for the arm no means are at hand: both are refused.
 * - Error: 11 mmHg between supine and seated, 28 mmHg to or from standing (`derived`: how laboratories differ, and
 *   people about the shift).
 * - Evidence: `derived` from the means of the same people in two postures: 17, 24 and 29 mmHg seated, 54.5 standing.
 * - Source: PeerJ 2018;6:e4697; Eur J Appl Physiol 2018;118(2):303–312; a conference abstract of 2018.
 *
 * @param input - `occlusionMmHg` LOP₁ [mmHg]; limb; `cuffWidthCm` [cm]; `fromPosture`; `toPosture`;
 * `standardDeviationMmHg` [mmHg]
 * @returns LOP₂ [mmHg] with its interval.
 * @throws InputError naming every wrong field; also for an arm, for a cuff outside 11 to 20 cm, and where less than
 * 50 mmHg would be left, which no occlusion pressure is.
 *
 * @example
 * ```ts
 * import { correctForPosture } from 'cuffwork';
 * const leg = { limb: 'leg', cuffWidthCm: 13.5, fromPosture: 'supine', toPosture: 'seated' } as const;
 * correctForPosture({ ...leg, occlusionMmHg: 150 }).value; // => 175
 * ```
 */
export function correctForPosture(input: PostureInput): Answer<'occlusion-pressure'> {
  const reader = new Reader(input);
  const occlusionMmHg = reader.number('occlusionMmHg');
  const limb = reader.choice('limb', LIMBS);
  const cuffWidthCm = reader.number('cuffWidthCm');
  const fromPosture = reader.choice('fromPosture', POSTURES);
  const toPosture = reader.choice('toPosture', POSTURES);
  const standardDeviationMmHg = reader.optionalNumber('standardDeviationMmHg');
  const same = fromPosture === toPosture;
  if (reader.fine && !same) {
    const { low, high } = WIDE_THIGH_CM;
    if (limb !== 'leg') {
      reader.report('wrong-relation', 'limb', "'leg': no means for another posture are at hand for the arm", limb);
    } else if (cuffWidthCm < low || cuffWidthCm > high) {
      const expected = `${low} to ${high} cm: the shifts were measured with wide cuffs`;
      reader.report('wrong-relation', 'cuffWidthCm', expected, formatUnit(cuffWidthCm, 'cm'));
    }
  }
  const shiftMmHg = WIDE_THIGH_SHIFT[toPosture] - WIDE_THIGH_SHIFT[fromPosture];
  const value = occlusionMmHg + shiftMmHg;
  if (value < quantities.occlusionMmHg.min) {
    const least = formatUnit(quantities.occlusionMmHg.min - shiftMmHg, 'mm[Hg]');
    const expected = `at least ${least}, so that ${formatUnit(quantities.occlusionMmHg.min, 'mm[Hg]')} is left`;
    reader.report('wrong-relation', 'occlusionMmHg', expected, formatUnit(occlusionMmHg, 'mm[Hg]'));
  }
  reader.done();

  const standing = fromPosture === 'standing' || toPosture === 'standing';
  const errors: ErrorPart[] = [
    {
      part: 'posture',
      standardDeviation: same ? 0 : SHIFT_DEVIATION[standing ? 'standing' : 'seated'],
      evidence: 'derived',
    },
  ];
  if (standardDeviationMmHg !== undefined) {
    errors.push({ part: 'occlusion', standardDeviation: standardDeviationMmHg, evidence: 'practice' });
  }
  return {
    kind: 'occlusion-pressure',
    value,
    unit: 'mm[Hg]',
    ...interval(value, errors),
    equation: 'posture-shift',
    evidence: 'derived',
    formula: 'LOP1 + shift',
    symbols: { LOP1: 'occlusionMmHg', shift: 'shiftMmHg' },
    inputs: {
      occlusionMmHg,
      shiftMmHg,
      limb,
      cuffWidthCm,
      fromPosture,
      toPosture,
      ...(standardDeviationMmHg !== undefined && { standardDeviationMmHg }),
    },
    assumptions: [assumption('posture-shift'), normalInterval],
    cautions: same
      ? []
      : [caution('caution', 'posture-shifted', { from: fromPosture, to: toPosture }, { path: ['toPosture'] })],
    sources: ['posture-2018', 'posture-widths-2018', 'posture-abstract-2018'],
  };
}
