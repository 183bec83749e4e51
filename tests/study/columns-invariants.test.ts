import { describe, expect, it } from 'vitest';
import { attempt, equations, estimateOcclusionPressure, type Answer, type Attempt } from '../../src/index.js';
import { columns, estimateWith, type ColumnAnswer, type ColumnsInput } from '../../src/study/index.js';
import { column, expectSame, scalarRow } from '../support/columns.js';
import { fittedExample } from '../support/fitted.js';
import { working } from '../../src/text/index.js';

// The scalar functions are the judge: they are held to publications elsewhere. Each row differs from an ordinary one in
// one field: at an end of what is possible, just past it, missing, or no number or word at all.

type Row = Readonly<Record<string, unknown>>;
const WRONG = [null, undefined, NaN, Infinity, -5];
const varied = (ordinary: Row, fields: Readonly<Record<string, readonly unknown[]>>): Row[] => [
  ordinary,
  ...Object.entries(fields).flatMap(([field, values]) => values.map((value) => ({ ...ordinary, [field]: value }))),
];

const READINGS = {
  circumferenceCm: [15, 14.9, 25, 24.9, 43, 44, 62, 70, 70.1, 120, 120.1, ...WRONG],
  systolicMmHg: [60, 71, 70, 69, 93, 110, 152, 179.9, 180, 300, 300.1, ...WRONG],
  diastolicMmHg: [30, 29, 109.9, 110, 119.9, 120, 121, 200.1, ...WRONG],
};
const PLACE = {
  limb: ['arm', 'leg', 'torso', null],
  cuffWidthCm: [2, 5, 5.4, 5.6, 6, 9, 10, 11, 12, 12.4, 17.5, 18, 18.6, 20, 20.6, 40, 41, null],
  posture: ['supine', 'seated', 'standing', 'lying', undefined],
};
const PERSON = {
  ageYears: [1, 0.9, 18, 23, 24, 60, 120, 121, ...WRONG],
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

  it('of people with nothing to be said about, in blocks, one of them in the last', () => {
    const { limb: _, cuffWidthCm, posture, ...own } = ordinary;
    const rows = Array.from({ length: 1500 }, (_row, at) => ({
      ...own,
      circumferenceCm: 50 + (at % 3),
      sex: at % 2 === 0 ? 'male' : 'female',
    }));
    for (const odd of [
      own,
      { ...own, systolicMmHg: 185 },
      { ...own, circumferenceCm: NaN },
      { ...own, ageYears: 70 },
    ]) {
      // Whatever stood in the columns before is written over.
      const [value, lower, upper, standardDeviation] = [7, 7, 7, 7].map((left) => new Float64Array(1500).fill(left));
      const into = { value, lower, upper, standardDeviation, flag: new Uint8Array(1500).fill(255) };
      const got = lop([...rows.slice(1), odd], equation, { limb, cuffWidthCm, posture, into });
      for (const [at, row] of [
        [0, rows[1]!],
        [1, rows[2]!],
        [2, rows[3]!],
        [1023, rows[1024]!],
        [1024, rows[1025]!],
        [1498, rows[1499]!],
        [1499, odd],
      ] as const)
        expectSame(got, at, one({ ...ordinary, ...row }));
      expect(got.value.slice(3, 1022).every((value, at) => value === got.value[(at + 3) % 6])).toBe(true);
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
