import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { guardMessages } from '../../src/answer/guards.js';
import { explain, messages, type ExplainOptions } from '../../src/text/index.js';
import {
  compareSessions,
  lightenExercise,
  audiences,
  checkDay,
  compareWeeks,
  nextSession,
  expandDocument,
  planSession,
  recordSession,
  reviewPlan,
  screen,
  type PlanRequest,
  screeningQuestions,
} from '../../src/plan/index.js';
import { pageWords } from '../../src/text/page-words.js';
import { planOf } from '../support/plans.js';
import { bothSides, EXTENSION as extension, measuredAt, PERSON } from '../support/inputs.js';

// Whole pages, committed under pages/ for a coach to read. Their sentences are pinned there and nowhere else. The
// numbers on them are worked by hand below, from measured pressures.

const leftLeg = { limb: 'leg', side: 'left' } as const;
const rightLeg = { limb: 'leg', side: 'right' } as const;
const person = { label: 'Athlete B', ageYears: 31, ...PERSON } as const;
const left = { ...leftLeg, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5, measured: measuredAt(187) };
const right = { ...rightLeg, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5, measured: measuredAt(195) };
const press = { ...extension, name: 'leg press', oneRepMax: { load: 120 } } as const;
const both = { ...person, limbs: [left, right], exercises: [extension] } as const satisfies PlanRequest;

/** An exercise of every kind, on two legs that differ. */
const EVERY_KIND = {
  ...person,
  sex: 'female',
  bodyMassKg: 80,
  sessionsPerWeek: 2,
  weeks: 4,
  reperfusionS: 200,
  limbs: [
    { ...leftLeg, cuffWidthCm: 12, percentLop: 50, measured: measuredAt(200) },
    // 60 % of 200 is 120 mmHg; steps of 50 mmHg leave 100.
    { ...rightLeg, cuffWidthCm: 12, percentLop: 60, measured: measuredAt(200), gaugeStepMmHg: 50 },
  ],
  exercises: [
    {
      name: 'press',
      limb: 'leg',
      oneRepMax: { load: 110 },
      percentOneRepMax: 20,
      step: 2.5,
      scheme: '2x10',
      warmUp: [
        { repetitions: 5, restS: 20 },
        { durationS: 90, restS: 10 },
      ],
      tempo: { eccentricS: 2, bottomS: 1, concentricS: 1, topS: 0.5 },
      restS: 30,
      restriction: 'partial',
      restPercentLop: 25,
    },
    {
      name: 'walk',
      mode: 'aerobic',
      ...leftLeg,
      sets: [{ durationS: 120, restS: 60 }, { durationS: 100, restS: 30 }, { durationS: 60 }],
      restriction: 'intermittent',
      intensityPercent: 45,
    },
    {
      name: 'squat',
      ...rightLeg,
      bodyMassPercent: 64,
      load: 10,
      sets: [{ repetitions: 8, restS: 20 }, { repetitions: 6, restS: 40 }, { repetitions: 5 }],
      tempo: { eccentricS: 2, concentricS: 2 },
      restriction: 'none',
    },
  ],
} as const satisfies PlanRequest;

const planOfBoth = planSession(both);
const everyKind = planSession(EVERY_KIND);
const passive = planSession({
  ...person,
  limbs: [{ ...left, percentLop: 70 }],
  exercises: [
    { name: 'at rest', mode: 'passive', limb: 'leg', scheme: '3x5min', restS: 180, restriction: 'intermittent' },
  ],
});
const noCuff = planSession({
  ...person,
  limbs: [leftLeg],
  exercises: [{ ...extension, percentOneRepMax: 75, scheme: '3x8', restS: 120, restriction: 'none' }],
});
const heavy = planSession({
  ...person,
  limbs: [left],
  exercises: [{ ...extension, percentOneRepMax: 75, scheme: '3x8', restS: 120, restriction: 'intermittent' }],
});
const referred = { ...both, systolicMmHg: 200, diastolicMmHg: 120 } as const;
const stopped = planSession(referred);
const recorded = recordSession({
  plan: everyKind,
  date: '2026-03-02',
  pain: [{ site: 'joint', ...leftLeg, before: 1, during: 1, after: 1, nextMorning: 0 }],
  sessionRpe: 6,
  sessionS: 1500,
  notes: 'tired',
  items: [
    {
      exercise: 'press',
      ...leftLeg,
      sets: [{ repetitions: 10 }, { repetitions: 12 }],
      load: 20,
      heldMmHg: 110,
      restHeldMmHg: 45,
      stoppedEarly: true,
      lastSetToFailure: true,
    },
    { exercise: 'press', ...rightLeg, sets: [{ repetitions: 10 }, { repetitions: 12 }] },
    { exercise: 'walk', ...leftLeg, sets: [{ durationS: 120 }, { durationS: 90 }] },
    { exercise: 'squat', ...rightLeg, sets: [{ repetitions: 8 }] },
  ],
});
const done = (request: typeof both | typeof referred) =>
  recordSession({
    plan: planSession(request),
    date: '2026-03-02',
    pain: [],
    items: [leftLeg, rightLeg].map((limb) => ({
      exercise: 'leg extension',
      ...limb,
      sets: [30, 15, 15, 15].map((repetitions) => ({ repetitions })),
    })),
  });

const BRIEF = { detail: 'brief' } as const;
/** An athlete with sore shoulders, once a week: light in sets of 2 and 3. */
const heavyPress = planSession({
  ...PERSON,
  posture: 'supine',
  limbs: bothSides({
    limb: 'arm',
    cuffWidthCm: 7,
    percentLop: 50,
    gaugeStepMmHg: 5,
    measured: measuredAt(140),
  }),
  exercises: [
    {
      name: 'bench press',
      limb: 'arm',
      side: 'both',
      oneRepMax: { load: 100 },
      percentOneRepMax: 80,
      step: 2.5,
      sets: [3, 3, 2, 2, 2].map((repetitions) => ({ repetitions })),
      tempo: '2-0-1-0',
      restS: 150,
      restriction: 'none',
    },
  ],
});

const PAGES: Record<string, readonly [Parameters<typeof explain>[0], ExplainOptions?]> = {
  'plan-two-legs-brief.txt': [planOfBoth, BRIEF],
  'plan-two-legs.txt': [planOfBoth],
  'plan-two-exercises-brief.txt': [planSession({ ...both, limbs: [left], exercises: [extension, press] }), BRIEF],
  'plan-in-turn-brief.txt': [
    planSession({ ...both, exercises: [{ ...extension, side: 'left-then-right', changeS: 5 }] }),
    BRIEF,
  ],
  'plan-partial-brief.txt': [
    planSession({ ...both, exercises: [{ ...extension, restriction: 'partial', restPercentLop: 25 }] }),
    BRIEF,
  ],
  'plan-no-cuff-brief.txt': [noCuff, BRIEF],
  'plan-passive-brief.txt': [passive, BRIEF],
  'plan-every-kind.txt': [everyKind],
  'plan-every-kind.md': [everyKind, { format: 'markdown' }],
  'plan-every-kind-sentences.txt': [everyKind, { detail: 'sentence' }],
  'plan-two-legs-brief.html': [planOfBoth, { detail: 'brief', format: 'html' }],
  'plan-stopped.txt': [stopped],
  'plan-stopped-sentence.txt': [stopped, { detail: 'sentence' }],
  'plan-stopped-brief.html': [stopped, { detail: 'brief', format: 'html' }],
  'plan-stop-lifted-brief.txt': [
    planSession({
      ...referred,
      decisions: [
        { stop: 'blood-pressure-refer', by: 'physician', on: '2026-03-01', why: 'three later readings of 128/80' },
      ],
    }),
    BRIEF,
  ],
  'record-brief.txt': [recorded, BRIEF],
  'record-stopped.txt': [done(referred)],
  'proposal.txt': [nextSession({ plan: planOfBoth, records: [done(both)], rule: 'all-repetitions' })],
  'proposal-stopped.txt': [nextSession({ plan: stopped, records: [done(referred)], rule: 'all-repetitions' })],
  'review-plan.txt': [reviewPlan(everyKind)],
  'review-heavy.txt': [reviewPlan(heavy)],
  'review-record.txt': [reviewPlan(recorded)],
  'review-stopped.txt': [reviewPlan(stopped)],
  'screening.txt': [screen({ label: 'Athlete B', ageYears: 61, systolicMmHg: 182, answers: { pregnancy: 'yes' } })],
  'day-check.txt': [checkDay({ date: '2026-03-02', painNow: 1, answers: { 'today-illness': 'yes' } })],
  'weeks.txt': [
    compareWeeks({
      weeks: [
        { sessions: [{ plan: planOfBoth, times: 3 }] },
        { sessions: [{ plan: planOfBoth, times: 2 }, { plan: noCuff }] },
        { records: [recorded], deload: true },
      ],
      goals: [
        { name: '60 % of 1RM', measure: 'peakPercentOneRepMax', limb: 'leg', side: 'left', atLeast: 60 },
        { name: 'hop test of both sides', atLeast: 90 },
      ],
    }),
  ],
  'lighter.txt': [lightenExercise({ plan: heavyPress, exercise: 'bench press', lighterPercent: 15 })],
  'comparison.txt': [
    compareSessions({
      from: { scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30, load: 15, restriction: 'continuous' },
      to: { scheme: '3x8', tempo: '2-0-2-0', restS: 120, load: 45, restriction: 'none' },
    }),
  ],
};
const page = (name: string): string[] => explain(...PAGES[name]!).split('\n');

describe('a page', () => {
  it.each(Object.keys(PAGES))('%s is as it was read', async (name) => {
    await expect(`${page(name).join('\n')}\n`).toMatchFileSnapshot(`pages/${name}`);
  });

  it('is there for every file, and for no more', () => {
    expect(readdirSync('tests/plan/pages').sort()).toEqual(Object.keys(PAGES).sort());
  });
});

// Of 187 and 195 mmHg half is 93.5 and 97.5, down to 90 and 95. Repeats of a measurement differ by 4.6 % of the
// pressure at most that was published (docs of measuredOcclusionPressure). A repetition takes 4 s.
const WORKED: Record<string, readonly string[]> = {
  'plan-two-legs-brief.txt': [
    // 90 / 187 and 95 / 195; 25 % of 60 kg; 75 × 4 s and three rests of 30 s; 75 × 15 kg.
    '90 mmHg, 48 % of LOP',
    '95 mmHg, 49 % of LOP',
    '15 kg, 25 % of 1RM',
    'left leg: 6:30 min of restriction in 1 exercise, volume load 1125 kg',
    'time under tension 5:00 min, session time 6:30 min',
  ],
  // Each set with one leg, 5 s, the other, 30 s: 8 × sets of 120 or 60 s, four changes of 5 s, three rests of 30 s.
  'plan-in-turn-brief.txt': ['session time 11:50 min', '30 – 15 – 15 – 15 repetitions, 30 s rest between sets'],
  // Half of half of 187 and 195, down: 45 and 45.
  'plan-partial-brief.txt': ['in the rests 45 mmHg, 24 % of LOP', 'in the rests 45 mmHg, 23 % of LOP'],
  // 70 % of 187 is 130.9, down to 130. Three times 5 min and two rests of 3 min.
  'plan-passive-brief.txt': ['130 mmHg, 70 % of LOP', 'left leg: 15:00 min', 'session time 21:00 min'],
  // 75 % of 60 kg; 24 × 45 kg; 24 × 4 s and two rests of 120 s.
  'plan-no-cuff-brief.txt': ['45 kg, 75 % of 1RM', 'no restriction, volume load 1080 kg', 'session time 5:36 min'],
  'plan-every-kind.txt': [
    // 20 % of 110 kg is 22, in steps of 2.5 kg 22.5. A repetition takes 2 + 1 + 1 + 0.5 = 4.5 s: 5 of them 22.5 s, 10
    // of them 45 s. The warm-up takes 22.5 + 20 + 90 + 10 = 142.5 s.
    '22.5 kg, 20 % of 1RM',
    '    2:23  inflate to 100 mmHg (left leg)',
    '    2:23  press, set 1: 10 repetitions (both sides)',
    '    3:08  lower the cuff pressure to 50 mmHg (left leg)',
    '    4:23  deflate (left leg)',
    '    4:23  pause, cuffs deflated',
    // 262.5 s and a pause of 200 s; then 370 s, a pause of 200 s, and 136 s.
    '    7:43  inflate to 100 mmHg (left leg)',
    '    7:43  walk, set 1: 2 min (left leg)',
    '   17:13  squat, set 1: 8 repetitions (right leg)',
    '   19:29  end',
    // 20 × 22.5 kg; 90 s at 100 and 30 s at 50 mmHg are 10 500 mmHg·s, of 200 mmHg 52.5 s.
    '  repetitions 20, volume load 450 kg',
    '  pressure × time 175 mmHg·min, 88 % of LOP·min',
    // 280 s at 100 mmHg.
    '  pressure × time 467 mmHg·min, 233 % of LOP·min',
    // 19 × 64 % of 80 kg; 8, 6 and 5 of 10 kg.
    '  volume load of body mass 972.8 kg',
    '  repetitions 19, volume load 190 kg',
    // The whole session: 90 + 280 s; 200 + 60 + 30 s; 175 + 175 + 466.67 mmHg·min.
    '  restriction of at least one limb 6:10 min, longest unbroken 2:00 min',
    '  cuffs deflated between restrictions 4:50 min',
    '  pressure × time, 2 limbs added up: 817 mmHg·min, 408 % of LOP·min',
    'left leg: 6:10 min of restriction in 2 exercises, at the lower pressure 0:30 min, volume load 450 kg',
    'right leg: 1:30 min of restriction in 1 exercise, at the lower pressure 0:30 min, volume load 640 kg',
  ],
  'record-brief.txt': [
    // 22 × 20 kg; 22 × 4.5 s; 99 s at 110 and 30 s at 45 mmHg.
    '  repetitions 22, volume load 440 kg',
    '  restriction 1:39 min, longest unbroken 2:09 min',
    '  at the lower pressure 0:30 min',
    '  pressure × time 204 mmHg·min, 102 % of LOP·min',
    // At 100 and 50 mmHg as planned; 210 s at 100 mmHg; 6 × 25 min.
    '  pressure × time 190 mmHg·min, 95 % of LOP·min',
    '  restriction 3:30 min, longest unbroken 2:00 min',
    '  pressure × time 350 mmHg·min, 175 % of LOP·min',
    'duration 25:00 min, session load 150 AU',
  ],
  // 75 of 60 kg, and 24 of its repetitions, 120 s of rest and so on: one finding.
  'review-heavy.txt': ['load 75 % of 1RM is heavy'],
  'review-plan.txt': [
    // 90 + 30 s of 5 min; 20 of 75 repetitions; 280 s of 5 min.
    'press: restriction 2 min in one exercise is low: 5–10 min in the 2019 guideline review',
    'press: all sets together 20 repetitions is low: 75 repetitions in the 2019 guideline review',
    'walk, left leg: restriction 4.7 min in one exercise is low: 5–20 min in the 2019 guideline review',
  ],
  // Three and two times 75 × 15 kg, and 24 × 45 kg.
  'weeks.txt': ['3375 kg', '3330 kg'],
};

describe('the numbers on a page', () => {
  it.each(Object.entries(WORKED))('%s are those worked by hand', (name, lines) => {
    const text = page(name).join('\n');
    for (const line of lines) expect(text).toContain(line);
  });
});

describe('the cautions on a page', () => {
  // 66 years, 150/74 mmHg, 50 % of LOP, 17 and 9:30 min of restriction on each leg, a pause of a minute.
  const many = planSession({
    ...both,
    ageYears: 66,
    systolicMmHg: 150,
    screening: screen({ ageYears: 66, answers: { diabetes: 'yes' } }),
    reperfusionS: 60,
    exercises: [
      { ...extension, restS: 240 },
      { ...press, restS: 90, percentOneRepMax: 75 },
    ],
  });
  const watch = (detail: 'full' | 'brief') => {
    const lines = explain(many, { detail }).split('\n');
    const from = lines.indexOf('CAUTIONS') + 2;
    return lines.slice(from, lines.indexOf('', from));
  };

  it('are at most three for the person on the brief page, with the count of the rest', () => {
    const full = watch('full');
    const brief = watch('brief');
    expect(full.length).toBeGreaterThan(3);
    expect(brief.slice(0, 3)).toEqual(full.slice(0, 3));
    const rest = many.cautions.length - 3;
    expect(brief.slice(3)).toEqual([`More cautions and notes on the full page: ${rest}.`]);
    const severities = full.map((line) => /^- (\w+):/.exec(line)![1]);
    expect([...severities].sort()).toEqual(severities);
  });

  it('are told apart by whom they are for, remarks on the method last', () => {
    const lines = explain(many).split('\n');
    const at = (heading: string) => lines.indexOf(heading);
    expect(at('CAUTIONS')).toBeGreaterThan(0);
    expect(at('NOTES ON THE METHOD')).toBeGreaterThan(at('ALWAYS'));
    expect(at('ALWAYS')).toBeGreaterThan(at('CAUTIONS'));
    expect(lines.findIndex((line) => line.includes('not a percentage of blood flow'))).toBeGreaterThan(
      at('NOTES ON THE METHOD'),
    );
  });
});

describe('audiences', () => {
  it('have every caution of the sources, and no code that is not there', () => {
    const found = new Set<string>(Object.keys(guardMessages));
    for (const file of readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    )) {
      for (const [, code] of readFileSync(join('src', file), 'utf8').matchAll(
        /[cC]aution\(\s*'(?:note|caution|stop)',\s*'([a-z0-9-]+)'/g,
      )) {
        found.add(code!);
      }
    }
    expect(found.size).toBeGreaterThan(70);
    expect([...found].filter((code) => !Object.hasOwn(audiences, code))).toEqual([]);
    expect(Object.keys(audiences).filter((code) => !Object.hasOwn(messages, code))).toEqual([]);
  });
});

describe('the page of a plan', () => {
  it('shows what was assumed of a measurement to the practitioner, once', () => {
    const text = 'The posture of the measurement is not given; we assume that of the plan.';
    const page = explain(planOf());
    expect(page.split(text)).toHaveLength(2);
    expect(page.indexOf(text)).toBeGreaterThan(page.indexOf('FOR THE PRACTITIONER'));
    expect(page.indexOf(text)).toBeLessThan(page.indexOf('WORKING'));
    const measured = { valueMmHg: 200, method: 'doppler', posture: 'seated', cuffWidthCm: 10 } as const;
    expect(explain(planOf({}, {}, { measured }))).not.toContain('of the measurement is not given');
  });

  it('without a cuff says nothing of one in its stop criteria', () => {
    const bare = expandDocument(planOf({ restriction: 'none' }));
    const message = [...bare.stopCriteria, ...bare.disclaimers].filter(({ code }) => code !== 'screen-first');
    expect(message.map(({ text }) => text).join(' ')).not.toMatch(/cuff|deflat/i);
    expect(bare.stopCriteria.length).toBeGreaterThan(5);
    expect(
      expandDocument(planOf())
        .stopCriteria.map(({ text }) => text)
        .join(' '),
    ).toMatch(/deflat/);
  });

  it('shows in brief that its screening is incomplete, whatever else was found', () => {
    const answers = Object.fromEntries(
      screeningQuestions()
        .filter(({ outcome, code }) => outcome === 'caution' && code !== 'varicose-veins')
        .map(({ code }) => [code, 'yes' as const]),
    );
    const points = ['limb-paralysis', 'cancer-within-5-years', 'intensive-care', 'immobile'];
    for (const code of points) delete answers[code];
    const page = explain(planOf({}, { screening: screen({ ageYears: 30, answers }) }), { detail: 'brief' });
    expect(page).toContain('The screening is incomplete.');
    expect(page.split('CAUTIONS')[1]!.match(/^- /gm)!.length).toBeGreaterThan(0);
  });

  it('shows in brief what changes the session before what the screening found', () => {
    const answers = Object.fromEntries(screeningQuestions().map(({ code }) => [code, 'no' as const]));
    const findings = { hypertension: 'yes', diabetes: 'yes', 'first-session': 'yes' } as const;
    const screening = screen({
      ageYears: 71,
      systolicMmHg: 150,
      diastolicMmHg: 84,
      answers: { ...answers, ...findings },
    });
    const long = planOf({ restS: 120 }, { screening, ageYears: 71, systolicMmHg: 150, diastolicMmHg: 84 });
    expect(long.cautions.slice(0, 3).map(({ code }) => code)).toEqual([
      'blood-pressure-high',
      'first-session-volume',
      'restriction-long-exercise',
    ]);
    const open = planOf({ restS: 120 }, { screening: screen({ answers: { ...findings, pregnancy: 'no' } }) });
    expect(open.cautions[0]!.code).toBe('screening-incomplete');
  });

  it('says what to do at each stop criterion, tingling in the sets among them', () => {
    const [criteria] = explain(planOf(), { format: 'html' }).match(/<section class="stop-criteria">[^]*?<\/section>/)!;
    const groups = criteria.split('<h3>').slice(1);
    expect(groups.map((group) => group.split('</h3>')[0])).toEqual([
      pageWords['page.then-emergency'],
      pageWords['page.then-clinician-first'],
      pageWords['page.then-lower'],
    ]);
    expect(groups[0]).toContain(messages['symptom-chest-pain']);
    expect(groups[2]).toContain(messages['symptom-tingling']);
  });

  it('says in a sentence which side goes first where they take turns', () => {
    const limbs = bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) });
    const sentence = (side: 'both' | 'right-then-left') => explain(planOf({ side }, { limbs }), { detail: 'sentence' });
    expect(sentence('right-then-left')).toContain(
      'seated, every set with the right leg first, then with the other side:',
    );
    expect(sentence('both')).toContain('Leg extension, seated: ');
  });

  it('has no volume load where nothing but the body is lifted', () => {
    const bodily = { oneRepMax: undefined, percentOneRepMax: undefined, bodyMassPercent: 60 };
    // 75 repetitions of 60 % of 80 kg.
    expect(explain(planOf(bodily, { bodyMassKg: 80 }))).toContain('volume load of body mass 3600 kg');
    expect(explain(planOf(bodily, { bodyMassKg: 80 }))).not.toMatch(/volume load 0/);
  });

  it('adds up limbs in words: the percentage of occlusion pressure is none of one limb', () => {
    const limbs = bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) });
    const page = explain(planOf({ side: 'both' }, { limbs }));
    expect(page.match(/pressure × time, 2 limbs added up/g)).toHaveLength(1);
    expect(page.match(/pressure × time \d/g)).toHaveLength(2);
  });

  it('says where an interval has one end or none', () => {
    const { answers, ...plan } = planOf();
    const reached = (change: object) =>
      explain({
        ...plan,
        // What another version made is printed with its own numbers.
        libraryVersion: '0.0.9',
        answers: answers.map((one) =>
          one.kind === 'cuff-pressure' ? { ...one, reached: { percentLop: 50, ...change } } : one,
        ),
      })
        .split('\n')
        .find((line) => line.startsWith('Cuff '))!;
    expect(reached({})).toContain('100 mmHg, 50 % of LOP (no 95 % interval is known)');
    expect(reached({ lower: 40 })).toContain('100 mmHg, 50 % of LOP (95 % interval 40 % and above)');
  });

  it('groups the working: limbs, what the limbs of an exercise share, what is one limb’s own', () => {
    const groups = page('plan-every-kind.txt').filter((line) => line.startsWith('['));
    expect(groups).toEqual([
      '[left leg]',
      '[press]',
      '[press, left leg]',
      '[right leg]',
      '[press, right leg]',
      '[walk]',
      // Walking is another mode, with a usual range of its own, so its pressure is worked out again.
      '[walk, left leg]',
      '[squat]',
      '[The whole session]',
    ]);
    const latex = explain(everyKind, { format: 'latex' });
    for (const group of groups) expect(latex.split(`\\text{${group}}`)).toHaveLength(2);
    // Listed twice, an exercise is told apart by its turn.
    const again = planSession({
      ...both,
      limbs: [left],
      exercises: [extension, { ...extension, percentOneRepMax: 30 }],
    });
    expect(explain(again)).toMatch(/\[leg extension \(2\)\]/);
  });
});
