import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { attempt, guards, InputError } from '../../src/index.js';
import { explain, messages, words } from '../../src/text/index.js';
import { de } from '../../src/text/locales/de.js';
import {
  checkDay,
  dayQuestions,
  nextRequest,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  reviewPlan,
  screen,
  screeningQuestions,
  stopsInForce,
  type Plan,
  type ProgressionRequest,
  type StopDecision,
} from '../../src/plan/index.js';
import { applyDecisions, mergeStops, softened, stopsOf, type Stop, type StopCode } from '../../src/plan/stops.js';
import { expectPlainJson } from '../support/answers.js';
import { planOf, recordOf } from '../support/plans.js';
import { refusedAt } from '../support/refused.js';
import { codesOf as codes } from '../support/invariants.js';

const all = [30, 15, 15, 15];
const no = Object.fromEntries(screeningQuestions().map(({ code }) => [code, 'no']));
const readings = { ageYears: 30, systolicMmHg: 120, diastolicMmHg: 80 };

/** A plan with blood pressure 200/120 after a screening that refers. */
const stopped = (request: Partial<Plan['request']> = {}): Plan =>
  planOf(
    { step: 2.5 },
    {
      systolicMmHg: 200,
      diastolicMmHg: 120,
      date: '2026-03-02',
      screening: screen({ ...readings, date: '2026-03-01', answers: { ...no, pregnancy: 'yes' } }),
      ...request,
    },
    { measured: { valueMmHg: 240, method: 'doppler' } },
  );
const decided = (stop: string, more: Partial<StopDecision> = {}): StopDecision => ({
  stop,
  by: 'physician',
  on: '2026-03-02',
  why: 'seen today',
  ...more,
});
const propose = (plan: Plan, request: Partial<ProgressionRequest> = {}) =>
  nextSession({
    plan,
    records: [recordOf(plan, all, { date: '2026-03-04' })],
    rule: 'all-repetitions',
    date: '2026-03-06',
    ...request,
  });

describe('a stop', () => {
  it('goes from the plan into its record, the proposal, the review and the next request', () => {
    const plan = stopped();
    const both = ['pregnancy', 'blood-pressure-refer'];
    expect(codes(stopsInForce(plan))).toEqual(both);
    expect(plan.stops.map(({ since }) => since)).toEqual(['2026-03-01', '2026-03-02']);
    expectPlainJson(plan);
    const record = recordOf(plan, all, { date: '2026-03-04' });
    expect(codes(stopsInForce(record))).toEqual(both);
    const proposal = propose(plan);
    expect(codes(stopsInForce(proposal))).toEqual(both);
    expect(proposal.items.map(({ action }) => action)).toEqual(['stop']);
    expect(codes(proposal.items[0]!.reasons)).toEqual(both);
    const twice = ['proposal.stops', 'proposal.stops'];
    expect(refusedAt(nextRequest, { plan, proposal })).toEqual(twice);
    // A proposal that was emptied of its stops and changed by hand does not get past those of the plan.
    const clean = propose(planOf({ step: 2.5 }, {}, { measured: { valueMmHg: 240, method: 'doppler' } }));
    expect(refusedAt(nextRequest, { plan, proposal: { ...clean, stops: [] } })).toEqual(twice);
    // What stops in its cautions is one of its stops: here what the record reported, which the plan does not have.
    const sick = propose(planOf(), { records: [recordOf(planOf(), all, { symptoms: ['symptom-chest-pain'] })] });
    const emptied = { ...sick, stops: [], items: sick.items.map((item) => ({ ...item, action: 'repeat' as const })) };
    expect(refusedAt(readDocument, JSON.parse(JSON.stringify(emptied)))).toEqual(['cautions.0.severity']);
    for (const document of [plan, record]) {
      const { findings, stops } = reviewPlan(document);
      expect(codes(findings.slice(0, 2))).toEqual(both);
      expect(findings.slice(0, 2).map(({ severity }) => severity)).toEqual(['stop', 'stop']);
      expect(stops).toEqual(document.stops);
    }
    expect(explain(reviewPlan(plan))).toContain('Pregnancy');
  });

  // From 160/100 no cuff is used until the treating clinician agrees: a stop, which a decision lifts (practice).
  it.each([
    [160, 99],
    [159, 100],
  ])('is a blood pressure of %d/%d, in every document', (systolicMmHg, diastolicMmHg) => {
    const code = 'blood-pressure-very-high';
    const asked = { systolicMmHg, diastolicMmHg, date: '2026-03-02' };
    const screened = screen({ ...readings, ...asked, answers: no });
    expect([screened.outcome, codes(screened.findings)]).toEqual(['refer', [code]]);
    expect(checkDay({ ...asked, painNow: 0, answers: {} }).outcome).toBe('refer');
    const plan = planOf({ step: 2.5 }, asked);
    const record = recordOf(plan, all, { date: '2026-03-04', pain: [] });
    const proposal = propose(plan, { records: [record] });
    for (const document of [plan, record, proposal, reviewPlan(plan), reviewPlan(record)]) {
      expect(codes(stopsInForce(document))).toEqual([code]);
    }
    expect(codes(reviewPlan(plan).findings.slice(0, 1))).toEqual([code]);
    expect(proposal.items.map(({ action }) => action)).toEqual(['stop']);
    expect(explain(plan)).not.toMatch(/\d % of LOP/);
    expect(attempt(nextRequest, { plan, proposal }).ok).toBe(false);
    const lifted = propose(plan, { records: [record], decisions: [decided(code)] });
    expect(lifted.items.map(({ action }) => action)).toEqual(['raise-load']);
    const next = planSession(nextRequest({ plan, proposal: lifted }).request);
    expect(stopsInForce(next)).toEqual([]);
    expect(next.cautions.find((message) => message.code === code)?.severity).toBe('caution');
    expect(explain(next)).toMatch(/\d % of LOP/);
  });

  it('of one limb stops every item', () => {
    const plan = planOf(
      { step: 2.5 },
      {
        limbs: (['left', 'right'] as const).map((side) => ({
          limb: 'leg',
          side,
          cuffWidthCm: 10,
          percentLop: 50,
          measured: { valueMmHg: 200, method: 'doppler' },
        })),
        stops: [{ code: 'unusual-swelling', text: messages['unusual-swelling'], limb: 'leg', side: 'left' }],
      },
    );
    expect(propose(plan).items.map(({ side, action }) => [side, action])).toEqual([
      ['left', 'stop'],
      ['right', 'stop'],
    ]);
  });

  const named = [
    'blood-pressure-refer',
    'blood-pressure-very-high',
    'thrombosis-score-high',
    'today-pain-severe',
    'pain-severe',
    'held-above-tried',
    'symptom-emergency',
    'symptom-clinician-first',
  ];
  const every = [
    ...named,
    ...codes(Object.values(guards).flatMap(({ steps }) => steps.filter(({ severity }) => severity === 'stop'))),
    ...codes([...screeningQuestions(), ...dayQuestions()].filter(({ outcome }) => outcome === 'refer')),
  ];
  const wordsOf = (code: string) => messages[code as keyof typeof messages];
  const given = every.map((code) => {
    const slots = [...wordsOf(code).matchAll(/\{([^{}:]+)/g)].map(([, slot]) => [slot, 'symptom-fainting']);
    return { code: code as StopCode, text: 'You can train.', values: Object.fromEntries(slots) as object as {} };
  });
  it('of an earlier document gets the words of the catalogue in a plan, whatever document brought it', () => {
    const { stops } = planOf({ step: 2.5 }, { stops: given });
    expect(stops).toHaveLength(new Set(every).size);
    for (const { code, text } of stops) {
      // The name of an exercise is yours, and no code.
      const named = wordsOf(code).replace('{exercise}', 'symptom-fainting');
      expect(text).toBe(named.replace(/\{[^{}]+\}/g, 'fainting'));
    }
    const unknown = planOf({ step: 2.5 }, { stops: [{ code: 'later' as StopCode, text: 'You can train.' }] });
    expect(unknown.stops).toEqual([{ code: 'later', text: messages['code-unknown'] }]);
  });
  it('says once not to train where the plan is a sentence', () => {
    for (const stop of given) {
      const page = explain(planOf({ step: 2.5 }, { stops: [stop] }), { detail: 'sentence' });
      expect(page.match(/do not train(?! with a cuff)/gi), stop.code).toHaveLength(1);
    }
  });
  it('is one of the codes above: no other file makes a stop', () => {
    const made = readdirSync('src', { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .flatMap((file) =>
        [...readFileSync(`src/${file}`, 'utf8').matchAll(/\w*[cC]aution\(\s*'stop',\s*['`]([\w-]+)/g)].map(
          ([, code]) => code!,
        ),
      );
    expect(made).toHaveLength(4);
    expect(made.filter((start) => !every.some((code) => code.startsWith(start)))).toEqual([]);
  });

  it('of an earlier record counts until it is lifted', () => {
    const plan = planOf({ step: 2.5 });
    const symptoms = ['symptom-chest-pain', 'symptom-numbness-stays'] as const;
    const records = [
      recordOf(plan, all, { date: '2026-03-01', symptoms }),
      recordOf(plan, all, { date: '2026-03-02', pain: [] }),
    ];
    const actionAfter = (...decisions: StopDecision[]) => propose(plan, { records, decisions }).items[0]!.action;
    expect(actionAfter()).toBe('stop');
    expect(actionAfter(decided('symptom-chest-pain'))).toBe('stop');
    expect(actionAfter(decided('symptom-chest-pain'), decided('symptom-numbness-stays'))).toBe('raise-load');
    const later = recordOf(plan, all, { date: '2026-03-05', symptoms: ['symptom-chest-pain'] });
    const again = propose(plan, {
      records: [...records, later],
      decisions: [decided('symptom-chest-pain'), decided('symptom-numbness-stays')],
    });
    expect(stopsInForce(again).map(({ about, since }) => [about, since])).toEqual([
      ['symptom-chest-pain', '2026-03-05'],
    ]);
    expect(again.items[0]!.action).toBe('stop');
  });

  it('is lifted by a decision that says who, when and why, and by nothing less', () => {
    const lifted = stopped({ decisions: [decided('pregnancy', { by: 'physician' })] });
    expect(codes(stopsInForce(lifted))).toEqual(['blood-pressure-refer']);
    expect(lifted.stops[0]!.lifted).toEqual(decided('pregnancy'));
    // What was lifted stays visible, and is a stop no longer.
    expect(lifted.cautions.find(({ code }) => code === 'pregnancy')!.severity).toBe('caution');
    expect(lifted.cautions.find(({ code }) => code === 'blood-pressure-refer')!.severity).toBe('stop');
    for (const wrong of [
      { by: 'a friend' },
      { why: '' },
      { why: ' \n' },
      { on: 'today' },
      { on: undefined },
      { name: 'x' },
    ]) {
      expect(() => stopped({ decisions: [decided('pregnancy', wrong as never)] })).toThrow(InputError);
    }
  });

  it('is in force on a day before its decision', () => {
    const plan = stopped({
      date: '2026-03-05',
      decisions: [decided('pregnancy', { on: '2026-03-05' }), decided('blood-pressure-refer', { on: '2026-03-05' })],
    });
    expect(stopsInForce(plan)).toEqual([]);
    const later = { on: '2026-03-06' };
    expect(() => stopped({ date: '2026-03-05', decisions: [decided('pregnancy', later)] })).toThrow(
      'decisions[0].on must be not after 2026-03-05, the day of this session; received 2026-03-06.',
    );
    const clean = planOf({ step: 2.5 });
    const records = [recordOf(clean, all, { date: '2026-03-04', symptoms: ['symptom-chest-pain'] })];
    const decisions = [decided('symptom-chest-pain', later)];
    expect(() => propose(clean, { records, date: '2026-03-05', decisions })).toThrow(/not after 2026-03-05/);
    const lifted = propose(clean, { records, date: '2026-03-06', decisions });
    expect(stopsInForce(lifted)).toEqual([]);
    const next = planSession(nextRequest({ plan: clean, proposal: lifted }).request);
    expect(stopsInForce(next)).toEqual([]);
    expect(stopsInForce(recordOf(next, all, { date: '2026-03-06' }))).toEqual([]);
    expect(codes(stopsInForce(recordOf(next, all, { date: '2026-03-05' })))).toEqual(['symptom-emergency']);
    const early = { records: [recordOf(clean, all, { date: '2026-03-05' })], date: '2026-03-05' };
    expect(codes(stopsInForce(propose(next, early)))).toEqual(['symptom-emergency']);
  });

  it('is on a page once, with every day it is in force since', () => {
    const reading = { systolicMmHg: 200, diastolicMmHg: 120 };
    const screening = screen({ ...readings, ...reading, date: '2026-03-01', answers: no });
    const plan = planOf({}, { ...reading, date: '2026-03-02', screening });
    expect(codes(stopsInForce(plan))).toEqual(['blood-pressure-refer', 'blood-pressure-refer']);
    for (const document of [plan, reviewPlan(plan)]) {
      const page = explain(document);
      expect(page.match(/Blood pressure 200\/120/g)).toHaveLength(1);
      expect(page).toContain('(since 2026-03-01, 2026-03-02)');
    }
  });

  it('that was lifted asks for nothing any more on a page', () => {
    const plan = planOf({ step: 2.5 });
    const records = [recordOf(plan, all, { date: '2026-03-01', symptoms: ['symptom-chest-pain'] })];
    const page = explain(propose(plan, { records, decisions: [decided('symptom-chest-pain')] }));
    expect(page).toContain('chest pain, pressure or tightness: lifted by physician, 2026-03-02. Reason: seen today');
    expect(page).not.toMatch(/emergency number|see a clinician|do not train/i);
    const lifted = stopped({ decisions: [decided('pregnancy'), decided('blood-pressure-refer')] });
    const brief = explain(lifted, { detail: 'brief' });
    expect(brief).toContain('“Are you pregnant, or could you be?” Answered yes: lifted by physician');
    expect(brief).toContain('Blood pressure 200/120 mmHg at rest: lifted by physician');
    expect(brief).not.toMatch(/do not train|See a doctor first/);
    const why = stopped({ decisions: [{ ...decided('pregnancy'), why: 'left' }, decided('blood-pressure-refer')] });
    // The reason is yours, in any language: it is no code of a side.
    expect(explain(why, { locale: de })).toMatch(/: left$/m);
  });

  it('has a name for the page once it is lifted, whatever code it has', () => {
    // Codes of stops: those that the source makes, and the most severe steps of the guards.
    const asked = [...screeningQuestions(), ...dayQuestions()].filter(({ outcome }) => outcome === 'refer');
    const steps = Object.values(guards).flatMap((guard) => guard.steps.filter(({ severity }) => severity === 'stop'));
    const named = codes(steps).concat('blood-pressure-refer', 'blood-pressure-very-high', 'thrombosis-score-high');
    for (const code of named.concat('today-pain-severe', 'pain-severe', 'held-above-tried')) {
      expect(words, code).toHaveProperty([`stop.${code}`]);
    }
    for (const { code } of asked) expect(messages, code).toHaveProperty([`ask-${code}`]);
  });

  it('that was lifted stays lifted in what is made of the plan', () => {
    const decisions = [decided('pregnancy'), decided('blood-pressure-refer')];
    const proposal = propose(stopped(), { decisions });
    expect(stopsInForce(proposal)).toEqual([]);
    expect(proposal.items[0]!.action).toBe('raise-load');
    const { request } = nextRequest({ plan: stopped(), proposal });
    const next = planSession(request);
    expect(stopsInForce(next)).toEqual([]);
    expect(next.stops.map(({ lifted }) => lifted)).toEqual(decisions);
    expect(reviewPlan(next).findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    // A new reading is a new stop, even where it reads the same.
    expect(codes(stopsInForce(planSession({ ...request, date: '2026-03-09' })))).toEqual(['blood-pressure-refer']);
    expect(codes(stopsInForce(planSession({ ...request, systolicMmHg: 210 })))).toEqual(['blood-pressure-refer']);
    // What needs no decision is passed on without a list of them.
    expect(
      nextRequest({ plan: planOf({ step: 2.5 }), proposal: propose(planOf({ step: 2.5 })) }).request,
    ).not.toHaveProperty('stops');
  });

  it('is lifted by no decision about another stop, another day or an earlier day', () => {
    const refusedBy = (decision: StopDecision, place: (string | number)[]) => {
      const result = attempt(planSession, stopped({}).request);
      expect(result.ok).toBe(true);
      const refused = refusedAt(planSession, { ...stopped().request, decisions: [decision] });
      expect(refused).toEqual([['decisions', 0, ...place].join('.')]);
    };
    refusedBy(decided('diabetes'), ['stop']);
    refusedBy(decided('pregnancy', { since: '2026-02-01' }), ['since']);
    refusedBy(decided('pregnancy', { on: '2026-02-28' }), ['on']);
    expect(codes(stopsInForce(stopped({ decisions: [decided('pregnancy', { on: '2026-03-01' })] })))).toEqual([
      'blood-pressure-refer',
    ]);
  });

  it('that recurs needs the day of the one that is meant', () => {
    const stop = (since?: string): Stop => ({ code: 'pain-severe', text: 'A.', ...(since && { since }) });
    const two = [stop('2026-03-01'), stop('2026-03-03')];
    const disclaimers = (stops: Stop[], decision: StopDecision) =>
      stopsInForce({ stops: applyDecisions(stops, [decision]) }).map(({ since }) => since);
    expect(() => applyDecisions(two, [decided('pain-severe', { on: '2026-03-05' })])).toThrow(/since/);
    expect(disclaimers(two, decided('pain-severe', { on: '2026-03-05', since: '2026-03-01' }))).toEqual(['2026-03-03']);
    expect(disclaimers(two, decided('pain-severe', { on: '2026-03-02' }))).toEqual(['2026-03-03']);
    expect(() => applyDecisions(two, [decided('pain-severe', { on: '2026-02-01' })])).toThrow(/2026-03-01/);
    // Where no day is known, the decision cannot have come too early.
    expect(disclaimers([stop()], decided('pain-severe'))).toEqual([]);
    expect(() => applyDecisions([stop(), stop('2026-03-01')], [decided('pain-severe')])).toThrow(/since/);
  });

  it('is named by its symptom where one sentence serves several', () => {
    const of = (symptom: string): Stop => ({
      code: 'symptom-emergency',
      about: symptom,
      text: symptom,
      values: { symptom },
    });
    expect(() => applyDecisions([of('x'), of('y')], [decided('symptom-emergency')])).toThrow(/one of "x", "y"/);
    expect(stopsInForce({ stops: applyDecisions([of('x'), of('y')], [decided('y')]) })).toEqual([of('x')]);
    expect(stopsInForce({ stops: applyDecisions([of('x')], [decided('symptom-emergency')]) })).toEqual([]);
  });

  it('is one stop in several documents, and lifted where one of them has it lifted', () => {
    const [stop] = stopsOf(
      [{ severity: 'stop', code: 'pain-severe', text: 'A.', values: { side: 'left', limb: 'leg', held: 700 } }],
      '2026-03-01',
    ) as [Stop];
    expect(stop).toEqual({
      code: 'pain-severe',
      text: 'A.',
      values: { side: 'left', limb: 'leg', held: 700 },
      since: '2026-03-01',
      limb: 'leg',
      side: 'left',
    });
    const lifted = { ...stop, lifted: decided('pain-severe') };
    expect(mergeStops([stop], [lifted], [stop])).toEqual([lifted]);
    expect(mergeStops([{ ...stop, values: { held: 700, limb: 'leg', side: 'left' } }], [stop])).toEqual([stop]);
    expect(mergeStops([stop], [{ ...stop, since: '2026-03-02' }], [{ ...stop, side: 'right' }])).toHaveLength(3);
    expect(stopsOf([{ severity: 'caution', code: 'pain-severe', text: 'A.' }])).toEqual([]);
    // Every one of a sentence has to be lifted before it is a caution.
    const message = { severity: 'stop', code: 'pain-severe', text: 'A.', values: stop.values! } as const;
    expect(softened([message], [lifted])[0]!.severity).toBe('caution');
    expect(softened([message], [lifted, { ...stop, since: '2026-03-02' }])[0]!.severity).toBe('stop');
    expect(softened([message], [])[0]!.severity).toBe('stop');
  });

  it('is in force where the decision in it is about another stop, or older than it', () => {
    const of = (lifted: StopDecision, more: Partial<Stop> = {}): Stop[] =>
      stopsInForce({ stops: [{ code: 'pain-severe', text: 'A.', since: '2026-03-02', lifted, ...more }] });
    expect(of(decided('pain-severe', { on: '2026-03-02' }))).toEqual([]);
    expect(of(decided('pain-severe', { on: '2026-03-01' }))).toHaveLength(1);
    expect(of(decided('b'))).toHaveLength(1);
    expect(of(decided('b'), { about: 'b' })).toEqual([]);
    const forged = {
      ...stopped().request,
      stops: stopped().stops.map((stop) => ({ ...stop, lifted: decided(stop.code, { on: '2026-02-01' }) })),
    };
    expect(codes(stopsInForce(planSession(forged)))).toEqual(['pregnancy', 'blood-pressure-refer']);
    expect(codes(reviewPlan(planSession(forged)).findings.slice(0, 2))).toEqual(['pregnancy', 'blood-pressure-refer']);
  });

  it('comes from a check of the day, in a plan and in a record', () => {
    const dayCheck = checkDay({ date: '2026-03-02', answers: { 'today-swelling': 'yes' } });
    const plan = planOf({ step: 2.5 }, { date: '2026-03-02', dayCheck });
    expect(stopsInForce(plan).map(({ code, since }) => [code, since])).toEqual([['today-swelling', '2026-03-02']]);
    const clean = planOf({ step: 2.5 });
    const record = recordOf(clean, all, { date: '2026-03-02', dayCheck });
    expect(codes(stopsInForce(record))).toEqual(['today-swelling']);
    expect(codes(record.cautions)).toContain('day-check-incomplete');
    expect(propose(clean, { records: [record] }).items[0]!.action).toBe('stop');
    // Its stop is in force since its own day, in a plan of another day too.
    const other = planOf({ step: 2.5 }, { date: '2026-03-03', dayCheck });
    expect(stopsInForce(other).map(({ since }) => since)).toEqual(['2026-03-02']);
    // The check is of its day: the next plan has its stop and not the check.
    const decisions = [decided('today-swelling')];
    const { request } = nextRequest({ plan, proposal: propose(plan, { decisions }) });
    expect(request).not.toHaveProperty('dayCheck');
    expect(codes(request.stops!)).toEqual(['today-swelling']);
    const late = recordSession({ ...recordRequest(clean), date: '2026-03-03', dayCheck });
    expect(late.cautions.find(({ code }) => code === 'day-check-other-day')!.values).toEqual({
      checked: '2026-03-02',
      date: '2026-03-03',
    });
  });
});

function recordRequest(plan: Plan) {
  const { exercise, limb, side } = plan.items[0]!;
  return { plan, items: [{ exercise, limb, side, sets: all.map((repetitions) => ({ repetitions })) }] };
}
