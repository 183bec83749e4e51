import { describe, expect, it } from 'vitest';
import { attempt, equations, estimateOcclusionPressure, type Answer, type Attempt } from '../../src/index.js';
import {
  columns,
  estimateWith,
  fitOcclusionEquation,
  type ColumnAnswer,
  type ColumnsInput,
} from '../../src/study/index.js';
import { column, expectSame, scalarRow, varied, WRONG, type Row } from '../support/columns.js';
import { fittedExample } from '../support/fitted.js';
import { working } from '../../src/text/index.js';

// The scalar functions are the judge: they are held to publications elsewhere. Each row differs from an ordinary one in
// one field: at an end of what is possible, just past it, missing, or no number or word at all.

/** The number just below one. */
const below = (limit: number): number => limit - 2 ** (Math.ceil(Math.log2(limit)) - 53);
const READINGS = {
  circumferenceCm: [15, 14.9, 25, 24.9, 43, 44, 62, 70, 70.1, 120, 120.1, ...WRONG],
  systolicMmHg: [60, 71, 70, 69, 93, 110, 152, 179.9, below(180), 180, 300, 300.1, ...WRONG],
  diastolicMmHg: [30, 29, 109.9, below(110), 110, 119.9, 120, 121, 200.1, ...WRONG],
};
const PLACE = {
  limb: ['arm', 'leg', 'torso', null],
  cuffWidthCm: [2, 5, 5.4, 5.6, 6, 9, 10, 11, 12, 12.4, 17.5, 18, 18.6, 20, 20.6, 40, 41, null],
  posture: ['supine', 'seated', 'standing', 'lying', undefined],
};
const PERSON = {
  ageYears: [1, 0.9, 17.9, 18, 23, 24, 35, 35.1, 60, 120, 121, ...WRONG],
  sex: ['male', 'female', 'other', null],
  paddingCoefficient: [0.1, 0.999, 1, null],
  side: ['left', 'right', 'both', undefined],
};
const ERRORS = {
  circumferenceErrorCm: [0, 1, 2.5, -1, null],
  systolicErrorMmHg: [0, 5, 12, 301],
  diastolicErrorMmHg: [0, 5, 99],
};

type Given = Extract<ColumnsInput, { answer: 'occlusion-pressure' }>;
const lop = (rows: readonly Row[], equation: unknown, same: Row = {}, only?: readonly string[]) => {
  const names = only ?? [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const given = Object.fromEntries(names.map((name) => [name, column(rows, name)]));
  return columns({ answer: 'occlusion-pressure', equation, ...same, ...given } as unknown as Given);
};
const all = [
  ...equations.occlusionPressure.map((equation) => {
    const { id, limb, cuffWidthCm: width } = equation;
    const one = (row: Row) => attempt(estimateOcclusionPressure, { ...scalarRow(row), equation: id } as never);
    return {
      id,
      equation: id as unknown,
      one: one as (row: Row) => Attempt<Answer>,
      limb: limb === 'any' ? 'leg' : limb,
      width: width === 'any' ? 10 : typeof width === 'number' ? width : width.low,
    };
  }),
  {
    id: fittedExample.id,
    equation: fittedExample as unknown,
    one: (row: Row) => attempt((given: never): Answer => estimateWith(fittedExample, given), scalarRow(row)),
    limb: 'leg',
    width: 11,
  },
];

describe.each(all)('occlusion pressures by $id', ({ equation, one, limb, width }) => {
  const ordinary = {
    limb,
    circumferenceCm: 50,
    systolicMmHg: 120,
    diastolicMmHg: 70,
    cuffWidthCm: width,
    posture: 'supine',
    ageYears: 24,
    sex: 'male',
    paddingCoefficient: 0.6,
  };
  const same = (got: ColumnAnswer, rows: readonly Row[]) => rows.forEach((row, at) => expectSame(got, at, one(row)));

  it('of people who share nothing', () => {
    const rows = varied(ordinary, { ...READINGS, ...PLACE, ...PERSON });
    same(lop(rows, equation), rows);
  });

  it('of people who share a limb, a cuff and a posture', () => {
    for (const posture of ['supine', 'seated', 'standing']) {
      for (const cuffWidthCm of [width, width + 0.4]) {
        const place = { limb, cuffWidthCm, posture };
        const rows = varied({ ...ordinary, ...place }, { ...READINGS, ...PERSON });
        const { limb: _, cuffWidthCm: __, posture: ___, ...own } = ordinary;
        const asked = attempt((names: string[]) => lop(rows, equation, place, names), Object.keys(own));
        if (asked.ok)
          same(
            asked.value,
            rows.map((row) => ({ ...row, side: undefined })),
          );
        else expect(rows.map(one).some(({ ok }) => ok)).toBe(false);
      }
    }
  });

  it('of people whose readings have errors', () => {
    const rows = varied({ ...ordinary, circumferenceErrorCm: 1 }, { ...ERRORS, ...READINGS, posture: PLACE.posture });
    same(lop(rows, equation), rows);
    const { circumferenceCm: _, ...shared } = { ...ordinary, systolicErrorMmHg: 5 };
    const girths = [45, 50, 55].map((circumferenceCm) => ({ circumferenceCm }));
    same(
      lop(girths, equation, shared),
      girths.map((row) => ({ ...shared, ...row })),
    );
  });

  it('of people who differ in one field alone', () => {
    for (const name of [
      'circumferenceCm',
      'systolicMmHg',
      'ageYears',
      'sex',
      'posture',
      'cuffWidthCm',
      'limb',
    ] as const) {
      const values = { ...READINGS, ...PLACE, ...PERSON }[name];
      const rows = values.map((value: unknown) => ({ ...ordinary, [name]: value }));
      const { [name]: _, ...shared } = ordinary;
      const asked = attempt((names: string[]) => lop(rows, equation, shared, names), [name]);
      if (asked.ok) same(asked.value, rows);
      else expect(rows.map(one).some(({ ok }) => ok)).toBe(false);
    }
  });

  it('say how they were made', () => {
    const { about } = lop([ordinary], equation);
    const answer = one(ordinary);
    if (!answer.ok) throw new Error('an ordinary row was refused');
    const { evidence, errors, equation: id } = answer.value;
    expect(about).toMatchObject({ kind: 'occlusion-pressure', unit: 'mm[Hg]', level: 0.95, equation: id });
    expect(about.evidence).toBe(evidence);
    const { formula, symbols, sources } = working(answer.value)!;
    expect(working(about)).toMatchObject({ formula, symbols });
    const message: readonly string[] = answer.value.assumptions.map(({ code }) => code);
    const codes: readonly string[] = about.assumptions.map(({ code }) => code);
    // The error of your own equation is in mmHg.
    const log = answer.value.scale === 'log';
    expect(codes.includes('log-normal-interval')).toBe(errors !== undefined && log);
    expect(codes.includes('normal-interval')).toBe(errors !== undefined && !log);
    for (const code of codes) expect(message).toContain(code);
    for (const code of ['new-person-and-laboratory', 'fitted-range-not-known']) {
      expect(codes.includes(code), code).toBe(message.includes(code));
    }
    expect(about.scale).toBe(errors && answer.value.scale);
    for (const source of working(about)!.sources) expect(sources).toContain(source);
  });
});

// Equations whose sample is known by hand: the columns say of its edges what the function for one person says.
describe('occlusion pressures by your own equation', () => {
  const place = { limb: 'leg', posture: 'supine' } as const;
  const compared = (equation: ReturnType<typeof fitOcclusionEquation>, rows: readonly Row[], same: Row) => {
    const shared = { ...place, diastolicMmHg: 70, ...same };
    const got = lop(rows, equation, shared);
    rows.forEach((row, at) => {
      expectSame(
        got,
        at,
        attempt((given: object): Answer => estimateWith(equation, given as never), { ...shared, ...row }),
      );
    });
    return Array.from(got.flag);
  };

  it.each([4.9, 5, 8, 12, 12.1])('fitted on cuffs of 5 to 12 cm, with one of %d cm', (cuffWidthCm) => {
    const rows = Array.from({ length: 24 }, (_, i) => {
      const [width, circumferenceCm] = [5 + (i % 8), 45 + ((i * 5) % 21)];
      const readings = { circumferenceCm, cuffWidthCm: width, systolicMmHg: 120, diastolicMmHg: 70 };
      return { ...readings, valueMmHg: 250 - 9 * width + circumferenceCm + (i % 3) };
    });
    const terms = ['circumferenceCm', 'cuffWidthCm'] as const;
    const equation = fitOcclusionEquation({ id: 'widths', ...place, terms, rows });
    const people = [
      { circumferenceCm: 50, systolicMmHg: 120 },
      { circumferenceCm: 60, systolicMmHg: 130 },
    ];
    const inside = cuffWidthCm >= 5 && cuffWidthCm <= 12;
    expect(compared(equation, people, { cuffWidthCm })).toEqual(inside ? [0, 0] : [16, 16]);
  });

  // In another posture its error has a second part.
  it.each(['supine', 'seated'])('refuse a row without a pressure, each reading in range: %s', (posture) => {
    // Girth and pressure rise together in the sample, against one another in the equation.
    const rows = Array.from({ length: 21 }, (_, i) => {
      const [circumferenceCm, systolicMmHg] = [40 + i, 100 + 3 * i + (i % 3) - 1];
      const valueMmHg = 120 + 30 * (circumferenceCm - 50) - 8 * (systolicMmHg - 130) + (i % 2);
      return { circumferenceCm, systolicMmHg, diastolicMmHg: 70, valueMmHg };
    });
    const terms = ['circumferenceCm', 'systolicMmHg'] as const;
    const equation = fitOcclusionEquation({ id: 'against', ...place, cuffWidthCm: 10, terms, rows });
    const people = [
      { circumferenceCm: 50, systolicMmHg: 130 },
      { circumferenceCm: 40, systolicMmHg: 160 },
      { circumferenceCm: 60, systolicMmHg: 159 },
    ];
    expect(compared(equation, people, { cuffWidthCm: 10, posture })).toEqual([0, 4, 0]);
  });
});
