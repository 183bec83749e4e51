import { describe, expect, it } from 'vitest';
import { messages } from '../../src/text/index.js';
import { progression, nextStage } from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { codesOf as codes } from '../support/invariants.js';
import { planOf, proposing, recordOf } from '../support/plans.js';

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

  it('stops at a sign to stop at, whatever was done', () => {
    const proposal = propose([recordOf(plan, all, { symptoms: ['symptom-numbness-stays'] })], { nextPercentLop: 60 });
    expect(proposal.items[0]!.action).toBe('stop');
    expect(proposal.items[0]!.load).toEqual({ from: 20, unit: 'kg' });
    expect(proposal.cautions[0]).toMatchObject({ severity: 'stop', code: 'symptom-clinician-first' });
    const morning = recordOf(plan, all, { symptoms: ['symptom-chest-pain'] });
    expect(first([morning, recordOf(plan, [30, 15, 15, 16])]).action).toBe('stop');
    expect(first([morning, recordOf(plan, all, { date: '2026-03-09' })]).action).toBe('stop');
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

  it('says so where the exercise was not done', () => {
    const exercise = plan.request.exercises[0]!;
    const two = planOf({}, { exercises: [exercise, { ...exercise, name: 'leg press' }] });
    const { items } = propose([recordOf(two, all)], { plan: two });
    expect(items.map(({ action, reasons }) => [action, codes(reasons)])).toEqual([
      ['raise-load', ['rule-met', 'pain-not-recorded', 'break-not-known']],
      ['repeat', ['no-record']],
    ]);
  });
});

describe('nextStage', () => {
  it('never gives the order as a permission', () => {
    for (const { id } of progression) {
      const { messages } = nextStage({ stage: id });
      expect(codes(messages)).toContain('stage-not-permission');
      expect(messages.map(({ text }) => text).join(' ')).not.toMatch(/\bmay\b/);
    }
  });
});
