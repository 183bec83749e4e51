import { describe, expect, it } from 'vitest';
import { compareSessions, weekTotals, type ComparisonRow } from '../../src/index.js';
import { explain, working } from '../../src/text/index.js';
import {
  CHAIN,
  codesOf,
  expectClose,
  expectHoldsTogether,
  refusal,
  type Said,
  said,
  withWorking,
} from '../support/hold-together.js';

// Reference C.5 and C.6.
describe('a week', () => {
  const days = [300, 0, 450, 0, 500, 600, 0].map((loadAu) => ({ loadAu }));
  const earlierWeeksAu = [1000, 900, 1100];
  const NOT_TOLD: Said = ['standard-deviation-not-told'];

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
      expect(said(answer.assumptions)).toEqual([[`standard-deviation-${deviation}`], NOT_TOLD]);
      expect(answer.inputs['deviation']).toBe(deviation);
    }
    expect(week.load).toMatchObject({
      kind: 'week-load',
      value: 1850,
      unit: '{AU}',
      equation: 'week-load-of-days',
      evidence: 'published',
    });
    expect(working(week.load)!.sources).toEqual(['athlete-dataset-2024', 'session-rpe-2001']);
    expect(week.load.inputs).toEqual({ day1: 300, day2: 0, day3: 450, day4: 0, day5: 500, day6: 600, day7: 0 });
    expect(withWorking(week.sessions)).toMatchObject({
      kind: 'sessions',
      value: 4,
      unit: '{sessions}',
      equation: 'sessions-of-days',
      evidence: 'practice',
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
      ...(index === 0 && { sessions: 2, restrictedS: { leftLeg: 300, rightArm: 60 } }),
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
      evidence: 'practice',
      sources: [],
      inputs: { day1: 300, day2: 0, day5: 200 },
    });
  });

  it('of equal days, or of rest', () => {
    const equal = weekTotals({ days: days.map(() => ({ loadAu: 100 })) });
    expectHoldsTogether(equal);
    expect(said(equal.cautions)).toEqual([['monotony-undefined-equal', { severity: 'note' }]]);
    const rest = weekTotals({ days: days.map(() => ({ loadAu: 0 })) });
    expect(said(rest.cautions)).toEqual([['monotony-undefined-rest', { severity: 'note' }]]);
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
    expect(said(coupled.cautions)).toEqual([DESCRIPTIVE, COUPLED]);
    const uncoupled = at('uncoupled');
    expectHoldsTogether(uncoupled);
    expect(uncoupled.acuteChronicRatio).toMatchObject({ value: 2, equation: 'uncoupled' });
    expect(said(uncoupled.cautions)).toEqual([DESCRIPTIVE]);
    expect(at('coupled', [0, 0, 0]).acuteChronicRatio!.value).toBe(4);
    const none = at('uncoupled', [0, 0, 0]);
    expect(none).not.toHaveProperty('acuteChronicRatio');
    expect(said(none.cautions)).toEqual([DESCRIPTIVE, ['ratio-undefined', { severity: 'note' }]]);
  });

  it.each([
    [{}, [['days', 'missing', 'seven days in a row', 'undefined']]],
    [{ days: days.slice(1) }, [['days', 'wrong-relation', 'seven days in a row', '6']]],
    [{ days, earlierWeeksAu }, [['earlierWeeksAu', 'wrong-relation', 'left out unless ratio is given', 'a value']]],
    [
      { days, ratio: 'coupled', earlierWeeksAu: [1, 2] },
      [['earlierWeeksAu', 'wrong-relation', 'the loads of the three weeks before', '2']],
    ],
  ])('refuses %o', (input, issues) => {
    expect(refusal(weekTotals, input)).toEqual(issues);
  });
  it('asks for the weeks before where a ratio is asked for', () => {
    expect(refusal(weekTotals, { days, ratio: 'coupled' }).map(([path, code]) => [path, code])).toEqual([
      ['earlierWeeksAu', 'missing'],
    ]);
    expect(refusal(weekTotals, { days: [{}, ...days.slice(1)] }).map(([path, code]) => [path, code])).toEqual([
      ['days.0.loadAu', 'missing'],
    ]);
  });
});

describe('two sessions', () => {
  const heavy = { scheme: '3x10', tempo: '2-0-2-0', restS: 90, restriction: 'none', load: 75, percent: 75 } as const;
  const light = { ...CHAIN, load: 30, percent: 30, pressureMmHg: 80 } as const;
  const compare = (more: object = {}) => compareSessions({ from: heavy, to: light, ...more } as never);
  const row = (rows: readonly ComparisonRow[], name: string) => rows.find(({ quantity }) => quantity === name);

  it('row by row', () => {
    const { rows, cautions, document } = compare();
    expect(document).toBe('session-comparison');
    for (const { from, to } of rows) for (const answer of [from, to]) if (answer) expectHoldsTogether(answer);
    // C.1: 3 × 10 at 75 kg and 75 repetitions at 30 kg are 2250 kg both.
    expect(
      rows.map(({ stress, quantity, unit, change, percent }) => [stress, quantity, unit, change, percent]),
    ).toEqual([
      ['mechanical', 'peakLoad', 'kg', -45, -60],
      ['mechanical', 'peakPercent', '%', -45, -60],
      ['mechanical', 'volumeLoad', 'kg', 0, 0],
      ['mechanical', 'relativeVolumeLoad', '1', 0, 0],
      ['mechanical', 'repetitions', '{reps}', 45, 150],
      ['mechanical', 'timeUnderTension', 's', 180, 150],
      ['restriction', 'restrictionTime', 's', 390, undefined],
      ['restriction', 'longestRestriction', 's', 390, undefined],
      ['restriction', 'pressureTime', 'mm[Hg].min', 520, undefined],
      ['session', 'sessionTime', 's', 90, 30],
    ]);
    expect(withWorking(row(rows, 'pressureTime')!.from)).toMatchObject({
      value: 0,
      formula: '0',
      symbols: {},
      inputs: {},
    });
    expect(said(cautions)).toEqual([
      ['no-equivalence', { severity: 'caution' }],
      ['restriction-gives-less-strength', { severity: 'note', source: 'heavy-or-restricted-2018' }],
    ]);
  });

  it('says what an aim and several exercises change', () => {
    const codes = (more: object) => codesOf(compare(more).cautions);
    expect(said(compare({ aim: 'performance' }).cautions).at(-1)).toEqual([
      'pressure-adds-little-heavy',
      { severity: 'note', source: 'load-and-pressure-2015' },
    ]);
    expect(codes({ from: light })).toEqual(['no-equivalence']);
    const several = { exercises: [light, heavy], reperfusionS: 200 };
    expect(said(compare({ from: several }).cautions).at(-1)).toEqual(['different-maximum', { severity: 'note' }]);
    expect(codes({ from: light, to: several })).toContain('different-maximum');
    const first = (aim: string) =>
      compare({ aim })
        .rows.slice(0, 3)
        .map(({ quantity }) => quantity);
    expect(first('rehabilitation')).toEqual(['peakLoad', 'volumeLoad', 'restrictionTime']);
    expect(first('transition')).toEqual(['peakPercent', 'relativeVolumeLoad', 'restrictionTime']);
    expect(first('performance')).toEqual(['peakPercent', 'peakLoad', 'volumeLoad']);
    expect(compare({ aim: 'transition' }).aim).toBe('transition');
    expect(compare()).not.toHaveProperty('aim');
  });

  it('leaves open what one does not tell, and carries pounds', () => {
    const { load: _load, percent: _percent, ...bare } = light;
    const { rows } = compare({ to: bare });
    expect(row(rows, 'volumeLoad')).toMatchObject({ unit: 'kg', from: { value: 2250 } });
    expect(row(rows, 'volumeLoad')).not.toHaveProperty('change');
    expect(row(rows, 'volumeLoad')).not.toHaveProperty('to');
    const back = compare({ from: bare, to: heavy });
    expect(row(back.rows, 'volumeLoad')).not.toHaveProperty('from');
    const pounds = compare({ to: { ...light, unit: 'lb' } });
    expectClose(row(pounds.rows, 'peakLoad')!.change!, 30 * 0.45359237 - 75);
    const partial = compare({ from: light, to: { ...light, restriction: 'partial', restPressureMmHg: 30 } });
    expect(row(partial.rows, 'partialRestrictionTime')).toMatchObject({ change: 90, from: { value: 0 } });
    const unknown = compare({ from: { ...light, pressureMmHg: undefined }, to: light });
    expect(row(unknown.rows, 'pressureTime')).not.toHaveProperty('from');
  });

  it('as a table', () => {
    const lines = explain(compare({ aim: 'rehabilitation' }))
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/));
    expect(lines[0]).toEqual(['TWO SESSIONS COMPARED, FOR REHABILITATION']);
    expect(lines[1]).toEqual(['='.repeat('TWO SESSIONS COMPARED, FOR REHABILITATION'.length)]);
    expect(lines[3]).toEqual(['measure', 'from', 'to', 'change', 'kind']);
    const cells = lines.map((line) => line.slice(1));
    expect(cells).toContainEqual(['75 kg', '30 kg', '−45 kg (−60 %)', 'mechanical']);
    expect(cells).toContainEqual(['75 %', '30 %', '−45 points (−60 %)', 'mechanical']);
    expect(cells).toContainEqual(['2250 kg', '2250 kg', 'the same', 'mechanical']);
    expect(cells).toContainEqual(['0:00 min', '6:30 min', '+6:30 min', 'restriction']);
    expect(cells).toContainEqual(['5:00 min', '6:30 min', '+1:30 min (+30 %)', 'session']);
    const { load: _load, percent: _percent, ...bare } = light;
    const open = explain(compare({ to: bare }))
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/).slice(1));
    expect(open).toContainEqual(['75 kg', 'not given', 'not known', 'mechanical']);
    const back = explain(compare({ from: light, to: heavy }))
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/).slice(1));
    expect(back).toContainEqual(['6:30 min', '5:00 min', '−1:30 min (−23.08 %)', 'session']);
    expect(explain(compare())).toMatch(/^TWO SESSIONS COMPARED\n=+\n[^]*\n- caution: These are sums/);
  });
});
