import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { attempt, estimateOcclusionPressure, explain, fill, messages, words } from '../../src/index.js';
import { planSession, type PlanRequest } from '../../src/plan/index.js';
import { doors } from '../support/doors.js';

const german = JSON.parse(readFileSync('examples/translation/de.json', 'utf8')) as Record<string, string>;
const english: Record<string, string> = { ...messages, ...words };
const slots = (text: string): string[] => [...new Set(text.match(/\{\w+\}/g))].sort();

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
      percent: 90,
      gaugeStepMmHg: 2,
      ceilingMmHg: 110,
      equation: 'thigh-2019',
    },
    {
      limb: 'arm',
      side: 'left',
      cuffWidthCm: 10,
      percent: 30,
      measured: { valueMmHg: 170, method: 'doppler', cuffWidthCm: 5 },
    },
    { limb: 'leg', side: 'left', circumferenceCm: 60, cuffWidthCm: 5, percent: 60 },
  ],
  exercises: [
    {
      name: 'Beinpresse',
      limb: 'leg',
      oneRepMax: { load: 50, repetitions: 12, repetitionsInReserve: 2 },
      percent: 45,
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
      percent: 15,
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
      percent: 30,
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
    .filter((line) => !/^(- )?[a-z0-9-]+: .*\d{4}/.test(line) && !/^[\w%]* ?= /.test(line))
    .flatMap((line) => line.match(/\p{L}{4,}(?: \p{L}+)+/gu) ?? []);

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
    const page = explain(plan, { messages: german });
    const before = explain(plan);
    expect(page).toContain('TRAININGSPLAN');
    expect(page).toContain('1. BEINPRESSE, BEIN RECHTS');
    expect(page).toContain('Druck  110 mmHg');
    expect(page).toContain('Manschette vom ersten bis zum letzten Satz gefüllt');
    expect(page).toContain('Vorsicht: Die Obergrenze von 110 mmHg hält die Einstellung unter den');
    expect(page).toContain('sex Geschlecht weiblich (als 2)');
    // A word that stands in a slot of a sentence is translated too.
    expect(page).toContain('Umrechnung auf eine andere Manschette (breiter) unterschätzt veröffentlichte Wertepaare');
    expect(page).toContain('angepasst: Rückenlage; gefragt ist der Druck in dieser: sitzend');
    const left = new Set(phrases(before));
    expect(left.size).toBeGreaterThan(80);
    expect(phrases(page).filter((phrase) => left.has(phrase))).toEqual([]);
    const sums = (text: string) => text.split('\n').filter((line) => / = [\d(]/.test(line)).length;
    expect(sums(page)).toBe(sums(before));
  });

  it('turns the page of a session of every kind, but for the names of its exercises', () => {
    const request = JSON.parse(JSON.stringify(doors['planSessionOfEveryKind']!.right)) as PlanRequest;
    const whole = planSession(request);
    const left = new Set(phrases(explain(whole)));
    const names = request.exercises.map(({ name }) => name);
    const untold = phrases(explain(whole, { messages: german })).filter((phrase) => left.has(phrase));
    expect(untold.filter((phrase) => !names.includes(phrase.toLowerCase()))).toEqual([]);
  });

  it('works for Markdown, LaTeX and MathML too', () => {
    expect(explain(plan, { format: 'markdown', messages: german })).toContain('# Trainingsplan');
    expect(explain(plan, { format: 'latex', messages: german })).toContain('\\text{Dauer der Einheit: ');
    expect(explain(plan, { format: 'mathml', messages: german })).toContain('<mtext>Dauer der Einheit: ');
  });

  it('leaves in English what it does not have', () => {
    const page = explain(plan, { messages: { 'page.title': 'Trainingsplan' } });
    expect(page.split('\n').slice(2)).toEqual(explain(plan).split('\n').slice(2));
  });

  it('is put together by an app from the code and the values of a caution or an issue', () => {
    const caution = plan.cautions.find(({ code }) => code === 'ceiling-reached')!;
    expect(fill(german[caution.code]!, caution.values)).toMatch(/^Die Obergrenze von 110 mmHg hält/);
    const result = attempt(estimateOcclusionPressure, {
      limb: 'leg',
      circumferenceCm: 55,
      systolicMmHg: 70,
      diastolicMmHg: 120,
      cuffWidthCm: 10,
      posture: 'supine',
    });
    const [issue] = result.ok ? [] : result.issues;
    const { code, expected, received } = issue!;
    expect(fill(german[code]!, { field: german['field.systolicMmHg']!, expected, received })).toMatch(
      /^systolischer Druck muss .* Sind systolischer und diastolischer Druck vertauscht\?$/,
    );
  });
});
