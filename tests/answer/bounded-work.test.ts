import { describe, expect, it } from 'vitest';
import {
  InputError,
  isInputError,
  sessionTotals,
  attempt,
  estimateOcclusionPressure,
  targetCuffPressure,
} from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';
import { publicCalls, publicFunctions } from '../support/public-functions.js';

const throws = () => {
  throw new RangeError('from the caller’s own code');
};
/** An endless list, for whoever iterates it. */
const endless = Object.assign([1], {
  *[Symbol.iterator]() {
    for (;;) yield 1;
  },
});
const cycle: unknown[] = [];
cycle.push(cycle, { cycle });
/** Eight levels of a thousand items each, all one and the same: small to hold, endless to walk. */
const wide = Array.from({ length: 8 }).reduce<unknown>((inner) => Array.from({ length: 1000 }, () => inner), 1);
const sets = Array.from({ length: 1000 }, () => ({ repetitions: 10, restS: 30 }));
const manyFields = Object.fromEntries(
  Array.from({ length: 20_000 }, (_, index) => [`${'x'.repeat(50)}${index}`, index]),
);

/** Values that no place takes, each costly or treacherous in its own way. */
const hostile: readonly unknown[] = [
  undefined,
  null,
  NaN,
  -1,
  1e308,
  10n,
  Symbol('s'),
  throws,
  'x'.repeat(1_000_000),
  '{'.repeat(1_000_000),
  `${'{a'.repeat(100_000)}}`,
  new Date(NaN),
  new Map([[1, 2]]),
  new Array(4_294_967_295),
  Object.assign([], { 4_294_967_294: 1 }),
  [, 1], // eslint-disable-line no-sparse-arrays
  endless,
  cycle,
  wide,
  { exercises: Array.from({ length: 1000 }, () => ({ sets, restriction: 'none' })) },
  { sets, warmUp: sets },
  manyFields,
  { toString: 1, valueOf: 1 },
  { kind: { toString: 1 }, equation: 'x', formula: 'x', evidence: { toString: 1 } },
  { valueOf: throws, toString: throws, [Symbol.toPrimitive]: throws },
  Object.defineProperty({}, 'percentLop', { value: 50 }),
  Object.defineProperty({}, 'percentLop', { get: throws, enumerable: true }),
  { [Symbol('field')]: 1 },
  new Proxy({}, { getPrototypeOf: throws }),
  new Proxy({}, { ownKeys: throws }),
  new Proxy([], { get: (list, name) => (name === 'length' ? 1e9 : Reflect.get(list, name)) }),
  new Proxy({}, { get: throws, has: throws, getOwnPropertyDescriptor: throws }),
  new Float64Array(3),
];

/** Processor time, far above what any call takes: a busy machine takes no more of it. */
const PATIENCE_MS = 4000;
/** An error a person can read: a hundred issues of some hundred characters. */
const LONGEST_MESSAGE = 250_000;

function expectAnswerOrInputError(call: () => unknown): void {
  const start = process.cpuUsage();
  try {
    call();
  } catch (error) {
    if (!isInputError(error)) throw error;
    expect(error.issues.length).toBeLessThanOrEqual(100);
    expect(error.message.length).toBeLessThan(LONGEST_MESSAGE);
  }
  const { user, system } = process.cpuUsage(start);
  expect((user + system) / 1000).toBeLessThan(PATIENCE_MS);
}

/** Every place inside plain arguments, to the depth of a document’s answers. */
function places(value: unknown, depth = 4): (string | number)[][] {
  if (typeof value !== 'object' || value === null || depth === 0) return [[]];
  return [
    [],
    ...Object.entries(value).flatMap(([name, part]) => places(part, depth - 1).map((rest) => [name, ...rest])),
  ];
}
function withPart(value: unknown, [first, ...rest]: readonly (string | number)[], part: unknown): unknown {
  if (first === undefined) return part;
  const copy: any = Array.isArray(value) ? [...value] : { ...(value as object) };
  copy[first] = withPart(copy[first], rest, part);
  return copy;
}

describe.each(Object.entries(publicCalls))('%s', (name, { call, right }) => {
  // What your own function throws is yours.
  const own = (path: readonly (string | number)[]) =>
    (['attempt', 'attemptForm', 'inputFields', 'eachRow'].includes(name) && path[0] === '0') ||
    ['pipeline', 'statistic', 'fit', 'measured'].includes(String(path[1]));

  it('ends in an answer or an InputError, soon, whatever is in any place of its arguments', () => {
    const all = places(right, 3).filter((path) => path.length > 0);
    // Every argument, and some of the places inside them: another test fills each field.
    const few = all.filter((path, index) => path.length === 1 || index % Math.ceil(all.length / 2) === 1);
    for (const path of few) {
      for (const value of hostile) {
        if (typeof value === 'function' && own(path)) continue;
        expectAnswerOrInputError(() => call(...(withPart(right, path, value) as never[])));
      }
    }
  });
});

describe('a hidden field', () => {
  const { right } = publicFunctions['targetCuffPressure']!;
  const issuesOf = (input: unknown) => {
    const result = attempt(targetCuffPressure, input as never);
    return result.ok ? [] : result.issues.map(({ path, received }) => [path.join('.'), received]);
  };
  it.each([
    ['not enumerable', Object.defineProperty({ ...right }, 'ceilingMmHg', { value: 60 }), 'ceilingMmHg'],
    ['named by a symbol', { ...right, [Symbol('ceiling')]: 60 }, 'Symbol(ceiling)'],
    [
      'a setter alone',
      Object.defineProperty({ ...right }, 'ceilingMmHg', { set: () => {}, enumerable: true }),
      'ceilingMmHg',
    ],
  ])('is refused by name: %s', (_kind, input, name) => {
    expect(issuesOf(input)).toEqual([[name, 'a hidden field']]);
  });

  it('is refused where it vanishes while another is read', () => {
    const input = Object.defineProperty({ ...right, ceilingMmHg: 60 } as Record<string, unknown>, 'occlusion', {
      enumerable: true,
      get() {
        delete input['ceilingMmHg'];
        return (right as Record<string, unknown>)['occlusion'];
      },
    }) as Record<string, unknown>;
    expect(issuesOf(input)).toEqual([['', 'an error']]);
  });

  it('inside a document makes it no plain JSON', () => {
    const { right: request } = publicFunctions['planSession']! as { right: Record<string, object[]> };
    const limbs = [Object.defineProperty({ ...request['limbs']![0] }, 'ceilingMmHg', { value: 60 })];
    const result = attempt(planSession, { ...request, limbs } as never);
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'wrong-type' }] });
  });

  it('is none where a getter shows it: it is read once', () => {
    let reads = 0;
    const input = Object.defineProperty({ ...right }, 'ceilingMmHg', {
      enumerable: true,
      get: () => ((reads += 1), 60),
    });
    expect(targetCuffPressure(input as never).value).toBe(60);
    expect(reads).toBe(1);
  });
});

describe('an error with more issues than anyone reads', () => {
  it('lists a hundred, and counts the rest', () => {
    const { right } = publicFunctions['estimateOcclusionPressure']!;
    const unknown = Object.fromEntries(Array.from({ length: 150 }, (_, index) => [`field${index}`, 1]));
    const result = attempt(estimateOcclusionPressure, { ...right, ...unknown } as never);
    if (result.ok) throw new Error('unknown fields were taken');
    expect([result.issues.length, result.more]).toEqual([100, 50]);
    expect(() => estimateOcclusionPressure({ ...right, ...unknown } as never)).toThrow(/field99 .*\n… and 50 more\.$/);
    expect(new InputError([]).more).toBe(0);
  });

  it('is given up on, with a short message, where every one of very many things is wrong', () => {
    const result = attempt(estimateOcclusionPressure, manyFields as never);
    if (result.ok) throw new Error('unknown fields were taken');
    expect(result.issues).toHaveLength(100);
    expect(result.more).toBeGreaterThan(100);
  });

  it('cuts names and values of the caller’s own', () => {
    const result = attempt(estimateOcclusionPressure, { ['y'.repeat(1e6)]: 1, limb: 'z'.repeat(1e6) } as never);
    if (result.ok) throw new Error('it was taken');
    for (const { message } of result.issues) expect(message.length).toBeLessThan(400);
  });
});

describe('a session', () => {
  const set = { repetitions: 10, restS: 30 };
  const one = { sets: [set], tempo: '2-0-2-0', restriction: 'none' } as const;
  it.each([
    ['50 sets', { ...one, sets: Array(50).fill(set) }, 'answer'],
    ['51 sets', { ...one, sets: Array(51).fill(set) }, 'sets'],
    ['51 warm-up sets', { ...one, warmUp: Array(51).fill(set) }, 'warmUp'],
    ['50 exercises', { exercises: Array(50).fill(one), reperfusionS: 60 }, 'answer'],
    ['51 exercises', { exercises: Array(51).fill(one), reperfusionS: 60 }, 'exercises'],
  ])('of %s', (_name, session, outcome) => {
    const result = attempt(sessionTotals, session as never);
    expect(result.ok ? 'answer' : result.issues.map(({ path }) => path.join('.')).join()).toBe(outcome);
  });
});
