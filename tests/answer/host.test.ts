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

describe('a host that changes what the library stands on, after it was loaded', () => {
  it('gets the same answers twice', () => expect(changed()).toEqual([]));

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
    const right = Object.fromEntries(functions.map((name) => [name, host[name]!]));
    let harmed: string[] = [];
    for (const name of functions) host[name] = wrong(right[name]!);
    try {
      harmed = changed();
    } finally {
      Object.assign(host, right);
    }
    expect(functions.length).toBeGreaterThan(30);
    expect(harmed).toEqual([]);
  });
});
