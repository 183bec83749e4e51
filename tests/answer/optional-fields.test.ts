import { describe, expect, expectTypeOf, it } from 'vitest';
import type { Loose } from '../../src/answer/defined.js';
import { inputFields } from '../../src/index.js';
import type * as root from '../../src/index.js';
import type * as plan from '../../src/plan/index.js';
import { publicFunctions } from '../support/public-functions.js';

type InputOf<F> = F extends (input: infer I, ...more: never[]) => unknown ? I : never;
/** Whether `undefined` will do for every field of an input that may be left out. */
type Lenient<F> = Loose<InputOf<F>> extends InputOf<F> ? true : false;

// Checked by the compiler, under `exactOptionalPropertyTypes`.
describe('a field that may be left out', () => {
  it('may be undefined by its type', () => {
    expectTypeOf<Lenient<typeof root.estimateOcclusionPressure>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.compareOcclusionEquations>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.measuredOcclusionPressure>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.calibrateOcclusionPressure>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.correctForCuffWidth>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.correctForPosture>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.correctForBladderWidth>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.withinFittedRange>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.targetCuffPressure>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.testedOneRepMax>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.estimateOneRepMax>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.compareOneRepMaxEquations>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.trainingLoad>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.loadPlates>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.bodyMassLoad>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.estimateRelativeLoad>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.percentAtRepetitions>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.repetitionsAtPercent>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.sessionTotals>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.sessionTimeline>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof root.weekTotals>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof plan.planSession>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof plan.recordSession>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof plan.nextSession>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof plan.screen>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof plan.checkDay>>().toEqualTypeOf<true>();
    expectTypeOf<Lenient<typeof plan.compareWeeks>>().toEqualTypeOf<true>();
  });

  it.each(Object.entries(publicFunctions).filter(([, { call, open }]) => 'input' in call && !open))(
    'is as if it were left out where it is undefined: %s',
    (_name, { call, right }) => {
      const left = inputFields(call as never, right).filter(({ name }) => !Object.hasOwn(right, name));
      const blank = Object.fromEntries(left.map(({ name }) => [name, undefined]));
      expect(call({ ...right, ...blank } as never)).toEqual(call(right as never));
    },
  );
});
