import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OcclusionReadings } from '../../src/pressure/equation.js';
import { occlusionEquations } from '../../src/pressure/equations.js';
import { errorsOf, judge, keptBy, rank } from '../../src/pressure/judge.js';

const readings = fc.record({
  limb: fc.constantFrom('arm' as const, 'leg' as const),
  circumferenceCm: fc.double({ min: 28, max: 60, noNaN: true }),
  systolicMmHg: fc.double({ min: 100, max: 170, noNaN: true }),
  diastolicMmHg: fc.double({ min: 50, max: 95, noNaN: true }),
  cuffWidthCm: fc.constantFrom(5, 6, 10, 12, 17, 18, 20),
  posture: fc.constantFrom('supine' as const, 'seated' as const, 'standing' as const),
  ageYears: fc.integer({ min: 16, max: 70 }),
  sex: fc.constantFrom('male' as const, 'female' as const),
  paddingCoefficient: fc.constant(0.7),
});
const given = fc.option(
  fc.record({
    circumferenceErrorCm: fc.double({ min: 0.1, max: 2, noNaN: true }),
    systolicErrorMmHg: fc.double({ min: 1, max: 10, noNaN: true }),
  }),
  { nil: undefined },
);
const judged = (of: OcclusionReadings, errors: Parameters<typeof judge>[2]) =>
  occlusionEquations.filter((equation) => !keptBy(equation, of)).map((equation) => judge(equation, of, errors));

// What an equation is ranked by is the error its answer shows: the root of the summed squares of its parts (GUM).
describe('the ranking of equations', () => {
  it('is by the very error that the answer of each shows', () => {
    fc.assert(
      fc.property(readings, given, (of, errors) => {
        for (const one of judged(of, errors)) {
          const parts = errorsOf(one, of, errors).map(({ standardDeviation }) => standardDeviation);
          if (parts.length === 0) expect(one.share).toBe(Infinity);
          // Two orders of adding a handful of doubles: a few units in the last place.
          else expect(one.share / (Math.hypot(...parts) / one.value)).toBeCloseTo(1, 12);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('puts samples that hold the readings first, then the smaller error, and gives a near tie to the better grade', () => {
    const grades = ['published', 'secondary', 'derived', 'unconfirmed', 'practice'];
    fc.assert(
      fc.property(readings, given, (of, errors) => {
        const [first, ...others] = rank(judged(of, errors));
        if (!first) return;
        const alike = others.filter(({ outside }) => outside.length === first.outside.length);
        expect(others.every(({ outside }) => outside.length >= first.outside.length)).toBe(true);
        const least = Math.min(first.share, ...alike.map(({ share }) => share));
        if (least === Infinity) return;
        expect(first.share).toBeLessThanOrEqual(1.1 * least);
        const place = ({ equation }: (typeof alike)[number]): number => grades.indexOf(equation.evidence);
        for (const other of alike.filter(({ share }) => share <= 1.1 * least)) {
          expect(place(first)).toBeLessThanOrEqual(place(other));
          if (place(first) === place(other)) expect(first.share).toBeLessThanOrEqual(other.share);
        }
        const rest = others.map(({ outside, share }) => [outside.length, share] as const);
        for (const [index, [out, share]] of rest.entries()) {
          const next = rest[index + 1];
          if (next) expect(out < next[0] || (out === next[0] && share <= next[1])).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });
});
