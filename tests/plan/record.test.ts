import type { PlanExercise } from '../../src/plan/index.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sessionTotals, measuredOcclusionPressure } from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import { expandDocument, planSession, recordSession, reviewPlan } from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { jointPain, planOf, recordOf } from '../support/plans.js';
import { refusedAt } from '../support/refused.js';

const plan = planOf({ percentOneRepMax: 20 }, { label: 'Athlete C' }, { circumferenceCm: 55 });
const done = { exercise: 'leg extension', limb: 'leg', side: 'left', sets: [{ repetitions: 30 }] } as const;
const codes = (record: ReturnType<typeof recordSession>) => record.cautions.map(({ code }) => code);

const pathsOf = (request: unknown) => refusedAt(recordSession, request);

describe('recordSession', () => {
  // Worked by hand: 30 + 15 + 15 + 9 = 69; × 20 kg = 1380 kg; × 4 s = 276 s; + 30 + 45 + 30 s rest = 381 s.
  it('keeps what was planned beside what was done, and adds up what was done', () => {
    const record = recordSession({
      plan,
      date: '2026-03-02',
      items: [
        {
          ...done,
          sets: [{ repetitions: 30 }, { repetitions: 15, restS: 45 }, { repetitions: 15 }, { repetitions: 9 }],
          heldMmHg: 95,
        },
      ],
      ...jointPain(1, 1, 0),
      sessionRpe: 7,
      notes: 'steady',
    });
    expectPlainJson(record);
    expect(record).toMatchObject({
      document: 'record',
      schemaVersion: 2,
      date: '2026-03-02',
      label: 'Athlete C',
      sessionRpe: 7,
    });
    const [item] = record.items;
    expect(item).toMatchObject({ target: plan.items[0]!.target, load: plan.items[0]!.load, sets: plan.items[0]!.sets });
    expect(item).toMatchObject({ cuffWidthCm: 10, circumferenceCm: 55 });
    expect(item!.done).toMatchObject({ load: 20, unit: 'kg', heldMmHg: 95, stoppedEarly: false });
    expect(item!.done).not.toHaveProperty('lastSetToFailure');
    expect(item!.totals).toMatchObject({
      repetitions: { value: 69 },
      volumeLoad: { value: 1380 },
      timeUnderTension: { value: 276 },
      restrictionTime: { value: 381 },
    });
    expect(record.limbs).toMatchObject([{ side: 'left', exercises: 1, restrictionTime: { value: 381 } }]);
    expect(record.cautions).toEqual([]);
  });

  it.each(['none', 'cuff', 'joint', 'symptom-fainting'])(
    'takes an exercise named %s for a name, not for a code',
    (name) => {
      const own = planOf({ name }, { label: 'Athlete C' }, { circumferenceCm: 55 });
      const record = recordSession({
        plan: own,
        date: '2026-03-02',
        items: [{ ...done, exercise: name, heldMmHg: 140 }],
      });
      expect(record.cautions.map(({ text }) => text)).toContainEqual(
        expect.stringMatching(`^${name}, left leg: the cuff`),
      );
      expect(explain(record, { units: 'metric' })).toContain(`${name}, left leg: the cuff was held`);
    },
  );

  it('has the totals of the plan when the plan was done', () => {
    expect(recordOf(plan, [30, 15, 15, 15]).items[0]!.totals).toEqual(plan.items[0]!.totals);
  });

  it('totals any sets as the session layer does', () => {
    const sets = fc.array(
      fc.record({ repetitions: fc.integer({ min: 1, max: 100 }), restS: fc.integer({ min: 0, max: 600 }) }),
      { minLength: 1, maxLength: 10 },
    );
    fc.assert(
      fc.property(sets, fc.integer({ min: 1, max: 300 }), (given, load) => {
        const record = recordSession({ plan, date: '2026-03-02', items: [{ ...done, sets: given, load }] });
        const [item] = expandDocument(record).items;
        const { tempo, restriction, oneRepMax, target, occlusion } = expandDocument(plan).items[0]!;
        const session = sessionTotals({
          sets: given,
          tempo: tempo!,
          restS: 0,
          restriction: restriction as 'continuous',
          limb: 'leg',
          side: 'left',
          load,
          unit: 'kg',
          oneRepMax: oneRepMax!,
          pressureMmHg: target!.value,
          occlusionMmHg: occlusion!.value,
        });
        expect(session).toMatchObject(item!.totals);
        expect(item!.totals.volumeLoad).toBeDefined();
      }),
    );
  });

  it('warns of a heavier load than planned, as pounds typed for kilograms are', () => {
    const [message] = recordOf(plan, [30], {}, { load: 44 }).cautions;
    expect(message).toMatchObject({
      severity: 'caution',
      code: 'lifted-above-plan',
      path: ['items', 0, 'done', 'load'],
    });
    expect(message!.text).toBe('leg extension, left leg: 44 kg was lifted, above the 20 kg of the plan.');
    expect(codes(recordOf(plan, [30], {}, { load: 20 }))).toEqual([]);
    expect(codes(recordOf(plan, [30], {}, { load: 15 }))).toEqual([]);
  });

  it('keeps how long the cuff was down before an exercise, for the page and the review', () => {
    const record = recordOf(plan, [30], {}, { reperfusedBeforeS: 150 });
    expect(record.items[0]!.done.reperfusedBeforeS).toBe(150);
    expect(record.cautions).toMatchObject([
      {
        code: 'reperfusion-short',
        path: ['items', 0, 'done', 'reperfusedBeforeS'],
        values: { seconds: '150', low: 3 },
      },
    ]);
    expect(explain(record)).toMatch(/^Before +2:30 min deflated$/m);
    expect(reviewPlan(record, { guideline: 'common-practice' }).findings).toMatchObject([
      { measure: 'reperfusion', found: 2.5, severity: 'caution' },
    ]);
    const rested = recordOf(plan, [30], {}, { reperfusedBeforeS: 180 });
    expect(codes(rested)).toEqual([]);
    expect(reviewPlan(rested, { guideline: 'common-practice' }).findings).toEqual([]);
    expect(() => recordOf(planOf({ restriction: 'none' }), [30], {}, { reperfusedBeforeS: 180 })).toThrow(
      'items[0].reperfusedBeforeS must be left out, because the plan has no cuff here',
    );
  });

  it('names what is in the plan and was not recorded, and what there is to record', () => {
    const [exercise] = plan.request.exercises;
    const two = planSession({ ...plan.request, exercises: [exercise!, { ...exercise!, name: 'squat' }, exercise!] });
    const record = recordSession({ plan: two, date: '2026-03-02', items: [done] });
    expect(record.cautions.map(({ severity, text }) => [severity, text])).toEqual([
      ['note', 'squat, left leg: planned, and not recorded.'],
      ['note', 'leg extension, left leg: planned, and not recorded.'],
    ]);
    expect(() => recordSession({ plan: two, date: '2026-03-02', items: [{ ...done, exercise: 'Squat' }] })).toThrow(
      'recorded no more often than it is planned: "leg extension" "leg" "left", "squat" "leg" "left"; received "Squat" "leg" "left"',
    );
  });

  it('tells limbs and repeated exercises apart', () => {
    const exercise = plan.request.exercises[0]!;
    const twice = planOf({}, { exercises: [exercise, { ...exercise, percentOneRepMax: 30 } as PlanExercise] });
    const { items } = recordSession({ plan: twice, date: '2026-03-02', items: [done, done] });
    expect(items.map(({ load }) => load!.value)).toEqual([20, 30]);
    const request = { plan: twice, date: '2026-03-02', items: [done, done, done] };
    expect(pathsOf(request)).toEqual(['items.2.exercise']);
  });

  it('names everything that is wrong, in the plan and in what was done', () => {
    const broken = { ...structuredClone(plan), limbs: 'none' };
    const request = {
      plan: broken,
      date: '2026-02-30',
      items: [{ ...done, sets: [{ repetitions: 0 }], heldMmHg: 13.3 }],
      sessionRpe: 11,
      mood: 1,
    };
    expect(pathsOf(request)).toEqual(['plan.limbs', 'date', 'items.0.sets.0.repetitions', 'sessionRpe', 'mood']);
    expect(pathsOf({ plan, date: '2026-03-02', items: [{ ...done, side: 'right' }] })).toEqual(['items.0.exercise']);
    const more = Array.from({ length: 6 }, () => ({ repetitions: 5 }));
    expect(pathsOf({ plan, date: '2026-03-02', items: [{ ...done, sets: more }] })).toEqual([
      'items.0.sets.3.restS',
      'items.0.sets.4.restS',
    ]);
    expect(pathsOf({ date: '2026-03-02', items: [done] })).toEqual(['plan']);
    expect(pathsOf({ plan, date: '2026-03-02', items: [] })).toEqual(['items']);
    expect(pathsOf({ plan: { ...plan, schemaVersion: 3 }, date: '2026-03-02', items: [done] })).toEqual([
      'plan.schemaVersion',
    ]);
  });

  it('is of no day before its plan, nor before its pressure was measured', () => {
    const dated = planOf({}, { date: '2026-03-02' });
    expect(recordOf(dated, [30], { date: '2026-03-02' }).date).toBe('2026-03-02');
    expect(() => recordOf(dated, [30], { date: '2020-03-02' })).toThrow(
      'date must be not before 2026-03-02, the day of the plan; received 2020-03-02.',
    );
    const measured = { valueMmHg: 200, method: 'doppler', date: '2026-03-03' } as const;
    expect(() => recordOf(planOf({}, {}, { measured }), [30], { date: '2026-03-02' })).toThrow(
      'date must be not before 2026-03-03, the day of a measured pressure of the plan; received 2026-03-02.',
    );
    expect(() => planOf({}, { date: '2026-03-02' }, { measured })).toThrow(
      'limbs[0].measured.date must be not after 2026-03-02, the day of the plan; received 2026-03-03.',
    );
    expect(planOf({}, { date: '2026-03-03' }, { measured }).request.date).toBe('2026-03-03');
    const occlusion = measuredOcclusionPressure({ ...measured, limb: 'leg', side: 'left', cuffWidthCm: 10 });
    const answered = { occlusion, measured: undefined };
    expect(() => planOf({}, { date: '2026-03-02' }, answered)).toThrow(/^limbs\[0\]\.occlusion must be not after/);
    expect(() => recordOf(planOf({}, {}, answered), [30], { date: '2026-03-02' })).toThrow(/not before 2026-03-03/);
  });
});
