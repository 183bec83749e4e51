import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { cite, explain, working } from '../../src/text/index.js';
import { compareWeeks, type Plan } from '../../src/plan/index.js';
import { planOf } from '../support/plans.js';

const heavy = (percent: number, more: object = {}): Plan =>
  planOf({ percent, scheme: '3x8', restS: 120, restriction: 'none', ...more });
const walk = planOf({
  name: 'walk',
  mode: 'aerobic',
  oneRepMax: undefined,
  percent: undefined,
  tempo: undefined,
  scheme: '5x2min',
  restS: 60,
});
/** The light session at a share of the 100 kg maximum, and of the 200 mmHg that were measured. */
const light = (percent: number, cuffPercent: number): Plan => planOf({ percent, cuffPercent });
const codesOf = (weeks: Parameters<typeof compareWeeks>[0]['weeks']) =>
  compareWeeks({ weeks }).cautions.map(({ values }) => values);

// By hand: 30-15-15-15 at 4 s a repetition is 75 repetitions, 300 s of sets and three rests of 30 s: 390 s with the
// cuff up. 75 × 20 kg is 1500 kg; 3 × 8 × 70 kg is 1680 kg.
describe('weeks side by side', () => {
  // Made anew in every test: what is made as the file is loaded is made before any mutant.
  const compared = () =>
    compareWeeks({
      weeks: [
        { sessions: [{ plan: light(20, 50), times: 3 }] },
        { sessions: [{ plan: light(20, 50), times: 2 }, { plan: heavy(70) }] },
        { sessions: [{ plan: heavy(80), times: 2 }] },
      ],
    });

  it('adds up each week, every session as often as it is done', () => {
    const comparison = compared();
    const rows = comparison.weeks.map((row) => [
      row.week,
      row.sessions.value,
      row.restrictedSessions.value,
      row.peakLoad?.value,
      row.peakPercent?.value,
      row.volumeLoad?.value,
      row.percentOfOcclusion,
      row.limbs.map(({ limb, side, restrictionTime, volumeLoad }) => [
        side,
        limb,
        restrictionTime.value,
        volumeLoad?.value,
      ]),
    ]);
    expect(rows).toEqual([
      [1, 3, 3, 20, 20, 4500, 50, [['left', 'leg', 1170, 4500]]],
      [2, 3, 2, 70, 70, 4680, 50, [['left', 'leg', 780, 4680]]],
      [3, 2, 0, 80, 80, 3840, undefined, [['left', 'leg', 0, 3840]]],
    ]);
    // 50 % for 6.5 min, three times.
    expect(comparison.weeks[0]!.limbs[0]!.relativePressureTime?.value).toBeCloseTo(975, 9);
  });

  it('shows what was added up', () => {
    const comparison = compared();
    expect(comparison.weeks[1]!.volumeLoad?.inputs).toEqual({ weekSessions: '1500 + 1500 + 1680' });
    expect(comparison.weeks[1]!.sessions.inputs).toEqual({ weekSessions: '2 + 1' });
  });

  it('passes over sessions without a load, and counts their restriction', () => {
    const [week] = compareWeeks({ weeks: [{ sessions: [{ plan: walk, times: 4 }, { plan: heavy(70) }] }] }).weeks;
    expect([week!.peakLoad?.value, week!.volumeLoad?.value]).toEqual([70, 1680]);
    // Five times 2 min and four rests of 1 min, four times.
    expect(week!.limbs[0]!.restrictionTime.value).toBe(4 * (5 * 120 + 4 * 60));
    const [walking] = compareWeeks({ weeks: [{ sessions: [{ plan: walk }] }] }).weeks;
    expect([walking!.peakLoad, walking!.peakPercent, walking!.volumeLoad]).toEqual([undefined, undefined, undefined]);
  });

  it('leaves the share of the maximum open where one is not known', () => {
    const stated = heavy(70, { oneRepMax: undefined, percent: undefined, load: 60 });
    const [week] = compareWeeks({ weeks: [{ sessions: [{ plan: stated }, { plan: light(20, 50) }] }] }).weeks;
    expect([week!.peakLoad?.value, week!.peakPercent]).toEqual([60, undefined]);
  });

  it('tells limbs apart, and takes the highest share of any exercise', () => {
    const place = { cuffWidthCm: 10, percent: 50, measured: { valueMmHg: 200, method: 'doppler' } } as const;
    const leg = { ...place, limb: 'leg' } as const;
    const arm = { ...place, limb: 'arm', side: 'right' } as const;
    const limbs = [{ ...leg, side: 'left' }, { ...leg, side: 'right' }, arm] as const;
    const one = { tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, scheme: '2x10', load: 10 } as const;
    const plan = planOf(
      { side: 'left' },
      {
        limbs,
        exercises: [
          { ...one, name: 'leg extension', limb: 'leg', side: 'left', restriction: 'continuous' },
          { ...one, name: 'leg curl', limb: 'leg', side: 'left', restriction: 'continuous', cuffPercent: 70 },
          { ...one, name: 'leg press', limb: 'leg', side: 'right', restriction: 'none', load: 50 },
          { ...one, name: 'curl', limb: 'arm', restriction: 'intermittent' },
        ],
      },
    );
    const compared = compareWeeks({ weeks: [{ sessions: [{ plan, times: 2 }] }] });
    const [week] = compared.weeks;
    // 2 × 40 s and a rest of 30 s for each leg exercise; the arm’s cuff is down in the rest. 200 kg an exercise at 10 kg.
    expect(
      week!.limbs.map(({ limb, side, restrictionTime, relativePressureTime, volumeLoad }) => [
        side,
        limb,
        restrictionTime.value,
        relativePressureTime?.value.toFixed(3),
        volumeLoad?.value,
      ]),
    ).toEqual([
      // Twice 110 s at 50 and at 70 %: 440 % · min.
      ['left', 'leg', 440, '440.000', 800],
      ['right', 'leg', 0, undefined, 2000],
      // Twice 80 s at 50 %.
      ['right', 'arm', 160, '133.333', 400],
    ]);
    expect([week!.week, week!.sessions.value, week!.restrictedSessions.value]).toEqual([1, 2, 2]);
    expect([week!.percentOfOcclusion, week!.peakLoad?.value]).toEqual([70, 50]);
    expect(week).not.toHaveProperty('peakPercent');
    const { document, standing } = compared;
    expect([document, ...standing.map(({ code }) => code)]).toEqual([
      'week-comparison',
      'weeks-clear-no-one',
      'weeks-no-one-road',
      'one-thing-at-a-time',
    ]);
    expect(cite(compared).map(({ id }) => id)).toContain('volume-methods-2009');
    const { equation, evidence, unit } = week!.sessions;
    const { formula, symbols } = working(week!.sessions)!;
    expect([equation, formula, symbols, evidence, unit]).toEqual([
      'sessions',
      'S',
      { S: 'weekSessions' },
      'practice',
      '{sessions}',
    ]);
  });

  it('says where load and pressure of an exercise with a cuff both go up, and only there', () => {
    const weekOf = (...plans: Plan[]) => ({ sessions: plans.map((plan) => ({ plan })) });
    const both = { exercise: 'leg extension', side: 'left', limb: 'leg' };
    expect(codesOf([weekOf(light(20, 50)), weekOf(light(30, 60))])).toEqual([{ ...both, from: 1, to: 2 }]);
    expect(codesOf([weekOf(light(20, 50)), weekOf(light(30, 50)), weekOf(light(30, 60))])).toEqual([]);
    expect(codesOf([weekOf(light(20, 60)), weekOf(light(30, 50))])).toEqual([]);
    // The heavy exercise has no cuff, so the light one is all that is looked at.
    expect(codesOf([weekOf(light(20, 50)), weekOf(light(20, 60), heavy(80))])).toEqual([]);
    // The highest of a week counts, wherever in it it stands.
    expect(codesOf([weekOf(light(20, 50), light(30, 60)), weekOf(light(25, 55))])).toEqual([]);
    expect(codesOf([weekOf(light(20, 50)), weekOf(walk), weekOf(light(30, 60))])).toEqual([]);
  });

  it('is a table to print, stored or not', () => {
    const comparison = compared();
    const page = explain(JSON.parse(JSON.stringify(comparison)) as typeof comparison);
    expect(page).toBe(explain(comparison));
    expect(page.split('\n').slice(6)).toEqual([
      'week  sessions  with cuff  heaviest  of 1RM  volume load  of LOP  left leg restricted',
      '1     3         3          20 kg     20 %    4500 kg      50 %    19:30 min',
      '2     3         2          70 kg     70 %    4680 kg      50 %    13:00 min',
      '3     2         0          80 kg     80 %    3840 kg      –       0:00 min',
    ]);
    expect(page).toMatch(/clears no one/);
  });

  it('names every field that is wrong', () => {
    const plan = light(20, 50);
    const issuesOf = (input: unknown) => {
      const result = attempt(compareWeeks, input as never);
      return result.ok ? [] : result.issues.map(({ code, path }) => [code, path.join('.')]);
    };
    expect(issuesOf({})).toEqual([['missing', 'weeks']]);
    expect(() => compareWeeks({} as never)).toThrow(
      'weeks is missing: expected a list of weeks, each with its sessions',
    );
    expect(() => compareWeeks({ weeks: [{}] } as never)).toThrow(
      'weeks[0].sessions is missing: expected a list of sessions, each a plan',
    );
    expect(() => compareWeeks({ weeks: [{ sessions: [{ plan: 5 }] }] } as never)).toThrow(/a plan of this library/);
    expect(() => compareWeeks({ weeks: [{ sessions: [{ plan, times: 22 }] }] })).toThrow(/from 1 to 21/);
    expect(issuesOf({ weeks: [] })).toEqual([['wrong-type', 'weeks']]);
    expect(issuesOf({ weeks: [{}] })).toEqual([['missing', 'weeks.0.sessions']]);
    expect(issuesOf({ weeks: [{ sessions: [{ times: 0 }, { plan, times: 1.5 }, { plan, often: 2 }] }] })).toEqual([
      ['missing', 'weeks.0.sessions.0.plan'],
      ['out-of-range', 'weeks.0.sessions.0.times'],
      ['not-whole', 'weeks.0.sessions.1.times'],
      ['unknown-field', 'weeks.0.sessions.2.often'],
    ]);
    expect(issuesOf({ weeks: [{ sessions: [{ plan: { ...plan, schemaVersion: 2 } }, { plan: {} }] }] })).toEqual([
      ['newer-document', 'weeks.0.sessions.0.plan.schemaVersion'],
      ['not-one-of', 'weeks.0.sessions.1.plan.document'],
    ]);
  });
});
