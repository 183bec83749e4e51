import type { PlanExercise } from '../../src/plan/index.js';
import { describe, expect, it } from 'vitest';
import {
  expandDocument,
  nextSession,
  planSession,
  recordSession,
  trainingDays,
  type Plan,
  type PlanRequest,
  type ProgressionRequest,
  type SessionRecord,
} from '../../src/plan/index.js';
import { codesOf, expectClose, message } from '../support/invariants.js';
import { jointPain, planOf, recordOf } from '../support/plans.js';

const plan = planOf({ percentOneRepMax: 20, step: 2.5 });
const all = [30, 15, 15, 15];
const calm = jointPain(1, 1, 1, 1);

describe('a proposal', () => {
  type More = Partial<ProgressionRequest>;
  const propose = (of: Plan, records: readonly SessionRecord[], more: More = {}) =>
    nextSession({ plan: of, records, rule: 'all-repetitions', date: '2026-03-09', ...more });
  const first = (of: Plan, records: readonly SessionRecord[], more: More = {}) => propose(of, records, more).items[0]!;
  const reasons = (of: Plan, records: readonly SessionRecord[], more: More = {}) =>
    message(first(of, records, more).reasons);
  const day = (date: string, repetitions: readonly number[] = all, request: object = calm, item: object = {}) =>
    recordOf(plan, repetitions, { date, ...request }, item);
  const goal = '30-15-15-15';

  it('says what it looked at', () => {
    expect(reasons(plan, [day('2026-03-02')])).toEqual([['rule-met', { values: { done: goal, goal } }]]);
    expect(reasons(plan, [day('2026-03-02', [30, 15, 15, 14])])).toEqual([
      ['rule-not-met', { values: { done: '30-15-15-14', goal } }],
    ]);
    expect(reasons(plan, [day('2026-03-02', [30, 15, 15])])).toEqual([
      ['rule-not-met', { values: { done: '30-15-15', goal } }],
    ]);
    const two = { rule: 'two-for-two' } as const;
    const over = [30, 15, 15, 17];
    // Repetitions beyond the goal are looked at above 30 % of the maximum.
    const heavy = planOf({ percentOneRepMax: 40, step: 5 });
    const on = (date: string, repetitions: readonly number[]) => recordOf(heavy, repetitions, { date, ...calm });
    expect(reasons(heavy, [on('2026-03-02', over)], two)).toEqual([
      ['too-few-records', { values: { needed: 2, found: 1 } }],
    ]);
    expect(reasons(heavy, [on('2026-03-02', over), on('2026-03-04', over)], two)).toEqual([
      ['rule-met', { values: { done: '30-15-15-17; 30-15-15-17', goal } }],
      // 5 of 40 kg are 12.5 %, and 5 points of 100 kg.
      ['step-in-points', { values: { next: 45, unit: 'kg', percent: 12.5, largest: 10, points: 5 } }],
      ['raised-above-guidance', { values: { percentOneRepMax: 45, low: 20, high: 40 } }],
    ]);
    expect(codesOf(first(heavy, [on('2026-03-02', over), on('2026-03-04', [30, 15, 15, 16])], two).reasons)).toEqual([
      'rule-not-met',
    ]);
    expect(reasons(plan, [day('2026-03-02')], two)).toEqual([
      ['over-goal-not-applied', { values: { percentOneRepMax: 20, most: 30 } }],
    ]);
    expect(reasons(plan, [day('2026-03-02', all, {})])[1]).toEqual(['pain-not-recorded']);
    expect(reasons(plan, [day('2026-03-02', all, { pain: [] })])).toHaveLength(1);
    expect(reasons(plan, [day('2026-03-02', all, jointPain(1, 1, 1))])[1]).toEqual(['pain-next-morning-not-recorded']);
    expect(reasons(plan, [day('2026-03-02')], { date: undefined })[1]).toEqual(['break-not-known']);
  });

  it('goes by the last day, and by an exercise that was done as it is planned', () => {
    expect(reasons(plan, [day('2026-03-02', all, calm, { load: 25 })])).toEqual([
      ['other-load-recorded', { values: { done: 25, planned: 20, unit: 'kg' } }],
    ]);
    const bare = planOf({ restriction: 'none', step: 2.5 });
    expect(reasons(bare, [day('2026-03-02')])).toEqual([
      ['other-restriction-recorded', { values: { done: 'continuous', planned: 'none' } }],
    ]);
    const part = (restPercentLop: number) => planOf({ restriction: 'partial', restPercentLop, step: 2.5 });
    expect(reasons(part(20), [day('2026-03-02')])).toEqual([
      ['other-restriction-recorded', { values: { done: 'continuous', planned: 'partial' } }],
    ]);
    expect(reasons(part(20), [recordOf(part(30), all, calm)])).toEqual([
      ['other-pressure-recorded', { values: { done: 30, planned: 20 } }],
    ]);
    const higher = planOf({ percentOneRepMax: 20, step: 2.5 }, {}, { percentLop: 60 });
    expect(reasons(higher, [day('2026-03-02')])).toEqual([
      ['other-pressure-recorded', { values: { done: 50, planned: 60 } }],
    ]);
    const pain = day('2026-03-02', all, jointPain(0, 1, 0, 1));
    expect([first(plan, [pain]).action, first(plan, [pain, day('2026-03-04')]).action]).toEqual([
      'back-off',
      'raise-load',
    ]);
    expect(first(plan, [day('2026-03-04'), pain]).action).toBe('raise-load');
    expect(first(plan, [day('2026-03-04', [30]), day('2026-03-04')]).action).toBe('raise-load');
    expect(first(plan, [day('2026-03-04'), day('2026-03-04', [30])]).action).toBe('repeat');
  });

  it('holds, backs off and stops for what was felt, most severe first', () => {
    const felt = (request: object, item: object = {}) => {
      const { action, reasons: why, load } = first(plan, [day('2026-03-02', all, request, item)]);
      return [action, codesOf(why), load!.to];
    };
    const worst = { ...jointPain(1, 3, 3), symptoms: ['symptom-sharp-pain'] };
    expect(felt(worst, { stoppedEarly: true })).toEqual(['stop', ['symptom-clinician-first'], undefined]);
    expect(felt({ ...worst, symptoms: [] }, { stoppedEarly: true })).toEqual([
      'back-off',
      ['pain-back-off-rose'],
      17.5,
    ]);
    expect(felt(jointPain(1, 3, 1), { stoppedEarly: true })).toEqual([
      'repeat',
      ['pain-hold', 'hold-stopped-early'],
      20,
    ]);
    expect(felt(jointPain(1, 1), { stoppedEarly: true })).toEqual(['repeat', ['hold-stopped-early'], 20]);
    // Pain of which the start is not known is judged by its height.
    expect(felt(jointPain(undefined, 3, 3))).toEqual(['repeat', ['pain-hold'], 20]);
    expect(felt({ ...jointPain(1, 4, 1), symptoms: ['symptom-tingling', 'symptom-soreness'], sessionRpe: 10 })).toEqual(
      [
        'back-off',
        ['pain-back-off', 'back-off-symptom', 'back-off-symptom', 'back-off-effort', 'pressure-lower'],
        17.5,
      ],
    );
  });

  it('raises by what there is to lift', () => {
    const tooFar = ['raise-repetitions', 100, 'load-step-too-large', 'repetitions-first'];
    const raised = (exercise: object, rule: ProgressionRequest['rule'] = 'all-repetitions', over = 0) => {
      const of = planOf({ step: undefined, ...exercise } as never);
      const done = all.map((count, index) => count + (index === 3 ? over : 0));
      const records = ['2026-03-02', '2026-03-04'].map((date) =>
        recordOf(of, done, { date, ...calm }, { lastSetToFailure: true }),
      );
      const { action, load, reasons: why } = first(of, records, { rule });
      const said = codesOf(why).filter((code) => code !== 'raised-above-guidance');
      return [action, load!.to, ...said.slice(1)];
    };
    // 100 % of 100 kg is 100 kg: 2.5 % is 2.5 kg, 2 % is 2 kg; 5 points of the maximum are 5 kg.
    expect(raised({ percentOneRepMax: 100, step: 2.5 }, 'two-for-two', 2)).toEqual(['raise-load', 102.5]);
    expect(raised({ percentOneRepMax: 100, step: 1 }, 'two-for-two', 2)).toEqual(['raise-load', 103]);
    expect(raised({ percentOneRepMax: 100, step: 5 }, 'two-for-two', 2)).toEqual(['raise-load', 105]);
    expect(raised({ percentOneRepMax: 100, step: 10 }, 'two-for-two', 2)).toEqual(tooFar);
    expect(raised({ percentOneRepMax: 100, step: 1 }, 'two-to-ten-percent', 1)).toEqual(['raise-load', 102]);
    expect(raised({ percentOneRepMax: 100, step: 1 }, 'two-to-ten-percent', 0)).toEqual(['repeat', 100]);
    expect(raised({ percentOneRepMax: 100, available: [100, 102, 103] }, 'two-for-two', 2)).toEqual([
      'raise-load',
      103,
    ]);
    expect(raised({ percentOneRepMax: 100, available: [100, 102] }, 'two-for-two', 2)).toEqual([
      'raise-repetitions',
      100,
      'no-heavier-load',
      'repetitions-first',
    ]);
    expect(raised({ percentOneRepMax: 100, available: [100, 106] }, 'two-for-two', 2)).toEqual(tooFar);
    expect(raised({ percentOneRepMax: 20 })).toEqual(['raise-load', undefined, 'step-not-known']);
    expect(raised({ percentOneRepMax: 100 }, 'two-for-two', 2)).toEqual(['raise-load', 102.5, 'step-not-known']);
    // The trial’s step of 5 kg, where the plan names none, and not in pounds.
    expect(raised({ percentOneRepMax: 20 }, 'set-four-over-15', 1)).toEqual(['raise-load', 25]);
    expect(raised({ percentOneRepMax: 20, step: 2.5 }, 'set-four-over-15', 1)).toEqual(['raise-load', 22.5]);
    expect(raised({ percentOneRepMax: 20, unit: 'lb' }, 'set-four-over-15', 1)[1]).toBeUndefined();
    const plates = [
      { mass: 1.25, count: 2 },
      { mass: 5, count: 2 },
    ];
    expect(raised({ percentOneRepMax: 20, bar: 20, plates })).toEqual(['raise-load', 22.5]);
    expect(raised({ percentOneRepMax: 32.5, bar: 20, plates })).toEqual([
      'raise-repetitions',
      32.5,
      'no-heavier-load',
      'repetitions-first',
    ]);
    // 23 kg with collars of 0.5 kg: the next are 30.5 kg, 7.5 points.
    expect(raised({ percentOneRepMax: 23, bar: 20, collars: 0.5, plates }).slice(0, 3)).toEqual([
      'raise-repetitions',
      23,
      'load-step-too-large',
    ]);
    // Exactly as much as the rule asks for is enough; the lightest of what is enough is taken.
    expect(raised({ percentOneRepMax: 100, available: [110, 105, 102.5, 100] }, 'two-for-two', 2)).toEqual([
      'raise-load',
      102.5,
    ]);
    const pairs = [{ mass: 1.25 }, { mass: 20 }];
    expect(raised({ percentOneRepMax: 100, bar: 20, plates: pairs }, 'two-for-two', 2)).toEqual(['raise-load', 102.5]);
    expect(raised({ percentOneRepMax: 100, bar: 20, plates: [{ mass: 2 }] })).toEqual(['raise-load', 104]);
  });

  it('backs off to what is lighter, and to nothing where nothing is', () => {
    const back = (exercise: object) => {
      const of = planOf({ step: undefined, ...exercise } as never);
      const { action, load, reasons: why } = first(of, [recordOf(of, all, jointPain(0, 0, 2))]);
      return [action, load!.to, ...message(why).slice(1)];
    };
    expect(back({ available: [15, 5, 10, 20] })).toEqual(['back-off', 15]);
    // Then a set goes.
    const none = (load: number): unknown[] => [
      'back-off',
      load,
      ['no-lighter-load', { values: { load, unit: 'kg' } }],
      ['fewer-sets', { values: { from: '30-15-15-15', to: '30-15-15' } }],
    ];
    expect(back({ available: [20, 25] })).toEqual(none(20));
    expect(back({ step: 2.5, oneRepMax: { load: 12.5 } })).toEqual(none(2.5));
    expect(back({ step: 2, oneRepMax: { load: 12.5 } })).toEqual(none(2));
    expect(back({ step: 1, oneRepMax: { load: 10 } })).toEqual(['back-off', 1]);
    expect(back({ bar: 0, plates: [{ mass: 10 }] })).toEqual(none(20));
    expect(back({})).toEqual(['back-off', undefined, ['step-not-known']]);
  });

  it('looks at every session of the last day', () => {
    const two = (one: object, other: object, item: object = {}) => {
      const [a, b] = [one, other].map((felt, at) => day('2026-03-02', all, { sessionOfDay: at + 1, ...felt }, item));
      return [a!, b!].map((_, at, pair) => {
        const { action, reasons: why } = first(plan, at === 0 ? pair : [...pair].reverse());
        return [action, ...codesOf(why)];
      });
    };
    const same = (expected: string[]) => [expected, expected];
    expect(two(calm, jointPain(0, 0, 2))).toEqual(same(['back-off', 'pain-back-off-rose']));
    expect(two(calm, jointPain(1, 2, 1, 1))).toEqual(same(['repeat', 'pain-hold']));
    expect(two(calm, {})).toEqual(same(['raise-load', 'rule-met', 'pain-not-recorded']));
    expect(two(calm, calm)).toEqual(same(['raise-load', 'rule-met']));
    // The end of one session and the start of another are no change.
    expect(two(jointPain(undefined, 1, 1), jointPain(0))).toEqual(
      same(['raise-load', 'rule-met', 'pain-next-morning-not-recorded']),
    );
  });

  it('counts repetitions in every set, and knows a maximum where the plan does', () => {
    const timed = planOf({ sets: [{ repetitions: 10, restS: 30 }, { durationS: 60 }], restS: undefined });
    const record = recordSession({
      plan: timed,
      date: '2026-03-02',
      items: [{ ...timed.items[0]!, sets: [{ repetitions: 10 }, { durationS: 60 }] }].map(
        ({ exercise, limb, side, sets }) => ({ exercise, limb, side, sets }),
      ),
    });
    expect(reasons(timed, [record])).toEqual([['rule-counts']]);
    const own = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, load: 20 });
    const item = first(own, [recordOf(own, all, calm)]);
    expect(item).not.toHaveProperty('percentOneRepMax');
    expect([item.action, item.load]).toEqual(['raise-load', { from: 20, unit: 'kg' }]);
    expect(
      message(first(planOf({ available: [20] }), [recordOf(planOf({ available: [20] }), all, calm)]).reasons)[1],
    ).toEqual(['no-heavier-load', { values: { load: 20, unit: 'kg' } }]);
  });

  it('asks the fourth set to be taken to failure, and the record to say so', () => {
    const rule = 'set-four-over-15';
    const set = (repetitions: readonly number[], lastSetToFailure?: boolean) =>
      reasons(plan, [day('2026-03-02', repetitions, calm, { lastSetToFailure })], { rule }).map(([code]) => code);
    expect(set([30, 15, 15, 16], true)).toEqual(['rule-met']);
    expect(set([30, 15, 15, 16], false)).toEqual(['rule-not-met']);
    expect(set([30, 15, 15, 16])).toEqual(['failure-not-recorded']);
    expect(set([30, 15, 15, 15], true)).toEqual(['rule-not-met']);
    expect(set([30, 15, 16], true)).toEqual(['rule-not-met']);
  });

  it('says by how much, of the maximum and of occlusion pressure', () => {
    const item = first(plan, [day('2026-03-02')]);
    expect(item).toMatchObject({
      load: { from: 20, to: 22.5, unit: 'kg' },
      percentOneRepMax: { from: 20, to: 22.5 },
      percentLop: { from: 50, to: 50 },
      cuffMmHg: { from: 100, to: 100 },
    });
    // 200 lb of 100 kg: 90.7 %.
    const pounds = planOf({ percentOneRepMax: 20, unit: 'lb', step: 5 });
    const inPounds = first(pounds, [recordOf(pounds, all, calm)]);
    expect(inPounds.load).toEqual({ from: 45, to: 50, unit: 'lb' });
    expectClose(inPounds.percentOneRepMax!.from, 45 * 0.45359237);
    expectClose(inPounds.percentOneRepMax!.to!, 50 * 0.45359237);
    const pressed = first(plan, [day('2026-03-02')], { nextPercentLop: 60 });
    expect(pressed).toMatchObject({ action: 'raise-pressure', cuffMmHg: { from: 100, to: 120 }, load: { to: 20 } });
    expect(message(pressed.reasons)[1]).toEqual(['pressure-instead', { values: { percentLop: 60 } }]);
    const same = first(plan, [day('2026-03-02')], { nextPercentLop: 50 });
    expect(message(same.reasons)[1]).toEqual(['pressure-not-higher', { values: { percentLop: 50, held: 100 } }]);
    // A ceiling and a gauge hold for the next pressure as for this one.
    const held = planOf({ step: 2.5 }, {}, { ceilingMmHg: 105, gaugeStepMmHg: 5 });
    expect(first(held, [recordOf(held, all, calm)], { nextPercentLop: 60 }).cuffMmHg).toEqual({ from: 100, to: 105 });
    const stopped = first(plan, [day('2026-03-02', all, { symptoms: ['symptom-sharp-pain'] })]);
    expect(stopped.percentLop).toEqual({ from: 50 });
    expect(stopped.percentOneRepMax).toEqual({ from: 20 });
  });

  it('asks to measure again, each thing once', () => {
    const asks = (of: Plan, records: readonly SessionRecord[], more: More = {}) =>
      nextSession({ plan: of, records, rule: 'all-repetitions', ...more }).measureAgain.map(
        ({ what, due, code, values, evidence, source }) => [
          what.split('-')[0],
          due,
          code,
          ...Object.values(values ?? {}),
          evidence,
          source,
        ],
      );
    const weeks = ['occlusion', false, 'measure-occlusion-weeks', 'practice', 'time-of-day-2017'];
    const maximum = ['one', false, 'test-maximum-weeks', 'published', 'retest-schedule'];
    expect(asks(plan, [day('2026-03-02')])).toEqual([weeks, maximum]);
    const days = (date: string | undefined) =>
      asks(plan, [day(date ? '2026-03-02' : '2026-03-30')], {
        oneRepMaxTestedOn: '2026-03-02',
        ...(date && { date }),
      })[1];
    expect(days(undefined)).toEqual(['one', true, 'test-maximum-due', 28, 'published', 'retest-schedule']);
    expect(days('2026-03-29')).toEqual(maximum);
    const changed = (what: string) => [
      'occlusion',
      true,
      'measure-occlusion-changed',
      'left',
      'leg',
      what,
      'practice',
      undefined,
    ];
    const now = planOf({}, {}, { circumferenceCm: 57 });
    const before = (request: object, limb: object) => recordOf(planOf({}, request, limb), all);
    expect(asks(now, [before({ posture: 'supine' }, {})])[0]).toEqual(changed('posture'));
    expect(asks(now, [before({}, { cuffWidthCm: 12 })])[0]).toEqual(changed('cuff'));
    expect(asks(now, [before({}, { circumferenceCm: 55 })])[0]).toEqual(changed('limb-size'));
    for (const same of [{ circumferenceCm: 57 }, {}]) expect(asks(now, [before({}, same)])[0]).toEqual(weeks);
    // The last session of the limb is what counts.
    const old = before({ posture: 'supine' }, {});
    expect(asks(now, [old, recordOf(now, all, { date: '2026-03-09' })])[0]).toEqual(weeks);
    const guessed = planOf({}, {}, { measured: undefined, circumferenceCm: 55 });
    expect(asks(guessed, [recordOf(guessed, all)])[0]).toEqual([
      'occlusion',
      true,
      'measure-occlusion-estimated',
      'left',
      'leg',
      expandDocument(guessed).items[0]!.occlusion!.evidence,
      undefined,
    ]);
    const free = planOf({ restriction: 'none' });
    expect(asks(free, [recordOf(free, all)])).toEqual([maximum]);
    expect(asks(free, [recordOf(planOf({ restriction: 'none' }, { posture: 'supine' }), all)])).toEqual([maximum]);
    const girthless = recordOf(planOf({}, {}, { circumferenceCm: 55 }), all);
    expect(asks(plan, [girthless])[0]).toEqual(weeks);
    // Of two legs the right one alone changed its cuff, and was estimated.
    const [own] = plan.request.limbs;
    const legs = (right: object) =>
      planSession({ ...plan.request, limbs: [own!, { ...own!, side: 'right', ...right }] } as PlanRequest);
    const after = legs({ cuffWidthCm: 12, measured: undefined, circumferenceCm: 55 });
    const sets = all.map((repetitions) => ({ repetitions }));
    const both = (of: Plan, sides: readonly ('left' | 'right')[]) =>
      recordSession({
        plan: of,
        date: '2026-03-02',
        items: sides.map((side) => ({ exercise: 'leg extension', limb: 'leg', side, sets })),
      });
    expect(asks(after, [both(legs({}), ['left', 'right'])])).toEqual([
      ['occlusion', true, 'measure-occlusion-changed', 'right', 'leg', 'cuff', 'practice', undefined],
      [
        'occlusion',
        true,
        'measure-occlusion-estimated',
        'right',
        'leg',
        expandDocument(after).items[1]!.occlusion!.evidence,
        undefined,
      ],
      weeks,
      maximum,
    ]);
    // A limb that was not trained has no cuff to compare with.
    expect(asks(after, [both(legs({}), ['left'])]).slice(1)).toEqual([weeks, maximum]);
    const unloaded = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true });
    expect(asks(unloaded, [recordOf(unloaded, all)])).toEqual([weeks]);
  });

  it('tells the same exercise on two limbs apart, and listed twice', () => {
    const [exercise] = plan.request.exercises;
    const [limb] = plan.request.limbs;
    const two = planSession({
      ...plan.request,
      limbs: [limb!, { ...limb!, side: 'right' }],
      exercises: [
        { ...exercise!, side: 'left', step: 2.5 },
        { ...exercise!, side: 'left', step: 5, percentOneRepMax: 30 },
        { ...exercise!, side: 'right', step: 4 },
      ] as PlanExercise[],
    });
    const sets = all.map((repetitions) => ({ repetitions }));
    const items = two.items.map(({ exercise: name, limb: on, side }) => ({ exercise: name, limb: on, side, sets }));
    const record = recordSession({ plan: two, date: '2026-03-02', items, ...calm });
    expect(propose(two, [record]).items.map(({ side, load }) => [side, load!.from, load!.to])).toEqual([
      ['left', 20, 22.5],
      ['left', 30, 35],
      ['right', 20, 24],
    ]);
  });
});

describe('a week of records', () => {
  it('has each limb that a cuff was up on, and the load of each day', () => {
    const felt = { sessionRpe: 5, sessionS: 1200 };
    const arm = planOf({ limb: 'arm' }, {}, { limb: 'arm', side: 'right', cuffWidthCm: 5 });
    const free = planOf({ restriction: 'none' });
    const records = [
      recordOf(plan, all, { ...felt, date: '2026-03-08' }),
      recordOf(arm, all, { ...felt, date: '2026-03-02' }),
      recordOf(free, all, { ...felt, date: '2026-03-02' }),
      recordOf(plan, all, { ...felt, date: '2026-03-09' }),
    ];
    const days = trainingDays({ records, from: '2026-03-02' });
    // 5 × 20 min.
    expect(days.map(({ loadAu, sessions, restrictedS }) => [loadAu, sessions, restrictedS])).toEqual([
      [200, 2, { rightArm: 390 }],
      ...Array<unknown>(5).fill([0, 0, {}]),
      [100, 1, { leftLeg: 390 }],
    ]);
  });
});
