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

/** A row as the scalar function takes it: what is missing is left out. */
export const scalarRow = (row: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(
    Object.entries(row).filter(([, value]) => value !== null && value !== undefined && !Number.isNaN(value)),
  );

export const column = (rows: readonly Readonly<Record<string, unknown>>[], name: string) =>
  rows.map((row) => row[name]);

/** A row of a column answer says what the scalar function says. */
export function expectSame(got: ColumnAnswer, row: number, expected: Attempt<Answer>): void {
  const flag = got.flag[row]!;
  const numbers = [got.value, got.lower, got.upper, got.standardDeviation].map((column) => column[row]);
  if (!expected.ok) {
    expect(flag & REFUSED, JSON.stringify(expected.issues)).not.toBe(0);
    expect(numbers).toEqual([NaN, NaN, NaN, NaN]);
    return;
  }
  const { value, lower, upper, standardDeviation, cautions } = expected.value;
  expect(flag & REFUSED, flagCodes(flag).join()).toBe(0);
  // The very numbers, not numbers near them.
  expect(numbers).toEqual([value, lower ?? NaN, upper ?? NaN, standardDeviation ?? NaN]);
  const codes = cautions.map(({ code }) => code);
  const { kind } = got.about;
  const flagged = (code: keyof typeof rowFlags): boolean => (flag & rowFlags[code].bit) !== 0;
  if (kind === 'cuff-pressure') expect(flagged('ceiling-reached')).toBe(codes.includes('ceiling-reached'));
  if (kind === 'occlusion-pressure') {
    expect(flagged('outside-fitted-range')).toBe(codes.includes('outside-fitted-range'));
    expect(flagged('blood-pressure-refer')).toBe(codes.includes('blood-pressure-refer'));
  }
  if (kind === 'one-repetition-maximum') {
    const outside = codes.some((code) => code === 'outside-fitted-repetitions' || code === 'outside-population');
    expect(flagged('outside-fitted-range')).toBe(outside);
  }
  expect(flagged('no-interval')).toBe(lower === undefined);
}
