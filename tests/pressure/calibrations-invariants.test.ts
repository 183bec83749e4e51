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
  message,
  withCode,
} from '../support/invariants.js';
import { working } from '../../src/text/index.js';

describe('a calibration', () => {
  const place = { limb: 'leg', side: 'left', posture: 'supine' } as const;
  const base = estimateOcclusionPressure({ ...LEG, side: 'left' });
  const narrow = estimateOcclusionPressure({ ...LEG, side: 'left', cuffWidthCm: 5 });
  const measured = (more: object = {}) =>
    measuredOcclusionPressure({ ...place, cuffWidthCm: 12, valueMmHg: 200, method: 'doppler', ...more } as never);
  const calibrate = (more: object = {}) =>
    calibrateOcclusionPressure({ estimate: base, measurements: [measured()], ...more } as never);
  it('says what it is made of', () => {
    const answer = calibrate({ day: 3, measurements: [measured({ day: 3 })] });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      equation: 'calibrated',
      evidence: base.evidence,
      scale: 'log',
    });
    expect(parts(answer)).toEqual([['calibration', 'derived']]);
    expect(answer.inputs).toMatchObject({ ...LEG, side: 'left', estimate: base, day: 3 });
    expect(calibrate().inputs).not.toHaveProperty('day');
    expectClose(calibrate().inputs['measuredMmHg'] as number, 200);
    expect(message(calibrate().cautions)).toEqual(
      message(base.cautions).filter(([code]) => code !== 'estimate-is-a-start'),
    );
    expect(working(answer)!.sources).toEqual(['variance-days-legs']);
    expect(codesOf(answer.cautions)).not.toContain('not-measured-that-day');
    const later = calibrate({ day: 9 });
    expectHoldsTogether(later);
    expect(message(later.cautions).at(-1)).toEqual(['not-measured-that-day', { severity: 'note' }]);
    expect(parts(later)).toEqual([
      ['calibration', 'derived'],
      ['between-days', 'derived'],
    ]);
    // The personal factor is that of the usual pressure, the day apart: with the day of no departure they are one.
    expectClose(later.personalFactor.value, later.value / base.value);
    expectClose(later.personalFactor.standardDeviation, deviations(later)['calibration']!);
  });

  it('with another cuff', () => {
    const answer = calibrate({ measurements: [measured({ cuffWidthCm: 15, valueMmHg: 150 })] });
    expectHoldsTogether(answer);
    expect(codesOf(answer.assumptions)).toEqual([
      'normal-update',
      'log-normal-interval',
      'estimate-holds-measuring',
      'day-error-from-thigh',
      'ratio-to-curve-kept',
      'width-error-shared',
    ]);
    expect(codesOf(answer.cautions)).toContain('width-converted');
    // Two with one other cuff share its error: one caution, and less than two of one cuff each.
    const twice = [measured({ cuffWidthCm: 15, valueMmHg: 150 }), measured({ cuffWidthCm: 15, valueMmHg: 150 })];
    const two = calibrate({ measurements: twice });
    expect(withCode(message(two.cautions), 'width-converted')).toHaveLength(1);
    expect(two.standardDeviation).toBeLessThan(answer.standardDeviation!);
  });

  it('far from the estimate', () => {
    const two = calibrate({ measurements: [measured({ valueMmHg: 330 }), measured({ valueMmHg: 325 })] });
    expect(withCode(message(two.cautions), 'measured-far-from-estimate')[0]![1]).toMatchObject({
      values: { measured: '325 mmHg, 330 mmHg' },
    });
  });

  it('says what it refuses', () => {
    const makers = 'an answer of estimateOcclusionPressure or estimateWith that names its side';
    const refused = (more: object) =>
      refusal(calibrateOcclusionPressure, { estimate: base, measurements: [measured()], ...more });
    const { inputs } = base;
    const without = (field: string) => Object.fromEntries(Object.entries(inputs).filter(([name]) => name !== field));
    for (const field of [
      'limb',
      'side',
      'posture',
      'circumferenceCm',
      'cuffWidthCm',
      'systolicMmHg',
      'diastolicMmHg',
    ]) {
      expect(refused({ estimate: { ...base, inputs: without(field) } })[0]).toEqual([
        'estimate',
        'wrong-relation',
        `an answer of estimateOcclusionPressure or estimateWith that has ${field}`,
        'one without',
      ]);
    }
    expect(refused({ estimate: { ...base, inputs: [] } })[0]![2]).toBe(
      'an answer of estimateOcclusionPressure or estimateWith that has limb, side, posture, circumferenceCm, cuffWidthCm, systolicMmHg, diastolicMmHg',
    );
    expect(refused({ estimate: { ...base, inputs: null } })[0]![2]).toMatch(/ that has limb, side/);
    expect(refused({ estimate: { ...base, standardDeviation: undefined } })[0]![2]).toBe(
      'an answer of estimateOcclusionPressure or estimateWith that has standardDeviation',
    );
    expect(refused({ estimate: { ...base, standardDeviation: 0.0005 } })[0]![2]).toMatch(
      / that has standardDeviation$/,
    );
    expect(refused({ estimate: { ...base, equation: 'mine' } })[0]![3]).toBe('"mine"');
    expect(refused({ estimate: 160 })[0]).toEqual(['estimate', 'wrong-type', makers, '160']);
    const list = 'a list of 1 to 100 answers of measuredOcclusionPressure';
    expect(refused({ measurements: [] })).toEqual([['measurements', 'wrong-type', list, '0']]);
    expect(refused({ measurements: 5 })).toEqual([['measurements', 'wrong-type', list, '5']]);
    expect(refused({ measurements: undefined })).toEqual([['measurements', 'missing', list, 'undefined']]);
    expect(refused({ measurements: Array.from({ length: 101 }, () => measured()) })).toEqual([
      ['measurements', 'wrong-type', list, '101'],
    ]);
    expect(refused({ measurements: Array.from({ length: 100 }, () => measured()) })).toEqual([]);
    expect(refused({ measurements: [measured(), 170] })).toEqual([
      ['measurements.1', 'wrong-type', 'an answer of measuredOcclusionPressure', '170'],
    ]);
    const differs = (measurement: object, ...issue: readonly [path: string, expected: string, received: string]) => {
      const [path, expected, received] = issue;
      expect(refused({ measurements: [measurement] })).toEqual([
        [`measurements.0.${path}`, 'wrong-relation', expected, received],
      ]);
    };
    const changed = (inputs: object) => ({ ...measured(), inputs: { ...measured().inputs, ...inputs } });
    differs(base, 'equation', 'that of measuredOcclusionPressure', `"${base.equation}"`);
    differs({ ...measured(), equation: 5 }, 'equation', 'that of measuredOcclusionPressure', '5');
    differs(measured({ standardDeviationMmHg: 0 }), 'standardDeviation', 'an error of at least 0.1 mmHg', '0');
    differs(
      measured({ valueMmHg: 70 }),
      'value',
      'above the diastolic pressure of the estimate, 70 mmHg: no artery closes below it, so measure again',
      '70 mmHg',
    );
    differs(changed({ side: 'both' }), 'inputs.side', "one of 'left', 'right'", '"both"');
    differs(measured({ limb: 'arm' }), 'inputs.limb', "'leg', as in the estimate", '"arm"');
    differs(measured({ posture: 'seated' }), 'inputs.posture', "'supine', as in the estimate", '"seated"');
    const { cuffWidthCm: _width, ...noWidth } = measured().inputs;
    differs({ ...measured(), inputs: noWidth }, 'inputs.cuffWidthCm', 'a number from 3 to 40 cm', 'undefined');
    differs(changed({ day: 1.5 }), 'inputs.day', 'a whole number from 0 to 1000000', '1.5');
    differs({ ...measured(), lower: 230, upper: 210 }, 'lower', 'at most the upper end of the interval, 210', '230');
    differs({ ...measured(), lower: 201, upper: 210 }, 'value', 'in its own interval, 201 to 210', '200');
    // What is useless when it is converted is useless here.
    expect(refused({ estimate: narrow, measurements: [measured()] })).toEqual([
      [
        'measurements.0.inputs.cuffWidthCm',
        'wrong-relation',
        'one with which the 95 % interval of the conversion spans at most a factor of 2.5; or measure, so that you need no conversion',
        expect.stringMatching(/^\d+–\d+ mmHg$/),
      ],
    ]);
    expect(refused({ measurements: [measured({ valueMmHg: 71 })] })).toEqual([]);
    expect(refused({ measurements: [measured({ side: 'right' })] })).toEqual([]);
    expect(refused({ measurements: [measured({ standardDeviationMmHg: 0.1 })] })).toEqual([]);
    // With the estimate wrong, measurements are not held against it.
    expect(refused({ estimate: 160, measurements: [measured({ posture: 'seated' })] })).toHaveLength(1);
  });
});
