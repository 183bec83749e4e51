import { createRequire } from 'node:module';
import { bench, describe } from 'vitest';

// The built package, required natively: see estimate.bench.ts.
const require = createRequire(import.meta.url);
const { brzycki } = require('cuffwork/equations') as typeof import('../../src/equations.js');
const { compareOneRepMaxEquations, estimateOneRepMax, loadPlates, testedOneRepMax, trainingLoad } =
  require('cuffwork') as typeof import('../../src/index.js');

/** What is worked out is kept, so that no engine leaves the work out. */
export let kept: unknown = 0;

// Ratios within one run are what counts; a machine’s own milliseconds are not compared with another’s.
const masses = [50, 25, 20, 15, 10, 5, 2.5, 2, 1.5, 1.25, 1, 0.5];
const twelveKinds = masses.map((mass) => ({ mass, count: 8 }));
const uncounted = masses.map((mass) => ({ mass }));
const oneRepMax = testedOneRepMax({ load: 140 });

// A thousand loads a turn, so that the clock of the bench weighs nothing.
const loads = Float64Array.from({ length: 1000 }, (_, index) => 40 + index / 10);
const thousand = (one: (load: number) => unknown) => () => {
  for (const load of loads) kept = one(load);
};

describe('a thousand one-repetition maxima', () => {
  bench(
    'bare equation',
    thousand((load) => brzycki(load, 8)),
  );
  bench(
    'estimate',
    thousand((load) => estimateOneRepMax({ load, repetitions: 8 })),
  );
  bench(
    'estimate, lift and person told',
    thousand((load) =>
      estimateOneRepMax({ load, repetitions: 8, lift: 'squat', sex: 'male', ageYears: 24, training: 'trained' }),
    ),
  );
});

describe('one call', () => {
  bench('every equation compared', () => {
    kept = compareOneRepMaxEquations({ load: 80, repetitions: 8, lift: 'squat', sex: 'male' });
  });
  bench('training load to a step', () => {
    kept = trainingLoad({ oneRepMax, percentOneRepMax: 70, step: 2.5 });
  });
  bench('plates, 12 kinds, counted', () => {
    kept = loadPlates({ target: 287.5, bar: 20, collars: 5, plates: twelveKinds });
  });
  bench('plates, 12 kinds, as many as needed', () => {
    kept = loadPlates({ target: 287.5, bar: 20, collars: 5, plates: uncounted });
  });
  bench('plates, 12 kinds, a hundred grams from the nearest', () => {
    kept = loadPlates({ target: 287.4, bar: 20, collars: 5, plates: twelveKinds });
  });
});
