import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  centimetresToInches,
  estimateOcclusionPressure,
  inchesToCentimetres,
  kilogramsToPounds,
  kilopascalsToMmHg,
  mmHgToKilopascals,
  poundsToKilograms,
} from '../../src/index.js';

describe('units, there and back', () => {
  const pairs = [
    ['inches', inchesToCentimetres, centimetresToInches],
    ['pounds', poundsToKilograms, kilogramsToPounds],
    ['mmHg', mmHgToKilopascals, kilopascalsToMmHg],
  ] as const;
  // Whatever is written with up to ten digits comes back to the last digit, whichever way it goes first.
  const written = fc
    .tuple(fc.integer({ min: 1, max: 9_999_999_999 }), fc.integer({ min: 0, max: 8 }))
    .map(([digits, places]) => Number(`${digits}e-${places}`));
  it.each(pairs)('%s are exact both ways', (_name, there, back) => {
    fc.assert(
      fc.property(written, (value) => {
        expect(back(there(value))).toBe(value);
        expect(there(back(value))).toBe(value);
      }),
      { numRuns: 2000 },
    );
  });

  it('give the same occlusion pressure, whatever unit the readings came in', () => {
    const metric = { limb: 'leg', circumferenceCm: 55.88, cuffWidthCm: 12.7, posture: 'supine' } as const;
    const inches = { circumferenceCm: inchesToCentimetres(22), cuffWidthCm: inchesToCentimetres(5) };
    const readings = { systolicMmHg: 123, diastolicMmHg: 77 };
    const kilopascals = {
      systolicMmHg: kilopascalsToMmHg(mmHgToKilopascals(123)),
      diastolicMmHg: kilopascalsToMmHg(mmHgToKilopascals(77)),
    };
    expect(estimateOcclusionPressure({ ...metric, ...inches, ...kilopascals })).toEqual(
      estimateOcclusionPressure({ ...metric, ...readings }),
    );
  });
});
