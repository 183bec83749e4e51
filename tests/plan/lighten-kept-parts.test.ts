import { describe, expect, it } from 'vitest';
import type { PlanExerciseFields } from '../../src/plan/index.js';
import { countsOf, kept, lighter, notOffered, sets, share, stated } from '../support/lighter.js';
import { planOf } from '../support/plans.js';

describe('the same work', () => {
  it('takes up to 200 repetitions', () => {
    expect(countsOf(lighter(planOf(stated(20, { sets: sets(100) })), 50), 'work')).toEqual([200]);
    const found = lighter(planOf(stated(20, { sets: sets(101) })), 50);
    expect(kept(found)).toEqual(['sets', 'sets-with-cuff']);
    expect(notOffered(found)).toEqual([
      ['work', 'lighter-too-many'],
      ['repetitions-in-reserve', 'lighter-reserve-not-known'],
    ]);
  });

  it.each<[string, PlanExerciseFields['sets']]>([
    ['by time', [{ durationS: 40 }]],
    ['by time with a count', [{ repetitions: 10, durationS: 40 }]],
    ['of which one is by time', [{ repetitions: 10 }, { durationS: 40 }]],
  ])('is not counted in sets %s', (_, given) => {
    const found = lighter(planOf(share(80, 1, { sets: given! })), 50);
    expect(kept(found)).toEqual(['sets', 'sets-with-cuff']);
    expect(notOffered(found)).toEqual([
      ['work', 'lighter-not-counted'],
      ['repetitions-in-reserve', 'lighter-not-counted'],
    ]);
  });
});

// Brzycki: 37 − 36 p repetitions to failure, so 1 at 100 %, 10 at 75 % and 8.2 at 80 %.
describe('the same repetitions in reserve', () => {
  it('are so many more repetitions in each set', () => {
    const found = lighter(planOf(share(100, 1)), 25);
    expect(countsOf(found, 'repetitions-in-reserve')).toEqual([10]);
    const option = found.options.find(({ keeps }) => keeps === 'repetitions-in-reserve')!;
    expect(option.assumptions.map(({ code, values }) => [code, values])).toEqual([
      ['lighter-reserve-of-fresh-set', { from: 1, to: 10 }],
    ]);
    expect(option.cautions.map(({ code }) => code)).not.toContain('lighter-reserve-without-cuff');
  });

  it('are what they are without a cuff, said where one is used', () => {
    const found = lighter(planOf(share(90, 2, { restriction: 'continuous' })), 10);
    const option = found.options.find(({ keeps }) => keeps === 'repetitions-in-reserve')!;
    expect(option.cautions.map(({ severity, code }) => `${severity} ${code}`)).toContain(
      'caution lighter-reserve-without-cuff',
    );
  });

  it.each([
    [10, 75, undefined],
    [11, 75, { repetitions: 10 }],
    [9, 80, { repetitions: 8.2 }],
  ])('are not known of %i repetitions at %i %% that are more than to failure', (count, percent, values) => {
    // Of several sets, one is enough.
    const found = lighter(planOf(share(percent, 1, { sets: sets(1, count) })), 10);
    const passed = found.notOffered.filter(({ keeps }) => keeps === 'repetitions-in-reserve');
    expect(passed.map((one) => [one.code, one.values])).toEqual(values ? [['lighter-reserve-passed', values]] : []);
  });

  it('are not known where no equation is valid at the lighter load', () => {
    expect(notOffered(lighter(planOf(share(80, 2)), 90))).toContainEqual([
      'repetitions-in-reserve',
      'lighter-reserve-not-known',
    ]);
  });
});
