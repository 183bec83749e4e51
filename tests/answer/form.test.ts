import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  attemptForm,
  estimateOcclusionPressure,
  estimateOneRepMax,
  inputFields,
  poundsToKilograms,
  quantities,
  testedOneRepMax,
  type OcclusionPressure,
} from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';
import { labelFields, show } from '../../src/text/index.js';
import { de } from '../../src/text/locales/de.js';
import { publicFunctions } from '../support/public-functions.js';
import { issuesOf } from '../support/refused.js';

const texts = {
  limb: 'leg',
  circumferenceCm: '55',
  systolicMmHg: '120',
  diastolicMmHg: '70',
  cuffWidthCm: '10',
  posture: 'seated',
};

describe('a form', () => {
  it('becomes the input that a programmer would write', () => {
    const result = attemptForm(estimateOcclusionPressure, { ...texts, ageYears: ' ', cuffWidthCm: '10,5' });
    const input = {
      limb: 'leg',
      circumferenceCm: 55,
      systolicMmHg: 120,
      diastolicMmHg: 70,
      cuffWidthCm: 10.5,
      posture: 'seated',
    } as const;
    expect(result.input).toEqual(input);
    expect(result).toMatchObject({ ok: true, errors: {}, value: estimateOcclusionPressure(input) });
    if (result.ok) expectTypeOf(result.value).toEqualTypeOf<OcclusionPressure>();
  });

  it('takes FormData and Map alike', () => {
    const data = new FormData();
    for (const [name, text] of Object.entries(texts)) data.append(name, text);
    const { input } = attemptForm(estimateOcclusionPressure, texts);
    expect(attemptForm(estimateOcclusionPressure, data).input).toEqual(input);
    expect(attemptForm(estimateOcclusionPressure, new Map(Object.entries(texts))).input).toEqual(input);
  });

  it('reads every number, with a comma or a point', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1500, max: 7000 }), fc.constantFrom(',', '.'), (hundredths, mark) => {
        const text = (hundredths / 100).toFixed(2).replace('.', mark);
        const { input } = attemptForm(estimateOcclusionPressure, { ...texts, circumferenceCm: text });
        expect(input).toMatchObject({ circumferenceCm: hundredths / 100 });
      }),
    );
  });

  // Exact by definition: 1 in = 2.54 cm, 1 lb = 0.45359237 kg (international yard and pound, 1959); NIST SP 811.
  it.each([
    ['circumferenceCm', '21.5', 'in', 54.61],
    ['cuffWidthCm', '4', 'in', 10.16],
    ['systolicMmHg', '16', 'kPa', (16 * 1000) / 133.322387415],
  ] as const)('converts %s %s %s exactly', (field, text, unit, value) => {
    const { input } = attemptForm(estimateOcclusionPressure, { ...texts, [field]: text }, { units: { [field]: unit } });
    expect((input as Record<string, number>)[field]).toBeCloseTo(value, 10);
  });
  it('converts pounds', () => {
    const { input } = attemptForm(estimateOneRepMax, { load: '45', repetitions: '8' }, { units: { load: 'lb' } });
    expect(input).toEqual({ load: 20.41165665, repetitions: 8 });
    expect(poundsToKilograms(45)).toBe(20.41165665);
  });

  it('names what is wrong by the field of the form', () => {
    const { errors, ok } = attemptForm(estimateOcclusionPressure, {
      ...texts,
      circumferenceCm: '55 cm',
      systolicMmHg: '',
      cuffWidthCm: '1.000,5',
      posture: 'sitting',
    });
    expect(ok).toBe(false);
    expect(Object.keys(errors)).toEqual(['circumferenceCm', 'systolicMmHg', 'cuffWidthCm', 'posture']);
    for (const [field, error] of Object.entries(errors)) expect(error.startsWith(field)).toBe(true);
    expect(errors['posture']).toContain("Did you mean 'seated'?");
  });

  it('puts fields at their places in a request', () => {
    const { right } = publicFunctions['planSession']! as { right: { limbs: object[]; exercises: object[] } };
    const given = JSON.parse(JSON.stringify(right)) as object;
    const form = { 'limbs.0.percentLop': '40', 'limbs.0.circumferenceCm': '900', 'exercises.0.oneRepMax': '65,5' };
    const result = attemptForm(planSession, form, { given });
    expect(result.input).toMatchObject({
      limbs: [{ percentLop: 40, circumferenceCm: 900 }],
      exercises: [{ oneRepMax: 65.5 }],
    });
    expect(Object.keys(result.errors)).toEqual(['limbs.0.circumferenceCm']);
    expect(attemptForm(planSession, { ...form, 'limbs.0.circumferenceCm': '' }, { given }).ok).toBe(true);
  });

  it('never touches a prototype, and refuses units that a field cannot have', () => {
    attemptForm(estimateOneRepMax, { '__proto__.polluted': '1', 'constructor.prototype.polluted': '1' });
    expect({}).not.toHaveProperty('polluted');
    expect(() => attemptForm(estimateOneRepMax, {}, { units: { load: 'in' } })).toThrow(/options\.units\.load/);
    expect(() => attemptForm(estimateOneRepMax, 5 as never)).toThrow(/form must be/);
  });

  it.each([[[1]], ['load'], [5], [null]])('takes no %j for the rest of the input', (given) => {
    expect(issuesOf(() => attemptForm(estimateOneRepMax, {}, { given: given as never }))).toEqual([
      'options.given wrong-type',
    ]);
  });
});

describe('a form in inches and pounds', () => {
  const form = {
    systolicMmHg: '118',
    diastolicMmHg: '74',
    posture: 'seated',
    'limbs[0].limb': 'leg',
    'limbs[0].side': 'left',
    'limbs[0].circumferenceCm': '22',
    'limbs[0].cuffWidthCm': '4,1',
    'limbs[0].percentLop': '50',
    'limbs[0].measured.valueMmHg': '',
    'exercises[0].name': 'leg extension',
    'exercises[0].limb': 'leg',
    'exercises[0].oneRepMax.load': '132',
    'exercises[0].oneRepMax.repetitions': '8',
    'exercises[0].percentOneRepMax': '25',
    'exercises[0].step': '5',
    'exercises[0].scheme': '30-15-15-15',
    'exercises[0].tempo': '2-0-2-0',
    'exercises[0].restS': '30',
    'exercises[0].restriction': 'continuous',
    'exercises[0].unloaded': '',
    'exercises[0].warmUp[0].repetitions': '10',
    'exercises[0].warmUp[0].restS': '60',
  };
  it('makes a whole plan', () => {
    const result = attemptForm(planSession, form, { units: 'imperial' });
    expect(result).toMatchObject({ ok: true, errors: {} });
    // 22 × 2.54, 4.1 × 2.54, 132 × 0.45359237 and 5 × 0.45359237.
    expect(result.input).toMatchObject({
      limbs: [{ circumferenceCm: 55.88, cuffWidthCm: 10.414 }],
      exercises: [{ oneRepMax: { load: 59.87419284 }, step: 2.26796185, warmUp: [{ repetitions: 10, restS: 60 }] }],
    });
  });
  it('names what is wrong as the form does, in its units', () => {
    const wrong = { ...form, 'limbs[0].circumferenceCm': '80', 'limbs[0].side': 'Left', 'exercises[0].unloaded': 'on' };
    const { errors } = attemptForm(planSession, wrong, { units: 'imperial' });
    expect(Object.keys(errors)).toEqual(['limbs[0].side', 'limbs[0].circumferenceCm', 'exercises[0].unloaded']);
    expect(errors['limbs[0].circumferenceCm']).toMatch(/to 47\.24 in; received 80 in\.$/);
    const { 'limbs[0].percentLop': _, ...less } = form;
    expect(Object.keys(attemptForm(planSession, less, { units: 'imperial' }).errors)).toEqual([
      'exercises[0].percentLop',
    ]);
  });
  it('suspects no inches where it asks for inches, in any language', () => {
    const small = { ...texts, circumferenceCm: '9,5' };
    const message = (issue: object) => show(issue, { locale: de, units: 'imperial' });
    const result = attemptForm(estimateOcclusionPressure, small, { units: 'imperial', message });
    // 25 cm are 9.842… in and 120 cm are 47.244… in: what the sentence allows is allowed.
    expect(result.errors['circumferenceCm']).toBe(
      'Umfang der Gliedmaße – erwartet: eine Zahl von 9,85 bis 47,24 Zoll; angegeben: 9,5 Zoll.',
    );
  });
  it('has bounds that are rounded inwards: what they allow is allowed', () => {
    const fields = inputFields(estimateOcclusionPressure, { limb: 'leg' }, [], 'imperial');
    const inches = fields.filter(({ unit }) => unit === '[in_i]');
    expect(inches.map(({ name }) => name)).toEqual(expect.arrayContaining(['circumferenceCm', 'cuffWidthCm']));
    for (const { name, min, max } of inches.filter((field) => field.required)) {
      const ok = (inches: number) =>
        attemptForm(estimateOcclusionPressure, { ...texts, [name]: String(inches) }, { units: { [name]: 'in' } }).ok;
      expect([ok(min! - 0.01), ok(min!), ok(max!), ok(max! + 0.01)], name).toEqual([false, true, true, false]);
    }
    expect(() => inputFields(estimateOneRepMax, {}, [], 'stone' as never)).toThrow(/units must be one of/);
    const [load, unit] = inputFields(testedOneRepMax);
    expect([load?.name, unit?.name]).toEqual(['load', 'unit']);
  });
});

describe('labelled fields', () => {
  it('have labels, units, places and choices in your language', () => {
    const fields = labelFields(inputFields(estimateOcclusionPressure), { locale: de });
    const field = (name: string) => fields.find((one) => one.name === name);
    expect(field('limb')).toMatchObject({
      label: 'Gliedmaße',
      choices: [{ value: 'arm', text: 'Arm' }, { value: 'leg' }],
    });
    expect(field('ageYears')?.unitText).toBe('Jahre');
    expect(field('systolicMmHg')?.where).toBe('Oberarm, in Ruhe');
    expect(field('systolicMmHg')?.expected).toBe('eine Zahl von 60 bis 300 mmHg');
    expect(field('limb')?.expected).toBe("eines von 'arm' (Arm), 'leg' (Bein)");
    const inches = labelFields(inputFields(estimateOcclusionPressure, { limb: 'leg' }, [], 'imperial'), { locale: de });
    expect(inches.find(({ name }) => name === 'circumferenceCm')?.expected).toBe('eine Zahl von 9,85 bis 47,24 Zoll');
    expect(labelFields(inputFields(estimateOneRepMax)).find(({ name }) => name === 'lift')?.choices?.[0]).toEqual({
      value: 'bench-press',
      text: 'bench press',
    });
    expect(() => labelFields([{}] as never)).toThrow(/fields must be the fields of inputFields/);
  });
});

describe('the fields of an input', () => {
  it('are those of the function, with bounds of the vocabulary', () => {
    const fields = inputFields(estimateOcclusionPressure);
    const required = fields.filter((field) => field.required).map(({ name }) => name);
    expect(required.sort()).toEqual(Object.keys(texts).sort());
    const width = fields.find(({ name }) => name === 'cuffWidthCm');
    const { min, max, unit, name: label } = quantities.cuffWidthCm;
    expect(width).toMatchObject({ min, max, unit, label, required: true, where: 'the cuff on the limb you train' });
    expect(fields.find(({ name }) => name === 'posture')?.options).toEqual(['supine', 'seated', 'standing']);
  });

  it('have the unit as a label shows it', () => {
    const unitText = (name: string) => fields().find((field) => field.name === name)?.unitText;
    const fields = () => inputFields(estimateOcclusionPressure);
    // UCUM writes mm[Hg], and a for years; people write mmHg.
    expect(['systolicMmHg', 'cuffWidthCm', 'ageYears', 'paddingCoefficient'].map(unitText)).toEqual([
      'mmHg',
      'cm',
      'years',
      undefined,
    ]);
  });

  it('depend on what is known already', () => {
    const girth = (limb: string) =>
      inputFields(estimateOcclusionPressure, { limb }).find(({ name }) => name === 'circumferenceCm');
    expect([girth('arm')?.max, girth('leg')?.max]).toEqual([70, 120]);
  });

  it('of a part inside are told too', () => {
    const fields = inputFields(planSession, {}, ['limbs', 0]);
    expect(fields.map(({ name }) => name)).toEqual(expect.arrayContaining(['limb', 'side', 'occlusion', 'percentLop']));
    expect(fields.find(({ name }) => name === 'side')).toMatchObject({ required: true, options: ['left', 'right'] });
    expect(fields.find(({ name }) => name === 'percentLop')).toMatchObject({
      required: false,
      unit: '%',
      min: 1,
      max: 100,
    });
  });

  // Each function that carries its schema: what a form is made of must hold for its own right input.
  it.each(Object.entries(publicFunctions).filter(([, { call, open }]) => 'input' in call && !open))(
    'hold of what is right: %s',
    (_name, { call, right }) => {
      const fields = inputFields(call as never);
      if (_name.startsWith('sessionTimeline') || _name.startsWith('sessionTotals')) return;
      expect(fields.length).toBeGreaterThan(0);
      const input = right as Record<string, unknown>;
      for (const { name, required, min, max, options } of fields) {
        if (required) expect(input, name).toHaveProperty(name);
        const value = input[name];
        if (typeof value === 'number' && min !== undefined && max !== undefined) {
          expect(value >= min && value <= max, name).toBe(true);
        }
        if (typeof value === 'string' && options) expect(options).toContain(value);
      }
    },
  );
});
