import fc from 'fast-check';
import { compile } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { attempt, correctForCuffWidth, equations, type OneRepMaxEquation, type Symbols } from '../../src/index.js';
import type { OcclusionReadings } from '../../src/pressure/equation.js';
import { quantity, readings } from '../support/arbitraries.js';
import { working } from '../../src/text/index.js';

/** The symbols of a formula with their values, as an independent evaluator wants them. */
const scope = (symbols: Symbols, fields: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(
    Object.entries(symbols).map(([symbol, use]) => [
      symbol,
      typeof use === 'string' ? fields[use] : use.codes[String(fields[use.field])],
    ]),
  );

// A few roundings apart: evaluators may order sums and products differently (4 ε of the largest term, here ≤ 1e4).
const CLOSE = 1e-11;
const expectClose = (a: number, b: number) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(CLOSE * Math.max(1, Math.abs(a)));

// Source of the expected values: the formula text, parsed and evaluated by mathjs.
describe('formula text and code agree', () => {
  for (const equation of equations.occlusionPressure) {
    it(equation.id, () => {
      const formula = compile(equation.formula);
      fc.assert(
        fc.property(readings, (given) => {
          const expected: number = formula.evaluate(scope(equation.symbols, given));
          expectClose(equation.apply(given as Required<OcclusionReadings>), expected);
        }),
      );
    });
  }
  for (const equation of equations.oneRepetitionMaximum as readonly OneRepMaxEquation[]) {
    it(equation.id, () => {
      const formula = compile(equation.formula);
      const most = equation.domain?.to ?? 20;
      fc.assert(
        fc.property(quantity('load'), fc.integer({ min: 1, max: most }), (load, repetitionsToFailure) => {
          const expected: number = formula.evaluate(scope(equation.symbols, { load, repetitionsToFailure }));
          expectClose(equation.apply(load, repetitionsToFailure), expected);
        }),
      );
    });
  }
  it('width correction', () => {
    const widths = [quantity('fromWidthCm'), quantity('toWidthCm')] as const;
    fc.assert(
      fc.property(
        fc.constantFrom('leg', 'arm'),
        fc.double({ min: 201, max: 1000, noNaN: true }),
        fc.double({ min: 25, max: 70, noNaN: true }),
        fc.double({ min: 101, max: 300, noNaN: true }),
        fc.double({ min: 30, max: 100, noNaN: true }),
        ...widths,
        (limb, occlusionMmHg, circumferenceCm, systolicMmHg, diastolicMmHg, fromWidthCm, toWidthCm) => {
          const person = { limb, circumferenceCm, systolicMmHg, diastolicMmHg } as const;
          const result = attempt(correctForCuffWidth, { ...person, occlusionMmHg, fromWidthCm, toWidthCm });
          // Widths too far apart for a useful answer are refused.
          fc.pre(result.ok);
          const answer = result.value;
          expectClose(
            answer.value,
            compile(working(answer)!.formula).evaluate(scope(working(answer)!.symbols, answer.inputs)),
          );
        },
      ),
    );
  });
});

// Own algebra of the forms, as stated beside each equation.
describe('algebra of the equations', () => {
  it('lists at least one equation of every kind, each id once', () => {
    const ids = Object.values(equations).flatMap((list) => list.map(({ id }) => id as string));
    expect(ids.length).toBeGreaterThanOrEqual(6);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
