import { describe, expect, it } from 'vitest';
import { measuredOcclusionPressure } from '../../src/index.js';
import type { PlanRequest } from '../../src/plan/index.js';
import { bothSides, measuredAt } from '../support/inputs.js';
import { kept, lighter, notOffered, sets, stated } from '../support/lighter.js';
import { planOf } from '../support/plans.js';

type PlanLimb = PlanRequest['limbs'][number];

describe('sets with the cuff', () => {
  const held = () => measuredOcclusionPressure({ limb: 'leg', cuffWidthCm: 10, posture: 'seated', ...measuredAt(200) });
  const readings = { circumferenceCm: undefined, measured: undefined, occlusion: undefined };

  it.each<[string, () => Partial<PlanLimb>, boolean]>([
    ['a measured pressure', () => ({ measured: measuredAt(200) }), true],
    ['a circumference', () => ({ circumferenceCm: 55 }), true],
    ['a pressure that is held', () => ({ occlusion: 200 }), true],
    ['the width of a pressure that is held', () => ({ occlusion: held(), cuffWidthCm: undefined }), true],
    ['no reading', () => ({}), false],
    ['no width of the cuff', () => ({ measured: measuredAt(200), cuffWidthCm: undefined }), false],
    ['no percentage', () => ({ measured: measuredAt(200), percentLop: undefined }), false],
  ])('with %s', (_, limb, isOffered) => {
    const found = lighter(planOf(stated(20), {}, { ...readings, ...limb() }), 50);
    const own = found.options.find(({ keeps }) => keeps === 'sets-with-cuff');
    expect([own?.restriction, own?.sets]).toEqual(isOffered ? ['intermittent', sets(2)] : [undefined, undefined]);
    if (own) expect(own.cautions.map(({ code }) => code)).toContain('restriction-gives-less-strength');
    if (own) expect(own.cautions.map(({ code }) => code)).not.toContain('no-equivalence');
    const without = notOffered(found).filter(([keeps]) => keeps === 'sets-with-cuff');
    expect(without).toEqual(isOffered ? [] : [['sets-with-cuff', 'lighter-no-cuff']]);
  });

  it('need a cuff on every limb of the exercise', () => {
    const [left, right] = bothSides({
      limb: 'leg',
      cuffWidthCm: 10,
      percentLop: 50,
      measured: measuredAt(200),
    } as const);
    const bare = { limb: 'leg', side: 'right' } as const;
    const arm = { ...right, limb: 'arm' } as const;
    const offered = (...limbs: PlanLimb[]) =>
      kept(lighter(planOf(stated(20), { limbs }), 50)).includes('sets-with-cuff');
    expect(offered(left, right)).toBe(true);
    expect(offered(left, bare)).toBe(false);
    expect(offered(bare, arm)).toBe(false);
  });

  it('are no question where the cuff is inflated', () => {
    const found = lighter(planOf(stated(20, { restriction: 'continuous' })), 50);
    expect([...kept(found), ...found.notOffered.map(({ keeps }) => keeps)]).not.toContain('sets-with-cuff');
  });
});
