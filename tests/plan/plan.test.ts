import type { PlanExercise, PlanExerciseFields } from '../../src/plan/index.js';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/index.js';
import { sources } from '../../src/text/index.js';
import { cite, explain } from '../../src/text/index.js';
import {
  expandDocument,
  planSession,
  screen,
  screeningQuestions,
  symptoms,
  type PlanRequest,
  type Screening,
} from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { issuesOf } from '../support/refused.js';
import { EXTENSION } from '../support/inputs.js';

const { tempo } = EXTENSION;
const request = {
  label: 'Athlete B',
  ageYears: 31,
  sex: 'male',
  systolicMmHg: 124,
  diastolicMmHg: 76,
  posture: 'supine',
  limbs: [
    {
      limb: 'leg',
      side: 'right',
      circumferenceCm: 60,
      cuffWidthCm: 18,
      percentLop: 60,
      gaugeStepMmHg: 2,
      equation: 'thigh-2019',
    },
    {
      limb: 'arm',
      side: 'right',
      circumferenceCm: 32,
      cuffWidthCm: 10,
      percentLop: 40,
      measured: { valueMmHg: 150, method: 'doppler', cuffWidthCm: 5 },
    },
  ],
  exercises: [
    {
      ...EXTENSION,
      oneRepMax: { load: 50, repetitions: 10 },
      percentOneRepMax: 30,
      restS: 60,
    },
    {
      name: 'arm curl',
      limb: 'arm',
      oneRepMax: { load: 40, unit: 'lb' },
      percentOneRepMax: 25,
      available: [5, 8, 10, 12],
      sets: [{ repetitions: 20, restS: 45 }, { repetitions: 12 }],
      tempo,
      restS: 30,
      restriction: 'intermittent',
    },
  ],
} as const satisfies PlanRequest;

describe('planSession', () => {
  const plan = planSession(request);
  const whole = expandDocument(plan);
  const [legs, arms] = whole.items;

  it('is one plain JSON document with everything a session needs', () => {
    expectPlainJson(plan);
    expect(plan).toMatchObject({ document: 'plan', schemaVersion: 2, request });
    expect(plan.items.map(({ exercise, side, limb }) => [exercise, side, limb])).toEqual([
      ['leg extension', 'right', 'leg'],
      ['arm curl', 'right', 'arm'],
    ]);
  });

  // Worked by hand: 65.290 + 1.110 × 60 + 0.178 × 124 + 1.153 × 31 − 7.984 = 181.721; 60 % is 109.03, down to 108.
  // 50 × 36 / 27 = 66.67 kg; 30 % is 20 kg. 75 repetitions × 4 s + 3 × 60 s = 480 s; 75 × 20 kg = 1500 kg.
  it('composes pressure, load and session', () => {
    expect(legs!.occlusion).toMatchObject({ equation: 'thigh-2019', evidence: 'published' });
    expect(legs!.occlusion!.value.toFixed(3)).toBe('181.721');
    expect(legs!.target!.value).toBe(108);
    expect(legs!.load!.value).toBe(20);
    expect(legs!.totals.sessionTime.value).toBe(480);
    expect(legs!.totals.volumeLoad).toMatchObject({ value: 1500, unit: 'kg' });
  });

  // Worked by hand: above diastolic by the curve 24 + 11.5 × 32 / 5 = 97.6 and 24 + 11.5 × 32 / 10 = 60.8 mmHg, so
  // 76 + (150 − 76) × 60.8 / 97.6 = 122.10; 40 % is 48.8, down to 48 mmHg. 25 % of 40 lb is 10 lb; 32 × 10 lb = 320 lb.
  it('carries a measured pressure to the cuff that will be used, and keeps pounds', () => {
    expect(arms!.occlusion).toMatchObject({ equation: 'width-correction', value: expect.closeTo(122.0984, 4) });
    expect(arms!.target!.value).toBe(48);
    expect(arms!.load).toMatchObject({ value: 10, unit: '[lb_av]' });
    expect(arms!.totals.volumeLoad).toMatchObject({ value: 320, unit: '[lb_av]' });
    expect(arms!.totals.restrictionTime.value).toBe(128);
    expect(arms!.totals.sessionTime.value).toBe(173);
  });

  it('takes a measurement with the cuff that will be used as it is', () => {
    const limb = { ...request.limbs[1], measured: { valueMmHg: 150, method: 'doppler' } } as const;
    const [, item] = expandDocument(planSession({ ...request, limbs: [request.limbs[0], limb] })).items;
    expect(item!.occlusion).toMatchObject({ equation: 'measured-doppler', value: 150 });
  });

  it('adds up the restriction of each limb over its exercises', () => {
    const exercises = Array.from({ length: 3 }, () => ({ ...request.exercises[0], restS: 120 }));
    const { limbs, cautions } = planSession({ ...request, limbs: [request.limbs[0]], exercises });
    expect(limbs).toMatchObject([{ side: 'right', limb: 'leg', exercises: 3, restrictionTime: { value: 1980 } }]);
    expect(cautions.map(({ code }) => code)).toContain('restriction-long-limb');
  });

  it('lists every caution once, most severe first', () => {
    const { cautions } = planSession({ ...request, systolicMmHg: 182 });
    expect(cautions[0]).toMatchObject({ severity: 'stop', code: 'blood-pressure-refer' });
    expect(new Set(cautions.map(({ text }) => text)).size).toBe(cautions.length);
    const order = cautions.map(({ severity }) => ['stop', 'caution', 'note'].indexOf(severity));
    expect(order).toEqual([...order].sort());
  });

  it('says what screening came to, before anything else', () => {
    const message = (screening?: Screening) =>
      planSession({ ...request, screening })
        .cautions.filter(({ path }) => path?.[0] === 'screening')
        .map(({ severity, code }) => [severity, code]);
    const none = Object.fromEntries(screeningQuestions().map(({ code }) => [code, 'no']));
    const readings = { ageYears: 30, systolicMmHg: 120, diastolicMmHg: 80 };
    const answered = (answers: object) => message(screen({ ...readings, answers: { ...none, ...answers } }));
    expect(answered({ pregnancy: 'yes', diabetes: 'yes' })).toEqual([
      ['stop', 'pregnancy'],
      ['caution', 'diabetes'],
    ]);
    expect(answered({})).toEqual([]);
    expect(message(screen({ answers: {} }))).toEqual([['caution', 'screening-incomplete']]);
    expect(message()).toEqual([]);
  });

  it('takes the whole screening, works it out again, and takes no bare outcome', () => {
    const screening = screen({ date: '2026-02-20', ageYears: 30, answers: { 'surgery-released': 'yes' } });
    const plan = planSession({ ...request, date: '2026-03-02', screening });
    expect(plan.request.screening).toEqual(screening);
    // A released operation stays visible, and so does what is open: 36 questions and both pressures.
    expect(plan.cautions.filter(({ path }) => path?.[0] === 'screening')).toMatchObject([
      { severity: 'caution', code: 'screening-incomplete', values: { count: 38 } },
      { severity: 'caution', code: 'surgery-released' },
    ]);
    const [age] = plan.assumptions;
    expect(age).toMatchObject({ code: 'screening-dated', values: { date: '2026-02-20', days: 10 } });
    const { date: _, ...undated } = screening.request;
    const ages = (given: Partial<PlanRequest>) => planSession({ ...request, ...given }).assumptions[0]?.code;
    expect(ages({ screening })).toBe('screening-age-unknown');
    expect(ages({ date: '2026-03-02', screening: screen(undated) })).toBe('screening-age-unknown');
    expect(ages({ date: '2026-02-20', screening })).toBe('screening-dated');
    const issues = (given: object) => issuesOf(planSession, { ...request, ...given });
    expect(issues({ screening: 'nothing-found' })).toEqual(['screening wrong-type']);
    expect(issues({ screening: { ...screening, outcome: 'nothing-found' } })).toEqual([
      'screening.outcome wrong-relation',
    ]);
    expect(issues({ screening: { ...screening, complete: true } })).toEqual(['screening.complete wrong-relation']);
    expect(issues({ date: '2026-02-19', screening })).toEqual(['screening.request.date wrong-relation']);
    const swapped = { ...screening, request: { answers: {}, systolicMmHg: 70, diastolicMmHg: 80 } };
    expect(issues({ screening: swapped })).toEqual(['screening.request.systolicMmHg swapped-pressures']);
    // Findings that were taken out are there again.
    const emptied = planSession({ ...request, screening: { ...screening, findings: [] } });
    expect(emptied.cautions.map(({ code }) => code)).toContain('surgery-released');
  });

  // `practice`: one exercise, fewer sets, not to failure; muscle breakdown after a first session, J Strength Cond Res 2016;30(7):2064–2068.
  it('says where a first session asks for too much', () => {
    const screening = screen({ answers: { 'first-session': 'yes' } });
    const volume = (exercises: readonly Partial<PlanExerciseFields>[], given: object = { screening }) =>
      planSession({
        ...request,
        ...given,
        exercises: exercises.map(
          (one, index) => ({ ...request.exercises[0]!, name: `exercise ${index + 1}`, ...one }) as PlanExercise,
        ),
      }).cautions.find(({ code }) => code === 'first-session-volume')?.values;
    const three = { scheme: '15-15-15' };
    expect(volume([three])).toBeUndefined();
    expect(volume([{}])).toEqual({ exercises: 1, sets: 4, usual: 4 });
    expect(volume([three, three])).toEqual({ exercises: 2, sets: 3, usual: 4 });
    expect(volume([{ ...three, lastSetToFailure: true }])).toEqual({ exercises: 1, sets: 3, usual: 4 });
    expect(volume([three, { restriction: 'none' }])).toBeUndefined();
    expect(volume([{}], {})).toBeUndefined();
  });

  it('warns of blood pressure where nothing was estimated too', () => {
    const limbs = [{ ...request.limbs[1], measured: { valueMmHg: 190, method: 'doppler' } }] as const;
    const high = planSession({ ...request, systolicMmHg: 150, limbs, exercises: [request.exercises[1]] });
    expect(high.cautions.map(({ code }) => code)).toContain('blood-pressure-high');
  });

  it('carries the disclaimers, the stop criteria, and its sources', () => {
    expect(plan.disclaimers.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['not-cleared', 'local-codes-decide', 'screen-first']),
    );
    expect(plan.stopCriteria.map(({ code }) => code)).toEqual(
      symptoms.filter(({ when }) => when === 'session').map(({ code }) => code),
    );
    const ids = cite(plan).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['guideline-review-2019', 'risk-stratification-2022']));
    for (const id of ids) expect(sources).toHaveProperty(id);
  });
});

describe('explain', () => {
  it('refuses what is neither an answer nor a plan', () => {
    for (const other of [{}, { document: 'plan' }, { kind: 'training-load' }, { document: 'plan', items: [null] }]) {
      expect(() => explain(other as never)).toThrow(InputError);
    }
  });
});

describe('a plan in brief', () => {
  const plan = planSession({
    systolicMmHg: 142,
    diastolicMmHg: 76,
    posture: 'supine',
    reperfusionS: 240,
    limbs: [
      { limb: 'leg', side: 'right', cuffWidthCm: 12, percentLop: 60, measured: { valueMmHg: 200, method: 'doppler' } },
      { limb: 'leg', side: 'left', circumferenceCm: 60, cuffWidthCm: 18, percentLop: 50, gaugeStepMmHg: 10 },
    ],
    exercises: [
      {
        name: 'leg press',
        limb: 'leg',
        load: 40,
        scheme: '2x15',
        tempo,
        restS: 45,
        restriction: 'partial',
        restPercentLop: 20,
        warmUp: [{ repetitions: 10, restS: 60 }],
      },
      {
        name: 'step-up',
        limb: 'leg',
        side: 'right-then-left',
        unloaded: true,
        scheme: '2x10',
        tempo,
        restS: 60,
        restriction: 'intermittent',
      },
      { name: 'cycling', limb: 'leg', side: 'left', mode: 'aerobic', scheme: '5min', restriction: 'none' },
    ],
  });

  it('tells a limb’s long restriction once, of that limb, and names a limb that nothing trains', () => {
    // By hand: 5 × 5 min on the right leg, and 2 × 10 × 4 s + 60 s with the cuff up on both: 25 + 2.333 min.
    const long = planSession({
      ...plan.request,
      limbs: [...plan.request.limbs, { ...plan.request.limbs[0]!, limb: 'arm' }],
      exercises: [
        {
          name: 'rest',
          limb: 'leg',
          side: 'right',
          mode: 'passive',
          scheme: '5x5min',
          restS: 180,
          restriction: 'intermittent',
        },
        { name: 'quad set', limb: 'leg', unloaded: true, scheme: '2x10', tempo, restS: 60, restriction: 'continuous' },
      ],
    });
    const lines = explain(long, { detail: 'brief' }).split('\n');
    expect(lines.filter((line) => line.includes('of restriction on one limb'))).toEqual([
      '- caution: 27.3 min of restriction on one limb is above the usual limit of 20 min a session. (right leg)',
    ]);
    expect(long.cautions.filter(({ code }) => code === 'limb-not-trained')).toMatchObject([
      { severity: 'note', text: 'The right arm is listed, and no exercise trains it.', path: ['limbs', 2] },
    ]);
    expect(plan.cautions.map(({ code }) => code)).not.toContain('limb-not-trained');
  });
});
