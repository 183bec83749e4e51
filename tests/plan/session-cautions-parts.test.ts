import { describe, expect, it } from 'vitest';
import { sessionCautions } from '../../src/plan/session-cautions.js';
import type { ExpandedLimbTotals, ExpandedPlanItem, PlanRequest } from '../../src/plan/types.js';
import type { Caution, ExerciseMode, Limb, Side } from '../../src/index.js';
import type { Restriction } from '../../src/session/prescription.js';
import { measuredAt } from '../support/inputs.js';

const note = (code: string): Caution => ({ severity: 'note', code: code as Caution['code'], text: code });
const exercise = (restriction: Restriction) => ({ name: 'squat', limb: 'leg', restriction });
const limb = (more: Partial<PlanRequest['limbs'][number]> = {}) => ({ limb: 'leg', side: 'left', ...more }) as const;
const request = (more: object = {}): PlanRequest =>
  ({ systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated', limbs: [limb()], exercises: [], ...more }) as never;
const item = (more: object = {}): ExpandedPlanItem =>
  ({ restriction: 'continuous', sets: [{}], totals: { cautions: [] }, ...more }) as never;
const totalsOf = (minutes: number, more: object = {}): ExpandedLimbTotals =>
  ({
    limb: 'leg',
    side: 'left',
    exercises: 1,
    restrictionTime: { value: 60 * minutes },
    cautions: [],
    ...more,
  }) as never;

const cautions = (
  asked: object,
  items: ExpandedPlanItem[] = [],
  limbs: ExpandedLimbTotals[] = [totalsOf(1)],
  session: Caution[] = [],
) => sessionCautions(request(asked), { items, limbs, session: { totals: { cautions: session } } } as never);
const found = (...given: Parameters<typeof cautions>) =>
  cautions(...given).map(({ severity, code, values, path }) => [severity, code, values, path]);
const codes = (...given: Parameters<typeof cautions>) => cautions(...given).map(({ code }) => code);

describe('the cautions of a session', () => {
  it('are none where nothing is to be said', () => {
    expect(found({})).toEqual([]);
  });

  it('come in the order of a page', () => {
    const asked = {
      systolicMmHg: 145,
      ageYears: 70,
      date: '2026-03-29',
      limbs: [limb({ measured: { ...measuredAt(200), date: '2026-03-01' } }), { limb: 'arm', side: 'right' }],
      sessionsPerWeek: 4,
      screening: { request: { answers: { 'first-session': 'yes' } } },
      exercises: [exercise('continuous'), exercise('continuous')],
    };
    const limbs = [totalsOf(1, { cautions: [note('of-limb')] })];
    expect(codes(asked, [item({ totals: { cautions: [note('of-item')] } })], limbs, [note('of-session')])).toEqual([
      'blood-pressure-high',
      'first-session-volume',
      'of-item',
      'of-limb',
      'of-session',
      'sessions-above-usual',
      'measured-long-ago',
      'age-60-and-over',
      'limb-not-trained',
    ]);
  });

  it('name a limb that no exercise trains', () => {
    const limbs = [limb(), { limb: 'leg', side: 'right' }, { limb: 'arm', side: 'left' }] as const;
    expect(found({ limbs })).toEqual([
      ['note', 'limb-not-trained', { limb: 'leg', side: 'right' }, ['limbs', 1]],
      ['note', 'limb-not-trained', { limb: 'arm', side: 'left' }, ['limbs', 2]],
    ]);
  });
});

// Measure again every 28 days (practice).
describe('a measured pressure', () => {
  const measured = (date?: string) => ({ limbs: [limb({ measured: { ...measuredAt(200), date } })] });
  it.each<[string, object, boolean]>([
    ['27 days ago', { date: '2026-03-28', ...measured('2026-03-01') }, false],
    ['28 days ago', { date: '2026-03-29', ...measured('2026-03-01') }, true],
    ['on a day that is not known', { date: '2026-03-29', ...measured() }, false],
    ['before a session of no day', measured('2026-03-01'), false],
  ])('%s', (_, asked, isLong) => {
    const values = { value: 28, limit: 28, limb: 'leg', side: 'left' };
    const path = ['limbs', 0, 'measured', 'date'];
    expect(found(asked)).toEqual(isLong ? [['caution', 'measured-long-ago', values, path]] : []);
  });
});

// guards: more than 3 sessions and more than 100 min on a limb a week.
describe('a week of a session', () => {
  const path = ['sessionsPerWeek'];
  const four = ['note', 'sessions-above-usual', { value: 4, limit: 3 }, path];
  const week = (sessionsPerWeek: number | undefined, limbs: ExpandedLimbTotals[], mode?: ExerciseMode) =>
    found({ sessionsPerWeek }, [item({ mode })], limbs);
  const place: { limb: Limb; side: Side } = { limb: 'leg', side: 'left' };

  it('is counted where it is known how often', () => {
    expect(week(undefined, [totalsOf(200)])).toEqual([]);
    expect(week(3, [totalsOf(1)])).toEqual([]);
    expect(week(4, [totalsOf(1)])).toEqual([four]);
  });
  it('adds up the minutes of each limb', () => {
    expect(week(4, [totalsOf(25)])).toEqual([four]);
    const long = (value: number, side: Side) => [
      'caution',
      'restriction-long-week',
      { value, limit: 100, ...place, side },
      path,
    ];
    expect(week(3, [totalsOf(40), totalsOf(50, { side: 'right' })])).toEqual([long(120, 'left'), long(150, 'right')]);
    // The time at a lower pressure counts as in a session.
    const partial = totalsOf(20, { partialRestrictionTime: { value: 60 * 15 } });
    expect(week(3, [partial])).toEqual([long(105, 'left')]);
  });
  it('is about limbs with a cuff', () => {
    const bare = totalsOf(0, { exercises: 0 });
    expect(week(4, [bare])).toEqual([]);
    expect(week(4, [totalsOf(1, { side: 'right' }), bare])).toEqual([four]);
  });
  it('at rest counts for the stop alone', () => {
    expect(week(5, [totalsOf(1)], 'passive')).toEqual([]);
    expect(week(15, [totalsOf(1)], 'passive')).toEqual([
      ['stop', 'sessions-week-stop', { value: 15, limit: 14 }, path],
    ]);
    expect(found({ sessionsPerWeek: 4 }, [item({ mode: 'passive' }), item({ mode: 'resistance' })])).toEqual([four]);
  });
});

// A case report of 2016: one exercise, few sets, not to failure in a first session.
describe('a first session', () => {
  const first = { screening: { request: { answers: { 'first-session': 'yes' } } } };
  const sets = (count: number) => Array.from({ length: count }, () => ({}));
  const bare = { restriction: 'none', sets: sets(9), lastSetToFailure: true };

  it.each<[string, Restriction[], object[], [number, number] | undefined]>([
    ['with one exercise of three sets', ['continuous'], [{ sets: sets(3) }], undefined],
    ['with four sets', ['continuous'], [{ sets: sets(3) }, { sets: sets(4) }], [1, 4]],
    ['with two exercises', ['continuous', 'partial'], [{ sets: sets(1) }], [2, 1]],
    ['with a set to failure', ['continuous'], [{ sets: sets(1), lastSetToFailure: true }], [1, 1]],
    ['without a cuff', ['none', 'none'], [bare], undefined],
    ['with one exercise under the cuff', ['none', 'continuous'], [bare, { sets: sets(2) }], undefined],
  ])('%s', (_, restrictions, items, said) => {
    const asked = { ...first, exercises: restrictions.map(exercise) };
    const values = said && { exercises: said[0], sets: said[1], usual: 4 };
    expect(found(asked, items.map(item))).toEqual(
      said ? [['caution', 'first-session-volume', values, ['exercises']]] : [],
    );
    if (said) expect(cautions(asked, items.map(item))[0]!.source).toBe('case-report-2016');
  });

  it('is one only where the screening says so', () => {
    const exercises = [exercise('continuous'), exercise('continuous')];
    for (const screening of [
      undefined,
      { request: { answers: {} } },
      { request: { answers: { 'first-session': 'no' } } },
    ])
      expect(codes({ screening, exercises }, [item()])).toEqual([]);
  });
});
