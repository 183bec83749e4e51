import type { PlanExercise } from '../../src/plan/index.js';
import { describe, expect, it } from 'vitest';
import { testedOneRepMax, type Caution } from '../../src/index.js';
import { cite, working } from '../../src/text/index.js';
import {
  progression,
  nextStage,
  expandDocument,
  nextSession,
  planSession,
  progressionRules,
  readDocument,
  reviewPlan,
  screen,
  type Plan,
  type PlanRequest,
} from '../../src/plan/index.js';
import { documentOf, expandedOf } from '../../src/plan/read-document.js';
import { publicFunctions } from '../support/public-functions.js';
import { codesOf, expectClose, expectHoldsTogether, message, type Said } from '../support/invariants.js';
import { jointPain, planOf, recordOf } from '../support/plans.js';

const plan = planOf({ percentOneRepMax: 20, step: 2.5 });
const all = [30, 15, 15, 15];
const itemOf = (...given: Parameters<typeof planOf>) => expandDocument(planOf(...given)).items[0]!;
const everyKind = planSession(publicFunctions['planSessionOfEveryKind']!.right as PlanRequest);
const several = planSession({
  ...plan.request,
  bodyMassKg: 80,
  exercises: [
    {
      ...plan.request.exercises[0]!,
      restriction: 'partial',
      restPercentLop: 20,
      warmUp: [{ repetitions: 5, restS: 30 }],
    },
    { name: 'walk', mode: 'aerobic', limb: 'leg', scheme: '2x3min', restS: 60, restriction: 'intermittent' },
    {
      name: 'squat',
      limb: 'leg',
      bodyMassPercent: 60,
      scheme: '2x5',
      tempo: plan.request.exercises[0]!.tempo!,
      restS: 30,
      restriction: 'none',
    },
  ],
});
const calm = jointPain(1, 1, 1, 1);

describe('every document', () => {
  const record = recordOf(plan, all, { ...calm, symptoms: ['symptom-sharp-pain'], sessionRpe: 6, sessionS: 1500 });
  // Made within the test, as all that is held to account is.
  const documents: [string, () => object][] = [
    ['plan', () => planOf({ percentOneRepMax: 20, step: 2.5 })],
    ['plan of several exercises', () => planSession(several.request)],
    ['record', () => recordOf(plan, all, { ...calm, symptoms: ['symptom-sharp-pain'], sessionRpe: 6, sessionS: 1500 })],
    ['record of several exercises', () => recordOf(several, [5])],
    ['review', () => reviewPlan(plan)],
    ['review of a record', () => reviewPlan(record)],
    [
      'screening',
      () => screen({ ageYears: 61, systolicMmHg: 182, answers: { pregnancy: 'yes', 'first-session': 'yes' } }),
    ],
    ...progressionRules.map(({ id }): (typeof documents)[number] => [
      `proposal, ${id}`,
      () => nextSession({ plan, records: [recordOf(plan, all)], rule: id }),
    ]),
    ...progression.map(({ id }): (typeof documents)[number] => [
      `place in the progression, ${id}`,
      () => nextStage({ stage: id }),
    ]),
  ];
  it.each(documents)('%s', (_name, make) => {
    const document = make();
    expectHoldsTogether(document);
    expect(cite(document).length).toBeGreaterThan(0);
    const { cautions = [] } = document as { readonly cautions?: readonly Caution[] };
    const gravity = cautions.map(({ severity }) => ['stop', 'caution', 'note'].indexOf(severity));
    expect(gravity).toEqual([...gravity].sort());
    expect(new Set(cautions.map(({ text }) => text)).size).toBe(cautions.length);
  });

  it('says what stands on every one of its kind', () => {
    const disclaimers = ({ disclaimers: all }: { readonly disclaimers: readonly { code: string; text: string }[] }) =>
      message(all);
    expect(disclaimers(expandDocument(planOf()))).toEqual([
      ['not-cleared'],
      ['local-codes-decide'],
      ['screen-first', { source: 'risk-stratification-2022' }],
      ['supervise-first-sessions', { source: 'case-report-2016' }],
      ['reperfuse-between-exercises'],
      ['side-effects-usual', { source: 'practitioner-survey-2018' }],
      ['burn-usual'],
      ['watch-afterwards'],
    ]);
    expect(disclaimers(expandDocument(recordOf(plan, all)))).toEqual([
      ['record-clears-no-one'],
      ['local-codes-decide'],
      ['watch-afterwards'],
    ]);
    expect(disclaimers(screen({ answers: {} }))).toEqual([
      ['screening-clears-no-one'],
      ['local-codes-decide'],
      ['screening-again'],
    ]);
    expect(codesOf(reviewPlan(plan).disclaimers)).toEqual([
      'review-clears-no-one',
      'local-codes-decide',
      'review-partial',
    ]);
    expect(codesOf(nextSession({ plan, records: [record], rule: 'two-for-two' }).disclaimers)).toEqual([
      'proposal-clears-no-one',
      'local-codes-decide',
      'one-thing-at-a-time',
      'pressure-last',
    ]);
  });

  it('is read back as it was, and no other in its place', () => {
    for (const document of [plan, everyKind, several, record])
      expect(readDocument(structuredClone(document))).toEqual(document);
    expect(documentOf(['record'], record)).toEqual(record);
    expect(() => expandedOf(['plan'], record, ['plan'])).toThrow(
      /^plan\.document must be 'plan'; received "record"\.$/,
    );
  });
});

describe('a plan', () => {
  const codes = (more: object, request: object = {}, limb: object = {}) =>
    message(planOf(more, request, limb).cautions);
  const age = (ageYears: number) =>
    message(planOf({}, { ageYears }).cautions).filter(([code]) => code.startsWith('age'));

  it('says what an age asks for, at the very age', () => {
    const at = (code: string, ageYears: number, more: object = {}): Said[] => [
      [code, { severity: 'caution', values: { age: String(ageYears) }, path: ['ageYears'], ...more }],
    ];
    expect(age(17.5)).toEqual(at('age-under-18', 17.5));
    expect([age(18), age(59.9)]).toEqual([[], []]);
    expect(age(60)).toEqual(at('age-60-and-over', 60, { source: 'risk-stratification-2022' }));
  });

  it('says nothing of a cuff that is not used, nor of loads under one', () => {
    const limbCuff = codes({}, {}, { percentLop: 90 }).map(([code]) => code);
    expect(limbCuff).toContain('percent-above-usual');
    const bare = codes({ restriction: 'none' }, {}, { percentLop: 90 }).map(([code]) => code);
    expect(bare).not.toContain('percent-above-usual');
    const heavy = codes({ percentOneRepMax: 60 }).map(([code]) => code);
    expect(heavy).toContain('above-restricted-loads');
    expect(codes({ percentOneRepMax: 60, restriction: 'none' }).map(([code]) => code)).not.toContain(
      'above-restricted-loads',
    );
    expect(codes({ percentOneRepMax: 10 }).map(([code]) => code)).toContain('below-restricted-loads');
    expect(codes({ percentOneRepMax: 10, restriction: 'none' }).map(([code]) => code)).not.toContain(
      'below-restricted-loads',
    );
  });

  it('carries a measured pressure to another cuff with its error', () => {
    const of = (measured: object) =>
      itemOf(
        {},
        {},
        { cuffWidthCm: 10, circumferenceCm: 55, measured: { valueMmHg: 200, method: 'doppler', ...measured } },
      ).occlusion!;
    expect(of({}).inputs).toMatchObject({ cuffWidthCm: 10, limb: 'leg', side: 'left', posture: 'seated' });
    expect(of({ cuffWidthCm: 10 }).equation).toBe('measured-doppler');
    // Above diastolic by the curve: 22 + 17.9 × 11 is 218.9, 22 + 17.9 × 5.5 is 120.45; 74 + (200 − 74) × 120.45 / 218.9.
    const corrected = of({ cuffWidthCm: 5, standardDeviationMmHg: 4 });
    expect(corrected).toMatchObject({
      equation: 'width-correction',
      value: expect.closeTo(74 + (126 * 120.45) / 218.9, 9),
      inputs: { fromWidthCm: 5 },
    });
    expect(corrected!.errors!.map(({ part }) => part)).toEqual(['width-correction', 'occlusion']);
    expect(of({ cuffWidthCm: 5 }).inputs).toMatchObject({ standardDeviationMmHg: 8.6 });
  });

  it('tells an estimate all that it was told of the person', () => {
    const site = 'mid-limb';
    const limb = {
      measured: undefined,
      circumferenceCm: 55,
      circumferenceSite: site,
      cuffWidthCm: 18,
      equation: 'thigh-2019',
    } as const;
    const { occlusion } = itemOf({}, { ageYears: 30, sex: 'male', posture: 'supine' }, limb);
    expect(occlusion!.inputs).toEqual({
      limb: 'leg',
      side: 'left',
      circumferenceCm: 55,
      circumferenceSite: site,
      systolicMmHg: 118,
      diastolicMmHg: 74,
      cuffWidthCm: 18,
      posture: 'supine',
      ageYears: 30,
      sex: 'male',
    });
  });

  it('takes each side’s own pressure where two cuffs differ', () => {
    const [limb] = plan.request.limbs;
    const both = (limbs: object[]) => planSession({ ...plan.request, limbs } as unknown as PlanRequest);
    const right = { ...limb, side: 'right', percentLop: 60 };
    for (const limbs of [
      [limb!, right],
      [right, limb!],
    ]) {
      const events = both(limbs).session.timeline.events.filter(({ event }) => event === 'inflate');
      expect(Object.fromEntries(events.map(({ side, pressureMmHg }) => [side, pressureMmHg]))).toEqual({
        left: 100,
        right: 120,
      });
    }
    // 390 s at 100 and at 120 mmHg.
    expectClose(both([limb!, right]).session.totals.pressureTime!.value, (390 * 220) / 60);
    const one = both([limb!, right]);
    expect(one.items.map(({ side, target }) => [side, target!.value])).toEqual([
      ['left', 100],
      ['right', 120],
    ]);
    // Told by the exercise, the pressure is another one; told the side, the other cuff stays off.
    const { exercises, ...request } = one.request;
    const own = planSession({
      ...request,
      exercises: [{ ...exercises[0]!, side: 'right', percentLop: 70 } as PlanExercise],
    });
    expect(own.items.map(({ side, target }) => [side, target!.value])).toEqual([['right', 140]]);
    expect(own.limbs.map(({ side }) => side)).toEqual(['right']);
  });

  it('rounds and lifts as it was asked to', () => {
    const load = (more: object) => itemOf(more).load!;
    // 22 % of 100 kg.
    expect(load({ percentOneRepMax: 22, step: 5 }).value).toBe(20);
    expect(load({ percentOneRepMax: 23, step: 5 }).value).toBe(25);
    expect(load({ percentOneRepMax: 23, step: 5, rounding: 'down' }).value).toBe(20);
    expect(load({ percentOneRepMax: 23, available: [20, 24, 30] }).value).toBe(24);
    expect(load({ percentOneRepMax: 23, unit: 'lb', step: 10 })).toMatchObject({ value: 50, unit: '[lb_av]' });
    expect(codesOf(load({ percentOneRepMax: 23, maximumOf: 'other-limb' }).cautions)).not.toEqual(
      codesOf(load({ percentOneRepMax: 23 }).cautions),
    );
    const stated = load({ oneRepMax: undefined, percentOneRepMax: undefined, load: 12 });
    expect(stated).toMatchObject({
      kind: 'training-load',
      value: 12,
      unit: 'kg',
      equation: 'stated-load',
      evidence: 'practice',
      cautions: [],
      inputs: { load: 12, unit: 'kg' },
    });
    expect(working(stated)).toEqual({ formula: 'w', symbols: { w: 'load' }, sources: [] });
  });

  it('holds a pressure to the usual range of its mode, and none of the rests to it', () => {
    const walk = { name: 'walk', mode: 'aerobic', limb: 'leg', scheme: '2x3min', restS: 60, restriction: 'continuous' };
    const of = (exercise: object) =>
      expandDocument(planSession({ ...plan.request, exercises: [exercise] } as never as PlanRequest)).items[0]!;
    expect(of(walk).target!.inputs).toMatchObject({ mode: 'aerobic' });
    expect(of(plan.request.exercises[0]!).target!.inputs).not.toHaveProperty('mode');
    const part = of({ ...plan.request.exercises[0]!, restriction: 'partial', percentLop: 30, restPercentLop: 20 });
    const below = (target: { readonly cautions: readonly { code: string }[] }) =>
      codesOf(target.cautions).includes('percent-below-usual');
    expect([below(part.target!), below(part.restTarget!)]).toEqual([true, false]);
    expect(message(part.target!.cautions).length).toBeGreaterThan(message(part.restTarget!.cautions).length);
    expect(part.restTarget!.cautions.length).toBeGreaterThan(0);
  });

  it('takes 3 min between exercises where no pause is told, and the pauses it is told', () => {
    const [exercise] = plan.request.exercises;
    const with_ = (pauses: (number | undefined)[], reperfusionS?: number) =>
      planSession({
        ...plan.request,
        ...(reperfusionS !== undefined && { reperfusionS }),
        exercises: pauses.map((own, index) => ({
          ...exercise!,
          name: `e${index}`,
          ...(own !== undefined && { reperfusionS: own }),
        })),
      });
    const lasts = (of: Plan) => of.session.timeline.durationS;
    expect(lasts(with_([undefined, undefined]))).toBe(390 + 180 + 390);
    expect(message(with_([undefined, undefined]).assumptions)).toEqual([
      ['reperfusion-taken', { values: { minutes: 3 } }],
    ]);
    // The pause after the last exercise is none.
    expect(lasts(with_([200, undefined]))).toBe(390 + 200 + 390);
    expect(with_([200, undefined]).assumptions).toEqual([]);
    expect(lasts(with_([undefined, 999], 240))).toBe(390 + 240 + 390);
    expect(lasts(with_([200, undefined, 5], 240))).toBe(3 * 390 + 200 + 240);
  });
});

describe('a record', () => {
  const who = { exercise: 'leg extension', limb: 'leg', side: 'left' };
  const cautions = (request: object, item: object = {}) => message(recordOf(plan, all, request, item).cautions);

  it('says what was reported, of pain and of the cuff', () => {
    const symptom = (code: string, of: string, index: number): Said => [
      code,
      { severity: 'stop', values: { symptom: of }, path: ['symptoms', index] },
    ];
    expect(cautions({ symptoms: ['symptom-chest-pain', 'symptom-swelling', 'symptom-chest-pain'] })).toEqual([
      symptom('symptom-emergency', 'symptom-chest-pain', 0),
      symptom('symptom-clinician-first', 'symptom-swelling', 1),
    ]);
    expect(cautions({ symptoms: ['symptom-bruising'] })).toEqual([
      [
        'symptom-lower',
        {
          severity: 'caution',
          values: { symptom: 'symptom-bruising', lower: 'lower-pressure' },
          path: ['symptoms', 0],
          source: 'practitioner-survey-2018',
        },
      ],
    ]);
    // The report that decides, by the default rule: holds above 1, goes back above 3, stops from 8 on.
    const pain = (...given: Parameters<typeof jointPain>) => cautions(jointPain(...given));
    const painOf = (code: string, severity: string, moment: string, values: object): Said[] => [
      [code, { severity, values: { site: 'joint', moment, ...values }, path: ['pain', 0, moment] }],
    ];
    expect([pain(0, 1, 0), pain(1, 1, 1, 1), pain()]).toEqual([[], [], []]);
    const rule = 'cautious';
    expect(pain(0, 2, 0)).toEqual(painOf('pain-hold', 'note', 'during', { pain: 2, line: 1, rule }));
    expect(pain(0, 4, 0)).toEqual(painOf('pain-back-off', 'caution', 'during', { pain: 4, line: 3, rule }));
    expect(pain(0, 0, 1)).toEqual(painOf('pain-hold-rose', 'note', 'after', { pain: 1, before: 0, rule }));
    expect(pain(0, 0, 2)).toEqual(painOf('pain-back-off-rose', 'caution', 'after', { pain: 2, before: 0, rule }));
    expect(pain(0, 1, 0, 1)).toEqual(
      painOf('pain-back-off-rose', 'caution', 'nextMorning', { pain: 1, before: 0, rule }),
    );
    expect(pain(8, 8, 8)).toEqual(painOf('pain-severe', 'stop', 'before', { pain: 8, line: 8 }));
    // The occlusion pressure is 200 mmHg, the target 100.
    const path = ['items', 0, 'done', 'heldMmHg'];
    const held = (code: string, severity: string, heldMmHg: number, values: object): Said[] => [
      [code, { severity, values: { ...who, held: heldMmHg, ...values }, path }],
    ];
    // 5 points of 200 mmHg are 10 mmHg.
    for (const heldMmHg of [90, 99, 100, 101, 110]) expect(cautions({}, { heldMmHg })).toEqual([]);
    expect(cautions({}, { heldMmHg: 89 })).toEqual(held('held-below-target', 'note', 89, { target: 100 }));
    expect(cautions({}, { heldMmHg: 111 })).toEqual(held('held-above-target', 'caution', 111, { target: 100 }));
    expect(cautions({}, { heldMmHg: 199 })).toEqual(held('held-above-target', 'caution', 199, { target: 100 }));
    expect(cautions({}, { heldMmHg: 200 })).toEqual(held('held-occludes', 'caution', 200, { occlusion: 200 }));
    expect(cautions({}, { heldMmHg: 250 })).toEqual(held('held-occludes', 'caution', 250, { occlusion: 200 }));
    const [[code, told] = ['', {}]] = cautions({}, { heldMmHg: 301 });
    expect([code, told]).toMatchObject(['held-above-tried', { severity: 'stop', values: { held: 301, most: 300 } }]);
    expect(cautions({}, { stoppedEarly: true })).toEqual([
      ['stopped-early', { severity: 'note', values: who, path: ['items', 0, 'done', 'stoppedEarly'] }],
    ]);
  });

  it('keeps what was told and leaves out what was not', () => {
    const feelings = { ...calm, sessionRpe: 6, sessionS: 1500, notes: 'steady' };
    const full = recordOf(plan, all, feelings, { heldMmHg: 90, lastSetToFailure: false, inflatedBeforeS: 5 });
    expect(full).toMatchObject(feelings);
    expect(full.items[0]!.done).toEqual({
      sets: [30, 15, 15, 15].map((repetitions, index) => ({ repetitions, restS: index < 3 ? 30 : 0 })),
      load: 20,
      unit: 'kg',
      stoppedEarly: false,
      heldMmHg: 90,
      lastSetToFailure: false,
      inflatedBeforeS: 5,
    });
    expect(codesOf(full.assumptions)).toEqual(['tempo-not-recorded']);
    const bare = recordOf(plan, all, {}, { heldMmHg: undefined });
    expect(Object.keys(bare.items[0]!.done)).toEqual(['sets', 'load', 'unit', 'stoppedEarly']);
    for (const name of ['pain', 'sessionOfDay', 'sessionRpe', 'sessionLoad', 'notes', 'label'])
      expect(bare).not.toHaveProperty(name);
    expect(codesOf(bare.assumptions)).toEqual(['tempo-not-recorded', 'pressure-as-planned']);
    expect(codesOf(recordOf(planOf({ restriction: 'none' }), all).assumptions)).toEqual(['tempo-not-recorded']);
    expect(recordOf(plan, all, { sessionS: 1500 })).not.toHaveProperty('sessionLoad');
    expect(bare.items[0]).not.toHaveProperty('circumferenceCm');
    expect(recordOf(planOf({}, {}, { circumferenceCm: 55 }), all).items[0]).toMatchObject({ circumferenceCm: 55 });
    const kept = ['exercise', 'limb', 'side', 'mode', 'target', 'load', 'sets', 'tempo', 'restriction'] as const;
    for (const name of kept) expect(bare.items[0]![name]).toEqual(plan.items[0]![name]);
  });

  it('adds up the cuff as it was held, and as planned where that is not known', () => {
    // 390 s; 100 mmHg planned.
    const time = (item: object) => recordOf(plan, all, {}, item).items[0]!.totals.pressureTime!.value;
    expectClose(time({}), 390 * (100 / 60));
    expectClose(time({ heldMmHg: 90 }), 390 * (90 / 60));
    expectClose(time({ inflatedBeforeS: 10, deflatedAfterS: 20 }), 420 * (100 / 60));
    expect(recordOf(planOf({ restriction: 'none' }), all).items[0]!.totals).not.toHaveProperty('pressureTime');
  });
});

describe('a maximum of a plan', () => {
  it('is tested where it has no repetitions, and estimated with the lift and the person where it has', () => {
    const maximum = (oneRepMax: object, request: object = {}) => itemOf({ oneRepMax } as never, request).oneRepMax!;
    expect(maximum({ load: 100, lift: 'squat' })).toEqual(testedOneRepMax({ load: 100, lift: 'squat' }));
    // Of an untrained person it may be a first test.
    const first = { load: 100, lift: 'leg-press', training: 'untrained' } as const;
    expect(maximum(first)).toEqual(testedOneRepMax(first));
    expect(maximum(first).cautions.map(({ code }) => code)).toEqual(['first-test-too-low']);
    expect(
      maximum({ load: 80, repetitions: 8, lift: 'bench-press', training: 'trained' }, { sex: 'male', ageYears: 24 })
        .inputs,
    ).toMatchObject({
      lift: 'bench-press',
      training: 'trained',
      sex: 'male',
      ageYears: 24,
    });
  });
});
