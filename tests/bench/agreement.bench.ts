import { createRequire } from 'node:module';
import { bench, describe } from 'vitest';

// The built package (run the build first), required natively.
const require = createRequire(import.meta.url);
const { agreement, reliability } = require('cuffwork/study') as typeof import('../../src/study/index.js');

const ROWS = 1_000_000;
const wave = (step: number) => Float64Array.from({ length: ROWS }, (_, row) => 100 + 60 * ((row * step) % 1));
const measured = wave(0.618033988749);
const noise = wave(0.414213562373);
const estimated = measured.map((value, row) => value + noise[row]! / 10 - 13);
const person = Int32Array.from({ length: ROWS }, (_, row) => row >> 1);

describe('agreement of 1,000,000 rows', () => {
  bench('rows of different people', () => void agreement(measured, estimated), {
    iterations: 3,
    warmupIterations: 1,
    time: 0,
  });
  bench('two rows of each person', () => void agreement(measured, estimated, { person }), {
    iterations: 3,
    warmupIterations: 1,
    time: 0,
  });
  bench('two tests', () => void reliability([measured, estimated]), { iterations: 3, warmupIterations: 1, time: 0 });
});
