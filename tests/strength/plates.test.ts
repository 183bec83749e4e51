import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attempt, loadPlates, type Plate } from '../../src/index.js';
import { expectPlainJson } from '../support/answers.js';
import { issuesOf } from '../support/refused.js';

/** A way to load one side, found by trying every one: pairs of each plate, and twice their mass in thousandths. */
interface Way {
  readonly counts: readonly number[];
  readonly thousandths: number;
  readonly plates: number;
}

/** Every way to load a bar, heaviest plates first in `counts`; masses in whole thousandths, so nothing is rounded. */
function everyWay(plates: readonly (readonly [thousandths: number, pairs: number])[]): Way[] {
  return plates.reduce<Way[]>(
    (ways, [thousandths, pairs]) =>
      ways.flatMap((way) =>
        Array.from({ length: pairs + 1 }, (_, count) => ({
          counts: [...way.counts, count],
          thousandths: way.thousandths + 2 * thousandths * count,
          plates: way.plates + count,
        })),
      ),
    [{ counts: [], thousandths: 0, plates: 0 }],
  );
}

/** The best way by the rule of the docs: nearest, lighter of two as near, fewest plates, then the heavier ones. */
function best(ways: readonly Way[], wanted: number, rounding: 'nearest' | 'down'): Way {
  const distance = (way: Way) => Math.abs(way.thousandths - wanted);
  const better = (a: Way, b: Way): number => {
    const heavier = a.counts.findIndex((count, at) => count !== b.counts[at]);
    return (
      distance(a) - distance(b) ||
      a.thousandths - b.thousandths ||
      a.plates - b.plates ||
      (heavier < 0 ? 0 : b.counts[heavier]! - a.counts[heavier]!)
    );
  };
  return ways
    .filter((way) => rounding === 'nearest' || way.thousandths <= wanted)
    .reduce((one, other) => (better(other, one) < 0 ? other : one));
}

const common = fc.constantFrom(25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 1_250, 500, 250, 45_000, 35_000);
const odd = fc.integer({ min: 10, max: 3_000 }).map((tens) => tens * 10);
const inventory = (mass: fc.Arbitrary<number>) =>
  fc.uniqueArray(fc.tuple(mass, fc.integer({ min: 1, max: 7 })), {
    minLength: 1,
    maxLength: 5,
    selector: ([thousandths]) => thousandths,
  });

describe('loadPlates', () => {
  // Source of the expected values: every way to load the bar, tried one by one in whole numbers.
  it.each([
    [1500, 'common plates', common, 10],
    [1500, 'odd plates', odd, 1],
  ] as const)('equals brute force on %d random small inventories of %s', (numRuns, _name, mass, unit) => {
    const target = fc.integer({ min: 20_000, max: 300_000 }).map((value) => Math.round(value / unit) * unit);
    const bar = fc.constantFrom(0, 10_000, 15_000, 20_000);
    const collars = fc.constantFrom(0, 5_000);
    const rounding = fc.constantFrom('nearest' as const, 'down' as const);
    fc.assert(
      fc.property(inventory(mass), target, bar, collars, rounding, (given, wanted, barMass, collarMass, way) => {
        const base = barMass + collarMass;
        const plates = given.map(([thousandths, count]): Plate => ({ mass: thousandths / 1000, count }));
        const answer = attempt(loadPlates, {
          target: wanted / 1000,
          bar: barMass / 1000,
          collars: collarMass / 1000,
          plates,
          rounding: way,
        });
        const sorted = given
          .map(([thousandths, count]) => [thousandths, Math.floor(count / 2)] as const)
          .sort(([a], [b]) => b - a);
        const expected = base > wanted ? undefined : best(everyWay(sorted), wanted - base, way);
        // Below the bar, or with nothing on no bar, there is no weight to answer with.
        if (!expected || base + expected.thousandths === 0) return !answer.ok;
        if (!answer.ok) return false;
        expect(answer.value.value).toBe((base + expected.thousandths) / 1000);
        expect(answer.value.perSide).toEqual(
          sorted
            .map(([thousandths], at) => ({ mass: thousandths / 1000, count: expected.counts[at]! }))
            .filter(({ count }) => count > 0),
        );
        return true;
      }),
      { numRuns },
    );
  });

  // The same on a few, in whole kilograms: quick enough to be run against every mutant.
  it.each(Array.from({ length: 24 }, (_, index) => index + 20))('equals brute force at %d kg', (target) => {
    const pairs = [
      [5, 1],
      [3, 2],
      [2, 3],
    ] as const;
    const plates = pairs.map(([mass, count]): Plate => ({ mass, count: 2 * count }));
    const ways = everyWay(pairs.map(([mass, count]) => [1000 * mass, count]));
    for (const rounding of ['nearest', 'down'] as const) {
      const { thousandths, counts } = best(ways, 1000 * (target - 20), rounding);
      const { value, perSide } = loadPlates({ target, bar: 20, plates, rounding });
      expect(value).toBe(20 + thousandths / 1000);
      expect(pairs.map(([mass]) => perSide.find((plate) => plate.mass === mass)?.count ?? 0)).toEqual(counts);
    }
  });

  it('takes as many plates as are needed where none are counted', () => {
    const answer = loadPlates({ target: 1000, bar: 20, plates: [{ mass: 0.5 }, { mass: 25 }] });
    expect(answer).toMatchObject({
      value: 1000,
      perSide: [
        { mass: 25, count: 19 },
        { mass: 0.5, count: 30 },
      ],
    });
    expectPlainJson(answer);
  });

  it('names what is wrong in each plate', () => {
    const wrong = [
      { mass: NaN },
      { mass: '5' },
      null,
      { mass: 5, colour: 'red' },
      { mass: 500, count: 1.5 },
      { mass: 2500 },
    ];
    expect(issuesOf(loadPlates, { target: 60, bar: 20, plates: wrong })).toEqual([
      'plates.2 wrong-type',
      'plates.0.mass not-finite',
      'plates.1.mass wrong-type',
      'plates.4.mass unit-slip',
      'plates.4.count not-whole',
      'plates.5.mass unit-slip',
      'plates.3.colour unknown-field',
    ]);
  });

  it('ends soon whatever the sizes: it counts, or it says the masses are too fine', () => {
    const started = performance.now();
    const masses = fc.oneof(fc.double({ min: 0.01, max: 200, noNaN: true }), fc.constantFrom(0.01, 200, 20.41165665));
    const kinds = fc.uniqueArray(fc.record({ mass: masses }), { minLength: 1, maxLength: 50, selector: (p) => p.mass });
    let refused = 0;
    fc.assert(
      fc.property(kinds, fc.double({ min: 201, max: 2000, noNaN: true }), (plates, target) => {
        const result = attempt(loadPlates, { target, bar: 200, plates });
        if (result.ok) expect(result.value.perSide.length).toBeLessThanOrEqual(50);
        else refused += 1;
      }),
      { numRuns: 60 },
    );
    const smallest = attempt(loadPlates, {
      target: 2000,
      bar: 0,
      plates: [{ mass: 0.01 }, { mass: 200, count: 10_000 }],
    });
    expect(smallest).toMatchObject({ ok: true, value: { perSide: [{ mass: 200, count: 5 }] } });
    expect(refused).toBeGreaterThan(0);
    // A generous bound: it is there against a search without end, not to measure.
    expect(performance.now() - started).toBeLessThan(60_000);
  });

  it('loads pound plates by their exact masses in kilograms', () => {
    const plates = [20.41165665, 15.87573295, 11.33980925, 4.5359237, 2.26796185, 1.133980925].map((mass) => ({
      mass,
    }));
    // 225 lb on a 45 lb bar: two 45 lb plates a side; factors exact (UCUM).
    const answer = loadPlates({ target: 102, bar: 20.41165665, plates });
    expect(answer).toMatchObject({ value: 102.05828325, perSide: [{ mass: 20.41165665, count: 2 }] });
  });
});
