import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isInputError } from '../../src/index.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import * as root from '../../src/index.js';
import { publicFunctions } from '../support/public-functions.js';

const throws = () => {
  throw new RangeError('from the caller’s own getter');
};
const cycle: Record<string, unknown> = {};
cycle['self'] = cycle;

/** Values that no field takes. */
const hostile: readonly unknown[] = [
  undefined,
  null,
  NaN,
  Infinity,
  -Infinity,
  10n,
  Symbol('s'),
  () => 1,
  new Date(0),
  new Map(),
  [],
  [1],
  '',
  '50',
  '\ud800',
  true,
  Object.create({ inherited: 1 }),
  new Proxy({}, { getPrototypeOf: throws }),
  new Proxy({}, { ownKeys: throws, get: throws, getOwnPropertyDescriptor: throws }),
  cycle,
  // Says that it holds one value, and gives none.
  Object.assign([1], { [Symbol.iterator]: () => [].values() }),
  JSON.parse('{"__proto__":{"percentLop":50}}'),
];

/** Runs a call that may end in an answer or in an InputError, and in nothing else. */
function answerOrInputError(call: () => unknown): 'answer' | 'error' {
  try {
    call();
    return 'answer';
  } catch (error) {
    if (!isInputError(error)) throw error;
    expect(error.issues.length).toBeGreaterThan(0);
    for (const { message, expected, received } of error.issues) {
      expect(message).not.toBe('');
      expect(message).not.toMatch(/\{(field|expected|received|slip|converted)\}/);
      expect(expected).not.toBe('');
      expect(received).not.toBe('');
    }
    expect(JSON.parse(JSON.stringify(error.issues))).toEqual(error.issues);
    return 'error';
  }
}

for (const [name, { call, right }] of Object.entries(publicFunctions)) {
  describe(name, () => {
    const run = (input: unknown) => answerOrInputError(() => call(input as never));

    it('takes a right input, leaves it as it was, and answers in plain JSON', () => {
      const answer = call(frozen(structuredClone(right)) as never);
      if (typeof answer === 'object' && name !== 'cite') expectPlainJson(answer);
      else expect(answer).toBeTruthy();
    });

    it('refuses anything that is not a plain object', () => {
      // A list of answers can be cited, so a list is right there.
      const wrong = hostile.slice(0, 19).filter((input) => name !== 'cite' || !Array.isArray(input));
      for (const input of wrong) expect(run(input)).toBe('error');
    });

    it('refuses or survives hostile values in every field', () => {
      for (const field of Object.keys(right)) {
        for (const value of hostile) run({ ...right, [field]: value });
        run(Object.defineProperty({ ...right }, field, { get: throws, enumerable: true }));
      }
    });

    it('ends in an answer or an InputError whatever it is given', () => {
      const value = fc.oneof(
        fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true }),
        fc.double(),
      );
      const tampered = fc
        .tuple(fc.constantFrom(...Object.keys(right)), value)
        .map(([field, other]) => ({ ...right, [field]: other }));
      fc.assert(
        fc.property(fc.oneof(value, tampered), (input) => {
          run(input);
        }),
        { numRuns: Number(process.env['FUZZ_RUNS'] ?? 150) },
      );
    });
  });
}

describe('minus zero', () => {
  // JSON has no minus zero, so an answer that held one would not be the same after a stay in a database.
  it.each([
    ['sessionTotals', { restS: -0 }],
    ['estimateOneRepMax', { repetitionsInReserve: -0 }],
    ['measuredOcclusionPressure', { standardDeviationMmHg: -0 }],
  ])('is taken as zero by %s', (name, field) => {
    const { call, right } = publicFunctions[name]!;
    expectPlainJson(call({ ...right, ...field } as never));
  });
});

describe('an answer that was changed by hand', () => {
  // 100 × 85 / 5e-324 is no finite number, nor are 1e308 kg in pounds.
  it.each([
    ['targetCuffPressure', 'occlusion', { lower: 5e-324 }],
    ['trainingLoad', 'oneRepMax', { lower: 5e-324 }],
    ['trainingLoad', 'oneRepMax', { upper: 1.7e308 }],
    ['trainingLoad', 'oneRepMax', { standardDeviation: 1.7e308 }],
  ])('is refused by %s where its interval would overflow: %s %o', (name, field, change) => {
    const { call, right } = publicFunctions[name]!;
    const answer = { ...(right as Record<string, object>)[field], ...change };
    try {
      call({ ...right, [field]: answer } as never);
      expect.unreachable('an interval that would overflow was taken');
    } catch (error) {
      if (!isInputError(error)) throw error;
      expect(error.issues).toMatchObject([{ path: [field], received: 'a broken interval' }]);
    }
  });
});

describe('unknown fields', () => {
  const checked = Object.entries(publicFunctions).filter(([, { open }]) => !open);
  it.each(checked)('%s refuses them by name', (_name, { call, right }) => {
    try {
      call({ ...right, gaugeStep: 5 } as never);
      expect.unreachable('a field nobody reads was taken');
    } catch (error) {
      if (!isInputError(error)) throw error;
      expect(error.issues).toMatchObject([{ code: 'unknown-field', path: ['gaugeStep'] }]);
    }
  });
  it('does not read fields from a polluted prototype', () => {
    const polluted = Object.prototype as Record<string, unknown>;
    polluted['repetitionsInReserve'] = 5;
    try {
      const { call, right } = publicFunctions['estimateOneRepMax']!;
      expect(call(right as never)).toMatchObject({ inputs: { repetitionsInReserve: 0 } });
    } finally {
      delete polluted['repetitionsInReserve'];
    }
  });
});

describe('a list that says another length each time it is read', () => {
  it('is asked once, so that it cannot pass as empty', () => {
    let reads = 0;
    const exercises = new Proxy([{}], {
      get: (list, name, receiver) =>
        name === 'length' ? ((reads += 1) === 1 ? 1 : 0) : (Reflect.get(list, name, receiver) as unknown),
    });
    expect(() => root.sessionTotals({ exercises } as never)).toThrow(/exercises/);
    expect(reads).toBe(1);
  });
});
