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
import { refusal, refusalPage } from '../support/invariants.js';
import { publicFunctions } from '../support/public-functions.js';
import { planOf, recordOf } from '../support/plans.js';

// What each field may be stands in `quantities` and in the docs of the functions; what is said of each case stands on
// the pages in `refused/`. A case with nothing under it is taken.

const plan = planOf();
const [limb] = plan.request.limbs;
const [extension] = plan.request.exercises;
const { oneRepMax: _, percentOneRepMax: __, scheme: ___, ...bare } = extension!;
const sets = [{ repetitions: 10, restS: 30 }, { repetitions: 10 }];
const counted = { ...bare, sets };
const { tempo } = bare as { tempo: object };
const walk = { name: 'walk', mode: 'aerobic', limb: 'leg', scheme: '2x2min', restS: 60, restriction: 'continuous' };
const { scheme: ____, ...unwalked } = walk;

const only = (one: object, request: object = {}) => ({ ...plan.request, exercises: [one], ...request });
const exercise = (change: object) => only({ ...extension, ...change });
const person = (change: object) => ({ ...plan.request, ...change });
const onLimb = (change: object) => person({ limbs: [{ ...limb, ...change }] });
const measured = (valueMmHg: number) => onLimb({ measured: { valueMmHg, method: 'doppler' } });
const bothLegs = { limbs: [limb, { ...limb, side: 'right' }] };
const massed = { bodyMassKg: 80 };
const estimated = { ...limb, measured: undefined, circumferenceCm: 55 };
const own = { ...extension, oneRepMax: { load: 50, repetitions: 8 } };

describe('a request for a plan', () => {
  const cases = {
    null: null,
    'no lists': { limbs: 5, exercises: 5 },
    'another posture, and a field of nobody': person({ posture: 'lying', 'a field nobody knows': 1 }),
    'a long name': person({ ['x'.repeat(61)]: 1 }),
    'a number in words': person({ systolicMmHg: '118' }),
    'a pressure in kPa': person({ systolicMmHg: 16 }),
    'an empty label': person({ label: '' }),
    'a label of a number': person({ label: 5 }),
    'no limb': person({ limbs: [] }),
    'five limbs': person({ limbs: Array(5).fill(limb) }),
    'half a repetition': exercise({ scheme: undefined, sets: [{ repetitions: 2.5 }] }),
    'not unloaded': exercise({ unloaded: false }),
    'a tempo of null': exercise({ tempo: null }),
    'swapped pressures': person({ systolicMmHg: 74, diastolicMmHg: 118 }),
    'a limb twice': person({ limbs: [limb, { ...limb, percentLop: 40 }] }),
    'measured at the diastolic pressure': measured(74),
    'measured above it': measured(75),
    'neither measured nor a girth': onLimb({ measured: undefined }),
    'nothing to lift': only(counted),
    'no percentage': exercise({ percentOneRepMax: undefined }),
    'a maximum and a load': exercise({ load: 20 }),
    'a maximum and nothing': exercise({ unloaded: true }),
    'a load, and what is of a maximum': only({
      ...counted,
      load: 20,
      percentOneRepMax: 20,
      step: 5,
      rounding: 'down',
      maximumOf: 'this-limb',
      bar: 20,
      collars: 0,
    }),
    'a load with a step and a rack': only({ ...counted, load: 20, step: 5, available: [20, 25] }),
    'a load with a step': only({ ...counted, load: 20, step: 5 }),
    'nothing lifted, by steps': only({ ...counted, unloaded: true, step: 5 }),
    'nothing lifted, a load and body mass': only({ ...counted, unloaded: true, load: 20, bodyMassPercent: 60 }, massed),
    'a share of body mass that is not known': only({ ...counted, bodyMassPercent: 60 }),
    'a share of body mass': only({ ...counted, bodyMassPercent: 60 }, massed),
    // It may come on top of a maximum, and of a load.
    'a share on top of a maximum': only({ ...extension, bodyMassPercent: 60 }, massed),
    'a share on top of a load': only({ ...counted, load: 5, bodyMassPercent: 60 }, massed),
    'walking with a load': only({ ...walk, load: 20, step: 5, unit: 'kg', tempo }),
    'an intensity at rest': only({ ...walk, mode: 'passive', intensityPercent: 40 }),
    'an intensity of walking': only({ ...walk, intensityPercent: 40 }),
    // A tempo, which counted sets would need, is refused there.
    'walking, one set counted': only({ ...unwalked, sets: [{ durationS: 60, restS: 30 }, { repetitions: 10 }] }),
    'walking, counted and timed': only({ ...unwalked, restS: 5, sets: [{ repetitions: 10, durationS: 60 }] }),
    'walking, a counted scheme': only({ ...walk, scheme: '3x10' }),
    'at rest, a counted warm-up': only({ ...walk, mode: 'passive', warmUp: [{ repetitions: 5, restS: 5 }] }),
    'walking, a timed warm-up': only({ ...walk, warmUp: [{ durationS: 60, restS: 5 }] }),
    'walking, no rest': only({ ...walk, restS: undefined }),
    'walking, a warm-up in part counted': only({ ...walk, warmUp: [{ durationS: 5, restS: 5 }, ...sets] }),
    'no tempo': exercise({ tempo: undefined }),
    'no tempo, and its mode': exercise({ mode: 'resistance', tempo: undefined }),
    'partial without a lower pressure': exercise({ restriction: 'partial' }),
    'a lower pressure without partial': exercise({ restPercentLop: 20 }),
    'a pressure without restriction': exercise({ restriction: 'none', percentLop: 50 }),
    'a lower pressure that is none': exercise({ restriction: 'partial', restPercentLop: 50 }),
    'a lower pressure': exercise({ restriction: 'partial', restPercentLop: 49 }),
    // Steps of 50 mmHg have no pressure for 20 % of 200 mmHg.
    'a lower pressure that cannot be set': only(
      { ...extension, restriction: 'partial', restPercentLop: 20 },
      { limbs: [{ ...limb, percentLop: 100, gaugeStepMmHg: 50 }] },
    ),
    // A fraction that was meant as a percentage, told by the field it stands in.
    'half a per cent': exercise({ percentLop: 0.5 }),
    'a change without turns': exercise({ changeS: 5 }),
    'a limb that is not listed': exercise({ limb: 'arm' }),
    'a side that is not listed': exercise({ side: 'right' }),
    'two sides, one listed': exercise({ side: 'both' }),
    'two sides': only({ ...extension, side: 'both' }, bothLegs),
    'the other side': only({ ...extension, side: 'right' }, bothLegs),
    // A wrong maximum leaves no load to judge, wrong pressures no estimate, a wrong limb no exercise on it.
    'a wrong maximum, and a rest': exercise({ oneRepMax: { load: -1 }, restS: -1 }),
    'a wrong percentage, and a cuff': onLimb({ percentLop: 101, cuffWidthCm: 1 }),
    'a wrong pressure of an estimate': person({ systolicMmHg: 400, limbs: [estimated] }),
    'parts that are null': person({ limbs: [limb, null], exercises: [null, { ...extension, scheme: 'often' }] }),
  };

  it('is refused with all that is wrong, as the golden page says', async () => {
    await expect(refusalPage(planSession as never, cases)).toMatchFileSnapshot('refused/plans.txt');
  });

  it('is refused where a side is an object that cannot be written', () => {
    const every = publicFunctions['planSessionOfEveryKind']!.right as typeof plan.request;
    const [first, ...others] = every.limbs;
    const issues = refusal(planSession as never, {
      ...every,
      limbs: [{ ...first, side: { toString: '' } }, ...others],
    });
    expect(issues.map(([path]) => path)).toContain('limbs.0.side');
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
    const issues = refusal(planSession as never, exercise({ ...more, [field]: wrong }));
    expect(issues.map(([path]) => path.split('.')[2])).toEqual([field]);
  });
  it.each([{ ageYears: 500 }, { sex: 'x' }, { systolicMmHg: 'x' }, { diastolicMmHg: 'x' }, { posture: 'x' }])(
    'is told of one wrong field of the person alone: %j',
    (change) => {
      const found = refusal(planSession as never, person({ limbs: [estimated], exercises: [own], ...change }));
      expect(found.map(([path]) => path)).toEqual(Object.keys(change));
    },
  );
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
  const item = { exercise: 'leg extension', limb: 'leg', side: 'left', sets: [{ repetitions: 30 }] };
  const recorded = (change: object, of: Plan = plan) => ({
    plan: of,
    date: '2026-03-02',
    items: [{ ...item, ...change }],
  });
  const unloaded = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true });
  const timed = planSession({ ...plan.request, exercises: [walk] } as never);
  const part = planOf({ restriction: 'partial', restPercentLop: 20 });
  const rest = (heldMmHg?: number, restHeldMmHg?: number) => recorded({ heldMmHg, restHeldMmHg }, part);
  const five = Array.from({ length: 5 }, () => ({ repetitions: 5 }));

  it('is refused where the plan does not have it, as the golden page says', async () => {
    const cases = {
      null: null,
      'the other side': recorded({ side: 'right' }),
      'another exercise': recorded({ exercise: 'press' }),
      'a lower pressure that was not planned': recorded({ restHeldMmHg: 40 }),
      'a load where none was planned': recorded({ load: 5 }, unloaded),
      'no load where none was planned': recorded({}, unloaded),
      'neither repetitions nor time': recorded({ sets: [{ restS: 5 }] }),
      'repetitions of walking': recorded({ exercise: 'walk' }, timed),
      'a time of walking': recorded({ exercise: 'walk', sets: [{ durationS: 60 }] }, timed),
      'a load of walking': recorded({ exercise: 'walk', sets: [{ durationS: 60 }], load: 5 }, timed),
      // Four sets are planned: after the third a rest is, after the fourth none.
      'five sets': recorded({ sets: five }),
      'four sets': recorded({ sets: five.slice(1) }),
      'five sets with their rests': recorded({ sets: five.map((set) => ({ ...set, restS: 10 })) }),
      'the rests at the pressure of the sets': rest(undefined, 100),
      'the sets at the pressure of the rests': rest(40),
      'rests below the plan’s sets': rest(undefined, 99),
      'sets above the plan’s rests': rest(41),
      'both held': rest(90, 50),
      'no plan, and no day': { plan: {}, date: 'today', items: [item] },
      'two wrong items': {
        plan,
        date: '2026-03-02',
        items: [
          { ...item, restHeldMmHg: 5 },
          { ...item, side: 'right' },
        ],
      },
    };
    await expect(refusalPage(recordSession as never, cases)).toMatchFileSnapshot('refused/records.txt');
  });
});

describe('a document that is read back', () => {
  const of = (change: object) => ({ ...plan, ...change });
  /** A total, the target of the item, or an input of an answer, changed by hand. */
  const total = (repetitions: unknown) =>
    of({ items: plan.items.map((item) => ({ ...item, totals: { ...item.totals, repetitions } })) });
  const target = (value: number) =>
    of({ items: plan.items.map((item) => ({ ...item, target: { ...item.target, value } })) });
  const caution = (change: object) => of({ cautions: [{ code: 'x', text: 'y', severity: 'note', ...change }] });

  it('is refused where it is none, as the golden page says', async () => {
    const cases = {
      'no version': of({ schemaVersion: undefined }),
      'a newer version': of({ schemaVersion: 3 }),
      'version 0': of({ schemaVersion: 0 }),
      'half a version': of({ schemaVersion: 0.5 }),
      'a version in words': of({ schemaVersion: '2' }),
      'another kind': of({ document: 'record' }),
      'no kind': of({ document: 'lighter-options' }),
      'a number': 5,
      'another severity': caution({ severity: 'z' }),
      'another path': caution({ path: [null] }),
      // Totals and answers may share a name with a field of the vocabulary; only a number is judged as one.
      'a total of a number': total(5),
      'a total in words': total('x'),
      'a target of nothing': target(0),
      'a target of a kilometre': target(1e7),
      'an input that is a fraction': of({
        answers: plan.answers.map((answer, at) =>
          at === 1 ? { ...answer, inputs: { ...answer.inputs, percentLop: 0.5 } } : answer,
        ),
      }),
    };
    await expect(refusalPage(readDocument as never, cases)).toMatchFileSnapshot('refused/documents.txt');
  });
});

describe('other inputs', () => {
  const record = recordOf(plan, [30]);
  const next = { plan, records: [record], rule: 'two-for-two' };
  const days = { records: [record], from: '2026-03-02' };
  it.each<[string, (given: never) => unknown, object]>([
    ['review', (given) => reviewPlan(given), { 'another document': { document: 'x' } }],
    ['guideline', (options) => reviewPlan(plan, options), { 'another guideline': { guideline: 'mine' } }],
    [
      'proposal',
      nextSession,
      {
        'days that are none': { ...next, date: 'today', oneRepMaxTestedOn: '2026-02-29' },
        'tested after the day': { ...next, date: '2026-03-05', oneRepMaxTestedOn: '2026-03-06' },
        'tested on the day': { ...next, date: '2026-03-05', oneRepMaxTestedOn: '2026-03-05' },
        'neither plan nor records': { rule: 'two-for-two' },
        'documents of other kinds': { ...next, plan: record, records: [plan, {}] },
        'no record, another rule, a fraction, a field more': {
          ...next,
          records: [],
          rule: 'mine',
          nextPercentLop: 0.5,
          extra: 1,
        },
      },
    ],
    [
      'week',
      trainingDays,
      {
        'no session load': days,
        'no day': { ...days, from: undefined },
        'a day that is none': { ...days, from: '2026-02-30' },
        'a plan': { ...days, records: [plan, record] },
        // Of another week: passed over, whatever it says.
        'of the week after': { ...days, from: '2026-02-23' },
        'of the week before': { ...days, from: '2026-03-03' },
        'on its last day': { ...days, from: '2026-02-24' },
        'no records': { ...days, records: undefined },
      },
    ],
    [
      'screening',
      screen,
      {
        'a number': 5,
        'another reply': { answers: { pregnancy: 'perhaps' } },
        'swapped pressures': { answers: {}, systolicMmHg: 70, diastolicMmHg: 80 },
        'one pressure': { answers: {}, systolicMmHg: 70 },
      },
    ],
    ['stage', nextStage, { 'another stage': { stage: 'top' }, 'no stage': {} }],
  ])('of a %s are refused as the golden page says', async (name, call, cases) => {
    await expect(refusalPage(call as never, cases as never)).toMatchFileSnapshot(`refused/${name}.txt`);
  });
});
