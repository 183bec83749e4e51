import Decimal from 'decimal.js';
import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  sessionTotals,
  estimateOneRepMax,
  testedOneRepMax,
  type Answer,
  type Prescription,
  type Session,
  type SessionInput,
} from '../../src/index.js';
import { explain, working } from '../../src/text/index.js';
import { expectPlainJson } from '../support/answers.js';
import { session as anySession } from '../support/arbitraries.js';
import { issuesOf } from '../support/refused.js';

const tempo = '2-0-2-0';
const leg = { limb: 'leg', side: 'left' } as const;
const base = { scheme: '3x10', tempo, restS: 30, restriction: 'continuous', ...leg } as const satisfies Prescription;
const codes = (given: SessionInput) => sessionTotals(given).cautions.map(({ code }) => code);
const issues = (given: object) => issuesOf(sessionTotals, given);

/** Answers anywhere in a piece of JSON. */
function answersIn(value: unknown): Answer[] {
  if (typeof value !== 'object' || value === null) return [];
  if ('kind' in value && 'equation' in value) return [value as Answer];
  return Object.values(value).flatMap(answersIn);
}

/** Decimals of a thousandth, as people give loads and times. */
const thousandths = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
const plainExercise = fc
  .record({
    sets: fc.array(
      fc.record({ repetitions: fc.integer({ min: 1, max: 40 }), load: thousandths(1, 200), restS: thousandths(0, 90) }),
      { minLength: 1, maxLength: 5 },
    ),
    tempo: fc.record({ eccentricS: thousandths(0.5, 4), concentricS: thousandths(0.5, 4) }),
    restriction: fc.constantFrom('continuous' as const, 'intermittent' as const, 'partial' as const, 'none' as const),
    side: fc.constantFrom('left', 'right', 'both', 'left-then-right', 'right-then-left'),
  })
  .map((part) => ({ ...part, limb: 'leg', restS: 0 }) as Prescription);
const plainSession: fc.Arbitrary<Session> = fc.record({
  exercises: fc.array(plainExercise, { minLength: 1, maxLength: 5 }),
  reperfusionS: thousandths(0, 300),
});

const exactSum = (values: readonly number[]): number =>
  values.reduce((total, value) => total.plus(value), new Decimal(0)).toNumber();

describe('sessionTotals, several exercises', () => {
  it('answers any session in plain JSON, and explains every total', () => {
    fc.assert(
      fc.property(anySession, (given) => {
        const totals = sessionTotals(given);
        expectPlainJson(totals);
        for (const answer of answersIn(totals)) expect(explain(answer)).not.toMatch(/undefined|NaN|\[object/);
      }),
      { numRuns: 60 },
    );
  });

  // Source of the sums: decimal.js on the parts, each accounted for on its own.
  it('is additive, exactly: the sum of the exercises is the session', () => {
    fc.assert(
      fc.property(plainSession, (given) => {
        const totals = sessionTotals(given);
        const alone = given.exercises.map((exercise) => sessionTotals(exercise));
        for (const name of ['repetitions', 'volumeLoad', 'timeUnderTension', 'restrictionTime'] as const) {
          expect(totals[name]!.value).toBe(exactSum(alone.map((part) => part[name]!.value)));
        }
        const partial = exactSum(alone.map((part) => part.partialRestrictionTime?.value ?? 0));
        expect(totals.partialRestrictionTime?.value ?? 0).toBe(partial);
        const pauses = given.exercises.slice(1).map(() => given.reperfusionS!);
        expect(totals.sessionTime.value).toBe(exactSum([...alone.map((part) => part.sessionTime.value), ...pauses]));
        for (const limb of totals.limbs) {
          const own = alone.flatMap((part) => part.limbs.filter(({ side }) => side === limb.side));
          for (const name of ['repetitions', 'timeUnderTension', 'restrictionTime'] as const) {
            expect(limb[name].value).toBe(exactSum(own.map((part) => part[name].value)));
          }
        }
        expect(totals.exercises.map((part) => part.totals.restrictionTime)).toEqual(
          alone.map((part) => part.restrictionTime),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('is additive over sets too', () => {
    fc.assert(
      fc.property(plainExercise, (given) => {
        const alone = given.sets!.map((set) => sessionTotals({ ...given, sets: [set] } as Prescription));
        const totals = sessionTotals(given);
        for (const name of ['repetitions', 'volumeLoad', 'timeUnderTension'] as const) {
          expect(totals[name]!.value).toBe(exactSum(alone.map((part) => part[name]!.value)));
        }
      }),
      { numRuns: 100 },
    );
  });

  // Source of the values: the formula of each answer with its inputs in it, evaluated by mathjs.
  it('has formulas that give its values', () => {
    const numberOf = (given: unknown): number =>
      typeof given === 'object'
        ? (given as Answer).value
        : typeof given === 'number'
          ? given
          : (evaluate(String(given).replaceAll('×', '*')) as number);
    const hundredths = fc.record({
      exercises: fc.array(
        fc.record({
          sets: fc.array(
            fc.record(
              {
                repetitions: fc.integer({ min: 1, max: 40 }),
                durationS: fc.integer({ min: 1, max: 200 }),
                load: fc.integer({ min: 1, max: 99 }),
              },
              { requiredKeys: ['repetitions', 'load'] },
            ),
            { minLength: 1, maxLength: 4 },
          ),
          warmUp: fc.array(fc.record({ repetitions: fc.integer({ min: 1, max: 9 }) }), { minLength: 1, maxLength: 2 }),
          tempo: fc.constantFrom('2-0-2-0', '1.5-0.5-1-0'),
          restS: fc.integer({ min: 0, max: 90 }),
          restriction: fc.constantFrom('continuous', 'intermittent', 'partial'),
          side: fc.constantFrom('left', 'both', 'right-then-left'),
          oneRepMax: fc.constantFrom(testedOneRepMax({ load: 100 }), testedOneRepMax({ load: 220, unit: 'lb' })),
          pressureMmHg: fc.integer({ min: 60, max: 300 }),
          occlusionMmHg: fc.integer({ min: 100, max: 300 }),
          inflatedBeforeS: fc.integer({ min: 0, max: 20 }),
          deflatedAfterS: fc.integer({ min: 0, max: 20 }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      reperfusionS: fc.integer({ min: 0, max: 300 }),
      sessionRpe: fc.integer({ min: 0, max: 10 }),
    });
    fc.assert(
      fc.property(hundredths, (given) => {
        const exercises = given.exercises.map((one) => ({
          ...one,
          limb: 'leg',
          ...(one.restriction === 'partial' && { restPressureMmHg: 40 }),
        }));
        for (const answer of answersIn(sessionTotals({ ...given, exercises } as Session))) {
          const scope = Object.fromEntries(
            Object.entries(working(answer)!.symbols).map(([symbol, field]) => [
              symbol,
              numberOf(answer.inputs[field as string]),
            ]),
          );
          // Lists show two decimals; parts in mmHg·min, and shares of a maximum, have more: half a hundredth each,
          // beside the roundings of doubles.
          const shown = Object.values(answer.inputs)
            .filter((input) => typeof input === 'string')
            .join()
            .split(' + ');
          const rounded = /pressure|relative/.test(answer.kind)
            ? 0.005 * shown.length + 1e-9 * answer.value
            : 1e-9 * answer.value;
          expect(Math.abs((evaluate(working(answer)!.formula, scope) as number) - answer.value)).toBeLessThanOrEqual(
            rounded,
          );
        }
      }),
      { numRuns: 100 },
    );
  });

  it('tells each limb apart', () => {
    const { limbs } = sessionTotals({
      exercises: [
        { ...base, side: 'both', pressureMmHg: { left: 80, right: 90 }, occlusionMmHg: { left: 160, right: 150 } },
        { ...base, scheme: '1x10', limb: 'arm', side: 'right', pressureMmHg: 60, occlusionMmHg: 120 },
      ],
      reperfusionS: 180,
    });
    // 3 × 40 s + 2 × 30 s = 180 s = 3 min; 80 × 3 = 240 mmHg·min, 50 % × 3; 90 × 3 = 270, 60 % × 3; 60 × 40 / 60 = 40.
    expect(
      limbs.map(({ limb, side, exercises, restrictionTime, pressureTime, relativePressureTime }) => [
        `${side} ${limb}`,
        exercises,
        restrictionTime.value,
        pressureTime?.value,
        relativePressureTime?.value,
      ]),
    ).toEqual([
      ['left leg', 1, 180, 240, 150],
      ['right leg', 1, 180, 270, 180],
      ['right arm', 1, 40, 40, 33.333333333333336],
    ]);
  });

  it('counts both sides where they take turns', () => {
    const turns = sessionTotals({ ...base, scheme: '2x10', side: 'left-then-right', changeS: 5, load: 20 });
    expect(turns.repetitions.value).toBe(40);
    expect(turns.volumeLoad?.value).toBe(800);
    // Left: 0 to 40 and 115 to 155; right: 45 to 85 and 160 to 200; each cuff is up over its own sets.
    expect(turns.limbs.map(({ restrictionTime }) => restrictionTime.value)).toEqual([155, 155]);
    expect(turns.restrictionTime.value).toBe(200);
    expect(turns.sessionTime.value).toBe(200);
  });

  it('leaves warm-up sets out of everything but the session time', () => {
    const plain = sessionTotals({ ...base, load: 20 });
    const warm = sessionTotals({ ...base, load: 20, warmUp: [{ repetitions: 10, restS: 60 }] });
    expect(warm.sessionTime.value - plain.sessionTime.value).toBe(100);
    expect({ ...warm, sessionTime: 0, exercises: 0 }).toEqual({ ...plain, sessionTime: 0, exercises: 0 });
  });

  it('takes a session as it was done: a set cut short, an early stop, a cuff let down late', () => {
    const done = sessionTotals({
      ...base,
      scheme: undefined,
      sets: [{ repetitions: 30 }, { repetitions: 9, durationS: 41 }],
      deflatedAfterS: 25,
    } as unknown as Prescription);
    expect(done.repetitions.value).toBe(39);
    expect(done.timeUnderTension.value).toBe(161);
    expect(done.restrictionTime.value).toBe(216);
  });

  it('carries the error of the maximum into the relative volume load', () => {
    const oneRepMax = testedOneRepMax({ load: 100 });
    const { relativeVolumeLoad, peakPercentOneRepMax } = sessionTotals({ ...base, load: 30, oneRepMax });
    expect(relativeVolumeLoad).toMatchObject({ value: 9, evidence: 'published' });
    expect(relativeVolumeLoad!.standardDeviation).toBeCloseTo(9 * 0.042, 12);
    expect(peakPercentOneRepMax).toMatchObject({ value: 30, evidence: 'published' });
    const inPounds = sessionTotals({ ...base, load: 45, unit: 'lb', oneRepMax });
    // 45 lb are 20.41165665 kg: exact by definition.
    expect(inPounds.peakPercentOneRepMax?.value).toBeCloseTo(20.41165665, 10);
    const estimated = estimateOneRepMax({ load: 20, repetitions: 8 });
    expect(sessionTotals({ ...base, load: 10, oneRepMax: estimated }).peakPercentOneRepMax?.evidence).toBe(
      estimated.evidence,
    );
  });

  it('adds pounds and kilograms as kilograms', () => {
    const exercises = [
      { ...base, load: 20 },
      { ...base, load: 45, unit: 'lb' as const },
    ];
    const { volumeLoad, peakLoad } = sessionTotals({ exercises, reperfusionS: 180 });
    expect(volumeLoad).toMatchObject({ value: 1212.3496995, unit: 'kg' });
    expect(peakLoad).toMatchObject({ value: 45, unit: '[lb_av]' });
  });

  it('leaves out what only some exercises have, and says so', () => {
    const exercises = [{ ...base, load: 20, pressureMmHg: 80 }, base];
    const totals = sessionTotals({ exercises, reperfusionS: 180 });
    expect(totals).not.toHaveProperty('volumeLoad');
    expect(totals).not.toHaveProperty('pressureTime');
    expect(totals.cautions.map(({ code }) => code)).toEqual(['total-left-out', 'total-left-out']);
    // A passive exercise lifts nothing, so it takes nothing away from the volume load.
    const passive = { scheme: '5min', restriction: 'continuous', mode: 'passive', ...leg } as const;
    expect(sessionTotals({ exercises: [exercises[0]!, passive], reperfusionS: 180 }).volumeLoad?.value).toBe(600);
  });

  // Limits: 10, 20 and 5 min (guideline review 2019, unconfirmed); 20 min a limb, 3 min between (practice).
  it('warns of long restriction by what is done, of short reperfusion, and of pressures above occlusion', () => {
    const interval = (scheme: `${number}min` | `${number}s`, mode: 'aerobic' | 'passive') =>
      ({ scheme, restS: 60, restriction: 'continuous', mode, ...leg }) as const;
    expect(codes(interval('20min', 'aerobic'))).toEqual([]);
    expect(codes(interval('1201s', 'aerobic'))).toEqual(['restriction-long-limb', 'restriction-long-aerobic']);
    expect(codes(interval('5min', 'passive'))).toEqual([]);
    expect(codes(interval('301s', 'passive'))).toEqual(['restriction-long-passive']);
    const ten = { ...base, scheme: undefined, sets: [{ durationS: 600 }] } as unknown as Prescription;
    const three = [ten, ten, { ...ten, side: 'right' as const }];
    expect(codes({ exercises: three.slice(0, 2), reperfusionS: 180 })).toEqual([]);
    expect(codes({ exercises: [...three, ten], reperfusionS: 180 })).toEqual(['restriction-long-limb']);
    expect(codes({ exercises: three, reperfusionS: 179 })).toEqual(['reperfusion-short']);
    expect(codes({ ...base, pressureMmHg: 161, occlusionMmHg: 160 })).toEqual(['pressure-above-occlusion']);
    expect(codes({ ...base, scheme: '3x45s', load: 10 })).toEqual(['timed-sets-no-volume']);
  });

  it('takes unnamed restriction as on one limb, and says so', () => {
    const { limb: _limb, side: _side, ...unnamed } = base;
    const { limbs } = sessionTotals({ exercises: [unnamed, unnamed], reperfusionS: 180 });
    expect(limbs).toHaveLength(1);
    expect(limbs[0]!.restrictionTime).toMatchObject({ value: 360, assumptions: [{ code: 'one-limb-taken' }] });
    expect(issues({ exercises: [unnamed, base], reperfusionS: 180 })).toEqual(['exercises.0.limb missing']);
  });
});

describe('notations', () => {
  const time = (given: object) => sessionTotals({ ...base, ...given }).timeUnderTension.value;
  it('reads the four-phase tempo', () => {
    expect(time({ tempo: '2020' })).toBe(120);
    expect(time({ tempo: '2/0/2/0' })).toBe(120);
    expect(time({ tempo: ' 3 - 1 - 1.5 - 0 ' })).toBe(165);
    expect(time({ tempo: '10-0-10-0' })).toBe(600);
    // As fast as possible has no time, but a set by the watch needs none.
    expect(time({ tempo: '30X0', scheme: undefined, sets: [{ repetitions: 10, durationS: 38 }] })).toBe(38);
  });
  it.each(['', '202', '2-0-2', '20200', '2-0-2-0-1', 'fast', '2,0,2,0', '-1-0-2-0', '61-0-1-0', '2-0-2-x1'])(
    'refuses the tempo "%s"',
    (wrong) => expect(issues({ ...base, tempo: wrong })).toEqual(['tempo wrong-type']),
  );
  it('refuses X where a time is needed, and a missing tempo', () => {
    expect(issues({ ...base, tempo: '30X0' })).toEqual(['tempo wrong-relation']);
    expect(issues({ ...base, tempo: undefined })).toEqual(['tempo missing']);
    expect(issues({ ...base, tempo: undefined, scheme: '3x45s' })).toEqual([]);
  });
});
