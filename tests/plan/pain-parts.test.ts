import { describe, expect, it } from 'vitest';
import { assessPain, painIsOf, painSentence, type PainReport, type PainRuleId } from '../../src/plan/pain.js';

const one = (report: PainReport, rule: PainRuleId = 'cautious') => {
  const found = assessPain([report], rule);
  expect(found.every((each) => each.report === report)).toBe(true);
  return found.map(({ verdict, rule, moment, pain, before }) => [verdict, rule.id, moment, pain, before]);
};

// The lines of each rule as its source or the practice has them: Am J Sports Med 2007;35(6):897–906 (up to 5 of 10, gone
// by the next morning), the page on the front of the knee (best below 2, up to 5), Physiol Behav 2016;157:277–280 (5 to
// 7 under the cuff is usual); the others `practice`.
describe('pain', () => {
  it.each<[PainRuleId, number, string]>([
    ['cautious', 0, 'go-on'],
    ['cautious', 1, 'go-on'],
    ['cautious', 2, 'hold'],
    ['cautious', 3, 'hold'],
    ['cautious', 4, 'back-off'],
    ['cautious', 7, 'back-off'],
    ['cautious', 8, 'stop'],
    ['tendon-monitoring', 3, 'go-on'],
    ['tendon-monitoring', 5, 'hold'],
    ['tendon-monitoring', 6, 'back-off'],
    ['tendon-monitoring', 8, 'stop'],
    ['front-of-knee', 1, 'go-on'],
    ['front-of-knee', 5, 'hold'],
    ['front-of-knee', 6, 'back-off'],
  ])('by the rule %s of %i in a joint or a tendon: %s', (rule, pain, verdict) => {
    for (const site of ['joint', 'tendon'] as const)
      for (const moment of ['before', 'during', 'after', 'nextMorning'] as const)
        expect(one({ site, [moment]: pain }, rule)).toEqual([[verdict, rule, moment, pain, undefined]]);
  });

  it.each<[number, string]>([
    [4, 'go-on'],
    [5, 'hold'],
    [6, 'hold'],
    [7, 'back-off'],
    [8, 'stop'],
  ])('of %i in the muscle: %s, and nothing in the sets', (pain, verdict) => {
    expect(one({ site: 'muscle', after: pain })).toEqual([[verdict, 'muscle', 'after', pain, undefined]]);
    expect(one({ site: 'muscle', during: pain })).toEqual([['go-on', 'muscle', undefined, undefined, undefined]]);
  });

  it.each<[number, string]>([
    [7, 'go-on'],
    [8, 'back-off'],
    [10, 'back-off'],
  ])('of %i under the cuff in the sets: %s', (during, verdict) => {
    expect(one({ site: 'under-cuff', during })).toEqual(
      expect.arrayContaining([
        [verdict, 'under-cuff-in-sets', 'during', during, undefined],
        ['go-on', 'under-cuff', undefined, undefined, undefined],
      ]),
    );
  });

  it.each<[string, Omit<PainReport, 'site'>, (string | number | undefined)[]]>([
    ['that is not known', {}, ['go-on', undefined, undefined, undefined]],
    ['by the worst moment', { before: 2, during: 5, after: 2 }, ['back-off', 'during', 5, undefined]],
    ['by the first of moments that are alike', { before: 2, during: 3 }, ['hold', 'before', 2, undefined]],
    ['that settled', { before: 1, after: 1, nextMorning: 1 }, ['go-on', 'before', 1, undefined]],
    ['that rose a little', { before: 0, after: 1 }, ['hold', 'after', 1, 0]],
    ['that rose above the line', { before: 1, after: 2 }, ['back-off', 'after', 2, 1]],
    ['that rose by the next morning', { before: 0, nextMorning: 1 }, ['back-off', 'nextMorning', 1, 0]],
    ['that rose with no pain before known', { after: 1, nextMorning: 1 }, ['go-on', 'after', 1, undefined]],
    ['that went down', { before: 3, after: 2, nextMorning: 0 }, ['hold', 'before', 3, undefined]],
  ])('in a joint %s', (_, report, [verdict, ...rest]) => {
    expect(one({ site: 'joint', ...report })).toEqual([[verdict, 'cautious', ...rest]]);
  });

  it('before the session is told where it is what later pain is compared with', () => {
    expect(assessPain([{ site: 'joint', before: 2 }], 'cautious')[0]).not.toHaveProperty('before');
  });

  it('in the muscle need not settle', () => {
    expect(one({ site: 'muscle', before: 0, after: 4, nextMorning: 4 })).toEqual([
      ['go-on', 'muscle', 'before', 0, undefined],
    ]);
  });

  it('of several reports comes with the most severe first', () => {
    const reports = [
      { site: 'muscle', after: 1 },
      { site: 'joint', during: 2 },
      { site: 'tendon', during: 9 },
    ] as const;
    expect(assessPain(reports, 'cautious').map(({ verdict }) => verdict)).toEqual(['stop', 'hold', 'go-on']);
  });
});

describe('the sentence of pain', () => {
  const sentenceOf = (report: PainReport) => painSentence(assessPain([report], 'cautious')[0]!);
  const during = (pain: number) => ({ site: 'joint', during: pain }) as const;
  const of = (pain: number) => ({ pain, site: 'joint', moment: 'during' });

  it.each<[PainReport, unknown]>([
    [during(1), undefined],
    [during(2), ['pain-hold', { ...of(2), line: 1, rule: 'cautious' }]],
    [during(4), ['pain-back-off', { ...of(4), line: 3, rule: 'cautious' }]],
    [during(8), ['pain-severe', { ...of(8), line: 8 }]],
    [
      { site: 'joint', before: 0, after: 1 },
      ['pain-hold-rose', { pain: 1, site: 'joint', moment: 'after', before: 0, rule: 'cautious' }],
    ],
    [
      { site: 'joint', before: 0, nextMorning: 1 },
      ['pain-back-off-rose', { pain: 1, site: 'joint', moment: 'nextMorning', before: 0, rule: 'cautious' }],
    ],
    [{ ...during(8), limb: 'leg', side: 'left' }, ['pain-severe', { ...of(8), limb: 'leg', side: 'left', line: 8 }]],
    [{ ...during(8), limb: 'leg' }, ['pain-severe', { ...of(8), limb: 'leg', line: 8 }]],
  ])('%j', (report, expected) => {
    expect(sentenceOf(report)).toStrictEqual(expected);
  });
});

describe('a report', () => {
  it.each<[Partial<PainReport>, boolean]>([
    [{}, true],
    [{ limb: 'leg' }, true],
    [{ limb: 'arm' }, false],
    [{ side: 'left' }, true],
    [{ side: 'right' }, false],
    [{ limb: 'leg', side: 'right' }, false],
    [{ limb: 'arm', side: 'left' }, false],
  ])('%j is about the left leg: %s', (report, isOf) => {
    expect(painIsOf({ site: 'joint', ...report }, { limb: 'leg', side: 'left' })).toBe(isOf);
  });
});
