import { describe, expect, expectTypeOf, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { planSession, type PlanExercise, type PlanRequest } from '../../src/plan/index.js';

const rest = { name: 'leg extension', limb: 'leg', scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30 } as const;
const { scheme: _, tempo: __, ...unset } = rest;
const lifted = { oneRepMax: 60, percentOneRepMax: 25 } as const;
const cuffed = { restriction: 'continuous' } as const;
const request = {
  systolicMmHg: 118,
  diastolicMmHg: 74,
  posture: 'seated',
  limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, circumferenceCm: 56, percentLop: 50 }],
} as const;

/** What the function says of an exercise that does not compile: the compiler and the function exclude the same. */
const paths = (exercise: object, more: object = {}): string[] => {
  const result = attempt(planSession, { ...request, ...more, exercises: [exercise] } as unknown);
  return result.ok ? [] : result.issues.map(({ path }) => path.slice(2).join('.'));
};

describe('what is lifted', () => {
  it('is a share of a maximum, a load, a share of body mass, or nothing', () => {
    const right = [
      { ...rest, ...cuffed, ...lifted, step: 2.5 },
      { ...rest, ...cuffed, load: 15, step: 2.5 },
      { ...rest, ...cuffed, load: 15, bodyMassPercent: 64 },
      { ...rest, ...cuffed, bodyMassPercent: 64 },
      { ...rest, ...cuffed, unloaded: true },
    ] as const satisfies PlanExercise[];
    for (const exercise of right) expect(paths(exercise, { bodyMassKg: 80 })).toEqual([]);
  });

  it('is one of them alone', () => {
    // @ts-expect-error a maximum and your own load
    const two: PlanExercise = { ...rest, ...cuffed, ...lifted, load: 15 };
    expect(paths(two)).toEqual(['load']);
    // @ts-expect-error a maximum without the share of it
    const half: PlanExercise = { ...rest, ...cuffed, oneRepMax: 60 };
    expect(paths(half)).toEqual(['percentOneRepMax']);
    // @ts-expect-error a maximum, and nothing lifted
    const none: PlanExercise = { ...rest, ...cuffed, ...lifted, unloaded: true };
    expect(paths(none)).toEqual(['unloaded']);
    // @ts-expect-error your own load, and nothing lifted
    const both: PlanExercise = { ...rest, ...cuffed, load: 15, unloaded: true };
    expect(paths(both)).toEqual(['load']);
    // @ts-expect-error body mass, and nothing lifted
    const body: PlanExercise = { ...rest, ...cuffed, bodyMassPercent: 64, unloaded: true };
    expect(paths(body, { bodyMassKg: 80 })).toEqual(['bodyMassPercent']);
    // @ts-expect-error nothing said
    const nothing: PlanExercise = { ...rest, ...cuffed };
    expect(paths(nothing)).toEqual(['oneRepMax']);
    // @ts-expect-error a bar, which belongs to a share of a maximum
    const bar: PlanExercise = { ...rest, ...cuffed, load: 15, bar: 20, plates: [{ mass: 5 }] };
    expect(paths(bar)).toEqual(['bar', 'plates']);
  });

  it('is nothing in walking and at rest', () => {
    const walk = { ...unset, ...cuffed, mode: 'aerobic', scheme: '5x2min', intensityPercent: 40 } as const;
    const rests = { ...unset, ...cuffed, mode: 'passive', sets: [{ durationS: 300 }] } as const;
    expectTypeOf(walk).toExtend<PlanExercise>();
    expectTypeOf(rests).toExtend<PlanExercise>();
    expect([paths(walk), paths(rests)]).toEqual([[], []]);
    // @ts-expect-error a load in walking
    const loaded: PlanExercise = { ...walk, load: 15 };
    expect(paths(loaded)).toEqual(['load']);
    // @ts-expect-error a tempo in walking
    const paced: PlanExercise = { ...walk, tempo: '2-0-2-0' };
    expect(paths(paced)).toEqual(['tempo']);
    // @ts-expect-error repetitions in walking
    const counted: PlanExercise = { ...walk, scheme: '30-15-15-15' };
    expect(paths(counted)).toEqual(['scheme']);
    // @ts-expect-error a last set to failure, at rest
    const failing: PlanExercise = { ...rests, lastSetToFailure: true };
    expect(paths(failing)).toEqual(['lastSetToFailure']);
    // @ts-expect-error repetitions before a proposal raised them, in walking
    const raised: PlanExercise = { ...walk, raisedFrom: [30] };
    expect(paths(raised)).toEqual(['raisedFrom']);
    // @ts-expect-error an intensity of walking, at rest
    const hard: PlanExercise = { ...rests, intensityPercent: 40 };
    expect(paths(hard)).toEqual(['intensityPercent']);
    // @ts-expect-error an intensity of walking, in lifting
    const lifting: PlanExercise = { ...rest, ...cuffed, ...lifted, intensityPercent: 40 };
    expect(paths(lifting)).toEqual(['intensityPercent']);
  });
});

describe('the sets', () => {
  it('are in notation or one by one; counted with a tempo, or timed', () => {
    const counted = { ...unset, ...cuffed, ...lifted, sets: [{ repetitions: 30 }], tempo: '2-0-2-0' } as const;
    const timed = { ...unset, ...cuffed, ...lifted, sets: [{ durationS: 60 }] } as const;
    expectTypeOf(counted).toExtend<PlanExercise>();
    expectTypeOf(timed).toExtend<PlanExercise>();
    expect([paths(counted), paths(timed)]).toEqual([[], []]);
    // @ts-expect-error counted without a tempo
    const untimed: PlanExercise = { ...unset, ...cuffed, ...lifted, sets: [{ repetitions: 30 }] };
    expect(paths(untimed)).toEqual(['tempo']);
    // @ts-expect-error counted in notation, without a tempo
    const scheme: PlanExercise = { ...unset, ...cuffed, ...lifted, scheme: '30-15-15-15' };
    expect(paths(scheme)).toEqual(['tempo']);
    const ofMaximum = { ...unset, ...cuffed, ...lifted, tempo: '2-0-2-0' } as const;
    // @ts-expect-error a load of a set, and its share of the maximum
    const twice: PlanExercise = { ...ofMaximum, sets: [{ repetitions: 3, load: 20, percentOneRepMax: 30 }] };
    expect(paths(twice)).toEqual(['sets.0.percentOneRepMax']);
    // @ts-expect-error in notation and one by one
    const both: PlanExercise = { ...rest, ...cuffed, ...lifted, sets: [{ repetitions: 30 }] };
    expect(paths(both)).toEqual(['sets']);
    // @ts-expect-error no sets
    const none: PlanExercise = { ...unset, ...cuffed, ...lifted, tempo: '2-0-2-0' };
    expect(paths(none)).toEqual(['sets']);
  });
});

describe('the cuff', () => {
  it('is continuous, intermittent, partial or none', () => {
    const on = { ...rest, ...lifted } as const;
    const right = [
      { ...on, restriction: 'continuous', percentLop: 60 },
      { ...on, restriction: 'intermittent' },
      { ...on, restriction: 'partial', restPercentLop: 20 },
      { ...on, restriction: 'none' },
    ] as const satisfies PlanExercise[];
    for (const exercise of right) expect(paths(exercise)).toEqual([]);
    // @ts-expect-error a share of occlusion pressure without a cuff
    const bare: PlanExercise = { ...on, restriction: 'none', percentLop: 60 };
    expect(paths(bare)).toEqual(['percentLop']);
    // @ts-expect-error a pressure of the rests where the cuff stays as it is
    const held: PlanExercise = { ...on, restriction: 'continuous', restPercentLop: 20 };
    expect(paths(held)).toEqual(['restPercentLop']);
    // @ts-expect-error a lower pressure that is not given
    const partial: PlanExercise = { ...on, restriction: 'partial' };
    expect(paths(partial)).toEqual(['restPercentLop']);
    // A choice that is made later compiles.
    const either = (restriction: 'continuous' | 'none'): PlanExercise => ({ ...on, restriction });
    expect([paths(either('none')), paths(either('continuous'))]).toEqual([[], []]);
  });
});

describe('a field that may be left out', () => {
  it('may be undefined too, and what excludes it as well', () => {
    const exercise: PlanExercise = { ...rest, ...cuffed, ...lifted, load: undefined, step: undefined, side: undefined };
    expect(paths(exercise)).toEqual([]);
  });

  it('may be changed in an exercise that you hold', () => {
    const { request: held } = planSession({ ...request, exercises: [{ ...rest, ...cuffed, ...lifted }] });
    const slower: PlanRequest = { ...held, exercises: held.exercises.map((one) => ({ ...one, restS: 45 })) };
    expect(planSession(slower).items[0]?.sets[0]?.restS).toBe(45);
  });
});
