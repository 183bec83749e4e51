import { describe, expect, it } from 'vitest';
import {
  calibrateOcclusionPressure,
  equations,
  measuredOcclusionPressure,
  targetCuffPressure,
} from '../../src/index.js';
import { columns, equationFromFit, estimateWith, recalibrateOcclusionEquation } from '../../src/study/index.js';
import { cite } from '../../src/text/index.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { expectDigits } from '../support/digits.js';
import { fittedExample, recalibrateInput as input } from '../support/fitted.js';
import { codesOf, refusalPage } from '../support/invariants.js';
import judge from './own-equation.json' with { type: 'json' };

const place = { limb: 'leg', posture: 'seated', cuffWidthCm: 18 } as const;
const people = [
  { circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 72, ageYears: 30, sex: 'female' },
  { circumferenceCm: 70, systolicMmHg: 160, diastolicMmHg: 88, ageYears: 65, sex: 'male' },
] as const;

const thigh2019 = equations.occlusionPressure.find(({ id }) => id === 'thigh-2019')!;

describe('a published equation, recalibrated', () => {
  const recalibrated = () => recalibrateOcclusionEquation(frozen(structuredClone(input)));
  it('is that of R', () => {
    const own = recalibrated();
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
    const answers = people.map((person) => estimateWith(own, { ...place, ...person }));
    expectDigits(
      answers.map(({ value, upper }) => upper! - value),
      judge.recalibratedHalf,
      10,
    );
    expectPlainJson(own);
  });

  it('is used for one person, in columns and in calibration like a published one', () => {
    const own = recalibrated();
    const person = { ...place, side: 'left', ...people[0] } as const;
    const answer = estimateWith(own, person);
    expect(answer).toMatchObject({ equation: 'lab-2019', evidence: 'derived' });
    const many = columns({ ...person, answer: 'occlusion-pressure', equation: own, circumferenceCm: [55, 60] });
    expect([many.value[0], many.lower[0], many.upper[0]]).toEqual([answer.value, answer.lower, answer.upper]);
    const measured = measuredOcclusionPressure({
      ...place,
      side: 'left',
      valueMmHg: 180,
      method: 'doppler',
    });
    for (const estimate of [answer, estimateWith(fittedExample, { ...person, cuffWidthCm: 11 })]) {
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
    const unmoved = recalibrateOcclusionEquation({
      ...input,
      rows: input.rows.map((row, at) => ({
        ...row,
        valueMmHg: thigh2019.apply({ ...place, ...row } as never) + [7, -7, -7, 7][at % 4]!,
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

  it('refuses what it cannot do, as the golden page says', async () => {
    const own = recalibrated();
    const of = (more: object) => ({ ...input, ...more });
    const all = (more: (row: (typeof input.rows)[number], at: number) => object) =>
      of({ rows: input.rows.map((row, at) => ({ ...row, ...more(row, at) })) });
    const [first] = input.rows;
    const cases = {
      '9 rows': of({ rows: input.rows.slice(0, 9) }),
      '10 rows': of({ rows: input.rows.slice(0, 10) }),
      'a padding coefficient': of({ equation: 'padding-2006' }),
      'another cuff': of({ cuffWidthCm: 10 }),
      'no cuff': of({ cuffWidthCm: undefined, rows: input.rows.slice(0, 10) }),
      'a cuff twice': {
        ...all(() => ({ cuffWidthCm: 18 })),
        rows: [{ ...first, cuffWidthCm: 18 }, ...input.rows.slice(1)],
      },
      'another limb': of({
        limb: 'arm',
        rows: input.rows.slice(0, 10).map((row) => ({ ...row, circumferenceCm: 30 })),
      }),
      'no age': of({ rows: [{ ...first, ageYears: undefined }, ...input.rows.slice(1)] }),
      'one pressure': all(() => ({ valueMmHg: 150 })),
      'one estimate': all(({ valueMmHg }) => ({ ...first, valueMmHg })),
      'one row that differs': all((row, at) => ({ ...(at === 3 ? row : first), valueMmHg: row.valueMmHg })),
    };
    await expect(refusalPage(recalibrateOcclusionEquation as never, cases)).toMatchFileSnapshot(
      'refused/recalibration.txt',
    );
    expect(() => equationFromFit({ ...own, terms: [{ ...own.terms[0], field: 'ageYears' }] })).toThrow(
      /terms\[0\]\.field/,
    );
    expect(() => equationFromFit({ ...own, base: 'none' })).toThrow(/base/);
  });
});
