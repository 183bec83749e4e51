import { describe, expect, it } from 'vitest';
import {
  attempt,
  bodyMassLoad,
  equations,
  estimateOneRepMax,
  estimateRelativeLoad,
  percentAtRepetitions,
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
  it('says why not: levelled off, not exact near the maximum, no inverse', () => {
    expect(() => repetitionsAtPercent({ percentOneRepMax: 48.8, equation: 'wathan-1994' })).toThrow(/levels off/);
    expect(() => repetitionsAtPercent({ percentOneRepMax: 95, equation: 'mayhew-1992' })).toThrow(
      /at least 1 repetition/,
    );
    expect(() => repetitionsAtPercent({ percentOneRepMax: 75, equation: 'leg-press-5rm-2006' })).toThrow(
      /with an inverse/,
    );
    expect(() => repetitionsAtPercent({ percentOneRepMax: 75, equation: 'postmenopausal-2006' })).toThrow(
      /with an inverse/,
    );
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

describe('percentAtRepetitions', () => {
  it('says where the charts differ, and puts nothing between their cells', () => {
    expect(codes(percentAtRepetitions({ repetitions: 12 }))).toContain('charts-differ');
    expect(codes(percentAtRepetitions({ repetitions: 11, chart: 'textbook-table' }))).toContain('charts-differ');
    expect(codes(percentAtRepetitions({ repetitions: 10 }))).not.toContain('charts-differ');
    expect(() => percentAtRepetitions({ repetitions: 11 })).toThrow(/training-load-chart prints: 1, 2/);
    expect(() => percentAtRepetitions({ repetitions: 13, chart: 'textbook-table' })).toThrow(/textbook-table prints/);
  });
  it('by equation: the whole maximum at one, refused above 20, outside a domain, and with an intercept', () => {
    expect(percentAtRepetitions({ repetitions: 1, equation: 'mayhew-1992' }).value).toBe(100);
    expect(() => percentAtRepetitions({ repetitions: 21, equation: 'lombardi-1989' })).toThrow(/at most 20/);
    expect(() => percentAtRepetitions({ repetitions: 4, equation: 'osteopenia-knee-flexion-2024' })).toThrow(/5–16/);
    expect(() => percentAtRepetitions({ repetitions: 5, equation: 'leg-press-5rm-2006' })).toThrow(/intercept/);
    const both = { repetitions: 5, chart: 'textbook-table', equation: 'epley-1985' } as const;
    expect(() => percentAtRepetitions(both)).toThrow(/left out/);
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
  it('always says that it needs maximal intent, and refuses the impossible', () => {
    const answer = estimateRelativeLoad({ equation: 'full-squat-velocity-2017', velocityMPerS: 0.84 });
    expect(answer.cautions[0]).toMatchObject({ code: 'maximal-intent', severity: 'caution' });
    expect(answer.upper! - answer.lower!).toBeCloseTo(2 * 1.959963984540054 * 12, 9);
    const slow = { equation: 'parallel-squat-velocity-2017', velocityMPerS: 0.1 } as const;
    expect(() => estimateRelativeLoad(slow)).toThrow(/110 %/);
    expect(() => estimateRelativeLoad({ ...slow, velocityMPerS: 2 })).toThrow(/above 0/);
    expect(() => estimateRelativeLoad({ ...slow, velocityMPerS: 60 })).toThrow(/cm\/s/);
    expect(() => estimateRelativeLoad({ equation: 'parallel-squat-omni-2017', velocityMPerS: 0.5 })).toThrow(
      /omniRating/,
    );
    expect(estimateRelativeLoad({ ...slow, velocityMPerS: 0.5 })).not.toHaveProperty('lower');
  });

  // 0.16 ± 0.04 m/s at the maximum of the sample (Int J Sports Med 2010;31(5):347–352): 0.1 m/s gives 105 %.
  it('says that no load lifted is above the maximum', () => {
    const codes = (velocityMPerS: number) =>
      estimateRelativeLoad({ equation: 'bench-press-velocity-2010', velocityMPerS }).cautions.map(({ code }) => code);
    expect(codes(0.1)).toContain('above-the-maximum');
    expect(codes(0.2)).not.toContain('above-the-maximum');
  });
  it('refuses a reading so fast that the interval reaches zero', () => {
    expect(() => estimateRelativeLoad({ equation: 'full-squat-velocity-2017', velocityMPerS: 1.8 })).toThrow(
      /interval/,
    );
  });
});

describe('maxima that count body mass, or are of the other limb', () => {
  const share = bodyMassLoad({ movement: 'pull-up', sex: 'male', bodyMass: 80 });
  // By hand: 80 × 0.955 = 76.4; with 23.6 on the belt 100 kg, once; 90 % of it less 76.4 is 13.6.
  it('takes the share of body mass off the load, and counts it in the percentage', () => {
    const oneRepMax = testedOneRepMax({ load: share.value + 23.6 });
    const load = trainingLoad({ oneRepMax, percentOneRepMax: 90, bodyMassLoad: share, step: 2.5 });
    expect(load).toMatchObject({ value: 12.5, rounding: { from: 13.6 } });
    expect(load.reached!.percentOneRepMax).toBeCloseTo(88.9, 12);
    expect(() => trainingLoad({ oneRepMax, percentOneRepMax: 70, bodyMassLoad: share })).toThrow(/76.4 %.*6.4 kg/);
  });
  it('adds the spread of a share that has one', () => {
    const press = bodyMassLoad({ movement: 'push-up-top', sex: 'female', bodyMass: 60 });
    const oneRepMax = estimateOneRepMax({ load: press.value, repetitions: 10 });
    const { errors } = trainingLoad({ oneRepMax, percentOneRepMax: 90, bodyMassLoad: press });
    expect(errors!.map(({ part }) => part)).toEqual(['maximum', 'sample']);
  });
  it('does not know the share of women in the pull-up', () => {
    expect(() => bodyMassLoad({ movement: 'pull-up', sex: 'female', bodyMass: 60 })).toThrow(/known for/);
  });
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
