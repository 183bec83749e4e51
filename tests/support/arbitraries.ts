import fc from 'fast-check';
import type { Prescription, Session } from '../../src/index.js';
import { limbCircumference, quantities, type QuantityName } from '../../src/quantity/quantities.js';

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
      circumferenceCm: within(limbCircumference[limb].min, limbCircumference[limb].max),
      pressure: bloodPressure,
      cuffWidthCm: fc.oneof(quantity('cuffWidthCm'), fc.constantFrom(5, 18)),
      posture,
      ageYears: quantity('ageYears'),
      sex: fc.constantFrom('male' as const, 'female' as const),
      paddingCoefficient: quantity('paddingCoefficient'),
    })
    .map(({ pressure, ...rest }) => ({ ...rest, ...pressure })),
);

const perSide = (value: fc.Arbitrary<number>) => fc.oneof(value, fc.record({ left: value, right: value }));
const tempo = fc.oneof(
  fc.record(
    { eccentricS: within(0.5, 6), bottomS: within(0, 3), concentricS: within(0.5, 6), topS: within(0, 3) },
    { requiredKeys: ['eccentricS', 'concentricS'] },
  ),
  fc.constantFrom('2-0-2-0', '1.5/0/1.5/0', '3110'),
);
const sets = fc.array(
  fc.record(
    { repetitions: fc.integer({ min: 1, max: 60 }), durationS: quantity('durationS'), restS: quantity('restS') },
    { requiredKeys: ['repetitions'] },
  ),
  { minLength: 1, maxLength: 8 },
);
const restrictionOf = fc.oneof(
  fc.record(
    {
      restriction: fc.constantFrom('continuous' as const, 'intermittent' as const),
      pressureMmHg: perSide(within(60, 400)),
      inflatedBeforeS: quantity('inflatedBeforeS'),
      deflatedAfterS: quantity('deflatedAfterS'),
    },
    { requiredKeys: ['restriction'] },
  ),
  fc.record({
    restriction: fc.constant('partial' as const),
    pressureMmHg: perSide(within(60, 400)),
    restPressureMmHg: perSide(within(5, 59)),
    occlusionMmHg: perSide(within(100, 400)),
  }),
  fc.constant({ restriction: 'none' as const }),
);
const weights = fc.oneof(
  fc.record(
    { load: within(1, 500), unit: fc.constantFrom('kg' as const, 'lb' as const), percentOneRepMax: within(1, 100) },
    { requiredKeys: [] },
  ),
  fc.record({ bodyMassKg: quantity('bodyMassKg'), bodyMassPercent: quantity('bodyMassPercent') }),
);

/** Any prescription. */
export const prescription: fc.Arbitrary<Prescription> = fc
  .tuple(
    fc.record(
      {
        sets,
        warmUp: sets,
        tempo,
        restS: quantity('restS'),
        mode: fc.constantFrom('resistance' as const, 'aerobic' as const, 'passive' as const),
        limb: fc.constantFrom('arm' as const, 'leg' as const),
        side: fc.constantFrom('left', 'right', 'both', 'left-then-right', 'right-then-left'),
      },
      { requiredKeys: ['sets', 'tempo', 'restS', 'limb', 'side'] },
    ),
    restrictionOf,
    weights,
  )
  .map((parts) => Object.assign({}, ...parts) as Prescription);

/** Any session of several exercises. */
export const session: fc.Arbitrary<Session> = fc.record(
  {
    exercises: fc.array(prescription, { minLength: 1, maxLength: 4 }),
    reperfusionS: quantity('reperfusionS'),
    sessionRpe: quantity('sessionRpe'),
  },
  { requiredKeys: ['exercises', 'reperfusionS'] },
);
