import type { Full } from '../answer/defined.js';
import { inwards } from '../quantity/unit-system.js';
import { Math } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { decimal, type Decimal } from '../quantity/decimal.js';
import { formatUnit } from '../quantity/format.js';
import { inLoadUnit, LOAD_UNITS, type LoadUnit, loadUnitCode, quantities } from '../quantity/quantities.js';
import type { Rounding } from '../quantity/exact.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import {
  EACH_MASS_ONCE,
  FEWER_DECIMALS,
  LIGHTEST_LOAD,
  MASS_OF_BAR,
  MOST_KINDS_OF_PLATE,
  PAIR_OF_PLATES,
  PLATES,
} from './needs.js';

/** A kind of plate. */
export interface Plate {
  /** Mass of one plate [`unit`], 0.01–200. */
  readonly mass: number;
  /** How many you have, 1–10,000; as many as needed when left out. */
  readonly count?: number | undefined;
}

/** A bar and what can be put on it, all in one unit. */
export interface BarAndPlates {
  /** Mass of the bar [`unit`], 0–200. */
  readonly bar: number;
  /** Mass of both collars together [`unit`], 0–50; 0 when left out. */
  readonly collars?: number | undefined;
  /** The plates that you have. */
  readonly plates: readonly Plate[];
}

/** What {@link loadPlates} takes. */
export interface PlatesInput extends BarAndPlates {
  /** The load you want, bar and collars included [`unit`], 0.1–2000. */
  readonly target: number;
  /** Unit of every mass here; kg when left out. */
  readonly unit?: LoadUnit | undefined;
  /** How the load is rounded to the plates; `nearest` when left out. `down` never goes above the target. */
  readonly rounding?: Rounding | undefined;
}

/** A loaded bar, and the plates on each side of it, heaviest first. */
export type LoadedWeight = Answer<'loaded-weight'> & {
  /** Plates on each side of the bar, heaviest first. */
  readonly perSide: readonly Full<Plate>[];
};

export const ROUNDINGS = ['nearest', 'down'] as const;

/** No gym has more kinds of plate; it bounds the work. */
const MOST_KINDS = 50;
/** Weights times kinds that are looked at; beyond it the masses are too fine for the weight. */
const MOST_CELLS = 4_000_000;

/** Bar, collars and plates after reading. */
export interface Inventory {
  readonly bar: number;
  readonly collars: number;
  readonly plates: readonly Plate[];
}

/** Reads `bar`, `collars` and `plates`. Unless `required`, all three may be left out. */
export function readInventory(reader: Reader, unit: LoadUnit, required: boolean): Inventory | undefined {
  const code = loadUnitCode(unit);
  const bar = reader.optionalNumber('bar', inLoadUnit(quantities.bar, code));
  const collars = reader.optionalNumber('collars', inLoadUnit(quantities.collars, code)) ?? 0;
  const items = reader.optionalList('plates', PLATES);
  const plates = items?.map((item): Plate => {
    const mass = item.number('mass', inLoadUnit(quantities.mass, code));
    const count = item.optionalNumber('count');
    return count === undefined ? { mass } : { mass, count };
  });
  const asked = required || ['bar', 'collars', 'plates'].some((name) => reader.has(name));
  if (asked && !reader.has('bar')) reader.missing('bar', MASS_OF_BAR);
  if (asked && !reader.has('plates')) reader.missing('plates', PLATES);
  if (!plates || bar === undefined) return undefined;
  if (plates.length > MOST_KINDS) {
    reader.report('wrong-type', 'plates', need(MOST_KINDS_OF_PLATE, { most: MOST_KINDS }), String(plates.length));
  } else if (reader.fine) {
    const masses = plates.map(({ mass }) => mass);
    const again = masses.findIndex((mass, index) => masses.indexOf(mass) < index);
    if (again >= 0) reader.refuse(['plates', again, 'mass'], EACH_MASS_ONCE, String(masses[again]));
  }
  return { bar, collars, plates };
}

/** One kind of plate while it is being counted: its mass in whole steps, and how many pairs there are. */
interface Kind {
  readonly mass: number;
  readonly steps: number;
  readonly pairs: number;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * The kinds, lightest first, in whole steps of their greatest common measure; what a pair of one step weighs, and the
 * steps of the heaviest kind and of all pairs together.
 */
function inSteps(plates: readonly Plate[]): { kinds: Kind[]; pairStep: Decimal; heaviest: number; all: number } {
  const places = Math.max(...plates.map(({ mass }) => decimal(mass).decimalPlaces()));
  const scale = decimal(Number(`1e${places}`));
  const whole = plates.map(({ mass }) => decimal(mass).times(scale).toNumber());
  const measure = whole.reduce(gcd);
  const kinds = plates
    .map(({ mass, count = Infinity }, at) => ({ mass, steps: whole[at]! / measure, pairs: Math.floor(count / 2) }))
    .sort((a, b) => a.steps - b.steps);
  const heaviest = kinds[kinds.length - 1]!.steps;
  const all = kinds.reduce((sum, { steps, pairs }) => sum + steps * pairs, 0);
  return { kinds, pairStep: decimal(2).times(measure).div(scale), heaviest, all };
}

/**
 * The fewest pairs that make each number of steps from 0 to `most`, kind by kind: how many of each kind are taken.
 * Of two ways with as many pairs, the one with more of the heavier plates. `counts[kind][steps]`; −1 where there is
 * no way. The fewest pairs among the last `pairs` places of a residue class are kept in a queue, so the work is
 * steps × kinds, whatever the counts.
 */
function fewestPairs(kinds: readonly Kind[], most: number): Int32Array[] {
  let fewest = new Int32Array(most + 1).fill(-1);
  fewest[0] = 0;
  const queue = new Int32Array(most + 1);
  return kinds.map(({ steps, pairs }) => {
    const next = new Int32Array(most + 1).fill(-1);
    const counts = new Int32Array(most + 1).fill(-1);
    for (let residue = 0; residue < steps && residue <= most; residue += 1) {
      let head = 0;
      let tail = 0;
      for (let k = 0, at = residue; at <= most; k += 1, at += steps) {
        const here = fewest[at]!;
        if (here >= 0) {
          while (tail > head && fewest[residue + queue[tail - 1]! * steps]! - queue[tail - 1]! > here - k) tail -= 1;
          queue[tail] = k;
          tail += 1;
        }
        if (tail > head && queue[head]! < k - pairs) head += 1;
        if (tail > head) {
          counts[at] = k - queue[head]!;
          next[at] = fewest[residue + queue[head]! * steps]! + counts[at]!;
        }
      }
    }
    fewest = next;
    return counts;
  });
}

/** What a bar can be loaded to for a target, or why it cannot. */
export type Loading =
  | { readonly total: number; readonly perSide: readonly Full<Plate>[]; readonly most?: number }
  /** The target is too light: the lightest load, or 0 without a single pair. */
  | { readonly lightest: number }
  | { readonly tooFine: true };

/** The loadable weight nearest to a target or nearest not above it, in exact decimals, with the fewest plates. */
export function loadBar(target: number, { bar, collars, plates }: Inventory, rounding: Rounding): Loading {
  const base = decimal(bar).plus(decimal(collars));
  const onPlates = decimal(target).minus(base);
  if (onPlates.lt(0)) return { lightest: base.toNumber() };
  const { kinds, pairStep, heaviest, all } = inSteps(plates);
  const wanted = onPlates.div(pairStep);
  const below = wanted.floor().toNumber();
  // Above the target, nothing further than the empty bar can be nearest, nor than one plate of the heaviest.
  const above = Math.min(wanted.times(2).floor().toNumber(), below + heaviest);
  const most = Math.min(all, rounding === 'down' ? below : above);
  if ((most + 1) * kinds.length > MOST_CELLS) return { tooFine: true };
  const counts = fewestPairs(kinds, most);
  const reached = counts[counts.length - 1]!;
  let chosen = Math.min(below, most);
  while (reached[chosen]! < 0) chosen -= 1;
  let over = below + 1;
  while (over <= most && reached[over]! < 0) over += 1;
  if (over <= most && wanted.minus(chosen).gt(wanted.minus(over).abs())) chosen = over;

  const perSide: Full<Plate>[] = [];
  let left = chosen;
  for (let at = kinds.length - 1; at >= 0; at -= 1) {
    const { mass, steps } = kinds[at]!;
    const count = counts[at]![left]!;
    if (count > 0) perSide.push({ mass, count });
    left -= count * steps;
  }
  const weight = (taken: readonly Full<Plate>[]): number =>
    taken.reduce((sum, { mass, count }) => sum.plus(decimal(mass).times(2 * count)), base).toNumber();
  const everything = kinds.map(({ mass, pairs }) => ({ mass, count: pairs }));
  const total = weight(perSide);
  if (total === 0) {
    const pair = everything.find(({ count }) => count > 0);
    return { lightest: pair ? weight([{ mass: pair.mass, count: 1 }]) : 0 };
  }
  return { total, perSide, ...(wanted.gt(all) && { most: weight(everything) }) };
}

/**
 * Every weight that a bar can be loaded to, lightest first, to the next above a target at the least; `undefined` where
 * the masses are too fine to count them through.
 */
export function loadableWeights({ bar, collars, plates }: Inventory, target: number): number[] | undefined {
  const base = decimal(bar).plus(decimal(collars));
  const { kinds, pairStep, heaviest, all } = inSteps(plates);
  const below = Math.max(0, Math.floor(decimal(target).minus(base).div(pairStep).toNumber()));
  const most = Math.min(all, below + heaviest);
  if ((most + 1) * kinds.length > MOST_CELLS) return undefined;
  const reached = fewestPairs(kinds, most)[kinds.length - 1]!;
  const weights: number[] = [];
  reached.forEach((pairs, steps) => {
    if (pairs >= 0) weights.push(pairStep.times(steps).plus(base).toNumber());
  });
  return weights;
}

/** `20 + 2 * 1.25`, as formulas and people read it. */
const sideText = (perSide: readonly Full<Plate>[]): string =>
  perSide.map(({ mass, count }) => (count === 1 ? `${mass}` : `${count} * ${mass}`)).join(' + ') || '0';

/**
 * Which plates to put on each side of a bar for a target load. The answer is the nearest load, or the nearest that does
 * not exceed the target, with the fewest plates. Of two as near it is the lighter; of two with as many plates, the one
 * with the heavier plates.
 *
 * Formula: w = bar + collars + 2 × (plates on one side)
 *
 * Everything is exact in decimals: three 0.1 kg plates are 0.3 kg. Plates go on in pairs, so one without a partner
 * stays off. A target below bar and collars is refused; the error names the lightest load. Where all plates together
 * do not reach the target, a caution gives the heaviest load.
 *
 * - Error: none; we use the masses as marked (a federation allows ± 0.25 % for a disc).
 * - Evidence: `definition`; arithmetic on the masses you enter.
 * - Source: none for the arithmetic; the sets of {@link plateSets} name theirs.
 *
 * @function
 * @param input - `target` [`unit`]; `bar`, `collars` (both together) [`unit`]; `plates`, each with `mass` [`unit`] and
 * `count`; unit; rounding
 * @returns w [`unit`] and the plates of one side, heaviest first.
 * @throws InputError that lists every wrong field; also where nothing can be loaded, and where the masses have too many
 * decimals to search.
 *
 * @example
 * ```ts
 * import { loadPlates } from 'cuffwork';
 * const plates = [{ mass: 20, count: 2 }, { mass: 10, count: 4 }, { mass: 1.25, count: 2 }];
 * const loaded = loadPlates({ target: 63, bar: 20, plates });
 * loaded.value; // => 62.5
 * loaded.perSide; // => [{ mass: 20, count: 1 }, { mass: 1.25, count: 1 }]
 * ```
 */
export const loadPlates = withInput(function loadPlates(input: PlatesInput): LoadedWeight {
  const reader = new Reader(input);
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  const code = loadUnitCode(unit);
  const target = reader.number('target', inLoadUnit(quantities.target, code));
  const inventory = readInventory(reader, unit, true);
  const rounding = reader.optionalChoice('rounding', ROUNDINGS) ?? 'nearest';
  const loading = reader.fine ? loadBar(target, inventory!, rounding) : undefined;
  if (loading && 'lightest' in loading) {
    // Rounded up: what the sentence asks for has to do.
    const [lightest] = inwards(loading.lightest, Infinity);
    if (lightest === 0) reader.refuse('plates', PAIR_OF_PLATES, 'no pair');
    else reader.refuse('target', need(LIGHTEST_LOAD, { lightest, unit: code }), formatUnit(target, code));
  }
  if (loading && 'tooFine' in loading) reportTooFine(reader);
  reader.done();
  const { total, perSide, most } = loading as Extract<Loading, { total: number }>;
  const { bar, collars } = inventory!;
  return {
    kind: 'loaded-weight',
    value: total,
    unit: code,
    equation: 'bar-and-plates',
    evidence: 'definition',
    inputs: { target, bar, collars, perSide: sideText(perSide), unit, rounding },
    assumptions: [
      assumption(rounding === 'down' ? 'loaded-not-above' : 'loaded-nearest', { target, unit }),
      assumption('plates-in-pairs'),
    ],
    cautions:
      most === undefined ? [] : [caution('caution', 'plates-run-out', { most, unit: code }, { path: ['plates'] })],
    perSide,
  };
});

export const reportTooFine = (reader: Reader): void =>
  reader.refuse('plates', FEWER_DECIMALS, 'too many to count through');
