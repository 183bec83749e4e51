import { describe, expect, it } from 'vitest';
import * as equations from '../../src/equations.js';
import * as root from '../../src/index.js';
import * as plan from '../../src/plan/index.js';
import * as study from '../../src/study/index.js';
import * as text from '../../src/text/index.js';
import { publicCalls } from '../support/public-functions.js';

const exported = Object.entries({ ...root, ...plan, ...study, ...text, ...equations } as Record<string, unknown>);
const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Every object inside a value, with where it stands. */
function inside(value: unknown, path = '', found = new Map<object, string>()): Map<object, string> {
  if (!isObject(value) || found.has(value)) return found;
  found.set(value, path);
  // The elements of a typed array are its own: two answers share none, or their arrays are the same.
  if (ArrayBuffer.isView(value)) return found.set(value.buffer, `${path}.buffer`);
  for (const [name, part] of Object.entries(value)) inside(part, `${path}.${name}`, found);
  return found;
}
const thawed = (objects: Map<object, string>) =>
  [...objects].filter(([object]) => !Object.isFrozen(object)).map(([, path]) => path);

describe('every exported table', () => {
  const tables = exported.filter(([, value]) => isObject(value));
  it('is among those looked at', () => expect(tables.length).toBeGreaterThan(15));
  it.each(tables)('%s is frozen all the way down', (_name, table) => {
    expect(thawed(inside(table))).toEqual([]);
  });
});

describe('every public function', () => {
  it('is in the table of calls', () => {
    const functions = exported.filter(
      ([name, value]) => typeof value === 'function' && name !== 'InputError' && !Object.hasOwn(equations, name),
    );
    const called = Object.keys(publicCalls).map((name) => name.split(',')[0]);
    expect(functions.map(([name]) => name).filter((name) => !called.includes(name))).toEqual([]);
  });

  const answers = Object.entries(publicCalls).map(([name, { call, right }]) => {
    const input = structuredCloneOf(right);
    return { name, input: inside(input), answer: inside(call(...(input as never[]))), again: call, right };
  });
  const holders = new Map<object, string[]>();
  for (const { name, input, answer } of answers) {
    for (const [object, path] of [...answer, ...input])
      holders.set(object, [...(holders.get(object) ?? []), `${name}${path}`]);
  }

  // What is looked up in a document is the part itself, to be compared and changed there.
  const made = answers.filter(({ name }) => name !== 'findItem');
  it.each(made)('$name shares nothing that can be changed with its input, a table or another answer', (one) => {
    const { answer, input, again, right } = one;
    const later = inside(again(...(structuredCloneOf(right) as never[])));
    const changeable = [...answer].filter(([object]) => !Object.isFrozen(object));
    expect(
      changeable.filter(([object]) => input.has(object)).map(([, path]) => path),
      'with its input',
    ).toEqual([]);
    expect(
      changeable.filter(([object]) => later.has(object)).map(([, path]) => path),
      'with a later answer',
    ).toEqual([]);
    const shared = changeable.filter(([object]) => holders.get(object)!.length > 1);
    expect(
      shared.map(([object]) => holders.get(object)),
      'with other answers',
    ).toEqual([]);
  });
});

/** A copy of what is plain; functions stay as they are. */
function structuredCloneOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(structuredCloneOf);
  if (!isObject(value) || value instanceof Error) return value;
  if (ArrayBuffer.isView(value)) return structuredClone(value);
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, structuredCloneOf(part)]));
}
