import { describe, expect, it } from 'vitest';
import { attempt, equations, estimateOneRepMax, trainingLoad } from '../../src/index.js';
import { columns, type ColumnAnswer } from '../../src/study/index.js';
import { column, expectSame, scalarRow, varied, WRONG, type Row } from '../support/columns.js';

// The scalar functions are the judge: they are held to publications elsewhere. Each row differs from an ordinary one in
// one field: at an end of what is possible, just past it, missing, or no number or word at all.

const LIFTED = {
  load: [0.1, 0.09, 2000, 2000.1, ...WRONG],
  repetitions: [1, 2, 3, 5, 6, 10, 12, 15, 20, 36, 37, 40, 2.5, 0, 501, null],
  repetitionsInReserve: [0, 1, 2.5, 10, 11, -1],
  reserveRpe: [10, 9.5, 9, 7, 5, 4.9, 1, 0.5, 11, null],
  lift: ['bench-press', 'squat', 'leg-press', 'deadlift', 'dance', null],
  sex: ['male', 'female', 'other', null],
  ageYears: [15, 24, 45, 70, 121, null],
  training: ['trained', 'untrained', 'often', null],
};

describe.each(equations.oneRepetitionMaximum)('one-repetition maxima by $id', ({ id }) => {
  const bare = { load: 80, repetitions: 5 };
  const rowsOf = (more: Row) => varied({ ...bare, ...more }, LIFTED);
  const maxima = (rows: readonly Row[], unit: 'kg' | 'lb') => {
    const names = Object.keys(LIFTED).filter((name) => rows.some((row) => row[name] !== undefined));
    const given = Object.fromEntries(names.map((name) => [name, column(rows, name)]));
    return columns({
      answer: 'one-repetition-maximum',
      equation: id,
      unit,
      ...given,
    } as never) as unknown as ColumnAnswer<'one-repetition-maximum'>;
  };
  const one = (row: Row, unit: 'kg' | 'lb') =>
    attempt(estimateOneRepMax, { ...scalarRow(row), equation: id, unit } as never);

  it('are those of one set each', () => {
    for (const unit of ['kg', 'lb'] as const) {
      for (const more of [{}, { sex: 'female', ageYears: 24, training: 'trained' }, { repetitions: 8 }]) {
        const rows = rowsOf(more);
        const got = maxima(rows, unit);
        rows.forEach((row, at) => expectSame(got, at, one(row, unit)));
        expect(got.about.assumptions.map(({ code }) => code)).toEqual(['normal-interval']);
        expect(got.about).toMatchObject({
          kind: 'one-repetition-maximum',
          level: 0.95,
          unit: unit === 'kg' ? 'kg' : '[lb_av]',
        });
      }
    }
  });

  it('give the loads of one set each', () => {
    const rows = [
      ...[40, 80, 120, 160].flatMap((load) => [1, 3, 5].map((repetitions) => ({ load, repetitions }))),
      { load: NaN, repetitions: 5 },
    ];
    const shares = [20, 30, 27.5, 100, 1, 0.5, 101, null, 33.333, 50, 75, 12, 30];
    const steps = [2.5, 1, 0.07, 5, 1 / 3, 2.5, 2.5, 2.5, 100, 0.01, 1.25, null, 2.5];
    for (const [rounding, unit] of [
      ['nearest', 'kg'],
      ['down', 'lb'],
    ] as const) {
      const of = maxima(rows, unit);
      const got = columns({
        answer: 'training-load',
        oneRepMax: of,
        percentOneRepMax: shares,
        step: steps as number[],
        rounding,
      });
      rows.forEach((row, at) => {
        const maximum = one(row, unit);
        if (!maximum.ok || steps[at] === null) return expect(got.value[at]).toBeNaN();
        const asked = {
          oneRepMax: maximum.value,
          rounding,
          ...scalarRow({ percentOneRepMax: shares[at], step: steps[at] }),
        };
        expectSame(got, at, attempt(trainingLoad, asked as never));
      });
    }
  });
});
