import { describe, expect, it } from 'vitest';
import { sessionTimeline, type ExerciseMode, type Prescription, type SessionInput } from '../../src/index.js';
import { exerciseCautions, isAtRest, sessionCountCautions, tally } from '../../src/session/exposure.js';
import type { FullPrescription, Restriction } from '../../src/session/prescription.js';
import { fullPrescription } from '../../src/session/read-session.js';
import { inSeconds, ofSide, scheduleExercise } from '../../src/session/schedule.js';
import { exercisePart } from '../../src/session/totals.js';
import { leg } from '../support/leg.js';

const timed = (sets: readonly number[], more: object = {}) =>
  leg({ scheme: undefined, tempo: undefined, restS: 0, sets: sets.map((durationS) => ({ durationS })), ...more });
const scheduled = (given: Prescription) => scheduleExercise(fullPrescription(given));
/** When the cuffs of an exercise are inflated, with their pressures: `0 to 110 full 80`. */
const told = (intervals: ReturnType<typeof scheduled>['any']) =>
  intervals.map(({ fromNs, toNs, state, pressureMmHg }) =>
    [inSeconds(fromNs), 'to', inSeconds(toNs), state, pressureMmHg].filter((part) => part !== undefined).join(' '),
  );
const cuffs = (given: Prescription) => scheduled(given).limbs.map(({ cuffIntervals }) => told(cuffIntervals));
const any = (given: Prescription) => told(scheduled(given).any);

describe('sessions at rest', () => {
  const of = (restriction: Restriction, mode: ExerciseMode) => ({ restriction, mode });
  it.each<[string, ReturnType<typeof of>[], boolean]>([
    ['nothing', [], false],
    ['at rest without a cuff', [of('none', 'passive')], false],
    ['at rest', [of('continuous', 'passive')], true],
    ['in work', [of('continuous', 'resistance')], false],
    ['in both', [of('continuous', 'passive'), of('intermittent', 'aerobic')], false],
    ['at rest, and work without a cuff', [of('continuous', 'passive'), of('none', 'resistance')], true],
  ])('%s', (_, exercises, expected) => {
    expect(isAtRest(exercises)).toBe(expected);
  });
  it('are not meant where the mode is left out', () => {
    expect(isAtRest([{ restriction: 'continuous' }])).toBe(false);
  });

  // guards: a note above 3 a week, a caution above 4, a stop above 14.
  it.each<[number, number, string | undefined]>([
    [3, 0, undefined],
    [4, 0, 'note sessions-above-usual 4'],
    [4, 1, undefined],
    [5, 0, 'caution sessions-many-week 5'],
    [6, 1, 'caution sessions-many-week 5'],
    [6, 2, 'note sessions-above-usual 4'],
    [14, 14, undefined],
    [15, 15, 'stop sessions-week-stop 15'],
    [15, 0, 'stop sessions-week-stop 15'],
  ])('%d a week, %d of them at rest', (sessions, atRest, expected) => {
    const facts = (path?: string[]) =>
      sessionCountCautions(sessions, atRest, path).map(({ severity, code, values, path: at }) => [
        `${severity} ${code} ${values!['value']}`,
        at,
      ]);
    expect(facts()).toEqual(expected ? [[expected, undefined]] : []);
    expect(facts(['week'])).toEqual(expected ? [[expected, ['week']]] : []);
  });
});

describe('the restriction of one exercise', () => {
  const inputs = (given: Prescription) => {
    const { restrictionTime, longestRestriction, partialRestrictionTime } = exercisePart(scheduled(given)).totals;
    return [restrictionTime, longestRestriction, partialRestrictionTime].map((one) => one && [one.value, one.inputs]);
  };
  const tempo = { eccentricS: 2, bottomS: 0, concentricS: 2, topS: 0 };
  const sets = { repetitionsPerSet: '10 + 10', ...tempo };
  const longest = (seconds: string) => ({ longestInterval: seconds });

  it('is shown as sets and rests', () => {
    const whole = { ...sets, rests: '30' };
    expect(inputs(leg())).toEqual([[110, whole], [110, whole], undefined]);
    expect(inputs(leg({ restriction: 'intermittent' }))).toEqual([
      [80, sets],
      [40, { longestSet: 10, ...tempo }],
      undefined,
    ]);
    expect(inputs(leg({ restriction: 'partial' }))).toEqual([
      [80, sets],
      [110, whole],
      [30, { rests: '30' }],
    ]);
    expect(inputs(leg({ restriction: 'none' }))).toEqual([[0, {}], [0, {}], undefined]);
    const one = { ...sets, repetitionsPerSet: '10' };
    expect(inputs(leg({ scheme: '1x10' }))).toStrictEqual([[40, one], [40, one], undefined]);
  });
  it('is shown as it is inflated and deflated around them', () => {
    const around = { inflatedBeforeS: '5', ...sets, rests: '30', deflatedAfterS: '7' };
    const given = { inflatedBeforeS: 5, deflatedAfterS: 7 };
    expect(inputs(leg(given))).toEqual([[122, around], [122, around], undefined]);
  });
  it.each<[string, object, number]>([
    ['inflated before', { inflatedBeforeS: 5 }, 45],
    ['deflated after', { deflatedAfterS: 5 }, 45],
    ['without a rest', { restS: 0 }, 80],
    [
      'of a set by the watch',
      { scheme: undefined, sets: [{ repetitions: 10 }, { repetitions: 8, durationS: 50 }] },
      50,
    ],
  ])('has a longest stretch that is no set of repetitions, %s', (_, more, seconds) => {
    expect(inputs(leg({ restriction: 'intermittent', ...more }))[1]).toEqual([seconds, longest(String(seconds))]);
  });
  it('is that of the clock where sides take turns', () => {
    const turns = (more: object) => leg({ side: 'left-then-right', restriction: 'intermittent', ...more });
    expect(inputs(turns({ changeS: 5 }))).toEqual([
      [160, { cuffIntervals: '40 + 40 + 40 + 40' }],
      [40, longest('40')],
      undefined,
    ]);
    expect(inputs(turns({}))).toEqual([[160, { cuffIntervals: '80 + 80' }], [80, longest('80')], undefined]);
  });
});

describe('an exercise warns', () => {
  const minutes = (given: Prescription) =>
    exerciseCautions(scheduled(given)).map(({ code, values }) => [code, values?.['minutes']]);
  it('of the longer side where they take turns', () => {
    // Left from 0 to 16 min and its last minute: 17 min. Right from 8 min to 18 min: 10 min.
    const turns = timed([480, 60], { side: 'left-then-right' });
    expect(minutes(turns)).toEqual([['restriction-long-exercise', 17]]);
    expect(minutes(timed([60, 480], { side: 'left-then-right' }))).toEqual([['restriction-long-exercise', 17]]);
  });
  // Guidance: 20 min of aerobic exercise in all, 5 min at a time at rest.
  it('of all of it in work, and of the longest stretch at rest', () => {
    const three = (mode: ExerciseMode, seconds: number) =>
      minutes(timed([seconds, seconds, seconds], { restS: 60, restriction: 'intermittent', mode }));
    expect([three('aerobic', 480), three('aerobic', 400)]).toEqual([[['restriction-long-aerobic', 24]], []]);
    expect([three('passive', 300), three('passive', 306)]).toEqual([[], [['restriction-long-passive', 5.1]]]);
  });
  it('of timed sets with a load', () => {
    const of = (...sets: object[]) => minutes(leg({ scheme: undefined, sets })).map(([code]) => code);
    const note = ['timed-sets-no-volume'];
    expect(of({ repetitions: 10, load: 20 }, { durationS: 45, load: 20 })).toEqual(note);
    expect(of({ durationS: 45, load: 20 })).toEqual(note);
    expect([
      of({ durationS: 45 }),
      of({ repetitions: 10, load: 20 }, { repetitions: 8, durationS: 40, load: 20 }),
    ]).toEqual([[], []]);
  });
});

describe('cuffs', () => {
  it('stay inflated, deflate in the rests, or go to the lower pressure', () => {
    const given = { pressureMmHg: 80 };
    expect(cuffs(leg(given))).toEqual([['0 to 110 full 80']]);
    expect(cuffs(leg({ ...given, restriction: 'intermittent' }))).toEqual([['0 to 40 full 80', '70 to 110 full 80']]);
    const partial = { ...given, restriction: 'partial', restPressureMmHg: 30 };
    expect(cuffs(leg(partial))).toEqual([['0 to 40 full 80', '40 to 70 partial 30', '70 to 110 full 80']]);
    expect(cuffs(leg({ ...partial, restS: 0 }))).toEqual([['0 to 80 full 80']]);
    expect([cuffs(leg({ restriction: 'none' })), any(leg({ restriction: 'none' }))]).toEqual([[[]], []]);
    expect(cuffs(leg({ ...given, inflatedBeforeS: 5, deflatedAfterS: 7 }))).toEqual([['0 to 122 full 80']]);
    expect(cuffs(leg({ ...given, scheme: '4x10', restriction: 'intermittent', restS: 0 }))).toEqual([
      ['0 to 160 full 80'],
    ]);
  });
  it('change pressure without a break', () => {
    const sets = [80, 100, 100].map((pressureMmHg) => ({ repetitions: 10, pressureMmHg }));
    const given = leg({ scheme: undefined, sets });
    expect(cuffs(given)).toEqual([['0 to 70 full 80', '70 to 180 full 100']]);
    expect(any(given)).toEqual(['0 to 180 full']);
  });
  it('of both sides are inflated where one of them is, at full pressure where one of them is', () => {
    const partial = { restriction: 'partial' } as const;
    const both = ['0 to 40 full', '40 to 70 partial', '70 to 110 full'];
    expect(any(leg({ ...partial, side: 'both' }))).toEqual(both);
    expect(any(leg(partial))).toEqual(both);
    // Left 0 to 40 and 110 to 150, right 40 to 80 and 150 to 190; each is lower in between.
    const turns = leg({ ...partial, side: 'left-then-right' });
    expect(cuffs(turns)[1]).toEqual(['40 to 80 full', '80 to 150 partial', '150 to 190 full']);
    expect(any(turns)).toEqual(['0 to 80 full', '80 to 110 partial', '110 to 190 full']);
  });
  it('add up', () => {
    const at = (fromNs: number, toNs: number, state: 'full' | 'partial' = 'full') => ({
      fromNs,
      toNs,
      state,
      pressureMmHg: undefined,
    });
    expect(tally([at(0, 4), at(4, 6, 'partial'), at(6, 7), at(9, 12), at(20, 21)])).toEqual({
      full: [4, 1, 3, 1],
      partial: [2],
      longest: 7,
      gaps: [2, 8],
    });
    expect(tally([])).toEqual({ full: [], partial: [], longest: 0, gaps: [] });
  });
});

describe('one side of an exercise', () => {
  const rests = ({ warmUp, sets }: FullPrescription) => [warmUp, sets].map((all) => all.map(({ restS }) => restS));
  it('rests while the other works', () => {
    const full = fullPrescription(
      leg({
        side: 'left-then-right',
        changeS: 5,
        warmUp: [{ repetitions: 5, restS: 60 }],
        inflatedBeforeS: 10,
        deflatedAfterS: 7,
      }),
    );
    // Warm-up left 0 to 20, right 25 to 45, a rest of 60 s, 10 s to inflate; left 115 to 155 and 230 to 270, right 160
    // to 200 and 275 to 315.
    const [left, right] = [ofSide(full, 'left'), ofSide(full, 'right')];
    expect([rests(left), rests(right)]).toEqual([
      [[85], [75, 0]],
      [[105], [75, 0]],
    ]);
    expect([left, right].map((one) => inSeconds(scheduleExercise(one).endNs))).toEqual([277, 297]);
    const bare = fullPrescription(leg({ side: 'right-then-left', restriction: 'none', warmUp: [{ repetitions: 5 }] }));
    // Right 0 to 20, left to 40, a rest of 30 s; right 70 to 110 and 180 to 220.
    expect(rests(ofSide(bare, 'right'))).toEqual([[50], [70, 0]]);
  });
  it('has its own pressures', () => {
    const pressures = {
      pressureMmHg: { left: 80, right: 90 },
      occlusionMmHg: { left: 160, right: 150 },
      restPressureMmHg: { left: 30, right: 20 },
    };
    const full = fullPrescription(leg({ side: 'both', restriction: 'partial', ...pressures }));
    const { sets, side, occlusionMmHg, restPressureMmHg } = ofSide(full, 'right');
    expect([sets.map(({ pressureMmHg }) => pressureMmHg), side, occlusionMmHg, restPressureMmHg]).toEqual([
      [90, 90],
      'right',
      150,
      20,
    ]);
    const plain = ofSide(fullPrescription(leg()), 'left');
    for (const name of ['occlusionMmHg', 'restPressureMmHg']) expect(plain).not.toHaveProperty(name);
    expect(plain.sets[0]).not.toHaveProperty('pressureMmHg');
  });
});

describe('a timeline', () => {
  const events = (given: SessionInput) =>
    sessionTimeline(given).events.map(({ atS, event, side, exercise, pressureMmHg }) =>
      [atS, event, exercise, side, pressureMmHg].filter((part) => part !== undefined).join(' '),
    );
  const one = { scheme: '1x10', pressureMmHg: 80 };
  const two = (more: object, reperfusionS: number) =>
    ({ exercises: [leg(one), leg({ ...one, ...more })], reperfusionS }) as SessionInput;

  it('leaves a cuff alone that stays inflated at its pressure', () => {
    expect(events(two({}, 0))).toEqual(['0 inflate 1 left 80', '0 set 1 left', '40 set 2 left', '80 deflate 2 left']);
    expect(events(two({ pressureMmHg: 100 }, 0))[2]).toBe('40 inflate 2 left 100');
    expect(events(two({ pressureMmHg: 60 }, 0))[2]).toBe('40 lower 2 left 60');
  });
  it('says at one moment first what deflates, then what ends, inflates and begins', () => {
    expect(events(two({ side: 'right' }, 0))).toEqual([
      '0 inflate 1 left 80',
      '0 set 1 left',
      '40 deflate 1 left',
      '40 inflate 2 right 80',
      '40 set 2 right',
      '80 deflate 2 right',
    ]);
    expect(events(two({}, 60)).slice(2, 6)).toEqual([
      '40 deflate 1 left',
      '40 reperfuse 1',
      '100 inflate 2 left 80',
      '100 set 2 left',
    ]);
    const partial = leg({ restriction: 'partial', pressureMmHg: 80, restPressureMmHg: 30 });
    expect(events(partial).slice(2, 4)).toEqual(['40 lower left 30', '40 rest']);
  });
  it('has only what is known', () => {
    const [inflate, first] = sessionTimeline(timed([45])).events;
    expect(inflate).toStrictEqual({ atS: 0, event: 'inflate', limb: 'leg', side: 'left' });
    expect(first).toStrictEqual({ atS: 0, event: 'set', limb: 'leg', side: 'left', set: 1, durationS: 45 });
    expect(sessionTimeline(timed([45])).durationS).toBe(45);
  });
  it('says what it assumes', () => {
    const assumed = (...exercises: Prescription[]) =>
      sessionTimeline({ exercises, reperfusionS: 60 }).assumptions.map(({ code }) => code);
    const unnamed = leg({ limb: undefined, side: undefined });
    const bare = leg({ restriction: 'none' });
    expect(assumed(bare, timed([45], { restriction: 'none' }))).toEqual(['tempo-kept']);
    expect(assumed(timed([45], { restriction: 'none' }))).toEqual([]);
    expect(assumed(leg(), leg())).toEqual(['tempo-kept', 'clock-starts-with-inflation']);
    expect(assumed(unnamed)).toEqual(['tempo-kept', 'clock-starts-with-inflation']);
    expect(assumed(unnamed, unnamed)).toEqual(['tempo-kept', 'clock-starts-with-inflation', 'one-limb-taken']);
  });
});
