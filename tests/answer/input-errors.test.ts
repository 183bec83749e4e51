import { describe, expect, it } from 'vitest';
import { attempt, estimateOcclusionPressure, InputError, isInputError, type InputIssue } from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';
import { publicFunctions } from '../support/public-functions.js';

function issuesOf(call: () => unknown): readonly InputIssue[] {
  try {
    call();
  } catch (error) {
    if (isInputError(error)) return error.issues;
    throw error;
  }
  return [];
}
const places = (issues: readonly InputIssue[]) => issues.map(({ path, code }) => [path.join('.'), code]);

const right = publicFunctions['estimateOcclusionPressure']!.right;
const estimate = (change: object) => issuesOf(() => estimateOcclusionPressure({ ...right, ...change } as never));

describe('input errors', () => {
  it('names every wrong field at once', () => {
    const wrong = {
      limb: 'neck',
      circumferenceCm: '55',
      systolicMmHg: NaN,
      diastolicMmHg: -70,
      cuffWidthCm: Infinity,
      posture: 1,
      ageYears: null,
      sex: 'x',
      equation: 'mine',
      girth: 55,
    };
    expect(places(estimate(wrong))).toEqual([
      ['limb', 'not-one-of'],
      ['circumferenceCm', 'wrong-type'],
      ['systolicMmHg', 'not-finite'],
      ['diastolicMmHg', 'out-of-range'],
      ['cuffWidthCm', 'not-finite'],
      ['posture', 'not-one-of'],
      ['ageYears', 'wrong-type'],
      ['sex', 'not-one-of'],
      ['equation', 'not-one-of'],
      ['girth', 'unknown-field'],
    ]);
  });

  it('names every missing field at once', () => {
    const { length } = Object.keys(right);
    const issues = issuesOf(() => estimateOcclusionPressure({} as never));
    expect(issues.map(({ code }) => code)).toEqual(Array(length).fill('missing'));
  });

  it.each([
    ['inches for a thigh', { circumferenceCm: 21.5 }, 'inches', 54.61],
    ['inches for an arm', { limb: 'arm', circumferenceCm: 12.5 }, 'inches', 31.75],
    ['millimetres', { circumferenceCm: 550 }, 'millimetres', 55],
    ['metres', { circumferenceCm: 0.55 }, 'metres', 55],
    ['kPa, systolic', { systolicMmHg: 16 }, 'kPa', 120.01],
    ['kPa, diastolic', { diastolicMmHg: 9.3 }, 'kPa', 69.76],
  ])('names the likely slip: %s', (_name, change, unit, converted) => {
    const issues = estimate(change);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ code: 'unit-slip', values: { slip: unit, converted } });
    expect(issues[0]!.message).toContain(unit);
  });

  it('names swapped pressures', () => {
    expect(estimate({ systolicMmHg: 70, diastolicMmHg: 120 })).toMatchObject([{ code: 'swapped-pressures' }]);
    expect(estimate({ systolicMmHg: 100, diastolicMmHg: 100 })).toMatchObject([{ code: 'swapped-pressures' }]);
  });

  it('refuses a 900 cm thigh without guessing', () => {
    expect(estimate({ circumferenceCm: 900 })).toMatchObject([{ path: ['circumferenceCm'] }]);
  });

  it('names a fraction given for a percent', () => {
    const { call, right: target } = publicFunctions['targetCuffPressure']!;
    const issues = issuesOf(() => call({ ...target, percentLop: 0.5 } as never));
    expect(issues).toMatchObject([{ code: 'unit-slip', values: { converted: 50, unit: '%' } }]);
  });

  it('attempt returns the issues as data, and lets other errors through', () => {
    expect(attempt(estimateOcclusionPressure, right as never).ok).toBe(true);
    expect(attempt(estimateOcclusionPressure, {} as never)).toMatchObject({ ok: false });
    const fail = () => {
      throw new TypeError('not ours');
    };
    expect(() => attempt(fail, undefined)).toThrow(TypeError);
  });

  it('is known across copies of the package by its fields', () => {
    const copy = Object.assign(new Error('x'), { name: 'InputError', issues: [] });
    expect(isInputError(copy)).toBe(true);
    expect(isInputError(new InputError([]))).toBe(true);
    expect(isInputError({ name: 'InputError', issues: [] })).toBe(false);
  });
});

describe('a cuff width given in inches', () => {
  it('is named as the likely slip where no study used so narrow a cuff', () => {
    expect(estimate({ cuffWidthCm: 2 })).toMatchObject([
      { code: 'unit-slip', values: { slip: 'inches', converted: 5.08, unit: 'cm' } },
    ]);
  });
  // The narrowest cuffs of studies: 3 cm on arms (J Physiol Sci 2017;67:207), 4.5 cm on thighs (1988), 5 cm in the rest.
  it.each([
    [3, true],
    [4, true],
    [4.99, true],
    [5, false],
  ])('is asked about where it could be one in centimetres: %s', (cuffWidthCm, asked) => {
    const { cautions } = estimateOcclusionPressure({ ...right, cuffWidthCm } as never);
    const found = cautions.filter(({ code }) => code === 'cuff-width-below-published');
    expect(found.map(({ values }) => values?.['converted'])).toEqual(
      asked ? [Number((cuffWidthCm * 2.54).toFixed(2))] : [],
    );
  });
});

describe('a tempo', () => {
  const { right: request, call } = publicFunctions['planSession']! as never as {
    right: { exercises: object[] };
    call: typeof planSession;
  };
  const withTempo = (tempo: unknown) => () =>
    call({ ...request, exercises: [{ ...request.exercises[0], tempo }] } as never);
  it.each(['2-0-2-0', '2/0/2/0', '2020'])('may be the notation in a plan as in a session: %s', (tempo) => {
    const { items } = withTempo(tempo)();
    expect(items[0]!.tempo).toEqual({ eccentricS: 2, bottomS: 0, concentricS: 2, topS: 0 });
  });
  it.each([
    ['2-0-2', 'exercises.0.tempo', 'wrong-type'],
    ['61-0-2-0', 'exercises.0.tempo', 'wrong-type'],
    [{ eccentricS: 2 }, 'exercises.0.tempo.concentricS', 'missing'],
  ])('that is none is refused where it is wrong: %j', (tempo, place, code) => {
    expect(places(issuesOf(withTempo(tempo)))).toEqual([[place, code]]);
  });
});

describe('input errors of a whole plan', () => {
  const plan = publicFunctions['planSession']!.right as Record<string, any>;
  it('names what is wrong in every part, from the top of the request', () => {
    const issues = issuesOf(() =>
      planSession({
        ...plan,
        systolicMmHg: 70,
        diastolicMmHg: 120,
        limbs: [
          { ...plan['limbs'][0], circumferenceCm: 21 },
          { ...plan['limbs'][0], side: 'right', percentLop: 0.5 },
        ],
        exercises: [
          { ...plan['exercises'][0], oneRepMax: { load: 60, repetitions: 50 }, sets: [{ repetitions: 10 }] },
          { ...plan['exercises'][0], limb: 'arm', available: [10], tempo: { eccentricS: 2 } },
        ],
      } as never),
    );
    expect(places(issues)).toEqual([
      ['limbs.1.percentLop', 'unit-slip'],
      ['exercises.1.tempo.concentricS', 'missing'],
      ['systolicMmHg', 'swapped-pressures'],
      ['exercises.0.oneRepMax.repetitions', 'wrong-relation'],
      ['exercises.0.sets', 'wrong-relation'],
      ['exercises.1.available', 'wrong-relation'],
      ['exercises.1.limb', 'wrong-relation'],
    ]);
  });
  it('asks for a girth where no pressure was measured', () => {
    const { circumferenceCm: _, ...limb } = plan['limbs'][0];
    expect(places(issuesOf(() => planSession({ ...plan, limbs: [limb] } as never)))).toEqual([
      ['limbs.0.circumferenceCm', 'missing'],
    ]);
  });
  it('asks for a limb for every exercise', () => {
    const exercises = [{ ...plan['exercises'][0], side: 'right' }];
    expect(places(issuesOf(() => planSession({ ...plan, exercises } as never)))).toEqual([
      ['exercises.0.limb', 'wrong-relation'],
    ]);
  });
});
