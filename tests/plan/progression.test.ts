import { describe, expect, it } from 'vitest';
import { isInputError } from '../../src/index.js';
import { cite, explain, messages } from '../../src/text/index.js';
import {
  progression,
  nextStage,
  nextSession,
  progressionRules,
  type ProgressionRequest,
} from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { codesOf as codes } from '../support/invariants.js';
import { jointPain, planOf, proposing, recordOf } from '../support/plans.js';

const plan = planOf({ percentOneRepMax: 20, step: 2.5 });
const all = [30, 15, 15, 15];
const { propose, first } = proposing(plan);

describe('nextSession', () => {
  it('is plain JSON with the rule, its grade and what it says', () => {
    const proposal = propose([recordOf(plan, all)]);
    expectPlainJson(proposal);
    expect(proposal).toMatchObject({
      document: 'proposal',
      rule: { id: 'all-repetitions', evidence: 'practice', text: messages['rule-all-repetitions'] },
    });
    expect(codes(proposal.disclaimers)).toContain('proposal-clears-no-one');
    expect(proposal.items[0]).toMatchObject({
      action: 'raise-load',
      load: { from: 20, to: 22.5, unit: 'kg' },
      percentOneRepMax: { from: 20, to: 22.5 },
      percentLop: { from: 50, to: 50 },
      cuffMmHg: { from: 100, to: 100 },
    });
  });

  it('raises the pressure instead of the load when asked to, with the gauge of the plan', () => {
    const gauged = planOf({ percentOneRepMax: 20, step: 2.5 }, {}, { gaugeStepMmHg: 15 });
    const item = first([recordOf(gauged, all)], { plan: gauged, nextPercentLop: 60 });
    expect(item).toMatchObject({
      action: 'raise-pressure',
      load: { from: 20, to: 20 },
      percentLop: { from: 50, to: 60 },
      cuffMmHg: { from: 90, to: 120 },
    });
    const near = planOf({ percentOneRepMax: 20, step: 2.5 }, {}, { percentLop: 80 });
    const high = propose([recordOf(near, all)], { plan: near, nextPercentLop: 90 });
    expect(codes(high.cautions)).toContain('percent-above-usual');
  });

  it('raises the load where the pressure cannot go up, and says why', () => {
    const same = first([recordOf(plan, all)], { nextPercentLop: 50 });
    expect(same).toMatchObject({ action: 'raise-load', percentLop: { to: 50 } });
    expect(codes(same.reasons)).toContain('pressure-not-higher');
    const bare = planOf({ percentOneRepMax: 20, step: 2.5, restriction: 'none' });
    const free = first([recordOf(bare, all)], { plan: bare, nextPercentLop: 60 });
    expect(free).toMatchObject({ action: 'raise-load' });
    expect(free).not.toHaveProperty('cuffMmHg');
    expect(codes(free.reasons)).toContain('pressure-no-cuff');
  });

  it('raises nothing after a break as long as the caller says, and refuses a day before the last record', () => {
    const records = [recordOf(plan, all)];
    const longBreakDays = 14;
    expect(first(records, { date: '2026-03-15', longBreakDays }).action).toBe('raise-load');
    const item = first(records, { date: '2026-03-16', longBreakDays });
    expect(item).toMatchObject({ action: 'repeat', load: { from: 20, to: 20 } });
    expect(item.reasons).toMatchObject([{ code: 'hold-long-break', values: { days: 14, limit: 14 } }]);
    // Without a day of the next session no break is looked for, and a reason says so.
    expect(codes(first(records).reasons)).toContain('break-not-known');
    expect(codes(first(records, { date: '2026-03-15', longBreakDays }).reasons)).not.toContain('break-not-known');
    const stopped = [recordOf(plan, all, { symptoms: ['symptom-sharp-pain'] })];
    expect(first(stopped, { date: '2026-05-01' }).action).toBe('stop');
    expect(() => propose(records, { date: '2026-03-01' })).toThrow(
      'date must be not before 2026-03-02, the day of the last record',
    );
    expect(() => propose(records, { longBreakDays })).toThrow(/date is missing/);
  });

  it('is of the day of its plan or later', () => {
    const later = planOf({ percentOneRepMax: 20, step: 2.5 }, { date: '2026-03-09' });
    const of = (date: string) =>
      nextSession({ plan: later, records: [recordOf(plan, all)], rule: 'all-repetitions', date });
    expect(of('2026-03-09').items).toHaveLength(1);
    expect(() => of('2026-03-08')).toThrow('date must be not before 2026-03-09, the day of the plan');
  });

  it('stops at a sign to stop at, whatever was done', () => {
    const proposal = propose([recordOf(plan, all, { symptoms: ['symptom-numbness-stays'] })], { nextPercentLop: 60 });
    expect(proposal.items[0]!.action).toBe('stop');
    expect(proposal.items[0]!.load).toEqual({ from: 20, unit: 'kg' });
    expect(proposal.cautions[0]).toMatchObject({ severity: 'stop', code: 'symptom-clinician-first' });
    const morning = recordOf(plan, all, { symptoms: ['symptom-chest-pain'] });
    expect(first([morning, recordOf(plan, [30, 15, 15, 16])]).action).toBe('stop');
    expect(first([morning, recordOf(plan, all, { date: '2026-03-09' })]).action).toBe('stop');
  });

  it('backs off by a step when pain stayed up, and holds when it rose and settled, or after an early stop', () => {
    expect(first([recordOf(plan, all, jointPain(2, 3, 3))])).toMatchObject({
      action: 'back-off',
      load: { from: 20, to: 17.5 },
    });
    expect(first([recordOf(plan, all, jointPain(2, 3, 2))])).toMatchObject({
      action: 'repeat',
      load: { to: 20 },
    });
    expect(first([recordOf(plan, all, {}, { stoppedEarly: true })])).toMatchObject({ action: 'repeat' });
    const unknown = planOf({ percentOneRepMax: 20 });
    const back = first([recordOf(unknown, all, jointPain(0, 0, 2))], { plan: unknown });
    expect(back).toMatchObject({ action: 'back-off', load: { from: 20, unit: 'kg' } });
    expect(back.load).not.toHaveProperty('to');
    expect(codes(back.reasons)).toContain('step-not-known');
  });

  it('knows the loads that can be set', () => {
    const rack = planOf({ percentOneRepMax: 20, available: [10, 20, 24] });
    const at = (repetitions: readonly number[], more = {}) =>
      first([recordOf(rack, repetitions, more)], { plan: rack });
    expect(at(all).load!.to).toBe(24);
    expect(at(all, jointPain(0, 0, 2)).load!.to).toBe(10);
    const only = planOf({ percentOneRepMax: 20, available: [20] });
    const stuck = first([recordOf(only, all)], { plan: only });
    expect([stuck.action, codes(stuck.reasons)]).toEqual([
      'raise-repetitions',
      ['rule-met', 'pain-not-recorded', 'break-not-known', 'no-heavier-load', 'repetitions-first'],
    ]);
    const low = first([recordOf(only, all, jointPain(0, 0, 2))], { plan: only });
    expect(codes(low.reasons)).toContain('no-lighter-load');
  });

  it('keeps pounds', () => {
    const pounds = planOf({ oneRepMax: { load: 200, unit: 'lb' }, percentOneRepMax: 20, step: 5 });
    const item = first([recordOf(pounds, all)], { plan: pounds });
    expect(item.load).toEqual({ from: 40, to: 45, unit: 'lb' });
    const free = planOf({ oneRepMax: { load: 200, unit: 'lb' }, percentOneRepMax: 20 });
    const record = recordOf(free, [30, 15, 15, 16], {}, { lastSetToFailure: true });
    const unknown = first([record], { plan: free, rule: 'set-four-over-15' });
    expect([unknown.action, unknown.load!.to]).toEqual(['raise-load', undefined]);
  });

  it('looks at sessions with the load of the plan only', () => {
    expect(codes(first([recordOf(plan, all, {}, { load: 17.5 })]).reasons)).toEqual(['other-load-recorded']);
    const free = planOf({ percentOneRepMax: 20, step: 2.5, restriction: 'none' });
    const lighter = recordOf(free, [30, 15, 15, 20], {}, { load: 17.5 });
    const item = first([lighter, recordOf(free, [30, 15, 15, 17], { date: '2026-03-05' })], {
      plan: free,
      rule: 'two-for-two',
    });
    expect(codes(item.reasons)).toEqual(['too-few-records']);
  });

  it('raises no load on top of a pressure that the plan raised', () => {
    const higher = planOf({ percentOneRepMax: 20, step: 2.5 }, {}, { percentLop: 60 });
    const item = first([recordOf(plan, all)], { plan: higher });
    expect(item).toMatchObject({ action: 'repeat', load: { from: 20, to: 20 }, cuffMmHg: { from: 120, to: 120 } });
    expect(codes(item.reasons)).toEqual(['other-pressure-recorded']);
    const bare = planOf({ percentOneRepMax: 20, step: 2.5, restriction: 'none' });
    expect(codes(first([recordOf(bare, all)]).reasons)).toEqual(['other-restriction-recorded']);
  });

  it('asks for the earlier sets too before two more in the last count', () => {
    const free = planOf({ percentOneRepMax: 20, step: 2.5, restriction: 'none' });
    const last = (...sessions: (readonly number[])[]) =>
      first(
        sessions.map((repetitions, index) => recordOf(free, repetitions, { date: `2026-03-0${index + 2}` })),
        { plan: free, rule: 'two-for-two' },
      );
    expect(codes(last([30, 15, 15, 17], [30, 15, 15, 17]).reasons)).toContain('rule-met');
    expect(codes(last([30, 15, 15, 17], [20, 10, 10, 17]).reasons)).toEqual(['rule-not-met']);
  });

  it('judges what was done by the goal of this plan', () => {
    const more = planOf({ percentOneRepMax: 20, step: 2.5, scheme: '30-20-20-20' });
    expect(codes(first([recordOf(plan, all)], { plan: more }).reasons)).toEqual(['rule-not-met']);
  });

  it('says when pain was not recorded', () => {
    const next = { date: '2026-03-05' };
    const known = first([recordOf(plan, all, jointPain(1, 1, 1, 1))], next);
    expect([known.action, codes(known.reasons)]).toEqual(['raise-load', ['rule-met']]);
    const none = first([recordOf(plan, all, { pain: [] })], next);
    expect([none.action, codes(none.reasons)]).toEqual(['raise-load', ['rule-met']]);
    const open = first([recordOf(plan, all, jointPain(1, 1, 1))], next);
    expect(codes(open.reasons)).toEqual(['rule-met', 'pain-next-morning-not-recorded']);
    expect(codes(first([recordOf(plan, all)], next).reasons)).toEqual(['rule-met', 'pain-not-recorded']);
  });

  it('says so where the exercise was not done', () => {
    const exercise = plan.request.exercises[0]!;
    const two = planOf({}, { exercises: [exercise, { ...exercise, name: 'leg press' }] });
    const { items } = propose([recordOf(two, all)], { plan: two });
    expect(items.map(({ action, reasons }) => [action, codes(reasons)])).toEqual([
      ['raise-load', ['rule-met', 'pain-not-recorded', 'break-not-known']],
      ['repeat', ['no-record']],
    ]);
  });

  it('asks to measure again when posture, cuff or limb changed, and the maximum after four weeks', () => {
    const due = (...given: Parameters<typeof propose>) =>
      propose(...given)
        .measureAgain.filter((again) => again.due)
        .map(({ code, values }) => [code, Object.values(values ?? {})]);
    expect(due([recordOf(plan, all)])).toEqual([]);
    const before = recordOf(planOf({}, { posture: 'supine' }, { cuffWidthCm: 12, circumferenceCm: 55 }), all);
    const now = planOf({}, {}, { circumferenceCm: 57 });
    expect(due([before], { plan: now })).toEqual([
      ['measure-occlusion-changed', ['left', 'leg', 'posture']],
      ['measure-occlusion-changed', ['left', 'leg', 'cuff']],
      ['measure-occlusion-changed', ['left', 'leg', 'limb-size']],
    ]);
    const tested = (oneRepMaxTestedOn: string) => due([recordOf(plan, all)], { oneRepMaxTestedOn, date: '2026-03-29' });
    expect(tested('2026-03-02')).toEqual([]);
    expect(tested('2026-03-01')).toEqual([['test-maximum-due', [28]]]);
    const guessed = planOf({}, {}, { measured: undefined, circumferenceCm: 55 });
    expect(due([recordOf(guessed, all)], { plan: guessed })).toEqual([
      ['measure-occlusion-estimated', ['left', 'leg']],
    ]);
  });

  it('names everything that is wrong', () => {
    const paths = (request: object) => {
      try {
        nextSession(request as ProgressionRequest);
        return [];
      } catch (error) {
        if (!isInputError(error)) throw error;
        return error.issues.map(({ path }) => path.join('.'));
      }
    };
    const records = [recordOf(plan, all)];
    expect(paths({ plan, records: [], rule: 'mine', nextPercentLop: 0.5, date: '2026-02-30', extra: 1 })).toEqual([
      'records',
      'rule',
      'nextPercentLop',
      'date',
      'extra',
    ]);
    expect(paths({ plan: records[0], records: [plan, null], rule: 'two-for-two' })).toEqual([
      'plan.document',
      'records.0.document',
      'records.1',
    ]);
    const dates = { date: '2026-03-01', oneRepMaxTestedOn: '2026-03-02' };
    expect(paths({ plan, records, rule: 'two-for-two', ...dates })).toEqual(['oneRepMaxTestedOn']);
    // Records of an older plan: the next session is of the day of the new plan, or later.
    const newer = { plan: planOf({}, { date: '2026-03-04' }), records, rule: 'two-for-two' };
    expect(paths({ ...newer, date: '2026-03-03' })).toEqual(['date']);
    expect(paths({ ...newer, date: '2026-03-04' })).toEqual([]);
  });

  it('prints a page', () => {
    for (const { id: rule } of progressionRules) {
      for (const more of [{}, { symptoms: ['symptom-vision'] }] as const) {
        const proposal = propose([recordOf(plan, all, more)], { rule });
        const page = explain(proposal);
        const message = [
          ...proposal.items[0]!.reasons,
          ...proposal.measureAgain,
          ...proposal.disclaimers,
          ...cite(proposal),
        ];
        for (const { text } of [...message, ...proposal.cautions]) expect(page).toContain(text);
        expect(page).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
      }
    }
  });
});

describe('nextStage', () => {
  // Phys Ther 2021;101:1–9: passive, with aerobic work, with low load, with low load plus high load; aim: high load alone.
  it('tells the published order, with high load alone as practice', () => {
    const order = progression.map(({ id }) => nextStage({ stage: id }).next?.id);
    expect(order).toEqual(['aerobic', 'low-load', 'low-and-high-load', 'high-load', undefined]);
    expect(progression.map(({ evidence }) => evidence)).toEqual([
      'published',
      'published',
      'published',
      'published',
      'practice',
    ]);
  });
  it('never gives the order as a permission', () => {
    for (const { id } of progression) {
      const { messages } = nextStage({ stage: id });
      expect(codes(messages)).toContain('stage-not-permission');
      expect(messages.map(({ text }) => text).join(' ')).not.toMatch(/\bmay\b/);
    }
  });
});
