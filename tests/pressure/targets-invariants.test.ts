import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { measuredOcclusionPressure, targetCuffPressure } from '../../src/index.js';
import {
  codesOf,
  expectClose,
  expectHoldsTogether,
  refusal,
  type Said,
  message,
  withCode,
  Z,
} from '../support/invariants.js';
import { working } from '../../src/text/index.js';

describe('a target', () => {
  const occlusion = measuredOcclusionPressure({
    valueMmHg: 160,
    method: 'doppler',
    limb: 'leg',
    standardDeviationMmHg: 10,
  });
  // Its error as a share; the chance that the true pressure is below, by the error function of mathjs.
  const SHARE = 10 / 160;
  const chance = (setting: number, share = SHARE) => 50 * (1 + erf(Math.log(setting / 160) / share / Math.SQRT2));
  const target = (more: object) => targetCuffPressure({ occlusion, percentLop: 50, ...more } as never);
  const refused = (more: object) => refusal(targetCuffPressure, { occlusion, percentLop: 50, ...more });
  const ALWAYS: Said[] = [
    ['percent-not-flow', { severity: 'note', source: 'flow-steps-2018' }],
    ['pressure-drifts', { severity: 'note', source: 'exercise-shift-2018' }],
  ];

  it('of half the occlusion pressure', () => {
    const answer = target({ gaugeStepMmHg: 15 });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({
      kind: 'cuff-pressure',
      value: 75,
      unit: 'mm[Hg]',
      equation: 'percent-of-occlusion',
      evidence: 'practice',
      assumptions: [],
      rounding: { from: 80, to: 'down', step: 15 },
      scale: 'log',
      errors: [{ part: 'occlusion', standardDeviation: SHARE, evidence: 'practice' }],
    });
    expect(working(answer)!.sources).toEqual(['guideline-review-2019']);
    expect(answer.inputs).toEqual({ occlusion, percentLop: 50, gaugeStepMmHg: 15 });
    expect(message(answer.cautions)).toEqual(ALWAYS);
    const { percentLop, lower, upper, occlusionChancePercent, ...rest } = answer.reached!;
    expectClose(percentLop, (100 * 75) / 160);
    expectClose(lower!, (100 * 75) / (160 * Math.exp(Z * SHARE)));
    expectClose(upper!, (100 * 75) / (160 * Math.exp(-Z * SHARE)));
    // Φ(−12) is below 1e-16.
    expect(occlusionChancePercent).toBe(0);
    expect(rest).toEqual({});
    expect(target({}).rounding).toEqual({ from: 80, to: 'down', step: 1 });
  });

  it('of a pressure whose error is in mmHg, as that of your own equation, is in mmHg too', () => {
    const { scale: _, ...inMmHg } = { ...occlusion, standardDeviation: 10, lower: 160 - Z * 10, upper: 160 + Z * 10 };
    const errors = [{ part: 'equation', standardDeviation: 10, evidence: 'derived' }] as const;
    const assumptions = [{ code: 'normal-interval' }];
    const answer = target({
      occlusion: { ...inMmHg, errors, assumptions, ownEquation: { formula: '160', symbols: {} } },
    });
    expectHoldsTogether(answer);
    // Half of 160 ± 10 mmHg.
    expect(answer).toMatchObject({ standardDeviation: 5, errors: [{ part: 'occlusion', standardDeviation: 5 }] });
    expect(answer).not.toHaveProperty('scale');
    expectClose(answer.lower!, 80 - Z * 5);
  });

  // Guidance: 40 to 80 % in exercise, 70 to 100 % at rest.
  it.each([
    [40, undefined, []],
    [80, undefined, []],
    [39, undefined, [['percent-below-usual', { severity: 'note', values: { percentLop: 39, low: 40, high: 80 } }]]],
    [
      81,
      'resistance',
      [['percent-above-usual', { severity: 'caution', values: { percentLop: 81, low: 40, high: 80 } }]],
    ],
    [81, 'aerobic', [['percent-above-usual', { severity: 'caution', values: { percentLop: 81, low: 40, high: 80 } }]]],
    [70, 'passive', []],
    [69, 'passive', [['percent-below-usual', { severity: 'note', values: { percentLop: 69, low: 70, high: 100 } }]]],
  ] as const)('%d %%, %s', (percentLop, mode, expected) => {
    const answer = target({ percentLop, ...(mode && { mode }) });
    expectHoldsTogether(answer);
    const found = message(answer.cautions).filter(
      ([code]) => code.startsWith('percent-') && code !== 'percent-not-flow',
    );
    expect(found).toEqual(
      expected.map(([code, more]) => [code, { ...more, path: ['percentLop'], source: 'guideline-review-2019' }]),
    );
    expect(answer.inputs).toEqual({ occlusion, percentLop, gaugeStepMmHg: 1, ...(mode && { mode }) });
  });

  it('held by a ceiling', () => {
    const answer = target({ percentLop: 60, ceilingMmHg: 90 });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({ value: 90, inputs: { ceilingMmHg: 90 } });
    expect(withCode(message(answer.cautions), 'ceiling-reached')).toEqual([
      [
        'ceiling-reached',
        { severity: 'caution', values: { ceiling: 90, wanted: 96, percentLop: 60 }, path: ['ceilingMmHg'] },
      ],
    ]);
    expect(codesOf(target({ percentLop: 60, ceilingMmHg: 96 }).cautions)).not.toContain('ceiling-reached');
  });

  // Tables of the normal distribution: the 1 % quantile is −2.3263, so 160 × exp(−2.3263 / 16) = 138.35; the 50 % one is 0.
  it('held by the chance of closing the artery', () => {
    const answer = target({ percentLop: 90, occlusionChanceLimitPercent: 1 });
    expectHoldsTogether(answer);
    expect(answer.value).toBe(138);
    expect(answer.reached!.highestMmHg).toBe(138);
    expect(answer.reached!.occlusionChancePercent!).toBeCloseTo(chance(138), 9);
    expect(withCode(message(answer.cautions), 'chance-limit-holds')).toEqual([
      [
        'chance-limit-holds',
        {
          severity: 'caution',
          values: { limit: 1, wanted: 144, percentLop: 90 },
          path: ['occlusionChanceLimitPercent'],
        },
      ],
    ]);
    expect(answer.inputs).toMatchObject({ occlusionChanceLimitPercent: 1 });
    const free = target({ percentLop: 86.25, occlusionChanceLimitPercent: 1 });
    // 0.8625 × 160 is 138, as high as the limit lets it be.
    expect([free.value, free.reached!.highestMmHg]).toEqual([138, 138]);
    expect(codesOf(free.cautions)).not.toContain('chance-limit-holds');
    expect(target({ percentLop: 100, occlusionChanceLimitPercent: 49, gaugeStepMmHg: 10 }).value).toBe(150);
    // 138.35 with steps of 10 and of 0.1.
    expect(target({ percentLop: 90, occlusionChanceLimitPercent: 1, gaugeStepMmHg: 10 }).value).toBe(130);
    expect(target({ percentLop: 90, occlusionChanceLimitPercent: 1, gaugeStepMmHg: 0.1 }).value).toBe(138.3);
    expect(refused({ percentLop: 90, occlusionChanceLimitPercent: 1, gaugeStepMmHg: 0.1 })).toEqual([]);
  });

  it('may close the artery', () => {
    const closure = (more: object) =>
      message(target(more).cautions).filter(([code]) => /occlude|closes/.test(code)) as unknown[];
    // The 5 % quantile of the normal distribution is −1.6449 (tables): 160 × exp(−1.6449 / 16) is 144.4 mmHg.
    expect(target({ percentLop: 90 }).value).toBe(144);
    expect(closure({ percentLop: 90 })).toEqual([]);
    expect(target({ percentLop: 91 }).value).toBe(145);
    expect(chance(145)).toBeCloseTo(5.76, 2);
    expect(closure({ percentLop: 91 })).toEqual([
      ['may-occlude', { severity: 'caution', values: { value: 6, limit: 5 }, path: ['percentLop'] }],
    ]);
    // As likely as not from the middle on; there the percentage itself says stop, once.
    expect(closure({ percentLop: 99.9 })).toEqual([
      ['may-occlude', { severity: 'caution', values: { value: 46, limit: 5 }, path: ['percentLop'] }],
    ]);
    expect(closure({ percentLop: 100 })).toEqual([
      ['percent-closes-artery', { severity: 'stop', values: { value: 100, limit: 100 }, path: ['percentLop'] }],
    ]);
    // At rest guidance reaches 100 %.
    expect(closure({ percentLop: 100, mode: 'passive' })).toEqual([
      ['may-occlude', { severity: 'caution', values: { value: 50, limit: 5 }, path: ['percentLop'] }],
    ]);
    // At the pressure itself, with an error of nothing, it is closed.
    const sure = { ...occlusion, standardDeviation: 0, lower: 160, upper: 160 };
    expect(target({ occlusion: sure, percentLop: 100 }).reached!.occlusionChancePercent).toBe(100);
    expect(target({ occlusion: sure, percentLop: 99 }).reached!.occlusionChancePercent).toBe(0);
    expect(target({ occlusion: sure, percentLop: 100, occlusionChanceLimitPercent: 1 }).value).toBe(159);
    expect(target({ percentLop: 100 }).reached!.occlusionChancePercent).toBeCloseTo(50, 9);
  });

  it('of an occlusion pressure that is not known well', () => {
    const {
      standardDeviation: _s,
      lower: _l,
      upper: _u,
      level: _v,
      errors: _e,
      scale: _c,
      assumptions: _a,
      ...bare
    } = occlusion;
    const unknown = target({ occlusion: { ...bare, assumptions: [] } });
    expectHoldsTogether(unknown);
    expect(message(unknown.cautions).at(-1)).toEqual(['true-percent-not-known', { severity: 'caution' }]);
    expect(Object.keys(unknown.reached!)).toEqual(['percentLop']);
    expect(refused({ occlusion: { ...bare, assumptions: [] }, occlusionChanceLimitPercent: 1 })).toEqual([
      [
        'occlusion',
        'wrong-relation',
        'an answer with an interval, for a limit on the chance of closing the artery',
        'one without',
      ],
    ]);
    const wide = measuredOcclusionPressure({
      valueMmHg: 160,
      method: 'doppler',
      limb: 'leg',
      standardDeviationMmHg: 100,
    });
    const unsure = target({ occlusion: wide });
    expectHoldsTogether(unsure);
    expect(Object.keys(unsure.reached!)).toEqual(['percentLop', 'lower', 'upper', 'occlusionChancePercent']);
    expectClose(unsure.reached!.upper!, 50 * Math.exp((Z * 100) / 160));
    expect(unsure.reached!.occlusionChancePercent!).toBeCloseTo(chance(80, 100 / 160), 9);
    // The limit is at 160 × exp(−2.3263 × 100 / 160) = 37 mmHg, below a step of 50.
    expect(refused({ occlusion: wide, gaugeStepMmHg: 50, occlusionChanceLimitPercent: 1 })).toEqual([
      [
        'occlusionChanceLimitPercent',
        'wrong-relation',
        'a limit that some gauge setting keeps: this occlusion pressure is too uncertain',
        '1 %',
      ],
    ]);
  });

  it('says why it refuses', () => {
    expect(refused({ percentLop: 10, gaugeStepMmHg: 20 })).toEqual([
      ['gaugeStepMmHg', 'wrong-relation', 'at most 16 mmHg', '20'],
    ]);
    const expected =
      'an answer of estimateOcclusionPressure, measuredOcclusionPressure, calibrateOcclusionPressure or a correction, or a number';
    expect(refused({ occlusion: 1600 })).toEqual([
      ['occlusion', 'out-of-range', 'a number from 50 to 1000 mmHg', '1600'],
    ]);
    expect(refused({ occlusion: { ...occlusion, kind: 'cuff-pressure' } })).toEqual([
      ['occlusion', 'wrong-type', expected, 'an object of another kind'],
    ]);
    expect(refused({ occlusion: { ...occlusion, unit: 'kPa' } })).toEqual([
      ['occlusion', 'wrong-type', expected, 'an answer in another unit'],
    ]);
    // Half of the least and four times the most there is in the vocabulary: corrections may go there.
    expect(refused({ occlusion: { ...occlusion, value: 24 } })[0]![3]).toBe('an answer whose value is out of range');
    expect(refused({ percentLop: 0.5, occlusionChanceLimitPercent: 1 }).map(([path]) => path)).toEqual(['percentLop']);
  });
});
