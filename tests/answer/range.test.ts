import { describe, expect, it } from 'vitest';
import { targetCuffPressureRange, testedOneRepMax, trainingLoadRange } from '../../src/index.js';
import { issuesOf } from '../support/refused.js';

// Worked by hand: 20 and 30 % of 45 kg are 9 and 13.5 kg; 40 and 80 % of 172 mmHg are 68.8 and 137.6 mmHg.
describe('a range of percentages', () => {
  it('gives the loads at its ends, each rounded on its own', () => {
    const oneRepMax = testedOneRepMax({ load: 45 });
    const { from, to } = trainingLoadRange({ oneRepMax, percentOneRepMax: { from: 20, to: 30 } });
    expect([from.value, to.value]).toEqual([9, 13.5]);
    const step = trainingLoadRange({ oneRepMax, percentOneRepMax: { from: 20, to: 30 }, step: 2.5 });
    expect([step.from.value, step.to.value]).toEqual([10, 12.5]);
    expect(step.from.reached!.percentOneRepMax).toBeCloseTo(22.2222, 4);
  });

  it('gives the cuff pressures at its ends, rounded down to the gauge', () => {
    const given = { occlusion: 172, percentLop: { from: 40, to: 80 } };
    const { from, to } = targetCuffPressureRange(given);
    expect([from.value, to.value]).toEqual([68, 137]);
    const gauge = targetCuffPressureRange({ ...given, gaugeStepMmHg: 5, ceilingMmHg: 120 });
    expect([gauge.from.value, gauge.to.value]).toEqual([65, 120]);
  });

  it('says which end is wrong, and once what is wrong at both', () => {
    const issues = (percentOneRepMax: unknown, more: object = {}) =>
      issuesOf(trainingLoadRange, { oneRepMax: 45, percentOneRepMax, ...more });
    expect(issues({ from: 20, to: 30 })).toEqual([]);
    expect(issues({ from: 30, to: 30 })).toEqual([]);
    expect(issues({ from: 30, to: 20 })).toEqual(['percentOneRepMax.to wrong-relation']);
    expect(issues({ from: 0.2, to: 130 })).toEqual([
      'percentOneRepMax.from unit-slip',
      'percentOneRepMax.to out-of-range',
    ]);
    expect(issues({ from: 20 })).toEqual(['percentOneRepMax.to missing']);
    expect(issues({ from: 20, to: 30, step: 5 })).toEqual(['percentOneRepMax.step unknown-field']);
    expect(issues(25)).toEqual(['percentOneRepMax wrong-type']);
    expect(issues(undefined)).toEqual(['percentOneRepMax missing']);
    expect(issues({ from: 20, to: 30 }, { unit: 'stone' })).toEqual(['unit not-one-of']);
  });
});
