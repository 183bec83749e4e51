import { bench, describe } from 'vitest';
import { columns } from '../../src/study/index.js';
import { widthRatio } from '../../src/pressure/equations/width-ratio.js';
import { thigh2019 } from '../../src/pressure/equations/thigh-2019.js';

/** Invented people, the same in every run. */
function people(rows: number) {
  const column = (low: number, high: number, step: number) =>
    Float64Array.from({ length: rows }, (_, row) => low + (high - low) * ((row * step) % 1));
  return {
    girth: column(40, 70, 0.618033988749),
    systolic: column(100, 160, 0.414213562373),
    diastolic: column(55, 95, 0.732050807569),
    age: column(18, 35, 0.236067977499),
    into: {
      value: new Float64Array(rows),
      lower: new Float64Array(rows),
      upper: new Float64Array(rows),
      flag: new Uint8Array(rows),
    },
  };
}

const options = { time: 1500, warmupTime: 300 };

for (const rows of [1_000_000, 10_000_000]) {
  const { girth, systolic, diastolic, age, into } = people(rows);
  const shared = { limb: 'leg', posture: 'supine', circumferenceCm: girth, systolicMmHg: systolic, into } as const;
  // What a researcher would write by hand: nothing checked, one number a row.
  describe(`width-ratio formula, ${rows} rows`, () => {
    bench(
      'plain loop, unchecked, value alone',
      () => {
        for (let row = 0; row < rows; row += 1) {
          into.value[row] = widthRatio(girth[row]!, systolic[row]!, diastolic[row]!, 10);
        }
      },
      options,
    );
    bench(
      'columns: value, interval and flag',
      () => {
        columns({
          ...shared,
          answer: 'occlusion-pressure',
          equation: 'width-ratio-1993',
          diastolicMmHg: diastolic,
          cuffWidthCm: 10,
        });
      },
      options,
    );
  });
  describe(`thigh regression of 2019, ${rows} rows`, () => {
    bench(
      'plain loop, unchecked, value alone',
      () => {
        for (let row = 0; row < rows; row += 1) into.value[row] = thigh2019(girth[row]!, systolic[row]!, age[row]!, 1);
      },
      options,
    );
    bench(
      'columns: value, interval and flag',
      () => {
        columns({
          ...shared,
          answer: 'occlusion-pressure',
          equation: 'thigh-2019',
          diastolicMmHg: diastolic,
          cuffWidthCm: 18,
          ageYears: age,
          sex: 'male',
        });
      },
      options,
    );
  });
}
