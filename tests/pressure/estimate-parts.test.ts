import { describe, expect, it } from 'vitest';
import {
  answerCautions,
  postureCautions,
  readingCautions,
  siteCautions,
} from '../../src/pressure/estimate-cautions.js';
import type { Caution } from '../../src/answer/answer.js';

// What is expected is written by hand, from the facts that an equation states of itself.

const facts = (cautions: readonly Caution[]) =>
  cautions.map(({ severity, code, path, source, values }) => [severity, code, path?.join('.'), source, values]);
const equation = (more: object) =>
  ({ id: 'own', posture: 'supine', sources: ['thigh-2015'], fitted: {}, ...more }) as never;
const leg = {
  limb: 'leg',
  posture: 'seated',
  circumferenceCm: 55,
  cuffWidthCm: 10,
  systolicMmHg: 120,
  diastolicMmHg: 70,
};
const readings = (more: object = {}) => ({ ...leg, ...more }) as never;

describe('the posture', () => {
  const of = (fitted: string, more: object = {}) =>
    facts(postureCautions(equation({ posture: fitted }), readings(more)));
  const shift = {
    leg: ['note', 'posture-shifts-thigh', 'posture', 'posture-widths-2018', undefined],
    arm: ['note', 'posture-shifts-arm', 'posture', undefined, undefined],
  };
  it('is fine where it was fitted, in any, or lying where none is asked for', () => {
    expect(of('any')).toEqual([]);
    expect(of('seated')).toEqual([]);
    expect(of('none', { posture: 'supine' })).toEqual([]);
  });
  it('is noted where it is not stated, lying', () => {
    expect(of('not-stated', { posture: 'supine' })).toEqual([
      ['note', 'posture-not-stated', 'posture', undefined, { equation: 'own' }],
    ]);
  });
  it('has a caution otherwise, and what it does to the limb', () => {
    expect(of('none')).toEqual([['caution', 'posture-ignored', 'posture', undefined, { equation: 'own' }], shift.leg]);
    expect(of('not-stated')).toEqual([
      ['caution', 'posture-may-differ', 'posture', undefined, { equation: 'own', asked: 'seated' }],
      shift.leg,
    ]);
    expect(of('supine', { limb: 'arm' })).toEqual([
      ['caution', 'posture-differs', 'posture', undefined, { equation: 'own', fitted: 'supine', asked: 'seated' }],
      shift.arm,
    ]);
  });
});

it('the site of the circumference is fine in the middle, a caution under the cuff, a note where it is not given', () => {
  const of = (more: object) => facts(siteCautions(readings(more)));
  const path = 'circumferenceSite';
  expect(of({ circumferenceSite: 'mid-limb' })).toEqual([]);
  expect(of({ circumferenceSite: 'under-cuff' })).toEqual([
    ['caution', 'circumference-under-cuff-thigh', path, 'soldiers-2012', undefined],
  ]);
  expect(of({})).toEqual([['note', 'circumference-site-not-given-thigh', path, 'soldiers-2012', undefined]]);
  expect(of({ limb: 'arm' })).toEqual([['note', 'circumference-site-not-given-arm', path, undefined, undefined]]);
  expect(of({ limb: 'arm', circumferenceSite: 'under-cuff' })).toEqual([
    ['caution', 'circumference-under-cuff-arm', path, undefined, undefined],
  ]);
});

it('a reading has a caution outside the range that was fitted', () => {
  const fitted = { circumferenceCm: { low: 40, high: 60 } };
  const of = (circumferenceCm: number) => facts(readingCautions(equation({ fitted }), readings({ circumferenceCm })));
  expect([of(40), of(60)]).toEqual([[], []]);
  expect(of(61).map(([, code, path]) => [code, path])).toEqual([['outside-fitted-range', 'circumferenceCm']]);
});

describe('an answer', () => {
  const of = (value: number, more: object = {}, own: object = {}) =>
    facts(answerCautions(equation(own), value, readings(more)));
  it('is too low above a circumference that its equation names', () => {
    const own = { tooLowAbove: { circumferenceCm: 60 } };
    expect(of(150, { circumferenceCm: 60 }, own)).toEqual([]);
    expect(of(150, { circumferenceCm: 60.1 }, own)).toEqual([
      ['caution', 'too-low-above', 'circumferenceCm', 'thigh-2015', { equation: 'own', limit: 60 }],
    ]);
  });
  it('warns of narrow cuffs: below 5 cm anywhere, below 8 cm on a thigh', () => {
    const narrow = ['caution', 'narrow-cuff-on-thigh', 'cuffWidthCm', 'narrow-cuffs-2024', undefined];
    // 4 in are 10.16 cm.
    const slip = [
      'caution',
      'cuff-width-below-published',
      'cuffWidthCm',
      undefined,
      { value: 4, limit: 5, converted: 10.16 },
    ];
    expect(of(150, { cuffWidthCm: 8 })).toEqual([]);
    expect(of(150, { cuffWidthCm: 7.9 })).toEqual([narrow]);
    expect(of(150, { cuffWidthCm: 5 })).toEqual([narrow]);
    expect(of(150, { cuffWidthCm: 4 })).toEqual([slip, narrow]);
    expect(of(150, { cuffWidthCm: 4, limb: 'arm' })).toEqual([slip]);
    expect(of(150, { cuffWidthCm: 7, limb: 'arm' })).toEqual([]);
  });
  it('warns at and below the diastolic pressure', () => {
    expect(of(70.1)).toEqual([]);
    expect(of(70)).toEqual([['caution', 'below-diastolic', undefined, undefined, { diastolic: 70 }]]);
  });
  // Segmental pressures: a thigh index of 0.9 to 1.6, lying, with a cuff of 12 to 20 cm.
  it('warns of an unusual thigh index, lying under a wide cuff', () => {
    const lying = { posture: 'supine', cuffWidthCm: 12 };
    const unusual = (ratio: string) => [
      ['caution', 'outside-thigh-index', undefined, 'segmental-pressures', { ratio }],
    ];
    expect([of(108, lying), of(192, lying)]).toEqual([[], []]);
    expect(of(107, lying)).toEqual(unusual('0.89'));
    expect(of(193, { ...lying, cuffWidthCm: 20 })).toEqual(unusual('1.61'));
    for (const other of [{ cuffWidthCm: 20.1 }, { cuffWidthCm: 11.9 }, { limb: 'arm' }, { posture: 'seated' }])
      expect(of(193, { ...lying, ...other })).toEqual([]);
  });
});
