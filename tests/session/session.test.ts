import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accountSession, sessionTimeline, type Prescription } from '../../src/index.js';
import { expectPlainJson } from '../support/answers.js';
import { prescription } from '../support/arbitraries.js';

const tempo = { eccentricS: 2, concentricS: 2 };
const base = { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous' } as const satisfies Prescription;

describe('accountSession', () => {
  it('answers any prescription in plain JSON', () => {
    fc.assert(
      fc.property(prescription, (given) => {
        expectPlainJson(accountSession(given as Prescription));
        expectPlainJson(sessionTimeline(given as Prescription));
      }),
    );
  });

  it('reads schemes of the caller’s own, and sets one by one', () => {
    const repetitions = (change: object) => accountSession({ ...base, ...change } as Prescription).repetitions.value;
    expect(repetitions({})).toBe(75);
    expect(repetitions({ scheme: '30-20-20-20' })).toBe(90);
    expect(repetitions({ scheme: '3 x 10' })).toBe(30);
    expect(repetitions({ scheme: '3×10' })).toBe(30);
    expect(repetitions({ scheme: '12' })).toBe(12);
    expect(repetitions({ scheme: undefined, sets: [{ repetitions: 30 }, { repetitions: 9 }] })).toBe(39);
  });

  it.each(['', '30-', '-30', '30-0', '30–15', '0x10', '3x', 'to failure', '501', '60x10', '1e2'])(
    'refuses the scheme "%s"',
    (scheme) => {
      expect(() => accountSession({ ...base, scheme })).toThrow(/scheme/);
    },
  );

  it('asks for a scheme or sets, not both and not neither', () => {
    expect(() => accountSession({ ...base, sets: [{ repetitions: 5 }] })).toThrow(/both/);
    const { scheme: _, ...neither } = base;
    expect(() => accountSession(neither)).toThrow(/neither/);
    expect(() => accountSession({ ...neither, sets: [] })).toThrow(/sets/);
    expect(() => accountSession({ ...base, tempo: { eccentricS: 0, concentricS: 0 } })).toThrow(/tempo/);
  });

  it('adds up decimals exactly', () => {
    const totals = accountSession({
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
    const codes = (restS: number) => accountSession({ ...base, restS }).cautions.map(({ code }) => code);
    expect(codes(100)).toEqual([]);
    expect(codes(101)).toEqual(['restriction-long-exercise']);
    expect(codes(301)).toEqual(['restriction-long-limb', 'restriction-long-exercise']);
  });
});

describe('sessionTimeline', () => {
  it('lays out 30-15-15-15 with the cuff up throughout', () => {
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
});
