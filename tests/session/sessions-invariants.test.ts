import { describe, expect, it } from 'vitest';
import { sessionTotals } from '../../src/index.js';
import { limbRestriction } from '../../src/session/totals.js';
import { ofSide } from '../../src/session/schedule.js';
import { fullPrescription } from '../../src/session/read-session.js';
import { CHAIN } from '../support/inputs.js';
import { codesOf, expectClose, expectHoldsTogether, message, told, withCode } from '../support/invariants.js';
import { working } from '../../src/text/index.js';

const LEFT_LEG = { limb: 'leg', side: 'left' } as const;
const account = (input: object) => sessionTotals(input as never);

describe('a session of several exercises', () => {
  const press = {
    ...CHAIN,
    ...LEFT_LEG,
    name: 'press',
    load: 30,
    percentOneRepMax: 30,
    pressureMmHg: 80,
    occlusionMmHg: 160,
  };
  const curl = { ...CHAIN, limb: 'arm', side: 'right', scheme: '3x10', load: 10, unit: 'kg' };
  const session = { exercises: [press, curl], reperfusionS: 120, sessionRpe: 6 };

  it('adds up, and says what it leaves out', () => {
    const totals = account(session);
    expectHoldsTogether(totals);
    expect(totals.exercises.map(({ name }) => name)).toEqual(['press', undefined]);
    // 3 × 40 s and two rests of 30 s.
    expect(totals.sessionTime.value).toBe(390 + 120 + 180);
    expect(totals.sessionTime.inputs).toEqual({ exercises: '390 + 180', pauses: '120' });
    expect(working(totals.sessionTime)!.formula).toBe('sum(E) + p');
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
    for (const name of ['relativeVolumeLoad', 'pressureTime', 'relativePressureTime', 'peakPercentOneRepMax'])
      expect(totals).not.toHaveProperty(name);
    expect(totals.peakLoad!.value).toBe(30);
    expect(message(totals.cautions)).toEqual([
      [
        'total-left-out',
        { severity: 'note', values: { total: 'relative-volume-load', missing: 'percentOneRepMax or oneRepMax' } },
      ],
      ['total-left-out', { severity: 'note', values: { total: 'pressure-time', missing: 'pressureMmHg' } }],
      ['total-left-out', { severity: 'note', values: { total: 'relative-pressure-time', missing: 'occlusionMmHg' } }],
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
    expect(message(left!.cautions)).toEqual([
      ['reperfusion-short', { severity: 'caution', values: { seconds: '170', low: 3 } }],
    ]);
    expect(right!.cautions).toEqual([]);
    expect(account({ exercises: [press, press], reperfusionS: 180 }).limbs[0]!.cautions).toEqual([]);
    // Four times 390 s are 26 min on one limb.
    const long = account({ exercises: [press, press, press, press], reperfusionS: 180 });
    expect(message(long.limbs[0]!.cautions)).toEqual([
      ['restriction-long-limb', { severity: 'caution', values: { value: 26, limit: 20 } }],
    ]);
    expect(withCode(message(long.cautions), 'restriction-long-limb')).toHaveLength(1);
  });

  it('takes unnamed restriction as on one limb', () => {
    const unnamed = account({ exercises: [CHAIN, CHAIN], reperfusionS: 200 });
    expectHoldsTogether(unnamed);
    expect(unnamed.limbs).toHaveLength(1);
    expect(message(unnamed.limbs[0]!.restrictionTime.assumptions)).toEqual([['one-limb-taken']]);
    expect(account(CHAIN).limbs[0]!.restrictionTime.assumptions).toEqual([]);
    expect(account(session).limbs[0]!.restrictionTime.assumptions).toEqual([]);
  });

  it('names the exercise of a caution', () => {
    const totals = account({ exercises: [press, { ...press, scheme: '1x700s' }], reperfusionS: 200 });
    expect(withCode(message(totals.cautions), 'restriction-long-exercise')[0]![1]).toMatchObject({
      path: ['exercises', 1],
    });
  });
});

// What a plan adds up limb by limb, from sessions that were worked out one by one.
describe('a limb over several accounts', () => {
  const press = { ...CHAIN, ...LEFT_LEG, pressureMmHg: 80, occlusionMmHg: 160 };
  const partial = { ...press, restriction: 'partial', restPressureMmHg: 40 };
  const totalsOf = (...exercises: object[]) => limbRestriction(exercises.map((exercise) => account(exercise)));

  it('adds up', () => {
    const limb = totalsOf(press, partial);
    expectHoldsTogether(limb);
    expect(limb.restrictionTime).toMatchObject({
      kind: 'restriction-time',
      value: 690,
      unit: 's',
      evidence: 'definition',
    });
    expect(limb.restrictionTime.inputs).toEqual({ exercises: '390 + 300' });
    expect(limb.partialRestrictionTime).toMatchObject({ kind: 'partial-restriction-time', value: 90 });
    expect(limb.longestRestriction!.value).toBe(390);
    expectClose(limb.pressureTime!.value, 520 + (80 * 300 + 40 * 90) / 60);
    expect(Object.keys(limb.pressureTime!.inputs)).toEqual(['exercises']);
    expectClose(limb.relativePressureTime!.value, (520 + 460) / 1.6);
    expect(Object.keys(limb.relativePressureTime!.inputs)).toEqual(['exercises']);
    expect(limb.cautions).toEqual([]);
    const long = totalsOf(press, press, partial);
    // 390 + 390 + 300 + 90 s are 19.5 min; with one more 26 min.
    expect(long.cautions).toEqual([]);
    expect(codesOf(totalsOf(press, press, partial, press).cautions)).toEqual(['restriction-long-limb']);
  });

  it('leaves out what some of them lack', () => {
    const bare = totalsOf({ ...CHAIN, ...LEFT_LEG }, press);
    expect(Object.keys(bare)).toEqual(['restrictionTime', 'longestRestriction', 'cautions']);
    expect(Object.keys(totalsOf())).toEqual(['restrictionTime', 'cautions']);
  });

  it('as one side does it', () => {
    const turns = fullPrescription({
      sets: [{ durationS: 10 }, { durationS: 20 }],
      warmUp: [{ durationS: 5 }],
      restS: 30,
      restriction: 'partial',
      limb: 'leg',
      side: 'left-then-right',
      changeS: 4,
      pressureMmHg: { left: 80, right: 90 },
      restPressureMmHg: { left: 30, right: 35 },
      occlusionMmHg: { left: 160, right: 170 },
    });
    // Between the two sets of one side: 4 s to change, 10 s of the other side, 30 s of rest; or those in the other order.
    expect(ofSide(turns, 'left')).toMatchObject({
      side: 'left',
      changeS: 0,
      sets: [
        { durationS: 10, restS: 44, pressureMmHg: 80 },
        { durationS: 20, restS: 0, pressureMmHg: 80 },
      ],
      restPressureMmHg: 30,
      occlusionMmHg: 160,
    });
    // 30 s of rest, 20 s of the left side, 4 s to change.
    expect(ofSide(turns, 'right')).toMatchObject({
      sets: [
        { durationS: 10, restS: 54, pressureMmHg: 90 },
        { durationS: 20, restS: 0, pressureMmHg: 90 },
      ],
      restPressureMmHg: 35,
      occlusionMmHg: 170,
    });
    const bare = ofSide(
      fullPrescription({ scheme: '2x10s', restS: 30, restriction: 'continuous', limb: 'leg', side: 'both' }),
      'right',
    );
    expect(bare.sets).toStrictEqual([
      { durationS: 10, restS: 30 },
      { durationS: 10, restS: 0 },
    ]);
    for (const field of ['restPressureMmHg', 'occlusionMmHg']) expect(bare).not.toHaveProperty(field);
  });
});

describe('modes side by side', () => {
  it('count what each is for', () => {
    const lift = { ...CHAIN, load: 20, percentOneRepMax: 20 };
    const walk = { scheme: '1x60s', restriction: 'none', mode: 'aerobic' };
    const totals = account({ exercises: [lift, walk], reperfusionS: 60 });
    expectHoldsTogether(totals);
    // The walk has no load to leave out, and no time under tension.
    expect(totals.cautions).toEqual([]);
    expect([totals.volumeLoad!.value, totals.timeUnderTension.value, totals.peakLoad!.value]).toEqual([1500, 300, 20]);
    expect(working(totals.exercises[1]!.totals.restrictionTime)!.formula).toBe('0');
    const body = { ...CHAIN, bodyMassKg: 80, bodyMassPercent: 50 };
    const mixed = account({ exercises: [body, { ...body, bodyMassPercent: 25 }], reperfusionS: 200 });
    expect(mixed.bodyMassVolumeLoad!.value).toBe(75 * 40 + 75 * 20);
    // Pounds and kilograms are added as kilograms (1 lb = 0.45359237 kg).
    const pounds = account({ exercises: [lift, { ...lift, unit: 'lb' }], reperfusionS: 200 });
    expectClose(pounds.volumeLoad!.value, 1500 * 1.45359237);
    expect(pounds.volumeLoad!.unit).toBe('kg');
    expect(pounds.peakLoad!.unit).toBe('kg');
    expect(account({ exercises: [{ ...lift, unit: 'lb', load: 50 }, lift], reperfusionS: 200 }).peakLoad).toMatchObject(
      {
        value: 50,
        unit: '[lb_av]',
      },
    );
  });
});
