import { describe, expect, it } from 'vitest';
import {
  attempt,
  estimateOcclusionPressure,
  estimateOneRepMax,
  targetCuffPressure,
  trainingLoad,
} from '../../src/index.js';
import { columns, flagCodes } from '../../src/study/index.js';
import { expectSame, lifted, maximum, right, scalarRow } from '../support/columns.js';
import { working, cite } from '../../src/text/index.js';

// The scalar functions are the judge: they are held to publications elsewhere.

describe('cuff pressures', () => {
  // 50/30 × girth + 70: 160, 170 and 180 mmHg.
  const occlusion = () => columns(right);
  const { answer: _, ...place } = right;
  const one = (girth: number, asked: object) =>
    attempt(targetCuffPressure, {
      occlusion: estimateOcclusionPressure({ ...place, circumferenceCm: girth } as never),
      ...asked,
    } as never);
  it('are those of one limb each, by gauge and ceiling', () => {
    const percents = [50, 1, 100, 0.9, 101, 33.3, NaN, null];
    const gauges = [undefined, 5, 2, 0.5, 50, 0.1, 1 / 3, 0.05, null];
    const ceilings = [undefined, 80, 85, 90, 20, 19, 1000, null];
    for (const percentLop of percents) {
      for (const gaugeStepMmHg of gauges) {
        const rows = ceilings.map(() => 54);
        const got = columns({
          answer: 'cuff-pressure',
          occlusion: columns({ ...right, circumferenceCm: rows }),
          percentLop: rows.map(() => percentLop),
          gaugeStepMmHg: rows.map(() => gaugeStepMmHg),
          ceilingMmHg: ceilings,
        });
        ceilings.forEach((ceilingMmHg, at) =>
          expectSame(got, at, one(54, scalarRow({ percentLop, gaugeStepMmHg, ceilingMmHg }))),
        );
      }
    }
  });

  it('are the same for one setting of all rows, and where there is none', () => {
    for (const more of [{}, { gaugeStepMmHg: 5 }, { gaugeStepMmHg: 2, ceilingMmHg: 84 }]) {
      const got = columns({ answer: 'cuff-pressure', occlusion: occlusion(), percentLop: 50, ...more });
      [54, 60, 66].forEach((girth, at) => expectSame(got, at, one(girth, { percentLop: 50, ...more })));
      expect(got.about).toMatchObject({
        kind: 'cuff-pressure',
        unit: 'mm[Hg]',
        level: 0.95,
        equation: 'percent-of-occlusion',
        evidence: 'unconfirmed',
      });
      expect(working(got.about)).toEqual({
        formula: 'p / 100 * LOP',
        symbols: { p: 'percentLop', LOP: 'occlusion' },
        sources: ['guideline-review-2019'],
      });
      expect(got.about.assumptions.map(({ code }) => code)).toEqual(['log-normal-interval']);
      expect(cite(got.about).map(({ id }) => id)).toEqual([
        ...working(occlusion().about)!.sources,
        'guideline-review-2019',
      ]);
    }
  });

  // In doubles 0.57 × 300 is 170.99999999999997, and 0.07 × 100 is 7.000000000000001; in decimals 171 and 7.
  it('are the multiples that decimals have, on the edge between two steps', () => {
    const own = occlusion();
    own.value.set([300, 100, 160]);
    for (const end of [own.lower, own.upper]) end.set(own.value);
    const set = (percentLop: number[], more = {}) =>
      Array.from(columns({ answer: 'cuff-pressure', occlusion: own, percentLop, ...more }).value);
    expect(set([57, 7, 50])).toEqual([171, 7, 80]);
    expect(set([57, 7, 50], { gaugeStepMmHg: 0.1 })).toEqual([171, 7, 80]);
    expect(set([57, 57, 57], { ceilingMmHg: 171 })).toEqual([171, 57, 91]);
    expect(set([29, 29, 29], { gaugeStepMmHg: 0.3 })).toEqual([87, 28.8, 46.2]);
  });

  it('keep what was said of a row, and refuse an occlusion pressure that is none', () => {
    const message = columns({ ...right, systolicMmHg: [185, 120, 120], diastolicMmHg: [70, 130, null as never] });
    const got = columns({ answer: 'cuff-pressure', occlusion: message, percentLop: 50, ceilingMmHg: 100 });
    expect(Array.from(got.flag, flagCodes)).toEqual([
      ['ceiling-reached', 'blood-pressure-refer'],
      ['relation'],
      ['missing'],
    ]);
    const changed = (value: number) => {
      const own = occlusion();
      for (const column of [own.value, own.lower, own.upper]) column[0] = value;
      return flagCodes(columns({ answer: 'cuff-pressure', occlusion: own, percentLop: 50 }).flag[0]!);
    };
    expect([24.9, 25, 4000, 4000.1, NaN].map(changed)).toEqual([['impossible'], [], [], ['impossible'], ['missing']]);
    // An end on the wrong side of its value.
    for (const [end, factor] of [
      ['lower', 1.01],
      ['upper', 0.99],
    ] as const) {
      const own = occlusion();
      own[end][0] = own.value[0]! * factor;
      const { value, flag } = columns({ answer: 'cuff-pressure', occlusion: own, percentLop: 50 });
      expect([value[0], flagCodes(flag[0]!)]).toEqual([NaN, ['impossible']]);
    }
  });
});

describe('training loads', () => {
  // 15 repetitions by Epley are half as much again: maxima of 150, 20.4 and 61.5 kg.
  const maxima = { equation: 'epley-1985', load: [100, 13.6, 41], repetitions: 15 } as const;
  const percents = [20, 27.5, 29.4, 30, 50, 98, 100, 0.9, NaN];
  const plates = [{ mass: 1.25, count: 2 }, { mass: 5, count: 4 }, { mass: 20 }];
  it.each([
    {},
    { step: 2.5 },
    { step: 0.07 },
    { available: [30, 5, 6, 15, 10, 29.4] },
    { available: [27.5] },
    { available: [0.1, 100] },
    { bar: 20, plates },
    { bar: 0, collars: 0.5, plates },
    { bar: 29.4, plates: [{ mass: 0.3 }] },
    // More weights than are listed.
    { bar: 5, plates: [{ mass: 0.37 }, { mass: 0.41 }, { mass: 0.43 }, { mass: 0.47 }, { mass: 7.77 }] },
  ])('are those of one maximum each: %j', (way) => {
    const oneRepMax = columns({ answer: 'one-repetition-maximum', ...maxima });
    const scalar = maxima.load.map((load) => estimateOneRepMax({ ...maxima, load }));
    for (const rounding of [undefined, 'down', 'nearest'] as const) {
      for (const percent of percents) {
        const more = { ...way, rounding };
        const got = columns({
          answer: 'training-load',
          oneRepMax,
          percentOneRepMax: scalar.map(() => percent),
          ...more,
        });
        scalar.forEach((one, row) => {
          const input = { oneRepMax: one, ...scalarRow({ percentOneRepMax: percent }), ...more };
          expectSame(got, row, attempt(trainingLoad, input as never));
        });
      }
    }
  });

  it('are brought to loads one way', () => {
    const ways = { step: 1, available: [10], bar: 20, plates };
    const result = attempt(columns, { answer: 'training-load', oneRepMax: maximum(), percentOneRepMax: 30, ...ways });
    expect(result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`)).toEqual([
      'available wrong-relation',
      'bar wrong-relation',
    ]);
  });

  it('say how they were made', () => {
    const { about } = columns({ answer: 'training-load', oneRepMax: maximum(), percentOneRepMax: 30 });
    expect(about).toMatchObject({ kind: 'training-load', unit: 'kg', equation: 'percent-of-maximum' });
    expect(working(about)).toMatchObject({
      formula: 'p / 100 * M',
      symbols: { p: 'percentOneRepMax', M: 'oneRepMax' },
    });
  });

  it('keep pounds', () => {
    const oneRepMax = columns({ ...lifted, unit: 'lb' });
    const { about, value } = columns({
      answer: 'training-load',
      oneRepMax,
      percentOneRepMax: 40,
      bar: 45,
      plates: [{ mass: 2.5 }],
    });
    // 40 % of 140 lb is 56: the bar of 45 and 2 × 2 × 2.5.
    expect([about.unit, value[2]]).toEqual(['[lb_av]', 55]);
    expect(oneRepMax.about.unit).toBe('[lb_av]');
  });
});

describe('flags', () => {
  // 180/110 and above is to be referred; what is impossible has no relation to anything.
  it('say of each row what is wrong with it, and no more', () => {
    const pressures = [
      [120, 70, []],
      [70, 70, ['relation']],
      [70, 120, ['relation']],
      [50, 70, ['impossible']],
      [301, 70, ['impossible']],
      [120, 250, ['impossible']],
      [120, 29, ['impossible']],
      [NaN, 120, ['missing']],
      [180, 70, ['blood-pressure-refer']],
      [150, 110, ['blood-pressure-refer']],
      [60, 30, []],
      [300, 200, ['blood-pressure-refer']],
      [200, 200, ['relation']],
    ] as const;
    const got = columns({
      ...right,
      circumferenceCm: pressures.map(() => 54),
      systolicMmHg: pressures.map(([systolic]) => systolic),
      diastolicMmHg: pressures.map(([, diastolic]) => diastolic),
    });
    expect(Array.from(got.flag, flagCodes)).toEqual(pressures.map(([, , codes]) => codes));
  });
});

describe('columns that are read and written at once', () => {
  it('give what they give apart', () => {
    for (const more of [{}, { systolicErrorMmHg: 5 }]) {
      const apart = columns({ ...right, ...more });
      const memory = new Float64Array(12);
      const [value, lower, upper, standardDeviation] = [0, 3, 6, 9].map((from) => memory.subarray(from, from + 3));
      value!.set([54, 60, 66]);
      // One column of the input is an output, and another lies across two of them.
      const across = memory.subarray(4, 7).fill(120);
      const flag = new Uint8Array(3);
      const into = { value: value!, lower: lower!, upper: upper!, standardDeviation: standardDeviation!, flag };
      const got = columns({ ...right, ...more, circumferenceCm: value!, systolicMmHg: across, into });
      expect(got.value).toBe(value);
      for (const name of ['value', 'lower', 'upper', 'standardDeviation', 'flag'] as const)
        expect(Array.from(got[name])).toEqual(Array.from(apart[name]));
    }
  });
});
