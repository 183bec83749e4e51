import { describe, refuse } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { LIMBS, SIDES, type Limb, type Side } from '../quantity/quantities.js';
import { need } from '../answer/needs.js';
import { MOST_NAME } from '../session/prescription.js';
import type { ExerciseOnLimb } from './document-parts.js';
import { placeText } from './limb-and-side.js';
import { EXERCISE_NAME, ONE_ITEM, WITH_ITEMS } from './needs.js';

/** Which item {@link findItem} looks for; what is left out may be any. */
export interface ItemPlace {
  /** Name of the exercise, up to 120 characters. */
  readonly exercise?: string | undefined;
  /** Limb of the item. */
  readonly limb?: Limb | undefined;
  /** Side of the limb. */
  readonly side?: Side | undefined;
}

/** A document of several items. */
interface WithItems<I> {
  /** Its items, one for each exercise and limb. */
  readonly items: readonly I[];
}

/**
 * The one item of a plan, a record or a proposal for an exercise, a limb and a side.
 *
 * @param document - a plan, a record or a proposal
 * @param which - the exercise by its name, the limb and the side; what is left out may be any
 * @returns the item.
 * @throws InputError where there is none, or more than one, with what there is
 *
 * @example
 * ```ts
 * import { findItem, planSession } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30, restriction: 'continuous',
 *   }],
 * });
 * findItem(plan, { exercise: 'leg extension', side: 'left' }).load?.value; // => 15
 * ```
 */
export function findItem<I extends ExerciseOnLimb>(document: WithItems<I>, which: ItemPlace = {}): I {
  const reader = new Reader(which, ['which']);
  const exercise = reader.optionalText('exercise', EXERCISE_NAME, (name) => name.length <= MOST_NAME);
  const limb = reader.optionalChoice('limb', LIMBS);
  const side = reader.optionalChoice('side', SIDES);
  reader.done();
  let items: readonly I[] = [];
  try {
    if (Array.isArray(document.items)) items = [...document.items];
  } catch {
    // What cannot be read has no items.
  }
  const there = items.filter((item) => typeof item === 'object' && item !== null);
  const fits = ({ exercise: name, limb: own, side: ownSide }: I): boolean =>
    (exercise ?? name) === name && (limb ?? own) === own && (side ?? ownSide) === ownSide;
  const found = there.filter(fits);
  if (found.length === 1) return found[0]!;
  const names = there.slice(0, 20).map(placeText);
  if (names.length === 0) refuse('wrong-type', ['document'], WITH_ITEMS, describe(document));
  refuse('wrong-relation', ['which'], need(ONE_ITEM, { items: [...new Set(names)] }), String(found.length));
}
