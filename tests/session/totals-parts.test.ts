import Decimal from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { sessionTotals, testedOneRepMax, type Answer, type Prescription } from '../../src/index.js';
import { limbsOf } from '../../src/session/limbs.js';
import { fullPrescription } from '../../src/session/read-session.js';
import { scheduleSession } from '../../src/session/schedule.js';
import {
  exercisePart,
  limbRestriction,
  peakTotals,
  totalsOfExercise,
  totalsOfSide,
  workTotals,
} from '../../src/session/totals.js';
import { peaks, volumeTotals } from '../../src/session/volume.js';
import { highest, summed, total } from '../../src/session/working.js';
import { leg, TEN } from '../support/leg.js';

const AT_TEMPO = { eccentricS: 2, bottomS: 0, concentricS: 2, topS: 0 };
const bare = (more: object = {}) => ({ ...TEN, restriction: 'none', ...more }) as Prescription;
const timed = (scheme: string, more: object = {}) => leg({ scheme, tempo: undefined, restS: 0, ...more });
const schedule = (exercises: readonly Prescription[], pauses: readonly number[] = []) =>
  scheduleSession({ exercises: exercises.map(fullPrescription), pauses });
const partOf = (given: Prescription) => exercisePart(schedule([given])[0]!);
const done = (given: Prescription) => ({ full: fullPrescription(given), totals: partOf(given).totals });
const valuesOf = (totals: object) =>
  Object.fromEntries(Object.entries(totals).map(([name, one]) => [name, (one as Answer | undefined)?.value]));

describe('what an exercise adds up to', () => {
  it('is shown with the sets and rests that it has', () => {
    const { totals } = partOf(leg());
    const sets = { repetitionsPerSet: '10 + 10', ...AT_TEMPO };
    expect(totals.sessionTime).toMatchObject({ value: 110, inputs: { ...sets, rests: '30' } });
    expect(totals.timeUnderTension).toMatchObject({ value: 80, inputs: sets });
    const one = partOf(leg({ scheme: '1x10' })).totals;
    for (const { value, inputs } of [one.sessionTime, one.restrictionTime, one.timeUnderTension]) {
      expect(value).toBe(40);
      expect(inputs).toStrictEqual({ ...sets, repetitionsPerSet: '10' });
    }
  });

  it('warns of all that a limb bears, at either pressure', () => {
    // 2 × 600 s and a rest of 600 s at the lower pressure: 30 min on the limb, in one stretch.
    const partial = timed('2x600s', { restS: 600, restriction: 'partial' });
    expect(totalsOfExercise(fullPrescription(partial)).cautions.map(({ code, values }) => [code, values])).toEqual([
      ['restriction-long-limb', { value: 30, limit: 20 }],
      ['restriction-long-exercise', { minutes: 30, low: 5, high: 10 }],
    ]);
    expect(limbsOf(schedule([partial]))[0]!.cautions.map(({ code, values }) => [code, values])).toEqual([
      ['restriction-long-limb', { value: 30, limit: 20 }],
    ]);
  });
});

describe('one side of an exercise', () => {
  const both = leg({
    side: 'both',
    pressureMmHg: { left: 170, right: 90 },
    occlusionMmHg: { left: 160, right: 150 },
  });
  it('has its own pressure where both work at once', () => {
    const part = partOf(both);
    const [left, right] = [totalsOfSide(part, 'left'), totalsOfSide(part, 'right')];
    expect([left.restrictionTime.value, right.restrictionTime.value]).toEqual([110, 110]);
    expect([left.repetitions.value, right.repetitions.value]).toEqual([20, 20]);
    expect(left.pressureTime).toMatchObject({ value: (170 * 110) / 60, inputs: { pressureSeconds: '170 × 110' } });
    expect(right.pressureTime).toMatchObject({ value: 165, inputs: { pressureSeconds: '90 × 110' } });
    // 90 of 150 mmHg is 60 %, for 110 / 60 min.
    expect(right.relativePressureTime).toMatchObject({ value: 110, inputs: { occlusionMmHg: 150 } });
    expect([left, right].map(({ cautions }) => cautions.map(({ code }) => code))).toEqual([
      ['pressure-above-occlusion'],
      [],
    ]);
    expect(part.totals.pressureTime!.value).toBeCloseTo((260 * 110) / 60, 12);
  });
  it('is all of it where one side works', () => {
    const part = partOf(leg({ pressureMmHg: 90, occlusionMmHg: 150 }));
    const { cautions: _, ...own } = totalsOfSide(part, 'left');
    expect(part.totals).toMatchObject(own);
    expect(Object.keys(own)).toHaveLength(Object.keys(part.totals).length - 1);
    expect(totalsOfSide(partOf(leg({ restriction: 'none' })), 'left')).not.toHaveProperty('pressureTime');
  });
  it('has its own sets where they take turns', () => {
    const part = partOf(leg({ side: 'left-then-right', changeS: 5, pressureMmHg: { left: 80, right: 90 } }));
    // 40 + 5 + 40 + 30 + 40 + 5 + 40 s; one side from its first set to the end of its last: 40 + 75 + 40 s.
    expect([part.totals.sessionTime.value, part.totals.repetitions.value]).toEqual([200, 40]);
    const right = totalsOfSide(part, 'right');
    expect([right.sessionTime.value, right.repetitions.value, right.restrictionTime.value]).toEqual([155, 20, 155]);
    expect(right.pressureTime!.value).toBe((90 * 155) / 60);
  });
});

describe('what exercises add up to', () => {
  const press = (more: object = {}) => done(leg({ load: 20, ...more }));
  const hold = (more: object = {}) => done(timed('45s', more));

  it('leaves out of the load what lifts nothing', () => {
    expect(valuesOf(workTotals([hold(), press()]))).toEqual({
      repetitions: 20,
      volumeLoad: 400,
      bodyMassVolumeLoad: undefined,
      relativeVolumeLoad: undefined,
      timeUnderTension: 125,
    });
    expect(workTotals([press(), done(leg())]).volumeLoad).toBeUndefined();
    const walk = done(leg({ mode: 'aerobic' }));
    expect(workTotals([press(), walk]).volumeLoad!.value).toBe(400);
    expect(workTotals([press(), walk]).timeUnderTension!.value).toBe(80);
    // Σ repetitions × mass × share: 20 × 80 × 0.5, of the exercises that move body mass.
    const squat = done(leg({ bodyMassKg: 80, bodyMassPercent: 50 }));
    expect(valuesOf(workTotals([press(), squat]))).toMatchObject({ volumeLoad: 400, bodyMassVolumeLoad: 800 });
  });

  it('peaks at the heaviest load, also of a hold', () => {
    const peak = (...all: ReturnType<typeof done>[]) => valuesOf(peakTotals(all));
    expect(peak(press(), press({ load: 25 }))).toEqual({ peakLoad: 25, peakPercentOneRepMax: undefined });
    expect(peak(press(), hold({ load: 30 }))).toMatchObject({ peakLoad: 30 });
    expect(peak(press(), hold())).toMatchObject({ peakLoad: 20 });
    expect(peak(press(), done(leg()))).toMatchObject({ peakLoad: undefined });
  });

  it('is on a limb the time of all, and the longest stretch of one', () => {
    const held = [partOf(timed('1x1860s')).totals, partOf(timed('1x600s')).totals];
    const { cautions, ...totals } = limbRestriction(held);
    expect(valuesOf(totals)).toEqual({ restrictionTime: 2460, longestRestriction: 1860 });
    expect(cautions.map(({ code, values }) => [code, values!['value']])).toEqual([
      ['restriction-limb-stop', 41],
      ['restriction-unbroken-stop', 31],
    ]);
    expect(limbRestriction([]).cautions).toEqual([]);
  });
});

describe('a session', () => {
  const cuffed = { pressureMmHg: 80, occlusionMmHg: 160 };
  const of = (...exercises: Prescription[]) => sessionTotals({ exercises, reperfusionS: 180 } as never);
  it('adds up pressure × time of its exercises', () => {
    const totals = of(leg(cuffed), leg({ ...cuffed, pressureMmHg: 100 }));
    expect(totals.pressureTime!.value).toBe((180 * 110) / 60);
    // 50 % and 62.5 % of occlusion pressure, for 110 / 60 min each.
    expect(totals.relativePressureTime!.value).toBeCloseTo((112.5 * 110) / 60, 12);
    expect(totals.sessionTime).toMatchObject({ value: 400, inputs: { exercises: '110 + 110', pauses: '180' } });
    expect(totals.longestRestriction.value).toBe(110);
    expect(totals.reperfusionTime!.value).toBe(180);
  });
  it('says which totals only some exercises have', () => {
    const left = (...exercises: Prescription[]) => of(...exercises).cautions.map(({ code, values }) => [code, values]);
    const out = (missed: string, missing: string) => ['total-left-out', { total: missed, missing }];
    expect(left(leg({ load: 20 }), leg())).toEqual([out('volume-load', 'load')]);
    expect(left(leg({ load: 20, percentOneRepMax: 30 }), leg({ load: 20 }))).toEqual([
      out('relative-volume-load', 'percentOneRepMax or oneRepMax'),
    ]);
    expect(left(leg(cuffed), leg())).toEqual([
      out('pressure-time', 'pressureMmHg'),
      out('relative-pressure-time', 'occlusionMmHg'),
    ]);
    // Without a cuff there is no pressure to give.
    expect(left(leg(cuffed), leg({ restriction: 'none' }))).toEqual([]);
    expect([left(leg(), leg()), left(leg(cuffed), leg(cuffed))]).toEqual([[], []]);
  });
});

describe('the limbs of a session', () => {
  const limbs = (...exercises: Prescription[]) =>
    limbsOf(
      schedule(
        exercises,
        exercises.slice(1).map(() => 180),
      ),
    );
  const facts = (...exercises: Prescription[]) =>
    limbs(...exercises).map(({ limb, side, exercises: count, repetitions, timeUnderTension, restrictionTime }) => [
      [side, limb].filter(Boolean).join(' '),
      count,
      repetitions.value,
      timeUnderTension.value,
      restrictionTime.value,
    ]);
  const assumed = (...exercises: Prescription[]) =>
    limbs(...exercises).map(({ restrictionTime }) => restrictionTime.assumptions.map(({ code }) => code));

  it('are those that are named, and one where none is', () => {
    expect(facts(bare(), bare())).toEqual([['', 0, 40, 160, 0]]);
    expect(facts(leg(), bare())).toEqual([['left leg', 1, 20, 80, 110]]);
    expect(facts(leg(), leg({ limb: 'arm', restriction: 'none' }))).toEqual([
      ['left leg', 1, 20, 80, 110],
      ['left arm', 0, 20, 80, 0],
    ]);
    expect(facts(leg({ side: 'both' }), leg({ side: 'right' }))).toEqual([
      ['left leg', 1, 20, 80, 110],
      ['right leg', 2, 40, 160, 220],
    ]);
  });
  it('without a name are one, which does what is done with a cuff', () => {
    const unnamed = bare({ restriction: 'continuous' });
    expect(facts(unnamed, bare())).toEqual([['', 1, 20, 80, 110]]);
    expect(facts(unnamed, unnamed)).toEqual([['', 2, 40, 160, 220]]);
    expect(assumed(unnamed, unnamed)).toEqual([['one-limb-taken']]);
    expect([assumed(unnamed), assumed(unnamed, bare()), assumed(bare(), bare())]).toEqual([[[]], [[]], [[]]]);
    expect(assumed(leg(), leg())).toEqual([[]]);
  });
  it('do their own sets where they take turns, warm-up sets apart', () => {
    const turns = leg({ side: 'right-then-left', warmUp: [{ repetitions: 5 }] });
    expect(facts(turns)).toEqual([
      ['right leg', 1, 20, 80, 150],
      ['left leg', 1, 20, 80, 150],
    ]);
  });
  it('have little time between exercises only where it is below 3 min', () => {
    const cautions = (pause: number, ...exercises: Prescription[]) =>
      limbsOf(schedule(exercises, [pause, pause])).map((one) => one.cautions.map(({ code, values }) => [code, values]));
    const short = ['reperfusion-short', { seconds: '179.5', low: 3 }];
    expect(cautions(179.5, leg(), leg())).toEqual([[short]]);
    expect(cautions(180, leg(), leg())).toEqual([[]]);
    // The rests of an exercise are no time between exercises, and another limb’s cuff is another cuff.
    expect(cautions(180, leg({ restriction: 'intermittent' }), leg())).toEqual([[]]);
    expect(cautions(60, leg(), leg({ side: 'right' }), leg())).toEqual([[], []]);
  });
});

describe('volume loads', () => {
  const volumes = (more: object) => {
    const { full, setIntervals } = schedule([leg(more)])[0]!;
    return volumeTotals(full, setIntervals);
  };
  it('of one load are the exact product', () => {
    // 45 repetitions; each product alone would be brought to 12 digits.
    const load = 33.3333333333;
    const { volumeLoad } = volumes({ scheme: '30-15', load });
    expect(volumeLoad!.value).toBe(new Decimal(load).times(45).toNumber());
    expect(volumeLoad!.inputs).toEqual({ repetitionsPerSet: '30 + 15', load, unit: 'kg' });
  });
  it('of several loads are the sum of the sets', () => {
    const sets = [
      { repetitions: 10, load: 20 },
      { repetitions: 8, load: 22.5 },
    ];
    expect(volumes({ scheme: undefined, sets, unit: 'lb' }).volumeLoad).toMatchObject({
      value: 380,
      unit: '[lb_av]',
      inputs: { setLoads: '10 × 20 + 8 × 22.5' },
    });
    const held = [...sets, { durationS: 30, load: 40 }];
    expect(volumes({ scheme: undefined, sets: held }).volumeLoad!.value).toBe(380);
  });
  it('are there where a load, a body mass or a maximum is', () => {
    expect(volumes({})).toEqual({});
    expect(valuesOf(volumes({ bodyMassKg: 80, bodyMassPercent: 50 }))).toEqual({
      volumeLoad: 0,
      bodyMassVolumeLoad: 800,
    });
    expect(valuesOf(volumes({ percentOneRepMax: 30 }))).toEqual({ relativeVolumeLoad: 6 });
  });
  it('over a maximum have its error, where it has one', () => {
    const full = fullPrescription(leg({ load: 20, oneRepMax: testedOneRepMax({ load: 100 }) }));
    const { standardDeviation: _, ...plain } = full.oneRepMax!;
    const without = { ...full, oneRepMax: plain };
    const { setIntervals } = schedule([leg({ load: 20 })])[0]!;
    // 20 × 20 kg / 100 kg, and the median error of repeated tests, 4.2 %.
    const known = volumeTotals(full, setIntervals).relativeVolumeLoad!;
    expect([known.value, known.standardDeviation!.toFixed(9)]).toEqual([4, '0.168000000']);
    const unknown = volumeTotals(without, setIntervals).relativeVolumeLoad!;
    expect([unknown.value, unknown.assumptions]).toEqual([4, []]);
    for (const field of ['standardDeviation', 'lower', 'errors']) expect(unknown).not.toHaveProperty(field);
    expect(peaks(full).peakPercentOneRepMax!.value).toBe(20);
    expect(peaks({ ...full, sets: [{ restS: 0, repetitions: 5 }] }).peakPercentOneRepMax).toBeUndefined();
  });
});

describe('totals of parts', () => {
  const mass = (value: number, unit: 'kg' | '[lb_av]' = 'kg', evidence?: 'published' | 'unconfirmed') =>
    total('volume-load', value, unit, {}, evidence);
  it('of one part are its own', () => {
    const one = mass(10);
    expect(summed([one], 'exercises')).toBe(one);
    expect([summed([], 'exercises'), summed([undefined, one], 'x'), summed([one, undefined], 'x')]).toEqual(
      Array(3).fill(undefined),
    );
  });
  it('add up in the unit that all have, or in kilograms', () => {
    const sum = (...parts: Answer<'volume-load'>[]) => summed(parts, 'exercises');
    expect(sum(mass(10, '[lb_av]'), mass(5, '[lb_av]'))).toMatchObject({
      value: 15,
      unit: '[lb_av]',
      inputs: { exercises: '10 + 5' },
      evidence: 'definition',
    });
    // 100 lb are 45.359237 kg, by definition.
    expect(sum(mass(10), mass(100, '[lb_av]'))).toMatchObject({ value: 55.359237, unit: 'kg' });
    expect(sum(mass(1, 'kg', 'published'), mass(2), mass(3, 'kg', 'unconfirmed'))!.evidence).toBe('unconfirmed');
  });
  it('are highest by mass, the first of equal ones', () => {
    const [kilograms, pounds] = [mass(45.359237), mass(100, '[lb_av]')];
    expect(highest([kilograms, pounds])).toBe(kilograms);
    expect(highest([pounds, kilograms])).toBe(pounds);
    expect(highest([mass(45), pounds])).toBe(pounds);
    expect(highest([mass(46), pounds])!.value).toBe(46);
    expect([highest([]), highest([pounds, undefined])]).toEqual([undefined, undefined]);
    const [time, longer] = [90, 100].map((seconds) => total('session-time', seconds, 's', {}));
    expect(highest([time, longer])).toBe(longer);
  });
});
