import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { publicFunctions } from '../support/public-functions.js';
import { answers } from '../support/random-answers.js';

/** A digest of some hundred answers, function by function. */
const digests = () => Object.fromEntries(Object.entries(answers(240, 7)).map(([name, { exact }]) => [name, exact]));
const before = digests();
const changed = () => {
  const now = digests();
  return Object.keys(before).filter((name) => before[name] !== now[name]);
};

type Host = Record<string, (...numbers: number[]) => number>;
const host = Math as unknown as Host;
const functions = Object.getOwnPropertyNames(Math).filter((name) => typeof host[name] === 'function');

// decimal.js reads it anew at each call, so decimal sums would go wrong, and some never end: no answer is given then.
const LEFT_OUT = ['ceil'];

describe('a host that changes what the library stands on, after it was loaded', () => {
  it('gets the same answers twice', () => expect(changed()).toEqual([]));

  it('cannot change an answer by setting decimal.js', () => {
    const { precision, rounding, toExpNeg, toExpPos, maxE, minE, modulo } = Decimal;
    try {
      Decimal.set({ precision: 2, rounding: 0, toExpNeg: 0, toExpPos: 0, maxE: 3, minE: -3, modulo: 9 });
      expect(Number(new Decimal(123456).plus(1)), 'the setting has taken').not.toBe(123457);
      expect(changed()).toEqual([]);
    } finally {
      Decimal.set({ precision, rounding, toExpNeg, toExpPos, maxE, minE, modulo });
    }
  });

  // All functions at once: one after the other takes a minute more, and finds no more.
  it.each<[string, (right: Host[string]) => Host[string]]>([
    ['NaN', () => () => NaN],
    ['0', () => () => 0],
    [
      '1 more',
      (right) =>
        (...numbers) =>
          right(...numbers) + 1,
    ],
  ])('cannot change an answer by functions of Math that give %s', (_what, wrong) => {
    const names = functions.filter((name) => !LEFT_OUT.includes(name));
    const right = Object.fromEntries(names.map((name) => [name, host[name]!]));
    let harmed: string[] = [];
    for (const name of names) host[name] = wrong(right[name]!);
    try {
      harmed = changed();
    } finally {
      Object.assign(host, right);
    }
    expect(names.length).toBeGreaterThan(30);
    expect(harmed).toEqual([]);
  });

  it('gets an error where decimal.js cannot do without a changed Math.ceil, and gets no other answer', () => {
    const { ceil } = Math;
    const message = (call: () => unknown): string => {
      try {
        return JSON.stringify(call());
      } catch (error) {
        return String(error);
      }
    };
    const calls = Object.entries(publicFunctions).map(
      ([name, { call, right }]) => [name, () => call(right as never)] as const,
    );
    const rights = calls.map(([, call]) => message(call));
    const told: string[] = [];
    for (const wrong of [() => NaN, () => 0, (value: number) => ceil(value) + 1, (value: number) => ceil(value)]) {
      Math.ceil = wrong;
      try {
        calls.forEach(([name, call], index) => {
          const now = message(call);
          if (now !== rights[index]) {
            expect(now, name).toMatch(/^Error: Math\.ceil was changed/);
            told.push(name);
          }
        });
      } finally {
        Math.ceil = ceil;
      }
    }
    expect(told).toContain('loadPlates');
    expect(calls.map(([, call]) => message(call))).toEqual(rights);
  });
});
