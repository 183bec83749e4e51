import jstat from 'jstat';
import { max, mean, min, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { agreement, pairsForLimits } from '../../src/study/index.js';
import { codesOf } from '../support/invariants.js';
import judge from './agreement.json' with { type: 'json' };

const { measured, estimated } = judge;
const Z = 1.959963984540054;

describe('limits of agreement by size', () => {
  // Definition: bias and spread are lines, and the spread is never below 0.
  it.each(['estimated', 'mean'] as const)(
    'lie on both lines, at the least, the mean and the greatest size: %s',
    (size) => {
      const { bySize } = agreement(measured, estimated, { size });
      const sizes = size === 'mean' ? measured.map((x, row) => (x + estimated[row]!) / 2) : estimated;
      const { bias, spread, limits } = bySize!;
      expect(bySize!.size).toBe(size);
      [min(sizes), mean(sizes), max(sizes)].forEach((at, index) => {
        const middle = bias.intercept + bias.slope * at;
        const half = Z * Math.max(0, spread.intercept + spread.slope.value * at);
        expect(limits[index]!.size).toBeCloseTo(at, 9);
        expect(limits[index]!.lower).toBeCloseTo(middle - half, 9);
        expect(limits[index]!.upper).toBeCloseTo(middle + half, 9);
      });
    },
  );

  it('close where the spread would be below 0', () => {
    // Differences of ±8, ±4 and ±1 at sizes that rise: the line of the spread falls below 0 at the end.
    const sizes = [100, 101, 110, 111, 120, 121, 150, 151];
    const apart = [8, -8, 4, -4, 1, -1, 0.1, -0.1];
    const { limits } = agreement(
      sizes.map((x, row) => x - apart[row]!),
      sizes,
    ).bySize!;
    const widths = limits.map(({ lower, upper }) => upper - lower);
    expect([widths[0]! > 20, widths[2]]).toEqual([true, 0]);
  });
});

describe('equivalence', () => {
  const pairs = (apart: readonly number[]) =>
    [apart.map((_, row) => 150 + row), apart.map((by, row) => 150 + row + by)] as const;
  const apart = [2, 3, 1, 4, 2.5, 1.5, 3.5, 2];

  // Source: jstat, the distribution of Student.
  it('is the 90 % interval within the margin', () => {
    const n = apart.length;
    const error = sampleStandardDeviation(apart) / Math.sqrt(n);
    const half = jstat.studentt.inv(0.95, n - 1) * error;
    for (const margin of [2, mean(apart) + half * 0.999, mean(apart) + half * 1.001, 10]) {
      const [x, y] = pairs(apart);
      const { equivalence } = agreement(x, y, { margin });
      expect(equivalence!.margin).toBe(margin);
      expect(equivalence!.upper - equivalence!.lower).toBeCloseTo(2 * half, 6);
      const chance = 1 - jstat.studentt.cdf((margin - mean(apart)) / error, n - 1);
      expect(equivalence!.chance).toBeCloseTo(chance, 6);
      expect(equivalence!.equivalent).toBe(margin > mean(apart) + half);
    }
  });

  it('is certain where all differ by as much', () => {
    const [x, y] = pairs([2, 2, 2, 2]);
    const of = (margin: number) => agreement(x, y, { margin }).equivalence!;
    expect([of(3).chance, of(3).equivalent, of(1).chance, of(1).equivalent, of(2).chance]).toEqual([
      0,
      true,
      1,
      false,
      1,
    ]);
  });
});

describe('cautions of agreement', () => {
  it('name few people, differences that are not normal, and a bias that changes with size', () => {
    const rows = (count: number) => Array.from({ length: count }, (_, row) => 100 + row);
    /** Quantiles of a normal distribution, in an order of no meaning. */
    const wave = (row: number): number => 3 * jstat.normal.inv((((row * 37) % 60) + 0.5) / 60, 0, 1);
    const cautionsOf = (count: number, by: (row: number) => number) =>
      codesOf(
        agreement(
          rows(count).map((x, row) => x + by(row)),
          rows(count),
        ).cautions,
      );
    expect(cautionsOf(9, wave)).toContain('few-people');
    expect(cautionsOf(10, wave)).not.toContain('few-people');
    expect(cautionsOf(60, wave)).not.toContain('differences-not-normal');
    expect(cautionsOf(60, (row) => (row % 20 === 0 ? 40 : wave(row)))).toContain('differences-not-normal');
    const changing = cautionsOf(60, (row) => row / 2 + wave(row)).filter(
      (code) => !cautionsOf(60, wave).includes(code),
    );
    expect(changing).toHaveLength(1);
    expect(cautionsOf(60, (row) => -row / 3 + wave(row))).toEqual(expect.arrayContaining(changing));
  });
});

describe('pairs for limits of a width', () => {
  // Source: jstat; the standard error of a limit by the delta method, as in its doc comment.
  it('are the fewest that give it', () => {
    for (const [standardDeviation, halfWidth] of [
      [10, 4],
      [10, 2.5],
      [3, 5],
      [25, 3],
    ] as const) {
      const half = (n: number): number =>
        jstat.studentt.inv(0.975, n - 1) * standardDeviation * Math.sqrt(1 / n + Z ** 2 / (2 * (n - 1)));
      const pairs = pairsForLimits({ standardDeviation, halfWidth });
      expect(half(pairs)).toBeLessThanOrEqual(halfWidth);
      if (pairs > 3) expect(half(pairs - 1)).toBeGreaterThan(halfWidth);
    }
    expect(() => pairsForLimits({ standardDeviation: 1000, halfWidth: 0.1 })).toThrow(
      /halfWidth must be at least 3\.3/,
    );
  });
});
