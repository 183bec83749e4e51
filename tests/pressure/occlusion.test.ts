import fc from 'fast-check';
import { quantile } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  correctForCuffWidth,
  estimateOcclusionPressure,
  measuredOcclusionPressure,
  targetCuffPressure,
  type OcclusionInput,
} from '../../src/index.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { readings } from '../support/arbitraries.js';

const supineLeg = {
  limb: 'leg',
  circumferenceCm: 55,
  systolicMmHg: 120,
  diastolicMmHg: 70,
  cuffWidthCm: 10,
  posture: 'supine',
} as const satisfies OcclusionInput;
const codes = ({ cautions }: { cautions: readonly { code: string }[] }) => cautions.map(({ code }) => code);

describe('estimateOcclusionPressure', () => {
  it('answers any possible reading in plain JSON, with an interval around the value', () => {
    fc.assert(
      fc.property(readings, (given) => {
        const answer = estimateOcclusionPressure(frozen(given));
        expectPlainJson(answer);
        expect(answer.lower).toBeLessThanOrEqual(answer.value);
        expect(answer.upper).toBeGreaterThanOrEqual(answer.value);
        expect(answer.errors?.length).toBeGreaterThan(0);
      }),
    );
  });

  it.each([
    ['the regression of the very cuff, with age and sex', { cuffWidthCm: 18, ageYears: 24, sex: 'male' }, 'thigh-2019'],
    ['the formula where age or sex is missing', { cuffWidthCm: 18, ageYears: 24 }, 'width-ratio-1993'],
    ['the regression of the narrow cuff', { cuffWidthCm: 5 }, 'thigh-2015'],
    ['the arm regression on an arm', { limb: 'arm', circumferenceCm: 32, cuffWidthCm: 5 }, 'arm-2015'],
    ['the formula elsewhere', {}, 'width-ratio-1993'],
  ])('chooses %s', (_name, change, equation) => {
    expect(estimateOcclusionPressure({ ...supineLeg, ...change } as OcclusionInput).equation).toBe(equation);
  });

  it('never mixes postures silently', () => {
    const seated = estimateOcclusionPressure({ ...supineLeg, posture: 'seated' });
    expect(seated.value).toBe(estimateOcclusionPressure(supineLeg).value);
    expect(codes(seated)).toContain('posture-ignored');
    expect(codes(estimateOcclusionPressure({ ...supineLeg, cuffWidthCm: 5, posture: 'standing' }))).toContain(
      'posture-differs',
    );
  });

  it('says when a reading is outside the sample, and where the equation is only remembered', () => {
    const old = estimateOcclusionPressure({ ...supineLeg, cuffWidthCm: 18, ageYears: 60, sex: 'male' });
    expect(old.cautions.find(({ code }) => code === 'outside-fitted-range')).toMatchObject({
      path: ['ageYears'],
      source: 'thigh-equation-2019',
    });
    expect(codes(old)).not.toContain('equation-unconfirmed');
    expect(codes(estimateOcclusionPressure(supineLeg))).toContain('equation-unconfirmed');
    expect(codes(estimateOcclusionPressure({ ...supineLeg, cuffWidthCm: 5 }))).toContain('narrow-cuff-on-thigh');
  });

  // Source: risk stratification 2022 (180/110, published); hypertension classes (140/90, secondary).
  it.each([
    [139, 89, undefined],
    [140, 89, 'caution'],
    [139, 90, 'caution'],
    [179, 109, 'caution'],
    [180, 80, 'stop'],
    [150, 110, 'stop'],
  ])('grades a blood pressure of %i/%i', (systolicMmHg, diastolicMmHg, severity) => {
    const { cautions } = estimateOcclusionPressure({ ...supineLeg, systolicMmHg, diastolicMmHg });
    expect(cautions.find(({ code }) => code.startsWith('blood-pressure'))?.severity).toBe(severity);
  });

  // Source: reference text on the 2019 equation, about ± 31 mmHg by Student's t; the normal quantile gives 30.3.
  it('gives the published regression an interval of about 31 mmHg either way', () => {
    const { value, upper } = estimateOcclusionPressure({ ...supineLeg, cuffWidthCm: 18, ageYears: 24, sex: 'male' });
    expect(Math.abs(upper! - value - 31)).toBeLessThan(1);
  });
});

describe('measuredOcclusionPressure', () => {
  // Source: published errors, see the sources of each method.
  it.each([
    ['doppler', 'leg', 8.6],
    ['oximeter', 'leg', 11.5],
    ['automated', 'arm', 8],
    ['automated', 'leg', 15],
  ] as const)('%s on the %s has a standard deviation of %f', (method, limb, sd) => {
    expect(measuredOcclusionPressure({ valueMmHg: 160, method, limb }).standardDeviation).toBe(sd);
  });
  it('takes the error it is given', () => {
    const answer = measuredOcclusionPressure({
      valueMmHg: 160,
      method: 'doppler',
      limb: 'leg',
      standardDeviationMmHg: 3,
    });
    expect(answer).toMatchObject({ standardDeviation: 3, sources: [] });
  });
});

describe('correctForCuffWidth', () => {
  const millimetres = fc.integer({ min: 20, max: 400 }).map((mm) => mm / 10);
  it('leaves an equal width alone, goes the right way, and undoes itself', () => {
    const carry = (occlusionMmHg: number, fromWidthCm: number, toWidthCm: number) =>
      correctForCuffWidth({ occlusionMmHg, diastolicMmHg: 70, fromWidthCm, toWidthCm });
    fc.assert(
      fc.property(millimetres, millimetres, (from, to) => {
        const there = carry(160, from, to);
        expectPlainJson(there);
        expect(carry(160, from, from)).toMatchObject({ value: 160, standardDeviation: 0, cautions: [] });
        expect(Math.sign(there.value - 160)).toBe(Math.sign(from - to));
        // One product and one quotient each way.
        if (there.value <= 1000) expect(carry(there.value, to, from).value).toBeCloseTo(160, 9);
      }),
    );
  });
  it('agrees with the formula it comes from', () => {
    const at = (cuffWidthCm: number) =>
      estimateOcclusionPressure({ ...supineLeg, cuffWidthCm, equation: 'width-ratio-1993' }).value;
    const carried = correctForCuffWidth({ occlusionMmHg: at(10), diastolicMmHg: 70, fromWidthCm: 10, toWidthCm: 18 });
    expect(carried.value).toBeCloseTo(at(18), 10);
  });
  // Source: width pairs measured in the same people, Eur J Appl Physiol 2012 and Eur J Sport Sci 2018.
  it.each([
    [235, 5, 13.5, 144],
    [144, 13.5, 5, 235],
    [161, 6, 13, 133],
    [133, 13, 6, 161],
    [161, 13, 18, 170],
    [170, 18, 13, 161],
  ])(
    'holds the published pair %f mmHg at %f cm → %f cm within its interval',
    (occlusionMmHg, fromWidthCm, toWidthCm, mean) => {
      const answer = correctForCuffWidth({ occlusionMmHg, diastolicMmHg: 70, fromWidthCm, toWidthCm });
      expect(answer.lower).toBeLessThan(mean);
      expect(answer.upper).toBeGreaterThan(mean);
    },
  );
});

describe('targetCuffPressure', () => {
  const measured = (valueMmHg: number) => measuredOcclusionPressure({ valueMmHg, method: 'doppler', limb: 'leg' });

  it('rounds down to the gauge and never loses a whole step to a double', () => {
    // 57 % of 300 is 171 by hand; 0.57 × 300 is 170.99999999999997 in doubles.
    expect(targetCuffPressure({ occlusion: measured(300), percent: 57 }).value).toBe(171);
    expect(targetCuffPressure({ occlusion: measured(165), percent: 50, gaugeStepMmHg: 5 }).value).toBe(80);
    expect(targetCuffPressure({ occlusion: measured(100), percent: 70, gaugeStepMmHg: 0.1 }).value).toBe(70);
  });

  it('is at most one step below what is asked, never above, and monotone in percent', () => {
    const gauge = fc.constantFrom(0.1, 0.5, 1, 2, 5, 10);
    fc.assert(
      fc.property(
        fc.integer({ min: 80, max: 400 }),
        fc.integer({ min: 15, max: 99 }),
        gauge,
        (lop, percent, gaugeStepMmHg) => {
          const at = (share: number) => targetCuffPressure({ occlusion: measured(lop), percent: share, gaugeStepMmHg });
          const answer = at(percent);
          expectPlainJson(answer);
          const wanted = (lop * percent) / 100;
          expect(answer.value).toBeLessThanOrEqual(wanted + 1e-9);
          expect(answer.value).toBeGreaterThan(wanted - gaugeStepMmHg - 1e-9);
          expect(at(percent + 1).value).toBeGreaterThanOrEqual(answer.value);
        },
      ),
    );
  });

  // Source: reference text, 180 ± 31 (true 149 to 211): a nominal 50 % is really 43 to 60 %, a nominal 80 % is 68 to 97 %.
  it('says what the percentage may really be', () => {
    const occlusion = measuredOcclusionPressure({
      valueMmHg: 180,
      method: 'doppler',
      limb: 'leg',
      standardDeviationMmHg: 31 / 1.959963984540054,
    });
    const range = (percent: number) => {
      const { lower, upper } = targetCuffPressure({ occlusion, percent }).reached!;
      return [Math.round(lower!), Math.round(upper!)];
    };
    expect(range(50)).toEqual([43, 60]);
    expect(range(80)).toEqual([68, 97]);
  });

  it('holds to a ceiling and says so', () => {
    const held = targetCuffPressure({ occlusion: measured(300), percent: 80, ceilingMmHg: 200 });
    expect(held.value).toBe(200);
    expect(codes(held)).toContain('ceiling-reached');
    expect(held.reached?.percent).toBeCloseTo(66.7, 1);
    expect(codes(targetCuffPressure({ occlusion: measured(200), percent: 80, ceilingMmHg: 200 }))).not.toContain(
      'ceiling-reached',
    );
  });

  it('warns above 80 %, and where the artery may close', () => {
    expect(codes(targetCuffPressure({ occlusion: measured(180), percent: 81 }))).toContain('percent-above-usual');
    expect(codes(targetCuffPressure({ occlusion: measured(180), percent: 80 }))).not.toContain('percent-above-usual');
    expect(codes(targetCuffPressure({ occlusion: measured(180), percent: 100 }))).toContain('may-occlude');
    expect(codes(targetCuffPressure({ occlusion: measured(180), percent: 50 }))).not.toContain('may-occlude');
  });

  it('gives no upper percentage where the occlusion pressure may be nothing', () => {
    const occlusion = measuredOcclusionPressure({
      valueMmHg: 60,
      method: 'doppler',
      limb: 'arm',
      standardDeviationMmHg: 60,
    });
    const target = targetCuffPressure({ occlusion, percent: 50 });
    expect(target.reached).not.toHaveProperty('upper');
    expect(codes(target)).toContain('true-percent-unbounded');
  });
});

describe('intervals', () => {
  // Source of the coverage: a simulation with known error, quantiles by simple-statistics.
  it('hold 95 of 100 people when the error is known', () => {
    const { value, lower, upper, standardDeviation } = measuredOcclusionPressure({
      valueMmHg: 180,
      method: 'doppler',
      limb: 'leg',
    });
    // Normal deviates of a fixed low-discrepancy sequence, by Box–Muller.
    const people = Array.from({ length: 20_000 }, (_, i) => {
      const [u, v] = [(i + 0.5) / 20_000, (i * 0.618033988749895) % 1];
      return value + standardDeviation! * Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v);
    });
    const covered = people.filter((p) => p >= lower! && p <= upper!).length / people.length;
    expect(covered).toBeGreaterThan(0.94);
    expect(covered).toBeLessThan(0.96);
    // Sampling error of a 2.5 % quantile of 20 000 draws is about 0.2 mmHg.
    expect(Math.abs(quantile(people, 0.025) - lower!)).toBeLessThan(0.5);
    expect(Math.abs(quantile(people, 0.975) - upper!)).toBeLessThan(0.5);
  });
});
