import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weekTotals, type Answer, type ExerciseSide } from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import {
  compareWeeks,
  expandDocument,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  reviewPlan,
  trainingDays,
  type DoneItem,
  type Plan,
  type PlanExercise,
  type PlanRequest,
  type RecordRequest,
  type SessionRecord,
  type Stated,
} from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { jointPain, recordOf } from '../support/plans.js';
import { walkSession, type WalkedExercise } from '../support/session-walk.js';
import { refusedAt } from '../support/refused.js';
import { codesOf as codes } from '../support/invariants.js';
import { bothSides, CHAIN, measuredAt, PERSON } from '../support/inputs.js';

const { tempo } = CHAIN;
/** Both legs, with a measured occlusion pressure of 200 mmHg, so that a percentage is half as many mmHg. */
const person = {
  ...PERSON,
  limbs: bothSides({ limb: 'leg', cuffWidthCm: 12, percentLop: 50, measured: measuredAt(200) }),
} satisfies Omit<PlanRequest, 'exercises'>;
const left = { ...person, limbs: [person.limbs[0]] } as const;

const extension = {
  name: 'leg extension',
  limb: 'leg',
  oneRepMax: { load: 100 },
  percentOneRepMax: 20,
  ...CHAIN,
} as const satisfies PlanExercise;
const walk = {
  name: 'walk',
  mode: 'aerobic',
  limb: 'leg',
  scheme: '5x2min',
  restS: 60,
  restriction: 'continuous',
  intensityPercent: 45,
} as const satisfies PlanExercise;
const rest = {
  name: 'restriction at rest',
  mode: 'passive',
  limb: 'leg',
  scheme: '5x5min',
  restS: 180,
  restriction: 'intermittent',
  percentLop: 80,
} as const satisfies PlanExercise;

const plan = (exercise: object, request: object = {}): Plan =>
  planSession({ ...left, ...request, exercises: [exercise as PlanExercise] });

type Done = Pick<DoneItem, 'sets'> & Partial<DoneItem>;

/** The same totals in a document by hand: only what is asked for. */
const totalsOf = ({ items }: Plan, ...names: string[]) =>
  names.map((name) => (items[0]!.totals as unknown as Record<string, Answer>)[name]?.value);

describe('planSession, beyond counted sets', () => {
  // Source: J Sports Sci Med 2011;10:338–340, 5 × 2 min of walking with 1 min of rest. 10 min of work and 4 min of rest.
  it('plans walking: sets by time, no load, an intensity', () => {
    const walking = plan(walk);
    const [item] = walking.items;
    expectPlainJson(walking);
    expect(item).toMatchObject({ mode: 'aerobic', intensityPercent: 45, target: { value: 100 } });
    for (const absent of ['load', 'oneRepMax', 'tempo']) expect(item).not.toHaveProperty(absent);
    expect(item!.sets).toEqual([60, 60, 60, 60, 0].map((restS) => ({ durationS: 120, restS })));
    expect(totalsOf(walking, 'sessionTime', 'restrictionTime', 'timeUnderTension', 'repetitions')).toEqual([
      840, 840, 0, 0,
    ]);
    expect(reviewPlan(walking).findings).toEqual([]);
    expect(reviewPlan(plan({ ...walk, intensityPercent: 60 })).findings).toMatchObject([
      { measure: 'percent-of-aerobic-capacity', found: 60, high: 50, path: ['items', 0, 'intensityPercent'] },
    ]);
  });

  // Twice a day for two weeks: Med Sci Sports Exerc 2008;40(3):529–534.
  it('counts restriction at rest for the stop alone, in weeks too', () => {
    const passive = plan({ ...rest, scheme: '2x5min' });
    const weekOf = (...sessions: [Plan, number][]) =>
      compareWeeks({ weeks: [{ sessions: sessions.map(([plan, times]) => ({ plan, times })) }] });
    const atRest = weekOf([passive, 14]);
    expect(atRest.weeks[0]!.planned).toMatchObject({
      restrictedSessions: { value: 14 },
      restrictedAtRest: { value: 14 },
    });
    expect(codes(atRest.cautions)).not.toContain('sessions-many-week');
    expect(codes(weekOf([passive, 15]).cautions)).toContain('sessions-week-stop');
    // Five in work beside them are five of those that guidance counts.
    const both = weekOf([passive, 7], [plan(walk), 5]);
    expect(both.cautions.find(({ code }) => code === 'sessions-many-week')).toMatchObject({ values: { value: 5 } });
    expect(weekOf([plan(walk), 3]).weeks[0]!.planned).not.toHaveProperty('restrictedAtRest');
    // One exercise of work under the cuff makes it a session of work.
    const mixed = planSession({ ...left, exercises: [rest, walk] });
    expect(weekOf([mixed, 1]).weeks[0]!.planned).not.toHaveProperty('restrictedAtRest');

    const { exercise, limb, side } = passive.items[0]!;
    const done = [300, 300].map((durationS) => ({ durationS }));
    const record = recordSession({
      plan: passive,
      date: '2026-03-02',
      items: [{ exercise, limb, side, sets: done }],
      sessionRpe: 0,
      sessionS: 1500,
    });
    const days = trainingDays({ records: [record], from: '2026-03-02' });
    expect(days[0]).toMatchObject({ restrictedSessions: 1, restrictedAtRest: 1 });
    expect(days[1]).not.toHaveProperty('restrictedAtRest');
  });

  // Source: Med Sci Sports Exerc 2008;40(3):529–534, 5 min on and 3 min off, 5 times: 25 min of restriction, 12 between.
  it('plans restriction at rest, with its own range of pressure', () => {
    const passive = plan(rest, { sessionsPerWeek: 14 });
    expect(totalsOf(passive, 'restrictionTime', 'longestRestriction', 'reperfusionTime', 'sessionTime')).toEqual([
      1500, 300, 720, 2220,
    ]);
    expect(passive.items[0]!.target!.value).toBe(160);
    expect(codes(passive.cautions)).not.toContain('percent-above-usual');
    // Guidance gives restriction at rest twice a day: a page that asks for fewer sessions would contradict its review.
    expect(codes(passive.cautions)).not.toContain('sessions-many-week');
    expect(codes(plan(rest, { sessionsPerWeek: 15 }).cautions)).toContain('sessions-week-stop');
    expect(codes(plan({ ...rest, percentLop: 50 }).cautions)).toContain('percent-below-usual');
    expect(codes(plan({ ...rest, mode: 'aerobic', percentLop: 90 }).cautions)).toContain('percent-above-usual');
    expect(reviewPlan(passive).findings).toEqual([]);
    expect(reviewPlan(plan({ ...rest, scheme: '5x6min' })).findings).toMatchObject([
      { measure: 'longest-restriction', found: 6, high: 5 },
    ]);
  });

  // Source: J Exp Orthop 2022, doi 10.1186/s40634-022-00533-4, Table 1: no load at first, 2 s up, 2 s down, 1 s hold,
  // 45 s of rest: 375 s of sets and 510 s in all; 80 % with a 20 cm cuff.
  it('plans an exercise without a load', () => {
    const limbs = [{ ...person.limbs[0], cuffWidthCm: 20, percentLop: 80 }];
    const { oneRepMax: _, percentOneRepMax: __, ...bare } = extension;
    const early = plan({ ...bare, unloaded: true, tempo: { ...tempo, topS: 1 }, restS: 45 }, { limbs });
    expect(totalsOf(early, 'timeUnderTension', 'sessionTime', 'volumeLoad')).toEqual([375, 510, undefined]);
    expect(early.items[0]).not.toHaveProperty('load');
    expect(explain(early)).toMatch(/^Load +none$/m);
  });

  // Worked by hand: 3 × 10 × 80 kg × 64 % = 1536 kg.
  it('plans a share of body mass, and a load of one’s own', () => {
    const { oneRepMax: _, percentOneRepMax: __, ...bare } = { ...extension, scheme: '3x10' };
    const squat = plan({ ...bare, bodyMassPercent: 64 }, { bodyMassKg: 80 });
    expect(totalsOf(squat, 'bodyMassVolumeLoad', 'volumeLoad')).toEqual([1536, 0]);
    expect(explain(squat)).toMatch(/^Load +64 % of a body mass of 80 kg$/m);
    const own = plan({ ...bare, load: 25, unit: 'lb' });
    const { load } = expandDocument(own).items[0]!;
    expect(load).toMatchObject({ value: 25, unit: '[lb_av]', evidence: 'practice' });
    expect(codes(load!.assumptions)).toEqual(['load-as-stated']);
    expect(reviewPlan(own).notAssessed).toContain('percent-of-maximum');
  });

  // Worked by hand: 50 and 20 % of 200 mmHg; sets 3 × 10 × 4 s = 120 s at 100 mmHg, rests 2 × 30 s at 40 mmHg:
  // (120 × 100 + 60 × 40) / 60 = 240 mmHg·min, of 200 mmHg 120 %·min.
  it('lets the cuff down to a second pressure in the rests', () => {
    const part = plan({ ...extension, scheme: '3x10', restriction: 'partial', restPercentLop: 20 });
    expect(part.items[0]).toMatchObject({ target: { value: 100 }, restTarget: { value: 40 } });
    expect(totalsOf(part, 'restrictionTime', 'partialRestrictionTime', 'longestRestriction')).toEqual([120, 60, 180]);
    expect(totalsOf(part, 'pressureTime', 'relativePressureTime')).toEqual([240, 120]);
    expect(part.limbs).toMatchObject([{ partialRestrictionTime: { value: 60 }, pressureTime: { value: 240 } }]);
    expect(codes(expandDocument(part).items[0]!.restTarget!.cautions)).not.toContain('percent-below-usual');
    const events = part.session.timeline.events.filter(({ event }) => event === 'lower' || event === 'inflate');
    expect(events.map(({ pressureMmHg }) => pressureMmHg)).toEqual([100, 40, 100, 40, 100]);
  });

  // Worked by hand: each side 10 × 4 s a set; between two sets of one side 40 s of the other, 2 × 5 s to change, 30 s rest
  // – that is 5 + 40 + 30 = 75 s, since one change lies before the other side’s set and the rest after it.
  it('takes sides in turn, and tells each limb its own rests', () => {
    const turns = planSession({
      ...person,
      exercises: [{ ...extension, scheme: '2x10', side: 'left-then-right', changeS: 5 }],
    });
    expect(turns.items.map(({ side, sets }) => [side, sets[0]!.restS])).toEqual([
      ['left', 75],
      ['right', 75],
    ]);
    expect(turns.limbs.map(({ restrictionTime }) => restrictionTime.value)).toEqual([155, 155]);
    expect(turns.session.totals.repetitions.value).toBe(40);
    expect(turns.session.totals.sessionTime.value).toBe(200);
  });

  // Worked by hand: 10 × 4 s and 60 s of rest before 390 s; the cuff is up for the 390 s alone, and 75 repetitions count.
  it('plans a warm-up without the cuff', () => {
    const warm = plan({ ...extension, warmUp: [{ repetitions: 10, restS: 60 }] });
    expect(totalsOf(warm, 'sessionTime', 'restrictionTime', 'repetitions')).toEqual([490, 390, 75]);
    expect(warm.items[0]!.warmUp).toEqual([{ repetitions: 10, restS: 60 }]);
    // In turn: each side warms up while the other waits, 2 × (10 × 4 s) before the 60 s.
    const turns = planSession({
      ...person,
      exercises: [{ ...extension, side: 'left-then-right', warmUp: [{ repetitions: 10, restS: 60 }] }],
    });
    expect(turns.items.map(({ warmUp }) => warmUp![0]!.restS)).toEqual([100, 180]);
    expect(turns.session.totals.sessionTime.value).toBe(80 + 60 + 2 * 300 + 90);
  });

  // Worked by hand: 20 % of 110 kg is 22 kg; with a bar of 20 kg and pairs of 1.25 kg that is 22.5 kg.
  it('plans a last set to failure, which a range of repetitions does not judge', () => {
    const failing = plan({ ...extension, scheme: '30-15-15', lastSetToFailure: true });
    expect(failing.items[0]!.lastSetToFailure).toBe(true);
    for (const detail of ['full', 'brief'] as const) {
      expect(explain(failing, { detail })).toMatch(/30 – 15 – 15 repetitions, 30 s rest .*; the last set to failure/);
    }
    const assessed = (document: Plan) => reviewPlan(document).findings.map(({ measure }) => measure);
    expect(assessed(failing)).not.toContain('repetitions');
    expect(assessed(plan({ ...extension, scheme: '30-15-15' }))).toContain('repetitions');
    const record = recordOf(failing, [30, 15, 19], {}, { lastSetToFailure: true });
    expect(explain(record)).toContain('30-15-19 done, 30-15-15 planned; the last set to failure');
    expect(refusedAt(() => plan({ ...walk, lastSetToFailure: true }))).toEqual(['exercises.0.lastSetToFailure']);
    expect(refusedAt(() => plan({ ...extension, lastSetToFailure: false }))).toEqual(['exercises.0.lastSetToFailure']);
  });
});

describe('the whole session', () => {
  const exercises = [extension, { ...walk, restriction: 'intermittent' }] as const;

  // Worked by hand: 390 s, a pause of 200 s, 840 s.
  it('has a clock and totals of its own, with the pauses between exercises', () => {
    const both = planSession({ ...left, reperfusionS: 200, exercises });
    expect(both.session.timeline.durationS).toBe(1430);
    expect(both.session.totals).toMatchObject({
      sessionTime: { value: 1430 },
      restrictionTime: { value: 990 },
      // 200 s between the exercises and 4 rests of 60 s.
      reperfusionTime: { value: 440 },
      volumeLoad: { value: 1500 },
    });
    expect(both.session.totals).not.toHaveProperty('limbs');
    expect(both.assumptions).toEqual([]);
  });

  it('takes the usual pause where none is told, and says so', () => {
    const taken = planSession({ ...left, exercises });
    expect(codes(taken.assumptions)).toEqual(['reperfusion-taken']);
    expect(taken.session.timeline.durationS).toBe(390 + 180 + 840);
    const practice = { guideline: 'common-practice' } as const;
    expect(reviewPlan(taken, practice).notAssessed).toEqual(['reperfusion']);
    const short = planSession({ ...left, exercises: [{ ...extension, reperfusionS: 90 }, exercises[1]] });
    expect(codes(short.cautions)).toContain('reperfusion-short');
    const [finding] = reviewPlan(short, practice).findings;
    expect(finding).toMatchObject({ measure: 'reperfusion', found: 1.5, low: 3, severity: 'caution' });
  });

  const upTo = (max: number, min = 0) => fc.integer({ min, max });
  const walked: fc.Arbitrary<WalkedExercise> = fc.record({
    sets: fc.array(
      fc.oneof(
        fc.record({ repetitions: upTo(12, 1), rest: upTo(10), pressure: fc.constant(120) }),
        fc.record({ ticks: upTo(15, 1), rest: upTo(10), pressure: fc.constant(120) }),
      ),
      { minLength: 1, maxLength: 4 },
    ),
    tempo: fc.tuple(upTo(2, 1), upTo(1), upTo(2), upTo(1)),
    warmUp: fc.array(fc.record({ ticks: upTo(5, 1), rest: upTo(5) }), { maxLength: 2 }),
    restriction: fc.constantFrom('continuous', 'intermittent', 'partial', 'none'),
    side: fc.constantFrom<ExerciseSide>('left', 'right', 'both', 'left-then-right', 'right-then-left'),
    change: upTo(5),
    restPressure: fc.constant(50),
    before: fc.constant(0),
    after: fc.constant(0),
    pause: upTo(20),
  });
  const asked = (one: WalkedExercise, index: number): PlanExercise =>
    ({
      name: `exercise ${index}`,
      limb: 'leg',
      unloaded: true,
      sets: one.sets.map(({ repetitions, ticks, rest: restS }) => ({ repetitions, durationS: ticks, restS })),
      tempo: {
        eccentricS: one.tempo[0],
        bottomS: one.tempo[1],
        concentricS: one.tempo[2],
        topS: one.tempo[3],
      },
      ...(one.warmUp.length > 0 && {
        warmUp: one.warmUp.map(({ ticks, rest: restS }) => ({ durationS: ticks, restS })),
      }),
      restriction: one.restriction,
      side: one.side,
      ...(one.side.includes('then') && { changeS: one.change }),
      ...(one.restriction !== 'none' && { percentLop: 60 }),
      ...(one.restriction === 'partial' && { restPercentLop: 25 }),
      reperfusionS: one.pause,
    }) as PlanExercise;
  const value = (answer: Stated | undefined): number => Math.round((answer?.value ?? 0) * 1e6) / 1e6;

  // Source of the expected values: the walk through the clock, second by second, that knows no formula of the library.
  it('adds up as an independent simulation does, limb by limb', () => {
    fc.assert(
      fc.property(fc.array(walked, { minLength: 1, maxLength: 3 }), (exercises) => {
        const simulated = walkSession(exercises);
        const { session, limbs, items } = planSession({ ...person, exercises: exercises.map(asked) });
        expect(value(session.totals.sessionTime)).toBe(simulated.all);
        expect(value(session.totals.restrictionTime)).toBe(simulated.whole.full);
        expect(value(session.totals.repetitions)).toBe(simulated.repetitions);
        expect(value(session.totals.pressureTime) * 60).toBeCloseTo(
          simulated.left.pressure + simulated.right.pressure,
          3,
        );
        for (const { side, ...totals } of limbs) {
          const own = simulated[side];
          expect([value(totals.restrictionTime), value(totals.partialRestrictionTime)]).toEqual([
            own.full,
            own.partial,
          ]);
          const tension = items
            .filter((item) => item.side === side)
            .map(({ totals: of }) => value(of.timeUnderTension));
          expect(tension.reduce((all, one) => all + one, 0)).toBe(own.work);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('recordSession, beyond counted sets', () => {
  const record = (of: Plan, item: Done, more: object = {}) =>
    recordSession({
      plan: of,
      date: '2026-03-02',
      items: [{ exercise: of.items[0]!.exercise, limb: 'leg', side: 'left', ...item }],
      ...more,
    });

  // Worked by hand: 120 + 100 s of walking, 60 s of rest: 280 s up; 10 s before and 20 s after make it 310.
  it('records sets by time, an early start and a late deflation of the cuff', () => {
    const walked = record(plan(walk), {
      sets: [{ durationS: 120 }, { durationS: 100 }],
      heldMmHg: 90,
      inflatedBeforeS: 10,
      deflatedAfterS: 20,
    });
    expectPlainJson(walked);
    const { totals, done } = walked.items[0]!;
    expect(totals.restrictionTime.value).toBe(310);
    expect(totals.pressureTime!.value).toBe((310 * 90) / 60);
    expect(done).not.toHaveProperty('load');
    expect(codes(walked.assumptions)).toEqual(['tempo-not-recorded']);
    expect(explain(walked)).toContain('2 min – 100 s done, 2 min – 2 min – 2 min – 2 min – 2 min planned');
    expect(readDocument(JSON.parse(JSON.stringify(walked)))).toEqual(walked);
  });

  // Worked by hand: effort 6 for 25 min is 150 AU (J Strength Cond Res 2001;15(1):109–115: rating × minutes).
  it('has a session load where effort and time are known, and none where one is not', () => {
    const sets = [{ durationS: 120 }];
    expect(record(plan(walk), { sets }, { sessionRpe: 6, sessionS: 1500 }).sessionLoad).toMatchObject({
      value: 150,
      unit: '{AU}',
    });
    expect(record(plan(walk), { sets }, { sessionRpe: 6 })).not.toHaveProperty('sessionLoad');
  });

  it('records the pressure of the rests', () => {
    const part = plan({ ...extension, scheme: '2x10', restriction: 'partial', restPercentLop: 20 });
    const sets = [{ repetitions: 10 }, { repetitions: 10 }];
    const held = record(part, { sets, heldMmHg: 90, restHeldMmHg: 30 });
    // 2 × 40 s at 90 mmHg and 30 s at 30 mmHg.
    expect(held.items[0]!.totals.pressureTime!.value).toBe((80 * 90 + 30 * 30) / 60);
    expect(refusedAt(() => record(part, { sets, heldMmHg: 30 }))).toEqual(['items.0.heldMmHg']);
    expect(refusedAt(() => record(plan(extension), { sets, restHeldMmHg: 30 }))).toEqual(['items.0.restHeldMmHg']);
  });

  it('is reviewed as a plan is, against the rows of its mode', () => {
    const long = record(plan(walk), { sets: [{ durationS: 1500 }], heldMmHg: 100 });
    expect(reviewPlan(long).findings).toMatchObject([{ measure: 'restriction-time', found: 25, high: 20 }]);
  });
});

describe('nextSession, beyond counted sets', () => {
  const propose = (of: Plan, item: Done, more: object = {}, request: object = {}) =>
    nextSession({
      plan: of,
      records: [
        recordSession({
          plan: of,
          date: '2026-03-02',
          items: [{ exercise: of.items[0]!.exercise, limb: 'leg', side: 'left', ...item }],
          ...more,
        }),
      ],
      rule: 'all-repetitions',
      ...request,
    }).items[0]!;

  it('raises nothing by a rule that counts repetitions where the sets are by time', () => {
    const item = propose(plan(walk), { sets: Array.from({ length: 5 }, () => ({ durationS: 120 })) });
    expect([item.action, codes(item.reasons)]).toEqual(['repeat', ['rule-counts']]);
    expect(item).not.toHaveProperty('load');
  });

  const { oneRepMax: _, percentOneRepMax: __, ...bare } = extension;
  const unloaded = plan({ ...bare, unloaded: true });
  const sets = [30, 15, 15, 15].map((repetitions) => ({ repetitions }));

  it('leaves a first load to the practitioner, raises pressure when asked to, and backs off without a load', () => {
    expect(codes(propose(unloaded, { sets }).reasons)).toContain('no-load-to-raise');
    const pressed = propose(unloaded, { sets }, {}, { nextPercentLop: 60 });
    expect([pressed.action, pressed.cuffMmHg]).toEqual(['raise-pressure', { from: 100, to: 120 }]);
    const back = propose(unloaded, { sets }, jointPain(0, 0, 2));
    expect([back.action, codes(back.reasons)]).toEqual(['back-off', ['pain-back-off-rose', 'fewer-sets']]);
  });

  // Worked by hand: a bar of 20 kg with one pair each of 1.25 and 5 kg makes 20, 22.5, 30 and 32.5 kg.
  it('knows the weights there are beside a load of one’s own', () => {
    const { oneRepMax: _, percentOneRepMax: __, ...bare } = extension;
    const moves = (weights: object) => {
      const own = plan({ ...bare, load: 20, ...weights });
      const back = propose(own, { sets }, jointPain(0, 0, 2));
      return [propose(own, { sets }).load?.to, back.load?.to];
    };
    expect(moves({ step: 2 })).toEqual([22, 18]);
    expect(moves({ available: [14, 20, 21] })).toEqual([21, 14]);
  });

  it('knows the weights that a bar makes', () => {
    const plates = [
      { mass: 1.25, count: 2 },
      { mass: 5, count: 2 },
    ];
    const at = (load: number) => plan({ ...extension, oneRepMax: { load }, bar: 20, plates });
    const up = (load: number) => propose(at(load), { sets }).load;
    expect([100, 112.5, 150].map(up)).toEqual([
      { from: 20, to: 22.5, unit: 'kg' },
      // 7.5 of 112.5 kg are 6.7 points: too far for one step.
      { from: 22.5, to: 22.5, unit: 'kg' },
      { from: 30, to: 32.5, unit: 'kg' },
    ]);
    const top = propose(at(162.5), { sets });
    expect([top.action, codes(top.reasons).slice(-2)]).toEqual([
      'raise-repetitions',
      ['no-heavier-load', 'repetitions-first'],
    ]);
    // One pair of 0.02 kg and any number of 200 kg: 20, 20.04, then 420 kg, far above.
    const wide = { bar: 20, plates: [{ mass: 0.02, count: 2 }, { mass: 200 }], percentOneRepMax: 10 };
    const onWide = (load: number) => propose(plan({ ...extension, ...wide, oneRepMax: { load } }), { sets }).load;
    expect(onWide(200)).toEqual({ from: 20, to: 20.04, unit: 'kg' });
    expect(onWide(200.4)).toEqual({ from: 20.04, to: 20.04, unit: 'kg' });
    const back = (load: number) => propose(at(load), { sets }, jointPain(0, 0, 2));
    expect(back(150).load).toEqual({ from: 30, to: 22.5, unit: 'kg' });
    expect(codes(back(100).reasons)).toEqual(['pain-back-off-rose', 'no-lighter-load', 'fewer-sets']);
  });
});

describe('trainingDays', () => {
  const walking = plan(walk);
  const session = (date: string, sessionRpe?: number, more: Partial<RecordRequest> = {}) =>
    recordSession({
      plan: walking,
      date,
      items: [{ exercise: 'walk', limb: 'leg', side: 'left', sets: [{ durationS: 300 }] }],
      ...(sessionRpe !== undefined && { sessionRpe, sessionS: 1200 }),
      ...more,
    });

  // Worked by hand, with 1 lb = 0.45359237 kg: the left leg 40 × 20 kg and 20 × 10 lb (90.718474 kg), the right 20 × 20.
  it('carries what each limb lifted into the week, with a cuff or without', () => {
    const { oneRepMax: _, percentOneRepMax: __, ...bare } = extension;
    const lifting = planSession({
      ...person,
      limbs: [left.limbs[0], { ...left.limbs[0], side: 'right' }],
      exercises: [
        { ...bare, side: 'both', load: 20, scheme: '2x10' },
        { ...bare, name: 'squat', side: 'left', load: 20, scheme: '2x10', restriction: 'none' },
        { ...bare, name: 'curl', side: 'left', load: 10, unit: 'lb', scheme: '2x10' },
      ],
    });
    const planned = lifting.limbs.map(({ side, volumeLoad }) => [side, volumeLoad?.value, volumeLoad?.unit]);
    expect(planned).toEqual([
      ['left', 890.718474, 'kg'],
      ['right', 400, 'kg'],
    ]);
    expect(explain(lifting, { detail: 'brief' })).toMatch(/right leg: .* in 1 exercise, volume load 400 kg/);
    const items = lifting.items.map(({ exercise, limb, side, sets }) => ({ exercise, limb, side, sets }));
    const [record, again] = [1, 2].map((sessionOfDay) =>
      recordSession({ plan: lifting, date: '2026-03-02', sessionOfDay, items, sessionRpe: 5, sessionS: 1200 }),
    ) as [SessionRecord, SessionRecord];
    expect(explain(record)).toMatch(/right leg: .*, volume load 400 kg/);
    const { limbs } = weekTotals({ days: trainingDays({ records: [record, again], from: '2026-03-02' }) });
    expect(limbs.map(({ side, volumeLoad }) => [side, volumeLoad?.value])).toEqual([
      ['left', 1781.436948],
      ['right', 800],
    ]);
  });

  // Four sets of 45 s at the full pressure, three rests of 45 s at the lower one: 315 s with the cuff inflated.
  it('count a cuff at either pressure in a day and in weeks', () => {
    const exercise = {
      name: 'leg extension',
      limb: 'leg',
      oneRepMax: { load: 60 },
      percentOneRepMax: 25,
      scheme: '4x15',
      tempo: { eccentricS: 2, concentricS: 1 },
      restS: 45,
      restriction: 'partial',
      restPercentLop: 20,
    } as const;
    const measured = { valueMmHg: 172, method: 'doppler' } as const;
    const plan = planSession({
      systolicMmHg: 118,
      diastolicMmHg: 74,
      posture: 'seated',
      limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, measured }],
      exercises: [exercise],
      sessionsPerWeek: 20,
    });
    // 20 × 315 s are 105 min; at the full pressure alone, 60 min.
    const long = plan.cautions.find(({ code }) => code === 'restriction-long-week');
    expect(long?.values?.['value']).toBe(105);
    const sets = Array.from({ length: 4 }, () => ({ repetitions: 15 }));
    const items = [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets }] as const;
    const record = recordSession({ plan, date: '2026-03-02', items, sessionRpe: 5, sessionS: 600 });
    expect(trainingDays({ records: [record], from: '2026-03-02' })[0]?.restrictedS).toEqual({ leftLeg: 315 });
    const [week] = compareWeeks({ weeks: [{ records: [record, { ...record, date: '2026-03-03' }] }] }).weeks;
    const limb = week?.done?.limbs[0];
    expect([limb?.restrictionTime.value, limb?.partialRestrictionTime?.value]).toEqual([360, 270]);
    expect(limb?.exercises[0]?.partialRestrictionTime?.value).toBe(270);
  });

  // Worked by hand: 20 min at an effort of 5 is 100 AU; twice on one day is 200 AU, 2 sessions and 600 s.
  it('adds up the records of seven days, whatever their order, and passes over other weeks', () => {
    const records = ['2026-03-04', '2026-03-08', '2026-03-02', '2026-03-02', '2026-03-01', '2026-03-09'];
    const days = trainingDays({
      records: records.map((date, index) => session(date, 5, { sessionOfDay: index + 1 })),
      from: '2026-03-02',
    });
    expect(days.map(({ loadAu }) => loadAu)).toEqual([200, 0, 100, 0, 0, 0, 100]);
    expect(days[0]).toEqual({
      loadAu: 200,
      sessions: 2,
      restrictedSessions: 2,
      restrictedS: { leftLeg: 600 },
      volumeKg: {},
    });
    expect(days[1]).toEqual({ loadAu: 0, sessions: 0, restrictedSessions: 0, restrictedS: {}, volumeKg: {} });
    // 28 and 29 March: the clocks of many countries change that night; days of the calendar do not.
    const spring = trainingDays({ records: [session('2026-03-30', 5)], from: '2026-03-28' });
    expect(spring.map(({ loadAu }) => loadAu)).toEqual([0, 0, 100, 0, 0, 0, 0]);
    expect(weekTotals({ days }).load.value).toBe(400);
  });
});
