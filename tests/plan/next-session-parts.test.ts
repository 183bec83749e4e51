import { describe, expect, it } from 'vitest';
import { attempt, measuredOcclusionPressure, targetCuffPressure } from '../../src/index.js';
import { ownDocument } from '../../src/answer/own.js';
import { nextSession } from '../../src/plan/next-session.js';

type Json = Readonly<Record<string, unknown>>;

const left = { limb: 'leg', side: 'left' };
const right = { limb: 'leg', side: 'right' };
const sets = [{ repetitions: 10, restS: 0 }];
/** One exercise on one limb without a cuff, at 20 kg; documents as the library hands them out are taken as they are. */
const item = (more: Json = {}): Json => ({
  exercise: 'press',
  ...left,
  restriction: 'none',
  load: { value: 20, unit: 'kg' },
  sets,
  totals: { cautions: [] },
  ...more,
});
const planOf = (items: readonly Json[] = [item()], more: Json = {}, exercise: Json = {}): Json =>
  ownDocument({
    document: 'plan',
    request: {
      posture: 'seated',
      limbs: [],
      exercises: [...new Set(items.map((one) => one['exercise']))].map((name) => ({
        name,
        limb: 'leg',
        step: 2,
        ...exercise,
      })),
      ...more,
    },
    items,
    stops: (more['stops'] as Json[] | undefined) ?? [],
    cautions: [],
  });
/** What was done of an item, with as many repetitions. */
const done = (repetitions = 10, more: Json = {}, what: Json = {}): Json => ({
  ...item(more),
  done: { sets: [{ repetitions, restS: 0 }], load: 20, unit: 'kg', stoppedEarly: false, ...what },
});
const recordOf = (date: string, items: readonly Json[] = [done()], more: Json = {}): Json =>
  ownDocument({
    document: 'record',
    schemaVersion: 2,
    date,
    posture: 'seated',
    items,
    stops: [],
    symptoms: [],
    cautions: [],
    ...more,
  });

const request = (more: Json = {}): Json => ({
  plan: planOf(),
  records: [recordOf('2026-03-02')],
  rule: 'all-repetitions',
  ...more,
});
const propose = (more: Json = {}) => nextSession(request(more) as never);
const wrong = (more: Json): string[] => {
  const result = attempt(() => propose(more), undefined);
  return result.ok
    ? []
    : result.issues.map(
        ({ path, code, expected, received }) => `${path.join('.')} ${code}: ${expected}, not ${received}`,
      );
};
const wrongAt = (more: Json): string[] => wrong(more).map((one) => one.split(':')[0]!);
const codes = (list: readonly { readonly code: string }[]): string[] => list.map(({ code }) => code);
/** What is proposed for each item: what to do, the load and the last reason. */
const lines = (more: Json) =>
  propose(more).items.map(({ action, load, reasons }) => [action, load?.to, reasons.at(-1)!.code]);

describe('a request for a proposal', () => {
  it.each([
    ['plan', ['plan missing']],
    ['records', ['records missing']],
    ['rule', ['rule missing']],
  ])('needs its %s', (name, expected) => {
    expect(wrongAt({ [name]: undefined })).toEqual(expected);
  });

  it.each([
    [{ plan: recordOf('2026-03-02') }, 'plan.document not-one-of'],
    [{ records: [planOf()] }, 'records.0.document not-one-of'],
    [{ records: [] }, 'records wrong-type'],
    [{ rule: 'own' }, 'rule not-one-of'],
    [{ painRule: 'own' }, 'painRule not-one-of'],
    [{ nextPercentLop: 0 }, 'nextPercentLop out-of-range'],
    [{ date: '2026-02-30' }, 'date wrong-type'],
    [{ oneRepMaxTestedOn: '2026-02-30' }, 'oneRepMaxTestedOn wrong-type'],
    [{ date: '2026-03-04', longBreakDays: 0 }, 'longBreakDays out-of-range'],
    [{ date: '2026-03-04', longBreakDays: 366 }, 'longBreakDays out-of-range'],
    [{ date: '2026-03-04', longBreakDays: 1.5 }, 'longBreakDays not-whole'],
    [{ decisions: [{ stop: 7 }] }, 'decisions.0.stop wrong-type'],
    [{ deloads: true }, 'deloads unknown-field'],
  ])('is refused for %j', (more, expected) => {
    expect(wrongAt(more)[0]).toBe(expected);
  });

  it('takes deload as true, or left out', () => {
    expect(wrong({ deload: false })).toEqual(['deload wrong-type: true, or left out, not false']);
    expect(wrong({ deload: 'yes' })).toEqual(['deload wrong-type: true, or left out, not "yes"']);
    expect(lines({ deload: true })).toEqual([['back-off', 18, 'back-off-deload']]);
  });

  it('needs the day of the session for a length of break', () => {
    expect(wrongAt({ longBreakDays: 7 })).toEqual(['date missing']);
    expect(wrong({ longBreakDays: 1, date: '2026-03-02' })).toEqual([]);
    expect(wrong({ longBreakDays: 365, date: '2026-03-02' })).toEqual([]);
  });

  it('takes four weeks for a long break, where no length is given', () => {
    expect(lines({ date: '2026-03-29' })).toEqual([['raise-load', 22, 'pain-not-recorded']]);
    expect(lines({ date: '2026-03-30' })).toEqual([['repeat', 20, 'hold-long-break']]);
    expect(lines({ date: '2026-03-30', longBreakDays: 29 })).toEqual([['raise-load', 22, 'pain-not-recorded']]);
    expect(lines({ date: '2026-03-09', longBreakDays: 7 })).toEqual([['repeat', 20, 'hold-long-break']]);
  });

  it('has its days in order', () => {
    expect(wrong({ date: '2026-03-02' })).toEqual([]);
    expect(wrong({ date: '2026-03-01' })).toEqual([
      'date wrong-relation: not before 2026-03-02, the day of the last record, not 2026-03-01',
    ]);
    const plan = planOf(undefined, { date: '2026-03-03' });
    expect(wrong({ plan, date: '2026-03-03' })).toEqual([]);
    expect(wrong({ plan })).toEqual([]);
    expect(wrong({ plan, date: '2026-03-02' })).toEqual([
      'date wrong-relation: not before 2026-03-03, the day of the plan, not 2026-03-02',
    ]);
    expect(wrongAt({ plan, date: '2026-03-01' })).toEqual(['date wrong-relation', 'date wrong-relation']);
    expect(wrong({ date: '2026-03-04', oneRepMaxTestedOn: '2026-03-04' })).toEqual([]);
    expect(wrong({ oneRepMaxTestedOn: '2026-12-31' })).toEqual([]);
    expect(wrong({ date: '2026-03-04', oneRepMaxTestedOn: '2026-03-05' })).toEqual([
      'oneRepMaxTestedOn wrong-relation: not after 2026-03-04, not 2026-03-05',
    ]);
  });

  it('is refused for what is wrong with several of its documents', () => {
    expect(wrongAt({ plan: {}, records: [{}] })).toEqual(['plan.document missing', 'records.0.document missing']);
  });
});

describe('a proposal', () => {
  it('raises, repeats or backs off by the rule', () => {
    expect(lines({})).toEqual([['raise-load', 22, 'break-not-known']]);
    expect(lines({ date: '2026-03-04' })).toEqual([['raise-load', 22, 'pain-not-recorded']]);
    expect(lines({ records: [recordOf('2026-03-02', [done(9)])] })).toEqual([['repeat', 20, 'rule-not-met']]);
    // Planned sets that were missed in both of the last two sessions, also by a rule that looks at one.
    const missed = ['2026-03-02', '2026-03-04'].map((date) => recordOf(date, [done(9)]));
    expect(lines({ records: missed })).toEqual([['back-off', 18, 'back-off-failed-twice']]);
    expect(lines({ records: [missed[1]] })).toEqual([['repeat', 20, 'rule-not-met']]);
  });

  it('states what it is and what it goes by', () => {
    expect(propose({ painRule: 'front-of-knee' })).toMatchObject({
      document: 'proposal',
      schemaVersion: 1,
      rule: { id: 'all-repetitions', evidence: 'practice' },
    });
    expect(propose().painRule.id).toBe('cautious');
  });

  it('is of the records of an item, whatever others were done', () => {
    const plan = planOf([item(), item({ exercise: 'row' })]);
    const records = [
      recordOf('2026-03-02'),
      recordOf('2026-03-04', [done(9, { exercise: 'row' }), done(10, { exercise: 'curl' })]),
    ];
    expect(lines({ plan, records })).toEqual([
      ['raise-load', 22, 'break-not-known'],
      ['repeat', 20, 'rule-not-met'],
    ]);
    expect(lines({ plan, records: [records[0]] })[1]).toEqual(['repeat', 20, 'no-record']);
  });

  it('gives loads as shares of the maximum, and sets where they change', () => {
    const oneRepMax = { value: 100, unit: 'kg' };
    const [first] = propose({ plan: planOf([item({ oneRepMax })]) }).items;
    expect(first).toMatchObject({ ...left, exercise: 'press', load: { from: 20, to: 22, unit: 'kg' } });
    expect(first!.percentOneRepMax).toEqual({ from: 20, to: 22 });
    expect(Object.keys(first!).sort()).toEqual([
      'action',
      'exercise',
      'limb',
      'load',
      'percentOneRepMax',
      'reasons',
      'side',
    ]);
    expect(propose().items[0]).not.toHaveProperty('percentOneRepMax');
    // A plan without a load, and nothing to take off it but a set.
    const bare = { load: undefined, sets: [...sets, ...sets] };
    const lighter = propose({
      plan: planOf([item(bare)]),
      records: [recordOf('2026-03-02', [done(10, bare)])],
      deload: true,
    });
    expect(lighter.items[0]).toMatchObject({
      action: 'back-off',
      sets: { from: [{ repetitions: 10 }, { repetitions: 10 }], to: [{ repetitions: 10 }] },
    });
    expect(lighter.items[0]).not.toHaveProperty('load');
    expect(lighter.items[0]).not.toHaveProperty('percentOneRepMax');
  });

  it('starts from the load that was lifted last, where the plan has a range', () => {
    const range = { upperLoad: { value: 30, unit: 'kg' } };
    const records = ['2026-03-02', '2026-03-04'].map((date, index) =>
      recordOf(date, [done(10, range, { load: 22 + 2 * index })]),
    );
    expect(propose({ plan: planOf([item(range)]), records }).items[0]!.load).toEqual({
      from: 24,
      to: 26,
      unit: 'kg',
    });
  });

  it('starts from that load after one session too', () => {
    const range = { upperLoad: { value: 30, unit: 'kg' } };
    const records = [recordOf('2026-03-02', [done(10, range, { load: 24 })])];
    expect(propose({ plan: planOf([item(range)]), records }).items[0]!.load!.from).toBe(24);
  });

  it('holds on both sides of one exercise, where one of them does', () => {
    const plan = planOf([item(), item(right)]);
    const both = (of: number, other: number) => [recordOf('2026-03-02', [done(of), done(other, right)])];
    expect(lines({ plan, records: both(10, 10) }).map(([action]) => action)).toEqual(['raise-load', 'raise-load']);
    const [first, second] = propose({ plan, records: both(10, 9) }).items;
    expect([first!.action, second!.action]).toEqual(['repeat', 'repeat']);
    expect(first!.load).toEqual({ from: 20, to: 20, unit: 'kg' });
    expect(codes(first!.reasons)).toEqual(['rule-met', 'pain-not-recorded', 'break-not-known', 'other-side-holds']);
    expect(first!.reasons.at(-1)!.values).toEqual({ side: 'right', limb: 'leg' });
    expect(codes(second!.reasons)).toEqual(['rule-not-met']);
    expect(lines({ plan, records: both(9, 10) })).toEqual([
      ['repeat', 20, 'rule-not-met'],
      ['repeat', 20, 'other-side-holds'],
    ]);
    // Two exercises of one name, one for each side, hold nothing of each other.
    const apart = planOf([item(), item({ exercise: 'row', ...right })]);
    const records = [recordOf('2026-03-02', [done(), done(9, { exercise: 'row', ...right })])];
    expect(lines({ plan: apart, records }).map(([action]) => action)).toEqual(['raise-load', 'repeat']);
  });
});

/** An item with the cuff inflated at 50 % of a measured 200 mmHg. */
function cuffed(more: Json = {}): Json {
  const occlusion = measuredOcclusionPressure({ valueMmHg: 200, method: 'doppler', limb: 'leg' });
  return item({
    restriction: 'continuous',
    target: targetCuffPressure({ occlusion, percentLop: 50 }),
    occlusion,
    ...more,
  });
}
const cuffedDone = (more: Json = {}): Json => ({ ...done(10, more), ...cuffed(more), done: done()['done'] as Json });

describe('a proposal for a cuff', () => {
  it('raises the pressure and no load on one limb', () => {
    const plan = planOf([cuffed(), item({ exercise: 'row' }), item({ exercise: 'row', ...right })]);
    const records = [
      recordOf('2026-03-02', [cuffedDone(), done(10, { exercise: 'row' }), done(9, { exercise: 'row', ...right })]),
    ];
    const given = { plan, records, nextPercentLop: 60, date: '2026-03-04' };
    const [press, row, other] = propose(given).items;
    expect([press!.action, row!.action, other!.action]).toEqual(['raise-pressure', 'repeat', 'repeat']);
    expect(press).toMatchObject({
      load: { from: 20, to: 20 },
      percentLop: { from: 50, to: 60 },
      cuffMmHg: { from: 100, to: 120 },
    });
    expect(row!.reasons.at(-1)).toMatchObject({
      code: 'pressure-raised-on-limb',
      values: { side: 'left', limb: 'leg' },
    });
    expect(row!.load!.to).toBe(20);
    expect(row).not.toHaveProperty('percentLop');
    // On another limb the load goes up.
    const apart = planOf([cuffed(), item({ exercise: 'row', ...right })]);
    const done10 = [recordOf('2026-03-02', [cuffedDone(), done(10, { exercise: 'row', ...right })])];
    expect(propose({ ...given, plan: apart, records: done10 }).items[1]!.action).toBe('raise-load');
  });

  it('raises the pressure and no repetitions on one limb', () => {
    // A step of 5 kg is too large for 20 kg, so repetitions come first.
    const given = { plan: planOf([cuffed(), item({ exercise: 'row' })], {}, { step: 5 }), date: '2026-03-04' };
    const records = [recordOf('2026-03-02', [cuffedDone(), done(10, { exercise: 'row' })])];
    expect(lines({ ...given, records })[1]).toEqual(['raise-repetitions', 20, 'repetitions-first']);
    expect(lines({ ...given, records, nextPercentLop: 60 })[1]).toEqual(['repeat', 20, 'pressure-raised-on-limb']);
  });

  it('shows the cautions of a new pressure that goes on', () => {
    // 150 % of nothing is tried: 60 % of 480 mmHg is 288 mmHg, above the 250 mmHg from which we warn.
    const occlusion = measuredOcclusionPressure({ valueMmHg: 480, method: 'doppler', limb: 'leg' });
    const high = { target: targetCuffPressure({ occlusion, percentLop: 50 }), occlusion };
    const given = {
      plan: planOf([cuffed(high)]),
      records: [recordOf('2026-03-02', [cuffedDone(high)])],
      nextPercentLop: 60,
      date: '2026-03-04',
    };
    const raised = propose(given);
    expect(raised.items[0]!.action).toBe('raise-pressure');
    expect(codes(raised.cautions)).toContain('cuff-pressure-high');
    expect(raised.stops).toEqual([]);
    // While a stop is in force, only those that stop.
    const records = [recordOf('2026-03-02', [cuffedDone(high)], { symptoms: ['symptom-chest-pain'] })];
    const stopped = propose({ ...given, records });
    expect(codes(stopped.cautions)).not.toContain('cuff-pressure-high');
    expect(stopped.items[0]).toMatchObject({ action: 'stop', cuffMmHg: { from: 240 }, percentLop: { from: 50 } });
    expect(stopped.items[0]!.cuffMmHg).not.toHaveProperty('to');
    // 60 % of 520 mmHg is 312 mmHg, above the 300 mmHg of the highest trial: it stops.
    const above = measuredOcclusionPressure({ valueMmHg: 520, method: 'doppler', limb: 'leg' });
    const tooHigh = { target: targetCuffPressure({ occlusion: above, percentLop: 50 }), occlusion: above };
    const never = propose({
      ...given,
      plan: planOf([cuffed(tooHigh)]),
      records: [recordOf('2026-03-02', [cuffedDone(tooHigh)])],
    });
    expect(never.items[0]!.action).toBe('stop');
    expect(never.stops).toMatchObject([{ code: 'cuff-pressure-stop', since: '2026-03-04' }]);
    expect(codes(never.cautions)).toContain('cuff-pressure-stop');
  });
});

describe('a stop in force', () => {
  const stop = { code: 'symptom-fainting', text: 'fainting', values: { symptom: 'fainting' }, since: '2026-03-01' };
  const decision = { stop: 'symptom-fainting', by: 'physician', on: '2026-03-03', why: 'seen' };

  it('stops every item, and is the reason', () => {
    const plan = planOf([item(), item({ exercise: 'row' })], { stops: [stop] });
    const { items, stops } = propose({ plan });
    expect(stops).toEqual([stop]);
    for (const one of items) {
      expect(one).toMatchObject({ action: 'stop', load: { from: 20, unit: 'kg' } });
      expect(one.load).not.toHaveProperty('to');
      expect(one.reasons).toStrictEqual([{ code: stop.code, text: stop.text, values: stop.values }]);
    }
    const { values: _, ...without } = stop;
    expect(propose({ plan: planOf(undefined, { stops: [without] }) }).items[0]!.reasons).toStrictEqual([
      { code: stop.code, text: stop.text },
    ]);
  });

  it('gives no share of the maximum to go to', () => {
    const plan = planOf([item({ oneRepMax: { value: 100, unit: 'kg' } })], { stops: [stop] });
    expect(propose({ plan }).items[0]!.percentOneRepMax).toStrictEqual({ from: 20 });
  });

  it('comes from the stops of any record, and from what it reports', () => {
    const old = recordOf('2025-01-01', undefined, { stops: [stop] });
    expect(propose({ records: [old, recordOf('2026-03-02'), recordOf('2026-03-03')] }).items[0]!.action).toBe('stop');
    const reported = recordOf('2025-01-01', undefined, { symptoms: ['symptom-chest-pain'] });
    const { stops, items } = propose({ records: [reported, recordOf('2026-03-02')] });
    expect(items[0]!.action).toBe('stop');
    expect(stops).toMatchObject([{ since: '2025-01-01' }]);
  });

  it('is lifted by a decision of its day or later', () => {
    const plan = planOf(undefined, { stops: [stop] });
    const given = { plan, date: '2026-03-04' };
    expect(propose(given).items[0]!.action).toBe('stop');
    const { items, stops } = propose({ ...given, decisions: [decision] });
    expect(items[0]!.action).toBe('raise-load');
    expect(stops).toMatchObject([{ code: stop.code, lifted: { by: 'physician' } }]);
  });
});

describe('the cautions of a proposal', () => {
  it('are those of the last day, of pain by the rule that was asked for', () => {
    const caution = (code: string, path: readonly unknown[]) => ({ severity: 'caution', code, text: code, path });
    const before = recordOf('2026-03-01', undefined, { cautions: [caution('before', ['items'])] });
    const pain = [{ site: 'joint', before: 0, during: 4, after: 0, nextMorning: 0 }];
    const last = recordOf('2026-03-02', undefined, {
      pain,
      cautions: [caution('of-load', ['items', 0]), caution('of-pain', ['pain', 0])],
    });
    const morning = recordOf('2026-03-02', [done(10, { exercise: 'row' })], {
      cautions: [caution('of-morning', ['items', 0])],
    });
    const found = codes(propose({ records: [before, last, morning] }).cautions);
    expect(found).toContain('of-load');
    expect(found).toContain('of-morning');
    expect(found).not.toContain('before');
    expect(found).not.toContain('of-pain');
    const without = { severity: 'note', code: 'no-path', text: 'no path' };
    expect(codes(propose({ records: [recordOf('2026-03-02', undefined, { cautions: [without] })] }).cautions)).toEqual([
      'no-path',
    ]);
    // Pain of 4 in a joint holds or not by the rule.
    const painCodes = (painRule?: string) =>
      codes(propose({ records: [last], ...(painRule && { painRule }) }).cautions);
    expect(painCodes()).not.toEqual(painCodes('front-of-knee'));
  });

  it('come with what to measure again', () => {
    const oneRepMax = { value: 100, unit: 'kg' };
    const plan = planOf([item({ oneRepMax })]);
    expect(propose({ plan, date: '2026-03-04', oneRepMaxTestedOn: '2026-02-01' }).measureAgain).toMatchObject([
      { code: 'test-maximum-due', values: { days: 31 } },
    ]);
    expect(propose({ plan }).measureAgain).toMatchObject([{ code: 'test-maximum-weeks' }]);
  });
});
