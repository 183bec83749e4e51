import { expect, it } from 'vitest';
import { grades } from '../../src/evidence/grades.js';
import { sources } from '../../src/evidence/sources.js';

interface Row {
  readonly source: string;
  readonly grade: string;
  readonly expected?: unknown;
  readonly tolerance?: number;
}

/** One test for each row of check values; a file without rows, or a row without source and grade or too tolerant, fails. */
export function eachRow<R extends Row>(
  file: { title: string; why: string; rows: readonly R[] },
  check: (row: R) => void,
) {
  it(`${file.title}: has rows, each with source and grade, and no loose tolerance`, () => {
    expect(file.rows.length).toBeGreaterThan(0);
    for (const { source, grade, expected, tolerance = 0 } of file.rows) {
      expect(source === 'common practice, no source' || Object.hasOwn(sources, source), source).toBe(true);
      expect(Object.hasOwn(grades, grade), grade).toBe(true);
      if (typeof expected !== 'number') continue;
      const [, digits = ''] = String(expected).split('.');
      const half = 0.5 / 10 ** digits.length;
      expect(tolerance, `${expected} with more than half of its last digit`).toBeLessThanOrEqual(half);
    }
  });
  for (const [index, row] of file.rows.entries()) {
    const { source, grade } = row;
    it(`${file.title}, row ${index + 1} (${source}, ${grade})`, () => check(row));
  }
}

/** Equal within half of the last printed digit, or exactly where the tolerance is 0. */
export function expectWithin(received: number, expected: number, tolerance: number): void {
  if (tolerance === 0) expect(received).toBe(expected);
  else expect(Math.abs(received - expected), `${received} against ${expected}`).toBeLessThanOrEqual(tolerance);
}
