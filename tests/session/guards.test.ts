import { describe, expect, it } from 'vitest';
import {
  sessionTotals,
  circumferenceBandPressure,
  guards,
  measuredOcclusionPressure,
  systolicSharePressure,
  targetCuffPressure,
  weekTotals,
  type Caution,
  type Guard,
} from '../../src/index.js';
import { messages, sources } from '../../src/text/index.js';
import { compareWeeks, planSession, recordSession } from '../../src/plan/index.js';
import { press } from '../support/plans.js';

const bySeverity = ({ cautions }: { readonly cautions: readonly Caution[] }) =>
  cautions.map(({ severity, code }) => `${severity} ${code}`);
const measured = (valueMmHg: number) => measuredOcclusionPressure({ valueMmHg, method: 'doppler', limb: 'leg' });

describe('the table of absolute limits', () => {
  it.each(Object.entries(guards) as [string, Guard][])(
    '%s grows graver and has words, grade and source',
    (_, guard) => {
      const gravity = guard.steps.map(({ severity }) => ['note', 'caution', 'stop'].indexOf(severity));
      const figures = guard.steps.map(({ above, from }) => above ?? from!);
      expect(gravity).toEqual([...gravity].sort((a, b) => a - b));
      expect(new Set(gravity).size).toBe(gravity.length);
      expect(figures).toEqual([...figures].sort((a, b) => a - b));
      for (const { code, evidence, source } of guard.steps) {
        expect(Object.keys(messages)).toContain(code);
        if (source) expect(Object.keys(sources)).toContain(source);
        if (evidence === 'published') expect(source).toBeDefined();
      }
    },
  );
});

describe('a pressure', () => {
  // 300 mmHg: the highest in a training trial, Med Sci Sports Exerc 2007;39(10):1708–1713. 250 mmHg: `practice`.
  it.each([
    [250, []],
    [251, ['caution cuff-pressure-high']],
    [300, ['caution cuff-pressure-high']],
    [301, ['stop cuff-pressure-stop']],
  ])('of %d mmHg that is set', (setting, expected) => {
    const target = targetCuffPressure({ occlusion: measured(setting * 2), percentLop: 50 });
    expect(target.value).toBe(setting);
    expect(bySeverity(target).filter((text) => text.includes('cuff-pressure'))).toEqual(expected);
    const session = { scheme: '5min', restriction: 'continuous', mode: 'passive', limb: 'leg', side: 'left' } as const;
    expect(bySeverity(sessionTotals({ ...session, pressureMmHg: setting } as never))).toEqual(expected);
  });

  // J Spec Oper Med 2020;20(3): thighs 284 to 536 mmHg under narrow straps.
  it('that is measured', () => {
    expect(bySeverity(measured(300))).toEqual([]);
    expect(bySeverity(measured(301))).toEqual(['caution occlusion-pressure-high']);
    expect(bySeverity(measured(536))).toEqual(['caution occlusion-pressure-high']);
    expect(bySeverity(measured(600))).toEqual(['stop occlusion-pressure-stop']);
    expect(bySeverity(targetCuffPressure({ occlusion: measured(600), percentLop: 80 }))[0]).toBe(
      'stop cuff-pressure-stop',
    );
  });

  it('of an arbitrary rule', () => {
    // 1.3 × 250 is 325.
    expect(bySeverity(systolicSharePressure({ systolicMmHg: 250 }))[0]).toBe('stop cuff-pressure-stop');
    expect(bySeverity(circumferenceBandPressure({ circumferenceCm: 70 }))).not.toContain('stop cuff-pressure-stop');
  });
});

describe('a dose', () => {
  const still = { mode: 'passive', restriction: 'continuous', limb: 'leg', side: 'left' } as const;
  it('of ten hours is graver than one of ten minutes', () => {
    const hours = bySeverity(sessionTotals({ ...still, scheme: '5x7200s', restS: 0 }));
    expect(hours).toContain('stop restriction-limb-stop');
    expect(hours).toContain('stop restriction-unbroken-stop');
    expect(bySeverity(sessionTotals({ ...still, scheme: '1x600s' }))).toEqual(['caution restriction-long-passive']);
  });

  it.each([
    [20, 'restriction-long-limb', false],
    [20.1, 'restriction-long-limb', true],
    [40, 'restriction-limb-stop', false],
    [40.1, 'restriction-limb-stop', true],
    [30, 'restriction-unbroken-stop', false],
    [30.1, 'restriction-unbroken-stop', true],
  ])('of %d min on a limb: %s %s', (minutes, code, told) => {
    const totals = sessionTotals({ ...still, scheme: `1x${minutes * 60}s` as const });
    expect(totals.cautions.some((message) => message.code === code)).toBe(told);
    expect(totals.limbs[0]!.cautions.some((message) => message.code === code)).toBe(told);
  });

  const weekOf = (restrictedS: number, days = 7, more = {}) =>
    bySeverity(
      weekTotals({
        days: Array.from({ length: 7 }, (_, day) =>
          day < days ? { loadAu: 100 + day, restrictedS: { leftLeg: restrictedS }, ...more } : { loadAu: 0 },
        ),
      }),
    );

  it('of seven days of 24 hours is a stop', () => {
    expect(weekOf(86_400)).toEqual([
      'stop restriction-day-stop',
      'stop restriction-week-stop',
      'caution sessions-many-week',
    ]);
  });

  // Seven times 50 min is the longest week found in a trial: Med Sci Sports Exerc 2008;40(3):529–534.
  it.each([
    [20, 3, []],
    [20, 4, ['note sessions-above-usual']],
    [20, 5, ['caution sessions-many-week']],
    [20.1, 5, ['caution restriction-long-week', 'caution sessions-many-week']],
    [40.1, 1, ['caution restriction-long-day']],
    [50, 7, ['caution restriction-long-day', 'caution restriction-long-week', 'caution sessions-many-week']],
    [60, 6, ['caution restriction-long-day', 'stop restriction-week-stop', 'caution sessions-many-week']],
    [60.1, 1, ['stop restriction-day-stop']],
  ])('of %d min on %d days of a week', (minutes, days, expected) => {
    expect(weekOf(minutes * 60, days)).toEqual(expected);
  });

  // Once or twice a day at rest: guidance of 2019; more than 14 a week is a stop for these too.
  it('of many sessions at rest', () => {
    const rest = { sessions: 2, restrictedSessions: 2, restrictedAtRest: 2 };
    expect(weekOf(300, 7, rest)).toEqual([]);
    expect(weekOf(300, 7, { ...rest, restrictedAtRest: 1 })).toEqual(['caution sessions-many-week']);
    expect(weekOf(300, 4, { ...rest, restrictedAtRest: 1 })).toEqual(['note sessions-above-usual']);
    expect(weekOf(300, 5, { sessions: 3, restrictedSessions: 3, restrictedAtRest: 3 })).toEqual([
      'caution sessions-many-day',
      'stop sessions-week-stop',
    ]);
    expect(() => weekOf(300, 3, { restrictedAtRest: 2 })).toThrow('at most the sessions of the day with restriction');
  });

  it('of many sessions', () => {
    expect(weekOf(300, 7, { sessions: 2, restrictedSessions: 2 })).toEqual(['caution sessions-many-week']);
    expect(weekOf(300, 5, { sessions: 3, restrictedSessions: 3 })).toEqual([
      'caution sessions-many-day',
      'stop sessions-week-stop',
    ]);
    // A day with one session without a cuff as well counts one, where it says so.
    expect(weekOf(600, 3, { sessions: 2, restrictedSessions: 1 })).toEqual([]);
    expect(() => weekOf(600, 3, { sessions: 2 })).toThrow('restrictedSessions');
  });
});

describe('a plan', () => {
  const leg = {
    limb: 'leg',
    side: 'left',
    cuffWidthCm: 12,
    percentLop: 60,
    measured: { valueMmHg: 180, method: 'doppler', posture: 'seated', cuffWidthCm: 12 },
  } as const;
  const plan = (limb: object = {}, more: object = {}, exercise: object = {}) =>
    planSession({
      systolicMmHg: 120,
      diastolicMmHg: 70,
      posture: 'seated',
      limbs: [{ ...leg, ...limb }],
      exercises: [{ ...press, ...exercise }],
      ...more,
    } as never);

  it('stops at a pressure, a dose and a frequency', () => {
    expect(plan().stops).toEqual([]);
    const high = plan({ measured: { ...leg.measured, valueMmHg: 560 } });
    expect(high.stops.map(({ code }) => code)).toEqual(['occlusion-pressure-stop', 'cuff-pressure-stop']);
    expect(plan({ percentLop: 100 }).stops.map(({ code }) => code)).toEqual(['percent-closes-artery']);
    const still = { mode: 'passive', scheme: '1x3600s', tempo: undefined, load: undefined, restS: undefined };
    expect(plan({}, {}, still).stops.map(({ code }) => code)).toEqual([
      'restriction-limb-stop',
      'restriction-unbroken-stop',
    ]);
    expect(plan({}, { sessionsPerWeek: 15 }).stops.map(({ code }) => code)).toEqual(['sessions-week-stop']);
  });

  it('records what was held', () => {
    const held = (heldMmHg: number) =>
      recordSession({
        plan: plan(),
        date: '2026-03-02',
        items: [{ exercise: 'press', limb: 'leg', side: 'left', sets: [{ repetitions: 30 }], heldMmHg }],
      }).stops.map(({ code }) => code);
    expect(held(108)).toEqual([]);
    expect(held(1000)).toEqual(['held-above-tried']);
  });

  it('is added up over a week', () => {
    const week = (times: number) => bySeverity(compareWeeks({ weeks: [{ sessions: [{ plan: plan(), times }] }] }));
    expect(week(3)).toEqual([]);
    expect(week(15)).toEqual(['stop sessions-week-stop']);
    expect(week(16)).toEqual(['stop sessions-week-stop', 'caution restriction-long-week']);
  });
});
