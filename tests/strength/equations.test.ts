import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import maxima from '../../src/checks/one-repetition-maximum.json' with { type: 'json' };
import shares from '../../src/checks/relative-load.json' with { type: 'json' };
import {
  attempt,
  compareOneRepMaxEquations,
  equations,
  estimateOneRepMax,
  kilogramsToPounds,
  percentAtRepetitions,
  poundsToKilograms,
  trainingLoad,
  type OneRepMaxEquation,
  type OneRepMaxInput,
} from '../../src/index.js';
import { expectPlainJson } from '../support/answers.js';

const all: readonly OneRepMaxEquation[] = equations.oneRepetitionMaximum;
const byRepetitions = all.filter(({ unit }) => unit === undefined);
const by = (equation: string, rest: Omit<OneRepMaxInput, 'equation'>) =>
  estimateOneRepMax({ ...rest, equation } as OneRepMaxInput);
/** Repetitions an equation answers. */
const span = ({ domain }: OneRepMaxEquation) => ({
  from: Math.max(2, domain?.from ?? 2),
  to: domain?.to ?? 20,
});

const REASONS = {
  'longest-set': /the longest set/,
  'no-repetition-term': /no term for repetitions/,
  'turns-over': /turns over/,
};

describe('every equation', () => {
  it('has an id of its own, a check value, a sample and a source', () => {
    const ids = [...all, ...equations.relativeLoad].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const checked = new Set([
      ...maxima.rows.map((row) => row.equation),
      ...shares.rows.map((row) => row.inputs.equation),
    ]);
    expect([...checked].sort()).toEqual([...ids].sort());
    for (const { sample, sources, lifts, unit, inverse } of all) {
      expect(sample).not.toBe('');
      expect(sources.length).toBeGreaterThan(0);
      if (unit) expect(lifts).not.toBe('any');
      if (unit) expect(inverse).toBeUndefined();
    }
  });

  it('by repetitions: never below the load, more for more repetitions, and the load itself for one', () => {
    for (const equation of byRepetitions) {
      const { from, to } = span(equation);
      for (let r = from; r < to; r += 1)
        expect(equation.apply(1, r + 1), equation.id).toBeGreaterThan(equation.apply(1, r));
      expect(equation.apply(1, from)).toBeGreaterThanOrEqual(1);
      expect(by(equation.id, { load: 97.5, repetitions: 1 }).value).toBe(97.5);
    }
  });

  // 20: the longest set of the published tests (3 to 20RM, J Strength Cond Res 2006;20(4):838–842). A reference text
  // says of longer ones: out of range, not a number; 20 kg done 36 times would be 720 kg by Brzycki.
  it('is refused outside its domain, and above 20 repetitions, with the reason', () => {
    let refused = 0;
    for (const { id, domain } of all) {
      const few = domain?.from !== undefined && domain.from > 2 ? [domain.from - 1] : [];
      for (const repetitions of [(domain?.to ?? 20) + 1, 21, 36, 40, ...few]) {
        const result = attempt(estimateOneRepMax, { load: 60, repetitions, equation: id as 'auto' });
        expect(result, id).toMatchObject({ ok: false, issues: [{ path: ['repetitions'] }] });
        if (!result.ok) expect(result.issues[0]!.message).toMatch(REASONS[domain?.reason ?? 'longest-set']);
        refused += 1;
      }
    }
    expect(refused).toBeGreaterThan(4 * all.length);
  });

  // Own algebra: a regression of a load in another unit is that of the load in its own, carried back.
  it('answers the same in kg and in lb, the intercept carried with it', () => {
    const load = fc.double({ min: 30, max: 300, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...all), load, (equation, kilograms) => {
        const repetitions = Math.max(span(equation).from, 5) + (equation.domain?.from === 7 ? 1 : 0);
        const inKg = attempt(estimateOneRepMax, { load: kilograms, repetitions, equation: equation.id as 'auto' });
        if (!inKg.ok) return;
        const inLb = by(equation.id, { load: kilogramsToPounds(kilograms), repetitions, unit: 'lb' });
        expect(Math.abs(poundsToKilograms(inLb.value) / inKg.value.value - 1)).toBeLessThan(1e-10);
        expect(Math.abs(poundsToKilograms(inLb.standardDeviation!) / inKg.value.standardDeviation! - 1)).toBeLessThan(
          1e-10,
        );
      }),
    );
  });

  it('load to maximum to load comes back to the last digit that a load has', () => {
    fc.assert(
      fc.property(fc.constantFrom(...byRepetitions), fc.integer({ min: 1, max: 20_000 }), (equation, tenths) => {
        const { from, to } = span(equation);
        for (const repetitions of [from, Math.min(to, 10), Math.min(to, 20)]) {
          const load = tenths / 10;
          const oneRepMax = by(equation.id, { load, repetitions });
          const percentOneRepMax = percentAtRepetitions({ repetitions, equation: equation.id as 'brzycki-1993' }).value;
          // Maximum and percentage are each brought to 12 digits, so that ten of their product are sure.
          expect(Number(trainingLoad({ oneRepMax, percentOneRepMax }).value.toPrecision(10))).toBe(load);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('errors and cautions', () => {
  it('takes the published error of an equation, in its own unit', () => {
    // Standard error of estimate 2.5 kg (JEPonline 2000;3(3)), the equation being in lb.
    const press = by('chest-press-women-2000', { load: 60, repetitions: 8, unit: 'lb' });
    expect(press.standardDeviation).toBe(kilogramsToPounds(2.5));
    expect(press.errors).toMatchObject([{ part: 'equation', evidence: 'published' }]);
    // Coefficient of variation below 3.3 % (J Strength Cond Res 2006;20(4)), up to 20 repetitions.
    const cubic = by('postmenopausal-2006', { load: 40, repetitions: 18 });
    expect(cubic.standardDeviation! / cubic.value).toBeCloseTo(0.033, 12);
    expect(by('wathan-1994', { load: 40, repetitions: 18 })).not.toHaveProperty('standardDeviation');
    expect(by('wathan-1994', { load: 40, repetitions: 8 }).errors).toMatchObject([{ evidence: 'derived' }]);
  });
});

describe('compareOneRepMaxEquations', () => {
  const set = { load: 80, repetitions: 8, lift: 'bench-press', sex: 'male' } as const;
  it('puts every equation on one side or the other, and answers as each by name', () => {
    const compared = compareOneRepMaxEquations(set);
    expectPlainJson(compared);
    const ids = [...compared.applying, ...compared.notApplying].map(({ equation }) => equation);
    expect(ids.sort()).toEqual(all.map(({ id }) => id).sort());
    for (const { equation, answer, bias } of compared.applying) {
      expect(answer).toEqual(by(equation, set));
      expect(bias.length).toBeGreaterThan(0);
    }
    for (const { reasons } of compared.notApplying) expect(reasons.length).toBeGreaterThan(0);
    const values = compared.applying.map(({ answer }) => answer.value);
    expect([compared.lowest, compared.highest]).toEqual([Math.min(...values), Math.max(...values)]);
    expect(compared.chosen).toBe(estimateOneRepMax(set).equation);
  });

  it('is one value for one repetition, and refuses a set longer than any that was tested', () => {
    expect(compareOneRepMaxEquations({ load: 60, repetitions: 1 })).toMatchObject({
      lowest: 60,
      highest: 60,
      spreadPercent: 0,
    });
    expect(() => compareOneRepMaxEquations({ load: 60, repetitions: 21 })).toThrow(/longest set/);
  });
});
