import { describe, expect, it } from 'vitest';
import { attempt, estimateOneRepMax, testedOneRepMax, trainingLoad, type Caution } from '../../src/index.js';
import { loadsOf, maximumOf, setLoadsOf, withSetCautions } from '../../src/plan/exercise-load.js';
import type { PlanExercise, PlanRequest } from '../../src/plan/index.js';
import { planOf } from '../support/plans.js';
import { issuesOf } from '../support/refused.js';

const exercise = (more: object): PlanExercise => ({ restriction: 'continuous', ...more }) as PlanExercise;
const person = (more: object = {}) => more as PlanRequest;
const maximum = (value = 100) => testedOneRepMax({ load: value, unit: 'kg' });
const caution = (code: string, severity: Caution['severity'] = 'note') =>
  ({ severity, code: code as Caution['code'], text: code }) satisfies Caution;

describe('the maximum of an exercise', () => {
  it.each<[string, object, unknown]>([
    ['as a number', { oneRepMax: 100 }, { value: 100, unit: 'kg' }],
    ['as a number in pounds', { oneRepMax: 100, unit: 'lb' }, { value: 100, unit: '[lb_av]' }],
    ['tested', { oneRepMax: { load: 90 } }, { value: 90, unit: 'kg', evidence: 'published' }],
  ])('%s', (_, given, expected) => {
    expect(maximumOf(exercise(given), person())).toMatchObject({
      kind: 'one-repetition-maximum',
      ...(expected as object),
    });
  });

  it('estimated for the person', () => {
    const oneRepMax = { load: 80, repetitions: 6, lift: 'bench-press' } as const;
    const request = { ageYears: 30, sex: 'male' } as const;
    const expected = estimateOneRepMax({ ...oneRepMax, ...request } as never);
    expect(maximumOf(exercise({ oneRepMax }), person(request))).toEqual(expected);
  });

  it('as an answer is that answer', () => {
    const answer = maximum();
    expect(maximumOf(exercise({ oneRepMax: answer }), person())).toBe(answer);
  });

  it('behind a load is that of the load, where it is an answer', () => {
    const load = trainingLoad({ oneRepMax: maximum(), percentOneRepMax: 20 });
    expect(maximumOf(exercise({ load }), person())).toMatchObject({ kind: 'one-repetition-maximum', value: 100 });
    const bare = { ...load, inputs: { ...load.inputs, oneRepMax: 100 } };
    for (const given of [{ load: bare }, { load: { ...load, inputs: {} } }, { load: 20 }, {}])
      expect(maximumOf(exercise(given), person())).toBeUndefined();
  });
});

describe('the loads of an exercise', () => {
  it('as stated', () => {
    const stated = (unit: string, code: string) => ({
      load: {
        kind: 'training-load',
        value: 20,
        unit: code,
        equation: 'stated-load',
        evidence: 'practice',
        inputs: { load: 20, unit },
        assumptions: [expect.objectContaining({ code: 'load-as-stated' })],
        cautions: [],
      },
    });
    expect(loadsOf(exercise({ load: 20 }), undefined)).toEqual(stated('kg', 'kg'));
    expect(loadsOf(exercise({ load: 20, unit: 'lb' }), undefined)).toEqual(stated('lb', '[lb_av]'));
  });

  it('are none without a load and a maximum', () => {
    expect(loadsOf(exercise({}), undefined)).toStrictEqual({});
  });

  it('by a share of the maximum, of which you can set them', () => {
    const { load, upperLoad } = loadsOf(exercise({ percentOneRepMax: 22, step: 5 }), maximum());
    expect([load?.value, upperLoad]).toEqual([20, undefined]);
    const range = loadsOf(exercise({ percentOneRepMax: { from: 20, to: 31 }, step: 5 }), maximum());
    expect([range.load?.value, range.upperLoad?.value]).toEqual([20, 30]);
  });

  it('as an answer has its cautions; without a cuff none about restriction', () => {
    const codes = ['above-restricted-loads', 'below-restricted-loads', 'other'];
    const load = {
      ...trainingLoad({ oneRepMax: maximum(), percentOneRepMax: 30 }),
      cautions: codes.map((code) => caution(code)),
    };
    const codesIn = (restriction: string) =>
      loadsOf(exercise({ load, restriction }), undefined).load!.cautions.map(({ code }) => code);
    expect(codesIn('continuous')).toEqual(codes);
    expect(codesIn('none')).toEqual(['other']);
  });
});

describe('the loads of sets', () => {
  const load = () => loadsOf(exercise({ load: 20 }), undefined).load;
  const of = (sets: object[], max = false, given = load(), name: 'sets' | 'warmUp' = 'sets') =>
    setLoadsOf(exercise({ [name]: sets, step: 2.5 }), name, max ? maximum() : undefined, given);

  it('are none where no set has its own', () => {
    expect(of([{ repetitions: 5 }, {}])).toBeUndefined();
    expect(setLoadsOf(exercise({ scheme: '3x10' }), 'sets', undefined, load())).toBeUndefined();
  });

  it('are their own, else that of the exercise', () => {
    expect(of([{ load: 10 }, {}])).toStrictEqual([
      { value: 10, cautions: [] },
      { value: 20, cautions: [] },
    ]);
    expect(of([{ percentOneRepMax: 31 }, {}], true)!.map(({ value }) => value)).toEqual([30, 20]);
    expect(of([{ load: 5 }], false, load(), 'warmUp')!.map(({ value }) => value)).toEqual([5]);
  });

  it.each<[string, object[], boolean, boolean, string]>([
    [
      'a load without one of the exercise',
      [{}, { load: 10 }],
      false,
      false,
      'sets[1].load must be left out unless oneRepMax or load is given; received a value.',
    ],
    [
      'a share next to a load',
      [{ load: 10, percentOneRepMax: 20 }],
      true,
      true,
      'sets[0].percentOneRepMax must be left out when the set has a load; received a value.',
    ],
    [
      'a share without a maximum',
      [{ percentOneRepMax: 20 }],
      false,
      true,
      'sets[0].percentOneRepMax must be left out unless oneRepMax is given; received a value.',
    ],
  ])('refuse %s', (_, sets, max, hasLoad, message) => {
    const call = () =>
      setLoadsOf(exercise({ sets }), 'sets', max ? maximum() : undefined, hasLoad ? load() : undefined);
    const result = attempt(call as never, undefined);
    expect(result.ok ? [] : result.issues.map((one) => one.message)).toEqual([message]);
  });

  it('refuse those of an exercise without a load, in a plan too', () => {
    const bare = { oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true } as const;
    const plan = (own: object) => () => planOf({ ...bare, sets: [{ repetitions: 5 }, { repetitions: 5, ...own }] });
    expect(issuesOf(plan({ load: 10 }))).toEqual(['exercises.0.sets.1.load wrong-relation']);
    expect(issuesOf(plan({ percentOneRepMax: 10 }))).toEqual(['exercises.0.sets.1.percentOneRepMax wrong-relation']);
  });

  it('refuse a share that is none, in its place', () => {
    const result = attempt((() => of([{}, { percentOneRepMax: 900 }], true)) as never, undefined);
    expect(result.ok ? [] : result.issues.map(({ path }) => path)).toEqual([['sets', 1, 'percentOneRepMax']]);
  });
});

describe('a load with the cautions of its sets', () => {
  const load = () => ({ ...loadsOf(exercise({ load: 20 }), undefined).load!, cautions: [caution('own')] });
  const set = (...codes: string[]) => ({ value: 10, cautions: codes.map((code) => caution(code, 'caution')) });
  const codesOf = (restriction: string, ...sets: ReturnType<typeof set>[]) =>
    withSetCautions(exercise({ restriction }), load(), sets).cautions.map(({ code }) => code);

  it('has each once, the most severe first', () => {
    expect(codesOf('continuous', set('a'), set('a', 'b'))).toEqual(['a', 'b', 'own']);
    expect(withSetCautions(exercise({}), load(), [set('a')]).value).toBe(20);
  });
  it('has none about restriction without a cuff', () => {
    expect(codesOf('none', set('above-restricted-loads', 'a'))).toEqual(['a', 'own']);
  });
  it('is the same where they have none', () => {
    const same = load();
    expect(withSetCautions(exercise({}), same, [set()])).toBe(same);
    expect(withSetCautions(exercise({}), same, undefined)).toBe(same);
  });
});
