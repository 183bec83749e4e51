// Which figures are read from a document, and where, on documents written by hand: shares are 100 × part / whole, and
// times are in minutes.
import { describe, expect, it } from 'vitest';
import { askedOf, largestShareOf, modesOf, readingsOf, restrictedMin, type Indexed } from '../../src/plan/readings.js';

type Document = Parameters<typeof readingsOf>[0];
type Item = Indexed[0];

const totals = { restrictionTime: { value: 300 }, longestRestriction: { value: 240 }, repetitions: { value: 75 } };
const sets = (...rests: readonly number[]) => rests.map((restS) => ({ repetitions: 15, restS }));
const target = (inputs: object = {}, more: object = {}) => ({
  value: 100,
  cautions: [],
  inputs: { percentLop: 50, occlusion: { value: 200 }, ...inputs },
  reached: { percentLop: 50 },
  ...more,
});
const oneRepMax = { value: 100, unit: 'kg' };
const load = (value: number, percentOneRepMax = value) => ({
  value,
  unit: 'kg',
  inputs: { oneRepMax, percentOneRepMax },
  reached: { percentOneRepMax: value },
});

const itemOf = (more: object = {}): Item =>
  ({
    exercise: 'press',
    limb: 'leg',
    side: 'left',
    sets: sets(30, 30, 0),
    target: target(),
    totals,
    restriction: 'continuous',
    ...more,
  }) as unknown as Item;
const doneOf = (done: object = {}, more: object = {}): Item =>
  itemOf({ done: { sets: sets(30, 30, 0), stoppedEarly: false, ...done }, ...more });

const planOf = (more: object = {}): Document =>
  ({
    document: 'plan',
    request: { limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10 }] },
    limbs: [],
    assumptions: [],
    session: { timeline: { events: [] } },
    ...more,
  }) as unknown as Document;
const record = (more: object = {}): Document => ({ document: 'record', limbs: [], ...more }) as unknown as Document;

/** What is read of one item: measure, figure, what was asked for, and place. */
const read = (document: Document, item: Item, index = 0) =>
  readingsOf(document, [[item, index]]).map(({ measure, found, asked, path }) => [
    measure,
    found,
    asked,
    path.join('.'),
  ]);
const readOf = (measure: string, ...given: Parameters<typeof read>) =>
  read(...given).filter(([one]) => one === measure);

describe('an item with a cuff', () => {
  it('as planned', () => {
    const item = itemOf({
      load: load(20),
      tempo: { concentricS: 1, eccentricS: 2 },
      intensityPercent: 40,
    });
    expect(read(planOf(), item)).toEqual([
      ['percent-of-occlusion', 50, 50, 'items.0.target'],
      ['cuff-width', 10, undefined, 'request.limbs.0.cuffWidthCm'],
      ['restriction-time', 5, undefined, 'items.0.totals.restrictionTime'],
      ['longest-restriction', 4, undefined, 'items.0.totals.longestRestriction'],
      ['percent-of-aerobic-capacity', 40, undefined, 'items.0.intensityPercent'],
      ['sets', 3, undefined, 'items.0.sets'],
      ['percent-of-maximum', 20, 20, 'items.0.load'],
      ['repetitions', 75, undefined, 'items.0.totals.repetitions'],
      ['lifting', 1, undefined, 'items.0.tempo.concentricS'],
      ['lowering', 2, undefined, 'items.0.tempo.eccentricS'],
      ['rest', 30, undefined, 'items.0.sets.0.restS'],
    ]);
    const [first] = readingsOf(planOf(), [[item, 0]]);
    expect(first).toMatchObject({ modes: ['resistance'], exercise: 'press', limb: 'leg', side: 'left' });
  });

  it('as done', () => {
    const item = doneOf(
      { heldMmHg: 120, reperfusedBeforeS: 90, load: 25, unit: 'kg', sets: sets(30, 45) },
      { cuffWidthCm: 12, load: load(20), lastSetToFailure: true },
    );
    expect(read(record(), item, 2)).toEqual([
      ['percent-of-occlusion', 60, undefined, 'items.2.done.heldMmHg'],
      ['reperfusion', 1.5, undefined, 'items.2.done.reperfusedBeforeS'],
      ['cuff-width', 12, undefined, 'items.2.cuffWidthCm'],
      ['restriction-time', 5, undefined, 'items.2.totals.restrictionTime'],
      ['longest-restriction', 4, undefined, 'items.2.totals.longestRestriction'],
      ['sets', 2, undefined, 'items.2.done.sets'],
      ['percent-of-maximum', 25, undefined, 'items.2.done.load'],
      ['repetitions', 75, undefined, 'items.2.totals.repetitions'],
      ['rest', 30, undefined, 'items.2.done.sets.0.restS'],
    ]);
  });

  it('the share that was held is of the pressure of that day, and is as asked for only where it is that of the plan', () => {
    const held = (done: object) => readOf('percent-of-occlusion', record(), doneOf(done)).map((one) => one.slice(1, 3));
    expect(held({})).toEqual([]);
    expect(held({ heldMmHg: 100 })).toEqual([[50, 50]]);
    expect(held({ heldMmHg: 110 })).toEqual([[55, undefined]]);
    expect(held({ heldMmHg: 120, occlusionMmHg: 160 })).toEqual([[75, undefined]]);
    expect(readOf('percent-of-occlusion', planOf(), itemOf({ target: target({}, { reached: undefined }) }))).toEqual(
      [],
    );
  });

  it('the repetitions go with whether the last set was to failure, planned or done', () => {
    const failure = (item: Item) =>
      readingsOf(record(), [[item, 0]]).find(({ measure }) => measure === 'repetitions')?.toFailure;
    expect(failure(itemOf({ lastSetToFailure: true }))).toBe(true);
    expect(failure(doneOf({ lastSetToFailure: true }))).toBe(true);
    expect(failure(doneOf({}, { lastSetToFailure: true }))).toBeUndefined();
  });

  it('in sets by time no repetitions are counted; one set by repetitions is enough', () => {
    const timed = [{ durationS: 60, restS: 30 }];
    expect(readOf('repetitions', planOf(), itemOf({ sets: timed }))).toEqual([]);
    expect(readOf('repetitions', planOf(), itemOf({ sets: [...timed, ...sets(0)] }))).toHaveLength(1);
  });

  it('walking and rest have no share of a maximum, repetitions or tempo', () => {
    const item = itemOf({ mode: 'aerobic', load: load(20), tempo: { concentricS: 1, eccentricS: 2 } });
    expect(read(planOf(), item).map(([measure]) => measure)).toEqual([
      'percent-of-occlusion',
      'cuff-width',
      'restriction-time',
      'longest-restriction',
      'sets',
      'rest',
    ]);
  });

  it('each rest between sets once, at the first of them, and none after the last set', () => {
    expect(readOf('rest', planOf(), itemOf({ sets: sets(30, 60, 30, 90) }))).toEqual([
      ['rest', 30, undefined, 'items.0.sets.0.restS'],
      ['rest', 60, undefined, 'items.0.sets.1.restS'],
    ]);
  });

  it('the cuff of its own limb', () => {
    const limbs = [
      { limb: 'leg', side: 'right', cuffWidthCm: 18 },
      { limb: 'leg', side: 'left', cuffWidthCm: 10 },
    ];
    expect(readOf('cuff-width', planOf({ request: { limbs } }), itemOf())).toEqual([
      ['cuff-width', 10, undefined, 'request.limbs.1.cuffWidthCm'],
    ]);
    expect(readOf('cuff-width', planOf({ request: { limbs: [] } }), itemOf())).toEqual([]);
    expect(readOf('cuff-width', record(), doneOf())).toEqual([]);
  });
});

describe('the share that was asked for', () => {
  it('is what the ceiling leaves of it, and unknown where a chance limit holds it down', () => {
    const asked = (inputs: object, cautions: readonly object[] = []) =>
      askedOf(target(inputs, { cautions }) as unknown as Parameters<typeof askedOf>[0]);
    expect(asked({})).toBe(50);
    expect(asked({ ceilingMmHg: 80 })).toBe(40);
    expect(asked({ ceilingMmHg: 150 })).toBe(50);
    const other = { code: 'percent-below-usual' };
    expect(asked({}, [other])).toBe(50);
    expect(asked({}, [other, { code: 'chance-limit-holds' }])).toBeUndefined();
  });
});

describe('the share of the maximum', () => {
  const shares = (item: Item) =>
    readOf('percent-of-maximum', 'done' in item ? record() : planOf(), item).map((one) => one.slice(1));

  it('as planned: with loads of single sets, the heaviest', () => {
    expect(shares(itemOf({ load: load(17.5, 18) }))).toEqual([[17.5, 18, 'items.0.load']]);
    const own = [
      { repetitions: 15, restS: 30, load: 30 },
      { repetitions: 15, restS: 0 },
    ];
    expect(shares(itemOf({ load: load(20), sets: own }))).toEqual([[30, undefined, 'items.0.load']]);
    expect(shares(itemOf())).toEqual([]);
    expect(shares(itemOf({ load: { value: 20, unit: 'kg', inputs: {} } }))).toEqual([]);
    expect(shares(itemOf({ load: { value: 20, unit: 'kg', inputs: {} }, sets: own }))).toEqual([]);
  });

  it('of a range, both ends', () => {
    expect(shares(itemOf({ load: load(20), upperLoad: load(30, 31) }))).toEqual([
      [20, 20, 'items.0.load'],
      [30, 31, 'items.0.upperLoad'],
    ]);
    const bare = { value: 30, unit: 'kg', inputs: {} };
    expect(shares(itemOf({ load: load(20), upperLoad: bare }))).toEqual([[20, 20, 'items.0.load']]);
    expect(largestShareOf(itemOf({ load: load(20), upperLoad: load(30) }))).toBe(30);
    expect(largestShareOf(itemOf({ load: load(20) }))).toBe(20);
    expect(largestShareOf(itemOf())).toBeUndefined();
    expect(largestShareOf(doneOf({ load: 25, unit: 'kg' }, { load: load(20), upperLoad: load(30) }))).toBe(25);
  });

  it('as done: of the heaviest set, and as asked for only where it is the load of the plan', () => {
    const done = (more: object, of: object = { load: load(20, 21) }) => shares(doneOf(more, of));
    expect(done({ load: 20, unit: 'kg' })).toEqual([[20, 21, 'items.0.done.load']]);
    expect(done({ load: 25, unit: 'kg' })).toEqual([[25, undefined, 'items.0.done.load']]);
    // 1 lb is 0.45359237 kg.
    expect(done({ load: 100, unit: 'lb' })).toEqual([[45.359237, undefined, 'items.0.done.load']]);
    const heavier = [{ repetitions: 5, restS: 0, load: 40 }];
    expect(done({ load: 20, unit: 'kg', sets: heavier })).toEqual([[40, undefined, 'items.0.done.load']]);
    expect(done({ load: 20, unit: 'kg', instead: 'squat' })).toEqual([]);
    expect(done({})).toEqual([]);
    expect(done({ load: 20 })).toEqual([]);
    expect(done({ load: 20, unit: 'kg' }, {})).toEqual([]);
    expect(done({ load: 20, unit: 'kg' }, { load: { value: 20, unit: 'kg', inputs: {} } })).toEqual([]);
  });

  it('of a plan with loads of single sets, nothing was asked for as one share', () => {
    const own = [{ repetitions: 15, restS: 0, load: 20 }];
    const item = doneOf({ load: 20, unit: 'kg', sets: own }, { load: load(20, 21), sets: own });
    expect(shares(item)).toEqual([[20, undefined, 'items.0.done.load']]);
  });
});

describe('the whole document', () => {
  it('restriction at both pressures, in minutes', () => {
    const time = (restrictionS: number, partialS?: number) =>
      restrictedMin({
        restrictionTime: { value: restrictionS },
        ...(partialS !== undefined && { partialRestrictionTime: { value: partialS } }),
      } as unknown as Parameters<typeof restrictedMin>[0]);
    expect(time(300)).toBe(5);
    expect(time(300, 60)).toBe(6);
  });

  it('each kind of exercise once; of an item without one, resistance', () => {
    const items = [itemOf(), itemOf({ mode: 'aerobic' }), itemOf({ mode: 'resistance' })];
    expect(modesOf(items.map((item, index) => [item, index]))).toEqual(['resistance', 'aerobic']);
  });

  it('the time of each limb with a cuff', () => {
    const of = { limb: 'leg', restrictionTime: { value: 600 } };
    const limbs = [
      { ...of, side: 'left', exercises: 2 },
      { ...of, side: 'right', exercises: 0 },
    ];
    const line = {
      measure: 'limb-restriction-time',
      modes: [],
      found: 10,
      limb: 'leg',
      side: 'left',
      path: ['limbs', 0, 'restrictionTime'],
    };
    expect(readingsOf(planOf({ limbs }), [])).toEqual([line]);
    expect(readingsOf(record({ limbs }), [])).toEqual([line]);
  });

  it('sessions a week, of a plan', () => {
    expect(readingsOf(planOf({ request: { limbs: [], sessionsPerWeek: 3 } }), [])).toEqual([
      { measure: 'sessions-per-week', modes: [], found: 3, path: ['request', 'sessionsPerWeek'] },
    ]);
  });

  it('pauses between the exercises of a limb, where the plan gives them', () => {
    const event = (name: string, side: string, atS: number, exercise: number, limb = 'leg') => ({
      event: name,
      limb,
      side,
      atS,
      exercise,
    });
    const events = [
      event('inflate', 'left', 0, 0),
      event('deflate', 'left', 100, 0),
      // Again in the same exercise, with its cuff deflated in the rests.
      event('inflate', 'left', 130, 0),
      event('deflate', 'left', 200, 0),
      event('inflate', 'right', 250, 1),
      event('inflate', 'left', 380, 1),
      event('set', 'left', 390, 2),
      event('inflate', 'left', 400, 1, 'arm'),
    ];
    const session = { timeline: { events } };
    expect(readingsOf(planOf({ session }), [])).toEqual([
      {
        measure: 'reperfusion',
        modes: [],
        found: 3,
        limb: 'leg',
        side: 'left',
        path: ['session', 'timeline', 'events', 5, 'atS'],
      },
    ]);
    const taken = (code: string) => readingsOf(planOf({ session, assumptions: [{ code: 'other' }, { code }] }), []);
    expect(taken('reperfusion-taken')).toEqual([]);
    expect(taken('another')).toHaveLength(1);
  });
});
