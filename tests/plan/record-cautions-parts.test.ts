// What a record says about what was done, on items and reports written by hand. The lines are those of `symptoms`,
// `painRules`, `guards` and `progressionLimits`.
import { describe, expect, it } from 'vitest';
import type { Caution } from '../../src/index.js';
import { attempt } from '../../src/answer/issues.js';
import { doneCautions, lengthCautions, readingCautions, reportedCautions } from '../../src/plan/record-cautions.js';

type Item = Parameters<typeof doneCautions>[0];

const who = { exercise: 'press', limb: 'leg', side: 'left' };

const itemOf = (done: object = {}, more: object = {}): Item =>
  ({
    ...who,
    sets: [{ repetitions: 15, restS: 0 }],
    target: { value: 100, inputs: { percentLop: 50, occlusion: { value: 200 } } },
    load: { value: 20, unit: 'kg' },
    done: { sets: [{ repetitions: 15, restS: 0 }], load: 20, unit: 'kg', stoppedEarly: false, ...done },
    totals: { cautions: [], timeUnderTension: { value: 60 } },
    ...more,
  }) as unknown as Item;

const short = (cautions: readonly Caution[]) =>
  cautions.map(({ severity, code, values, path, source }) => [severity, code, values, path?.join('.'), source]);
const of = (item: Item) => short(doneCautions(item, 3));

describe('what was done of an item', () => {
  it('as planned says nothing', () => {
    expect(of(itemOf({ heldMmHg: 100 }))).toEqual([]);
    expect(of(itemOf())).toEqual([]);
  });

  const at = 'items.3.done.heldMmHg';
  const share = { occlusion: 160, percentLop: 50, ...who };
  it.each<[done: object, line: unknown[]]>([
    [{ heldMmHg: 111 }, ['caution', 'held-above-target', { ...who, held: 111, target: 100 }, at, undefined]],
    [{ heldMmHg: 89 }, ['note', 'held-below-target', { ...who, held: 89, target: 100 }, at, undefined]],
    [{ heldMmHg: 200 }, ['caution', 'held-occludes', { ...who, held: 200, occlusion: 200 }, at, undefined]],
    [
      { heldMmHg: 100, occlusionMmHg: 160 },
      ['caution', 'held-share-above', { ...share, held: 100, heldPercent: 62.5 }, at, undefined],
    ],
    [
      { heldMmHg: 64, occlusionMmHg: 160 },
      ['note', 'held-share-below', { ...share, held: 64, heldPercent: 40 }, at, undefined],
    ],
    [
      { heldMmHg: 310 },
      ['stop', 'held-above-tried', { ...who, held: 310, most: 300 }, at, 'complete-restriction-2007'],
    ],
  ])('held %j', (done, line) => {
    expect(of(itemOf(done))).toEqual([line]);
  });

  it('a pause of less than a minute before it is short', () => {
    expect(of(itemOf({ reperfusedBeforeS: 0 }))).toMatchObject([
      ['caution', 'reperfusion-short', expect.anything(), 'items.3.done.reperfusedBeforeS', undefined],
    ]);
    expect(of(itemOf({ reperfusedBeforeS: 3600 }))).toEqual([]);
  });

  it('more lifted than planned, in the heaviest set, of a range above its upper end', () => {
    const above = (lifted: number, planned: number) => [
      ['caution', 'lifted-above-plan', { ...who, lifted, planned, unit: 'kg' }, 'items.3.done.load', undefined],
    ];
    expect(of(itemOf({ load: 25 }))).toEqual(above(25, 20));
    expect(of(itemOf({ load: 15 }))).toEqual([]);
    expect(of(itemOf({ sets: [{ repetitions: 5, restS: 0, load: 30 }] }))).toEqual(above(30, 20));
    expect(of(itemOf({ load: 25 }, { sets: [{ repetitions: 5, restS: 0, load: 30 }] }))).toEqual([]);
    const upperLoad = { value: 30, unit: 'kg' };
    expect(of(itemOf({ load: 25 }, { upperLoad }))).toEqual([]);
    expect(of(itemOf({ load: 35 }, { upperLoad }))).toEqual(above(35, 30));
    expect(of(itemOf({ load: 25, instead: 'squat' }))).toEqual([]);
    expect(of(itemOf({ load: 25 }, { load: undefined }))).toEqual([]);
    // Nothing was lifted of it; a set alone says nothing then.
    expect(of(itemOf({ load: undefined, sets: [{ repetitions: 5, restS: 0, load: 30 }] }))).toEqual([]);
  });

  it('stopped early', () => {
    expect(of(itemOf({ stoppedEarly: true }))).toEqual([
      ['note', 'stopped-early', who, 'items.3.done.stoppedEarly', undefined],
    ]);
  });

  it('the cautions of its totals follow, but those that are of the limb or said already', () => {
    const severe = (code: string) => ({ severity: 'stop', code, text: '' });
    const all = ['pressure-above-occlusion', 'cuff-pressure-stop', 'restriction-long-limb', 'other'].map(severe);
    const item = (heldMmHg: number) => itemOf({ heldMmHg, stoppedEarly: true }, { totals: { cautions: all } });
    expect(of(item(100)).map(([, code]) => code)).toEqual(['stopped-early', 'cuff-pressure-stop', 'other']);
    expect(of(item(310)).map(([, code]) => code)).toEqual(['held-above-tried', 'stopped-early', 'other']);
  });
});

describe('what was reported', () => {
  const reported = (...given: Parameters<typeof reportedCautions>) => short(reportedCautions(...given));

  it('nothing', () => {
    expect(reported({})).toEqual([]);
    expect(reported({ symptoms: [], pain: [] })).toEqual([]);
  });

  it('symptoms by their grade, each once, with their source', () => {
    const symptoms = [
      'symptom-soreness',
      'symptom-chest-pain',
      'symptom-soreness',
      'symptom-swelling',
      'symptom-bruising',
      'symptom-limb-turns-cold',
    ] as const;
    const survey = 'practitioner-survey-2018';
    const lower = (symptom: string, part: string) => ({ symptom, lower: `lower-${part}` });
    // A record lists each once: the place is in its list.
    expect(reported({ symptoms })).toEqual([
      ['caution', 'symptom-lower', lower('symptom-soreness', 'load'), 'symptoms.0', survey],
      ['stop', 'symptom-emergency', { symptom: 'symptom-chest-pain' }, 'symptoms.1', undefined],
      ['stop', 'symptom-clinician-first', { symptom: 'symptom-swelling' }, 'symptoms.2', undefined],
      ['caution', 'symptom-lower', lower('symptom-bruising', 'pressure'), 'symptoms.3', survey],
      ['caution', 'symptom-lower', lower('symptom-limb-turns-cold', 'pressure'), 'symptoms.4', undefined],
    ]);
    const [first] = reportedCautions({ symptoms: ['symptom-limb-turns-cold'] });
    expect(Object.keys(first!)).not.toContain('source');
  });

  it('pain by a rule, the cautious one unless you name another', () => {
    const joint = (during: number) => ({ site: 'joint', during }) as const;
    const one = (during: number, rule?: 'tendon-monitoring') => reported({ pain: [joint(during)] }, rule);
    const at = 'pain.0.during';
    const values = (pain: number, line: number, rule = 'cautious') => ({
      pain,
      site: 'joint',
      moment: 'during',
      line,
      rule,
    });
    expect(one(1)).toEqual([]);
    expect(one(2)).toEqual([['note', 'pain-hold', values(2, 1), at, undefined]]);
    expect(one(4)).toEqual([['caution', 'pain-back-off', values(4, 3), at, undefined]]);
    expect(one(4, 'tendon-monitoring')).toEqual([
      ['note', 'pain-hold', values(4, 3, 'tendon-monitoring'), at, 'achilles-trial-2007'],
    ]);
    expect(one(8)).toEqual([
      ['stop', 'pain-severe', { pain: 8, site: 'joint', moment: 'during', line: 8 }, at, undefined],
    ]);
    const both = reportedCautions({ pain: [joint(1), joint(4)] });
    expect(both.map(({ path }) => path)).toEqual([['pain', 1, 'during']]);
    expect(Object.keys(both[0]!)).not.toContain('source');
  });
});

describe('a session that took less time than its sets', () => {
  const item = (side: string, seconds: number) =>
    itemOf({}, { side, totals: { cautions: [], timeUnderTension: { value: seconds } } });

  it('counts the longest limb, since both sides may work at once', () => {
    const items = [item('left', 60), item('right', 50), item('left', 40)];
    expect(short(lengthCautions(99, items))).toEqual([
      ['caution', 'session-shorter-than-sets', { session: 99, sets: 100 }, 'sessionS', undefined],
    ]);
    expect(lengthCautions(100, items)).toEqual([]);
    expect(lengthCautions(undefined, items)).toEqual([]);
  });
});

describe('the blood pressure of the day', () => {
  const refused = (given: Parameters<typeof readingCautions>[0]) => {
    const answer = attempt(readingCautions, given);
    return answer.ok ? 'none' : answer.issues.map(({ code, path, requirement }) => [code, path.join('.'), requirement]);
  };

  it('none, or both readings, the systolic one above the diastolic', () => {
    expect(readingCautions({})).toEqual([]);
    expect(readingCautions({ systolicMmHg: 118, diastolicMmHg: 74 })).toEqual([]);
    expect(readingCautions({ systolicMmHg: 190, diastolicMmHg: 115 })).not.toEqual([]);
    const missing = (path: string, field: string) => [['missing', path, { code: 'given-with', values: { field } }]];
    expect(refused({ systolicMmHg: 118 })).toEqual(missing('diastolicMmHg', 'systolicMmHg'));
    expect(refused({ diastolicMmHg: 74 })).toEqual(missing('systolicMmHg', 'diastolicMmHg'));
    expect(refused({ systolicMmHg: 74, diastolicMmHg: 118 })).not.toBe('none');
    const [one] = [attempt(readingCautions, { systolicMmHg: 118 })];
    expect(one.ok || one.issues[0]!.received).toBe('undefined');
  });
});
