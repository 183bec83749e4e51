import { describe, expect, it } from 'vitest';
import { calibrateOcclusionPressure, estimateOcclusionPressure, measuredOcclusionPressure } from '../../src/index.js';
import {
  codesOf,
  deviations,
  expectClose,
  expectHoldsTogether,
  LEG,
  parts,
  refusal,
  said,
  withCode,
} from '../support/hold-together.js';

describe('a calibration', () => {
  const place = { limb: 'leg', side: 'left', posture: 'supine' } as const;
  const base = estimateOcclusionPressure({ ...LEG, side: 'left' });
  const measured = (more: object = {}) =>
    measuredOcclusionPressure({ ...place, cuffWidthCm: 12, valueMmHg: 200, method: 'doppler', ...more } as never);
  const calibrate = (more: object = {}) =>
    calibrateOcclusionPressure({ estimate: base, measurements: [measured()], ...more } as never);
  // 160 mmHg, 19 % of it; 8.6 mmHg of Doppler; 8.5 mmHg between days.
  const [S2, V, D2] = [30.4 ** 2, 8.6 ** 2, 8.5 ** 2];

  it('on the day, by the normal update', () => {
    const answer = calibrate();
    expectHoldsTogether(answer);
    expectClose(answer.value, 160 + (S2 / (S2 + V)) * 40);
    expect(parts(answer)).toEqual([['calibration', 'derived']]);
    expectClose(answer.standardDeviation!, Math.sqrt((S2 * V) / (S2 + V)));
    expect(answer).toMatchObject({
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      equation: 'calibrated',
      evidence: 'derived',
    });
    expectClose(answer.inputs['estimateWeight'] as number, V / (S2 + V));
    expectClose(answer.inputs['measuredMmHg'] as number, 200);
    expect(answer.inputs).toMatchObject({ ...LEG, side: 'left', estimate: base, measurements: [measured()] });
    expect(answer.inputs).not.toHaveProperty('day');
    expect(said(answer.assumptions)).toEqual([['normal-update'], ['normal-interval'], ['day-error-from-thigh']]);
    // 40 is within 1.96 × √(30.4² + 8.6²) = 61.9.
    expect(said(answer.cautions)).toEqual(said(base.cautions).filter(([code]) => code !== 'estimate-is-a-start'));
    expect(answer.sources).toEqual(['variance-days-legs']);
    expectClose(answer.personalFactor.value, (160 + ((S2 - D2) / (S2 + V)) * 40) / 160);
    expectClose(answer.personalFactor.standardDeviation, Math.sqrt(S2 - D2 - (S2 - D2) ** 2 / (S2 + V)) / 160);
  });

  it('carried to another day', () => {
    const answer = calibrate({ day: 3 });
    expectHoldsTogether(answer);
    expectClose(answer.value, 160 + ((S2 - D2) / (S2 + V)) * 40);
    expect(parts(answer)).toEqual([
      ['calibration', 'derived'],
      ['between-days', 'derived'],
    ]);
    expectClose(deviations(answer)['calibration']!, Math.sqrt(S2 - D2 - (S2 - D2) ** 2 / (S2 + V)));
    expect(deviations(answer)['between-days']).toBe(8.5);
    expect(said(answer.cautions).at(-1)).toEqual(['not-measured-that-day', { severity: 'note' }]);
    expect(answer.inputs).toMatchObject({ day: 3 });
    const same = calibrate({ day: 3, measurements: [measured({ day: 3 })] });
    expectClose(same.value, calibrate().value);
    expect(codesOf(same.cautions)).not.toContain('not-measured-that-day');
  });

  it('with another cuff', () => {
    const answer = calibrate({ measurements: [measured({ cuffWidthCm: 15, valueMmHg: 150 })] });
    expectHoldsTogether(answer);
    // Carried to 12 cm: 70 + 80 × 15 / 12 = 170; its error 8.6 × 1.25, and 48 % of 160 for each unit of ln(15/12).
    const width = (0.48 * Math.log(1.25) * 160) ** 2;
    const gain = S2 / (S2 + (8.6 * 1.25) ** 2 + width);
    expectClose(answer.value, 160 + gain * 10);
    expectClose(answer.standardDeviation!, Math.sqrt(S2 * (1 - gain)));
    expect(codesOf(answer.assumptions)).toEqual([
      'normal-update',
      'normal-interval',
      'day-error-from-thigh',
      'width-ratio-carries',
      'width-error-shared',
    ]);
    expect(withCode(said(answer.cautions), 'width-correction-biased')).toEqual([
      [
        'width-correction-biased',
        {
          severity: 'caution',
          values: { direction: 'narrower', bias: 'overshoots' },
          path: ['toWidthCm'],
          source: 'cuff-width-2012',
        },
      ],
    ]);
    expect(answer.sources).toEqual(['variance-days-legs', 'wide-cuffs-1993', 'cuff-width-2012']);
    // Two with one other cuff share its error: one caution, and less than two of one cuff each.
    const two = calibrate({
      measurements: [measured({ cuffWidthCm: 15, valueMmHg: 150 }), measured({ cuffWidthCm: 15, valueMmHg: 150 })],
    });
    const shared = S2 / (S2 + (8.6 * 1.25) ** 2 / 2 + width);
    expectClose(two.value, 160 + shared * 10);
    expect(withCode(said(two.cautions), 'width-correction-biased')).toHaveLength(1);
  });

  it('far from the estimate', () => {
    const far = (valueMmHg: number) =>
      withCode(said(calibrate({ measurements: [measured({ valueMmHg })] }).cautions), 'measured-far-from-estimate');
    // 1.96 × √(30.4² + 8.6²) is 61.92.
    expect(far(221)).toEqual([]);
    expect(far(222)).toEqual([
      ['measured-far-from-estimate', { severity: 'caution', values: { measured: '222 mmHg' } }],
    ]);
    const two = calibrate({ measurements: [measured({ valueMmHg: 230 }), measured({ valueMmHg: 225 })] });
    expect(withCode(said(two.cautions), 'measured-far-from-estimate')[0]![1]).toMatchObject({
      values: { measured: '225 mmHg, 230 mmHg' },
    });
  });

  it('of two days and two readings of one day', () => {
    // Both on one day: their mean, with half the variance.
    const pair = calibrate({ measurements: [measured({ valueMmHg: 190 }), measured({ valueMmHg: 210 })] });
    expectHoldsTogether(pair);
    expectClose(pair.value, 160 + (S2 / (S2 + V / 2)) * 40);
    expectClose(pair.inputs['measuredMmHg'] as number, 200);
    // On two days, for a third: each has its own departure, so the mean has (D² + V) / 2 around the usual.
    const days = calibrate({ day: 9, measurements: [measured({ day: 1 }), measured({ day: 2 })] });
    expectHoldsTogether(days);
    expectClose(days.value, 160 + ((S2 - D2) / (S2 - D2 + (D2 + V) / 2)) * 40);
  });

  it('says what it refuses', () => {
    const makers = 'an answer of estimateOcclusionPressure that names its side';
    const refused = (more: object) =>
      refusal(calibrateOcclusionPressure, { estimate: base, measurements: [measured()], ...more });
    const { inputs } = base;
    const without = (field: string) => Object.fromEntries(Object.entries(inputs).filter(([name]) => name !== field));
    for (const field of ['limb', 'side', 'posture', 'cuffWidthCm', 'diastolicMmHg']) {
      expect(refused({ estimate: { ...base, inputs: without(field) } })[0]).toEqual([
        'estimate',
        'wrong-relation',
        makers,
        `one without ${field}`,
      ]);
    }
    expect(refused({ estimate: { ...base, inputs: [] } })[0]![3]).toBe(
      'one without limb, side, posture, cuffWidthCm, diastolicMmHg',
    );
    expect(refused({ estimate: { ...base, inputs: null } })[0]![3]).toMatch(/^one without limb/);
    expect(refused({ estimate: { ...base, standardDeviation: undefined } })[0]![3]).toBe(
      'one without standardDeviation',
    );
    expect(refused({ estimate: { ...base, standardDeviation: 0.05 } })[0]![3]).toBe('one without standardDeviation');
    expect(refused({ estimate: { ...base, equation: 'mine' } })[0]![3]).toBe('one of "mine"');
    expect(refused({ estimate: 160 })[0]).toEqual(['estimate', 'wrong-type', makers, 'a bare number']);
    const list = 'a list of 1 to 100 answers of measuredOcclusionPressure';
    expect(refused({ measurements: [] })).toEqual([['measurements', 'wrong-type', list, 'a list of 0']]);
    expect(refused({ measurements: 5 })).toEqual([['measurements', 'wrong-type', list, '5']]);
    expect(refused({ measurements: undefined })).toEqual([['measurements', 'missing', list, 'undefined']]);
    expect(refused({ measurements: Array.from({ length: 101 }, () => measured()) })).toEqual([
      ['measurements', 'wrong-type', list, 'a list of 101'],
    ]);
    expect(refused({ measurements: Array.from({ length: 100 }, () => measured()) })).toEqual([]);
    expect(refused({ measurements: [measured(), 170] })).toEqual([
      ['measurements.1', 'wrong-type', 'an answer of measuredOcclusionPressure', 'a bare number'],
    ]);
    const wanted = 'a measurement on the left leg, supine, with its cuffWidthCm';
    const differs = (measurement: object, received: string) =>
      expect(refused({ measurements: [measurement] })).toEqual([
        ['measurements.0', 'wrong-relation', wanted, received],
      ]);
    differs(base, 'one not measured');
    differs({ ...measured(), equation: 5 }, 'one not measured');
    differs(measured({ standardDeviationMmHg: 0 }), 'one with a standard deviation below 0.1 mmHg');
    differs(measured({ valueMmHg: 70 }), 'one at or below the diastolic pressure');
    differs(measured({ side: 'right' }), 'one of side "right"');
    differs(measured({ limb: 'arm' }), 'one of limb "arm"');
    differs(measured({ posture: 'seated' }), 'one of posture "seated"');
    const { cuffWidthCm: _width, ...noWidth } = measured().inputs;
    differs({ ...measured(), inputs: noWidth }, 'one of cuffWidthCm undefined');
    differs({ ...measured(), inputs: { ...measured().inputs, day: 1.5 } }, 'one of day 1.5');
    expect(refused({ measurements: [measured({ valueMmHg: 71 })] })).toEqual([]);
    expect(refused({ measurements: [measured({ standardDeviationMmHg: 0.1 })] })).toEqual([]);
    // With the estimate wrong, measurements are not held against it.
    expect(refused({ estimate: 160, measurements: [measured({ side: 'right' })] })).toHaveLength(1);
  });
});
