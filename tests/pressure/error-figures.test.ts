import { describe, expect } from 'vitest';
import errors from '../../src/checks/occlusion-errors.json' with { type: 'json' };
import { equations, measuredOcclusionPressure } from '../../src/index.js';
import { DAY_DEVIATION } from '../../src/pressure/person-variation.js';
import { eachRow, expectWithin } from '../support/rows.js';

/** What each kind of published figure comes to as a standard deviation, a half-width, a ratio or a percentage. */
const worked: Readonly<Record<string, (...values: number[]) => number>> = {
  'as-printed': (value) => value!,
  limits: (low, high) => (high! - low!) / (2 * 1.96),
  // What two methods differ by, the one-sided part too.
  'limits-and-bias': (low, high) => Math.hypot((high! - low!) / (2 * 1.96), (high! + low!) / 2),
  // A standardised slope is the slope × the spread of its reading / the spread of the pressure.
  implied: (standardised, slope, spread) => (standardised! / slope!) * spread!,
  repeats: (difference) => difference! / Math.SQRT2,
  fit: (rSquared, spread) => spread! * Math.sqrt(1 - rSquared!),
  'fit-adjusted': (rSquared, spread, people, terms) =>
    spread! * Math.sqrt(1 - rSquared!) * Math.sqrt((people! - 1) / (people! - terms!)),
  'new-person': (error, people, t) => t! * error! * Math.sqrt(1 + 1 / people!),
  // A normal error’s mean absolute value is √(2 / π) of its standard deviation.
  absolute: (error) => 1.96 * error! * Math.sqrt(Math.PI / 2),
  share: (total, part, ...others) =>
    total! * Math.sqrt(part! / [part!, ...others].reduce((sum, value) => sum + value, 0)),
  ratio: (a, b) => a! / b!,
  'percent-of': (percent, from, to) => (percent! * from!) / to!,
};

const measured = (method: 'doppler' | 'oximeter' | 'automated', limb: 'arm' | 'leg') =>
  160 * measuredOcclusionPressure({ valueMmHg: 160, method, limb }).standardDeviation!;
const fit = (id: string) => {
  const { error } = equations.occlusionPressure.find((equation) => equation.id === id)!;
  return (error as { standardDeviationMmHg: number }).standardDeviationMmHg;
};
/** What the library ships for a figure, by the note beside it. */
const shipped: Readonly<Record<string, () => number>> = {
  'the error of measuredOcclusionPressure by oximeter': () => measured('oximeter', 'leg'),
  'the largest is the error of measuredOcclusionPressure by Doppler': () => measured('doppler', 'leg'),
  'the error of measuredOcclusionPressure, automated, on the arm': () => measured('automated', 'arm'),
  'the error of measuredOcclusionPressure, automated, on the leg': () => measured('automated', 'leg'),
  'the error of thigh-2015': () => fit('thigh-2015'),
  'the error of arm-2015': () => fit('arm-2015'),
  'the error between days of calibrateOcclusionPressure': () => DAY_DEVIATION,
};

const READINGS = {
  limb: 'leg',
  circumferenceCm: 55,
  systolicMmHg: 120,
  diastolicMmHg: 70,
  cuffWidthCm: 5,
  posture: 'supine',
  ageYears: 24,
  sex: 'male',
  paddingCoefficient: 0.8,
  side: 'left',
  circumferenceSite: 'mid-limb',
} as const;

describe('published error figures', () => {
  eachRow(errors, ({ kind, values, expected, tolerance, ...row }) => {
    expectWithin(worked[kind]!(...values), expected, tolerance);
    if ('equation' in row) {
      const { apply } = equations.occlusionPressure.find(({ id }) => id === row.equation)!;
      const { field } = row as { field: 'circumferenceCm' | 'systolicMmHg' | 'diastolicMmHg' };
      const at = (more: number) => apply({ ...READINGS, [field]: READINGS[field] + more });
      expect(at(1) - at(0), 'the slope is that of the code').toBeCloseTo(values[1]!, 9);
    }
    const ours = shipped[('note' in row && row.note) || ''];
    if (ours) expectWithin(ours(), expected, tolerance);
    else if ('note' in row) expect(row.note).not.toMatch(/^the error/);
  });
});
