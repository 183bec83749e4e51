import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  attempt,
  bodyMassLoad,
  equations,
  estimateOneRepMax,
  estimateRelativeLoad,
  loadPlates,
  percentAtRepetitions,
  repetitionsAtPercent,
  repetitionsInReserveFromRpe,
  testedOneRepMax,
  trainingLoad,
  type Answer,
  type OneRepMaxEquation,
} from '../../src/index.js';
import { working } from '../../src/text/index.js';

// Evaluators may order sums and products differently, and conversions take a double in at 12 significant digits.
const CLOSE = 1e-10;
const expectClose = (a: number, b: number) =>
  expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(CLOSE * Math.max(1, Math.abs(a)));

/** What an answer’s own formula gives for its own inputs, by an independent evaluator. */
function evaluated(answer: Answer): number {
  const { formula, symbols } = working(answer)!;
  const { inputs } = answer;
  const scope = Object.fromEntries(
    Object.entries(symbols).map(([symbol, field]) => {
      const given = inputs[field as string]!;
      if (typeof given === 'string') return [symbol, evaluate(given) as number];
      return [symbol, typeof given === 'number' ? given : (given as Answer).value];
    }),
  );
  return evaluate(formula, scope) as number;
}

const all: readonly OneRepMaxEquation[] = equations.oneRepetitionMaximum;
const load = fc.double({ min: 20, max: 400, noNaN: true });
const unit = fc.constantFrom('kg' as const, 'lb' as const);

// Source of the expected values: the formula text of the answer, parsed and evaluated by mathjs.
describe('the formula of an answer gives its value', () => {
  it.each(all.map(({ id }) => id))('%s, in kg and in lb', (id) => {
    const { domain, unit: own } = all.find((each) => each.id === id)!;
    const most = domain?.to ?? 20;
    const r = fc.integer({ min: Math.max(domain?.from ?? 2, 2), max: most });
    let answered = 0;
    fc.assert(
      fc.property(load, r, unit, (w, repetitions, inUnit) => {
        const result = attempt(estimateOneRepMax, { load: w, repetitions, unit: inUnit, equation: id as 'auto' });
        // A regression refuses a set whose load is above its answer; the other equations refuse nothing here.
        if (result.ok) {
          answered += 1;
          expectClose(result.value.value, evaluated(result.value));
        } else expect(own).toBeDefined();
      }),
    );
    expect(answered).toBeGreaterThan(10);
  });

  it('repetitions at a percentage, and back', () => {
    const ids = all.filter(({ inverse }) => inverse).map(({ id }) => id);
    const answered: Record<string, number> = {};
    fc.assert(
      fc.property(fc.constantFrom(...ids), fc.double({ min: 40, max: 99, noNaN: true }), (id, percentOneRepMax) => {
        const result = attempt(repetitionsAtPercent, { percentOneRepMax, equation: id as 'brzycki-1993' });
        if (!result.ok) return;
        answered[id] = (answered[id] ?? 0) + 1;
        expectClose(result.value.value, evaluated(result.value));
        expectClose(100 / all.find((each) => each.id === id)!.apply(1, result.value.value), percentOneRepMax);
      }),
      { numRuns: 100 * ids.length },
    );
    for (const id of ids) expect(answered[id], id).toBeGreaterThan(10);
  });

  it('percentage at a number of repetitions', () => {
    const ids = all.filter((each) => !each.unit).map(({ id }) => id);
    fc.assert(
      fc.property(fc.constantFrom(...ids), fc.integer({ min: 5, max: 16 }), (id, repetitions) => {
        const answer = percentAtRepetitions({ repetitions, equation: id as 'brzycki-1993' });
        expectClose(answer.value, evaluated(answer));
      }),
    );
  });

  it('percentage by velocity', () => {
    // From a mean of 0.25 m/s to a peak of 2 m/s; where an equation gives no answer there, it refuses.
    const velocity = fc.double({ min: 0.25, max: 2, noNaN: true });
    const answered: Record<string, number> = {};
    const ids = equations.relativeLoad.filter(({ reading }) => reading === 'velocityMPerS').map(({ id }) => id);
    fc.assert(
      fc.property(fc.constantFrom(...ids), velocity, (equation, velocityMPerS) => {
        const result = attempt(estimateRelativeLoad, { equation, velocityMPerS });
        if (!result.ok) return;
        answered[equation] = (answered[equation] ?? 0) + 1;
        expectClose(result.value.value, evaluated(result.value));
      }),
      { numRuns: 100 * ids.length },
    );
    for (const id of ids) expect(answered[id], id).toBeGreaterThan(10);
    const rated = estimateRelativeLoad({ equation: 'parallel-squat-omni-2017', omniRating: 7 });
    expectClose(rated.value, evaluated(rated));
  });

  it('training load, of body mass too, in kg and in lb', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 400, noNaN: true }), unit, unit, unit, (maximum, of, to, body) => {
        const share = bodyMassLoad({ movement: 'pull-up', sex: 'male', bodyMass: 40, unit: body });
        const oneRepMax = testedOneRepMax({ load: maximum * (of === 'lb' ? 2.3 : 1), unit: of });
        const answer = trainingLoad({ oneRepMax, percentOneRepMax: 90, unit: to, bodyMassLoad: share });
        expectClose(answer.value, evaluated(answer));
      }),
    );
  });

  it('weight on the bar, and reserve from a rating', () => {
    const plates = [{ mass: 20 }, { mass: 10 }, { mass: 1.25 }, { mass: 0.1 }];
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 300 }), (target) => {
        const answer = loadPlates({ target, bar: 20, plates });
        expectClose(answer.value, evaluated(answer));
      }),
    );
    const reserve = repetitionsInReserveFromRpe({ reserveRpe: 7.5 });
    expect(reserve.value).toBe(evaluated(reserve));
  });
});
