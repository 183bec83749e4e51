import { describe, expect, it } from 'vitest';
import { equations, estimateOcclusionPressure } from '../../src/index.js';
import type { OcclusionEquation } from '../../src/pressure/equation.js';
import { estimateBy } from '../../src/pressure/estimate.js';
import {
  ARM,
  deviations,
  expectClose,
  expectHoldsTogether,
  LEG,
  parts,
  refusal,
  type Said,
  said,
  withCode,
} from '../support/hold-together.js';

const all: readonly OcclusionEquation[] = equations.occlusionPressure;

/** What the docs of each equation say of it. */
interface Told {
  /** Its own error: in mmHg, or as a share of the answer. */
  readonly own?: number;
  readonly share?: (kind: Kind) => number;
  readonly grade: string;
  /** Whether how far laboratories differ comes on top: not where the error is that of several laboratories’ means. */
  readonly laboratory: boolean;
  readonly home?: 'supine';
  readonly widths?: readonly [number, number];
  readonly error: Said;
  readonly more: readonly string[];
  readonly unchecked: string;
}
type Kind = 'thigh-narrow' | 'thigh-wide' | 'arm';
const means = (code: string, count: number): Said => [code, { values: { count } }];
const TOLD: Readonly<Record<string, Told>> = {
  'thigh-2019': {
    own: 15.289 * 1.009756,
    grade: 'published',
    laboratory: true,
    home: 'supine',
    widths: [18, 18],
    error: ['error-from-fit'],
    more: ['width-taken-from-publication', 'girth-site-not-stated'],
    unchecked: 'limb circumference, systolic pressure',
  },
  'thigh-2015': {
    own: 30,
    grade: 'derived',
    laboratory: true,
    home: 'supine',
    widths: [5, 5],
    error: ['error-from-fit'],
    more: ['girth-site-third'],
    unchecked: 'limb circumference, systolic pressure, diastolic pressure',
  },
  'arm-2015': {
    own: 10.2,
    grade: 'derived',
    laboratory: true,
    home: 'supine',
    widths: [5, 5],
    error: ['error-from-fit'],
    more: ['girth-site-not-stated'],
    unchecked: 'limb circumference, systolic pressure, diastolic pressure',
  },
  'width-ratio-1993': {
    share: (kind) => ({ 'thigh-narrow': 0.3, 'thigh-wide': 0.28, arm: 0.23 })[kind],
    grade: 'derived',
    laboratory: false,
    home: 'supine',
    error: means('error-from-means', 9),
    more: ['width-ratio-bias'],
    unchecked: 'limb circumference, systolic pressure, diastolic pressure, cuff width',
  },
  'pooled-means-thigh-wide': {
    share: () => 0.19,
    grade: 'derived',
    laboratory: false,
    widths: [11, 20],
    error: means('error-left-out', 9),
    more: ['own-working', 'nominal-person'],
    unchecked: 'limb circumference, systolic pressure',
  },
  'pooled-means-thigh-narrow': {
    share: () => 0.34,
    grade: 'derived',
    laboratory: false,
    home: 'supine',
    widths: [5, 6],
    error: means('error-left-out', 3),
    more: ['own-working', 'nominal-person'],
    unchecked: 'limb circumference, systolic pressure',
  },
  'pooled-means-arm-narrow': {
    share: () => 0.18,
    grade: 'derived',
    laboratory: false,
    home: 'supine',
    widths: [5, 6],
    error: means('error-left-out', 2),
    more: ['own-working', 'nominal-person'],
    unchecked: 'limb circumference, systolic pressure',
  },
  'thigh-index-12': {
    share: () => 0.23,
    grade: 'derived',
    laboratory: false,
    home: 'supine',
    widths: [12, 12],
    error: means('error-from-means', 3),
    more: ['index-band-12'],
    unchecked: 'systolic pressure',
  },
  'thigh-index-18': {
    share: () => 0.23,
    grade: 'derived',
    laboratory: false,
    home: 'supine',
    widths: [18, 20],
    error: means('error-from-means', 3),
    more: ['index-band-18'],
    unchecked: 'systolic pressure',
  },
  'padding-2006': {
    grade: 'published',
    laboratory: true,
    home: 'supine',
    error: ['error-not-known'],
    more: ['padding-from-caller', 'width-not-in-formula', 'padding-too-low'],
    unchecked: 'systolic pressure, cuff width',
  },
};

// Docs of estimateOcclusionPressure: laboratories 25, 13 and 11 %; postures 15, 26 and 17 % on the thigh; another width 48 % for
// each unit of |ln| (docs of correctForCuffWidth).
const LABORATORY = { 'thigh-narrow': 0.25, 'thigh-wide': 0.13, arm: 0.11 } as const;
const POSTURES = { supine: 0, seated: 0.15, standing: 0.26 } as const;
const kindOf = (limb: string, width: number): Kind =>
  limb === 'arm' ? 'arm' : width < 8 ? 'thigh-narrow' : 'thigh-wide';

function expectedErrors(
  id: string,
  readings: { limb: string; cuffWidthCm: number; posture: keyof typeof POSTURES },
  value: number,
) {
  const { own, share, laboratory, home, widths } = TOLD[id]!;
  const kind = kindOf(readings.limb, readings.cuffWidthCm);
  const found: Record<string, number> = { equation: own ?? share!(kind) * value };
  if (laboratory) found['laboratory'] = LABORATORY[kind] * value;
  if (home && readings.limb === 'leg' && readings.posture !== home)
    found['posture'] = POSTURES[readings.posture] * value;
  const { cuffWidthCm: width } = readings;
  const from = widths ? Math.min(Math.max(width, widths[0]), widths[1]) : width;
  if (from !== width) found['width-correction'] = 0.48 * Math.abs(Math.log(from / width)) * value;
  return found;
}

describe('an estimate by each equation', () => {
  // 0.5 cm from a width counts as that width (docs of withinFittedRange).
  const WIDTHS = [5, 5.5, 5.6, 7.9, 8, 11.6, 12, 17.4, 17.5, 18, 20.5];
  const readingsOf = ({ limb }: OcclusionEquation, cuffWidthCm: number, posture: keyof typeof POSTURES) =>
    ({
      ...(limb === 'arm' ? ARM : LEG),
      cuffWidthCm,
      posture,
      ageYears: 25,
      sex: 'female',
      paddingCoefficient: 0.8,
    }) as const;
  const fits = (id: string, width: number): boolean => {
    const [low, high] = TOLD[id]!.widths ?? [0, 99];
    return width >= low - 0.5 && width <= high + 0.5;
  };

  it.each(all.map(({ id }) => id))('%s is refused with another cuff', (id) => {
    const equation = all.find((each) => each.id === id)!;
    const refused = WIDTHS.filter(
      (width) =>
        refusal(estimateOcclusionPressure, { ...readingsOf(equation, width, 'supine'), equation: id }).length > 0,
    );
    expect(refused).toEqual(WIDTHS.filter((width) => !fits(id, width)));
  });

  for (const equation of all) {
    for (const width of WIDTHS.filter((each) => fits(equation.id, each))) {
      it(`${equation.id}, ${width} cm: errors, assumptions, sources`, () => {
        const told = TOLD[equation.id]!;
        for (const posture of ['supine', 'seated', 'standing'] as const) {
          const readings = readingsOf(equation, width, posture);
          const { limb } = readings;
          // What holds for everyone is kept with the equation, so a copy of the equation works it out anew.
          const answer = estimateBy({ ...equation }, readings);
          expectHoldsTogether(answer);
          expect(answer).toMatchObject({ kind: 'occlusion-pressure', unit: 'mm[Hg]', equation: equation.id });
          expect(answer.inputs).toEqual(readings);
          expect(answer.sources).toEqual(equation.sources);
          const known = told.error[0] !== 'error-not-known';
          const errors = known ? expectedErrors(equation.id, readings, answer.value) : {};
          expect(Object.keys(deviations(answer))).toEqual(Object.keys(errors));
          for (const [part, deviation] of Object.entries(errors))
            expectClose(deviations(answer)[part]!, deviation, part);
          for (const [part, grade] of parts(answer)) expect(grade).toBe(part === 'equation' ? told.grade : 'derived');
          expect(said(answer.assumptions)).toEqual([
            ['readings-exact'],
            ...(known ? [['normal-interval']] : []),
            told.error,
            ...(known && told.laboratory ? [['laboratories-differ']] : []),
            ...(known && limb === 'arm' && posture !== 'supine' ? [['arm-posture-not-known']] : []),
            ...told.more.map((code) => [code]),
            ['fitted-range-not-known', { values: { names: told.unchecked } }],
          ]);
          expect(said(answer.cautions)[0]).toEqual(['estimate-is-a-start', { severity: 'note' }]);
          expect(withCode(said(answer.cautions), 'equation-unconfirmed')).toEqual(
            equation.evidence === 'unconfirmed'
              ? [['equation-unconfirmed', { severity: 'caution', values: { equation: equation.id } }]]
              : [],
          );
        }
      });
    }
  }

  // Reference: thigh pressures 17 to 61 mmHg higher seated, about 55 standing; the arm’s highest seated.
  it('says what another posture does', () => {
    const by = (id: string, readings: object) => {
      const equation = all.find((each) => each.id === id)!;
      return said(
        estimateBy({ ...equation }, { ...LEG, ageYears: 25, sex: 'male', paddingCoefficient: 0.8, ...readings })
          .cautions,
      ).filter(([code]) => code.startsWith('posture'));
    };
    const thigh: Said = [
      'posture-shifts-thigh',
      { severity: 'note', path: ['posture'], source: 'posture-widths-2018' },
    ];
    const arm: Said = ['posture-shifts-arm', { severity: 'note', path: ['posture'] }];
    const caution = (code: string, values: object): Said => [code, { severity: 'caution', values, path: ['posture'] }];
    expect(by('thigh-index-12', {})).toEqual([]);
    expect(by('thigh-index-12', { posture: 'seated' })).toEqual([
      caution('posture-differs', { equation: 'thigh-index-12', fitted: 'supine', asked: 'seated' }),
      thigh,
    ]);
    expect(by('width-ratio-1993', {})).toEqual([]);
    expect(by('width-ratio-1993', { posture: 'standing' })).toEqual([
      caution('posture-ignored', { equation: 'width-ratio-1993' }),
      thigh,
    ]);
    expect(by('thigh-2019', { cuffWidthCm: 18 })).toEqual([
      ['posture-not-stated', { severity: 'note', values: { equation: 'thigh-2019' }, path: ['posture'] }],
    ]);
    expect(by('thigh-2019', { cuffWidthCm: 18, posture: 'seated' })).toEqual([
      caution('posture-may-differ', { equation: 'thigh-2019', asked: 'seated' }),
      thigh,
    ]);
    expect(by('pooled-means-thigh-wide', { posture: 'standing' })).toEqual([]);
    expect(by('arm-2015', { ...ARM, posture: 'standing' })).toEqual([
      caution('posture-differs', { equation: 'arm-2015', fitted: 'supine', asked: 'standing' }),
      arm,
    ]);
  });
});
