import { describe, expect, it } from 'vitest';
import {
  accountSession,
  compareSessions,
  explain,
  sessionTimeline,
  testedOneRepMax,
  weekTotals,
  type Answer,
  type ComparisonRow,
} from '../../src/index.js';
import { codesOf, expectClose, expectHoldsTogether, refusal, said, type Said } from '../support/hold-together.js';

const TEMPO = { eccentricS: 2, concentricS: 2 } as const;
const CHAIN = { scheme: '30-15-15-15', tempo: TEMPO, restS: 30, restriction: 'continuous' } as const;
const LEFT_LEG = { limb: 'leg', side: 'left' } as const;
const account = (input: object) => accountSession(input as never);
const withCode = (list: readonly Said[], code: string) => list.filter(([each]) => each === code);

/** Kind, value, unit, grade and sources of every total. */
const told = (totals: object) =>
  Object.fromEntries(
    Object.entries(totals)
      .filter(([, part]) => typeof part === 'object' && part !== null && 'kind' in part)
      .map(([name, part]) => {
        const { kind, value, unit, evidence, sources, equation } = part as Answer;
        expect(equation).toBe(kind);
        return [name, [kind, value, unit, evidence, ...sources]];
      }),
  );

// Reference C.3: 75 repetitions of 4 s and three rests of 30 s are 390 s. C.1: volume load, relative volume load.
describe('one exercise', () => {
  const full = { ...CHAIN, load: 30, percent: 30, pressureMmHg: 80, occlusionMmHg: 160 };

  it('adds up', () => {
    const totals = account(full);
    expectHoldsTogether(totals);
    expect(told(totals)).toEqual({
      repetitions: ['repetitions', 75, '{reps}', 'practice'],
      volumeLoad: ['volume-load', 2250, 'kg', 'published', 'volume-methods-2009'],
      relativeVolumeLoad: ['relative-volume-load', 22.5, '1', 'unconfirmed', 'monitoring-2016'],
      timeUnderTension: ['time-under-tension', 300, 's', 'published', 'volume-methods-2009'],
      restrictionTime: ['restriction-time', 390, 's', 'practice'],
      longestRestriction: ['longest-restriction', 390, 's', 'practice'],
      // 80 mmHg for 6.5 min; half of 160 mmHg.
      pressureTime: ['pressure-time', 520, 'mm[Hg].min', 'practice'],
      relativePressureTime: ['relative-pressure-time', 325, '%.min', 'practice'],
      sessionTime: ['session-time', 390, 's', 'derived', 'knee-repair-2022'],
      peakLoad: ['peak-load', 30, 'kg', 'practice'],
      peakPercent: ['peak-percent', 30, '%', 'practice'],
    });
    expect(totals.cautions).toEqual([]);
    expect(totals.exercises).toHaveLength(1);
    expect(totals.exercises[0]).not.toHaveProperty('name');
  });

  it('shows its working in the fields of the prescription', () => {
    const totals = account({ ...full, inflatedBeforeS: 20, deflatedAfterS: 10, warmUp: [{ repetitions: 10 }] });
    expectHoldsTogether(totals);
    const tempo = { eccentricS: 2, bottomS: 0, concentricS: 2, topS: 0 };
    const sets = { repetitionsPerSet: '30 + 15 + 15 + 15' };
    expect(totals.repetitions.inputs).toEqual(sets);
    expect(totals.volumeLoad!.inputs).toEqual({ ...sets, load: 30, unit: 'kg' });
    expect(totals.relativeVolumeLoad!.inputs).toEqual({ ...sets, percent: 30 });
    expect(totals.timeUnderTension.inputs).toEqual({ ...sets, ...tempo });
    const clock = { before: 20, after: 10 };
    expect(totals.restrictionTime.value).toBe(390 + clock.before + clock.after);
    expect(totals.restrictionTime.inputs).toEqual({
      inflatedBeforeS: '20',
      ...sets,
      ...tempo,
      rests: '30 + 30 + 30',
      deflatedAfterS: '10',
    });
    // 40 s of warm-up and a rest of 30 s come first.
    expect(totals.sessionTime.value).toBe(70 + 420);
    expect(totals.sessionTime.inputs).toMatchObject({ warmUp: '40 + 30' });
    expect(totals.pressureTime!.inputs).toEqual({ pressureSeconds: '80 × 420' });
    expect(totals.relativePressureTime!.inputs).toEqual({ pressureSeconds: '80 × 420', occlusionMmHg: 160 });
    expect(totals.peakLoad!.inputs).toEqual({ load: 30, unit: 'kg' });
    expect(totals.peakPercent!.inputs).toEqual({ percent: 30 });
  });

  it.each([
    ['continuous', 390, undefined, 390, undefined],
    ['intermittent', 300, undefined, 120, 90],
    ['partial', 300, 90, 390, undefined],
    ['none', 0, undefined, 0, undefined],
  ] as const)('%s restriction', (restriction, whole, lower, longest, down) => {
    const totals = account({
      ...CHAIN,
      restriction,
      ...(restriction === 'partial' && { pressureMmHg: 80, restPressureMmHg: 30 }),
    });
    expectHoldsTogether(totals);
    expect(totals.restrictionTime.value).toBe(whole);
    expect(totals.partialRestrictionTime?.value).toBe(lower);
    expect(totals.longestRestriction.value).toBe(longest);
    expect(totals.reperfusionTime?.value).toBe(down);
    if (restriction === 'intermittent') expect(totals.longestRestriction.formula).toBe('n * (e + b + c + t)');
    // 80 × 300 s and 30 × 90 s.
    if (restriction === 'partial') {
      expectClose(totals.pressureTime!.value, (80 * 300 + 30 * 90) / 60);
      expect(totals.pressureTime!.inputs).toEqual({ pressureSeconds: '80 × 300 + 30 × 90' });
      expect(totals.partialRestrictionTime!.inputs).toEqual({ rests: '30 + 30 + 30' });
    }
  });

  it('with a load in each set, over a maximum, in either unit', () => {
    const sets = [
      { repetitions: 10, load: 20 },
      { repetitions: 8, load: 25 },
    ];
    const oneRepMax = testedOneRepMax({ load: 100 });
    const totals = account({ sets, tempo: TEMPO, restS: 60, restriction: 'none', oneRepMax });
    expectHoldsTogether(totals);
    expect(totals.volumeLoad!.value).toBe(400);
    expect(totals.volumeLoad!.inputs).toEqual({ setLoads: '10 × 20 + 8 × 25', unit: 'kg' });
    expect(totals.relativeVolumeLoad!.value).toBe(4);
    expectClose(totals.relativeVolumeLoad!.standardDeviation!, 4 * 0.042);
    expect(totals.relativeVolumeLoad!.errors).toEqual([
      { part: 'maximum', standardDeviation: expect.closeTo(0.168, 9) as number, evidence: 'published' },
    ]);
    expect(totals.relativeVolumeLoad).toMatchObject({
      evidence: 'unconfirmed',
      sources: ['monitoring-2016'],
      unit: '1',
    });
    expect(totals.peakLoad!.value).toBe(25);
    expect(totals.peakPercent).toMatchObject({ value: 25, unit: '%', evidence: 'published', sources: [] });
    expect(totals.peakPercent!.formula).toBe('100 * w / M');
    const pounds = account({ sets, unit: 'lb', tempo: TEMPO, restS: 60, restriction: 'none', oneRepMax });
    expectHoldsTogether(pounds);
    expectClose(pounds.relativeVolumeLoad!.value, 4 * 0.45359237);
    expect(pounds.volumeLoad).toMatchObject({ value: 400, unit: '[lb_av]' });
    expect(pounds.peakPercent!.formula).toBe('100 * w * 0.45359237 / M');
    const other = account({
      sets,
      tempo: TEMPO,
      restS: 60,
      restriction: 'none',
      oneRepMax: testedOneRepMax({ load: 220, unit: 'lb' }),
    });
    expectHoldsTogether(other);
    expect(other.peakPercent!.formula).toBe('100 * w / 0.45359237 / M');
    expectClose(other.peakPercent!.value, (100 * 25) / 0.45359237 / 220);
  });

  it('of body mass', () => {
    const totals = account({ ...CHAIN, bodyMassKg: 80, bodyMassPercent: 64 });
    expectHoldsTogether(totals);
    expectClose(totals.bodyMassVolumeLoad!.value, 75 * 80 * 0.64);
    expect(told(totals)).toMatchObject({
      volumeLoad: ['volume-load', 0, 'kg', 'published', 'volume-methods-2009'],
      bodyMassVolumeLoad: ['body-mass-volume-load', 3840, 'kg', 'unconfirmed', 'volume-methods-2009'],
    });
    expect(totals.bodyMassVolumeLoad!.inputs).toEqual({
      repetitionsPerSet: '30 + 15 + 15 + 15',
      bodyMassKg: 80,
      bodyMassPercent: 64,
    });
    expect(totals).not.toHaveProperty('peakLoad');
  });

  // Walking and lying still are no time under tension, and lift nothing.
  it('by time, and in other modes', () => {
    const walk = account({ scheme: '2x5min', restS: 60, restriction: 'continuous', mode: 'aerobic' });
    expectHoldsTogether(walk);
    expect([walk.timeUnderTension.value, walk.repetitions.value, walk.restrictionTime.value]).toEqual([0, 0, 660]);
    expect(walk.sessionTime.inputs).toEqual({ timedSets: '300 + 300', rests: '60' });
    const hold = account({ scheme: '3x10s', restS: 20, restriction: 'none', load: 5 });
    expectHoldsTogether(hold);
    expect([hold.timeUnderTension.value, hold.volumeLoad!.value]).toEqual([30, 0]);
    expect(said(hold.cautions)).toEqual([['timed-sets-no-volume', { severity: 'note' }]]);
  });

  // Guidance (reference D and protocols): 5 to 10 min, 5 to 20 in walking, 5 min lying still at a time; 20 min a limb.
  const passive = { mode: 'passive', restriction: 'intermittent', restS: 60 } as const;
  const still = { severity: 'caution', source: 'guideline-review-2019' } as const;
  it.each([
    [{ scheme: '1x600s', restriction: 'continuous' }, []],
    [
      { scheme: '1x606s', restriction: 'continuous' },
      [['restriction-long-exercise', { ...still, values: { minutes: '10.1', low: 5, high: 10 } }]],
    ],
    [{ scheme: '1x1200s', restriction: 'continuous', mode: 'aerobic' }, []],
    [
      { scheme: '1x1206s', restriction: 'continuous', mode: 'aerobic' },
      [
        ['restriction-long-limb', { severity: 'caution', values: { minutes: '20.1', high: 20 } }],
        ['restriction-long-aerobic', { ...still, values: { minutes: '20.1', low: 5, high: 20 } }],
      ],
    ],
    [{ scheme: '3x300s', ...passive }, []],
    [
      { scheme: '2x306s', ...passive },
      [['restriction-long-passive', { ...still, values: { minutes: '5.1', low: 5, high: 5 } }]],
    ],
    [{ scheme: '4x300s', ...passive }, []],
    [
      { scheme: '5x300s', ...passive },
      [['restriction-long-limb', { severity: 'caution', values: { minutes: '25', high: 20 } }]],
    ],
  ] as const)('warns of long restriction: %o', (input, expected) => {
    const totals = account(input);
    expectHoldsTogether(totals);
    expect(said(totals.cautions)).toEqual(expected);
  });

  it('warns of a pressure above the occlusion pressure of its side', () => {
    const sides = { limb: 'leg', side: 'both' } as const;
    const at = (pressureMmHg: object | number, occlusionMmHg: object | number) =>
      said(account({ ...CHAIN, ...sides, pressureMmHg, occlusionMmHg }).cautions);
    expect(at(160, 160)).toEqual([]);
    expect(at({ left: 150, right: 161 }, { left: 170, right: 160 })).toEqual([
      ['pressure-above-occlusion', { severity: 'caution', values: { pressure: '161', occlusion: '160' } }],
    ]);
  });
});

describe('a session of several exercises', () => {
  const press = { ...CHAIN, ...LEFT_LEG, name: 'press', load: 30, percent: 30, pressureMmHg: 80, occlusionMmHg: 160 };
  const curl = { ...CHAIN, limb: 'arm', side: 'right', scheme: '3x10', load: 10, unit: 'kg' };
  const session = { exercises: [press, curl], reperfusionS: 120, sessionRpe: 6 };

  it('adds up, and says what it leaves out', () => {
    const totals = account(session);
    expectHoldsTogether(totals);
    expect(totals.exercises.map(({ name }) => name)).toEqual(['press', undefined]);
    // 3 × 40 s and two rests of 30 s.
    expect(totals.sessionTime.value).toBe(390 + 120 + 180);
    expect(totals.sessionTime.inputs).toEqual({ exercises: '390 + 180', pauses: '120' });
    expect(totals.sessionTime.formula).toBe('E + p');
    expect(totals.restrictionTime.value).toBe(570);
    expect(totals.repetitions).toMatchObject({ value: 105, inputs: { exercises: '75 + 30' } });
    expect(totals.volumeLoad).toMatchObject({ value: 2250 + 300, inputs: { exercises: '2250 + 300' } });
    // C.4: session RPE × minutes.
    expect(told(totals)['sessionLoad']).toEqual([
      'session-load',
      (6 * 690) / 60,
      '{AU}',
      'published',
      'session-rpe-2001',
      'athlete-dataset-2024',
    ]);
    expect(totals.sessionLoad!.inputs).toEqual({ sessionRpe: 6, sessionS: 690 });
    for (const name of ['relativeVolumeLoad', 'pressureTime', 'relativePressureTime', 'peakPercent'])
      expect(totals).not.toHaveProperty(name);
    expect(totals.peakLoad!.value).toBe(30);
    expect(said(totals.cautions)).toEqual([
      [
        'total-left-out',
        { severity: 'note', values: { total: 'Relative volume load', missing: 'percent or oneRepMax' } },
      ],
      ['total-left-out', { severity: 'note', values: { total: 'Pressure × time', missing: 'pressureMmHg' } }],
      [
        'total-left-out',
        { severity: 'note', values: { total: 'Pressure × time, relative', missing: 'occlusionMmHg' } },
      ],
    ]);
    expect(account({ ...session, sessionS: 900 }).sessionLoad!.value).toBe(90);
  });

  it('tells each limb what it went through', () => {
    const both = account({
      exercises: [press, { ...press, side: 'both', pressureMmHg: { left: 80, right: 90 }, occlusionMmHg: 200 }],
      reperfusionS: 170,
    });
    expectHoldsTogether(both);
    const [left, right] = both.limbs;
    expect([left!.limb, left!.side, left!.exercises, right!.side, right!.exercises]).toEqual([
      'leg',
      'left',
      2,
      'right',
      1,
    ]);
    expect([left!.repetitions.value, right!.repetitions.value]).toEqual([150, 75]);
    expect([left!.restrictionTime.value, right!.restrictionTime.value]).toEqual([780, 390]);
    expect(left!.reperfusionTime!.value).toBe(170);
    expect(left!.timeUnderTension.value).toBe(600);
    expect(left!.timeUnderTension.inputs).toEqual({ setTimes: '120 + 60 + 60 + 60 + 120 + 60 + 60 + 60' });
    expectClose(left!.pressureTime!.value, (2 * 80 * 390) / 60);
    expectClose(right!.relativePressureTime!.value, (45 * 390) / 60);
    // Reference: usual pause of 3 min between two exercises on one limb.
    expect(said(left!.cautions)).toEqual([
      ['reperfusion-short', { severity: 'caution', values: { minutes: '2.83', low: 3 } }],
    ]);
    expect(right!.cautions).toEqual([]);
    expect(account({ exercises: [press, press], reperfusionS: 180 }).limbs[0]!.cautions).toEqual([]);
    // Four times 390 s are 26 min on one limb.
    const long = account({ exercises: [press, press, press, press], reperfusionS: 180 });
    expect(said(long.limbs[0]!.cautions)).toEqual([
      ['restriction-long-limb', { severity: 'caution', values: { minutes: '26', high: 20 } }],
    ]);
    expect(withCode(said(long.cautions), 'restriction-long-limb')).toHaveLength(1);
  });

  it('takes unnamed restriction as on one limb', () => {
    const unnamed = account({ exercises: [CHAIN, CHAIN], reperfusionS: 200 });
    expectHoldsTogether(unnamed);
    expect(unnamed.limbs).toHaveLength(1);
    expect(said(unnamed.limbs[0]!.restrictionTime.assumptions)).toEqual([['one-limb-taken']]);
    expect(account(CHAIN).limbs[0]!.restrictionTime.assumptions).toEqual([]);
    expect(account(session).limbs[0]!.restrictionTime.assumptions).toEqual([]);
  });

  it('names the exercise of a caution', () => {
    const totals = account({ exercises: [press, { ...press, scheme: '1x700s' }], reperfusionS: 200 });
    expect(withCode(said(totals.cautions), 'restriction-long-exercise')[0]![1]).toMatchObject({
      path: ['exercises', 1],
    });
  });
});

describe('a timeline', () => {
  const events = (input: object) => sessionTimeline(input as never).events;
  it('of sets, rests and cuff', () => {
    const { assumptions, durationS } = sessionTimeline({ ...CHAIN, pressureMmHg: 80, ...LEFT_LEG });
    expect(said(assumptions)).toEqual([['tempo-kept'], ['clock-starts-with-inflation']]);
    expect(durationS).toBe(390);
    expect(events({ ...CHAIN, scheme: '2x5', pressureMmHg: 80, ...LEFT_LEG })).toEqual([
      { atS: 0, event: 'inflate', limb: 'leg', side: 'left', pressureMmHg: 80 },
      { atS: 0, event: 'set', limb: 'leg', side: 'left', set: 1, repetitions: 5, durationS: 20 },
      { atS: 20, event: 'rest', set: 1, durationS: 30 },
      { atS: 50, event: 'set', limb: 'leg', side: 'left', set: 2, repetitions: 5, durationS: 20 },
      { atS: 70, event: 'deflate', limb: 'leg', side: 'left' },
    ]);
    expect(sessionTimeline({ scheme: '1x60s', restriction: 'none' }).assumptions).toEqual([]);
  });
  it('of partial restriction, a warm-up, and sides in turn', () => {
    expect(
      events({
        sets: [{ durationS: 10 }, { durationS: 10 }],
        warmUp: [{ durationS: 5 }],
        restS: 20,
        restriction: 'partial',
        pressureMmHg: 100,
        restPressureMmHg: 40,
      }),
    ).toEqual([
      { atS: 0, event: 'set', set: 1, warmUp: true, durationS: 5 },
      { atS: 5, event: 'rest', set: 1, warmUp: true, durationS: 20 },
      { atS: 25, event: 'inflate', pressureMmHg: 100 },
      { atS: 25, event: 'set', set: 1, durationS: 10 },
      { atS: 35, event: 'lower', pressureMmHg: 40 },
      { atS: 35, event: 'rest', set: 1, durationS: 20 },
      { atS: 55, event: 'inflate', pressureMmHg: 100 },
      { atS: 55, event: 'set', set: 2, durationS: 10 },
      { atS: 65, event: 'deflate' },
    ]);
    expect(
      events({
        sets: [{ durationS: 10 }],
        restriction: 'intermittent',
        limb: 'arm',
        side: 'right-then-left',
        changeS: 4,
      }),
    ).toEqual([
      { atS: 0, event: 'inflate', limb: 'arm', side: 'right' },
      { atS: 0, event: 'set', limb: 'arm', side: 'right', set: 1, durationS: 10 },
      { atS: 10, event: 'deflate', limb: 'arm', side: 'right' },
      { atS: 10, event: 'rest', set: 1, durationS: 4 },
      { atS: 14, event: 'inflate', limb: 'arm', side: 'left' },
      { atS: 14, event: 'set', limb: 'arm', side: 'left', set: 1, durationS: 10 },
      { atS: 24, event: 'deflate', limb: 'arm', side: 'left' },
    ]);
  });
  it('of several exercises', () => {
    const bout = { sets: [{ durationS: 10 }], restriction: 'continuous' } as const;
    const { events: found, assumptions } = sessionTimeline({
      exercises: [bout, { ...bout, restriction: 'none' }, bout],
      reperfusionS: 60,
    });
    expect(found).toEqual([
      { atS: 0, event: 'inflate', exercise: 1 },
      { atS: 0, event: 'set', exercise: 1, set: 1, durationS: 10 },
      { atS: 10, event: 'deflate', exercise: 1 },
      { atS: 10, event: 'reperfuse', exercise: 1, durationS: 60 },
      { atS: 70, event: 'set', exercise: 2, set: 1, durationS: 10 },
      { atS: 80, event: 'rest', exercise: 2, durationS: 60 },
      { atS: 140, event: 'inflate', exercise: 3 },
      { atS: 140, event: 'set', exercise: 3, set: 1, durationS: 10 },
      { atS: 150, event: 'deflate', exercise: 3 },
    ]);
    expect(codesOf(assumptions)).toEqual(['clock-starts-with-inflation', 'one-limb-taken']);
  });
});

describe('a prescription is refused', () => {
  const SCHEME =
    "repetitions set by set, such as '30-15-15-15', sets by repetitions, such as '3x10', or sets by time, such as '5x2min' or '45s-30s'";
  const PHASES =
    "eccentric, bottom, concentric and top seconds, such as '2-0-2-0', '1.5-0-1.5-0', '2020' or '30X0', or the four as an object";
  const ok = { ...CHAIN };
  const set = { sets: [{ repetitions: 5 }], tempo: TEMPO, restriction: 'continuous' };
  it.each([
    [
      'neither scheme nor sets',
      { ...ok, scheme: undefined },
      [['sets', 'wrong-relation', 'given, or else scheme, but not both', 'neither']],
    ],
    [
      'both',
      { ...ok, sets: [{ repetitions: 5 }] },
      [['sets', 'wrong-relation', 'given, or else scheme, but not both', 'both']],
    ],
    ['no scheme at all', { ...ok, scheme: 'to failure' }, [['scheme', 'wrong-type', SCHEME, '"to failure"']]],
    [
      'a set of nothing',
      { ...set, sets: [{}] },
      [['sets.0.repetitions', 'missing', 'a whole number from 1 to 500 repetitions, or durationS', 'undefined']],
    ],
    ['no rest', { ...ok, restS: undefined }, [['restS', 'missing', 'a number from 0 to 3600 s', 'undefined']]],
    ['no tempo', { ...ok, tempo: undefined }, [['tempo', 'missing', PHASES, 'undefined']]],
    ['no words for a tempo', { ...ok, tempo: 'slow' }, [['tempo', 'wrong-type', PHASES, '"slow"']]],
    [
      'X where a time is needed',
      { ...ok, tempo: '30X0' },
      [
        [
          'tempo',
          'wrong-relation',
          'seconds in every phase, or else durationS in every set, since X has no time',
          "'30X0'",
        ],
      ],
    ],
    [
      'a tempo of nothing',
      { ...ok, tempo: '0-0-0-0' },
      [['tempo', 'wrong-relation', 'longer than 0 s a repetition', '0 s']],
    ],
    ['a limb without side', { ...ok, limb: 'leg' }, [['side', 'missing', 'given together with limb', 'undefined']]],
    ['a side without limb', { ...ok, side: 'left' }, [['limb', 'missing', 'given together with side', 'undefined']]],
    [
      'half of body mass',
      { ...ok, bodyMassKg: 80 },
      [['bodyMassPercent', 'missing', 'given together with bodyMassKg', 'undefined']],
    ],
    [
      'a change of sides without turns',
      { ...ok, changeS: 5 },
      [
        [
          'changeS',
          'wrong-relation',
          'left out unless every set is done with one side and then with the other',
          'a value',
        ],
      ],
    ],
    [
      'a load in some sets',
      { ...ok, scheme: undefined, sets: [{ repetitions: 5, load: 5 }, { repetitions: 5 }] },
      [['load', 'missing', 'given, or else a load in every set', 'undefined']],
    ],
    [
      'a percentage of several loads',
      { ...set, sets: [{ repetitions: 5, load: 5 }], percent: 30 },
      [['percent', 'wrong-relation', 'left out where sets have loads of their own; give oneRepMax', 'a value']],
    ],
    [
      'a percentage and a maximum',
      { ...ok, load: 20, percent: 30, oneRepMax: testedOneRepMax({ load: 100 }) },
      [['percent', 'wrong-relation', 'left out when oneRepMax is given', 'a value']],
    ],
    [
      'a maximum without load',
      { ...ok, oneRepMax: testedOneRepMax({ load: 100 }) },
      [['load', 'missing', 'given together with oneRepMax', 'undefined']],
    ],
    [
      'a bare maximum',
      { ...ok, load: 20, oneRepMax: 100 },
      [['oneRepMax', 'wrong-type', 'an answer of testedOneRepMax or estimateOneRepMax', 'a bare number']],
    ],
    [
      'a pressure in some sets',
      { ...ok, scheme: undefined, sets: [{ repetitions: 5, pressureMmHg: 80 }, { repetitions: 5 }] },
      [['pressureMmHg', 'missing', 'given, or else a pressure in every set', 'undefined']],
    ],
    [
      'a pressure without restriction',
      { ...ok, restriction: 'none', pressureMmHg: 80 },
      [['pressureMmHg', 'wrong-relation', 'left out when there is no restriction', 'a value']],
    ],
    [
      'an occlusion pressure without restriction',
      { ...ok, restriction: 'none', occlusionMmHg: 80 },
      [['occlusionMmHg', 'wrong-relation', 'left out when there is no restriction', 'a value']],
    ],
    [
      'a cuff up before without restriction',
      { ...ok, restriction: 'none', inflatedBeforeS: 8 },
      [['inflatedBeforeS', 'wrong-relation', 'left out when there is no restriction', 'a value']],
    ],
    [
      'a cuff up after without restriction',
      { ...ok, restriction: 'none', deflatedAfterS: 8 },
      [['deflatedAfterS', 'wrong-relation', 'left out when there is no restriction', 'a value']],
    ],
    [
      'pressures of sets without restriction',
      { ...set, sets: [{ repetitions: 5, pressureMmHg: 80 }], restriction: 'none' },
      [['sets', 'wrong-relation', 'without pressures when there is no restriction', 'pressures']],
    ],
    [
      'a lower pressure without partial restriction',
      { ...ok, pressureMmHg: 80, restPressureMmHg: 30 },
      [['restPressureMmHg', 'wrong-relation', 'left out unless restriction is partial', 'a value']],
    ],
    [
      'partial restriction without the lower one',
      { ...ok, restriction: 'partial', pressureMmHg: 80 },
      [['restPressureMmHg', 'missing', 'the lower pressure of the rests', 'undefined']],
    ],
    [
      'the lower one alone',
      { ...ok, restriction: 'partial', restPressureMmHg: 30 },
      [['pressureMmHg', 'missing', 'given together with restPressureMmHg', 'undefined']],
    ],
    [
      'a lower one not lower',
      { ...ok, restriction: 'partial', pressureMmHg: 80, restPressureMmHg: 80 },
      [['restPressureMmHg', 'wrong-relation', 'below pressureMmHg', '80 mmHg']],
    ],
    [
      'a lower one not lower on one side',
      {
        ...ok,
        limb: 'leg',
        side: 'both',
        restriction: 'partial',
        pressureMmHg: { left: 80, right: 60 },
        restPressureMmHg: 70,
      },
      [['restPressureMmHg', 'wrong-relation', 'below pressureMmHg', '70 mmHg']],
    ],
    [
      'sides of a pressure and no side',
      { ...ok, pressureMmHg: { left: 80, right: 90 } },
      [['side', 'missing', 'given where a pressure is given for each side', 'undefined']],
    ],
    [
      'a time without a rating',
      { ...ok, sessionS: 900 },
      [['sessionRpe', 'missing', 'given together with sessionS', 'undefined']],
    ],
    ['no pause', { exercises: [ok, ok] }, [['reperfusionS', 'missing', 'a number from 0 to 7200 s', 'undefined']]],
    [
      'a limb in one exercise',
      { exercises: [{ ...ok, ...LEFT_LEG }, ok], reperfusionS: 200 },
      [['exercises.1.limb', 'missing', 'given in every exercise or in none', 'undefined']],
    ],
    [
      'an empty name',
      { exercises: [{ ...ok, name: '' }] },
      [['exercises.0.name', 'wrong-type', 'a name of up to 120 characters', '""']],
    ],
    [
      'no exercises',
      { exercises: [] },
      [['exercises', 'wrong-type', 'a list of exercises (1 to 1000 of them)', 'a list of 0']],
    ],
    ['no list of sets', { ...set, sets: 5 }, [['sets', 'wrong-type', 'a list of sets (1 to 1000 of them)', '5']]],
    [
      'no list of a warm-up',
      { ...ok, warmUp: [] },
      [['warmUp', 'wrong-type', 'a list of sets (1 to 1000 of them)', 'a list of 0']],
    ],
  ])('%s', (_name, input, issues) => {
    expect(refusal(accountSession, input)).toEqual(issues);
  });
  it.each([
    [
      'the last rest may be left out',
      { sets: [{ repetitions: 5, restS: 9 }, { repetitions: 5 }], tempo: TEMPO, restriction: 'none' },
    ],
    ['a pause of its own', { exercises: [{ ...ok, reperfusionS: 200 }, ok] }],
    ['a name of 120 letters', { exercises: [{ ...ok, name: 'x'.repeat(120) }] }],
    ['sets by time need no tempo', { scheme: '2x10s', restS: 5, restriction: 'none', tempo: '30X0' }],
    [
      'an exercise without cuff needs no limb',
      {
        exercises: [
          { ...ok, ...LEFT_LEG },
          { ...ok, restriction: 'none' },
        ],
        reperfusionS: 0,
      },
    ],
    ['50 sets', { ...ok, scheme: '50x5' }],
    [
      'a lower pressure on the side that is used',
      { ...ok, ...LEFT_LEG, restriction: 'partial', pressureMmHg: { left: 80, right: 60 }, restPressureMmHg: 70 },
    ],
  ])('but %s', (_name, input) => {
    expect(refusal(accountSession, input)).toEqual([]);
  });
  it.each(['51x5', '0x5', '5x501', '3x', '7201s', '121min', '5x10s5', '5x10 s x', 'x5'])('no scheme: %s', (scheme) => {
    expect(refusal(accountSession, { ...ok, scheme }).map(([path, code]) => [path, code])).toEqual([
      ['scheme', 'wrong-type'],
    ]);
  });
  it.each([
    ['3 x 10', 30],
    ['3×10', 30],
    [' 30 - 15 ', 45],
    ['500', 500],
  ])('a scheme: %s', (scheme, repetitions) => {
    expect(account({ ...ok, scheme }).repetitions.value).toBe(repetitions);
  });
  it.each([
    ['7200s', 7200],
    ['120min', 7200],
    ['2 x 2 min', 240],
    ['45s - 1min', 105],
  ])('a scheme by time: %s', (scheme, seconds) => {
    expect(account({ scheme, restS: 0, restriction: 'none' }).sessionTime.value).toBe(seconds);
  });
  it.each([
    ['2-1-3-1', 7],
    ['2 / 0 / 2 / 0', 4],
    ['2020', 4],
    ['1.5-0-1.25-0', 2.75],
    ['60-0-0-0', 60],
  ])('a tempo: %s', (tempo, seconds) => {
    expect(account({ scheme: '1x10', tempo, restriction: 'none' }).sessionTime.value).toBe(10 * seconds);
  });
});

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
    expect(week.monotony).toMatchObject({
      kind: 'monotony',
      unit: '1',
      equation: `monotony-${deviation}`,
      evidence: 'published',
      sources,
    });
    expect(week.strain).toMatchObject({
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
    expect(week.load.sources).toEqual(['athlete-dataset-2024', 'session-rpe-2001']);
    expect(week.load.inputs).toEqual({ day1: 300, day2: 0, day3: 450, day4: 0, day5: 500, day6: 600, day7: 0 });
    expect(week.sessions).toMatchObject({
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
    expect(week.limbs[2]!.restrictionTime).toMatchObject({
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
    expect(coupled.acuteChronicRatio).toMatchObject({
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
    expect(row(rows, 'pressureTime')!.from).toMatchObject({ value: 0, formula: '0', symbols: {}, inputs: {} });
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
    expect(lines[2]).toEqual(['from', 'to', 'change']);
    const cells = lines.map((line) => line.slice(1));
    expect(cells).toContainEqual(['75 kg', '30 kg', '−45 kg (−60 %)', 'mechanical']);
    expect(cells).toContainEqual(['75 %', '30 %', '−45 points (−60 %)', 'mechanical']);
    expect(cells).toContainEqual(['2250 kg', '2250 kg', 'the same', 'mechanical']);
    expect(cells).toContainEqual(['0:00', '6:30', '+6:30', 'restriction']);
    expect(cells).toContainEqual(['5:00', '6:30', '+1:30 (+30 %)', 'session']);
    const { load: _load, percent: _percent, ...bare } = light;
    const open = explain(compare({ to: bare }))
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/).slice(1));
    expect(open).toContainEqual(['75 kg', 'not given', 'not known', 'mechanical']);
    const back = explain(compare({ from: light, to: heavy }))
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/).slice(1));
    expect(back).toContainEqual(['6:30', '5:00', '−1:30 (−23.08 %)', 'session']);
    expect(explain(compare())).toMatch(/^TWO SESSIONS COMPARED\n=+\n[^]*\ncaution: These are sums/);
  });
});
