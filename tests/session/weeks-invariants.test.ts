import { describe, expect, it } from 'vitest';
import { weekTotals } from '../../src/index.js';
import { expectHoldsTogether, refusalPage, type Said, message, withWorking } from '../support/invariants.js';
import { issuesOf } from '../support/refused.js';
import { working } from '../../src/text/index.js';

// Reference C.5 and C.6.
describe('a week', () => {
  const days = [300, 0, 450, 0, 500, 600, 0].map((loadAu) => ({ loadAu }));
  const earlierWeeksAu = [1000, 900, 1100];
  const NOT_TOLD: Said = ['standard-deviation-not-reported'];

  it.each([
    ['sample', 1.00664, 1862.2834],
    ['population', 1.087295, 2011.496],
  ] as const)('by the standard deviation of a %s', (deviation, monotony, strain) => {
    const week = weekTotals({ days, deviation });
    expectHoldsTogether(week);
    // The vectors are printed to these digits.
    expect(Math.abs(week.monotony!.value - monotony)).toBeLessThan(5e-7);
    expect(Math.abs(week.strain!.value - strain)).toBeLessThan(5e-5);
    const sources = ['overtraining-1998', 'athlete-dataset-2024'];
    expect(withWorking(week.monotony)).toMatchObject({
      kind: 'monotony',
      unit: '1',
      equation: `monotony-${deviation}`,
      evidence: 'published',
      sources,
    });
    expect(withWorking(week.strain)).toMatchObject({
      kind: 'strain',
      unit: '{AU}',
      equation: `strain-${deviation}`,
      evidence: 'published',
      sources,
    });
    for (const answer of [week.monotony!, week.strain!]) {
      expect(message(answer.assumptions)).toEqual([[`standard-deviation-${deviation}`], NOT_TOLD]);
      expect(answer.inputs['deviation']).toBe(deviation);
    }
    expect(week.load).toMatchObject({
      kind: 'week-load',
      value: 1850,
      unit: '{AU}',
      equation: 'week-load-of-days',
      evidence: 'definition',
    });
    expect(working(week.load)!.sources).toEqual(['athlete-dataset-2024', 'session-rpe-2001']);
    expect(week.load.inputs).toEqual({ day1: 300, day2: 0, day3: 450, day4: 0, day5: 500, day6: 600, day7: 0 });
    expect(withWorking(week.sessions)).toMatchObject({
      kind: 'sessions',
      value: 4,
      unit: '{sessions}',
      equation: 'sessions-of-days',
      evidence: 'definition',
      sources: [],
    });
    expect(week.limbs).toEqual([]);
    expect(week.cautions).toEqual([]);
    expect(week).not.toHaveProperty('acuteChronicRatio');
    expect(weekTotals({ days }).monotony!.equation).toBe('monotony-sample');
  });

  it('of limbs and sessions', () => {
    const limbs = days.map((day, index) => ({
      ...day,
      ...(index === 0 && { sessions: 2, restrictedSessions: 1, restrictedS: { leftLeg: 300, rightArm: 60 } }),
      ...(index === 4 && { restrictedS: { leftLeg: 200, rightLeg: 0, leftArm: 5, rightArm: 7 } }),
    }));
    const week = weekTotals({ days: limbs });
    expectHoldsTogether(week);
    expect(week.sessions.value).toBe(5);
    expect(week.limbs.map(({ limb, side, restrictionTime }) => [limb, side, restrictionTime.value])).toEqual([
      ['arm', 'left', 5],
      ['arm', 'right', 67],
      ['leg', 'left', 500],
    ]);
    expect(withWorking(week.limbs[2]!.restrictionTime)).toMatchObject({
      kind: 'restriction-time',
      unit: 's',
      equation: 'restriction-time-of-days',
      evidence: 'definition',
      sources: [],
      inputs: { day1: 300, day2: 0, day5: 200 },
    });
  });

  // Guards of `practice`: 40 min a limb on a day, 100 min in a week, 2 sessions on a day, 4 in a week.
  it('says which day and limb a dose is too much on', () => {
    const dosed = days.map((day, index) => ({
      ...day,
      ...(index === 1 && { sessions: 3, restrictedSessions: 3, restrictedS: { rightLeg: 2460, leftArm: 60 } }),
      ...(index > 3 && { restrictedS: { rightLeg: 1860 } }),
    }));
    // 41 + 3 × 31 min; 3 + 3 sessions.
    const limb = { limb: 'leg', side: 'right' };
    const { cautions } = weekTotals({ days: dosed });
    expect(message(cautions)).toMatchObject([
      ['restriction-long-day', { values: { ...limb, value: 41 }, path: ['days', 1, 'restrictedS', 'rightLeg'] }],
      ['restriction-long-week', { values: { ...limb, value: 134 } }],
      ['sessions-many-day', { values: { value: 3, limit: 2 }, path: ['days', 1] }],
      ['sessions-many-week', { values: { value: 6 } }],
    ]);
    expect(cautions[1]).not.toHaveProperty('path');
  });

  it('of equal days, or of rest', () => {
    const equal = weekTotals({ days: days.map(() => ({ loadAu: 100 })) });
    expectHoldsTogether(equal);
    expect(message(equal.cautions)).toEqual([['monotony-undefined-equal', { severity: 'note' }]]);
    const rest = weekTotals({ days: days.map(() => ({ loadAu: 0 })) });
    expect(message(rest.cautions)).toEqual([['monotony-undefined-rest', { severity: 'note' }]]);
    for (const week of [equal, rest]) for (const name of ['monotony', 'strain']) expect(week).not.toHaveProperty(name);
    expect(rest.sessions.value).toBe(0);
  });

  const DESCRIPTIVE: Said = ['ratio-descriptive', { severity: 'note', source: 'ratio-pitfalls-2020' }];
  const COUPLED: Said = ['ratio-coupled', { severity: 'note', source: 'ratio-coupling-2019' }];
  it('against the weeks before', () => {
    // A = 2000, W = 1000 each: coupled 1.6, uncoupled 2.0.
    const heavy = days.map((_, index) => ({ loadAu: index === 0 ? 2000 : 0 }));
    const at = (ratio: 'coupled' | 'uncoupled', earlier: readonly number[] = [1000, 1000, 1000]) =>
      weekTotals({ days: heavy, ratio, earlierWeeksAu: earlier });
    const coupled = at('coupled');
    expectHoldsTogether(coupled);
    expect(withWorking(coupled.acuteChronicRatio)).toMatchObject({
      kind: 'acute-chronic-ratio',
      value: 1.6,
      unit: '1',
      equation: 'coupled',
      evidence: 'published',
      sources: ['ratio-coupling-2019', 'ratio-pitfalls-2020'],
      inputs: { earlierWeeks: '1000 + 1000 + 1000' },
    });
    expect(message(coupled.cautions)).toEqual([DESCRIPTIVE, COUPLED]);
    const uncoupled = at('uncoupled');
    expectHoldsTogether(uncoupled);
    expect(uncoupled.acuteChronicRatio).toMatchObject({ value: 2, equation: 'uncoupled' });
    expect(message(uncoupled.cautions)).toEqual([DESCRIPTIVE]);
    expect(at('coupled', [0, 0, 0]).acuteChronicRatio!.value).toBe(4);
    const none = at('uncoupled', [0, 0, 0]);
    expect(none).not.toHaveProperty('acuteChronicRatio');
    expect(message(none.cautions)).toEqual([DESCRIPTIVE, ['ratio-undefined', { severity: 'note' }]]);
  });

  it('is refused as the golden page says', async () => {
    const [first, ...others] = days;
    const withDay = (day: object) => ({ days: [day, ...others] });
    const ratio = 'coupled';
    const cases = {
      'no days': {},
      'six days': { days: others },
      'eight days': { days: [...days, first] },
      'a list of none': { days: [] },
      'days without loads': { days: days.map(() => ({})) },
      'a load below 0': withDay({ loadAu: -1 }),
      'another limb': withDay({ loadAu: 0, restrictedS: { leftFoot: 9 } }),
      // Two sessions and restriction: one or both?
      'two sessions, one cuff': withDay({ loadAu: 300, sessions: 2, restrictedS: { leftLeg: 300 } }),
      'a cuff in no session': withDay({ loadAu: 300, restrictedSessions: 0, restrictedS: { leftLeg: 300 } }),
      'another deviation': { days, deviation: 'n-1' },
      'a ratio to nothing': { days, ratio },
      'weeks before without a ratio': { days, earlierWeeksAu },
      'two weeks before': { days, ratio, earlierWeeksAu: [1, 2] },
      'a week that is no number': { days, ratio, earlierWeeksAu: [1, 2, NaN] },
    };
    const more = withDay({ loadAu: 300, sessions: 1, restrictedSessions: 2 });
    expect(issuesOf(weekTotals, more)).toEqual(['days.0.restrictedSessions wrong-relation']);
    const equal = { loadAu: 300, sessions: 2, restrictedSessions: 2, restrictedS: { leftLeg: 300 } };
    expect(issuesOf(weekTotals, withDay(equal))).toEqual([]);
    await expect(refusalPage(weekTotals, cases)).toMatchFileSnapshot('refused/weeks.txt');
  });
});
