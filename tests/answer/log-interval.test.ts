import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { logInterval, logNormalInterval } from '../../src/answer/interval.js';
import { targetCuffPressure, type Answer } from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import { expectClose, expectHoldsTogether, refusal } from '../support/invariants.js';

/** An occlusion pressure whose errors are shares of it. */
const occlusion = {
  kind: 'occlusion-pressure',
  value: 190,
  unit: 'mm[Hg]',
  ...logInterval(190, [
    { part: 'equation', standardDeviation: 0.16, evidence: 'derived' },
    { part: 'laboratory', standardDeviation: 0.12, evidence: 'derived' },
  ]),
  equation: 'by-hand',
  evidence: 'derived',
  ownEquation: { formula: 'measured', symbols: { measured: 'valueMmHg' } },
  inputs: { valueMmHg: 190 },
  assumptions: [logNormalInterval],
  cautions: [],
} as const satisfies Answer<'occlusion-pressure'>;

describe('an answer whose errors are shares', () => {
  it('has the quantiles of a log-normal distribution (jstat)', () => {
    expectHoldsTogether(occlusion);
    expectClose(occlusion.standardDeviation, 0.2);
    expectClose(occlusion.lower, jstat.lognormal.inv(0.025, Math.log(190), 0.2));
    expectClose(occlusion.upper, jstat.lognormal.inv(0.975, Math.log(190), 0.2));
  });

  it('is explained in percent of the value', () => {
    const text = explain(occlusion);
    expect(text).toContain('(95 % interval 128–281 mmHg)');
    expect(text).toContain('standard deviation s = 20 % of the value');
    expect(text).toContain('equation 16 % (derived), laboratory 12 % (derived)');
  });

  it('is refused where its scale or its interval is broken', () => {
    const received = (more: object) =>
      refusal(targetCuffPressure, { occlusion: { ...occlusion, ...more }, percentLop: 50 })[0]?.[3];
    expect(received({ scale: 'linear' })).toBe('a scale that answers of this kind do not have');
    expect(received({ lower: 0 })).toBe('a broken interval');
    expect(received({ standardDeviation: 5.1 })).toBe('a broken interval');
    expect(received({})).toBeUndefined();
  });
});
