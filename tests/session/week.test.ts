import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { mean, sampleStandardDeviation, standardDeviation, sum } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { attempt, weekTotals, type Answer, type WeekInput } from '../../src/index.js';
import { explain, working } from '../../src/text/index.js';
import { expectPlainJson } from '../support/answers.js';

const daysOf = (loads: readonly number[]) => loads.map((loadAu) => ({ loadAu }));
const days = daysOf([300, 0, 450, 0, 500, 600, 0]);
const issues = (given: object) => {
  const tried = attempt(weekTotals, given as WeekInput);
  return tried.ok ? [] : tried.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
};
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

  it('names the standard deviation it took', () => {
    const sample = weekTotals({ days }).monotony!;
    const population = weekTotals({ days, deviation: 'population' }).monotony!;
    expect(sample).toMatchObject({ equation: 'monotony-sample', inputs: { deviation: 'sample' } });
    expect(population).toMatchObject({ equation: 'monotony-population', inputs: { deviation: 'population' } });
    expect(explain(sample)).toContain('divided by n − 1');
    // √(7/6), own algebra.
    expect(population.value / sample.value).toBeCloseTo(Math.sqrt(7 / 6), 12);
  });

  it('says that what is undefined is undefined', () => {
    for (const load of [0, 0.1, 400, 14_400]) {
      const totals = weekTotals({ days: daysOf(Array<number>(7).fill(load)) });
      expect(totals).not.toHaveProperty('monotony');
      expect(totals).not.toHaveProperty('strain');
      const code = load === 0 ? 'monotony-undefined-rest' : 'monotony-undefined-equal';
      expect(totals.cautions.map((one) => one.code)).toEqual([code]);
    }
  });

  it('adds up the restriction time of each limb, and sessions', () => {
    const { limbs, sessions } = weekTotals({
      days: days.map((day, index) => ({
        ...day,
        restrictedS: { leftLeg: day.loadAu > 0 ? 390.1 : 0, ...(index === 2 && { rightArm: 240 }) },
        ...(index === 4 && { sessions: 2, restrictedSessions: 1 }),
      })),
    });
    expect(limbs.map(({ limb, side, restrictionTime }) => [side, limb, restrictionTime.value])).toEqual([
      ['right', 'arm', 240],
      ['left', 'leg', 1560.4],
    ]);
    expect(sessions.value).toBe(5);
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

  it('has formulas that give its values', () => {
    const totals = weekTotals({ days, ratio: 'uncoupled', earlierWeeksAu: [1000, 900, 1100] });
    for (const answer of [totals.load, totals.monotony!, totals.strain!, totals.acuteChronicRatio!]) {
      const scope = Object.fromEntries(
        Object.entries(working(answer)!.symbols).map(([symbol, field]) => {
          const given = answer.inputs[field as string]!;
          return [symbol, typeof given === 'object' ? (given as Answer).value : evaluate(String(given))];
        }),
      );
      expect(evaluate(working(answer)!.formula, scope)).toBeCloseTo(answer.value, 8);
    }
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

  it.each([
    [{}, ['days missing']],
    [{ days: days.slice(1) }, ['days wrong-relation']],
    [{ days: [...days, { loadAu: 0 }] }, ['days wrong-relation']],
    [{ days: [] }, ['days wrong-type']],
    [{ days: days.map(() => ({})) }, days.map((_, index) => `days.${index}.loadAu missing`)],
    [{ days: [{ loadAu: -1 }, ...days.slice(1)] }, ['days.0.loadAu out-of-range']],
    [
      { days: [{ loadAu: 0, restrictedS: { leftFoot: 9 } }, ...days.slice(1)] },
      ['days.0.restrictedS.leftFoot unknown-field'],
    ],
    // Two sessions and restriction: one or both?
    [
      { days: [{ loadAu: 300, sessions: 2, restrictedS: { leftLeg: 300 } }, ...days.slice(1)] },
      ['days.0.restrictedSessions missing'],
    ],
    [
      { days: [{ loadAu: 300, restrictedSessions: 0, restrictedS: { leftLeg: 300 } }, ...days.slice(1)] },
      ['days.0.restrictedSessions wrong-relation'],
    ],
    [{ days, deviation: 'n-1' }, ['deviation not-one-of']],
    [{ days, ratio: 'coupled' }, ['earlierWeeksAu missing']],
    [{ days, earlierWeeksAu: [1, 2, 3] }, ['earlierWeeksAu wrong-relation']],
    [{ days, ratio: 'coupled', earlierWeeksAu: [1, 2] }, ['earlierWeeksAu wrong-relation']],
    [{ days, ratio: 'coupled', earlierWeeksAu: [1, 2, NaN] }, ['earlierWeeksAu.2 not-finite']],
  ])('refuses %#', (given, expected) => expect(issues(given)).toEqual(expected));
});
