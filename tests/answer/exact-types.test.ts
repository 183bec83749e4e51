import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
  type Assumption,
  type AssumptionCode,
  type Caution,
  type CautionCode,
  type ReachedLoad,
  type ReachedPressure,
} from '../../src/index.js';
import type { SessionAssumption } from '../../src/answer/codes.js';
import { messages } from '../../src/text/index.js';
import { audiences } from '../../src/plan/index.js';

// Checked by the compiler: the run itself only looks at values where there are some.
describe('the codes', () => {
  it('of cautions are literals, so that a misspelt one does not compile', () => {
    const isClosing = ({ code }: Caution): boolean => code === 'percent-closes-artery';
    // @ts-expect-error no such code
    const isMisspelt = ({ code }: Caution): boolean => code === 'percent-close-artery';
    const target = targetCuffPressure({ occlusion: 160, percentLop: 100 });
    expect(target.cautions.some(isClosing)).toBe(true);
    expect(target.cautions.some(isMisspelt)).toBe(false);
    expectTypeOf<Caution['code']>().toEqualTypeOf<CautionCode>();
    expectTypeOf<keyof typeof audiences>().toEqualTypeOf<CautionCode>();
  });

  it('of assumptions are literals: a switch over them is exhaustive', () => {
    const isOfClock = (code: SessionAssumption): boolean => {
      switch (code) {
        case 'clock-starts-with-inflation':
        case 'tempo-kept':
          return true;
        case 'one-limb-taken':
        case 'standard-deviation-sample':
        case 'standard-deviation-population':
        case 'standard-deviation-not-told':
        case 'sides-independent':
          return false;
      }
    };
    expect(isOfClock('tempo-kept')).toBe(true);
    expectTypeOf<SessionAssumption>().toExtend<AssumptionCode>();
    expectTypeOf<Assumption['code']>().toEqualTypeOf<AssumptionCode>();
  });

  it('of cautions have their sentence', () => {
    const codes: readonly string[] = Object.keys(audiences);
    expect(codes.filter((code) => !Object.hasOwn(messages, code))).toEqual([]);
  });
});

describe('what is reached', () => {
  const target = targetCuffPressure({
    occlusion: measuredOcclusionPressure({ valueMmHg: 160, method: 'doppler', limb: 'leg' }),
    percentLop: 50,
  });
  const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 100 }), percentOneRepMax: 30 });

  it('is typed by the kind of answer', () => {
    expectTypeOf(target.reached).toEqualTypeOf<ReachedPressure | undefined>();
    expectTypeOf(load.reached).toEqualTypeOf<ReachedLoad | undefined>();
    expectTypeOf<Answer<'session-time'>['reached']>().toEqualTypeOf<undefined>();
    expectTypeOf<Answer['reached']>().toEqualTypeOf<ReachedPressure | ReachedLoad | undefined>();
    expect([target.reached?.percentLop, load.reached?.percentOneRepMax]).toEqual([50, 30]);
  });

  it('has no field of the other kind', () => {
    // @ts-expect-error a cuff pressure is no percentage of a maximum
    expect(target.reached?.percentOneRepMax).toBeUndefined();
    // @ts-expect-error a load is no percentage of occlusion pressure, and closes nothing
    expect([load.reached?.percentLop, load.reached?.occlusionChancePercent]).toEqual([undefined, undefined]);
  });
});
