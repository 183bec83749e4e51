import { describe, expect, it } from 'vitest';
import {
  attempt,
  calibrateOcclusionPressure,
  compareOcclusionEquations,
  correctForCuffWidth,
  correctForPosture,
  equations,
  estimateOcclusionPressure,
  estimateOneRepMax,
  measuredOcclusionPressure,
  targetCuffPressure,
  trainingLoad,
  type Answer,
  type Attempt,
} from '../../src/index.js';
import { columns, compareColumns, eachRow, flagCodes, reachedColumns, REFUSED } from '../../src/study/index.js';
import { expectSame, scalarRow } from '../support/columns.js';

// The functions for one person are the judge: they are held to publications elsewhere.
const leg = { limb: 'leg', posture: 'supine', cuffWidthCm: 12 } as const;
const people = [
  { circumferenceCm: 54, systolicMmHg: 120, diastolicMmHg: 70, ageYears: 24, sex: 'male' },
  { circumferenceCm: 61.5, systolicMmHg: 135, diastolicMmHg: 81, ageYears: 60, sex: 'female' },
  { circumferenceCm: 40, systolicMmHg: 185, diastolicMmHg: 90, ageYears: 30, sex: 'male' },
  { circumferenceCm: 58, systolicMmHg: null, diastolicMmHg: 70, ageYears: 30, sex: null },
] as const;
const column = <F extends keyof (typeof people)[number]>(field: F) => people.map((person) => person[field]);
const readings = {
  circumferenceCm: column('circumferenceCm'),
  systolicMmHg: column('systolicMmHg'),
  diastolicMmHg: column('diastolicMmHg'),
};

describe('any function, row by row', () => {
  it('corrections for another cuff and another posture', () => {
    const occlusionMmHg = [180, 190.5, 60, 170];
    const widths = { limb: 'leg', ...readings, occlusionMmHg, fromWidthCm: 12, toWidthCm: [10, 18, 10, 10] } as const;
    const got = eachRow(correctForCuffWidth as never, widths);
    people.forEach(({ circumferenceCm, systolicMmHg, diastolicMmHg }, row) => {
      const own = scalarRow({ circumferenceCm, systolicMmHg, diastolicMmHg });
      const more = {
        limb: 'leg',
        occlusionMmHg: occlusionMmHg[row],
        fromWidthCm: 12,
        toWidthCm: widths.toWidthCm[row],
      };
      expectNumbers(got, row, attempt(correctForCuffWidth, { ...own, ...more } as never));
    });
    expect(Array.from(got.flag, flagCodes)).toEqual([[], [], ['relation'], ['missing']]);
    const postures = { limb: 'leg', cuffWidthCm: 12, diastolicMmHg: 70, fromPosture: 'supine' } as const;
    const seated = eachRow(correctForPosture, { ...postures, occlusionMmHg: [150, 200], toPosture: 'seated' as const });
    [150, 200].forEach((mmHg, row) => {
      const one = attempt(correctForPosture, { ...postures, occlusionMmHg: mmHg, toPosture: 'seated' });
      expectNumbers(seated, row, one);
    });
  });

  it('calibration, from the estimate to the target', () => {
    const calibrated = (person: (typeof people)[number] & { readonly valueMmHg: number }) => {
      const { valueMmHg, ...own } = person;
      const estimate = estimateOcclusionPressure({ ...leg, side: 'left', ...own } as never);
      const measured = measuredOcclusionPressure({ ...leg, side: 'left', valueMmHg, method: 'doppler' });
      return calibrateOcclusionPressure({ estimate, measurements: [measured] });
    };
    const valueMmHg = [170, 200, 190, 180];
    const fields = { ...readings, ageYears: column('ageYears'), sex: column('sex'), valueMmHg };
    const got = eachRow(calibrated as never, fields);
    people.forEach((person, row) => {
      const one = attempt(calibrated as never, scalarRow({ ...person, valueMmHg: valueMmHg[row] }));
      expectNumbers(got, row, one as never);
    });
    const target = columns({ answer: 'cuff-pressure', occlusion: got as never, percentLop: 50 });
    expect(target.value[0]).toBe(Math.floor(got.value[0]! / 2));
  });

  it('refuses rows of several kinds, no answer at all, and what is no answer', () => {
    const mixed = ({ x }: { x: number }) =>
      x > 1
        ? measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' })
        : estimateOneRepMax({ load: 100, repetitions: 5, equation: 'epley-1985' });
    expect(() => eachRow(mixed as never, { x: [1, 2] })).toThrow(/one kind/);
    expect(() => eachRow(measuredOcclusionPressure, { valueMmHg: [1, 2], method: 'doppler', limb: 'leg' })).toThrow(
      /at least one row/,
    );
    const slip = { value: [165, 180], method: 'doppler', limb: 'leg' };
    expect(() => eachRow(measuredOcclusionPressure as never, slip)).toThrow(
      /calculate\[0\]\.value is not a field here\. Did you mean valueMmHg\?/,
    );
    expect(() => eachRow((() => 5) as never, { x: [1] })).toThrow(/an answer of this library/);
    expect(() => eachRow(mixed as never, { x: [1], y: [1, 2] })).toThrow(/as long as/);
    // What your own function throws is yours.
    const thrower = () => {
      throw new RangeError('from your function');
    };
    expect(() => eachRow(thrower as never, { x: [1] })).toThrow(RangeError);
  });
});

function expectNumbers(got: ReturnType<typeof eachRow>, row: number, expected: Attempt<Answer>): void {
  const numbers = [got.value, got.lower, got.upper, got.standardDeviation].map((numbers) => numbers[row]);
  if (!expected.ok) {
    expect(numbers).toEqual([NaN, NaN, NaN, NaN]);
    expect(got.flag[row]! & REFUSED).not.toBe(0);
    return;
  }
  const { value, lower, upper, standardDeviation } = expected.value;
  expect(numbers).toEqual([value, lower ?? NaN, upper ?? NaN, standardDeviation ?? NaN]);
}

describe('every equation side by side', () => {
  it.each([12, 18, 5])('with a cuff of %d cm, the numbers of the comparison for one person', (cuffWidthCm) => {
    const place = { limb: 'leg', posture: 'supine', cuffWidthCm } as const;
    const long = compareColumns({ ...place, ...readings, ageYears: column('ageYears'), sex: column('sex') } as never);
    const rows = people.length;
    expect(long.value).toHaveLength(long.about.length * rows);
    long.about.forEach(({ equation }, at) => {
      people.forEach((person, row) => {
        const index = at * rows + row;
        expect([long.row[index], long.equation[index]]).toEqual([row, at]);
        const given = { ...place, ...scalarRow(person) };
        const compared = attempt(compareOcclusionEquations, given as never);
        const answer = compared.ok ? compared.value.answers.find((one) => one.equation === equation) : undefined;
        const one = (column: Float64Array) => column.subarray(index, index + 1);
        const got = {
          about: long.about[at]!,
          value: one(long.value),
          lower: one(long.lower),
          upper: one(long.upper),
          standardDeviation: one(long.standardDeviation),
          flag: long.flag.subarray(index, index + 1),
        };
        expectSame(
          got,
          0,
          answer ? { ok: true, value: answer } : attempt(estimateOcclusionPressure, { equation, ...given } as never),
        );
      });
    });
    const listed = [...long.about, ...long.notApplicable].map(({ equation }) => equation);
    expect(new Set(listed)).toEqual(new Set(equations.occlusionPressure.map(({ id }) => id)));
  });

  it('refuses what is no reading, and a wrong call', () => {
    const call = (more: object) => () => compareColumns({ ...leg, ...readings, ...more } as never);
    expect(call({ equation: 'thigh-2015' })).toThrow(/equation/);
    expect(call({ girth: 5 })).toThrow(/girth is not a field/);
    expect(call({ systolicMmHg: undefined })).toThrow(/systolicMmHg is missing/);
    expect(call({ cuffWidthCm: [12] })).toThrow(/as long as/);
  });
});

describe('the percentage that a setting really is', () => {
  it('of an occlusion pressure, with the chance of closing the artery', () => {
    for (const equation of ['pooled-curve-thigh-2026', 'width-ratio-1993'] as const) {
      const of = columns({ answer: 'occlusion-pressure', equation, ...leg, ...readings });
      const percentLop = [50, 95, 80, 50];
      const { value } = columns({ answer: 'cuff-pressure', occlusion: of, percentLop, gaugeStepMmHg: 5 });
      const got = reachedColumns({ of, setting: value });
      people.forEach(({ circumferenceCm, systolicMmHg, diastolicMmHg }, row) => {
        const own = scalarRow({ circumferenceCm, systolicMmHg, diastolicMmHg });
        const occlusion = attempt(estimateOcclusionPressure, { ...leg, ...own, equation } as never);
        if (!occlusion.ok) return expect(flagCodes(got.flag[row]!)).toEqual(['missing']);
        const { reached } = targetCuffPressure({
          occlusion: occlusion.value,
          percentLop: percentLop[row]!,
          gaugeStepMmHg: 5,
        });
        expect({
          percentLop: got.percentLop[row],
          lower: got.lower[row],
          upper: got.upper[row],
          occlusionChancePercent: got.occlusionChancePercent[row],
        }).toEqual(reached);
      });
    }
  });

  it('of a maximum', () => {
    const load = [100, 80];
    const of = columns({ answer: 'one-repetition-maximum', equation: 'epley-1985', load, repetitions: 5 });
    const got = reachedColumns({ of, setting: [30, NaN] });
    const oneRepMax = estimateOneRepMax({ load: 100, repetitions: 5, equation: 'epley-1985' });
    const { reached } = trainingLoad({ oneRepMax, percentOneRepMax: 30, available: [30] });
    expect([got.percentOneRepMax[0], got.lower[0] || undefined, got.upper[0] || undefined]).toEqual([
      reached!.percentOneRepMax,
      reached!.lower,
      reached!.upper,
    ]);
    expect(flagCodes(got.flag[1]!)).toEqual(['missing']);
    expect(got).not.toHaveProperty('occlusionChancePercent');
    expect(() => reachedColumns({ of: {} as never, setting: 5 })).toThrow(/of must be/);
  });
});
