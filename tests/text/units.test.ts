import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  attempt,
  attemptForm,
  estimateOcclusionPressure,
  inputFields,
  testedOneRepMax,
  trainingLoad,
} from '../../src/index.js';
import { nextSession, planSession, recordSession, type PlanRequest } from '../../src/plan/index.js';
import { explain, show, toRows, type Texts } from '../../src/text/index.js';
import { de } from '../../src/text/locales/de.js';
import { publicFunctions } from '../support/public-functions.js';

// One pound is 0.45359237 kg (international yard and pound agreement, 1959): 20 kg are 44.0925 lb, 2.5 kg are 5.5116 lb
// and 62.5 kg are 137.789 lb. One inch is 2.54 cm: 55.88 cm are 22 in, 10.16 cm are 4 in.
const maximum = testedOneRepMax({ load: 62.5 });
const load = trainingLoad({ oneRepMax: maximum, percentOneRepMax: 30, step: 2.5 });
const pressure = estimateOcclusionPressure({
  limb: 'leg',
  circumferenceCm: 55.88,
  systolicMmHg: 120,
  diastolicMmHg: 76,
  cuffWidthCm: 10.16,
  posture: 'seated',
});
const plan = planSession(JSON.parse(JSON.stringify(publicFunctions['planSession']!.right)) as PlanRequest);
const record = recordSession({
  plan,
  date: '2026-03-02',
  items: plan.items.map(({ exercise, limb, side, sets }) => ({ exercise, limb, side, sets, load: 15 })),
  symptoms: [],
} as never);

describe('pounds and inches', () => {
  it('stand where a number is set, with the kilograms that are set', () => {
    const page = explain(load, { units: 'imperial' });
    expect(page.split('\n')[0]).toBe('Training load: 44.09 lb (20 kg)');
    expect(page).toContain('rounded to the nearest, steps of 5.51 lb (2.5 kg): 44.09 lb (20 kg)');
    expect(page).toContain('M one-repetition maximum 137.79 lb (62.5 kg)');
    // The formula computes in kilograms.
    expect(page).toContain('    = 30 / 100 × 62.5\n    = 18.75 kg\n');
    expect(page).toContain('The nearest load you can set, 44.09 lb (20 kg), is 32 % of 1RM instead of 30 %.');
  });

  it('are the ends of an interval: 57.355 and 67.645 kg are 126.45 and 149.13 lb', () => {
    expect([maximum.lower!.toFixed(3), maximum.upper!.toFixed(3)]).toEqual(['57.355', '67.645']);
    const [row] = toRows(maximum, { units: 'imperial' });
    expect([row!.lower!.toFixed(2), row!.upper!.toFixed(2)]).toEqual(['126.45', '149.13']);
    expect(show(maximum, { units: 'imperial' })).toMatch(/137\.79 lb \(95 % interval 126\.4–149\.1 lb\)/);
  });

  it('leave pressures in mmHg', () => {
    const page = explain(pressure, { units: 'imperial' });
    expect(page.split('\n')[0]).toBe(explain(pressure).split('\n')[0]);
    expect(page).toContain('TC limb circumference 22 in (55.88 cm), W cuff width 4 in (10.16 cm)');
  });

  it('are in a table, with their codes', () => {
    expect(toRows(load, { units: 'imperial' })).toMatchObject([{ value: 20 / 0.45359237, unit: '[lb_av]' }]);
    expect(toRows(load)).toMatchObject([{ value: 20, unit: 'kg' }]);
  });

  it('are in the errors of a form', () => {
    const wrong = attempt(estimateOcclusionPressure, { ...pressure.inputs, limb: 'arm', circumferenceCm: 254 });
    expect(show(wrong, { units: 'imperial' })).toContain(
      // 70 cm are 27.559… in: 27.56 in would be refused.
      'limb circumference must be a number from 5.91 to 27.55 in; received 100 in.',
    );
  });

  it('are converted to kilograms where the gym has pounds: 45 lb are 20.41 kg', () => {
    const bar = testedOneRepMax({ load: 45, unit: 'lb' });
    expect(show(bar)).toContain('One-repetition maximum 45 lb');
    expect(show(bar, { units: 'metric' })).toContain('One-repetition maximum 20.41 kg');
    expect(explain(bar, { units: 'metric' })).toContain('w load 20.41 kg (45 lb)');
  });

  it.each([
    ['a plan', plan],
    ['a record', record],
    ['a proposal', nextSession({ plan, records: [record], rule: 'all-repetitions' })],
  ])('are on the page of %s wherever kilograms are', (_, document) => {
    const page = explain(document, { units: 'imperial' });
    // What the working computes, what an equation takes and what a source reports stay metric.
    const ofOwn = page.split('\n').filter((line) => !/ [=≈] |^ *- [a-z0-9-]+: |^ *assumption: /.test(line));
    const metric = ofOwn.filter((line) => /\d (kg|cm)\b/.test(line.replace(/[\d.]+ (lb|in) \([\d.]+ (kg|cm)\)/g, '')));
    expect(metric).toEqual([]);
    expect(page).toMatch(/\d lb/);
    expect(explain(document, { units: 'metric' })).toBe(explain(document));
  });
});

describe('plates in pounds', () => {
  it('make the loads of a bar of 45 lb', () => {
    // 0.5 × 315 lb = 157.5 lb. 45 + 2 × 55 = 155 lb is the nearest that pairs of these plates make: 45, 35, 25, 10, 5.
    const plates = [45, 35, 25, 10, 5].map((mass) => ({ mass, count: 4 }));
    const squat = trainingLoad({ oneRepMax: 315, unit: 'lb', percentOneRepMax: 50, bar: 45, plates });
    expect(squat).toMatchObject({ value: 155, unit: '[lb_av]', perSide: [{ mass: 45 }, { mass: 10 }] });
    expect(explain(squat).split('\n')[0]).toBe('Training load: 155 lb');
    expect(explain(squat, { units: 'imperial' })).toBe(explain(squat));
  });
});

describe('a number in German', () => {
  it('has a decimal comma on every page', () => {
    for (const answer of [load, pressure, plan]) {
      const page = explain(answer, { locale: de }).split('\n');
      const own = page.filter((line) => !/^ *(- |Quelle )[a-z0-9-]+: /.test(line));
      expect(own.filter((line) => /\d\.\d/.test(line))).toEqual([]);
    }
  });

  it('has one in LaTeX and MathML too', () => {
    expect(explain(load, { locale: de, format: 'latex' })).toContain('62{,}5');
    expect(explain(load, { locale: de, format: 'mathml' })).toContain('<mn>62,5</mn>');
  });

  it('may have any mark that you give', () => {
    expect(show(maximum, { locale: { 'number.decimal-mark': '·' } })).toContain('62·5 kg');
  });
});

describe('a catalogue', () => {
  it('does not compile with a text less', () => {
    const { missing: _, ...others } = de;
    // @ts-expect-error One text is missing.
    const texts: Texts = others;
    expect(texts).not.toHaveProperty('missing');
  });

  it('is imported by you alone', () => {
    const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
    const importing = files.filter((file) => /from '.*locales\//.test(readFileSync(`src/${file}`, 'utf8')));
    expect(importing).toEqual([]);
  });

  it('is refused where it is none', () => {
    expect(() => show(maximum, { locale: 'de' as never })).toThrow(
      /such as `de` of cuffwork\/explain\/de; received "de"/,
    );
  });
});

describe('labels of a form', () => {
  it('are in your language', () => {
    const labels = inputFields(estimateOcclusionPressure, { limb: 'leg' }).map((field) => show(field, { locale: de }));
    expect(labels).toContain('Umfang der Gliedmaße');
    expect(labels).toContain('Körperposition');
  });

  it('name the field of an error', () => {
    const { ok: _, errors } = attemptForm(
      testedOneRepMax,
      { load: '1,5kg' },
      { message: (issue) => show(issue, { locale: de }) },
    );
    expect(errors).toEqual({ load: 'Last – erwartet: eine Zahl von 0,1 bis 2000 kg; angegeben: "1,5kg".' });
  });
});
