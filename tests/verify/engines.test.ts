import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DifferenceName, Given } from '../support/random-answers.js';
import { checkTests, freshProject } from './engine/bundle.js';
import { engines, installEngines, type Told } from './engine/engines.js';

const ANSWERS = 10_000;
const SEED = 20;
/** Powers, exponentials and logarithms may differ by some units in the last place; nothing else may differ. */
const ULPS = 4;

/**
 * A difference of near values makes more of such a unit: one in each term is up to twice the condition number
 * |a| + |b| over |a − b| of units in the difference. No difference may have more than the condition numbers here.
 */
const CONDITIONS: Readonly<Record<DifferenceName, (value: number) => number>> = {
  // The equation from r − 1 to r + 1. The flattest is r ^ 0.1, at the longest set that is taken, of 20 repetitions:
  // (21 ^ 0.1 + 19 ^ 0.1) / (21 ^ 0.1 − 19 ^ 0.1) = 199.8.
  reserve: () => 200,
  // The highest less the lowest answer, as a percentage of the median: the two together are about 200 % of it.
  spreadPercent: (percent) => 200 / Math.max(1, percent),
  // Of a tail Φ(z), |z φ(z) / Φ(z)| is about 1 + z², and z² about −2 ln Φ; in z stand the pressure, its logarithm and its
  // standard deviation, each with the units that are let pass.
  occlusionChancePercent: (percent) => ULPS * (1 - 2 * Math.log(Math.max(percent, Number.MIN_VALUE) / 100)),
};

const bits = new DataView(new ArrayBuffer(8));
/** A double’s place in the order of all doubles. */
function place(value: number): bigint {
  bits.setFloat64(0, value);
  const raw = bits.getBigInt64(0);
  return raw < 0n ? -(raw & 0x7fff_ffff_ffff_ffffn) : raw;
}
const apart = (a: number, b: number): number => {
  const steps = place(a) - place(b);
  return Number(steps < 0n ? -steps : steps);
};

/** The differences that are further apart than their condition allows. */
function tooFar(name: DifferenceName, a: readonly number[], b: readonly number[]): string[] {
  if (a.length !== b.length) return [`not as many of ${name}`];
  return a.flatMap((value, index) => {
    const ulps = apart(value, b[index]!);
    const most = 2 * CONDITIONS[name](value);
    return ulps > most ? [`${name} ${value}: ${ulps} units in the last place, at most ${most}`] : [];
  });
}

/** How far the numbers of one function are from the same of another engine; infinite when they are not the same numbers. */
const furthest = (a: readonly number[], b: readonly number[]): number =>
  a.length === b.length ? a.reduce((most, value, index) => Math.max(most, apart(value, b[index]!)), 0) : Infinity;

let project = '';
let reference: { readonly name: string; readonly told: Told } | undefined;

beforeAll(async () => {
  installEngines();
  project = await freshProject(ANSWERS, SEED);
});
afterAll(() => rmSync(project, { recursive: true, force: true }));

/** Holds an engine to the reference; gives the largest difference that was let pass [units in the last place]. */
function compare(name: string, told: Told): number {
  expect(told.failed).toEqual([]);
  reference ??= { name, told };
  const differing: string[] = [];
  let most = 0;
  for (const [door, given] of Object.entries(told.given)) {
    const other: Given = reference.told.given[door]!;
    const ulps = furthest(given.numbers, other.numbers);
    most = Math.max(most, ulps);
    if (given.exact !== other.exact) differing.push(`${door}: not the same as in ${reference.name}`);
    if (ulps > ULPS) differing.push(`${door}: ${ulps} units in the last place from ${reference.name}`);
    for (const name of Object.keys(CONDITIONS) as DifferenceName[]) {
      const far = tooFar(name, given.differences[name], other.differences[name]);
      differing.push(...far.map((words) => `${door}: ${words}`));
    }
  }
  expect(differing).toEqual([]);
  return most;
}

describe('measuring how far doubles are apart', () => {
  it('counts the doubles between', () => {
    expect(apart(1, 1 + Number.EPSILON)).toBe(1);
    expect(apart(0.1 + 0.2, 0.3)).toBe(1);
    expect(apart(-Number.MIN_VALUE, Number.MIN_VALUE)).toBe(2);
    expect(furthest([1, 2], [1])).toBe(Infinity);
  });

  it('lets a difference be further apart the smaller it is, and not without end', () => {
    const moved = (value: number, ulps: number): number => value * (1 + ulps * Number.EPSILON);
    expect(tooFar('spreadPercent', [1], [moved(1, 400)])).toEqual([]);
    expect(tooFar('spreadPercent', [1], [moved(1, 401)])).toHaveLength(1);
    expect(tooFar('spreadPercent', [16], [moved(16, 26)])).toHaveLength(1);
    expect(tooFar('reserve', [1], [])).toHaveLength(1);
  });
});

describe.each(engines)('$name', ({ name, find, run }) => {
  it.for([
    { state: 'as it is', frozen: false },
    { state: 'with frozen built-ins', frozen: true },
  ])('$state: check values, and random answers as in the other engines', async ({ frozen }, { skip }) => {
    const program = find();
    if (program === undefined) {
      const words = `${name} is missing on this machine`;
      if (process.env['ALLOW_MISSING']) skip(`${words}: not checked, as --allow-missing asks`);
      expect.fail(`${words}; install it, or say --allow-missing`);
    }
    const told = await run(program, project, frozen);
    expect(checkTests.length).toBeGreaterThan(0);
    expect(told.rows).toBeGreaterThan(100);
    const all = Object.values(told.given);
    const count = all.reduce((sum, { answers }) => sum + answers, 0);
    expect(count, 'answers that are not errors').toBeGreaterThan(ANSWERS);
    for (const [door, { answers }] of Object.entries(told.given)) expect(answers, door).toBeGreaterThan(100);
    const most = compare(name, told);
    // The validator that the plan’s schemas use tries once whether it may evaluate text; nothing else may try.
    for (const violation of told.violations ?? []) expect(violation).toMatch(/^script-src \/node_modules\/zod\//);
    console.log(`${name}: ${told.rows} check rows, ${count} answers, the furthest ${most} ulp from ${reference?.name}`);
  });
});
