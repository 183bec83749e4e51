import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equations, estimateOneRepMax, testedOneRepMax, trainingLoad } from '../../src/index.js';
import { expectPlainJson } from '../support/answers.js';
import { quantity } from '../support/arbitraries.js';

/** Equations that answer any number of repetitions up to 20. */
const ids = equations.oneRepetitionMaximum.filter(({ lifts }) => lifts === 'any').map(({ id }) => id);

describe('estimateOneRepMax', () => {
  it('answers any possible set in plain JSON, and never below the load lifted', () => {
    const reserve = fc.constantFrom(0, 0.5, 1, 2, 5, 10);
    fc.assert(
      fc.property(
        quantity('load'),
        fc.integer({ min: 1, max: 10 }),
        reserve,
        fc.constantFrom(...ids),
        (load, repetitions, repetitionsInReserve, equation) => {
          const answer = estimateOneRepMax({ load, repetitions, repetitionsInReserve, equation });
          expectPlainJson(answer);
          expect(answer.value).toBeGreaterThanOrEqual(load);
        },
      ),
    );
  });

  it('refuses more than 20 repetitions to failure, those in reserve counted, and half of one', () => {
    expect(estimateOneRepMax({ load: 60, repetitions: 20, equation: 'epley-1985' }).value).toBeCloseTo(100, 9);
    expect(() => estimateOneRepMax({ load: 60, repetitions: 14, repetitionsInReserve: 7 })).toThrow(/at most 20/);
    expect(() => estimateOneRepMax({ load: 60, repetitions: 6.5 })).toThrow(/whole/);
  });
});

describe('testedOneRepMax', () => {
  // Source: Sports Med Open 2020;6:31, median coefficient of variation 4.2 %; single-test band ± 8.232 % by arithmetic.
  it('is taken as it is, with the published retest error', () => {
    const answer = testedOneRepMax({ load: 100 });
    expect(answer.value).toBe(100);
    expect(answer.upper!.toFixed(3)).toBe('108.232');
  });
});

describe('trainingLoad', () => {
  // Source: reference text, 5 lb stack step floored under 7.4 kg: 6.80388555 kg, 18.39 % of 37 kg. Factors exact.
  it('works in pounds of a maximum in kilograms', () => {
    const load = trainingLoad({
      oneRepMax: testedOneRepMax({ load: 37 }),
      percentOneRepMax: 20,
      unit: 'lb',
      step: 5,
      rounding: 'down',
    });
    expect(load).toMatchObject({ value: 15, unit: '[lb_av]' });
    expect(load.reached!.percentOneRepMax.toFixed(2)).toBe('18.39');
  });

  it('is within half a step of what is asked, a whole number of steps, and JSON', () => {
    const step = fc.constantFrom(0.1, 0.5, 1, 1.25, 2.5, 5);
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 3000 }),
        fc.integer({ min: 10, max: 100 }),
        step,
        (tenths, percentOneRepMax, size) => {
          const load = trainingLoad({
            oneRepMax: testedOneRepMax({ load: tenths / 10 }),
            percentOneRepMax,
            step: size,
          });
          expectPlainJson(load);
          const wanted = (tenths * percentOneRepMax) / 1000;
          // Half a step, and the 12 digits that a double enters decimals with.
          expect(Math.abs(load.value - wanted)).toBeLessThanOrEqual(size / 2 + 1e-9);
          expect(Math.abs(load.value / size - Math.round(load.value / size))).toBeLessThan(1e-9);
        },
      ),
    );
  });
});
