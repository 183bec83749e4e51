import { describe, expect, it } from 'vitest';
import { quantities, type QuantityName } from '../../src/index.js';
import { publicProperties } from '../support/public-properties.js';

const all = publicProperties();
/** These only narrow a field of an exercise, whose words an editor would else show twice. */
const NARROWED = /^Exercise(Lift|Sets|Cuff)\./;

describe('public properties', () => {
  it('have words, every one', () => {
    expect(all.length).toBeGreaterThan(1300);
    const bare = all
      .filter(({ comment, name }) => comment === '' && !NARROWED.test(name))
      .map(({ place, name }) => `${place} ${name}`);
    expect(bare).toEqual([]);
  });

  it('say first what they are, and then when they are there', () => {
    const CONDITION =
      /^\/\*\*[\s*]*(Present (when|where)|Absent|Left out|Instead|Of|In|With|Without|For|From|\d+ when|`[^`]*` when left out)\b/;
    const late = all
      .filter(({ comment, type }) => type !== 'true' && CONDITION.test(comment))
      .map((one) => `${one.place} ${one.name} ${one.comment}`);
    expect(late).toEqual([]);
  });
});

/** The unit as the editor shows it; that of a mass may be `unit`, a field beside it. */
const UNITS: Readonly<Record<string, readonly string[]>> = {
  '1': [''],
  '{reps}': [''],
  '{sessions}': [''],
  'mm[Hg]': ['[mmHg]'],
  a: ['[years]'],
  '{AU}': ['[AU]'],
  'kg/m2': ['[kg/m²]'],
  kg: ['[kg]', '[`unit`'],
};
const number = (value: number): string => (value < 10_000 ? String(value) : value.toLocaleString('en'));

describe('numbers that you give', () => {
  const given = all.filter(
    ({ given, field, type }) => given && Object.hasOwn(quantities, field) && !/readonly \w+\[\]/.test(type),
  );
  it('are found', () => expect(given.length).toBeGreaterThan(100));
  it('have the unit and the bounds of the vocabulary in their words', () => {
    const lacking = given.flatMap(({ place, name, field, comment }) => {
      const { unit, min, max } = quantities[field as QuantityName];
      const units = UNITS[unit] ?? [`[${unit}]`];
      const circumference = field === 'circumferenceCm' && /25–120|15–70/.test(comment);
      const whole =
        units.some((one) => comment.includes(one)) &&
        (circumference || comment.includes(`${number(min)}–${number(max)}`));
      return whole ? [] : [`${place} ${name}: ${units[0]}, ${number(min)}–${number(max)}: ${comment}`];
    });
    expect(lacking).toEqual([]);
  });
});
