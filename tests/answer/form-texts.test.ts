import { describe, expect, it } from 'vitest';
import { attemptForm, InputError, inputFields, testedOneRepMax, type FormOptions } from '../../src/index.js';

/** Gives back what the form made. */
const made = (form: object, options?: FormOptions): unknown => attemptForm((input) => input, form, options).input;
const issuesOf = (call: () => unknown): readonly string[] => {
  try {
    call();
  } catch (error) {
    return (error as InputError).issues.map(({ message }) => message);
  }
  return [];
};

describe('the text of a field', () => {
  it.each([
    ['load', '80', 80],
    ['load', ' 80 ', 80],
    ['load', '+80', 80],
    ['load', '-80', -80],
    ['load', '80.', 80],
    ['load', '80,25', 80.25],
    ['load', '.5', 0.5],
    ['load', ',5', 0.5],
    ['load', '8e1', '8e1'],
    ['load', '1.000,5', '1.000,5'],
    ['load', '80 kg', '80 kg'],
    ['load', '0x10', '0x10'],
    ['load', '.', '.'],
    // Forty figures are read, more are no number that anyone entered.
    ['load', '1'.repeat(40), Number('1'.repeat(40))],
    ['load', '1'.repeat(41), '1'.repeat(41)],
    ['exercise', '80', '80'],
    ['unloaded', 'on', true],
    ['unloaded', 'true', true],
    ['unloaded', 'false', 'false'],
    ['stoppedEarly', 'on', true],
    ['deload', 'on', true],
    ['lastSetToFailure', 'on', true],
    ['limb', 'on', 'on'],
  ])('%s: %s', (name, text, value) => {
    expect(made({ [name]: text })).toEqual({ [name]: value });
  });

  it('is left out where it is empty, and stays as it is where it is no text', () => {
    expect(made({ load: '', limb: '  ', repetitions: 8, file: null })).toEqual({ repetitions: 8, file: null });
  });
});

describe('the name of a field', () => {
  it.each([
    ['limbs.0.side', { limbs: [{ side: 'left' }] }],
    ['limbs[0].side', { limbs: [{ side: 'left' }] }],
    ['sets[12]', { sets: Object.assign([], { 12: 'left' }) }],
    ['sets.100', { sets: Object.assign([], { 100: 'left' }) }],
    ['a.b.c', { a: { b: { c: 'left' } } }],
    ['a.1b', { a: { '1b': 'left' } }],
    ['a.b1', { a: { b1: 'left' } }],
    // No list has a thousand items: such a step is a name.
    ['a.1000', { a: { '1000': 'left' } }],
    ['a[1000]', { 'a[1000]': 'left' }],
  ])('%s is its place', (name, input) => {
    expect(made({ [name]: 'left' })).toEqual(input);
  });

  it('gives the items of a list the quantity of the list', () => {
    expect(made({ 'loads.0': '80,5', 'load.0': '80,5', 'load.10': '5' }, { units: { load: 'lb' } })).toEqual({
      loads: ['80,5'],
      load: Object.assign([36.514185785], { 10: 2.26796185 }),
    });
  });

  it('leads twelve steps down, and no further', () => {
    const steps = (count: number): string => Array.from({ length: count }, () => 'a').join('.');
    const depth = (input: unknown): number => (typeof input === 'object' ? 1 + depth((input as { a: unknown }).a) : 0);
    expect([11, 12, 13, 14].map((count) => depth(made({ [steps(count)]: 'x' })))).toEqual([11, 12, 12, 12]);
  });

  it('puts it beside what is given, which stays as it was', () => {
    const given = { limbs: [{ side: 'left' }, 5], unit: 'lb' };
    expect(made({ 'limbs.0.limb': 'leg', 'limbs.1.limb': 'arm', 'unit.x': '1' }, { given })).toEqual({
      limbs: [{ side: 'left', limb: 'leg' }, { limb: 'arm' }],
      unit: { x: '1' },
    });
    expect(given).toEqual({ limbs: [{ side: 'left' }, 5], unit: 'lb' });
  });
});

describe('what is no form', () => {
  const expected = /^form (must be|is missing: it must be) a FormData/;
  it.each([[5], [null], [undefined], ['text'], [[['load', '80']]], [new Map([[5, 'x']])], [new Set([5])]])(
    '%j',
    (form) => {
      expect(issuesOf(() => made(form as never))).toEqual([expect.stringMatching(expected)]);
    },
  );

  it('has more than a thousand fields, or breaks as it is read', () => {
    const form = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, at) => [`f${at}`, 'x']));
    expect(Object.keys(made(form(1000)) as object)).toHaveLength(1000);
    expect(issuesOf(() => made(form(1001)))).toEqual([expect.stringMatching(/received too many fields/)]);
    const breaks = new Proxy(new Map(), {
      get: () => {
        throw new RangeError('own');
      },
    });
    expect(issuesOf(() => made(breaks))).toEqual([expect.stringMatching(/received an error/)]);
  });
});

describe('the units of a form', () => {
  it.each([
    [{ load: 'in' }, 'options.units.load must be one of \'lb\'; received "in".'],
    [{ cuffWidthCm: 'lb' }, 'options.units.cuffWidthCm must be one of \'in\'; received "lb".'],
    [{ systolicMmHg: 'min' }, 'options.units.systolicMmHg must be one of \'kPa\'; received "min".'],
    [{ restS: 'h' }, 'options.units.restS must be one of \'min\'; received "h".'],
  ])('%j', (units, message) => {
    expect(issuesOf(() => made({}, { units: units as never }))).toEqual([message]);
  });

  it('are refused for a field that has one unit, or that nobody knows', () => {
    const [one, ...more] = issuesOf(() => made({}, { units: { percentLop: 'lb', side: 'in' } as never }));
    expect(one).toMatch(/^options\.units\.percentLop must be .*; received "lb"\.$/);
    expect(more).toEqual([one!.replace('percentLop', 'side').replace('lb', 'in')]);
    expect(issuesOf(() => made({}, { units: 'stone' as never }))).toEqual([
      expect.stringMatching(/^options\.units must be one of /),
    ]);
    expect(issuesOf(() => made({}, { message: 'x' as never }))).toEqual([
      expect.stringMatching(/^options\.message must be /),
    ]);
  });

  it('change centimetres and kilograms where they are imperial, and nothing else', () => {
    const form = { cuffWidthCm: '4', load: '100', restS: '60', systolicMmHg: '120', side: 'left' };
    // 2.54 cm and 0.45359237 kg (international yard and pound, 1959).
    const input = { cuffWidthCm: 10.16, load: 45.359237, restS: 60, systolicMmHg: 120, side: 'left' };
    expect(made(form, { units: 'imperial' })).toEqual(input);
    expect(made(form, { units: 'metric' })).toMatchObject({ cuffWidthCm: 4, load: 100 });
    expect(made({ restS: '1,5' }, { units: { restS: 'min' } })).toEqual({ restS: 90 });
  });
});

describe('an error', () => {
  it('is in the unit and by the name of the form, the first of several for one field', () => {
    const fails = (issues: readonly object[]) => () => {
      throw new InputError(issues as never);
    };
    const one = (path: readonly (string | number)[], more: object = {}) => ({ path, message: 'first', ...more });
    const errorsOf = (issues: readonly object[], form: object, units?: FormOptions['units']) =>
      attemptForm(fails(issues), form, { units }).errors;
    const twice = [one(['a', 0]), { ...one(['a', 0]), message: 'second' }];
    expect(errorsOf(twice, { 'a[0]': 'x' })).toEqual({ 'a[0]': 'first' });
    expect(errorsOf(twice, { 'a.0': 'x' })).toEqual({ 'a.0': 'first' });
    // What the form does not have is named as its other fields are.
    expect(errorsOf([one(['b', 1, 'c'])], { 'a[0]': 'x' })).toEqual({ 'b[1].c': 'first' });
    expect(errorsOf([one(['b', 1, 'c'])], { 'a.0': 'x' })).toEqual({ 'b.1.c': 'first' });
    const bounds = { code: 'out-of-range', min: 3, max: 40, expected: 'a number from 3 to 40 cm', received: '101.6' };
    const width = one(['cuffs', 0, 'cuffWidthCm', 0], bounds);
    const form = { 'cuffs.0.cuffWidthCm.0': ' 40 ' };
    // 3 cm and 40 cm are 1.181 and 15.748 in: inwards at two decimals.
    expect(errorsOf([width], form, { cuffWidthCm: 'in' })['cuffs.0.cuffWidthCm.0']).toBe(
      'cuffs[0].cuffWidthCm[0] must be a number from 1.19 to 15.74 in; received 40 in.',
    );
    expect(errorsOf([{ ...width, whole: true }], form, 'imperial')['cuffs.0.cuffWidthCm.0']).toMatch(/a whole number/);
    for (const left of ['min', 'max'])
      expect(errorsOf([{ ...width, [left]: undefined }], form, 'imperial')).toEqual({
        [Object.keys(form)[0]!]: 'first',
      });
    expect(errorsOf([width], {}, 'imperial')).toEqual({ 'cuffs.0.cuffWidthCm.0': 'first' });
    expect(errorsOf([width], form)).toEqual({ 'cuffs.0.cuffWidthCm.0': 'first' });
    expect(errorsOf([one([])], {})).toEqual({ '': 'first' });
    const message = (found: { readonly code: string }): string => `own ${found.code}`;
    expect(attemptForm(fails([width]), form, { units: 'imperial', message }).errors).toEqual({
      'cuffs.0.cuffWidthCm.0': 'own out-of-range',
    });
  });
});

describe('the fields of an input', () => {
  it('have the unit of a load after the load, and bounds in pounds where asked', () => {
    const [load, unit] = inputFields(testedOneRepMax, {}, [], 'imperial');
    expect([load!.name, unit!.name]).toEqual(['load', 'unit']);
    expect(load).toMatchObject({ unit: '[lb_av]', unitText: 'lb', required: true });
    expect(load!.expected).toBe(`a number from ${load!.min!} to ${load!.max!} lb`);
    expect(unit).toMatchObject({ required: false, options: ['kg', 'lb'] });
    expect(unit!.expected).toMatch(/'kg', 'lb'/);
  });

  it('are refused for what is no function, no path and no system of units', () => {
    const refused = (...args: readonly unknown[]) => issuesOf(() => inputFields(...(args as [never])));
    expect(refused(5)).toEqual([expect.stringMatching(/^fn must be /)]);
    const noPath = [expect.stringMatching(/^path must be /)];
    expect(refused(testedOneRepMax, {}, 'limbs')).toEqual(noPath);
    expect(refused(testedOneRepMax, {}, [{}])).toEqual(noPath);
    expect(refused(testedOneRepMax, {}, Array(13).fill(0))).toEqual(noPath);
    expect(refused(testedOneRepMax, {}, Array(12).fill('a'))).toEqual([]);
    expect(refused(testedOneRepMax, {}, [], 'stone')).toEqual([expect.stringMatching(/^units must be one of /)]);
  });

  it('are none of a function that takes anything', () => {
    expect(inputFields((input: object) => input)).toEqual([]);
  });
});
