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

  const told = (given: SessionInput) =>
    sessionTimeline(given).events.map(({ atS, event, side, exercise, pressureMmHg }) =>
      [atS, event, exercise, side, pressureMmHg].filter((part) => part !== undefined).join(' '),
    );

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
