import { quantileSorted } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { logInterval, logNormalInterval } from '../../src/answer/interval.js';
import { targetCuffPressure, type Answer } from '../../src/index.js';
import { codesOf, expectClose, expectHoldsTogether, Z } from '../support/invariants.js';
import { random } from '../support/random.js';

/** An occlusion pressure with an error of a share of it. */
const shared = (value: number, share: number): Answer<'occlusion-pressure'> => ({
  kind: 'occlusion-pressure',
  value,
  unit: 'mm[Hg]',
  ...logInterval(value, [{ part: 'equation', standardDeviation: share, evidence: 'derived' }]),
  equation: 'by-hand',
  evidence: 'derived',
  ownEquation: { formula: 'measured', symbols: { measured: 'valueMmHg' } },
  inputs: { valueMmHg: value },
  assumptions: [logNormalInterval],
  cautions: [],
});

describe('a target of an occlusion pressure with errors that are shares', () => {
  it('keeps the share, and turns the interval round', () => {
    const occlusion = shared(190, 0.2);
    const answer = targetCuffPressure({ occlusion, percentLop: 50 });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({ value: 95, scale: 'log', standardDeviation: 0.2 });
    expectClose(answer.lower!, 95 * Math.exp(-Z * 0.2));
    expectClose(answer.reached!.lower!, 50 * Math.exp(-Z * 0.2));
    expectClose(answer.reached!.upper!, 50 * Math.exp(Z * 0.2));
    expect(codesOf(answer.cautions)).toEqual(['percent-not-flow', 'pressure-drifts']);
  });

  // Drawn: 100,000 people whose true pressure is log-normal about the estimate; quantiles by simple-statistics.
  it('gives the percentages that people drawn from it really get', () => {
    const { normal } = random(2_026);
    const answer = targetCuffPressure({ occlusion: shared(190, 0.19), percentLop: 80 });
    const truly = Float64Array.from({ length: 100_000 }, () => (100 * answer.value) / (190 * Math.exp(normal(0.19))));
    const sorted = [...truly.sort()];
    const { lower, upper, occlusionChancePercent } = answer.reached!;
    expect(Math.abs(lower! / quantileSorted(sorted, 0.025) - 1)).toBeLessThan(0.01);
    expect(Math.abs(upper! / quantileSorted(sorted, 0.975) - 1)).toBeLessThan(0.01);
    const closed = (100 * sorted.filter((percent) => percent >= 100).length) / sorted.length;
    // Its standard error over 100,000 draws is 0.1 points.
    expect(Math.abs(closed - occlusionChancePercent!)).toBeLessThan(0.5);
    // 12 %: said, and no stop.
    expect(answer.cautions.filter(({ code }) => code === 'may-occlude')).toMatchObject([{ severity: 'caution' }]);
  });

  it('has an upper end of the true percentage, however uncertain the pressure', () => {
    const answer = targetCuffPressure({ occlusion: shared(160, 1), percentLop: 50 });
    expect(answer.reached!.upper).toBeGreaterThan(100);
  });
});

// A 10 cm leg cuff at 50 %, the ordinary case: over plausible people nobody is told that the artery may close.
it('a leg cuff at 50 % with an error of a fifth brings no word about closing', () => {
  for (let value = 120; value <= 320; value += 1) {
    const { cautions } = targetCuffPressure({ occlusion: shared(value, 0.2), percentLop: 50 });
    expect(codesOf(cautions)).not.toContain('may-occlude');
  }
});
