import { Math } from '../quantity/maths.js';
import { decimal } from '../quantity/decimal.js';
import { quantities } from '../quantity/quantities.js';
import { product, sum, roundToStep } from '../quantity/exact.js';
import { loadBar, type Inventory } from '../strength/plates.js';
import { nearestOf } from '../strength/training-load.js';
import type { PlanExerciseFields } from './types.js';

/** A weight just under another: as near as decimals of 12 digits tell apart from it. */
const justUnder = (weight: number): number => weight * (1 - 1e-9);

/** The heaviest load of a bar that is not above another; nothing where every one is. */
function onBarUpTo(load: number, inventory: Inventory): number | undefined {
  const loading = loadBar(load, inventory, 'down');
  return 'total' in loading ? loading.total : undefined;
}

/** The loads that a bar makes next to `load`. */
function onBar(load: number, atLeast: number, inventory: Inventory) {
  const under = (weight: number): number => onBarUpTo(weight, inventory) ?? NaN;
  const lighter = under(justUnder(load));
  const enough = (weight: number): boolean => weight > load && weight >= atLeast;
  const pair = 2 * Math.min(...inventory.plates.map(({ mass }) => mass));
  const most = quantities.load.max;
  let heavier = NaN;
  if (enough(under(most))) {
    // Reach for more until a weight is heavy enough, the heaviest at the latest, then take the lightest that still is.
    for (let more = pair; !enough(heavier); more *= 2) heavier = under(Math.min(sum([atLeast, more]), most));
    for (let next = under(justUnder(heavier)); enough(next); next = under(justUnder(next))) heavier = next;
  }
  return { ...(heavier > 0 && { heavier }), ...(lighter > 0 && { lighter }) };
}

/** The bar and the plates of an exercise; nothing where its loads are set in another way. */
const inventoryOf = ({ bar, collars = 0, plates }: PlanExerciseFields): Inventory | undefined =>
  bar !== undefined && plates ? ({ bar, collars, plates } as Inventory) : undefined;

/** The loads you can set next to `load`: the lightest that is at least `atLeast`, the heaviest that is lighter. */
export function neighbours(
  load: number,
  atLeast: number,
  exercise: PlanExerciseFields | undefined,
  step: number | undefined,
): { readonly heavier?: number; readonly lighter?: number } | undefined {
  const inventory = exercise && inventoryOf(exercise);
  if (inventory) return onBar(load, atLeast, inventory);
  if (exercise?.available) {
    const up = exercise.available.filter((weight) => weight > load && weight >= atLeast);
    const down = exercise.available.filter((weight) => weight < load);
    return {
      ...(up.length > 0 && { heavier: Math.min(...up) }),
      ...(down.length > 0 && { lighter: Math.max(...down) }),
    };
  }
  if (step === undefined) return undefined;
  const steps = Math.max(1, decimal(atLeast).minus(decimal(load)).div(decimal(step)).ceil().toNumber());
  const lighter = sum([load, -step]);
  return { heavier: sum([load, product(steps, step)]), ...(lighter > 0 && { lighter }) };
}

/** The heaviest load you can set that is not above `load`; nothing where every one is. */
export function heaviestUpTo(load: number, exercise: PlanExerciseFields): number | undefined {
  const { available, step } = exercise;
  const inventory = inventoryOf(exercise);
  if (inventory) return onBarUpTo(load, inventory);
  if (available) return nearestOf(load, available, 'down');
  const found = step === undefined ? load : roundToStep(load, step, 'down');
  return found > 0 ? found : undefined;
}
