import { compile } from 'mathjs';
import { bench, describe } from 'vitest';
import { widthRatio } from '../../src/equations.js';
import { equations, estimateOcclusionPressure } from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';
import { planRequestSchema } from '../../src/schemas.js';
import { doors } from '../support/doors.js';

/** What is worked out is kept, so that no engine leaves the work out. */
export let kept: unknown = 0;

// A thousand readings, so that no engine learns one by heart.
const girths = Array.from({ length: 1000 }, (_, index) => 40 + index / 50);
let turn = 0;
const girth = (): number => girths[(turn = (turn + 1) % 1000)]!;

describe('an occlusion pressure', () => {
  const readings = { limb: 'leg', systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine' } as const;
  const { formula } = equations.occlusionPressure.find(({ id }) => id === 'width-ratio-1993')!;
  const expression = compile(formula);

  bench('bare function', () => {
    kept = widthRatio(girth(), 120, 70, 10);
  });
  bench('validated estimate with its evidence', () => {
    kept = estimateOcclusionPressure({ ...readings, circumferenceCm: girth() });
  });
  bench('formula text, compiled by a general evaluator', () => {
    kept = expression.evaluate({ SBP: 120, DBP: 70, C: girth(), W: 10 });
  });
});

describe('a plan', () => {
  const request = doors['planSession']!.right;

  bench('planSession', () => {
    kept = planSession(request as never);
  });
  bench('parsing its request, and no more', () => {
    kept = planRequestSchema['~standard'].validate(request);
  });
});
