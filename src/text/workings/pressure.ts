import type { Answer } from '../../answer/answer.js';
import type { PooledCurve } from '../../pressure/curve.js';
import type { OcclusionEquation } from '../../pressure/equation.js';
import { defaultEquations, occlusionEquations } from '../../pressure/equations.js';
import { bladderBias } from '../../pressure/equations/bladder-width.js';
import { circumferenceBandsRule } from '../../pressure/equations/circumference-bands.js';
import { systolic130Rule } from '../../pressure/equations/systolic-130.js';
import { thighCurve } from '../../pressure/equations/thigh-curve-2026.js';
import { measurementMethods, publishedError, type MeasurementMethod } from '../../pressure/measured.js';
import { inFull } from '../../quantity/format.js';
import type { Limb } from '../../quantity/quantities.js';
import { assumes, type FullWorking, type Worked, type Working, type Workings } from './working.js';

function measured({ inputs = {} }: Worked): FullWorking {
  const given = inputs['standardDeviationMmHg'];
  const { source, standardDeviationMmHg } =
    publishedError(inputs['method'] as MeasurementMethod, inputs['limb'] as Limb) ?? {};
  const error = { part: 'measurement', formula: `${String(given ?? standardDeviationMmHg)} / V` } as const;
  return {
    formula: 'm',
    symbols: { m: 'valueMmHg' },
    sources: given !== undefined || !source ? [] : [source],
    errors: [error],
  };
}

/** People and laboratories differ by a share of the pressure above diastolic. */
const curve = (equation: OcclusionEquation & { readonly error: { readonly curve: PooledCurve } }): FullWorking => {
  const { people, laboratory } = equation.error.curve.error;
  return {
    ...equation,
    errors: [
      { part: 'people', formula: `${inFull(people)} * (V - DBP) / V` },
      { part: 'laboratory', formula: `${inFull(laboratory)} * (V - DBP) / V` },
    ],
  };
};

const postureShift: Working = {
  formula: 'DBP + (LOP1 - DBP) * h2 / h1',
  symbols: {
    DBP: 'diastolicMmHg',
    LOP1: 'occlusionMmHg',
    h2: { field: 'toPosture', codes: thighCurve.h },
    h1: { field: 'fromPosture', codes: thighCurve.h },
  },
  sources: ['posture-2018', 'posture-widths-2018', 'cuff-width-2019'],
};

const widthCorrection = ({ inputs }: Worked): Working => ({
  formula: 'DBP + (LOP1 - DBP) * ((SBP - DBP) / 2 + b * C / W2) / ((SBP - DBP) / 2 + b * C / W1)',
  symbols: {
    DBP: 'diastolicMmHg',
    LOP1: 'occlusionMmHg',
    SBP: 'systolicMmHg',
    b: { field: 'limb', codes: { leg: defaultEquations.leg.error.curve.b, arm: defaultEquations.arm.error.curve.b } },
    C: 'circumferenceCm',
    W2: 'toWidthCm',
    W1: 'fromWidthCm',
  },
  sources: inputs?.['limb'] === 'arm' ? defaultEquations.arm.sources : defaultEquations.leg.sources,
});

const calibrated = (answer: Worked): Working => ({
  formula: 'LOP1 ^ w * m ^ (1 - w)',
  symbols: { w: 'estimateWeight', LOP1: 'estimate', m: 'measuredMmHg' },
  sources: [
    'pulse-pressure-2021',
    ...(assumes(answer, 'width-error-shared') ? (['cuff-width-2012', 'posture-widths-2018'] as const) : []),
  ],
});

const bias = ({ kind }: Worked): Working => ({
  ...bladderBias[kind === ('systolic-pressure' satisfies Answer['kind']) ? 'systolic' : 'diastolic'],
  sources: ['monica-quality'],
});

/** A pressure that is a share of LOP, or the share that a pressure is; 0 without a cuff. */
function percentOfOcclusion({ kind, inputs = {} }: Worked): FullWorking {
  if (kind === 'cuff-pressure') {
    // An error that is a share of LOP is the same share of its percentage.
    const inMmHg = (inputs['occlusion'] as Answer | undefined)?.scale === undefined;
    return {
      formula: 'p / 100 * LOP',
      symbols: { p: 'percentLop', LOP: 'occlusion' },
      sources: ['guideline-review-2019'],
      arithmetic: true,
      ...(inMmHg && { errors: [{ part: 'occlusion', formula: 'p / 100 * S' }] }),
    };
  }
  return inputs['pressureMmHg'] === undefined
    ? { formula: '0', symbols: {}, sources: [] }
    : { formula: '100 * P / LOP', symbols: { P: 'pressureMmHg', LOP: 'occlusionMmHg' }, sources: [] };
}

export const pressureWorkings: Workings = {
  ...Object.fromEntries(
    [...occlusionEquations, circumferenceBandsRule, systolic130Rule].map((equation) => [equation.id, equation]),
  ),
  ...Object.fromEntries(measurementMethods.map((method) => [`measured-${method}`, measured])),
  ...Object.fromEntries(Object.values(defaultEquations).map((equation) => [equation.id, curve(equation)])),
  'posture-shift': postureShift,
  'width-correction': widthCorrection,
  calibrated,
  'bladder-bias': bias,
  'percent-of-occlusion': percentOfOcclusion,
};
