import { describe, expect, it } from 'vitest';
import { sessionTotals, sessionTimeline, testedOneRepMax } from '../../src/index.js';
import { CHAIN } from '../support/inputs.js';
import { codesOf, refusal, refusalPage, message } from '../support/invariants.js';

const TEMPO = { eccentricS: 2, concentricS: 2 } as const;
const LEFT_LEG = { limb: 'leg', side: 'left' } as const;
const account = (input: object) => sessionTotals(input as never);

describe('a timeline', () => {
  const events = (input: object) => sessionTimeline(input as never).events;
  it('of sets, rests and cuff', () => {
    const { assumptions, durationS } = sessionTimeline({ ...CHAIN, pressureMmHg: 80, ...LEFT_LEG });
    expect(message(assumptions)).toEqual([['tempo-kept'], ['clock-starts-with-inflation']]);
    expect(durationS).toBe(390);
    expect(events({ ...CHAIN, scheme: '2x5', pressureMmHg: 80, ...LEFT_LEG })).toEqual([
      { atS: 0, event: 'inflate', limb: 'leg', side: 'left', pressureMmHg: 80 },
      { atS: 0, event: 'set', limb: 'leg', side: 'left', set: 1, repetitions: 5, durationS: 20 },
      { atS: 20, event: 'rest', set: 1, durationS: 30 },
      { atS: 50, event: 'set', limb: 'leg', side: 'left', set: 2, repetitions: 5, durationS: 20 },
      { atS: 70, event: 'deflate', limb: 'leg', side: 'left' },
    ]);
    expect(sessionTimeline({ scheme: '1x60s', restriction: 'none' }).assumptions).toEqual([]);
  });
  it('of partial restriction, a warm-up, and sides in turn', () => {
    expect(
      events({
        sets: [{ durationS: 10 }, { durationS: 10 }],
        warmUp: [{ durationS: 5 }],
        restS: 20,
        restriction: 'partial',
        pressureMmHg: 100,
        restPressureMmHg: 40,
      }),
    ).toEqual([
      { atS: 0, event: 'set', set: 1, warmUp: true, durationS: 5 },
      { atS: 5, event: 'rest', set: 1, warmUp: true, durationS: 20 },
      { atS: 25, event: 'inflate', pressureMmHg: 100 },
      { atS: 25, event: 'set', set: 1, durationS: 10 },
      { atS: 35, event: 'lower', pressureMmHg: 40 },
      { atS: 35, event: 'rest', set: 1, durationS: 20 },
      { atS: 55, event: 'inflate', pressureMmHg: 100 },
      { atS: 55, event: 'set', set: 2, durationS: 10 },
      { atS: 65, event: 'deflate' },
    ]);
    expect(
      events({
        sets: [{ durationS: 10 }],
        restriction: 'intermittent',
        limb: 'arm',
        side: 'right-then-left',
        changeS: 4,
      }),
    ).toEqual([
      { atS: 0, event: 'inflate', limb: 'arm', side: 'right' },
      { atS: 0, event: 'set', limb: 'arm', side: 'right', set: 1, durationS: 10 },
      { atS: 10, event: 'deflate', limb: 'arm', side: 'right' },
      { atS: 10, event: 'rest', set: 1, durationS: 4 },
      { atS: 14, event: 'inflate', limb: 'arm', side: 'left' },
      { atS: 14, event: 'set', limb: 'arm', side: 'left', set: 1, durationS: 10 },
      { atS: 24, event: 'deflate', limb: 'arm', side: 'left' },
    ]);
  });
  it('of several exercises', () => {
    const interval = { sets: [{ durationS: 10 }], restriction: 'continuous' } as const;
    const { events: found, assumptions } = sessionTimeline({
      exercises: [interval, { ...interval, restriction: 'none' }, interval],
      reperfusionS: 60,
    });
    expect(found).toEqual([
      { atS: 0, event: 'inflate', exercise: 1 },
      { atS: 0, event: 'set', exercise: 1, set: 1, durationS: 10 },
      { atS: 10, event: 'deflate', exercise: 1 },
      { atS: 10, event: 'reperfuse', exercise: 1, durationS: 60 },
      { atS: 70, event: 'set', exercise: 2, set: 1, durationS: 10 },
      { atS: 80, event: 'rest', exercise: 2, durationS: 60 },
      { atS: 140, event: 'inflate', exercise: 3 },
      { atS: 140, event: 'set', exercise: 3, set: 1, durationS: 10 },
      { atS: 150, event: 'deflate', exercise: 3 },
    ]);
    expect(codesOf(assumptions)).toEqual(['clock-starts-with-inflation', 'one-limb-taken']);
  });
});

describe('a prescription is refused', () => {
  const ok = { ...CHAIN };
  const set = { sets: [{ repetitions: 5 }], tempo: TEMPO, restriction: 'continuous' };
  it('is refused, as the golden page says', async () => {
    const cases = {
      'neither scheme nor sets': { ...ok, scheme: undefined },
      both: { ...ok, sets: [{ repetitions: 5 }] },
      'no scheme at all': { ...ok, scheme: 'to failure' },
      'a set of nothing': { ...set, sets: [{}] },
      'no rest': { ...ok, restS: undefined },
      'no tempo': { ...ok, tempo: undefined },
      'no words for a tempo': { ...ok, tempo: 'slow' },
      'X where a time is needed': { ...ok, tempo: '30X0' },
      'a tempo of nothing': { ...ok, tempo: '0-0-0-0' },
      'a limb without side': { ...ok, limb: 'leg' },
      'a side without limb': { ...ok, side: 'left' },
      'half of body mass': { ...ok, bodyMassKg: 80 },
      'a change of sides without turns': { ...ok, changeS: 5 },
      'a load in some sets': { ...ok, scheme: undefined, sets: [{ repetitions: 5, load: 5 }, { repetitions: 5 }] },
      'a percentage of several loads': { ...set, sets: [{ repetitions: 5, load: 5 }], percentOneRepMax: 30 },
      'a percentage and a maximum': {
        ...ok,
        load: 20,
        percentOneRepMax: 30,
        oneRepMax: testedOneRepMax({ load: 100 }),
      },
      'a maximum without load': { ...ok, oneRepMax: testedOneRepMax({ load: 100 }) },
      'a bare maximum': { ...ok, load: 20, oneRepMax: 100 },
      'a pressure in some sets': {
        ...ok,
        scheme: undefined,
        sets: [{ repetitions: 5, pressureMmHg: 80 }, { repetitions: 5 }],
      },
      'a pressure without restriction': { ...ok, restriction: 'none', pressureMmHg: 80 },
      'an occlusion pressure without restriction': { ...ok, restriction: 'none', occlusionMmHg: 80 },
      'a cuff up before without restriction': { ...ok, restriction: 'none', inflatedBeforeS: 8 },
      'a cuff up after without restriction': { ...ok, restriction: 'none', deflatedAfterS: 8 },
      'pressures of sets without restriction': {
        ...set,
        sets: [{ repetitions: 5, pressureMmHg: 80 }],
        restriction: 'none',
      },
      'a lower pressure without partial restriction': { ...ok, pressureMmHg: 80, restPressureMmHg: 30 },
      'partial restriction without the lower one': { ...ok, restriction: 'partial', pressureMmHg: 80 },
      'the lower one alone': { ...ok, restriction: 'partial', restPressureMmHg: 30 },
      'a lower one not lower': { ...ok, restriction: 'partial', pressureMmHg: 80, restPressureMmHg: 80 },
      'a lower one not lower on one side': {
        ...ok,
        limb: 'leg',
        side: 'both',
        restriction: 'partial',
        pressureMmHg: { left: 80, right: 60 },
        restPressureMmHg: 70,
      },
      'sides of a pressure and no side': { ...ok, pressureMmHg: { left: 80, right: 90 } },
      'a time without a rating': { ...ok, sessionS: 900 },
      'no pause': { exercises: [ok, ok] },
      'a limb in one exercise': { exercises: [{ ...ok, ...LEFT_LEG }, ok], reperfusionS: 200 },
      'an empty name': { exercises: [{ ...ok, name: '' }] },
      'no exercises': { exercises: [] },
      'no list of sets': { ...set, sets: 5 },
      'no list of a warm-up': { ...ok, warmUp: [] },
      'half of a pressure': { ...ok, ...LEFT_LEG, pressureMmHg: { left: 80 } },
      'a fraction for a share': { ...ok, bodyMassKg: 80, bodyMassPercent: 0.67 },
      'a pressure in kPa': { ...ok, pressureMmHg: 10.7 },
      'a tempo with an X': { ...ok, tempo: '30X0' },
      'a tempo of no time': { ...ok, tempo: { eccentricS: 0, concentricS: 0 } },
      'no sets': { ...set, sets: [] },
      'a rest of the whole session': { exercises: [ok], restS: 30 },
    };
    await expect(refusalPage(sessionTotals, cases)).toMatchFileSnapshot('refused/sessions.txt');
  });
  it.each([
    [
      'the last rest may be left out',
      { sets: [{ repetitions: 5, restS: 9 }, { repetitions: 5 }], tempo: TEMPO, restriction: 'none' },
    ],
    ['a pause of its own', { exercises: [{ ...ok, reperfusionS: 200 }, ok] }],
    ['a name of 120 letters', { exercises: [{ ...ok, name: 'x'.repeat(120) }] }],
    ['sets by time need no tempo', { scheme: '2x10s', restS: 5, restriction: 'none', tempo: '30X0' }],
    [
      'an exercise without cuff needs no limb',
      {
        exercises: [
          { ...ok, ...LEFT_LEG },
          { ...ok, restriction: 'none' },
        ],
        reperfusionS: 0,
      },
    ],
    ['50 sets', { ...ok, scheme: '50x5' }],
    [
      'a lower pressure on the side that is used',
      { ...ok, ...LEFT_LEG, restriction: 'partial', pressureMmHg: { left: 80, right: 60 }, restPressureMmHg: 70 },
    ],
  ])('but %s', (_name, input) => {
    expect(refusal(sessionTotals, input)).toEqual([]);
  });
  it.each([
    '51x5',
    '0x5',
    '5x501',
    '3x',
    '7201s',
    '121min',
    '5x10s5',
    '5x10 s x',
    'x5',
    '',
    '30-',
    '-30',
    '30-0',
    '30/',
    '30//15',
    '30—15',
    '0x10',
    'to failure',
    '501',
    '60x10',
    '1e2',
    '2 min 30',
    '5x',
    'x5min',
    '0s',
    '5x0min',
    '45s-15',
    '51x10s',
  ])('no scheme: %s', (scheme) => {
    expect(refusal(sessionTotals, { ...ok, scheme }).map(([path, code]) => [path, code])).toEqual([
      ['scheme', 'wrong-type'],
    ]);
  });
  it.each([
    ['3 x 10', 30],
    ['3×10', 30],
    [' 30 - 15 ', 45],
    ['500', 500],
  ])('a scheme: %s', (scheme, repetitions) => {
    expect(account({ ...ok, scheme }).repetitions.value).toBe(repetitions);
  });
  it.each([
    ['7200s', 7200],
    ['120min', 7200],
    ['2 x 2 min', 240],
    ['45s - 1min', 105],
  ])('a scheme by time: %s', (scheme, seconds) => {
    expect(account({ scheme, restS: 0, restriction: 'none' }).sessionTime.value).toBe(seconds);
  });
  it.each([
    ['2-1-3-1', 7],
    ['2 / 0 / 2 / 0', 4],
    ['2020', 4],
    ['1.5-0-1.25-0', 2.75],
    ['60-0-0-0', 60],
  ])('a tempo: %s', (tempo, seconds) => {
    expect(account({ scheme: '1x10', tempo, restriction: 'none' }).sessionTime.value).toBe(10 * seconds);
  });
});
