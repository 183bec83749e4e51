import { expect } from 'vitest';

/** How many digits two numbers have in common. */
export const digits = (received: number, expected: number): number =>
  received === expected ? 16 : -Math.log10(Math.abs(received - expected) / Math.abs(expected));

export const expectDigits = (received: readonly number[], expected: readonly number[], least: number): void => {
  expect(received.length).toBe(expected.length);
  received.forEach((value, index) =>
    expect(digits(value, expected[index]!), `${value} against ${expected[index]}`).toBeGreaterThanOrEqual(least),
  );
};
