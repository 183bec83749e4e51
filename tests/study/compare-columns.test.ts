import { describe, expect, it } from 'vitest';
import { attempt, equations } from '../../src/index.js';
import { compareColumns } from '../../src/study/index.js';

const leg = {
  limb: 'leg',
  cuffWidthCm: 18,
  posture: 'supine',
  circumferenceCm: [54, 60],
  systolicMmHg: 120,
  diastolicMmHg: 70,
} as const;
const all = equations.occlusionPressure.map(({ id }) => id);
const why = (more: object) =>
  Object.fromEntries(
    compareColumns({ ...leg, ...more } as never).notApplicable.map((one) => [one.equation, one.field]),
  );
const issuesOf = (input: unknown) => {
  const result = attempt(compareColumns as (input: unknown) => unknown, input);
  return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
};

describe('equations side by side, over columns', () => {
  it('are all there, used or with the field that speaks against them', () => {
    for (const more of [{}, { limb: 'arm', circumferenceCm: [30, 31] }, { ageYears: 30, sex: 'male' }]) {
      const { about, notApplicable } = compareColumns({ ...leg, ...more } as never);
      const named = [...about.map(({ equation }) => equation), ...notApplicable.map(({ equation }) => equation)];
      expect([...named].sort()).toEqual([...all].sort());
    }
  });

  // What each needs and is for: the records of the equations.
  it('do not apply for a field that is not given, another limb or another cuff', () => {
    expect(why({})['thigh-2019']).toBe('ageYears');
    expect(why({ limb: 'arm', circumferenceCm: [30, 31], ageYears: 30, sex: 'male' })['thigh-2019']).toBe('limb');
    expect(why({ cuffWidthCm: 10 })['thigh-index-18']).toBe('cuffWidthCm');
    expect(why({ cuffWidthCm: 10 })).not.toHaveProperty('width-ratio-1993');
    // Rows of both limbs or of several cuffs are flagged one by one.
    expect(why({ limb: ['leg', 'arm'] })).not.toHaveProperty('thigh-index-18');
  });

  it('number their rows and their equations', () => {
    const { row, equation, about, value } = compareColumns(leg);
    expect(Array.from(row)).toEqual(about.flatMap(() => [0, 1]));
    expect(Array.from(equation)).toEqual(about.flatMap((_, at) => [at, at]));
    expect(value).toHaveLength(2 * about.length);
  });

  it.each([
    ['a wrong reading', { ...leg, systolicMmHg: 1200 }, ['systolicMmHg out-of-range']],
    ['columns of two lengths', { ...leg, diastolicMmHg: [70] }, ['diastolicMmHg wrong-relation']],
    ['a field that nobody knows', { ...leg, girth: 54 }, ['girth unknown-field']],
    [
      'what it fills in itself',
      { ...leg, answer: 'x', equation: 'y', into: {} },
      ['answer wrong-relation', 'equation wrong-relation', 'into wrong-relation'],
    ],
    ['another limb', { ...leg, limb: 'torso' }, ['limb not-one-of']],
  ])('are refused for %s', (_what, input, issues) => {
    expect(issuesOf(input)).toEqual(issues);
  });

  it('are refused where none applies, and for what is no input', () => {
    const { systolicMmHg: _, ...less } = leg;
    expect(issuesOf(less)).toEqual(['systolicMmHg missing']);
    expect(issuesOf({ ...leg, cuffWidthCm: 10, extra: 1 })).toContain('extra unknown-field');
    for (const input of [null, 5, 'text', undefined]) expect(issuesOf(input)[0]).toMatch(/^ (wrong-type|missing)$/);
    const breaks = {
      get limb(): never {
        throw new RangeError('own');
      },
    };
    expect(issuesOf(breaks)).toEqual([' unreadable']);
  });
});
