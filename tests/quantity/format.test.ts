import { expect, it } from 'vitest';
import { format, inPractice } from '../../src/quantity/format.js';

// What is expected is how a coach writes it: whole mmHg, AU and mmHg·min, percentages and minutes to a tenth.
it.each([
  [85.6, 'mm[Hg]', '86'],
  [1469.4, 'mm[Hg].min', '1469'],
  [674.35, '%.min', '674'],
  [189.6, '{AU}', '190'],
  [11.34, 'min', '11.3'],
  [49.418, '%', '49.4'],
  [40, '%', '40'],
  [12.344, 'kg', '12.34'],
  [12.344, '', '12.34'],
])('a number that was worked out, %d %s, is written as %s', (value, unit, written) => {
  expect(inPractice(value, unit)).toBe(written);
});

it('has more digits where it would look like 0, or like a number that it stands next to, or on its other side', () => {
  expect(inPractice(0.4, 'mm[Hg]')).toBe('0.4');
  expect(inPractice(0.04, 'mm[Hg]')).toBe('0.04');
  expect(inPractice(0, 'mm[Hg]')).toBe('0');
  expect(inPractice(250.4, 'mm[Hg]', [250])).toBe('250.4');
  expect(inPractice(250.04, 'mm[Hg]', [300, 250])).toBe('250.04');
  expect(inPractice(250, 'mm[Hg]', [250])).toBe('250');
  expect(inPractice(249.6, 'mm[Hg]', [249.8])).toBe('249.6');
  expect(inPractice(10.04, 'min', [10])).toBe('10.04');
  expect(inPractice(10.14, 'min', [10])).toBe('10.1');
});

it('has fewer digits where fewer are asked for, and never more', () => {
  expect(inPractice(49.418, '%', [], 0)).toBe('49');
  expect(inPractice(49.418, '%', [49], 0)).toBe('49.4');
  expect(inPractice(49.418, '%', [], 2)).toBe('49.4');
  expect(inPractice(12.344, 'kg', [], 1)).toBe('12.3');
});

it('a number that was given has two decimals, and four digits below one', () => {
  expect([12.344, -0.123456, 0.5, 1, 100].map(format)).toEqual(['12.34', '-0.1235', '0.5', '1', '100']);
});
