import * as z from 'zod';
import { measurementMethods } from '../pressure/measured.js';
import { occlusionEquations } from '../pressure/equations.js';
import { LIMBS, LOAD_UNITS, POSTURES, quantities, SEXES, SIDES, type QuantityName } from '../quantity/quantities.js';
import { RESTRICTIONS } from '../session/prescription.js';
import { oneRepMaxEquations } from '../strength/equations.js';

/** A number of the vocabulary: its bounds stand in one table for guards and schemas alike. */
function quantity(name: QuantityName) {
  const { min, max, name: title, unit, ...rest } = quantities[name];
  const number = 'whole' in rest ? z.int() : z.number();
  return number.min(min).max(max).meta({ title, unit });
}

const auto = <T extends string>(equations: readonly { readonly id: T }[]) =>
  z.enum(['auto', ...equations.map(({ id }) => id)]);

const measured = z.strictObject({
  valueMmHg: quantity('valueMmHg'),
  method: z.enum(measurementMethods),
  cuffWidthCm: quantity('cuffWidthCm').optional(),
  standardDeviationMmHg: quantity('standardDeviationMmHg').optional(),
});

const limb = z.strictObject({
  limb: z.enum(LIMBS),
  side: z.enum(SIDES),
  circumferenceCm: quantity('circumferenceCm').optional(),
  cuffWidthCm: quantity('cuffWidthCm'),
  percent: quantity('percent'),
  measured: measured.optional(),
  equation: auto(occlusionEquations).optional(),
  gaugeStepMmHg: quantity('gaugeStepMmHg').optional(),
  ceilingMmHg: quantity('ceilingMmHg').optional(),
});

const exercise = z.strictObject({
  name: z.string().min(1).max(120),
  limb: z.enum(LIMBS),
  side: z.enum(SIDES).optional(),
  oneRepMax: z.strictObject({
    load: quantity('load'),
    unit: z.enum(LOAD_UNITS).optional(),
    repetitions: quantity('repetitions').optional(),
    repetitionsInReserve: quantity('repetitionsInReserve').optional(),
    equation: auto(oneRepMaxEquations).optional(),
  }),
  percent: quantity('percent'),
  unit: z.enum(LOAD_UNITS).optional(),
  step: quantity('step').optional(),
  available: z.array(quantity('load')).min(1).max(1000).optional(),
  rounding: z.enum(['nearest', 'down']).optional(),
  scheme: z.string().max(1000).optional(),
  sets: z
    .array(z.strictObject({ repetitions: quantity('repetitions'), restS: quantity('restS').optional() }))
    .min(1)
    .max(50)
    .optional(),
  tempo: z.strictObject({
    eccentricS: quantity('eccentricS'),
    bottomS: quantity('bottomS').optional(),
    concentricS: quantity('concentricS'),
    topS: quantity('topS').optional(),
  }),
  restS: quantity('restS'),
  restriction: z.enum(RESTRICTIONS),
});

export const planRequest = z.strictObject({
  label: z.string().min(1).max(120).optional(),
  ageYears: quantity('ageYears').optional(),
  sex: z.enum(SEXES).optional(),
  systolicMmHg: quantity('systolicMmHg'),
  diastolicMmHg: quantity('diastolicMmHg'),
  posture: z.enum(POSTURES),
  limbs: z.array(limb).min(1).max(4),
  exercises: z.array(exercise).min(1).max(50),
});
