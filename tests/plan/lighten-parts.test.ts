import { describe, expect, it } from 'vitest';
import type { PlanExercise } from '../../src/plan/index.js';
import { sharedOut } from '../../src/plan/lighten.js';
import { countsOf, lighter, name, sets, stated } from '../support/lighter.js';
import { planOf } from '../support/plans.js';

describe('repetitions are shared out', () => {
  // By hand: the whole part of each share, then one more for the largest remainders, the earlier set first.
  it.each([
    [[1, 1], 3, [2, 1]],
    [[1, 2], 4, [1, 3]],
    [[2, 1], 4, [3, 1]],
    [[1, 1, 1], 5, [2, 2, 1]],
    [[5, 3], 8, [5, 3]],
    [[3, 1], 2, [2, 0]],
  ])('%j in all %i as %j', (counts, total, expected) => {
    expect(sharedOut(counts, total)).toEqual(expected);
  });
});

describe('less load', () => {
  it('is the only change that keeps the sets', () => {
    const plan = planOf(stated(20));
    const { options, cautions, stops, disclaimers } = lighter(plan, 50);
    const [first] = options;
    expect(first!.keeps).toBe('sets');
    expect(first!.load.value).toBe(10);
    expect(first!.sets).toEqual(sets(2));
    expect(first!.restriction).toBe('none');
    expect(first!.assumptions).toEqual([]);
    expect(first!.cautions).toEqual([]);
    expect(first!.request.exercises).toEqual([{ ...plan.request.exercises[0], load: 10 }]);
    expect(first!.comparison.notKnown).toEqual(['equal-effect']);
    // Exactly what was asked for: no caution.
    expect([cautions, stops]).toEqual([[], []]);
    expect(disclaimers.map(({ code }) => code)).toEqual(['lighter-no-promise', 'local-codes-decide']);
  });

  it('brings the load of each set down in proportion', () => {
    const plan = planOf(stated(20, { sets: [{ repetitions: 2 }, { repetitions: 2, load: 10 }] }));
    const [first] = lighter(plan, 50).options;
    expect(first!.request.exercises[0]!.sets).toEqual([
      { repetitions: 2, load: 10 },
      { repetitions: 2, load: 5 },
    ]);
    // 2 × 20 and 2 × 10 are 60 kg; 3 × 10 and 3 × 5 only 45, 4 × 10 and 4 × 5 are 60.
    expect(countsOf(lighter(plan, 50), 'work')).toEqual([4, 4]);
  });

  it('leaves the other exercises alone', () => {
    const { request } = planOf(stated(20));
    const other = { ...request.exercises[0]!, name: 'press', load: 40, sets: sets(100) } as PlanExercise;
    const plan = planOf({}, { exercises: [other, request.exercises[0]!] });
    const { options } = lighter(plan, 50);
    expect(options[0]!.load.value).toBe(10);
    expect(options[0]!.sets).toEqual(sets(2));
    expect(options[0]!.request.exercises.map(({ load }) => load)).toEqual([40, 10]);
    expect(options[0]!.comparison.rows.find(({ quantity }) => quantity === 'peakLoad')).toMatchObject({
      from: { value: 20 },
      to: { value: 10 },
    });
  });

  it('shows findings of its own exercise alone', () => {
    const own = { ...planOf({ sets: sets(30) }).request.exercises[0]! };
    const plan = planOf({}, { exercises: [own, { ...own, name: 'press' }], sessionsPerWeek: 7 });
    const { options } = lighter(plan, 10);
    expect(new Set(options[0]!.findings.map(({ exercise }) => exercise))).toEqual(new Set([name]));
  });

  // 80 × (1 − 0.12) = 70.4 kg, down to 70: 12.5 % less.
  it('says by how much the load goes down where that is another percentage', () => {
    const found = lighter(planOf(stated(80, { step: 2.5 })), 12);
    expect(found.cautions.map(({ severity, code, values }) => [severity, code, values])).toEqual([
      ['note', 'lighter-than-asked', { asked: 12, reached: 12.5 }],
    ]);
  });
});
