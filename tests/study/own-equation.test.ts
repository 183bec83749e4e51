import { describe, expect, it } from 'vitest';
import { calibrateOcclusionPressure, measuredOcclusionPressure, targetCuffPressure } from '../../src/index.js';
import {
  columns,
  equationFromFit,
  estimateWith,
  fitOcclusionEquation,
  recalibrateOcclusionEquation,
  type FitRow,
} from '../../src/study/index.js';
import { cite } from '../../src/text/index.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { expectDigits } from '../support/digits.js';
import { fitInput, recalibrateInput } from '../support/fitted.js';
import { codesOf } from '../support/invariants.js';
import judge from './own-equation.json' with { type: 'json' };

const place = { limb: 'leg', posture: 'seated', cuffWidthCm: 11 } as const;
const people = [
  { circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 72, ageYears: 30, sex: 'female' },
  { circumferenceCm: 44, systolicMmHg: 104, diastolicMmHg: 62, ageYears: 20, sex: 'male' },
  { circumferenceCm: 70, systolicMmHg: 160, diastolicMmHg: 88, ageYears: 65, sex: 'female' },
] as const;
const { rows } = fitInput;
const fit = fitOcclusionEquation({ ...fitInput, diagnostics: true });

// Source: R, tests/study/own-equation.R. The coefficients are rounded to eight digits, so the values agree to as many.
describe('a fit of your own', () => {
  it('has the diagnostics of R', () => {
    const { diagnostics } = fit;
    expectDigits(diagnostics!.residualsMmHg, judge.residuals, 9);
    expectDigits(diagnostics!.leverages, judge.leverages, 11);
    expectDigits(diagnostics!.studentized, judge.studentized, 9);
    expectDigits(diagnostics!.cooksDistances, judge.cooksDistances, 9);
    expectDigits(diagnostics!.covariance.flat(), judge.covariance, 9);
    expectDigits(
      diagnostics!.robust.map(({ standardError }) => standardError),
      judge.robustErrors,
      10,
    );
    expectDigits(
      diagnostics!.robust.flatMap(({ lower, upper }) => [lower, upper]),
      judge.robustLower.flatMap((lower, term) => [lower, judge.robustUpper[term]!]),
      8,
    );
    expectDigits([fit.adjustedRSquared], judge.adjustedRSquared, 11);
    expect(fitOcclusionEquation(fitInput)).not.toHaveProperty('diagnostics');
    expectPlainJson(fit);
  });

  it('has the prediction intervals of R, for one person and in columns, bit for bit', () => {
    const one = people.map((person) => estimateWith(fit, { ...place, ...person }));
    expectDigits(
      one.map(({ value }) => value),
      judge.predicted,
      6,
    );
    expectDigits(
      one.map(({ value, lower }) => value - lower!),
      judge.predicted.map((p, i) => p - judge.lower[i]!),
      11,
    );
    expectDigits(
      one.map(({ value, upper }) => upper! - value),
      judge.upper.map((u, i) => u - judge.predicted[i]!),
      11,
    );
    const many = columns({
      answer: 'occlusion-pressure',
      equation: JSON.parse(JSON.stringify(fit)) as typeof fit,
      ...place,
      circumferenceCm: people.map((person) => person.circumferenceCm),
      systolicMmHg: people.map((person) => person.systolicMmHg),
      diastolicMmHg: people.map((person) => person.diastolicMmHg),
      ageYears: people.map((person) => person.ageYears),
      sex: people.map((person) => person.sex),
    });
    expect([...many.value, ...many.lower, ...many.upper]).toEqual([
      ...one.map(({ value }) => value),
      ...one.map(({ lower }) => lower),
      ...one.map(({ upper }) => upper),
    ]);
    expect(many.about).not.toHaveProperty('scale');
  });

  it('names what its rows do not meet', () => {
    const of = (more: (row: FitRow, at: number) => object) =>
      codesOf(
        fitOcclusionEquation({ ...fitInput, rows: rows.map((row, at) => ({ ...row, ...more(row, at) })) }).cautions,
      );
    // The invented residuals are uniform.
    expect(of(() => ({}))).toEqual(['residuals-not-normal']);
    expect(of((row, at) => ({ ageYears: row.circumferenceCm! + (at % 3) }))).toContain('collinear-term');
    expect(of((_, at) => (at === 7 ? { valueMmHg: 900, circumferenceCm: 90 } : {}))).toEqual(
      expect.arrayContaining(['influential-row', 'residuals-not-normal']),
    );
    const fanned = fitOcclusionEquation({
      ...fitInput,
      terms: ['circumferenceCm'],
      rows: rows.map((_, at) => ({ circumferenceCm: 40 + at / 2, valueMmHg: 150 + at + (at % 2 ? 0.4 : -0.4) * at })),
    });
    expect(codesOf(fanned.cautions)).toContain('residual-spread-changes');
  });

  it('names a constant outcome, and coefficients that no document takes', () => {
    const fitted = (more: (row: FitRow, at: number) => object) => () =>
      fitOcclusionEquation({
        ...fitInput,
        terms: ['circumferenceCm'],
        rows: rows.map((row, at) => ({ ...row, ...more(row, at) })),
      });
    expect(fitted(() => ({ valueMmHg: 150 }))).toThrow(
      /rows must be measured pressures that vary; received one value in every row/,
    );
    expect(fitted((_, at) => ({ circumferenceCm: 50 + 1e-7 * at, valueMmHg: 100 + 10 * at }))).toThrow(
      /every coefficient from -1000000 to 1000000/,
    );
    expect(() => fitOcclusionEquation({ ...fitInput, diagnostics: 'yes' as never })).toThrow(/diagnostics/);
    for (const id of ['calibrated', 'measured-doppler'])
      expect(() => fitOcclusionEquation({ ...fitInput, id })).toThrow(/id/);
  });

  it('draws on readings of your own', () => {
    const own = fitOcclusionEquation({
      ...fitInput,
      terms: ['skinfoldMm', 'bodyMassIndex', 'heightCm'],
      rows: rows.map((row, at) => ({
        ...row,
        skinfoldMm: 10 + (at % 7),
        bodyMassIndex: 20 + (at % 5),
        heightCm: 160 + (at % 11),
      })),
    });
    expect(own.terms.map(({ field }) => field)).toEqual(['heightCm', 'bodyMassIndex', 'skinfoldMm']);
    const answer = estimateWith(own, { ...place, ...people[0], heightCm: 165, bodyMassIndex: 22, skinfoldMm: 12 });
    expect(answer.inputs).toMatchObject({ heightCm: 165, skinfoldMm: 12 });
    expect(() =>
      estimateWith(own, { ...place, ...people[0], heightCm: 1.65, bodyMassIndex: 22, skinfoldMm: 12 }),
    ).toThrow(/heightCm .* metres/);
    // A published equation takes none of them.
    const { base: _, ...none } = { base: 0, ...people[0] };
    expect(() => estimateWith(fit, { ...place, ...none, heightCm: 165 })).not.toThrow();
  });
});

const input = recalibrateInput;

describe('a published equation, recalibrated', () => {
  const own = recalibrateOcclusionEquation(frozen(structuredClone(input)));
  it('is that of R', () => {
    const [offset, slope, intercept, keptSlope] = judge.recalibrated;
    expectDigits([own.shrinkage.offset, own.shrinkage.slope], [offset!, slope!], 10);
    expectDigits([own.intercept.coefficient, own.terms[0].coefficient], [intercept!, keptSlope!], 7);
    expectDigits(
      [own.leastSquares.intercept, own.leastSquares.slope].flatMap((of) => [of.standardError, of.lower, of.upper]),
      judge.recalibratedLeastSquares.filter((_, at) => at % 4 > 0),
      10,
    );
    expectDigits([own.leaveOneOutMmHg], judge.recalibratedLeaveOneOut, 10);
    expectDigits([own.published.biasMmHg, own.published.rootMeanSquareMmHg], judge.published, 11);
    const answers = [
      { ...people[0], sex: 'female' as const },
      { ...people[2], sex: 'male' as const },
    ].map((person) => estimateWith(own, { ...place, cuffWidthCm: 18, ...person }));
    expectDigits(
      answers.map(({ value, upper }) => upper! - value),
      judge.recalibratedHalf,
      10,
    );
    expectPlainJson(own);
  });

  it('is used for one person, in columns and in calibration like a published one', () => {
    const person = { ...place, cuffWidthCm: 18, side: 'left', ...people[0] } as const;
    const answer = estimateWith(own, person);
    expect(answer).toMatchObject({ equation: 'lab-2019', evidence: 'derived' });
    const many = columns({ ...person, answer: 'occlusion-pressure', equation: own, circumferenceCm: [55, 60] });
    expect([many.value[0], many.lower[0], many.upper[0]]).toEqual([answer.value, answer.lower, answer.upper]);
    const measured = measuredOcclusionPressure({
      ...place,
      cuffWidthCm: 18,
      side: 'left',
      valueMmHg: 180,
      method: 'doppler',
    });
    for (const estimate of [answer, estimateWith(fit, { ...person, cuffWidthCm: 11 })]) {
      const cuffed = { ...measured, inputs: { ...measured.inputs, cuffWidthCm: estimate.inputs['cuffWidthCm']! } };
      const updated = calibrateOcclusionPressure({ estimate, measurements: [cuffed] });
      expect(updated.value).toBeGreaterThan(Math.min(estimate.value, 180));
      expect(updated.value).toBeLessThan(Math.max(estimate.value, 180));
      expect(updated.upper! - updated.lower!).toBeLessThan(estimate.upper! - estimate.lower!);
    }
    expect(targetCuffPressure({ occlusion: answer, percentLop: 50 }).evidence).toBe('derived');
    // The publication of the equation is cited.
    expect(cite(answer).length).toBeGreaterThan(0);
    expect(equationFromFit(own).formula).toContain('(65.290 + 1.110 * TC');
    expect(equationFromFit(own).fitted['circumferenceCm']).toEqual(own.ranges.circumferenceCm);
  });

  it('leaves a published equation alone that its rows do not contradict, and says where it does not help', () => {
    const noise = (at: number) => [7, -7, -7, 7][at % 4]!;
    const same = recalibrateOcclusionEquation({
      ...input,
      rows: input.rows.map((row, at) => ({
        ...row,
        valueMmHg: equationFromFit(own).apply({ ...place, ...row } as never) + noise(at),
      })),
    });
    expect(same.shrinkage.slope).toBeGreaterThanOrEqual(0);
    const unmoved = recalibrateOcclusionEquation({
      ...input,
      rows: input.rows.map((row, at) => ({
        ...row,
        valueMmHg:
          65.29 +
          1.11 * row.circumferenceCm +
          0.178 * row.systolicMmHg +
          1.153 * row.ageYears! -
          7.984 * (row.sex === 'male' ? 1 : 2) +
          noise(at),
      })),
    });
    expect(unmoved.shrinkage).toEqual({ offset: 0, slope: 0 });
    expect([unmoved.intercept.coefficient, unmoved.terms[0].coefficient]).toEqual([expect.closeTo(0, 6), 1]);
    expect(codesOf(unmoved.cautions)).toEqual(['recalibration-no-better']);
  });

  it('warns where the estimates fall as the measurements rise', () => {
    const mirrored = input.rows.map((row) => ({ ...row, valueMmHg: 360 - row.valueMmHg }));
    const { terms, cautions } = recalibrateOcclusionEquation({ ...input, rows: mirrored });
    expect(terms[0].coefficient).toBeLessThan(0);
    expect(codesOf(cautions)).toContain('recalibration-reversed');
    expect(codesOf(recalibrateOcclusionEquation(input).cautions)).not.toContain('recalibration-reversed');
  });

  it('refuses what it cannot do, in plain words', () => {
    const of = (more: object) => () => recalibrateOcclusionEquation({ ...input, ...more } as never);
    expect(of({ rows: input.rows.slice(0, 9) })).toThrow(/rows must be at least 10; received 9/);
    expect(of({ rows: input.rows.slice(0, 10) })).not.toThrow();
    expect(of({ equation: 'padding-2006' })).toThrow(/equation must be one that needs no padding coefficient/);
    expect(of({ cuffWidthCm: 10 })).toThrow(/rows\[0\]\.cuffWidthCm must be 18 cm/);
    expect(of({ cuffWidthCm: undefined })).toThrow(/rows\[0\]\.cuffWidthCm is missing/);
    expect(of({ rows: input.rows.map((row) => ({ ...row, cuffWidthCm: 18 })) })).toThrow(/left out where all rows/);
    expect(of({ limb: 'arm', rows: input.rows.map((row) => ({ ...row, circumferenceCm: 30 })) })).toThrow(
      /limb must be/,
    );
    expect(of({ rows: input.rows.map(({ ageYears: _, ...row }) => row) })).toThrow(/ageYears is missing/);
    expect(of({ rows: input.rows.map((row) => ({ ...row, valueMmHg: 150 })) })).toThrow(
      /pressures that vary; received one value in every row/,
    );
    expect(of({ rows: input.rows.map((row) => ({ ...input.rows[0], valueMmHg: row.valueMmHg })) })).toThrow(
      /differs; received one value in every row/,
    );
    expect(
      of({ rows: input.rows.map((row, at) => ({ ...(at === 3 ? row : input.rows[0]), valueMmHg: row.valueMmHg })) }),
    ).toThrow(/as row 3 does/);
    expect(() =>
      estimateWith({ ...own, terms: [{ ...own.terms[0], field: 'ageYears' }] }, { ...place, ...people[0] }),
    ).toThrow(/terms\[0\]\.field/);
    expect(() => estimateWith({ ...own, base: 'none' }, { ...place, ...people[0] })).toThrow(/base/);
  });
});
