import fc from 'fast-check';
import { mean, sampleStandardDeviation, standardDeviation, sum } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { weekTotals } from '../../src/index.js';
import { expectPlainJson } from '../support/answers.js';

const daysOf = (loads: readonly number[]) => loads.map((loadAu) => ({ loadAu }));
const days = daysOf([300, 0, 450, 0, 500, 600, 0]);
const week = fc.array(fc.integer({ min: 0, max: 1200 }), { minLength: 7, maxLength: 7 });

describe('weekTotals', () => {
  // Source of the expected values: simple-statistics.
  it('agrees with a reference library, by either standard deviation', () => {
    fc.assert(
      fc.property(week, fc.constantFrom('sample' as const, 'population' as const), (loads, deviation) => {
        const { load, monotony, strain, cautions } = weekTotals({ days: daysOf(loads), deviation });
        expectPlainJson({ load, monotony: monotony?.value ?? 0, cautions });
        expect(load.value).toBe(sum(loads));
        const sd = (deviation === 'sample' ? sampleStandardDeviation : standardDeviation)(loads);
        if (sd === 0) {
          expect(monotony ?? strain).toBeUndefined();
          expect(cautions).toHaveLength(1);
        } else {
          expect(monotony!.value / (mean(loads) / sd)).toBeCloseTo(1, 12);
          expect(strain!.value / ((sum(loads) * mean(loads)) / sd || 1)).toBeCloseTo(load.value === 0 ? 0 : 1, 12);
          expect(cautions).toEqual([]);
        }
      }),
    );
  });

  it('adds up the volume load of each limb, with a cuff or without', () => {
    const volumes = days.map((day, index) => ({ ...day, ...(index < 2 && { volumeKg: { leftLeg: 1125.1 } }) }));
    const { limbs } = weekTotals({ days: volumes });
    expect(limbs.map(({ restrictionTime, volumeLoad }) => [restrictionTime.value, volumeLoad?.value])).toEqual([
      [0, 2250.2],
    ]);
    expect(limbs[0]!.volumeLoad).toMatchObject({ unit: 'kg', evidence: 'definition', equation: 'volume-load-of-days' });
    expect(weekTotals({ days: days.map((day) => ({ ...day, volumeKg: { leftLeg: 0 } })) }).limbs).toEqual([]);
  });

  // Own algebra: coupled = 4u / (3 + u) with u the uncoupled ratio.
  it('gives an acute to chronic ratio only when asked, by name, and as a description', () => {
    expect(weekTotals({ days })).not.toHaveProperty('acuteChronicRatio');
    fc.assert(
      fc.property(
        week,
        fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 3, maxLength: 3 }),
        (loads, before) => {
          const asked = (ratio: 'coupled' | 'uncoupled') =>
            weekTotals({ days: daysOf(loads), ratio, earlierWeeksAu: before });
          const u = asked('uncoupled').acuteChronicRatio!.value;
          expect(asked('coupled').acuteChronicRatio!.value).toBeCloseTo((4 * u) / (3 + u), 10);
        },
      ),
    );
    const asked = weekTotals({ days, ratio: 'coupled', earlierWeeksAu: [1000, 900, 1100] });
    expect(asked.cautions.map(({ code }) => code)).toEqual(['ratio-descriptive', 'ratio-coupled']);
    expect(JSON.stringify(asked)).not.toMatch(/\bsafe\b|sweet spot|0\.8|1\.3\b/);
  });
});
