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
