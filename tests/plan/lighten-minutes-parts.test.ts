import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { lightenExercise } from '../../src/plan/index.js';
import { countsOf, kept, lighter, name, sets, stated } from '../support/lighter.js';
import { planOf } from '../support/plans.js';

// 2019 guidance: up to 10 min under the cuff in an exercise.
describe('the minutes under the cuff', () => {
  const slow = { restriction: 'continuous', tempo: { eccentricS: 2, concentricS: 4 } } as const;

  // 2 × 50 repetitions of 6 s at half the load: 600 s fit; 2 × 51 take 612 s, so 100 of them are left.
  it.each([
    [50, undefined],
    [51, [100]],
  ])('of %i repetitions, and twice as many with half the load', (count, expected) => {
    const found = lighter(planOf(stated(20, { ...slow, sets: sets(count) })), 50);
    expect(countsOf(found, 'work')).toEqual([2 * count]);
    expect(countsOf(found, 'restriction-time')).toEqual(expected);
  });

  // 180 and 2 repetitions keep the work of 90 and 1. 95 of 6 s and a rest of 30 s fit; none of them is a set of none.
  it('leave a repetition for every set', () => {
    const found = lighter(planOf(stated(20, { ...slow, sets: sets(90, 1) })), 50);
    expect(countsOf(found, 'work')).toEqual([180, 2]);
    expect(countsOf(found, 'restriction-time')).toEqual([94, 1]);
  });

  it('are passed where one repetition a set passes them', () => {
    const plan = planOf(stated(20, { ...slow, sets: sets(1, 1, 1), restS: 300 }));
    const found = lighter(plan, 50);
    expect(found.notOffered.filter(({ keeps }) => keeps === 'restriction-time')).toMatchObject([
      // Three repetitions and two rests: 618 s.
      { code: 'lighter-minutes-passed', values: { minutes: 10.3, high: 10 } },
    ]);
  });

  it('are no question without the cuff, nor where the work cannot be kept', () => {
    const bare = lighter(planOf(stated(20, { ...slow, restriction: 'none', sets: sets(60) })), 50);
    const timed = lighter(planOf(stated(20, { ...slow, sets: [{ durationS: 640 }] })), 50);
    for (const found of [bare, timed])
      expect([...kept(found), ...found.notOffered.map(({ keeps }) => keeps)]).not.toContain('restriction-time');
  });
});

describe('lightenExercise refuses', () => {
  const refused = (exercise: string, more: readonly string[] = [], lighterPercent = 10) => {
    const own = planOf(stated(20)).request.exercises[0]!;
    const plan = planOf({}, { exercises: [own, ...more.map((one) => ({ ...own, name: one }))] });
    const result = attempt(lightenExercise, { plan, exercise, lighterPercent });
    return result.ok ? [] : result.issues.map(({ path, code, message }) => [path.join('.'), code, message]);
  };

  it('an exercise that the plan does not have once', () => {
    const places = '"leg extension", "press"';
    expect(refused('squat', ['press', 'press'])).toEqual([
      [
        'exercise',
        'wrong-relation',
        `exercise must be an exercise that the plan has once: ${places}; received "squat".`,
      ],
    ]);
    expect(refused('press', ['press', 'press'])).toEqual([
      [
        'exercise',
        'wrong-relation',
        `exercise must be an exercise that the plan has once: ${places}; received "press".`,
      ],
    ]);
    expect(refused(name, ['press', 'press'])).toEqual([]);
  });

  it('a name that is longer than names are', () => {
    const longest = 'x'.repeat(120);
    expect(refused(longest, [longest])).toEqual([]);
    expect(refused(`${longest}x`).map(([path, code]) => [path, code])).toEqual([['exercise', 'wrong-type']]);
  });
});
