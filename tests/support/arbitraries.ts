import fc from 'fast-check';
import { limbGirth, quantities, type QuantityName } from '../../src/quantity/quantities.js';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any possible value of a field of the vocabulary. */
export const quantity = (name: QuantityName) => {
  const bounds: { min: number; max: number; whole?: true } = quantities[name];
  return bounds.whole ? fc.integer(bounds) : within(bounds.min, bounds.max);
};

/** Any possible blood pressure, systolic above diastolic. */
export const bloodPressure = fc
  .tuple(quantity('systolicMmHg'), quantity('diastolicMmHg'))
  .filter(([systolic, diastolic]) => systolic > diastolic)
  .map(([systolicMmHg, diastolicMmHg]) => ({ systolicMmHg, diastolicMmHg }));

const posture = fc.constantFrom('supine' as const, 'seated' as const, 'standing' as const);

/** Any possible set of readings for an occlusion pressure, in any limb. */
export const readings = fc.constantFrom('arm' as const, 'leg' as const).chain((limb) =>
  fc
    .record({
      limb: fc.constant(limb),
      circumferenceCm: within(limbGirth[limb].min, limbGirth[limb].max),
      pressure: bloodPressure,
      cuffWidthCm: fc.oneof(quantity('cuffWidthCm'), fc.constantFrom(5, 18)),
      posture,
      ageYears: quantity('ageYears'),
      sex: fc.constantFrom('male' as const, 'female' as const),
      paddingCoefficient: quantity('paddingCoefficient'),
    })
    .map(({ pressure, ...rest }) => ({ ...rest, ...pressure })),
);

/** Any prescription. */
export const prescription = fc.record(
  {
    sets: fc.array(
      fc.record(
        { repetitions: fc.integer({ min: 1, max: 60 }), restS: quantity('restS') },
        { requiredKeys: ['repetitions'] },
      ),
      { minLength: 1, maxLength: 8 },
    ),
    tempo: fc.record(
      {
        eccentricS: within(0.5, 6),
        bottomS: within(0, 3),
        concentricS: within(0.5, 6),
        topS: within(0, 3),
      },
      { requiredKeys: ['eccentricS', 'concentricS'] },
    ),
    restS: quantity('restS'),
    restriction: fc.constantFrom('continuous' as const, 'intermittent' as const, 'none' as const),
    load: within(1, 500),
    unit: fc.constantFrom('kg' as const, 'lb' as const),
  },
  { requiredKeys: ['sets', 'tempo', 'restS', 'restriction'] },
);
