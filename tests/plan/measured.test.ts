import { describe, expect, it } from 'vitest';
import { expandDocument, planSession } from '../../src/plan/index.js';
import { codesOf, expectClose } from '../support/invariants.js';
import { press } from '../support/plans.js';

const plan = (measured: object, { limb = 'leg', posture = 'standing', width = 11.5, more = {} } = {}) =>
  expandDocument(
    planSession({
      systolicMmHg: 120,
      diastolicMmHg: 70,
      posture: 'supine',
      limbs: [
        {
          limb,
          side: 'left',
          circumferenceCm: limb === 'leg' ? 55 : 32,
          cuffWidthCm: width,
          percentLop: 60,
          measured: { valueMmHg: 187, method: 'doppler', ...measured },
        },
      ],
      exercises: [{ ...press, limb, posture }],
      ...more,
    } as never),
  );
const supine = { posture: 'supine', cuffWidthCm: 11.5 };

describe('a measured pressure in a plan', () => {
  // PeerJ 2018;6:e4697: the same legs 187.0 mmHg supine and 241.5 standing, so 60 % of the supine is 46.5 % standing.
  it('measured supine and used standing is converted, and the setting follows', () => {
    const [item] = plan(supine).items;
    const { value } = item!.occlusion!;
    expect(Math.abs(value - 241.5)).toBeLessThan(15);
    expect(item!.target!.value).toBe(Math.floor(0.6 * value));
    expect(codesOf(item!.occlusion!.cautions)).toContain('posture-shifted');
    expect(item!.posture).toBe('standing');
    // Each exercise has its own.
    expect(plan(supine, { posture: 'supine' }).items[0]!.occlusion!.value).toBe(187);
  });

  it('on an arm in another posture has no range, and says so', () => {
    const [item] = plan(supine, { limb: 'arm' }).items;
    expect(codesOf(item!.target!.cautions)).toContain('true-percent-not-known');
    expect(Object.keys(item!.target!.reached!)).toEqual(['percentLop']);
    expect(item!.occlusion!.cautions.find(({ code }) => code === 'measured-in-other-posture')?.values).toEqual({
      limb: 'arm',
      from: 'supine',
      to: 'standing',
    });
  });

  it('on the other side is named, with the difference of the legs in its error', () => {
    const { occlusion } = plan({ ...supine, side: 'right' }, { posture: 'supine' }).items[0]!;
    expect(codesOf(occlusion!.cautions)).toEqual(['measured-on-other-side']);
    expectClose(occlusion!.standardDeviation!, Math.hypot(8.6, 6.9) / 187);
  });

  it('falls due after four weeks', () => {
    const due = (date: string) =>
      codesOf(plan({ ...supine, date: '2026-02-02' }, { posture: 'supine', more: { date } }).cautions);
    expect(due('2026-03-01')).not.toContain('measured-long-ago');
    expect(due('2026-03-02')).toContain('measured-long-ago');
  });

  it('says what was assumed of it', () => {
    const message = codesOf(plan({}, { posture: 'supine' }).items[0]!.occlusion!.assumptions);
    expect(message).toContain('measured-posture-as-planned');
    expect(message).toContain('measured-cuff-as-planned');
  });
});
