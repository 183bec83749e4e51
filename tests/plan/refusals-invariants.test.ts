import { describe, expect, it } from 'vitest';
import {
  nextStage,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  reviewPlan,
  screen,
  trainingDays,
  type Plan,
} from '../../src/plan/index.js';
import { Findings } from '../../src/plan/findings.js';
import { InputError, issue } from '../../src/answer/issues.js';
import { refusal } from '../support/invariants.js';
import { publicFunctions } from '../support/public-functions.js';
import { planOf, recordOf } from '../support/plans.js';

// What each field may be stands in `quantities` and in the docs of the functions; the words here are written by hand from them.

const plan = planOf();
const [limb] = plan.request.limbs;
const [extension] = plan.request.exercises;
const { oneRepMax: _, percentOneRepMax: __, scheme: ___, ...bare } = extension!;
const sets = [{ repetitions: 10, restS: 30 }, { repetitions: 10 }];
const walk = { name: 'walk', mode: 'aerobic', limb: 'leg', scheme: '2x2min', restS: 60, restriction: 'continuous' };

type Refused = [path: string, code: string, expected: string, received: string];
const asked = (request: object): Refused[] => refusal(planSession as never, request) as unknown as Refused[];
const exercise = (change: object): Refused[] => asked({ ...plan.request, exercises: [{ ...extension, ...change }] });
const only = (one: object, request: object = {}): Refused[] => asked({ ...plan.request, exercises: [one], ...request });
const onLimb = (change: object): Refused[] => asked({ ...plan.request, limbs: [{ ...limb, ...change }] });
const leftOut = (name: string, why: string): Refused => [
  `exercises.0.${name}`,
  'wrong-relation',
  `left out ${why}`,
  'a value',
];
const missing = (name: string, expected: string): Refused => [`exercises.0.${name}`, 'missing', expected, 'undefined'];

describe('a request for a plan', () => {
  it('is refused as a whole where it is none', () => {
    expect(asked(null as never)).toEqual([['', 'wrong-type', 'a request for a plan, as plain JSON', 'null']]);
    expect(asked({ limbs: 5, exercises: 5 }).map(([path, code, expected]) => [path, code, expected])).toEqual([
      ['systolicMmHg', 'missing', 'a number from 60 to 300 mmHg'],
      ['diastolicMmHg', 'missing', 'a number from 30 to 200 mmHg'],
      ['posture', 'missing', "one of 'supine', 'seated', 'standing'"],
      ['limbs', 'wrong-type', 'of type array'],
      ['exercises', 'wrong-type', 'of type array'],
    ]);
  });

  it('is refused where a side is an object that cannot be written', () => {
    const every = publicFunctions['planSessionOfEveryKind']!.right as typeof plan.request;
    const [first, ...others] = every.limbs;
    const issues = asked({ ...every, limbs: [{ ...first, side: { toString: '' } }, ...others] });
    expect(issues.map(([path]) => path)).toContain('limbs.0.side');
  });

  it('is told what the schema wants, in the words of the library', () => {
    expect(asked({ ...plan.request, posture: 'lying', 'a field nobody knows': 1 })).toEqual([
      ['posture', 'not-one-of', "one of 'supine', 'seated', 'standing' (perhaps 'supine')", '"lying"'],
      [
        'a field nobody knows',
        'unknown-field',
        'one of 18 fields, such as systolicMmHg, diastolicMmHg, posture, limbs, exercises',
        '"a field nobody knows"',
      ],
    ]);
    expect(asked({ ...plan.request, ['x'.repeat(61)]: 1 })[0]![0]).toBe(`${'x'.repeat(60)}…`);
    expect(asked({ ...plan.request, systolicMmHg: '118' })).toEqual([
      ['systolicMmHg', 'wrong-type', 'a number from 60 to 300 mmHg', '"118"'],
    ]);
    expect(asked({ ...plan.request, systolicMmHg: 16 }).map(([path, code]) => [path, code])).toEqual([
      ['systolicMmHg', 'unit-slip'],
    ]);
    expect(asked({ ...plan.request, label: '' })[0]).toEqual([
      'label',
      'wrong-type',
      'one line of 1 to 120 characters, not only spaces',
      '""',
    ]);
    expect(asked({ ...plan.request, label: 5 })[0]).toEqual(['label', 'wrong-type', 'of type string', '5']);
    expect(asked({ ...plan.request, limbs: [] })[0]).toEqual(['limbs', 'wrong-type', 'a list of at least 1', '0']);
    expect(asked({ ...plan.request, limbs: Array(5).fill(limb) })[0]).toEqual([
      'limbs',
      'wrong-type',
      'a list of at most 4',
      '5',
    ]);
    expect(exercise({ scheme: undefined, sets: [{ repetitions: 2.5 }] })[0]).toEqual([
      'exercises.0.sets.0.repetitions',
      'not-whole',
      'a whole number from 1 to 500 repetitions',
      '2.5',
    ]);
    expect(exercise({ unloaded: false })[0]).toEqual(['exercises.0.unloaded', 'not-one-of', "'true'", 'false']);
    expect(exercise({ tempo: null })[0]).toEqual([
      'exercises.0.tempo',
      'wrong-type',
      'of type string | object',
      'null',
    ]);
  });

  it('names pressures that are swapped, a limb listed twice, and a measurement that cannot be', () => {
    expect(asked({ ...plan.request, systolicMmHg: 74, diastolicMmHg: 118 })[0]).toEqual([
      'systolicMmHg',
      'swapped-pressures',
      'above the diastolic pressure of 118 mmHg',
      '74 mmHg',
    ]);
    expect(asked({ ...plan.request, limbs: [limb, { ...limb, percentLop: 40 }] })).toEqual([
      ['limbs.1.side', 'wrong-relation', 'a limb and side listed once', '"left"'],
    ]);
    const measured = (valueMmHg: number) => onLimb({ measured: { valueMmHg, method: 'doppler' } });
    expect(measured(74)).toEqual([
      ['limbs.0.measured.valueMmHg', 'wrong-relation', 'above the diastolic pressure of 74 mmHg', '74 mmHg'],
    ]);
    expect(measured(75)).toEqual([]);
    expect(onLimb({ measured: undefined })).toEqual([
      ['limbs.0.circumferenceCm', 'missing', 'a number from 25 to 120 cm', 'undefined'],
    ]);
  });

  it('has something to lift, and no more than goes together', () => {
    const instead = 'given with percentOneRepMax, or else load, bodyMassPercent or unloaded: true';
    const counted = { ...bare, sets };
    expect(only(counted)).toEqual([missing('oneRepMax', instead)]);
    expect(exercise({ percentOneRepMax: undefined })).toEqual([
      missing('percentOneRepMax', 'given together with oneRepMax'),
    ]);
    for (const given of [{ load: 20 }, { unloaded: true }])
      expect(exercise(given)).toEqual([leftOut(Object.keys(given)[0]!, 'when oneRepMax is given')]);
    const ways = { percentOneRepMax: 20, step: 5, rounding: 'down', maximumOf: 'this-limb', bar: 20, collars: 0 };
    expect(only({ ...counted, load: 20, ...ways })).toEqual(
      ['percentOneRepMax', 'bar', 'collars', 'rounding', 'maximumOf'].map((name) =>
        leftOut(name, 'unless oneRepMax is given'),
      ),
    );
    expect(only({ ...counted, unloaded: true, load: 20, bodyMassPercent: 60 }, { bodyMassKg: 80 })).toEqual(
      ['load', 'bodyMassPercent'].map((name) => leftOut(name, 'when nothing is lifted')),
    );
    expect(only({ ...counted, bodyMassPercent: 60 })).toEqual([
      leftOut('bodyMassPercent', 'unless bodyMassKg is given'),
    ]);
    expect(only({ ...counted, bodyMassPercent: 60 }, { bodyMassKg: 80 })).toEqual([]);
    // A share of body mass may come on top of a maximum, and of a load.
    expect(only({ ...extension, bodyMassPercent: 60 }, { bodyMassKg: 80 })).toEqual([]);
    expect(only({ ...counted, load: 5, bodyMassPercent: 60 }, { bodyMassKg: 80 })).toEqual([]);
  });

  it('lifts nothing in walking, and has sets by time there', () => {
    const lifted = { load: 20, step: 5, unit: 'kg', tempo: extension!.tempo };
    expect(only({ ...walk, ...lifted })).toEqual(
      ['load', 'step', 'unit', 'tempo'].map((name) => leftOut(name, 'in aerobic exercise')),
    );
    expect(only({ ...walk, mode: 'passive', intensityPercent: 40 })).toEqual([
      leftOut('intensityPercent', 'unless mode is aerobic'),
    ]);
    expect(only({ ...walk, intensityPercent: 40 })).toEqual([]);
    // A tempo, which counted sets would need, is refused there.
    const byTime = (name: string, received: string): Refused[] => [
      [`exercises.0.${name}`, 'wrong-relation', "by time in every set, such as '5x2min'", received],
    ];
    const { scheme: _scheme, ...rest } = walk;
    const mixed = [{ durationS: 60, restS: 30 }, { repetitions: 10 }];
    expect(only({ ...rest, sets: mixed })).toEqual(byTime('sets', 'repetitions'));
    expect(only({ ...walk, scheme: '3x10' })).toEqual(byTime('scheme', '"3x10"'));
    expect(only({ ...walk, mode: 'passive', warmUp: [{ repetitions: 5, restS: 5 }] })).toEqual(
      byTime('warmUp', 'repetitions'),
    );
    expect(only({ ...walk, warmUp: [{ durationS: 60, restS: 5 }] })).toEqual([]);
    expect(only({ ...walk, restS: undefined })).toEqual([missing('restS', 'a number from 0 to 3600 s')]);
    expect(
      only({
        ...walk,
        warmUp: [
          { durationS: 5, restS: 5 },
          { repetitions: 5, restS: 5 },
        ],
      }).map(([path]) => path),
    ).toEqual(['exercises.0.warmUp']);
    for (const mode of [undefined, 'resistance'])
      expect(exercise({ mode, tempo: undefined }).map(([path, code]) => [path, code])).toEqual([
        ['exercises.0.tempo', 'missing'],
      ]);
  });

  it('has cuff pressures that go with its restriction', () => {
    expect(exercise({ restriction: 'partial' })).toEqual([
      missing('restPercentLop', 'given, since the cuff goes to a lower pressure in the rests'),
    ]);
    expect(exercise({ restPercentLop: 20 })).toEqual([leftOut('restPercentLop', 'unless restriction is partial')]);
    expect(exercise({ restriction: 'none', percentLop: 50 })).toEqual([
      leftOut('percentLop', 'when there is no restriction'),
    ]);
    const below: Refused = [
      'exercises.0.restPercentLop',
      'wrong-relation',
      'below the 100 mmHg of the sets',
      '100 mmHg',
    ];
    expect(exercise({ restriction: 'partial', restPercentLop: 50 })).toEqual([below]);
    expect(exercise({ restriction: 'partial', restPercentLop: 49 })).toEqual([]);
    // 0.5 is a fraction that was meant as a percentLop, told by the field it stands in.
    expect(exercise({ percentLop: 0.5 }).map(([path, code]) => [path, code])).toEqual([
      ['exercises.0.percentLop', 'unit-slip'],
    ]);
  });

  it('has every limb that it trains', () => {
    const of = (received: string): Refused => [
      'exercises.0.limb',
      'wrong-relation',
      'a limb and side listed in limbs',
      received,
    ];
    expect(exercise({ limb: 'arm' })).toEqual([of('"arm"')]);
    expect(exercise({ side: 'right' })).toEqual([of('"right" "leg"')]);
    expect(exercise({ side: 'both' })).toEqual([of('"both" "leg"')]);
    const both = { limbs: [limb, { ...limb, side: 'right' }] };
    expect(only({ ...extension, side: 'both' }, both)).toEqual([]);
    expect(only({ ...extension, side: 'right' }, both)).toEqual([]);
  });

  // Every field in turn is wrong, and nothing is said of what is worked out from it.
  it.each<[string, unknown, object?]>([
    ['limb', 'neck'],
    ['side', 'front'],
    ['mode', 'often'],
    ['restriction', 'often'],
    ['scheme', 5],
    ['sets', 'x', { scheme: undefined }],
    ['warmUp', 5],
    ['tempo', 5],
    ['restS', 'x'],
    ['changeS', 'x', { side: 'left' }],
    ['percentLop', 'x'],
    ['restPercentLop', 'x', { restriction: 'partial' }],
    ['unit', 'stone'],
    ['percentLop', 'x'],
    ['step', 'x'],
    ['available', 'x'],
    ['bar', 'x', { plates: [{ mass: 5 }] }],
    ['collars', 'x', { bar: 20, plates: [{ mass: 5 }] }],
    ['plates', 'x', { bar: 20 }],
    ['rounding', 'up', { step: 5 }],
    ['maximumOf', 'x'],
    ['oneRepMax', { load: 'x' }],
    ['oneRepMax', { load: 50, repetitions: 'x' }],
    ['load', 'x', { oneRepMax: undefined, percentOneRepMax: undefined }],
    ['unloaded', 'x', { oneRepMax: undefined, percentOneRepMax: undefined }],
    ['reperfusionS', 'x'],
  ])('is told of one wrong field alone: %s, %j', (field, wrong, more = {}) => {
    expect(exercise({ ...more, [field]: wrong }).map(([path]) => path.split('.')[2])).toEqual([field]);
  });
  it.each([{ ageYears: 500 }, { sex: 'x' }, { systolicMmHg: 'x' }, { diastolicMmHg: 'x' }, { posture: 'x' }])(
    'is told of one wrong field of the person alone: %j',
    (change) => {
      const estimated = { ...limb, measured: undefined, circumferenceCm: 55 };
      const own = { ...extension, oneRepMax: { load: 50, repetitions: 8 } };
      const found = asked({ ...plan.request, limbs: [estimated], exercises: [own], ...change });
      expect(found.map(([path]) => path)).toEqual(Object.keys(change));
    },
  );

  it('is told each fault once, where it stands, and no fault that follows of another', () => {
    // A wrong maximum leaves no load to judge, wrong pressures no estimate, a wrong limb no exercise on it.
    expect(exercise({ oneRepMax: { load: -1 }, restS: -1 }).map(([path]) => path)).toEqual([
      'exercises.0.oneRepMax.load',
      'exercises.0.restS',
    ]);
    expect(onLimb({ percentLop: 101, cuffWidthCm: 1 }).map(([path]) => path)).toEqual([
      'limbs.0.cuffWidthCm',
      'limbs.0.percentLop',
    ]);
    const estimated = { ...limb, measured: undefined, circumferenceCm: 55 };
    expect(asked({ ...plan.request, systolicMmHg: 400, limbs: [estimated] }).map(([path]) => path)).toEqual([
      'systolicMmHg',
    ]);
    expect(
      asked({ ...plan.request, limbs: [limb, null], exercises: [null, { ...extension, scheme: 'often' }] }).map(
        ([path]) => path,
      ),
    ).toEqual(['limbs.1', 'exercises.0', 'exercises.1.scheme']);
  });
});

describe('parts of a request that are tried', () => {
  const wrong = (...path: string[]) => {
    throw new InputError([issue('missing', path, ['x', 'x'], 'y')]);
  };
  const paths = (findings: Findings) => findings.issues.map(({ path }) => path.join('.'));
  const known = (...path: (string | number)[]) => new Findings([issue('missing', path, ['x', 'x'], 'y')]);

  it('are told from the top, but for fields of the person', () => {
    const findings = new Findings([]);
    expect(findings.try(['limbs', 0], () => 5)).toBe(5);
    expect(findings.try(['limbs', 0], () => wrong('percentLop'))).toBeUndefined();
    expect(findings.try(['limbs', 1], () => wrong('sex'), { uses: ['sex'] })).toBeUndefined();
    expect(paths(findings)).toEqual(['limbs.0.percentLop', 'sex']);
    expect(() =>
      new Findings([]).try([], () => {
        throw new TypeError('not ours');
      }),
    ).toThrow(TypeError);
  });

  // [what is known to be wrong, whether the part at exercises.0 is tried, of all of it, of `load` alone]
  it.each([
    [['exercises', 0, 'load'], false, false],
    [['exercises', 0, 'load', 'deep'], false, false],
    [['exercises', 0, 'sets'], false, true],
    [['exercises', 1, 'load'], true, true],
    [['exercises', 0], false, false],
    [['exercises'], false, false],
    [['limbs'], true, true],
    [['sex'], true, true],
  ] as const)('are passed over where %j is wrong and they draw on it', (path, all, load) => {
    const tried = (more?: object) => known(...path).try(['exercises', 0], () => true, more) === true;
    expect([tried(), tried({ fields: ['load'] })]).toEqual([all, load]);
    expect(tried({ uses: [path[0]] })).toBe(false);
  });
});

describe('what was done', () => {
  const done = { exercise: 'leg extension', limb: 'leg', side: 'left', sets: [{ repetitions: 30 }] } as const;
  const recorded = (item: object, of: Plan = plan): Refused[] =>
    refusal(recordSession as never, { plan: of, date: '2026-03-02', items: [{ ...done, ...item }] }) as never;

  it('is refused where the plan does not have it', () => {
    const item = 'an item of the plan, recorded no more often than it is planned: "leg extension" "leg" "left"';
    expect(recorded({ side: 'right' })).toEqual([
      ['items.0.exercise', 'wrong-relation', item, '"leg extension" "leg" "right"'],
    ]);
    expect(recorded({ exercise: 'press' })).toEqual([
      ['items.0.exercise', 'wrong-relation', item, '"press" "leg" "left"'],
    ]);
    const without = (what: string) => `left out, because the plan has no ${what}`;
    expect(recorded({ restHeldMmHg: 40 })).toEqual([
      ['items.0.restHeldMmHg', 'wrong-relation', without('lower pressure here'), 'a value'],
    ]);
    const unloaded = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true });
    expect(recorded({ load: 5 }, unloaded)).toEqual([
      ['items.0.load', 'wrong-relation', without('load here'), 'a value'],
    ]);
    expect(recorded({}, unloaded)).toEqual([]);
  });

  it('says how long each set and rest was, where the plan does not', () => {
    expect(recorded({ sets: [{ restS: 5 }] })).toEqual([
      ['items.0.sets.0.repetitions', 'missing', 'a whole number from 1 to 500 repetitions, or durationS', 'undefined'],
    ]);
    const timed = planSession({ ...plan.request, exercises: [walk] } as never);
    expect(recorded({ exercise: 'walk' }, timed)).toEqual([
      ['items.0.sets.0.durationS', 'missing', 'given, because the plan has no tempo', 'undefined'],
    ]);
    expect(recorded({ exercise: 'walk', sets: [{ durationS: 60 }] }, timed)).toEqual([]);
    const five = Array.from({ length: 5 }, () => ({ repetitions: 5 }));
    // Four sets are planned: after the third a rest is, after the fourth none.
    expect(recorded({ sets: five })).toEqual([
      ['items.0.sets.3.restS', 'missing', 'given, because the plan has no rest after this set', 'undefined'],
    ]);
    expect(recorded({ sets: five.slice(1) })).toEqual([]);
    expect(recorded({ sets: five.map((set) => ({ ...set, restS: 10 })) })).toEqual([]);
  });

  it('has a lower pressure in the rests', () => {
    const part = planOf({ restriction: 'partial', restPercentLop: 20 });
    const rest = (heldMmHg: number | undefined, restHeldMmHg: number | undefined) =>
      recorded({ heldMmHg, restHeldMmHg }, part);
    expect(rest(undefined, 100)).toEqual([
      ['items.0.restHeldMmHg', 'wrong-relation', 'below the 100 mmHg of the sets', '100 mmHg'],
    ]);
    expect(rest(40, undefined)).toEqual([
      ['items.0.restHeldMmHg', 'wrong-relation', 'below the 40 mmHg of the sets', '40 mmHg'],
    ]);
    expect([rest(undefined, 99), rest(41, undefined), rest(90, 50)]).toEqual([[], [], []]);
  });

  it('is told with what is wrong with the plan', () => {
    expect(refusal(recordSession as never, null)).toEqual([
      ['', 'wrong-type', 'what was done of a plan, as plain JSON', 'null'],
    ]);
    const found = refusal(recordSession as never, { plan: {}, date: 'today', items: [done] });
    expect(found).toEqual([
      ['plan.document', 'missing', "'plan'", 'undefined'],
      ['date', 'wrong-type', 'a date such as 2026-03-02', '"today"'],
    ]);
    const several = recordSession as never;
    const wrongs = [
      { ...done, restHeldMmHg: 5 },
      { ...done, side: 'right' },
    ];
    expect(refusal(several, { plan, date: '2026-03-02', items: wrongs }).map(([path]) => path)).toEqual([
      'items.0.restHeldMmHg',
      'items.1.exercise',
    ]);
  });
});

describe('a document that is read back', () => {
  const version = 'a version of 2 or less that is known';
  it.each([
    [{ ...plan, schemaVersion: undefined }, ['schemaVersion', 'missing', version, 'undefined']],
    [{ ...plan, schemaVersion: 3 }, ['schemaVersion', 'newer-document', version, '3']],
    [{ ...plan, schemaVersion: 0 }, ['schemaVersion', 'not-one-of', version, '0']],
    [{ ...plan, schemaVersion: 0.5 }, ['schemaVersion', 'not-one-of', version, '0.5']],
    [{ ...plan, schemaVersion: '2' }, ['schemaVersion', 'not-one-of', version, '"2"']],
    [{ ...plan, document: 'record' }, ['date', 'missing', 'of type string', 'undefined']],
    [
      { ...plan, document: 'lighter-options' },
      [
        'document',
        'not-one-of',
        "one of 8 options, such as 'plan', 'record', 'proposal', 'screening', 'day-check'",
        '"lighter-options"',
      ],
    ],
    [5, ['', 'wrong-type', 'a document of this library, as plain JSON', '5']],
    [
      { ...plan, cautions: [{ code: 'x', text: 'y', severity: 'z' }] },
      ['cautions.0.severity', 'not-one-of', "one of 'note', 'caution', 'stop'", '"z"'],
    ],
    [
      { ...plan, cautions: [{ code: 'x', text: 'y', severity: 'note', path: [null] }] },
      ['cautions.0.path.0', 'wrong-type', 'of type string | number', 'null'],
    ],
  ] as const)('is refused, case %#', (document, expected) => {
    expect(refusal(readDocument as never, document)[0]).toEqual(expected);
  });
  // Totals and answers may share a name with a field of the vocabulary; only a number is judged as one.
  it('is judged by the schema where a field is no number of the vocabulary', () => {
    const items = structuredClone(plan.items) as unknown as { totals: Record<string, unknown> }[];
    items[0]!.totals['repetitions'] = 5;
    expect(refusal(readDocument as never, { ...plan, items })).toEqual([
      ['items.0.totals.repetitions', 'wrong-type', 'of type object', '5'],
    ]);
    items[0]!.totals['repetitions'] = 'x';
    expect(refusal(readDocument as never, { ...plan, items })).toEqual([
      ['items.0.totals.repetitions', 'wrong-type', 'of type object', '"x"'],
    ]);
    // A number that is none of the vocabulary.
    const value = (given: number) => {
      const own = structuredClone(plan.items) as unknown as { target: { value: number } }[];
      own[0]!.target.value = given;
      return refusal(readDocument as never, { ...plan, items: own });
    };
    expect([value(0), value(1e7)]).toEqual([
      [['items.0.target.value', 'wrong-type', 'at least 0.001', '0']],
      [['items.0.target.value', 'wrong-type', 'at most 1000000', '10000000']],
    ]);
    const answers = structuredClone(plan.answers) as unknown as { inputs: Record<string, unknown> }[];
    answers[1]!.inputs['percentLop'] = 0.5;
    expect(refusal(readDocument as never, { ...plan, answers }).map(([path, code]) => [path, code])).toEqual([
      ['answers.1.inputs.percentLop', 'unit-slip'],
    ]);
  });
});

describe('other inputs', () => {
  const record = recordOf(plan, [30]);
  it('of a review', () => {
    expect(refusal((given: object) => reviewPlan(given as Plan), { document: 'x' })).toEqual([
      ['document', 'not-one-of', "one of 'plan', 'record'", '"x"'],
    ]);
    expect(refusal((options: object) => reviewPlan(plan, options), { guideline: 'mine' })[0]!.slice(0, 2)).toEqual([
      'guideline',
      'not-one-of',
    ]);
  });
  it('of a proposal', () => {
    const next = (more: object) =>
      refusal(nextSession as never, { plan, records: [record], rule: 'two-for-two', ...more });
    const date = 'a date such as 2026-03-02';
    expect(next({ date: 'today', oneRepMaxTestedOn: '2026-02-29' })).toEqual([
      ['date', 'wrong-type', date, '"today"'],
      ['oneRepMaxTestedOn', 'wrong-type', date, '"2026-02-29"'],
    ]);
    expect(next({ date: '2026-03-05', oneRepMaxTestedOn: '2026-03-06' })).toEqual([
      ['oneRepMaxTestedOn', 'wrong-relation', 'not after 2026-03-05', '2026-03-06'],
    ]);
    expect(next({ date: '2026-03-05', oneRepMaxTestedOn: '2026-03-05' })).toEqual([]);
    expect(next({ plan: undefined, records: undefined })).toEqual([
      ['plan', 'missing', 'a plan of this library', 'undefined'],
      ['records', 'missing', 'a list of records of this library', 'undefined'],
    ]);
    expect(next({ plan: record, records: [plan, {}] })).toEqual([
      ['plan.document', 'not-one-of', "'plan'", '"record"'],
      ['records.0.document', 'not-one-of', "'record'", '"plan"'],
      ['records.1.document', 'missing', "'record'", 'undefined'],
    ]);
  });
  it('of a week', () => {
    const days = (more: object) => refusal(trainingDays as never, { records: [record], from: '2026-03-02', ...more });
    const date = 'a date such as 2026-03-02';
    const load = 'recorded: sessionRpe and sessionS in recordSession';
    expect(days({})).toEqual([['records.0.sessionLoad', 'missing', load, 'undefined']]);
    expect(days({ from: undefined })).toEqual([['from', 'missing', date, 'undefined']]);
    expect(days({ from: '2026-02-30' })).toEqual([['from', 'wrong-type', date, '"2026-02-30"']]);
    expect(days({ records: [plan, record] })).toEqual([
      ['records.0.document', 'not-one-of', "'record'", '"plan"'],
      ['records.1.sessionLoad', 'missing', load, 'undefined'],
    ]);
    // Of another week: passed over, whatever it says.
    expect([days({ from: '2026-02-23' }), days({ from: '2026-03-03' })]).toEqual([[], []]);
    expect(days({ from: '2026-02-24' })).toHaveLength(1);
    expect(days({ records: undefined })).toEqual([
      ['records', 'missing', 'a list of records of this library', 'undefined'],
    ]);
  });
  it('of a screening and the progression', () => {
    expect(refusal(screen as never, 5)).toEqual([['', 'wrong-type', 'answers to a screening, as plain JSON', '5']]);
    expect(refusal(screen as never, { answers: { pregnancy: 'perhaps' } })).toEqual([
      ['answers.pregnancy', 'not-one-of', "one of 'yes', 'no', 'unknown'", '"perhaps"'],
    ]);
    expect(refusal(screen as never, { answers: {}, systolicMmHg: 70, diastolicMmHg: 80 })).toHaveLength(1);
    expect(refusal(screen as never, { answers: {}, systolicMmHg: 70 })).toEqual([]);
    const stages = "one of 'passive', 'aerobic', 'low-load', 'low-and-high-load', 'high-load'";
    expect(refusal(nextStage as never, { stage: 'top' })).toEqual([['stage', 'not-one-of', stages, '"top"']]);
    expect(refusal(nextStage as never, {})).toEqual([['stage', 'missing', stages, 'undefined']]);
  });
});
