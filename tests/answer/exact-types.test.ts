import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  measuredOcclusionPressure,
  sessionTotals,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
  type Assumption,
  type AssumptionCode,
  type Caution,
  type CautionCode,
  type ErrorPart,
  type Posture,
  type Prescription,
  type ReachedLoad,
  type ReachedPressure,
  type Restriction,
  type Session,
} from '../../src/index.js';
import type { SessionAssumption } from '../../src/answer/codes.js';
import { messages } from '../../src/text/index.js';
import { audiences, planSession, type PlanExercise, type PlanRequest } from '../../src/plan/index.js';

// Checked by the compiler: the run itself only looks at values where there are some.
describe('the codes', () => {
  it('of cautions are literals, so that a misspelt one does not compile', () => {
    const isClosing = ({ code }: Caution): boolean => code === 'percent-closes-artery';
    // @ts-expect-error no such code
    const isMisspelt = ({ code }: Caution): boolean => code === 'percent-close-artery';
    const target = targetCuffPressure({ occlusion: 160, percentLop: 100 });
    expect(target.cautions.some(isClosing)).toBe(true);
    expect(target.cautions.some(isMisspelt)).toBe(false);
    expectTypeOf<Caution['code']>().toEqualTypeOf<CautionCode>();
    expectTypeOf<keyof typeof audiences>().toEqualTypeOf<CautionCode>();
  });

  it('of assumptions are literals: a switch over them is exhaustive', () => {
    const isOfClock = (code: SessionAssumption): boolean => {
      switch (code) {
        case 'clock-starts-with-inflation':
        case 'tempo-kept':
          return true;
        case 'one-limb-taken':
        case 'standard-deviation-sample':
        case 'standard-deviation-population':
        case 'standard-deviation-not-reported':
        case 'sides-independent':
          return false;
      }
    };
    expect(isOfClock('tempo-kept')).toBe(true);
    expectTypeOf<SessionAssumption>().toExtend<AssumptionCode>();
    expectTypeOf<Assumption['code']>().toEqualTypeOf<AssumptionCode>();
  });

  it('of cautions have their sentence', () => {
    const codes: readonly string[] = Object.keys(audiences);
    expect(codes.filter((code) => !Object.hasOwn(messages, code))).toEqual([]);
  });
});

const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 100 }), percentOneRepMax: 30 });

describe('what is reached', () => {
  const target = targetCuffPressure({
    occlusion: measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' }),
    percentLop: 50,
  });

  it('is typed by the kind of answer', () => {
    expectTypeOf(target.reached).toEqualTypeOf<ReachedPressure>();
    expectTypeOf(load.reached).toEqualTypeOf<ReachedLoad>();
    expectTypeOf<Answer<'cuff-pressure'>['reached']>().toEqualTypeOf<ReachedPressure | undefined>();
    expectTypeOf<Answer<'session-time'>['reached']>().toEqualTypeOf<undefined>();
    expectTypeOf<Answer['reached']>().toEqualTypeOf<ReachedPressure | ReachedLoad | undefined>();
    expect([target.reached.percentLop, load.reached.percentOneRepMax]).toEqual([50, 30]);
  });

  it('has no field of the other kind', () => {
    // @ts-expect-error a cuff pressure is no percentage of a maximum
    expect(target.reached.percentOneRepMax).toBeUndefined();
    // @ts-expect-error a load is no percentage of occlusion pressure, and closes nothing
    expect([load.reached.percentLop, load.reached.occlusionChancePercent]).toEqual([undefined, undefined]);
  });
});

describe('the interval', () => {
  const maximum = testedOneRepMax({ load: 100 });
  const totals = sessionTotals({ scheme: '5x2min', restS: 60, restriction: 'none' });

  it('is there where the error is always known', () => {
    expectTypeOf(maximum.lower).toEqualTypeOf<number>();
    expectTypeOf(measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' }).errors).toEqualTypeOf<
      readonly ErrorPart[]
    >();
    expect(maximum.upper - maximum.lower).toBeCloseTo(2 * 1.96 * maximum.standardDeviation, 3);
  });

  it('may be left out where it depends', () => {
    expectTypeOf(load.lower).toEqualTypeOf<number | undefined>();
    expectTypeOf(load.scale).toEqualTypeOf<undefined>();
    expectTypeOf<Answer<'occlusion-pressure'>['scale']>().toEqualTypeOf<'log' | undefined>();
    expect('lower' in trainingLoad({ oneRepMax: 60, percentOneRepMax: 30 })).toBe(false);
  });

  it('is never there where the number follows exactly from what was given', () => {
    expectTypeOf(totals.sessionTime.lower).toEqualTypeOf<undefined>();
    expectTypeOf(totals.restrictionTime.standardDeviation).toEqualTypeOf<undefined>();
    // @ts-expect-error no interval of a session time
    const lower: number = totals.sessionTime.lower;
    expect(lower).toBeUndefined();
  });
});

describe('the inputs', () => {
  it('are typed by the kind of answer', () => {
    const occlusion = measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg', cuffWidthCm: 10 });
    const target = targetCuffPressure({ occlusion, percentLop: 50 });
    expectTypeOf(occlusion.inputs.cuffWidthCm).toEqualTypeOf<number | undefined>();
    expectTypeOf(occlusion.inputs.posture).toEqualTypeOf<Posture | undefined>();
    expectTypeOf(target.inputs.occlusion).toEqualTypeOf<Answer<'occlusion-pressure'>>();
    expectTypeOf(target.inputs.percentLop).toEqualTypeOf<number>();
    expectTypeOf(load.inputs.oneRepMax).toEqualTypeOf<Answer<'one-repetition-maximum'> | undefined>();
    expect(target.inputs.occlusion.inputs.cuffWidthCm).toBe(10);
    // @ts-expect-error a width is no text
    const width: string | undefined = occlusion.inputs.cuffWidthCm;
    expect(width).toBe(10);
  });

  it('of any kind are read by name', () => {
    const field = (answer: Answer, name: string): unknown => answer.inputs[name];
    expect(field(load, 'percentOneRepMax')).toBe(30);
  });
});

// Each excluded field is in tests/project/compiler-errors.test.ts.
describe('an exercise', () => {
  const counted = { scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30 } as const;
  const restriction = 'continuous' as const;
  const person = { systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated' } as const;
  const limbs = [{ limb: 'leg', side: 'left', cuffWidthCm: 10, circumferenceCm: 56, percentLop: 50 }] as const;

  it('compiles where its cuff is chosen later', () => {
    const later = (restriction: Restriction): Prescription => ({ ...counted, restriction });
    expectTypeOf(later).returns.toEqualTypeOf<Prescription>();
    const plan = (restriction: 'continuous' | 'none'): PlanExercise => ({
      ...counted,
      name: 'leg extension',
      limb: 'leg',
      oneRepMax: 60,
      percentOneRepMax: 25,
      restriction,
    });
    for (const choice of ['continuous', 'none'] as const) {
      expect(sessionTotals(later(choice)).repetitions.value).toBe(75);
      expect(planSession({ ...person, limbs, exercises: [plan(choice)] }).items).toHaveLength(1);
    }
  });

  it('compiles where it is made by map, or changed in a request that you hold', () => {
    const made: Session = { exercises: [20, 25].map((load) => ({ ...counted, restriction, load })), reperfusionS: 180 };
    const sets = [30, 15].map((repetitions) => ({ repetitions }));
    const mapped: Prescription = { restriction, sets, tempo: counted.tempo, restS: 30 };
    const slower: Session = { ...made, exercises: made.exercises.map((one) => ({ ...one, restS: 45 })) };
    expect([made, mapped, slower].map((one) => sessionTotals(one).repetitions.value)).toEqual([150, 45, 150]);
    const exercise = { ...counted, name: 'leg extension', limb: 'leg', load: 15, restriction } as const;
    const { request } = planSession({ ...person, limbs, exercises: [exercise] });
    const longer: PlanRequest = { ...request, exercises: request.exercises.map((one) => ({ ...one, restS: 45 })) };
    expect(planSession(longer).items[0]?.sets[0]?.restS).toBe(45);
  });
});
