import { describe, expect, it } from 'vitest';
import { explain, fill, messages, type ExplainOptions } from '../../src/index.js';
import { nextSession, planSession, recordSession, reviewPlan, screen, type PlanRequest } from '../../src/plan/index.js';
import { reference } from '../../src/evidence/sources.js';

// Everything on these pages is written by hand; the sums are beside the numbers.

const measured = { valueMmHg: 200, method: 'doppler' } as const;
const leftLeg = { limb: 'leg', side: 'left' } as const;
const rightLeg = { limb: 'leg', side: 'right' } as const;
const REQUEST = {
  label: 'Athlete B',
  ageYears: 31,
  sex: 'female',
  bodyMassKg: 80,
  systolicMmHg: 118,
  diastolicMmHg: 74,
  posture: 'seated',
  sessionsPerWeek: 2,
  weeks: 4,
  reperfusionS: 200,
  limbs: [
    { ...leftLeg, cuffWidthCm: 12, percent: 50, measured },
    // 60 % of 200 is 120 mmHg; steps of 50 mmHg leave 100.
    { ...rightLeg, cuffWidthCm: 12, percent: 60, measured, gaugeStepMmHg: 50 },
  ],
  exercises: [
    {
      name: 'press',
      limb: 'leg',
      oneRepMax: { load: 110 },
      percent: 20,
      step: 2.5,
      scheme: '2x10',
      warmUp: [
        { repetitions: 5, restS: 20 },
        { durationS: 90, restS: 10 },
      ],
      tempo: { eccentricS: 2, bottomS: 1, concentricS: 1, topS: 0.5 },
      restS: 30,
      restriction: 'partial',
      restCuffPercent: 25,
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
const planned = () => planSession(REQUEST);
const recorded = () =>
  recordSession({
    plan: planned(),
    date: '2026-03-02',
    symptoms: ['after-bruising', 'stop-pain'],
    painBefore: 1,
    painDuring: 3,
    painAfter: 2,
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

const lines = (document: Parameters<typeof explain>[0], options?: ExplainOptions) =>
  explain(document, options).split('\n');
const heading = (text: string) => [text, '-'.repeat(text.length)];
const sentence = (...codes: (keyof typeof messages)[]) => codes.map((code) => messages[code]);
const points = (texts: readonly string[]) => texts.map((text) => `- ${text}`);
const cited = (document: { readonly sources: readonly Parameters<typeof reference>[0][] }) =>
  points(document.sources.map((id) => `${id}: ${reference(id)}`));
/** The lines under a heading, up to the next. */
function under(page: readonly string[], title: string): string[] {
  const from = page.indexOf(title) + 2;
  const to = page.findIndex((line, index) => index > from && /^-+$/.test(page[index + 2] ?? '') && line === '');
  return page.slice(from, to === -1 ? undefined : to);
}

const STOP = [
  'stop-numbness',
  'stop-pain',
  'stop-dizziness',
  'stop-cold-limb',
  'stop-refill',
  'stop-chest',
  'stop-vision',
  'stop-movement',
] as const;
const ALWAYS = [
  'screen-first',
  'supervise-first-sessions',
  'reperfuse-between-exercises',
  'side-effects-usual',
  'watch-afterwards',
] as const;

// A repetition takes 2 + 1 + 1 + 0.5 = 4.5 s: 5 of them 22.5 s, 10 of them 45 s. 22.5 + 20 + 90 + 10 = 142.5 s of warm-up.
const PRESS_CLOCK = [
  ['0:00', 'warm-up set 1: 5 repetitions'],
  ['0:23', 'rest'],
  ['0:43', 'warm-up set 2: 90 s'],
  ['2:13', 'rest'],
  ['2:23', 'cuff up'],
  ['2:23', 'set 1: 10 repetitions'],
  ['3:08', 'cuff at the lower pressure'],
  ['3:08', 'rest'],
  ['3:38', 'cuff up'],
  ['3:38', 'set 2: 10 repetitions'],
  ['4:23', 'cuff down'],
  ['4:23', 'end'],
];
// Repeats differ by 8.6 mmHg (docs of measuredOcclusionPressure): 200 ± 1.96 × 8.6 is 183.1 to 216.9;
// 100 mmHg of that is 54.6 to 46.1 %. 20 % of 110 kg is 22, in steps of 2.5 kg 22.5: of 110 ± 1.96 × 4.2 % 18.9 to 22.3 %.
const PRESS_FIELDS = [
  [
    'Cuff',
    '100 mmHg, 50.0 % of LOP (may really be 46.1 to 54.6 %); cuff up in the sets; in the rests 50 mmHg, 25.0 % of LOP',
  ],
  ['Load', '22.5 kg, 20.5 % of the maximum (may really be 18.9 to 22.3 %)'],
  ['Warm-up', '5 repetitions (then 20 s rest) – 90 s (then 10 s rest)'],
  ['Sets', '10 – 10 repetitions, 30 s rest between sets'],
  ['Tempo', '1 s up, 0.5 s at the top, 2 s down, 1 s at the bottom'],
];
// 20 × 22.5 kg; 20 × 4.5 s; 90 s at 100 and 30 s at 50 mmHg are 10 500 mmHg·s, of 200 mmHg 52.5 s.
const PRESS_TOTALS = [
  'repetitions 20, volume load 450 kg',
  'time under tension 1:30, session time 4:23',
  'restriction 1:30, longest unbroken 2:00',
  'at the lower pressure 0:30',
  'pressure × time 175 mmHg·min, 87.5 % of LOP·min',
];
const WALK_CLOCK = [
  ['0:00', 'cuff up'],
  ['0:00', 'set 1: 2 min'],
  ['2:00', 'cuff down'],
  ['2:00', 'rest'],
  ['3:00', 'cuff up'],
  ['3:00', 'set 2: 100 s'],
  ['4:40', 'cuff down'],
  ['4:40', 'rest'],
  ['5:10', 'cuff up'],
  ['5:10', 'set 3: 1 min'],
  ['6:10', 'cuff down'],
  ['6:10', 'end'],
];
const WALK_FIELDS = [
  ['Cuff', '100 mmHg, 50.0 % of LOP (may really be 46.1 to 54.6 %); cuff up in the sets, down in the rests'],
  ['Effort', '45 % of VO2max or heart-rate reserve'],
  ['Sets', '2 min (then 60 s rest) – 100 s (then 30 s rest) – 1 min'],
];
// 280 s at 100 mmHg are 466.67 mmHg·min.
const WALK_TOTALS = [
  'time under tension 0:00, session time 6:10',
  'restriction 4:40, longest unbroken 2:00',
  'cuffs down between restrictions 1:30',
  'pressure × time 466.67 mmHg·min, 233.33 % of LOP·min',
];
const SQUAT_FIELDS = [
  ['Cuff', 'none'],
  ['Load', '10 kg, and 64 % of a body mass of 80 kg'],
  ['Sets', '8 (then 20 s rest) – 6 (then 40 s rest) – 5'],
  ['Tempo', '2 s up, 2 s down'],
];
const SQUAT_CLOCK = [
  ['0:00', 'set 1: 8 repetitions'],
  ['0:32', 'rest'],
  ['0:52', 'set 2: 6 repetitions'],
  ['1:16', 'rest'],
  ['1:56', 'set 3: 5 repetitions'],
  ['2:16', 'end'],
];
const SQUAT_TOTALS = [
  'repetitions 19, volume load 190 kg',
  // 19 × 64 % of 80 kg.
  'volume load of body mass 972.8 kg',
  'time under tension 1:16, session time 2:16',
  'restriction 0:00, longest unbroken 0:00',
];
const ITEMS = [
  ['1. press, left leg', PRESS_FIELDS, PRESS_CLOCK, PRESS_TOTALS],
  ['2. press, right leg', PRESS_FIELDS, PRESS_CLOCK, PRESS_TOTALS],
  ['3. walk, left leg', WALK_FIELDS, WALK_CLOCK, WALK_TOTALS],
  ['4. squat, right leg', SQUAT_FIELDS, SQUAT_CLOCK, SQUAT_TOTALS],
] as const;
// 262.5 s, a pause of 200 s, 370 s, a pause of 200 s, 136 s.
const SESSION_CLOCK = [
  ['0:00', 'press, warm-up set 1: 5 repetitions (both sides)'],
  ['0:23', 'rest'],
  ['0:43', 'press, warm-up set 2: 90 s (both sides)'],
  ['2:13', 'rest'],
  ['2:23', 'cuff up, 100 mmHg (left leg)'],
  ['2:23', 'cuff up, 100 mmHg (right leg)'],
  ['2:23', 'press, set 1: 10 repetitions (both sides)'],
  ['3:08', 'cuff at the lower pressure, 50 mmHg (left leg)'],
  ['3:08', 'cuff at the lower pressure, 50 mmHg (right leg)'],
  ['3:08', 'rest'],
  ['3:38', 'cuff up, 100 mmHg (left leg)'],
  ['3:38', 'cuff up, 100 mmHg (right leg)'],
  ['3:38', 'press, set 2: 10 repetitions (both sides)'],
  ['4:23', 'cuff down (left leg)'],
  ['4:23', 'cuff down (right leg)'],
  ['4:23', 'pause, cuff down'],
  ['7:43', 'cuff up, 100 mmHg (left leg)'],
  ['7:43', 'walk, set 1: 2 min (left leg)'],
  ['9:43', 'cuff down (left leg)'],
  ['9:43', 'rest'],
  ['10:43', 'cuff up, 100 mmHg (left leg)'],
  ['10:43', 'walk, set 2: 100 s (left leg)'],
  ['12:23', 'cuff down (left leg)'],
  ['12:23', 'rest'],
  ['12:53', 'cuff up, 100 mmHg (left leg)'],
  ['12:53', 'walk, set 3: 1 min (left leg)'],
  ['13:53', 'cuff down (left leg)'],
  ['13:53', 'pause, cuff down'],
  ['17:13', 'squat, set 1: 8 repetitions (right leg)'],
  ['17:45', 'rest'],
  ['18:05', 'squat, set 2: 6 repetitions (right leg)'],
  ['18:29', 'rest'],
  ['19:09', 'squat, set 3: 5 repetitions (right leg)'],
  ['19:29', 'end'],
];
// 175 + 175 + 466.67 mmHg·min; 90 + 280 s; 200 + 60 + 30 s.
const SESSION_TOTALS = [
  'repetitions 39, volume load 640 kg',
  'volume load of body mass 972.8 kg',
  'time under tension 2:46, session time 19:29',
  'restriction 6:10, longest unbroken 2:00',
  'at the lower pressure 0:30',
  'cuffs down between restrictions 4:50',
  'pressure × time 816.67 mmHg·min, 408.33 % of LOP·min',
];
const PERSON = 'Athlete B, 31 years, female, blood pressure 118/74 mmHg, seated, 2 sessions a week, for 4 weeks';
const LIMBS = [
  'left leg: 6:10 of restriction in 2 exercises, at the lower pressure 0:30, volume load 450 kg',
  'right leg: 1:30 of restriction in 1 exercise, at the lower pressure 0:30, volume load 640 kg',
];
const CUFFED = ' (press, left leg; press, right leg; walk, left leg)';
const WATCH = [
  `note: A percentage of occlusion pressure is not a percentage of blood flow.${CUFFED}`,
  'note: Occlusion pressure rises during exercise (34 to 44 mmHg in the arm in one study), so the true percentage ' +
    `falls as the session goes on.${CUFFED}`,
  'note: Relative volume load is left out: percent or oneRepMax is not given in every exercise.',
];

describe('the page of a plan', () => {
  const clockText = (rows: readonly (readonly string[])[]) => rows.map(([at, text]) => `${at!.padStart(8)}  ${text}`);
  const widths = [9, 9, 8, 7];

  it('in plain text, down to the working', () => {
    const plan = planned();
    const page = lines(plan);
    expect(page.slice(0, page.indexOf('WORKING') - 1)).toEqual([
      'SESSION PLAN',
      '============',
      PERSON,
      ...sentence('not-cleared', 'local-codes-decide'),
      '',
      ...heading('LET THE CUFF DOWN AT ONCE ON'),
      ...points(sentence(...STOP)),
      '',
      ...ITEMS.flatMap(([title, fields, clock, totals], index) => [
        ...heading(title.toUpperCase()),
        ...fields.map(([label, text]) => label!.padEnd(widths[index]!) + text),
        'Clock',
        ...clockText(clock),
        'Totals',
        ...totals.map((line) => `  ${line}`),
        '',
      ]),
      ...heading('THE WHOLE SESSION'),
      'Clock',
      ...clockText(SESSION_CLOCK),
      'Totals',
      ...SESSION_TOTALS.map((line) => `  ${line}`),
      '',
      ...heading('EACH LIMB IN THIS SESSION'),
      ...LIMBS,
      '',
      ...heading('WATCH FOR'),
      ...points(WATCH),
      '',
      ...heading('ALWAYS'),
      ...points(sentence(...ALWAYS)),
    ]);
    expect(under(page, 'SOURCES')).toEqual(cited(plan));
    expect(page.filter((line, index) => line === '' && page[index - 1] === '')).toEqual([]);
  });

  it('in Markdown, down to the working', () => {
    const markdown = lines(planned(), { format: 'markdown' });
    const table = (rows: readonly (readonly string[])[]) => [
      '| Clock | |',
      '| ---: | --- |',
      ...rows.map(([at, text]) => `| ${at} | ${text} |`),
      '',
    ];
    const totals = (all: readonly string[]) => ['**Totals**', '', ...points(all), ''];
    expect(markdown.slice(0, markdown.indexOf('## Working') - 1)).toEqual([
      '# Session plan',
      '',
      ...[PERSON, ...sentence('not-cleared', 'local-codes-decide')].flatMap((line) => [line, '']),
      '## Let the cuff down at once on',
      '',
      ...points(sentence(...STOP)),
      '',
      ...ITEMS.flatMap(([title, fields, clock, all]) => [
        `## ${title}`,
        '',
        ...fields.map(([label, text]) => `- **${label}** ${text}`),
        '',
        ...table(clock),
        ...totals(all),
      ]),
      '## The whole session',
      '',
      ...table(SESSION_CLOCK),
      ...totals(SESSION_TOTALS),
      '## Each limb in this session',
      '',
      ...LIMBS.flatMap((line) => [line, '']),
      '## Watch for',
      '',
      ...points(WATCH),
      '',
      '## Always',
      '',
      ...points(sentence(...ALWAYS)),
    ]);
    expect(markdown.slice(markdown.indexOf('## Working'), markdown.indexOf('## Working') + 9)).toEqual([
      '## Working',
      '',
      '### left leg',
      '',
      '#### Limb occlusion pressure: 200 mmHg (95 % interval 183.14 to 216.86 mmHg)',
      '',
      '    LOP = measured',
      '        = 200',
      '',
    ]);
    expect(markdown.at(-1)).toMatch(/^- \S/);
    expect(markdown.filter((line, index) => line === '' && markdown[index - 1] === '')).toEqual([]);
  });

  // What all limbs of an exercise share stands once, under its name; what differs stands under the limb.
  it('with the working of every answer, each where it belongs and once', () => {
    const shared = ['Repetitions', 'Volume load', 'Relative volume load', 'Time under tension', 'Restriction time'];
    const times = ['Pressure × time', 'Pressure × time, relative', 'Session time'];
    const working = under(lines(planned()), 'WORKING');
    const groups: Record<string, string[]> = {};
    let group = '';
    for (const line of working) {
      if (line.startsWith('[')) groups[(group = line)] = [];
      else if (/^ {2}\S/.test(line)) groups[group]!.push(line.replace(/:.*/, '').trim());
    }
    const pressures = ['Limb occlusion pressure', 'Cuff pressure to set'];
    expect(groups).toEqual({
      '[left leg]': pressures,
      '[press]': [
        'One-repetition maximum',
        'Training load',
        ...shared,
        'Restriction time at the lower pressure',
        'Longest unbroken restriction',
        ...times,
      ],
      '[press, left leg]': ['Cuff pressure to set'],
      '[right leg]': pressures,
      '[press, right leg]': ['Cuff pressure to set'],
      '[walk]': [
        'Repetitions',
        'Time under tension',
        'Restriction time',
        'Longest unbroken restriction',
        'Reperfusion time',
        ...times,
      ],
      // Walking is another mode, with a usual range of its own, so its pressure is said again.
      '[walk, left leg]': ['Cuff pressure to set'],
      '[squat]': [
        'Training load',
        'Repetitions',
        'Volume load',
        'Volume load of body mass',
        'Time under tension',
        'Restriction time',
        'Longest unbroken restriction',
        'Session time',
      ],
      '[The whole session]': [
        'Repetitions',
        'Volume load',
        'Volume load of body mass',
        'Time under tension',
        'Restriction time',
        'Restriction time at the lower pressure',
        'Longest unbroken restriction',
        'Reperfusion time',
        ...times,
        'Peak load',
      ],
    });
    expect(working.slice(0, 5)).toEqual([
      '[left leg]',
      '  Limb occlusion pressure: 200 mmHg (95 % interval 183.14 to 216.86 mmHg)',
      '    LOP = measured',
      '        = 200',
      '          with measured measured occlusion pressure 200 mmHg',
    ]);
    // An answer says nothing of a plan’s cautions and sources again.
    expect(working.filter((line) => /^ +(note|caution|source)/.test(line))).toEqual([]);
  });

  it('of one exercise and of nobody told, with nothing more', () => {
    const { label: _, ageYears: __, sex: ___, sessionsPerWeek: ____, weeks: _____, ...request }: PlanRequest = REQUEST;
    const short = planSession({
      ...request,
      systolicMmHg: 182,
      limbs: [request.limbs[0]!],
      exercises: [
        {
          name: 'hold',
          limb: 'leg',
          unloaded: true,
          sets: [{ durationS: 45 }],
          restriction: 'none',
        },
      ],
    });
    const bare = lines(short);
    expect(bare.slice(2, 4)).toEqual([
      'One person, blood pressure 182/74 mmHg, seated',
      `stop: ${fill(messages['blood-pressure-refer'], { systolic: 182, diastolic: 74 })}`,
    ]);
    expect(bare).not.toContain('THE WHOLE SESSION');
    expect(under(bare, '1. HOLD, LEFT LEG').slice(0, 3)).toEqual(['Cuff  none', 'Load  none', 'Sets  45 s']);
    expect(under(bare, 'EACH LIMB IN THIS SESSION')).toEqual(['left leg: no restriction']);
    expect(bare.filter((line) => line.startsWith('[The whole session]'))).toEqual([]);
    const continuous = planSession({
      ...request,
      exercises: [{ ...request.exercises[1]!, restriction: 'continuous' }],
    });
    expect(lines(continuous)).toContainEqual(expect.stringMatching(/; cuff up from the first set to the last$/));
    // Repeated, an exercise is told apart by its turn.
    const [press] = request.exercises;
    const again = planSession({
      ...request,
      limbs: [request.limbs[0]!],
      exercises: [press!, { ...press!, percent: 30 }],
    });
    expect(lines(again).filter((line) => line.startsWith('['))).toEqual([
      '[left leg]',
      '[press]',
      '[press, left leg]',
      '[press (2)]',
      '[press (2), left leg]',
      '[The whole session]',
    ]);
  });

  it('with what a pressure may really be, where only one end is known', () => {
    const plan = planned();
    const [item] = plan.items;
    const reached = (change: object) =>
      lines({
        ...plan,
        items: [{ ...item!, target: { ...item!.target!, reached: { percent: 50, ...change } } }],
      })
        .find((line) => line.startsWith('Cuff '))!
        .slice(9);
    expect(reached({})).toMatch(/^100 mmHg, 50\.0 % of LOP \(no range can be given\);/);
    expect(reached({ lower: 40 })).toMatch(/^100 mmHg, 50\.0 % of LOP \(may really be 40\.0 % and above\);/);
  });

  it('as LaTeX and MathML of the working alone', () => {
    const latex = explain(planned(), { format: 'latex' });
    for (const group of ['left leg', 'press, left leg', 'The whole session'])
      expect(latex.split(`\\text{[${group}]}`)).toHaveLength(2);
    expect(explain(planned(), { format: 'mathml' })).toMatch(
      /^<math [^>]*><mtable [^>]*>\n<mtr><mtd><\/mtd><mtd><mtext>\[left/,
    );
  });
});

describe('the page of a record', () => {
  it('in plain text', () => {
    const record = recorded();
    const page = lines(record);
    // 22 × 4.5 s; 99 s at 110 and 30 s at 45 mmHg are 204 mmHg·min, at 100 and 50 mmHg 190; 210 s at 100 mmHg 350.
    expect(page.slice(0, page.indexOf('WORKING') - 1)).toEqual([
      'SESSION RECORD',
      '==============',
      '2026-03-02, Athlete B, seated',
      ...sentence('record-clears-no-one', 'local-codes-decide'),
      '',
      ...heading('1. PRESS, LEFT LEG'),
      'Sets   10-12 done, 10-10 planned',
      'Load   20 kg done, 22.5 kg planned',
      'Cuff   110 mmHg held, 100 mmHg planned; restriction partial',
      'Rests  45 mmHg held, 50 mmHg planned',
      'Stopped early',
      'Last set to failure',
      'Totals',
      '  repetitions 22, volume load 440 kg',
      '  time under tension 1:39, session time 2:09',
      '  restriction 1:39, at the lower pressure 0:30, pressure × time 204 mmHg·min',
      '',
      ...heading('2. PRESS, RIGHT LEG'),
      'Sets   10-12 done, 10-10 planned',
      'Load   22.5 kg done, 22.5 kg planned',
      'Cuff   pressure held not recorded, 100 mmHg planned; restriction partial',
      'Rests  pressure held not recorded, 50 mmHg planned',
      'Totals',
      '  repetitions 22, volume load 495 kg',
      '  time under tension 1:39, session time 2:09',
      '  restriction 1:39, at the lower pressure 0:30, pressure × time 190 mmHg·min',
      '',
      ...heading('3. WALK, LEFT LEG'),
      'Sets   120s-90s done, 120s-100s-60s planned',
      'Load   none',
      'Cuff   pressure held not recorded, 100 mmHg planned; restriction intermittent',
      'Totals',
      '  time under tension 0:00, session time 4:30',
      '  restriction 3:30, pressure × time 350 mmHg·min',
      '',
      ...heading('4. SQUAT, RIGHT LEG'),
      'Sets   8 done, 8-6-5 planned',
      'Load   10 kg done, 10 kg planned',
      'Cuff   none',
      'Totals',
      '  repetitions 8, volume load 80 kg',
      '  volume load of body mass 409.6 kg',
      '  time under tension 0:32, session time 0:32',
      '  restriction 0:00',
      '',
      ...heading('HOW IT FELT'),
      'pain before 1/10, during 3/10, after 2/10',
      'effort of the session 6/10',
      // 6 × 25 min.
      'time it took 25:00, session load 150 AU',
      'symptoms: bruising afterwards; sharp or rising pain under the cuff or in the limb',
      'notes: tired',
      '',
      ...heading('EACH LIMB IN THIS SESSION'),
      'left leg: 5:09 of restriction, at the lower pressure 0:30, volume load 440 kg',
      'right leg: 1:39 of restriction, at the lower pressure 0:30, volume load 575 kg',
      '',
      ...heading('WATCH FOR'),
      '- stop: Reported: bruising afterwards. Stop, and refer before another session.',
      '- stop: Reported: sharp or rising pain under the cuff or in the limb. Stop, and refer before another session.',
      '- caution: Pain was 2 after the session and 1 before it.',
      '- caution: Pain rose from 1 to 3 in the session.',
      '- caution: press, left leg: 110 mmHg was held, above the 100 mmHg of the plan.',
      '- note: press, left leg: stopped early.',
      ...points(sentence('watch-afterwards')),
    ]);
    const working = under(page, 'WORKING');
    expect(working.filter((line) => line.startsWith('['))).toEqual([
      '[press, left leg]',
      '[press, right leg]',
      '[walk, left leg]',
      '[squat, right leg]',
    ]);
    expect(working.slice(0, 10)).toEqual([
      '[press, left leg]',
      '  Repetitions: 22 repetitions',
      '    N = R',
      '      = (10 + 12)',
      '      = 22 repetitions',
      '        with R repetitions, set by set 10 + 12',
      '  Volume load: 440 kg',
      '    VL = R × w',
      '       = (10 + 12) × 20',
      '       = 440 kg',
    ]);
    expect(working.slice(working.indexOf('Session load: 150 AU'))).toEqual([
      'Session load: 150 AU',
      '  L = RPE × T / 60',
      '    = 6 × 1500 / 60',
      '    = 150 AU',
      expect.stringMatching(/^ {6}with RPE session RPE 6, T time the session took 1500 s$/),
      ...sentence('tempo-not-recorded', 'pressure-as-planned').map((text) => `taken for granted: ${text}`),
    ]);
    expect(under(page, 'SOURCES')).toEqual(cited(record));
  });

  it('of nothing more than was recorded', () => {
    const { label: _, ...request }: PlanRequest = REQUEST;
    const bare = lines(
      recordSession({
        plan: planSession(request),
        date: '2026-03-02',
        items: [{ exercise: 'squat', ...rightLeg, sets: [{ repetitions: 8 }] }],
      }),
    );
    expect(bare[2]).toBe('2026-03-02, seated');
    expect(under(bare, 'HOW IT FELT')).toEqual([
      'pain before not recorded, during not recorded, after not recorded',
      'effort of the session not recorded',
      'time it took not recorded',
      'symptoms: none recorded',
    ]);
    expect(under(bare, 'WATCH FOR')).toEqual([
      ...['press, left leg', 'press, right leg', 'walk, left leg'].map(
        (what) => `- note: ${what}: planned, and not recorded.`,
      ),
      ...points(sentence('watch-afterwards')),
    ]);
    expect(bare).not.toContainEqual(expect.stringMatching(/Session load|pressure-as-planned/));
  });
});

describe('the page of a review', () => {
  const below = (where: string, name: string, found: string, range: string, grade = 'secondary') =>
    `- note: ${where}: ${name} ${found} is below the ${range} of the 2019 guideline review. [${grade}]`;

  it('of a plan', () => {
    const page = lines(reviewPlan(planned()));
    expect(page.slice(0, 6)).toEqual([
      'REVIEW OF A PLAN',
      '================',
      'Held against the 2019 guideline review.',
      ...sentence('review-clears-no-one', 'local-codes-decide', 'review-partial'),
    ]);
    // 90 + 30 s of 5 min; 20 of 75 repetitions; 280 s of 5 min.
    expect(under(page, 'OUTSIDE THE RANGE')).toEqual([
      ...['press, left leg', 'press, right leg'].flatMap((where) => [
        below(where, 'restriction', '2 min', '5 to 10 min in one exercise'),
        below(where, 'all sets together,', '20 repetitions', '75 repetitions'),
      ]),
      below('walk, left leg', 'restriction', '4.67 min', '5 to 20 min in one exercise', 'unconfirmed'),
    ]);
    expect(under(page, 'INSIDE THE RANGE')).toEqual([
      '- cuff pressure 50 % of occlusion pressure [40 to 80 %; secondary]',
      '- cuff width 12 cm [5 to 18 cm; unconfirmed]',
      '- number of sets 2 [2 to 4; secondary]',
      '- load 20.45 % of the maximum [20 to 40 %; secondary]',
      '- lifting 1 s [1 to 2 s; unconfirmed]',
      '- lowering 2 s [1 to 2 s; unconfirmed]',
      '- rest between sets 30 s [30 to 60 s; secondary]',
      '- intensity 45 % of VO2max or heart-rate reserve [50 % at most; unconfirmed]',
      '- sessions a week, 2 [2 to 3; secondary]',
    ]);
    expect(page).not.toContain('NOT JUDGED, NOT IN THE DOCUMENT');
    expect(under(page, 'SOURCES')).toEqual(cited(reviewPlan(planned())));
  });

  it('of a record, and where there is nothing to say', () => {
    const page = lines(reviewPlan(recorded()));
    expect(page[0]).toBe('REVIEW OF A RECORD');
    expect(under(page, 'NOT JUDGED, NOT IN THE DOCUMENT')).toEqual(['- sessions a week']);
    expect(under(page, 'INSIDE THE RANGE')).toContain(
      '- all sets together, 22 repetitions [75 repetitions; secondary]',
    );
    const none = lines(
      reviewPlan(planSession({ ...REQUEST, exercises: [REQUEST.exercises[2]] }), {
        guideline: 'common-practice',
      }),
    );
    expect(none.slice(2)).toEqual([
      'Held against common practice, without a source.',
      ...sentence('review-clears-no-one', 'local-codes-decide', 'review-no-cuff'),
      '',
      ...heading('OUTSIDE THE RANGE'),
      'nothing that was judged',
      '',
      ...heading('INSIDE THE RANGE'),
      'nothing that was judged',
      '',
      ...heading('SOURCES'),
      'none',
    ]);
  });
});

describe('the page of a proposal', () => {
  it('that stops', () => {
    const record = recorded();
    const page = lines(nextSession({ plan: planned(), records: [record], rule: 'two-for-two' }));
    const stop = points(sentence('sign-to-stop-reported'));
    expect(page.slice(0, page.indexOf('SOURCES') - 1)).toEqual([
      'PROPOSAL FOR THE NEXT SESSION',
      '=============================',
      `Rule two-for-two [secondary]: ${messages['rule-two-for-two']}`,
      ...sentence('proposal-clears-no-one', 'local-codes-decide', 'one-thing-at-a-time', 'pressure-last'),
      '',
      ...heading('1. PRESS, LEFT LEG'),
      'Proposed: stop',
      'Load   22.5 kg (20.45 % of the maximum) → no number is proposed',
      'Cuff   100 mmHg (50 % of LOP asked for) → no number is proposed',
      ...stop,
      '',
      ...heading('2. PRESS, RIGHT LEG'),
      'Proposed: stop',
      'Load   22.5 kg (20.45 % of the maximum) → no number is proposed',
      'Cuff   100 mmHg (60 % of LOP asked for) → no number is proposed',
      ...stop,
      '',
      ...heading('3. WALK, LEFT LEG'),
      'Proposed: stop',
      'Load   none',
      'Cuff   100 mmHg (50 % of LOP asked for) → no number is proposed',
      ...stop,
      '',
      ...heading('4. SQUAT, RIGHT LEG'),
      'Proposed: stop',
      'Load   10 kg → no number is proposed',
      'Cuff   none',
      ...stop,
      '',
      ...heading('MEASURE AGAIN'),
      `- ${messages['measure-occlusion-weeks']} [practice]`,
      `- ${messages['test-maximum-weeks']} [published]`,
      '',
      ...heading('WATCH FOR'),
      ...record.cautions.map(({ severity, text }) => `- ${severity}: ${text}`),
    ]);
  });

  it('that raises, repeats and backs off', () => {
    const one = planSession({ ...REQUEST, exercises: [REQUEST.exercises[0]] });
    const after = (painAfter: number, repetitions: number, nextPercent?: number) => {
      const items = [leftLeg, rightLeg].map((limb) => ({
        exercise: 'press',
        ...limb,
        sets: [{ repetitions: 10 }, { repetitions }],
      }));
      const felt = { painBefore: 1, painAfter };
      const records = [recordSession({ plan: one, date: '2026-03-02', items, ...felt })];
      const asked = { rule: 'all-repetitions', date: '2026-04-01', oneRepMaxTestedOn: '2026-03-01' } as const;
      return lines(nextSession({ plan: one, records, ...asked, nextPercent }));
    };
    const first = (page: readonly string[]) => under(page, '1. PRESS, LEFT LEG').slice(0, 4);
    // 25 of 110 kg is 22.73 %, 20 kg is 18.18 %; 70 % of 200 mmHg is 140.
    expect(first(after(1, 10))).toEqual([
      'Proposed: raise the load',
      'Load   22.5 kg (20.45 % of the maximum) → 25 kg (22.73 % of the maximum)',
      'Cuff   100 mmHg (50 % of LOP asked for) → 100 mmHg (50 % of LOP asked for)',
      '- The rule is met: 10-10 repetitions done, 10-10 planned.',
    ]);
    expect(first(after(1, 10, 70)).slice(0, 3)).toEqual([
      'Proposed: raise the pressure',
      'Load   22.5 kg (20.45 % of the maximum) → 22.5 kg (20.45 % of the maximum)',
      'Cuff   100 mmHg (50 % of LOP asked for) → 140 mmHg (70 % of LOP asked for)',
    ]);
    expect(first(after(2, 10)).slice(0, 2)).toEqual([
      'Proposed: back off',
      'Load   22.5 kg (20.45 % of the maximum) → 20 kg (18.18 % of the maximum)',
    ]);
    expect(first(after(1, 9))[0]).toBe('Proposed: repeat');
    const calm = after(1, 9);
    expect(calm).not.toContain('WATCH FOR');
    // 1 March to 1 April are 31 days.
    expect(under(calm, 'MEASURE AGAIN')).toContain(
      '- due: The maximum is 31 days old: test it again, about every 4 weeks. [published]',
    );
  });
});

describe('the page of a screening', () => {
  const outcome = 'is at or above 180/110: do not train; refer to a physician.';
  const source = 'risk-stratification-2022';
  it('with findings and open questions', () => {
    const answers = { pregnancy: 'yes', diabetes: 'yes', immobile: 'yes' } as const;
    const screening = screen({ label: 'Athlete B', ageYears: 61, systolicMmHg: 182, answers });
    const page = lines(screening);
    const ask = 'ask the treating clinician before training with restriction.';
    expect(page.slice(0, page.indexOf('NOT ANSWERED') - 1)).toEqual([
      'SCREENING',
      '=========',
      'Athlete B',
      // 36 conditions less three, and the diastolic pressure.
      'Outcome: refer; 34 questions are not answered',
      ...sentence('screening-clears-no-one', 'local-codes-decide', 'screening-again'),
      '',
      ...heading('FOUND'),
      `- refer: Blood pressure 182/unknown mmHg ${outcome} [published, ${source}]`,
      `- refer: Pregnancy: refer before any training with restriction. [published, ${source}]`,
      `- caution: Immobile for a day or longer: ${ask} [published, ${source}]`,
      `- caution: Diabetes: ${ask} [published, ${source}]`,
      `- caution: Age 61, 60 and over: ${ask} [published, ${source}]`,
    ]);
    const open = under(page, 'NOT ANSWERED');
    expect([open.length, ...open.slice(0, 2)]).toEqual([
      34,
      '- Resting diastolic blood pressure?',
      '- A blood clot in a vein or in the lung, now or ever?',
    ]);
    // Points of Table 3: clot 3, clotting disorder, paralysis and cancer 2 each, intensive care, immobility and age 1 each.
    expect(under(page, 'THROMBOSIS SCORE')).toEqual([
      'Thrombosis score (points): 2',
      '  S = 3 × q1 + 2 × q2 + 2 × q3 + 2 × q4 + 1 × q5 + 1 × q6 + 1 × q7',
      '    = 3 × 0 + 2 × 0 + 2 × 0 + 2 × 0 + 1 × 0 + 1 × 1 + 1 × 1',
      '    = 2',
      expect.stringMatching(/^ {6}with q1 .*unknown \(coded 0\).*yes \(coded 1\)$/),
      ...sentence('score-no-cut-off'),
      'Items that are not answered count as 0 here; were all of them to apply, the score would be 12 of 12.',
    ]);
    expect(under(page, 'SOURCES')).toEqual(cited(screening));
  });

  it('with nothing found', () => {
    // 36 conditions, the age and two pressures.
    expect(screen({ answers: {} }).unanswered).toHaveLength(39);
    const page = lines(screen({ answers: { 'varicose-veins': 'yes' } }));
    expect(page.slice(2, 3)).toEqual(['Outcome: take care; 38 questions are not answered']);
    expect(under(page, 'FOUND')).toEqual([
      '- caution: Varicose veins: ask the treating clinician before training with restriction. [unconfirmed]',
    ]);
    const all = Object.fromEntries(
      screen({ answers: {} })
        .unanswered.slice(3)
        .map(({ code }) => [code, 'no']),
    );
    const none = lines(screen({ ageYears: 30, systolicMmHg: 120, diastolicMmHg: 80, answers: all }));
    expect(none[2]).toBe('Outcome: nothing found in the answers given');
    expect(under(none, 'FOUND')).toEqual(['nothing in the answers given']);
    expect(none).not.toContain('NOT ANSWERED');
  });
});
