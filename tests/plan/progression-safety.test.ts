import { describe, expect, it } from 'vitest';
import {
  nextRequest,
  nextSession,
  painRules,
  planSession,
  progressionLimits,
  recordSession,
  stopsInForce,
  symptoms,
  trainingDays,
  type Plan,
  type PlanRequest,
  type ProgressionRequest,
  type RecordRequest,
  type SessionRecord,
} from '../../src/plan/index.js';
import { documentMessages } from '../../src/plan/document-messages.js';
import { assessPain } from '../../src/plan/pain.js';
import { codesOf as codes } from '../support/invariants.js';
import { EXTENSION } from '../support/inputs.js';
import { planOf, proposing, recordOf } from '../support/plans.js';
import { refusedAt } from '../support/refused.js';

// 20 kg of a maximum of 100 kg, 50 % of a measured 200 mmHg.
const plan = planOf({ percentOneRepMax: 20, step: 2.5 });
const all = [30, 15, 15, 15];
const { propose, first } = proposing(plan);
const verdict = (request: Partial<RecordRequest>, item: object = {}, more: Partial<ProgressionRequest> = {}) => {
  const { action, reasons } = first([recordOf(plan, all, request, item)], more);
  return [action, reasons[0]?.code];
};

describe('symptoms', () => {
  it('have three grades in one table, each with a source or as practice', () => {
    expect([...new Set(symptoms.map(({ grade }) => grade))]).toEqual(['emergency', 'clinician-first', 'lower']);
    for (const { evidence, source, grade, lower } of symptoms) {
      expect(evidence === 'practice' ? source : evidence).toBe(evidence === 'practice' ? undefined : 'published');
      if (evidence === 'published') expect(source).toBeDefined();
      expect(lower === undefined).toBe(grade !== 'lower');
    }
  });

  it.each(symptoms.map((row) => [row.code, row] as const))('%s does what its grade says', (code, { grade, lower }) => {
    const record = recordOf(plan, all, { symptoms: [code] });
    const item = first([record, recordOf(plan, all, { date: '2026-03-09' })]);
    if (grade === 'lower') {
      expect(record.stops).toEqual([]);
      expect(item.action).toBe('raise-load');
      const next = first([record]);
      expect(next.action).toBe('back-off');
      expect(lower === 'pressure' ? next.percentLop : next.load).toEqual(
        lower === 'pressure' ? { from: 50, to: 40 } : { from: 20, to: 17.5, unit: 'kg' },
      );
    } else {
      // It stays a stop after a clean day.
      expect(stopsInForce(record)).toMatchObject([
        { code: `symptom-${grade}`, since: '2026-03-02', values: { symptom: code } },
      ]);
      expect(item.action).toBe('stop');
    }
  });

  it('of an old record stop, and one whose stops were taken out is refused', () => {
    const old = recordOf(plan, all, { symptoms: ['symptom-chest-pain'], date: '2025-03-02' });
    const clean = ['02', '04', '06', '08'].map((day) => recordOf(plan, all, { date: `2026-03-${day}` }));
    expect(first([old, ...clean]).action).toBe('stop');
    expect(refusedAt(() => propose([{ ...old, stops: [] }, ...clean]))).toEqual(['records.0.stops']);
  });

  it('are the stop criteria of a plan: those of the session, from the same table', () => {
    expect(codes(plan.stopCriteria)).toEqual(symptoms.filter(({ when }) => when === 'session').map(({ code }) => code));
    expect(codes(plan.disclaimers)).toContain('burn-usual');
  });
});

describe('pain', () => {
  const joint = (before: number, during: number, after: number, nextMorning?: number) =>
    verdict({ pain: [{ site: 'joint', before, during, after, ...(nextMorning !== undefined && { nextMorning }) }] });

  it('weighs by its height: 9 before, during and after never raises, 0, 1, 0 never holds', () => {
    expect(joint(9, 9, 9)).toEqual(['stop', 'pain-severe']);
    expect(joint(0, 1, 0)[0]).toBe('raise-load');
    expect(joint(0, 2, 0)).toEqual(['repeat', 'pain-hold']);
    expect(joint(4, 4, 4)).toEqual(['back-off', 'pain-back-off']);
    expect(joint(0, 0, 1)).toEqual(['repeat', 'pain-hold-rose']);
    expect(joint(0, 1, 0, 1)).toEqual(['back-off', 'pain-back-off-rose']);
    expect(joint(1, 1, 1, 1)[0]).toBe('raise-load');
  });

  it('is judged by one rule in a proposal: its cautions do not say hold where its rule goes on', () => {
    const record = recordOf(plan, all, {
      pain: [{ site: 'tendon', before: 2, during: 2, after: 2 }],
      symptoms: ['symptom-tingling'],
    });
    // Without the two notes of every cuff pressure, on flow and drift.
    const cautionsBy = (painRule: 'cautious' | 'tendon-monitoring') =>
      codes(propose([record], { painRule }).cautions).slice(0, -2);
    expect(cautionsBy('cautious')).toEqual(['symptom-lower', 'pain-hold']);
    expect(cautionsBy('tendon-monitoring')).toEqual(['symptom-lower']);
    const worse = recordOf(plan, all, { pain: [{ site: 'tendon', during: 4 }] });
    const [hold] = propose([worse], { painRule: 'tendon-monitoring' }).cautions;
    expect([hold!.code, hold!.values]).toEqual([
      'pain-hold',
      { pain: 4, site: 'tendon', moment: 'during', line: 3, rule: 'tendon-monitoring' },
    ]);
  });

  // Two clinical summaries of Am J Sports Med 2007;35(6):897–906 (`secondary`): 0–3 safe, 4–5 acceptable, above 5 not.
  it('goes by the rule that is chosen by name', () => {
    const by = (painRule: 'cautious' | 'tendon-monitoring' | 'front-of-knee', pain: number) =>
      verdict(
        { pain: [{ site: 'tendon', before: pain, during: pain, after: pain, nextMorning: pain }] },
        {},
        { painRule },
      )[0];
    const row = (painRule: Parameters<typeof by>[0]) =>
      [0, 1, 2, 3, 4, 5, 6, 7, 8, 10].map((pain) => by(painRule, pain));
    const [go, hold, back, stop] = ['raise-load', 'repeat', 'back-off', 'stop'];
    expect(row('tendon-monitoring')).toEqual([go, go, go, go, hold, hold, back, back, stop, stop]);
    // A patient-education page (`secondary`): best below 2, never above 5.
    expect(row('front-of-knee')).toEqual([go, go, hold, hold, hold, hold, back, back, stop, stop]);
    // The lower line of each: `practice`.
    expect(row('cautious')).toEqual([go, go, hold, hold, back, back, back, back, stop, stop]);
    expect(propose([recordOf(plan, all)]).painRule).toEqual({ id: 'cautious', evidence: 'practice' });
    expect(propose([recordOf(plan, all)], { painRule: 'tendon-monitoring' }).painRule).toEqual({
      id: 'tendon-monitoring',
      evidence: 'secondary',
      source: 'achilles-trial-2007',
    });
  });

  it('never holds for muscle burn alone, and does for muscle pain that is there at rest', () => {
    const muscle = (more: object) => verdict({ pain: [{ site: 'muscle', ...more }] })[0];
    for (let during = 0; during <= 10; during += 1) expect(muscle({ before: 0, during, after: 0 })).toBe('raise-load');
    expect(muscle({ before: 0, during: 9, after: 0, nextMorning: 4 })).toBe('raise-load');
    expect(muscle({ before: 5 })).toBe('repeat');
    expect(muscle({ nextMorning: 7 })).toBe('back-off');
    expect(muscle({ before: 9, during: 9, after: 9 })).toBe('stop');
  });

  it('under the cuff lowers the pressure, not the load', () => {
    const after = first([recordOf(plan, all, { pain: [{ site: 'under-cuff', before: 0, during: 6, after: 4 }] })]);
    expect(after).toMatchObject({
      action: 'back-off',
      load: { from: 20, to: 20 },
      percentLop: { from: 50, to: 40 },
    });
    // Discomfort of 5–7 in the fourth set is usual (Physiol Behav 2016;157:277–280).
    expect(verdict({ pain: [{ site: 'under-cuff', before: 0, during: 7, after: 0 }] })[0]).toBe('raise-load');
    expect(verdict({ pain: [{ site: 'under-cuff', during: 8 }] })).toEqual(['back-off', 'pain-back-off']);
  });

  it('is that of a limb where one is named, and of all where none is', () => {
    const two = planSession({
      ...plan.request,
      limbs: [plan.request.limbs[0]!, { ...plan.request.limbs[0]!, side: 'right' }],
      exercises: [
        { ...plan.request.exercises[0]!, side: 'left' },
        { ...plan.request.exercises[0]!, name: 'leg curl', side: 'right' },
      ],
    });
    const actions = (pain: RecordRequest['pain']) => {
      const sets = all.map((repetitions) => ({ repetitions }));
      const items = two.items.map(({ exercise, limb, side }) => ({ exercise, limb, side, sets }));
      const record = recordSession({ plan: two, date: '2026-03-02', items, ...(pain && { pain }) });
      return nextSession({ plan: two, records: [record], rule: 'all-repetitions' }).items.map(({ action }) => action);
    };
    expect(actions([{ site: 'joint', limb: 'leg', side: 'left', during: 5 }])).toEqual(['back-off', 'raise-load']);
    expect(actions([{ site: 'joint', limb: 'leg', during: 5 }])).toEqual(['back-off', 'back-off']);
    expect(actions([{ site: 'joint', during: 5 }])).toEqual(['back-off', 'back-off']);
    expect(actions([{ site: 'joint', limb: 'arm', during: 5 }])).toEqual(['raise-load', 'raise-load']);
    expect(actions([{ site: 'joint', limb: 'leg', side: 'left', during: 9 }])).toEqual(['stop', 'stop']);
    expect(actions([])).toEqual(['raise-load', 'raise-load']);
  });

  it('has lines in order in every rule, and the most severe report first', () => {
    for (const { holdAbove, backOffAbove, stopFrom = 11 } of painRules) {
      expect(holdAbove).toBeLessThanOrEqual(backOffAbove);
      expect(backOffAbove).toBeLessThan(stopFrom);
    }
    const assessed = assessPain(
      [
        { site: 'joint', during: 2 },
        { site: 'muscle', after: 8 },
        { site: 'joint', during: 4 },
      ],
      'cautious',
    );
    expect(assessed.map(({ verdict: found }) => found)).toEqual(['stop', 'back-off', 'hold']);
  });
});

describe('a proposal cannot hurt by its steps', () => {
  it('holds where the pressure is to go up by more than 10 points at once', () => {
    const item = first([recordOf(plan, all)], { nextPercentLop: 100 });
    expect(item).toMatchObject({
      action: 'repeat',
      load: { from: 20, to: 20 },
      percentLop: { from: 50, to: 50 },
    });
    expect(item.reasons.at(-1)).toMatchObject({
      code: 'pressure-step-too-large',
      values: { from: 50, to: 100, largest: 10 },
    });
    expect(first([recordOf(plan, all)], { nextPercentLop: 60 }).action).toBe('raise-pressure');
    expect(first([recordOf(plan, all)], { nextPercentLop: 60.5 }).action).toBe('repeat');
  });

  it('does not lock small loads by percentages: a step is judged in points of the maximum', () => {
    // 10 kg of 50 kg: 2.5 kg is 25 % of the load, and 5 points of the maximum.
    const at = (load: number, percentOneRepMax: number, rule: ProgressionRequest['rule'], over = 0) => {
      const of = planOf({ oneRepMax: { load }, percentOneRepMax, step: 2.5, restriction: 'none' });
      const done = all.map((count, index) => count + (index === 3 ? over : 0));
      const records = ['02', '05'].map((day) => recordOf(of, done, { date: `2026-03-${day}` }));
      const item = nextSession({ plan: of, records, rule }).items[0]!;
      return [item.action, item.load!.to, item.reasons.at(-1)!.code];
    };
    expect(at(50, 20, 'two-for-two', 2)).toEqual(['raise-load', 12.5, 'step-in-points']);
    expect(at(50, 20, 'two-to-ten-percent', 1)).toEqual(['raise-load', 12.5, 'step-in-points']);
    for (const load of [50, 60, 75, 100, 120]) expect(at(load, 20, 'two-for-two', 2)[0]).toBe('raise-load');
    // 10 kg of 40 kg: the step is 6.25 points, so repetitions come first.
    expect(at(40, 25, 'all-repetitions')).toEqual(['raise-repetitions', 10, 'repetitions-first']);
  });

  it('raises repetitions where no load is near enough, and the next request has them', () => {
    const coarse = planOf({ percentOneRepMax: 20, available: [20, 40] });
    const proposal = nextSession({ plan: coarse, records: [recordOf(coarse, all)], rule: 'all-repetitions' });
    expect(proposal.items[0]).toMatchObject({
      action: 'raise-repetitions',
      load: { from: 20, to: 20 },
      sets: { to: [{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }, { repetitions: 17 }] },
    });
    const next = planSession(nextRequest({ plan: coarse, proposal }).request);
    expect(next.items[0]!.sets.map(({ repetitions }) => repetitions)).toEqual([30, 15, 15, 17]);
    expect(next.items[0]!.sets.map(({ restS }) => restS)).toEqual(coarse.items[0]!.sets.map(({ restS }) => restS));
    // Without a maximum 10 % of the load is the largest step (Med Sci Sports Exerc 2009;41(3):687–708).
    const own = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, load: 20, step: 2.5 });
    const without = nextSession({ plan: own, records: [recordOf(own, all)], rule: 'all-repetitions' }).items[0]!;
    expect([without.action, codes(without.reasons).at(-2)]).toEqual([
      'raise-repetitions',
      'load-step-too-large-percent',
    ]);
    // A set has 30 repetitions at most; where all do, nothing goes up.
    const full = planOf({ percentOneRepMax: 20, available: [20, 40], scheme: '3x30' });
    const top = nextSession({ plan: full, records: [recordOf(full, [30, 30, 30])], rule: 'all-repetitions' }).items[0]!;
    expect([top.action, codes(top.reasons).at(-1)]).toEqual(['repeat', 'repetitions-at-most']);
  });

  // By hand: 12.5 kg in steps of 2.5 kg is 31.25 % of 40 kg, and a step is 6.25 points, more than 5. Three sets of 10 at
  // 15 kg are 450 kg; so are 36 repetitions at 12.5 kg. From 10 kg of no known maximum a step is 25 %: 75 repetitions at
  // 12.5 kg are 937.5 kg, of which 94 at 10 kg are 940.
  it('raises a load below 25 kg once the repetitions make up for the step, and goes back to the sets before', () => {
    const climb = (exercise: Parameters<typeof planOf>[0], rule: ProgressionRequest['rule'], sessions: number) => {
      let plan = planOf(exercise);
      return Array.from({ length: sessions }, (_, index) => {
        const counts = plan.items[0]!.sets.map(({ repetitions }) => repetitions!);
        const done = counts.map((count, at) => count + (at === counts.length - 1 ? 2 : 0));
        const records = [2 * index, 2 * index + 1].map((day) =>
          recordOf(plan, done, { date: `2026-03-${String(day + 2).padStart(2, '0')}` }),
        );
        const proposal = nextSession({ plan, records, rule });
        const { action, load, sets, reasons } = proposal.items[0]!;
        const { request } = nextRequest({ plan, proposal });
        expect(request.exercises[0]!.raisedFrom).toEqual(
          action === 'raise-load' ? undefined : (plan.request.exercises[0]!.raisedFrom ?? counts),
        );
        plan = planSession(request);
        expect(plan.items[0]!.sets.map(({ repetitions }) => repetitions)).toEqual(
          sets!.to.map(({ repetitions }) => repetitions),
        );
        return [action, load!.to, sets!.to.map(({ repetitions }) => repetitions).join('-'), codes(reasons).at(-1)];
      });
    };
    const light = { oneRepMax: { load: 40 }, percentOneRepMax: 31.25, step: 2.5, scheme: '3x10' } as const;
    expect(climb({ ...light, restriction: 'none' }, 'two-for-two', 5)).toEqual([
      ['raise-repetitions', 12.5, '10-10-12', 'repetitions-first'],
      ['raise-repetitions', 12.5, '10-12-12', 'repetitions-first'],
      ['raise-repetitions', 12.5, '12-12-12', 'repetitions-first'],
      ['raise-load', 15, '10-10-10', 'load-step-earned'],
      ['raise-repetitions', 15, '10-10-12', 'repetitions-first'],
    ]);
    const own = { oneRepMax: undefined, percentOneRepMax: undefined, load: 10, step: 2.5 } as const;
    const slow = climb(own, 'all-repetitions', 11);
    expect(slow.slice(-2)).toEqual([
      ['raise-repetitions', 10, '30-21-21-23', 'repetitions-first'],
      ['raise-load', 12.5, '30-15-15-15', 'load-step-earned'],
    ]);
    // A step of 1 kg is 10 %: the load goes up at once.
    const fine = planOf({ ...own, step: 1 });
    const up = nextSession({ plan: fine, records: [recordOf(fine, all)], rule: 'all-repetitions' }).items[0]!;
    expect([up.action, up.load!.to, up.sets]).toEqual(['raise-load', 11, undefined]);
  });

  it('says it where a load with the cuff goes above 20–40 % of 1RM, each reason in one sentence', () => {
    const at = (percentOneRepMax: number, restriction: 'continuous' | 'none') => {
      const plan = planOf({ percentOneRepMax, step: 2.5, restriction });
      return nextSession({ plan, records: [recordOf(plan, all)], rule: 'all-repetitions' }).items[0]!.reasons;
    };
    expect(codes(at(40, 'continuous')).at(-1)).toBe('raised-above-guidance');
    expect(codes(at(35, 'continuous'))).not.toContain('raised-above-guidance');
    expect(codes(at(40, 'none'))).not.toContain('raised-above-guidance');
    for (const code of ['over-goal-not-applied', 'load-step-too-large', 'step-in-points', 'load-step-earned'] as const)
      expect(documentMessages[code], code).toMatch(/^[^.]*(\d\.\d[^.]*)*\.$/);
  });

  // J Strength Cond Res 2025, doi 10.1519/JSC.0000000000005190: set 4 to failure, median 90 repetitions at 20 %, 30 at 30 %, 8 at 40 %.
  it('does not go by repetitions beyond the goal of restricted sets at 30 % of the maximum and less', () => {
    const at = (
      percentOneRepMax: number,
      restriction: 'continuous' | 'none' = 'continuous',
      rule: ProgressionRequest['rule'] = 'two-for-two',
    ) => {
      const of = planOf({ percentOneRepMax, step: 2.5, restriction });
      const records = ['02', '05'].map((day) => recordOf(of, [30, 15, 15, 17], { date: `2026-03-${day}` }));
      const item = nextSession({ plan: of, records, rule }).items[0]!;
      return [item.action, item.reasons[0]!.code];
    };
    expect(at(20)).toEqual(['repeat', 'over-goal-not-applied']);
    expect(at(30)).toEqual(['repeat', 'over-goal-not-applied']);
    expect(at(20, 'continuous', 'two-to-ten-percent')).toEqual(['repeat', 'over-goal-not-applied']);
    expect(at(40)).toEqual(['raise-load', 'rule-met']);
    expect(at(20, 'none')).toEqual(['raise-load', 'rule-met']);
    expect(at(20, 'continuous', 'all-repetitions')).toEqual(['raise-load', 'rule-met']);
  });

  const leg = (side: 'left' | 'right', percentLop = 50) => ({
    limb: 'leg' as const,
    side,
    cuffWidthCm: 10,
    percentLop,
    measured: { valueMmHg: 200, method: 'doppler' as const },
  });
  const press = { ...plan.request.exercises[0]!, name: 'leg press' };
  const done = (of: Plan, more: Partial<RecordRequest> = {}) =>
    recordSession({
      plan: of,
      date: '2026-03-02',
      items: of.items.map(({ exercise, limb, side, sets }) => ({
        exercise,
        limb,
        side,
        sets: sets.map(({ repetitions }) => ({ repetitions: repetitions! })),
      })),
      ...more,
    });
  const actionsOf = (of: Plan, more: Partial<ProgressionRequest> = {}) =>
    nextSession({ plan: of, records: [done(of)], rule: 'all-repetitions', ...more }).items.map(
      ({ exercise, side, action, reasons }) => [exercise, side, action, reasons.at(-1)!.code],
    );

  it('never raises pressure on one exercise and load on another of the same limb', () => {
    const mixed = planSession({
      ...plan.request,
      exercises: [
        { ...press, percentLop: 50 },
        { ...press, name: 'squat', restriction: 'none' },
        { ...press, name: 'curl', percentLop: 60 },
      ],
    } as PlanRequest);
    expect(actionsOf(mixed, { nextPercentLop: 60 })).toEqual([
      ['leg press', 'left', 'raise-pressure', 'pressure-instead'],
      ['squat', 'left', 'repeat', 'pressure-raised-on-limb'],
      ['curl', 'left', 'repeat', 'pressure-raised-on-limb'],
    ]);
  });

  it('keeps the sides apart, save where an exercise is shared', () => {
    const sides = planSession({
      ...plan.request,
      limbs: [leg('left'), leg('right', 60)],
      exercises: [
        { ...press, name: 'left press', side: 'left' },
        { ...press, name: 'right press', side: 'right' },
      ],
    } as PlanRequest);
    // The right cuff has its 60 % already: its load goes up, the left pressure does.
    expect(actionsOf(sides, { nextPercentLop: 60 }).map(([, side, action]) => [side, action])).toEqual([
      ['left', 'raise-pressure'],
      ['right', 'raise-load'],
    ]);
    const shared = planSession({
      ...plan.request,
      limbs: [leg('left'), leg('right', 60)],
      exercises: [
        { ...press, name: 'left press', side: 'left' },
        { ...press, name: 'both press', restriction: 'none' },
      ],
    } as PlanRequest);
    expect(actionsOf(shared, { nextPercentLop: 60 })).toEqual([
      ['left press', 'left', 'raise-pressure', 'pressure-instead'],
      ['both press', 'left', 'repeat', 'pressure-raised-on-limb'],
      ['both press', 'right', 'repeat', 'other-side-holds'],
    ]);
  });
});

describe('what was done', () => {
  it('is compared with the plan: a cuff held far above stops or holds, one held below does not count', () => {
    const stopped = recordOf(plan, all, {}, { heldMmHg: 1000 });
    expect(stopsInForce(stopped)).toMatchObject([{ code: 'held-above-tried', limb: 'leg', side: 'left' }]);
    expect(first([stopped, recordOf(plan, all, { date: '2026-03-09' })]).action).toBe('stop');
    expect(verdict({}, { heldMmHg: 200 })).toEqual(['repeat', 'hold-held-above']);
    expect(verdict({}, { heldMmHg: 111 })).toEqual(['repeat', 'hold-held-above']);
    expect(verdict({}, { heldMmHg: 89 })).toEqual(['repeat', 'hold-held-below']);
    // Within 5 points of occlusion pressure it counts as planned.
    for (const heldMmHg of [90, 100, 110]) expect(verdict({}, { heldMmHg })[0]).toBe('raise-load');
  });

  it('asks for less after two failed sessions, an effort of 10, or where a deload is asked for', () => {
    const failed = (day: string, more: object = {}) =>
      recordOf(plan, [30, 15, 15, 12], { date: `2026-03-${day}`, ...more });
    expect(first([failed('02')]).action).toBe('repeat');
    const twice = first([failed('02'), failed('05')]);
    expect(twice).toMatchObject({ action: 'back-off', load: { from: 20, to: 17.5 } });
    expect(twice.reasons[0]).toMatchObject({
      code: 'back-off-failed-twice',
      values: { done: '30-15-15-12; 30-15-15-12', goal: '30-15-15-15' },
    });
    expect(first([failed('02'), recordOf(plan, all, { date: '2026-03-05' })]).action).toBe('raise-load');
    expect(verdict({ sessionRpe: 10 })).toEqual(['back-off', 'back-off-effort']);
    expect(verdict({ sessionRpe: 9 })[0]).toBe('raise-load');
    expect(verdict({}, {}, { deload: true })).toEqual(['back-off', 'back-off-deload']);
    // What is missed in a last set to failure is no failure.
    const last = planOf({ percentOneRepMax: 20, step: 2.5, lastSetToFailure: true });
    const near = ['02', '05'].map((day) => recordOf(last, [30, 15, 15, 12], { date: `2026-03-${day}` }));
    expect(nextSession({ plan: last, records: near, rule: 'all-repetitions' }).items[0]!.action).toBe('repeat');
  });

  it('goes down by a set where no load can, and the next request has it', () => {
    const unloaded = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true });
    const proposal = nextSession({
      plan: unloaded,
      records: [recordOf(unloaded, all)],
      rule: 'all-repetitions',
      deload: true,
    });
    expect(proposal.items[0]!.sets!.to).toEqual([{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }]);
    const { request } = nextRequest({ plan: unloaded, proposal });
    expect(planSession(request).items[0]!.sets.map(({ repetitions }) => repetitions)).toEqual([30, 15, 15]);
  });

  it('raises nothing after a long break, between the last records too', () => {
    const records = [recordOf(plan, all)];
    expect(first(records, { date: '2026-03-29' }).action).toBe('raise-load');
    const late = first(records, { date: '2026-03-30' });
    expect([late.action, late.reasons[0]]).toMatchObject([
      'repeat',
      { code: 'hold-long-break', values: { days: 28, limit: 28 } },
    ]);
    const heavy = planOf({ percentOneRepMax: 50, step: 2.5 });
    const over = (day: string) => recordOf(heavy, [30, 15, 15, 17], { date: day });
    const two = (from: string) =>
      nextSession({ plan: heavy, records: [over(from), over('2026-03-30')], rule: 'two-for-two' }).items[0]!;
    expect(two('2026-03-03').action).toBe('raise-load');
    expect([two('2026-03-02').action, codes(two('2026-03-02').reasons)]).toEqual(['repeat', ['too-few-records']]);
  });

  it('is refused where it is told twice, of another person, or with a number twice', () => {
    const record = recordOf(plan, all, { sessionRpe: 5, sessionS: 1500 });
    expect(refusedAt(() => propose([record, record]))).toEqual(['records.1']);
    expect(refusedAt(() => propose([record, structuredClone(record)]))).toEqual(['records.1']);
    // What was noted of a session makes it no other session.
    for (const noted of [{ notes: 'again' }, { sessionRpe: 6, sessionS: 1500 }, { pain: [] }, { sessionOfDay: 2 }]) {
      expect(refusedAt(() => propose([record, recordOf(plan, all, noted)]))).toEqual(['records.1']);
    }
    expect(refusedAt(() => trainingDays({ records: [record, record], from: '2026-03-02' }))).toEqual(['records.1']);
    const evening = (sessionOfDay: number, repetitions = all) =>
      recordOf(plan, repetitions, { sessionRpe: 5, sessionS: 1500, sessionOfDay });
    expect(first([evening(1), evening(2)]).action).toBe('raise-load');
    expect(trainingDays({ records: [evening(1), evening(2)], from: '2026-03-02' })[0]!.sessions).toBe(2);
    expect(refusedAt(() => propose([evening(1), evening(1, [30, 15, 15, 16])]))).toEqual(['records.1.sessionOfDay']);
    const named = planOf({ percentOneRepMax: 20, step: 2.5 }, { label: 'Athlete C' });
    const other = planOf({ percentOneRepMax: 20, step: 2.5 }, { label: 'Athlete D' });
    expect(
      refusedAt(() => nextSession({ plan: named, records: [recordOf(other, all)], rule: 'all-repetitions' })),
    ).toEqual(['records.0.label']);
  });

  it('says where the cuff pressure is not on record', () => {
    const reasons = (heldMmHg?: number) => codes(first([recordOf(plan, all, { pain: [] }, { heldMmHg })]).reasons);
    expect(reasons()).toContain('held-not-recorded');
    expect(reasons(100)).not.toContain('held-not-recorded');
    const bare = planOf({ percentOneRepMax: 20, step: 2.5, restriction: 'none' });
    const proposal = nextSession({ plan: bare, records: [recordOf(bare, all)], rule: 'all-repetitions' });
    expect(codes(proposal.items[0]!.reasons)).not.toContain('held-not-recorded');
  });

  it('names a session that is shorter than its sets, and refuses a held pressure without a cuff', () => {
    // 75 repetitions of 4 s take 300 s.
    expect(codes(recordOf(plan, all, { sessionS: 299 }).cautions)).toContain('session-shorter-than-sets');
    expect(codes(recordOf(plan, all, { sessionS: 300 }).cautions)).not.toContain('session-shorter-than-sets');
    expect(refusedAt(() => recordOf(planOf({ restriction: 'none' }), all, {}, { heldMmHg: 100 }))).toEqual([
      'items.0.heldMmHg',
    ]);
  });

  it('of a year is glanced at: only the last sessions are read whole', () => {
    const one = recordOf(plan, all, { pain: [] });
    let reads = 0;
    const old = Array.from({ length: 360 }, (_, index) => {
      const [item] = structuredClone(one.items);
      Object.defineProperty(item, 'totals', {
        enumerable: true,
        get: () => {
          reads += 1;
          return one.items[0]!.totals;
        },
      });
      return {
        ...one,
        date: new Date(Date.parse('2025-01-01') + index * 86_400_000).toISOString().slice(0, 10),
        items: [item!],
      };
    });
    const last = ['02-20', '02-25'].map((day) => recordOf(plan, all, { pain: [], date: `2026-${day}` }));
    expect(first([...old, ...last]).action).toBe('raise-load');
    expect(reads).toBe(0);
    // A report in one of them is seen all the same, and then it is read whole.
    const reported = recordOf(plan, all, { symptoms: ['symptom-sharp-pain'], date: '2025-01-01' });
    expect(first([reported, ...old.slice(1), ...last]).action).toBe('stop');
    expect(reads).toBe(0);
    // What is no record, or cannot be read, is named wherever it is.
    const wrong = (more: object) =>
      refusedAt(() => propose([{ ...old[0]!, ...more } as unknown as SessionRecord, last[0]!]));
    expect(wrong({ date: '2025-13-01' })).toEqual(['records.0.date']);
    expect(wrong({ items: [null] })).toEqual(['records.0.items.0']);
    expect(wrong({ stops: 'none' })).toEqual(['records.0.stops']);
    expect(wrong({ symptoms: ['tired'] })).toEqual(['records.0.symptoms.0']);
  });

  it('keeps the cautions of its totals: timed sets have no volume', () => {
    const timed = planOf({ sets: [{ repetitions: 10, restS: 30 }, { durationS: 60 }], restS: undefined });
    const record = recordSession({
      plan: timed,
      date: '2026-03-02',
      items: [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets: [{ repetitions: 10 }, { durationS: 60 }] }],
    });
    expect(codes(record.cautions)).toContain('timed-sets-no-volume');
  });
});

describe('a pressure that goes down', () => {
  const tingling = { symptoms: ['symptom-tingling'] } as const;
  const lowered = (...of: Parameters<typeof planOf>) => {
    const own = planOf(...of);
    return proposing(own).first([recordOf(own, all, tingling)]);
  };

  // 100 of 200 mmHg is 50 %, whatever was asked for: ten points less is 40 %, 80 mmHg.
  it('starts from a ceiling where that holds it', () => {
    const back = lowered({ step: 2.5 }, {}, { percentLop: 80, ceilingMmHg: 100 });
    expect([back.action, back.percentLop, back.cuffMmHg]).toEqual([
      'back-off',
      { from: 80, to: 40 },
      { from: 100, to: 80 },
    ]);
    expect(codes(back.reasons)).toEqual(['back-off-symptom', 'pressure-lower']);
    // 110 mmHg are 55 %; of shares between whole ones the lower counts: 111 mmHg are 55.5 %.
    expect(lowered({ step: 2.5 }, {}, { percentLop: 80, ceilingMmHg: 111 }).percentLop).toEqual({ from: 80, to: 45 });
  });

  it('stays above the pressure of the rests', () => {
    const back = lowered({ step: 2.5, restriction: 'partial', restPercentLop: 42 });
    expect([back.percentLop, back.load!.to]).toEqual([{ from: 50, to: 43 }, 20]);
  });

  it('is that of exercises with a cuff: the others hold, and lower nothing', () => {
    const cuffed = { ...EXTENSION, oneRepMax: { load: 100 }, percentOneRepMax: 20 } as const;
    const heavy = { ...cuffed, name: 'leg press', percentOneRepMax: 70, scheme: '3x8', restriction: 'none' } as const;
    const own = planOf({ step: 2.5 }, { exercises: [cuffed, heavy] });
    const next = (request: Partial<RecordRequest>) => {
      const record = recordSession({ plan: own, date: '2026-03-02', asPlanned: true, ...request });
      return proposing(own)
        .propose([record])
        .items.map(({ action, load, reasons }) => [action, load!.to, reasons[0]!.code]);
    };
    expect(next(tingling)).toEqual([
      ['back-off', 20, 'back-off-symptom'],
      ['repeat', 70, 'hold-symptom'],
    ]);
    expect(next({ pain: [{ site: 'under-cuff', during: 8 }] })).toEqual([
      ['back-off', 20, 'pain-back-off'],
      ['repeat', 70, 'pain-hold'],
    ]);
    // Soreness is of the muscle.
    expect(next({ symptoms: ['symptom-soreness'] }).map(([action]) => action)).toEqual(['back-off', 'back-off']);
  });
});

describe('what to measure again', () => {
  const changed = (own: Plan, record: SessionRecord) =>
    proposing(own)
      .propose([record])
      .measureAgain.filter(({ code }) => code === 'measure-occlusion-changed')
      .map(({ values }) => values!['what']);

  it('is not due for a posture, or for a cuff, that the last session had in one of its exercises', () => {
    const cuffed = EXTENSION;
    const lying = { ...cuffed, name: 'leg press', posture: 'supine' } as const;
    const free = { ...cuffed, name: 'squat', posture: 'standing', restriction: 'none' } as const;
    const own = planOf({ step: 2.5 }, { exercises: [free, cuffed, lying] });
    expect(changed(own, recordSession({ plan: own, date: '2026-03-02', asPlanned: true }))).toEqual([]);
    const standing = planOf({ posture: 'standing' });
    expect(changed(standing, recordOf(plan, all))).toEqual(['posture']);
  });
});

describe('the figures of progression', () => {
  it('say their grade, and a source where they are published', () => {
    for (const limit of Object.values(progressionLimits)) {
      expect(['practice', 'published']).toContain(limit.evidence);
      if (limit.evidence === 'published') expect(limit).toHaveProperty('source');
    }
  });
});
