import { describe, expect, it } from 'vitest';
import { sessionTotals, testedOneRepMax } from '../../src/index.js';
import { CHAIN } from '../support/inputs.js';
import { expectClose, expectHoldsTogether, message, told, withWorking } from '../support/invariants.js';
import { working } from '../../src/text/index.js';

const TEMPO = { eccentricS: 2, concentricS: 2 } as const;
const account = (input: object) => sessionTotals(input as never);

// Reference C.3: 75 repetitions of 4 s and three rests of 30 s are 390 s. C.1: volume load, relative volume load.
describe('one exercise', () => {
  const full = { ...CHAIN, load: 30, percentOneRepMax: 30, pressureMmHg: 80, occlusionMmHg: 160 };

  it('adds up', () => {
    const totals = account(full);
    expectHoldsTogether(totals);
    expect(told(totals)).toEqual({
      repetitions: ['repetitions', 75, '{reps}', 'definition'],
      volumeLoad: ['volume-load', 2250, 'kg', 'definition', 'volume-methods-2009'],
      relativeVolumeLoad: ['relative-volume-load', 22.5, '1', 'definition', 'monitoring-2016'],
      timeUnderTension: ['time-under-tension', 300, 's', 'definition', 'volume-methods-2009'],
      restrictionTime: ['restriction-time', 390, 's', 'definition'],
      longestRestriction: ['longest-restriction', 390, 's', 'definition'],
      // 80 mmHg for 6.5 min; half of 160 mmHg.
      pressureTime: ['pressure-time', 520, 'mm[Hg].min', 'definition'],
      relativePressureTime: ['relative-pressure-time', 325, '%.min', 'definition'],
      sessionTime: ['session-time', 390, 's', 'definition', 'knee-repair-2022'],
      peakLoad: ['peak-load', 30, 'kg', 'definition'],
      peakPercentOneRepMax: ['peak-percent-of-maximum', 30, '%', 'definition'],
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
    expect(totals.relativeVolumeLoad!.inputs).toEqual({ ...sets, percentOneRepMax: 30 });
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
    expect(totals.peakPercentOneRepMax!.inputs).toEqual({ percentOneRepMax: 30 });
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
    if (restriction === 'intermittent') expect(working(totals.longestRestriction)!.formula).toBe('n * (e + b + c + t)');
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
    expect(withWorking(totals.relativeVolumeLoad)).toMatchObject({
      evidence: 'published',
      sources: ['monitoring-2016'],
      unit: '1',
    });
    expect(totals.peakLoad!.value).toBe(25);
    expect(withWorking(totals.peakPercentOneRepMax)).toMatchObject({
      value: 25,
      unit: '%',
      evidence: 'published',
      sources: [],
    });
    expect(working(totals.peakPercentOneRepMax!)!.formula).toBe('100 * w / M');
    const pounds = account({ sets, unit: 'lb', tempo: TEMPO, restS: 60, restriction: 'none', oneRepMax });
    expectHoldsTogether(pounds);
    expectClose(pounds.relativeVolumeLoad!.value, 4 * 0.45359237);
    expect(pounds.volumeLoad).toMatchObject({ value: 400, unit: '[lb_av]' });
    expect(working(pounds.peakPercentOneRepMax!)!.formula).toBe('100 * w * 0.45359237 / M');
    const other = account({
      sets,
      tempo: TEMPO,
      restS: 60,
      restriction: 'none',
      oneRepMax: testedOneRepMax({ load: 220, unit: 'lb' }),
    });
    expectHoldsTogether(other);
    expect(working(other.peakPercentOneRepMax!)!.formula).toBe('100 * w / 0.45359237 / M');
    expectClose(other.peakPercentOneRepMax!.value, (100 * 25) / 0.45359237 / 220);
  });

  it('of body mass', () => {
    const totals = account({ ...CHAIN, bodyMassKg: 80, bodyMassPercent: 64 });
    expectHoldsTogether(totals);
    expectClose(totals.bodyMassVolumeLoad!.value, 75 * 80 * 0.64);
    expect(told(totals)).toMatchObject({
      volumeLoad: ['volume-load', 0, 'kg', 'definition', 'volume-methods-2009'],
      bodyMassVolumeLoad: ['body-mass-volume-load', 3840, 'kg', 'definition', 'volume-methods-2009'],
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
    expect(message(hold.cautions)).toEqual([['timed-sets-no-volume', { severity: 'note' }]]);
  });

  // Guidance (reference D and protocols): 5 to 10 min, 5 to 20 in walking, 5 min lying still at a time; 20 min a limb.
  const passive = { mode: 'passive', restriction: 'intermittent', restS: 60 } as const;
  const still = { severity: 'caution', source: 'guideline-review-2019' } as const;
  it.each([
    [{ scheme: '1x600s', restriction: 'continuous' }, []],
    [
      { scheme: '1x606s', restriction: 'continuous' },
      [['restriction-long-exercise', { ...still, values: { minutes: 10.1, low: 5, high: 10 } }]],
    ],
    [{ scheme: '1x1200s', restriction: 'continuous', mode: 'aerobic' }, []],
    [
      { scheme: '1x1206s', restriction: 'continuous', mode: 'aerobic' },
      [
        ['restriction-long-limb', { severity: 'caution', values: { value: 20.1, limit: 20 } }],
        ['restriction-long-aerobic', { ...still, values: { minutes: 20.1, low: 5, high: 20 } }],
      ],
    ],
    [{ scheme: '3x300s', ...passive }, []],
    [
      { scheme: '2x306s', ...passive },
      [['restriction-long-passive', { ...still, values: { minutes: 5.1, low: 5, high: 5 } }]],
    ],
    [{ scheme: '4x300s', ...passive }, []],
    [
      { scheme: '5x300s', ...passive },
      [['restriction-long-limb', { severity: 'caution', values: { value: 25, limit: 20 } }]],
    ],
  ] as const)('warns of long restriction: %o', (input, expected) => {
    const totals = account(input);
    expectHoldsTogether(totals);
    expect(message(totals.cautions)).toEqual(expected);
  });

  it('warns of a pressure above the occlusion pressure of its side', () => {
    const sides = { limb: 'leg', side: 'both' } as const;
    const at = (pressureMmHg: object | number, occlusionMmHg: object | number) =>
      message(account({ ...CHAIN, ...sides, pressureMmHg, occlusionMmHg }).cautions);
    expect(at(160, 160)).toEqual([]);
    expect(at({ left: 150, right: 161 }, { left: 170, right: 160 })).toEqual([
      ['pressure-above-occlusion', { severity: 'caution', values: { pressure: 161, occlusion: 160 } }],
    ]);
  });
});
