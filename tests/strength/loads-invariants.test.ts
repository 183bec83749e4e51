import { describe, expect, it } from 'vitest';
import {
  bodyMassLoad,
  estimateOneRepMax,
  loadPlates,
  testedOneRepMax,
  trainingLoad,
  type Answer,
  type Plate,
} from '../../src/index.js';
import {
  codesOf,
  expectClose,
  expectHoldsTogether,
  refusal,
  refusalPage,
  message,
  type Said,
  withWorking,
} from '../support/invariants.js';
import { working } from '../../src/text/index.js';

const tested = (load: number, unit: 'kg' | 'lb' = 'kg') => testedOneRepMax({ load, unit });
const HUNDRED = tested(100);
const loadOf = (more: object) => trainingLoad({ oneRepMax: HUNDRED, percentOneRepMax: 30, ...more } as never);
const refused = (more: object) => refusal(trainingLoad, { oneRepMax: HUNDRED, percentOneRepMax: 30, ...more });
const POUND = 0.45359237;

describe('a training load', () => {
  it('of a tested maximum', () => {
    const answer = loadOf({});
    expectHoldsTogether(answer);
    expect(withWorking(answer)).toMatchObject({
      kind: 'training-load',
      value: 30,
      unit: 'kg',
      equation: 'percent-of-maximum',
      evidence: 'published',
      formula: 'p / 100 * M',
      symbols: { p: 'percentOneRepMax', M: 'oneRepMax' },
      cautions: [],
      sources: ['guideline-review-2019'],
    });
    expect(answer.inputs).toEqual({ oneRepMax: HUNDRED, percentOneRepMax: 30, unit: 'kg' });
    // Reference G: coefficient of variation 4.2 %, so 30 % of 4.2 kg; true percentage 30/108.232 to 30/91.768.
    expect(answer.errors!.map(({ part, evidence }) => [part, evidence])).toEqual([['maximum', 'published']]);
    expectClose(answer.standardDeviation!, 1.26);
    expect(codesOf(answer.assumptions)).toEqual(['normal-interval']);
    expect(answer.reached!.percentOneRepMax).toBe(30);
    expect(answer.reached!.lower!).toBeCloseTo((100 * 30) / 108.232, 3);
    expect(answer.reached!.upper!).toBeCloseTo((100 * 30) / 91.768, 3);
    for (const field of ['rounding', 'perSide']) expect(answer).not.toHaveProperty(field);
  });

  it.each([
    ['lb', 'lb', 'p / 100 * M', 60],
    ['lb', 'kg', 'p / 100 * M * 0.45359237', 60 * POUND],
    ['kg', 'lb', 'p / 100 * M / 0.45359237', 60 / POUND],
  ] as const)('of a maximum in %s, in %s', (from, unit, formula, value) => {
    const answer = loadOf({ oneRepMax: tested(200, from), unit });
    expectHoldsTogether(answer);
    expectClose(answer.value, value);
    expectClose(answer.standardDeviation!, 0.042 * value);
    expect(withWorking(answer)).toMatchObject({ formula, unit: unit === 'kg' ? 'kg' : '[lb_av]', inputs: { unit } });
    expectClose(answer.reached!.percentOneRepMax, 30);
    // An error of 4.2 %, whatever the unit.
    expect(answer.reached!.lower!).toBeCloseTo((100 * 30) / 108.232, 3);
    expect(answer.reached!.upper!).toBeCloseTo((100 * 30) / 91.768, 3);
  });

  it('keeps the unit of the maximum where none is asked for', () => {
    expect(loadOf({ oneRepMax: tested(200, 'lb') }).unit).toBe('[lb_av]');
  });

  // Guidance: 20 to 40 % (reference D); what is lifted counts. A move of more than a twentieth of the percentage is told.
  it.each([
    [20, {}, []],
    [40, {}, []],
    [19, {}, [['below-restricted-loads', { percentOneRepMax: 19, low: 20, high: 40 }]]],
    [41, {}, [['above-restricted-loads', { percentOneRepMax: 41, low: 20, high: 40 }]]],
    // 21 of 100 kg is 20 % where there are steps of 20: moved by 1 of 21, 4.8 %.
    [21, { step: 20 }, []],
    // 20 to 21: 5 % is not more than 5 %.
    [20, { step: 21 }, []],
    [25, { step: 20 }, [['percent-moved', { load: 20, unit: 'kg', reached: 20, percentOneRepMax: 25 }]]],
    [
      38,
      { available: [50] },
      [
        ['above-restricted-loads', { percentOneRepMax: 50, low: 20, high: 40 }],
        ['percent-moved', { load: 50, unit: 'kg', reached: 50, percentOneRepMax: 38 }],
      ],
    ],
    [
      22,
      { available: [10] },
      [
        ['below-restricted-loads', { percentOneRepMax: 10, low: 20, high: 40 }],
        ['percent-moved', { load: 10, unit: 'kg', reached: 10, percentOneRepMax: 22 }],
      ],
    ],
  ] as const)('%d %%, %o', (percentOneRepMax, way, expected) => {
    const answer = loadOf({ percentOneRepMax, ...way });
    expectHoldsTogether(answer);
    expect(message(answer.cautions)).toEqual(
      expected.map(([code, values]) =>
        code === 'percent-moved'
          ? [code, { severity: 'caution', values, path: Object.keys(way) }]
          : [code, { severity: 'note', values, path: ['percentOneRepMax'], source: 'guideline-review-2019' }],
      ),
    );
  });

  it('brought to a step, a rack, or a bar', () => {
    const step = loadOf({ percentOneRepMax: 33, step: 2.5 });
    expectHoldsTogether(step);
    expect(step.rounding).toEqual({ from: 33, to: 'nearest', step: 2.5 });
    expect(step.inputs).toEqual({
      oneRepMax: HUNDRED,
      percentOneRepMax: 33,
      unit: 'kg',
      rounding: 'nearest',
      step: 2.5,
    });
    expect(step.value).toBe(32.5);
    expect(step.reached!.percentOneRepMax).toBe(32.5);
    // The interval stays around what was wanted, 33 kg.
    expect((step.lower! + step.upper!) / 2).toBeCloseTo(33, 9);

    const rack = loadOf({ percentOneRepMax: 33, available: [40, 30, 36], rounding: 'down' });
    expectHoldsTogether(rack);
    expect(rack.rounding).toEqual({ from: 33, to: 'down', available: [40, 30, 36] });
    expect(rack.inputs).toEqual({ oneRepMax: HUNDRED, percentOneRepMax: 33, unit: 'kg', rounding: 'down' });
    expect(rack.value).toBe(30);
    // Of two as near the lighter: 33 between 30 and 36.
    expect(loadOf({ percentOneRepMax: 33, available: [36, 30] }).value).toBe(30);
    expect(loadOf({ percentOneRepMax: 33, available: [33, 30], rounding: 'down' }).value).toBe(33);
    expect(loadOf({ percentOneRepMax: 33, available: [100, 9, 34] }).value).toBe(34);

    const bar = loadOf({
      percentOneRepMax: 33,
      bar: 20,
      collars: 5,
      plates: [{ mass: 1.25 }, { mass: 2.5, count: 2 }],
    });
    expectHoldsTogether(bar);
    expect(bar.rounding).toEqual({ from: 33, to: 'nearest' });
    expect(bar.inputs).toEqual({
      oneRepMax: HUNDRED,
      percentOneRepMax: 33,
      unit: 'kg',
      rounding: 'nearest',
      bar: 20,
      collars: 5,
    });
    // 25 + 2 × (2.5 + 1.25) is 32.5.
    expect(bar.value).toBe(32.5);
    expect(bar.perSide).toEqual([
      { mass: 2.5, count: 1 },
      { mass: 1.25, count: 1 },
    ]);
    expect(loadOf({ percentOneRepMax: 33, bar: 20, plates: [{ mass: 5 }] }).inputs).toMatchObject({
      bar: 20,
      collars: 0,
    });
  });

  it('of the other limb', () => {
    const answer = loadOf({ maximumOf: 'other-limb' });
    expectHoldsTogether(answer);
    expect(answer.inputs).toEqual({ oneRepMax: HUNDRED, percentOneRepMax: 30, unit: 'kg', maximumOf: 'other-limb' });
    expect(message(answer.cautions)).toEqual([['maximum-of-other-limb', { severity: 'caution', path: ['maximumOf'] }]]);
    expect(answer.assumptions).toEqual([]);
    expect(loadOf({ maximumOf: 'this-limb' })).toEqual(loadOf({}));
  });

  it('of a maximum whose error is not known, or reaches zero', () => {
    const caution: Said = ['maximum-without-error', { severity: 'caution', path: ['oneRepMax'] }];
    const unknown = loadOf({ oneRepMax: estimateOneRepMax({ load: 50, repetitions: 12 }) });
    expectHoldsTogether(unknown);
    expect(message(unknown.cautions)).toEqual([caution]);
    expect(unknown.assumptions).toEqual([]);
    expect(Object.keys(unknown.reached!)).toEqual(['percentOneRepMax']);
    // 1.0970 × 10 + 14.2546 is 25.2 kg, and 1.96 × 16.16 more than that.
    const light = loadOf({
      oneRepMax: estimateOneRepMax({ load: 10, repetitions: 5, equation: 'leg-press-5rm-2006' }),
    });
    expectHoldsTogether(light);
    expect(message(light.cautions)).toEqual([caution]);
    expect(Object.keys(light.reached!)).toEqual(['percentOneRepMax', 'lower']);
  });

  it('of a maximum with an interval of the caller’s own', () => {
    const issues = (ends: object) =>
      refusal(trainingLoad, { oneRepMax: { ...HUNDRED, ...ends }, percentOneRepMax: 50 } as never).map(
        ([path]) => path,
      );
    expect(issues({ lower: 101, upper: 110 })).toEqual(['oneRepMax.value']);
    expect(issues({ lower: 90, upper: 99 })).toEqual(['oneRepMax.value']);
    expect(issues({ lower: 110, upper: 90 })).toEqual(['oneRepMax.lower']);
    expect(issues({ lower: 90, upper: undefined })).toEqual(['oneRepMax.upper']);
    expect(issues({ lower: undefined, upper: 110 })).toEqual(['oneRepMax.lower']);
    expect(issues({ lower: 100, upper: 100 })).toEqual([]);
  });

  const share = bodyMassLoad({ movement: 'push-up-top', sex: 'male', bodyMass: 80 });
  it('of a maximum that counts body mass', () => {
    // 80 % of 100 less 0.67 × 80 = 53.6; the share differs by 3.8 % of 80 kg between people (reference C.2).
    const answer = loadOf({ percentOneRepMax: 80, bodyMassLoad: share });
    expectHoldsTogether(answer);
    expectClose(answer.value, 26.4);
    expect(answer.errors!.map(({ part, evidence }) => [part, evidence])).toEqual([
      ['maximum', 'published'],
      ['sample', 'published'],
    ]);
    expectClose(answer.standardDeviation!, Math.hypot(0.8 * 4.2, 0.038 * 80));
    expect(working(answer)!.formula).toBe('p / 100 * M - b');
    expect(working(answer)!.symbols).toEqual({ p: 'percentOneRepMax', M: 'oneRepMax', b: 'bodyMassLoad' });
    expect(answer.inputs['bodyMassLoad']).toEqual(share);
    expect(codesOf(answer.assumptions)).toEqual(['body-mass-counted', 'normal-interval']);
    expectClose(answer.reached!.percentOneRepMax, 80);
    expect(answer.reached!.lower!).toBeCloseTo((100 * 80) / 108.232, 3);
    expect(answer.reached!.upper!).toBeCloseTo((100 * 80) / 91.768, 3);
    // A share without a spread adds none, and in the other unit the same load comes out.
    const pullUp = bodyMassLoad({ movement: 'pull-up', sex: 'male', bodyMass: 80 / POUND, unit: 'lb' });
    const other = loadOf({ percentOneRepMax: 80, bodyMassLoad: pullUp });
    expectHoldsTogether(other);
    expectClose(other.value, 80 - 76.4);
    expect(working(other)!.formula).toBe('p / 100 * M - b * 0.45359237');
    expect(other.errors!.map(({ part }) => part)).toEqual(['maximum']);
    const inPounds = loadOf({ percentOneRepMax: 80, bodyMassLoad: share, unit: 'lb' });
    expectHoldsTogether(inPounds);
    expectClose(inPounds.value, 26.4 / POUND);
    expectClose(inPounds.standardDeviation!, Math.hypot(0.8 * 4.2, 0.038 * 80) / POUND);
    expect(working(inPounds)!.formula).toBe('p / 100 * M / 0.45359237 - b / 0.45359237');
    // The percentage counts body mass: 25 + 53.6 of 100.
    const step = loadOf({ percentOneRepMax: 80, bodyMassLoad: share, step: 5 });
    expectClose(step.reached!.percentOneRepMax, 78.6);
    expect(codesOf(step.cautions)).toEqual(['above-restricted-loads']);
    // Without an error of the maximum, that of the share alone says nothing.
    const unknown = estimateOneRepMax({ load: 80, repetitions: 12 });
    expect(loadOf({ oneRepMax: unknown, percentOneRepMax: 80, bodyMassLoad: share })).not.toHaveProperty('errors');
  });

  // 30 % of 60 is 18, of no error.
  it('of a maximum that is a number, and exact', () => {
    const answer = trainingLoad({ oneRepMax: 60, percentOneRepMax: 30 });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({
      value: 18,
      unit: 'kg',
      evidence: 'definition',
      reached: { percentOneRepMax: 30 },
      cautions: [],
    });
    expect(message(answer.assumptions)).toEqual([['one-rep-max-exact']]);
    for (const field of ['lower', 'upper', 'standardDeviation', 'errors']) expect(answer).not.toHaveProperty(field);
    expect(answer.inputs['oneRepMax']).toMatchObject({
      kind: 'one-repetition-maximum',
      value: 60,
      unit: 'kg',
      equation: 'entered',
      evidence: 'definition',
      inputs: { load: 60, unit: 'kg' },
    });
    const inPounds = trainingLoad({ oneRepMax: 60, percentOneRepMax: 30, unit: 'lb', step: 5 });
    expectHoldsTogether(inPounds);
    expect(withWorking(inPounds)).toMatchObject({ value: 20, unit: '[lb_av]', formula: 'p / 100 * M' });
    // Given back from a database, it is still exact.
    const stored = JSON.parse(JSON.stringify(answer.inputs['oneRepMax'])) as Answer<'one-repetition-maximum'>;
    expect(trainingLoad({ oneRepMax: stored, percentOneRepMax: 30 })).toEqual(answer);
    expect(codesOf(trainingLoad({ oneRepMax: 60, percentOneRepMax: 30, maximumOf: 'other-limb' }).cautions)).toEqual([
      'maximum-of-other-limb',
    ]);
    for (const ends of [0.1, 2000])
      expect(trainingLoad({ oneRepMax: ends, percentOneRepMax: 50 }).value).toBeCloseTo(ends / 2, 12);
  });

  it('of a share of body mass that is a number', () => {
    // 80 % of 100 less 50.
    const answer = loadOf({ percentOneRepMax: 80, bodyMassLoad: 50 });
    expectHoldsTogether(answer);
    expect(answer.value).toBe(30);
    expect(codesOf(answer.assumptions)).toEqual(['body-mass-load-exact', 'body-mass-counted', 'normal-interval']);
    expect(answer.errors!.map(({ part }) => part)).toEqual(['maximum']);
    // In the unit of the load: 80 % of 100 lb less 50 lb.
    expectClose(loadOf({ oneRepMax: tested(100, 'lb'), percentOneRepMax: 80, bodyMassLoad: 50 }).value, 30);
    expect(codesOf(trainingLoad({ oneRepMax: 100, percentOneRepMax: 80, bodyMassLoad: 50 }).assumptions)).toEqual([
      'one-rep-max-exact',
      'body-mass-load-exact',
      'body-mass-counted',
    ]);
    expect(loadOf({ bodyMassLoad: 0 }).value).toBe(30);
  });

  it('refuses loads, as the golden page says', async () => {
    const cases = {
      'two ways': { step: 5, available: [5] },
      'three ways': { step: 5, available: [5], bar: 20, plates: [{ mass: 5 }] },
      'a step too coarse': { step: 70 },
      'a rack too heavy': { available: [60, 40], rounding: 'down' },
      'a bar too heavy': { bar: 45, plates: [{ mass: 5 }] },
      'a share above the percentage': { bodyMassLoad: share },
      'a share that is all of it': { bodyMassLoad: share, percentOneRepMax: 53.6 },
      'plates too fine': {
        bar: 20,
        plates: [{ mass: 0.10001 }, { mass: 1.23457 }, { mass: 2.71829 }],
        percentOneRepMax: 90,
        oneRepMax: tested(600),
      },
      'plates without a bar': { plates: [{ mass: 5 }] },
      'collars alone': { collars: 5 },
      'a bar alone': { bar: 20 },
      'a maximum above every load': { oneRepMax: 2001 },
      'no maximum': { oneRepMax: -1 },
      'a maximum in words': { oneRepMax: '100' },
      'a share above every body': { bodyMassLoad: 801 },
      'a share below nothing': { bodyMassLoad: -1 },
      'another kind of answer': { oneRepMax: share },
      'another answer for the share': { bodyMassLoad: HUNDRED },
      'a maximum in another unit': { oneRepMax: { ...HUNDRED, unit: '%' } },
      'a share in another unit': { bodyMassLoad: { ...share, unit: '%' } },
    };
    await expect(
      refusalPage(
        (more: object) => trainingLoad({ oneRepMax: HUNDRED, percentOneRepMax: 30, ...more } as never),
        cases,
      ),
    ).toMatchFileSnapshot('refused/loads.txt');
  });

  it('refuses no percentage, and says nothing of a rack it then cannot look at', () => {
    expect(refused({ percentOneRepMax: undefined, step: 5 }).map(([path, code]) => [path, code])).toEqual([
      ['percentOneRepMax', 'missing'],
    ]);
  });
});

describe('a loaded bar', () => {
  const plates: Plate[] = [
    { mass: 20, count: 2 },
    { mass: 10, count: 4 },
    { mass: 1.25, count: 2 },
  ];
  const load = (more: object) => loadPlates({ target: 63, bar: 20, plates, ...more } as never);

  it('says what is on it', () => {
    const answer = load({});
    expectHoldsTogether(answer);
    // 20 + 2 × (20 + 1.25).
    expect(withWorking(answer)).toMatchObject({
      kind: 'loaded-weight',
      value: 62.5,
      unit: 'kg',
      equation: 'bar-and-plates',
      evidence: 'definition',
      formula: 'b + c + 2 * s',
      cautions: [],
      sources: [],
    });
    expect(answer.inputs).toEqual({
      target: 63,
      bar: 20,
      collars: 0,
      perSide: '20 + 1.25',
      unit: 'kg',
      rounding: 'nearest',
    });
    expect(message(answer.assumptions)).toEqual([
      ['loaded-nearest', { values: { target: 63, unit: 'kg' } }],
      ['plates-in-pairs'],
    ]);
    const twoTens = load({ target: 60, plates: [{ mass: 10 }], collars: 0.4, unit: 'lb', rounding: 'down' });
    expectHoldsTogether(twoTens);
    expect(twoTens).toMatchObject({ value: 40.4, unit: '[lb_av]' });
    expect(twoTens.inputs).toEqual({
      target: 60,
      bar: 20,
      collars: 0.4,
      perSide: '10',
      unit: 'lb',
      rounding: 'down',
    });
    expect(load({ target: 60, plates: [{ mass: 10 }] }).inputs['perSide']).toBe('2 * 10');
    expect(message(twoTens.assumptions)[0]).toEqual(['loaded-not-above', { values: { target: 60, unit: 'lb' } }]);
    const empty = load({ target: 20 });
    expectHoldsTogether(empty);
    expect(empty).toMatchObject({ value: 20, perSide: [], inputs: { perSide: '0' } });
  });

  it('says how far the plates go', () => {
    const run = (target: number) => message(load({ target }).cautions);
    // 20 + 2 × (20 + 10 + 10 + 1.25).
    expect(run(102.5)).toEqual([]);
    expect(run(103)).toEqual([
      ['plates-run-out', { severity: 'caution', values: { most: 102.5, unit: 'kg' }, path: ['plates'] }],
    ]);
    // An odd plate stays off.
    expect(message(load({ target: 103, plates: [{ mass: 20, count: 3 }] }).cautions)[0]![1]).toMatchObject({
      values: { most: 60, unit: 'kg' },
    });
  });

  it('of two as near takes the lighter, of two as many plates the heavier ones', () => {
    expect(load({ target: 30, plates: [{ mass: 10 }] }).value).toBe(20);
    expect(load({ target: 30.1, plates: [{ mass: 10 }] }).value).toBe(40);
    expect(load({ target: 39.9, plates: [{ mass: 10 }], rounding: 'down' }).value).toBe(20);
    // 30 a side: 20 + 10 or 15 + 15.
    expect(load({ target: 80, plates: [{ mass: 15 }, { mass: 20 }, { mass: 10 }] }).perSide).toEqual([
      { mass: 20, count: 1 },
      { mass: 10, count: 1 },
    ]);
  });

  it('refuses bars, as the golden page says', async () => {
    const cases = {
      nothing: {},
      'a mass twice': { target: 60, bar: 20, plates: [{ mass: 5 }, { mass: 5, count: 2 }] },
      'a plate without mass': { target: 60, bar: 20, plates: [{ count: 2 }] },
      'half a plate': { target: 60, bar: 20, plates: [{ mass: 5, count: 1.5 }] },
      'too light a target': { target: 10, bar: 20, plates },
      'collars and a bar above the target': { target: 22, bar: 20, collars: 5, plates },
      '51 kinds': { target: 60, bar: 20, plates: Array.from({ length: 51 }, (_, index) => ({ mass: index + 1 })) },
      '51 of one kind': { target: 60, bar: 20, plates: Array.from({ length: 51 }, () => ({ mass: 1 })) },
      '50 kinds are taken': {
        target: 60,
        bar: 20,
        plates: Array.from({ length: 50 }, (_, index) => ({ mass: index + 1 })),
      },
      // Without a bar, a pair of the lightest is the lightest.
      'no bar, and one heavy pair': {
        target: 3,
        bar: 0,
        plates: [{ mass: 5 }, { mass: 4, count: 1 }],
        rounding: 'down',
      },
      'no bar, and no pair': { target: 3, bar: 0, plates: [{ mass: 5, count: 1 }] },
      'masses too fine': { target: 500, bar: 20, plates: [{ mass: 0.10001 }, { mass: 1.23457 }] },
    };
    await expect(refusalPage(loadPlates, cases)).toMatchFileSnapshot('refused/bars.txt');
  });

  it('a load of a bar in pounds', () => {
    const answer = trainingLoad({
      oneRepMax: tested(300, 'lb') as Answer<'one-repetition-maximum'>,
      percentOneRepMax: 30,
      bar: 45,
      plates: [{ mass: 10 }, { mass: 2.5 }],
    });
    expectHoldsTogether(answer);
    // 90 lb: 45 + 2 × 22.5.
    expect(answer).toMatchObject({ value: 90, unit: '[lb_av]' });
  });
});

// 80 000 g are 80 kg, and not 80 lb: grams are no likely slip where pounds are asked for.
it('guesses a slip in kilograms alone', () => {
  const load = (unit: 'kg' | 'lb') => refusal(testedOneRepMax, { load: 80_000, unit } as never).map(([, code]) => code);
  expect([load('kg'), load('lb')]).toEqual([['unit-slip'], ['out-of-range']]);
});
