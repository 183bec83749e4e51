import { describe, expect, it } from 'vitest';
import { correctForCuffWidth, correctForPosture, measuredOcclusionPressure } from '../../src/index.js';
import { assumedOfMeasurement, occlusionForExercise } from '../../src/pressure/for-exercise.js';
import { enteredPressure, placeOf } from '../../src/pressure/held-pressure.js';
import { codesOf, factsPage } from '../support/invariants.js';
import { issuesOf } from '../support/refused.js';

const LEFT = { side: 'left', posture: 'supine', cuffWidthCm: 10 } as const;
const DAY = { systolicMmHg: 120, diastolicMmHg: 70 } as const;
const leg = { limb: 'leg', circumferenceCm: 55, ...LEFT, ...DAY } as const;
const arm = { limb: 'arm', circumferenceCm: 32, ...LEFT, ...DAY } as const;
const ofLeg = measuredOcclusionPressure({ valueMmHg: 168, method: 'doppler', limb: 'leg', ...LEFT });
const ofArm = measuredOcclusionPressure({ valueMmHg: 140, method: 'doppler', limb: 'arm', ...LEFT });

describe('a measured pressure for an exercise', () => {
  it('is itself where nothing differs, or nothing is known of where it was measured', () => {
    expect(occlusionForExercise(ofLeg, leg)).toEqual(ofLeg);
    const bare = enteredPressure(168);
    expect(occlusionForExercise(bare, leg)).toEqual(bare);
    expect(placeOf(bare)).toEqual({});
  });

  it('is corrected for cuff and posture as the corrections say, with what was measured behind it', () => {
    const wider = occlusionForExercise(ofLeg, { ...leg, cuffWidthCm: 13 });
    const width = { occlusionMmHg: 168, fromWidthCm: 10, toWidthCm: 13, circumferenceCm: 55, limb: 'leg' } as const;
    expect(wider.value).toBe(correctForCuffWidth({ ...width, ...DAY }).value);
    const seated = occlusionForExercise(ofLeg, { ...leg, posture: 'seated' });
    const posture = { fromPosture: 'supine', toPosture: 'seated', limb: 'leg', cuffWidthCm: 10 } as const;
    expect(seated.value).toBe(correctForPosture({ occlusionMmHg: 168, diastolicMmHg: 70, ...posture }).value);
    expect([wider.inputs, seated.inputs]).toMatchObject([{ measured: ofLeg }, { measured: ofLeg }]);
    // An error that is not known does not become known.
    const { lower: _l, upper: _u, level: _v, standardDeviation: _s, scale: _c, errors: _e, ...bare } = ofLeg;
    const exact = occlusionForExercise(bare as typeof ofLeg, { ...leg, cuffWidthCm: 13 });
    expect([exact.lower, exact.standardDeviation, codesOf(exact.assumptions).includes('log-normal-interval')]).toEqual([
      undefined,
      undefined,
      false,
    ]);
  });

  it('has an error for the other leg and none for the other arm or its other posture, and says so', () => {
    const otherLeg = occlusionForExercise(ofLeg, { ...leg, side: 'right' });
    expect(otherLeg.errors!.at(-1)!.part).toBe('other-side');
    expect(otherLeg.standardDeviation!).toBeGreaterThan(ofLeg.standardDeviation!);
    expect(codesOf(otherLeg.cautions)).toContain('measured-on-other-side');
    const otherArm = occlusionForExercise(ofArm, { ...arm, side: 'right', posture: 'seated' });
    expect([otherArm.value, otherArm.lower, otherArm.errors]).toEqual([140, undefined, undefined]);
    expect(codesOf(otherArm.cautions).slice(-2)).toEqual(['measured-in-other-posture', 'measured-on-other-side']);
  });

  it('is refused by the field it comes from', () => {
    const narrow = { ...leg, cuffWidthCm: 5 };
    const wide = measuredOcclusionPressure({
      valueMmHg: 168,
      method: 'doppler',
      limb: 'leg',
      ...LEFT,
      cuffWidthCm: 12,
    });
    const issues = (held: boolean, place: object = narrow) =>
      issuesOf(() => occlusionForExercise(wide, { ...(place as typeof narrow), held }));
    expect(issues(true)[0]).toMatch(/^occlusion /);
    expect(issues(false)[0]).toMatch(/^measured\.cuffWidthCm /);
    expect(issues(false, { ...narrow, circumferenceCm: undefined })).toContain('circumferenceCm missing');
    expect(() =>
      occlusionForExercise(ofLeg, {
        ...leg,
        get cuffWidthCm(): never {
          throw new RangeError('own');
        },
      }),
    ).toThrow(RangeError);
  });

  it('assumes what it does not name', () => {
    expect(codesOf(assumedOfMeasurement({}))).toEqual(['measured-posture-as-planned', 'measured-cuff-as-planned']);
    expect(codesOf(assumedOfMeasurement({ posture: 'seated' }))).toEqual(['measured-cuff-as-planned']);
    expect(codesOf(assumedOfMeasurement({ cuffWidthCm: 10 }))).toEqual(['measured-posture-as-planned']);
    expect(factsPage({ entered: enteredPressure(168) })).toContain('168 mm[Hg], entered');
  });
});
