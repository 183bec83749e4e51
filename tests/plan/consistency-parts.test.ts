// What a document must hold against itself, on small parts written by hand. What each must be follows from its words:
// an interval lies around its value, a share is 100 × part / whole, a rounded value is within one step.
import { describe, expect, it } from 'vitest';
import type { InputIssue } from '../../src/answer/issues.js';
import { checkConsistency, checkStops, finder, isAnswer, isNear } from '../../src/plan/consistency.js';
import { documentMessages } from '../../src/plan/document-messages.js';

type Line = readonly [place: string, code: string, values: unknown, received: unknown];

/** What is found in a document: its place, what is asked for, and what was received. */
function foundIn(document: object, check = checkConsistency): Line[] {
  const lines: Line[] = [];
  check(document, (path, expected, received) => {
    const { code, values } =
      'expected' in expected ? expected.requirement! : { code: expected[0], values: undefined as unknown };
    lines.push([path.join('.'), code, values, received]);
  });
  return lines;
}

/** The same in an answer at `part`. */
const inAnswer = (answer: object): Line[] => foundIn({ part: { unit: 'kg', inputs: {}, ...answer } });

const load = (value: number, rounding?: object, inputs: object = {}, more: object = {}) =>
  inAnswer({ kind: 'training-load', value, ...(rounding && { rounding }), inputs, ...more });

const cuff = (value: number, more: object = {}) => inAnswer({ kind: 'cuff-pressure', unit: 'mm[Hg]', value, ...more });

const stop = { severity: 'stop', code: 'cuff-pressure-stop' };

describe('numbers that are the same', () => {
  it.each([
    [0, 1e-9, true],
    [0, 2e-9, false],
    [1e6, 1e6 + 5e-4, true],
    [1e6 + 5e-4, 1e6, true],
    [1e6, 1e6 + 2e-3, false],
    [-1e6, -1e6 - 5e-4, true],
    [5, 5.000001, false],
  ])('%d and %d: %s, within a thousandth of a millionth of the larger, or of 1', (a, b, is) => {
    expect(isNear(a, b)).toBe(is);
  });

  it('an answer has a kind, a number and a unit', () => {
    const answer = { kind: 'k', value: 1, unit: 'kg' };
    expect(isAnswer(answer)).toBe(true);
    expect(isAnswer({ ...answer, kind: 1 })).toBe(false);
    expect(isAnswer({ ...answer, value: '1' })).toBe(false);
    expect(isAnswer({ ...answer, unit: undefined })).toBe(false);
    expect(isAnswer([answer])).toBe(false);
  });
});

describe('an interval', () => {
  it.each([
    [{ value: 10, lower: 8, upper: 12 }, []],
    [{ value: 10, lower: 10, upper: 10 }, []],
    [{ value: 10 }, []],
    [{ value: -1 }, [['part.value', 'zero-or-more', undefined, -1]]],
    [{ value: 0, standardDeviation: 0 }, []],
    [{ value: 1, standardDeviation: -2 }, [['part.standardDeviation', 'zero-or-more', undefined, -2]]],
    [{ value: 10, lower: 8 }, [['part.upper', 'with-other-end', undefined, undefined]]],
    [{ value: 10, upper: 12 }, [['part.lower', 'with-other-end', undefined, undefined]]],
    [{ value: 10, lower: 11, upper: 12 }, [['part.lower', 'at-most', { value: 10 }, 11]]],
    [{ value: 10, lower: 8, upper: 9 }, [['part.upper', 'at-least', { least: 10 }, 9]]],
    // It is that of what was rounded.
    [{ value: 10, rounding: { from: 12, to: 'down' }, lower: 11, upper: 13 }, []],
    [
      { value: 10, rounding: { from: 12, to: 'down' }, lower: 8, upper: 11 },
      [['part.upper', 'at-least', { least: 12 }, 11]],
    ],
  ])('%j', (answer, lines) => {
    expect(inAnswer({ kind: 'k', ...answer })).toEqual(lines);
  });
});

describe('a value that was rounded', () => {
  it.each<[value: number, rounding: object | undefined, inputs: object, lines: Line[]]>([
    [10, undefined, { ceilingMmHg: 5 }, []],
    [10, { from: 12, to: 'down', step: 2.5 }, {}, []],
    [12.5, { from: 12, to: 'nearest', step: 2.5 }, {}, []],
    [12.5, { from: 12, to: 'down', step: 2.5 }, {}, [['part.value', 'at-most', { value: 12 }, 12.5]]],
    [11, { from: 12, to: 'down', step: 2.5 }, {}, [['part.value', 'multiple-of', { step: 2.5 }, 11]]],
    [7.5, { from: 12, to: 'down', step: 2.5 }, {}, [['part.value', 'within-step', { step: 2.5, from: 12 }, 7.5]]],
    [10, { from: 12.5, to: 'down', step: 2.5 }, {}, []],
    // A ceiling and a limit on the chance of closing the artery hold it lower.
    [5, { from: 12, to: 'down', step: 2.5 }, { ceilingMmHg: 6 }, []],
    [5, { from: 12, to: 'down', step: 2.5 }, { occlusionChanceLimitPercent: 5 }, []],
    [5, { from: 12, to: 'down', step: 2.5 }, { ceilingMmHg: 5 }, []],
    [10, { from: 12, to: 'down', step: 2.5 }, { ceilingMmHg: 6 }, [['part.value', 'at-most', { value: 6 }, 10]]],
    // Of loads you can set, their steps are not even.
    [7, { from: 12, to: 'down', available: [7, 20] }, {}, []],
    [7, { from: 12, to: 'down', step: 2.5, available: [7, 20] }, {}, []],
    [8, { from: 12, to: 'down', available: [7, 20] }, {}, [['part.value', 'one-of-available', undefined, 8]]],
    [7, { from: 12, to: 'down' }, {}, []],
  ])('%d from %j with %j', (value, rounding, inputs, lines) => {
    expect(load(value, rounding, inputs)).toEqual(lines);
  });
});

describe('a percentage', () => {
  const oneRepMax = { kind: 'one-repetition-maximum', value: 80, unit: 'kg', inputs: {} };

  it.each<[value: number, inputs: object, more: object, lines: Line[]]>([
    [16, { oneRepMax, percentOneRepMax: 20 }, {}, []],
    [17, { oneRepMax, percentOneRepMax: 20 }, {}, [['part.value', 'the-same', { value: 16 }, 17]]],
    [15, { oneRepMax, percentOneRepMax: 20 }, { rounding: { from: 16, to: 'down', step: 5 } }, []],
    [
      15,
      { oneRepMax, percentOneRepMax: 20 },
      { rounding: { from: 17, to: 'down', step: 5 } },
      [['part.rounding.from', 'the-same', { value: 16 }, 17]],
    ],
    // What it is of the maximum after rounding.
    [16, { oneRepMax, percentOneRepMax: 20 }, { reached: { percentOneRepMax: 20 } }, []],
    [
      16,
      { oneRepMax, percentOneRepMax: 20 },
      { reached: { percentOneRepMax: 25 } },
      [['part.reached.percentOneRepMax', 'the-same', { value: 20 }, 25]],
    ],
    // Body mass counts too: the load is no plain share.
    [17, { oneRepMax, percentOneRepMax: 20, bodyMassLoad: 30 }, {}, []],
    [17, { percentOneRepMax: 20 }, {}, []],
    [17, { oneRepMax }, {}, []],
    [17, { oneRepMax: { value: '80' }, percentOneRepMax: 20 }, {}, []],
  ])('%d kg of %j, %j', (value, inputs, more, lines) => {
    expect(load(value, undefined, inputs, more)).toEqual(lines);
  });

  it('of a maximum in pounds, in the unit of the load: 1 lb is 0.45359237 kg', () => {
    const inputs = { oneRepMax: { ...oneRepMax, value: 100, unit: '[lb_av]' }, percentOneRepMax: 20 };
    expect(load(9.0718474, undefined, inputs)).toEqual([]);
    expect(load(20, undefined, inputs)).toMatchObject([['part.value', 'the-same', {}, 20]]);
  });

  it('of an occlusion pressure, also where it is another answer of the document', () => {
    const occlusion = { kind: 'occlusion-pressure', value: 200, unit: 'mm[Hg]', inputs: {} };
    expect(cuff(100, { inputs: { occlusion, percentLop: 50 } })).toEqual([]);
    expect(cuff(90, { inputs: { occlusion, percentLop: 50 } })).toEqual([
      ['part.value', 'the-same', { value: 100 }, 90],
    ]);
    const target = {
      kind: 'cuff-pressure',
      unit: 'mm[Hg]',
      value: 90,
      inputs: { occlusion: { ref: '/answers/0' }, percentLop: 50 },
    };
    expect(foundIn({ answers: [occlusion, target] })).toEqual([['answers.1.value', 'the-same', { value: 100 }, 90]]);
  });

  it('of another kind of answer is none of its business', () => {
    expect(inAnswer({ kind: 'volume-load', value: 1, inputs: { oneRepMax, percentOneRepMax: 20 } })).toEqual([]);
    expect(inAnswer({ kind: 'training-load', value: 1, inputs: undefined })).toEqual([]);
  });
});

describe('a cuff pressure above the 300 mmHg of trials', () => {
  const missing = (received: unknown): Line[] => [['part.cautions', 'with-pressure-stop', undefined, received]];

  it('has a stop among its cautions', () => {
    expect(cuff(300)).toEqual([]);
    expect(cuff(310)).toEqual(missing(undefined));
    expect(cuff(310, { cautions: 'stop' })).toEqual(missing('stop'));
    expect(cuff(310, { cautions: [] })).toEqual(missing([]));
    const mild = { severity: 'caution', code: 'cuff-pressure-high' };
    expect(cuff(310, { cautions: [mild, null] })).toEqual(missing([mild, null]));
    expect(cuff(310, { cautions: [mild, stop] })).toEqual([]);
  });

  it('an occlusion pressure may be so high', () => {
    expect(inAnswer({ kind: 'occlusion-pressure', value: 310 })).toEqual([]);
  });
});

describe('a number that states an answer', () => {
  const answers = [
    { kind: 'training-load', value: 16, unit: 'kg', lower: 12, upper: 20, inputs: {} },
    { kind: 'cuff-pressure', value: 86, unit: 'mm[Hg]', inputs: {} },
  ];
  const stating = (stated: object) => foundIn({ answers, items: [{ load: stated }] });
  const whole = { ref: '/answers/0', value: 16, unit: 'kg', lower: 12, upper: 20 };

  it('has its value, unit and interval, and no more', () => {
    expect(stating(whole)).toEqual([]);
    expect(stating({ ref: '/answers/0' })).toEqual([]);
    expect(stating({ ...whole, value: 17 })).toEqual([['items.0.load.value', 'the-same', { value: '16' }, 17]]);
    expect(stating({ ...whole, unit: '[lb_av]' })).toEqual([
      ['items.0.load.unit', 'the-same', { value: 'kg' }, '[lb_av]'],
    ]);
    expect(stating({ ...whole, lower: 11, upper: 21 })).toEqual([
      ['items.0.load.lower', 'the-same', { value: '12' }, 11],
      ['items.0.load.upper', 'the-same', { value: '20' }, 21],
    ]);
    expect(stating({ ref: '/answers/1', value: 86, unit: 'mm[Hg]', lower: 80 })).toEqual([
      ['items.0.load.lower', 'left-out', undefined, 80],
    ]);
  });

  it('points at an answer there is', () => {
    expect(stating({ ...whole, ref: '/answers/2' })).toEqual([
      ['items.0.load.ref', 'pointer', undefined, '/answers/2'],
    ]);
    expect(foundIn({ items: [{ load: whole }] })).toEqual([['items.0.load.ref', 'pointer', undefined, '/answers/0']]);
  });

  it('of an item is a load, or a cuff pressure in mmHg', () => {
    const other = [
      { ...answers[0], kind: 'volume-load' },
      { ...answers[1], kind: 'occlusion-pressure' },
    ];
    const items = [{ load: whole, target: { ref: '/answers/1', value: 86, unit: 'mm[Hg]' } }];
    expect(foundIn({ answers: other, items })).toEqual([
      ['answers.0.kind', 'the-same', { value: 'training-load' }, 'volume-load'],
      ['answers.1.kind', 'the-same', { value: 'cuff-pressure' }, 'occlusion-pressure'],
    ]);
    // Totals, which lie deeper, are of many kinds; a bare pointer says no number.
    expect(foundIn({ answers: other, items: [{ totals: { volumeLoad: whole } }] })).toEqual([]);
    expect(foundIn({ answers: other, items: [{ load: { ref: '/answers/0' } }] })).toEqual([]);
  });
});

describe('the events of a clock', () => {
  it('come in order, none before the start', () => {
    const at = (...times: readonly unknown[]) => foundIn({ events: times.map((atS) => ({ atS })) });
    expect(at(0, 0, 30, 30, 60)).toEqual([]);
    expect(at(-1)).toEqual([['events.0.atS', 'at-least', { least: 0 }, -1]]);
    expect(at(0, 30, 20, 25, 30)).toEqual([
      ['events.2.atS', 'at-least', { least: 30 }, 20],
      ['events.3.atS', 'at-least', { least: 30 }, 25],
    ]);
    expect(at(30, 'later', 20)).toEqual([['events.2.atS', 'at-least', { least: 30 }, 20]]);
    expect(foundIn({ events: [null, { atS: -1 }] })).toEqual([['events.1.atS', 'at-least', { least: 0 }, -1]]);
    // Only those of that name.
    expect(foundIn({ others: [{ atS: 30 }, { atS: 20 }], events: { atS: -1 } })).toEqual([]);
  });
});

describe('what stops in a document is one of its stops', () => {
  const stops = [{ code: 'a' }, null];
  const caution = (code: string, severity = 'stop') => ({ code, severity });

  it('in its cautions and its findings', () => {
    const check = (more: object) => foundIn({ stops, ...more }, checkStops);
    expect(check({ cautions: [caution('a'), caution('b', 'caution'), null] })).toEqual([]);
    expect(check({ cautions: [caution('a'), caution('b')], findings: [caution('c')] })).toEqual([
      ['cautions.1.severity', 'no-other-stop', undefined, 'stop'],
      ['findings.0.severity', 'no-other-stop', undefined, 'stop'],
    ]);
    expect(check({ findings: 'none' })).toEqual([]);
    expect(foundIn({ stops: 'none', cautions: [caution('b')] }, checkStops)).toEqual([]);
  });
});

describe('the text of a sentence', () => {
  const code = 'pressure-no-cuff';
  const text = documentMessages[code];
  /** The sentence as it is afterwards, and the codes that are not known. */
  const restored = (sentence: object, at = 'cautions', ownWords = false) => {
    const unknown: unknown[] = [];
    const document = at === 'answers' ? { answers: [{ cautions: [sentence] }] } : { [at]: [sentence] };
    checkConsistency(
      document,
      () => undefined,
      (path, one) => unknown.push([path.join('.'), one]),
      ownWords,
    );
    return { sentence, unknown };
  };

  it.each(['cautions', 'findings', 'stops', 'reasons', 'measureAgain', 'disclaimers', 'stopCriteria'])(
    'in %s is that of the catalogue, whatever the document says',
    (list) => {
      expect(restored({ code, text: 'Go on.' }, list)).toEqual({ sentence: { code, text }, unknown: [] });
    },
  );

  it('is written where it is missing, but where its reader looks it up by code', () => {
    expect(restored({ code }).sentence).toEqual({ code, text });
    expect(restored({ code }, 'disclaimers').sentence).toEqual({ code });
    expect(restored({ code }, 'stopCriteria').sentence).toEqual({ code });
    expect(restored({ code }, 'answers').sentence).toEqual({ code });
  });

  it('that is right already may be frozen', () => {
    expect(() => restored(Object.freeze({ code, text }))).not.toThrow();
  });

  it('of a finding with figures, and of other lists, stays', () => {
    expect(restored({ code, text: 'x', measure: 'rest' }).sentence).toEqual({ code, text: 'x', measure: 'rest' });
    expect(restored({ code, text: 'x' }, 'notes').sentence).toEqual({ code, text: 'x' });
    expect(restored({ code: 1, text: 'x' }).sentence).toEqual({ code: 1, text: 'x' });
    expect(() => restored(null as never)).not.toThrow();
  });

  it('of a code that is not known says so; a stop stays a stop, and your own words stay where you may have some', () => {
    const given = () => ({ code: 'of-2031', text: 'x' });
    const { sentence, unknown } = restored(given());
    expect(sentence).toEqual({ code: 'of-2031', text: documentMessages['code-unknown'] });
    expect(unknown).toEqual([['cautions.0.code', 'of-2031']]);
    expect(restored(given(), 'answers').unknown).toEqual([['answers.0.cautions.0.code', 'of-2031']]);
    const kept = restored(given(), 'stops');
    expect(kept.unknown).toEqual([]);
    expect(kept.sentence).toEqual(sentence);
    expect(restored(given(), 'cautions', true)).toEqual({ sentence: given(), unknown: [] });
    // What the catalogue has a text for gets it all the same.
    expect(restored({ code, text: 'x' }, 'cautions', true).sentence).toEqual({ code, text });
    // Without anyone to ask, it is no fault, and no words of your own are expected.
    const alone = given();
    expect(foundIn({ cautions: [alone] })).toEqual([]);
    expect(alone).toEqual(sentence);
  });

  it('has the figures that its values give', () => {
    const values = { exercise: 'press', limb: 'leg', side: 'left', held: 90, target: 86 };
    const [one] = [{ code: 'held-above-target', values, text: '' }];
    checkConsistency({ cautions: [one] }, () => undefined);
    expect(one.text).toContain('90');
    expect(one.text).toContain('86');
    const without = restored({ code: 'held-above-target', values: 'none', text: 'x' });
    expect(without.unknown).toEqual([['cautions.0.code', 'held-above-target']]);
  });
});

it('an issue shows what was received, of a list its length', () => {
  const issues: InputIssue[] = [];
  const found = finder(issues);
  found(['a', 0], ['zero-or-more', '0 or more'], -1);
  found(['b'], ['zero-or-more', '0 or more'], [1, 2]);
  found(['c'], ['zero-or-more', '0 or more'], []);
  expect(issues.map(({ code, path, received }) => [code, path.join('.'), received])).toEqual([
    ['changed-document', 'a.0', '-1'],
    ['changed-document', 'b', 'a list of 2'],
    ['changed-document', 'c', 'an empty list'],
  ]);
});
