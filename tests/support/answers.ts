import { expect } from 'vitest';

/** Every number anywhere in an answer is finite, and the answer survives JSON. */
export function expectPlainJson(answer: unknown): void {
  const seen: number[] = [];
  const text = JSON.stringify(answer, (_key, value: unknown) => {
    if (typeof value === 'number') seen.push(value);
    return value;
  });
  expect(seen.length).toBeGreaterThan(0);
  expect(seen.every(Number.isFinite)).toBe(true);
  expect(JSON.parse(text)).toEqual(answer);
}

/** A frozen copy, all the way down: whoever writes to it throws. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    for (const part of Object.values(value)) frozen(part);
    Object.freeze(value);
  }
  return value;
}
