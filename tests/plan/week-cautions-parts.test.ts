import { describe, expect, it } from 'vitest';
import { weekCautions } from '../../src/plan/week-cautions.js';
import type { WeekExercise, WeekLimb, WeekRow, WeekSums } from '../../src/plan/week-rows.js';
import { total } from '../../src/session/working.js';

const load = (value: number, unit: 'kg' | '[lb_av]' = 'kg') => total('peak-load', value, unit, {} as never);
const share = (value: number) => total('peak-percent-of-maximum', value, '%', {} as never);
const lop = (value: number) => total('percent-of-occlusion', value, '%', {} as never);
const minutes = (value: number) => total('restriction-time', 60 * value, 's', {} as never);
const volume = (value: number) => total('volume-load', value, 'kg', {} as never);
const sessions = (value: number) => total('sessions', value, '{sessions}', {} as never);

const limb = (more: Partial<WeekLimb> = {}): WeekLimb => ({
  limb: 'leg',
  side: 'left',
  restrictionTime: minutes(0),
  exercises: [],
  ...more,
});
const sums = (limbs: readonly WeekLimb[], more: Partial<WeekSums> = {}): WeekSums => ({
  sessions: sessions(1),
  restrictedSessions: sessions(1),
  limbs,
  ...more,
});
/** One exercise on the left leg. */
const squat = (more: Partial<WeekExercise>, of: Partial<WeekLimb> = {}): WeekSums =>
  sums([limb({ exercises: [{ exercise: 'squat', restrictionTime: minutes(0), ...more }], ...of })]);
const found = (...weeks: Omit<WeekRow, 'week'>[]) =>
  weekCautions(weeks.map((week, index) => ({ week: index + 5, ...week }))).map(({ severity, code, values }) => {
    const { exercise: _, side: __, limb: ___, ...rest } = values!;
    return [`${severity} ${code}`, rest];
  });
const jumps = (before: Partial<WeekExercise>, after: Partial<WeekExercise>) =>
  found({ done: squat(before) }, { done: squat(after) });

// progressionLimits: 5 points of 1RM, 10 % of the load (progression-models-2009), 10 points of LOP.
describe('an exercise from one week to the next', () => {
  const who = { from: 5, to: 6 };
  it.each<[string, Partial<WeekExercise>, Partial<WeekExercise>, unknown[]]>([
    [
      '5 points of 1RM',
      { peakPercentOneRepMax: share(20), peakLoad: load(20) },
      { peakPercentOneRepMax: share(25), peakLoad: load(25) },
      [],
    ],
    [
      '6 points of 1RM',
      { peakPercentOneRepMax: share(20), peakLoad: load(20) },
      { peakPercentOneRepMax: share(26), peakLoad: load(26) },
      [['caution load-jump', { ...who, points: 6, largest: 5 }]],
    ],
    [
      'more load in few points',
      { peakPercentOneRepMax: share(5), peakLoad: load(5) },
      { peakPercentOneRepMax: share(10), peakLoad: load(10) },
      [],
    ],
    ['10 % of a load', { peakLoad: load(20) }, { peakLoad: load(22) }, []],
    ['10 % of a load in tenths', { peakLoad: load(22) }, { peakLoad: load(24.2) }, []],
    [
      '12.5 % of a load',
      { peakLoad: load(20) },
      { peakLoad: load(22.5) },
      [['caution load-jump-percent', { ...who, percent: 12.5, largest: 10 }]],
    ],
    [
      'a share that was not known before',
      { peakLoad: load(20) },
      { peakLoad: load(40), peakPercentOneRepMax: share(20) },
      [['caution load-jump-percent', { ...who, percent: 100, largest: 10 }]],
    ],
    [
      'a share that is not known now',
      { peakLoad: load(20), peakPercentOneRepMax: share(20) },
      { peakLoad: load(40) },
      [['caution load-jump-percent', { ...who, percent: 100, largest: 10 }]],
    ],
    ['less load', { peakLoad: load(40) }, { peakLoad: load(20) }, []],
    ['the same load in pounds', { peakLoad: load(45.359237) }, { peakLoad: load(100, '[lb_av]') }, []],
    ['a load that was not known', {}, { peakLoad: load(40) }, []],
    ['a load that is not known', { peakLoad: load(40) }, {}, []],
    ['10 points of LOP', { percentLop: lop(50) }, { percentLop: lop(60) }, []],
    [
      '11 points of LOP',
      { percentLop: lop(50) },
      { percentLop: lop(61) },
      [['caution pressure-jump', { ...who, points: 11, largest: 10 }]],
    ],
    ['a cuff as before without', {}, { percentLop: lop(50) }, []],
    ['no cuff any more', { percentLop: lop(50) }, {}, []],
    [
      'both by little',
      { peakLoad: load(20), percentLop: lop(50) },
      { peakLoad: load(21), percentLop: lop(51) },
      [['caution both-raised', who]],
    ],
    [
      'more load, and a pressure of another step of the gauge',
      { peakLoad: load(20), percentLop: lop(50) },
      { peakLoad: load(21), percentLop: lop(50.9) },
      [],
    ],
    [
      'more pressure alone',
      { peakLoad: load(20), percentLop: lop(50) },
      { peakLoad: load(20), percentLop: lop(55) },
      [],
    ],
    [
      'more pressure, less load',
      { peakLoad: load(20), percentLop: lop(50) },
      { peakLoad: load(19), percentLop: lop(55) },
      [],
    ],
  ])('with %s', (_, before, after, expected) => {
    expect(jumps(before, after)).toEqual(expected);
  });

  it('is compared with itself alone', () => {
    const one = (exercise: string, place: Partial<WeekLimb>, value: number) =>
      sums([limb({ exercises: [{ exercise, restrictionTime: minutes(0), peakLoad: load(value) }], ...place })]);
    const now = one('squat', {}, 40);
    for (const before of [one('press', {}, 20), one('squat', { side: 'right' }, 20), one('squat', { limb: 'arm' }, 20)])
      expect(found({ done: before }, { done: now })).toEqual([]);
    const [caution] = weekCautions([
      { week: 1, done: one('squat', { limb: 'arm', side: 'right' }, 20) },
      { week: 2, done: one('squat', { limb: 'arm', side: 'right' }, 40) },
    ]);
    expect(caution!.values).toEqual({
      exercise: 'squat',
      limb: 'arm',
      side: 'right',
      from: 1,
      to: 2,
      percent: 100,
      largest: 10,
    });
  });

  it('is compared with the last week that is no deload', () => {
    const of = (value: number) => squat({ peakLoad: load(value) });
    const week = (value: number, deload?: true) => ({ done: of(value), ...(deload && { deload }) });
    expect(found(week(20), week(30), week(32)).map(([, values]) => values)).toEqual([
      { from: 5, to: 6, percent: 50, largest: 10 },
    ]);
    expect(
      found(week(40), { ...week(20, true), done: squat({ peakLoad: load(20) }, { volumeLoad: volume(1) }) }, week(42)),
    ).toEqual([['note deload-not-lighter', { from: 5, to: 6 }]]);
    expect(found(week(20, true), week(40))).toEqual([]);
  });

  it('is compared as done with as done, as planned with as planned, else as it is', () => {
    const of = (value: number) => squat({ peakLoad: load(value) });
    const percentOf = (before: Omit<WeekRow, 'week'>, after: Omit<WeekRow, 'week'>) =>
      found(before, after).map(([, values]) => (values as { percent: number }).percent);
    expect(percentOf({ done: of(10), planned: of(20) }, { done: of(15), planned: of(40) })).toEqual([50]);
    expect(percentOf({ done: of(10), planned: of(20) }, { planned: of(40) })).toEqual([100]);
    expect(percentOf({ planned: of(20) }, { done: of(15), planned: of(40) })).toEqual([100]);
    expect(percentOf({ done: of(10) }, { planned: of(40) })).toEqual([300]);
    expect(percentOf({ planned: of(10) }, { done: of(40) })).toEqual([300]);
  });
});

describe('a deload', () => {
  const deloads = (
    before: readonly WeekLimb[],
    after: readonly WeekLimb[],
    more: Partial<WeekRow> = { deload: true },
  ) => found({ done: sums(before) }, { done: sums(after), ...more });
  const note = ['note deload-not-lighter', { from: 5, to: 6 }];

  it.each<[string, Partial<WeekLimb>, Partial<WeekLimb>, boolean]>([
    [
      'as much',
      { volumeLoad: volume(100), restrictionTime: minutes(5) },
      { volumeLoad: volume(100), restrictionTime: minutes(5) },
      false,
    ],
    ['less work', { volumeLoad: volume(100) }, { volumeLoad: volume(99) }, true],
    ['more work', { volumeLoad: volume(100) }, { volumeLoad: volume(101) }, false],
    ['less time under the cuff', { restrictionTime: minutes(5) }, { restrictionTime: minutes(4) }, true],
    ['work that is not known', { volumeLoad: volume(100) }, {}, false],
    ['work that was not known', {}, { volumeLoad: volume(100) }, false],
  ])('with %s', (_, before, after, isLighter) => {
    expect(deloads([limb(before)], [limb(after)])).toEqual(isLighter ? [] : [note]);
  });

  it('is looked at limb by limb', () => {
    const heavy = (place: Partial<WeekLimb>) => limb({ volumeLoad: volume(100), ...place });
    expect(deloads([heavy({ side: 'right' })], [heavy({})])).toEqual([]);
    expect(deloads([heavy({ side: 'right', volumeLoad: volume(200) }), heavy({})], [heavy({})])).toEqual([note]);
    const [caution] = weekCautions([
      { week: 1, done: sums([heavy({})]) },
      { week: 2, done: sums([heavy({})]), deload: true },
    ]);
    expect(caution!.values).toEqual({ limb: 'leg', side: 'left', from: 1, to: 2 });
  });

  it('is one only where it is called so, and has a week before it', () => {
    const heavy = limb({ volumeLoad: volume(100) });
    expect(deloads([heavy], [heavy], {})).toEqual([]);
    expect(found({ done: sums([heavy]), deload: true })).toEqual([]);
  });
});

// guards: more than 100 min a week on one limb, more than 3, 4 and 14 sessions with restriction a week.
describe('the restriction of a week', () => {
  const dose = (week: Omit<WeekRow, 'week'>) =>
    weekCautions([
      { week: 1, done: sums([]) },
      { week: 2, ...week },
    ]).map(({ severity, code, values, path }) => [severity, code, values, path]);
  const path = ['weeks', 1];

  it('is counted limb by limb, as done before as planned', () => {
    const of = (value: number) => sums([limb({ restrictionTime: minutes(value) })]);
    expect(dose({ done: of(100) })).toEqual([]);
    const long = ['caution', 'restriction-long-week', { value: 101, limit: 100, limb: 'leg', side: 'left' }, path];
    expect(dose({ done: of(101) })).toEqual([long]);
    expect(dose({ planned: of(101) })).toEqual([long]);
    expect(dose({ planned: of(101), done: of(1) })).toEqual([]);
    // The time at a lower pressure counts as in a session.
    const partial = { partialRestrictionTime: total('partial-restriction-time', 60, 's', {} as never) };
    expect(dose({ done: sums([limb({ restrictionTime: minutes(100), ...partial })]) })).toEqual([long]);
  });

  it('is counted in sessions; those at rest count for the stop alone', () => {
    const of = (restricted: number, atRest?: number) =>
      sums([], { restrictedSessions: sessions(restricted), ...(atRest && { restrictedAtRest: sessions(atRest) }) });
    expect(dose({ done: of(3) })).toEqual([]);
    expect(dose({ done: of(4) })).toEqual([['note', 'sessions-above-usual', { value: 4, limit: 3 }, path]]);
    expect(dose({ done: of(4, 1) })).toEqual([]);
    expect(dose({ planned: of(5, 1) })).toEqual([['note', 'sessions-above-usual', { value: 4, limit: 3 }, path]]);
  });
});
