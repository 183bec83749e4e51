import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { product, roundToStep } from '../../src/quantity/exact.js';
import { loadableWeights, loadBar } from '../../src/strength/plates.js';
import { exactShare, roundShare, stepOf } from '../../src/study/exact-share.js';

// Decimals are the judge: what doubles and whole numbers decide must be what they say, on the edges above all.
const short = (most: number, places: number) =>
  fc.integer({ min: 1, max: most * 10 ** places }).map((units) => units / 10 ** places);
/** A hair off: what an equation makes of a whole number. */
const near = (value: fc.Arbitrary<number>) =>
  fc.tuple(value, fc.integer({ min: -40, max: 40 })).map(([x, ulps]) => x * (1 + ulps * Number.EPSILON));
const value = fc.oneof(short(400, 0), short(400, 1), short(400, 6), near(short(400, 0)), near(short(400, 3)));
const percent = fc.oneof(
  short(100, 0),
  short(100, 1),
  near(short(100, 0)),
  fc.double({ min: 1, max: 100, noNaN: true }),
);
const step = fc.oneof(fc.constantFrom(0.1, 0.5, 1, 1.25, 2.5, 5, 0.07, 1 / 3), short(20, 2));

describe('a percentage of a value', () => {
  it('is the product of decimals', () => {
    fc.assert(
      fc.property(percent, value, (p, x) => exactShare(p, x) === product(p / 100, x)),
      { numRuns: 10_000 },
    );
  });

  it.each(['down', 'nearest'] as const)('brought to a step is what decimals bring it to: %s', (rounding) => {
    fc.assert(
      fc.property(percent, value, step, (p, x, by) => {
        expect(roundShare(p, x, stepOf(by), rounding)).toBe(roundToStep(product(p / 100, x), by, rounding));
      }),
      { numRuns: 10_000 },
    );
  });
});

describe('the weights that a bar can be loaded to', () => {
  it.each([
    { bar: 20, collars: 0, plates: [{ mass: 1.25, count: 2 }, { mass: 2.5, count: 4 }, { mass: 10 }] },
    { bar: 0, collars: 0.5, plates: [{ mass: 0.5 }, { mass: 20, count: 3 }] },
    { bar: 15, collars: 0, plates: [{ mass: 20.41 }, { mass: 11.34, count: 2 }] },
  ])('are those that loading finds for targets one by one: %j', (inventory) => {
    const weights = loadableWeights(inventory, 80)!;
    for (let target = 0; target <= 80; target += 0.25) {
      const loading = loadBar(target, inventory, 'down');
      const best = weights.filter((weight) => weight <= target).at(-1);
      expect('total' in loading ? loading.total : undefined, `${target}`).toBe(best || undefined);
    }
  });
});
