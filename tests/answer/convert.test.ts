import { describe, expect, it } from 'vitest';
import {
  centimetresToInches,
  inchesToCentimetres,
  kilogramsToPounds,
  kilopascalsToMmHg,
  mmHgToKilopascals,
  poundsToKilograms,
  roundToStep,
  type Rounding,
} from '../../src/index.js';
import { issuesOf } from '../support/refused.js';

describe('the converters', () => {
  // The factors are exact by definition (UCUM `[lb_av]`, `[in_i]`); 13 595.1 kg/m³ × 9.80665 m/s² × 1 mm = 133.322387415 Pa.
  const converters = [
    ['pounds', poundsToKilograms, 100, 45.359237],
    ['kilograms', kilogramsToPounds, 45.359237, 100],
    ['inches', inchesToCentimetres, 10, 25.4],
    ['centimetres', centimetresToInches, 25.4, 10],
    ['kilopascals', kilopascalsToMmHg, 133.322387415, 1000],
    ['mmHg', mmHgToKilopascals, 1000, 133.322387415],
  ] as const;

  it.each(converters)('carry %s by the factor of its definition', (_field, convert, given, expected) => {
    expect(convert(given)).toBe(expected);
    expect(convert(-given)).toBe(-expected);
    expect(convert(0)).toBe(0);
  });

  it.each(converters)('refuse %s that are no finite number', (field, convert) => {
    const odd = convert as (value?: unknown) => number;
    expect(issuesOf(() => odd(NaN))).toEqual([`${field} not-finite`]);
    expect(issuesOf(() => odd(-Infinity))).toEqual([`${field} not-finite`]);
    expect(issuesOf(() => odd('45'))).toEqual([`${field} wrong-type`]);
    expect(issuesOf(() => odd(null))).toEqual([`${field} wrong-type`]);
    expect(issuesOf(() => odd())).toEqual([`${field} missing`]);
  });

  it('refuse what would overflow', () => {
    // 1e308 / 0.45359237 is 2.2e308, and the greatest double is 1.8e308.
    expect(issuesOf(() => kilogramsToPounds(1e308))).toEqual(['kilograms out-of-range']);
    expect(issuesOf(() => poundsToKilograms(1e308))).toEqual([]);
  });

  it('say what they were given and what they wanted', () => {
    expect(() => poundsToKilograms(NaN)).toThrow(
      'pounds must be a finite number; received NaN, which is not a finite number.',
    );
    expect(() => kilogramsToPounds(1e308)).toThrow(
      'kilograms must be a number whose result is no greater than 1.8e308; received 1e+308.',
    );
    expect(() => roundToStep(1, 0, 'up' as Rounding)).toThrow(
      "step must be a finite number above zero; received 0.\nrounding must be one of 'down', 'nearest'; received \"up\".",
    );
    expect(() => roundToStep(1, '2' as never, 'down')).toThrow(
      'step must be a finite number above zero; received "2".',
    );
  });
});

describe('rounding to a step', () => {
  it('gives the multiple at or below, or the nearest', () => {
    expect(roundToStep(7, 2, 'down')).toBe(6);
    expect(roundToStep(7.1, 2, 'nearest')).toBe(8);
    expect(roundToStep(6.9, 2, 'nearest')).toBe(6);
    expect(roundToStep(0, 2, 'down')).toBe(0);
  });

  it.each([
    [['80', 2, 'down'], ['value wrong-type']],
    [[NaN, 2, 'down'], ['value not-finite']],
    [[80, Infinity, 'down'], ['step not-finite']],
    [[80, -Infinity, 'down'], ['step not-finite']],
    [[80, 0, 'down'], ['step out-of-range']],
    [[80, -2, 'down'], ['step out-of-range']],
    [[80, 2, 'up'], ['rounding not-one-of']],
    [[80, 2], ['rounding missing']],
    // 1e300 / 1e-300 is 1e600 steps, more than a double can count.
    [[1e300, 1e-300, 'nearest'], ['value out-of-range']],
    [[], ['value missing', 'step missing', 'rounding missing']],
  ])('names what is wrong with %j', (given, expected) => {
    const odd = roundToStep as (...given: unknown[]) => number;
    expect(issuesOf(() => odd(...(given as [number, number, Rounding])))).toEqual(expected);
  });
});
