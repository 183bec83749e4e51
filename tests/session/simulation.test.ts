import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  sessionTotals,
  sessionTimeline,
  type Answer,
  type ExerciseTotals,
  type LimbExposure,
  type Side,
} from '../../src/index.js';
import { asSession, replay, walkSession, type WalkedExercise } from '../support/session-walk.js';

const upTo = (max: number, min = 0) => fc.integer({ min, max });
const set = fc
  .record({
    repetitions: fc.option(upTo(12, 1), { nil: undefined }),
    ticks: upTo(15, 1),
    timed: fc.boolean(),
    rest: upTo(10),
    pressure: upTo(300, 60),
    load: upTo(200, 1),
  })
  .map(({ repetitions, ticks, timed, ...shared }) => ({
    ...shared,
    ...(repetitions !== undefined && { repetitions }),
    ...((timed || repetitions === undefined) && { ticks }),
  }));
const exercise: fc.Arbitrary<WalkedExercise> = fc.record({
  sets: fc.array(set, { minLength: 1, maxLength: 4 }),
  tempo: fc.tuple(upTo(2, 1), upTo(1), upTo(2), upTo(1)),
  warmUp: fc.array(fc.record({ ticks: upTo(5, 1), rest: upTo(5) }), { maxLength: 2 }),
  restriction: fc.constantFrom('continuous', 'intermittent', 'partial', 'none'),
  side: fc.constantFrom('left', 'right', 'both', 'left-then-right', 'right-then-left'),
  change: upTo(5),
  restPressure: upTo(59, 20),
  before: upTo(8),
  after: upTo(8),
  pause: upTo(20),
});
const session = fc.tuple(fc.array(exercise, { minLength: 1, maxLength: 4 }), fc.constantFrom(1, 0.1));

/** Ticks are whole numbers; what comes from tenths of seconds or sixtieths of minutes is brought back to them. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, part: unknown) => (typeof part === 'number' ? Math.round(part * 1e6) / 1e6 : part)),
  );

// Source of the expected values: a walk through the clock, tick by tick, that knows no formula of the library.
describe('an independent simulation, tick by tick', () => {
  it('gives the totals of sessionTotals on thousands of random sessions', () => {
    fc.assert(
      fc.property(session, ([exercises, tickS]) => {
        const walked = walkSession(exercises);
        const given = asSession(exercises, tickS);
        const totals = sessionTotals(given);
        const ticks = (answer: Answer | undefined) => (answer?.value ?? 0) / tickS;
        const cuff = (of: ExerciseTotals | LimbExposure) => ({
          full: ticks(of.restrictionTime),
          partial: ticks(of.partialRestrictionTime),
          longest: ticks(of.longestRestriction),
          reperfusion: ticks(of.reperfusionTime),
          pressure: ticks(of.pressureTime) * 60,
        });
        const limb = (side: Side) => {
          const own = totals.limbs.find((one) => one.side === side);
          return own ? { ...cuff(own), work: ticks(own.timeUnderTension) } : undefined;
        };
        const got = {
          all: ticks(totals.sessionTime),
          repetitions: totals.repetitions.value,
          volume: totals.volumeLoad?.value ?? 0,
          peak: totals.peakLoad?.value,
          work: ticks(totals.timeUnderTension),
          whole: cuff(totals),
          left: limb('left'),
          right: limb('right'),
        };
        const { cuffs: _, left, right, whole, ...clock } = walked;
        const want = {
          ...clock,
          // Pressure × time is told limb by limb and summed over limbs.
          whole: { ...whole, pressure: left.pressure + right.pressure },
          left: exercises.some(({ side }) => side !== 'right') ? left : undefined,
          right: exercises.some(({ side }) => side !== 'left') ? right : undefined,
        };
        expect(rounded(got)).toEqual(rounded(want));
        expect(ticks({ value: sessionTimeline(given).durationS } as Answer)).toBeCloseTo(walked.all, 8);
      }),
      { numRuns: 1500 },
    );
  });

  it('gives what the events of sessionTimeline tell the cuffs to do', () => {
    fc.assert(
      fc.property(session, ([exercises, tickS]) => {
        const { all, cuffs } = walkSession(exercises);
        const { events } = sessionTimeline(asSession(exercises, tickS));
        for (const side of ['left', 'right'] as const) {
          const told = replay(events, side, all, tickS).map(({ pressure }) => pressure);
          expect(told.join()).toBe(cuffs[side].map(({ pressure }) => pressure).join());
        }
        // Every cuff is down at the end, and events stand in order.
        const up = events.filter(({ event }) => event === 'deflate').length > 0;
        expect(up).toBe(exercises.some(({ restriction }) => restriction !== 'none'));
        expect(events.map(({ atS }) => atS)).toEqual(events.map(({ atS }) => atS).sort((a, b) => a - b));
      }),
      { numRuns: 500 },
    );
  });
});
