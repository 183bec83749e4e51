import { describe, expect } from 'vitest';
import loadRatio from '../../src/checks/load-ratio.json' with { type: 'json' };
import sessionLoad from '../../src/checks/session-load.json' with { type: 'json' };
import protocols from '../../src/checks/session-protocols.json' with { type: 'json' };
import scale from '../../src/checks/session-rpe-scale.json' with { type: 'json' };
import weekLoad from '../../src/checks/week-load.json' with { type: 'json' };
import {
  sessionTotals,
  sessionRpeScale,
  sessionTimeline,
  weekTotals,
  type Deviation,
  type Prescription,
  type RatioForm,
} from '../../src/index.js';
import { eachRow, expectWithin } from '../support/rows.js';

describe('published protocols', () => {
  eachRow(protocols, ({ inputs, expected }) => {
    const totals = sessionTotals(inputs as Prescription);
    for (const [name, value] of Object.entries(expected))
      expect(totals[name as 'repetitions']?.value, name).toBe(value);
    expect(sessionTimeline(inputs as Prescription).durationS).toBe(totals.sessionTime.value);
  });
});

describe('week load, monotony and strain', () => {
  eachRow(weekLoad, ({ loads, deviation, load, monotony, monotonyTolerance, strain, strainTolerance }) => {
    const week = weekTotals({ days: loads.map((loadAu) => ({ loadAu })), deviation: deviation as Deviation });
    expect(week.load.value).toBe(load);
    if (monotony === null || strain === null) {
      expect(week).not.toHaveProperty('monotony');
      expect(week).not.toHaveProperty('strain');
      expect(week.cautions.map(({ code }) => code)).toEqual([
        load === 0 ? 'monotony-undefined-rest' : 'monotony-undefined-equal',
      ]);
    } else {
      expectWithin(week.monotony!.value, monotony, monotonyTolerance);
      expectWithin(week.strain!.value, strain, strainTolerance);
      expect(week.cautions).toEqual([]);
    }
  });
});

describe('acute to chronic load ratio', () => {
  eachRow(loadRatio, ({ acute, earlier, ratio, expected }) => {
    const days = [acute, 0, 0, 0, 0, 0, 0].map((loadAu) => ({ loadAu }));
    const week = weekTotals({ days, ratio: ratio as RatioForm, earlierWeeksAu: earlier });
    expect(week.acuteChronicRatio?.value ?? null).toBe(expected);
    const codes = week.cautions.map(({ code }) => code);
    expect(codes).toContain('ratio-descriptive');
    expect(codes.includes('ratio-undefined')).toBe(expected === null);
  });
});

describe('session RPE', () => {
  eachRow(scale, ({ rating, words }) => expect(sessionRpeScale[rating] ?? null).toBe(words));
  eachRow(sessionLoad, ({ sessionRpe, minutes, expected }) => {
    const scheme = `${minutes}min` as const;
    const totals = sessionTotals({ scheme, restriction: 'none', mode: 'aerobic', sessionRpe });
    expect(totals.sessionLoad?.value).toBe(expected);
  });
});
