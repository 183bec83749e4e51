import { describe, expect, it } from 'vitest';
import { attempt, type Caution, type InputIssue } from '../../src/index.js';
import {
  applyDecisions,
  asOfDay,
  derivedStops,
  inForce,
  mergeStops,
  softened,
  stopsInForce,
  stopsMissing,
  stopsOf,
  type Stop,
  type StopDecision,
} from '../../src/plan/stops.js';

/** A decision of 2 March about severe pain. */
const decision = (more: Partial<StopDecision> = {}): StopDecision => ({
  stop: 'pain-severe',
  by: 'nurse',
  on: '2026-03-02',
  why: 'seen',
  ...more,
});
const stop = (more: Partial<Stop> = {}): Stop => ({ code: 'pain-severe', text: 'A.', ...more });
const caution = (more: Partial<Caution> = {}): Caution => ({
  severity: 'stop',
  code: 'pain-severe',
  text: 'A.',
  ...more,
});
const chestPain = { code: 'symptom-emergency', about: 'symptom-chest-pain' } as const;

describe('a stop from a caution', () => {
  it.each<[string, Partial<Caution>, Partial<Stop>]>([
    ['has its code and text alone', {}, {}],
    [
      'has its values and source',
      { values: { pain: 9 }, source: 'case-report-2016' },
      { values: { pain: 9 }, source: 'case-report-2016' },
    ],
    [
      'is about its symptom',
      { values: { symptom: 'symptom-fainting' } },
      { values: { symptom: 'symptom-fainting' }, about: 'symptom-fainting' },
    ],
    [
      'is on its limb',
      { values: { limb: 'arm', side: 'right' } },
      { values: { limb: 'arm', side: 'right' }, limb: 'arm', side: 'right' },
    ],
    [
      'takes no other values for a symptom or a limb',
      { values: { symptom: 3, limb: 'tail', side: 'both' } },
      { values: { symptom: 3, limb: 'tail', side: 'both' } },
    ],
  ])('%s', (_, given, expected) => {
    expect(stopsOf([caution(given)])).toStrictEqual([stop(expected)]);
  });

  it('has the day it is given; cautions and notes make none', () => {
    const milder = [caution({ severity: 'caution' }), caution({ severity: 'note' })];
    expect(stopsOf([...milder, caution()], '2026-03-01')).toStrictEqual([stop({ since: '2026-03-01' })]);
  });
});

describe('a stop is in force', () => {
  it.each<[string, Partial<Stop>, boolean]>([
    ['without a decision', {}, true],
    ['not with one about its code', { lifted: decision() }, false],
    ['not with one about its symptom', { ...chestPain, lifted: decision({ stop: 'symptom-chest-pain' }) }, false],
    ['with one about another stop', { lifted: decision({ stop: 'pregnancy' }) }, true],
    ['with one of the day before', { since: '2026-03-03', lifted: decision() }, true],
    ['not with one of its day', { since: '2026-03-02', lifted: decision() }, false],
    ['not with one of the day after', { since: '2026-03-01', lifted: decision() }, false],
  ])('%s', (_, given, isInForce) => {
    expect(inForce([stop(given)])).toHaveLength(isInForce ? 1 : 0);
  });

  it('on a day before its decision', () => {
    const lifted = stop({ lifted: decision() });
    expect(asOfDay([lifted], undefined)).toStrictEqual([lifted]);
    expect(asOfDay([lifted], '2026-03-02')).toStrictEqual([lifted]);
    expect(asOfDay([lifted], '2026-03-03')).toStrictEqual([lifted]);
    expect(asOfDay([lifted, stop()], '2026-03-01')).toStrictEqual([stop(), stop()]);
  });
});

describe('lists of stops', () => {
  const others: Partial<Stop>[] = [{ code: 'pregnancy' }, { since: '2026-03-01' }, { limb: 'arm' }, { side: 'left' }];

  it.each([...others, { about: 'x' }])('keep one with another %o next to those derived again', (other) => {
    expect(derivedStops([stop(other)], [stop()])).toStrictEqual([stop(), stop(other)]);
  });
  it('have one that was derived again once, as it was derived', () => {
    const changed = stop({ text: 'B.', values: { pain: 1 }, lifted: decision() });
    expect(derivedStops([changed], [stop()])).toStrictEqual([stop()]);
    expect(derivedStops([changed], [])).toStrictEqual([changed]);
  });

  it('get what their cautions have and they do not, by code', () => {
    const cautions = [caution(), caution({ code: 'pregnancy' }), caution({ code: 'pregnancy' })];
    expect(stopsMissing([stop({ text: 'B.' })], cautions)).toStrictEqual([stop({ code: 'pregnancy' })]);
    expect(stopsMissing([], [caution({ severity: 'caution' })])).toEqual([]);
  });

  it.each([...others, { values: { pain: 9 } }])('have both where one has another %o', (other) => {
    expect(mergeStops([stop(), stop(other)])).toStrictEqual([stop(), stop(other)]);
  });
  it('have a stop once, whatever its words and the order of its values', () => {
    const one = stop({ values: { pain: 9, site: 'joint' } });
    expect(mergeStops([one], [stop({ text: 'B.', values: { site: 'joint', pain: 9 } })])).toHaveLength(1);
  });
  it('have it lifted where one of them has', () => {
    const lifted = stop({ lifted: decision() });
    expect(mergeStops([stop()], [lifted])).toStrictEqual([lifted]);
    expect(mergeStops([lifted], [stop()])).toStrictEqual([lifted]);
    expect(mergeStops([stop({ lifted: decision({ stop: 'x' }) })], [stop()])).toStrictEqual([stop()]);
  });
});

describe('a caution', () => {
  const lifted = stop({ since: '2026-03-01', lifted: decision() });
  it.each<[string, Stop[], Caution['severity']]>([
    ['is a stop without stops', [], 'stop'],
    ['is a stop where the stops are others', [{ ...lifted, side: 'left' }], 'stop'],
    ['is a stop where its own is in force', [stop()], 'stop'],
    ['is a stop where one of its own is in force', [lifted, stop({ since: '2026-03-03' })], 'stop'],
    ['is softened where all of its own are lifted', [lifted, { ...lifted, since: '2026-03-02' }], 'caution'],
    ['is softened where others are in force', [lifted, stop({ code: 'pregnancy' })], 'caution'],
  ])('%s', (_, stops, severity) => {
    expect(softened([caution()], stops)).toStrictEqual([caution({ severity })]);
  });
  it('that is no stop stays as it is', () => {
    expect(softened([caution({ severity: 'note' })], [lifted])).toStrictEqual([caution({ severity: 'note' })]);
  });
});

describe('decisions', () => {
  const early = stop({ since: '2026-03-01' });
  const late = stop({ since: '2026-03-04' });
  const about = (symptom: string): Stop => stop({ code: 'symptom-emergency', about: symptom });

  it.each<[string, Stop[], Partial<StopDecision>, boolean[]]>([
    ['by its code', [stop(), stop({ code: 'pregnancy' })], {}, [true, false]],
    ['by its symptom', [about('x'), about('y')], { stop: 'y' }, [false, true]],
    ['of its own day', [early], { on: '2026-03-01' }, [true]],
    ['of no known day', [stop()], {}, [true]],
    ['on each limb', [stop({ limb: 'leg' }), stop({ limb: 'arm' })], {}, [true, true]],
    ['of the day that is named', [early, late], { on: '2026-03-05', since: '2026-03-04' }, [false, true]],
    ['that was there on the day of the decision', [late, early], {}, [false, true]],
  ])('lift a stop %s', (_, stops, more, lifts) => {
    const given = decision(more);
    expect(applyDecisions(stops, [given])).toStrictEqual(
      stops.map((one, index) => (lifts[index] ? { ...one, lifted: given } : one)),
    );
  });

  it('leave alone what was lifted before, and take the place of a decision that lifts nothing', () => {
    const before = stop({ lifted: decision({ why: 'before' }) });
    expect(applyDecisions([before], [decision()])).toStrictEqual([before]);
    const useless = stop({ lifted: decision({ stop: 'pregnancy' }) });
    expect(applyDecisions([useless], [decision()])).toStrictEqual([stop({ lifted: decision() })]);
    expect(applyDecisions([useless])).toStrictEqual([useless]);
  });

  const refusals: [string, Stop[], Partial<StopDecision>, string, string][] = [
    [
      'after the session',
      [stop()],
      { on: '2026-03-07' },
      'on',
      'not after 2026-03-06, the day of this session; received 2026-03-07',
    ],
    ['where nothing stops', [], {}, 'stop', 'left out: no stop is in force here; received "pain-severe"'],
    [
      'about another code',
      [about('x'), about('x'), early],
      { stop: 'y' },
      'stop',
      'the code of a stop here: x, pain-severe; received "y"',
    ],
    [
      'of another day',
      [early, stop()],
      { since: '2026-03-02' },
      'since',
      'the day of a stop of this code: 2026-03-01, –; received 2026-03-02',
    ],
    [
      'before the stop',
      [late, stop({ since: '2026-03-03' })],
      {},
      'on',
      'not before 2026-03-03, the day of the stop; received 2026-03-02',
    ],
    [
      'about several symptoms',
      [about('x'), about('y')],
      { stop: 'symptom-emergency' },
      'stop',
      'one of "x", "y"; received "symptom-emergency"',
    ],
  ];
  it.each(refusals)('are refused %s', (_, stops, more, field, expected) => {
    const issues = issuesOf(() => applyDecisions(stops, [decision(more)], '2026-03-06'));
    expect(issues.map(({ path, code }) => [path, code])).toEqual([[['decisions', 0, field], 'wrong-relation']]);
    expect(issues[0]!.message).toBe(`decisions[0].${field} must be ${expected}.`);
  });
  it('are refused without the day that tells two stops apart', () => {
    const issues = issuesOf(() => applyDecisions([stop(), late, early], [decision({ on: '2026-03-05' })]));
    expect(issues.map(({ path, code, requirement, received }) => ({ path, code, requirement, received }))).toEqual([
      {
        path: ['decisions', 0, 'since'],
        code: 'missing',
        requirement: { code: 'day-of-one-stop', values: { days: ['2026-03-01', '2026-03-04', '–'] } },
        received: 'undefined',
      },
    ]);
  });
  it('are refused each in its place', () => {
    const wrong = decision({ stop: 'x' });
    const issues = issuesOf(() => applyDecisions([stop()], [wrong, decision(), wrong]));
    expect(issues.map(({ path }) => path)).toEqual([
      ['decisions', 0, 'stop'],
      ['decisions', 2, 'stop'],
    ]);
  });
});

describe('stopsInForce', () => {
  it('leaves out what was lifted', () => {
    expect(stopsInForce({ stops: [stop({ lifted: decision() }), stop({ code: 'pregnancy' })] })).toStrictEqual([
      stop({ code: 'pregnancy' }),
    ]);
  });

  it.each<[string, unknown, string[]]>([
    ['a number', 5, ['the input must be a plan, a record, a review or a proposal, as plain JSON; received 5.']],
    ['no list', { stops: 1 }, ['stops must be a list of stops; received 1.']],
    [
      'a list of other things',
      { stops: [null, 'x', { code: 1 }, stop()] },
      [
        'stops[0] must be a stop, with its code; received null.',
        'stops[1] must be a stop, with its code; received "x".',
        'stops[2] must be a stop, with its code; received an object.',
      ],
    ],
  ])('refuses %s', (_, given, messages) => {
    const issues = issuesOf(() => stopsInForce(given as never));
    expect(issues.map(({ code }) => code)).toEqual(messages.map(() => 'wrong-type'));
    expect(issues.map(({ message }) => message)).toEqual(messages);
  });
});

function issuesOf(call: () => unknown): readonly InputIssue[] {
  const result = attempt(call as (input: undefined) => unknown, undefined);
  return result.ok ? [] : result.issues;
}
