import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../src/answer/day.js';
import { fieldIssue, FieldReader, numberIssue, optionIssue } from '../../src/answer/field-reader.js';
import { guardCautions } from '../../src/answer/guards.js';
import { InputError, issue, type InputIssue } from '../../src/answer/issues.js';
import { once, ownDocument } from '../../src/answer/own.js';
import { plainCopy } from '../../src/answer/plain-copy.js';
import { plainInput } from '../../src/answer/plain-input.js';
import { answerFault } from '../../src/answer/read-answer.js';
import { Reader } from '../../src/answer/reader.js';
import { suggest } from '../../src/answer/suggest.js';
import { english, marked, named, rangeToSet, type Translate } from '../../src/answer/translate.js';
import { guards, type Guard, type GuardId } from '../../src/evidence/guards.js';

// What is expected is written by hand, from what the design says of each part.

const SIX = ['squat', 'lunge', 'bridge', 'press', 'curl', 'row'];
const facts = ({ path, code, expected, received }: InputIssue) => [path.join('.'), code, expected, received];
/** What a reader of an input says once it is done. */
function refused(input: unknown, read: (reader: Reader) => unknown): unknown[] {
  const reader = new Reader(input);
  try {
    read(reader);
    reader.done();
    return [];
  } catch (error) {
    return (error as InputError).issues.map(facts);
  }
}

describe('options and fields that are not known', () => {
  it('are listed whole up to five; of more, five, or those that were likely meant', () => {
    const quoted = SIX.map((name) => `'${name}'`);
    expect(optionIssue([], SIX.slice(0, 5), 'squad').expected).toBe(`one of ${quoted.slice(0, 5).join(', ')}`);
    expect(optionIssue([], SIX, 'squad').expected).toBe('one of 6 options');
    expect(optionIssue([], SIX, 'xyz').expected).toBe(`one of 6 options, such as ${quoted.slice(0, 5).join(', ')}`);
    expect(optionIssue([], ['squat'], 'xyz').expected).toBe("'squat'");
    expect(fieldIssue(['a'], SIX, 'xyz')).toMatchObject({
      path: ['a', 'xyz'],
      code: 'unknown-field',
      expected: `one of 6 fields, such as ${SIX.slice(0, 5).join(', ')}`,
      received: '"xyz"',
      options: SIX,
      suggestions: [],
    });
  });
});

describe('a number', () => {
  const length = { name: 'length', unit: 'cm', min: 10, max: 50 } as const;
  it.each([
    [undefined, 'missing'],
    ['20', 'wrong-type'],
    [NaN, 'not-finite'],
    [9, 'out-of-range'],
  ])('that is %s is refused as %s', (value, code) => {
    expect(numberIssue(length, value, [])?.code).toBe(code);
  });
  it('is right at its bounds', () => {
    expect([10, 50].map((value) => numberIssue(length, value, []))).toEqual([undefined, undefined]);
  });
});

describe('a reader', () => {
  it('refuses what no loop shows, by name, and reads nothing then', () => {
    const hidden = Object.defineProperty({ b: 1 }, 'a', { value: 1 });
    const what = ['enumerable field with a value'].map((words) => `an ${words}`)[0];
    expect(refused(hidden, (reader) => reader.raw('b'))).toEqual([['a', 'wrong-type', what, 'a hidden field']]);
    const symbol = { [Symbol('s')]: 1 };
    expect(refused(symbol, (reader) => reader.raw('b'))).toEqual([['Symbol(s)', 'wrong-type', what, 'a hidden field']]);
    const both = Object.defineProperty({ [Symbol('s')]: 1 }, 'a', { value: 1 });
    expect(refused(both, (reader) => reader.raw('b'))).toHaveLength(2);
    const setter = Object.defineProperty({}, 'a', { set: () => undefined, enumerable: true });
    expect(refused(setter, (reader) => reader.raw('a'))).toEqual([['a', 'wrong-type', what, 'a hidden field']]);
    const getter = Object.defineProperty({}, 'a', { get: () => undefined, enumerable: true });
    expect(refused(getter, (reader) => reader.raw('a'))).toEqual([]);
    expect(refused({ a: undefined }, (reader) => reader.raw('a'))).toEqual([]);
  });

  it('says what could not be read, once', () => {
    const throws = () => {
      throw new RangeError();
    };
    const broken = Object.defineProperty({ b: 1 }, 'a', { get: throws, enumerable: true });
    const read = (reader: Reader) => [
      reader.raw('a'),
      reader.choice('b', ['x']),
      reader.text('c', ['c', 'c'], Boolean),
    ];
    expect(refused(broken, read)).toEqual([['a', 'unreadable', 'a value that can be read', 'an error']]);
  });

  it('is ended by the thousandth issue, whatever it is about', () => {
    const one = issue('missing', ['x'], ['x', 'x'], undefined);
    const full = () => Array.from({ length: 999 }, () => one);
    const last = (read: (issues: InputIssue[]) => unknown): unknown => {
      const issues = full();
      try {
        return read(issues);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        return [issues.length, facts(issues.at(-1)!)[1]];
      }
    };
    expect(last((issues) => new FieldReader(5, [], issues))).toEqual([1000, 'wrong-type']);
    const setter = Object.defineProperty({}, 'a', { set: () => undefined, enumerable: true });
    expect(last((issues) => new Reader(setter, [], issues).raw('a'))).toEqual([1000, 'wrong-type']);
    expect(last((issues) => new Reader({ a: 5 }, [], issues).optionalList('a', ['a', 'a']))).toEqual([
      1000,
      'wrong-type',
    ]);
    // The one before it is only noted.
    const issues = full().slice(1);
    new FieldReader(5, [], issues);
    expect(issues).toHaveLength(999);
  });

  it('takes true and false, and false for what is left out', () => {
    const flag = (input: object): boolean => new Reader(input).flag('a');
    expect([{ a: true }, { a: false }, {}].map(flag)).toEqual([true, false, false]);
    expect(refused({ a: 1 }, (reader) => reader.flag('a'))).toEqual([['a', 'wrong-type', 'true or false', '1']]);
  });

  it('refuses a field to leave out with what it holds, and no other', () => {
    const read = (reader: Reader) => [reader.raw('a'), reader.raw('b'), reader.leaveOut('a', ['left-out', 'left out'])];
    expect(refused({ a: 5, b: 6 }, read)).toEqual([['a', 'wrong-relation', 'left out', '5']]);
    expect(refused({ b: 6 }, read)).toEqual([]);
  });
});

describe('an issue', () => {
  it('of a changed document stays one where the field is gone', () => {
    expect(issue('changed-document', [], ['x', 'x'], undefined)).toMatchObject({
      code: 'changed-document',
      received: 'undefined',
    });
    expect(issue('wrong-type', [], ['x', 'x'], undefined)).toMatchObject({ code: 'missing', received: 'undefined' });
    expect(issue('wrong-type', [], ['x', 'x'], 'undefined').code).toBe('wrong-type');
  });
  it('cuts long names in its path, and leaves positions as they are', () => {
    const [name, at] = issue('missing', ['n'.repeat(61), 7], ['x', 'x'], undefined).path;
    expect([name, at]).toEqual([`${'n'.repeat(60)}…`, 7]);
    expect(issue('missing', ['n'.repeat(60)], ['x', 'x'], undefined).path).toEqual(['n'.repeat(60)]);
  });
});

describe('a copy', () => {
  it('is the document itself where nobody can change it, unless something is put in the place of parts', () => {
    const own = ownDocument({ a: { b: 1 } });
    expect(plainCopy(own)).toBe(own);
    expect(plainCopy({ own })).toEqual({ own });
    expect((plainCopy({ own }) as { own: object }).own).toBe(own);
    const changed = plainCopy(own, undefined, (part) => ({ ...part, c: 2 }));
    expect(changed).toEqual({ a: { b: 1, c: 2 }, c: 2 });
    expect(plainCopy({ a: {} }, undefined, () => 5)).toBeUndefined();
    expect(plainCopy({ a: {} }, undefined, () => null)).toBeUndefined();
  });
  it('has 0 for −0, wherever it stands', () => {
    expect(plainCopy({ a: -0, b: [-0] })).toStrictEqual({ a: 0, b: [0] });
  });
  it('names the innermost part that is no plain JSON', () => {
    const wrong = (input: unknown): unknown => {
      try {
        return plainInput(input, ['it', 'a document']);
      } catch (error) {
        return (error as InputError).issues.map(facts);
      }
    };
    expect(wrong(undefined)).toEqual([['', 'missing', 'a document', 'undefined']]);
    expect(wrong(5)).toEqual([['', 'wrong-type', 'a document', '5']]);
    expect(wrong({ a: [{ b: () => 1 }] })).toEqual([['a.0.b', 'wrong-type', 'plain JSON', 'a function']]);
    expect(wrong({ on: new Date(0) })).toEqual([['on', 'wrong-type', 'a date such as 2026-03-02', 'an object']]);
    expect(wrong({ loadKg: undefined, a: 1 })).toEqual({ a: 1 });
  });
});

describe('a suggestion', () => {
  it('leaves the unit of a field aside, and swaps letters at both ends', () => {
    expect(suggest('widht', ['widthCm'])).toEqual(['widthCm']);
    expect(suggest('iwdth', ['widthCm'])).toEqual(['widthCm']);
    // Without the swap these would be two edits each, of one that five letters allow.
    expect(suggest('abcde', ['bacde', 'abced', 'cbade'])).toEqual(['bacde', 'abced']);
  });
});

describe('an answer that is given back', () => {
  const answer = { kind: 'one-rep-max', unit: 'kg', evidence: 'published', value: 80 };
  const fault = (more: object, kind = 'one-rep-max', units = ['kg']) =>
    answerFault({ ...answer, ...more } as never, kind as never, units as never, 1, 1000);
  const pressure = { kind: 'occlusion-pressure', unit: 'mm[Hg]', value: 150 };
  const ofLimb = (more: object) => fault({ ...pressure, ...more }, 'occlusion-pressure', ['mm[Hg]']);
  const ofCuff = (more: object) => fault({ ...pressure, kind: 'cuff-pressure', ...more }, 'cuff-pressure', ['mm[Hg]']);
  const SCALE = 'a scale that answers of this kind do not have';

  it('has a value in its range, a grade, and an interval of sound numbers', () => {
    expect(fault({})).toBeUndefined();
    expect([1, 1000].map((value) => fault({ value }))).toEqual([undefined, undefined]);
    expect([0.9, 1001, NaN].map((value) => fault({ value }))).toEqual(
      Array(3).fill('an answer whose value is out of range'),
    );
    expect(fault({ evidence: 'certain' })).toBe('an answer without a grade of evidence');
    expect(fault({ kind: 'training-load' })).toBe('an object of another kind');
    expect(fault({ unit: '[lb_av]' })).toBe('an answer in another unit');
    expect(fault({ standardDeviation: -1 })).toBe('a negative standard deviation');
    expect(fault({ standardDeviation: 0, lower: -5, upper: 90 })).toBeUndefined();
    for (const part of ['standardDeviation', 'lower', 'upper'])
      for (const value of [1e300, 1e-300, -1e300, NaN, null])
        expect(fault({ [part]: value })).toBe('a broken interval');
  });

  it('of a pressure has its error as a share, unless it follows from an equation of your own', () => {
    expect(ofLimb({})).toBeUndefined();
    expect(ofLimb({ scale: 'log' })).toBe(SCALE);
    for (const known of [{ standardDeviation: 0.1 }, { lower: 140 }, { upper: 160 }]) {
      expect(ofLimb(known)).toBe(SCALE);
      expect(ofLimb({ ...known, scale: 'log' })).toBeUndefined();
      expect(ofLimb({ ...known, ownEquation: {} })).toBeUndefined();
      expect(ofLimb({ ...known, ownEquation: {}, scale: 'log' })).toBeUndefined();
      expect(ofCuff(known)).toBeUndefined();
      expect(ofCuff({ ...known, scale: 'log' })).toBeUndefined();
      expect(fault({ ...known, scale: 'log' })).toBe(SCALE);
    }
    expect(ofLimb({ scale: 'log', standardDeviation: 5 })).toBeUndefined();
    expect(ofLimb({ scale: 'log', standardDeviation: 5.01 })).toBe('a broken interval');
    expect(ofLimb({ scale: 'log', lower: 0, upper: 160 })).toBe('a broken interval');
    expect(ofLimb({ scale: 'log', lower: 0.1, upper: 160 })).toBeUndefined();
  });
});

describe('a guard', () => {
  it.each(Object.entries<Guard>(guards))('%s says which limit was passed, and on what ground', (id, { steps }) => {
    for (const step of steps) {
      // Above one and from the other on; a step further up may say something else.
      const value = step.above === undefined ? step.from! : step.above + 1e-6;
      const found = guardCautions(id as GuardId, value, { path: ['here'], values: { side: 'left', limb: 'leg' } });
      expect(found).toHaveLength(1);
      expect(found[0]).toMatchObject({ code: step.code, severity: step.severity, path: ['here'] });
      expect(found[0]!.source).toBe(step.source);
      expect(found[0]!.values).toMatchObject({ limit: step.above ?? step.from });
      expect('path' in guardCautions(id as GuardId, value)[0]!).toBe(false);
    }
    expect(guardCautions(id as GuardId, 0)).toEqual([]);
  });
});

describe('words and days', () => {
  it('write a range with its unit once', () => {
    const kg = (value: number) => ({ value, unit: 'kg' as const });
    expect(rangeToSet(english, kg(15), undefined)).toBe('15 kg');
    expect(rangeToSet(english, kg(15), kg(15))).toBe('15 kg');
    expect(rangeToSet(english, kg(15), kg(20))).toBe('15–20 kg');
    expect(rangeToSet(english, kg(15), { value: 45, unit: '[lb_av]' })).toBe('15 kg–45 lb');
    const imperial = Object.assign((...asked: Parameters<Translate>) => english(...asked), {
      decimalMark: ',',
      units: 'imperial' as const,
    });
    expect(rangeToSet(imperial, kg(10), kg(20))).toBe('22,05 lb (10 kg)–44,09 lb (20 kg)');
    expect([marked({ decimalMark: ',' }, '1.5'), marked({ decimalMark: '.' }, '1.5')]).toEqual(['1,5', '1.5']);
  });

  it('name a word by its family', () => {
    const asked: string[] = [];
    const ask = Object.assign((code: string, text: string) => (asked.push(code), text), english);
    expect([named(ask, 'grade', 'practice'), asked]).toEqual(['practice', ['grade.practice']]);
  });

  it('count days by the calendar, over a change of the clock and a leap day', () => {
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-03-02', '2026-03-01')).toBe(-1);
  });

  it('make what is made once, once', () => {
    let count = 0;
    const one = once(() => ({ count: (count += 1) }));
    expect([one(), one()]).toEqual([{ count: 1 }, { count: 1 }]);
  });
});
