import { compile } from 'mathjs';
import { describe, expect, it } from 'vitest';
import formulas from '../../src/checks/pressure-formulas.json' with { type: 'json' };
import {
  circumferenceBandPressure,
  correctForBladderWidth,
  correctForPosture,
  equations,
  InputError,
  systolicSharePressure,
  targetCuffPressure,
  withinFittedRange,
} from '../../src/index.js';
import { explain, knownEquations, sources, working } from '../../src/text/index.js';
import * as bare from '../../src/equations.js';
import { posturePairs } from '../../docs/working/equation-errors.js';
import { eachRow, expectWithin } from '../support/rows.js';
import { withWorking } from '../support/invariants.js';

describe('other pressure formulas', () => {
  const functions: Readonly<Record<string, (...inputs: number[]) => number>> = {
    systolicBias: bare.systolicBias,
    zeroErrorBladderWidth: bare.zeroErrorBladderWidth,
    circumferenceBands: bare.circumferenceBands,
    systolic130: bare.systolic130,
    widthRatioSlope: (width) => bare.widthRatio(55, 120, 70, width!) - bare.widthRatio(54, 120, 70, width!),
  };
  eachRow(formulas, ({ function: name, inputs, expected, tolerance }) => {
    expectWithin(functions[name]!(...inputs), expected, tolerance);
  });

  // Source: the other trace of the width-ratio formula, 16.67 × C / W + 67, unconfirmed: the general one at 117/67.
  it('agree with the other trace of the width-ratio formula', () => {
    for (const [girth, width] of [
      [55, 5],
      [32, 12],
      [60, 18],
    ] as const) {
      // 16.67 is 50 / 3 to four digits: 0.0034 for each unit of C / W.
      expectWithin(bare.widthRatio(girth, 117, 67, width), (16.67 * girth) / width + 67, (0.0034 * girth) / width);
    }
  });
});

describe('fixed training pressures', () => {
  const fixed = [circumferenceBandPressure({ circumferenceCm: 58 }), systolicSharePressure({ systolicMmHg: 120 })];
  it('are no occlusion pressures, and no percentage is taken of them', () => {
    for (const pressure of fixed) {
      expect(pressure).toMatchObject({ kind: 'fixed-training-pressure', evidence: 'unconfirmed' });
      expect(pressure).not.toHaveProperty('standardDeviation');
      expect(pressure.cautions.map(({ code }) => code)).toContain('not-an-occlusion-pressure');
      expect(() => targetCuffPressure({ occlusion: pressure as never, percentLop: 50 })).toThrow(InputError);
      expect(explain(pressure)).toContain('not an occlusion pressure');
      // Source: the formula text, evaluated by mathjs.
      const [[symbol, field]] = Object.entries(working(pressure)!.symbols) as [[string, string]];
      expect(compile(working(pressure)!.formula).evaluate({ [symbol]: pressure.inputs[field] })).toBeCloseTo(
        pressure.value,
        9,
      );
    }
    expect(equations.occlusionPressure.map(({ id }) => id as string)).not.toContain('systolic-130');
  });
});

describe('correctForPosture', () => {
  const shift = {
    occlusionMmHg: 150,
    diastolicMmHg: 70,
    limb: 'leg',
    cuffWidthCm: 13.5,
    fromPosture: 'supine',
    toPosture: 'seated',
  } as const;
  // Source: the same people in two postures, each with its publication in docs/working/equation-errors.ts.
  it.each(posturePairs.map(([low, high]) => [low.mean, low.at, high.mean, high.at, low.widthCm, low.source] as const))(
    'holds the published pair %f %s, %f %s (%f cm, %s) within its interval, and undoes itself',
    (occlusionMmHg, fromPosture, mean, toPosture, cuffWidthCm) => {
      const there = correctForPosture({ ...shift, cuffWidthCm, occlusionMmHg, fromPosture, toPosture });
      expect(there.lower).toBeLessThan(mean);
      expect(there.upper).toBeGreaterThan(mean);
      const back = correctForPosture({
        ...shift,
        cuffWidthCm,
        occlusionMmHg: there.value,
        fromPosture: toPosture,
        toPosture: fromPosture,
      });
      expect(back.value).toBeCloseTo(occlusionMmHg, 9);
    },
  );
  // A conference abstract of 2018, n 20, width not reported: 179 supine, 203 seated.
  it('holds a pair that the factors were not fitted on', () => {
    const { value, lower, upper } = correctForPosture({ ...shift, occlusionMmHg: 179 });
    expect(Math.abs(value - 203)).toBeLessThan(5);
    expect(lower).toBeLessThan(203);
    expect(upper).toBeGreaterThan(203);
  });
  it('leaves an equal posture alone, on any limb and with any cuff', () => {
    const same = correctForPosture({ ...shift, limb: 'arm', cuffWidthCm: 5, toPosture: 'supine' });
    expect(same).toMatchObject({ value: 150, standardDeviation: 0, cautions: [] });
  });
  it('is less sure with narrow cuffs, without a jump', () => {
    const deviation = (cuffWidthCm: number) => correctForPosture({ ...shift, cuffWidthCm }).standardDeviation!;
    expect(deviation(5)).toBeCloseTo(2.5 * deviation(11), 9);
    expect(deviation(8)).toBeCloseTo((deviation(5) + deviation(11)) / 2, 9);
    expect([deviation(3), deviation(20)]).toEqual([deviation(5), deviation(11)]);
  });
});

describe('correctForBladderWidth', () => {
  const reading = { systolicMmHg: 140, diastolicMmHg: 85, circumferenceCm: 42, bladderWidthCm: 12 };
  const codes = (change: object) =>
    correctForBladderWidth({ ...reading, ...change }).systolic.cautions.map(({ code }) => code);
  it('takes the published bias off', () => {
    const { systolic, diastolic } = correctForBladderWidth(reading);
    expectWithin(systolic.value, 140 - 12.08, 0.005);
    for (const answer of [systolic, diastolic]) {
      const scope = Object.fromEntries(
        Object.entries(working(answer)!.symbols).map(([symbol, field]) => [symbol, answer.inputs[field as string]]),
      );
      expect(compile(working(answer)!.formula).evaluate(scope)).toBeCloseTo(answer.value, 9);
      expect(withWorking(answer)).toMatchObject({ evidence: 'published', sources: ['monica-quality'] });
    }
  });
  it('is refused outside its bladders, and cautions outside its arms', () => {
    for (const bladderWidthCm of [11.9, 18.1]) {
      expect(() => correctForBladderWidth({ ...reading, bladderWidthCm })).toThrow(InputError);
    }
    expect(codes({})).toEqual([]);
    expect(codes({ circumferenceCm: 51 })).toEqual(['arm-outside-bias-range']);
    expect(codes({ circumferenceCm: 25 })).toEqual(['arm-outside-bias-range']);
    expect(() => correctForBladderWidth({ ...reading, systolicMmHg: 87 })).toThrow(InputError);
  });
});

describe('withinFittedRange', () => {
  const zones = (input: object) =>
    Object.fromEntries(withinFittedRange(input as never).fields.map(({ field, zone }) => [field, zone]));
  it('says inside, outside or not known, field by field', () => {
    const thigh = { equation: 'thigh-2019', limb: 'leg', cuffWidthCm: 18.5, circumferenceCm: 55, systolicMmHg: 120 };
    expect(zones({ ...thigh, ageYears: 18 })).toEqual({
      limb: 'inside',
      cuffWidthCm: 'inside',
      circumferenceCm: 'not-known',
      systolicMmHg: 'not-known',
      ageYears: 'inside',
    });
    expect(zones({ ...thigh, limb: 'arm', cuffWidthCm: 18.6, ageYears: 36 })).toMatchObject({
      limb: 'outside',
      cuffWidthCm: 'outside',
      ageYears: 'outside',
    });
    expect(zones({ equation: 'thigh-2019' })).toMatchObject({ limb: 'not-known', ageYears: 'not-known' });
  });
  it('is inside only where every range is known', () => {
    const padding = { equation: 'padding-2006', circumferenceCm: 75 } as const;
    expect(withinFittedRange(padding)).toMatchObject({ zone: 'not-known' });
    expect(withinFittedRange({ ...padding, circumferenceCm: 76 })).toMatchObject({ zone: 'outside' });
  });
  it('agrees with the ranges that are data', () => {
    for (const { id, fitted } of equations.occlusionPressure) {
      for (const { field, fitted: range } of withinFittedRange({ equation: id }).fields) {
        if (range && field in fitted) expect(range).toEqual(fitted[field as keyof typeof fitted]);
      }
    }
  });
});

describe('known equations', () => {
  it('are listed with their reason, and none of them is offered', () => {
    expect(knownEquations.length).toBeGreaterThan(10);
    const offered = equations.occlusionPressure.map(({ id }) => id as string);
    for (const { id, reason, error, source } of knownEquations) {
      expect(offered).not.toContain(id);
      expect(reason).toMatch(/not|no /);
      expect(error).not.toBe('');
      expect(sources).toHaveProperty(source);
    }
  });
});
