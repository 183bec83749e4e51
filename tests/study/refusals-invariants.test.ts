import { describe, expect, it } from 'vitest';
import { columns } from '../../src/study/index.js';
import { lifted, maximum, right } from '../support/columns.js';
import { refusal, refusalPage } from '../support/invariants.js';

describe('a call that is wrong', () => {
  type Refused = readonly [path: string, code: string, expected: string, received: string];
  const refused = (more: object, base: object = right): readonly Refused[] =>
    refusal(columns as never, { ...base, ...more });
  const target = { answer: 'cuff-pressure', percentLop: 50 };
  const load = { answer: 'training-load', percentOneRepMax: 30 };
  it('names the field, what it takes and what it was given, as the golden page says', async () => {
    const hostile = Object.defineProperty([54, 60, 66], 1, {
      get: () => {
        throw new RangeError('own');
      },
    });
    const of = (more: object) => ({ ...right, ...more });
    const cases = {
      'another answer': of({ answer: 'guess' }),
      'a number': 5,
      'another field': of({ girth: [1] }),
      'no column': of({ circumferenceCm: 55 }),
      'a column that is shorter': of({ systolicMmHg: [120, 121] }),
      'an object with a length': of({ systolicMmHg: { length: 3 } }),
      'a view of memory': of({ circumferenceCm: new DataView(new ArrayBuffer(8)) }),
      'no rows': of({ circumferenceCm: [] }),
      'a column that throws': of({ circumferenceCm: hostile }),
      'a column that is too long': of({ circumferenceCm: new Array(50_000_001) }),
      'no posture': of({ posture: undefined, equation: 'pooled-curve-thigh-2026' }),
      'one value for all that cannot be': of({ circumferenceCm: 9, systolicMmHg: [120, 120, 120] }),
      'another cuff': of({ equation: 'thigh-2015' }),
      'no age and no sex': of({ equation: 'thigh-2019', cuffWidthCm: 18 }),
      'an equation that is another document': of({ equation: { document: 'plan' } }),
      'another lift': { ...lifted, lift: 'deadlift', equation: 'squat-high-school-2003' },
      'one set': { ...lifted, load: 100 },
    };
    await expect(refusalPage(columns as never, cases)).toMatchFileSnapshot('refused/columns.txt');
    // Their list of equations grows.
    for (const input of [of({ equation: 'auto' }), { ...lifted, equation: 'mine' }])
      expect(refusal(columns as never, input)[0]!.slice(0, 2)).toEqual(['equation', 'not-one-of']);
  });

  it('takes column answers as they were given, and no others', () => {
    const occlusion = columns(right);
    const of = (more: object) => refused({ occlusion: { ...occlusion, ...more } }, target);
    const none = (received: string): Refused[] => [
      ['occlusion', 'wrong-type', 'a column answer of occlusion-pressure', received],
    ];
    expect(of({})).toEqual([]);
    expect(refused({}, target)).toEqual([['occlusion', 'missing', none('')[0]![2], 'undefined']]);
    expect(refused({ occlusion: null }, target)).toEqual(none('null'));
    const { about } = occlusion;
    for (const wrong of [
      { value: [160, 170, 180] },
      { lower: new Float64Array(2) },
      { upper: new Float32Array(3) },
      { flag: new Uint8Array(2) },
      { flag: new Float64Array(3) },
      { about: undefined },
      { about: { ...about, unit: 'kg' } },
      { about: { ...about, evidence: 'good' } },
    ])
      expect(of(wrong)).toEqual(none('an object'));
    expect(of({ about: { ...about, kind: 'cuff-pressure' } })).toEqual(none('"cuff-pressure"'));
    expect(refused({ oneRepMax: occlusion }, load)).toEqual([
      ['oneRepMax', 'wrong-type', 'a column answer of one-repetition-maximum', '"occlusion-pressure"'],
    ]);
    const kept = columns({ answer: 'cuff-pressure', percentLop: 50, occlusion });
    expect(kept.about.inputs).toEqual({ occlusion: about });
  });

  it('brings a load to what there is in one way', () => {
    const oneRepMax = maximum();
    const way = (more: object) => refused({ oneRepMax, ...more }, load);
    const both = (name: 'available' | 'bar', first: string): Refused => [
      name,
      'wrong-relation',
      `left out when ${first} is given`,
      { available: 'a list of 1', bar: '20' }[name],
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
    const wrong = (received: string): Refused[] => [
      [
        'into',
        'wrong-type',
        'four Float64Array (value, lower, upper, standardDeviation) and a Uint8Array (flag), each of 3 rows',
        received,
      ],
    ];
    const one = columns({ ...right, circumferenceCm: [54] });
    const { value, lower, upper, standardDeviation, flag } = into();
    expect(refused({ into: into() })).toEqual([]);
    expect(refused({ into: null })).toEqual(wrong('null'));
    expect(refused({ into: 5 })).toEqual(wrong('5'));
    for (const given of [
      one,
      { value, lower: value, upper, standardDeviation, flag },
      { value, lower, upper: lower, standardDeviation, flag },
      { value, lower, upper, standardDeviation: upper, flag },
      { value, lower, upper, standardDeviation, flag: new Uint8Array(2) },
      { value, lower, upper, standardDeviation },
      { value, lower, upper, flag },
      { value: [1, 2, 3], lower, upper, standardDeviation, flag },
    ])
      expect(refused({ into: given })).toEqual(wrong('an object'));
  });
});
