/** The little of vitest that the tests of check values use, small enough to run in any engine. A matcher that is not here fails. */
interface Row {
  readonly name: string;
  readonly run: () => unknown;
}
export const rows: Row[] = [];
const names: string[] = [];

export function describe(name: string, body: () => void): void {
  names.push(name);
  body();
  names.pop();
}
export function it(name: string, run: () => unknown): void {
  rows.push({ name: [...names, name].join(' > '), run });
}
it.each =
  (cases: readonly unknown[]) =>
  (name: string, run: (...values: unknown[]) => unknown): void =>
    cases.forEach((values, index) =>
      it(`${name} #${index + 1}`, () => (Array.isArray(values) ? run(...(values as unknown[])) : run(values))),
    );

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Whether everything that `b` has is so in `a`; with `exact`, the other way round too. Undefined counts as not there. */
function alike(a: unknown, b: unknown, exact: boolean): boolean {
  if (Object.is(a, b) || (a === 0 && b === 0)) return true;
  if (!isObject(a) || !isObject(b) || Array.isArray(a) !== Array.isArray(b)) return false;
  if (Array.isArray(a) && a.length !== (b as unknown as unknown[]).length) return false;
  const keys = exact ? [...Object.keys(a), ...Object.keys(b)] : Object.keys(b);
  return keys.every((key) => alike(a[key], b[key], exact));
}

class Containing {
  constructor(readonly fields: object) {}
}
expect.objectContaining = (fields: object): unknown => new Containing(fields);

const matchers: Record<string, (received: never, expected: never, digits?: number) => boolean> = {
  toBe: (a: unknown, b: unknown) => Object.is(a, b),
  toEqual: (a: unknown, b: unknown) => alike(a, b, true),
  toStrictEqual: (a: unknown, b: unknown) => alike(a, b, true),
  toContainEqual: (a: readonly unknown[], b: unknown) =>
    a.some((one) => (b instanceof Containing ? alike(one, b.fields, false) : alike(one, b, true))),
  toMatchObject: (a: unknown, b: unknown) => alike(a, b, false),
  toBeLessThan: (a: number, b: number) => a < b,
  toBeLessThanOrEqual: (a: number, b: number) => a <= b,
  toBeGreaterThan: (a: number, b: number) => a > b,
  toBeGreaterThanOrEqual: (a: number, b: number) => a >= b,
  toBeCloseTo: (a: number, b: number, digits = 2) => Math.abs(a - b) < 10 ** -digits / 2,
  toContain: (a: string | unknown[], b: never) => a.includes(b),
  toHaveLength: (a: { length: number }, b: number) => a.length === b,
  toHaveProperty: (a: object, b: string) => b in a,
  toMatch: (a: string, b: string | RegExp) => (typeof b === 'string' ? a.includes(b) : b.test(a)),
  toBeDefined: (a: unknown) => a !== undefined,
  toBeUndefined: (a: unknown) => a === undefined,
  toBeTruthy: (a: unknown) => Boolean(a),
  toBeFalsy: (a: unknown) => !a,
  // A golden page is a file, which engines without files cannot read: that it is text is all they see.
  toMatchFileSnapshot: (a: unknown) => typeof a === 'string',
  toBeNaN: (a: unknown) => Number.isNaN(a),
  toThrow: (a: () => unknown, b: unknown) => {
    try {
      a();
      return false;
    } catch (error) {
      if (b instanceof Containing) return alike(error, b.fields, false);
      if (typeof b === 'function') return error instanceof b;
      if (b instanceof RegExp) return b.test((error as Error).message);
      return b === undefined || (error as Error).message.includes(b as string);
    }
  },
};

type Expectation = Record<string, (expected?: unknown, digits?: number) => void> & { not: Expectation };

export function expect(received: unknown, message = ''): Expectation {
  const expectation = (wanted: boolean): Record<string, unknown> =>
    Object.fromEntries(
      Object.entries(matchers).map(([name, match]) => [
        name,
        (expected?: unknown, digits?: number) => {
          if (match(received as never, expected as never, digits) === wanted) return;
          const words = [message, wanted ? '' : 'not', name, JSON.stringify(expected), 'received', String(received)];
          throw new Error(words.filter(Boolean).join(' '));
        },
      ]),
    );
  return { ...expectation(true), not: expectation(false) } as Expectation;
}
