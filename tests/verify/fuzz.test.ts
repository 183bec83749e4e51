import { describe, expect, it } from 'vitest';
import { isInputError, quantities } from '../../src/index.js';
import { publicFunctions } from '../support/public-functions.js';
import { oneOf, seeded } from '../support/seeded.js';

// `FUZZ=50000 SEED=7 npm run fuzz` for another count and other inputs.
const COUNT = Number(process.env['FUZZ'] ?? 1_000_000);
const SEED = Number(process.env['SEED'] ?? 1);
/** No input may keep a caller waiting [ms]; far above what any took, so that a busy machine does not fail. */
const PATIENCE = 5000;

const random = seeded(SEED);
const within = (low: number, high: number) => low + random() * (high - low);
const chance = (share: number) => random() < share;
const throws = () => {
  throw new RangeError('from the caller’s own code');
};

const bounds = Object.values(quantities).flatMap(({ min, max }) => [min, max]);
const edges = [
  ...[0, -0, NaN, Infinity, -Infinity, Number.MAX_VALUE, -Number.MAX_VALUE, Number.MIN_VALUE, Number.EPSILON],
  ...[Number.MAX_SAFE_INTEGER, 2 ** 53, 2 ** 31, 2 ** 32, -1, 0.1 + 0.2, 1e-7, 1e21, 5e-324],
  ...bounds.flatMap((bound) => [bound, bound * (1 + Number.EPSILON), bound * (1 - Number.EPSILON), -bound]),
];

function deep(levels: number, list: boolean): unknown {
  let value: unknown = 1;
  for (let level = 0; level < levels; level += 1) value = list ? [value] : { inputs: value };
  return value;
}
const cycle: Record<string, unknown> = { kind: 'occlusion-pressure' };
cycle['inputs'] = { occlusion: cycle };
const revoked = Proxy.revocable({}, {});
revoked.revoke();
const texts = [
  '',
  ' ',
  '50',
  '\ud800',
  'a\udc00b',
  '\u0000',
  '__proto__',
  'constructor',
  'x'.repeat(100_000),
  '١٢٠',
  '-0',
  '30-15',
  '9'.repeat(400),
];

/** Values that are costly to make, made once. */
const heavy: readonly unknown[] = [
  deep(41, false),
  deep(41, true),
  deep(20_000, false),
  deep(20_000, true),
  cycle,
  revoked.proxy,
  new Array(2 ** 32 - 1),
  new Array(100_000).fill(1),
  new Array(100_000).fill({ repetitions: 1 }),
  Array.from({ length: 1001 }, () => ({ repetitions: 1, restS: 30 })),
  Object.fromEntries(Array.from({ length: 20_000 }, (_, index) => [`field${index}`, index])),
  new Float64Array(1000),
];

const makers: readonly (() => unknown)[] = [
  () => oneOf(random, edges),
  () => oneOf(random, edges),
  () => within(-1e4, 1e4),
  () => 10 ** within(-320, 309) * (chance(0.5) ? 1 : -1),
  () => oneOf(random, texts),
  () =>
    oneOf(random, [
      undefined,
      null,
      true,
      false,
      10n,
      Symbol('s'),
      throws,
      new Date(NaN),
      /x/,
      new Map([[1, 2]]),
      new Set(),
    ]),
  () =>
    oneOf(random, [
      class {},
      Promise.resolve(1),
      new Error('x'),
      new WeakMap(),
      new (class extends Array {})(),
      globalThis,
    ]),
  () => [],
  () => Array.from({ length: Math.floor(within(1, 6)) }, any),
  () => ({ [oneOf(random, texts.slice(3, 8))]: any() }),
  () => JSON.parse('{"__proto__":{"percentOneRepMax":50,"load":20},"constructor":{"prototype":{}}}') as unknown,
  () => Object.create({ percentOneRepMax: 50, load: 20, repetitions: 8 }) as unknown,
  () => Object.assign(Object.create(null) as object, { valueOf: throws, toString: throws, toJSON: throws }),
  () => ({ valueOf: () => 50, toString: () => '50', [Symbol.toPrimitive]: () => 50 }),
  () => new Number(50),
  () => new Proxy({}, { getPrototypeOf: throws }),
  () => new Proxy({}, { ownKeys: throws }),
  () => new Proxy({}, { get: throws, has: throws, getOwnPropertyDescriptor: throws }),
  () =>
    new Proxy([], {
      get: (target, key) => (key === 'length' ? oneOf(random, [1e9, -1, NaN, 0.5]) : Reflect.get(target, key)),
    }),
  () =>
    new Proxy(Object.assign({}, oneOf(random, rights)), {
      ownKeys: (target) => [...Reflect.ownKeys(target), Symbol('more')],
    }),
  // Says another thing each time it is read.
  () => Object.defineProperty({}, 'percentLop', { get: () => oneOf(random, edges), enumerable: true }),
  () => oneOf(random, heavy),
];
function any(): unknown {
  return oneOf(random, makers)();
}

const names = Object.keys(publicFunctions);
const rights = names.map((name) => publicFunctions[name]!.right);
const fields = [...new Set([...rights.flatMap((right) => Object.keys(right)), ...Object.keys(quantities)])];

/** A right input with one thing changed somewhere in it. */
function tampered(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || chance(0.25)) return any();
  if (Array.isArray(value)) {
    const list = [...(value as unknown[])];
    if (chance(0.2)) return chance(0.5) ? [...list, any()] : list.slice(1);
    const at = Math.floor(within(0, list.length));
    list[at] = tampered(list[at]);
    return list;
  }
  const copy: Record<string, unknown> = { ...value };
  const name = oneOf(random, Object.keys(copy));
  switch (Math.floor(within(0, 12))) {
    case 0:
      delete copy[name];
      return copy;
    case 1:
      return { ...copy, [oneOf(random, fields)]: any() };
    case 2:
      return { ...copy, [oneOf(random, texts)]: any() };
    case 3:
      return Object.defineProperty(copy, name, { get: throws, enumerable: true });
    case 4:
      return Object.defineProperty(copy, name, { get: () => any(), enumerable: true });
    case 5:
      return Object.freeze(Object.assign(Object.create(null) as object, copy));
    default:
      copy[name] = tampered(copy[name]);
      return copy;
  }
}

/** The first thing in an answer that is not plain JSON, if there is one. */
function flaw(value: unknown, path = ''): string | undefined {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return undefined;
  if (typeof value === 'number')
    return Number.isFinite(value) && !Object.is(value, -0) ? undefined : `${path} is ${value === 0 ? '-0' : value}`;
  if (typeof value !== 'object') return `${path} is a ${typeof value}`;
  for (const [name, item] of Object.entries(value)) {
    const found = item === undefined && !Array.isArray(value) ? undefined : flaw(item, `${path}.${name}`);
    if (found) return found;
  }
  return undefined;
}

const builtIns = [Object, Array, String, Number, Function, Error].map(({ prototype }) => prototype as object);
const shapeOf = () => builtIns.map((prototype) => Reflect.ownKeys(prototype).length).join();

describe('fuzz', () => {
  it(`${COUNT} inputs, seed ${SEED}, end in an answer in plain JSON or in an InputError`, () => {
    const shape = shapeOf();
    const count: Record<string, { answers: number; errors: number }> = {};
    let slowest = { took: 0, name: '' };
    for (let index = 0; index < COUNT; index += 1) {
      const name = names[index % names.length]!;
      const { call, right } = publicFunctions[name]!;
      const input = chance(0.15) ? any() : tampered(right);
      const tally = (count[name] ??= { answers: 0, errors: 0 });
      const start = performance.now();
      let wrong: string | undefined;
      try {
        wrong = flaw(call(input as never));
        tally.answers += 1;
      } catch (error) {
        if (!isInputError(error)) throw new Error(`${name}, input ${index} of seed ${SEED}`, { cause: error });
        tally.errors += 1;
        const right =
          error.issues.length > 0 && error.issues.every(({ message }) => message !== '') && !flaw(error.issues);
        if (!right) expect.fail(`${name}, input ${index}: an InputError that says nothing`);
      }
      if (wrong) expect.fail(`${name}, input ${index} of seed ${SEED}: the answer’s ${wrong}`);
      const took = performance.now() - start;
      if (took > slowest.took) slowest = { took, name };
    }
    expect(shapeOf(), 'properties of the built-in prototypes').toBe(shape);
    expect(({} as Record<string, unknown>)['percentLop']).toBeUndefined();
    expect(slowest.took, slowest.name).toBeLessThan(PATIENCE);
    const answers = Object.values(count).reduce((sum, tally) => sum + tally.answers, 0);
    console.log(
      `${COUNT} inputs, seed ${SEED}: ${answers} answers, ${COUNT - answers} InputErrors, ` +
        `the slowest ${slowest.took.toFixed(0)} ms (${slowest.name})`,
    );
    for (const name of names) {
      if (COUNT < 100_000) continue;
      expect(count[name]!.errors, name).toBeGreaterThan(100);
      expect(count[name]!.answers, name).toBeGreaterThan(100);
    }
  });
});
