import { describe, expect, it } from 'vitest';
import { convertLoad } from '../../src/quantity/convert.js';
import { decimal } from '../../src/quantity/decimal.js';
import { quantityName } from '../../src/quantity/field-quantity.js';
import { clock, format, formatUnit, inFull } from '../../src/quantity/format.js';
import { frozen } from '../../src/quantity/frozen.js';
import { loadUnitCode, loadUnitOf } from '../../src/quantity/quantities.js';
import { inSystem } from '../../src/quantity/unit-system.js';
import { product, sum, roundToStep } from '../../src/quantity/exact.js';

// Every expected value here is worked out by hand, in decimals.
describe('rounding', () => {
  it('takes a tie up, in decimals', () => {
    expect(roundToStep(2.5, 5, 'nearest')).toBe(5);
    expect(roundToStep(1.25, 2.5, 'nearest')).toBe(2.5);
    // As doubles 0.15 / 0.1 is 1.4999999999999998.
    expect(roundToStep(0.15, 0.1, 'nearest')).toBe(0.2);
  });
  it('loses no step to a double just below it', () => {
    expect(roundToStep(159.99999999999997, 2, 'down')).toBe(160);
    expect(roundToStep(0.3, 0.1, 'down')).toBe(0.3);
    expect(roundToStep(0.09999999999999999, 0.1, 'down')).toBe(0.1);
    expect(roundToStep(159.9999, 2, 'down')).toBe(158);
  });
});

describe('decimals', () => {
  it('add and multiply exactly', () => {
    expect(sum([0.1, 0.1, 0.1])).toBe(0.3);
    expect(sum([])).toBe(0);
    expect(product(0.57, 300)).toBe(171);
    expect(product(7)).toBe(7);
  });
  it('hold forty digits, so that a quotient loses none of a double’s', () => {
    expect(decimal(1).div(3).toString()).toBe(`0.${'3'.repeat(40)}`);
  });
});

describe('what enters decimals', () => {
  it('has 12 significant digits', () => {
    expect(decimal(0.1 + 0.2).toString()).toBe('0.3');
    expect(decimal(1234567890123).toNumber()).toBe(1234567890120);
    expect(decimal(-1234567890123).toNumber()).toBe(-1234567890120);
    expect(decimal(999_999_999_999).toNumber()).toBe(999_999_999_999);
    expect(sum([0.5, 1234567890123])).toBe(1234567890120.5);
  });
  it('is refused where the host changed what decimal.js needs', () => {
    const { ceil } = Math;
    Math.ceil = (value) => ceil(value);
    try {
      expect(() => decimal(0.5)).toThrow('Math.ceil was changed after the library was loaded');
    } finally {
      Math.ceil = ceil;
    }
    expect(decimal(0.5).toNumber()).toBe(0.5);
  });
});

describe('load units', () => {
  // UCUM: `[lb_av]` is the avoirdupois pound.
  it('have their UCUM codes, both ways', () => {
    expect((['kg', 'lb'] as const).map(loadUnitCode)).toEqual(['kg', '[lb_av]']);
    expect((['kg', '[lb_av]'] as const).map(loadUnitOf)).toEqual(['kg', 'lb']);
  });
});

describe('loads from one unit to another', () => {
  it('are the same load', () => {
    expect(convertLoad(45, 'lb', 'kg')).toBe(20.41165665);
    expect(convertLoad(20.41165665, 'kg', 'lb')).toBe(45);
    expect(convertLoad(0.1 + 0.2, 'kg', 'kg')).toBe(0.1 + 0.2);
  });
});

describe('numbers for people', () => {
  it.each([
    [0, '0'],
    [0.000123456, '0.0001235'],
    [-0.5, '-0.5'],
    [0.99996, '1'],
    [1, '1'],
    [1.004, '1'],
    [80.456, '80.46'],
    [-13.9, '-13.9'],
    [1e6, '1000000'],
  ])('writes %d as %s', (value, text) => expect(format(value)).toBe(text));

  it.each([
    [100, '100'],
    [-0.1 - 0.2, '-0.3'],
    [80.123456789012, '80.123456789'],
    [999_999_999_999, '999999999999'],
    [1234567890123, '1234567890120'],
  ])('writes %d in full as %s', (value, text) => expect(inFull(value)).toBe(text));

  it.each([
    ['mm[Hg]', '5 mmHg'],
    ['cm', '5 cm'],
    ['kg', '5 kg'],
    ['[lb_av]', '5 lb'],
    ['s', '5 s'],
    ['min', '5 min'],
    ['a', '5 years'],
    ['%', '5 %'],
    ['{reps}', '5 repetitions'],
    ['1', '5'],
  ] as const)('writes the unit %s as in %s', (unit, text) => expect(formatUnit(5, unit)).toBe(text));

  it.each([
    [0, '0:00'],
    [9.4, '0:09'],
    [59.6, '1:00'],
    [390, '6:30'],
    [3600, '60:00'],
  ])('writes %d seconds as %s', (seconds, text) => expect(clock(seconds)).toBe(text));
});

// 20.41165665 kg are 45 lb (0.45359237 kg each), 55.88 cm are 22 in (2.54 cm each).
describe('a number in a system of units', () => {
  it.each([
    [20.41165665, 'kg', 'imperial', 45, '[lb_av]'],
    [55.88, 'cm', 'imperial', 22, '[in_i]'],
    [45, '[lb_av]', 'imperial', 45, '[lb_av]'],
    [120, 'mm[Hg]', 'imperial', 120, 'mm[Hg]'],
    [45, '[lb_av]', 'metric', 20.41165665, 'kg'],
    [20, 'kg', 'metric', 20, 'kg'],
    [55, 'cm', 'metric', 55, 'cm'],
    [45, '[lb_av]', undefined, 45, '[lb_av]'],
    [20, 'kg', undefined, 20, 'kg'],
    [55, 'cm', undefined, 55, 'cm'],
  ] as const)('%d %s, %s: %d %s', (value, unit, system, written, code) =>
    expect(inSystem(value, unit, system)).toEqual({ value: written, unit: code }),
  );
});

describe('the quantity of a field', () => {
  it.each([
    ['cuffWidthCm', 'cuffWidthCm'],
    ['occlusion', 'occlusionMmHg'],
    ['oneRepMax', 'load'],
    ['limb', undefined],
    ['toString', undefined],
    [0, undefined],
  ])('%s: %s', (field, name) => expect(quantityName(field)).toBe(name));
});

describe('a frozen table', () => {
  it('is the one that was given, and nothing in it can be changed', () => {
    const table = { list: [{ low: 1 }], nothing: null, word: 'leg', apply: () => 1 };
    expect(frozen(table)).toBe(table);
    expect([table, table.list, table.list[0], table.apply].map(Object.isFrozen)).toEqual([true, true, true, false]);
  });
  it('may lead back to itself', () => {
    const table: { self?: object } = {};
    table.self = table;
    expect(Object.isFrozen(frozen(table))).toBe(true);
  });
});
