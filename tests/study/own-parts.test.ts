import { describe, expect, it } from 'vitest';
import { equations, type OcclusionEquation } from '../../src/index.js';
import {
  columns,
  equationFromFit,
  estimateWith,
  flagCodes,
  reachedColumns,
  recalibrateOcclusionEquation,
} from '../../src/study/index.js';
import { caution, fewPeople, notNormal } from '../../src/study/cautions.js';
import { rangeOf, rangesOf } from '../../src/study/own-rows.js';
import { readFunction, readDraws, readScale, readSeed } from '../../src/study/options.js';
import { Reader } from '../../src/answer/reader.js';
import { recalibrateInput } from '../support/fitted.js';
import { codesOf, refusal, refusalPage } from '../support/invariants.js';

/** 100 + 2 × C, fitted to twelve people. */
const own = (more: object = {}) => ({
  document: 'fitted-occlusion-equation',
  schemaVersion: 1,
  id: 'lab-one',
  limb: 'leg',
  posture: 'seated',
  cuffWidthCm: 11,
  people: 12,
  residualMmHg: 5,
  intercept: { coefficient: 100 },
  terms: [{ field: 'circumferenceCm', coefficient: 2, low: 40, high: 70 }],
  leverage: { means: [55], factor: [[0.1]] },
  ...more,
});
const two = (more: object = {}) =>
  own({
    terms: [
      { field: 'circumferenceCm', coefficient: 2, low: 40, high: 70 },
      { field: 'bodyMassIndex', coefficient: 1, low: 18, high: 40 },
    ],
    leverage: { means: [55, 25], factor: [[0.1], [0, 0.1]] },
    ...more,
  });
const person = {
  limb: 'leg',
  posture: 'seated',
  cuffWidthCm: 11,
  circumferenceCm: 60,
  systolicMmHg: 120,
  diastolicMmHg: 75,
} as const;

describe('an equation of your own, as it was stored', () => {
  const refused = (document: object) => refusal(equationFromFit as never, document).map(([path]) => path);
  it('has as many people as its terms need', () => {
    expect([refused(own({ people: 3 })), refused(two({ people: 4 }))]).toEqual([[], []]);
    expect([refused(two({ people: 3 })), refused(own({ people: 2 }))]).toEqual([['people'], ['people']]);
  });

  it('has a triangle of numbers, as many as it has terms', () => {
    const factor = (...rows: unknown[]) => refused(two({ leverage: { means: [55, 25], factor: rows } }));
    expect(factor([0.1], [0, 0.1])).toEqual([]);
    const none = ['leverage.factor'];
    expect(factor([0.1])).toEqual(none);
    expect(factor([0.1], [0, 0.1], [0, 0, 0.1])).toEqual(none);
    expect(factor([0.1], ['0', 0.1])).toEqual(['leverage.factor.1.0']);
    expect(factor([0.1], [0, NaN])).not.toEqual([]);
    expect(factor([0.1], [0.1])).toEqual(['leverage.factor.1']);
    expect(factor(0.1, [0, 0.1])).toEqual(['leverage.factor.0']);
    expect(factor([-1.1e12], [0, 0.1])).toEqual(['leverage.factor.0.0']);
    expect(factor([1.1e12], [0, 0.1])).toEqual(['leverage.factor.0.0']);
    expect(factor([-1e12], [0, 1e12])).toEqual([]);
    expect(refused(two({ leverage: { means: [55], factor: [[0.1], [0, 0.1]] } }))).toEqual(['leverage.means']);
  });

  it('is an equation like those that are published', () => {
    const { needs, sources, assumptions, evidence, fitted, fittedNotKnown, sample, apply } = equationFromFit(two());
    expect({ needs, sources, assumptions, evidence, fittedNotKnown, sample }).toEqual({
      needs: [],
      sources: [],
      assumptions: ['own-laboratory'],
      evidence: 'derived',
      fittedNotKnown: [],
      sample: '12 people of yours',
    });
    expect(fitted).toEqual({ circumferenceCm: { low: 40, high: 70 } });
    expect(apply({ ...person, bodyMassIndex: 25 } as never)).toBe(100 + 120 + 25);
    const aged = { field: 'ageYears', coefficient: 1, low: 20, high: 60 };
    expect(equationFromFit(own({ terms: [aged] })).needs).toEqual(['ageYears']);
  });

  // By hand: 100 + 2 × 60 + BMI.
  it('estimates, and says which of its own readings are outside what it was fitted on', () => {
    const of = (bodyMassIndex: number) => estimateWith(two(), { ...person, bodyMassIndex });
    expect(of(30).value).toBe(250);
    const outside = (bodyMassIndex: number) =>
      of(bodyMassIndex).cautions.filter(({ values }) => values?.['value'] === bodyMassIndex).length;
    expect([17.9, 18, 30, 40, 40.1].map(outside)).toEqual([1, 0, 0, 0, 1]);
    expect(refusal((input: object) => estimateWith(two(), input as never), person)[0]).toEqual([
      'bodyMassIndex',
      'missing',
      'a number from 8 to 100 kg/m²',
      'undefined',
    ]);
    // A reading that no term draws on is taken and leaves no trace.
    expect(estimateWith(own(), { ...person, heightCm: 300 / 2 }).value).toBe(220);
    const none = own({ intercept: { coefficient: -120 } });
    expect(refusal((input: object) => estimateWith(none, input as never), person)[0]![0]).toBe('circumferenceCm');
    const little = own({ intercept: { coefficient: -119 } });
    expect(estimateWith(little, person).value).toBe(1);
    expect(refusal((input: object) => estimateWith(own(), input as never), { ...person, cuffWidthCm: 14 })[0]![0]).toBe(
      'cuffWidthCm',
    );
  });
});

describe('a recalibration', () => {
  it('names every reading that a row lacks', () => {
    const bare = { ...recalibrateInput, cuffWidthCm: undefined, rows: recalibrateInput.rows.map(() => ({})) };
    const first = refusal(recalibrateOcclusionEquation as never, bare).filter(([path]) => path.startsWith('rows.0.'));
    expect(first.map(([path]) => path.slice('rows.0.'.length)).sort()).toEqual(
      [
        ...['valueMmHg', 'circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'cuffWidthCm'],
        ...(equations.occlusionPressure.find(({ id }) => id === 'thigh-2019') as OcclusionEquation).needs,
      ].sort(),
    );
  });

  it('has the grade, the cuff and the cautions of what it was made of', () => {
    const { evidence, cuffWidthCm, cautions, people, base } = recalibrateOcclusionEquation(recalibrateInput);
    const published = equations.occlusionPressure.find(({ id }) => id === 'thigh-2019')!;
    expect([evidence === 'unconfirmed', cuffWidthCm, people, base]).toEqual([
      published.evidence === 'unconfirmed',
      18,
      20,
      'thigh-2019',
    ]);
    expect(codesOf(cautions)).toEqual([]);
    const rows = recalibrateInput.rows.map((row) => ({ ...row, cuffWidthCm: 18 }));
    const { cuffWidthCm: _, ...input } = recalibrateInput;
    expect(recalibrateOcclusionEquation({ ...input, rows }).cuffWidthCm).toBe('any');
    for (const { id, evidence: grade } of equations.occlusionPressure) {
      let made;
      try {
        made = recalibrateOcclusionEquation({ ...input, equation: id, rows });
      } catch {
        continue;
      }
      expect(made.evidence, id).toBe(grade === 'unconfirmed' ? 'unconfirmed' : 'derived');
      const { sources, evidence: own } = equationFromFit(made);
      expect([sources, own], id).toEqual([
        equations.occlusionPressure.find((one) => one.id === id)!.sources,
        made.evidence,
      ]);
    }
  });
});

describe('ranges of rows', () => {
  const row = (readings: object) => ({ valueMmHg: 150, readings });
  it('are of the readings that every row has, without sex and what only your own equation draws on', () => {
    const rows = [
      row({ circumferenceCm: 60, systolicMmHg: 120, sex: 'male', heightCm: 170, ageYears: 40 }),
      row({ circumferenceCm: 50, systolicMmHg: 130, sex: 'female', heightCm: 180 }),
    ];
    expect(rangesOf(rows as never)).toEqual({
      circumferenceCm: { low: 50, high: 60 },
      systolicMmHg: { low: 120, high: 130 },
    });
    expect(rangeOf([3, 1, 2])).toEqual({ low: 1, high: 3 });
  });
});

describe('what settings really are', () => {
  const lop = columns({
    ...{ answer: 'occlusion-pressure', equation: 'pooled-curve-thigh-2026', limb: 'leg', cuffWidthCm: 10 },
    ...{ posture: 'supine', circumferenceCm: [54, 60, 58, 55], systolicMmHg: [120, 122, 118, 121], diastolicMmHg: 70 },
  } as never);
  // Formula: 100 × P / LOP and over the ends of its interval, turned round.
  it('is a share of the value and of both ends', () => {
    const setting = [80, 0.5, NaN, 100];
    const reached = reachedColumns({ of: lop, setting }) as ReturnType<typeof reachedColumns<'occlusion-pressure'>>;
    for (const row of [0, 1, 3]) {
      expect(reached.percentLop[row]).toBeCloseTo((100 * setting[row]!) / lop.value[row]!, 9);
      expect(reached.lower[row]).toBeCloseTo((100 * setting[row]!) / lop.upper[row]!, 9);
      expect(reached.upper[row]).toBeCloseTo((100 * setting[row]!) / lop.lower[row]!, 9);
      expect(reached.occlusionChancePercent[row]).toBeLessThan(50);
    }
    expect([reached.percentLop[2], reached.lower[2], reached.upper[2], reached.occlusionChancePercent[2]]).toEqual([
      NaN,
      NaN,
      NaN,
      NaN,
    ]);
    expect([...reached.flag]).toEqual([0, 0, 1, 0]);
    expect(reached).not.toHaveProperty('percentOneRepMax');
  });

  it('is refused in rows whose answer was edited to what no answer is', () => {
    const edit = (change: object) => reachedColumns({ of: { ...lop, ...change } as never, setting: 80 });
    const [first, ...rest] = lop.value;
    const value = (given: number) => ({ value: Float64Array.of(given, ...rest) });
    expect([...edit(value(NaN)).flag]).toEqual([1, 0, 0, 0]);
    for (const given of [Infinity, 0, -1, lop.upper[0]! + 1])
      expect([...edit(value(given)).flag]).toEqual([2, 0, 0, 0]);
    expect([...edit(value(first!)).flag]).toEqual([0, 0, 0, 0]);
    expect(edit(value(NaN)).lower[0]).toBeNaN();
  });

  it('has no chance and no ends where the answers have none', () => {
    const bare = { ...lop, lower: lop.lower.map(() => NaN), upper: lop.upper.map(() => NaN) };
    const without = reachedColumns({
      of: { ...bare, standardDeviation: lop.value.map(() => NaN) } as never,
      setting: [80, 80, 80, 80],
    }) as ReturnType<typeof reachedColumns<'occlusion-pressure'>>;
    expect(without.percentLop[0]).toBeGreaterThan(0);
    for (const column of [without.lower, without.upper, without.occlusionChancePercent])
      expect([...column]).toEqual([NaN, NaN, NaN, NaN]);
    const maxima = columns({
      answer: 'one-repetition-maximum',
      equation: 'epley-1985',
      load: [50, 60],
      repetitions: 5,
    });
    const loads = reachedColumns({ of: maxima, setting: [20, 30] });
    expect(loads).not.toHaveProperty('occlusionChancePercent');
    expect((loads as { percentOneRepMax: Float64Array }).percentOneRepMax[0]).toBeCloseTo(2000 / maxima.value[0]!, 9);
    // An end at or below zero is no end of a share.
    const wide = { ...maxima, lower: Float64Array.of(0, -5), upper: maxima.value.map((value) => value + 20) };
    const reached = reachedColumns({ of: wide as never, setting: [20, 30] });
    expect([...reached.upper]).toEqual([NaN, NaN]);
    expect(reached.lower[0]).toBeCloseTo(2000 / (maxima.value[0]! + 20), 9);
  });

  it('is refused with the reason', async () => {
    const maxima = columns({
      answer: 'one-repetition-maximum',
      equation: 'epley-1985',
      load: [50, 60],
      repetitions: 5,
    });
    const cases = {
      'a pressure of 0': { of: lop, setting: 0 },
      'a load in words': { of: maxima, setting: ['a', 'b'] },
      'a shorter column': { of: lop, setting: [80] },
      'no answer': { of: 5, setting: 80 },
      'too much': { of: maxima, setting: 100_001 },
    };
    await expect(refusalPage(reachedColumns as never, cases)).toMatchFileSnapshot('refused/reached.txt');
  });
});

describe('flags, cautions and options', () => {
  it('name the codes of a flag, and refuse what is none', () => {
    expect([flagCodes(0), flagCodes(17), flagCodes(255).length]).toEqual([[], ['missing', 'outside-fitted-range'], 8]);
    expect(refusal(flagCodes as never, 256)).toEqual([['flag', 'out-of-range', 'a whole number from 0 to 255', '256']]);
    expect(refusal(flagCodes as never, 0.5)[0]!.slice(0, 2)).toEqual(['flag', 'not-whole']);
  });

  it('warn of few people, and of what is not normal at 5 %', () => {
    expect([codesOf(fewPeople(9)), codesOf(fewPeople(10))]).toEqual([['few-people'], []]);
    const normality = { chance: 0.05, skewness: 1.234, excessKurtosis: 5.678 };
    expect(notNormal('differences-not-normal', normality as never)).toEqual([]);
    expect(notNormal('differences-not-normal', undefined)).toEqual([]);
    const [found] = notNormal('residuals-not-normal', { ...normality, chance: 0.049 } as never);
    expect(found).toMatchObject({ code: 'residuals-not-normal', values: { skewness: 1.2, excessKurtosis: 5.7 } });
    expect(caution('caution', 'few-people', { people: 3 }).text).toContain('3');
  });

  it('have what they are when left out, and bounds', () => {
    const of = (input: object) => new Reader(input);
    expect([readScale(of({})), readSeed(of({})), readDraws(of({}), 100, 1000, 500)]).toEqual(['difference', 1, 500]);
    expect([readScale(of({ scale: 'log' })), readSeed(of({ seed: 0xffffffff }))]).toEqual(['log', 0xffffffff]);
    const refused = (read: (reader: Reader) => unknown, input: object) =>
      refusal((given: object) => {
        const reader = of(given);
        read(reader);
        reader.done();
      }, input);
    expect(refused(readSeed, { seed: 1.5 })).toEqual([
      ['seed', 'not-whole', 'a whole number from 0 to 4294967295', '1.5'],
    ]);
    expect(refused((reader) => readDraws(reader, 100, 1000, 500), { draws: 99 })[0]![2]).toBe(
      'a whole number from 100 to 1000',
    );
    expect(refused((reader) => readFunction(reader, 'fit'), { fit: 5 })).toEqual([
      ['fit', 'wrong-type', 'a function', '5'],
    ]);
  });
});
