import { describe, expect, it } from 'vitest';
import { heaviestUpTo, neighbours } from '../../src/plan/available-loads.js';
import type { PlanExerciseFields } from '../../src/plan/index.js';

const exercise = (more: Partial<PlanExerciseFields> = {}): PlanExerciseFields => more as PlanExerciseFields;
/** Makes 20, 22.5, 30, 32.5, 40, 42.5, 50 and 52.5. */
const bar = () =>
  exercise({
    bar: 20,
    plates: [
      { mass: 10, count: 2 },
      { mass: 5, count: 2 },
      { mass: 1.25, count: 2 },
    ],
  });

// By hand, from the loads that each exercise can have.
describe('the loads next to one', () => {
  it.each<[load: number, atLeast: number, step: number, unknown]>([
    [20, 20, 2.5, { heavier: 22.5, lighter: 17.5 }],
    [20, 21, 2.5, { heavier: 22.5, lighter: 17.5 }],
    [20, 22.5, 2.5, { heavier: 22.5, lighter: 17.5 }],
    [20, 23, 2.5, { heavier: 25, lighter: 17.5 }],
    [20, 10, 2.5, { heavier: 22.5, lighter: 17.5 }],
    [0.3, 0.3, 0.1, { heavier: 0.4, lighter: 0.2 }],
    [2.5, 2.5, 2.5, { heavier: 5 }],
  ])('%s, at least %s, in steps of %s', (load, atLeast, step, expected) => {
    expect(neighbours(load, atLeast, exercise(), step)).toStrictEqual(expected);
    expect(neighbours(load, atLeast, undefined, step)).toStrictEqual(expected);
  });
  it('are not known without a step', () => {
    expect(neighbours(20, 20, exercise(), undefined)).toBeUndefined();
    expect(neighbours(20, 20, undefined, undefined)).toBeUndefined();
  });

  it.each<[load: number, atLeast: number, unknown]>([
    [20, 20, { heavier: 30, lighter: 10 }],
    [20, 30, { heavier: 30, lighter: 10 }],
    [20, 31, { heavier: 40, lighter: 10 }],
    [20, 41, { lighter: 10 }],
    [25, 20, { heavier: 30, lighter: 20 }],
    [40, 40, { lighter: 30 }],
    [10, 10, { heavier: 20 }],
  ])('%s, at least %s, on a rack', (load, atLeast, expected) => {
    expect(neighbours(load, atLeast, exercise({ available: [30, 10, 40, 20] }), 1)).toStrictEqual(expected);
  });

  it.each<[load: number, atLeast: number, unknown]>([
    [40, 40, { heavier: 42.5, lighter: 32.5 }],
    [42.5, 45, { heavier: 50, lighter: 40 }],
    [42.5, 50, { heavier: 50, lighter: 40 }],
    [22.5, 51, { heavier: 52.5, lighter: 20 }],
    [41, 30, { heavier: 42.5, lighter: 40 }],
    [52.5, 52.5, { lighter: 50 }],
    [40, 53, { lighter: 32.5 }],
    [20, 20, { heavier: 22.5 }],
  ])('%s, at least %s, on a bar', (load, atLeast, expected) => {
    expect(neighbours(load, atLeast, bar(), 1)).toStrictEqual(expected);
  });

  it('on a bar have its collars, and as many plates as they need', () => {
    expect(neighbours(41, 41, { ...bar(), collars: 1 }, 1)).toStrictEqual({ heavier: 43.5, lighter: 33.5 });
    expect(neighbours(40, 195, exercise({ bar: 20, plates: [{ mass: 5 }] }), 1)).toStrictEqual({
      heavier: 200,
      lighter: 30,
    });
  });
  it('need both a bar and its plates', () => {
    for (const half of [{ bar: 20 }, { plates: [{ mass: 5 }] }])
      expect(neighbours(20, 20, exercise(half), 1)).toStrictEqual({ heavier: 21, lighter: 19 });
  });
});

describe('the heaviest load up to one', () => {
  it.each<[string, PlanExerciseFields, number, number | undefined]>([
    ['of any', exercise(), 20.3, 20.3],
    ['of none', exercise(), 0, undefined],
    ['in steps', exercise({ step: 2.5 }), 21, 20],
    ['in steps, itself', exercise({ step: 2.5 }), 22.5, 22.5],
    ['in steps that are too large', exercise({ step: 2.5 }), 2, undefined],
    ['on a rack', exercise({ available: [30, 10, 20] }), 29, 20],
    ['on a rack, itself', exercise({ available: [30, 10, 20] }), 20, 20],
    ['on a rack of heavier ones', exercise({ available: [30, 10, 20] }), 9, undefined],
    ['on a bar', bar(), 49, 42.5],
    ['on a bar, itself', bar(), 50, 50],
    ['on a bar that is heavier', bar(), 19, undefined],
  ])('%s', (_, given, load, expected) => {
    expect(heaviestUpTo(load, given)).toBe(expected);
  });
});
