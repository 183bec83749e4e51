import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accountSession,
  attempt,
  compareSessions,
  type ComparedQuantity,
  type ComparisonInput,
  type Prescription,
} from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import { expectPlainJson } from '../support/answers.js';
import { prescription } from '../support/arbitraries.js';

const tempo = '2-0-2-0';
const heavy = { scheme: '3x10', tempo, restS: 90, restriction: 'none', load: 75, percent: 75 } as const;
const light = {
  scheme: '30-15-15-15',
  tempo,
  restS: 30,
  restriction: 'continuous',
  load: 30,
  percent: 30,
  pressureMmHg: 80,
  occlusionMmHg: 160,
} as const satisfies Prescription;

const rowsOf = (given: ComparisonInput) =>
  Object.fromEntries(
    compareSessions(given).rows.map(({ quantity, from, to, change, percent }) => [
      quantity,
      [from?.value, to?.value, change, percent],
    ]),
  ) as Partial<Record<ComparedQuantity, unknown[]>>;

describe('compareSessions', () => {
  // Worked by hand: 30 × 75 kg and 75 × 30 kg are both 2250 kg; 390 s × 80 mmHg / 60 = 520 mmHg·min, half of 160: 325.
  it('tells what load is spared and what restriction is added', () => {
    expect(rowsOf({ from: heavy, to: light })).toMatchObject({
      peakLoad: [75, 30, -45, -60],
      peakPercent: [75, 30, -45, -60],
      volumeLoad: [2250, 2250, 0, 0],
      relativeVolumeLoad: [22.5, 22.5, 0, 0],
      repetitions: [30, 75, 45, 150],
      restrictionTime: [0, 390, 390, undefined],
      longestRestriction: [0, 390, 390, undefined],
      pressureTime: [0, 520, 520, undefined],
      relativePressureTime: [0, 325, 325, undefined],
      sessionTime: [300, 390, 90, 30],
    });
  });

  it('leaves open what one session does not tell', () => {
    const { pressureMmHg: _p, occlusionMmHg: _o, ...untold } = light;
    const rows = rowsOf({ from: untold, to: { ...light, load: 40 } });
    expect(rows.pressureTime).toEqual([undefined, 520, undefined, undefined]);
    const inPounds = rowsOf({ from: { ...heavy, load: 100, unit: 'lb' }, to: { ...heavy, load: 45.359237 } });
    expect(inPounds.peakLoad).toEqual([100, 45.359237, 0, 0]);
  });

  it('turns round: what one way adds, the other way takes', () => {
    fc.assert(
      fc.property(prescription, prescription, (from, to) => {
        const there = compareSessions({ from, to });
        expectPlainJson(there);
        expect(explain(there)).not.toMatch(/undefined|NaN|\[object/);
        const back = compareSessions({ from: to, to: from });
        const totals = accountSession(from);
        for (const { quantity, change, from: first, unit } of there.rows) {
          const other = back.rows.find((row) => row.quantity === quantity)!;
          if (other.unit === unit && change !== undefined) expect(other.change! + change).toBe(0);
          if (totals[quantity]) expect(first).toEqual(totals[quantity]);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('puts first what an aim reads first, and leaves nothing out', () => {
    const order = (aim?: ComparisonInput['aim']) =>
      compareSessions({ from: heavy, to: light, ...(aim && { aim }) }).rows.map(({ quantity }) => quantity);
    expect(order('rehabilitation').slice(0, 3)).toEqual(['peakLoad', 'volumeLoad', 'restrictionTime']);
    expect(order('transition').slice(0, 3)).toEqual(['peakPercent', 'relativeVolumeLoad', 'restrictionTime']);
    expect(order('performance').slice(0, 3)).toEqual(['peakPercent', 'peakLoad', 'volumeLoad']);
    for (const aim of ['rehabilitation', 'transition', 'performance'] as const) {
      expect([...order(aim)].sort()).toEqual([...order()].sort());
    }
  });

  it('never claims that two sessions are worth the same', () => {
    const { cautions } = compareSessions({ from: heavy, to: light });
    expect(cautions[0]).toMatchObject({ severity: 'caution', code: 'no-equivalence' });
    expect(cautions.map(({ code }) => code)).toContain('restriction-gives-less-strength');
    const text = explain(compareSessions({ from: heavy, to: light }));
    expect(text).not.toMatch(/equivalent|equals|instead of|as good|\bsafe\b/i);
  });

  it('prints a table', () => {
    const lines = explain(compareSessions({ from: heavy, to: light, aim: 'rehabilitation' })).split('\n');
    expect(lines[0]).toBe('TWO SESSIONS COMPARED, FOR REHABILITATION');
    expect(lines.map((line) => line.trim().split(/ {2,}/))).toEqual(
      expect.arrayContaining([
        ['measure', 'from', 'to', 'change', 'kind'],
        ['Peak load', '75 kg', '30 kg', '−45 kg (−60 %)', 'mechanical'],
        ['Peak load as a share of the maximum', '75 %', '30 %', '−45 points (−60 %)', 'mechanical'],
        ['Restriction time', '0:00 min', '6:30 min', '+6:30 min', 'restriction'],
        ['Volume load', '2250 kg', '2250 kg', 'the same', 'mechanical'],
      ]),
    );
  });

  it('names what is wrong in either session', () => {
    const tried = attempt(compareSessions, { from: { ...heavy, tempo: '2' }, to: {}, aim: 'size' } as never);
    expect(tried.ok ? [] : tried.issues.map(({ path, code }) => `${path.join('.')} ${code}`)).toEqual([
      'from.tempo wrong-type',
      'to.restriction missing',
      'to.sets wrong-relation',
      'aim not-one-of',
    ]);
  });
});
