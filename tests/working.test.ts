import { describe, expect, it } from 'vitest';
import * as working from '../docs/working/equation-errors.js';
import { cubics } from '../docs/working/cubic-form.js';
import { up } from '../docs/working/pooled-curve.js';
import {
  DAY_DEVIATION,
  MEASURING_DEVIATION,
  OTHER_SIDE_DEVIATION,
  SIDE_DEVIATION,
} from '../src/pressure/person-variation.js';
import { thigh2015Equation } from '../src/pressure/equations/thigh-2015.js';
import { thighIndex12Equation } from '../src/pressure/equations/thigh-index.js';
import { widthRatioEquation } from '../src/pressure/equations/width-ratio.js';
import { overReading, standardDeviation } from '../docs/working/full-squat-velocity.js';
import coverage from '../docs/working/coverage.json' with { type: 'json' };
import { equations, type RelativeLoadEquation } from '../src/index.js';

const all = <K extends string>(shares: Record<K, number>) =>
  Object.fromEntries(Object.entries<number>(shares).map(([kind, share]) => [kind, up(share)]));

// The constants of grade `derived` are held to the committed working, errors rounded up to two digits.
describe('derived errors of the equations used by name', () => {
  it('of the width-ratio formula, by kind of cuff', () => {
    expect(working.widthRatioMeans).toHaveLength(widthRatioEquation.error.means);
    expect(widthRatioEquation.error.share).toEqual(all(working.widthRatioShare));
  });
  it('of the thigh index', () => {
    expect(thighIndex12Equation.error).toMatchObject({ share: up(working.indexShare), means: working.indexCount });
  });
  it('of the thigh regression of 2015, from a sample without a pressure limit', () => {
    expect(thigh2015Equation.error.standardDeviationMmHg).toBe(working.thigh2015Deviation);
  });
  it('of another day, another side and of one measurement', () => {
    const { day, side, otherSide, measuring } = working.withinPerson;
    const shipped = [DAY_DEVIATION, SIDE_DEVIATION, OTHER_SIDE_DEVIATION, MEASURING_DEVIATION];
    expect(shipped).toEqual([day, side, otherSide, measuring].map((deviation) => Number(deviation.toFixed(1))));
  });
  it('counts every pair of widths and of postures once', () => {
    expect(working.widthPairs).toHaveLength(6);
    expect(working.posturePairs).toHaveLength(5);
  });
});

// Own algebra: of 4000 studies a 95 % interval holds the truth in 95 % ± 4 standard errors, 1.4 points.
describe('coverage in simulated studies', () => {
  const fails = /\((wrong|wrong for estimates|assumption fails|approximate|too narrow for few people)\)$/;
  const rows = [...coverage.agreement, ...coverage.equation];
  it.each(rows.filter(({ what }) => !fails.test(what)))('$what', ({ percent }) => {
    expect(coverage.runs).toBe(4000);
    for (const share of percent) if (share !== null) expect(Math.abs(share - 95)).toBeLessThanOrEqual(1.4);
  });
  it('shows what each broken assumption costs', () => {
    expect(rows.filter(({ what }) => fails.test(what)).length).toBeGreaterThan(6);
  });
});

describe('form of the equations of 2024', () => {
  it.each(cubics)('$id', ({ atOne, rises, furthestFromEarlier, evidence }) => {
    expect(evidence).toBe('derived');
    expect(Math.round(100 * atOne)).toBeGreaterThanOrEqual(100);
    expect(Math.round(100 * atOne)).toBeLessThanOrEqual(101);
    expect(rises).toBe(true);
    expect(furthestFromEarlier).toBeLessThan(0.1);
  });
  it('are six', () => expect(cubics).toHaveLength(6));
});

describe('error of the full squat by velocity', () => {
  const squats: readonly RelativeLoadEquation[] = equations.relativeLoad.filter(({ id }) =>
    id.startsWith('full-squat-'),
  );
  it('is half of the largest over-reading, in all three forms', () => {
    expect(Math.max(...overReading.map(({ points }) => points))).toBe(2 * standardDeviation);
    expect(squats.map(({ error }) => error)).toEqual(
      Array.from({ length: 3 }, () => ({ standardDeviation, evidence: 'derived' })),
    );
  });
});
