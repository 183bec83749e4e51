import { describe, expect, it } from 'vitest';
import {
  attempt,
  estimateOcclusionPressure,
  estimateOneRepMax,
  measuredOcclusionPressure,
  targetCuffPressure,
  targetCuffPressureRange,
  weekTotals,
} from '../../src/index.js';
import { propagate } from '../../src/study/index.js';
import { cite, explain, messages, show, words } from '../../src/text/index.js';
import { de } from '../../src/text/locales/de.js';
import {
  compareSessions,
  lightenExercise,
  type ComparisonInput,
  compareWeeks,
  guidelines,
  nextSession,
  planSession,
  progressionRules,
  recordSession,
  reviewPlan,
  screen,
  screeningQuestions,
  symptoms,
  type Plan,
  type PlanRequest,
  type RecordRequest,
  type Review,
} from '../../src/plan/index.js';
import { publicFunctions } from '../support/public-functions.js';
import { PERSON } from '../support/inputs.js';

const german: Record<string, string> = de;
const english: Record<string, string> = { ...messages, ...words };
const slots = (text: string): string[] => [...new Set(text.match(/\{[\w:]+\}/g))].sort();

const tempo = { eccentricS: 2, bottomS: 1, concentricS: 2, topS: 1 };
const plan = planSession({
  ageYears: 31,
  sex: 'female',
  systolicMmHg: 150,
  diastolicMmHg: 76,
  posture: 'seated',
  limbs: [
    {
      limb: 'leg',
      side: 'right',
      circumferenceCm: 60,
      cuffWidthCm: 18,
      percentLop: 90,
      gaugeStepMmHg: 2,
      ceilingMmHg: 110,
      equation: 'thigh-2019',
    },
    {
      limb: 'arm',
      side: 'left',
      circumferenceCm: 32,
      cuffWidthCm: 10,
      percentLop: 30,
      measured: { valueMmHg: 170, method: 'doppler', cuffWidthCm: 5 },
    },
    { limb: 'leg', side: 'left', circumferenceCm: 60, cuffWidthCm: 5, percentLop: 60, equation: 'thigh-2015' },
  ],
  exercises: [
    {
      name: 'Beinpresse',
      limb: 'leg',
      oneRepMax: { load: 50, repetitions: 12, repetitionsInReserve: 2 },
      percentOneRepMax: 45,
      step: 10,
      scheme: '30-15-15-15',
      tempo,
      restS: 90,
      restriction: 'continuous',
    },
    {
      name: 'Armbeuge',
      limb: 'arm',
      oneRepMax: { load: 40 },
      percentOneRepMax: 15,
      available: [2, 4],
      sets: [{ repetitions: 20, restS: 45 }, { repetitions: 12, restS: 30 }, { repetitions: 12 }],
      tempo,
      restS: 30,
      restriction: 'intermittent',
    },
    {
      name: 'Beinstrecker',
      limb: 'leg',
      oneRepMax: { load: 40, repetitions: 8, equation: 'epley-1985' },
      percentOneRepMax: 30,
      scheme: '10',
      tempo,
      restS: 30,
      restriction: 'none',
    },
  ],
});

/** The sentences and words of a page: what is left of its lines without numbers, formulas, ids and references. */
const phrases = (page: string): string[] =>
  page
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => !/^(- )?[a-z0-9-]+: .*(\d{4}|\]$)/.test(line) && !/^[\w%]* ?= /.test(line))
    .flatMap((line) => line.match(/\p{L}{4,}(?: \p{L}+)+/gu) ?? []);

const everyKind = planSession(
  JSON.parse(JSON.stringify(publicFunctions['planSessionOfEveryKind']!.right)) as PlanRequest,
);
const leg = { limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50 } as const;
/** One exercise on one leg, from light to heavy, as it is asked for. */
const onLeg = (percentOneRepMax: number, limbCuff: object = {}, more: object = {}, posture = 'seated'): Plan =>
  planSession({
    ...PERSON,
    posture,
    limbs: [{ ...leg, circumferenceCm: 56, ...limbCuff }],
    exercises: [
      {
        name: 'Beinpresse',
        limb: 'leg',
        oneRepMax: { load: 60 },
        percentOneRepMax,
        step: 2.5,
        scheme: '2x10',
        tempo: { eccentricS: 2, concentricS: 2 },
        restS: 30,
        restriction: 'continuous',
        ...more,
      },
    ],
  } as PlanRequest);
const light = onLeg(25);
/** Every item done, `over` repetitions above the plan. */
const recordOf = (of: Plan, over: number, item: object = {}, more: object = {}) =>
  recordSession({
    plan: of,
    date: '2026-03-02',
    items: of.items.map(({ exercise, limb, side, sets }) => ({
      exercise,
      limb,
      side,
      sets: sets.map(({ repetitions, durationS }) =>
        repetitions === undefined ? { durationS } : { repetitions: repetitions + over },
      ),
      ...item,
    })),
    symptoms: [],
    ...more,
  } as RecordRequest);
const pain = {
  pain: [
    { site: 'joint', limb: 'leg', side: 'left', before: 1, during: 4, after: 3, nextMorning: 2 },
    { site: 'under-cuff', before: 0, during: 3, after: 2 },
    { site: 'muscle', before: 0, during: 8, after: 2 },
    { site: 'tendon', before: 0, during: 2, after: 1 },
  ],
  sessionRpe: 6,
  sessionS: 1500,
};
const stopped = { stoppedEarly: true, lastSetToFailure: true };
const records = {
  'as planned': recordOf(plan, 0, {}, { pain: [] }),
  'of every kind': recordOf(everyKind, 2, {}, pain),
  'with symptoms': recordOf(plan, 0, stopped, { symptoms: symptoms.map(({ code }) => code), ...pain }),
  'held too high': recordOf(light, 2, { heldMmHg: 250, load: 20, reperfusedBeforeS: 60 }),
  'held elsewhere': recordOf(light, 2, { heldMmHg: 90 }),
  'to failure': recordOf(onLeg(25, {}, { lastSetToFailure: true }), 2, { lastSetToFailure: true }),
  'in part': recordSession({
    plan: everyKind,
    date: '2026-03-02',
    items: [{ exercise: 'walk', limb: 'leg', side: 'left', sets: [{ durationS: 60 }] }],
  } as unknown as RecordRequest),
};
const lifted = { oneRepMax: undefined, percentOneRepMax: undefined, step: undefined, tempo: undefined };
const atRest = onLeg(25, {}, { ...lifted, mode: 'passive', scheme: '2x5min' });
const partial = onLeg(25, {}, { restriction: 'partial', restPercentLop: 20 });
const two = { plan: light, records: [recordOf(light, 2, {}, pain), recordOf(light, 0, {}, { date: '2026-03-05' })] };
const asked = [
  ...progressionRules.map(({ id }) => ({ plan: light, records: [recordOf(light, 2)], rule: id })),
  { ...two, records: [recordOf(light, 2), recordOf(light, 3)], rule: 'all-repetitions', nextPercentLop: 70 },
  { ...two, records: [recordOf(light, -2), recordOf(light, -3)], rule: 'two-for-two' },
  { ...two, rule: 'all-repetitions' },
  { plan: plan, records: [records['with symptoms']], rule: 'all-repetitions' },
  { plan: everyKind, records: [records['of every kind']], rule: 'all-repetitions' },
  { plan: partial, records: [records['held elsewhere']], rule: 'all-repetitions' },
  { plan: light, records: [recordOf(partial, 2)], rule: 'all-repetitions' },
  { plan: onLeg(25, {}, { restriction: 'none' }), records: [recordOf(light, 2)], rule: 'all-repetitions' },
  {
    plan: onLeg(25, { cuffWidthCm: 12, circumferenceCm: 60 }, {}, 'standing'),
    records: [recordOf(light, 2)],
    rule: 'all-repetitions',
  },
  { ...two, rule: 'all-repetitions', date: '2026-06-01', longBreakDays: 14, oneRepMaxTestedOn: '2026-01-01' },
] as unknown as Parameters<typeof nextSession>[0][];
const every = (reply: 'yes' | 'no') => Object.fromEntries(screeningQuestions().map(({ code }) => [code, reply]));
const sessions = JSON.parse(JSON.stringify(publicFunctions['compareSessions']!.right)) as ComparisonInput;
const heavy = { ...sessions, to: { scheme: '3x10', tempo: '2-0-2-0', restS: 90, restriction: 'none', load: 75 } };
const share = (percentOneRepMax: number) => ({ ...heavy.to, percentOneRepMax });

/** Pages of the other documents, each with what it is about. */
const others: [name: string, document: Parameters<typeof explain>[0]][] = [
  ['screening, nothing answered', screen({ answers: {} })],
  ['screening, all to refer', screen({ ageYears: 67, systolicMmHg: 190, diastolicMmHg: 95, answers: every('yes') })],
  ['screening, nothing found', screen({ ageYears: 40, systolicMmHg: 118, diastolicMmHg: 74, answers: every('no') })],
  ['screening, to take care', screen({ ageYears: 17, systolicMmHg: 145, answers: { diabetes: 'yes' } })],
  ...guidelines.flatMap(({ id }) =>
    Object.entries({
      'a plan': plan,
      'every kind': everyKind,
      'a light plan': light,
      'at rest': atRest,
      ...records,
    }).map(([name, of]): [string, Review] => [`review of ${name}, ${id}`, reviewPlan(of, { guideline: id })]),
  ),
  ...Object.entries(records).map(([name, record]): [string, typeof record] => [`record ${name}`, record]),
  ...asked.map((request, index): [string, ReturnType<typeof nextSession>] => [
    `proposal ${index}`,
    nextSession(request),
  ]),
  [
    'weeks',
    compareWeeks({
      weeks: [light, onLeg(50, { percentLop: 70 }), everyKind].map((of) => ({ sessions: [{ plan: of, times: 2 }] })),
    }),
  ],
  ['sessions', compareSessions(sessions)],
  ['sessions, both heavy', compareSessions({ from: share(75), to: share(70) } as ComparisonInput)],
  ['sessions, one heavy', compareSessions(heavy as ComparisonInput)],
  ['less load', lightenExercise({ plan: light, exercise: light.items[0]!.exercise, lighterPercent: 20 })],
  ['a plan and its record', compareSessions({ from: light, to: Object.values(records)[0]! })],
];

const ids = [
  ...progressionRules.map(({ id }) => id),
  ...others.flatMap(([, document]) => cite(document).map(({ id }) => id)),
];
const names = ['Beinpresse', 'Armbeuge', 'Beinstrecker', 'leg extension', 'squat', 'quad set', 'walk'];
/** Words and abbreviations that are the same in both languages, and symbols of the working. */
const SHARED = [
  ...[
    'Plan',
    'Relative',
    'ARM',
    'Last',
    'REHABILITATION',
    'COVID',
    'III',
    'LDL',
    'LOP',
    'RPE',
    'mmHg',
    'min',
    'max',
    'was',
    'SCREENING',
    'Screening',
    'SCORE',
    'Operation',
    'Diabetes',
  ],
  ...['TUT', 'VLb', 'rest', 'down'],
];
/** The words of a page of three letters and more, but for references, ids, formulas and the names of exercises. */
const wordsOf = (page: string): string[] => {
  const lines = page
    .split('\n')
    .filter((line) => !ids.some((id) => line.startsWith(`- ${id}: `)) && !/^ *[\w%]* *= /.test(line));
  const told = [...ids, ...names].reduce((text, name) => text.replaceAll(new RegExp(name, 'gi'), ''), lines.join('\n'));
  return (told.match(/\p{L}{3,}/gu) ?? []).filter((word) => !SHARED.includes(word));
};
/** The numbers of a page; a decimal comma is read as a point. */
const numbersOf = (page: string): string[] =>
  (page.replace(/(\d),(?=\d)/g, '$1.').match(/\d+(?:[.:]\d+)*/g) ?? []).sort();

describe('a translation', () => {
  it('collides with no code: sentences and words share one list', () => {
    expect(Object.keys(english)).toHaveLength(Object.keys(messages).length + Object.keys(words).length);
  });

  it('has every code, and no code more', () => {
    const missing = Object.keys(english).filter((code) => !Object.hasOwn(german, code));
    expect(Object.fromEntries(missing.map((code) => [code, english[code]]))).toEqual({});
    expect(Object.keys(german).filter((code) => !Object.hasOwn(english, code))).toEqual([]);
  });

  it.each(Object.keys(english))('%s keeps its slots, and no sentence in English', (code) => {
    expect(slots(german[code] ?? '')).toEqual(slots(english[code]!));
    const words = english[code]!.replaceAll(/\{\w+\}/g, '');
    if (/\p{L} \p{L}/u.test(words)) expect(german[code]).not.toBe(english[code]);
  });

  it('turns the whole page of a plan, numbers unchanged', () => {
    const page = explain(plan, { locale: german });
    const before = explain(plan);
    expect(page).toContain('TRAININGSPLAN');
    expect(page).toContain('1. BEINPRESSE, BEIDE SEITEN');
    expect(page).toContain('Manschette (Bein rechts)  110 mmHg');
    expect(page).toContain('vom ersten bis zum letzten Satz aufgepumpt');
    expect(page).toContain('Vorsicht: Begrenzt auf 110 mmHg; 90 % wären 161 mmHg.');
    expect(page).toContain('sex Geschlecht 2 (weiblich)');
    expect(page).toContain('Mit Gruppenmittelwerten umgerechnet, von einer Manschette von 5 cm auf eine von 10 cm.');
    // A word that stands in a slot of a sentence is translated too.
    expect(page).toContain('angepasst: liegend; gefragt ist: sitzend');
    const left = new Set(phrases(before));
    expect(left.size).toBeGreaterThan(80);
    expect(phrases(page).filter((phrase) => left.has(phrase))).toEqual([]);
    const sums = (text: string) => text.split('\n').filter((line) => / = [\d(]/.test(line)).length;
    expect(sums(page)).toBe(sums(before));
  });

  it('turns the page of a session of every kind, but for the names of its exercises', () => {
    const request = JSON.parse(JSON.stringify(publicFunctions['planSessionOfEveryKind']!.right)) as PlanRequest;
    const whole = planSession(request);
    const left = new Set(phrases(explain(whole)));
    const names = request.exercises.map(({ name }) => name);
    const untold = phrases(explain(whole, { locale: german })).filter((phrase) => left.has(phrase));
    expect(untold.filter((phrase) => !names.includes(phrase.toLowerCase()))).toEqual([]);
  });

  it.each(others)('turns the page of another document: %s', (_, document) => {
    for (const options of 'document' in document && document.document === 'record' ? [{}, { detail: 'brief' }] : [{}]) {
      const page = explain(document, { ...(options as object), locale: german });
      const before = explain(document, options as object);
      const left = new Set(wordsOf(before));
      const untold = wordsOf(page).filter((word) => left.has(word));
      expect([...new Set(untold)]).toEqual([]);
      expect(numbersOf(page)).toEqual(numbersOf(before));
    }
  });

  it('turns what stands in a slot, and leaves what the caller wrote', () => {
    const named = onLeg(25, {}, { name: 'load' });
    const record = recordOf(named, 0, { stoppedEarly: true }, { notes: 'left, load' });
    const page = explain(record, { locale: german });
    expect(page).toContain('1. LOAD, BEIN LINKS');
    expect(page).toContain('Hinweis: load, Bein links: vorzeitig beendet.');
    expect(page).toContain('Notizen: left, load');
    expect(explain(reviewPlan(recordOf(named, 9)), { locale: german })).toContain(
      'load, Bein links: alle Sätze zusammen 38 Wiederholungen ist niedrig: 75 Wiederholungen laut der',
    );
    const proposed = (of: Plan, ...done: ReturnType<typeof recordOf>[]) =>
      explain(nextSession({ plan: of, records: done, rule: 'two-for-two' }), { locale: german });
    expect(proposed(light, recordOf(partial, 2))).toContain(
      'Die letzte Einheit wurde so gemacht: in den Pausen geringer; in diesem Plan steht: durchgehend.',
    );
    const heavy = onLeg(40);
    expect(proposed(heavy, recordOf(heavy, 2), recordOf(heavy, 3))).toContain(
      'erfüllt: 12-12; 13-13 geschafft, 10-10 geplant',
    );
  });

  it('works for Markdown, LaTeX and MathML too', () => {
    expect(explain(plan, { format: 'markdown', locale: german })).toContain('# Trainingsplan');
    expect(explain(plan, { format: 'latex', locale: german })).toContain('\\text{Dauer der Einheit: ');
    expect(explain(plan, { format: 'mathml', locale: german })).toContain('<mtext>Dauer der Einheit: ');
  });

  it('leaves in English what it does not have', () => {
    const page = explain(plan, { locale: { 'page.title': 'Trainingsplan' } });
    expect(page.split('\n').slice(2)).toEqual(explain(plan).split('\n').slice(2));
  });

  it('gives an issue, a caution, an assumption, a question or a whole answer as text', () => {
    const german = (shown: object): string => show(shown, { locale: de });
    expect(german(plan.cautions.find(({ code }) => code === 'ceiling-reached')!)).toBe(
      'Begrenzt auf 110 mmHg; 90 % wären 161 mmHg.',
    );
    expect(german({ code: 'fitted-on', values: { equation: 'chest-press-women-2000' } })).toBe(
      'chest-press-women-2000 wurde angepasst an: 30 Frauen, 19 bis 26 Jahre.',
    );
    expect(german(screeningQuestions()[0]!)).toBe(
      'Hatten Sie jemals ein Blutgerinnsel in einer Vene oder in der Lunge?',
    );
    const wrong = { limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 250, cuffWidthCm: 10 };
    expect(german(attempt(estimateOcclusionPressure, wrong)).split('\n')).toEqual([
      'diastolischer Druck – erwartet: eine Zahl von 30 bis 200 mmHg; angegeben: 250 mmHg.',
      "Körperposition fehlt; erwartet: eines von 'supine' (liegend), 'seated' (sitzend), 'standing' (stehend).",
    ]);
    // A relation: the systolic pressure is the lower one, and a rating of the reserve comes with the reserve itself.
    const swapped = { ...wrong, systolicMmHg: 70, diastolicMmHg: 120, posture: 'seated' };
    expect(german(attempt(estimateOcclusionPressure, swapped))).toBe(
      'systolischer Druck – erwartet: über dem diastolischen Druck von 120 mmHg; angegeben: 70 mmHg. Sind systolischer und diastolischer Druck vertauscht?',
    );
    const both = { load: 60, repetitions: 8, repetitionsInReserve: 1, reserveRpe: 9 };
    expect(german(attempt(estimateOneRepMax, both))).toBe(
      'Wert auf der RPE-Skala 1–10 für Wiederholungen in Reserve – erwartet: weggelassen (weil angegeben ist: Wiederholungen in Reserve); angegeben: 9.',
    );
  });

  it('writes the bounds and the value of an issue in full, lists by their length, and ends of ranges by their field', () => {
    const german = (fn: unknown, input: object): string => show(attempt(fn as never, input), { locale: de });
    const inputs = { a: { value: 1, standardDeviation: 1 }, b: { value: 1, standardDeviation: 1 } };
    const correlations = [{ between: ['a', 'b'], value: 1 }];
    // Rounded, the bounds would be -1 and 1, and 100.001 would be 100.
    expect(german(propagate, { inputs, pipeline: () => 1, correlations })).toBe(
      'correlations[0].value – erwartet: eine Zahl von -0,999999 bis 0,999999; angegeben: 1.',
    );
    const occlusion = measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' });
    expect(german(targetCuffPressure, { occlusion, percentLop: 100.001 })).toBe(
      'Prozentsatz des Verschlussdrucks – erwartet: eine Zahl von 1 bis 100 %; angegeben: 100,001 %.',
    );
    expect(german(targetCuffPressureRange, { occlusion, percentLop: { from: 50, to: 40 } })).toBe(
      'Prozentsatz des Verschlussdrucks (percentLop.to) – erwartet: mindestens 50; angegeben: 40.',
    );
    // Rounded, it would ask for at least 50.12, where you gave 50.1199 first.
    const close = attempt(targetCuffPressureRange, { occlusion, percentLop: { from: 50.1199, to: 50.1198 } });
    expect(show(close, { locale: de })).toContain('mindestens 50,1199; angegeben: 50,1198.');
    expect(show(close)).toContain('at least 50.1199; received 50.1198.');
    expect(close.ok ? '' : close.issues[0]!.message).toContain('at least 50.1199; received 50.1198.');
    const uniform = { a: { distribution: 'uniform', low: 20.1199, high: 20.1198 } };
    expect(german(propagate, { inputs: uniform, pipeline: () => 1 })).toContain(
      'mindestens 20,1199; angegeben: 20,1198.',
    );
    const mode = { a: { distribution: 'triangular', low: 20.1199, mode: 20.1198, high: 21 } };
    expect(german(propagate, { inputs: mode, pipeline: () => 1 })).toContain(
      'zwischen 20,1199 und 21; angegeben: 20,1198.',
    );
    expect(german(weekTotals, { days: Array.from({ length: 6 }, () => ({ loadAu: 300 })) })).toBe(
      'days – erwartet: sieben Tage in Folge; angegeben: eine Liste der Länge 6.',
    );
  });

  it('writes a converted value in full where it would read as one that is allowed', () => {
    // 120.001 cm are 47.2445 in: rounded, they would be the highest that is allowed, 47.24 in.
    const wrong = { limb: 'leg', circumferenceCm: 120.001, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10 };
    const imperial = show(attempt(estimateOcclusionPressure, { ...wrong, posture: 'seated' }), { units: 'imperial' });
    expect(imperial).toMatch(/from 9\.85 to 47\.24 in; received 47\.2444\d* in\.$/);
  });
});
