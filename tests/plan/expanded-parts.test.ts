import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/index.js';
import { textByCode } from '../../src/plan/catalogue.js';
import {
  compact,
  compactedOlder,
  expandedPlan,
  expandedRecord,
  expansionOf,
  plannedOf,
} from '../../src/plan/expanded.js';

type Json = Readonly<Record<string, unknown>>;

/** As much of an answer as a document looks at. */
const answer = (value: number, inputs: unknown = {}, more: Json = {}): Json => ({
  kind: 'occlusion-pressure',
  value,
  unit: 'mm[Hg]',
  equation: 'own',
  inputs,
  cautions: [],
  ...more,
});
/** A document of items, each with one of these as its target; the answers it then has. */
const compacted = (...targets: readonly unknown[]): Json =>
  compactedOlder({ document: 'plan', items: targets.map((target) => ({ target })) });
const answersOf = (...targets: readonly unknown[]): readonly Json[] => compacted(...targets)['answers'] as Json[];

describe('a document with each answer once', () => {
  it('has the same answer once, an equal one too, and others besides', () => {
    const one = answer(100);
    const { items, answers } = compacted(one, one, answer(100), answer(200));
    expect(answers).toEqual([answer(100), answer(200)]);
    expect(items).toEqual(
      [100, 100, 100, 200].map((value, index) => ({
        target: { value, unit: 'mm[Hg]', ref: index < 3 ? '/answers/0' : '/answers/1' },
      })),
    );
  });

  it.each([
    ['the same names in another order', { a: 1, b: 2 }, { b: 2, a: 1 }, 1],
    ['the same list', { a: [1, 2] }, { a: [1, 2] }, 1],
    ['another number', { a: 1 }, { a: 2 }, 2],
    ['another text', { a: 'x' }, { a: 'y' }, 2],
    ['a name more', { a: 1 }, { a: 1, b: 2 }, 2],
    ['a name less', { a: 1, b: 2 }, { a: 1 }, 2],
    ['another name', { a: undefined }, { b: 1 }, 2],
    ['a number for an object', { a: 1 }, { a: {} }, 2],
    ['an object for a number', { a: {} }, { a: 1 }, 2],
    ['nothing for an object', { a: null }, { a: {} }, 2],
    ['an object for nothing', { a: {} }, { a: null }, 2],
    ['a list for an object', { a: ['x'] }, { a: { 0: 'x' } }, 2],
    ['a list in another order', { a: [1, 2] }, { a: [2, 1] }, 2],
    ['another number further in', { a: { b: { c: 1 } } }, { a: { b: { c: 2 } } }, 2],
  ])('tells answers apart by what is in them: %s', (_, one, other, count) => {
    expect(answersOf(answer(100, one), answer(100, other))).toHaveLength(count);
  });

  it('has what an answer was worked out from before it, by name, and points to it', () => {
    const [first, second, third] = [answer(1), answer(2), answer(3)];
    const inputs = { weight: first, list: [second, 7, 'text'], age: third, note: 'text', none: null };
    expect(answersOf(answer(9, inputs))).toEqual([
      answer(3),
      answer(1),
      answer(2),
      answer(9, {
        weight: { ref: '/answers/1' },
        list: [{ ref: '/answers/2' }, 7, 'text'],
        age: { ref: '/answers/0' },
        note: 'text',
        none: null,
      }),
    ]);
    expect(answersOf(answer(1, 'no inputs'))).toEqual([answer(1, 'no inputs')]);
  });

  it('states of an item its numbers alone', () => {
    const [of, load] = [answer(172), answer(15, {}, { unit: 'kg', lower: 14, upper: 16, level: 0.95 })];
    const totals = { timeUnderTension: answer(60, {}, { unit: 's' }), count: 3, cautions: [{ code: 'x' }] };
    const item = { exercise: 'press', occlusion: of, oneRepMax: of, target: 'none', load, totals };
    const { items, answers } = compactedOlder({ document: 'plan', items: [item, 'no item', { totals: 7 }, {}] });
    expect(items).toStrictEqual([
      {
        exercise: 'press',
        target: 'none',
        load: { value: 15, unit: 'kg', lower: 14, upper: 16, ref: '/answers/0' },
        totals: { timeUnderTension: { value: 60, unit: 's' }, count: 3 },
      },
      'no item',
      { totals: 7 },
      {},
    ]);
    expect(answers).toEqual([load]);
  });

  it('states the numbers of limbs, of the session and its load', () => {
    const minutes = answer(12, {}, { unit: 'min' });
    const whole = {
      document: 'record',
      schemaVersion: 1,
      label: 'P-1',
      items: [],
      limbs: [{ limb: 'leg', time: minutes, cautions: [] }, null],
      session: { posture: 'seated', totals: { time: minutes, cautions: [] } },
      sessionLoad: minutes,
    };
    const stated = { value: 12, unit: 'min' };
    expect(compactedOlder(whole)).toStrictEqual({
      document: 'record',
      schemaVersion: 1,
      libraryVersion: undefined,
      equations: [],
      label: 'P-1',
      items: [],
      limbs: [{ limb: 'leg', time: stated }, null],
      session: { posture: 'seated', totals: { time: stated } },
      sessionLoad: stated,
      answers: [],
    });
    const strange = { document: 'record', items: 'none', limbs: 7, session: { totals: 'none' }, sessionLoad: 'none' };
    expect(compactedOlder(strange)).toMatchObject(strange);
    expect(compactedOlder({ ...strange, session: 'none' })).toMatchObject({ session: 'none' });
    expect(Object.keys(compactedOlder({ document: 'record' })).sort()).toEqual([
      'answers',
      'document',
      'equations',
      'libraryVersion',
      'schemaVersion',
    ]);
  });

  it('lists each equation once', () => {
    const by = (equation: string, value: number) => answer(value, {}, { equation });
    expect(compacted(by('b', 1), by('a', 2), by('b', 3))['equations']).toEqual(['b', 'a']);
  });

  it('has sentences by their code, where the catalogue has them', () => {
    const messages = [
      { code: 'symptom-fainting', text: 'fainting' },
      { code: 'test-maximum-due', values: { days: 30 }, text: 'old words' },
      // Without its number no sentence can be written, and a remark of one’s own has no sentence.
      { code: 'test-maximum-due', values: null, text: 'own words' },
      { code: 'own-remark', text: 'own words' },
      { text: 'no code' },
      { code: ['symptom-fainting'], text: 'no code' },
      'no message',
    ];
    const short = [
      { code: 'symptom-fainting' },
      { code: 'test-maximum-due', values: { days: 30 } },
      ...messages.slice(2),
    ];
    const [own] = answersOf(answer(1, {}, { cautions: messages }));
    expect(own!['cautions']).toStrictEqual(short);
    const listed = compactedOlder({ document: 'plan', disclaimers: messages, stopCriteria: messages });
    expect(listed['disclaimers']).toStrictEqual(short);
    expect(listed['stopCriteria']).toStrictEqual(short);
    expect(answersOf(answer(1, {}, { cautions: 'none' }))[0]!['cautions']).toBe('none');
  });

  it('is known again by what it was made of', () => {
    const whole = { document: 'record', items: [] };
    const document = compact(whole as never, textByCode);
    expect(expansionOf(document)).toBe(whole);
    expect(expansionOf({ ...document })).toBeUndefined();
  });
});

/** A record of items, each with one of these numbers as its target. */
const recordOf = (answers: readonly Json[], ...targets: readonly unknown[]) =>
  ({ items: targets.map((target) => ({ exercise: 'press', target, totals: {} })), answers }) as never;
const at = (index: number): Json => ({ value: 1, unit: 'mm[Hg]', ref: `/answers/${index}` });
/** Where an answer is looked for that is not there. */
function refusedAt(answers: readonly Json[], target: unknown): string[] {
  try {
    plannedOf(recordOf(answers, target));
    return [];
  } catch (error) {
    return (error as InputError).issues.map(({ path, code, received }) => `${path.join('.')} ${code} ${received}`);
  }
}

describe('a pointer of a document', () => {
  it('leads to the whole answer, with those that it was worked out from', () => {
    const answers = Array.from({ length: 12 }, (_, value) => answer(value));
    const last = answer(99, {
      of: { ref: '/answers/10' },
      list: [{ ref: '/answers/3' }, 7],
      none: null,
      part: { x: 1 },
    });
    const [one, other, none] = plannedOf(recordOf([...answers, last], at(12), at(12), undefined));
    expect(one!.target).toEqual(answer(99, { of: answer(10), list: [answer(3), 7], none: null, part: { x: 1 } }));
    expect(other!.target).toBe(one!.target);
    expect(none!.target).toBeUndefined();
  });

  it.each([
    ['/answers/1'],
    ['/answers/'],
    ['/answers/x'],
    ['/answers/-1'],
    ['/answers/0/inputs'],
    ['items/answers/0'],
    ['answers/0'],
    [''],
  ])('is refused where it leads to no answer: %j', (ref) => {
    expect(refusedAt([answer(1)], { ref })).toEqual([`items.0.target.ref changed-document ${JSON.stringify(ref)}`]);
  });

  it.each([
    ['itself', { of: { ref: '/answers/1' } }, 'of.ref', '"/answers/1"'],
    ['an answer after it', { of: { ref: '/answers/2' } }, 'of.ref', '"/answers/2"'],
    ['one in a list', { list: [7, { ref: '/answers/2' }] }, 'list.1.ref', '"/answers/2"'],
  ])('is refused in an answer where it leads to %s', (_, inputs, place, ref) => {
    const answers = [answer(0), answer(1, inputs), answer(2, { of: { ref: '/answers/1' } })];
    expect(refusedAt(answers, at(1))).toEqual([`answers.1.inputs.${place} changed-document ${ref}`]);
  });

  it('gives cautions their sentences', () => {
    const cautions = [
      { severity: 'caution', code: 'test-maximum-due', values: { days: 30 } },
      { severity: 'stop', code: 'own-remark', text: 'own words', path: ['load'] },
      { severity: 'stop', code: 'of-later', values: { days: 30 } },
      { severity: 'stop', code: 'symptom-fainting', text: 'other words' },
    ];
    const [item] = plannedOf(recordOf([answer(1, {}, { cautions })], at(0)));
    expect(item!.target!.cautions).toStrictEqual([
      { ...cautions[0], text: 'The maximum is 30 days old: test it again, about every 4 weeks.' },
      cautions[1],
      { ...cautions[2], text: textByCode('code-unknown') },
      { ...cautions[3], text: 'fainting' },
    ]);
  });
});

const number = (value: unknown, unit: unknown = 's', more: Json = {}) => ({ value, unit, ...more });
const made = (value: number, more: Json = {}) =>
  answer(value, { sets: 4 }, { kind: 'session-time', unit: 's', ...more });
const bare = (kind: string, value: number, more: Json = {}) => ({
  kind,
  ...number(value),
  equation: kind,
  evidence: 'practice',
  inputs: {},
  assumptions: [],
  cautions: [],
  ...more,
});

describe('totals of a document', () => {
  /** Totals of an item as answers, where this version makes these. */
  const totals = (stated: Json, again?: Json): unknown => {
    const record = { items: [{ totals: stated }], answers: [], limbs: [], disclaimers: [] };
    const { items } = expandedRecord(record as never, { items: [{ totals: again }], limbs: [] } as never);
    return items[0]!.totals;
  };

  it('are those that are made again, where they are the same', () => {
    const again = { sessionTime: made(60), cautions: [{ code: 'x' }] };
    expect(totals({ sessionTime: number(60) }, again)).toStrictEqual(again);
    expect(totals({ sessionTime: number(60 + 1e-9) }, again)).toStrictEqual(again);
  });

  it.each([
    [
      'of another value',
      { sessionTime: number(61) },
      { sessionTime: made(60, { evidence: 'published' }) },
      bare('session-time', 61, { evidence: 'published' }),
    ],
    [
      'of another unit',
      { sessionTime: number(60, 'min') },
      { sessionTime: made(60, { evidence: 'published' }) },
      bare('session-time', 60, { unit: 'min', evidence: 'published' }),
    ],
    ['not made again', { sessionTime: number(60) }, {}, bare('session-time', 60)],
    ['with nothing made again', { sessionTime: number(60) }, undefined, bare('session-time', 60)],
    [
      'with an interval',
      { sessionTime: number(60, 's', { lower: 50, upper: 70 }) },
      undefined,
      bare('session-time', 60, { lower: 50, upper: 70, level: 0.95 }),
    ],
  ])('are numbers without their working where they are %s', (_, stated, again, expected) => {
    expect(totals(stated, again)).toStrictEqual({ sessionTime: expected, cautions: [] });
  });

  it('are numbers with a unit; what else is there is passed over', () => {
    const stated = {
      none: null,
      text: 'x',
      value: number('60'),
      unit: number(60, 7),
      list: [60],
      sessionTime: number(60),
    };
    expect(totals(stated)).toStrictEqual({ sessionTime: bare('session-time', 60), cautions: [] });
  });
});

describe('a document with whole answers', () => {
  const fainting = { code: 'symptom-fainting' };
  const later = { code: 'of-later', source: 'known' };
  const sentences = [
    { ...fainting, text: 'fainting' },
    { ...later, text: textByCode('code-unknown') },
  ];

  it('has those of a plan at their places', () => {
    const answers = [
      answer(172),
      answer(86, { occlusion: { ref: '/answers/0' } }),
      answer(60),
      answer(15, { oneRepMax: { ref: '/answers/2' } }),
    ];
    const plan = {
      document: 'plan',
      label: 'P-1',
      equations: ['own'],
      answers,
      items: [
        { exercise: 'press', target: at(1), load: at(3), totals: {} },
        { exercise: 'walk', totals: {} },
      ],
      limbs: [{ limb: 'leg', side: 'left', exercises: 1, sessionTime: number(60) }],
      session: { posture: 'seated', totals: { sessionTime: number(70) } },
      disclaimers: [fainting, later],
      stopCriteria: [later, fainting],
    };
    const again = { sessionTime: made(60), cautions: ['limb'] };
    const session = { sessionTime: made(70), cautions: ['session'] };
    const item = { repetitions: made(75), cautions: ['item'] };
    expect(
      expandedPlan(plan as never, { items: [{ totals: item }], limbs: [again], session: { totals: session } } as never),
    ).toStrictEqual({
      document: 'plan',
      label: 'P-1',
      items: [
        {
          exercise: 'press',
          target: answer(86, { occlusion: answer(172) }),
          load: answer(15, { oneRepMax: answer(60) }),
          totals: { cautions: ['item'] },
          occlusion: answer(172),
          oneRepMax: answer(60),
        },
        { exercise: 'walk', totals: { cautions: [] } },
      ],
      limbs: [{ limb: 'leg', side: 'left', exercises: 1, ...again }],
      session: { posture: 'seated', totals: session },
      disclaimers: sentences,
      stopCriteria: [...sentences].reverse(),
    });
  });

  it('has those of a record, and the load of its session where it can be made again', () => {
    const record = {
      document: 'record',
      label: 'P-1',
      equations: ['own'],
      answers: [answer(86)],
      items: [{ exercise: 'press', target: at(0), totals: { sessionTime: number(60) } }],
      limbs: [{ limb: 'leg', side: 'left', exercises: 1, sessionTime: number(60) }],
      disclaimers: [fainting, later],
    };
    const again = { sessionTime: made(60), cautions: ['made again'] };
    const sessionLoad = made(250, { kind: 'session-load', unit: '1' });
    const expand = (stated?: Json, whole?: Json) =>
      expandedRecord(
        { ...record, ...(stated && { sessionLoad: stated }) } as never,
        { items: [{ totals: again }], limbs: [again], ...(whole && { sessionLoad: whole }) } as never,
      );
    const expected = {
      document: 'record',
      label: 'P-1',
      items: [{ exercise: 'press', target: answer(86), totals: again }],
      limbs: [{ limb: 'leg', side: 'left', exercises: 1, ...again }],
      disclaimers: sentences,
    };
    expect(expand()).toStrictEqual(expected);
    expect(expand(number(240, '1'), sessionLoad)).toStrictEqual({
      ...expected,
      sessionLoad: { ...sessionLoad, value: 240 },
    });
    expect(expand(number(240, '1'))).toStrictEqual(expected);
    expect(expand(undefined, sessionLoad)).toStrictEqual(expected);
  });
});
