import { bench, describe } from 'vitest';
import { brzycki } from '../../src/equations.js';
import {
  compareOneRepMaxEquations,
  estimateOneRepMax,
  loadPlates,
  testedOneRepMax,
  trainingLoad,
} from '../../src/index.js';

// Ratios within one run are what counts; a machine’s own milliseconds are not compared with another’s.
const masses = [50, 25, 20, 15, 10, 5, 2.5, 2, 1.5, 1.25, 1, 0.5];
const twelveKinds = masses.map((mass) => ({ mass, count: 8 }));
const uncounted = masses.map((mass) => ({ mass }));
const oneRepMax = testedOneRepMax({ load: 140 });

describe('one-repetition maximum', () => {
  bench('bare equation', () => {
    brzycki(80, 8);
  });
  bench('estimate', () => {
    estimateOneRepMax({ load: 80, repetitions: 8 });
  });
  bench('estimate, lift and person told', () => {
    estimateOneRepMax({ load: 80, repetitions: 8, lift: 'squat', sex: 'male', ageYears: 24, training: 'trained' });
  });
  bench('every equation compared', () => {
    compareOneRepMaxEquations({ load: 80, repetitions: 8, lift: 'squat', sex: 'male' });
  });
});

describe('load', () => {
  bench('training load to a step', () => {
    trainingLoad({ oneRepMax, percent: 70, step: 2.5 });
  });
  bench('plates, 12 kinds, counted', () => {
    loadPlates({ target: 287.5, bar: 20, collars: 5, plates: twelveKinds });
  });
  bench('plates, 12 kinds, as many as needed', () => {
    loadPlates({ target: 287.5, bar: 20, collars: 5, plates: uncounted });
  });
  bench('plates, 12 kinds, a hundred grams from the nearest', () => {
    loadPlates({ target: 287.4, bar: 20, collars: 5, plates: twelveKinds });
  });
});
