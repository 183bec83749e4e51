import { describe, expect, it } from 'vitest';
import { cite, explain, working } from '../../src/text/index.js';
import { compareWeeks, type Plan } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';
import { issuesOf } from '../support/refused.js';

const heavy = (percentOneRepMax: number, more: object = {}): Plan =>
  planOf({ percentOneRepMax, scheme: '3x8', restS: 120, restriction: 'none', ...more });
const walk = planOf({
  name: 'walk',
  mode: 'aerobic',
  oneRepMax: undefined,
  percentOneRepMax: undefined,
  tempo: undefined,
  scheme: '5x2min',
  restS: 60,
});
/** The light session at a share of the 100 kg maximum, and of the 200 mmHg that were measured. */
const light = (percentOneRepMax: number, percentLop: number): Plan => planOf({ percentOneRepMax, percentLop });
const codesOf = (weeks: Parameters<typeof compareWeeks>[0]['weeks']) =>
  compareWeeks({ weeks }).cautions.map(({ values }) => values);

// By hand: 30-15-15-15 at 4 s a repetition is 75 repetitions, 300 s of sets and three rests of 30 s: 390 s with the
// cuff up. 75 × 20 kg is 1500 kg; 3 × 8 × 70 kg is 1680 kg.
describe('weeks side by side', () => {
  // Made anew in every test: what is made as the file is loaded is made before any mutant.
  const compared = () =>
    compareWeeks({
      weeks: [
        { sessions: [{ plan: light(20, 50), times: 3 }] },
        { sessions: [{ plan: light(20, 50), times: 2 }, { plan: heavy(70) }] },
        { sessions: [{ plan: heavy(80), times: 2 }] },
      ],
    });

  it('keeps a heavy load without a cuff apart from the light one under it, and a goal has both', () => {
    const { weeks, goals, cautions } = compareWeeks({
      weeks: [{ sessions: [{ plan: light(20, 50) }] }, { sessions: [{ plan: light(20, 50) }, { plan: heavy(70) }] }],
      goals: [
        { name: 'load', measure: 'peakLoadKg', limb: 'leg', side: 'left', exercise: 'leg extension', atLeast: 70 },
        { name: 'cuff', measure: 'restrictionMin', limb: 'leg', side: 'left', exercise: 'leg extension', atMost: 6.5 },
      ],
    });
    expect(
      weeks[1]!.planned!.limbs[0]!.exercises.map(({ peakLoad, percentLop, restrictionTime }) => [
        peakLoad!.value,
        percentLop?.value,
        restrictionTime.value,
      ]),
    ).toEqual([
      [20, 50, 390],
      [70, undefined, 0],
    ]);
    expect(goals.map(({ outcome, found }) => [outcome, found])).toEqual([
      ['met', 70],
      ['met', 6.5],
    ]);
    expect(cautions.map(({ code, values }) => [code, values!['points']])).toEqual([['load-jump', 50]]);
  });

  it('has what was done in place of an exercise under its own name', () => {
    const plan = light(20, 50);
    const records = [recordOf(plan, [30, 15, 15, 15], {}, { instead: 'split squat', load: 10 })];
    const [limb] = compareWeeks({ weeks: [{ records }] }).weeks[0]!.done!.limbs;
    expect(
      limb!.exercises.map(({ exercise, peakLoad, restrictionTime }) => [
        exercise,
        peakLoad!.value,
        restrictionTime.value,
      ]),
    ).toEqual([['split squat', 10, 390]]);
  });

  it('adds up each week, every session as often as it is done', () => {
    const comparison = compared();
    const rows = comparison.weeks.map(({ week, planned }) => [
      week,
      planned!.sessions.value,
      planned!.restrictedSessions.value,
      planned!.limbs.map(({ limb, side, peakLoad, peakPercentOneRepMax, restrictionTime, volumeLoad }) => [
        side,
        limb,
        peakLoad?.value,
        peakPercentOneRepMax?.value,
        restrictionTime.value,
        volumeLoad?.value,
      ]),
    ]);
    expect(rows).toEqual([
      [1, 3, 3, [['left', 'leg', 20, 20, 1170, 4500]]],
      [2, 3, 2, [['left', 'leg', 70, 70, 780, 4680]]],
      [3, 2, 0, [['left', 'leg', 80, 80, 0, 3840]]],
    ]);
    const [first] = comparison.weeks[0]!.planned!.limbs;
    // 50 % for 6.5 min, three times.
    expect(first!.relativePressureTime?.value).toBeCloseTo(975, 9);
    expect(first!.exercises.map(({ percentLop }) => percentLop?.value)).toEqual([50]);
    expect(first!.occlusion).toEqual({ valueMmHg: 200, measured: true });
    expect(comparison.weeks[1]!.planned!.sessions.inputs).toEqual({ weekSessions: '2 + 1' });
  });

  it('passes over sessions without a load, and counts their restriction', () => {
    const weekOf = (...sessions: { plan: Plan; times?: number }[]) =>
      compareWeeks({ weeks: [{ sessions }] }).weeks[0]!.planned!.limbs[0]!;
    const both = weekOf({ plan: walk, times: 4 }, { plan: heavy(70) });
    expect([both.peakLoad?.value, both.volumeLoad?.value]).toEqual([70, 1680]);
    // Five times 2 min and four rests of 1 min, four times.
    expect(both.restrictionTime.value).toBe(4 * (5 * 120 + 4 * 60));
    const walking = weekOf({ plan: walk });
    expect([walking.peakLoad, walking.peakPercentOneRepMax, walking.volumeLoad]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('leaves the share of the maximum open where one is not known', () => {
    const stated = heavy(70, { oneRepMax: undefined, percentOneRepMax: undefined, load: 60 });
    const [week] = compareWeeks({ weeks: [{ sessions: [{ plan: stated }, { plan: light(20, 50) }] }] }).weeks;
    const [limb] = week!.planned!.limbs;
    expect([limb!.peakLoad?.value, limb!.peakPercentOneRepMax]).toEqual([60, undefined]);
  });

  it('keeps limbs and exercises apart: which minutes at which pressure', () => {
    const place = { cuffWidthCm: 10, percentLop: 50, measured: { valueMmHg: 200, method: 'doppler' } } as const;
    const leg = { ...place, limb: 'leg' } as const;
    const arm = { ...place, limb: 'arm', side: 'right' } as const;
    const limbs = [{ ...leg, side: 'left' }, { ...leg, side: 'right' }, arm] as const;
    const one = { tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, scheme: '2x10', load: 10 } as const;
    const plan = planOf(
      { side: 'left' },
      {
        limbs,
        exercises: [
          { ...one, name: 'leg extension', limb: 'leg', side: 'left', restriction: 'continuous' },
          { ...one, name: 'leg curl', limb: 'leg', side: 'left', restriction: 'continuous', percentLop: 70 },
          { ...one, name: 'leg press', limb: 'leg', side: 'right', restriction: 'none', load: 50 },
          { ...one, name: 'curl', limb: 'arm', restriction: 'intermittent' },
        ],
      },
    );
    const comparison = compareWeeks({ weeks: [{ sessions: [{ plan, times: 2 }] }] });
    const week = comparison.weeks[0]!.planned!;
    // 2 × 40 s and a rest of 30 s for each leg exercise; the arm’s cuff is down in the rest. 200 kg an exercise at 10 kg.
    expect(
      week.limbs.map(({ limb, side, restrictionTime, relativePressureTime, volumeLoad }) => [
        side,
        limb,
        restrictionTime.value,
        relativePressureTime?.value.toFixed(3),
        volumeLoad?.value,
      ]),
    ).toEqual([
      // Twice 110 s at 50 and at 70 %: 440 % · min.
      ['left', 'leg', 440, '440.000', 800],
      ['right', 'leg', 0, undefined, 2000],
      // Twice 80 s at 50 %.
      ['right', 'arm', 160, '133.333', 400],
    ]);
    expect(
      week.limbs.flatMap(({ exercises }) =>
        exercises.map(({ exercise, restrictionTime, percentLop }) => [
          exercise,
          restrictionTime.value,
          percentLop?.value,
        ]),
      ),
    ).toEqual([
      ['leg extension', 220, 50],
      ['leg curl', 220, 70],
      ['leg press', 0, undefined],
      ['curl', 160, 50],
    ]);
    const { document, disclaimers } = comparison;
    expect([document, ...disclaimers.map(({ code }) => code)]).toEqual([
      'week-comparison',
      'weeks-clear-no-one',
      'weeks-no-one-road',
      'one-thing-at-a-time',
    ]);
    expect(cite(comparison).map(({ id }) => id)).toContain('volume-methods-2009');
    const { equation, evidence, unit } = week.sessions;
    const { formula, symbols } = working(week.sessions)!;
    expect([equation, formula, symbols, evidence, unit]).toEqual([
      'sessions',
      'E',
      { E: 'weekSessions' },
      'definition',
      '{sessions}',
    ]);
  });

  // By hand: 30 + 12 = 42 repetitions of 4 s and a rest of 30 s are 198 s, at 18 instead of 20 kg; 6 × 25 = 150 AU.
  it('puts what was done beside what was planned, and never adds them up', () => {
    const plan = planOf({}, { date: '2026-03-02' }, { circumferenceCm: 56 });
    const record = recordOf(
      plan,
      [30, 12],
      { sessionRpe: 6, sessionS: 1500, pain: [{ site: 'joint', before: 1, after: 3 }] },
      { load: 18, heldMmHg: 90 },
    );
    const comparison = compareWeeks({ weeks: [{ sessions: [{ plan, times: 3 }], records: [record] }] });
    const [{ planned, done }] = comparison.weeks as [(typeof comparison.weeks)[number]];
    expect([planned!.sessions.value, done!.sessions.value]).toEqual([3, 1]);
    expect([planned!.sessionLoad, done!.sessionLoad?.value]).toEqual([undefined, 150]);
    const [limb] = done!.limbs;
    expect([limb!.peakLoad?.value, limb!.peakPercentOneRepMax?.value, limb!.volumeLoad?.value]).toEqual([18, 18, 756]);
    expect([limb!.restrictionTime.value, limb!.exercises[0]!.percentLop?.value]).toEqual([198, 45]);
    expect(limb!.worstPain).toEqual({ value: 3, site: 'joint' });
    expect([limb!.circumferenceCm, planned!.limbs[0]!.circumferenceCm]).toEqual([56, 56]);
    expect(planned!.limbs[0]).not.toHaveProperty('worstPain');
    const painless = recordOf(plan, [30], { pain: [] });
    expect(compareWeeks({ weeks: [{ records: [painless] }] }).weeks[0]!.done!.limbs[0]!.worstPain).toEqual({
      value: 0,
    });
  });

  it('shows the day of a measured occlusion pressure, and of the readings of an estimate', () => {
    const occlusionOf = (plan: Plan) => {
      const { planned, done } = compareWeeks({
        weeks: [{ sessions: [{ plan }], records: [recordOf(plan, [30])] }],
      }).weeks[0]!;
      return [planned!.limbs[0]!.occlusion, done!.limbs[0]!.occlusion];
    };
    const measured = { valueMmHg: 180, method: 'doppler', date: '2026-02-20' } as const;
    const known = { valueMmHg: 180, measured: true, date: '2026-02-20' };
    expect(occlusionOf(planOf({}, { date: '2026-03-01' }, { measured }))).toEqual([known, known]);
    const [planned, done] = occlusionOf(
      planOf({}, { date: '2026-03-01' }, { measured: undefined, circumferenceCm: 56 }),
    );
    expect(planned).toMatchObject({ measured: false, date: '2026-03-01' });
    expect(done).not.toHaveProperty('date');
  });

  it('says where load and pressure of an exercise with a cuff both go up, and only there', () => {
    const weekOf = (...plans: Plan[]) => ({ sessions: plans.map((plan) => ({ plan })) });
    const both = { exercise: 'leg extension', side: 'left', limb: 'leg' };
    expect(codesOf([weekOf(light(20, 50)), weekOf(light(25, 60))])).toEqual([{ ...both, from: 1, to: 2 }]);
    expect(codesOf([weekOf(light(20, 50)), weekOf(light(25, 50)), weekOf(light(25, 60))])).toEqual([]);
    expect(codesOf([weekOf(light(25, 60)), weekOf(light(30, 50))])).toEqual([]);
    // The highest of a week counts, wherever in it it stands.
    expect(codesOf([weekOf(light(20, 50), light(30, 60)), weekOf(light(25, 55))])).toEqual([]);
    expect(codesOf([weekOf(light(20, 50)), weekOf(walk), weekOf(light(25, 50))])).toEqual([]);
  });

  it('names jumps, and passes over a deload week', () => {
    const weekOf = (plan: Plan, more: object = {}) => ({ sessions: [{ plan }], ...more });
    const message = (...weeks: ReturnType<typeof weekOf>[]) =>
      compareWeeks({ weeks }).cautions.map(({ code, values }) => [code, values!['points'] ?? values!['percent']]);
    expect(message(weekOf(heavy(60)), weekOf(heavy(65)))).toEqual([]);
    expect(message(weekOf(heavy(60)), weekOf(heavy(66)))).toEqual([['load-jump', 6]]);
    expect(message(weekOf(light(20, 50)), weekOf(light(20, 60)))).toEqual([]);
    expect(message(weekOf(light(20, 50)), weekOf(light(20, 65)))).toEqual([['pressure-jump', 15]]);
    const stated = (load: number) => heavy(60, { oneRepMax: undefined, percentOneRepMax: undefined, load });
    expect(message(weekOf(stated(50)), weekOf(stated(55)))).toEqual([]);
    expect(message(weekOf(stated(50)), weekOf(stated(60)))).toEqual([['load-jump-percent', 20]]);
    // Done is compared with done, planned with planned: one session on record of three planned is no lighter week.
    const onRecord = { sessions: [{ plan: heavy(60), times: 3 }], records: [recordOf(heavy(60), [8, 8, 8])] };
    const lighter = { sessions: [{ plan: heavy(60), times: 2 }], deload: true };
    expect(compareWeeks({ weeks: [onRecord, lighter] }).cautions).toEqual([]);
    expect(compareWeeks({ weeks: [lighter, lighter], firstWeek: 8 }).weeks.map(({ week }) => week)).toEqual([8, 9]);
    const deload = weekOf(heavy(40), { deload: true });
    expect(message(weekOf(heavy(60)), deload, weekOf(heavy(65)))).toEqual([]);
    expect(message(weekOf(heavy(60)), weekOf(heavy(40)), weekOf(heavy(65)))).toEqual([['load-jump', 25]]);
    expect(message(weekOf(heavy(60)), weekOf(heavy(60), { deload: true }))[0]![0]).toBe('deload-not-lighter');
  });

  it('compares your own goals with the last week, and clears no one', () => {
    const goal = (more: object) => ({ name: 'goal', limb: 'leg', side: 'left', ...more });
    const { goals } = compareWeeks({
      weeks: [{ sessions: [{ plan: light(20, 50) }] }, { sessions: [{ plan: light(25, 50), times: 3 }] }],
      goals: [
        goal({ measure: 'peakPercentOneRepMax', atLeast: 25 }),
        goal({ measure: 'peakLoadKg', atLeast: 30, exercise: 'leg extension' }),
        goal({ measure: 'percentLop', atMost: 40 }),
        goal({ measure: 'restrictionMin', atMost: 20 }),
        goal({ measure: 'worstPain', atMost: 2 }),
        goal({ measure: 'volumeLoadKg', atLeast: 5625, atMost: 5625 }),
        { name: 'three sessions', measure: 'sessions', atLeast: 3 },
        { name: 'hop test', atLeast: 90 },
        { name: 'hop test', found: 92, atLeast: 90 },
      ] as never,
    });
    expect(goals.map(({ outcome, found }) => [outcome, found])).toEqual([
      ['met', 25],
      ['not-met', 25],
      ['not-met', 50],
      ['met', 19.5],
      ['not-measured', undefined],
      ['met', 5625],
      ['met', 3],
      ['not-measured', undefined],
      ['met', 92],
    ]);
    const page = explain(
      compareWeeks({ weeks: [{ sessions: [{ plan: walk }] }], goals: [{ name: 'hop test', atLeast: 9 }] }),
    );
    expect(page).toContain('hop test: not measured');
    expect(page).not.toMatch(/cleared|\bsafe\b/);
  });

  it('names every field that is wrong', () => {
    const plan = light(20, 50);
    const issues = (input: unknown) => issuesOf(compareWeeks, input);
    expect(issues({})).toEqual(['weeks missing']);
    expect(() => compareWeeks({} as never)).toThrow(
      'weeks is missing: it must be a list of weeks, each with its sessions or records',
    );
    expect(() => compareWeeks({ weeks: [{}] } as never)).toThrow(
      'weeks[0].sessions is missing: it must be planned sessions, or records, or both',
    );
    expect(() => compareWeeks({ weeks: [{ sessions: [{ plan: 5 }] }] } as never)).toThrow(/a document of this library/);
    expect(() => compareWeeks({ weeks: [{ sessions: [{ plan, times: 22 }] }] })).toThrow(/from 1 to 21/);
    expect(issues({ weeks: [] })).toEqual(['weeks wrong-type']);
    expect(issues({ weeks: [{}] })).toEqual(['weeks.0.sessions missing']);
    expect(issues({ weeks: [{ sessions: [{ times: 0 }, { plan, times: 1.5 }, { plan, often: 2 }] }] })).toEqual([
      'weeks.0.sessions.0.plan missing',
      'weeks.0.sessions.0.times out-of-range',
      'weeks.0.sessions.1.times not-whole',
      'weeks.0.sessions.2.often unknown-field',
    ]);
    const goals = [
      { name: 'a' },
      { name: 'b', measure: 'peakPercentOneRepMax', atLeast: 2 },
      { name: 'c', limb: 'leg', atMost: 1 },
    ];
    expect(issues({ weeks: [{ sessions: [{ plan }], deload: 'yes' }], goals })).toEqual([
      'weeks.0.deload wrong-type',
      'goals.0.atLeast missing',
      'goals.1.limb missing',
      'goals.1.side missing',
      'goals.2.limb wrong-relation',
    ]);
    expect(issues({ weeks: [{ records: [plan] }] })).toEqual(['weeks.0.records.0.document not-one-of']);
    for (const [week, issue] of [
      [{ records: null }, 'weeks.1.records wrong-type'],
      [{ records: [] }, 'weeks.1.sessions missing'],
    ] as const)
      expect(issues({ weeks: [{ sessions: [{ plan }] }, week] })).toEqual([issue]);
    expect(issues({ weeks: [{ sessions: [{ plan: { ...plan, schemaVersion: 3 } }, { plan: {} }] }] })).toEqual([
      'weeks.0.sessions.0.plan.schemaVersion newer-document',
      'weeks.0.sessions.1.plan.document missing',
    ]);
  });
});
