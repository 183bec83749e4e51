import { compile } from 'mathjs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { targetCuffPressure } from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import { columns, equationFromFit, estimateWith, fitOcclusionEquation } from '../../src/study/index.js';
import { readings } from '../support/arbitraries.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { fitInput, fittedExample } from '../support/fitted.js';
import judge from './judge.json' with { type: 'json' };

const person = {
  limb: 'leg',
  circumferenceCm: 55,
  systolicMmHg: 120,
  diastolicMmHg: 72,
  cuffWidthCm: 11,
  posture: 'seated',
  ageYears: 30,
  sex: 'female',
} as const;

describe('fitOcclusionEquation', () => {
  // Source: R, lm(); tests/study/judge.R. Coefficients are rounded to eight digits.
  it('gives what R gives', () => {
    const { fit: expected } = judge;
    const { intercept, terms, residualMmHg, leaveOneOutMmHg, rSquared, people, degreesOfFreedom } =
      fitOcclusionEquation(fitInput);
    const all = [intercept, ...terms];
    const near = (got: number, want: number, share: number) =>
      expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(share * Math.abs(want));
    all.forEach(({ coefficient, standardError, lower, upper }, index) => {
      near(coefficient, expected.coefficients[index]!, 5e-8);
      near(standardError, expected.standardErrors[index]!, 1e-10);
      near(lower, expected.lower[index]!, 1e-9);
      near(upper, expected.upper[index]!, 1e-9);
    });
    near(residualMmHg, expected.residual, 1e-11);
    near(leaveOneOutMmHg, expected.leaveOneOut, 1e-11);
    near(rSquared, expected.rSquared, 1e-11);
    terms.forEach(({ inflation }, index) => near(inflation, expected.inflation[index]!, 1e-10));
    expect([people, degreesOfFreedom]).toEqual([60, 54]);
  });

  // Own algebra: leaving out each row and fitting again, instead of the shortcut by leverages.
  it('has the leave-one-out error of really leaving each one out', () => {
    const { rows, terms } = fitInput;
    const errors = rows.map((row, out) => {
      const others = rows.filter((_, index) => index !== out);
      const fit = fitOcclusionEquation({ ...fitInput, rows: others });
      return row.valueMmHg - equationFromFit(fit).apply({ ...person, ...row } as never);
    });
    expect(terms.length).toBe(5);
    const rootMeanSquare = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
    expect(Math.abs(rootMeanSquare - fittedExample.leaveOneOutMmHg)).toBeLessThan(1e-4);
  });

  it('is plain JSON, survives it, and changes nothing of its input', () => {
    expectPlainJson(fitOcclusionEquation(frozen(structuredClone(fitInput))));
    const back = JSON.parse(JSON.stringify(fittedExample)) as object;
    expect(estimateWith(back, person)).toEqual(estimateWith(fittedExample, person));
  });

  // Source: the formula text, parsed and evaluated by mathjs.
  it('has a formula text that is the equation', () => {
    const { formula, symbols } = fittedExample;
    const evaluate = compile(formula);
    const { apply } = equationFromFit(fittedExample);
    fc.assert(
      fc.property(readings, (given) => {
        const scope = Object.fromEntries(
          Object.entries(symbols).map(([symbol, use]) => [
            symbol,
            typeof use === 'string' ? given[use as 'ageYears'] : use.codes[given.sex],
          ]),
        );
        expect(
          Math.abs(
            apply({ ...given, side: 'left', circumferenceSite: 'mid-limb' }) - (evaluate.evaluate(scope) as number),
          ),
        ).toBeLessThan(1e-9);
      }),
    );
  });

  it('is taken where a published equation is: one person, many, a target, an explanation', () => {
    const lop = estimateWith(fittedExample, person);
    expect(lop).toMatchObject({ equation: 'lab-thigh', evidence: 'derived', kind: 'occlusion-pressure' });
    // Symmetric, in mmHg; wider than the residual deviation, by t and by the leverage of the person.
    expect(lop).not.toHaveProperty('scale');
    expect(lop.standardDeviation).toBeGreaterThan(fittedExample.residualMmHg);
    expect(lop.upper! - lop.value).toBeCloseTo(lop.value - lop.lower!, 9);
    const many = columns({
      ...person,
      answer: 'occlusion-pressure',
      equation: fittedExample,
      circumferenceCm: [55, 60],
    });
    expect([many.value[0], many.lower[0], many.upper[0]]).toEqual([lop.value, lop.lower, lop.upper]);
    expect(targetCuffPressure({ occlusion: lop, percentLop: 50 }).evidence).toBe('derived');
    expect(explain(lop)).toContain('lab-thigh');
    expect(estimateWith(fittedExample, { ...person, circumferenceCm: 90 }).cautions.map(({ code }) => code)).toContain(
      'outside-fitted-range',
    );
    expect(() => estimateWith(fittedExample, { ...person, cuffWidthCm: 18 })).toThrow(/cuffWidthCm must be 11 cm/);
    expect(() => estimateWith(fittedExample, { ...person, limb: 'arm', circumferenceCm: 30 })).toThrow(/limb must be/);
  });

  it('fits a width as a term, for any cuff', () => {
    const wide = fitOcclusionEquation({
      id: 'any-cuff',
      limb: 'leg',
      posture: 'supine',
      terms: ['cuffWidthCm'],
      rows: Array.from({ length: 12 }, (_, row) => ({
        valueMmHg: 250 - 6 * (5 + row) + (row % 3),
        cuffWidthCm: 5 + row,
      })),
    });
    expect(wide.cuffWidthCm).toBe('any');
    expect(estimateWith(wide, { ...person, cuffWidthCm: 7 }).value).toBeCloseTo(209, -1);
  });
});
