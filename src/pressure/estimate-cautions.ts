import type { Caution } from '../answer/answer.js';
import { CENTIMETRES_PER_INCH } from '../quantity/conversion-factors.js';
import { format } from '../quantity/format.js';
import { readingQuantities as quantities } from '../quantity/readings.js';
import { bloodPressureCautions } from './blood-pressure.js';
import type { OcclusionEquation, OcclusionReadings } from './equation.js';
import { caution, outsideRange } from './estimate-messages.js';
import { NARROW_CM, outsideFields } from './uncertainty.js';

/**
 * One arm study used 3 cm and one thigh study 4.5 cm; the others 5 cm and more. A width below it is often one in
 * inches [cm].
 */
const LEAST_WIDTH_CM = 5;

/** Cautions about a posture that an equation was not fitted in. */
export function postureCautions(
  { posture: fitted, id: equation }: OcclusionEquation,
  { limb, posture: asked }: OcclusionReadings,
): Caution[] {
  const more = { path: ['posture'] };
  if (fitted === 'any' || fitted === asked || (fitted === 'none' && asked === 'supine')) return [];
  if (fitted === 'not-stated' && asked === 'supine') return [caution('note', 'posture-not-stated', { equation }, more)];
  return [
    fitted === 'none'
      ? caution('caution', 'posture-ignored', { equation }, more)
      : fitted === 'not-stated'
        ? caution('caution', 'posture-may-differ', { equation, asked }, more)
        : caution('caution', 'posture-differs', { equation, fitted, asked }, more),
    limb === 'leg'
      ? caution('note', 'posture-shifts-thigh', undefined, { ...more, source: 'posture-widths-2018' })
      : caution('note', 'posture-shifts-arm', undefined, more),
  ];
}

/** Cautions about where along the limb the circumference was taken. */
export function siteCautions({ limb, circumferenceSite }: OcclusionReadings): Caution[] {
  if (circumferenceSite === 'mid-limb') return [];
  const [part, source] = limb === 'leg' ? (['thigh', 'soldiers-2012'] as const) : (['arm', undefined] as const);
  const more = { path: ['circumferenceSite'], source };
  return [
    circumferenceSite === 'under-cuff'
      ? caution('caution', `circumference-under-cuff-${part}`, undefined, more)
      : caution('note', `circumference-site-not-given-${part}`, undefined, more),
  ];
}

/** Cautions for the size of these readings. */
export function readingCautions(equation: OcclusionEquation, readings: OcclusionReadings): Caution[] {
  const cautions = bloodPressureCautions(readings.systolicMmHg, readings.diastolicMmHg);
  for (const field of outsideFields(equation, readings)) {
    const value = readings[field as keyof OcclusionReadings] as number;
    cautions.push(
      outsideRange(field, quantities[field], value, equation.fitted[field]!, equation.id, equation.sources[0]),
    );
  }
  return cautions;
}

/** Cautions for this cuff and this answer. */
export function answerCautions(equation: OcclusionEquation, value: number, readings: OcclusionReadings): Caution[] {
  const { limb, cuffWidthCm, posture, circumferenceCm, systolicMmHg, diastolicMmHg } = readings;
  const cautions: Caution[] = [];
  const { tooLowAbove } = equation;
  if (tooLowAbove && circumferenceCm > tooLowAbove.circumferenceCm) {
    const words = { equation: equation.id, limit: tooLowAbove.circumferenceCm };
    const more = { path: ['circumferenceCm'], source: equation.sources[0] };
    cautions.push(caution('caution', 'too-low-above', words, more));
  }
  if (cuffWidthCm < LEAST_WIDTH_CM) {
    const values = {
      value: cuffWidthCm,
      limit: LEAST_WIDTH_CM,
      converted: Number(format(cuffWidthCm * CENTIMETRES_PER_INCH)),
    };
    cautions.push(caution('caution', 'cuff-width-below-published', values, { path: ['cuffWidthCm'] }));
  }
  if (limb === 'leg' && cuffWidthCm < NARROW_CM) {
    const more = { path: ['cuffWidthCm'], source: 'narrow-cuffs-2024' } as const;
    cautions.push(caution('caution', 'narrow-cuff-on-thigh', undefined, more));
  }
  if (value <= diastolicMmHg) cautions.push(caution('caution', 'below-diastolic', { diastolic: diastolicMmHg }));
  if (limb === 'leg' && posture === 'supine' && cuffWidthCm >= 12 && cuffWidthCm <= 20) {
    const ratio = value / systolicMmHg;
    if (ratio < 0.9 || ratio > 1.6) {
      cautions.push(
        caution('caution', 'outside-thigh-index', { ratio: ratio.toFixed(2) }, { source: 'segmental-pressures' }),
      );
    }
  }
  return cautions;
}
