import { createRequire } from 'node:module';
import { bench, describe } from 'vitest';

// The built package, required natively, as in columns.bench.ts.
const require = createRequire(import.meta.url);
const study = require('cuffwork/study') as typeof import('../../src/study/index.js');

const place = { limb: 'leg', posture: 'supine', cuffWidthCm: 11 } as const;
/** Invented people, the same in every run. */
const rowsOf = (count: number) =>
  Array.from({ length: count }, (_, row) => {
    const share = (step: number): number => (row * step) % 1;
    const circumferenceCm = 45 + 20 * share(0.618033988749);
    const systolicMmHg = Math.round(105 + 40 * share(0.414213562373));
    const diastolicMmHg = Math.round(60 + 25 * share(0.732050807569));
    const valueMmHg = 20 + 1.8 * circumferenceCm + 0.5 * systolicMmHg + 30 * share(0.236067977499);
    return { circumferenceCm, systolicMmHg, diastolicMmHg, valueMmHg };
  });
const terms = ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg'] as const;
const [thirty, thousand] = [rowsOf(30), rowsOf(1000)];
const fitTo = (rows: typeof thirty, more: object = {}) =>
  study.fitOcclusionEquation({ id: 'bench', ...place, terms, rows, ...more });
const recalibrate = (rows: typeof thirty) =>
  study.recalibrateOcclusionEquation({ id: 'bench', equation: 'pooled-curve-thigh-2026', ...place, rows });

const options = { time: 1000, warmupTime: 300 };

describe('your own equation', () => {
  bench('a fit of three terms to 30 people', () => void fitTo(thirty), options);
  bench('a fit of three terms to 1000 people', () => void fitTo(thousand), options);
  bench('the same with diagnostics', () => void fitTo(thousand, { diagnostics: true }), options);
  bench('the pooled curve recalibrated on 30 people', () => void recalibrate(thirty), options);
});

// One person at a time: a reader and an answer; columns: neither for a row.
describe('answers by your own equation, 100 000 people', () => {
  const rows = rowsOf(100_000);
  const column = (field: keyof (typeof rows)[number]) => Float64Array.from(rows, (row) => row[field]);
  const people = {
    ...place,
    circumferenceCm: column('circumferenceCm'),
    systolicMmHg: column('systolicMmHg'),
    diastolicMmHg: column('diastolicMmHg'),
  };
  const byColumns = (equation: ReturnType<typeof fitTo> | ReturnType<typeof recalibrate>) =>
    study.columns({ answer: 'occlusion-pressure', equation, ...people });
  const [fitted, recalibrated] = [fitTo(thousand), recalibrate(thirty)];
  bench('columns of a fit, with prediction intervals', () => void byColumns(fitted), options);
  bench('columns of a recalibrated equation', () => void byColumns(recalibrated), options);
  bench(
    'estimateWith, 1000 of them one by one',
    () => {
      for (const { valueMmHg: _, ...person } of rows.slice(0, 1000))
        study.estimateWith(fitted, { ...place, ...person });
    },
    options,
  );
});

describe('resampling', () => {
  const errors = thousand.map(({ valueMmHg }) => valueMmHg - 150);
  const average = (rows: readonly number[]): number => rows.reduce((sum, row) => sum + row, 0) / rows.length;
  bench(
    'bootstrap of a mean, 1000 rows, 2000 draws',
    () => void study.bootstrap({ rows: errors, statistic: average }),
    options,
  );
  bench(
    'ten-fold cross-validation of a fit to 1000 people',
    () =>
      void study.crossValidate({
        rows: thousand,
        fit: (some) => {
          const { intercept, terms: slopes } = fitTo([...some]);
          return (row) =>
            slopes.reduce(
              (sum, { field, coefficient }) => sum + coefficient * row[field as keyof typeof row],
              intercept.coefficient,
            );
        },
        measured: (row) => row.valueMmHg,
      }),
    options,
  );
});
