import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  attempt,
  sessionTotals,
  testedOneRepMax,
  type Prescription,
  type Restriction,
  type Session,
} from '../../src/index.js';

const counted = { scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30 } as const;
const { tempo, restS } = counted;
const cuffed = { restriction: 'continuous' } as const;
const oneRepMax = testedOneRepMax({ load: 60 });

/** What the function says of an exercise that does not compile: the compiler and the function exclude the same. */
const paths = (prescription: object): string[] => {
  const result = attempt(sessionTotals, prescription as unknown);
  return result.ok ? [] : result.issues.map(({ path }) => path.join('.'));
};

// Checked by the compiler; the run shows that the function refuses the same.
describe('an exercise', () => {
  it('is counted with a tempo, or timed', () => {
    const right = [
      { ...counted, ...cuffed },
      { ...cuffed, restS, tempo, sets: [{ repetitions: 30 }, { repetitions: 15 }] },
      { ...cuffed, restS, sets: [{ durationS: 60 }, { durationS: 60, repetitions: 20 }] },
      { ...cuffed, restS, scheme: '5x2min' },
      { ...cuffed, restS, scheme: '45s-30s', tempo },
    ] as const satisfies Prescription[];
    for (const one of right) expect(paths(one)).toEqual([]);
    // @ts-expect-error repetitions in notation, without a tempo
    const scheme: Prescription = { ...cuffed, restS, scheme: '30-15-15-15' };
    expect(paths(scheme)).toEqual(['tempo']);
    // @ts-expect-error repetitions set by set, without a tempo
    const sets: Prescription = { ...cuffed, restS, sets: [{ repetitions: 30 }] };
    expect(paths(sets)).toEqual(['tempo']);
    // @ts-expect-error one set of two without a time or a tempo
    const second: Prescription = { ...cuffed, restS, sets: [{ durationS: 60 }, { repetitions: 30 }] };
    expect(paths(second)).toEqual(['tempo']);
    // @ts-expect-error in notation and one by one
    const both: Prescription = { ...counted, ...cuffed, sets: [{ repetitions: 30 }] };
    expect(paths(both)).toEqual(['sets']);
    // @ts-expect-error no sets
    const neither: Prescription = { ...cuffed, restS, tempo };
    expect(paths(neither)).toEqual(['sets']);
  });

  it('has a cuff that is continuous, intermittent, partial or none', () => {
    const right = [
      { ...counted, restriction: 'continuous', pressureMmHg: 80, occlusionMmHg: 160, inflatedBeforeS: 10 },
      { ...counted, restriction: 'intermittent', pressureMmHg: 80, deflatedAfterS: 5 },
      { ...counted, restriction: 'partial', pressureMmHg: 80, restPressureMmHg: 40 },
      { ...counted, restriction: 'partial' },
      { ...counted, restriction: 'none', load: 20 },
    ] as const satisfies Prescription[];
    for (const one of right) expect(paths(one)).toEqual([]);
    // @ts-expect-error a pressure of the rests where the cuff stays as it is
    const held: Prescription = { ...counted, ...cuffed, pressureMmHg: 80, restPressureMmHg: 40 };
    expect(paths(held)).toEqual(['restPressureMmHg']);
    // @ts-expect-error a pressure without a cuff
    const pressure: Prescription = { ...counted, restriction: 'none', pressureMmHg: 80 };
    expect(paths(pressure)).toEqual(['pressureMmHg']);
    // @ts-expect-error an occlusion pressure without a cuff
    const occlusion: Prescription = { ...counted, restriction: 'none', occlusionMmHg: 160 };
    expect(paths(occlusion)).toEqual(['occlusionMmHg']);
    // @ts-expect-error a cuff inflated before, without a cuff
    const before: Prescription = { ...counted, restriction: 'none', inflatedBeforeS: 10 };
    expect(paths(before)).toEqual(['inflatedBeforeS']);
    // @ts-expect-error a cuff deflated later, without a cuff
    const after: Prescription = { ...counted, restriction: 'none', deflatedAfterS: 10 };
    expect(paths(after)).toEqual(['deflatedAfterS']);
  });

  it('is compared with a maximum, or has a share of it', () => {
    expect(paths({ ...counted, ...cuffed, load: 20, oneRepMax } satisfies Prescription)).toEqual([]);
    expect(paths({ ...counted, ...cuffed, load: 20, percentOneRepMax: 30 } satisfies Prescription)).toEqual([]);
    // @ts-expect-error a maximum, and a share that follows from it
    const both: Prescription = { ...counted, ...cuffed, load: 20, oneRepMax, percentOneRepMax: 30 };
    expect(paths(both)).toEqual(['percentOneRepMax']);
  });

  it('is refused in a session too', () => {
    // @ts-expect-error repetitions without a tempo
    const session: Session = { exercises: [{ ...cuffed, scheme: '30-15-15-15', restS }] };
    expect(paths(session)).toEqual(['exercises.0.tempo']);
  });
});

describe('what the function takes', () => {
  it('compiles with fields left undefined, spread, changed or made by map', () => {
    const left = { load: undefined, oneRepMax: undefined, sets: undefined, pressureMmHg: undefined } as const;
    const held: Prescription = { ...counted, ...left, restriction: 'none' };
    const slower: Prescription = { ...held, restS: 45 };
    const made: Session = { exercises: [20, 25].map((load) => ({ ...counted, ...cuffed, load })), reperfusionS: 180 };
    const sets = [30, 15].map((repetitions) => ({ repetitions }));
    const mapped: Prescription = { ...cuffed, sets, tempo, restS };
    for (const one of [held, slower, made, mapped]) expect(paths(one)).toEqual([]);
    const again: Session = { ...made, exercises: made.exercises.map((one) => ({ ...one, restS: 45 })) };
    expect(paths(again)).toEqual([]);
  });

  it('compiles with a choice that is made later', () => {
    const later = (restriction: Restriction): Prescription => ({ ...counted, restriction });
    expect(paths(later('none'))).toEqual([]);
    expectTypeOf(later).returns.toEqualTypeOf<Prescription>();
  });
});
