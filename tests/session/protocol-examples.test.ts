import { describe, expect, it } from 'vitest';
import { sessionTotals, protocolExamples, type Prescription, type ProtocolExample } from '../../src/index.js';

const examples: readonly ProtocolExample[] = protocolExamples;
const accounted = (id: string, more: Partial<Prescription> = {}) => {
  const {
    scheme,
    restS = 0,
    tempo = '2-0-2-0',
    mode,
    restriction = 'continuous',
  } = examples.find((one) => one.id === id)!;
  return sessionTotals({ scheme, restS, tempo, mode, restriction, ...more } as Prescription);
};

describe('named examples', () => {
  it('stand in the order of their aims, each with a source unless it is practice', () => {
    const aims = examples.map(({ aim }) => aim);
    expect([...new Set(aims)]).toEqual(['rehabilitation', 'transition', 'performance']);
    for (const { id, evidence, source } of examples) expect(source === undefined, id).toBe(evidence === 'practice');
    expect(new Set(examples.map(({ id }) => id)).size).toBe(examples.length);
  });

  // Printed totals of J Exp Orthop 2022, Table 1 (doi 10.1186/s40634-022-00533-4): time under tension 375 s, 510 s in all.
  it('give the clock that the knee-repair trial prints, set by set', () => {
    const totals = accounted('knee-repair-75');
    expect(totals.timeUnderTension.value).toBe(375);
    expect(totals.sessionTime.value).toBe(510);
  });

  // Eur J Appl Physiol 2011;111:2525–2533: two restricted sessions and one heavy. J Strength Cond Res 2021;35:1449–1458:
  // one session a week, one set of an exercise, up to 32 weeks. No text of them that was read has the repetitions.
  it('have the mixed week and the weekly session without making up their sets', () => {
    const [mixed, weekly] = ['mixed-week', 'weekly-maintenance'].map((id) => examples.find((one) => one.id === id)!);
    expect([mixed!.sessionsPerWeek! - mixed!.heavySessionsPerWeek!, mixed!.heavySessionsPerWeek]).toEqual([2, 1]);
    expect([weekly!.sessionsPerWeek, weekly!.setsPerExercise, weekly!.weeks]).toEqual([1, 1, 32]);
    for (const one of [mixed!, weekly!]) expect([one.scheme, one.percentOneRepMax]).toEqual([undefined, undefined]);
  });

  // Read in the trials: 5 × 5 min with 3 min between; 5 × 2 min; 15 min unbroken; 30-15-15-15 of 4 s with 30 s rests;
  // 30 + 20 + 20 + 20 repetitions; 5 × 5 repetitions. By hand: 25, 10 and 15 min; 390 s; 90; 25.
  it('give the sums of the other trials', () => {
    expect(accounted('cast-passive').restrictionTime.value).toBe(25 * 60);
    expect(accounted('knee-osteoarthritis-passive').restrictionTime.value).toBe(10 * 60);
    expect(accounted('walking', { restriction: 'intermittent' }).restrictionTime.value).toBe(10 * 60);
    expect(accounted('cycling').longestRestriction.value).toBe(15 * 60);
    expect(accounted('clinical-75').sessionTime.value).toBe(390);
    expect(accounted('collegiate-light-supplement').repetitions.value).toBe(90);
    expect(accounted('rugby-heavy').repetitions.value).toBe(25);
    expect(accounted('in-season-2s-and-3s').repetitions.value).toBe(12);
  });
});
