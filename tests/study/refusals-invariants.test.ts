import { describe, expect, it } from 'vitest';
import { columns } from '../../src/study/index.js';
import { lifted, maximum, right } from '../support/columns.js';
import { refusal } from '../support/invariants.js';

describe('a call that is wrong', () => {
  type Refused = readonly [path: string, code: string, expected: string, received: string];
  const refused = (more: object, base: object = right): readonly Refused[] =>
    refusal(columns as never, { ...base, ...more });
  const target = { answer: 'cuff-pressure', percentLop: 50 };
  const load = { answer: 'training-load', percentOneRepMax: 30 };
  it('names the field, what it takes and what it was given', () => {
    const answers = "one of 'occlusion-pressure', 'cuff-pressure', 'one-repetition-maximum', 'training-load'";
    expect(refused({ answer: 'guess' })).toEqual([['answer', 'not-one-of', answers, '"guess"']]);
    expect(refusal(columns as never, 5)[0]!.slice(0, 2)).toEqual(['', 'wrong-type']);
    expect(refused({ girth: [1] })).toEqual([['girth', 'unknown-field', 'perhaps circumferenceCm', '"girth"']]);
    expect(refused({ circumferenceCm: 55 })).toEqual([
      ['circumferenceCm', 'wrong-relation', 'a column, or another field one', 'one value for every field'],
    ]);
    expect(refused({ systolicMmHg: [120, 121] })).toEqual([
      ['systolicMmHg', 'wrong-relation', 'as long as the other columns, 3 rows', '2'],
    ]);
    expect(refused({ systolicMmHg: { length: 3 } })).toEqual([
      ['systolicMmHg', 'wrong-type', 'a number from 60 to 300 mmHg', 'an object'],
    ]);
    expect(refused({ circumferenceCm: new DataView(new ArrayBuffer(8)) })[0]!.slice(0, 2)).toEqual([
      'circumferenceCm',
      'wrong-type',
    ]);
    expect(refused({ circumferenceCm: Array.from({ length: 0 }) })).toEqual([]);
    const endless = Object.defineProperty([54, 60, 66], 1, {
      get: () => {
        throw new RangeError('own');
      },
    });
    expect(refused({ circumferenceCm: endless })[0]).toEqual([
      'circumferenceCm',
      'wrong-relation',
      'a column that can be read',
      'an error',
    ]);
    expect(refused({ circumferenceCm: new Array(50_000_001) })[0]).toEqual([
      'circumferenceCm',
      'wrong-relation',
      'a column of at most 50000000 rows',
      '50000001',
    ]);
    expect(refused({ posture: undefined, equation: 'pooled-curve-thigh-2026' })).toEqual([
      ['posture', 'missing', "one of 'supine', 'seated', 'standing'", 'undefined'],
    ]);
    expect(refused({ circumferenceCm: 9, systolicMmHg: [120, 120, 120] })[0]!.slice(1)).toEqual([
      'out-of-range',
      'a number from 25 to 120 cm',
      '9',
    ]);
    expect(refused({ equation: 'thigh-2015' })).toEqual([
      ['cuffWidthCm', 'wrong-relation', expect.stringMatching(/^5 cm/), '10'],
    ]);
    expect(refused({ equation: 'thigh-2019', cuffWidthCm: 18 }).map(([path, code]) => [path, code])).toEqual([
      ['ageYears', 'missing'],
      ['sex', 'missing'],
    ]);
    expect(refused({ equation: 'auto' })[0]!.slice(0, 2)).toEqual(['equation', 'not-one-of']);
    const own = 'the id of a published equation, or a whole equation of fitOcclusionEquation';
    expect(refused({ equation: { document: 'plan' } })[0]!.slice(0, 3)).toEqual(['equation', 'wrong-type', own]);
    expect(refused({ lift: 'deadlift', equation: 'squat-high-school-2003' }, lifted)).toEqual([
      ['lift', 'wrong-relation', 'squat for equation squat-high-school-2003', '"deadlift"'],
    ]);
    expect(refused({ load: 100 }, lifted)[0]!.slice(0, 2)).toEqual(['load', 'wrong-relation']);
    expect(refused({ equation: 'mine' }, lifted)[0]!.slice(0, 2)).toEqual(['equation', 'not-one-of']);
  });

  it('takes column answers as they were given, and no others', () => {
    const occlusion = columns(right);
    const of = (more: object) => refused({ occlusion: { ...occlusion, ...more } }, target);
    const none: Refused[] = [['occlusion', 'wrong-type', 'a column answer of occlusion-pressure', 'something else']];
    expect(of({})).toEqual([]);
    expect(refused({}, target)).toEqual([['occlusion', 'missing', none[0]![2], 'something else']]);
    expect(refused({ occlusion: null }, target)).toEqual(none);
    const { about } = occlusion;
    for (const wrong of [
      { value: [160, 170, 180] },
      { lower: new Float64Array(2) },
      { upper: new Float32Array(3) },
      { flag: new Uint8Array(2) },
      { flag: new Float64Array(3) },
      { about: undefined },
      { about: { ...about, kind: 'cuff-pressure' } },
      { about: { ...about, unit: 'kg' } },
      { about: { ...about, evidence: 'good' } },
    ])
      expect(of(wrong)).toEqual(none);
    expect(refused({ oneRepMax: occlusion }, load)).toEqual([
      ['oneRepMax', 'wrong-type', 'a column answer of one-repetition-maximum', 'something else'],
    ]);
    const kept = columns({ answer: 'cuff-pressure', percentLop: 50, occlusion });
    expect(kept.about.inputs).toEqual({ occlusion: about });
  });

  it('brings a load to what there is in one way', () => {
    const oneRepMax = maximum();
    const way = (more: object) => refused({ oneRepMax, ...more }, load);
    const both = (name: string, first: string): Refused => [
      name,
      'wrong-relation',
      `left out when ${first} is given`,
      'both',
    ];
    const bar = { bar: 20, plates: [{ mass: 5 }] };
    expect(way({ step: 2.5, available: [10] })).toEqual([both('available', 'step')]);
    expect(way({ step: 2.5, ...bar })).toEqual([both('bar', 'step')]);
    expect(way({ available: [10], ...bar })).toEqual([both('bar', 'available')]);
    expect(way({ step: 2.5, available: [10], ...bar })).toEqual([both('available', 'step'), both('bar', 'step')]);
    expect([way(bar), way({ step: 2.5 }), way({ available: [10] })]).toEqual([[], [], []]);
    const heavy = { ...bar, bar: 300 };
    expect(way(heavy)).toEqual([['bar', 'unit-slip', 'a number from 0 to 200 kg', '300']]);
    const pounds = columns({ ...lifted, unit: 'lb' });
    expect(refused({ oneRepMax: pounds, ...heavy }, load)[0]![2]).toBe('a number from 0 to 200 lb');
    expect(refused({ oneRepMax: pounds, available: [0] }, load)[0]![2]).toBe('a number from 0.1 to 2000 lb');
    expect(way({ rounding: 'up' })[0]!.slice(0, 2)).toEqual(['rounding', 'not-one-of']);
  });

  it('writes into columns of the right length that lie apart', () => {
    const into = () => columns(right);
    const wrong: Refused[] = [
      [
        'into',
        'wrong-type',
        'four Float64Array (value, lower, upper, standardDeviation) and a Uint8Array (flag), each of 3 rows',
        'something else',
      ],
    ];
    const one = columns({ ...right, circumferenceCm: [54] });
    const { value, lower, upper, standardDeviation, flag } = into();
    expect(refused({ into: into() })).toEqual([]);
    for (const given of [
      null,
      5,
      one,
      { value, lower: value, upper, standardDeviation, flag },
      { value, lower, upper: lower, standardDeviation, flag },
      { value, lower, upper, standardDeviation: upper, flag },
      { value, lower, upper, standardDeviation, flag: new Uint8Array(2) },
      { value, lower, upper, standardDeviation },
      { value, lower, upper, flag },
      { value: [1, 2, 3], lower, upper, standardDeviation, flag },
    ])
      expect(refused({ into: given })).toEqual(wrong);
  });
});
