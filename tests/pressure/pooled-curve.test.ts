import { describe, expect, it } from 'vitest';
import * as working from '../../docs/working/pooled-curve.js';
import found from '../../docs/working/pooled-curve.json' with { type: 'json' };
import survey from '../../docs/working/survey-figures.json' with { type: 'json' };
import groupMeans from '../../src/checks/group-means.json' with { type: 'json' };
import {
  attempt,
  correctForCuffWidth,
  correctForPosture,
  estimateOcclusionPressure,
  InputError,
  type Posture,
} from '../../src/index.js';
import { convertWidth } from '../../src/pressure/cuff-width.js';
import { CUFF_DEVIATION } from '../../src/pressure/curve.js';
import { armCurve } from '../../src/pressure/equations/arm-curve-2026.js';
import { thighCurve } from '../../src/pressure/equations/thigh-curve-2026.js';
import { POSTURE_DEVIATION } from '../../src/pressure/posture.js';
import judge from './pooled-curve.json' with { type: 'json' };

const NOMINAL = { leg: 55, arm: 32 } as const;
const POSTURES = ['supine', 'seated', 'standing'] as const;
const supine = { systolicMmHg: 120, diastolicMmHg: 70, posture: 'supine' } as const;
const range = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
const six = (value: number): number => Number(value.toPrecision(6));

describe('the constants of the curves', () => {
  it('are those of the committed working', () => {
    const { b, h, people, laboratory, cuff, variance, posture, level } = working.constants();
    expect({ b: { leg: thighCurve.b, arm: armCurve.b }, h: thighCurve.h }).toEqual({ b, h });
    expect(CUFF_DEVIATION).toBe(cuff);
    for (const { error } of [thighCurve, armCurve]) expect(error).toMatchObject({ people, laboratory, level });
    expect({ leg: thighCurve.error.variance, arm: armCurve.error.variance }).toEqual(variance);
    expect(thighCurve.error.posture).toMatchObject(posture);
  });
  it('stand in the committed results, with the fit they come from', () => {
    expect(found.constants).toEqual(working.constants());
    const { coefficients, components } = working.pooled;
    for (const [name, value] of Object.entries(coefficients)) {
      expect(found.fit.coefficients[name as 'leg']).toBe(six(value));
    }
    const { laboratory, cuff, rest } = found.fit.components;
    expect([laboratory, cuff, rest]).toEqual(components.map(six));
  });
  // R 4.2.2 with nlme; its simplex search leaves the deviations off by up to 2 in 1000.
  it('agree with an independent fit', () => {
    const own = working.fit(working.dataOf(working.means));
    const freed = working.fit(working.dataOf(working.means), ['a']);
    for (const [ours, theirs] of [
      [own, judge.held],
      [freed, judge.freed],
    ] as const) {
      expect(ours.names).toEqual(theirs.names);
      ours.names.forEach((name, i) => {
        expect(ours.coefficients[name]).toBeCloseTo(theirs.coefficients[i]!, 3);
        expect(Math.sqrt(ours.covariance[i]![i]!)).toBeCloseTo(theirs.standardErrors[i]!, 2);
      });
      ours.components.forEach((deviation, i) => expect(deviation).toBeCloseTo(theirs.deviations[i]!, 3));
    }
    expect(judge.means).toBe(working.means.length);
  });
  it('rest on no mean from memory', () => {
    expect(groupMeans.rows).toHaveLength(38);
    expect(working.means).toHaveLength(18);
    for (const { grade } of working.means) expect(grade).not.toBe('unconfirmed');
  });
  it('differ between postures as people do in two publications (R² 0.81 and 0.50)', () => {
    const differ = (low: number, high: number, r2: number): number =>
      Math.sqrt(low ** 2 + high ** 2 - 2 * Math.sqrt(r2) * low * high);
    // Standard deviations and means above 70 mmHg: 148 → 177 wide, 348 → 409 narrow, 187 → 241.5 standing.
    expect(POSTURE_DEVIATION).toEqual({
      wide: working.up(differ(19, 20, 0.81) / Math.sqrt(78 * 107)),
      narrow: working.up(differ(94, 101, 0.5) / Math.sqrt(278 * 339)),
      standing: working.up(differ(32.5, 49.3, 0.81) / Math.sqrt(117 * 171.5)),
    });
  });
});

describe('how wrong the curves are for a laboratory they have not seen', () => {
  const errors = working.leftOut();
  it('stays within 18 % on the leg and 13 % on the arm, over means of known width', () => {
    expect(working.leftOutError(errors, 'leg')).toBeLessThanOrEqual(0.18);
    expect(working.leftOutError(errors, 'leg', true)).toBeLessThanOrEqual(0.18);
    expect(working.leftOutError(errors, 'arm')).toBeLessThanOrEqual(0.13);
    expect(six(working.leftOutError(errors, 'leg'))).toBe(found.leftOutError.leg);
    expect(six(working.leftOutError(errors, 'arm'))).toBe(found.leftOutError.arm);
  });
  it('hardly depends on assumed widths, the capped sample, or who the nominal person is', () => {
    for (const { thigh10, leftOut } of found.sensitivity) {
      expect(thigh10).toBeGreaterThan(190);
      expect(thigh10).toBeLessThan(199);
      // The mean of the capped sample is an underestimate.
      expect(leftOut.legUncapped).toBeLessThanOrEqual(0.18);
    }
    // The limits of 18 and 13 % that are missed are named, here and on the page.
    const over = found.sensitivity.flatMap(({ choice, leftOut: { leg, arm } }) => [
      ...(leg > 0.18 ? [`leg ${choice}`] : []),
      ...(arm > 0.13 ? [`arm ${choice}`] : []),
    ]);
    expect(over).toEqual(['leg without the means of assumed width', 'leg without either', 'arm without the 3 cm cuff']);
    for (const { thigh10 } of found.otherNominal) expect(Math.abs(thigh10 / 193.2 - 1)).toBeLessThan(0.06);
  });
  it('predicts no mean whose posture no other laboratory has', () => {
    const known = working.leftOut(working.means.filter(({ assumed }) => !assumed));
    // The other laboratory that measured standing has a cuff of assumed width.
    const standing = (list: readonly working.LeftOut[]) =>
      list.filter(({ mean }) => mean.source === 'cuff-width-2019').map(({ mean }) => mean.at);
    expect(standing(known)).toEqual([]);
    expect(standing(errors)).toEqual(['standing']);
  });
  it('was smallest on the thigh with the form that was taken', () => {
    const [taken, ...others] = found.forms;
    for (const { leftOut } of others) expect(leftOut.leg).toBeGreaterThan(taken!.leftOut.leg);
  });
  it('is held by the interval: 93 to 97 % of new people in new laboratories, simulated', () => {
    expect(found.coverage).toHaveLength(9);
    for (const { coverage } of found.coverage) {
      expect(coverage).toBeGreaterThanOrEqual(0.93);
      expect(coverage).toBeLessThanOrEqual(0.97);
    }
    expect(working.coverage(8, undefined, 25)).toBeGreaterThan(0.92);
  });
});

describe('the curves on a fine grid', () => {
  const widths = range(3, 20, 0.1);
  const people = [45, 50, 55, 60, 65, 70].flatMap((circumferenceCm) =>
    [
      [95, 55],
      [110, 70],
      [120, 70],
      [135, 90],
      [170, 105],
    ].map(([systolicMmHg, diastolicMmHg]) => ({
      circumferenceCm,
      systolicMmHg: systolicMmHg!,
      diastolicMmHg: diastolicMmHg!,
    })),
  );
  const answer = (limb: 'leg' | 'arm', person: (typeof people)[number], cuffWidthCm: number, posture: Posture) =>
    estimateOcclusionPressure({
      limb,
      ...person,
      circumferenceCm: person.circumferenceCm * (limb === 'leg' ? 1 : 0.6),
      cuffWidthCm,
      posture,
    });
  it.each(['leg', 'arm'] as const)('%s: fall with cuff width without a jump, in every posture', (limb) => {
    for (const person of people) {
      for (const posture of POSTURES) {
        const answers = widths.map((width) => answer(limb, person, width, posture));
        expect(new Set(answers.map(({ equation }) => equation)).size).toBe(1);
        for (const key of ['value', 'lower', 'upper'] as const) {
          const steps = answers.slice(1).map((next, i) => answers[i]![key]! - next[key]!);
          expect(Math.min(...steps)).toBeGreaterThan(0);
          // No step is larger than its neighbours explain.
          const ratios = steps.slice(1).map((step, i) => step / steps[i]!);
          expect(Math.min(...ratios)).toBeGreaterThan(0.9);
          expect(Math.max(...ratios)).toBeLessThan(1);
        }
      }
    }
  });
  it.each(['leg', 'arm'] as const)('%s: lie above diastolic, and so do their intervals', (limb) => {
    for (const person of people) {
      for (const width of [3, 5, 8, 12, 20]) {
        for (const posture of POSTURES) {
          const { value, lower } = answer(limb, person, width, posture);
          expect(value).toBeGreaterThan(person.diastolicMmHg);
          // At high pressures, far from the data, the interval of a wide cuff on an arm may reach it.
          if (person.systolicMmHg < 140 || limb === 'leg') expect(lower).toBeGreaterThan(person.diastolicMmHg);
        }
      }
    }
  });
  it('rise from supine to seated to standing on the thigh', () => {
    for (const person of people) {
      for (const width of [3, 5, 10, 20]) {
        const [a, b, c] = POSTURES.map((posture) => answer('leg', person, width, posture).value);
        expect(a).toBeLessThan(b!);
        expect(b).toBeLessThan(c!);
      }
    }
  });
  it.each(['leg', 'arm'] as const)('%s: rise with circumference and both blood pressures, smoothly', (limb) => {
    for (const posture of POSTURES) {
      for (const [field, values] of [
        ['circumferenceCm', range(40, 80, 0.5)],
        ['systolicMmHg', range(100, 170, 1)],
        ['diastolicMmHg', range(45, 95, 1)],
      ] as const) {
        const along = values.map((value) => {
          const person = { circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, [field]: value };
          return answer(limb, person, 10, posture).value;
        });
        const steps = along.slice(1).map((next, i) => next - along[i]!);
        // On a standing thigh the pressure above diastolic counts 1.53 times, so a higher diastolic one counts less.
        for (const step of steps) expect(step).toBeGreaterThan(0);
        expect(Math.max(...steps) / Math.min(...steps)).toBeCloseTo(1, 9);
      }
    }
  });
  it('do not change with age and sex', () => {
    const at = (more: object) => answer('leg', { ...people[0]!, ...more }, 10, 'supine').value;
    for (const ageYears of [18, 40, 80]) expect(at({ ageYears, sex: 'female' })).toBe(at({}));
  });
});

describe('the default', () => {
  const at = (more: object) =>
    estimateOcclusionPressure({ limb: 'leg', circumferenceCm: 55, ...supine, cuffWidthCm: 10, ...more });
  it('gives a coach with a 10 cm leg cuff 165 to 200 mmHg, upper end over lower at most 2.6', () => {
    const { value, lower, upper, scale, evidence } = at({});
    expect(value).toBeGreaterThan(165);
    expect(value).toBeLessThan(200);
    expect(upper! / lower!).toBeLessThanOrEqual(2.6);
    expect({ scale, evidence }).toEqual({ scale: 'log', evidence: 'derived' });
  });
  it('is the curve for every width, posture and limb', () => {
    for (const cuffWidthCm of [3, 5, 7.9, 10.4, 10.5, 18, 40]) {
      for (const posture of POSTURES) {
        expect(at({ cuffWidthCm, posture, ageYears: 23, sex: 'male' }).equation).toBe('pooled-curve-thigh-2026');
        expect(at({ limb: 'arm', circumferenceCm: 32, cuffWidthCm, posture }).equation).toBe('pooled-curve-arm-2026');
      }
    }
  });
  it('has errors that grow with the distance of blood pressures and width from the data', () => {
    const own = (more: object) => {
      const { errors, value } = at(more);
      const { diastolicMmHg } = { ...supine, ...more } as { diastolicMmHg: number };
      return errors!.find(({ part }) => part === 'equation')!.standardDeviation / (1 - diastolicMmHg / value);
    };
    for (const more of [{ cuffWidthCm: 3 }, { cuffWidthCm: 30 }, { systolicMmHg: 160, diastolicMmHg: 95 }]) {
      expect(own(more)).toBeGreaterThan(1.2 * own({}));
    }
    expect(own({ circumferenceCm: 90 })).toBeGreaterThan(own({}));
  });
});

// Published values that the fit has not seen.
describe('beside other publications', () => {
  const value = (limb: 'leg' | 'arm', cuffWidthCm: number) =>
    estimateOcclusionPressure({ limb, circumferenceCm: NOMINAL[limb], ...supine, cuffWidthCm }).value;
  it('the slope with thigh circumference at 18 cm is near the published 1.110 mmHg/cm (2019, beta .380, p .005)', () => {
    // Its standard error is 1.110 / 2.95, from t of p .005 with 46 degrees of freedom.
    expect(Math.abs(thighCurve.b / 18 - 1.11)).toBeLessThan(1.11 / 2.95);
  });
  it('the thigh index of 12 cm (1.2–1.4) and 18–20 cm cuffs (1.0–1.2) is missed by at most 6 %: too high', () => {
    expect(value('leg', 12) / 120).toBeGreaterThan(1.4);
    expect(value('leg', 12) / 120 / 1.4).toBeLessThan(1.06);
    expect(value('leg', 18) / 120 / 1.2).toBeLessThan(1.06);
    expect(value('leg', 20) / 120 / 1.2).toBeLessThan(1.06);
  });
  it('the arm means from memory (145, 123, 120 at 5, 10, 12 cm) are missed by 17, 7 and 5 %: too high', () => {
    const off = (
      [
        [5, 145],
        [10, 123],
        [12, 120],
      ] as const
    ).map(([width, mean]) => value('arm', width) / mean - 1);
    expect(off.map((share) => Math.round(100 * share))).toEqual([16, 7, 5]);
  });
});

describe('conversions follow the same curve', () => {
  const widths = [3, 5, 7, 10, 12, 13.5, 18, 20];
  it('an estimate converted to another width is the estimate for that width', () => {
    for (const limb of ['leg', 'arm'] as const) {
      const person = { limb, circumferenceCm: NOMINAL[limb], systolicMmHg: 131, diastolicMmHg: 77 } as const;
      for (const posture of POSTURES) {
        const at = (cuffWidthCm: number) => estimateOcclusionPressure({ ...person, posture, cuffWidthCm }).value;
        for (const fromWidthCm of widths) {
          for (const toWidthCm of widths) {
            const given = { ...person, occlusionMmHg: at(fromWidthCm), fromWidthCm, toWidthCm };
            const answer = attempt(correctForCuffWidth, given);
            // Where it is refused as useless, its formula is still the curve.
            const value = answer.ok
              ? answer.value.value
              : convertWidth(given.occlusionMmHg, person, fromWidthCm, toWidthCm);
            expect(value).toBeCloseTo(at(toWidthCm), 9);
          }
        }
      }
    }
  });
  it('an estimate converted to another posture is the estimate for that posture', () => {
    const person = { limb: 'leg', circumferenceCm: 58, systolicMmHg: 131, diastolicMmHg: 77 } as const;
    for (const cuffWidthCm of widths) {
      const at = (posture: Posture) => estimateOcclusionPressure({ ...person, posture, cuffWidthCm }).value;
      for (const fromPosture of POSTURES) {
        for (const toPosture of POSTURES) {
          const { value } = correctForPosture({
            limb: 'leg',
            diastolicMmHg: 77,
            cuffWidthCm,
            occlusionMmHg: at(fromPosture),
            fromPosture,
            toPosture,
          });
          expect(value).toBeCloseTo(at(toPosture), 9);
        }
      }
    }
  });
  it('a useless answer is refused: one whose interval reaches the diastolic pressure', () => {
    const unsure = { limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, fromWidthCm: 12 } as const;
    const convert = (standardDeviationMmHg: number) =>
      correctForCuffWidth({ ...unsure, occlusionMmHg: 120, toWidthCm: 10, standardDeviationMmHg });
    expect(convert(10).lower).toBeGreaterThan(70);
    expect(() => convert(40)).toThrow(InputError);
    const shift = (standardDeviationMmHg: number) =>
      correctForPosture({
        limb: 'leg',
        cuffWidthCm: 12,
        occlusionMmHg: 120,
        diastolicMmHg: 70,
        fromPosture: 'supine',
        toPosture: 'seated',
        standardDeviationMmHg,
      });
    expect(shift(10).lower).toBeGreaterThan(70);
    expect(() => shift(40)).toThrow(InputError);
  });
});

// US National Health and Nutrition Examination Survey 1999–2006, public domain.
describe('on the people of a national survey', () => {
  it('no estimate is at or below the diastolic pressure', () => {
    for (const { atOrBelowDiastolic } of survey.estimates) expect(atOrBelowDiastolic).toBe(0);
  });
  it('estimates spread no wider than measured pressures do', () => {
    for (const { limb, cuffWidthCm, posture, young } of survey.estimates) {
      const measured = working.allMeans.filter(
        (mean) =>
          mean.limb === limb &&
          mean.widthCm === cuffWidthCm &&
          mean.at === posture &&
          mean.standardDeviation !== undefined,
      );
      // The widest measured spread, within its standard error.
      const widest = Math.max(
        ...measured.map(({ standardDeviation, n = 30 }) => standardDeviation! * (1 + 1 / Math.sqrt(2 * n))),
      );
      if (measured.length > 0) expect(young.standardDeviation, `${limb} ${cuffWidthCm}`).toBeLessThanOrEqual(widest);
    }
  });
});
