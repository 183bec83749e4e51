import fc from 'fast-check';
import { add, evaluate, inv, matrix, multiply, subtract, transpose, type Matrix } from 'mathjs';
import { linearRegression, standardDeviation as spreadOf } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  calibrateOcclusionPressure,
  correctForCuffWidth,
  estimateOcclusionPressure,
  explain,
  InputError,
  measuredOcclusionPressure,
  type CalibrationInput,
} from '../../src/index.js';
import { WIDTH_SHARE } from '../../src/pressure/carrying.js';
import { DAY_DEVIATION } from '../../src/pressure/calibrate.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { random } from '../support/random.js';

const place = { limb: 'leg', side: 'left', posture: 'supine' } as const;
const estimateAt = (cuffWidthCm: number) =>
  estimateOcclusionPressure({ ...place, cuffWidthCm, circumferenceCm: 57, systolicMmHg: 124, diastolicMmHg: 76 });
interface Measured {
  readonly valueMmHg: number;
  readonly standardDeviationMmHg: number;
  readonly day?: number;
  readonly cuffWidthCm: number;
}
const measured = (one: Measured) => measuredOcclusionPressure({ ...place, method: 'doppler', ...one });
const calibrate = (cuffWidthCm: number, list: readonly Measured[], day?: number) =>
  calibrateOcclusionPressure({
    estimate: estimateAt(cuffWidthCm),
    measurements: list.map(measured),
    ...(day !== undefined && { day }),
  });

const measurements = fc.array(
  fc.record(
    {
      valueMmHg: fc.double({ min: 90, max: 400, noNaN: true }),
      standardDeviationMmHg: fc.double({ min: 1, max: 30, noNaN: true }),
      day: fc.integer({ min: 1, max: 4 }),
      cuffWidthCm: fc.constantFrom(12, 13, 18),
    },
    { requiredKeys: ['valueMmHg', 'standardDeviationMmHg', 'cuffWidthCm'] },
  ),
  { minLength: 1, maxLength: 6 },
);
const days = fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined });

/**
 * The same jointly normal problem written out as matrices and conditioned in one step by mathjs:
 * cov(x, z) cov(z, z)⁻¹ (z − mean z). The unknowns are the usual pressure, every day’s departure and the error of
 * every other cuff; the answer is the usual pressure and the departure of the day it is for.
 */
function conditioned(width: number, list: readonly Measured[], day: number | undefined) {
  const { value, standardDeviation: s } = estimateAt(width) as { value: number; standardDeviation: number };
  const dayVariance = Math.min(s, DAY_DEVIATION) ** 2;
  const labels = [...new Set([...list.map((one) => one.day), day])];
  const widths = [...new Set(list.map((one) => one.cuffWidthCm))].filter((other) => other !== width);
  const size = 1 + labels.length + widths.length;
  const row = (on: number | undefined, cuff: number): number[] =>
    Array.from({ length: size }, (_, i) =>
      i === 0 || i === 1 + labels.indexOf(on) || (cuff !== width && i === 1 + labels.length + widths.indexOf(cuff))
        ? 1
        : 0,
    );
  const prior = matrix(
    Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (_, j) => {
        if (i !== j) return 0;
        if (i === 0) return s ** 2 - dayVariance;
        if (i <= labels.length) return dayVariance;
        return (WIDTH_SHARE * Math.log(widths[i - 1 - labels.length]! / width) * value) ** 2;
      }),
    ),
  );
  const carried = list.map((one) =>
    one.cuffWidthCm === width
      ? one.valueMmHg
      : correctForCuffWidth({
          occlusionMmHg: one.valueMmHg,
          diastolicMmHg: 76,
          fromWidthCm: one.cuffWidthCm,
          toWidthCm: width,
        }).value,
  );
  const design = matrix(list.map((one) => row(one.day, one.cuffWidthCm)));
  const noise = matrix(
    list.map((one, i) =>
      list.map((_, j) => (i === j ? (one.standardDeviationMmHg * (one.cuffWidthCm / width)) ** 2 : 0)),
    ),
  );
  const target = matrix([row(day, width)]);
  const total = inv(add(multiply(multiply(design, prior), transpose(design)), noise) as Matrix);
  const gain = multiply(multiply(multiply(target, prior), transpose(design)), total);
  const innovation = subtract(matrix(carried.map((z) => [z])), matrix(list.map(() => [value]))) as Matrix;
  const posterior = subtract(
    prior,
    multiply(multiply(multiply(prior, transpose(design)), total), multiply(design, prior)),
  ) as Matrix;
  return {
    mean: value + (multiply(gain, innovation).get([0, 0]) as number),
    standardDeviation: Math.sqrt(multiply(multiply(target, posterior), transpose(target)).get([0, 0]) as number),
  };
}

describe('calibrateOcclusionPressure', () => {
  it('agrees with conditioning the joint normal distribution by a matrix library', () => {
    fc.assert(
      fc.property(measurements, days, (list, day) => {
        const answer = calibrate(12, list, day);
        const expected = conditioned(12, list, day);
        // Two ways through the same algebra: a few hundred roundings apart.
        expect(Math.abs(answer.value - expected.mean)).toBeLessThan(1e-8);
        expect(Math.abs(answer.standardDeviation! - expected.standardDeviation)).toBeLessThan(1e-6);
        // The working that explain shows comes to the same.
        const { estimateWeight: w, measuredMmHg: m } = answer.inputs;
        const shown: number = evaluate(answer.formula, { w, m, LOP1: estimateAt(12).value });
        expect(Math.abs(shown - answer.value)).toBeLessThan(1e-8);
      }),
    );
  });

  it('never widens the interval, whatever is measured', () => {
    fc.assert(
      fc.property(measurements, days, (list, day) => {
        let before = estimateAt(12).standardDeviation!;
        list.forEach((_, index) => {
          const after = calibrate(12, list.slice(0, index + 1), day);
          expectPlainJson(after);
          expect(after.standardDeviation).toBeLessThanOrEqual(before + 1e-9);
          before = after.standardDeviation!;
        });
      }),
    );
  });

  it('does not mind the order of the measurements, to the last digit', () => {
    fc.assert(
      fc.property(measurements, days, fc.infiniteStream(fc.nat()), (list, day, keys) => {
        const mixed = list
          .map((one) => ({ one, key: keys.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ one }) => one);
        const { value, lower, personalFactor } = calibrate(12, list, day);
        expect(calibrate(12, mixed, day)).toMatchObject({ value, lower, personalFactor });
      }),
    );
  });

  it('stays between the estimate and the measurement, and leans on the surer one', () => {
    const estimate = estimateAt(12);
    const sure = calibrate(12, [{ valueMmHg: 210, standardDeviationMmHg: 1, cuffWidthCm: 12 }]);
    const unsure = calibrate(12, [{ valueMmHg: 210, standardDeviationMmHg: 60, cuffWidthCm: 12 }]);
    expect(estimate.value).toBeLessThan(unsure.value);
    expect(unsure.value).toBeLessThan(sure.value);
    expect(sure.value).toBeLessThan(210);
    expect(sure.inputs['estimateWeight']).toBeLessThan(0.01);
  });

  it('is surer on the day of the measurement than on a later day, and surer with the same cuff than another', () => {
    const one = { valueMmHg: 190, standardDeviationMmHg: 8.6, cuffWidthCm: 12, day: 1 };
    const sameDay = calibrate(12, [one], 1);
    const later = calibrate(12, [one], 9);
    const otherCuff = calibrate(18, [one], 9);
    expect(sameDay.standardDeviation).toBeLessThan(later.standardDeviation!);
    expect(later.standardDeviation! / later.value).toBeLessThan(otherCuff.standardDeviation! / otherCuff.value);
    expect(otherCuff.standardDeviation).toBeLessThan(estimateAt(18).standardDeviation!);
    // What is left to a later day is at least the day itself, however often it was measured.
    const often = calibrate(
      12,
      Array.from({ length: 100 }, (_, day) => ({ ...one, day })),
      200,
    );
    expect(often.standardDeviation).toBeGreaterThan(DAY_DEVIATION);
    expect(often.standardDeviation).toBeLessThan(DAY_DEVIATION * 1.02);
    expect(later.errors!.map(({ part }) => part)).toEqual(['calibration', 'between-days']);
    expect(later.cautions.map(({ code }) => code)).toContain('not-measured-that-day');
    // Measuring the same other cuff again and again does not do away with the error of carrying it.
    const carried = calibrate(
      18,
      Array.from({ length: 100 }, (_, day) => ({ ...one, day })),
      200,
    );
    const alone = WIDTH_SHARE * Math.log(18 / 12) * estimateAt(18).value;
    const prior = Math.sqrt(estimateAt(18).standardDeviation! ** 2 - DAY_DEVIATION ** 2);
    expect(carried.errors![0]!.standardDeviation).toBeGreaterThan(0.99 / Math.hypot(1 / alone, 1 / prior));
  });

  it('keeps left and right, limbs, postures and days apart', () => {
    const estimate = estimateAt(12);
    const right = { ...place, cuffWidthCm: 12, valueMmHg: 180, method: 'doppler' } as const;
    const refused: readonly Partial<Record<keyof CalibrationInput, unknown>>[] = [
      ...[
        { side: 'right' },
        { limb: 'arm' },
        { posture: 'seated' },
        { side: undefined },
        { cuffWidthCm: undefined },
      ].map((change) => {
        const given = Object.entries({ ...right, ...change }).filter(([, value]) => value !== undefined);
        return { measurements: [measuredOcclusionPressure(Object.fromEntries(given) as never)] };
      }),
      { measurements: [] },
      { measurements: [estimate] },
      { measurements: [measuredOcclusionPressure({ ...right, standardDeviationMmHg: 0 })] },
      { measurements: [measuredOcclusionPressure({ ...right, valueMmHg: 75 })] },
      { measurements: Array.from({ length: 101 }, () => measuredOcclusionPressure(right)) },
      { estimate: measuredOcclusionPressure(right) },
      { estimate: { ...estimate, inputs: { ...estimate.inputs, side: undefined } } },
      { estimate: { ...estimate, inputs: { ...estimate.inputs, cuffWidthCm: 1e-300 } } },
      { estimate: { ...estimate, standardDeviation: undefined } },
      { day: 1.5 },
    ];
    const input = { estimate, measurements: [measuredOcclusionPressure(right)] };
    expect(calibrateOcclusionPressure(frozen(input)).value).toBeGreaterThan(estimate.value);
    for (const change of refused) {
      expect(() => calibrateOcclusionPressure({ ...input, ...change } as never)).toThrow(InputError);
    }
    // Every wrong measurement is named by its place.
    try {
      const wrong = measuredOcclusionPressure({ ...right, side: 'right' });
      calibrateOcclusionPressure({ estimate, measurements: [input.measurements[0]!, wrong, 5 as never] });
      expect.unreachable('the other side was folded in');
    } catch (error) {
      expect((error as InputError).issues.map(({ path }) => path)).toEqual([
        ['measurements', 1],
        ['measurements', 2],
      ]);
    }
  });

  it('shows its working, with the estimate and the measurements below it', () => {
    const text = explain(calibrate(12, [{ valueMmHg: 190, standardDeviationMmHg: 8.6, cuffWidthCm: 12 }]));
    expect(text).toContain('LOP = w × LOP1 + (1 − w) × m');
    expect(text).toContain('equation pooled-means-thigh-wide');
    expect(text).toContain('equation measured-doppler');
  });
});

describe('a simulation of 100,000 people with known error', () => {
  const estimate = estimateAt(12);
  const s = estimate.standardDeviation!;
  const personal = Math.sqrt(s ** 2 - DAY_DEVIATION ** 2);
  const sure = 8.6;

  // Drawn from the model itself with fixed seeds; the gain and the spread that is left by simple-statistics.
  it('covers 94 to 96 % on the day and on a later day, with the gain that a regression finds', () => {
    const { normal } = random(20_190_425);
    const inside = { sameDay: 0, later: 0, estimate: 0 };
    const pairs: [number, number][] = [];
    const left: number[] = [];
    const count = 100_000;
    const covers = ({ lower, upper }: { lower?: number; upper?: number }, truth: number): number =>
      truth >= lower! && truth <= upper! ? 1 : 0;
    // The answer is linear in the measurement, so two answers give all of them.
    const linear = (day: number) => {
      const at = (valueMmHg: number) =>
        calibrate(12, [{ valueMmHg, standardDeviationMmHg: sure, cuffWidthCm: 12, day: 1 }], day);
      const [low, high] = [at(150), at(250)];
      const shift = (name: 'lower' | 'upper', valueMmHg: number) =>
        low[name]! + ((high[name]! - low[name]!) * (valueMmHg - 150)) / 100;
      // Linear indeed, at a third place.
      expect(shift('upper', 201)).toBeCloseTo(at(201).upper!, 9);
      return (valueMmHg: number) => ({ lower: shift('lower', valueMmHg), upper: shift('upper', valueMmHg) });
    };
    const [today, later] = [linear(1), linear(30)];
    for (let person = 0; person < count; person += 1) {
      const usual = estimate.value + normal(personal);
      const thatDay = usual + normal(DAY_DEVIATION);
      const reading = thatDay + normal(sure);
      inside.estimate += covers(estimate, thatDay);
      inside.sameDay += covers(today(reading), thatDay);
      inside.later += covers(later(reading), usual + normal(DAY_DEVIATION));
      pairs.push([reading, thatDay]);
      left.push(thatDay - (today(reading).lower + today(reading).upper) / 2);
    }
    for (const name of ['estimate', 'sameDay', 'later'] as const) {
      expect(inside[name] / count, name).toBeGreaterThan(0.94);
      expect(inside[name] / count, name).toBeLessThan(0.96);
    }
    const answer = calibrate(12, [{ valueMmHg: 190, standardDeviationMmHg: sure, cuffWidthCm: 12 }]);
    // Standard error of the slope over 100,000 people is 0.001, of the spread 0.02 mmHg.
    expect(Math.abs(linearRegression(pairs).m - (1 - (answer.inputs['estimateWeight'] as number)))).toBeLessThan(0.005);
    expect(Math.abs(spreadOf(left) - answer.standardDeviation!)).toBeLessThan(0.1);
  });

  it('covers 94 to 96 % when the readings are wrong by known errors too', () => {
    const { normal } = random(7);
    const errors = { circumferenceErrorCm: 1.5, systolicErrorMmHg: 5, diastolicErrorMmHg: 4 };
    const truly = {
      ...place,
      limb: 'leg',
      cuffWidthCm: 12,
      circumferenceCm: 57,
      systolicMmHg: 124,
      diastolicMmHg: 76,
    } as const;
    const count = 100_000;
    let inside = 0;
    for (let person = 0; person < count; person += 1) {
      const read = {
        ...truly,
        circumferenceCm: truly.circumferenceCm + normal(errors.circumferenceErrorCm),
        systolicMmHg: truly.systolicMmHg + normal(errors.systolicErrorMmHg),
        diastolicMmHg: truly.diastolicMmHg + normal(errors.diastolicErrorMmHg),
      };
      const { lower, upper } = estimateOcclusionPressure({ ...read, ...errors });
      // The truth stands off what the equation gives for the true readings by the equation’s own error.
      const truth = estimate.value + normal(s);
      if (truth >= lower! && truth <= upper!) inside += 1;
    }
    expect(inside / count).toBeGreaterThan(0.94);
    expect(inside / count).toBeLessThan(0.96);
  });

  // Worked by hand: two readings of one pressure differ by more than 1.96 √(s₁² + s₂²) once in twenty times.
  it('asks for a second look where a measurement is further off than both errors explain', () => {
    const { value, standardDeviation } = estimateAt(12);
    const edge = 1.959963984540054 * Math.hypot(standardDeviation!, 5);
    const far = (valueMmHg: number) =>
      calibrate(12, [{ valueMmHg, standardDeviationMmHg: 5, cuffWidthCm: 12 }]).cautions.find(
        ({ code }) => code === 'measured-far-from-estimate',
      );
    expect(far(value + edge - 0.01)).toBeUndefined();
    expect(far(value + edge + 0.01)).toMatchObject({ severity: 'caution' });
    expect(far(value - edge - 0.01)).toMatchObject({ severity: 'caution' });
  });
});
