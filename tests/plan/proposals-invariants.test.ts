import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import {
  expandDocument,
  nextRequest,
  nextSession,
  painRules,
  planSession,
  progressionRules,
  readDocument,
  recordSession,
  symptoms,
  type Plan,
  type PlanRequest,
  type ProgressionRequest,
  type Proposal,
  type ProposalItem,
  type RecordRequest,
  type SessionRecord,
} from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';

const RULES = progressionRules.map(({ id }) => id);
const PAIN_RULES = ['cautious', 'tendon-monitoring', 'front-of-knee'] as const;
const SITES = ['joint', 'tendon', 'under-cuff', 'muscle'] as const;
const MOMENTS = ['before', 'during', 'after', 'nextMorning'] as const;
const rarely = <T>(of: fc.Arbitrary<T>, freq = 5) => fc.option(of, { nil: undefined, freq });

const limb = fc.record({ percentLop: fc.constantFrom(40, 50, 60), valueMmHg: fc.integer({ min: 130, max: 260 }) });
const exercise = fc.record({
  side: fc.constantFrom(undefined, 'left', 'right', 'both', 'left-then-right'),
  percentOneRepMax: fc.integer({ min: 15, max: 80 }),
  restriction: fc.constantFrom('continuous', 'continuous', 'intermittent', 'partial', 'none'),
  weights: fc.constantFrom(
    { step: 1 },
    { step: 2.5 },
    { step: 5 },
    { available: [5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80] },
    {},
  ),
  knowsMaximum: fc.boolean(),
  scheme: fc.constantFrom('30-15-15-15', '3x10', '2x3'),
  lastSetToFailure: rarely(fc.constant(true as const)),
});
const pain = fc.record(
  {
    site: fc.constantFrom(...SITES),
    side: fc.constantFrom('left' as const, 'right' as const),
    ...Object.fromEntries(MOMENTS.map((moment) => [moment, fc.constantFrom(0, 0, 0, 1, 1, 2, 4, 6, 9)])),
  },
  { requiredKeys: ['site'] },
) as unknown as fc.Arbitrary<NonNullable<RecordRequest['pain']>[number]>;
const session = fc.record({
  day: fc.integer({ min: 1, max: 28 }),
  more: fc.integer({ min: -2, max: 3 }),
  heldShare: rarely(fc.constantFrom(0.8, 0.95, 1, 1.04, 1.5, 4), 2),
  pain: rarely(fc.array(pain, { maxLength: 2 }), 1),
  symptoms: rarely(
    fc.subarray(
      symptoms.map(({ code }) => code),
      { maxLength: 1 },
    ),
    1,
  ),
  sessionRpe: rarely(fc.integer({ min: 0, max: 10 }), 2),
  stoppedEarly: rarely(fc.constant(true), 1),
});
const asked = fc.record({
  rule: fc.constantFrom(...RULES),
  painRule: fc.constantFrom(undefined, ...PAIN_RULES),
  nextPercentLop: fc.constantFrom(undefined, 50, 60, 60, 70, 100),
  deload: rarely(fc.constant(true as const), 1),
});
const world = fc.record({
  limbs: fc.tuple(limb, limb),
  exercises: fc.array(exercise, { minLength: 1, maxLength: 3 }),
  sessions: fc.uniqueArray(session, { minLength: 1, maxLength: 3, selector: ({ day }) => day }),
  asked,
});
type World = typeof world extends fc.Arbitrary<infer W> ? W : never;

const request = ({ limbs, exercises }: World): PlanRequest =>
  ({
    systolicMmHg: 118,
    diastolicMmHg: 74,
    posture: 'seated',
    limbs: (['left', 'right'] as const).map((side, index) => ({
      limb: 'leg',
      side,
      cuffWidthCm: 12,
      gaugeStepMmHg: 1,
      percentLop: limbs[index]!.percentLop,
      measured: { valueMmHg: limbs[index]!.valueMmHg, method: 'doppler' },
    })),
    exercises: exercises.map(
      ({ side, percentOneRepMax, restriction, weights, knowsMaximum, scheme, lastSetToFailure }, index) => ({
        name: `exercise ${index + 1}`,
        limb: 'leg',
        ...(side && { side }),
        ...(knowsMaximum ? { oneRepMax: { load: 100 }, percentOneRepMax } : { load: percentOneRepMax }),
        ...weights,
        scheme,
        ...(lastSetToFailure && { lastSetToFailure }),
        tempo: { eccentricS: 2, concentricS: 1 },
        restS: 30,
        restriction,
        ...(restriction === 'partial' && { restPercentLop: 20 }),
      }),
    ),
  }) as PlanRequest;

const recordsOf = (plan: Plan, { sessions }: World): SessionRecord[] =>
  sessions.map(({ day, more, heldShare, stoppedEarly, ...felt }) =>
    recordSession({
      plan,
      date: `2026-03-${String(day).padStart(2, '0')}`,
      items: plan.items.map(({ exercise: name, limb: on, side, sets, target }) => ({
        exercise: name,
        limb: on,
        side,
        sets: sets.map(({ repetitions }) => ({ repetitions: repetitions! + more > 0 ? repetitions! + more : 1 })),
        lastSetToFailure: true,
        ...(heldShare && target && { heldMmHg: Math.min(1000, heldShare * target.value) }),
        ...(stoppedEarly && { stoppedEarly }),
      })),
      ...felt,
    }),
  );

const isUp = (change: { readonly from: number; readonly to?: number } | undefined): boolean =>
  change?.to !== undefined && change.to > change.from;
const isDown = (change: { readonly from: number; readonly to?: number } | undefined): boolean =>
  change?.to !== undefined && change.to < change.from;
const count = (sets: readonly { readonly repetitions?: number }[]): number =>
  sets.reduce((sum, { repetitions = 0 }) => sum + repetitions, 0);
const setsUp = ({ sets }: ProposalItem): boolean => sets !== undefined && count(sets.to) > count(sets.from);
const setsDown = ({ sets }: ProposalItem): boolean => sets !== undefined && count(sets.to) < count(sets.from);

/** Left for right and right for left, in any document. */
const mirrored = <T>(document: T): T =>
  JSON.parse(
    JSON.stringify(document, (key, value: unknown) =>
      key === 'side' ? (value === 'left' ? 'right' : value === 'right' ? 'left' : value) : value,
    ),
  ) as T;
const actionsOf = ({ items }: Proposal) =>
  Object.fromEntries(items.map((item) => [`${item.exercise} ${item.side}`, [item.action, item.load, item.cuffMmHg]]));

const checked = (
  check: (made: World, plan: Plan, records: SessionRecord[], proposal: Proposal, given: ProgressionRequest) => void,
) => {
  fc.assert(
    fc.property(world, (made) => {
      const plan = planSession(request(made));
      const records = recordsOf(plan, made);
      const given = { plan, records, ...made.asked };
      check(made, plan, records, nextSession(given), given);
    }),
    { numRuns: 60, seed: 20261128 },
  );
};

describe('any proposal', () => {
  it('raises one thing at a time on a limb, by small steps, and says what it does', () => {
    const seen = new Set<string>();
    checked((_made, plan, _records, { items }) => {
      for (const item of items) {
        const { action, load, percentLop, percentOneRepMax, cuffMmHg } = item;
        seen.add(action);
        const ups = [isUp(load), isUp(cuffMmHg), setsUp(item)];
        expect(ups.filter(Boolean).length).toBeLessThanOrEqual(1);
        expect([isUp(cuffMmHg), setsUp(item)]).toEqual([action === 'raise-pressure', action === 'raise-repetitions']);
        if (isUp(load)) expect(action).toBe('raise-load');
        if (action === 'back-off') {
          const open = load !== undefined && load.to === undefined;
          expect(isDown(load) || isDown(cuffMmHg) || setsDown(item) || open).toBe(true);
        } else expect([isDown(load), isDown(cuffMmHg), setsDown(item)]).toEqual([false, false, false]);
        if (percentLop?.to !== undefined) expect(percentLop.to - percentLop.from).toBeLessThanOrEqual(10);
        if (percentOneRepMax?.to !== undefined) {
          expect(percentOneRepMax.to - percentOneRepMax.from).toBeLessThanOrEqual(5 + 1e-9);
        } else if (load?.to !== undefined) expect(load.to).toBeLessThanOrEqual(1.1 * load.from + 1e-9);
      }
      for (const side of ['left', 'right'] as const) {
        const own = items.filter((item) => item.side === side);
        if (own.some(({ cuffMmHg }) => isUp(cuffMmHg))) {
          expect(own.filter((item) => isUp(item.load) || setsUp(item))).toEqual([]);
        }
      }
      // Both sides of one exercise share its load: it goes up on both or on neither.
      for (const { name } of plan.request.exercises) {
        const raised = items.filter((item) => item.exercise === name).map(({ action }) => action === 'raise-load');
        expect(new Set(raised).size).toBe(1);
      }
    });
    expect([...seen].sort()).toEqual([
      'back-off',
      'raise-load',
      'raise-pressure',
      'raise-repetitions',
      'repeat',
      'stop',
    ]);
  });

  it('stops for every stop and severe pain, and raises nothing after bad news', () => {
    checked((_made, plan, records, { items, stops }) => {
      const severe = records.some(({ pain: reports = [] }) =>
        reports.some((report) =>
          painRules.some(
            ({ sites, moments, stopFrom = Infinity }) =>
              sites.includes(report.site) && moments.some((moment) => (report[moment] ?? 0) >= stopFrom),
          ),
        ),
      );
      const reported = records.some((record) =>
        record.symptoms.some((code) => symptoms.find((row) => row.code === code)!.grade !== 'lower'),
      );
      const tooHigh = records.some((record) => record.items.some(({ done }) => (done.heldMmHg ?? 0) > 300));
      const stop = severe || reported || tooHigh;
      expect(stops.length > 0).toBe(stop);
      for (const item of items) {
        expect(item.action === 'stop').toBe(stop);
        if (stop) expect([item.load?.to, item.cuffMmHg?.to, item.sets]).toEqual([undefined, undefined, undefined]);
      }
      const [last] = [...records].sort((a, b) => (a.date < b.date ? 1 : -1));
      const bad =
        last!.symptoms.length > 0 ||
        last!.sessionRpe === 10 ||
        last!.items.some(({ done }) => done.stoppedEarly) ||
        (last!.pain ?? []).some(({ site, side, during = 0 }) => side === undefined && site !== 'muscle' && during > 7);
      if (bad) expect(items.filter(({ action }) => action.startsWith('raise'))).toEqual([]);
      // A cuff held clearly off the target raises nothing on its item.
      expandDocument(plan).items.forEach(({ target, occlusion }, index) => {
        const held = last!.items[index]!.done.heldMmHg;
        if (!target || held === undefined || Math.abs(held - target.value) <= 0.05 * occlusion!.value + 1e-9) return;
        expect(items[index]!.action).not.toMatch(/^raise/);
      });
    });
  });

  it('does not depend on the order of records, nor on which side is called left', () => {
    checked((made, plan, records, proposal, given) => {
      expect(nextSession({ ...given, records: [...records].reverse() })).toEqual(proposal);
      // Sides in turn are mirrored by the order of the turns, which is none of a proposal.
      if (made.exercises.some(({ side }) => side === 'left-then-right')) return;
      const other = planSession(mirrored(plan.request));
      const mirror = nextSession({
        ...given,
        plan: other,
        records: records.map((record, index) => {
          const { items: _, ...rest } = record;
          const { day, more: __, heldShare: ___, stoppedEarly: ____, ...felt } = made.sessions[index]!;
          return recordSession({
            plan: other,
            date: rest.date,
            items: mirrored(record.items).map(({ exercise: name, limb: on, side, done }) => ({
              exercise: name,
              limb: on,
              side,
              sets: done.sets.map(({ repetitions }) => ({ repetitions: repetitions! })),
              ...(done.heldMmHg !== undefined && { heldMmHg: done.heldMmHg }),
              stoppedEarly: done.stoppedEarly,
              lastSetToFailure: true,
            })),
            ...mirrored(felt),
          } as RecordRequest);
        }),
      });
      expect(actionsOf(mirrored(mirror))).toEqual(actionsOf(proposal));
    });
  });

  it('is read back as it was, prints without gaps, and makes a plan that a limb can take or is refused', () => {
    checked((_made, plan, _records, proposal) => {
      expect(readDocument(structuredClone(proposal))).toEqual(proposal);
      expect(explain(proposal)).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
      const next = attempt(nextRequest, { plan, proposal });
      if (!next.ok) return;
      expect(proposal.items.map(({ action }) => action)).not.toContain('stop');
      const after = planSession(next.value.request);
      for (const side of ['left', 'right'] as const) {
        const both = plan.items.flatMap((item, index) =>
          item.side === side ? [[item, after.items[index]!] as const] : [],
        );
        const pressed = both.some(([before, now]) => now.target && now.target.value > before.target!.value);
        const heavier = both.some(([before, now]) => now.load && now.load.value > before.load!.value + 1e-9);
        expect(pressed && heavier).toBe(false);
      }
    });
  });

  // The chain of proposals that are agreed to: work never goes up twice at once, and no step is larger than the limits
  // unless the repetitions that came before make up for it, which a reason says.
  it('comes to a heavier load in the end, and never by more work than before', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1, 2.5, 5),
        fc.constantFrom(10, 12.5, 15, 20),
        fc.constantFrom(25, 40, 80, undefined),
        fc.constantFrom('30-15-15-15', '3x10', '3-3-2-2-2'),
        fc.constantFrom('continuous' as const, 'none' as const),
        (step, load, maximum, scheme, restriction) => {
          const lifted = maximum
            ? { oneRepMax: { load: maximum }, percentOneRepMax: (100 * load) / maximum }
            : { load, oneRepMax: undefined, percentOneRepMax: undefined };
          let plan = planOf({ ...lifted, step, scheme, restriction });
          for (let session = 0; session < 30; session += 1) {
            const before = plan.items[0]!;
            const proposal = nextSession({
              plan,
              records: [
                recordOf(
                  plan,
                  before.sets.map(({ repetitions }) => repetitions!),
                ),
              ],
              rule: 'all-repetitions',
            });
            const item = proposal.items[0]!;
            expect([isUp(item.load), setsUp(item)].filter(Boolean).length).toBe(1);
            if (isUp(item.load)) {
              const { from, to } = item.load!;
              const points = maximum && (100 * (to! - from)) / maximum;
              const far = points === undefined ? to! > 1.1 * from + 1e-9 : points > 5 + 1e-9;
              const earned = item.reasons.some(({ code }) => code === 'load-step-earned');
              expect(earned).toBe(far);
              if (earned) expect(count(item.sets!.to) * to!).toBeLessThanOrEqual(count(item.sets!.from) * from + 1e-9);
              return;
            }
            plan = planSession(nextRequest({ plan, proposal }).request);
          }
          throw new Error('never heavier');
        },
      ),
      { numRuns: 60, seed: 20261128 },
    );
  });

  it('goes back by the step it went up by', () => {
    fc.assert(
      fc.property(fc.constantFrom(1, 2, 2.5, 5), fc.integer({ min: 4, max: 15 }), (step, times) => {
        const at = (load: number) => planOf({ percentOneRepMax: load, step });
        const all = [30, 15, 15, 15];
        const go = (plan: Plan, more: object) =>
          nextSession({ plan, records: [recordOf(plan, all)], rule: 'all-repetitions', ...more }).items[0]!.load!.to!;
        const load = step * times;
        const up = go(at(load), {});
        expect(up).toBe(load + step);
        expect(go(at(up), { deload: true })).toBe(load);
      }),
      { numRuns: 30 },
    );
  });
});
