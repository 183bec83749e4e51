// What is proposed for one item, on items and records written by hand. What must follow is in the words of the rules
// (`progressionRules`, `painRules`, `symptoms`) and of `progressionLimits`: at most 10 points of pressure, 5 points of
// 1RM or 10 % of the load, 28 days, an effort of 10, 30 repetitions; the numbers are worked out by hand.
import { describe, expect, it } from 'vitest';
import { atLifted, draftItem, goalsOf, loadOf, percentOf, type Draft } from '../../src/plan/item-draft.js';
import { progressionRules } from '../../src/plan/progression-rules.js';
import { targetCuffPressure } from '../../src/pressure/target.js';

type Case = Parameters<typeof draftItem>[0];
type Item = Case['item'];
type Done = Case['own'][number]['item'];

const kg = (value: number) => ({ value, unit: 'kg' });
const times = (...counts: readonly number[]) => counts.map((repetitions) => ({ repetitions, restS: 30 }));
const seconds = (...lengths: readonly number[]) => lengths.map((durationS) => ({ durationS, restS: 30 }));

/** 50 % of 200 mmHg. */
const pressure = (percentLop = 50, more: object = {}) => targetCuffPressure({ occlusion: 200, percentLop, ...more });

/** 20 kg of a maximum of 100 kg, four sets, a cuff. */
const itemOf = (more: object = {}): Item =>
  ({
    exercise: 'press',
    limb: 'leg',
    side: 'left',
    sets: times(30, 15, 15, 15),
    load: kg(20),
    oneRepMax: kg(100),
    restriction: 'continuous',
    ...more,
  }) as unknown as Item;

const withCuff = (more: object = {}) => itemOf({ target: pressure(), ...more });

interface Session {
  readonly done?: object;
  readonly item?: object;
  readonly record?: object;
}

/** A session that was done as planned, but for what is given. */
const sessionOf = (item: Item, { done = {}, item: ofItem = {}, record = {} }: Session) => ({
  record: { date: '2026-03-02', symptoms: [], ...record } as unknown as Case['latest'][number],
  item: {
    ...item,
    ...ofItem,
    done: {
      sets: item.sets,
      ...(item.load && { load: item.load.value, unit: 'kg' }),
      ...(item.target && { heldMmHg: item.target.value }),
      stoppedEarly: false,
      ...done,
    },
  } as unknown as Done,
});

const rule = (id: string): Case['rule'] => progressionRules.find((one) => one.id === id)!;

function draft(item: Item, sessions: readonly Session[], more: Partial<Case> = {}): Draft {
  const own = sessions.map((session) => sessionOf(item, session));
  return draftItem({
    item,
    exercise: { step: 2.5 } as Case['exercise'],
    own,
    latest: own.length > 0 ? [own.at(-1)!.record] : [sessionOf(item, {}).record],
    rule: rule('all-repetitions'),
    painRule: 'cautious',
    nextPercentLop: undefined,
    deload: false,
    date: '2026-03-04',
    longBreakDays: 28,
    ...more,
  });
}

/** The draft in short: action, load, percentage of a new pressure, sets; and its reasons with their figures. */
function short(...given: Parameters<typeof draft>) {
  const { action, load, target, sets, reasons } = draft(...given);
  const goals = sets?.map(({ repetitions, durationS }) => repetitions ?? `${durationS} s`).join('-');
  return [[action, load, target && percentOf(target), goals], reasons.map(({ code, values }) => [code, values])];
}
/** The action, and the codes of its reasons. */
const codes = (...given: Parameters<typeof draft>) => {
  const { action, reasons } = draft(...given);
  return [action, ...reasons.map(({ code }) => code)];
};

const asked = { record: { pain: [] } };
const done4 = '30-15-15-15';
const met = ['rule-met', { done: done4, goal: done4 }] as const;
const first = ['repetitions-first', { from: done4, to: '30-15-15-17' }];
const noPain = ['pain-not-recorded', undefined] as const;

describe('what an item has', () => {
  it('loads, a maximum in the unit of the load (1 lb is 0.45359237 kg), and nothing that it has none of', () => {
    expect(loadOf(itemOf())).toEqual({ load: 20, unit: 'kg', maximum: 100 });
    const pounds = itemOf({ load: { value: 45, unit: '[lb_av]' }, oneRepMax: kg(45.359237) });
    expect(loadOf(pounds)).toEqual({ load: 45, unit: 'lb', maximum: 100 });
    expect(loadOf(itemOf({ load: undefined, oneRepMax: undefined }))).toEqual({
      load: undefined,
      unit: 'kg',
      maximum: undefined,
    });
  });

  it('goals without loads and rests', () => {
    expect(goalsOf([{ repetitions: 15, load: 20, restS: 30 }, { durationS: 60 }] as never)).toEqual([
      { repetitions: 15 },
      { durationS: 60 },
    ]);
  });

  it('a load in a range is taken where it was lifted last, in its range alone', () => {
    const ranged = itemOf({ upperLoad: kg(30) });
    const lifted = (item: Item, done: object) => atLifted(item, sessionOf(item, { done }).item).load?.value;
    expect(lifted(ranged, { load: 25 })).toBe(25);
    expect(lifted(ranged, { load: 30 })).toBe(30);
    expect(lifted(ranged, { load: 30.5 })).toBe(20);
    expect(lifted(ranged, { load: 15 })).toBe(20);
    expect(lifted(ranged, { load: 25, instead: 'squat' })).toBe(20);
    expect(lifted(ranged, { load: undefined })).toBe(20);
    expect(lifted(ranged, { load: 25, unit: undefined })).toBe(20);
    expect(lifted(ranged, { load: 25, sets: [{ repetitions: 15, load: 27.5, restS: 0 }] })).toBe(27.5);
    expect(lifted(itemOf(), { load: 25 })).toBe(20);
    // A heavy single set of the plan is no load of the others.
    const single = itemOf({ upperLoad: kg(30), sets: [{ repetitions: 15, load: 25, restS: 0 }] });
    expect(lifted(single, { load: 20, sets: [{ repetitions: 15, load: 25, restS: 0 }] })).toBe(20);
    expect(atLifted(ranged, undefined)).toBe(ranged);
    const unloaded = itemOf({ load: undefined, upperLoad: kg(30) });
    expect(atLifted(unloaded, sessionOf(unloaded, { done: { load: 25, unit: 'kg' } }).item)).toBe(unloaded);
    expect(atLifted(ranged, sessionOf(ranged, { done: { load: 25 } }).item).load).toEqual(kg(25));
  });
});

describe('the rule is met', () => {
  it('the load goes up by a step', () => {
    expect(short(withCuff(), [asked])).toEqual([['raise-load', 22.5, undefined, undefined], [met]]);
    expect(short(withCuff(), [{}])).toEqual([
      ['raise-load', 22.5, undefined, undefined],
      [met, noPain],
    ]);
  });

  it('what was not recorded is named', () => {
    expect(codes(withCuff(), [{ ...asked, done: { heldMmHg: undefined } }], { date: undefined })).toEqual([
      'raise-load',
      'rule-met',
      'held-not-recorded',
      'break-not-known',
    ]);
    const item = withCuff();
    const records = [{ pain: [] }, {}].map((record) => sessionOf(item, { record }).record);
    expect(codes(item, [asked], { latest: records })).toEqual(['raise-load', 'rule-met', 'pain-not-recorded']);
  });

  it.each([
    [{ site: 'joint', during: 1 }, true],
    [{ site: 'joint', after: 1 }, true],
    [{ site: 'joint', during: 0, after: 0 }, false],
    [{ site: 'joint' }, false],
    [{ site: 'joint', during: 1, nextMorning: 1 }, false],
    [{ site: 'muscle', after: 1 }, false],
    [{ site: 'joint', during: 1, side: 'right' }, false],
  ])('pain %j: the next morning is open: %s', (pain, open) => {
    expect(codes(withCuff(), [{ record: { pain: [pain] } }])).toEqual([
      'raise-load',
      'rule-met',
      ...(open ? ['pain-next-morning-not-recorded'] : []),
    ]);
  });

  it('by the rule’s own step in kilograms, where you name none', () => {
    const sets = { sets: times(30, 15, 15, 16), lastSetToFailure: true };
    const five = { rule: rule('set-four-over-15'), exercise: {} as Case['exercise'] };
    expect(short(withCuff(), [{ ...asked, done: sets }], five)[0]).toEqual(['raise-load', 25, undefined, undefined]);
    expect(short(withCuff(), [{ ...asked, done: sets }], { ...five, exercise: undefined })[0]?.[1]).toBe(25);
    const pounds = withCuff({ load: { value: 44, unit: '[lb_av]' } });
    expect(short(pounds, [{ ...asked, done: { ...sets, load: 44, unit: 'lb' } }], five)).toMatchObject([
      ['raise-load', undefined, undefined, undefined],
      [expect.anything(), ['step-not-known', undefined]],
    ]);
    expect(codes(withCuff(), [{ ...asked, done: { sets: sets.sets } }], five)).toEqual([
      'repeat',
      'failure-not-recorded',
    ]);
  });

  it('by at least the percentage of the rule', () => {
    const free = itemOf({ restriction: 'none', load: kg(60) });
    const more = { done: { sets: times(30, 15, 15, 16) }, ...asked };
    // 2 % of 60 kg are 1.2 kg: three steps of 0.5 kg.
    const percent = { rule: rule('two-to-ten-percent'), exercise: { step: 0.5 } as Case['exercise'] };
    expect(short(free, [more], percent)[0]).toEqual(['raise-load', 61.5, undefined, undefined]);
    expect(short(free, [more], { ...percent, exercise: {} as Case['exercise'] })[0]).toEqual([
      'raise-load',
      61.2,
      undefined,
      undefined,
    ]);
    // 5 kg of 30 kg are 16.7 %, but 5 points of a maximum of 100 kg.
    const light = itemOf({ restriction: 'none', load: kg(30) });
    expect(short(light, [more], { ...percent, exercise: { step: 5 } as Case['exercise'] })).toMatchObject([
      ['raise-load', 35, undefined, undefined],
      [expect.anything(), ['step-in-points', { next: 35, unit: 'kg', largest: 10, points: 5 }]],
    ]);
    // 6 kg of 60 kg are 10 %.
    const wide = itemOf({ restriction: 'none', load: kg(60), oneRepMax: kg(120) });
    expect(codes(wide, [more], { ...percent, exercise: { step: 6 } as Case['exercise'] })).toEqual([
      'raise-load',
      'rule-met',
    ]);
  });

  it('without a load nothing can go up', () => {
    const item = withCuff({ load: undefined, oneRepMax: undefined });
    expect(short(item, [asked])).toEqual([
      ['repeat', undefined, undefined, undefined],
      [met, ['no-load-to-raise', undefined]],
    ]);
  });

  it('a load above the recommended 20–40 % of 1RM is named, with a cuff alone', () => {
    const at = (load: number, more: object = {}) => codes(withCuff({ load: kg(load), ...more }), [asked]);
    expect(at(37.5)).toEqual(['raise-load', 'rule-met']);
    expect(at(40)).toEqual(['raise-load', 'rule-met', 'raised-above-guidance']);
    expect(at(40, { restriction: 'none', target: undefined })).toEqual(['raise-load', 'rule-met']);
    expect(draft(withCuff({ load: kg(40) }), [asked]).reasons.at(-1)?.values).toEqual({
      percentOneRepMax: 42.5,
      low: 20,
      high: 40,
    });
  });
});

describe('a step that is too large: repetitions come first', () => {
  const available = { exercise: { available: [20, 26] } as unknown as Case['exercise'] };

  it('above 5 points of the maximum', () => {
    expect(short(withCuff(), [asked], available)).toEqual([
      // One more of few, two more of ten and over: the last of the sets with the fewest.
      ['raise-repetitions', 20, undefined, '30-15-15-17'],
      [met, ['load-step-too-large', { next: 26, unit: 'kg', points: 6, load: 20, largest: 5 }], first],
    ]);
    expect(codes(withCuff(), [asked], { exercise: { step: 5 } as Case['exercise'] })[0]).toBe('raise-load');
  });

  it('above 10 % of the load where the maximum is not known', () => {
    const item = withCuff({ oneRepMax: undefined });
    expect(short(item, [asked])).toMatchObject([
      ['raise-repetitions', 20, undefined, '30-15-15-17'],
      [met, ['load-step-too-large-percent', { next: 22.5, unit: 'kg', percent: 12.5, load: 20, largest: 10 }], first],
    ]);
    expect(codes(item, [asked], { exercise: { step: 2 } as Case['exercise'] })).toEqual(['raise-load', 'rule-met']);
  });

  it('no heavier load', () => {
    const most = { exercise: { available: [15, 20] } as unknown as Case['exercise'] };
    expect(short(withCuff(), [asked], most)).toMatchObject([
      ['raise-repetitions', 20, undefined, '30-15-15-17'],
      [met, ['no-heavier-load', { load: 20, unit: 'kg' }], first],
    ]);
  });

  it.each<[sets: readonly number[], toFailure: boolean, to: string | undefined]>([
    [[8, 8, 8], false, '8-8-9'],
    [[9, 9, 10], false, '9-10-10'],
    [[10, 12, 10], false, '10-12-12'],
    [[29, 30], false, '30-30'],
    [[30, 30], false, undefined],
    // The last one goes to failure anyway.
    [[15, 15, 8], true, '15-17-8'],
    [[30, 30, 8], true, undefined],
    [[15], true, undefined],
  ])('%j repetitions, the last to failure %s: %s', (counts, toFailure, to) => {
    const item = withCuff({ sets: times(...counts), ...(toFailure && { lastSetToFailure: true }) });
    const [what, reasons] = short(item, [asked], available);
    if (to === undefined) {
      expect(what).toEqual(['repeat', 20, undefined, undefined]);
      expect(reasons?.at(-1)).toEqual(['repetitions-at-most', { most: 30 }]);
    } else expect(what).toEqual(['raise-repetitions', 20, undefined, to]);
  });

  it('until the repetitions that were added make up for it', () => {
    const raised = (raisedFrom: readonly number[]) =>
      ({ available: [20, 26], raisedFrom }) as unknown as Case['exercise'];
    // 100 × 20 kg is as much as 75 × 26.67 kg.
    const item = withCuff({ sets: times(30, 30, 20, 20) });
    expect(short(item, [asked], { exercise: raised([30, 15, 15, 15]) })).toEqual([
      ['raise-load', 26, undefined, done4],
      [
        ['rule-met', { done: '30-30-20-20', goal: '30-30-20-20' }],
        [
          'load-step-earned',
          { repetitions: 100, before: 75, sets: done4, load: 20, next: 26, unit: 'kg', percent: 30 },
        ],
      ],
    ]);
    // 90 × 20 kg is just as much as 75 × 24 kg.
    const just = { available: [20, 24], raisedFrom: [30, 15, 15, 15] } as unknown as Case['exercise'];
    expect(codes(withCuff({ sets: times(30, 20, 20, 20), oneRepMax: undefined }), [asked], { exercise: just })).toEqual(
      ['raise-load', 'rule-met', 'load-step-earned'],
    );
    // 97 × 20 kg = 1940 kg are fewer than 75 × 26 kg = 1950 kg.
    const early = withCuff({ sets: times(30, 30, 20, 17) });
    expect(codes(early, [asked], { exercise: raised([30, 15, 15, 15]) })[0]).toBe('raise-repetitions');
    expect(codes(item, [asked], { exercise: raised([30, 15, 15]) })[0]).toBe('raise-repetitions');
  });
});

describe('the pressure goes up instead', () => {
  it('by at most 10 points, and the load stays', () => {
    expect(short(withCuff(), [asked], { nextPercentLop: 60 })).toEqual([
      ['raise-pressure', 20, 60, undefined],
      [met, ['pressure-instead', { percentLop: 60 }]],
    ]);
    expect(short(withCuff(), [asked], { nextPercentLop: 61 })).toEqual([
      ['repeat', 20, undefined, undefined],
      [met, ['pressure-step-too-large', { from: 50, to: 61, largest: 10 }]],
    ]);
  });

  it('where it is no higher, and without a cuff, the load does', () => {
    expect(short(withCuff(), [asked], { nextPercentLop: 50 })).toEqual([
      ['raise-load', 22.5, undefined, undefined],
      [met, ['pressure-not-higher', { percentLop: 50, held: 100 }]],
    ]);
    expect(short(itemOf({ restriction: 'none' }), [asked], { nextPercentLop: 60 })).toEqual([
      ['raise-load', 22.5, undefined, undefined],
      [met, ['pressure-no-cuff', undefined]],
    ]);
  });

  it('for the same gauge, ceiling and mode', () => {
    const item = withCuff({ target: pressure(50, { gaugeStepMmHg: 8, ceilingMmHg: 110 }) });
    // 60 % of 200 mmHg is 120 mmHg: 110 by its ceiling, 104 by its gauge.
    const { target } = draft(item, [{ ...asked, done: { heldMmHg: 96 } }], { nextPercentLop: 60 });
    expect(target?.value).toBe(104);
    expect(target?.inputs).toMatchObject({ percentLop: 60, gaugeStepMmHg: 8, ceilingMmHg: 110 });
  });
});

describe('the last session was another one than this plan has', () => {
  it.each<[what: string, session: Session, reason: unknown]>([
    ['exercise', { done: { instead: 'squat' } }, ['other-exercise-recorded', { exercise: 'squat' }]],
    [
      'restriction',
      { item: { restriction: 'intermittent' } },
      ['other-restriction-recorded', { done: 'intermittent', planned: 'continuous' }],
    ],
    ['load', { done: { load: 25 } }, ['other-load-recorded', { done: 25, planned: 20, unit: 'kg' }]],
    [
      'load of a set',
      {
        done: {
          sets: [
            { repetitions: 30, restS: 0 },
            { repetitions: 15, load: 15, restS: 0 },
          ],
        },
      },
      ['other-load-recorded', { done: 15, planned: 20, unit: 'kg' }],
    ],
  ])('%s', (_, session, reason) => {
    expect(short(withCuff(), [session])).toEqual([['repeat', 20, undefined, undefined], [reason]]);
  });

  it('pressure, in the sets and in the rests', () => {
    const other = ['other-pressure-recorded', { done: 40, planned: 50 }];
    expect(short(withCuff(), [{ item: { target: pressure(40) }, done: { heldMmHg: 80 } }])[1]).toEqual([other]);
    const partial = withCuff({ target: pressure(60), restTarget: pressure(50), restriction: 'partial' });
    expect(short(partial, [{ item: { restTarget: pressure(40) } }])[1]).toEqual([other]);
    expect(codes(partial, [{ ...asked, item: { restTarget: undefined } }])[0]).toBe('raise-load');
    expect(codes(withCuff(), [{ ...asked, item: { restTarget: pressure(40) } }])[0]).toBe('raise-load');
  });

  it('the same load in pounds, sets more than planned and no load at all are no other', () => {
    const pounds = { load: 44.092452436975516, unit: 'lb' };
    expect(codes(withCuff(), [{ ...asked, done: pounds }])[0]).toBe('raise-load');
    expect(codes(withCuff(), [{ ...asked, done: { unit: undefined } }])[0]).toBe('raise-load');
    expect(codes(withCuff(), [{ ...asked, done: { sets: times(30, 15, 15, 15, 15) } }])[0]).toBe('raise-load');
    expect(codes(withCuff(), [{ ...asked, done: { load: undefined } }])[0]).toBe('raise-load');
    expect(codes(withCuff({ load: undefined }), [{ done: { load: 20, unit: 'kg' } }])).toContain('no-load-to-raise');
  });
});

describe('less than the last time', () => {
  const effort = { record: { sessionRpe: 10 } };
  const tingling = { record: { symptoms: ['symptom-tingling'] } };

  it('the load by a step, at an effort of 10 and for a lighter session', () => {
    expect(short(withCuff(), [effort])).toEqual([
      ['back-off', 17.5, undefined, undefined],
      [['back-off-effort', { effort: 10 }]],
    ]);
    expect(codes(withCuff(), [{ record: { sessionRpe: 9.5 } }])[0]).toBe('raise-load');
    expect(short(withCuff(), [{}], { deload: true })).toEqual([
      ['back-off', 17.5, undefined, undefined],
      [['back-off-deload', undefined]],
    ]);
    expect(short(withCuff(), [], { deload: true })[0]?.[0]).toBe('back-off');
  });

  it('where no lighter load is known, nothing; where there is none, a set fewer', () => {
    const none = { exercise: undefined };
    expect(short(withCuff(), [effort], none)).toEqual([
      ['back-off', undefined, undefined, undefined],
      [
        ['back-off-effort', { effort: 10 }],
        ['step-not-known', undefined],
      ],
    ]);
    const least = { exercise: { available: [20, 25] } as unknown as Case['exercise'] };
    expect(short(withCuff(), [effort], least)).toEqual([
      ['back-off', 20, undefined, '30-15-15'],
      [
        ['back-off-effort', { effort: 10 }],
        ['no-lighter-load', { load: 20, unit: 'kg' }],
        ['fewer-sets', { from: done4, to: '30-15-15' }],
      ],
    ]);
    expect(short(withCuff({ sets: times(30) }), [effort], least)).toMatchObject([
      ['back-off', undefined, undefined, undefined],
      [expect.anything(), expect.anything(), ['back-off-by-hand', undefined]],
    ]);
    expect(short(withCuff({ load: undefined }), [effort])).toEqual([
      ['back-off', undefined, undefined, '30-15-15'],
      [
        ['back-off-effort', { effort: 10 }],
        ['fewer-sets', { from: done4, to: '30-15-15' }],
      ],
    ]);
  });

  it('the pressure by 10 points, for a symptom of the cuff; both where both are asked for', () => {
    const lower = ['pressure-lower', { percentLop: 40 }];
    const symptom = ['back-off-symptom', { symptom: 'symptom-tingling' }];
    expect(short(withCuff(), [tingling])).toEqual([
      ['back-off', 20, 40, undefined],
      [symptom, lower],
    ]);
    expect(short(withCuff(), [{ record: { ...tingling.record, sessionRpe: 10 } }])).toEqual([
      ['back-off', 17.5, 40, undefined],
      [symptom, ['back-off-effort', { effort: 10 }], lower],
    ]);
    // Of two sessions of the day, once.
    const item = withCuff();
    const { record } = sessionOf(item, tingling);
    expect(short(item, [tingling], { latest: [record, record] })[1]).toEqual([symptom, lower]);
    // A stop is no way down, and soreness lowers the load.
    expect(codes(item, [{ record: { symptoms: ['symptom-soreness'] } }])).toEqual(['back-off', 'back-off-symptom']);
    expect(codes(item, [{ record: { symptoms: ['symptom-chest-pain'] } }])[0]).toBe('raise-load');
  });

  it('the pressure not down to that of the rests, nor below 1 %', () => {
    const partial = withCuff({ target: pressure(50), restTarget: pressure(45), restriction: 'partial' });
    expect(short(partial, [tingling])[0]).toEqual(['back-off', 20, 46, undefined]);
    const low = withCuff({ target: pressure(10) });
    expect(short(low, [tingling])).toEqual([
      ['back-off', 17.5, undefined, undefined],
      [['back-off-symptom', { symptom: 'symptom-tingling' }]],
    ]);
    // 50 and 49 % are the same 96 mmHg on a gauge of 16 mmHg.
    const coarse = withCuff({
      target: pressure(50, { gaugeStepMmHg: 16 }),
      restTarget: pressure(48, { gaugeStepMmHg: 16 }),
      restriction: 'partial',
    });
    expect(short(coarse, [tingling])[0]).toEqual(['back-off', 17.5, undefined, undefined]);
  });

  it('the pressure from the ceiling, where one holds it down', () => {
    // 70 of 200 mmHg are 35 %: 10 points less are 25 %.
    const held = withCuff({ target: pressure(50, { ceilingMmHg: 70 }) });
    expect(short(held, [tingling])[0]).toEqual(['back-off', 20, 25, undefined]);
    // 71 mmHg are 35.5 %, in whole percent 35.
    const odd = withCuff({ target: pressure(50, { ceilingMmHg: 71 }) });
    expect(short(odd, [tingling])[0]).toEqual(['back-off', 20, 25, undefined]);
    // A ceiling that does not hold it down leaves a share with decimals as it is.
    const high = withCuff({ target: pressure(50.5, { ceilingMmHg: 150 }) });
    expect(short(high, [tingling])[0]).toEqual(['back-off', 20, 40.5, undefined]);
  });

  it('for pain, by its rule; under a cuff that this exercise does not have, it holds', () => {
    const pain = (report: object) => ({ record: { pain: [report] } });
    expect(codes(withCuff(), [pain({ site: 'joint', during: 4 })])).toEqual(['back-off', 'pain-back-off']);
    expect(codes(withCuff(), [pain({ site: 'joint', during: 2 })])).toEqual(['repeat', 'pain-hold']);
    expect(codes(withCuff(), [pain({ site: 'joint', during: 2, limb: 'arm' })])[0]).toBe('raise-load');
    expect(short(withCuff(), [pain({ site: 'under-cuff', after: 4 })])[0]).toEqual(['back-off', 20, 40, undefined]);
    const free = itemOf({ restriction: 'none' });
    expect(codes(free, [pain({ site: 'under-cuff', after: 4 })])).toEqual(['repeat', 'pain-hold']);
    expect(codes(free, [pain({ site: 'under-cuff', after: 1 })])[0]).toBe('raise-load');
    expect(codes(free, [pain({ site: 'joint', during: 4 })])).toEqual(['back-off', 'pain-back-off']);
    expect(short(free, [tingling])).toEqual([
      ['repeat', 20, undefined, undefined],
      [['hold-symptom', { symptom: 'symptom-tingling' }]],
    ]);
    expect(codes(free, [{ record: { symptoms: ['symptom-dizziness'] } }])[0]).toBe('back-off');
  });

  it('where sets were missed in two sessions running', () => {
    const short3 = { done: { sets: times(30, 15, 15) } };
    const fewer = { done: { sets: times(30, 15, 15, 14) } };
    expect(short(withCuff(), [fewer, short3])).toEqual([
      ['back-off', 17.5, undefined, undefined],
      [['back-off-failed-twice', { done: '30-15-15-14; 30-15-15', goal: done4 }]],
    ]);
    expect(codes(withCuff(), [fewer])).toEqual(['repeat', 'rule-not-met']);
    expect(codes(withCuff(), [fewer, {}])[0]).toBe('raise-load');
    expect(codes(withCuff(), [{}, fewer])).toEqual(['repeat', 'rule-not-met']);
    expect(codes(withCuff(), [fewer, {}, fewer])).toEqual(['repeat', 'rule-not-met']);
    expect(codes(withCuff(), [fewer, fewer, fewer])[0]).toBe('back-off');
    // With a symptom of the cuff, both go down; for a lighter session too.
    const both = { ...fewer, ...tingling };
    expect(short(withCuff(), [fewer, both])[0]).toEqual(['back-off', 17.5, 40, undefined]);
    expect(short(withCuff(), [tingling], { deload: true })[0]).toEqual(['back-off', 17.5, 40, undefined]);
    // One with another load does not count.
    expect(codes(withCuff(), [{ done: { ...fewer.done, load: 25 } }, fewer])).toEqual(['repeat', 'rule-not-met']);
  });

  it('the last set is not missed where it goes to failure anyway; by time, seconds count', () => {
    const fewer = { done: { sets: times(30, 15, 15, 14) } };
    expect(codes(withCuff({ lastSetToFailure: true }), [fewer, fewer])).toEqual(['repeat', 'rule-not-met']);
    const second = { done: { sets: times(30, 14, 15, 15) } };
    expect(codes(withCuff({ lastSetToFailure: true }), [second, second])[0]).toBe('back-off');
    const left = { done: { sets: times(30, 15, 15) } };
    expect(codes(withCuff({ lastSetToFailure: true }), [left, left])[0]).toBe('back-off');
    const timed = withCuff({ sets: seconds(60, 60) });
    const missed = { done: { sets: seconds(60, 50) } };
    expect(codes(timed, [missed, missed])).toEqual(['back-off', 'back-off-failed-twice']);
    expect(codes(timed, [{}, {}])).toEqual(['repeat', 'rule-counts']);
    const mixed = withCuff({ sets: [...times(15), ...seconds(60)] });
    expect(codes(mixed, [{}])).toEqual(['repeat', 'rule-counts']);
    const empty = { done: { sets: [{ restS: 0 }, { restS: 0 }] } };
    expect(codes(timed, [empty, empty])[0]).toBe('back-off');
  });
});

describe('everything stays as it is', () => {
  it.each<[session: Session, more: Partial<Case>, reason: unknown]>([
    [{}, { date: '2026-03-30' }, ['hold-long-break', { days: 28, limit: 28 }]],
    [{}, { date: '2026-03-09', longBreakDays: 7 }, ['hold-long-break', { days: 7, limit: 7 }]],
    [{ done: { stoppedEarly: true } }, {}, ['hold-stopped-early', undefined]],
    [{ done: { heldMmHg: 111 } }, {}, ['hold-held-above', { held: 111, target: 100 }]],
    [{ done: { heldMmHg: 200 } }, {}, ['hold-held-above', { held: 200, target: 100 }]],
    [{ done: { heldMmHg: 301 } }, {}, ['hold-held-above', { held: 301, target: 100 }]],
    [
      { done: { heldMmHg: 100, occlusionMmHg: 160 } },
      {},
      ['hold-share-above', { held: 100, heldPercent: 62.5, occlusion: 160, percentLop: 50 }],
    ],
    [{ done: { heldMmHg: 89 } }, {}, ['hold-held-below', { held: 89, target: 100 }]],
    [
      { done: { heldMmHg: 100, occlusionMmHg: 250 } },
      {},
      ['hold-share-below', { held: 100, heldPercent: 40, occlusion: 250, percentLop: 50 }],
    ],
  ])('%j %j', (session, more, reason) => {
    expect(short(withCuff(), [session], more)).toEqual([['repeat', 20, undefined, undefined], [reason]]);
  });

  it('without a record; a day before a long break is none', () => {
    expect(codes(withCuff(), [])).toEqual(['repeat', 'no-record']);
    expect(codes(withCuff(), [], { date: '2027-03-02' })).toEqual(['repeat', 'no-record']);
    expect(codes(withCuff(), [asked], { date: '2026-03-29' })[0]).toBe('raise-load');
    // Without a day, that of the last record.
    const item = withCuff();
    const later = sessionOf(item, { record: { date: '2026-05-02' } }).record;
    expect(codes(item, [{}], { date: undefined, latest: [later] })).toEqual(['repeat', 'hold-long-break']);
  });

  it('repetitions beyond the goal tell little up to 30 % of 1RM with the cuff', () => {
    const over = { ...asked, done: { sets: times(30, 15, 15, 17) } };
    const rules = { rule: rule('two-for-two') };
    expect(short(withCuff({ load: kg(30) }), [over, over], rules)).toEqual([
      ['repeat', 30, undefined, undefined],
      [['over-goal-not-applied', { percentOneRepMax: 30, most: 30 }]],
    ]);
    expect(codes(withCuff({ load: kg(31) }), [over, over], rules)[0]).toBe('raise-load');
    expect(codes(itemOf({ restriction: 'none' }), [over, over], rules)[0]).toBe('raise-load');
    expect(codes(withCuff({ oneRepMax: undefined }), [over, over], rules)).toContain('rule-met');
    expect(codes(withCuff({ load: undefined }), [over, over], rules)).toContain('rule-met');
  });

  it('where too few sessions running are on record: none after a long break, none with another load', () => {
    const over = (more: Session = {}): Session => ({
      ...more,
      record: { pain: [], ...more.record },
      done: { sets: times(30, 15, 15, 17), ...more.done },
    });
    const two = { rule: rule('two-for-two'), date: '2026-03-04' };
    const item = itemOf({ restriction: 'none' });
    const few = (...sessions: readonly Session[]) => short(item, sessions, two);
    const found = (count: number) => [
      ['repeat', 20, undefined, undefined],
      [['too-few-records', { needed: 2, found: count }]],
    ];
    expect(few(over())).toEqual(found(1));
    expect(few(over({ done: { load: 17.5 } }), over())).toEqual(found(1));
    expect(few(over({ record: { date: '2026-02-02' } }), over())).toEqual(found(1));
    expect(few(over({ record: { date: '2026-02-03' } }), over())[0]?.[0]).toBe('raise-load');
    // Of three, those after the break count.
    const after = [over({ record: { date: '2026-01-02' } }), over({ record: { date: '2026-03-01' } }), over()];
    expect(few(...after)).toMatchObject([
      ['raise-load', 22.5, undefined, undefined],
      [['rule-met', { done: '30-15-15-17; 30-15-15-17', goal: done4 }], expect.anything()],
    ]);
    expect(few({}, over(), over())[0]?.[0]).toBe('raise-load');
    expect(few(over(), {})).toEqual([
      ['repeat', 20, undefined, undefined],
      [['rule-not-met', { done: '30-15-15-17; 30-15-15-15', goal: done4 }]],
    ]);
  });
});
