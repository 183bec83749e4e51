import { expect } from 'vitest';
import type { Answer, Attempt } from '../../src/index.js';
import { columns, flagCodes, REFUSED, rowFlags, type ColumnAnswer } from '../../src/study/index.js';

/** Three thighs, and three loads lifted. */
export const right = {
  answer: 'occlusion-pressure',
  equation: 'width-ratio-1993',
  limb: 'leg',
  circumferenceCm: [54, 60, 66],
  systolicMmHg: 120,
  diastolicMmHg: 70,
  cuffWidthCm: 10,
  posture: 'supine',
} as const;
export const lifted = {
  answer: 'one-repetition-maximum',
  equation: 'epley-1985',
  load: [100, 110, 120],
  repetitions: 5,
} as const;
export const maximum = () => columns(lifted);

export type Row = Readonly<Record<string, unknown>>;
export const WRONG = [null, undefined, NaN, Infinity, -5];

/** Rows that differ from an ordinary one in one field each. */
export const varied = (ordinary: Row, fields: Readonly<Record<string, readonly unknown[]>>): Row[] => [
  ordinary,
  ...Object.entries(fields).flatMap(([field, values]) => values.map((value) => ({ ...ordinary, [field]: value }))),
];

/** A row as the scalar function takes it: what is missing is left out. */
export const scalarRow = (row: Row): object =>
  Object.fromEntries(
    Object.entries(row).filter(([, value]) => value !== null && value !== undefined && !Number.isNaN(value)),
  );

export const column = (rows: readonly Row[], name: string) => rows.map((row) => row[name]);

/** The flags of a kind, and the cautions that they stand for. */
const FLAGGED: Readonly<Record<string, readonly (readonly [keyof typeof rowFlags, readonly string[]])[]>> = {
  'cuff-pressure': [['ceiling-reached', ['ceiling-reached']]],
  'occlusion-pressure': [
    ['outside-fitted-range', ['outside-fitted-range']],
    ['blood-pressure-refer', ['blood-pressure-refer']],
  ],
  'one-repetition-maximum': [['outside-fitted-range', ['outside-fitted-repetitions', 'outside-population']]],
};

/** A row of a column answer says what the scalar function says: the very numbers, not numbers near them. */
export function expectSame(got: ColumnAnswer, row: number, expected: Attempt<Answer>): void {
  const flag = got.flag[row]!;
  const flagged = (code: keyof typeof rowFlags): boolean => (flag & rowFlags[code].bit) !== 0;
  const said: unknown[] = [(flag & REFUSED) === 0, got.value, got.lower, got.upper, got.standardDeviation];
  for (let at = 1; at <= 4; at += 1) said[at] = (said[at] as ColumnAnswer['value'])[row];
  const wanted: unknown[] = [expected.ok, NaN, NaN, NaN, NaN];
  if (expected.ok) {
    const { value, lower = NaN, upper = NaN, standardDeviation = NaN, cautions } = expected.value;
    wanted.splice(1, 4, value, lower, upper, standardDeviation, Number.isNaN(lower));
    said.push(flagged('no-interval'));
    for (const [code, of] of FLAGGED[got.about.kind] ?? []) {
      said.push(flagged(code));
      wanted.push(cautions.some((caution) => of.includes(caution.code)));
    }
  }
  // An assertion for each of a million numbers takes most of the time.
  if (said.every((each, at) => Object.is(each, wanted[at]))) return;
  expect(said, `${flagCodes(flag).join()} ${expected.ok ? '' : JSON.stringify(expected.issues)}`).toEqual(wanted);
}
