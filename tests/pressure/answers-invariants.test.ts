import { describe, expect, it } from 'vitest';
import {
  circumferenceBandPressure,
  compareOcclusionEquations,
  correctForBladderWidth,
  correctForCuffWidth,
  correctForPosture,
  equations,
  estimateOcclusionPressure,
  measuredOcclusionPressure,
  systolicSharePressure,
  withinFittedRange,
} from '../../src/index.js';
import { bloodPressureCautions, checkBloodPressure } from '../../src/pressure/blood-pressure.js';
import {
  ARM,
  codesOf,
  deviations,
  expectClose,
  expectHoldsTogether,
  LEG,
  parts,
  refusal,
  type Said,
  message,
  withCode,
  withWorking,
} from '../support/invariants.js';
import { working } from '../../src/text/index.js';

const estimate = (more: object) => estimateOcclusionPressure({ ...LEG, ...more } as never);

describe('an estimate', () => {
  it('keeps what it was given, and asks for nothing more', () => {
    const more = { ageYears: 25, sex: 'male', paddingCoefficient: 0.8, side: 'left', circumferenceSite: 'mid-limb' };
    expect(estimate(more).inputs).toEqual({ ...LEG, ...more });
    const errors = { circumferenceErrorCm: 1, systolicErrorMmHg: 5, diastolicErrorMmHg: 4 };
    const answer = estimate({ ...errors, equation: 'width-ratio-1993' });
    expectHoldsTogether(answer);
    expect(answer.inputs).toEqual({ ...LEG, ...errors });
    // (SBP − DBP) C / (3 W) + DBP: slopes 50/36 a cm, 55/36 a mmHg systolic, 1 − 55/36 diastolic.
    const found = deviations(answer);
    expectClose(found['circumference']! * answer.value, 50 / 36);
    expectClose(found['systolic']! * answer.value, (5 * 55) / 36);
    expectClose(found['diastolic']! * answer.value, 4 * (55 / 36 - 1));
    expect(parts(answer).slice(1)).toEqual([
      ['circumference', 'practice'],
      ['systolic', 'practice'],
      ['diastolic', 'practice'],
    ]);
    expect(codesOf(answer.assumptions)).toContain('reading-errors-given');
    const partly = estimate({ systolicErrorMmHg: 5, equation: 'width-ratio-1993' });
    expectHoldsTogether(partly);
    expect(message(partly.assumptions)[0]).toEqual([
      'readings-partly-exact',
      { values: { fields: ['circumferenceCm', 'diastolicMmHg'] } },
    ]);
    expect(parts(partly).map(([part]) => part)).toEqual(['equation', 'systolic']);
  });

  // 180/110, 160/100 (where grade 2 begins; a line of its own is `practice`) and 140/90, at and above.
  it.each([
    [139, 89, undefined, undefined],
    [140, 80, 'blood-pressure-high', 'systolic'],
    [139, 90, 'blood-pressure-high', 'diastolic'],
    [159, 99, 'blood-pressure-high', 'both'],
    [160, 99, 'blood-pressure-very-high', 'systolic'],
    [159, 100, 'blood-pressure-very-high', 'diastolic'],
    [179, 109, 'blood-pressure-very-high', 'both'],
    [180, 109, 'blood-pressure-refer', 'systolic'],
    [120, 110, 'blood-pressure-refer', 'diastolic'],
    [180, 110, 'blood-pressure-refer', 'both'],
  ] as const)('at %d/%d', (systolicMmHg, diastolicMmHg, code, high) => {
    const found = message(estimate({ systolicMmHg, diastolicMmHg }).cautions).filter(([each]) =>
      each.startsWith('blood'),
    );
    const [systolicLine, diastolicLine] =
      code === 'blood-pressure-refer' ? [180, 110] : code === 'blood-pressure-very-high' ? [160, 100] : [140, 90];
    const more = {
      severity: code === 'blood-pressure-high' ? 'caution' : 'stop',
      values: { systolic: systolicMmHg, diastolic: diastolicMmHg, high, systolicLine, diastolicLine },
      path: [high === 'diastolic' ? 'diastolicMmHg' : 'systolicMmHg'],
      source: code === 'blood-pressure-refer' ? 'risk-stratification-2022' : 'hypertension-classes-2018',
    };
    expect(found).toEqual(code ? [[code, more]] : []);
  });

  it('of blood pressure one of two may be unknown', () => {
    expect(message(bloodPressureCautions(undefined, 110))).toEqual([
      [
        'blood-pressure-refer',
        {
          severity: 'stop',
          values: { systolic: 'unknown', diastolic: 110, high: 'diastolic', systolicLine: 180, diastolicLine: 110 },
          path: ['diastolicMmHg'],
          source: 'risk-stratification-2022',
        },
      ],
    ]);
    expect(message(bloodPressureCautions(140))[0]![1]).toMatchObject({
      values: { systolic: 140, diastolic: 'unknown' },
      path: ['systolicMmHg'],
    });
    expect([bloodPressureCautions(), bloodPressureCautions(139), bloodPressureCautions(undefined, 89)]).toEqual([
      [],
      [],
      [],
    ]);
    expect(refusal(checkBloodPressure, { systolicMmHg: 70, diastolicMmHg: 120 })).toEqual([
      ['systolicMmHg', 'swapped-pressures', 'above the diastolic pressure of 120 mmHg', '70 mmHg'],
    ]);
    expect(refusal(checkBloodPressure, { systolicMmHg: 70, diastolicMmHg: 70 })).toHaveLength(1);
    expect(refusal(checkBloodPressure, { systolicMmHg: 71, diastolicMmHg: 70 })).toEqual([]);
    expect(refusal(checkBloodPressure, {}).map(([path, code]) => [path, code])).toEqual([
      ['systolicMmHg', 'missing'],
      ['diastolicMmHg', 'missing'],
    ]);
  });

  it('outside the sample, with a narrow cuff, or not to be expected', () => {
    // 51 adults of 23.23 ± 5.24 years: taken as 18 to 35.
    const aged = (ageYears: number) =>
      withCode(
        message(estimate({ cuffWidthCm: 18, ageYears, sex: 'male', equation: 'thigh-2019' }).cautions),
        'outside-fitted-range',
      );
    expect([aged(18), aged(35)]).toEqual([[], []]);
    const outside = (value: number): Said => [
      'outside-fitted-range',
      {
        severity: 'caution',
        values: { field: 'ageYears', value, low: 18, high: 35, unit: 'a', equation: 'thigh-2019' },
        path: ['ageYears'],
        source: 'thigh-equation-2019',
      },
    ];
    expect(aged(17)).toEqual([outside(17)]);
    expect(aged(36)).toEqual([outside(36)]);

    const narrow = (readings: object) => withCode(message(estimate(readings).cautions), 'narrow-cuff-on-thigh');
    expect(narrow({ cuffWidthCm: 7.9 })).toEqual([
      ['narrow-cuff-on-thigh', { severity: 'caution', path: ['cuffWidthCm'], source: 'narrow-cuffs-2024' }],
    ]);
    expect([narrow({ cuffWidthCm: 8 }), narrow(ARM)]).toEqual([[], []]);

    // 5.893 × 25 + 0.734 × 100 + 0.912 × 120 − 220.046 is 110.1; of a thigh of 25 cm at 105 mmHg 60.1 less: 105/100 → 96.4.
    const low = (diastolicMmHg: number) =>
      withCode(
        message(
          estimate({ circumferenceCm: 25, cuffWidthCm: 5, systolicMmHg: 105, diastolicMmHg, equation: 'thigh-2015' })
            .cautions,
        ),
        'below-diastolic',
      );
    expect(low(100)).toEqual([['below-diastolic', { severity: 'caution', values: { diastolic: 100 } }]]);
    // 147.325 + 29.36 + 95.76 − 220.046 is 52.4, above 40.
    expect(low(40)).toEqual([]);
  });

  // 0.9 to 1.6 times the systolic pressure, with cuffs of 12 to 20 cm on a thigh, supine.
  it('outside the index of healthy legs', () => {
    const index = (readings: object) =>
      withCode(message(estimate({ equation: 'width-ratio-1993', ...readings }).cautions), 'outside-thigh-index');
    const caution = (ratio: string): Said => [
      'outside-thigh-index',
      { severity: 'caution', values: { ratio }, source: 'segmental-pressures' },
    ];
    // 50 × 110 / 36 + 70 is 222.8: 1.86 of 120.
    expect(index({ circumferenceCm: 110 })).toEqual([caution('1.86')]);
    // 50 × 25 / 60 + 70 is 90.8: 0.76 of 120.
    expect(index({ circumferenceCm: 25, cuffWidthCm: 20 })).toEqual([caution('0.76')]);
    expect(index({ circumferenceCm: 110, cuffWidthCm: 11.9 })).toEqual([]);
    expect(index({ circumferenceCm: 25, cuffWidthCm: 20.1 })).toEqual([]);
    expect(index({ circumferenceCm: 110, posture: 'seated' })).toEqual([]);
    expect(index({ circumferenceCm: 55 })).toEqual([]);
    // On the arm no index is at hand: 50 × 70 / 36 + 70 is 167.2, 1.39; with 60/30 at 12 cm 30 × 70 / 36 + 30 is 88.3, 1.47.
    expect(index({ ...ARM, cuffWidthCm: 20, circumferenceCm: 20, equation: 'width-ratio-1993' })).toEqual([]);
    // Exactly at the ends: DBP + (SBP − DBP) C / (3 W) = 0.9 × 100 with 40 × 37.5 / 60 + 65; 1.6 × 100 with 50 × 88 / 40 + 50.
    expect(index({ systolicMmHg: 100, diastolicMmHg: 50, circumferenceCm: 48, cuffWidthCm: 20 })).toEqual([]);
    expect(index({ systolicMmHg: 100, diastolicMmHg: 50, circumferenceCm: 79.2, cuffWidthCm: 12 })).toEqual([]);
    expect(index({ systolicMmHg: 100, diastolicMmHg: 50, circumferenceCm: 79.3, cuffWidthCm: 12 })).toHaveLength(1);
  });

  it('says why it refuses', () => {
    const refused = (more: object) => refusal(estimateOcclusionPressure, { ...LEG, ...more });
    const wrong = (field: string, expected: string, received: string) => [
      [field, 'wrong-relation', expected, received],
    ];
    expect(refused({ equation: 'arm-2015' })).toEqual(wrong('limb', "'arm' for equation arm-2015", 'leg'));
    expect(refused({ equation: 'thigh-2019' })).toEqual(
      wrong('cuffWidthCm', '18 cm (± 0.5) for equation thigh-2019', '12'),
    );
    expect(refused({ equation: 'thigh-index-18' })[0]![2]).toMatch(
      /^18 to 20 cm \(± 0.5\) for equation thigh-index-18$/,
    );
    expect(refused({ equation: 'thigh-2019', cuffWidthCm: 18 })).toEqual(
      wrong('ageYears', 'given, for equation thigh-2019', 'undefined'),
    );
    expect(refused({ equation: 'thigh-2019', cuffWidthCm: 18, ageYears: 25 })).toEqual(
      wrong('sex', 'given, for equation thigh-2019', 'undefined'),
    );
    expect(refused({ equation: 'padding-2006' })).toEqual(
      wrong('paddingCoefficient', 'given, for equation padding-2006', 'undefined'),
    );
    // With a field wrong, the equation is not asked.
    expect(refused({ equation: 'thigh-2019', posture: 'x' }).map(([path]) => path)).toEqual(['posture']);
    expect(refused({ limb: 'arm' }).map(([path]) => path)).toEqual([]);
    expect(refused({ limb: 'arm', circumferenceCm: 71 }).map(([path]) => path)).toEqual(['circumferenceCm']);
    expect(refused({ circumferenceCm: 24 }).map(([path]) => path)).toEqual(['circumferenceCm']);
  });
});

describe('a comparison', () => {
  it('has the ends of its answers, and why the others do not apply', () => {
    const { answers, spread, notApplicable } = compareOcclusionEquations({ ...LEG, cuffWidthCm: 18 });
    for (const answer of answers) {
      expectHoldsTogether(answer);
      expect(codesOf(answer.assumptions)[0]).toBe('readings-exact');
    }
    // 95 + 17.9 × 55 / 18; 50 × 55 / 54 + 70; 1.1 × 120.
    expect(answers.map(({ equation, value }) => [equation, value.toFixed(6)])).toEqual([
      ['pooled-curve-thigh-2026', '149.694444'],
      ['width-ratio-1993', '120.925926'],
      ['thigh-index-18', '132.000000'],
    ]);
    expectClose(spread.lowest, 2750 / 54 + 70);
    expectClose(spread.highest, 95 + (17.9 * 55) / 18);
    expectClose(spread.difference, 25 + (17.9 * 55) / 18 - 2750 / 54);
    expect(Object.fromEntries(notApplicable.map(({ equation, field }) => [equation, field]))).toMatchObject(
      Object.fromEntries([
        ['pooled-curve-arm-2026', 'limb'],
        ['thigh-2019', 'ageYears'],
        ['thigh-2015', 'cuffWidthCm'],
        ['arm-2015', 'limb'],
        ['thigh-index-12', 'cuffWidthCm'],
        ['padding-2006', 'paddingCoefficient'],
      ]),
    );
    // Every equation is in one of the two lists, once.
    expect([...answers, ...notApplicable].map(({ equation }) => equation).sort()).toEqual(
      equations.occlusionPressure.map(({ id }) => id).sort(),
    );
    expect(notApplicable[1]!.expected).toBe('given, for equation thigh-2019');
    expectHoldsTogether(notApplicable);
  });
});

describe('a measured pressure', () => {
  // Docs: Doppler 8.6 (12.2 / √2), oximeter 13.1 (45 / 3.92 and 6.3 in quadrature), automated 8 on the arm and 15 on the leg.
  it.each([
    ['doppler', 'leg', 8.6, 'derived', 'error-largest-published', 'femoral-repeat'],
    ['doppler', 'arm', 8.6, 'derived', 'error-largest-published', 'femoral-repeat'],
    ['oximeter', 'arm', 13.1, 'derived', 'error-between-methods', 'retest-2020'],
    ['automated', 'arm', 8, 'published', 'error-between-methods', 'automated-2016'],
    ['automated', 'leg', 15, 'published', 'error-between-methods', 'automated-2016'],
  ] as const)('%s, %s', (method, limb, deviation, evidence, code, source) => {
    const answer = measuredOcclusionPressure({ valueMmHg: 170, method, limb });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({
      kind: 'occlusion-pressure',
      value: 170,
      unit: 'mm[Hg]',
      equation: `measured-${method}`,
      evidence,
      scale: 'log',
      errors: [{ part: 'measurement', standardDeviation: deviation / 170, evidence }],
      cautions: [],
    });
    expect(working(answer)!.sources).toEqual([source]);
    expect(message(answer.assumptions)).toEqual([['log-normal-interval'], [code]]);
    expect(answer.inputs).toEqual({ valueMmHg: 170, method, limb });
  });
  it('with an error of one’s own, and all that is known of it', () => {
    const input = {
      valueMmHg: 170,
      method: 'doppler',
      limb: 'leg',
      side: 'left',
      cuffWidthCm: 12,
      posture: 'supine',
      day: 0,
      standardDeviationMmHg: 3,
    } as const;
    const answer = measuredOcclusionPressure(input);
    expectHoldsTogether(answer);
    expect(answer.inputs).toEqual(input);
    expect(answer.errors).toEqual([{ part: 'measurement', standardDeviation: 3 / 170, evidence: 'practice' }]);
    expect(withWorking(answer)).toMatchObject({ evidence: 'practice', sources: [] });
    expect(message(answer.assumptions)).toEqual([['log-normal-interval'], ['error-given']]);
    expect(refusal(measuredOcclusionPressure, {}).map(([path, code]) => [path, code])).toEqual([
      ['valueMmHg', 'missing'],
      ['method', 'missing'],
      ['limb', 'missing'],
    ]);
    expect(refusal(measuredOcclusionPressure, { ...input, standardDeviationMmHg: 169 })).toEqual([]);
    expect(refusal(measuredOcclusionPressure, { ...input, standardDeviationMmHg: 170 })).toEqual([
      ['standardDeviationMmHg', 'wrong-relation', 'below the measured pressure of 170 mmHg', '170 mmHg'],
    ]);
  });
});

describe('another cuff width', () => {
  const person = { limb: 'leg', circumferenceCm: 60, systolicMmHg: 120, diastolicMmHg: 70 } as const;
  const convert = (more: object) =>
    correctForCuffWidth({ ...person, occlusionMmHg: 170, fromWidthCm: 12, toWidthCm: 10, ...more });
  it('from 12 to 10 cm', () => {
    const answer = convert({});
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      equation: 'width-correction',
      evidence: 'derived',
      scale: 'log',
    });
    // Pressures above diastolic by the curve: 25 + 17.9 × 5 is 114.5, 25 + 17.9 × 6 is 132.4.
    expectClose(answer.value, 70 + (100 * 132.4) / 114.5);
    expect(parts(answer)).toEqual([['width-correction', 'derived']]);
    // √2 × 0.23, in proportion to ln 1.2 / ln 1.3; slopes of ln above with b: 6/132.4 − 5/114.5, with a: 50/132.4 − 50/114.5.
    const [b, a] = [6 / 132.4 - 5 / 114.5, 50 / 132.4 - 50 / 114.5];
    const cuffs = (0.23 * Math.log(1.2)) / Math.log(1.3);
    const deviation = Math.sqrt(2 * cuffs ** 2 + b * b * 10.6 - 2 * b * a * 0.779 + a * a * 0.083);
    expectClose(answer.standardDeviation!, deviation * (1 - 70 / answer.value));
    expect(answer.inputs).toEqual({ occlusionMmHg: 170, ...person, fromWidthCm: 12, toWidthCm: 10 });
    expect(message(answer.assumptions)).toEqual([['ratio-to-curve-kept'], ['log-normal-interval']]);
    expect(working(answer)!.sources).toContain('posture-widths-2018');
    expect(message(answer.cautions)).toEqual([
      ['width-converted', { severity: 'caution', values: { from: 12, to: 10 }, path: ['toWidthCm'] }],
    ]);
    const known = convert({ standardDeviationMmHg: 9 });
    expectHoldsTogether(known);
    expect(parts(known)).toEqual([
      ['width-correction', 'derived'],
      ['occlusion', 'practice'],
    ]);
    expectClose(deviations(known)['occlusion']!, 0.09 * (1 - 70 / answer.value));
    expect(known.inputs).toMatchObject({ standardDeviationMmHg: 9 });
  });
  it('from 30 % apart on, the errors of two cuffs are whole', () => {
    const cuffs = (toWidthCm: number) => {
      const { standardDeviation, value } = convert({ toWidthCm });
      return standardDeviation! / (1 - 70 / value);
    };
    for (const width of [12 * 1.31, 18, 12 / 1.31, 8]) expect(cuffs(width)).toBeGreaterThan(Math.SQRT2 * 0.23);
    expect(cuffs(12.5)).toBeLessThan(0.2 * Math.SQRT2 * 0.23);
  });
  it('to the same, or of what is no occlusion pressure', () => {
    const same = convert({ toWidthCm: 12 });
    expectHoldsTogether(same);
    expect(same).toMatchObject({ value: 170, standardDeviation: 0, cautions: [] });
    const refused = (more: object) =>
      refusal(correctForCuffWidth, { ...person, occlusionMmHg: 170, fromWidthCm: 5, toWidthCm: 5, ...more });
    expect(refused({ occlusionMmHg: 70 })).toEqual([
      ['occlusionMmHg', 'wrong-relation', 'above the diastolic pressure of 70 mmHg', '70'],
    ]);
    expect(refused({ occlusionMmHg: 71 })).toEqual([]);
    expect(refused({ limb: 'arm', circumferenceCm: 71 }).map(([path]) => path)).toEqual(['circumferenceCm']);
    expect(refused({ systolicMmHg: 60 }).map(([path]) => path)).toEqual(['systolicMmHg']);
    expect(refused({ toWidthCm: 10, occlusionMmHg: 90, standardDeviationMmHg: 20 })).toEqual([
      [
        'standardDeviationMmHg',
        'wrong-relation',
        'one with which the 95 % interval of the conversion stays above the diastolic pressure of 70 mmHg; or measure, so that you need no conversion',
        '61–107 mmHg',
      ],
    ]);
  });
  // Physiol Meas 2024: a conversion from 12 to 5 cm is not valid; its limits of agreement span 189 to 470 mmHg, 2.5-fold.
  it('is refused where the interval spans more than a factor of 2.5', () => {
    const refused = (more: object) =>
      refusal(correctForCuffWidth, { ...person, occlusionMmHg: 150, fromWidthCm: 18, toWidthCm: 10, ...more });
    const spans =
      'one with which the 95 % interval of the conversion spans at most a factor of 2.5; or measure, so that you need no conversion';
    expect(refused({ toWidthCm: 3 })).toEqual([
      ['toWidthCm', 'wrong-relation', spans, expect.stringMatching(/^\d+–\d+ mmHg$/)],
    ]);
    expect(refused({ fromWidthCm: 12, toWidthCm: 5 }).map(([path]) => path)).toEqual(['toWidthCm']);
    expect(refused({})).toEqual([]);
    expect(refused({ standardDeviationMmHg: 25 })).toEqual([
      ['standardDeviationMmHg', 'wrong-relation', spans, expect.any(String)],
    ]);
    // Nothing that is answered spans more, and the limit leaves no gap: the last width answered is close to it.
    let last = 0;
    for (let toWidthCm = 18; toWidthCm >= 3; toWidthCm -= 0.1) {
      const given = { ...person, occlusionMmHg: 150, fromWidthCm: 18, toWidthCm };
      if (refusal(correctForCuffWidth, given).length > 0) break;
      const { lower, upper } = correctForCuffWidth(given);
      last = upper! / lower!;
      expect(last).toBeLessThanOrEqual(2.5);
    }
    expect(last).toBeGreaterThan(2.45);
  });
});

describe('another posture', () => {
  const given = {
    occlusionMmHg: 150,
    diastolicMmHg: 70,
    limb: 'leg',
    cuffWidthCm: 13.5,
    fromPosture: 'supine',
    toPosture: 'seated',
  } as const;
  const shift = (more: object) => correctForPosture({ ...given, ...more } as never);
  // Docs: h = 1, 1.25, 1.53; people differ by 10 % of the pressure above diastolic, to or from standing by 18 %.
  it.each([
    ['supine', 'seated', 1.25, 0.1],
    ['seated', 'supine', 1 / 1.25, 0.1],
    ['supine', 'standing', 1.53, 0.18],
    ['standing', 'supine', 1 / 1.53, 0.18],
    ['seated', 'standing', 1.53 / 1.25, 0.18],
    ['standing', 'seated', 1.25 / 1.53, 0.18],
    ['seated', 'seated', 1, 0],
  ] as const)('from %s to %s', (fromPosture, toPosture, ratio, deviation) => {
    const answer = shift({ fromPosture, toPosture });
    expectHoldsTogether(answer);
    expect(answer).toMatchObject({
      kind: 'occlusion-pressure',
      unit: 'mm[Hg]',
      equation: 'posture-shift',
      evidence: 'derived',
      scale: 'log',
    });
    expectClose(answer.value, 70 + 80 * ratio);
    expect(parts(answer)).toEqual([['posture', 'derived']]);
    expectClose(answer.standardDeviation!, deviation * (1 - 70 / answer.value));
    expect(answer.inputs).toEqual({ ...given, fromPosture, toPosture });
    expect(message(answer.assumptions)).toEqual([['posture-ratio'], ['log-normal-interval']]);
    expect(message(answer.cautions)).toEqual(
      ratio === 1
        ? []
        : [
            [
              'posture-shifted',
              { severity: 'caution', values: { from: fromPosture, to: toPosture }, path: ['toPosture'] },
            ],
          ],
    );
    expect(working(answer)!.sources).toEqual(['posture-2018', 'posture-widths-2018', 'cuff-width-2019']);
  });
  it('with an error, and where it is refused', () => {
    const answer = shift({ standardDeviationMmHg: 8 });
    expectHoldsTogether(answer);
    expectClose(deviations(answer)['occlusion']!, 0.1 * (1 - 70 / 170));
    expect(answer.inputs).toMatchObject({ standardDeviationMmHg: 8 });
    const refused = (more: object) => refusal(correctForPosture, { ...given, ...more });
    expect(refused({ limb: 'arm' })).toEqual([
      ['limb', 'wrong-relation', "'leg': no means of another posture are published for the arm", 'arm'],
    ]);
    expect(refused({ limb: 'arm', cuffWidthCm: undefined }).map(([path]) => path)).toEqual(['cuffWidthCm']);
    expect(refused({ limb: 'arm', toPosture: 'supine' })).toEqual([]);
    expect(refused({ occlusionMmHg: 70 })).toEqual([
      ['occlusionMmHg', 'wrong-relation', 'above the diastolic pressure of 70 mmHg', '70'],
    ]);
    expect(refused({ occlusionMmHg: 55, diastolicMmHg: 40, fromPosture: 'standing', toPosture: 'supine' })).toEqual([
      ['occlusionMmHg', 'wrong-relation', 'a pressure that stays at or above 50 mmHg', '55 mmHg'],
    ]);
    expect(refused({ standardDeviationMmHg: 80 })).toEqual([
      [
        'standardDeviationMmHg',
        'wrong-relation',
        'one with which the 95 % interval of the conversion stays above the diastolic pressure of 70 mmHg; or measure, so that you need no conversion',
        '53–542 mmHg',
      ],
    ]);
  });
});

describe('a reading with the wrong bladder', () => {
  const reading = { systolicMmHg: 140, diastolicMmHg: 85, circumferenceCm: 42, bladderWidthCm: 12 };
  it('is less its published bias', () => {
    const { systolic, diastolic } = correctForBladderWidth(reading);
    for (const [answer, kind, field] of [
      [systolic, 'systolic-pressure', 'systolicMmHg'],
      [diastolic, 'diastolic-pressure', 'diastolicMmHg'],
    ] as const) {
      expectHoldsTogether(answer);
      expect(answer).toMatchObject({
        kind,
        unit: 'mm[Hg]',
        equation: 'bladder-bias',
        evidence: 'published',
        cautions: [],
      });
      expect(answer.inputs).toEqual({ [field]: reading[field], circumferenceCm: 42, bladderWidthCm: 12 });
      expect(message(answer.assumptions)).toEqual([['bias-published']]);
      expect(working(answer)!.sources).toEqual(['monica-quality']);
    }
  });
  it.each([
    [25.9, true],
    [26, false],
    [50, false],
    [50.1, true],
  ])('arm of %d cm', (circumferenceCm, outside) => {
    const { systolic, diastolic } = correctForBladderWidth({ ...reading, circumferenceCm });
    for (const answer of [systolic, diastolic]) {
      expect(message(answer.cautions)).toEqual(
        outside
          ? [
              [
                'arm-outside-bias-range',
                {
                  severity: 'caution',
                  values: { value: circumferenceCm },
                  path: ['circumferenceCm'],
                  source: 'monica-quality',
                },
              ],
            ]
          : [],
      );
    }
  });
  it('is refused where the pressures would cross', () => {
    // At AC 42, B 12 the biases are 12.08 and 8.50 (reference), so 3.6 mmHg of distance are lost.
    const issues = refusal(correctForBladderWidth, { ...reading, systolicMmHg: 88 });
    expect(issues).toEqual([
      [
        'systolicMmHg',
        'wrong-relation',
        expect.stringMatching(
          /^far enough above the diastolic pressure to stay above it when corrected \(76\.5\d? mmHg\)$/,
        ) as unknown as string,
        '88 mmHg',
      ],
    ]);
    expect(refusal(correctForBladderWidth, { ...reading, systolicMmHg: 89 })).toEqual([]);
    expect(refusal(correctForBladderWidth, { ...reading, circumferenceCm: 71 }).map(([path]) => path)).toEqual([
      'circumferenceCm',
    ]);
  });
});

describe('a fixed training pressure', () => {
  // Docs: 120 below 51 cm, 150 below 56, 180 below 60, 210 from there; 1.3 × SBP.
  it.each([
    [50.9, 120],
    [51, 150],
    [55.9, 150],
    [56, 180],
    [59.9, 180],
    [60, 210],
  ])('of a thigh of %d cm is %d', (circumferenceCm, value) => {
    const answer = circumferenceBandPressure({ circumferenceCm });
    expectHoldsTogether(answer);
    expect(withWorking(answer)).toMatchObject({
      kind: 'fixed-training-pressure',
      value,
      unit: 'mm[Hg]',
      equation: 'circumference-bands',
      evidence: 'unconfirmed',
      sources: ['circumference-bands'],
    });
    expect(answer.inputs).toEqual({ circumferenceCm });
    expect(message(answer.assumptions)).toEqual([['rule-of-the-trade'], ['bands-without-gaps']]);
    expect(message(answer.cautions)).toEqual([
      ['not-an-occlusion-pressure', { severity: 'caution' }],
      ['equation-unconfirmed', { severity: 'caution', values: { equation: 'circumference-bands' } }],
    ]);
  });
  it('of a systolic pressure', () => {
    const answer = systolicSharePressure({ systolicMmHg: 120 });
    expectHoldsTogether(answer);
    expectClose(answer.value, 156);
    expect(answer.inputs).toEqual({ systolicMmHg: 120 });
    expect(message(answer.assumptions)).toEqual([['rule-of-the-trade']]);
    expect(refusal(systolicSharePressure, { systolicMmHg: 12 }).map(([path]) => path)).toEqual(['systolicMmHg']);
    expect(refusal(circumferenceBandPressure, { circumferenceCm: 12 }).map(([path]) => path)).toEqual([
      'circumferenceCm',
    ]);
  });
});

describe('where readings lie', () => {
  const ALL = { limb: 'leg', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 12, ageYears: 25 };
  const zones = (input: object) => withinFittedRange(input as never);
  it('against each sample', () => {
    expect(zones({ ...ALL, equation: 'thigh-2019', cuffWidthCm: 17.5 })).toEqual({
      equation: 'thigh-2019',
      zone: 'not-known',
      fields: [
        { field: 'limb', zone: 'inside', fitted: 'leg' },
        { field: 'cuffWidthCm', zone: 'inside', fitted: { low: 18, high: 18 } },
        { field: 'circumferenceCm', zone: 'not-known' },
        { field: 'systolicMmHg', zone: 'not-known' },
        { field: 'ageYears', zone: 'inside', fitted: { low: 18, high: 35 } },
      ],
    });
    expect(zones({ equation: 'padding-2006', circumferenceCm: 20 })).toEqual({
      equation: 'padding-2006',
      zone: 'not-known',
      fields: [
        { field: 'cuffWidthCm', zone: 'not-known' },
        { field: 'circumferenceCm', zone: 'inside', fitted: { low: 20, high: 75 } },
        { field: 'systolicMmHg', zone: 'not-known' },
      ],
    });
    expect(zones({ ...ALL, equation: 'thigh-index-18', limb: 'arm', cuffWidthCm: 17.4 })).toEqual({
      equation: 'thigh-index-18',
      zone: 'outside',
      fields: [
        { field: 'limb', zone: 'outside', fitted: 'leg' },
        { field: 'cuffWidthCm', zone: 'outside', fitted: { low: 18, high: 20 } },
        { field: 'systolicMmHg', zone: 'not-known' },
      ],
    });
    expect(zones({ equation: 'thigh-index-18', cuffWidthCm: 20.5 }).fields.slice(0, 2)).toEqual([
      { field: 'limb', zone: 'not-known', fitted: 'leg' },
      { field: 'cuffWidthCm', zone: 'inside', fitted: { low: 18, high: 20 } },
    ]);
    expect(zones({ equation: 'thigh-index-18' }).fields[1]!.zone).toBe('not-known');
    expect(zones({ ...ALL, equation: 'thigh-index-18', cuffWidthCm: 20.6 }).zone).toBe('outside');
    expect(zones({ equation: 'padding-2006', circumferenceCm: 19.9 }).zone).toBe('outside');
    // 14 means with cuffs of 5 to 18 cm; the circumferences and blood pressures of their samples are not reported.
    const curve = { ...ALL, equation: 'pooled-curve-thigh-2026' };
    expect(zones(curve)).toEqual({
      equation: 'pooled-curve-thigh-2026',
      zone: 'not-known',
      fields: [
        { field: 'limb', zone: 'inside', fitted: 'leg' },
        { field: 'cuffWidthCm', zone: 'inside', fitted: { low: 5, high: 18 } },
        { field: 'circumferenceCm', zone: 'not-known' },
        { field: 'systolicMmHg', zone: 'not-known' },
        { field: 'diastolicMmHg', zone: 'not-known' },
      ],
    });
    expect(zones({ ...curve, cuffWidthCm: 4.9 }).zone).toBe('outside');
    expect(refusal(withinFittedRange, {}).map(([path, code]) => [path, code])).toEqual([['equation', 'missing']]);
  });
});
