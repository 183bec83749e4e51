import { describe, expect, it } from 'vitest';
import {
  attempt,
  limbSymmetry,
  sessionTotals,
  testedOneRepMax,
  weekTotals,
  type Prescription,
  type SessionInput,
} from '../../src/index.js';
import { comparedSession, compareTotals, limbTotals } from '../../src/session/compare.js';
import { parseScheme, parseTempo } from '../../src/session/notation.js';
import { isName } from '../../src/session/prescription.js';
import { fullPrescription, fullSession } from '../../src/session/read-session.js';
import { leg } from '../support/leg.js';
import { issuesOf } from '../support/refused.js';

const bare = (more: object = {}) => leg({ restriction: 'none', ...more });
const CUFF = { pressureMmHg: 80, occlusionMmHg: 160 };
const session = (...exercises: Prescription[]) => ({ exercises, reperfusionS: 180 }) as SessionInput;
const compared = (from: SessionInput, to: SessionInput) =>
  compareTotals(comparedSession(fullSession(from)), comparedSession(fullSession(to)));
/** From, to, change and change in percent of each quantity. */
const rows = (from: SessionInput, to: SessionInput) =>
  Object.fromEntries(
    compared(from, to).rows.map(({ quantity, from: before, to: after, change, changePercent }) => [
      quantity,
      [before?.value, after?.value, change, changePercent],
    ]),
  );
const NOTHING = [undefined, undefined];

describe('sessions compared', () => {
  it('with and without a cuff: without one there is no restriction', () => {
    const [without, under] = [bare({ load: 60 }), leg({ load: 20, ...CUFF })];
    expect(rows(without, under)).toEqual({
      peakLoad: [60, 20, -40, (-40 * 100) / 60],
      repetitions: [20, 20, 0, 0],
      volumeLoad: [1200, 400, -800, (-800 * 100) / 1200],
      timeUnderTension: [80, 80, 0, 0],
      restrictionTime: [0, 110, 110, undefined],
      percentLop: [0, 50, 50, undefined],
      longestRestriction: [0, 110, 110, undefined],
      // 80 mmHg, 50 %, for 110 / 60 min; a change has 12 digits.
      pressureTime: [0, (80 * 110) / 60, expect.closeTo((80 * 110) / 60, 8), undefined],
      relativePressureTime: [0, (50 * 110) / 60, expect.closeTo((50 * 110) / 60, 8), undefined],
      sessionTime: [110, 110, 0, 0],
    });
    expect(rows(under, without)['restrictionTime']).toEqual([110, 0, -110, -100]);
    const { rows: all, notKnown } = compared(without, under);
    expect(notKnown).toEqual(['equal-effect']);
    expect(all[4]).toStrictEqual({
      line: 'cuff',
      quantity: 'restrictionTime',
      unit: 's',
      from: {
        kind: 'restriction-time',
        value: 0,
        unit: 's',
        equation: 'restriction-time',
        evidence: 'definition',
        inputs: {},
        assumptions: [],
        cautions: [],
      },
      to: all[4]!.to,
      change: 110,
    });
    expect(Object.keys(rows(without, without))).not.toContain('restrictionTime');
    expect(limbTotals([fullPrescription(without)])).not.toHaveProperty('restrictionTime');
  });

  it('with a cuff: lower pressures in the rests are none where there are none', () => {
    const partial = leg({ restriction: 'partial' });
    expect(rows(leg(), partial)).toMatchObject({
      restrictionTime: [110, 80, -30, (-30 * 100) / 110],
      partialRestrictionTime: [0, 30, 30, undefined],
      longestRestriction: [110, 110, 0, 0],
    });
    expect(rows(partial, leg())['partialRestrictionTime']).toEqual([30, 0, -30, -100]);
  });

  it('says which quantities only one of them has', () => {
    const { rows: all, notKnown } = compared(leg(), { ...leg({ load: 20, ...CUFF }), sessionRpe: 5 } as SessionInput);
    const open = ['peakLoad', 'volumeLoad', 'percentLop', 'pressureTime', 'relativePressureTime', 'sessionLoad'];
    expect(notKnown).toEqual(['equal-effect', ...open]);
    const [peak] = all;
    expect(peak).toStrictEqual({ line: 'joint', quantity: 'peakLoad', unit: 'kg', to: peak!.to });
    const { to, ...same } = peak!;
    expect(compared(leg({ load: 20 }), leg()).rows[0]).toStrictEqual({ ...same, from: to });
    // 5 × 110 / 60 min.
    expect(all.at(-1)!.to!.value).toBe(550 / 60);
  });

  it('takes of each quantity the limb that has most', () => {
    const many = session(
      leg({ side: 'both', ...CUFF }),
      leg({ side: 'right', scheme: '1x10', ...CUFF, pressureMmHg: 96 }),
    );
    expect(rows(many, many)).toMatchObject({
      repetitions: [30, 30, 0, 0],
      restrictionTime: [150, 150, 0, 0],
      percentLop: [60, 60, 0, 0],
      longestRestriction: [110, 110, 0, 0],
    });
    // An arm without a load and without a cuff: heaviest load and restriction are the leg’s, the volume is not known.
    const two = session(leg({ load: 20 }), bare({ limb: 'arm' }));
    const found = rows(two, leg({ load: 20 }));
    expect(found).toMatchObject({ peakLoad: [20, 20, 0, 0], restrictionTime: [110, 110, 0, 0] });
    expect(found['volumeLoad']).toEqual([undefined, 400, ...NOTHING]);
    // The arm’s cuff has a pressure that is not known, so nothing is known of the highest.
    const unknown = session(leg(CUFF), leg({ limb: 'arm' }));
    expect(rows(unknown, leg(CUFF))).toMatchObject({
      percentLop: [undefined, 50, ...NOTHING],
      pressureTime: [undefined, (80 * 110) / 60, ...NOTHING],
      relativePressureTime: [undefined, (50 * 110) / 60, ...NOTHING],
      restrictionTime: [110, 110, 0, 0],
    });
    const unnamed = leg({ limb: undefined, side: undefined });
    expect(rows(session(unnamed, unnamed), unnamed)['repetitions']).toEqual([40, 20, -20, -50]);
  });

  it('takes turns and sides apart', () => {
    const pressures = { pressureMmHg: { left: 80, right: 90 }, occlusionMmHg: { left: 160, right: 150 } };
    const turns = leg({ side: 'left-then-right', changeS: 5, ...pressures });
    expect(rows(turns, leg({ side: 'both', ...pressures }))).toMatchObject({
      repetitions: [20, 20, 0, 0],
      restrictionTime: [155, 110, -45, (-45 * 100) / 155],
      percentLop: [60, 60, 0, 0],
    });
  });

  it('has the share of the highest pressure', () => {
    const sets = [100, 80].map((pressureMmHg) => ({ repetitions: 10, pressureMmHg }));
    const share = (more: object) =>
      limbTotals([fullPrescription(leg({ scheme: undefined, sets, ...more }))]).percentLop;
    expect(share({ occlusionMmHg: 160 })).toEqual({
      kind: 'percent-of-occlusion',
      value: 62.5,
      unit: '%',
      equation: 'percent-of-occlusion',
      evidence: 'definition',
      inputs: { pressureMmHg: 100, occlusionMmHg: 160 },
      assumptions: [],
      cautions: [],
    });
    expect(share({})).toBeUndefined();
    expect(limbTotals([fullPrescription(leg({ occlusionMmHg: 160 }))]).percentLop).toBeUndefined();
    const right = { ...fullPrescription(leg({ side: 'right', ...CUFF })), occlusionMmHg: { left: 160, right: 100 } };
    expect(limbTotals([right]).percentLop!.value).toBe(80);
  });

  it('are in the unit of the first', () => {
    // 1 lb is 0.45359237 kg, by definition.
    const [row] = compared(leg({ load: 100, unit: 'lb' }), leg({ load: 50 })).rows;
    expect([row!.unit, row!.from!.value, row!.to!.value]).toEqual(['[lb_av]', 100, 50]);
    expect(row!.change).toBeCloseTo(50 / 0.45359237 - 100, 9);
    expect(row!.changePercent).toBeCloseTo(50 / 0.45359237 - 100, 9);
  });
});

describe('notations', () => {
  const tempo = (eccentricS?: number, bottomS?: number, concentricS?: number, topS?: number) => ({
    eccentricS,
    bottomS,
    concentricS,
    topS,
  });
  it.each<[string, ReturnType<typeof tempo> | undefined]>([
    [' 2010 ', tempo(2, 0, 1, 0)],
    ['30X1', tempo(3, 0, undefined, 1)],
    ['x0x0', tempo(undefined, 0, undefined, 0)],
    [' 3 - 1.5 - X - 10 ', tempo(3, 1.5, undefined, 10)],
    ['2/0/x/1', tempo(2, 0, undefined, 1)],
    ['60-0-60-0', tempo(60, 0, 60, 0)],
    ['61-0-1-0', undefined],
    ['2-0-1-60.5', undefined],
    ['201', undefined],
    ['20100', undefined],
    ['2-0-1', undefined],
    ['2-0-1-0-1', undefined],
    ['', undefined],
  ])('of a tempo: "%s"', (text, phases) => {
    expect(parseTempo(text)).toEqual(phases);
  });
  it('of a scheme', () => {
    const counted = (...all: number[]) => all.map((repetitions) => ({ repetitions }));
    const timed = (...all: number[]) => all.map((durationS) => ({ durationS }));
    expect(parseScheme('30-15–15/15')).toEqual(counted(30, 15, 15, 15));
    expect(parseScheme(' 3 × 8 ')).toEqual(counted(8, 8, 8));
    expect(parseScheme('2x2min')).toEqual(timed(120, 120));
    expect(parseScheme('45s - 1 min')).toEqual(timed(45, 60));
    for (const wrong of ['', '51x10', '0x10', '3x0', '3x', 'x10', '30--15']) expect(parseScheme(wrong)).toBeUndefined();
  });
  it('of a name', () => {
    expect(['', 'a', 'a'.repeat(120), 'a'.repeat(121)].map(isName)).toEqual([false, true, true, false]);
  });
});

describe('a prescription', () => {
  const sets = (...all: object[]) => leg({ scheme: undefined, sets: all });
  const issues = (given: object) => issuesOf(fullSession, given);
  it('has what was given, and every default', () => {
    expect(fullPrescription(leg())).toStrictEqual({
      sets: [
        { repetitions: 10, restS: 30 },
        { repetitions: 10, restS: 0 },
      ],
      warmUp: [],
      tempo: { eccentricS: 2, bottomS: 0, concentricS: 2, topS: 0 },
      restriction: 'continuous',
      mode: 'resistance',
      limb: 'leg',
      side: 'left',
      changeS: 0,
      unit: 'kg',
      inflatedBeforeS: 0,
      deflatedAfterS: 0,
    });
    const [first, second] = fullSession({
      exercises: [leg(), { ...leg(), name: 'press' }],
      reperfusionS: 180,
    } as SessionInput).exercises;
    expect(first).not.toHaveProperty('name');
    expect(second!.name).toBe('press');
  });

  it.each<[string, object, string[]]>([
    ['no session', { exercises: 5 }, ['exercises wrong-type']],
    ['no exercise', { exercises: [] }, ['exercises wrong-type']],
    ['a set of nothing', { ...sets({}), tempo: undefined }, ['sets.0.repetitions missing']],
    ['a set that is none', sets(5 as never), ['sets.0 wrong-type']],
    ['a warm-up of nothing', leg({ warmUp: [{}] }), ['warmUp.0.repetitions missing']],
    ['no tempo', leg({ tempo: undefined }), ['tempo missing']],
    ['a tempo of 0 s', leg({ tempo: '0-0-0-0' }), ['tempo wrong-relation']],
    ['a limb without a side', leg({ side: undefined }), ['side missing']],
    ['a side without a limb', leg({ limb: undefined }), ['limb missing']],
    ['a duration without a rating', { ...leg(), sessionS: 600 }, ['sessionRpe missing']],
    ['a load in one set of two', sets({ repetitions: 10, load: 20 }, { repetitions: 10 }), ['load missing']],
    [
      'a pressure in one set of two',
      sets({ repetitions: 10, pressureMmHg: 80 }, { repetitions: 10 }),
      ['pressureMmHg missing'],
    ],
    ['no pressure in the rests', leg({ restriction: 'partial', pressureMmHg: 80 }), ['restPressureMmHg missing']],
    ['a pressure in the rests alone', leg({ restriction: 'partial', restPressureMmHg: 80 }), ['pressureMmHg missing']],
    [
      'pressures of sides that are not named',
      leg({ limb: undefined, side: undefined, pressureMmHg: { left: 80, right: 90 } }),
      ['side missing'],
    ],
    [
      'a pressure in the rests that one set has too',
      {
        ...sets({ repetitions: 10, pressureMmHg: 100 }, { repetitions: 10, pressureMmHg: 50 }),
        restriction: 'partial',
        restPressureMmHg: 50,
      },
      ['restPressureMmHg wrong-relation'],
    ],
    [
      'an exercise without a limb beside one with it',
      session(leg(), leg({ limb: undefined, side: undefined })) as object,
      ['exercises.1.limb missing'],
    ],
  ])('is refused: %s', (_, given, expected) => {
    expect(issues(given)).toEqual(expected);
  });

  it.each<[string, object]>([
    ['a tempo with a pause at the top alone', leg({ tempo: '0-0-0-2' })],
    ['a tempo with a pause at the top as long as the rest', leg({ tempo: '1-0-1-2' })],
    ['a tempo with a pause at the bottom as long as the way down', leg({ tempo: '1-1-0-0' })],
    ['counted sets by the watch, without a tempo', { ...sets({ repetitions: 9, durationS: 41 }), tempo: undefined }],
    ['a load of its own in one set', { ...sets({ repetitions: 10, load: 20 }, { repetitions: 10 }), load: 15 }],
    [
      'pressures in every set and one in the rests',
      { ...sets({ repetitions: 10, pressureMmHg: 80 }), restriction: 'partial', restPressureMmHg: 50 },
    ],
    [
      'an exercise without a limb, without a cuff',
      session(leg(), bare({ limb: undefined, side: undefined })) as object,
    ],
  ])('may have %s', (_, given) => {
    expect(issues(given)).toEqual([]);
  });
});

describe('a week', () => {
  const week = (...days: object[]) => ({
    days: Array.from({ length: 7 }, (_, day) => ({ loadAu: 100 + day, ...days[day] })),
  });
  const issues = (given: object) => issuesOf(weekTotals, given);
  const restrictedS = { leftLeg: 300 };

  it.each<[string, object, string[]]>([
    ['no days', {}, ['days missing']],
    ['six days', { days: week().days.slice(1) }, ['days wrong-relation']],
    [
      'more sessions with a cuff than sessions',
      week({ sessions: 1, restrictedSessions: 2 }),
      ['days.0.restrictedSessions wrong-relation'],
    ],
    [
      'several sessions of which it is not known',
      week({}, { sessions: 2, restrictedS }),
      ['days.1.restrictedSessions missing'],
    ],
    [
      'restriction in no session',
      week({ restrictedS, restrictedSessions: 0 }),
      ['days.0.restrictedSessions wrong-relation'],
    ],
    [
      'more at rest than with a cuff',
      week({ restrictedSessions: 1, restrictedAtRest: 2 }),
      ['days.0.restrictedAtRest wrong-relation'],
    ],
    ['a ratio to nothing', { ...week(), ratio: 'coupled' }, ['earlierWeeksAu missing']],
    ['weeks without a ratio', { ...week(), earlierWeeksAu: [1, 2, 3] }, ['earlierWeeksAu wrong-relation']],
    [
      'a ratio to two weeks',
      { ...week(), ratio: 'coupled', earlierWeeksAu: [1, 2] },
      ['earlierWeeksAu wrong-relation'],
    ],
  ])('is refused: %s', (_, given, expected) => {
    expect(issues(given)).toEqual(expected);
  });
  it.each([
    { sessions: 1, restrictedS },
    { sessions: 2, restrictedSessions: 2, restrictedS },
    { restrictedSessions: 2, restrictedS },
    { sessions: 2 },
    { restrictedSessions: 1, restrictedAtRest: 1, restrictedS },
  ])('may have a day of %j', (day) => {
    expect(issues(week(day))).toEqual([]);
  });
  it('counts a session on a day with a load', () => {
    const { sessions, load } = weekTotals(week({ loadAu: 0 }, { sessions: 3 }, { loadAu: 0, sessions: 1 }));
    expect([sessions.value, load.value]).toEqual([0 + 3 + 1 + 4, 101 + 103 + 104 + 105 + 106]);
  });
  it('has no monotony where every day is alike, exactly', () => {
    // Seven times 0.1 in doubles is not 0.7, nor a seventh of it 0.1.
    const { monotony, cautions } = weekTotals({ days: Array(7).fill({ loadAu: 0.1 }) });
    expect([monotony, cautions.map(({ code }) => code)]).toEqual([undefined, ['monotony-undefined-equal']]);
    expect(weekTotals({ days: Array(7).fill({ loadAu: 0 }) }).cautions[0]!.code).toBe('monotony-undefined-rest');
    expect(weekTotals({ days: [{ loadAu: 1 }, ...Array(6).fill({ loadAu: 0 })] }).monotony).toBeDefined();
  });
});

describe('limb symmetry', () => {
  const codes = ({ cautions }: ReturnType<typeof limbSymmetry>) => cautions.map(({ code }) => code);
  const maximum = testedOneRepMax({ load: 50 });
  it('has an error where both sides have one', () => {
    const { timeUnderTension: time } = sessionTotals(leg());
    const without = limbSymmetry({ left: time, right: time, involved: 'left' });
    expect([without.value, codes(without)]).toEqual([100, ['symmetry-without-error']]);
    expect(without).not.toHaveProperty('standardDeviation');
    const { standardDeviation: _, ...plain } = maximum;
    const one = limbSymmetry({ left: maximum, right: plain, involved: 'left' });
    expect(codes(one)).toEqual(['symmetry-without-error']);
    expect(one).not.toHaveProperty('errors');
    expect(limbSymmetry({ left: maximum, right: maximum, involved: 'left' }).errors).toHaveLength(2);
  });
  it('is that of one kind', () => {
    const { timeUnderTension, sessionTime } = sessionTotals(leg());
    const refused = (left: unknown, right: unknown) => {
      const result = attempt(limbSymmetry, { left, right, involved: 'left' });
      return result.ok ? [] : result.issues.map(({ path, received }) => [path.join('.'), received]);
    };
    expect(refused(timeUnderTension, sessionTime)).toEqual([['right', 'session-time']]);
    expect(refused(maximum, { ...maximum, unit: '[lb_av]' })).toEqual([['right', 'one-repetition-maximum']]);
    expect(refused(maximum, 50)).toEqual([['right', 'a number']]);
    expect(refused(maximum, maximum)).toEqual([]);
  });
});
