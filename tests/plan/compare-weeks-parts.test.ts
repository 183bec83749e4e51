import { describe, expect, it } from 'vitest';
import {
  compareWeeks,
  type PlanExerciseFields,
  type PlanRequest,
  type SessionRecord,
  type WeekInput,
} from '../../src/plan/index.js';
import { bothSides, measuredAt } from '../support/inputs.js';
import { planOf, recordOf } from '../support/plans.js';

type Plan = ReturnType<typeof planOf>;
/** Ten repetitions of 4 s with 20 kg of 100 kg, on the left leg. */
const plan = (more: Partial<PlanExerciseFields> = {}, ...rest: [Partial<PlanRequest>?, object?]): Plan =>
  planOf({ sets: [{ repetitions: 10 }], ...more }, ...rest);
const planned = (...plans: Plan[]) => weekOf({ sessions: plans.map((one) => ({ plan: one })) }).planned!;
const done = (...records: SessionRecord[]) => weekOf({ records }).done!;
const weekOf = (week: WeekInput) => compareWeeks({ weeks: [week] }).weeks[0]!;
/** Values of answers in place of the answers. */
const values = (of: object) =>
  Object.fromEntries(
    Object.entries(of).flatMap(([name, one]) =>
      Array.isArray(one) ? [] : [[name, (one as { value?: number } | undefined)?.value ?? one]],
    ),
  );

describe('what a week adds up', () => {
  it('is each session as often as it is done', () => {
    const quarter = { sets: [{ repetitions: 15 }] };
    const week = weekOf({
      sessions: [{ plan: plan(quarter), times: 2 }, { plan: plan({ ...quarter, restriction: 'none' }) }],
    });
    expect(week).not.toHaveProperty('deload');
    expect(week).not.toHaveProperty('done');
    expect(values(week.planned!)).toEqual({ sessions: 3, restrictedSessions: 2 });
    const [limb, ...others] = week.planned!.limbs;
    expect(others).toEqual([]);
    expect(values(limb!)).toEqual({
      limb: 'leg',
      side: 'left',
      peakLoad: 20,
      peakPercentOneRepMax: 20,
      volumeLoad: 900,
      // 50 % of LOP for 1 min, twice.
      relativePressureTime: 100,
      restrictionTime: 120,
      occlusion: { valueMmHg: 200, measured: true },
    });
    const own = { exercise: 'leg extension', peakLoad: 20, peakPercentOneRepMax: 20 };
    expect(limb!.exercises.map(values)).toEqual([
      { ...own, percentLop: 50, restrictionTime: 120 },
      { ...own, restrictionTime: 0 },
    ]);
    expect(week.planned!.sessions.inputs).toEqual({ weekSessions: '2 + 1' });
    expect(week.planned!.sessions).toMatchObject({ kind: 'sessions', unit: '{sessions}' });
    expect(limb!.restrictionTime.inputs).toEqual({ weekSessions: '60 + 60' });
    expect(planned(plan({ restriction: 'none' })).limbs[0]!.restrictionTime).toMatchObject({
      kind: 'restriction-time',
      value: 0,
      unit: 's',
      inputs: { weekSessions: '0' },
    });
    expect(week.planned!.restrictedSessions.inputs).toEqual({ weekSessions: '2' });
  });

  it('is of each limb and each exercise', () => {
    const limbs = bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) } as const);
    const { request } = plan({}, { limbs });
    const [squat] = request.exercises;
    const press = { ...squat!, name: 'press', side: 'right', percentOneRepMax: 30 } as never;
    const week = planned(plan({}, { limbs, exercises: [squat!, press] }));
    expect(
      week.limbs.map(({ side, exercises, restrictionTime }) => [
        side,
        restrictionTime.value,
        exercises.map(({ exercise, peakLoad }) => [exercise, peakLoad?.value]),
      ]),
    ).toEqual([
      ['left', 40, [['leg extension', 20]]],
      [
        'right',
        80,
        [
          ['leg extension', 20],
          ['press', 30],
        ],
      ],
    ]);
  });

  it('is restricted where any exercise of a session is', () => {
    const [one] = plan().request.exercises;
    const bare = { ...one!, name: 'press', restriction: 'none' } as never;
    expect(planned(plan({}, { exercises: [one!, bare] })).restrictedSessions.value).toBe(1);
  });

  it('has the heaviest load of the sessions with a load', () => {
    const bare = { oneRepMax: undefined, percentOneRepMax: undefined };
    const { peakLoad, peakPercentOneRepMax } = planned(plan(), plan({ ...bare, unloaded: true })).limbs[0]!;
    expect([peakLoad?.value, peakPercentOneRepMax?.value]).toEqual([20, 20]);
    // A share is known where every load has its maximum.
    const stated = planned(plan(), plan({ ...bare, load: 15 })).limbs[0]!;
    expect([stated.peakLoad?.value, stated.peakPercentOneRepMax?.value]).toEqual([20, undefined]);
    expect(planned(plan({ ...bare, unloaded: true })).limbs[0]).not.toHaveProperty('peakLoad');
  });

  it('counts sessions of restriction at rest', () => {
    const rest = planOf({
      mode: 'passive',
      scheme: '3x5min',
      tempo: undefined,
      oneRepMax: undefined,
      percentOneRepMax: undefined,
      sets: undefined,
    } as never);
    expect(values(planned(rest, plan()))).toEqual({ sessions: 2, restrictedSessions: 2, restrictedAtRest: 1 });
  });
});

describe('the occlusion pressure of a week', () => {
  const measured = (value: number, date?: string) => ({ measured: { ...measuredAt(value), date } });
  const occlusionOf = (...plans: Plan[]) => planned(...plans).limbs[0]!.occlusion;

  it('is that of the last session with a cuff', () => {
    const first = plan({}, {}, measured(200, '2026-02-01'));
    expect(occlusionOf(first)).toEqual({ valueMmHg: 200, measured: true, date: '2026-02-01' });
    expect(occlusionOf(first, plan({}, {}, measured(210)))).toEqual({ valueMmHg: 210, measured: true });
    expect(occlusionOf(first, plan({ restriction: 'none' }, {}, measured(210)))).toMatchObject({ valueMmHg: 200 });
    expect(occlusionOf(plan({ restriction: 'none' }))).toBeUndefined();
  });
  it('is an estimate of the day of its readings', () => {
    const tape = { measured: undefined, circumferenceCm: 55 };
    expect(occlusionOf(plan({}, { date: '2026-02-03' }, tape))).toMatchObject({ measured: false, date: '2026-02-03' });
    expect(occlusionOf(plan({}, {}, tape))).not.toHaveProperty('date');
  });
  it('and the circumference are of each limb', () => {
    const [left, right] = bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50 } as const);
    const limbs = (a?: number) => [
      { ...left, ...measured(200), circumferenceCm: a },
      { ...right, ...measured(220), circumferenceCm: 54 },
    ];
    const week = planned(plan({}, { limbs: limbs(55) }), plan({}, { limbs: limbs() }));
    expect(week.limbs.map(({ occlusion, circumferenceCm }) => [occlusion?.valueMmHg, circumferenceCm])).toEqual([
      [200, 55],
      [220, 54],
    ]);
    expect(planned(plan()).limbs[0]).not.toHaveProperty('circumferenceCm');
  });
});

describe('a week as done', () => {
  const record = (more: object = {}, item: object = {}) => recordOf(plan(), [10], more, item);
  const painOf = (...pains: (object[] | undefined)[]) =>
    done(...pains.map((pain, index) => record({ date: `2026-03-0${index + 1}`, ...(pain && { pain }) }))).limbs[0]!
      .worstPain;

  it('has the worst pain of any moment, where it was asked for', () => {
    expect(painOf(undefined)).toBeUndefined();
    expect(painOf([])).toEqual({ value: 0 });
    expect(painOf([{ site: 'joint', before: 0 }])).toEqual({ value: 0 });
    expect(painOf([{ site: 'joint', before: 1, during: 3, after: 2 }])).toEqual({ value: 3, site: 'joint' });
    expect(painOf([{ site: 'joint', during: 3 }], undefined, [{ site: 'muscle', after: 2 }])).toEqual({
      value: 3,
      site: 'joint',
    });
    expect(painOf([{ site: 'joint', during: 2 }], [{ site: 'muscle', after: 3 }])).toEqual({
      value: 3,
      site: 'muscle',
    });
    expect(
      painOf([
        { site: 'joint', during: 3 },
        { site: 'muscle', after: 3 },
      ]),
    ).toEqual({ value: 3, site: 'joint' });
    expect(painOf([{ site: 'joint', during: 3, limb: 'arm' }])).toEqual({ value: 0 });
  });

  it('has the session load where every session has', () => {
    const rated = record({ sessionRpe: 5, sessionS: 600 });
    expect(done(rated).sessionLoad?.value).toBe(50);
    expect(done(rated, record({ date: '2026-03-05', sessionRpe: 4, sessionS: 1200 })).sessionLoad?.value).toBe(130);
    const both = done(rated, record({ date: '2026-03-05', sessionRpe: 4, sessionS: 1200 }));
    expect(both.sessionLoad?.inputs).toEqual({ weekSessions: '50 + 80' });
    expect(weekOf({ records: [rated] })).not.toHaveProperty('planned');
    expect(done(rated, record({ date: '2026-03-05' }))).not.toHaveProperty('sessionLoad');
  });

  it('names the exercise that was done instead', () => {
    const { exercises } = done(record({}, { instead: 'squat', load: 30 })).limbs[0]!;
    expect(exercises.map(({ exercise, peakLoad }) => [exercise, peakLoad?.value])).toEqual([['squat', 30]]);
  });
});
