import { describe, expect, it } from 'vitest';
import { attempt, trainingLoad } from '../../src/index.js';
import { planSession, type PlanRequest } from '../../src/plan/index.js';
import { bothSides, measuredAt, PERSON } from '../support/inputs.js';
import { issuesOf } from '../support/refused.js';

/** One exercise on the left leg, with what is changed of it. */
const request = (exercise: object, more: object = {}): PlanRequest =>
  ({
    ...PERSON,
    limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) }],
    exercises: [
      {
        name: 'squat',
        limb: 'leg',
        sets: [{ repetitions: 5 }],
        tempo: '2-0-2-0',
        restriction: 'continuous',
        ...exercise,
      },
    ],
    ...more,
  }) as never;
const refused = (exercise: object, more: object = {}) => {
  const result = attempt(planSession as (input: unknown) => unknown, request(exercise, more));
  return result.ok
    ? []
    : result.issues.map(({ message }) => message.replace('exercises[0].', '').replace(/; received.*/, '.'));
};
const withMaximum = { oneRepMax: 100, percentOneRepMax: 20 };
const timed = { sets: undefined, scheme: '2x5min', restS: 60, tempo: undefined };

describe('fields of an exercise that do not go together', () => {
  it.each<[string, object, string[]]>([
    ['all is well', withMaximum, []],
    [
      'nothing to lift',
      {},
      [
        'oneRepMax is missing: it must be given with percentOneRepMax, or else load, bodyMassPercent or unloaded: true.',
      ],
    ],
    ['no share', { oneRepMax: 100 }, ['percentOneRepMax is missing: it must be given together with oneRepMax.']],
    ['a load next to a maximum', { ...withMaximum, load: 20 }, ['load must be left out when oneRepMax is given.']],
    [
      'unloaded with a maximum',
      { ...withMaximum, unloaded: true },
      ['unloaded must be left out when oneRepMax is given.'],
    ],
    [
      'a share without a maximum',
      { load: 20, percentOneRepMax: 20 },
      ['percentOneRepMax must be left out unless oneRepMax is given.'],
    ],
    [
      'a step without a load',
      { unloaded: true, step: 5 },
      ['step must be left out unless oneRepMax or load is given.'],
    ],
    ['unloaded with a load', { unloaded: true, load: 20 }, ['load must be left out when nothing is lifted.']],
    [
      'a step next to a rack',
      { load: 20, available: [20], step: 5 },
      ['step must be left out when available is given.'],
    ],
    [
      'a share of body mass that is not known',
      { bodyMassPercent: 50 },
      ['bodyMassPercent must be left out unless bodyMassKg is given.'],
    ],
    [
      'a capacity in resistance exercise',
      { ...withMaximum, intensityPercent: 40 },
      ['intensityPercent must be left out unless mode is aerobic.'],
    ],
    [
      'no pressure in the rests',
      { ...withMaximum, restriction: 'partial' },
      ['restPercentLop is missing: it must be given, since the cuff goes to a lower pressure in the rests.'],
    ],
    [
      'a pressure in the rests',
      { ...withMaximum, restPercentLop: 30 },
      ['restPercentLop must be left out unless restriction is partial.'],
    ],
    [
      'a share of LOP without a cuff',
      { ...withMaximum, restriction: 'none', percentLop: 40 },
      ['percentLop must be left out when there is no restriction.'],
    ],
    ['a load at rest', { ...timed, mode: 'passive', load: 20 }, ['load must be left out in passive exercise.']],
    [
      'a set to failure at rest',
      { ...timed, mode: 'passive', lastSetToFailure: true },
      ['lastSetToFailure must be left out in passive exercise.'],
    ],
  ])('%s', (_, exercise, messages) => {
    expect(refused(exercise)).toEqual(messages);
  });

  it('that are right', () => {
    expect(refused({ bodyMassPercent: 50 }, { bodyMassKg: 80 })).toEqual([]);
    expect(refused({ load: 20, step: 5 })).toEqual([]);
    expect(refused({ ...timed, mode: 'aerobic', intensityPercent: 40 })).toEqual([]);
    expect(refused({ ...withMaximum, restriction: 'partial', restPercentLop: 30 })).toEqual([]);
  });
});

describe('what is wrong inside an exercise', () => {
  it('is named in its place', () => {
    const load = trainingLoad({ oneRepMax: 100, percentOneRepMax: 20 });
    expect(refused({ load, unit: 'lb' })).toEqual(['unit must be left out when load is an answer, which has its own.']);
    expect(refused({ load: 20, unit: 'lb' })).toEqual([]);
    const placeOf = (exercise: object) => issuesOf(planSession, request(exercise));
    expect(placeOf({ ...withMaximum, oneRepMax: { load: 80, repetitions: 90 } })[0]).toMatch(/^exercises.0.oneRepMax/);
    const share = [{ repetitions: 3, restS: 30, percentOneRepMax: 10 }];
    expect(placeOf({ load: 20, warmUp: share })).toEqual(['exercises.0.warmUp.0.percentOneRepMax wrong-relation']);
    expect(placeOf({ ...timed, mode: 'passive', raisedFrom: [5, 5] })).toEqual([
      'exercises.0.raisedFrom wrong-relation',
    ]);
  });
});

describe('the limbs of an exercise', () => {
  const two = () => bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) } as const);
  it.each<[string, object, string[]]>([
    ['its own', { side: 'left' }, []],
    ['one that is not listed', { limb: 'arm' }, ['limb must be a limb and side listed in limbs.']],
    ['the other side', { side: 'right' }, ['limb must be a limb and side listed in limbs.']],
    ['both, of which one is listed', { side: 'both' }, ['limb must be a limb and side listed in limbs.']],
  ])('%s', (_, exercise, messages) => {
    expect(refused({ ...withMaximum, ...exercise })).toEqual(messages);
  });
  it('are all of its kind, or the side it names', () => {
    const sidesOf = (exercise: object) =>
      planSession(request({ ...withMaximum, ...exercise }, { limbs: two() })).items.map(({ side }) => side);
    expect(sidesOf({})).toEqual(['left', 'right']);
    expect(sidesOf({ side: 'right' })).toEqual(['right']);
    expect(sidesOf({ side: 'both' })).toEqual(['left', 'right']);
  });
});

describe('an item', () => {
  it('has what its exercise has, and nothing else', () => {
    const [item] = planSession(
      request({ load: 20, lastSetToFailure: true, posture: 'supine', restriction: 'none' }),
    ).items;
    expect(item).toMatchObject({
      exercise: 'squat',
      limb: 'leg',
      side: 'left',
      lastSetToFailure: true,
      posture: 'supine',
    });
    for (const field of ['target', 'warmUp', 'bodyMassKg', 'oneRepMax', 'upperLoad', 'intensityPercent'])
      expect(item).not.toHaveProperty(field);
  });
  it('has the body mass where it is lifted, and a warm-up where there is one', () => {
    const of = (exercise: object) => planSession(request(exercise, { bodyMassKg: 80 })).items[0]!;
    expect(of({ bodyMassPercent: 50 })).toMatchObject({ bodyMassKg: 80, bodyMassPercent: 50 });
    expect(of({ load: 20 })).not.toHaveProperty('bodyMassKg');
    expect(of({ load: 20, warmUp: [{ repetitions: 3, restS: 30 }] }).warmUp).toMatchObject([{ repetitions: 3 }]);
  });
});
