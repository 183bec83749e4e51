import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
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

// decimal.js reads it anew at each call, so a host that breaks it breaks decimal sums, and some then never end: it is
// left out here, and stands open in the ledger. Nothing of ours does.
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

  it.each(functions.filter((name) => !LEFT_OUT.includes(name)))(
    'cannot change an answer by changing Math.%s',
    (name) => {
      const right = host[name]!;
      const wrongs: Host[string][] = [() => NaN, () => 0, (...numbers) => right(...numbers) + 1];
      const harmed = new Set<string>();
      for (const wrong of wrongs) {
        let found: string[] = [];
        host[name] = wrong;
        try {
          found = changed();
        } finally {
          host[name] = right;
        }
        for (const door of found) harmed.add(door);
      }
      expect([...harmed]).toEqual([]);
    },
  );
});
