import { expect, it, vi } from 'vitest';
import { estimateOcclusionPressure } from '../../src/index.js';
import { EQUATION_IDS, occlusionEquations } from '../../src/pressure/equations.js';

const known = occlusionEquations.find(({ id }) => id === 'thigh-2019')!;
const better = { ...known, id: 'sure', error: { ...known.error, standardDeviationMmHg: 0.1 } };
vi.resetModules();
vi.doMock('../../src/pressure/equations.js', async (original) => ({
  ...(await original<object>()),
  occlusionEquations: [better, ...occlusionEquations],
  EQUATION_IDS: ['sure', ...EQUATION_IDS],
}));
const { estimateOcclusionPressure: again } = await import('../../src/pressure/estimate.js');
vi.doUnmock('../../src/pressure/equations.js');
// Other files share the modules of this run.
vi.resetModules();

it('the default is not changed by another equation, however small its error', () => {
  const readings = {
    limb: 'leg',
    circumferenceCm: 55,
    systolicMmHg: 120,
    diastolicMmHg: 70,
    posture: 'supine',
    cuffWidthCm: 18,
    ageYears: 23,
    sex: 'male',
  } as const;
  expect(again(readings)).toEqual(estimateOcclusionPressure(readings));
  expect(again({ ...readings, equation: 'sure' as never }).equation).toBe('sure');
});
