import { describe, expect, it } from 'vitest';
import { attempt, testedOneRepMax } from '../../src/index.js';
import { ownDocument } from '../../src/answer/own.js';
import { nextRequest } from '../../src/plan/next-request.js';

type Json = Readonly<Record<string, unknown>>;

const left = { limb: 'leg', side: 'left' };
const right = { limb: 'leg', side: 'right' };
const kg = (value: number) => ({ value, unit: 'kg' });
const goals = (...repetitions: number[]) => repetitions.map((count) => ({ repetitions: count }));
/** One exercise on one limb at 20 kg; documents as the library hands them out are taken as they are. */
const item = (more: Json = {}): Json => ({ exercise: 'press', ...left, load: kg(20), sets: goals(30, 15), ...more });
const exercise = (more: Json = {}): Json => ({
  name: 'press',
  limb: 'leg',
  load: 20,
  scheme: '30-15',
  restS: 30,
  percentLop: 50,
  ...more,
});
/** What is proposed for it: to repeat everything. */
const next = (more: Json = {}): Json => ({
  exercise: 'press',
  ...left,
  action: 'repeat',
  load: { from: 20, to: 20, unit: 'kg' },
  reasons: [],
  ...more,
});
const load = (to: number, from = 20) => ({ load: { from, to, unit: 'kg' } });
const share = (to?: number, from = 50) => ({ percentLop: { from, ...(to !== undefined && { to }) } });

interface Given {
  readonly items?: readonly Json[];
  readonly exercises?: readonly Json[];
  readonly proposed?: readonly Json[];
  readonly request?: Json;
  readonly stops?: readonly Json[];
  readonly proposedStops?: readonly Json[];
}
const input = ({
  items = [item()],
  exercises = [exercise()],
  proposed = [next()],
  request,
  stops = [],
  proposedStops = [],
}: Given) => ({
  plan: ownDocument({
    document: 'plan',
    request: { posture: 'seated', limbs: [], exercises, ...request },
    items,
    stops,
  }),
  proposal: ownDocument({ document: 'proposal', items: proposed, stops: proposedStops }),
});
const ask = (given: Given) => nextRequest(input(given) as never);
const wrong = (given: Given): string[] => {
  const result = attempt(() => ask(given), undefined);
  return result.ok
    ? []
    : result.issues.map(
        ({ path, code, expected, received }) => `${path.join('.')} ${code}: ${expected}, not ${received}`,
      );
};
/** The one exercise of the next request, and whether the lower of two sides was taken. */
const first = (given: Given): Json => ask(given).request.exercises[0] as unknown as Json;
const isHeld = (given: Given): boolean => ask(given).assumptions.some(({ code }) => code === 'lower-of-two-sides');
/** Both sides of one exercise, by what is proposed for each. */
const both = (one: Json, other: Json, more: Given = {}): Given => ({
  items: [item(), item(right)],
  proposed: [next(one), next({ ...right, ...other })],
  ...more,
});

describe('a proposal for a plan', () => {
  const none = { load: undefined };
  const range = { upperLoad: kg(30) };
  it.each([
    ['the load of the plan', {}, {}, true],
    ['a lighter load', {}, load(20, 19), false],
    ['a heavier load', {}, load(20, 21), false],
    ['the lower end of a range', range, load(20, 20), true],
    ['a load in a range', range, load(20, 25), true],
    ['the upper end of a range', range, load(20, 30), true],
    ['a load below a range', range, load(20, 19), false],
    ['a load above a range', range, load(20, 31), false],
    ['no load where there is none', none, none, true],
    ['a load where there is none', none, {}, false],
    ['no load where there is one', {}, none, false],
    ['another exercise', {}, { exercise: 'row' }, false],
    ['another side', {}, right, false],
    ['another limb', {}, { limb: 'arm' }, false],
  ] as const)('starts from %s', (_, own, more, isTaken) => {
    expect(wrong({ items: [item(own)], proposed: [next(more)] })).toEqual(
      isTaken ? [] : ['proposal.items wrong-relation: those of this plan, not "press" "leg" "left"'],
    );
  });

  it('may have its items in another order', () => {
    const given = { items: [item(), item({ exercise: 'row' })], exercises: [exercise(), exercise({ name: 'row' })] };
    const { request } = ask({ ...given, proposed: [next({ exercise: 'row', ...load(25) }), next(load(22))] });
    expect(request.exercises.map((one) => one.load)).toEqual([22, 25]);
    expect(wrong({ ...given, proposed: [next({ exercise: 'row', action: 'stop' }), next()] })[0]).toMatch(
      /^proposal\.items\.0\.action /,
    );
    expect(wrong({ ...given, proposed: [next()] })).toEqual([
      'proposal.items wrong-relation: those of this plan, not "row" "leg" "left"',
    ]);
  });

  it('tells an exercise that is listed again from the first', () => {
    const given = { items: [item(), item()], exercises: [exercise(), exercise({ restS: 60 })] };
    const { request } = ask({ ...given, proposed: [next(load(22)), next(load(25))] });
    expect(request.exercises.map((one) => one.load)).toEqual([22, 25]);
  });

  it('is not done as it is where it stops', () => {
    expect(wrong({ proposed: [next({ action: 'stop' })] })).toEqual([
      'proposal.items.0.action wrong-relation: other than stop: no further session before a clinician has looked, not "stop"',
    ]);
  });

  it.each([
    ['a load to go to', load(18), []],
    ['no number at all', { load: undefined }, ['proposal.items.0.action wrong-relation']],
    ['fewer sets', { load: undefined, sets: { from: goals(30, 15), to: goals(30) } }, []],
    ['a lower pressure', { load: undefined, ...share(40) }, []],
    ['a pressure that stays', { load: undefined, ...share(50) }, ['proposal.items.0.action wrong-relation']],
    ['a pressure left open', { load: undefined, ...share() }, ['proposal.items.0.action wrong-relation']],
    ['a load left open', { load: { from: 20, unit: 'kg' } }, ['proposal.items.0.load.to missing']],
  ] as const)('goes back by %s', (_, more, expected) => {
    const own = 'load' in more && more.load === undefined ? { load: undefined } : {};
    expect(
      wrong({ items: [item(own)], proposed: [next({ action: 'back-off', ...more })] }).map((one) => one.split(':')[0]),
    ).toEqual(expected);
  });

  it('leaves no load open', () => {
    const open = { action: 'raise-load', load: { from: 20, unit: 'kg' } };
    expect(wrong({ proposed: [next(open)] })).toEqual([
      'proposal.items.0.load.to missing: the load to go to, which the practitioner decides, not undefined',
    ]);
    expect(wrong(both(open, { action: 'stop' })).map((one) => one.split(':')[0])).toEqual([
      'proposal.items.0.load.to missing',
      'proposal.items.1.action wrong-relation',
    ]);
  });
});

describe('the next request', () => {
  it('is that of the last plan where everything is repeated', () => {
    const { request, assumptions } = ask({ request: { label: 'P-1' } });
    expect(request).toStrictEqual({ posture: 'seated', limbs: [], label: 'P-1', exercises: [exercise()] });
    expect(assumptions.map(({ code }) => code)).toEqual(['readings-carried']);
  });

  it('has the load that is proposed, of both sides the lower', () => {
    expect(first({ proposed: [next(load(22))] })).toStrictEqual(exercise({ load: 22 }));
    expect(first(both(load(22), load(22)))).toStrictEqual(exercise({ load: 22 }));
    expect(isHeld(both(load(22), load(22)))).toBe(false);
    for (const given of [both(load(22), load(20)), both(load(20), load(22))]) {
      expect(first(given)).toStrictEqual(exercise());
      expect(isHeld(given)).toBe(true);
    }
    const { assumptions } = ask(both(load(22), load(20)));
    expect(assumptions[1]).toMatchObject({ code: 'lower-of-two-sides', values: { exercise: 'press' } });
  });

  it('keeps the percentage asked for where the load stays', () => {
    // 33 % of 60 kg is 19.8 kg, set as 20 kg.
    const own = exercise({ load: undefined, oneRepMax: { load: 60 }, percentOneRepMax: 33, step: 5 });
    const items = [item({ oneRepMax: testedOneRepMax({ load: 60 }) })];
    expect(first({ items, exercises: [own] })).toStrictEqual(own);
  });

  it('has no load where nothing is lifted', () => {
    const none = { load: undefined };
    const bare = exercise({ load: undefined, unloaded: true });
    expect(first({ items: [item(none)], proposed: [next(none)], exercises: [bare] })).toStrictEqual(bare);
  });

  it.each([
    ['up on both sides', [share(60), share(60)], 60, false],
    ['up on one side', [share(60), share(50)], 50, true],
    ['up on the other side', [share(50), share(60)], 50, true],
    ['up by different steps', [share(60), share(55)], 55, true],
    ['down on both sides', [share(40), share(40)], 40, false],
    ['down on one side', [share(40), share(50)], 40, true],
    ['down on the other side', [share(50), share(40)], 40, true],
    ['down on one side and up on the other', [share(60), share(40)], 40, true],
    ['nowhere', [share(50), share(50)], 50, false],
    ['up where the other is left open', [share(60), share()], 60, false],
    ['nowhere where both are left open', [share(), share()], 50, false],
    ['up where the other has no cuff', [share(60), {}], 60, false],
  ] as const)('has the pressure that goes %s', (_, [one, other], percentLop, held) => {
    // Its own percentage is 45 % here, so that what stays is seen to stay.
    const given = both(one, other, { exercises: [exercise({ percentLop: 45 })] });
    expect(first(given)['percentLop']).toBe(percentLop === 50 ? 45 : percentLop);
    expect(isHeld(given)).toBe(held);
  });

  const sets = (...to: number[]) => ({ action: 'raise-repetitions', sets: { from: goals(30, 15), to: goals(...to) } });
  const written = (...repetitions: number[]) =>
    repetitions.map((count) => expect.objectContaining({ repetitions: count }) as unknown);
  it('has the sets that are proposed, one by one, of both sides the lesser', () => {
    const { scheme: _, ...rest } = exercise();
    const one = first({ proposed: [next(sets(30, 17))] });
    expect(one).toEqual({ ...rest, sets: written(30, 17), raisedFrom: [30, 15] });
    expect(one).not.toHaveProperty('scheme');
    expect(first(both(sets(32, 15), sets(30, 17)))['sets']).toEqual(written(30, 15));
    expect(first(both(sets(30, 17), {}))['sets']).toEqual(written(30, 15));
    // Fewer sets on one side are fewer on both.
    const fewer = { action: 'back-off', sets: { from: goals(30, 15), to: goals(30) } };
    for (const given of [both(fewer, {}), both({}, fewer)]) {
      expect(first(given)['sets']).toEqual(written(30));
      expect(first(given)).not.toHaveProperty('raisedFrom');
    }
  });

  it('keeps the repetitions before they were first raised, until they are those again', () => {
    const exercises = [exercise({ raisedFrom: [28, 13] })];
    expect(first({ exercises, proposed: [next(sets(30, 17))] })['raisedFrom']).toEqual([28, 13]);
    const heavier = { ...load(22), action: 'raise-load', sets: { from: goals(30, 15), to: goals(28, 13) } };
    const raised = first({ exercises, proposed: [next(heavier)] });
    expect(raised).toMatchObject({ load: 22, sets: written(28, 13) });
    expect(raised).not.toHaveProperty('raisedFrom');
    expect(first({ exercises })).toStrictEqual(exercises[0]);
  });

  it('has times of sets by time, and their rests', () => {
    const timed = [{ durationS: 60, restS: 45 }, { durationS: 45 }];
    const given: Given = {
      items: [item({ sets: timed })],
      exercises: [exercise({ scheme: undefined, sets: timed })],
      proposed: [next({ action: 'back-off', sets: { from: timed, to: [{ durationS: 60 }] } })],
    };
    expect(first(given)['sets']).toStrictEqual([{ durationS: 60, restS: 45 }]);
    const raised = next({ action: 'raise-repetitions', sets: { from: timed, to: timed } });
    expect(first({ ...given, proposed: [raised] })['raisedFrom']).toEqual([]);
  });

  it('leaves the check of the day and old decisions behind', () => {
    const { request } = ask({
      request: { decisions: [{}], dayCheck: {}, stops: [{ code: 'old' }], date: '2026-03-02' },
    });
    expect(Object.keys(request).sort()).toEqual(['date', 'exercises', 'limbs', 'posture']);
  });

  it('has the stops that were lifted, with their decisions', () => {
    const stop = { code: 'symptom-fainting', text: 'fainting' };
    const lifted = { ...stop, lifted: { stop: stop.code, by: 'physician', on: '2026-03-02', why: 'seen' } };
    expect(ask({ stops: [lifted] }).request.stops).toEqual([lifted]);
    expect(ask({ stops: [stop], proposedStops: [lifted] }).request.stops).toEqual([lifted]);
    const refused = /^proposal\.stops wrong-relation: .*, not "symptom-fainting"$/;
    for (const given of [{ stops: [stop] }, { proposedStops: [stop] }]) {
      // Nothing else is looked at while one is in force.
      const found = wrong({ ...given, proposed: [next({ action: 'stop' })] });
      expect(found).toHaveLength(1);
      expect(found[0]).toMatch(refused);
    }
  });
});

describe('what is no input of it', () => {
  const wrongAt = (given: unknown): string[] => {
    const result = attempt(() => nextRequest(given as never), undefined);
    return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
  };
  it('is refused by its place', () => {
    const { plan, proposal } = input({});
    expect(wrongAt({ plan, proposal })).toEqual([]);
    expect(wrongAt({})).toEqual(['plan missing', 'proposal missing']);
    expect(wrongAt({ plan, proposal, day: 1 })).toEqual(['day unknown-field']);
    expect(wrongAt({ plan: proposal, proposal })).toEqual(['plan.document not-one-of']);
    expect(wrongAt({ plan, proposal: plan })).toEqual(['proposal.document not-one-of']);
  });
});
