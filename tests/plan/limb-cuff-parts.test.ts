// The setting of a limb’s cuff, from a pressure of 200 mmHg entered as a number or measured: p % of it is 2 p mmHg.
import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/answer/issues.js';
import { limbCuffOf, usesCuff, withWidth } from '../../src/plan/limb-cuff.js';
import type { PlanExercise, PlanLimb, PlanRequest } from '../../src/plan/index.js';
import { enteredPressure } from '../../src/pressure/held-pressure.js';
import { measuredOcclusionPressure } from '../../src/pressure/measured.js';
import { measuredAt, PERSON } from '../support/inputs.js';

const limbOf = (more: Partial<PlanLimb> = {}): PlanLimb => ({
  limb: 'leg',
  side: 'left',
  cuffWidthCm: 10,
  percentLop: 50,
  occlusion: 200,
  ...more,
});
const requestOf = (...exercises: readonly object[]): PlanRequest => ({
  ...PERSON,
  limbs: [],
  exercises: exercises as unknown as PlanExercise[],
});
const exercise = (more: object = {}) =>
  ({ name: 'press', limb: 'leg', restriction: 'continuous', ...more }) as unknown as PlanExercise;

const settingOf = (limb: PlanLimb, more: object = {}) => limbCuffOf(requestOf(), limb)(exercise(more));
/** What is refused: code, place, and what is asked for. */
const refused = (limb: PlanLimb, more: object = {}) => {
  const answer = attempt(() => settingOf(limb, more), undefined);
  return answer.ok
    ? []
    : answer.issues.map(({ code, path, requirement, received }) => [code, path.join('.'), requirement, received]);
};
const doppler = (more: object = {}) =>
  measuredOcclusionPressure({ ...measuredAt(200), limb: 'leg', side: 'left', posture: 'seated', ...more });

describe('the width of a cuff', () => {
  it('is that of the pressure the limb holds, unless one is given', () => {
    const { cuffWidthCm: _, ...limb } = limbOf();
    const held = { ...limb, occlusion: doppler({ cuffWidthCm: 12 }) };
    expect(withWidth(held).cuffWidthCm).toBe(12);
    expect(withWidth({ ...held, cuffWidthCm: 10 }).cuffWidthCm).toBe(10);
    for (const other of [limb, { ...limb, occlusion: doppler() }, { ...limb, occlusion: undefined }]) {
      expect(withWidth(other)).toBe(other);
    }
    expect(withWidth(null as never)).toBeNull();
  });
});

describe('a cuff is used', () => {
  const bare: PlanLimb = { limb: 'leg', side: 'left' };

  it('where any exercise of the limb has one', () => {
    expect(usesCuff(requestOf(exercise()), bare)).toBe(true);
    expect(usesCuff(requestOf(exercise({ restriction: 'none' }), exercise()), bare)).toBe(true);
    expect(usesCuff(requestOf(exercise({ restriction: 'none' })), bare)).toBe(false);
    expect(usesCuff(requestOf(exercise({ limb: 'arm' })), bare)).toBe(false);
    expect(usesCuff(requestOf(null as never, exercise()), bare)).toBe(true);
    expect(usesCuff(requestOf(null as never), bare)).toBe(false);
    expect(usesCuff(requestOf(), bare)).toBe(false);
  });

  it('and where its readings are all there', () => {
    const reads = (more: Partial<PlanLimb>) => usesCuff(requestOf(), { ...bare, ...more });
    expect(reads({ cuffWidthCm: 10 })).toBe(false);
    expect(reads({ cuffWidthCm: 10, circumferenceCm: 56 })).toBe(true);
    expect(reads({ cuffWidthCm: 10, measured: measuredAt(200) })).toBe(true);
    expect(reads({ cuffWidthCm: 10, occlusion: 200 })).toBe(true);
    expect(reads({ circumferenceCm: 56, occlusion: 200, measured: measuredAt(200) })).toBe(false);
  });
});

describe('the setting', () => {
  it('is the percentage of the limb, or of the exercise', () => {
    const { occlusion, target, restTarget } = settingOf(limbOf());
    expect([occlusion.value, target.value, restTarget]).toEqual([200, 100, undefined]);
    expect(settingOf(limbOf(), { percentLop: 60 }).target.value).toBe(120);
    expect(settingOf(limbOf({ percentLop: undefined }), { percentLop: 60 }).target.value).toBe(120);
    expect(settingOf(limbOf({ gaugeStepMmHg: 8 })).target.value).toBe(96);
    expect(settingOf(limbOf({ ceilingMmHg: 90 })).target.value).toBe(90);
  });

  it('names its kind of exercise where it is not lifting', () => {
    const modeOf = (mode?: string) => settingOf(limbOf(), mode ? { mode } : {}).target.inputs.mode;
    expect(modeOf()).toBeUndefined();
    expect(modeOf('resistance')).toBeUndefined();
    expect(modeOf('aerobic')).toBe('aerobic');
    expect(modeOf('passive')).toBe('passive');
  });

  it('is worked out once for exercises that are alike', () => {
    const cuff = limbCuffOf(requestOf(), limbOf());
    expect(cuff(exercise()).target).toBe(cuff(exercise()).target);
    expect(cuff(exercise()).occlusion).toBe(cuff(exercise({ percentLop: 60 })).occlusion);
    expect(cuff(exercise({ mode: 'aerobic' })).target.inputs.mode).toBe('aerobic');
    expect(cuff(exercise()).target.inputs.mode).toBeUndefined();
    expect(cuff(exercise({ percentLop: 60 })).target.value).toBe(120);
  });

  it('in the rests is lower, and has no caution of the usual range, which is of the sets', () => {
    const { target, restTarget } = settingOf(limbOf(), { restPercentLop: 30 });
    expect([target.value, restTarget?.value]).toEqual([100, 60]);
    const below = ({ cautions }: { cautions: readonly { code: string }[] }) => cautions.map(({ code }) => code);
    expect(below(settingOf(limbOf({ percentLop: 30 })).target)).toContain('percent-below-usual');
    expect(below(restTarget!)).not.toContain('percent-below-usual');
    // Its other cautions stay: above 250 mmHg.
    const high = settingOf(limbOf({ occlusion: 400, percentLop: 80 }), { restPercentLop: 70 });
    expect(below(high.restTarget!)).toContain('cuff-pressure-high');
    const asked = { code: 'below-sets', values: { value: 100, unit: 'mm[Hg]' } };
    expect(refused(limbOf(), { restPercentLop: 50 })).toEqual([
      ['wrong-relation', 'restPercentLop', asked, '100 mmHg'],
    ]);
  });

  it('needs a width and a percentage', () => {
    expect(refused(limbOf({ cuffWidthCm: undefined }))).toEqual([
      ['missing', 'cuffWidthCm', { code: 'width-for-cuff' }, 'undefined'],
    ]);
    expect(refused(limbOf({ percentLop: undefined }))).toEqual([
      ['missing', 'percentLop', { code: 'or-of-limb' }, 'undefined'],
    ]);
    // A wrong percentage of the limb is found before any exercise.
    expect(attempt(() => limbCuffOf(requestOf(), limbOf({ percentLop: 500 })), undefined).ok).toBe(false);
    expect(attempt(() => limbCuffOf(requestOf(), limbOf({ percentLop: undefined })), undefined).ok).toBe(true);
  });
});

describe('the pressure that it is a share of', () => {
  const assumed = ({ assumptions }: { assumptions: readonly { code: string }[] }) =>
    assumptions.map(({ code }) => code);

  it('as held: what it does not say is assumed, and its own assumptions stay', () => {
    expect(assumed(settingOf(limbOf()).occlusion)).toEqual([
      ...assumed(enteredPressure(200)),
      'measured-posture-as-planned',
      'measured-cuff-as-planned',
    ]);
    const whole = settingOf(limbOf({ occlusion: doppler({ cuffWidthCm: 10 }) })).occlusion;
    expect(assumed(whole)).not.toContain('measured-cuff-as-planned');
  });

  it('as measured: of the side, posture and cuff of the plan where it does not say', () => {
    const limb = limbOf({ occlusion: undefined, measured: measuredAt(200) });
    const { occlusion } = settingOf(limb);
    expect(occlusion.value).toBe(200);
    expect(occlusion.inputs).toMatchObject({ side: 'left', posture: 'seated', cuffWidthCm: 10, limb: 'leg' });
    expect(assumed(occlusion)).toEqual(
      expect.arrayContaining(['measured-posture-as-planned', 'measured-cuff-as-planned']),
    );
    const other = settingOf(limbOf({ occlusion: undefined, measured: { ...measuredAt(200), side: 'right' } }));
    expect(other.occlusion.inputs).toMatchObject({ side: 'right' });
  });

  it('is above the diastolic pressure, of the same limb, and one of the three', () => {
    const above = { code: 'above-diastolic', values: { value: 74, unit: 'mm[Hg]' } };
    const low = refused(limbOf({ occlusion: 74 }));
    expect(low).toEqual([['wrong-relation', 'occlusion', above, '74 mmHg']]);
    expect(refused(limbOf({ occlusion: undefined, measured: measuredAt(60) }))).toEqual([
      ['wrong-relation', 'measured.valueMmHg', above, '60 mmHg'],
    ]);
    const arm = measuredOcclusionPressure({ ...measuredAt(200), limb: 'arm' });
    expect(refused(limbOf({ occlusion: arm, measured: measuredAt(200), equation: 'x' as never }))).toEqual([
      ['wrong-relation', 'occlusion', { code: 'of-limb', values: { limb: 'leg' } }, '"arm"'],
      ['wrong-relation', 'measured', { code: 'left-out-with', values: { field: 'occlusion' } }, 'an object'],
      ['wrong-relation', 'equation', { code: 'left-out-with', values: { field: 'occlusion' } }, '"x"'],
    ]);
  });

  it('of another cuff is converted with the circumference, and an estimate needs it', () => {
    // The width of 18 cm cannot be converted without the circumference.
    const held = refused(limbOf({ occlusion: doppler({ cuffWidthCm: 18 }) }));
    const measured = { ...measuredAt(200), cuffWidthCm: 18 };
    const entered = refused(limbOf({ occlusion: undefined, measured }));
    expect([held, entered].map((issues) => issues.map(([, path]) => path))).toEqual([
      ['circumferenceCm'],
      ['circumferenceCm'],
    ]);
    const estimate = settingOf(limbOf({ occlusion: undefined, circumferenceCm: 56 })).occlusion;
    expect(estimate.inputs).toMatchObject({ circumferenceCm: 56, cuffWidthCm: 10, systolicMmHg: 118 });
  });
});
