import { describe, expect, it } from 'vitest';
import { explain } from '../../src/text/index.js';
import {
  compareSessions,
  lightenExercise,
  nextRequest,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  reviewPlan,
  type PlanExerciseFields,
  type RecordRequest,
} from '../../src/plan/index.js';
import { planOf } from '../support/plans.js';
import { issuesOf } from '../support/refused.js';

type Sets = NonNullable<PlanExerciseFields['sets']>;
const heavy = (sets: Sets, more: object = {}) =>
  planOf(
    { percentOneRepMax: 80, step: 2.5, sets, restS: 120, restriction: 'intermittent', ...more },
    { date: '2026-03-01' },
  );
const done = (
  plan: ReturnType<typeof heavy>,
  sets: NonNullable<RecordRequest['items']>[number]['sets'],
  item: object = {},
  more = {},
) =>
  recordSession({
    plan,
    date: '2026-03-02',
    items: [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets, ...item }],
    ...more,
  });
const stored = <T extends object>(document: T): T => readDocument(JSON.parse(JSON.stringify(document)) as T) as T;

// A performance session (`practice`): sets of 2 and 3, each with its load. By hand, with 1RM 100 kg:
// 3 × 80 + 3 × 80 + 2 × 77.5 + 2 × 75 + 2 × 75 = 240 + 240 + 155 + 150 + 150 = 935 kg.
const byTopSet = heavy([
  { repetitions: 3, repetitionsInReserve: 2 },
  { repetitions: 3, repetitionsInReserve: 1 },
  { repetitions: 2, percentOneRepMax: 77.5 },
  { repetitions: 2, percentOneRepMax: 75 },
  { repetitions: 2, load: 75, reserveRpe: 8 },
]);

describe('sets with loads of their own', () => {
  it('add up in a plan, with the heaviest as the peak', () => {
    const [item] = byTopSet.items;
    expect(item!.sets.map(({ load }) => load)).toEqual([80, 80, 77.5, 75, 75]);
    expect(item!.sets.map(({ repetitionsInReserve }) => repetitionsInReserve)).toEqual([
      2,
      1,
      undefined,
      undefined,
      undefined,
    ]);
    expect(item!.totals.volumeLoad?.value).toBe(935);
    expect(byTopSet.session.totals.peakLoad?.value).toBe(80);
    expect(byTopSet.session.totals.peakPercentOneRepMax?.value).toBe(80);
    expect(byTopSet.limbs[0]!.volumeLoad?.value).toBe(935);
    expect(stored(byTopSet)).toEqual(byTopSet);
    const page = explain(byTopSet);
    expect(page).toMatch(/^Loads, kg +80-80-77.5-75-75$/m);
    expect(page).toMatch(/^In reserve +2-1-–-–-–$/m);
    // Without loads of their own nothing is there.
    expect(planOf().items[0]!.sets[0]).not.toHaveProperty('load');
  });

  // By hand: 1 × 90 + 5 × 72 = 450 kg; 72 is brought down to 70 by steps of 5 kg: 1 × 90 + 5 × 70 = 440 kg.
  it('has a top set above the others, back-off sets below, and loaded warm-ups that count in nothing', () => {
    const plan = heavy(
      [
        { repetitions: 1, percentOneRepMax: 90 },
        { repetitions: 5, percentOneRepMax: 72 },
      ],
      {
        percentOneRepMax: 90,
        step: 5,
        restriction: 'none',
        warmUp: [
          { repetitions: 5, load: 40 },
          { repetitions: 3, percentOneRepMax: 60 },
        ],
      },
    );
    const [item] = plan.items;
    expect(item!.totals.volumeLoad?.value).toBe(440);
    expect(item!.warmUp!.map(({ load }) => load)).toEqual([40, 60]);
    expect(plan.session.totals.peakLoad?.value).toBe(90);
    expect(stored(plan)).toEqual(plan);
  });

  it('keep their loads on both sides, also in turn', () => {
    const limbs = (['left', 'right'] as const).map((side) => ({ limb: 'leg', side, cuffWidthCm: 10 }) as const);
    const sets = [{ repetitions: 3, load: 50 }, { repetitions: 5 }];
    const plan = planOf(
      { load: 40, oneRepMax: undefined, percentOneRepMax: undefined, restriction: 'none' },
      {
        limbs,
        exercises: [
          {
            name: 'leg press',
            limb: 'leg',
            side: 'left-then-right',
            load: 40,
            sets,
            restS: 60,
            tempo: '2-0-2-0',
            restriction: 'none',
          },
        ],
      },
    );
    expect(plan.items.map(({ sets: own }) => own.map(({ load }) => load))).toEqual([
      [50, 40],
      [50, 40],
    ]);
    // 3 × 50 + 5 × 40 = 350 kg a side.
    expect(plan.items.map(({ totals }) => totals.volumeLoad?.value)).toEqual([350, 350]);
  });

  it('are recorded set by set: dropped after a failed set, with reserve and effort', () => {
    const record = done(byTopSet, [
      { repetitions: 3, load: 80, repetitionsInReserve: 0 },
      { repetitions: 1, load: 80, reserveRpe: 10 },
      { repetitions: 2, load: 70 },
      { repetitions: 2, load: 70 },
    ]);
    // 240 + 80 + 140 + 140 = 600 kg.
    expect(record.items[0]!.totals.volumeLoad?.value).toBe(600);
    expect(record.items[0]!.done.sets[1]).toMatchObject({ load: 80, reserveRpe: 10 });
    expect(stored(record)).toEqual(record);
    expect(explain(record)).toMatch(/^Loads, kg +80-80-70-70$/m);
    const rows = compareSessions({ from: byTopSet, to: record }).rows;
    expect(rows.find(({ quantity }) => quantity === 'volumeLoad')?.change).toBe(600 - 935);
    // Sets left alone are taken as planned; one load for all of them overrides.
    const asPlanned = done(
      byTopSet,
      byTopSet.items[0]!.sets.map(({ repetitions }) => ({ repetitions })),
    );
    expect(asPlanned.items[0]!.totals.volumeLoad?.value).toBe(935);
    const lighter = done(byTopSet, [{ repetitions: 3 }, { repetitions: 3 }], { load: 70 });
    expect(lighter.items[0]!.totals.volumeLoad?.value).toBe(420);
    const codes = (load: number) => done(byTopSet, [{ repetitions: 3, load }]).cautions.map(({ code }) => code);
    expect(codes(82.5)).toContain('lifted-above-plan');
    expect(codes(80)).not.toContain('lifted-above-plan');
  });

  it('are reviewed by the heaviest', () => {
    const light = planOf({
      percentOneRepMax: 30,
      step: 2.5,
      scheme: undefined,
      sets: [{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }, { repetitions: 15, percentOneRepMax: 50 }],
    });
    const found = reviewPlan(light).findings.find(({ measure }) => measure === 'percent-of-maximum');
    expect(found).toMatchObject({ code: 'review-above', found: 50 });
    expect(light.cautions.map(({ code }) => code)).toContain('above-restricted-loads');
    const record = done(light, [{ repetitions: 30 }, { repetitions: 15, load: 60 }]);
    expect(reviewPlan(record).findings.find(({ measure }) => measure === 'percent-of-maximum')).toMatchObject({
      found: 60,
    });
  });

  it('hold the next session where another load was lifted, and go up together where it is raised', () => {
    const plan = heavy([{ repetitions: 3 }, { repetitions: 5, percentOneRepMax: 70 }], { restriction: 'none' });
    const propose = (sets: Parameters<typeof done>[1]) =>
      nextSession({ plan, records: [done(plan, sets)], rule: 'all-repetitions', date: '2026-03-05' });
    const dropped = propose([{ repetitions: 3 }, { repetitions: 5, load: 60 }]);
    expect(dropped.items[0]).toMatchObject({ action: 'repeat', reasons: [{ code: 'other-load-recorded' }] });
    const proposal = propose([{ repetitions: 3 }, { repetitions: 5 }]);
    expect(proposal.items[0]).toMatchObject({ action: 'raise-load', load: { from: 80, to: 82.5 } });
    const next = planSession(nextRequest({ plan, proposal }).request);
    expect(next.items[0]!.sets.map(({ load }) => load)).toEqual([82.5, 72.5]);
  });

  // By hand: 10 % less than 80, 77.5 and 75 kg is 72, 69.75 and 67.5, down to 70, and 67.5 twice (of 70 / 80).
  it('all get lighter', () => {
    const { options } = lightenExercise({ plan: byTopSet, exercise: 'leg extension', lighterPercent: 10 });
    const [same, work] = options;
    const loads = planSession(same!.request).items[0]!.sets.map(({ load }) => load);
    expect(loads).toEqual([70, 70, 67.5, 65, 65]);
    const volume = planSession(work!.request).items[0]!.totals.volumeLoad!.value;
    expect(volume).toBeGreaterThanOrEqual(935);
    expect(volume).toBeLessThan(935 + 70);
  });

  // A light set of 5 kg after one of 20 kg: 2.5 kg less, or 10 %, is below the lightest load that can be set.
  it('stay where they are when no load that can be set is lighter, in the next session and in every lighter option', () => {
    const sets = [{ repetitions: 15 }, { repetitions: 15, load: 5 }];
    const own = { oneRepMax: undefined, percentOneRepMax: undefined, step: undefined, load: 20 };
    const plan = heavy(sets, { ...own, available: [5, 17.5, 20], restriction: 'none' });
    const loadsOf = (request: Parameters<typeof planSession>[0]) =>
      planSession(request).items[0]!.sets.map(({ load }) => load);
    const proposal = nextSession({
      plan,
      records: [done(plan, sets, {}, { sessionRpe: 10, pain: [] })],
      rule: 'all-repetitions',
    });
    expect(proposal.items[0]).toMatchObject({ action: 'back-off', load: { from: 20, to: 17.5 } });
    expect(loadsOf(nextRequest({ plan, proposal }).request)).toEqual([17.5, 5]);
    const { options } = lightenExercise({ plan, exercise: 'leg extension', lighterPercent: 10 });
    expect(options.map(({ keeps }) => keeps)).toEqual(['sets', 'work', 'sets-with-cuff']);
    for (const { request } of options) expect(loadsOf(request)).toEqual([17.5, 5]);
    // By hand: 15 × 20 + 15 × 5 = 375 kg; 17 × 17.5 + 16 × 5 = 377.5 kg, and one repetition fewer is too few.
    expect(options[1]!.sets.map(({ repetitions }) => repetitions)).toEqual([17, 16]);
  });

  // 20 kg is the lower end of the range, and one set has 25 kg: both go down by the step of 2.5 kg.
  it('go down with the lower end of a range after a session that was as planned', () => {
    const sets = [{ repetitions: 15 }, { repetitions: 15, load: 25 }];
    const plan = heavy(sets, { percentOneRepMax: { from: 20, to: 35 } });
    const record = recordSession({ plan, date: '2026-03-02', asPlanned: true, sessionRpe: 10, pain: [] });
    const proposal = nextSession({ plan, records: [record], rule: 'all-repetitions' });
    expect(proposal.items[0]).toMatchObject({ action: 'back-off', load: { from: 20, to: 17.5 } });
    const next = planSession(nextRequest({ plan, proposal }).request);
    expect(next.items[0]!.sets.map(({ load }) => load)).toEqual([17.5, 22.5]);
  });

  it('names what does not go together', () => {
    const of = (sets: Sets, more: object = {}) => issuesOf(() => heavy(sets, more));
    expect(of([{ repetitions: 3, load: 80, percentOneRepMax: 80 }])).toEqual([
      'exercises.0.sets.0.percentOneRepMax wrong-relation',
    ]);
    const stated = { oneRepMax: undefined, percentOneRepMax: undefined, load: 60 };
    expect(of([{ repetitions: 3, percentOneRepMax: 80 }], stated)).toEqual([
      'exercises.0.sets.0.percentOneRepMax wrong-relation',
    ]);
    const bare = { oneRepMax: undefined, percentOneRepMax: undefined, step: undefined, unloaded: true };
    expect(of([{ repetitions: 3, load: 80 }], bare)).toEqual(['exercises.0.sets.0.load wrong-relation']);
    const unloaded = heavy([{ repetitions: 3 }], bare);
    expect(issuesOf(() => done(unloaded, [{ repetitions: 3, load: 5 }]))).toEqual([
      'items.0.sets.0.load wrong-relation',
    ]);
  });
});

describe('the day as it was', () => {
  it('has another exercise in the place of the planned one, and raises nothing after it', () => {
    const plan = planOf({ restriction: 'none' });
    const sets = [{ repetitions: 10 }];
    expect(issuesOf(() => done(plan, sets, { instead: 'leg press' }))).toEqual(['items.0.load missing']);
    const record = done(plan, sets, { instead: 'leg press', load: 60 });
    expect(record.items[0]!.totals.volumeLoad?.value).toBe(600);
    // The maximum of the planned exercise says nothing of this one.
    expect(record.items[0]!.totals).not.toHaveProperty('relativeVolumeLoad');
    expect(record.cautions.map(({ code }) => code)).not.toContain('lifted-above-plan');
    expect(stored(record)).toEqual(record);
    const page = explain(record);
    expect(page).toMatch(/^1\. LEG PRESS, LEFT LEG$/m);
    expect(page).toMatch(/^In place of +leg extension$/m);
    // The load of another exercise is no plan for this one.
    expect(page).toMatch(/^Load +60 kg done$/m);
    const proposal = nextSession({ plan, records: [record], rule: 'all-repetitions', date: '2026-03-05' });
    expect(proposal.items[0]!.reasons.map(({ code }) => code)).toContain('other-exercise-recorded');
  });

  it('has an exercise without a load in the place of the planned one', () => {
    const plan = planOf({ restriction: 'none' });
    const sets = [{ repetitions: 10 }];
    const record = done(plan, sets, { instead: 'leg raise', unloaded: true });
    const [item] = record.items;
    expect(item!.done).toMatchObject({ instead: 'leg raise', unloaded: true });
    expect(item!.done).not.toHaveProperty('load');
    expect(item!.totals.repetitions.value).toBe(10);
    expect(item!.totals).not.toHaveProperty('volumeLoad');
    expect(stored(record)).toEqual(record);
    expect(explain(record)).toMatch(/^Load +none$/m);
    expect(reviewPlan(record).findings).toEqual([]);
    const proposal = nextSession({ plan, records: [record], rule: 'all-repetitions', date: '2026-03-05' });
    expect(proposal.items[0]).toMatchObject({ action: 'repeat', load: { from: 20, to: 20 } });
    expect(proposal.items[0]!.reasons.map(({ code }) => code)).toContain('other-exercise-recorded');
    const of = (item: object, own = sets) => issuesOf(() => done(plan, own, item));
    expect(of({ unloaded: true })).toEqual(['items.0.unloaded wrong-relation']);
    expect(of({ instead: 'leg raise', unloaded: true, load: 5 })).toEqual(['items.0.load wrong-relation']);
    const loaded = [{ repetitions: 10, load: 5 }];
    expect(of({ instead: 'leg raise', unloaded: true }, loaded)).toEqual(['items.0.sets.0.load wrong-relation']);
    expect(of({ instead: 'leg raise', unloaded: false })).toEqual(['items.0.unloaded not-one-of']);
  });

  // A pull-up of all of 80 kg with 10 kg more is planned: of a plank in its place no body mass is lifted.
  it('counts no body mass of an exercise in which nothing is lifted', () => {
    const own = { oneRepMax: undefined, percentOneRepMax: undefined, load: 10, bodyMassPercent: 100 };
    const plan = planOf({ restriction: 'none', ...own }, { bodyMassKg: 80 });
    expect(plan.items[0]!.totals).toHaveProperty('bodyMassVolumeLoad');
    const record = done(plan, [{ repetitions: 10 }], { instead: 'plank', unloaded: true });
    expect(record.items[0]!.totals).not.toHaveProperty('bodyMassVolumeLoad');
    expect(stored(record)).toEqual(record);
  });

  // The share of body mass is that of the pull-up: of a pulldown of 50 kg in its place only the load counts, 500 kg.
  it('counts no body mass of an exercise in the place of one that moves it', () => {
    const own = { oneRepMax: undefined, percentOneRepMax: undefined, bodyMassPercent: 100 };
    const plan = planOf({ restriction: 'none', load: 10, ...own }, { bodyMassKg: 80 });
    const record = done(plan, [{ repetitions: 10 }], { instead: 'pulldown', load: 50 });
    expect(record.items[0]!.totals.volumeLoad?.value).toBe(500);
    expect(record.items[0]!.totals).not.toHaveProperty('bodyMassVolumeLoad');
    expect(stored(record)).toEqual(record);
    const bare = done(planOf({ restriction: 'none', ...own }, { bodyMassKg: 80 }), [{ repetitions: 10 }], {
      instead: 'band pull',
    });
    expect(bare.items[0]!.totals).not.toHaveProperty('bodyMassVolumeLoad');
  });

  // By hand: 100 of 160 mmHg is 62.5 %, of the planned 200 mmHg it is 50 %.
  it('has the occlusion pressure that was measured that day', () => {
    const plan = planOf();
    const sets = plan.items[0]!.sets.map(({ repetitions }) => ({ repetitions }));
    const record = done(plan, sets, { heldMmHg: 100, occlusionMmHg: 160 });
    const share = compareSessions({ from: plan, to: record }).rows.find(({ quantity }) => quantity === 'percentLop');
    expect([share!.from!.value, share!.to!.value]).toEqual([50, 62.5]);
    // As many mmHg as planned, but 12.5 points more: it is said, and nothing is raised.
    expect(record.cautions).toContainEqual(
      expect.objectContaining({
        severity: 'caution',
        code: 'held-share-above',
        values: expect.objectContaining({ held: 100, heldPercent: 62.5, occlusion: 160, percentLop: 50 }) as object,
      }),
    );
    const next = (one: typeof record) =>
      nextSession({ plan, records: [one], rule: 'all-repetitions', date: '2026-03-05' }).items[0]!;
    expect([next(record).action, next(record).reasons.map(({ code }) => code)]).toEqual([
      'repeat',
      ['hold-share-above'],
    ]);
    // Set to the pressure of the day: 80 of 160 mmHg is the 50 % of the plan, and 80 of 200 mmHg is 10 points less.
    const adapted = done(plan, sets, { heldMmHg: 80, occlusionMmHg: 160 });
    expect(adapted.cautions.map(({ code }) => code)).not.toContain('held-below-target');
    expect(next(adapted).action).toMatch(/^raise/);
    const low = done(plan, sets, { heldMmHg: 100, occlusionMmHg: 250 });
    expect(low.cautions.map(({ code }) => code)).toContain('held-share-below');
    expect(next(low).reasons.at(-1)!.code).toBe('hold-share-below');
    expect(done(plan, sets, { heldMmHg: 165, occlusionMmHg: 160 }).cautions.map(({ code }) => code)).toContain(
      'held-occludes',
    );
    expect(stored(record)).toEqual(record);
  });

  it('has its blood pressure, and stops where that is too high', () => {
    const plan = planOf();
    const record = done(plan, [{ repetitions: 30 }], {}, { systolicMmHg: 190, diastolicMmHg: 95 });
    expect(record.stops.map(({ code, since }) => [code, since])).toContainEqual(['blood-pressure-refer', '2026-03-02']);
    const usual = done(plan, [{ repetitions: 30 }], {}, { systolicMmHg: 122, diastolicMmHg: 78 });
    expect(usual.stops).toEqual([]);
    expect(explain(usual)).toContain('Blood pressure before: 122/78 mmHg');
    expect(stored(usual)).toEqual(usual);
    expect(issuesOf(() => done(plan, [{ repetitions: 30 }], {}, { systolicMmHg: 122 }))).toEqual([
      'diastolicMmHg missing',
    ]);
    expect(issuesOf(() => done(plan, [{ repetitions: 30 }], {}, { systolicMmHg: 80, diastolicMmHg: 90 })).length).toBe(
      1,
    );
  });

  it('shows the date and the notes of a plan', () => {
    const plan = planOf({}, { date: '2026-03-01', notes: 'Left shoulder sore since Saturday.' });
    expect(explain(plan)).toMatch(/2026-03-01.*\n.*Left shoulder sore since Saturday\./);
    expect(stored(plan)).toEqual(plan);
  });
});
