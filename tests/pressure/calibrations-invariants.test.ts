import { describe, expect, it } from 'vitest';
import { calibrateOcclusionPressure, estimateOcclusionPressure, measuredOcclusionPressure } from '../../src/index.js';
import { LEG } from '../support/inputs.js';
import {
  codesOf,
  deviations,
  expectClose,
  expectHoldsTogether,
  parts,
  refusalPage,
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
    expect(working(answer)!.sources).toEqual(['pulse-pressure-2021']);
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

  it('is refused as the golden page says', async () => {
    const { inputs } = base;
    const estimate = (more: object) => ({ ...base, ...more });
    const without = (field: string) =>
      estimate({ inputs: Object.fromEntries(Object.entries(inputs).filter(([name]) => name !== field)) });
    const { cuffWidthCm: _width, ...noWidth } = measured().inputs;
    const changed = (more: object) => ({ ...measured(), inputs: { ...measured().inputs, ...more } });
    const fields = ['limb', 'side', 'posture', 'circumferenceCm', 'cuffWidthCm', 'systolicMmHg', 'diastolicMmHg'];
    const many = (length: number) => ({ measurements: Array.from({ length }, () => measured()) });
    const one = (measurement: unknown) => ({ measurements: [measurement] });
    const cases = {
      ...Object.fromEntries(fields.map((field) => [`an estimate without ${field}`, { estimate: without(field) }])),
      'an estimate of a list': { estimate: estimate({ inputs: [] }) },
      'an estimate of null': { estimate: estimate({ inputs: null }) },
      'an estimate without an error': { estimate: estimate({ standardDeviation: undefined }) },
      'an estimate with hardly an error': { estimate: estimate({ standardDeviation: 0.0005 }) },
      'an estimate by another equation': { estimate: estimate({ equation: 'mine' }) },
      'an estimate that is a number': { estimate: 160 },
      'no measurements': { measurements: [] },
      'measurements that are a number': { measurements: 5 },
      'measurements left out': { measurements: undefined },
      '101 measurements': many(101),
      '100 measurements': many(100),
      'a measurement that is a number': { measurements: [measured(), 170] },
      'an estimate for a measurement': one(base),
      'a measurement by a number': one({ ...measured(), equation: 5 }),
      'a measurement without an error': one(measured({ standardDeviationMmHg: 0 })),
      'a measurement with a small error': one(measured({ standardDeviationMmHg: 0.1 })),
      'at the diastolic pressure': one(measured({ valueMmHg: 70 })),
      'above it': one(measured({ valueMmHg: 71 })),
      'both sides': one(changed({ side: 'both' })),
      'the other side': one(measured({ side: 'right' })),
      'another limb': one(measured({ limb: 'arm' })),
      'another posture': one(measured({ posture: 'seated' })),
      'no cuff width': one({ ...measured(), inputs: noWidth }),
      'half a day': one(changed({ day: 1.5 })),
      'ends that are swapped': one({ ...measured(), lower: 230, upper: 210 }),
      'outside its own interval': one({ ...measured(), lower: 201, upper: 210 }),
      // What is useless when it is converted is useless here.
      'a cuff of 12 cm for one of 5 cm': { estimate: narrow },
      // With the estimate wrong, measurements are not compared with it.
      'a wrong estimate, and another posture': { estimate: 160, ...one(measured({ posture: 'seated' })) },
    };
    const call = (more: object) => calibrate(more);
    await expect(refusalPage(call, cases)).toMatchFileSnapshot('refused/calibrations.txt');
  });
});
