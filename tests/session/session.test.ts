import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sessionTotals, sessionTimeline, type Prescription, type SessionInput } from '../../src/index.js';
import { expectPlainJson } from '../support/answers.js';
import { prescription } from '../support/arbitraries.js';

const tempo = { eccentricS: 2, concentricS: 2 };
const base = { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous' } as const satisfies Prescription;

describe('sessionTotals', () => {
  it('answers any prescription in plain JSON', () => {
    fc.assert(
      fc.property(prescription, (given) => {
        expectPlainJson(sessionTotals(given as Prescription));
        expectPlainJson(sessionTimeline(given as Prescription));
      }),
    );
  });

  it('reads schemes of the caller’s own, and sets one by one', () => {
    const repetitions = (change: object) => sessionTotals({ ...base, ...change } as Prescription).repetitions.value;
    expect(repetitions({})).toBe(75);
    expect(repetitions({ scheme: '30-20-20-20' })).toBe(90);
    // As a plan’s page prints it, and as papers do.
    for (const scheme of ['30 – 15 – 15 – 15', '30–15–15–15', '30/15/15/15']) expect(repetitions({ scheme })).toBe(75);
    expect(repetitions({ scheme: '3 x 10' })).toBe(30);
    expect(repetitions({ scheme: '3×10' })).toBe(30);
    expect(repetitions({ scheme: '12' })).toBe(12);
    expect(repetitions({ scheme: undefined, sets: [{ repetitions: 30 }, { repetitions: 9 }] })).toBe(39);
  });

  it.each(['', '30-', '-30', '30-0', '30/', '30//15', '30—15', '0x10', '3x', 'to failure', '501', '60x10', '1e2'])(
    'refuses the scheme "%s"',
    (scheme) => {
      expect(() => sessionTotals({ ...base, scheme })).toThrow(/scheme/);
    },
  );

  it('asks for a scheme or sets, not both and not neither', () => {
    // @ts-expect-error both
    expect(() => sessionTotals({ ...base, sets: [{ repetitions: 5 }] })).toThrow(/both/);
    const { scheme: _, ...neither } = base;
    // @ts-expect-error neither
    expect(() => sessionTotals(neither)).toThrow(/neither/);
    expect(() => sessionTotals({ ...neither, sets: [] })).toThrow(/sets/);
    expect(() => sessionTotals({ ...base, tempo: { eccentricS: 0, concentricS: 0 } })).toThrow(/tempo/);
  });

  it('adds up decimals exactly', () => {
    const totals = sessionTotals({
      ...base,
      scheme: '1-1-1',
      tempo: { eccentricS: 0.1, concentricS: 0.2 },
      restS: 0.1,
      load: 0.1,
    });
    expect(totals.timeUnderTension.value).toBe(0.9);
    expect(totals.sessionTime.value).toBe(1.1);
    expect(totals.volumeLoad?.value).toBe(0.3);
  });

  // Limits: 5 to 10 min an exercise (guideline review 2019, unconfirmed), 20 min a limb (practice).
  it('warns of long restriction', () => {
    const codes = (restS: number) => sessionTotals({ ...base, restS }).cautions.map(({ code }) => code);
    expect(codes(100)).toEqual([]);
    expect(codes(101)).toEqual(['restriction-long-exercise']);
    expect(codes(301)).toEqual(['restriction-long-limb', 'restriction-long-exercise']);
  });
});

describe('sessionTimeline', () => {
  // Partial restriction is what it is whether or not pressures are given: full in the sets, lower in the rests.
  it.each([{}, { pressureMmHg: 100, restPressureMmHg: 40 }])(
    'inflates again after a partial rest, given %o',
    (pressures) => {
      const of = (scheme: string) =>
        sessionTimeline({ ...base, scheme, restriction: 'partial', ...pressures } as Prescription)
          .events.map(({ event }) => event)
          .filter((event) => event !== 'set' && event !== 'rest');
      expect(of('2x10')).toEqual(['inflate', 'lower', 'inflate', 'deflate']);
      expect(of('3x10')).toEqual(['inflate', 'lower', 'inflate', 'lower', 'inflate', 'deflate']);
      expect(of('1x10')).toEqual(['inflate', 'deflate']);
    },
  );

  it('schedules 30-15-15-15 with the cuff inflated throughout', () => {
    expect(sessionTimeline(base).events.map(({ atS, event }) => [atS, event])).toEqual([
      [0, 'inflate'],
      [0, 'set'],
      [120, 'rest'],
      [150, 'set'],
      [210, 'rest'],
      [240, 'set'],
      [300, 'rest'],
      [330, 'set'],
      [390, 'deflate'],
    ]);
  });
  it('lets the cuff down in the rests when restriction is intermittent', () => {
    const { events } = sessionTimeline({ ...base, scheme: '2x10', restriction: 'intermittent' });
    expect(events.map(({ atS, event }) => [atS, event])).toEqual([
      [0, 'inflate'],
      [0, 'set'],
      [40, 'deflate'],
      [40, 'rest'],
      [70, 'inflate'],
      [70, 'set'],
      [110, 'deflate'],
    ]);
  });
  it('has no cuff when there is no restriction', () => {
    const events = sessionTimeline({ ...base, restriction: 'none' }).events.map(({ event }) => event);
    expect(events).not.toContain('inflate');
    expect(events).not.toContain('deflate');
  });

  const told = (given: SessionInput) =>
    sessionTimeline(given).events.map(({ atS, event, side, exercise, pressureMmHg }) =>
      [atS, event, exercise, side, pressureMmHg].filter((part) => part !== undefined).join(' '),
    );

  it('goes to the lower pressure in the rests when restriction is partial', () => {
    const pressures = { pressureMmHg: 80, restPressureMmHg: 30 };
    expect(told({ ...base, scheme: '2x10', restriction: 'partial', ...pressures })).toEqual([
      '0 inflate 80',
      '0 set',
      '40 lower 30',
      '40 rest',
      '70 inflate 80',
      '70 set',
      '110 deflate',
    ]);
  });

  it('takes sides in turn, each cuff over its own sets', () => {
    const turns = { limb: 'leg', side: 'right-then-left', changeS: 5 } as const;
    expect(told({ ...base, scheme: '2x10', restriction: 'intermittent', ...turns })).toEqual([
      '0 inflate right',
      '0 set right',
      '40 deflate right',
      '40 rest',
      '45 inflate left',
      '45 set left',
      '85 deflate left',
      '85 rest',
      '115 inflate right',
      '115 set right',
      '155 deflate right',
      '155 rest',
      '160 inflate left',
      '160 set left',
      '200 deflate left',
    ]);
  });

  it('schedules several exercises with pauses, a warm-up, and a cuff inflated early and deflated late', () => {
    const one = { ...base, scheme: '10', limb: 'leg', side: 'left' } as const;
    const second = { ...one, warmUp: [{ repetitions: 5, restS: 20 }], inflatedBeforeS: 10, deflatedAfterS: 15 };
    expect(told({ exercises: [one, second], reperfusionS: 180 })).toEqual([
      '0 inflate 1 left',
      '0 set 1 left',
      '40 deflate 1 left',
      '40 reperfuse 1',
      '220 set 2 left',
      '240 rest 2',
      '260 inflate 2 left',
      '270 set 2 left',
      '325 deflate 2 left',
    ]);
  });

  it('changes the pressure between sets, up and down, without letting the cuff down', () => {
    const sets = [80, 100, 60].map((pressureMmHg) => ({ repetitions: 10, pressureMmHg }));
    const { scheme: _, ...rest } = base;
    expect(told({ ...rest, sets }).filter((line) => !/set|rest/.test(line))).toEqual([
      '0 inflate 80',
      '70 inflate 100',
      '140 lower 60',
      '180 deflate',
    ]);
  });

  it('keeps a cuff up where intermittent restriction has no rest to let it down in', () => {
    const given = { ...base, scheme: '2x10', restS: 0, restriction: 'intermittent' } as const;
    expect(told(given)).toEqual(['0 inflate', '0 set', '40 set', '80 deflate']);
    expect(sessionTotals(given).longestRestriction.value).toBe(80);
  });
});
