// A plan of one exercise on one leg: its pauses, ranges and what it refuses.
import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/answer/issues.js';
import { planSession, type PlanRequest } from '../../src/plan/index.js';
import { PERSON } from '../support/inputs.js';

const limb = { limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, occlusion: 200 } as const;
const exercise = (more: object = {}) => ({
  name: 'press',
  limb: 'leg',
  load: 20,
  sets: [{ repetitions: 10 }],
  tempo: '1-0-1-0',
  restriction: 'continuous',
  ...more,
});
const requestOf = (exercises: readonly object[], more: object = {}) =>
  ({ ...PERSON, limbs: [limb], exercises, ...more }) as unknown as PlanRequest;
const planOf = (...given: Parameters<typeof requestOf>) => planSession(requestOf(...given));
const refused = (...given: Parameters<typeof requestOf>) => {
  const answer = attempt(planSession, requestOf(...given));
  return answer.ok ? [] : answer.issues.map(({ code, path }) => [code, path.join('.')]);
};

describe('pauses between exercises', () => {
  /** Two exercises of 20 s each, and the pause between them [s]. */
  const pauseOf = (first: object, more: object = {}) => {
    const { session, assumptions } = planOf([exercise(first), exercise({ name: 'curl', reperfusionS: 999 })], more);
    const taken = assumptions.filter(({ code }) => code === 'reperfusion-taken').map(({ values }) => values);
    return [session.totals.sessionTime.value - 40, taken];
  };

  it('are those of the exercise, else of the request, else 3 minutes, which is assumed', () => {
    expect(pauseOf({ reperfusionS: 60 }, { reperfusionS: 90 })).toEqual([60, []]);
    expect(pauseOf({}, { reperfusionS: 90 })).toEqual([90, []]);
    expect(pauseOf({})).toEqual([180, [{ minutes: 3 }]]);
  });
});

describe('a range of loads', () => {
  it('is assumed at its lower end', () => {
    const range = { load: undefined, oneRepMax: { load: 100 }, percentOneRepMax: { from: 20, to: 30 } };
    const ranges = (more: object) =>
      planOf([exercise(more)])
        .assumptions.filter(({ code }) => code === 'load-range-lower')
        .map(({ values }) => values);
    expect(ranges(range)).toEqual([{ exercise: 'press', load: 20, upper: 30, unit: 'kg' }]);
    expect(ranges({})).toEqual([]);
  });
});

describe('what is refused', () => {
  it('a limb listed twice, a blood pressure upside down', () => {
    expect(refused([exercise()], { limbs: [limb, { ...limb }] })).toEqual([['wrong-relation', 'limbs.1.side']]);
    expect(refused([exercise()], { limbs: [limb, { ...limb, side: 'right' }] })).toEqual([]);
    const turned = refused([exercise()], { systolicMmHg: 74, diastolicMmHg: 118 });
    expect(turned).toHaveLength(1);
  });

  it('fields of limbs are named there', () => {
    const wrong = { ...limb, cuffWidthCm: undefined };
    expect(refused([exercise()], { limbs: [wrong] })).toEqual([['missing', 'limbs.0.cuffWidthCm']]);
  });
});

it('a plan without a cuff has other disclaimers and stop criteria than one with', () => {
  const criteria = (...exercises: readonly object[]) => planOf(exercises).stopCriteria.length;
  const free = exercise({ name: 'walk up', restriction: 'none' });
  expect(criteria(free)).toBeLessThan(criteria(exercise()));
  expect(criteria(exercise(), free)).toBe(criteria(exercise()));
});
