import { describe, expect, it } from 'vitest';
import {
  attempt,
  equations,
  estimateRelativeLoad,
  repetitionsAtPercent,
  repetitionsInReserveFromRpe,
  testedOneRepMax,
  trainingLoad,
  type OneRepMaxEquation,
} from '../../src/index.js';

const all: readonly OneRepMaxEquation[] = equations.oneRepetitionMaximum;
const codes = ({ cautions }: { cautions: readonly { code: string }[] }) => cautions.map(({ code }) => code);

describe('repetitionsAtPercent', () => {
  it('has no number at 20 to 40 % of the maximum, by any equation', () => {
    for (const { id } of all) {
      for (let percentOneRepMax = 20; percentOneRepMax <= 40; percentOneRepMax += 1) {
        expect(
          attempt(repetitionsAtPercent, { percentOneRepMax, equation: id as 'brzycki-1993' }).ok,
          `${id} ${percentOneRepMax}`,
        ).toBe(false);
      }
    }
    expect(() => repetitionsAtPercent({ percentOneRepMax: 30 })).toThrow(/none at 20 to 40 %/);
  });
  it('is one repetition at the whole maximum, and cautions above ten', () => {
    for (const { id, inverse } of all) {
      if (inverse)
        expect(repetitionsAtPercent({ percentOneRepMax: 100, equation: id as 'brzycki-1993' }).value).toBe(1);
    }
    expect(codes(repetitionsAtPercent({ percentOneRepMax: 75 }))).not.toContain('many-repetitions');
    expect(codes(repetitionsAtPercent({ percentOneRepMax: 70 }))).toContain('many-repetitions');
  });
});

describe('repetitionsInReserveFromRpe', () => {
  // Source: the scale as reproduced in a secondary text (J Strength Cond Res 2016;30(1):267–275).
  it.each([
    [10, 0],
    [9.5, 0],
    [9, 1],
    [8.5, 1.5],
    [8, 2],
    [7.5, 2.5],
    [7, 3],
    [6, 5],
    [5, 5],
  ])('%d is %d in reserve', (reserveRpe, reserve) => {
    expect(repetitionsInReserveFromRpe({ reserveRpe }).value).toBe(reserve);
  });
  it('refuses what the scale does not give repetitions for', () => {
    for (const reserveRpe of [1, 2, 3, 4, 6.5, 9.9])
      expect(() => repetitionsInReserveFromRpe({ reserveRpe })).toThrow(/mark/);
    expect(() => repetitionsInReserveFromRpe({ reserveRpe: 0 })).toThrow(/1 to 10/);
  });
});

describe('estimateRelativeLoad', () => {
  it('refuses a reading so fast that the interval reaches zero', () => {
    expect(() => estimateRelativeLoad({ equation: 'full-squat-velocity-2017', velocityMPerS: 1.8 })).toThrow(
      /interval/,
    );
  });
});

describe('maxima that count body mass, or are of the other limb', () => {
  it('gives no interval and no range for a maximum of the other limb, and says so', () => {
    const load = trainingLoad({
      oneRepMax: testedOneRepMax({ load: 40 }),
      percentOneRepMax: 30,
      maximumOf: 'other-limb',
    });
    expect(load.value).toBe(12);
    expect(load).not.toHaveProperty('lower');
    expect(load.reached).toEqual({ percentOneRepMax: 30 });
    expect(codes(load)).toContain('maximum-of-other-limb');
  });
});
