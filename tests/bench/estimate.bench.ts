import { createRequire } from 'node:module';
import { compile } from 'mathjs';
import { bench, describe } from 'vitest';
import { publicFunctions } from '../support/public-functions.js';

// The built package (run the build first), required natively: the test runner looks every import up anew at every
// call, which would be measured instead of the work.
const require = createRequire(import.meta.url);
const { widthRatio } = require('cuffwork/equations') as typeof import('../../src/equations.js');
const { equations, estimateOcclusionPressure } = require('cuffwork') as typeof import('../../src/index.js');
const { planSession } = require('cuffwork/plan') as typeof import('../../src/plan/index.js');
const { columns } = require('cuffwork/study') as typeof import('../../src/study/index.js');

/** What is worked out is kept, so that no engine leaves the work out. */
export let kept: unknown = 0;

// A thousand readings a turn: no engine learns one by heart, and the clock of the bench weighs nothing.
const girths = Float64Array.from({ length: 1000 }, (_, index) => 40 + index / 50);
const thousand = (one: (girth: number) => unknown) => () => {
  for (const girth of girths) kept = one(girth);
};
const options = { time: 1000, warmupTime: 300 };

describe('a thousand occlusion pressures', () => {
  const readings = { limb: 'leg', systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine' } as const;
  const { formula } = equations.occlusionPressure.find(({ id }) => id === 'width-ratio-1993')!;
  const expression = compile(formula);

  bench(
    'bare function',
    thousand((girth) => widthRatio(girth, 120, 70, 10)),
    options,
  );
  bench(
    'columns: value, interval and flag',
    () => {
      kept = columns({
        answer: 'occlusion-pressure',
        equation: 'width-ratio-1993',
        ...readings,
        circumferenceCm: girths,
        systolicMmHg: 120,
        diastolicMmHg: 70,
      } as never);
    },
    options,
  );
  bench(
    'formula text, compiled by a general evaluator',
    thousand((girth) => expression.evaluate({ SBP: 120, DBP: 70, C: girth, W: 10 })),
    options,
  );
  bench(
    'validated estimates with their evidence, equation named',
    thousand((girth) =>
      estimateOcclusionPressure({
        limb: 'leg',
        circumferenceCm: girth,
        systolicMmHg: 120,
        diastolicMmHg: 70,
        cuffWidthCm: 10,
        posture: 'supine',
        equation: 'width-ratio-1993',
      }),
    ),
    options,
  );
  bench(
    'validated estimates with their evidence, by default',
    thousand((girth) =>
      estimateOcclusionPressure({
        limb: 'leg',
        circumferenceCm: girth,
        systolicMmHg: 120,
        diastolicMmHg: 70,
        cuffWidthCm: 10,
        posture: 'supine',
      }),
    ),
    options,
  );
});

describe('a plan', () => {
  const request = publicFunctions['planSession']!.right;

  bench('planSession', () => {
    kept = planSession(request as never);
  });
});
