import { createRequire } from 'node:module';
import { bench, describe } from 'vitest';

// The built package (run the build first), required natively: the test runner looks every import up anew at every
// call, which a loop over a million rows would measure instead of the work.
const require = createRequire(import.meta.url);
const { arm2015, armCurve2026, padding2006, thigh2015, thigh2019, thighCurve2026, thighIndex, widthRatio } =
  require('cuffwork/equations') as typeof import('../../src/equations.js');
const { columns, fitOcclusionEquation } = require('cuffwork/study') as typeof import('../../src/study/index.js');

/** Invented people, the same in every run, and columns to write into. */
function peopleOf(rows: number) {
  const column = (low: number, high: number, step: number) =>
    Float64Array.from({ length: rows }, (_, row) => low + (high - low) * ((row * step) % 1));
  return {
    rows,
    girth: column(40, 70, 0.618033988749),
    armGirth: column(26, 39, 0.618033988749),
    systolic: column(100, 160, 0.414213562373),
    diastolic: column(55, 95, 0.732050807569),
    age: column(18, 35, 0.236067977499),
    into: {
      value: new Float64Array(rows),
      lower: new Float64Array(rows),
      upper: new Float64Array(rows),
      standardDeviation: new Float64Array(rows),
      flag: new Uint8Array(rows),
    },
  };
}
type People = ReturnType<typeof peopleOf>;

/** What a researcher would write by hand: nothing checked, no interval, no flag. */
function plainRatio({ rows, girth, systolic, diastolic, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1) value[row] = widthRatio(girth[row]!, systolic[row]!, diastolic[row]!, 10);
}
function plainThigh({ rows, girth, systolic, age, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1) value[row] = thigh2019(girth[row]!, systolic[row]!, age[row]!, 1);
}

function plainThigh2015({ rows, girth, systolic, diastolic, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1) value[row] = thigh2015(girth[row]!, systolic[row]!, diastolic[row]!);
}
function plainArm({ rows, armGirth, systolic, diastolic, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1) value[row] = arm2015(armGirth[row]!, systolic[row]!, diastolic[row]!);
}
/** The curves with the interval that a researcher would write by hand: the same variance, nothing checked, no flag. */
const plainCurve =
  (
    apply: (girth: number, systolic: number, diastolic: number, width: number) => number,
    b: number,
    variance: { readonly b: number; readonly a: number; readonly both: number },
    width: number,
  ) =>
  ({ rows, girth, systolic, diastolic, into: { value, lower, upper } }: People): void => {
    for (let row = 0; row < rows; row += 1) {
      const lop = apply(girth[row]!, systolic[row]!, diastolic[row]!, width);
      const ratio = girth[row]! / width;
      const pulse = systolic[row]! - diastolic[row]!;
      const above = pulse / 2 + b * ratio;
      const level = 0.52 * ((systolic[row]! + diastolic[row]!) / 2 - 95);
      const own = ratio * (ratio * variance.b + 2 * pulse * variance.both) + pulse * pulse * variance.a + level * level;
      const factor = Math.exp((1.96 * Math.sqrt(own + above * above * (0.2 * 0.2 + 0.25 * 0.25))) / lop);
      value[row] = lop;
      lower[row] = lop / factor;
      upper[row] = lop * factor;
    }
  };
const thighByCurve = (girth: number, systolic: number, diastolic: number, width: number): number =>
  thighCurve2026(girth, systolic, diastolic, width, 1);
function plainIndex({ rows, systolic, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1) value[row] = thighIndex(systolic[row]!, 1.1);
}
function plainPadding({ rows, systolic, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1) value[row] = padding2006(systolic[row]!, 0.7);
}

// One’s own equation: invented measurements on the width-ratio formula, over the whole range of the readings.
const fitted = fitOcclusionEquation({
  id: 'bench-laboratory',
  limb: 'leg',
  posture: 'supine',
  cuffWidthCm: 10,
  terms: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg'],
  rows: Array.from({ length: 61 }, (_, row) => {
    const circumferenceCm = 40 + ((row * 7) % 31);
    const systolicMmHg = 100 + ((row * 11) % 61);
    const diastolicMmHg = 55 + ((row * 5) % 41);
    const valueMmHg = widthRatio(circumferenceCm, systolicMmHg, diastolicMmHg, 10);
    return { circumferenceCm, systolicMmHg, diastolicMmHg, valueMmHg };
  }),
});
const [byGirth, bySystolic, byDiastolic] = fitted.terms.map(({ coefficient }) => coefficient) as [
  number,
  number,
  number,
];
const first = fitted.intercept.coefficient;
function plainFitted({ rows, girth, systolic, diastolic, into: { value } }: People): void {
  for (let row = 0; row < rows; row += 1)
    value[row] = first + byGirth * girth[row]! + bySystolic * systolic[row]! + byDiastolic * diastolic[row]!;
}

const columnsBy = (more: object) => (people: People) => {
  const { girth, systolic, diastolic, into } = people;
  columns({
    answer: 'occlusion-pressure',
    limb: 'leg',
    posture: 'supine',
    circumferenceCm: girth,
    systolicMmHg: systolic,
    diastolicMmHg: diastolic,
    into,
    ...more,
  } as never);
};
const columnsRatio = columnsBy({ equation: 'width-ratio-1993', cuffWidthCm: 10 });

const options = { time: 1000, warmupTime: 300 };
const million = peopleOf(1_000_000);
const tenMillion = peopleOf(10_000_000);

// Limits: the curves, at most 5 times a plain loop that works out the same interval; every other equation runs in one
// loop over its bare function, at most 60 ns a row (60 ms here). A plain loop for the value alone is for comparison.
const EVERY: readonly (readonly [equation: unknown, plain: (people: People) => void, more: object])[] = [
  ['width-ratio-1993', plainRatio, { cuffWidthCm: 10 }],
  ['thigh-2019', plainThigh, { cuffWidthCm: 18, ageYears: million.age, sex: 'male' }],
  ['thigh-2015', plainThigh2015, { cuffWidthCm: 5 }],
  ['arm-2015', plainArm, { cuffWidthCm: 5, limb: 'arm', circumferenceCm: million.armGirth }],
  [
    'pooled-curve-thigh-2026',
    plainCurve(thighByCurve, 17.9, { b: 10.6, a: 0.083, both: -0.779 }, 10),
    { cuffWidthCm: 10 },
  ],
  [
    'pooled-curve-arm-2026',
    plainCurve(armCurve2026, 11.5, { b: 10.4, a: 0.083, both: -0.721 }, 10),
    { cuffWidthCm: 10, limb: 'arm', circumferenceCm: million.armGirth },
  ],
  ['thigh-index-18', plainIndex, { cuffWidthCm: 18 }],
  ['padding-2006', plainPadding, { cuffWidthCm: 10, paddingCoefficient: 0.7 }],
  [fitted, plainFitted, { cuffWidthCm: 10 }],
];
for (const [equation, plain, more] of EVERY) {
  const byColumns = columnsBy({ equation, ...more });
  const name = typeof equation === 'string' ? equation : 'an equation of one’s own';
  describe(`${name}, 1 000 000 rows`, () => {
    bench('plain loop, unchecked, the value alone (of a curve with its interval)', () => plain(million), options);
    bench('columns: value, interval and flag', () => byColumns(million), options);
  });
}
// Held to: ten times the rows take ten times as long.
describe('columns by the width-ratio formula', () => {
  bench(
    '1 000 000 rows, ten times over',
    () => {
      for (let again = 0; again < 10; again += 1) columnsRatio(million);
    },
    options,
  );
  bench('10 000 000 rows', () => columnsRatio(tenMillion), options);
});
describe('targets, 1 000 000 rows', () => {
  const occlusion = columns({
    answer: 'occlusion-pressure',
    equation: 'width-ratio-1993',
    limb: 'leg',
    posture: 'supine',
    cuffWidthCm: 10,
    circumferenceCm: million.girth,
    systolicMmHg: million.systolic,
    diastolicMmHg: million.diastolic,
  });
  bench('columns of occlusion pressures', () => columnsRatio(million), options);
  bench(
    'columns of cuff pressures, on a gauge of 5 mmHg',
    () => {
      columns({ answer: 'cuff-pressure', occlusion, percentLop: 50, gaugeStepMmHg: 5, into: million.into });
    },
    options,
  );
  // On an edge between two steps decimals decide, five to ten times as slow as doubles off it.
  const edges = columns({
    answer: 'occlusion-pressure',
    equation: 'width-ratio-1993',
    limb: 'leg',
    posture: 'supine',
    cuffWidthCm: 10,
    circumferenceCm: 60,
    systolicMmHg: million.systolic.map(Math.round),
    diastolicMmHg: million.diastolic.map(Math.round),
  });
  bench(
    'cuff pressures on the edges of a gauge of 1 mmHg',
    () => {
      columns({ answer: 'cuff-pressure', occlusion: edges, percentLop: 50, gaugeStepMmHg: 1, into: million.into });
    },
    options,
  );
  const oneRepMax = columns({
    answer: 'one-repetition-maximum',
    equation: 'epley-1985',
    load: million.girth,
    repetitions: 5,
  });
  const plates = [{ mass: 1.25, count: 2 }, { mass: 2.5, count: 4 }, { mass: 5 }, { mass: 10 }, { mass: 20 }];
  bench(
    'loads on a bar with plates',
    () => {
      columns({ answer: 'training-load', oneRepMax, percentOneRepMax: 60, bar: 20, plates, into: million.into });
    },
    options,
  );
});
