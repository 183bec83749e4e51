import { describe, expect, it } from 'vitest';
import { attempt, estimateOcclusionPressure } from '../../src/index.js';
import { columns, estimateWith, fitOcclusionEquation } from '../../src/study/index.js';
import { column, expectSame } from '../support/columns.js';

type Row = Readonly<Record<string, unknown>>;

// A block with nothing to be said of is answered without its rows being looked at one by one: each reading that stands
// at an end of what makes it so, alone in its block. The function for one person is the judge.
describe('columns at the ends of what nothing is said of', () => {
  const leg = { limb: 'leg', posture: 'supine', circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70 } as const;
  const below = (limit: number): number => limit - 2 ** (Math.ceil(Math.log2(limit)) - 53);
  const edges: readonly (readonly [field: string, values: readonly number[]])[] = [
    ['systolicMmHg', [180, below(180), 110, 70.5, 60, 300]],
    ['diastolicMmHg', [110, below(110), 30, 119.5, 120, 20]],
    ['circumferenceCm', [25, 120, 24.9, 120.1]],
    ['ageYears', [18, 35, 17.9, 35.1, 1, 120]],
  ];
  it.each(edges.flatMap(([field, values]) => values.map((value) => [field, value] as const)))(
    '%s %d',
    (field, value) => {
      const row = { ...leg, ageYears: 24, [field]: value };
      const more = { cuffWidthCm: 18, sex: 'female', equation: 'thigh-2019' } as const;
      const got = columns({
        answer: 'occlusion-pressure',
        ...more,
        limb: 'leg',
        posture: 'supine',
        circumferenceCm: [row.circumferenceCm],
        systolicMmHg: [row.systolicMmHg],
        diastolicMmHg: [row.diastolicMmHg],
        ageYears: [row.ageYears],
      });
      expectSame(got, 0, attempt(estimateOcclusionPressure, { ...row, ...more }));
    },
  );
});

// Equations of one’s own whose sample is told by hand: the columns say of its edges what the function for one person says.
describe('columns by an equation of one’s own', () => {
  const place = { limb: 'leg', posture: 'supine' } as const;
  const compared = (
    equation: ReturnType<typeof fitOcclusionEquation>,
    cuffWidthCm: number,
    rows: readonly Row[],
    posture: 'supine' | 'seated' = 'supine',
  ) => {
    const got = columns({
      answer: 'occlusion-pressure',
      equation,
      ...place,
      posture,
      cuffWidthCm,
      circumferenceCm: column(rows, 'circumferenceCm') as number[],
      systolicMmHg: column(rows, 'systolicMmHg') as number[],
      diastolicMmHg: 70,
    });
    rows.forEach((row, index) => {
      const person = { ...place, posture, cuffWidthCm, diastolicMmHg: 70, ...row };
      expectSame(
        got,
        index,
        attempt((given: object) => estimateWith(equation, given as never), person),
      );
    });
    return got;
  };

  it.each([4.9, 5, 8, 12, 12.1])('fitted on cuffs of 5 to 12 cm, with one of %d cm', (cuffWidthCm) => {
    const rows = Array.from({ length: 24 }, (_, i) => {
      const [width, circumferenceCm] = [5 + (i % 8), 45 + ((i * 5) % 21)];
      return {
        circumferenceCm,
        cuffWidthCm: width,
        systolicMmHg: 120,
        diastolicMmHg: 70,
        valueMmHg: 250 - 9 * width + circumferenceCm + (i % 3),
      };
    });
    const terms = ['circumferenceCm', 'cuffWidthCm'] as const;
    const equation = fitOcclusionEquation({ id: 'widths', ...place, terms, rows } as never);
    const got = compared(equation, cuffWidthCm, [
      { circumferenceCm: 50, systolicMmHg: 120 },
      { circumferenceCm: 60, systolicMmHg: 130 },
    ]);
    expect(Array.from(got.flag)).toEqual(cuffWidthCm >= 5 && cuffWidthCm <= 12 ? [0, 0] : [16, 16]);
  });

  // In another posture its error has a second part.
  it.each(['supine', 'seated'] as const)(
    'refuses a row for which it gives no pressure, each reading in range: %s',
    (posture) => {
      // Girth and pressure rise together in the sample, against one another in the equation.
      const rows = Array.from({ length: 21 }, (_, i) => {
        const [circumferenceCm, systolicMmHg] = [40 + i, 100 + 3 * i + (i % 3) - 1];
        const valueMmHg = 120 + 30 * (circumferenceCm - 50) - 8 * (systolicMmHg - 130) + (i % 2);
        return { circumferenceCm, systolicMmHg, diastolicMmHg: 70, valueMmHg };
      });
      const terms = ['circumferenceCm', 'systolicMmHg'] as const;
      const equation = fitOcclusionEquation({ id: 'against', ...place, cuffWidthCm: 10, terms, rows } as never);
      const got = compared(
        equation,
        10,
        [
          { circumferenceCm: 50, systolicMmHg: 130 },
          { circumferenceCm: 40, systolicMmHg: 160 },
          { circumferenceCm: 60, systolicMmHg: 159 },
        ],
        posture,
      );
      expect(Array.from(got.flag)).toEqual([0, 4, 0]);
    },
  );
});
